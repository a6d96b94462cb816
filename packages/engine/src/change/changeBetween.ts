/**
 * Everything that two visits say together. Both are worked out from the same seed, so what is common to them (strength of
 * the wood, drag of the crown, wind, wood that no needle saw) is the same in each draw, and differences are taken draw by
 * draw.
 */
import type { DrillingAssessment, Notice } from '../assessment.ts';
import type { DrillingInput, FlareInput, SectionInput } from '../case.ts';
import { compare, type Meeting } from '../decision/compare.ts';
import { InputFault } from '../faults.ts';
import type { Random } from '../random.ts';
import { constant, sourced } from '../reference/index.ts';
import { DIRECTIONS_DEG } from '../section/index.ts';
import type { SoundnessPicture } from '../section/types.ts';
import type { Interval } from '../trace/types.ts';
import { directionalIntervals, interval } from '../wind/interval.ts';
import { compareDrilling, type DrillingComparison, type FrontMeasure } from './compareDrilling.ts';
import {
  agedCapacity,
  crossingOf,
  fanOf,
  forecastYears,
  futureSafety,
  meanRadiusMm,
  type SectionToAge,
} from './forecast.ts';
import { apartDeg, matchDrillings } from './matchDrillings.ts';
import { rateDraws, type SpeedPrior } from './rates.ts';
import { recordedChanges } from './recorded.ts';
import { forecastBasis, sentenceOf, summaryOf } from './sentences.ts';
import type {
  ChangeAssessment,
  Crossing,
  DrillingChange,
  ModeSafetyChange,
  RecordedChange,
  SafetyChange,
  SectionChange,
  UnmatchedDrilling,
} from './types.ts';
import type { WorkedSection, WorkedVisit } from './visit.ts';
import { yearsBetween } from './yearsBetween.ts';

const DIRECTIONS = DIRECTIONS_DEG.length;
/** Sections of two visits are one when their heights are this near, m; flares when their azimuths are, degrees. */
const SAME_HEIGHT_M = 0.25;
const SAME_FLARE_DEG = 20;
const MM_PER_CM = 10;

/** Speed of a front and growth at a drilling, for the re-inspection: cm a year, 5, 50 and 95 % points. */
export interface MeasuredRate {
  sectionId: string;
  drillingId: string;
  decay: Interval;
  growth: Interval;
}

export interface Change {
  /** Without crossings and the next visit, which wait for the advice: see `forecastCrossings`. */
  assessment: ChangeAssessment;
  rates: MeasuredRate[];
  /** Chance of being below each mark, by year of the forecast. */
  curves: { limit: number; years: number[]; below: number[] }[];
  notices: Notice[];
}

/**
 * @param speeds what is believed of the fronts' speed before the measurement, mm a year (decay-rates.csv)
 * @throws InputFault when the earlier visit is not before the later one
 */
export function changeBetween(
  then: WorkedVisit,
  now: WorkedVisit,
  speeds: SpeedPrior,
  random: Random,
): Change {
  const years = yearsBetween(then.input.visitedOn, now.input.visitedOn);
  if (years !== null && years <= 0) {
    throw new InputFault(
      `The earlier visit is of ${then.input.visitedOn}, which is not before this one of ${now.input.visitedOn}. Correct one of the dates, or name another earlier visit.`,
      'visitedOn',
    );
  }
  const draws = now.verdict.drawn.draws;
  const compared: Compared[] = [];
  const unmatched: UnmatchedDrilling[] = [];
  const sectionPairs = pairSections(then.input.sections, now.input.sections);
  const flarePairs = pairFlares(then.input.flares, now.input.flares);
  const places = [
    ...sectionPairs.map(([i, j]) => placeOf(then, now, 'sections', i, j)),
    ...flarePairs.map(([i, j]) => placeOf(then, now, 'flares', i, j)),
  ];
  for (const place of places) comparePlace(place, then, now, years, random, draws, compared, unmatched);
  unmatched.push(...leftOut(then, now, sectionPairs, flarePairs));

  const recorded = recordedChanges(
    then.input,
    now.input,
    sectionPairs.map(([i, j]) => [then.input.sections[i]!, now.input.sections[j]!]),
  );
  const ageable =
    years === null ? [] : sectionsToAge(now, sectionPairs, compared, years, speeds, random, draws);
  const rates = ageable.flatMap(({ section, own }) =>
    own.flatMap(({ change, comparison, rate }) => {
      change.rateMmYear = interval(rate.slice());
      return comparison.measure.kind === 'nothing'
        ? []
        : [
            {
              sectionId: section.id,
              drillingId: change.laterId,
              decay: inCm(change.rateMmYear),
              growth: inCm(interval(comparison.growthDraws.map((g) => g / years!))),
            },
          ];
    }),
  );
  for (const { change } of compared) change.text = sentenceOf(change, years);

  const limits = [constant('usual mark').value, 1];
  const fanYears = forecastYears(constant('forecast years').value);
  const fan =
    ageable.length === 0
      ? null
      : fanOf(
          futureSafety(
            ageable.map(({ section }) => section),
            fanYears,
          ),
          fanYears,
          limits,
        );
  const paired = sectionPairs.map(
    ([earlier, later]): PairedSection => ({
      earlier,
      later,
      ratio: capacityRatio(
        then.sections[earlier]!,
        now.sections[later]!,
        ageable.find(({ section }) => section.id === now.input.sections[later]!.id)?.section,
        years,
      ),
    }),
  );
  const assessment: ChangeAssessment = {
    earlierOn: then.input.visitedOn ?? null,
    laterOn: now.input.visitedOn ?? null,
    years,
    tellingMm: constant('telling front').value,
    drillings: compared.map(({ change }) => change),
    unmatched,
    sections: paired.map(({ earlier, later, ratio }) =>
      sectionChange(then.sections[earlier]!, now.sections[later]!, ratio, draws),
    ),
    sectionsThen: then.sections.map((section) => section.assessment),
    safety: safetyChanges(then, now, paired, recorded),
    forecast: fan && {
      years: fanYears.at(-1)!,
      safety: fan.safety,
      crossings: [],
      nextVisitMonths: 0,
      rates: ageable.map(({ section, own }) => ({
        sectionId: section.id,
        frontMmYear: interval(section.rates.elsewhere.slice()),
        growthMmYear: interval(section.growthMmYear.slice()),
        measured: own.filter(({ comparison }) => comparison.measure.kind !== 'nothing').length,
      })),
      basis: forecastBasis(now.verdict.assessment.governing.mode),
    },
    recorded,
    summary: [],
    values: [
      sourced('reentry offset'),
      sourced('front slope'),
      sourced('needle stretch'),
      sourced('ring drift'),
      sourced('unmatched traces'),
      sourced('stem growth'),
      sourced('standing fronts'),
      sourced('rate scatter'),
    ],
  };
  return {
    assessment,
    rates,
    curves: fan ? limits.map((limit, l) => ({ limit, years: fanYears, below: fan.below[l]! })) : [],
    notices: changeNotices(assessment),
  };
}

/** Fills in when the marks are crossed, once the next inspection is known, and says what changed. */
export function forecastCrossings({ assessment, curves }: Change, nextVisitMonths: number): ChangeAssessment {
  const { forecast } = assessment;
  const crossings = curves.map(
    ({ limit, years, below }): Crossing => crossingOf(limit, years, below, nextVisitMonths / 12),
  );
  const filled: ChangeAssessment = {
    ...assessment,
    forecast: forecast && { ...forecast, crossings, nextVisitMonths },
  };
  return { ...filled, summary: summaryOf(filled) };
}

interface Compared {
  change: DrillingChange;
  comparison: DrillingComparison;
  sectionIndex: number | null;
  azimuthDeg: number;
}

interface Place {
  kind: 'sections' | 'flares';
  id: string;
  later: number;
  earlierDrillings: readonly DrillingInput[];
  laterDrillings: readonly DrillingInput[];
  earlierRead: readonly DrillingAssessment[];
  laterRead: readonly DrillingAssessment[];
  radiusMm: number;
}

function placeOf(
  then: WorkedVisit,
  now: WorkedVisit,
  kind: 'sections' | 'flares',
  i: number,
  j: number,
): Place {
  const earlier = then.input[kind][i]!;
  const later = now.input[kind][j]!;
  const read = (visit: WorkedVisit, at: number) =>
    kind === 'sections' ? visit.sections[at]!.assessment.drillings : visit.flares[at]!.drillings;
  return {
    kind,
    id: later.id,
    later: j,
    earlierDrillings: earlier.drillings,
    laterDrillings: later.drillings,
    earlierRead: read(then, i),
    laterRead: read(now, j),
    radiusMm:
      kind === 'sections'
        ? meanRadiusMm(now.sections[j]!.assessment.outlineMm)
        : now.input.tree.stemDiameterMm / 2,
  };
}

function comparePlace(
  place: Place,
  then: WorkedVisit,
  now: WorkedVisit,
  years: number | null,
  random: Random,
  draws: number,
  compared: Compared[],
  unmatched: UnmatchedDrilling[],
): void {
  const { pairs, onlyEarlier, onlyLater } = matchDrillings(place.earlierDrillings, place.laterDrillings);
  const path = `${place.kind}.${place.id}`;
  for (const [i, j] of pairs) {
    const a = place.earlierDrillings[i]!;
    const b = place.laterDrillings[j]!;
    const comparison = compareDrilling(
      { trace: a.trace, reading: then.readings.get(a)! },
      { trace: b.trace, reading: now.readings.get(b)! },
      {
        years,
        recordedOffsetMm: (apartDeg(a.azimuthDeg, b.azimuthDeg) / 360) * 2 * Math.PI * place.radiusMm,
      },
      random.fork(`drilling ${path} ${b.id}`),
      draws,
    );
    const earlier = place.earlierRead[i]!;
    const later = place.laterRead[j]!;
    compared.push({
      comparison,
      sectionIndex: place.kind === 'sections' ? place.later : null,
      azimuthDeg: b.azimuthDeg,
      change: {
        place: path,
        placeId: place.id,
        inSection: place.kind === 'sections',
        earlierId: a.id,
        laterId: b.id,
        earlier,
        later,
        alignment: comparison.alignment,
        growthMm: comparison.growthMm,
        front: comparison.front,
        frontMm: comparison.frontMm,
        frontAtLeastMm: comparison.frontAtLeastMm,
        verdict: comparison.verdict,
        chance: comparison.chance,
        wallThenMm: earlier.residualWallIntervalMm,
        wallNowMm: later.residualWallIntervalMm,
        wallDifferenceMm: comparison.wallDifferenceMm,
        rateMmYear: null,
        text: '',
      },
    });
  }
  const left = (visit: 'earlier' | 'later', id: string): UnmatchedDrilling => ({
    visit,
    place: path,
    id,
    text:
      visit === 'earlier'
        ? `Drilling ${id} of the earlier visit was not repeated.`
        : `Drilling ${id} repeats none of the earlier visit.`,
  });
  unmatched.push(
    ...onlyEarlier.map((i) => left('earlier', place.earlierDrillings[i]!.id)),
    ...onlyLater.map((j) => left('later', place.laterDrillings[j]!.id)),
  );
}

/** Drillings of sections and flares that the other visit does not have. */
function leftOut(
  then: WorkedVisit,
  now: WorkedVisit,
  sectionPairs: readonly [number, number][],
  flarePairs: readonly [number, number][],
): UnmatchedDrilling[] {
  const of = (
    visit: 'earlier' | 'later',
    kind: 'sections' | 'flares',
    list: readonly (SectionInput | FlareInput)[],
    paired: ReadonlySet<number>,
  ) =>
    list.flatMap((place, i) =>
      paired.has(i)
        ? []
        : place.drillings.map(
            ({ id }): UnmatchedDrilling => ({
              visit,
              place: `${kind}.${place.id}`,
              id,
              text: `Drilling ${id} is at ${place.id}, which was not drilled on the ${visit === 'earlier' ? 'later' : 'earlier'} visit.`,
            }),
          ),
    );
  const firsts = (pairs: readonly [number, number][]) => new Set(pairs.map(([i]) => i));
  const seconds = (pairs: readonly [number, number][]) => new Set(pairs.map(([, j]) => j));
  return [
    ...of('earlier', 'sections', then.input.sections, firsts(sectionPairs)),
    ...of('earlier', 'flares', then.input.flares, firsts(flarePairs)),
    ...of('later', 'sections', now.input.sections, seconds(sectionPairs)),
    ...of('later', 'flares', now.input.flares, seconds(flarePairs)),
  ];
}

/** Pairs in order of nearness, each once. */
function nearest<T extends { id: string }>(
  then: readonly T[],
  now: readonly T[],
  apart: (a: T, b: T) => number,
  most: number,
): [number, number][] {
  const candidates = then
    .flatMap((a, i) => now.map((b, j) => ({ i, j, far: apart(a, b), sameId: a.id === b.id ? 0 : 1 })))
    .filter(({ far }) => far <= most)
    .sort((p, q) => p.far - q.far || p.sameId - q.sameId || p.i - q.i || p.j - q.j);
  const pairs: [number, number][] = [];
  for (const { i, j } of candidates) {
    if (pairs.some(([a, b]) => a === i || b === j)) continue;
    pairs.push([i, j]);
  }
  return pairs.sort((p, q) => p[1] - q[1]);
}

const pairSections = (then: readonly SectionInput[], now: readonly SectionInput[]) =>
  nearest(then, now, (a, b) => Math.abs(a.heightM - b.heightM), SAME_HEIGHT_M);
const pairFlares = (then: readonly FlareInput[], now: readonly FlareInput[]) =>
  nearest(then, now, (a, b) => apartDeg(a.azimuthDeg, b.azimuthDeg), SAME_FLARE_DEG);

/** Capacity now over capacity then, `draws` rows of 36, of one section: what all differences are taken from. */
type CapacityRatio = Float64Array;

/**
 * Where speeds are known, the earlier section's draws aged over the years between: what was not drilled again is then the
 * same wood in both, and only what the repeats measured differs. Without dates the two assessments, draw by draw.
 */
function capacityRatio(
  then: WorkedSection,
  now: WorkedSection,
  ageable: SectionToAge | undefined,
  years: number | null,
): CapacityRatio {
  if (ageable && years !== null) return agedCapacity(then.posterior, ageable, [years])[0]!;
  return then.posterior.remaining.map((a, i) => {
    const d = i % DIRECTIONS;
    const b = now.posterior.remaining[i]!;
    return a > 0 ? (b * now.intactModulusMm3[d]!) / (a * then.intactModulusMm3[d]!) : 1;
  });
}

function sectionChange(
  then: WorkedSection,
  now: WorkedSection,
  ratio: CapacityRatio,
  draws: number,
): SectionChange {
  // Of the strength all sound, growth has its part: it is taken out to tell what decay has.
  const intact = now.intactModulusMm3.map((mm3, d) => mm3 / then.intactModulusMm3[d]!);
  const difference = ratio.map((r, i) => {
    const a = then.posterior.remaining[i]!;
    return Math.min(1, (a * r) / intact[i % DIRECTIONS]!) - a;
  });
  return {
    earlierId: then.assessment.id,
    laterId: now.assessment.id,
    remainingDifference: directionalIntervals(difference, draws),
    capacityRatio: directionalIntervals(ratio, draws),
    soundnessDifference: pictureDifference(then.posterior.picture, now.posterior.picture),
    meanRadiusThenMm: meanRadiusMm(then.assessment.outlineMm),
    meanRadiusNowMm: meanRadiusMm(now.assessment.outlineMm),
  };
}

/** Mean soundness now less then at the nodes of the later picture, both taken from the outlines' common origin. */
function pictureDifference(then: SoundnessPicture, now: SoundnessPicture): (number | null)[] {
  const shells = now.shells.length;
  return now.mean.map((value, at) => {
    const ray = Math.floor(at / shells);
    const azimuth = (now.azimuthsDeg[ray]! * Math.PI) / 180;
    const radius = now.shells[at % shells]! * now.cambiumMm[ray]!;
    const before = soundnessAt(
      then,
      now.centreMm[0] + radius * Math.sin(azimuth),
      now.centreMm[1] + radius * Math.cos(azimuth),
    );
    return before === null ? null : value - before;
  });
}

/** Mean soundness of a picture at a point, between its nodes; null outside its wood. */
function soundnessAt(picture: SoundnessPicture, x: number, y: number): number | null {
  const { centreMm, azimuthsDeg, shells, cambiumMm, mean } = picture;
  const dx = x - centreMm[0];
  const dy = y - centreMm[1];
  const turn = ((Math.atan2(dx, dy) / (2 * Math.PI) + 1) % 1) * azimuthsDeg.length;
  const k = Math.floor(turn) % azimuthsDeg.length;
  const next = (k + 1) % azimuthsDeg.length;
  const f = turn - Math.floor(turn);
  const rho = Math.hypot(dx, dy) / (cambiumMm[k]! * (1 - f) + cambiumMm[next]! * f);
  if (rho > 1) return null;
  const place = rho * (shells.length - 1);
  const i = Math.min(shells.length - 2, Math.floor(place));
  const g = place - i;
  const along = (ray: number) =>
    mean[ray * shells.length + i]! * (1 - g) + mean[ray * shells.length + i + 1]! * g;
  return along(k) * (1 - f) + along(next) * f;
}

/** Least safety over places, by draw and direction. */
function leastOver(places: readonly Meeting[]): Float64Array {
  const rows = places.map((place) => compare(place).safety);
  const least = rows[0]!;
  for (const other of rows.slice(1))
    for (let i = 0; i < least.length; i++) if (other[i]! < least[i]!) least[i] = other[i]!;
  return least;
}

/**
 * One mode: each visit's own safety, and the difference of the coupled draws.
 *
 * @param alike the later safety as it follows from the earlier draws, by draw and direction
 */
function modeChange(
  then: Float64Array,
  now: Float64Array,
  alike: Float64Array,
  draws: number,
): ModeSafetyChange {
  const worst = directionalIntervals(now, draws).reduce((a, b) => (b.p05 < a.p05 ? b : a));
  const d = DIRECTIONS_DEG.indexOf(worst.directionDeg);
  const column = (values: Float64Array) =>
    Float64Array.from({ length: draws }, (_, i) => values[i * DIRECTIONS + d]!);
  const before = column(then);
  const difference = column(alike).map((value, i) => value - before[i]!);
  return {
    directionDeg: worst.directionDeg,
    chanceLower: difference.filter((value) => value < 0).length / draws,
    before: interval(before),
    now: interval(column(now)),
    difference: interval(difference),
  };
}

/** A section of both visits with the ratio of its capacities. */
interface PairedSection {
  earlier: number;
  later: number;
  ratio: CapacityRatio;
}

function safetyChanges(
  then: WorkedVisit,
  now: WorkedVisit,
  pairs: readonly PairedSection[],
  recorded: readonly RecordedChange[],
): SafetyChange {
  const { draws } = now.verdict.drawn;
  const stemThen = leastOver(then.verdict.drawn.breakage.places);
  const stemNow = leastOver(now.verdict.drawn.breakage.places);
  const rootsThen = leastOver(then.verdict.drawn.uprooting.places);
  const rootsNow = leastOver(now.verdict.drawn.uprooting.places);
  const less = (a: Float64Array, b: Float64Array) =>
    directionalIntervals(
      b.map((value, i) => value - a[i]!),
      draws,
    );
  const loadChanged = recorded.some(
    ({ where }) =>
      where.startsWith('site.') || (where.startsWith('tree.') && where !== 'tree.stemDiameterMm'),
  );
  const places = pairs.map(({ earlier, later, ratio }) => {
    const before = then.verdict.drawn.breakage.places[earlier]!;
    const capacityNm = before.capacityNm.map((value, i) => value * ratio[i]!);
    return {
      before,
      withNewLoad: { ...now.verdict.drawn.breakage.places[later]!, capacityNm },
      withOldLoad: { ...before, capacityNm },
    };
  });
  const paired = places.length > 0;
  const pairedThen = paired ? leastOver(places.map(({ before }) => before)) : stemThen;
  const held = paired ? leastOver(places.map(({ withOldLoad }) => withOldLoad)) : stemNow;
  const alike = paired ? leastOver(places.map(({ withNewLoad }) => withNewLoad)) : stemNow;
  return {
    before: then.verdict.assessment,
    breakage: {
      ...modeChange(pairedThen, stemNow, alike, draws),
      before: inDirectionOf(stemThen, stemNow, draws),
    },
    uprooting: modeChange(rootsThen, rootsNow, rootsNow, draws),
    breakageDifference: less(pairedThen, alike),
    uprootingDifference: less(rootsThen, rootsNow),
    breakageWithLoadHeld: loadChanged && paired ? modeChange(pairedThen, held, held, draws) : null,
  };
}

/** One visit's safety in the direction that is worst in another's. */
function inDirectionOf(values: Float64Array, worstOf: Float64Array, draws: number): Interval {
  const worst = directionalIntervals(worstOf, draws).reduce((a, b) => (b.p05 < a.p05 ? b : a));
  const d = DIRECTIONS_DEG.indexOf(worst.directionDeg);
  return interval(Float64Array.from({ length: draws }, (_, i) => values[i * DIRECTIONS + d]!));
}

interface Ageable {
  section: SectionToAge;
  own: { change: DrillingChange; comparison: DrillingComparison; rate: Float64Array }[];
}

/** Sections of the later visit with their speeds; one that was not drilled before ages as such fronts usually do. */
function sectionsToAge(
  now: WorkedVisit,
  pairs: readonly [number, number][],
  compared: readonly Compared[],
  years: number,
  speeds: SpeedPrior,
  random: Random,
  draws: number,
): Ageable[] {
  if (pairs.length === 0) return [];
  return now.sections.map(({ assessment, posterior }, j) => {
    const own = compared.filter(({ sectionIndex }) => sectionIndex === j);
    const rates = rateDraws(
      own.map(({ comparison }): FrontMeasure => comparison.measure),
      years,
      speeds,
      random.fork(`speeds ${assessment.id}`),
      draws,
    );
    const growths = own.map(({ comparison }) => comparison.growthDraws);
    const usual = constant('stem growth').value * MM_PER_CM;
    const growthMmYear = Float64Array.from({ length: draws }, (_, i) =>
      growths.length === 0 ? usual : growths.reduce((sum, g) => sum + g[i]!, 0) / growths.length / years,
    );
    return {
      section: {
        id: assessment.id,
        field: posterior,
        safety: compare(now.verdict.drawn.breakage.places[j]!).safety,
        azimuthsDeg: own.map(({ azimuthDeg }) => azimuthDeg),
        rates,
        growthMmYear,
      },
      own: own.map(({ change, comparison }, k) => ({ change, comparison, rate: rates.atDrillings[k]! })),
    };
  });
}

const inCm = ({ p05, p50, p95 }: Interval): Interval => ({
  p05: p05 / MM_PER_CM,
  p50: p50 / MM_PER_CM,
  p95: p95 / MM_PER_CM,
});

function changeNotices(change: ChangeAssessment): Notice[] {
  const notices: Notice[] = [];
  if (change.years === null) {
    notices.push({
      severity: 'caution',
      where: 'visitedOn',
      text: 'The date of this visit or of the earlier one was not recorded: the change is shown, but no speed and no forecast can be worked out.',
    });
  }
  if (change.drillings.length === 0) {
    notices.push({
      severity: 'caution',
      where: 'earlier',
      text: 'No drilling of this visit repeats one of the earlier visit: the sections are compared, but no front and no growth can be.',
    });
  }
  for (const { laterId, place, front } of change.drillings) {
    if (front !== 'only then') continue;
    notices.push({
      severity: 'caution',
      where: `${place}.drillings.${laterId}`,
      text: `The earlier needle at ${laterId} met a decay front and this one did not. Decay does not heal: one of the two readings is in error, or the front lies aside of this hole.`,
    });
  }
  return notices;
}
