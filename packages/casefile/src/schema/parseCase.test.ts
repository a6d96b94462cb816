import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { CaseFaults } from '../caseFaults.ts';
import { parseCase } from './parseCase.ts';

const MINIMAL = { format: 'standfast-case', version: 1, tree: {} };

/** The case of the format's description, every field of it. */
const FULL = {
  format: 'standfast-case',
  version: 1,
  client: { name: 'A' },
  assessor: { name: 'B', credential: 'C' },
  visitedOn: '2026-05-14',
  tree: {
    label: 'T12',
    species: 'Tilia cordata',
    stemDiameterMm: 900,
    heightM: 24,
    leanDeg: 0,
    leanTowardDeg: 0,
    crown: { baseHeightM: 5, widthM: 16, shape: 'ellipse', inLeaf: true },
  },
  site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' },
  sections: [
    {
      id: 's1',
      heightM: 0.3,
      outline: { kind: 'circle', diameterMm: 990 },
      barkMm: 20,
      drillings: [{ id: 'd1', azimuthDeg: 0, offRadialDeg: 0, downDeg: 0, trace: 'traces/d1.csv' }],
    },
  ],
  flares: [
    {
      id: 'f1',
      azimuthDeg: 20,
      widthMm: 300,
      heightMm: 350,
      drillings: [{ id: 'd2', azimuthDeg: 20, downDeg: 40, trace: 'traces/d2.csv' }],
    },
  ],
  signs: [{ kind: 'ants', where: 'flare f1', note: 'n', photo: 'photos/1.jpg' }],
  targets: [{ what: 'footpath', occupancy: 'frequent', distanceM: 6, directionDeg: 90 }],
};

function messageOf(json: unknown): string {
  try {
    parseCase(json);
  } catch (error) {
    expect(error).toBeInstanceOf(InputFault);
    return (error as InputFault).message;
  }
  throw new Error('expected a fault');
}

describe('parseCase', () => {
  it('reads every field of the format, from bytes, text or JSON alike', () => {
    const text = JSON.stringify(FULL);
    expect(parseCase(FULL)).toEqual({ caseFile: FULL, notices: [] });
    expect(parseCase(text).caseFile).toEqual(FULL);
    expect(parseCase(new TextEncoder().encode(`\uFEFF${text}`)).caseFile).toEqual(FULL);
  });

  it.each([
    { kind: 'ellipse', longMm: 1000, shortMm: 900, longAxisDeg: 45 },
    { kind: 'radii', radii: [{ azimuthDeg: 0, radiusMm: 500 }] },
    {
      kind: 'polygon',
      points: [
        [0, 0],
        [1, 0],
        [0, 1],
      ],
    },
  ])('reads an outline of kind $kind', (outline) => {
    const json = { ...MINIMAL, sections: [{ id: 's1', heightM: 1, outline, drillings: [] }] };
    expect(parseCase(json).caseFile.sections[0]?.outline).toEqual(outline);
  });

  it('needs little: a case begun in the field has empty lists', () => {
    const { caseFile } = parseCase(MINIMAL);
    expect(caseFile).toEqual({ ...MINIMAL, sections: [], flares: [], signs: [], targets: [] });
  });

  it('takes null as left out', () => {
    const { caseFile } = parseCase({ ...MINIMAL, client: null, tree: { heightM: null }, sections: null });
    expect(caseFile.client).toBeUndefined();
    expect(caseFile.tree.heightM).toBeUndefined();
    expect(caseFile.sections).toEqual([]);
  });

  it('keeps fields it does not know, anywhere, and warns of them', () => {
    const json = {
      ...FULL,
      colour: 'blue',
      sections: [{ ...FULL.sections[0], extra: { deep: [1, null] } }],
    };
    const { caseFile, notices } = parseCase(json);
    expect(caseFile).toMatchObject(json);
    expect(notices.map(({ where }) => where).sort()).toEqual(['colour', 'sections[0].extra']);
    expect(notices.every(({ text }) => /kept, and not used/.test(text))).toBe(true);
  });

  it('asks whether a misspelt field was meant', () => {
    const { notices } = parseCase({ ...MINIMAL, tree: { heigthM: 20, leanDegree: 4 } });
    expect(notices.map(({ severity, text }) => [severity, text])).toEqual([
      ['caution', 'is not a field this version knows: it is kept, and not used. Was heightM meant?'],
      ['caution', 'is not a field this version knows: it is kept, and not used. Was leanDeg meant?'],
    ]);
  });

  it('names the field, what is wrong and what to do', () => {
    const section = FULL.sections[0]!;
    const withOutline = (outline: unknown) => ({ ...MINIMAL, sections: [{ ...section, outline }] });
    expect(messageOf(withOutline({ kind: 'circle', diameterMm: '990' }))).toBe(
      'case.json: sections[0].outline.diameterMm: should be a number, not the text "990": write it without quotes, with a point as decimal sign',
    );
    expect(messageOf(withOutline({ kind: 'circle' }))).toBe(
      'case.json: sections[0].outline.diameterMm: is missing: write the diameter over bark in millimetres',
    );
    expect(messageOf(withOutline({ kind: 'circle', diameterMm: -3 }))).toBe(
      'case.json: sections[0].outline.diameterMm: is -3: it must be more than 0',
    );
    expect(messageOf(withOutline({ kind: 'square' }))).toBe(
      'case.json: sections[0].outline.kind: "square" is not known here: write "circle", "ellipse", "radii" or "polygon"',
    );
    expect(messageOf(withOutline({ kind: 'polygon', points: [[1, 2, 3]] }))).toMatch(
      /^case\.json: sections\[0\]\.outline\.points\[0\]: /,
    );
    expect(messageOf({ ...MINIMAL, visitedOn: '14.5.2026' })).toBe(
      'case.json: visitedOn: "14.5.2026" is not a date: write year-month-day, for example "2026-05-14"',
    );
    expect(messageOf({ ...MINIMAL, tree: { crown: { shape: 'oval' } } })).toMatch(
      /^case\.json: tree\.crown\.shape: "oval" is not known here: write "ellipse", "dome"/,
    );
    expect(messageOf({ ...MINIMAL, site: { windCode: 'DIN 1055' } })).toBe(
      'case.json: site.windCode: "DIN 1055" is not known here: write "EN 1991-1-4", "ASCE 7-22" or "ASCE 7-16"',
    );
    expect(messageOf({ ...MINIMAL, sections: [{ ...section, id: ' ' }] })).toBe(
      'case.json: sections[0].id: is empty: write a name',
    );
    expect(messageOf({ format: 'standfast-case', version: 1 })).toMatch(
      /^case\.json: tree: is missing: write an object/,
    );
    expect(messageOf('{"format": "standfast-case", "version": 1, "tree": {"heightM": 1e999}}')).toBe(
      'case.json: tree.heightM: is not a finite number',
    );
  });

  it('gives every fault at once', () => {
    const json = { ...FULL, visitedOn: 'x', tree: { heightM: 'tall' }, targets: [{}] };
    try {
      parseCase(json);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(CaseFaults);
      const { faults, message } = error as CaseFaults;
      expect(faults.map(({ where }) => where)).toEqual([
        'case.json: visitedOn',
        'case.json: tree.heightM',
        'case.json: targets[0].what',
      ]);
      expect(message.split('\n')).toHaveLength(3);
    }
  });

  it('says where JSON is broken', () => {
    expect(messageOf('{\n  "format": "standfast-case",\n  "version": 1,,\n}')).toBe(
      'case.json: is not valid JSON at line 3, column 16: look for a missing comma, quote or bracket there',
    );
    expect(messageOf('{"format": "standfast-case"')).toBe(
      'case.json: is not valid JSON: it ends too early, a bracket or quote is not closed',
    );
    expect(messageOf('')).toBe('case.json: is empty: it should hold the case as JSON');
    expect(messageOf(new Uint8Array([0x7b, 0xff, 0xfe]))).toBe(
      'case.json: is not UTF-8 text: save it again as UTF-8',
    );
  });
});
