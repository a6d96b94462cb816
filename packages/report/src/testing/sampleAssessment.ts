/**
 * An invented case and its assessment, written by formula: for tests of figures and report, and for screens
 * built before a real one is at hand. Plausible in shape and size; it describes no tree.
 */
import type { CaseFile } from '@standfast/casefile';
import type {
  Assessment,
  DirectionalInterval,
  DrillingAssessment,
  Interval,
  SafetyGoverning,
  SectionAssessment,
  Zone,
  ZoneKind,
} from '@standfast/engine';
import { sampleAdvice, sampleDecision } from './sampleDecision.ts';

interface Noise {
  uniform(): number;
  normal(): number;
}

/** Integer noise from a seed, the same on every platform (mulberry32); the normal is a sum of twelve. */
function noiseFrom(seed: number): Noise {
  let state = seed | 0;
  const uniform = () => {
    state = (state + 0x6d2b79f5) | 0;
    let t = Math.imul(state ^ (state >>> 15), 1 | state);
    t = (t + Math.imul(t ^ (t >>> 7), 61 | t)) ^ t;
    return ((t ^ (t >>> 14)) >>> 0) / 4294967296;
  };
  const normal = () => Array.from({ length: 12 }, uniform).reduce((a, b) => a + b, -6);
  return { uniform, normal };
}

const BARK_MM = 18;
/** The invented pocket: a round of decayed wood with a hollow in it. */
const POCKET = { azimuthDeg: 140, distanceMm: 95, decayedMm: 165, hollowMm: 95, incipientMm: 195 };

const radians = (deg: number) => (deg * Math.PI) / 180;

/** Radius over bark of the invented stem, mm. */
function radiusMm(azimuthDeg: number): number {
  return 372 + 17 * Math.cos(radians(3 * (azimuthDeg - 25))) + 12 * Math.cos(radians(2 * (azimuthDeg - 60)));
}

function soundnessAt(azimuthDeg: number, rMm: number): number {
  const d = Math.hypot(
    rMm * Math.sin(radians(azimuthDeg)) - POCKET.distanceMm * Math.sin(radians(POCKET.azimuthDeg)),
    rMm * Math.cos(radians(azimuthDeg)) - POCKET.distanceMm * Math.cos(radians(POCKET.azimuthDeg)),
  );
  return Math.min(1, Math.max(0, (d - POCKET.hollowMm) / (POCKET.incipientMm - POCKET.hollowMm)));
}

function kindAt(azimuthDeg: number, depthMm: number, endMm: number): ZoneKind {
  if (depthMm < 4 || depthMm > endMm) return 'air';
  if (depthMm < 4 + BARK_MM) return 'bark';
  const r = radiusMm(azimuthDeg) - (depthMm - 4);
  const s = soundnessAt(r < 0 ? azimuthDeg + 180 : azimuthDeg, Math.abs(r));
  if (s >= 1) return 'sound';
  if (s > 0.7) return 'incipient';
  return s > 0 ? 'decayed' : 'void';
}

const LEVEL: Record<ZoneKind, number> = {
  air: 0.5,
  bark: 9,
  sound: 34,
  incipient: 26,
  decayed: 13,
  void: 1,
  crack: 2,
};

const CONFIDENCE: Record<ZoneKind, number> = {
  air: 0.99,
  bark: 0.97,
  sound: 0.96,
  incipient: 0.71,
  decayed: 0.9,
  void: 0.98,
  crack: 0.8,
};

function drilling(id: string, azimuthDeg: number, random: Noise, lengthMm = 420): DrillingAssessment {
  const endMm = 4 + 2 * radiusMm(azimuthDeg);
  const zones: Zone[] = [];
  const drawn: DrillingAssessment['drawn'] = { depthMm: [], lowPct: [], highPct: [], frictionPct: [] };
  let friction = 0;
  for (let depth = 0; depth <= lengthMm; depth += 1) {
    const kind = kindAt(azimuthDeg, depth, endMm);
    const last = zones.at(-1);
    if (last?.kind === kind) last.toMm = depth;
    else {
      if (last) last.toMm = depth;
      zones.push({ kind, fromMm: depth, toMm: depth, confidence: CONFIDENCE[kind] });
    }
    if (kind === 'sound' || kind === 'incipient' || kind === 'decayed') friction += 0.018;
    const rings = kind === 'sound' ? 5 * Math.sin(depth / 1.9 + azimuthDeg) : 0;
    const level = LEVEL[kind] + friction + rings + random.normal() * (kind === 'void' ? 0.3 : 1.6);
    drawn.depthMm.push(depth);
    drawn.lowPct.push(Math.max(0, level - 2.2 - random.uniform()));
    drawn.highPct.push(Math.max(0.4, level + 2.2 + random.uniform()));
    drawn.frictionPct.push(friction);
  }
  const wall = zones.find((z) => z.kind === 'sound');
  const wallMm = wall ? wall.toMm - wall.fromMm : 0;
  const atLeast = !zones.some((z) => z.kind === 'incipient' || z.kind === 'decayed' || z.kind === 'void');
  return {
    id,
    azimuthDeg,
    offRadialDeg: 0,
    downDeg: 0,
    zones,
    residualWallMm: wallMm,
    residualWallIntervalMm: { p05: wallMm - 5.2, p50: wallMm, p95: wallMm + 4.1 },
    residualWallAtLeast: atLeast,
    barkFromMm: 4,
    woodFromMm: 4 + BARK_MM,
    reference: { levelPct: 34.2, sdPct: 2.1, restsOn: 'all drillings of the tree' },
    drawn,
    warnings:
      id === 'd5' ? ['The needle ended in wood that is not sound: what lies deeper was not reached.'] : [],
  };
}

function byDirection(middle: (deg: number) => number, spread: number): DirectionalInterval[] {
  return Array.from({ length: 36 }, (_, i) => {
    const directionDeg = 10 * i;
    const p50 = middle(directionDeg);
    return { directionDeg, p05: p50 * (1 - spread), p50, p95: p50 * (1 + 0.8 * spread) };
  });
}

const around = (p50: number, share: number): Interval => ({
  p05: p50 * (1 - share),
  p50,
  p95: p50 * (1 + share),
});

function section(random: Noise, azimuthsDeg: number[]): SectionAssessment {
  const azimuths = Array.from({ length: 72 }, (_, i) => 5 * i);
  const shells = Array.from({ length: 20 }, (_, j) => (j + 0.5) / 20);
  const cambium = azimuths.map((a) => radiusMm(a) - BARK_MM);
  const mean: number[] = [];
  const sd: number[] = [];
  for (let i = 0; i < azimuths.length; i++)
    for (const shell of shells) {
      const a = azimuths[i]!;
      mean.push(soundnessAt(a, shell * cambium[i]!));
      const nearest = Math.min(
        180,
        ...azimuthsDeg.map(
          (d) => Math.abs(((a - d + 540) % 360) - 180) * shell * cambium[i]! * (Math.PI / 180),
        ),
      );
      sd.push(Math.min(0.42, 0.03 + (nearest / 110) * 0.32 * (1 - 0.5 * shell)));
    }
  const outline = azimuths.map((a) => radiusMm(a));
  const points = (radii: number[]) =>
    radii.map((r, i): [number, number] => [
      r * Math.sin(radians(azimuths[i]!)),
      r * Math.cos(radians(azimuths[i]!)),
    ]);
  const intact = byDirection((d) => 0.0353 * (1 + 0.05 * Math.cos(radians(2 * (d - 60)))), 0);
  return {
    id: 's1',
    heightM: 0.4,
    outlineMm: points(outline),
    cambiumMm: points(cambium),
    drillings: azimuthsDeg.map((a, i) => drilling(`d${i + 1}`, a, random)),
    intactModulusM3: 0.0335,
    intactModulusByDirectionM3: intact.map(({ directionDeg, p50 }) => ({ directionDeg, value: p50 })),
    remaining: byDirection((d) => 0.79 + 0.08 * Math.cos(radians(d - POCKET.azimuthDeg - 180)), 0.11),
    criteria: [
      {
        name: 'Wall ratio, t/R',
        source: 'Mattheck & Breloer 1994, The Body Language of Trees',
        value: 0.27,
        limit: 0.3,
        quantity: 't/R (a least)',
        met: false,
        note: 'Taken from closed, roughly central hollows; it ignores load, height and wind.',
      },
      {
        name: 'Strength loss by diameters cubed',
        source: 'Wagener 1963, A Method of Rating Hazard',
        value: 19,
        limit: 33,
        quantity: 'strength loss, % (a most)',
        met: true,
        note: 'Assumes a central round hollow.',
      },
      {
        name: 'Strength loss with opening',
        source: 'Smiley & Fraedrich 1992, J. Arboriculture 18',
        value: null,
        limit: 33,
        quantity: 'strength loss, % (a most)',
        met: null,
        note: 'Does not apply: no opening was recorded.',
      },
      {
        name: 'One inch of wood to six of diameter',
        source: 'Common practice of the trade',
        value: 98,
        limit: 124,
        quantity: 'thinnest wall, mm (a least)',
        met: false,
        note: 'A rule of thumb without load, height or wind.',
      },
    ],
    soundness: { centreMm: [0, 0], azimuthsDeg: azimuths, shells, cambiumMm: cambium, mean, sd },
    soundShare: { p05: 0.69, p50: 0.76, p95: 0.82 },
  };
}

/** The invented case as an assessor recorded it. */
export function sampleCase(): CaseFile {
  const azimuths = [0, 60, 120, 180, 240, 300];
  return {
    format: 'standfast-case',
    version: 1,
    invented: true,
    purpose: 'Can the lime by the path be kept, and for how long?',
    client: { name: 'Gemeinde Aumühle' },
    assessor: { name: 'Łukasz Żółć', credential: 'Arborist, no. 0417 (invented)', firm: 'Ångström & Ζωή' },
    visitedOn: '2026-04-21',
    weather: 'dry, light wind, 14 °C',
    place: { name: 'Mill path, north bank' },
    instrument: {
      name: 'resistance drill',
      serialNumber: '1204',
      calibratedOn: '2026-01-12',
      needleLengthMm: 420,
    },
    tree: {
      label: 'L-04',
      species: 'Tilia cordata',
      stemDiameterMm: 690,
      heightM: 19,
      leanDeg: 3,
      leanTowardDeg: 110,
      crown: { baseHeightM: 4.5, widthM: 12, shape: 'ellipse', inLeaf: true },
    },
    site: { windCode: 'EN 1991-1-4', basicWindSpeedMs: 25, terrain: 'III' },
    sections: [
      {
        id: 's1',
        heightM: 0.4,
        barkMm: BARK_MM,
        outline: {
          kind: 'radii',
          radii: azimuths.map((azimuthDeg) => ({ azimuthDeg, radiusMm: radiusMm(azimuthDeg) })),
        },
        drillings: azimuths.map((azimuthDeg, i) => ({
          id: `d${i + 1}`,
          azimuthDeg,
          trace: `traces/d${i + 1}.csv`,
        })),
      },
    ],
    flares: [
      { id: 'f1', azimuthDeg: 148, widthMm: 260, heightMm: 310, drillings: [] },
      { id: 'f2', azimuthDeg: 25, widthMm: 280, heightMm: 340, drillings: [] },
      { id: 'f3', azimuthDeg: 265, widthMm: 240, heightMm: 290, drillings: [] },
    ],
    signs: [
      { kind: 'fruiting body', where: 'stem foot, south-east', note: 'One bracket, 140 mm wide.' },
      { kind: 'ants', where: 'flare f1', note: 'Coarse frass between two roots.' },
    ],
    targets: [
      { what: 'footpath', occupancy: 'frequent', distanceM: 5, directionDeg: 90 },
      { what: 'play area', occupancy: 'occasional', distanceM: 14, directionDeg: 200 },
    ],
  };
}

/** The invented case's assessment. `count` drillings are spread evenly from north. */
export function sampleAssessment(count = 6): Assessment {
  const random = noiseFrom(20260421);
  const azimuths = Array.from({ length: count }, (_, i) => Math.round((360 / Math.max(1, count)) * i));
  const stem = section(random, azimuths);
  const breakage = byDirection((d) => 2.05 + 0.3 * Math.cos(radians(d - 320)), 0.3);
  const uprooting = byDirection((d) => 1.72 + 0.22 * Math.cos(radians(d - 290)), 0.42);
  const worst = uprooting.reduce((a, b) => (b.p50 < a.p50 ? b : a));
  const moments = byDirection((d) => 131_000 * (1 + 0.1 * Math.cos(radians(d - 110))), 0.28);
  const strips = Array.from({ length: 14 }, (_, i) => {
    const fromM = 4.5 + (14.5 / 14) * i;
    const toM = fromM + 14.5 / 14;
    const u = ((fromM + toM) / 2 - 11.75) / 7.25;
    const widthM = 12 * Math.sqrt(1 - u * u);
    const pressurePa = 520 + 22 * ((fromM + toM) / 2 - 5);
    return {
      fromM,
      toM,
      widthM,
      pressurePa,
      momentNm: 0.22 * pressurePa * widthM * (toM - fromM) * ((fromM + toM) / 2),
    };
  });
  const governing: SafetyGoverning = {
    mode: 'uprooting',
    directionDeg: worst.directionDeg,
    sectionId: null,
    p05: worst.p05,
    p50: worst.p50,
    p95: worst.p95,
  };
  return {
    format: 'standfast-assessment',
    version: 1,
    engineVersion: '0.1.0',
    seed: 1,
    draws: 2000,
    sections: [stem],
    flares: [
      {
        id: 'f1',
        azimuthDeg: 148,
        widthMm: 260,
        heightMm: 310,
        drillings: [drilling('f1a', 148, random, 300)],
        soundShare: { p05: 0.44, p50: 0.56, p95: 0.66 },
      },
      {
        id: 'f2',
        azimuthDeg: 25,
        widthMm: 280,
        heightMm: 340,
        drillings: [drilling('f2a', 25, random, 250)],
        soundShare: { p05: 0.9, p50: 0.96, p95: 0.99 },
      },
      { id: 'f3', azimuthDeg: 265, widthMm: 240, heightMm: 290, drillings: [], soundShare: null },
    ],
    wind: {
      momentNm: 144_000,
      momentIntervalNm: { p05: 104_000, p50: 144_000, p95: 176_000 },
      windMomentNm: 131_000,
      selfWeightMomentNm: 13_400,
      gustMs: 33.2,
      centreOfPressureM: 12.1,
      crownAreaM2: 136.7,
      windCode: 'EN 1991-1-4',
      byDirection: moments,
      atSections: [
        {
          sectionId: 's1',
          heightM: 0.4,
          byDirection: moments.map((m) => ({
            ...m,
            p05: m.p05 * 0.967,
            p50: m.p50 * 0.967,
            p95: m.p95 * 0.967,
          })),
        },
      ],
      strips,
      values: [
        {
          name: 'drag coefficient of the crown at the design gust',
          value: 0.22,
          unit: '',
          cov: 0.25,
          source: 'Vollsinger et al. 2005, Can. J. For. Res. 35(5)',
        },
        {
          name: 'roughness length',
          value: 0.3,
          unit: 'm',
          source: 'EN 1991-1-4:2005, Table 4.1, terrain III',
        },
        { name: 'density of air', value: 1.25, unit: 'kg/m³', source: 'EN 1991-1-4:2005, 4.5(1)' },
      ],
    },
    wood: {
      species: 'Tilia cordata',
      matched: 'Tilia (lime, linden)',
      values: [
        {
          name: 'bending strength, green',
          value: 34,
          unit: 'MPa',
          cov: 0.16,
          source: 'Wood Handbook FPL-GTR-282, Table 5-3a',
        },
        {
          name: 'compression along the grain, green',
          value: 15.3,
          unit: 'MPa',
          cov: 0.18,
          source: 'Wood Handbook FPL-GTR-282, Table 5-3a',
        },
      ],
    },
    safety: {
      breakage,
      uprooting,
      governing,
      chanceBelow1: 0.09,
      chanceBelow1_5: 0.46,
      criticalGustMs: { breakage: around(47.5, 0.18), uprooting: around(41.2, 0.24) },
      anchorageBasis:
        'Tree size and two drilled flares of three; published winching tests of other trees, whose scatter is large.',
      anchorageTooThin: true,
      values: [
        {
          name: 'anchorage coefficient C in M = C d² H',
          value: 40,
          unit: 'kN·m/m³',
          cov: 0.33,
          source: 'our own proposal, within the range of Byrne 2005',
        },
      ],
    },
    decision: sampleDecision(governing),
    advice: sampleAdvice(governing),
    nextDrilling: {
      sectionId: 's1',
      azimuthDeg: 210,
      offRadialDeg: 30,
      worth: 0.34,
      doubtWorth: 0.4,
      why: 'The field is least known between d4 and d5, and the direction of least strength depends on it.',
      candidates: [
        { sectionId: 's1', azimuthDeg: 210, offRadialDeg: 30, worth: 0.34, doubtWorth: 0.4 },
        { sectionId: 's1', azimuthDeg: 150, offRadialDeg: 0, worth: 0.22, doubtWorth: 0.3 },
        { sectionId: 's1', azimuthDeg: 30, offRadialDeg: 0, worth: 0.05, doubtWorth: 0.1 },
      ],
    },
    notices: [
      {
        severity: 'serious',
        where: 'safety.uprooting',
        text: 'The evidence for anchorage is too thin to decide on: ask for a static load test.',
      },
      {
        severity: 'caution',
        where: 'signs',
        text: 'Ants nest in wood that is already decayed: flare f1 was drilled for that reason.',
      },
      {
        severity: 'note',
        where: 'tree.species',
        text: 'Strength values of the genus were used; none are listed for the species.',
      },
    ],
    sources: [
      'EN 1991-1-4:2005+A1:2010, Actions on structures: wind actions',
      'Mattheck & Breloer 1994, The Body Language of Trees',
      'Vollsinger et al. 2005, Can. J. For. Res. 35(5)',
      'Wagener 1963, A Method of Rating Hazard',
      'Wood Handbook FPL-GTR-282 (2021), Table 5-3a',
    ],
  };
}
