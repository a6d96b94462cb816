import { describe, expect, it } from 'vitest';
import { draftsAfter } from './drafts.ts';

const before = {
  tree: { heightM: 20 },
  signs: [{ kind: 'cavity' }, { kind: 'crack' }],
  sections: [{ id: 's1', outline: { kind: 'circle', diameterMm: 900 } }],
};
const drafts = { 'tree.heightM': '2o', 'signs.1.heightM': '1,', 'sections.0.outline.diameterMm': '9oo' };

describe('text that could not be read', () => {
  it('stays while its field stays', () => {
    const after = { ...before, tree: { heightM: 21 } };
    expect(draftsAfter(before, after, drafts)).toBe(drafts);
  });

  it('goes with its row, and with another kind of outline', () => {
    const fewer = { ...before, signs: [before.signs[1]] };
    expect(Object.keys(draftsAfter(before, fewer, drafts))).toEqual([
      'tree.heightM',
      'sections.0.outline.diameterMm',
    ]);
    const ellipse = { ...before, sections: [{ id: 's1', outline: { kind: 'ellipse' } }] };
    expect(Object.keys(draftsAfter(before, ellipse, drafts))).toEqual(['tree.heightM', 'signs.1.heightM']);
    const other = { ...before, sections: [{ ...before.sections[0], id: 's2' }] };
    expect(Object.keys(draftsAfter(before, other, drafts))).toEqual(['tree.heightM', 'signs.1.heightM']);
  });
});
