/** The advice: options with what they would change, the least pruning that suffices, when to look again. */
import type { AdviceOption } from '@standfast/engine';
import { pruningCurve } from '../../figures/pruningCurve.ts';
import { fixed } from '../../units.ts';
import { term } from '../../words/spoken.ts';
import { drillFurther } from '../advice.ts';
import type { Block } from '../blocks.ts';
import { type Context, longDate, percent, probability, withRange } from '../context.ts';
import { dueInWords } from '../dueDate.ts';
import { figure, heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';

export function advice(context: Context): Block[] {
  const { a, w, units, figureWidth } = context;
  const { options, leastPruning: least, reinspection } = a.advice;
  const said = (text: string) => textInUnits(text, units);
  const reached =
    least.share === null ? least.confidenceAtMost : Math.max(least.wantedConfidence, least.confidenceNow);
  const { wallYears } = reinspection;
  return [
    heading(1, w.options.heading, 'advice'),
    { kind: 'paragraph', text: w.options.intro },
    table(
      w.options.table,
      w.options.columns,
      [0.27, 0.23, 0.13, 0.1, 0.17, 0.1],
      options.map((option) => optionRow(context, option)),
    ),
    table(
      w.options.limitsTable,
      w.options.limitsColumns,
      [0.16, 0.36, 0.28, 0.2],
      options.map(({ what, why, limits, source }) => [
        shortName(said(what)),
        said(why.join(' ')),
        said(limits),
        source,
      ]),
    ),
    heading(2, w.options.leastHeading, 'least-pruning'),
    {
      kind: 'paragraph',
      text: `${said(least.text)} ${w.options.least(
        withRange(least.safetyAfter, 2),
        fixed(least.wantedSafety, 1),
        percent(reached),
        percent(least.confidenceNow),
      )}`,
    },
    figure(pruningCurve(least, { units, width: figureWidth }), w.options.leastCaption, 'least-pruning-curve'),
    heading(2, w.options.againHeading, 'look-again'),
    {
      kind: 'paragraph',
      text: [lookAgain(context), w.options.sooner(said(reinspection.sooner.join(', ')))].join(' '),
    },
    { kind: 'list', items: reinspection.why.map(said) },
    ...(wallYears === null
      ? []
      : [
          {
            kind: 'paragraph' as const,
            tone: 'small' as const,
            text: w.options.wallYears(
              wallYears.drillingId,
              ...([wallYears.slow, wallYears.middle, wallYears.fast].map((years) =>
                years === null ? w.options.never : fixed(years, 0),
              ) as [string, string, string]),
            ),
          },
        ]),
    heading(2, w.options.drillHeading, 'drill-further'),
    { kind: 'paragraph', text: said(drillFurther(context)) },
  ];
}

export function lookAgain(context: Context): string {
  const { months } = context.a.advice.reinspection;
  return months === 0 ? context.w.options.againAtOnce : context.w.options.again(dueInWords(context, months));
}

/** What an option is, without its detail. */
export const shortName = (what: string) => what.split(':')[0]!;

/** By when an option is to be done: the day the user set, else the one worked out; empty for none. */
export function dueOf(context: Context, { dueOn, byMonths }: AdviceOption): string {
  const { w } = context;
  if (dueOn !== null) return w.options.by(longDate(dueOn, w.months));
  return byMonths === null ? '' : dueInWords(context, byMonths);
}

function optionRow(context: Context, option: AdviceOption): string[] {
  const { w, units } = context;
  const { effect, priority, residualRisk, chosen } = option;
  const marks = [
    option.permissible ? '' : w.options.impermissible,
    chosen === null ? '' : chosen ? w.options.chosen : w.options.declined,
    option.note ?? '',
  ].filter((s) => s !== '');
  const what = textInUnits(option.what, units);
  return [
    marks.length === 0 ? what : `${what} (${marks.join('; ')})`,
    effect === null
      ? w.options.noEffect
      : w.options.safety(withRange(effect.safetyBefore, 2), withRange(effect.safetyAfter, 2)),
    effect === null
      ? '–'
      : w.options.safety(
          probability(effect.chanceInTimeFrameBefore),
          probability(effect.chanceInTimeFrameAfter),
        ),
    residualRisk === null ? '–' : term('risk', residualRisk),
    w.options.when(term('priority', priority), dueOf(context, option)),
    option.cost ?? '',
  ];
}
