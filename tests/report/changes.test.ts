/** What the assessor strikes and adds: nothing is taken away, and every change is named. */
import { parseCase } from '@standfast/casefile';
import {
  type Block,
  passagesOf,
  type ReportCase,
  reportDocument,
  sampleAssessment,
  sampleCase,
  toHtml,
  reportWords as w,
} from '@standfast/report';
import { describe, expect, it } from 'vitest';

const options = { units: 'metric', generatedOn: '2026-05-02' } as const;
const reportOf = (report?: ReportCase['report'], caseFile = sampleCase()) =>
  reportDocument({
    assessment: sampleAssessment(6),
    caseFile: report === undefined ? caseFile : { ...caseFile, report },
    options,
  });
const plain = reportOf();
const textOf = (block: Block) => JSON.stringify(block);

it('gives every block a key of its own, whatever language and units', () => {
  const keys = (report: ReportCase['report']) => reportOf(report).blocks.flatMap(({ key }) => key ?? []);
  const english = keys({});
  expect(new Set(english).size).toBe(english.length);
  expect(keys({ language: 'fr', units: 'us' })).toEqual(english);
});

it('keeps struck text legible and marked', () => {
  const struck = reportOf({ struck: ['method/paragraph-2'] });
  const before = plain.blocks.find(({ key }) => key === 'method/paragraph-2')!;
  const after = struck.blocks.find(({ key }) => key === 'method/paragraph-2')!;
  expect(after).toEqual({ ...before, struck: 'struck' });
  expect(toHtml(struck)).toContain(`<span class="mark">${w.struck}:</span> <s>`);
});

describe('what cannot be struck', () => {
  const lasting = passagesOf(plain).filter(({ mayStrike }) => !mayStrike);
  const all = reportOf({ struck: passagesOf(plain).map(({ key }) => key) });

  it('is every caution, limit, scope, figure, table and callout', () => {
    for (const { key, kind } of passagesOf(plain))
      if (
        !['paragraph', 'list'].includes(kind) ||
        /^(summary|scope|limits|notices|safety|decision)\b/.test(key)
      )
        expect(lasting.map((one) => one.key)).toContain(key);
  });

  it('is every sentence that gives a figure with its range', () => {
    for (const { key } of passagesOf(plain).filter(({ mayStrike }) => mayStrike)) {
      const block = plain.blocks.find((one) => one.key === key)!;
      expect(textOf(block)).not.toMatch(/\d \(\d[^)]* to \d/);
    }
  });

  it('stays as it was, with word that it was to be struck', () => {
    for (const { key } of lasting) {
      const before = plain.blocks.find((one) => one.key === key)!;
      const after = all.blocks.find((one) => one.key === key)!;
      expect({ ...after, number: 0 }).toEqual({ ...before, struck: 'kept', number: 0 });
    }
    expect(toHtml(all).split(w.kept).length - 1).toBe(lasting.length);
  });

  it('leaves every word of the report in it, whatever is struck', () => {
    const html = toHtml(all);
    for (const caution of w.limits.items) expect(html).toContain(caution);
    for (const paragraph of w.method.paragraphs) expect(html).toContain(`<s>${paragraph}</s>`);
  });
});

it('marks added text with who and when, after the passage', () => {
  const report = reportOf({
    added: [{ after: 'method/paragraph-1', text: 'One.\nTwo.', by: 'Ada', on: '2026-05-01' }],
  });
  const at = report.blocks.findIndex(({ key }) => key === 'method/paragraph-1');
  expect(report.blocks[at + 1]).toEqual({
    kind: 'addition',
    title: 'Added by Ada, 1 May 2026',
    paragraphs: ['One.', 'Two.'],
  });
});

it('lists every change before the sign-off, also one whose passage is no longer there', () => {
  const report = reportOf({
    struck: ['method/paragraph-1', 'limits/list-1', 'gone/paragraph-1'],
    added: [
      { after: 'method/paragraph-2', text: 'Here.' },
      { after: 'gone/list-1', text: 'Stray.' },
    ],
  });
  const list = report.blocks.find((b) => b.kind === 'table' && b.caption === w.changes.table);
  if (list?.kind !== 'table') throw new Error('no list of changes');
  expect(list.rows.map(([kind, chapter]) => [kind, chapter])).toEqual([
    [w.changes.kinds.struck, w.method.heading],
    [w.changes.kinds.added, w.method.heading],
    [w.changes.kinds.kept, w.limits.heading],
    [w.changes.kinds.struck, 'gone/paragraph-1'],
    [w.changes.kinds.added, 'gone/list-1'],
  ]);
  expect(list.rows.at(-1)![2]).toContain('Stray.');
  expect(JSON.stringify(report.blocks).match(/Stray\./g)!.length).toBe(2);
});

describe('the signature', () => {
  const signed = (signature: NonNullable<ReportCase['report']>['signature']) => {
    const block = reportOf({ signature }).blocks.find(({ kind }) => kind === 'signature');
    if (block?.kind !== 'signature') throw new Error('no signature');
    return block.lines.at(-1);
  };

  it.each([[{}], [{ image: 'a.png', name: 'Ada' }], [{ name: 'Ada' }], [{ signedOn: '2026-05-01' }]])(
    '%j is not signed, and says so on the first page too',
    (signature) => {
      expect(signed(signature)).toMatchObject({ value: w.signOff.notSigned, alarm: true });
      expect(textOf(reportOf({ signature }).blocks[1]!)).toContain('not signed');
    },
  );

  it('counts in type with a name and a day', () => {
    const signature = { name: 'Ada', place: 'Larkmere', signedOn: '2026-05-01' };
    expect(signed(signature)).toEqual({ label: w.signOff.signature, value: 'Ada (signed in type)' });
    expect(textOf(reportOf({ signature }).blocks[1]!)).not.toContain('not signed');
    expect(JSON.stringify(reportOf({ signature }).blocks)).toContain('Larkmere, 1 May 2026');
  });

  it('says when its image is missing', () => {
    expect(signed({ image: 'gone.png', signedOn: '2026-05-01' })?.value).toContain('gone.png is missing');
  });
});

it('works the chain from wind to safety with numbers that agree with the assessment', () => {
  const rows = plain.blocks.find((b) => b.kind === 'table' && b.columns[1]?.title === w.worked.columns[1]);
  if (rows?.kind !== 'table') throw new Error('no chain');
  const numbers = new Map(rows.rows.map((row) => [row[0], row[2]!]));
  const a = sampleAssessment(6);
  expect(numbers.get(w.worked.uprooting)).toContain(
    Math.min(...a.safety.uprooting.map((u) => u.p50)).toFixed(2),
  );
  expect(numbers.get(w.worked.wind)).toContain(`${Math.round(a.wind.windMomentNm / 1000)}`);
  for (const row of rows.rows) expect(row.every((cell) => cell !== '')).toBe(true);
  expect(JSON.stringify(rows)).not.toMatch(/NaN|undefined/);
});

it('reads a case that says all this', () => {
  const report = { struck: ['a'], added: [{ after: 'a', text: 'b' }], paper: 'letter' as const };
  const { caseFile } = parseCase({ format: 'standfast-case', version: 1, tree: {}, report });
  expect(reportOf(undefined, { ...sampleCase(), report: caseFile.report }).paper).toBe('letter');
});
