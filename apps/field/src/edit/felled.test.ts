import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { felledFromJson } from './felled.ts';

const RING = [
  [-50, -50],
  [50, -50],
  [50, 50],
];

describe('what was traced on a felled section', () => {
  it('comes as the case has it, under its name, or as bare rings', () => {
    const felled = { unsound: [RING], source: 'traced from a photo' };
    expect(felledFromJson(JSON.stringify(felled), 'a.json')).toEqual(felled);
    expect(felledFromJson(`\ufeff${JSON.stringify({ felled })}`, 'a.json')).toEqual(felled);
    expect(felledFromJson(JSON.stringify([RING]), 'a.json')).toEqual({ unsound: [RING] });
    expect(felledFromJson('{"unsound": []}', 'a.json')).toEqual({ unsound: [] });
  });

  it.each([
    ['{"unsound": [[1, 2]', /not valid JSON/],
    ['{"hollow": []}', /no list of polygons named “unsound”/],
    ['{"unsound": [[[0, "1"]]]}', /unsound\[0\]\[0\]\[1\]: should be a number/],
  ])('%s is refused with what is wrong', (text, said) => {
    expect(() => felledFromJson(text, 'a.json')).toThrow(InputFault);
    expect(() => felledFromJson(text, 'a.json')).toThrow(said);
  });
});
