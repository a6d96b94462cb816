/** The decision and the advice of the sample assessment: invented, and only meant to be printed. */
import type {
  AdviceAssessment,
  AdviceOption,
  Chance,
  DecisionAssessment,
  Judged,
  ModeChance,
  SafetyGoverning,
} from '@standfast/engine';

function suggested<Word extends string>(word: Word): Judged<Word> {
  return { suggested: word, assessor: null, reason: null, taken: word, standing: 'suggested' };
}

const chance = (mean: number): Chance => ({
  mean,
  p05: mean / 400,
  p50: mean / 20,
  p95: Math.min(1, mean * 5),
});

function modeChance(mode: ModeChance['mode'], directionDeg: number, mean: number): ModeChance {
  return {
    mode,
    directionDeg,
    perYear: chance(mean / 4),
    inTimeFrame: chance(mean),
    evenPerYear: mean / 9,
    evenInTimeFrame: mean / 2.2,
    byDirection: Array.from({ length: 36 }, (_, i) => {
      const share = 0.55 + 0.45 * Math.cos(((i * 10 - directionDeg) * Math.PI) / 180);
      return {
        directionDeg: i * 10,
        perYear: (mean / 4) * Math.max(0.02, share),
        inTimeFrame: mean * Math.max(0.02, share),
      };
    }),
  };
}

export function sampleDecision(governing: SafetyGoverning): DecisionAssessment {
  return {
    timeFrameYears: 3,
    timeFrameBasis: 'As stated by the assessor.',
    governing,
    chance: {
      perYear: chance(0.012),
      inTimeFrame: chance(0.045),
      evenPerYear: 0.005,
      evenInTimeFrame: 0.02,
      inTimeFrameHavingStood: 0.021,
      stoodYears: 5,
      breakage: modeChance('breakage', 110, 0.006),
      uprooting: modeChance('uprooting', governing.directionDeg, 0.041),
      basis: [
        'Yearly strongest gust by EN 1991-1-4 eq. 4.2; the basic wind speed is taken to return every 50 years.',
        'An order of magnitude, not a forecast.',
      ],
    },
    likelihoodOfFailure: {
      suggested: 'possible',
      assessor: 'probable',
      reason: 'The flare beside the path gave way under the probe.',
      taken: 'probable',
      standing: 'overridden',
    },
    likelihoodReasons: ['The governing safety at its lower 5 % point is below the usual mark of 1.5.'],
    standing:
      'Suggested from the computed safety by a rule of this project that has no published authority; the assessor confirms it or overrides it with a reason.',
    yearlyGustMs: 27.8,
    fiftyYearGustMs: 37.4,
    signs: [
      {
        index: 0,
        sign: 'ants (flare f1)',
        bearsOn: 'decay',
        text: 'Carpenter ants nest in wood that is already decayed or moist and do not eat it.',
        floor: 'possible',
        source: 'common practice of the trade',
      },
    ],
    targets: [
      {
        index: 0,
        target: 'footpath',
        part: 'whole tree',
        occupancy: 'frequent',
        occupancyStated: true,
        protection: 'none',
        distanceM: 5,
        directionDeg: 90,
        reach: 'within reach',
        shareOfFalls: null,
        likelihoodOfFailure: {
          suggested: 'possible',
          assessor: 'probable',
          reason: 'The flare beside the path gave way under the probe.',
          taken: 'probable',
          standing: 'overridden',
        },
        likelihoodOfImpact: suggested('high'),
        event: 'likely',
        consequences: suggested('severe'),
        risk: 'high',
        suggestedRisk: 'moderate',
        basis: ['It is used frequently; nothing shields it.', 'It lies under the crown.'],
      },
      {
        index: 1,
        target: 'play area',
        part: 'whole tree',
        occupancy: 'occasional',
        occupancyStated: true,
        protection: 'none',
        distanceM: 14,
        directionDeg: 200,
        reach: 'within reach',
        shareOfFalls: 0.11,
        likelihoodOfFailure: {
          suggested: 'possible',
          assessor: 'probable',
          reason: 'The flare beside the path gave way under the probe.',
          taken: 'probable',
          standing: 'overridden',
        },
        likelihoodOfImpact: suggested('low'),
        event: 'unlikely',
        consequences: suggested('severe'),
        risk: 'low',
        suggestedRisk: 'low',
        basis: ['It is used occasionally; nothing shields it.'],
      },
    ],
    overall: { risk: 'high', suggestedRisk: 'moderate', target: 'footpath', part: 'whole tree' },
    assessor: { by: 'A. Sample', on: '2026-05-14', note: null },
    reasons: [
      'Likelihood of failure: probable by the assessor, where possible was suggested. Reason given: The flare beside the path gave way under the probe.',
      'The highest risk is high: footpath, struck by the tree.',
    ],
    values: [],
  };
}

const times = ({ p05, p50, p95, ...rest }: SafetyGoverning, factor: number): SafetyGoverning => ({
  ...rest,
  p05: p05 * factor,
  p50: p50 * factor,
  p95: p95 * factor,
});

function option(rest: Partial<AdviceOption> & Pick<AdviceOption, 'id' | 'what'>): AdviceOption {
  return {
    why: [],
    effect: null,
    residualRisk: null,
    residualLikelihood: null,
    limits: '',
    permissible: true,
    priority: 'possible',
    byMonths: 6,
    source: 'common practice of the trade',
    chosen: null,
    cost: null,
    dueOn: null,
    note: null,
    ...rest,
  };
}

export function sampleAdvice(governing: SafetyGoverning): AdviceAssessment {
  return {
    options: [
      option({
        id: 'restrict',
        what: 'Restrict or move the target: fence the fall zone, close or re-route the path',
        why: ['Keeps people away until the tree is dealt with.'],
        residualRisk: 'low',
        residualLikelihood: 'probable',
        limits: 'Only as good as it is kept up.',
        priority: 'first',
        byMonths: 0,
        chosen: true,
        cost: '240',
      }),
      option({
        id: 'static-test',
        what: 'Static load test of the anchorage',
        why: ['The evidence on the anchorage is too thin to keep or condemn the tree on it.'],
        limits: 'Measures roots and soil in the pulled direction.',
        priority: 'first',
        byMonths: 1,
        source: 'Detter, Rust and Krisans 2023 Forests 14:533',
      }),
      option({
        id: 'reduce-10',
        what: 'Crown reduction by 10 % of height and spread',
        why: ["Takes 25 % (15 % to 35 %) off the wind's moment at the ground."],
        effect: {
          relief: { p05: 0.15, p50: 0.25, p95: 0.35 },
          reliefByArea: 0.25,
          reliefByMass: 0.33,
          foliageShare: 0.271,
          safetyBefore: governing,
          safetyAfter: times(governing, 1.33),
          confidenceBefore: 0.54,
          confidenceAfter: 0.78,
          chanceInTimeFrameBefore: 0.045,
          chanceInTimeFrameAfter: 0.018,
        },
        residualRisk: 'moderate',
        residualLikelihood: 'possible',
        limits: 'Near the greatest amount for one season.',
        byMonths: 3,
        source: 'Smiley and Kane 2006 AUF 32(1); Pavlis, Kane, Harris and Seiler 2008 AUF 34(4)',
      }),
      option({
        id: 'remove',
        what: 'Removal',
        why: ['Nothing found calls for it.'],
        residualRisk: 'low',
        limits: 'Ends the risk and the tree.',
        priority: 'not advised',
        byMonths: null,
      }),
    ],
    leastPruning: {
      wantedSafety: 1.5,
      wantedConfidence: 0.9,
      confidenceNow: 0.54,
      share: null,
      topM: null,
      foliageShare: null,
      mostShare: 0.112,
      confidenceAtMost: 0.81,
      safetyAfter: times(governing, 1.37),
      curve: [
        { share: 0, confidence: 0.54, safety: governing },
        { share: 0.056, confidence: 0.69, safety: times(governing, 1.17) },
        { share: 0.112, confidence: 0.81, safety: times(governing, 1.37) },
      ],
      text: 'No permissible crown reduction reaches a safety of 1.5 in 90 of 100 draws: the most in keeping with pruning standards brings it from 54 to 81 of 100.',
    },
    reinspection: {
      months: 6,
      why: ['At most 6 months: failure is probable: act, then look again within half a year.'],
      sooner: ['after a storm of Beaufort 9 to 10 or more', 'on a new lean, cracks or heaving in the soil'],
      wallYears: { drillingId: 'd4', slow: null, middle: 11.2, fast: 4.6 },
      values: [],
    },
  };
}
