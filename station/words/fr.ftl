# What the station says, en français. Project Fluent; station/words/__init__.py says what values are.

language-name = Français
language-decimal = ,
# Whose order and names of months dates have, as a BCP 47 tag.
language-dates = fr
two-sentences = { $first } { $second }
list-comma = { $first }, { $second }
list-semicolon = { $first } ; { $second }
list-and = { $first } et { $second }
list-or = { $first } ou { $second }

## chemistry

problem-air-pressure = la pression de l’air doit être comprise entre { $least_hpa } et { $most_hpa } hPa, pas { $pressure_hpa } hPa : celle du lieu même, non ramenée au niveau de la mer
problem-altitude = l’altitude doit être comprise entre { $least_m } et { $most_m } m, pas { $altitude_m } m
glassware-measuring-cylinder = éprouvette graduée
glassware-graduated-pipette = pipette graduée
glassware-syringe = seringue
glassware-burette = burette
glassware-balance = balance
problem-concentration-not-above-0 = une concentration doit être supérieure à 0, pas { $mol_dm3 } mol/dm³
signal-danger = Danger
signal-warning = Attention
hazard-h272 = Peut aggraver un incendie; comburant
hazard-h290 = Peut être corrosif pour les métaux
hazard-h226 = Liquide et vapeurs inflammables
hazard-h302 = Nocif en cas d’ingestion
hazard-h312 = Nocif par contact cutané
hazard-h314 = Provoque de graves brûlures de la peau et de graves lésions des yeux
hazard-h315 = Provoque une irritation cutanée
hazard-h318 = Provoque de graves lésions des yeux
hazard-h319 = Provoque une sévère irritation des yeux
hazard-h331 = Toxique par inhalation
hazard-h332 = Nocif par inhalation
hazard-h335 = Peut irriter les voies respiratoires
hazard-euh071 = Corrosif pour les voies respiratoires
hazard-h400 = Très toxique pour les organismes aquatiques
hazard-h410 = Très toxique pour les organismes aquatiques, entraîne des effets néfastes à long terme
hazard-h411 = Toxique pour les organismes aquatiques, entraîne des effets néfastes à long terme
hazard-h412 = Nocif pour les organismes aquatiques, entraîne des effets néfastes à long terme
source-clp = Règlement (CE) n° 1272/2008 (CLP)
source-suppliers-limits = classification des fournisseurs, limites du CLP, annexe I
source-suppliers = classification des fournisseurs
source-annex-vi = { $regulation }, annexe VI, { $index }
source-and-suppliers = { $source }, et fournisseurs
source-and-annex-i = { $source }, et annexe I
step-water-per-cm3 = quantité de matière d’eau formée par 1 cm³ de base ({ $alkali })
of-water-formed = eau formée
step-water-formed = quantité de matière d’eau formée
step-amount = quantité de matière ({ $reagent })
step-water-formed-neither-left = quantité de matière d’eau formée ; il ne reste aucun des deux réactifs
step-water-formed-runs-out = quantité de matière d’eau formée ; réactif limitant : { $reagent }
formula-water-smaller = n(H₂O) = la plus petite des quantités que l’acide et la base peuvent former
formula-water-smaller-figures = n(H₂O) = la plus petite de { $acid_mol } mol et { $alkali_mol } mol
step-amount-of-acid = quantité de matière ({ $acid }) : { $acid_mol } mol pour { $alkali_mol } mol de base
formula-acid-from-alkali = n(acide) = n(base) × { $hydroxides }/{ $protons }
formula-acid-from-alkali-figures = n(acide) = { $alkali_mol } mol × { $hydroxides }/{ $protons }
step-concentration = concentration de l’{ $acid }
step-heat-liquid = chaleur reçue par le liquide
step-heat-liquid-cup-probe = chaleur reçue par le liquide, le gobelet et le capteur
problem-amount-not-above-0 = la quantité de matière ({ $of }) doit être supérieure à 0 mol
step-enthalpy = variation d’enthalpie par mole ({ $of })
problem-not-above-0 = il faut une valeur supérieure à 0 pour { $figure }, pas { $value }
figure-alkali-concentration = la concentration de la base
figure-acid-concentration = la concentration de l’acide
figure-acid-volume = le volume d’acide
figure-alkali-volume = le volume de base
figure-volume-of-acid = le volume d’acide
figure-solid-mass = la masse du solide
figure-liquid-mass = la masse du liquide
figure-heat-capacity-specific = la capacité thermique massique
figure-temperature-change = la variation de température
figure-cup-heat-capacity = la capacité thermique du gobelet
figure-heat = la chaleur
figure-amount = la quantité de matière
figure-heat-per-cm3 = la chaleur par cm³
refusal-pair-swapped = les deux sont inversés : l’acide est { $acid }, la base est { $alkali }
refusal-not-an-acid = { $reagent } : ce n’est pas un acide, c’est { $kind }
refusal-not-an-alkali = { $reagent } : ce n’est pas une base, c’est { $kind }
refusal-pair-gas = avec cette base ({ $alkali }), il se dégage du dioxyde de carbone, qui emporte de la chaleur et de la vapeur d’eau : la chaleur par mole n’est donc pas une valeur unique et connue
refusal-pair-solid = { $acid } et { $alkali } : il se forme un solide, dont la chaleur de formation n’est pas dans le modèle
refusal-pair-protons = { $acid } : les { $protons ->
        [2] deux
       *[3] trois
    } protons sont cédés en { $protons ->
        [2] deux
       *[3] trois
    } étapes, chacune avec sa propre chaleur ; la partie montante n’est donc pas un processus unique et droit
warning-pair-hardly-dissolves = Il se dissout si peu de solide ({ $alkali }) que la température ne changera presque pas.
warning-pair-weak-both = Acide faible et base faible : la réaction n’est pas tout à fait totale, ce qui arrondit le sommet du graphique.
kind-strong-acid = un acide fort
kind-weak-acid = un acide faible
kind-hydroxide = un hydroxyde
kind-weak-alkali = une base faible
kind-carbonate = un carbonate
kind-hydrogencarbonate = un hydrogénocarbonate
kind-salt = un sel
kind-non-electrolyte = un non-électrolyte
stock-hydrochloric-acid = 36 % en masse, 1,18 g/cm³
stock-nitric-acid = 70 % en masse, 1,42 g/cm³
stock-sulfuric-acid = 98 % en masse, 1,84 g/cm³
stock-ethanoic-acid = glacial, 99,5 %, 1,05 g/cm³
stock-phosphoric-acid = 85 %, 1,70 g/cm³ ; de mémoire
stock-ammonia = 25 %, 0,91 g/cm³ ; de mémoire
stock-potassium-hydroxide = pastilles, 85 % en masse ; de mémoire
stock-solid = solide
problem-volume-concentration = le volume et la concentration doivent être supérieurs à 0
problem-hardly-dissolves = { $reagent } : presque insoluble, pas de solution à { $mol_dm3 } mol/dm³
problem-stock-too-weak = une solution mère à { $stock_mol_dm3 } mol/dm³ est moins concentrée que les { $mol_dm3 } mol/dm³ voulus
prepare-add-solid-slowly = Ajouter lentement { $mass_g } g de solide ({ $reagent }), par petites quantités, en agitant : cela chauffe. Ne jamais verser d’eau dessus.
prepare-add-solid = Ajouter { $mass_g } g de solide ({ $reagent }) et agiter jusqu’à dissolution complète.
prepare-room-temperature-make-up = Laisser revenir à température ambiante, puis compléter à { $volume_cm3 } cm³ avec de l’eau distillée et bien homogénéiser.
prepare-cool-make-up = Laisser refroidir à température ambiante, puis compléter à { $volume_cm3 } cm³ avec de l’eau distillée et bien homogénéiser.
prepare-water = Verser environ { $volume_cm3 } cm³ d’eau distillée froide dans un grand bécher.
prepare-label = Fermer et étiqueter le flacon aussitôt.
prepare-water-fume-cupboard = Sous la hotte : verser environ { $volume_cm3 } cm³ d’eau distillée froide dans un grand bécher.
prepare-add-stock = Ajouter lentement, en agitant, { $volume_cm3 } cm³ de solution mère ({ $reagent }, { $mol_dm3 } mol/dm³) : la solution mère dans l’eau.
prepare-add-strong-acid = Ajouter lentement, en agitant, { $volume_cm3 } cm³ de solution mère ({ $reagent }, { $mol_dm3 } mol/dm³) : l’acide dans l’eau, jamais l’eau dans l’acide.
prepare-mind-heat = Attention : cela chauffe.
problem-unknown-reagent = réactif inconnu { $typed }. Réactifs connus : { $known } ; pour certains, les hydrates aussi
problem-unknown-reagent-hint = réactif inconnu { $typed }. Est-ce { $hint } ? Réactifs connus : { $known } ; pour certains, les hydrates aussi
refusal-no-solid = Les établissements scolaires ont ce réactif ({ $reagent }) à l’état liquide, pas comme solide à peser : en ajouter une solution.
warning-anhydrous = Ici, « { $reagent } » désigne le solide sans eau de cristallisation, { $formula }. Si l’étiquette du flacon dit autre chose, choisir { $others } : la masse molaire et la chaleur sont différentes.
refusal-no-such-solution-at = Il n’existe pas de solution à { $mol_dm3 } mol/dm³ ({ $reagent }) à { $temperature_c } °C : il s’en dissout au plus environ { $most_mol_dm3 } mol/dm³.
refusal-too-strong = Ce TP n’est pas prévu pour une solution à { $mol_dm3 } mol/dm³ ({ $reagent }) : elle brûle et chauffe violemment. Choisir { $limit_mol_dm3 } mol/dm³ ou moins.
refusal-gas-ammonia = Un mélange de ces réactifs ({ $first }, { $second }) dégage de l’ammoniac, nocif à respirer. Ce TP n’est pas fait pour un gaz : choisir d’autres réactifs.
refusal-gas-carbon-dioxide = Un mélange de ces réactifs ({ $first }, { $second }) dégage du dioxyde de carbone : le gobelet peut déborder en moussant et ne doit pas être fermé. Ce TP n’est pas fait pour un gaz : choisir d’autres réactifs.
warning-heat-unknown = On ne sait pas ici quelle chaleur ces réactifs ({ $first }, { $second }) libèrent ou absorbent ensemble, ni si un solide précipite : le personnel qualifié doit d’abord l’essayer, avec de petites quantités.
refusal-no-such-solution = Une telle solution aqueuse n’existe pas : vérifier les volumes, les masses et les concentrations.
advice-take-less = En prendre moins, ou prendre des solutions plus diluées ou davantage d’eau.
refusal-would-boil = Le mélange bouillirait et projetterait du liquide.
refusal-too-hot = Le mélange atteindrait environ { $temperature_c } °C : au-dessus de { $limit_c } °C, il brûle.
warning-hot = Le mélange peut atteindre environ { $temperature_c } °C : au-dessus de { $limit_c } °C, il fait mal sur la peau. Ne pas tenir le gobelet à la main et le laisser dans son bécher jusqu’à ce qu’il ait refroidi.
refusal-too-cold = Le mélange serait à environ { $temperature_c } °C : au-dessous de { $limit_c } °C, il peut geler, et le froid abîme la peau. Commencer à une température plus élevée, ou prendre moins de ce qui refroidit.
warning-cold = Le mélange peut descendre à environ { $temperature_c } °C : près de la congélation, les mesures sont incertaines. Commencer à une température plus élevée, ou prendre moins de ce qui refroidit.
amount-mass = { $reagent }, { $mass_g } g
refusal-insoluble = Tout ne se dissout pas ({ $weighed }) : à { $temperature_c } °C, cette eau en dissout au plus environ { $most_g } g. En peser moins, ou prendre davantage d’eau.
warning-dissolves-slowly = C’est presque tout ce que cette eau peut dissoudre à { $temperature_c } °C ({ $weighed } ; au plus environ { $most_g } g) : la dissolution est lente, et il peut rester du solide. En peser moins.
refusal-violent = Ajoutée d’un coup, cette quantité ({ $weighed }) chauffe trop violemment : le gobelet s’échauffe d’environ { $rise_c } °C en quelques secondes, avec risque de projections. En peser moins, ou prendre davantage d’eau.
warning-heats = Le gobelet s’échauffe d’environ { $rise_c } °C pendant la dissolution ({ $weighed }). Verser le solide dans l’eau en agitant, jamais l’eau sur le solide.
warning-drops-burn = Les gouttes brûlent la peau et les yeux.
reagent-hydrochloric-acid = acide chlorhydrique
reagent-nitric-acid = acide nitrique
reagent-sulfuric-acid = acide sulfurique
reagent-ethanoic-acid = acide éthanoïque
reagent-citric-acid = acide citrique
reagent-citric-acid-monohydrate = acide citrique monohydraté
reagent-ethanedioic-acid = acide oxalique
reagent-ethanedioic-acid-dihydrate = acide oxalique dihydraté
reagent-tartaric-acid = acide tartrique
reagent-phosphoric-acid = acide phosphorique
reagent-sodium-hydroxide = hydroxyde de sodium
reagent-potassium-hydroxide = hydroxyde de potassium
reagent-lithium-hydroxide = hydroxyde de lithium
reagent-lithium-hydroxide-monohydrate = hydroxyde de lithium monohydraté
reagent-ammonia = ammoniaque
reagent-calcium-hydroxide = hydroxyde de calcium
reagent-barium-hydroxide = hydroxyde de baryum
reagent-barium-hydroxide-octahydrate = hydroxyde de baryum octahydraté
reagent-sodium-carbonate = carbonate de sodium
reagent-sodium-carbonate-decahydrate = carbonate de sodium décahydraté
reagent-potassium-carbonate = carbonate de potassium
reagent-calcium-carbonate = carbonate de calcium
reagent-sodium-hydrogencarbonate = hydrogénocarbonate de sodium
reagent-potassium-hydrogencarbonate = hydrogénocarbonate de potassium
reagent-ammonium-nitrate = nitrate d’ammonium
reagent-ammonium-chloride = chlorure d’ammonium
reagent-potassium-nitrate = nitrate de potassium
reagent-potassium-chloride = chlorure de potassium
reagent-sodium-nitrate = nitrate de sodium
reagent-sodium-chloride = chlorure de sodium
reagent-sodium-ethanoate = éthanoate de sodium
reagent-sodium-ethanoate-trihydrate = éthanoate de sodium trihydraté
reagent-lithium-chloride = chlorure de lithium
reagent-ammonium-sulfate = sulfate d’ammonium
reagent-calcium-chloride = chlorure de calcium
reagent-calcium-chloride-dihydrate = chlorure de calcium dihydraté
reagent-calcium-chloride-hexahydrate = chlorure de calcium hexahydraté
reagent-magnesium-sulfate = sulfate de magnésium
reagent-magnesium-sulfate-heptahydrate = sulfate de magnésium heptahydraté
reagent-copper-ii-sulfate = sulfate de cuivre(II)
reagent-copper-ii-sulfate-pentahydrate = sulfate de cuivre(II) pentahydraté
reagent-urea = urée
reagent-water = eau
solid-sodium-hydroxide = hydroxyde de sodium
solid-potassium-hydroxide = hydroxyde de potassium
problem-no-solution-of = une telle solution aqueuse n’existe pas : { $solutes_text }
problem-water-range = l’eau n’est décrite ici que de 0 à 100 °C, pas à { $temperature_c } °C
problem-unknown-glassware = verrerie inconnue { $typed } ; verrerie connue : { $known }

## practical

accepted-neutralisation = { $strength } : { $here_kj_mol } kJ/mol à { $temperature_c } °C et à ces concentrations, { $dilute_kj_mol } kJ/mol à 25 °C en solution très diluée.
accepted-solution = Dans beaucoup d’eau à 25 °C ({ $reagent }) : { $enthalpy_kj_mol } kJ/mol.
accepted-in-this-water = Dans autant d’eau qu’ici, environ { $enthalpy_kj_mol } kJ/mol.
strength-pair = Acide { $acid ->
        [strong] fort
       *[weak] faible
    } et base { $alkali ->
        [strong] forte
       *[weak] faible
    }
accepted-school-one = Les manuels scolaires donnent { $enthalpy_kj_mol } kJ/mol.
accepted-school-range = Les manuels scolaires donnent de { $from_kj_mol } à { $to_kj_mol } kJ/mol.
problem-plain-text = doit être du texte simple, sans caractères de commande
problem-division = doit être 1, 0.5, 0.2 ou 0.1
refusal-write-plain-text = Écris du texte simple, sur une ligne : un nom ou une étiquette jusqu’à 24 caractères, le reste jusqu’à 200.
refusal-type-volume = Saisis le volume sous forme de nombre de 0,01 à 1000 cm³, par exemple 4,5.
refusal-type-temperature = Saisis la température sous forme de nombre de −5 à 60 °C, par exemple 21,5.
refusal-choose-divisions = Choisis un thermomètre gradué tous les 1 ; 0,5 ; 0,2 ou 0,1 °C.
refusal-type-own-volume = Saisis ton volume sous forme de nombre de 0 à 1000 cm³, par exemple 23,5.
refusal-type-own-change = Saisis ta variation de température sous forme de nombre de −65 à 65 °C, par exemple +6,2 ou −3,5.
refusal-type-mass = Saisis la masse sous forme de nombre jusqu’à 1000 g, par exemple 95,2.
refusal-type-plus-minus = Saisis le ± sous forme de nombre supérieur à 0, jusqu’à 10.
refusal-type-air-pressure = Saisis la pression de l’air en hPa, par exemple 1013.
refusal-type-altitude = Saisis l’altitude sous forme de nombre de −430 à 5000 m.
refusal-type-check-temperature = Saisis la température sous forme de nombre de −5 à 110 °C, par exemple 21,5.
refusal-cup-label = L’étiquette du gobelet doit être du texte simple, jusqu’à 40 caractères.
refusal-say-which-check = Indiquer dans check de quelle vérification il s’agit.
refusal-repeat-under-way = Un essai est en cours à ce poste : il faut d’abord le terminer.
refusal-probe-takes-temperature = Le capteur relève une température : attends qu’il ait fini, ou commence le TP.
refusal-check-under-way = Une vérification est déjà en cours : il faut d’abord l’enregistrer ou l’abandonner.
refusal-no-probe-to-check = Ce poste n’a pas de capteur à vérifier.
refusal-type-pressure-or-altitude = Saisir la pression de l’air ou, à défaut, l’altitude du lieu.
refusal-cannot-be = C’est impossible : { $reason }.
refusal-step-not-now = Ce n’est pas le moment de cette étape.
refusal-type-reference = Saisir ce qu’indique le thermomètre de référence.
refusal-probe-not-at-rest = Le capteur n’est pas encore stable : agiter, attendre, puis relire les deux.
refusal-type-both-masses = Saisir les deux masses : celle de l’eau chaude et celle de l’eau ajoutée.
refusal-compare-between = Comparer entre { $least_c } et { $most_c } °C : rendre l’eau plus chaude ou plus froide, puis relire les deux.
refusal-check-found-nothing = La vérification n’a encore rien donné : continuer, ou l’abandonner.
refusal-cup-needs-label = Donner au gobelet une étiquette, pour pouvoir le reconnaître.
refusal-no-such-check = Cette vérification n’existe pas, ou elle a déjà été retirée.
refusal-no-check-under-way = Aucune vérification n’est en cours.
csv-cell = ligne { $line }, colonne { $column } : { $what }
csv-empty = est vide : écrivez ce qui manque, ou supprimez la ligne
csv-not-a-number = pas un nombre : { $typed }
csv-not-a-number-dot = pas un nombre : { $typed } (un point, pas une virgule)
csv-not-between = { $typed } n’est pas compris entre { $least } et { $most }
csv-file-empty = le fichier est vide ; il lui faut l’en-tête { $header_text }
csv-not-csv = ce n’est pas un fichier CSV : { $reason }
csv-twice-in-header = figure deux fois dans l’en-tête
csv-missing = manque ; l’en-tête est { $header_text }
csv-not-whole = pas un nombre entier : { $typed }
csv-no-rows = aucune ligne sous l’en-tête ; est-ce le bon fichier ?
csv-bad-row = ce n’est pas une ligne CSV : { $reason }
csv-too-many-rows = plus de { $most } lignes ; est-ce un seul TP ?
csv-cells-under-header = { $cells } cellules sous un en-tête qui en a { $header }
note-record-repaired = L’enregistrement était endommagé et a été réparé au démarrage : compare le tableau avec ce que tu as fait.
refusal-write-note = Écris la note dans text.
refusal-notes-enough = Il y a déjà { $count } notes.
refusal-no-such-note = Cette note n’existe pas, ou elle a déjà été retirée.
refusal-finish-first = Termine d’abord le TP, puis lis tes propres droites.
refusal-nothing-to-read = Il n’y a encore rien à lire : termine d’abord un essai qui a des mesures.
refusal-own-reading-stands = Ta propre lecture ne peut plus changer : les résultats ont été montrés.
refusal-say-why-not-read = Dis pourquoi tu n’as pas pu la lire.
refusal-not-turned-yet = La température n’a pas encore changé de sens. Fais un essai de plus, ou dis pourquoi tu n’as pas pu lire.
refusal-finish-repeat = Termine d’abord l’essai en cours.
refusal-adopt-portions-only = Seules les mesures d’un TP avec des portions peuvent être reprises.
refusal-adopt-label = Indique dans label de qui viennent les mesures : par exemple le nom de l’autre poste.
refusal-adopt-choose-file = Choisis le fichier de mesures de l’autre poste.
refusal-adopt-unusable = Ces mesures ne sont pas utilisables : { $reason }.
refusal-adopt-too-many = Il y a { $count } mesures ; on peut en reprendre { $most } au plus. Enlève des essais du fichier.
refusal-nothing-adopted = Aucune mesure d’un autre groupe n’est utilisée.
safety-school-first = L’évaluation des risques de ton établissement et les consignes de ton professeur passent avant tout.
safety-eye-protection = Porter des lunettes de protection étanches aux projections.
safety-small-volumes = Utiliser de petits volumes : pas plus que ce que le plan prévoit.
safety-wipe-spills = Essuyer aussitôt tout liquide renversé.
safety-rinse-skin = Rincer abondamment à l’eau toute projection sur la peau.
safety-splash-in-eye = Projection dans l’œil : rincer aussitôt à l’eau et appeler le professeur.
safety-no-mouth-pipetting = Ne jamais pipeter à la bouche.
safety-cup-in-beaker = Placer le gobelet dans un bécher pour qu’il ne puisse pas se renverser.
clear-pour-away = Élimine le mélange selon les règles de ton établissement.
clear-collect = Ne jette pas le mélange à l’évier : verse-le là où ton professeur l’indique.
safety-water = L’eau n’est pas dangereuse.
amount-portions = { $count } portions de { $volume_cm3 } cm³
amount-mass-only = { $mass_g } g
amount-volume-only = { $volume_cm3 } cm³
basis-not-classified = Non classé dangereux ({ $source }).
basis-pure = À l’état pur ({ $source }).
basis-yours-to-find = À toi de la trouver : on suppose { $mol_dm3 } mol/dm³, le maximum que ce plan peut déterminer.
basis-solution-not-classified = Non classé dangereux à cette concentration, { $percent } % en masse ({ $source }).
basis-percent = { $percent } % en masse ({ $source }).
basis-solution = À cette concentration, { $percent } % en masse ({ $source }).
caution-keep-off = Éviter tout contact avec la peau et les yeux ({ $reagent }) : des lésions durables sont possibles. Se renseigner sur le port de gants.
caution-do-not-breathe = Ne pas respirer les vapeurs ni les poussières : garder les flacons fermés et aérer la salle.
caution-no-lid = Pas de couvercle : il se forme un gaz. Ajouter lentement et aérer la salle.
caution-spatula = Prélever le solide ({ $reagent }) avec une spatule, jamais avec les doigts.
caution-flames = Tenir à l’écart des flammes et de tout ce qui peut brûler : { $reagent }.
caution-hot-cup = Le gobelet peut devenir très chaud : ajouter le solide à l’eau, jamais l’eau au solide.
clear-probe = Retire le capteur et rince-le à l’eau.
clear-rinse = Rince à l’eau le gobelet et la verrerie.
clear-wipe = Essuie la paillasse avec un chiffon humide.
clear-hands = Lave-toi les mains.
heat-no-start-reading = La mesure avant la première portion (0 cm³) manque.
heat-cannot-be-used = Le bilan thermique n’est pas utilisable : { $reason }.
heat-no-trace = Il n’y a pas de tracé : ce sont seulement des mesures.
judged-minutes = Tu as mis { $own_min } min ; aux moments choisis par la station, il aurait fallu environ { $station_min } min.
judged-early-none = Aucune mesure n’a été prise avant le moment choisi par la station.
judged-early = { $count ->
        [one] Une mesure a été prise avant le moment choisi par la station.
       *[other] { $count } mesures ont été prises avant le moment choisi par la station.
    }
judged-none-off = Aucune ne s’écarte de plus d’un pas du capteur, 0,06 °C.
judged-at-portion = essai { $repeat }, portion { $portion }
judged-at-start = essai { $repeat }, début
judged-too-low = La plus grande erreur est de { $error_c } °C, valeur trop basse : { $where }.
judged-too-high = La plus grande erreur est de { $error_c } °C, valeur trop haute : { $where }.
judged-unread = { $count ->
        [one] Une portion n’a pas de mesure.
       *[other] { $count } portions n’ont pas de mesure.
    }
judged-hardly-waited = Tu n’as guère attendu plus longtemps que la station ne l’aurait fait.
judged-waited-at-start = Avant la première portion, tu as attendu { $seconds } s de plus que nécessaire. Cela n’a coûté que du temps.
judged-waited = Tu as attendu { $seconds } s de plus que la station ne l’aurait fait.
judged-moved = Cela a décalé une mesure de { $moved_c } °C au plus.
judged-no-lines = Tes mesures ne donnent pas deux droites qui se coupent.
judged-lines-own = Droites : { $own_cm3 } cm³ avec tes mesures ; celles de la station sont trop peu nombreuses pour comparer.
judged-best = Le bilan thermique de la courbe entière donne { $best_cm3 } cm³, la meilleure valeur ici. Tes droites s’en écartent de { $own_off_cm3 } cm³, celles de la station de { $station_off_cm3 } cm³.
judged-best-own = Le bilan thermique de la courbe entière donne { $best_cm3 } cm³, la meilleure valeur ici. Tes droites s’en écartent de { $own_off_cm3 } cm³.
judged-lines = Droites : { $own_cm3 } cm³ avec tes mesures, { $station_cm3 } cm³ avec celles de la station.
once-cannot-be-mixed = Ces quantités ne peuvent pas être mélangées : { $reason }.
once-no-repeat = aucun essai n’a donné de résultat
once-no-enthalpy = Pas d’enthalpie par mole : { $reason }.
of-reaction = réaction
once-counted-as-water = Le liquide du gobelet ({ $reagent }) est compté comme de l’eau.
of-dissolved = dissolution : { $reagent }
once-not-recorded = Le mélange n’a pas encore été enregistré.
problem-acid-one-concentration = [acid] donner concentration_mol_dm3 (connue de la classe) ou prepared_mol_dm3, pas les deux
practical-pair = { $first } et { $second }
amount-volume = { $reagent }, { $volume_cm3 } cm³
problem-not-toml = { $where_text } : TOML non valide : { $reason }
hazard-near-a-limit = C’est à moins de 5 % d’une limite du règlement : la classe la plus sévère est indiquée.
problem-zero-or-more = doit être 0 ou au moins 0.001
problem-liquid-water = [liquid] l’eau n’a pas de concentration_mol_dm3
problem-liquid-needs = [liquid] il faut une concentration_mol_dm3 ({ $reagent })
problem-addition-one = [addition] donner mass_g (un solide), ou volume_cm3 avec concentration_mol_dm3 (une solution)
problem-addition-concentration = [addition] une solution a besoin de volume_cm3 et de concentration_mol_dm3, un solide n’a ni l’un ni l’autre
field-above = Doit être supérieur à { $limit }.
field-at-least = Doit être au moins { $limit }.
field-below = Doit être inférieur à { $limit }.
field-at-most = Doit être au plus { $limit }.
field-letters = Au plus { $limit } caractères.
field-number = Doit être un nombre.
field-whole-number = Doit être un nombre entier.
field-table = Doit être une table de clés.
field-text = Doit être un texte.
field-unknown = Cette clé n’est pas connue ici.
field-missing = Manque.
field-one-of = Doit être { $choices_text }.
more-problems = { $first } (et { $count } de plus)
plausible-check-plan = Vérifie le plan : { $reason }.
plausible-start-far = Au début, on lit { $start_c } °C, mais { $place ->
        [room] la salle
       *[alkali] la base
    } est à { $other_c } °C : le capteur était-il dans le gobelet, et est-ce le bon ?
plausible-too-much = Après { $volume_cm3 } cm³, la variation est de { $change_c } °C, mais ces réactifs peuvent donner au plus { $most_c } °C : vérifie les concentrations, les flacons et le capteur.
plausible-exchanged = Les concentrations donnent { $expected_cm3 } cm³, l’équivalence est à { $end_point_cm3 } cm³ : l’acide et la base ont-ils été échangés ?
plausible-end-point = Les concentrations donnent { $expected_cm3 } cm³, l’équivalence est à { $end_point_cm3 } cm³ : les flacons, le plan et les volumes étaient-ils les bons ?
plausible-enthalpy = L’enthalpie est de { $enthalpy_kj_mol } kJ/mol alors qu’on attend { $expected_kj_mol } kJ/mol : vérifie la concentration de la base, les volumes et le couvercle.
basis-middle = milieu du domaine que ce plan peut déterminer
basis-known = connue de la classe
basis-prepared = préparée par le personnel
predict-change-pair = { $reason } ; modifier [acid] ou [alkali]
predict-count-too-small = [portions] count = { $count } ne laisse pas d’équivalence avec { $readings } mesures de chaque côté : prévoir au moins { $least } portions
predict-as-planned = comme prévu
heat-needs-portions = Le bilan thermique a besoin d’au moins { $least } portions.
predict-not-passed = Il n’est pas sûr que l’équivalence soit dépassée : prévoir plus de portions.
predict-first-portion = L’équivalence se trouve dans la première portion : prévoir des portions plus petites.
predict-no-curve = Aucune courbe ne peut être prévue : { $reason }.
predict-usual-cup = Le gobelet perd de la chaleur comme le fait d’ordinaire un gobelet isolé avec couvercle ; d’autres gobelets diffèrent.
predict-exact = Les concentrations sont exactes ; ± est une incertitude-type d’un seul essai.
predict-usual-cup-spread = Le gobelet perd de la chaleur comme le fait d’ordinaire un gobelet isolé avec couvercle ; d’autres gobelets diffèrent, et ± comprend la dispersion habituelle.
predict-warm-as-room = La base et l’acide sont à peu près à la température de la salle, sauf indication contraire du plan ; la température de la base est mesurée avant.
predict-minutes = Plonger le capteur dans la base prend { $dip_min } min, un début stable { $start_min } min, une portion { $pour_s } s à verser et { $graph_s } s (rythme rapide : { $quick_s } s) pour se stabiliser, rincer et remplir { $rinse_min } min. Il faut y ajouter l’installation et le rangement.
predict-warm-as-cup = Ce qu’on ajoute est à la même température que le gobelet, sauf indication contraire du plan.
predict-minutes-once = Un début stable prend { $start_min } min, rincer et remplir { $rinse_min } min ; il faut y ajouter l’installation et le rangement.
problem-once-no-solution = une telle solution aqueuse n’existe pas : vérifier les volumes, la masse et les concentrations de [liquid] et de [addition]
predict-heat-unknown = La chaleur échangée ({ $added } dans { $liquid }) n’est pas connue ici ; on ne peut donc annoncer aucune variation.
predict-no-change = On ne peut annoncer aucune variation : { $reason }.
warning-small-change = La température ne varie que de { $change_c } °C : le ± sera large. Ne pas concentrer les solutions pour cela ; lire avec le capteur, utiliser une meilleure verrerie et faire plus d’essais.
warning-too-long = Environ { $minutes } minutes à la paillasse : avec { $aside_min } minutes pour installer et ranger, cela dépasse une séance de { $lesson_min }. Prévoir moins d’essais ou de portions, ou le rythme rapide.
warning-not-passed = L’équivalence ({ $end_point_cm3 } cm³) n’est pas dépassée avec { $count } portions ({ $total_cm3 } cm³) : prévoir plus de portions.
warning-few-after = { $count ->
        [one] Seulement { $count } mesure se trouve après l’équivalence, il en faut trois : prévoir plus de portions.
       *[other] Seulement { $count } mesures se trouvent après l’équivalence, il en faut trois : prévoir plus de portions.
    }
warning-few-before = { $count ->
        [one] Seulement { $count } mesure se trouve avant l’équivalence, il en faut trois : prévoir des portions plus petites.
       *[other] Seulement { $count } mesures se trouvent avant l’équivalence, il en faut trois : prévoir des portions plus petites.
    }
warning-heat-balance-refuses = Le bilan thermique ne donnera rien : { $reason }.
warning-rough-curve = La courbe suppose une chaleur moyenne unique jusqu’au dernier proton : ce n’est qu’une indication.
warning-lines-refuse = Avec ces portions, les droites ne donneront rien dans environ { $share } essais sur 100.
stock-own-bottle = le flacon de l’établissement
prepare-usual-practice = Ce n’est que l’usage courant : l’évaluation des risques de l’employeur, les règles locales et le personnel qualifié passent avant. L’étiquette d’un flacon compte plus qu’un tableau.
problem-benches = le nombre de postes doit aller de 1 à 100, pas { $count }
prepare-not-down-the-sink = Ne jamais jeter à l’évier de solides ni de solutions concentrées.
lesson-explain = Expliquer, distribuer, mettre les lunettes
lesson-clear-up = Ranger, se laver les mains
lesson-talk = Droites personnelles, résultats, discussion
lesson-repeats = { $count ->
        [one] { $count } essai à la paillasse
       *[other] { $count } essais à la paillasse
    }
item-cup = gobelet isolé avec couvercle, dans un bécher qui le maintient debout
item-stirrer = agitateur
item-bottle = flacon ou bécher étiqueté pour chaque solution
item-waste-beaker = bécher de récupération
item-wash-bottle = pissette, essuie-tout
item-eye-protection = lunettes de protection étanches aux projections (pour un binôme ; professeur et personnel de laboratoire aussi)
item-pipette-for = pipette ou éprouvette graduée pour { $volume_cm3 } cm³
item-syringe-for = seringue ou éprouvette graduée pour des portions de { $volume_cm3 } cm³
item-glassware-for = { $glassware } pour des portions de { $volume_cm3 } cm³
item-cylinder-for = éprouvette graduée pour { $volume_cm3 } cm³
item-balance = balance au centième de gramme (plusieurs postes peuvent en partager une)
item-weighing-boat = coupelle de pesée contenant { $mass_g } g
spill-solid = Solide répandu : balaie-le à sec, puis essuie avec un chiffon humide.
spill-small = Petites quantités renversées : essuyer aussitôt avec beaucoup d’eau, lunettes sur les yeux.
spill-acid = Plus grande quantité d’acide renversée : hydrogénocarbonate ou carbonate de sodium jusqu’à ce que l’effervescence cesse, puis éponger.
spill-alkali = Plus grande quantité de base renversée : diluer avec de l’eau, solution d’acide citrique, puis éponger.
safety-splash-in-eye-long = Projection dans l’œil : rincer sous un filet d’eau pendant 20 minutes ; appeler un médecin ou les secours.
label-not-classified = Non classé dangereux à cette concentration ; les précautions habituelles s’appliquent.
label-of-stock = La solution mère
label-of-bottle = L’étiquette du flacon
label-of-store = L’étiquette du flacon de réserve
label-staff-only = Flacon de réserve, réservé au personnel
label-to-find = concentration à déterminer
label-made-on = Préparé le : ________ par : ________
label-hazards = { $signal } : { $statements }.
label-hazards-no-signal = { $statements }.
label-statement = { $hazard } ({ $code })
sheet-weighed = { $count } fois { $each_g } g ; prévoir { $total_g } g.
sheet-lay-out = Matériel à disposer
sheet-items = { $count } × { $item }
sheet-mind = Attention
sheet-spills = Liquides renversés
sheet-disposal = Élimination
sheet-make-from-mass = { $reagent }, { $mol_dm3 } mol/dm³ : préparer { $volume_cm3 } cm³ à partir de { $mass_g } g ({ $stock })
sheet-make-from-volume = { $reagent }, { $mol_dm3 } mol/dm³ : préparer { $volume_cm3 } cm³ à partir de { $stock_cm3 } cm³ ({ $stock })
sheet-why-so-much = Versés en tout : { $poured_cm3 } cm³. Le reste : { $rinse_cm3 } cm³ par poste pour rincer la verrerie et tremper le capteur, et { $percent } % pour ce qui est renversé et les essais manqués.
sheet-gloves = En manipulant le produit de départ, porter des gants contre les produits chimiques, en plus des lunettes.
sheet-vessel = { $count ->
    [one] Le tout va dans un flacon ou un bidon de { $dm3 } dm³ : polyéthylène pour les bases, verre ou polyéthylène pour les acides.
   *[other] Le tout va dans { $count } flacons ou bidons de { $dm3 } dm³ : polyéthylène pour les bases, verre ou polyéthylène pour les acides.
}
sheet-near-limit = À moins de 10 % d’une limite : à partir d’environ { $mol_dm3 } mol/dm³, il faut aussi { $statements }. Mesurer avec soin ; une solution plus concentrée demande l’étiquette plus stricte.
sheet-strength-as-made = Ainsi préparée, sa concentration est connue à environ { $percent } % (± { $u_mol_dm3 } mol/dm³, une incertitude-type) : les produits de départ ne sont pas purs et leur étiquette donne un intervalle.
sheet-as-sure-as-bottle = Sa concentration est connue aussi bien que celle de votre propre flacon, et pas mieux qu’à 0.6 % avec des éprouvettes graduées.
standardise-head = Pour la connaître mieux : étalonner la solution ({ $reagent })
standardise-weigh = Peser environ { $mass_g } g d’hydrogénophtalate de potassium sec à 0.01 g près dans un erlenmeyer, et dissoudre dans environ 50 cm³ d’eau distillée.
standardise-burette = Ajouter deux gouttes de phénolphtaléine. Verser { $reagent } à la burette jusqu’au premier rose qui reste une demi-minute.
standardise-pipette = Pipeter 25.0 cm³ de { $reagent } dans un erlenmeyer, ajouter deux gouttes de phénolphtaléine.
standardise-alkali-burette = Verser à la burette la base étalonnée ({ $alkali }) jusqu’au premier rose qui reste une demi-minute.
standardise-thrice = Le faire trois fois. Si les résultats diffèrent de plus de 1 %, recommencer.
standardise-by-mass = Concentration en mol/dm³ = { $factor } × masse en g ÷ volume en cm³. Écrire la moyenne sur l’étiquette et dans le plan.
standardise-by-ratio = Calculer la concentration ({ $reagent }) d’après les volumes et l’équation. Écrire la moyenne sur l’étiquette de réserve et dans le plan.
standardise-known-to = Elle est alors connue à environ { $percent } % (± { $u_mol_dm3 } mol/dm³, une incertitude-type), avec une balance à 0.01 g et de la verrerie de classe B.
standardise-flames = Tenir la phénolphtaléine loin des flammes : elle est dissoute dans l’éthanol.
sheet-class-to-find = La classe doit trouver sa concentration : ne pas l’écrire sur les flacons des élèves.
sheet-needed = Il en faut { $volume_cm3 } cm³. Le plan n’indique pas sa concentration.
sheet-can-resolve = Ce plan peut déterminer de { $least_mol_dm3 } à { $most_mol_dm3 } mol/dm³.
sheet-label-holds = L’étiquette vaut pour { $mol_dm3 } mol/dm³ et moins.
lesson-left = { $minutes ->
        [one] Il reste { $minutes } minute.
       *[other] Il reste { $minutes } minutes.
    }
lesson-too-long = { $minutes } minutes de trop. Avec { $repeats } des essais, cela peut tenir ; sinon, les partager.
lesson-of = Séance de { $minutes } minutes
check-ice = point de glace
check-comparison = comparaison avec un thermomètre
check-ice-and-boiling = points de glace et d’ébullition
day-not-known = à une date inconnue
day-clock-not-set = { $day_date }, d’après une horloge non réglée
probe-nothing-told = Rien n’est dit d’une vérification du capteur : les températures sont prises telles quelles.
probe-not-checked = Le capteur n’a pas été vérifié : ses températures peuvent être fausses de ± 0,5 °C (fiche technique). Dans une différence de deux températures, un décalage s’annule.
probe-corrected = Les températures sont corrigées de { $added_c } °C (± { $u_c } °C) : { $check }, { $day }.
probe-offset-cancels-slope = Dans une différence, le décalage s’annule ; il reste ± { $percent } % sur la pente, qui compte dans l’enthalpie.
probe-offset-cancels = Dans une différence de deux températures, un décalage s’annule ; la pente n’a pas été vérifiée.
probe-changed = Le capteur ou sa correction a changé pendant l’essai { $repeat } : regarde si ses températures vont ensemble.
probe-differing = Les essais n’ont pas tous la même correction : voir ce que chacun dit de son capteur.
problem-unknown-key = { $key_name } : clé inconnue ; la supprimer ou vérifier son orthographe
problem-missing = { $key_name } : manque ; l’ajouter
problem-got-hidden = { $key_name } : { $said } (reçu : non affiché)
problem-got = { $key_name } : { $said } (reçu { $got_typed })
problem-of-table = [{ $table_name }] { $said }
input-table = une table
input-list = une liste
input-greater-than = la valeur doit être supérieure à { $limit }
input-greater-than-equal = la valeur doit être supérieure ou égale à { $limit }
input-less-than = la valeur doit être inférieure à { $limit }
input-less-than-equal = la valeur doit être inférieure ou égale à { $limit }
input-finite-number = la valeur doit être un nombre fini
input-float-type = la valeur doit être un nombre valable
input-float-parsing = la valeur doit être un nombre valable ; ce texte ne se lit pas comme un nombre
input-int-type = la valeur doit être un nombre entier
input-int-parsing = la valeur doit être un nombre entier ; ce texte ne se lit pas comme un nombre entier
input-int-from-float = la valeur doit être un nombre entier, sans partie décimale
input-string-type = la valeur doit être un texte
input-bool-type = la valeur doit être true ou false
input-bool-parsing = la valeur doit être true ou false ; celle-ci ne se comprend pas
input-literal-error = la valeur doit être { $choices_text }
input-model-type = la valeur doit être une table de clés
input-list-type = la valeur doit être une liste
input-string-too-short = { $count ->
        [one] le texte doit avoir au moins { $count } caractère
       *[other] le texte doit avoir au moins { $count } caractères
    }
input-string-too-long = { $count ->
        [one] le texte doit avoir au plus { $count } caractère
       *[other] le texte doit avoir au plus { $count } caractères
    }
input-string-pattern-mismatch = le texte doit suivre le modèle "{ $pattern_text }"
refusal-adopted = Ce sont les mesures d’un autre groupe. Reviens d’abord aux tiennes.
refusal-probe-being-checked = Le personnel vérifie le capteur : demande-lui d’enregistrer ou d’abandonner la vérification.
state-not-begun = Le TP n’a pas commencé.
state-alkali = La température de la base est en cours de mesure ; commence, ou attends.
state-start = La température de départ est en cours de mesure.
state-portion = Une portion est demandée.
state-settling = La température se stabilise.
state-repeat-ended = L’essai est terminé : rince, remplis de nouveau, puis appuie.
state-paused = Le TP est en pause : il faut d’abord le reprendre.
state-ended = Le TP est terminé.
prompt-eye-protection = Porte des lunettes de protection. Ton professeur et l’évaluation des risques de ton établissement passent avant tout.
prompt-you-decide = C’est toi qui décides ; la station ne fait qu’enregistrer.
prompt-probe-checking = Le personnel vérifie le capteur. Patiente un peu.
prompt-only-they = Lui seul peut terminer la vérification.
prompt-dip-first = D’abord, si possible : plonge le capteur rincé et essuyé dans le liquide à ajouter ({ $reagent }) pour en mesurer la température.
prompt-begin = Verse dans le gobelet : { $amount }. Capteur dedans.
button-cup-filled = Gobelet rempli, capteur dedans
prompt-hold-probe = Tiens le capteur immobile dans le liquide à ajouter ({ $reagent }).
prompt-takes-by-itself = La station mesure sa température toute seule.
prompt-start-once = Attends. Agite doucement. La température avant le mélange s’enregistre.
prompt-start = Attends. Agite doucement. La température de départ se stabilise.
prompt-weigh-now = Pèse pendant ce temps { $amount }.
prompt-measure-now = Mesure pendant ce temps { $amount }.
prompt-tip = Maintenant, verse tout le solide : { $amount }. Agite.
prompt-recorded-to-the-end = L’enregistrement continue jusqu’à la fin du temps.
prompt-clock-read = Lis le thermomètre toutes les { $every_s } s. Saisis chaque valeur.
prompt-clock-stir = Agite doucement. Lis à hauteur des yeux.
prompt-mix = Maintenant, ajoute tout : { $amount }. Agite.
prompt-press-mixing = Appuie au moment du mélange.
button-it-is-in = C’est ajouté
prompt-portion = Ajoute la portion { $portion } : { $amount }. Agite.
prompt-press-as-soon = Appuie dès qu’elle est ajoutée.
button-portion-is-in = Portion { $portion } ajoutée
prompt-after = Continue d’agiter doucement. La température après le mélange s’enregistre.
prompt-settle = Attends. Continue d’agiter doucement. La température se stabilise.
prompt-rinse = Rince gobelet et capteur. Remplis : { $amount }.
prompt-set-up-alkali = Plonge le capteur propre et sec dans le liquide à ajouter ({ $reagent }).
button-probe-in-alkali = Capteur plongé
prompt-set-up-alkali-typed = Mesure la température du liquide à ajouter ({ $reagent }). Saisis-la.
button-alkali-left-out = Continuer sans elle
prompt-set-up-probe = Rince le { $tool ->
        [probe] capteur
       *[thermometer] thermomètre
    } à l’eau. Essuie-le.
prompt-set-up-taken = Température mesurée : { $reagent }, { $temperature_c } °C.
prompt-set-up-clean = Des gouttes restées dessus tomberaient dans le gobelet.
prompt-set-up-sketch = Dessine comment la température va évoluer, selon toi.
prompt-set-up-sketch-where = Dessine sur cette page avant la première portion. Ce n’est pas noté.
button-sketch-left-out = Continuer sans croquis
button-probe-rinsed = Rincé et essuyé
prompt-set-up-fill = Remplis : { $amount }. { $tool ->
        [probe] Capteur
       *[thermometer] Thermomètre
    } dedans, couvercle fermé.
prompt-set-up-same-bottle = Remplis à neuf, avec le même flacon.
button-set-up-filled = { $tool ->
        [probe] Capteur
       *[thermometer] Thermomètre
    } dedans, couvercle fermé
prompt-set-up-empty = Vide le gobelet selon les règles de ton établissement.
prompt-set-up-ask = Demande à ton professeur si tu ne sais pas où.
button-cup-emptied = Le gobelet est vide
prompt-set-up-wash = Rince et sèche le gobelet et le { $tool ->
        [probe] capteur
       *[thermometer] thermomètre
    }.
prompt-set-up-dry = De l’eau restée dans le gobelet diluerait le prochain remplissage.
button-cup-rinsed = Rincé et sec
prompt-lid-and-stir = Puis couvercle fermé, et agite doucement.
prompt-keep-lid = Garde le couvercle fermé.
prompt-wipe = Essuie le capteur. Remplis avec le même flacon.
button-rinsed = Rincé et rempli
prompt-paused-by = Mis en pause par { $role ->
        [teacher] ton professeur
       *[technician] le personnel de laboratoire
    }. Patiente un peu.
prompt-still-recorded = La température continue d’être enregistrée.
prompt-paused = En pause. Appuie pour continuer.
button-go-on = Continuer
prompt-finished = Terminé. Rince le gobelet et le capteur, range, lave-toi les mains.
prompt-finished-before-turn = Terminé avant le changement de sens : pas encore de <end-point>point d’équivalence</end-point>.
prompt-go-on-or-clear = Continue les mesures, ou range et lave-toi les mains.
prompt-several-probes = Plusieurs capteurs sont branchés. Débranche-les tous sauf un.
prompt-probe-id = Ou bien écrire le numéro du capteur de ce poste comme probe.id dans station.toml.
prompt-another-probe = Un autre capteur est branché. Branche celui de ce poste.
prompt-keep-new-probe = Pour garder le nouveau, redémarrer la station. Si ses réglages nomment un capteur, changer d’abord probe.id.
prompt-no-reading = Le capteur ne mesure pas. Vérifie son connecteur, appelle ton professeur.
prompt-nothing-lost = Rien n’est perdu. Une fois branché, il lui faut parfois 15 secondes pour répondre.
prompt-choose-divisions = Quel thermomètre utilisez-vous ?
prompt-look-at-scale = Quel est l’écart entre deux traits de son échelle ? S’il est numérique : un pas du dernier chiffre.
prompt-begin-typed = Verse dans le gobelet : { $amount }. Thermomètre dedans.
button-cup-filled-thermometer = Gobelet rempli, thermomètre dedans
prompt-type-reading = Agite. Attends que la température soit stable. Saisis-la.
prompt-eye-level = Lis à hauteur des yeux, le réservoir du thermomètre au milieu du liquide.
prompt-own-reading = Agite. Relève quand tu juges la température stable.
button-read-now = Relever maintenant
prompt-own-portion = Portion { $portion } quand tu veux : { $amount }. Agite.
prompt-own-mix = Ajoute tout quand tu veux : { $amount }. Agite.
reason-not-sure = incertain
refusal-question-not-open = Cette question n’est plus ouverte : on y a répondu, ou elle ne compte plus.
refusal-finish-stands = Votre propre lecture est enregistrée : la manipulation reste terminée.
refusal-sketch-not-now = On ne peut dessiner une prévision qu’avant la première portion.
refusal-sketch-empty = Trace d’abord une ligne de gauche à droite.
refusal-not-this-step = C’est une autre étape maintenant : suis la consigne.
refusal-answers-are = Les réponses possibles sont : { $known_text }.
reason-spilled = le gobelet s’est renversé
answer-not-sure = Je ne sais pas
question-leaves-out = Exclu tant que personne ne répond : { $question }
question-asks = La station demande : { $question }
question-no-change = Aucun changement : as-tu ajouté la portion { $portion } ?
answer-yes-it-is-in = Oui, elle est ajoutée
answer-no-not-yet = Non, pas encore
question-double = Un grand changement : la portion { $portion } a-t-elle été ajoutée une fois ou deux ?
answer-once = Une fois
answer-twice = Deux fois
question-volume = La portion { $portion } semble différente : était-ce le volume habituel ?
question-not-stirred = La température change lentement : as-tu agité le contenu du gobelet ?
answer-yes = Oui
answer-stirring-now = J’agite maintenant
question-sudden-fall = Un changement brusque : quelque chose s’est-il renversé, ou le couvercle est-il enlevé ?
answer-no = Non
answer-lid-back = Couvercle remis
answer-it-spilled = Ça s’est renversé
question-probe-out = Le bout du capteur est-il dans le liquide, sans toucher le gobelet ?
answer-it-is-now = Oui, maintenant
question-slip = { $portion ->
        [0] La température de départ ne va pas avec les autres : est-elle juste ?
       *[other] La température après la portion { $portion } ne va pas : est-elle juste ?
    }
answer-read-so = Oui, elle est juste
answer-misread = Non, l’exclure
question-other-start = Autre température de départ : avez-vous rincé et rempli le gobelet ?
answer-fresh = Oui, rincé et rempli à neuf
answer-not-fresh = Non : recommencer celui-ci
reason-not-fresh = le gobelet n’était pas rempli à neuf
csv-samples-not-readings = ce sont tous les points enregistrés ; choisis les mesures de l’autre poste
csv-not-above-before = { $volume_cm3 } est moins que dans la ligne précédente ; il s’agit du volume total ajouté
result-needs-plan = Le bilan thermique par portions a besoin d’un plan avec des portions : ajouter --plan plan.toml.
result-repeats-differ = Les essais { $first } et { $second } diffèrent de { $apart_cm3 } cm³, plus de trois fois leur u combinée de { $u_cm3 } cm³ : cherche une erreur dans l’un d’eux. Les deux sont gardés.
refusal-type-alkali = Aucun capteur n’est utilisé : saisis la température de la base.
refusal-alkali-being-taken = Le capteur mesure déjà la température de la base.
refusal-portion-already-in = La portion { $portion } est déjà ajoutée.
refusal-portion-comes-next = C’est au tour de la portion { $expected }, pas de la portion { $portion }.
refusal-plan-ends = Le plan s’arrête à la portion { $portion }.
refusal-only-newest = On ne peut annuler que la dernière portion, la { $portion }.
refusal-nothing-to-take-back = Aucune portion n’est ajoutée : il n’y a rien à annuler.
refusal-not-in-doubt = La portion { $portion } de l’essai { $repeat } n’est pas en doute.
refusal-set-aside-already = L’essai { $repeat } a déjà été écarté.
refusal-say-why-set-aside = Indique dans reason pourquoi l’essai est écarté.
refusal-not-set-aside = L’essai { $repeat } n’a pas été écarté, ou il n’a pas de mesures.
refusal-nothing-to-start-again = Il n’y a pas d’essai à recommencer.
refusal-say-why-start-again = Indique dans reason pourquoi l’essai recommence.
refusal-repeats-enough = Ce TP a { $count } essais : c’est au personnel d’en commencer un nouveau.
refusal-paused-by = { $role ->
        [teacher] Ton professeur
       *[technician] Le personnel de laboratoire
    } a mis le TP en pause. Attends qu’on te laisse continuer.
refusal-no-repeat-under-way = Aucun essai n’est en cours.
refusal-say-which-portion = Indique dans portion de quelle portion il s’agit.
refusal-no-repeat = Il n’y a pas d’essai { $repeat }.
refusal-portion-not-added = La portion { $portion } de l’essai { $repeat } n’a pas été ajoutée.
reason-not-settled = relevée avant d’être stable
reason-no-reading = pas de mesure du capteur
refusal-say-silent = Indiquer dans silent si le signal sonore doit être coupé : true ou false.
refusal-say-shown = Indiquer dans shown si les résultats doivent être visibles : true ou false.
refusal-prepared-with-results = La concentration du flacon ne se montre qu’avec les résultats.
refusal-nothing-prepared = Dans ce plan, il n’y a pas de concentration à trouver.
refusal-give-plan = Donner les valeurs du plan dans plan, ou son texte dans plan_toml.
refusal-repeat-under-way-staff = Un essai est en cours à ce poste : il faut d’abord terminer le TP.
refusal-confirm-strong = Au-dessus de { $limit_mol_dm3 } mol/dm³ : { $reagent } ({ $mol_dm3 } mol/dm³). Le confirmer sur la page /plan d’après l’évaluation des risques de l’établissement, ou diluer.
refusal-plan = Ce plan n’est pas utilisable : { $reason }.
refusal-plan-sentence = Ce plan n’est pas utilisable : { $reason }
refusal-paused-already = Le TP est déjà en pause.
refusal-nothing-to-pause = Aucun essai n’est en cours : il n’y a rien à mettre en pause.
refusal-not-paused = Le TP n’est pas en pause.
refusal-called-already = Le professeur est déjà appelé.
refusal-not-called = Personne n’appelle le professeur.
refusal-say-which-repeat = Indique dans repeat de quel essai il s’agit.
step-change-to-crossing = variation de température jusqu’à l’intersection
formula-change-crossing = ΔT = T(intersection) - T(début)
step-mass-of-liquid = masse du liquide, méthode scolaire : 1 g par cm³
formula-mass-acid-alkali = m = (V(acide) + V(base)) × 1 g/cm³
step-heat-taken-up-school = chaleur reçue, méthode scolaire : capacité thermique de l’eau, sans le gobelet
step-change-from-fit = variation de température sans perte de chaleur ni retard, d’après l’ajustement du tracé entier
formula-change-balance = ΔT d’après le bilan thermique
step-heat-to-end-point = chaleur libérée jusqu’à l’équivalence
step-amount-to-end-point = quantité de matière de base ({ $alkali }) jusqu’à l’équivalence
step-capacity-solution = capacité thermique de la solution, du gobelet et du capteur
formula-capacity-solution = C = V × (capacité thermique de 1 cm³) + C(gobelet)
step-percentage-school = incertitude relative en % sur la variation de température, méthode scolaire : une demi-graduation pour chacune des deux lectures
formula-percentage = % = graduation ÷ ΔT × 100
step-change-of-repeat = variation de température de la répétition { $repeat }
step-change-mean = variation moyenne de température des répétitions
formula-mean-change = ΔT = somme des ΔT ÷ nombre de répétitions
step-change-at-mixing = variation de température au mélange, d’après les droites prolongées
step-heat-taken-in-school = chaleur absorbée, méthode scolaire : capacité thermique de l’eau, sans le gobelet
step-heat-given-out-school = chaleur libérée, méthode scolaire : capacité thermique de l’eau, sans le gobelet
of-school = { $of }, méthode scolaire
formula-change-at-mixing = ΔT au moment du mélange
formula-change-after-before = ΔT = T(après) - T(avant)
step-mass-of-mixture = masse du mélange, méthode scolaire : 1 g par cm³
formula-mass-liquid-added = m = m(liquide) + m(ajouté)
step-capacity-mixture = capacité thermique du mélange, du gobelet et du capteur
formula-capacity-mixture = C = C(mélange) + C(gobelet)
step-heat-taken-in-less = chaleur absorbée, moins ce que l’ajout a apporté par sa propre température
step-heat-given-out-less = chaleur libérée, moins ce que l’ajout a apporté par sa propre température
formula-heat-taken-in = q = q(ajouté) - C ΔT
formula-heat-given-out = q = C ΔT - q(ajouté)
lines-off-line = La mesure après la portion { $portion } est à { $off_c } °C de sa droite ({ $test }). Elle est gardée : une personne peut la laisser de côté.
warning-strong = Au-dessus de { $limit_mol_dm3 } mol/dm³ : { $reagent } ({ $mol_dm3 } mol/dm³). C’est plus concentré que ce TP ne le demande : le personnel doit le confirmer d’après l’évaluation des risques de l’établissement.
warning-beyond-plan = Les { $mol_dm3 } mol/dm³ préparés ({ $reagent }) dépassent ce que ce plan peut déterminer ({ $most_mol_dm3 } mol/dm³), et l’étiquette des élèves vaut jusque-là. Prévoir plus de portions ou une base plus concentrée.
problem-number-too-long = un nombre est trop long
problem-nested-too-deeply = imbriqué trop profondément
problem-step-missing = il manque une étape
advice-check-press-again = Vérifie ; appuie de nouveau si c’est juste.
refusal-say-divisions = Ce poste n’a pas de capteur : indique les graduations du thermomètre, 1 ; 0,5 ; 0,2 ou 0,1 °C.
refusal-probe-works = Le capteur fonctionne : termine cet essai avec lui.
refusal-say-temperature = Indique la température dans temperature_c.
refusal-nothing-typed = Ce poste lit son capteur : on ne saisit rien.
refusal-say-divisions-first = Indique d’abord les graduations du thermomètre : 1 ; 0,5 ; 0,2 ou 0,1 °C.
refusal-no-reading-to-correct = La portion { $portion } de l’essai { $repeat } n’a pas de mesure à corriger.
refusal-station-reads = Dans ce TP, c’est la station qui relève les mesures.
refusal-reading-comes-next = C’est au tour de la mesure après la portion { $portion }.
refusal-no-fresh-reading = Le capteur ne donne pas de nouvelle mesure : vérifie son connecteur et réessaie.
refusal-say-volume = Indique le volume de la portion dans volume_cm3.
refusal-nothing-weighed = Dans cette expérience, rien n’est pesé.
refusal-far-from-planned-mass = { $typed_g } g est loin des { $planned_g } g prévus.
refusal-no-reading-at = Aucune mesure à { $minutes } à corriger dans la répétition { $repeat }.
refusal-time-to-come = { $minutes } est encore à venir : saisis ce qui sera lu alors.
refusal-far-from-planned = { $typed_cm3 } cm³, c’est loin des { $planned_cm3 } cm³ prévus.
refusal-change-sign = Tu as saisi { $change_c } °C, mais d’après la courbe le gobelet est devenu { $way ->
        [warmer] plus chaud
       *[colder] plus froid
    }.
refusal-not-among-volumes = { $volume_cm3 } cm³ ne fait pas partie des volumes ajoutés, jusqu’à { $most_cm3 } cm³.
practical-hydrochloric-acid = Quelle est la concentration de cet acide chlorhydrique ?
practical-nitric-acid = Quelle est la concentration de l’acide nitrique ?
practical-neutralisation = Chaleur de <neutralisation>neutralisation</neutralisation>
practical-urea = Du froid par dissolution : l’urée dans l’eau
reason-stirred-late = agité trop tard
reason-lid-off = couvercle enlevé
reason-lost-count = portions mal comptées
reason-probe-out = le capteur était hors du gobelet
reason-wrong-volume = mauvais volume dans le gobelet
reason-wrong-moment = ajouté au mauvais moment
reason-wrong-amounts = mauvaises quantités
reason-it-spilled = renversé
reason-few-readings = trop peu de mesures
reason-readings-scatter = les mesures sont trop dispersées
reason-not-turned = la température n’a pas changé de sens
reason-lines-on-paper = droites tracées sur papier
reason-off-points = lu sur les points
reason-differs = s’écarte de l’autre essai
reason-another-way = lu autrement
problem-in = { $where_text } : { $problem }
problem-of-reagent = { $reagent } : { $problem }
input-dict-type = la valeur doit être une table de clés
input-tuple-type = la valeur doit être une liste

## analysis

cup-trace-before-short = Le tracé avant le versement est trop court : { $seconds } s au moins.
cup-trace-after-short = Le tracé après le versement est trop court : { $seconds } s au moins.
cup-not-warm-enough = L’eau du gobelet doit être plus chaude que l’eau ajoutée d’au moins { $least_c } °C.
cup-changed-too-little = Le versement a trop peu changé la température : prendre à peu près autant d’eau qu’il y en a dans le gobelet.
cup-not-smooth = Le gobelet n’a pas refroidi régulièrement : laisser le couvercle, agiter régulièrement, attendre plus longtemps ; recommencer.
dip-no-change = La température n’a pas changé : plonger le capteur dans l’eau.
dip-trace-after-short = Le tracé après l’immersion est trop court : { $seconds } s au moins.
dip-too-near = L’eau et l’air ont des températures trop proches : il faut au moins { $least_c } °C d’écart.
dip-not-plunged = Le tracé n’est pas celui d’un capteur plongé d’un coup dans de l’eau agitée : recommencer.
heat-open = On ne distingue pas d’équivalence : le tracé ne permet pas de conclure.
heat-unknown-reagents = Le bilan thermique ne connaît pas ces réactifs : { $reagents }.
heat-few-portions = Le bilan thermique a besoin d’au moins { $least } portions ; il y en a { $count }.
heat-few-samples = Le tracé n’a que { $count } bons points : trop peu pour un bilan thermique.
heat-hardly-changes = La température ne change presque pas : on ne distingue pas de chaleur de réaction.
heat-trace-ends = Le tracé s’arrête avant que l’effet de la dernière portion ait pu se voir.
heat-not-surely-passed = Il n’est pas encore sûr que l’équivalence soit dépassée : ajoute au moins une portion de plus.
heat-not-passed = L’équivalence n’est pas encore dépassée : continue à ajouter des portions.
heat-first-portion = L’équivalence se trouve dans la première portion : prends des portions plus petites.
heat-lost-in-scatter = On ne distingue pas d’équivalence : la chaleur de réaction se perd dans la dispersion.
heat-note-portion-volume = La portion { $portion } ne semble pas avoir le volume prévu : a-t-elle été oubliée, doublée ou trop petite ?
heat-note-portion-moment = La portion { $portion } semble avoir été versée loin du moment indiqué.
heat-note-strays = Le tracé s’écarte du modèle plus que le bruit du capteur ne le permet.
heat-note-something-happened = Il s’est passé quelque chose vers { $seconds } s : du liquide renversé, le couvercle, ou le capteur hors du liquide ?
heat-note-set-aside = { $percent } % des points ne correspondent pas et ont été écartés.
heat-note-cup-unusual = Il faudrait un gobelet ou un capteur très inhabituel pour donner ce tracé.
heat-few-readings = Le bilan thermique a besoin d’au moins { $least } mesures.
heat-more-readings-after = Il n’est pas sûr que l’équivalence soit dépassée : il faut plus de mesures après elle.
heat-no-bend = La chaleur ne montre pas de coude net : on ne distingue pas d’équivalence.
heat-note-readings-scatter = Les mesures se dispersent autour des deux droites plus que le thermomètre ne le permet.
lines-chosen-by-person = Les mesures de chaque droite ont été choisies par une personne.
lines-cross-outside = Ces droites se coupent à { $end_point_cm3 } cm³, ce qui n’est pas entre les deux groupes (de { $from_cm3 } à { $to_cm3 } cm³). Fais passer une mesure à l’autre droite.
lines-not-a-number = Un volume ou une température n’est pas un nombre.
lines-one-temperature-each = Il faut une température pour chaque volume.
lines-missing-number = Un volume ou une température manque ou n’est pas un nombre.
lines-too-large = Un volume ou une température est bien trop grand pour être une mesure.
lines-few-volumes = Il faut au moins { $least } volumes différents pour chacune des deux droites ; il y en a { $count } en tout.
lines-no-crossing = Les deux droites d’ajustement ne se coupent pas près du changement de sens.
lines-all-same = Toutes les mesures sont identiques : sans changement de sens, on ne peut pas trouver d’équivalence.
lines-no-turn = La température ne change pas de sens : la plus haute et la plus basse des mesures sont la première et la dernière. En a-t-on ajouté assez pour dépasser l’équivalence ?
lines-few-before = La droite avant le changement de sens a besoin de { $least } mesures ; elle en a { $count }. Recommence avec des portions plus petites.
lines-few-after = La droite après le changement de sens a besoin de { $least } mesures ; elle en a { $count }. Ajoute d’autres portions.
lines-two-points = Deux points sont toujours alignés : pour la dispersion, il en faut au moins trois.
lines-parallel = Les deux droites sont parallèles : elles ne se coupent pas.
label-scatter-only = dispersion seulement
lines-same-way = Les deux droites d’ajustement vont dans le même sens : sans changement de sens, on ne peut pas trouver d’équivalence.
lines-scatter = Les mesures sont trop dispersées pour dire où les droites se coupent : le ± n’aurait pas de limite.
school-half-division = une demi-graduation
school-one-division = une graduation
school-half-range = la moitié de l’étendue
lines-rule = Les mesures, rangées par volume, sont partagées en deux groupes : avant et après le changement de sens ; la mesure au sommet (ou au creux) peut n’appartenir à aucun. Parmi les partages dont les deux droites d’ajustement se coupent entre les deux groupes, on retient le plus proche du sommet ; s’il y en a plusieurs, celui dont les droites passent le plus près de toutes les mesures (plus petite somme des carrés). Une mesure au sommet qui s’écarte des droites tracées sans elle (test à 99 %) n’appartient à aucun groupe. Quand les mesures n’ont pas un tel sommet parce qu’une des droites est horizontale, on coupe là où la droite horizontale et l’autre passent le plus près de toutes les mesures.
test-residual = résidu studentisé externe, Bonferroni
once-label-scatter-only = dispersion et perte le long de la tige seulement : une paroi lente à s’échauffer, une réaction lente ou une baisse courbe décalent davantage les droites
once-before-not-straight = Les mesures avant le mélange ne sont pas alignées. Agite, et attends plus longtemps avant de mélanger.
once-after-not-straight = Les mesures après le mélange ne sont pas alignées. Agite, couvercle fermé : la baisse (ou la hausse) doit devenir régulière.
once-no-change = La température n’a pas changé au mélange : { $change_c } °C, ce n’est pas plus que ce que les mesures peuvent montrer. L’ajout a-t-il été fait, et le mélange a-t-il été marqué au bon moment ?
once-not-a-number = Un temps ou une température n’est pas un nombre.
once-one-temperature-each = Il faut une température pour chaque temps.
once-missing-number = Un temps ou une température manque ou n’est pas un nombre.
once-times-must-rise = Les temps doivent augmenter d’une mesure à la suivante.
once-mixing-outside = Le moment du mélange n’est pas dans la durée enregistrée.
once-before-old = La dernière mesure avant le mélange date de { $seconds } s : la droite en demande une dans les { $most_s } s.
once-two-readings = Il faut une mesure avant le mélange et une après.
once-label-difference = différence de deux mesures : elle ne tient pas compte de ce que le gobelet a perdu entre-temps
once-rule-difference = La dernière mesure avant le mélange, et celle d’après qui en est la plus éloignée. Pour des droites il y en a trop peu, ou elles ne sont pas alignées.
once-no-line = Les droites n’ont pas pu être tracées : { $reason }
once-few-before = La droite avant le mélange a besoin d’au moins { $least } mesures sur { $least_s } s ; il y en a { $count } sur { $span_s } s. Enregistre plus longtemps avant de mélanger.
once-few-after = La droite après le mélange a besoin d’au moins { $least } mesures sur { $least_s } s ; il y en a { $count } sur { $span_s } s. Laisse plus de temps après le mélange.
once-heat-no-course = Le bilan thermique n’a trouvé aucune évolution du gobelet qui ressemble à ces mesures.
once-heat-few-before = Le bilan thermique a besoin d’au moins { $least } points avant le mélange. Enregistre plus longtemps avant de mélanger.
once-heat-few-after = Le bilan thermique a besoin d’au moins { $least } points sur { $seconds } s après le mélange.
once-heat-no-change = La température n’a pas changé. Quelque chose a-t-il été ajouté ?
once-heat-unusual = Il s’est passé dans le gobelet quelque chose que le bilan thermique ne connaît pas (un autre ajout, du liquide renversé, le capteur hors du liquide ?) : ses valeurs sont moins sûres que d’habitude.
once-heat-late = La température a commencé à changer { $seconds } s { $side ->
        [before] avant
       *[after] après
    } le moment où le mélange a été marqué.
once-rule = Les mesures de { $before_s } s avant à { $after_s } s après le mélange sont laissées de côté. Chaque droite commence à la première mesure à partir de laquelle les suivantes s’accordent, à un demi-pas du capteur ou à un centième de la variation près, avec la droite passant par toutes les mesures ultérieures. Elle s’étend sur { $from_min } à { $to_min } minutes et au moins { $least } mesures (mesures à la main : jusqu’à { $most_by_hand }, quelle que soit la durée). Les mesures qui s’écartent de leur droite de plus de { $steps } pas, et de plus de trois fois l’écart habituel, sont écartées.
test-dixon = test Q de Dixon (r10, bilatéral)
test-grubbs = test G de Grubbs (bilatéral)
probe-few-comparisons = Une droite a besoin de { $least } comparaisons ; il y en a { $count }.
probe-too-near = Comparer à des températures écartées d’au moins { $least_c } °C.
label-scatter-of-repeats = dispersion des essais
label-uncertainty-of-each = incertitude de chaque essai
settle-no-reading = pas de mesure du capteur
settle-time-up-few = temps écoulé, peu de nouvelles mesures
settle-few-fresh = trop peu de nouvelles mesures
settle-time-up = temps écoulé
settle-still-settling = pas encore stable
settle-settled = stable
settle-long-enough = assez long pour le bilan thermique
settle-as-near = aussi proche que le capteur le permet
settle-still-drifting = dérive encore
settle-steady = régulière
settle-recorded = enregistrée

## server

access-no-code = Aucun code n’est défini : ce poste peut être utilisé sans code.
access-no-teacher = Aucune phrase de passe n’est définie pour le professeur. Mettre la ligne affichée par `station passphrase teacher` sous [access] dans station.toml (pour une salle : room.toml) et redémarrer.
access-no-technician = Aucune phrase de passe n’est définie pour le personnel de laboratoire. Mettre la ligne affichée par `station passphrase technician` sous [access] dans station.toml (pour une salle : room.toml) et redémarrer.
access-not-right = Ce n’est pas juste. Vérifier et réessayer.
access-hold-button = Maintenir le bouton du poste pendant 6 secondes, le relâcher, puis essayer dans la minute. Chaque appui long laisse entrer un seul appareil.
access-too-many-tries = Trop d’essais faux ici.
access-wait = { $why } Attendre { $seconds } s, puis réessayer.
access-sign-in = Se connecter d’abord avec ce rôle : { $roles }.
access-may-look = Cet appareil peut regarder. Pour utiliser le poste, donner le code de son étiquette.
role-teacher = professeur
role-technician = personnel de laboratoire
server-send-code = envoyer le code, ou le rôle et la phrase de passe, ou recovery
server-not-kept = Cela n’a pas pu être enregistré, donc rien n’a été fait. { $reason }
secret-length = choisir de { $shortest } à { $longest } caractères (il y en a { $count })
secret-not-a-hash = ce n’est pas une empreinte : mettre ici la ligne affichée par `station passphrase`
secret-other-strength = une empreinte d’une autre force que celle que cette station vérifie : la créer avec `station passphrase`
server-too-many-pages-state = Trop de pages sont ouvertes : demander plutôt /api/state.
server-file-not-made = Le fichier n’a pas pu être créé. { $reason }
server-own-page-only = Seule la page de la station elle-même peut donner des ordres.
server-send-json = Envoyer le contenu sous la forme application/json.
server-body-too-long = Le contenu peut avoir { $count } octets au plus.
server-too-much-at-once = C’était trop à la fois.
server-unknown-host = Ce poste ne répond pas au nom écrit dans la barre d’adresse. L’ouvrir avec l’adresse de son étiquette ou de son écran. Si le nom est juste, l’ajouter à names sous [access] dans station.toml.
kit-cannot-make-cards = Cette station ne peut pas créer de cartes.
kit-cannot-look = Cette station ne peut pas examiner son kit.
kit-no-panel = Ce kit n’a pas de panneau : ses réglages le disent dans panel.pins.
server-page-not-built = La page n’a pas été construite : réinstaller la station avec pip.
plan-send-plan = envoyer plan ou plan_toml
plan-no-plan-file = Ce n’est pas un fichier de plan : { $reason }.
plan-another-asked = Un autre plan a été demandé entre-temps.
plan-prediction-failed = La prévision a échoué : { $reason }. Réessayer.
plan-sign-in-for-prepared = Ce que le personnel a préparé est réservé au personnel : se connecter, ou laisser prepared_mol_dm3 de côté.
server-send-code-as-text = Envoyer le code, ou le rôle et la phrase de passe, ou recovery, sous forme de texte.
server-not-json = Le contenu n’est pas du JSON valide, ou contient une lettre ou un nombre qui n’existe pas.
server-made-a-mistake = La station a fait une erreur. Rien de ce qui a été confirmé n’est perdu.
reason-page-looking = La station examine le kit ; les constats suivent dans un instant.
reason-page-found = Ce que la vérification a trouvé
reason-page-rest = tout le reste
reason-page-title = La station ne peut pas démarrer
reason-page-mend = Une fois cela réparé, la station réessaie d’elle-même en moins d’une demi-minute, et cette page devient celle du poste. L’enregistrement est conservé. En attendant, continue avec un thermomètre ordinaire.
reason-page-finding = { $colour ->
        [red] rouge
        [amber] orange
        [green] vert
       *[unknown] inconnu
    } : { $finding }
room-record-unusable = L’enregistrement de la salle n’est pas utilisable pour l’instant. { $reason }
server-too-many-pages-room = Trop de pages sont ouvertes : demander plutôt /api/room.
room-no-address = Cette salle ne connaît pas son adresse.
order-cannot-be-given = Cet ordre ne peut pas être donné : { $reason }.
order-cannot-be-taken-back = Cela ne peut pas être annulé : { $reason }.
server-too-many-pages-ask = Trop de pages sont ouvertes : demander plutôt l’état.
room-no-such-bench = Cette salle ne connaît pas ce poste.
room-results-not-shown = Les résultats ne sont pas encore montrés : tout le monde les verra en même temps.
room-no-such-lesson = Cette séance n’existe pas.
order-nothing-known = on ne sait encore rien de ce que { $bench } a fait
order-too-many = { $count } ordres attendent un poste absent : les annuler d’abord
order-no-lesson = Aucune séance n’est en cours.
order-no-bench = il n’y a pas de poste { $bench_name }
kit-ask-done = Fait.
kit-ask-not-sure = Cocher d’abord que c’est voulu : on ne peut pas revenir en arrière d’ici.
kit-ask-no-broker = On ne peut rien demander aux kits maintenant : { $reason }
server-cannot-listen = impossible d’écouter sur { $host_address }, port { $port } : { $reason } ; choisir un autre server.port
server-faults-left-out = ({ $count } erreurs omises) { $reason }
manual-english-only = Ce manuel n’existe qu’en anglais.

## room

link-no-address = { $address } n’est pas l’adresse d’un broker : l’écrire comme "mqtt://room.local:1883"
link-cannot-be-read = { $path } : impossible de lire { $what ->
        [passphrase] la phrase de passe
       *[password] le mot de passe
    } : { $reason }
link-one-line = { $path } : il faudrait ici une ligne avec { $what ->
        [passphrase] la phrase de passe
       *[password] le mot de passe
    }
broker-cannot-be-user = { $user_name } ne peut pas être un utilisateur
quantity-end-point = équivalence
quantity-enthalpy = enthalpie
quantity-temperature-change = variation de température
quantity-concentration = concentration
method-heat-balance = bilan thermique
method-straight-lines = droites
class-no-slip = Son propre enregistrement ne montre aucune erreur : demander au groupe.
class-set-aside = L’essai { $repeat } a été écarté : { $reason }
class-more-than-u = plus de { $count } incertitudes-types de la différence
class-stands-off = { $bench_name } : sa valeur ({ $quantity }, { $method }) est { $side ->
        [above] au-dessus
       *[below] au-dessous
    } des autres de { $off } { $unit } ({ $test }).
word-yes = oui
word-no = non
class-sheet-result = Résultat de la classe
class-sheet-words = Ce que cela signifie
class-sheet-standing-off = Postes qui s’écartent
class-head-behind = ce qui peut l’expliquer
class-sheet-curve = Courbe moyenne
sheet-readings = Mesures
class-head-sentence = phrase
class-head-bench = poste
class-head-what = quoi
class-no-answer = pas de réponse
class-asked = Essai { $repeat }, portion { $portion } : la station a demandé « { $question } », réponse : { $answer }.
class-not-settled = Essai { $repeat } : { $count } mesures ont été prises avant d’être stables.
class-in-doubt = Essai { $repeat } : { $count } portions sont en doute et ne comptent pas dans les droites.
class-note-of-repeat = Essai { $repeat } : { $note }
answer-unreadable = aucune réponse lisible
class-no-repeat-yet = Aucun poste n’a encore terminé un essai.
class-one-bench = Un seul poste a un résultat : il en faut deux pour une moyenne de classe.
class-other-plans = Les postes qui ont un autre plan que la plupart figurent dans la liste, mais pas dans la moyenne.
class-answer = La classe : { $mean } ± { $u } { $unit } d’après { $count } postes sur { $all }
class-answer-one = Un seul poste pour l’instant : { $value } ± { $u } { $unit }, sur { $all } participants
class-spread = Un poste seul est juste à ± { $own_u } { $unit } près ; les valeurs des postes se dispersent de { $sd } { $unit } : { $agree ->
        [yes] pas plus que prévu.
       *[no] plus que prévu, donc quelque chose diffère d’un poste à l’autre.
    }
class-lines = Les droites donnent { $percent } % { $side ->
        [higher] de plus
       *[lower] de moins
    }, sur tous les postes : chaque portion chauffe plus de liquide que la précédente, la partie montante se courbe donc.
class-mean = Classe ({ $quantity }, { $method }) : { $mean } ± { $u } { $unit }, d’après { $count } postes ; avec un niveau de confiance de 95 %, la moyenne de la classe se trouve entre { $low } et { $high } { $unit }.
class-meaning = Le ± est celui de la moyenne de la classe, pas d’un poste : les postes se dispersent de { $sd } { $unit } (un écart-type) ; leurs propres incertitudes à elles seules donneraient { $own_u } { $unit }.
class-agree = Les postes s’accordent dans les limites de leurs propres incertitudes : rien de plus n’est nécessaire pour expliquer leurs écarts.
class-chance = Une dispersion entre les postes de { $between } { $unit } convient le mieux, mais le hasard seul pourrait en donner autant (p = { $p }) ; elle est comprise dans le ±.
class-differ = Les postes diffèrent de { $between } { $unit } au-delà de leurs propres incertitudes (p = { $p }) : d’un poste à l’autre, il y a une différence qu’aucun poste ne peut voir seul, comme la façon de mesurer les portions, ou une erreur ; elle est comprise dans le ±.
class-without = Sans les postes qui s’écartent ({ $count }), la moyenne serait de { $mean } ± { $u } { $unit }. Rien n’est écarté automatiquement : c’est une personne qui écarte un essai, en donnant une raison.
class-methods = Les droites se coupent { $apart_cm3 } cm³ { $side ->
        [above] au-dessus
       *[below] au-dessous
    } du bilan thermique : chaque portion échauffe davantage de liquide, ce qui courbe la partie montante, et la moyenne sur autant de postes qu’on voudra n’y change rien.
class-p-least = 0,001 ou moins
room-broker-not-answered = le broker { $address } n’a pas encore répondu
bench-sends-unreadable = Il envoie quelque chose qu’on ne peut pas lire ({ $reason }).
bench-goes-on-as-another = { $reason } ; il continue comme un autre enregistrement.
bench-cannot-be-kept = Ce qu’il envoie ne peut pas être conservé ({ $reason }).
bench-event-not-understood = Son événement { $kind } n’est pas compris : est-il plus récent que la salle ?
bench-event-no-sense = Son événement { $kind } n’a pas de sens ici ({ $fault }).
room-broker-refuses = le broker { $address } ne laisse pas entrer la salle : vérifier son utilisateur et son mot de passe ({ $reason })
room-broker-silent = le broker { $address } ne répond pas ({ $reason })
room-folder-cannot-be-made = { $path } : ne peut pas être créé : { $reason } ; choisir un autre room.folder
room-another-at-work = { $path } : une autre salle travaille ici ; l’arrêter d’abord
file-cannot-be-written = { $path } : impossible d’écrire : { $reason }
file-cannot-be-read = { $path } : impossible de lire : { $reason }
room-cannot-be-written-restart = { $path } : impossible d’écrire : { $reason } ; redémarrer la salle
room-cannot-be-written-full = { $path } : impossible d’écrire : { $reason } ; le disque est-il plein ?
room-damaged = { $path } : endommagé ({ $reason }) ; le déplacer ailleurs et redémarrer : les postes envoient ce qu’ils ont
room-cannot-open = { $path } : impossible d’ouvrir : { $reason } ; rendre son dossier accessible en écriture ou choisir un autre room.folder
room-newer = { $path } : écrit par une salle plus récente (format { $format_version }) ; mettre celle-ci à jour
link-needs-user = un poste a besoin d’un utilisateur auprès du broker
link-kept = La salle conserve l’enregistrement de ce poste.
link-room-not-reached = La salle n’est pas encore joignable. Le poste travaille seul ; la salle recevra tout plus tard.
link-broker-not-reached = Le broker de la salle n’est pas joignable. Le poste travaille seul ; la salle recevra tout plus tard.
link-broker-refuses = Le broker de la salle ne laisse pas entrer ce poste : vérifier link.user et son mot de passe.
link-password-unreadable = Le mot de passe du broker de la salle ne peut pas être lu : vérifier link.password_file.
link-no-room = Le broker répond, mais aucune salle. Le poste travaille seul ; la salle recevra tout plus tard.
link-failed = La liaison avec la salle a échoué. Le poste travaille seul ; un nouvel essai de liaison suivra.
link-no-answer = pas de réponse
link-takes-nothing = le réseau n’accepte rien
order-could-not = Ce poste n’a pas pu le faire.
order-act-one-of = act : l’un de { $acts_text }
order-practical = practical : le nom d’un enregistrement et le numéro d’un événement
order-plan-missing = plan : manque ; donner ses valeurs dans plan, ou son texte dans plan_toml
order-confirm-strong = { $reagent } ({ $mol_dm3 } mol/dm³) : au-dessus de { $limit_mol_dm3 } mol/dm³ ; le confirmer d’après l’évaluation des risques de l’établissement, ou diluer
room-no-first-event = { $path } : l’enregistrement n’a pas de premier événement
broker-not-installed = Mosquitto n’est pas installé : sudo apt install mosquitto, ou indiquer un autre broker (room.broker)
file-cannot-be-written-folder = { $path } : impossible d’écrire : { $reason } ; choisir un autre dossier
broker-port-taken = le broker privé ne peut pas prendre le port { $port } : un autre broker fonctionne-t-il (sudo ss -ltnp) ? L’arrêter, ou le nommer dans room.broker
room-event-differs = { $bench } : l’événement { $event } du journal { $journal } n’est pas celui qui est conservé
room-cannot-be-kept = { $bench } : ne peut pas être conservé : { $reason }
room-too-many-records = plus de { $count } enregistrements
broker-user-letters = { $user_name } ne peut pas être l’utilisateur d’un poste : lettres, chiffres, "-", "_", ".", au plus { $count }
bench-too-many-bytes = Il envoie plus de { $kilobytes } ko par seconde ; tout n’est pas lu.
bench-too-many-messages = Il envoie plus de { $count } messages par seconde ; tous ne sont pas lus.
room-two-kits = Deux kits sont { $bench } : { $both }. Refaire la carte de l’un d’eux.
wire-too-many-bytes = { $count } octets, c’est trop pour un message
wire-longer-than = { $count } octets : plus long que { $most }
wire-not-a-message = ce n’est pas un message : { $fault }
wire-holds-too-much = contient plus de { $most } octets, ou s’arrête trop tôt
wire-no-number = { $typed } n’est pas un nombre
wire-eight-parts = events : un événement a huit parties
wire-impossible-number = events : un nombre qu’aucun événement ne peut avoir
wire-time-no-number = événement { $event } : son temps n’est pas un nombre
wire-no-plain-text = événement { $event } : démarrage, heure, horloge ou genre n’est pas du texte simple
wire-no-kind = événement { $event } : pas de genre, ou pas de contenu
wire-nested = événement { $event } : son contenu est imbriqué plus profondément que { $most }
wire-impossible = événement { $event } : son contenu a un nombre ou une lettre qui n’existe pas
order-missing = { $key_name } : manque
wire-key = { $message_name } : { $key_name } : { $reason }
room-kit = kit { $kit_name }
room-board = carte électronique …{ $board_name }
room-kit-named = { $bench_name } ({ $board })
room-kit-at = { $bench_name } ({ $board }, adresse { $address })

## bench

answer-exit-status = code de sortie { $status }
answer-none-within = pas de réponse en { $seconds } s
check-probe-copy-rules = copier 60-station-probe.rules dans /etc/udev/rules.d et rebrancher le capteur
check-probe-plug-and-wires = vérifier son connecteur et ses trois fils ; le noyau voit un capteur branché en moins de 15 s
check-bus-master = maître du bus 1-Wire { $masters_name }
check-bus-other-tree = une arborescence 1-Wire dans { $path }, qui n’est pas celle du noyau
check-bus-none = pas de bus 1-Wire ({ $path })
check-bus-no-master = pas de maître sur le bus 1-Wire ({ $path })
check-bus-make-tree = créer { $path } ou enlever probe.tree de station.toml : l’arborescence du noyau est { $kernel_path }
check-bus-restart = { $overlay_text } figure dans /{ $file } : redémarrer le Pi ; si cela ne suffit pas, mettre la ligne sous [all]
check-bus-move-line = déplacer la ligne { $overlay_text } de /{ $from_file }, qui n’est pas lu, vers /{ $to_file } et redémarrer le Pi
check-bus-write-line = écrire la ligne { $overlay_text } sous [all] dans /{ $file } et redémarrer le Pi
check-bus-on-other-machine = sur un Raspberry Pi, { $advice } ; sur une autre machine, mettre driver = "none" sous [probe] dans station.toml
check-probe-one = un capteur, { $probe_name }
check-probe-set-id = mettre dans probe.id de station.toml celui qui est dans le gobelet, par exemple id = "{ $probe_name }", ou débrancher les autres
check-probe-several = { $count } capteurs, et les réglages ne disent pas lequel : { $probes_name }
check-probe-pull-up = mettre 4,7 kΩ entre le fil de données et 3,3 V, et chercher un fil de données coupé
check-probe-ghosts = pas de capteur, mais { $count } fantômes (00-…) : le fil de données est en l’air
check-probe-none = pas de capteur sur le bus
check-probe-as-set = { $probe_name }, comme réglé
check-probe-as-set-others = { $probe_name }, comme réglé ; { $others_name } n’est pas lu
check-probe-plug-or-set-id = brancher ce capteur, ou mettre id = "{ $probe_name }" sous [probe] dans station.toml
check-probe-set-not-there = { $probe_name } est réglé mais absent ; { $others_name } est présent
check-probe-set-none-there = { $probe_name } est réglé mais absent, et il n’y en a pas d’autre
check-supply-contact = le fil d’alimentation du capteur fait contact
check-supply-wire = relier VDD (souvent rouge) au 3,3 V de la position 1 ; avec deux fils, le capteur lit tôt ou tard 85 °C
check-supply-no-contact = le fil d’alimentation du capteur ne fait pas contact
check-supply-unknown = ce noyau ne dit pas si le fil d’alimentation fait contact
check-resolution-unknown = ce noyau ne dit pas la résolution du capteur
check-resolution = { $bits } bits, pas de { $step_c } °C
check-resolution-only = seulement { $bits } bits, pas de { $step_c } °C
check-resolution-set = { $advice } ; en attendant : echo 12 | sudo tee { $path }
check-guard-unknown = ce noyau ne vérifie pas lui-même les conversions
check-guard-yes = le noyau refuse les 85 °C d’un capteur qui a perdu son alimentation
check-guard-no = le noyau ne refuse pas les 85 °C d’un capteur qui a perdu son alimentation ; la station les refuse quand même
check-power-supply = prendre l’alimentation prévue pour ce Pi et un câble court et épais, rien d’autre sur ses prises USB
check-clock-behind = l’horloge retarde de { $hours } h sur la dernière entrée de l’enregistrement
check-clock-connect-once = relier une fois le kit à un réseau qui donne l’heure, ou lui ajouter un module d’horloge
check-clock-network = l’horloge est réglée par le réseau
check-clock-module = l’horloge est tenue par un module d’horloge
check-clock-unknown = cette machine ne dit pas si son horloge est réglée
check-clock-not-set = rien n’a réglé l’horloge : les dates de l’enregistrement ne sont que des étiquettes ; l’ordre et les intervalles restent justes
check-clock-connect = relier le kit à un réseau qui donne l’heure, ou lui ajouter un module d’horloge
check-power-weak-now = l’alimentation est trop faible : tension insuffisante en ce moment
check-power-was-weak = l’alimentation a été trop faible depuis le démarrage du Pi
check-power-hot-now = le processeur est ralenti en ce moment : trop chaud
check-power-was-hot = le processeur a été ralenti depuis le démarrage du Pi : trop chaud
check-power-air = aérer la boîte
check-power-good = pas de tension insuffisante depuis le démarrage du Pi
check-power-unknown = cette machine ne dit pas si son alimentation est assez forte
check-again-with-sudo = vérifier de nouveau avec sudo
check-power-good-now = pas de tension insuffisante en ce moment ; on ne sait pas ce qu’il en était avant
check-not-readable = cet utilisateur n’a pas le droit de lire { $path }
check-record-none = pas encore d’enregistrement : le premier démarrage en commence un
check-record-sqlite = SQLite le trouve endommagé : { $reason }
check-record-not-looked-through = l’enregistrement n’a pas pu être parcouru en { $seconds } s
check-record-chain-not-followed = SQLite trouve l’enregistrement intact ; sa chaîne de { $count } événements n’a pas été suivie en { $seconds } s
check-record-event-changed = l’événement { $event } n’est pas tel qu’il a été écrit
check-record-sound = l’enregistrement est intact, { $count } événements
check-record-begin-anew = arrêter la station, renommer { $path } et la redémarrer : un nouvel enregistrement commence, ou station restore FILE met une sauvegarde à sa place ; garder l’ancien dossier entier, ce qui précède les dégâts peut encore être exporté
check-record-damaged = l’enregistrement est endommagé : { $reason }
check-record-unreadable = l’enregistrement n’a pas pu être lu : { $reason }
check-network-page = la page : { $addresses_text }
check-network-self-given = aucun réseau n’a donné d’adresse à ce kit ; il a pris { $addresses_text }
check-network-wifi-name = vérifier le câble, ou le nom et la phrase de passe du Wi-Fi
check-network-take-host-out = enlever host sous [server] dans station.toml, ou mettre "0.0.0.0"
check-network-host = server.host = { $host_address } : aucun autre appareil n’atteint la page
check-network-plug-in = brancher le câble réseau, ou rejoindre le Wi-Fi
check-network-wifi-off = le Wi-Fi est coupé : régler son pays (sudo raspi-config, Localisation), ou brancher le câble réseau
check-network-none = pas de réseau : seule cette machine voit la page
check-port-zero = server.port = 0 : l’adresse de la page change à chaque démarrage
check-port-set = régler port sous [server] dans station.toml, par exemple 8080
check-port-station = une station sert { $bench_name } sur le port { $port }
check-port-end-program = arrêter ce programme, ou régler un autre port sous [server] dans station.toml
check-port-taken = un autre programme écoute sur le port { $port }
check-port-nobody = une station fonctionne (processus { $process }), mais personne n’écoute sur le port { $port }
check-port-restart = redémarrer la station : sudo systemctl restart station
check-port-free = le port { $port } est libre
check-pins-settings = les réglages ne peuvent pas être lus, donc le panneau n’est pas connu
check-pins-none-wanted = aucun panneau n’est voulu (panel.pins = "none") : tout se fait sur la page
check-pins-correct = corriger sous [panel] dans station.toml
check-pins-set = pour une séance, mettre pins = "real" ou "none" sous [panel] dans station.toml
check-pins-mock = les réglages choisissent des broches simulées : aucun voyant ne s’allumera
check-pins-held-by = GPIO{ $pin } par { $program_name }
check-pins-end-program = arrêter ce programme, ou enlever de config.txt l’overlay qui utilise la broche
check-pins-held = des broches du panneau sont occupées : { $pins }
check-pins-good = lgpio, connecteur sur gpiochip{ $chip }
check-pins-good-at-work = lgpio, connecteur sur gpiochip{ $chip } ; la station en marche tient les broches
check-probe-not-wanted = aucun capteur n’est voulu : les températures sont lues sur un thermomètre et saisies
check-probe-set-driver = pour une séance, mettre driver = "one-wire" sous [probe] dans station.toml
check-probe-virtual = les réglages choisissent le gobelet virtuel : aucun capteur n’est lu
check-probe-not-readable = cet utilisateur n’a pas le droit de lire le capteur
check-reads-no-samples = la station en marche n’a pas de points visibles d’ici, et un second lecteur perturberait ses mesures
check-reads-stop-station = arrêter la station, puis vérifier de nouveau
check-reads-supply = le fil d’alimentation (VDD) perd le contact : regarder le connecteur et les soudures, et l’alimentation du Pi
check-reads-data-ground = le fil de données touche la masse : regarder le connecteur et les soudures
check-reads-hangs = débrancher le capteur et le rebrancher ; s’il reste bloqué, couper l’alimentation du kit pendant 10 s
check-reads-half-plugged = un fil à moitié branché donne ce genre de lecture : regarder le connecteur et les soudures
check-reads-left-bus = le capteur a quitté le bus : regarder le connecteur et le câble
check-reads-unplug-others = débrancher tous les capteurs sauf un, ou régler probe.id dans station.toml
check-reads-own-probe = brancher le capteur de ce poste, ou changer probe.id dans station.toml et redémarrer la station
check-reads-cable = câble plus court, 4,7 kΩ (câble long : 2,2 kΩ) entre données et 3,3 V, un autre capteur ; puis vérifier de nouveau
check-reads-none-failed = aucune des { $count } lectures n’a échoué ; jusqu’à { $unseen } sur 100 pourraient encore échouer (95 %)
check-reads-none-failed-station = aucune des { $count } lectures de la station en marche n’a échoué ; jusqu’à { $unseen } sur 100 pourraient encore échouer (95 %)
check-reads-failed = { $failed } lectures sur { $count } ont échoué, { $share } sur 100 ({ $kinds_text })
check-reads-failed-station = { $failed } lectures sur { $count } de la station en marche ont échoué, { $share } sur 100 ({ $kinds_text })
check-noise-too-few = trop peu de bonnes lectures pour évaluer le bruit
check-noise-all-alike = chaque lecture donne exactement { $temperature_c } °C, ce que certaines copies donnent avant d’avoir mesuré
check-noise-hold-probe = tenir le capteur dans la main et vérifier de nouveau : la température doit monter
check-noise = bruit { $sd_c } °C (écart-type) à { $mean_c } °C
check-noise-changing = la température changeait, donc son bruit ne peut pas être évalué
check-noise-still-water = laisser le capteur une minute dans de l’eau immobile, puis vérifier de nouveau
check-noise-another-probe = laisser le capteur dans de l’eau immobile et vérifier de nouveau ; si le bruit reste, un autre capteur
check-noise-much = { $noise }, plus de { $most_c } °C
check-conversion-not-timed = aucune lecture faite ici, donc aucune conversion n’a été chronométrée
check-conversion = la puce répond après { $seconds } s
check-conversion-slow = la puce répond après { $seconds } s ; la fiche technique autorise 0,75 s
check-conversion-read = une lecture prend { $seconds } s ; ce noyau n’en dit pas plus
check-conversion-early = les lectures reviennent après { $seconds } s, avant que la conversion de { $conversion_s } s ait pu se terminer
check-conversion-stop-others = arrêter tout autre programme qui lit le capteur ; puis vérifier de nouveau
check-conversion-fixed = le noyau attend une durée fixe de { $seconds } s, donc le temps propre de la puce ne peut pas être connu
check-kind-number = son numéro suit le modèle du fabricant ; ses octets n’ont pas été examinés
check-kind-nothing-against = rien de ce qui est lu ici ne contredit un DS18B20 authentique, ce qui n’est pas une preuve
check-kind-off-sheet = une copie qui ne suit pas la fiche technique : { $reasons }
check-kind-expect = s’attendre à du bruit et à un décalage : le vérifier dans l’eau glacée, ou en prendre un autre
check-kind-copy = une copie, comme la plupart des capteurs à gaine d’acier : { $reasons }. Une copie peut être bonne : le bruit et les échecs le disent
check-kind-offset = vérifier une fois son décalage dans l’eau glacée
check-kind-no-pattern = son numéro ne suit pas le modèle du fabricant ({ $pattern_text }…)
check-kind-reserved = ses octets réservés sont { $bytes_text }, et non ff … 10 comme dans la fiche technique
check-kind-byte-6 = l’octet 6 ne compte pas avec la température
check-failed-itself = cette vérification a elle-même échoué ({ $fault_name } : { $reason })
check-report = le signaler avec ce qu’affiche station --version
check-storage-unsafe-plug = { $path } est sur { $kind_name }, qui supporte mal une coupure de courant
check-storage-unsafe-network = { $path } est sur { $kind_name }, qui se trouve sur une autre machine, où le fichier de l’enregistrement ne doit pas être
check-storage-on-the-card = régler folder sous [record] dans station.toml sur un dossier de la carte
check-storage-overlay-off = désactiver le système de fichiers overlay (raspi-config, Performance Options), ou régler folder sous [record] dans station.toml sur un dossier de la carte
check-storage-unknown = cette machine ne dit pas où { $path } est conservé
check-storage-in-memory = l’enregistrement est gardé en mémoire ({ $kind_name } sur { $mount_path }) : il est perdu à l’extinction
check-storage-read-only = { $mount_path }, où l’enregistrement est conservé, est en lecture seule ({ $device_name })
check-storage-card-worn = redémarrer le Pi ; si cela persiste, la carte est verrouillée ou usée : en prendre une autre
check-storage-good = { $path } peut être écrit et est conservé ({ $kind_name } sur { $device_name })
check-storage-little = seulement { $megabytes } Mo libres, de quoi enregistrer environ { $hours } heures
check-storage-delete-old = conserver ailleurs les anciens enregistrements et les supprimer ici, ou prendre une carte plus grande
check-storage-free = { $megabytes } Mo libres
check-storage-cannot-write = impossible d’écrire dans { $path } : { $reason }
check-storage-other-bytes = { $path } rend d’autres octets que ceux qui ont été écrits
check-storage-take-another = prendre une autre carte
check-storage-is-a-file = { $path } est un fichier, donc le dossier de l’enregistrement ne peut pas s’y trouver
check-storage-other-user = { $path } appartient à un autre utilisateur (uid { $user })
check-storage-not-writable = il n’est pas permis d’écrire dans { $path }
check-storage-chmod = chmod u+rwx { $path }
versions-not-installed = non installé
versions-page-built = page construite
versions-page-not-built = page non construite
check-versions = station { $station_version }, Python { $python_version }, { $system_name }
check-versions-board = { $versions }, { $board_name }
check-versions-no-pi = { $versions } ; pas un Raspberry Pi
check-versions-other-board = { $versions } ; pas un Raspberry Pi ({ $board_name })
check-versions-64-bit = écrire Raspberry Pi OS Lite 64 bits sur la carte
check-versions-32-bit = { $versions }, { $board_name } : un système 32 bits
order-of-practical-over = Cela concernait un TP qui est terminé.
probe-read-twice = ce processus lit déjà un capteur à cet endroit ; deux lecteurs se gêneraient
probe-not-ds18b20 = probe.id { $probe_name } n’est pas un DS18B20 : 28- et douze chiffres hexadécimaux
panel-pins-choose = panel.pins = { $typed } : utiliser "real", "mock" ou "none"
panel-install-lgpio = installer "python3-lgpio" depuis Raspberry Pi OS et créer l’environnement avec --system-site-packages, ou mettre panel.pins = "none" pour travailler avec la page seule
panel-lgpio-not-installed = la bibliothèque Python lgpio n’est pas installée ({ $reason })
panel-set-lg-wd = régler LG_WD sur un dossier où la station a le droit d’écrire
panel-lgpio-cannot-write = lgpio ne peut pas écrire dans { $path } ({ $reason })
panel-lgpio-empty = la lgpio installée est vide (version 0.0.0.2)
panel-run-on-pi = faire fonctionner la station sur un Raspberry Pi, ou mettre panel.pins = "none" pour travailler avec la page seule
panel-no-gpio = cette machine n’a pas de broches GPIO
panel-add-to-group = ajouter l’utilisateur de la station au groupe "gpio" et la redémarrer
panel-gpio-not-allowed = cet utilisateur n’a pas le droit d’ouvrir les puces GPIO
panel-no-header = aucune puce GPIO n’est le connecteur d’un Raspberry Pi ({ $found_text })
panel-use-supported = utiliser un Raspberry Pi pris en charge
panel-check-nothing-else = vérifier que rien d’autre n’utilise { $pins_text } (un overlay dans config.txt, un autre programme)
panel-pins-not-claimed = les broches ne peuvent pas être réservées ({ $reason })
panel-pin-of-probe = le capteur de température
panel-pin-number = { $pin_name } = { $typed } : donner un numéro GPIO de 2 à 27
panel-pin-taken = { $pin_name } = { $pin } : GPIO{ $pin } est pris par { $by } ; en choisir un autre
panel-cannot-be-used = le panneau n’est pas utilisable : { $reason } ; { $remedy }
virtual-speed = La vitesse doit être supérieure à zéro.
virtual-faults-percent = Dans le script de pannes, { $typed } : 100 % au plus peuvent échouer.
virtual-faults-not-understood = Dans le script de pannes, { $typed } n’est pas compris. Écrire une panne, @, la seconde du poste, + et sa durée en secondes (power_on@30+5), ou random 30 %. Pannes : { $known_text }.
virtual-ordinary-number = un nombre ordinaire
virtual-between-0-and-1 = compris entre 0 et 1
virtual-zero-or-more = zéro ou plus
virtual-above-zero = supérieur à zéro
virtual-must-be = { $field_name } vaut { $value } : ce doit être { $wanted }.
virtual-tipped-over = Le gobelet s’est renversé.
practise-bench-name = Gobelet d’entraînement
practise-no-acid = Le gobelet est vide : verse d’abord l’acide.
practise-no-such-cup = Ce gobelet d’entraînement n’existe plus. Ouvre de nouveau la page pour en recevoir un autre.
practise-full = Les gobelets d’entraînement sont tous pris. Attends qu’un se libère, ou demande à ton professeur.
practise-bench-at-work = Un essai est en cours à ce poste. Entraîne-toi quand il est fini.
practise-truth = Dans ce gobelet : { $acid_name } à { $mol_dm3 } mol/dm³. L’équivalence était à { $end_point_cm3 } cm³.
practise-truth-once = Dans ce gobelet, le mélange de { $added } avec { $liquid } donne { $enthalpy_kj_mol } kJ/mol.
practise-slip-nothing = Tu as appuyé, mais tu n’avais rien versé.
practise-slip-missed = Tu as appuyé, mais versé seulement { $poured_cm3 } cm³.
practise-slip-double = Tu as versé { $poured_cm3 } cm³ : environ le double des { $planned_cm3 } cm³ prévus.
practise-slip-volume = Tu as versé { $poured_cm3 } cm³ au lieu des { $planned_cm3 } cm³ prévus.
practise-slip-pressed-late = Tu as appuyé { $seconds } s après avoir versé la portion.
practise-slip-waited = Tu as attendu { $seconds } s avant de verser cette portion.
practise-slip-early = Tu as lu cette portion { $seconds } s trop tôt.
practise-slip-not-stirred = Tu n’as pas remué après cette portion.
practise-slip-lid = Le couvercle n’était pas mis.
practise-slip-probe-out = La sonde n’était pas dans le gobelet.
practise-slip-not-filled = Tu n’as pas rempli le gobelet d’acide neuf.
practise-slip-not-rinsed = Tu as mis la sonde de la base dans l’acide sans la rincer.
versions-library = { $library_name } { $version }
versions-station = benchwarm { $version }, { $page }
versions-lines =
    { $first }
    { $second }

## record

csv-row-both = à la fois une température et une portion ; une ligne a l’une des deux
csv-row-neither = ni température ni portion : écrivez celle qui manque, ou supprimez la ligne
csv-row-second-portion = une deuxième portion, alors que le plan ne mélange qu’une fois
csv-row-not-in-order = { $time_s } vient après { $before_s } ; dans un essai, les lignes suivent l’ordre du temps
csv-not-one-of = ne fait pas partie de { $known_text }
record-closed = { $path } : l’enregistrement est fermé
record-cannot-write = { $path } : impossible d’écrire l’enregistrement : { $reason }
record-restart-station = { $reason } ; redémarrer la station
record-event-unreadable = { $path } : impossible de lire l’événement { $event } : { $reason }
record-cannot-read = { $path } : impossible de lire l’enregistrement : { $reason }
record-cannot-open-folder = { $path } : impossible d’ouvrir l’enregistrement : { $reason } ; rendre son dossier accessible en écriture ou en choisir un autre
record-another-station = { $path } : une autre station garde ici son enregistrement ; l’arrêter d’abord
record-newer = { $path } : écrit par une station plus récente (format { $format_version }) ; mettre celle-ci à jour
record-none-here = { $path } : pas d’enregistrement ici ; indiquer son dossier avec --record
record-cannot-open = { $path } : impossible d’ouvrir l’enregistrement : { $reason }
record-not-set-aside = { $path } : l’enregistrement endommagé n’a pas pu être mis de côté : { $reason }
sheet-date-and-time = date et heure (horloge de la station)
sheet-bench-time = temps du poste / s
sheet-repeat = essai
sheet-portion = portion
sheet-what = quoi
sheet-in-words = en mots
sheet-notes = Notes
sheet-nothing-read = rien n’a pu être lu
sheet-nothing-read-why = rien n’a pu être lu : { $reason }
noted-plan-chosen = plan choisi
noted-group = groupe
noted-no-label = pas d’étiquette
noted-thermometer = thermomètre
noted-stations-probe = le capteur de la station
noted-ordinary-thermometer = { $digital ->
    [true] numérique, à { $division_c } °C près
   *[false] ordinaire, gradué tous les { $division_c } °C
}
noted-temperature-of-added = température de ce qu’on ajoute
noted-set-up = préparation
noted-set-up-step = { $step ->
        [alkali] température du liquide à ajouter non mesurée
        [probe] capteur rincé et essuyé
        [empty] gobelet vidé
       *[wash] gobelet rincé et séché
    }
noted-repeat-begun = essai commencé
noted-repeat-ended = essai terminé
noted-repeat-set-aside = essai écarté
noted-repeat-counts-again = l’essai compte de nouveau
noted-portion-taken-back = portion annulée
noted-mass-corrected = masse corrigée
noted-volume-corrected = volume corrigé
noted-portion-unsure = portion incertaine
noted-portion-sure = portion de nouveau sûre
noted-station-asked = la station a demandé
noted-answer = la réponse
noted-note = note { $number }
noted-note-withdrawn = note { $number } retirée
noted-adopted = mesures d’un autre groupe reprises
noted-own-again = de nouveau les mesures du groupe
noted-own-reading = lecture personnelle
noted-results = résultats
noted-shown-by-staff = montrés par le personnel
noted-shown-with-prepared = montrés par le personnel ; le flacon avait été préparé à { $mol_dm3 } mol/dm³
noted-withheld-by-staff = retenus par le personnel
noted-correction-of-probe = correction du capteur
noted-none = aucune
noted-check-saved = vérification { $number } du capteur enregistrée
noted-check-withdrawn = vérification { $number } du capteur retirée
noted-cup-tested = gobelet vérifié
noted-record-damaged = enregistrement endommagé mis de côté
noted-events-go-on = { $count } événements sont repris
noted-probe-lost = capteur perdu
noted-probe-found = capteur retrouvé
noted-paused = en pause
noted-by-role = par le { $role ->
        [teacher] professeur
       *[technician] personnel de laboratoire
    }
noted-resumed = repris
noted-finish-undone = fin annulée, le TP continue
noted-repeat-asked = un essai de plus
noted-teacher-called = professeur appelé
noted-call-ended = appel du professeur terminé
noted-sketch = prévision dessinée
noted-practical-ended = TP terminé
noted-early = avant la fin
sheet-temperature-at-end-point = température à l’équivalence
sheet-expected-shift = décalage attendu des droites brutes
sheet-change-of-temperature = variation de température
sheet-heat-given-out = chaleur libérée
sheet-heat-taken-in = chaleur absorbée
sheet-enthalpy-per-mole = variation d’enthalpie par mole
sheet-acid-concentration = concentration de l’acide
sheet-of = de
sheet-method = méthode
sheet-quantity = grandeur
sheet-value = valeur
sheet-standard-uncertainty = incertitude-type
sheet-95-from = 95 % de
sheet-95-to = 95 % à
sheet-unit = unité
sheet-step = étape
sheet-formula = formule
sheet-working = calcul
sheet-results = Résultats
sheet-steps = Étapes
sheet-mean-of-repeats = moyenne
sheet-repeat-number = essai { $repeat }
sheet-no-result = pas de résultat
sheet-worth-a-thought = à examiner
sheet-accepted = valeur de référence
sheet-own-lines = droites personnelles
sheet-plan = Plan
sheet-table = Tableau
sheet-run-temperature = essai { $repeat } / °C
sheet-run-mass = masse de l’essai { $repeat } / g
sheet-volume-added = volume ajouté / cm³
sheet-line = droite
sheet-line-before = droite avant
sheet-line-after = droite après
sheet-line-temperature = sur la droite / °C
sheet-probe = Capteur
sheet-mean = Moyenne
sheet-samples = Points enregistrés
sheet-portions = Portions
sheet-bench = poste
sheet-group = groupe
sheet-practical = TP
sheet-practice = Entraînement
sheet-virtual-cup = avec un gobelet virtuel
sheet-how-clock-set = comment l’horloge de la station a été réglée
sheet-readings-of = mesures
sheet-own = celles de ce groupe
sheet-not-own = pas celles de ce groupe : { $label_name }
sheet-ordinary-typed = thermomètre ordinaire, valeurs saisies
sheet-moments = moments de lecture
sheet-moments-own = le groupe a décidé lui-même
sheet-moments-station = comme la station l’a demandé
sheet-thermometer = thermomètre
sheet-repeats-planned = essais prévus
sheet-temperature-added-before = température de ce qu’on ajoute, avant le début
sheet-indented = { "  " }{ $of }
sheet-its-uncertainty = son incertitude-type
sheet-cup-heat-capacity = capacité thermique du gobelet et du capteur
sheet-in-the-cup = dans le gobelet
sheet-volume = volume
sheet-concentration = concentration
sheet-mass-g = masse / g
sheet-mass = masse
sheet-added-at-once = ajouté en une fois
sheet-concentration-to-find = concentration (vide : à déterminer)
sheet-added-in-portions = ajouté par portions
sheet-volume-of-portion = volume d’une portion
sheet-portions-planned = portions prévues
sheet-repeat-set-aside = essai écarté : { $reason }
sheet-no-reason = aucune raison donnée
sheet-not-sure-why = incertain : { $reason }
sheet-not-settled = pas stable
sheet-not-a-probes = ce ne sont pas les températures d’un capteur
sheet-clock-network = par le réseau
sheet-clock-not-set = non réglée : la date et l’heure peuvent être fausses
sheet-total-added = volume total ajouté / cm³
sheet-temperature = température / °C
sheet-u-temperature = incertitude-type / °C
sheet-time-in-repeat = temps dans l’essai / s
sheet-counts = compte
sheet-why-not = pourquoi non, ou ce qu’il y a de particulier
sheet-mean-added = volume total ajouté moyen / cm³
sheet-mean-temperature = température moyenne / °C
sheet-repeat-counts = l’essai compte
sheet-as-probe-said = comme le capteur l’indique / °C
sheet-corrected-by = corrigé par
sheet-checked-on = vérifié le
sheet-correction-added = correction ajoutée / °C
sheet-u-correction = son incertitude-type / °C
sheet-at-about = à environ / °C
sheet-relative-u = incertitude relative d’une différence
sheet-volume-cm3 = volume / cm³
sheet-added-early = ajouté avant d’être demandé
sheet-reason = raison
record-backup-not-written = { $path } : la sauvegarde n’a pas pu être écrite : { $reason } ; choisir un autre endroit
record-not-restored = { $path } : l’enregistrement n’a pas pu être restauré : { $reason }
record-not-deleted = { $path } : l’enregistrement n’a pas pu être supprimé : { $reason }
file-no-such = { $path } : ce fichier n’existe pas ; vérifier le nom
record-backup-not-sound = { $path } : cette sauvegarde d’un enregistrement n’est pas intacte ({ $reason }) ; en utiliser une autre
record-not-a-backup = { $path } : ce n’est pas la sauvegarde d’un enregistrement : { $reason }
record-backup-changed = { $path } : l’événement { $event } n’est pas tel qu’il a été écrit ; utiliser une autre sauvegarde
record-moved = son fichier a été déplacé ou supprimé
record-log-deleted = son journal { $file } a été supprimé et ne peut pas être réécrit ({ $reason })
noted-quantity = { $value } { $unit }
noted-cup = { $label_name } : { $j_k } ± { $u_j_k } J/K
noted-question = { $code ->
        [no_change] aucun changement
        [double] changement double
        [not_stirred] pas agité
        [sudden_fall] baisse brusque
        [probe_out] capteur hors du liquide
        [other_start] départ loin du premier
        [volume] autre volume
        [slip] erreur de lecture
       *[other] { $text }
    }
noted-answered = { $code ->
        [yes] oui
        [no] non
        [once] une fois
        [twice] deux fois
        [lid] couvercle
        [spilled] renversé
        [not_sure] incertain
        [readings_fit] les lectures suivantes concordent
        [typed_again] retapé
       *[other] { $text }
    }
noted-bad = { $code ->
        [empty] pas de texte
        [crc] somme de contrôle fausse
        [garbled] texte brouillé
        [zeros] seulement des zéros
        [power_on] valeur de mise sous tension
        [out_of_range] hors limites
        [jump] un saut impossible
        [gone] absent du bus
        [several] plusieurs capteurs
        [other_probe] un autre capteur
        [not_read] non lu
        [no_answer] pas de réponse
       *[other] { $text }
    }
noted-check = { $code ->
        [ice] point de glace
        [boiling] point d’ébullition
        [ice_and_boiling] points de glace et d’ébullition
        [comparison] comparaison
        [dip] immersion
       *[other] { $text }
    }

## kit

progress-title = Cette station s’installe
progress-step = Installation, étape { $number } sur { $total } : { $what }
progress-system = réglages du système
progress-wheels = copie de ses composants
progress-station = la station elle-même, quelques minutes
progress-panel = voyants, signal sonore et bouton
progress-broker = la liaison avec les postes
progress-services = elle démarre
progress-waits = L’installation va commencer.
progress-failed = L’installation a échoué.
progress-mend = Elle sera retentée au prochain démarrage. Ces lignes disent pourquoi :
progress-done = Installée. La page vient toute seule, peut-être après un redémarrage.
progress-stay = Laissez le courant. Cette page avance toute seule.
kit-network-file =
    Le réseau de ce poste. Modifié sur un ordinateur quelconque, il vaut dès le prochain démarrage.
    Wi-Fi : ssid = "nom du réseau", password = "8 à 63 caractères", country = "FR", éventuellement hidden = true
    Le câble seul : wired = true
    Le résultat figure dans network-result.txt à côté de ce fichier.
helper-none = Cette station n’a pas été installée depuis une carte faite par station kit : elle ne peut pas le faire elle-même.
helper-not-known = L’assistant de la station ne connaît pas cette demande, ou une valeur est fausse.
helper-busy = Autre chose est encore en cours. Réessayer dans une minute.
helper-begun = C’est en cours ; la page est absente pendant ce temps. Revenir ici ensuite, et se reconnecter si c’est demandé.
helper-network-begun = Le nouveau réseau est essayé pendant une minute. S’il ne répond pas, l’ancien revient.
helper-network-kept = Le nouveau réseau a répondu pendant une minute et reste.
helper-network-back = Le nouveau réseau n’a pas répondu une minute entière. L’ancien est de retour.
helper-restarts = La station redémarre. Sa page revient dans une à deux minutes.
helper-shuts-down = La station s’éteint. Débrancher quand sa lumière verte ne clignote plus.
helper-backed-up = Le cahier est sur la clé : { $file }.
helper-settings = Enregistré. La station redémarre ainsi ; toute personne connectée se connecte de nouveau.
helper-no-stick = Aucune clé trouvée. En brancher une, formatée en FAT32, exFAT ou ext4.
helper-several-sticks = Plusieurs clés sont branchées. N’en laisser qu’une.
helper-stick-unreadable = La clé est illisible. En essayer une autre.
image-no-mtools = Les images demandent mtools : sudo apt install mtools. Sans lui, copier les dossiers à la main.
image-other = { $path } : sa partition de démarrage n’a pas { $file } ; ce n’est pas le système de ces cartes
image-no-boot = { $path } : pas d’image avec une partition de démarrage FAT en tête ; prendre l’officielle
image-not-as-named = { $path } : son SHA-256 commence par { $digits_text }, pas comme indiqué ; la télécharger de nouveau
image-not-whole = { $path } : impossible à décompresser ; la télécharger de nouveau
image-no-room = { $path } : il faut { $gigabytes } Go ici ; choisir un autre endroit
image-not-written = { $path } : pas écrit : { $reason }
debs-none = { $path } : aucun paquet de Mosquitto pour arm64 ; la page kits.toml du manuel donne la commande qui le remplit
debs-other = { $path } : pas un paquet pour arm64 ; remplir le dossier sur le système des cartes
debs-no-room = --debs : aucun kit de cette table n’est la salle, donc rien n’a besoin de Mosquitto
kit-plan-cannot-be-read = { $path } : impossible de lire le plan : { $reason }
kit-folder-not-empty = { $path } : n’est pas vide ; indiquer un nouveau dossier, car chaque exécution crée de nouveaux codes
kit-wheel-not-as-listed = { $path } : pas tel que { $file } à côté l’indique ; laisser --wheelhouse de côté pour tout télécharger
kit-no-pip-wheel = { $path } : ne contient pas de wheel de pip ; laisser --wheelhouse de côté pour que tout soit téléchargé
kit-no-lgpio-wheel = Le wheelhouse ne contient pas de wheel de lgpio. Si le système de la carte n’a pas non plus python3-lgpio, les voyants, le signal sonore et le bouton ne marcheront pas, et result.txt sur la carte le dira ; en donner un avec --lgpio.
update-digits-too-few = --sha256 : { $count } chiffres sont trop peu pour être sûr ; donner les { $least_text } premiers, ou tous
update-not-there = { $path } : absent ; vérifier le nom, et si la clé est montée
update-not-a-wheel-name = { $file } : ce n’est pas le nom d’un wheel
update-not-whole = { $file } : ce wheel n’est pas entier ({ $reason }) ; le copier de nouveau
update-inside-it-says = { $file } : à l’intérieur, il est écrit { $name } { $wheel_version }
update-wheel-of-other = { $path } : un wheel de { $name } ; indiquer le wheel de { $wanted_name }
update-no-sums = { $path } : ne contient pas { $file } ; prendre en entier le dossier wheelhouse créé par `station kit`
update-too-many-wheels = { $path } : { $count } wheels ; prendre le dossier wheelhouse créé par `station kit`
update-not-as-listed = { $path } : pas tel que { $file } l’indique ; copier le dossier de nouveau
update-lacking = { $path } : { $wheel_file } figure dans { $file } mais manque ; copier le dossier de nouveau
update-one-wanted = { $path } : { $count } wheels de { $name } ; il en faut un seul
file-larger-mb = { $path } : plus grand que { $megabytes } Mo ; est-ce le bon fichier ?
update-a-link = { $path } : un lien ; prendre le fichier lui-même
update-not-a-file = { $path } : ce n’est pas un fichier ; prendre en entier le dossier wheelhouse créé par `station kit`
update-bad-line = { $file } : la ligne { $line } n’est pas une empreinte suivie du nom d’un wheel
update-too-much = { $file } : plus que ce que contient un wheel de cette station
update-twice = { $file } : un fichier y figure deux fois
update-outside = { $file } : { $entry_path } ne resterait pas dans son dossier
update-not-as-record = { $file } : { $entry_path } n’est pas tel que son RECORD l’indique
kit-no-wheels = Cette station n’a plus les wheels qui ont servi à l’installer, donc le zip n’en contient pas : une carte créée avec lui seul ne peut pas s’installer. Copier le dossier benchwarm/wheelhouse d’une carte antérieure dans benchwarm sur chaque nouvelle carte.
kit-read-me =
    Pour chaque poste :
    1. Écrire Raspberry Pi OS Lite, 64 bits, version "{ $release_name }", sur une carte.
    2. Copier le contenu de { $every_card_file } sur sa partition de démarrage.
    3. Copier le contenu du dossier du poste (bench-1, bench-2 ...) sur la même partition ; remplacer les fichiers.
    4. Mettre la carte dans le Pi et le démarrer. Ce qu’il a fait est écrit dans benchwarm/result.txt sur la carte.

    { $labels_file } est à coller sur les boîtes. { $secrets_file } : l’imprimer, le mettre sous clé, supprimer le fichier ; les cartes ne contiennent que des empreintes.
kit-choose-plan-too = kits.toml : ligne { $line } : elle nomme le plan { $path } ; choisir aussi ce fichier
update-nothing-to-go-back = { $path } : son { $link_file } n’est pas un lien vers { $releases_path }, il n’y a donc rien à quoi revenir ; voir dans hardware.md l’étape qui installe la station
update-no-earlier = { $path } : aucune version antérieure n’est conservée ici
update-no-environment = pas d’environnement
update-no-pip = { $path } : pas de wheel de pip, ni ici ni d’une version antérieure ; prendre en entier le dossier créé par `station kit`
update-lgpio-not-installed = lgpio non installée
reason-none-given = aucune raison donnée
update-failed-at = { $what } : { $reason }
kit-room-label = Salle
kit-labels = Étiquettes
kit-codes = Codes et phrases de passe
kit-lock-away = Mettre cette feuille sous clé, puis supprimer le fichier : les cartes ne contiennent que des empreintes, et personne ne peut retrouver les mots.
kit-head-bench = poste
kit-head-code = code
kit-head-teacher = phrase de passe du professeur
kit-head-technician = phrase de passe du personnel de laboratoire
kit-label-number = Kit numéro { $number }
kit-label-wifi = Wi-Fi : { $ssid_name }
kit-label-probe = Capteur { $probe_name }
kit-label-lamps = Voyants : jaune : attendre · vert : à vous · rouge : regarder la page
kit-for-all = Pour chaque kit de cette série, et pour la salle :
kit-own-passphrases = own_passphrases donne à chaque kit les siennes : enlever teacher_passphrase et technician_passphrase, ou own_passphrases
kit-plain-text = doit être du texte simple, sans caractères de commande ni espaces autour
kit-twice = [[kit]] { $what_name } { $typed } figure deux fois : chaque poste a besoin du sien
kit-room-twice = [[kit]] room = true figure deux fois : il n’y a qu’une salle
kit-wifi-country = [[kit]] { $label_name } : le Wi-Fi a besoin du pays, par exemple country = "IE" en tête
file-larger-kb = { $path } : plus grand que { $kilobytes } ko ; est-ce le bon fichier ?
file-not-utf-8-line = { $path } : ligne { $line } : ce n’est pas du texte UTF-8 ; enregistrer le fichier en UTF-8
file-line = { $path } : ligne { $line } : { $reason }
update-wrong-version = la nouvelle station ne démarre pas : elle donne { $typed } comme version
update-worse = la vérification de la nouvelle station trouve ce que l’ancienne ne trouve pas : { $finding }
update-no-answer = pas de réponse
update-check-failed = station check de { $release_name } a échoué : { $reason }
update-does-not-end = la nouvelle station ne s’arrête pas quand on le lui demande
update-does-not-serve = la nouvelle station ne fonctionne pas avec une copie de cet enregistrement : { $reason }
update-does-not-start = la nouvelle station ne démarre pas : { $reason }
kit-wheels-not-in-time = les wheels n’ont pas pu être téléchargés à temps : vérifier le réseau, puis réessayer
kit-pip-failed = pip n’a pas pu faire sa part ({ $step_name }) : { $reason }
kit-bench-label = Poste { $number }
update-found = { $check_name } : { $found }
settings-language = la station n’a pas de mots dans cette langue ; elle a { $languages_text }

## command

told-record-in-memory = L’enregistrement dans { $path } est gardé en mémoire : il est perdu à l’extinction. Voir `station check`.
told-record-salvaged = L’enregistrement était endommagé : { $count } événements ont pu être lus et sont repris ; l’enregistrement endommagé est dans { $path }.
told-backed-up = { $path } : { $count } événements, vérifiés.
check-plan-none = aucun plan n’est réglé : le TP de démonstration
check-plan-correct = corriger le plan, ou enlever plan de station.toml
check-read-from = lu dans { $path }
told-takes-seconds = Cela prend environ { $seconds } s : le capteur est lu une fois par seconde.
check-settings-correct = corriger cette ligne ; d’ici là, la station ne démarre pas. Ci-dessous, ce sont les réglages par défaut qui sont examinés
check-settings-none = pas de fichier de réglages : les valeurs par défaut s’appliquent
told-no-qr = pas de code QR : segno n’est pas installé ; pip install segno
told-no-lamps-none = pas de voyants : panel.pins = "none"
told-no-lamps = pas de voyants : { $reason }
check-status = { $name } : { $colour ->
        [red] rouge
        [amber] orange
        [green] vert
       *[unknown] inconnu
    }
check-link-nothing = rien à faire pour le poste : il travaille seul, et la salle reçoit tout plus tard
check-link-none = aucune salle n’est réglée : le poste travaille seul
check-link-password-file = mettre à cet endroit le fichier du mot de passe, tel que station kit l’a créé
check-link-compare = comparer link.user et son mot de passe avec ceux de la salle
check-link-refuses = le broker { $address } ne laisse pas entrer ce poste
check-link-check = vérifier link.broker, le réseau, et si la salle est allumée ; d’ici là, le poste travaille seul
check-link-silent = le broker { $address } ne répond pas
check-link-good = le broker { $address } laisse entrer ce poste
check-room-settings = corriger cette ligne ; d’ici là, la salle ne démarre pas
check-room-no-mosquitto = Mosquitto n’est pas installé
check-room-install = sudo apt install mosquitto
check-room-private = un Mosquitto privé, tant que la salle travaille
check-room-lets-in = le broker { $address } laisse entrer la salle
check-room-refuses = le broker { $address } ne laisse pas entrer la salle
check-room-systemctl = sudo systemctl status mosquitto ; comparer benchwarm.passwords sur la carte
check-room-at-work = la salle travaille ; sa page est sur le port { $port }
check-room-start = sudo systemctl start station-room, ou : station room --config room.toml
check-room-not-at-work = aucune salle ne travaille sur le port { $port }
demo-bench-name = Poste virtuel
told-not-at-work = pas en marche : { $address } dit pourquoi
told-station-serve = station serve : { $reason }
told-cannot-start = impossible de démarrer : { $reason }
export-not-for-terminal = une feuille de calcul ne s’affiche pas dans un terminal : indiquer son fichier avec --out FICHIER.xlsx
export-all-needs-out = tous les TP font beaucoup de fichiers : indiquer un zip ou un dossier avec --out FICHIER.zip ou --out DOSSIER
export-cannot-be-written = { $path } : impossible d’écrire : { $reason } ; choisir un autre endroit
told-exported = { $path } : { $count } TP.
export-is-there = { $path } : existe déjà ; indiquer un nouveau dossier, ou un fichier qui se termine par .zip
file-not-there = { $path } : absent ; vérifier le nom
told-images = Images complètes, une par carte : { $path }. Les écrire telles quelles, sans les réglages du logiciel d’écriture.
told-cards = { $count } cartes dans { $path } : copier le contenu de chaque dossier sur la partition de démarrage de sa carte.
told-labels = { $path } : l’imprimer, le découper, une étiquette sur chaque boîte.
told-secrets = { $path } : l’imprimer, le mettre sous clé, supprimer le fichier.
told-room-folder = { $path } : le copier sur la machine de la salle ; là : station room --config room/room.toml
told-wheelhouse = Le dossier wheelhouse sert aussi à mettre une station à jour : station update wheelhouse --sha256 { $digits_text }
told-mind = Attention : { $reason }
look-run-check = lancer station check sur le Pi, et signaler ce qu’il affiche
look-check-failed = la vérification elle-même a échoué ({ $reason })
told-mistake = station { $command_name } : la station a fait une erreur ({ $fault_name } : { $reason }). Ce qui a été confirmé est conservé. Pour la signaler, définir STATION_TRACEBACK=1 et recommencer.
told-error = station { $command_name } : { $reason }
passphrase-again = La même encore une fois :
passphrase-differ = les deux n’étaient pas identiques ; réessayer
predict-probe = capteur (1/16 °C), tracé
predict-thermometer-0-1 = thermomètre à 0,1 °C
predict-thermometer-1 = thermomètre à 1 °C
predict-mind = Attention :
predict-assumed = Hypothèses :
predict-mixed-once = Dans le gobelet : { $in_cup } ; mélangé en une fois : { $added }.
predict-portions = { $in_cup }, { $acid_mol_dm3 } mol/dm³ ({ $basis }) ; { $count } portions ({ $added }), { $alkali_mol_dm3 } mol/dm³.
predict-resolves = Avec trois mesures sur chaque branche, ce plan peut déterminer des acides de { $least_mol_dm3 } à { $most_mol_dm3 } mol/dm³.
predict-keep-from-class = Ne pas montrer cette page à la classe : elle dit ce que le personnel a préparé.
predict-end-point = Équivalence attendue { $end_point_cm3 } cm³ ; mesures sur les branches : { $before } avant, { $after } après.
predict-rise = Hausse à l’équivalence { $rise_c } °C à partir de { $start_c } °C.
predict-ratios-rise = Plus grande élévation { $rise_c } °C à partir de { $start_c } °C.
predict-head-added = ajouté/cm³
predict-head-temperature = température/°C
predict-head-end-point = Équivalence d’un essai, cm³
predict-bias = écart
predict-refuses = ne donne rien
predict-head-comparison = Ce que coûtent des solutions plus diluées et ce qu’apporte une meilleure verrerie (capteur, un essai), cm³
predict-strengths = acide { $acid_mol_dm3 }, base { $alkali_mol_dm3 } mol/dm³
predict-strengths-rise = acide { $acid_mol_dm3 }, base { $alkali_mol_dm3 } mol/dm³ : hausse { $rise_c } °C
predict-as-in-plan = * comme dans le plan
predict-change = Variation attendue { $change_c } °C à partir de { $start_c } °C ; { $enthalpy_kj_mol } kJ/mol ({ $of }, { $amount_mol } mol).
predict-head-time = temps/s
predict-one-repeat = Un essai
predict-about-minutes = Environ { $minutes } minutes à la paillasse ({ $parts_text }).
told-prepared = { $path } : préparation pour { $count } postes, à imprimer.
stock-write-it = --stock { $typed } : l’écrire NAME=MOL_DM3, par exemple nitric acid=2.0
stock-out-of-range = --stock { $typed } : mol/dm³ doit être supérieur à 0 et au plus 20
stock-wrong = --stock { $typed } : { $reason }
sheet-title = { $practical_name } ({ $count } postes)
sheet-label-of = { $of } : { $hazards }
rehearse-wants-passphrase = la salle { $address } demande une phrase de passe : la mettre dans un fichier, et ajouter --passphrase-file FICHIER
rehearse-passphrase-wrong = la salle { $address } n’accepte pas cette phrase de passe : corriger la ligne dans le fichier
rehearse-label = Répétition
rehearse-open = { $count ->
        [one] Ouvrir { $address } dans un navigateur : { $count } poste, { $speed } fois plus vite.
       *[other] Ouvrir { $address } dans un navigateur : { $count } postes, { $speed } fois plus vite.
    }
rehearse-all-finished = Tous les postes ont terminé.
rehearse-stays-open = La salle reste ouverte ; Ctrl-C met fin à la répétition.
rehearse-ended-too-soon = certains postes de la répétition se sont arrêtés trop tôt ; voir ci-dessus
rehearse-no-result = Résultat de la classe : retenu, ou rien n’est terminé.
rehearse-no-answer = la salle { $address } ne répond plus
rehearse-would-not = la salle { $address } a refusé : { $reason }
replay-no-samples = { $path } : ligne 1 : aucun point à rejouer ; le CSV d’un enregistrement a une colonne time_s
told-restored = { $path } : { $count } événements sont de retour.
told-restored-aside = L’enregistrement qui était là se trouve dans { $path }.
told-benches-send-to = Les postes envoient à { $address }.
announce-found = Sur ce réseau, la salle s’appelle { $address }.
announce-taken = Un autre appareil de ce réseau s’appelle déjà { $host_name } : cette salle s’appelle { $own_name }. Pour distinguer deux salles, donner un prefix à chacune dans room.toml.
announce-not = La salle ne peut pas être trouvée par son nom ici : { $reason }. Ses adresses restent valables.
told-made-a-mistake = la station a fait une erreur ({ $fault_name } : { $reason })
settings-one-code = donner bench_code ou bench_code_hash, pas les deux
settings-user-letters = lettres, chiffres, "-", "_" ou ".", au plus 40
settings-user-missing = user : manque ; ajouter le nom sous lequel le broker connaît ce poste
settings-one-password = Donner le mot de passe dans link.password ou dans link.password_file, pas dans les deux.
new-bench-other-broker = Cette salle utilise le broker { $address } : y créer l’utilisateur du poste. `station kit` écrit ses fichiers.
new-bench-no-name = { $typed } ne peut pas être le nom d’un poste : des lettres, chiffres et traits d’union, comme bench-3.
new-bench-taken = { $user_name } est déjà admis, et son mot de passe est dans les réglages de ce poste. Pour un autre poste, choisir un autre nom ; --new-password donne à celui-ci un nouveau mot de passe.
file-not-utf-8-byte = { $path } : ce n’est pas du texte UTF-8 (octet { $byte }) ; l’enregistrer en UTF-8
file-problem = { $path } : { $reason }
told-open = Ouvrir { $address } dans un navigateur. Ctrl-C arrête.
told-record-kept = En attendant, l’enregistrement est conservé dans { $path }.
told-alkali = base à { $temperature_c } °C
told-repeat-begun = essai { $repeat } : acide dans le gobelet
told-portion-in = portion { $portion } ajoutée ({ $volume_cm3 } cm³)
told-probe-lost = le capteur ne donne pas de mesure ({ $reason })
told-probe-found = le capteur est de retour
told-repeat-ended = l’essai { $repeat } est terminé
told-practical-ended = le TP est terminé
told-no-end-point = { $method } : pas d’équivalence. { $reason }
told-end-point = { $method } : { $end_point_cm3 } ± { $u_cm3 } cm³ (95 % : de { $low_cm3 } à { $high_cm3 } cm³)
told-start = début
update-name-a-wheel = indiquer un wheel ou un dossier de wheels ; ou --back seul, pour revenir à la version précédente
update-run-with-sudo = { $path } : écriture non autorisée ; lancer la commande avec sudo
told-installing = installation de benchwarm { $new_version } à côté de { $old_version } ; cela prend quelques minutes
told-next = { $path } : benchwarm { $new_version } est la suivante. Aucun service ne fonctionne ici : redémarrer la station soi-même.
told-unit-differs = Attention : { $file } de cette version diffère de celui de { $path } ; les comparer et le copier à la main.
told-updated = { $path } : benchwarm { $new_version } est en marche. Pour revenir à la précédente : station update --back
told-back = { $path } : retour à { $release_name }.
update-rolled-back = { $release_name } ne s’est pas mise en marche en { $seconds } s ; { $before_name } est de nouveau en marche
update-rolled-back-down = { $release_name } ne s’est pas mise en marche en { $seconds } s ; { $before_name } ne se met pas en marche non plus ; journalctl -u station dit pourquoi
update-nothing-installed-yet = benchwarm { $new_version }, SHA-256 { $digest_text } : rien n’est encore installé. Comparer avec ce que l’auteur des wheels a communiqué par une autre voie que la clé ; si c’est identique, ajouter --sha256 et ses 16 premiers chiffres
update-another-digest = ces wheels ont un autre SHA-256 ({ $digest_text }) : ne pas les installer
update-practical-under-way = un TP est en cours ; attendre qu’il soit terminé, ou ajouter --now (il continuerait ensuite)
wipe-add-yes = { $path } : ajouter --yes pour supprimer définitivement cet enregistrement ; `station backup` en garde d’abord une copie
told-register-stays = Le registre des capteurs reste ({ $count } vérifications) ; --register le supprime aussi.
told-wiped = { $path } : l’enregistrement est supprimé. Les sauvegardes placées ailleurs restent.
result-mean-of-repeats = moyenne des essais
portion-number = portion { $portion }
result-repeat = essai { $repeat }
result-none = pas de résultat : { $reason }
result-no-reason = aucune raison n’a été donnée
result-change =
    { $way ->
        [in] { $change_c } ± { $u_c } °C (95 % : de { $low_c } à { $high_c } °C) ; chaleur absorbée { $heat_j } ± { $u_heat_j } J
       *[out] { $change_c } ± { $u_c } °C (95 % : de { $low_c } à { $high_c } °C) ; chaleur libérée { $heat_j } ± { $u_heat_j } J
    }
result-end-point = { $end_point_cm3 } ± { $u_cm3 } cm³ (95 % : de { $low_cm3 } à { $high_cm3 } cm³)
result-enthalpy = { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-enthalpy-of = variation d’enthalpie par mole ({ $of }) { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-acid = acide { $acid_mol_dm3 } ± { $u_mol_dm3 } mol/dm³
result-quantity = { $quantity } { $value } ± { $u } { $unit }
bench-label = Poste
told-figure = { $figure }
told-address = { $name } : { $address }
passphrase-ask = Phrase de passe :
check-colour = { $colour ->
        [red] rouge
        [amber] orange
        [green] vert
       *[unknown] inconnu
    }
predict-part = { $part ->
        [start] début
        [portions] portions
        [recording] enregistrement
       *[rinsing] rinçage
    } { $minutes }
predict-bias-c = écart/°C
predict-one-sd = 1 σ
sheet-strength = { $mol_dm3 } mol/dm³
sheet-minutes = { $minutes } min
replay-temperature = { $temperature_c } °C
replay-kind = { $kind ->
        [repeat_begun] essai commencé
        [portion_added] portion ajoutée
        [prompt] consigne
        [settled] stable
        [taken] relevée avant
        [question_asked] question posée
        [portion_unsure] portion incertaine
        [probe_lost] capteur perdu
        [probe_found] capteur retrouvé
        [resumed] repris
        [repeat_ended] essai terminé
        [practical_ended] TP terminé
       *[other] { $kind }
    }
sheet-lesson = { $lesson } :

### Words that only the page says: their ids begin with page-.

## The bench: its numbers, and how fresh they are

page-manual = Manuel
page-station = Station de mesure
page-connecting = Connexion à la station …
page-virtual-cup = gobelet virtuel
page-from-room = pour regarder seulement ; retour à la salle
page-speed = le temps passe { $factor } × plus vite
page-silent = Aucune nouvelle de la station depuis plus de 3 secondes. Ce que tu vois n’est peut-être plus à jour.
page-lost = Pas de contact avec la station. Regarde le poste lui-même ; cette page se remettra à jour toute seule.
page-finished = Terminé
page-ready-tag = Prêt
page-paused-tag = En pause
page-practical = dans le gobelet : { $acid } ; { $alkali } ({ $concentration } mol/dm³) par portions de { $portion } cm³
page-practical-once = dans le gobelet : { $liquid } ; ajout en une fois : { $addition }
page-temperature = température
page-no-temperature = pas encore de mesure
page-question-again = Une question attend : réponds-y
page-question-later = Plus tard
page-live-time-axis = temps / s
page-live-text-none = Il n’y a pas encore de température à tracer.
page-live-now = Maintenant
page-live-text-band = La température est de { $temperature } °C ; pour être stable, elle doit rester entre { $low } et { $high } °C.
page-corrections-short = Corriger
page-live-text = La température est de { $temperature } °C.
page-live-mixed = Depuis le mélange
page-live-unmixed = Avant le mélange
page-corrections-close = Fermer
page-live-text-settled = La température s’est stabilisée à { $settled } °C et vaut { $temperature } °C maintenant.
page-live-band = stable si elle reste ici
page-celsius = { $temperature } °C

# `now` is less than two seconds ago.
page-age =
    { $unit ->
        [now] mesurée à l’instant
        [s] mesurée il y a { $count } s
        [min] mesurée il y a { $count } min
       *[h] mesurée il y a { $count } h
    }
page-frozen =
    { $unit ->
        [min] plus à jour : { $count } min
        [h] plus à jour : { $count } h
       *[s] plus à jour : { $count } s
    }
page-total-added = volume total ajouté
page-added = ajouté
page-added-mass = { $mass } g
page-volume = { $volume } cm³
page-repeat-of = essai { $repeat } sur { $planned }
page-portion-of = portion { $portion } sur { $planned }
page-time-left = temps restant
page-left-now = d’un instant à l’autre
page-left = environ { $seconds } s
page-left-unknown = pas encore connu
page-settling = attente d’une température stable
page-probe =
    { $which ->
        [ok] { "" }
        [none] { "" }
        [failing] Certaines lectures échouent. Vérifie le connecteur du capteur.
       *[lost] Le capteur ne répond pas. Vérifie qu’il est branché ; le TP continue dès qu’il est de retour.
    }
page-bad =
    { $which ->
        [empty] pas de réponse
        [crc] réponse brouillée
        [zeros] court-circuit sur le fil de données
        [garbled] réponse brouillée
        [power_on] le capteur a perdu son alimentation
        [out_of_range] hors limites
        [jump] un saut impossible
        [gone] le capteur est débranché
        [several] plusieurs capteurs sont branchés
        [other_probe] un autre capteur qu’avant est branché
        [not_read] la station n’a pas pu le lire
        [no_answer] pas de réponse à temps
       *[other] { $which }
    }
page-in-memory = Les résultats ne sont pas conservés : ils seront perdus si le courant est coupé. Appelle ton professeur.
page-fault = Rien ne peut être enregistré pour l’instant. Appelle ton professeur. ({ $reason })
page-question = Une question
page-more-questions =
    { $more ->
        [one] encore une question après celle-ci
       *[other] encore { $more } questions après celle-ci
    }
page-sending = Envoi …
page-unanswered = La station n’a pas répondu : on ne sait pas si c’est enregistré. Appuie de nouveau : rien n’est jamais compté deux fois.
page-close = Fermer
page-less-than = moins de { $amount }

## Charts: titles, axes, legends

page-volume-chart = Température en fonction du volume ajouté
page-time-chart =
    { $portion ->
        [0] Avant la première portion
       *[other] Depuis l’ajout de la portion { $portion }
    }
page-temperature-axis = température / °C
page-volume-axis = volume de base ajouté / cm³
page-repeat-name = essai { $repeat }
page-mean = moyenne
page-line-before = droite avant
page-line-after = droite après
page-settled-at = stable à { $temperature } °C
page-volume-chart-text =
    { $points ->
        [0] Pas encore de mesures.
       *[other] { $points } mesures ; le tableau ci-dessous les donne toutes.
    }

## Results: the two end-points, and remarks

page-by-straight-lines = Intersection des droites
page-by-heat-balance = <heat-balance>Bilan thermique</heat-balance> du tracé entier
page-answer-title = La réponse
page-answer-own-acid = Tu as lu { $volume } cm³ : la <concentration>concentration de l’acide</concentration> est donc { $concentration } mol/dm³.
page-answer-own-volume = Tu as lu { $volume } cm³ comme <neutralisation>volume à l’équivalence</neutralisation>.
page-answer-own-change = Tu as lu une variation de { $change } °C.
page-answer-best-acid = La meilleure valeur calculée est { $value }.
page-answer-best-volume = Le meilleur volume calculé à l’équivalence est { $volume } <uncertainty>±</uncertainty> { $u } cm³.
page-answer-best-change = La meilleure variation calculée est { $change } <uncertainty>±</uncertainty> { $u } °C.
page-answer-best-enthalpy = La meilleure variation calculée est { $change } ± { $u } °C ; la variation d’enthalpie par mole ({ $of }) est donc { $enthalpy }.
page-answer-bottle = Le flacon avait été préparé à { $concentration } mol/dm³.
page-answer-reaction = <neutralisation>Neutralisation</neutralisation> : { $equation_text }
page-worth-heat = Ici, le <heat-balance>bilan thermique</heat-balance> vaut davantage. Il tient compte du volume qui augmente dans le gobelet et de la chaleur perdue vers la salle. Les droites négligent les deux.
page-worth-heat-once = Ici, le <heat-balance>bilan thermique</heat-balance> vaut davantage. Il tient compte de la chaleur perdue vers la salle pendant le mélange. Les droites prolongées ne font que l’estimer.
page-worth-lines = Ici, les droites valent davantage. Le <heat-balance>bilan thermique</heat-balance> ne s’accorde pas bien avec tes données.
page-differ-title = En quoi les deux méthodes diffèrent
page-differ-lines = Droites : une <best-fit>droite d’ajustement</best-fit> passe par les mesures avant le sommet, une autre par celles d’après. Tu lis le volume là où elles se coupent. On admet ainsi que les deux branches sont droites.
page-differ-heat = <heat-balance>Bilan thermique</heat-balance> : la station suit la chaleur pendant toute la manipulation. La réaction est <exothermic>exothermique</exothermic> : sa chaleur réchauffe le liquide et le gobelet, et une partie est perdue vers la salle. Le <end-point>point d’équivalence</end-point> est le volume qui s’accorde le mieux avec toutes les températures.
page-more-about = plus
page-end-point = { $volume } cm³
page-plus-minus = <uncertainty>incertitude</uncertainty>-type { $u } cm³
page-interval = Probablement entre { $low } et { $high } cm³ (19 fois sur 20)
page-scatter-only = Cet intervalle ne couvre que la dispersion de tes mesures.
page-scatter-bias =
    Ici, des droites tracées par les mesures non corrigées se coupent en principe environ { $bias } cm³ trop { $side ->
        [low] bas
       *[high] haut
    }.
page-heat-balance-knows = Tient compte du volume qui augmente, de la chaleur perdue vers la salle et du retard du capteur.
page-not-described = Le modèle décrit mal ce tracé : à prendre avec prudence.
page-refused = Les droites ne donnent pas d’intersection. { $reason }
page-refused-heat = Pas de bilan thermique. { $reason }
page-remarks = À examiner
page-in-repeat = Essai { $repeat }

# `earlier` is a list with commas.
page-in-repeats = Essais { $earlier } et { $last }
page-remark-of = { $where } : { $remark }

## Everything mixed at once

page-once-chart = Température en fonction du temps
page-since-repeat-axis = temps depuis le début de l’essai / s
page-mixed = mélangé
page-once-chart-none = Pas encore de températures.
page-once-chart-text =
    La température en fonction du temps, { $repeats } { $repeats ->
        [one] essai
       *[other] essais
    } ; le tableau ci-dessous donne les nombres.
page-once-chart-text-change =
    La température en fonction du temps, { $repeats } { $repeats ->
        [one] essai
       *[other] essais
    } ; au moment du mélange, les deux droites sont à { $change } l’une de l’autre ; nombres dans le tableau ci-dessous.
page-line-read-off = droite
page-line-extended = prolongée jusqu’au moment du mélange
page-by-extended-lines = Droites prolongées
page-change = { $change } °C
page-change-interval = intervalle à 95 % : de { $low } à { $high } °C
page-change-plus-minus = <uncertainty>incertitude</uncertainty>-type { $u } °C
page-heat =
    { $way ->
        [in] chaleur absorbée
       *[out] chaleur libérée
    }
page-joules = { $heat } J
page-joules-plus-minus = incertitude-type { $u } J
page-enthalpy-of = variation d’enthalpie par <mole>mole</mole> ({ $what })
page-enthalpy = { $enthalpy } kJ/mol
page-enthalpy-plus-minus = incertitude-type { $u } kJ/mol
page-lines-know = Cet intervalle ne couvre que la dispersion de tes mesures.
page-lines-know-shift = Une paroi lente à s’échauffer, ou une réaction qui continue, décale davantage les droites.
page-lines-know-bias =
    Des droites tracées ainsi montrent en principe ici une variation trop { $side ->
        [large] grande
       *[small] petite
    } d’environ { $bias } °C.
page-heat-once-knows = Tient compte de la chaleur échangée avec la salle, du retard du capteur et de la durée du mélange.
page-added-unknown = Personne n’a mesuré la température de l’ajout ({ $name }) : le ± de la chaleur en tient compte.
page-refused-change = Les droites ne donnent pas de variation de température. { $reason }

## The table of readings

page-table = Mesures
page-table-volume = volume ajouté / cm³
page-table-repeat = essai { $repeat } / °C
page-table-mean = <mean>moyenne</mean> / °C
page-once-table = Nombres de chaque essai / °C
page-quantity = température
page-rows-start = début
page-rows-before = droite avant
page-rows-after = droite après
page-rows-change = variation, droites
page-rows-heat-change = variation, bilan thermique
page-rows-end = fin
page-missing = –
page-no-reading = pas de mesure
page-at-volume = à { $volume } cm³
page-not-settled = pas stable
page-not-sure = incertain
page-set-aside = L’essai { $repeat } a été écarté.
page-set-aside-why = L’essai { $repeat } a été écarté : { $reason }.
page-added-at = { $name } avant le début : { $temperature } °C.

## Corrections

page-corrections = Corriger, mettre en pause ou terminer
page-portion = portion { $portion }
page-whole = l’ajout ({ $name })

# `what` is a portion or what is mixed in, `added` the name of what is added.
page-correction-name =
    { $name ->
        [more] Nous avons ajouté d’autres portions
        [reading] Corriger une mesure saisie
        [thermometer] Utiliser de nouveau le capteur
        [repeat_set_aside] Écarter un essai
        [repeat_restored] Compter de nouveau un essai
        [note] Notes
        [group] Étiquette de ton groupe
        [adopt] Utiliser les mesures d’un autre groupe
        [adopt_returned] Revenir à vos propres mesures
        [portion_added] { $what } : déjà dans le gobelet
        [portion_undone] { $what } : rien n’a été ajouté
        [portion_volume] Un autre volume a été ajouté
        [portion_unsure] Ce qui a été ajouté est incertain
        [repeat_restarted] Recommencer cet essai
        [alkali_temperature] Température du réactif ajouté ({ $added })
        [pause] Pause
        [resume] Continuer
        [finish] Terminer le TP
        [finish_undone] Annuler la fin et continuer
        [begin] Commencer
        [rinsed] Le gobelet est rincé
       *[other] { $name }
    }
page-ask-portion-added = { $what } : c’est déjà dans le gobelet, l’enregistrer ?
page-ask-portion-undone = { $what } : annuler ? Seulement si rien n’est arrivé dans le gobelet. L’enregistrement en garde une trace.
page-ask-repeat-restarted = L’essai { $repeat } est écarté et tu le recommences. Pourquoi ?
page-ask-finish = Terminer maintenant ? L’essai en cours s’arrête ici et on ne peut plus rien ajouter.
page-ask-finish-before-turn = Terminer maintenant ? La température n’a pas encore changé de sens : on ne peut lire aucun point d’équivalence.
page-ask-finish-go-on = Non, continuer
page-ask-finish-undone = Continuer les mesures ? Ce qui est enregistré reste.
page-yes =
    { $which ->
        [portion_added] Oui, c’est ajouté
        [portion_undone] Oui, annuler
        [portion_volume] Enregistrer ce volume
        [portion_unsure] Marquer comme incertain
        [repeat_restarted] Oui, recommencer
        [finish] Oui, terminer
        [finish_undone] Oui, continuer
        [alkali_temperature] Enregistrer cette température
       *[other] { $which }
    }
page-no = Non, laisser
page-which-portion = Quelle portion ?
page-which-repeat = Quel essai ?
page-portion-name = essai { $repeat }, portion { $portion } ({ $volume } cm³)
page-once-name = essai { $repeat } ({ $volume } cm³)
page-not-anumber = Saisis un nombre, par exemple 4,5
page-real-volume = Volume réellement ajouté / cm³
page-added-temperature = Température du réactif ajouté ({ $added }) / °C
page-measure-with-probe = La mesurer avec le capteur
page-alkali = base
page-reason =
    { $reason ->
        [spilled] renversé
        [lost-count-of-the-portions] portions mal comptées
        [the-probe-was-out-of-the-cup] le capteur était hors du gobelet
        [wrong-volume-in-the-cup] mauvais volume dans le gobelet
        [added-at-the-wrong-moment] ajouté au mauvais moment
        [wrong-amounts] mauvaises quantités
        [too-few-readings] trop peu de mesures
        [the-readings-scatter-too-much] les mesures sont trop dispersées
        [differs-from-the-other-repeat] s’écarte de l’autre essai
        [lines-drawn-on-paper] droites tracées sur papier
        [read-off-the-points] lu sur les points
        [read-in-another-way] lu autrement
       *[the-temperature-has-not-turned] la température n’a pas changé de sens
    }
page-choose-reason = Choisis une raison
page-other-reason = une autre raison
page-reason-label = Raison
page-reason-text = Avec tes propres mots

## Around the instruction: menu, sound, code, typed readings

page-doing-not-fetched = Cette partie n’est pas arrivée.
page-doing-fetch-again = Réessayer
page-doing-menu = Menu
page-doing-menu-of = Vues de cette page
page-doing-places =
    { $which ->
        [bench] Le poste
        [guide] Guide et dangers
        [record] Compte rendu à imprimer
        [big] Grands chiffres pour le projecteur
       *[settings] Réglages
    }
page-doing-to-bench = Retour au poste
page-doing-sound =
    { $which ->
        [undecided] Activer le son
        [off] Activer le son
        [on] Couper le son
       *[asleep] Réveiller le son
    }
page-doing-sound-offer = Un son peut te dire quand il y a quelque chose à faire.
page-doing-sound-without = Sans son
page-doing-pressed-early = Ton appui a été vu. Le bouton venait de changer : lis-le, puis appuie de nouveau.
page-doing-may-be-old = Pas à jour
page-doing-at-the-cup = Près du gobelet, appuie sur le bouton du poste. Garde les téléphones au sec.
page-doing-dry-hands = Ne touche cette page qu’avec les mains propres et sèches.
page-doing-guide-first = Guide : contenu du gobelet, dangers
page-doing-divisions = Votre thermomètre
page-doing-scale = { $digital ->
    [true] Numérique, dernier chiffre / °C
   *[false] Un trait tous les / °C
}
page-doing-without = Continuer sans elle
page-doing-go-on-measuring = Continuer les mesures
page-doing-division-of = { $division } °C
page-doing-go-on-typing = Continuer avec votre thermomètre
page-doing-use-thermometer = L’utiliser
page-clock-wait = lecture dans { $seconds } s
page-clock-now = lis maintenant
page-clock-temperature = Température à { $minutes } / °C
page-amount-taken = { $what ->
        [mass] Masse réellement pesée / g
       *[volume] Volume réellement mesuré / cm³
    }
page-amount-as-planned = comme prévu
page-amount-wrong = Saisis un nombre comme { $example }, ou laisse le champ vide.
page-doing-typed-temperature = Température / °C
page-doing-record = Enregistrer
page-doing-not-anumber = Saisis une température, par exemple 21,5
page-doing-out-of-range = Seules des températures de { $low } à { $high } °C peuvent être enregistrées.
page-doing-too-fine = Au mieux, il indique { $near } °C. Appuie de nouveau pour garder ta valeur.
page-doing-far-off =
    C’est { $change } °C { $side ->
        [above] de plus
       *[below] de moins
    } que la dernière. Appuie de nouveau si c’est juste.
page-doing-last-reading = dernière mesure
page-doing-added-unread = Portion { $portion } ajoutée, aucune mesure relevée
page-doing-to-reading = Maintenant, votre propre lecture
page-doing-to-lines = Maintenant, tes propres droites
page-doing-to-results = Vers les résultats
page-doing-to-record = Ton compte rendu
page-doing-code-title = Le code de ce poste
page-doing-code-why = Il est écrit sur l’étiquette du poste. Avec lui, cet appareil commande le poste.
page-doing-code = Code
page-doing-give-code = Envoyer
page-doing-leave-code = Pas maintenant
page-doing-no-answer = La station n’a pas répondu. Réessaie.

## The guide: before the start, and clearing up

page-guide-title = Avant de commencer
page-guide-in-cup = Dans le gobelet
page-guide-added = Tu ajoutes
page-guide-strength = { $concentration } mol/dm³
page-guide-assumed = C’est à toi de trouver la <concentration>concentration</concentration>. Les dangers sont ceux de { $concentration } mol/dm³.
page-guide-no-pictogram = Pas de pictogramme de danger à cette concentration.
page-guide-basis = D’où cela vient
page-guide-how = Déroulement
page-guide-steps =
    { $which ->
        [fill] Remplis le gobelet. Capteur dedans.
        [lid] Mets le couvercle.
        [pour] Ajoute une portion.
        [stir] Agite, attends la station.
       *[rinse] Après la dernière portion : rince, puis encore une fois.
    }
page-guide-cautions = Précautions
page-guide-clearing-up = Rangement
page-guide-pictograms =
    { $which ->
        [GHS02] Inflammable
        [GHS03] Comburant
        [GHS05] Corrosif
        [GHS06] Toxique
        [GHS07] Nocif ou irritant
        [GHS08] Danger grave pour la santé
        [GHS09] Dangereux pour l’environnement
       *[other] { $which }
    }

## What went wrong: doubts, further portions, notes, the group's label

page-mistakes-groups =
    { $which ->
        [portions] Une portion
        [repeat] Cet essai
        [practical] Le TP
       *[group] Ton groupe
    }
page-mistakes-doubt-title = Portion { $portion } : que s’est-il passé ?
page-mistakes-doubt-title-once = Que s’est-il passé ?
page-mistakes-doubts =
    { $which ->
        [spilled] Renversé
        [stirred-late] Agité trop tard
       *[lid-off] Couvercle enlevé
    }
page-mistakes-in-doubt = La portion { $portion } est marquée comme incertaine.
page-mistakes-in-doubt-why = La portion { $portion } est marquée comme incertaine : { $reason }.
page-mistakes-in-doubt-once = Marqué comme incertain.
page-mistakes-in-doubt-once-why = Marqué comme incertain : { $reason }.
page-mistakes-sure = Annuler cette marque
page-mistakes-other-doubt = Avec tes propres mots (peut rester vide)
page-doubt-title = Vérifie ceci
page-doubt-of = essai { $repeat } : { $note }
page-doubt-other-volume = C’était un autre volume
page-doubt-leave-out = Écarter l’essai { $repeat }
page-doubt-right = C’était juste
page-doubt-parted = Les essais { $first } et { $second } s’écartent jusqu’à { $apart } °C à partir de la portion { $portion }. Cherche une mesure <anomalous>aberrante</anomalous> avant d’utiliser leur <mean>moyenne</mean>.
page-mistakes-one-more = Faire un essai de plus
page-mistakes-more-title = Combien de portions y a-t-il maintenant dans le gobelet ?
page-mistakes-quick-volume = Le volume ajouté : un seul appui
page-mistakes-volume-of = { $volume } cm³
page-mistakes-as-planned = { $volume } cm³, comme prévu
page-mistakes-which-reading = Quelle mesure ?
page-mistakes-clock-reading = répétition { $repeat }, { $minutes } : { $temperature } °C
page-mistakes-reading-name =
    { $portion ->
        [0] essai { $repeat }, début : { $temperature } °C
       *[other] essai { $repeat }, portion { $portion } : { $temperature } °C
    }
page-mistakes-right-reading = Ce qu’indiquait le thermomètre / °C
page-mistakes-set-aside-why = Il reste dans l’enregistrement et pourra compter de nouveau plus tard. Pourquoi ?
page-mistakes-set-aside = L’écarter
page-mistakes-restore-why = Quel essai compte de nouveau ?
page-mistakes-restore-name = Essai { $repeat }
page-mistakes-restore-name-why = Essai { $repeat } (écarté : { $reason })
page-mistakes-note-text = Nouvelle note
page-mistakes-note-about = À propos de
page-mistakes-about-all = tout le TP
page-mistakes-note-keep = Garder cette note
page-mistakes-note-withdraw = Retirer
page-mistakes-note-of = { $about } : { $text }
page-mistakes-note-withdrawn = retirée
page-mistakes-group-label = Étiquette, par exemple Groupe 4. Pas de noms.
page-mistakes-group-keep = Utiliser cette étiquette
page-mistakes-back = Retour

## Mots qui s’expliquent : marqués dans les textes des élèves, un appui ouvre l’explication.

page-glossary-word =
    { $which ->
        [neutralisation] neutralisation
        [end-point] point d’équivalence
        [best-fit] droite d’ajustement
        [uncertainty] ± (incertitude)
        [mean] moyenne
        [anomalous] aberrante
        [exothermic] exothermique
        [concentration] concentration
        [mole] mole
       *[heat-balance] bilan thermique
    }
page-glossary-means =
    { $which ->
        [neutralisation] L’acide et la base réagissent et forment de l’eau et un sel. Quand il ne reste ni l’un ni l’autre, le mélange est neutre.
        [end-point] Le volume de base qui consomme tout juste l’acide. Ce qu’on ajoute ensuite ne fait que refroidir le gobelet.
        [best-fit] Une droite tracée aussi près que possible de tous ses points. Il y a environ autant de points au-dessus qu’en dessous.
        [uncertainty] De combien un résultat peut s’écarter de la vraie valeur. Environ deux résultats sur trois sont à moins de ± d’elle.
        [mean] Additionne toutes les valeurs et divise par leur nombre. C’est la moyenne arithmétique.
        [anomalous] Une mesure est aberrante si elle ne suit pas l’allure des autres. Cherche la cause avant de l’écarter.
        [exothermic] Une réaction exothermique cède de la chaleur. Ce qui l’entoure se réchauffe.
        [concentration] La quantité de matière dissoute dans chaque dm³ de solution. On la donne en mol/dm³.
        [mole] Une unité pour compter les particules, comme la douzaine pour les œufs. Une mole, c’est 6.02 × 10²³ particules.
       *[heat-balance] Un calcul qui suit toute la chaleur : ce qui est cédé, ce qui réchauffe le gobelet, ce qui est perdu. Il utilise chaque température mesurée.
    }
page-glossary = Un mot et son sens
page-glossary-close = Fermer l’explication

## Settings of a device, and what staff may do

page-settings-title = Réglages de cet appareil
page-settings-language = Langue
page-settings-as-station = comme la station ({ $name })
page-settings-as-browser = comme ce navigateur
page-settings-units = Unités
page-settings-sound = Son
page-settings-sound-why = Un court signal quand il y a quelque chose à faire. Un navigateur n’émet de son qu’après un appui sur cette page.
page-settings-who = Qui commande le poste
page-settings-room = La salle
page-settings-role =
    { $which ->
        [looker] Cet appareil peut regarder. Le premier appui demande le code de l’étiquette du poste.
        [bench] Cet appareil commande le poste.
        [teacher] Connecté comme professeur.
       *[technician] Connecté comme personnel de laboratoire.
    }
page-settings-sign-out = Se déconnecter
page-settings-staff = Connexion du personnel
page-settings-no-passphrase = Aucune phrase de passe n’est définie
page-settings-set-passphrase = Personne ne peut donc se connecter ici comme personnel. La personne qui s’occupe de la station lance « station passphrase teacher ». La ligne affichée va sous [access] dans station.toml, ou pour une salle dans room.toml. Puis redémarrer. Les cartes faites par « station kit » ont des phrases de passe dès le début.
page-settings-staff-role = Rôle
page-settings-roles =
    { $which ->
        [teacher] Professeur
       *[technician] Personnel de laboratoire
    }
page-settings-passphrase = Phrase de passe
page-settings-sign-in = Se connecter
page-settings-recover-title = Code perdu ?
page-settings-recover-why = Maintenir le bouton du poste pendant 6 secondes, le relâcher, puis appuyer ici dans la minute.
page-settings-recover = Commander ce poste sans le code
page-settings-staff-title = Pour le personnel
page-settings-show-results = Montrer les résultats
page-settings-hide-results = Retenir les résultats
page-settings-bottle = Le flacon avait été préparé à / mol/dm³
page-settings-bottle-show = Le montrer avec les résultats
page-settings-bottle-why = Les groupes le voient alors à côté de leur réponse. D’ici là, seul le personnel peut le voir.
page-settings-bottle-wrong = Taper une concentration supérieure à 0 mol/dm³.
page-settings-results-shown = Les résultats sont visibles.
page-settings-results-held = Les résultats sont retenus.
page-settings-quiet = Couper le signal sonore
page-settings-loud = Rétablir le signal sonore
page-settings-is-quiet = Le signal sonore est coupé.
page-settings-is-loud = Le signal sonore est actif.
page-settings-rename = Renommer
page-settings-bench-name = Nom du poste
page-settings-pages =
    { $which ->
        [plan] Prévoir et commencer un TP
        [prepare] Préparer
        [checks] Vérifications du capteur
       *[kit] Ce kit
    }
page-settings-set-aside = Écarter un essai
page-settings-set-aside-now = Écarter
page-settings-restore = Compter de nouveau l’essai { $repeat }
page-settings-restore-why = Compter de nouveau l’essai { $repeat } (écarté : { $reason })
page-settings-pause = Mettre ce poste en pause : seul le personnel peut le laisser continuer
page-settings-resume = Laisser ce poste continuer
page-settings-done = C’est fait.

## The curve, and reading one point of it

page-seeing-views = Ce que montre la courbe
page-seeing-single-repeats = Montrer chaque essai
page-seeing-against-volume = en fonction du volume
page-seeing-against-time = en fonction du temps
page-seeing-which-repeat = Quel essai ?
page-seeing-trace-chart = Essai { $repeat } : température en fonction du temps
page-seeing-trace-text =
    Le tracé entier de { $minutes } minutes ; { $portions } { $portions ->
        [one] portion ajoutée
       *[other] portions ajoutées
    } ; le tableau ci-dessous donne les mesures stables.
page-seeing-loading = Chargement …
page-seeing-pour = portion ajoutée (son numéro)
page-seeing-settled-reading = mesure stable
page-seeing-unsettled-reading = mesure, pas stable
page-seeing-whole-trace = tous les points enregistrés
page-seeing-read-point = Lire un point de la courbe
page-seeing-hint = Touche la courbe, ou utilise les touches fléchées, pour lire un point.
page-seeing-at-start = début : { $volume } cm³
page-seeing-at-portion = portion { $portion } : { $volume } cm³
page-seeing-mean = moyenne { $temperature } °C
page-seeing-repeat = essai { $repeat } { $temperature } °C
page-seeing-own-volume = { $value } (à { $volume } cm³)
page-seeing-moment =
    { $time } : { $temperature } °C, { $portion ->
        [0] avant la première portion
       *[other] { $since } s après la portion { $portion }
    }
page-seeing-moment-once-before = { $time } : { $temperature } °C, essai { $repeat }, avant le mélange
page-seeing-moment-once = { $time } : { $temperature } °C, essai { $repeat }, { $since } s après le mélange
page-seeing-unsure-why = incertain : { $reason }
page-seeing-typed = saisie

## The curve that the group expects

page-sketch-title = Ta prévision
page-sketch-task = Dessine avec le doigt ou la souris, de gauche à droite. Au clavier : ← et → choisissent un volume, ↑ et ↓ règlent sa température.
page-sketch-drawing = Dessin de ta prévision
page-sketch-at = { $volume } cm³ : { $temperature } °C
page-sketch-at-none = { $volume } cm³ : rien n’est encore dessiné
page-sketch-keep = C’est notre prévision
page-sketch-clear = Effacer
page-sketch-draw = Dessiner
page-sketch-first = Dessiner ta prévision
page-sketch-again = Redessiner ta prévision
page-sketch-legend = ta prévision
page-sketch-question = Où la courbe mesurée s’écarte-t-elle de ta prévision, et pourquoi ?

## The students' own lines and reading

page-own-lines-title = D’abord tes propres droites
page-own-lines-task = Trace deux <best-fit>droites d’ajustement</best-fit> : une par les mesures qui montent, une par celles qui descendent. Fais glisser les poignées, ou choisis-en une et utilise les touches fléchées.
page-own-lines-task-falling = Trace deux <best-fit>droites d’ajustement</best-fit> : une par les mesures avant le changement de sens, une par celles d’après. Fais glisser les poignées, ou choisis-en une et utilise les touches fléchées.
page-own-lines-chart = Mesures moyennes avec tes deux droites
page-own-lines-chart-text = { $points } mesures moyennes et deux droites que tu places.
page-own-lines-handle =
    { $side ->
        [before] droite avant
       *[after] droite après
    }, poignée à { $volume } cm³
page-own-lines-handle-at = { $temperature } °C
page-own-lines-crossing = volume à l’équivalence { $volume } cm³
page-own-lines-no-crossing = Tes droites ne se coupent pas encore sur le graphique.
page-own-lines-type = Saisir plutôt les droites
page-own-lines-field =
    { $side ->
        [before] droite avant
       *[after] droite après
    } à { $volume } cm³ : température / °C
page-own-lines-own = Notre volume à l’équivalence / cm³
page-own-lines-from-crossing = Pris à l’intersection de tes droites. Tu peux saisir le tien.
page-own-lines-use-crossing = Le reprendre à l’intersection
page-own-lines-not-avolume = Saisis un volume compris entre 0 et { $most } cm³.
page-own-lines-ask = { $reading } : est-ce ta lecture ?
page-own-lines-ask-without = Tu donnes { $reading } sans deux droites qui se coupent. Comment l’as-tu lu ?
page-own-lines-ask-yes = Oui, c’est notre lecture
page-own-lines-ask-no = Pas encore
page-own-lines-commit = C’est notre lecture
page-own-lines-commit-now = Elle ne peut plus être changée une fois les résultats montrés.
page-own-lines-commit-wait = Tu peux la changer jusqu’à ce que ton professeur montre les résultats.
page-own-lines-nothing = Nous n’avons rien pu lire
page-own-lines-nothing-ask = Pourquoi n’as-tu rien pu lire ? C’est enregistré, et les résultats peuvent suivre aussitôt.
page-own-lines-nothing-yes = Oui, nous n’avons rien pu lire
page-own-lines-committed = Ta lecture : { $volume } cm³
page-own-lines-committed-change = Ta lecture : { $change } °C
page-own-lines-committed-nothing = Tu as noté que tu n’as rien pu lire.
page-own-lines-committed-nothing-why = Tu as noté que tu n’as rien pu lire : { $reason }.
page-own-lines-change = Changer notre lecture
page-own-lines-legend-before = ta droite avant
page-own-lines-legend-after = ta droite après
page-own-lines-legend-mean = mesure moyenne
page-own-lines-once-title = D’abord ta propre lecture
page-own-lines-once-task = Lis-la sur la courbe : prolonge la droite d’avant et la droite d’après jusqu’au moment du mélange. Quel est leur écart à cet endroit ?
page-own-lines-once-own = Notre variation de température / °C
page-own-lines-once-sign = Une hausse a un signe plus, une baisse un signe moins.
page-own-lines-not-achange = Saisis un nombre de degrés, par exemple +6,2 ou −3,5.
page-own-lines-waits =
    { $which ->
        [end] Les résultats viennent quand le TP est terminé et que tu as fait ta propre lecture.
        [own-reading] Les résultats viennent après ta propre lecture.
       *[staff] Les résultats viennent quand ton professeur les montre.
    }
page-own-lines-waits-end-first =
    { $which ->
        [at-once] Les résultats viennent quand le premier essai est terminé.
        [after-own-reading] Les résultats viennent quand le TP est terminé et que tu as fait ta propre lecture.
       *[when-shown] Les résultats viennent quand ton professeur les montre.
    }
page-own-lines-computing = La station calcule les résultats …
page-own-lines-compared = Ta lecture et les valeurs calculées
page-own-lines-you = tes droites
page-own-lines-you-typed = ta lecture
page-own-lines-lines = droites calculées
page-own-lines-lines-once = droites prolongées, calculées
page-own-lines-heat = bilan thermique
page-own-lines-own-volume = { $volume } cm³
page-own-lines-own-change = { $change } °C
page-own-lines-same = la même que la tienne
page-own-lines-off =
    la tienne est { $side ->
        [more] plus grande
       *[less] plus petite
    } de { $apart } cm³
page-own-lines-off-change =
    la tienne est { $side ->
        [higher] plus haute
       *[lower] plus basse
    } de { $apart } °C
page-own-lines-which = lecture
page-own-lines-value = valeur
page-own-lines-how-far = écart avec la tienne

## Why the two end-points differ

page-why-open = Pourquoi les deux équivalences diffèrent-elles ?
page-why-open-low = Pourquoi les droites donnent-elles une valeur trop basse ?
page-why-chart = L’explication sous forme de graphique
page-why-with-mean = Montrée avec la moyenne de tes propres mesures.
page-why-with-repeat = Montrée avec tes propres mesures de l’essai { $repeat }.
page-why-step = Étape { $step } sur { $of }
page-why-back = Retour
page-why-next = Suite
page-why-done = Terminé
page-why-again = Relire l’explication
page-why-not-possible = Il n’y a pas de courbe corrigée de ces mesures ; l’explication se fait donc seulement avec des mots.
page-why-names =
    { $which ->
        [0] Deux droites
        [1] De plus en plus de liquide
        [2] Les branches se courbent donc
        [3] Le même liquide pour chaque portion
       *[4] Où elle change vraiment de direction
    }
page-why-measured = tes mesures
page-why-corrected = mesures avec le même liquide pour chaque portion
page-why-liquid = liquide dans le gobelet
page-why-liquid-at = { $liquid } cm³
page-why-change = { $change } °C
page-why-crossing-name = intersection
page-why-heat-name = bilan thermique
page-why-two = Les deux <best-fit>droites d’ajustement</best-fit> de tes mesures se coupent à { $crossing }. Une droite d’ajustement suppose que les mesures sont vraiment alignées. Le sont-elles ?
page-why-more = La portion { $first } devait échauffer { $firstLiquid } cm³ de liquide et a fait varier la température de { $firstChange } °C. La portion { $last } en avait { $lastLiquid } cm³ et l’a fait varier de { $lastChange } °C. Chacune a libéré à peu près la même chaleur, mais il y avait de plus en plus de liquide à échauffer. La salle, et les portions plus froides que le gobelet, en prennent aussi une part.
page-why-more-words = Avant l’équivalence, chaque portion libère à peu près la même chaleur, mais il y a de plus en plus de liquide à échauffer dans le gobelet. Chaque portion fait donc moins varier la température que la précédente.
page-why-bend = La première branche devient donc de plus en plus plate : elle est courbe. La seconde est courbe aussi : chaque nouvelle portion a plus de liquide à refroidir. Une droite ne peut pas suivre. Prolongée jusqu’à l’équivalence du bilan thermique, la première droite est déjà { $above } °C au-delà de la seconde : les droites se sont rencontrées avant d’y arriver.
page-why-bend-words = La première branche devient donc de plus en plus plate : elle est courbe. La seconde est courbe aussi : chaque nouvelle portion a plus de liquide à refroidir. Des droites tracées à travers des branches courbes, puis prolongées l’une vers l’autre, se rencontrent trop tôt.
page-why-same = Répartissons maintenant la chaleur de la réaction comme si le gobelet avait toujours contenu { $liquid } cm³, que chaque portion était arrivée à la température du gobelet et que rien n’était parti vers la salle. Tes mesures se déplacent : avant l’équivalence, chaque portion fait maintenant varier la température de la même valeur ; après, plus rien ne change. La courbe est droite.
page-why-same-words = Répartissons maintenant la chaleur de la réaction comme si le gobelet avait toujours contenu la même quantité de liquide, que chaque portion était arrivée à la température du gobelet et que rien n’était parti vers la salle. Avant l’équivalence, chaque portion fait alors varier la température de la même valeur ; après, plus rien ne change. La courbe est droite.
page-why-low = La courbe redressée change de direction à { $endPoint }. C’est l’<end-point>équivalence</end-point> d’après le <heat-balance>bilan thermique</heat-balance>. L’intersection des droites est { $apart } cm³ trop bas : non parce que quelqu’un a mal mesuré, mais parce que des droites ont été tracées à travers des branches courbes.
page-why-high = La courbe redressée change de direction à { $endPoint }. C’est l’<end-point>équivalence</end-point> d’après le <heat-balance>bilan thermique</heat-balance>. Des droites tracées à travers des branches courbes se coupent le plus souvent trop tôt ; ici, la dispersion des mesures les a menées { $apart } cm³ au-delà.
page-why-agree = La courbe redressée change de direction à { $endPoint }. C’est l’<end-point>équivalence</end-point> d’après le <heat-balance>bilan thermique</heat-balance>. Des droites tracées à travers des branches courbes se coupent le plus souvent trop tôt ; ici, les deux s’accordent, dans la limite de ce que les mesures permettent de dire.

## The record to print, downloads, readings of another bench

page-record-title = Compte rendu
page-record-print = Imprimer la feuille à rendre
page-record-file-title = { $bench } { $day } compte rendu
page-record-downloads = Téléchargements
page-record-downloads-hint = Les fichiers portent le nom du poste et la date.
page-record-files =
    { $which ->
        [sheet] Tout dans une feuille de calcul
        [table] Tableau des mesures
        [readings] Mesures
        [record] Tous les points enregistrés
        [readingsComma] Mesures pour les tableurs qui veulent une virgule décimale
        [recordComma] Tous les points pour les tableurs qui veulent une virgule décimale
       *[journal] Tout ce qui s’est passé, pour des programmes
    }
page-record-for-programs = Autres fichiers, pour des programmes
page-sheet-names = Noms :
page-sheet-by-hand = à écrire à la main sur la feuille imprimée
page-sheet-parts =
    { $which ->
        [aim] But
        [calculation] Ton propre calcul
        [conclusion] Conclusion
       *[evaluation] Évaluation
    }
page-sheet-answers = Les réponses de la station
page-sheet-print-answers = Imprimer les réponses de la station
page-sheet-hint = Une page A4. Tape ici ou écris à la main ; ce que tu tapes reste dans cet onglet.
page-sheet-hint-shown = Une page A4 chacune. Tape ici ou écris à la main ; ce que tu tapes reste dans cet onglet.
page-record-plan = Plan
page-record-planned =
    Prévu : { $portions } portions, { $repeats } { $repeats ->
        [one] essai
       *[other] essais
    }.
page-record-own-moments = Le groupe a décidé lui-même quand lire et quand ajouter.
page-record-planned-once =
    Prévu : { $repeats } { $repeats ->
        [one] essai
       *[other] essais
    }.
page-record-probe = Températures mesurées par le capteur de la station.
page-record-typed = Températures lues sur un thermomètre ordinaire.
page-record-typed-lines = { $digital ->
    [true] Températures lues sur un thermomètre numérique, à { $division } °C près.
   *[false] Températures lues sur un thermomètre ordinaire gradué tous les { $division } °C.
}
page-record-virtual = Mesures d’un gobelet virtuel, pas d’un vrai.
page-record-not-their-own = Ce ne sont pas les mesures de ce groupe : reprises de { $label }.
page-record-nothing = Rien n’a encore été enregistré.
page-record-unsure-mark = ? incertaine, ne compte pas dans les droites.
page-record-unsettled-mark = * pas stable.
page-record-volume-mark = Entre parenthèses : le volume total ajouté dans cet essai / cm³.
page-record-results = Résultats
page-record-own-reading = Ta propre lecture
page-record-own-nothing = rien n’a pu être lu
page-record-own-volume = { $volume } cm³
page-record-own-change = { $change } °C
page-record-straight = Droites
page-record-heat = Bilan thermique
page-record-end-point = { $volume } ± { $u } cm³
page-record-acid = concentration de l’acide
page-record-enthalpy = variation d’enthalpie par mole
page-record-plus-minus-is = Après ± : une incertitude-type.
page-record-steps = Étapes
page-record-happened = Notes et corrections
page-record-more = … et { $count } de plus : elles sont toutes dans la feuille de calcul.

# Minutes and seconds since the practical began.
page-record-at = { $minutes }:{ $seconds }
page-record-line = { $at }  { $what }
page-record-line-where = { $at }  { $where } : { $what }
page-record-because = { $what } : { $reason }
page-record-note-withdrawn = note retirée : { $text }
page-record-undone = annulée, elle n’a jamais été ajoutée
page-record-mass = { $mass } g ajoutés
page-record-volume = { $volume } cm³ ajoutés
page-record-unsure = incertain, ne compte pas dans les droites
page-record-sure = de nouveau sûr
page-record-early = ajouté avant d’être demandé
page-record-retyped = mesure corrigée en { $temperature } °C
page-record-aside = écarté
page-record-restored = compte de nouveau
page-record-probe-lost = le capteur n’a pas répondu
page-record-probe-found = le capteur est de retour
page-record-probe-often = Le capteur n’a pas répondu { $times } fois.
page-record-thermometer = { $digital ->
    [true] thermomètre numérique, à { $division } °C près
   *[false] thermomètre ordinaire, gradué tous les { $division } °C
}
page-record-probe-again = de nouveau le capteur de la station
page-record-finish-undone = fin annulée : le groupe a continué
page-record-repeat-asked = un essai de plus a été demandé
page-record-sketch = prévision dessinée
page-record-ended-early = terminé avant la fin
page-record-adopted = mesures reprises de { $label }
page-record-returned = de nouveau les mesures du groupe
page-record-salvaged = l’enregistrement de la station a été endommagé auparavant ; ce qui a pu être lu est repris
page-record-cautions = Précautions
page-record-adopt-about = Sans mesures à toi, tu peux travailler avec celles d’un autre poste. Elles sont marquées comme n’étant pas les tiennes, et les tiennes restent dans l’enregistrement.
page-record-adopt-how = Sur l’autre poste, ouvre « Compte rendu » puis « Autres fichiers », télécharge « Mesures » et choisis ce fichier ici.
page-record-adopt-file = Fichier de mesures (.csv)
page-record-adopt-label = À qui sont ces mesures ? Par exemple Poste 4
page-record-adopt-take = Utiliser ces mesures
page-record-adopt-too-long = Ce fichier est trop long pour des mesures. Télécharge « Mesures » sur l’autre poste.
page-record-adopt-unreadable = Ce fichier ne peut pas être lu. Choisis-le de nouveau.
page-record-adopt-reading-file = Lecture du fichier …
page-record-adopt-return-why = Tu travailles avec les mesures de { $label }. Revenir aux tiennes ?
page-record-adopt-back = Utiliser de nouveau nos propres mesures

## How each number was worked out; the own judgement

page-own-working-title = Ton propre calcul
page-own-working-task = Il part de ta propre lecture. Calcule une étape après l’autre ; chacune utilise les nombres écrits au-dessus.
page-own-working-place = Étape { $step } sur { $of }
page-own-working-over = Toutes les étapes sont faites.
page-own-working-again = Recommencer
page-own-working-try = Ton nombre / { $unit }
page-own-working-check = Vérifier
page-own-working-show = Montrer
page-own-working-right = Juste.
page-own-working-wrong =
    { $which ->
        [no-number] Tape un nombre.
       *[other] Pas encore. Vérifie les unités et le signe, puis essaie encore.
    }
page-steps-open = Comment chaque nombre a été calculé
page-steps-whose = Nombres de
page-steps-of-mean = moyenne
page-steps-by-lines = D’après les droites
page-steps-by-heat = D’après le <heat-balance>bilan thermique</heat-balance>
page-steps-opens = Ouvre un nombre pour voir la ligne qui le donne.
page-steps-unrounded = La station continue avec des nombres non arrondis ; le dernier chiffre peut donc différer d’une unité.
page-steps-accepted = Valeur de référence
page-steps-accepted-value = { $enthalpy } ± { $u } kJ/<mole>mol</mole>
page-steps-yours = La tienne, d’après le bilan thermique : { $enthalpy }
page-steps-source = Source : { $source }
page-steps-think = Questions pour ton analyse
page-steps-questions =
    { $which ->
        [0] Dans quel sens la chaleur a-t-elle quitté le gobelet pendant tes mesures ? Tes températures, ton équivalence et ton enthalpie en deviennent-elles trop grandes ou trop petites ? Comment pourrais-tu le vérifier ?
        [1] Ton thermomètre indique les températures par pas. Que vaut un pas par rapport à la variation totale de température ? Lequel de tes nombres en dépend le plus ?
        [2] Avec quelle précision connais-tu le volume dans le gobelet, et celui de chaque portion ? Si chaque portion avait été trop grande de 2 %, quels nombres changeraient, et dans quel sens ?
        [3] De combien tes essais diffèrent-ils ? Est-ce plus ou moins que ce que dit le ± ? Qu’est-ce qui a pu changer d’un essai à l’autre ?
       *[4] L’écart entre ta valeur et la valeur de référence est-il plus grand que les deux ± réunis ? Si oui : qu’est-ce qui n’est pas compris dans le ± ?
    }
page-steps-questions-once =
    { $which ->
        [0] Dans quel sens la chaleur est-elle passée entre le gobelet et la salle pendant tes mesures ? Ta variation de température en devient-elle trop grande ou trop petite ? Comment pourrais-tu le vérifier ?
        [1] Ton thermomètre indique les températures par pas. Que vaut un pas par rapport à la variation totale de température ?
        [2] Avec quelle précision connais-tu les quantités mélangées ? Si l’une d’elles avait été trop grande de 2 %, quels nombres changeraient, et dans quel sens ?
        [3] De combien tes essais diffèrent-ils ? Est-ce plus ou moins que ce que dit le ± ? Qu’est-ce qui a pu changer d’un essai à l’autre ?
       *[4] L’écart entre ta valeur et la valeur de référence est-il plus grand que les deux ± réunis ? Si oui : qu’est-ce qui n’est pas compris dans le ± ?
    }
page-steps-judgement = Ton propre jugement et celui de la station
page-steps-portion = portion
page-steps-repeat-title = Essai { $repeat }
page-steps-own-waited = toi, après / s
page-steps-own-read = toi / °C
page-steps-station-waited = station, après / s
page-steps-station-read = station / °C
page-steps-start = début
page-steps-cost = Ce que la différence a coûté
page-steps-by-you = toi
page-steps-by-station = la station
page-steps-time = durée
page-steps-end-point = équivalence
page-steps-minutes = { $minutes } min
page-steps-volume = { $volume } cm³

## Pages of staff: what all share

page-frame-ways = Pages
page-frame-pages =
    { $which ->
        [bench] Poste
        [plan] Prévoir un TP
        [prepare] Préparer
        [checks] Vérifications du capteur
        [kit] Ce kit
        [room] Salle
        [class] Résultat de la classe
        [sheets] Feuilles
        [kits] Kits
       *[lessons] Séances
    }
page-frame-asking = Question à la station …
page-frame-staff-only = Pour le personnel
page-frame-why-staff = Professeur ou personnel de laboratoire : se connecter pour continuer.

## Pages of staff: planning

page-plan-intro = Choisir ; la station calcule ce que le plan promet. Tout le monde peut essayer. L’évaluation des risques de l’établissement passe avant tout.
page-plan-start-from = Partir de
page-plan-bench-plan = le plan de ce poste
page-plan-as-chosen = comme choisi ci-dessous
page-plan-open-file = Ouvrir un fichier de plan
page-plan-no-file = Ce fichier n’a pas pu être lu comme plan.
page-plan-opened = Le plan du fichier est affiché ci-dessous.
page-plan-opened-without = Le plan du fichier est affiché ci-dessous, sans ce qui n’est pas connu ici : { $keys }.
page-plan-kind = Genre de TP
page-plan-kinds =
    { $which ->
        [portions] Portions de base dans un acide
        [ratios] Rapports de mélange
       *[once] Mélange en une fois
    }
page-plan-title = Titre
page-plan-acid = Acide dans le gobelet
page-plan-alkali = Base ajoutée
page-plan-portions = Portions
page-plan-liquid = Dans le gobelet
page-plan-addition = Réactif ajouté
page-plan-how-it-goes = Déroulement
page-plan-setting = Gobelet et salle
page-plan-anhydrous = anhydre
page-plan-reagent = Réactif
page-plan-volume = Volume / cm³
page-plan-portion-volume = Volume d’une portion / cm³
page-plan-count = Portions par essai
page-plan-concentration = Concentration / mol/dm³
page-plan-mass = Masse / g
page-plan-told = Sa concentration
page-plan-tells =
    { $which ->
        [unknown] à trouver par la classe ; non indiquée ici
        [known] connue de la classe
       *[prepared] préparée par le personnel, cachée à la classe
    }
page-plan-form = Ce qui est ajouté
page-plan-forms =
    { $which ->
        [solid] un solide pesé
       *[solution] une solution
    }
page-plan-glassware = Les portions sont mesurées avec
page-plan-glassware-of = { $name } (± { $u } cm³)
page-plan-own-u = ± d’une portion, à indiquer / cm³
page-plan-no-glassware = non indiqué (± 0,1 cm³)
page-plan-repeats = Essais
page-plan-pace = Rythme
page-plan-paces =
    { $which ->
        [graph] soigneux, pour un graphique
       *[quick] rapide, dès que le tracé suffit
    }
page-plan-prompts = Qui dit quand relever
page-plan-predict = Avant la première portion
page-plan-predicts =
    { $which ->
       *[false] rien de plus
        [true] le groupe dessine sa prévision
    }
page-plan-prompters =
    { $which ->
        [station] la station
       *[own-judgement] les élèves
    }
page-plan-results = Les résultats sont visibles
page-plan-seen =
    { $which ->
        [at-once] tout de suite
        [after-own-reading] après la lecture par la classe
       *[when-shown] quand le personnel les montre
    }
page-plan-cup-heat = Capacité thermique du gobelet / J/K
page-plan-cup-u = son ± / J/K
page-plan-room = Température de la salle / °C
page-plan-room-empty = 20 °C si vide
page-plan-before = Enregistré avant le mélange / s
page-plan-after = Enregistré après le mélange / s
page-plan-minutes = { $total } min
page-plan-at-bench = à la paillasse

# Puts a list together: 45 or 60 or 90.
page-plan-or = { $some } ou { $other }
page-plan-fits = tient dans une séance de { $lessons } min
page-plan-too-long = trop long pour une séance de { $lessons } min
page-plan-computing = La station calcule …
page-plan-mend = Quelque chose dans le plan n’est pas encore utilisable : voir les champs marqués.
page-plan-elsewhere = Dans le plan :
page-plan-no-answer = La station n’a pas répondu.
page-plan-promise = Ce que promet ce plan
page-plan-curve = Courbe attendue
page-plan-curve-of = Les mesures attendues, au nombre de { $points } ; le tableau ci-dessous les donne toutes.
page-plan-once-curve-of = La température attendue en fonction du temps ; elle varie de { $change }.
page-plan-expected-end-point = { $volume } cm³
page-plan-mixed = mélangé
page-plan-table = Mesures attendues sous forme de tableau
page-plan-added = ajouté / cm³
page-plan-time = temps / s
page-plan-temperature = température / °C
page-plan-rise = hausse à l’équivalence
page-plan-change = variation de température
page-plan-celsius = { $change } °C
page-plan-end-point = équivalence attendue
page-plan-arms = mesures sur les branches
page-plan-arms-of = { $before } avant, { $after } après
page-plan-taken = pour { $concentration } mol/dm³ d’acide
page-plan-resolves = Ce plan peut déterminer des acides de { $low } à { $high } mol/dm³.
page-plan-methods = Avec quelle précision l’équivalence sera connue (un essai, ± une incertitude-type)
page-plan-methods-once = Avec quelle précision la variation sera connue (un essai, ± une incertitude-type)
page-plan-read-with = lu avec
page-plan-thermometers =
    { $which ->
        [probe] capteur, tracé entier
        [thermometer_0_1_c] thermomètre à 0,1 °C
       *[thermometer_1_c] thermomètre à 1 °C
    }
page-plan-lines = droites
page-plan-heat = bilan thermique
page-plan-method = méthode
page-plan-off-by = écart systématique
page-plan-lines-off = droites, écart systématique / cm³
page-plan-lines-plus-minus = droites, ± / cm³
page-plan-heat-plus-minus = bilan thermique, ± / cm³
page-plan-bias-c = { $bias } °C
page-plan-plus-minus-c = ± { $u } °C
page-plan-plus-minus-kj = ± { $u } kJ/mol
page-plan-refuses = ne donne rien
page-plan-whole = Bilan thermique avec le capteur : moyenne de { $repeats } essais ± { $u } cm³ ; pour un seul, acide ± { $uAcid } mol/dm³.
page-plan-compare = Ce que coûtent des solutions plus diluées, et ce qu’apporte une meilleure verrerie
page-plan-compare-now = Comparer
page-plan-strengths = { $acid } / { $alkali }
page-plan-strength-head = acide / base, mol/dm³
page-plan-warnings = Attention
page-plan-assumed = Hypothèses
page-plan-hazards = Dangers à ces concentrations
page-plan-hazards-first = Ce n’est que l’usage courant : l’évaluation des risques de l’employeur, les règles locales et le personnel qualifié passent avant.
page-plan-taken-as = La classe doit la trouver : on suppose { $concentration } mol/dm³, le maximum que ce plan peut déterminer.
page-plan-not-classified = Non classé dangereux ; les précautions habituelles s’appliquent.
page-plan-near-edge = Moins de 5 % au-dessous d’une limite du règlement : la classe la plus sévère est indiquée.
page-plan-strength = { $concentration } mol/dm³
page-plan-grams = { $mass } g
page-plan-keep = Garder et démarrer
page-plan-keep-staff = Enregistrer et démarrer sont réservés au personnel.
page-plan-save = Enregistrer sous plan.toml
page-plan-copy = Copier le texte
page-plan-copied = Copié.
page-plan-not-copied = Le texte n’a pas pu être copié : le sélectionner ci-dessous.
page-plan-text = Le plan sous forme de texte
page-plan-start = Démarrer à ce poste
page-plan-started = Ce poste a maintenant le plan.
page-plan-to-bench = Vers le poste
page-plan-confirm = Je l’ai confirmé d’après l’évaluation des risques de l’établissement.
page-plan-to-prepare = Préparer cela pour une classe

## Pages of staff: preparing

page-prepare-intro = Ce qu’il faut préparer, étiqueter et disposer. À imprimer, ou à consulter ici.
page-prepare-plan = Plan
page-prepare-tab-plan = le plan de la page « Prévoir un TP »
page-prepare-bench-plan = le plan de ce poste
page-prepare-benches = Postes
page-prepare-lesson = Séance
page-prepare-minutes = { $minutes } min
page-prepare-stock = Flacon disponible ({ $name }) / mol/dm³
page-prepare-stock-empty = comme d’habitude si vide
page-prepare-print = Imprimer
page-prepare-title =
    { $practical } ({ $benches } { $benches ->
        [one] poste
       *[other] postes
    })
page-prepare-labels = Étiquettes
page-prepare-labels-why = Une par poste et par solution ; elles s’impriment sur une feuille à part.
page-prepare-strength = { $concentration } mol/dm³
page-prepare-count = { $count } ×
page-prepare-computing = La station calcule …
page-prepare-no-answer = La station n’a pas répondu.
page-prepare-secret = Ce que le personnel a préparé est réservé au personnel : se connecter pour le voir ici.
page-prepare-to-plan = Changer le plan

## Pages of staff: probe checks

page-checks-intro = Une vérification dit de combien le capteur se trompe, et avec quelle certitude. Le personnel la fait quand aucun essai n’est en cours ; pendant ce temps, personne ne peut commencer d’essai.
page-checks-first = Ce ne sont que les précautions habituelles : l’évaluation des risques de l’établissement, les règles locales et le personnel qualifié passent avant.
page-checks-silent = La station ne répond pas. Nouvel essai en cours.
page-checks-waits = Un essai est en cours à ce poste. Le terminer, puis revenir.
page-checks-no-probe = Ce poste n’a pas de capteur : il n’y a rien à vérifier.
page-checks-staff = Le personnel vérifie le capteur
page-checks-choose = Quelle vérification ?
page-checks-names =
    { $which ->
        [ice] Point de glace
        [boiling] Point d’ébullition
        [comparison] Comparaison avec un thermomètre
        [dip] Immersion : rapidité du capteur
       *[cup] Gobelet : capacité thermique et perte de chaleur
    }
page-checks-about =
    { $which ->
        [ice] Environ 3 minutes. De la glace pilée et un peu d’eau. Donne le décalage.
        [boiling] Environ 10 minutes, de l’eau bouillante. Avec un point de glace, donne une droite.
        [comparison] Environ 20 minutes, au moins trois températures de 10 à 50 °C. Donne une droite avec son incertitude : la meilleure vérification.
        [dip] Environ 3 minutes. Donne les deux constantes de temps.
       *[cup] Environ 12 minutes. Pour la partie [cup] d’un plan.
    }
page-checks-water = La glace et l’eau sont
page-checks-waters-distilled = distillées ou désionisées
page-checks-waters-tap = du robinet
page-checks-pressure = Pression de l’air du lieu, non ramenée au niveau de la mer / hPa
page-checks-altitude = ou altitude du lieu / m
page-checks-pressure-hint = Un baromètre la donne à ± 0,03 °C près ; avec l’altitude seule, la météo laisse ± 0,3 °C.
page-checks-reference = Le thermomètre de référence est juste à ± (une incertitude-type) / °C
page-checks-cup-label = Étiquette du gobelet
page-checks-begin = Commencer cette vérification
page-checks-caution =
    { $which ->
        [ice] Essuyer aussitôt l’eau renversée : un sol mouillé est glissant.
        [boiling] L’eau bouillante et la vapeur brûlent. Lunettes de protection, support résistant à la chaleur, bécher fixé ou bien stable, personne ne passe le bras au-dessus. Tenir le câble du capteur et la boîte de la station loin de la vapeur et de la plaque chauffante. Laisser refroidir avant de déplacer.
        [comparison] L’eau au-dessus de 50 °C brûle : petites quantités, bécher stable, lunettes de protection. Tenir le câble et la boîte loin de la vapeur.
        [dip] De l’eau chaude à 50 °C au plus. Essuyer aussitôt l’eau renversée.
       *[cup] De l’eau chaude de 40 à 50 °C, pas d’une bouilloire en ébullition. Lunettes de protection, gobelet stable. Garder le câble et la boîte au sec.
    }
page-checks-instruction =
    { $step ->
        [ice-prepare] Remplir un gobelet isolé de glace pilée. Ajouter juste assez d’eau froide pour combler les vides ; verser l’eau qui fait flotter la glace. Enfoncer le capteur de 5 cm au milieu, sans toucher la paroi.
        [ice-settling] Agiter doucement de temps en temps. Attendre : la station voit quand le capteur est stable.
        [ice-found] Le point de glace est mesuré.
        [boiling-prepare] Faire bouillir fortement de l’eau distillée. Y suspendre le capteur, le bout à 2 cm de profondeur, loin du fond et de la paroi.
        [boiling-settling] Maintenir l’ébullition. S’écarter et attendre : la station voit quand le capteur est stable.
        [boiling-found] Le point d’ébullition est mesuré. Couper le chauffage.
        [comparison-prepare] Mettre le capteur et la référence côte à côte, à la même profondeur, dans beaucoup d’eau agitée.
        [comparison-comparing] Agiter. Quand le capteur est stable, lire la référence et saisir la valeur. Puis changer la température, entre 10 et 50 °C.
        [dip-prepare] Préparer un demi-litre d’eau, à 10 °C ou plus de la température de la salle. Suspendre le capteur sec dans l’air immobile.
        [dip-air] Attendre : le capteur se stabilise dans l’air.
        [dip-plunge] Plonger maintenant le capteur dans l’eau et agiter régulièrement. N’appuyer sur rien.
        [dip-dipped] Continuer d’agiter. La station enregistre comment le capteur suit.
        [dip-found] Les deux constantes de temps sont mesurées.
        [cup-prepare] Peser de l’eau restée dans la salle. Y mettre le capteur.
        [cup-added] Agiter et attendre : sa température est en cours de mesure.
        [cup-fill] Peser le gobelet, y verser autant d’eau chaude, peser de nouveau. Couvercle dessus, capteur dedans, agiter.
        [cup-warm] Continuer d’agiter doucement. Le gobelet s’échauffe jusque dans sa paroi.
        [cup-pour] Verser d’un coup toute l’eau restée dans la salle, appuyer, et agiter.
        [cup-mixed] Continuer d’agiter doucement. Le couvercle est dessus.
        [cup-weigh] Saisir les deux masses.
        [cup-found] Le gobelet est vérifié.
       *[other] { "" }
    }
page-checks-step =
    { $which ->
        [in] Le capteur est dedans
        [hung] Le capteur est suspendu dans l’air immobile
        [in_added] Le capteur est dans l’eau
        [filled] L’eau chaude est dedans
        [poured] C’est versé
        [weighed] Ce sont les masses
        [compared] Retenir cette comparaison
       *[comparison_undone] Annuler la dernière
    }
page-checks-warm-mass = Eau chaude dans le gobelet / g
page-checks-added-mass = Eau ajoutée / g
page-checks-reference-says = La référence indique / °C
page-checks-live = Le capteur indique
page-checks-no-live = pas de mesure
page-checks-age = il y a { $s } s
page-checks-raw = Sans aucune correction, comme le journal le garde.
page-checks-rest =
    { $which ->
        [steady] Stable.
        [no_reading] Pas de mesure du capteur : vérifier son connecteur.
        [too_short] Pas encore assez longtemps.
        [moving] Change encore.
        [scattering] Les valeurs sautent : agiter, et tenir le bout loin de la paroi.
       *[far] Stable, mais loin de la température connue : le capteur est-il au bon endroit ?
    }
page-checks-moving = { $perMin } °C/min
page-checks-left = encore { $s } s
page-checks-known = Température connue : { $known } ± { $u } °C
page-checks-point = Capteur { $probe } °C, référence { $reference } °C
page-checks-points = Comparaisons
page-checks-found = Résultat
page-checks-high = Le capteur indique { $c } °C de trop, ± { $u } °C.
page-checks-low = Le capteur indique { $c } °C de moins qu’il ne faut, ± { $u } °C.
page-checks-right = Le capteur est juste à ± { $u } °C près.
page-checks-beyond = C’est plus que les ± 0,5 °C de la fiche technique : utiliser un autre capteur, ou celui-ci avec sa correction.
page-checks-mean = Moyenne des { $n } comparaisons : capteur { $probe } °C, référence { $reference } °C.
page-checks-slope =
    Compté à partir de { $at } °C, chaque degré du capteur est trop { $too ->
        [large] grand
       *[small] petit
    } de { $slope } ± { $u } %.
page-checks-slope-within =
    Compté à partir de { $at } °C, chaque degré du capteur est trop { $too ->
        [large] grand
       *[small] petit
    } de { $slope } ± { $u } % (95 % : ± { $within } %).
page-checks-slope-right = Compté à partir de { $at } °C, chaque degré du capteur est juste à ± { $u } % près.
page-checks-slope-right-within = Compté à partir de { $at } °C, chaque degré du capteur est juste à ± { $u } % près (95 % : ± { $within } %).
page-checks-dip = Deux constantes de temps : { $fast } ± { $uFast } s ({ $share } % de la réponse) et { $slow } ± { $uSlow } s.
page-checks-follows = 63 % d’un saut après { $t63 } s, 90 % après { $t90 } s.
page-checks-cup = Capacité thermique du gobelet et du capteur { $c } ± { $uC } J/K, perte de chaleur { $loss } ± { $uLoss } W/K.
page-checks-cup-assumes = Suppose : de l’eau seulement, pas d’éclaboussures, le même couvercle et à peu près la même hauteur que dans le TP, de l’eau à la température de la salle. Un décalage et une pente du capteur s’annulent.
page-checks-plan-lines = Pour le plan :
page-checks-standard = ± est une incertitude-type.
page-checks-save = Enregistrer
page-checks-discard = Abandonner
page-checks-staff-go-on = Le personnel continue : se connecter.
page-checks-register = Registre des capteurs
page-checks-none = Aucun capteur n’a encore été vu.
page-checks-at-work = en service maintenant
page-checks-genuine = Rien de ce qui est lu ne contredit une puce authentique.
page-checks-copy = Une copie :
page-checks-unseen = Ses octets n’ont pas encore été vus.
page-checks-failures = Mauvaises lectures : { $bad } pour 1000 (sur { $samples })
page-checks-bad =
    { $which ->
        [crc] somme de contrôle fausse
        [empty] pas de texte
        [garbled] texte brouillé
        [zeros] seulement des zéros
        [power_on] valeur de mise sous tension
        [gone] absent du bus
        [no_answer] pas de réponse
        [several] plusieurs capteurs
        [other_probe] un autre capteur
        [not_read] non lu
       *[other] { $which }
    }
page-checks-no-failures = Aucune mauvaise lecture sur { $samples }.
page-checks-unchecked = Jamais vérifié : ± 0,5 °C d’après la fiche technique.
page-checks-columns =
    { $which ->
        [number] N°
        [check] Vérification
        [day] Date
        [found] Résultat
       *[use] Utilisation
    }
page-checks-in-use = utilisée
page-checks-kept = conservée
page-checks-withdrawn = retirée
page-checks-withdraw = Retirer la vérification { $number }
page-checks-days =
    { $n ->
        [0] aujourd’hui
        [one] il y a { $n } jour
       *[other] il y a { $n } jours
    }
page-checks-clock-not-set = horloge non réglée
page-checks-age-unknown = ancienneté inconnue
page-checks-cups = Gobelets vérifiés
page-checks-no-answer = Pas de réponse. Réessayer.
page-checks-bad-number = Saisir un nombre.

## Pages of staff: the kit

page-machine = La machine
page-machine-tick = Cocher d’abord la case.
page-machine-network = Réseau
page-machine-network-why = Le nouveau réseau est essayé pendant une minute. S’il ne répond pas, l’ancien revient. Ce qui est saisi ici circule en http, non chiffré.
page-machine-try-network = Essayer ce réseau
page-machine-way = Voie
page-machine-wifi = Wi-Fi
page-machine-wired = le câble seul
page-machine-ssid = Nom du réseau Wi-Fi
page-machine-password = Mot de passe (vide : un réseau ouvert)
page-machine-country = Pays (deux lettres, comme FR)
page-machine-hidden = Le réseau ne montre pas son nom
page-machine-words = Nom, code, phrases secrètes
page-machine-words-why = Ce qui reste vide ne change pas. La station redémarre avec les nouveaux. Réimprimer l’étiquette.
page-machine-keep = Enregistrer
page-machine-name = Nom du poste
page-machine-code = Code du poste
page-machine-teacher = Phrase secrète du professeur
page-machine-technician = Phrase secrète du technicien
page-machine-record = Le cahier
page-machine-backup = Copier le cahier sur la clé
page-machine-restore = Reprendre cette copie
page-machine-restore-stick = Reprendre une copie de la clé
page-machine-restore-sure = Le cahier présent est mis de côté.
page-machine-copy = Copie sur la carte
page-machine-file = Nom du fichier sur la clé
page-machine-wipe = Effacer le cahier
page-machine-wipe-sure = Le cahier et toutes les connexions disparaissent pour de bon.
page-machine-update = Nouvelle version depuis une clé
page-machine-update-why = La clé contient le dossier wheelhouse. Saisir les chiffres que station kit a imprimés avec lui.
page-machine-update-go = Installer
page-machine-digits = Chiffres
page-machine-power = Courant
page-machine-restart = Redémarrer
page-machine-shut-down = Éteindre
page-machine-stops = Personne ne travaille à ce poste.
page-kit-ready = Ce kit est-il prêt ?
page-kit-verdict =
    { $which ->
        [green] Prêt : rien n’est à réparer.
        [amber] Utilisable. Faire attention à ce qui vient en premier ci-dessous.
       *[red] Pas prêt. Réparer ce qui vient en premier ci-dessous.
    }
page-kit-colour =
    { $which ->
        [green] en ordre
        [amber] attention
        [red] à réparer
       *[unknown] impossible à dire
    }
page-kit-looking = Examen du kit …
page-kit-again = Examiner de nouveau
page-kit-age = Examiné il y a { $s } s.
page-kit-no-answer = La station n’a pas répondu. Réessayer.
page-kit-beside = Pendant que la station travaille, seuls ses propres points sont jugés ; le capteur n’est pas lu pour cela.
page-kit-next = Ensuite :
page-kit-figures = Valeurs
page-kit-in-order =
    { $n ->
        [one] { $n } chose est en ordre
       *[other] { $n } choses sont en ordre
    }
page-kit-untold =
    { $n ->
        [one] { $n } chose ne peut pas être connue ici
       *[other] { $n } choses ne peuvent pas être connues ici
    }
page-kit-names =
    { $which ->
        [settings] réglages
        [plan] plan
        [bus] bus 1-Wire
        [probe] capteur
        [probe_power] alimentation du capteur
        [probe_resolution] résolution du capteur
        [probe_guard] contrôle du noyau
        [probe_reads] lectures
        [probe_noise] bruit
        [conversion_time] conversion
        [probe_kind] puce
        [pins] panneau
        [storage] stockage
        [free_space] espace libre
        [journal] enregistrement
        [clock] horloge
        [power] alimentation
        [network] réseau
        [port] port
        [versions] versions
        [link] liaison avec la salle
        [check] vérification
       *[other] { $which }
    }
page-kit-checks-hint = Décalage et âge du capteur :
page-kit-checks = vérifications du capteur
page-kit-address = Où les autres appareils le trouvent
page-kit-qr = Code QR de { $address }
page-kit-versions = Versions
page-kit-lamps = Voyants et signal sonore
page-kit-lamps-why = Les voyants « attendre », « agir » et « attention » s’allument tour à tour, puis tous les trois, avec un bip. Le TP continue pendant ce temps.
page-kit-try-lamps = Tester les voyants
page-kit-trying = Regarder le panneau maintenant.
page-kit-cards = Cartes pour d’autres postes
page-kit-cards-why = D’un tableau des postes (kits.toml, voir le manuel) à un zip avec un dossier par carte, les étiquettes et la feuille des codes et des phrases de passe.
page-kit-cards-secret = Les codes et les phrases de passe voyagent dans ce zip en http non chiffré : le faire par un câble ou un réseau à soi, et supprimer ensuite le fichier.
page-kit-kits-file = Tableau des postes (kits.toml)
page-kit-plan-file = Plan, si le tableau en nomme un (plan.toml)
page-kit-make-cards = Créer les cartes
page-kit-made = cards.zip est enregistré. READ-ME-FIRST.txt, à l’intérieur, dit où va chaque chose.
page-kit-not-text = { $file } : ce n’est pas du texte UTF-8 ; enregistrer le fichier en UTF-8.
page-kit-too-large = Ensemble, les fichiers font plus de { $kB } ko ; sont-ce les bons ?
page-kit-choose-table = Choisir d’abord le tableau.
page-kit-records = Tous les enregistrements
page-kit-records-why = Chaque TP de cette station dans un seul zip : points, mesures, feuille de calcul et journal de chacun. Les résultats retenus n’y sont pas.
page-kit-records-link = Télécharger tous les enregistrements
page-kit-sending = En cours …

## Pages of staff: the room

page-call =
    { $which ->
        [calls] Professeur appelé
       *[call] Appeler le professeur
    }
page-room-connecting = Question à la salle …
page-room-lost = Aucune nouvelle de la salle depuis quelques secondes. Ce qui est affiché n’est peut-être plus à jour.
page-room-fault = La salle ne peut rien recueillir pour l’instant : { $reason }
page-room-none = Aucun poste ne s’est encore manifesté. Les postes apparaissent ici d’eux-mêmes.
page-room-lesson = { $label }, depuis { $began }
page-room-lesson-unnamed = Séance depuis { $began }
page-room-no-lesson = Aucune séance n’est en cours.
page-room-counts =
    { $which ->
        [works] { $count } au travail
        [done] { $count } fini
        [held] { $count } en pause par vous
        [paused] { $count } en pause de leur fait
       *[idle] { $count } pas commencé
    }
page-room-states =
    { $which ->
        [ready] pas commencé
        [alkali] température de la base
        [start] température de départ
        [pour] à ajouter
        [settle] se stabilise
        [rinse] rinçage
        [paused] en pause de lui-même
        [held] en pause par vous
        [done] terminé
       *[unknown] encore rien de connu
    }
page-room-where = essai { $repeat }/{ $repeats }, portion { $portion }/{ $portions }
page-room-celsius = { $temperature } °C
page-room-reason =
    { $code ->
        [called] Appelle le professeur.
        [trouble] { $text }
        [unreadable] Son enregistrement est illisible ici : y commencer un nouveau TP.
        [silent] Pas connecté à la salle ; les données viendront plus tard.
        [probe_lost] Le capteur ne répond pas.
        [bad_readings] { $count } des dernières lectures ont échoué : vérifier le connecteur.
        [not_begun] N’a pas commencé.
        [stuck] N’avance plus depuis longtemps.
        [slow] Prend du temps à cette étape.
        [paused] En pause depuis longtemps.
        [behind] En retard sur la classe.
        [question] Question ouverte : { $text }
        [many_aside] { $count } essais écartés.
        [set_aside] L’essai { $count } est écarté : { $text }
        [odd_curve] Sa courbe diffère des autres.
       *[other] { "" }
    }
page-room-open = Ouvrir la page de { $name }
page-room-projector = Pour le projecteur
page-room-no-projector = Retour au tableau
page-room-board-title = Postes
page-room-tell-title = Donner un ordre aux postes
page-room-to-all = Tous les postes
page-room-to-some =
    { $count ->
        [one] { $count } poste choisi
       *[other] { $count } postes choisis
    }
page-room-choose-some = En choisir
page-room-choose-all = De nouveau tous
page-room-acts =
    { $which ->
        [quiet] Couper les signaux sonores
        [loud] Rétablir les signaux sonores
        [helped] J’y suis allé : terminer les appels
        [pause] Pause
       *[resume] Continuer
    }
page-room-rename = Renommer
page-room-new-name = Nouveau nom du poste
page-room-set-aside = Écarter un essai
page-room-restore = { $name } : compter de nouveau l’essai { $repeat }
page-room-which-repeat = Quel essai
page-room-repeat-name = Essai { $repeat }
page-room-why = Pourquoi
page-room-told = Envoyé : les postes non connectés le feront à leur retour.
page-room-no-answer = La salle n’a pas répondu. Rien n’a été transmis ; réessayer.
page-room-left = Ce que les postes ont fait
page-room-order-names =
    { $which ->
        [choose_plan] Nouveau TP
        [show_results] Résultats
        [quiet] Signal sonore
        [rename] Renommer
        [set_aside] Écarter
        [restore] Compter de nouveau
        [pause] Pause
        [resume] Continuer
        [call_over] Appel terminé
       *[other] { $which }
    }
page-room-take-back = Annuler ce qui n’est pas encore fait
page-room-lesson-title = Séance
page-room-begin = Commencer une séance
page-room-label = Classe (une étiquette, pas de noms)
page-room-plan = Plan
page-room-own-plan = celui de chaque poste
page-room-plan-in-file = d’un fichier
page-room-plan-file = Plan (plan.toml)
page-room-confirm = Si une solution dépasse 1,0 mol/dm³ : je l’ai vérifié d’après l’évaluation des risques de l’établissement.
page-room-new-practical = Commencer un nouveau TP
page-room-no-plan = Ce fichier ne peut pas être un plan : il est trop grand ou illisible.
page-room-end = Terminer la séance
page-room-lessons-title = Séances
page-room-no-lessons = Pas encore de séance.
page-room-lesson-head-began = Début
page-room-lesson-head-label = Classe
page-room-lesson-head-benches = Postes
page-room-lesson-head-result = Résultat de la classe
page-room-to-result = Ouvrir
page-room-to-sheets = Imprimer ou emporter
page-room-lessons-all = Toutes les classes
page-room-forget = Les noms de classes et de groupes sont oubliés { $days } jours après une séance. Ce qui a été mesuré reste.
page-room-forget-never = Les noms de classes et de groupes sont gardés pour toujours : les réglages de la salle le disent.
page-room-forget-clock = On ne sait pas si l’horloge de cette machine est juste ; rien n’est donc oublié pour l’instant.
page-sheets-count = Feuilles à imprimer : { $count }, une page A4 par poste.
page-sheets-print = Imprimer toutes les feuilles
page-sheets-zip = Tous les fichiers en un zip
page-sheets-why = Sur les feuilles figurent ce qui a été mesuré et tracé, et de la place pour écrire. Aucune réponse de la station n’y figure. Le zip a un dossier par poste : feuille de calcul, tableau, mesures et enregistrement ; les résultats dès qu’ils sont montrés.
page-kits-title = Tous les kits
page-kits-none = Aucun kit ne s’est encore annoncé.
page-kits-intro = { $count ->
    [one] Un kit est choisi. Ce qui est demandé ici vaut tout de suite ; un kit absent n’en saura jamais rien.
   *[other] { $count } kits sont choisis. Ce qui est demandé ici vaut tout de suite ; un kit absent n’en saura jamais rien.
}
page-kits-check-all = Tout vérifier
page-kits-backups = Tout sauvegarder
page-kits-backups-why = La sauvegarde est un zip sur cet appareil : pour chaque poste, un fichier que « station restore » accepte, pour autant que la salle ait son enregistrement.
page-kits-head =
    { $which ->
        [kit] Kit
        [check] Contrôle
        [probe] Capteur
        [free_space] Place libre
        [clock] Horloge
        [power] Alimentation
        [version] Version
       *[asked] Dernière demande
    }
page-kits-own-page = sa page
page-kits-away = absent
page-kits-not-looked = pas contrôlé depuis le début de la salle
page-kits-looked = { $min ->
    [0] à l’instant
   *[other] il y a { $min } min
}
page-kits-probe-checked = { $check ->
    [ice] dans la glace
    [boiling] dans l’eau bouillante
    [comparison] comparé
   *[dip] plongé
}, { $day }
page-kits-probe-unchecked = jamais contrôlé
page-kits-asked =
    { $which ->
        [look] Contrôler
        [ice-begin] Dans la glace
        [ice-save] Garder le point de glace
        [ice-discard] Laisser le point de glace
        [restart] Redémarrer
        [shut-down] Éteindre
        [backup] Sauvegarder sur la clé
        [update] Mettre à jour
        [restore] Remettre un enregistrement
       *[wipe] Effacer l’enregistrement
    }
page-kits-waits = demandé …
page-kits-ice =
    { $which ->
        [far] { $now } °C : ce n’est pas de l’eau glacée
        [settling] { $now } °C, pas encore stable
       *[other] { $now } °C
    }
page-kits-ice-found = trouvé : { $correction } °C
page-kits-ice-title = Point de glace de tous les capteurs
page-kits-ice-how = Remplir un grand bain de glace pilée, avec juste assez d’eau distillée pour pouvoir remuer. Y suspendre tous les capteurs, pointes en profondeur, sans toucher le fond ni les parois. Remuer de temps en temps. Presser le premier bouton quand tous y sont ; garder quand chacun a trouvé sa valeur.
page-kits-ice-count = Capteurs : { $probes }. Dans la glace : { $begun }. Trouvés : { $found }.
page-kits-ice-begin = { $count ->
    [one] Il est dans la glace
   *[other] Les { $count } sont dans la glace
}
page-kits-ice-save = { $count ->
    [one] En garder un
   *[other] Garder { $count }
}
page-kits-ice-discard = { $count ->
    [one] Laisser pour un
   *[other] Laisser pour { $count }
}
page-kits-more = Enregistrement, version, alimentation
page-kits-do = Quoi
page-kits-do-what =
    { $which ->
        [restart] Chaque kit redémarre et continue où il en était. Il faut environ une minute.
        [shut-down] Chaque kit s’éteint ; on peut débrancher quand son voyant est éteint.
        [backup] Chaque kit copie son enregistrement sur sa propre clé.
        [update] Chaque kit installe les wheels de sa propre clé, les essaie, et revient de lui-même en arrière s’ils ne marchent pas.
        [restore] Chaque kit met une de ses sauvegardes à la place de son enregistrement. Le précédent est mis de côté.
       *[wipe] Chaque kit efface pour de bon son enregistrement et toutes les connexions ; son registre de capteurs reste. La salle garde ce qu’elle a.
    }
page-kits-place = D’où
page-kits-places =
    { $which ->
        [card] les copies de la carte
       *[stick] la clé
    }
page-kits-typed =
    { $which ->
        [update] Les 16 premiers chiffres de la nouvelle version, comme on vous l’a dit
       *[restore] Nom du fichier, comme 2026-11-30.backup
    }
page-kits-sure = { $count ->
    [one] Vraiment : sur le kit choisi
   *[other] Vraiment : sur les { $count } kits choisis
}
page-room-under-way = en cours
page-room-address = Les autres appareils trouvent la salle à
page-room-qr = Code QR de { $address }
page-room-practise = Entraînement sur chaque téléphone
page-room-practise-more = Chaque téléphone qui ouvre cette adresse reçoit son propre gobelet virtuel. Rien n’en entre dans le résultat de la classe.
page-room-class-title = Résultat de la classe
page-room-withheld = Caché jusqu’à ce que chaque poste ait montré son propre résultat.
page-room-waits-for = Pas encore montré sur : { $benches }.
page-room-nobody = Aucun poste n’a encore commencé.
page-room-calculating = Calcul en cours …
page-room-methods =
    { $which ->
        [heat_balance] bilan thermique
       *[straight_lines] droites
    }
page-room-plot-title = { $quantity }, { $method }
page-room-plot-why = Un point est la valeur d’un poste, son trait l’intervalle à 95 % ; une flèche : il se prolonge. La bande est la moyenne de la classe avec son intervalle à 95 %.
page-room-plot-value = { $name } : { $value } (95 % : de { $low } à { $high })
page-room-class-mean = classe
page-room-table-title = Tous les postes
page-room-bench = Poste
page-room-repeats = Essais
page-room-no-value = aucune
page-room-not-pooled = autre plan
page-room-odd-title = Postes éloignés des autres
page-room-odd-why = Rien n’est écarté automatiquement.
page-room-no-odd = Aucun poste n’est loin des autres.
page-room-curve-title = Courbe moyenne de la classe
page-room-curve-across = base ajoutée / cm³
page-room-curve-up = variation depuis le début / °C
page-room-curve-why = Moyenne de { $count } postes ; les barres sont la dispersion entre les postes (un écart-type).
page-room-files = À emporter
page-room-file-names =
    { $which ->
        [sheet] Tout dans une feuille de calcul
        [results] Résultats de tous les postes
        [resultsComma] Résultats, virgule décimale
        [readings] Mesures de tous les postes
        [readingsComma] Mesures, virgule décimale
       *[events] Tous les événements de tous les postes
    }
page-room-print = Imprimer la feuille de la classe
page-room-print-hint = Un recto A4.
page-room-needs-title = Qui a besoin de vous
page-room-needs-count =
    { $count ->
        [0] Aucun poste n’a besoin d’aide.
        [one] { $count } poste a besoin de vous :
       *[other] { $count } postes ont besoin de vous :
    }
page-room-need =
    { $code ->
        [called] { $name } vous appelle
        [trouble] { $name } : données perturbées
        [unreadable] { $name } : enregistrement illisible
        [silent] { $name } n’est pas connecté
        [probe_lost] { $name } : capteur muet
        [bad_readings] { $name } : vérifier le connecteur
        [not_begun] { $name } n’a pas commencé
        [stuck] { $name } n’avance plus
        [slow] { $name } prend du temps
        [paused] { $name } : longue pause
        [question] { $name } : une question ouverte
        [many_aside] { $name } : plusieurs essais écartés
       *[other] { $name }
    }
page-room-progress = { $own } % fait ; la classe { $usual } %
page-room-answer =
    { $state ->
        [pending] { $act } : pas connecté, pas encore
        [refused] { $act } : pas fait
       *[other] { $act } : fait
    }
page-room-left-line =
    { $state ->
        [pending] { $act } : { $benches } pas connecté, le fera au retour
        [refused] { $act } : { $benches } ne l’a pas fait : { $why }
       *[other] { $act } : { $benches } l’a fait
    }
page-room-dismiss = Masquer
page-room-bar = Commandes
page-room-panel = Panneau
page-room-all-benches = Tous les postes ({ $count })
page-room-results =
    { $state ->
        [shown] Résultats : montrés partout
        [held] Résultats : cachés partout
       *[some] Résultats : montrés sur { $shown } de { $all }
    }
page-room-pause-all =
    { $which ->
        [resume] Continuer ({ $count })
       *[pause] Pause ({ $count })
    }
page-room-arrange = Disposer
page-room-arranged = Disposé
page-room-take = Déplacer { $name }
page-room-put = À la place { $place }
page-room-sign-in = S’identifier
page-room-join = Adresse
page-room-no-address = La salle n’a pas d’adresse sur un réseau pour l’instant.
page-room-practice-count = Entraînement ({ $count })
page-room-practice-title = Gobelets d’entraînement
page-room-practice-why = Des gobelets virtuels sur téléphones et tablettes. Rien n’en entre dans le résultat de la classe.
page-room-practice-cup = Gobelet { $cup }
page-room-begin-does =
    { $own ->
        [own] 
        { $count ->
            [one] Commence un nouveau TP sur { $count } poste, avec le plan qu’il a ; ce qui a été mesuré est conservé.
           *[other] Commence un nouveau TP sur { $count } postes, chacun avec le plan qu’il a ; ce qui a été mesuré est conservé.
        }
       *[plan] 
        { $count ->
            [one] Commence un nouveau TP sur { $count } poste : { $plan }. Ce qui a été mesuré est conservé.
           *[other] Commence un nouveau TP sur { $count } postes : { $plan }. Ce qui a été mesuré est conservé.
        }
    }
page-room-begin-not = Ceux-ci sont au milieu d’un essai et le continuent : { $benches }.
page-room-statistics = Les statistiques
page-room-more-pictures = Autres figures
page-room-clash = { $value } : pas d’intervalle utilisable, ses essais se contredisent
page-room-open-questions = Questions ouvertes
page-room-made-up = Préparé à { $mol } mol/dm³
page-room-made-up-only-you = vous seul voyez ceci
page-room-made-up-seen = les postes le montrent
page-room-made-up-ask = Concentration préparée dans le flacon / mol/dm³
page-room-made-up-keep = Retenir (visible du personnel seul)
page-room-made-up-show = Montrer à la classe

## S’entraîner avec un gobelet virtuel

page-practise-tag = entraînement
page-practise-hands = Entraînement : tes mains
page-practise-ware = { $which ->
    [cylinder] Éprouvette graduée avec { $reagent }
   *[syringe] Seringue avec { $reagent }
  }
page-practise-lowest-point = Lis le point le plus bas de la surface courbe.
page-practise-hold = { $which ->
    [draw] Remplir (tenir)
    [cylinder] Verser (tenir)
   *[syringe] Verser (tenir)
  }
page-practise-stir = { $which ->
    [stirring] On remue …
   *[still] Remuer
  }
page-practise-lid = { $which ->
    [on] Couver­cle mis
   *[off] Couver­cle ôté
  }
page-practise-probe = Sonde
page-practise-places = { $which ->
    [alkali] dans la base
    [cup] au gobelet
   *[out] rincée
  }
page-practise-fill = { $which ->
    [sure] Vraiment ? Encore
    [again] Acide neuf
   *[empty] Verser l’acide
  }
page-practise-technique = Ta façon de travailler
page-practise-after-results = Tu verras si tu as bien travaillé en même temps que tes résultats.
page-practise-no-slips = Aucune erreur en { $count } portions : chacune a été bien mesurée, versée, remuée et lue.
page-practise-of-portion = Essai { $repeat }, portion { $portion } :
page-practise-of-start = Essai { $repeat }, départ :
page-practise-cost = Cela a coûté { $cost } °C.
page-practise-record = { $which ->
    [right] Ton enregistrement est juste.
   *[wrong] Ton enregistrement a encore le volume prévu.
  }
page-practise-again = S’entraîner encore
page-practise-offer = S’entraîner sans matériel
page-practise-offer-more = Utilise un gobelet virtuel sur cet appareil, autant que tu veux. Cela ne compte pas.
page-practise-begin = S’entraîner

# Rapports de mélange à volume total constant.
practical-ratios = Rapports de mélange : { $acid } avec { $alkali }
amount-mixtures = { $from_cm3 } à { $to_cm3 } cm³, en tout { $total_cm3 } cm³
problem-mixtures-total = le dernier mélange aurait { $alkali_cm3 } cm³ de base, mais chacun fait { $total_cm3 } cm³ en tout ; prends moins de mélanges ou des pas plus petits
problem-mixtures-side = chacune des deux droites a besoin de { $least } mélanges, et à ces concentrations elles se coupent à { $crossing_cm3 } cm³ de base ; choisis d’autres volumes ou concentrations
quantity-ratio = moles de base par mole d’acide
sheet-mixtures = mélanges
sheet-total-volume = volume total de chacun
sheet-least-alkali = le moins de base
sheet-most-alkali = le plus de base
sheet-alkali-volume = base / cm³
sheet-acid-volume = acide / cm³
sheet-alkali-fraction = part de la base dans le volume
sheet-start-of-both = début des deux / °C
sheet-highest = température maximale / °C
sheet-rise = élévation de température / °C
sheet-mixed-times = nombre de fois
step-acid-at-crossing = volume d’acide à l’intersection
formula-acid-at-crossing = V(acide) = V(total) - V(base)
step-ratio = moles de { $alkali } pour une mole de { $acid }
formula-ratio = n(base) ÷ n(acide)
step-rise-at-crossing = élévation de température à l’intersection des droites
formula-rise-at-crossing = ΔT à l’intersection
step-heat-of-mixture = chaleur libérée dans ce mélange
ratios-off = Les droites donnent { $ratio } moles de base par mole d’acide ; l’équation dit { $expected }. Vérifie les volumes et les concentrations.
predict-no-heat = la chaleur de cette réaction n’est pas connue
predict-cylinders = Les volumes se mesurent à l’éprouvette : u { $u_cm3 } cm³ chacun.
predict-ratios = { $count } mélanges de { $total_cm3 } cm³ : { $acid } { $acid_mol_dm3 } mol/dm³ avec { $from_cm3 } à { $to_cm3 } cm³ de { $alkali } { $alkali_mol_dm3 } mol/dm³
predict-ratio = Les droites se coupent à { $end_point_cm3 } cm³ de base : { $ratio } mol de base pour 1 mol d’acide.
predict-head-alkali = base/cm³
predict-head-share = part
predict-head-rise = hausse/°C
predict-head-ratio = Rapport, en tout
predict-bias-ratio = écart
page-ratios-practical = { $acid } et { $alkali } dans { $count } rapports, { $total } cm³ chacun
page-ratios-of = mélange { $mixture } sur { $planned }
page-ratios-planned =
    Prévu : { $mixtures } mélanges, chacun { $repeats ->
        [one] une fois
       *[other] { $repeats } fois
    }.
page-ratios-questions =
    { $which ->
        [0] Pourquoi la température monte-t-elle d’abord en proportion de la base ? Lequel des deux réactifs est épuisé de ce côté, et lequel de l’autre ?
        [1] Ton thermomètre indique les températures par pas. Que vaut un pas par rapport à la plus grande élévation ?
        [2] Pourquoi chaque mélange a-t-il le même volume total ? À quoi ressemblerait le graphique si seule la base changeait ?
        [3] Quel point est le plus loin de sa droite ? Qu’est-ce qui a pu être différent dans ce gobelet ?
       *[4] L’écart entre ton rapport et celui de l’équation est-il plus grand que le ± ? Si oui : qu’est-ce qui n’est pas compris dans le ± ?
    }
page-ratios-answer-own = Tes droites se coupent à { $volume } cm³ de base : { $ratio } mol de base pour 1 mol d’acide.
page-ratios-answer-best = Le meilleur rapport calculé est { $ratio } <uncertainty>±</uncertainty> { $u } mol de base pour 1 mol d’acide.
page-ratios-answer-equation = L’équation dit { $ratio }.
page-ratios-chart = Élévation de température selon la base du mélange
page-ratios-across = base dans le mélange / cm³
page-ratios-up = élévation de température / °C
page-ratios-point = un mélange
page-ratios-table = Mélanges
page-ratios-rise = plus grande élévation
page-ratios-columns =
    { $which ->
        [alkali] base / cm³
        [acid] acide / cm³
        [share] part de la base
        [start] acide au début / °C
        [highest] maximum / °C
       *[rise] élévation / °C
    }
page-ratios-ratio = { $ratio } : 1 (base : acide)
page-ratios-interval = 95 % : { $low } à { $high }
page-ratios-plus-minus = <uncertainty>incertitude-type</uncertainty> { $u }
page-ratios-crossing = base à l’intersection des droites
page-ratios-worth-lines = Les droites prolongées valent mieux ici. Avec beaucoup de base et peu d’acide, le <heat-balance>bilan thermique</heat-balance> trouve des élévations un peu trop grandes.
page-ratios-by-lines = Élévations par droites prolongées
page-ratios-by-heat = Élévations par <heat-balance>bilan thermique</heat-balance>
page-ratios-scatter-only = Le ± ne tient compte que de la dispersion des points ; des concentrations fausses n’y sont pas.
page-ratios-record = { $ratio } ± { $u } : 1 (base : acide)
page-ratios-mixtures = Mélanges
page-ratios-total = Volume total de chacun / cm³
page-ratios-first = Base dans le premier mélange / cm³
page-ratios-step = Base en plus dans chaque suivant / cm³
page-ratios-count = Nombre de mélanges
page-ratios-expected = Rapport selon l’équation
page-ratios-crosses-at = les droites se coupent à { $volume } cm³ de base
page-ratios-methods = Avec quelle précision le rapport sera connu (± une incertitude-type)
