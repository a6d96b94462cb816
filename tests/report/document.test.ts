import { reportDocument, reportWords, sampleAssessment, sampleCase, toHtml } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { describe, expect, it } from 'vitest';

const options = { units: 'metric', generatedOn: '2026-05-02' } as const;
const made = (count = 6) =>
  reportDocument({ assessment: sampleAssessment(count), caseFile: sampleCase(), options });

describe('the report', () => {
  const report = made();
  const heads = report.blocks.flatMap((b) => (b.kind === 'heading' && b.level === 1 ? [b.text] : []));

  it('is read from the owner’s summary to the expert’s annex', () => {
    expect(heads).toEqual([
      'Summary',
      'Decision',
      'Advice',
      'Safety',
      'The section and its safety by direction',
      'The trade’s rules',
      'Drillings',
      'Root flares and anchorage',
      'Wind and load',
      'Wood',
      'What was recorded',
      'Method in plain words',
      'Sources',
      'Cautions and limits',
      'Terms',
      'Sign-off',
      'Annex: what the figures were computed from',
      'The figures worked by hand: wind, moment, stress, safety',
    ]);
  });

  it('numbers figures and tables without a gap', () => {
    for (const kind of ['figure', 'table'] as const) {
      const numbers = report.blocks.flatMap((b) => (b.kind === kind ? [b.number] : []));
      expect(numbers).toEqual(numbers.map((_, i) => i + 1));
    }
  });

  it('prints every capacity and safety factor with its interval', () => {
    const key = report.blocks.find((b) => b.kind === 'keyFigures');
    if (key?.kind !== 'keyFigures') throw new Error('no key figures');
    expect(key.items).toHaveLength(4);
    for (const k of key.items) expect(k.interval).toMatch(/\d.* to .*\d/);
  });

  it('never calls wood plainly sound in a table of zones', () => {
    for (const b of report.blocks)
      if (b.kind === 'table' && b.columns[1]?.title === reportWords.drillings.columns[1])
        for (const row of b.rows) expect(row[1]).not.toMatch(/^sound/);
  });

  it('shows notices with the gravest first, and always the cautions', () => {
    const notices = report.blocks.flatMap((b) =>
      b.kind === 'callout' && b.title.includes(': ') ? [b.severity] : [],
    );
    expect(notices).toEqual(['serious', 'caution', 'note']);
    const text = JSON.stringify(report.blocks);
    for (const caution of reportWords.limits.items) expect(text).toContain(caution);
  });

  it('keeps what the figures suggest beside what the assessor concludes', () => {
    const both = reportDocument({
      assessment: sampleAssessment(),
      caseFile: sampleCase(),
      options: { ...options, conclusion: 'Retain; pull test before October.' },
    });
    const titles = both.blocks.flatMap((b) => (b.kind === 'callout' ? [b.title] : []));
    expect(titles.slice(0, 2)).toEqual([reportWords.summary.suggestedBy, reportWords.summary.assessorSays]);
  });

  it('asks for a static load test when anchorage governs on thin evidence', () => {
    expect(JSON.stringify(report.blocks.slice(0, 8))).toContain(reportWords.advice.thinAnchorage);
  });

  const tableOf = (caption: string) => {
    const found = report.blocks.find((b) => b.kind === 'table' && b.caption === caption);
    if (found?.kind !== 'table') throw new Error(`no table ${caption}`);
    return found;
  };

  it('tells the owner on the first page what to do and by when', () => {
    const firstPage = report.blocks.slice(
      0,
      report.blocks.findIndex((b) => b.kind === 'pageBreak'),
    );
    expect(firstPage).toContain(tableOf(reportWords.summary.table(1)));
    const [fence, pull, again] = tableOf(reportWords.summary.table(1)).rows;
    expect(fence![2]).toBe('at once');
    expect(pull![2]).toMatch(/^by \d+ \w+ \d{4}$/);
    expect(again![0]).toBe(reportWords.summary.again);
    for (const answer of Object.values(reportWords.summary.terms))
      expect(JSON.stringify(firstPage)).toContain(`"term":"${answer}"`);
  });

  it('prints the assessor’s word, the suggested one and the reason', () => {
    const text = JSON.stringify(report.blocks);
    expect(text).toContain('probable by the assessor, in place of possible, which the figures suggest.');
    expect(text).toContain('Reason given: The flare beside the path gave way under the probe.');
    expect(text).toContain('By the suggestions alone it would be moderate.');
    const rows = tableOf(reportWords.decision.riskTable).rows;
    expect(rows[0]).toEqual([
      'footpath, the tree',
      'probable (suggested: possible)',
      'high',
      'likely',
      'severe',
      'high (suggested: moderate)',
    ]);
  });

  it('prints both matrices whole and marks this tree’s cells', () => {
    const first = tableOf(reportWords.decision.first).rows;
    const second = tableOf(reportWords.decision.second).rows;
    expect(first.map((r) => r.length)).toEqual([5, 5, 5, 5]);
    expect(second.map((r) => r.length)).toEqual([5, 5, 5, 5]);
    const marked = [...first, ...second].flat().filter((cell) => cell.startsWith('•'));
    expect(marked.map((cell) => cell.slice(2))).toEqual(['unlikely', 'likely', 'low', 'high']);
  });

  it('prints what an option would change with its range, and leaves the cost to the reader', () => {
    const rows = tableOf(reportWords.options.table).rows;
    const reduce = rows.find((r) => r[0]!.startsWith('Crown reduction'))!;
    expect(reduce[1]).toMatch(/^\d\.\d\d \(\d\.\d\d to \d\.\d\d\) → \d\.\d\d \(\d\.\d\d to \d\.\d\d\)$/);
    expect(reduce.at(-1)).toBe('');
    expect(rows[0]!.at(-1)).toBe('240');
  });

  it('says so when nothing was drilled', () => {
    const none = sampleAssessment(0);
    none.flares = [];
    const bare = reportDocument({ assessment: none, caseFile: { ...sampleCase(), flares: [] }, options });
    expect(JSON.stringify(bare.blocks)).toContain(reportWords.summary.noDrillings);
  });

  it('is made from a case that says almost nothing', () => {
    const bare = {
      format: 'standfast-case' as const,
      version: 1 as const,
      tree: {},
      sections: [],
      flares: [],
      signs: [],
      targets: [],
    };
    const html = toHtml(reportDocument({ assessment: sampleAssessment(1), caseFile: bare, options }));
    expect(html).toContain(reportWords.notRecorded);
    expect(html).not.toMatch(/undefined|NaN/);
  });

  it('gives the same document twice', () => {
    expect(made()).toEqual(made());
  });
});

describe('the HTML file', () => {
  const html = toHtml(made());

  it('stands alone: no scripts, nothing fetched', () => {
    expect(html.match(/<script|<link|src=|@import|url\(http/g) ?? []).toEqual([]);
    expect(html.startsWith('<!doctype html>\n<html lang="en">')).toBe(true);
  });

  it('has one first heading and no level left out', () => {
    const levels = [...html.matchAll(/<h(\d)[ >]/g)].map((m) => Number(m[1]));
    expect(levels.filter((l) => l === 1)).toHaveLength(1);
    levels.slice(1).forEach((l, i) => {
      expect(l - levels[i]!).toBeLessThanOrEqual(1);
    });
  });

  it('gives every id once and every link a target', () => {
    const ids = [...html.matchAll(/ id="([^"]+)"/g)].map((m) => m[1]);
    expect(new Set(ids).size).toBe(ids.length);
    for (const [, target] of html.matchAll(/href="#([^"]+)"/g)) expect(ids).toContain(target);
    for (const [, target] of html.matchAll(/aria-(?:labelledby|describedby)="([^"]+)"/g))
      expect(ids).toContain(target);
  });

  it('closes what it opens', () => {
    const open: string[] = [];
    for (const [, close, tag, self] of html
      .replace(/<style>.*?<\/style>/s, '')
      .matchAll(/<(\/?)([a-zA-Z][a-zA-Z0-9]*)[^>]*?(\/?)>/g)) {
      if (self === '/' || tag === 'meta') continue;
      if (close === '/') expect(open.pop()).toBe(tag);
      else open.push(tag!);
    }
    expect(open).toEqual([]);
  });

  it('scopes the headings of tables and names every figure', () => {
    expect(html.match(/<th(?=[ >])(?![^>]*scope=)[^>]*>/g) ?? []).toEqual([]);
    const figures = html.match(/<figure/g)!.length;
    expect(html.match(/<figcaption>/g)).toHaveLength(figures);
    expect(html.match(/<svg[^>]*role="img"/g)).toHaveLength(figures);
  });

  it('escapes what people write', () => {
    const caseFile = { ...sampleCase(), client: { name: '<b>"Smith" & Sons</b>' } };
    const page = toHtml(reportDocument({ assessment: sampleAssessment(1), caseFile, options }));
    expect(page).not.toContain('<b>"Smith"');
    expect(page).toContain('&lt;b&gt;&quot;Smith&quot; &amp; Sons&lt;/b&gt;');
  });

  it('stays small, with its fonts inside', async () => {
    const withFonts = toHtml(made(), { fonts: await loadFonts() });
    expect(withFonts.match(/@font-face/g)).toHaveLength(3);
    expect(withFonts.length).toBeLessThan(1_000_000);
  });
});
