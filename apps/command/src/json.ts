/** The one JSON document a command prints with `--json`. */
import type { Notice } from '@standfast/engine';

/** Digits kept: finer than any measurement that goes in, short enough to read. */
const SIGNIFICANT_DIGITS = 6;

/**
 * Prints a document to standard output: keys in the order given, numbers rounded to six significant digits
 * (whole numbers left whole). A number that is not finite becomes null, with a notice that says where.
 */
export function printJson(document: Record<string, unknown>): void {
  const lost: string[] = [];
  const rounded = roundedCopy(document, '', lost) as Record<string, unknown>;
  if (lost.length) {
    const notices: Notice[] = lost.map((where) => ({
      severity: 'caution',
      where,
      text: 'This number could not be computed; it is given as null.',
    }));
    rounded.notices = [...((rounded.notices as unknown[] | undefined) ?? []), ...notices];
  }
  process.stdout.write(`${JSON.stringify(rounded, null, 2)}\n`);
}

/** Rounds to the digits kept; whole numbers and zero as they are. */
export function rounded(value: number): number {
  return Number.isInteger(value) ? value : Number(value.toPrecision(SIGNIFICANT_DIGITS));
}

function roundedCopy(value: unknown, where: string, lost: string[]): unknown {
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return rounded(value);
    lost.push(where);
    return null;
  }
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    return roundedCopy(Array.from(value as unknown as ArrayLike<number>), where, lost);
  }
  if (Array.isArray(value)) return value.map((item, i) => roundedCopy(item, `${where}[${i}]`, lost));
  if (value && typeof value === 'object') {
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [
        key,
        roundedCopy(item, where ? `${where}.${key}` : key, lost),
      ]),
    );
  }
  return value;
}

/** A copy with the named keys first, in that order, and the others after them. */
export function keysFirst<T extends object>(value: T, first: readonly (keyof T & string)[]): T {
  const head = Object.fromEntries(first.filter((key) => key in value).map((key) => [key, value[key]]));
  return { ...head, ...value, ...head } as T;
}
