/**
 * Our own print read by our own reader: the demonstration's report, its pages rendered by poppler as a scanner would
 * hand them over, and each trace on them found, scaled and followed with nothing said about it.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openCase } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import {
  assess,
  type DrillingAssessment,
  readStrip,
  type StripImage,
  type StripLine,
  settleChart,
} from '@standfast/engine';
import { reportDocument, toPdf } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { afterAll, beforeAll, expect, it } from 'vitest';
import { decodePhoto } from '../../apps/command/src/strip/photo.ts';

/** What the issue asks of clean strips: depth within 0.5 mm, level within 1 % of full scale, root mean square. */
const DEPTH_MM = 0.5;
const LEVEL_PCT = 1;
/** The pen's own width on paper and what is drawn over it (dashed lines of reference and friction) hide a little. */
const READ_SHARE = 0.95;
const DRAWS = 200;
const POINTS_AN_INCH = 72;
/** A trace's figure with its heading, zones and depths is about so high, points. */
const FIGURE_POINTS = 165;
/** Pages of millions of pixels, on a machine that may be busy. */
const PATIENCE_MS = 180_000;

const folder = mkdtempSync(join(tmpdir(), 'read-back-'));
afterAll(() => rmSync(folder, { recursive: true }));

interface Caption {
  page: number;
  id: string;
  /** Top of the caption's line, points from the page's top. */
  top: number;
}

let pdf: string;
let drillings: Map<string, DrillingAssessment>;
let captions: Caption[];

beforeAll(async () => {
  const { caseFile, engineInput } = openCase(await demoBag());
  const assessment = assess(engineInput, { draws: DRAWS });
  const all = [
    ...assessment.sections.flatMap((section) => section.drillings),
    ...assessment.flares.flatMap((flare) => flare.drillings),
  ];
  drillings = new Map(all.map((drilling) => [drilling.id, drilling]));
  const report = reportDocument({
    assessment,
    caseFile,
    options: { units: 'metric', generatedOn: '2026-06-20' },
  });
  pdf = join(folder, 'report.pdf');
  writeFileSync(pdf, await toPdf(report, { fonts: await loadFonts() }));
  captions = captionsOf(pdf);
}, PATIENCE_MS);

/** Every caption `Figure 8. Drilling d3, …`, as poppler sees its words. */
function captionsOf(file: string): Caption[] {
  const html = execFileSync('pdftotext', ['-bbox', file, '-'], { encoding: 'utf8', maxBuffer: 1 << 27 });
  return html.split('<page ').flatMap((page, number) => {
    const words = [...page.matchAll(/yMin="([\d.]+)"[^>]*>([^<]*)<\/word>/g)];
    return words.flatMap(([, top], i) => {
      const [figure, , drilling, id] = words.slice(i, i + 4).map((word) => word[2]!);
      if (figure !== 'Figure' || drilling !== 'Drilling' || !id) return [];
      return [{ page: number, id: id.replace(',', ''), top: Number(top) }];
    });
  });
}

async function rendered(page: number, dpi: number): Promise<StripImage> {
  const stem = join(folder, `page-${page}-${dpi}`);
  const at = ['-r', String(dpi), '-f', String(page), '-l', String(page)];
  execFileSync('pdftoppm', [...at, '-png', '-singlefile', pdf, stem]);
  return decodePhoto(readFileSync(`${stem}.png`), `page ${page}`);
}

/** Rows of a page: what a person photographs who wants this one chart. */
function rowsOf(image: StripImage, from: number, to: number): StripImage {
  const [first, last] = [Math.max(0, Math.round(from)), Math.min(image.heightPx, Math.round(to))];
  const row = 4 * image.widthPx;
  return { ...image, heightPx: last - first, rgba: image.rgba.slice(first * row, last * row) };
}

/** Finds and reads the chart on a picture of a page, with nothing known; null where its numbers were not read. */
function readBack(image: StripImage) {
  const settled = settleChart(image, {}, { photo: 'page', chart: 'chart' });
  if (!settled.chart) return null;
  expect(settled.scaleFrom).toBe('printed numbers');
  return readStrip(image, settled.chart, settled);
}

/** Holds a line against the least and greatest level drawn at each depth. */
function expectTrace(line: StripLine, drilling: DrillingAssessment) {
  const { depthMm, lowPct, highPct } = drilling.drawn;
  const [first, last] = [depthMm[0]!, depthMm.at(-1)!];
  const step = (last - first) / (depthMm.length - 1);
  /** How far a level lies outside of what is drawn within half a column of a depth. */
  const outside = (depth: number, level: number) => {
    const i = Math.min(depthMm.length - 1, Math.max(0, Math.round((depth - first) / step)));
    const near = [i - 1, i, i + 1].filter((k) => k >= 0 && k < depthMm.length);
    const low = Math.min(...near.map((k) => lowPct[k]!));
    const high = Math.max(...near.map((k) => highPct[k]!));
    return Math.max(0, low - level, level - high);
  };
  const misfit = (shiftMm: number) => {
    let sum = 0;
    line.depthMm.forEach((depth, i) => {
      sum += outside(depth + shiftMm, line.resistancePct[i]!) ** 2;
    });
    return Math.sqrt(sum / line.depthMm.length);
  };
  expect(misfit(0), `level of ${drilling.id}`).toBeLessThan(LEVEL_PCT);
  // The middle of what is drawn, so that a shift shows that the envelope's breadth would hide.
  const middle = (depth: number) => {
    const i = Math.min(depthMm.length - 2, Math.max(0, Math.floor((depth - first) / step)));
    const share = (depth - depthMm[i]!) / step;
    const at = (k: number) => (lowPct[k]! + highPct[k]!) / 2;
    return at(i) + share * (at(i + 1) - at(i));
  };
  let best = Number.POSITIVE_INFINITY;
  let shift = 0;
  for (let mm = -3; mm <= 3; mm += 0.1) {
    let sum = 0;
    line.depthMm.forEach((depth, i) => {
      if (depth < first + 3 || depth > last - 3) return;
      sum += (line.resistancePct[i]! - middle(depth + mm)) ** 2;
    });
    if (sum < best) {
      best = sum;
      shift = mm;
    }
  }
  expect(Math.abs(shift), `depth of ${drilling.id}`).toBeLessThanOrEqual(DEPTH_MM);
  const span = line.depthMm.at(-1)! - line.depthMm[0]! - line.gapsMm.reduce((sum, [a, b]) => sum + b - a, 0);
  expect(span / (last - first), `share of ${drilling.id} that was read`).toBeGreaterThan(READ_SHARE);
}

it('has a caption for each drilling that was assessed', () => {
  expect(captions.map(({ id }) => id).sort()).toEqual([...drillings.keys()].sort());
});

it(
  'finds a trace on a whole page, and reads it to the envelope drawn',
  async () => {
    const dpi = 200;
    const page = captions[1]!.page;
    const reading = readBack(await rendered(page, dpi))!;
    // Of several charts on a page any may be found: it is the one whose caption stands next below it.
    const bottom = (reading.provenance.cornersPx[2][1] * POINTS_AN_INCH) / dpi;
    const below = captions.filter((caption) => caption.page === page && caption.top > bottom);
    expectTrace(reading.lines[0]!, drillings.get(below[0]!.id)!);
  },
  PATIENCE_MS,
);

it(
  'reads every trace of the report from its page with nothing said',
  async () => {
    const dpi = 250;
    const px = dpi / POINTS_AN_INCH;
    for (const page of new Set(captions.map((caption) => caption.page))) {
      const image = await rendered(page, dpi);
      for (const { id, top } of captions.filter((caption) => caption.page === page)) {
        const reading = readBack(rowsOf(image, (top - FIGURE_POINTS) * px, top * px));
        expect(reading, `chart of ${id}`).not.toBeNull();
        expectTrace(reading!.lines[0]!, drillings.get(id)!);
      }
    }
  },
  PATIENCE_MS,
);
