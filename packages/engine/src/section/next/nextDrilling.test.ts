import { describe, expect, it } from 'vitest';
import { InputFault } from '../../faults.ts';
import { randomFrom } from '../../random.ts';
import { type FieldPosterior, WOOD_STATE } from '../field/index.ts';
import { nextDrilling } from './nextDrilling.ts';

const RAYS = 72;
const SHELLS = 33;
const DRAWS = 2000;

interface Sector {
  middleDeg: number;
  halfWidthDeg: number;
  chance: number;
}

/**
 * A posterior of round stems in which, by chance, the wood of sectors is lost from 0.3 of the radius outwards.
 * Returns it with which draws have lost which sector.
 */
function stemWithDoubtfulSectors(...sectors: Sector[]) {
  const random = randomFrom(5);
  const stateAzimuthsDeg = Array.from({ length: RAYS }, (_, k) => (360 * k) / RAYS);
  const stateShells = Array.from({ length: SHELLS }, (_, i) => i / (SHELLS - 1));
  const states = new Uint8Array(DRAWS * RAYS * SHELLS).fill(WOOD_STATE.sound);
  const remaining = new Float64Array(DRAWS * 36).fill(1);
  const lost = Array.from({ length: DRAWS }, (_, d) =>
    sectors.map(({ middleDeg, halfWidthDeg, chance }) => {
      if (random.uniform() >= chance) return false;
      stateAzimuthsDeg.forEach((azimuth, k) => {
        if (apart(azimuth, middleDeg) > halfWidthDeg) return;
        for (let i = 10; i < SHELLS; i++) states[(d * RAYS + k) * SHELLS + i] = WOOD_STATE.none;
      });
      for (let k = 0; k < 36; k++) remaining[d * 36 + k] = remaining[d * 36 + k]! * 0.7;
      return true;
    }),
  );
  const posterior: FieldPosterior = {
    draws: DRAWS,
    picture: { centreMm: [0, 0], azimuthsDeg: [], shells: [], cambiumMm: [], mean: [], sd: [] },
    directionsDeg: [],
    remaining,
    soundShare: new Float64Array(DRAWS),
    states,
    stateAzimuthsDeg,
    stateShells,
    stateCambiumMm: new Array(RAYS).fill(400),
    centreMm: [0, 0],
    scenarios: [],
  };
  return { posterior, lost };
}

function apart(a: number, b: number): number {
  const d = Math.abs(a - b) % 360;
  return Math.min(d, 360 - d);
}

/** Whether a needle of 400 mm runs through a sector of the stem (its rays, half a ray wider) outside 0.3 of its radius. */
function crosses(
  aim: { azimuthDeg: number; offRadialDeg: number },
  { middleDeg, halfWidthDeg }: Sector,
): boolean {
  const rad = Math.PI / 180;
  const heading = (aim.azimuthDeg + 180 + aim.offRadialDeg) * rad;
  return Array.from({ length: 200 }, (_, k) => {
    const x = 400 * Math.sin(aim.azimuthDeg * rad) + 2 * k * Math.sin(heading);
    const y = 400 * Math.cos(aim.azimuthDeg * rad) + 2 * k * Math.cos(heading);
    return Math.hypot(x, y) > 120 && apart(Math.atan2(x, y) / rad + 360, middleDeg) < halfWidthDeg + 2.5;
  }).includes(true);
}

const doubtful: Sector = { middleDeg: 120, halfWidthDeg: 25, chance: 0.3 };
const { posterior, lost } = stemWithDoubtfulSectors(doubtful);
const decided = Float64Array.from(lost, ([isLost]) => (isLost ? 1.2 : 2));

describe('next drilling', () => {
  it('goes where the doubt lies that decides', () => {
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBeUndefined();
    if (advice.stop) return;
    expect(crosses(advice, doubtful)).toBe(true);
    // A needle there tells all but for the chance that it misleads, and for answers that share a class.
    expect(advice.worth).toBeGreaterThan(0.8);
    expect(advice.candidates).toHaveLength(36);
    for (const candidate of advice.candidates) {
      if (!crosses(candidate, doubtful)) expect(candidate.worth).toBeLessThan(0.1);
    }
    expect(advice.candidates.filter((c) => crosses(c, doubtful) && c.worth > 0.8).length).toBeGreaterThan(5);
  });

  it('turns the needle off the pith only where that tells more', () => {
    const { candidates = [] } = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled: [] }],
      limit: 1.5,
    });
    const at = (azimuthDeg: number) => candidates.find((c) => c.azimuthDeg === azimuthDeg)!;
    expect(at(120).offRadialDeg).toBe(0);
    // From here the line to the pith passes the sector by; turned toward it, the needle runs through.
    expect(at(70).offRadialDeg).not.toBe(0);
    expect(crosses(at(70), doubtful)).toBe(true);
  });

  it('looks two holes ahead where one alone cannot tip the decision', () => {
    const north: Sector = { middleDeg: 0, halfWidthDeg: 25, chance: 0.4 };
    const south: Sector = { middleDeg: 180, halfWidthDeg: 25, chance: 0.4 };
    const both = stemWithDoubtfulSectors(north, south);
    const safetyByDraw = Float64Array.from(both.lost, ([a, b]) => (a && b ? 1.2 : 2));
    const advice = nextDrilling({
      sections: [
        { id: 's1', posterior: both.posterior, safetyByDraw, safetyOfSection: safetyByDraw, drilled: [] },
      ],
      limit: 1.5,
      needleMm: 250,
    });
    expect(advice.stop).toBeUndefined();
    if (advice.stop) return;
    expect(Math.max(...advice.candidates.map((c) => c.worth))).toBeLessThan(0.1);
    expect(crosses(advice, north) || crosses(advice, south)).toBe(true);
    expect(advice.worth).toBeGreaterThan(0.3);
    expect(advice.why).toContain('would hardly change it alone');
  });

  it('ranks places by what they tell of the strength, and says what that does for the decision', () => {
    // The east decides, but tells little of the strength; the west does not decide, and tells most of it.
    const east: Sector = { middleDeg: 90, halfWidthDeg: 20, chance: 0.15 };
    const west: Sector = { middleDeg: 270, halfWidthDeg: 20, chance: 0.5 };
    const both = stemWithDoubtfulSectors(east, west);
    const safetyByDraw = Float64Array.from(both.lost, ([e, w]) => (e ? 1.44 : w ? 1.6 : 4));
    const sections = [
      { id: 's1', posterior: both.posterior, safetyByDraw, safetyOfSection: safetyByDraw, drilled: [] },
    ];
    const advice = nextDrilling({ sections, limit: 1.5, needleMm: 250 });
    expect(advice.stop).toBeUndefined();
    if (advice.stop) return;
    expect(crosses(advice, west)).toBe(true);
    expect(advice.candidates[0]!.worth).toBeLessThan(0.1);
    expect(advice.why).toContain('would hardly change it alone');
    const decides = advice.candidates.find((c) => c.azimuthDeg === 90)!;
    expect(decides.worth).toBeGreaterThan(0.5);
  });

  it('ranks a place in a section that leaves no doubt behind all of one that does', () => {
    const safe = Float64Array.from(lost, ([isLost]) => (isLost ? 2.5 : 4));
    const { candidates = [] } = nextDrilling({
      sections: [
        { id: 'low', posterior, safetyByDraw: safe, safetyOfSection: safe, drilled: [] },
        { id: 'high', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled: [] },
      ],
      limit: 1.5,
    });
    const telling = candidates.filter((c) => crosses(c, doubtful) && c.worth > 0.5);
    expect(telling.length).toBeGreaterThan(3);
    expect(candidates.slice(0, telling.length).every((c) => c.sectionId === 'high')).toBe(true);
  });

  it('stops when the decision is sure', () => {
    const safetyByDraw = new Float64Array(DRAWS).fill(2.4);
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw, safetyOfSection: safetyByDraw, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
    if (advice.stop) expect(advice.why).toContain('no further hole');
  });

  it('stops when the doubt does not come from the section', () => {
    const random = randomFrom(9);
    const safetyByDraw = Float64Array.from({ length: DRAWS }, () => (random.uniform() < 0.4 ? 1.2 : 2));
    const safetyOfSection = Float64Array.from(lost, ([isLost]) => (isLost ? 1.6 : 1.65));
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw, safetyOfSection, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
    if (advice.stop) expect(advice.why).toMatch(/known throughout.* wind/);
  });

  it('goes on while most of the doubt lies in the section, though no two holes would tip the decision', () => {
    const sectors = [0, 72, 144, 216, 288].map(
      (middleDeg): Sector => ({ middleDeg, halfWidthDeg: 15, chance: 0.5 }),
    );
    const many = stemWithDoubtfulSectors(...sectors);
    const safety = Float64Array.from(many.lost, (each) => (each.filter(Boolean).length >= 4 ? 1.2 : 2));
    const advice = nextDrilling({
      sections: [
        { id: 's1', posterior: many.posterior, safetyByDraw: safety, safetyOfSection: safety, drilled: [] },
      ],
      limit: 1.5,
      needleMm: 200,
    });
    expect(advice.stop).toBeUndefined();
    if (advice.stop) return;
    expect(advice.worth).toBeLessThan(0.1);
    expect(advice.why).toContain('One or two holes would hardly change it');
    expect(sectors.some((sector) => crosses(advice, sector))).toBe(true);
  });

  it('finds no worth in a section when another decides already', () => {
    const failing = new Float64Array(DRAWS).fill(0.8);
    const advice = nextDrilling({
      sections: [
        { id: 's1', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled: [] },
        { id: 's2', posterior, safetyByDraw: failing, safetyOfSection: failing, drilled: [] },
      ],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
  });

  it('picks the section that matters', () => {
    const safe = new Float64Array(DRAWS).fill(3);
    const advice = nextDrilling({
      sections: [
        { id: 'low', posterior, safetyByDraw: safe, safetyOfSection: safe, drilled: [] },
        { id: 'high', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled: [] },
      ],
      limit: 1.5,
    });
    expect(advice.stop).toBeUndefined();
    if (!advice.stop) expect(advice.sectionId).toBe('high');
  });

  it('does not drill beside a hole', () => {
    const drilled = [100, 110, 120, 130, 140].map((azimuthDeg) => ({
      azimuthDeg,
      offRadialDeg: 0,
      downDeg: 0,
    }));
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw: decided, safetyOfSection: decided, drilled }],
      limit: 1.5,
    });
    for (const { azimuthDeg } of advice.candidates ?? []) {
      expect(Math.min(...drilled.map((d) => apart(d.azimuthDeg, azimuthDeg)))).toBeGreaterThanOrEqual(8);
    }
    expect(advice.candidates!.length).toBeGreaterThan(20);
  });

  it('refuses safety factors that do not belong to the draws', () => {
    const sections = [
      { id: 's1', posterior, safetyByDraw: decided, safetyOfSection: new Float64Array(3), drilled: [] },
    ];
    expect(() => nextDrilling({ sections, limit: 1.5 })).toThrow(InputFault);
  });

  it('says so when there is no section', () => {
    expect(nextDrilling({ sections: [], limit: 1.5 }).stop).toBe(true);
  });
});
