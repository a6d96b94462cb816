/**
 * Numbers as people and programs write them. Nothing is guessed here: the decimal and thousands signs are given, and
 * what does not follow them is no number.
 */
import type { DecimalSign, ThousandsSign } from './types.ts';

export interface NumberFormat {
  decimal: DecimalSign;
  thousands: ThousandsSign;
}

const PERCENT = 37;
/** The minus sign of typesetters, U+2212, which some programs write. */
const MINUS_SIGN = 0x2212;

/** A reader of cells in one format: the number, or null when the text is none. */
export function numberReader({ decimal, thousands }: NumberFormat): (text: string) => number | null {
  const point = decimal === '.' ? '\\.' : ',';
  const group = GROUP[thousands];
  // Grouped numbers begin with 1 to 3 digits, the first not zero: 0.100 is never a hundred.
  const whole = group ? `(?:[1-9]\\d{0,2}(?:${group}\\d{3})+|\\d+)` : '\\d+';
  const pattern = new RegExp(`^[+\\-\u2212]?(?:${whole}(?:${point}\\d*)?|${point}\\d+)(?:[eE][+-]?\\d+)?$`);
  const groups = group ? new RegExp(group, 'g') : null;
  return (text) => {
    let bare = text.trim();
    if (bare.charCodeAt(bare.length - 1) === PERCENT) bare = bare.slice(0, -1).trimEnd();
    if (!pattern.test(bare)) return null;
    let plain = groups ? bare.replace(groups, '') : bare;
    if (decimal === ',') plain = plain.replace(',', '.');
    if (plain.charCodeAt(0) === MINUS_SIGN) plain = `-${plain.slice(1)}`;
    const value = Number(plain);
    return Number.isFinite(value) ? value : null;
  };
}

const GROUP: Record<ThousandsSign, string> = {
  '': '',
  ',': ',',
  '.': '\\.',
  ' ': '[ \u00a0\u2009\u202f]',
  "'": "['\u2019]",
};
