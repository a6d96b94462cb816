/** Ticks of the figures' axes, in the reader's units. */
import { ticks } from 'd3-array';
import { inUnits, type Quantity, roundNumber, type Units } from '../units.ts';

export interface Tick {
  /** In SI (or mm), as the data are. */
  at: number;
  label: string;
}

/** About `count` round ticks, round in the reader's unit, between two values of SI (or mm). */
export function roundTicks(
  from: number,
  to: number,
  count: number,
  quantity: Quantity,
  units: Units,
): Tick[] {
  const perSi = inUnits(1, quantity, units);
  return ticks(from * perSi, to * perSi, count).map((value) => ({
    at: value / perSi,
    label: roundNumber(value),
  }));
}

/** A round length of at most `most`, in the reader's unit (1, 2 or 5 times a power of ten), for a scale bar. */
export function roundLength(most: number, quantity: Quantity, units: Units): Tick {
  const perSi = inUnits(1, quantity, units);
  const power = 10 ** Math.floor(Math.log10(most * perSi));
  const value = [5, 2, 1].map((m) => m * power).find((v) => v <= most * perSi * (1 + 1e-9)) ?? power;
  return { at: value / perSi, label: roundNumber(value) };
}
