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
import { outlineRing } from '@standfast/engine';
import { simulateTrace } from '../traces/simulateTrace.ts';
import {
  FIRST_SETTING,
  FLARE_OUT_MM,
  FLARE_START_MM,
  FLARES,
  NEEDLE_MM,
  type Needle,
  round,
  SECTION_NEEDLES,
  stretchesOf,
} from './demoNeedles.ts';
import { BARK_MM, DECAYED, INCIPIENT_MM, RADII, SECTION_HEIGHT_MM, VOID } from './truthOfDemo.ts';

const DEMO = resolve(import.meta.dirname, '../../../packages/casefile/demo');

const outline = { kind: 'radii' as const, radii: RADII };
const ring = outlineRing(outline);

const truthOfDrillings: { id: string; zones: { kind: string; fromMm: number; toMm: number }[] }[] = [];

/** Writes a needle's trace and gives its entry in the case. */
function drill(needle: Needle, seed: number, outMm = 0, startHeightMm = SECTION_HEIGHT_MM) {
  const { trace, truth } = simulateTrace({
    stretches: stretchesOf(needle, ring, outMm, startHeightMm),
    seed,
    ...FIRST_SETTING,
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
  report: {
    letterhead: {
      lines: ['Quillfeather Tree Care (invented)', '12 Beech Lane, Larkmere (invented)'],
    },
  },
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
