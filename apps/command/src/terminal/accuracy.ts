/** What felled sections say of the predictions, in plain words for the terminal. */
import type { AccuracySummary, Spread } from '../accuracy/summary.ts';
import type { SectionVerdict } from '../accuracy/verdict.ts';
import type { CountedShare } from '../accuracy/wilson.ts';
import { direction, fixed } from './numbers.ts';
import { newPage } from './page.ts';

export interface AccuracyPage {
  summary: AccuracySummary;
  verdicts: readonly SectionVerdict[];
  /** Cases without a felled section. */
  standing: number;
  failed: readonly { case: string; message: string }[];
  csv?: string;
}

export function accuracyPage({ summary, verdicts, standing, failed, csv }: AccuracyPage): void {
  const page = newPage();
  page.heading('Predictions against felled sections');
  page.text(
    `${summary.sections} felled ${summary.sections === 1 ? 'section' : 'sections'} of ${summary.cases} ${summary.cases === 1 ? 'case' : 'cases'}; ${standing} ${standing === 1 ? 'case has' : 'cases have'} none; ${failed.length} failed.`,
  );
  page.gap();
  for (const said of summary.means) page.text(said);

  page.heading('Strength left: is the truth inside the 90 % interval?');
  page.table(
    [
      { head: '', align: 'left' },
      { head: 'inside', align: 'right' },
      { head: 'share', align: 'right' },
      { head: 'may be (95 %)', align: 'right' },
    ],
    [
      counted('where the prediction was lowest', summary.weakest),
      counted('where the truth is lowest', summary.weakestInTruth),
      counted('share of sound wood', summary.soundShare),
      ['all 36 directions', '', hundredths(summary.directionsInside), 'not independent'],
    ],
  );
  page.gap();
  page.table(
    [
      { head: 'where the prediction was lowest, in points of strength left', align: 'left' },
      { head: 'mean', align: 'right' },
      { head: 'median', align: 'right' },
    ],
    [
      spread('error, middle estimate less truth (above 0: too good)', summary.error, 100),
      spread('error without its sign', summary.absoluteError, 100),
      spread('width of the 90 % interval', summary.width, 100),
    ],
  );

  const { walls } = summary;
  page.heading('Walls along the needles');
  page.text(
    `${walls.compared} compared, ${walls.bothSound} without an edge in trace and truth, ${walls.missed} missed (an edge that the trace shows none of), ${walls.falseAlarms} false ${walls.falseAlarms === 1 ? 'alarm' : 'alarms'}.`,
  );
  if (walls.compared > 0) {
    page.table(
      [
        { head: 'mm', align: 'left' },
        { head: 'mean', align: 'right' },
        { head: 'median', align: 'right' },
      ],
      [
        spread('error, read less true (above 0: too thick)', walls.errorMm, 1),
        spread('error without its sign', walls.absoluteErrorMm, 1),
      ],
    );
  }

  page.heading('Section by section');
  page.table(
    [
      { head: 'case', align: 'left' },
      { head: 'section', align: 'left' },
      { head: 'drillings', align: 'right' },
      { head: 'lowest toward', align: 'left' },
      { head: 'predicted %', align: 'right' },
      { head: 'truth %', align: 'right' },
      { head: 'inside', align: 'left' },
    ],
    verdicts.map(({ case: name, section, drillings, weakest }) => [
      name,
      section,
      String(drillings),
      direction(weakest.directionDeg),
      `${fixed(100 * weakest.p50, 0)} (${fixed(100 * weakest.p05, 0)} to ${fixed(100 * weakest.p95, 0)})`,
      fixed(100 * weakest.truth, 0),
      weakest.inside ? 'yes' : 'NO',
    ]),
  );
  if (failed.length) page.gap();
  for (const { case: name, message } of failed) page.item('!', `${name}: ${message}`);
  if (csv) {
    page.gap();
    page.text(`Wrote ${csv}`);
  }
  page.print();
}

const hundredths = (share: number) => `${fixed(100 * share, 0)} %`;

function counted(what: string, { held, of, share, low, high }: CountedShare): string[] {
  return [what, `${held} of ${of}`, hundredths(share), `${fixed(100 * low, 0)} to ${hundredths(high)}`];
}

function spread(what: string, { mean, median }: Spread, times: number): string[] {
  return [what, fixed(times * mean, 1), fixed(times * median, 1)];
}
