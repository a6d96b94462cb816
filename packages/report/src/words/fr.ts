/**
 * Every word the figures and the report print, in French: the terms of French-speaking arborists and engineers
 * (houppier, paroi résiduelle, contrefort, ancrage racinaire, module de flexion, pression dynamique de pointe).
 */
import type { ZoneKind } from '@standfast/engine';
import { frenchChangeWords } from './change/fr.ts';
import type { FigureWords, ReportWords } from './en.ts';

export const frenchZoneNames: Record<ZoneKind, string> = {
  air: 'air',
  bark: 'écorce',
  sound: 'sain',
  incipient: 'altéré',
  decayed: 'pourri',
  void: 'vide',
  crack: 'fissure',
};

export const frenchFigureWords: FigureWords = {
  traceTitle: (id) => `Résistance au forage le long de ${id}`,
  traceDescription:
    'Résistance au forage en pour cent de la pleine échelle, selon la profondeur le long de l’aiguille. Zones à partir de l’entrée :',
  wall: 'paroi résiduelle',
  wallAtLeast: 'paroi résiduelle d’au moins',
  offRadial: 'par rapport au rayon',
  down: 'vers le bas',
  resistanceAxis: 'résistance, %',
  referenceTitle: 'Niveau du bois sain de cet arbre, frottement modélisé compris',
  frictionTitle: 'Frottement modélisé de la tige',
  frictionLegend: 'frottement de la tige',
  referenceLegend: (level, sd) => `bois sain ${level} ± ${sd} %, frottement compris`,
  confidence: 'confiance',
  drilling: 'Forage',
  flare: 'Contrefort racinaire',
  planTitle: (id) => `Section ${id} en plan, nord en haut`,
  planDescription: (drillings) => `Plan de la section : contour, état du bois et forages (${drillings}).`,
  soundShare: (p50, p05, p95) => `Part de bois sain : ${p50} (${p05} à ${p95}).`,
  soundnessTitle: 'État du bois, estimation médiane',
  littleKnown: 'Mal connu ici : l’écart type de l’état du bois dépasse 0,25',
  littleKnownShort: 'mal connu',
  surface: {
    sound: 'surface trouvée saine',
    decayed: 'surface pourrie',
    open: 'cavité ouverte',
  },
  clockwiseTo: 'dans le sens horaire jusqu’à',
  tracedTitle: 'Relevé sur la section abattue',
  traced: { unsound: 'relevé : sans résistance', incipient: 'relevé : altéré' },
  felledTitle: (id) => `Section ${id} : état prévu et relevé après abattage, nord en haut`,
  tracedDescription: (share) =>
    `Par-dessus, le relevé après abattage : en réalité, ${share} du bois est sain.`,
  noStrength: 'sans résistance',
  soundWood: 'sain',
  alongNeedles: 'aiguilles',
  nextDrilling: 'prochain forage conseillé',
  next: 'prochain',
  shareSound: (percent) => `${percent} %`,
  notDrilled: 'non foré',
  northUp: 'Le nord est en haut',
  breakage: 'rupture du tronc',
  uprooting: 'basculement',
  remaining: 'résistance restante',
  safetyFactor: 'coefficient de sécurité',

  bandNote: 'médiane, 5 à 95 %',
  leastHere: 'minimum',
  limitLegend: (value) => `coefficient de sécurité ${value}`,
  roseDirection: 'Directions : vers où le tronc fléchirait (vers où souffle le vent).',
  roseLog: 'D’un cercle à l’autre le coefficient de sécurité double (échelle logarithmique).',
  remainingTitle: (id) => `Résistance restante en ${id} selon la direction de flexion`,
  safetyTitle: 'Coefficient de sécurité selon la direction',
  roseWorst: (what, direction, p50, p05, p95) =>
    `${what} : minimum vers ${direction}, ${p50} (${p05} à ${p95}).`,
  windTitle: 'Vent sur le houppier, par tranches, et moment produit',
  windDescription: (moment, span, gust, centre) =>
    `Le houppier comme une voile : pression de rafale selon la hauteur et moment au sol, ${moment} (${span}), pour une rafale de ${gust} ; la pression agit comme à ${centre}.`,
  pressureAxis: 'pression de rafale',
  centreOfPressure: 'centre de pression',
  momentAtGround: 'moment au sol',
  gust: 'rafale',
  heightAxis: 'hauteur au-dessus du sol',
  lean: (deg, toward) => `inclinaison ${deg}°, vers ${toward} ; dessinée dans le plan du vent`,
  crownArea: 'surface du houppier',
  criteriaTitle: 'Les règles du métier : distance à la limite',
  criteriaDescription: 'Un point par règle ; 1 est la limite, à sa droite la règle est respectée.',
  criteriaAxis: 'du côté sûr de la limite, fois',
  atLimit: 'limite',
  met: 'respectée',
  notMet: 'non respectée',
  doesNotApply: 'sans objet',
  towards: 'vers',
  gaugeTitle: 'Coefficient de sécurité dans la direction la plus défavorable',
  gaugeAxis: 'coefficient de sécurité (logarithmique)',
  pruningTitle: 'Ce que chaque réduction du houppier permettrait d’atteindre',
  pruningDescription: (points) =>
    `Part des tirages qui atteignent la sécurité voulue, selon la réduction de hauteur et d’envergure : ${points}.`,
  pruningAxis: 'réduction de hauteur et d’envergure',
  pruningReach: (safety) => `tirages dont la sécurité est d’au moins ${safety}`,
  pruningWanted: (confidence) => `voulu : ${confidence}`,
  combinedTitle: (id) => `Section ${id} en plan, entourée de la sécurité par direction, nord en haut`,
};

const plural = (n: number, one: string, many: string) => `${n} ${n < 2 ? one : many}`;

export const frenchReportWords: ReportWords = {
  language: 'fr',
  months: [
    'janvier',
    'février',
    'mars',
    'avril',
    'mai',
    'juin',
    'juillet',
    'août',
    'septembre',
    'octobre',
    'novembre',
    'décembre',
  ],
  page: (n, of) => `Page ${n} sur ${of}`,
  figure: 'Figure',
  photo: 'Photo',
  table: 'Tableau',
  continued: 'suite',
  contents: 'Sommaire',
  struck: 'Biffé par l’expert',
  kept: 'L’expert a demandé de biffer ce passage. Il demeure : réserves, limites, portée et chiffres sont toujours imprimés.',
  evidence: 'Le cas et les chiffres dont ce rapport est tiré, à conserver ou à vérifier :',
  logo: (firm) => `Logo de ${firm}`,
  title: 'Diagnostic de stabilité par forage',
  subtitle: (label, species) => [label, species].filter((s) => s !== '').join(', '),
  invented: 'Cas inventé : pour démonstration seulement, il ne décrit aucun arbre réel.',
  notRecorded: 'non relevé',

  facts: {
    client: 'Client',
    assessor: 'Expert',
    visited: 'Visite du',
    reported: 'Rapport du',
    place: 'Lieu',
    tree: 'Arbre',
    drilled: 'Forages',
    instrument: 'Appareil',
    weather: 'Météo',
    drilledCount: (sections, drillings, flares) =>
      `${plural(drillings, 'forage', 'forages')} sur ${plural(sections, 'section', 'sections')}` +
      (flares > 0 ? `, ${flares} sur les contreforts racinaires` : ''),
    calibrated: (date) => `étalonné le ${date}`,
    serial: (n) => `n° ${n}`,
    needle: (length) => `aiguille de ${length}`,
  },

  summary: {
    heading: 'Synthèse',
    terms: {
      asked: 'Question',
      found: 'Constat',
      sure: 'Certitude',
      risk: 'Risque',
      ask: 'À qui s’adresser',
    },
    ask: (who) =>
      `Sur ce rapport : ${who}. Pour les travaux sur l’arbre : un élagueur qualifié et assuré ; pour un arbre protégé ou en bord de route, d’abord l’autorité locale.`,
    askNobody: 'l’expert',
    whole: 'Le texte entier se trouve sous Décision.',
    asked: (client, tree) => `${client} demande si l’arbre (${tree}) peut tenir, et que faire.`,
    askedNoClient: (tree) => `L’arbre (${tree}) peut-il tenir, et que faut-il faire ?`,
    purpose: (text) => `Selon les termes du client : ${text}`,
    noDrillings: 'Aucun forage n’a été relevé : on ne sait rien du bois à l’intérieur du tronc.',
    foundNothing: (n) =>
      n === 1
        ? 'Le seul forage n’a rencontré aucune perte de résistance. Ce qui se trouve à côté et au-delà de son trajet n’est pas connu.'
        : `Aucun des ${n} forages n’a rencontré de perte de résistance. Ce qui se trouve entre leurs trajets et au-delà n’est pas connu.`,
    found: (hit, n, ids) =>
      `${hit} ${hit < 2 ? 'forage' : 'forages'} sur ${n} ${hit < 2 ? 'a' : 'ont'} rencontré du bois affaibli, pourri ou creux (${ids})` +
      (hit < n ? ' ; le long des autres, aucune perte de résistance n’a été trouvée.' : '.'),
    thinnest: (wall, id, toward) =>
      `La paroi intacte la plus mince mesure ${wall}, au forage ${id}, côté ${toward}.`,
    signs: (signs) => `Observé sur l’arbre : ${signs}.`,
    wind: (code, gust) => `le vent selon ${code}, une rafale de ${gust} au houppier`,
    howSure: (wind, mode, below1, below15) =>
      `Pour ${wind}, la chance d’un coefficient de sécurité (résistance sur charge) sous 1, où la défaillance est à attendre, est ${below1} par ${mode}, mode déterminant ; sous le seuil usuel de 1,5, ${below15}. Les intervalles contiennent la valeur avec une probabilité de 90 %, dans la limite des données relevées.`,
    thin: 'Les données sur l’ancrage sont trop minces pour décider.',
    likelihood: (years, standing) => `Probabilité de défaillance d’ici ${years} : ${standing}`,
    overall: (risk, target, part) => `Le risque le plus élevé est ${risk} : ${target}, touché par ${part}.`,
    table: (further) =>
      `Que faire, et pour quand${further > 0 ? ` (${plural(further, 'autre option possible', 'autres options possibles')} : voir Préconisations)` : ''}`,
    columns: ['Que faire', 'Pourquoi', 'Quand', 'Risque restant'],
    again: 'Faire réexaminer l’arbre',
    againWhy:
      'Plus tôt après tempête, travaux près des racines, nouvelle inclinaison, fissures du sol ou nouveaux carpophores.',
    cautions: 'Les réserves et limites en fin de rapport font partie de la réponse.',
    suggestedBy: 'Ce que suggèrent les chiffres',
    assessorSays: 'Ce que conclut l’expert',
  },

  modes: { breakage: 'rupture du tronc', uprooting: 'basculement' },

  advice: {
    exceeded:
      'Selon l’estimation médiane, le vent de calcul demande plus que ce que l’arbre peut supporter. Tenez personnes et biens hors de sa portée jusqu’à sa mise en sécurité ou jusqu’à ce qu’un essai ait montré mieux.',
    short:
      'Selon l’estimation médiane, l’arbre résiste au vent de calcul, mais sans la réserve usuelle de 1,5. Réduisez la charge, dégagez les abords par grand vent, ou poursuivez les essais ; décidez avec le client.',
    uncertain:
      'L’estimation médiane atteint la réserve usuelle de 1,5, mais pas sa borne inférieure. Il faut de meilleures données, ou moins de charge, avant de compter sur cette réserve.',
    thinAnchorage:
      'L’ancrage n’est jugé que d’après la taille de l’arbre et ses contreforts, ce qui est trop mince pour décider : un essai de traction vient d’abord.',
    enough:
      'La réserve usuelle de 1,5 est atteinte même à la borne inférieure. Ces chiffres seuls n’appellent pas de travaux sur l’arbre ; maintenez un contrôle régulier.',
    drillNext: (section, toward, worth, why) =>
      `Si un forage de plus est fait, faites-le à la section ${section}, azimut ${toward} : il devrait réduire la probabilité d’une mauvaise décision de ${worth}. ${why}`,
    drillStop: (why) => `Aucun forage de plus n’est conseillé. ${why}`,
  },

  decision: {
    heading: 'Décision',
    intro: (years) =>
      `Suggérée d’après les chiffres et les signes pour les ${years} à venir, et mise en regard de ce que dit l’expert. Les deux sont conservés et imprimés ; le mot de l’expert ne remplace la suggestion que s’il est motivé.`,
    years: (n) => plural(n, 'an', 'ans'),
    terms: {
      timeFrame: 'Horizon',
      governing: 'Ce qui détermine',
      chance: 'Chance de défaillance',
      likelihood: 'Probabilité de défaillance',
      risk: 'Risque global',
      assessor: 'Expert',
    },
    governing: (mode, toward, safety, section) =>
      `${mode}${section === null ? '' : ` à la section ${section}`}, vers ${toward} : coefficient de sécurité ${safety}.`,
    chance: (years, chance, even, stood, stoodYears) =>
      `D’ici ${years}, ${chance} si la plus forte rafale de chaque année vient du côté le plus défavorable à l’arbre ; ${even} si les rafales viennent également de tous les côtés. Étant donné qu’il a tenu les ${stoodYears} écoulés à peu près dans son état actuel, le premier chiffre est ${stood}.`,
    standing: {
      suggested: (suggested) =>
        `${suggested} : suggérée par les chiffres, pas encore confirmée par l’expert.`,
      confirmed: (suggested, _assessor, reason) =>
        `${suggested} : suggérée par les chiffres et confirmée par l’expert.${reason}`,
      overridden: (suggested, assessor, reason) =>
        `${assessor} selon l’expert, au lieu de ${suggested} que suggèrent les chiffres.${reason}`,
      'override refused': (suggested, assessor) =>
        `${suggested} selon les chiffres. L’expert a écrit ${assessor} sans motif : la suggestion demeure.`,
    },
    reason: (text) => ` Motif donné : ${text}`,
    overall: (risk, target, part) => `${risk} : ${target}, touché par ${part}.`,
    bySuggestion: (risk) => `Selon les seules suggestions, il serait ${risk}.`,
    noTargets: 'Aucune cible n’a été relevée, et sans cible il n’y a pas de risque à coter.',
    part: { 'whole tree': 'l’arbre', limb: 'une branche' },
    signedBy: (by, on) => [by, on].filter((s) => s !== '').join(', '),
    unsigned: 'Personne n’a encore confirmé ni modifié un mot de cette décision.',
    whyHeading: 'Pourquoi cette probabilité de défaillance',
    fifty: (yearly, fifty) =>
      `Rafales à 10 m (33 ft) en terrain dégagé : revenant chaque année, ${yearly} ; tous les 50 ans, ${fifty}.`,
    chanceTable: (years) => `Chance de défaillance par mode, en un an et d’ici ${years}`,
    chanceColumns: [
      'Mode',
      'Le plus probable vers',
      'En un an',
      'Sur l’horizon (intervalle à 90 %)',
      'Rafales de tous côtés',
    ],
    riskHeading: 'Risque par cible',
    riskIntro:
      'Chaque cible et chaque partie de l’arbre est cotée pour elle-même ; la cote la plus haute est celle de l’arbre, et les cotes ne sont jamais moyennées. Défaillance et impact donnent la probabilité de défaillance avec impact (première matrice) ; celle-ci et les conséquences donnent le risque (seconde matrice).',
    riskTable: 'Risque de chaque cible à travers les deux matrices',
    riskColumns: [
      'Cible, touchée par',
      'Défaillance',
      'Impact',
      'Défaillance et impact',
      'Conséquences',
      'Risque',
    ],
    judged: (taken, suggested) => `${taken} (suggéré : ${suggested})`,
    outOfReach: 'hors de portée',
    basisTable: 'D’où viennent les mots de chaque cible',
    basisColumns: ['Cible, touchée par', 'Comment'],
    first: 'Première matrice : probabilité de défaillance et d’impact',
    second: 'Seconde matrice : risque',
    firstCorner: 'Défaillance',
    secondCorner: 'Défaillance et impact',
    matrixNote:
      'Un point marque les cases où se trouvent les cibles de cet arbre. Matrices telles que publiées dans les bonnes pratiques du métier (Smiley, Matheny et Lilly 2017).',
    signsTable: 'Ce que les signes signifient pour la décision',
    signsColumns: ['Signe', 'Ce qu’il indique', 'Défaillance au moins', 'Source'],
    noFloor: '–',
    values: 'Valeurs utilisées pour la décision et le contrôle',
  },

  options: {
    heading: 'Préconisations',
    intro:
      'Ce qui peut être fait, le meilleur d’abord, avec ce que cela changerait quand cela se calcule. L’effet d’une taille suit la même chaîne que le coefficient de sécurité, avec les données publiées sur la taille et leur dispersion. Le risque restant est le plus élevé une fois la mesure prise. Les coûts sont laissés au lecteur.',
    table: 'Options et ce qu’elles changeraient',
    columns: [
      'Option',
      'Coefficient de sécurité avant → après',
      'Chance de défaillance',
      'Risque restant',
      'Quand',
      'Coût',
    ],
    safety: (before, after) => `${before} → ${after}`,
    noEffect: 'pas d’effet calculé',
    when: (priority, by) => (by === '' ? priority : `${priority} : ${by}`),
    atOnce: 'sans délai',
    by: (date) => `d’ici au ${date}`,
    within: (months) => `dans les ${months} mois suivant la visite`,
    chosen: 'retenu par le client',
    declined: 'écarté par le client',
    impermissible: 'plus que ne le permettent les règles de taille en une saison',
    limitsTable: 'Pourquoi, et jusqu’où va chaque option',
    limitsColumns: ['Option', 'Pourquoi', 'Limites', 'Source'],
    leastHeading: 'La plus faible taille qui atteint la sécurité voulue',
    leastCaption:
      'Ce que chaque réduction du houppier permettrait d’atteindre, en part des tirages ; en tirets : ce qui est voulu.',
    least: (safety, wanted, confidence, now) =>
      `Elle laisserait un coefficient de sécurité de ${safety} ; ${wanted} serait atteint dans ${confidence} des tirages, contre ${now} pour l’arbre tel qu’il est.`,
    againHeading: 'Quand réexaminer',
    again: (by) => `À réexaminer ${by}.`,
    againAtOnce: 'À réexaminer dès que les préconisations ont été suivies.',
    sooner: (events) => `Plus tôt : ${events}.`,
    wallYears: (id, slow, middle, fast) =>
      `Années avant que la paroi au forage ${id} ne s’amincisse jusqu’à la limite de la règle du métier : ${slow} si la pourriture progresse lentement, ${middle} à vitesse moyenne, ${fast} si elle est rapide. Aucune vitesse de pourriture n’est assez sûre pour s’y fier.`,
    never: 'jamais',
    drillHeading: 'Poursuivre les forages',
  },

  overview: {
    heading: 'La section et sa sécurité par direction',
    caption: (id, height) =>
      `Section ${id}, à ${height} du sol, entourée du coefficient de sécurité. À l’intérieur : la résistance attribuée au bois, les aiguilles sur leur trajet réel, et des hachures où l’on sait peu. À l’extérieur : le coefficient de sécurité pour chaque direction où le tronc fléchirait ; d’un cercle à l’autre il double.`,
    sectionCaption: (id, height) =>
      `Section ${id}, à ${height} du sol. À un contrefort racinaire : la part du bois foré sans perte de résistance.`,
    remainingCaption: (id) => `Résistance restante à la section ${id} selon la direction de flexion.`,
  },

  safety: {
    heading: 'Sécurité',
    intro:
      'Le coefficient de sécurité est ce que l’arbre peut supporter divisé par ce que le vent de calcul lui demande. Au-dessous de 1, il faut s’attendre à la défaillance dans ce vent ; 1,5 en estimation médiane est le seuil usuel des expertises statiques, une convention et non une promesse.',
    gaugeCaption:
      'Coefficient de sécurité dans la direction la plus défavorable, avec son intervalle à 90 %.',
    table: 'Coefficient de sécurité par direction (celle vers laquelle le tronc fléchit)',
    columns: (section) => ['Vers', `Résistance restante, ${section}`, 'À la rupture', 'Au basculement'],
    gustTable:
      'Rafale critique : la rafale de 3 secondes à 10 m (33 ft) en terrain dégagé pour laquelle la charge atteint la résistance',
    gustColumns: ['Mode', 'Estimation médiane', 'Intervalle à 90 %'],
    gustNote:
      'La rafale critique sert à comparer avec les prévisions et relevés de rafales. Ce n’est pas un vent auquel l’arbre est dit résister.',
    key: {
      strength: 'Résistance restante, minimum',
      breakage: 'Sécurité à la rupture',
      uprooting: 'Sécurité au basculement',
      chance: (years) => `Défaillance d’ici ${years}`,
      to: 'à',
      towards: (direction) => `flexion vers ${direction}`,
      chanceNote: (even) => `${even} si les rafales viennent de tous côtés`,
    },
  },

  criteria: {
    heading: 'Les règles du métier',
    intro:
      'Règles publiées pour les troncs pourris, évaluées à côté du diagnostic. Aucune ne connaît la hauteur, le houppier ni le vent ; chacune est donnée avec sa source et ce qu’elle laisse de côté.',
    caption: (id) => `Règles à la section ${id} : distance à la limite de chacune.`,
    table: (id) => `Règles à la section ${id}`,
    columns: [
      'Règle et source',
      'Ce qui est comparé',
      'Valeur',
      'Limite',
      'Respectée',
      'Ce qu’elle laisse de côté',
    ],
    yes: 'oui',
    no: 'non',
    none: 'sans objet',
  },

  begin: {
    depth: (depth) =>
      `Toutes les aiguilles visent le centre du tronc ; les horizontales vont à au moins ${depth} de profondeur. Suivez l’ordre donné.`,
    table: (id) => `Où commencer à forer à la section ${id}`,
    columns: ['', 'Où', 'Azimut', 'Hauteur', 'Vers le bas', 'Pourquoi'],
    place: {
      section: (id) => `section ${id}`,
      flare: (id) => `contrefort ${id}`,
    },
    level: 'horizontal',
  },

  change: frenchChangeWords,

  felled: {
    heading: 'La prévision face à la section abattue',
    intro:
      'La section a été vue après l’abattage et son bois altéré relevé. Ce relevé n’est entré dans aucun chiffre de ce rapport ; la prévision lui est ici comparée.',
    caption: (id) =>
      `Section ${id} : l’état qui était prévu et, par-dessus, les contours relevés après l’abattage.`,
    verdict: (id) => `La réalité était-elle dans l’intervalle ? Section ${id}`,
    inside: 'dans l’intervalle',
    outside: 'hors de l’intervalle',
    weakest: (toward, predicted, truth, word) =>
      `La résistance restante était prévue minimale vers ${toward}, ${predicted} ; en réalité elle y est de ${truth} : ${word}.`,
    weakestInTruth: (toward, truth, predicted, word) =>
      `En réalité elle est minimale vers ${toward}, ${truth}, où l’on prévoyait ${predicted} : ${word}.`,
    directions: (share) => `La réalité est dans l’intervalle pour ${share} des directions.`,
    soundShare: (truth, predicted, word) =>
      `Le bois sain occupe ${truth} de la surface ; on prévoyait ${predicted} : ${word}.`,
    table: (id) => `Résistance restante à la section ${id}, prévue et réelle`,
    columns: ['Vers', 'Prévue (intervalle à 90 %)', 'Réelle', 'La réalité est'],
    wallTable: (id, edge) => `Parois à la section ${id} le long des aiguilles, jusqu’à ${edge}`,
    wallColumns: ['Forage', 'Lue sur le tracé', 'Relevée', 'Écart', ''],
    wallsTo: {
      'first loss': 'la première perte',
      'no strength': 'du bois sans résistance',
    },
    findings: {
      edge: 'trouvée',
      none: 'aucun bord, ni l’un ni l’autre',
      missed: 'manquée : le tracé ne montre pas de bord',
      'false alarm': 'fausse alerte : pas de bord à cet endroit',
    },
    incipient: (share) => `Le bois altéré est compté à ${share} de sa résistance.`,
    source: (text) => `Le relevé : ${text}.`,
  },

  drillings: {
    heading: 'Forages',
    intro:
      'Tous les tracés sont dessinés à la même échelle, selon la profondeur le long de l’aiguille. Les bandes en dessous disent comment le bois est lu ; « sain » sur un dessin signifie qu’aucune perte de résistance au forage n’y a été trouvée. Le pourcentage est la probabilité de cette lecture.',
    sectionHeading: (id, height) => `Section ${id}, à ${height} du sol`,
    caption: (id, toward) => `Forage ${id}, entré à ${toward}.`,
    table: (place) =>
      `Zones des forages, ${place}, profondeur le long de l’aiguille depuis le début du tracé`,
    ofSection: (id) => `section ${id}`,
    ofFlares: 'contreforts racinaires',
    columns: ['Forage', 'Lecture', 'De', 'À', 'Longueur', 'Probabilité'],
    noLoss: 'Le long de l’aiguille, aucune perte de résistance au forage n’a été trouvée.',
    loss: (kinds, from) =>
      `Une perte de résistance au forage a été trouvée : ${kinds}. Elle commence à une profondeur de ${from}.`,
    wall: (wall) => `Paroi de bois sans perte, du cambium vers l’intérieur : ${wall}.`,
    wallAtLeast: (wall) =>
      `Paroi de bois sans perte, du cambium vers l’intérieur : au moins ${wall} ; l’aiguille n’en a pas rencontré la fin.`,
    reference: (level, sd, from) =>
      `Le bois sain de cet arbre est pris à ${level} ± ${sd} % de la pleine échelle, frottement de la tige déduit (d’après ${from}).`,
    restsOn: {
      'this trace': 'ce seul tracé',
      'all drillings of the tree': 'l’ensemble des forages de l’arbre',
    },
    pose: (off, down) =>
      `L’aiguille s’écartait de ${off} du rayon (sens horaire vu d’en haut) et de ${down} sous l’horizontale.`,
    summaryTable: (id) => `Forages de la section ${id} en bref`,
    summaryColumns: ['Forage', 'Entré à', 'Lecture', 'Paroi sans perte', 'Intervalle à 90 %'],
    noLossShort: 'aucune perte trouvée',
    atLeast: 'au moins',
    none: 'Aucun forage n’a été fait ici.',
    strip: {
      terms: {
        photo: 'Bande de papier',
        chart: 'Son diagramme',
        scale: 'Son échelle',
        read: 'Ce qui en est lu',
      },
      found: (by, sure, corners) =>
        `Coins trouvés d’après ${
          { frame: 'le cadre imprimé', grid: 'la grille imprimée', axes: 'les axes imprimés' }[by]
        } (sûreté ${sure}), dans le sens horaire depuis le coin supérieur gauche du diagramme : ${corners} px sur la photo.`,
      byHand: (corners) =>
        `Coins placés à la main, dans le sens horaire depuis le coin supérieur gauche du diagramme : ${corners} px sur la photo.`,
      scale: (left, right, bottom, top, from) =>
        `Profondeur de ${left} au bord gauche à ${right} au bord droit, résistance de ${bottom} % au bord inférieur à ${top} % au bord supérieur, ${from}.`,
      scaleFrom: {
        given: 'donnée par l’expert',
        taps: 'd’après deux points marqués de profondeur connue',
        ruler: 'd’après deux points marqués à une distance connue',
        'printed numbers': 'd’après les nombres imprimés sur le diagramme',
      },
      share: (share) => `${share} de la largeur du diagramme.`,
      leftOut: (where) => `Illisible et laissé de côté : ${where}.`,
      unsure: (where) => `Lu mais incertain : ${where}.`,
      drawn: (where) => `Tracé à la main : ${where}.`,
      others: (count) => `${count} plus courtes`,
    },
  },

  zones: {
    air: 'air',
    bark: 'écorce',
    sound: 'aucune perte de résistance trouvée',
    incipient: 'altération débutante (première perte)',
    decayed: 'bois pourri',
    void: 'cavité',
    crack: 'fissure',
  },

  anchorage: {
    heading: 'Contreforts racinaires et ancrage',
    basis: (text) => `Sur quoi reposent les chiffres du basculement : ${text}`,
    tooThin: 'Ces données sont trop minces pour décider. Un essai de traction trancherait.',
    table: 'Contreforts racinaires',
    columns: ['Contrefort', 'À', 'Largeur', 'Hauteur', 'Part du bois foré sans perte'],
    notDrilled: 'non foré',
    noFlares:
      'Aucun contrefort racinaire n’a été relevé. Une pourriture des racines sous terre peut renverser un arbre au tronc sain ; rien ici n’en dit quoi que ce soit.',
  },

  load: {
    heading: 'Vent et charge',
    intro: (code, speed, terrain) =>
      `Vent selon ${code} : vitesse de référence ${speed}, ${terrain}. Le houppier est une voile découpée en tranches ; la traînée diminue avec la vitesse du vent comme le montrent les essais publiés ; le poids propre de l’arbre s’ajoute par son inclinaison.`,
    terrain: (t) => `catégorie de terrain ${t}`,
    exposure: (e) => `exposition ${e}`,
    basis: (source) => `Vitesse de référence d’après : ${source}.`,
    caption: 'Le houppier par tranches, la pression de rafale selon la hauteur et le moment au sol.',
    table: 'Charge dans la direction la plus défavorable',
    columns: ['Grandeur', 'Estimation médiane', 'Intervalle à 90 % ou base'],
    moment: 'Moment fléchissant au sol',
    windPart: 'dont le vent',
    weightPart: 'dont le poids propre par l’inclinaison',
    gust: 'Rafale de pointe au centre de pression',
    centre: 'Hauteur du centre de pression',
    area: 'Surface au vent du houppier',
    intact: (id) => `Module de flexion en ${id} si tout le bois était sain, direction minimale`,
    atSection: (id, height) => `Moment fléchissant à la section ${id}, à ${height} du sol`,
    values: 'Valeurs utilisées pour le vent et la charge',
    valueColumns: ['Valeur', 'Montant', 'Dispersion', 'Source'],
    byCode: 'selon la norme',
    estimate: 'd’après les dimensions relevées',
  },

  wood: {
    heading: 'Bois',
    matched: (species, row) =>
      species === row
        ? `Les résistances sont celles tabulées pour ${row}.`
        : `L’arbre a été relevé comme ${species} ; les résistances sont celles tabulées pour ${row}.`,
    unmatched: (species) =>
      `${species} n’est pas dans la table des résistances : des valeurs par défaut larges ont été prises, et l’intervalle élargi d’autant.`,
    table: 'Valeurs utilisées pour le bois',
    safetyValues: 'Valeurs utilisées pour la résistance et la sécurité',
  },

  record: {
    heading: 'Ce qui a été relevé',
    treeTable: 'Arbre et site',
    columns: ['Quoi', 'Tel que relevé'],
    signsTable: 'Signes observés',
    signColumns: ['Signe', 'Où', 'Note'],
    noSigns: 'Aucun signe de pourriture, de dommage ou de mouvement n’a été relevé.',
    targetsTable: 'Cibles : ce que l’arbre pourrait toucher',
    targetColumns: ['Cible', 'Fréquence de présence', 'Distance', 'Direction'],
    noTargets: 'Aucune cible n’a été relevée. Sans cible, il n’y a pas de risque à coter.',
    noticesHeading: 'Avertissements du diagnostic',
    notices: 'Points que le lecteur doit connaître avant de s’appuyer sur les chiffres.',
    label: 'Repère',
    species: 'Essence',
    diameter: 'Diamètre du tronc à hauteur de poitrine',
    height: 'Hauteur',
    lean: 'Inclinaison',
    leanText: (deg, toward) => `${deg}° vers ${toward}`,
    noLean: 'aucune relevée',
    crown: 'Houppier',
    crownText: (shape, base, width, leaf) =>
      `${shape}, à partir de ${base} de hauteur, ${width} de large, ${leaf}`,
    inLeaf: 'en feuilles',
    leafless: 'sans feuilles',
    section: (id) => `Section ${id}`,
    sectionText: (height, outline, bark) => `à ${height} du sol ; contour ${outline} ; écorce ${bark}`,
    outlines: {
      circle: 'd’après la circonférence, en cercle',
      ellipse: 'd’après deux diamètres, en ellipse',
      radii: 'd’après des rayons, reliés en courbe lisse',
      polygon: 'd’après des points levés',
    },
    notes: 'Notes',
    severity: { note: 'Note', caution: 'Attention', serious: 'Grave' },
  },

  method: {
    heading: 'La méthode en termes simples',
    paragraphs: [
      'Zones. Une fine aiguille est enfoncée dans le tronc à vitesse constante et la résistance à sa rotation est enregistrée. Le tracé est lu par une segmentation à durées explicites (semi-markovienne) : parmi toutes les façons de le découper en écorce, bois sain, altéré, pourri, cavité et fissure, la plus probable est trouvée par programmation dynamique exacte, et la probabilité de chaque lecture est sommée sur toutes les autres. Le frottement de la tige fait partie du modèle : il croît dans le bois et reste constant à travers un vide.',
      'État de la section. Entre les forages, le bois est décrit par un champ aléatoire (processus gaussien sur un maillage polaire, corrélé plus loin autour du tronc qu’en travers) qui s’accorde avec chaque forage le long de son trajet réel. On en tire de nombreuses sections possibles ; elles s’accordent là où le tronc a été foré et diffèrent ailleurs. Cette différence est l’incertitude montrée.',
      'Résistance par direction. Chaque section tirée est fléchie par le calcul dans toutes les directions. La plus grande contrainte de fibre dans le bois suit de la flexion déviée générale, \u03c3(r) = M u\u1d40 J\u207b\u00b9 (r \u2212 c), où J réunit les moments quadratiques centraux du bois restant et c est son centre de gravité. La résistance restante est la capacité ainsi trouvée, rapportée à celle du même contour entièrement sain.',
      'Vent. La pression de rafale à chaque hauteur suit la norme de vent ; la force sur chaque tranche du houppier est la pression multipliée par la largeur et par un coefficient de traînée qui diminue avec la vitesse ; le moment est la somme des forces par leur hauteur, M = \u03a3 q C w h \u0394z, et le poids propre de l’arbre s’ajoute par son inclinaison.',
      'Sécurité. Coefficient de sécurité = résistance sur charge, tiré de nombreuses fois avec la dispersion de la résistance du bois, de la traînée, de la section et de l’ancrage. La médiane est l’estimation ; les points à 5 % et 95 % bornent l’intervalle. La rafale critique est celle pour laquelle la charge atteint la résistance, M croissant avec le carré de la vitesse.',
      'Ancrage. Relations publiées entre la taille d’un arbre et le moment qui le fait basculer, avec leur dispersion, réduites là où des contreforts ont perdu du bois sain ou si des signes le disent. Leur dispersion est grande, et un chiffre fondé sur la seule taille est une preuve faible.',
    ],
  },

  sources: {
    heading: 'Sources',
    intro:
      'Toutes les sources et bases d’une valeur, d’une règle ou d’une méthode, dans l’ordre de première utilisation. Ce qui est marqué « de mémoire », « jugement » ou « proposition » ne repose pas sur un texte lu pour cela.',
  },

  limits: {
    heading: 'Réserves et limites',
    items: [
      'Ce rapport n’est pas une garantie. Un arbre, quel que soit son coefficient de sécurité, peut céder, et un arbre au-dessous de tous les seuils peut tenir. Les chiffres valent pour le jour de la visite et pour les données relevées.',
      'Le forage ne voit que le trajet de l’aiguille. Pourriture, fissures et cavités à côté ou au-delà, dans les racines sous terre et dans le haut du houppier, peuvent lui échapper.',
      'La pourriture n’abaisse pas toujours la résistance au forage. La pourriture molle, et la pourriture brune à ses débuts, peuvent laisser un bois dur au forage et cassant : un tracé peut paraître meilleur que le bois. Si de tels champignons sont parmi les signes, fiez-vous moins aux tracés.',
      'Le bois gorgé d’eau, le bois de réaction, les nœuds, les insertions de branches et le bois juvénile près de la moelle se lisent autrement que le bois sain ordinaire et peuvent être mal lus.',
      'Chaque forage blesse l’arbre et peut ouvrir une voie à la pourriture. Ne forez que ce que la décision exige, avec une aiguille propre.',
      'L’ancrage estimé d’après la taille et les contreforts est très dispersé. Lorsque le basculement est déterminant, un essai de traction est la meilleure preuve.',
      'Le vent de la norme est un vent de calcul, non une prévision. Rafales locales, abri récemment perdu, tempêtes hors du commun, neige et glace n’y sont pas.',
      'Les règlements locaux, arrêtés, protections et professions réglementées passent avant tout ce que dit ce rapport. Les travaux sur l’arbre, les pesticides et les fouilles reviennent à ceux qui y sont qualifiés et habilités.',
      'Les chiffres sont calculés à partir des données listées en annexe. Changez une donnée et ils changent ; ils ne doivent pas être reportés sur un autre arbre ni à une autre date.',
    ],
  },

  definitions: {
    heading: 'Termes',
    items: [
      {
        term: 'Azimut, direction',
        text: 'Degrés dans le sens horaire à partir du nord. La direction d’une charge est celle vers laquelle le tronc fléchit, c’est-à-dire vers où souffle le vent.',
      },
      {
        term: 'Résistance au forage',
        text: 'Ce que coûte la rotation de l’aiguille, en pour cent de la pleine échelle de l’appareil. Elle suit la densité du bois à la pointe, plus le frottement de la tige.',
      },
      {
        term: 'Aucune perte de résistance au forage trouvée',
        text: 'Le tracé reste au niveau du bois de pleine résistance de cet arbre. Cela ne prouve pas que le bois soit intact.',
      },
      {
        term: 'Paroi résiduelle',
        text: 'Bois sans perte entre le cambium (sous l’écorce) et le premier bois qui a perdu de la résistance, le long de l’aiguille.',
      },
      {
        term: 'État du bois',
        text: 'De 0 (aucune résistance) à 1 (pleine résistance), pour chaque point de la section.',
      },
      {
        term: 'Résistance restante',
        text: 'Capacité en flexion de la section telle qu’elle est, rapportée à celle du même contour sous écorce si tout son bois était sain.',
      },
      {
        term: 'Coefficient de sécurité',
        text: 'Résistance sur charge dans le vent de calcul. Au-dessous de 1, il faut s’attendre à la défaillance dans ce vent.',
      },
      {
        term: 'Estimation médiane et intervalle',
        text: 'La médiane, et les points à 5 % et 95 % : la valeur est placée dans l’intervalle avec une probabilité de 90 %, selon les données relevées et la dispersion publiée.',
      },
      {
        term: 'Rafale critique',
        text: 'La rafale de 3 secondes à 10 m (33 ft) en terrain dégagé pour laquelle charge et résistance sont égales.',
      },
    ],
  },

  signOff: {
    heading: 'Signature',
    statement:
      'Les observations et mesures relevées sont les miennes ou ont été faites sous ma direction. J’ai examiné chaque tracé et sa lecture, et j’ai confirmé ou corrigé ce que suggèrent les chiffres.',
    name: 'Nom',
    credential: 'Qualification',
    firm: 'Entreprise',
    date: 'Date',
    interests: 'Intérêts à déclarer',
    signature: 'Signature',
    place: 'Lieu',
    notSigned: 'non signé',
    signedInType: (name) => `${name} (signé en toutes lettres)`,
    imageMissing: (path) => `non signé : l’image ${path} manque ou ne peut être imprimée`,
    reported: (date) => `${date}, non signé`,
  },

  changes: {
    heading: 'Ce que l’expert a biffé et ajouté',
    intro:
      'Rien n’a été enlevé : le texte biffé reste lisible, et les ajouts sont marqués à leur place. Les chiffres ne peuvent être changés à la main ; « standfast verify » nomme chacun de ceux qui l’auraient été.',
    table: 'Modifications de l’expert',
    columns: ['Modification', 'Où', 'Texte'],
    kinds: { struck: 'biffé', kept: 'demande de biffer, maintenu', added: 'ajouté' },
    notFound: 'Ce passage n’est pas dans ce rapport.',
    theAssessor: 'l’expert',
    added: (by, on) => `Ajouté par ${by}${on === null ? '' : `, ${on}`}`,
  },

  photos: {
    heading: 'Photos',
    intro:
      'Les photos que nomme le relevé, chacune avec son empreinte (SHA-256). Elles se trouvent dans le cas joint telles qu’imprimées ici.',
    drilling: (id) => `forage ${id}`,
    section: (id) => `section ${id}`,
    flare: (id) => `contrefort racinaire ${id}`,
    at: (place, azimuth) => `${place} à ${azimuth}`,
    felled: (id) => `section ${id} après abattage`,
    height: (height) => `à ${height} du sol`,
    file: (path, width, height) => `${path}, ${width} × ${height} px.`,
    fingerprint: (hex) => `SHA-256 ${hex}.`,
    reduced: (hex, megabytes) =>
      `Réduite pour le rapport ; originale de ${megabytes} Mo, SHA-256 ${hex}, conservée par l’expert.`,
    missing: (path) => `Manquante : le relevé nomme ${path}, qui n’est pas dans le cas.`,
    notPrinted: (path) =>
      `Non imprimée : ${path} n’est pas un JPEG ou PNG entier. Elle est conservée dans le cas joint.`,
    inCase: (path) => `${path}, dans le cas.`,
  },

  worked: {
    heading: 'Les chiffres refaits à la main : vent, moment, contrainte, sécurité',
    intro:
      'Chaque équation avec sa source et les valeurs médianes de cet arbre. Le programme tire chaque valeur incertaine de nombreuses fois : ses estimations médianes diffèrent donc un peu des produits de valeurs médianes ; les deux sont donnés.',
    table: (mode, toward) => `Du vent à la sécurité : le mode déterminant est ${mode}, vers ${toward}`,
    columns: ['Étape', 'Équation', 'Avec les nombres de cet arbre', 'Source'],
    pressure: 'Pression de rafale au centre de pression du houppier',
    strip: 'Moment d’une tranche du houppier, au centre de pression',
    wind: 'Moment du vent au sol',
    strips: (n, sum) => `somme sur ${n} tranches, tronc nu compris : ${sum}`,
    weight: 'Moment du poids propre de l’arbre par son inclinaison',
    noLean: 'aucune inclinaison relevée : 0',
    together: 'Les deux ensemble, vers la direction',
    ofDraws: (value, range) => `estimation médiane des tirages ${value} (${range})`,
    modulus: (id) => `Module de flexion restant à la section ${id}`,
    stress: (id) => `Plus grande contrainte à la section ${id}`,
    strength: 'Résistance du tronc vert au premier écrasement',
    breakage: 'Sécurité à la rupture',
    anchorage: 'Moment de basculement, d’après la taille',
    relations: (n) => (n === 1 ? 'une relation' : `${n} relations`),
    reduced: (moment) =>
      `sol, contreforts, coupes et essais pris en compte, la sécurité médiane revient à ${moment}`,
    uprooting: 'Sécurité au basculement',
    critical: 'Rafale critique à 10 m en terrain dégagé',
    chance: (years) => `Chance de défaillance d’ici ${years}`,
    gusts: (yearly, fifty) =>
      `rafales revenant chaque année ${yearly}, tous les 50 ans ${fifty} ; sur tous les tirages`,
    others: 'Autres équations, et leur origine',
    sources: {
      eurocode: 'EN 1991-1-4:2005, 4.3 à 4.5',
      asce: (code) => `${code}, chapitre 26`,
      statics: 'statique',
      bending: 'flexion déviée d’une poutre (Euler et Bernoulli)',
      gusts: 'loi de Gumbel des rafales annuelles',
    },
    equations: [
      'Moments de surface du bois restant, par le contour de la section : A = \u00bd\u222ew, \u222bx\u00b2dA = \u00bc\u222ex\u00b2w, avec w = x dy \u2212 y dx (théorème de Green).',
      'Contrainte en un point r de la section sous un moment M vers le vecteur unitaire u : \u03c3(r) = M u\u1d40 J\u207b\u00b9 (r \u2212 c) ; résistance restante = max|\u03c3| tout sain sur max|\u03c3| tel quel (flexion de sections dissymétriques ; tout manuel de résistance des matériaux).',
      'Contour par les rayons mesurés : spline cubique périodique de ln r (de Boor 1978) à pentes retenues (Hyman 1983).',
      'Zones d’un tracé : la suite la plus probable d’un modèle de Markov caché à durées explicites, par programmation dynamique (Rabiner 1989) ; probabilités par sommes avant et arrière.',
      'État du bois entre les aiguilles : processus gaussien conditionné par les forages, E[f] = k\u1d40 (K + N)\u207b\u00b9 y (Rasmussen et Williams 2006), dont on tire de nombreuses sections.',
      'Rafale critique avec inclinaison : |\u03bb M_w u + M_g u_lean| = M_R résolu en \u03bb ; rafale = rafale de calcul \u00b7 \u221a\u03bb tant que la traînée ne diminue pas avec la vitesse (au-delà de 20 m/s).',
      'Tirages : échantillonnage stratifié, un dans chacune de n tranches égales de probabilité (McKay, Beckman et Conover 1979).',
    ],
  },

  annex: {
    heading: 'Annexe : à partir de quoi les chiffres ont été calculés',
    table: 'Calcul',
    columns: ['Quoi', 'Valeur'],
    engine: 'Version du moteur de calcul',
    seed: 'Graine des tirages aléatoires',
    draws: 'Nombre de tirages',
    fingerprint: 'Empreinte du cas (SHA-256)',
    verify:
      'Le cas et les chiffres sont joints à ce rapport ; « standfast verify » les recalcule et dit lesquels tiennent.',
    repeat: 'Les mêmes données, version, graine et nombre de tirages redonnent les mêmes chiffres.',
    ownTexts: (keys) =>
      `Textes dans les termes propres à l’entreprise : ${keys}. Tous les autres sont ceux de ce programme.`,
    poses: 'Positions des forages',
    poseColumns: [
      'Forage',
      'À',
      'Écart au rayon',
      'Sous l’horizontale',
      'Écorce dès',
      'Bois dès',
      'Tracé jusqu’à',
    ],
    moments: 'Moment fléchissant au sol par direction',
    momentColumns: ['Vers', 'Estimation médiane', 'Intervalle à 90 %'],
    warnings: 'Avertissements sur certains forages',
  },

  scope: {
    heading: 'Portée',
    text: 'Ceci est un diagnostic approfondi (niveau 3) du tronc aux sections nommées et des contreforts racinaires forés. Branches, houppier et racines sous terre n’ont pas été examinés aux instruments. Probabilité de défaillance, probabilité d’impact et conséquences sont des suggestions tant que l’expert ne les a pas confirmées. Il vaut jusqu’au prochain contrôle ou jusqu’à ce que l’arbre ou ses abords changent, selon ce qui vient en premier.',
  },

  chance: {
    none: 'moins de 1 sur 200',
    even: 'environ une sur deux',
    oneIn: (n) => `environ 1 sur ${n}`,
    of: (k, n) => `environ ${k} sur ${n}`,
    certain: 'plus de 199 sur 200',
  },
};
