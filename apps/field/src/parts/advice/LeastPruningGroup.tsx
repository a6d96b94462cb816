/** The least crown reduction that reaches the wanted safety, with what each amount would reach. */
import type { Assessment } from '@standfast/engine';
import { pruningCurve, textInUnits } from '@standfast/report';
import { useCallback } from 'react';
import { explainLeastPruning } from '../../explain/decision.ts';
import { useSettings } from '../../state/settings.ts';
import { fixed, intervalText } from '../../units/quantities.ts';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { OpenNumber } from '../OpenNumber.tsx';

export function LeastPruningGroup({ assessment }: { assessment: Assessment }) {
  const { units } = useSettings();
  const { leastPruning: least } = assessment.advice;
  const { share, confidenceNow, confidenceAtMost, wantedConfidence, wantedSafety } = least;
  const draw = useCallback(
    (width: number) => pruningCurve(least, { width, units, textSize: width < 500 ? 12 : 13 }),
    [least, units],
  );
  const reached = share === null ? confidenceAtMost : Math.max(confidenceNow, wantedConfidence);
  return (
    <Group title="The least pruning that suffices" id="least-pruning">
      <p className="answer-number">
        <OpenNumber explanation={explainLeastPruning(least, assessment, units)}>
          {share === null
            ? 'None that is permissible'
            : share === 0
              ? 'None needed'
              : `${fixed(100 * share, 1)} %`}
        </OpenNumber>
        {share !== null && share > 0 && <span>of height and spread</span>}
      </p>
      <p>{textInUnits(least.text, units)}</p>
      <Figure draw={draw} maxWidth={620} />
      <p className="hint">
        Safety it would leave: {intervalText(least.safetyAfter)}; {fixed(100 * reached, 0)} % of the draws
        reach {wantedSafety}, {fixed(100 * confidenceNow, 0)} % as the tree stands.
      </p>
    </Group>
  );
}
