/** The likelihood of failure in the time frame: suggested with its reasons, confirmed or overridden by the assessor. */
import type { Assessment } from '@standfast/engine';
import { textInUnits } from '@standfast/report';
import { Check } from 'lucide-react';
import { Button } from 'react-aria-components';
import { confirmAll, openSuggestions } from '../../edit/judgements.ts';
import { today } from '../../state/bringIn.ts';
import { useSettings } from '../../state/settings.ts';
import { matchesCase, useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { DateEntry, NumberEntry, TextEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';
import { JudgedRow } from './JudgedRow.tsx';

export function LikelihoodGroup({ assessment }: { assessment: Assessment }) {
  const { units } = useSettings();
  const { decision } = assessment;
  const said = (text: string) => textInUnits(text, units);
  return (
    <Group title="Likelihood of failure" id="likelihood">
      <div className="fields">
        <NumberEntry
          at="timeFrameYears"
          label="Time frame"
          hint="One to five years, as a rule."
          placeholder={String(decision.timeFrameYears)}
          quantity="years"
          limits={{ min: 0, aboveMin: true, max: 50 }}
        />
      </div>
      <JudgedRow
        label="Likelihood of failure"
        of="whole tree"
        judged={decision.likelihoodOfFailure}
        subject="tree"
        field="likelihoodOfFailure"
        basis={decision.likelihoodReasons}
        outcome={
          decision.overall.risk === null ? '' : `Risk, highest of the targets: ${decision.overall.risk}.`
        }
      />
      <ul className="plain-list">
        {decision.likelihoodReasons.map((reason) => (
          <li key={reason}>{said(reason)}</li>
        ))}
      </ul>
      <p className="hint">{said(decision.standing)}</p>
    </Group>
  );
}

/** Who decides, when, and what remains to be confirmed. */
export function DecidedGroup({ assessment }: { assessment: Assessment }) {
  const session = useSession();
  const view = useSessionView();
  const caseFile = useCaseFile();
  const waiting = openSuggestions(caseFile, assessment.decision).length;
  // A suggestion that is about to change is not to be confirmed as it was.
  const settled = matchesCase(view) && !view.result.quick;
  return (
    <Group title="The assessor’s decision" id="decided">
      {waiting === 0 ? (
        <p role="status">
          <Check aria-hidden size={20} className="inline-mark" /> Every suggestion was confirmed or
          overridden.
        </p>
      ) : (
        <>
          <p>
            {waiting} {waiting === 1 ? 'suggestion is' : 'suggestions are'} neither confirmed nor overridden.
            They count as they are, and the report says that they are not confirmed.
          </p>
          <Button
            className="button"
            isDisabled={view.writer !== true || !settled}
            onPress={() =>
              session.edit('Confirm the suggestions', (now) => confirmAll(now, assessment.decision, today()))
            }
          >
            <Check aria-hidden /> Confirm {waiting === 1 ? 'it' : `all ${waiting}`} as suggested
          </Button>
        </>
      )}
      <div className="fields">
        <TextEntry at="decision.by" label="Decided by" />
        <DateEntry at="decision.on" label="Decided on" />
        <TextEntry at="decision.note" label="Note on the decision" lines={3} />
      </div>
    </Group>
  );
}
