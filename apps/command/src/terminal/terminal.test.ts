import { describe, expect, it } from 'vitest';
import { shown, terminalOf, toned } from './terminal.ts';

const utf8 = { LANG: 'en_GB.UTF-8', TERM: 'xterm-256color' };

describe('what a terminal can show', () => {
  it('colours a terminal, but not a file', () => {
    expect(terminalOf({ isTTY: true, columns: 90 }, utf8, 'linux')).toEqual({
      width: 90,
      colour: true,
      unicode: true,
    });
    expect(terminalOf({}, utf8, 'linux')).toEqual({ width: 80, colour: false, unicode: true });
  });

  it('honours NO_COLOR before all else', () => {
    const env = { ...utf8, NO_COLOR: '1', FORCE_COLOR: '1' };
    expect(terminalOf({ isTTY: true }, env, 'linux').colour).toBe(false);
  });

  it('keeps to ASCII where the locale is not UTF-8', () => {
    expect(terminalOf({ isTTY: true }, { TERM: 'xterm' }, 'linux').unicode).toBe(false);
    expect(terminalOf({ isTTY: true }, { ...utf8, LC_ALL: 'C' }, 'linux').unicode).toBe(false);
  });

  it('stays within sensible widths', () => {
    expect(terminalOf({ columns: 10 }, utf8, 'linux').width).toBe(40);
    expect(terminalOf({ columns: 400 }, utf8, 'linux').width).toBe(110);
  });
});

it('writes our signs in ASCII and leaves names as they are', () => {
  const ascii = { width: 80, colour: false, unicode: false };
  expect(shown('Zoë: 40° ≥ 1.5 mm²', ascii)).toBe('Zoë: 40 deg >= 1.5 mm2');
});

it('adds no colour codes where colours do not show', () => {
  expect(toned('x', 'alarm', { width: 80, colour: false, unicode: true })).toBe('x');
});
