/**
 * The look, in one place: palette for paper and dark screens, and the fonts. Figures name a paint by what it
 * stands for (`ink`, `rule`, `alarm`, a soundness); the theme says what colour that is.
 */

/** What a stroke or fill stands for. `{ soundness }` runs from 0 (no strength, paper) to 1 (sound, graphite). */
export type Paint =
  | 'paper'
  | 'sheet'
  | 'ink'
  | 'secondary'
  | 'rule'
  | 'tint'
  | 'accent'
  | 'accentTint'
  | 'alarm'
  | 'alarmTint'
  | 'soundTint'
  | 'onSound'
  | { soundness: number };

export interface Theme {
  name: 'light' | 'dark';
  /** Colour of each named paint, `#rrggbb`. */
  colours: Record<Exclude<Paint, object>, string>;
  /** The two ends of the single-hue soundness ramp, `#rrggbb`. */
  ramp: { none: string; sound: string };
}

/** Ink on warm paper: print, and the screen in daylight. */
export const lightTheme: Theme = {
  name: 'light',
  colours: {
    paper: '#fbfaf6',
    sheet: '#ffffff',
    ink: '#1c1f23',
    secondary: '#5b5f66',
    rule: '#d9d5cb',
    tint: '#f0ede4',
    accent: '#0e5a64',
    accentTint: '#d5e3e3',
    alarm: '#b93a1b',
    alarmTint: '#f6e1d9',
    soundTint: '#b9b3a7',
    onSound: '#fbfaf6',
  },
  ramp: { none: '#fbfaf6', sound: '#4a4640' },
};

/** Paper and ink swapped, in warm tones. */
export const darkTheme: Theme = {
  name: 'dark',
  colours: {
    paper: '#1b1a17',
    sheet: '#23211d',
    ink: '#f1ede3',
    secondary: '#b3ada0',
    rule: '#45413a',
    tint: '#2a2823',
    accent: '#6fc0c9',
    accentTint: '#23393b',
    alarm: '#f08a68',
    alarmTint: '#43271d',
    soundTint: '#66625a',
    onSound: '#1b1a17',
  },
  ramp: { none: '#1b1a17', sound: '#cfc8b9' },
};

/** The paper theme on a white sheet, for the PDF: no tinted ground to print. */
export const printTheme: Theme = {
  ...lightTheme,
  colours: { ...lightTheme.colours, paper: '#ffffff', onSound: '#ffffff' },
  ramp: { none: '#ffffff', sound: '#4a4640' },
};

export const fontFamilies = {
  heading: "'Source Serif 4', 'Source Serif Pro', Georgia, serif",
  text: "'Source Sans 3', 'Source Sans Pro', 'Segoe UI', 'Helvetica Neue', Arial, sans-serif",
} as const;

/** `#rrggbb` of a paint in a theme. */
export function colourOf(paint: Paint, theme: Theme): string {
  if (typeof paint === 'string') return theme.colours[paint];
  return mix(theme.ramp.none, theme.ramp.sound, Math.min(1, Math.max(0, paint.soundness)));
}

/** Linear mix of two `#rrggbb` colours. */
function mix(from: string, to: string, share: number): string {
  const a = channels(from);
  const b = channels(to);
  return `#${a
    .map((v, i) =>
      Math.round(v + (b[i]! - v) * share)
        .toString(16)
        .padStart(2, '0'),
    )
    .join('')}`;
}

function channels(hex: string): number[] {
  return [1, 3, 5].map((at) => Number.parseInt(hex.slice(at, at + 2), 16));
}

/** Contrast ratio of two `#rrggbb` colours, 1 to 21 (WCAG 2.2, relative luminance). */
export function contrast(one: string, other: string): number {
  const [a, b] = [luminance(one), luminance(other)];
  return (Math.max(a, b) + 0.05) / (Math.min(a, b) + 0.05);
}

function luminance(hex: string): number {
  const [r, g, b] = channels(hex).map((v) => {
    const s = v / 255;
    return s <= 0.04045 ? s / 12.92 : ((s + 0.055) / 1.055) ** 2.4;
  });
  return 0.2126 * r! + 0.7152 * g! + 0.0722 * b!;
}
