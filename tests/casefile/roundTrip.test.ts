/**
 * A case of any make is saved and opened again as the same case, through JSON and zip.
 */
import { bagFromZip, parseCase, saveCase, zipOfBag } from '@standfast/casefile';
import fc from 'fast-check';
import { expect, it } from 'vitest';

const text = fc.string({ unit: 'grapheme', maxLength: 12 });
const name = text.filter((each) => each.trim() === each && each !== '');
const number = fc.double({ noNaN: true, noDefaultInfinity: true, min: -1e6, max: 1e6 }).map((x) => x + 0);
const positive = fc.double({ noNaN: true, min: 1e-3, max: 1e6 });
const date = fc
  .date({ min: new Date('1990-01-01'), max: new Date('2090-01-01'), noInvalidDate: true })
  .map((each) => each.toISOString().slice(0, 10));

/** An object in which any of the fields may be missing. */
const partly = <T extends object>(fields: { [K in keyof T]: fc.Arbitrary<T[K]> }) =>
  fc.record(fields, { requiredKeys: [] });

const outline = fc.oneof(
  fc.record({ kind: fc.constant('circle'), diameterMm: positive }),
  fc.record({ kind: fc.constant('ellipse'), longMm: positive, shortMm: positive, longAxisDeg: number }),
  fc.record({
    kind: fc.constant('radii'),
    radii: fc.array(fc.record({ azimuthDeg: number, radiusMm: positive }), { maxLength: 4 }),
  }),
  fc.record({ kind: fc.constant('polygon'), points: fc.array(fc.tuple(number, number), { maxLength: 4 }) }),
);

const drilling = fc
  .tuple(
    fc.record({ id: name, azimuthDeg: number }),
    partly({ offRadialDeg: number, downDeg: number, trace: name, photo: name, note: text }),
  )
  .map(([needed, more]) => ({ ...needed, ...more }));
const drillings = fc.array(drilling, { maxLength: 3 });

/** Fields of a later version or another program. */
const unknown = fc.dictionary(
  fc.string({ minLength: 1, maxLength: 6 }).map((key) => `x-${key}`),
  // Through text, which has no -0.
  fc.jsonValue({ maxDepth: 2 }).map((value) => JSON.parse(JSON.stringify(value)) as unknown),
  { maxKeys: 2 },
);

const caseJson = fc
  .record({
    more: unknown,
    visit: partly({
      invented: fc.boolean(),
      title: text,
      visitedOn: date,
      client: fc.tuple(partly({ name: text }), unknown).map(([known, more]) => ({ ...more, ...known })),
      assessor: partly({ name: text, credential: text }),
      site: fc.oneof(
        partly({ basicWindSpeedMs: positive, terrain: fc.constantFrom('0', 'I', 'IV') }).map((more) => ({
          windCode: 'EN 1991-1-4',
          ...more,
        })),
        partly({ basicWindSpeedMs: positive, exposure: fc.constantFrom('B', 'C', 'D') }).map((more) => ({
          windCode: 'ASCE 7-22',
          ...more,
        })),
      ),
      signs: fc.array(fc.record({ kind: name, note: text }), { maxLength: 2 }),
      targets: fc.array(fc.record({ what: name, distanceM: positive }), { maxLength: 2 }),
    }),
    tree: fc
      .tuple(partly({ label: text, species: text, heightM: positive, stemDiameterMm: positive }), unknown)
      .map(([known, more]) => ({ ...more, ...known })),
    sections: fc.array(
      fc
        .tuple(fc.record({ id: name, heightM: positive, outline, drillings }), unknown)
        .map(([known, more]) => ({ ...more, ...known })),
      { maxLength: 2 },
    ),
    flares: fc.array(fc.record({ id: name, azimuthDeg: number, drillings }), { maxLength: 2 }),
  })
  .map(({ more, visit, tree, sections, flares }) => ({
    ...more,
    format: 'standfast-case',
    version: 1,
    ...visit,
    tree,
    sections,
    flares,
  }));

it('what is saved is opened as it was, unknown fields and all', () => {
  fc.assert(
    fc.property(caseJson, (json) => {
      const { caseFile } = parseCase(json);
      expect(caseFile).toMatchObject(json);
      const bag = saveCase(caseFile, new Map());
      const back = parseCase(bagFromZip(zipOfBag(bag)).get('case.json')).caseFile;
      expect(back).toEqual(caseFile);
      expect(saveCase(back, bag)).toEqual(bag);
    }),
    { numRuns: 100 },
  );
});

it('any JSON is read or refused with a fault, never a crash', () => {
  const near = fc
    .tuple(
      caseJson,
      fc.array(fc.tuple(fc.nat(), fc.jsonValue({ maxDepth: 1 })), { minLength: 1, maxLength: 3 }),
    )
    .map(([json, spoils]) => {
      const copy = structuredClone(json) as unknown;
      for (const [at, value] of spoils) spoil(copy, at, value);
      return copy;
    });
  fc.assert(
    fc.property(fc.oneof(near, fc.jsonValue()), (json) => {
      try {
        parseCase(json);
      } catch (error) {
        expect(['InputFault', 'CaseFaults']).toContain((error as Error).name);
        expect((error as Error).message).toMatch(/^case\.json: /);
      }
    }),
    { numRuns: 300 },
  );
});

/** Puts a value somewhere into a document. */
function spoil(root: unknown, at: number, value: unknown): void {
  const places: [Record<string, unknown>, string][] = [];
  const visit = (node: unknown): void => {
    if (typeof node !== 'object' || node === null) return;
    for (const [key, part] of Object.entries(node)) {
      places.push([node as Record<string, unknown>, key]);
      visit(part);
    }
  };
  visit(root);
  const place = places[at % places.length];
  if (place) place[0][place[1]] = value;
}
