/** Title, facts and the summary in plain words: what an owner reads. */
import type { DrillingAssessment, SectionAssessment } from '@standfast/engine';
import { wallInWords } from '../../figures/trace.ts';
import { bearing, compassPoint, fixed, measure } from '../../units.ts';
import { term } from '../../words/spoken.ts';
import { suggestionOf } from '../advice.ts';
import type { Block } from '../blocks.ts';
import { chanceInWords } from '../chance.ts';
import { excerpt } from '../changes.ts';
import { type Context, least, longDate, percent, probability } from '../context.ts';
import { dueInWords } from '../dueDate.ts';
import { table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { dueOf, shortName } from './advice.ts';
import { signatureOf } from './closing.ts';
import { standingInWords } from './decision.ts';

/** Kinds of zone that mean a loss of drilling resistance. */
const LOSS = new Set(['incipient', 'decayed', 'void', 'crack']);

export function metLoss(d: DrillingAssessment): boolean {
  return d.zones.some((z) => LOSS.has(z.kind));
}

export function opening(context: Context): Block[] {
  const { a, c, w, options } = context;
  const title = w.title;
  const facts: { term: string; text: string }[] = [];
  const add = (term: string, ...parts: (string | undefined)[]) => {
    const text = parts.filter((p) => p !== undefined && p !== '').join(', ');
    if (text !== '') facts.push({ term, text });
  };
  add(w.facts.client, c.client?.name);
  add(w.facts.assessor, c.assessor?.name, c.assessor?.credential);
  add(w.facts.place, c.place?.name);
  const inSections = a.sections.reduce((n, s) => n + s.drillings.length, 0);
  const inFlares = a.flares.reduce((n, f) => n + f.drillings.length, 0);
  add(w.facts.drilled, w.facts.drilledCount(a.sections.length, inSections, inFlares));
  add(w.facts.visited, c.visitedOn === undefined ? undefined : longDate(c.visitedOn, w.months));
  const signed = signatureOf(context);
  const made = longDate(options.generatedOn, w.months);
  add(w.facts.reported, signed === null || signed.alarm ? w.signOff.reported(made) : made);
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

/** Letters of the assessor's conclusion on the owner's page at most; a longer one stands whole under Decision. */
export const LONGEST_CONCLUSION = 420;

/** The owner's page: what was asked, what was found, how sure that is, what to do and by when. */
function summary(context: Context): Block[] {
  const { w, options } = context;
  const suggestion = suggestionOf(context);
  const blocks: Block[] = [
    { kind: 'heading', level: 1, text: w.summary.heading, id: 'summary', number: '' },
    {
      kind: 'callout',
      severity: suggestion.severity,
      title: w.summary.suggestedBy,
      text: suggestion.text,
    },
  ];
  if (options.conclusion)
    blocks.push({
      kind: 'callout',
      severity: 'note',
      title: w.summary.assessorSays,
      text:
        options.conclusion.length > LONGEST_CONCLUSION
          ? `${excerpt(options.conclusion, LONGEST_CONCLUSION)} ${w.summary.whole}`
          : options.conclusion,
    });
  blocks.push(
    { kind: 'keyFigures', items: keyFigures(context) },
    { kind: 'definitions', layout: 'answers', items: answers(context) },
    whatToDo(context),
  );
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
  const signs = [...new Set(c.signs.map(({ kind }) => term('sign', kind)))].join(', ');
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
      text: joined(found(context), signs === '' ? '' : w.summary.signs(signs)),
    },
    {
      term: terms.sure,
      text: joined(
        w.summary.howSure(
          w.summary.wind(a.wind.windCode, measure(a.wind.gustMs, 'speedMs', units)),
          w.modes[governing.mode],
          chanceInWords(a.safety.chanceBelow1, w.chance),
          chanceInWords(a.safety.chanceBelow1_5, w.chance),
        ),
        a.safety.anchorageTooThin ? w.summary.thin : '',
        w.summary.cautions,
      ),
    },
    {
      term: terms.risk,
      text: joined(
        w.summary.likelihood(
          w.decision.years(d.timeFrameYears),
          standingInWords(context, d.likelihoodOfFailure, 'failure'),
        ),
        d.overall.risk === null || worst === undefined
          ? w.decision.noTargets
          : w.summary.overall(term('risk', d.overall.risk), worst.target, w.decision.part[worst.part]),
        d.overall.suggestedRisk === null || d.overall.suggestedRisk === d.overall.risk
          ? ''
          : w.decision.bySuggestion(term('risk', d.overall.suggestedRisk)),
      ),
    },
    {
      term: terms.ask,
      text: w.summary.ask(joinedBy(c.assessor?.name, c.assessor?.firm) || w.summary.askNobody),
    },
  ];
}

const joinedBy = (...parts: (string | undefined)[]) =>
  parts.filter((part) => part !== undefined && part !== '').join(', ');

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
    .map((option) => [
      textInUnits(shortName(option.what), units),
      textInUnits(option.why[0] ?? '', units),
      dueOf(context, option) || '–',
      option.residualRisk === null ? '–' : term('risk', option.residualRisk),
    ]);
  rows.push([w.summary.again, w.summary.againWhy, dueInWords(context, reinspection.months), '–']);
  const further = options.filter(({ priority }) => priority === 'possible').length;
  return table(w.summary.table(further), w.summary.columns, [0.27, 0.41, 0.2, 0.12], rows);
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
  const two = (v: number) => fixed(v, 2);
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
