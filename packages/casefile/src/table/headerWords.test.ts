import { describe, expect, it } from 'vitest';
import { depthUnitInWords, drillingInTitle, roleInWords, saysPercent } from './headerWords.ts';

describe('words over columns', () => {
  it.each([
    ['depth_mm', 'depth', 'mm'],
    ['Depth (cm)', 'depth', 'cm'],
    ['Tiefe [mm]', 'depth', 'mm'],
    ['Profondeur (m)', 'depth', 'm'],
    ['Profundidad', 'depth', null],
    ['Głębokość mm', 'depth', 'mm'],
    ['Depth in inches', 'depth', 'inch'],
    ['Depth "', 'depth', 'inch'],
    ['mm', 'depth', 'mm'],
    ['resistance', 'resistance', null],
    ['Bohrwiderstand %', 'resistance', null],
    ['Résistance', 'resistance', null],
    ['%', 'resistance', null],
    ['Feed force', 'feed', null],
    ['Vorschub', 'feed', null],
    ['No.', 'index', null],
    ['Time', 'ignore', null],
    ['hole', 'drilling', null],
    ['D1', null, null],
    ['', null, null],
  ])('%j', (title, role, unit) => {
    expect(roleInWords(title)).toBe(role);
    expect(depthUnitInWords(title)).toBe(unit);
  });

  it('tells percent', () => {
    expect(['Level (%)', 'Widerstand Prozent', 'level'].map(saysPercent)).toEqual([true, true, false]);
  });

  it.each([
    ['D1 resistance (%)', 'D1'],
    ['resistance_north', 'north'],
    ['Resistance', ''],
    ['12', '12'],
  ])('the drilling in %j is %j', (title, name) => {
    expect(drillingInTitle(title)).toBe(name);
  });
});
