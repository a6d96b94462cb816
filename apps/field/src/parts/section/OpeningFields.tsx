/** A cavity that opens to the outside at a section: where, and how wide along the bark. */
import type { CaseSection } from '@standfast/casefile';
import { Plus, Trash2 } from 'lucide-react';
import { Button } from 'react-aria-components';
import { withValueAt } from '../../edit/fieldPath.ts';
import { useSession, useSessionView } from '../../state/useSession.tsx';
import { BearingEntry, NumberEntry } from '../entries.tsx';

interface OpeningFieldsProps {
  section: CaseSection;
  index: number;
}

/** Where an opening begins until it is told: to the south, a hand wide. */
const BEGIN = { azimuthDeg: 180, widthMm: 100 };

export function OpeningFields({ section, index }: OpeningFieldsProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const at = `sections.${index}.opening`;
  if (!section.opening) {
    return (
      <Button
        className="button"
        isDisabled={writer !== true}
        onPress={() => session.edit('Add an opening', (now) => withValueAt(now, at, BEGIN))}
      >
        <Plus aria-hidden /> Add an open cavity
      </Button>
    );
  }
  return (
    <fieldset className="sub-group">
      <legend>Open cavity</legend>
      <p className="hint">
        It counts as wood without strength there, and the trade’s rules for openings use it.
      </p>
      <div className="row">
        <div className="fields">
          <BearingEntry at={`${at}.azimuthDeg`} label="Middle of the opening" hint="Clockwise from north." />
          <NumberEntry
            at={`${at}.widthMm`}
            label="Width along the bark"
            quantity="lengthMm"
            limits={{ min: 0, aboveMin: true, max: 20_000 }}
          />
        </div>
        <Button
          className="icon-button"
          aria-label="Take out the opening"
          isDisabled={writer !== true}
          onPress={() => session.edit('Take out the opening', (now) => withValueAt(now, at, undefined))}
        >
          <Trash2 aria-hidden />
        </Button>
      </div>
    </fieldset>
  );
}
