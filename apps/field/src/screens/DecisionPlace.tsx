/** Will it stand: the safety that governs with its range, what it rests on, and what to know before relying on it. */
import type { Assessment } from '@standfast/engine';
import { bearing, safetyGauge } from '@standfast/report';
import { useCallback } from 'react';
import { Link } from 'wouter';
import { explainChance, explainCriticalGust, explainSafety } from '../explain/fromAssessment.ts';
import { verdictWords } from '../explain/verdict.ts';
import { FaultList } from '../parts/FaultList.tsx';
import { Figure } from '../parts/Figure.tsx';
import { Group } from '../parts/Group.tsx';
import { NextDrillingCard } from '../parts/NextDrilling.tsx';
import { Cautions, Notices } from '../parts/Notices.tsx';
import { OpenNumber } from '../parts/OpenNumber.tsx';
import { GradeMark } from '../parts/Verdict.tsx';
import { useSettings } from '../state/settings.ts';
import { useRecord, useSessionView } from '../state/useSession.tsx';
import { chanceText, intervalText, measure, rangeText } from '../units/quantities.ts';
import { SectionWithRose } from './StrengthPlace.tsx';

export function DecisionPlace() {
  const { result } = useSessionView();
  const { id, caseFile } = useRecord();
  const { assessment, faults, notices } = result;
  if (!assessment) {
    return (
      <>
        <h1>Decision</h1>
        {faults.length > 0 ? (
          <section className="empty">
            <h2>Before this tree can be assessed</h2>
            <FaultList />
            <div className="actions">
              <Link className="button primary" href={`/case/${id}/tree`}>
                Begin with the tree
              </Link>
            </div>
          </section>
        ) : (
          <p className="hint">Working it out…</p>
        )}
        <Cautions />
      </>
    );
  }
  const governingSection =
    assessment.sections.find((section) => section.id === assessment.safety.governing.sectionId) ??
    assessment.sections[0]!;
  return (
    <>
      <h1>Decision</h1>
      <div className="columns">
        <div className="column">
          <Answer assessment={assessment} />
          <NextDrillingCard assessment={assessment} />
          {caseFile.targets.length > 0 && (
            <Group title="What it could hit">
              <ul className="plain-list">
                {caseFile.targets.map(({ what, occupancy, distanceM, directionDeg }) => (
                  <TargetLine
                    key={`${what} ${occupancy} ${distanceM} ${directionDeg}`}
                    words={[what, occupancy].filter(Boolean).join(', ')}
                    distanceM={distanceM}
                    directionDeg={directionDeg}
                  />
                ))}
              </ul>
            </Group>
          )}
          <Group title="What to know first">
            <Notices notices={[...notices, ...assessment.notices]} />
          </Group>
        </div>
        <div className="column figure-column">
          <SectionWithRose section={governingSection} />
          <Cautions />
        </div>
      </div>
    </>
  );
}

interface TargetLineProps {
  words: string;
  distanceM: number | undefined;
  directionDeg: number | undefined;
}

function TargetLine({ words, distanceM, directionDeg }: TargetLineProps) {
  const { units } = useSettings();
  const where = [
    distanceM === undefined ? '' : `${measure(distanceM, 'heightM', units)} off`,
    directionDeg === undefined ? '' : `to ${bearing(directionDeg)}`,
  ].filter(Boolean);
  return <li>{[words, ...where].join(', ')}</li>;
}

function Answer({ assessment }: { assessment: Assessment }) {
  const { units } = useSettings();
  const { safety } = assessment;
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
      <dl className="facts">
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
      <p className="hint">
        {safety.anchorageTooThin && <strong>The evidence on the roots is thin. </strong>}
        {safety.anchorageBasis}
      </p>
    </Group>
  );
}
