/** What the engine and the case's notices say, in French: one entry for each template of en.ts, with its places. */
import type { SentenceTable } from './en.ts';

export const frenchSentences: SentenceTable = {
  trace: {
    clipped:
      '{share} % des lectures sont au sommet de l’échelle : les différences dans le bois le plus dense sont perdues. Une rotation plus rapide ou une avance plus lente garderait le niveau dans l’échelle.',
    coarse:
      'Les lectures sont espacées de {spacing} en moyenne : fissures et poches étroites peuvent échapper entre elles.',
    spike: '1 pic plus étroit que la pointe de l’aiguille a été écarté.',
    spikes: '{n} pics plus étroits que la pointe de l’aiguille ont été écartés.',
    noneSound: 'Aucun bois de ce tracé ne se lit comme sain.',
    hardlySound:
      'Ce tracé ne contient presque pas de bois sain pour juger le reste, et aucun autre forage de l’arbre n’y supplée. Un forage dans du bois connu pour sain trancherait.',
    dip: 'Une courte baisse de niveau à {span}, comme à la moelle ou dans une bande de bois juvénile, est lue comme saine.',
    farSide:
      'La fin basse du tracé peut être une cavité, ou de l’air et de l’écorce au-delà du côté opposé : comparez la profondeur au diamètre du tronc.',
    endedUnsound:
      'L’aiguille s’est arrêtée dans du bois altéré : ce qui se trouve plus loin n’est pas connu.',
    friction:
      'Le frottement de la tige n’est pas bien connu dans ce tracé, si bien que bois faible et vide ne se distinguent pas sûrement. Gardez les premiers millimètres dans l’air, ou forez jusqu’à l’air, pour le fixer.',
    unsure: 'De {span}, la lecture « {zone} » est incertaine ({share} %).',
  },
  section: {
    openRule: 'Une ouverture a été relevée et la règle vaut pour les cavités fermées.',
    wagenerName: 'Wagener',
    wagener:
      'Prend tronc et cavité pour des cercles de même centre ; ignore la pourriture excentrée, les ouvertures, la charge et l’essence.',
    wagenerThin:
      'Prend tronc et cavité pour des cercles de même centre ; ignore la pourriture excentrée, les ouvertures, la charge et l’essence ; avec la paroi la plus mince tout autour, ce serait {share} %.',
    coderCaution: 'Coder, prudence',
    coderCautionNote:
      'De 20 % au seuil supérieur, l’auteur conseille la prudence ; prend tronc et cavité pour des cercles de même centre.',
    coderHazard: 'Coder, danger',
    coderHazardNote:
      'Le seuil supérieur est imprimé à 44 % dans un texte et à 50 % dans un autre ; le plus bas est utilisé ici ; prend tronc et cavité pour des cercles de même centre.',
    smileyFraedrich: 'Smiley et Fraedrich',
    smileyOpen:
      'Compte l’ouverture comme une part de paroi perdue ; sous-estime la perte quand la cavité est plus large que son ouverture, et ignore où se trouve l’ouverture.',
    smileyClosed: 'Sans ouverture relevée, elle est identique à celle de Wagener.',
    wallRatio: 'Rapport de paroi',
    wallRatioOpen:
      'Une ouverture a été relevée et la règle vaut pour les cavités fermées ; voir la règle de l’ouverture.',
    wallRatioNote:
      'Pour cavités fermées sous un houppier complet ; on cite 0,30 à 0,35 ; ignore charge, essence et taille, et un houppier réduit demande moins ; presque le même nombre que Wagener et la règle du pouce, donc pas une confirmation indépendante.',
    oneInch: 'Un pouce de bois sain pour six de diamètre',
    oneInchOpen: 'Une ouverture a été relevée ; les guides demandent alors jusqu’au double de paroi.',
    oneInchNote:
      'Identique à un rapport de paroi de 1/3 ; ignore charge, essence, ouvertures et où se trouve la paroi mince ; pas indépendante des autres règles de paroi.',
    plainBending: 'Paroi suffisante pour la flexion simple',
    plainBendingOpen: 'Une ouverture a été relevée et le résultat vaut pour des cavités fermées et vides.',
    plainBendingNote:
      'Au-dessous, une cavité droite et vide peut se fendre dans le sens du fil avant de rompre en flexion (au-dessous de 0,06 elle se plisse) ; établi pour un conifère, d’autres essences diffèrent quelque peu.',
    modulus: 'Perte de module de flexion selon les forages',
    modulusNoAzimuth: 'L’ouverture n’a pas d’azimut, elle n’est donc pas dans le chiffre.',
    modulusNote:
      'Parois excentrées et inégales comptées, dans la direction la plus faible ; sans limite publiée propre, 33 % est emprunté aux règles ci-dessus (Kane & Ryan 2004 les comparent ainsi) ; le bois entre {drillings} est supposé.',
    oneDrilling: '1 forage',
    drillings: '{n} forages',
    noWall: 'Aucun forage ne donne de paroi.',
    endedSoon: 'Des aiguilles se sont arrêtées dans du bois sain avant que la règle puisse être tranchée.',
    atMost: 'Au plus ceci : des aiguilles se sont arrêtées dans du bois sain.',
    atLeast: 'Au moins ceci : des aiguilles se sont arrêtées dans du bois sain.',
    opening: 'Ouverture de la cavité',
    noOpening: 'Aucune ouverture n’a été relevée.',
    openingNote:
      'Le seuil des cavités ouvertes, à la place du rapport de paroi ; ignore l’épaisseur de la paroi près de l’ouverture et la charge.',
    steepOne:
      '{ids} s’écarte de plus de {limit} degrés de l’horizontale et quitte le plan de la section abattue : aucune paroi n’a été comparée.',
    steep:
      '{ids} s’écartent de plus de {limit} degrés de l’horizontale et quittent le plan de la section abattue : aucune paroi n’a été comparée.',
    radiusShare: 't/R',
    diameterShare: 't/D',
    strengthLoss: 'perte de résistance',
    modulusLoss: 'perte de module de flexion',
    degreesOpen: 'degrés de circonférence',
  },
  first: {
    anew: 'La section {id} n’a pas été forée : sa résistance repose sur ce que sont de tels troncs en général. Commencez par le plan des premiers forages : {rest}',
    noPlace:
      '{sign} : sa place autour du tronc n’est pas relevée, aucune aiguille n’a donc été placée pour lui. Donnez son azimut.',
    elsewhere:
      '{n} des signes se trouvent à plus de {reach} au-dessus ou au-dessous de cette section et ont été laissés à une autre.',
    even: 'Pour une couverture régulière : la partie du tronc la plus éloignée des autres aiguilles.',
    evenFlares:
      'Pour une couverture régulière, dans le creux entre les contreforts {idA} et {idB} : l’aiguille y mesure la paroi et non la longueur d’une racine.',
    evenLobes:
      'Pour une couverture régulière, dans le creux entre deux lobes du contour : l’aiguille y mesure la paroi et non la longueur d’une racine.',
    flare:
      'Sur l’arête du contrefort, à {down} degrés vers le bas en direction du dessous de sa racine près du tronc, où commence la pourriture des racines.',
    flareSigns:
      'Sur l’arête du contrefort, à {down} degrés vers le bas en direction du dessous de sa racine près du tronc, où commence la pourriture des racines. {signs}.',
    anticlockwise: '{signs} : {why} ; cette aiguille entre à côté, dans le sens antihoraire vu d’en haut.',
    clockwise: '{signs} : {why} ; cette aiguille entre à côté, dans le sens horaire vu d’en haut.',
    signsBeside: '{signs} : {why}. À côté ({sign}) : {why2}.',
    signs: '{signs} : {why}.',
    wants:
      'La section {id} demande environ {n} aiguilles à son pourtour, tous les {apart} degrés, parce que {because} : {still}.',
    wantsHollows:
      'La section {id} demande environ {n} aiguilles à son pourtour, tous les {apart} degrés, parce que {because} : {still}, dans les creux du contour lorsqu’il y en a un proche.',
    evenSpacing: 'rien n’y a été vu qui parle de pourriture et que le contour est régulier',
    closeSigns: 'des signes de pourriture ont été vus sur le tronc',
    closeLobed: 'le contour est lobé',
    stout: 'le tronc y est fort, {wood} de bois en travers',
    thin: 'le tronc y est mince, {wood} de bois en travers',
    covered: 'les {n} déjà faits la couvrent',
    oneMore: 'un forage de plus y suffirait',
    more: '{drillings} de plus y suffiraient',
    withPlaces: 'avec les endroits où quelque chose a été vu, cela fait {n}',
    soOne: 'donc un forage',
    so: 'donc {drillings}',
    flaresOne: 'Les contreforts racinaires demandent un forage, sur l’arête.',
    flares: 'Les contreforts racinaires demandent {drillings}, un sur chaque arête.',
  },
  next: {
    noSection: 'Aucune section n’a été décrite : il n’y a où forer. Décrivez d’abord une section.',
    sure: 'La probabilité que le coefficient de sécurité à la rupture soit inférieur à {mark} est de {chance} : pour ce qui est de la résistance du tronc, la décision de {leaning} est fausse dans moins de {limit} de ce que permettent les forages, et aucun forage de plus ne changerait cela assez pour valoir sa blessure. L’ancrage est jugé à part.',
    littleWorth:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance}, mais le meilleur endroit pour un forage de plus ne l’abaisserait que de {worth} : même si la section était connue partout, il en resterait {known}, car cela vient du vent et de la résistance du bois plus que de la section. Un forage de plus ne vaut pas sa blessure ; un autre type d’essai le peut.',
    littleTold:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance}, mais le meilleur endroit pour un forage de plus ne l’abaisserait que de {worth} : la section connue partout n’en laisserait que {known}, mais ce qu’on en ignore se trouve là où les aiguilles n’apprennent plus grand-chose. Un forage de plus ne vaut pas sa blessure ; un essai qui voit toute la section le peut.',
    worth:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un forage à la section {id}, {azimuth}, devrait la ramener à {after}.',
    worthTurned:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un forage à la section {id}, {azimuth}, devrait la ramener à {after}. Tournez l’aiguille de {turned} vers la {side} par rapport à la moelle : elle y apprend davantage de la section.',
    worthTwo:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un forage à la section {id}, {azimuth}, n’y changerait guère à lui seul, mais c’est lui qui apprend le plus de la résistance ; avec le meilleur qui le suivrait, il devrait la ramener à {after}.',
    worthTwoTurned:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un forage à la section {id}, {azimuth}, n’y changerait guère à lui seul, mais c’est lui qui apprend le plus de la résistance ; avec le meilleur qui le suivrait, il devrait la ramener à {after}. Tournez l’aiguille de {turned} vers la {side} par rapport à la moelle : elle y apprend davantage de la section.',
    worthSeveral:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un ou deux forages n’y changeraient guère, mais le doute tient surtout à la section : connue partout, elle en laisserait {known}. Un forage à la section {id}, {azimuth}, apprend l’essentiel de ce qui n’est pas connu.',
    worthSeveralTurned:
      'Pour ce qui est de la rupture, la décision de {leaning} est fausse avec une probabilité de {chance} à présent. Un ou deux forages n’y changeraient guère, mais le doute tient surtout à la section : connue partout, elle en laisserait {known}. Un forage à la section {id}, {azimuth}, apprend l’essentiel de ce qui n’est pas connu. Tournez l’aiguille de {turned} vers la {side} par rapport à la moelle : elle y apprend davantage de la section.',
    right: 'droite',
    left: 'gauche',
    keep: 'conserver',
    act: 'intervenir',
  },
  wind: {
    basicAsce: 'vitesse de référence du vent (rafale de 3 secondes, 10 m, exposition C)',
    basicEurocode: 'vitesse de référence du vent (moyenne sur 10 minutes, 10 m, rase campagne)',
    alpha: 'exposant alpha de la loi de puissance, exposition {id} : {meaning}',
    gradient: 'hauteur de gradient de l’exposition {id}',
    mapped:
      'Une vitesse cartographiée de {recorded} revient tous les 700 ans environ (catégorie de risque II), alors que le seuil usuel de 1,5 vise une tempête des prochaines décennies : face à la vitesse cartographiée, l’épreuve est plus sévère. Donnez la rafale à 50 ans si c’est elle qu’entend le client.',
    evergreen:
      'L’essence garde ses feuilles : le houppier est pris en feuilles bien qu’il ait été relevé comme nu.',
    drag: 'coefficient de traînée du houppier ({group}, {leaf}) à {speed}, sur la silhouette en air calme',
    limber: 'feuillu souple',
    broadleaf: 'feuillu',
    stiff: 'feuillu rigide',
    pine: 'pin',
    dense: 'conifère dense',
    unknown: 'inconnu',
    inLeaf: 'en feuilles',
    bare: 'nu',
    roughness: 'longueur de rugosité du terrain {id} : {meaning}',
    leastHeight: 'hauteur minimale du terrain {id}',
    yearlyEurocode:
      'Plus forte rafale annuelle selon EN 1991-1-4 éq. 4.2 (loi de Gumbel du carré de la vitesse, K 0,2, n 0,5) ; {given}.',
    yearlyAsce:
      'Plus forte rafale annuelle selon le commentaire C26.5 d’ASCE 7 (V_T / V_50 = 0,36 + 0,1 ln 12T, hors ouragans ; de mémoire) ; {given}.',
    returnsStated:
      'la vitesse de référence est supposée revenir tous les {n} ans (comme indiqué pour le site)',
    returnsMap: 'la vitesse de référence est supposée revenir tous les {n} ans (carte de la norme)',
  },
  wood: {
    own: 'Pour {species}, la résistance à l’état vert {known} ; la source est {source}.',
    ownLow:
      'Pour {species}, la résistance à l’état vert {known} ; la source est {source}. Vérifiez-la avant de vous fier aux coefficients de sécurité.',
    checked: 'a été saisie de mémoire et recoupée',
    memory: 'a été saisie de mémoire',
    low: 'repose sur des valeurs de mémoire, arrondies ou empruntées',
    remedy: 'Cherchez la résistance à l’état vert de cette essence si la décision en dépend.',
    genus:
      '« {recorded} » n’a pas de ligne propre dans la table des bois ; la moyenne de {n} de son genre est prise, avec une dispersion élargie. {remedy}',
    quoted:
      'Aucune espèce du genre {species} n’est dans la table des bois ; sa résistance en compression est prise à {strength}, citée de mémoire d’après {source}, avec une large dispersion, et ses autres résistances en proportion. {remedy}',
    conifers:
      'Aucune espèce du genre {species} n’est dans la table des bois ; la moyenne de tous les conifères est prise, avec une large dispersion. {remedy}',
    broadleaves:
      'Aucune espèce du genre {species} n’est dans la table des bois ; la moyenne de tous les feuillus est prise, avec une large dispersion. {remedy}',
    unrecognised:
      '« {recorded} » n’est pas reconnu ; la moyenne de toutes les essences de la table des bois est prise, avec une large dispersion, et la traînée de même. Vérifiez l’orthographe, ou donnez le nom botanique.',
    second:
      'Un autre catalogue, {source} (cité de mémoire), donne {strength} pour la résistance en compression à l’état vert ({species}), {share} % de moins qu’ici : la sécurité à la rupture serait plus basse d’autant.',
    compression: 'résistance en compression axiale à l’état vert',
    bending: 'résistance en flexion à l’état vert',
    shear: 'résistance au cisaillement axial à l’état vert',
    elasticity: 'module d’élasticité à l’état vert',
    density: 'masse volumique à l’état vert',
    meanOf: '{species} (moyenne de {n})',
    secondCatalogue: '{species} (second catalogue)',
  },
  roots: {
    someDrilled:
      '{n} des {all} contreforts racinaires n’ont pas été forés ; ils sont pris comme la moyenne de ceux qui l’ont été.',
    noneDrilled:
      'Aucun contrefort racinaire n’a été foré : l’ancrage est estimé comme celui de racines saines, d’après la seule taille de l’arbre.',
    restricted: 'racines limitées d’un côté au moins',
    lostRoots: '{share} % des racines coupées ou altérées dans la direction la plus défavorable',
    lostFlares: '{share} % de la section des contreforts altérée dans la direction la plus défavorable',
    noBasisRoots:
      'Environ {share} % des racines sont coupées ou altérées dans la direction la plus défavorable ; les essais à racines coupées sont allés jusqu’à 50 %, la perte d’ancrage n’a donc pas de base mesurée ici.',
    noBasisFlares:
      'Environ {share} % de la section des contreforts est altérée dans la direction la plus défavorable ; les essais à racines coupées sont allés jusqu’à 50 %, la perte d’ancrage n’a donc pas de base mesurée ici.',
    actionRoots:
      'Environ {share} % des racines sont coupées ou altérées dans la direction la plus défavorable ; à partir d’un tiers, le métier demande d’agir. Source : {source}.',
    actionFlares:
      'Environ {share} % de la section des contreforts est altérée dans la direction la plus défavorable ; à partir d’un tiers, le métier demande d’agir. Source : {source}.',
    withinReach:
      '{n} des {all} coupes ou obstacles se trouvent à moins de {reach} du tronc (trois diamètres), où couper abaissait la force nécessaire pour renverser l’arbre (Smiley 2008). La perte comptée ici repose sur de jeunes chênes à feuilles de saule et érables rouges ; sa décroissance avec la distance est une proposition de ce projet.',
    beyondReach:
      'Toutes les coupes et tous les obstacles se trouvent au-delà de {reach} (trois diamètres), où aucune perte de force n’a été mesurée (Smiley 2008) ; aucune n’est comptée. Les racines fines et la santé de l’arbre sont une autre question.',
    lean: 'L’arbre penche de {lean} degrés. Les relations d’ancrage viennent d’arbres droits ; un arbre qui a grandi penché a des racines plus fortes contre sa pente, un arbre qui a bougé en a de plus faibles. Seul un essai de traction le dit.',
    testTilt:
      'L’essai a atteint {tilt} degrés ; il est ramené à {to} degrés entre une raideur constante et la pente moyenne de la courbe de basculement, ce qui élargit l’intervalle.',
    basisTest: 'Essai de traction dans 1 direction ; ailleurs la taille de l’arbre : {basis}.',
    basisTests: 'Essai de traction dans {n} directions ; ailleurs la taille de l’arbre : {basis}.',
    basisSize: 'La seule taille de l’arbre : {basis} ; aucune mesure de l’ancrage lui-même.',
    basisReduced: '{span}, réduit par {losses}',
    basisSpan: '{span} selon {n} relations avec le diamètre du tronc et la hauteur',
    lossesBoth: 'ce que les forages ont trouvé dans {flares} et les racines coupées ou gênées {sides}',
    lossesFlares: 'ce que les forages ont trouvé dans {flares}',
    lossesCuts: 'les racines coupées ou gênées {sides}',
    oneFlare: '1 contrefort racinaire',
    flares: '{n} contreforts racinaires',
    oneSide: 'd’un côté',
    sides: 'de {n} côtés',
    tooThin: 'Trop mince pour décider : un essai de traction est recommandé.',
    signWithSource: '{reading} Source : {source}.',
    bySize: 'moment de basculement d’après la taille ({value} {unit}), racines intactes, sol drainant',
    byStress:
      'moment de basculement d’après la contrainte du tronc ({value} {unit}), racines intactes, sol drainant',
    byMass:
      'moment de basculement d’après la masse du tronc ({value} {unit}), racines intactes, sol drainant',
    perM3: 'kN m par m3',
    perKg: 'N m par kg',
  },
  safety: {
    crushing: 'résistance du tronc au premier écrasement, qui détermine la sécurité à la rupture',
    breaking: 'résistance du tronc à la rupture (résistance en flexion), donnée à côté',
    bendingMiddle:
      'sécurité à la rupture sur la résistance en flexion vers {direction} degrés, estimation médiane',
    bendingLower:
      'sécurité à la rupture sur la résistance en flexion vers {direction} degrés, point inférieur à 5 %',
    dynamic: 'sécurité déterminante, estimation médiane, pour un facteur dynamique de {factor}',
    doubtsKnown: 'Relevé : {doubts}. Une estimation d’après la taille de l’arbre n’en sait rien.',
    doubtsMark:
      'La sécurité au basculement de {safety} est à cheval sur {mark} : une estimation d’après la taille s’écarte d’environ un tiers dans un sens ou l’autre, elle ne peut donc montrer {mark2} avec confiance qu’à partir d’une médiane proche de {value}.',
    thin: 'Les données sur l’ancrage sont trop minces pour décider. {why} Un essai de traction (traction mesurée avec l’inclinaison de la galette racinaire) est recommandé avant de conserver ou de condamner l’arbre sur son ancrage.',
    calm: 'Dans {n} tirages sur 100, le seul poids de l’arbre penché atteint la capacité ({mode}) par temps calme : l’estimation médiane de la rafale critique est de {gust}. Tenez les personnes à l’écart jusqu’à ce qu’il ait été examiné.',
    breakage: 'rupture',
    uprooting: 'basculement',
  },
  decision: {
    governs:
      'Le mode déterminant est {mode}, par vent vers le {toward} : une sécurité de {safety}, entre {low} et {high} (neuf fois sur dix).',
    breakingAt: 'la rupture du tronc à la section {id}',
    breaking: 'la rupture du tronc',
    uprooting: 'le basculement',
    chances:
      'La chance que le tronc ou les racines cèdent d’ici {frame} est d’environ {chance} si les plus fortes rafales viennent du côté le plus défavorable, {even} si elles viennent également de tous les côtés. Étant donné qu’il a tenu les {n} dernières années à peu près dans son état actuel, le premier chiffre est {stood}.',
    suggested: 'Probabilité de défaillance : {failure} (suggérée ; l’expert ne l’a pas encore confirmée).',
    confirmed: 'Probabilité de défaillance : {failure}, confirmée par l’expert.',
    confirmedBecause: 'Probabilité de défaillance : {failure}, confirmée par l’expert : {recorded}.',
    overridden:
      'Probabilité de défaillance : {failure} selon l’expert, où {failure2} était suggérée. Motif donné : {recorded}.',
    refused:
      'Probabilité de défaillance : {failure} ; l’expert a écrit {failure2} sans motif, ce qui ne compte pas.',
    highest:
      'Le risque le plus élevé est {risk} : {recorded}, touché par {part} (probabilité de défaillance {failure}, d’impact {impact}, ensemble {event} ; conséquences {consequences}).',
    aLimb: 'une branche',
    theTree: 'l’arbre',
    bySuggestions: 'Selon les seules suggestions, il serait {risk}.',
    noRisk: 'Aucune cible n’a été relevée : aucun risque n’est coté.',
    thinTest:
      'Les données sur l’ancrage sont trop minces pour décider ; un essai de traction est recommandé.',
    noFrame: 'Aucun horizon n’a été indiqué ; {n} ans sont pris ({source}).',
    stated: 'Tel qu’indiqué par l’expert.',
    mean: 'Moyenne sur des versions également vraisemblables de l’arbre ; l’intervalle montre leur écart. La plus forte rafale de chaque année est prise du côté le plus défavorable à l’arbre ; le second chiffre vaut pour des rafales venant également de tous les côtés.',
    stays:
      'L’arbre est supposé rester tel quel pendant cet horizon. La probabilité de défaillance ne tire aucun crédit des tempêtes qu’il a traversées ; étant donné qu’il a tenu {n} ans à peu près dans son état actuel, les versions qui ne les auraient guère supportées comptent moins, et la chance baisse comme indiqué. Ce crédit ne vaut plus après un nouveau dommage ou des fouilles, ni si la pourriture progresse vite.',
    magnitude:
      'Un ordre de grandeur, non une prévision : la queue extrême du vent et de la résistance n’est pas mieux connue.',
    firstMatrix: 'probabilité de défaillance par probabilité d’impact, cases de la matrice',
    secondMatrix: 'celle-ci par les conséquences, cases de la matrice',
    unknownTarget:
      'Le jugement porte sur « {recorded} », qui n’est pas une cible de ce cas : il n’est pas utilisé. Employez le nom de la cible tel que relevé.',
    noTarget:
      'Aucune cible n’a été relevée : la probabilité de défaillance est donnée, mais aucun risque ne peut être coté.',
    oddOccupancy:
      '« {recorded} » n’est ni rare, ni occasionnelle, ni fréquente, ni constante : la fréquentation de {recorded2} compte comme non indiquée et est prise comme fréquente.',
    noOccupancy: 'La fréquentation de {recorded} n’a pas été indiquée : elle est prise comme fréquente.',
    noLimbSign:
      'Aucun signe de branche faible n’a été relevé ; « possible » est pris tant que le houppier n’a pas été examiné.',
    recordedSigns: 'Relevé : {signs}.',
    consequencesRecorded: 'Les conséquences ont été relevées comme {consequences}.',
    consequencesTaken:
      'Les conséquences n’ont pas été indiquées ; prises comme {consequences} pour {kind} ({source}).',
    consequencesUnknown:
      'Les conséquences n’ont pas été indiquées et la cible est d’un genre inconnu ici ; prises comme {consequences}, du côté de la sécurité.',
    noDistance: 'Sa distance n’a pas été indiquée : elle est prise à portée de toute chute.',
    beyond:
      'Elle est à {distance} du tronc ; l’arbre a {height} de haut : au-delà d’une fois et demie sa hauteur, rien ne l’atteint.',
    under:
      'Elle est à {distance} du tronc ; l’arbre a {height} de haut : elle se trouve sous le houppier, et une chute de tout côté peut la toucher.',
    noDirection:
      'Elle est à {distance} du tronc ; l’arbre a {height} de haut : elle est à portée ; sa direction n’a pas été indiquée, toute chute compte donc.',
    thrown:
      'Elle est à {distance} du tronc ; l’arbre a {height} de haut : seuls des morceaux projetés l’atteignent.',
    within:
      'Elle est à {distance} du tronc ; l’arbre a {height} de haut : elle est à portée ; des défaillances calculées, {n} sur 100 tombent de ce côté.',
    limbNoDistance: 'Sa distance n’a pas été indiquée : elle est prise sous la branche.',
    limbBeyond: 'Elle est à {distance} du tronc, au-delà du bord du houppier : aucune branche n’y tombe.',
    limbElsewhere: 'La branche est d’un autre côté du houppier ({azimuth} degrés).',
    limbBelow: 'Elle se trouve sous le houppier, du côté de la branche.',
    used: 'Elle est fréquentée {how} ; {shield}.',
    useTaken: 'Sa fréquentation n’a pas été indiquée : prise comme {occupancy} ; {shield}.',
    rarely: 'rarement',
    occasionally: 'de temps à autre',
    frequently: 'souvent',
    constantly: 'en permanence',
    noShield: 'rien ne la protège',
    shielded: 'sa protection est {protection}',
    lower: 'Presque aucune des défaillances ne tombe de ce côté : un mot plus bas.',
    higher: 'Souvent fréquentée, sous le houppier et exposée à toute chute : un mot plus haut.',
    overrideRefused:
      'L’expert a écrit « {judged} » là où « {judged2} » est suggéré, sans motif. Une modification ne compte que motivée : la suggestion demeure jusque-là.',
    rule: 'Suggérée d’après la sécurité calculée, par une règle de ce projet sans autorité publiée ; l’expert la confirme ou la modifie avec un motif.',
    overCapacity: 'L’arbre dépasse sa capacité par temps calme (estimation médiane).',
    everyYear:
      'L’estimation médiane de la rafale critique, {gust}, est inférieure à la rafale de chaque année, {yearly}.',
    asNot: 'La chance de défaillance d’ici {frame} est de {chance} : aussi probable que non.',
    fiftyNotAbove:
      'La rafale critique à son point inférieur de 5 %, {gust}, ne dépasse pas la rafale à 50 ans, {fifty}.',
    belowMark:
      'La sécurité déterminante à son point inférieur de 5 % est {safety}, au-dessous du seuil usuel de {mark}.',
    chanceMore: 'La chance de défaillance d’ici {frame} est de {chance}, plus de 1 sur {n}.',
    thin: 'Les données sur l’ancrage sont trop minces pour décider.',
    fiftyAbove:
      'La rafale critique à son point inférieur de 5 %, {gust}, dépasse la rafale à 50 ans, {fifty}, et la sécurité déterminante atteint {mark} avec confiance.',
    oneYear: '1 an',
    years: '{n} ans',
    chanceBelow: 'moins de {chance}',
    fungus: '{species} pourrit {position} (pourriture {rot}) : {note}.',
    fungusNotice:
      '{species} pourrit {position} (pourriture {rot}) : {note}. Cela dit où forer ; aucune résistance n’est calculée d’après le nom. Source : {source}.',
    white: 'blanche',
    brown: 'brune',
    soft: 'molle',
    softAndWhite: 'molle et blanche',
  },
  advice: {
    wallMeasured:
      'Au forage {id}, la paroi de {wall} sur un rayon de {radius} pourrait s’amincir à {limit} du rayon en {years} ans si la pourriture progresse vers l’extérieur de {fast} par an (mesuré entre les deux visites et avec ce que l’on sait de tels fronts : estimations basse, médiane et haute {rates} par an ; croissance d’au moins {growth} par an) : la moitié fait {n} mois.',
    unknownOption: '« {recorded} » n’est pas une option des préconisations ; employez l’une de {recorded2}.',
    noPruning:
      'L’arbre atteint {goal} tel qu’il est ({n} sur 100) : aucune taille n’est nécessaire à sa stabilité.',
    outOfReach:
      'Aucune réduction de houppier admissible n’atteint {goal} : la plus forte conforme aux règles de taille, {share} de la hauteur et de l’envergure ({foliage} du feuillage), la fait passer de {now} à {most} sur 100.',
    least:
      'La plus faible réduction de houppier qui atteint {goal} est de {share} de la hauteur et de l’envergure : {top} en cime et {side} de chaque côté, {foliage} du feuillage.',
    leastTwo:
      'La plus faible réduction de houppier qui atteint {goal} est de {share} de la hauteur et de l’envergure : {top} en cime et {side} de chaque côté, {foliage} du feuillage ; c’est plus qu’une saison ne permet sur un arbre adulte (25 %), donc en deux.',
    goal: 'une sécurité de {safety} dans {n} tirages sur 100',
    handsOff:
      'Personne ne doit tirer sur un arbre dont la défaillance a pu commencer, y grimper ou travailler dessous avant qu’il ne soit assuré.',
    takes: 'Retire {relief} ({low} à {high}) du moment du vent au sol ; sécurité de {before} à {after}.',
    without: 'L’arbre atteint {safety} avec la confiance voulue sans cela.',
    hardly: 'Cela n’abaisse guère la charge.',
    brings: 'Cela porte l’arbre à {safety} avec la confiance voulue.',
    reached: '{safety} est atteint dans {share} des tirages, non dans les {wanted} voulus.',
    reachedThin:
      '{safety} est atteint dans {share} des tirages, non dans les {wanted} voulus ; le doute tient à l’ancrage, qu’un essai réduirait avant que l’on taille le houppier.',
    riskTooHigh: 'Le risque est trop élevé pour le laisser tel quel.',
    onlyIfAccepted:
      'Seulement si le propriétaire accepte un risque modéré, et pas avant que les questions ouvertes aient une réponse.',
    riskLow: 'Le risque est faible, ou aucune cible n’a été relevée.',
    noTarget: 'Aucune cible n’a été relevée.',
    keepAway: 'Tient les personnes à l’écart jusqu’à ce que l’arbre soit traité.',
    cannotMove: 'Une cible qui ne peut être déplacée laisse le risque aussi élevé.',
    lowWithout: 'Le risque est faible sans cela.',
    lowersTo: 'Ramène le risque à {risk} sans toucher à l’arbre.',
    tooThin: 'Les données sur l’ancrage sont trop minces pour conserver ou condamner l’arbre.',
    canBeDecided: 'L’ancrage peut être tranché sans cela.',
    crownSigns: 'Des signes dans le houppier ou à une fourche ont été relevés depuis le sol.',
    noCrownSigns: 'Rien n’a été relevé dans le houppier qui le demande.',
    drillAt: 'Section {id} à {azimuth} degrés : {why}',
    noDeadLimb: 'Aucune branche morte ou cassée n’a été relevée.',
    deadLimb: 'Une branche morte, cassée ou fissurée a été relevée.',
    loadUnchanged: 'Cela ne change pas la charge sur le tronc et les racines.',
    weakUnion: 'Une fourche faible ou une branche fissurée a été relevée.',
    noWeakUnion:
      'Aucune fourche faible ni branche fissurée n’a été relevée ; un hauban ne retient pas les racines.',
    insects:
      'Des insectes ou leur sciure ont été relevés. Les traiter ne rend aucune résistance ; cela peut compter pour les bâtiments voisins.',
    noInsects: 'Aucun insecte n’a été relevé.',
    strain: 'Racines, sol ou houppier montrent que les racines souffrent.',
    helps: 'Utile à tout arbre conservé.',
    riskHigh: 'Le risque est élevé : à peser face à ce qui l’abaisse autrement.',
    nothingCalls: 'Rien de ce qui a été trouvé ne le demande.',
    lessWouldDo: 'Moins suffirait.',
    nothingLess: 'Rien de moindre n’abaisse le risque.',
    named: '{species} a été nommé (pourriture {rot})',
    noDecay: 'ni les aiguilles ni les signes n’ont trouvé de pourriture',
    fungusUnknown: 'de la pourriture a été trouvée et son champignon n’est pas connu',
    storm: 'après une tempête de force 9 à 10 Beaufort ou plus (rafales au-dessus de {gust} environ)',
    digging: 'après des fouilles, une construction ou un revêtement dans la zone des racines',
    newLean: 'en cas de nouvelle inclinaison, de fissures ou de soulèvement du sol',
    newSign: 'en cas de nouveau carpophore, de nouvelle fissure ou de partie morte du houppier',
    shelter: 'après la disparition d’un arbre ou d’un bâtiment voisin qui l’abritait',
    atMost: 'Au plus {n} mois : {because} ({source}).',
    wall: 'Au forage {id}, la paroi de {wall} sur un rayon de {radius} pourrait s’amincir à {limit} du rayon en {years} ans si la pourriture progresse vers l’extérieur de {fast} par an ({because} ; scénarios {rates} par an ; croissance {growth} par an) : la moitié fait {n} mois.',
    wallBelow:
      'Au forage {ids}, la paroi est déjà plus mince que {limit} du rayon : la prévision de la paroi n’y vaut pas, et la sécurité calculée est le guide.',
    noFront: 'Aucune aiguille n’a rencontré de front de pourriture : il n’y a pas de paroi à prévoir.',
    again:
      'Reforer au même endroit avant deux à trois ans apprend peu : regardez d’abord signes, houppier et racines, et forez là où la pourriture aurait progressé.',
    outward: 'vitesse de la pourriture vers l’extérieur, scénario rapide, {meaning}',
  },
  whole: {
    opening:
      'Une cavité ouverte a été relevée. La résistance par direction la prend comme du bois sans résistance, aussi profonde que le disent les aiguilles voisines et l’expérience ; forez de près des deux côtés de l’ouverture, et comparez avec la perte de module de flexion selon les forages.',
    surface:
      'L’état de la surface tout autour n’a pas été noté. Une ouverture ou une pourriture venant d’un côté qu’aucune aiguille n’a rencontré n’est alors prise en compte que par l’expérience : notez où écorce et bois sont sains, pourris ou ouverts.',
    noDrilling:
      'Aucun forage n’a été fait à cette section : sa résistance repose sur ce que sont de tels troncs en général, non sur cet arbre.',
    oneDrilling:
      'Un seul forage a été fait à cette section : l’essentiel n’en a pas été vu, et l’intervalle de sa résistance est large.',
    fewDrillings:
      'Seulement {drillings} ont été faits à cette section : l’essentiel n’en a pas été vu, et l’intervalle de sa résistance est large.',
  },
  record: {
    earlierUnread: 'la visite antérieure ne peut être évaluée, rien n’est donc comparé : {recorded}',
    azimuth: 'un azimut de {azimuth} degrés est pris comme {taken}, dans le sens horaire à partir du nord.',
    visitYear: 'la visite est datée du {recorded} : l’année est-elle juste ?',
    crownWide: 'le houppier a {width} de large sur un arbre de {height} de haut : est-ce juste ?',
    stemOdd:
      'un tronc de {diameter} sur un arbre de {height} de haut est inhabituel : vérifiez les deux et leurs unités.',
    sectionOdd:
      'la section a {across} de large et le tronc {diameter} à hauteur de poitrine : vérifiez les deux et leurs unités.',
    felledOdd:
      'la section abattue a {across} de large et celle sur pied {standing} : ont-elles été prises à la même hauteur, et en millimètres ?',
    radiiGap: 'aucun rayon n’a été mesuré de {from} à {to} degrés : le contour y est supposé.',
    offRadial: 'l’aiguille s’écarte de {deg} degrés du rayon : est-ce juste ?',
    down: 'l’aiguille descend de {deg} degrés sous l’horizontale : est-ce juste ?',
    sameTrace: 'lit le même tracé que {recorded} ({recorded2}) : l’un des deux est sans doute une erreur.',
    farTarget: '{recorded} est à {distance}, hors de portée d’un arbre de {height} de haut.',
    occupancy:
      'la fréquentation {recorded} est conservée, mais n’est aucune de {recorded2} : elle compte comme non indiquée.',
    twoTargets: 'deux cibles s’appellent {recorded} : un jugement sur ce nom vaut pour les deux.',
    impossible: 'vaut {value}, hors du possible ({range}) : {hint}',
    unusual: 'vaut {value}, ce qui est inhabituel ({range} est usuel) : {hint}',
    hintHeight: 'mesuré en pieds, ou virgule décimale perdue ?',
    hintDiameter: 'écrit en centimètres ou en pouces, ou est-ce la circonférence ?',
    hintFeet: 'mesuré en pieds ?',
    hintLean: 'l’inclinaison se mesure à partir de la verticale',
    hintEurocode: 'EN 1991-1-4 demande la moyenne sur 10 minutes en m/s, non une rafale ni des km/h',
    hintAsce: 'ASCE 7 demande la rafale de 3 secondes en m/s : 115 mph font {speed}',
    hintCentimetres: 'écrit en centimètres ?',
    hintUnit: 'écrit dans une autre unité ?',
    hintInches: 'écrit en centimètres ou en pouces ?',
    hintReturn: 'tous les combien revient un vent de cette vitesse : une fois en combien d’années ?',
    hintFrame: 'une décision vaut en général pour un à cinq ans',
    hintMoment: 'écrit en {unit}, ou est-ce la force et non le moment au sol ?',
    hintTilt:
      'la relation des essais de traction vaut pour une inclinaison de la galette racinaire de 0,25 degré',
    hintArc: 'sur quel arc du pourtour, vu du centre du tronc',
    hintCut: 'de l’écorce du tronc au point le plus proche de la coupe',
    hintTarget: 'la cible est-elle à portée de l’arbre ?',
    signedBefore:
      'le rapport est signé du {recorded}, avant la visite du {recorded2} : la date est-elle juste ?',
    unsignedDate:
      'une signature sans date ne compte pas : le rapport dit qu’il n’est pas signé tant que signedOn n’est pas donné.',
    byWhom: 'du texte a été ajouté au rapport sans dire par qui : nommez l’expert.',
    cutYear: 'la coupe est datée de {recorded} : l’année est-elle juste ?',
    noTraceAtAll:
      'aucune section n’a de forage avec tracé : son état repose sur la seule expérience générale.',
    noSpecies: 'non relevée : les valeurs du bois sont prises larges, pour toute essence.',
    noLean: 'non relevée : le tronc est pris vertical.',
    noShape: 'non relevée : prise en {crown}.',
    noLeaf: 'non relevé : pris en feuilles.',
    noBark: 'non relevée : prise à {bark}, valeur moyenne.',
    noFlareSize: 'non mesurée : prise à {width}, {share} % du diamètre du tronc.',
    noTrace: 'n’a pas encore de tracé : il est laissé de côté.',
    traceUnread: 'son tracé {recorded} n’a pas été lu : il est laissé de côté.',
    traceCase: 'nomme le tracé {recorded} ; le fichier s’appelle {recorded2} et a été pris.',
    photoMissing: 'nomme la photo {recorded}, qui n’est pas dans le cas.',
    unused: 'aucun forage ne nomme {recorded}.',
    newer:
      'écrit dans la version {from} du format, lu comme version {to} ; l’enregistrement écrit la plus récente.',
    unknownField: 'n’est pas un champ connu de cette version : il est conservé, et non utilisé.',
    unknownFieldMeant:
      'n’est pas un champ connu de cette version : il est conservé, et non utilisé. Vouliez-vous dire {recorded} ?',
    neverExceeds:
      'la résistance ne dépasse jamais {value} : elle est prise en pour cent de la pleine échelle ; si elle a été écrite en fraction, multipliez-la par 100.',
    reaches:
      'la résistance atteint {value} de la pleine échelle, au-dessus de son sommet : a-t-elle été bien convertie ?',
    apart:
      'les lectures sont espacées de {spacing} : fissures étroites et pourritures minces ne peuvent être vues.',
    onlyApart: 'les lectures ne sont espacées que de {spacing} : la profondeur est-elle en millimètres ?',
    gap: 'il n’y a pas de lecture entre {span} : ce qui s’y trouve n’est pas connu.',
  },
};
