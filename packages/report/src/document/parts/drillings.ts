/** Every drilling: its trace to scale, its reading in words and as a table. */
import type { CaseFile } from '@standfast/casefile';
import type { DrillingAssessment } from '@standfast/engine';
import { commonTopPct, traceFigure } from '../../figures/trace.ts';
import { bearing, fixed, measure, span } from '../../units.ts';
import type { Block } from '../blocks.ts';
import { type Context, probability } from '../context.ts';
import { figure, heading, table } from '../make.ts';
import { whereToBegin } from './begin.ts';
import { metLoss } from './opening.ts';
import { readFromStrip } from './strip.ts';

/** Height of a trace's plot, px: three traces with their readings fill a page of either paper. */
const PLOT_HEIGHT = { a4: 66, letter: 54 };

export function drillings(context: Context): Block[] {
  const { a, w, units } = context;
  const all = [...a.sections.flatMap((s) => s.drillings), ...a.flares.flatMap((f) => f.drillings)];
  const blocks: Block[] = [heading(1, w.drillings.heading, 'drillings')];
  const plan = (id: string) =>
    (a.firstDrillings ?? [])
      .filter(({ sectionId }) => sectionId === id)
      .flatMap((one) => whereToBegin(context, one));
  if (all.length === 0) {
    return [
      ...blocks,
      { kind: 'paragraph', text: w.summary.noDrillings },
      ...a.sections.flatMap(({ id }) => plan(id)),
    ];
  }
  const topPct = commonTopPct(all);
  const longest = chartEndMm(all, units);
  // A level shared by the tree's drillings is said once; one of a trace alone stands beside that trace.
  const shared = all.find((d) => d.reference.restsOn === 'all drillings of the tree');
  blocks.push({
    kind: 'paragraph',
    text: shared ? `${w.drillings.intro} ${referenceInWords(context, shared)}` : w.drillings.intro,
  });
  for (const s of a.sections) {
    blocks.push(
      heading(2, w.drillings.sectionHeading(s.id, measure(s.heightM, 'heightM', units)), `drillings-${s.id}`),
    );
    if (s.drillings.length === 0) blocks.push({ kind: 'paragraph', text: w.drillings.none }, ...plan(s.id));
    else blocks.push(atAGlance(context, s.id, s.drillings));
    const recorded = context.c.sections.find(({ id }) => id === s.id)?.drillings ?? [];
    for (const d of s.drillings) blocks.push(...one(context, d, recorded, topPct, longest));
    if (s.drillings.length > 0) blocks.push(zonesTable(context, w.drillings.ofSection(s.id), s.drillings));
  }
  return blocks;
}

/** Traces and tables of the drillings on flares, for the part on anchorage. */
export function flareDrillings(context: Context): Block[] {
  const { a, w, units } = context;
  const all = [...a.sections.flatMap((s) => s.drillings), ...a.flares.flatMap((f) => f.drillings)];
  if (all.length === 0) return [];
  const longest = chartEndMm(all, units);
  const onFlares = a.flares.flatMap((f) => f.drillings);
  if (onFlares.length === 0) return [];
  const recorded = (flare: string) => context.c.flares.find(({ id }) => id === flare)?.drillings ?? [];
  return [
    ...a.flares.flatMap(({ id, drillings }) =>
      drillings.flatMap((d) => one(context, d, recorded(id), commonTopPct(all), longest)),
    ),
    zonesTable(context, w.drillings.ofFlares, onFlares),
  ];
}

/** Where all traces' charts end, mm: the next round depth after the deepest, so that the print tells its own scale. */
function chartEndMm(all: readonly DrillingAssessment[], units: Context['units']): number {
  const deepest = Math.max(...all.map((d) => d.zones.at(-1)?.toMm ?? 0));
  const step = units === 'us' ? 25.4 : 10;
  return step * Math.ceil(deepest / step - 1e-6);
}

function atAGlance({ w, units }: Context, id: string, list: readonly DrillingAssessment[]): Block {
  return table(
    w.drillings.summaryTable(id),
    w.drillings.summaryColumns,
    [0.12, 0.2, 0.32, 0.18, 0.18],
    list.map((d) => [
      d.id,
      bearing(d.azimuthDeg),
      readingInWords(d, w),
      `${d.residualWallAtLeast ? `${w.drillings.atLeast} ` : ''}${measure(d.residualWallMm, 'lengthMm', units)}`,
      range(d, units),
    ]),
  );
}

function range(d: DrillingAssessment, units: Context['units']): string {
  const { p05, p95 } = d.residualWallIntervalMm;
  return span(Math.max(0, p05), p95, 'lengthMm', units);
}

function referenceInWords({ w }: Context, d: DrillingAssessment): string {
  const { levelPct, sdPct, restsOn } = d.reference;
  return w.drillings.reference(fixed(levelPct, 0), fixed(sdPct, 0), w.drillings.restsOn[restsOn]);
}

function readingInWords(d: DrillingAssessment, w: Context['w']): string {
  if (!metLoss(d)) return w.drillings.noLossShort;
  const kinds = [...new Set(d.zones.map((z) => z.kind))].filter(
    (k) => k !== 'air' && k !== 'bark' && k !== 'sound',
  );
  return kinds.map((k) => w.zones[k]).join(', ');
}

function one(
  context: Context,
  d: DrillingAssessment,
  recorded: CaseFile['flares'][number]['drillings'],
  topPct: number,
  longestMm: number,
): Block[] {
  const { w, units, paper, figureWidth } = context;
  const from = d.zones.find((z) => z.kind !== 'air' && z.kind !== 'bark' && z.kind !== 'sound');
  const words = [
    metLoss(d) && from
      ? w.drillings.loss(readingInWords(d, w), measure(from.fromMm, 'lengthMm', units))
      : w.drillings.noLoss,
    d.residualWallAtLeast
      ? w.drillings.wallAtLeast(measure(d.residualWallMm, 'lengthMm', units))
      : w.drillings.wall(`${measure(d.residualWallMm, 'lengthMm', units)} (${range(d, units)})`),
    d.reference.restsOn === 'this trace' ? referenceInWords(context, d) : '',
    Math.round(d.offRadialDeg) !== 0 || Math.round(d.downDeg) !== 0
      ? w.drillings.pose(`${fixed(d.offRadialDeg, 0)}°`, `${fixed(d.downDeg, 0)}°`)
      : '',
  ].filter((s) => s !== '');
  const blocks: Block[] = [
    figure(
      traceFigure(d, {
        units,
        width: figureWidth,
        topPct,
        plotHeight: PLOT_HEIGHT[paper],
        depthRangeMm: [0, longestMm],
      }),
      w.drillings.caption(d.id, bearing(d.azimuthDeg)),
      `trace-${d.id}`,
      1,
    ),
    { kind: 'paragraph', text: words.join(' ') },
    ...readFromStrip(context, recorded.find(({ id }) => id === d.id)?.trace),
  ];
  for (const warning of d.warnings)
    blocks.push({ kind: 'callout', severity: 'caution', title: d.id, text: warning });
  return blocks;
}

/** What every drilling of a place is read as, zone by zone. */
function zonesTable({ w, units }: Context, place: string, list: readonly DrillingAssessment[]): Block {
  return table(
    w.drillings.table(place),
    w.drillings.columns,
    [0.12, 0.36, 0.13, 0.13, 0.12, 0.14],
    list.flatMap((d) =>
      d.zones
        .filter((z) => z.kind !== 'air')
        .map((z) => [
          d.id,
          w.zones[z.kind],
          measure(z.fromMm, 'lengthMm', units),
          measure(z.toMm, 'lengthMm', units),
          measure(z.toMm - z.fromMm, 'lengthMm', units),
          probability(z.confidence),
        ]),
    ),
    ['start', 'start', 'end', 'end', 'end', 'end'],
  );
}
