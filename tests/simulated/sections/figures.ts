/**
 * Small bar charts as SVG text, for the accuracy documents.
 */

export interface Bars {
  title: string;
  groups: { label: string; values: number[] }[];
  series: string[];
  /** Greatest value of the axis. */
  top: number;
  /** A band of values to aim at. */
  band?: [number, number];
  axis: string;
}

const INK = '#1C1F23';
const TINTS = ['#0E5A64', '#9AA7A8', '#D9D5CB'];
const WIDTH = 760;
const HEIGHT = 300;
const LEFT = 52;
const RIGHT = 16;
const TOP = 62;
const BOTTOM = 56;

/** A chart of grouped bars with a value axis, the numbers written on the bars. */
export function bars({ title, groups, series, top, band, axis }: Bars): string {
  const plotWidth = WIDTH - LEFT - RIGHT;
  const plotHeight = HEIGHT - TOP - BOTTOM;
  const y = (v: number) => TOP + plotHeight * (1 - Math.min(v, top) / top);
  const slot = plotWidth / groups.length;
  const bar = Math.min(46, (0.8 * slot) / series.length);
  const parts: string[] = [];
  if (band) {
    parts.push(
      `<rect x="${LEFT}" y="${y(band[1]).toFixed(1)}" width="${plotWidth}" height="${(y(band[0]) - y(band[1])).toFixed(1)}" fill="#D9D5CB"/>`,
    );
  }
  for (let k = 0; k <= 5; k++) {
    const v = (top * k) / 5;
    parts.push(
      `<line x1="${LEFT}" x2="${WIDTH - RIGHT}" y1="${y(v).toFixed(1)}" y2="${y(v).toFixed(1)}" stroke="#D9D5CB"/>`,
      `<text x="${LEFT - 8}" y="${(y(v) + 4).toFixed(1)}" text-anchor="end">${v.toFixed(1)}</text>`,
    );
  }
  groups.forEach((group, g) => {
    const middle = LEFT + slot * (g + 0.5);
    group.values.forEach((value, s) => {
      const x = middle + (s - series.length / 2) * bar;
      const height = TOP + plotHeight - y(value);
      parts.push(
        `<rect x="${(x + 1).toFixed(1)}" y="${y(value).toFixed(1)}" width="${(bar - 2).toFixed(1)}" height="${height.toFixed(1)}" fill="${TINTS[s]}" stroke="${INK}" stroke-width="0.5"/>`,
        `<text x="${(x + bar / 2).toFixed(1)}" y="${(y(value) - 4).toFixed(1)}" text-anchor="middle" font-size="10">${value.toFixed(2)}</text>`,
      );
    });
    inLines(group.label).forEach((words, l) => {
      const below = HEIGHT - BOTTOM + 16 + 12 * l;
      parts.push(`<text x="${middle.toFixed(1)}" y="${below}" text-anchor="middle">${words}</text>`);
    });
  });
  series.forEach((name, s) => {
    const x = LEFT + s * 230;
    parts.push(
      `<rect x="${x}" y="34" width="12" height="12" fill="${TINTS[s]}" stroke="${INK}" stroke-width="0.5"/>`,
      `<text x="${x + 18}" y="44">${name}</text>`,
    );
  });
  parts.push(
    `<text x="${LEFT}" y="20" font-size="14" font-weight="600">${title}</text>`,
    `<text x="${LEFT + plotWidth / 2}" y="${HEIGHT - 12}" text-anchor="middle">${axis}</text>`,
  );
  return drawing(HEIGHT, parts);
}

export interface Rows {
  title: string;
  rows: { label: string; value: number }[];
  /** Greatest value of the axis. */
  top: number;
  /** A band of values to aim at. */
  band: [number, number];
  axis: string;
}

const ROW = 20;
const LABELS = 170;

/** A chart of level bars, one below the other, for many groups with long names; the number stands behind each bar. */
export function barRows({ title, rows, top, band, axis }: Rows): string {
  const head = 40;
  const foot = head + ROW * rows.length;
  const height = foot + 48;
  const x = (v: number) => LABELS + (WIDTH - LABELS - 56) * (Math.min(v, top) / top);
  const parts = [
    `<rect x="${x(band[0]).toFixed(1)}" y="${head}" width="${(x(band[1]) - x(band[0])).toFixed(1)}" height="${ROW * rows.length}" fill="#D9D5CB"/>`,
  ];
  for (let k = 0; k <= 5; k++) {
    const v = (top * k) / 5;
    parts.push(
      `<line x1="${x(v).toFixed(1)}" x2="${x(v).toFixed(1)}" y1="${head}" y2="${foot}" stroke="#D9D5CB"/>`,
      `<text x="${x(v).toFixed(1)}" y="${foot + 16}" text-anchor="middle">${v.toFixed(1)}</text>`,
    );
  }
  rows.forEach(({ label, value }, r) => {
    const y = head + ROW * r;
    parts.push(
      `<text x="${LABELS - 8}" y="${y + 14}" text-anchor="end">${label}</text>`,
      `<rect x="${LABELS}" y="${y + 4}" width="${(x(value) - LABELS).toFixed(1)}" height="${ROW - 8}" fill="${TINTS[0]}" stroke="${INK}" stroke-width="0.5"/>`,
      `<text x="${WIDTH - 16}" y="${y + 14}" text-anchor="end">${value.toFixed(2)}</text>`,
    );
  });
  parts.push(
    `<text x="8" y="22" font-size="14" font-weight="600">${title}</text>`,
    `<text x="${((LABELS + x(top)) / 2).toFixed(1)}" y="${foot + 36}" text-anchor="middle">${axis}</text>`,
  );
  return drawing(height, parts);
}

function drawing(height: number, parts: readonly string[]): string {
  return `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 ${WIDTH} ${height}" font-family="Source Sans 3, sans-serif" font-size="11" fill="${INK}"><rect width="100%" height="100%" fill="#FBFAF6"/>${parts.join('')}</svg>\n`;
}

/** A long label in two lines, broken at the space nearest its middle. */
function inLines(label: string): string[] {
  if (label.length < 14) return [label];
  const spaces = [...label].flatMap((c, i) => (c === ' ' ? [i] : []));
  const middle = spaces.sort((a, b) => Math.abs(a - label.length / 2) - Math.abs(b - label.length / 2))[0];
  return middle === undefined ? [label] : [label.slice(0, middle), label.slice(middle + 1)];
}
