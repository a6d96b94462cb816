import { describe, expect, it } from 'vitest';
import { InputFault } from '../faults.ts';
import { checkOutline, checkOutlineShape, checkRing } from './check-outline.ts';
import type { Outline, PointMm } from './types.ts';

const where = 'sections[0].outline';
const square: PointMm[] = [
  [-200, -200],
  [200, -200],
  [200, 200],
  [-200, 200],
];

describe('outlines that pass', () => {
  it.each<Outline>([
    { kind: 'circle', diameterMm: 900 },
    { kind: 'ellipse', longMm: 900, shortMm: 700, longAxisDeg: -400 },
    { kind: 'radii', radii: [{ azimuthDeg: 12, radiusMm: 400 }] },
    {
      kind: 'radii',
      radii: [
        { azimuthDeg: 300, radiusMm: 400 },
        { azimuthDeg: -20, radiusMm: 380 },
        { azimuthDeg: 90, radiusMm: 420 },
      ],
    },
    { kind: 'polygon', points: square },
    { kind: 'polygon', points: [...square, square[0]!] },
    { kind: 'polygon', points: [...square].reverse() },
  ])('%j', (outline) => {
    expect(() => checkOutline(outline, where)).not.toThrow();
  });
});

describe('outlines that cannot be', () => {
  const radius = (azimuthDeg: number, radiusMm = 400) => ({ azimuthDeg, radiusMm });
  it.each<[string, Outline, string, RegExp]>([
    ['no diameter', { kind: 'circle', diameterMm: 0 }, 'diameterMm', /more than 0/],
    ['negative', { kind: 'circle', diameterMm: -900 }, 'diameterMm', /more than 0/],
    ['not a number', { kind: 'circle', diameterMm: Number.NaN }, 'diameterMm', /not a number/],
    ['metres', { kind: 'circle', diameterMm: 0.9 }, 'diameterMm', /millimetres/],
    ['micrometres', { kind: 'circle', diameterMm: 900_000 }, 'diameterMm', /millimetres/],
    ['long under short', { kind: 'ellipse', longMm: 7, shortMm: 900, longAxisDeg: 0 }, 'shortMm', /Swap/],
    [
      'no axis',
      { kind: 'ellipse', longMm: 900, shortMm: 700, longAxisDeg: Number.NaN },
      'longAxisDeg',
      /clockwise/,
    ],
    ['no radii', { kind: 'radii', radii: [] }, 'radii', /at least one/],
    ['radius 0', { kind: 'radii', radii: [radius(0, 0)] }, 'radii[0].radiusMm', /more than 0/],
    ['azimuth missing', { kind: 'radii', radii: [radius(Number.NaN)] }, 'radii[0].azimuthDeg', /clockwise/],
    [
      'azimuth twice',
      { kind: 'radii', radii: [radius(0), radius(90), radius(360, 500)] },
      'radii[2].azimuthDeg',
      /already given in radii\[0\]/,
    ],
    ['two corners', { kind: 'polygon', points: square.slice(0, 2) }, 'points', /at least three/],
    [
      'three corners in one place',
      {
        kind: 'polygon',
        points: [
          [1, 1],
          [1, 1],
          [1, 1],
        ],
      },
      'points',
      /at least three/,
    ],
    [
      'on a line',
      {
        kind: 'polygon',
        points: [
          [0, 0],
          [100, 100],
          [300, 300],
        ],
      },
      'points',
      /one line/,
    ],
    [
      'crossing',
      { kind: 'polygon', points: [square[0]!, square[2]!, square[1]!, square[3]!] },
      'points',
      /edge from point 0 meets the edge from point 2/,
    ],
    [
      'a hole in the list',
      { kind: 'polygon', points: [...square, [Number.NaN, 3]] },
      'points[4]',
      /two numbers/,
    ],
    [
      'origin outside',
      { kind: 'polygon', points: square.map(([x, y]): PointMm => [x + 900, y]) },
      'points',
      /origin/,
    ],
    [
      'metres',
      { kind: 'polygon', points: square.map(([x, y]): PointMm => [x / 1000, y / 1000]) },
      'points',
      /millimetres/,
    ],
    ['unknown kind', { kind: 'blob' } as unknown as Outline, 'kind', /Use circle, ellipse, radii or polygon/],
  ])('%s', (_, outline, field, words) => {
    const attempt = () => checkOutline(outline, where);
    expect(attempt).toThrow(InputFault);
    expect(attempt).toThrow(`${where}.${field}:`);
    expect(attempt).toThrow(words);
  });

  it('too many corners to be a tracing', () => {
    const points = Array.from(
      { length: 20_001 },
      (_, i): PointMm => [400 * Math.sin(i / 3183.2), 400 * Math.cos(i / 3183.2)],
    );
    expect(() => checkRing(points, 'voids[0]', 'void')).toThrow('Simplify it');
  });

  it('says a crack needs two sides', () => {
    expect(() =>
      checkRing(
        [
          [0, 0],
          [0, 50],
          [0, 300],
        ],
        'voids[3]',
        'void',
      ),
    ).toThrow(/voids\[3\].*two sides/);
  });
});

describe('shape alone', () => {
  it('takes any size and place', () => {
    expect(() => checkOutlineShape({ kind: 'circle', diameterMm: 2 }, where)).not.toThrow();
    expect(() =>
      checkOutlineShape({ kind: 'polygon', points: square.map(([x, y]): PointMm => [x + 900, y]) }, where),
    ).not.toThrow();
  });
});
