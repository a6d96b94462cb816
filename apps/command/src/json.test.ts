import { describe, expect, it } from 'vitest';
import { jsonDocument, keysFirst, rounded } from './json.ts';

describe('the JSON document', () => {
  it('rounds to six significant digits and leaves whole numbers whole', () => {
    expect(jsonDocument({ a: 1 / 3, b: [123456.789, 1234567], c: { d: 0, e: -0.000123456789 } })).toEqual({
      a: 0.333333,
      b: [123457, 1234567],
      c: { d: 0, e: -0.000123457 },
    });
  });

  it('keeps more digits when asked', () => {
    expect(rounded(200 / 3, 12)).toBe(66.6666666667);
  });

  it('gives null for a number that is not finite, and says where', () => {
    const document = jsonDocument({
      sections: [{ least: Number.NaN }],
      gust: Number.POSITIVE_INFINITY,
      notices: [],
    });
    expect(document).toMatchObject({ sections: [{ least: null }], gust: null });
    expect(document.notices).toMatchObject([{ where: 'sections[0].least' }, { where: 'gust' }]);
  });

  it('adds no notices where none are needed', () => {
    expect(jsonDocument({ a: 1 })).toEqual({ a: 1 });
  });

  it('prints flat arrays of numbers as lists', () => {
    expect(jsonDocument({ a: new Float64Array([0.5, 2]) })).toEqual({ a: [0.5, 2] });
  });

  it('puts the named keys first, in their order, and keeps the others', () => {
    expect(Object.keys(keysFirst({ c: 3, b: 2, a: 1, z: 0 }, ['a', 'b']))).toEqual(['a', 'b', 'c', 'z']);
  });
});
