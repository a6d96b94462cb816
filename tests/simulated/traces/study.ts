/**
 * How well zones are read, by family of setting and by what the needle met, on families other than those tuned on, and seeds that led to no change.
 * Writes docs/accuracy/traces.md. Run by `npm run accuracy`, or: npx tsx tests/simulated/traces/study.ts [specimens]
 */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { readTraces } from '../../../packages/engine/src/trace/index.ts';
import { JUDGING_FAMILIES, LAYOUTS, type Layout, specimen, TUNING_FAMILIES, treeOf } from './families.ts';
import { addToScore, emptyScore, MISSED_EDGE_MM, mean, point, type Score } from './judge.ts';

const EACH = Number(process.argv[2] ?? 25);
/** Seeds from 50,000 to 60,019 were watched while the engine was changed. */
const FIRST_SEED = 70_000;
const TREES = Math.max(4, Math.round(EACH / 2));

const share = (a: number, b: number) => (b === 0 ? '–' : `${((100 * a) / b).toFixed(1)}`);
const row = (name: string, s: Score) =>
  `| ${name} | ${s.traces} | ${mean(s.edgeErrorsMm).toFixed(2)} | ${point(s.edgeErrorsMm, 0.95).toFixed(1)} | ${share(s.edgesMissed, s.edges)} | ${share(s.voidsFound, s.voids)} | ${share(s.pocketsFound, s.pockets)} | ${share(s.incipientsFound, s.incipients)} | ${share(s.cracksFound, s.cracks)} | ${s.falseDecay} / ${s.falseAnything} of ${s.soundTraces} | ${share(s.agreedMm, s.totalMm)} | ${share(s.wallsHeld, s.walls)} | ${point(s.wallErrorsMm, 0.5).toFixed(1)} | ${mean(s.wallErrorsMm).toFixed(1)} | ${point(s.wallWidthsMm, 0.5).toFixed(1)} |`;
const HEAD = `| | traces | edge error mean, mm | 95 % point, mm | edges missed, % | voids found, % | decay found, % | incipient found, % | cracks found, % | false decay / false anything | depth of right kind, % | wall inside its 90 % interval, % | wall error median, mm | mean, mm | interval width median, mm |
|---|---|---|---|---|---|---|---|---|---|---|---|---|---|---|`;

interface Sweep {
  all: Score;
  byFamily: Map<string, Score>;
  byLayout: Map<Layout, Score>;
  exits: Score;
}

function sweep(families: typeof JUDGING_FAMILIES, withPlace: boolean): Sweep {
  const out: Sweep = { all: emptyScore(), byFamily: new Map(), byLayout: new Map(), exits: emptyScore() };
  for (const family of families) {
    const mine = emptyScore();
    out.byFamily.set(family.name, mine);
    for (const layout of LAYOUTS) {
      const byLayout = out.byLayout.get(layout) ?? emptyScore();
      out.byLayout.set(layout, byLayout);
      for (let i = 0; i < EACH; i++) {
        const s = specimen(family, layout, FIRST_SEED + i);
        // The outline tells where the needle comes out to within a tenth; trunks drilled in part are larger.
        const lengthMm = s.truth.at(-1)!.toMm;
        const leaves = s.truth.at(-1)!.kind === 'air';
        const exitMm = leaves ? s.truth.at(-1)!.fromMm * (0.92 + 0.16 * ((i % 5) / 4)) : lengthMm * 1.6;
        const [reading] = readTraces([
          {
            id: `${family.name} ${layout} ${i}`,
            trace: s.trace,
            ...(withPlace ? { barkMm: s.barkMm, exitMm } : {}),
          },
        ]);
        for (const score of [out.all, mine, byLayout]) addToScore(score, s, reading!);
      }
    }
  }
  return out;
}

function trees(together: boolean): { all: Score; rotten: Score } {
  const all = emptyScore();
  const rotten = emptyScore();
  for (const family of JUDGING_FAMILIES)
    for (let i = 0; i < TREES; i++) {
      const tree = treeOf(family, ['sound', 'rotten', 'pocket', 'rotten', 'hollow', 'sound'], FIRST_SEED + i);
      const input = tree.map((s, j) => ({ id: `d${j}`, trace: s.trace }));
      const readings = together ? readTraces(input) : input.map((one) => readTraces([one])[0]!);
      for (const [j, s] of tree.entries()) {
        addToScore(all, s, readings[j]!);
        if (s.layout === 'rotten') addToScore(rotten, s, readings[j]!);
      }
    }
  return { all, rotten };
}

const blind = sweep(JUDGING_FAMILIES, false);
const placed = sweep(JUDGING_FAMILIES, true);
const tuned = sweep(TUNING_FAMILIES, false);
const alone = trees(false);
const together = trees(true);

const text = `# Accuracy: zones of a trace

Simulated traces stand in for felled trees: no open table of raw drilling traces with known truth was found. The simulator
(\`tests/simulated/traces/simulateTrace.ts\`) and the reader rest on the same description of a trace, so these figures say how
well the reader reads traces *of that description*, over settings far wider than one drill's; they are no proof on real trees.
Numbers in the engine were tried out on other families (the tuning families below). The judging families were not wholly
out of sight, though: their scores on other seeds were looked at during the work, and three times led to a change (the odds of a
void against decay, the odds of far bark against decay, a tuning family with steep trends), each then set on the tuning
families. Later two more numbers were changed after looking at judging seeds below 60,000 (what a knot or dip may follow, the
most a cell may scatter). When the far side, gradual edges and rings were worked on, scores on the seeds from 60,000 were watched
too, and led to two changes (cracks told from the scatter without rings; the share of a ring pattern that counts as scatter). The
seeds of this study, from 70,000, were first read when nothing was changed any more. It is a fair trial, not a blind one.
${EACH} specimens each; made by \`npm run accuracy\`.

An edge counts when the level changes by 30 % of sound or more; a missed edge counts ${MISSED_EDGE_MM} mm. A void (10 mm or more) is
found when half of its length reads as void; decay (10 mm or more) and incipient decay when half reads as wood that is not
sound. False decay: traces of sound wood only that read as having decay or a void / as having anything not sound, knots, pith
dips, trends and far-side exits included.

## One trace, nothing else known

${HEAD}
${[...blind.byFamily].map(([name, s]) => row(name, s)).join('\n')}
${row('**all**', blind.all)}

By what the needle met:

${HEAD}
${[...blind.byLayout].map(([name, s]) => row(name, s)).join('\n')}

Families: ${JUDGING_FAMILIES.map((f) => `*${f.name}*: ${f.about}`).join('; ')}.
Layouts: *hollow* often has decay, then a void to the needle's end; *through* leaves the stem through bark into air;
*busy* has pockets, voids and decay in turn.

Exits told from voids without an outline: ${blind.all.exitsFound} of ${blind.all.exits} exits found, ${blind.all.falseExits} of ${blind.all.traces - blind.all.exits} other traces read as leaving the stem.

## With bark thickness and the outline known

As in a case file: bark measured, and the depth at which the needle would come out known to 8 %.

${HEAD}
${[...placed.byFamily].map(([name, s]) => row(name, s)).join('\n')}
${row('**all**', placed.all)}

${placed.all.exitsFound} of ${placed.all.exits} exits found, ${placed.all.falseExits} of ${placed.all.traces - placed.all.exits} false.

## Drillings of one tree, read alone and together

${TREES * JUDGING_FAMILIES.length} trees of six drillings, two of them rotten beyond the first centimetres; sound level differing by 6 % between drillings.

${HEAD}
${row('all, read alone', alone.all)}
${row('all, read together', together.all)}
${row('the rotten ones, read alone', alone.rotten)}
${row('the rotten ones, read together', together.rotten)}

## The families used to tune, other seeds

${HEAD}
${[...tuned.byFamily].map(([name, s]) => row(name, s)).join('\n')}
${row('**all**', tuned.all)}

## Where it falls short

- Without air before the bark or beyond the far side, the floor (idle level and friction) is known to a few percent of full scale
  only: wood decayed to a tenth of its level and a void are then told apart by chance. Both count as no strength.
- Without the outline, decay followed by a void to the needle's end can look like bark and air beyond the far side when it is as
  thick and as weak as the bark on the way in, and the reverse. The reading warns; the outline settles it.
- Incipient decay above some 80 % of sound, or shorter than 12 mm, is mostly read as sound: it cannot be told from pith, juvenile
  wood and chance.
- Soft rot that leaves the level high reads as sound (see docs/theory/trace.md).
`;

const out = join(dirname(fileURLToPath(import.meta.url)), '../../../docs/accuracy/traces.md');
mkdirSync(dirname(out), { recursive: true });
writeFileSync(out, text);
console.log(`wrote ${out}`);
