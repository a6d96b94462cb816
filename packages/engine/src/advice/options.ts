/**
 * What can be done about the tree: every option of the table with its effect on this tree, the risk that is left, and how
 * urgent it is. The options and their limits are data (advice-options.csv); which of them suits is decided here by plain
 * rules of this project, for the assessor to change.
 */
import type { AdviceEffect, AdviceOption, NextDrilling, SafetyAssessment } from '../assessment.ts';
import type { AdviceChoiceInput, RootBarrierInput, RootCutInput, SiteInput } from '../case.ts';
import { chanceWithLoad } from '../decision/chance.ts';
import { gustRatio } from '../decision/criticalGust.ts';
import { type Change, type Decided, rerated } from '../decision/decide.ts';
import { suggestLikelihood } from '../decision/likelihood.ts';
import { type FailureLikelihood, RISKS, type Risk, stepOf } from '../decision/words.ts';
import { constant, statusNote } from '../reference/index.ts';
import { type AdviceOptionsRow, adviceOptions } from '../reference/tables.generated.ts';
import { interval } from '../wind/interval.ts';
import type { Wanted } from './leastPruning.ts';
import { confidence, type LoadLeft, type Loads, loadLeft, safetyAfter } from './loads.ts';
import { type Pruning, reliefOf, type Standing } from './pruning.ts';

export interface OptionsInput {
  decided: Decided;
  safety: SafetyAssessment;
  standing: Standing;
  loads: Loads;
  nextDrilling: NextDrilling;
  site: SiteInput;
  rootCuts: readonly RootCutInput[];
  rootSpace: readonly RootBarrierInput[];
  choices: readonly AdviceChoiceInput[];
  wanted: Wanted;
}

type Row = Readonly<AdviceOptionsRow>;
type Priority = AdviceOption['priority'];
const PRIORITIES: readonly Priority[] = ['first', 'advised', 'possible', 'not advised'];

/** What the rules look at. */
interface Picture {
  risk: Risk | null;
  likelihood: FailureLikelihood;
  /** Risk moderate or more, or failure imminent. */
  pressing: boolean;
  grave: boolean;
  tooThin: boolean;
  bears: (on: string) => boolean;
  says: (words: RegExp) => boolean;
}

function pictureOf({ decided, safety }: OptionsInput): Picture {
  const { overall, likelihoodOfFailure, signs } = decided.assessment;
  const risk = overall.risk;
  const likelihood = likelihoodOfFailure.taken;
  const grave = likelihood === 'imminent' || (risk !== null && stepOf(RISKS, risk) >= stepOf(RISKS, 'high'));
  return {
    risk,
    likelihood,
    grave,
    pressing: grave || risk === 'moderate' || likelihood === 'probable',
    tooThin: safety.anchorageTooThin,
    bears: (on) => signs.some(({ bearsOn }) => bearsOn === on),
    says: (words) => signs.some(({ sign, text }) => words.test(`${sign} ${text}`)),
  };
}

/** Suggested likelihood of failure of the whole tree with the load that is left. */
function likelihoodAfter(input: OptionsInput, left: LoadLeft, chance: number): FailureLikelihood {
  const { decided, safety, loads } = input;
  const { drawn } = decided;
  const after = safetyAfter(loads, left);
  const gusts = (ratios: Float64Array, factor: Float64Array) =>
    interval(ratios.map((ratio, i) => drawn.openGustMs * gustRatio(drawn.streamlining, ratio / factor[i]!)));
  const sections = left.sections.reduce(
    (most, each) => most.map((factor, i) => Math.max(factor, each[i]!)),
    new Float64Array(drawn.draws),
  );
  const mark = constant('usual mark').value;
  const { p05, p95, directionDeg } = after.uprooting;
  const tested = drawn.anchorageTested[Math.round(directionDeg / 10) % 36]!;
  return suggestLikelihood({
    safety: {
      criticalGustMs: {
        breakage: gusts(drawn.breakage.leastLoadRatio, sections),
        uprooting: gusts(drawn.uprooting.leastLoadRatio, left.ground),
      },
      governing: after.governing,
      anchorageTooThin:
        safety.anchorageTooThin &&
        (drawn.anchorageDoubts.length > 0 || (p05 < mark && p95 >= mark && !tested)),
    },
    site: decided.site,
    signs: decided.assessment.signs,
    chance,
    timeFrameYears: decided.assessment.timeFrameYears,
  }).rating;
}

interface Worked {
  effect: AdviceEffect;
  likelihood: FailureLikelihood;
}

/** The effect of a pruning through moment, safety and chance. */
function worked(input: OptionsInput, pruning: Pruning, confidenceBefore: number): Worked {
  const { standing, loads, decided, safety, wanted } = input;
  const relief = reliefOf(standing, pruning);
  const left = loadLeft(loads, relief);
  const years = decided.assessment.timeFrameYears;
  const chance = chanceWithLoad(loads.drawn, decided.climate, years, left.ground);
  return {
    effect: {
      relief: relief.byLevel[0]!,
      reliefByArea: relief.byArea,
      reliefByMass: relief.byMass,
      foliageShare: relief.foliageShare,
      safetyBefore: safety.governing,
      safetyAfter: safetyAfter(loads, left).governing,
      confidenceBefore,
      confidenceAfter: confidence(loads, left, wanted.safety),
      chanceInTimeFrameBefore: decided.assessment.chance.inTimeFrame.mean,
      chanceInTimeFrameAfter: Math.min(chance, decided.assessment.chance.inTimeFrame.mean),
    },
    likelihood: likelihoodAfter(input, left, chance),
  };
}

interface Verdict {
  priority: Priority;
  why: string[];
  change?: Change;
  unknownResidual?: boolean;
}

/** Said of work at a tree that may be failing already. */
const HANDS_OFF =
  'Nobody should pull on, climb or work below a tree whose failure may have begun before it is secured.';

const points = (share: number) => `${Math.round(share * 100)} %`;

/** Pruning: advised when it is needed for the wanted safety and reaches it. */
function pruningVerdict(
  row: Row,
  { effect, likelihood }: Worked,
  input: OptionsInput,
  picture: Picture,
): Verdict {
  const { wanted } = input;
  const why = [
    `Takes ${points(effect.relief.p50)} (${points(effect.relief.p05)} to ${points(effect.relief.p95)}) off the wind's moment at the ground; safety from ${effect.safetyBefore.p50.toFixed(2)} to ${effect.safetyAfter.p50.toFixed(2)} (${effect.safetyAfter.p05.toFixed(2)} to ${effect.safetyAfter.p95.toFixed(2)}).`,
  ];
  const change = { wholeTree: likelihood };
  if (picture.likelihood === 'imminent') return { priority: 'not advised', why: [...why, HANDS_OFF], change };
  if (effect.confidenceBefore >= wanted.confidence) {
    why.push(`The tree reaches ${wanted.safety} with the wanted confidence without it.`);
    return { priority: 'not advised', why, change };
  }
  if (row.kind === 'raise') {
    why.push('It hardly lowers the load.');
    return { priority: 'not advised', why, change };
  }
  if (effect.confidenceAfter >= wanted.confidence) {
    why.push(`It brings the tree to ${wanted.safety} with the wanted confidence.`);
    return { priority: picture.pressing ? 'advised' : 'possible', why, change };
  }
  why.push(
    `${wanted.safety} is reached in ${points(effect.confidenceAfter)} of the draws, not in the ${points(wanted.confidence)} wanted${picture.tooThin ? '; the doubt lies in the anchorage, which a test would lessen before the crown is cut' : ''}.`,
  );
  return { priority: 'possible', why, change };
}

/** The rules, one a kind of option. */
function verdictOf(row: Row, input: OptionsInput, picture: Picture): Verdict {
  const { decided, safety, nextDrilling } = input;
  switch (row.id) {
    case 'retain':
      if (picture.grave || picture.likelihood === 'probable')
        return { priority: 'not advised', why: ['The risk is too high to leave as it is.'], change: {} };
      if (picture.risk === 'moderate')
        return {
          priority: 'possible',
          why: ['Only if the owner accepts a moderate risk, and not before open questions are answered.'],
          change: {},
        };
      return { priority: 'advised', why: ['The risk is low, or no target was recorded.'], change: {} };
    case 'restrict': {
      const change = { targetsGone: true };
      if (decided.assessment.targets.length === 0)
        return { priority: 'not advised', why: ['No target was recorded.'], change };
      const left = rerated(decided.assessment, change);
      const lower = left !== picture.risk;
      if (picture.grave)
        return {
          priority: 'first',
          why: [
            'Keeps people away until the tree is dealt with.',
            ...(lower ? [] : ['A target that cannot be moved keeps the risk as high.']),
          ],
          change,
        };
      if (!picture.pressing) return { priority: 'not advised', why: ['The risk is low without it.'], change };
      return lower
        ? { priority: 'advised', why: [`Lowers the risk to ${left} without touching the tree.`], change }
        : { priority: 'possible', why: ['A target that cannot be moved keeps the risk as high.'], change };
    }
    case 'static-test':
      if (picture.likelihood === 'imminent')
        return { priority: 'not advised', why: [HANDS_OFF], unknownResidual: true };
      if (picture.tooThin)
        return {
          priority: picture.pressing ? 'first' : 'advised',
          why: ['The evidence on the anchorage is too thin to keep or condemn the tree on it.'],
          unknownResidual: true,
        };
      return {
        priority:
          safety.governing.mode === 'uprooting' && safety.governing.p05 < constant('usual mark').value
            ? 'possible'
            : 'not advised',
        why: ['The anchorage can be decided on without it.'],
        unknownResidual: true,
      };
    case 'aerial': {
      if (picture.likelihood === 'imminent')
        return { priority: 'not advised', why: [HANDS_OFF], unknownResidual: true };
      const seen = picture.bears('limb') || picture.says(/included bark|union|crack/i);
      return {
        priority: seen ? 'advised' : 'possible',
        why: [
          seen
            ? 'Signs in the crown or at a union were recorded from the ground.'
            : 'Nothing in the crown was recorded that calls for it.',
        ],
        unknownResidual: true,
      };
    }
    case 'drill':
      if (nextDrilling.stop)
        return { priority: 'not advised', why: [nextDrilling.why], unknownResidual: true };
      return {
        priority: 'advised',
        why: [`Section ${nextDrilling.sectionId} at ${nextDrilling.azimuthDeg} degrees: ${nextDrilling.why}`],
        unknownResidual: true,
      };
    case 'deadwood': {
      const change = { limbsGone: true };
      if (!picture.bears('limb'))
        return { priority: 'not advised', why: ['No dead or broken limb was recorded.'], change };
      if (picture.likelihood === 'imminent') return { priority: 'not advised', why: [HANDS_OFF], change };
      return {
        priority: picture.pressing ? 'first' : 'advised',
        why: [
          'A dead, broken or cracked limb was recorded.',
          'It does not change the load on stem and roots.',
        ],
        change,
      };
    }
    case 'support': {
      const seen = picture.says(/included bark|cracked limb|split limb|union/i);
      return {
        priority: seen ? 'advised' : 'not advised',
        why: [
          seen
            ? 'A weak union or a cracked limb was recorded.'
            : 'No weak union or cracked limb was recorded; a cable does not hold roots.',
        ],
        unknownResidual: true,
      };
    }
    case 'insects': {
      const seen = picture.says(/\bants?\b|termite|borer|beetle|frass/i);
      return {
        priority: seen ? 'possible' : 'not advised',
        why: [
          seen
            ? 'Insects or their frass were recorded. Treating them gives no strength back; it may matter for buildings nearby.'
            : 'No insects were recorded.',
        ],
        change: {},
      };
    }
    case 'soil': {
      const seen =
        input.rootCuts.length > 0 ||
        input.rootSpace.length > 0 ||
        input.site.soil === 'poor' ||
        picture.bears('uprooting');
      return {
        priority: seen ? 'advised' : 'possible',
        why: [seen ? 'Roots, soil or crown show that the roots are under strain.' : 'Helps any kept tree.'],
        change: {},
      };
    }
    case 'remove':
      return {
        priority: picture.grave ? 'possible' : 'not advised',
        why: [
          picture.grave
            ? 'The risk is high: to be weighed against what else lowers it.'
            : 'Nothing found calls for it.',
        ],
        change: { treeGone: true },
      };
    default:
      throw new Error(`advice-options.csv: no rule for "${row.id}"`);
  }
}

function monthsBy(row: Row, priority: Priority, picture: Picture): number | null {
  if (priority === 'not advised') return null;
  if (picture.likelihood === 'imminent' && priority === 'first') return 0;
  if (picture.grave) return row.dueHigh;
  return picture.pressing ? row.dueModerate : row.dueLow;
}

function pruningOf(row: Row): Pruning | null {
  if (row.kind !== 'reduce' && row.kind !== 'raise' && row.kind !== 'thin') return null;
  if (row.amount === undefined) throw new Error(`advice-options.csv: ${row.id} has no amount`);
  return { kind: row.kind, amount: row.amount };
}

/** Every option, best first. */
export function adviceOptionsFor(input: OptionsInput): AdviceOption[] {
  const picture = pictureOf(input);
  const outer = constant('pruning outer limit').value;
  const { drawn } = input.loads;
  const untouched = new Float64Array(drawn.draws).fill(1);
  const before = confidence(
    input.loads,
    { ground: untouched, sections: drawn.breakage.places.map(() => untouched) },
    input.wanted.safety,
  );
  const options = adviceOptions.map((row): AdviceOption => {
    const pruning = pruningOf(row);
    const work = pruning ? worked(input, pruning, before) : null;
    const verdict = work ? pruningVerdict(row, work, input, picture) : verdictOf(row, input, picture);
    const permissible = !work || work.effect.foliageShare <= outer + 1e-9;
    // More than one season allows is never put forward by itself.
    const priority =
      !permissible && verdict.priority === 'advised' ? ('possible' as const) : verdict.priority;
    const choice = input.choices.find((each) => each.option === row.id);
    const residualRisk = verdict.unknownResidual
      ? null
      : rerated(input.decided.assessment, verdict.change ?? {});
    return {
      id: row.id,
      what: row.what,
      why: verdict.why,
      effect: work?.effect ?? null,
      residualRisk,
      residualLikelihood: verdict.unknownResidual
        ? null
        : row.kind === 'remove'
          ? null
          : (work?.likelihood ?? picture.likelihood),
      limits: row.limits,
      permissible,
      priority,
      byMonths: monthsBy(row, priority, picture),
      source: row.source + statusNote(row.status),
      chosen: choice?.chosen ?? null,
      cost: choice?.cost ?? null,
      dueOn: choice?.dueOn ?? null,
      note: choice?.note ?? null,
    };
  });
  return weighed(options, picture);
}

/** The least of several prunings that do is the one advised; removal is, where nothing else lowers a high risk. */
function weighed(options: AdviceOption[], picture: Picture): AdviceOption[] {
  let pruningFound = false;
  const lowersIt = options.some(
    ({ id, priority, residualRisk }) =>
      id !== 'remove' &&
      priority !== 'not advised' &&
      residualRisk !== null &&
      picture.risk !== null &&
      stepOf(RISKS, residualRisk) < stepOf(RISKS, picture.risk),
  );
  const changed = options.map((option): AdviceOption => {
    if (option.effect && option.priority === 'advised') {
      if (pruningFound) return { ...option, priority: 'possible', why: [...option.why, 'Less would do.'] };
      pruningFound = true;
    }
    if (option.id === 'remove' && option.priority === 'possible' && !lowersIt) {
      return { ...option, priority: 'advised', why: [...option.why, 'Nothing less lowers the risk.'] };
    }
    return option;
  });
  const order = new Map(changed.map((option, i) => [option.id, i]));
  return changed.sort(
    (a, b) =>
      PRIORITIES.indexOf(a.priority) - PRIORITIES.indexOf(b.priority) ||
      (a.byMonths ?? 999) - (b.byMonths ?? 999) ||
      order.get(a.id)! - order.get(b.id)!,
  );
}
