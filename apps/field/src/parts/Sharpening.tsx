/** A slider through the drillings of a section in the order they were made: how the picture sharpened with each. */
import type { SectionAssessment } from '@standfast/engine';
import { bearing, sectionFigure } from '@standfast/report';
import { useCallback, useEffect, useId, useState } from 'react';
import { Button } from 'react-aria-components';
import { leastOf, nearest } from '../explain/fromAssessment.ts';
import { sharpeningFigure } from '../figures/sharpening.ts';
import { useSettings } from '../state/settings.ts';
import { useRecord, useSessionView } from '../state/useSession.tsx';
import { shareText } from '../units/quantities.ts';
import { followSharpening, NOT_BEGUN, type Sharpening, sharpeningKept } from '../work/sharpening.ts';
import { Figure } from './Figure.tsx';
import { Group } from './Group.tsx';

export function SharpeningGroup({ section }: { section: SectionAssessment }) {
  const { files } = useRecord();
  const { result } = useSessionView();
  const caseFile = result.of;
  const [wanted, setWanted] = useState(false);
  const [state, setState] = useState<Sharpening>(NOT_BEGUN);
  const [chosen, setChosen] = useState<number | null>(null);
  const count = section.drillings.length;
  useEffect(() => {
    if (!caseFile) return undefined;
    const known = sharpeningKept(caseFile, section.id);
    setState(known);
    // What was worked out is shown again at once; the rest only when it is asked for.
    if (known.done) setWanted(true);
    return known.done || !wanted ? undefined : followSharpening({ caseFile, files }, section.id, setState);
  }, [caseFile, files, section.id, wanted]);

  return (
    <Group
      title="How the picture sharpened"
      lead="The section as it stood after each drilling, in the order they were recorded."
    >
      {wanted ? (
        <Steps
          state={state}
          count={count}
          directionDeg={leastOf(section).directionDeg}
          shown={Math.min(chosen ?? count, state.steps.length - 1)}
          choose={setChosen}
        />
      ) : (
        <Button className="button" onPress={() => setWanted(true)}>
          Go through the drillings
        </Button>
      )}
    </Group>
  );
}

interface StepsProps {
  state: Sharpening;
  count: number;
  /** Direction whose strength is followed: the weakest now. */
  directionDeg: number;
  shown: number;
  choose: (drillings: number) => void;
}

function Steps({ state, count, directionDeg, shown, choose }: StepsProps) {
  const id = useId();
  const { units } = useSettings();
  const { steps, done, fault } = state;
  const section = steps[shown]?.section;
  const strengthOf = useCallback(
    (each: SectionAssessment) => nearest(each.remaining, directionDeg),
    [directionDeg],
  );
  const drawPlan = useCallback(
    (width: number) => {
      if (!section) throw new Error('There is no step to draw yet.');
      return sectionFigure({ section }, { width, units, textSize: 12, bare: true });
    },
    [section, units],
  );
  const drawChart = useCallback(
    (width: number) => {
      const points = steps.flatMap(({ drillings, section: each }) => {
        const strength = strengthOf(each);
        return strength ? [{ drillings, ...strength }] : [];
      });
      return sharpeningFigure(points, { width, units, count, shown, textSize: 12 });
    },
    [steps, strengthOf, units, count, shown],
  );
  const strength = section && strengthOf(section);
  const names = section?.drillings.map((each) => each.id).join(', ');
  const words = `${shown === 0 ? 'Before any drilling' : `After ${shown === 1 ? 'one drilling' : `${shown} drillings`} (${names})`}`;
  return (
    <>
      {fault && (
        <p className="fault" role="alert">
          {fault}
        </p>
      )}
      {!done && !fault && (
        <p className="hint" role="status">{`Working it out: ${steps.length} of ${count + 1} steps.`}</p>
      )}
      {section && strength && (
        <>
          <label className="trace-slider" htmlFor={id}>
            <span className="out-of-sight">Drillings counted</span>
            <input
              id={id}
              type="range"
              min={0}
              max={Math.max(1, steps.length - 1)}
              step={1}
              value={shown}
              disabled={steps.length < 2}
              aria-valuetext={`${words}: strength left ${shareText(strength)}`}
              onChange={(event) => choose(Number(event.target.value))}
            />
          </label>
          <p className="figure-words" data-testid="sharpening-words">
            {words}: <strong>{shareText(strength)}</strong> of the strength left, bending to{' '}
            {bearing(directionDeg)}, the weakest direction as known now.
          </p>
          <div className="sharpening">
            <Figure draw={drawPlan} maxWidth={460} />
            <Figure draw={drawChart} maxWidth={560} onPart={(_, ref) => choose(Number(ref))} />
          </div>
        </>
      )}
    </>
  );
}
