/**
 * Where to drill next, or to stop. Each draw of the posterior says what a needle at a candidate place would meet and
 * whether the tree should be kept; so the draws show how much a needle's answer would sharpen the decision before
 * the hole is made (preposterior analysis: Raiffa & Schlaifer 1961, Applied Statistical Decision Theory; stepwise
 * uncertainty reduction: Bect, Ginsbourger, Li, Picheny & Vazquez 2012, Statistics and Computing 22).
 */
import type { NextDrilling } from '../../assessment.ts';
import { InputFault } from '../../faults.ts';
import type { FieldPosterior } from '../field/types.ts';
import { type Aim, ANSWER_SIZE, needleAnswers } from './answer.ts';
import { type Left, leftAfter, margins, scores } from './foretell.ts';
import type { NextDrillingInput, SectionToDrill } from './types.ts';
import { stopWhenSure, stopWhenWorthless, whyDrill } from './words.ts';

/** Places looked at around each section. */
const PLACES = 36;
/** Headings looked at from each place: toward the pith, and this far to either side of it, degrees. */
const HEADINGS_DEG = [0, -30, 30];
/** A heading off the pith is advised only where its merit is greater by this than that of the heading to the pith. */
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
const MOST_DRAWS = 1500;
/** When one hole alone cannot tip the decision: places from which a second is looked at, and places of the second. */
const FIRST_OF_TWO = 4;
const SECOND_OF_TWO = 12;
const TWO_APART_DEG = 15;
/** Classes of like sections when the section is taken as known: finer than a needle tells. */
const CLASSES_IF_KNOWN = 40;

/** A place and heading, with what a hole there is expected to take off. */
interface Candidate extends Aim {
  section: number;
  answers: Float64Array;
  /** Shares taken off the chance of a wrong decision, and off the doubt. */
  worth: number;
  doubtWorth: number;
}

/** A section with what is worked out for it once. */
interface Looked {
  given: SectionToDrill;
  margin: Float64Array;
  fails: Uint8Array;
  safeOtherwise: number;
  /** Chance of a wrong decision and doubt before the hole, on the draws looked at. */
  before: Left;
}

/** By which places are ranked: what a hole does for the decision itself, and toward one that later holes will make. */
const merit = ({ worth, doubtWorth }: { worth: number; doubtWorth: number }) => worth + doubtWorth;

const takenOff = (before: number, after: number) =>
  before > 0 ? Math.max(0, ((1 - MISLEADS) * (before - after)) / before) : 0;

/**
 * The place whose hole is expected to sharpen most the decision to keep or to act, or the advice to stop. The decision is
 * for the tree: act when any section's safety factor is below the limit (or `chanceOtherwise`).
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
    .sort((a, b) => merit(b) - merit(a) || a.azimuthDeg - b.azimuthDeg);
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
  const best = candidates[0];
  if (best && best.worth >= LEAST_WORTH) {
    return {
      ...best,
      why: whyDrill(standing, best, { holes: 1, wrongAfter: wrongNow * (1 - best.worth) }),
      candidates,
    };
  }
  const two = bestOfTwo(looked, ranked);
  if (two && two.worth / 2 >= LEAST_WORTH) {
    const first = candidates[two.first]!;
    const why = whyDrill(standing, first, { holes: 2, wrongAfter: wrongNow * (1 - two.worth) });
    return { ...first, worth: two.worth / 2, why, candidates };
  }
  const known = Math.min(wrongNow, ...looked.map(wrongIfKnown));
  if (best && known <= (1 - LEAST_IN_SECTION) * wrongNow && best.doubtWorth >= LEAST_DOUBT_WORTH) {
    return { ...best, why: whyDrill(standing, best, { wrongIfKnown: known }), candidates };
  }
  const bestDrop = wrongNow * Math.max(0, ...candidates.map(({ worth }) => worth));
  return { stop: true, why: stopWhenWorthless(standing, bestDrop, known), candidates };
}

function lookAt(given: SectionToDrill, limit: number, safeOtherwise: number): Looked {
  const count = Math.min(MOST_DRAWS, given.posterior.draws);
  const fails = Uint8Array.from(given.safetyByDraw.subarray(0, count), (v) => (v < limit ? 1 : 0));
  const mustAct = 1 - (1 - fails.reduce((sum, f) => sum + f, 0) / count) * safeOtherwise;
  const before = { wrong: Math.min(mustAct, 1 - mustAct), doubt: mustAct * (1 - mustAct) };
  return { given, margin: margins(given, limit, count), fails, safeOtherwise, before };
}

/** The best pair of holes at one section: the rank of the first of them, and the worth of both. */
function bestOfTwo(looked: readonly Looked[], ranked: readonly Candidate[]) {
  let best: { first: number; worth: number; doubtWorth: number } | null = null;
  for (const [rank, first] of ranked.slice(0, FIRST_OF_TWO).entries()) {
    const { margin, fails, safeOtherwise, before } = looked[first.section]!;
    const seconds = ranked
      .filter((c) => c.section === first.section && turn(c.azimuthDeg, first.azimuthDeg) >= TWO_APART_DEG)
      .slice(0, SECOND_OF_TWO);
    for (const second of seconds) {
      const score = scores([first.answers, second.answers], ANSWER_SIZE, margin);
      const left = leftAfter(score, fails, safeOtherwise);
      const both = {
        first: rank,
        worth: takenOff(before.wrong, left.wrong),
        doubtWorth: takenOff(before.doubt, left.doubt),
      };
      if (!best || merit(both) > merit(best)) best = both;
    }
  }
  return best;
}

/** Chance of a wrong decision if the section were known, and only wind and the wood's strength were not. */
function wrongIfKnown({ given, fails, safeOtherwise }: Looked): number {
  const known = given.safetyOfSection.subarray(0, fails.length);
  return leftAfter(known, fails, safeOtherwise, CLASSES_IF_KNOWN).wrong;
}

function candidatesOf(section: Looked, index: number, needleMm: number): Candidate[] {
  const { given, margin, fails, safeOtherwise, before } = section;
  const { posterior, drilled } = given;
  const free = Array.from({ length: PLACES }, (_, c) => (360 * c) / PLACES).filter((azimuthDeg) => {
    const away = awayDeg(posterior, azimuthDeg);
    return !drilled.some((d) => d.downDeg < STEEP_DEG && turn(d.azimuthDeg, azimuthDeg) < away);
  });
  const aims = free.flatMap((azimuthDeg) =>
    HEADINGS_DEG.map((offRadialDeg): Aim => ({ azimuthDeg, offRadialDeg })),
  );
  const answers = needleAnswers(posterior, aims, needleMm, margin.length);
  const all = aims.map((aim, k): Candidate => {
    const left = leftAfter(scores([answers[k]!], ANSWER_SIZE, margin), fails, safeOtherwise);
    return {
      ...aim,
      section: index,
      answers: answers[k]!,
      worth: takenOff(before.wrong, left.wrong),
      doubtWorth: takenOff(before.doubt, left.doubt),
    };
  });
  return free.map((_, k) => {
    const [radial, ...turned] = all.slice(k * HEADINGS_DEG.length, (k + 1) * HEADINGS_DEG.length);
    const better = turned.reduce((a, b) => (merit(b) > merit(a) ? b : a));
    return merit(better) > merit(radial!) + GAIN_OF_TURNING ? better : radial!;
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
