import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { DrillingAssessment } from '../../assessment.ts';
import { InputFault } from '../../faults.ts';
import type { Zone } from '../../trace/types.ts';
import { DIRECTIONS_DEG } from '../capacity.ts';
import { FIELD_PRIOR } from '../field/index.ts';
import type { PointMm, RingMm } from '../types.ts';
import { checkFelled, predictionAgainstTruth } from './judge.ts';
import { trueStrength } from './truth.ts';

/** Rings of 720 corners on a circle differ from the circle by 2.5e-5 in second moment. */
const AS_CIRCLES = 4;
/** Walls are told by straight edges of such rings: sagitta below 0.01 mm. */
const WALL_DIGITS = 1;

const circle = (radius: number, x = 0, y = 0, corners = 720): RingMm =>
  Array.from({ length: corners }, (_, i): PointMm => {
    const a = (2 * Math.PI * i) / corners;
    return [x + radius * Math.sin(a), y + radius * Math.cos(a)];
  });

describe('true strength', () => {
  it('is one where nothing was traced', () => {
    const { remaining, soundShare } = trueStrength(circle(300), [], [], 1, 's1');
    expect([...remaining]).toEqual(new Array(36).fill(1));
    expect(soundShare).toBe(1);
  });

  it('is 1 − k⁴ for a round hollow in the middle', () => {
    const { remaining, soundShare } = trueStrength(circle(300), [circle(210)], [], 1, 's1');
    for (const value of remaining) expect(value).toBeCloseTo(1 - 0.7 ** 4, AS_CIRCLES);
    expect(soundShare).toBeCloseTo(1 - 0.49, AS_CIRCLES);
  });

  // Transformed section of a round core of stiffness n: 1 − (1 − n) k⁴.
  it.each([
    [0.3, 0.83193],
    [0.5, 0.87995],
  ])('counts a core of incipient wood that keeps %f', (share, expected) => {
    const { remaining } = trueStrength(circle(300), [], [circle(210)], share, 's1');
    for (const value of remaining) expect(value).toBeCloseTo(expected, AS_CIRCLES);
  });

  it('runs from incipient wood taken as sound to taken as lost, wherever it is', () => {
    fc.assert(
      fc.property(
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: -150, max: 150, noNaN: true }),
        fc.double({ min: 0.05, max: 0.95, noNaN: true }),
        (x, y, share) => {
          const outline = circle(300, 0, 0, 72);
          const hollow = circle(70, x, y, 36);
          const change = circle(110, x, y, 36);
          const partly = trueStrength(outline, [hollow], [change], share, 's1');
          const allSound = trueStrength(outline, [hollow], [change], 1, 's1');
          const untraced = trueStrength(outline, [hollow], [], 1, 's1');
          const lost = trueStrength(outline, [hollow, change], [], 1, 's1');
          expect(allSound.soundShare).toBeCloseTo(untraced.soundShare, 9);
          allSound.remaining.forEach((value, k) => {
            expect(value).toBeCloseTo(untraced.remaining[k]!, 9);
          });
          expect(partly.soundShare).toBeLessThan(untraced.soundShare);
          expect(partly.soundShare).toBeGreaterThan(lost.soundShare);
        },
      ),
      { numRuns: 20 },
    );
  });

  it('carries its share when all the wood is incipient', () => {
    const { remaining, soundShare } = trueStrength(circle(300), [], [circle(400)], 0.45, 's1');
    for (const value of remaining) expect(value).toBeCloseTo(0.45, 9);
    expect(soundShare).toBeCloseTo(0.45, 9);
  });

  it('refuses a section without wood', () => {
    expect(() => trueStrength(circle(300), [circle(400)], [], 1, 's1.felled')).toThrow(/take all the wood/);
  });
});

const zone = (kind: Zone['kind'], fromMm: number, toMm: number): Zone => ({
  kind,
  fromMm,
  toMm,
  confidence: 1,
});

function drilling(over: Partial<DrillingAssessment> & { zones: Zone[] }): DrillingAssessment {
  const first = over.zones.findIndex(({ kind }) => kind !== 'air' && kind !== 'bark' && kind !== 'sound');
  const wood = over.zones.filter(({ kind }) => kind !== 'air' && kind !== 'bark');
  const woodFromMm = wood[0]!.fromMm;
  const wallEnd = first >= 0 ? over.zones[first]!.fromMm : wood.at(-1)!.toMm;
  return {
    id: 'd1',
    azimuthDeg: 0,
    offRadialDeg: 0,
    downDeg: 0,
    residualWallMm: wallEnd - woodFromMm,
    residualWallIntervalMm: { p05: 0, p50: 0, p95: 0 },
    residualWallAtLeast: first < 0,
    barkFromMm: over.zones.find(({ kind }) => kind !== 'air')!.fromMm,
    woodFromMm,
    reference: { levelPct: 40, sdPct: 3, restsOn: 'this trace' },
    drawn: { depthMm: [], lowPct: [], highPct: [], frictionPct: [] },
    warnings: [],
    ...over,
  };
}

const SECTION = { outline: { kind: 'circle' as const, diameterMm: 640 }, barkMm: 20 };

function predicted(drillings: DrillingAssessment[] = [], p50 = 0.7) {
  return {
    remaining: DIRECTIONS_DEG.map((directionDeg) => ({ directionDeg, p05: p50 - 0.1, p50, p95: p50 + 0.1 })),
    soundShare: { p05: 0.4, p50: 0.5, p95: 0.6 },
    drillings,
  };
}

const judge = (felled: Parameters<typeof checkFelled>[0], drillings: DrillingAssessment[] = [], p50 = 0.7) =>
  predictionAgainstTruth({ ...SECTION, felled }, predicted(drillings, p50), 'sections.s1');

describe('prediction against truth', () => {
  it('says by direction whether the truth is inside and how far off the middle was', () => {
    const { remaining, insideShare, weakest, soundShare } = judge({ unsound: [circle(210)] });
    expect(insideShare).toBe(1);
    expect(remaining).toHaveLength(36);
    expect(weakest).toMatchObject({ p50: 0.7, inside: true });
    expect(weakest.error).toBeCloseTo(0.7 - 0.7599, AS_CIRCLES);
    expect(soundShare.truth).toBeCloseTo(0.51, AS_CIRCLES);
    expect(judge({ unsound: [circle(210)] }, [], 0.9).weakest).toMatchObject({ inside: false });
  });

  it('finds where the section was in truth weakest', () => {
    // A hollow towards the east: bending about the north-south axis suffers most.
    const { weakestInTruth } = judge({ unsound: [circle(120, 120)] });
    expect(weakestInTruth.directionDeg % 180).toBe(90);
  });

  it('takes the felled outline where it was measured anew', () => {
    const { cambiumMm, remaining } = judge({
      outline: { kind: 'circle', diameterMm: 840 },
      unsound: [circle(200)],
    });
    expect(Math.max(...cambiumMm.map(([x]) => x))).toBeCloseTo(400, 1);
    for (const { truth } of remaining) expect(truth).toBeCloseTo(1 - 0.5 ** 4, AS_CIRCLES);
  });

  it('counts incipient wood at the share that the field believes, and says so', () => {
    const { incipientStrength, remaining } = judge({ unsound: [], incipient: [circle(210)] });
    expect(incipientStrength).toBe(FIELD_PRIOR.incipientStrength.mean);
    expect(remaining[0]!.truth).toBeCloseTo(1 - (1 - incipientStrength!) * 0.7 ** 4, AS_CIRCLES);
    expect(judge({ unsound: [circle(210)] }).incipientStrength).toBeNull();
  });
});

describe('walls along the needles', () => {
  const felled = { unsound: [circle(210)] };
  const met = drilling({
    zones: [zone('bark', 0, 20), zone('sound', 20, 104), zone('decayed', 104, 180), zone('void', 180, 300)],
  });

  it('compares a wall with the traced edge', () => {
    const [wall] = judge(felled, [met]).walls;
    expect(wall).toMatchObject({ drillingId: 'd1', finding: 'edge', readMm: 84 });
    expect(wall!.trueMm).toBeCloseTo(90, WALL_DIGITS);
    expect(wall!.errorMm).toBeCloseTo(-6, WALL_DIGITS);
  });

  it('follows a needle off the radial', () => {
    // R cos b − √(r² − R² sin² b) from the cambium of 300 mm, for a needle that passes it at b = 20 degrees.
    const b = (20 * Math.PI) / 180;
    const offRadialDeg = (Math.asin((300 / 320) * Math.sin(b)) * 180) / Math.PI;
    const [wall] = judge(felled, [{ ...met, offRadialDeg }]).walls;
    expect(wall!.trueMm).toBeCloseTo(98.6812, WALL_DIGITS);
  });

  it('does not shift with the stand-off of the drill', () => {
    const shifted = drilling({
      zones: [zone('air', 0, 30), zone('bark', 30, 50), zone('sound', 50, 134), zone('void', 134, 330)],
    });
    expect(judge(felled, [shifted]).walls[0]!.errorMm).toBeCloseTo(-6, WALL_DIGITS);
  });

  it('tells decay that was missed from decay that was not there', () => {
    const sound = drilling({ zones: [zone('bark', 0, 20), zone('sound', 20, 300)] });
    expect(judge(felled, [sound]).walls[0]).toMatchObject({ finding: 'missed', readAtLeast: true });
    expect(judge(felled, [sound]).walls[0]!.errorMm).toBeCloseTo(190, WALL_DIGITS);
    expect(judge({ unsound: [] }, [met]).walls[0]).toMatchObject({ finding: 'false alarm' });
    expect(judge({ unsound: [] }, [met]).walls[0]!.trueMm).toBeCloseTo(280, WALL_DIGITS);
    expect(judge({ unsound: [] }, [sound]).walls[0]).toMatchObject({ finding: 'none', errorMm: null });
  });

  it('looks no deeper than the needle went', () => {
    const short = drilling({ zones: [zone('bark', 0, 20), zone('sound', 20, 90)] });
    const [wall] = judge(felled, [short]).walls;
    expect(wall).toMatchObject({ finding: 'none', trueAtLeast: true });
    expect(wall!.trueMm).toBeCloseTo(70, WALL_DIGITS);
  });

  it('measures to the first loss where incipient wood was traced, else to wood without strength', () => {
    const gradual = drilling({
      zones: [zone('bark', 0, 20), zone('sound', 20, 70), zone('incipient', 70, 112), zone('void', 112, 300)],
    });
    const plain = judge(felled, [gradual]);
    expect(plain.wallsTo).toBe('no strength');
    expect(plain.walls[0]!.errorMm).toBeCloseTo(92 - 90, WALL_DIGITS);
    const both = judge({ ...felled, incipient: [circle(255)] }, [gradual]);
    expect(both.wallsTo).toBe('first loss');
    expect(both.walls[0]!.errorMm).toBeCloseTo(50 - 45, WALL_DIGITS);
  });

  it('gives a wall of nothing where the needle enters an opening', () => {
    const opening: RingMm = [
      [-40, 100],
      [40, 100],
      [40, 400],
      [-40, 400],
    ];
    const [wall] = judge({ unsound: [opening] }, [met]).walls;
    expect(wall).toMatchObject({ trueMm: 0, finding: 'edge' });
  });

  it('leaves out needles that leave the plane, and says so', () => {
    const { walls, warnings } = judge(felled, [{ ...met, downDeg: 30 }, met]);
    expect(walls).toHaveLength(1);
    expect(warnings.join()).toMatch(/d1 runs more than 15 degrees off the level/);
  });
});

describe('what cannot be', () => {
  const fault = (felled: Parameters<typeof checkFelled>[0]) => {
    try {
      checkFelled(felled, SECTION.outline, 'sections[0].felled');
    } catch (error) {
      if (error instanceof InputFault) return error;
      throw error;
    }
    throw new Error('no fault was found');
  };

  it('names the polygon that crosses itself, is too short or lies elsewhere', () => {
    const bow: RingMm = [
      [0, 0],
      [100, 100],
      [100, 0],
      [0, 100],
    ];
    expect(fault({ unsound: [circle(50), bow] })).toMatchObject({ where: 'sections[0].felled.unsound[1]' });
    expect(fault({ unsound: [], incipient: [circle(50).slice(0, 2)] }).where).toBe(
      'sections[0].felled.incipient[0]',
    );
    expect(fault({ unsound: [circle(50, 2000, 0)] }).what).toMatch(/outside the outline/);
    expect(fault({ unsound: [], outline: { kind: 'circle', diameterMm: 6 } }).where).toMatch(
      /felled\.outline/,
    );
  });
});
