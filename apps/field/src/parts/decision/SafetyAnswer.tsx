/** The verdict: the safety that governs, the chance of failure in the time frame, and where the evidence is thin. */
import { type Assessment, FAILURE_LIKELIHOODS, type Judged, RISKS } from '@standfast/engine';
import { bearing, safetyGauge } from '@standfast/report';
import { useCallback } from 'react';
import { Link } from 'wouter';
import { chanceWithSpread, explainChanceInTime } from '../../explain/decision.ts';
import { explainChance, explainCriticalGust, explainSafety } from '../../explain/fromAssessment.ts';
import { verdictWords } from '../../explain/verdict.ts';
import { useSettings } from '../../state/settings.ts';
import { useRecord } from '../../state/useSession.tsx';
import { chanceText, intervalText, measure, quantityText, rangeText } from '../../units/quantities.ts';
import { Figure } from '../Figure.tsx';
import { Group } from '../Group.tsx';
import { OpenNumber } from '../OpenNumber.tsx';
import { GradeMark } from '../Verdict.tsx';
import { StepsMark } from './StepsMark.tsx';

const STANDING: Record<Judged<string>['standing'], string> = {
  suggested: 'suggested, not confirmed yet',
  confirmed: 'confirmed by the assessor',
  overridden: 'the assessor’s word',
  'override refused': 'suggested; the override lacks a reason',
};

export function SafetyAnswer({ assessment }: { assessment: Assessment }) {
  const { units } = useSettings();
  const { safety, decision } = assessment;
  const { overall, likelihoodOfFailure: failure } = decision;
  const words = verdictWords(safety);
  const draw = useCallback(
    (width: number) => safetyGauge(safety, { width, units, textSize: width < 500 ? 12 : 13 }),
    [safety, units],
  );
  return (
    <Group title="Safety in the design wind" className="answer">
      <p className={`answer-words ${words.grade}`}>
        <GradeMark grade={words.grade} /> {words.text}
      </p>
      <p className="answer-number">
        <OpenNumber explanation={explainSafety(assessment, units)}>
          {intervalText(safety.governing)}
        </OpenNumber>
        <span>
          {safety.governing.mode}, bending to {bearing(safety.governing.directionDeg)}
        </span>
      </p>
      <Figure draw={draw} maxWidth={720} />
      {safety.anchorageTooThin && <ThinEvidence assessment={assessment} />}
      <dl className="facts">
        <div>
          <dt>Likelihood of failure</dt>
          <dd>
            <span>
              <StepsMark scale={FAILURE_LIKELIHOODS} word={failure.taken} /> {failure.taken}
            </span>
            <small>{STANDING[failure.standing]}</small>
          </dd>
        </div>
        <div>
          <dt>Risk, highest of the targets</dt>
          <dd>
            {overall.risk === null ? (
              <small>no target recorded</small>
            ) : (
              <>
                <span>
                  <StepsMark scale={RISKS} word={overall.risk} /> {overall.risk}
                </span>
                <small>{overall.target}</small>
              </>
            )}
          </dd>
        </div>
        <div>
          <dt>Chance of failing within {quantityText(decision.timeFrameYears, 'years', units)}</dt>
          <dd>
            <OpenNumber explanation={explainChanceInTime(assessment, units)}>
              {chanceWithSpread(decision.chance.inTimeFrame)}
            </OpenNumber>
          </dd>
        </div>
        <div>
          <dt>Chance of failing in the design wind</dt>
          <dd>
            <OpenNumber explanation={explainChance(assessment, 1)}>
              {chanceText(safety.chanceBelow1)}
            </OpenNumber>
          </dd>
        </div>
        <div>
          <dt>Chance of a factor below 1.5</dt>
          <dd>
            <OpenNumber explanation={explainChance(assessment, 1.5)}>
              {chanceText(safety.chanceBelow1_5)}
            </OpenNumber>
          </dd>
        </div>
        {(['breakage', 'uprooting'] as const).map((mode) => (
          <div key={mode}>
            <dt>Critical gust, {mode}</dt>
            <dd>
              <OpenNumber explanation={explainCriticalGust(assessment, mode, units)}>
                {measure(safety.criticalGustMs[mode].p50, 'speedMs', units)}
              </OpenNumber>
              <small>{rangeText(safety.criticalGustMs[mode], 'speedMs', units)}</small>
            </dd>
          </div>
        ))}
      </dl>
      {!safety.anchorageTooThin && <p className="hint">{safety.anchorageBasis}</p>}
    </Group>
  );
}

/** Too little is known of the roots: what is wanted, and the way to enter it. */
function ThinEvidence({ assessment }: { assessment: Assessment }) {
  const { id } = useRecord();
  return (
    <div className="banner thin-evidence">
      <p>
        <strong>The evidence on the roots is too thin to decide on.</strong>{' '}
        {assessment.safety.anchorageBasis}
      </p>
      <Link className="button" href={`/case/${id}/tree/static-tests`}>
        Enter a static load test
      </Link>
    </div>
  );
}
