import { expect, it } from 'vitest';
import { writeStripTable } from '../trace/writeStripTable.ts';
import { type StripOrigin, shareRead, stripNotes, stripNotesIn, stripOriginIn } from './notes.ts';

const ORIGIN: StripOrigin = {
  photo: 'photos/d1.jpg',
  sha256: 'ab12',
  cornersPx: [
    [10.5, 20],
    [900, 22.5],
    [905, 410],
    [8, 402.3],
  ],
  cornersFound: { from: 'grid', sure: 0.93 },
  depthMm: [240, 0],
  resistance: [0, 100],
  scaleFrom: 'printed numbers',
  shareRead: 0.875,
  leftOutMm: [
    [12.5, 14],
    [100, 120.3],
  ],
  unsureMm: [[30, 31.5]],
  drawnMm: [],
};

function tableWith(notes: readonly string[]): Uint8Array {
  const samples = Float64Array.of(1, 2, 3);
  return writeStripTable({ depthMm: samples, resistancePct: samples, confidence: samples }, notes);
}

it('is understood again as it was written, whichever way corners and scale were come by', () => {
  for (const change of [
    {},
    { cornersFound: null, scaleFrom: 'given', drawnMm: [[5, 9.5]] },
    { scaleFrom: 'taps', leftOutMm: [], unsureMm: [] },
    { scaleFrom: 'ruler', depthMm: [-5, 240.25], photo: 'a strip, twice.jpg' },
  ] satisfies Partial<StripOrigin>[]) {
    const origin: StripOrigin = { ...ORIGIN, ...change };
    expect(stripOriginIn(tableWith(stripNotes(origin, ['laid flat'], '0.1.0')))).toEqual(origin);
  }
});

it('knows no share read in a table from before it was told', () => {
  const notes = stripNotes({ ...ORIGIN, shareRead: null }, [], '0.1.0');
  expect(notes.join()).not.toContain('read along');
  expect(stripOriginIn(tableWith(notes))?.shareRead).toBeNull();
});

it('is nothing where a table is of no strip, or its notes were cut short', () => {
  expect(stripOriginIn(tableWith(['made by hand']))).toBeNull();
  expect(stripOriginIn(tableWith([]))).toBeNull();
  const cut = stripNotes(ORIGIN, [], '0.1.0').filter((note) => !note.startsWith('depth'));
  expect(stripOriginIn(tableWith(cut))).toBeNull();
});

it('hands out the notes at the head of a strip’s table alone', () => {
  const read = (text: string) => stripNotesIn(new TextEncoder().encode(text));
  const head = '# read from the photographed paper strip photos/d1.jpg\r\n# photo sha256 ab12\r\n';
  expect(read(`${head}depth_mm,resistance\r\n1,2\r\n# 3`)).toEqual([
    'read from the photographed paper strip photos/d1.jpg',
    'photo sha256 ab12',
  ]);
  expect(read('# read from the photographed paper strip a.jpg')).toHaveLength(1);
  expect(read('# made by hand\ndepth_mm,resistance\n1,2')).toEqual([]);
});

it('counts what was read against the whole chart, whichever way depth runs', () => {
  const depthMm = Float64Array.of(10, 20, 50, 60);
  expect(shareRead(depthMm, [[20, 50]], [0, 100])).toBeCloseTo(0.2, 12);
  expect(shareRead(depthMm, [], [100, 0])).toBeCloseTo(0.5, 12);
  expect(shareRead(new Float64Array(0), [], [0, 100])).toBe(0);
});
