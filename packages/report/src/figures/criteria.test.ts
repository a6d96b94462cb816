import type { Criterion } from '@standfast/engine';
import { expect, it } from 'vitest';
import { marginOf } from './criteria.ts';

const rule = (value: number | null, limit: number, met: boolean | null, quantity = 'x'): Criterion => ({
  name: 'rule',
  source: 'source',
  value,
  limit,
  quantity,
  met,
  note: '',
});

it.each([
  ['a least that is met', rule(0.45, 0.3, true), 1.5],
  ['a least that is not met', rule(0.15, 0.3, false), 0.5],
  ['a most that is met', rule(11, 33, true), 3],
  ['a most that is not met', rule(66, 33, false), 0.5],
  ['a most of nothing', rule(0, 33, true), Number.POSITIVE_INFINITY],
  ['one that does not apply', rule(null, 33, null), null],
])('puts %s on the right side of its limit', (_, criterion, margin) => {
  const got = marginOf(criterion);
  if (margin === null) expect(got).toBeNull();
  else expect(got).toBeCloseTo(margin, 12);
});
