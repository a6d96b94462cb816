/** The answer, always in sight: the safety that governs with its range, and whether it is of the case as it stands. */

import { bearing } from '@standfast/report';
import { Button, DialogTrigger } from 'react-aria-components';
import { explainSafety } from '../explain/fromAssessment.ts';
import { verdictWords } from '../explain/verdict.ts';
import { useSettings } from '../state/settings.ts';
import { matchesCase, useSessionView } from '../state/useSession.tsx';
import { intervalText } from '../units/quantities.ts';
import { FaultList } from './FaultList.tsx';
import { OpenNumber } from './OpenNumber.tsx';
import { Sheet } from './Sheet.tsx';
import { GradeMark, SafetyScale } from './Verdict.tsx';

export function VerdictStrip() {
  const view = useSessionView();
  const { units } = useSettings();
  const { assessment, working, quick, faults } = view.result;
  const drafts = Object.keys(view.record?.drafts ?? {}).length;
  const inTheWay = faults.length + drafts;
  // What was left out is asked for; what was entered and cannot be is to be mended.
  const wrong = drafts > 0 || faults.some(({ what }) => !/^(is missing|has no section)/.test(what));
  const matches = matchesCase(view);
  const problems = inTheWay > 0 && (
    <DialogTrigger>
      <Button className={`button problems ${wrong ? 'alarm' : ''}`}>
        {inTheWay} {inTheWay === 1 ? 'thing' : 'things'} {wrong ? 'to mend' : 'still needed'}
      </Button>
      <Sheet title={wrong ? 'To mend before this case can be assessed' : 'Still needed for the assessment'}>
        {(close) => <FaultList onGo={close} />}
      </Sheet>
    </DialogTrigger>
  );
  if (!assessment) {
    return (
      <section className="verdict-strip" aria-label="Result">
        <p className="verdict-words" aria-live="polite">
          {working && inTheWay === 0 ? 'Working it out…' : 'Not assessed yet.'}
        </p>
        {problems}
      </section>
    );
  }
  const { governing } = assessment.safety;
  const words = verdictWords(assessment.safety);
  const state = !matches
    ? inTheWay > 0
      ? 'of the case before the last change'
      : 'following your change'
    : quick
      ? 'first pass, refining'
      : '';
  return (
    <section
      className={`verdict-strip ${words.grade}`}
      aria-label="Result"
      data-stale={matches ? undefined : ''}
      data-quick={quick || working ? '' : undefined}
    >
      <GradeMark grade={words.grade} />
      <OpenNumber explanation={explainSafety(assessment, units)} className="verdict-number">
        <span data-testid="governing">{intervalText(governing)}</span>
      </OpenNumber>
      <SafetyScale interval={governing} label={`Safety ${intervalText(governing)}`} />
      <p className="verdict-mode">
        {governing.mode}, bending to {bearing(governing.directionDeg)}
      </p>
      <p className="verdict-state" aria-hidden={state === '' ? true : undefined}>
        {state}
      </p>
      {problems}
      {/* Spoken once it has settled, not at each keystroke. */}
      <p className="out-of-sight" aria-live="polite">
        {matches && !quick && !working
          ? `Safety ${intervalText(governing)}, ${governing.mode}. ${words.text}`
          : ''}
      </p>
    </section>
  );
}
