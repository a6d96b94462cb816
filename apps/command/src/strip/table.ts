/** A strip's line as a trace table. */
import type { StripLine } from '@standfast/engine';

/** Finer than any pen draws. */
const DEPTH_DIGITS = 4;
const LEVEL_DIGITS = 3;
const CONFIDENCE_DIGITS = 2;

/**
 * The table `depth_mm,resistance,confidence`; rows that could not be read are not in it.
 * @param comments lines put before the header
 */
export function stripTable(line: StripLine, comments: readonly string[]): Uint8Array {
  const rows = comments.map((comment) => `# ${comment.replace(/[\r\n]+/g, ' ')}`);
  rows.push('depth_mm,resistance,confidence');
  for (let i = 0; i < line.depthMm.length; i++) {
    const depth = Number(line.depthMm[i]!.toFixed(DEPTH_DIGITS));
    const level = Number(line.resistancePct[i]!.toFixed(LEVEL_DIGITS));
    rows.push(`${depth},${level},${line.confidence[i]!.toFixed(CONFIDENCE_DIGITS)}`);
  }
  return new TextEncoder().encode(`${rows.join('\n')}\n`);
}
