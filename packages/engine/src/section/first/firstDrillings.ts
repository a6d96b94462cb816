/**
 * Where to begin: how many drillings, where and in which order, before any trace is at hand. Even coverage of the stem,
 * a needle wherever something was seen, the hollows between flares before their ridges, and each main flare down along
 * its ridge. The rules stand in drilling-rules.csv and drilling-signs.csv, each with its source or marked as judgement.
 */
import type { FirstDrillings, PlannedDrilling } from '../../assessment.ts';
import type { FlareInput, SignInput } from '../../case.ts';
import { InputFault } from '../../faults.ts';
import { cambiumRing } from '../cambium.ts';
import { signedAreaMm2 } from '../ring.ts';
import type { NeedlePose, RingMm } from '../types.ts';
import { type Hollow, hollowsOf, isLobed } from './hollows.ts';
import { ruleInWords, ruleValue } from './rules.ts';
import { type Spot, spotsFrom } from './spots.ts';
import { apart, signedTurn, wrap } from './turn.ts';

export interface FirstDrillingsInput {
  section: {
    id: string;
    heightM: number;
    /** Over bark, mm from the origin that azimuths are taken from. */
    outline: RingMm;
    barkMm: number;
    /** Needle passes made here already. */
    drillings?: readonly NeedlePose[];
  };
  /** Root flares, with the drillings made on them; none where flares are looked at from another section. */
  flares: readonly (Omit<FlareInput, 'drillings'> & { drillings: readonly NeedlePose[] })[];
  signs: readonly SignInput[];
  /** Over bark at breast height. */
  stemDiameterMm: number;
}

/** How far suspicion of a spot reaches round the stem, for the order of work: standard deviation, degrees (judgement). */
const SUSPICION_DEG = 30;
/** Signs nearer than this round the stem get one needle between them, degrees (judgement). */
const ONE_SPOT_DEG = 25;
/** No two planned needles stand nearer than this, degrees (judgement). */
const LEAST_APART_DEG = 15;
/** A needle steeper than this leaves the section's level and does not count for its coverage, degrees (judgement). */
const STEEP_DEG = 45;

/** A needle of the plan before it has its place in the order of work. */
interface Wanted {
  at: 'section' | 'flare';
  placeId: string;
  azimuthDeg: number;
  heightM: number;
  downDeg: number;
  why: string;
}

/**
 * The drillings to begin with at a section and on the root flares, in the order of work; of a section or flare that was
 * drilled already, what is still missing.
 *
 * @throws InputFault when the outline cannot hold its bark or the diameter is no length
 */
export function firstDrillings(input: FirstDrillingsInput): FirstDrillings {
  const { section, flares, signs, stemDiameterMm } = input;
  if (!(stemDiameterMm > 0)) {
    throw new InputFault(`The stem's diameter is ${stemDiameterMm}. Give millimetres.`, 'stemDiameterMm');
  }
  const { spots: all, withoutPlace } = spotsFrom(
    signs,
    flares.map((flare) => ({ ...flare, drillings: [] })),
  );
  const near = all.filter(
    ({ heightM }) => heightM === null || Math.abs(heightM - section.heightM) <= ruleValue('height reach'),
  );
  const woodMm =
    2 * Math.sqrt(Math.abs(signedAreaMm2(cambiumRing(section.outline, section.barkMm))) / Math.PI);
  const hollows = hollowsOf(section.outline, flares);
  const onStem = near.filter(({ speaksOf }) => speaksOf !== 'root');
  const count = evenCount(woodMm, onStem.length > 0, isLobed(hollows));
  const atSection = sectionNeedles(section, count, onStem, hollows);
  const atFlares = flareNeedles(flares, near, stemDiameterMm);
  const drillings = inOrder([...atSection, ...atFlares], near);
  return {
    sectionId: section.id,
    drillings,
    why: whySoMany(section, count, atSection.length, atFlares.length, { onStem, hollows, woodMm }),
    leastDepthMm: Math.round(ruleValue('least depth') * woodMm + section.barkMm),
    rules: rulesFollowed(count, atSection, atFlares, onStem, hollows),
    notes: [
      ...withoutPlace.map(
        (sign) =>
          `${sign}: where round the stem is not recorded, so no needle was placed for it. Give its azimuth.`,
      ),
      ...(all.length > near.length
        ? [
            `${all.length - near.length} of the signs lie more than ${ruleValue('height reach')} m above or below this section and were left to another.`,
          ]
        : []),
    ],
  };
}

interface Count {
  needles: number;
  /** The rule that asks for so many. */
  rule: 'even spacing' | 'close spacing' | 'greatest arc' | 'thin stem';
}

/** How many needles evenly spaced cover the section. */
function evenCount(woodMm: number, signsSeen: boolean, lobed: boolean): Count {
  const needles = (rule: string) => 360 / ruleValue(rule);
  const byArc = Math.ceil((Math.PI * woodMm) / ruleValue('greatest arc'));
  const close = signsSeen || lobed;
  const base = close ? needles('close spacing') : needles('even spacing');
  if (byArc > base) return { needles: Math.min(ruleValue('most'), byArc), rule: 'greatest arc' };
  if (woodMm < ruleValue('thin stem') && !close) return { needles: 3, rule: 'thin stem' };
  return { needles: base, rule: close ? 'close spacing' : 'even spacing' };
}

function sectionNeedles(
  section: FirstDrillingsInput['section'],
  count: Count,
  spots: readonly Spot[],
  hollows: readonly Hollow[],
): Wanted[] {
  const place = { at: 'section', placeId: section.id, heightM: section.heightM, downDeg: 0 } as const;
  const made = (section.drillings ?? [])
    .filter(({ downDeg }) => downDeg < STEEP_DEG)
    .map(({ azimuthDeg }) => wrap(azimuthDeg));
  const reach = ruleValue('spot reach');
  const wanted: Wanted[] = [];
  const taken = [...made];
  for (const { azimuthDeg, why } of spotNeedles(spots)) {
    if (taken.some((other) => apart(other, azimuthDeg) < reach)) continue;
    if (wanted.length === ruleValue('most')) break;
    wanted.push({ ...place, azimuthDeg, why });
    taken.push(azimuthDeg);
  }
  if (taken.length === 0) {
    const deepest = hollows.reduce<Hollow | null>((a, b) => (a && a.depth >= b.depth ? a : b), null);
    const azimuthDeg = deepest?.azimuthDeg ?? 0;
    wanted.push({ ...place, azimuthDeg, why: whyHere(azimuthDeg, hollows) });
    taken.push(azimuthDeg);
  }
  for (const azimuthDeg of betweenThem(taken, 360 / count.needles, hollows)) {
    if (wanted.length >= ruleValue('most')) break;
    wanted.push({ ...place, azimuthDeg, why: whyHere(azimuthDeg, hollows) });
  }
  return wanted;
}

/** Needles for what was seen, the strongest sign first; signs close together share one. */
function spotNeedles(spots: readonly Spot[]): { azimuthDeg: number; why: string }[] {
  const left = [...spots].sort((a, b) => b.weight - a.weight || a.azimuthDeg - b.azimuthDeg);
  const needles: { azimuthDeg: number; why: string }[] = [];
  while (left.length > 0) {
    const lead = left[0]!;
    const group = left.filter(({ azimuthDeg }) => apart(azimuthDeg, lead.azimuthDeg) <= ONE_SPOT_DEG);
    for (const spot of group) left.splice(left.indexOf(spot), 1);
    const why = `${seen(group)}: ${lead.why}.`;
    const opening = group.find(({ sides }) => sides === 2);
    if (opening) {
      for (const side of [-1, 1]) {
        needles.push({
          azimuthDeg: Math.round(wrap(opening.azimuthDeg + side * opening.keepOffDeg)) % 360,
          why: `${seen(group)}: ${opening.why}; this needle goes in beside it, ${side < 0 ? 'anticlockwise' : 'clockwise'} seen from above.`,
        });
      }
      continue;
    }
    let azimuthDeg = lead.azimuthDeg;
    for (const { azimuthDeg: centre, keepOffDeg } of group) {
      const off = signedTurn(centre, azimuthDeg);
      if (Math.abs(off) < keepOffDeg) azimuthDeg = wrap(centre + (off < 0 ? -keepOffDeg : keepOffDeg));
    }
    const beside = group.find(({ keepOffDeg }) => keepOffDeg > 0);
    const kept = beside && beside !== lead ? ` Beside the ${beside.sign}: ${beside.why}.` : '';
    needles.push({ azimuthDeg: Math.round(azimuthDeg) % 360, why: why + kept });
  }
  return needles;
}

const seen = (group: readonly Spot[]) => {
  const text = group.map(({ sign }) => sign).join('; ');
  return text.charAt(0).toUpperCase() + text.slice(1);
};

/** Azimuths that part every gap round the stem into steps of about `spacingDeg`, moved into a hollow where one is near. */
function betweenThem(taken: readonly number[], spacingDeg: number, hollows: readonly Hollow[]): number[] {
  // Two needles at one place part no gap between them: the round is still whole.
  const ordered = [...new Set(taken.map(wrap))].sort((a, b) => a - b);
  const all = [...taken];
  const added: number[] = [];
  ordered.forEach((from, i) => {
    const gap = ordered.length === 1 ? 360 : wrap(ordered[(i + 1) % ordered.length]! - from);
    const steps = Math.max(1, Math.round(gap / spacingDeg));
    for (let k = 1; k < steps; k++) {
      const even = wrap(from + (k * gap) / steps);
      const azimuthDeg = Math.round(intoHollow(even, hollows, all));
      all.push(azimuthDeg);
      added.push(azimuthDeg % 360);
    }
  });
  return added;
}

function intoHollow(azimuthDeg: number, hollows: readonly Hollow[], taken: readonly number[]): number {
  const reach = ruleValue('hollows between flares');
  const free = hollows.filter(
    (hollow) =>
      apart(hollow.azimuthDeg, azimuthDeg) <= reach &&
      taken.every((other) => apart(other, hollow.azimuthDeg) >= LEAST_APART_DEG),
  );
  if (free.length === 0) return azimuthDeg;
  return free.reduce((a, b) => (apart(b.azimuthDeg, azimuthDeg) < apart(a.azimuthDeg, azimuthDeg) ? b : a))
    .azimuthDeg;
}

function whyHere(azimuthDeg: number, hollows: readonly Hollow[]): string {
  const hollow = hollows.find((one) => apart(one.azimuthDeg, azimuthDeg) < 1);
  if (!hollow) return 'For even coverage: the part of the stem furthest from the other needles.';
  const where = hollow.between
    ? `between flares ${hollow.between[0]} and ${hollow.between[1]}`
    : 'between two lobes of the outline';
  return `For even coverage, in the hollow ${where}: there the needle measures the wall and not the length of a root.`;
}

function flareNeedles(
  flares: FirstDrillingsInput['flares'],
  spots: readonly Spot[],
  stemDiameterMm: number,
): Wanted[] {
  return flares.flatMap((flare): Wanted[] => {
    if (flare.drillings.length > 0) return [];
    const here = spots.filter(
      ({ speaksOf, azimuthDeg }) =>
        speaksOf !== 'stem' && apart(azimuthDeg, flare.azimuthDeg) <= halfWidthDeg(flare, stemDiameterMm),
    );
    if (here.length === 0 && flare.widthMm < ruleValue('main flare') * stemDiameterMm) return [];
    const downDeg = ruleValue('flare down angle');
    return [
      {
        at: 'flare',
        placeId: flare.id,
        azimuthDeg: Math.round(wrap(flare.azimuthDeg)) % 360,
        heightM: Math.round((ruleValue('flare entry height') * flare.heightMm) / 10) / 100,
        downDeg,
        why: `On the flare's ridge, ${downDeg} degrees down toward the underside of its root near the stem, where decay of roots begins.${here.length > 0 ? ` ${seen(here)}.` : ''}`,
      },
    ];
  });
}

/** How far round the stem a flare reaches to each side, degrees, with a margin for how signs are placed. */
function halfWidthDeg(flare: { widthMm: number }, stemDiameterMm: number): number {
  return ruleValue('spot reach') + (Math.asin(Math.min(1, flare.widthMm / stemDiameterMm)) * 180) / Math.PI;
}

/** Sound side first, decayed last; where equal, on round the stem from the side away from what was seen. */
function inOrder(wanted: readonly Wanted[], spots: readonly Spot[]): PlannedDrilling[] {
  const suspicion = (azimuthDeg: number) =>
    Math.max(
      0,
      ...spots.map((s) => s.weight * Math.exp(-0.5 * (apart(s.azimuthDeg, azimuthDeg) / SUSPICION_DEG) ** 2)),
    );
  const worst = spots.reduce<Spot | null>((a, b) => (a && a.weight >= b.weight ? a : b), null);
  const from = worst ? worst.azimuthDeg : (wanted[0]?.azimuthDeg ?? 0) - 180;
  const ranked = wanted.map((one) => ({
    one,
    // Steps of a fifth: finer than that no order of work is known.
    suspicion: Math.round(5 * suspicion(one.azimuthDeg)),
    along: wrap(one.azimuthDeg - from - 180),
  }));
  ranked.sort(
    (a, b) =>
      a.suspicion - b.suspicion ||
      (a.one.at === b.one.at ? 0 : a.one.at === 'section' ? -1 : 1) ||
      a.along - b.along,
  );
  return ranked.map(({ one }, i) => ({
    order: i + 1,
    at: one.at,
    placeId: one.placeId,
    azimuthDeg: one.azimuthDeg,
    heightM: one.heightM,
    offRadialDeg: 0,
    downDeg: one.downDeg,
    why: one.why,
  }));
}

function whySoMany(
  section: FirstDrillingsInput['section'],
  count: Count,
  atSection: number,
  atFlares: number,
  { onStem, hollows, woodMm }: { onStem: readonly Spot[]; hollows: readonly Hollow[]; woodMm: number },
): string {
  const holes = (n: number) => (n === 1 ? 'one drilling' : `${n} drillings`);
  const made = section.drillings?.length ?? 0;
  const because = {
    'even spacing': 'nothing was seen that speaks of decay there and the outline is even',
    'close spacing': onStem.length > 0 ? 'signs of decay were seen at the stem' : 'the outline is lobed',
    'greatest arc': `the stem is stout there, ${Math.round(woodMm / 10)} cm of wood across`,
    'thin stem': `the stem is thin there, ${Math.round(woodMm / 10)} cm of wood across`,
  }[count.rule];
  const need = `Section ${section.id} wants about ${count.needles} needles round it, ${Math.round(360 / count.needles)} degrees apart, because ${because}`;
  const still =
    atSection === 0
      ? `the ${made} made there already cover it`
      : made > 0
        ? `${holes(atSection)} more would do that`
        : atSection > count.needles
          ? `with the places where something was seen that makes ${atSection}`
          : `so ${holes(atSection)}`;
  const inHollows = hollows.length > 0 ? ', in the hollows of the outline where one is near' : '';
  const flares = atFlares > 0 ? ` The root flares want ${holes(atFlares)}, one on each ridge.` : '';
  return `${need}: ${still}${atSection > 0 ? inHollows : ''}.${flares}`;
}

function rulesFollowed(
  count: Count,
  atSection: readonly Wanted[],
  atFlares: readonly Wanted[],
  onStem: readonly Spot[],
  hollows: readonly Hollow[],
): { text: string; source: string }[] {
  const names: string[] = [];
  if (atSection.length > 0) {
    names.push(count.rule);
    if (count.needles >= ruleValue('most')) names.push('most');
    if (onStem.length > 0) names.push('spot reach');
    if (hollows.length > 0) names.push('hollows between flares');
    names.push('least depth');
  }
  if (atFlares.length > 0) names.push('flare down angle', 'flare entry height');
  if (atSection.length + atFlares.length > 0) names.push('order', 'stop');
  return names.map(ruleInWords);
}
