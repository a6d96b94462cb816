/** What of the list is wanted, and in which order. */
import { ListFilter } from 'lucide-react';
import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import {
  changeListView,
  type DueFilter,
  isFiltered,
  type ListOrder,
  RISK_FILTERS,
  type RiskFilter,
  useListView,
  WHOLE_LIST,
} from '../../state/listView.ts';
import type { ListEntry } from '../../storage/summaries.ts';

const DUE: readonly (readonly [DueFilter, string])[] = [
  ['any', 'any day'],
  ['overdue', 'overdue'],
  ['in a month', 'within a month'],
  ['in a year', 'within a year'],
  ['none', 'no due date'],
];
const ORDERS: readonly (readonly [ListOrder, string])[] = [
  ['risk', 'risk, then due date'],
  ['due', 'due date'],
  ['label', 'label'],
  ['saved', 'last saved'],
];

export function ListFilters({ entries }: { entries: readonly ListEntry[] }) {
  const view = useListView();
  const id = useId();
  const [open, setOpen] = useState(false);
  const clients = [...new Set(entries.map(({ row }) => row.client).filter((name) => name !== null))].sort();
  return (
    <search className={`list-filters ${open ? 'open' : ''}`} aria-label="Search, filter and sort">
      <div className="entry broad">
        <label htmlFor={`${id}-search`}>Search</label>
        <span className="box">
          <input
            id={`${id}-search`}
            type="search"
            autoComplete="off"
            placeholder="label, species, place, advice"
            value={view.search}
            onChange={(event) => changeListView({ search: event.target.value })}
          />
        </span>
      </div>
      {/* On a phone the choices would push the list off the screen. */}
      <Button className="button list-filters-more" aria-expanded={open} onPress={() => setOpen(!open)}>
        <ListFilter aria-hidden /> {isFiltered(view) ? 'Filtered' : 'Filter and sort'}
      </Button>
      <Choice
        label="Risk"
        value={view.risk}
        options={RISK_FILTERS.map((risk) => [risk, risk])}
        onChoose={(risk) => changeListView({ risk: risk as RiskFilter })}
      />
      <Choice
        label="Due"
        value={view.due}
        options={DUE}
        onChoose={(due) => changeListView({ due: due as DueFilter })}
      />
      {clients.length > 0 && (
        <Choice
          label="Client"
          value={view.client}
          options={[['', 'any'], ...clients.map((name) => [name, name] as const)]}
          onChoose={(client) => changeListView({ client })}
        />
      )}
      <Choice
        label="Sorted by"
        value={view.order}
        options={ORDERS}
        onChoose={(order) => changeListView({ order: order as ListOrder })}
      />
      {isFiltered(view) && (
        <Button className="button quiet" onPress={() => changeListView({ ...WHOLE_LIST, order: view.order })}>
          Show all
        </Button>
      )}
    </search>
  );
}

interface ChoiceProps {
  label: string;
  value: string;
  options: readonly (readonly [value: string, text: string])[];
  onChoose: (value: string) => void;
}

/** One of a few, under its label. */
export function Choice({ label, value, options, onChoose }: ChoiceProps) {
  const id = useId();
  return (
    <div className="entry">
      <label htmlFor={id}>{label}</label>
      <span className="box choice">
        <select id={id} value={value} onChange={(event) => onChoose(event.target.value)}>
          {options.map(([option, text]) => (
            <option key={option} value={option}>
              {text}
            </option>
          ))}
        </select>
      </span>
    </div>
  );
}
