/** Words of the return visit, in drawings and in the report, in English. */
import type { DrillingChange } from '@standfast/engine';

export const changeWords = {
  figures: {
    traces: (id: string) =>
      `Drilling ${id} then and now, to one depth scale, the same wood one above the other`,
    before: (date: string) => `then, ${date}`,
    now: (date: string) => `now, ${date}`,
    difference: 'difference',
    cambium: 'cambium',
    front: 'front',
    grown: (length: string) => `grown ${length}`,
    moved: (length: string) => `front ${length}`,
    section: (id: string) => `Section ${id} then, now and the difference, north up`,
    lost: 'sounder then than now',
    lostPossible: 'perhaps',
    gained: 'sounder now',
    newWood: 'new wood',
    safety: 'Safety against breaking, then and now, by direction',
    safetyThen: 'then (middle, 5 to 95 %)',
    safetyNow: 'now (middle, 5 to 95 %)',
    fan: 'Safety of the stem in the years to come',
    fanYears: 'years from this visit',
    fanAxis: 'safety factor against breaking (logarithmic)',
    fanBand: '5 to 95 %',
    fanMiddle: 'middle estimate',
    nextVisit: 'next visit',
    fanPoint: (year: string, value: string) => `in ${year} years ${value}`,
  },
  heading: (date: string) => `Change since ${date}`,
  headingNoDate: 'Change since the earlier visit',
  intro: (years: string) =>
    `The same places were drilled ${years} years apart. Each pair of traces is laid over each other by the pattern of the rings, so that growth at the bark and movement of the decay are told apart. A second hole is never in the same place as the first: that, the reading of both traces and the laying-over are in every range. Movement towards the bark counts as positive.`,
  introNoYears:
    'The same places were drilled on two visits. A date is missing, so no speed and no forecast can be given. Movement towards the bark counts as positive.',
  key: {
    front: 'Decay front',
    frontValue: (moved: string, all: string) => `moved at ${moved} of ${all}`,
    frontNone: 'no front met',
    frontNote: (still: string, unclear: string) =>
      `not moved within error at ${still}; cannot be told at ${unclear}`,
    growth: 'Growth at the cambium',
    growthValue: (least: string, most: string) => `${least} to ${most}`,
    growthNote: 'middle estimates, least to most',
    safety: 'Safety against breaking',
    safetyValue: (before: string, now: string) => `${before} then, ${now} now`,
    safetyInterval: (range: string) => `difference ${range}`,
  },
  moved: (ids: string) => `Decay has moved towards the bark at ${ids}.`,
  still: (ids: string) => `It has not moved, within the error of a repeat drilling, at ${ids}.`,
  unclear: (ids: string) => `Whether it has moved cannot be told at ${ids}.`,
  none: (ids: string) => `No decay was met on either visit at ${ids}.`,
  safety: (before: string, now: string, difference: string, chance: string) =>
    `The safety factor against breaking, in the direction that is now worst, was ${before} and is ${now}. Of the same tree the difference is ${difference}; the chance that it is lower now is ${chance}.`,
  held: (difference: string) =>
    `Part of that comes from what was recorded otherwise, such as the crown, the site or the tree’s measures. With those held as they were the difference is ${difference}: that is what the wood has done.`,
  uprooting: (before: string, now: string) =>
    `Against uprooting it was ${before} and is ${now}; nothing of the roots was measured by these drillings but the flares.`,
  drillingsHeading: 'Drilling by drilling',
  drillingsNote:
    'Upper trace: then. Lower trace: now. The upper is set so that the same wood stands in one upright line: where the line that joins the fronts is upright, the front has stood; where it leans to the left, decay has moved towards the bark. New wood is what lies between the two cambium lines.',
  caption: (id: string) => `Drilling ${id}: the earlier trace above, the later below.`,
  said: {
    moved: (front: string, rate: string) => `The decay front has moved ${front} towards the bark${rate}.`,
    rate: (perYear: string) => `, about ${perYear} a year`,
    'not moved': (front: string) => `The decay front has not moved within error: ${front} towards the bark.`,
    'cannot tell': (front: string) =>
      `Whether the decay front has moved cannot be told: ${front} towards the bark.`,
    neither: 'Neither needle met decay.',
    onlyThen:
      'The earlier needle met a decay front and the later did not: nothing can be told of its movement.',
    onlyNowMoved: (least: string) =>
      `Decay was met where the earlier needle passed sound wood: the front has come at least ${least} nearer to the bark.`,
    onlyNow: 'Decay was met about where the earlier needle ended: whether the front moved cannot be told.',
    chances: (outward: string, stood: string, deeper: string, telling: string) =>
      `Chances: moved outward by more than ${telling} ${outward}, stood ${stood}, lies deeper ${deeper}.`,
    growth: (length: string) => `Growth at the cambium ${length}.`,
    wall: (before: string, now: string, difference: string) =>
      `Residual wall ${before} then, ${now} now, a difference of ${difference}.`,
    byRings: (chance: string, overlap: string) =>
      `Laid over each other by their rings over ${overlap} (chance that they answer to each other ${chance}).`,
    byBark:
      'The rings of the two do not answer to each other, so depths are compared from the bark inward and the ranges are wide.',
  },
  verdicts: {
    moved: 'moved',
    'not moved': 'not moved within error',
    'cannot tell': 'cannot tell',
    'no front': 'no front met',
  } satisfies Record<DrillingChange['verdict'], string> as Record<DrillingChange['verdict'], string>,
  table: 'Growth, decay front and residual wall of each drilling (90 % ranges)',
  columns: ['', 'Growth', 'Front towards bark', 'Verdict', 'Wall then', 'Wall now', 'Difference'],
  unmatched: 'Not compared',
  onlyThen: (id: string) => `${id} of the earlier visit was not repeated.`,
  onlyNow: (id: string) => `${id} repeats none of the earlier visit.`,
  sectionCaption: (id: string) =>
    `Section ${id} then, now, and the difference of the middle estimates of soundness. New wood outside, and where the wood is read less sound than before.`,
  sectionSaid: (id: string, share: string, capacity: string, toward: string) =>
    `At section ${id} the strength that is left of the wood, in the direction where it has changed most (towards ${toward}), has changed by ${share}. With the wood that has grown, the section carries ${capacity} of what it did.`,
  safetyCaption: 'Safety against breaking by direction: then hatched, now plain.',
  forecastHeading: 'How long',
  forecastCaption:
    'Safety against breaking in the years to come, the crown and the site staying as they are.',
  crossing: {
    already: (mark: string) => `The safety of the stem is below ${mark} already.`,
    never: (mark: string, years: string, chance: string) =>
      `The safety of the stem is not expected to pass below ${mark} within ${years} years (chance ${chance}).`,
    unlikely: (mark: string, years: string, early: string, chance: string) =>
      `The safety of the stem more likely than not stays above ${mark} for ${years} years; the early estimate of passing below it is ${early} (chance within ${years} years ${chance}).`,
    middle: (mark: string, when: string, early: string, late: string) =>
      `The safety of the stem passes below ${mark} ${when} by its middle estimate (early estimate ${early}, late estimate ${late}).`,
    inYears: (years: string) => `in about ${years} years`,
    now: 'now already',
    notWithin: (years: string) => `not within ${years} years`,
    byVisit: (mark: string, chance: string, months: string) =>
      `Chance that it is below ${mark} by the next visit advised, in ${months} months: ${chance}.`,
  },
  basis: [
    'Each drawn version of the section is aged: decay spreads from what is unsound at the measured speed near a drilling and as such fronts usually do elsewhere; new wood is laid on outside where the wood below the bark is sound.',
    'The speed rests on two visits and on what is known of such fronts. A front can stand for years and then break through a barrier.',
    'The crown and the site stay as they are now. A crown that grows, or a neighbour that is gone, brings the date nearer.',
    'It is of the stem breaking. The anchorage cannot be forecast from the section.',
  ] as readonly string[],
  recorded: 'Recorded otherwise than before',
  recordedNote:
    'A measure taken anew is not a change of the tree. Signs are compared by their names and places as written.',
  recordedColumns: ['What', 'Then', 'Now'],
  recordedNames: {
    'tree.species': 'species',
    'tree.stemDiameterMm': 'stem diameter',
    'tree.heightM': 'height of the tree',
    'tree.leanDeg': 'lean',
    'tree.leanTowardDeg': 'direction of lean',
    'tree.crown.baseHeightM': 'base of the crown',
    'tree.crown.widthM': 'width of the crown',
    'tree.crown.shape': 'shape of the crown',
    'tree.crown.inLeaf': 'crown in leaf',
    'site.windCode': 'wind code',
    'site.basicWindSpeedMs': 'basic wind speed',
    'site.basicWindReturnYears': 'return period of the wind speed',
    'site.terrain': 'terrain',
    'site.soil': 'soil',
  } as Readonly<Record<string, string>>,
  outlineOf: (id: string) => `mean radius over bark at ${id}`,
  heightOf: (id: string) => `height of section ${id}`,
  barkOf: (id: string) => `bark at ${id}`,
  openingOf: (id: string) => `opening at ${id}`,
  noted: 'recorded',
  notNoted: '–',
};

export type ChangeWords = typeof changeWords;
