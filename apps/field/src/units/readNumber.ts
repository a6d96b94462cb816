/** Reads a number as a person types it, and asks rather than guesses when it can be read two ways. */

export type NumberRead = { ok: true; value: number } | { ok: false; message: string };

const TYPED = /^[+\-−]?(\d+([.,]\d*)?|[.,]\d+)$/;

/**
 * A decimal point or a decimal comma is fine. `1,250` may be one and a quarter or twelve hundred and fifty: it is
 * refused with both ways of writing it. Spaces between thousands are taken out.
 */
export function readNumber(text: string): NumberRead {
  const typed = text.trim().replace(/(?<=\d)[\s\u00a0\u202f](?=\d{3})/g, '');
  if (typed === '') return { ok: false, message: 'Enter a number.' };
  if (!TYPED.test(typed)) {
    return { ok: false, message: `“${text.trim()}” is not a number. Use digits and one decimal sign.` };
  }
  const clash = /^[+\-−]?([1-9]\d*),(\d{3})$/.exec(typed);
  if (clash) {
    const [, whole = '', rest = ''] = clash;
    return {
      ok: false,
      message: `“${text.trim()}” can be read two ways. Write ${whole}${rest} or ${whole}.${rest}.`,
    };
  }
  return { ok: true, value: Number(typed.replace('−', '-').replace(',', '.')) };
}

/** What a number must satisfy beyond being one. Limits are in stored units. */
export interface Limits {
  min?: number;
  max?: number;
  /** The limit itself is not allowed, for example a diameter of 0. */
  aboveMin?: boolean;
}

/** The complaint about a stored value outside its limits, in shown units, or null. */
export function outsideLimits(
  stored: number,
  limits: Limits,
  shown: (stored: number) => string,
): string | null {
  const { min, max, aboveMin } = limits;
  if (min !== undefined && (aboveMin ? stored <= min : stored < min)) {
    return aboveMin ? `Must be more than ${shown(min)}.` : `Must be at least ${shown(min)}.`;
  }
  if (max !== undefined && stored > max) return `Must be at most ${shown(max)}.`;
  return null;
}
