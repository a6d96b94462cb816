/**
 * How a trace came off its paper strip, as comments at the head of its table: written when it is read, and understood
 * again wherever the trace is reported on.
 */
import type { StripProvenance } from '@standfast/engine';

type Stretch = readonly [number, number];

/** How a strip's line came about: enough to read it again, and to say on what it rests. */
export interface StripOrigin {
  /** Path of the photo in the case, or its file name where there is no case yet. */
  photo: string;
  /** SHA-256 of the photo's bytes, hexadecimal. */
  sha256: string;
  /** The chart's corners on the upright photo, pixels, clockwise from the chart's top left. */
  cornersPx: readonly (readonly [number, number])[];
  /** By what printed lines the corners were found and how sure that is, 0 to 1; null where a person set them. */
  cornersFound: { from: Exclude<StripProvenance['cornersFrom'], 'given'>; sure: number } | null;
  /** Depth at the chart's left and right edge, mm. */
  depthMm: readonly [number, number];
  /** Resistance at its bottom and top edge, percent of full scale. */
  resistance: readonly [number, number];
  scaleFrom: StripProvenance['scaleFrom'];
  /** Share of the chart's width along which there are readings, 0 to 1; null in tables from before it was told. */
  shareRead: number | null;
  /** Stretches of depth without readings, read with little certainty, and drawn by a person, mm. */
  leftOutMm: readonly Stretch[];
  unsureMm: readonly Stretch[];
  drawnMm: readonly Stretch[];
}

const BEGINS = 'read from the photographed paper strip';

const SCALE_FROM: Record<StripProvenance['scaleFrom'], string> = {
  given: 'as typed',
  taps: 'by two marked points of known depth',
  ruler: 'by two marked points a known distance apart',
  'printed numbers': 'by the numbers printed on the chart',
};

const STRETCHES = {
  leftOutMm: 'left out, not invented, mm:',
  unsureMm: 'read but unsure, mm:',
  drawnMm: 'drawn by hand, mm:',
} as const;

const CORNERS = "chart corners on the upright photo, px, clockwise from the chart's top left:";

/**
 * The notes, one line each.
 *
 * @param steps what was done to the photo, in order, in words
 */
export function stripNotes(origin: StripOrigin, steps: readonly string[], engineVersion: string): string[] {
  const { cornersFound: found, depthMm, resistance, shareRead } = origin;
  const corners = origin.cornersPx.map(([x, y]) => `(${x.toFixed(1)}, ${y.toFixed(1)})`).join(' ');
  return [
    `${BEGINS} ${origin.photo}`,
    `photo sha256 ${origin.sha256}`,
    `${CORNERS} ${corners}`,
    found === null
      ? 'corners set by hand'
      : `corners found by the ${found.from}, sure ${found.sure.toFixed(2)}`,
    `depth ${depthMm[0].toFixed(2)} mm at the left edge to ${depthMm[1].toFixed(2)} mm at the right, ${
      SCALE_FROM[origin.scaleFrom]
    }`,
    `resistance ${resistance[0]} % at the bottom edge to ${resistance[1]} % at the top`,
    ...steps,
    ...(shareRead === null ? [] : [`read along ${(100 * shareRead).toFixed(1)} % of the chart's width`]),
    ...Object.entries(STRETCHES).flatMap(([name, words]) => {
      const stretches = origin[name as keyof typeof STRETCHES];
      if (stretches.length === 0) return [];
      return [
        `${words} ${stretches.map(([from, to]) => `${from.toFixed(1)} to ${to.toFixed(1)}`).join(', ')}`,
      ];
    }),
    `Standfast engine ${engineVersion}`,
  ];
}

/** The notes at the head of a table; none where it was not read from a strip. */
export function stripNotesIn(table: Uint8Array): string[] {
  const notes: string[] = [];
  for (let at = 0; at < table.length && table[at] === HASH; ) {
    const lineEnd = table.indexOf(LINE_FEED, at);
    const end = lineEnd < 0 ? table.length : lineEnd;
    notes.push(new TextDecoder().decode(table.subarray(at, end)).replace(/^#\s*/, '').trimEnd());
    at = end + 1;
  }
  return notes[0]?.startsWith(BEGINS) ? notes : [];
}

const HASH = 35;
const LINE_FEED = 10;

/** How the trace in a table came off its strip; null where it did not, or where its notes no longer say so in full. */
export function stripOriginIn(table: Uint8Array): StripOrigin | null {
  const notes = stripNotesIn(table);
  const after = (beginning: string) =>
    notes
      .find((note) => note.startsWith(beginning))
      ?.slice(beginning.length)
      .trim();
  const found = (pattern: RegExp) => notes.map((note) => pattern.exec(note)).find((match) => match !== null);
  const photo = after(BEGINS);
  const sha256 = after('photo sha256');
  const depth = found(/^depth (-?[\d.]+) mm at the left edge to (-?[\d.]+) mm at the right, (.+)$/);
  const level = found(/^resistance (-?[\d.]+) % at the bottom edge to (-?[\d.]+) % at the top$/);
  const corners = found(/^corners found by the (frame|grid|axes), sure ([\d.]+)$/);
  const scaleFrom = (Object.keys(SCALE_FROM) as StripProvenance['scaleFrom'][]).find(
    (from) => SCALE_FROM[from] === depth?.[3],
  );
  if (!photo || !sha256 || !depth || !level || !scaleFrom) return null;
  const share = found(/^read along ([\d.]+) % of the chart's width$/);
  const stretches = (words: string) => pairs(after(words) ?? '', /(-?[\d.]+) to (-?[\d.]+)/g);
  return {
    photo,
    sha256,
    cornersPx: pairs(after(CORNERS) ?? '', /\((-?[\d.]+), (-?[\d.]+)\)/g),
    cornersFound: corners
      ? { from: corners[1] as 'frame' | 'grid' | 'axes', sure: Number(corners[2]) }
      : null,
    depthMm: [Number(depth[1]), Number(depth[2])],
    resistance: [Number(level[1]), Number(level[2])],
    scaleFrom,
    shareRead: share ? Number(share[1]) / 100 : null,
    leftOutMm: stretches(STRETCHES.leftOutMm),
    unsureMm: stretches(STRETCHES.unsureMm),
    drawnMm: stretches(STRETCHES.drawnMm),
  };
}

function pairs(text: string, pattern: RegExp): [number, number][] {
  return [...text.matchAll(pattern)].map(([, a, b]) => [Number(a), Number(b)]);
}

/** Share of a chart's width along which there are readings: from the first to the last, less what is left out. */
export function shareRead(
  depthMm: Float64Array,
  leftOutMm: readonly Stretch[],
  [left, right]: readonly [number, number],
): number {
  if (depthMm.length === 0) return 0;
  const leftOut = leftOutMm.reduce((sum, [from, to]) => sum + to - from, 0);
  return Math.min(1, (depthMm.at(-1)! - depthMm[0]! - leftOut) / Math.abs(right - left));
}
