/**
 * The strip reader on photos from a second simulator (`make_strips.py`: Python, OpenCV, its own charts, paper, pens and
 * cameras), written to docs/accuracy/outside-strips.md: `npm run accuracy outside/strips`.
 *
 * While working at the reader: `node --import tsx tests/outside/strips/study.ts tuning [COUNT [FIRST_SEED]]` prints the
 * same figures on the tuning styles and writes nothing. The judging styles are for the page only.
 */
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { decodePhoto } from '../../../apps/command/src/strip/photo.ts';
import { runPython } from '../python.ts';
import {
  cornersOffAnyTurn,
  isConfidentlyWrong,
  isNear,
  judgeStrip,
  NEAR_PX,
  type StripTruth,
  type StripVerdict,
  TRUSTED,
  toPhotoPx,
} from './judge.ts';

const COUNT = 4;
const FIRST_SEED = 46_000;
const MODULES = ['numpy', 'cv2'] as const;

const [set = 'judging', count = COUNT, firstSeed = set === 'tuning' ? 1 : FIRST_SEED] = process.argv.slice(2);
const fileBeside = (name: string) => fileURLToPath(new URL(name, import.meta.url));

interface Judged extends StripVerdict {
  /** How far the corners of each quadrilateral of the contour recipe are off, the largest first. */
  recipePx: number[];
  recipeMs: number;
}

interface Style {
  name: string;
  about: string;
  strips: Judged[];
}

async function judged(): Promise<Style[]> {
  const folder = mkdtempSync(join(tmpdir(), 'standfast-outside-'));
  try {
    const made = ['--set', set, '--count', String(count), '--seed', String(firstSeed)];
    runPython([fileBeside('make_strips.py'), folder, ...made], MODULES);
    const recipe = JSON.parse(runPython([fileBeside('contour_recipe.py'), folder], MODULES)) as Record<
      string,
      { quads: [number, number][][]; ms: number }
    >;
    const styles = new Map<string, Style>();
    for (const name of readdirSync(folder).sort()) {
      if (!name.endsWith('.jpg')) continue;
      const truth = JSON.parse(
        readFileSync(join(folder, name.replace('.jpg', '.json')), 'utf8'),
      ) as StripTruth;
      const image = await decodePhoto(readFileSync(join(folder, name)), name);
      const { quads, ms } = recipe[name]!;
      const strip = {
        ...judgeStrip(image, truth),
        recipePx: quads.map((quad) => toPhotoPx(cornersOffAnyTurn(quad, truth.charts), image)),
        recipeMs: ms,
      };
      const style = styles.get(truth.style) ?? { name: truth.style, about: truth.about, strips: [] };
      style.strips.push(strip);
      styles.set(truth.style, style);
      process.stdout.write(`${name}: ${inShort(strip)}\n`);
    }
    return [...styles.values()];
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

function inShort({ given, depthNumbers, levelNumbers, found, foundLine, alone, aloneSure }: Judged): string {
  const line = (score: typeof given) =>
    score
      ? `depth ${fixed(score.depthMm)} level ${fixed(score.levelPct)} alone ${fixed(score.steadyPct)} wrong ${fixed(score.wrong)} read ${fixed(score.read)} sure ${fixed(score.sure)}`
      : 'none';
  const chart = found
    ? `${found.chart} by ${fixed(found.offPx)} px, sure ${fixed(found.sure)}, line ${line(foundLine)}`
    : 'refused';
  return `given: ${line(given)}; numbers ${depthNumbers} ${levelNumbers}; found: ${chart}; alone: ${alone} ${fixed(aloneSure)}`;
}

const fixed = (value: number | null, places = 2) => (value === null ? '–' : value.toFixed(places));
const mean = (values: number[]) => values.reduce((a, b) => a + b, 0) / values.length;
const rms = (values: number[]) => Math.sqrt(mean(values.map((v) => v * v)));
const cell = (values: number[], of: (values: number[]) => number, places = 2) =>
  values.length ? of(values).toFixed(places) : '–';
const greatest = (values: number[]) => Math.max(...values);
const percentOf = (values: number[]) => cell(values, (v) => 100 * mean(v), 1);
const known = <T>(values: (T | null)[]) => values.filter((value) => value !== null) as T[];

const rows = (styles: Style[], line: (name: string, strips: Judged[]) => string) =>
  [
    ...styles.map(({ name, strips }) => line(name, strips)),
    line(
      '**all**',
      styles.flatMap(({ strips }) => strips),
    ),
  ].join('\n');

function linesTable(styles: Style[], pick: (strip: Judged) => Judged['given']): string {
  return [
    '| style | strips read | depth mm | worst | level % | worst | level alone % | worst | read % | invented % | confidently wrong |',
    '|---|---|---|---|---|---|---|---|---|---|---|',
    rows(styles, (name, strips) => {
      const lines = known(strips.map(pick));
      const depth = known(lines.map((line) => line.depthMm));
      const level = lines.map((line) => line.levelPct);
      const steady = lines.map((line) => line.steadyPct);
      return `| ${name} | ${lines.length} of ${strips.length} | ${cell(depth, rms)} | ${cell(depth, greatest)} | ${cell(level, rms)} | ${cell(level, greatest)} | ${cell(steady, rms)} | ${cell(steady, greatest)} | ${percentOf(lines.map((line) => line.read))} | ${percentOf(lines.map((line) => line.invented))} | ${lines.filter(isConfidentlyWrong).length} |`;
    }),
  ].join('\n');
}

function cornersTable(styles: Style[]): string {
  return [
    `| style | within ${NEAR_PX} px | right chart, farther off | refused | wrong chart, to be checked | wrong chart, trusted | recipe's largest within ${NEAR_PX} px | recipe's best within ${NEAR_PX} px |`,
    '|---|---|---|---|---|---|---|---|',
    rows(styles, (name, strips) => {
      const near = strips.filter(isNear).length;
      const right = strips.filter(({ found }) => found?.chart === 'right').length;
      const wrong = strips.filter(({ found }) => found?.chart === 'wrong');
      const trusted = wrong.filter(({ found }) => found!.sure >= TRUSTED).length;
      const largest = strips.filter(({ recipePx }) => recipePx.length && recipePx[0]! <= NEAR_PX).length;
      const best = strips.filter(({ recipePx }) => recipePx.some((px) => px <= NEAR_PX)).length;
      return `| ${name} | ${near} of ${strips.length} | ${right - near} | ${strips.length - right - wrong.length} | ${wrong.length - trusted} | ${trusted} | ${largest} | ${best} |`;
    }),
  ].join('\n');
}

function scaleTable(styles: Style[]): string {
  const told = (strips: Judged[], pick: (strip: Judged) => string) =>
    ['right', 'wrong', 'untold'].map((kind) => strips.filter((s) => pick(s) === kind).length).join(' / ');
  return [
    '| style | printed | depths, corners given | levels, corners given | both, nothing given | of those wrong, trusted | taps, worst mm |',
    '|---|---|---|---|---|---|---|',
    rows(styles, (name, strips) => {
      const trusted = strips.filter((s) => s.alone === 'wrong' && s.aloneSure >= TRUSTED).length;
      const { depthNumbers, levelNumbers } = strips[0]!.truth.charts[0]!;
      const printed = name.startsWith('*') ? '' : `${depthNumbers}, ${levelNumbers}`;
      return `| ${name} | ${printed} | ${told(strips, (s) => s.depthNumbers)} | ${told(strips, (s) => s.levelNumbers)} | ${told(strips, (s) => s.alone)} | ${trusted} | ${cell(
        strips.map((s) => s.tapsMm),
        greatest,
      )} |`;
    }),
  ].join('\n');
}

/** Every strip on which something wrong was told without a doubt, by name. */
function dangers(styles: Style[]): string {
  const told = styles.flatMap(({ strips }) =>
    strips.flatMap((strip) => {
      const { truth, given, found, foundLine, alone, aloneSure, depthNumbers, levelNumbers } = strip;
      const what = [
        ...(isConfidentlyWrong(given)
          ? [
              `line on given corners: ${(100 * given!.wrong).toFixed(0)} % of samples wrong, sure to ${fixed(given!.sure)}`,
            ]
          : []),
        ...(!isConfidentlyWrong(given) && isConfidentlyWrong(foundLine)
          ? [`line on found corners: ${(100 * foundLine!.wrong).toFixed(0)} % of samples wrong`]
          : []),
        ...(found?.chart === 'wrong' && found.sure >= TRUSTED
          ? [`wrong chart: corner off by ${found.offPx.toFixed(0)} px, sure to ${fixed(found.sure)}`]
          : []),
        ...(depthNumbers === 'wrong' ? ['depths misread on given corners'] : []),
        ...(levelNumbers === 'wrong' ? ['levels misread on given corners'] : []),
        ...(alone === 'wrong' && aloneSure >= TRUSTED ? ['wrong scale with nothing given'] : []),
      ];
      return what.length ? [`- ${truth.style}, seed ${truth.seed}: ${what.join('; ')}.`] : [];
    }),
  );
  return told.length ? told.join('\n') : 'None.';
}

function within(styles: Style[], depthMm: number, levelPct: number, which: 'levelPct' | 'steadyPct'): string {
  const lines = styles.flatMap(({ strips }) => strips.map(({ given }) => given));
  const held = lines.filter((l) => l && (l.depthMm ?? 0) <= depthMm && l[which] <= levelPct).length;
  return `${held} of ${lines.length}`;
}

const styles = await judged();
const all = styles.flatMap(({ strips }) => strips);
const ms = all.map(({ recipeMs }) => recipeMs).sort((a, b) => a - b);
const text = `# Strips from a second simulator

Made by \`npm run accuracy outside/strips\` (needs Python with numpy and OpenCV). \`tests/outside/strips/make_strips.py\` draws
charts in styles of its own, with traces, paper, pens and cameras of its own, and shares no code with the simulator behind
[strips](strips.md). Paper bends as a surface that keeps its lengths; the camera has a lens that bends straight lines, views
from up to 30 degrees, blur, noise, shadow, uneven white, sharpening, and JPEG by OpenCV at quality 45 to 95 (folded strips
40 to 60). The styles below are apart from those that may be tried while working at the reader (\`tuning_styles.py\`,
\`judging_styles.py\`). Seeds ${firstSeed} on, ${count} photos a style, 1,500 to 2,300 pixels long. Of the judging styles one was looked into, with
other seeds, to decide how this page counts a chart told turned half round ("hanging strip": right, if its scale is turned too). The
figures of all styles together on seeds from 44000 were seen while the undoing of stretch was set; these seeds were not.

${styles.map(({ name, about }) => `- ${name}: ${about}`).join('\n')}

## What is dangerous: wrong, and told without a doubt

${dangers(styles)}

A line counts here when it tells a confidence of 0.7 or more while over a tenth of its samples are wrong by over
5 % of full scale against every true level within 1 mm; a chart found, when a corner lies off by over 3 % of its longer side
and the reader does not itself ask for a check (sure to ${TRUSTED} or more); a scale, when depth at the chart's true edges is
wrong by over 1 % of its span, or level by over 2 %, though the reader always says that a scale read from print is to be checked.
Numbers printed in another unit and not marked so ("tenths") can be known by nobody from the photo: there that
sentence is all there is.

## The line, corners and scale given

- depth: shift that fits best, in quarters of the strip, root mean square, mm.
- level: against the true level averaged over a sample's width, root mean square, percent of full scale; among steep rings a
  shift of a few tenths of a millimetre is several percent. "Level alone" takes each quarter's shift out and leaves out samples
  where the truth moves by over 8 % within a sample's width. The line the reader holds likeliest is scored.
- read: share of the drawn line read. invented: share of what was read where nothing was drawn.

${linesTable(styles, ({ given }) => given)}

Within 0.5 mm and 1 %: ${within(styles, 0.5, 1, 'levelPct')}, by the level alone ${within(styles, 0.5, 1, 'steadyPct')}. Within 1 mm and 2 %: ${within(styles, 1, 2, 'levelPct')}, by the
level alone ${within(styles, 1, 2, 'steadyPct')}.

## The chart found, its scale given

Pixels are those of a photo 1,600 long. Of two charts on a photo either is right. A chart on its side whose numbers cannot be
read is refused, since which end is its top is not known. Beside it the common OpenCV recipe
(\`contour_recipe.py\`: adaptive threshold, contours, hulls with four sides, corners to a part of a pixel): its largest figure,
which is often the paper, and the best of all its figures, as if a person chose. Its corners count in any turn; it takes
${ms[ms.length >> 1]!.toFixed(0)} ms of one processor a photo.

${cornersTable(styles)}

The line on right charts so found:

${linesTable(styles, ({ foundLine }) => foundLine)}

## The scale

Right / wrong / untold, where untold means that the reader asks for it. Taps: depth at the chart's edges from two marks tapped
by hand (1 px standard deviation), on a ruler beside the chart where there is one, else on the chart.

${scaleTable(styles)}

**What this does not show.** These photos too are drawn, by rules that we chose. Torn paper and fingers on the chart are not in
them, and letters come from the fonts of the machine that made them.
`;
if (set === 'tuning') process.stdout.write(`\n${text}`);
else writeFileSync(fileBeside('../../../docs/accuracy/outside-strips.md'), text);
