/** The section as it was seen once the tree was felled: brought in as traced polygons, and held against the prediction. */
import type { CaseSection } from '@standfast/casefile';
import { type FelledAssessment, InputFault } from '@standfast/engine';
import { bearing } from '@standfast/report';
import { FileJson, Trash2 } from 'lucide-react';
import { Button } from 'react-aria-components';
import { felledFromJson } from '../../edit/felled.ts';
import { withValueAt } from '../../edit/fieldPath.ts';
import { complain } from '../../state/toast.tsx';
import { useAssessment, useSession, useSessionView } from '../../state/useSession.tsx';
import { fixed, shareText } from '../../units/quantities.ts';
import { ChooseFile } from '../ChooseFile.tsx';
import { TextEntry } from '../entries.tsx';
import { Group } from '../Group.tsx';
import { PhotoField } from '../PhotoField.tsx';

interface FelledGroupProps {
  section: CaseSection;
  index: number;
}

export function FelledGroup({ section, index }: FelledGroupProps) {
  const session = useSession();
  const { writer } = useSessionView();
  const judged = useAssessment()?.sections.find(({ id }) => id === section.id)?.felled;
  const at = `sections.${index}.felled`;
  const { felled } = section;
  const bringIn = async (file: File) => {
    try {
      const traced = felledFromJson(await file.text(), file.name);
      session.edit('Felled section', (now) => withValueAt(now, at, { ...felled, ...traced }));
    } catch (thrown) {
      complain(thrown instanceof InputFault ? thrown.message : `${file.name}: ${String(thrown)}`);
    }
  };
  return (
    <Group
      title="After felling"
      lead="If this tree is felled, trace the stump: the prediction is then held against what was there. It never changes the prediction."
      id="felled"
    >
      {felled && (
        <>
          <p>
            Traced at {section.id}: {count(felled.unsound.length, 'polygon')} of unsound wood
            {felled.incipient ? `, ${count(felled.incipient.length, 'polygon')} of incipient decay` : ''}
            {felled.outline ? ', with the felled outline' : ''}.
          </p>
          {judged && <Judged judged={judged} />}
          <div className="fields">
            <TextEntry at={`${at}.source`} label="How it was traced" />
            <TextEntry at={`${at}.note`} label="Note on the felled section" />
            <PhotoField at={`${at}.photo`} what="the felled section" stem={`felled-${section.id}`} />
          </div>
        </>
      )}
      <div className="actions">
        <ChooseFile
          label="Traced polygons"
          accept=".json,.geojson,application/json"
          isDisabled={writer !== true}
          onChoose={bringIn}
        >
          <FileJson aria-hidden /> Bring in traced polygons (JSON)
        </ChooseFile>
        {felled && (
          <Button
            className="button"
            isDisabled={writer !== true}
            onPress={() =>
              session.edit('Take out the felled section', (now) => withValueAt(now, at, undefined))
            }
          >
            <Trash2 aria-hidden /> Take out
            <span className="out-of-sight"> the felled section</span>
          </Button>
        )}
      </div>
      <p className="hint">
        A list of rings named “unsound”, each a list of [east, north] in mm from the middle of the section;
        may hold “incipient” and “outline” too.
      </p>
    </Group>
  );
}

const count = (n: number, what: string) => `${n} ${what}${n === 1 ? '' : 's'}`;

function Judged({ judged }: { judged: FelledAssessment }) {
  const { weakest, soundShare, insideShare, warnings } = judged;
  const verdict = (inside: boolean) => (inside ? 'inside the range' : 'outside the range');
  const percent = (share: number) => `${fixed(100 * share, 0)} %`;
  return (
    <>
      <dl className="facts">
        <div>
          <dt>Strength left, bending to {bearing(weakest.directionDeg)}</dt>
          <dd>
            {percent(weakest.truth)} in truth
            <small>
              predicted {shareText(weakest)}, {verdict(weakest.inside)}
            </small>
          </dd>
        </div>
        <div>
          <dt>Sound share of the wood</dt>
          <dd>
            {percent(soundShare.truth)} in truth
            <small>
              predicted {shareText(soundShare)}, {verdict(soundShare.inside)}
            </small>
          </dd>
        </div>
        <div>
          <dt>Directions whose truth lies inside</dt>
          <dd>{percent(insideShare)}</dd>
        </div>
      </dl>
      {warnings.length > 0 && (
        <ul className="warnings">
          {warnings.map((warning) => (
            <li key={warning}>{warning}</li>
          ))}
        </ul>
      )}
    </>
  );
}
