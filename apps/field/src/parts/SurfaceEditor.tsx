/** What the surface of a section was found to be on walking round it: stretches that are sound, decayed or open. */
import { addSurfaceArc, type CaseSection, removeSurfaceArc } from '@standfast/casefile';
import { arcSpanDeg, type SurfaceState } from '@standfast/engine';
import { Plus, Trash2 } from 'lucide-react';
import { Button } from 'react-aria-components';
import { useSession, useSessionView } from '../state/useSession.tsx';
import { ChoiceEntry, NumberEntry } from './entries.tsx';

const STATES: { value: SurfaceState; label: string }[] = [
  { value: 'sound', label: 'sound' },
  { value: 'decayed', label: 'decayed' },
  { value: 'open', label: 'open' },
];

const AZIMUTH = { min: -180, max: 360 };

/** @param index place of the section in the case, for the paths of its fields */
export function SurfaceEditor({ section, index }: { section: CaseSection; index: number }) {
  const session = useSession();
  const { writer } = useSessionView();
  const arcs = section.surface ?? [];
  const soundAllRound = arcs.some(
    ({ state, fromDeg, toDeg }) => state === 'sound' && arcSpanDeg(fromDeg, toDeg) === 360,
  );
  const add = (state: SurfaceState, fromDeg: number, toDeg: number) =>
    session.edit('Note the surface', (caseFile) =>
      addSurfaceArc(caseFile, section.id, { fromDeg, toDeg, state }),
    );
  return (
    <div className="surface">
      <h3>Surface at this height</h3>
      <p className="hint">
        Walk round with mallet and probe. Sound: bark alive and firm. Decayed: wood soft to a probe. Open: a
        hollow seen from outside. What is noted counts as evidence, for openings that no needle met are what
        intervals miss most. Stretches run clockwise; where two overlap, the worse one holds.
      </p>
      <ul className="rows">
        {arcs.map(({ fromDeg, toDeg, state }, i) => (
          // biome-ignore lint/suspicious/noArrayIndexKey: a stretch is known by its place in the list
          <li key={i} className="row">
            <div className="fields">
              <NumberEntry
                at={`sections.${index}.surface.${i}.fromDeg`}
                label="From"
                quantity="angleDeg"
                limits={AZIMUTH}
              />
              <NumberEntry
                at={`sections.${index}.surface.${i}.toDeg`}
                label="clockwise to"
                quantity="angleDeg"
                limits={AZIMUTH}
              />
              <ChoiceEntry at={`sections.${index}.surface.${i}.state`} label="Found" choices={STATES} />
            </div>
            <Button
              className="icon-button"
              aria-label={`Take out the ${state} stretch from ${fromDeg}° to ${toDeg}°`}
              isDisabled={writer !== true}
              onPress={() =>
                session.edit('Take out a stretch of surface', (caseFile) =>
                  removeSurfaceArc(caseFile, section.id, i),
                )
              }
            >
              <Trash2 aria-hidden />
            </Button>
          </li>
        ))}
      </ul>
      <div className="actions">
        {!soundAllRound && (
          <Button className="button" isDisabled={writer !== true} onPress={() => add('sound', 0, 360)}>
            Sound all round
          </Button>
        )}
        <Button className="button" isDisabled={writer !== true} onPress={() => add('decayed', 0, 30)}>
          <Plus aria-hidden /> Add a stretch
        </Button>
      </div>
    </div>
  );
}
