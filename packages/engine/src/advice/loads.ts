/**
 * Safety after the wind's moment is lowered, from the same draws of strength, anchorage and demand: only the demand is
 * scaled, so before and after differ by the pruning and by nothing else.
 *
 * The interval is taken in the direction that governs each mode (and, with a lean, toward the lean too, since with less
 * wind the lean comes to matter more); the confidence from each draw's own weakest direction.
 */
import type { SafetyAssessment, SafetyGoverning } from '../assessment.ts';
import { safetyAt } from '../decision/compare.ts';
import type { ModeDraws, SafetyDraws } from '../decision/types.ts';
import type { Interval } from '../trace/types.ts';
import { interval } from '../wind/interval.ts';
import { DIRECTIONS } from '../wind/types.ts';
import { drawnRelief, type Relief } from './pruning.ts';

/** What is left of the load, per draw: at the ground, and at each section. */
export interface LoadLeft {
  ground: Float64Array;
  sections: Float64Array[];
}

/** Everything needed to look at lowered loads. */
export interface Loads {
  drawn: SafetyDraws;
  safety: SafetyAssessment;
  /** Section ids in the order of `drawn.breakage.places`. */
  sectionIds: readonly string[];
  /** One stratified uniform per draw: where in the relief's range it lies. */
  uniforms: Float64Array;
}

/** Load left after a relief. */
export function loadLeft({ uniforms }: Loads, relief: Relief): LoadLeft {
  const [ground, ...sections] = relief.byLevel.map((range) =>
    uniforms.map((uniform) => 1 - drawnRelief(range, uniform)),
  );
  return { ground: ground!, sections };
}

const indexOf = (directionDeg: number) => Math.round((directionDeg * DIRECTIONS) / 360) % DIRECTIONS;

/** Directions looked at: the one that governs the mode, and the lean's where the tree leans. */
function directionsOf(rows: readonly { directionDeg: number; p05: number }[], mode: ModeDraws): number[] {
  const worst = indexOf(rows.reduce((a, b) => (b.p05 < a.p05 ? b : a)).directionDeg);
  const leaning = mode.places.some(({ weightNm }) => weightNm[0]! > 0);
  const lean = indexOf(((mode.places[0]!.leanTowardDeg % 360) + 360) % 360);
  return leaning && lean !== worst ? [worst, lean] : [worst];
}

/** Least safety over a mode's places, one draw and direction. */
function leastAt(mode: ModeDraws, left: readonly Float64Array[], draw: number, direction: number): number {
  let least = Number.POSITIVE_INFINITY;
  for (let s = 0; s < mode.places.length; s++) {
    const safety = safetyAt(mode.places[s]!, draw, direction, left[s]![draw]!);
    if (safety < least) least = safety;
  }
  return least;
}

interface ModeAfter extends Interval {
  directionDeg: number;
  /** Place that is weakest in the middle of the draws. */
  place: number;
}

function modeAfter(
  draws: number,
  mode: ModeDraws,
  directions: readonly number[],
  left: readonly Float64Array[],
): ModeAfter {
  let worst: ModeAfter | null = null;
  for (const direction of directions) {
    const column = new Float64Array(draws);
    const wins = new Array<number>(mode.places.length).fill(0);
    for (let i = 0; i < draws; i++) {
      column[i] = leastAt(mode, left, i, direction);
      if (mode.places.length === 1) continue;
      const weakest = mode.places.findIndex(
        (place, s) => safetyAt(place, i, direction, left[s]![i]!) === column[i],
      );
      wins[weakest]!++;
    }
    const found = {
      directionDeg: (direction * 360) / DIRECTIONS,
      place: wins.indexOf(Math.max(...wins)),
      ...interval(column),
    };
    if (worst === null || found.p05 < worst.p05) worst = found;
  }
  return worst!;
}

/** What governs with the load that is left. */
export interface SafetyAfter {
  governing: SafetyGoverning;
  uprooting: Interval & { directionDeg: number };
}

export function safetyAfter(loads: Loads, left: LoadLeft): SafetyAfter {
  const { drawn, safety, sectionIds } = loads;
  const breaks = modeAfter(
    drawn.draws,
    drawn.breakage,
    directionsOf(safety.breakage, drawn.breakage),
    left.sections,
  );
  const uproots = modeAfter(drawn.draws, drawn.uprooting, directionsOf(safety.uprooting, drawn.uprooting), [
    left.ground,
  ]);
  const breakage = breaks.p05 <= uproots.p05;
  const worst = breakage ? breaks : uproots;
  return {
    governing: {
      mode: breakage ? 'breakage' : 'uprooting',
      directionDeg: worst.directionDeg,
      sectionId: breakage ? (sectionIds[breaks.place] ?? null) : null,
      p05: worst.p05,
      p50: worst.p50,
      p95: worst.p95,
    },
    uprooting: uproots,
  };
}

/** Share of the draws whose least safety, of both modes, reaches a mark with the load that is left. */
export function confidence({ drawn }: Loads, left: LoadLeft, wanted: number): number {
  let reached = 0;
  for (let i = 0; i < drawn.draws; i++) {
    if (
      drawReaches(drawn.breakage, left.sections, i, wanted) &&
      drawReaches(drawn.uprooting, [left.ground], i, wanted)
    ) {
      reached++;
    }
  }
  return reached / drawn.draws;
}

function drawReaches(mode: ModeDraws, left: readonly Float64Array[], draw: number, wanted: number): boolean {
  // Lowered wind never lowers the safety below what it was, so a draw that reached the mark still does.
  if (mode.leastSafety[draw]! >= wanted) return true;
  if (leastAt(mode, left, draw, mode.leastDirection[draw]!) < wanted) return false;
  const { leanTowardDeg, weightNm } = mode.places[0]!;
  return (
    weightNm[draw] === 0 || leastAt(mode, left, draw, indexOf(((leanTowardDeg % 360) + 360) % 360)) >= wanted
  );
}
