/** What changed since the earlier visit, in plain words for the terminal. */
import type { ChangeAssessment, DrillingChange, Interval } from '@standfast/engine';
import { fixed, withInterval } from './numbers.ts';
import type { Page } from './page.ts';

export function changePart(page: Page, change: ChangeAssessment): void {
  const span = change.years === null ? '' : `, ${fixed(change.years, 1)} years`;
  page.heading(`Change since ${change.earlierOn ?? 'the earlier visit'}${span}`);
  for (const sentence of change.summary) page.text(sentence);
  if (change.drillings.length > 0) {
    page.gap();
    page.table(
      [
        { head: 'drilling', align: 'left' },
        { head: 'grown mm', align: 'right' },
        { head: 'front towards bark mm', align: 'right' },
        { head: 'verdict', align: 'left' },
        { head: 'wall then mm', align: 'right' },
        { head: 'now', align: 'right' },
        { head: 'difference', align: 'right' },
        { head: 'rests on', align: 'left' },
      ],
      change.drillings.map((one) => [
        one.earlierId === one.laterId ? one.laterId : `${one.earlierId}, ${one.laterId}`,
        withInterval(one.growthMm, 0),
        frontCell(one),
        one.verdict,
        wall(one.wallThenMm, one.earlier.residualWallAtLeast),
        wall(one.wallNowMm, one.later.residualWallAtLeast),
        one.wallDifferenceMm ? withInterval(one.wallDifferenceMm, 0) : '–',
        one.alignment.restsOn,
      ]),
    );
  }
  for (const { text } of change.unmatched) page.item('-', text);
  if (change.recorded.length > 0) {
    page.gap();
    page.text('Recorded otherwise than before:');
    page.table(
      [
        { head: 'what', align: 'left' },
        { head: 'then', align: 'left' },
        { head: 'now', align: 'left' },
      ],
      change.recorded.map(({ what, before, now }) => [what, before ?? '–', now ?? '–']),
    );
  }
  if (change.forecast) {
    page.gap();
    page.text('Safety of the stem in the years to come, if crown and site stay as they are:');
    page.table(
      [
        { head: 'in years', align: 'right' },
        { head: 'safety factor', align: 'right' },
      ],
      change.forecast.safety
        .filter(({ year }) => [0, 5, 10, 20, 30].includes(year))
        .map((point) => [String(point.year), withInterval(point, 2)]),
    );
  }
}

const wall = (interval: Interval, atLeast: boolean) => `${atLeast ? '≥ ' : ''}${withInterval(interval, 0)}`;

function frontCell({ frontMm, frontAtLeastMm }: DrillingChange): string {
  if (frontMm) return withInterval(frontMm, 0);
  return frontAtLeastMm === null ? '–' : `≥ ${fixed(Math.max(0, frontAtLeastMm), 0)}`;
}
