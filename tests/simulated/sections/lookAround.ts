/**
 * What an assessor notes of a simulated stem's surface on walking round it with a mallet: openings and soft wood with
 * the errors of such a look, and what is missed.
 */
import type { Random } from '../../../packages/engine/src/random.ts';
import { outlineRadius } from '../../../packages/engine/src/section/outline.ts';
import { contains } from '../../../packages/engine/src/section/ring.ts';
import type { SurfaceArc, SurfaceState } from '../../../packages/engine/src/section/types.ts';
import type { TrueSection } from './trueSection.ts';

const STEP_DEG = 1;
const RAD = Math.PI / 180;

/** Chances of noticing decay that reaches the surface: an open hollow or wood gone soft under its bark, wide or narrow. */
const NOTICED = { open: { wide: 0.95, narrow: 0.75 }, decayed: { wide: 0.8, narrow: 0.5 } };
const WIDE_MM = 80;
/** Ends of what is noticed are noted to this, degrees (standard deviation). */
const END_SD_DEG = 4;
/** Chance that sound wood is noted as decayed somewhere (an old scar), and that a part of the round cannot be reached. */
const FALSE_ALARM = 0.04;
const PART_HIDDEN = 0.15;

/** Arcs of the surface as noted, clockwise; nothing is noted of the part that could not be reached. */
export function lookAround(section: TrueSection, random: Random): SurfaceArc[] {
  const radius = outlineRadius(section.wood);
  const state: (SurfaceState | null)[] = new Array(360 / STEP_DEG).fill('sound');
  const truly = state.map((_, k) => {
    const a = k * STEP_DEG * RAD;
    const r = 0.985 * radius(k * STEP_DEG);
    const inside = section.voids.findIndex((v) => contains(v, r * Math.sin(a), r * Math.cos(a)));
    return inside < 0 ? 'sound' : section.filled[inside] ? 'decayed' : 'open';
  });
  for (const run of runs(truly)) {
    if (run.state === 'sound') continue;
    const wide = run.count * STEP_DEG * RAD * radius(run.from * STEP_DEG) > WIDE_MM;
    if (random.uniform() > NOTICED[run.state][wide ? 'wide' : 'narrow']) continue;
    mark(
      state,
      run.from + END_SD_DEG * random.normal(),
      run.from + run.count + END_SD_DEG * random.normal(),
      run.state,
    );
  }
  if (random.uniform() < FALSE_ALARM) {
    const from = 360 * random.uniform();
    mark(state, from, from + 10 + 25 * random.uniform(), 'decayed');
  }
  if (random.uniform() < PART_HIDDEN) {
    const from = 360 * random.uniform();
    mark(state, from, from + 30 + 150 * random.uniform(), null);
  }
  return runs(state)
    .filter((r): r is Run<SurfaceState> => r.state !== null)
    .map((r) => ({
      fromDeg: r.from * STEP_DEG,
      toDeg: ((r.from + r.count) * STEP_DEG) % 360,
      state: r.state,
    }));
}

function mark<T>(state: T[], fromDeg: number, toDeg: number, value: T): void {
  for (let k = Math.round(fromDeg / STEP_DEG); k < Math.round(toDeg / STEP_DEG); k++) {
    state[((k % state.length) + state.length) % state.length] = value;
  }
}

interface Run<T> {
  state: T;
  from: number;
  count: number;
}

/** Runs of one value around a closed round. */
function runs<T>(values: readonly T[]): Run<T>[] {
  const n = values.length;
  const start = values.findIndex((v, i) => v !== values[(i + n - 1) % n]);
  if (start < 0) return [{ state: values[0]!, from: 0, count: n }];
  const out: Run<T>[] = [];
  for (let k = 0; k < n; k++) {
    const i = (start + k) % n;
    const last = out.at(-1);
    if (last && last.state === values[i]) last.count++;
    else out.push({ state: values[i]!, from: i, count: 1 });
  }
  return out;
}
