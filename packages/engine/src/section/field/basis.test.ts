import { describe, expect, it } from 'vitest';
import { basisRow, fieldBasis, priorCovariance, RADIAL_NODES } from './basis.ts';
import { RAYS } from './frame.ts';
import { FIELD_PRIOR } from './prior.ts';
import { synthesiser } from './synthesis.ts';

/** What the factoring may leave out, share of the greatest variance, plus linear interpolation between nodes. */
const LOW_RANK = 0.03;

describe.each(FIELD_PRIOR.scenarios)('weights of "$name"', (scenario) => {
  const basis = fieldBasis(scenario);
  const row = (rho: number, angle: number) => {
    const out = new Float64Array(basis.size);
    basisRow(basis, rho, angle, out, 0);
    return out;
  };

  it('reproduce the covariance', () => {
    const points: [number, number][] = [
      [0, 0],
      [0.3, 1],
      [0.55, 1.2],
      [0.8, 4],
      [1, 1.1],
      [1, 5.9],
    ];
    let greatest = 0;
    for (const [rho, angle] of points) {
      greatest = Math.max(greatest, priorCovariance(scenario, rho, rho, angle - angle));
    }
    for (const [rhoA, angleA] of points) {
      for (const [rhoB, angleB] of points) {
        const a = row(rhoA, angleA);
        const b = row(rhoB, angleB);
        const made = a.reduce((s, v, i) => s + v * b[i]!, 0);
        const wanted = priorCovariance(scenario, rhoA, rhoB, angleA - angleB);
        expect(Math.abs(made - wanted)).toBeLessThan(LOW_RANK * greatest);
      }
    }
  });

  it('give the same field ray by ray as point by point', () => {
    const weights = Float64Array.from({ length: basis.size }, (_, i) => Math.sin(3 * i + 1));
    const field = new Float64Array(RAYS * RADIAL_NODES);
    synthesiser(basis)(weights, field);
    for (const [k, i] of [
      [0, 5],
      [7, 32],
      [18, 20],
      [29, 11],
      [36, 16],
      [53, 30],
      [71, 1],
    ] as const) {
      const at = row(i / (RADIAL_NODES - 1), (2 * Math.PI * k) / RAYS);
      const wanted = basis.mean[i]! + at.reduce((s, v, j) => s + v * weights[j]!, 0);
      expect(field[k * RADIAL_NODES + i]).toBeCloseTo(wanted, 9);
    }
  });

  it('names its source and says what it stands for', () => {
    expect(scenario.source).not.toBe('');
    expect(scenario.meaning).not.toBe('');
    expect(scenario.weight).toBeGreaterThan(0);
  });
});
