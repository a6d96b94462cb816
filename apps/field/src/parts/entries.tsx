/**
 * Fields of the case, each bound by its path. What is typed goes into the case at once when it can be read; what
 * cannot be read stays in the field, with the reason, and is kept across reloads.
 */
import { type ReactNode, useId, useState } from 'react';
import { pathOfWhere, valueAt } from '../edit/fieldPath.ts';
import { useSettings } from '../state/settings.ts';
import { useCaseFile, useRecord, useSession, useSessionView } from '../state/useSession.tsx';
import { type FieldQuantity, fieldText, fieldUnit, quantityText, storedOf } from '../units/quantities.ts';
import { type Limits, outsideLimits, readNumber } from '../units/readNumber.ts';

interface EntryProps {
  /** Path of the field in the case, for example `tree.heightM`. */
  at: string;
  label: string;
  /** A line of help below the field. */
  hint?: ReactNode;
}

/** Messages about one field from the file's checks and from the engine. */
function useFieldFault(at: string): string | null {
  const { result } = useSessionView();
  const fault = result.faults.find(({ where }) => pathOfWhere(where) === at);
  return fault ? fault.what : null;
}

/** A field that was left empty is not a mistake: it is asked for without alarm. */
function isAsked(fault: string | null): boolean {
  return fault?.startsWith('is missing') ?? false;
}

function useReadOnly(): boolean {
  return useSessionView().writer !== true;
}

interface FrameProps {
  id: string;
  label: string;
  hint?: ReactNode;
  fault: string | null;
  children: ReactNode;
  /** Takes the whole row. */
  wide?: boolean;
  /** Takes the whole row on a phone. */
  broad?: boolean;
}

function Frame({ id, label, hint, fault, children, wide, broad }: FrameProps) {
  return (
    <div
      className={`entry ${wide ? 'wide' : broad ? 'broad' : ''}`}
      data-faulty={fault && !isAsked(fault) ? '' : undefined}
    >
      <label htmlFor={id}>{label}</label>
      {children}
      {hint && (
        <p className="hint" id={`${id}-hint`}>
          {hint}
        </p>
      )}
      {fault && (
        <p className={isAsked(fault) ? 'needed' : 'fault'} id={`${id}-fault`}>
          {isAsked(fault) ? 'Needed for the assessment.' : fault}
        </p>
      )}
    </div>
  );
}

function describedBy(id: string, hint: unknown, fault: unknown): string | undefined {
  const ids = [hint ? `${id}-hint` : '', fault ? `${id}-fault` : ''].filter(Boolean);
  return ids.length > 0 ? ids.join(' ') : undefined;
}

interface NumberEntryProps extends EntryProps {
  quantity: FieldQuantity;
  limits?: Limits;
  /** What is taken when the field is left empty. */
  placeholder?: string;
}

export function NumberEntry({ at, label, hint, quantity, limits = {}, placeholder }: NumberEntryProps) {
  const id = useId();
  const session = useSession();
  const { caseFile, drafts } = useRecord();
  const { units } = useSettings();
  const readOnly = useReadOnly();
  const stored = valueAt(caseFile, at);
  const fromEngine = useFieldFault(at);
  // What is being typed, with the value it led to: an undo elsewhere shows through.
  const [typed, setTyped] = useState<{ text: string; led: unknown } | null>(null);

  const resting = typeof stored === 'number' ? fieldText(stored, quantity, units) : '';
  const text = drafts[at] ?? (typed && Object.is(typed.led, stored) ? typed.text : resting);
  const complaint = (raw: string): string | null => {
    const read = readNumber(raw);
    if (!read.ok) return read.message;
    const value = storedOf(read.value, quantity, units);
    return outsideLimits(value, limits, (limit) => quantityText(limit, quantity, units));
  };
  const fault = drafts[at] !== undefined ? complaint(drafts[at]) : fromEngine;

  const change = (raw: string) => {
    if (raw.trim() === '') {
      setTyped({ text: raw, led: undefined });
      session.setField(at, undefined, label);
      return;
    }
    if (complaint(raw) !== null) {
      session.setDraft(at, raw);
      return;
    }
    const read = readNumber(raw);
    if (!read.ok) return;
    const value = storedOf(read.value, quantity, units);
    setTyped({ text: raw, led: value });
    session.setField(at, value, label);
  };
  const unit = fieldUnit(quantity, units);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <span className="box">
        <input
          id={id}
          type="text"
          inputMode="decimal"
          autoComplete="off"
          value={text}
          placeholder={placeholder}
          readOnly={readOnly}
          aria-invalid={fault && !isAsked(fault) ? true : undefined}
          aria-describedby={describedBy(id, hint, fault)}
          onChange={(event) => change(event.target.value)}
          onBlur={() => setTyped(null)}
          onFocus={(event) => event.target.select()}
        />
        {unit && <span className="unit">{unit}</span>}
      </span>
    </Frame>
  );
}

/** Any turn round the compass is understood, forwards or backwards. */
const TURN: Limits = { min: -360, max: 360 };

/** A compass direction, degrees clockwise from north. */
export function BearingEntry(props: EntryProps & Pick<NumberEntryProps, 'placeholder'>) {
  return <NumberEntry {...props} quantity="angleDeg" limits={TURN} />;
}

interface TextEntryProps extends EntryProps {
  /** Said of what stands there now, before any message of the assessment. */
  complaint?: string | null;
  lines?: number;
  suggestions?: readonly string[];
  italic?: boolean;
}

export function TextEntry(props: TextEntryProps) {
  const { at, label, hint, complaint, lines, suggestions, italic } = props;
  const id = useId();
  const session = useSession();
  const readOnly = useReadOnly();
  const value = valueAt(useCaseFile(), at);
  const fromEngine = useFieldFault(at);
  const fault = complaint ?? fromEngine;
  const common = {
    id,
    value: typeof value === 'string' ? value : '',
    readOnly,
    autoComplete: 'off',
    'aria-invalid': fault && !isAsked(fault) ? true : undefined,
    'aria-describedby': describedBy(id, hint, fault),
  };
  const change = (text: string) => session.setField(at, text === '' ? undefined : text, label);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault} wide={lines !== undefined} broad>
      <span className="box">
        {lines === undefined ? (
          <input
            {...common}
            type="text"
            className={italic ? 'italic' : undefined}
            list={suggestions ? `${id}-list` : undefined}
            onChange={(event) => change(event.target.value)}
          />
        ) : (
          <textarea {...common} rows={lines} onChange={(event) => change(event.target.value)} />
        )}
      </span>
      {suggestions && (
        <datalist id={`${id}-list`}>
          {suggestions.map((suggestion) => (
            <option key={suggestion} value={suggestion} />
          ))}
        </datalist>
      )}
    </Frame>
  );
}

export function DateEntry({ at, label, hint }: EntryProps) {
  const id = useId();
  const session = useSession();
  const readOnly = useReadOnly();
  const value = valueAt(useCaseFile(), at);
  const fault = useFieldFault(at);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <span className="box">
        <input
          id={id}
          type="date"
          value={typeof value === 'string' ? value : ''}
          readOnly={readOnly}
          aria-invalid={fault && !isAsked(fault) ? true : undefined}
          aria-describedby={describedBy(id, hint, fault)}
          onChange={(event) => session.setField(at, event.target.value || undefined, label)}
        />
      </span>
    </Frame>
  );
}

export interface Choice {
  value: string;
  label: string;
}

interface ChoiceEntryProps extends EntryProps {
  choices: readonly Choice[];
  /** What stands there while nothing is chosen, for example what is taken then. */
  whenEmpty?: string;
  /** Does more than set the field, for example when another kind brings other fields. */
  onChoose?: (value: string) => void;
}

export function ChoiceEntry({ at, label, hint, choices, whenEmpty, onChoose }: ChoiceEntryProps) {
  const session = useSession();
  const readOnly = useReadOnly();
  const value = valueAt(useCaseFile(), at);
  const fault = useFieldFault(at);
  return (
    <ChoiceField
      label={label}
      hint={hint}
      fault={fault}
      value={typeof value === 'string' ? value : ''}
      choices={choices}
      whenEmpty={whenEmpty}
      disabled={readOnly}
      onChoose={onChoose ?? ((chosen) => session.setField(at, chosen || undefined, label))}
    />
  );
}

interface ChoiceFieldProps {
  label: string;
  /** Takes the whole row: its choices are long. */
  wide?: boolean;
  hint?: ReactNode;
  fault?: string | null;
  value: string;
  choices: readonly Choice[];
  whenEmpty?: string;
  disabled?: boolean;
  onChoose: (value: string) => void;
}

/** A choice that is not a field of the case. A value that is not among the choices is shown and kept. */
export function ChoiceField(props: ChoiceFieldProps) {
  const { label, hint, fault = null, value, choices, whenEmpty = 'Choose', disabled, wide, onChoose } = props;
  const id = useId();
  const known = choices.some((choice) => choice.value === value);
  return (
    <Frame id={id} label={label} hint={hint} fault={fault} wide={wide ?? false} broad>
      <span className="box choice">
        <select
          id={id}
          value={value}
          disabled={disabled}
          aria-describedby={describedBy(id, hint, fault)}
          onChange={(event) => onChoose(event.target.value)}
        >
          {!known && <option value={value}>{value === '' ? whenEmpty : value}</option>}
          {choices.map((choice) => (
            <option key={choice.value} value={choice.value}>
              {choice.label}
            </option>
          ))}
        </select>
      </span>
    </Frame>
  );
}

interface PlainEntryProps {
  label: string;
  hint?: ReactNode;
  fault?: string | null;
  value: string;
  onType: (text: string) => void;
  unit?: string;
  numeric?: boolean;
}

/** A field that is not part of the case, for dialogs and import steps. */
export function PlainEntry({ label, hint, fault = null, value, onType, unit, numeric }: PlainEntryProps) {
  const id = useId();
  return (
    <Frame id={id} label={label} hint={hint} fault={fault}>
      <span className="box">
        <input
          id={id}
          type="text"
          inputMode={numeric ? 'decimal' : 'text'}
          autoComplete="off"
          value={value}
          aria-invalid={fault && !isAsked(fault) ? true : undefined}
          aria-describedby={describedBy(id, hint, fault)}
          onChange={(event) => onType(event.target.value)}
        />
        {unit && <span className="unit">{unit}</span>}
      </span>
    </Frame>
  );
}

interface YesNoEntryProps extends EntryProps {
  /** What is taken while nothing was said. */
  assumed: boolean;
}

export function YesNoEntry({ at, label, hint, assumed }: YesNoEntryProps) {
  const id = useId();
  const session = useSession();
  const readOnly = useReadOnly();
  const value = valueAt(useCaseFile(), at);
  return (
    <div className="entry tick">
      <label htmlFor={id}>
        <input
          id={id}
          type="checkbox"
          checked={typeof value === 'boolean' ? value : assumed}
          disabled={readOnly}
          onChange={(event) => session.setField(at, event.target.checked, label)}
        />
        <span>{label}</span>
      </label>
      {hint && <p className="hint">{hint}</p>}
    </div>
  );
}
