/** The felled section and the plan of first drillings in the report, from the demonstration's real assessment. */
import { type CaseFile, openCase, saveCase } from '@standfast/casefile';
import { demoBag } from '@standfast/casefile/node';
import { type Assessment, assess, readTraces, type TraceReading, type TraceToRead } from '@standfast/engine';
import { reportDocument, reportWords, type Scene, sectionFigure, toHtml, toSvg } from '@standfast/report';
import { beforeAll, describe, expect, it } from 'vitest';
import { FELLED_DEMO } from '../simulated/demo/felledDemo.ts';

const options = { units: 'metric', generatedOn: '2026-07-02' } as const;

/** The demonstration's traces are the same each time: read once. */
let readings: TraceReading[] | undefined;
function read(traces: TraceToRead[]): TraceReading[] {
  readings ??= readTraces(traces);
  const all = readings;
  return all.slice(all.length - traces.length);
}

async function assessedDemo(change: (section: CaseFile['sections'][number]) => CaseFile['sections'][number]) {
  const bag = await demoBag();
  const { caseFile } = openCase(bag);
  const changed = { ...caseFile, sections: caseFile.sections.map(change) };
  const opened = openCase(saveCase(changed, bag));
  return { caseFile: opened.caseFile, assessment: assess(opened.engineInput, { draws: 200, read }) };
}

const reportOf = (made: { caseFile: CaseFile; assessment: Assessment }) =>
  reportDocument({ ...made, options });
const headsOf = (report: ReturnType<typeof reportDocument>) =>
  report.blocks.flatMap((b) => (b.kind === 'heading' && b.level === 1 ? [b.text] : []));

describe('a felled section', () => {
  let made: Awaited<ReturnType<typeof assessedDemo>>;
  beforeAll(async () => {
    made = await assessedDemo((section) => ({ ...section, felled: FELLED_DEMO.felled }));
  }, 60_000);

  it('stands in a part of its own, after the drillings', () => {
    const heads = headsOf(reportOf(made));
    expect(heads.indexOf(reportWords.felled.heading)).toBe(heads.indexOf(reportWords.drillings.heading) + 1);
  });

  // Whether it was is the engine's to say; here both answers are put to the page.
  it('says for each figure whether the truth was inside, with its range', () => {
    const right = structuredClone(made);
    right.assessment.sections[0]!.felled!.weakest.inside = true;
    right.assessment.sections[0]!.felled!.weakestInTruth.inside = true;
    const blocks = reportOf(right).blocks;
    const verdict = blocks.find((b) => b.kind === 'callout' && b.title === reportWords.felled.verdict('s1'));
    if (verdict?.kind !== 'callout') throw new Error('no verdict');
    expect(verdict.severity).toBe('note');
    expect(verdict.text).toMatch(
      /predicted lowest towards .*% \(\d+.% to \d+.%\); in truth .*inside the range/,
    );
    const table = blocks.find((b) => b.kind === 'table' && b.caption === reportWords.felled.table('s1'));
    if (table?.kind !== 'table') throw new Error('no table');
    expect(table.rows).toHaveLength(12);
    expect(JSON.stringify(blocks)).toContain('Incipient wood is counted at 45');
  });

  it('raises its voice when the truth was outside', () => {
    const wrong = structuredClone(made);
    wrong.assessment.sections[0]!.felled!.weakest.inside = false;
    const verdict = reportOf(wrong).blocks.find(
      (b) => b.kind === 'callout' && b.title === reportWords.felled.verdict('s1'),
    );
    expect(verdict).toMatchObject({
      severity: 'serious',
      text: expect.stringContaining('outside the range'),
    });
  });

  it('draws the tracing over the prediction, with a legend and words', () => {
    const section = made.assessment.sections[0]!;
    const traced = sectionFigure({ section, felled: section.felled }, { width: 420, units: 'metric' });
    const plain = sectionFigure({ section }, { width: 420, units: 'metric' });
    const groups = (scene: Scene) => scene.items.filter(({ part }) => part === 'traced');
    expect(groups(plain)).toEqual([]);
    const [group] = groups(traced);
    if (group?.kind !== 'group') throw new Error('nothing traced');
    // One ring of each kind, each on a ground of paper; the outline was not measured anew.
    expect(group.items).toHaveLength(4);
    const remeasured = {
      ...section.felled!,
      outlineMm: section.outlineMm.map(([x, y]): [number, number] => [x + 9, y]),
    };
    const [anew] = groups(sectionFigure({ section, felled: remeasured }, { width: 420, units: 'metric' }));
    expect(anew?.kind === 'group' && anew.items).toHaveLength(5);
    expect(traced.description).toMatch(/in truth \d+ % of the wood is sound/);
    const svg = toSvg(traced);
    expect(svg).toContain('traced: no strength');
    expect(svg).toContain('traced: incipient');
    expect(svg).not.toMatch(/NaN|undefined/);
  });

  it('is left out of a report on a standing tree', async () => {
    const standing = await assessedDemo((section) => section);
    expect(headsOf(reportOf(standing))).not.toContain(reportWords.felled.heading);
  });
});

describe('where to begin', () => {
  it('is a table in the order of work at a section without drillings', async () => {
    const made = await assessedDemo((section) => ({ ...section, drillings: [] }));
    const report = reportOf(made);
    const table = report.blocks.find(
      (b) => b.kind === 'table' && b.caption === reportWords.begin.table('s1'),
    );
    if (table?.kind !== 'table') throw new Error('no table');
    const [plan] = made.assessment.firstDrillings!;
    expect(table.rows.map(([order]) => order)).toEqual(plan!.drillings.map(({ order }) => String(order)));
    // The flares of the demonstration are drilled already.
    expect(table.rows.every(([, at]) => at === 'section s1')).toBe(true);
    const html = toHtml(report);
    expect(html).not.toMatch(/undefined|NaN/);
    for (const { source } of plan!.rules) expect(html).toContain(source);
  });
});
