import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import type { CaseBag } from './bag/bag.ts';
import type { CaseFaults } from './caseFaults.ts';
import { inspectCase, openCase } from './openCase.ts';
import { saveCase } from './saveCase.ts';

const encode = (text: string) => new TextEncoder().encode(text);
const ROWS = Array.from({ length: 60 }, (_, i) => `${i * 0.5},${30 + (i % 7)}`);
const TRACE = encode(`depth_mm,resistance\n${ROWS.join('\n')}\n`);

const CASE = {
  format: 'standfast-case',
  version: 1,
  tree: {
    species: 'Tilia cordata',
    stemDiameterMm: 900,
    heightM: 24,
    leanDeg: 0,
    leanTowardDeg: 0,
    crown: { baseHeightM: 5, widthM: 16, shape: 'ellipse', inLeaf: true },
  },
  site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'II' },
  sections: [
    {
      id: 's1',
      heightM: 0.5,
      outline: { kind: 'circle', diameterMm: 990 },
      barkMm: 20,
      drillings: [
        { id: 'd1', azimuthDeg: 0, trace: 'traces/d1.csv' },
        { id: 'd2', azimuthDeg: 90, trace: 'traces/d2.csv' },
      ],
    },
  ],
};

function bagWith(json: object = CASE, files: Record<string, Uint8Array> = {}): CaseBag {
  return new Map([
    ['case.json', encode(JSON.stringify(json))],
    ['traces/d1.csv', TRACE],
    ['traces/d2.csv', TRACE],
    ...Object.entries(files),
  ]);
}

function messageOf(bag: CaseBag): string {
  try {
    openCase(bag);
  } catch (error) {
    expect(error).toBeInstanceOf(InputFault);
    return (error as InputFault).message;
  }
  throw new Error('expected a fault');
}

describe('openCase', () => {
  it('opens a sound case without a word', () => {
    const { caseFile, engineInput, notices } = openCase(bagWith());
    expect(caseFile).toMatchObject(CASE);
    expect(engineInput.sections[0]?.drillings.map(({ id, trace }) => [id, trace.depthMm.length])).toEqual([
      ['d1', 60],
      ['d2', 60],
    ]);
    expect(notices).toEqual([]);
  });

  it('says what files there are when case.json is missing', () => {
    expect(messageOf(new Map([['notes.txt', encode('x')]]))).toBe(
      'case.json: there is no case.json here: there are notes.txt; open a case folder or its zip',
    );
    expect(
      messageOf(
        new Map([
          ['T1/case.json', encode('{}')],
          ['T2/case.json', encode('{}')],
        ]),
      ),
    ).toBe('case.json: there is no case.json here: it lies in T1/case.json, T2/case.json: open that folder');
    expect(messageOf(new Map())).toContain('there are no files');
  });

  it('names the drilling, the path and the files there are when a trace is missing', () => {
    const bag = bagWith();
    bag.delete('traces/d2.csv');
    expect(messageOf(bag)).toBe(
      'case.json: sections[0].drillings[1].trace: drilling d2 names the trace traces/d2.csv, which is not in the case; there are traces/d1.csv: correct the name or add the file',
    );
  });

  it('refuses a trace path that leaves the case', () => {
    const json = structuredClone(CASE);
    json.sections[0]!.drillings[0]!.trace = '../../etc/passwd';
    expect(messageOf(bagWith(json))).toBe(
      'case.json: sections[0].drillings[0].trace: the path climbs out of the case (".."): keep the file inside the case folder ("../../etc/passwd")',
    );
    json.sections[0]!.drillings[0]!.trace = 'traces\\d1.csv';
    expect(messageOf(bagWith(json))).toContain('write it with forward slashes, "traces/d1.csv"');
  });

  it('takes a file that differs in capitals, and says so', () => {
    const bag = bagWith();
    bag.delete('traces/d1.csv');
    bag.set('Traces/D1.CSV', TRACE);
    const { notices, engineInput } = openCase(bag);
    expect(engineInput.sections[0]?.drillings).toHaveLength(2);
    expect(notices).toEqual([
      {
        severity: 'note',
        where: 'sections.s1.drillings.d1',
        text: 'names the trace traces/d1.csv; the file is called Traces/D1.CSV and was taken.',
      },
    ]);
  });

  it.each([
    [
      'depth going backwards',
      'depth_mm,resistance\n0,1\n2,5\n1,5\n',
      'traces/d1.csv: row 4: depth goes back from 2 to 1 mm',
    ],
    ['NaN', 'depth_mm,resistance\n0,1\n1,NaN\n', 'traces/d1.csv: row 3: resistance is NaN'],
    ['an empty table', 'depth_mm,resistance\n', 'traces/d1.csv: the table has a header but no rows'],
    ['an empty file', '', 'traces/d1.csv: the file is empty'],
    [
      'a trace of three rows',
      'depth_mm,resistance\n0,1\n1,2\n2,3\n',
      'traces/d1.csv: The trace has 3 readings',
    ],
    [
      'another table',
      'Tiefe;Wert\n0,1;5\n',
      'traces/d1.csv: row 1: the header should be depth_mm,resistance',
    ],
  ])('refuses %s', (_, text, message) => {
    expect(messageOf(bagWith(CASE, { 'traces/d1.csv': encode(text) }))).toContain(message);
  });

  it('gives the faults of the case and of its traces together', () => {
    const json = { ...CASE, tree: { ...CASE.tree, heightM: 300 } };
    const bag = bagWith(json, { 'traces/d1.csv': encode('depth_mm,resistance\n0,x\n') });
    bag.delete('traces/d2.csv');
    try {
      openCase(bag);
      expect.unreachable();
    } catch (error) {
      expect((error as CaseFaults).faults.map(({ where }) => where)).toEqual([
        'case.json: tree.heightM',
        'traces/d1.csv: row 2',
        'case.json: sections[0].drillings[1].trace',
      ]);
    }
  });

  it('takes a single drilling and a species it does not know', () => {
    const json = structuredClone(CASE);
    json.sections[0]!.drillings.pop();
    json.tree.species = 'Arbor incognita';
    const { engineInput } = openCase(bagWith(json));
    expect(engineInput.sections[0]?.drillings).toHaveLength(1);
    expect(engineInput.tree.species).toBe('Arbor incognita');
  });

  it('tells of photos that are missing and traces that nothing names', () => {
    const json = { ...CASE, signs: [{ kind: 'crack', photo: 'photos/1.jpg' }] };
    const { notices } = openCase(bagWith(json, { 'traces/old.csv': TRACE }));
    expect(notices.map(({ where, text }) => `${where}: ${text}`)).toEqual([
      'signs[0]: names the photo photos/1.jpg, which is not in the case.',
      'traces: no drilling names traces/old.csv.',
    ]);
    expect(openCase(bagWith(json, { 'photos/1.jpg': encode('x') })).notices).toEqual([]);
  });

  it('refuses a case of another version, an assessment, and no case', () => {
    expect(messageOf(bagWith({ ...CASE, version: 2 }))).toContain(
      'version 2 is newer than this program reads',
    );
    expect(messageOf(bagWith({ ...CASE, format: 'standfast-assessment' }))).toContain(
      'this is an assessment',
    );
    expect(messageOf(new Map([['case.json', encode('[]')]]))).toContain('this is not a case file');
  });
});

describe('inspectCase', () => {
  it('gives what can be read beside the faults, so that a person can mend them', () => {
    const bag = bagWith({ ...CASE, site: undefined });
    bag.delete('traces/d2.csv');
    const { caseFile, traces, engineInput, faults } = inspectCase(bag);
    expect(caseFile?.tree.heightM).toBe(24);
    expect([...traces.keys()]).toEqual(['traces/d1.csv']);
    expect(engineInput).toBeNull();
    expect(faults.map(({ where }) => where)).toEqual([
      'case.json: sections[0].drillings[1].trace',
      'case.json: site',
    ]);
  });

  it('gives no case when case.json itself cannot be read', () => {
    const { caseFile, faults } = inspectCase(new Map([['case.json', encode('{')]]));
    expect(caseFile).toBeNull();
    expect(faults).toHaveLength(1);
  });
});

describe('saveCase', () => {
  it('what is saved opens as the same case, and other files stay', () => {
    const bag = bagWith({ ...CASE, mine: { kept: [1, 'two'] } }, { 'notes/x.txt': encode('x') });
    const { caseFile } = openCase(bag);
    const saved = saveCase(caseFile, bag);
    expect(openCase(saved).caseFile).toEqual(caseFile);
    expect(JSON.parse(new TextDecoder().decode(saved.get('case.json')))).toMatchObject({
      mine: { kept: [1, 'two'] },
    });
    expect(saved.get('notes/x.txt')).toBe(bag.get('notes/x.txt'));
    expect(saveCase(openCase(saved).caseFile, saved)).toEqual(saved);
    expect(bag.get('case.json')).not.toBe(saved.get('case.json'));
  });

  it('leaves one case.json, whatever its capitals were', () => {
    const { caseFile } = openCase(bagWith());
    const saved = saveCase(caseFile, new Map([['Case.JSON', encode('{}')]]));
    expect([...saved.keys()]).toEqual(['case.json']);
  });
});
