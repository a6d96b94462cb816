import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { chartKnownFrom, checkCorners, checkStripImage, checkStripSize } from './checkStrip.ts';
import type { CornersPx } from './types.ts';

const photo = { widthPx: 1000, heightPx: 400 };
const good: CornersPx = [
  [100, 50],
  [900, 60],
  [890, 350],
  [110, 340],
];

describe('corners', () => {
  it('accepts a chart', () => {
    expect(() => checkCorners(good, photo, 'c')).not.toThrow();
  });
  it.each<[string, CornersPx, RegExp]>([
    ['crossed', [good[0], good[2], good[1], good[3]], /crossed/],
    ['anticlockwise', [good[3], good[2], good[1], good[0]], /anticlockwise/],
    ['outside', [good[0], [1200, 60], good[2], good[3]], /outside the photo/],
    ['in a line', [good[0], [500, 55], good[1], good[3]], /crossed|line/],
    [
      'too small',
      [
        [100, 50],
        [900, 50],
        [900, 60],
        [100, 60],
      ],
      /only 10 pixels/,
    ],
  ])('refuses corners %s', (_, corners, message) => {
    expect(() => checkCorners(corners, photo, 'c')).toThrow(InputFault);
    expect(() => checkCorners(corners, photo, 'c')).toThrow(message);
  });
});

describe('size', () => {
  it.each([
    [1, 1, /too small/],
    [20000, 10000, /200 megapixels/],
    [0, 400, /no size/],
  ])('refuses %i × %i', (width, height, message) => {
    expect(() => checkStripSize(width, height, 'photo.jpg')).toThrow(message);
  });
  it('refuses pixels that do not match the size', () => {
    const image = { ...photo, rgba: new Uint8Array(4 * 999 * 400) };
    expect(() => checkStripImage(image, 'photo.jpg')).toThrow(/says 1000/);
  });
});

describe('chart file', () => {
  const taps = [
    [1, 2],
    [3, 4],
  ];
  it('reads all it may say', () => {
    const level = { cornersPx: good, resistance: [0, 100] };
    const ways = [
      { depthMm: [300, 0] },
      {
        taps: [
          { px: [1, 2], depthMm: 0 },
          { px: [3, 4], depthMm: 100 },
        ],
      },
      { ruler: { px: taps, distanceMm: 100, startMm: 5, startsAt: 'right' } },
    ];
    for (const way of ways) {
      expect(chartKnownFrom({ ...level, ...way }, 'chart.json')).toEqual({ ...level, ...way });
    }
    expect(chartKnownFrom({}, 'chart.json')).toEqual({});
    const { ruler } = chartKnownFrom({ ruler: { px: taps, distanceMm: 100 } }, 'chart.json');
    expect(ruler).toMatchObject({ startMm: 0, startsAt: 'left' });
  });
  it.each<[unknown, string]>([
    [[], 'chart.json'],
    [{ cornersPx: [[1, 2]] }, 'chart.json: cornersPx'],
    [
      {
        cornersPx: [
          [1, 2],
          [3, 4],
          [5, '6'],
          [7, 8],
        ],
      },
      'chart.json: cornersPx[2]',
    ],
    [{ depthMm: [0, 0] }, 'chart.json: depthMm'],
    [{ depthMm: [0, 1e6] }, 'chart.json: depthMm'],
    [{ resistance: [0] }, 'chart.json: resistance'],
    [{ taps: [{ px: [1, 2], depthMm: 0 }] }, 'chart.json: taps'],
    [{ taps: [{ px: [1, 2] }, { px: [1, 2], depthMm: 4 }] }, 'chart.json: taps[0].depthMm'],
    [{ ruler: { px: taps.slice(1), distanceMm: 100 } }, 'chart.json: ruler.px'],
    [{ ruler: { px: taps, distanceMm: -1 } }, 'chart.json: ruler.distanceMm'],
    [{ ruler: { px: taps, distanceMm: 9, startMm: '0' } }, 'chart.json: ruler.startMm'],
    [{ ruler: { px: taps, distanceMm: 9, startsAt: 'top' } }, 'chart.json: ruler.startsAt'],
    [{ depthMm: [0, 300], ruler: { px: taps, distanceMm: 9 } }, 'chart.json'],
  ])('names the field at fault in %j', (json, where) => {
    try {
      chartKnownFrom(json, 'chart.json');
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputFault);
      expect((error as InputFault).where).toBe(where);
    }
  });
});
