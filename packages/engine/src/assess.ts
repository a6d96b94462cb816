/**
 * The whole assessment: what was recorded in, what is concluded out. Everything else in the engine is a part of this.
 */

import { advise, frontSpeeds } from './advice/index.ts';
import type {
  Assessment,
  DrillingAssessment,
  FlareAssessment,
  Notice,
  SectionAssessment,
} from './assessment.ts';
import type { CaseInput, DrillingInput, SectionInput } from './case.ts';
import { changeBetween, forecastCrossings, type WorkedSection, type WorkedVisit } from './change/index.ts';
import { decide, fungusNotices, safety } from './decision/index.ts';
import { InputFault } from './faults.ts';
import { type Random, randomFrom } from './random.ts';
import { type Wood, woodFor } from './reference/index.ts';
import { type AnchorageDraws, anchorageDraws, flareSoundShare } from './roots/index.ts';
import { predictionAgainstTruth } from './section/felled/index.ts';
import { soundnessPosterior } from './section/field/index.ts';
import { beginAnew, plansFor } from './section/first/index.ts';
import {
  type CavityOpening,
  cambiumRing,
  checkOutline,
  DIRECTIONS_DEG,
  needleLine,
  outlineRing,
  ringModulusByDirection,
  strengthLossCriteria,
} from './section/index.ts';
import { nextDrilling } from './section/next/index.ts';
import type { RingMm, SurfaceArc } from './section/types.ts';
import { drawnTrace, readTraces, type TraceReading, type TraceToRead } from './trace/index.ts';
import { ENGINE_VERSION } from './version.ts';
import {
  type DemandDraws,
  demandDraws,
  directionalIntervals,
  interval,
  type WindDemand,
  windAssessment,
  windDemand,
} from './wind/index.ts';

export interface AssessOptions {
  /** Seed of every random stream: same case, same seed, same draws, same bytes out. */
  seed?: number;
  /** Equally likely versions of the tree and its load that are drawn. */
  draws?: number;
  /**
   * Reads the traces; `readTraces` unless given. An editor gives one that remembers, so that a change of the crown
   * does not read eight traces again. It must give what `readTraces` gives.
   */
  read?: (traces: TraceToRead[]) => TraceReading[];
}

export const DEFAULT_SEED = 20260514;
export const DEFAULT_DRAWS = 2000;
/** Fewer draws than this leave the 5 % point to a handful of them. */
const LEAST_DRAWS = 200;
const MOST_DRAWS = 100_000;
/** Columns of a drawn trace: about one a pixel across a phone, two a millimetre on paper. */
const DRAWN_COLUMNS = 400;
/** The usual mark in static assessments (common practice), against which the next drilling is weighed. */
const USUAL_MARK = 1.5;
const MM3_PER_M3 = 1e9;

/**
 * Assess a case.
 *
 * @param input what was recorded, with its traces
 * @throws InputFault when something recorded cannot be assessed, naming the field
 */
export function assess(input: CaseInput, options: AssessOptions = {}): Assessment {
  const seed = wholeNumber(options.seed ?? DEFAULT_SEED, -(2 ** 31), 2 ** 31 - 1, 'seed');
  const draws = wholeNumber(options.draws ?? DEFAULT_DRAWS, LEAST_DRAWS, MOST_DRAWS, 'draws');
  const random = randomFrom(seed);
  const now = workOut(input, random, draws, options.read ?? readTraces);
  const { outlines, readings, wood, sections, flares, nominal, demand, anchorage, verdict } = now;

  const plans = plansFor(input, outlines);
  const next = nextDrilling({
    sections: sections.map((part, i) => ({
      id: part.assessment.id,
      posterior: part.posterior,
      safetyByDraw: verdict.sectionLeastSafety[i]!.leastSafety,
      safetyOfSection: verdict.sectionLeastSafety[i]!.leastSafetyOfSection,
      drilled: input.sections[i]!.drillings,
    })),
    limit: USUAL_MARK,
  });

  const sectionAssessments = sections.map((part, i) => withTruth(input.sections[i]!, part.assessment));
  const nextPlace = beginAnew(next, plans);
  const decided = decide({
    tree: input.tree,
    site: input.site,
    signs: input.signs,
    targets: input.targets,
    decision: input.decision,
    timeFrameYears: input.timeFrameYears,
    safety: verdict,
  });
  const change =
    input.earlier &&
    changeBetween(
      workOut(input.earlier, randomFrom(seed), draws, options.read ?? readTraces),
      now,
      frontSpeeds({
        sections: sectionAssessments,
        signs: input.signs,
        readings: decided.assessment.signs,
      }),
      random.fork('change'),
    );
  const advice = advise(
    {
      input,
      decided,
      safety: verdict,
      demand: nominal,
      sections: sectionAssessments,
      nextDrilling: nextPlace,
      measured: change?.rates,
    },
    random.fork('advice'),
  );

  const assessment: Assessment = {
    format: 'standfast-assessment',
    version: 1,
    engineVersion: ENGINE_VERSION,
    seed,
    draws,
    sections: sectionAssessments,
    flares,
    wind: windAssessment(
      nominal,
      demand,
      input.sections.map((section) => section.id),
    ),
    wood: wood.assessment,
    safety: verdict.assessment,
    decision: decided.assessment,
    advice: advice.assessment,
    nextDrilling: nextPlace,
    ...(plans.length > 0 ? { firstDrillings: plans } : {}),
    ...(change ? { change: forecastCrossings(change, advice.assessment.reinspection.months) } : {}),
    notices: [
      ...wood.notices,
      ...nominal.notices,
      ...input.sections.flatMap((section) => sectionNotices(section)),
      ...drillingNotices(input, readings),
      ...anchorage.notices,
      ...verdict.notices,
      ...fungusNotices(input.signs),
      ...decided.notices,
      ...advice.notices,
      ...(change?.notices ?? []),
    ],
    sources: [],
  };
  assessment.sources = sourcesOf(assessment, wood);
  return assessment;
}

/** A visit worked out up to its safety, with what the rest of the assessment needs. */
interface Worked extends WorkedVisit {
  outlines: RingMm[];
  readings: Map<DrillingInput, TraceReading>;
  wood: Wood;
  flares: FlareAssessment[];
  nominal: WindDemand;
  demand: DemandDraws;
  anchorage: AnchorageDraws;
}

function workOut(
  input: CaseInput,
  random: Random,
  draws: number,
  read: NonNullable<AssessOptions['read']>,
): Worked {
  if (input.sections.length === 0) {
    throw new InputFault(
      'The case has no section. Describe at least one section with its outline.',
      'sections',
    );
  }

  const outlines = input.sections.map((section) => {
    checkOutline(section.outline, `sections.${section.id}.outline`);
    return outlineRing(section.outline);
  });
  const readings = readAll(input, outlines, read);
  const wood = woodFor(input.tree.species);
  const sections = input.sections.map((section, i) =>
    sectionPart(section, outlines[i]!, readings, random.fork(`section ${section.id}`), draws),
  );
  const flares = input.flares.map((flare): FlareAssessment => {
    const drilled = flare.drillings.map((drilling) => readings.get(drilling)!);
    return {
      id: flare.id,
      azimuthDeg: flare.azimuthDeg,
      widthMm: flare.widthMm,
      heightMm: flare.heightMm,
      drillings: flare.drillings.map((drilling) => drillingPart(drilling, readings.get(drilling)!)),
      soundShare: flareSoundShare(drilled),
    };
  });

  const demandInput = {
    tree: input.tree,
    site: input.site,
    sectionHeightsM: input.sections.map((section) => section.heightM),
  };
  const nominal = windDemand(demandInput);
  const demand = demandDraws(demandInput, random.fork('demand'), draws, nominal);
  const anchorage = anchorageDraws(
    {
      tree: input.tree,
      flares,
      signs: input.signs,
      soil: input.site.soil,
      staticTests: input.staticTests,
      rootCuts: input.rootCuts,
      rootSpace: input.rootSpace,
    },
    random.fork('anchorage'),
    draws,
  );
  const verdict = safety(
    {
      sections: sections.map((part) => ({
        id: part.assessment.id,
        remaining: part.posterior.remaining,
        intactModulusMm3: part.intactModulusMm3,
      })),
      demand,
      anchorage,
      wood,
    },
    random.fork('safety'),
  );
  return { input, outlines, readings, wood, sections, flares, nominal, demand, anchorage, verdict };
}

function sectionPart(
  section: SectionInput,
  outline: RingMm,
  readings: Map<DrillingInput, TraceReading>,
  random: Random,
  draws: number,
): WorkedSection {
  const cambium = cambiumRing(outline, section.barkMm);
  const opening = section.opening && cavityOpening(section.id, section.opening, outline);
  const surface = surfaceOf(section, opening);
  const posterior = soundnessPosterior(
    {
      outline,
      barkMm: section.barkMm,
      drillings: section.drillings.map((drilling) => ({
        id: drilling.id,
        pose: drilling,
        reading: readings.get(drilling)!,
      })),
      surface,
    },
    random,
    draws,
  );
  const intactModulusMm3 = ringModulusByDirection(cambium);
  const byDirectionM3 = [...intactModulusMm3].map((mm3) => mm3 / MM3_PER_M3);
  const drillings = section.drillings.map((drilling) => drillingPart(drilling, readings.get(drilling)!));
  return {
    posterior,
    intactModulusMm3,
    assessment: {
      id: section.id,
      heightM: section.heightM,
      outlineMm: asPairs(outline),
      cambiumMm: asPairs(cambium),
      drillings,
      intactModulusM3: Math.min(...byDirectionM3),
      intactModulusByDirectionM3: byDirectionM3.map((value, i) => ({
        directionDeg: DIRECTIONS_DEG[i]!,
        value,
      })),
      remaining: directionalIntervals(posterior.remaining, draws),
      criteria: strengthLossCriteria({
        outline,
        barkMm: section.barkMm,
        walls: drillings.map((drilling) => ({ ...drilling, atLeast: drilling.residualWallAtLeast })),
        opening,
      }),
      soundness: posterior.picture,
      ...(surface.length > 0 ? { surface } : {}),
      soundShare: interval(Float64Array.from(posterior.soundShare)),
    },
  };
}

/** A cavity's opening as a share of the stem's circumference over bark. */
function cavityOpening(
  sectionId: string,
  { azimuthDeg, widthMm }: NonNullable<SectionInput['opening']>,
  outline: RingMm,
): Required<CavityOpening> {
  const roundMm = outline.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = outline[(i + 1) % outline.length]!;
    return sum + Math.hypot(nextX - x, nextY - y);
  }, 0);
  if (!(widthMm > 0 && widthMm <= roundMm) || !Number.isFinite(azimuthDeg)) {
    throw new InputFault(
      `An opening ${widthMm} mm wide cannot be on a stem ${Math.round(roundMm)} mm round; give its azimuth and its width along the bark.`,
      `sections.${sectionId}.opening`,
    );
  }
  return { share: widthMm / roundMm, azimuthDeg };
}

/** The surface as looked at, and the opening if one was recorded: it was seen too. */
function surfaceOf(
  { surface = [] }: SectionInput,
  opening: Required<CavityOpening> | undefined,
): SurfaceArc[] {
  if (!opening) return surface;
  const { azimuthDeg, share } = opening;
  const end = (offDeg: number) => (((azimuthDeg + offDeg) % 360) + 360) % 360;
  return [...surface, { fromDeg: end(-180 * share), toDeg: end(180 * share), state: 'open' }];
}

/** The section's part with the prediction held against the felled section, where there is one. */
function withTruth(section: SectionInput, predicted: SectionAssessment): SectionAssessment {
  const { felled } = section;
  if (!felled) return predicted;
  return {
    ...predicted,
    felled: predictionAgainstTruth({ ...section, felled }, predicted, `sections.${section.id}`),
  };
}

/** Read all traces together, so that they share the level that this tree's sound wood has. */
function readAll(
  input: CaseInput,
  outlines: RingMm[],
  readTogether: NonNullable<AssessOptions['read']>,
): Map<DrillingInput, TraceReading> {
  const inSections = input.sections.flatMap((section, i) =>
    section.drillings.map((drilling) => ({
      drilling,
      barkMm: section.barkMm,
      exitMm: needleLine(outlines[i]!, drilling).exitDepthMm,
    })),
  );
  const inFlares = input.flares.flatMap((flare) => flare.drillings.map((drilling) => ({ drilling })));
  const placed = [...inSections, ...inFlares];
  const read = readTogether(
    placed.map(({ drilling, ...known }) => ({
      id: drilling.id,
      trace: drilling.trace,
      ...known,
    })),
  );
  return new Map(placed.map(({ drilling }, i) => [drilling, read[i]!]));
}

function drillingPart(drilling: DrillingInput, reading: TraceReading): DrillingAssessment {
  return {
    id: drilling.id,
    azimuthDeg: drilling.azimuthDeg,
    offRadialDeg: drilling.offRadialDeg,
    downDeg: drilling.downDeg,
    zones: reading.zones,
    residualWallMm: reading.residualWallMm,
    residualWallIntervalMm: reading.residualWallInterval,
    residualWallAtLeast: reading.residualWallAtLeast,
    barkFromMm: reading.barkFromMm,
    woodFromMm: reading.woodFromMm,
    reference: reading.reference,
    drawn: drawnTrace(drilling.trace, reading, DRAWN_COLUMNS),
    warnings: reading.warnings,
  };
}

/** Drillings around a section below which the trade would not speak of its whole strength. */
const FEW_DRILLINGS = 3;

function sectionNotices(section: SectionInput): Notice[] {
  return [...openingNotices(section), ...countNotices(section), ...surfaceNotices(section)];
}

/** What the strength by direction knows of an opening: where it is, and what the needles beside it met. */
function openingNotices(section: SectionInput): Notice[] {
  if (!section.opening) return [];
  return [
    {
      severity: 'caution',
      where: `sections.${section.id}.opening`,
      text: 'An open cavity was recorded. The strength by direction takes it as wood without strength there, as deep as the needles beside it and what is usual say; drill close on both sides of the opening, and compare with the loss of section modulus as drilled.',
    },
  ];
}

/** A surface nobody noted leaves openings to what is usual. */
function surfaceNotices({ id, drillings, surface = [] }: SectionInput): Notice[] {
  if (surface.length > 0 || drillings.length === 0) return [];
  return [
    {
      severity: 'note',
      where: `sections.${id}.surface`,
      text: 'It was not noted what the surface is all round. An opening or decay from the side that no needle met is then allowed for by what is usual only: note where bark and wood are sound, decayed or open.',
    },
  ];
}

function countNotices(section: SectionInput): Notice[] {
  const count = section.drillings.length;
  const where = `sections.${section.id}.drillings`;
  if (count === 0) {
    return [
      {
        severity: 'serious',
        where,
        text: 'No drilling was made at this section: its strength rests on what such stems are like in general, not on this tree.',
      },
    ];
  }
  if (count < FEW_DRILLINGS) {
    return [
      {
        severity: 'caution',
        where,
        text: `Only ${count === 1 ? 'one drilling was' : `${count} drillings were`} made at this section: most of it was not seen, and the interval of its strength is wide.`,
      },
    ];
  }
  return [];
}

function drillingNotices(input: CaseInput, readings: Map<DrillingInput, TraceReading>): Notice[] {
  const places = [
    ...input.sections.map((section) => ({ path: `sections.${section.id}`, drillings: section.drillings })),
    ...input.flares.map((flare) => ({ path: `flares.${flare.id}`, drillings: flare.drillings })),
  ];
  return places.flatMap(({ path, drillings }) =>
    drillings.flatMap((drilling) =>
      readings
        .get(drilling)!
        .warnings.map(
          (text): Notice => ({ severity: 'note', where: `${path}.drillings.${drilling.id}`, text }),
        ),
    ),
  );
}

/** A published source names its year, its standard or the trade's practice; "judgement" and "given" are none. */
const NAMES_A_SOURCE = /\b(18|19|20)\d\d\b|\bEN \d|\bASCE \d|practice/;

/** Every published source named by a value or a criterion, once, in the order met. */
function sourcesOf(assessment: Assessment, wood: Wood): string[] {
  const named = [
    ...assessment.sections.flatMap((section) => section.criteria.map((criterion) => criterion.source)),
    ...wood.assessment.values.map((value) => value.source),
    ...assessment.wind.values.map((value) => value.source),
    ...assessment.safety.values.map((value) => value.source),
    ...assessment.decision.values.map((value) => value.source),
    ...assessment.decision.signs.map((reading) => reading.source),
    ...assessment.advice.options.map((option) => option.source),
    ...assessment.advice.reinspection.values.map((value) => value.source),
    ...(assessment.firstDrillings ?? []).flatMap((plan) => plan.rules.map((rule) => rule.source)),
    ...(assessment.change?.values ?? []).map((value) => value.source),
  ];
  return [...new Set(named.filter((source) => NAMES_A_SOURCE.test(source)))];
}

function asPairs(ring: RingMm): [number, number][] {
  return ring.map(([xMm, yMm]) => [xMm, yMm]);
}

function wholeNumber(value: number, least: number, most: number, name: string): number {
  if (!Number.isInteger(value) || value < least || value > most) {
    throw new InputFault(`${value} is not a whole number from ${least} to ${most}.`, name);
  }
  return value;
}
