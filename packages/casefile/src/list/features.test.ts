import { InputFault } from '@standfast/engine';
import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { featureScanner } from './features.ts';

function scan(text: string, pieceLength = text.length || 1): string[] {
  const scanner = featureScanner('trees.geojson');
  const found: string[] = [];
  for (let at = 0; at < text.length; at += pieceLength)
    for (const feature of scanner.push(text.slice(at, at + pieceLength))) found.push(feature.text);
  scanner.end();
  return found;
}

const collection = (features: unknown[], more: Record<string, unknown> = {}) =>
  JSON.stringify({ type: 'FeatureCollection', ...more, features });

function message(text: string): string {
  try {
    scan(text, 7);
  } catch (thrown) {
    if (thrown instanceof InputFault) return thrown.message;
    throw thrown;
  }
  return 'nothing is wrong';
}

describe('features of a file', () => {
  it('are the same however the file is cut into pieces and its values are laid out', () => {
    fc.assert(
      fc.property(
        fc.array(fc.jsonValue({ maxDepth: 3 }), { maxLength: 6 }),
        fc.jsonValue({ maxDepth: 2 }),
        fc.integer({ min: 1, max: 40 }),
        fc.constantFrom(0, 2),
        fc.boolean(),
        (features, other, length, indent, typeLast) => {
          const members = typeLast
            ? { metadata: other, features, type: 'FeatureCollection' }
            : { type: 'FeatureCollection', features, metadata: other };
          const text = JSON.stringify(members, null, indent);
          expect(scan(text, length).map((each) => JSON.parse(each))).toEqual(
            JSON.parse(JSON.stringify(features)),
          );
        },
      ),
      { numRuns: 300 },
    );
  });

  it('are found after a byte order mark, and none in an empty list', () => {
    expect(scan(`\uFEFF${collection([{ a: 1 }])}`)).toEqual(['{"a":1}']);
    expect(scan(collection([]), 3)).toEqual([]);
  });

  it.each([
    ['', /empty/],
    ['tree;x;y\n1;2;3', /not JSON/],
    ['[1, 2]', /a JSON list/],
    ['{"type":"Topology","features":[]}', /this is a Topology/],
    ['{"type":"Feature","geometry":null,"properties":{}}', /this is a Feature, not a FeatureCollection/],
    ['{"type":"FeatureCollection"}', /no GeoJSON FeatureCollection with features/],
    ['{"trees":[]}', /no GeoJSON FeatureCollection/],
    [
      collection([{ a: 1 }, { b: 2 }]).slice(0, -6),
      /ends before its JSON is complete, after 1 whole feature:/,
    ],
    [`${collection([])}x`, /after the end/],
  ])('%j is refused in words', (text, words) => {
    expect(message(text)).toMatch(words);
  });

  it('take a crs member that says WGS 84, and refuse another', () => {
    const named = (name: string) => collection([], { crs: { type: 'name', properties: { name } } });
    for (const name of [
      'urn:ogc:def:crs:OGC:1.3:CRS84',
      'EPSG:4326',
      'urn:ogc:def:crs:EPSG::4326',
      'OGC:CRS84',
    ])
      expect(message(named(name))).toBe('nothing is wrong');
    for (const name of ['urn:ogc:def:crs:EPSG::25832', 'EPSG:3857', 'EPSG:14326'])
      expect(message(named(name))).toMatch(
        /trees\.geojson: crs: its crs member says “.*(25832|3857|14326)”.*WGS 84/,
      );
    expect(message(collection([], { crs: null }))).toBe('nothing is wrong');
  });
});
