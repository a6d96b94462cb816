/**
 * The chain wind → moment → stress → safety → chance → decision of docs/theory/decision.md, section 7, worked there by
 * hand. The engine must arrive at the same numbers; each step below is written out again from its formula, and shares no
 * code with the engine.
 */
import { randomFrom } from '@standfast/engine';
import { describe, expect, it } from 'vitest';
import { reliefOf } from '../../packages/engine/src/advice/pruning.ts';
import { chanceOfFailure } from '../../packages/engine/src/decision/chance.ts';
import { safety } from '../../packages/engine/src/decision/index.ts';
import { woodFor } from '../../packages/engine/src/reference/index.ts';
import { anchorageDraws } from '../../packages/engine/src/roots/index.ts';
import { demandDraws, gustClimate, windDemand } from '../../packages/engine/src/wind/index.ts';

/** Figures in the document have four digits. */
const FOUR_DIGITS = 5e-4;
/** Middles of draws wander a little about the middle value. */
const OF_DRAWS = 0.02;

const tree = {
  label: 'worked example',
  species: 'Acer rubrum',
  stemDiameterMm: 600,
  heightM: 18,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 5, widthM: 12, shape: 'ellipse', inLeaf: true },
} as const;
const site = {
  windCode: 'EN 1991-1-4',
  basicWindSpeedMs: 25,
  terrain: 'III',
  soil: 'free-draining',
} as const;
const near = (found: number, expected: number, relative: number) =>
  expect(Math.abs(found / expected - 1), `${found} against ${expected}`).toBeLessThanOrEqual(relative);

/** Peak pressure of EN 1991-1-4 in terrain III, written out. */
function pressurePa(z: number): number {
  const z0 = 0.3;
  const log = Math.log(Math.max(z, 5) / z0);
  const mean = 0.19 * (z0 / 0.05) ** 0.07 * log * 25;
  return (1 + 7 / log) * 0.5 * 1.25 * mean * mean;
}

/** Simpson's rule. */
function integral(f: (z: number) => number, from: number, to: number): number {
  const n = 2000;
  const h = (to - from) / n;
  let sum = f(from) + f(to);
  for (let i = 1; i < n; i++) sum += f(from + i * h) * (i % 2 ? 4 : 2);
  return (sum * h) / 3;
}

/** z = 11.5 - 6.5 cos(a): the ellipse without its steep ends. */
const crownMoment = (level: number) =>
  integral(
    (a) => {
      const z = 11.5 - 6.5 * Math.cos(a);
      return pressurePa(z) * 0.25 * 12 * Math.sin(a) * (z - level) * 6.5 * Math.sin(a);
    },
    0,
    Math.PI,
  );
const stemMoment = (level: number) =>
  integral((z) => pressurePa(z) * 0.9 * 0.6 * ((18 - z) / 16.7) ** 0.6 * (z - level), level, 5);

describe('1 wind and moment', () => {
  const demand = windDemand({ tree, site, sectionHeightsM: [0.5] });

  it('crown 252.06 kN·m at the ground, bare stem 3.122, together 255.2; at 0.5 m 243.9', () => {
    near(crownMoment(0), 252_060, FOUR_DIGITS);
    near(stemMoment(0), 3122, FOUR_DIGITS);
    near(demand.windMomentNm[0]!, crownMoment(0) + stemMoment(0), FOUR_DIGITS);
    near(demand.windMomentNm[0]!, 255_180, FOUR_DIGITS);
    near(demand.windMomentNm[1]!, crownMoment(0.5) + stemMoment(0.5), FOUR_DIGITS);
    near(demand.windMomentNm[1]!, 243_950, FOUR_DIGITS);
  });

  it('peak pressure 703 Pa at 11.5 m', () => {
    near(pressurePa(11.5), 703.4, FOUR_DIGITS);
  });

  it('gust over open ground 38.34 m/s', () => {
    near(demand.openGustMs, 38.34, FOUR_DIGITS);
  });
});

describe('2 stress and safety', () => {
  const draws = 4000;
  const random = randomFrom(11);
  const input = { tree, site, sectionHeightsM: [0.5] };
  const modulusMm3 = (Math.PI * 620 ** 3) / 32;
  const result = safety(
    {
      sections: [
        {
          id: 's1',
          remaining: new Float64Array(draws * 36).fill(0.7599),
          intactModulusMm3: new Float64Array(36).fill(modulusMm3),
        },
      ],
      demand: demandDraws(input, random.fork('demand'), draws),
      anchorage: anchorageDraws(
        { tree, flares: [], signs: [], soil: 'free-draining' },
        random.fork('anchorage'),
        draws,
      ),
      wood: woodFor('Acer rubrum'),
    },
    random.fork('safety'),
  );

  it('hollow to 0.7: W 0.02340 × 0.7599 = 0.01778 m³, stress 13.72 MPa', () => {
    near((modulusMm3 / 1e9) * 0.7599, 0.01778, FOUR_DIGITS);
    near(243_950 / 0.01778 / 1e6, 13.72, FOUR_DIGITS);
  });

  it('breakage 0.85 × 22.6 / 13.72 = 1.400', () => {
    near((0.85 * 22.6) / 13.72, 1.4, FOUR_DIGITS);
    near(result.assessment.breakage[0]!.p50, 1.4, OF_DRAWS);
  });

  it('uprooting between 40 d² H = 259.2 and 20 MPa = 424.1 kN·m: 331.5 / 255.2 = 1.299', () => {
    near(Math.sqrt(259.2 * 424.1), 331.5, FOUR_DIGITS);
    near(331.5 / 255.2, 1.299, FOUR_DIGITS);
    near(result.assessment.uprooting[0]!.p50, 1.299, OF_DRAWS);
  });

  it('critical gust 38.34 × sqrt(1.400) = 45.36 m/s against breakage', () => {
    near(38.34 * Math.sqrt(1.4), 45.36, FOUR_DIGITS);
    near(result.assessment.criticalGustMs.breakage.p50, 45.36, OF_DRAWS);
  });
});

describe('3 chance', () => {
  const { rate } = gustClimate(site);

  it('a gust of 45.36 m/s: exp((1 - 1.780 × 1.400) / 0.2) = 5.74e-4 a year', () => {
    const scale = 1 - 0.2 * Math.log(-Math.log(0.98));
    near(scale, 1.78, FOUR_DIGITS);
    near(Math.exp((1 - 1.7804 * 1.4) / 0.2), 5.744e-4, 5e-3);
    near(rate(38.343 * Math.sqrt(1.4)), 5.744e-4, 5e-3);
  });

  it('uprooting within five years, over the scatters of anchorage and wind: 0.166 (worked by another program)', () => {
    const draws = 8000;
    const random = randomFrom(5);
    const input = { tree, site, sectionHeightsM: [0.5] };
    const { drawn } = safety(
      {
        sections: [
          {
            id: 's1',
            remaining: new Float64Array(draws * 36).fill(1),
            intactModulusMm3: new Float64Array(36).fill((Math.PI * 620 ** 3) / 32),
          },
        ],
        demand: demandDraws(input, random.fork('demand'), draws),
        anchorage: anchorageDraws(
          { tree, flares: [], signs: [], soil: 'free-draining' },
          random.fork('anchorage'),
          draws,
        ),
        wood: woodFor('Acer rubrum'),
      },
      random.fork('safety'),
    );
    const { uprooting } = chanceOfFailure(drawn, gustClimate(site), 5);
    near(uprooting.inTimeFrame.mean, 0.166, 0.04);
    // The middle tree alone: the doubt is the anchorage.
    near(-Math.expm1(-5 * rate(38.343 * Math.sqrt(1.299))), 0.007, 0.01);
  });

  it('38.34 m/s itself 0.0202, a yearly chance of 0.02', () => {
    near(rate(38.343), 0.0202, 5e-3);
    near(1 - Math.exp(-rate(38.343)), 0.02, 5e-3);
  });
});

describe('4 pruning by a tenth of height and spread', () => {
  it('takes 25.0 % off the moment by area and 32.1 % by mass, 27.1 % of the foliage', () => {
    const demand = windDemand({ tree, site, sectionHeightsM: [] });
    const relief = reliefOf({ tree, site, sectionHeightsM: [], demand }, { kind: 'reduce', amount: 0.1 });
    // By hand: the crown 10.8 m wide from 5 to 16.7 m.
    const reduced = integral(
      (a) => {
        const z = 10.85 - 5.85 * Math.cos(a);
        return pressurePa(z) * 0.25 * 10.8 * Math.sin(a) * z * 5.85 * Math.sin(a);
      },
      0,
      Math.PI,
    );
    near(relief.byArea, 1 - (reduced + stemMoment(0)) / (crownMoment(0) + stemMoment(0)), 5e-3);
    near(relief.byArea, 0.25, 5e-3);
    near(relief.byMass, 0.321, 5e-3);
    near(relief.foliageShare, 0.271, FOUR_DIGITS);
  });
});
