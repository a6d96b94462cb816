/** The PDF as others read it: poppler and qpdf, which `npm test` sets up. */
import { execFileSync, spawnSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import {
  type ReportCase,
  reportDocument,
  reportWords,
  sampleAssessment,
  sampleCase,
  toPdf,
  type Units,
} from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';

/** Whole report, whatever the case: what a mail or a court's portal takes without a murmur. */
const SIZE_BUDGET = 1_000_000;

const folder = mkdtempSync(join(tmpdir(), 'report-'));
afterAll(() => rmSync(folder, { recursive: true }));

const attachment = {
  name: 'case.zip',
  bytes: new Uint8Array([80, 75, 5, 6, 0, 255, 254]),
  mime: 'application/zip',
};

async function make(
  name: string,
  count: number,
  units: Units,
  caseFile: ReportCase = sampleCase(),
): Promise<string> {
  const report = reportDocument({
    assessment: sampleAssessment(count),
    caseFile,
    options: { units, generatedOn: '2026-05-02' },
  });
  const path = join(folder, `${name}.pdf`);
  writeFileSync(path, await toPdf(report, { fonts: await loadFonts(), attachments: [attachment] }));
  return path;
}

const run = (tool: string, ...args: string[]) =>
  execFileSync(tool, args, { encoding: 'utf8', maxBuffer: 1 << 26 });
/** The text with its line breaks taken for spaces. */
const textOf = (path: string) => run('pdftotext', '-layout', path, '-').replace(/\s+/g, ' ');

describe('a report of six drillings', () => {
  let path: string;
  let words: string;
  beforeAll(async () => {
    path = await make('six', 6, 'metric');
    words = textOf(path);
  });

  it('is sound in the eyes of qpdf', () => {
    expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
  });

  it('is tagged, titled, dated and version 1.7', () => {
    const info = run('pdfinfo', '-isodates', path);
    expect(info).toMatch(/Tagged:\s+yes/);
    expect(info).toMatch(/PDF version:\s+1\.7/);
    expect(info).toMatch(/Title:\s+Stability assessment by resistance drilling: L-04, Tilia cordata/);
    expect(info).toMatch(/CreationDate:\s+2026-05-02/);
    expect(info).toMatch(/Page size:.*A4/);
  });

  it('has a structure of headings, tables with scoped heads, lists, and figures with words', () => {
    const { stdout: tree, stderr } = spawnSync('pdfinfo', ['-struct-text', path], {
      encoding: 'utf8',
      maxBuffer: 1 << 26,
    });
    expect(stderr).toBe('');
    for (const type of ['H1', 'H2', 'H3', 'P', 'Table', 'TR', 'TH', 'TD', 'L', 'LI', 'Figure', 'Caption'])
      expect(tree).toMatch(new RegExp(`^ *${type}\\b`, 'm'));
    expect(readFileSync(path, 'latin1').match(/\/S \/Figure/g)).not.toBeNull();
    expect(readFileSync(path, 'latin1').match(/\/S \/Figure[\s\S]{0,40}\/Alt/g)!.length).toBe(
      readFileSync(path, 'latin1').match(/\/S \/Figure/g)!.length,
    );
  });

  it('holds the words, in any script', () => {
    for (const said of ['Łukasz Żółć', 'Ångström & Ζωή', 'Gemeinde Aumühle', reportWords.invented])
      expect(words).toContain(said);
    for (const heading of ['Summary', 'Cautions and limits', 'Sign-off']) expect(words).toContain(heading);
    expect(words).toContain('This report is not a guarantee');
    expect(words).toContain('Every drilling wounds the tree');
    expect(words).toMatch(/Page 1 of \d+/);
  });

  it('embeds every font it uses', () => {
    const fonts = run('pdffonts', path).trim().split('\n').slice(2);
    expect(fonts.length).toBeGreaterThanOrEqual(3);
    for (const font of fonts) expect(font).toMatch(/yes\s+yes\s+yes/);
  });

  it('carries the attachment byte for byte', () => {
    const out = join(folder, 'out.zip');
    run('pdfdetach', '-save', '1', '-o', out, path);
    expect(new Uint8Array(readFileSync(out))).toEqual(attachment.bytes);
  });

  it('draws with vectors alone and stays small', () => {
    expect(run('pdfimages', '-list', path).trim().split('\n')).toHaveLength(2);
    expect(readFileSync(path).length).toBeLessThan(SIZE_BUDGET);
  });

  it('gives the same bytes twice', async () => {
    expect(readFileSync(await make('again', 6, 'metric')).equals(readFileSync(path))).toBe(true);
  });

  it('leaves no heading alone at the foot of a page', () => {
    const pages = run('pdftotext', '-layout', path, '-').split('\f');
    for (const page of pages.slice(0, -1)) {
      const lines = page
        .trim()
        .split('\n')
        .filter((l) => l.trim() !== '');
      // The last line is the page's foot; the one before must not be a heading.
      expect(lines.at(-2)).not.toMatch(/^ *\d+(\.\d+)? {2,}[A-Z]/);
    }
  });
});

describe('other reports', () => {
  it.each([
    [0, 'metric'],
    [1, 'us'],
    [12, 'us'],
  ] as const)('%d drillings in %s units', async (count, units) => {
    const path = await make(`n${count}`, count, units);
    expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
    const words = textOf(path);
    expect(words).not.toMatch(/NaN|undefined/);
    expect(run('pdfinfo', path)).toMatch(units === 'us' ? /letter/ : /A4/);
    if (units === 'us') expect(words).toMatch(/\d in\b/);
    expect(readFileSync(path).length).toBeLessThan(SIZE_BUDGET);
  });

  it('bears very long names and notes', async () => {
    const long = 'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft '
      .repeat(4)
      .trim();
    const caseFile: ReportCase = {
      ...sampleCase(),
      client: { name: long },
      notes: `${long}. `.repeat(12),
      tree: { ...sampleCase().tree, label: long },
    };
    const path = await make('long', 2, 'metric', caseFile);
    expect(run('qpdf', '--check', path)).toContain('No syntax or stream encoding errors found');
    expect(textOf(path)).toContain(
      'Donaudampfschifffahrtselektrizitätenhauptbetriebswerkbauunterbeamtengesellschaft',
    );
  });

  it.each([
    ['metric', 'a4', 0],
    ['us', 'letter', 0],
    ['metric', 'letter', 6],
    ['us', 'a4', 6],
  ] as const)(
    'keeps the owner’s summary on one page: %s on %s, letterhead of %i lines',
    async (units, paper, lines) => {
      const report = reportDocument({
        assessment: sampleAssessment(8),
        caseFile: {
          ...sampleCase(),
          report: { units, paper, letterhead: { lines: Array(lines).fill('A line of the firm') } },
        },
        options: { units: 'metric', generatedOn: '2026-05-02', conclusion: 'Retain and reduce. '.repeat(60) },
      });
      const path = join(folder, `owner-${units}-${paper}-${lines}.pdf`);
      writeFileSync(path, await toPdf(report, { fonts: await loadFonts() }));
      const [first = '', second = ''] = run('pdftotext', path, '-')
        .split('\f')
        .map((page) => page.replace(/\s+/g, ' '));
      expect(run('pdfinfo', path)).toMatch(paper === 'a4' ? /A4/ : /letter/);
      expect(first).toContain(reportWords.summary.heading);
      expect(first).toContain(reportWords.summary.again);
      expect(first).toContain(reportWords.summary.terms.ask);
      expect(first).toContain(reportWords.summary.whole);
      expect(second).toContain(`2 ${reportWords.decision.heading}`);
      if (lines > 0) expect(second).toContain('A line of the firm');
    },
  );

  it('refuses a day that is none', async () => {
    const report = reportDocument({
      assessment: sampleAssessment(1),
      caseFile: sampleCase(),
      options: { units: 'metric', generatedOn: 'soon' },
    });
    await expect(toPdf(report, { fonts: await loadFonts() })).rejects.toThrow('generatedOn is soon');
  });
});
