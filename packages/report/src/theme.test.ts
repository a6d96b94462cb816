import { describe, expect, it } from 'vitest';
import { colourOf, contrast, darkTheme, lightTheme, printTheme, type Theme } from './theme.ts';

/** WCAG 2.2, 1.4.3: text; 1.4.11: graphical objects. */
const TEXT = 4.5;
const GRAPHIC = 3;

describe.each([lightTheme, darkTheme, printTheme] as Theme[])('theme $name', (theme) => {
  const c = theme.colours;

  it('has legible text on every ground it stands on', () => {
    for (const ground of [c.paper, c.tint, c.soundTint])
      expect(contrast(c.ink, ground)).toBeGreaterThan(TEXT);
    for (const paint of [c.secondary, c.accent, c.alarm])
      expect(contrast(paint, c.paper)).toBeGreaterThan(TEXT);
    expect(contrast(c.alarm, c.alarmTint)).toBeGreaterThan(TEXT);
  });

  it('tells sound wood from none, and needles from both', () => {
    expect(contrast(theme.ramp.sound, theme.ramp.none)).toBeGreaterThan(GRAPHIC * 2);
  });

  it('has a soundness ramp that only darkens (or only lightens)', () => {
    const ground = contrast(theme.ramp.none, theme.ramp.none);
    let last = ground;
    for (let s = 0.1; s <= 1.001; s += 0.1) {
      const now = contrast(colourOf({ soundness: s }, theme), theme.ramp.none);
      expect(now).toBeGreaterThan(last);
      last = now;
    }
  });
});

describe('contrast', () => {
  it('is 21 for black on white and 1 for like on like', () => {
    expect(contrast('#000000', '#ffffff')).toBeCloseTo(21, 6);
    expect(contrast('#0e5a64', '#0e5a64')).toBe(1);
  });
});
