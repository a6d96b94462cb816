import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { afterKey } from './keys.ts';
import { fitted, panned, roundLength, toPlanePoint, toScreen, zoomed } from './view.ts';

const size = { width: 800, height: 600 };
const number = (most: number) => fc.double({ min: -most, max: most, noNaN: true });
const views = fc.record({
  x: number(1e5),
  y: number(1e5),
  scale: fc.double({ min: 1e-4, max: 50, noNaN: true }),
});
const pixels = fc.record({ x: fc.integer({ min: 0, max: 800 }), y: fc.integer({ min: 0, max: 600 }) });

describe('the map’s view', () => {
  it('keeps what is under the finger there when zooming, and moves with it when dragging', () => {
    fc.assert(
      fc.property(views, pixels, fc.double({ min: 0.2, max: 5, noNaN: true }), (view, at, factor) => {
        const held = toPlanePoint(view, size, at);
        const after = toScreen(zoomed(view, size, factor, at), size, held);
        expect(after.x).toBeCloseTo(at.x, 4);
        expect(after.y).toBeCloseTo(at.y, 4);
        const moved = toScreen(panned(view, 17, -30), size, held);
        expect(moved.x).toBeCloseTo(at.x + 17, 4);
        expect(moved.y).toBeCloseTo(at.y - 30, 4);
      }),
    );
  });

  it('has north up and east to the right', () => {
    const middle = toScreen({ x: 0, y: 0, scale: 1 }, size, { x: 10, y: 10 });
    expect(middle).toEqual({ x: 410, y: 290 });
  });

  it('fits all points on screen, and one alone with its surroundings', () => {
    const point = fc.record({ x: number(1e4), y: number(1e4) });
    fc.assert(
      fc.property(fc.array(point, { minLength: 1 }), (points) => {
        const view = fitted(points, size);
        for (const each of points) {
          const { x, y } = toScreen(view, size, each);
          expect(x >= 0 && x <= size.width && y >= 0 && y <= size.height).toBe(true);
        }
      }),
    );
    expect(fitted([{ x: 5, y: 6 }], size)).toEqual({ x: 5, y: 6, scale: 3 });
    expect(fitted([], size).scale).toBe(1);
  });

  it('goes where the arrow keys point', () => {
    const view = { x: 0, y: 0, scale: 2 };
    expect(afterKey('ArrowRight', view, size)).toEqual({ x: 40, y: 0, scale: 2 });
    expect(afterKey('ArrowUp', view, size)).toEqual({ x: 0, y: 40, scale: 2 });
    expect(afterKey('+', view, size)?.scale).toBe(3);
    expect(afterKey('-', view, size)?.scale).toBeCloseTo(4 / 3, 12);
    expect(afterKey('x', view, size)).toBeNull();
  });

  it('rounds lengths down to 1, 2 or 5', () => {
    expect([1, 1.9, 2, 4.99, 5, 9.9, 10, 230, 0.07].map(roundLength)).toEqual([
      1, 1, 2, 2, 5, 5, 10, 200, 0.05,
    ]);
  });
});
