/**
 * Where a text stops being JSON (RFC 8259). The machine's own parser does not say so for every fault, and a person
 * with a file of a thousand lines must know where to look.
 */

const NUMBER = /-?(?:0|[1-9]\d*)(?:\.\d+)?(?:[eE][+-]?\d+)?/y;
const WORD = /true|false|null/y;
const SPACE = /[ \t\r\n]*/y;
const ESCAPE = /\\(?:["\\/bfnrt]|u[\da-fA-F]{4})/y;

/**
 * The line and column (from 1) of the first character that cannot stand where it does, or of the end when the text
 * ends too early; null when the text is JSON.
 */
export function whereJsonBreaks(text: string): { line: number; column: number; atEnd: boolean } | null {
  const at = firstBreak(text);
  if (at === null) return null;
  const before = text.slice(0, at).split('\n');
  return {
    line: before.length,
    column: before[before.length - 1]!.length + 1,
    atEnd: text.slice(at).trim() === '',
  };
}

function firstBreak(text: string): number | null {
  let at = 0;
  /** Moves past what the pattern matches here; says whether it did. */
  const pass = (pattern: RegExp): boolean => {
    pattern.lastIndex = at;
    if (!pattern.test(text)) return false;
    at = pattern.lastIndex;
    return true;
  };
  const passString = (): boolean => {
    at++;
    for (;;) {
      const c = text.charCodeAt(at);
      // The end of the text (NaN) and control characters cannot stand in a string.
      if (!(c >= 0x20)) return false;
      if (c === 0x5c) {
        if (!pass(ESCAPE)) return false;
      } else {
        at++;
        if (c === 0x22) return true;
      }
    }
  };
  /** What closes each list or object that is open, the innermost last. */
  const open: string[] = [];
  let expects: 'value' | 'value or end' | 'key' | 'key or end' | 'comma or end' = 'value';
  for (;;) {
    pass(SPACE);
    const c = text[at];
    const closes = open[open.length - 1];
    if (expects === 'comma or end') {
      if (closes === undefined) return at < text.length ? at : null;
      if (c === ',') {
        at++;
        expects = closes === '}' ? 'key' : 'value';
      } else if (c === closes) {
        at++;
        open.pop();
      } else return at;
    } else if (c !== undefined && c === closes && expects.endsWith('or end')) {
      at++;
      open.pop();
      expects = 'comma or end';
    } else if (expects.startsWith('key')) {
      if (c !== '"' || !passString()) return at;
      pass(SPACE);
      if (text[at] !== ':') return at;
      at++;
      expects = 'value';
    } else if (c === '{' || c === '[') {
      at++;
      open.push(c === '{' ? '}' : ']');
      expects = c === '{' ? 'key or end' : 'value or end';
    } else if (c === '"' ? passString() : pass(WORD) || pass(NUMBER)) expects = 'comma or end';
    else return at;
  }
}
