import { BAG_LIMITS } from '@standfast/casefile';
import { readTraces, type TraceReading } from '@standfast/engine';
import { readInput } from '../files/read.ts';
import { traceOf } from '../files/trace.ts';
import { printJson } from '../json.ts';
import { fixed, percent, withInterval } from '../terminal/numbers.ts';
import { newPage } from '../terminal/page.ts';
import { legend, traceDrawing } from '../terminal/trace-drawing.ts';

interface Options {
  json?: boolean;
  bark?: number;
  exit?: number;
  drilling?: string;
}

/**
 * Reads one trace and prints its zones.
 * @throws InputFault when the table cannot be read or its trace makes no sense
 */
export async function zones(file: string, options: Options): Promise<void> {
  const bytes = await readInput(file, 'a trace table', BAG_LIMITS.maxFileBytes);
  const trace = await traceOf(bytes, file, options.drilling);
  const [reading] = readTraces([{ id: file, trace, barkMm: options.bark, exitMm: options.exit }]);
  if (options.json) {
    printJson(zonesDocument(reading!));
    return;
  }

  const page = newPage();
  const { terminal } = page;
  const count = trace.depthMm.length;
  page.heading(file);
  page.text(
    `${count.toLocaleString('en')} readings, ${fixed(trace.depthMm[0]!, 1)} to ${fixed(trace.depthMm[count - 1]!, 1)} mm`,
    'quiet',
  );
  page.gap();
  page.lines(traceDrawing(trace, reading!.zones, terminal));
  page.gap();
  page.lines([legend(reading!.zones, terminal)]);
  page.gap();
  page.table(
    [
      { head: 'zone', align: 'left' },
      { head: 'from mm', align: 'right' },
      { head: 'to mm', align: 'right' },
      { head: 'length mm', align: 'right' },
      { head: 'confidence', align: 'right' },
    ],
    reading!.zones.map(({ kind, fromMm, toMm, confidence }) => [
      kind,
      fixed(fromMm, 1),
      fixed(toMm, 1),
      fixed(toMm - fromMm, 1),
      percent(confidence),
    ]),
  );
  page.gap();
  page.text(wallSentence(reading!));
  for (const warning of reading!.warnings) page.item('!', warning);
  page.print();
}

/** The document of `zones --json`: the two agreed keys first. */
function zonesDocument(reading: TraceReading): Record<string, unknown> {
  return {
    zones: reading.zones.map(({ kind, fromMm, toMm, confidence }) => ({ kind, fromMm, toMm, confidence })),
    residualWallMm: reading.residualWallMm,
    residualWallIntervalMm: reading.residualWallInterval,
    residualWallAtLeast: reading.residualWallAtLeast,
    barkFromMm: reading.barkFromMm,
    woodFromMm: reading.woodFromMm,
    reference: reading.reference,
    warnings: reading.warnings,
  };
}

/** The residual wall in words, with its interval. */
function wallSentence(reading: TraceReading): string {
  const interval = withInterval(reading.residualWallInterval, 0);
  return reading.residualWallAtLeast
    ? `Residual wall: at least ${interval} mm along the needle; it met no unsound wood.`
    : `Residual wall: ${interval} mm along the needle, from the cambium to the first unsound wood.`;
}
