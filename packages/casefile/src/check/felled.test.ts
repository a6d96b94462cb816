import { describe, expect, it } from 'vitest';
import { CaseFaults } from '../caseFaults.ts';
import { engineInput } from '../engineInput.ts';
import { caseText } from '../saveCase.ts';
import { parseCase } from '../schema/parseCase.ts';
import { checkCase } from './checkCase.ts';

const SQUARE = [
  [-50, -50],
  [50, -50],
  [50, 50],
  [-50, 50],
];

function parsed(felled: unknown) {
  return parseCase({
    format: 'standfast-case',
    version: 1,
    tree: {
      species: 'Tilia cordata',
      stemDiameterMm: 600,
      heightM: 18,
      crown: { baseHeightM: 4, widthM: 9 },
    },
    site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' },
    sections: [{ id: 's1', heightM: 0.4, outline: { kind: 'circle', diameterMm: 640 }, barkMm: 15, felled }],
  });
}

const faultsOf = (felled: unknown) => checkCase(parsed(felled).caseFile).faults.map(({ message }) => message);

function refusal(felled: unknown): string {
  try {
    parsed(felled);
  } catch (error) {
    if (error instanceof CaseFaults || error instanceof Error) return error.message;
  }
  throw new Error('it was not refused');
}

describe('a felled section in the case file', () => {
  it('reaches the engine as it was traced, and is kept when saved', () => {
    const felled = {
      unsound: [SQUARE],
      incipient: [],
      source: 'traced from a photo',
      photo: 'photos/cut.jpg',
    };
    const { caseFile, notices } = parsed(felled);
    expect(notices).toEqual([]);
    expect(engineInput(caseFile, new Map()).input.sections[0]!.felled).toEqual({
      unsound: [SQUARE],
      source: 'traced from a photo',
    });
    expect(parseCase(caseText(caseFile)).caseFile).toEqual(caseFile);
  });

  it('may be all sound, but must say so', () => {
    expect(faultsOf({ unsound: [] })).toEqual([]);
    expect(refusal({ note: 'felled in March' })).toMatch(
      /felled\.unsound: is missing: write a list of polygons/,
    );
    expect(refusal({ unsound: [[[1, '2']]] })).toMatch(/felled\.unsound\[0\]\[0\]\[1\]: should be a number/);
  });

  it('is refused where a polygon cannot be, naming it', () => {
    const bow = [SQUARE[0], SQUARE[2], SQUARE[1], SQUARE[3]];
    expect(faultsOf({ unsound: [SQUARE, bow] })[0]).toMatch(
      /^case\.json: sections\[0\]\.felled\.unsound\[1\]: .*crosses/,
    );
    expect(faultsOf({ unsound: [], incipient: [SQUARE.slice(0, 2)] })[0]).toMatch(/felled\.incipient\[0\]/);
    expect(faultsOf({ unsound: [SQUARE.map(([x, y]) => [x! + 5000, y])] })[0]).toMatch(/outside the outline/);
    expect(faultsOf({ unsound: [], outline: { kind: 'circle', diameterMm: 64 } })).toEqual([]);
  });

  it('is questioned where its outline is not that of the standing section', () => {
    const { notices } = checkCase(
      parsed({ unsound: [], outline: { kind: 'circle', diameterMm: 64 } }).caseFile,
    );
    expect(notices).toMatchObject([
      {
        severity: 'caution',
        where: 'sections.s1.felled.outline',
        text: expect.stringMatching(/64 mm across/),
      },
    ]);
  });

  it('passes on where round the stem a sign was seen', () => {
    const { caseFile } = parsed(undefined);
    caseFile.signs = [{ kind: 'ants', azimuthDeg: -90, heightM: 1 }];
    expect(engineInput(caseFile, new Map()).input.signs[0]).toMatchObject({ azimuthDeg: 270, heightM: 1 });
  });
});
