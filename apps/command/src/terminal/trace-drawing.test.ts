import type { Trace, Zone } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import type { Terminal } from './terminal.ts';
import { widthOf } from './text.ts';
import { band, legend, traceDrawing } from './trace-drawing.ts';

const ascii: Terminal = { width: 66, colour: false, unicode: false };
const unicode: Terminal = { ...ascii, unicode: true };

const zone = (kind: Zone['kind'], fromMm: number, toMm: number): Zone => ({
  kind,
  fromMm,
  toMm,
  confidence: 0.9,
});
const zones = [
  zone('air', 0, 10),
  zone('bark', 10, 30),
  zone('sound', 30, 150),
  zone('crack', 150, 152),
  zone('sound', 152, 200),
  zone('decayed', 200, 240),
  zone('void', 240, 300),
];

/** A level for each zone, and one reading that stands out. */
const trace: Trace = {
  depthMm: Float64Array.from({ length: 3000 }, (_, i) => i / 10),
  resistancePct: Float64Array.from({ length: 3000 }, (_, i) => {
    if (i === 1000) return 88;
    return i < 100 ? 0 : i < 300 ? 8 : i < 2000 ? 40 : 5;
  }),
};

describe('the drawing of a trace', () => {
  it('keeps to the width of the terminal', () => {
    for (const terminal of [ascii, unicode]) {
      for (const line of traceDrawing(trace, zones, terminal)) expect(widthOf(line)).toBeLessThanOrEqual(66);
    }
  });

  it('uses no character beyond ASCII where those may not show', () => {
    // biome-ignore lint/suspicious/noControlCharactersInRegex: the range of ASCII
    expect([...traceDrawing(trace, zones, ascii), legend(zones, ascii)].join('')).toMatch(/^[\x00-\x7f]*$/);
  });

  it('shows a single reading that stands out', () => {
    const [top] = traceDrawing(trace, zones, ascii);
    expect(top).toMatch(/^ 90 % +\*$/);
    // 100 of 300 mm along, after the label.
    expect(top!.indexOf('*') - 6).toBe(20);
  });

  it('puts each zone where it lies, and never loses a crack narrower than a column', () => {
    expect(band(zones, 0, 300, 30, ascii)).toBe(' ::############|####----......');
  });

  it('explains only the signs that occur', () => {
    expect(legend(zones.slice(0, 3), ascii)).toBe(':: bark   ## sound');
  });
});
