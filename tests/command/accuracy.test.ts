/** Predictions held against felled sections: one case in words and figures, many summed up. */
import { mkdirSync, readFileSync, writeFileSync } from 'node:fs';
import path from 'node:path';
import { zipOfBag } from '@standfast/casefile';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { FELLED_DEMO } from '../simulated/demo/felledDemo.ts';
import { bagOf, caseJson, soundRows, traceText, writeCase } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

const DRAWS = ['--draws', '200'];
const traces = { 'traces/d1.csv': traceText(soundRows(80)) };

/** A small case with one drilling, felled and traced as given. */
function felledCase(felled?: Record<string, unknown>) {
  const json = caseJson();
  json.sections[0]!.drillings.splice(1);
  return {
    ...json,
    sections: json.sections.map((section) => ({ ...section, ...(felled ? { felled } : {}) })),
  };
}

const HOLLOW = Array.from({ length: 36 }, (_, i) => [
  200 * Math.sin((i * Math.PI) / 18),
  200 * Math.cos((i * Math.PI) / 18),
]);

const folder = temporaryFolder();
const documentOf = (...name: string[]) =>
  JSON.parse(standfast(['assess', folder.at(...name), '--json', ...DRAWS]).out);
beforeAll(() => {
  buildCommand();
  expect(standfast(['demo', folder.at('demo')]).status).toBe(0);
  const file = folder.at('demo', 'case.json');
  const json = JSON.parse(readFileSync(file, 'utf8'));
  json.sections[0].felled = FELLED_DEMO.felled;
  writeFileSync(file, JSON.stringify(json));
  writeCase(folder.at('cases', 'a'), { ...felledCase({ unsound: [HOLLOW] }), invented: true }, traces);
  writeCase(folder.at('cases', 'park', 'sound'), felledCase({ unsound: [] }), traces);
  writeFileSync(folder.at('cases', 'hollow.zip'), zipOfBag(bagOf(felledCase({ unsound: [HOLLOW] }), traces)));
  writeCase(folder.at('cases', 'standing'), felledCase(), traces);
}, 120_000);
afterAll(() => folder.remove());

describe('assess of a felled case', () => {
  it('says whether the truth was inside, and how the walls stood', () => {
    const { status, out, err } = standfast(['assess', folder.at('demo'), ...DRAWS]);
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/Against the felled section/);
    expect(out).toMatch(/Strength left in truth: \d+ % .* inside the interval/s);
    expect(out).toMatch(/Incipient wood is counted at 45 % of its strength/);
    expect(out).toMatch(/d5 +\d+ +\d+ +-?\d+/);
  });

  it('gives it in the document, and leaves it out where nothing was felled', () => {
    const { felled } = documentOf('demo').sections[0];
    expect(felled.remaining).toHaveLength(36);
    expect(felled.remaining[0]).toMatchObject({
      directionDeg: 0,
      truth: expect.any(Number),
      inside: expect.any(Boolean),
    });
    expect(felled.walls).toHaveLength(7);
    expect(documentOf('cases', 'standing').sections[0]).not.toHaveProperty('felled');
  });

  it('names the polygon that cannot be', () => {
    writeCase(
      folder.at('bad'),
      felledCase({
        unsound: [
          [
            [0, 0],
            [10, 10],
          ],
        ],
      }),
      traces,
    );
    const ran = standfast(['assess', folder.at('bad'), '--json']);
    expect(ran).toMatchObject({ status: 1, out: '' });
    expect(ran.err).toMatch(/case\.json: sections\[0\]\.felled\.unsound\[0\]: .*at least three/);
  });
});

describe('accuracy', () => {
  const run = (...more: string[]) => standfast(['accuracy', folder.at('cases'), ...DRAWS, ...more]);

  it('sums up the felled cases, and says plainly that three mean little', () => {
    const { status, out, err } = run('--csv', folder.at('felled.csv'));
    expect({ status, err }).toEqual({ status: 0, err: '' });
    expect(out).toMatch(/3 felled sections of 3 cases; 1 case has none; 0 failed/);
    expect(out).toMatch(/3 sections mean little/);
    expect(out).toMatch(/1 of the sections is from cases marked as invented/);
    expect(out).toMatch(/where the prediction was lowest +\d of 3 +\d+ % +\d+ to \d+ %/);
    expect(out).not.toMatch(/NaN|undefined/);
    const rows = readFileSync(folder.at('felled.csv'), 'utf8').trim().split('\r\n');
    expect(rows.map((row) => row.split(',')[0])).toEqual([
      'case',
      'a',
      'hollow.zip',
      path.join('park', 'sound'),
    ]);
  });

  it('prints one document whose figures agree with each other and with assess', () => {
    const { summary, sections, standing, failed } = JSON.parse(run('--json').out);
    expect({ standing, failed }).toEqual({ standing: 1, failed: [] });
    expect(sections).toHaveLength(3);
    const inside = sections.filter((one: { weakest: { inside: boolean } }) => one.weakest.inside).length;
    expect(summary.weakest).toMatchObject({ held: inside, of: 3 });
    expect(summary.weakest.low).toBeLessThan(summary.weakest.share);
    expect(sections[0].weakest).toEqual(documentOf('cases', 'a').sections[0].felled.weakest);
    // A needle of 65 mm of wood cannot know of a hollow 105 mm in; the truth of the round one is 1 − (200/305)⁴.
    expect(sections[1].weakest.truth).toBeCloseTo(1 - (200 / 305) ** 4, 1);
    expect(sections[1].walls).toMatchObject([{ finding: 'none', readAtLeast: true }]);
  });

  it('goes on past a case that fails, and says so', () => {
    writeCase(folder.at('some', 'a'), felledCase({ unsound: [] }), traces);
    writeCase(folder.at('some', 'b'), { ...felledCase({ unsound: [] }), version: 99 }, traces);
    const ran = standfast(['accuracy', folder.at('some'), ...DRAWS]);
    expect(ran.status).toBe(1);
    expect(ran.out).toMatch(/1 felled section of 1 case; 0 cases have none; 1 failed/);
    expect(ran.out).toMatch(/! b: .*version/);
  });

  it('refuses a folder without a felled case, and a table inside a case', () => {
    mkdirSync(folder.at('none'));
    writeCase(folder.at('none', 'a'), felledCase(), traces);
    const ran = standfast(['accuracy', folder.at('none'), '--json']);
    expect(ran).toMatchObject({ status: 1, out: '' });
    expect(ran.err).toMatch(/none of the one case below this folder has a felled section/);
    const inside = run('--csv', folder.at('cases', 'standing', 'out.csv'));
    expect(inside).toMatchObject({ status: 1, out: '' });
    expect(inside.err).toMatch(/lies in the case standing: .*--csv/);
  });
});

it('assess begins anew where nothing was drilled', () => {
  const json = felledCase();
  json.sections[0]!.drillings.splice(0);
  writeCase(folder.at('undrilled'), { ...json, signs: [{ kind: 'bracket', azimuthDeg: 200 }] }, {});
  const { status, out, err } = standfast(['assess', folder.at('undrilled'), ...DRAWS]);
  expect({ status, err }).toEqual({ status: 0, err: '' });
  expect(out).toMatch(/Where to begin at section s1/);
  expect(out).toMatch(/1, 2, 3, 4, 5: For even coverage/);
  expect(out).toMatch(/200° \(S\)/);
  const document = JSON.parse(standfast(['assess', folder.at('undrilled'), '--json', ...DRAWS]).out);
  const first = document.firstDrillings[0].drillings[0];
  expect(document.nextDrilling).toMatchObject({ sectionId: 's1', azimuthDeg: first.azimuthDeg });
});
