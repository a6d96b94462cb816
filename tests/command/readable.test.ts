/** What a person reads: words, intervals, a drawing that keeps to the terminal. */
import { spawn } from 'node:child_process';
import { readFileSync, writeFileSync } from 'node:fs';
import { fileURLToPath } from 'node:url';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { soundRows, traceText } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const folder = temporaryFolder();
beforeAll(() => {
  buildCommand();
  expect(standfast(['demo', folder.at('demo')]).status).toBe(0);
  writeFileSync(folder.at('trace.csv'), traceText(soundRows()));
}, 120_000);
afterAll(() => folder.remove());

const widest = (text: string) => Math.max(...text.split('\n').map((line) => [...line].length));

it('zones draws the trace with its zones, within the width', () => {
  const { status, out, err } = standfast(['zones', folder.at('trace.csv')], { env: { COLUMNS: '70' } });
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(/[\u2800-\u28ff]/);
  expect(out).toMatch(/█+/);
  expect(out).toMatch(/Residual wall: at least \d+ \(\d+ to \d+\) mm/);
  const drawing = out.split('\n').filter((line) => /[\u2800-\u28ff]/.test(line));
  expect(widest(drawing.join('\n'))).toBeLessThanOrEqual(70);
});

it('keeps to ASCII where the locale is not UTF-8', () => {
  const { out } = standfast(['zones', folder.at('trace.csv')], { env: { LANG: 'C', LC_ALL: 'C' } });
  // biome-ignore lint/suspicious/noControlCharactersInRegex: the range of ASCII
  expect(out).toMatch(/^[\x00-\x7f]*$/);
});

it('assess gives the answer first, every figure with its interval, and what to mind', () => {
  const { status, out, err } = standfast(['assess', folder.at('demo')]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(
    /Lowest safety factor \d+\.\d+ \(\d+\.\d+ to \d+\.\d+\): (breakage|uprooting).*with the wind toward/s,
  );
  expect(out).toMatch(/Strength left: \d+ \(\d+ to \d+\) %/);
  expect(out.indexOf('Safety')).toBeLessThan(out.indexOf('Section'));
  expect(out).toMatch(/Next drilling/);
  expect(out).not.toMatch(/undefined|NaN|\[object/);
});

it('says how a table that is not the standard one was read', () => {
  const rows = soundRows().map((row) => row.replace(',', ';').replaceAll('.', ','));
  writeFileSync(folder.at('other.csv'), `Tiefe [mm];Widerstand [%]\n${rows.join('\n')}\n`);
  const { status, out, err } = standfast(['zones', folder.at('other.csv'), '--json']);
  expect(status, err).toBe(0);
  expect(err).toMatch(/semicolons.*decimal sign ","/);
  const standard = standfast(['zones', folder.at('trace.csv'), '--json']).out;
  expect(JSON.parse(out)).toEqual(JSON.parse(standard));
});

it('asks which drilling is meant when a table holds several', () => {
  const rows = soundRows().map((row) => `${row},${row.split(',')[1]}`);
  writeFileSync(folder.at('two.csv'), `depth mm,north %,south %\n${rows.join('\n')}\n`);
  const asked = standfast(['zones', folder.at('two.csv'), '--json']);
  expect(asked).toMatchObject({ status: 1, out: '' });
  expect(asked.err).toMatch(/2 drillings.*--drilling/);
});

it('ends quietly when its reader has seen enough', async () => {
  const launcher = fileURLToPath(new URL('../../apps/command/bin/standfast.mjs', import.meta.url));
  const child = spawn(process.execPath, [launcher, 'assess', folder.at('demo'), '--json']);
  let err = '';
  child.stderr.on('data', (text) => {
    err += text;
  });
  child.stdout.once('data', () => child.stdout.destroy());
  const status = await new Promise((resolve) => child.on('close', resolve));
  expect({ status, err }).toEqual({ status: 0, err: '' });
});

it('demo writes a case that says it is invented', () => {
  expect(readFileSync(folder.at('demo', 'case.json'), 'utf8')).toMatch(/invented/i);
});
