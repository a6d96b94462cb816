/**
 * How good the soundness field is on simulated sections, written to docs/accuracy/sections.md with its figures:
 * `npm run accuracy sections`. Readings go through simulated traces and the trace reader.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bars } from './figures.ts';
import { BASELINES, baselineWidth, type Coverage, coverageOf, type Judged, judgeSection } from './judge.ts';
import { JUDGING_FAMILIES, TUNING_FAMILIES } from './trueSection.ts';

const COUNTS = [1, 2, 4, 6, 8, 12];
const PER_CELL = 8;
const TUNING_PER_CELL = 3;
const DRAWS = 500;
/** Seeds of the sections judged; those used in tuning began at 50 000. */
const JUDGING_SEED = 700_000;
const TUNING_SEED = 800_000;

const out = fileURLToPath(new URL('../../../docs/accuracy/sections.md', import.meta.url));
const figures = join(dirname(out), 'figures');
mkdirSync(figures, { recursive: true });

function run(families: string[], seed: number, perCell: number): Judged[] {
  const rows: Judged[] = [];
  families.forEach((family, f) => {
    for (const drillings of COUNTS) {
      for (let k = 0; k < perCell; k++) {
        const own = seed + 10_000 * f + 100 * drillings + k;
        rows.push(...judgeSection(family, own, { drillings, readings: 'traces' }, DRAWS));
      }
    }
    process.stderr.write(`${family}: ${perCell * COUNTS.length} sections\n`);
  });
  return rows;
}

const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
const two = (x: number) => x.toFixed(3);

/** Standard error of a coverage: directions of one section go together, so sections are what is counted. */
function standardError(rows: readonly Judged[]): number {
  const bySection = new Map<string, number[]>();
  for (const r of rows) {
    const key = `${r.family} ${r.section} ${r.drillings}`;
    const list = bySection.get(key) ?? [];
    list.push(r.truth >= r.p05 && r.truth <= r.p95 ? 1 : 0);
    bySection.set(key, list);
  }
  const shares = [...bySection.values()].map((l) => l.reduce((a, b) => a + b, 0) / l.length);
  const mean = shares.reduce((a, b) => a + b, 0) / shares.length;
  const variance = shares.reduce((s, x) => s + (x - mean) ** 2, 0) / (shares.length - 1);
  return Math.sqrt(variance / shares.length);
}

const head =
  '| | sections | held | truth below | truth above | mean width | bias of median |\n|---|---|---|---|---|---|---|';
function line(name: string, rows: readonly Judged[]): string {
  const c: Coverage = coverageOf(rows);
  return `| ${name} | ${c.sections} | ${percent(c.covered)} ± ${percent(standardError(rows))} | ${percent(c.below)} | ${percent(c.above)} | ${two(c.width)} | ${c.bias >= 0 ? '+' : '−'}${two(Math.abs(c.bias))} |`;
}

const started = Date.now();
const judging = Object.keys(JUDGING_FAMILIES);
const tuning = Object.keys(TUNING_FAMILIES);
const judged = run(judging, JUDGING_SEED, PER_CELL);
const tuned = run(tuning, TUNING_SEED, TUNING_PER_CELL);
const of = (rows: Judged[], n: number) => rows.filter((r) => r.drillings === n);
const usual = judged.filter((r) => r.drillings >= 4 && r.drillings <= 8);

const isUsual = (r: Judged) => r.drillings >= 4 && r.drillings <= 8;
const widthOf = (rows: Judged[], b: (typeof BASELINES)[number]) =>
  baselineWidth(rows, b, coverageOf(rows).covered);
const straightRatio = (rows: Judged[]) => coverageOf(rows).width / widthOf(rows, 'walls joined straight');

function beside(rows: Judged[]): string {
  const columns = [...COUNTS.map((n) => of(rows, n)), rows.filter(isUsual)];
  const row = (name: string, f: (rows: Judged[]) => number) =>
    `| ${name} | ${columns.map((c) => two(f(c))).join(' | ')} |`;
  return [
    `| interval from | ${COUNTS.join(' | ')} | 4 to 8 together |`,
    `|---|${columns.map(() => '---').join('|')}|`,
    row('the field', (c) => coverageOf(c).width),
    ...BASELINES.map((b) => row(b, (c) => widthOf(c, b))),
  ].join('\n');
}

writeFileSync(
  join(figures, 'sections-coverage.svg'),
  bars({
    title: 'Share of truths held by the 90 % interval, by number of drillings',
    groups: COUNTS.map((n) => ({
      label: `${n}`,
      values: [coverageOf(of(judged, n)).covered, coverageOf(of(tuned, n)).covered],
    })),
    series: ['families judged, never fitted to', 'tuning families, new seeds'],
    top: 1,
    band: [0.87, 0.93],
    axis: 'drillings at the section',
  }),
);
writeFileSync(
  join(figures, 'sections-width.svg'),
  bars({
    title: 'Mean width of the interval of remaining strength at equal coverage',
    groups: COUNTS.map((n) => ({
      label: `${n}`,
      values: [
        coverageOf(of(judged, n)).width,
        baselineWidth(of(judged, n), 'walls joined straight', coverageOf(of(judged, n)).covered),
        baselineWidth(of(judged, n), 'smallest wall', coverageOf(of(judged, n)).covered),
      ],
    })),
    series: ['the field', 'walls joined straight', 'smallest wall'],
    top: 1,
    axis: 'drillings at the section',
  }),
);
writeFileSync(
  join(figures, 'sections-families.svg'),
  bars({
    title: 'Share of truths held, by family (4 to 8 drillings)',
    groups: judging.map((f) => ({
      label: f,
      values: [coverageOf(usual.filter((r) => r.family === f)).covered],
    })),
    series: ['families judged, never fitted to'],
    top: 1,
    band: [0.87, 0.93],
    axis: 'family',
  }),
);

const page = `# How good the soundness field is

Made by \`npm run accuracy sections\` from \`tests/simulated/sections/\`. Method:
[docs/theory/soundness.md](../theory/soundness.md).

Each section has a true outline and true regions without strength, as polygons; what truly remains is exact
(\`ringModulusByDirection\`). It is drilled at ${COUNTS.join(', ')} places: needles of 300 to 500 mm, one in ten broken off short, up to
12 degrees off the radial in half of the sections, tilted in a quarter, each wandering by a degree; azimuths from even to
disorderly. Each needle's trace is simulated with wood, bark, ring pattern, friction, noise, zero error and knots drawn wide,
and read by the trace reader. The outline is measured with errors of up to 2.5 % at 12 to 36 azimuths, and the bark with 15 %.
No real felled section is in this study.

The scenarios of the prior were fitted on the tuning families only. The families judged here are made by other rules
(${judging.join(', ')}) and other seeds. Held: the truth lies in the printed p05 to p95, over 18 directions of each section;
± one standard error, sections being what is counted.

The judging families are not wholly untouched. No number was fitted to them, but their results were looked at, with other
seeds, while the method was made: narrow openings were added to the prior and to the tuning families after they were seen
to be missed here, and the size of the calibrating step was chosen with both tables in view. A fresh set of families would
likely be held a little less often.

## By number of drillings, families never fitted to

${head}
${COUNTS.map((n) => line(`${n}`, of(judged, n))).join('\n')}
${line('4 to 8', usual)}
${line('all', judged)}

![Coverage by number of drillings](figures/sections-coverage.svg)

## By family, 4 to 8 drillings

${head}
${judging
  .map((f) =>
    line(
      f,
      usual.filter((r) => r.family === f),
    ),
  )
  .join('\n')}

![Coverage by family](figures/sections-families.svg)

## Beside the trade's own ways

Mean width of an interval that holds as many of the same truths. The trade's ways give one number, so each is given here the
interval that suits it best on these very sections, which nobody could know beforehand: quantiles of its own errors on
them, per number of drillings. The field's interval is the one it prints.

${beside(judged)}

With 4 to 8 drillings the field's interval is ${straightRatio(usual).toFixed(2)} times as wide as that from walls joined straight. On the tuning
families, with new seeds:

${beside(tuned)}

There it is ${straightRatio(tuned.filter(isUsual)).toFixed(2)} times as wide.

![Width](figures/sections-width.svg)

## Tuning families, seeds never used

${head}
${COUNTS.map((n) => line(`${n}`, of(tuned, n))).join('\n')}
${tuning
  .map((f) =>
    line(
      f,
      tuned.filter((r) => r.family === f && r.drillings >= 4 && r.drillings <= 8),
    ),
  )
  .join('\n')}

The rows by family are of 4 to 8 drillings.

## What it does badly

- An opening or pocket that no needle met lies outside the interval more often than one time in ten; see the families with
  narrow openings. Put a needle where an opening is seen.
- With one or two drillings the interval is wide because little is known, not because the method is careful.
- Families hold their truths unevenly: the interval is right over the mixture, not within each.
`;
writeFileSync(out, page);
process.stderr.write(`${out} written, ${Math.round((Date.now() - started) / 1000)} s\n`);
