/** Every word the figures and the report print, in English. Another language is another file of this shape. */
import type { ZoneKind } from '@standfast/engine';

const zoneNames: Record<ZoneKind, string> = {
  air: 'air',
  bark: 'bark',
  sound: 'sound',
  incipient: 'incipient',
  decayed: 'decayed',
  void: 'void',
  crack: 'crack',
};

export function zoneName(kind: ZoneKind): string {
  return zoneNames[kind];
}

/** Words within drawings: short, the trade's. */
export const figureWords = {
  traceTitle: (id: string) => `Drilling resistance along ${id}`,
  traceDescription:
    'Drilling resistance in percent of full scale against depth along the needle. Zones from the entry:',
  wall: 'residual wall',
  wallAtLeast: 'residual wall at least',
  offRadial: 'off the radial',
  down: 'down',
  resistanceAxis: 'resistance, %',
  referenceTitle: 'Level of sound wood in this tree, with the modelled friction added',
  frictionTitle: 'Modelled friction of the shaft',
  frictionLegend: 'shaft friction',
  referenceLegend: (level: string, sd: string) => `sound reference ${level} ± ${sd} %, with friction`,
  confidence: 'confidence',
  drilling: 'Drilling',
  flare: 'Root flare',
  planTitle: (id: string) => `Section ${id} in plan, north up`,
  planDescription: (drillings: string) =>
    `Plan of the section with its outline, soundness and drillings (${drillings}).`,
  soundShare: (p50: string, p05: string, p95: string) =>
    `Share of the wood that is sound: ${p50} (${p05} to ${p95}).`,
  soundnessTitle: 'Soundness of the wood, middle estimate',
  littleKnown: 'Little known here: the standard deviation of soundness is above 0.25',
  littleKnownShort: 'little known',
  noStrength: 'no strength',
  soundWood: 'sound',
  alongNeedles: 'along the needles',
  nextDrilling: 'next drilling advised',
  next: 'next',
  shareSound: (percent: number) => `${percent} % sound`,
  notDrilled: 'not drilled',
  northUp: 'North is up',
  breakage: 'breakage of the stem',
  uprooting: 'uprooting',
  remaining: 'strength remaining',
  safetyFactor: 'safety factor',

  bandNote: 'middle, 5 to 95 %',
  leastHere: 'least',
  limitLegend: (value: string) => `safety factor ${value}`,
  roseDirection: 'Directions: where the stem would bend to (the wind blows to).',
  remainingTitle: (id: string) => `Strength remaining at ${id} by direction of bending`,
  safetyTitle: 'Safety factor by direction',
  roseWorst: (what: string, direction: string, p50: string, p05: string, p95: string) =>
    `${what}: least towards ${direction}, ${p50} (${p05} to ${p95}).`,
  windTitle: 'Wind on the crown, by strips, and the moment it makes',
  windDescription: (moment: string, span: string, gust: string, centre: string) =>
    `The crown as a sail: gust pressure by height and the moment at the ground, ${moment} (${span}), at a gust of ${gust}; the pressure acts as if at ${centre}.`,
  pressureAxis: 'gust pressure',
  centreOfPressure: 'centre of pressure',
  momentAtGround: 'moment at the ground',
  gust: 'gust',
  heightAxis: 'height above ground',
  lean: (deg: string, toward: string) => `lean ${deg}°, towards ${toward}; drawn in the wind's plane`,
  crownArea: 'crown area',
  criteriaTitle: 'The trade\u2019s rules: how far from the limit',
  criteriaDescription: 'Each rule as a dot; 1 is at the limit, to the right of it the rule is met.',
  criteriaAxis: 'on the safe side of the limit, times',
  atLimit: 'limit',
  met: 'met',
  notMet: 'not met',
  doesNotApply: 'does not apply',
  towards: 'towards',
  gaugeTitle: 'Safety factor in the worst direction',
  gaugeAxis: 'safety factor (logarithmic)',
  combinedTitle: (id: string) => `Section ${id} in plan with safety by direction round it, north up`,
};
