import { describe, expect, it } from 'vitest';
import { fileNameOf } from './fileName.ts';

describe('file names', () => {
  it('keep letters of any script and drop what a file system refuses', () => {
    expect(fileNameOf('Bäume/12: "Öst"', '2026-05-14', 'zip')).toBe('standfast-Bäume-12-Öst-2026-05-14.zip');
    expect(fileNameOf('../..', undefined, 'pdf')).toBe('standfast-case.pdf');
    expect(fileNameOf(undefined, undefined, 'zip')).toBe('standfast-case.zip');
  });
});
