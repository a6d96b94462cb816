/**
 * When to look again, from the wall's margin, the kind of decay and what was found.
 *
 * A wall t on a radius R that decays by d and grows by g a year reaches the limit τ of t/R when t + (g - d) T = τ (R + g T):
 * T = (t - τ R) / (d - g (1 - τ)), never when the denominator is 0 or less. No rate of decay is safe to rely on, so three
 * scenarios are worked; half the time of the fast one, from the wall's lower 5 % point, bounds the interval, beside the
 * longest times that practice allows (reinspection-caps.csv).
 */
import type { Reinspection, SafetyAssessment, SectionAssessment, SignReading } from '../assessment.ts';
import type { SignInput } from '../case.ts';
import type { MeasuredRate, SpeedPrior } from '../change/index.ts';
import { namesFungus } from '../decision/signs.ts';
import type { FailureLikelihood } from '../decision/words.ts';
import { constant, sourced, statusNote } from '../reference/index.ts';
import { decayRates, fungi, reinspectionCaps } from '../reference/tables.generated.ts';

/**
 * Years until a wall reaches the limit, cm and cm a year; null when it never does.
 * Derived, no published formula: exact for a round stem under constant rates.
 */
export function yearsToLimit(
  wallCm: number,
  radiusCm: number,
  limit: number,
  decayCmYear: number,
  growthCmYear: number,
): number | null {
  const closing = decayCmYear - growthCmYear * (1 - limit);
  if (closing <= 0) return null;
  return Math.max(0, (wallCm - limit * radiusCm) / closing);
}

export interface ReinspectionInput {
  sections: readonly SectionAssessment[];
  signs: readonly SignInput[];
  readings: readonly SignReading[];
  likelihood: FailureLikelihood;
  safety: SafetyAssessment;
  /** Speeds measured between two visits; they stand in the place of the scenarios at their drillings. */
  measured?: readonly MeasuredRate[];
}

function meanRadiusCm(section: SectionAssessment): number {
  const ring = section.cambiumMm;
  let twice = 0;
  ring.forEach(([x, y], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    twice += x * nextY - nextX * y;
  });
  return Math.sqrt(Math.abs(twice) / 2 / Math.PI) / 10;
}

type Evidence = Pick<ReinspectionInput, 'sections' | 'signs' | 'readings'>;

/** What is believed of the speed of this tree's fronts before any was measured, mm a year. */
export function frontSpeeds(evidence: Evidence): SpeedPrior {
  const { rot } = rotOf(evidence);
  const { slow, middle, fast } = ratesOf(rot);
  return { slow: slow * MM_PER_CM, middle: middle * MM_PER_CM, fast: fast * MM_PER_CM };
}

const MM_PER_CM = 10;

function ratesOf(rot: string) {
  const rates = decayRates.find((row) => row.rot === rot);
  if (!rates) throw new Error(`decay-rates.csv: nothing for ${rot}`);
  return rates;
}

/** The kind of rot: of a fungus named, none where needles and signs found no decay, else unknown. */
function rotOf({ sections, signs, readings }: Evidence): { rot: string; because: string } {
  const named = fungi.find((row) => signs.some((sign) => namesFungus(sign, row.name)));
  if (named) {
    const rot = ['soft', 'brown', 'white'].find((kind) => named.rot.includes(kind)) ?? 'unknown';
    return { rot, because: `${named.name} was named (${named.rot} rot)` };
  }
  const drilled = sections.some(({ drillings }) =>
    drillings.some(({ zones }) => zones.some(({ kind }) => kind === 'decayed' || kind === 'void')),
  );
  const seen = readings.some(({ bearsOn, floor }) => bearsOn === 'decay' && floor !== null);
  if (!drilled && !seen) return { rot: 'none', because: 'neither needles nor signs found decay' };
  return { rot: 'unknown', because: 'decay was found and its fungus is not known' };
}

const SOONER = [
  'after a storm of Beaufort 9 to 10 or more (gusts above about 25 m/s)',
  'after digging, building or paving within the root area',
  'on a new lean, cracks or heaving in the soil',
  'on a new fruiting body, crack or dead part of the crown',
  'after a neighbouring tree or building that gave shelter is gone',
];

const whole = (years: number) => (years < 10 ? years.toFixed(1) : years.toFixed(0));

/** Months to the next inspection, with the reasons. */
export function reinspection(input: ReinspectionInput): Reinspection {
  const { sections, readings, likelihood, safety } = input;
  const limit = constant('wall limit').value;
  const growth = constant('stem growth').value;
  const { rot, because } = rotOf(input);
  const rates = ratesOf(rot);
  const speedAt = (sectionId: string, drillingId: string) => {
    const found = input.measured?.find((m) => m.sectionId === sectionId && m.drillingId === drillingId);
    return found
      ? {
          slow: found.decay.p05,
          middle: found.decay.p50,
          fast: found.decay.p95,
          growth: found.growth.p05,
          measured: true,
        }
      : { slow: rates.slow, middle: rates.middle, fast: rates.fast, growth, measured: false };
  };
  const walls = sections.flatMap((section) => {
    const radiusCm = meanRadiusCm(section);
    return section.drillings
      .filter((drilling) => !drilling.residualWallAtLeast)
      .map((drilling) => ({
        id: drilling.id,
        radiusCm,
        wallCm: drilling.residualWallMm / 10,
        lowCm: drilling.residualWallIntervalMm.p05 / 10,
        ...speedAt(section.id, drilling.id),
      }));
  });
  type Wall = (typeof walls)[number];
  const yearsAt = (wall: Wall, wallCm: number, rate: number) =>
    yearsToLimit(wallCm, wall.radiusCm, limit, rate, wall.growth);
  const below = walls.filter(({ wallCm, radiusCm }) => wallCm < limit * radiusCm);
  const weakest = walls
    .map((wall) => ({ ...wall, soonest: yearsAt(wall, wall.lowCm, wall.fast) }))
    .filter(({ wallCm, radiusCm }) => wallCm >= limit * radiusCm)
    .reduce<(Wall & { soonest: number | null }) | null>(
      (a, b) =>
        a === null || (b.soonest ?? Number.POSITIVE_INFINITY) < (a.soonest ?? Number.POSITIVE_INFINITY)
          ? b
          : a,
      null,
    );
  const why: string[] = [];
  const findings = [
    likelihood,
    ...(safety.governing.p50 < constant('usual mark').value ? ['safety below 1.5'] : []),
    ...(readings.some(({ bearsOn, floor }) => bearsOn === 'decay' && floor !== null) ? ['active decay'] : []),
    ...(below.length > 0 ? ['wall below the limit'] : []),
  ];
  let months = Number.POSITIVE_INFINITY;
  for (const row of reinspectionCaps) {
    if (!findings.includes(row.finding)) continue;
    months = Math.min(months, row.months);
    why.push(`At most ${row.months} months: ${row.text} (${row.source}${statusNote(row.status)}).`);
  }
  const least = constant('least inspection months').value;
  if (weakest?.soonest != null) {
    const half = Math.max(least, Math.floor(weakest.soonest * 6));
    const speed = (cmYear: number) => (weakest.measured ? cmYear.toFixed(2) : `${cmYear}`);
    const grounds = weakest.measured
      ? `measured between the two visits and with what is known of such fronts: lower, middle and upper estimate ${speed(weakest.slow)}, ${speed(weakest.middle)} and ${speed(weakest.fast)} cm a year; growth at least ${speed(weakest.growth)} cm a year`
      : `${because}; scenarios ${speed(weakest.slow)}, ${speed(weakest.middle)} and ${speed(weakest.fast)} cm a year; growth ${weakest.growth} cm a year`;
    why.push(
      `At drilling ${weakest.id} the wall of ${weakest.wallCm.toFixed(1)} cm on a radius of ${weakest.radiusCm.toFixed(0)} cm could thin to ${limit} of the radius in ${whole(weakest.soonest)} years if decay moves outward by ${speed(weakest.fast)} cm a year (${grounds}): half of that is ${half} months.`,
    );
    months = Math.min(months, half);
  } else if (below.length > 0) {
    why.push(
      `At drilling ${below.map(({ id }) => id).join(', ')} the wall is thinner than ${limit} of the radius already: the forecast of the wall does not apply there, and the safety worked out is the guide.`,
    );
  } else {
    why.push('No needle met a decay front, so there is no wall to forecast from.');
  }
  if (months < 24) {
    why.push(
      'Drilling the same place again within two to three years tells little: look at signs, crown and roots first, and drill where the decay would have moved.',
    );
  }
  return {
    months: months === 0 ? 0 : Math.max(least, Math.min(months, 60)),
    why,
    sooner: SOONER,
    wallYears: weakest
      ? {
          drillingId: weakest.id,
          slow: yearsAt(weakest, weakest.wallCm, weakest.slow),
          middle: yearsAt(weakest, weakest.wallCm, weakest.middle),
          fast: yearsAt(weakest, weakest.wallCm, weakest.fast),
        }
      : null,
    values: [
      sourced('wall limit'),
      sourced('stem growth'),
      {
        name: `outward speed of decay, fast scenario, ${rates.meaning}`,
        value: rates.fast,
        unit: 'cm/year',
        source: rates.source + statusNote(rates.status),
      },
    ],
  };
}
