/**
 * Input that is at fault, from the zip or folder a person gives to the message they get: what is wrong, where, and what
 * to do. Never a crash, never an assessment of what cannot be assessed.
 */
import { bagFromZip, openCase, zipOfBag } from '@standfast/casefile';
import { InputFault } from '@standfast/engine';
import { describe, expect, it } from 'vitest';

const encode = (text: string) => new TextEncoder().encode(text);
const trace = (rows: string[]) => encode(['depth_mm,resistance', ...rows, ''].join('\n'));
const SOUND = trace(Array.from({ length: 200 }, (_, i) => `${i},${40 + (i % 5)}`));

// biome-ignore lint/suspicious/noExplicitAny: each test spoils the case in its own way
type Draft = any;

function sound(): { json: Draft; files: Map<string, Uint8Array> } {
  const json = {
    format: 'standfast-case',
    version: 1,
    tree: {
      species: 'Tilia cordata',
      stemDiameterMm: 700,
      heightM: 18,
      leanDeg: 0,
      crown: { baseHeightM: 4, widthM: 10, shape: 'dome', inLeaf: true },
    },
    site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'II' },
    sections: [
      {
        id: 's1',
        heightM: 1,
        outline: { kind: 'circle', diameterMm: 760 },
        barkMm: 12,
        drillings: [0, 120, 240].map((azimuthDeg, i) => ({
          id: `d${i + 1}`,
          azimuthDeg,
          trace: `traces/d${i + 1}.csv`,
        })),
      },
    ],
  };
  return { json, files: new Map([1, 2, 3].map((i) => [`traces/d${i}.csv`, SOUND])) };
}

/** Spoils a sound case and opens it as it would come, in a zip. */
function opened(spoil: (json: Draft, files: Map<string, Uint8Array>) => void) {
  const { json, files } = sound();
  spoil(json, files);
  files.set('case.json', encode(JSON.stringify(json)));
  return openCase(bagFromZip(zipOfBag(files), 'tree.zip'));
}

const lemniscate = [
  [-300, -300],
  [300, 300],
  [300, -300],
  [-300, 300],
];

describe('bad input', () => {
  it.each<[string, Parameters<typeof opened>[0], string]>([
    [
      'a file that is missing',
      (_, files) => files.delete('traces/d2.csv'),
      'case.json: sections[0].drillings[1].trace: drilling d2 names the trace traces/d2.csv, which is not in the case; there are traces/d1.csv, traces/d3.csv: correct the name or add the file',
    ],
    [
      'depth going backwards',
      (_, files) => files.set('traces/d1.csv', trace(['0,40', '1,40', '0.5,40'])),
      'traces/d1.csv: row 4: depth goes back from 1 to 0.5 mm: depth must grow from row to row; sort the rows, remove repeats, or split the file where a second drilling begins',
    ],
    [
      'a reading that is not a number',
      (_, files) => files.set('traces/d3.csv', trace(['0,40', '1,NaN'])),
      'traces/d3.csv: row 3: resistance is NaN, not a number: correct or remove the row',
    ],
    [
      'an empty table',
      (_, files) => files.set('traces/d1.csv', trace([])),
      'traces/d1.csv: the table has a header but no rows: export the readings again',
    ],
    [
      'a drilling beside the stem',
      (json) => (json.sections[0].drillings[0].offRadialDeg = 120),
      'case.json: sections[0].drillings[0].offRadialDeg: is 120: a needle 90 degrees or more off the radial does not enter the stem; give its heading clockwise from the line to the pith, seen from above',
    ],
    [
      'an outline that crosses itself',
      (json) => (json.sections[0].outline = { kind: 'polygon', points: lemniscate }),
      'case.json: sections[0].outline.points',
    ],
    [
      'a newer version',
      (json) => (json.version = 9),
      'case.json: version 9 is newer than this program reads (up to 1): open it with a newer Standfast. Nothing was read and nothing was changed',
    ],
    [
      'JSON that is no case',
      (json) => delete json.format,
      'case.json: format is missing: a case file says "format": "standfast-case", "version": 1',
    ],
  ])('%s', (_, spoil, message) => {
    try {
      opened(spoil);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(InputFault);
      expect((error as Error).message).toContain(message);
      expect((error as Error).message.split('\n')).toHaveLength(1);
    }
  });

  it('a zip whose paths climb out', () => {
    const zip = zipOfBag(
      new Map([
        ['../../home/x', encode('x')],
        ['case.json', encode('{}')],
      ]),
    );
    expect(() => bagFromZip(zip, 'tree.zip')).toThrow(
      'tree.zip: ../../home/x: the zip is refused: the path climbs out of the case (".."): keep the file inside the case folder',
    );
  });
});

describe('input that is poor, and can be assessed', () => {
  it('a species that is not known', () => {
    expect(opened((json) => (json.tree.species = 'Arbor incognita')).engineInput.tree.species).toBe(
      'Arbor incognita',
    );
  });

  it('one drilling only', () => {
    const { engineInput } = opened((json) => json.sections[0].drillings.splice(1));
    expect(engineInput.sections[0]?.drillings).toHaveLength(1);
  });

  it('a trace of ten million rows', () => {
    const rows = 10_000_000;
    const bytes = new Uint8Array(20 + rows * 12);
    bytes.set(encode('depth_mm,resistance\n'));
    const line = encode('000.0000,40\n');
    // Where the digits of 000.0000 stand, the last first.
    const places = [7, 6, 5, 4, 2, 1, 0];
    for (let i = 0, at = 20; i < rows; i++, at += 12) {
      bytes.set(line, at);
      for (let digits = i, k = 0; digits > 0; k++) {
        bytes[at + places[k]!] = 48 + (digits % 10);
        digits = Math.floor(digits / 10);
      }
    }
    const { json, files } = sound();
    files.set('traces/d1.csv', bytes);
    files.set('case.json', encode(JSON.stringify(json)));
    const { engineInput, notices } = openCase(files);
    const { depthMm } = engineInput.sections[0]!.drillings[0]!.trace;
    expect([depthMm.length, depthMm[12345], depthMm.at(-1)]).toEqual([rows, 1.2345, 999.9999]);
    expect(notices.map(({ text }) => text)).toEqual([
      'readings stand only 0.00010 mm apart: is the depth in millimetres?',
    ]);
  });
});
