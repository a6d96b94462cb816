import { describe, expect, it } from 'vitest';
import { lineReader } from './lines.ts';

function linesOf(geometries: unknown[]) {
  const reader = lineReader('roads.geojson');
  const features = geometries.map((geometry) => ({ type: 'Feature', properties: {}, geometry }));
  reader.push(JSON.stringify({ type: 'FeatureCollection', features }));
  return reader.end();
}

describe('a background', () => {
  it('takes lines, and areas by their edges', () => {
    const square = [
      [0, 0],
      [1, 0],
      [1, 1],
      [0, 0],
    ];
    const set = linesOf([
      {
        type: 'LineString',
        coordinates: [
          [1, 2],
          [3, 4, 99],
        ],
      },
      { type: 'Point', coordinates: [5, 5] },
      null,
      { type: 'MultiPolygon', coordinates: [[square], [square]] },
      { type: 'GeometryCollection', geometries: [{ type: 'MultiLineString', coordinates: [square] }] },
    ]);
    expect([...set.starts]).toEqual([0, 2, 6, 10, 14]);
    expect([...set.lonLatDeg.slice(0, 4)]).toEqual([1, 2, 3, 4]);
    expect(set.lonLatDeg.length).toBe(28);
  });

  it('refuses what is no line or no longitude and latitude, with its place', () => {
    expect(() => linesOf([{ type: 'Point', coordinates: [1, 2] }])).toThrow(/no line and no area/);
    expect(() =>
      linesOf([
        {
          type: 'LineString',
          coordinates: [
            [1, 2],
            [5e5, 6e6],
          ],
        },
      ]),
    ).toThrow(/features\[0\]: the coordinates 500000, 6000000.*WGS 84/);
    expect(() =>
      linesOf([
        {
          type: 'LineString',
          coordinates: [
            [1, 2],
            ['a', 2],
          ],
        },
      ]),
    ).toThrow(/not \[longitude/);
  });
});
