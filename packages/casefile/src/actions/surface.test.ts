import { describe, expect, it } from 'vitest';
import { checkCase } from '../check/checkCase.ts';
import { parseCase } from '../schema/parseCase.ts';
import { addSurfaceArc, removeSurfaceArc } from './sections.ts';

const bare = parseCase({
  format: 'standfast-case',
  version: 1,
  tree: {},
  sections: [{ id: 's1', heightM: 0.3, outline: { kind: 'circle', diameterMm: 900 } }],
}).caseFile;

describe('surface of a section', () => {
  it('is added to, and taken out when its last stretch goes', () => {
    const one = addSurfaceArc(bare, 's1', { fromDeg: 0, toDeg: 360, state: 'sound' });
    const two = addSurfaceArc(one, 's1', { fromDeg: 40, toDeg: 60, state: 'open' });
    expect(two.sections[0]?.surface).toHaveLength(2);
    expect(bare.sections[0]?.surface).toBeUndefined();
    const left = removeSurfaceArc(two, 's1', 0);
    expect(left.sections[0]?.surface).toEqual([{ fromDeg: 40, toDeg: 60, state: 'open' }]);
    expect(removeSurfaceArc(left, 's1', 0).sections[0]).not.toHaveProperty('surface');
    expect(() => removeSurfaceArc(left, 's1', 1)).toThrow('stretch of surface number 2');
  });

  it('is refused with the field where an azimuth cannot be or a word is not known', () => {
    const bad = (surface: unknown) => parseCase({ ...bare, sections: [{ ...bare.sections[0], surface }] });
    expect(() => bad([{ fromDeg: 0, toDeg: 90, state: 'rotten' }])).toThrow(/surface\[0\]\.state/);
    expect(() => bad([{ toDeg: 90, state: 'sound' }])).toThrow(/surface\[0\]\.fromDeg/);
    const { caseFile } = bad([{ fromDeg: 0, toDeg: 900, state: 'sound' }]);
    expect(checkCase(caseFile).faults.map(({ where }) => where)).toContain(
      'case.json: sections[0].surface[0].toDeg',
    );
  });
});
