/** Ten million rows are refused with a reason, in seconds and in modest memory, or read; never a crash. */
import { spawnSync } from 'node:child_process';
import { closeSync, openSync, writeSync } from 'node:fs';
import path from 'node:path';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { buildCommand, temporaryFolder } from './standfast.ts';

const ROWS = 10_000_000;
const ROWS_AT_A_TIME = 100_000;
const launcher = fileURLToPath(new URL('../../apps/command/bin/standfast.mjs', import.meta.url));

const folder = temporaryFolder();
beforeAll(buildCommand, 120_000);
afterAll(() => folder.remove());

it('a trace of ten million rows, a hundred metres long, is refused as too long for a needle', () => {
  const file = folder.at('huge.csv');
  const to = openSync(file, 'w');
  writeSync(to, 'depth_mm,resistance\n');
  for (let row = 0; row < ROWS; row += ROWS_AT_A_TIME) {
    let text = '';
    for (let i = row; i < row + ROWS_AT_A_TIME; i++) text += `${(i / 100).toFixed(2)},${20 + (i % 7)}\n`;
    writeSync(to, text);
  }
  closeSync(to);

  // The whole table is some 120 MB of text; four times that must do.
  const ran = spawnSync(
    process.execPath,
    ['--max-old-space-size=512', launcher, 'zones', path.resolve(file), '--json'],
    { encoding: 'utf8' },
  );
  expect(ran.stdout).toBe('');
  expect(ran.status).toBe(1);
  expect(ran.stderr).toMatch(/huge\.csv/);
  expect(ran.stderr).toMatch(/99999|100000|1e\+5|longer than any needle|too long/);
  expect(ran.stderr).not.toMatch(/heap out of memory|\n\s+at /);
});
