/** What is to be done: options with what each would change, the least pruning that suffices, when to look again. */
import type { AdviceOption, Assessment } from '@standfast/engine';
import { useState } from 'react';
import { Group } from '../Group.tsx';
import { Cautions } from '../Notices.tsx';
import { LeastPruningGroup } from './LeastPruningGroup.tsx';
import { OptionCard } from './OptionCard.tsx';
import { ReinspectionGroup } from './ReinspectionGroup.tsx';

/** Options put forward stand open; the others wait behind one line. */
const PUT_FORWARD: readonly AdviceOption['priority'][] = ['first', 'advised'];

export function AdviceLeaf({ assessment }: { assessment: Assessment }) {
  const { options } = assessment.advice;
  // What was chosen before stands in front; what is chosen now stays where the finger is.
  const [decided] = useState(() => options.filter(({ chosen }) => chosen !== null).map(({ id }) => id));
  const front = options.filter(({ id, priority }) => PUT_FORWARD.includes(priority) || decided.includes(id));
  const possible = options.filter((option) => !front.includes(option) && option.priority === 'possible');
  const rest = options.filter((option) => !front.includes(option) && option.priority === 'not advised');
  return (
    <>
      <Group
        title="What may be done"
        lead="Put forward by plain rules of this project; you and the client choose. What you choose is printed in the report."
      >
        <Cards options={front} assessment={assessment} />
        <More title="Also possible" options={possible} assessment={assessment} />
        <More title="Not advised for this tree" options={rest} assessment={assessment} />
      </Group>
      <div className="columns">
        <LeastPruningGroup assessment={assessment} />
        <ReinspectionGroup assessment={assessment} />
      </div>
      <Cautions />
    </>
  );
}

function Cards({ options, assessment }: { options: readonly AdviceOption[]; assessment: Assessment }) {
  return (
    <ul className="option-cards">
      {options.map((option) => (
        <OptionCard key={option.id} option={option} assessment={assessment} />
      ))}
    </ul>
  );
}

interface MoreProps {
  title: string;
  options: readonly AdviceOption[];
  assessment: Assessment;
}

function More({ title, options, assessment }: MoreProps) {
  if (options.length === 0) return null;
  return (
    <details>
      <summary className="opener">
        {title} ({options.length})
      </summary>
      <Cards options={options} assessment={assessment} />
    </details>
  );
}
