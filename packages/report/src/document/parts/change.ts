/** What has changed since the earlier visit: fronts, growth, section and safety, with their error, and how long. */
import type { ChangeAssessment, Crossing, DrillingChange, Interval, RecordedChange } from '@standfast/engine';
import { changeRose, changeSection, changeTraces, forecastFan } from '../../figures/change/index.ts';
import { bearing, fixed, measure, number, type Units, unitOf } from '../../units.ts';
import { language } from '../../words/spoken.ts';
import type { Block } from '../blocks.ts';
import { type Context, longDate, percent, probability, withRange } from '../context.ts';
import { figure, heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';

/** Nothing when the case names no earlier visit. */
export function change(context: Context): Block[] {
  const { change: found } = context.a;
  if (!found) return [];
  const { w } = context;
  const date = found.earlierOn === null ? null : longDate(found.earlierOn, w.months);
  return [
    heading(1, date === null ? w.change.headingNoDate : w.change.heading(date), 'change'),
    {
      kind: 'paragraph',
      text: found.years === null ? w.change.introNoYears : w.change.intro(fixed(found.years, 1)),
    },
    keyFigures(context, found),
    { kind: 'paragraph', text: plainly(context, found) },
    ...sections(context, found),
    figure(
      changeRose(found.safety.before, context.a.safety, {
        units: context.units,
        width: context.figureWidth * 0.62,
      }),
      w.change.safetyCaption,
      'change-safety',
    ),
    ...forecast(context, found),
    ...drillings(context, found),
    ...recorded(context, found),
  ];
}

/** `24 mm (16 to 31)`. */
function lengths({ p05, p50, p95 }: Interval, units: Units): string {
  const of = (value: number) => number(value, 'lengthMm', units);
  return `${measure(p50, 'lengthMm', units)} (${language().numbers.range(of(p05), of(p95))})`;
}

function withVerdict(found: ChangeAssessment, verdict: DrillingChange['verdict']): string[] {
  return found.drillings.filter((d) => d.verdict === verdict).map(({ laterId }) => laterId);
}

const listed = (ids: readonly string[]) => (ids.length === 0 ? '–' : ids.join(', '));

function keyFigures({ w, units }: Context, found: ChangeAssessment): Block {
  const moved = withVerdict(found, 'moved');
  const met = found.drillings.filter(({ verdict }) => verdict !== 'no front');
  const growths = found.drillings.map(({ growthMm }) => growthMm.p50);
  const { breakage } = found.safety;
  return {
    kind: 'keyFigures',
    items: [
      {
        label: w.change.key.front,
        value:
          met.length === 0
            ? w.change.key.frontNone
            : w.change.key.frontValue(String(moved.length), String(met.length)),
        interval: listed(moved),
        note: w.change.key.frontNote(
          listed(withVerdict(found, 'not moved')),
          listed(withVerdict(found, 'cannot tell')),
        ),
      },
      ...(growths.length === 0
        ? []
        : [
            {
              label: w.change.key.growth,
              value: w.change.key.growthValue(
                number(Math.min(...growths), 'lengthMm', units),
                measure(Math.max(...growths), 'lengthMm', units),
              ),
              interval: '',
              note: w.change.key.growthNote,
            },
          ]),
      {
        label: w.change.key.safety,
        value: w.change.key.safetyValue(fixed(breakage.before.p50, 2), fixed(breakage.now.p50, 2)),
        interval: w.change.key.safetyInterval(withRange(breakage.difference, 2)),
      },
    ],
  };
}

function plainly({ w }: Context, found: ChangeAssessment): string {
  const say = (verdict: DrillingChange['verdict'], words: (ids: string) => string) => {
    const ids = withVerdict(found, verdict);
    return ids.length === 0 ? '' : words(listed(ids));
  };
  const { breakage, breakageWithLoadHeld, uprooting } = found.safety;
  return [
    say('moved', w.change.moved),
    say('not moved', w.change.still),
    say('cannot tell', w.change.unclear),
    say('no front', w.change.none),
    w.change.safety(
      withRange(breakage.before, 2),
      withRange(breakage.now, 2),
      withRange(breakage.difference, 2),
      probability(breakage.chanceLower),
    ),
    breakageWithLoadHeld ? w.change.held(withRange(breakageWithLoadHeld.difference, 2)) : '',
    w.change.uprooting(withRange(uprooting.before, 2), withRange(uprooting.now, 2)),
  ]
    .filter((text) => text !== '')
    .join(' ');
}

function names({ w }: Context, found: ChangeAssessment): { thenName: string; nowName: string } {
  const day = (date: string | null) => (date === null ? '' : longDate(date, w.months));
  return {
    thenName: w.change.figures.before(day(found.earlierOn)),
    nowName: w.change.figures.now(day(found.laterOn)),
  };
}

function sections(context: Context, found: ChangeAssessment): Block[] {
  const { a, w, units, figureWidth } = context;
  return found.sections.flatMap((one): Block[] => {
    const then = found.sectionsThen.find(({ id }) => id === one.earlierId);
    const now = a.sections.find(({ id }) => id === one.laterId);
    if (!then || !now) return [];
    const most = one.remainingDifference.reduce((x, y) => (y.p50 < x.p50 ? y : x));
    const capacity = one.capacityRatio.find(({ directionDeg }) => directionDeg === most.directionDeg)!;
    const points = (share: number) => fixed(100 * share, 1);
    return [
      figure(
        changeSection(then, now, one, { units, width: figureWidth, ...names(context, found) }),
        w.change.sectionCaption(one.laterId),
        `change-${one.laterId}`,
        1,
      ),
      {
        kind: 'paragraph',
        text: w.change.sectionSaid(
          one.laterId,
          `${points(most.p50)}\u00a0% (${language().numbers.range(points(most.p05), points(most.p95))})`,
          `${percent(capacity.p50)} (${language().numbers.range(percent(capacity.p05), percent(capacity.p95))})`,
          bearing(most.directionDeg),
        ),
      },
    ];
  });
}

function forecast(context: Context, found: ChangeAssessment): Block[] {
  const { w, units, figureWidth } = context;
  if (!found.forecast) return [];
  const { crossings, years, nextVisitMonths } = found.forecast;
  const first = crossings[0];
  return [
    heading(2, w.change.forecastHeading, 'change-forecast'),
    figure(
      forecastFan(found.forecast, { units, width: figureWidth }),
      w.change.forecastCaption,
      'change-fan',
      1,
    ),
    {
      kind: 'paragraph',
      text: [
        ...crossings.map((crossing) => crossingWords(context, crossing, years)),
        first
          ? w.change.crossing.byVisit(
              fixed(first.limit, 1),
              probability(first.chanceByNextVisit),
              String(Math.round(nextVisitMonths)),
            )
          : '',
      ]
        .filter((text) => text !== '')
        .join(' '),
    },
    { kind: 'list', items: [...w.change.basis] },
  ];
}

function crossingWords({ w }: Context, crossing: Crossing, years: number): string {
  const words = w.change.crossing;
  const mark = fixed(crossing.limit, 1);
  const within = String(years);
  const when = (value: number | null) =>
    value === null ? words.notWithin(within) : value < 0.5 ? words.now : words.inYears(fixed(value, 0));
  if (crossing.chanceNow >= 0.95) return words.already(mark);
  if (crossing.earlyYears === null) return words.never(mark, within, probability(crossing.chanceAtEnd));
  if (crossing.middleYears === null)
    return words.unlikely(mark, within, when(crossing.earlyYears), probability(crossing.chanceAtEnd));
  return words.middle(mark, when(crossing.middleYears), when(crossing.earlyYears), when(crossing.lateYears));
}

function drillings(context: Context, found: ChangeAssessment): Block[] {
  const { w, units, figureWidth } = context;
  if (found.drillings.length === 0) return [];
  const blocks: Block[] = [
    heading(2, w.change.drillingsHeading, 'change-drillings'),
    { kind: 'paragraph', text: w.change.drillingsNote },
    table(
      w.change.table,
      w.change.columns,
      [0.08, 0.15, 0.18, 0.15, 0.15, 0.15, 0.14],
      found.drillings.map((one) => {
        const wall = (interval: Interval, atLeast: boolean) =>
          `${atLeast ? `${w.drillings.atLeast} ` : ''}${lengths(interval, units)}`;
        return [
          one.laterId,
          lengths(one.growthMm, units),
          one.frontMm ? lengths(one.frontMm, units) : '–',
          w.change.verdicts[one.verdict],
          wall(one.wallThenMm, one.earlier.residualWallAtLeast),
          wall(one.wallNowMm, one.later.residualWallAtLeast),
          one.wallDifferenceMm ? lengths(one.wallDifferenceMm, units) : '–',
        ];
      }),
    ),
  ];
  if (found.unmatched.length > 0) {
    blocks.push({
      kind: 'paragraph',
      text: `${w.change.unmatched}: ${found.unmatched
        .map(({ visit, id }) => (visit === 'earlier' ? w.change.onlyThen(id) : w.change.onlyNow(id)))
        .join(' ')}`,
    });
  }
  for (const one of found.drillings) {
    blocks.push(
      figure(
        changeTraces(one, { units, width: figureWidth, plotHeight: 60, ...names(context, found) }),
        w.change.caption(one.laterId),
        `change-${one.laterId}`,
        1,
      ),
      { kind: 'paragraph', text: sentences(context, one, found) },
    );
  }
  return blocks;
}

function sentences({ w, units }: Context, one: DrillingChange, found: ChangeAssessment): string {
  const said = w.change.said;
  return [
    frontWords({ w, units }, one, found.years),
    one.chance
      ? said.chances(
          probability(one.chance.outward),
          probability(one.chance.stood),
          probability(one.chance.deeper),
          measure(found.tellingMm, 'lengthMm', units),
        )
      : '',
    said.growth(lengths(one.growthMm, units)),
    one.wallDifferenceMm
      ? said.wall(
          lengths(one.wallThenMm, units),
          lengths(one.wallNowMm, units),
          lengths(one.wallDifferenceMm, units),
        )
      : '',
    one.alignment.restsOn === 'ring pattern'
      ? said.byRings(
          probability(one.alignment.matchedChance),
          measure(one.alignment.overlapMm, 'lengthMm', units),
        )
      : said.byBark,
  ]
    .filter((text) => text !== '')
    .join(' ');
}

function frontWords(
  { w, units }: Pick<Context, 'w' | 'units'>,
  one: DrillingChange,
  years: number | null,
): string {
  const said = w.change.said;
  if (one.front === 'neither') return said.neither;
  if (one.front === 'only then') return said.onlyThen;
  if (one.front === 'only now')
    return one.verdict === 'moved'
      ? said.onlyNowMoved(measure(Math.max(0, one.frontAtLeastMm ?? 0), 'lengthMm', units))
      : said.onlyNow;
  const front = lengths(one.frontMm!, units);
  if (one.verdict === 'not moved') return said['not moved'](front);
  if (one.verdict !== 'moved') return said['cannot tell'](front);
  const perYear = years === null ? null : one.frontMm!.p50 / years;
  const rate =
    perYear === null
      ? ''
      : units === 'us'
        ? said.rate(`${fixed(perYear / 25.4, 2)}\u00a0${unitOf('lengthMm', units)}`)
        : said.rate(`${fixed(perYear, 1)}\u00a0mm`);
  return said.moved(front, rate);
}

function recorded({ w, units }: Context, found: ChangeAssessment): Block[] {
  if (found.recorded.length === 0) return [];
  const { decimalMark } = language().numbers;
  const value = (text: string | null) =>
    text === null
      ? w.change.notNoted
      : text === 'recorded'
        ? w.change.noted
        : textInUnits(text.replace(/(\d)\.(\d)/g, `$1${decimalMark}$2`), units);
  return [
    heading(2, w.change.recorded, 'change-recorded'),
    { kind: 'paragraph', text: w.change.recordedNote },
    table(
      w.change.recorded,
      w.change.recordedColumns,
      [0.5, 0.25, 0.25],
      found.recorded.map((one) => [recordedName(w, one), value(one.before), value(one.now)]),
    ),
  ];
}

function recordedName(w: Context['w'], { where, what }: RecordedChange): string {
  const known = w.change.recordedNames[where];
  if (known !== undefined) return known;
  const place = /^sections\.(.+)\.(outline|heightM|barkMm|opening)$/.exec(where);
  if (!place) return what;
  const [, id, field] = place as unknown as [string, string, 'outline' | 'heightM' | 'barkMm' | 'opening'];
  return {
    outline: w.change.outlineOf,
    heightM: w.change.heightOf,
    barkMm: w.change.barkOf,
    opening: w.change.openingOf,
  }[field](id);
}
