import { expect, it } from 'vitest';
import { textInUnits } from './textInUnits.ts';

it.each([
  [
    'It is 5 m from the stem; the tree is 21 m high: within reach.',
    'It is 16.4 ft from the stem; the tree is 68.9 ft high: within reach.',
  ],
  ['at its lower 5 % point, 26 m/s, does not', 'at its lower 5 % point, 58 mph, does not'],
  ['650 to 1338 kN·m by 2 relations', '479 to 987 kip·ft by 2 relations'],
  ['scenarios 0.3, 1 and 2 cm a year', 'scenarios 0.1, 0.4 and 0.8 in a year'],
  ['moves outward by 2 cm a year', 'moves outward by 0.8 in a year'],
  ['within 12 months; 35 % of 100', 'within 12 months; 35 % of 100'],
  ['a wall of 86 mm.', 'a wall of 3.4 in.'],
])('says "%s" in US units', (metric, us) => {
  expect(textInUnits(metric, 'us').replaceAll('\u00a0', ' ')).toBe(us);
  expect(textInUnits(metric, 'metric')).toBe(metric);
});
