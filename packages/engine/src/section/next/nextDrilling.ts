/**
 * Where to drill next, or to stop. Each draw of the posterior says what a needle at a candidate place would meet and
 * whether the tree should be kept; so the draws show how much a needle's answer would sharpen the decision before
 * the hole is made (preposterior analysis: Raiffa & Schlaifer 1961, Applied Statistical Decision Theory; stepwise
 * uncertainty reduction: Bect, Ginsbourger, Li, Picheny & Vazquez 2012, Statistics and Computing 22).
 */
import type { DrillingCandidate, NextDrilling } from '../../assessment.ts';
import { InputFault } from '../../faults.ts';
import type { FieldPosterior } from '../field/types.ts';
import { type Aim, ANSWER_SIZE, needleAnswers } from './answer.ts';
import { type Left, leftAfter, margins, NEAR, scores, told } from './foretell.ts';
import type { NextDrillingInput, SectionToDrill } from './types.ts';
import { type Prospect, stopWhenSure, stopWhenWorthless, whyDrill } from './words.ts';

/** Places looked at around each section. */
const PLACES = 36;
/** Headings looked at from each place: toward the pith, and this far to either side of it, degrees. */
const HEADINGS_DEG = [0, -30, 30];
/** A heading off the pith is advised only where it tells more, by this share, than the heading to the pith. */
const GAIN_OF_TURNING = 0.05;
/** Below this chance of a wrong decision no hole is worth its wound. */
const SURE_ENOUGH = 0.05;
/** Least share of that chance that each hole must be expected to take away, looking one or two holes ahead. */
const LEAST_WORTH = 0.1;
/**
 * Where that is not reached, holes still go on while at least this share of the chance would go if the section were known
 * throughout, and the best hole takes off at least this share of the doubt: what no two holes tip, several may.
 */
const LEAST_IN_SECTION = 0.5;
const LEAST_DOUBT_WORTH = 0.05;
/** A hole this near to one already made tells little and weakens the same place: degrees, and mm along the wood. */
const TOO_NEAR_DEG = 8;
const TOO_NEAR_MM = 60;
/** A needle as steep as this leaves the section. */
const STEEP_DEG = 45;
/** Chance that a needle's answer misleads: it passes the decay by, or is misread. */
const MISLEADS = 0.05;
const USUAL_NEEDLE_MM = 400;
/** Draws that places are weighed by, at most: enough to rank them, few enough to be quick. */
const MOST_DRAWS = 1000;
/** When one hole alone cannot tip the decision: places looked at for the second, and how far from the first. */
const SECOND_OF_TWO = 24;
const TWO_APART_DEG = 15;
/** Classes of like sections when the section is taken as known: finer than a needle tells. */
const CLASSES_IF_KNOWN = 40;

/** A place and heading, with what a hole there is expected to tell and to take off. */
interface Candidate extends Aim {
  section: number;
  answers: Float64Array;
  /**
   * By which places are ranked: the share of the section's margin that the answer explains, times the share of the doubt
   * that lies in this section.
   */
  merit: number;
  /** Shares taken off the chance of a wrong decision, and off the doubt. */
  worth: number;
  doubtWorth: number;
}

/** A section with what is worked out for it once. */
interface Looked {
  given: SectionToDrill;
  /** The section over the limit, widely and near the limit. */
  toKnow: Float64Array;
  toDecide: Float64Array;
  fails: Uint8Array;
  safeOtherwise: number;
  /** What is left before the hole on the draws looked at, and if the section were known throughout. */
  before: Left;
  known: Left;
}

const takenOff = (before: number, after: number) =>
  before > 0 ? Math.max(0, ((1 - MISLEADS) * (before - after)) / before) : 0;

/**
 * The place whose hole is expected to tell most of the section's strength where the decision turns, or the advice to stop.
 * The decision is for the tree: act when any section's safety factor is below the limit (or `chanceOtherwise`).
 * `worth` is the expected drop of the chance of a wrong decision as a share of that chance now. Where no hole alone would
 * tip the decision, two are looked at together and each counts half of what both are worth.
 *
 * @throws InputFault when the safety factors of a section do not match its posterior's draws, or none are given
 */
export function nextDrilling(input: NextDrillingInput): NextDrilling {
  const { sections, limit, chanceOtherwise = 0, needleMm = USUAL_NEEDLE_MM } = input;
  if (sections.length === 0) {
    return {
      stop: true,
      why: 'No section was described, so there is nowhere to drill. Describe a section first.',
    };
  }
  for (const s of sections) {
    const counts = [s.safetyByDraw.length, s.safetyOfSection.length];
    const other = counts.find((count) => count !== s.posterior.draws);
    if (other !== undefined) {
      throw new InputFault(
        `${other} safety factors were given for ${s.posterior.draws} draws of the section. Give one for each draw.`,
        `sections.${s.id}`,
      );
    }
  }
  const failing = sections.map((s) => s.safetyByDraw.filter((v) => v < limit).length / s.posterior.draws);
  const safeOtherwise = (except: number) =>
    failing.reduce((safe, p, i) => (i === except ? safe : safe * (1 - p)), 1 - chanceOtherwise);
  const mustAct = 1 - safeOtherwise(-1);
  const wrongNow = Math.min(mustAct, 1 - mustAct);
  const standing = { mustAct, wrongNow, limit };

  const looked = sections.map((given, s) => lookAt(given, limit, safeOtherwise(s)));
  const ranked = looked
    .flatMap((section, s) => candidatesOf(section, s, needleMm))
    .sort((a, b) => b.merit - a.merit || a.azimuthDeg - b.azimuthDeg);
  const candidates = ranked.map(({ section, azimuthDeg, offRadialDeg, worth, doubtWorth }) => ({
    sectionId: sections[section]!.id,
    azimuthDeg,
    offRadialDeg,
    worth,
    doubtWorth,
  }));

  if (wrongNow < SURE_ENOUGH) {
    return { stop: true, why: stopWhenSure(standing, SURE_ENOUGH), candidates };
  }
  const drill = (place: DrillingCandidate, prospect: Prospect) => ({
    ...place,
    why: whyDrill(standing, place, prospect),
    candidates,
  });
  const aloneOrNull = (place: DrillingCandidate | undefined) =>
    place && place.worth >= LEAST_WORTH
      ? drill(place, { holes: 1, wrongAfter: wrongNow * (1 - place.worth) })
      : null;
  const best = candidates[0];
  const alone = aloneOrNull(best);
  if (alone) return alone;
  const both = ranked[0] ? worthOfTwo(looked[ranked[0].section]!, ranked[0], ranked) : 0;
  if (best && both / 2 >= LEAST_WORTH) {
    return drill({ ...best, worth: both / 2 }, { holes: 2, wrongAfter: wrongNow * (1 - both) });
  }
  const mostWorth = [...candidates].sort((a, b) => b.worth - a.worth)[0];
  const other = aloneOrNull(mostWorth);
  if (other) return other;
  const known = Math.min(wrongNow, ...looked.map((section) => section.known.wrong));
  if (best && known <= (1 - LEAST_IN_SECTION) * wrongNow && best.doubtWorth >= LEAST_DOUBT_WORTH) {
    return drill(best, { wrongIfKnown: known });
  }
  return {
    stop: true,
    why: stopWhenWorthless(standing, wrongNow * (mostWorth?.worth ?? 0), known),
    candidates,
  };
}

function lookAt(given: SectionToDrill, limit: number, safeOtherwise: number): Looked {
  const count = Math.min(MOST_DRAWS, given.posterior.draws);
  const fails = Uint8Array.from(given.safetyByDraw.subarray(0, count), (v) => (v < limit ? 1 : 0));
  const mustAct = 1 - (1 - fails.reduce((sum, f) => sum + f, 0) / count) * safeOtherwise;
  return {
    given,
    toKnow: margins(given, limit, count, NEAR.toKnow),
    toDecide: margins(given, limit, count, NEAR.toDecide),
    fails,
    safeOtherwise,
    before: { wrong: Math.min(mustAct, 1 - mustAct), doubt: mustAct * (1 - mustAct) },
    // Wind and the wood's strength stay unknown.
    known: leftAfter(given.safetyOfSection.subarray(0, count), fails, safeOtherwise, CLASSES_IF_KNOWN),
  };
}

/** What a first hole and the best second one are worth together. */
function worthOfTwo(
  { toDecide, fails, safeOtherwise, before }: Looked,
  first: Candidate,
  ranked: readonly Candidate[],
): number {
  const seconds = ranked
    .filter((c) => c.section === first.section && turn(c.azimuthDeg, first.azimuthDeg) >= TWO_APART_DEG)
    .slice(0, SECOND_OF_TWO);
  const worths = seconds.map((second) => {
    const [score] = scores([first.answers, second.answers], ANSWER_SIZE, toDecide);
    return takenOff(before.wrong, leftAfter(score!, fails, safeOtherwise).wrong);
  });
  return Math.max(0, ...worths);
}

function candidatesOf(section: Looked, index: number, needleMm: number): Candidate[] {
  const { given, toKnow, toDecide, fails, safeOtherwise, before, known } = section;
  const { posterior, drilled } = given;
  const free = Array.from({ length: PLACES }, (_, c) => (360 * c) / PLACES).filter((azimuthDeg) => {
    const away = awayDeg(posterior, azimuthDeg);
    return !drilled.some((d) => d.downDeg < STEEP_DEG && turn(d.azimuthDeg, azimuthDeg) < away);
  });
  const aims = free.flatMap((azimuthDeg) =>
    HEADINGS_DEG.map((offRadialDeg): Aim => ({ azimuthDeg, offRadialDeg })),
  );
  const answers = needleAnswers(posterior, aims, needleMm, fails.length);
  const scored = answers.map((a) => scores([a], ANSWER_SIZE, toKnow, toDecide));
  const tells = scored.map(([score]) => told(score!, toKnow));
  const inSection = before.doubt > 0 ? Math.max(0, (before.doubt - known.doubt) / before.doubt) : 0;
  return free.map((_, place): Candidate => {
    const radial = place * HEADINGS_DEG.length;
    const turned = HEADINGS_DEG.slice(1).map((_, h) => radial + 1 + h);
    const better = turned.reduce((a, b) => (tells[b]! > tells[a]! ? b : a));
    const k = tells[better]! > tells[radial]! + GAIN_OF_TURNING ? better : radial;
    const left = leftAfter(scored[k]![1]!, fails, safeOtherwise);
    return {
      ...aims[k]!,
      section: index,
      answers: answers[k]!,
      merit: inSection * tells[k]!,
      worth: takenOff(before.wrong, left.wrong),
      doubtWorth: takenOff(before.doubt, left.doubt),
    };
  });
}

/** How far from a hole the next must stay at an azimuth, degrees. */
function awayDeg(posterior: FieldPosterior, azimuthDeg: number): number {
  const { stateCambiumMm } = posterior;
  const rays = stateCambiumMm.length;
  const radius = stateCambiumMm[Math.round((azimuthDeg / 360) * rays) % rays]!;
  return Math.max(TOO_NEAR_DEG, (TOO_NEAR_MM / radius) * (180 / Math.PI));
}

function turn(a: number, b: number): number {
  const d = Math.abs(a - b) % 360;
  return Math.min(d, 360 - d);
}
