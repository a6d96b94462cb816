import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { folderNames } from './folder-names.ts';

describe('folder names', () => {
  it('are readable, and tell trees with one label apart', () => {
    const nameOf = folderNames();
    expect(nameOf('T 12/a', 0)).toBe('T-12-a');
    expect(nameOf('t 12/A', 1)).toBe('t-12-A-feature-1');
    expect(nameOf('', 2)).toBe('feature-2');
    expect(nameOf('CON', 3)).toBe('tree-CON');
    expect(nameOf('../..', 4)).toBe('feature-4');
    expect(nameOf('Bäume №7', 5)).toBe('Bäume-7');
  });

  it('are never the same, never leave the folder, whatever the labels', () => {
    fc.assert(
      fc.property(fc.array(fc.string({ unit: 'grapheme', maxLength: 90 })), (labels) => {
        const nameOf = folderNames();
        const names = labels.map((label, i) => nameOf(label, i));
        expect(new Set(names.map((name) => name.toLowerCase())).size).toBe(names.length);
        for (const name of names) expect(name).toMatch(/^[\p{L}\p{N}-]{1,99}$/u);
      }),
    );
  });
});
