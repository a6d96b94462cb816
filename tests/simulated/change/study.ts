/** `npm run accuracy change`: how well growth and the movement of a decay front are told; writes docs/accuracy/change.md. */
import { mkdirSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { type Held, heldOf, MOVEMENTS_MM, studyPairs } from './pairs.ts';
import { RING_FAMILIES } from './simulatePair.ts';

/** Pairs of each family and movement, on seeds that were not used to set any number. */
const PAIRS = 50;
const FROM_SEED = 40_000;

const results = studyPairs(PAIRS, FROM_SEED);
const matched = results.filter(({ matchedChance }) => matchedChance >= 0.8);
const unmatched = results.filter(({ matchedChance }) => matchedChance < 0.8);

const percent = (share: number) => (Number.isFinite(share) ? `${Math.round(100 * share)} %` : '–');
const mm = (value: number) => (Number.isFinite(value) ? value.toFixed(1) : '–');
const HEAD = `| | pairs | front inside | growth inside | wall inside | front error | front width | growth error | growth width | moved | not moved | cannot tell |
|---|---|---|---|---|---|---|---|---|---|---|---|`;
const row = (name: string, h: Held) =>
  `| ${name} | ${h.pairs} | ${percent(h.frontHeld)} | ${percent(h.growthHeld)} | ${percent(h.wallHeld)} | ${mm(h.frontError)} | ${mm(h.frontWidth)} | ${mm(h.growthError)} | ${mm(h.growthWidth)} | ${percent(h.moved)} | ${percent(h.notMoved)} | ${percent(h.cannotTell)} |`;

const all = heldOf(results);
const still = heldOf(results.filter(({ movedMm }) => movedMm === 0));
const ABOUT: Record<(typeof RING_FAMILIES)[number], string> = {
  'ring-porous': 'ring-porous, deep minima',
  conifer: 'conifer, latewood peaks',
  diffuse: 'diffuse-porous, faint rings',
  faint: 'no rings, only slow changes of density',
};

const text = `# Accuracy: change between two visits

${results.length} simulated pairs of traces through the same wood, 2 to 8 years apart, with known growth at the cambium (gamma, 3 mm a
year in the mean) and known movement of the decay front. Each pair has two drill settings (gain, zero, friction, noise, tip), bark
that may have thickened, a second hole some 20 mm aside (standard deviation) where the front slopes by 0.2, another scale of depth
(1.2 %), and rings that lie up to a millimetre otherwise there. Made by \`npm run accuracy change\`; pairs by
tests/simulated/change/simulatePair.ts. Inside: share of pairs whose truth lies in the 90 % interval. Error and width: medians, mm;
the width is that of the 90 % interval.

The interval of the front's movement held the truth in ${percent(all.frontHeld)} of the pairs where both needles met the front
(${all.compared} of ${all.pairs}); a front that had stood was called moved in ${percent(still.moved)}.

## By how far the front moved

${HEAD}
${MOVEMENTS_MM.map((moved) => row(`${moved} mm`, heldOf(results.filter((r) => r.movedMm === moved)))).join('\n')}
${row('**all**', all)}

## By what the rings look like

${HEAD}
${RING_FAMILIES.map((family) => row(ABOUT[family], heldOf(results.filter((r) => r.family === family)))).join('\n')}

## By whether the rings were found to answer to each other (chance at least 80 %)

${HEAD}
${row('ring pattern', heldOf(matched))}
${row('cambium entry alone', heldOf(unmatched))}

## Where it falls short

- The offset of the second hole, the slope of the front and the share of traces whose rings do not answer are judgement; the pairs
  are drawn with the same amounts. A front more ragged than that is called moved more often than it should be. The interval says
  how sure the reading is if those amounts hold.
- Movements below about 10 mm are within the error of any repeat drilling. Two visits a few years apart cannot show a slow front.
- Growth is held a little more often than it says: its interval is on the wide side.
- Without rings, growth is known only from what is usual, and a moved front is told only when it moved far.
- The forecast is checked against worked cases only (its unit tests): no simulated tree is grown on to failure.
`;

const out = join(dirname(fileURLToPath(import.meta.url)), '../../../docs/accuracy/change.md');
mkdirSync(dirname(out), { recursive: true });
writeFileSync(out, text);
console.log(`wrote ${out}`);
