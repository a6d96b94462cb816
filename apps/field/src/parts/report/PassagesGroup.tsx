/** What the assessor strikes and adds, passage by passage. Nothing is taken away: what is struck stays legible. */
import type { Passage } from '@standfast/report';
import { Plus, Trash2 } from 'lucide-react';
import { useState } from 'react';
import { Button } from 'react-aria-components';
import { addText, removeText, strikePassage } from '../../edit/passages.ts';
import { today } from '../../state/bringIn.ts';
import { useCaseFile, useSession, useSessionView } from '../../state/useSession.tsx';
import { Group } from '../Group.tsx';
import { Sheet } from '../Sheet.tsx';

export function PassagesGroup({ passages }: { passages: readonly Passage[] }) {
  const { report } = useCaseFile();
  const [adding, setAdding] = useState<Passage | null>(null);
  const chapters = Map.groupBy(passages, ({ chapter }) => chapter);
  const changes = (report?.struck?.length ?? 0) + (report?.added?.length ?? 0);
  return (
    <Group
      title="Strike and add"
      lead="What you strike stays legible, struck through; what you add is marked with your name and the day. Cautions, limits, scope and figures cannot be struck."
    >
      <details className="passages">
        <summary>
          {changes === 0 ? 'Passages of the report' : `Passages of the report (${changes} changed)`}
        </summary>
        {[...chapters].map(([chapter, list]) => (
          <details key={chapter} className="chapter">
            <summary>{chapter}</summary>
            <ul>
              {list.map((passage) => (
                <PassageRow key={passage.key} passage={passage} onAdd={() => setAdding(passage)} />
              ))}
            </ul>
          </details>
        ))}
      </details>
      <AddedTexts />
      <Sheet
        title="Text to add"
        isOpen={adding !== null}
        onOpenChange={(open) => !open && setAdding(null)}
        sturdy
      >
        {adding && <AddText passage={adding} onDone={() => setAdding(null)} />}
      </Sheet>
    </Group>
  );
}

const KIND: Partial<Record<Passage['kind'], string>> = {
  figure: 'Figure',
  table: 'Table',
  photos: 'Photos',
  keyFigures: 'Figures',
};

function PassageRow({ passage, onAdd }: { passage: Passage; onAdd: () => void }) {
  const session = useSession();
  const { report } = useCaseFile();
  const readOnly = useSessionView().writer !== true;
  const { key, kind, words, mayStrike } = passage;
  const struck = report?.struck?.includes(key) ?? false;
  const prefix = KIND[kind];
  return (
    <li className="passage">
      <p className={struck && mayStrike ? 'struck' : undefined}>
        {prefix && <b>{prefix}: </b>}
        {words}
      </p>
      {struck && !mayStrike && (
        <p className="hint">It stays, and the report says that you asked to strike it.</p>
      )}
      <div className="button-row">
        {(mayStrike || struck) && (
          <Button
            className="button quiet"
            isDisabled={readOnly}
            onPress={() =>
              session.edit(struck ? 'Let it stand' : 'Strike', (caseFile) =>
                strikePassage(caseFile, key, !struck),
              )
            }
          >
            {struck ? 'Let it stand' : 'Strike'}
          </Button>
        )}
        <Button className="button quiet" isDisabled={readOnly} onPress={onAdd}>
          <Plus aria-hidden /> Add text after
        </Button>
      </div>
    </li>
  );
}

function AddedTexts() {
  const session = useSession();
  const { report } = useCaseFile();
  const readOnly = useSessionView().writer !== true;
  const added = report?.added ?? [];
  if (added.length === 0) return null;
  return (
    <ul className="added-texts">
      {added.map(({ after, text, by, on }, i) => (
        <li key={`${after} ${text}`}>
          <p>{text}</p>
          <p className="hint">{[by, on].filter(Boolean).join(', ')}</p>
          <Button
            className="button quiet"
            isDisabled={readOnly}
            onPress={() => session.edit('Take added text out', (caseFile) => removeText(caseFile, i))}
          >
            <Trash2 aria-hidden /> Take out
          </Button>
        </li>
      ))}
    </ul>
  );
}

function AddText({ passage, onDone }: { passage: Passage; onDone: () => void }) {
  const session = useSession();
  const { assessor } = useCaseFile();
  const [text, setText] = useState('');
  const by = assessor?.name;
  const keep = () => {
    const added = { after: passage.key, text: text.trim(), on: today(), ...(by ? { by } : {}) };
    session.edit('Add text to the report', (caseFile) => addText(caseFile, added));
    onDone();
  };
  return (
    <>
      <p className="hint">{`After: ${passage.words}`}</p>
      <div className="entry wide">
        <label htmlFor="added-text">Text</label>
        <span className="box">
          <textarea id="added-text" rows={6} value={text} onChange={(event) => setText(event.target.value)} />
        </span>
        <p className="hint">{`It will be marked “Added by ${by ?? 'the assessor'}” with today’s date.`}</p>
      </div>
      <div className="actions">
        <Button className="button primary" isDisabled={text.trim() === ''} onPress={keep}>
          Add
        </Button>
      </div>
    </>
  );
}
