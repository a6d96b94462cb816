/**
 * Tables of readings on their way into the case: shows how each is read, lets it be corrected, and asks which needle
 * pass it is. What is shown is exactly what is kept.
 */
import {
  type CaseFile,
  DELIMITERS,
  DEPTH_UNITS,
  freeTracePath,
  RESISTANCE_UNITS,
  type TableColumn,
  type TableGuess,
  THOUSANDS_SIGNS,
  type TracePreview,
} from '@standfast/casefile';
import { useEffect, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  type Assignment,
  assignmentFault,
  drillingTaken,
  LEFT_OUT,
  usualAssignment,
} from '../edit/assignment.ts';
import { namesOf } from '../edit/drillings.ts';
import { fitColumns, withFullScale, withRole, withUnit } from '../edit/tableGuess.ts';
import { AssignmentFields, useDrillingOnPage } from '../parts/AssignmentFields.tsx';
import { ChoiceField, PlainEntry } from '../parts/entries.tsx';
import { Sheet } from '../parts/Sheet.tsx';
import type { LooseFile } from '../state/incoming.ts';
import { complain, say } from '../state/toast.tsx';
import { useRecord, useSession, useSessionView } from '../state/useSession.tsx';
import { useWaitingTables, waitForImport } from '../state/waiting.ts';
import { readNumber } from '../units/readNumber.ts';
import { tablesWorker } from '../work/tables.ts';

export function ImportStep() {
  const tables = useWaitingTables();
  const { status, writer } = useSessionView();
  const [first] = tables;
  if (!first || status !== 'open') return null;
  if (writer === false) return null;
  const drop = () => waitForImport(tables.slice(1));
  return (
    <Sheet
      wide
      isOpen
      onOpenChange={(open) => {
        if (!open) waitForImport([]);
      }}
      title={tables.length > 1 ? `${first.name} (1 of ${tables.length})` : first.name}
    >
      <TableStep key={`${first.name} ${tables.length}`} table={first} done={drop} />
    </Sheet>
  );
}

function TableStep({ table, done }: { table: LooseFile; done: () => void }) {
  const [guess, setGuess] = useState<TableGuess | null>(null);
  const [previews, setPreviews] = useState<TracePreview[]>([]);
  const [fault, setFault] = useState<string | null>(null);
  useEffect(() => {
    let gone = false;
    tablesWorker()
      .guess(table.bytes, table.name)
      .then((outcome) => {
        if (gone) return;
        if (!outcome.ok) setFault(outcome.message);
        else {
          setGuess(outcome.value);
          setPreviews(outcome.value.preview);
        }
      });
    return () => {
      gone = true;
    };
  }, [table]);

  const correct = async (next: TableGuess) => {
    setGuess(next);
    const outcome = await tablesWorker().preview(table.bytes, next);
    if (!outcome.ok) {
      setFault(outcome.message);
      setPreviews([]);
      return;
    }
    setFault(null);
    setPreviews(outcome.value);
    const cells = Math.max(0, ...outcome.value.flatMap(({ rows }) => rows.map((row) => row.cells.length)));
    const fitted = fitColumns(next, cells);
    if (fitted !== next) await correct(fitted);
  };

  if (!guess) {
    return fault ? (
      <div className="import-step">
        <p className="fault" role="alert">
          {fault}
        </p>
        <Button className="button" onPress={done}>
          Leave this table out
        </Button>
      </div>
    ) : (
      <p className="hint">Looking at the table…</p>
    );
  }
  return (
    <div className="import-step">
      {guess.questions.length > 0 && (
        <section className="banner">
          <ul>
            {guess.questions.map(({ text }) => (
              <li key={text}>{text}</li>
            ))}
          </ul>
        </section>
      )}
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      <section>
        <h3>First rows, as they will be kept</h3>
        <div className="previews">
          {previews.map((preview) => (
            <Preview key={preview.label} preview={preview} />
          ))}
        </div>
      </section>
      <section>
        <h3>How it is read</h3>
        <p>{guessWords(guess)}</p>
        {guess.reasons.length > 0 && (
          <details>
            <summary className="opener">Why it was taken so</summary>
            <ul className="plain-list">
              {guess.reasons.map((reason) => (
                <li key={reason}>{reason}</li>
              ))}
            </ul>
          </details>
        )}
        <details open={guess.questions.length > 0 || guess.confidence < SURE_ENOUGH}>
          <summary className="opener">Correct how it is read</summary>
          <GuessFields guess={guess} correct={correct} />
        </details>
      </section>
      <Keep table={table} guess={guess} labels={previews.map(({ label }) => label)} done={done} />
    </div>
  );
}

const DELIMITER_WORDS: Record<(typeof DELIMITERS)[number], string> = {
  ',': 'comma ,',
  ';': 'semicolon ;',
  '\t': 'tab',
  '|': 'bar |',
  ' ': 'spaces',
  '': 'one column only',
};
const THOUSANDS_WORDS: Record<(typeof THOUSANDS_SIGNS)[number], string> = {
  '': 'none',
  ',': 'comma ,',
  '.': 'point .',
  ' ': 'space',
  "'": 'apostrophe ’',
};
const ROLE_WORDS: Record<TableColumn['role'], string> = {
  depth: 'depth',
  index: 'running number',
  resistance: 'resistance',
  feed: 'feed',
  drilling: 'name of the drilling',
  ignore: 'left out',
};
const UNIT_WORDS: Record<string, string> = {
  mm: 'mm',
  cm: 'cm',
  m: 'm',
  inch: 'inch',
  percent: 'percent',
  fraction: '0 to 1',
  counts: 'counts',
};

interface GuessFieldsProps {
  guess: TableGuess;
  correct: (guess: TableGuess) => void;
}

function GuessFields({ guess, correct }: GuessFieldsProps) {
  const number = (text: string, use: (value: number) => TableGuess) => {
    const read = readNumber(text);
    if (read.ok) correct(use(read.value));
  };
  const hasDepth = guess.columns.some(({ role }) => role === 'depth');
  return (
    <>
      <div className="fields">
        {guess.kind === 'text' ? (
          <ChoiceField
            label="Columns parted by"
            value={guess.delimiter}
            choices={DELIMITERS.map((value) => ({ value, label: DELIMITER_WORDS[value] }))}
            onChoose={(delimiter) => correct({ ...guess, delimiter: delimiter as typeof guess.delimiter })}
          />
        ) : (
          <ChoiceField
            label="Sheet"
            value={guess.sheet}
            choices={guess.sheets.map((value) => ({ value, label: value }))}
            onChoose={(sheet) => correct({ ...guess, sheet })}
          />
        )}
        <ChoiceField
          label="Decimal sign"
          value={guess.decimal}
          choices={[
            { value: '.', label: 'point, 0.5' },
            { value: ',', label: 'comma, 0,5' },
          ]}
          onChoose={(decimal) => correct({ ...guess, decimal: decimal as typeof guess.decimal })}
        />
        <ChoiceField
          label="Thousands sign"
          value={guess.thousands}
          choices={THOUSANDS_SIGNS.map((value) => ({ value, label: THOUSANDS_WORDS[value] }))}
          onChoose={(thousands) => correct({ ...guess, thousands: thousands as typeof guess.thousands })}
        />
        <ChoiceField
          label="First row"
          value={guess.hasHeader ? 'names' : 'numbers'}
          choices={[
            { value: 'names', label: 'names the columns' },
            { value: 'numbers', label: 'holds numbers' },
          ]}
          onChoose={(first) => correct({ ...guess, hasHeader: first === 'names' })}
        />
        <Typed
          label="Rows to skip before it"
          value={guess.skipFirst}
          onNumber={(text) =>
            number(text, (skipFirst) => ({ ...guess, skipFirst: Math.max(0, Math.round(skipFirst)) }))
          }
        />
        <ChoiceField
          label="Runs"
          value={guess.reversed ? 'out' : 'in'}
          choices={[
            { value: 'in', label: 'from the entry inward' },
            { value: 'out', label: 'from the deepest outward' },
          ]}
          onChoose={(way) => correct({ ...guess, reversed: way === 'out' })}
        />
        {!hasDepth && (
          <>
            <Typed
              label="Depth of the first row"
              unit="mm"
              value={guess.startMm}
              onNumber={(text) => number(text, (startMm) => ({ ...guess, startMm }))}
            />
            <Typed
              label="Depth from row to row"
              unit="mm"
              value={guess.stepMm ?? ''}
              onNumber={(text) => number(text, (stepMm) => ({ ...guess, stepMm }))}
            />
          </>
        )}
      </div>
      <ol className="column-cards">
        {guess.columns.map((column, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a column is its place in the table.
          <li key={i}>
            <p className="column-title">{column.title || `column ${i + 1}`}</p>
            <ChoiceField
              label="Is"
              value={column.role}
              choices={Object.entries(ROLE_WORDS).map(([value, label]) => ({ value, label }))}
              onChoose={(role) => correct(withRole(guess, i, role as TableColumn['role']))}
            />
            {(column.role === 'depth' || column.role === 'resistance') && (
              <ChoiceField
                label="In"
                value={column.unit}
                choices={(column.role === 'depth' ? DEPTH_UNITS : RESISTANCE_UNITS).map((value) => ({
                  value,
                  label: UNIT_WORDS[value] ?? value,
                }))}
                onChoose={(unit) => correct(withUnit(guess, i, unit))}
              />
            )}
            {column.role === 'resistance' && column.unit === 'counts' && (
              <Typed
                label="Full scale"
                value={column.fullScale}
                onNumber={(text) => number(text, (fullScale) => withFullScale(guess, i, fullScale))}
              />
            )}
          </li>
        ))}
      </ol>
    </>
  );
}

interface TypedProps {
  label: string;
  unit?: string;
  value: number | '';
  onNumber: (text: string) => void;
}

/** A number typed in a dialog: what is typed stays as typed while it is being typed. */
function Typed({ label, unit, value, onNumber }: TypedProps) {
  const [text, setText] = useState(String(value));
  const read = readNumber(text);
  return (
    <PlainEntry
      label={label}
      unit={unit}
      numeric
      value={text}
      fault={text.trim() !== '' && !read.ok ? read.message : null}
      onType={(typed) => {
        setText(typed);
        onNumber(typed);
      }}
    />
  );
}

/** Below this a person should look before relying on the guess. */
const SURE_ENOUGH = 0.7;

/** How the table is read, in one sentence. */
function guessWords(guess: TableGuess): string {
  const parts = [
    guess.kind === 'text' ? `columns parted by ${DELIMITER_WORDS[guess.delimiter]}` : `sheet ${guess.sheet}`,
    guess.decimal === ',' ? 'decimal comma' : 'decimal point',
  ];
  for (const column of guess.columns) {
    if (column.role === 'depth') parts.push(`depth in ${UNIT_WORDS[column.unit]}`);
    if (column.role === 'resistance') parts.push(`resistance in ${UNIT_WORDS[column.unit]}`);
    if (column.role === 'feed') parts.push('with feed');
  }
  if (!guess.columns.some(({ role }) => role === 'depth') && guess.stepMm !== null) {
    parts.push(`one row every ${guess.stepMm} mm`);
  }
  if (guess.reversed) parts.push('from the deepest reading outward');
  const words = [...new Set(parts)].join(', ');
  return `${words[0]?.toUpperCase() ?? ''}${words.slice(1)}.`;
}

const ROWS_SHOWN = 6;

function Preview({ preview }: { preview: TracePreview }) {
  const { label, rows, fault } = preview;
  return (
    <div className="table-holder">
      <table>
        <caption>{label}</caption>
        <thead>
          <tr>
            <th scope="col">Row</th>
            <th scope="col">In the file</th>
            <th scope="col">Depth, mm</th>
            <th scope="col">Resistance, %</th>
          </tr>
        </thead>
        <tbody>
          {rows.slice(0, ROWS_SHOWN).map((row) => (
            <tr key={row.row}>
              <td>{row.row}</td>
              <td>
                <code>{row.cells.join(' · ')}</code>
              </td>
              <td>{Number(row.depthMm.toFixed(3))}</td>
              <td>{Number(row.resistancePct.toFixed(3))}</td>
            </tr>
          ))}
        </tbody>
      </table>
      {fault && <p className="fault">{fault}</p>}
    </div>
  );
}

function Keep({
  table,
  guess,
  labels,
  done,
}: {
  table: LooseFile;
  guess: TableGuess;
  labels: string[];
  done: () => void;
}) {
  const session = useSession();
  const { caseFile, files } = useRecord();
  const here = useDrillingOnPage();
  const [assigned, setAssigned] = useState<Record<string, Assignment>>({});
  const [asked, setAsked] = useState(false);
  const [busy, setBusy] = useState(false);

  const of = (label: string) =>
    assigned[label] ?? usualAssignment(caseFile, label, labels.length === 1 ? here : null);

  const keep = async () => {
    setAsked(true);
    if (labels.some((label) => assignmentFault(of(label)) !== null)) return;
    setBusy(true);
    try {
      const outcome = await tablesWorker().read(table.bytes, guess);
      if (!outcome.ok) {
        complain(outcome.message);
        return;
      }
      const { traces, notices } = outcome.value;
      const wanted = traces.filter(({ label }) => of(label).to !== LEFT_OUT);
      const added = new Map<string, Uint8Array>();
      let after: CaseFile = caseFile;
      for (const trace of wanted) {
        const taken = drillingTaken(after, of(trace.label));
        const path = freeTracePath(new Map([...namesOf(files), ...added]), taken.drillingId);
        added.set(path, trace.csv);
        after = taken.withFields({ trace: path });
      }
      await session.addFiles(
        added,
        wanted.length === 1 ? 'Bring in a trace' : 'Bring in traces',
        () => after,
      );
      const samples = wanted.reduce((sum, trace) => sum + trace.samples, 0);
      say(
        `${table.name}: ${wanted.length === 1 ? 'one trace' : `${wanted.length} traces`}, ${samples} readings kept.`,
      );
      for (const { text, severity } of notices) if (severity !== 'note') complain(`${table.name}: ${text}`);
      done();
    } catch (thrown) {
      complain(thrown instanceof Error ? thrown.message : String(thrown));
    } finally {
      setBusy(false);
    }
  };

  return (
    <section>
      <h3>Which needle pass it is</h3>
      <ul className="rows">
        {labels.map((label) => (
          <li key={label} className="row">
            <AssignmentFields
              label={labels.length > 1 ? `Trace ${label}` : 'This trace is'}
              assignment={of(label)}
              asked={asked}
              mayLeaveOut
              onChange={(assignment) => setAssigned({ ...assigned, [label]: assignment })}
            />
          </li>
        ))}
      </ul>
      <div className="actions">
        <Button className="button primary" onPress={keep} isDisabled={busy || labels.length === 0}>
          {busy ? 'Reading…' : 'Read and keep'}
        </Button>
        <Button className="button" onPress={done}>
          Leave this table out
        </Button>
      </div>
    </section>
  );
}
