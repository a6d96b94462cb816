/** Title, facts and the summary in plain words: what an owner reads. */
import type { DrillingAssessment, SectionAssessment } from '@standfast/engine';
import { wallInWords } from '../../figures/trace.ts';
import { bearing, compassPoint, measure } from '../../units.ts';
import { suggestionOf } from '../advice.ts';
import type { Block } from '../blocks.ts';
import { chanceInWords } from '../chance.ts';
import {
  type Context,
  least,
  longDate,
  measureRange,
  percent,
  probability,
  shareRange,
  withRange,
} from '../context.ts';
import { dueInWords } from '../dueDate.ts';
import { table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { standingInWords } from './decision.ts';

/** Kinds of zone that mean a loss of drilling resistance. */
const LOSS = new Set(['incipient', 'decayed', 'void', 'crack']);

export function metLoss(d: DrillingAssessment): boolean {
  return d.zones.some((z) => LOSS.has(z.kind));
}

export function opening(context: Context): Block[] {
  const { a, c, w, units, options } = context;
  const title = w.title;
  const facts: { term: string; text: string }[] = [];
  const add = (term: string, ...parts: (string | undefined)[]) => {
    const text = parts.filter((p) => p !== undefined && p !== '').join(', ');
    if (text !== '') facts.push({ term, text });
  };
  add(w.facts.client, c.client?.name, c.client?.address);
  add(w.facts.assessor, c.assessor?.name, c.assessor?.credential, c.assessor?.firm);
  add(w.facts.tree, c.tree.label, c.tree.species);
  if (c.tree.stemDiameterMm !== undefined && c.tree.heightM !== undefined)
    add(
      w.facts.size,
      w.facts.size3(
        measure(c.tree.stemDiameterMm, 'lengthMm', units),
        measure(c.tree.heightM, 'heightM', units),
      ),
    );
  add(w.facts.place, c.place?.name, coordinates(c.place?.latitude, c.place?.longitude));
  const inSections = a.sections.reduce((n, s) => n + s.drillings.length, 0);
  const inFlares = a.flares.reduce((n, f) => n + f.drillings.length, 0);
  add(w.facts.drilled, w.facts.drilledCount(a.sections.length, inSections, inFlares));
  add(
    w.facts.instrument,
    c.instrument?.name,
    c.instrument?.serialNumber === undefined ? undefined : w.facts.serial(c.instrument.serialNumber),
    c.instrument?.needleLengthMm === undefined
      ? undefined
      : w.facts.needle(measure(c.instrument.needleLengthMm, 'lengthMm', units)),
    c.instrument?.calibratedOn === undefined
      ? undefined
      : w.facts.calibrated(longDate(c.instrument.calibratedOn, w.months)),
  );
  add(w.facts.weather, c.weather);
  add(w.facts.visited, c.visitedOn === undefined ? undefined : longDate(c.visitedOn, w.months));
  add(w.facts.reported, longDate(options.generatedOn, w.months));
  return [
    {
      kind: 'title',
      text: title,
      subtitle: w.subtitle(c.tree.label ?? '', c.tree.species ?? ''),
      ...(c.invented ? { marker: w.invented } : {}),
    },
    { kind: 'definitions', layout: 'facts', items: facts },
    ...summary(context),
  ];
}

function coordinates(latitude: number | undefined, longitude: number | undefined): string | undefined {
  if (latitude === undefined || longitude === undefined) return undefined;
  const part = (v: number, plus: string, minus: string) =>
    `${Math.abs(v).toFixed(5)}° ${v < 0 ? minus : plus}`;
  return `${part(latitude, 'N', 'S')} ${part(longitude, 'E', 'W')}`;
}

/** The owner's page: what was asked, what was found, how sure that is, what to do and by when. */
function summary(context: Context): Block[] {
  const { a, w, options } = context;
  const suggestion = suggestionOf(context);
  const blocks: Block[] = [
    { kind: 'heading', level: 1, text: w.summary.heading, id: 'summary', number: '' },
    {
      kind: 'callout',
      severity: suggestion.severity,
      title: w.summary.suggestedBy,
      text: `${suggestion.text} ${w.summary.suggestion}`,
    },
  ];
  if (options.conclusion)
    blocks.push({
      kind: 'callout',
      severity: 'note',
      title: w.summary.assessorSays,
      text: options.conclusion,
    });
  blocks.push(
    { kind: 'keyFigures', items: keyFigures(context) },
    { kind: 'definitions', layout: 'list', items: answers(context) },
    whatToDo(context),
  );
  const further = a.advice.options.filter(({ priority }) => priority === 'possible').length;
  blocks.push({
    kind: 'paragraph',
    tone: 'small',
    text: [further > 0 ? w.summary.more(further) : '', w.summary.read].filter((s) => s !== '').join(' '),
  });
  blocks.push({ kind: 'pageBreak' });
  return blocks;
}

function answers(context: Context): { term: string; text: string }[] {
  const { a, c, w, units } = context;
  const { terms } = w.summary;
  const tree =
    [c.tree.species, c.tree.label].filter((s) => s !== undefined && s !== '').join(' ') ||
    w.facts.tree.toLowerCase();
  const { governing } = a.safety;
  const d = a.decision;
  const joined = (...parts: string[]) => parts.filter((s) => s !== '').join(' ');
  const worst = d.targets.find(({ target, part }) => target === d.overall.target && part === d.overall.part);
  const breakage = sentence(least(a.safety.breakage), (l) =>
    w.summary.breakage(withRange(l, 2), bearing(l.directionDeg)),
  );
  const uprooting = sentence(least(a.safety.uprooting), (l) =>
    w.summary.uprooting(withRange(l, 2), bearing(l.directionDeg)),
  );
  const signs = c.signs.map((s) => (s.where === undefined ? s.kind : `${s.kind} (${s.where})`)).join('; ');
  return [
    {
      term: terms.asked,
      text: joined(
        c.client?.name ? w.summary.asked(c.client.name, tree) : w.summary.askedNoClient(tree),
        c.purpose ? w.summary.purpose(c.purpose) : '',
      ),
    },
    {
      term: terms.found,
      text: joined(found(context), strength(context), signs === '' ? '' : w.summary.signs(signs)),
    },
    {
      term: terms.wind,
      text: joined(
        w.summary.wind(
          a.wind.windCode,
          measure(a.wind.gustMs, 'speedMs', units),
          measureRange({ ...a.wind.momentIntervalNm, p50: a.wind.momentNm }, 'momentNm', units),
        ),
        [breakage, uprooting].filter((s) => s !== '').join('; '),
        w.summary.criticalGust(
          w.modes[governing.mode],
          measureRange(a.safety.criticalGustMs[governing.mode], 'speedMs', units),
        ),
      ),
    },
    {
      term: terms.sure,
      text: joined(
        w.summary.howSure(
          w.modes[governing.mode],
          chanceInWords(a.safety.chanceBelow1, w.chance),
          chanceInWords(a.safety.chanceBelow1_5, w.chance),
        ),
        a.safety.anchorageTooThin ? w.summary.thin : '',
      ),
    },
    {
      term: terms.risk,
      text: joined(
        w.summary.likelihood(
          w.decision.years(d.timeFrameYears),
          standingInWords(context, d.likelihoodOfFailure),
        ),
        d.overall.risk === null || worst === undefined
          ? w.decision.noTargets
          : w.summary.overall(
              d.overall.risk,
              worst.target,
              w.decision.part[worst.part],
              w.summary.riskWords(worst.likelihoodOfImpact.taken, worst.consequences.taken),
            ),
        d.overall.suggestedRisk === null || d.overall.suggestedRisk === d.overall.risk
          ? ''
          : w.decision.bySuggestion(d.overall.suggestedRisk),
      ),
    },
  ];
}

/** Rows of the owner's table at most, so that it stays on the first page. */
const MOST_STEPS = 5;

/** What is pressing or was chosen, most pressing first, and the return visit last. */
function whatToDo(context: Context): Block {
  const { a, w, units } = context;
  const { options, reinspection } = a.advice;
  const pressing = options.filter(
    ({ priority, chosen }) => chosen === true || (chosen === null && /^(first|advised)$/.test(priority)),
  );
  const rows = pressing
    .slice(0, MOST_STEPS)
    .map(({ what, why, byMonths, residualRisk }) => [
      textInUnits(what, units),
      textInUnits(why[0] ?? '', units),
      byMonths === null ? '–' : dueInWords(context, byMonths),
      residualRisk ?? '–',
    ]);
  rows.push([w.summary.again, w.summary.againWhy, dueInWords(context, reinspection.months), '–']);
  return table(w.summary.table, w.summary.columns, [0.32, 0.38, 0.19, 0.11], rows);
}

function sentence<T>(value: T | null, say: (value: T) => string): string {
  return value === null ? '' : say(value);
}

function found({ a, w, units }: Context): string {
  const drillings = [...a.sections.flatMap((s) => s.drillings), ...a.flares.flatMap((f) => f.drillings)];
  if (drillings.length === 0) return w.summary.noDrillings;
  const hit = drillings.filter(metLoss);
  if (hit.length === 0) return w.summary.foundNothing(drillings.length);
  const thinnest = a.sections
    .flatMap((s) => s.drillings)
    .filter((d) => metLoss(d) && !d.residualWallAtLeast)
    .reduce<DrillingAssessment | null>(
      (low, d) => (low === null || d.residualWallMm < low.residualWallMm ? d : low),
      null,
    );
  return [
    w.summary.found(hit.length, drillings.length, hit.map((d) => d.id).join(', ')),
    sentence(thinnest, (d) =>
      w.summary.thinnest(wallInWords(d, units).replace(/^\D+/, ''), d.id, compassPoint(d.azimuthDeg)),
    ),
  ]
    .filter((s) => s !== '')
    .join(' ');
}

/** The section with the least strength remaining, and that strength. */
export function weakest({
  a,
}: Context): { section: SectionAssessment; at: NonNullable<ReturnType<typeof least>> } | null {
  let found: { section: SectionAssessment; at: NonNullable<ReturnType<typeof least>> } | null = null;
  for (const section of a.sections) {
    const at = least(section.remaining);
    if (at !== null && (found === null || at.p50 < found.at.p50)) found = { section, at };
  }
  return found;
}

function strength(context: Context): string {
  const { w, units } = context;
  return sentence(weakest(context), ({ section, at }) =>
    w.summary.strength(measure(section.heightM, 'heightM', units), shareRange(at), bearing(at.directionDeg)),
  );
}

function keyFigures(context: Context) {
  const { a, w } = context;
  const k = w.safety.key;
  const range = (low: string, high: string) => `${low} ${k.to} ${high}`;
  const fig = (label: string, value: string, interval: string, note: string) => ({
    label,
    value,
    interval,
    note,
  });
  const items = [];
  const weak = weakest(context);
  if (weak)
    items.push(
      fig(
        k.strength,
        percent(weak.at.p50),
        range(percent(weak.at.p05), percent(weak.at.p95)),
        k.towards(bearing(weak.at.directionDeg)),
      ),
    );
  const two = (v: number) => v.toFixed(2);
  const b = least(a.safety.breakage);
  if (b)
    items.push(
      fig(k.breakage, two(b.p50), range(two(b.p05), two(b.p95)), k.towards(bearing(b.directionDeg))),
    );
  const u = least(a.safety.uprooting);
  if (u)
    items.push(
      fig(k.uprooting, two(u.p50), range(two(u.p05), two(u.p95)), k.towards(bearing(u.directionDeg))),
    );
  const { chance, timeFrameYears } = a.decision;
  items.push(
    fig(
      k.chance(w.decision.years(timeFrameYears)),
      probability(chance.inTimeFrame.mean),
      range(probability(chance.inTimeFrame.p05), probability(chance.inTimeFrame.p95)),
      k.chanceNote(probability(chance.evenInTimeFrame)),
    ),
  );
  return items;
}
