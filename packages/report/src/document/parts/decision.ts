/** The decision: what governs, chance and likelihood of failure, risk by target through both matrices. */
import {
  CONSEQUENCES,
  EVENT_LIKELIHOODS,
  eventLikelihood,
  FAILURE_LIKELIHOODS,
  IMPACT_LIKELIHOODS,
  type Judged,
  type ModeChance,
  riskOf,
  type TargetRisk,
} from '@standfast/engine';
import { bearing, measure } from '../../units.ts';
import { language, term } from '../../words/spoken.ts';
import type { TermScale } from '../../words/terms/en.ts';
import type { Block } from '../blocks.ts';
import { paragraphsOf } from '../changes.ts';
import { type Context, longDate, probability, withRange } from '../context.ts';
import { heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { LONGEST_CONCLUSION } from './opening.ts';

/** The words of a target that an assessor may judge, and their scales. */
const JUDGED = [
  { of: 'likelihoodOfFailure', scale: 'failure' },
  { of: 'likelihoodOfImpact', scale: 'impact' },
  { of: 'consequences', scale: 'consequences' },
] as const;

const DOT = '•\u00a0';

export function decision(context: Context): Block[] {
  const { a, w, units } = context;
  const d = a.decision;
  const years = w.decision.years(d.timeFrameYears);
  const said = (text: string) => textInUnits(text, units);
  const chanceRow = (mode: ModeChance) => [
    w.modes[mode.mode],
    bearing(mode.directionDeg),
    probability(mode.perYear.mean),
    chanceRange(mode.inTimeFrame),
    probability(mode.evenInTimeFrame),
  ];
  return [
    heading(1, w.decision.heading, 'decision'),
    { kind: 'paragraph', text: w.decision.intro(years) },
    { kind: 'definitions', layout: 'list', items: atAGlance(context) },
    { kind: 'paragraph', text: d.standing, tone: 'small', lasting: true },
    ...wholeConclusion(context),
    heading(2, w.decision.whyHeading, 'decision-why'),
    { kind: 'list', items: d.likelihoodReasons.map(said) },
    table(
      w.decision.chanceTable(years),
      w.decision.chanceColumns,
      [0.24, 0.2, 0.14, 0.26, 0.16],
      [chanceRow(d.chance.breakage), chanceRow(d.chance.uprooting)],
    ),
    {
      kind: 'paragraph',
      tone: 'small',
      text: [
        w.decision.fifty(
          measure(d.yearlyGustMs, 'speedMs', units),
          measure(d.fiftyYearGustMs, 'speedMs', units),
        ),
        ...d.chance.basis.map(said),
      ].join(' '),
    },
    ...risk(context),
    ...signs(context),
  ];
}

/** The assessor's conclusion where it is too long for the owner's page. */
function wholeConclusion({ w, options }: Context): Block[] {
  const { conclusion = '' } = options;
  if (conclusion.length <= LONGEST_CONCLUSION) return [];
  return [
    heading(2, w.summary.assessorSays, 'conclusion'),
    ...paragraphsOf(conclusion).map((text): Block => ({ kind: 'paragraph', text, lasting: true })),
  ];
}

/** `16 % (<1 % to 60 %)`: all draws together, and how far they lie apart. */
export function chanceRange({ mean, p05, p95 }: { mean: number; p05: number; p95: number }): string {
  return `${probability(mean)} (${language().numbers.range(probability(p05), probability(p95))})`;
}

/** How a word stands between the figures and the assessor. */
export function standingInWords({ w }: Context, judged: Judged<string>, scale: TermScale): string {
  const reason = judged.reason === null ? '' : w.decision.reason(judged.reason);
  return w.decision.standing[judged.standing](
    term(scale, judged.suggested),
    term(scale, judged.assessor ?? ''),
    reason,
  );
}

function atAGlance(context: Context): { term: string; text: string }[] {
  const { a, w, units } = context;
  const d = a.decision;
  const { terms } = w.decision;
  const { governing, chance, overall } = d;
  const years = w.decision.years(d.timeFrameYears);
  const by = d.assessor;
  return [
    { term: terms.timeFrame, text: `${years}. ${textInUnits(d.timeFrameBasis, units)}` },
    {
      term: terms.governing,
      text: w.decision.governing(
        w.modes[governing.mode],
        bearing(governing.directionDeg),
        withRange(governing, 2),
        governing.sectionId,
      ),
    },
    {
      term: terms.chance,
      text: w.decision.chance(
        years,
        chanceRange(chance.inTimeFrame),
        probability(chance.evenInTimeFrame),
        probability(chance.inTimeFrameHavingStood),
        w.decision.years(chance.stoodYears),
      ),
    },
    { term: terms.likelihood, text: standingInWords(context, d.likelihoodOfFailure, 'failure') },
    {
      term: terms.risk,
      text:
        overall.risk === null
          ? w.decision.noTargets
          : [
              w.decision.overall(
                term('risk', overall.risk),
                overall.target ?? '',
                w.decision.part[overall.part ?? 'whole tree'],
              ),
              overall.suggestedRisk === null || overall.suggestedRisk === overall.risk
                ? ''
                : w.decision.bySuggestion(term('risk', overall.suggestedRisk)),
            ]
              .join(' ')
              .trim(),
    },
    {
      term: terms.assessor,
      text:
        by === null
          ? w.decision.unsigned
          : [w.decision.signedBy(by.by ?? '', by.on === null ? '' : longDate(by.on, w.months)), by.note ?? '']
              .filter((s) => s !== '')
              .join(': ') || w.decision.terms.assessor,
    },
  ];
}

const nameOf = (row: TargetRisk, { w }: Context) => `${row.target}, ${w.decision.part[row.part]}`;

function risk(context: Context): Block[] {
  const { a, w, units } = context;
  const { targets } = a.decision;
  const head = heading(2, w.decision.riskHeading, 'decision-risk');
  if (targets.length === 0) return [head, { kind: 'paragraph', text: w.decision.noTargets }];
  const either = (taken: string, suggested: string, scale: TermScale) =>
    taken === suggested ? term(scale, taken) : w.decision.judged(term(scale, taken), term(scale, suggested));
  const word = ({ taken, suggested }: Judged<string>, scale: TermScale) => either(taken, suggested, scale);
  const dot = (marked: boolean, text: string) => (marked ? `${DOT}${text}` : text);
  return [
    head,
    { kind: 'paragraph', text: w.decision.riskIntro },
    table(
      w.decision.riskTable,
      w.decision.riskColumns,
      [0.26, 0.16, 0.15, 0.15, 0.15, 0.13],
      targets.map((row) => [
        nameOf(row, context),
        word(row.likelihoodOfFailure, 'failure'),
        row.reach === 'out of reach'
          ? `${word(row.likelihoodOfImpact, 'impact')}, ${w.decision.outOfReach}`
          : word(row.likelihoodOfImpact, 'impact'),
        term('event', row.event),
        word(row.consequences, 'consequences'),
        either(row.risk, row.suggestedRisk, 'risk'),
      ]),
    ),
    table(
      w.decision.basisTable,
      w.decision.basisColumns,
      [0.22, 0.78],
      targets.map((row) => [
        nameOf(row, context),
        [
          ...row.basis.map((text) => textInUnits(text, units)),
          ...JUDGED.filter(({ of }) => row[of].standing !== 'suggested').map(({ of, scale }) =>
            standingInWords(context, row[of], scale),
          ),
        ].join(' '),
      ]),
    ),
    table(
      w.decision.first,
      [w.decision.firstCorner, ...IMPACT_LIKELIHOODS.map((word) => term('impact', word))],
      [0.2, 0.2, 0.2, 0.2, 0.2],
      FAILURE_LIKELIHOODS.map((failure) => [
        term('failure', failure),
        ...IMPACT_LIKELIHOODS.map((impact) =>
          dot(
            targets.some(
              (t) => t.likelihoodOfFailure.taken === failure && t.likelihoodOfImpact.taken === impact,
            ),
            term('event', eventLikelihood(failure, impact)),
          ),
        ),
      ]),
    ),
    table(
      w.decision.second,
      [w.decision.secondCorner, ...CONSEQUENCES.map((word) => term('consequences', word))],
      [0.2, 0.2, 0.2, 0.2, 0.2],
      EVENT_LIKELIHOODS.map((event) => [
        term('event', event),
        ...CONSEQUENCES.map((consequences) =>
          dot(
            targets.some((t) => t.event === event && t.consequences.taken === consequences),
            term('risk', riskOf(event, consequences)),
          ),
        ),
      ]),
    ),
    { kind: 'paragraph', text: w.decision.matrixNote, tone: 'small' },
  ];
}

/** Signs that say the same stand together. */
function signs({ a, w, units }: Context): Block[] {
  const rows = new Map<string, { signs: Set<string>; floor: string; source: string }>();
  for (const { sign, text, floor, source } of a.decision.signs) {
    const row = rows.get(text) ?? {
      signs: new Set(),
      floor: floor === null ? w.decision.noFloor : term('failure', floor),
      source,
    };
    row.signs.add(sign);
    rows.set(text, row);
  }
  if (rows.size === 0) return [];
  return [
    table(
      w.decision.signsTable,
      w.decision.signsColumns,
      [0.2, 0.4, 0.12, 0.28],
      [...rows].map(([text, row]) => [
        [...row.signs].join('; '),
        textInUnits(text, units),
        row.floor,
        row.source,
      ]),
    ),
  ];
}
