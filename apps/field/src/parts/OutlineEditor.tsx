/** The section's outline as it was measured: a circle, an ellipse, radii from the pith, or corner points. */

import type { CaseOutline } from '@standfast/casefile';
import { setOutline } from '@standfast/casefile';
import { Plus, Trash2 } from 'lucide-react';
import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import { withValueAt } from '../edit/fieldPath.ts';
import { type OutlineKind, outlineAs } from '../edit/outline.ts';
import { useCaseFile, useSession, useSessionView } from '../state/useSession.tsx';
import { BearingEntry, ChoiceEntry, NumberEntry } from './entries.tsx';

const KINDS: { value: OutlineKind; label: string }[] = [
  { value: 'circle', label: 'Circle: one diameter' },
  { value: 'ellipse', label: 'Ellipse: long and short' },
  { value: 'radii', label: 'Radii from the pith' },
  { value: 'polygon', label: 'Corner points' },
];
const LENGTH = { min: 0, aboveMin: true, max: 10_000 };
export function OutlineEditor({ index }: { index: number }) {
  const session = useSession();
  const section = useCaseFile().sections[index];
  if (!section) return null;
  const at = `sections.${index}.outline`;
  const { outline } = section;
  const changeKind = (kind: string) =>
    session.edit('Kind of outline', (caseFile) =>
      setOutline(caseFile, section.id, outlineAs(outline, kind as OutlineKind)),
    );
  return (
    <>
      <div className="fields">
        <ChoiceEntry at={`${at}.kind`} label="Outline, over bark" choices={KINDS} onChoose={changeKind} />
        {outline.kind === 'circle' && (
          <NumberEntry at={`${at}.diameterMm`} label="Diameter" quantity="lengthMm" limits={LENGTH} />
        )}
        {outline.kind === 'ellipse' && (
          <>
            <NumberEntry at={`${at}.longMm`} label="Long diameter" quantity="lengthMm" limits={LENGTH} />
            <NumberEntry at={`${at}.shortMm`} label="Short diameter" quantity="lengthMm" limits={LENGTH} />
            <BearingEntry at={`${at}.longAxisDeg`} label="Long axis toward" />
          </>
        )}
      </div>
      {outline.kind === 'radii' && <RadiiTable at={at} outline={outline} />}
      {outline.kind === 'polygon' && <PointsTable at={at} outline={outline} />}
    </>
  );
}

function RadiiTable({ at, outline }: { at: string; outline: Extract<CaseOutline, { kind: 'radii' }> }) {
  const { radii } = outline;
  const next = () => {
    const last = radii.at(-1);
    const before = radii.at(-2);
    const step = last && before ? last.azimuthDeg - before.azimuthDeg : 30;
    return {
      azimuthDeg: ((((last?.azimuthDeg ?? -step) + step) % 360) + 360) % 360,
      radiusMm: last?.radiusMm ?? 300,
    };
  };
  return (
    <TableOf
      list={`${at}.radii`}
      rows={radii}
      next={next}
      what="radius"
      many="radii"
      head={['Direction', 'Radius over bark']}
      cells={(i) => (
        <>
          <BearingEntry at={`${at}.radii.${i}.azimuthDeg`} label="Direction" />
          <NumberEntry at={`${at}.radii.${i}.radiusMm`} label="Radius" quantity="lengthMm" limits={LENGTH} />
        </>
      )}
    />
  );
}

function PointsTable({ at, outline }: { at: string; outline: Extract<CaseOutline, { kind: 'polygon' }> }) {
  return (
    <TableOf
      list={`${at}.points`}
      rows={outline.points}
      next={() => [...(outline.points.at(-1) ?? [0, 0])]}
      what="point"
      many="points"
      head={['East', 'North']}
      cells={(i) => (
        <>
          <NumberEntry at={`${at}.points.${i}.0`} label="East" quantity="lengthMm" />
          <NumberEntry at={`${at}.points.${i}.1`} label="North" quantity="lengthMm" />
        </>
      )}
    />
  );
}

interface TableOfProps {
  list: string;
  rows: readonly unknown[];
  next: () => unknown;
  what: string;
  many: string;
  head: readonly [string, string];
  cells: (index: number) => ReactNode;
}

/** A short table of two numbers a row. */
function TableOf({ list, rows, next, what, many, head, cells }: TableOfProps) {
  const session = useSession();
  const { writer } = useSessionView();
  return (
    <details className="pair-table" open={rows.length <= 6}>
      <summary className="opener">
        {rows.length} {rows.length === 1 ? what : many}
      </summary>
      <p className="pair-head" aria-hidden="true">
        <span>{head[0]}</span>
        <span>{head[1]}</span>
      </p>
      <ul>
        {rows.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no id; each row's fields are bound by its place.
          <li key={i}>
            {cells(i)}
            <Button
              className="icon-button"
              aria-label={`Take out ${what} ${i + 1}`}
              isDisabled={writer !== true}
              onPress={() =>
                session.edit(`Take out ${what}`, (caseFile) =>
                  withValueAt(caseFile, `${list}.${i}`, undefined),
                )
              }
            >
              <Trash2 aria-hidden />
            </Button>
          </li>
        ))}
      </ul>
      <Button
        className="button"
        isDisabled={writer !== true}
        onPress={() =>
          session.edit(`Add ${what}`, (caseFile) => withValueAt(caseFile, list, [...rows, next()]))
        }
      >
        <Plus aria-hidden /> Add a {what}
      </Button>
    </details>
  );
}
