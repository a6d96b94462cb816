/** A probability as people say it, with the percentage beside it. */
import type { ReportWords } from '../words/en.ts';
import { percent } from './context.ts';

/** `about 1 in 11 (9 %)`. Below 1 in 200 and above 199 in 200 only the bound is given. */
export function chanceInWords(p: number, words: ReportWords['chance']): string {
  if (p < 0.005) return words.none;
  if (p > 0.995) return words.certain;
  return `${ratio(p, words)} (${percent(p)})`;
}

/** The simple fraction nearest to the chance. */
function ratio(p: number, words: ReportWords['chance']): string {
  if (p <= 0.29) return words.oneIn(Math.round(1 / p));
  let best = { k: 1, n: 2 };
  for (const n of [2, 3, 4, 5, 10]) {
    const k = Math.round(p * n);
    if (k > 0 && k < n && Math.abs(k / n - p) < Math.abs(best.k / best.n - p) - 0.005) best = { k, n };
  }
  return best.k === 1 && best.n === 2 ? words.even : words.of(best.k, best.n);
}
