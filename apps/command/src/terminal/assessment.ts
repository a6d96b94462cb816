/** An assessment in plain words for the terminal: the answer first, then what it rests on, then what to mind. */
import type { CaseFile } from '@standfast/casefile';
import type {
  Assessment,
  Criterion,
  DirectionalInterval,
  DrillingAssessment,
  Notice,
  SectionAssessment,
} from '@standfast/engine';
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
  next(page, assessment);
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

function next(page: Page, { nextDrilling }: Assessment): void {
  page.heading('Next drilling');
  page.text(
    nextDrilling.stop
      ? `None: ${nextDrilling.why}`
      : `Section ${nextDrilling.sectionId} at ${direction(nextDrilling.azimuthDeg)}. ${nextDrilling.why}`,
  );
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
