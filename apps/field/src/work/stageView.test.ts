import { describe, expect, it } from 'vitest';
import { kept, lensPlace, toPhoto, toStage, wholePhoto, zoomed } from './stageView.ts';

const STAGE = { width: 400, height: 300 };
const PHOTO = { width: 4000, height: 2000 };

describe('the part of a photo on screen', () => {
  it('begins with all of it, pixels covering the square around their centre', () => {
    const view = wholePhoto(STAGE, PHOTO);
    expect(view.scale).toBe(0.1);
    expect(toStage(view, [-0.5, -0.5])).toEqual([0, 50]);
    expect(toStage(view, [3999.5, 1999.5]).map(Math.round)).toEqual([400, 250]);
    const [x, y] = toPhoto(view, toStage(view, [123, 456]));
    expect([Math.round(x), Math.round(y)]).toEqual([123, 456]);
  });

  it('comes nearer about the point under the finger, and never farther than the whole', () => {
    const whole = wholePhoto(STAGE, PHOTO);
    const under = toPhoto(whole, [100, 100]);
    const near = zoomed(whole, 4, [100, 100], STAGE, PHOTO);
    const [sx, sy] = toStage(near, under);
    expect(sx).toBeCloseTo(100, 6);
    expect(sy).toBeCloseTo(100, 6);
    expect(zoomed(near, 0.001, [0, 0], STAGE, PHOTO)).toEqual(whole);
  });

  it('does not lose the photo when it is moved', () => {
    const near = zoomed(wholePhoto(STAGE, PHOTO), 8, [0, 0], STAGE, PHOTO);
    expect(kept({ ...near, x: -900, y: 99_999 }, STAGE, PHOTO)).toEqual({
      scale: near.scale,
      x: -0.5,
      y: 2000 - 300 / near.scale - 0.5,
    });
  });

  it('puts the magnifier above the thumb, and beside it at the top edge, always inside', () => {
    expect(lensPlace([200, 250], STAGE, 120)).toEqual([140, 86]);
    expect(lensPlace([50, 20], STAGE, 120)).toEqual([94, 0]);
    expect(lensPlace([380, 20], STAGE, 120)).toEqual([216, 0]);
  });
});
