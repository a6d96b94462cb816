/** `npm run bench`: how fast the whole assessment is, stage by stage, and beside the same work elsewhere. */
import { spawnSync } from 'node:child_process';
import { fileURLToPath } from 'node:url';
import { assess, outlineRing, randomFrom, readTraces, sectionProperties } from '@standfast/engine';
import { table } from '../apps/command/src/terminal/text.ts';
import { type FieldInput, soundnessPosterior } from '../packages/engine/src/section/field/index.ts';
import { type NextDrillingInput, nextDrilling } from '../packages/engine/src/section/next/index.ts';
import { DRAWS, DRILLINGS, inventedCase, lobedSection, READINGS } from './invented.ts';
import { compareWithPeers } from './peers.ts';
import { ms, print, STRIP_TARGET_MS, say } from './printing.ts';
import { stripTimes } from './strip.ts';
import { elapsedMs, median, medianMs, processorMs } from './timing.ts';

const TARGET_MS = 1000;
const NEXT_TARGET_MS = 2000;
/** Places that the advice on the next drilling looks at round a section; as many as the directions of its strength. */
const PLACES = 36;
const RUNS = 7;
const START_RUNS = 11;

say('Milliseconds of processor time, unless by the clock.\n');
wholeAssessment();
stages();
startUp();
peers();
strip();

function wholeAssessment(): void {
  const run = () => assess(inventedCase, { draws: DRAWS });
  const first = processorMs(run);
  const clock: number[] = [];
  const processor = Array.from({ length: RUNS }, () =>
    processorMs(() => {
      clock.push(elapsedMs(run));
    }),
  );
  const whole = median(processor);
  say(
    `Whole assessment: ${DRILLINGS} drillings of ${READINGS.toLocaleString('en')} readings, ${DRAWS.toLocaleString('en')} draws, one process`,
  );
  print([
    ['first in a new process', ms(first), ''],
    [`median of the next ${RUNS}`, ms(whole), whole < TARGET_MS ? 'under 1 s' : 'OVER 1 s'],
    ['the same by the clock', ms(median(clock)), 'more where the machine was busy'],
  ]);
}

function stages(): void {
  const section = inventedCase.sections[0]!;
  const toRead = section.drillings.map(({ id, trace }) => ({
    id,
    trace,
    barkMm: section.barkMm,
  }));
  const readings = readTraces(toRead);
  const field = {
    outline: outlineRing(section.outline),
    barkMm: section.barkMm,
    drillings: section.drillings.map((pose, i) => ({ id: pose.id, pose, reading: readings[i]! })),
  };
  const lobed = lobedSection();
  const open = openDecision(field);
  const nextMs = medianMs(() => nextDrilling(open), RUNS);
  say('\nStages');
  print([
    [`zones of ${DRILLINGS} traces`, ms(medianMs(() => readTraces(toRead), RUNS)), ''],
    [
      `soundness field, ${DRAWS.toLocaleString('en')} draws to strength by direction`,
      ms(medianMs(() => soundnessPosterior(field, randomFrom(1), DRAWS), RUNS)),
      '',
    ],
    [
      `next drilling among ${PLACES} places, 3 headings each`,
      ms(nextMs),
      nextMs < NEXT_TARGET_MS ? 'under 2 s' : 'OVER 2 s',
    ],
    [
      'exact section of 720 corners, 4 voids',
      ms(medianMs(() => sectionProperties(lobed), RUNS)),
      'beside the chain',
    ],
  ]);
}

/** A section looked at before any hole beside it is in the way, whose decision is as open as can be. */
function openDecision(field: FieldInput): NextDrillingInput {
  const posterior = soundnessPosterior(
    { ...field, drillings: field.drillings.slice(0, 2) },
    randomFrom(1),
    DRAWS,
  );
  const least = Float64Array.from({ length: DRAWS }, (_, i) =>
    Math.min(...posterior.remaining.subarray(PLACES * i, PLACES * (i + 1))),
  );
  const middle = median([...least]);
  const safety = least.map((remaining) => (1.5 * remaining) / middle);
  const section = { id: 's1', posterior, safetyByDraw: safety, safetyOfSection: safety, drilled: [] };
  return { sections: [section], limit: 1.5 };
}

function startUp(): void {
  const launcher = fileURLToPath(new URL('../apps/command/bin/standfast.mjs', import.meta.url));
  const started = (args: string[]) =>
    median(
      Array.from({ length: START_RUNS }, () =>
        elapsedMs(() => {
          const { status } = spawnSync(process.execPath, args, { stdio: 'ignore' });
          if (status !== 0) throw new Error(`node ${args.join(' ')} ended with ${status}`);
        }),
      ),
    );
  const bare = started(['-e', '0']);
  const help = started([launcher, '--help']);
  say('\nStart of the command, from the shell and back, by the clock');
  print([
    ['node alone', ms(bare), ''],
    ['standfast --help', ms(help), `${ms(help - bare)} ours`],
  ]);
}

function peers(): void {
  const compared = compareWithPeers();
  if (!compared) {
    say(
      '\nNo comparison: it needs /usr/bin/python3 with numpy, scipy and shapely (python3-scipy python3-shapely).',
    );
    return;
  }
  say('\nThe same step elsewhere, both on one thread');
  for (const line of table(
    [
      { head: 'step', align: 'left' },
      { head: 'here ms', align: 'right' },
      { head: 'there ms', align: 'right' },
      { head: 'times faster', align: 'right' },
      { head: 'there', align: 'left' },
    ],
    compared.map(({ step, oursMs, theirsMs, note }) => [
      step,
      ms(oursMs),
      ms(theirsMs),
      (theirsMs / oursMs).toFixed(1),
      note,
    ]),
  )) {
    say(`  ${line}`);
  }
}

function strip(): void {
  const { wholeMs, findMs, stages: steps, compared, laidDifference } = stripTimes();
  say('\nA photographed strip of 12 megapixels, decoded');
  print([
    ['read, corners given', ms(wholeMs), wholeMs < STRIP_TARGET_MS ? 'under 1.5 s' : 'OVER 1.5 s'],
    ['find the chart', ms(findMs), ''],
    ...steps.map(({ step, ms: time }) => [step, ms(time), '']),
    ...compared.map(({ step, oursMs, theirsMs }) => [step, ms(oursMs), `OpenCV ${ms(theirsMs)}`]),
  ]);
  if (laidDifference) {
    const { mean, worst } = laidDifference;
    say(
      `  laid flat, ours and OpenCV's differ by ${mean.toFixed(2)} of 255 on the average, at most ${worst}`,
    );
  }
}
