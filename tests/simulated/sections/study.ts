/**
 * How good the soundness field is on simulated sections, written to docs/accuracy/sections.md with its figures:
 * `npm run accuracy sections`. Readings go through simulated traces and the trace reader.
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { bars } from './figures.ts';
import {
  BASELINES,
  baselineWidth,
  type Coverage,
  coverageOf,
  type Judged,
  judgeSection,
  standardErrorOf,
} from './judge.ts';
import { JUDGING_FAMILIES, TUNING_FAMILIES } from './trueSection.ts';

const COUNTS = [1, 2, 4, 6, 8, 12];
const PER_CELL = 8;
const TUNING_PER_CELL = 3;
const DRAWS = 500;
/** Seeds of the sections judged; those used in tuning began at 50 000. */
const JUDGING_SEED = 700_000;
const TUNING_SEED = 800_000;
/** Drillings and sections of the part in which nobody noted the surface. */
const UNNOTED_COUNTS = [4, 6, 8];
const UNNOTED_PER_CELL = 6;

const out = fileURLToPath(new URL('../../../docs/accuracy/sections.md', import.meta.url));
const figures = join(dirname(out), 'figures');
mkdirSync(figures, { recursive: true });

function run(
  families: string[],
  seed: number,
  perCell: number,
  counts: readonly number[],
  lookedAround: boolean,
): Judged[] {
  const rows: Judged[] = [];
  families.forEach((family, f) => {
    for (const drillings of counts) {
      for (let k = 0; k < perCell; k++) {
        const own = seed + 10_000 * f + 100 * drillings + k;
        rows.push(...judgeSection(family, own, { drillings, readings: 'traces', lookedAround }, DRAWS));
      }
    }
    process.stderr.write(`${family}: ${perCell * counts.length} sections\n`);
  });
  return rows;
}

const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
const two = (x: number) => x.toFixed(3);

const head =
  '| | sections | held | truth below | truth above | mean width | bias of median |\n|---|---|---|---|---|---|---|';
function line(name: string, rows: readonly Judged[]): string {
  const c: Coverage = coverageOf(rows);
  return `| ${name} | ${c.sections} | ${percent(c.covered)} ± ${percent(standardErrorOf(rows))} | ${percent(c.below)} | ${percent(c.above)} | ${two(c.width)} | ${c.bias >= 0 ? '+' : '−'}${two(Math.abs(c.bias))} |`;
}

const started = Date.now();
const judging = Object.keys(JUDGING_FAMILIES);
const tuning = Object.keys(TUNING_FAMILIES);
const judged = run(judging, JUDGING_SEED, PER_CELL, COUNTS, true);
const tuned = run(tuning, TUNING_SEED, TUNING_PER_CELL, COUNTS, true);
const unnoted = run(judging, JUDGING_SEED, UNNOTED_PER_CELL, UNNOTED_COUNTS, false);
const of = (rows: Judged[], n: number) => rows.filter((r) => r.drillings === n);
const usual = judged.filter((r) => r.drillings >= 4 && r.drillings <= 8);

const isUsual = (r: Judged) => r.drillings >= 4 && r.drillings <= 8;
const widthOf = (rows: Judged[], b: (typeof BASELINES)[number]) =>
  baselineWidth(rows, b, coverageOf(rows).covered);
const ratio = (rows: Judged[], b: (typeof BASELINES)[number]) =>
  (coverageOf(rows).width / widthOf(rows, b)).toFixed(2);
const CUT = 'walls joined straight, openings cut out';

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

The stem's surface was looked at all round and noted (\`lookAround.ts\`): an open hollow wider than 80 mm is noticed 95 times in
100 and a narrower one 75, soft wood 80 and 50; the ends are noted to 4 degrees; 4 in 100 note decay where there is none, and
15 in 100 could not see a part of the round. These chances are judgement. What is lost when nobody notes the surface stands
below.

The scenarios of the prior were fitted on the tuning families only. The families judged here are made by other rules
(${judging.join(', ')}) and other seeds. Held: the truth lies in the printed p05 to p95, over 18 directions of each section;
± one standard error, sections being what is counted.

The judging families are not wholly untouched. No number was fitted to them, but their results were looked at, with other
seeds, while the method was made: narrow openings were added to the prior and to the tuning families after they were seen
to be missed here, evidence from the surface was added after openings that no needle met were seen to be what was missed most,
and the size of the calibrating step was chosen with both tables in view. For families that were in view of nobody see
[outside.md](outside.md).

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

With 4 to 8 drillings the field's interval is ${ratio(usual, 'walls joined straight')} times as wide as that from walls joined straight, and
${ratio(usual, CUT)} times as wide as that from the same walls with the noted openings cut out, which uses the same notes. On the tuning families,
with new seeds:

${beside(tuned)}

There it is ${ratio(tuned.filter(isUsual), 'walls joined straight')} and ${ratio(tuned.filter(isUsual), CUT)} times as wide.

![Width](figures/sections-width.svg)

## Where nobody noted the surface

The same judging families and seeds, with the same needles.

${head}
${UNNOTED_COUNTS.map((n) => line(`${n}`, of(unnoted, n))).join('\n')}
${line('4 to 8', unnoted)}
${judging
  .map((f) =>
    line(
      f,
      unnoted.filter((r) => r.family === f),
    ),
  )
  .join('\n')}

There the interval is ${ratio(unnoted, 'walls joined straight')} times as wide as that from walls joined straight. Openings that no needle met are
what it misses: the assessment says so where the surface was not noted.

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

- An opening that was neither noted nor met by a needle lies outside the interval more often than one time in ten; see the
  families with narrow openings. Put a needle beside an opening that is seen.
- With one or two drillings the interval is wide because little is known, not because the method is careful.
- Families hold their truths unevenly: the interval is right over the mixture, not within each.
`;
writeFileSync(out, page);
process.stderr.write(`${out} written, ${Math.round((Date.now() - started) / 1000)} s\n`);
