/** Every word the figures and the report print, in English. Another language is another file of this shape. */
import type { StripOrigin } from '@standfast/casefile';
import type { ZoneKind } from '@standfast/engine';
import { changeWords } from './change/en.ts';

export const zoneNames: Record<ZoneKind, string> = {
  air: 'air',
  bark: 'bark',
  sound: 'sound',
  incipient: 'incipient',
  decayed: 'decayed',
  void: 'void',
  crack: 'crack',
};

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
  surface: {
    sound: 'surface found sound',
    decayed: 'surface decayed',
    open: 'open hollow',
  },
  clockwiseTo: 'clockwise to',
  tracedTitle: 'What was traced on the felled section',
  traced: { unsound: 'traced: no strength', incipient: 'traced: incipient' },
  felledTitle: (id: string) =>
    `Section ${id}: predicted soundness and what was traced after felling, north up`,
  tracedDescription: (share: string) =>
    `Over it, what was traced after felling: in truth ${share} of the wood is sound.`,
  noStrength: 'no strength',
  soundWood: 'sound',
  alongNeedles: 'needles',
  nextDrilling: 'next drilling advised',
  next: 'next',
  shareSound: (percent: number) => `${percent} %`,
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
  roseLog: 'From circle to circle the safety factor doubles (logarithmic scale).',
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
  pruningTitle: 'What each amount of crown reduction would reach',
  pruningDescription: (points: string) =>
    `Share of the draws that reach the wanted safety, by the reduction of height and spread: ${points}.`,
  pruningAxis: 'reduction of height and spread',
  pruningReach: (safety: string) => `draws with a safety of ${safety} or more`,
  pruningWanted: (confidence: string) => `wanted: ${confidence}`,
  combinedTitle: (id: string) => `Section ${id} in plan with safety by direction round it, north up`,
};

export type FigureWords = typeof figureWords;

/** Words of the report. A firm's template or another language is another object of this type. */
export const reportWords = {
  language: 'en',
  months: [
    'January',
    'February',
    'March',
    'April',
    'May',
    'June',
    'July',
    'August',
    'September',
    'October',
    'November',
    'December',
  ] as readonly string[],
  page: (n: number, of: number) => `Page ${n} of ${of}`,
  figure: 'Figure',
  table: 'Table',
  continued: 'continued',
  contents: 'Contents',
  photo: 'Photo',
  struck: 'Struck by the assessor',
  kept: 'The assessor asked to strike this. It stays: cautions, limits, scope and figures are always printed.',
  evidence: 'The case and the figures this report was made from, to keep or to verify:',
  logo: (firm: string) => `Logo of ${firm}`,
  title: 'Stability assessment by resistance drilling',
  subtitle: (label: string, species: string) => [label, species].filter((s) => s !== '').join(', '),
  invented: 'Invented case: for demonstration only, it describes no real tree.',
  notRecorded: 'not recorded',

  facts: {
    client: 'Client',
    assessor: 'Assessor',
    visited: 'Visited',
    reported: 'Report made',
    place: 'Place',
    tree: 'Tree',
    drilled: 'Drilled',
    instrument: 'Instrument',
    weather: 'Weather',
    drilledCount: (sections: number, drillings: number, flares: number) =>
      `${drillings} ${drillings === 1 ? 'drilling' : 'drillings'} on ${sections} ${sections === 1 ? 'section' : 'sections'}` +
      (flares > 0 ? `, ${flares} on root flares` : ''),
    calibrated: (date: string) => `calibrated ${date}`,
    serial: (n: string) => `no. ${n}`,
    needle: (length: string) => `needle ${length}`,
  },

  summary: {
    heading: 'Summary',
    terms: {
      asked: 'Asked',
      found: 'Found',
      sure: 'How sure',
      risk: 'At risk',
      ask: 'Whom to ask',
    },
    ask: (who: string) =>
      `On this report: ${who}. For work on the tree: a qualified and insured tree worker; for a protected tree or one beside a road, the local authority first.`,
    askNobody: 'the assessor',
    whole: 'The whole text stands under Decision.',
    asked: (client: string, tree: string) =>
      `${client} asked whether ${tree} can be expected to stand, and what to do about it.`,
    askedNoClient: (tree: string) =>
      `Whether ${tree} can be expected to stand, and what should be done about it.`,
    purpose: (text: string) => `In the client\u2019s words: ${text}`,
    noDrillings: 'No drillings were recorded, so nothing is known of the wood inside the stem.',
    foundNothing: (n: number) =>
      n === 1
        ? 'In the one drilling no loss of drilling resistance was found. What lies beside and beyond its path is not known.'
        : `In none of the ${n} drillings was a loss of drilling resistance found. What lies between and beyond their paths is not known.`,
    found: (hit: number, n: number, ids: string) =>
      `${hit} of ${n} ${n === 1 ? 'drilling' : 'drillings'} met wood that has lost resistance, decayed wood or a hollow (${ids})` +
      (hit < n ? '; along the others no loss of drilling resistance was found.' : '.'),
    thinnest: (wall: string, id: string, toward: string) =>
      `The thinnest wall without loss is ${wall}, at drilling ${id} on the ${toward} side.`,
    signs: (signs: string) => `Seen on the tree: ${signs}.`,
    wind: (code: string, gust: string) => `the wind of ${code}, a gust of ${gust} at the crown`,
    howSure: (wind: string, mode: string, below1: string, below15: string) =>
      `In ${wind}, the chance of a safety factor (strength over load) below 1, where failure must be expected, is ${below1} by ${mode}, which decides; below the usual mark of 1.5, ${below15}. Ranges hold the value with a probability of 90 %, as far as the recorded evidence goes.`,
    thin: 'The evidence on the anchorage is too thin to decide on.',
    likelihood: (years: string, standing: string) => `Likelihood of failure within ${years}: ${standing}`,
    overall: (risk: string, target: string, part: string) =>
      `The highest risk is ${risk}: ${target}, struck by ${part}.`,
    table: (further: number) =>
      `What to do, and by when${further > 0 ? ` (${further} further possible ${further === 1 ? 'option' : 'options'}: see Advice)` : ''}`,
    columns: ['What to do', 'Why', 'When', 'Risk left'],
    again: 'Have the tree looked at again',
    againWhy:
      'Sooner after a gale, ground works near the roots, a new lean, soil cracks or new fruiting bodies.',
    cautions: 'The cautions and limits at the end are part of the answer.',
    suggestedBy: 'What the figures suggest',
    assessorSays: 'What the assessor concludes',
  },

  modes: { breakage: 'breakage of the stem', uprooting: 'uprooting' },

  advice: {
    exceeded:
      'On the middle estimate the design wind asks more than the tree can bear. Keep people and property out of its reach until it has been made safe or a test has shown better.',
    short:
      'On the middle estimate the tree withstands the design wind, but with less than the usual reserve of 1.5. Reduce the load, keep the target area clear in high wind, or test further; decide which with the client.',
    uncertain:
      'The middle estimate reaches the usual reserve of 1.5, but its lower bound does not. Better evidence, or less load, is needed before the reserve can be relied on.',
    thinAnchorage:
      'The anchorage was judged from the size of the tree and its flares alone, and that evidence is too thin to decide on: a static load test comes first.',
    enough:
      'The usual reserve of 1.5 is reached even at the lower bound. These figures alone do not call for work on the tree; keep to regular inspection.',
    drillNext: (section: string, toward: string, worth: string, why: string) =>
      `If one more drilling is made, make it at section ${section}, azimuth ${toward}: it would be expected to cut the chance of a wrong decision by ${worth}. ${why}`,
    drillStop: (why: string) => `No further drilling is advised: ${why}`,
  },

  decision: {
    heading: 'Decision',
    intro: (years: string) =>
      `Suggested from the figures and the signs for the next ${years}, and put beside what the assessor says. Both are kept and printed; an assessor\u2019s word counts in place of a suggested one only with a reason.`,
    years: (n: number) => `${n} ${n === 1 ? 'year' : 'years'}`,
    terms: {
      timeFrame: 'Time frame',
      governing: 'What governs',
      chance: 'Chance of failure',
      likelihood: 'Likelihood of failure',
      risk: 'Overall risk',
      assessor: 'Assessor',
    },
    governing: (mode: string, toward: string, safety: string, section: string | null) =>
      `${mode}${section === null ? '' : ` at section ${section}`}, towards ${toward}: safety factor ${safety}.`,
    chance: (years: string, chance: string, even: string, stood: string, stoodYears: string) =>
      `Within ${years} ${chance} if each year\u2019s strongest gust comes from the side that is worst for the tree; ${even} if gusts come from all sides alike. Given that it has stood the last ${stoodYears} much as it is now, the first figure is ${stood}.`,
    standing: {
      suggested: (suggested: string, _assessor: string, _reason: string) =>
        `${suggested}: suggested by the figures, not confirmed by the assessor yet.`,
      confirmed: (suggested: string, _assessor: string, reason: string) =>
        `${suggested}: suggested by the figures and confirmed by the assessor.${reason}`,
      overridden: (suggested: string, assessor: string, reason: string) =>
        `${assessor} by the assessor, in place of ${suggested}, which the figures suggest.${reason}`,
      'override refused': (suggested: string, assessor: string, _reason: string) =>
        `${suggested} by the figures. The assessor wrote ${assessor} without a reason, so the suggestion stands.`,
    },
    reason: (text: string) => ` Reason given: ${text}`,
    overall: (risk: string, target: string, part: string) => `${risk}: ${target}, struck by ${part}.`,
    bySuggestion: (risk: string) => `By the suggestions alone it would be ${risk}.`,
    noTargets: 'No target was recorded, and without a target there is no risk to rate.',
    part: { 'whole tree': 'the tree', limb: 'a limb' },
    signedBy: (by: string, on: string) => [by, on].filter((s) => s !== '').join(', '),
    unsigned: 'Nobody has confirmed or overridden a word of this decision yet.',
    whyHeading: 'Why this likelihood of failure',
    fifty: (yearly: string, fifty: string) =>
      `Gusts at 10 m (33 ft) over open ground that return every year: ${yearly}; every 50 years: ${fifty}.`,
    chanceTable: (years: string) => `Chance of failure by mode, in a year and within ${years}`,
    chanceColumns: [
      'Mode',
      'Likeliest towards',
      'In a year',
      'In the time frame (90 % range)',
      'Gusts from all sides',
    ],
    riskHeading: 'Risk by target',
    riskIntro:
      'Each target and part of the tree is rated on its own; the highest rating is the tree\u2019s, and ratings are never averaged. Failure and impact give the likelihood of failure and impact (first matrix); that and the consequences give the risk (second matrix).',
    riskTable: 'Risk of each target through both matrices',
    riskColumns: ['Target, struck by', 'Failure', 'Impact', 'Failure and impact', 'Consequences', 'Risk'],
    judged: (taken: string, suggested: string) => `${taken} (suggested: ${suggested})`,
    outOfReach: 'out of reach',
    basisTable: 'How the words of each target came about',
    basisColumns: ['Target, struck by', 'How'],
    first: 'First matrix: likelihood of failure and impact',
    second: 'Second matrix: risk',
    firstCorner: 'Failure',
    secondCorner: 'Failure and impact',
    matrixNote:
      'A dot marks the cells in which this tree\u2019s targets lie. Matrices as published in the best management practices of the trade (Smiley, Matheny and Lilly 2017).',
    signsTable: 'What the signs mean for the decision',
    signsColumns: ['Sign', 'What it tells', 'Failure at least', 'Source'],
    noFloor: '–',
    values: 'Values used for the decision and for re-inspection',
  },

  options: {
    heading: 'Advice',
    intro:
      'What can be done, best first, with what it would change where that can be computed. The effect of pruning is worked through the same chain as the safety factor, with the published evidence on pruning and its scatter. What is left is the highest risk once it is done. Costs are left to the reader.',
    table: 'Options and what they would change',
    columns: ['Option', 'Safety factor before → after', 'Chance of failure', 'Risk left', 'When', 'Cost'],
    safety: (before: string, after: string) => `${before} → ${after}`,
    noEffect: 'no computed effect',
    when: (priority: string, by: string) => (by === '' ? priority : `${priority}: ${by}`),
    atOnce: 'at once',
    by: (date: string) => `by ${date}`,
    within: (months: number) => `within ${months} ${months === 1 ? 'month' : 'months'} of the visit`,
    chosen: 'chosen by the client',
    declined: 'declined by the client',
    impermissible: 'more than pruning standards allow in one season',
    limitsTable: 'Why, and how far each option goes',
    limitsColumns: ['Option', 'Why', 'Limits', 'Source'],
    leastHeading: 'The least pruning that reaches the wanted safety',
    leastCaption:
      'What each amount of crown reduction would reach, as a share of the draws; dashed: what is wanted.',
    least: (safety: string, wanted: string, confidence: string, now: string) =>
      `It would leave a safety factor of ${safety}; ${wanted} would be reached in ${confidence} of the draws, against ${now} as the tree stands.`,
    againHeading: 'When to look again',
    again: (by: string) => `Look again ${by}.`,
    againAtOnce: 'Look again as soon as the advice has been acted on.',
    sooner: (events: string) => `Sooner ${events}.`,
    wallYears: (id: string, slow: string, middle: string, fast: string) =>
      `Years until the wall at drilling ${id} thins to the limit of the trade\u2019s wall rule: ${slow} if decay moves slowly, ${middle} at a middle rate, ${fast} if fast. No rate of decay is safe to rely on.`,
    never: 'never',
    drillHeading: 'Drilling further',
  },

  overview: {
    heading: 'The section and its safety by direction',
    caption: (id: string, height: string) =>
      `Section ${id}, ${height} above ground, with the safety factor round it. Inside: how strong the wood is taken to be, the needles on their true lines, and hatching where little is known. Outside: the safety factor for each direction in which the stem would bend; from circle to circle it doubles.`,
    sectionCaption: (id: string, height: string) =>
      `Section ${id}, ${height} above ground. At a root flare: the share of its drilled wood without loss of resistance.`,
    remainingCaption: (id: string) => `Strength remaining at section ${id} by direction of bending.`,
  },

  safety: {
    heading: 'Safety',
    intro:
      'The safety factor is what the tree can bear over what the design wind asks of it. Below 1 failure must be expected in that wind; 1.5 on middle estimates is the usual mark of static assessments, a convention and not a promise.',
    gaugeCaption: 'Safety factor in the worst direction, with its 90 % range.',
    table: 'Safety factor by direction (the direction towards which the stem bends)',
    columns: (section: string) => [
      'Towards',
      `Strength remaining, ${section}`,
      'Against breakage',
      'Against uprooting',
    ],
    gustTable:
      'Critical gust: the 3-second gust at 10 m (33 ft) over open ground at which load meets resistance',
    gustColumns: ['Mode', 'Middle estimate', '90 % range'],
    gustNote:
      'The critical gust is a figure for comparison with forecasts and records of gusts. It is not a wind the tree is said to survive.',
    key: {
      strength: 'Strength remaining, least',
      breakage: 'Safety factor, breakage',
      uprooting: 'Safety factor, uprooting',
      chance: (years: string) => `Failure within ${years}`,
      to: 'to',
      towards: (direction: string) => `bending towards ${direction}`,
      chanceNote: (even: string) => `${even} if gusts come from all sides`,
    },
  },

  criteria: {
    heading: 'The trade\u2019s rules',
    intro:
      'Published rules for decayed stems, evaluated beside the assessment. None of them knows the tree\u2019s height, crown or wind; each is given with its source and what it leaves out.',
    caption: (id: string) => `Rules at section ${id}: distance from the limit of each.`,
    table: (id: string) => `Rules at section ${id}`,
    columns: ['Rule and source', 'What is compared', 'Value', 'Limit', 'Met', 'What it leaves out'],
    yes: 'yes',
    no: 'no',
    none: 'does not apply',
  },

  begin: {
    depth: (depth: string) =>
      `All needles head for the centre of the stem; level ones go at least ${depth} deep. Work in the order given.`,
    table: (id: string) => `Where to begin drilling at section ${id}`,
    columns: ['', 'At', 'Azimuth', 'Height', 'Down', 'Why'],
    place: {
      section: (id: string) => `section ${id}`,
      flare: (id: string) => `flare ${id}`,
    },
    level: 'level',
  },

  change: changeWords,

  felled: {
    heading: 'Prediction against the felled section',
    intro:
      'The section was seen after felling and its unsound wood traced. The tracing entered none of the figures of this report; here the prediction is held against it.',
    caption: (id: string) =>
      `Section ${id}: the soundness that was predicted, and over it the outlines traced after felling.`,
    verdict: (id: string) => `Was the truth inside? Section ${id}`,
    inside: 'inside the range',
    outside: 'outside the range',
    weakest: (toward: string, predicted: string, truth: string, word: string) =>
      `Strength remaining was predicted lowest towards ${toward}, ${predicted}; in truth it is ${truth} there: ${word}.`,
    weakestInTruth: (toward: string, truth: string, predicted: string, word: string) =>
      `In truth it is lowest towards ${toward}, ${truth}, where ${predicted} was predicted: ${word}.`,
    directions: (share: string) => `The truth is inside the range in ${share} of the directions.`,
    soundShare: (truth: string, predicted: string, word: string) =>
      `Sound wood makes up ${truth} of the area; ${predicted} was predicted: ${word}.`,
    table: (id: string) => `Strength remaining at section ${id}, predicted and in truth`,
    columns: ['Towards', 'Predicted (90 % range)', 'In truth', 'The truth is'],
    wallTable: (id: string, edge: string) => `Walls at section ${id} along the needles, to ${edge}`,
    wallColumns: ['Drilling', 'Read from the trace', 'Traced', 'Error', ''],
    wallsTo: {
      'first loss': 'the first loss',
      'no strength': 'wood without strength',
    },
    findings: {
      edge: 'found',
      none: 'no edge in either',
      missed: 'missed: the trace shows no edge',
      'false alarm': 'false alarm: no edge there',
    },
    incipient: (share: string) => `Incipient wood is counted at ${share} of its strength.`,
    source: (text: string) => `The tracing: ${text}.`,
  },

  drillings: {
    heading: 'Drillings',
    intro:
      'All traces are drawn to one scale, against the depth along the needle. The bands beneath are what the wood is read as; \u2018sound\u2019 in a drawing means that no loss of drilling resistance was found there. The percentage is the probability of that reading.',
    sectionHeading: (id: string, height: string) => `Section ${id}, ${height} above ground`,
    caption: (id: string, toward: string) => `Drilling ${id}, entered at ${toward}.`,
    table: (place: string) =>
      `Zones of the drillings, ${place}, depth along the needle from the start of the trace`,
    columns: ['Drilling', 'Reading', 'From', 'To', 'Length', 'Probability'],
    ofSection: (id: string) => `section ${id}`,
    ofFlares: 'root flares',
    noLoss: 'Along the needle no loss of drilling resistance was found.',
    loss: (kinds: string, from: string) =>
      `Loss of drilling resistance was found: ${kinds}. It begins at a depth of ${from}.`,
    wall: (wall: string) => `Wall of wood without loss, from the cambium inwards: ${wall}.`,
    wallAtLeast: (wall: string) =>
      `Wall of wood without loss, from the cambium inwards: at least ${wall}; the needle met no end of it.`,
    reference: (level: string, sd: string, from: string) =>
      `Sound wood of this tree is taken to read ${level} ± ${sd} % of full scale with the shaft\u2019s friction taken off (from ${from}).`,
    restsOn: {
      'this trace': 'this trace alone',
      'all drillings of the tree': 'all drillings of the tree together',
    },
    pose: (off: string, down: string) =>
      `The needle headed ${off} off the radial (clockwise from above) and ${down} below the horizontal.`,
    summaryTable: (id: string) => `Drillings of section ${id} at a glance`,
    summaryColumns: ['Drilling', 'Entered at', 'Reading', 'Wall without loss', '90 % range'],
    noLossShort: 'no loss found',
    atLeast: 'at least',
    none: 'No drillings were made here.',
    strip: {
      terms: { photo: 'Paper strip', chart: 'Its chart', scale: 'Its scale', read: 'Read of it' },
      found: (by: 'frame' | 'grid' | 'axes', sure: string, corners: string) =>
        `Corners found by the printed ${by} (${sure} sure), clockwise from the chart\u2019s top left: ${corners} px on the photo.`,
      byHand: (corners: string) =>
        `Corners set by hand, clockwise from the chart\u2019s top left: ${corners} px on the photo.`,
      scale: (left: string, right: string, bottom: string, top: string, from: string) =>
        `Depth ${left} at the left edge to ${right} at the right, resistance ${bottom} % at the bottom edge to ${top} % at the top, ${from}.`,
      scaleFrom: {
        given: 'as the assessor gave it',
        taps: 'by two marked points of known depth',
        ruler: 'by two marked points a known distance apart',
        'printed numbers': 'by the numbers printed on the chart',
      } satisfies Record<StripOrigin['scaleFrom'], string>,
      share: (share: string) => `${share} of the chart\u2019s width.`,
      leftOut: (where: string) => `Could not be read and is left out: ${where}.`,
      unsure: (where: string) => `Read but unsure: ${where}.`,
      drawn: (where: string) => `Drawn by hand: ${where}.`,
      others: (count: number) => `${count} shorter`,
    },
  },

  zones: {
    air: 'air',
    bark: 'bark',
    sound: 'no loss of resistance found',
    incipient: 'incipient decay (first loss)',
    decayed: 'decayed wood',
    void: 'hollow',
    crack: 'crack',
  } satisfies Record<ZoneKind, string>,

  anchorage: {
    heading: 'Root flares and anchorage',
    basis: (text: string) => `What the figures for uprooting rest on: ${text}`,
    tooThin: 'This evidence is too thin to decide on. A static load test would settle it.',
    table: 'Root flares',
    columns: ['Flare', 'At', 'Width', 'Height', 'Share of drilled wood without loss'],
    notDrilled: 'not drilled',
    noFlares:
      'No root flares were recorded. Decay of roots below ground can defeat a tree whose stem is sound; nothing here speaks of it.',
  },

  load: {
    heading: 'Wind and load',
    intro: (code: string, speed: string, terrain: string) =>
      `Wind by ${code}: basic wind speed ${speed}, ${terrain}. The crown is a sail cut into strips; drag falls with wind speed as published tests show; the tree\u2019s own weight is added through its lean.`,
    terrain: (t: string) => `terrain category ${t}`,
    exposure: (e: string) => `exposure ${e}`,
    basis: (source: string) => `Basic wind speed from: ${source}.`,
    caption: 'The crown in strips, gust pressure by height, and the moment at the ground.',
    table: 'Load in the worst direction',
    columns: ['Quantity', 'Middle estimate', '90 % range or basis'],
    moment: 'Bending moment at the ground',
    windPart: 'of it from wind',
    weightPart: 'of it from own weight through lean',
    gust: 'Peak gust at the centre of pressure',
    centre: 'Height of the centre of pressure',
    area: 'Crown area as a sail',
    intact: (id: string) => `Section modulus at ${id} were all wood sound, least direction`,
    atSection: (id: string, height: string) => `Bending moment at section ${id}, ${height} above ground`,
    values: 'Values used for wind and load',
    valueColumns: ['Value', 'Amount', 'Scatter', 'Source'],
    byCode: 'by the code',
    estimate: 'from the recorded sizes',
  },

  wood: {
    heading: 'Wood',
    matched: (species: string, row: string) =>
      species === row
        ? `Strength values are those tabulated for ${row}.`
        : `The tree was recorded as ${species}; strength values are those tabulated for ${row}.`,
    unmatched: (species: string) =>
      `${species} is not in the table of strength values: wide defaults were taken, and the range widened with them.`,
    table: 'Values used for the wood',
    safetyValues: 'Values used for resistance and safety',
  },

  record: {
    heading: 'What was recorded',
    treeTable: 'Tree and site',
    columns: ['What', 'As recorded'],
    signsTable: 'Signs seen',
    signColumns: ['Sign', 'Where', 'Note'],
    noSigns: 'No signs of decay, damage or movement were recorded.',
    targetsTable: 'Targets: what the tree could strike',
    targetColumns: ['Target', 'How often there', 'Distance', 'Direction'],
    noTargets: 'No targets were recorded. Without targets there is no risk to rate.',
    noticesHeading: 'Notices of the assessment',
    notices: 'Points that the reader must know before relying on the figures.',
    label: 'Label',
    species: 'Species',
    diameter: 'Stem diameter at breast height',
    height: 'Height',
    lean: 'Lean',
    leanText: (deg: string, toward: string) => `${deg}° towards ${toward}`,
    noLean: 'none recorded',
    crown: 'Crown',
    crownText: (shape: string, base: string, width: string, leaf: string) =>
      `${shape}, from ${base} up, ${width} wide, ${leaf}`,
    inLeaf: 'in leaf',
    leafless: 'without leaves',
    section: (id: string) => `Section ${id}`,
    sectionText: (height: string, outline: string, bark: string) =>
      `${height} above ground; outline ${outline}; bark ${bark}`,
    outlines: {
      circle: 'from the girth, as a circle',
      ellipse: 'from two diameters, as an ellipse',
      radii: 'from radii, joined smoothly',
      polygon: 'from surveyed points',
    },
    notes: 'Notes',
    severity: { note: 'Note', caution: 'Caution', serious: 'Serious' },
  },

  method: {
    heading: 'Method in plain words',
    paragraphs: [
      'Zones. A thin needle is driven into the stem at a steady rate and the resistance to its turning is recorded. The trace is read by an explicit-duration (semi-Markov) segmentation: among all ways to cut it into stretches of bark, sound, incipient, decayed, hollow and cracked wood, the most probable is found by exact dynamic programming, and the probability of each reading is summed over all the others. The friction of the shaft is part of the model: it grows in wood and stays constant through a hollow.',
      'Soundness of the section. Between the drillings the wood is described by a random field (a Gaussian process on a polar mesh, correlated farther around the stem than across it) that agrees with every drilling along its true line. Many possible sections are drawn from it; they agree where the stem was drilled and differ where it was not. That difference is the uncertainty shown.',
      'Strength by direction. Each drawn section is bent in thought towards every direction. The greatest fibre stress anywhere on the wood follows from general unsymmetric bending, \u03c3(r) = M u\u1d40 J\u207b\u00b9 (r \u2212 c), with J the centroidal second moments of area of the wood that is left and c its centroid. Strength remaining is the capacity so found over that of the same outline all sound.',
      'Wind. The gust pressure at each height follows the wind code; the force on each strip of the crown is pressure times width times a drag coefficient that falls with speed; the moment is the sum of force times height, M = \u03a3 q C w h \u0394z, and the tree\u2019s own weight is added through its lean.',
      'Safety. Safety factor = resistance over load, drawn many times with the scatter of wood strength, drag, section and anchorage. The median is the middle estimate; the 5 % and 95 % points bound the range. The critical gust is the one at which load meets resistance, from M growing with the square of speed.',
      'Anchorage. Published relations between tree size and the moment that uproots a tree, with their scatter, reduced where flares have lost sound wood or signs say so. Their scatter is large, and a figure by size alone is weak evidence.',
    ] as readonly string[],
  },

  sources: {
    heading: 'Sources',
    intro:
      'Every source and basis of a value, a rule or a method, in the order of first use. What is marked as from memory, as judgement or as a proposal does not rest on a text that was read for it.',
  },

  limits: {
    heading: 'Cautions and limits',
    items: [
      'This report is not a guarantee. A tree of any safety factor can fail, and one below every mark can stand. The figures hold for the day of the visit and for the evidence recorded.',
      'Drilling sees only the path of the needle. Decay, cracks and cavities beside or beyond it, in the roots below ground and in the upper crown, may be hidden from it.',
      'Decay does not always lower the drilling resistance. Soft rot, and brown rot at its start, can leave wood that drills hard and is brittle: a trace can look better than the wood is. Where such fungi are among the signs, rely less on the traces.',
      'Wet wood, reaction wood, knots, branch unions and juvenile wood near the pith read differently from ordinary sound wood and may be misread.',
      'Every drilling wounds the tree and can open a way for decay. Drill as few times as the decision needs, with a clean needle.',
      'Anchorage estimated from size and flares scatters widely. Where uprooting decides, a static load test is the better evidence.',
      'The wind of the code is a design wind, not a forecast. Local gusts, shelter newly lost, storms out of the ordinary, snow and ice are not in it.',
      'Local codes, by-laws, protection orders and licensed practice come before anything in this report. Work on the tree, pesticides and excavation belong to those qualified and licensed for them.',
      'Figures are computed from the inputs listed in the annex. Change an input and they change; they must not be carried over to another tree or another day.',
    ] as readonly string[],
  },

  definitions: {
    heading: 'Terms',
    items: [
      {
        term: 'Azimuth, direction',
        text: 'Degrees clockwise from north. The direction of a load is the one towards which the stem bends, that is, where the wind blows to.',
      },
      {
        term: 'Drilling resistance',
        text: 'What turning the needle costs, in percent of the instrument\u2019s full scale. It follows the density of the wood at the tip, plus friction of the shaft.',
      },
      {
        term: 'No loss of drilling resistance found',
        text: 'The trace stays at the level of this tree\u2019s own wood of full resistance. It does not prove that the wood is undamaged.',
      },
      {
        term: 'Residual wall',
        text: 'Wood without loss between the cambium (under the bark) and the first wood that has lost resistance, along the needle.',
      },
      {
        term: 'Soundness',
        text: 'From 0 (no strength) to 1 (full strength), for each place of the section.',
      },
      {
        term: 'Strength remaining',
        text: 'Bending capacity of the section as it is, over that of the same outline under the bark if all its wood were sound.',
      },
      {
        term: 'Safety factor',
        text: 'Resistance over load in the design wind. Below 1, failure must be expected in that wind.',
      },
      {
        term: 'Middle estimate and range',
        text: 'The median, and the 5 % and 95 % points: the value is put inside the range with a probability of 90 %, on the evidence recorded and the scatter published.',
      },
      {
        term: 'Critical gust',
        text: 'The 3-second gust at 10 m (33 ft) over open ground at which load and resistance are equal.',
      },
    ] as readonly { term: string; text: string }[],
  },

  signOff: {
    heading: 'Sign-off',
    statement:
      'The recorded observations and measurements are mine or were made under my direction. I have looked at every trace and its reading, and I have confirmed or corrected what the figures suggest.',
    name: 'Name',
    credential: 'Qualification',
    firm: 'Firm',
    date: 'Date',
    interests: 'Interests to declare',
    signature: 'Signature',
    place: 'Place',
    notSigned: 'not signed',
    signedInType: (name: string) => `${name} (signed in type)`,
    imageMissing: (path: string) => `not signed: the image ${path} is missing or cannot be printed`,
    reported: (date: string) => `${date}, not signed`,
  },

  changes: {
    heading: 'What the assessor struck and added',
    intro:
      'Nothing was taken away: struck text stays legible, and additions are marked where they stand. Figures cannot be changed by hand; standfast verify names each one that was.',
    table: 'Changes by the assessor',
    columns: ['Change', 'In', 'Text'],
    kinds: { struck: 'struck', kept: 'asked to strike, kept', added: 'added' },
    notFound: 'The passage is not in this report.',
    theAssessor: 'the assessor',
    added: (by: string, on: string | null) => `Added by ${by}${on === null ? '' : `, ${on}`}`,
  },

  photos: {
    heading: 'Photos',
    intro:
      'The photos that the record names, each with its fingerprint (SHA-256). They are inside the attached case as printed here.',
    drilling: (id: string) => `drilling ${id}`,
    section: (id: string) => `section ${id}`,
    flare: (id: string) => `root flare ${id}`,
    at: (place: string, azimuth: string) => `${place} at ${azimuth}`,
    felled: (id: string) => `section ${id} after felling`,
    height: (height: string) => `${height} above ground`,
    file: (path: string, width: string, height: string) => `${path}, ${width} × ${height} px.`,
    fingerprint: (hex: string) => `SHA-256 ${hex}.`,
    reduced: (hex: string, megabytes: string) =>
      `Made smaller for the report; as taken ${megabytes} MB, SHA-256 ${hex}, kept by the assessor.`,
    missing: (path: string) => `Missing: the record names ${path}, which is not in the case.`,
    notPrinted: (path: string) =>
      `Not printed: ${path} is no whole JPEG or PNG. It is kept in the attached case.`,
    inCase: (path: string) => `${path}, in the case.`,
  },

  worked: {
    heading: 'The figures worked by hand: wind, moment, stress, safety',
    intro:
      'Each equation with its source and with this tree\u2019s middle values put in. The program draws every uncertain value many times, so its middle estimates differ a little from the products of middle values; both are given.',
    table: (mode: string, toward: string) =>
      `From the wind to the safety: what governs is ${mode}, towards ${toward}`,
    columns: ['Step', 'Equation', 'With this tree\u2019s numbers', 'Source'],
    pressure: 'Gust pressure at the crown\u2019s centre of pressure',
    strip: 'Moment of one strip of the crown, at the centre of pressure',
    wind: 'Moment of the wind at the ground',
    strips: (n: number, sum: string) => `sum over ${n} strips, the bare stem among them: ${sum}`,
    weight: 'Moment of the tree\u2019s own weight through its lean',
    noLean: 'no lean recorded: 0',
    together: 'Both together, towards the direction',
    ofDraws: (value: string, range: string) => `middle estimate of the draws ${value} (${range})`,
    modulus: (id: string) => `Section modulus left at section ${id}`,
    stress: (id: string) => `Greatest stress at section ${id}`,
    strength: 'Strength of the green stem at first crushing',
    breakage: 'Safety against breakage',
    anchorage: 'Moment that uproots, by size',
    relations: (n: number) => (n === 1 ? 'one relation' : `${n} relations`),
    reduced: (moment: string) =>
      `with soil, flares, cuts and tests counted in, the middle safety means ${moment}`,
    uprooting: 'Safety against uprooting',
    critical: 'Critical gust at 10 m over open ground',
    chance: (years: string) => `Chance of failure within ${years}`,
    gusts: (yearly: string, fifty: string) =>
      `gusts that return every year ${yearly}, every 50 years ${fifty}; over all draws`,
    others: 'Further equations, and where they are from',
    sources: {
      eurocode: 'EN 1991-1-4:2005, 4.3 to 4.5',
      asce: (code: string) => `${code}, chapter 26`,
      statics: 'statics',
      bending: 'unsymmetric bending of a beam (Euler and Bernoulli)',
      gusts: 'Gumbel law of yearly gusts',
    },
    equations: [
      'Moments of area of the wood left, by the boundary of the section: A = \u00bd\u222ew, \u222bx\u00b2dA = \u00bc\u222ex\u00b2w, with w = x dy \u2212 y dx (Green\u2019s theorem).',
      'Stress at a point r of the section under a moment M towards the unit vector u: \u03c3(r) = M u\u1d40 J\u207b\u00b9 (r \u2212 c); strength remaining = max|\u03c3| all sound over max|\u03c3| as it is (bending of unsymmetric sections; any textbook of strength of materials).',
      'Outline through measured radii: periodic cubic spline of ln r (de Boor 1978) with held-back slopes (Hyman 1983).',
      'Zones of a trace: the most probable sequence under an explicit-duration hidden Markov model, by dynamic programming (Rabiner 1989); probabilities by forward and backward sums.',
      'Soundness between the needles: Gaussian process conditioned on the drillings, E[f] = k\u1d40 (K + N)\u207b\u00b9 y (Rasmussen and Williams 2006), many sections drawn from it.',
      'Critical gust with lean: |\u03bb M_w u + M_g u_lean| = M_R solved for \u03bb; gust = design gust \u00b7 \u221a\u03bb while drag does not fall with speed (above 20 m/s).',
      'Draws: stratified sampling, one in each of n equal slices of probability (McKay, Beckman and Conover 1979).',
    ] as readonly string[],
  },

  annex: {
    heading: 'Annex: what the figures were computed from',
    table: 'Calculation',
    columns: ['What', 'Value'],
    engine: 'Engine version',
    seed: 'Seed of the random draws',
    draws: 'Number of draws',
    fingerprint: 'Fingerprint of the case (SHA-256)',
    verify:
      'The case and the figures are attached to this report; standfast verify recomputes them and says which stand.',
    repeat: 'The same inputs, version, seed and number of draws give the same figures again.',
    ownTexts: (keys: string) =>
      `Texts in the firm\u2019s own wording: ${keys}. All others are worded as this program words them.`,
    poses: 'Positions of the drillings',
    poseColumns: [
      'Drilling',
      'At',
      'Off the radial',
      'Below horizontal',
      'Bark from',
      'Wood from',
      'Trace to',
    ],
    moments: 'Bending moment at the ground by direction',
    momentColumns: ['Towards', 'Middle estimate', '90 % range'],
    warnings: 'Warnings on single drillings',
  },

  scope: {
    heading: 'Scope',
    text: 'This is an advanced assessment (level 3) of the stem at the sections named and of the root flares drilled. Limbs, crown and the roots below ground were not examined with instruments. Likelihood of failure, likelihood of impact and consequences are suggestions until the assessor has confirmed them. It holds for the time until the next inspection or until the tree or its surroundings change, whichever is sooner.',
  },

  chance: {
    none: 'less than 1 in 200',
    even: 'about even',
    oneIn: (n: number) => `about 1 in ${n}`,
    of: (k: number, n: number) => `about ${k} in ${n}`,
    certain: 'more than 199 in 200',
  },
};

export type ReportWords = typeof reportWords;
