import { describe, expect, it } from 'vitest';
import { InputFault } from '../../faults.ts';
import { randomFrom } from '../../random.ts';
import { type FieldPosterior, WOOD_STATE } from '../field/index.ts';
import { nextDrilling } from './nextDrilling.ts';

const RAYS = 72;
const SHELLS = 33;
const DRAWS = 2000;

/**
 * A posterior of round stems in which, by chance, the wood of one sector is lost from 0.3 of the radius outwards.
 * Returns it with which draws have lost it.
 */
function stemWithDoubtfulSector(middleDeg: number, halfWidthDeg: number, chance: number) {
  const random = randomFrom(5);
  const lost = Array.from({ length: DRAWS }, () => random.uniform() < chance);
  const stateAzimuthsDeg = Array.from({ length: RAYS }, (_, k) => (360 * k) / RAYS);
  const stateShells = Array.from({ length: SHELLS }, (_, i) => i / (SHELLS - 1));
  const states = new Uint8Array(DRAWS * RAYS * SHELLS).fill(WOOD_STATE.sound);
  lost.forEach((isLost, d) => {
    if (!isLost) return;
    stateAzimuthsDeg.forEach((azimuth, k) => {
      const away = Math.abs(((azimuth - middleDeg + 540) % 360) - 180);
      if (away > halfWidthDeg) return;
      for (let i = 10; i < SHELLS; i++) states[(d * RAYS + k) * SHELLS + i] = WOOD_STATE.none;
    });
  });
  const posterior: FieldPosterior = {
    draws: DRAWS,
    picture: { centreMm: [0, 0], azimuthsDeg: [], shells: [], cambiumMm: [], mean: [], sd: [] },
    directionsDeg: [],
    remaining: new Float64Array(DRAWS * 36),
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

const { posterior, lost } = stemWithDoubtfulSector(120, 25, 0.3);
const decided = Float64Array.from(lost, (isLost) => (isLost ? 1.2 : 2));

describe('next drilling', () => {
  it('goes where the doubt lies that decides', () => {
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw: decided, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBeUndefined();
    if (advice.stop) return;
    expect(Math.abs(advice.azimuthDeg - 120)).toBeLessThanOrEqual(25);
    // A needle there tells all but for the chance that it misleads, and for answers that share a class.
    expect(advice.worth).toBeGreaterThan(0.8);
    expect(advice.candidates).toHaveLength(36);
    const opposite = advice.candidates.find((c) => c.azimuthDeg === 300)!;
    expect(opposite.worth).toBeLessThan(0.1);
  });

  it('stops when the decision is sure', () => {
    const safetyByDraw = new Float64Array(DRAWS).fill(2.4);
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
    if (advice.stop) expect(advice.why).toContain('no further hole');
  });

  it('stops when the doubt does not come from the section', () => {
    const random = randomFrom(9);
    const safetyByDraw = Float64Array.from({ length: DRAWS }, () => (random.uniform() < 0.4 ? 1.2 : 2));
    const advice = nextDrilling({
      sections: [{ id: 's1', posterior, safetyByDraw, drilled: [] }],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
    if (advice.stop) expect(advice.why).toContain('wind');
  });

  it('finds no worth in a section when another decides already', () => {
    const failing = new Float64Array(DRAWS).fill(0.8);
    const advice = nextDrilling({
      sections: [
        { id: 's1', posterior, safetyByDraw: decided, drilled: [] },
        { id: 's2', posterior, safetyByDraw: failing, drilled: [] },
      ],
      limit: 1.5,
    });
    expect(advice.stop).toBe(true);
  });

  it('picks the section that matters', () => {
    const safe = new Float64Array(DRAWS).fill(3);
    const advice = nextDrilling({
      sections: [
        { id: 'low', posterior, safetyByDraw: safe, drilled: [] },
        { id: 'high', posterior, safetyByDraw: decided, drilled: [] },
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
      sections: [{ id: 's1', posterior, safetyByDraw: decided, drilled }],
      limit: 1.5,
    });
    if (!advice.stop) expect(drilled.map((d) => d.azimuthDeg)).not.toContain(advice.azimuthDeg);
    else expect(advice.why).not.toBe('');
  });

  it('refuses safety factors that do not belong to the draws', () => {
    const sections = [{ id: 's1', posterior, safetyByDraw: new Float64Array(3), drilled: [] }];
    expect(() => nextDrilling({ sections, limit: 1.5 })).toThrow(InputFault);
  });

  it('says so when there is no section', () => {
    expect(nextDrilling({ sections: [], limit: 1.5 }).stop).toBe(true);
  });
});
