/** From a photographed strip to the lines on it. */
import { InputFault } from '../faults.ts';
import { bestPath, type Path } from './bestPath.ts';
import { checkCorners, checkStripImage } from './checkStrip.ts';
import { type Geometry, geometryOf } from './geometry.ts';
import { coarseInk, darkestInk, type Evidence, FULL, type Ink, inkOf, likeness, type Pen } from './ink.ts';
import { evenOutPaper, PAPER, pointOf } from './paper.ts';
import { GAP, JOINED, type PenLine, penLine } from './penLine.ts';
import { printedLines } from './printedLines.ts';
import { type Stains, stainsOf, withoutStains } from './stains.ts';
import type {
  ChartFound,
  ChartScale,
  CornersPx,
  StripImage,
  StripLine,
  StripProgress,
  StripProvenance,
  StripReading,
} from './types.ts';
import { layFlat } from './warp.ts';

const MOST_LINES = 3;
/** A further line is offered when it is at least so good as the best. */
const LEAST_SHARE_OF_BEST = 0.4;
/** A line read along less of the chart than this is none. */
const LEAST_COVERAGE = 0.15;
/** Least darkness of a pen against the paper, share, and against the paper's grain. */
const LEAST_DARKNESS = 0.05;
const LEAST_CLEARNESS = 4.5;
/** A pen is narrower than this share of the chart's height. */
const BROADEST_PEN = 0.1;
/** A line that keeps to the chart's edge for more of its course than this is the frame. */
const MOST_FRAMED = 0.9;
/** Ink like the pen's over more of the chart than this share, and three times the line's own, is a pattern. */
const MOST_OTHER_INK = 0.12;

/** Shares of the time a reading usually takes that are over when the line begins to be followed, and when it is scaled. */
const FOLLOWING_FROM = 0.45;
const SCALING_FROM = 0.97;
/** Of following lines, what is over when they were told apart on the coarse mesh. */
const TOLD_APART = 0.6;

export interface ReadStripOptions {
  /** Told as the work goes on. */
  onProgress?: StripProgress;
  /** How the corners and the scale were come by, for the provenance. Default: given. */
  cornersFound?: ChartFound;
  scaleFrom?: StripProvenance['scaleFrom'];
  /** File or photo named in faults. */
  where?: string;
}

/** Everything a reading needs, settled. */
export interface Chart extends ChartScale {
  cornersPx: CornersPx;
}

/**
 * Reads the lines on a chart whose corners and scale are known.
 * @returns the lines found, the likeliest first
 * @throws InputFault when corners or pixels make no sense, or no line can be read: nothing is ever invented
 */
export function readStrip(image: StripImage, chart: Chart, options: ReadStripOptions = {}): StripReading {
  const where = options.where ?? 'photo';
  const tell = options.onProgress ?? (() => {});
  checkStripImage(image, where);
  checkCorners(chart.cornersPx, image, 'cornersPx');
  const steps: string[] = [];

  tell(0, 'laying the chart flat');
  const geometry = geometryOf(image, chart.cornersPx);
  const { columns, rows, toPhoto, fold } = geometry;
  const flat = layFlat(image, columns, rows, toPhoto, fold);
  steps.push(`laid flat by a projective map of the corners, ${columns} × ${rows} places`);
  if (geometry.curlPx > 0) {
    steps.push(`curl of up to ${geometry.curlPx.toFixed(1)} px taken out by the bow of its long edges`);
  }

  tell(0.2, 'evening out shadow and paper');
  const { tooDark } = evenOutPaper(flat);
  if (tooDark) throw new InputFault('the chart is all black: photograph it in more light', where);
  steps.push('shadow and tint evened out by the brightness of the paper nearby');

  tell(0.25, 'taking out the print');
  const level = printedLines(flat, false);
  const upright = printedLines(flat, true);
  const ink = inkOf(flat, level, upright);
  steps.push(`${upright.middles.length} upright and ${level.middles.length} level printed lines taken out`);

  tell(FOLLOWING_FROM, 'following the line');
  const found = findLines(ink, geometry, chart.depthMm[1] < chart.depthMm[0] ? 'right' : 'left', (share) =>
    tell(FOLLOWING_FROM + share * (SCALING_FROM - FOLLOWING_FROM), 'following the line'),
  );
  if (!found.length) {
    throw new InputFault(
      'no line of a pen was found on this chart: check that the corners are those of the chart and the line can be seen',
      where,
    );
  }
  steps.push('pen told by colour, darkness and continuity; followed by the path of least cost');
  tell(SCALING_FROM, 'scaling');
  const lines = found.map((line) => scaled(line, chart, geometry));
  tell(1, 'done');
  return {
    lines,
    provenance: {
      photoSizePx: [image.widthPx, image.heightPx],
      cornersPx: chart.cornersPx,
      cornersFrom: options.cornersFound?.from ?? 'given',
      cornersSure: options.cornersFound?.sure ?? 1,
      depthMm: chart.depthMm,
      resistance: chart.resistance,
      scaleFrom: options.scaleFrom ?? 'given',
      curlPx: geometry.curlPx,
      gridLines: [upright.middles.length, level.middles.length],
      steps,
    },
    warnings: warningsOf(lines, chart, options),
  };
}

interface FoundLine {
  line: PenLine;
  pen: Pen;
  coverage: number;
  score: number;
}

/** The ink a line is sought in, and what of it is known. */
interface Seen {
  ink: Ink;
  /** The same on the coarse mesh, of which \`fold\` places of the ink lie along one. */
  coarse: Ink;
  fold: number;
  /** Stains of the coarse mesh already found, by window. */
  stains: Map<number, Stains>;
  left: number;
  right: number;
  /** Rows of the chart's top and bottom. */
  edges: readonly number[];
  /** The side of least depth, where the pen began. */
  startsAt: 'left' | 'right';
  grain: number;
}

/** Evidence goes to 250; this byte stands for places covered by print, which cost more than ink and less than paper. */
const COVERED = 255;
const COVERED_PRICE = 0.6;
/** Cost of a pixel by its likeness to the pen: nearly nothing on ink, 1 on paper. */
const pricesBetween = (paper: number, ink: number) =>
  Float64Array.from({ length: 256 }, (_, value) => {
    if (value === COVERED) return COVERED_PRICE;
    const short = Math.min(1, Math.max(0, (ink - value / FULL) / (ink - paper)));
    return 0.008 + short * short;
  });
/** Before the pen is known anything dark will do; after, it must be as dark and of its colour. */
const ANY_INK = pricesBetween(0, 0.75);
const PEN_INK = pricesBetween(0.3, 0.82);
/** A lone step of so much of the chart's height within three columns is an upright stroke, if beside it the line moves by less than this share of it. */
const LEAP = 0.06;
const CALM = 0.25;
const MOST_ON_STROKES = 0.03;
/** Corners found with less certainty than this are to be checked. */
const WANTS_CHECKING = 0.75;
/** Columns and places of the coarse mesh on which lines are told apart. */
const COARSE_COLUMNS = 1000;
const COARSE_PLACES = 400_000;
/** Darkness broader than a stroke is a stain when lighter than this share of the pen's. */
const STAIN_SHARE = 0.6;
/** Blocks of columns in which the pen's strength is looked at. */
const STRENGTH_BLOCKS = 14;

/**
 * Finds the lines: on a coarse mesh by several guesses at what is pen (whatever is darkest and thin, darkest at all,
 * most coloured), each followed and its pen learnt; the best of them then again on the full mesh.
 * @param tell told the share done
 */
function findLines(
  ink: Ink,
  { left, right, top, bottom }: Geometry,
  startsAt: 'left' | 'right',
  tell: (share: number) => void,
): FoundLine[] {
  const fold = Math.max(
    1,
    Math.round((right - left) / COARSE_COLUMNS),
    Math.round(Math.sqrt((ink.columns * ink.rows) / COARSE_PLACES)),
  );
  const coarse = coarseInk(ink, fold);
  const from = Math.ceil(left / fold);
  const to = Math.min(coarse.columns - 1, Math.floor(right / fold));
  const grain = grainOf(coarse);
  const thin = withoutStains(coarse, stainsOf(coarse, Math.max(9, Math.round(coarse.rows / 24))), 1, PAPER);
  const stains = new Map<number, Stains>();
  const edges = [top / fold, bottom / fold];
  const seen: Seen = { ink: coarse, coarse, fold: 1, stains, left: from, right: to, edges, startsAt, grain };
  const guesses = [darkestInk(thin, false), darkestInk(coarse, false), darkestInk(coarse, true)]
    .filter(({ strength }) => strength >= LEAST_DARKNESS * PAPER && strength >= LEAST_CLEARNESS * grain)
    .map(({ any }) => any);
  const found: FoundLine[] = [];
  const keep = (line: FoundLine) => {
    const same = found.findIndex((other) => sameLine(other.line, line.line, from, to));
    if (same < 0) found.push(line);
    else if (line.score > found[same]!.score) found[same] = line;
  };
  for (const [i, any] of guesses.entries()) {
    tell((0.85 * TOLD_APART * i) / guesses.length);
    const line = follow(seen, any, [], found);
    if (line) keep(line);
  }
  // Further lines of any ink, once those found are out of the way.
  tell(0.85 * TOLD_APART);
  const any = guesses[0];
  for (let round = found.length; any && found.length > 0 && round < MOST_LINES; round++) {
    const taken = found.map(({ line }) => line);
    wipe(any, taken, from, to);
    const line = follow(seen, any, taken, []);
    if (!line || line.score < LEAST_SHARE_OF_BEST * found[0]!.score) break;
    keep(line);
  }
  found.sort((p, q) => q.score - p.score);
  const best = found[0];
  if (!best) return [];
  const kept = found.filter((line) => line.score > LEAST_SHARE_OF_BEST * best.score).slice(0, MOST_LINES);
  const refined: FoundLine[] = [];
  for (const [i, rough] of kept.entries()) {
    tell(TOLD_APART + ((1 - TOLD_APART) * i) / kept.length);
    const line = refine({ ...seen, ink, fold, left, right, edges: [top, bottom], grain: 0 }, rough, refined);
    if (line && !refined.some((other) => sameLine(other.line, line.line, left, right))) refined.push(line);
  }
  return refined;
}

/**
 * Follows the likeliest line of any ink, learns its pen from it, and follows that pen's line.
 * @param taken lines whose ink is spent
 * @param known lines that need not be followed once more
 */
function follow(
  seen: Seen,
  any: Evidence,
  taken: readonly PenLine[],
  known: readonly FoundLine[],
): FoundLine | null {
  const { ink, left, right } = seen;
  let field = any;
  let path = pathAlong(field, left, right, ANY_INK);
  let line = penLine(any, path, left, right);
  let pen: Pen | null = null;
  if (known.some((other) => sameLine(other.line, line, left, right))) return null;
  for (let round = 0; round < 2; round++) {
    pen = penAlong(ink, path, line, left, right) ?? pen;
    if (!pen) return null;
    const clean = cleaned(seen, pen, line.penWidth);
    field = likeness(clean, pen);
    wipe(field, taken, left, right);
    path = pathAlong(field, left, right, PEN_INK);
    line = penLine(field, path, left, right);
  }
  return pen && judged(field, line, pen, seen);
}

/** A line found on the coarse mesh, followed again on the full one. */
function refine(seen: Seen, rough: FoundLine, better: readonly FoundLine[]): FoundLine | null {
  const { ink, coarse, fold, left, right, startsAt } = seen;
  const { columns, rows } = ink;
  const first = new Int32Array(columns);
  const last = new Int32Array(columns);
  const state = new Uint8Array(columns);
  for (let x = left; x <= right; x++) {
    const k = Math.min(coarse.columns - 1, Math.floor(x / fold));
    if (rough.line.state[k] === GAP) continue;
    state[x] = 1;
    first[x] = Math.max(0, Math.floor(rough.line.top[k]! * fold) - 1);
    last[x] = Math.min(rows - 1, Math.ceil((rough.line.bottom[k]! + 1) * fold));
  }
  const pen = penAlong(ink, { first, last }, { ...rough.line, state }, left, right);
  if (!pen) return null;
  const clean = cleaned(seen, pen, rough.line.penWidth);
  const field = likeness(clean, pen);
  wipe(
    field,
    better.map(({ line }) => line),
    left,
    right,
  );
  const line = penLine(field, pathAlong(field, left, right, PEN_INK), left, right, startsAt);
  return judged(field, line, pen, seen);
}

/** The ink without stains broader than the pen. */
function cleaned({ ink, coarse, fold, stains }: Seen, pen: Pen, coarsePenWidth: number): Ink {
  const window = 2 * Math.round(1.5 * Math.max(2, coarsePenWidth)) + 3;
  let broad = stains.get(window);
  if (!broad) {
    broad = stainsOf(coarse, window);
    stains.set(window, broad);
  }
  return withoutStains(ink, broad, fold, STAIN_SHARE * Math.max(...pen.colour));
}

/** A line with its score, or null for what is no line of a pen: too little, too faint, too broad, or one pattern among many. */
function judged(
  field: Evidence,
  line: PenLine,
  pen: Pen,
  { left, right, edges, grain }: Seen,
): FoundLine | null {
  const { evidence, rows } = field;
  let read = 0;
  let like = 0;
  let own = 0;
  let framed = 0;
  for (let x = left; x <= right; x++) {
    if (line.state[x] === GAP) continue;
    read++;
    like += line.likeness[x]!;
    if (edges.some((edge) => Math.abs(line.row[x]! - edge) <= line.penWidth + 1)) framed++;
    own += line.bottom[x]! - line.top[x]! + line.penWidth;
  }
  let all = 0;
  for (let k = left * rows; k < (right + 1) * rows; k++) if (evidence[k]! >= FULL / 2) all++;
  const places = (right - left + 1) * rows;
  const coverage = read / (right - left + 1);
  const dark = Math.max(...pen.colour);
  if (coverage < LEAST_COVERAGE || dark < LEAST_DARKNESS * PAPER || dark < LEAST_CLEARNESS * grain)
    return null;
  if (line.penWidth > BROADEST_PEN * rows || framed > MOST_FRAMED * read) return null;
  if (all > MOST_OTHER_INK * places && all > 3 * own) return null;
  // Of lines seen as well, the darker is the likelier.
  const score = (like / (right - left + 1)) * (0.7 + 0.3 * Math.min(1, dark / PAPER));
  return { line, pen, coverage, score };
}

function pathAlong(
  { evidence, hidden, columns, rows }: Evidence,
  left: number,
  right: number,
  price: Float64Array,
): Path {
  const levels = evidence.slice(left * rows, (right + 1) * rows);
  for (let k = 0; k < levels.length; k++) {
    if (hidden[left * rows + k]) levels[k] = COVERED;
  }
  const inner = bestPath(levels, right - left + 1, rows, price);
  const first = new Int32Array(columns);
  const last = new Int32Array(columns);
  first.set(inner.first, left);
  last.set(inner.last, left);
  return { first, last, cost: inner.cost };
}

/** The pen's colour and its strength along the chart, from the darkest ink of each column's stroke. */
function penAlong(
  ink: Ink,
  path: { first: Int32Array; last: Int32Array },
  line: { state: Uint8Array },
  left: number,
  right: number,
): Pen | null {
  const { columns, rows, red, green, blue } = ink;
  const r: number[] = [];
  const g: number[] = [];
  const b: number[] = [];
  const dark = new Float64Array(columns).fill(Number.NaN);
  for (let x = left; x <= right; x++) {
    if (line.state[x] === GAP) continue;
    const lo = Math.max(0, Math.min(path.first[x]!, path.last[x]!) - 2);
    const hi = Math.min(rows - 1, Math.max(path.first[x]!, path.last[x]!) + 2);
    let best = -1;
    let most = 0;
    for (let y = lo; y <= hi; y++) {
      const k = x * rows + y;
      const sum = red[k]! + green[k]! + blue[k]!;
      if (sum > most) {
        most = sum;
        best = k;
      }
    }
    if (best < 0) continue;
    r.push(red[best]!);
    g.push(green[best]!);
    b.push(blue[best]!);
    dark[x] = Math.hypot(red[best]!, green[best]!, blue[best]!);
  }
  if (r.length < 8) return null;
  const colour = [middleOf(r), middleOf(g), middleOf(b)] as const;
  const length = Math.hypot(...colour);
  if (length < 4) return null;
  return { colour, strength: strengthOf(dark, length, left, right) };
}

/**
 * How strong the pen is along the chart, as a straight line through the medians of blocks of columns (the median of
 * the slopes between them: H. Theil 1950, P. K. Sen 1968), so that a stain met on the way does not pass for the pen.
 */
function strengthOf(dark: Float64Array, usual: number, left: number, right: number): Float64Array {
  const places: number[] = [];
  const medians: number[] = [];
  const length = Math.ceil((right - left + 1) / STRENGTH_BLOCKS);
  for (let from = left; from <= right; from += length) {
    const block = [...dark.subarray(from, Math.min(right + 1, from + length))].filter(Number.isFinite);
    if (block.length < length / 4) continue;
    places.push(from + length / 2);
    medians.push(middleOf(block));
  }
  const slopes: number[] = [];
  for (let i = 0; i < places.length; i++) {
    for (let j = 0; j < i; j++) slopes.push((medians[i]! - medians[j]!) / (places[i]! - places[j]!));
  }
  const slope = slopes.length >= 6 ? middleOf(slopes) : 0;
  const start = medians.length ? middleOf(medians.map((value, i) => value - slope * places[i]!)) : usual;
  return dark.map((_, x) => Math.min(1.6, Math.max(0.35, (start + slope * x) / usual)));
}

function middleOf(values: number[]): number {
  return values.sort((p, q) => p - q)[values.length >> 1]!;
}

/** The paper's grain: how dark bare paper looks by noise alone, 0 to `PAPER`. */
function grainOf({ red, green, blue }: Ink): number {
  const counts = new Uint32Array(256);
  let total = 0;
  for (let k = 0; k < red.length; k += 3) {
    counts[Math.max(red[k]!, green[k]!, blue[k]!)]!++;
    total++;
  }
  return pointOf(counts, total / 2);
}

/** Removes the ink of lines already found, so that the next best can be sought. */
function wipe({ evidence, rows }: Evidence, taken: readonly PenLine[], left: number, right: number): void {
  for (const line of taken) {
    const reach = Math.ceil(line.penWidth) + 2;
    for (let x = left; x <= right; x++) {
      if (line.state[x] === GAP) continue;
      const from = Math.max(0, Math.floor(line.top[x]!) - reach);
      const to = Math.min(rows - 1, Math.ceil(line.bottom[x]!) + reach);
      evidence.fill(0, x * rows + from, x * rows + to + 1);
    }
  }
}

function sameLine(a: PenLine, b: PenLine, left: number, right: number): boolean {
  let both = 0;
  let near = 0;
  let fewer = 0;
  let other = 0;
  for (let x = left; x <= right; x++) {
    if (a.state[x] !== GAP) fewer++;
    if (b.state[x] !== GAP) other++;
    if (a.state[x] === GAP || b.state[x] === GAP) continue;
    both++;
    if (Math.abs(a.row[x]! - b.row[x]!) <= 2 * Math.max(a.penWidth, b.penWidth)) near++;
  }
  return both > 0.3 * Math.min(fewer, other) && near > 0.5 * both;
}

function scaled(found: FoundLine, chart: Chart, geometry: Geometry): StripLine {
  const { line, pen } = found;
  const { left, right, top, bottom, toPhoto } = geometry;
  const [fromMm, toMm] = chart.depthMm;
  const [low, high] = chart.resistance;
  const depthAt = (x: number) => fromMm + ((toMm - fromMm) * (x - left)) / (right - left);
  const levelAt = (y: number) => high + ((low - high) * (y - top)) / (bottom - top);
  const backwards = toMm < fromMm;
  const seen: number[] = [];
  const gapsMm: [number, number][] = [];
  let gapFrom = -1;
  for (let i = 0; i <= right - left; i++) {
    const x = backwards ? right - i : left + i;
    if (line.state[x] === GAP) {
      if (gapFrom < 0) gapFrom = x;
      continue;
    }
    if (gapFrom >= 0) gapsMm.push([depthAt(gapFrom), depthAt(x)]);
    gapFrom = -1;
    seen.push(x);
  }
  if (gapFrom >= 0) gapsMm.push([depthAt(gapFrom), depthAt(backwards ? left : right)]);
  const plain = seen.filter((x) => !onStroke(line, x, LEAP * (bottom - top)));
  // Strokes that are many are no steps but the line's own way.
  const read = plain.length >= (1 - MOST_ON_STROKES) * seen.length ? plain : seen;
  const depthMm = Float64Array.from(read, depthAt);
  const resistancePct = Float64Array.from(read, (x) => levelAt(line.row[x]!));
  const one = Float64Array.from(read, (x) => levelAt(line.top[x]!));
  const two = Float64Array.from(read, (x) => levelAt(line.bottom[x]!));
  const confidence = Float64Array.from(read, (x) => {
    const like = Math.min(1, Math.max(0, (line.likeness[x]! - 0.3) / 0.55));
    return line.state[x] === JOINED ? 0.4 : 0.15 + 0.84 * like;
  });
  const linePx = new Float64Array(2 * read.length);
  const at = new Float64Array(2);
  read.forEach((x, i) => {
    toPhoto(x, line.row[x]!, at);
    linePx.set(at, 2 * i);
  });
  let sum = 0;
  for (const value of confidence) sum += value;
  return {
    depthMm,
    resistancePct,
    confidence,
    topPct: one.map((value, i) => Math.max(value, two[i]!)),
    bottomPct: one.map((value, i) => Math.min(value, two[i]!)),
    linePx,
    coverage: found.coverage,
    sure: sum / Math.max(1, read.length),
    penColour: [1 - pen.colour[0] / PAPER, 1 - pen.colour[1] / PAPER, 1 - pen.colour[2] / PAPER],
    penWidthPx: line.penWidth * geometry.photoPxPerRow,
    gapsMm,
  };
}

/**
 * Whether a column lies on or beside a lone upright stroke: there a hair's breadth of depth is any level, so that the
 * samples on either side say all there is.
 */
function onStroke({ row, state }: PenLine, x: number, leap: number): boolean {
  const step = (a: number) =>
    state[a] === GAP || state[a + 1] === GAP ? Number.NaN : Math.abs(row[a + 1]! - row[a]!);
  // The stroke spans up to three columns, with calm ones before and after.
  for (let a = x - 3; a <= x; a++) {
    for (let b = a; b <= a + 2 && b <= x; b++) {
      if (b + 1 < x) continue;
      let over = 0;
      for (let k = a; k <= b; k++) over += step(k);
      const calm = CALM * leap;
      if (over > leap && [a - 2, a - 1, b + 1, b + 2].every((k) => step(k) < calm)) {
        return x === a || x === b + 1 || (x > a && x <= b);
      }
    }
  }
  return false;
}

const plain = (range: readonly [number, number]) =>
  range.map((value) => String(Number(value.toFixed(1)))).join(' to ');

function warningsOf(lines: readonly StripLine[], chart: Chart, options: ReadStripOptions): string[] {
  const warnings: string[] = [];
  const { cornersFound: found, scaleFrom } = options;
  if (scaleFrom === 'printed numbers') {
    const { depthMm, resistance } = chart;
    warnings.push(
      `The scale was read from the chart's printed numbers, depth ${plain(depthMm)} mm and resistance ${plain(resistance)} %: check it.`,
    );
  }
  if (found && found.sure < WANTS_CHECKING) {
    warnings.push(
      `The chart's corners were found, sure to ${Math.round(100 * found.sure)} % only: check that they lie on the chart's corners.`,
    );
  }
  if (lines.length > 1) {
    warnings.push(
      `${lines.length} lines were found on this chart: check that the one taken is the right one.`,
    );
  }
  const line = lines[0]!;
  if (line.coverage < 0.9) {
    warnings.push(
      `The line could be read along ${Math.round(100 * line.coverage)} % of the chart; the rest is left out.`,
    );
  }
  return warnings;
}
