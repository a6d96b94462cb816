/** The same steps here and in NumPy, SciPy and Shapely, side by side, where Debian's Python has them. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { readTraceTable, writeTraceTable } from '@standfast/casefile';
import { outlineRing, randomFrom, readTraces, sectionProperties } from '@standfast/engine';
import { soundnessPosterior } from '../packages/engine/src/section/field/index.ts';
import { cholesky } from '../packages/engine/src/section/field/linear.ts';
import { conditionTrace } from '../packages/engine/src/trace/conditionTrace.ts';
import { DRAWS, inventedCase, lobedSection, READINGS } from './invented.ts';
import { medianMs } from './timing.ts';

const PYTHON = '/usr/bin/python3';
const CHOLESKY_SIZE = 600;

export interface Compared {
  step: string;
  oursMs: number;
  theirsMs: number;
  /** What was used there, and how far the answers lie apart where the work is the same. */
  note: string;
}

/** Null where Python or one of its packages is missing. */
export function compareWithPeers(): Compared[] | null {
  const section = inventedCase.sections[0]!;
  const trace = section.drillings[0]!.trace;
  const table = writeTraceTable(trace);
  const lobed = lobedSection();
  const sites = section.drillings.flatMap(({ azimuthDeg }) =>
    Array.from({ length: 20 }, (_, i) => [1 - i / 25, (azimuthDeg * Math.PI) / 180]),
  );
  const peer = spawnSync(PYTHON, [fileURLToPath(new URL('./peers.py', import.meta.url))], {
    input: JSON.stringify({
      table: new TextDecoder().decode(table),
      section: { outline: lobed.outline.points, voids: lobed.voids },
      choleskySize: CHOLESKY_SIZE,
      draws: DRAWS,
      sites,
      seen: sites.map(([shell]) => (shell! > 0.6 ? 1 : 0)),
    }),
    encoding: 'utf8',
    maxBuffer: 64 * 1024 * 1024,
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  });
  if (peer.status !== 0) return null;
  const { ms, answer } = JSON.parse(peer.stdout) as {
    ms: Record<'table' | 'grid' | 'section' | 'cholesky' | 'field', number>;
    answer: { lastDepthMm: number; areaMm2: number; remaining: number[]; levels: number[]; cholesky: number };
  };

  const covariance = Float64Array.from(
    { length: CHOLESKY_SIZE ** 2 },
    (_, k) =>
      Math.exp(-Math.abs(Math.floor(k / CHOLESKY_SIZE) - (k % CHOLESKY_SIZE)) / 30) +
      (k % (CHOLESKY_SIZE + 1) === 0 ? 1e-6 : 0),
  );
  const factor = covariance.slice();
  const factorise = () => {
    factor.set(covariance);
    cholesky(factor, CHOLESKY_SIZE);
  };
  const readings = readTraces(section.drillings.map(({ id, trace }) => ({ id, trace })));
  const field = {
    outline: outlineRing(section.outline),
    barkMm: section.barkMm,
    drillings: section.drillings.map((drilling, i) => ({
      id: drilling.id,
      pose: drilling,
      reading: readings[i]!,
    })),
  };

  const properties = sectionProperties(lobed);
  const read = readTraceTable(table, 'bench');
  const levels = conditionTrace(trace).levelPct;
  factorise();
  const furthest = (a: ArrayLike<number>, b: ArrayLike<number>) =>
    Math.max(...Array.from({ length: Math.min(a.length, b.length) }, (_, i) => Math.abs(a[i]! - b[i]!)));
  return [
    {
      step: `read a table of ${READINGS.toLocaleString('en')} rows`,
      oursMs: medianMs(() => readTraceTable(table, 'bench')),
      theirsMs: ms.table,
      note: `numpy.loadtxt; last depth differs by ${Math.abs(read.depthMm.at(-1)! - answer.lastDepthMm).toExponential(0)}`,
    },
    {
      step: 'to an even grid, spikes out',
      oursMs: medianMs(() => conditionTrace(trace)),
      theirsMs: ms.grid,
      note: `numpy.bincount, scipy median_filter; levels differ by ${furthest(levels, answer.levels).toPrecision(2)} at most`,
    },
    {
      step: 'section of 720 corners, 4 voids',
      oursMs: medianMs(() => sectionProperties(lobed)),
      theirsMs: ms.section,
      note: `shapely difference, numpy; strength left differs by ${furthest(
        properties.remaining.map(({ value }) => value),
        answer.remaining,
      ).toExponential(0)}`,
    },
    {
      step: `Cholesky, ${CHOLESKY_SIZE} × ${CHOLESKY_SIZE}`,
      oursMs: medianMs(factorise),
      theirsMs: ms.cholesky,
      note: `scipy (LAPACK); corner differs by ${Math.abs(factor[(CHOLESKY_SIZE - 1) * CHOLESKY_SIZE]! - answer.cholesky).toExponential(0)}`,
    },
    {
      step: `field, ${DRAWS.toLocaleString('en')} draws to strength`,
      oursMs: medianMs(() => soundnessPosterior(field, randomFrom(1), DRAWS), 3),
      theirsMs: ms.field,
      note: 'numpy, scipy: a plain Gaussian process on the same mesh, less than what is done here',
    },
  ];
}
