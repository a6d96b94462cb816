import { describe, expect, it } from 'vitest';
import type { SiteInput, TreeInput } from '../case.ts';
import { InputFault } from '../faults.ts';
import { randomFrom } from '../random.ts';
import { woodFor } from '../reference/index.ts';
import { anchorageDraws } from '../roots/index.ts';
import { demandDraws, windDemand } from '../wind/index.ts';
import { suggestLikelihood } from './likelihood.ts';
import { safety } from './safety.ts';
import { readSigns } from './signs.ts';
import { stemStrength, strengthDraws, strengthLogSd } from './strength.ts';

const tree: TreeInput = {
  label: 'T',
  species: 'Acer saccharum',
  stemDiameterMm: 900,
  heightM: 20,
  leanDeg: 0,
  leanTowardDeg: 0,
  crown: { baseHeightM: 4, widthM: 12, shape: 'ellipse', inLeaf: true },
};
const site: SiteInput = { windCode: 'EN 1991-1-4', basicWindSpeedMs: 24, terrain: 'III' };
const DRAWS = 1000;

interface Change {
  tree?: Partial<TreeInput>;
  signs?: { kind: string }[];
  tests?: { directionDeg: number; momentNm: number; tiltDeg: number }[];
  /** Capacity left by direction index. */
  left?: (d: number) => number;
  sections?: number;
  seed?: number;
}

function assessed(change: Change = {}) {
  const changed = { ...tree, ...change.tree };
  const count = change.sections ?? 1;
  const input = {
    tree: changed,
    site,
    sectionHeightsM: Array.from({ length: count }, (_, s) => 0.5 + 0.5 * s),
  };
  const random = randomFrom(change.seed ?? 1);
  const modulus = (Math.PI * (changed.stemDiameterMm - 40) ** 3) / 32;
  return safety(
    {
      sections: Array.from({ length: count }, (_, s) => ({
        id: `s${s + 1}`,
        remaining: Float64Array.from({ length: DRAWS * 36 }, (_, k) =>
          change.left ? change.left(k % 36) : 1,
        ),
        intactModulusMm3: new Float64Array(36).fill(modulus),
      })),
      demand: demandDraws(input, random.fork('demand'), DRAWS, windDemand(input)),
      anchorage: anchorageDraws(
        { tree: changed, flares: [], signs: change.signs ?? [], staticTests: change.tests ?? [] },
        random.fork('anchorage'),
        DRAWS,
      ),
      wood: woodFor(changed.species),
    },
    random.fork('safety'),
  );
}

describe('safety', () => {
  const sound = assessed();

  it('is the same in every direction for an upright round tree', () => {
    const { breakage } = sound.assessment;
    expect(breakage).toHaveLength(36);
    expect(breakage.map((each) => each.directionDeg)).toEqual(Array.from({ length: 36 }, (_, d) => d * 10));
    for (const each of breakage) expect(each.p50).toBeCloseTo(breakage[0]!.p50, 9);
  });

  it('goes with the capacity left, in its own direction', () => {
    const weak = assessed({ left: (d) => (d === 12 ? 0.5 : 1) }).assessment;
    expect(weak.breakage[12]!.p50 / sound.assessment.breakage[12]!.p50).toBeCloseTo(0.5, 9);
    expect(weak.breakage[3]!.p50).toBeCloseTo(sound.assessment.breakage[3]!.p50, 9);
  });

  it('names what governs by the lowest 5 % point', () => {
    const decayed = assessed({ left: (d) => (d === 20 ? 0.1 : 1), sections: 2 }).assessment;
    expect(decayed.governing).toMatchObject({ mode: 'breakage', directionDeg: 200 });
    expect(decayed.governing.sectionId).toMatch(/^s[12]$/);
    expect(decayed.governing.p05).toBe(decayed.breakage[20]!.p05);
    const rooted = sound.assessment.governing;
    expect(rooted.mode).toBe('uprooting');
    expect(rooted.sectionId).toBeNull();
    expect(rooted.p05).toBe(Math.min(...sound.assessment.uprooting.map((each) => each.p05)));
  });

  it('takes the least over the sections', () => {
    const two = assessed({ sections: 2 });
    expect(two.sectionLeastSafety.map((each) => each.sectionId)).toEqual(['s1', 's2']);
    expect(two.sectionLeastSafety[0]!.leastSafety).toHaveLength(DRAWS);
    // A section all sound in every draw differs in nothing once wind and wood are at their middle values.
    const { leastSafety, leastSafetyOfSection } = sound.sectionLeastSafety[0]!;
    expect(new Set(leastSafetyOfSection).size).toBe(1);
    expect(new Set(leastSafety).size).toBeGreaterThan(DRAWS / 2);
    const middle = Float64Array.from(leastSafety).sort()[DRAWS >> 1]!;
    expect(leastSafetyOfSection[0]! / middle).toBeCloseTo(1, 1);
    expect(two.assessment.breakage[0]!.p50).toBeLessThan(sound.assessment.breakage[0]!.p50);
  });

  it('counts the chances below 1 and 1.5 over the governing mode', () => {
    const { chanceBelow1, chanceBelow1_5, governing } = sound.assessment;
    const draws = sound.uprootingLeastSafety;
    expect(chanceBelow1).toBeCloseTo([...draws].filter((each) => each < 1).length / DRAWS, 12);
    expect(chanceBelow1_5).toBeGreaterThanOrEqual(chanceBelow1);
    expect(governing.mode).toBe('uprooting');
  });

  it('gives the critical gust over open ground as the design gust by the root of the safety', () => {
    const { criticalGustMs, breakage } = sound.assessment;
    const open = windDemand({ tree, site, sectionHeightsM: [] }).openGustMs;
    expect(criticalGustMs.breakage.p50 / (open * Math.sqrt(breakage[0]!.p50))).toBeCloseTo(1, 2);
  });

  it('leans: least towards the lean, and says so when the tree cannot bear its own weight', () => {
    const leaning = assessed({ tree: { leanDeg: 12, leanTowardDeg: 250 } }).assessment;
    const least = leaning.breakage.reduce((a, b) => (b.p50 < a.p50 ? b : a));
    expect(least.directionDeg).toBe(250);
    const falling = assessed({ tree: { leanDeg: 60, leanTowardDeg: 250 } });
    expect(falling.assessment.criticalGustMs.uprooting.p50).toBe(0);
    expect(falling.notices.some((each) => each.severity === 'serious')).toBe(true);
  });

  it('gives the same document for the same seed', () => {
    expect(assessed({ seed: 9 }).assessment).toEqual(assessed({ seed: 9 }).assessment);
  });

  it('keeps a source with every value and the breaking safety beside the crushing one', () => {
    const { values, breakage } = sound.assessment;
    for (const value of values) expect(value.source, value.name).not.toBe('');
    const breaking = values.find(
      (each) => each.name.includes('on the bending strength') && each.name.endsWith('middle estimate'),
    );
    // Bending strength over compression strength of green sugar maple: 65.0 / 27.7.
    expect(breaking!.value / breakage[0]!.p50).toBeCloseTo(65 / 27.7, 1);
  });

  it('refuses a tree without a section', () => {
    expect(() => assessed({ sections: 0 })).toThrow(InputFault);
  });
});

describe('anchorage evidence', () => {
  it('from size alone is too thin when the interval holds the usual mark, and a static load test is recommended', () => {
    const { assessment, notices } = assessed();
    const worst = assessment.uprooting[0]!;
    expect(worst.p05).toBeLessThan(1.5);
    expect(worst.p95).toBeGreaterThan(1.5);
    expect(assessment.anchorageTooThin).toBe(true);
    expect(notices[0]?.text).toContain('static load test');
    expect(assessment.anchorageBasis).toContain('static load test is recommended');
  });

  it('is not when even the lower 5 % point reaches the mark', () => {
    const sturdy = assessed({
      tree: { stemDiameterMm: 1600, heightM: 14, crown: { ...tree.crown, widthM: 6 } },
    });
    expect(sturdy.assessment.uprooting[0]!.p05).toBeGreaterThan(1.5);
    expect(sturdy.assessment.anchorageTooThin).toBe(false);
  });

  it('is when a sign makes the relations doubtful, however strong the estimate', () => {
    const doubted = assessed({
      tree: { stemDiameterMm: 1600, heightM: 14, crown: { ...tree.crown, widthM: 6 } },
      signs: [{ kind: 'root-cut' }],
    });
    expect(doubted.assessment.anchorageTooThin).toBe(true);
    expect(doubted.notices[0]?.text).toContain('root-cut');
  });

  it('is not once it was measured by static load tests all round', () => {
    const tests = [0, 90, 180, 270].map((directionDeg) => ({ directionDeg, momentNm: 2e5, tiltDeg: 0.25 }));
    const tested = assessed({ tests }).assessment;
    expect(tested.anchorageTooThin).toBe(false);
    expect(tested.anchorageBasis).toContain('Static load test in 4 directions');
  });
});

describe('strength', () => {
  it('has the middle and the scatter it says, shared in part between sections', () => {
    const wood = woodFor('Acer saccharum');
    const [a, b] = strengthDraws(wood, ['s1', 's2'], randomFrom(2), 4000);
    const middle = stemStrength(wood);
    expect(middle.crushingPa).toBeCloseTo(0.85 * 27.7e6, 0);
    const logs = (values: Float64Array) => [...values].map(Math.log);
    const sdOf = (values: number[]) => {
      const mean = values.reduce((sum, x) => sum + x, 0) / values.length;
      return Math.sqrt(values.reduce((sum, x) => sum + (x - mean) ** 2, 0) / values.length);
    };
    const scatter = strengthLogSd(wood);
    expect(sdOf(logs(a!.crushingPa))).toBeCloseTo(scatter.crushing, 1);
    expect(sdOf(logs(a!.bendingPa))).toBeCloseTo(scatter.breaking, 1);
    expect(scatter.breaking).toBeGreaterThan(scatter.crushing);
    const difference = logs(a!.crushingPa).map((x, i) => x - Math.log(b!.crushingPa[i]!));
    // Independent sections would differ by sqrt(2) times the whole scatter.
    expect(sdOf(difference)).toBeLessThan(Math.SQRT2 * scatter.crushing * 0.85);
  });

  it('scatters more for a species without a row', () => {
    expect(strengthLogSd(woodFor('Acer ignotum')).crushing).toBeGreaterThan(
      strengthLogSd(woodFor('Acer rubrum')).crushing,
    );
    expect(strengthLogSd(woodFor('?')).crushing).toBeGreaterThan(
      strengthLogSd(woodFor('Acer ignotum')).crushing,
    );
  });
});

describe('suggestLikelihood', () => {
  const base = assessed().assessment;
  const suggest = (
    safetyFound: typeof base,
    signs: { kind: string; where?: string }[] = [],
    chance = 0.001,
  ) => suggestLikelihood({ safety: safetyFound, site, signs: readSigns(signs), chance, timeFrameYears: 5 });
  const with_ = (change: Partial<typeof base>) => suggest({ ...base, ...change });
  const gust = (p05: number, p50: number) => ({ p05, p50, p95: p50 + 20 });
  const strong = {
    criticalGustMs: { breakage: gust(60, 80), uprooting: gust(60, 80) },
    governing: { ...base.governing, p05: 1.8 },
    anchorageTooThin: false,
  };

  it('goes from improbable to imminent as the tree gets weaker', () => {
    expect(with_(strong).rating).toBe('improbable');
    expect(with_({ ...strong, anchorageTooThin: true }).rating).toBe('possible');
    expect(with_({ ...strong, governing: { ...base.governing, p05: 1.4 } }).rating).toBe('possible');
    expect(with_({ criticalGustMs: { breakage: gust(20, 25), uprooting: gust(40, 60) } }).rating).toBe(
      'probable',
    );
    expect(with_({ criticalGustMs: { breakage: gust(0, 0), uprooting: gust(40, 60) } }).rating).toBe(
      'imminent',
    );
  });

  it('takes heaving soil or an open crack as failure begun', () => {
    for (const kind of ['soil-heave', 'heaving soil', 'open crack', 'fresh-lean']) {
      const suggested = suggest({ ...base, ...strong }, [{ kind, where: 'north side' }]);
      expect(suggested.rating, kind).toBe('imminent');
      expect(suggested.reasons[0]).toContain('north side');
    }
    expect(suggest({ ...base, ...strong }, [{ kind: 'bulge' }]).rating).toBe('improbable');
    expect(suggest({ ...base, ...strong }, [{ kind: 'a heavy limb' }]).rating).toBe('improbable');
  });

  it('does not call a tree with signs of decay improbable, and leaves limbs to their own rating', () => {
    expect(suggest({ ...base, ...strong }, [{ kind: 'ants' }]).rating).toBe('possible');
    expect(suggest({ ...base, ...strong }, [{ kind: 'hanging limb' }]).rating).toBe('improbable');
  });

  it('follows the chance within the time frame', () => {
    expect(suggest({ ...base, ...strong }, [], 0.02).rating).toBe('possible');
    expect(suggest({ ...base, ...strong }, [], 0.5).rating).toBe('probable');
  });

  it('says what it stands on', () => {
    const suggested = with_(strong);
    expect(suggested.standing).toContain('no published authority');
    expect(suggested.reasons.length).toBeGreaterThan(0);
    expect(suggested.yearlyGustMs).toBeLessThan(suggested.fiftyYearGustMs);
  });
});
