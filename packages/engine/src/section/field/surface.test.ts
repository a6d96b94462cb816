import { describe, expect, it } from 'vitest';
import { cambiumRing } from '../cambium.ts';
import { outlineRing } from '../outline.ts';
import type { SurfaceArc } from '../types.ts';
import { fieldFrame } from './frame.ts';
import { FIELD_PRIOR } from './prior.ts';
import { surfaceSites } from './surface.ts';

const outline = outlineRing({ kind: 'circle', diameterMm: 900 });
const BARK_MM = 20;
const frame = fieldFrame(cambiumRing(outline, BARK_MM));
const sitesOf = (arcs: SurfaceArc[]) => surfaceSites(outline, BARK_MM, frame, arcs, FIELD_PRIOR);
const azimuthsOf = (arcs: SurfaceArc[], state: SurfaceArc['state']) =>
  sitesOf(arcs)
    .filter((s) => s.sound === FIELD_PRIOR.surfaceFoundAs[state][2])
    .map((s) => Math.round(((s.angleRad * 180) / Math.PI + 360) % 360))
    .sort((a, b) => a - b);

describe('surfaceSites', () => {
  it('says nothing where nothing was looked at', () => {
    expect(sitesOf([])).toEqual([]);
    const azimuths = azimuthsOf([{ fromDeg: 300, toDeg: 20, state: 'sound' }], 'sound');
    expect(azimuths.every((a) => a >= 304 || a <= 16)).toBe(true);
    expect(azimuths.length).toBe(7);
  });

  it('stands just under the bark, all round when all of it was looked at', () => {
    const sites = sitesOf([{ fromDeg: 0, toDeg: 0, state: 'sound' }]);
    expect(sites.length).toBe(30);
    for (const site of sites) expect(site.rho).toBeCloseTo(0.97, 3);
  });

  it('lets the worse of two findings hold where they overlap', () => {
    const arcs: SurfaceArc[] = [
      { fromDeg: 0, toDeg: 360, state: 'sound' },
      { fromDeg: 80, toDeg: 120, state: 'open' },
      { fromDeg: 100, toDeg: 140, state: 'decayed' },
    ];
    expect(azimuthsOf(arcs, 'open').every((a) => a >= 84 && a <= 116)).toBe(true);
    expect(azimuthsOf(arcs, 'decayed').every((a) => a >= 122 && a <= 138)).toBe(true);
    expect(azimuthsOf(arcs, 'sound').every((a) => a >= 144 || a <= 76)).toBe(true);
    expect(sitesOf([...arcs].reverse())).toEqual(sitesOf(arcs));
  });

  it('has a site in the middle of the narrowest opening', () => {
    expect(azimuthsOf([{ fromDeg: 44, toDeg: 46, state: 'open' }], 'open').length).toBeGreaterThan(0);
  });
});
