/**
 * Every sentence that the engine and the case's notices can say, as a template: by it the report recognises a sentence
 * and pulls out its values, so that another language can say it (gettext in reverse). The assessment itself stays as it
 * is. tests/report/sentences.test.ts holds this list against the engine's sources and against many cases.
 *
 * Places in braces: `{recorded}` is a person's own words and stays; `{source}` is a source; a place named as a scale of
 * `Terms` is a word of it; `{toward}` is a compass point; any other is a number, or again a sentence.
 */
export const englishSentences = {
  trace: {
    clipped:
      '{share} % of the readings are at the top of the scale: differences within the densest wood are lost. A faster rotation or slower feed would keep the level in range.',
    coarse: 'Readings lie {spacing} apart on average: cracks and narrow pockets can be missed between them.',
    spike: '1 spike narrower than the needle’s tip were set aside.',
    spikes: '{n} spikes narrower than the needle’s tip were set aside.',
    noneSound: 'No wood in this trace reads as sound.',
    hardlySound:
      'There is hardly any sound wood in this trace to judge the rest by, and no other drilling of the tree to help. A drilling in wood known to be sound would settle it.',
    dip: 'A short dip of level at {span}, as at the pith or in a band of juvenile wood, is read as sound.',
    farSide:
      'The low end of the trace may be a cavity, or air and bark beyond the far side: compare the depth with the stem’s diameter.',
    endedUnsound: 'The needle ended in unsound wood: what lies deeper is unknown.',
    friction:
      'The friction of the shaft is not well known in this trace, so weak wood and void are not surely told apart. Keep the first millimetres in air, or drill through into air, to fix it.',
    unsure: 'From {span} the reading as {zone} is unsure ({share} %).',
  },
  section: {
    openRule: 'An opening was recorded and the rule is for closed hollows.',
    wagenerName: 'Wagener',
    wagener:
      'Takes stem and hollow as circles about one centre; ignores off-centre decay, openings, load and species.',
    wagenerThin:
      'Takes stem and hollow as circles about one centre; ignores off-centre decay, openings, load and species; with the thinnest wall all round it would be {share} %.',
    coderCaution: 'Coder, caution',
    coderCautionNote:
      'From 20 % to the upper mark the author advises caution; takes stem and hollow as circles about one centre.',
    coderHazard: 'Coder, hazard',
    coderHazardNote:
      'The upper mark is printed as 44 % in one text and 50 % in another, and the lower is used here; takes stem and hollow as circles about one centre.',
    smileyFraedrich: 'Smiley and Fraedrich',
    smileyOpen:
      'Counts the opening as a share of the wall lost; understates the loss when the hollow is wider inside than its opening, and ignores where the opening lies.',
    smileyClosed: 'With no opening recorded it is the same as Wagener’s.',
    wallRatio: 'Wall ratio',
    wallRatioOpen: 'An opening was recorded and the rule is for closed hollows; see the opening rule.',
    wallRatioNote:
      'For closed hollows under a full crown; 0.30 to 0.35 is quoted; ignores load, species and size, and a reduced crown needs less; nearly the same number as Wagener’s and the one-inch rule, so no independent confirmation of them.',
    oneInch: 'One inch of sound wood for every six of stem diameter',
    oneInchOpen: 'An opening was recorded; guides then ask for up to twice the wall.',
    oneInchNote:
      'The same as a wall ratio of 1/3; ignores load, species, openings and where the thin wall lies; not independent of the other wall rules.',
    plainBending: 'Wall thick enough for plain bending',
    plainBendingOpen: 'An opening was recorded and the finding is for closed, empty hollows.',
    plainBendingNote:
      'Below it a straight empty hollow may split along the grain before it breaks in bending (below 0.06 it kinks); found for one conifer, and other species differ somewhat.',
    modulus: 'Loss of section modulus as drilled',
    modulusNoAzimuth: 'The opening has no azimuth, so it is not in the figure.',
    modulusNote:
      'Off-centre and unequal walls are counted, in the weakest direction; it has no published limit of its own, and 33 % is borrowed from the rules above (Kane & Ryan 2004 compare them so); wood between {drillings} is guessed.',
    oneDrilling: '1 drilling',
    drillings: '{n} drillings',
    noWall: 'No drilling gives a wall.',
    endedSoon: 'Needles ended in sound wood before the rule could be decided.',
    atMost: 'At most this: some needles ended in sound wood.',
    atLeast: 'At least this: some needles ended in sound wood.',
    opening: 'Opening of the cavity',
    noOpening: 'No opening was recorded.',
    openingNote:
      'The mark for open cavities in place of the wall ratio; ignores how thick the wall beside the opening is and the load.',
    steepOne:
      '{ids} runs more than {limit} degrees off the level and leaves the plane of the felled section: no wall was compared.',
    steep:
      '{ids} run more than {limit} degrees off the level and leave the plane of the felled section: no wall was compared.',
    radiusShare: 't/R',
    diameterShare: 't/D',
    strengthLoss: 'strength loss',
    modulusLoss: 'section modulus loss',
    degreesOpen: 'degrees of circumference',
  },
  first: {
    anew: 'Section {id} has not been drilled, so its strength rests on what such stems are like in general. Begin with the plan of first drillings: {rest}',
    noPlace:
      '{sign}: where round the stem is not recorded, so no needle was placed for it. Give its azimuth.',
    elsewhere: '{n} of the signs lie more than {reach} above or below this section and were left to another.',
    even: 'For even coverage: the part of the stem furthest from the other needles.',
    evenFlares:
      'For even coverage, in the hollow between flares {idA} and {idB}: there the needle measures the wall and not the length of a root.',
    evenLobes:
      'For even coverage, in the hollow between two lobes of the outline: there the needle measures the wall and not the length of a root.',
    flare:
      "On the flare's ridge, {down} degrees down toward the underside of its root near the stem, where decay of roots begins.",
    flareSigns:
      "On the flare's ridge, {down} degrees down toward the underside of its root near the stem, where decay of roots begins. {signs}.",
    anticlockwise: '{signs}: {why}; this needle goes in beside it, anticlockwise seen from above.',
    clockwise: '{signs}: {why}; this needle goes in beside it, clockwise seen from above.',
    signsBeside: '{signs}: {why}. Beside the {sign}: {why2}.',
    signs: '{signs}: {why}.',
    wants:
      'Section {id} wants about {n} needles round it, {apart} degrees apart, because {because}: {still}.',
    wantsHollows:
      'Section {id} wants about {n} needles round it, {apart} degrees apart, because {because}: {still}, in the hollows of the outline where one is near.',
    evenSpacing: 'nothing was seen that speaks of decay there and the outline is even',
    closeSigns: 'signs of decay were seen at the stem',
    closeLobed: 'the outline is lobed',
    stout: 'the stem is stout there, {wood} of wood across',
    thin: 'the stem is thin there, {wood} of wood across',
    covered: 'the {n} made there already cover it',
    oneMore: 'one drilling more would do that',
    more: '{drillings} more would do that',
    withPlaces: 'with the places where something was seen that makes {n}',
    soOne: 'so one drilling',
    so: 'so {drillings}',
    flaresOne: 'The root flares want one drilling, one on each ridge.',
    flares: 'The root flares want {drillings}, one on each ridge.',
  },
  next: {
    noSection: 'No section was described, so there is nowhere to drill. Describe a section first.',
    sure: "The chance that the safety factor against breakage is below {mark} is {chance}: as far as the stem's strength goes, the decision to {leaning} is wrong in less than {limit} of what the drillings allow, and no further hole would change that enough to be worth its wound. Anchorage is judged apart.",
    littleWorth:
      "As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance}, but the best place for one more hole would lower that by only {worth}: even with the section known throughout, {known} would be left, for it comes from the wind and the wood's strength more than from the section. Another hole is not worth its wound; another kind of test may be.",
    littleTold:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance}, but the best place for one more hole would lower that by only {worth}: the section known throughout would leave {known}, but what is unknown of it lies where needles no longer tell much. Another hole is not worth its wound; a test that sees the whole section may be.',
    worth:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. A hole at section {id}, {azimuth}, is expected to bring that to {after}.',
    worthTurned:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. A hole at section {id}, {azimuth}, is expected to bring that to {after}. Turn the needle {turned} to the {side} of the pith: there it tells more of the section.',
    worthTwo:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. A hole at section {id}, {azimuth}, would hardly change it alone, but tells most of the strength; it and the best one after it are expected to bring that to {after}.',
    worthTwoTurned:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. A hole at section {id}, {azimuth}, would hardly change it alone, but tells most of the strength; it and the best one after it are expected to bring that to {after}. Turn the needle {turned} to the {side} of the pith: there it tells more of the section.',
    worthSeveral:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. One or two holes would hardly change it, but most of it lies in the section: known throughout, that would leave {known}. A hole at section {id}, {azimuth}, tells most of what is not known.',
    worthSeveralTurned:
      'As far as breakage goes, the decision to {leaning} is wrong with a chance of {chance} now. One or two holes would hardly change it, but most of it lies in the section: known throughout, that would leave {known}. A hole at section {id}, {azimuth}, tells most of what is not known. Turn the needle {turned} to the {side} of the pith: there it tells more of the section.',
    right: 'right',
    left: 'left',
    keep: 'keep',
    act: 'act',
  },
  wind: {
    basicAsce: 'basic wind speed (3-second gust, 10 m, exposure C)',
    basicEurocode: 'basic wind velocity (10-minute mean, 10 m, open country)',
    alpha: 'power law exponent alpha of exposure {id}: {meaning}',
    gradient: 'gradient height of exposure {id}',
    mapped:
      'A mapped wind speed of {recorded} returns about every 700 years (risk category II), while the usual mark of 1.5 is meant for a storm of the next decades: against the mapped speed it is a stricter test. Give the 50-year gust where that is what the client means.',
    evergreen:
      'The species keeps its leaves, so the crown is taken in leaf although it was recorded as bare.',
    drag: 'drag coefficient of the crown ({group}, {leaf}) at {speed}, on the still-air silhouette',
    limber: 'limber broadleaf',
    broadleaf: 'broadleaf',
    stiff: 'stiff broadleaf',
    pine: 'pine',
    dense: 'dense conifer',
    unknown: 'unknown',
    inLeaf: 'in leaf',
    bare: 'bare',
    roughness: 'roughness length of terrain {id}: {meaning}',
    leastHeight: 'least height of terrain {id}',
    yearlyEurocode:
      'Yearly strongest gust by EN 1991-1-4 eq. 4.2 (Gumbel distribution of the squared speed, K 0.2, n 0.5); {given}.',
    yearlyAsce:
      'Yearly strongest gust by ASCE 7 commentary C26.5 (V_T / V_50 = 0.36 + 0.1 ln 12T, away from hurricanes; from memory); {given}.',
    returnsStated: 'the basic wind speed is taken to return every {n} years (as stated for the site)',
    returnsMap: "the basic wind speed is taken to return every {n} years (the code's own map)",
  },
  wood: {
    own: 'The green strength of {species} {known}; the source is {source}.',
    ownLow:
      'The green strength of {species} {known}; the source is {source}. Check it there before relying on the safety factors.',
    checked: 'was entered from memory and cross-checked',
    memory: 'was entered from memory',
    low: 'stands on values from memory that are round or borrowed',
    remedy: 'Look up the green strength of this species if the decision turns on it.',
    genus:
      '"{recorded}" has no row of its own in the wood table; the mean of {n} of its genus is taken, with a wider spread. {remedy}',
    quoted:
      'No species of the genus {species} is in the wood table; its compression strength is taken as {strength}, quoted from memory of {source}, with a wide spread, and its other strengths in proportion. {remedy}',
    conifers:
      'No species of the genus {species} is in the wood table; the mean of all conifers is taken, with a wide spread. {remedy}',
    broadleaves:
      'No species of the genus {species} is in the wood table; the mean of all broadleaved trees is taken, with a wide spread. {remedy}',
    unrecognised:
      '"{recorded}" is not recognised; the mean of all species of the wood table is taken, with a wide spread, and so is the drag. Check the spelling, or give the botanical name.',
    second:
      'Another catalogue, {source} (quoted from memory), puts the green compression strength of {species} at {strength}, {share} % lower than is used here: the breakage safety would be lower by as much.',
    compression: 'green compression strength along the grain',
    bending: 'green bending strength',
    shear: 'green shear strength along the grain',
    elasticity: 'green modulus of elasticity',
    density: 'green density',
    meanOf: '{species} (mean of {n})',
    secondCatalogue: '{species} (second catalogue)',
  },
  roots: {
    someDrilled:
      '{n} of {all} root flares were not drilled; they are taken as the drilled ones are on average.',
    noneDrilled:
      'No root flare was drilled: the anchorage is estimated as of sound roots, from the size of the tree alone.',
    restricted: 'roots restricted on one side or more',
    lostRoots: '{share} % of the roots cut or unsound in the worst direction',
    lostFlares: "{share} % of the flares' cross-section unsound in the worst direction",
    noBasisRoots:
      'About {share} % of the roots is cut or unsound in the worst direction; experiments with cut roots went to 50 %, so the loss of anchorage has no measured basis here.',
    noBasisFlares:
      "About {share} % of the flares' cross-section is unsound in the worst direction; experiments with cut roots went to 50 %, so the loss of anchorage has no measured basis here.",
    actionRoots:
      'About {share} % of the roots is cut or unsound in the worst direction; from a third up the trade calls for action. Source: {source}.',
    actionFlares:
      "About {share} % of the flares' cross-section is unsound in the worst direction; from a third up the trade calls for action. Source: {source}.",
    withinReach:
      '{n} of {all} cuts or barriers lie within {reach} of the stem (three stem diameters), where cutting lowered the force to pull trees over (Smiley 2008). The loss counted here rests on young willow oaks and red maples; its fall with distance is a proposal of this project.',
    beyondReach:
      "All cuts and barriers lie beyond {reach} (three stem diameters), where no loss of force was measured (Smiley 2008); none is counted. Fine roots and the tree's health are another matter.",
    lean: 'The tree leans by {lean} degrees. The relations for anchorage stem from upright trees; a tree that grew into its lean has stronger roots against it, one that moved has weaker ones. Only a static load test tells.',
    testTilt:
      'The test reached {tilt} degrees; it is brought to {to} degrees between a constant stiffness and the mean slope of the tilting curve, which widens the interval.',
    basisTest: 'Static load test in 1 direction; elsewhere the size of the tree: {basis}.',
    basisTests: 'Static load test in {n} directions; elsewhere the size of the tree: {basis}.',
    basisSize: 'Size of the tree alone: {basis}; no measurement of the anchorage itself.',
    basisReduced: '{span}, reduced by {losses}',
    basisSpan: '{span} by {n} relations with stem diameter and height',
    lossesBoth: 'what drilling found in {flares} and roots cut or kept short on {sides}',
    lossesFlares: 'what drilling found in {flares}',
    lossesCuts: 'roots cut or kept short on {sides}',
    oneFlare: '1 root flare',
    flares: '{n} root flares',
    oneSide: 'one side',
    sides: '{n} sides',
    tooThin: 'Too thin to decide on: a static load test is recommended.',
    signWithSource: '{reading} Source: {source}.',
    bySize: 'uprooting moment by size ({value} {unit}), roots intact, free-draining soil',
    byStress: 'uprooting moment by stem stress ({value} {unit}), roots intact, free-draining soil',
    byMass: 'uprooting moment by stem mass ({value} {unit}), roots intact, free-draining soil',
    perM3: 'kN m per m3',
    perKg: 'N m per kg',
  },
  safety: {
    crushing: 'strength of the stem at first crushing, which drives the breakage safety',
    breaking: 'strength of the stem at breaking (bending strength), reported beside it',
    bendingMiddle: 'breakage safety on the bending strength towards {direction} degrees, middle estimate',
    bendingLower: 'breakage safety on the bending strength towards {direction} degrees, lower 5 % point',
    dynamic: 'governing safety, middle estimate, at a dynamic factor of {factor}',
    doubtsKnown: "Recorded: {doubts}. An estimate from the tree's size does not know of that.",
    doubtsMark:
      'The uprooting safety of {safety} lies on both sides of {mark}: an estimate from size scatters by about a third either way, so it can show {mark2} with confidence only from a middle value near {value} up.',
    thin: 'The evidence on the anchorage is too thin to decide on. {why} A static load test (a measured pull with the tilt of the root plate) is recommended before the tree is kept or condemned on its anchorage.',
    calm: "In {n} of 100 draws the leaning tree's own weight reaches the capacity against {mode} in calm air: the middle estimate of the critical gust is {gust}. Keep people away until it has been looked at.",
    breakage: 'breakage',
    uprooting: 'uprooting',
  },
  decision: {
    governs:
      'What governs is {mode}, with wind toward the {toward}: a safety of {safety}, between {low} and {high} (nine in ten).',
    breakingAt: 'breaking of the stem at section {id}',
    breaking: 'breaking of the stem',
    uprooting: 'uprooting',
    chances:
      'The chance that the stem or the roots fail within {frame} is about {chance} if the strongest gusts come from the worst side, {even} if they come from all sides alike. Given that it has stood the last {n} years much as it is now, the first figure is {stood}.',
    suggested: 'Likelihood of failure: {failure} (suggested; the assessor has not confirmed it yet).',
    confirmed: 'Likelihood of failure: {failure}, confirmed by the assessor.',
    confirmedBecause: 'Likelihood of failure: {failure}, confirmed by the assessor: {recorded}.',
    overridden:
      'Likelihood of failure: {failure} by the assessor, where {failure2} was suggested. Reason given: {recorded}.',
    refused:
      'Likelihood of failure: {failure}; the assessor wrote {failure2} without a reason, which does not count.',
    highest:
      'The highest risk is {risk}: {recorded}, struck by {part} (likelihood of failure {failure}, of impact {impact}, together {event}; consequences {consequences}).',
    aLimb: 'a limb',
    theTree: 'the tree',
    bySuggestions: 'By the suggestions alone it would be {risk}.',
    noRisk: 'No target was recorded, so no risk is rated.',
    thinTest: 'The evidence on the anchorage is too thin to decide on; a static load test is recommended.',
    noFrame: 'No time frame was stated; {n} years are taken ({source}).',
    stated: 'As stated by the assessor.',
    mean: 'Mean over equally likely versions of the tree; the interval shows how far they lie apart. The strongest gust of each year is taken from the side that is worst for the tree; the second figure is for gusts from all sides alike.',
    stays:
      'The tree is taken to stay as it is for the time frame. The likelihood of failure takes no credit for the storms it has stood; given that it has stood {n} years much as it is now, versions of it that would hardly have stood them count for less, and the chance falls as shown. That credit does not hold after new damage or digging, or where decay moves fast.',
    magnitude:
      'An order of magnitude, not a forecast: the far tail of wind and strength is not known better.',
    firstMatrix: 'likelihood of failure by likelihood of impact, cells of the matrix',
    secondMatrix: 'that by the consequences, cells of the matrix',
    unknownTarget:
      'The judgement is on "{recorded}", which is no target of this case: it is not used. Use the target\'s name as recorded.',
    noTarget: 'No target was recorded: the likelihood of failure is given, but no risk can be rated.',
    oddOccupancy:
      '"{recorded}" is none of rare, occasional, frequent, constant: how often {recorded2} is used counts as not stated and is taken as frequent.',
    noOccupancy: 'How often {recorded} is used was not stated: it is taken as frequent.',
    noLimbSign: 'No sign of a weak limb was recorded; possible is taken until the crown has been looked at.',
    recordedSigns: 'Recorded: {signs}.',
    consequencesRecorded: 'The consequences were recorded as {consequences}.',
    consequencesTaken: 'The consequences were not stated; taken as {consequences} for {kind} ({source}).',
    consequencesUnknown:
      'The consequences were not stated and the target is of no kind known here; taken as {consequences}, on the safe side.',
    noDistance: 'Its distance was not stated: it is taken as within reach of every fall.',
    beyond:
      'It is {distance} from the stem; the tree is {height} high: beyond one and a half tree heights nothing reaches it.',
    under:
      'It is {distance} from the stem; the tree is {height} high: it lies under the crown, and a fall to any side may strike it.',
    noDirection:
      'It is {distance} from the stem; the tree is {height} high: it is within reach; its direction was not stated, so every fall counts.',
    thrown: 'It is {distance} from the stem; the tree is {height} high: only thrown pieces reach it.',
    within:
      'It is {distance} from the stem; the tree is {height} high: it is within reach; of the failures worked out, {n} of 100 fall that way.',
    limbNoDistance: 'Its distance was not stated: it is taken as under the limb.',
    limbBeyond: "It is {distance} from the stem, beyond the crown's edge: no limb falls on it.",
    limbElsewhere: 'The limb is on another side of the crown ({azimuth} degrees).',
    limbBelow: 'It lies below the crown on the side of the limb.',
    used: 'It is used {how}; {shield}.',
    useTaken: 'How often it is used was not stated: taken as {occupancy}; {shield}.',
    rarely: 'rarely',
    occasionally: 'occasionally',
    frequently: 'frequently',
    constantly: 'constantly',
    noShield: 'nothing shields it',
    shielded: 'its protection is {protection}',
    lower: 'Next to none of the failures fall that way: one word lower.',
    higher: 'Often used, under the crown and open to every fall: one word higher.',
    overrideRefused:
      'The assessor wrote "{judged}" where "{judged2}" is suggested, without a reason. An override counts only with a reason: the suggestion stands until one is given.',
    rule: 'Suggested from the computed safety by a rule of this project that has no published authority; the assessor confirms it or overrides it with a reason.',
    overCapacity: 'The tree is over its capacity in calm air (middle estimate).',
    everyYear:
      'The middle estimate of the critical gust, {gust}, lies below the gust of every year, {yearly}.',
    asNot: 'The chance of failure within {frame} is {chance}: as likely as not.',
    fiftyNotAbove:
      'The critical gust at its lower 5 % point, {gust}, does not lie above the 50-year gust, {fifty}.',
    belowMark: 'The governing safety at its lower 5 % point is {safety}, below the usual mark of {mark}.',
    chanceMore: 'The chance of failure within {frame} is {chance}, more than 1 in {n}.',
    thin: 'The evidence on the anchorage is too thin to decide on.',
    fiftyAbove:
      'The critical gust at its lower 5 % point, {gust}, lies above the 50-year gust, {fifty}, and the governing safety reaches {mark} with confidence.',
    oneYear: '1 year',
    years: '{n} years',
    chanceBelow: 'below {chance}',
    fungus: '{species} rots {position} ({rot} rot): {note}.',
    fungusNotice:
      '{species} rots {position} ({rot} rot): {note}. It tells where to drill; no strength is computed from the name. Source: {source}.',
    white: 'white',
    brown: 'brown',
    soft: 'soft',
    softAndWhite: 'soft and white',
  },
  advice: {
    wallMeasured:
      'At drilling {id} the wall of {wall} on a radius of {radius} could thin to {limit} of the radius in {years} years if decay moves outward by {fast} a year (measured between the two visits and with what is known of such fronts: lower, middle and upper estimate {rates} a year; growth at least {growth} a year): half of that is {n} months.',
    unknownOption: '"{recorded}" is no option of the advice; use one of {recorded2}.',
    noPruning: 'The tree reaches {goal} as it stands ({n} of 100): no pruning is needed for its stability.',
    outOfReach:
      'No permissible crown reduction reaches {goal}: the most in keeping with pruning standards, {share} of height and spread ({foliage} of the foliage), brings it from {now} to {most} of 100.',
    least:
      'The least crown reduction that reaches {goal} is {share} of height and spread: {top} off the top and {side} on each side, {foliage} of the foliage.',
    leastTwo:
      'The least crown reduction that reaches {goal} is {share} of height and spread: {top} off the top and {side} on each side, {foliage} of the foliage; more than one season allows in a mature tree (25 %), so in two.',
    goal: 'a safety of {safety} in {n} of 100 draws',
    handsOff:
      'Nobody should pull on, climb or work below a tree whose failure may have begun before it is secured.',
    takes:
      "Takes {relief} ({low} to {high}) off the wind's moment at the ground; safety from {before} to {after}.",
    without: 'The tree reaches {safety} with the wanted confidence without it.',
    hardly: 'It hardly lowers the load.',
    brings: 'It brings the tree to {safety} with the wanted confidence.',
    reached: '{safety} is reached in {share} of the draws, not in the {wanted} wanted.',
    reachedThin:
      '{safety} is reached in {share} of the draws, not in the {wanted} wanted; the doubt lies in the anchorage, which a test would lessen before the crown is cut.',
    riskTooHigh: 'The risk is too high to leave as it is.',
    onlyIfAccepted: 'Only if the owner accepts a moderate risk, and not before open questions are answered.',
    riskLow: 'The risk is low, or no target was recorded.',
    noTarget: 'No target was recorded.',
    keepAway: 'Keeps people away until the tree is dealt with.',
    cannotMove: 'A target that cannot be moved keeps the risk as high.',
    lowWithout: 'The risk is low without it.',
    lowersTo: 'Lowers the risk to {risk} without touching the tree.',
    tooThin: 'The evidence on the anchorage is too thin to keep or condemn the tree on it.',
    canBeDecided: 'The anchorage can be decided on without it.',
    crownSigns: 'Signs in the crown or at a union were recorded from the ground.',
    noCrownSigns: 'Nothing in the crown was recorded that calls for it.',
    drillAt: 'Section {id} at {azimuth} degrees: {why}',
    noDeadLimb: 'No dead or broken limb was recorded.',
    deadLimb: 'A dead, broken or cracked limb was recorded.',
    loadUnchanged: 'It does not change the load on stem and roots.',
    weakUnion: 'A weak union or a cracked limb was recorded.',
    noWeakUnion: 'No weak union or cracked limb was recorded; a cable does not hold roots.',
    insects:
      'Insects or their frass were recorded. Treating them gives no strength back; it may matter for buildings nearby.',
    noInsects: 'No insects were recorded.',
    strain: 'Roots, soil or crown show that the roots are under strain.',
    helps: 'Helps any kept tree.',
    riskHigh: 'The risk is high: to be weighed against what else lowers it.',
    nothingCalls: 'Nothing found calls for it.',
    lessWouldDo: 'Less would do.',
    nothingLess: 'Nothing less lowers the risk.',
    named: '{species} was named ({rot} rot)',
    noDecay: 'neither needles nor signs found decay',
    fungusUnknown: 'decay was found and its fungus is not known',
    storm: 'after a storm of Beaufort 9 to 10 or more (gusts above about {gust})',
    digging: 'after digging, building or paving within the root area',
    newLean: 'on a new lean, cracks or heaving in the soil',
    newSign: 'on a new fruiting body, crack or dead part of the crown',
    shelter: 'after a neighbouring tree or building that gave shelter is gone',
    atMost: 'At most {n} months: {because} ({source}).',
    wall: 'At drilling {id} the wall of {wall} on a radius of {radius} could thin to {limit} of the radius in {years} years if decay moves outward by {fast} a year ({because}; scenarios {rates} a year; growth {growth} a year): half of that is {n} months.',
    wallBelow:
      'At drilling {ids} the wall is thinner than {limit} of the radius already: the forecast of the wall does not apply there, and the safety worked out is the guide.',
    noFront: 'No needle met a decay front, so there is no wall to forecast from.',
    again:
      'Drilling the same place again within two to three years tells little: look at signs, crown and roots first, and drill where the decay would have moved.',
    outward: 'outward speed of decay, fast scenario, {meaning}',
  },
  whole: {
    opening:
      'An open cavity was recorded. The strength by direction takes it as wood without strength there, as deep as the needles beside it and what is usual say; drill close on both sides of the opening, and compare with the loss of section modulus as drilled.',
    surface:
      'It was not noted what the surface is all round. An opening or decay from the side that no needle met is then allowed for by what is usual only: note where bark and wood are sound, decayed or open.',
    noDrilling:
      'No drilling was made at this section: its strength rests on what such stems are like in general, not on this tree.',
    oneDrilling:
      'Only one drilling was made at this section: most of it was not seen, and the interval of its strength is wide.',
    fewDrillings:
      'Only {drillings} were made at this section: most of it was not seen, and the interval of its strength is wide.',
  },
  record: {
    earlierUnread: 'the earlier visit cannot be assessed, so nothing is compared: {recorded}',
    azimuth: 'an azimuth of {azimuth} degrees is taken as {taken}, clockwise from north.',
    visitYear: 'the visit is dated {recorded}: is the year right?',
    crownWide: 'the crown is {width} wide on a tree {height} high: is that right?',
    stemOdd: 'a stem of {diameter} on a tree {height} high is unusual: check both and their units.',
    sectionOdd:
      'the section is {across} across and the stem {diameter} at breast height: check both and their units.',
    felledOdd:
      'the felled section is {across} across and the standing one {standing}: were both taken at the same height, and in millimetres?',
    radiiGap: 'no radius was measured from {from} to {to} degrees: the outline there is guessed.',
    offRadial: 'the needle heads {deg} degrees off the radial: is that right?',
    down: 'the needle runs {deg} degrees below the horizontal: is that right?',
    sameTrace: 'reads the same trace as {recorded} ({recorded2}): one of the two is probably a slip.',
    farTarget: '{recorded} is {distance} away, beyond the reach of a tree {height} high.',
    occupancy: 'occupancy {recorded} is kept, but is none of {recorded2}: it counts as not stated.',
    twoTargets: 'two targets are called {recorded}: a judgement on that name counts for both.',
    impossible: 'is {value}, outside what is possible ({range}): {hint}',
    unusual: 'is {value}, which is unusual ({range} is usual): {hint}',
    hintHeight: 'was it measured in feet, or was the decimal sign lost?',
    hintDiameter: 'was it written in centimetres or inches, or is it the girth?',
    hintFeet: 'was it measured in feet?',
    hintLean: 'lean is measured from the vertical',
    hintEurocode: 'EN 1991-1-4 wants the 10-minute mean in m/s, not a gust and not km/h',
    hintAsce: 'ASCE 7 wants the 3-second gust in m/s: 115 mph is {speed}',
    hintCentimetres: 'was it written in centimetres?',
    hintUnit: 'was it written in another unit?',
    hintInches: 'was it written in centimetres or inches?',
    hintReturn: 'how often does a wind of this speed come: once in how many years?',
    hintFrame: 'a decision speaks for one to five years, as a rule',
    hintMoment: 'was it written in {unit}, or is it the force and not the moment at the ground?',
    hintTilt: 'the relation for static load tests holds at a tilt of the root plate of 0.25 degrees',
    hintArc: 'how far round the stem, seen from its middle',
    hintCut: 'from the bark of the stem to the nearest point of the cut',
    hintTarget: 'is the target within reach of the tree?',
    signedBefore: 'the report is signed on {recorded}, before the visit on {recorded2}: is the date right?',
    unsignedDate:
      'a signature without a date does not count: the report says that it is not signed until signedOn is given.',
    byWhom: 'text was added to the report without saying by whom: name the assessor.',
    cutYear: 'the cut is dated {recorded}: is the year right?',
    noTraceAtAll: 'no section has a drilling with a trace: its soundness rests on general belief alone.',
    noSpecies: 'was not recorded: wood values are taken wide, for any species.',
    noLean: 'was not recorded: the stem is taken as upright.',
    noShape: 'was not recorded: taken as {crown}.',
    noLeaf: 'was not recorded: taken as in leaf.',
    noBark: 'was not recorded: taken as {bark}, a middle value.',
    noFlareSize: "was not measured: taken as {width}, {share} % of the stem's diameter.",
    noTrace: 'has no trace yet: it is left out.',
    traceUnread: 'its trace {recorded} was not read: it is left out.',
    traceCase: 'names the trace {recorded}; the file is called {recorded2} and was taken.',
    photoMissing: 'names the photo {recorded}, which is not in the case.',
    unused: 'no drilling names {recorded}.',
    newer: 'written in version {from} of the format, read as version {to}; saving writes the newer one.',
    unknownField: 'is not a field this version knows: it is kept, and not used.',
    unknownFieldMeant: 'is not a field this version knows: it is kept, and not used. Was {recorded} meant?',
    neverExceeds:
      'resistance never exceeds {value}: it is taken in percent of full scale; if it was written as a fraction, multiply it by 100.',
    reaches:
      'resistance reaches {value} of full scale, above the top of the scale: was it converted rightly?',
    apart: 'readings stand {spacing} apart: narrow cracks and thin decay cannot be seen.',
    onlyApart: 'readings stand only {spacing} apart: is the depth in millimetres?',
    gap: 'there are no readings between {span}: what lies there is not known.',
  },
} as const;

export type SentenceTable = {
  readonly [Room in keyof typeof englishSentences]: {
    readonly [Name in keyof (typeof englishSentences)[Room]]: string;
  };
};
