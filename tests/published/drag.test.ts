/**
 * Drag groups against measured coefficients: the groups are proposals, so the test is that their bands hold what was
 * measured on the species they are made for, and that nothing is extrapolated.
 */
import { describe, expect, it } from 'vitest';
import { dragCoefficient, dragGroupFor } from '../../packages/engine/src/reference/index.ts';
import { dragMeasured } from '../../packages/engine/src/reference/tables.generated.ts';

const at = (genus: string, speed: number) => dragCoefficient(dragGroupFor(genus), true, speed);

describe('measured values as tabled (read)', () => {
  it.each([
    ['Thuja plicata', 20, 0.22],
    ['Tsuga heterophylla', 20, 0.47],
    ['Pinus contorta', 20, 0.47],
  ])('Rudnicki et al. 2004: %s at %d m/s: %d', (species, speed, cd) => {
    const row = dragMeasured.find((each) => each.species === species && each.speedMs === speed);
    expect(row?.cd).toBe(cd);
    expect(row?.status).toBe('read');
  });

  it('Vollsinger et al. 2005: 0.15 to 0.22 at 20 m/s for three hardwoods', () => {
    const row = dragMeasured.find((each) => each.source.startsWith('Vollsinger'));
    expect([row?.cd, row?.cdHigh]).toEqual([0.15, 0.22]);
  });
});

describe('bands hold what was measured', () => {
  it('limber broadleaves: Vollsinger et al. 2005', () => {
    for (const genus of ['Populus', 'Alnus', 'Betula']) {
      const group = dragGroupFor(genus);
      expect(group.cdLow).toBeLessThanOrEqual(0.15);
      expect(group.cdHigh).toBeGreaterThanOrEqual(0.22);
    }
  });

  it('dense conifers: Rudnicki et al. 2004 for redcedar and hemlock', () => {
    for (const [genus, cd] of [
      ['Thuja', 0.22],
      ['Tsuga', 0.47],
    ] as const) {
      const group = dragGroupFor(genus);
      expect(group.cdLow).toBeLessThanOrEqual(cd);
      expect(group.cdHigh).toBeGreaterThanOrEqual(cd);
    }
  });
});

describe('speed', () => {
  it('falls with speed (Kane and Smiley 2006) while the load still rises', () => {
    for (const genus of ['Acer', 'Quercus', 'Pinus', 'Picea']) {
      for (let v = 5; v < 20; v += 1) {
        expect(at(genus, v + 1)).toBeLessThan(at(genus, v));
        expect(at(genus, v + 1) * (v + 1) ** 2).toBeGreaterThan(at(genus, v) * v ** 2);
      }
    }
  });

  it('is never extrapolated past the top tested speed', () => {
    expect(at('Acer', 60)).toBe(at('Acer', 20));
    expect(at('Acer', 0)).toBe(at('Acer', 4));
  });

  it('leafless: load as U^1.90 to U^2.01 (Angelou, Dellwik and Mann 2019, read) and a third to 0.71 of the leaf-on drag', () => {
    const oak = dragGroupFor('Quercus');
    const power =
      Math.log((dragCoefficient(oak, false, 18) * 18 ** 2) / (dragCoefficient(oak, false, 9) * 9 ** 2)) /
      Math.log(2);
    expect(power).toBeGreaterThanOrEqual(1.9);
    expect(power).toBeLessThanOrEqual(2.01);
    const share = dragCoefficient(oak, false, 25) / dragCoefficient(oak, true, 25);
    expect(share).toBeGreaterThanOrEqual(1 / 3);
    expect(share).toBeLessThanOrEqual(0.71);
  });

  it("in leaf: load as U to a power between Angelou's 1.60 and 2 below the top tested speed", () => {
    const power = Math.log((at('Quercus', 18) * 18 ** 2) / (at('Quercus', 9) * 9 ** 2)) / Math.log(2);
    expect(power).toBeGreaterThanOrEqual(1.6);
    expect(power).toBeLessThanOrEqual(2);
  });
});
