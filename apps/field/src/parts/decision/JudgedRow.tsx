/**
 * One suggestion and what the assessor makes of it: a line that says both, and opens a sheet in which it is confirmed
 * or overridden with a reason.
 */
import type { Judged } from '@standfast/engine';
import { textInUnits } from '@standfast/report';
import { ChevronRight } from 'lucide-react';
import { Button, DialogTrigger, Label, Radio, RadioGroup } from 'react-aria-components';
import {
  JUDGED_WORDS,
  type JudgedField,
  judge,
  judgementPath,
  type Said,
  type Subject,
  saidOf,
} from '../../edit/judgements.ts';
import { today } from '../../state/bringIn.ts';
import { useSettings } from '../../state/settings.ts';
import { matchesCase, useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { TextEntry } from '../entries.tsx';
import { Sheet } from '../Sheet.tsx';
import { StepsMark } from './StepsMark.tsx';

interface JudgedRowProps {
  label: string;
  /** For whom it is, for the sheet's title and those who cannot see the card around it. */
  of: string;
  judged: Judged<string>;
  subject: Subject;
  field: JudgedField;
  /** How the suggestion came about, one sentence each. */
  basis: readonly string[];
  /** What the word leads to, shown in the sheet while one chooses. */
  outcome?: string;
}

export function JudgedRow({ label, of, judged, subject, field, basis, outcome }: JudgedRowProps) {
  const caseFile = useCaseFile();
  const said = saidOf(caseFile, subject, field);
  const { suggested } = judged;
  const standing = standingOf(said, judged);
  return (
    <div className="judged" data-standing={standing.kind}>
      <DialogTrigger>
        <Button className="judged-line">
          <span className="judged-label">{label}</span>
          <span className="judged-word">
            <StepsMark scale={JUDGED_WORDS[field]} word={standing.taken} /> {standing.taken}
          </span>
          <span className="judged-standing">{standing.text}</span>
          <ChevronRight aria-hidden />
          <span className="out-of-sight">{`, ${of}: confirm or override`}</span>
        </Button>
        <Sheet title={`${label}, ${of}`}>
          {(close) => (
            <>
              <JudgeForm
                label={label}
                suggested={suggested}
                said={said}
                subject={subject}
                field={field}
                basis={basis}
              />
              {outcome && <Outcome text={outcome} />}
              <div className="actions">
                <Button className="button primary" onPress={close}>
                  Done
                </Button>
                <TakeBack said={said} label={label} subject={subject} field={field} />
              </div>
            </>
          )}
        </Sheet>
      </DialogTrigger>
      {said !== null && said.reason.trim() !== '' && (
        <p className="judged-reason">
          <span className="out-of-sight">{label}: </span>Reason: {said.reason}
        </p>
      )}
    </div>
  );
}

/** How a word stands, from the case as it is now, so that it is said at once. */
function standingOf(said: Said | null, { suggested, taken, standing }: Judged<string>) {
  // Said of the whole tree, and taken over by a target: nothing of its own is recorded.
  if (said === null && standing !== 'suggested') {
    return { kind: standing, taken, text: 'as for the whole tree' };
  }
  if (said === null) return { kind: 'suggested', taken: suggested, text: 'suggested' };
  if (said.value === suggested) return { kind: 'confirmed', taken: suggested, text: 'confirmed' };
  return said.reason.trim() === ''
    ? { kind: 'refused', taken: suggested, text: `reason needed for “${said.value}”` }
    : { kind: 'overridden', taken: said.value, text: `your word; suggested: ${suggested}` };
}

interface JudgeFormProps {
  label: string;
  suggested: string;
  said: Said | null;
  subject: Subject;
  field: JudgedField;
  basis: readonly string[];
}

function JudgeForm({ label, suggested, said, subject, field, basis }: JudgeFormProps) {
  const session = useSession();
  const caseFile = useCaseFile();
  const { writer } = useSessionView();
  const { units } = useSettings();
  const path = judgementPath(caseFile, subject, field);
  const other = said !== null && said.value !== suggested;
  return (
    <>
      <p>
        Suggested: <strong>{suggested}</strong>
      </p>
      {basis.length > 0 && (
        <ul className="plain-list">
          {basis.map((text) => (
            <li key={text}>{textInUnits(text, units)}</li>
          ))}
        </ul>
      )}
      <RadioGroup
        className="judge-words"
        value={said?.value ?? ''}
        isDisabled={writer !== true}
        onChange={(word) =>
          session.edit(`${label}: ${word}`, (now) => judge(now, subject, field, word, today()))
        }
      >
        <Label className="segments-label">Your word</Label>
        {JUDGED_WORDS[field].map((word) => (
          <Radio key={word} value={word} className="judge-word">
            <span className="judge-dot" aria-hidden="true" />
            {word}
            {word === suggested && <small> suggested</small>}
          </Radio>
        ))}
      </RadioGroup>
      {said !== null && path !== null && (
        <TextEntry
          at={`${path}.reason`}
          label="Reason"
          lines={3}
          hint={other ? 'Printed beside the suggestion.' : 'May be left out when you confirm.'}
          complaint={
            other && said.reason.trim() === ''
              ? 'Give a reason: until then the suggestion counts, not your word.'
              : null
          }
        />
      )}
    </>
  );
}

function Outcome({ text }: { text: string }) {
  const matches = matchesCase(useSessionView());
  return (
    <p className="judge-outcome" role="status">
      {matches ? text : 'Working it out anew…'}
    </p>
  );
}

interface TakeBackProps {
  said: Said | null;
  label: string;
  subject: Subject;
  field: JudgedField;
}

function TakeBack({ said, label, subject, field }: TakeBackProps) {
  const session = useSession();
  const { writer } = useSessionView();
  if (said === null) return null;
  return (
    <Button
      className="button"
      isDisabled={writer !== true}
      onPress={() => session.edit(`Take back: ${label}`, (now) => judge(now, subject, field, null, today()))}
    >
      Take my word back
    </Button>
  );
}
