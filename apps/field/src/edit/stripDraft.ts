/** A strip being worked on: corners, scale, what was read and how it was mended. Plain data, so it can be laid aside. */
import type {
  ChartFound,
  ChartKnown,
  ChartSeen,
  CornersPx,
  PointPx,
  PrintedScale,
  StripReading,
} from '@standfast/engine';
import type { Units } from '@standfast/report';
import { fieldText, storedOf } from '../units/quantities.ts';
import { readNumber } from '../units/readNumber.ts';
import { between, cornersToBeginWith } from './stripChart.ts';
import type { LineEdit } from './stripLine.ts';

/** The chart's scale as typed; depths in the person's units. */
export interface ScaleText {
  /** Depths at the chart's edges or at two marked points, or the distance of two marks of a ruler. */
  way: 'edges' | 'points' | 'ruler';
  left: string;
  right: string;
  bottom: string;
  top: string;
  atA: string;
  atB: string;
  /** From one mark of the ruler to the other; and where the chart's depth begins. */
  apart: string;
  start: string;
  startsAt: 'left' | 'right';
}

export type ScaleField = Exclude<keyof ScaleText, 'way' | 'startsAt'>;

export interface StripDraft {
  /** The step on screen: the chart with its scale, or the line on it. */
  at: 'chart' | 'line';
  corners: CornersPx | null;
  /** What was found on the photo, while the corners are still those. */
  found: ChartFound | null;
  /** What the chart's printed numbers say of its scale. */
  printed: PrintedScale | null;
  points: readonly [PointPx, PointPx] | null;
  scale: ScaleText;
  reading: StripReading | null;
  /** Which of the lines found. */
  chosen: number;
  edits: readonly LineEdit[];
}

/** Nothing is known yet but that level runs from 0 to full scale, which is what percent of full scale means. */
const UNKNOWN_SCALE: ScaleText = {
  way: 'edges',
  left: '0',
  right: '',
  bottom: '0',
  top: '100',
  atA: '',
  atB: '',
  apart: '',
  start: '0',
  startsAt: 'left',
};

export function newDraft(lastScale: ChartKnown | null, units: Units): StripDraft {
  const scale = { ...UNKNOWN_SCALE };
  if (lastScale?.depthMm) {
    scale.left = fieldText(lastScale.depthMm[0], 'lengthMm', units);
    scale.right = fieldText(lastScale.depthMm[1], 'lengthMm', units);
  }
  if (lastScale?.resistance) {
    scale.bottom = String(lastScale.resistance[0]);
    scale.top = String(lastScale.resistance[1]);
  }
  return {
    at: 'chart',
    corners: null,
    found: null,
    printed: null,
    points: null,
    scale,
    reading: null,
    chosen: 0,
    edits: [],
  };
}

/** The draft with what was seen on the photo: the chart's corners, and its scale where numbers were read. */
export function withSeen(
  draft: StripDraft,
  seen: ChartSeen | null,
  photo: { width: number; height: number },
  units: Units,
): StripDraft {
  const scale = { ...draft.scale };
  const { depthMm, resistance } = seen?.printed ?? {};
  if (depthMm) {
    scale.way = 'edges';
    scale.left = fieldText(depthMm[0], 'lengthMm', units);
    scale.right = fieldText(depthMm[1], 'lengthMm', units);
  }
  if (resistance) {
    scale.bottom = String(resistance[0]);
    scale.top = String(resistance[1]);
  }
  return {
    ...draft,
    scale,
    corners: seen?.chart.cornersPx ?? cornersToBeginWith(photo.width, photo.height),
    found: seen?.chart ?? null,
    printed: seen?.printed ?? null,
  };
}

/** Points to begin with: along the chart's bottom edge, a little within. */
export function pointsToBeginWith(corners: CornersPx): readonly [PointPx, PointPx] {
  return [between(corners[3], corners[2], 0.15), between(corners[3], corners[2], 0.85)];
}

/** The chart as it is to be read, or what is missing of its scale by field. */
export function knownOf(
  { corners, points, printed, scale }: StripDraft,
  units: Units,
): { known: ChartKnown } | { faults: Partial<Record<ScaleField, string>> } {
  const faults: Partial<Record<ScaleField, string>> = {};
  const number = (field: ScaleField, toStored: (value: number) => number): number => {
    const read = readNumber(scale[field]);
    if (read.ok) return toStored(read.value);
    faults[field] = scale[field].trim() === '' ? 'Needed to read the line.' : read.message;
    return Number.NaN;
  };
  const depth = (field: ScaleField) => number(field, (value) => storedOf(value, 'lengthMm', units));
  /** A printed number that was left as it stood is taken as printed, not as rounded for the screen. */
  const edge = (field: 'left' | 'right', stored: number | undefined) =>
    stored !== undefined && scale[field] === fieldText(stored, 'lengthMm', units) ? stored : depth(field);
  const level = (field: ScaleField) => number(field, (value) => value);
  const resistance = [level('bottom'), level('top')] as const;
  if (resistance[0] === resistance[1]) faults.top = 'Top and bottom cannot be at the same level.';
  const [a, b] = points ?? (corners ? pointsToBeginWith(corners) : []);
  if (scale.way === 'ruler') {
    const distanceMm = depth('apart');
    const startMm = depth('start');
    if (distanceMm <= 0) faults.apart = 'A distance above 0 is needed.';
    if (Object.keys(faults).length > 0 || !corners || !a || !b) return { faults };
    const ruler = { px: [a, b], distanceMm, startMm, startsAt: scale.startsAt } as const;
    return { known: { cornersPx: corners, resistance, ruler } };
  }
  const byEdges = scale.way === 'edges';
  const depths = byEdges
    ? ([edge('left', printed?.depthMm?.[0]), edge('right', printed?.depthMm?.[1])] as const)
    : ([depth('atA'), depth('atB')] as const);
  if (depths[0] === depths[1]) faults[byEdges ? 'right' : 'atB'] = 'Both ends cannot be at the same depth.';
  if (Object.keys(faults).length > 0 || !corners || !a || !b) return { faults };
  const known: ChartKnown = { cornersPx: corners, resistance };
  if (byEdges) return { known: { ...known, depthMm: depths } };
  return {
    known: {
      ...known,
      taps: [
        { px: a, depthMm: depths[0] },
        { px: b, depthMm: depths[1] },
      ],
    },
  };
}

/** Whether the scale is, as confirmed, the one that the printed numbers say; null where it was typed or marked. */
export function scaleFromPrint({ printed }: StripDraft, known: ChartKnown): 'printed numbers' | null {
  const same = (a: readonly [number, number] | null | undefined, b: typeof a) =>
    !!a && !!b && a[0] === b[0] && a[1] === b[1];
  const asPrinted = same(printed?.depthMm, known.depthMm) && same(printed?.resistance, known.resistance);
  return asPrinted ? 'printed numbers' : null;
}
