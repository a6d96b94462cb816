/** When to look again, why then, and what would call for it sooner. */
import type { Assessment } from '@standfast/engine';
import { monthsOn, textInUnits } from '@standfast/report';
import { useSettings } from '../../state/settings.ts';
import { useCaseFile } from '../../state/useSession.tsx';
import { dateText } from '../../units/dates.ts';
import { fixed } from '../../units/quantities.ts';
import { Group } from '../Group.tsx';
import { OpenNumber } from '../OpenNumber.tsx';

export function ReinspectionGroup({ assessment }: { assessment: Assessment }) {
  const { units } = useSettings();
  const { visitedOn } = useCaseFile();
  const { months, why, sooner, wallYears, values } = assessment.advice.reinspection;
  const said = (text: string) => textInUnits(text, units);
  const day = monthsOn(visitedOn ?? '', months);
  const when =
    months === 0 ? 'at once' : `within ${months} ${months === 1 ? 'month' : 'months'} of the visit`;
  const years = (value: number | null) => (value === null ? 'never' : `${fixed(value, 0)} years`);
  return (
    <Group title="Look again" id="look-again">
      <p className="answer-number">
        <OpenNumber
          explanation={{
            name: 'When to look again',
            value: when,
            meaning: 'The shortest of the intervals that the tree’s findings ask for.',
            formula: why.map(said),
            inputs: values.map(({ name, value, unit, source }) => ({
              name,
              value: `${Number(value.toPrecision(3))}${unit === '1' || unit === '' ? '' : `\u00a0${unit}`}`,
              source,
            })),
            sources: [...new Set(values.map(({ source }) => source))],
            limits: 'Decay moves at its own pace; the growth rates are ranges from other trees.',
          }}
        >
          {when}
        </OpenNumber>
        {day !== null && months > 0 && <span>by {dateText(day)}</span>}
      </p>
      <ul className="plain-list">
        {why.map((text) => (
          <li key={text}>{said(text)}</li>
        ))}
      </ul>
      {wallYears && (
        <dl className="facts">
          {(['fast', 'middle', 'slow'] as const).map((pace) => (
            <div key={pace}>
              <dt>
                Wall at {wallYears.drillingId} down to its limit, {pace} decay
              </dt>
              <dd>{years(wallYears[pace])}</dd>
            </div>
          ))}
        </dl>
      )}
      <p>
        <strong>Sooner:</strong> {said(sooner.join('; '))}.
      </p>
    </Group>
  );
}
