/** A probability as people say it, with the percentage beside it. */
import type { ReportWords } from '../words/en.ts';
import { percent } from './context.ts';

/** `about 1 in 11 (9 %)`. Below 1 in 200 and above 199 in 200 only the bound is given. */
export function chanceInWords(p: number, words: ReportWords['chance']): string {
  if (p < 0.005) return words.none;
  if (p > 0.995) return words.certain;
  return `${ratio(p, words)} (${percent(p)})`;
}

function ratio(p: number, words: ReportWords['chance']): string {
  if (p <= 0.35) return words.oneIn(Math.round(1 / p));
  if (p > 0.45 && p < 0.55) return words.even;
  return words.of(Math.round(p * 10), 10);
}
