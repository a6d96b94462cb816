/** The one JSON document a command prints with `--json`. */
import type { Notice } from '@standfast/engine';

/** Digits kept of an estimate: finer than any measurement that goes in, short enough to read. */
const SIGNIFICANT_DIGITS = 6;

/**
 * Prints a document to standard output: keys in the order given, numbers rounded (whole numbers left whole).
 * A number that is not finite becomes null, with a notice that says where.
 * @param digits significant digits kept
 */
export function printJson(document: Record<string, unknown>, digits = SIGNIFICANT_DIGITS): void {
  process.stdout.write(`${JSON.stringify(jsonDocument(document, digits), null, 2)}\n`);
}

/** The document as `printJson` prints it. */
export function jsonDocument(
  document: Record<string, unknown>,
  digits = SIGNIFICANT_DIGITS,
): Record<string, unknown> {
  const lost: string[] = [];
  const copy = roundedCopy(document, '', { digits, lost }) as Record<string, unknown>;
  if (lost.length) {
    const notices: Notice[] = lost.map((where) => ({
      severity: 'caution',
      where,
      text: 'This number could not be computed; it is given as null.',
    }));
    copy.notices = [...((copy.notices as unknown[] | undefined) ?? []), ...notices];
  }
  return copy;
}

/** Rounds to so many significant digits; whole numbers and zero as they are. */
export function rounded(value: number, digits = SIGNIFICANT_DIGITS): number {
  return Number.isInteger(value) ? value : Number(value.toPrecision(digits));
}

function roundedCopy(value: unknown, where: string, how: { digits: number; lost: string[] }): unknown {
  if (typeof value === 'number') {
    if (Number.isFinite(value)) return rounded(value, how.digits);
    how.lost.push(where);
    return null;
  }
  if (ArrayBuffer.isView(value) && !(value instanceof DataView)) {
    return roundedCopy(Array.from(value as unknown as ArrayLike<number>), where, how);
  }
  if (Array.isArray(value)) return value.map((item, i) => roundedCopy(item, `${where}[${i}]`, how));
  if (value && typeof value === 'object') {
    return Object.fromEntries(
      Object.entries(value).map(([key, item]) => [
        key,
        roundedCopy(item, where ? `${where}.${key}` : key, how),
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
