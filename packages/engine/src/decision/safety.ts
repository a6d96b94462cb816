/**
 * Breakage and uprooting safety by direction, what governs, and the critical gust.
 *
 * Breakage: (share of the capacity left × section modulus all sound × strength) over the moment at the section, least
 * over the sections. Uprooting: anchorage over the moment at the ground. What governs is the mode and direction whose
 * lower 5 % point is lowest: a decision has to hold with confidence, so the doubtful mode governs over a known one of the
 * same middle value.
 */
import type { Notice, SafetyAssessment, SafetyGoverning, SourcedValue } from '../assessment.ts';
import { InputFault } from '../faults.ts';
import type { Random } from '../random.ts';
import { constant, sourced, statusNote, type Wood } from '../reference/index.ts';
import type { DirectionalInterval } from '../section/types.ts';
import type { Interval } from '../trace/types.ts';
import { directionalIntervals, interval } from '../wind/interval.ts';
import { DIRECTIONS } from '../wind/types.ts';
import { compare, type Meeting } from './compare.ts';
import { gustRatio } from './criticalGust.ts';
import { type StrengthDraws, stemStrength, strengthDraws, strengthLogSd } from './strength.ts';
import type { SafetyInput, SafetyResult, SectionStrength } from './types.ts';

const CUBIC_METRES_PER_CUBIC_MM = 1e-9;
const Z95 = 1.6448536269514722;

function checkInput({ sections, demand, anchorage }: SafetyInput): void {
  if (sections.length === 0) {
    throw new InputFault(
      'No section to work out the breaking safety of; give at least one with an outline.',
      'sections',
    );
  }
  if (demand.levelsM.length !== sections.length + 1) {
    throw new Error(`demand at ${demand.levelsM.length - 1} sections, strength at ${sections.length}`);
  }
  const wanted = demand.draws * DIRECTIONS;
  for (const section of sections) {
    if (section.remaining.length !== wanted || section.intactModulusMm3.length !== DIRECTIONS) {
      throw new Error(
        `section ${section.id}: strength is not of ${demand.draws} draws by ${DIRECTIONS} directions`,
      );
    }
  }
  if (anchorage.momentNm.length !== wanted) throw new Error('anchorage and demand differ in draws');
}

/** Moment at which a section's worst fibre reaches its strength, `draws` rows of 36, N·m. */
function sectionCapacity(section: SectionStrength, strengthPa: Float64Array): Float64Array {
  const capacity = new Float64Array(section.remaining.length);
  for (let i = 0; i < strengthPa.length; i++) {
    const strength = strengthPa[i]! * CUBIC_METRES_PER_CUBIC_MM;
    const row = i * DIRECTIONS;
    for (let d = 0; d < DIRECTIONS; d++) {
      capacity[row + d] = section.remaining[row + d]! * section.intactModulusMm3[d]! * strength;
    }
  }
  return capacity;
}

/** Least safety per draw where only what is left of the section differs between draws. */
function ofSection(meeting: Meeting, section: SectionStrength, strengthPa: Float64Array): Float64Array {
  const middle = (draws: Float64Array) => {
    const sorted = Float64Array.from(draws).sort();
    return new Float64Array(draws.length).fill(sorted[sorted.length >> 1]!);
  };
  return compare({
    ...meeting,
    capacityNm: sectionCapacity(section, middle(strengthPa)),
    windNm: middle(meeting.windNm),
    weightNm: middle(meeting.weightNm),
  }).leastSafety;
}

/** Share of draws below a mark. */
function shareBelow(draws: Float64Array, mark: number): number {
  let below = 0;
  for (let i = 0; i < draws.length; i++) if (draws[i]! < mark) below++;
  return below / draws.length;
}

const lowest = (intervals: readonly DirectionalInterval[]) =>
  intervals.reduce((a, b) => (b.p05 < a.p05 ? b : a));

/** The section that is the weakest in most draws, in one direction. */
function weakestSection(
  safetyBySection: readonly Float64Array[],
  directionIndex: number,
  draws: number,
): number {
  const wins = new Array<number>(safetyBySection.length).fill(0);
  for (let i = 0; i < draws; i++) {
    let weakest = 0;
    for (let s = 1; s < safetyBySection.length; s++) {
      const at = i * DIRECTIONS + directionIndex;
      if (safetyBySection[s]![at]! < safetyBySection[weakest]![at]!) weakest = s;
    }
    wins[weakest]!++;
  }
  return wins.indexOf(Math.max(...wins));
}

const number = (value: number) => value.toFixed(value < 10 ? 2 : 1);
const spoken = (of: { p05: number; p50: number; p95: number }) =>
  `${number(of.p50)} (${number(of.p05)} to ${number(of.p95)})`;

/** Whether the anchorage can be decided on, and what to do if not. */
function anchorageVerdict(
  input: SafetyInput,
  worst: DirectionalInterval,
): { tooThin: boolean; text: string; notice: Notice | null } {
  const { anchorage } = input;
  const mark = constant('usual mark').value;
  const tested = anchorage.tested[Math.round((worst.directionDeg * DIRECTIONS) / 360) % DIRECTIONS]!;
  const fivePercentFactor = Math.exp(-Z95 * constant('anchorage size scatter').value);
  const straddles = worst.p05 < mark && worst.p95 >= mark;
  const tooThin = anchorage.doubts.length > 0 || (straddles && !tested);
  if (!tooThin) return { tooThin, text: anchorage.basis, notice: null };
  const why =
    anchorage.doubts.length > 0
      ? `Recorded: ${anchorage.doubts.join('; ')}. An estimate from the tree's size does not know of that.`
      : `The uprooting safety of ${spoken(worst)} lies on both sides of ${mark}: an estimate from size scatters by about a third either way, so it can show ${mark} with confidence only from a middle value near ${number(mark / fivePercentFactor)} up.`;
  return {
    tooThin,
    text: `${anchorage.basis} Too thin to decide on: a static load test is recommended.`,
    notice: {
      severity: 'caution',
      where: 'safety.uprooting',
      text: `The evidence on the anchorage is too thin to decide on. ${why} A static load test (a measured pull with the tilt of the root plate) is recommended before the tree is kept or condemned on its anchorage.`,
    },
  };
}

/** Safety against breaking in one direction, least over the sections, per draw: crushing safety by the strengths' ratio. */
function breakingSafety(
  crushingSafety: readonly Float64Array[],
  strengths: readonly StrengthDraws[],
  directionIndex: number,
  draws: number,
): Float64Array {
  const least = new Float64Array(draws).fill(Number.POSITIVE_INFINITY);
  strengths.forEach(({ crushingPa, bendingPa }, s) => {
    for (let i = 0; i < draws; i++) {
      const breaking =
        (crushingSafety[s]![i * DIRECTIONS + directionIndex]! * bendingPa[i]!) / crushingPa[i]!;
      if (breaking < least[i]!) least[i] = breaking;
    }
  });
  return least;
}

function valuesUsed(
  wood: Wood,
  directionDeg: number,
  breaking: Interval,
  governing: SafetyGoverning,
): SourcedValue[] {
  const { crushingPa, bendingPa } = stemStrength(wood);
  const scatter = strengthLogSd(wood);
  const rounded = (value: number) => Math.round(value * 1000) / 1000;
  const dynamic = constant('dynamic factor');
  const species = wood.assessment.matched ?? 'trees at large';
  const ofBreaking = `breakage safety on the bending strength towards ${directionDeg} degrees`;
  const how = 'the same moments against the bending strength, with the scatter of whole stems';
  return [
    {
      name: 'strength of the stem at first crushing, which drives the breakage safety',
      value: Math.round(crushingPa / 1e4) / 100,
      unit: 'MPa',
      cov: rounded(scatter.crushing),
      source: `green compression strength of ${species} by the factor of a whole stem`,
    },
    {
      name: 'strength of the stem at breaking (bending strength), reported beside it',
      value: Math.round(bendingPa / 1e4) / 100,
      unit: 'MPa',
      cov: rounded(scatter.breaking),
      source: `green bending strength of ${species} by the factor of a whole stem`,
    },
    { name: `${ofBreaking}, middle estimate`, value: rounded(breaking.p50), unit: '1', source: how },
    { name: `${ofBreaking}, lower 5 % point`, value: rounded(breaking.p05), unit: '1', source: how },
    {
      name: `governing safety, middle estimate, at a dynamic factor of ${dynamic.high}`,
      value: rounded((governing.p50 * dynamic.value) / (dynamic.high ?? dynamic.value)),
      unit: '1',
      source: `sensitivity: ${dynamic.source}${statusNote(dynamic.status)}`,
    },
    sourced('stem over clear wood'),
    sourced('tree strength scatter'),
    sourced('section strength scatter'),
    sourced('tree breaking scatter'),
    sourced('usual mark'),
  ];
}

/**
 * Combines the draws of the section's strength, the wood, the demand and the anchorage.
 * @throws InputFault when there is no section.
 */
export function safety(input: SafetyInput, random: Random): SafetyResult {
  checkInput(input);
  const { sections, demand, anchorage, wood } = input;
  const { draws, leanTowardDeg } = demand;
  const strengths = strengthDraws(
    wood,
    sections.map((section) => section.id),
    random.fork('wood'),
    draws,
  );
  const sectionMeetings = sections.map(
    (section, s): Meeting => ({
      draws,
      capacityNm: sectionCapacity(section, strengths[s]!.crushingPa),
      windNm: demand.windMomentNm[s + 1]!,
      weightNm: demand.weightMomentNm[s + 1]!,
      leanTowardDeg,
    }),
  );
  const ground: Meeting = {
    draws,
    capacityNm: anchorage.momentNm,
    windNm: demand.windMomentNm[0]!,
    weightNm: demand.weightMomentNm[0]!,
    leanTowardDeg,
  };
  const bySection = sectionMeetings.map(compare);
  const roots = compare(ground);
  const leastByDirection = bySection[0]!.safety.slice();
  const leastRatio = bySection[0]!.leastLoadRatio.slice();
  const leastBreakage = bySection[0]!.leastSafety.slice();
  const leastDirection = bySection[0]!.leastDirection.slice();
  const loadRatio = bySection[0]!.loadRatio.slice();
  for (const other of bySection.slice(1)) {
    for (let k = 0; k < leastByDirection.length; k++) {
      if (other.safety[k]! < leastByDirection[k]!) leastByDirection[k] = other.safety[k]!;
      if (other.loadRatio[k]! < loadRatio[k]!) loadRatio[k] = other.loadRatio[k]!;
    }
    for (let i = 0; i < draws; i++) {
      if (other.leastLoadRatio[i]! < leastRatio[i]!) leastRatio[i] = other.leastLoadRatio[i]!;
      if (other.leastSafety[i]! < leastBreakage[i]!) {
        leastBreakage[i] = other.leastSafety[i]!;
        leastDirection[i] = other.leastDirection[i]!;
      }
    }
  }
  const breakage = directionalIntervals(leastByDirection, draws);
  const uprooting = directionalIntervals(roots.safety, draws);
  const breakageWorst = lowest(breakage);
  const uprootingWorst = lowest(uprooting);
  const breaks = breakageWorst.p05 <= uprootingWorst.p05;
  const worst = breaks ? breakageWorst : uprootingWorst;
  const weakest = weakestSection(
    bySection.map((each) => each.safety),
    Math.round((worst.directionDeg * DIRECTIONS) / 360),
    draws,
  );
  const governing: SafetyGoverning = {
    mode: breaks ? 'breakage' : 'uprooting',
    directionDeg: worst.directionDeg,
    sectionId: breaks ? sections[weakest]!.id : null,
    p05: worst.p05,
    p50: worst.p50,
    p95: worst.p95,
  };
  const breaking = breakingSafety(
    bySection.map((each) => each.safety),
    strengths,
    Math.round((breakageWorst.directionDeg * DIRECTIONS) / 360),
    draws,
  );
  const toGust = (ratio: number) => demand.openGustMs * gustRatio(demand.streamlining, ratio);
  const verdict = anchorageVerdict(input, uprootingWorst);
  const governingDraws = breaks ? leastBreakage : roots.leastSafety;
  const assessment: SafetyAssessment = {
    breakage,
    uprooting,
    governing,
    chanceBelow1: shareBelow(governingDraws, 1),
    chanceBelow1_5: shareBelow(governingDraws, constant('usual mark').value),
    criticalGustMs: {
      breakage: interval(leastRatio.map(toGust)),
      uprooting: interval(roots.leastLoadRatio.map(toGust)),
    },
    anchorageBasis: verdict.text,
    anchorageTooThin: verdict.tooThin,
    values: [
      ...valuesUsed(wood, breakageWorst.directionDeg, interval(breaking), governing),
      ...anchorage.values,
    ],
  };
  return {
    assessment,
    sectionLeastSafety: sections.map((section, s) => ({
      sectionId: section.id,
      leastSafety: bySection[s]!.leastSafety,
      leastSafetyOfSection: ofSection(sectionMeetings[s]!, section, strengths[s]!.crushingPa),
    })),
    uprootingLeastSafety: roots.leastSafety,
    drawn: {
      draws,
      breakage: {
        places: sectionMeetings,
        loadRatio,
        leastLoadRatio: leastRatio,
        leastSafety: leastBreakage,
        leastDirection,
      },
      uprooting: { places: [ground], ...roots },
      openGustMs: demand.openGustMs,
      streamlining: demand.streamlining,
      anchorageDoubts: anchorage.doubts,
      anchorageTested: anchorage.tested,
    },
    notices: [
      ...(verdict.notice ? [verdict.notice] : []),
      ...overloadNotices(assessment, shareBelow(leastRatio, 1e-12), shareBelow(roots.leastLoadRatio, 1e-12)),
    ],
  };
}

/** Words for a tree that its own weight may bring down. */
function overloadNotices(
  assessment: SafetyAssessment,
  breakageChance: number,
  uprootingChance: number,
): Notice[] {
  const notices: Notice[] = [];
  const say = (mode: 'breakage' | 'uprooting', chance: number) => {
    if (chance < 0.05) return;
    notices.push({
      severity: 'serious',
      where: `safety.${mode}`,
      text: `In ${Math.round(chance * 100)} of 100 draws the leaning tree's own weight reaches the capacity against ${mode} in calm air: the middle estimate of the critical gust is ${assessment.criticalGustMs[mode].p50.toFixed(0)} m/s. Keep people away until it has been looked at.`,
    });
  };
  say('breakage', breakageChance);
  say('uprooting', uprootingChance);
  return notices;
}
