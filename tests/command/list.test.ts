/** The work list of many cases, and cases made of a tree inventory: what goes out comes in again. */
import { existsSync, readdirSync, readFileSync, writeFileSync } from 'node:fs';
import { LIST_COLUMN_NAMES } from '@standfast/casefile';
import { afterEach, beforeAll, beforeEach, describe, expect, it } from 'vitest';
import { caseJson as fullCase, soundRows, traceText, writeCase as writeFull } from './small-case.ts';
import { buildCommand, standfast, temporaryFolder } from './standfast.ts';

beforeAll(buildCommand, 120_000);

let folder: ReturnType<typeof temporaryFolder>;
beforeEach(() => {
  folder = temporaryFolder();
});
afterEach(() => folder.remove());

const traces = { 'traces/d1.csv': traceText(soundRows(80)) };
const DRAWS = ['--draws', '200', '--jobs', '2'];

/** A case with one short drilling, so that assessing it takes no time. */
function writeCase(name: string, change: (json: ReturnType<typeof fullCase>) => object = (json) => json) {
  const json = fullCase();
  json.sections[0]!.drillings.splice(1);
  writeFull(folder.at('cases', name), change(json), traces);
}

function threeCases(): void {
  writeCase('a', (json) => ({ ...json, place: { name: 'Elm Row', latitude: 53.55, longitude: 9.99 } }));
  writeCase('b', (json) => {
    json.tree.label = 'T2';
    json.targets[0]!.occupancy = 'constant';
    return { ...json, visitedOn: '2020-05-14' };
  });
  writeCase('c', (json) => ({ ...json, sections: [] }));
}

const features = (file: string) => JSON.parse(readFileSync(file, 'utf8')).features;

describe('list', () => {
  it('has every case, with its range, what is overdue and why one was not assessed', () => {
    threeCases();
    const [csv, geojson] = [folder.at('list.csv'), folder.at('list.geojson')];
    const ran = standfast(['list', folder.at('cases'), '--csv', csv, '--geojson', geojson, ...DRAWS]);
    expect(ran.err).toBe('');
    expect(ran.status).toBe(0);
    expect(ran.out).toMatch(/3 cases: 2 assessed, 1 not assessed/);
    expect(ran.out).toMatch(/\d\.\d\d \(\d\.\d\d to \d+\.\d\d\)/);
    expect(ran.out).toMatch(/20\d\d-\d\d-\d\d overdue +T2/);
    expect(ran.out).toMatch(/! c, T1: .*section/);

    const lines = readFileSync(csv, 'utf8').trim().split('\r\n');
    expect(lines[0]).toBe(LIST_COLUMN_NAMES.join(','));
    expect(lines.length).toBe(4);
    expect(lines[3]).toMatch(/^c,not assessed,T1,/);
    const [first] = features(geojson).filter((one: { id: string }) => one.id === 'a');
    expect(first.geometry).toEqual({ type: 'Point', coordinates: [9.99, 53.55] });
    expect(first.properties.safetyP05).toBeLessThan(first.properties.safetyP95);

    // A second run keeps what has not changed, and the list of both is the same.
    const before = readFileSync(csv, 'utf8');
    expect(standfast(['list', folder.at('cases'), '--csv', csv, ...DRAWS]).status).toBe(0);
    expect(readFileSync(csv, 'utf8')).toBe(before);

    const due = standfast(['list', folder.at('cases'), '--due', '2024-01-01', ...DRAWS]);
    expect(due.out).toMatch(/1 of 3 cases due by 2024-01-01/);
    expect(due.out).not.toMatch(/not assessed/);
  });

  it('refuses a day that is none, and to write into a case or over something else', () => {
    threeCases();
    expect(standfast(['list', folder.at('cases'), '--due', '2027-02-30'])).toMatchObject({
      status: 2,
      out: '',
    });
    writeFileSync(folder.at('mine.csv'), 'my,own\r\n1,2\r\n');
    const over = standfast(['list', folder.at('cases'), '--csv', folder.at('mine.csv')]);
    expect(over.status).toBe(1);
    expect(over.err).toMatch(/no table of a work list/);
    expect(
      standfast(['list', folder.at('cases'), '--geojson', folder.at('cases', 'a', 'x.geojson')]).err,
    ).toMatch(/lies in the case/);
  });
});

describe('inventory', () => {
  const tree = (longitude: number, latitude: number, properties: object) => ({
    type: 'Feature',
    geometry: { type: 'Point', coordinates: [longitude, latitude] },
    properties,
  });
  const write = (trees: unknown[], more: object = {}) => {
    const file = folder.at('trees.geojson');
    writeFileSync(file, JSON.stringify({ type: 'FeatureCollection', ...more, features: trees }));
    return file;
  };
  const two = [
    tree(9.9876543, 53.1234567, { number: 'A 1', botanical: 'Tilia cordata' }),
    tree(-0.1234567, -33.7654321, { number: 'A 2', botanical: 'Quercus robur' }),
  ];

  it('makes a case of each tree, and the list gives its place back to 1e-7 of a degree', () => {
    const ran = standfast(['inventory', write(two), folder.at('cases')]);
    expect(ran.err).toBe('');
    expect(ran.out).toMatch(/label from number \(guessed\).*“A 1”/);
    expect(ran.out).toMatch(/species from botanical \(guessed\)/);
    expect(readdirSync(folder.at('cases')).sort()).toEqual(['A-1', 'A-2']);
    const out = folder.at('out.geojson');
    expect(standfast(['list', folder.at('cases'), '--geojson', out]).status).toBe(0);
    for (const [i, { geometry, properties }] of features(out).entries()) {
      const given = two[i]!;
      expect(properties.label).toBe((given.properties as { number: string }).number);
      expect(Math.abs(geometry.coordinates[0] - given.geometry.coordinates[0]!)).toBeLessThan(1e-7);
      expect(Math.abs(geometry.coordinates[1] - given.geometry.coordinates[1]!)).toBeLessThan(1e-7);
    }
    // What the list wrote is an inventory again.
    expect(standfast(['inventory', out, folder.at('again')]).out).toMatch(
      /label from label.*\n.*species from species/s,
    );
  });

  it('writes nothing of a file at fault, names each fault by its place, and takes the others when told to', () => {
    const faulty = [
      two[0],
      { type: 'Feature', geometry: null, properties: {} },
      tree(565000, 5934000, {}),
      { type: 'Feature', geometry: { type: 'Polygon', coordinates: [] }, properties: {} },
      two[0],
    ];
    const file = write(faulty);
    const refused = standfast(['inventory', file, folder.at('cases')]);
    expect(refused.status).toBe(1);
    expect(refused.err).toMatch(/features\[1\]: 3 of 5 features.*no geometry.*--skip-faulty/);
    expect(existsSync(folder.at('cases'))).toBe(false);
    const looked = standfast(['inventory', file, folder.at('cases'), '--look']);
    expect(looked.out.replace(/\s+/g, ' ')).toMatch(
      /features\[2\]: .*565000, 5934000.*map projection.*features\[3\]: .*"Polygon"/,
    );
    const skipped = standfast(['inventory', file, folder.at('cases'), '--skip-faulty']);
    expect(skipped.status).toBe(0);
    expect(skipped.out.replace(/\s+/g, ' ')).toMatch(/“A 1” at features 0 and 4/);
    expect(readdirSync(folder.at('cases')).length).toBe(2);
  });

  it('refuses what is no inventory, a property that is not there, and a folder that holds something', () => {
    const refused = (file: string, words: RegExp, ...flags: string[]) => {
      const ran = standfast(['inventory', file, folder.at('cases'), ...flags]);
      expect(ran.status).toBeGreaterThan(0);
      expect(ran.err.replace(/\s+/g, ' ')).toMatch(words);
      expect(existsSync(folder.at('cases'))).toBe(false);
    };
    writeFileSync(folder.at('text.geojson'), 'number;x;y\n1;2;3\n');
    refused(folder.at('text.geojson'), /not JSON/);
    writeFileSync(folder.at('torn.geojson'), readFileSync(write(two)).subarray(0, 200));
    refused(folder.at('torn.geojson'), /ends before its JSON is complete/);
    refused(write(two, { crs: { type: 'name', properties: { name: 'EPSG:25832' } } }), /EPSG:25832.*WGS 84/);
    refused(write([]), /no feature in this file/);
    refused(write(two), /no tree has this property. There are number, botanical/, '--label', 'nr');
    refused(folder.at('missing.geojson'), /missing\.geojson/);
    const taken = standfast(['inventory', write(two), folder.at('.')]);
    expect(taken.err).toMatch(/not empty/);
  });
});
