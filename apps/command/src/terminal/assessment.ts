/** An assessment in plain words for the terminal: the answer first, then what it rests on, then what to mind. */
import type { CaseFile } from '@standfast/casefile';
import type {
  Assessment,
  Criterion,
  DirectionalInterval,
  DrillingAssessment,
  FelledAssessment,
  FirstDrillings,
  Notice,
  SectionAssessment,
} from '@standfast/engine';
import { changePart } from './change.ts';
import { advicePart, decisionPart } from './decision.ts';
import { direction, fixed, percent, withInterval } from './numbers.ts';
import type { Page } from './page.ts';
import { band, legend } from './trace-drawing.ts';

/** Columns of a drilling's zone band in the table. */
const BAND_COLUMNS = 24;

export function summary(page: Page, caseFile: CaseFile, assessment: Assessment): void {
  page.heading([caseFile.tree.label, caseFile.tree.species].filter(Boolean).join(', '));
  const visit = [
    caseFile.visitedOn && `visited ${caseFile.visitedOn}`,
    caseFile.client?.name && `for ${caseFile.client.name}`,
    caseFile.assessor?.name && `by ${caseFile.assessor.name}`,
  ].filter(Boolean);
  if (visit.length) page.text(visit.join(', '), 'quiet');
  answer(page, assessment);
  wind(page, assessment);
  for (const section of assessment.sections) sectionPart(page, section);
  flares(page, assessment);
  if (assessment.change) changePart(page, assessment.change);
  next(page, assessment);
  decisionPart(page, assessment.decision);
  advicePart(page, assessment.advice);
  notices(page, assessment.notices);
  page.gap();
  page.text(
    `Intervals hold the truth nine times in ten if the model holds. ${assessment.draws.toLocaleString('en')} draws, seed ${assessment.seed}, engine ${assessment.engineVersion}. A decision is the assessor's: this is evidence for it.`,
    'quiet',
  );
}

function answer(page: Page, { safety }: Assessment): void {
  page.heading('Safety');
  const { governing } = safety;
  const where =
    governing.mode === 'breakage' && governing.sectionId ? ` at section ${governing.sectionId}` : '';
  page.text(
    `Lowest safety factor ${withInterval(governing, 2)}: ${governing.mode}${where}, with the wind toward ${direction(governing.directionDeg)}.`,
    governing.p05 < 1 ? 'alarm' : 'strong',
  );
  page.text(
    `Chance that it is below 1: ${percent(safety.chanceBelow1)}; below 1.5: ${percent(safety.chanceBelow1_5)}.`,
  );
  page.gap();
  const worst = (rows: DirectionalInterval[]) => rows.reduce((a, b) => (b.p50 < a.p50 ? b : a));
  page.table(
    [
      { head: 'mode', align: 'left' },
      { head: 'least safety factor', align: 'right' },
      { head: 'wind toward', align: 'left' },
      { head: 'critical gust m/s', align: 'right' },
    ],
    (['breakage', 'uprooting'] as const).map((mode) => {
      const rows = safety[mode];
      const least = rows.length ? worst(rows) : null;
      return [
        mode,
        least ? withInterval(least, 2) : '–',
        least ? direction(least.directionDeg) : '–',
        withInterval(safety.criticalGustMs[mode], 0),
      ];
    }),
  );
  page.gap();
  page.text(`Anchorage: ${safety.anchorageBasis}`);
}

function wind(page: Page, { wind }: Assessment): void {
  page.heading(`Wind, ${wind.windCode}`);
  page.text(
    `Moment at the ground ${withInterval(thousandths(wind.momentIntervalNm), 0)} kN·m (own weight ${fixed(wind.selfWeightMomentNm / 1000, 0)}), gust ${fixed(wind.gustMs, 1)} m/s at ${fixed(wind.centreOfPressureM, 1)} m, crown ${fixed(wind.crownAreaM2, 0)} m².`,
  );
}

const thousandths = ({ p05, p50, p95 }: { p05: number; p50: number; p95: number }) => ({
  p05: p05 / 1000,
  p50: p50 / 1000,
  p95: p95 / 1000,
});

function sectionPart(page: Page, section: SectionAssessment): void {
  page.heading(`Section ${section.id}, ${fixed(section.heightM, 2)} m above ground`);
  const least = section.remaining.reduce((a, b) => (b.p50 < a.p50 ? b : a));
  const percentOf = ({ p05, p50, p95 }: DirectionalInterval) =>
    `${withInterval({ p05: p05 * 100, p50: p50 * 100, p95: p95 * 100 }, 0)} %`;
  page.text(
    `Strength left: ${percentOf(least)} in the weakest direction, toward ${direction(least.directionDeg)}. Sound wood: ${withInterval({ p05: section.soundShare.p05 * 100, p50: section.soundShare.p50 * 100, p95: section.soundShare.p95 * 100 }, 0)} % of the area.`,
  );
  if (section.felled) felledPart(page, section.felled);
  drillings(page, section.drillings);
  page.gap();
  page.table(
    [
      { head: 'rule of the trade', align: 'left' },
      { head: 'value', align: 'right' },
      { head: 'limit', align: 'right' },
      { head: 'met', align: 'left' },
    ],
    section.criteria.map((rule) => [rule.name, fixed(rule.value, 2), fixed(rule.limit, 2), verdict(rule)]),
  );
}

/** The prediction against the felled section: first the answer, then the walls. */
function felledPart(page: Page, felled: FelledAssessment): void {
  const { weakest, weakestInTruth, insideShare, soundShare, walls } = felled;
  const hundred = (share: number) => `${fixed(100 * share, 0)} %`;
  const verdictOn = ({ inside }: { inside: boolean }) =>
    inside ? 'inside the interval' : 'OUTSIDE the interval';
  page.gap();
  page.text('Against the felled section', 'strong');
  page.text(
    `Strength left in truth: ${hundred(weakest.truth)} toward ${direction(weakest.directionDeg)}, where the prediction was lowest: ${verdictOn(weakest)}; the middle estimate was ${points(weakest.error)}. In truth weakest toward ${direction(weakestInTruth.directionDeg)}, ${hundred(weakestInTruth.truth)}: ${verdictOn(weakestInTruth)}. Inside in ${hundred(insideShare)} of the directions. Sound wood in truth ${hundred(soundShare.truth)} of the area: ${verdictOn(soundShare)}.`,
    weakest.inside && weakestInTruth.inside ? undefined : 'alarm',
  );
  if (felled.incipientStrength !== null) {
    page.text(`Incipient wood is counted at ${hundred(felled.incipientStrength)} of its strength.`, 'quiet');
  }
  if (walls.length) {
    page.gap();
    page.table(
      [
        { head: 'drilling', align: 'left' },
        {
          head: `wall read, mm, to the ${felled.wallsTo === 'first loss' ? 'first loss' : 'wood without strength'}`,
          align: 'right',
        },
        { head: 'traced', align: 'right' },
        { head: 'error', align: 'right' },
        { head: '', align: 'left' },
      ],
      walls.map((wall) => [
        wall.drillingId,
        `${wall.readAtLeast ? '≥ ' : ''}${fixed(wall.readMm, 0)}`,
        `${wall.trueAtLeast ? '≥ ' : ''}${fixed(wall.trueMm, 0)}`,
        wall.errorMm === null ? '–' : fixed(Math.round(wall.errorMm) || 0, 0),
        FINDINGS[wall.finding],
      ]),
    );
  }
  for (const warning of felled.warnings) page.text(warning, 'quiet');
}

/** An error of strength left in words, in points of a hundred. */
function points(error: number): string {
  const whole = Math.round(100 * Math.abs(error));
  if (whole === 0) return 'right to the point';
  return `${whole} ${whole === 1 ? 'point' : 'points'} too ${error > 0 ? 'high' : 'low'}`;
}

const FINDINGS: Record<FelledAssessment['walls'][number]['finding'], string> = {
  edge: '',
  none: 'no edge in either',
  missed: 'MISSED: the trace shows no edge',
  'false alarm': 'false alarm: no edge there',
};

const verdict = ({ met }: Criterion) => (met === null ? 'does not apply' : met ? 'yes' : 'NO');

function drillings(page: Page, rows: DrillingAssessment[]): void {
  if (!rows.length) return;
  const longest = Math.max(...rows.map(({ zones }) => zones.at(-1)?.toMm ?? 0));
  page.gap();
  page.table(
    [
      { head: 'drilling', align: 'left' },
      { head: 'at', align: 'left' },
      { head: 'residual wall mm', align: 'right' },
      { head: `zones, 0 to ${fixed(longest, 0)} mm`, align: 'left' },
    ],
    rows.map((one) => [
      one.id,
      direction(one.azimuthDeg),
      `${one.residualWallAtLeast ? '≥ ' : ''}${withInterval(one.residualWallIntervalMm, 0)}`,
      band(one.zones, 0, longest, BAND_COLUMNS, page.terminal),
    ]),
  );
  page.lines([
    `  ${legend(
      rows.flatMap(({ zones }) => zones),
      page.terminal,
    )}`,
  ]);
}

function flares(page: Page, { flares }: Assessment): void {
  if (!flares.length) return;
  page.heading('Root flares');
  page.table(
    [
      { head: 'flare', align: 'left' },
      { head: 'at', align: 'left' },
      { head: 'drillings', align: 'right' },
      { head: 'sound wood %', align: 'right' },
    ],
    flares.map(({ id, azimuthDeg, drillings, soundShare }) => [
      id,
      direction(azimuthDeg),
      String(drillings.length),
      soundShare
        ? withInterval({ p05: soundShare.p05 * 100, p50: soundShare.p50 * 100, p95: soundShare.p95 * 100 }, 0)
        : 'not drilled',
    ]),
  );
}

function next(page: Page, { nextDrilling, firstDrillings = [] }: Assessment): void {
  page.heading('Next drilling');
  page.text(
    nextDrilling.stop
      ? `None: ${nextDrilling.why}`
      : `Section ${nextDrilling.sectionId} at ${direction(nextDrilling.azimuthDeg)}. ${nextDrilling.why}`,
  );
  for (const one of firstDrillings) plan(page, one);
}

/** Where to begin, in the order of work, with the rules followed. */
function plan(page: Page, { sectionId, drillings, why, leastDepthMm, rules, notes }: FirstDrillings): void {
  page.heading(`Where to begin at section ${sectionId}`);
  page.text(why);
  page.gap();
  page.table(
    [
      { head: '', align: 'right' },
      { head: 'at', align: 'left' },
      { head: 'azimuth', align: 'left' },
      { head: 'height m', align: 'right' },
      { head: 'down', align: 'right' },
    ],
    drillings.map(({ order, at, placeId, azimuthDeg, heightM, downDeg }) => [
      String(order),
      `${at} ${placeId}`,
      direction(azimuthDeg),
      fixed(heightM, 2),
      downDeg ? `${fixed(downDeg, 0)}°` : 'level',
    ]),
  );
  page.gap();
  for (const reason of new Set(drillings.map((one) => one.why))) {
    const orders = drillings.filter((one) => one.why === reason).map(({ order }) => order);
    page.item(`${orders.join(', ')}:`, reason);
  }
  page.gap();
  page.text(`All head for the centre of the stem; level ones at least ${fixed(leastDepthMm, 0)} mm deep.`);
  for (const { text, source } of rules) page.item('-', `${text} [${source}]`, 'quiet');
  for (const note of notes) page.item('!', note);
}

const WORDS: Record<Notice['severity'], string> = { serious: 'SERIOUS', caution: 'caution', note: 'note' };
const ORDER: Notice['severity'][] = ['serious', 'caution', 'note'];

function notices(page: Page, all: Notice[]): void {
  if (!all.length) return;
  page.heading('To mind');
  for (const severity of ORDER) {
    for (const { where, text } of all.filter((notice) => notice.severity === severity)) {
      page.item(
        `${WORDS[severity]}:`,
        where ? `${where}: ${text}` : text,
        severity === 'serious' ? 'alarm' : undefined,
      );
    }
  }
}
