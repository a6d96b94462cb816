import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { contrast, darkTheme, lightTheme, type Theme } from '@standfast/report';
import { describe, expect, it } from 'vitest';

const css = readFileSync(join(import.meta.dirname, 'tokens.css'), 'utf8');
const [light = '', dark = ''] = css.slice(css.indexOf(':root {')).split(':root[data-theme="dark"]');

/** WCAG 2.2 level AA for text, and for the edges of controls. */
const TEXT = 4.5;
const EDGE = 3;

function token(block: string, name: string): string {
  return new RegExp(`--${name}: (#[0-9a-f]{6})`).exec(block)?.[1] ?? '';
}

describe.each<[string, string, Theme]>([
  ['light', light, lightTheme],
  ['dark', dark, darkTheme],
])('%s', (_name, block, theme) => {
  it('has the figures’ colours', () => {
    const kebab = (name: string) => name.replace(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`);
    for (const name of ['paper', 'sheet', 'ink', 'secondary', 'rule', 'tint', 'accent', 'alarm'] as const) {
      expect([name, token(block, kebab(name))]).toEqual([name, theme.colours[name]]);
    }
  });

  it('is legible', () => {
    for (const ground of ['paper', 'sheet', 'tint']) {
      for (const text of ['ink', 'secondary', 'accent', 'alarm']) {
        const ratio = contrast(token(block, text), token(block, ground));
        expect([text, ground, ratio >= TEXT]).toEqual([text, ground, true]);
      }
    }
    expect(contrast(token(block, 'alarm'), token(block, 'alarm-tint'))).toBeGreaterThanOrEqual(TEXT);
    expect(contrast(token(block, 'accent'), token(block, 'accent-tint'))).toBeGreaterThanOrEqual(TEXT);
    expect(contrast(token(block, 'on-accent'), token(block, 'accent'))).toBeGreaterThanOrEqual(TEXT);
    expect(contrast(token(block, 'edge'), token(block, 'paper'))).toBeGreaterThanOrEqual(EDGE);
  });
});
