/** A line read from a photographed strip, as a trace table. */

/** Finer than any pen draws. */
const DEPTH_DIGITS = 4;
const LEVEL_DIGITS = 3;
const CONFIDENCE_DIGITS = 2;

/** What of a strip's line goes into its table: arrays of equal length. */
export interface StripSamples {
  /** Depth, mm, ascending. */
  depthMm: Float64Array;
  /** Level, percent of full scale. */
  resistancePct: Float64Array;
  /** How sure each sample is, 0 to 1. */
  confidence: Float64Array;
}

/**
 * The table `depth_mm,resistance,confidence` as UTF-8 bytes; rows that could not be read are not in it.
 *
 * @param comments lines put before the header, each after `# `; line breaks inside them are turned into spaces.
 */
export function writeStripTable(line: StripSamples, comments: readonly string[]): Uint8Array {
  const rows = comments.map((comment) => `# ${comment.replace(/[\r\n]+/g, ' ')}`);
  rows.push('depth_mm,resistance,confidence');
  for (let i = 0; i < line.depthMm.length; i++) {
    const depth = Number(line.depthMm[i]!.toFixed(DEPTH_DIGITS));
    const level = Number(line.resistancePct[i]!.toFixed(LEVEL_DIGITS));
    rows.push(`${depth},${level},${line.confidence[i]!.toFixed(CONFIDENCE_DIGITS)}`);
  }
  return new TextEncoder().encode(`${rows.join('\n')}\n`);
}
