/** Words of the return visit, in drawings and in the report, in French. */
import type { ChangeWords } from './en.ts';

export const frenchChangeWords: ChangeWords = {
  figures: {
    traces: (id) =>
      `Forage ${id} avant et maintenant, à une même échelle de profondeur, le même bois l’un au-dessus de l’autre`,
    before: (date) => `avant, ${date}`,
    now: (date) => `maintenant, ${date}`,
    difference: 'différence',
    cambium: 'cambium',
    front: 'front',
    grown: (length) => `accru de ${length}`,
    moved: (length) => `front ${length}`,
    section: (id) => `Section ${id} avant, maintenant et la différence, nord en haut`,
    lost: 'plus sain avant que maintenant',
    lostPossible: 'peut-être',
    gained: 'plus sain maintenant',
    newWood: 'bois nouveau',
    safety: 'Sécurité à la rupture, avant et maintenant, par direction',
    safetyThen: 'avant (médiane, 5 à 95 %)',
    safetyNow: 'maintenant (médiane, 5 à 95 %)',
    fan: 'Sécurité du tronc dans les années à venir',
    fanYears: 'années depuis cette visite',
    fanAxis: 'coefficient de sécurité à la rupture (logarithmique)',
    fanBand: '5 à 95 %',
    fanMiddle: 'estimation médiane',
    nextVisit: 'prochaine visite',
    fanPoint: (year, value) => `dans ${year} ans ${value}`,
  },
  heading: (date) => `Évolution depuis le ${date}`,
  headingNoDate: 'Évolution depuis la visite précédente',
  intro: (years) =>
    `Les mêmes endroits ont été forés à ${years} ans d’écart. Les tracés de chaque paire sont superposés d’après le dessin des cernes, de sorte que l’accroissement sous l’écorce et l’avancée de la pourriture se distinguent. Un second trou n’est jamais au même endroit que le premier : cela, la lecture des deux tracés et leur superposition sont dans chaque intervalle. Une avancée vers l’écorce compte en positif.`,
  introNoYears:
    'Les mêmes endroits ont été forés lors de deux visites. Une date manque : ni vitesse ni prévision ne peuvent être données. Une avancée vers l’écorce compte en positif.',
  key: {
    front: 'Front de pourriture',
    frontValue: (moved, all) => `avancé à ${moved} sur ${all}`,
    frontNone: 'aucun front rencontré',
    frontNote: (still, unclear) => `immobile dans la marge d’erreur à ${still} ; indécidable à ${unclear}`,
    growth: 'Accroissement au cambium',
    growthValue: (least, most) => `${least} à ${most}`,
    growthNote: 'estimations médianes, de la plus faible à la plus forte',
    safety: 'Sécurité à la rupture',
    safetyValue: (before, now) => `${before} avant, ${now} maintenant`,
    safetyInterval: (range) => `différence ${range}`,
  },
  moved: (ids) => `La pourriture a avancé vers l’écorce à ${ids}.`,
  still: (ids) => `Elle n’a pas avancé, dans la marge d’erreur d’un forage répété, à ${ids}.`,
  unclear: (ids) => `À ${ids}, on ne peut dire si elle a avancé.`,
  none: (ids) => `Aucune pourriture n’a été rencontrée lors des deux visites à ${ids}.`,
  safety: (before, now, difference, chance) =>
    `Le coefficient de sécurité à la rupture, dans la direction maintenant la plus défavorable, était de ${before} et est de ${now}. Pour un même arbre la différence est de ${difference} ; la probabilité qu’il soit plus bas maintenant est de ${chance}.`,
  held: (difference) =>
    `Une partie vient de ce qui a été relevé autrement, comme le houppier, le site ou les mesures de l’arbre. Ceux-ci tenus tels qu’ils étaient, la différence est de ${difference} : c’est ce que le bois a fait.`,
  uprooting: (before, now) =>
    `Au basculement il était de ${before} et est de ${now} ; ces forages n’ont mesuré des racines que les contreforts.`,
  drillingsHeading: 'Forage par forage',
  drillingsNote:
    'Tracé du haut : avant. Tracé du bas : maintenant. Celui du haut est placé de sorte que le même bois soit sur une même verticale : là où la ligne qui joint les fronts est verticale, le front est resté en place ; là où elle penche à gauche, la pourriture a avancé vers l’écorce. Le bois nouveau est entre les deux lignes du cambium.',
  caption: (id) => `Forage ${id} : l’ancien tracé en haut, le nouveau en bas.`,
  said: {
    moved: (front, rate) => `Le front de pourriture a avancé de ${front} vers l’écorce${rate}.`,
    rate: (perYear) => `, soit environ ${perYear} par an`,
    'not moved': (front) =>
      `Le front de pourriture n’a pas avancé dans la marge d’erreur : ${front} vers l’écorce.`,
    'cannot tell': (front) => `On ne peut dire si le front de pourriture a avancé : ${front} vers l’écorce.`,
    neither: 'Aucune des deux aiguilles n’a rencontré de pourriture.',
    onlyThen:
      'La première aiguille a rencontré un front de pourriture et la seconde non : rien ne peut être dit de son avancée.',
    onlyNowMoved: (least) =>
      `La pourriture a été rencontrée là où la première aiguille traversait du bois sain : le front s’est approché de l’écorce d’au moins ${least}.`,
    onlyNow:
      'La pourriture a été rencontrée à peu près là où la première aiguille s’arrêtait : on ne peut dire si le front a avancé.',
    chances: (outward, stood, deeper, telling) =>
      `Probabilités : avancé de plus de ${telling} ${outward}, en place ${stood}, plus profond ${deeper}.`,
    growth: (length) => `Accroissement au cambium ${length}.`,
    wall: (before, now, difference) =>
      `Paroi résiduelle ${before} avant, ${now} maintenant, soit une différence de ${difference}.`,
    byRings: (chance, overlap) =>
      `Superposés d’après leurs cernes sur ${overlap} (probabilité qu’ils se répondent ${chance}).`,
    byBark:
      'Les cernes des deux tracés ne se répondent pas ; les profondeurs sont donc comparées depuis l’écorce et les intervalles sont larges.',
  },
  verdicts: {
    moved: 'avancé',
    'not moved': 'immobile dans la marge d’erreur',
    'cannot tell': 'indécidable',
    'no front': 'aucun front rencontré',
  },
  table: 'Accroissement, front de pourriture et paroi résiduelle de chaque forage (intervalles à 90 %)',
  columns: [
    '',
    'Accroissement',
    'Front vers l’écorce',
    'Verdict',
    'Paroi avant',
    'Paroi maintenant',
    'Différence',
  ],
  unmatched: 'Non comparés',
  onlyThen: (id) => `${id} de la visite précédente n’a pas été répété.`,
  onlyNow: (id) => `${id} ne répète aucun forage de la visite précédente.`,
  sectionCaption: (id) =>
    `Section ${id} avant, maintenant, et la différence des estimations médianes de l’état du bois : bois nouveau à l’extérieur, et les endroits où le bois se lit moins sain qu’avant.`,
  sectionSaid: (id, share, capacity, toward) =>
    `À la section ${id}, la résistance restante du bois, dans la direction où elle a le plus changé (vers ${toward}), a changé de ${share}. Avec le bois formé depuis, la section porte ${capacity} de ce qu’elle portait.`,
  safetyCaption: 'Sécurité à la rupture par direction : avant en hachures, maintenant en plein.',
  forecastHeading: 'Combien de temps',
  forecastCaption:
    'Sécurité à la rupture dans les années à venir, le houppier et le site restant tels qu’ils sont.',
  crossing: {
    already: (mark) => `La sécurité du tronc est déjà sous ${mark}.`,
    never: (mark, years, chance) =>
      `La sécurité du tronc ne devrait pas passer sous ${mark} dans les ${years} ans (probabilité ${chance}).`,
    unlikely: (mark, years, early, chance) =>
      `La sécurité du tronc reste plus probablement au-dessus de ${mark} pendant ${years} ans ; l’estimation précoce du passage en dessous est ${early} (probabilité dans les ${years} ans ${chance}).`,
    middle: (mark, when, early, late) =>
      `La sécurité du tronc passe sous ${mark} ${when} selon l’estimation médiane (estimation précoce ${early}, tardive ${late}).`,
    inYears: (years) => `dans environ ${years} ans`,
    now: 'dès maintenant',
    notWithin: (years) => `pas avant ${years} ans`,
    byVisit: (mark, chance, months) =>
      `Probabilité qu’elle soit sous ${mark} à la prochaine visite conseillée, dans ${months} mois : ${chance}.`,
  },
  basis: [
    'Chaque version tirée de la section est vieillie : la pourriture s’étend depuis le bois altéré à la vitesse mesurée près d’un forage et, ailleurs, comme le font d’ordinaire de tels fronts ; du bois nouveau se forme à l’extérieur là où le bois sous l’écorce est sain.',
    'La vitesse repose sur deux visites et sur ce que l’on sait de tels fronts. Un front peut rester en place des années puis franchir une barrière.',
    'Le houppier et le site restent tels qu’ils sont. Un houppier qui croît, ou un voisin disparu, rapproche l’échéance.',
    'Il s’agit de la rupture du tronc. L’ancrage ne peut être prévu d’après la section.',
  ],
  recorded: 'Relevé autrement qu’avant',
  recordedNote:
    'Une mesure reprise n’est pas un changement de l’arbre. Les signes sont comparés d’après leurs noms et emplacements tels qu’écrits.',
  recordedColumns: ['Quoi', 'Avant', 'Maintenant'],
  recordedNames: {
    'tree.species': 'essence',
    'tree.stemDiameterMm': 'diamètre du tronc',
    'tree.heightM': 'hauteur de l’arbre',
    'tree.leanDeg': 'inclinaison',
    'tree.leanTowardDeg': 'direction de l’inclinaison',
    'tree.crown.baseHeightM': 'base du houppier',
    'tree.crown.widthM': 'largeur du houppier',
    'tree.crown.shape': 'forme du houppier',
    'tree.crown.inLeaf': 'houppier en feuilles',
    'site.windCode': 'norme de vent',
    'site.basicWindSpeedMs': 'vitesse de vent de base',
    'site.basicWindReturnYears': 'période de retour de cette vitesse',
    'site.terrain': 'terrain',
    'site.soil': 'sol',
  },
  outlineOf: (id) => `rayon moyen sur écorce à ${id}`,
  heightOf: (id) => `hauteur de la section ${id}`,
  barkOf: (id) => `écorce à ${id}`,
  openingOf: (id) => `ouverture à ${id}`,
  noted: 'relevé',
  notNoted: '–',
};
