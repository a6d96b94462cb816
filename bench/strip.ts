/** A photographed strip of 12 megapixels read, stage by stage, and the comparable steps in OpenCV. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { findChart, randomFrom, readStrip, type StripImage } from '@standfast/engine';
import { homographyFrom, project } from '../packages/engine/src/strip/homography.ts';
import { evenOutPaper } from '../packages/engine/src/strip/paper.ts';
import { layFlat } from '../packages/engine/src/strip/warp.ts';
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
    whole.push(
      processorMs(() =>
        readStrip(image, chart, {
          onProgress(_, next) {
            const { user, system } = process.cpuUsage(last);
            if (step) clock.set(step, [...(clock.get(step) ?? []), (user + system) / 1000]);
            step = next;
            last = process.cpuUsage();
          },
        }),
      ),
    );
  }
  return {
    wholeMs: median(whole),
    findMs: medianMs(() => findChart(image), RUNS),
    stages: [...clock].map(([step, times]) => ({ step, ms: median(times) })),
    compared: compared(image),
  };
}

function compared(image: StripImage): StripTimes['compared'] {
  const flat = [
    [0, 0],
    [FLAT_COLUMNS - 1, 0],
    [FLAT_COLUMNS - 1, FLAT_ROWS - 1],
    [0, FLAT_ROWS - 1],
  ] as const;
  const map = homographyFrom(flat, CORNERS)!;
  const lay = () =>
    layFlat(image, FLAT_COLUMNS, FLAT_ROWS, (column, row, out) => out.set(project(map, column, row)), 1);
  const laid = lay();
  const copy = () => ({
    ...laid,
    red: laid.red.slice(),
    green: laid.green.slice(),
    blue: laid.blue.slice(),
  });
  const peer = spawnSync(PYTHON, [fileURLToPath(new URL('./strip.py', import.meta.url))], {
    input: JSON.stringify({
      width: WIDTH,
      height: HEIGHT,
      corners: CORNERS,
      columns: FLAT_COLUMNS,
      rows: FLAT_ROWS,
    }),
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1' },
  });
  if (peer.status !== 0) return [];
  const theirs = JSON.parse(peer.stdout) as { warp: number; paper: number };
  return [
    {
      step: `lay ${FLAT_COLUMNS} × ${FLAT_ROWS} flat (warpPerspective)`,
      oursMs: medianMs(lay, RUNS),
      theirsMs: theirs.warp,
    },
    {
      step: 'even out shadow (closing and division)',
      oursMs: medianMs(() => evenOutPaper(copy()), RUNS),
      theirsMs: theirs.paper,
    },
  ];
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
