/**
 * Makes the demonstration case, an invented scenario, and the truth behind it:
 *
 *   npx tsx tests/simulated/demo/make.ts
 *
 * writes packages/casefile/demo/ (case.json and traces) and tests/simulated/demo/truth.json. The files are committed;
 * run it again only to change the scenario, and then `npx biome check --write tests/simulated/demo`.
 */
import { mkdirSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type CaseFile, caseText, parseCase, writeTraceTable } from '@standfast/casefile';
import { needleLine, outlineRing } from '@standfast/engine';
import { simulateTrace, type TraceStretch } from '../traces/simulateTrace.ts';
import { BARK_MM, DECAYED, INCIPIENT_MM, kindAt, RADII, SECTION_HEIGHT_MM, VOID } from './truthOfDemo.ts';

const DEMO = resolve(import.meta.dirname, '../../../packages/casefile/demo');
const NEEDLE_MM = 400;
const STEP_MM = 0.1;
/** A flare stands this far out of the section's outline, and its drillings start at this height. */
const FLARE_OUT_MM = 90;
const FLARE_START_MM = 250;

interface Needle {
  id: string;
  azimuthDeg: number;
  offRadialDeg?: number;
  downDeg?: number;
  note?: string;
}

const SECTION_NEEDLES: Needle[] = [
  { id: 'd1', azimuthDeg: 12 },
  { id: 'd2', azimuthDeg: 68 },
  { id: 'd3', azimuthDeg: 122 },
  { id: 'd4', azimuthDeg: 196, note: 'Left of the old wound.' },
  { id: 'd5', azimuthDeg: 229, note: 'Through the seam; the needle dropped freely for some centimetres.' },
  { id: 'd6', azimuthDeg: 274 },
  { id: 'd7', azimuthDeg: 322, offRadialDeg: -22, note: 'Off the radial, to pass a surface root of ivy.' },
];

const FLARES = [
  {
    id: 'f1',
    azimuthDeg: 24,
    widthMm: 340,
    heightMm: 380,
    needle: { id: 'd8', azimuthDeg: 24, downDeg: 40 },
  },
  {
    id: 'f2',
    azimuthDeg: 114,
    widthMm: 310,
    heightMm: 330,
    needle: { id: 'd9', azimuthDeg: 114, downDeg: 40 },
  },
  {
    id: 'f3',
    azimuthDeg: 216,
    widthMm: 360,
    heightMm: 400,
    needle: { id: 'd10', azimuthDeg: 216, downDeg: 38, note: 'Soft from about 16 cm in.' },
  },
  {
    id: 'f4',
    azimuthDeg: 301,
    widthMm: 300,
    heightMm: 320,
    needle: { id: 'd11', azimuthDeg: 301, downDeg: 42 },
  },
];

const outline = { kind: 'radii' as const, radii: RADII };
const ring = outlineRing(outline);

/** The true kinds along a needle, from the plan of decay. */
function stretchesOf(needle: Needle, outMm: number, startHeightMm: number): TraceStretch[] {
  const { azimuthDeg, offRadialDeg = 0, downDeg = 0 } = needle;
  const line = needleLine(ring, { azimuthDeg, offRadialDeg, downDeg });
  const down = Math.sin((downDeg * Math.PI) / 180);
  const stretches: TraceStretch[] = [];
  for (let i = 0; i < NEEDLE_MM / STEP_MM; i++) {
    const depth = (i + 0.5) * STEP_MM;
    const across = depth * line.horizontalPerDepth - outMm;
    const kind =
      depth < BARK_MM
        ? 'bark'
        : kindAt(
            line.entryMm[0] + across * line.headingUnit[0],
            line.entryMm[1] + across * line.headingUnit[1],
            startHeightMm - depth * down,
          );
    const last = stretches.at(-1);
    if (last?.kind === kind) last.lengthMm += STEP_MM;
    else stretches.push({ kind, lengthMm: STEP_MM, ...LOOK[kind] });
  }
  return stretches;
}

/** How each kind looks in this tree: level over that of sound wood, and width of the edge into it. */
const LOOK: Record<string, { share?: number; edgeMm?: number }> = {
  bark: { share: 0.14 },
  sound: { share: 1, edgeMm: 3 },
  incipient: { share: 0.7, edgeMm: 6 },
  decayed: { share: 0.24, edgeMm: 5 },
  void: { share: 0 },
};

function round(values: Float64Array, decimals: number): Float64Array {
  return values.map((value) => Number(value.toFixed(decimals)));
}

const truthOfDrillings: { id: string; zones: { kind: string; fromMm: number; toMm: number }[] }[] = [];

/** Writes a needle's trace and gives its entry in the case. */
function drill(needle: Needle, seed: number, outMm = 0, startHeightMm = SECTION_HEIGHT_MM) {
  const { trace, truth } = simulateTrace({
    stretches: stretchesOf(needle, outMm, startHeightMm),
    seed,
    rings: 'diffuse',
    ringMm: 2.6,
    soundLevelPct: 41,
    frictionPctPerMm: 0.018,
    frictionOnsetPct: 1.5,
    zeroPct: 0.6,
    noiseSdPct: 0.9,
    trendShare: -0.06,
    spacingMm: STEP_MM,
  });
  const path = `traces/${needle.id}.csv`;
  writeFileSync(
    join(DEMO, path),
    writeTraceTable({ depthMm: round(trace.depthMm, 1), resistancePct: round(trace.resistancePct, 2) }, [
      'invented: simulated for the demonstration of Standfast, no real tree was drilled',
      `drilling ${needle.id}, needle of ${NEEDLE_MM} mm, resistance in percent of full scale`,
    ]),
  );
  truthOfDrillings.push({
    id: needle.id,
    zones: truth.map(({ kind, fromMm, toMm }) => ({
      kind,
      fromMm: Number(fromMm.toFixed(1)),
      toMm: Number(toMm.toFixed(1)),
    })),
  });
  return { ...needle, trace: path };
}

rmSync(DEMO, { recursive: true, force: true });
mkdirSync(join(DEMO, 'traces'), { recursive: true });

const document: CaseFile = {
  format: 'standfast-case',
  version: 1,
  invented: true,
  title: 'Demonstration (invented): sugar maple LG-7, Larkmere Green',
  purpose:
    'Invented scenario. The owner asks whether the maple beside the path can be kept, after brackets were seen at its foot.',
  client: { name: 'Larkmere Green Commons Trust (invented)', address: '1 Green Row, Larkmere (invented)' },
  assessor: {
    name: 'Ada Quillfeather (invented)',
    credential: 'invented for this demonstration',
    firm: 'Quillfeather Tree Care (invented)',
  },
  visitedOn: '2026-06-18',
  weather: 'dry, light breeze',
  place: { name: 'Larkmere Green (invented place)' },
  instrument: { name: 'resistance drill (simulated)', needleLengthMm: NEEDLE_MM },
  tree: {
    label: 'LG-7 (invented)',
    species: 'Acer saccharum',
    stemDiameterMm: 880,
    heightM: 21,
    leanDeg: 4,
    leanTowardDeg: 70,
    crown: { baseHeightM: 4.5, widthM: 15, shape: 'ellipse', inLeaf: true },
  },
  site: {
    windCode: 'ASCE 7-22',
    basicWindSpeedMs: 38,
    exposure: 'B',
    basicWindReturnYears: 50,
    basicWindSource:
      'Invented: taken as the 50-year gust of the place, 3 seconds, 10 m over open ground; houses and trees all round',
  },
  sections: [
    {
      id: 's1',
      heightM: SECTION_HEIGHT_MM / 1000,
      outline,
      barkMm: BARK_MM,
      surface: [
        { fromDeg: 335, toDeg: 212, state: 'sound', note: 'Bark alive and firm, rings solid to the mallet.' },
        { fromDeg: 242, toDeg: 308, state: 'sound', note: 'The same.' },
      ],
      drillings: SECTION_NEEDLES.map((needle, i) => drill(needle, 7100 + i)),
      note: 'Radii taped from the middle of the stem; lobed above the four flares. Not noted as sound: the seam on the south-west, and what ivy covers on the north-west.',
    },
  ],
  flares: FLARES.map(({ needle, ...flare }, i) => ({
    ...flare,
    drillings: [drill(needle, 7200 + i, FLARE_OUT_MM, FLARE_START_MM)],
  })),
  signs: [
    {
      kind: 'fruiting body',
      where: 'stem foot, above flare f3',
      note: 'Three brackets, the widest 14 cm; species not determined.',
      azimuthDeg: 224,
      heightM: 0.15,
    },
    {
      kind: 'ants',
      where: 'flare f3',
      note: 'Carpenter ants going in and out of the seam; fresh frass below.',
      azimuthDeg: 220,
    },
    {
      kind: 'old wound',
      where: 'stem, south-west side',
      note: 'Closed but for a hand-wide strip, 0.6 to 1.4 m up; said to be from a vehicle.',
      azimuthDeg: 226,
      heightM: 1,
    },
    {
      kind: 'seam',
      where: 'stem, below the wound',
      note: 'Shut, dry, down to the flare.',
      azimuthDeg: 228,
      heightM: 0.5,
    },
    {
      kind: 'dead limb',
      where: 'lower crown, east side',
      note: 'One, about 9 cm thick, over the path.',
      azimuthDeg: 85,
    },
  ],
  targets: [
    { what: 'footpath across the green', occupancy: 'frequent', distanceM: 5, directionDeg: 80 },
    { what: 'bench', occupancy: 'occasional', distanceM: 7, directionDeg: 205 },
    { what: 'village road', occupancy: 'constant', distanceM: 17, directionDeg: 300 },
  ],
  notes:
    'Everything in this case is invented, and its traces are simulated. It shows how an assessment looks.',
};

writeFileSync(join(DEMO, 'case.json'), caseText(parseCase(document).caseFile));
writeFileSync(
  resolve(import.meta.dirname, 'truth.json'),
  `${JSON.stringify(
    {
      about:
        'The truth behind packages/casefile/demo, an invented tree; made by tests/simulated/demo/make.ts',
      sectionId: 's1',
      barkMm: BARK_MM,
      incipientWidthMm: INCIPIENT_MM,
      decayedMm: DECAYED,
      voidMm: VOID,
      drillings: truthOfDrillings,
    },
    null,
    2,
  )}\n`,
);
for (const { id, zones } of truthOfDrillings) {
  console.log(id, zones.map((zone) => `${zone.kind} ${zone.fromMm}-${zone.toMm}`).join(', '));
}
