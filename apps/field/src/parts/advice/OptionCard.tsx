/** One option of the advice: what it would change, what risk is left, and what the client and the assessor make of it. */
import { setAdviceChoice } from '@standfast/casefile';
import { type AdviceOption, type Assessment, RISKS } from '@standfast/engine';
import { monthsOn, textInUnits } from '@standfast/report';
import { Check, TriangleAlert, X } from 'lucide-react';
import { ToggleButton } from 'react-aria-components';
import { explainEffect } from '../../explain/decision.ts';
import { useSettings } from '../../state/settings.ts';
import { useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { dateText } from '../../units/dates.ts';
import { chanceText, fixed, intervalText, quantityText } from '../../units/quantities.ts';
import { StepsMark } from '../decision/StepsMark.tsx';
import { DateEntry, TextEntry } from '../entries.tsx';
import { OpenNumber } from '../OpenNumber.tsx';

const PRIORITY: Record<AdviceOption['priority'], string> = {
  first: 'First of all',
  advised: 'Advised',
  possible: 'Possible',
  'not advised': 'Not advised',
};

export function OptionCard({ option, assessment }: { option: AdviceOption; assessment: Assessment }) {
  const { units } = useSettings();
  const said = (text: string) => textInUnits(text, units);
  // What it is stands before the colon, what it takes behind it.
  const [name = '', detail] = said(option.what).split(/: (.*)/s);
  const caseFile = useCaseFile();
  const index = (caseFile.advice ?? []).findIndex((each) => each.option === option.id);
  const chosen = caseFile.advice?.[index]?.chosen;
  return (
    <li className="option-card" data-chosen={chosen ? '' : undefined} aria-label={name}>
      <header>
        <p className={`option-priority ${option.priority.replace(' ', '-')}`}>
          {PRIORITY[option.priority]}
          {dueText(option, caseFile.visitedOn)}
        </p>
        <h3>{name}</h3>
        {detail && <p>{detail}</p>}
      </header>
      {!option.permissible && (
        <p className="warn-line">
          <TriangleAlert aria-hidden size={20} /> More than pruning standards allow in one season.
        </p>
      )}
      <Effect option={option} assessment={assessment} />
      <Choice option={option} name={name} chosen={chosen} />
      {index >= 0 && (
        <div className="fields">
          <TextEntry at={`advice.${index}.cost`} label="Cost" hint="In your own words and currency." />
          <DateEntry at={`advice.${index}.dueOn`} label="To be done by" hint="Left out: as worked out." />
          <TextEntry at={`advice.${index}.note`} label="Note" />
        </div>
      )}
      <details>
        <summary className="opener">
          Reasons, limits, source<span className="out-of-sight">{`: ${name}`}</span>
        </summary>
        <div className="option-why">
          <ul className="plain-list">
            {option.why.map((why) => (
              <li key={why}>{said(why)}</li>
            ))}
          </ul>
          <p>
            <strong>Limits:</strong> {said(option.limits)}
          </p>
          <p className="hint">Source: {option.source}</p>
        </div>
      </details>
    </li>
  );
}

/** By when: the day the user set, or the one worked out from the visit. */
function dueText({ dueOn, byMonths }: AdviceOption, visitedOn: string | undefined): string {
  if (dueOn !== null) return `, by ${dateText(dueOn)}`;
  if (byMonths === null) return '';
  if (byMonths === 0) return ', at once';
  const day = monthsOn(visitedOn ?? '', byMonths);
  if (day !== null) return `, by ${dateText(day)}`;
  return `, within ${byMonths} ${byMonths === 1 ? 'month' : 'months'} of the visit`;
}

function Effect({ option, assessment }: { option: AdviceOption; assessment: Assessment }) {
  const { units } = useSettings();
  const { effect, residualRisk } = option;
  const { wantedSafety } = assessment.advice.leastPruning;
  const percent = (share: number) => `${fixed(100 * share, 0)} %`;
  if (!effect && residualRisk === null) {
    return <p className="hint">What it will show cannot be told before it is done.</p>;
  }
  return (
    <dl className="facts option-facts">
      {effect && (
        <>
          <div>
            <dt>Safety, now {intervalText(effect.safetyBefore)}</dt>
            <dd>
              then{' '}
              <OpenNumber explanation={explainEffect(option, assessment, units)}>
                {intervalText(effect.safetyAfter)}
              </OpenNumber>
            </dd>
          </div>
          <div>
            <dt>Chance within {quantityText(assessment.decision.timeFrameYears, 'years', units)}</dt>
            <dd>
              {chanceText(effect.chanceInTimeFrameBefore)}, then {chanceText(effect.chanceInTimeFrameAfter)}
            </dd>
          </div>
          <div>
            <dt>Draws that reach {wantedSafety}</dt>
            <dd>
              {percent(effect.confidenceBefore)}, then {percent(effect.confidenceAfter)}
            </dd>
          </div>
        </>
      )}
      {residualRisk !== null && (
        <div>
          <dt>Risk that is left</dt>
          <dd>
            <span>
              <StepsMark scale={RISKS} word={residualRisk} /> {residualRisk}
            </span>
          </dd>
        </div>
      )}
    </dl>
  );
}

interface ChoiceProps {
  option: AdviceOption;
  name: string;
  chosen: boolean | undefined;
}

function Choice({ option, name, chosen }: ChoiceProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const set = (value: boolean | undefined) =>
    session.edit(
      value ? `Choose: ${name}` : value === false ? `Decline: ${name}` : `Leave open: ${name}`,
      (now) => setAdviceChoice(now, option.id, { chosen: value }),
    );
  return (
    <div className="actions">
      <ToggleButton
        className="button toggle"
        isDisabled={writer !== true}
        isSelected={chosen === true}
        onChange={(on) => set(on ? true : undefined)}
      >
        <Check aria-hidden /> {chosen === true ? 'Chosen' : 'Choose'}
        <span className="out-of-sight">{`: ${name}`}</span>
      </ToggleButton>
      <ToggleButton
        className="button toggle"
        isDisabled={writer !== true}
        isSelected={chosen === false}
        onChange={(on) => set(on ? false : undefined)}
      >
        <X aria-hidden /> {chosen === false ? 'Declined' : 'Decline'}
        <span className="out-of-sight">{`: ${name}`}</span>
      </ToggleButton>
    </div>
  );
}
