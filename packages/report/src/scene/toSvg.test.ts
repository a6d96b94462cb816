import { describe, expect, it } from 'vitest';
import { darkTheme, lightTheme } from '../theme.ts';
import { circle, filled, group, line, text } from './marks.ts';
import type { Scene } from './scene.ts';
import { toSvg } from './toSvg.ts';

const scene: Scene = {
  width: 100,
  height: 50,
  title: 'A & B',
  description: 'Two marks',
  items: [
    group(
      { part: 'drilling', ref: 's1/d1', title: 'd1 <first>' },
      [line([0, 0], [10, 5], 'ink')],
      'M0 0L5 0L5 5Z',
    ),
    filled(circle(20, 20, 5), { soundness: 1 }, { opacity: 0.5 }),
    text(3, 4, '"x" < y', { anchor: 'middle', rotateDeg: 90 }),
  ],
};

describe('toSvg', () => {
  const svg = toSvg(scene, { idPrefix: 'f1' });

  it('carries title and description as accessible name', () => {
    expect(svg).toContain('role="img" aria-labelledby="f1-title" aria-describedby="f1-desc"');
    expect(svg).toContain('<title id="f1-title">A &amp; B</title>');
  });

  it('says what parts mean', () => {
    expect(svg).toContain(
      '<g data-part="drilling" data-ref="s1/d1" clip-path="url(#f1-clip1)"><title>d1 &lt;first&gt;</title>',
    );
    expect(svg).toContain('<clipPath id="f1-clip1"><path d="M0 0L5 0L5 5Z"/></clipPath>');
  });

  it('escapes text and turns it about its place', () => {
    expect(svg).toContain('transform="rotate(90 3 4)">&quot;x&quot; &lt; y</text>');
  });

  it('takes colours from the theme', () => {
    expect(svg).toContain(lightTheme.ramp.sound);
    expect(toSvg(scene, { theme: darkTheme })).toContain(darkTheme.ramp.sound);
    expect(toSvg(scene, { theme: darkTheme })).not.toContain(lightTheme.colours.ink);
  });

  it('gives the same text twice', () => {
    expect(toSvg(scene, { idPrefix: 'f1' })).toBe(svg);
  });
});
