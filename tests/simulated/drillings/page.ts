/**
 * docs/accuracy/drillings.md as text.
 */
import { FIXED, MOST_HOLES, SURE } from './strategies.ts';
import {
  atCertainty,
  atStop,
  type Drilled,
  fixedThatLeaves,
  holesNeeded,
  isSureBy,
  isWrong,
  type Leaves,
  leaves,
  leftByFixed,
  mean,
  median,
  ratioTo,
  resampled,
  WAYS,
  type Way,
  type WithInterval,
} from './summary.ts';

interface Sample {
  /** Sections made, and those not sure before any hole. */
  all: number;
  doubtful: Drilled[];
}

const two = (x: number) => x.toFixed(2);
const percent = (x: number) => `${(100 * x).toFixed(1)} %`;
const withInterval = ({ value, low, high }: WithInterval) => `${two(value)} (${two(low)} to ${two(high)})`;

const WAYS_HEAD = `| | sections | mean holes | median | not sure with ${MOST_HOLES} | wrong when sure | wrong in all | holes as advised over these |
|---|---|---|---|---|---|---|---|`;

function wayLine(rows: readonly Drilled[], way: Way): string {
  const needed = rows.map((d) => holesNeeded(d, way));
  const sure = rows.filter((d) => isSureBy(d, way));
  const wrong = (of: readonly Drilled[]) => mean(of.map((d) => (isWrong(d, atCertainty(d, way)) ? 1 : 0)));
  const ratio = way === 'as advised' ? '–' : withInterval(resampled(rows, ratioTo(way)));
  return `| ${way} | ${rows.length} | ${two(mean(needed))} | ${median(needed)} | ${percent(1 - sure.length / rows.length)} | ${percent(wrong(sure))} | ${percent(wrong(rows))} | ${ratio} |`;
}

const wayTable = (rows: readonly Drilled[]) =>
  [WAYS_HEAD, ...WAYS.map((way) => wayLine(rows, way))].join('\n');

const leavesLine = (name: string, l: Leaves) =>
  `| ${name} | ${two(l.holes)} | ${percent(l.chanceWrong)} | ${percent(l.unsure)} | ${percent(l.wrong)} |`;

function fixedTable(rows: readonly Drilled[]): string {
  return [
    `| | mean holes | mean chance of a wrong decision | not below ${percent(SURE)} | wrong |`,
    '|---|---|---|---|---|',
    leavesLine('as advised, to its own stop', leaves(rows, atStop)),
    ...FIXED.map((holes) => leavesLine(`${holes} equally spaced`, leftByFixed(rows, holes))),
  ].join('\n');
}

/** Holes as advised over the fixed number of equally spaced ones that leaves no more, by one of the figures. */
const ratioToFixed = (of: 'chanceWrong' | 'unsure' | 'wrong') => (rows: readonly Drilled[]) => {
  const own = leaves(rows, atStop);
  return own.holes / fixedThatLeaves(rows, of, own[of]);
};

const FIGURES = {
  chanceWrong: 'the mean chance of a wrong decision',
  unsure: `the share of sections not below ${percent(SURE)}`,
  wrong: 'the share of decisions that are truly wrong',
} as const;

function equalTo(rows: readonly Drilled[]): string {
  const own = leaves(rows, atStop);
  return (Object.keys(FIGURES) as (keyof typeof FIGURES)[])
    .map((of) => {
      const fixed = fixedThatLeaves(rows, of, own[of]);
      const never = fixed === MOST_HOLES && leftByFixed(rows, MOST_HOLES)[of] > own[of];
      return `- By ${FIGURES[of]}: ${never ? `more than ${MOST_HOLES}, counted as ${MOST_HOLES}` : two(fixed)} equally spaced holes against ${two(own.holes)}; ratio ${withInterval(resampled(rows, ratioToFixed(of)))}.`;
    })
    .join('\n');
}

/** How near the truth lies to what is needed, by the natural logarithm of their ratio. */
const DIFFICULTIES: { name: string; holds: (d: Drilled) => boolean }[] = [
  { name: 'close (within 10 %)', holds: (d) => Math.abs(Math.log(d.truth)) < 0.1 },
  { name: 'between (10 to 30 %)', holds: (d) => inside(d, 0.1, 0.3) },
  { name: 'clear (over 30 %)', holds: (d) => Math.abs(Math.log(d.truth)) >= 0.3 },
];
function inside(d: Drilled, low: number, high: number): boolean {
  const off = Math.abs(Math.log(d.truth));
  return off >= low && off < high;
}

const SHORT_HEAD = `| | sections | holes, set anew | holes, gaps halved | holes, as advised | ratio to set anew | ratio to halved | wrong: set anew / halved / as advised |
|---|---|---|---|---|---|---|---|`;

function shortLine(name: string, rows: readonly Drilled[]): string {
  if (rows.length === 0) return `| ${name} | 0 | – | – | – | – | – | – |`;
  const holes = WAYS.map((way) => two(mean(rows.map((d) => holesNeeded(d, way)))));
  const wrong = WAYS.map((way) => rows.filter((d) => isWrong(d, atCertainty(d, way))).length);
  return `| ${name} | ${rows.length} | ${holes.join(' | ')} | ${two(ratioTo(WAYS[0]!)(rows))} | ${two(ratioTo(WAYS[1]!)(rows))} | ${wrong.join(' / ')} |`;
}

function shortTable(
  rows: readonly Drilled[],
  groups: { name: string; holds: (d: Drilled) => boolean }[],
): string {
  return [SHORT_HEAD, ...groups.map(({ name, holds }) => shortLine(name, rows.filter(holds)))].join('\n');
}

const byFamily = (rows: readonly Drilled[]) =>
  [...new Set(rows.map((d) => d.family))].map((family) => ({
    name: family,
    holds: (d: Drilled) => d.family === family,
  }));

const wrongIn = (rows: readonly Drilled[], way: Way) =>
  mean(rows.map((d) => (isWrong(d, atCertainty(d, way)) ? 1 : 0)));

const clearedEarly = ({ all, doubtful }: Sample) => all - doubtful.length;

/** The whole page. */
export function page({
  judging,
  tuning,
  traces,
  draws,
}: {
  judging: Sample;
  tuning: Sample;
  traces: Sample;
  draws: number;
}): string {
  const rows = judging.doubtful;
  const hard = rows.filter((d) => holesNeeded(d, WAYS[0]!) > 2);
  const settled = rows.filter((d) => WAYS.some((way) => isSureBy(d, way)));
  const luckyAnew = leftByFixed(rows, MOST_HOLES).unsure;
  const traced = new Set(traces.doubtful.map((d) => d.seed));
  const sameByZones = rows.filter((d) => traced.has(d.seed));
  return `# How many holes the advice on the next drilling saves

Made by \`npm run accuracy drillings\` from \`tests/simulated/drillings/\`. Method:
[docs/theory/soundness.md](../theory/soundness.md), section 5.

Each tree has a true section, of the families and makers of [sections.md](sections.md), and something to carry: lean (load up
to a quarter greater on one side) and the outline's shape make some directions need more strength than others, and the
tree must be acted on when too little remains in any of them. How much must remain is what another section of the same
mixture truly keeps, between 25 and 90 %, so the truth is not given away: of the sections drilled here, ${percent(mean(rows.map((d) => (d.truth < 1 ? 1 : 0))))} must truly be
acted on. The load is known: only the section is in doubt. The surface is looked at first, with its errors, and handed to every way alike.

Three ways of drilling, all weighed by the same field, with the same 400 mm or so of needle and the same errors of reading:

- *equal spacing, set anew*: 1, 2, 3, … holes evenly round the stem from a chance start, a new set for each number, as if the
  number had been known beforehand. Nobody can drill so; it is equal spacing at its best.
- *equal spacing, gaps halved*: hole by hole, each in the middle of a widest gap.
- *as advised*: hole by hole where \`nextDrilling\` says, from none on; its headings may be 30 degrees off the pith.

A way is sure when the chance of a wrong decision, by the field, is below ${percent(SURE)}; then it stops. One that is not sure with
${MOST_HOLES} holes counts ${MOST_HOLES}. Since a way could seem sure and be wrong, the decisions are held against the truth as well. ${draws} draws;
ratios are of mean numbers of holes, with the 90 % interval from drawing the sections again.

## Families never fitted to

${clearedEarly(judging)} of ${judging.all} sections were sure before any hole, from the surface and the prior; they are left out here.

${wayTable(rows)}

![Share sure by number of holes](figures/drillings-sure.svg)

Equal spacing set anew is not only free of its earlier holes: each number is a fresh chance to seem sure, and it stops at the
first. With ${MOST_HOLES} holes ${percent(luckyAnew)} of the sections are not sure by the set of ${MOST_HOLES} itself. The halved gaps are what a person can drill.

**Fewer holes are not the whole of it.** Being sure by the field is the same for all three; being right is not. Followed until
sure or to ${MOST_HOLES} holes, the advice was wrong in ${percent(wrongIn(rows, 'as advised'))} of the sections, halved gaps in ${percent(wrongIn(rows, 'equal spacing, gaps halved'))} and sets made anew in ${percent(wrongIn(rows, 'equal spacing, set anew'))}. The holes that the
advice saves are in part holes that would have found an error. At equal certainty by the field the third is to be judged by the
table above; at equal share of truly wrong decisions it is to be judged by the last line of the next section, and a study of this
size tells that one only roughly.

The sections that at least one way settled (the others count ${MOST_HOLES} holes for all, and say nothing):

${wayTable(settled)}

Where equal spacing set anew needs more than two holes:

${wayTable(hard)}

## Against a fixed number of equally spaced holes

Equal spacing is mostly drilled with a number fixed beforehand, the same for every tree. What such a number leaves, and what
following the advice to its own stop leaves (when sure, or when it says that no further hole is worth its wound):

${fixedTable(rows)}

As many equally spaced holes at every section as leave no more than the advice does (between counts in proportion):

${equalTo(rows)}

Much of that gain comes from stopping when sure, not from where the holes are; the table above, where all ways stop alike,
shows the places alone.

## By how near the limit

What truly remains over what is needed, in the direction that decides.

${shortTable(rows, DIFFICULTIES)}

## By family

${shortTable(rows, byFamily(rows))}

![Holes by family](figures/drillings-families.svg)

## Tuning families, seeds never used

${clearedEarly(tuning)} of ${tuning.all} were sure before any hole.

${wayTable(tuning.doubtful)}

## Through simulated traces

Above, readings are made from the true zones: edges off by 1 mm, one in twenty by 8 mm, 3 % of decayed stretches unseen, decay
read into 4 % of sound needles, as the [study of traces](traces.md) finds. Here each needle's trace is simulated and read by the trace reader,
in the first section of each family (${clearedEarly(traces)} of ${traces.all} were sure before any hole). By traces:

${wayTable(traces.doubtful)}

The same sections by zones:

${wayTable(sameByZones)}

## What this does not show

- The load is known in this study. In a real assessment wind and wood strength scatter, and often more of the doubt is theirs;
  then the advice stops earlier, and says so, and no way of drilling makes the decision sure.
- Sections are simulated and drilled level. Knots that turn a needle at 30 degrees are not in it, beyond a wander of 2 degrees.
- All ways share one field: where it is too sure of itself, all stop too early. The share of wrong decisions shows how often.
- The method was tried out on the tuning families only, with other seeds, and no number in it was set on the judging families.
  But this study was run on the very same judging sections twice: first with 500 draws, which gave 0.81 (0.68 to 0.95) of the
  holes of sets made anew and 0.71 (0.60 to 0.83) of those of halved gaps, with 1.3 % wrong when sure and 6.0 % in all; then with
  1000 draws, nearer to the 2000 of an assessment. What the number of draws alone does to the figures is no smaller than the
  margin by which a third fewer is reached or missed.
- See also the remark on the judging families in [sections.md](sections.md).
`;
}
