import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { pathOfWhere, valueAt, withValueAt } from './fieldPath.ts';

const tree = {
  tree: { label: 'T1', crown: { widthM: 9 } },
  sections: [{ id: 's1', drillings: [{ id: 'd1' }, { id: 'd2' }] }],
};

describe('a field by its path', () => {
  it('is read and replaced, and leaves the rest shared', () => {
    const after = withValueAt(tree, 'sections.0.drillings.1.azimuthDeg', 45);
    expect(valueAt(after, 'sections.0.drillings.1.azimuthDeg')).toBe(45);
    expect(after.tree).toBe(tree.tree);
    expect(after.sections[0]?.drillings[0]).toBe(tree.sections[0]?.drillings[0]);
    expect(valueAt(tree, 'sections.0.drillings.1.azimuthDeg')).toBeUndefined();
  });

  it('makes what is missing on the way, and takes out what is undefined', () => {
    expect(withValueAt({} as object, 'client.name', 'Ada')).toEqual({ client: { name: 'Ada' } });
    expect(withValueAt(tree, 'tree.label', undefined).tree).toEqual({ crown: { widthM: 9 } });
    expect(withValueAt(tree, 'sections.0.drillings.0', undefined).sections[0]?.drillings).toEqual([
      { id: 'd2' },
    ]);
  });

  it('is the same tree when nothing changes', () => {
    expect(withValueAt(tree, 'tree.label', 'T1')).toBe(tree);
    expect(withValueAt(tree, 'tree.heightM', undefined)).toBe(tree);
  });

  it('gives back what was put, for any path and value', () => {
    const key = fc.stringMatching(/^[a-z]{1,5}$/);
    fc.assert(
      fc.property(fc.array(key, { minLength: 1, maxLength: 5 }), fc.integer(), (keys, value) => {
        expect(valueAt(withValueAt({}, keys.join('.'), value), keys.join('.'))).toBe(value);
      }),
    );
  });

  it('finds the field a fault speaks of', () => {
    expect(pathOfWhere('case.json: sections[0].barkMm')).toBe('sections.0.barkMm');
    expect(pathOfWhere('tree.heightM')).toBe('tree.heightM');
  });
});
