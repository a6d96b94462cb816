/** The lines of pens on a chart laid flat: told apart on a coarse mesh, then followed on the full one. */
import { bestPath, type Path } from './bestPath.ts';
import { coarseInk, darkestInk, type Evidence, FULL, type Ink, likeness, type Pen } from './ink.ts';
import { middleOf } from './middle.ts';
import { PAPER, pointOf } from './paper.ts';
import { GAP, type PenLine, penLine } from './penLine.ts';
import { type Stains, stainsOf, withoutStains } from './stains.ts';

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
/** A line that stays within this share of the chart's height, or two places, along so much of its course is print, a fold or a shadow's edge: every trace moves. */
const STILL = 0.012;
const LEAST_STILL = 2;
const MOST_STILL = 0.9;
/** So many of them may hide the pen's. */
const MOST_STILL_LINES = 3;
/** Ink like the pen's over more of the chart than this share, and three times the line's own, is a pattern. */
const MOST_OTHER_INK = 0.12;
/** Of following lines, what is over when they were told apart on the coarse mesh. */
const TOLD_APART = 0.6;

export interface FoundLine {
  line: PenLine;
  pen: Pen;
  coverage: number;
  score: number;
}

/** The ink a line is sought in, and what of it is known. */
interface Seen {
  ink: Ink;
  /** The same on the coarse mesh, of which `fold` places of the ink lie along one. */
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
const COVERED_PRICE = 0.9;
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
/** Columns and places of the coarse mesh on which lines are told apart. */
const COARSE_COLUMNS = 1000;
const COARSE_PLACES = 400_000;
/** Darkness broader than a stroke is a stain when lighter than this share of the pen's. */
const STAIN_SHARE = 0.6;
/** Blocks of columns in which the pen's strength is looked at. */
const STRENGTH_BLOCKS = 14;

/** Columns and rows at which a chart's edges lie. */
export type Edges = Record<'left' | 'right' | 'top' | 'bottom', number>;

/**
 * Finds the lines: on a coarse mesh by several guesses at what is pen, each followed and its pen learnt; the best of
 * them then again on the full mesh.
 * @param startsAt the side of least depth
 * @param tell told the share done
 * @returns the likeliest first; none where no pen was seen
 */
export function findLines(
  ink: Ink,
  { left, right, top, bottom }: Edges,
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
  const seen = lookAt(coarse, { left: from, right: to, top: top / fold, bottom: bottom / fold }, startsAt);
  const guesses = guessesAt(seen);
  const found = guessed(seen, guesses, (share) => tell(0.85 * TOLD_APART * share));
  // Further lines of any ink, once those found are out of the way.
  tell(0.85 * TOLD_APART);
  const any = guesses[0];
  for (let round = found.length; any && found.length > 0 && round < MOST_LINES; round++) {
    const taken = found.map(({ line }) => line);
    wipe(any, taken, from, to);
    const line = follow(seen, any, taken, []);
    if (!line || line.score < LEAST_SHARE_OF_BEST * found[0]!.score) break;
    keep(found, line, seen);
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

/** The likeliest line on ink that is coarse already; null where no pen was seen. */
export function likeliestLine(ink: Ink, edges: Edges): FoundLine | null {
  const seen = lookAt(ink, edges, 'left');
  const [best] = guessed(seen, guessesAt(seen), () => {}).sort((p, q) => q.score - p.score);
  return best ?? null;
}

function lookAt(coarse: Ink, { left, right, top, bottom }: Edges, startsAt: 'left' | 'right'): Seen {
  const stains = new Map<number, Stains>();
  const grain = grainOf(coarse);
  return { ink: coarse, coarse, fold: 1, stains, left, right, edges: [top, bottom], startsAt, grain };
}

/** What may be pen, before it is known: whatever is darkest and thin, darkest at all, most coloured. */
function guessesAt({ coarse, grain }: Seen): Evidence[] {
  const thin = withoutStains(coarse, stainsOf(coarse, Math.max(9, Math.round(coarse.rows / 24))), 1, PAPER);
  return [darkestInk(thin, false), darkestInk(coarse, false), darkestInk(coarse, true)]
    .filter(({ strength }) => strength >= LEAST_DARKNESS * PAPER && strength >= LEAST_CLEARNESS * grain)
    .map(({ any }) => any);
}

/** The line of each guess, each line once. */
function guessed(seen: Seen, guesses: readonly Evidence[], tell: (share: number) => void): FoundLine[] {
  const found: FoundLine[] = [];
  for (const [i, any] of guesses.entries()) {
    tell(i / guesses.length);
    const line = follow(seen, any, [], found);
    if (line) keep(found, line, seen);
  }
  return found;
}

/** Adds a line to those found, or puts it in the place of the same one seen less well. */
function keep(found: FoundLine[], line: FoundLine, { left, right }: Seen): void {
  const same = found.findIndex((other) => sameLine(other.line, line.line, left, right));
  if (same < 0) found.push(line);
  else if (line.score > found[same]!.score) found[same] = line;
}

/**
 * Follows the likeliest line of any ink, learns its pen from it, and follows that pen's line. A still one is the frame, a
 * fold or a shadow's edge: with its ink out of the way the next is looked for.
 * @param taken lines whose ink is spent
 * @param known lines that need not be followed once more
 */
function follow(
  seen: Seen,
  any: Evidence,
  taken: readonly PenLine[],
  known: readonly FoundLine[],
  mostStill = MOST_STILL_LINES,
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
  if (!pen) return null;
  if (mostStill > 0 && isStill(line, left, right, seen.ink.rows)) {
    const rest = { ...any, evidence: any.evidence.slice() };
    wipe(rest, [line], left, right);
    return follow(seen, rest, [...taken, line], known, mostStill - 1);
  }
  return judged(field, line, pen, seen);
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
  if (isStill(line, left, right, rows)) return null;
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

/** Whether a line keeps to one level on a chart so many rows high. */
function isStill({ row, state }: PenLine, left: number, right: number, rows: number): boolean {
  const at: number[] = [];
  for (let x = left; x <= right; x++) if (state[x] !== GAP) at.push(row[x]!);
  const usual = middleOf(at);
  const near = Math.max(LEAST_STILL, STILL * rows);
  return at.filter((value) => Math.abs(value - usual) <= near).length > MOST_STILL * at.length;
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
