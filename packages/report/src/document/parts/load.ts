/** Flares and anchorage, wind and load, wood: what resistance and load are made of. */
import type { SourcedValue } from '@standfast/engine';
import { windFigure } from '../../figures/wind.ts';
import { bearing, measure, span, type Units } from '../../units.ts';
import type { Block } from '../blocks.ts';
import { type Context, least, percent, shareRange, significant, unitText } from '../context.ts';
import { floating, heading, table } from '../make.ts';
import { textInUnits } from '../textInUnits.ts';
import { flareDrillings } from './drillings.ts';

export function anchorage(context: Context): Block[] {
  const { a, w, units } = context;
  const blocks: Block[] = [
    heading(1, w.anchorage.heading, 'anchorage'),
    { kind: 'paragraph', text: w.anchorage.basis(textInUnits(a.safety.anchorageBasis, units)) },
  ];
  if (a.safety.anchorageTooThin)
    blocks.push({
      kind: 'callout',
      severity: 'serious',
      title: w.record.severity.serious,
      text: w.anchorage.tooThin,
    });
  if (a.flares.length === 0) return [...blocks, { kind: 'paragraph', text: w.anchorage.noFlares }];
  blocks.push(
    table(
      w.anchorage.table,
      w.anchorage.columns,
      [0.12, 0.24, 0.14, 0.14, 0.36],
      a.flares.map((f) => [
        f.id,
        bearing(f.azimuthDeg),
        measure(f.widthMm, 'lengthMm', units),
        measure(f.heightMm, 'lengthMm', units),
        f.soundShare === null ? w.anchorage.notDrilled : shareRange(f.soundShare),
      ]),
    ),
    ...flareDrillings(context),
  );
  return blocks;
}

export function windAndLoad(context: Context): Block[] {
  const { a, c, w, units, figureWidth } = context;
  const { wind } = a;
  const blocks: Block[] = [heading(1, w.load.heading, 'load')];
  const site = c.site;
  if (site?.basicWindSpeedMs !== undefined) {
    const place =
      site.windCode === 'EN 1991-1-4'
        ? site.terrain && w.load.terrain(site.terrain)
        : site.exposure && w.load.exposure(site.exposure);
    blocks.push({
      kind: 'paragraph',
      text: [
        w.load.intro(site.windCode, measure(site.basicWindSpeedMs, 'speedMs', units), place || w.notRecorded),
        site.basicWindSource ? w.load.basis(site.basicWindSource) : '',
      ]
        .filter((s) => s !== '')
        .join(' '),
    });
  }
  const sections = a.sections.map((s) => ({ id: s.id, heightM: s.heightM }));
  blocks.push(
    floating(
      windFigure(c.tree, wind, { units, width: figureWidth * 0.9, height: figureWidth * 0.62, sections }),
      w.load.caption,
      'wind',
    ),
  );
  const moment = (nm: number) => measure(nm, 'momentNm', units);
  const { p05, p95 } = wind.momentIntervalNm;
  const rows = [
    [w.load.moment, moment(wind.momentNm), span(p05, p95, 'momentNm', units)],
    [w.load.windPart, moment(wind.windMomentNm), w.load.byCode],
    [w.load.weightPart, moment(wind.selfWeightMomentNm), w.load.estimate],
    [w.load.gust, measure(wind.gustMs, 'speedMs', units), wind.windCode],
    [w.load.centre, measure(wind.centreOfPressureM, 'heightM', units), w.load.estimate],
    [w.load.area, measure(wind.crownAreaM2, 'areaM2', units), w.load.estimate],
  ];
  for (const at of wind.atSections) {
    const most = at.byDirection.reduce<(typeof at.byDirection)[number] | null>(
      (m, d) => (m === null || d.p50 > m.p50 ? d : m),
      null,
    );
    if (most)
      rows.push([
        w.load.atSection(at.sectionId, measure(at.heightM, 'heightM', units)),
        moment(most.p50),
        span(most.p05, most.p95, 'momentNm', units),
      ]);
  }
  for (const s of a.sections)
    rows.push([w.load.intact(s.id), measure(s.intactModulusM3, 'modulusM3', units), w.load.estimate]);
  blocks.push(table(w.load.table, w.load.columns, [0.5, 0.22, 0.28], rows));
  if (wind.values.length > 0) blocks.push(values(context, w.load.values, wind.values));
  return blocks;
}

export function wood(context: Context): Block[] {
  const { a, w } = context;
  const blocks: Block[] = [
    heading(1, w.wood.heading, 'wood'),
    {
      kind: 'paragraph',
      text:
        a.wood.matched === null
          ? w.wood.unmatched(a.wood.species)
          : w.wood.matched(a.wood.species, a.wood.matched),
    },
  ];
  if (a.wood.values.length > 0) blocks.push(values(context, w.wood.table, a.wood.values));
  if (a.safety.values.length > 0) blocks.push(values(context, w.wood.safetyValues, a.safety.values));
  const decided = [...a.decision.values, ...a.advice.reinspection.values];
  if (decided.length > 0) blocks.push(values(context, w.decision.values, decided));
  return blocks;
}

/** Units of values, other than moments, that a reader of US customary units is given another for. Exact but for psi. */
const US_UNITS: Readonly<Record<string, readonly [unit: string, perSi: number]>> = {
  mm: ['in', 1 / 25.4],
  m: ['ft', 1 / 0.3048],
  'm/s': ['mph', 1 / 0.44704],
  MPa: ['psi', 145.0377377],
  'kg/m3': ['lb/ft³', 0.3048 ** 3 / 0.45359237],
  'cm/year': ['in/year', 1 / 2.54],
};

function amount({ value, unit }: SourcedValue, units: Units): string {
  if (unit === 'N·m') return measure(value, 'momentNm', units);
  const [shown, perSi] = (units === 'us' && US_UNITS[unit]) || [unit, 1];
  return `${significant(value * perSi)}${unitText(shown)}`;
}

function values({ w, units }: Context, caption: string, list: readonly SourcedValue[]): Block {
  return table(
    caption,
    w.load.valueColumns,
    [0.34, 0.18, 0.1, 0.38],
    list.map((v) => [
      // A formula is worked in SI.
      v.name.includes('=') ? v.name : textInUnits(v.name, units),
      amount(v, units),
      v.cov === undefined ? '–' : `±\u00a0${percent(v.cov)}`,
      v.source,
    ]),
  );
}

/** The direction in which the load at the ground is greatest, for the annex. */
export function momentsByDirection({ a, w, units }: Context): Block[] {
  if (least(a.wind.byDirection) === null) return [];
  return [
    table(
      w.annex.moments,
      w.annex.momentColumns,
      [0.36, 0.3, 0.34],
      a.wind.byDirection
        .filter((d) => d.directionDeg % 30 === 0)
        .map((d) => [
          bearing(d.directionDeg),
          measure(d.p50, 'momentNm', units),
          span(d.p05, d.p95, 'momentNm', units),
        ]),
    ),
  ];
}
