import { createHash } from 'node:crypto';
import path from 'node:path';
import { shareRead, stripNotes, unsureStretches, writeStripTable } from '@standfast/casefile';
import { onDisk, writeWhole } from '@standfast/casefile/node';
import {
  type ChartKnown,
  type ChartSettled,
  chartKnownFrom,
  ENGINE_VERSION,
  InputFault,
  readStrip,
  type StripLine,
  type StripProvenance,
  type StripReading,
  settleChart,
} from '@standfast/engine';
import { checkOutput } from '../files/output.ts';
import { readInput, readJson } from '../files/read.ts';
import { printJson } from '../json.ts';
import { INPUT_AT_FAULT, UsageFault } from '../outcome.ts';
import { withLine } from '../strip/overlay.ts';
import { decodePhoto, encodePng } from '../strip/photo.ts';
import { fixed, percent } from '../terminal/numbers.ts';
import { newPage } from '../terminal/page.ts';

interface Options {
  chart?: string;
  csv?: string;
  overlay?: string;
  json?: boolean;
  /** Which of the lines found, from 1. */
  line?: number;
}

const PHOTO_LIMIT_BYTES = 400e6;
const CHART_LIMIT_BYTES = 1e6;

/**
 * Reads a photographed paper strip into a trace.
 * @returns 1 when the chart was found but its scale is not known: then only what was found is printed
 * @throws InputFault when the photo or the chart file cannot be read, or no line is found
 */
export async function strip(file: string, options: Options): Promise<number | undefined> {
  const { csv, overlay } = options;
  if (csv && overlay && path.resolve(csv) === path.resolve(overlay)) {
    throw new UsageFault('--csv and --overlay name the same file; give each its own.');
  }
  const inputs = [file, ...(options.chart ? [options.chart] : [])];
  const bytes = await readInput(file, 'a photo of a strip', PHOTO_LIMIT_BYTES);
  const chartFile = options.chart ?? '--chart';
  const known: ChartKnown = options.chart
    ? chartKnownFrom(await readJson(options.chart, 'a chart', CHART_LIMIT_BYTES), options.chart)
    : {};
  for (const output of [csv, overlay]) if (output) await checkOutput(output, inputs);
  const photo = await decodePhoto(bytes, file);
  const sha256 = createHash('sha256').update(bytes).digest('hex');

  const settled = settleChart(photo, known, { photo: file, chart: chartFile });
  if (!settled.chart) return scaleMissing(file, sha256, settled, options);
  const reading = readStrip(photo, settled.chart, { ...settled, where: file });
  const wanted = options.line ?? 1;
  const line = reading.lines[wanted - 1];
  if (!line) {
    throw new InputFault(
      `there is no line ${wanted} on this chart: ${reading.lines.length === 1 ? 'one was' : `${reading.lines.length} were`} found`,
      file,
    );
  }

  // Everything is made before anything is written.
  const outputs: { file: string; content: Uint8Array }[] = [];
  if (csv) outputs.push({ file: csv, content: writeStripTable(line, origin(file, sha256, reading, line)) });
  if (overlay)
    outputs.push({ file: overlay, content: await encodePng(withLine(photo, line, reading.provenance)) });
  for (const { file: output, content } of outputs) await onDisk(output, () => writeWhole(output, content));

  if (options.json) printJson(stripDocument(file, sha256, reading, wanted));
  else
    printReading(
      file,
      sha256,
      reading,
      wanted,
      outputs.map((output) => output.file),
    );
  return undefined;
}

/** The document of `strip --json`. */
function stripDocument(
  file: string,
  sha256: string,
  { lines, provenance, warnings }: StripReading,
  wanted: number,
): Record<string, unknown> {
  const line = lines[wanted - 1]!;
  return {
    format: 'standfast-strip',
    version: 1,
    photo: { name: path.basename(file), sha256, sizePx: provenance.photoSizePx },
    chart: {
      cornersPx: provenance.cornersPx,
      from: provenance.cornersFrom,
      sure: provenance.cornersSure,
      depthMm: provenance.depthMm,
      resistance: provenance.resistance,
      scaleFrom: provenance.scaleFrom,
    },
    lines: lines.map((each, i) => ({ line: i + 1, ...lineSummary(each) })),
    trace: {
      line: wanted,
      depthMm: line.depthMm,
      resistance: line.resistancePct,
      confidence: line.confidence,
      top: line.topPct,
      bottom: line.bottomPct,
    },
    gapsMm: line.gapsMm,
    curlPx: provenance.curlPx,
    printedLines: { upright: provenance.gridLines[0], level: provenance.gridLines[1] },
    steps: provenance.steps,
    warnings,
  };
}

function lineSummary(line: StripLine): Record<string, unknown> {
  return {
    samples: line.depthMm.length,
    fromMm: line.depthMm[0],
    toMm: line.depthMm.at(-1),
    coverage: line.coverage,
    sure: line.sure,
    penColour: line.penColour,
    penWidthPx: line.penWidthPx,
  };
}

function printReading(
  file: string,
  sha256: string,
  reading: StripReading,
  wanted: number,
  written: string[],
): void {
  const { lines, provenance, warnings } = reading;
  const page = newPage();
  page.heading(file);
  const corners = provenance.cornersPx.map(([x, y]) => `(${fixed(x, 1)}, ${fixed(y, 1)})`).join(' ');
  page.text(
    provenance.cornersFrom === 'given'
      ? `Chart between the corners given, ${corners}.`
      : `Chart found by its ${provenance.cornersFrom}, sure to ${percent(provenance.cornersSure)}: corners ${corners}.`,
  );
  page.text(scaleWords(provenance));
  page.text(`Photo sha256 ${sha256}`, 'quiet');
  page.gap();
  page.table(
    [
      { head: 'line', align: 'left' },
      { head: 'samples', align: 'right' },
      { head: 'from mm', align: 'right' },
      { head: 'to mm', align: 'right' },
      { head: 'read', align: 'right' },
      { head: 'confidence', align: 'right' },
      { head: '', align: 'left' },
    ],
    lines.map((line, i) => [
      String(i + 1),
      line.depthMm.length.toLocaleString('en'),
      fixed(line.depthMm[0]!, 1),
      fixed(line.depthMm.at(-1)!, 1),
      percent(line.coverage),
      percent(line.sure),
      i + 1 === wanted ? 'taken' : '',
    ]),
  );
  page.gap();
  for (const warning of warnings) page.item('!', warning);
  if (lines.length > 1) page.item('!', 'Another line is taken with --line and its number.');
  for (const output of written) page.text(`Wrote ${output}`);
  if (!written.length)
    page.text('Nothing was written: give --csv for the trace, --overlay to check it by eye.', 'quiet');
  page.print();
}

const SCALE_FROM: Record<StripProvenance['scaleFrom'], string> = {
  given: 'as given',
  taps: 'by two points of known depth',
  ruler: 'by two points a known distance apart',
  'printed numbers': 'by the numbers printed on it',
};

function scaleWords({
  depthMm: [left, right],
  resistance: [bottom, top],
  scaleFrom,
}: StripProvenance): string {
  return `Scale ${SCALE_FROM[scaleFrom]}: depth ${fixed(left, 1)} mm at its left edge to ${fixed(right, 1)} mm at its right, resistance ${fixed(bottom, 0)} % at its bottom to ${fixed(top, 0)} % at its top.`;
}

/** How the trace came about, as comments of its table. */
function origin(file: string, sha256: string, { provenance }: StripReading, line: StripLine): string[] {
  const { cornersFrom: from, cornersSure: sure } = provenance;
  return stripNotes(
    {
      ...provenance,
      photo: path.basename(file),
      sha256,
      cornersFound: from === 'given' ? null : { from, sure },
      shareRead: shareRead(line.depthMm, line.gapsMm, provenance.depthMm),
      leftOutMm: line.gapsMm,
      unsureMm: unsureStretches(line),
      drawnMm: [],
    },
    provenance.steps,
    ENGINE_VERSION,
  );
}

/** The chart was found, but nothing can be said in mm and percent: what was found is told, and what to give. */
function scaleMissing(
  file: string,
  sha256: string,
  settled: Extract<ChartSettled, { chart: null }>,
  options: Options,
): number {
  const { cornersPx, cornersFound, missing } = settled;
  const corners = cornersPx.map(([x, y]) => [Math.round(10 * x) / 10, Math.round(10 * y) / 10]);
  const wants = {
    depthMm: 'the depths in mm at its left and right edge (or two taps, or a ruler: see --help)',
    resistance: 'the resistance in percent at its bottom and top',
  };
  const template = JSON.stringify({ cornersPx: corners }).slice(1, -1);
  process.stderr.write(
    `standfast: ${file}: ${
      cornersFound
        ? `a chart was found by its ${cornersFound.from}, sure to ${percent(cornersFound.sure)}, but `
        : ''
    }the scale is missing: give ${missing.map((key) => wants[key]).join(' and ')} in a chart file (--chart): {${template}, "depthMm": [left, right], "resistance": [bottom, top]}. No trace was made.\n`,
  );
  if (options.json) {
    printJson({
      format: 'standfast-strip',
      version: 1,
      photo: { name: path.basename(file), sha256 },
      chart: { cornersPx: corners, from: cornersFound?.from ?? 'given', sure: cornersFound?.sure ?? 1 },
      missing,
      trace: null,
    });
  }
  return INPUT_AT_FAULT;
}
