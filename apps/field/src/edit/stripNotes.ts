/** How a strip's line came about, as the notes of the table that the case keeps, and where its photo is kept. */
import type { StripProvenance } from '@standfast/engine';
import { drawnStretches, gapsOf, type MendedLine, unsureStretches } from './stripLine.ts';

export interface StripSource {
  /** Path of the photo in the case, and the SHA-256 of its bytes. */
  photo: string;
  sha256: string;
  /** Pixels of the kept photo along one of the picture the line was read on. */
  photoScale: number;
  cornersByHand: boolean;
  engineVersion: string;
}

const BEGINS = 'read from the photographed paper strip';

const SCALE_FROM: Record<StripProvenance['scaleFrom'], string> = {
  given: 'as typed',
  taps: 'by two marked points of known depth',
  ruler: 'by two marked points a known distance apart',
  'printed numbers': 'by the numbers printed on the chart',
};

/** How the line came about, one line each: enough to read it again. */
export function stripNotes(line: MendedLine, made: StripProvenance, source: StripSource): string[] {
  const px = (value: number) => (value * source.photoScale).toFixed(1);
  const stretches = (list: readonly (readonly [number, number])[]) =>
    list.map(([from, to]) => `${from.toFixed(1)} to ${to.toFixed(1)}`).join(', ');
  const gaps = gapsOf(line.depthMm);
  const drawn = drawnStretches(line);
  const unsure = unsureStretches(line);
  return [
    `${BEGINS} ${source.photo}`,
    `photo sha256 ${source.sha256}`,
    `chart corners on the upright photo, px, clockwise from the chart's top left: ${made.cornersPx
      .map(([x, y]) => `(${px(x)}, ${px(y)})`)
      .join(' ')}`,
    source.cornersByHand
      ? 'corners set by hand'
      : `corners found by the ${made.cornersFrom}, sure ${made.cornersSure.toFixed(2)}`,
    `depth ${made.depthMm[0].toFixed(2)} mm at the left edge to ${made.depthMm[1].toFixed(2)} mm at the right, ${
      SCALE_FROM[made.scaleFrom]
    }`,
    `resistance ${made.resistance[0]} % at the bottom edge to ${made.resistance[1]} % at the top`,
    ...made.steps,
    ...(gaps.length > 0 ? [`left out, not invented, mm: ${stretches(gaps)}`] : []),
    ...(unsure.length > 0 ? [`read but unsure, mm: ${stretches(unsure)}`] : []),
    ...(drawn.length > 0 ? [`drawn by hand, mm: ${stretches(drawn)}`] : []),
    `Standfast engine ${source.engineVersion}`,
  ];
}

/** The notes at the head of a table, as they are told to a person; none where it was not read from a strip. */
export function stripNotesIn(table: Uint8Array): string[] {
  const notes: string[] = [];
  for (const line of new TextDecoder().decode(table).split(/\r?\n/)) {
    if (!line.startsWith('#')) break;
    notes.push(line.replace(/^#\s*/, ''));
  }
  if (!notes[0]?.startsWith(BEGINS)) return [];
  return notes.map((note) => `${note.charAt(0).toUpperCase()}${note.slice(1)}`);
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
