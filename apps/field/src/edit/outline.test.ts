import { describe, expect, it } from 'vitest';
import { outlineAs } from './outline.ts';

describe('changing the kind of an outline', () => {
  it('keeps the size', () => {
    const circle = { kind: 'circle', diameterMm: 900 } as const;
    const radii = outlineAs(circle, 'radii');
    expect(radii.kind === 'radii' && radii.radii.map(({ radiusMm }) => radiusMm)).toEqual(Array(8).fill(450));
    expect(outlineAs(radii, 'circle')).toEqual(circle);
    expect(outlineAs(circle, 'ellipse')).toMatchObject({ longMm: 900, shortMm: 900 });
    const polygon = outlineAs(circle, 'polygon');
    expect(polygon.kind === 'polygon' && polygon.points[2]).toEqual([450, 0]);
  });

  it('finds the long axis', () => {
    const ellipse = { kind: 'ellipse', longMm: 1000, shortMm: 600, longAxisDeg: 45 } as const;
    const there = outlineAs(ellipse, 'radii');
    expect(outlineAs(there, 'ellipse')).toEqual(ellipse);
  });

  it('leaves the same kind alone, and starts afresh from one that cannot be drawn', () => {
    const broken = { kind: 'radii', radii: [] } as const;
    expect(outlineAs({ ...broken, radii: [] }, 'circle')).toEqual({ kind: 'circle', diameterMm: 600 });
    const circle = { kind: 'circle', diameterMm: 1 } as const;
    expect(outlineAs(circle, 'circle')).toBe(circle);
  });
});
