import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { readName } from './names.ts';
import { genera, woodGreen, woodNames } from './tables.generated.ts';
import { woodFor } from './wood.ts';

describe('woodFor', () => {
  it('finds a species by its botanical name, cultivar, case and accents aside', () => {
    for (const name of [
      'Acer rubrum',
      "acer rubrum 'October Glory'",
      'ACER RUBRUM L.',
      ' Acer  rubrum ',
      'Red maple',
    ]) {
      const wood = woodFor(name);
      expect(wood.match, name).toBe('species');
      expect(wood.assessment.matched, name).toBe('Acer rubrum');
      expect(wood.unknownSpeciesLogSd).toBe(0);
      expect(wood.assessment.species).toBe(name);
    }
  });

  it('follows synonyms and common names', () => {
    expect(woodFor('Quercus petraea').assessment.matched).toBe('Quercus robur');
    expect(woodFor('English oak').assessment.matched).toBe('Quercus robur');
    expect(woodFor('Norway spruce').assessment.matched).toBe('Picea abies');
    expect(woodFor('Carya alba').assessment.matched).toBe('Carya tomentosa');
    expect(woodFor('linden').genus).toBe('Tilia');
  });

  it('takes the genus for an unlisted species, a hybrid or a genus alone, with a wider spread and a notice', () => {
    for (const name of [
      'Quercus xyzea',
      'Quercus',
      'Quercus sp.',
      'Quercus × bebbiana',
      'Quercus x bebbiana',
    ]) {
      const wood = woodFor(name);
      expect(wood.match, name).toBe('genus');
      expect(wood.unknownSpeciesLogSd).toBeGreaterThanOrEqual(0.15);
      expect(wood.notices[0]?.severity).toBe('caution');
      expect(wood.notices[0]?.where).toBe('tree.species');
    }
    expect(woodFor('Acer × freemanii').match).toBe('genus');
  });

  it('takes a second catalogue for a genus that only stands there, and says so', () => {
    const cedar = woodFor('Cedrus atlantica');
    expect(cedar).toMatchObject({ match: 'quoted', genus: 'Cedrus' });
    expect(cedar.compressionPa).toBeCloseTo(15e6, 3);
    const chestnut = woodFor('Aesculus hippocastanum');
    expect(chestnut.compressionPa).toBeCloseTo(14e6, 3);
    expect(chestnut.compressionPa / chestnut.bendingPa).toBeGreaterThan(0.35);
    expect(chestnut.unknownSpeciesLogSd).toBeGreaterThan(0.2);
    expect(chestnut.notices[0]?.text).toContain('quoted from memory');
  });

  it('takes the kind for a genus that stands nowhere', () => {
    const cypress = woodFor('Cupressus sempervirens');
    expect(cypress.match).toBe('kind');
    expect(cypress.notices[0]?.text).toContain('conifers');
    const plane = woodFor('Catalpa bignonioides');
    expect(plane.match).toBe('kind');
    expect(plane.notices[0]?.text).toContain('broadleaved');
    expect(plane.unknownSpeciesLogSd).toBeGreaterThan(0.2);
  });

  it('speaks of a second catalogue that is much lower', () => {
    const robinia = woodFor('Robinia pseudoacacia');
    expect(robinia.compressionPa).toBeCloseTo(46.9e6, 3);
    expect(robinia.notices.some((each) => each.text.includes('20 MPa, 57 % lower'))).toBe(true);
    expect(
      woodFor('Fraxinus excelsior').notices.some((each) => each.text.includes('Another catalogue')),
    ).toBe(false);
  });

  it('takes wide defaults for what it does not know, says so, and never throws', () => {
    const wood = woodFor('Arbor ignota');
    expect(wood).toMatchObject({ match: 'none', genus: null });
    expect(wood.assessment.matched).toBeNull();
    expect(wood.notices[0]?.severity).toBe('serious');
    expect(wood.drag.name).toBe('unknown');
    fc.assert(
      fc.property(fc.string(), (name) => {
        const any = woodFor(name);
        expect(any.compressionPa).toBeGreaterThan(5e6);
        expect(any.bendingPa).toBeGreaterThan(any.compressionPa);
        expect(any.greenDensityKgM3).toBeGreaterThan(500);
      }),
    );
  });

  it('says of the European rows that they want replacing', () => {
    for (const name of ['Fagus sylvatica', 'Quercus robur', 'Fraxinus excelsior', 'Pinus sylvestris']) {
      const notice = woodFor(name).notices.find((each) => each.text.includes('round or borrowed'));
      expect(notice?.severity, name).toBe('caution');
    }
  });

  it('says of a row from memory that it is, and nothing of one that was read', () => {
    expect(woodFor('Fagus grandifolia').notices[0]?.text).toContain('from memory');
    expect(woodFor('Acer saccharum').notices).toEqual([]);
  });

  it('keeps a source with every value', () => {
    for (const row of woodGreen) {
      for (const value of woodFor(row.scientific).assessment.values) expect(value.source).not.toBe('');
    }
  });
});

describe('tables', () => {
  it('hold sensible strengths: crushing at a third to two thirds of bending, shear below crushing', () => {
    for (const row of woodGreen) {
      const share = row.compParKpa / row.morKpa;
      expect(share, row.scientific).toBeGreaterThan(1 / 3);
      expect(share, row.scientific).toBeLessThan(2 / 3);
      expect(row.shearKpa, row.scientific).toBeLessThan(row.compParKpa);
    }
  });

  it('name every genus of the wood table among the genera', () => {
    const known = new Set(genera.map((row) => row.genus));
    for (const row of woodGreen) expect(known.has(row.scientific.split(' ')[0]!), row.scientific).toBe(true);
    expect(known.size).toBe(genera.length);
  });

  it('lead every other name somewhere known', () => {
    for (const row of woodNames)
      expect(readName(row.name)?.genus, row.name).toBe(row.scientific.split(' ')[0]);
  });
});
