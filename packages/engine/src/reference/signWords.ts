/**
 * Whether a recorded sign speaks of something, by the patterns of the sign tables.
 *
 * Kind and note are read. A word that the note denies (`no heave`, `without ants`) does not count.
 */
import type { SignInput } from '../case.ts';

/** Words that deny what follows them within a few words of one clause. */
const DENIAL = /\b(no|not|none|never|without|free of|nil)\b[^.;,:]{0,30}$/i;

/** Whether the sign's kind or note matches a table's pattern and is not denied. */
export function signSpeaksOf(sign: SignInput, pattern: string): boolean {
  const expression = new RegExp(pattern, 'gi');
  for (const text of [sign.kind.replaceAll('-', ' '), sign.note ?? '']) {
    for (const match of text.matchAll(expression)) {
      if (!DENIAL.test(text.slice(0, match.index))) return true;
    }
  }
  return false;
}

/** A sign in the reader's words: what, and where. */
export function signName(sign: SignInput): string {
  return sign.where ? `${sign.kind} (${sign.where})` : sign.kind;
}
