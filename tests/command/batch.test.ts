/** Many cases into one table: each a row, failures too; stopped and resumed without doing anything twice. */
import { readFileSync, writeFileSync } from 'node:fs';
import { zipOfBag } from '@standfast/casefile';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { bagOf, caseJson as fullCase, soundRows, traceText, writeCase as writeFull } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

beforeAll(buildCommand, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

/** One short drilling, so that assessing many takes no time. */
function caseJson() {
  const json = fullCase();
  json.sections[0]!.drillings.splice(1);
  return json;
}
const traces = { 'traces/d1.csv': traceText(soundRows(80)) };
const writeCase = (place: string, json: unknown) => writeFull(place, json, traces);

const OPTIONS = ['--draws', '200', '--jobs', '2'];
const table = () =>
  readFileSync(folder.at('out.csv'), 'utf8')
    .trim()
    .split('\r\n')
    .map((line) => line.split(','));
const run = () => standfast(['batch', folder.at('cases'), '--out', folder.at('out.csv'), ...OPTIONS]);

function threeCases(): void {
  writeCase(folder.at('cases', 'park', 'a'), caseJson());
  writeFileSync(folder.at('cases', 'b.zip'), zipOfBag(bagOf(caseJson(), traces)));
  writeCase(folder.at('cases', 'c'), { ...caseJson(), version: 99 });
}

describe('batch', () => {
  it('gives every case a row, a failed one too, and says that one failed', () => {
    threeCases();
    const ran = run();
    expect(ran.status).toBe(1);
    expect(ran.out).toMatch(/3 cases: 2 assessed, 0 unchanged since an earlier run, 1 failed/);
    const [head, ...rows] = table();
    const column = (name: string) => rows.map((row) => row[head!.indexOf(name)]);
    expect(column('case')).toEqual(['b.zip', 'c', 'park/a']);
    expect(column('status')).toEqual(['assessed', 'failed', 'assessed']);
    expect(column('message')[1]).toMatch(/version/);
    // A folder and a zip of the same files are the same case.
    expect(column('contentSha256')[0]).toBe(column('contentSha256')[2]);
    expect(Number(column('safetyP50')[0])).toBeGreaterThan(0);
  });

  it('does not assess again what has not changed, and does what has', () => {
    threeCases();
    run();
    const first = readFileSync(folder.at('out.csv'), 'utf8');
    const mended = caseJson();
    mended.tree.heightM = 12;
    writeCase(folder.at('cases', 'park', 'a'), mended);
    writeCase(folder.at('cases', 'c'), caseJson());
    const ran = run();
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/3 cases: 2 assessed, 1 unchanged/);
    const lines = readFileSync(folder.at('out.csv'), 'utf8').split('\r\n');
    expect(lines[1]).toBe(first.split('\r\n')[1]);
    expect(lines[3]).not.toBe(first.split('\r\n')[3]);
  });

  it('goes on from a table that was cut off in the middle of a row', () => {
    threeCases();
    run();
    const whole = readFileSync(folder.at('out.csv'), 'utf8');
    writeFileSync(folder.at('out.csv'), whole.slice(0, whole.lastIndexOf('park/a') + 30));
    expect(run().out).toMatch(/1 assessed, 1 unchanged/);
    expect(readFileSync(folder.at('out.csv'), 'utf8')).toBe(whole);
  });

  it('does not overwrite a file that is no table of its own', () => {
    threeCases();
    writeFileSync(folder.at('out.csv'), 'my,own\r\nnumbers,1\r\n');
    const ran = run();
    expect(ran).toMatchObject({ status: 1, out: '' });
    expect(ran.err).toMatch(/not overwritten/);
    expect(readFileSync(folder.at('out.csv'), 'utf8')).toBe('my,own\r\nnumbers,1\r\n');
  });

  it('refuses a folder without cases, a file, and a table inside a case', () => {
    expect(standfast(['batch', folder.at(), '--out', folder.at('out.csv')]).err).toMatch(/no case/);
    writeCase(folder.at('case'), caseJson());
    expect(standfast(['batch', folder.at('case', 'case.json')])).toMatchObject({ status: 1, out: '' });
    const inside = standfast(['batch', folder.at('case'), '--out', folder.at('case', 'out.csv')]);
    expect(inside).toMatchObject({ status: 1, out: '' });
    expect(inside.err).toMatch(/lies in the case/);
  });
});
