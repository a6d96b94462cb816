/** A list of the case, each row with its fields and a button that takes it out. */
import { Plus, Trash2 } from 'lucide-react';
import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { valueAt, withValueAt } from '../edit/fieldPath.ts';
import { useCaseFile, useSession, useSessionView } from '../state/useSession.tsx';
import { Group } from './Group.tsx';

interface ListGroupProps {
  title: string;
  /** Path of the list in the case; a list that is not there yet is made. */
  list: string;
  singular: string;
  /** What a new row holds. */
  blank: object;
  lead?: ReactNode;
  /** The fields of one row. */
  fields: (index: number) => ReactNode;
  /** Stands between the rows and the button that adds one. */
  children?: ReactNode;
  id?: string;
}

export function ListGroup({ title, list, singular, blank, lead, fields, children, id }: ListGroupProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const found = valueAt(useCaseFile(), list);
  const rows: readonly unknown[] = Array.isArray(found) ? found : [];
  const holder = useRef<HTMLUListElement>(null);
  // A row that was just added takes the focus, so that typing or the reader goes on there.
  const [added, setAdded] = useState(-1);
  useEffect(() => {
    if (added < 0 || rows.length <= added) return;
    holder.current?.children[added]?.querySelector<HTMLElement>('input, select')?.focus();
    setAdded(-1);
  }, [added, rows.length]);
  const add = () => {
    session.edit(`Add ${singular}`, (caseFile) => withValueAt(caseFile, list, [...rows, blank]));
    setAdded(rows.length);
  };
  const takeOut = (index: number) =>
    session.edit(`Take out ${singular}`, (caseFile) => {
      const left = rows.filter((_, i) => i !== index);
      // The four lists that every case has stay, empty; the others are there only when they hold something.
      const always = Array.isArray(found) && ALWAYS_THERE.test(list);
      return withValueAt(caseFile, list, left.length > 0 || always ? left : undefined);
    });
  return (
    <Group title={title} lead={lead} id={id}>
      <ul className="rows" ref={holder}>
        {rows.map((_, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: rows have no id; each row's fields are bound by its place.
          <li key={i} className="list-row">
            <p className="list-row-head">{`${singular} ${i + 1}`}</p>
            <Button
              className="icon-button"
              aria-label={`Take out ${singular} ${i + 1}`}
              isDisabled={writer !== true}
              onPress={() => takeOut(i)}
            >
              <Trash2 aria-hidden />
            </Button>
            <div className="fields">{fields(i)}</div>
          </li>
        ))}
      </ul>
      {children}
      <Button className="button" onPress={add} isDisabled={writer !== true}>
        <Plus aria-hidden /> Add a {singular}
      </Button>
    </Group>
  );
}

const ALWAYS_THERE = /^(sections|flares|signs|targets)$/;
