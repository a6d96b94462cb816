/**
 * The decision: chance of failure, likelihood, impact, consequences and risk for each target, beside what the assessor says.
 *
 * Every word is a suggestion with its reasons; the assessor confirms it or overrides it with a reason, and both are kept.
 * Risk is rated for each target and each part of the tree on its own by the two matrices of the trade, and the highest is
 * reported, never an average.
 */
import type {
  DecisionAssessment,
  Judged,
  Notice,
  SafetyAssessment,
  SignReading,
  TargetRisk,
} from '../assessment.ts';
import type {
  DecisionInput,
  PartOfTree,
  SignInput,
  SiteInput,
  TargetInput,
  TargetJudgementInput,
  TreeInput,
} from '../case.ts';
import { InputFault } from '../faults.ts';
import { constant, sourced, statusNote } from '../reference/index.ts';
import { likelihoodMatrix, riskMatrix } from '../reference/tables.generated.ts';
import { type GustClimate, gustClimate } from '../wind/gustClimate.ts';
import { type ChanceOfFailure, chanceInWords, chanceOfFailure } from './chance.ts';
import { consequencesOf } from './consequences.ts';
import { impactOf } from './impact.ts';
import { judged } from './judgement.ts';
import { suggestLikelihood } from './likelihood.ts';
import { eventLikelihood, highestRisk, riskOf } from './risk.ts';
import { readSigns } from './signs.ts';
import type { SafetyDraws, SafetyResult } from './types.ts';
import {
  CONSEQUENCES,
  FAILURE_LIKELIHOODS,
  type FailureLikelihood,
  greater,
  IMPACT_LIKELIHOODS,
  RISKS,
  type Risk,
  stepOf,
  stepped,
} from './words.ts';

export interface DecideInput {
  tree: TreeInput;
  site: SiteInput;
  signs: readonly SignInput[];
  targets: readonly TargetInput[];
  decision?: DecisionInput;
  timeFrameYears?: number;
  safety: SafetyResult;
}

/** The decision, and what the advice needs to rate its options by the same rules. */
export interface Decided {
  assessment: DecisionAssessment;
  notices: Notice[];
  drawn: SafetyDraws;
  climate: GustClimate;
  site: SiteInput;
}

function timeFrame(years: number | undefined): { years: number; basis: string } {
  if (years === undefined) {
    const taken = constant('time frame');
    return {
      years: taken.value,
      basis: `No time frame was stated; ${taken.value} years are taken (${taken.source}; a proposal of this project).`,
    };
  }
  if (!(years > 0 && years <= 50)) {
    throw new InputFault(
      `A time frame of ${years} years cannot be used; give a number above 0, up to 50.`,
      'timeFrameYears',
    );
  }
  return { years, basis: 'As stated by the assessor.' };
}

/** The decision from what was recorded and the safety worked out. */
export function decide(input: DecideInput): Decided {
  const { site, signs, targets, safety } = input;
  const notices: Notice[] = [];
  const frame = timeFrame(input.timeFrameYears);
  const climate = gustClimate(site);
  const chance = chanceOfFailure(safety.drawn, climate, frame.years);
  const readings = readSigns(signs);
  const suggestion = suggestLikelihood({
    safety: safety.assessment,
    site,
    signs: readings,
    chance: chance.inTimeFrame.mean,
    timeFrameYears: frame.years,
  });
  const likelihood = judged(
    FAILURE_LIKELIHOODS,
    suggestion.rating,
    input.decision?.likelihoodOfFailure,
    'decision.likelihoodOfFailure',
    notices,
  );
  notices.push(...unmatchedTargets(input), ...targetNotices(targets));
  const rows = targets
    .flatMap((target, index) =>
      partsThatStrike(target, readings).map((part) =>
        targetRisk({ input, target, index, part, readings, likelihood, chance, notices }),
      ),
    )
    .sort((a, b) => stepOf(RISKS, b.risk) - stepOf(RISKS, a.risk) || a.index - b.index);
  const top = rows[0];
  const { breakage, uprooting, perYear, inTimeFrame, evenPerYear, evenInTimeFrame } = chance;
  const stoodYears = constant('years stood').value;
  const assessment: DecisionAssessment = {
    timeFrameYears: frame.years,
    timeFrameBasis: frame.basis,
    governing: safety.assessment.governing,
    chance: {
      perYear,
      inTimeFrame,
      evenPerYear,
      evenInTimeFrame,
      inTimeFrameHavingStood: chance.inTimeFrameHavingStood,
      stoodYears,
      breakage,
      uprooting,
      basis: [
        climate.basis,
        'Mean over equally likely versions of the tree; the interval shows how far they lie apart. The strongest gust of each year is taken from the side that is worst for the tree; the second figure is for gusts from all sides alike.',
        `The tree is taken to stay as it is for the time frame. The likelihood of failure takes no credit for the storms it has stood; given that it has stood ${stoodYears} years much as it is now, versions of it that would hardly have stood them count for less, and the chance falls as shown. That credit does not hold after new damage or digging, or where decay moves fast.`,
        'An order of magnitude, not a forecast: the far tail of wind and strength is not known better.',
      ],
    },
    likelihoodOfFailure: likelihood,
    likelihoodReasons: suggestion.reasons,
    standing: suggestion.standing,
    yearlyGustMs: suggestion.yearlyGustMs,
    fiftyYearGustMs: suggestion.fiftyYearGustMs,
    signs: readings,
    targets: rows,
    overall: {
      risk: highestRisk(rows.map((row) => row.risk)),
      suggestedRisk: highestRisk(rows.map((row) => row.suggestedRisk)),
      target: top?.target ?? null,
      part: top?.part ?? null,
    },
    assessor: input.decision
      ? {
          by: input.decision.by ?? null,
          on: input.decision.on ?? null,
          note: input.decision.note ?? null,
        }
      : null,
    reasons: [],
    values: [
      ...(input.timeFrameYears === undefined ? [sourced('time frame')] : []),
      sourced('chance probable'),
      sourced('chance improbable'),
      sourced('years stood'),
      ...(targets.length > 0
        ? [sourced('target reach full'), sourced('target reach debris'), sourced('small share of falls')]
        : []),
      ...matrixSources(),
    ],
  };
  assessment.reasons = inWords(assessment, safety.assessment);
  return { assessment, notices, drawn: safety.drawn, climate, site };
}

/** The two matrices as sourced entries; their value is the number of their cells. */
function matrixSources(): DecisionAssessment['values'] {
  const first = likelihoodMatrix[0]!;
  const second = riskMatrix[0]!;
  return [
    {
      name: 'likelihood of failure by likelihood of impact, cells of the matrix',
      value: likelihoodMatrix.length,
      unit: '1',
      source: first.source + statusNote(first.status),
    },
    {
      name: 'that by the consequences, cells of the matrix',
      value: riskMatrix.length,
      unit: '1',
      source: second.source + statusNote(second.status),
    },
  ];
}

const limbReadings = (readings: readonly SignReading[]) =>
  readings.filter((reading) => reading.bearsOn === 'limb');

function partsThatStrike(target: TargetInput, readings: readonly SignReading[]): PartOfTree[] {
  if (target.partOfTree) return [target.partOfTree];
  return limbReadings(readings).length > 0 ? ['whole tree', 'limb'] : ['whole tree'];
}

/** Judgements on targets that the case does not have. */
function unmatchedTargets({ decision, targets }: DecideInput): Notice[] {
  return (decision?.byTarget ?? []).flatMap((each, i): Notice[] =>
    targets.some((target) => target.what === each.target)
      ? []
      : [
          {
            severity: 'caution',
            where: `decision.byTarget[${i}]`,
            text: `The judgement is on "${each.target}", which is no target of this case: it is not used. Use the target's name as recorded.`,
          },
        ],
  );
}

function targetNotices(targets: readonly TargetInput[]): Notice[] {
  if (targets.length === 0) {
    return [
      {
        severity: 'caution',
        where: 'targets',
        text: 'No target was recorded: the likelihood of failure is given, but no risk can be rated.',
      },
    ];
  }
  return targets.flatMap((target, i): Notice[] => {
    const word = target.occupancy?.trim().toLowerCase();
    if (word === 'rare' || word === 'occasional' || word === 'frequent' || word === 'constant') return [];
    return [
      {
        severity: 'caution',
        where: `targets[${i}].occupancy`,
        text: word
          ? `"${target.occupancy}" is none of rare, occasional, frequent, constant: how often ${target.what} is used counts as not stated and is taken as frequent.`
          : `How often ${target.what} is used was not stated: it is taken as frequent.`,
      },
    ];
  });
}

interface RowInput {
  input: DecideInput;
  target: TargetInput;
  index: number;
  part: PartOfTree;
  readings: readonly SignReading[];
  likelihood: Judged<FailureLikelihood>;
  chance: ChanceOfFailure;
  notices: Notice[];
}

/** The limb's suggested likelihood of failure: the highest that its signs set. */
function limbLikelihood(readings: readonly SignReading[]): { word: FailureLikelihood; basis: string } {
  const limbs = limbReadings(readings);
  if (limbs.length === 0) {
    return {
      word: 'possible',
      basis: 'No sign of a weak limb was recorded; possible is taken until the crown has been looked at.',
    };
  }
  const word = limbs.reduce<FailureLikelihood>(
    (most, { floor }) => (floor ? greater(FAILURE_LIKELIHOODS, most, floor) : most),
    'possible',
  );
  return { word, basis: `Recorded: ${[...new Set(limbs.map(({ sign }) => sign))].join('; ')}.` };
}

function targetRisk(row: RowInput): TargetRisk {
  const { input, target, index, part, readings, likelihood, chance, notices } = row;
  const said = input.decision?.byTarget ?? [];
  const at = said.findIndex(
    (each) => each.target === target.what && (each.partOfTree === undefined || each.partOfTree === part),
  );
  const judgement: TargetJudgementInput | undefined = said[at];
  const where = `decision.byTarget[${at}]`;
  const basis: string[] = [];
  let failure = likelihood;
  if (part === 'limb') {
    const suggested = limbLikelihood(readings);
    basis.push(suggested.basis);
    failure = judged(
      FAILURE_LIKELIHOODS,
      suggested.word,
      judgement?.likelihoodOfFailure,
      `${where}.likelihoodOfFailure`,
      notices,
    );
  } else if (judgement?.likelihoodOfFailure) {
    failure = judged(
      FAILURE_LIKELIHOODS,
      likelihood.suggested,
      judgement.likelihoodOfFailure,
      `${where}.likelihoodOfFailure`,
      notices,
    );
  }
  const limb = limbReadings(readings)[0];
  const impact = impactOf(
    input.tree,
    target,
    part,
    chance.eitherByDirection,
    limb ? input.signs[limb.index] : undefined,
  );
  const harm = consequencesOf(target, part);
  const likelihoodOfImpact = judged(
    IMPACT_LIKELIHOODS,
    impact.suggested,
    judgement?.likelihoodOfImpact,
    `${where}.likelihoodOfImpact`,
    notices,
  );
  const consequences = judged(
    CONSEQUENCES,
    harm.suggested,
    judgement?.consequences,
    `${where}.consequences`,
    notices,
  );
  const event = eventLikelihood(failure.taken, likelihoodOfImpact.taken);
  return {
    index,
    target: target.what,
    part,
    occupancy: impact.occupancy,
    occupancyStated: impact.occupancyStated,
    protection: impact.protection,
    distanceM: target.distanceM ?? null,
    directionDeg: target.directionDeg ?? null,
    reach: impact.reach,
    shareOfFalls: impact.shareOfFalls,
    likelihoodOfFailure: failure,
    likelihoodOfImpact,
    event,
    consequences,
    risk: riskOf(event, consequences.taken),
    suggestedRisk: riskOf(eventLikelihood(failure.suggested, impact.suggested), harm.suggested),
    basis: [...basis, ...impact.basis, harm.basis],
  };
}

/** How the rows' risks change: what an option of the advice does. */
export interface Change {
  /** Suggested likelihood of failure of the whole tree after it; the assessor's override falls by as many steps. */
  wholeTree?: FailureLikelihood;
  /** Whether dead and broken limbs are gone. */
  limbsGone?: boolean;
  /** Whether the targets that can be moved or closed are. */
  targetsGone?: boolean;
  /** Whether the tree is gone. */
  treeGone?: boolean;
}

/** Targets that cannot be moved or closed. */
const FIXED_TARGETS =
  /\b(house|home|dwelling|apartment|flat|office|shop|hospital|church|hall|road|street|highway|railway|tram|power|line)/i;

/** The highest risk that is left after a change, by the same matrices; null without a target. */
export function rerated(assessment: DecisionAssessment, change: Change): Risk | null {
  if (change.treeGone) return assessment.targets.length > 0 ? 'low' : null;
  const before = assessment.likelihoodOfFailure.suggested;
  return highestRisk(
    assessment.targets.map((row) => {
      let failure = row.likelihoodOfFailure.taken;
      if (row.part === 'whole tree' && change.wholeTree) {
        const steps = stepOf(FAILURE_LIKELIHOODS, change.wholeTree) - stepOf(FAILURE_LIKELIHOODS, before);
        failure = stepped(FAILURE_LIKELIHOODS, failure, steps);
      }
      if (row.part === 'limb' && change.limbsGone) failure = 'improbable';
      const moved = change.targetsGone && !FIXED_TARGETS.test(row.target);
      const impact = moved ? 'very low' : row.likelihoodOfImpact.taken;
      return riskOf(eventLikelihood(failure, impact), row.consequences.taken);
    }),
  );
}

const COMPASS = ['north', 'north-east', 'east', 'south-east', 'south', 'south-west', 'west', 'north-west'];
const compass = (directionDeg: number) => COMPASS[Math.round(directionDeg / 45) % 8]!;

function said<Word extends string>(what: string, judgedWord: Judged<Word>): string {
  switch (judgedWord.standing) {
    case 'suggested':
      return `${what}: ${judgedWord.suggested} (suggested; the assessor has not confirmed it yet).`;
    case 'confirmed':
      return `${what}: ${judgedWord.suggested}, confirmed by the assessor${judgedWord.reason ? `: ${judgedWord.reason}` : ''}.`;
    case 'overridden':
      return `${what}: ${judgedWord.taken} by the assessor, where ${judgedWord.suggested} was suggested. Reason given: ${judgedWord.reason}.`;
    case 'override refused':
      return `${what}: ${judgedWord.suggested}; the assessor wrote ${judgedWord.assessor} without a reason, which does not count.`;
  }
}

/** The decision in plain words, sentence by sentence. */
function inWords(decision: DecisionAssessment, safety: SafetyAssessment): string[] {
  const { governing } = safety;
  const { chance, overall, timeFrameYears } = decision;
  const figure = (value: number) => value.toFixed(2);
  const top = decision.targets[0];
  const frame = `${timeFrameYears} year${timeFrameYears === 1 ? '' : 's'}`;
  return [
    `What governs is ${governing.mode === 'breakage' ? `breaking of the stem${governing.sectionId ? ` at section ${governing.sectionId}` : ''}` : 'uprooting'}, with wind toward the ${compass(governing.directionDeg)}: a safety of ${figure(governing.p50)}, between ${figure(governing.p05)} and ${figure(governing.p95)} (nine in ten).`,
    `The chance that the stem or the roots fail within ${frame} is about ${chanceInWords(chance.inTimeFrame.mean)} if the strongest gusts come from the worst side, ${chanceInWords(chance.evenInTimeFrame)} if they come from all sides alike. Given that it has stood the last ${chance.stoodYears} years much as it is now, the first figure is ${chanceInWords(chance.inTimeFrameHavingStood)}.`,
    said('Likelihood of failure', decision.likelihoodOfFailure),
    ...(top && overall.risk
      ? [
          `The highest risk is ${overall.risk}: ${top.target}, struck by ${top.part === 'limb' ? 'a limb' : 'the tree'} (likelihood of failure ${top.likelihoodOfFailure.taken}, of impact ${top.likelihoodOfImpact.taken}, together ${top.event}; consequences ${top.consequences.taken}).`,
          ...(overall.suggestedRisk !== overall.risk
            ? [`By the suggestions alone it would be ${overall.suggestedRisk}.`]
            : []),
        ]
      : ['No target was recorded, so no risk is rated.']),
    ...(safety.anchorageTooThin
      ? ['The evidence on the anchorage is too thin to decide on; a static load test is recommended.']
      : []),
  ];
}
