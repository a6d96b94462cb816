import fc from 'fast-check';
import { expect, it } from 'vitest';
import { planToData, planToPx, roseToData, roseToPx, toData, toPx } from './options.ts';

const span = fc.double({ min: 1, max: 500, noNaN: true });
const value = fc.double({ min: -400, max: 400, noNaN: true });

it('maps straight axes there and back', () => {
  fc.assert(
    fc.property(value, span, value, span, value, (d0, dw, r0, rw, v) => {
      const axis = { domain: [d0, d0 + dw], range: [r0, r0 - rw] } as const;
      expect(toData(axis, toPx(axis, v))).toBeCloseTo(v, 6);
    }),
  );
});

it('maps the plan there and back, north up', () => {
  const map = { centre: [100, 80], pxPerMm: 0.4 } as const;
  expect(planToPx(map, 0, 50)).toEqual([100, 60]);
  fc.assert(
    fc.property(value, value, (x, y) => {
      const [px, py] = planToPx(map, x, y);
      const [bx, by] = planToData(map, px, py);
      expect(bx).toBeCloseTo(x, 6);
      expect(by).toBeCloseTo(y, 6);
    }),
  );
});

it('maps the rose there and back, clockwise from north', () => {
  const map = { centre: [50, 50], radius: { domain: [0, 4], range: [20, 60] } } as const;
  const [x, y] = roseToPx(map, 90, 4);
  expect([x, y].map(Math.round)).toEqual([110, 50]);
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 359 }),
      fc.double({ min: 0.1, max: 4, noNaN: true }),
      (direction, v) => {
        const back = roseToData(map, ...roseToPx(map, direction, v));
        expect(Math.abs(((back.directionDeg - direction + 540) % 360) - 180)).toBeLessThan(1e-6);
        expect(back.value).toBeCloseTo(v, 8);
      },
    ),
  );
});
