/** Asks which needle pass a trace is of, and for a new one at which side it went in. */
import { useLocation } from 'wouter';
import { type Assignment, assignmentChoices, assignmentFault, isNew, LEFT_OUT } from '../edit/assignment.ts';
import { refOfAddress } from '../edit/drillings.ts';
import { useCaseFile } from '../state/useSession.tsx';
import { ChoiceField, PlainEntry } from './entries.tsx';

/** The drilling whose page is open, `s1/d3`, or null. */
export function useDrillingOnPage(): string | null {
  const [location] = useLocation();
  const part = /\/section\/([^/]+)$/.exec(location)?.[1];
  return part ? refOfAddress(part) : null;
}

interface AssignmentFieldsProps {
  label: string;
  assignment: Assignment;
  /** It was tried to keep it, so what is missing is told. */
  asked: boolean;
  mayLeaveOut?: boolean;
  onChange: (assignment: Assignment) => void;
}

export function AssignmentFields(props: AssignmentFieldsProps) {
  const { label, assignment, asked, mayLeaveOut, onChange } = props;
  const choices = assignmentChoices(useCaseFile());
  return (
    <div className="fields">
      <ChoiceField
        label={label}
        wide
        value={assignment.to}
        choices={mayLeaveOut ? [...choices, { value: LEFT_OUT, label: 'left out' }] : choices}
        onChoose={(to) => onChange({ ...assignment, to })}
      />
      {isNew(assignment) && (
        <PlainEntry
          label="Entry, direction from the pith"
          hint="Clockwise from north."
          unit="°"
          numeric
          value={assignment.azimuth}
          fault={asked ? assignmentFault(assignment) : null}
          onType={(azimuth) => onChange({ ...assignment, azimuth })}
        />
      )}
    </div>
  );
}
