import { type Verification, verifyReport } from '@standfast/report';
import { loadFonts } from '@standfast/report/node';
import { readInput } from '../files/read.ts';
import { printJson } from '../json.ts';
import { INPUT_AT_FAULT } from '../outcome.ts';
import { newPage } from '../terminal/page.ts';

/** Larger than any report with its photos. */
const LIMIT_BYTES = 1e9;
/** Differences shown of each kind; `--json` has them all. */
const SHOWN = 12;

/**
 * Recomputes a report from the case inside it and says which figures stand.
 * @returns exit status: 0 it stands, 1 it does not
 * @throws InputFault when it is not a report that carries its case
 */
export async function verify(file: string, options: { json?: boolean }): Promise<number> {
  const bytes = await readInput(file, 'a report (PDF or HTML)', LIMIT_BYTES);
  const found = await verifyReport(bytes, file, { fonts: await loadFonts(import.meta.url) });
  if (options.json) printJson({ format: 'standfast-verification', version: 1, ...found });
  else print(file, found);
  return found.stands ? 0 : INPUT_AT_FAULT;
}

function print(file: string, found: Verification): void {
  const page = newPage();
  page.text(found.stands ? `${file} stands.` : `${file} does NOT stand.`, 'strong');
  page.text(
    `Made by engine ${found.madeBy}, recomputed by engine ${found.recomputedBy} from the case inside, with seed ${found.seed} and ${found.draws} draws.`,
  );
  if (found.madeBy !== found.recomputedBy)
    page.text('The engines differ: figures may differ for that alone. Verify with the version that made it.');
  const { figures, pages } = found;
  page.heading(`Figures: ${figures.compared - figures.differing.length} of ${figures.compared} stand`);
  for (const { where, inReport, recomputed } of figures.differing.slice(0, SHOWN))
    page.item('-', `${where}: ${inReport} in the report, ${recomputed} recomputed`);
  more(figures.differing.length);
  const [many, one] = found.kind === 'pdf' ? ['Pages', 'page'] : ['Parts', 'part'];
  page.heading(`${many}: ${pages.compared - pages.differing.length} of ${pages.compared} stand`);
  for (const unlike of pages.differing.slice(0, SHOWN)) {
    const lines = (list: string[]) =>
      list
        .slice(0, SHOWN)
        .map((line) => `“${line.trim()}”`)
        .join(', ') || 'nothing';
    page.item(
      '-',
      unlike.inReport.length + unlike.recomputed.length === 0
        ? `${one} ${unlike.page}: its words are the same, but it is drawn otherwise`
        : `${one} ${unlike.page}: ${lines(unlike.inReport)} in the report, ${lines(unlike.recomputed)} recomputed`,
    );
  }
  more(pages.differing.length);
  if (found.others.length > 0) page.gap();
  for (const other of found.others) page.item('-', other);
  page.print();

  function more(count: number): void {
    if (count > SHOWN) page.text(`and ${count - SHOWN} more; --json lists them all`, 'quiet');
  }
}
