/**
 * Writes a trace as the table that `readTraceTable` reads. Numbers are written in full, so reading them back gives
 * the same trace to the last bit.
 */
import type { Trace } from '@standfast/engine';
import { TRACE_HEADER } from './readTraceTable.ts';

/** Rows joined at a time, so that a long trace does not become one huge array of strings. */
const ROWS_AT_A_TIME = 50_000;

/**
 * The table as UTF-8 bytes.
 *
 * @param comments lines put before the header, each after `# `; line breaks inside them are turned into spaces.
 */
export function writeTraceTable(trace: Trace, comments: readonly string[] = []): Uint8Array {
  const { depthMm, resistancePct, feed } = trace;
  const encoder = new TextEncoder();
  const head = comments.map((comment) => `# ${comment.replace(/[\r\n]+/g, ' ')}\n`).join('');
  const parts = [encoder.encode(`${head}${TRACE_HEADER}${feed ? ',feed' : ''}\n`)];
  for (let from = 0; from < depthMm.length; from += ROWS_AT_A_TIME) {
    const to = Math.min(from + ROWS_AT_A_TIME, depthMm.length);
    let text = '';
    for (let i = from; i < to; i++) {
      text += feed ? `${depthMm[i]},${resistancePct[i]},${feed[i]}\n` : `${depthMm[i]},${resistancePct[i]}\n`;
    }
    parts.push(encoder.encode(text));
  }
  const bytes = new Uint8Array(parts.reduce((sum, part) => sum + part.length, 0));
  let at = 0;
  for (const part of parts) {
    bytes.set(part, at);
    at += part.length;
  }
  return bytes;
}
