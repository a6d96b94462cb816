/**
 * The trade's rules for hollow stems, each with its source and its blind spots, and beside them the loss they try
 * to stand for: that of the section modulus of the section as drilled.
 */
import type { Criterion } from '../assessment.ts';
import { InputFault } from '../faults.ts';
import { cambiumRing } from './cambium.ts';
import { ringModulusByDirection } from './capacity.ts';
import { outlineRadius } from './outline.ts';
import { type DrilledWall, type RadialWall, radialWall } from './radial-wall.ts';
import { joinRound } from './radii.ts';
import { RAD, signedAreaMm2 } from './ring.ts';
import type { PointMm, RingMm } from './types.ts';

/** A cavity's opening to the outside. */
export interface CavityOpening {
  /** Its width over the stem's circumference, 0 to 1. */
  share: number;
  /** Azimuth of its middle, degrees; without it the modulus of the open section cannot be computed. */
  azimuthDeg?: number;
}

/** What the rules are worked from. */
export interface StrengthLossInput {
  /** The outline over bark, origin at the pith. */
  outline: RingMm;
  barkMm: number;
  walls: readonly DrilledWall[];
  /** Left out when no opening was seen. */
  opening?: CavityOpening;
}

/** Strength-loss formulas, as functions of d/D (hollow over stem diameter inside the bark); results 0 to 1. */
export const strengthLoss = {
  /** Wagener 1963, USDA Forest Service Research Paper PSW-P1. */
  wagener: (hollowShare: number) => hollowShare ** 3,
  /** Coder 1989. */
  coder: (hollowShare: number) => hollowShare ** 4,
  /** Smiley & Fraedrich 1992, J. Arboric. 18:201-204; `openingShare` is the opening's width over the circumference. */
  smileyFraedrich: (hollowShare: number, openingShare: number) =>
    hollowShare ** 3 + openingShare * (1 - hollowShare ** 3),
};

/** To be printed wherever more than one of the wall rules is; the losses are (1 − t/R)⁴. */
export const WALL_RULES_ARE_NEARLY_ONE =
  'The wall rules are nearly one number. Their limits (t/R 0.30, one inch of sound wood in six, Wagener’s 33 % at t/R 0.31) lie at true losses of section modulus of 24, 20 and 23 % in a round, centred hollow. That several are met or missed is one finding, not several.';

/** Losses are taken at most this for a wall that is not there, so that a logarithm of the wall exists. */
const NO_WALL_MM = 0.5;

/** Smallest and greatest a number can be, given walls that may be thicker than drilled. */
interface Bounds {
  low: number;
  high: number;
}

/**
 * The trade's rules as criteria. `met` is true when the section passes, false when it does not, and null when the rule
 * does not apply or the needles ended too soon to tell. Where needles ended in sound wood, a loss is given at its most
 * and a wall at its least.
 *
 * The hollow's diameter is the stem's (of the circle with the wood's area, inside the bark) less twice the mean wall;
 * t/R and the one-in-six rule take the thinnest wall.
 *
 * @throws InputFault for walls, bark or opening that cannot be.
 */
export function strengthLossCriteria({ outline, barkMm, walls, opening }: StrengthLossInput): Criterion[] {
  if (opening && !(opening.share >= 0 && opening.share <= 1)) {
    throw new InputFault(
      `The opening's share of the circumference is ${opening.share}. Give a number from 0 to 1.`,
      'opening.share',
    );
  }
  const cambium = cambiumRing(outline, barkMm);
  const radius = Math.sqrt(Math.abs(signedAreaMm2(cambium)) / Math.PI);
  const cambiumRadius = outlineRadius(cambium);
  const radial = walls.map((wall) => radialWall(outline, barkMm, cambiumRadius, wall));
  const mean = boundsOfMean(radial, radius);
  const hollow = mean && { low: 1 - mean.high / radius, high: 1 - mean.low / radius };
  const openShare = opening?.share ?? 0;
  const open = openShare > 0;
  const closedOnly = 'An opening was recorded and the rule is for closed hollows.';
  const thin = thinnest(radial, radius);
  const all = [
    lossRule({
      name: 'Wagener',
      source: 'Wagener 1963, USDA Forest Service Research Paper PSW-P1',
      limit: 0.33,
      loss: hollow && map(hollow, strengthLoss.wagener),
      doesNotApply: open ? closedOnly : '',
      note: `Takes stem and hollow as circles about one centre; ignores off-centre decay, openings, load and species${ifAllRoundThinnest(thin, radius, strengthLoss.wagener)}.`,
    }),
    lossRule({
      name: 'Coder, caution',
      source: 'Coder 1989, as tabulated in Arboriculture & Urban Forestry',
      limit: 0.2,
      loss: hollow && map(hollow, strengthLoss.coder),
      doesNotApply: open ? closedOnly : '',
      note: 'From 20 % to the upper mark the author advises caution; takes stem and hollow as circles about one centre.',
    }),
    lossRule({
      name: 'Coder, hazard',
      source: 'Coder 1989, as quoted in J. Arboric. 27:78-87 and in Arboriculture & Urban Forestry',
      limit: 0.44,
      loss: hollow && map(hollow, strengthLoss.coder),
      doesNotApply: open ? closedOnly : '',
      note: 'The upper mark is printed as 44 % in one text and 50 % in another, and the lower is used here; takes stem and hollow as circles about one centre.',
    }),
    lossRule({
      name: 'Smiley and Fraedrich',
      source: 'Smiley & Fraedrich 1992, J. Arboric. 18:201-204',
      limit: 0.33,
      loss: hollow && map(hollow, (k) => strengthLoss.smileyFraedrich(k, openShare)),
      doesNotApply: '',
      note: open
        ? 'Counts the opening as a share of the wall lost; understates the loss when the hollow is wider inside than its opening, and ignores where the opening lies.'
        : 'With no opening recorded it is the same as Wagener’s.',
    }),
    wallRule({
      name: 'Wall ratio',
      source: 'Mattheck & Breloer 1994, The Body Language of Trees',
      quantity: 't/R',
      limit: 0.3,
      wall: thin && map(thin, (t) => t / radius),
      doesNotApply: open
        ? 'An opening was recorded and the rule is for closed hollows; see the opening rule.'
        : '',
      note: 'For closed hollows under a full crown; 0.30 to 0.35 is quoted; ignores load, species and size, and a reduced crown needs less; nearly the same number as Wagener’s and the one-inch rule, so no independent confirmation of them.',
    }),
    wallRule({
      name: 'One inch of sound wood for every six of stem diameter',
      source: 'Common practice in North American hazard-tree guides',
      quantity: 't/D',
      limit: 1 / 6,
      wall: thin && map(thin, (t) => t / (2 * radius)),
      doesNotApply: open ? 'An opening was recorded; guides then ask for up to twice the wall.' : '',
      note: 'The same as a wall ratio of 1/3; ignores load, species, openings and where the thin wall lies; not independent of the other wall rules.',
    }),
    wallRule({
      name: 'Wall thick enough for plain bending',
      source: 'Huang, Hsu, Lee & Juang 2017, R. Soc. Open Sci. 4:160972',
      quantity: 't/R',
      limit: 0.27,
      wall: thin && map(thin, (t) => t / radius),
      doesNotApply: open ? 'An opening was recorded and the finding is for closed, empty hollows.' : '',
      note: 'Below it a straight empty hollow may split along the grain before it breaks in bending (below 0.06 it kinks); found for one conifer, and other species differ somewhat.',
    }),
    openingRule(opening),
    lossRule({
      name: 'Loss of section modulus as drilled',
      source: 'Elastic bending of the section; walls joined smoothly between drillings',
      quantity: 'section modulus loss',
      limit: 0.33,
      loss: hollow && modulusLoss(cambium, cambiumRadius, radial, opening),
      doesNotApply:
        open && opening?.azimuthDeg === undefined
          ? 'The opening has no azimuth, so it is not in the figure.'
          : '',
      note: `Off-centre and unequal walls are counted, in the weakest direction; it has no published limit of its own, and 33 % is borrowed from the rules above (Kane & Ryan 2004 compare them so); wood between ${plural(radial.length)} is guessed.`,
    }),
  ];
  return all;
}

const plural = (count: number) => `${count} drilling${count === 1 ? '' : 's'}`;

/** `low` and `high` of an increasing or decreasing function. */
function map(bounds: Bounds, f: (value: number) => number): Bounds {
  const a = f(bounds.low);
  const b = f(bounds.high);
  return { low: Math.min(a, b), high: Math.max(a, b) };
}

function boundsOfMean(walls: readonly RadialWall[], radius: number): Bounds | null {
  if (walls.length === 0) return null;
  const mean = (f: (wall: RadialWall) => number) =>
    walls.reduce((sum, wall) => sum + f(wall), 0) / walls.length;
  return {
    low: Math.min(
      radius,
      mean((wall) => Math.min(radius, wall.wallMm)),
    ),
    high: Math.min(
      radius,
      mean((wall) => (wall.atLeast ? radius : Math.min(radius, wall.wallMm))),
    ),
  };
}

function thinnest(walls: readonly RadialWall[], radius: number): Bounds | null {
  if (walls.length === 0) return null;
  return {
    low: Math.min(radius, ...walls.map((wall) => wall.wallMm)),
    high: Math.min(radius, ...walls.map((wall) => (wall.atLeast ? radius : wall.wallMm))),
  };
}

function ifAllRoundThinnest(thin: Bounds | null, radius: number, f: (k: number) => number): string {
  if (!thin) return '';
  return `; with the thinnest wall all round it would be ${Math.round(100 * f(1 - thin.low / radius))} %`;
}

interface Rule {
  name: string;
  source: string;
  limit: number;
  doesNotApply: string;
  note: string;
}

const NOT_DRILLED = 'No drilling gives a wall.';
const ENDED_SOON = 'Needles ended in sound wood before the rule could be decided.';

/** A loss that must not exceed its limit. */
function lossRule(rule: Rule & { quantity?: string; loss: Bounds | null }): Criterion {
  const { loss, limit } = rule;
  const met = !loss ? null : loss.high <= limit ? true : loss.low > limit ? false : null;
  return criterion(rule, rule.quantity ?? 'strength loss', loss?.high ?? null, met, loss, 'At most this');
}

/** A wall that must not fall below its limit. */
function wallRule(rule: Rule & { quantity: string; wall: Bounds | null }): Criterion {
  const { wall, limit } = rule;
  const met = !wall ? null : wall.low >= limit ? true : wall.high < limit ? false : null;
  return criterion(rule, rule.quantity, wall?.low ?? null, met, wall, 'At least this');
}

function criterion(
  { name, source, limit, doesNotApply, note }: Rule,
  quantity: string,
  value: number | null,
  met: boolean | null,
  bounds: Bounds | null,
  bound: string,
): Criterion {
  const open = bounds !== null && bounds.high - bounds.low > 1e-9;
  const remarks = [
    doesNotApply,
    bounds ? '' : NOT_DRILLED,
    open ? `${bound}: some needles ended in sound wood.` : '',
    open && met === null && !doesNotApply ? ENDED_SOON : '',
    note,
  ];
  return {
    name,
    source,
    value,
    limit,
    quantity,
    met: doesNotApply ? null : met,
    note: remarks.filter(Boolean).join(' '),
  };
}

function openingRule(opening: CavityOpening | undefined): Criterion {
  const value = opening ? opening.share * 360 : null;
  return {
    name: 'Opening of the cavity',
    source: 'Mattheck et al. 1992 to 1994, as tabulated in Arboriculture & Urban Forestry',
    value,
    limit: 120,
    quantity: 'degrees of circumference',
    met: value === null ? null : value <= 120,
    note:
      value === null
        ? 'No opening was recorded.'
        : 'The mark for open cavities in place of the wall ratio; ignores how thick the wall beside the opening is and the load.',
  };
}

/** Points of the hollow's outline round the stem. */
const HOLLOW_POINTS = 360;

/** Loss of section modulus in the weakest direction, with walls that needles did not get through at both their ends. */
function modulusLoss(
  cambium: RingMm,
  cambiumRadius: (azimuthDeg: number) => number,
  walls: readonly RadialWall[],
  opening: CavityOpening | undefined,
): Bounds {
  // Open all but round, nothing is left to bend.
  if (opening?.azimuthDeg !== undefined && opening.share > 0.99) return { low: 1, high: 1 };
  const intact = ringModulusByDirection(cambium);
  const lossWith = (wallOf: (wall: RadialWall) => number) => {
    const left = ringModulusByDirection(cambium, [hollowRing(cambiumRadius, walls, wallOf, opening)]);
    return 1 - left.reduce((least, value, k) => Math.min(least, value / intact[k]!), Infinity);
  };
  const most = lossWith((wall) => wall.wallMm);
  if (!walls.some((wall) => wall.atLeast)) return { low: most, high: most };
  const least = lossWith((wall) => (wall.atLeast ? cambiumRadius(wall.azimuthDeg) : wall.wallMm));
  return { low: Math.min(least, most), high: Math.max(least, most) };
}

/** The hollow within the walls joined smoothly round the stem; where it opens it runs out past the cambium. */
function hollowRing(
  cambiumRadius: (azimuthDeg: number) => number,
  walls: readonly RadialWall[],
  wallOf: (wall: RadialWall) => number,
  opening: CavityOpening | undefined,
): RingMm {
  const joined = joinRound(
    oneForEachAzimuth(walls, wallOf).map(({ azimuthDeg, wallMm }) => ({
      azimuthDeg,
      radiusMm: Math.max(NO_WALL_MM, wallMm),
    })),
  );
  const polar = (azimuthDeg: number, r: number): PointMm => [
    r * Math.sin(azimuthDeg * RAD),
    r * Math.cos(azimuthDeg * RAD),
  ];
  const inner = (azimuthDeg: number) => {
    const outer = cambiumRadius(azimuthDeg);
    return polar(azimuthDeg, Math.max(1e-3 * outer, outer - joined.radius(azimuthDeg * RAD)));
  };
  const past = (azimuthDeg: number) => polar(azimuthDeg, 1.1 * cambiumRadius(azimuthDeg));
  const openDeg = opening?.azimuthDeg === undefined ? 0 : opening.share * 360;
  const middleDeg = opening?.azimuthDeg ?? 0;
  const along = (fromDeg: number, toDeg: number, point: (azimuthDeg: number) => PointMm) => {
    const steps = Math.ceil(((toDeg - fromDeg) * HOLLOW_POINTS) / 360);
    return Array.from({ length: steps + 1 }, (_, i) => point(fromDeg + ((toDeg - fromDeg) * i) / steps));
  };
  if (openDeg === 0) return along(0, 360, inner).slice(1);
  return [
    ...along(middleDeg - openDeg / 2, middleDeg + openDeg / 2, past),
    ...along(middleDeg + openDeg / 2, middleDeg - openDeg / 2 + 360, inner),
  ];
}

/** Walls at the same azimuth (two needles to one place) taken as their thinnest. */
function oneForEachAzimuth(
  walls: readonly RadialWall[],
  wallOf: (wall: RadialWall) => number,
): { azimuthDeg: number; wallMm: number }[] {
  const apart = 0.5;
  const kept: { azimuthDeg: number; wallMm: number }[] = [];
  for (const wall of walls) {
    const wallMm = wallOf(wall);
    const twin = kept.find(({ azimuthDeg }) => {
      const turn = Math.abs(azimuthDeg - wall.azimuthDeg) % 360;
      return Math.min(turn, 360 - turn) < apart;
    });
    if (twin) twin.wallMm = Math.min(twin.wallMm, wallMm);
    else kept.push({ azimuthDeg: wall.azimuthDeg, wallMm });
  }
  return kept;
}
