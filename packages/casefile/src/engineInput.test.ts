import { describe, expect, it } from 'vitest';
import { CaseFaults } from './caseFaults.ts';
import { engineInput } from './engineInput.ts';
import { parseCase } from './schema/parseCase.ts';

const TRACE = { depthMm: new Float64Array([0, 1]), resistancePct: new Float64Array([1, 2]) };
const BASE = {
  format: 'standfast-case',
  version: 1,
  tree: {
    stemDiameterMm: 800,
    heightM: 20,
    leanDeg: 2,
    leanTowardDeg: 360,
    crown: { baseHeightM: 4, widthM: 10 },
  },
  site: { windCode: 'ASCE 7-16', basicWindSpeedMs: 45, exposure: 'B' },
  sections: [
    {
      id: 's1',
      heightM: 1,
      outline: { kind: 'ellipse', longMm: 900, shortMm: 800, longAxisDeg: -30, mark: 1 },
      drillings: [{ id: 'd1', azimuthDeg: -90, trace: 'traces/d1.csv' }],
    },
  ],
};

const inputOf = (json: object, traces = new Map([['traces/d1.csv', TRACE]])) =>
  engineInput(parseCase(json).caseFile, traces);

describe('engineInput', () => {
  it('takes what was recorded, turns azimuths into 0 to 360, and tells every default it took', () => {
    const { input, notices } = inputOf({ ...BASE, targets: [{ what: 'path', directionDeg: 360 }] });
    expect(input).toEqual({
      tree: {
        label: '',
        species: '',
        stemDiameterMm: 800,
        heightM: 20,
        leanDeg: 2,
        leanTowardDeg: 0,
        crown: { baseHeightM: 4, widthM: 10, shape: 'ellipse', inLeaf: true },
      },
      site: { windCode: 'ASCE 7-16', basicWindSpeedMs: 45, exposure: 'B' },
      sections: [
        {
          id: 's1',
          heightM: 1,
          outline: { kind: 'ellipse', longMm: 900, shortMm: 800, longAxisDeg: 330 },
          barkMm: 15,
          drillings: [{ id: 'd1', azimuthDeg: 270, offRadialDeg: 0, downDeg: 0, trace: TRACE }],
        },
      ],
      flares: [],
      signs: [],
      targets: [{ what: 'path', directionDeg: 0 }],
    });
    expect(notices.map(({ severity, where }) => `${severity} ${where}`)).toEqual([
      'caution tree.species',
      'note tree.crown.shape',
      'note tree.crown.inLeaf',
      'note sections.s1.barkMm',
    ]);
  });

  it('hands on roots, tests, soil, opening, time frame, judgements and choices', () => {
    const recorded = {
      staticTests: [{ directionDeg: 90, momentNm: 80_000, tiltDeg: 0.25 }],
      rootCuts: [{ azimuthDeg: 270, distanceM: 1.2, widthDeg: 60, depthM: 0.5, year: 2022 }],
      rootSpace: [{ azimuthDeg: 10, distanceM: 2, what: 'wall' }],
      timeFrameYears: 3,
      decision: {
        likelihoodOfFailure: { value: 'probable', reason: 'moved under the probe' },
        byTarget: [{ target: 'path', consequences: { value: 'minor', reason: 'fenced' } }],
        on: '2026-05-14',
      },
      advice: [{ option: 'reduce-10', chosen: true, cost: '900' }],
    };
    const { input } = inputOf({
      ...BASE,
      ...recorded,
      site: { ...(BASE.site as object), soil: 'poor', basicWindReturnYears: 50 },
      sections: [{ ...(BASE.sections as object[])[0], opening: { azimuthDeg: 200, widthMm: 150 } }],
      targets: [{ what: 'path', protection: 'partial', consequence: 'severe', partOfTree: 'limb' }],
    });
    expect(input).toMatchObject(recorded);
    expect(input.site).toMatchObject({ soil: 'poor', basicWindReturnYears: 50 });
    expect(input.sections[0]?.opening).toEqual({ azimuthDeg: 200, widthMm: 150 });
    expect(input.targets).toEqual([
      { what: 'path', protection: 'partial', consequence: 'severe', partOfTree: 'limb' },
    ]);
  });

  it('leaves the case file as it was', () => {
    const { caseFile } = parseCase(BASE);
    const before = structuredClone(caseFile);
    engineInput(caseFile, new Map());
    expect(caseFile).toEqual(before);
  });

  it('leaves a drilling without a trace out, and says so', () => {
    const { input, notices } = inputOf(BASE, new Map());
    expect(input.sections[0]?.drillings).toEqual([]);
    expect(notices).toContainEqual({
      severity: 'caution',
      where: 'sections.s1.drillings.d1',
      text: 'its trace traces/d1.csv was not read: it is left out.',
    });
    expect(notices.some(({ severity, where }) => severity === 'serious' && where === 'sections')).toBe(true);
  });

  it('takes a flare that was not measured from the stem, with a caution', () => {
    const { input, notices } = inputOf({ ...BASE, flares: [{ id: 'f1', azimuthDeg: 10, widthMm: 300 }] });
    expect(input.flares).toEqual([{ id: 'f1', azimuthDeg: 10, widthMm: 300, heightMm: 240, drillings: [] }]);
    expect(notices).toContainEqual({
      severity: 'caution',
      where: 'flares.f1.heightMm',
      text: "was not measured: taken as 240 mm, 30 % of the stem's diameter.",
    });
  });

  it('asks for everything that an assessment cannot do without, at once', () => {
    try {
      inputOf({ format: 'standfast-case', version: 1, tree: {} });
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(CaseFaults);
      expect((error as CaseFaults).faults.map(({ message }) => message)).toEqual([
        'case.json: tree.stemDiameterMm: is missing: measure the stem over bark at breast height, in millimetres',
        "case.json: tree.heightM: is missing: measure the tree's height in metres",
        'case.json: tree.crown.baseHeightM: is missing: measure how high above ground the crown begins, in metres',
        "case.json: tree.crown.widthM: is missing: measure the crown's greatest width in metres",
        'case.json: site: is missing: write windCode, basicWindSpeedMs, and terrain (EN 1991-1-4) or exposure (ASCE 7-22)',
        'case.json: sections: has no section: record at least one, with its height and outline',
      ]);
    }
  });

  it.each([
    [{ windCode: 'EN 1991-1-4', basicWindSpeedMs: 25 }, 'case.json: site.terrain: is missing'],
    [
      { windCode: 'EN 1991-1-4', terrain: 'II' },
      'case.json: site.basicWindSpeedMs: is missing: write the basic wind velocity',
    ],
    [
      { windCode: 'ASCE 7-22', basicWindSpeedMs: 45 },
      'case.json: site.exposure: is missing: write "B", "C" or "D"',
    ],
    [
      { windCode: 'ASCE 7-22', exposure: 'C' },
      'case.json: site.basicWindSpeedMs: is missing: write the 3-second gust',
    ],
  ])('asks for the rest of the site %j', (site, message) => {
    expect(() => inputOf({ ...BASE, site })).toThrow(message);
  });
});
