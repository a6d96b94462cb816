/** A drilling that was read off a paper strip says in the report how its chart was set and how much was read. */
import { type StripOrigin, stripNotes, writeStripTable } from '@standfast/casefile';
import { type ReportOptions, reportDocument, sampleAssessment, sampleCase } from '@standfast/report';
import { describe, expect, it } from 'vitest';

const ORIGIN: StripOrigin = {
  photo: 'photos/d2.jpg',
  sha256: 'ab12',
  cornersPx: [
    [101.4, 220.2],
    [3900, 250],
    [3890, 1410],
    [98, 1402],
  ],
  cornersFound: { from: 'frame', sure: 0.93 },
  depthMm: [0, 240],
  resistance: [0, 100],
  scaleFrom: 'printed numbers',
  shareRead: 0.87,
  leftOutMm: [[100, 120.5]],
  unsureMm: [],
  drawnMm: [],
};

interface Asked {
  units?: ReportOptions['units'];
  language?: 'en' | 'fr';
}

/** What stands under the trace of drilling d2 of its strip, fact by fact; undefined where nothing does. */
function told(origin: StripOrigin | null, { units = 'metric', language = 'en' }: Asked = {}) {
  const sample = sampleCase();
  const notes = origin === null ? ['from a drill’s memory'] : stripNotes(origin, ['laid flat'], '0.1.0');
  const samples = Float64Array.of(1, 2);
  const line = { depthMm: samples, resistancePct: samples, confidence: samples };
  const caseFile = {
    ...sample,
    report: { ...sample.report, language },
    sections: sample.sections.map((section) => ({
      ...section,
      drillings: [
        { id: 'd1', azimuthDeg: 0 },
        { id: 'd2', azimuthDeg: 90, trace: 'traces/d2.csv' },
      ],
    })),
  };
  const { blocks } = reportDocument({
    assessment: sampleAssessment(3),
    caseFile,
    options: { units, generatedOn: '2026-05-02' },
    files: new Map([['traces/d2.csv', writeStripTable(line, notes)]]),
  });
  const at = blocks.findIndex(
    (block) => block.kind === 'definitions' && block.items.some(({ text }) => text === ORIGIN.photo),
  );
  const facts = blocks[at];
  if (facts?.kind !== 'definitions') return undefined;
  expect(blocks.slice(0, at).findLast((block) => block.kind === 'figure')).toMatchObject({ id: 'trace-d2' });
  return facts.items.map(({ term, text }) => `${term}: ${text.replace(/[\u00a0\u202f]/g, ' ')}`);
}

describe('a drilling read off a photographed strip', () => {
  it('tells corners, scale and share, each with how it was come by', () => {
    expect(told(ORIGIN)).toEqual([
      'Paper strip: photos/d2.jpg',
      'Its chart: Corners found by the printed frame (93 % sure), clockwise from the chart’s top left: (101; 220) (3900; 250) (3890; 1410) (98; 1402) px on the photo.',
      'Its scale: Depth 0 mm at the left edge to 240 mm at the right, resistance 0 % at the bottom edge to 100 % at the top, by the numbers printed on the chart.',
      'Read of it: 87 % of the chart’s width. Could not be read and is left out: 100 to 121 mm.',
    ]);
  });

  it('tells what a person did, and which stretches are unsure', () => {
    const facts = told({
      ...ORIGIN,
      cornersFound: null,
      scaleFrom: 'taps',
      shareRead: null,
      leftOutMm: [],
      unsureMm: [[12, 15]],
      drawnMm: [[50, 61]],
    });
    expect(facts?.[1]).toContain('Corners set by hand, clockwise from the chart’s top left: (101; 220)');
    expect(facts?.[2]).toContain(', by two marked points of known depth.');
    expect(facts?.[3]).toBe('Read of it: Read but unsure: 12 to 15 mm. Drawn by hand: 50 to 61 mm.');
  });

  it('tells a stretch shorter than is printed by one depth', () => {
    const unsureMm = [[200.2, 201]] as const;
    expect(told({ ...ORIGIN, unsureMm }, { units: 'us' })?.[3]).toContain('Read but unsure: 7.9 in.');
  });

  it('names the longest of many stretches and counts the others', () => {
    const unsureMm = Array.from({ length: 11 }, (_, i) => [10 * i, 10 * i + (i < 3 ? 1 : 4)] as const);
    expect(told({ ...ORIGIN, unsureMm })?.[3]).toMatch(
      /Read but unsure: 30 to 34 mm, .*, 100 to 104 mm, 3 shorter\.$/,
    );
  });

  it('is in the units and the language of the report', () => {
    expect(told(ORIGIN, { units: 'us' })?.[2]).toContain(
      'Depth 0.0 in at the left edge to 9.4 in at the right',
    );
    const french = told(ORIGIN, { language: 'fr' })?.join(' ');
    expect(french).toContain('au bord supérieur, d’après les nombres imprimés sur le diagramme.');
    expect(french).not.toMatch(/\b(edge|chart|read)\b/i);
  });

  it('is not told where the trace came from a drill’s memory', () => {
    expect(told(null)).toBeUndefined();
  });
});
