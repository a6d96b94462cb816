/** Keeps two set-ups of the same clone (a test run beside a start, say) from writing over each other. */
import { createHash } from 'node:crypto';
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import os from 'node:os';
import path from 'node:path';
import { setTimeout as sleep } from 'node:timers/promises';
import { root } from './root.mjs';
import { Stop, say } from './say.mjs';

const PATIENCE_MS = 10 * 60_000;

/**
 * @template T
 * @param {() => Promise<T>} work
 * @returns {Promise<T>}
 */
export async function oneAtATime(work) {
  const lock = path.join(
    os.tmpdir(),
    `standfast-setup-${createHash('sha256').update(root).digest('hex').slice(0, 16)}`,
  );
  const holder = path.join(lock, 'process');
  const until = Date.now() + PATIENCE_MS;
  let told = false;
  for (;;) {
    try {
      mkdirSync(lock);
      writeFileSync(holder, String(process.pid));
      break;
    } catch (error) {
      if (/** @type {NodeJS.ErrnoException} */ (error).code !== 'EEXIST') throw error;
    }
    if (!(await isHeld(holder))) {
      rmSync(lock, { recursive: true, force: true });
      continue;
    }
    if (Date.now() > until)
      throw new Stop(`Another set-up still holds ${lock}. Remove it if none is running.`);
    if (!told) say('Waiting for another set-up of this clone to finish…');
    told = true;
    await sleep(200);
  }
  try {
    return await work();
  } finally {
    rmSync(lock, { recursive: true, force: true });
  }
}

/** @param {string} holder */
async function isHeld(holder) {
  let pid = readPid(holder);
  if (!pid) {
    // The holder may be between making the folder and writing its number.
    await sleep(200);
    pid = readPid(holder);
  }
  if (!pid) return false;
  try {
    process.kill(pid, 0);
    return true;
  } catch (error) {
    return /** @type {NodeJS.ErrnoException} */ (error).code === 'EPERM';
  }
}

/** @param {string} holder */
function readPid(holder) {
  try {
    return Number(readFileSync(holder, 'utf8')) || 0;
  } catch {
    return 0;
  }
}
