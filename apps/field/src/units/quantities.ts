/**
 * Numbers as the app shows and takes them: the report's units, and what only a screen needs (angles, shares, chances,
 * and the way back from what was typed to what is stored).
 */
import type { Interval } from '@standfast/engine';
import { fixed, inUnits, measure, type Quantity, span, type Units, unitOf } from '@standfast/report';

/** Everything a field can hold a number of; stored as the name says. */
export type FieldQuantity = Quantity | 'angleDeg' | 'coordinateDeg' | 'years' | 'percent' | 'plain';

/** Label of the unit a field is typed in, empty for a pure number. */
export function fieldUnit(quantity: FieldQuantity, units: Units): string {
  if (quantity === 'angleDeg' || quantity === 'coordinateDeg') return '°';
  if (quantity === 'years') return 'years';
  if (quantity === 'percent') return '%';
  return quantity === 'plain' ? '' : unitOf(quantity, units);
}

/** What is typed, as it is stored, with the noise of the conversion rounded off (12 figures). */
export function storedOf(shown: number, quantity: FieldQuantity, units: Units): number {
  const perStored = isScaled(quantity) ? inUnits(1, quantity, units) : 1;
  return Number((shown / perStored).toPrecision(12));
}

/**
 * A stored value as a field shows it: at most two digits after the point (three in metres; six of a coordinate, which is
 * a hand's breadth), no trailing zeros.
 */
export function fieldText(stored: number, quantity: FieldQuantity, units: Units): string {
  const shown = isScaled(quantity) ? inUnits(stored, quantity, units) : stored;
  const digits = quantity === 'coordinateDeg' ? 6 : quantity === 'heightM' && units === 'metric' ? 3 : 2;
  return String(Number(shown.toFixed(digits))).replace('-', '−');
}

/** A stored value in words with its unit. */
export function quantityText(stored: number, quantity: FieldQuantity, units: Units): string {
  if (quantity === 'angleDeg' || quantity === 'coordinateDeg') {
    return `${fixed(stored, Number.isInteger(stored) ? 0 : 2)}°`;
  }
  if (quantity === 'years') return `${Number(stored.toFixed(1))}\u00a0${stored === 1 ? 'year' : 'years'}`;
  if (quantity === 'percent') return `${fixed(stored, 0)} %`;
  return quantity === 'plain' ? fixed(stored, 2) : measure(stored, quantity, units);
}

/** The 5 % to 95 % range in words with its unit. */
export function rangeText(interval: Interval, quantity: Quantity, units: Units): string {
  return span(interval.p05, interval.p95, quantity, units);
}

/** `1.62 (1.21 to 2.10)`: a pure number is never shown without its range. */
export function intervalText(interval: Interval, digits = 2): string {
  return `${fixed(interval.p50, digits)} (${fixed(interval.p05, digits)} to ${fixed(interval.p95, digits)})`;
}

/** A share with its range in percent: `80 % (71 to 86)`. */
export function shareText(interval: Interval): string {
  const percent = (share: number) => fixed(100 * share, 0);
  return `${percent(interval.p50)} % (${percent(interval.p05)} to ${percent(interval.p95)})`;
}

/** A chance as people say it: never 0 % or 100 % for what was estimated from draws. */
export function chanceText(chance: number): string {
  if (chance < 0.001) return 'under 0.1 %';
  if (chance > 0.999) return 'over 99.9 %';
  return `${fixed(100 * chance, chance < 0.1 ? 1 : 0)} %`;
}

/** How sure a zone is, in whole percent: a posterior is never printed as certain. */
export function sureText(probability: number): string {
  return probability > 0.995 ? 'over 99\u00a0%' : `${fixed(100 * probability, 0)}\u00a0%`;
}

export { fixed, inUnits, measure };

function isScaled(quantity: FieldQuantity): quantity is Quantity {
  return !['angleDeg', 'coordinateDeg', 'years', 'percent', 'plain'].includes(quantity);
}
