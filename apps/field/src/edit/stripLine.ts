/**
 * A line found on a strip, mended by hand: stretches rubbed out and points joined where it went wrong, as a list of
 * edits that can be taken back one by one. What was found is never changed.
 */
import { stretchesOf, usualStep } from '@standfast/casefile';
import type { StripLine } from '@standfast/engine';
import type { ChartMap, OnScale } from './stripChart.ts';

export type LineEdit =
  | { kind: 'erase'; stretchesMm: readonly (readonly [number, number])[] }
  | { kind: 'draw'; points: readonly OnScale[] };

/** The line as it will be kept: depth ascending, rows that cannot be read left out. */
export interface MendedLine {
  depthMm: Float64Array;
  resistancePct: Float64Array;
  confidence: Float64Array;
  /** 1 where a person drew the sample. */
  byHand: Uint8Array;
}

/** What a sample counts as that a person drew: seen by an eye, but not measured. */
export const DRAWN_CONFIDENCE = 0.5;

interface Sample {
  depthMm: number;
  pct: number;
  confidence: number;
  hand: 0 | 1;
}

/** The line after the edits, in their order. */
export function mendedLine(line: StripLine, edits: readonly LineEdit[]): MendedLine {
  let samples: Sample[] = Array.from(line.depthMm, (depthMm, i) => ({
    depthMm,
    pct: line.resistancePct[i]!,
    confidence: line.confidence[i]!,
    hand: 0,
  }));
  const stepMm = usualStep(line.depthMm);
  for (const edit of edits) {
    if (edit.kind === 'erase') {
      samples = samples.filter(
        ({ depthMm }) => !edit.stretchesMm.some(([from, to]) => depthMm >= from && depthMm <= to),
      );
    } else samples = withDrawn(samples, joined(edit.points, stepMm));
  }
  return {
    depthMm: Float64Array.from(samples, ({ depthMm }) => depthMm),
    resistancePct: Float64Array.from(samples, ({ pct }) => pct),
    confidence: Float64Array.from(samples, ({ confidence }) => confidence),
    byHand: Uint8Array.from(samples, ({ hand }) => hand),
  };
}

function withDrawn(samples: Sample[], drawn: Sample[]): Sample[] {
  const [first, last] = [drawn[0], drawn.at(-1)];
  if (!first || !last) return samples;
  return [
    ...samples.filter(({ depthMm }) => depthMm < first.depthMm),
    ...drawn,
    ...samples.filter(({ depthMm }) => depthMm > last.depthMm),
  ];
}

/** Samples along the straight lines between points, as close as the found ones lie. */
function joined(points: readonly OnScale[], stepMm: number): Sample[] {
  const inOrder = [...points].sort((a, b) => a.depthMm - b.depthMm);
  const samples: Sample[] = [];
  const put = (depthMm: number, pct: number) => {
    // Two points one above the other: depth must ascend, so the later one stands.
    if (samples.length > 0 && depthMm <= samples.at(-1)!.depthMm) samples.pop();
    samples.push({ depthMm, pct: Math.max(0, pct), confidence: DRAWN_CONFIDENCE, hand: 1 });
  };
  inOrder.forEach((point, i) => {
    const next = inOrder[i + 1];
    put(point.depthMm, point.levelPct);
    if (!next) return;
    const steps = Math.floor((next.depthMm - point.depthMm) / stepMm);
    for (let k = 1; k < steps; k++) {
      const share = k / steps;
      put(
        point.depthMm + share * (next.depthMm - point.depthMm),
        point.levelPct + share * (next.levelPct - point.levelPct),
      );
    }
  });
  return samples;
}

/** Stretches that a person drew, mm. */
export function drawnStretches({ depthMm, byHand }: MendedLine): [number, number][] {
  return stretchesOf(depthMm, (i) => byHand[i] === 1);
}

/**
 * Where the mended line lies on the photo: x, y, x, y. Paper that does not lie quite flat moves the found line off the
 * plane through the corners; samples are moved as the found ones next to them are.
 */
export function onPhoto(mended: MendedLine, found: StripLine, map: ChartMap): Float64Array {
  const px = new Float64Array(2 * mended.depthMm.length);
  let near = 0;
  mended.depthMm.forEach((depthMm, i) => {
    while (near + 1 < found.depthMm.length && found.depthMm[near + 1]! <= depthMm) near++;
    const [x, y] = map.toPhoto({ depthMm, levelPct: mended.resistancePct[i]! });
    const [fx, fy] = map.toPhoto({ depthMm: found.depthMm[near]!, levelPct: found.resistancePct[near]! });
    px[2 * i] = x + found.linePx[2 * near]! - fx;
    px[2 * i + 1] = y + found.linePx[2 * near + 1]! - fy;
  });
  return px;
}

/** The reverse of `onPhoto` for one point of the photo. */
export function onScale(px: readonly [number, number], found: StripLine, map: ChartMap): OnScale {
  const rough = map.toScale(px);
  let near = 0;
  while (near + 1 < found.depthMm.length && found.depthMm[near + 1]! <= rough.depthMm) near++;
  const [fx, fy] = map.toPhoto({ depthMm: found.depthMm[near]!, levelPct: found.resistancePct[near]! });
  return map.toScale([px[0] - found.linePx[2 * near]! + fx, px[1] - found.linePx[2 * near + 1]! + fy]);
}
