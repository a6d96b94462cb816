import { gapsOf, readTraceTable, stripOriginIn, unsureStretches, writeStripTable } from '@standfast/casefile';
import type { CornersPx, StripLine, StripProvenance } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { chartMap, turnedCorners } from './stripChart.ts';
import { drawnStretches, type LineEdit, mendedLine, onPhoto, onScale } from './stripLine.ts';
import { freePhotoPath, mendedNotes } from './stripNotes.ts';

const CORNERS: CornersPx = [
  [100, 50],
  [1100, 80],
  [1080, 480],
  [110, 460],
];
const SCALE = { depthMm: [0, 200], resistance: [0, 100] } as const;
const map = chartMap(CORNERS, SCALE)!;

/** A level line at 40 %, one sample a millimetre; the paper bows it off the plane by `bow` pixels. */
function lineAt40(bow = 0): StripLine {
  const depthMm = Float64Array.from({ length: 201 }, (_, i) => i);
  const linePx = new Float64Array(402);
  depthMm.forEach((depth, i) => {
    const [x, y] = map.toPhoto({ depthMm: depth, levelPct: 40 });
    linePx.set([x, y + bow], 2 * i);
  });
  return {
    depthMm,
    resistancePct: new Float64Array(201).fill(40),
    confidence: new Float64Array(201).fill(0.9),
    topPct: new Float64Array(201).fill(40),
    bottomPct: new Float64Array(201).fill(40),
    linePx,
    coverage: 1,
    sure: 0.9,
    penColour: [0, 0, 0],
    penWidthPx: 2,
    gapsMm: [],
  };
}

describe('the chart on the photo', () => {
  it('maps its corners to the ends of its scale, and back', () => {
    const top = map.toScale(CORNERS[0]);
    expect(top.depthMm).toBeCloseTo(0, 9);
    expect(top.levelPct).toBeCloseTo(100, 9);
    const [x, y] = map.toPhoto({ depthMm: 200, levelPct: 0 });
    expect([x, y].map((value) => Math.round(value))).toEqual([1080, 480]);
  });

  it('is the same chart after four quarter turns', () => {
    const turned = turnedCorners(turnedCorners(turnedCorners(turnedCorners(CORNERS))));
    expect(turned).toEqual(CORNERS);
    expect(turnedCorners(CORNERS)[1]).toBe(CORNERS[0]);
  });
});

describe('a line mended by hand', () => {
  const erase: LineEdit = { kind: 'erase', stretchesMm: [[50, 60]] };
  const draw: LineEdit = {
    kind: 'draw',
    points: [
      { depthMm: 60, levelPct: 20 },
      { depthMm: 50, levelPct: 10 },
    ],
  };

  it('leaves out what was rubbed out and invents nothing in its place', () => {
    const mended = mendedLine(lineAt40(), [erase]);
    expect(mended.depthMm).toHaveLength(190);
    expect(gapsOf(mended.depthMm)).toEqual([[49, 61]]);
    expect(mended.byHand.every((hand) => hand === 0)).toBe(true);
  });

  it('joins drawn points in the order of depth, marks them, and keeps the rest', () => {
    const mended = mendedLine(lineAt40(), [erase, draw]);
    const at = mended.depthMm.indexOf(55);
    expect(mended.resistancePct[at]).toBeCloseTo(15, 9);
    expect(mended.confidence[at]).toBe(0.5);
    expect(drawnStretches(mended)).toEqual([[50, 60]]);
    expect(mended.resistancePct[mended.depthMm.indexOf(49)]).toBe(40);
    expect([...mended.depthMm].every((depth, i, all) => i === 0 || depth > all[i - 1]!)).toBe(true);
  });

  it('is the found line again when every edit is taken back', () => {
    const found = lineAt40();
    expect(mendedLine(found, []).resistancePct).toEqual(found.resistancePct);
    expect(found.depthMm).toHaveLength(201);
  });

  it('puts what is drawn where the finger was, on bowed paper too', () => {
    const found = lineAt40(12);
    const finger = [600, 300] as const;
    const at = onScale(finger, found, map);
    const mended = mendedLine(found, [
      { kind: 'draw', points: [at, { depthMm: at.depthMm + 2, levelPct: at.levelPct }] },
    ]);
    const px = onPhoto(mended, found, map);
    const drawn = mended.byHand.indexOf(1);
    expect(Math.hypot(px[2 * drawn]! - finger[0], px[2 * drawn + 1]! - finger[1])).toBeLessThan(0.5);
  });
});

it('tells where the line was read unsurely: specks not, neighbours as one, what a person drew not', () => {
  const found = lineAt40();
  for (const depth of [20, 21, 22, 60, 100, 101, 102]) found.confidence[depth] = 0.3;
  const drawn: LineEdit = {
    kind: 'draw',
    points: [
      { depthMm: 99, levelPct: 40 },
      { depthMm: 103, levelPct: 40 },
    ],
  };
  expect(unsureStretches(mendedLine(found, [drawn]))).toEqual([[20, 22]]);
  expect(unsureStretches(mendedLine(found, []))).toEqual([
    [20, 22],
    [100, 102],
  ]);
});

describe('the table kept of a strip', () => {
  const made: StripProvenance = {
    photoSizePx: [1200, 600],
    cornersPx: CORNERS,
    cornersFrom: 'frame',
    cornersSure: 0.97,
    depthMm: [0, 200],
    resistance: [0, 100],
    scaleFrom: 'given',
    curlPx: 0,
    gridLines: [5, 5],
    steps: ['laid flat'],
  };

  it('reads back as the trace, and says how it came about', () => {
    const found = lineAt40();
    found.confidence.fill(0.2, 150, 156);
    const mended = mendedLine(found, [{ kind: 'erase', stretchesMm: [[50, 60]] }]);
    const notes = mendedNotes(mended, made, {
      photo: 'photos/d1.jpg',
      sha256: 'ab12',
      photoScale: 2,
      engineVersion: '0.1.0',
    });
    const bytes = writeStripTable(mended, notes);
    const text = new TextDecoder().decode(bytes);
    expect(text).toContain('# photo sha256 ab12\n');
    expect(text).toContain('(200.0, 100.0)');
    expect(text).toContain('# left out, not invented, mm: 49.0 to 61.0\n');
    expect(text).toContain('# read but unsure, mm: 150.0 to 155.0\n');
    expect(text).toContain('mm at the right, as typed\n');
    expect(stripOriginIn(bytes)).toMatchObject({
      cornersPx: [
        [200, 100],
        [2200, 160],
        [2160, 960],
        [220, 920],
      ],
      cornersFound: { from: 'frame', sure: 0.97 },
      shareRead: 0.94,
      leftOutMm: [[49, 61]],
      unsureMm: [[150, 155]],
      drawnMm: [],
    });
    const trace = readTraceTable(bytes, 'd1.csv');
    expect(trace.depthMm).toHaveLength(190);
    expect(trace.resistancePct[0]).toBe(40);
  });

  it('finds a free name for the photo', () => {
    expect(freePhotoPath(['photos/D1.jpg'], 'd1', 'jpg')).toBe('photos/d1-2.jpg');
    expect(freePhotoPath([], 'Bohrung 3', 'png')).toBe('photos/Bohrung_3.png');
  });
});
