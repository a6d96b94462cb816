/**
 * What the assessor struck and added. Nothing is ever taken away: what is struck stays legible, struck through and marked;
 * cautions, limits, scope, figures and what carries an interval are printed as they were, with word that they were to be struck.
 */
import type { CaseReport } from '@standfast/casefile';
import type { Block } from './blocks.ts';
import { type Context, longDate } from './context.ts';
import { heading, table } from './make.ts';

/** Chapters that hold cautions, limits, scope, what is signed and what the figures suggest: printed as they are. */
const LASTING = new Set([
  'title',
  'summary',
  'decision',
  'decision-why',
  'decision-risk',
  'safety',
  'felled',
  'scope',
  'notices',
  'limits',
  'sign-off',
  'changes',
  'annex',
  'worked',
]);

/** A middle value with its range, as `1.25 (0.52 to 2.80)` in any language. */
const WITH_RANGE = /\d[^()]*\([^()]*\d[^()]*\d[^()]*\)/;

/** Whether the assessor may strike a block: running text and lists that say no figure with its range. */
export function mayStrike(block: Block): boolean {
  if (block.kind !== 'paragraph' && block.kind !== 'list') return false;
  if (block.lasting === true || LASTING.has((block.key ?? '').split('/')[0]!)) return false;
  return !(block.kind === 'list' ? block.items : [block.text]).some((text) => WITH_RANGE.test(text));
}

/** The blocks with the assessor's changes, and a list of these for the sign-off. */
export function changed(context: Context, blocks: readonly Block[]): Block[] {
  const { struck = [], added = [] }: CaseReport = context.c.report ?? {};
  if (struck.length + added.length === 0) return [...blocks];
  const struckKeys = new Set(struck);
  const keys = new Set(blocks.map(({ key }) => key));
  const additions = (after: string) => added.filter((one) => one.after === after);
  const out: Block[] = [];
  for (const block of blocks) {
    const asked = block.key !== undefined && struckKeys.has(block.key);
    out.push(asked ? { ...block, struck: mayStrike(block) ? 'struck' : 'kept' } : block);
    if (block.key !== undefined) out.push(...additions(block.key).map((one) => addition(context, one)));
  }
  const strays = added.filter(({ after }) => !keys.has(after));
  const at = out.findIndex((block) => block.kind === 'heading' && block.id === 'sign-off');
  out.splice(at < 0 ? out.length : at, 0, ...listOfChanges(context, out, strays));
  return out;
}

type Added = NonNullable<CaseReport['added']>[number];

function addition(context: Context, one: Added): Block {
  return { kind: 'addition', title: byWhom(context, one), paragraphs: paragraphsOf(one.text) };
}

function byWhom({ c, w }: Context, { by, on }: Added): string {
  const name = by ?? c.assessor?.name ?? w.changes.theAssessor;
  return w.changes.added(name, on === undefined ? null : longDate(on, w.months));
}

/** Longest piece of text that is set in one go, characters; a longer paragraph is parted at the end of a sentence. */
const LONGEST = 1200;

export function paragraphsOf(text: string): string[] {
  return text
    .split(/\n+/)
    .map((part) => part.trim())
    .filter((part) => part !== '')
    .flatMap((part) => {
      const pieces: string[] = [];
      let rest = part;
      while (rest.length > LONGEST) {
        const stop = rest.lastIndexOf('. ', LONGEST);
        const at = stop > LONGEST / 3 ? stop + 1 : Math.max(rest.lastIndexOf(' ', LONGEST), LONGEST / 3);
        pieces.push(rest.slice(0, at).trim());
        rest = rest.slice(at).trim();
      }
      return [...pieces, rest];
    });
}

/** The chapter before the sign-off that names every change, so that nothing is changed in silence. */
function listOfChanges(context: Context, blocks: readonly Block[], strays: readonly Added[]): Block[] {
  const { w, c } = context;
  const rows: string[][] = [];
  let chapter = w.title;
  const found = new Set<string>();
  for (const block of blocks) {
    if (block.kind === 'heading') chapter = block.text;
    if (block.kind === 'addition')
      rows.push([w.changes.kinds.added, chapter, `${block.title}: ${excerpt(block.paragraphs.join(' '))}`]);
    if (block.struck === undefined) continue;
    found.add(block.key ?? '');
    rows.push([
      block.struck === 'struck' ? w.changes.kinds.struck : w.changes.kinds.kept,
      chapter,
      excerpt(wordsOf(block)),
    ]);
  }
  for (const key of c.report?.struck ?? [])
    if (!found.has(key)) rows.push([w.changes.kinds.struck, key, w.changes.notFound]);
  for (const one of strays)
    rows.push([w.changes.kinds.added, one.after, `${w.changes.notFound} ${excerpt(one.text)}`]);
  return [
    heading(1, w.changes.heading, 'changes'),
    { kind: 'paragraph', text: w.changes.intro },
    table(w.changes.table, w.changes.columns, [0.2, 0.28, 0.52], rows),
    ...strays.map((one) => addition(context, one)),
  ];
}

/** Begin of a block's text, for lists. */
export function excerpt(text: string, most = 110): string {
  if (text.length <= most) return text;
  const cut = text.slice(0, most);
  return `${cut.slice(0, Math.max(cut.lastIndexOf(' '), most / 2))} …`;
}

/** What a block says, on one line. */
export function wordsOf(block: Block): string {
  switch (block.kind) {
    case 'heading':
    case 'title':
    case 'paragraph':
      return block.text;
    case 'callout':
      return `${block.title}: ${block.text}`;
    case 'list':
      return block.items.join(' ');
    case 'figure':
    case 'table':
      return block.caption;
    case 'keyFigures':
      return block.items.map(({ label, value, interval }) => `${label} ${value} (${interval})`).join('; ');
    case 'definitions':
      return block.items.map(({ term, text }) => `${term}: ${text}`).join(' ');
    case 'signature':
      return block.statement;
    case 'photos':
      return block.items.map(({ caption }) => caption).join(' ');
    case 'addition':
      return block.paragraphs.join(' ');
    case 'pageBreak':
      return '';
  }
}
