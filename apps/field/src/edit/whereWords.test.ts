import { describe, expect, it } from 'vitest';
import { fieldWords, placeOfPath } from './whereWords.ts';

const caseFile = { sections: [{ id: 's1', barkMm: 1, drillings: [{ id: 'd7' }] }] };

describe('where a fault is', () => {
  it('is told in words', () => {
    expect(fieldWords('sections.0.barkMm', caseFile)).toBe('section s1, bark');
    expect(fieldWords('sections.0.drillings.0.azimuthDeg', caseFile)).toBe(
      'section s1, drilling d7, azimuth',
    );
    expect(fieldWords('rootCuts.0.depthM', caseFile)).toBe('root cut 1, depth');
    expect(fieldWords('tree.stemDiameterMm', caseFile)).toBe('tree, stem diameter');
    expect(fieldWords('site.basicWindSpeedMs', caseFile)).toBe('site, basic wind speed');
  });

  it('leads to the place where it is edited', () => {
    expect(placeOfPath('sections.0.barkMm', caseFile)).toBe('section');
    expect(placeOfPath('sections.0.drillings.0.azimuthDeg', caseFile)).toBe('section/s1%3Ad7');
    expect(placeOfPath('tree.heightM', caseFile)).toBe('tree');
    expect(placeOfPath('visitedOn', caseFile)).toBe('report');
    expect(placeOfPath('staticTests.0.momentNm', caseFile)).toBe('tree/static-tests');
    expect(placeOfPath('site.terrain', caseFile)).toBe('tree/site');
    expect(placeOfPath('place.latitude', caseFile)).toBe('tree/where');
    expect(placeOfPath('timeFrameYears', caseFile)).toBe('decision');
    expect(placeOfPath('decision.byTarget.0.consequences.reason', caseFile)).toBe('decision');
    expect(placeOfPath('advice.0.dueOn', caseFile)).toBe('decision/advice');
  });
});
