import { describe, expect, it } from 'vitest';
import { bearing, compassPoint, fixed, inUnits, measure, span } from './units.ts';

describe('fixed', () => {
  it('sets decimals, a true minus and thin groups', () => {
    expect(fixed(1234.5, 1)).toBe('1234.5');
    expect(fixed(1234567, 0)).toBe('1\u00a0234\u00a0567');
    expect(fixed(-2.5, 1)).toBe('−2.5');
    expect(fixed(-0.001, 1)).toBe('0.0');
  });
});

describe('measure', () => {
  it('uses exact factors', () => {
    expect(inUnits(25.4, 'lengthMm', 'us')).toBeCloseTo(1, 14);
    expect(inUnits(0.3048, 'heightM', 'us')).toBeCloseTo(1, 14);
    expect(inUnits(0.44704, 'speedMs', 'us')).toBeCloseTo(1, 14);
    // 1 kip·ft = 1355.8179483314 N·m (NIST SP 811, pound-force and foot).
    expect(inUnits(1355.8179483314, 'momentNm', 'us')).toBeCloseTo(1, 12);
    // 1 psf = 47.88025898 Pa (NIST SP 811).
    expect(inUnits(47.88025898, 'pressurePa', 'us')).toBeCloseTo(1, 9);
  });

  it('holds number and unit together', () => {
    expect(measure(143.2, 'lengthMm', 'metric')).toBe('143\u00a0mm');
    expect(span(138, 147, 'lengthMm', 'us')).toBe('5.4 to 5.8\u00a0in');
  });
});

describe('bearing', () => {
  it('names the nearest compass point, all the way round', () => {
    expect(bearing(140)).toBe('140° (south-east)');
    expect(compassPoint(359)).toBe('north');
    expect(compassPoint(-90)).toBe('west');
  });
});
