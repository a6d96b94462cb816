import { describe, expect, it } from 'vitest';
import { arcSpanDeg } from './arc.ts';

describe('arcSpanDeg', () => {
  it('goes clockwise past north, and all round from an azimuth to itself', () => {
    expect(arcSpanDeg(350, 10)).toBe(20);
    expect(arcSpanDeg(10, 350)).toBe(340);
    expect(arcSpanDeg(0, 360)).toBe(360);
    expect(arcSpanDeg(-5, 5)).toBe(10);
  });
});
