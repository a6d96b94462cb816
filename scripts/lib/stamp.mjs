/** What the last set-up did, kept in `.setup-stamp` so that the next one does only what has changed. */
import { readFileSync, writeFileSync } from 'node:fs';
import { fromRoot } from './root.mjs';

const file = fromRoot('.setup-stamp');

/** @returns {Record<string, string>} fingerprint of the inputs by step */
export function readStamp() {
  try {
    return JSON.parse(readFileSync(file, 'utf8'));
  } catch {
    return {};
  }
}

/**
 * @param {string} step
 * @param {string} fingerprint
 */
export function markDone(step, fingerprint) {
  writeFileSync(file, `${JSON.stringify({ ...readStamp(), [step]: fingerprint }, null, 2)}\n`);
}
