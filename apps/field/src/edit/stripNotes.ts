/** How a strip's line came about, as the notes of the table that the case keeps, and where its photo is kept. */
import { gapsOf, shareRead, stripNotes, unsureStretches } from '@standfast/casefile';
import type { StripProvenance } from '@standfast/engine';
import { drawnStretches, type MendedLine } from './stripLine.ts';

export interface StripSource {
  /** Path of the photo in the case, and the SHA-256 of its bytes. */
  photo: string;
  sha256: string;
  /** Pixels of the kept photo along one of the picture the line was read on. */
  photoScale: number;
  engineVersion: string;
}

/** How the line came about, one line each: enough to read it again. */
export function mendedNotes(line: MendedLine, made: StripProvenance, source: StripSource): string[] {
  const leftOutMm = gapsOf(line.depthMm);
  return stripNotes(
    {
      photo: source.photo,
      sha256: source.sha256,
      cornersPx: made.cornersPx.map(([x, y]) => [x * source.photoScale, y * source.photoScale]),
      cornersFound: made.cornersFrom === 'given' ? null : { from: made.cornersFrom, sure: made.cornersSure },
      depthMm: made.depthMm,
      resistance: made.resistance,
      scaleFrom: made.scaleFrom,
      shareRead: shareRead(line.depthMm, leftOutMm, made.depthMm),
      leftOutMm,
      unsureMm: unsureStretches(line),
      drawnMm: drawnStretches(line),
    },
    made.steps,
    source.engineVersion,
  );
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
