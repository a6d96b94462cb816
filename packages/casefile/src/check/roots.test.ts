import { describe, expect, it } from 'vitest';
import { parseCase } from '../schema/parseCase.ts';
import { checkCase } from './checkCase.ts';

const said = (fields: object) => {
  const { faults, notices } = checkCase(
    parseCase({ format: 'standfast-case', version: 1, tree: {}, visitedOn: '2026-05-14', ...fields })
      .caseFile,
  );
  return [
    ...faults.map(({ message }) => message),
    ...notices.map(({ severity, where, text }) => `${severity} ${where}: ${text}`),
  ];
};

describe('roots and tests', () => {
  it('says nothing of what is usual', () => {
    expect(
      said({
        rootCuts: [{ azimuthDeg: 90, distanceM: 1.5, depthM: 0.6, year: 2020 }],
        rootSpace: [{ azimuthDeg: 180, distanceM: 2, widthDeg: 120 }],
        staticTests: [{ directionDeg: 270, momentNm: 90_000, tiltDeg: 0.25 }],
        timeFrameYears: 3,
      }),
    ).toEqual([]);
  });

  it.each([
    [{ rootCuts: [{ azimuthDeg: 500, distanceM: 1 }] }, /rootCuts\[0\]\.azimuthDeg/],
    [{ rootCuts: [{ azimuthDeg: 0, distanceM: 1, depthM: 40 }] }, /rootCuts\[0\]\.depthM: is 40 m/],
    [{ rootCuts: [{ azimuthDeg: 0, distanceM: 1, year: 2031 }] }, /caution rootCuts\[0\]\.year/],
    [{ rootSpace: [{ azimuthDeg: 0, distanceM: 1, widthDeg: 400 }] }, /rootSpace\[0\]\.widthDeg/],
    [{ staticTests: [{ directionDeg: 0, momentNm: 90, tiltDeg: 0.25 }] }, /kN·m/],
    [
      { staticTests: [{ directionDeg: 0, momentNm: 9e4, tiltDeg: 2 }] },
      /staticTests\[0\]\.tiltDeg: is 2 degrees/,
    ],
    [{ timeFrameYears: 80 }, /timeFrameYears: is 80 years/],
    [{ timeFrameYears: 20 }, /caution timeFrameYears/],
  ])('%j', (fields, message) => {
    expect(said(fields).join('\n')).toMatch(message);
  });

  it('warns when a judgement counts for two targets of one name', () => {
    const decision = { byTarget: [{ target: 'path', consequences: { value: 'minor', reason: 'x' } }] };
    expect(said({ targets: [{ what: 'path' }, { what: 'path' }], decision }).join()).toContain('for both');
    expect(said({ targets: [{ what: 'path' }], decision })).toEqual([]);
  });

  it('refuses words that are none of the trade', () => {
    expect(() => said({ decision: { likelihoodOfFailure: { value: 'certain' } } })).toThrow(
      /"improbable", "possible", "probable", "imminent"/,
    );
    expect(() => said({ targets: [{ what: 'path', protection: 'some' }] })).toThrow(
      /"none", "partial", "good"/,
    );
  });
});
