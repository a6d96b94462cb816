/** How a strip's line came about, as the notes of the table that the case keeps, and where its photo is kept. */
import type { StripProvenance } from '@standfast/engine';
import { drawnStretches, gapsOf, type MendedLine } from './stripLine.ts';

export interface StripSource {
  /** Path of the photo in the case, and the SHA-256 of its bytes. */
  photo: string;
  sha256: string;
  /** Pixels of the kept photo along one of the picture the line was read on. */
  photoScale: number;
  cornersByHand: boolean;
  engineVersion: string;
}

/** How the line came about, one line each: enough to read it again. */
export function stripNotes(line: MendedLine, made: StripProvenance, source: StripSource): string[] {
  const px = (value: number) => (value * source.photoScale).toFixed(1);
  const stretches = (list: readonly (readonly [number, number])[]) =>
    list.map(([from, to]) => `${from.toFixed(1)} to ${to.toFixed(1)}`).join(', ');
  const gaps = gapsOf(line.depthMm);
  const drawn = drawnStretches(line);
  return [
    `read from the photographed paper strip ${source.photo}`,
    `photo sha256 ${source.sha256}`,
    `chart corners on the upright photo, px, clockwise from the chart's top left: ${made.cornersPx
      .map(([x, y]) => `(${px(x)}, ${px(y)})`)
      .join(' ')}`,
    source.cornersByHand
      ? 'corners set by hand'
      : `corners found by the ${made.cornersFrom}, sure ${made.cornersSure.toFixed(2)}`,
    `depth ${made.depthMm[0].toFixed(2)} mm at the left edge to ${made.depthMm[1].toFixed(2)} mm at the right, ${
      made.scaleFrom === 'taps' ? 'by two marked points of known depth' : made.scaleFrom
    }`,
    `resistance ${made.resistance[0]} % at the bottom edge to ${made.resistance[1]} % at the top`,
    ...made.steps,
    ...(gaps.length > 0 ? [`left out, not invented, mm: ${stretches(gaps)}`] : []),
    ...(drawn.length > 0 ? [`drawn by hand, mm: ${stretches(drawn)}`] : []),
    `Standfast engine ${source.engineVersion}`,
  ];
}

/** A file name for a drilling's photo that is not taken in the case yet. */
export function freePhotoPath(taken: Iterable<string>, drillingId: string, ending: string): string {
  const stem =
    drillingId
      .normalize('NFKD')
      .replace(/[^a-zA-Z0-9._-]+/g, '_')
      .replace(/^[._]+/, '') || 'strip';
  const known = new Set([...taken].map((path) => path.toLowerCase()));
  for (let n = 1; ; n++) {
    const path = `photos/${stem}${n === 1 ? '' : `-${n}`}.${ending}`;
    if (!known.has(path.toLowerCase())) return path;
  }
}
