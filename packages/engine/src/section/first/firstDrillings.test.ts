import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { outlineRing } from '../outline.ts';
import { type FirstDrillingsInput, firstDrillings } from './firstDrillings.ts';
import { apart } from './turn.ts';

const CIRCLE = outlineRing({ kind: 'circle', diameterMm: 640 });

/** A stem lobed above its flares: radius by azimuth. */
function lobed(count: number, depth: number, firstDeg = 0) {
  return outlineRing({
    kind: 'radii',
    radii: Array.from({ length: 36 }, (_, i) => ({
      azimuthDeg: 10 * i,
      radiusMm: 320 * (1 + depth * Math.cos((count * (10 * i - firstDeg) * Math.PI) / 180)),
    })),
  });
}

const flare = (id: string, azimuthDeg: number, widthMm = 220) => ({
  id,
  azimuthDeg,
  widthMm,
  heightMm: 300,
  drillings: [] as { azimuthDeg: number; offRadialDeg: number; downDeg: number }[],
});
const level = (azimuthDeg: number) => ({ azimuthDeg, offRadialDeg: 0, downDeg: 0 });

function plan(over: Partial<Omit<FirstDrillingsInput, 'section'>> & { section?: object } = {}) {
  return firstDrillings({
    flares: [],
    signs: [],
    stemDiameterMm: 600,
    ...over,
    section: { id: 's1', heightM: 0.3, outline: CIRCLE, barkMm: 15, ...over.section },
  });
}

const atSection = (p: ReturnType<typeof plan>) => p.drillings.filter(({ at }) => at === 'section');
const azimuths = (p: ReturnType<typeof plan>) => atSection(p).map(({ azimuthDeg }) => azimuthDeg);

/** Widest part of the stem without a needle, degrees. */
function widestGap(all: readonly number[]): number {
  const sorted = [...all].sort((a, b) => a - b);
  return Math.max(...sorted.map((a, i) => (sorted[i + 1] ?? sorted[0]! + 360) - a));
}

describe('how many and where', () => {
  it('covers an even stem without signs by four, a quarter turn apart', () => {
    expect(azimuths(plan())).toEqual([0, 90, 180, 270]);
    expect(plan().why).toMatch(/4 needles .* 90 degrees apart, because nothing was seen/);
  });

  it('takes three for a thin stem and more for a stout one', () => {
    const across = (diameterMm: number) =>
      azimuths(plan({ section: { outline: outlineRing({ kind: 'circle', diameterMm }) } })).length;
    expect(across(220)).toBe(3);
    // 3.14 m of wood round it, no two needles more than 0.6 m apart.
    expect(across(1030)).toBe(6);
    expect(across(3000)).toBe(8);
  });

  it('takes six where signs were seen, one of them at the sign', () => {
    const p = plan({ signs: [{ kind: 'bracket fungus', azimuthDeg: 217, heightM: 0.5 }] });
    expect(azimuths(p)).toContain(217);
    expect(azimuths(p)).toHaveLength(6);
    expect(widestGap(azimuths(p))).toBeLessThanOrEqual(61);
  });

  it('goes into the hollows of a lobed outline', () => {
    // Lobes at 20, 80, …; hollows at 50, 110, ….
    const p = plan({ section: { outline: lobed(6, 0.05, 20) } });
    expect([...azimuths(p)].sort((a, b) => a - b)).toEqual([50, 110, 170, 230, 290, 350]);
    expect(p.why).toMatch(/lobed/);
  });

  it('does not take an oval or an origin off the middle for lobes', () => {
    const oval = outlineRing({ kind: 'ellipse', longMm: 760, shortMm: 560, longAxisDeg: 30 });
    expect(azimuths(plan({ section: { outline: oval } }))).toHaveLength(4);
    const shifted = CIRCLE.map(([x, y]) => [x + 40, y - 25] as const);
    expect(azimuths(plan({ section: { outline: shifted } }))).toHaveLength(4);
  });

  it('stands between flares on an outline measured too roughly to show them', () => {
    const p = plan({ flares: [flare('a', 10), flare('b', 100), flare('c', 190), flare('d', 280)] });
    expect([...azimuths(p)].sort((x, y) => x - y)).toEqual([55, 145, 235, 325]);
    expect(atSection(p)[0]!.why).toMatch(/between flares . and ./);
  });

  it('drills every main flare on its ridge, 40 degrees down, and a small one only where something was seen', () => {
    const flares = [flare('big', 40), flare('small', 200, 60)];
    const quiet = plan({ flares }).drillings.filter(({ at }) => at === 'flare');
    expect(quiet).toMatchObject([
      { placeId: 'big', azimuthDeg: 40, downDeg: 40, heightM: 0.18, offRadialDeg: 0 },
    ]);
    const seen = plan({ flares, signs: [{ kind: 'frass', where: 'flare small' }] });
    expect(seen.drillings.some(({ placeId }) => placeId === 'small')).toBe(true);
  });
});

describe('signs', () => {
  it('keeps to both sides of an open cavity', () => {
    const p = plan({ signs: [{ kind: 'cavity', where: 'stem, east side' }] });
    expect(azimuths(p)).toEqual(expect.arrayContaining([70, 110]));
    expect(azimuths(p).every((a) => apart(a, 90) >= 20)).toBe(true);
  });

  it('goes in beside a crack, not into it', () => {
    const p = plan({ signs: [{ kind: 'crack', azimuthDeg: 350 }] });
    expect(azimuths(p)).toContain(2);
    expect(azimuths(p).every((a) => apart(a, 350) >= 12)).toBe(true);
  });

  it('gives signs close together one needle', () => {
    const p = plan({
      signs: [
        { kind: 'old wound', azimuthDeg: 220 },
        { kind: 'fruiting body', azimuthDeg: 226 },
        { kind: 'carpenter ants', azimuthDeg: 215 },
      ],
    });
    expect(azimuths(p).filter((a) => apart(a, 222) < 25)).toEqual([226]);
  });

  it.each([
    ['a crown sign', { kind: 'dead limb', azimuthDeg: 90 }],
    ['a sign on a limb', { kind: 'fruiting body', where: 'limb over the road, east' }],
    ['a sign high above the section', { kind: 'cavity', azimuthDeg: 90, heightM: 6 }],
    ['a thing that says nothing of decay', { kind: 'bird box', azimuthDeg: 90 }],
  ])('asks nothing more for %s', (_, sign) => {
    expect(azimuths(plan({ signs: [sign] }))).toEqual([0, 90, 180, 270]);
  });

  it('says which signs have no place', () => {
    const p = plan({ signs: [{ kind: 'fruiting body', note: 'species unknown' }] });
    expect(p.notes[0]).toMatch(/fruiting body: where round the stem is not recorded/);
  });

  it('reads a root cut for the flare and not for the stem', () => {
    const p = plan({
      flares: [flare('f1', 120, 50)],
      signs: [{ kind: 'root cut', where: 'trench, south-east' }],
    });
    expect(p.drillings.find(({ at }) => at === 'flare')?.placeId).toBe('f1');
    expect(azimuths(p)).toHaveLength(4);
  });
});

describe('order and what is made already', () => {
  it('drills the sound side first and the decayed side last', () => {
    const p = plan({
      flares: [flare('f1', 30), flare('f2', 210)],
      signs: [{ kind: 'fruiting body', azimuthDeg: 205 }],
    });
    expect(p.drillings.map(({ order }) => order)).toEqual(p.drillings.map((_, i) => i + 1));
    expect(apart(p.drillings[0]!.azimuthDeg, 205)).toBeGreaterThan(90);
    for (const last of p.drillings.slice(-2)) expect(apart(last.azimuthDeg, 205)).toBeLessThan(15);
  });

  it('asks only for what is missing', () => {
    const p = plan({ section: { drillings: [level(2), level(91), level(184)] } });
    expect(azimuths(p)).toEqual([273]);
    expect(p.why).toMatch(/one drilling more/);
    const done = plan({ section: { drillings: [0, 90, 180, 270].map(level) } });
    expect(done).toMatchObject({ drillings: [], rules: [] });
    expect(done.why).toMatch(/already cover it/);
  });

  it('leaves out flares that were drilled, and counts no steep needle for the section', () => {
    const drilled = { ...flare('f1', 30), drillings: [{ azimuthDeg: 30, offRadialDeg: 0, downDeg: 40 }] };
    expect(plan({ flares: [drilled] }).drillings.every(({ at }) => at === 'section')).toBe(true);
    const steep = [0, 90, 180, 270].map((azimuthDeg) => ({ azimuthDeg, offRadialDeg: 0, downDeg: 60 }));
    expect(azimuths(plan({ section: { drillings: steep } }))).toHaveLength(4);
  });

  it('gives every rule its source', () => {
    for (const { text, source } of plan({ signs: [{ kind: 'crack', azimuthDeg: 5 }] }).rules) {
      expect(text).toMatch(/\.$/);
      expect(source).toMatch(/\S{6}/);
    }
  });

  it('refuses a diameter that is none', () => {
    expect(() => plan({ stemDiameterMm: 0 })).toThrow(/Give millimetres/);
  });

  it('covers the whole round where two needles went in at one place', () => {
    const p = plan({ section: { outline: lobed(2, 0), drillings: [0, 0].map(level) } });
    expect(widestGap([0, ...azimuths(p)])).toBeLessThanOrEqual(91);
  });

  it('covers any stem with any signs, without crowding, in whole degrees', () => {
    const kinds = fc.constantFrom('fruiting body', 'cavity', 'crack', 'ants', 'old wound', 'root cut');
    const sign = fc.record({ kind: kinds, azimuthDeg: fc.double({ min: 0, max: 360, noNaN: true }) });
    fc.assert(
      fc.property(
        fc.array(sign, { maxLength: 6 }),
        fc.array(fc.integer({ min: 0, max: 359 }), { maxLength: 6 }),
        fc.double({ min: 0, max: 0.08, noNaN: true }),
        fc.integer({ min: 2, max: 8 }),
        (signs, made, depth, count) => {
          const p = plan({
            signs,
            section: { outline: lobed(count, depth), drillings: made.map(level) },
            flares: [flare('f1', 77), flare('f2', 180)],
          });
          const needles = azimuths(p);
          const all = [...made, ...needles];
          expect(needles.every((a) => Number.isInteger(a) && a >= 0 && a < 360)).toBe(true);
          // Even steps of at most 60 or 90 degrees, halves rounded, ends moved by up to 20.
          expect(widestGap(all)).toBeLessThanOrEqual(1.5 * 90 + 40);
          needles.forEach((a, i) => {
            for (const b of [...made, ...needles.slice(0, i)]) expect(apart(a, b)).toBeGreaterThan(9);
          });
        },
      ),
      { numRuns: 60, seed: 20_261_125 },
    );
  });
});
