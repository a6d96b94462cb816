import {
  CASE_JSON,
  type CaseBag,
  caseText,
  EARLIER_FOLDER,
  openCase,
  parseCase,
  withBagBelow,
} from '@standfast/casefile';
import { bagFromPath, onDisk, writeWhole } from '@standfast/casefile/node';
import { assess, InputFault, yearsBetween } from '@standfast/engine';
import { checkOutput } from '../files/output.ts';
import { look } from '../files/read.ts';
import { printJson } from '../json.ts';
import { changePart } from '../terminal/change.ts';
import { newPage } from '../terminal/page.ts';
import { today } from '../today.ts';

interface Options {
  json?: boolean;
  report?: string;
  units?: 'metric' | 'us';
  seed?: number;
  draws?: number;
}

/**
 * Compares two visits to one tree, each a case of its own; prints what changed and writes the report of the later one
 * with the earlier one inside.
 * @throws InputFault when a case cannot be read or assessed, or the earlier is not before the later
 */
export async function compareCases(earlierPath: string, laterPath: string, options: Options): Promise<void> {
  await look(earlierPath);
  await look(laterPath);
  const earlier = await bagFromPath(earlierPath);
  // A fault of the earlier case is the answer here, not a footnote.
  const { caseFile: before } = openCase(earlier);
  const bag = joined(earlier, before.visitedOn, await bagFromPath(laterPath), laterPath);
  const { caseFile, engineInput, notices } = openCase(bag);
  const years = yearsBetween(before.visitedOn, caseFile.visitedOn);
  if (years !== null && years <= 0) {
    throw new InputFault(
      `its visit of ${before.visitedOn} is not before that of ${laterPath}, ${caseFile.visitedOn}: name the earlier case first, or correct a date`,
      earlierPath,
    );
  }
  if (options.report) await checkOutput(options.report, [earlierPath, laterPath]);
  const assessed = assess(engineInput, { seed: options.seed, draws: options.draws });
  const { change } = assessed;
  if (!change) throw new InputFault('the earlier visit could not be compared', earlierPath);
  if (options.report) {
    const { caseToReport, reportBytes } = await import('../files/report.ts');
    const inside = await caseToReport({ caseFile, bag }, { units: options.units });
    const reported = { ...assessed, notices: [...openCase(inside.bag).notices, ...assessed.notices] };
    const content = await reportBytes('pdf', inside, reported, today());
    await onDisk(options.report, () => writeWhole(options.report!, content));
  }
  if (options.json) {
    printJson({ format: 'standfast-change', version: 1, ...change });
    return;
  }
  const page = newPage();
  page.heading([caseFile.tree.label, caseFile.tree.species].filter(Boolean).join(', '));
  changePart(page, change);
  for (const { severity, where, text } of notices)
    if (severity !== 'note') page.item(`${severity}:`, `${where}: ${text}`);
  if (options.report) {
    page.gap();
    page.text(`Wrote ${options.report}`);
  }
  page.print();
}

/** The later case with the earlier one put inside, as a return visit made in the app has it. */
function joined(earlier: CaseBag, earlierOn: string | undefined, later: CaseBag, laterPath: string): CaseBag {
  const bytes = later.get(CASE_JSON);
  if (!bytes) throw new InputFault('there is no case.json here: open a case folder or its zip', laterPath);
  const { caseFile } = parseCase(bytes, CASE_JSON);
  const folder = `${EARLIER_FOLDER}${earlierOn ?? 'first'}`;
  const own = new Map([...later].filter(([path]) => !path.startsWith(`${folder}/`)));
  own.set(CASE_JSON, new TextEncoder().encode(caseText({ ...caseFile, earlier: folder })));
  return withBagBelow(own, folder, earlier);
}
