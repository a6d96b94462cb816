/** What every part of the report is written with. */
import type { ReadonlyCaseBag } from '@standfast/casefile';
import type { Assessment, DirectionalInterval, Interval } from '@standfast/engine';
import { fixed, type Units } from '../units.ts';
import type { ReportWords } from '../words/en.ts';
import { language, term } from '../words/spoken.ts';
import type { ReportDocument } from './blocks.ts';
import type { ReportCase, ReportOptions } from './input.ts';

export interface Context {
  /** The assessment, its sentences in the report's language. */
  a: Assessment;
  /** The same as the engine said it, to look values up by their names. */
  computed: Assessment;
  c: ReportCase;
  w: ReportWords;
  units: Units;
  options: ReportOptions;
  /** Files of the case, for pictures; null where the report is made without them. */
  files: ReadonlyCaseBag | null;
  /** What it is printed on. */
  paper: ReportDocument['paper'];
  /** Width of a full figure, px. */
  figureWidth: number;
}

/** The direction in which a quantity is least; null when there are none. */
export function least(values: readonly DirectionalInterval[]): DirectionalInterval | null {
  return values.length === 0 ? null : values.reduce((a, b) => (b.p50 < a.p50 ? b : a));
}

/** `1.75 (1.22 to 2.17)`. */
export function withRange({ p05, p50, p95 }: Interval, decimals: number): string {
  return `${fixed(p50, decimals)} (${language().numbers.range(fixed(p05, decimals), fixed(p95, decimals))})`;
}

/** `71 % (63 % to 77 %)` of shares from 0 to 1. */
export function shareRange({ p05, p50, p95 }: Interval): string {
  return `${percent(p50)} (${language().numbers.range(percent(p05), percent(p95))})`;
}

export function percent(share: number): string {
  return `${Math.round(share * 100)}\u00a0%`;
}

/** A probability as a percentage that never claims certainty. */
export function probability(p: number): string {
  if (p > 0.995) return '>\u00a099\u00a0%';
  return p < 0.005 ? '<\u00a01\u00a0%' : percent(p);
}

/** A unit as it is printed: raised powers, nothing for a plain number. */
export function unitText(unit: string): string {
  if (unit === '1' || unit === '') return '';
  return `\u00a0${term('unit', unit)
    .replace(/(m|s)2\b/g, '$1²')
    .replace(/(m|s)3\b/g, '$1³')}`;
}

/** A number to three significant figures, without an exponent. */
export function significant(value: number): string {
  if (value === 0) return '0';
  const decimals = Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value))));
  return fixed(value, Math.min(decimals, 6));
}

/** A date as people write it, `21 April 2026`; other text unchanged. */
export function longDate(date: string, months: readonly string[]): string {
  const found = /^(\d{4})-(\d{2})-(\d{2})/.exec(date);
  if (!found) return date;
  return language().numbers.date(Number(found[3]), months[Number(found[2]) - 1] ?? found[2]!, found[1]!);
}
