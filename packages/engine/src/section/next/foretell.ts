/**
 * How far an answer foretells the decision: the section's safety is regressed on the answers over the draws, and each
 * draw gets the score that its answer gives it (the regression way to the value of a measurement: Strong, Oakley &
 * Brennan 2014, Medical Decision Making 34). Draws with like scores are those that one could not tell apart.
 */
import { cholesky, solveLower, solveUpperOfLower } from '../field/linear.ts';

/** Ridge on the standard scale of the answers (0 to 1): a few draws' worth of doubt on each coefficient. */
const RIDGE = 2;
/**
 * Safety within about this of the limit (log scale), and the spread that wind and wood add, is told apart; beyond it, more
 * is no matter. What a hole does for the decision turns near the limit; what it tells of the section is looked at more
 * widely, for a model that errs may be sure of the one and wrong about the other.
 */
export const NEAR = { toDecide: 0.25, toKnow: 0.6 };

/** Classes of like scores. */
const CLASSES = 10;

/**
 * The section's own safety over the limit, on a scale that is steep at the limit and flat far from it. What wind and wood
 * add by chance is left out, for no needle foretells it.
 */
export function margins(
  { safetyByDraw, safetyOfSection }: { safetyByDraw: Float64Array; safetyOfSection: Float64Array },
  limit: number,
  count: number,
  within: number,
): Float64Array {
  const log = (v: number) => Math.log(Math.max(1e-6, v));
  let squares = 0;
  for (let i = 0; i < count; i++) squares += (log(safetyByDraw[i]!) - log(safetyOfSection[i]!)) ** 2;
  const near = within + Math.sqrt(squares / count);
  return Float64Array.from({ length: count }, (_, i) => Math.tanh(log(safetyOfSection[i]! / limit) / near));
}

/**
 * Scores of the draws by what the answers say of their margins, one row of scores for each kind of margins. Each half of the
 * draws is scored by what was learned on the other half, so that chance is not taken for knowledge.
 *
 * @param answers for each needle its answers, rows of `size` numbers
 */
export function scores(
  answers: readonly Float64Array[],
  size: number,
  ...kinds: readonly Float64Array[]
): Float64Array[] {
  const draws = answers[0]!.length / size;
  const columns = answers.length * size + 1;
  // One row a draw, a last column of ones.
  const rows = new Float64Array(draws * columns).fill(1);
  answers.forEach((a, k) => {
    for (let i = 0; i < draws; i++) {
      for (let j = 0; j < size; j++) rows[i * columns + k * size + j] = a[i * size + j]!;
    }
  });
  const out = kinds.map(() => new Float64Array(draws));
  const square = new Float64Array(columns * columns);
  for (const half of [0, 1]) {
    square.fill(0);
    for (let i = half; i < draws; i += 2) {
      const from = i * columns;
      for (let p = 0; p < columns; p++) {
        const r = rows[from + p]!;
        const at = p * columns;
        for (let q = 0; q <= p; q++) square[at + q] = square[at + q]! + r * rows[from + q]!;
      }
    }
    for (let p = 0; p < columns; p++) {
      square[p * columns + p] = square[p * columns + p]! + (p < columns - 1 ? RIDGE : 1e-6);
    }
    cholesky(square, columns);
    kinds.forEach((margin, kind) => {
      const slopes = new Float64Array(columns);
      for (let i = half; i < draws; i += 2) {
        const from = i * columns;
        const m = margin[i]!;
        for (let p = 0; p < columns; p++) slopes[p] = slopes[p]! + rows[from + p]! * m;
      }
      solveLower(square, columns, slopes);
      solveUpperOfLower(square, columns, slopes);
      const scored = out[kind]!;
      for (let i = 1 - half; i < draws; i += 2) {
        let score = 0;
        for (let p = 0; p < columns; p++) score += slopes[p]! * rows[i * columns + p]!;
        scored[i] = score;
      }
    });
  }
  return out;
}

/** Share of the spread of the margins that the scores explain: 0 when they tell nothing, 1 when they tell all. */
export function told(score: Float64Array, margin: Float64Array): number {
  const mean = margin.reduce((sum, m) => sum + m, 0) / margin.length;
  let spread = 0;
  let missed = 0;
  for (let i = 0; i < margin.length; i++) {
    spread += (margin[i]! - mean) ** 2;
    missed += (margin[i]! - score[i]!) ** 2;
  }
  return spread > 0 ? Math.max(0, 1 - missed / spread) : 0;
}

/** What would be left of the doubt once an answer is known. */
export interface Left {
  /** Chance of a wrong decision. */
  wrong: number;
  /** Mean over the answers of p (1 − p), p being the chance after it that the tree must be acted on. */
  doubt: number;
}

/**
 * What is left when draws with like scores are put together in classes. In each class the decision is taken on one half
 * of the draws and judged on the other.
 *
 * @param fails whether each draw of the section is below the limit
 * @param safeOtherwise chance that nothing else calls for acting
 */
export function leftAfter(
  score: Float64Array,
  fails: Uint8Array,
  safeOtherwise: number,
  classes = CLASSES,
): Left {
  const draws = score.length;
  const sorted = Float64Array.from(score).sort();
  const edges = Array.from(
    { length: classes - 1 },
    (_, c) => sorted[Math.floor(((c + 1) * draws) / classes)]!,
  );
  const failing = new Float64Array(2 * classes);
  const sizes = new Float64Array(2 * classes);
  for (let d = 0; d < draws; d++) {
    let c = 0;
    while (c < classes - 1 && score[d]! >= edges[c]!) c++;
    const cell = 2 * c + ((d >> 1) & 1);
    sizes[cell] = sizes[cell]! + 1;
    failing[cell] = failing[cell]! + fails[d]!;
  }
  let wrong = 0;
  let doubt = 0;
  for (let c = 0; c < classes; c++) {
    const size = sizes[2 * c]! + sizes[2 * c + 1]!;
    if (size < 2) continue;
    const mustAct = (half: number) =>
      1 - (1 - failing[2 * c + half]! / Math.max(1, sizes[2 * c + half]!)) * safeOtherwise;
    for (const half of [0, 1]) {
      const other = mustAct(1 - half);
      wrong += (sizes[2 * c + 1 - half]! / draws) * (mustAct(half) > 0.5 ? 1 - other : other);
    }
    // Of a share found on `size` draws, p (1 − p) is too small by one part in `size`.
    const share = (failing[2 * c]! + failing[2 * c + 1]!) / size;
    const acted = 1 - (1 - share) * safeOtherwise;
    const sampling = (safeOtherwise ** 2 * share * (1 - share)) / (size - 1);
    doubt += (size / draws) * (acted * (1 - acted) + sampling);
  }
  return { wrong, doubt };
}
