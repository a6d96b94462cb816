/** Will it stand, what could it hit, and what is decided; and on the second leaf, what is to be done. */
import { type Assessment, RISKS } from '@standfast/engine';
import { Link, useLocation } from 'wouter';
import { AdviceLeaf } from '../parts/advice/AdviceLeaf.tsx';
import { DecidedGroup, LikelihoodGroup } from '../parts/decision/LikelihoodGroup.tsx';
import { SafetyAnswer } from '../parts/decision/SafetyAnswer.tsx';
import { SignsRead } from '../parts/decision/SignsRead.tsx';
import { StepsMark } from '../parts/decision/StepsMark.tsx';
import { TargetCard } from '../parts/decision/TargetCard.tsx';
import { FaultList } from '../parts/FaultList.tsx';
import { Group } from '../parts/Group.tsx';
import { NextDrillingCard } from '../parts/NextDrilling.tsx';
import { Cautions, Notices } from '../parts/Notices.tsx';
import { Segments } from '../parts/SettingsButton.tsx';
import { useArrival, usePart } from '../state/useArrival.ts';
import { useRecord, useSessionView } from '../state/useSession.tsx';
import { SectionWithRose } from './StrengthPlace.tsx';

export function DecisionPlace() {
  const { result } = useSessionView();
  const { id } = useRecord();
  const [, navigate] = useLocation();
  const part = usePart();
  useArrival();
  const { assessment, faults } = result;
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
  const leaf = part === 'advice' ? 'advice' : 'decision';
  return (
    <>
      <div className="place-head">
        <h1>{leaf === 'advice' ? 'Advice' : 'Decision'}</h1>
        <Segments
          label="Leaf"
          hideLabel
          value={leaf}
          options={[
            ['decision', 'Decision'],
            ['advice', 'Advice'],
          ]}
          onChoose={(chosen) => navigate(`/case/${id}/decision${chosen === 'advice' ? '/advice' : ''}`)}
        />
      </div>
      {leaf === 'advice' ? <AdviceLeaf assessment={assessment} /> : <DecisionLeaf assessment={assessment} />}
    </>
  );
}

function DecisionLeaf({ assessment }: { assessment: Assessment }) {
  const { notices } = useSessionView().result;
  const governingSection =
    assessment.sections.find((section) => section.id === assessment.safety.governing.sectionId) ??
    assessment.sections[0]!;
  return (
    <>
      <div className="columns">
        <div className="column">
          <SafetyAnswer assessment={assessment} />
          <LikelihoodGroup assessment={assessment} />
        </div>
        <div className="column">
          <SectionWithRose section={governingSection} />
          <NextDrillingCard assessment={assessment} />
        </div>
      </div>
      <RiskGroup assessment={assessment} />
      <div className="columns">
        <div className="column">
          <DecidedGroup assessment={assessment} />
          <SignsRead signs={assessment.decision.signs} />
        </div>
        <div className="column">
          <Group title="What to know first">
            <Notices notices={[...notices, ...assessment.notices]} />
          </Group>
          <Cautions />
        </div>
      </div>
    </>
  );
}

function RiskGroup({ assessment }: { assessment: Assessment }) {
  const { id } = useRecord();
  const { overall, targets } = assessment.decision;
  if (overall.risk === null) {
    return (
      <Group title="Risk" id="risk">
        <div className="empty">
          <p>No target was recorded: without one there is a likelihood of failure, but no risk to rate.</p>
          <Link className="button" href={`/case/${id}/tree/targets`}>
            Add a target
          </Link>
        </div>
      </Group>
    );
  }
  return (
    <Group
      title="Risk, target by target"
      id="risk"
      tools={
        <Link className="button quiet" href={`/case/${id}/tree/targets`}>
          Edit the targets
        </Link>
      }
    >
      <p className="overall-risk" data-testid="overall-risk">
        <StepsMark scale={RISKS} word={overall.risk} />
        <span>
          Highest: <strong>{overall.risk} risk</strong>, {overall.target}, {overall.part}.
          {overall.suggestedRisk !== overall.risk && ` By the suggestions alone: ${overall.suggestedRisk}.`}
        </span>
      </p>
      <ul className="target-cards">
        {targets.map((row) => (
          <TargetCard key={`${row.index} ${row.part}`} row={row} assessment={assessment} />
        ))}
      </ul>
    </Group>
  );
}
