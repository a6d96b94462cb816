/** A small drawing of a trace with its zones, in characters. */
import type { Trace, Zone, ZoneKind } from '@standfast/engine';
import type { Terminal } from './terminal.ts';

/** One sign for each kind, told apart by density and shape, not by colour. */
const SIGNS: Record<'unicode' | 'ascii', Record<ZoneKind, string>> = {
  unicode: { air: ' ', bark: '┆', sound: '█', incipient: '▒', decayed: '░', void: '·', crack: '┃' },
  ascii: { air: ' ', bark: ':', sound: '#', incipient: '+', decayed: '-', void: '.', crack: '|' },
};

/** The narrower a kind can be, the more a column that holds it must show it. */
const PRECEDENCE: Record<ZoneKind, number> = {
  crack: 6,
  void: 5,
  decayed: 4,
  incipient: 3,
  bark: 2,
  sound: 1,
  air: 0,
};

const ROWS = 7;
const LABEL_WIDTH = 6;

/**
 * Draws resistance against depth, least to greatest reading in each column so that no spike is lost, with the
 * zones as a band under it and depth in mm under that.
 * @returns lines no wider than the terminal
 */
export function traceDrawing(trace: Trace, zones: Zone[], terminal: Terminal): string[] {
  const columns = terminal.width - LABEL_WIDTH;
  const from = Math.min(zones[0]!.fromMm, trace.depthMm[0]!);
  const to = Math.max(zones[zones.length - 1]!.toMm, trace.depthMm[trace.depthMm.length - 1]!);
  const top = ceiling(trace.resistancePct);
  const plot = terminal.unicode
    ? braillePlot(trace, from, to, top, columns)
    : asciiPlot(trace, from, to, top, columns);
  const label = (row: number) => {
    const text = row === 0 ? `${top} %` : row === ROWS - 1 ? '0 %' : '';
    return `${text.padStart(LABEL_WIDTH - 1)} `;
  };
  return [
    ...plot.map((line, row) => label(row) + line),
    ' '.repeat(LABEL_WIDTH) + band(zones, from, to, columns, terminal),
    ' '.repeat(LABEL_WIDTH) + scale(from, to, columns),
  ].map((line) => line.trimEnd());
}

/** What the band's signs mean, for the kinds that occur. */
export function legend(zones: Zone[], terminal: Terminal): string {
  const signs = SIGNS[terminal.unicode ? 'unicode' : 'ascii'];
  const kinds = [...new Set(zones.map(({ kind }) => kind))].filter((kind) => kind !== 'air');
  return kinds.map((kind) => `${signs[kind].repeat(2)} ${kind}`).join('   ');
}

/** The kind to show in each column: the one that matters most of those it holds. */
export function band(
  zones: Zone[],
  fromMm: number,
  toMm: number,
  columns: number,
  terminal: Terminal,
): string {
  const signs = SIGNS[terminal.unicode ? 'unicode' : 'ascii'];
  const perColumn = (toMm - fromMm) / columns;
  let line = '';
  for (let c = 0; c < columns; c++) {
    const left = fromMm + c * perColumn;
    const middle = left + perColumn / 2;
    let kind: ZoneKind = 'air';
    for (const zone of zones) {
      const within = zone.fromMm <= middle && middle < zone.toMm;
      // A zone narrower than a column shows in the column that holds its start.
      const narrow =
        zone.toMm - zone.fromMm < perColumn && zone.fromMm >= left && zone.fromMm < left + perColumn;
      if ((within || narrow) && PRECEDENCE[zone.kind] > PRECEDENCE[kind]) kind = zone.kind;
    }
    line += signs[kind];
  }
  return line;
}

/** Least and greatest reading in each of so many equal stretches of depth; NaN where there is none. */
function envelope(trace: Trace, from: number, to: number, columns: number) {
  const low = new Float64Array(columns).fill(Number.POSITIVE_INFINITY);
  const high = new Float64Array(columns).fill(Number.NEGATIVE_INFINITY);
  const { depthMm, resistancePct } = trace;
  const perMm = columns / (to - from || 1);
  for (let i = 0; i < depthMm.length; i++) {
    const c = Math.min(columns - 1, Math.floor((depthMm[i]! - from) * perMm));
    const value = resistancePct[i]!;
    if (value < low[c]!) low[c] = value;
    if (value > high[c]!) high[c] = value;
  }
  return { low, high };
}

/** Dots two to a column and four to a row. */
function braillePlot(trace: Trace, from: number, to: number, top: number, columns: number): string[] {
  const LEFT = [0x01, 0x02, 0x04, 0x40];
  const RIGHT = [0x08, 0x10, 0x20, 0x80];
  const { low, high } = envelope(trace, from, to, columns * 2);
  const dots = ROWS * 4;
  const cells = Array.from({ length: ROWS }, () => new Uint8Array(columns));
  for (let c = 0; c < columns * 2; c++) {
    if (low[c]! > high[c]!) continue;
    const up = dotRow(high[c]!, top, dots);
    const down = dotRow(low[c]!, top, dots);
    for (let y = up; y <= down; y++) cells[y >> 2]![c >> 1]! |= (c & 1 ? RIGHT : LEFT)[y & 3]!;
  }
  return cells.map((row) =>
    Array.from(row, (dot) => (dot ? String.fromCharCode(0x2800 + dot) : ' ')).join(''),
  );
}

function asciiPlot(trace: Trace, from: number, to: number, top: number, columns: number): string[] {
  const { low, high } = envelope(trace, from, to, columns);
  const lines = Array.from({ length: ROWS }, () => new Array<string>(columns).fill(' '));
  for (let c = 0; c < columns; c++) {
    if (low[c]! > high[c]!) continue;
    const up = dotRow(high[c]!, top, ROWS);
    const down = dotRow(low[c]!, top, ROWS);
    for (let y = up; y <= down; y++) lines[y]![c] = '*';
  }
  return lines.map((line) => line.join(''));
}

function dotRow(value: number, top: number, rows: number): number {
  const share = Math.min(1, Math.max(0, value / top));
  return Math.round((1 - share) * (rows - 1));
}

/** The drawing's upper end: the next ten above the greatest reading. */
function ceiling(resistance: Float64Array): number {
  let most = 10;
  for (const value of resistance) if (value > most) most = value;
  return Math.ceil(most / 10) * 10;
}

const STEPS_MM = [1, 2, 5, 10, 20, 50, 100, 200, 500, 1000, 2000, 5000];

/** Depths in mm, each number beginning under its own depth. */
function scale(from: number, to: number, columns: number): string {
  const span = to - from || 1;
  const room = 8;
  const step = STEPS_MM.find((mm) => (mm / span) * columns >= room) ?? 10000;
  const line = new Array<string>(columns).fill(' ');
  for (let mm = Math.ceil(from / step) * step; mm <= to; mm += step) {
    const at = Math.round(((mm - from) / span) * columns);
    const text = mm + step > to && at + String(mm).length + 3 <= columns ? `${mm} mm` : String(mm);
    if (at + text.length <= columns) line.splice(at, text.length, ...text);
  }
  return line.join('');
}
