/**
 * Makes the second visit of the demonstration case, invented like the first, four years on:
 *
 *   npx tsx tests/simulated/demo/second/make.ts
 *
 * writes packages/casefile/demo-second-visit/ (case.json and traces, without the first visit, which is put beside it when
 * it is opened) and tests/simulated/demo/second/truth.json. The same wood is drilled again a finger's breadth aside with
 * another drill setting; decay has spread on the south-west and stood elsewhere; the tree has grown. The files are
 * committed; run it again only to change the scenario.
 */
import { mkdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { join, resolve } from 'node:path';
import { type CaseFile, caseText, nextVisit, parseCase, writeTraceTable } from '@standfast/casefile';
import { needleLine, outlineRing } from '@standfast/engine';
import { simulateTrace } from '../../traces/simulateTrace.ts';
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
} from '../demoNeedles.ts';
import { BARK_MM, RADII, SECTION_HEIGHT_MM } from '../truthOfDemo.ts';

const PACKAGE = resolve(import.meta.dirname, '../../../../packages/casefile');
const SECOND = join(PACKAGE, 'demo-second-visit');
const VISITED_ON = '2030-06-20';
const BARK_NOW_MM = 19;

/** Radial growth since the first visit by azimuth, mm: less above the decay. */
const growthAt = (azimuthDeg: number) => 9 - 4 * bump(azimuthDeg, 226, 40);
/** Spread of decay since, mm: through the barrier on the south-west, hardly anything elsewhere. */
const spreadAt = (azimuthDeg: number) => 26 * bump(azimuthDeg, 224, 11);

function bump(azimuthDeg: number, at: number, width: number): number {
  const off = Math.abs(((azimuthDeg - at + 540) % 360) - 180);
  return Math.exp(-0.5 * (off / width) ** 2);
}

const radii = RADII.map(({ azimuthDeg, radiusMm }) => ({
  azimuthDeg,
  radiusMm: Math.round(radiusMm + growthAt(azimuthDeg) + (BARK_NOW_MM - BARK_MM)),
}));
const ringThen = outlineRing({ kind: 'radii', radii: RADII });
const ringNow = outlineRing({ kind: 'radii', radii });

const NOT_REPEATED = 'd3';
/** How far aside the second hole is, degrees round the stem; not recorded, as in the field. */
const ASIDE_DEG = [1.6, -1.2, 0, 0.3, -0.9, 0.3, -1.5, 1.2, -1.8, 1.0, -1.3];

const truth: {
  id: string;
  growthMm: number;
  spreadMm: number;
  zones: { kind: string; fromMm: number; toMm: number }[];
}[] = [];

rmSync(SECOND, { recursive: true, force: true });
mkdirSync(join(SECOND, 'traces'), { recursive: true });

function drillAgain(
  needle: Needle,
  seed: number,
  asideDeg: number,
  outMm = 0,
  startHeightMm = SECTION_HEIGHT_MM,
): string {
  const before = simulateTrace({
    ...FIRST_SETTING,
    stretches: stretchesOf(needle, ringThen, outMm, startHeightMm),
    seed,
  });
  const aside = { ...needle, azimuthDeg: needle.azimuthDeg + asideDeg };
  const level = needleLine(ringNow, {
    azimuthDeg: needle.azimuthDeg,
    offRadialDeg: needle.offRadialDeg ?? 0,
    downDeg: needle.downDeg ?? 0,
  }).horizontalPerDepth;
  const grown = growthAt(needle.azimuthDeg) / level;
  // The rings laid on since, of the same make.
  const fresh = simulateTrace({
    ...FIRST_SETTING,
    stretches: [{ kind: 'sound', lengthMm: 60 }],
    seed: seed + 5000,
  });
  const { trace, truth: zones } = simulateTrace({
    rings: 'none',
    stretches: stretchesOf(aside, ringNow, outMm, startHeightMm, BARK_NOW_MM, spreadAt),
    woodTexture: (depth) => {
      const old = depth - BARK_NOW_MM - grown;
      return old < 0 ? fresh.woodTexture(-old) : before.woodTexture(BARK_MM + old);
    },
    soundLevelPct: 47,
    frictionPctPerMm: 0.024,
    frictionOnsetPct: 2,
    zeroPct: 1.4,
    noiseSdPct: 1.1,
    trendShare: -0.06,
    spacingMm: 0.1,
    seed: seed + 900,
  });
  const path = `traces/${needle.id}.csv`;
  writeFileSync(
    join(SECOND, path),
    writeTraceTable({ depthMm: round(trace.depthMm, 1), resistancePct: round(trace.resistancePct, 2) }, [
      'invented: simulated for the demonstration of Standfast, no real tree was drilled',
      `drilling ${needle.id}, second visit, needle of ${NEEDLE_MM} mm, resistance in percent of full scale`,
    ]),
  );
  truth.push({
    id: needle.id,
    growthMm: Number(grown.toFixed(1)),
    spreadMm: Number((spreadAt(needle.azimuthDeg) / level).toFixed(1)),
    zones: zones.map(({ kind, fromMm, toMm }) => ({
      kind,
      fromMm: Number(fromMm.toFixed(1)),
      toMm: Number(toMm.toFixed(1)),
    })),
  });
  return path;
}

const { caseFile: first } = parseCase(
  JSON.parse(readFileSync(join(PACKAGE, 'demo/case.json'), 'utf8')) as unknown,
);
const { caseFile: next } = nextVisit(first, new Map(), VISITED_ON);

const sectionTraces = new Map(
  SECTION_NEEDLES.map((needle, i): [string, string] => [
    needle.id,
    needle.id === NOT_REPEATED ? '' : drillAgain(needle, 7100 + i, ASIDE_DEG[i]!),
  ]),
);
const flareTraces = new Map(
  FLARES.map(({ needle }, i): [string, string] => [
    needle.id,
    drillAgain(needle, 7200 + i, ASIDE_DEG[SECTION_NEEDLES.length + i]!, FLARE_OUT_MM, FLARE_START_MM),
  ]),
);
const added: Needle = { id: 'd12', azimuthDeg: 249, note: 'New: between the seam and d6.' };
const addedTrace = drillAgain(added, 7150, 0);

const document: CaseFile = {
  ...next,
  title: 'Demonstration (invented), second visit: sugar maple LG-7, Larkmere Green',
  purpose:
    'Invented scenario. Return visit after four years: has the decay moved, and how long can the maple be kept?',
  weather: 'overcast, calm',
  tree: {
    ...next.tree,
    stemDiameterMm: 896,
    heightM: 21.8,
    crown: { ...next.tree.crown, widthM: 15.4 },
  },
  sections: next.sections.map((section) => ({
    ...section,
    barkMm: BARK_NOW_MM,
    outline: { kind: 'radii', radii },
    drillings: [
      ...section.drillings.flatMap((drilling) => {
        const trace = sectionTraces.get(drilling.id);
        return trace ? [{ ...drilling, trace }] : [];
      }),
      { ...added, trace: addedTrace },
    ],
    note: 'Taped anew from the same middle. d3 was not repeated: ivy has grown over it.',
  })),
  flares: next.flares.map((flare) => ({
    ...flare,
    drillings: flare.drillings.map((drilling) => ({ ...drilling, trace: flareTraces.get(drilling.id)! })),
  })),
  signs: [
    ...next.signs.filter(({ kind }) => kind !== 'dead limb'),
    {
      kind: 'thin crown',
      where: 'upper crown, south-west',
      note: 'Leaves small and sparse on two leaders.',
      azimuthDeg: 215,
    },
  ],
  notes:
    'Everything in this case is invented, and its traces are simulated. It shows how a return visit looks: decay that moved on one side, and none within error on the others.',
};

writeFileSync(join(SECOND, 'case.json'), caseText(parseCase(document).caseFile));
writeFileSync(
  resolve(import.meta.dirname, 'truth.json'),
  `${JSON.stringify(
    {
      about:
        'The truth behind packages/casefile/demo-second-visit, an invented tree; made by tests/simulated/demo/second/make.ts',
      years: 4,
      drillings: truth,
    },
    null,
    2,
  )}\n`,
);
for (const { id, growthMm, spreadMm, zones } of truth) {
  console.log(
    id,
    `grown ${growthMm}, spread ${spreadMm}:`,
    zones.map((z) => `${z.kind} ${z.fromMm}-${z.toMm}`).join(', '),
  );
}
