import { lightTheme, toSvg } from '@standfast/report';
import { describe, expect, it } from 'vitest';
import { sharpeningFigure } from './sharpening.ts';

const points = [
  { drillings: 0, p05: 0.4, p50: 0.8, p95: 1.02 },
  { drillings: 1, p05: 0.5, p50: 0.7, p95: 0.9 },
];
const draw = (count: number, shown: number | null, some = points) =>
  sharpeningFigure(some, { width: 360, units: 'metric', count, shown });

describe('the figure of how the picture sharpened', () => {
  it('says in words what it draws', () => {
    expect(draw(3, 1).description).toBe('0: 80 % (40 % to 102 %). 1: 70 % (50 % to 90 %).');
    expect(draw(3, null, []).description).toBe('Nothing worked out yet.');
  });

  it('keeps everything inside the drawing, above full strength too', () => {
    const { plot, height, width } = draw(3, 0);
    expect(plot.share.domain[1]).toBe(1.02);
    expect(plot.share.range[1]).toBeGreaterThan(0);
    expect(plot.share.range[0]).toBeLessThan(height);
    expect(plot.drillings.range[1]).toBeLessThan(width);
  });

  it('lets each step be pressed and labels the one shown', () => {
    const svg = toSvg(draw(2, 1), { theme: lightTheme, idPrefix: 'a' });
    expect(svg.match(/data-part="step"/g)).toHaveLength(2);
    expect(svg).toContain('data-ref="1"');
    expect(svg).toContain('70 % (50 % to 90 %)');
  });
});
