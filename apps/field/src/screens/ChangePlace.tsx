/** What changed since the earlier visit: side by side and as a difference, and how long it will do. */
import type { ChangeAssessment, DrillingChange, Interval } from '@standfast/engine';
import '../look/change.css';
import { changeRose, changeSection, changeTraces, forecastFan } from '@standfast/report';
import { useCallback, useState } from 'react';
import { Figure } from '../parts/Figure.tsx';
import { Group } from '../parts/Group.tsx';
import { SectionChooser } from '../parts/SectionChooser.tsx';
import { useSettings } from '../state/settings.ts';
import { useAssessment } from '../state/useSession.tsx';
import { fixed, intervalText, measure, rangeText } from '../units/quantities.ts';

/** Below this width drawings that stand side by side are put one below the other, px. */
const NARROW = 620;

export function ChangePlace() {
  const assessment = useAssessment();
  const change = assessment?.change;
  if (!change) {
    return (
      <>
        <h1>Change</h1>
        <p className="hint">
          {assessment
            ? 'The earlier visit that this case holds could not be assessed; the notices say why.'
            : 'Give the drillings of this visit their traces: what changed is shown here once the case can be assessed.'}
        </p>
      </>
    );
  }
  const since = change.earlierOn ?? 'the earlier visit';
  return (
    <>
      <h1>Change since {since}</h1>
      <Group
        title="What changed"
        lead={
          change.years === null
            ? 'A date is missing, so no speed and no forecast can be given.'
            : `${fixed(change.years, 1)} years lie between the visits. Movement towards the bark counts as positive.`
        }
      >
        <ul className="change-summary" data-testid="change-summary">
          {change.summary.map((sentence) => (
            <li key={sentence}>{withMinus(sentence)}</li>
          ))}
        </ul>
      </Group>
      <SectionThenAndNow change={change} />
      <div className="columns">
        <SafetyThenAndNow change={change} />
        <HowLong change={change} />
      </div>
      <Drillings change={change} />
      <Recorded change={change} />
    </>
  );
}

/** A true minus sign before a number, as everywhere else on the screen. */
const withMinus = (sentence: string) => sentence.replace(/(^|[\s(])-(?=\d)/g, '$1−');

function visitNames({ earlierOn, laterOn }: ChangeAssessment) {
  return { thenName: `then, ${earlierOn ?? 'no date'}`, nowName: `now, ${laterOn ?? 'no date'}` };
}

function SectionThenAndNow({ change }: { change: ChangeAssessment }) {
  const assessment = useAssessment()!;
  const { units } = useSettings();
  const [wanted, setWanted] = useState<string | null>(null);
  const one = change.sections.find(({ laterId }) => laterId === wanted) ?? change.sections[0];
  const then = change.sectionsThen.find(({ id }) => id === one?.earlierId);
  const now = assessment.sections.find(({ id }) => id === one?.laterId);
  const draw = useCallback(
    (width: number) =>
      changeSection(then!, now!, one!, {
        width,
        units,
        textSize: width < NARROW ? 12 : 13,
        stacked: width < NARROW,
        ...visitNames(change),
      }),
    [then, now, one, units, change],
  );
  if (!one || !then || !now) return null;
  const sections = assessment.sections.filter(({ id }) =>
    change.sections.some(({ laterId }) => laterId === id),
  );
  const worst = one.remainingDifference.reduce((a, b) => (b.p50 < a.p50 ? b : a));
  const points = (share: number) => fixed(100 * share, 1);
  return (
    <Group
      title="The section, then and now"
      lead="Drawn to one scale, north up. The third drawing is the difference of the middle estimates."
      tools={<SectionChooser sections={sections} value={one.laterId} onChoose={setWanted} />}
    >
      <Figure draw={draw} maxWidth={1100} />
      <dl className="facts">
        <div>
          <dt>Strength left, change where it is greatest</dt>
          <dd>
            {points(worst.p50)} %
            <small>
              {points(worst.p05)} to {points(worst.p95)} %
            </small>
          </dd>
        </div>
        <div>
          <dt>Mean radius over bark</dt>
          <dd>
            {measure(one.meanRadiusThenMm, 'lengthMm', units)} to{' '}
            {measure(one.meanRadiusNowMm, 'lengthMm', units)}
          </dd>
        </div>
      </dl>
    </Group>
  );
}

function SafetyThenAndNow({ change }: { change: ChangeAssessment }) {
  const { safety } = useAssessment()!;
  const { units } = useSettings();
  const draw = useCallback(
    (width: number) =>
      changeRose(change.safety.before, safety, { width, units, textSize: width < 500 ? 12 : 13 }),
    [change, safety, units],
  );
  const { breakage, uprooting, breakageWithLoadHeld } = change.safety;
  return (
    <Group
      title="Safety, then and now"
      lead="Against breaking, by the direction in which the stem bends."
      className="column"
    >
      <Figure draw={draw} maxWidth={560} />
      <dl className="facts">
        <div>
          <dt>Breaking, in the direction now worst</dt>
          <dd>
            {fixed(breakage.before.p50, 2)} then, {fixed(breakage.now.p50, 2)} now
            <small>difference {intervalText(breakage.difference)}</small>
          </dd>
        </div>
        {breakageWithLoadHeld && (
          <div>
            <dt>Of that by the wood alone</dt>
            <dd>
              {fixed(breakageWithLoadHeld.difference.p50, 2)}
              <small>{intervalText(breakageWithLoadHeld.difference)}, crown and site held as they were</small>
            </dd>
          </div>
        )}
        <div>
          <dt>Uprooting</dt>
          <dd>
            {fixed(uprooting.before.p50, 2)} then, {fixed(uprooting.now.p50, 2)} now
            <small>difference {intervalText(uprooting.difference)}</small>
          </dd>
        </div>
      </dl>
    </Group>
  );
}

function HowLong({ change }: { change: ChangeAssessment }) {
  const { units } = useSettings();
  const { forecast } = change;
  const draw = useCallback(
    (width: number) => forecastFan(forecast!, { width, units, textSize: width < 500 ? 12 : 13 }),
    [forecast, units],
  );
  if (!forecast) return null;
  return (
    <Group
      title="How long"
      lead="The safety of the stem in the years to come, if crown and site stay as they are."
      className="column"
    >
      <Figure draw={draw} maxWidth={620} />
      <dl className="facts">
        {forecast.crossings.map(({ limit, earlyYears, middleYears, lateYears, chanceAtEnd }) => {
          const year = (value: number | null) =>
            value === null
              ? `not within ${forecast.years} years`
              : value === 0
                ? 'now'
                : `${fixed(value, 0)} years`;
          return (
            <div key={limit}>
              <dt>Below {fixed(limit, 1)}, middle estimate</dt>
              <dd>
                {year(middleYears)}
                <small>
                  {earlyYears === null ? '' : `early ${year(earlyYears)}, late ${year(lateYears)}; `}chance
                  within {forecast.years} years {fixed(100 * chanceAtEnd, 0)} %
                </small>
              </dd>
            </div>
          );
        })}
      </dl>
      <details>
        <summary className="opener">What the forecast takes for granted</summary>
        <ul>
          {forecast.basis.map((sentence) => (
            <li key={sentence}>{sentence}</li>
          ))}
        </ul>
      </details>
    </Group>
  );
}

function Drillings({ change }: { change: ChangeAssessment }) {
  return (
    <Group
      title="Drilling by drilling"
      lead="Upper trace then, lower trace now, the same wood one above the other. Where the line that joins the fronts is upright, decay has stood; where it leans to the left, it has moved towards the bark."
    >
      {change.unmatched.length > 0 && (
        <p className="hint">{change.unmatched.map(({ text }) => text).join(' ')}</p>
      )}
      <ul className="change-drillings">
        {change.drillings.map((one) => (
          <li key={`${one.place} ${one.laterId}`} data-verdict={one.verdict}>
            <Pair one={one} change={change} />
          </li>
        ))}
      </ul>
    </Group>
  );
}

const VERDICT: Record<DrillingChange['verdict'], string> = {
  moved: 'decay moved',
  'not moved': 'not moved within error',
  'cannot tell': 'cannot tell',
  'no front': 'no decay met',
};

function Pair({ one, change }: { one: DrillingChange; change: ChangeAssessment }) {
  const { units } = useSettings();
  const draw = useCallback(
    (width: number) =>
      changeTraces(one, {
        width,
        units,
        textSize: width < NARROW ? 11 : 12,
        plotHeight: width < NARROW ? 80 : 96,
        ...visitNames(change),
      }),
    [one, change, units],
  );
  const length = (interval: Interval | null) =>
    interval ? (
      <>
        {measure(interval.p50, 'lengthMm', units)}
        <small>{rangeText(interval, 'lengthMm', units)}</small>
      </>
    ) : (
      '–'
    );
  return (
    <details open={one.verdict === 'moved'}>
      <summary className="change-pair">
        <strong>{one.laterId}</strong>
        <span className="change-verdict">{VERDICT[one.verdict]}</span>
      </summary>
      <Figure draw={draw} maxWidth={1100} />
      <p>{withMinus(one.text)}</p>
      <dl className="facts">
        <div>
          <dt>Growth at the cambium</dt>
          <dd>{length(one.growthMm)}</dd>
        </div>
        <div>
          <dt>Front towards the bark</dt>
          <dd>{length(one.frontMm)}</dd>
        </div>
        <div>
          <dt>Residual wall, difference</dt>
          <dd>{length(one.wallDifferenceMm)}</dd>
        </div>
      </dl>
    </details>
  );
}

function Recorded({ change }: { change: ChangeAssessment }) {
  if (change.recorded.length === 0) return null;
  return (
    <Group
      title="Recorded otherwise than before"
      lead="A measure taken anew is not a change of the tree; look whether it is one."
    >
      <div className="table-holder">
        <table>
          <thead>
            <tr>
              <th scope="col">What</th>
              <th scope="col">Then</th>
              <th scope="col">Now</th>
            </tr>
          </thead>
          <tbody>
            {change.recorded.map(({ kind, where, what, before, now }) => (
              <tr key={`${kind} ${where} ${what}`}>
                <th scope="row">{what}</th>
                <td>{before ?? '–'}</td>
                <td>{now ?? '–'}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </div>
    </Group>
  );
}
