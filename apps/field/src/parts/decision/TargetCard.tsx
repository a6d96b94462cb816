/** The risk of one target and one part of the tree: each word with its standing, the two matrices, and the outcome. */
import { type Assessment, EVENT_LIKELIHOODS, RISKS, type TargetRisk } from '@standfast/engine';
import { bearing } from '@standfast/report';
import { explainEvent, explainRisk } from '../../explain/decision.ts';
import { useSettings } from '../../state/settings.ts';
import { quantityText } from '../../units/quantities.ts';
import { OpenNumber } from '../OpenNumber.tsx';
import { JudgedRow } from './JudgedRow.tsx';
import { RiskMatrices } from './RiskMatrices.tsx';
import { StepsMark } from './StepsMark.tsx';

interface TargetCardProps {
  row: TargetRisk;
  assessment: Assessment;
}

export function TargetCard({ row, assessment }: TargetCardProps) {
  const { units } = useSettings();
  const { target, part } = row;
  const of = `${target}, ${part}`;
  const outcome = `Risk: ${row.risk}.`;
  const subject = { target, part };
  const facts = [
    part,
    row.occupancyStated ? row.occupancy : 'occupancy not stated',
    row.distanceM === null
      ? 'distance not stated'
      : row.distanceM === 0
        ? 'below the tree'
        : `${quantityText(row.distanceM, 'heightM', units)} off`,
    row.directionDeg === null ? '' : `to ${bearing(row.directionDeg)}`,
    row.protection === 'none' ? '' : `protection ${row.protection}`,
    row.reach === 'out of reach' || row.reach === 'thrown pieces only' ? row.reach : '',
  ];
  return (
    <li className="target-card" aria-label={of}>
      <header className="target-head">
        <h3>{target}</h3>
        <OpenNumber explanation={explainRisk(row, assessment)} className="risk-word">
          <StepsMark scale={RISKS} word={row.risk} /> {row.risk} risk
        </OpenNumber>
        <p className="hint">{facts.filter(Boolean).join(', ')}</p>
      </header>
      {row.risk !== row.suggestedRisk && (
        <p className="hint">By the suggestions alone: {row.suggestedRisk}.</p>
      )}
      <JudgedRow
        label="Likelihood of failure"
        of={of}
        judged={row.likelihoodOfFailure}
        subject={subject}
        field="likelihoodOfFailure"
        basis={part === 'limb' ? row.basis.slice(0, 1) : assessment.decision.likelihoodReasons}
        outcome={outcome}
      />
      <JudgedRow
        label="Likelihood of impact"
        of={of}
        judged={row.likelihoodOfImpact}
        subject={subject}
        field="likelihoodOfImpact"
        basis={row.basis.slice(part === 'limb' ? 1 : 0, -1)}
        outcome={outcome}
      />
      <p className="combined">
        <span>Both together</span>
        <OpenNumber explanation={explainEvent(row, assessment)}>
          <StepsMark scale={EVENT_LIKELIHOODS} word={row.event} /> {row.event}
        </OpenNumber>
      </p>
      <JudgedRow
        label="Consequences"
        of={of}
        judged={row.consequences}
        subject={subject}
        field="consequences"
        basis={row.basis.slice(-1)}
        outcome={outcome}
      />
      <details>
        <summary className="opener">
          Both matrices<span className="out-of-sight">{`, ${of}`}</span>
        </summary>
        <RiskMatrices row={row} />
      </details>
    </li>
  );
}
