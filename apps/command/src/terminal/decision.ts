/** The decision and the advice in plain words for the terminal. */
import type {
  AdviceAssessment,
  AdviceOption,
  DecisionAssessment,
  Judged,
  TargetRisk,
} from '@standfast/engine';
import { fixed, percent, withInterval } from './numbers.ts';
import type { Page } from './page.ts';

export function decisionPart(page: Page, decision: DecisionAssessment): void {
  page.heading(`Decision, for the next ${years(decision.timeFrameYears)}`);
  for (const reason of decision.reasons) page.text(reason);
  page.gap();
  page.text('Why this likelihood of failure:');
  for (const reason of decision.likelihoodReasons) page.item('-', reason);
  page.text(decision.standing, 'quiet');
  if (decision.targets.length > 0) {
    page.gap();
    page.table(
      [
        { head: 'target', align: 'left' },
        { head: 'struck by', align: 'left' },
        { head: 'failure', align: 'left' },
        { head: 'impact', align: 'left' },
        { head: 'consequences', align: 'left' },
        { head: 'risk', align: 'left' },
      ],
      decision.targets.map(targetRow),
    );
    if (decision.targets.some(isOverridden)) {
      page.text('* the assessor’s word in place of the one suggested.', 'quiet');
    }
  }
  if (decision.signs.length > 0) {
    page.gap();
    page.text('What the signs say:');
    const texts = new Map<string, Set<string>>();
    for (const { text, sign } of decision.signs) texts.set(text, (texts.get(text) ?? new Set()).add(sign));
    for (const [text, signs] of texts) page.item('-', `${[...signs].join('; ')}: ${text}`);
  }
}

const years = (count: number) => `${count} year${count === 1 ? '' : 's'}`;

const isOverridden = ({ likelihoodOfFailure, likelihoodOfImpact, consequences }: TargetRisk) =>
  [likelihoodOfFailure, likelihoodOfImpact, consequences].some(({ standing }) => standing === 'overridden');

const word = (judged: Judged<string>) => `${judged.taken}${judged.standing === 'overridden' ? '*' : ''}`;

function targetRow(row: TargetRisk): string[] {
  return [
    row.target,
    row.part === 'limb' ? 'a limb' : 'the tree',
    word(row.likelihoodOfFailure),
    row.reach === 'out of reach'
      ? `${word(row.likelihoodOfImpact)}, out of reach`
      : word(row.likelihoodOfImpact),
    word(row.consequences),
    row.risk,
  ];
}

export function advicePart(page: Page, advice: AdviceAssessment): void {
  page.heading('Advice');
  const given = advice.options.filter(({ priority }) => priority !== 'not advised');
  for (const option of given) {
    page.item(
      `${option.priority}:`,
      `${option.what}${within(option)}. ${option.why.join(' ')}${left(option)}`,
      option.priority === 'first' ? 'strong' : undefined,
    );
  }
  const others = advice.options.filter(({ priority }) => priority === 'not advised');
  if (others.length > 0) {
    page.text(
      `Looked at and not advised: ${others.map(({ what }) => what.split(':')[0]).join('; ')}.`,
      'quiet',
    );
  }
  page.gap();
  page.text(advice.leastPruning.text);
  page.text(
    `Safety it would leave: ${withInterval(advice.leastPruning.safetyAfter, 2)}, reached with ${percent(advice.leastPruning.share === null ? advice.leastPruning.confidenceAtMost : Math.max(advice.leastPruning.wantedConfidence, advice.leastPruning.confidenceNow))} confidence at ${fixed(advice.leastPruning.wantedSafety, 1)}.`,
    'quiet',
  );
  page.gap();
  const { months, why, sooner } = advice.reinspection;
  page.text(
    months === 0
      ? 'Look again: as soon as it has been acted on.'
      : `Look again within ${months} months, and sooner ${sooner.join(', ')}.`,
  );
  for (const reason of why) page.item('-', reason);
}

function within({ byMonths, dueOn }: AdviceOption): string {
  if (dueOn !== null) return `, by ${dueOn}`;
  if (byMonths === null) return '';
  return byMonths === 0 ? ', at once' : `, within ${byMonths} month${byMonths === 1 ? '' : 's'}`;
}

function left({ residualRisk, cost }: AdviceOption): string {
  const risk = residualRisk === null ? '' : ` Risk left: ${residualRisk}.`;
  return `${risk}${cost === null ? '' : ` Cost as noted: ${cost}.`}`;
}
