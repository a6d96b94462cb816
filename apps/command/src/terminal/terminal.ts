/** What the place that text goes to can show. */

export interface Terminal {
  /** Columns to use. */
  width: number;
  colour: boolean;
  /** Whether characters beyond ASCII can be expected to show. */
  unicode: boolean;
}

const NARROWEST = 40;
const WIDEST = 110;
/** Width of a page when the output is no terminal. */
const PAGE_WIDTH = 80;

/**
 * Judges a terminal by what is known of it: NO_COLOR and FORCE_COLOR are honoured, COLUMNS sets the width of
 * output that is no terminal, and a locale that is not UTF-8 means ASCII only.
 */
export function terminalOf(
  stream: { isTTY?: boolean; columns?: number },
  env: Record<string, string | undefined>,
  platform: string,
): Terminal {
  const columns = stream.columns ?? (Number(env.COLUMNS) || PAGE_WIDTH);
  const dumb = env.TERM === 'dumb';
  const locale = env.LC_ALL || env.LC_CTYPE || env.LANG || '';
  return {
    width: Math.min(WIDEST, Math.max(NARROWEST, columns)),
    colour:
      !env.NO_COLOR &&
      (Boolean(env.FORCE_COLOR && env.FORCE_COLOR !== '0') || (Boolean(stream.isTTY) && !dumb)),
    unicode:
      platform === 'win32'
        ? Boolean(env.WT_SESSION || env.TERM_PROGRAM)
        : /utf-?8/i.test(locale) && !dumb && env.TERM !== 'linux',
  };
}

/** Our own signs and what stands for them where only ASCII shows. */
const ASCII: Record<string, string> = {
  '°': ' deg',
  '²': '2',
  '³': '3',
  '⁴': '4',
  '–': '-',
  '—': '-',
  '−': '-',
  '…': '...',
  '≥': '>=',
  '≤': '<=',
  '±': '+/-',
  '×': 'x',
  '·': '.',
  '’': "'",
  '“': '"',
  '”': '"',
  '→': '->',
  '↑': '^',
  '│': '|',
  '─': '-',
  '┼': '+',
};
const SIGNS = new RegExp(`[${Object.keys(ASCII).join('')}]`, 'g');

/** Text as this terminal can show it; letters of people's names are left as they are. */
export function shown(text: string, terminal: Terminal): string {
  return terminal.unicode ? text : text.replace(SIGNS, (sign) => ASCII[sign]!);
}

export type Tone = 'strong' | 'quiet' | 'alarm';
const CODES: Record<Tone, [on: number, off: number]> = { strong: [1, 22], quiet: [2, 22], alarm: [31, 39] };

/** Sets the tone of a text where colours show; never the only carrier of a meaning. */
export function toned(text: string, tone: Tone, terminal: Terminal): string {
  if (!terminal.colour) return text;
  const [on, off] = CODES[tone];
  return `\u001b[${on}m${text}\u001b[${off}m`;
}
