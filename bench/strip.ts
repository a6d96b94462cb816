/** A photographed strip of 12 megapixels read, stage by stage, and the comparable steps in OpenCV on the same photo. */
import { spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { findChart, randomFrom, readStrip, type StripImage } from '@standfast/engine';
import { homographyFrom, project } from '../packages/engine/src/strip/homography.ts';
import { evenOutPaper } from '../packages/engine/src/strip/paper.ts';
import { ridgesOf, straightLines } from '../packages/engine/src/strip/straightLines.ts';
import { type FlatChart, layFlat } from '../packages/engine/src/strip/warp.ts';
import { median, medianMs, processorMs } from './timing.ts';

const PYTHON = '/usr/bin/python3';
const WIDTH = 4000;
const HEIGHT = 3000;
const CORNERS = [
  [260, 1010],
  [3710, 880],
  [3760, 2010],
  [240, 1930],
] as const;
const FLAT_COLUMNS = 2600;
const FLAT_ROWS = 800;
const RUNS = 5;

export interface StripTimes {
  wholeMs: number;
  findMs: number;
  stages: { step: string; ms: number }[];
  /** The same step in OpenCV, where Debian's Python has it. */
  compared: { step: string; oursMs: number; theirsMs: number }[];
  /** The chart laid flat, ours against OpenCV's: mean and greatest difference, bytes. Null where there is no OpenCV. */
  laidDifference: { mean: number; worst: number } | null;
}

/** Times on a strip drawn on the photo itself: grain, a shadow, a grid, a frame and a line of rings. */
export function stripTimes(): StripTimes {
  const image = paintedStrip();
  const chart = { cornersPx: CORNERS, depthMm: [0, 300], resistance: [0, 100] } as const;
  const clock = new Map<string, number[]>();
  const whole: number[] = [];
  for (let run = 0; run < RUNS; run++) {
    let last = process.cpuUsage();
    let step = '';
    const spent = new Map<string, number>();
    whole.push(
      processorMs(() =>
        readStrip(image, chart, {
          onProgress(_, next) {
            const { user, system } = process.cpuUsage(last);
            if (step) spent.set(step, (spent.get(step) ?? 0) + (user + system) / 1000);
            step = next;
            last = process.cpuUsage();
          },
        }),
      ),
    );
    for (const [each, ms] of spent) clock.set(each, [...(clock.get(each) ?? []), ms]);
  }
  return {
    wholeMs: median(whole),
    findMs: medianMs(() => findChart(image), RUNS),
    stages: [...clock].map(([step, times]) => ({ step, ms: median(times) })),
    ...beside(image),
  };
}

/** The steps that OpenCV has too, on the same photo. */
function beside(image: StripImage): Pick<StripTimes, 'compared' | 'laidDifference'> {
  const flat = [
    [0, 0],
    [FLAT_COLUMNS - 1, 0],
    [FLAT_COLUMNS - 1, FLAT_ROWS - 1],
    [0, FLAT_ROWS - 1],
  ] as const;
  const map = homographyFrom(flat, CORNERS)!;
  const random = randomFrom(20);
  const pairs = Array.from({ length: 20 }, () => {
    const from = [FLAT_COLUMNS * random.uniform(), FLAT_ROWS * random.uniform()] as const;
    const [x, y] = project(map, ...from);
    return [from, [x + 0.3 * random.normal(), y + 0.3 * random.normal()]] as const;
  });
  const lay = () =>
    layFlat(image, FLAT_COLUMNS, FLAT_ROWS, (column, row, out) => out.set(project(map, column, row)), 1);
  const laid = lay();
  const copy = () => ({
    ...laid,
    red: laid.red.slice(),
    green: laid.green.slice(),
    blue: laid.blue.slice(),
  });
  const ridges = ridgesOf(image);
  const peer = inOpenCv(image, pairs, ridges.fold);
  if (!peer) return { compared: [], laidDifference: null };
  const row = (step: string, work: () => unknown, theirs: string) => ({
    step,
    oursMs: medianMs(work, RUNS),
    theirsMs: peer.ms[theirs]!,
  });
  return {
    compared: [
      row('map of four corners (getPerspectiveTransform)', () => homographyFrom(flat, CORNERS), 'four'),
      row(
        'map of 20 noisy pairs (findHomography)',
        () =>
          homographyFrom(
            pairs.map(([from]) => from),
            pairs.map(([, to]) => to),
          ),
        'many',
      ),
      row(`lay ${FLAT_COLUMNS} × ${FLAT_ROWS} flat (warpPerspective)`, lay, 'warp'),
      row('even out shadow (closing and division)', () => evenOutPaper(copy()), 'paper'),
      row('shrink, thin dark structures (resize, black top-hat)', () => ridgesOf(image), 'ridges'),
      row(
        'straight lines among them (HoughLinesP)',
        () => [straightLines(ridges, false), straightLines(ridges, true)],
        'lines',
      ),
      row('find the chart (threshold, contours, quadrilateral)', () => findChart(image), 'find'),
    ],
    laidDifference: differenceOf(laid, peer.laid),
  };
}

/** What OpenCV takes for each step, and the chart as it lays it flat; null where Debian's Python has no OpenCV. */
function inOpenCv(
  image: StripImage,
  pairs: readonly unknown[],
  fold: number,
): { ms: Record<string, number>; laid: Uint8Array } | null {
  const folder = mkdtempSync(join(tmpdir(), 'standfast-bench-'));
  try {
    const photo = join(folder, 'photo');
    const laid = join(folder, 'laid');
    writeFileSync(photo, image.rgba);
    const peer = spawnSync(PYTHON, [fileURLToPath(new URL('./strip.py', import.meta.url))], {
      input: JSON.stringify({
        photo,
        laid,
        width: WIDTH,
        height: HEIGHT,
        corners: CORNERS,
        columns: FLAT_COLUMNS,
        rows: FLAT_ROWS,
        pairs,
        fold,
      }),
      encoding: 'utf8',
      env: { ...process.env, OMP_NUM_THREADS: '1' },
    });
    if (peer.status !== 0) return null;
    return { ms: JSON.parse(peer.stdout), laid: readFileSync(laid) };
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function differenceOf({ red, green, blue }: FlatChart, theirs: Uint8Array) {
  let sum = 0;
  let worst = 0;
  [red, green, blue].forEach((plane, channel) => {
    plane.forEach((value, k) => {
      const off = Math.abs(value - theirs[3 * k + channel]!);
      sum += off;
      worst = Math.max(worst, off);
    });
  });
  return { mean: sum / theirs.length, worst };
}

export function paintedStrip(): StripImage {
  const random = randomFrom(12);
  const toChart = homographyFrom(CORNERS, [
    [0, 0],
    [300, 0],
    [300, 100],
    [0, 100],
  ])!;
  const rgba = new Uint8ClampedArray(4 * WIDTH * HEIGHT).fill(255);
  const near = (value: number, every: number) => Math.abs(value - every * Math.round(value / every));
  for (let y = 0; y < HEIGHT; y++) {
    for (let x = 0; x < WIDTH; x++) {
      const [mm, down] = project(toChart, x, y);
      const p = 4 * (y * WIDTH + x);
      let light = 215 - 60 * (x / WIDTH) + 3 * random.normal();
      let dark = 0;
      if (mm > -0.2 && mm < 300.2 && down > -0.2 && down < 100.2) {
        const frame = mm < 0.2 || mm > 299.8 || down < 0.2 || down > 99.8;
        if (frame) dark = 0.85;
        else if (near(mm, 10) < 0.12 || near(down, 10) < 0.12) dark = 0.15;
        const level = 45 + 8 * Math.sin(mm * 1.5) + 15 * Math.sin(mm / 30);
        const slope = 12 * Math.cos(mm * 1.5) + 0.5 * Math.cos(mm / 30);
        if (Math.abs(100 - down - level) < 0.35 * Math.hypot(1, slope / 3) + 0.3) dark = 0.8;
      }
      light *= 1 - dark;
      rgba[p] = light;
      rgba[p + 1] = light;
      rgba[p + 2] = light * 0.97;
    }
  }
  return { widthPx: WIDTH, heightPx: HEIGHT, rgba };
}
