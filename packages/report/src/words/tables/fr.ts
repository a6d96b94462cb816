/**
 * The prose of the engine's tables (packages/engine/src/reference/*.csv) in French, by its English text. The rows are
 * the English; tests/report/sentences.test.ts fails when one has no entry here.
 */
export const frenchTableTexts: Readonly<Record<string, string>> = {
  // constants.csv
  'density of air': 'masse volumique de l’air',
  'turbulence factor kI': 'facteur de turbulence kI',
  'orography factor co of level ground': 'facteur d’orographie co en terrain plat',
  'factor of kr = 0.19 (z0 / z0II)^0.07': 'facteur de kr = 0,19 (z0 / z0II)^0,07',
  'exponent of kr = 0.19 (z0 / z0II)^0.07': 'exposant de kr = 0,19 (z0 / z0II)^0,07',
  'roughness length of terrain II': 'longueur de rugosité du terrain II',
  'greatest height the mean wind profile covers': 'plus grande hauteur couverte par le profil du vent moyen',
  'factor of the turbulence intensity in the peak pressure, 1 + 7 Iv':
    'facteur de l’intensité de turbulence dans la pression de pointe, 1 + 7 Iv',
  'shape K of the probability factor': 'paramètre de forme K du coefficient de probabilité',
  'exponent n of the probability factor': 'exposant n du coefficient de probabilité',
  'half the density of air in qz = 0.613 Kz Kzt Kd Ke V2':
    'demi-masse volumique de l’air dans qz = 0,613 Kz Kzt Kd Ke V2',
  'height below which Kz is constant': 'hauteur au-dessous de laquelle Kz est constant',
  'wind directionality factor Kd: 1 because each direction is rated on its own (0.85 would count the odds of direction twice)':
    'facteur de direction du vent Kd : 1 parce que chaque direction est évaluée pour elle-même (0,85 compterait deux fois les chances de direction)',
  'topographic factor Kzt of level ground': 'facteur topographique Kzt en terrain plat',
  'decay of the ground elevation factor Ke = exp(-0.000119 elevation)':
    'décroissance du facteur d’altitude Ke = exp(-0,000119 altitude)',
  'elevation taken for Ke; sea level is on the safe side':
    'altitude prise pour Ke ; le niveau de la mer est du côté de la sécurité',
  'acceleration of gravity': 'accélération de la pesanteur',
  'structural response to the gust: lack of correlation over the crown against swaying; 1.0 to 1.3 looked at':
    'réponse structurale à la rafale : défaut de corrélation sur le houppier contre balancement ; 1,0 à 1,3 examinés',
  'scatter of the silhouette against width and height paced or measured':
    'dispersion de la silhouette par rapport à la largeur et à la hauteur, au pas ou mesurées',
  'scatter of the peak pressure at the site given the basic wind speed and terrain':
    'dispersion de la pression de pointe sur le site, vitesse de référence et terrain donnés',
  'drag of the bare crown over that in leaf': 'traînée du houppier nu rapportée à celle en feuilles',
  "exponent of the bare crown's drag coefficient with speed":
    'exposant du coefficient de traînée du houppier nu avec la vitesse',
  'speed below which the drag coefficient is held constant':
    'vitesse au-dessous de laquelle le coefficient de traînée est tenu constant',
  'drag coefficient of the bare stem as a rough cylinder':
    'coefficient de traînée du tronc nu, cylindre rugueux',
  'exponent of stem cross-section with distance from the top: A(z) = A(1.3 m) ((H - z) / (H - 1.3))^1.2, form factor about 0.45':
    'exposant de la section du tronc avec la distance à la cime : A(z) = A(1,3 m) ((H - z) / (H - 1,3))^1,2, coefficient de forme environ 0,45',
  'height of the stem diameter': 'hauteur du diamètre du tronc',
  'mass of branches and foliage over stem mass in open-grown broadleaves':
    'masse des branches et du feuillage sur celle du tronc, feuillus isolés',
  'mass of branches and foliage over stem mass in conifers':
    'masse des branches et du feuillage sur celle du tronc, conifères',
  'scatter of the moment of self-weight': 'dispersion du moment du poids propre',
  "green density of stem wood where the species' moisture is not known":
    'masse volumique à l’état vert du bois de tronc, humidité de l’essence inconnue',
  'strength of a stem with knots and crooked grain over clear wood':
    'résistance d’un tronc avec nœuds et fil irrégulier rapportée au bois net',
  "scatter of the strength of stems about the species' mean that all sections of a tree share":
    'dispersion de la résistance des troncs autour de la moyenne de l’essence, commune à toutes les sections d’un arbre',
  "further scatter of one section's strength at first crushing: knots, grain, growth stress, what elastic theory leaves out":
    'dispersion supplémentaire de la résistance d’une section au premier écrasement : nœuds, fil, contraintes de croissance, ce que la théorie élastique laisse de côté',
  'scatter of the stress at which whole stems broke when pulled over: 21.6 MPa about a mean near 54 MPa in 11 maples':
    'dispersion de la contrainte à laquelle des troncs entiers ont rompu en traction : 21,6 MPa autour d’une moyenne proche de 54 MPa sur 11 érables',
  'safety factor usually asked for': 'coefficient de sécurité habituellement demandé',
  'standard deviation of ln(uprooting moment) about a relation by size and species':
    'écart type de ln(moment de basculement) autour d’une relation par taille et essence',
  'standard deviation of ln(uprooting moment) about a relation by stiffness and species':
    'écart type de ln(moment de basculement) autour d’une relation par raideur et essence',
  'uprooting moment over the moment that tilts the root plate by 0.25 degrees':
    'moment de basculement rapporté au moment qui incline la galette racinaire de 0,25 degré',
  'tilt of the root plate at which the ratio holds':
    'inclinaison de la galette racinaire pour laquelle ce rapport vaut',
  'anchorage on shallow, gleyed or wet soil over that on free-draining soil':
    'ancrage sur sol superficiel, hydromorphe ou humide rapporté à celui sur sol drainant',
  'stem volume over the cylinder of its diameter and height':
    'volume du tronc rapporté au cylindre de son diamètre et de sa hauteur',
  'green density taken with the stem-mass relations':
    'masse volumique à l’état vert prise avec les relations par masse du tronc',
  'share of the anchorage that the roots on the windward (tension) half carry; the rest is the leeward half':
    'part de l’ancrage portée par les racines de la moitié au vent (tendue) ; le reste est la moitié sous le vent',
  'loss of anchorage per share of the root cross-section lost: half the buttress roots cut took 30 %':
    'perte d’ancrage par part de section racinaire perdue : la moitié des racines de contrefort coupées a pris 30 %',
  'loss of anchorage per share of the root cross-section lost: nearly linear up to half':
    'perte d’ancrage par part de section racinaire perdue : presque linéaire jusqu’à la moitié',
  'greatest share of root cross-section lost in the experiments':
    'plus grande part de section racinaire perdue dans les essais',
  'first term of V_T / V_50 = 0.36 + 0.1 ln(12 T) away from hurricanes':
    'premier terme de V_T / V_50 = 0,36 + 0,1 ln(12 T), hors ouragans',
  'slope of V_T / V_50 = 0.36 + 0.1 ln(12 T) away from hurricanes':
    'pente de V_T / V_50 = 0,36 + 0,1 ln(12 T), hors ouragans',
  'return period of the mapped basic wind speed (risk category II)':
    'période de retour de la vitesse de référence cartographiée (catégorie de risque II)',
  'factor of v = 0.836 B^1.5, 10-minute mean at 10 m':
    'facteur de v = 0,836 B^1,5, moyenne sur 10 minutes à 10 m',
  'exponent of v = 0.836 B^1.5, 10-minute mean at 10 m':
    'exposant de v = 0,836 B^1,5, moyenne sur 10 minutes à 10 m',
  'distance from the stem beyond which a cut took no measurable force; within it the loss is taken to fall evenly from all the roots of the arc to none':
    'distance au tronc au-delà de laquelle une coupe n’a pas pris de force mesurable ; en deçà, la perte est supposée décroître régulièrement de toutes les racines de l’arc à aucune',
  'depth within which the roots that hold the plate lie; a shallower cut spares a share':
    'profondeur où se trouvent les racines qui tiennent la galette ; une coupe moins profonde en épargne une part',
  'how far round the stem a cut reaches where it was not recorded':
    'étendue d’une coupe autour du tronc lorsqu’elle n’a pas été relevée',
  'share of the buttress roots lost from which the likelihood of failure is raised in practice':
    'part de racines de contrefort perdues à partir de laquelle la pratique relève la probabilité de défaillance',
  'least tilt from which a static load test is brought to 0.25 degrees':
    'plus petite inclinaison à partir de laquelle un essai de traction est ramené à 0,25 degré',
  'greatest tilt from which a static load test is brought to 0.25 degrees':
    'plus grande inclinaison à partir de laquelle un essai de traction est ramené à 0,25 degré',
  'least exponent of moment with tilt: from 0.25 degrees to the peak near 2.5 degrees the moment grows 2.5 times':
    'plus petit exposant du moment avec l’inclinaison : de 0,25 degré au maximum près de 2,5 degrés le moment croît 2,5 fois',
  'greatest exponent of moment with tilt: stiffness constant':
    'plus grand exposant du moment avec l’inclinaison : raideur constante',
  'lean from which a reminder is given that the relations stem from upright trees':
    'inclinaison à partir de laquelle on rappelle que les relations viennent d’arbres droits',
  'years that a likelihood of failure speaks for where the assessor states none':
    'années pour lesquelles vaut une probabilité de défaillance quand l’expert n’en indique pas',
  'chance of failure within the time frame from which failure may be expected: at least probable':
    'chance de défaillance sur l’horizon à partir de laquelle on peut s’y attendre : au moins probable',
  'chance of failure within the time frame above which failure is not called improbable':
    'chance de défaillance sur l’horizon au-dessus de laquelle elle n’est pas dite improbable',
  'return period of the basic wind velocity (yearly chance 0.02)':
    'période de retour de la vitesse de référence (chance annuelle 0,02)',
  'distance within which the falling tree itself can strike a target':
    'distance à laquelle l’arbre lui-même peut toucher une cible en tombant',
  'distance within which broken or thrown parts can strike a target':
    'distance à laquelle des parties rompues ou projetées peuvent toucher une cible',
  "how far beyond the crown's edge a falling limb can strike":
    'jusqu’où une branche peut toucher au-delà du bord du houppier',
  'how far to either side of its recorded direction a limb can fall':
    'écart possible d’une branche qui tombe de part et d’autre de sa direction relevée',
  'share of the falls that go toward a target below which its likelihood of impact is lowered by one word':
    'part des chutes vers une cible au-dessous de laquelle sa probabilité d’impact est abaissée d’un mot',
  'safety factor that the least pruning is sought for':
    'coefficient de sécurité pour lequel la plus faible taille est cherchée',
  'share of the draws that must reach the wanted safety':
    'part des tirages qui doit atteindre la sécurité voulue',
  'how far the relief worked out from the silhouette may be off either way, as a share of the moment':
    'écart possible, dans les deux sens, de l’allègement calculé d’après la silhouette, en part du moment',
  'greatest share of the foliage to remove in one season from a mature tree':
    'plus grande part du feuillage à retirer en une saison d’un arbre adulte',
  'greatest share of the foliage to remove in crown reduction or thinning':
    'plus grande part du feuillage à retirer en réduction ou éclaircie du houppier',
  'least relief per share of the foliage thinned out':
    'plus petit allègement par part de feuillage éclaircie',
  'relief per share of the foliage thinned out: load in line with the weight removed':
    'allègement par part de feuillage éclaircie : charge proportionnelle au poids retiré',
  "greatest relief by raising, as a multiple of the silhouette's":
    'plus grand allègement par relèvement, en multiple de celui de la silhouette',
  'radial growth of the stem where the rings were not measured':
    'croissance radiale du tronc quand les cernes n’ont pas été mesurés',
  'wall over radius to which the forecast of the wall runs':
    'paroi sur rayon jusqu’où va la prévision de la paroi',
  'shortest re-inspection interval proposed': 'plus court intervalle de contrôle proposé',
  'years after which regrowth has brought back much of the load':
    'années après lesquelles la repousse a ramené une bonne part de la charge',
  'years for which the tree is taken to have stood much as it is now, for the chance given that it has':
    'années pendant lesquelles l’arbre est supposé avoir tenu dans son état actuel, pour la chance sachant qu’il a tenu',
  'how far a second hole lies from the first, round the stem or along it (standard deviation)':
    'distance d’un second forage au premier, autour du tronc ou le long de celui-ci (écart type)',
  'slope of a decay front against the rings over such a distance (standard deviation)':
    'pente d’un front de pourriture par rapport aux cernes sur une telle distance (écart type)',
  "difference of depth scale between two needles (standard deviation): heading, and ring widths a hand's breadth on":
    'différence d’échelle de profondeur entre deux aiguilles (écart type) : direction, et largeur des cernes à une main de distance',
  'what is left of a misfit between two traces once aligned (standard deviation)':
    'écart restant entre deux tracés une fois alignés (écart type)',
  'share of repeat drillings whose ring pattern does not answer to the first':
    'part des forages répétés dont les cernes ne répondent pas au premier',
  'share of decay fronts that stand still for years':
    'part des fronts de pourriture qui restent immobiles pendant des années',
  "scatter of the front's speed from place to place in one section (standard deviation of the logarithm)":
    'dispersion de la vitesse du front d’un point à l’autre d’une section (écart type du logarithme)',
  'movement of a front below which it is called standing':
    'déplacement d’un front au-dessous duquel il est dit immobile',
  'longest forecast': 'prévision la plus longue',
  'shape of the gamma distribution of radial growth at one place, about the mean for grown broadleaves':
    'forme de la loi gamma de la croissance radiale en un point, autour de la moyenne des feuillus adultes',
  // advice-options.csv
  'Retain and monitor': 'Conserver et surveiller',
  'Suits a tree whose risk is accepted as it is; look again by the date given, and after every storm, digging near the roots, new lean or new fruiting body.':
    'Convient à un arbre dont le risque est accepté tel quel ; réexaminer à la date donnée, et après chaque tempête, fouille près des racines, nouvelle inclinaison ou nouveau carpophore.',
  'Restrict or move the target: fence the fall zone, close or re-route the path, move benches or parking':
    'Restreindre ou déplacer la cible : clôturer la zone de chute, fermer ou dévier le chemin, déplacer bancs ou stationnement',
  'Works at once and leaves the tree as it is; only as good as it is kept up. A road or house cannot be moved.':
    'Agit aussitôt et laisse l’arbre tel quel ; ne vaut que tant que c’est maintenu. Une route ou une maison ne se déplace pas.',
  'Static load test of the anchorage: a measured pull with the tilt of the root plate':
    'Essai de traction de l’ancrage : traction mesurée avec l’inclinaison de la galette racinaire',
  'Measures roots and soil as they are in the pulled direction; by a specialist, in calm weather and soil neither frozen nor dried out.':
    'Mesure racines et sol tels qu’ils sont dans la direction tirée ; par un spécialiste, par temps calme, sol ni gelé ni desséché.',
  'Aerial inspection of crown and unions': 'Inspection aérienne du houppier et des fourches',
  'By a climber or from a platform; looks for what cannot be seen from the ground.':
    'Par un grimpeur ou depuis une nacelle ; cherche ce qui ne se voit pas du sol.',
  'Another drilling where it would tell most': 'Un autre forage là où il apprendrait le plus',
  'Each hole wounds: only where it can change the decision.':
    'Chaque forage blesse : seulement là où il peut changer la décision.',
  'Deadwooding: remove dead, broken and hanging limbs':
    'Enlèvement du bois mort : retirer branches mortes, cassées et pendantes',
  'Takes away falling limbs; gives no relief of the wind load on stem or roots.':
    'Supprime les chutes de branches ; n’allège pas la charge du vent sur le tronc ni les racines.',
  'Crown reduction by 5 % of height and spread': 'Réduction de houppier de 5 % en hauteur et envergure',
  'Cuts back to laterals of a third of the parent or more, no topping; regrowth returns the load in 3 to 5 years.':
    'Coupes sur tire-sève d’un tiers au moins de la branche, pas d’étêtage ; la repousse ramène la charge en 3 à 5 ans.',
  'Crown reduction by 10 % of height and spread': 'Réduction de houppier de 10 % en hauteur et envergure',
  'Near the greatest amount for one season (BS 3998: about 12 % of the radius, 30 % of the leaves); less for old or stressed trees; cuts in heartwood over 10 cm avoided.':
    'Proche du maximum pour une saison (BS 3998 : environ 12 % du rayon, 30 % des feuilles) ; moins pour les arbres âgés ou affaiblis ; éviter les coupes de plus de 10 cm dans le bois de cœur.',
  'Crown reduction by 20 % of height and spread, in stages':
    'Réduction de houppier de 20 % en hauteur et envergure, par étapes',
  "More than one season allows: in stages over several years, each judged by the tree's answer; changes the tree's look for good.":
    'Plus qu’une saison ne permet : par étapes sur plusieurs années, chacune jugée sur la réponse de l’arbre ; change durablement son aspect.',
  'Crown thinning by 10 % of the foliage': 'Éclaircie du houppier de 10 % du feuillage',
  "Evenly through the crown, inner branches kept (no lion's tailing); the lever arm stays.":
    'Répartie dans tout le houppier, branches intérieures conservées (pas de queues de lion) ; le bras de levier reste.',
  'Crown thinning by 20 % of the foliage': 'Éclaircie du houppier de 20 % du feuillage',
  'Near the limit for one season (25 %); evenly, inner branches kept; thinning of the outer crown was among the least effective.':
    'Proche de la limite pour une saison (25 %) ; répartie, branches intérieures conservées ; l’éclaircie du houppier extérieur était parmi les moins efficaces.',
  "Raising the crown's base by 2 m": 'Relèvement de la base du houppier de 2 m',
  'Hardly lowers the load, and takes low limbs that damp the sway; live crown kept to two thirds of the height.':
    'N’abaisse guère la charge, et retire des branches basses qui amortissent le balancement ; houppier vivant gardé sur deux tiers de la hauteur.',
  'Support: cable or brace for a weak union or a cracked limb, prop for a leaning limb':
    'Soutien : hauban ou tige pour une fourche faible ou une branche fissurée, étai pour une branche penchée',
  'Holds a part, not the whole tree against its roots; needs inspection every year and renewal.':
    'Retient une partie, non l’arbre entier face à ses racines ; demande un contrôle annuel et un renouvellement.',
  "Treat insects through a licensed applicator, and only as the product's label says":
    'Traiter les insectes par un applicateur agréé, et seulement selon l’étiquette du produit',
  'Ants live in wood that is decayed already: treating them gives no strength back. The label is the law; protected nests stay.':
    'Les fourmis vivent dans du bois déjà pourri : les traiter ne rend aucune résistance. L’étiquette fait loi ; les nids protégés restent.',
  'Soil and root care: mulch, keep vehicles and digging off the roots, mend drainage':
    'Soin du sol et des racines : pailler, tenir véhicules et fouilles loin des racines, corriger le drainage',
  'Helps the tree live and grow new wood and roots over years; no credit is taken for it here.':
    'Aide l’arbre à vivre et à former bois et racines au fil des ans ; aucun crédit n’en est tiré ici.',
  Removal: 'Abattage',
  'Ends the risk and the tree; only where nothing less does. Permission and nesting season to be looked at first.':
    'Met fin au risque et à l’arbre ; seulement si rien de moindre n’y suffit. Autorisation et période de nidification à vérifier d’abord.',
  // wind and terrain
  'urban, suburban or wooded': 'urbain, périurbain ou boisé',
  'open country with scattered obstructions': 'terrain dégagé avec obstacles épars',
  'flat unobstructed ground and water': 'terrain plat sans obstacle et plans d’eau',
  'sea or coast open to the sea': 'mer ou côte exposée aux vents de mer',
  'lakes or flat country without obstacles': 'lacs ou zone plate sans obstacle',
  'low vegetation with isolated obstacles at least 20 obstacle heights apart':
    'végétation basse avec obstacles isolés distants d’au moins 20 fois leur hauteur',
  'regular cover: villages, suburbs, forest': 'couverture régulière : villages, banlieues, forêts',
  'at least 15 % built up, mean building height above 15 m':
    'bâti sur au moins 15 %, hauteur moyenne des bâtiments supérieure à 15 m',
  // decay-rates.csv
  'fungus not known or no fruiting body': 'champignon inconnu ou pas de carpophore',
  'white rot': 'pourriture blanche',
  'brown rot; loses toughness before it drills soft':
    'pourriture brune ; perd sa ténacité avant d’être tendre au forage',
  'soft rot; slower but through reaction zones':
    'pourriture molle ; plus lente mais à travers les zones de réaction',
  'no decay found by the needles': 'aucune pourriture trouvée par les aiguilles',
  // fungi.csv
  'root and butt': 'les racines et le collet',
  'root, butt and lower stem': 'les racines, le collet et le bas du tronc',
  'undersides of roots': 'le dessous des racines',
  'roots and butt': 'les racines et le collet',
  'stem and limbs': 'le tronc et les branches',
  'stem heartwood and limbs': 'le bois de cœur du tronc et les branches',
  'stem heartwood': 'le bois de cœur du tronc',
  stem: 'le tronc',
  butt: 'le collet',
  'brittle break with few crown signs; both sapwood and heartwood':
    'rupture fragile avec peu de signes dans le houppier ; aubier et bois de cœur',
  'ductile; windthrow; long-lived bracket': 'ductile ; chablis ; carpophore pérenne',
  'windthrow with a good crown, beech above all': 'chablis avec un beau houppier, hêtre surtout',
  'slow, oak above all': 'lent, chêne surtout',
  'windthrow, oak above all': 'chablis, chêne surtout',
  'stem break, ash and apple': 'rupture du tronc, frêne et pommier',
  'kills roots and cambium': 'tue racines et cambium',
  conifers: 'conifères',
  'brittle, conifers': 'fragile, conifères',
  'brittle, oak, robinia and yew': 'fragile, chêne, robinier et if',
  'slow, oak': 'lent, chêne',
  'brittle late, birch and beech': 'fragile sur le tard, bouleau et hêtre',
  'canker, oak': 'chancre, chêne',
  'at wounds': 'sur plaies',
  birch: 'bouleau',
  'ash and robinia': 'frêne et robinier',
  // sign-readings.csv, failure-signs.csv, root-signs.csv
  'Carpenter ants nest in wood that is already decayed or moist and do not eat it: a cavity with decay is there, to be found and measured. Their presence does not scale the loss, and removing them gives no strength back.':
    'Les fourmis charpentières nichent dans du bois déjà pourri ou humide et ne le mangent pas : une cavité avec pourriture est là, à trouver et à mesurer. Leur présence ne mesure pas la perte, et les retirer ne rend aucune résistance.',
  'Coarse frass comes out of galleries: it tells of wood that is hollowed or decayed behind it.':
    'Une sciure grossière sort de galeries : elle dit que le bois derrière est creusé ou pourri.',
  'Termites eat wood: the section itself is lost where they feed.':
    'Les termites mangent le bois : la section elle-même est perdue là où ils se nourrissent.',
  'Borers and bark beetles mostly mark a tree under stress; their galleries in the outer wood count where they are many.':
    'Xylophages et scolytes marquent surtout un arbre affaibli ; leurs galeries dans le bois extérieur comptent quand elles sont nombreuses.',
  'A fruiting body shows that decay is well established; the genus tells where and how it rots, not how much strength is left.':
    'Un carpophore montre une pourriture bien établie ; le genre dit où et comment elle agit, non combien de résistance il reste.',
  'An open cavity shows decay and lets it be measured; its opening weakens the section by more than its depth alone.':
    'Une cavité ouverte montre la pourriture et permet de la mesurer ; son ouverture affaiblit la section plus que sa seule profondeur.',
  'Bark included in a union keeps its two sides from joining: such unions fail at lower loads.':
    'L’écorce incluse dans une fourche empêche ses deux côtés de se souder : de telles fourches cèdent sous des charges plus faibles.',
  'A crack or seam lets the two sides slide on one another; whether it moves under load is what matters.':
    'Une fissure ou couture laisse les deux côtés glisser l’un sur l’autre ; ce qui compte est si elle bouge sous charge.',
  'A bulge is often wood grown over a weak place.':
    'Un renflement est souvent du bois formé par-dessus un point faible.',
  'A thin crown or dieback tells of roots that fail to supply it; look at the roots.':
    'Un houppier clairsemé ou dépérissant parle de racines qui ne l’alimentent plus ; examinez les racines.',
  'Dead limbs break as they decay, in normal weather too.':
    'Les branches mortes cassent en pourrissant, par temps normal aussi.',
  'A broken or hanging limb has failed already and may fall at any time.':
    'Une branche cassée ou pendante a déjà cédé et peut tomber à tout moment.',
  'A cracked limb may fail in normal weather.': 'Une branche fissurée peut céder par temps normal.',
  'An open or moving crack means that the stem may already be failing.':
    'Une fissure ouverte ou mobile signifie que le tronc est peut-être déjà en train de céder.',
  'Heaving soil or a moving root plate means that the anchorage may already be failing: keep people away and have the tree looked at at once.':
    'Un sol soulevé ou une galette racinaire mobile signifie que l’ancrage est peut-être déjà en train de céder : tenez les personnes à l’écart et faites examiner l’arbre sans délai.',
  'A fresh lean or cracks in the soil mean that the anchorage may already be failing: keep people away and have the tree looked at at once.':
    'Une inclinaison récente ou des fissures du sol signifient que l’ancrage est peut-être déjà en train de céder : tenez les personnes à l’écart et faites examiner l’arbre sans délai.',
  'Roots were cut or dug: one cut root took 12 % of the pull force, half the buttress roots 30 %, a trench along the stem 35 %. How much was lost here is not in the estimate until side, distance and depth of the cut are recorded; cuts within three stem diameters bear on stability.':
    'Des racines ont été coupées ou déterrées : une racine coupée a pris 12 % de la force de traction, la moitié des racines de contrefort 30 %, une tranchée le long du tronc 35 %. Ce qui a été perdu ici n’est pas dans l’estimation tant que côté, distance et profondeur de la coupe ne sont pas relevés ; les coupes à moins de trois diamètres du tronc touchent la stabilité.',
  'Kretzschmaria deusta rots roots and butt with few signs in the crown and can leave wood that drills hard yet breaks brittle: drilling of the flares may miss it.':
    'Kretzschmaria deusta pourrit racines et collet avec peu de signes dans le houppier et peut laisser un bois dur au forage mais cassant : le forage des contreforts peut la manquer.',
  "Meripilus giganteus rots the undersides of roots, out of a drill's reach, while the crown looks well.":
    'Meripilus giganteus pourrit le dessous des racines, hors de portée du forage, alors que le houppier a bel aspect.',
  'A fungus that rots roots was found: traces above the ground may look sound while the anchorage is failing.':
    'Un champignon qui pourrit les racines a été trouvé : les tracés au-dessus du sol peuvent paraître sains alors que l’ancrage cède.',
  'A fungus that rots butt and roots was found: drill every flare and downwards into the roots.':
    'Un champignon qui pourrit collet et racines a été trouvé : forez chaque contrefort et vers le bas dans les racines.',
  'Restricted rooting, a container or a retaining wall: relations from size do not hold there.':
    'Enracinement limité, bac ou mur de soutènement : les relations par la taille n’y valent pas.',
  // drilling-signs.csv
  'roots were cut or dug here and decay enters by the cuts':
    'des racines ont été coupées ou déterrées ici et la pourriture entre par les coupes',
  'the ground has moved here and the root beneath may have failed':
    'le sol a bougé ici et la racine dessous a pu céder',
  'a fungus fruits where its decay has reached the surface; set the needle beside the fruiting body and not through it':
    'un champignon fructifie là où sa pourriture a atteint la surface ; placer l’aiguille à côté du carpophore et non à travers',
  'insects that nest in wood prefer wood that is decayed already':
    'les insectes qui nichent dans le bois préfèrent le bois déjà pourri',
  'wood that sounds hollow when struck may be so': 'un bois qui sonne creux peut l’être',
  'the wood beside an opening carries the load and a needle set in the opening reads none of it':
    'le bois à côté d’une ouverture porte la charge et une aiguille placée dans l’ouverture n’en lit rien',
  'bark enclosed in a union reads like a crack along the needle':
    'l’écorce incluse dans une fourche se lit comme une fissure le long de l’aiguille',
  'decay often follows an old crack; a needle within a crack reads a long void that is not there and so goes in beside it':
    'la pourriture suit souvent une vieille fissure ; une aiguille dans une fissure lit un long vide qui n’existe pas, elle entre donc à côté',
  'decay enters by wounds': 'la pourriture entre par les plaies',
  'a stem or flare that has swollen or sunk may be hollow or dead beneath':
    'un tronc ou contrefort renflé ou creusé peut être creux ou mort dessous',
  'wet wood or decay may lie behind it': 'du bois gorgé d’eau ou de la pourriture peut se trouver derrière',
  // drilling-rules.csv
  'Even coverage first: with nothing seen, four needles a quarter turn apart, so that no place of the stem is more than 45 degrees from one. That is as far round as the belief held before drilling ties the wood together (docs/theory/soundness.md).':
    'Couverture régulière d’abord : si rien n’a été vu, quatre aiguilles à un quart de tour, pour qu’aucun point du tronc ne soit à plus de 45 degrés de l’une d’elles. C’est la distance autour du tronc sur laquelle l’opinion d’avant forage lie le bois (docs/theory/soundness.md).',
  'Where signs of decay were seen at the stem, or its outline is lobed, six needles instead of four: decay is then more likely to be uneven.':
    'Si des signes de pourriture ont été vus sur le tronc, ou si son contour est lobé, six aiguilles au lieu de quatre : la pourriture est alors plus souvent inégale.',
  'Along the bark no two needles are further apart than this, so that on a stout stem a pocket the breadth of a hand or two is not passed over.':
    'Le long de l’écorce, deux aiguilles ne sont jamais plus éloignées que cela, pour que sur un gros tronc une poche large d’une ou deux mains n’échappe pas.',
  'A stem thinner than this gets three needles: each hole is a larger part of it.':
    'Un tronc plus mince que cela reçoit trois aiguilles : chaque trou en est une plus grande part.',
  'More than this many at the start is not asked for: after each drilling the assessment says whether and where another is worth its wound.':
    'On n’en demande pas davantage au départ : après chaque forage, le diagnostic dit si un autre vaut sa blessure, et où.',
  'Wherever something was seen a needle goes in within this of it.':
    'Partout où quelque chose a été vu, une aiguille entre à moins de cette distance.',
  'In the hollows between flares the needle runs level to the centre of the stem: there the wall is measured, not the length of a root. A needle placed for coverage moves up to this far to reach one.':
    'Dans les creux entre contreforts, l’aiguille va horizontalement au centre du tronc : on y mesure la paroi, non la longueur d’une racine. Une aiguille placée pour la couverture se déplace jusque-là pour en atteindre un.',
  'On the ridge of each main flare the needle points 30 to 45 degrees down, toward the underside of the root near the stem, where decay of roots begins.':
    'Sur l’arête de chaque contrefort principal, l’aiguille pointe de 30 à 45 degrés vers le bas, vers le dessous de la racine près du tronc, où commence la pourriture des racines.',
  "The needle enters a flare's ridge a little above the middle of its height, so that it meets the root close to the stem.":
    'L’aiguille entre dans l’arête d’un contrefort un peu au-dessus du milieu de sa hauteur, pour rencontrer la racine près du tronc.',
  'Flares narrower than this are left out unless something was seen there.':
    'Les contreforts plus étroits que cela sont laissés de côté sauf si quelque chose y a été vu.',
  'Drill on to the centre, or as far as the needle reaches; at least this far, from which the section modulus of a hollow stem could be told.':
    'Forer jusqu’au centre, ou aussi loin que va l’aiguille ; au moins jusque-là, d’où le module de flexion d’un tronc creux a pu être déterminé.',
  'Sound side first, decayed side last, and clean the needle with alcohol between sound and decayed places and between trees: a needle carries what it has met.':
    'Côté sain d’abord, côté pourri en dernier, et nettoyer l’aiguille à l’alcool entre endroits sains et pourris et entre arbres : une aiguille transporte ce qu’elle a rencontré.',
  'Assess after each drilling and stop when the advice says that another hole is not worth its wound. On the flares, stop when one more could not change the verdict.':
    'Évaluer après chaque forage et s’arrêter quand le conseil dit qu’un trou de plus ne vaut pas sa blessure. Sur les contreforts, s’arrêter quand un de plus ne pourrait changer le verdict.',
  'Signs further than this above or below a section are not taken as signs of that section.':
    'Les signes plus éloignés que cela au-dessus ou au-dessous d’une section ne sont pas pris comme signes de cette section.',
  // target-kinds.csv
  'children or people who stay': 'des enfants ou des personnes qui séjournent',
  'a building with people in it': 'un bâtiment occupé',
  'a power line': 'une ligne électrique',
  'people in vehicles': 'des personnes en véhicule',
  'people on foot or sitting': 'des personnes à pied ou assises',
  'parked vehicles': 'des véhicules stationnés',
  'a building without people in it': 'un bâtiment inoccupé',
  'low to moderate value': 'une valeur faible à modérée',
  'low value and nobody there': 'une valeur faible et personne sur place',
  // reinspection-caps.csv
  'failure is imminent: act now, then look again':
    'la défaillance est imminente : agir maintenant, puis réexaminer',
  'failure is probable: act, then look again within half a year':
    'la défaillance est probable : agir, puis réexaminer dans les six mois',
  'the governing safety does not reach 1.5 in its middle estimate':
    'la sécurité déterminante n’atteint pas 1,5 en estimation médiane',
  'a wall is thinner than 0.30 of the radius already': 'une paroi est déjà plus mince que 0,30 du rayon',
  'active decay: a fruiting body, or ants and frass':
    'pourriture active : un carpophore, ou des fourmis et leur sciure',
  'failure is possible': 'la défaillance est possible',
  'failure is improbable': 'la défaillance est improbable',
  // anchorage.csv
  'intact root plate, free-draining soil, not restricted; low and high from stem-mass slopes of four conifers':
    'galette racinaire intacte, sol drainant, sans contrainte ; bornes d’après les pentes par masse du tronc de quatre conifères',
  'equivalent bending stress in the stem when the root plate gives way':
    'contrainte de flexion équivalente dans le tronc quand la galette racinaire cède',
  'lodgepole pine in British Columbia': 'pin tordu en Colombie-Britannique',
  'hybrid spruce in British Columbia': 'épinette hybride en Colombie-Britannique',
  'western redcedar in British Columbia': 'thuya géant en Colombie-Britannique',
  'western hemlock in British Columbia': 'pruche de l’Ouest en Colombie-Britannique',
};
