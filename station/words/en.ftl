# What the station says, in English. Project Fluent; station/words/__init__.py says what values are.

language-name = English
language-decimal = .
# Whose order and names of months dates have, as a BCP 47 tag.
language-dates = en-GB
two-sentences = { $first } { $second }
list-comma = { $first }, { $second }
list-semicolon = { $first }; { $second }
list-and = { $first } and { $second }
list-or = { $first } or { $second }

## chemistry

problem-air-pressure = the air pressure must be between { $least_hpa } and { $most_hpa } hPa, not { $pressure_hpa } hPa: that of the place itself, not reduced to sea level
problem-altitude = the altitude must be between { $least_m } and { $most_m } m, not { $altitude_m } m
glassware-measuring-cylinder = measuring cylinder
glassware-graduated-pipette = graduated pipette
glassware-syringe = syringe
glassware-burette = burette
glassware-balance = balance
problem-concentration-not-above-0 = a concentration must be above 0, not { $mol_dm3 } mol/dm³
signal-danger = Danger
signal-warning = Warning
hazard-h272 = May intensify fire; oxidiser
hazard-h290 = May be corrosive to metals
hazard-h226 = Flammable liquid and vapour
hazard-h302 = Harmful if swallowed
hazard-h312 = Harmful in contact with skin
hazard-h314 = Causes severe skin burns and eye damage
hazard-h315 = Causes skin irritation
hazard-h318 = Causes serious eye damage
hazard-h319 = Causes serious eye irritation
hazard-h331 = Toxic if inhaled
hazard-h332 = Harmful if inhaled
hazard-h335 = May cause respiratory irritation
hazard-euh071 = Corrosive to the respiratory tract
hazard-h400 = Very toxic to aquatic life
hazard-h410 = Very toxic to aquatic life with long lasting effects
hazard-h411 = Toxic to aquatic life with long lasting effects
hazard-h412 = Harmful to aquatic life with long lasting effects
source-clp = Regulation (EC) No 1272/2008 (CLP)
source-suppliers-limits = classification by suppliers, limits of CLP, Annex I
source-suppliers = classification by suppliers
source-annex-vi = { $regulation }, Annex VI, { $index }
source-and-suppliers = { $source }, and suppliers
source-and-annex-i = { $source }, and Annex I
step-water-per-cm3 = amount of water formed by 1 cm³ of { $alkali }
of-water-formed = water formed
step-water-formed = amount of water formed
step-amount = amount of { $reagent }
step-water-formed-neither-left = amount of water formed; neither is left over
step-water-formed-runs-out = amount of water formed; { $reagent } runs out first
formula-water-smaller = n(H₂O) = the smaller of what acid and alkali can form
formula-water-smaller-figures = n(H₂O) = the smaller of { $acid_mol } mol and { $alkali_mol } mol
step-amount-of-acid = amount of { $acid }: { $acid_mol } mol for { $alkali_mol } mol of alkali
formula-acid-from-alkali = n(acid) = n(alkali) × { $hydroxides }/{ $protons }
formula-acid-from-alkali-figures = n(acid) = { $alkali_mol } mol × { $hydroxides }/{ $protons }
step-concentration = concentration of { $acid }
step-heat-liquid = heat taken up by the liquid
step-heat-liquid-cup-probe = heat taken up by the liquid, cup and probe
problem-amount-not-above-0 = the amount of { $of } must be above 0 mol
step-enthalpy = enthalpy change per mole of { $of }
problem-not-above-0 = { $figure } must be above 0, not { $value }
figure-alkali-concentration = the alkali's concentration
figure-acid-concentration = the acid's concentration
figure-acid-volume = the acid's volume
figure-alkali-volume = the volume of alkali
figure-volume-of-acid = the volume of acid
figure-solid-mass = the mass of the solid
figure-liquid-mass = the mass of liquid
figure-heat-capacity-specific = the specific heat capacity
figure-temperature-change = the temperature change
figure-cup-heat-capacity = the cup's heat capacity
figure-heat = the heat
figure-amount = the amount
figure-heat-per-cm3 = the heat per cm³
refusal-pair-swapped = the two are swapped: { $acid } is the acid, { $alkali } the alkali
refusal-not-an-acid = { $reagent } is not an acid but { $kind }
refusal-not-an-alkali = { $reagent } is not an alkali but { $kind }
refusal-pair-gas = { $alkali } gives off carbon dioxide, which carries heat and water vapour away, so the heat per mole is not one known value
refusal-pair-solid = { $acid } with { $alkali } leaves a solid, whose heat of formation is not modelled
refusal-pair-protons = { $acid } gives up its { $protons ->
        [2] two
       *[3] three
    } protons in { $protons ->
        [2] two
       *[3] three
    } steps; each step has its own heat, so the rising part is not one straight line
warning-pair-hardly-dissolves = So little { $alkali } dissolves that the temperature will hardly change.
warning-pair-weak-both = Weak acid with weak alkali: the reaction is not quite complete, which rounds the top of the graph.
kind-strong-acid = a strong acid
kind-weak-acid = a weak acid
kind-hydroxide = a hydroxide
kind-weak-alkali = a weak alkali
kind-carbonate = a carbonate
kind-hydrogencarbonate = a hydrogencarbonate
kind-salt = a salt
kind-non-electrolyte = a non-electrolyte
stock-hydrochloric-acid = 36 % by mass, 1.18 g/cm³
stock-nitric-acid = 70 % by mass, 1.42 g/cm³
stock-sulfuric-acid = 98 % by mass, 1.84 g/cm³
stock-ethanoic-acid = glacial, 99.5 %, 1.05 g/cm³
stock-phosphoric-acid = 85 %, 1.70 g/cm³; from memory
stock-ammonia = 25 %, 0.91 g/cm³; from memory
stock-potassium-hydroxide = pellets, 85 % by mass; from memory
stock-solid = solid
problem-volume-concentration = volume and concentration must be above 0
problem-hardly-dissolves = { $reagent } hardly dissolves: no solution of { $mol_dm3 } mol/dm³
problem-stock-too-weak = a stock of { $stock_mol_dm3 } mol/dm³ is weaker than the { $mol_dm3 } mol/dm³ wanted
prepare-add-solid-slowly = Add { $mass_g } g of { $reagent } slowly, a little at a time, stirring: it heats. Never water onto it.
prepare-add-solid = Add { $mass_g } g of { $reagent } and stir until it has dissolved.
prepare-room-temperature-make-up = Let it come to room temperature, then make up to { $volume_cm3 } cm³ with distilled water and mix well.
prepare-cool-make-up = Let it cool to room temperature, then make up to { $volume_cm3 } cm³ with distilled water and mix well.
prepare-water = Put about { $volume_cm3 } cm³ of cold distilled water into a large beaker.
prepare-label = Close and label the bottle at once.
prepare-water-fume-cupboard = In a fume cupboard: put about { $volume_cm3 } cm³ of cold distilled water into a large beaker.
prepare-add-stock = Add { $volume_cm3 } cm³ of { $reagent } ({ $mol_dm3 } mol/dm³) slowly, stirring: stock to water.
prepare-add-strong-acid = Add { $volume_cm3 } cm³ of { $reagent } ({ $mol_dm3 } mol/dm³) slowly, stirring: acid to water, never water to acid.
prepare-mind-heat = Mind: it heats.
problem-unknown-reagent = unknown reagent { $typed }. Known: { $known }; of some the hydrates too
problem-unknown-reagent-hint = unknown reagent { $typed }. Did you mean { $hint }? Known: { $known }; of some the hydrates too
refusal-no-solid = Schools have { $reagent } as a liquid, not as a solid to be weighed: add a solution of it.
warning-anhydrous = Here { $reagent } means the solid without water in its crystals, { $formula }. If the bottle says otherwise, choose { $others }: mass per mole and heat are different.
refusal-no-such-solution-at = There is no solution of { $reagent } with { $mol_dm3 } mol/dm³ at { $temperature_c } °C: at most about { $most_mol_dm3 } mol/dm³ dissolves.
refusal-too-strong = This practical is not for { $reagent } of { $mol_dm3 } mol/dm³: it burns, and it heats violently. Choose { $limit_mol_dm3 } mol/dm³ or less.
refusal-gas-ammonia = Ammonia, harmful to breathe, leaves a mixture of { $first } and { $second }. This practical is not made for a gas: choose other reagents.
refusal-gas-carbon-dioxide = Carbon dioxide leaves a mixture of { $first } and { $second }: the cup can foam over, and must not be closed. This practical is not made for a gas: choose other reagents.
warning-heat-unknown = How much heat { $first } and { $second } give out or take in together, and whether a solid comes out, is not known here: qualified staff must try it out first, with small amounts.
refusal-no-such-solution = There is no such solution in water: check volumes, masses and concentrations.
advice-take-less = Take less of it, weaker solutions or more water.
refusal-would-boil = The mixture would boil and spit.
refusal-too-hot = The mixture would reach about { $temperature_c } °C: above { $limit_c } °C it scalds.
warning-hot = The mixture can reach about { $temperature_c } °C: above { $limit_c } °C it hurts on the skin. Do not hold the cup in the hand, and leave it in its beaker until it has cooled.
refusal-too-cold = The mixture would be at about { $temperature_c } °C: below { $limit_c } °C it can freeze, and the cold harms the skin. Begin warmer, or take less of what cools it.
warning-cold = The mixture can be as cold as about { $temperature_c } °C: near freezing the readings are unsure. Begin warmer, or take less of what cools it.
amount-mass = { $mass_g } g of { $reagent }
refusal-insoluble = Not all of { $weighed } dissolves: at { $temperature_c } °C this water takes up at most about { $most_g } g. Weigh less, or take more water.
warning-dissolves-slowly = Nearly all that this water takes up at { $temperature_c } °C is { $weighed } (at most about { $most_g } g): it dissolves slowly, and some may stay. Weigh less.
refusal-violent = Added at once, { $weighed } heats too violently: the cup warms by about { $rise_c } °C within seconds, and can spit. Weigh less, or take more water.
warning-heats = The cup warms by about { $rise_c } °C as it takes up { $weighed }. Tip the solid into the water while stirring, never water onto the solid.
warning-drops-burn = Drops of it burn skin and eyes.
reagent-hydrochloric-acid = hydrochloric acid
reagent-nitric-acid = nitric acid
reagent-sulfuric-acid = sulfuric acid
reagent-ethanoic-acid = ethanoic acid
reagent-citric-acid = citric acid
reagent-citric-acid-monohydrate = citric acid monohydrate
reagent-ethanedioic-acid = ethanedioic acid
reagent-ethanedioic-acid-dihydrate = ethanedioic acid dihydrate
reagent-tartaric-acid = tartaric acid
reagent-phosphoric-acid = phosphoric acid
reagent-sodium-hydroxide = sodium hydroxide
reagent-potassium-hydroxide = potassium hydroxide
reagent-lithium-hydroxide = lithium hydroxide
reagent-lithium-hydroxide-monohydrate = lithium hydroxide monohydrate
reagent-ammonia = ammonia
reagent-calcium-hydroxide = calcium hydroxide
reagent-barium-hydroxide = barium hydroxide
reagent-barium-hydroxide-octahydrate = barium hydroxide octahydrate
reagent-sodium-carbonate = sodium carbonate
reagent-sodium-carbonate-decahydrate = sodium carbonate decahydrate
reagent-potassium-carbonate = potassium carbonate
reagent-calcium-carbonate = calcium carbonate
reagent-sodium-hydrogencarbonate = sodium hydrogencarbonate
reagent-potassium-hydrogencarbonate = potassium hydrogencarbonate
reagent-ammonium-nitrate = ammonium nitrate
reagent-ammonium-chloride = ammonium chloride
reagent-potassium-nitrate = potassium nitrate
reagent-potassium-chloride = potassium chloride
reagent-sodium-nitrate = sodium nitrate
reagent-sodium-chloride = sodium chloride
reagent-sodium-ethanoate = sodium ethanoate
reagent-sodium-ethanoate-trihydrate = sodium ethanoate trihydrate
reagent-lithium-chloride = lithium chloride
reagent-ammonium-sulfate = ammonium sulfate
reagent-calcium-chloride = calcium chloride
reagent-calcium-chloride-dihydrate = calcium chloride dihydrate
reagent-calcium-chloride-hexahydrate = calcium chloride hexahydrate
reagent-magnesium-sulfate = magnesium sulfate
reagent-magnesium-sulfate-heptahydrate = magnesium sulfate heptahydrate
reagent-copper-ii-sulfate = copper(II) sulfate
reagent-copper-ii-sulfate-pentahydrate = copper(II) sulfate pentahydrate
reagent-urea = urea
reagent-water = water
solid-sodium-hydroxide = sodium hydroxide
solid-potassium-hydroxide = potassium hydroxide
problem-no-solution-of = there is no such solution in water: { $solutes_text }
problem-water-range = water is described from 0 to 100 °C here, not at { $temperature_c } °C
problem-unknown-glassware = unknown glassware { $typed }; known: { $known }

## practical

accepted-neutralisation = { $strength }: { $here_kj_mol } kJ/mol at { $temperature_c } °C and these concentrations, { $dilute_kj_mol } kJ/mol at 25 °C in very dilute solution.
accepted-solution = { $reagent } in much water at 25 °C: { $enthalpy_kj_mol } kJ/mol.
accepted-in-this-water = In as much water as here about { $enthalpy_kj_mol } kJ/mol.
strength-pair = { $acid ->
        [strong] Strong
       *[weak] Weak
    } acid with { $alkali ->
        [strong] strong
       *[weak] weak
    } alkali
accepted-school-one = School books give { $enthalpy_kj_mol } kJ/mol.
accepted-school-range = School books give { $from_kj_mol } to { $to_kj_mol } kJ/mol.
problem-plain-text = must be plain text without control characters
problem-division = must be 1, 0.5, 0.2 or 0.1
refusal-write-plain-text = Write plain text, on one line: a name or label up to 24 characters, anything else up to 200.
refusal-type-volume = Type the volume as a number from 0.01 to 1000 cm³, like 4.5.
refusal-type-temperature = Type the temperature as a number from -5 to 60 °C, like 21.5.
refusal-choose-divisions = Choose a thermometer with divisions of 1, 0.5, 0.2 or 0.1 °C.
refusal-type-own-volume = Type your volume as a number from 0 to 1000 cm³, like 23.5.
refusal-type-own-change = Type your change of temperature as a number from -65 to 65 °C, like +6.2 or -3.5.
refusal-type-mass = Type the mass as a number up to 1000 g, like 95.2.
refusal-type-plus-minus = Type the ± as a number above 0, up to 10.
refusal-type-air-pressure = Type the air pressure in hPa, like 1013.
refusal-type-altitude = Type the altitude as a number from -430 to 5000 m.
refusal-type-check-temperature = Type the temperature as a number from -5 to 110 °C, like 21.5.
refusal-cup-label = Write the cup's label in plain text, up to 40 characters.
refusal-say-which-check = Say in check which check is meant.
refusal-repeat-under-way = A repeat is under way on this bench: finish it first.
refusal-probe-takes-temperature = The probe is taking a temperature: wait for it, or begin the practical.
refusal-check-under-way = A check is under way already: save or discard it first.
refusal-no-probe-to-check = This bench has no probe to check.
refusal-type-pressure-or-altitude = Type the air pressure, or else the altitude of this place.
refusal-cannot-be = This cannot be: { $reason }.
refusal-step-not-now = That step does not come now.
refusal-type-reference = Type what the reference thermometer says.
refusal-probe-not-at-rest = The probe is not at rest yet: stir, wait, and read both again.
refusal-type-both-masses = Type both masses: of the warm water, and of the water that was added.
refusal-compare-between = Compare between { $least_c } and { $most_c } °C: make the water warmer or cooler, read both again.
refusal-check-found-nothing = The check has found nothing yet: go on, or discard it.
refusal-cup-needs-label = Give the cup a label, so that you know it again.
refusal-no-such-check = There is no such check, or it was withdrawn already.
refusal-no-check-under-way = No check is under way.
csv-cell = line { $line }, column { $column }: { $what }
csv-empty = is empty: type what belongs there, or delete the row
csv-not-a-number = not a number: { $typed }
csv-not-a-number-dot = not a number: { $typed } (a dot, not a comma)
csv-not-between = { $typed } is not between { $least } and { $most }
csv-file-empty = the file is empty; it needs the header { $header_text }
csv-not-csv = not a CSV file: { $reason }
csv-twice-in-header = stands twice in the header
csv-missing = missing; the header is { $header_text }
csv-not-whole = not a whole number: { $typed }
csv-no-rows = no rows below the header; is it the right file?
csv-bad-row = not a CSV row: { $reason }
csv-too-many-rows = more than { $most } rows; is it one practical?
csv-cells-under-header = { $cells } cells under a header of { $header }
note-record-repaired = The record was damaged and repaired at a start: compare the table with what you did.
refusal-write-note = Write the note in text.
refusal-notes-enough = There are { $count } notes already.
refusal-no-such-note = There is no such note, or it was withdrawn already.
refusal-finish-first = First finish the practical, then read your own lines.
refusal-nothing-to-read = There is nothing to read yet: first end a repeat that has readings.
refusal-own-reading-stands = Your own reading stands: the results have been shown.
refusal-say-why-not-read = Say why you could not read it.
refusal-not-turned-yet = The temperature has not turned yet. Do one more repeat, or say why you could not read it.
refusal-finish-repeat = Finish the repeat under way first.
refusal-adopt-portions-only = Only the readings of a practical with portions can be taken over.
refusal-adopt-label = Say whose readings they are, in label: for example the other bench's name.
refusal-adopt-choose-file = Choose the other bench's readings file.
refusal-adopt-unusable = These readings cannot be used: { $reason }.
refusal-adopt-too-many = These are { $count } readings; { $most } at most can be taken over. Leave repeats out of the file.
refusal-nothing-adopted = No other group's readings are in use.
safety-school-first = Your school's risk assessment and your teacher come first.
safety-eye-protection = Wear splash-proof eye protection.
safety-small-volumes = Use small volumes: no more than the plan says.
safety-wipe-spills = Wipe up spills at once.
safety-rinse-skin = Rinse splashes off your skin with plenty of water.
safety-splash-in-eye = Splash in the eye: rinse with water at once and call your teacher.
safety-no-mouth-pipetting = Never pipette by mouth.
safety-cup-in-beaker = Stand the cup in a beaker so that it cannot tip over.
clear-pour-away = Pour the mixture away as your school's rules say.
clear-collect = Keep the mixture out of the sink: collect it where your teacher says.
safety-water = Water is not hazardous.
amount-portions = { $count } portions of { $volume_cm3 } cm³
amount-mass-only = { $mass_g } g
amount-volume-only = { $volume_cm3 } cm³
basis-not-classified = Not classified as hazardous ({ $source }).
basis-pure = As the pure substance ({ $source }).
basis-yours-to-find = You will find this out: the station assumes { $mol_dm3 } mol/dm³, the most this plan can measure.
basis-solution-not-classified = Not classified as hazardous at this concentration, { $percent } % by mass ({ $source }).
basis-percent = { $percent } % by mass ({ $source }).
basis-solution = At this concentration, { $percent } % by mass ({ $source }).
caution-keep-off = Keep { $reagent } off skin and eyes: it can do lasting harm. Ask about gloves.
caution-do-not-breathe = Do not breathe in vapour or dust: keep bottles closed and the room aired.
caution-no-lid = No lid: a gas forms. Add slowly, and keep the room aired.
caution-spatula = Take { $reagent } with a spatula, never with your fingers.
caution-flames = Keep { $reagent } away from flames and from anything that burns.
caution-hot-cup = The cup can get hot: add the solid to the water, never water to the solid.
clear-probe = Take the probe out and rinse it with water.
clear-rinse = Rinse the cup and the glassware with water.
clear-wipe = Wipe the bench with a damp cloth.
clear-hands = Wash your hands.
heat-no-start-reading = The reading before the first portion (0 cm³) is missing.
heat-cannot-be-used = The heat balance cannot be used: { $reason }.
heat-no-trace = There is no trace: these are readings only.
judged-minutes = You took { $own_min } min, with the station's moments it would be about { $station_min } min.
judged-early-none = No reading came before the station's moment.
judged-early = { $count ->
        [one] One reading came before the station's moment.
       *[other] { $count } readings came before the station's moment.
    }
judged-none-off = None of them is off by more than one step of the probe, 0.06 °C.
judged-at-portion = repeat { $repeat }, portion { $portion }
judged-at-start = repeat { $repeat }, the start
judged-too-low = The largest error is { $error_c } °C, too low: { $where }.
judged-too-high = The largest error is { $error_c } °C, too high: { $where }.
judged-unread = { $count ->
        [one] One portion has no reading.
       *[other] { $count } portions have no reading.
    }
judged-hardly-waited = You hardly waited longer than the station would have.
judged-waited-at-start = Before the first portion you waited { $seconds } s longer than needed. That cost only time.
judged-waited = You waited { $seconds } s longer than the station would have.
judged-moved = That moved a reading by up to { $moved_c } °C.
judged-no-lines = Your readings make no two lines that cross.
judged-lines-own = Straight lines: { $own_cm3 } cm³ with your readings; the station's moments are too few to tell.
judged-best = The heat balance of the whole trace gives { $best_cm3 } cm³, the best value here. Your lines are { $own_off_cm3 } cm³ off it, the station's { $station_off_cm3 } cm³.
judged-best-own = The heat balance of the whole trace gives { $best_cm3 } cm³, the best value here. Your lines are { $own_off_cm3 } cm³ off it.
judged-lines = Straight lines: { $own_cm3 } cm³ with your readings, { $station_cm3 } cm³ with the station's.
once-cannot-be-mixed = These quantities cannot be mixed: { $reason }.
once-no-repeat = no repeat gave a result
once-no-enthalpy = No enthalpy per mole: { $reason }.
of-reaction = reaction
once-counted-as-water = The { $reagent } in the cup is counted as water.
of-dissolved = { $reagent } dissolved
once-not-recorded = Mixing has not been recorded yet.
problem-acid-one-concentration = [acid] give concentration_mol_dm3 (known to the class) or prepared_mol_dm3, not both
practical-pair = { $first } with { $second }
amount-volume = { $volume_cm3 } cm³ of { $reagent }
problem-not-toml = { $where_text }: not valid TOML: { $reason }
hazard-near-a-limit = It is within 5 % of a limit of the regulation: the stricter class is shown.
problem-zero-or-more = must be 0 or at least 0.001
problem-liquid-water = [liquid] water has no concentration_mol_dm3
problem-liquid-needs = [liquid] { $reagent } needs a concentration_mol_dm3
problem-addition-one = [addition] give mass_g (a solid) or volume_cm3 with concentration_mol_dm3 (a solution)
problem-addition-concentration = [addition] a solution needs volume_cm3 and concentration_mol_dm3, a solid neither
field-above = Must be above { $limit }.
field-at-least = Must be at least { $limit }.
field-below = Must be below { $limit }.
field-at-most = Must be at most { $limit }.
field-letters = At most { $limit } letters.
field-number = Must be a number.
field-whole-number = Must be a whole number.
field-table = Must be a table of keys.
field-text = Must be a text.
field-unknown = This key is not known here.
field-missing = Missing.
field-one-of = Must be { $choices_text }.
more-problems = { $first } (and { $count } more)
plausible-check-plan = Check the plan: { $reason }.
plausible-start-far = The start reads { $start_c } °C but the { $place ->
        [room] room
       *[alkali] alkali
    } { $other_c } °C: was the probe in the cup, and is it the right one?
plausible-too-much = After { $volume_cm3 } cm³ the change is { $change_c } °C, but these reagents can give { $most_c } °C at most: check concentrations, bottles and the probe.
plausible-exchanged = The concentrations say { $expected_cm3 } cm³, the end-point is { $end_point_cm3 } cm³: were acid and alkali exchanged?
plausible-end-point = The concentrations say { $expected_cm3 } cm³, the end-point is { $end_point_cm3 } cm³: were the bottles, the plan and the volumes right?
plausible-enthalpy = The enthalpy is { $enthalpy_kj_mol } kJ/mol where { $expected_kj_mol } kJ/mol is expected: check the concentration of the alkali, the volumes and the lid.
basis-middle = middle of the range this plan can resolve
basis-known = known to the class
basis-prepared = prepared by staff
predict-change-pair = { $reason }; change [acid] or [alkali]
predict-count-too-small = [portions] count = { $count } leaves no end-point with { $readings } readings on each side: plan at least { $least } portions
predict-as-planned = as planned
heat-needs-portions = The heat balance needs at least { $least } portions.
predict-not-passed = The end-point is not surely passed: plan more portions.
predict-first-portion = The end-point lies within the first portion: plan smaller portions.
predict-no-curve = No curve can be predicted: { $reason }.
predict-usual-cup = The cup loses heat as a lidded foam cup usually does; other cups differ.
predict-exact = Concentrations are exact; ± is one standard uncertainty of one repeat.
predict-usual-cup-spread = The cup loses heat as a lidded foam cup usually does; other cups differ, and ± includes the usual spread.
predict-warm-as-room = Alkali and acid are about as warm as the room unless the plan says otherwise; the alkali's temperature is measured before.
predict-minutes = A dip into the alkali takes { $dip_min } min and a steady start { $start_min } min. A portion takes { $pour_s } s to pour and { $graph_s } s to settle (quick pace: { $quick_s } s). Rinsing and refilling takes { $rinse_min } min. Add the time for setting up and clearing away.
predict-warm-as-cup = What is added is as warm as the cup unless the plan says otherwise.
predict-minutes-once = A steady start takes { $start_min } min, rinsing and refilling { $rinse_min } min; setting up and clearing away come on top.
problem-once-no-solution = there is no such solution in water: check volumes, mass and concentrations of [liquid] and [addition]
predict-heat-unknown = The heat of { $added } in { $liquid } is not known here, so no change can be told.
predict-no-change = No change can be told: { $reason }.
warning-small-change = The temperature changes by only { $change_c } °C: expect a wide ±. Do not make the solutions stronger for it; read with the probe, use better glassware and more repeats.
warning-too-long = About { $minutes } minutes at the bench: with { $aside_min } minutes to set up and clear away that is more than a lesson of { $lesson_min }. Plan fewer repeats or portions, or the quick pace.
warning-not-passed = The end-point ({ $end_point_cm3 } cm³) is not passed by { $count } portions ({ $total_cm3 } cm³): plan more portions.
warning-few-after = { $count ->
        [one] Only { $count } reading lies after the end-point, three are needed: plan more portions.
       *[other] Only { $count } readings lie after the end-point, three are needed: plan more portions.
    }
warning-few-before = { $count ->
        [one] Only { $count } reading lies before the end-point, three are needed: plan smaller portions.
       *[other] Only { $count } readings lie before the end-point, three are needed: plan smaller portions.
    }
warning-heat-balance-refuses = The heat balance will refuse: { $reason }.
warning-rough-curve = The curve takes one mean heat up to the last proton: a rough guide only.
warning-lines-refuse = Straight lines will refuse about { $share } in 100 repeats with these portions.
stock-own-bottle = the school's own bottle
prepare-usual-practice = Usual practice only: your employer's risk assessment, local rules and qualified staff come first. A label on a bottle counts more than a table.
problem-benches = benches must be from 1 to 100, not { $count }
prepare-not-down-the-sink = Never put solids or concentrated solutions down the sink.
lesson-explain = Explain, hand out, put on eye protection
lesson-clear-up = Clear up, wash hands
lesson-talk = Own lines, results, talk
lesson-repeats = { $count ->
        [one] 1 repeat at the bench
       *[other] { $count } repeats at the bench
    }
item-cup = insulated cup with a lid, in a beaker that keeps it upright
item-stirrer = stirrer
item-bottle = bottle or beaker for each solution, labelled
item-waste-beaker = waste beaker
item-wash-bottle = wash bottle, paper towels
item-eye-protection = eye protection, splash-proof (for a pair; teacher and technician too)
item-pipette-for = pipette or measuring cylinder for { $volume_cm3 } cm³
item-syringe-for = syringe or measuring cylinder for { $volume_cm3 } cm³ portions
item-glassware-for = { $glassware } for { $volume_cm3 } cm³ portions
item-cylinder-for = measuring cylinder for { $volume_cm3 } cm³
item-balance = balance that reads to 0.01 g (several benches can share one)
item-weighing-boat = weighing boat with { $mass_g } g
spill-solid = Spilled solid: brush it up dry, then wipe with a damp cloth.
spill-small = Small spills: wipe up at once with plenty of water, eye protection on.
spill-acid = Larger spills of acid: sodium hydrogencarbonate or carbonate until it stops fizzing, then wipe it up.
spill-alkali = Larger spills of alkali: dilute with water, citric acid solution, then mop up.
safety-splash-in-eye-long = Splash in the eye: rinse with gently running water for 20 minutes; call for medical help.
label-not-classified = Not classified as hazardous at this concentration; the usual cautions hold.
label-of-stock = The stock
label-of-bottle = The bottle's label
label-of-store = The label of the store bottle
label-staff-only = Store bottle, for staff only
label-to-find = concentration to be found
label-made-on = Made on: ________ by: ________
label-hazards = { $signal }: { $statements }.
label-hazards-no-signal = { $statements }.
label-statement = { $hazard } ({ $code })
sheet-weighed = { $count } times { $each_g } g; have { $total_g } g ready.
sheet-lay-out = Lay out
sheet-items = { $count } × { $item }
sheet-mind = Mind
sheet-spills = Spills
sheet-disposal = Disposal
sheet-make-from-mass = { $reagent }, { $mol_dm3 } mol/dm³: make { $volume_cm3 } cm³ from { $mass_g } g ({ $stock })
sheet-make-from-volume = { $reagent }, { $mol_dm3 } mol/dm³: make { $volume_cm3 } cm³ from { $stock_cm3 } cm³ ({ $stock })
sheet-why-so-much = Poured in all: { $poured_cm3 } cm³. The rest: { $rinse_cm3 } cm³ a bench to rinse glassware and dip the probe, and { $percent } % for spills and repeats that go wrong.
sheet-gloves = Wear gloves against chemicals while you handle the stock, as well as eye protection.
sheet-vessel = { $count ->
    [one] All of it goes into one bottle or canister of { $dm3 } dm³: polyethylene for alkalis, glass or polyethylene for acids.
   *[other] All of it goes into { $count } bottles or canisters of { $dm3 } dm³: polyethylene for alkalis, glass or polyethylene for acids.
}
sheet-near-limit = Within 10 % of a limit: from about { $mol_dm3 } mol/dm³ on it is also { $statements }. Measure with care; a stronger solution needs the stricter label.
sheet-strength-as-made = Made up so, its concentration is known to about { $percent } % (± { $u_mol_dm3 } mol/dm³, one standard uncertainty): stocks are not pure and their labels say a range.
sheet-as-sure-as-bottle = Its concentration is known as well as that of your own bottle, and no better than 0.6 % from measuring cylinders.
standardise-head = To know it better: standardise the { $reagent }
standardise-weigh = Weigh about { $mass_g } g of dry potassium hydrogenphthalate to 0.01 g into a conical flask. Dissolve it in about 50 cm³ of distilled water.
standardise-burette = Add two drops of phenolphthalein. Add { $reagent } from a burette until the first pink that stays for half a minute.
standardise-pipette = Pipette 25.0 cm³ of { $reagent } into a conical flask, and add two drops of phenolphthalein.
standardise-alkali-burette = Add the { $alkali } that you have standardised from a burette until the first pink that stays for half a minute.
standardise-thrice = Do it three times. If the results differ by more than 1 %, do it again.
standardise-by-mass = Concentration in mol/dm³ = { $factor } × mass in g ÷ volume in cm³. Take the mean, and write it on the label and into the plan.
standardise-by-ratio = Work out the concentration of the { $reagent } from the volumes and the equation. Take the mean, and write it on the store label and into the plan.
standardise-known-to = So it is known to about { $percent } % (± { $u_mol_dm3 } mol/dm³, one standard uncertainty). That takes a balance to 0.01 g and class B glassware.
standardise-flames = Keep phenolphthalein away from flames: it is dissolved in ethanol.
sheet-class-to-find = The class is to find its concentration: do not write it on the students' bottles.
sheet-needed = { $volume_cm3 } cm³ are needed. The plan does not say its concentration.
sheet-can-resolve = This plan can resolve { $least_mol_dm3 } to { $most_mol_dm3 } mol/dm³.
sheet-label-holds = The label holds for { $mol_dm3 } mol/dm³ and less.
lesson-left = { $minutes ->
        [one] 1 minute is left.
       *[other] { $minutes } minutes are left.
    }
lesson-too-long = { $minutes } minutes too long. With { $repeats } of the repeats it may fit; else share them.
lesson-of = Lesson of { $minutes } minutes
check-ice = ice point
check-comparison = comparison with a thermometer
check-ice-and-boiling = ice and boiling point
day-not-known = a day that is not known
day-clock-not-set = { $day_date }, by a clock that was not set
probe-nothing-told = There is no record of a check of the probe: temperatures are used as measured.
probe-not-checked = The probe was not checked: its temperatures may be off by ± 0.5 °C (data sheet). Changes of temperature are not affected: both readings shift equally.
probe-corrected = Temperatures are corrected by { $added_c } °C (± { $u_c } °C): { $check } of { $day }.
probe-offset-cancels-slope = In a difference both readings shift equally; of the slope ± { $percent } % remains and counts in the enthalpy.
probe-offset-cancels = Changes of temperature are not affected: both readings shift equally; the slope was not checked.
probe-changed = The probe or its correction changed during repeat { $repeat }: check whether its temperatures belong together.
probe-differing = The repeats were not corrected alike: see what each says of its probe.
problem-unknown-key = { $key_name }: unknown key; remove it or check its spelling
problem-missing = { $key_name }: missing; add it
problem-got-hidden = { $key_name }: { $said } (got: not shown)
problem-got = { $key_name }: { $said } (got { $got_typed })
problem-of-table = [{ $table_name }] { $said }
input-table = a table
input-list = a list
input-greater-than = input should be greater than { $limit }
input-greater-than-equal = input should be greater than or equal to { $limit }
input-less-than = input should be less than { $limit }
input-less-than-equal = input should be less than or equal to { $limit }
input-finite-number = input should be a finite number
input-float-type = input should be a valid number
input-float-parsing = input should be a valid number, unable to parse string as a number
input-int-type = input should be a valid integer
input-int-parsing = input should be a valid integer, unable to parse string as an integer
input-int-from-float = input should be a valid integer, got a number with a fractional part
input-string-type = input should be a valid string
input-bool-type = input should be a valid boolean
input-bool-parsing = input should be a valid boolean, unable to interpret input
input-literal-error = input should be { $choices_text }
input-model-type = input should be a table of keys
input-list-type = input should be a valid list
input-string-too-short = { $count ->
        [one] string should have at least { $count } character
       *[other] string should have at least { $count } characters
    }
input-string-too-long = { $count ->
        [one] string should have at most { $count } character
       *[other] string should have at most { $count } characters
    }
input-string-pattern-mismatch = string should match pattern '{ $pattern_text }'
refusal-adopted = These are another group's readings. Go back to your own first.
refusal-probe-being-checked = Staff are checking the probe: ask them to save or discard the check.
state-not-begun = The practical has not begun.
state-alkali = The alkali's temperature is being taken; begin, or wait.
state-start = The start temperature is being taken.
state-portion = A portion is asked for.
state-settling = The temperature is settling.
state-repeat-ended = The repeat has ended: rinse, refill, then press.
state-paused = The practical is paused: resume first.
state-ended = The practical has ended.
prompt-eye-protection = Wear eye protection. Your teacher and your school's risk assessment come first.
prompt-you-decide = You decide; the station only records.
prompt-probe-checking = Staff are checking the probe. Please wait.
prompt-only-they = Only they can end the check.
prompt-dip-first = If you can, first hold the clean, dry probe in the { $reagent } to take its temperature.
prompt-begin = Put { $amount } in the cup. Probe in.
button-cup-filled = Cup filled, probe in
prompt-hold-probe = Hold the probe still in the { $reagent }.
prompt-takes-by-itself = The station takes its temperature by itself.
prompt-start-once = Wait. Stir gently. The temperature before mixing is recorded.
prompt-start = Wait. Stir gently. The start temperature is settling.
prompt-weigh-now = Meanwhile weigh out { $amount }.
prompt-measure-now = Meanwhile measure out { $amount }.
prompt-tip = Now tip in all { $amount }. Stir.
prompt-recorded-to-the-end = Recording goes on to the end of the time.
prompt-clock-read = Read the thermometer every { $every_s } s. Type each reading.
prompt-clock-stir = Stir gently. Read at eye level.
prompt-mix = Now add all { $amount }. Stir.
prompt-press-mixing = Press at the moment of mixing.
button-it-is-in = It is in
prompt-portion = Add portion { $portion }: { $amount }. Stir.
prompt-press-as-soon = Press as soon as it is in.
button-portion-is-in = Portion { $portion } is in
prompt-after = Keep stirring gently. The temperature after mixing is recorded.
prompt-settle = Wait. Keep stirring gently. The temperature is settling.
prompt-rinse = Rinse cup and probe. Refill: { $amount }.
prompt-set-up-alkali = Hold the clean, dry probe in the { $reagent }.
button-probe-in-alkali = Probe is in
prompt-set-up-alkali-typed = Measure the temperature of the { $reagent }. Type it.
button-alkali-left-out = Go on without it
prompt-set-up-probe = Rinse the { $tool } with water. Wipe it dry.
prompt-set-up-taken = Temperature taken: { $reagent }, { $temperature_c } °C.
prompt-set-up-clean = Drops left on it would get into the cup.
prompt-set-up-sketch = Draw how you think the temperature will go.
prompt-set-up-sketch-where = Draw it on this page before the first portion. It is not judged.
button-sketch-left-out = Go on without a sketch
button-probe-rinsed = Rinsed and wiped
prompt-set-up-fill = Fill the cup: { $amount }. { $tool ->
        [probe] Probe
       *[thermometer] Thermometer
    } in, lid on.
prompt-set-up-same-bottle = Fill it fresh, from the same bottle.
button-set-up-filled = { $tool ->
        [probe] Probe
       *[thermometer] Thermometer
    } in, lid on
prompt-set-up-empty = Empty the cup as your school's rules say.
prompt-set-up-ask = Ask your teacher if you are not sure where.
button-cup-emptied = The cup is empty
prompt-set-up-wash = Rinse and dry the cup and the { $tool }.
prompt-set-up-dry = Water left in the cup would dilute the next filling.
button-cup-rinsed = Rinsed and dry
prompt-lid-and-stir = Then put the lid on and stir gently.
prompt-keep-lid = Keep the lid on.
prompt-wipe = Wipe the probe. Refill from the same bottle.
button-rinsed = Rinsed and refilled
prompt-paused-by = Paused by your { $role ->
        [teacher] teacher
       *[technician] technician
    }. Please wait.
prompt-still-recorded = The temperature is still recorded.
prompt-paused = Paused. Press to go on.
button-go-on = Go on
prompt-finished = Finished. Rinse cup and probe, clear up, wash your hands.
prompt-finished-before-turn = Finished before the turning point: no <end-point>end-point</end-point> to read yet.
prompt-go-on-or-clear = Go on measuring, or clear up and wash your hands.
prompt-several-probes = Several probes are plugged in. Unplug all but one.
prompt-probe-id = Or write the number of this bench's probe as probe.id in station.toml.
prompt-another-probe = Another probe is plugged in. Plug in this bench's own.
prompt-keep-new-probe = To keep the new one, restart the station. If its settings name a probe, change probe.id first.
prompt-no-reading = No reading from the probe. Check its plug; call your teacher.
prompt-nothing-lost = Nothing is lost. After plugging in it can take about 15 seconds to answer.
prompt-choose-divisions = Which thermometer do you use?
prompt-look-at-scale = How far apart are two lines on its scale? A digital one: a step of its last digit.
prompt-begin-typed = Put { $amount } in the cup. Thermometer in.
button-cup-filled-thermometer = Cup filled, thermometer in
prompt-type-reading = Stir. Wait until it is steady. Type the temperature.
prompt-eye-level = Read at eye level, the tip in the middle of the liquid.
prompt-own-reading = Stir. Read now when you judge the temperature steady.
button-read-now = Read now
prompt-own-portion = Add portion { $portion }: { $amount } when you choose. Stir.
prompt-own-mix = Add all { $amount } when you choose. Stir.
reason-not-sure = not sure
refusal-question-not-open = That question is closed: it was answered, or no longer matters.
refusal-finish-stands = You have recorded your own reading, so the practical stays finished.
refusal-sketch-not-now = A prediction can be drawn only before the first portion.
refusal-sketch-empty = Draw a line from left to right first.
refusal-not-this-step = Another step is asked for now: follow the instruction.
refusal-answers-are = The answers are: { $known_text }.
reason-spilled = the cup was spilled
answer-not-sure = Not sure
question-leaves-out = Left out until somebody answers: { $question }
question-asks = The station asks: { $question }
question-no-change = No change: did you add portion { $portion }?
answer-yes-it-is-in = Yes, it is in
answer-no-not-yet = No, not yet
question-double = A big change: was portion { $portion } added once or twice?
answer-once = Once
answer-twice = Twice
question-volume = Portion { $portion } seems smaller or larger: was it the usual volume?
question-not-stirred = The temperature is changing very slowly: has the cup been stirred?
answer-yes = Yes
answer-stirring-now = Stirring now
question-sudden-fall = A sudden change: did something spill, or is the lid off?
answer-no = No
answer-lid-back = Lid back on now
answer-it-spilled = It spilled
question-probe-out = Is the probe's tip in the liquid, free of the cup?
answer-it-is-now = It is now
question-slip = { $portion ->
        [0] The start temperature does not fit the others: is it right?
       *[other] The reading after portion { $portion } does not fit: is it right?
    }
answer-read-so = Yes, it says so
answer-misread = No, leave it out
question-other-start = Different start temperature: did you rinse the cup and fill it fresh?
answer-fresh = Yes, rinsed and fresh
answer-not-fresh = No: start this one again
reason-not-fresh = the cup was not filled fresh
csv-samples-not-readings = this is a record of samples; choose the readings of the other bench
csv-not-above-before = { $volume_cm3 } is less than in the row before; what is meant is the total added
result-needs-plan = The heat balance of portions needs a plan of portions: add --plan plan.toml.
result-repeats-differ = Repeats { $first } and { $second } differ by { $apart_cm3 } cm³, more than three times their combined u of { $u_cm3 } cm³: look for a slip in one of them. Both are kept.
refusal-type-alkali = No probe is in use: type the temperature of the alkali.
refusal-alkali-being-taken = The probe is already taking the temperature of the alkali.
refusal-portion-already-in = Portion { $portion } is already in.
refusal-portion-comes-next = Portion { $expected } comes next, not portion { $portion }.
refusal-plan-ends = The plan ends with portion { $portion }.
refusal-only-newest = Only the newest portion, { $portion }, can be taken back.
refusal-nothing-to-take-back = No portion is in: nothing can be taken back.
refusal-not-in-doubt = Portion { $portion } of repeat { $repeat } is not in doubt.
refusal-set-aside-already = Repeat { $repeat } has been set aside already.
refusal-say-why-set-aside = Say why the repeat is set aside, in reason.
refusal-not-set-aside = Repeat { $repeat } was not set aside, or it has no readings.
refusal-nothing-to-start-again = There is no repeat to start again.
refusal-say-why-start-again = Say why the repeat is started again, in reason.
refusal-repeats-enough = This practical has { $count } repeats: staff begin a new one.
refusal-paused-by = Your { $role ->
        [teacher] teacher
       *[technician] technician
    } paused the practical. Wait until they let you go on.
refusal-no-repeat-under-way = No repeat is under way.
refusal-say-which-portion = Say which portion is meant, in portion.
refusal-no-repeat = There is no repeat { $repeat }.
refusal-portion-not-added = Portion { $portion } of repeat { $repeat } has not been added.
reason-not-settled = read before it had settled
reason-no-reading = no reading from the probe
refusal-say-silent = Say in silent whether the buzzer is to be silent: true or false.
refusal-say-shown = Say in shown whether the results are to be seen: true or false.
refusal-prepared-with-results = The bottle's concentration can be told only together with the results.
refusal-nothing-prepared = In this plan there is no concentration to find.
refusal-give-plan = Give the plan's values in plan, or its text in plan_toml.
refusal-repeat-under-way-staff = A repeat is under way on this bench: finish the practical first.
refusal-confirm-strong = Above { $limit_mol_dm3 } mol/dm³: { $reagent } ({ $mol_dm3 } mol/dm³). Confirm it on the page /plan against the school's risk assessment, or weaken it.
refusal-plan = This plan cannot be used: { $reason }.
refusal-plan-sentence = This plan cannot be used: { $reason }
refusal-paused-already = The practical is paused already.
refusal-nothing-to-pause = No repeat is under way: there is nothing to pause.
refusal-not-paused = The practical is not paused.
refusal-called-already = The teacher has already been called.
refusal-not-called = Nobody is calling the teacher.
refusal-say-which-repeat = Say which repeat is meant, in repeat.
step-change-to-crossing = temperature change up to the crossing
formula-change-crossing = ΔT = T(crossing) - T(start)
step-mass-of-liquid = mass of liquid, school way: 1 g for each cm³
formula-mass-acid-alkali = m = (V(acid) + V(alkali)) × 1 g/cm³
step-heat-taken-up-school = heat taken up, school way: water's heat capacity, no cup
step-change-from-fit = temperature change without heat loss and lag, from the fit of the whole trace
formula-change-balance = ΔT from the heat balance
step-heat-to-end-point = heat given out up to the end-point
step-amount-to-end-point = amount of { $alkali } up to the end-point
step-capacity-solution = heat capacity of the solution, the cup and the probe
formula-capacity-solution = C = V × (heat capacity of 1 cm³) + C(cup)
step-percentage-school = percentage uncertainty of the temperature change, school way: half a division for each of two readings
formula-percentage = % = division ÷ ΔT × 100
step-change-of-repeat = temperature change of repeat { $repeat }
step-change-mean = mean temperature change of the repeats
formula-mean-change = ΔT = sum of ΔT ÷ number of repeats
step-change-at-mixing = temperature change at mixing, from the extended lines
step-heat-taken-in-school = heat taken in, school way: water's heat capacity, no cup
step-heat-given-out-school = heat given out, school way: water's heat capacity, no cup
of-school = { $of }, school way
formula-change-at-mixing = ΔT at the moment of mixing
formula-change-after-before = ΔT = T(after) - T(before)
step-mass-of-mixture = mass of the mixture, school way: 1 g for each cm³
formula-mass-liquid-added = m = m(liquid) + m(added)
step-capacity-mixture = heat capacity of the mixture, the cup and the probe
formula-capacity-mixture = C = C(mixture) + C(cup)
step-heat-taken-in-less = heat taken in, less what the added part brought by its own temperature
step-heat-given-out-less = heat given out, less what the added part brought by its own temperature
formula-heat-taken-in = q = q(added) - C ΔT
formula-heat-given-out = q = C ΔT - q(added)
lines-off-line = The reading after portion { $portion } stands { $off_c } °C off its line ({ $test }). It is kept: a person may leave it out.
warning-strong = Above { $limit_mol_dm3 } mol/dm³: { $reagent } ({ $mol_dm3 } mol/dm³). That is stronger than this practical needs: staff must confirm it against the school's risk assessment.
warning-beyond-plan = You made up { $mol_dm3 } mol/dm³ ({ $reagent }), more than the { $most_mol_dm3 } mol/dm³ that this plan can find. The students' label holds only up to that. Plan more portions or a stronger alkali.
problem-number-too-long = a number is too long
problem-nested-too-deeply = nested too deeply
problem-step-missing = a step is missing
advice-check-press-again = Check it; press again if it is right.
refusal-say-divisions = This bench has no probe: say the divisions of the thermometer, 1, 0.5, 0.2 or 0.1 °C.
refusal-probe-works = The probe works: finish this repeat with it.
refusal-say-temperature = Say the temperature in temperature_c.
refusal-nothing-typed = This bench reads its probe: nothing is typed.
refusal-say-divisions-first = First say the divisions of the thermometer: 1, 0.5, 0.2 or 0.1 °C.
refusal-no-reading-to-correct = Portion { $portion } of repeat { $repeat } has no reading to correct.
refusal-station-reads = In this practical the station decides when to read.
refusal-reading-comes-next = The reading after portion { $portion } comes next.
refusal-no-fresh-reading = The probe gives no fresh reading: check its plug and try again.
refusal-say-volume = Say the volume of the portion in volume_cm3.
refusal-nothing-weighed = In this practical nothing is weighed.
refusal-far-from-planned-mass = { $typed_g } g is far from the planned { $planned_g } g.
refusal-no-reading-at = There is no reading at { $minutes } in repeat { $repeat } to correct.
refusal-time-to-come = { $minutes } is still to come: type what is read then.
refusal-far-from-planned = { $typed_cm3 } cm³ is far from the planned { $planned_cm3 } cm³.
refusal-change-sign = You typed { $change_c } °C, but the curve says that the cup became { $way ->
        [warmer] warmer
       *[colder] colder
    }.
refusal-not-among-volumes = { $volume_cm3 } cm³ is not among the volumes added, up to { $most_cm3 } cm³.
practical-hydrochloric-acid = How strong is this hydrochloric acid?
practical-nitric-acid = How strong is the nitric acid?
practical-neutralisation = Heat of <neutralisation>neutralisation</neutralisation>
practical-urea = Cold by dissolving: urea in water
reason-stirred-late = stirred late
reason-lid-off = lid off
reason-lost-count = lost count of the portions
reason-probe-out = the probe was out of the cup
reason-wrong-volume = wrong volume in the cup
reason-wrong-moment = added at the wrong moment
reason-wrong-amounts = wrong amounts
reason-it-spilled = spilled
reason-few-readings = too few readings
reason-readings-scatter = the readings scatter too much
reason-not-turned = the temperature has not turned
reason-lines-on-paper = lines drawn on paper
reason-off-points = read off the points
reason-differs = differs from the other repeat
reason-another-way = read in another way
problem-in = { $where_text }: { $problem }
problem-of-reagent = { $reagent }: { $problem }
input-dict-type = input should be a table of keys
input-tuple-type = input should be a valid list

## analysis

cup-trace-before-short = The trace before pouring is too short: { $seconds } s at least.
cup-trace-after-short = The trace after pouring is too short: { $seconds } s at least.
cup-not-warm-enough = The water in the cup must be { $least_c } °C warmer than what is added, or more.
cup-changed-too-little = Pouring changed the temperature too little: take about as much water as is in the cup.
cup-not-smooth = The cup did not cool smoothly: keep the lid on, stir steadily, wait longer; do it again.
dip-no-change = The temperature has not changed: dip the probe into the water.
dip-trace-after-short = The trace after the dip is too short: { $seconds } s at least.
dip-too-near = Water and air are too near each other: { $least_c } °C apart at least.
dip-not-plunged = The trace is not that of a probe plunged at once into stirred water: do it again.
heat-open = No end-point can be found: the trace does not show where it is.
heat-unknown-reagents = The heat balance does not know these reagents: { $reagents }.
heat-few-portions = The heat balance needs at least { $least } portions; there are { $count }.
heat-few-samples = The trace has only { $count } good samples: too few for a heat balance.
heat-hardly-changes = The temperature hardly changes: no heat of reaction can be measured.
heat-trace-ends = The trace ends before the last portion could show.
heat-not-surely-passed = The end-point is not surely passed yet: add at least one more portion.
heat-not-passed = The end-point has not been passed yet: go on adding portions.
heat-first-portion = The end-point lies within the first portion: use smaller portions.
heat-lost-in-scatter = No end-point can be made out: the heat of reaction is lost in the scatter.
heat-note-portion-volume = Portion { $portion } does not look like its planned volume: was it missed, doubled or short?
heat-note-portion-moment = Portion { $portion } seems to have been poured far from the moment that was marked.
heat-note-strays = The trace differs from the model by more than the probe's noise.
heat-note-something-happened = Something happened at about { $seconds } s: a spill, the lid, or the probe out of the liquid?
heat-note-set-aside = { $percent } % of the samples do not fit and were set aside.
heat-note-cup-unusual = The cup or the probe would have to be far from the usual to give this trace.
heat-few-readings = The heat balance needs at least { $least } readings.
heat-more-readings-after = The end-point has not surely been passed: more readings are needed after it.
heat-no-bend = The heat shows no clear bend: no end-point can be made out.
heat-note-readings-scatter = The readings scatter about the two lines more than the thermometer allows.
lines-chosen-by-person = The readings on each line were chosen by a person.
lines-cross-outside = These lines cross at { $end_point_cm3 } cm³, which is not between the two groups ({ $from_cm3 } to { $to_cm3 } cm³). Move a reading to the other line.
lines-not-a-number = A volume or a temperature is not a number.
lines-one-temperature-each = There must be one temperature for each volume.
lines-missing-number = A volume or a temperature is missing or not a number.
lines-too-large = A volume or a temperature is far too large to be a reading.
lines-few-volumes = Two lines need at least { $least } different volumes each; there are { $count } in all.
lines-no-crossing = The two lines of best fit do not cross near the turn.
lines-all-same = All readings are the same, so there is no turn to find an end-point from.
lines-no-turn = The temperature does not turn: its highest and lowest readings are the first and the last. Has enough been added to pass the end-point?
lines-few-before = The line before the turn needs { $least } readings; it has { $count }. Begin again with smaller portions.
lines-few-after = The line after the turn needs { $least } readings; it has { $count }. Add more portions.
lines-two-points = Two points always lie on a line: the scatter needs at least three.
lines-parallel = The two lines are parallel: they do not cross.
label-scatter-only = scatter only
lines-same-way = Both lines of best fit go the same way, so there is no turn to find an end-point from.
lines-scatter = The readings scatter too much to say where the lines cross: the ± would have no limit.
school-half-division = half a division
school-one-division = one division
school-half-range = half the range
lines-rule = The readings are cut, in order of volume, into those before and those after the turn; the reading at the top (or bottom) may belong to neither. Of the cuts whose two lines of best fit cross between the two groups, the one nearest to the top counts; of several such, the one whose lines pass closest to all readings (least sum of squares). A top reading that lies off the lines drawn without it (99 % test) belongs to neither. Where one of the lines is level, the readings have no such top. They are then cut where both lines pass closest to all readings.
test-residual = externally studentised residual, Bonferroni
once-label-scatter-only = scatter and the loss along the stem only: a slow wall, a slow reaction or a curved fall shift the lines by more
once-before-not-straight = The readings before mixing do not lie on a straight line. Stir, and wait longer before you mix.
once-after-not-straight = The readings after mixing are not a straight line. Stir, lid on: the fall (or rise) must become steady.
once-no-change = The temperature did not change on mixing: { $change_c } °C is no more than the readings can show. Was it added, and was the mixing marked at the right moment?
once-not-a-number = A time or a temperature is not a number.
once-one-temperature-each = There must be one temperature for each time.
once-missing-number = A time or a temperature is missing or not a number.
once-times-must-rise = The times must rise from reading to reading.
once-mixing-outside = The moment of mixing is not within the recorded time.
once-before-old = The last reading before mixing is { $seconds } s old: the line needs one within { $most_s } s.
once-two-readings = There must be a reading before mixing and one after it.
once-label-difference = difference of two readings: it does not allow for what the cup lost meanwhile
once-rule-difference = The newest reading before mixing, and the one after it that is furthest away. For lines there are too few readings, or they are not straight.
once-no-line = Both lines could not be drawn: { $reason }
once-few-before = The line before mixing needs at least { $least } readings over { $least_s } s; there are { $count } over { $span_s } s. Record for longer before you mix.
once-few-after = The line after mixing needs at least { $least } readings over { $least_s } s; there are { $count } over { $span_s } s. Allow more time after mixing.
once-heat-no-course = The heat balance found no course of the cup that resembles these readings.
once-heat-few-before = The heat balance needs at least { $least } samples before mixing. Record for longer before you mix.
once-heat-few-after = The heat balance needs at least { $least } samples over { $seconds } s after mixing.
once-heat-no-change = The temperature did not change. Was anything added?
once-heat-unusual = The cup did something the heat balance does not know (more added, a spill, the probe out of the liquid?): its figures are less certain than usual.
once-heat-late = The temperature began to change { $seconds } s { $side ->
        [before] before
       *[after] after
    } the mixing was marked.
once-rule = Readings from { $before_s } s before to { $after_s } s after mixing are left out. Each line begins at the earliest reading that agrees with the straight line through all later readings. To agree means to lie within half a step of the probe or one hundredth of the change. It goes on for { $from_min } to { $to_min } minutes and at least { $least } readings (readings by hand: up to { $most_by_hand }, however long). Readings more than { $steps } steps off their line, and more than three times as far as is usual, are set aside.
test-dixon = Dixon Q (r10, two-sided)
test-grubbs = Grubbs G (two-sided)
probe-few-comparisons = A line needs { $least } comparisons; there are { $count }.
probe-too-near = Compare at temperatures at least { $least_c } °C apart.
label-scatter-of-repeats = scatter of repeats
label-uncertainty-of-each = uncertainty of each repeat
settle-no-reading = no reading from the probe
settle-time-up-few = time is up, few fresh readings
settle-few-fresh = too few fresh readings
settle-time-up = time is up
settle-still-settling = not steady yet
settle-settled = settled
settle-long-enough = long enough for the heat balance
settle-as-near = as close as the probe can get
settle-still-drifting = still drifting
settle-steady = steady
settle-recorded = recorded

## server

access-no-code = No code is set: this bench can be operated without one.
access-no-teacher = No passphrase is set for the teacher. Put the line that `station passphrase teacher` prints under [access] in station.toml (for a room: room.toml) and restart.
access-no-technician = No passphrase is set for the technician. Put the line that `station passphrase technician` prints under [access] in station.toml (for a room: room.toml) and restart.
access-not-right = That is not right. Check it and try again.
access-hold-button = Hold the bench button for 6 seconds, let go, and try within a minute. A hold lets one device in.
access-too-many-tries = Too many wrong tries here.
access-wait = { $why } Wait { $seconds } s, then try again.
access-sign-in = Sign in as { $roles } first.
access-may-look = This device may look. To operate the bench, give the code on the bench's label.
role-teacher = teacher
role-technician = technician
server-send-code = send the code, or role and passphrase, or recovery
server-not-kept = It could not be saved, so it does not count. { $reason }
secret-length = choose { $shortest } to { $longest } characters (these are { $count })
secret-not-a-hash = not a hash: put the line here that `station passphrase` prints
secret-other-strength = a hash of other strength than this station checks: make it with `station passphrase`
server-too-many-pages-state = Too many pages are open: ask /api/state instead.
server-file-not-made = The file could not be made. { $reason }
server-own-page-only = The station can only be operated from its own page.
server-send-json = Send the body as application/json.
server-body-too-long = The body may have { $count } bytes at most.
server-too-much-at-once = That was too much at once.
server-unknown-host = This bench cannot be opened under the name in the address bar. Open it by the address on its label or screen. If the name is right, add it to names under [access] in station.toml.
kit-cannot-make-cards = This station cannot make cards.
kit-cannot-look = This station cannot look at its kit.
kit-no-panel = This kit has no panel: panel.pins in its settings says so.
server-page-not-built = The page was not built: install the station again with pip.
plan-send-plan = send plan or plan_toml
plan-no-plan-file = This is no plan file: { $reason }.
plan-another-asked = Another plan was asked for meanwhile.
plan-prediction-failed = The prediction failed: { $reason }. Try again.
plan-sign-in-for-prepared = Only staff may see what was prepared: sign in, or leave prepared_mol_dm3 out.
server-send-code-as-text = Send the code, or role and passphrase, or recovery, as text.
server-not-json = The body is not valid JSON, or has a character or a number that is not allowed.
server-made-a-mistake = The station's program has a fault. Nothing that was confirmed is lost.
reason-page-looking = The station is looking at the kit; the findings follow in a moment.
reason-page-found = What the check found
reason-page-rest = all the rest
reason-page-title = The station cannot start
reason-page-mend = Mend that; the station tries again by itself within half a minute, and this page becomes the bench's. The record is kept. Work on with an ordinary thermometer meanwhile.
reason-page-finding = { $colour ->
        [red] red
        [amber] amber
        [green] green
       *[unknown] unknown
    }: { $finding }
room-record-unusable = The room's record cannot be used now. { $reason }
server-too-many-pages-room = Too many pages are open: ask /api/room instead.
room-no-address = This room has no address that benches can reach.
order-cannot-be-given = This cannot be ordered: { $reason }.
order-cannot-be-taken-back = This cannot be taken back: { $reason }.
server-too-many-pages-ask = Too many pages are open: ask the state instead.
room-no-such-bench = There is no such bench in this room.
room-results-not-shown = The results are not shown yet: they are shown to everybody at once.
room-no-such-lesson = There is no such lesson.
order-nothing-known = nothing is known yet of what { $bench } did
order-too-many = { $count } orders wait for a bench that is away: take them back first
order-no-lesson = No lesson is under way.
order-no-bench = there is no bench { $bench_name }
kit-ask-done = Done.
kit-ask-not-sure = Tick first that this is meant: it cannot be undone from here.
kit-ask-no-broker = The kits cannot be asked now: { $reason }
server-cannot-listen = cannot listen on { $host_address } port { $port }: { $reason }; choose another server.port
server-faults-left-out = ({ $count } faults left out) { $reason }
manual-english-only = The manual is in English.

## room

link-no-address = { $address } is no address of a broker: write it like "mqtt://room.local:1883"
link-cannot-be-read = { $path }: the { $what ->
        [passphrase] passphrase
       *[password] password
    } cannot be read: { $reason }
link-one-line = { $path }: one line with the { $what ->
        [passphrase] passphrase
       *[password] password
    } should stand there
broker-cannot-be-user = { $user_name } cannot be a user
quantity-end-point = end-point
quantity-enthalpy = enthalpy
quantity-temperature-change = temperature change
quantity-concentration = concentration
method-heat-balance = heat balance
method-straight-lines = straight lines
class-no-slip = Its record shows no mistake: ask the group.
class-set-aside = Repeat { $repeat } was set aside: { $reason }
class-more-than-u = more than { $count } standard uncertainties of the difference
class-stands-off = { $bench_name }: its { $quantity } by { $method } lies { $off } { $unit } { $side ->
        [above] above
       *[below] below
    } the others ({ $test }).
word-yes = yes
word-no = no
class-sheet-result = Class result
class-sheet-words = What it means
class-sheet-standing-off = Standing off
class-head-behind = what may be behind it
class-sheet-curve = Mean curve
sheet-readings = Readings
class-head-sentence = sentence
class-head-bench = bench
class-head-what = what
class-no-answer = no answer
class-asked = Repeat { $repeat }, portion { $portion }: the station asked “{ $question }”, answer: { $answer }.
class-not-settled = Repeat { $repeat }: { $count } readings were taken before they had settled.
class-in-doubt = Repeat { $repeat }: { $count } portions are in doubt and left out of the lines.
class-note-of-repeat = Repeat { $repeat }: { $note }
answer-unreadable = no answer that can be read
class-no-repeat-yet = No bench has ended a repeat yet.
class-one-bench = One bench alone has a result: a class mean needs two.
class-other-plans = Benches with another plan than most are listed and not in the mean.
class-answer = The class: { $mean } ± { $u } { $unit } from { $count } of { $all } benches
class-answer-one = One bench so far: { $value } ± { $u } { $unit }, of { $all } taking part
class-spread = One bench alone is good to about ± { $own_u } { $unit }; the benches’ values scatter by { $sd } { $unit }: { $agree ->
        [yes] no more than is to be expected.
       *[no] more than is to be expected, so something differs from bench to bench.
    }
class-lines = The straight lines give an end-point { $percent } % { $side ->
        [higher] higher
       *[lower] lower
    }, on every bench alike: each portion warms more liquid than the one before, so the rising line bends.
class-mean = Class { $quantity } by { $method }: { $mean } ± { $u } { $unit }, from { $count } benches; with 95 % confidence the class's mean lies between { $low } and { $high } { $unit }.
class-meaning = The ± is of the class's mean, not of one bench: single benches spread by { $sd } { $unit } (one standard deviation); their own uncertainties alone would give { $own_u } { $unit }.
class-agree = The benches agree within their own uncertainties: nothing more than those need separate them.
class-chance = A spread between benches of { $between } { $unit } fits best, but chance alone could give as much (p = { $p }); it is in the ±.
class-differ = The benches differ by { $between } { $unit } beyond their own uncertainties (p = { $p }): something differs from bench to bench that no bench can see by itself, such as how portions are measured or a slip; it is in the ±.
class-without = Without the benches that stand off ({ $count }) the mean would be { $mean } ± { $u } { $unit }. The station never leaves a result out: only a person sets a repeat aside, and gives a reason.
class-methods = The straight lines cross { $apart_cm3 } cm³ { $side ->
        [above] above
       *[below] below
    } the heat balance: each portion warms more liquid, which bends the rising line, and no number of benches averages that away.
class-p-least = 0.001 or less
room-broker-not-answered = the broker at { $address } has not answered yet
bench-sends-unreadable = It sends what cannot be read ({ $reason }).
bench-goes-on-as-another = { $reason }; it goes on as another record.
bench-cannot-be-kept = What it sends cannot be kept ({ $reason }).
bench-event-not-understood = Its event { $kind } is not understood: is it newer than the room?
bench-event-no-sense = Its event { $kind } makes no sense here ({ $fault }).
room-broker-refuses = the broker at { $address } does not let the room in: check its user and password ({ $reason })
room-broker-silent = the broker at { $address } does not answer ({ $reason })
room-folder-cannot-be-made = { $path }: cannot be made: { $reason }; choose another room.folder
room-another-at-work = { $path }: another room is running here; stop it first
file-cannot-be-written = { $path }: cannot be written: { $reason }
file-cannot-be-read = { $path }: cannot be read: { $reason }
room-cannot-be-written-restart = { $path }: cannot be written: { $reason }; restart the room
room-cannot-be-written-full = { $path }: cannot be written: { $reason }; is the disk full?
room-damaged = { $path }: damaged ({ $reason }); move it elsewhere and start again: the benches send what they have
room-cannot-open = { $path }: cannot open: { $reason }; make its folder writable or choose another room.folder
room-newer = { $path }: written by a newer room (format { $format_version }); update this one
link-needs-user = a bench needs a user at the broker
link-kept = The room keeps this bench's record.
link-room-not-reached = The room is not reached yet. The bench works alone; the room gets everything later.
link-broker-not-reached = The room's broker is not reached. The bench works alone; the room gets everything later.
link-broker-refuses = The room's broker does not let this bench in: check link.user and its password.
link-password-unreadable = The password for the room's broker cannot be read: check link.password_file.
link-no-room = The broker answers, but no room. The bench works alone; the room gets everything later.
link-failed = The link to the room failed. The bench works alone; the link is tried again.
link-no-answer = no answer
link-takes-nothing = the network takes nothing
order-could-not = This bench could not do it.
order-act-one-of = act: one of { $acts_text }
order-practical = practical: the name of a record, and the number of an event
order-plan-missing = plan: missing; give its values in plan, or its text in plan_toml
order-confirm-strong = { $reagent } ({ $mol_dm3 } mol/dm³) is above { $limit_mol_dm3 } mol/dm³: confirm it against the school's risk assessment, or weaken it
room-no-first-event = { $path }: the record has no first event
broker-not-installed = Mosquitto is not installed: sudo apt install mosquitto, or name another broker (room.broker)
file-cannot-be-written-folder = { $path }: cannot be written: { $reason }; choose another folder
broker-port-taken = the private broker cannot have port { $port }: is another broker at work (sudo ss -ltnp)? End it, or name it in room.broker
room-event-differs = { $bench }: event { $event } of journal { $journal } is not the one that is kept
room-cannot-be-kept = { $bench }: cannot be kept: { $reason }
room-too-many-records = more than { $count } records
broker-user-letters = { $user_name } cannot be a bench's user: letters, digits, '-', '_', '.', at most { $count }
bench-too-many-bytes = It sends more than { $kilobytes } kB a second; not all is read.
bench-too-many-messages = It sends more than { $count } messages a second; not all are read.
room-two-kits = Two kits are { $bench }: { $both }. Make one of their cards anew.
wire-too-many-bytes = { $count } bytes are too many for one message
wire-longer-than = { $count } bytes: longer than { $most }
wire-not-a-message = not a message: { $fault }
wire-holds-too-much = holds more than { $most } bytes, or ends too soon
wire-no-number = { $typed } is no number
wire-eight-parts = events: an event has eight parts
wire-impossible-number = events: a number that no event can have
wire-time-no-number = event { $event }: its time is no number
wire-no-plain-text = event { $event }: boot, wall time, clock or kind is no plain text
wire-no-kind = event { $event }: no kind, or no body
wire-nested = event { $event }: its body is nested deeper than { $most }
wire-impossible = event { $event }: its body holds a number or a letter that there is not
order-missing = { $key_name }: missing
wire-key = { $message_name }: { $key_name }: { $reason }
room-kit = kit { $kit_name }
room-board = board …{ $board_name }
room-kit-named = { $bench_name } ({ $board })
room-kit-at = { $bench_name } ({ $board } at { $address })

## bench

answer-exit-status = exit status { $status }
answer-none-within = no answer within { $seconds } s
check-probe-copy-rules = copy 60-station-probe.rules to /etc/udev/rules.d and plug the probe in again
check-probe-plug-and-wires = check its plug and its three wires; the kernel sees a plugged probe within 15 s
check-bus-master = one-wire bus master { $masters_name }
check-bus-other-tree = a one-wire tree at { $path }, which is not the kernel's
check-bus-none = no one-wire bus ({ $path })
check-bus-no-master = no bus master on the one-wire bus ({ $path })
check-bus-make-tree = make { $path } or take probe.tree out of station.toml: the kernel's tree is { $kernel_path }
check-bus-restart = { $overlay_text } stands in /{ $file }: restart the Pi; if that is no help, put the line below [all]
check-bus-move-line = move the line { $overlay_text } from /{ $from_file }, which is not read, to /{ $to_file } and restart the Pi
check-bus-write-line = write the line { $overlay_text } below [all] in /{ $file } and restart the Pi
check-bus-on-other-machine = on a Raspberry Pi { $advice }; on another machine set driver = "none" below [probe] in station.toml
check-probe-one = one probe, { $probe_name }
check-probe-set-id = set probe.id in station.toml to the one in the cup, such as id = "{ $probe_name }", or unplug the others
check-probe-several = { $count } probes, and the settings do not say which: { $probes_name }
check-probe-pull-up = put 4.7 kΩ from the data wire to 3.3 V, and look for a broken data wire
check-probe-ghosts = no probe, but { $count } ghosts (00-…): the data wire is not connected
check-probe-none = no probe on the bus
check-probe-as-set = { $probe_name }, as set
check-probe-as-set-others = { $probe_name }, as set; { $others_name } is not read
check-probe-plug-or-set-id = plug that probe in, or set id = "{ $probe_name }" below [probe] in station.toml
check-probe-set-not-there = { $probe_name } is set but not there; there is { $others_name }
check-probe-set-none-there = { $probe_name } is set but not there, nor any other
check-supply-contact = the probe's supply wire has contact
check-supply-wire = wire VDD (often red) to 3.3 V on position 1; with two wires it reads 85 °C sooner or later
check-supply-no-contact = the probe's supply wire has no contact
check-supply-unknown = this kernel does not tell whether the supply wire has contact
check-resolution-unknown = this kernel does not tell the probe's resolution
check-resolution = { $bits } bits, steps of { $step_c } °C
check-resolution-only = only { $bits } bits, steps of { $step_c } °C
check-resolution-set = { $advice }; until then: echo 12 | sudo tee { $path }
check-guard-unknown = this kernel does not check conversions itself
check-guard-yes = the kernel refuses 85 °C of a probe that lost its power
check-guard-no = the kernel does not refuse 85 °C of a probe that lost its power; the station still does
check-power-supply = take the supply made for this Pi and a short thick cable, nothing else on its USB sockets
check-clock-behind = the clock is { $hours } h behind the newest entry of the record
check-clock-connect-once = connect the kit to a network with time once, or fit a clock module
check-clock-network = the clock is set from the network
check-clock-module = the clock is kept by a clock module
check-clock-unknown = this machine does not tell whether its clock is set
check-clock-not-set = nothing has set the clock: dates in the record are only labels; order and intervals are right all the same
check-clock-connect = connect the kit to a network with time, or fit a clock module
check-power-weak-now = the supply is too weak: under-voltage now
check-power-was-weak = the supply was too weak since the Pi was started
check-power-hot-now = the processor was slowed down (now): too hot
check-power-was-hot = the processor was slowed down (since the Pi was started): too hot
check-power-air = give the box air
check-power-good = no under-voltage since the Pi was started
check-power-unknown = this machine does not tell whether its supply is strong enough
check-again-with-sudo = check again with sudo
check-power-good-now = no under-voltage now; what was before is not told
check-not-readable = { $path } may not be read by this user
check-record-none = no record yet: the first start begins one
check-record-sqlite = SQLite finds it damaged: { $reason }
check-record-not-looked-through = the record could not be looked through in { $seconds } s
check-record-chain-not-followed = SQLite finds the record sound; its chain of { $count } events was not followed in { $seconds } s
check-record-event-changed = event { $event } is not as it was written
check-record-sound = the record is sound, { $count } events
check-record-begin-anew = stop the station, rename { $path } and start it again: a new record begins, or station restore FILE puts a backup in its place; keep the old folder whole, what is before the damage can still be exported
check-record-damaged = the record is damaged: { $reason }
check-record-unreadable = the record could not be read: { $reason }
check-network-page = the page: { $addresses_text }
check-network-self-given = no network gave this kit an address; it took { $addresses_text }
check-network-wifi-name = check the cable or the Wi-Fi's name and passphrase
check-network-take-host-out = take host below [server] out of station.toml, or set "0.0.0.0"
check-network-host = server.host = { $host_address }: no other device reaches the page
check-network-plug-in = plug in the network cable, or join the Wi-Fi
check-network-wifi-off = Wi-Fi is switched off: set its country (sudo raspi-config, Localisation), or plug in the network cable
check-network-none = no network: only this machine sees the page
check-port-zero = server.port = 0: the page's address is another one after each start
check-port-set = set port below [server] in station.toml, such as 8080
check-port-station = a station serves { $bench_name } on port { $port }
check-port-end-program = end that program, or set another port below [server] in station.toml
check-port-taken = another program listens on port { $port }
check-port-nobody = a station is at work (process { $process }), but nobody listens on port { $port }
check-port-restart = restart the station: sudo systemctl restart station
check-port-free = port { $port } is free
check-pins-settings = the settings cannot be read, so the panel is not known
check-pins-none-wanted = no panel is wanted (panel.pins = "none"): everything is done on the page
check-pins-correct = correct it below [panel] in station.toml
check-pins-set = for a lesson, set pins = "real" or "none" below [panel] in station.toml
check-pins-mock = the settings choose mock pins: no lamp will light
check-pins-held-by = GPIO{ $pin } by { $program_name }
check-pins-end-program = end that program, or take the overlay that uses the pin out of config.txt
check-pins-held = pins of the panel are held: { $pins }
check-pins-good = lgpio, header on gpiochip{ $chip }
check-pins-good-at-work = lgpio, header on gpiochip{ $chip }; the station at work holds the pins
check-probe-not-wanted = no probe is wanted: temperatures are typed from a thermometer
check-probe-set-driver = for a lesson, set driver = "one-wire" below [probe] in station.toml
check-probe-virtual = the settings choose the virtual cup: no probe is read
check-probe-not-readable = the probe may not be read by this user
check-reads-no-samples = the station at work has no samples to be seen from here, and a second reader would spoil its readings
check-reads-stop-station = stop the station, then check again
check-reads-supply = the supply wire (VDD) loses contact: look at plug and solder joints, and at the Pi's supply
check-reads-data-ground = the data wire touches ground: look at plug and solder joints
check-reads-hangs = unplug the probe and plug it in again; if it still hangs, cut the kit's power for 10 s
check-reads-half-plugged = a half-plugged wire reads like this: look at plug and solder joints
check-reads-left-bus = the probe left the bus: look at plug and cable
check-reads-unplug-others = unplug all probes but one, or set probe.id in station.toml
check-reads-own-probe = plug in the bench's own probe, or change probe.id in station.toml and restart the station
check-reads-cable = shorter cable, 4.7 kΩ (long cable: 2.2 kΩ) from data to 3.3 V, another probe; then check again
check-reads-none-failed = none of { $count } reads failed; up to { $unseen } in 100 could still (95 %)
check-reads-none-failed-station = none of { $count } reads by the station at work failed; up to { $unseen } in 100 could still (95 %)
check-reads-failed = { $failed } of { $count } reads failed, { $share } in 100 ({ $kinds_text })
check-reads-failed-station = { $failed } of { $count } reads by the station at work failed, { $share } in 100 ({ $kinds_text })
check-noise-too-few = too few good reads to tell the noise
check-noise-all-alike = every read is { $temperature_c } °C exactly, which some copies give before they have measured
check-noise-hold-probe = hold the probe in your hand and check again: it must rise
check-noise = noise { $sd_c } °C (sd) at { $mean_c } °C
check-noise-changing = the temperature was changing, so its noise cannot be told
check-noise-still-water = leave the probe in still water for a minute, then check again
check-noise-another-probe = leave the probe in still water and check again; if the noise stays, another probe
check-noise-much = { $noise }, more than { $most_c } °C
check-conversion-not-timed = no read of our own, so no conversion was timed
check-conversion = the chip answers after { $seconds } s
check-conversion-slow = the chip answers after { $seconds } s; the data sheet allows 0.75 s
check-conversion-read = a read takes { $seconds } s; this kernel tells no more
check-conversion-early = reads come back after { $seconds } s, before the conversion of { $conversion_s } s can have ended
check-conversion-stop-others = stop every other program that reads the probe; then check again
check-conversion-fixed = the kernel waits a fixed { $seconds } s, so the chip's own time cannot be told
check-kind-number = its number is of the maker's pattern; its bytes were not looked at
check-kind-nothing-against = no sign of a copy was found; that does not prove a genuine DS18B20
check-kind-off-sheet = a copy that is off the data sheet: { $reasons }
check-kind-expect = expect noise and offset: check it in ice water, or take another
check-kind-copy = a copy, as most steel-sheathed probes are: { $reasons }. Copies can be good: see the noise and the failed reads
check-kind-offset = check its offset in ice water once
check-kind-no-pattern = its number is not of the maker's pattern ({ $pattern_text }…)
check-kind-reserved = its reserved bytes are { $bytes_text }, not ff … 10 as in the data sheet
check-kind-byte-6 = byte 6 does not count with the temperature
check-failed-itself = this check failed itself ({ $fault_name }: { $reason })
check-report = report it with the output of station --version
check-storage-unsafe-plug = { $path } is on { $kind_name }, which does not survive a pulled plug well
check-storage-unsafe-network = { $path } is on { $kind_name }, which is on another machine, where the record's file must not be
check-storage-on-the-card = set folder below [record] in station.toml to a folder on the card
check-storage-overlay-off = switch the overlay file system off (raspi-config, Performance Options); or set folder below [record] in station.toml to a folder on the card
check-storage-unknown = this machine does not tell where { $path } is kept
check-storage-in-memory = the record is kept in memory ({ $kind_name } on { $mount_path }): it is gone at power-off
check-storage-read-only = { $mount_path }, where the record is kept, is read-only ({ $device_name })
check-storage-card-worn = restart the Pi; if it stays so the card is locked or worn out: take another
check-storage-good = { $path } can be written and is kept ({ $kind_name } on { $device_name })
check-storage-little = only { $megabytes } MB free, room for some { $hours } hours of samples
check-storage-delete-old = keep the old records elsewhere and delete them here, or take a larger card
check-storage-free = { $megabytes } MB free
check-storage-cannot-write = { $path } cannot be written: { $reason }
check-storage-other-bytes = { $path } gives back other bytes than were written
check-storage-take-another = take another card
check-storage-is-a-file = { $path } is a file, so the record's folder cannot be there
check-storage-other-user = { $path } is another user's (uid { $user })
check-storage-not-writable = { $path } may not be written
check-storage-chmod = chmod u+rwx { $path }
versions-not-installed = not installed
versions-page-built = page built
versions-page-not-built = page not built
check-versions = station { $station_version }, Python { $python_version }, { $system_name }
check-versions-board = { $versions }, { $board_name }
check-versions-no-pi = { $versions }; not a Raspberry Pi
check-versions-other-board = { $versions }; not a Raspberry Pi ({ $board_name })
check-versions-64-bit = write the 64-bit Raspberry Pi OS Lite to the card
check-versions-32-bit = { $versions }, { $board_name }: a 32-bit system
order-of-practical-over = That was for a practical that has already ended.
probe-read-twice = this process already reads a probe there; two readers would disturb each other
probe-not-ds18b20 = probe.id { $probe_name } is not a DS18B20: 28- and twelve hexadecimal digits
panel-pins-choose = panel.pins = { $typed }: use "real", "mock" or "none"
panel-install-lgpio = install "python3-lgpio" from Raspberry Pi OS and make the environment with --system-site-packages; or set panel.pins = "none" to work from the page alone
panel-lgpio-not-installed = Python's lgpio is not installed ({ $reason })
panel-set-lg-wd = set LG_WD to a folder that the station may write to
panel-lgpio-cannot-write = lgpio cannot write to { $path } ({ $reason })
panel-lgpio-empty = the lgpio that is installed is empty (release 0.0.0.2)
panel-run-on-pi = run the station on a Raspberry Pi, or set panel.pins = "none" to work from the page alone
panel-no-gpio = this machine has no GPIO pins
panel-add-to-group = add the station's user to the group "gpio" and start it again
panel-gpio-not-allowed = the GPIO chips may not be opened by this user
panel-no-header = no GPIO chip is a Raspberry Pi header ({ $found_text })
panel-use-supported = use a supported Raspberry Pi
panel-check-nothing-else = check that nothing else uses { $pins_text } (an overlay in config.txt, another program)
panel-pins-not-claimed = the pins cannot be claimed ({ $reason })
panel-pin-of-probe = the temperature probe
panel-pin-number = { $pin_name } = { $typed }: give a GPIO number from 2 to 27
panel-pin-taken = { $pin_name } = { $pin }: GPIO{ $pin } is taken by { $by }; choose another
panel-cannot-be-used = the panel cannot be used: { $reason }; { $remedy }
virtual-speed = The speed must be above zero.
virtual-faults-percent = In the fault script, { $typed }: at most 100 % can fail.
virtual-faults-not-understood = In the fault script, { $typed } is not understood. Write a fault, @, the bench second, + and the seconds it lasts (power_on@30+5), or random 30 %. Faults: { $known_text }.
virtual-ordinary-number = an ordinary number
virtual-between-0-and-1 = between 0 and 1
virtual-zero-or-more = zero or more
virtual-above-zero = above zero
virtual-must-be = { $field_name } is { $value }: it must be { $wanted }.
virtual-tipped-over = The cup tipped over.
practise-bench-name = Practice cup
practise-no-acid = The cup is empty: fill it with acid first.
practise-no-such-cup = This practice cup is no longer there. Open the page again to get a new one.
practise-full = Every practice cup is in use. Wait until one is free, or ask your teacher.
practise-bench-at-work = A repeat is under way at this bench. Practise when it has ended.
practise-truth = In this cup the { $acid_name } was { $mol_dm3 } mol/dm³. The end-point was at { $end_point_cm3 } cm³.
practise-truth-once = Mixing { $added } with { $liquid } gives { $enthalpy_kj_mol } kJ/mol in this cup.
practise-slip-nothing = You pressed the button, but you had poured in nothing.
practise-slip-missed = You pressed the button, but you had poured in only { $poured_cm3 } cm³.
practise-slip-double = You poured in { $poured_cm3 } cm³: about twice the planned { $planned_cm3 } cm³.
practise-slip-volume = You poured in { $poured_cm3 } cm³ where { $planned_cm3 } cm³ was planned.
practise-slip-pressed-late = You pressed the button { $seconds } s after the portion was in.
practise-slip-waited = You waited { $seconds } s before you poured this portion.
practise-slip-early = You read this portion { $seconds } s early.
practise-slip-not-stirred = You did not stir after this portion.
practise-slip-lid = The lid was off.
practise-slip-probe-out = The probe was not in the cup.
practise-slip-not-filled = You did not fill the cup afresh with acid.
practise-slip-not-rinsed = You put the probe from the alkali into the acid without a rinse.
versions-library = { $library_name } { $version }
versions-station = benchwarm { $version }, { $page }
versions-lines =
    { $first }
    { $second }

## record

csv-row-both = both a temperature and a portion; a row has one of them
csv-row-neither = neither temperature nor portion: type the one that was meant, or delete the row
csv-row-second-portion = a second portion, where the plan mixes once
csv-row-not-in-order = { $time_s } comes after { $before_s }; rows go by time in a repeat
csv-not-one-of = not one of { $known_text }
record-closed = { $path }: the record is closed
record-cannot-write = { $path }: cannot write the record: { $reason }
record-restart-station = { $reason }; restart the station
record-event-unreadable = { $path }: event { $event } cannot be read: { $reason }
record-cannot-read = { $path }: cannot read the record: { $reason }
record-cannot-open-folder = { $path }: cannot open the record: { $reason }; make its folder writable or choose another
record-another-station = { $path }: another station keeps its record here; stop it first
record-newer = { $path }: written by a newer station (format { $format_version }); update this one
record-none-here = { $path }: no record here; name the record's folder with --record
record-cannot-open = { $path }: cannot open the record: { $reason }
record-not-set-aside = { $path }: the damaged record could not be set aside: { $reason }
sheet-date-and-time = date and time (station's clock)
sheet-bench-time = bench time / s
sheet-repeat = repeat
sheet-portion = portion
sheet-what = what
sheet-in-words = in words
sheet-notes = Notes
sheet-nothing-read = nothing could be read
sheet-nothing-read-why = nothing could be read: { $reason }
noted-plan-chosen = plan chosen
noted-group = group
noted-no-label = no label
noted-thermometer = thermometer
noted-stations-probe = the station's probe
noted-ordinary-thermometer = { $digital ->
    [true] digital, to { $division_c } °C
   *[false] ordinary, { $division_c } °C divisions
}
noted-temperature-of-added = temperature of what is added
noted-set-up = setting up
noted-set-up-step = { $step ->
        [alkali] temperature of what is added left out
        [probe] probe rinsed and wiped
        [empty] cup emptied
       *[wash] cup rinsed and dried
    }
noted-repeat-begun = repeat begun
noted-repeat-ended = repeat ended
noted-repeat-set-aside = repeat set aside
noted-repeat-counts-again = repeat counts again
noted-portion-taken-back = portion taken back
noted-mass-corrected = mass corrected
noted-volume-corrected = volume corrected
noted-portion-unsure = not sure of the portion
noted-portion-sure = sure of the portion again
noted-station-asked = the station asked
noted-answer = the answer
noted-note = note { $number }
noted-note-withdrawn = note { $number } withdrawn
noted-adopted = not this group's own readings taken over
noted-own-again = the group's own readings again
noted-own-reading = own reading
noted-results = results
noted-shown-by-staff = shown by staff
noted-shown-with-prepared = shown by staff; the bottle was made up to { $mol_dm3 } mol/dm³
noted-withheld-by-staff = withheld by staff
noted-correction-of-probe = correction of the probe
noted-none = none
noted-check-saved = probe check { $number } saved
noted-check-withdrawn = probe check { $number } withdrawn
noted-cup-tested = cup tested
noted-record-damaged = damaged record set aside
noted-events-go-on = { $count } events go on
noted-probe-lost = probe lost
noted-probe-found = probe found
noted-paused = paused
noted-by-role = by the { $role ->
        [teacher] teacher
       *[technician] technician
    }
noted-resumed = resumed
noted-finish-undone = finish undone, going on
noted-repeat-asked = one more repeat
noted-teacher-called = teacher called
noted-call-ended = teacher no longer called
noted-sketch = prediction drawn
noted-practical-ended = practical ended
noted-early = early
sheet-temperature-at-end-point = temperature at the end-point
sheet-expected-shift = expected shift of raw lines
sheet-change-of-temperature = change of temperature
sheet-heat-given-out = heat given out
sheet-heat-taken-in = heat taken in
sheet-enthalpy-per-mole = enthalpy change per mole
sheet-acid-concentration = concentration of the acid
sheet-of = of
sheet-method = method
sheet-quantity = quantity
sheet-value = value
sheet-standard-uncertainty = standard uncertainty
sheet-95-from = 95 % from
sheet-95-to = 95 % to
sheet-unit = unit
sheet-step = step
sheet-formula = formula
sheet-working = working
sheet-results = Results
sheet-steps = Steps
sheet-mean-of-repeats = mean
sheet-repeat-number = repeat { $repeat }
sheet-no-result = no result
sheet-worth-a-thought = worth a thought
sheet-accepted = accepted
sheet-own-lines = own lines
sheet-plan = Plan
sheet-table = Table
sheet-run-temperature = run { $repeat } / °C
sheet-run-mass = mass in run { $repeat } / g
sheet-volume-added = volume added / cm³
sheet-line = line
sheet-line-before = line before
sheet-line-after = line after
sheet-line-temperature = on the line / °C
sheet-probe = Probe
sheet-mean = Mean
sheet-samples = Samples
sheet-portions = Portions
sheet-bench = bench
sheet-group = group
sheet-practical = practical
sheet-practice = Practice
sheet-virtual-cup = with a virtual cup
sheet-how-clock-set = how the station's clock was set
sheet-readings-of = readings
sheet-own = this group's own
sheet-not-own = not this group's own: { $label_name }
sheet-ordinary-typed = ordinary thermometer, typed
sheet-moments = moments of reading
sheet-moments-own = the group decided itself
sheet-moments-station = as the station asked
sheet-thermometer = thermometer
sheet-repeats-planned = repeats planned
sheet-temperature-added-before = temperature of what is added, before the start
sheet-indented = { "  " }{ $of }
sheet-its-uncertainty = its standard uncertainty
sheet-cup-heat-capacity = heat capacity of cup and probe
sheet-in-the-cup = in the cup
sheet-volume = volume
sheet-concentration = concentration
sheet-mass-g = mass / g
sheet-mass = mass
sheet-added-at-once = added all at once
sheet-concentration-to-find = concentration (empty: to be found)
sheet-added-in-portions = added in portions
sheet-volume-of-portion = volume of a portion
sheet-portions-planned = portions planned
sheet-repeat-set-aside = repeat set aside: { $reason }
sheet-no-reason = no reason given
sheet-not-sure-why = not sure: { $reason }
sheet-not-settled = not settled
sheet-not-a-probes = not a probe's temperatures
sheet-clock-network = by the network
sheet-clock-not-set = not set: date and time may be wrong
sheet-total-added = total added / cm³
sheet-temperature = temperature / °C
sheet-u-temperature = standard uncertainty / °C
sheet-time-in-repeat = time in the repeat / s
sheet-counts = counts
sheet-why-not = why not, or what is special
sheet-mean-added = mean total added / cm³
sheet-mean-temperature = mean temperature / °C
sheet-repeat-counts = repeat counts
sheet-as-probe-said = as the probe said / °C
sheet-corrected-by = corrected by
sheet-checked-on = checked on
sheet-correction-added = correction added / °C
sheet-u-correction = its standard uncertainty / °C
sheet-at-about = at about / °C
sheet-relative-u = relative uncertainty of a difference
sheet-volume-cm3 = volume / cm³
sheet-added-early = added before it was asked for
sheet-reason = reason
record-backup-not-written = { $path }: the backup could not be written: { $reason }; choose another place
record-not-restored = { $path }: the record could not be restored: { $reason }
record-not-deleted = { $path }: the record could not be deleted: { $reason }
file-no-such = { $path }: no such file; check the name
record-backup-not-sound = { $path }: not a sound backup of a record ({ $reason }); use another one
record-not-a-backup = { $path }: not a backup of a record: { $reason }
record-backup-changed = { $path }: event { $event } is not as it was written; use another backup
record-moved = its file was moved or deleted
record-log-deleted = its log { $file } was deleted and cannot be written anew ({ $reason })
noted-quantity = { $value } { $unit }
noted-cup = { $label_name }: { $j_k } ± { $u_j_k } J/K
noted-question = { $code ->
        [no_change] no change
        [double] double
        [not_stirred] not stirred
        [sudden_fall] sudden fall
        [probe_out] probe out
        [other_start] other start
        [volume] volume
        [slip] slip
       *[other] { $text }
    }
noted-answered = { $code ->
        [yes] yes
        [no] no
        [once] once
        [twice] twice
        [lid] lid
        [spilled] spilled
        [not_sure] not sure
        [readings_fit] the readings after it fit
        [typed_again] typed again
       *[other] { $text }
    }
noted-bad = { $code ->
        [empty] empty
        [crc] crc
        [garbled] garbled
        [zeros] zeros
        [power_on] power on
        [out_of_range] out of range
        [jump] jump
        [gone] gone
        [several] several
        [other_probe] other probe
        [not_read] not read
        [no_answer] no answer
       *[other] { $text }
    }
noted-check = { $code ->
        [ice] ice
        [boiling] boiling
        [ice_and_boiling] ice and boiling
        [comparison] comparison
        [dip] dip
       *[other] { $text }
    }

## kit

progress-title = This station is being set up
progress-step = Installing, step { $number } of { $total }: { $what }
progress-system = settings of the system
progress-wheels = its parts are copied
progress-station = the station itself, some minutes
progress-panel = lamps, buzzer and button
progress-broker = the link to the benches
progress-services = it starts
progress-waits = The installation begins soon.
progress-failed = The installation failed.
progress-mend = It is tried again at the next start. These lines say why:
progress-done = Installed. The page comes by itself, perhaps after a restart.
progress-stay = Leave the power on. This page follows by itself.
kit-network-file =
    The network of this bench. Changed on any computer, it holds from the next start on.
    Wi-Fi: ssid = "the network's name", password = "8 to 63 characters", country = "IE", perhaps hidden = true
    The cable alone: wired = true
    What came of it stands in network-result.txt beside this file.
helper-none = This station was not installed from a card that station kit made, so it cannot do this by itself.
helper-not-known = The station's helper does not know this request, or a value in it is wrong.
helper-busy = Something else is still being done. Try again in a minute.
helper-begun = It is being done, and the page is away meanwhile. After that, look here again; sign in anew if you are asked.
helper-network-begun = The new network is tried for a minute. If it does not answer, the old one comes back.
helper-network-kept = The new network answered for a minute and is kept.
helper-network-back = The new network did not answer for a whole minute. The old one is back.
helper-restarts = The station restarts. Its page is back in a minute or two.
helper-shuts-down = The station shuts down. Pull the plug when its green light has stopped blinking.
helper-backed-up = The record lies on the stick: { $file }.
helper-settings = Kept. The station starts again with it; whoever is signed in signs in anew.
helper-no-stick = No stick was found. Plug one in, formatted as FAT32, exFAT or ext4.
helper-several-sticks = Several sticks are plugged in. Leave one.
helper-stick-unreadable = The stick cannot be read. Try another one.
image-no-mtools = Images need mtools: sudo apt install mtools. Without it, copy the folders by hand.
image-other = { $path }: its boot partition has no { $file }, so it is not the system that these cards are for
image-no-boot = { $path }: no image with a FAT boot partition in front; take the official one
image-not-as-named = { $path }: its SHA-256 begins with { $digits_text }, not as named; download it again
image-not-whole = { $path }: cannot be unpacked; download it again
image-no-room = { $path }: { $gigabytes } GB are needed here; choose another place
image-not-written = { $path }: not written: { $reason }
debs-none = { $path }: no package of Mosquitto for arm64 in it; the manual, page kits.toml, has the command that fills it
debs-other = { $path }: not a package for arm64; fill the folder on the cards' own system
debs-no-room = --debs: no kit in this table is the room, so nothing needs Mosquitto
kit-plan-cannot-be-read = { $path }: the plan cannot be read: { $reason }
kit-folder-not-empty = { $path }: not empty; name a new folder, since each run makes new codes
kit-wheel-not-as-listed = { $path }: not as { $file } beside it has it; leave --wheelhouse out to fetch all
kit-no-pip-wheel = { $path }: no pip wheel in it; leave --wheelhouse out to have everything fetched
kit-no-lgpio-wheel = No lgpio wheel is in the wheelhouse. Give one with --lgpio. Without it, and without python3-lgpio on the card's system, lamps, buzzer and button stay off. The file result.txt on the card says so.
update-digits-too-few = --sha256: { $count } digits are too few to be sure; give the first { $least_text }, or all
update-not-there = { $path }: not there; check the name, and whether the stick is mounted
update-not-a-wheel-name = { $file }: not the name of a wheel
update-not-whole = { $file }: not a whole wheel ({ $reason }); copy it again
update-inside-it-says = { $file }: inside it says { $name } { $wheel_version }
update-wheel-of-other = { $path }: a wheel of { $name }; name the wheel of { $wanted_name }
update-no-sums = { $path }: no { $file } in it; take the folder wheelhouse that `station kit` made, whole
update-too-many-wheels = { $path }: { $count } wheels; take the folder wheelhouse that `station kit` made
update-not-as-listed = { $path }: not as { $file } has it; copy the folder again
update-lacking = { $path }: { $wheel_file } is in { $file } but not there; copy the folder again
update-one-wanted = { $path }: { $count } wheels of { $name }; one is wanted
file-larger-mb = { $path }: larger than { $megabytes } MB; is it the right file?
update-a-link = { $path }: a link; take the file itself
update-not-a-file = { $path }: not a file; take the folder wheelhouse that `station kit` made, whole
update-bad-line = { $file }: line { $line } is not a digest and the name of a wheel
update-too-much = { $file }: more than a wheel of this station has
update-twice = { $file }: a file comes twice in it
update-outside = { $file }: { $entry_path } would not stay in its folder
update-not-as-record = { $file }: { $entry_path } is not as its RECORD has it
kit-no-wheels = This station does not hold the wheels it was installed from, so the zip has none: a card made from it alone cannot install itself. Copy the folder benchwarm/wheelhouse of an earlier card into benchwarm on each new one.
kit-read-me =
    For each bench:
    1. Write Raspberry Pi OS Lite, 64-bit, of the release "{ $release_name }" to a card.
    2. Copy what is in { $every_card_file } onto its boot partition.
    3. Copy what is in the folder of the bench (bench-1, bench-2 ...) onto the same boot partition; replace files.
    4. Put the card into the Pi and start it. What it did stands in benchwarm/result.txt on the card.

    { $labels_file } goes onto the boxes. { $secrets_file }: print it, lock it away, delete the file; the cards hold only hashes.
kit-choose-plan-too = kits.toml: line { $line }: it names the plan { $path }; choose that file as well
update-nothing-to-go-back = { $path }: its { $link_file } is not a link into { $releases_path }, so there is nothing to go back to; see hardware.md, the step that installs the station
update-no-earlier = { $path }: no earlier release is kept here
update-no-environment = no environment
update-no-pip = { $path }: no pip wheel, here or from earlier; take the whole folder that `station kit` made
update-lgpio-not-installed = lgpio not installed
reason-none-given = no reason given
update-failed-at = { $what }: { $reason }
kit-room-label = Room
kit-labels = Labels
kit-codes = Codes and passphrases
kit-lock-away = Lock this sheet away, then delete the file: the cards hold only hashes, and nobody can read the words back.
kit-head-bench = bench
kit-head-code = code
kit-head-teacher = teacher's passphrase
kit-head-technician = technician's passphrase
kit-label-number = Kit number { $number }
kit-label-wifi = Wi-Fi: { $ssid_name }
kit-label-probe = Probe { $probe_name }
kit-label-lamps = Lamps: yellow: wait · green: your turn · red: look at the page
kit-for-all = For every kit of this set, and for the room:
kit-own-passphrases = own_passphrases gives each kit its own: leave teacher_passphrase and technician_passphrase away, or own_passphrases
kit-plain-text = must be plain text without control characters or spaces around it
kit-twice = [[kit]] { $what_name } { $typed } is there twice: each bench needs its own
kit-room-twice = [[kit]] room = true is there twice: there is one room
kit-wifi-country = [[kit]] { $label_name }: Wi-Fi needs the country, for example country = "IE" at the top
file-larger-kb = { $path }: larger than { $kilobytes } kB; is it the right file?
file-not-utf-8-line = { $path }: line { $line }: not UTF-8 text; save the file as UTF-8
file-line = { $path }: line { $line }: { $reason }
update-wrong-version = the new station does not start: it says { $typed } for its version
update-worse = the new station's check finds what the old one's does not: { $finding }
update-no-answer = no answer
update-check-failed = station check of { $release_name } failed: { $reason }
update-does-not-end = the new station does not stop when asked to
update-does-not-serve = the new station does not serve a copy of this record: { $reason }
update-does-not-start = the new station does not start: { $reason }
kit-wheels-not-in-time = the wheels could not be fetched in time: check the network, and try again
kit-pip-failed = pip could not do its part ({ $step_name }): { $reason }
kit-bench-label = Bench { $number }
update-found = { $check_name }: { $found }
settings-language = the station has no words in this language; it has { $languages_text }

## command

told-record-in-memory = The record in { $path } is kept in memory: it is gone at power-off. See `station check`.
told-record-salvaged = The record was damaged: { $count } events could be read and go on; the damaged one is in { $path }.
told-backed-up = { $path }: { $count } events, checked.
check-plan-none = no plan is set: the practical of the demo
check-plan-correct = correct the plan, or take plan out of station.toml
check-read-from = read from { $path }
told-takes-seconds = This takes about { $seconds } s: the probe is read once a second.
check-settings-correct = correct that line; until then the station does not start. Below, the default settings are looked at
check-settings-none = no settings file: the defaults hold
told-no-qr = no QR code: segno is not installed; pip install segno
told-no-lamps-none = no lamps: panel.pins = "none"
told-no-lamps = no lamps: { $reason }
check-status = { $name }: { $colour ->
        [red] red
        [amber] amber
        [green] green
       *[unknown] unknown
    }
check-link-nothing = nothing to do for the bench: it works alone, and the room gets everything later
check-link-none = no room is set: the bench works alone
check-link-password-file = put the file with the password there, as station kit made it
check-link-compare = compare link.user and its password with those of the room
check-link-refuses = the broker at { $address } does not let this bench in
check-link-check = check link.broker, the network, and whether the room is switched on; the bench works alone until then
check-link-silent = the broker at { $address } does not answer
check-link-good = the broker at { $address } lets this bench in
check-room-settings = correct that line; until then the room does not start
check-room-no-mosquitto = Mosquitto is not installed
check-room-install = sudo apt install mosquitto
check-room-private = a private Mosquitto, as long as the room is at work
check-room-lets-in = the broker at { $address } lets the room in
check-room-refuses = the broker at { $address } does not let the room in
check-room-systemctl = sudo systemctl status mosquitto; compare benchwarm.passwords on the card
check-room-at-work = the room is at work; its page is on port { $port }
check-room-start = sudo systemctl start station-room, or: station room --config room.toml
check-room-not-at-work = no room is at work on port { $port }
demo-bench-name = Virtual bench
told-not-at-work = not at work: { $address } says why
told-station-serve = station serve: { $reason }
told-cannot-start = cannot start: { $reason }
export-not-for-terminal = a spreadsheet is not for a terminal: name its file with --out FILE.xlsx
export-all-needs-out = all practicals are many files: name a zip or a folder with --out FILE.zip or --out FOLDER
export-cannot-be-written = { $path }: cannot be written: { $reason }; choose another place
told-exported = { $path }: { $count } practicals.
export-is-there = { $path }: is there already; name a new folder, or a file that ends in .zip
file-not-there = { $path }: not there; check the name
told-images = Complete images, one for each card: { $path }. Write each as it is, without the writer's own settings.
told-cards = { $count } cards in { $path }: copy what is in each folder onto the boot partition of its card.
told-labels = { $path }: print it, cut it, one label on each box.
told-secrets = { $path }: print it, lock it away, delete the file.
told-room-folder = { $path }: copy it to the room's machine; there: station room --config room/room.toml
told-wheelhouse = The folder wheelhouse also updates a station: station update wheelhouse --sha256 { $digits_text }
told-mind = Mind: { $reason }
look-run-check = run station check on the Pi, and report what it says
look-check-failed = the check itself failed ({ $reason })
told-mistake = station { $command_name }: the station made a mistake ({ $fault_name }: { $reason }). What was confirmed is kept. For a report, set STATION_TRACEBACK=1 and do it again.
told-error = station { $command_name }: { $reason }
passphrase-again = The same again:
passphrase-differ = these were not the same; try again
predict-probe = probe (1/16 °C), trace
predict-thermometer-0-1 = thermometer to 0.1 °C
predict-thermometer-1 = thermometer to 1 °C
predict-mind = Mind:
predict-assumed = Assumed:
predict-mixed-once = { $in_cup } in the cup, { $added } mixed in once.
predict-portions = { $in_cup }, { $acid_mol_dm3 } mol/dm³ ({ $basis }); { $count } portions of { $added }, { $alkali_mol_dm3 } mol/dm³.
predict-resolves = With three readings on each arm this plan can measure acids of { $least_mol_dm3 } to { $most_mol_dm3 } mol/dm³.
predict-keep-from-class = Do not show this page to the class: it says what staff prepared.
predict-end-point = Expected end-point { $end_point_cm3 } cm³; readings on the arms: { $before } before, { $after } after.
predict-rise = Rise at the end-point { $rise_c } °C from { $start_c } °C.
predict-ratios-rise = Largest rise { $rise_c } °C from { $start_c } °C.
predict-head-added = added/cm³
predict-head-temperature = temperature/°C
predict-head-end-point = End-point of one repeat, cm³
predict-bias = bias
predict-refuses = refuses
predict-head-comparison = What weaker solutions cost and better glassware buys (probe, one repeat), cm³
predict-strengths = acid { $acid_mol_dm3 }, alkali { $alkali_mol_dm3 } mol/dm³
predict-strengths-rise = acid { $acid_mol_dm3 }, alkali { $alkali_mol_dm3 } mol/dm³: rise { $rise_c } °C
predict-as-in-plan = * as in the plan
predict-change = Expected change { $change_c } °C from { $start_c } °C; { $enthalpy_kj_mol } kJ/mol ({ $of }, { $amount_mol } mol).
predict-head-time = time/s
predict-one-repeat = One repeat
predict-about-minutes = About { $minutes } minutes at the bench ({ $parts_text }).
told-prepared = { $path }: preparation for { $count } benches, to print.
stock-write-it = --stock { $typed }: write it as NAME=MOL_DM3, for example nitric acid=2.0
stock-out-of-range = --stock { $typed }: mol/dm³ must be above 0 and at most 20
stock-wrong = --stock { $typed }: { $reason }
sheet-title = { $practical_name }: { $count } benches
sheet-label-of = { $of }: { $hazards }
rehearse-wants-passphrase = the room at { $address } wants a passphrase: put it into a file, and add --passphrase-file FILE
rehearse-passphrase-wrong = the room at { $address } does not accept this passphrase: correct the line in the file
rehearse-label = Rehearsal
rehearse-open = { $count ->
        [one] Open { $address } in a browser: 1 bench, { $speed } times as fast.
       *[other] Open { $address } in a browser: { $count } benches, { $speed } times as fast.
    }
rehearse-all-finished = All benches have finished.
rehearse-stays-open = The room stays open; Ctrl-C ends the rehearsal.
rehearse-ended-too-soon = some benches of the rehearsal ended too soon; see above
rehearse-no-result = Class result: held back, or nothing has ended.
rehearse-no-answer = the room at { $address } does not answer any more
rehearse-would-not = the room at { $address } would not: { $reason }
replay-no-samples = { $path }: line 1: no samples to replay; a record CSV has a column time_s
told-restored = { $path }: { $count } events are back.
told-restored-aside = The record that was there lies in { $path }.
told-benches-send-to = Benches send to { $address }.
announce-found = The room is found as { $address } on this network.
announce-taken = Another machine on this network is { $host_name } already: this room is found as { $own_name }. To tell two rooms apart, give each a prefix in room.toml.
announce-not = The room cannot be found by its name here: { $reason }. Use its address instead.
told-made-a-mistake = the station made a mistake ({ $fault_name }: { $reason })
settings-one-code = set bench_code or bench_code_hash, not both
settings-user-letters = letters, digits, '-', '_' or '.', at most 40
settings-user-missing = user: missing; add the name by which the broker knows this bench
settings-one-password = Give the password in link.password or in link.password_file, not in both.
new-bench-other-broker = This room uses the broker { $address }: make the bench’s user there. `station kit` writes its files.
new-bench-no-name = { $typed } cannot be a bench’s name: use letters, digits and hyphens, such as bench-3.
new-bench-taken = { $user_name } is let in already, and its password is in that bench’s settings. For another bench choose another name; --new-password gives this one a new password.
file-not-utf-8-byte = { $path }: not UTF-8 text (byte { $byte }); save it as UTF-8
file-problem = { $path }: { $reason }
told-open = Open { $address } in a browser. Ctrl-C ends.
told-record-kept = The record is kept in { $path } meanwhile.
told-alkali = alkali at { $temperature_c } °C
told-repeat-begun = repeat { $repeat }: acid in the cup
told-portion-in = portion { $portion } is in ({ $volume_cm3 } cm³)
told-probe-lost = the probe gives no reading ({ $reason })
told-probe-found = the probe is back
told-repeat-ended = repeat { $repeat } has ended
told-practical-ended = the practical has ended
told-no-end-point = { $method }: no end-point. { $reason }
told-end-point = { $method }: { $end_point_cm3 } ± { $u_cm3 } cm³ (95 %: { $low_cm3 } to { $high_cm3 } cm³)
told-start = start
update-name-a-wheel = name a wheel or a folder of wheels; or --back alone, to go back to the version before
update-run-with-sudo = { $path }: may not be written; run it with sudo
told-installing = installing benchwarm { $new_version } beside { $old_version }; this takes some minutes
told-next = { $path }: benchwarm { $new_version } is next. No service runs here: start the station anew yourself.
told-unit-differs = Mind: { $file } of this version differs from the one in { $path }; compare and copy it by hand.
told-updated = { $path }: benchwarm { $new_version } is at work. Back to the one before: station update --back
told-back = { $path }: back to { $release_name }.
update-rolled-back = { $release_name } did not come up within { $seconds } s; { $before_name } is at work again
update-rolled-back-down = { $release_name } did not come up within { $seconds } s; { $before_name } does not come up either; journalctl -u station says why
update-nothing-installed-yet = benchwarm { $new_version }, SHA-256 { $digest_text }: nothing is installed yet. Compare this with what whoever made the wheels told you by another way than the stick; if it is the same, add --sha256 and its first 16 digits
update-another-digest = these wheels have another SHA-256 ({ $digest_text }): do not install them
update-practical-under-way = a practical is under way; wait until it has ended, or add --now (it would go on afterwards)
wipe-add-yes = { $path }: add --yes to delete this record for good; `station backup` keeps a copy first
told-register-stays = The probe register stays ({ $count } checks); --register deletes it too.
told-wiped = { $path }: the record is deleted. Backups that lie elsewhere stay.
result-mean-of-repeats = mean of the repeats
portion-number = portion { $portion }
result-repeat = repeat { $repeat }
result-none = no result: { $reason }
result-no-reason = no reason was given
result-change =
    { $way ->
        [in] { $change_c } ± { $u_c } °C (95 %: { $low_c } to { $high_c } °C); heat taken in { $heat_j } ± { $u_heat_j } J
       *[out] { $change_c } ± { $u_c } °C (95 %: { $low_c } to { $high_c } °C); heat given out { $heat_j } ± { $u_heat_j } J
    }
result-end-point = { $end_point_cm3 } ± { $u_cm3 } cm³ (95 %: { $low_cm3 } to { $high_cm3 } cm³)
result-enthalpy = { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-enthalpy-of = enthalpy change per mole of { $of } { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-acid = acid { $acid_mol_dm3 } ± { $u_mol_dm3 } mol/dm³
result-quantity = { $quantity } { $value } ± { $u } { $unit }
bench-label = Bench
told-figure = { $figure }
told-address = { $name }: { $address }
passphrase-ask = Passphrase:
check-colour = { $colour ->
        [red] red
        [amber] amber
        [green] green
       *[unknown] unknown
    }
predict-part = { $part ->
        [start] start
        [portions] portions
        [recording] recording
       *[rinsing] rinsing
    } { $minutes }
predict-bias-c = bias/°C
predict-one-sd = 1 sd
sheet-strength = { $mol_dm3 } mol/dm³
sheet-minutes = { $minutes } min
replay-temperature = { $temperature_c } °C
replay-kind = { $kind ->
        [repeat_begun] repeat begun
        [portion_added] portion added
        [prompt] prompt
        [settled] settled
        [taken] taken
        [question_asked] question asked
        [portion_unsure] portion unsure
        [probe_lost] probe lost
        [probe_found] probe found
        [resumed] resumed
        [repeat_ended] repeat ended
        [practical_ended] practical ended
       *[other] { $kind }
    }
sheet-lesson = { $lesson }:

### Words that only the page says: their ids begin with page-.

## The bench: its numbers, and how fresh they are

page-manual = Manual
page-station = Bench station
page-connecting = Connecting to the station …
page-virtual-cup = virtual cup
page-from-room = to look at only; back to the room
page-speed = { $factor } × faster
page-silent = Nothing heard from the station for more than 3 seconds. What you see may be out of date.
page-lost = No contact with the station. Look at the bench itself; this page catches up by itself.
page-finished = Done
page-ready-tag = Ready
page-paused-tag = Paused
page-practical = { $acid } in the cup; { $alkali } ({ $concentration } mol/dm³) in { $portion } cm³ portions
page-practical-once = { $liquid } in the cup; { $addition } all at once
page-temperature = temperature
page-no-temperature = no reading yet
page-celsius = { $temperature } °C

# `now` is less than two seconds ago.
page-age =
    { $unit ->
        [now] measured just now
        [s] measured { $count } s ago
        [min] measured { $count } min ago
       *[h] measured { $count } h ago
    }
page-frozen =
    { $unit ->
        [min] not live: { $count } min old
        [h] not live: { $count } h old
       *[s] not live: { $count } s old
    }
page-total-added = total added
page-added = added
page-added-mass = { $mass } g
page-volume = { $volume } cm³
page-repeat-of = repeat { $repeat } of { $planned }
page-portion-of = portion { $portion } of { $planned }
page-time-left = time left
page-left-now = any moment
page-left = about { $seconds } s
page-left-unknown = not known yet
page-settling = waiting for the temperature to settle
page-probe =
    { $which ->
        [ok] { "" }
        [none] { "" }
        [failing] Some readings fail. Check the probe’s plug.
       *[lost] The probe does not answer. Check that it is plugged in; the practical goes on when it is back.
    }
page-bad =
    { $which ->
        [empty] no answer
        [crc] garbled
        [zeros] short circuit on the data wire
        [garbled] garbled
        [power_on] the probe lost its power
        [out_of_range] out of range
        [jump] an impossible jump
        [gone] the probe is unplugged
        [several] several probes are plugged in
        [other_probe] another probe than before is plugged in
        [not_read] the station could not read it
        [no_answer] no answer in time
       *[other] { $which }
    }
page-in-memory = Results are not being saved: they are gone when the power is cut. Call your teacher.
page-fault = Nothing can be recorded just now. Call your teacher. ({ $reason })
page-question = A question
page-question-later = Later
page-question-again = A question waits: answer it
page-more-questions =
    { $more ->
        [one] one more question after this
       *[other] { $more } more questions after this
    }
page-sending = Sending …
page-unanswered = The station did not answer, so this may or may not be recorded. Press again: it is never counted twice.
page-close = Close
page-less-than = less than { $amount }

## Charts: titles, axes, legends

page-volume-chart = Temperature against volume added
page-time-chart =
    { $portion ->
        [0] Before portion 1
       *[other] Since portion { $portion }
    }
page-live-now = Now
page-live-mixed = Since the mixing
page-live-unmixed = Before the mixing
page-live-time-axis = time / s
page-live-band = settled if it stays here
page-live-text-none = There is no temperature to draw yet.
page-live-text = The temperature is { $temperature } °C now.
page-live-text-band = The temperature is { $temperature } °C now; to be settled it has to stay between { $low } and { $high } °C.
page-live-text-settled = The temperature settled at { $settled } °C and is { $temperature } °C now.
page-temperature-axis = temperature / °C
page-volume-axis = volume of alkali added / cm³
page-repeat-name = repeat { $repeat }
page-mean = mean
page-line-before = line before
page-line-after = line after
page-settled-at = settled at { $temperature } °C
page-volume-chart-text =
    { $points ->
        [0] No readings yet.
       *[other] { $points } readings; the table below gives them all.
    }

## Results: the two end-points, and remarks

page-answer-title = The answer
page-answer-own-acid = You read { $volume } cm³, so the acid is <concentration>{ $concentration } mol/dm³</concentration>.
page-answer-own-volume = You read { $volume } cm³ as the <neutralisation>neutralisation volume</neutralisation>.
page-answer-own-change = You read a change of { $change } °C.
page-answer-best-acid = The best computed value is { $value }.
page-answer-best-volume = The best computed neutralisation volume is { $volume } <uncertainty>±</uncertainty> { $u } cm³.
page-answer-best-change = The best computed change is { $change } <uncertainty>±</uncertainty> { $u } °C.
page-answer-best-enthalpy = The best computed change is { $change } ± { $u } °C, so the enthalpy change per mole of { $of } is { $enthalpy }.
page-answer-bottle = The bottle was made up to { $concentration } mol/dm³.
page-answer-reaction = <neutralisation>Neutralisation</neutralisation>: { $equation_text }
page-worth-heat = The <heat-balance>heat balance</heat-balance> is worth more here. It allows for the growing volume in the cup and for heat lost to the room. Straight lines leave both out.
page-worth-heat-once = The <heat-balance>heat balance</heat-balance> is worth more here. It allows for heat lost to the room while everything mixes. Extended lines only estimate that.
page-worth-lines = The straight lines are worth more here. The <heat-balance>heat balance</heat-balance> does not fit your data well.
page-differ-title = How the two methods differ
page-differ-lines = Straight lines: one <best-fit>line of best fit</best-fit> goes through the readings before the turn, one through those after it. You read the volume where they cross. This treats both arms as straight.
page-differ-heat = <heat-balance>Heat balance</heat-balance>: the station follows the heat through the whole practical. The reaction is <exothermic>exothermic</exothermic>: its heat warms the liquid and the cup; some escapes to the room. The <end-point>end-point</end-point> is the volume that fits all temperatures best.
page-more-about = more
page-by-straight-lines = Where the straight lines cross
page-by-heat-balance = <heat-balance>Heat balance</heat-balance> of the whole trace
page-end-point = { $volume } cm³
page-plus-minus = standard <uncertainty>uncertainty</uncertainty> { $u } cm³
page-interval = Probably between { $low } and { $high } cm³ (19 times in 20)
page-scatter-only = This range covers only the scatter of your points.
page-scatter-bias =
    Lines through uncorrected readings are expected to cross about { $bias } cm³ too { $side ->
        [low] low
       *[high] high
    } here.
page-heat-balance-knows = Allows for the growing volume, the loss to the room and the probe’s lag.
page-not-described = The fit does not match your data well: do not rely on this value yet.
page-refused = The lines give no crossing. { $reason }
page-refused-heat = No heat balance. { $reason }
page-remarks = Check this
page-in-repeat = Repeat { $repeat }

# `earlier` is a list with commas.
page-in-repeats = Repeats { $earlier } and { $last }
page-remark-of = { $where }: { $remark }

## Everything mixed at once

page-once-chart = Temperature against time
page-since-repeat-axis = time since the start of the repeat / s
page-mixed = mixed
page-once-chart-none = No temperatures yet.
page-once-chart-text =
    The temperature over time of { $repeats } { $repeats ->
        [one] repeat
       *[other] repeats
    }; the table below gives the numbers.
page-once-chart-text-change =
    The temperature over time of { $repeats } { $repeats ->
        [one] repeat
       *[other] repeats
    }, with both lines { $change } apart at the moment of mixing; numbers in the table below.
page-line-read-off = straight line
page-line-extended = extended to the moment of mixing
page-by-extended-lines = Extended straight lines
page-change = { $change } °C
page-change-interval = Probably between { $low } and { $high } °C (19 times in 20)
page-change-plus-minus = standard <uncertainty>uncertainty</uncertainty> { $u } °C
page-heat =
    { $way ->
        [in] heat taken in
       *[out] heat given out
    }
page-joules = { $heat } J
page-joules-plus-minus = standard uncertainty { $u } J
page-enthalpy-of = enthalpy change per <mole>mole</mole> of { $what }
page-enthalpy = { $enthalpy } kJ/mol
page-enthalpy-plus-minus = standard uncertainty { $u } kJ/mol
page-lines-know = This range covers only the scatter of your readings.
page-lines-know-shift = A slow cup wall, or a reaction that goes on, shifts the lines by more.
page-lines-know-bias =
    Lines drawn like this are expected to show a change about { $bias } °C too { $side ->
        [large] large
       *[small] small
    } here.
page-heat-once-knows = Allows for the loss to the room, the probe’s lag and the time that mixing takes.
page-added-unknown = Nobody measured how warm the { $name } was: the ± of the heat allows for that.
page-refused-change = The lines give no change of temperature. { $reason }

## The table of readings

page-table = Readings
page-table-volume = volume added / cm³
page-table-repeat = repeat { $repeat } / °C
page-table-mean = <mean>mean</mean> / °C
page-once-table = Numbers of each repeat / °C
page-quantity = temperature
page-rows-start = start
page-rows-before = line before
page-rows-after = line after
page-rows-change = change, lines
page-rows-heat-change = change, heat balance
page-rows-end = end
page-missing = –
page-no-reading = no reading
page-at-volume = at { $volume } cm³
page-not-settled = not settled
page-not-sure = not sure
page-set-aside = Repeat { $repeat } was set aside.
page-set-aside-why = Repeat { $repeat } was set aside: { $reason }.
page-added-at = { $name } before the start: { $temperature } °C.

## Corrections

page-corrections = Change, pause or finish
page-corrections-short = Change
page-corrections-close = Close
page-portion = portion { $portion }
page-whole = the { $name }

# `what` is a portion or what is mixed in, `added` the name of what is added.
page-correction-name =
    { $name ->
        [more] We added more portions
        [reading] Correct a typed reading
        [thermometer] Use the probe again
        [repeat_set_aside] Leave a repeat out
        [repeat_restored] Let a repeat count again
        [note] Notes
        [group] Label of your group
        [adopt] Use another group’s readings
        [adopt_returned] Back to your own readings
        [portion_added] { $what } is already in
        [portion_undone] { $what } was not added
        [portion_volume] Another volume went in
        [portion_unsure] Not sure what went in
        [repeat_restarted] Start this repeat again
        [alkali_temperature] Temperature of the { $added }
        [pause] Pause
        [resume] Go on
        [finish] Finish the practical
        [finish_undone] Undo the finish and go on
        [begin] Begin
        [rinsed] The cup is rinsed
       *[other] { $name }
    }
page-ask-portion-added = Record that { $what } is already in the cup?
page-ask-portion-undone = Undo { $what }? Only if it never went into the cup. The record will show this.
page-ask-repeat-restarted = Repeat { $repeat } is set aside and you start it again. Why?
page-ask-finish = Finish now? The repeat under way ends here and nothing more can be added.
page-ask-finish-before-turn = Finish now? The temperature has not turned yet, so you cannot read an end-point off these readings.
page-ask-finish-go-on = No, go on
page-ask-finish-undone = Go on measuring? What you recorded stays.
page-yes =
    { $which ->
        [portion_added] Yes, it is in
        [portion_undone] Yes, take it back
        [portion_volume] Record this volume
        [portion_unsure] Mark as not sure
        [repeat_restarted] Yes, start again
        [finish] Yes, finish
        [finish_undone] Yes, go on
        [alkali_temperature] Record this temperature
       *[other] { $which }
    }
page-no = No, leave it
page-which-portion = Which portion?
page-which-repeat = Which repeat?
page-portion-name = repeat { $repeat }, portion { $portion } ({ $volume } cm³)
page-once-name = repeat { $repeat } ({ $volume } cm³)
page-not-anumber = Type a number, such as 4.5
page-real-volume = Volume that went in / cm³
page-added-temperature = Temperature of the { $added } / °C
page-measure-with-probe = Measure it with the probe
page-alkali = alkali
page-reason =
    { $reason ->
        [spilled] spilled
        [lost-count-of-the-portions] lost count of the portions
        [the-probe-was-out-of-the-cup] the probe was out of the cup
        [wrong-volume-in-the-cup] wrong volume in the cup
        [added-at-the-wrong-moment] added at the wrong moment
        [wrong-amounts] wrong amounts
        [too-few-readings] too few readings
        [the-readings-scatter-too-much] the readings scatter too much
        [differs-from-the-other-repeat] differs from the other repeat
        [lines-drawn-on-paper] lines drawn on paper
        [read-off-the-points] read off the points
        [read-in-another-way] read in another way
       *[the-temperature-has-not-turned] the temperature has not turned
    }
page-choose-reason = Choose a reason
page-other-reason = another reason
page-reason-label = Reason
page-reason-text = In your own words

## Around the instruction: menu, sound, code, typed readings

page-doing-not-fetched = This part could not be loaded.
page-doing-fetch-again = Try again
page-doing-menu = Menu
page-doing-menu-of = Views of this page
page-doing-places =
    { $which ->
        [bench] The bench
        [guide] Guide and hazards
        [record] Record to print
        [big] Big numbers for the projector
       *[settings] Settings
    }
page-doing-to-bench = Back to the bench
page-doing-sound =
    { $which ->
        [undecided] Turn sound on
        [off] Turn sound on
        [on] Turn sound off
       *[asleep] Wake the sound
    }
page-doing-sound-offer = A tone can tell you when there is something to do.
page-doing-sound-without = No sound
page-doing-pressed-early = Your press was seen. The button had just changed: read it, then press again.
page-doing-may-be-old = Not up to date
page-doing-at-the-cup = At the cup press the bench button. Keep phones dry.
page-doing-dry-hands = Touch this page with clean, dry hands only.
page-doing-guide-first = Guide: what is in the cup, hazards
page-doing-divisions = Your thermometer
page-doing-scale = { $digital ->
    [true] Digital, last digit / °C
   *[false] Lines on its scale every / °C
}
page-doing-without = Go on without it
page-doing-go-on-measuring = Go on measuring
page-doing-division-of = { $division } °C
page-doing-go-on-typing = Go on with your own thermometer
page-doing-use-thermometer = Use it
page-clock-wait = read in { $seconds } s
page-clock-now = read now
page-clock-temperature = Temperature at { $minutes } / °C
page-amount-taken = { $what ->
        [mass] Mass really weighed / g
       *[volume] Volume really taken / cm³
    }
page-amount-as-planned = as planned
page-amount-wrong = Type a number like { $example }, or leave the field empty.
page-doing-typed-temperature = Temperature / °C
page-doing-record = Record
page-doing-not-anumber = Type a temperature, such as 21.5
page-doing-out-of-range = Only { $low } to { $high } °C can be recorded.
page-doing-too-fine = At best it shows { $near } °C. Press again to keep yours.
page-doing-far-off =
    That is { $change } °C { $side ->
        [above] above
       *[below] below
    } the last one. Press again if it is right.
page-doing-last-reading = last reading
page-doing-added-unread = Portion { $portion } is in, no reading taken
page-doing-to-reading = Now your own reading
page-doing-to-lines = Now draw your lines
page-doing-to-results = To the results
page-doing-to-record = Your record
page-doing-code-title = The code of this bench
page-doing-code-why = It stands on the bench’s label. With it this device operates the bench.
page-doing-code = Code
page-doing-give-code = Send
page-doing-leave-code = Not now
page-doing-no-answer = The station did not answer. Try again.

## The guide: before the start, and clearing up

page-guide-title = Before you start
page-guide-in-cup = In the cup
page-guide-added = You add
page-guide-strength = { $concentration } mol/dm³
page-guide-assumed = You are to find the <concentration>concentration</concentration>. Hazards are those of { $concentration } mol/dm³.
page-guide-no-pictogram = No hazard pictogram at this concentration.
page-guide-basis = Where this comes from
page-guide-how = How it goes
page-guide-steps =
    { $which ->
        [fill] Fill the cup. Probe in.
        [lid] Lid on.
        [pour] Add a portion.
        [stir] Stir, wait for the station.
       *[rinse] After the last portion: rinse, then once more.
    }
page-guide-cautions = Take care
page-guide-clearing-up = Clearing up
page-guide-pictograms =
    { $which ->
        [GHS02] Flammable
        [GHS03] Oxidising
        [GHS05] Corrosive
        [GHS06] Toxic
        [GHS07] Harmful or irritant
        [GHS08] Serious health hazard
        [GHS09] Dangerous for the environment
       *[other] { $which }
    }

## What went wrong: doubts, further portions, notes, the group's label

page-mistakes-groups =
    { $which ->
        [portions] A portion
        [repeat] This repeat
        [practical] The practical
       *[group] Your group
    }
page-mistakes-doubt-title = Portion { $portion }: what happened?
page-mistakes-doubt-title-once = What happened?
page-mistakes-doubts =
    { $which ->
        [spilled] Spilled
        [stirred-late] Stirred late
       *[lid-off] Lid was off
    }
page-mistakes-in-doubt = Portion { $portion } is marked as not sure.
page-mistakes-in-doubt-why = Portion { $portion } is marked as not sure: { $reason }.
page-mistakes-in-doubt-once = Marked as not sure.
page-mistakes-in-doubt-once-why = Marked as not sure: { $reason }.
page-mistakes-sure = Take this back
page-mistakes-other-doubt = In your own words (can stay empty)
page-doubt-title = Check this
page-doubt-of = repeat { $repeat }: { $note }
page-doubt-other-volume = It was another volume
page-doubt-leave-out = Leave repeat { $repeat } out
page-doubt-right = It was right
page-doubt-parted = Repeats { $first } and { $second } differ by up to { $apart } °C from portion { $portion } on. Look for an <anomalous>anomalous</anomalous> reading before you use their <mean>mean</mean>.
page-mistakes-one-more = Do one more repeat
page-mistakes-more-title = How many portions are in the cup now?
page-mistakes-quick-volume = The volume that went in: one tap
page-mistakes-volume-of = { $volume } cm³
page-mistakes-as-planned = { $volume } cm³, as planned
page-mistakes-which-reading = Which reading?
page-mistakes-clock-reading = repeat { $repeat }, { $minutes }: { $temperature } °C
page-mistakes-reading-name =
    { $portion ->
        [0] repeat { $repeat }, start: { $temperature } °C
       *[other] repeat { $repeat }, portion { $portion }: { $temperature } °C
    }
page-mistakes-right-reading = What the thermometer said / °C
page-mistakes-set-aside-why = It stays in the record and can count again later. Why?
page-mistakes-set-aside = Leave it out
page-mistakes-restore-why = Which repeat counts again?
page-mistakes-restore-name = Repeat { $repeat }
page-mistakes-restore-name-why = Repeat { $repeat } (left out: { $reason })
page-mistakes-note-text = New note
page-mistakes-note-about = About
page-mistakes-about-all = the whole practical
page-mistakes-note-keep = Keep this note
page-mistakes-note-withdraw = Withdraw
page-mistakes-note-of = { $about }: { $text }
page-mistakes-note-withdrawn = withdrawn
page-mistakes-group-label = Label, such as Group 4. No names.
page-mistakes-group-keep = Use this label
page-mistakes-back = Back

## Words that explain themselves: marked in the texts of students, opened by a press.

page-glossary-word =
    { $which ->
        [neutralisation] neutralisation
        [end-point] end-point
        [best-fit] line of best fit
        [uncertainty] ± (uncertainty)
        [mean] mean
        [anomalous] anomalous
        [exothermic] exothermic
        [concentration] concentration
        [mole] mole
       *[heat-balance] heat balance
    }
page-glossary-means =
    { $which ->
        [neutralisation] Acid and alkali react and form water and a salt. When neither is left over, the mixture is neutral.
        [end-point] The volume of alkali that just uses up all the acid. What is added after it only cools the cup.
        [best-fit] A straight line drawn as close to all its points as possible. About as many points lie above it as below.
        [uncertainty] How far a result may be from the true value. About two out of three results lie within ± of it.
        [mean] Add all values and divide by how many there are. It is also called the average.
        [anomalous] A reading is anomalous if it does not fit the pattern of the others. Look for its cause before you leave it out.
        [exothermic] An exothermic reaction gives out heat. Its surroundings get warmer.
        [concentration] How much of a substance is dissolved in each dm³ of solution. It is measured in mol/dm³.
        [mole] A counting unit for particles, like a dozen for eggs. One mole is 6.02 × 10²³ particles.
       *[heat-balance] A calculation that follows all the heat: what is given out, what warms the cup, what is lost. It uses every temperature measured.
    }
page-glossary = A word and what it means
page-glossary-close = Close the explanation

## Settings of a device, and what staff may do

page-settings-title = Settings of this device
page-settings-language = Language
page-settings-as-station = as the station ({ $name })
page-settings-as-browser = as this browser
page-settings-units = Units
page-settings-sound = Sound
page-settings-sound-why = A short tone when there is something to do. A browser sounds only after a tap on this page.
page-settings-who = Who operates the bench
page-settings-room = The room
page-settings-role =
    { $which ->
        [looker] This device may look. The first press asks for the code on the bench’s label.
        [bench] This device operates the bench.
        [teacher] Signed in as teacher.
       *[technician] Signed in as technician.
    }
page-settings-sign-out = Sign out
page-settings-staff = Staff sign in
page-settings-no-passphrase = No passphrase is set
page-settings-set-passphrase = So nobody can sign in as staff here. Whoever looks after the station runs “station passphrase teacher”. The line that it prints goes under [access] in station.toml, or for a room in room.toml. Then restart. Cards made by “station kit” have passphrases from the start.
page-settings-staff-role = Role
page-settings-roles =
    { $which ->
        [teacher] Teacher
       *[technician] Technician
    }
page-settings-passphrase = Passphrase
page-settings-sign-in = Sign in
page-settings-recover-title = The code is lost?
page-settings-recover-why = Hold the bench button for 6 seconds, let go, then press here within a minute.
page-settings-recover = Operate this bench without the code
page-settings-staff-title = For staff
page-settings-show-results = Show the results
page-settings-hide-results = Hold the results back
page-settings-bottle = The bottle was made up to / mol/dm³
page-settings-bottle-show = Show this with the results
page-settings-bottle-why = Groups then see it beside their answer. Until you press, nobody but staff can see it.
page-settings-bottle-wrong = Type a concentration above 0 mol/dm³.
page-settings-results-shown = The results can be seen.
page-settings-results-held = The results are held back.
page-settings-quiet = Silence the buzzer
page-settings-loud = Let the buzzer sound
page-settings-is-quiet = The buzzer is silent.
page-settings-is-loud = The buzzer sounds.
page-settings-rename = Rename
page-settings-bench-name = Name of the bench
page-settings-pages =
    { $which ->
        [plan] Plan and begin a practical
        [prepare] Prepare
        [checks] Probe checks
       *[kit] This kit
    }
page-settings-set-aside = Set a repeat aside
page-settings-set-aside-now = Set aside
page-settings-restore = Let repeat { $repeat } count again
page-settings-restore-why = Let repeat { $repeat } count again (set aside: { $reason })
page-settings-pause = Pause this bench: only staff let it go on
page-settings-resume = Let this bench go on
page-settings-done = Done.

## The curve, and reading one point of it

page-seeing-views = What the curve shows
page-seeing-single-repeats = Show the single repeats
page-seeing-against-volume = against volume
page-seeing-against-time = against time
page-seeing-which-repeat = Which repeat?
page-seeing-trace-chart = Repeat { $repeat }: temperature against time
page-seeing-trace-text =
    The whole trace of { $minutes } minutes; { $portions } { $portions ->
        [one] portion
       *[other] portions
    } went in; the table below gives the settled readings.
page-seeing-loading = Loading …
page-seeing-pour = portion went in (its number)
page-seeing-settled-reading = settled reading
page-seeing-unsettled-reading = reading, not settled
page-seeing-whole-trace = every sample
page-seeing-read-point = Read a point of the curve
page-seeing-hint = Touch the curve, or use the arrow keys, to read a point.
page-seeing-at-start = start: { $volume } cm³
page-seeing-at-portion = portion { $portion }: { $volume } cm³
page-seeing-mean = mean { $temperature } °C
page-seeing-repeat = repeat { $repeat } { $temperature } °C
page-seeing-own-volume = { $value } (at { $volume } cm³)
page-seeing-moment =
    { $time }: { $temperature } °C, { $portion ->
        [0] before the first portion
       *[other] { $since } s after portion { $portion }
    }
page-seeing-moment-once-before = { $time }: { $temperature } °C, repeat { $repeat }, before the mixing
page-seeing-moment-once = { $time }: { $temperature } °C, repeat { $repeat }, { $since } s after the mixing
page-seeing-unsure-why = not sure: { $reason }
page-seeing-typed = typed

## The curve that the group expects

page-sketch-title = Your prediction
page-sketch-task = Draw with finger or mouse, from left to right. With the keyboard: ← and → choose a volume, ↑ and ↓ set its temperature.
page-sketch-drawing = Drawing of your prediction
page-sketch-at = { $volume } cm³: { $temperature } °C
page-sketch-at-none = { $volume } cm³: nothing drawn yet
page-sketch-keep = This is our prediction
page-sketch-clear = Clear
page-sketch-draw = Draw it
page-sketch-first = Draw your prediction
page-sketch-again = Draw your prediction again
page-sketch-legend = your prediction
page-sketch-question = Where does the measured curve leave your prediction, and why?

## The students' own lines and reading

page-own-lines-title = Your own lines first
page-own-lines-task = Draw two straight <best-fit>lines of best fit</best-fit>: one through the readings that rise, one through those that fall. Drag the handles, or choose one and use the arrow keys.
page-own-lines-task-falling = Draw two straight <best-fit>lines of best fit</best-fit>: one through the readings before the turn, one through those after it. Drag the handles, or choose one and use the arrow keys.
page-own-lines-chart = Mean readings with your two lines
page-own-lines-chart-text = { $points } mean readings and two straight lines that you place.
page-own-lines-handle =
    { $side ->
        [before] line before
       *[after] line after
    }, handle at { $volume } cm³
page-own-lines-handle-at = { $temperature } °C
page-own-lines-crossing = neutralisation volume { $volume } cm³
page-own-lines-no-crossing = Your lines do not cross on the graph yet.
page-own-lines-type = Type the lines instead
page-own-lines-field =
    { $side ->
        [before] line before
       *[after] line after
    } at { $volume } cm³: temperature / °C
page-own-lines-own = Our neutralisation volume / cm³
page-own-lines-from-crossing = Taken from where your lines cross. You may type your own.
page-own-lines-use-crossing = Take it from the crossing again
page-own-lines-not-avolume = Type a volume between 0 and { $most } cm³.
page-own-lines-ask = Is { $reading } your reading?
page-own-lines-ask-without = You give { $reading } without two lines that cross. How did you read it?
page-own-lines-ask-yes = Yes, this is our reading
page-own-lines-ask-no = Not yet
page-own-lines-commit = This is our reading
page-own-lines-commit-now = It cannot be changed once results are shown.
page-own-lines-commit-wait = You can change it until your teacher shows the results.
page-own-lines-nothing = We could not read anything
page-own-lines-nothing-ask = Why could you not read anything? It is recorded, and the results may follow at once.
page-own-lines-nothing-yes = Yes, we could not
page-own-lines-committed = Your reading: { $volume } cm³
page-own-lines-committed-change = Your reading: { $change } °C
page-own-lines-committed-nothing = You noted that you could not read anything.
page-own-lines-committed-nothing-why = You noted that you could not read anything: { $reason }.
page-own-lines-change = Change our reading
page-own-lines-legend-before = your line before
page-own-lines-legend-after = your line after
page-own-lines-legend-mean = mean reading
page-own-lines-once-title = Your own reading first
page-own-lines-once-task = Read it off the curve: extend the line before and the line after to the moment of mixing. How far apart are they there?
page-own-lines-once-own = Our change of temperature / °C
page-own-lines-once-sign = A rise has a plus sign, a fall a minus sign.
page-own-lines-not-achange = Type a number of degrees, like +6.2 or −3.5.
page-own-lines-waits =
    { $which ->
        [end] Results come when the practical is done and you have made your own reading.
        [own-reading] Results come after your own reading.
       *[staff] Results come when your teacher shows them.
    }
page-own-lines-waits-end-first =
    { $which ->
        [at-once] Results come when the first repeat is done.
        [after-own-reading] Results come when the practical is done and you have made your own reading.
       *[when-shown] Results come when your teacher shows them.
    }
page-own-lines-computing = The station is working the results out …
page-own-lines-compared = Your reading and the computed ones
page-own-lines-you = your lines
page-own-lines-you-typed = your reading
page-own-lines-lines = computed straight lines
page-own-lines-lines-once = extended lines, computed
page-own-lines-heat = heat balance
page-own-lines-own-volume = { $volume } cm³
page-own-lines-own-change = { $change } °C
page-own-lines-same = the same as yours
page-own-lines-off =
    yours is { $apart } cm³ { $side ->
        [more] more
       *[less] less
    }
page-own-lines-off-change =
    yours is { $apart } °C { $side ->
        [higher] higher
       *[lower] lower
    }
page-own-lines-which = reading
page-own-lines-value = value
page-own-lines-how-far = difference from yours

## Why the two end-points differ

page-why-open = Why do the two end-points differ?
page-why-open-low = Why do straight lines come out low?
page-why-chart = The explanation as a chart
page-why-with-mean = Shown with the mean of your own readings.
page-why-with-repeat = Shown with your own readings of repeat { $repeat }.
page-why-step = Step { $step } of { $of }
page-why-back = Back
page-why-next = Next
page-why-done = Done
page-why-again = Read the explanation again
page-why-not-possible = There is no corrected curve of these readings, so it is told in words only.
page-why-names =
    { $which ->
        [0] Two straight lines
        [1] More and more liquid
        [2] So the arms bend
        [3] The same liquid for every portion
       *[4] Where it really turns
    }
page-why-measured = your readings
page-why-corrected = readings with the same liquid for every portion
page-why-liquid = liquid in the cup
page-why-liquid-at = { $liquid } cm³
page-why-change = { $change } °C
page-why-crossing-name = crossing
page-why-heat-name = heat balance
page-why-two = The two <best-fit>lines of best fit</best-fit> through your readings cross at { $crossing }. A line of best fit takes for granted that the readings really lie on a straight line. Do they?
page-why-more = Portion { $first } had { $firstLiquid } cm³ of liquid to warm and changed it by { $firstChange } °C. Portion { $last } had { $lastLiquid } cm³ and changed it by { $lastChange } °C. Each gave out about the same heat, but there was more and more liquid for it to warm. The room, and portions that are cooler than the cup, take a share too.
page-why-more-words = Each portion before the end-point gives out about the same heat. But there is more and more liquid in the cup for it to warm. So each portion changes the temperature by less than the one before.
page-why-bend = So the first arm gets flatter and flatter: it is bent. The second arm is bent too: each further portion has more liquid to cool. A straight line cannot follow. Drawn on to the heat balance’s end-point, the first line is already { $above } °C beyond the second one: the lines have met before they got there.
page-why-bend-words = So the first arm gets flatter and flatter: it is bent. The second arm is bent too: each further portion has more liquid to cool. Straight lines drawn through bent arms and on towards each other meet too early.
page-why-same = Now imagine a cup that holds { $liquid } cm³ all the time and loses no heat to the room. Every portion comes in as warm as the cup. Your readings move: before the end-point every portion now changes the temperature by the same amount, after it nothing changes any more. The curve is straight.
page-why-same-words = Now imagine a cup that holds the same amount of liquid all the time and loses no heat to the room. Every portion comes in as warm as the cup. Before the end-point every portion then changes the temperature by the same amount; after it nothing changes any more. The curve is straight.
page-why-low = The straightened curve turns at { $endPoint }. That is the <end-point>end-point</end-point> by <heat-balance>heat balance</heat-balance>. The crossing of the straight lines came out { $apart } cm³ too low: not because anybody measured badly, but because straight lines were drawn through bent arms.
page-why-high = The straightened curve turns at { $endPoint }. That is the <end-point>end-point</end-point> by <heat-balance>heat balance</heat-balance>. Straight lines through bent arms mostly cross too early; here the scatter of the readings brought them { $apart } cm³ beyond it.
page-why-agree = The straightened curve turns at { $endPoint }. That is the <end-point>end-point</end-point> by <heat-balance>heat balance</heat-balance>. Straight lines through bent arms mostly cross too early; here the two agree within what the readings can tell.

## The record to print, downloads, readings of another bench

page-record-title = Record
page-record-print = Print the sheet to hand in
page-record-file-title = { $bench } { $day } record
page-record-downloads = Downloads
page-record-downloads-hint = The files carry the bench’s name and the date.
page-record-files =
    { $which ->
        [sheet] Everything as a spreadsheet
        [table] Table of readings
        [readings] Readings
        [record] All samples
        [readingsComma] Readings for spreadsheets that want a decimal comma
        [recordComma] All samples for spreadsheets that want a decimal comma
       *[journal] Everything that happened, for programs
    }
page-record-for-programs = More files, for programs
page-sheet-names = Names:
page-sheet-by-hand = write them by hand on the printed sheet
page-sheet-parts =
    { $which ->
        [aim] Aim
        [calculation] Your own calculation
        [conclusion] Conclusion
       *[evaluation] Evaluation
    }
page-sheet-answers = The station’s answers
page-sheet-print-answers = Print the station’s answers
page-sheet-hint = One side of A4. Type here or write by hand; what you type stays in this tab only.
page-sheet-hint-shown = One side of A4 each. Type here or write by hand; what you type stays in this tab only.
page-record-plan = Plan
page-record-planned =
    Planned: { $portions } portions, { $repeats } { $repeats ->
        [one] repeat
       *[other] repeats
    }.
page-record-own-moments = The group decided itself when to read and when to add.
page-record-planned-once =
    Planned: { $repeats } { $repeats ->
        [one] repeat
       *[other] repeats
    }.
page-record-probe = Temperatures by the station’s probe.
page-record-typed = Temperatures read off an ordinary thermometer.
page-record-typed-lines = { $digital ->
    [true] Temperatures read off a digital thermometer to { $division } °C.
   *[false] Temperatures read off an ordinary thermometer with lines every { $division } °C.
}
page-record-virtual = Readings of a virtual cup, not of a real one.
page-record-not-their-own = Not this group’s own readings: taken over from { $label }.
page-record-nothing = Nothing has been recorded yet.
page-record-unsure-mark = ? not sure, left out of the lines.
page-record-unsettled-mark = * not settled.
page-record-volume-mark = In brackets: the total added in this repeat / cm³.
page-record-results = Results
page-record-own-reading = Your own reading
page-record-own-nothing = nothing could be read
page-record-own-volume = { $volume } cm³
page-record-own-change = { $change } °C
page-record-straight = Straight lines
page-record-heat = Heat balance
page-record-end-point = { $volume } ± { $u } cm³
page-record-acid = concentration of the acid
page-record-enthalpy = enthalpy change per mole
page-record-plus-minus-is = After ±: one standard uncertainty.
page-record-steps = Steps
page-record-happened = Notes and corrections
page-record-more = … and { $count } more: all of them are in the spreadsheet.

# Minutes and seconds since the practical began.
page-record-at = { $minutes }:{ $seconds }
page-record-line = { $at }  { $what }
page-record-line-where = { $at }  { $where }: { $what }
page-record-because = { $what }: { $reason }
page-record-note-withdrawn = note withdrawn: { $text }
page-record-undone = taken back, it never went in
page-record-mass = { $mass } g went in
page-record-volume = { $volume } cm³ went in
page-record-unsure = not sure, left out of the lines
page-record-sure = sure again
page-record-early = added before it was asked for
page-record-retyped = reading corrected to { $temperature } °C
page-record-aside = set aside
page-record-restored = counts again
page-record-probe-lost = the probe did not answer
page-record-probe-found = the probe is back
page-record-probe-often = The probe did not answer { $times } times.
page-record-thermometer = { $digital ->
    [true] digital thermometer, to { $division } °C
   *[false] ordinary thermometer, lines every { $division } °C
}
page-record-probe-again = the station’s probe again
page-record-finish-undone = finish undone: the group went on
page-record-repeat-asked = one more repeat was asked for
page-record-sketch = prediction drawn
page-record-ended-early = finished early
page-record-adopted = readings taken over from { $label }
page-record-returned = own readings again
page-record-salvaged = the station’s record was damaged before; what could be read goes on
page-record-cautions = Cautions
page-record-adopt-about = Without readings of your own you can work with those of another bench. They are marked as not your own, and yours stay in the record.
page-record-adopt-how = On the other bench open “Record” and “More files”, download “Readings”, and choose that file here.
page-record-adopt-file = Readings file (.csv)
page-record-adopt-label = Whose readings are they? Such as Bench 4
page-record-adopt-take = Use these readings
page-record-adopt-too-long = This file is too long for readings. Download “Readings” on the other bench.
page-record-adopt-unreadable = This file cannot be read. Choose it again.
page-record-adopt-reading-file = Reading the file …
page-record-adopt-return-why = You work with the readings of { $label }. Go back to your own?
page-record-adopt-back = Use our own readings again

## How each number was worked out; the own judgement

page-own-working-title = Your own calculation
page-own-working-task = It begins with your own reading. Work out one step after another; each uses the numbers shown above it.
page-own-working-place = Step { $step } of { $of }
page-own-working-over = All steps are done.
page-own-working-again = Begin again
page-own-working-try = Your number / { $unit }
page-own-working-check = Check
page-own-working-show = Show it
page-own-working-right = Right.
page-own-working-wrong =
    { $which ->
        [no-number] Type a number.
       *[other] Not yet. Check the units and the sign, then try again.
    }
page-steps-open = How every number was worked out
page-steps-whose = Numbers of
page-steps-of-mean = mean
page-steps-by-lines = From the straight lines
page-steps-by-heat = By the <heat-balance>heat balance</heat-balance>
page-steps-opens = Open a number to see the line that made it.
page-steps-unrounded = The station carries on with unrounded numbers, so a last figure may differ by one.
page-steps-accepted = Accepted value
page-steps-accepted-value = { $enthalpy } ± { $u } kJ/<mole>mol</mole>
page-steps-yours = Yours, by heat balance: { $enthalpy }
page-steps-source = Source: { $source }
page-steps-think = Questions for your evaluation
page-steps-questions =
    { $which ->
        [0] Which way did heat leave the cup while you measured? Would that make your temperatures, your end-point and your enthalpy too high or too low? How could you find out?
        [1] Your thermometer shows temperatures in steps. How big is one step beside the whole change of temperature? Which of your numbers depends on it most?
        [2] How well do you know the volume in the cup, and of each portion? If every portion had been 2 % too large, which numbers would change, and which way?
        [3] How far apart are your repeats? Is that more or less than the ± says? What could be different from one repeat to the next?
       *[4] Is the difference between your value and the accepted one larger than the two ± together? If so: what is not in the ±?
    }
page-steps-questions-once =
    { $which ->
        [0] Which way did heat flow between the cup and the room while you measured? Would that make your change of temperature too large or too small? How could you find out?
        [1] Your thermometer shows temperatures in steps. How big is one step beside the whole change of temperature?
        [2] How well do you know the amounts that were mixed? If one of them had been 2 % too large, which numbers would change, and which way?
        [3] How far apart are your repeats? Is that more or less than the ± says? What could be different from one repeat to the next?
       *[4] Is the difference between your value and the accepted one larger than the two ± together? If so: what is not in the ±?
    }
page-steps-judgement = Your own judgement and the station’s
page-steps-portion = portion
page-steps-repeat-title = Repeat { $repeat }
page-steps-own-waited = you, after / s
page-steps-own-read = you / °C
page-steps-station-waited = station, after / s
page-steps-station-read = station / °C
page-steps-start = start
page-steps-cost = What the difference cost
page-steps-by-you = you
page-steps-by-station = the station
page-steps-time = time taken
page-steps-end-point = end-point
page-steps-minutes = { $minutes } min
page-steps-volume = { $volume } cm³

## Pages of staff: what all share

page-frame-ways = Pages
page-frame-pages =
    { $which ->
        [bench] Bench
        [plan] Plan a practical
        [prepare] Prepare
        [checks] Probe checks
        [kit] This kit
        [room] Room
        [class] Class result
        [sheets] Sheets
        [kits] Kits
       *[lessons] Lessons
    }
page-frame-asking = Asking the station …
page-frame-staff-only = For staff
page-frame-why-staff = Teacher or technician: sign in to go on.

## Pages of staff: planning

page-plan-intro = Choose; the station computes what the plan promises. Anybody may try. Your school’s risk assessment comes first.
page-plan-start-from = Start from
page-plan-bench-plan = the plan of this bench
page-plan-as-chosen = as chosen below
page-plan-open-file = Open a plan file
page-plan-no-file = This file could not be read as a plan.
page-plan-opened = The plan in the file stands below.
page-plan-opened-without = The plan in the file stands below, without what is not known here: { $keys }.
page-plan-kind = Kind of practical
page-plan-kinds =
    { $which ->
        [portions] Portions of alkali to acid
        [ratios] Mixing ratios
       *[once] Mixed once
    }
page-plan-title = Title
page-plan-acid = Acid in the cup
page-plan-alkali = Alkali that is added
page-plan-portions = Portions
page-plan-liquid = In the cup
page-plan-addition = Mixed in
page-plan-how-it-goes = How it goes
page-plan-setting = Cup and room
page-plan-anhydrous = anhydrous
page-plan-reagent = Reagent
page-plan-volume = Volume / cm³
page-plan-portion-volume = Volume of a portion / cm³
page-plan-count = Portions in a repeat
page-plan-concentration = Concentration / mol/dm³
page-plan-mass = Mass / g
page-plan-told = Its concentration
page-plan-tells =
    { $which ->
        [unknown] the class finds it; not said here
        [known] known to the class
       *[prepared] made up by staff, kept from the class
    }
page-plan-form = What is mixed in
page-plan-forms =
    { $which ->
        [solid] a weighed solid
       *[solution] a solution
    }
page-plan-glassware = Portions are measured with
page-plan-glassware-of = { $name } (± { $u } cm³)
page-plan-own-u = own ± of a portion / cm³
page-plan-no-glassware = not said (± 0.1 cm³)
page-plan-repeats = Repeats
page-plan-pace = Pace
page-plan-paces =
    { $which ->
        [graph] careful, for a graph
       *[quick] quick, as soon as the trace holds enough
    }
page-plan-prompts = Who says when to read
page-plan-predict = Before the first portion
page-plan-predicts =
    { $which ->
       *[false] nothing more
        [true] the group draws its prediction
    }
page-plan-prompters =
    { $which ->
        [station] the station
       *[own-judgement] the students
    }
page-plan-results = Results are seen
page-plan-seen =
    { $which ->
        [at-once] at once
        [after-own-reading] after the class’s own reading
       *[when-shown] when staff show them
    }
page-plan-cup-heat = Heat capacity of the cup / J/K
page-plan-cup-u = ± of it / J/K
page-plan-room = Room temperature / °C
page-plan-room-empty = 20 °C when empty
page-plan-before = Recorded before mixing / s
page-plan-after = Recorded after mixing / s
page-plan-minutes = { $total } min
page-plan-at-bench = at the bench

# Puts a list together: 45 or 60 or 90.
page-plan-or = { $some } or { $other }
page-plan-fits = fits a lesson of { $lessons } min
page-plan-too-long = too long for a lesson of { $lessons } min
page-plan-computing = The station computes …
page-plan-mend = Something in the plan cannot be used yet: see the marked fields.
page-plan-elsewhere = In the plan:
page-plan-no-answer = The station did not answer.
page-plan-promise = What this plan promises
page-plan-curve = Expected curve
page-plan-curve-of = The expected readings, { $points } of them; the table below gives them all.
page-plan-once-curve-of = The expected temperature over time; it changes by { $change }.
page-plan-expected-end-point = { $volume } cm³
page-plan-mixed = mixed
page-plan-table = Expected readings as a table
page-plan-added = added / cm³
page-plan-time = time / s
page-plan-temperature = temperature / °C
page-plan-rise = rise at the end-point
page-plan-change = change of temperature
page-plan-celsius = { $change } °C
page-plan-end-point = expected end-point
page-plan-arms = readings on the arms
page-plan-arms-of = { $before } before, { $after } after
page-plan-taken = for { $concentration } mol/dm³ of acid
page-plan-resolves = This plan can find acids of { $low } to { $high } mol/dm³.
page-plan-methods = How well the end-point will be known (one repeat, ± one standard uncertainty)
page-plan-methods-once = How well the change will be known (one repeat, ± one standard uncertainty)
page-plan-read-with = read with
page-plan-thermometers =
    { $which ->
        [probe] probe, whole trace
        [thermometer_0_1_c] thermometer to 0.1 °C
       *[thermometer_1_c] thermometer to 1 °C
    }
page-plan-lines = straight lines
page-plan-heat = heat balance
page-plan-method = method
page-plan-off-by = off by
page-plan-lines-off = straight lines, off by / cm³
page-plan-lines-plus-minus = straight lines, ± / cm³
page-plan-heat-plus-minus = heat balance, ± / cm³
page-plan-bias-c = { $bias } °C
page-plan-plus-minus-c = ± { $u } °C
page-plan-plus-minus-kj = ± { $u } kJ/mol
page-plan-refuses = refuses
page-plan-whole = Heat balance with the probe: mean of { $repeats } repeats ± { $u } cm³; of one, acid ± { $uAcid } mol/dm³.
page-plan-compare = What weaker solutions cost, and better glassware buys
page-plan-compare-now = Compare
page-plan-strengths = { $acid } / { $alkali }
page-plan-strength-head = acid / alkali, mol/dm³
page-plan-warnings = Mind
page-plan-assumed = What is assumed
page-plan-hazards = Hazards at these concentrations
page-plan-hazards-first = Usual practice only: your employer’s risk assessment, local rules and qualified staff come first.
page-plan-taken-as = The class is to find it: taken as { $concentration } mol/dm³, the most this plan can measure.
page-plan-not-classified = Not classified as hazardous; the usual cautions hold.
page-plan-near-edge = Less than 5 % below a limit of the regulation: the stricter class is shown.
page-plan-strength = { $concentration } mol/dm³
page-plan-grams = { $mass } g
page-plan-keep = Keep and start
page-plan-keep-staff = Saving and starting are for staff.
page-plan-save = Save as plan.toml
page-plan-copy = Copy as text
page-plan-copied = Copied.
page-plan-not-copied = The text could not be copied: mark it below.
page-plan-text = The plan as text
page-plan-start = Start on this bench
page-plan-started = This bench has the plan now.
page-plan-to-bench = To the bench
page-plan-confirm = I have confirmed this against the school’s risk assessment.
page-plan-to-prepare = Prepare this for a class

## Pages of staff: preparing

page-prepare-intro = What to make up, label and lay out. Print it, or look it up here.
page-prepare-plan = Plan
page-prepare-tab-plan = the plan from the planning page
page-prepare-bench-plan = the plan of this bench
page-prepare-benches = Benches
page-prepare-lesson = Lesson
page-prepare-minutes = { $minutes } min
page-prepare-stock = Your bottle of { $name } / mol/dm³
page-prepare-stock-empty = as usual when empty
page-prepare-print = Print
page-prepare-title =
    { $practical } ({ $benches } { $benches ->
        [one] bench
       *[other] benches
    })
page-prepare-labels = Labels
page-prepare-labels-why = One for each bench and solution; they print on a sheet of their own.
page-prepare-strength = { $concentration } mol/dm³
page-prepare-count = { $count } ×
page-prepare-computing = The station works it out …
page-prepare-no-answer = The station did not answer.
page-prepare-secret = Only staff may see what was prepared: sign in to see it here.
page-prepare-to-plan = Change the plan

## Pages of staff: probe checks

page-checks-intro = A check says how far the probe is off, and how sure that is. Staff do it when no repeat is under way; nobody can begin a repeat meanwhile.
page-checks-first = Usual cautions only: your school's risk assessment, local rules and qualified staff come first.
page-checks-silent = The station does not answer. Trying again.
page-checks-waits = A repeat is under way on this bench. Finish it, then come back.
page-checks-no-probe = This bench has no probe: there is nothing to check.
page-checks-staff = Staff check the probe
page-checks-choose = Which check?
page-checks-names =
    { $which ->
        [ice] Ice point
        [boiling] Boiling point
        [comparison] Comparison with a thermometer
        [dip] Dip: how fast the probe is
       *[cup] Cup: heat capacity and heat loss
    }
page-checks-about =
    { $which ->
        [ice] About 3 minutes. Crushed ice and a little water. Gives the offset.
        [boiling] About 10 minutes, boiling water. With an ice point it gives a line.
        [comparison] About 20 minutes, at least three temperatures from 10 to 50 °C. Gives a line with its uncertainty: the best check.
        [dip] About 3 minutes. Gives the two time constants.
       *[cup] About 12 minutes. For the [cup] of a plan.
    }
page-checks-water = The ice and the water are
page-checks-waters-distilled = distilled or deionised
page-checks-waters-tap = from the tap
page-checks-pressure = Air pressure of this place, not reduced to sea level / hPa
page-checks-altitude = or altitude of this place / m
page-checks-pressure-hint = A barometer knows it to ± 0.03 °C; from the altitude alone the weather leaves ± 0.3 °C.
page-checks-reference = The reference thermometer is right within ± (one standard uncertainty) / °C
page-checks-cup-label = Label of the cup
page-checks-begin = Begin this check
page-checks-caution =
    { $which ->
        [ice] Wipe up water at once: a wet floor is slippery.
        [boiling] Boiling water and steam scald. Eye protection, heat-proof mat, beaker clamped or steady, nobody reaches across. Keep the probe's cable and the station's box clear of steam and of the hot plate. Let it cool before you move it.
        [comparison] Water above 50 °C scalds: small amounts, steady beaker, eye protection. Keep cable and box clear of steam.
        [dip] Warm water at most 50 °C. Wipe up water at once.
       *[cup] Warm water of 40 to 50 °C, not from a boiling kettle. Eye protection, steady cup. Keep cable and box dry.
    }
page-checks-instruction =
    { $step ->
        [ice-prepare] Fill an insulated cup with crushed ice. Add just enough cold water to fill the gaps; pour off what makes the ice float. Push the probe 5 cm deep into the middle, off the wall.
        [ice-settling] Stir gently now and then. Wait: the station sees when the probe is at rest.
        [ice-found] The ice point is measured.
        [boiling-prepare] Let distilled water boil strongly. Hang the probe in, tip 2 cm deep, off bottom and wall.
        [boiling-settling] Keep it boiling. Stand back and wait: the station sees when the probe is at rest.
        [boiling-found] The boiling point is measured. Turn the heat off.
        [comparison-prepare] Put probe and reference side by side, same depth, in much stirred water.
        [comparison-comparing] Stir. When the probe is at rest, read the reference and type it. Then change the temperature, within 10 to 50 °C.
        [dip-prepare] Prepare half a litre of water, 10 °C or more from the room. Hang the dry probe in still air.
        [dip-air] Wait: the probe comes to rest in the air.
        [dip-plunge] Now plunge the probe into the water and stir steadily. Press nothing.
        [dip-dipped] Keep stirring. The station records how the probe follows.
        [dip-found] Both time constants are measured.
        [cup-prepare] Weigh out water that has stood in the room. Put the probe into it.
        [cup-added] Stir and wait: its temperature is being taken.
        [cup-fill] Weigh the cup, fill in as much warm water, weigh again. Lid on, probe in, stir.
        [cup-warm] Keep stirring gently. The cup warms through.
        [cup-pour] Pour all the water from the room in at once, press, and stir.
        [cup-mixed] Keep stirring gently. The lid is on.
        [cup-weigh] Type both masses.
        [cup-found] The cup is tested.
       *[other] { "" }
    }
page-checks-step =
    { $which ->
        [in] The probe is in
        [hung] The probe hangs in still air
        [in_added] The probe is in the water
        [filled] The warm water is in
        [poured] It is in
        [weighed] These are the masses
        [compared] Take this comparison
       *[comparison_undone] Take the newest back
    }
page-checks-warm-mass = Warm water in the cup / g
page-checks-added-mass = Water added / g
page-checks-reference-says = The reference says / °C
page-checks-live = The probe says
page-checks-no-live = no reading
page-checks-age = { $s } s ago
page-checks-raw = Without any correction, as the journal keeps it.
page-checks-rest =
    { $which ->
        [steady] At rest.
        [no_reading] No reading from the probe: check its plug.
        [too_short] Not long enough yet.
        [moving] Still moving.
        [scattering] It jumps about: stir, and keep the tip off the wall.
       *[far] At rest, but far from the known temperature: is the probe where it should be?
    }
page-checks-moving = { $perMin } °C/min
page-checks-left = { $s } s left
page-checks-known = Known temperature: { $known } ± { $u } °C
page-checks-point = Probe { $probe } °C, reference { $reference } °C
page-checks-points = Comparisons
page-checks-found = Result
page-checks-high = The probe reads { $c } °C too high, ± { $u } °C.
page-checks-low = The probe reads { $c } °C too low, ± { $u } °C.
page-checks-right = The probe is right within ± { $u } °C.
page-checks-beyond = That is beyond the ± 0.5 °C of the data sheet: use another probe, or this one with its correction.
page-checks-mean = Mean of the { $n } comparisons: probe { $probe } °C, reference { $reference } °C.
page-checks-slope =
    Counted from { $at } °C, each degree of the probe is { $slope } ± { $u } % too { $too ->
        [large] large
       *[small] small
    }.
page-checks-slope-within =
    Counted from { $at } °C, each degree of the probe is { $slope } ± { $u } % too { $too ->
        [large] large
       *[small] small
    } (95 %: ± { $within } %).
page-checks-slope-right = Counted from { $at } °C, each degree of the probe is right within ± { $u } %.
page-checks-slope-right-within = Counted from { $at } °C, each degree of the probe is right within ± { $u } % (95 %: ± { $within } %).
page-checks-dip = Two time constants: { $fast } ± { $uFast } s ({ $share } % of the answer) and { $slow } ± { $uSlow } s.
page-checks-follows = 63 % of a step after { $t63 } s, 90 % after { $t90 } s.
page-checks-cup = Heat capacity of cup and probe { $c } ± { $uC } J/K, heat loss { $loss } ± { $uLoss } W/K.
page-checks-cup-assumes = Assumes: only water, no splash, the same lid and about the same height as in the practical, water that had the room's temperature. An offset and a slope of the probe cancel.
page-checks-plan-lines = For the plan:
page-checks-standard = ± is one standard uncertainty.
page-checks-save = Save
page-checks-discard = Discard
page-checks-staff-go-on = Staff go on with it: sign in.
page-checks-register = Probe register
page-checks-none = No probe was seen yet.
page-checks-at-work = at work now
page-checks-genuine = Nothing read speaks against a genuine chip.
page-checks-copy = A copy:
page-checks-unseen = Its bytes were not seen yet.
page-checks-failures = Bad readings: { $bad } per 1000 (of { $samples })
page-checks-bad =
    { $which ->
        [crc] wrong checksum
        [empty] no text
        [garbled] garbled text
        [zeros] only zeros
        [power_on] power-on value
        [gone] not on the bus
        [no_answer] no answer
        [several] several probes
        [other_probe] another probe
        [not_read] not read
       *[other] { $which }
    }
page-checks-no-failures = No bad reading among { $samples }.
page-checks-unchecked = Never checked: ± 0.5 °C by the data sheet.
page-checks-columns =
    { $which ->
        [number] No.
        [check] Check
        [day] Date
        [found] Found
       *[use] Use
    }
page-checks-in-use = in use
page-checks-kept = kept
page-checks-withdrawn = withdrawn
page-checks-withdraw = Withdraw check { $number }
page-checks-days =
    { $n ->
        [0] today
        [one] 1 day ago
       *[other] { $n } days ago
    }
page-checks-clock-not-set = clock not set
page-checks-age-unknown = age not known
page-checks-cups = Tested cups
page-checks-no-answer = No answer. Try again.
page-checks-bad-number = Type a number.

## Pages of staff: the kit

page-machine = The machine
page-machine-tick = Tick the box first.
page-machine-network = Network
page-machine-network-why = The new network is tried for a minute. If it does not answer, the old one comes back. What you type here travels over plain http.
page-machine-try-network = Try this network
page-machine-way = Way
page-machine-wifi = Wi-Fi
page-machine-wired = the cable alone
page-machine-ssid = Name of the Wi-Fi network
page-machine-password = Password (empty: an open network)
page-machine-country = Country (two letters, as IE)
page-machine-hidden = The network does not show its name
page-machine-words = Name, code, passphrases
page-machine-words-why = What stays empty stays as it is. The station starts again with the new ones. Print the label anew.
page-machine-keep = Keep these
page-machine-name = Name of the bench
page-machine-code = Code of the bench
page-machine-teacher = Teacher's passphrase
page-machine-technician = Technician's passphrase
page-machine-record = The record
page-machine-backup = Copy the record onto the stick
page-machine-restore = Bring this copy back
page-machine-restore-stick = Bring a copy back from the stick
page-machine-restore-sure = The record that is here now is set aside.
page-machine-copy = Copy on the card
page-machine-file = Name of the file on the stick
page-machine-wipe = Delete the record
page-machine-wipe-sure = The record and all sessions are gone for good.
page-machine-update = Update from a stick
page-machine-update-why = The stick holds the folder wheelhouse. Type the digits that station kit printed with it.
page-machine-update-go = Install it
page-machine-digits = Digits
page-machine-power = Power
page-machine-restart = Restart
page-machine-shut-down = Shut down
page-machine-stops = Nobody is at work on this bench.
page-kit-ready = Is this kit ready?
page-kit-verdict =
    { $which ->
        [green] Ready: nothing needs mending.
        [amber] Usable. Mind what stands first below.
       *[red] Not ready. Mend what stands first below.
    }
page-kit-colour =
    { $which ->
        [green] in order
        [amber] mind
        [red] mend
       *[unknown] cannot be told
    }
page-kit-looking = Looking at the kit …
page-kit-again = Look again
page-kit-age = Looked at { $s } s ago.
page-kit-no-answer = The station did not answer. Try again.
page-kit-beside = While the station is at work only its own samples are judged; the probe is not read for this.
page-kit-next = Next:
page-kit-figures = Figures
page-kit-in-order =
    { $n ->
        [one] 1 thing is in order
       *[other] { $n } things are in order
    }
page-kit-untold =
    { $n ->
        [one] 1 thing cannot be told here
       *[other] { $n } things cannot be told here
    }
page-kit-names =
    { $which ->
        [settings] settings
        [plan] plan
        [bus] one-wire bus
        [probe] probe
        [probe_power] probe’s supply
        [probe_resolution] probe’s resolution
        [probe_guard] kernel’s check
        [probe_reads] reads
        [probe_noise] noise
        [conversion_time] conversion
        [probe_kind] chip
        [pins] panel
        [storage] storage
        [free_space] free space
        [journal] record
        [clock] clock
        [power] power
        [network] network
        [port] port
        [versions] versions
        [link] link to the room
        [check] check
       *[other] { $which }
    }
page-kit-checks-hint = Offset and age of the probe:
page-kit-checks = probe checks
page-kit-address = Where other devices find it
page-kit-qr = QR code of { $address }
page-kit-versions = Versions
page-kit-lamps = Lamps and buzzer
page-kit-lamps-why = Wait, act and attention light in turn, then all three, with one beep. The practical goes on meanwhile.
page-kit-try-lamps = Test the lamps
page-kit-trying = Look at the panel now.
page-kit-cards = Cards for further benches
page-kit-cards-why = Give a table of benches (kits.toml, see the manual). You get a zip with a folder for each card, labels, and the sheet of codes and passphrases.
page-kit-cards-secret = Codes and passphrases travel in this zip over plain http: do it over a cable or a network of your own, and delete the file afterwards.
page-kit-kits-file = Table of benches (kits.toml)
page-kit-plan-file = Plan, if the table names one (plan.toml)
page-kit-make-cards = Make the cards
page-kit-made = cards.zip is saved. READ-ME-FIRST.txt in it says what goes where.
page-kit-not-text = { $file }: not UTF-8 text; save the file as UTF-8.
page-kit-too-large = The files have more than { $kB } kB together; are they the right ones?
page-kit-choose-table = Choose the table first.
page-kit-records = All records
page-kit-records-why = Every practical of this station in one zip: samples, readings, spreadsheet and journal of each. Results that are held back are left out.
page-kit-records-link = Download all records
page-kit-sending = Working …

## Pages of staff: the room

page-call =
    { $which ->
        [calls] Teacher called
       *[call] Call the teacher
    }
page-room-connecting = Asking the room …
page-room-lost = Nothing heard from the room for some seconds. What you see may be out of date.
page-room-fault = The room cannot collect just now: { $reason }
page-room-none = No bench has been heard yet. Benches appear here by themselves.
page-room-lesson = { $label }, since { $began }
page-room-lesson-unnamed = Lesson since { $began }
page-room-no-lesson = No lesson is under way.
page-room-counts =
    { $which ->
        [works] { $count } at work
        [done] { $count } done
        [held] { $count } paused by you
        [paused] { $count } paused by themselves
       *[idle] { $count } not begun
    }
page-room-states =
    { $which ->
        [ready] not begun
        [alkali] alkali’s temperature
        [start] start temperature
        [pour] add a portion
        [settle] settling
        [rinse] rinsing
        [paused] paused by themselves
        [held] paused by you
        [done] done
       *[unknown] nothing known yet
    }
page-room-where = repeat { $repeat }/{ $repeats }, portion { $portion }/{ $portions }
page-room-celsius = { $temperature } °C
page-room-reason =
    { $code ->
        [called] Calls the teacher.
        [trouble] { $text }
        [unreadable] Its record cannot be read here: begin a new practical on it.
        [silent] Not connected to the room; data will be sent later.
        [probe_lost] The probe does not answer.
        [bad_readings] { $count } of the last readings failed: check its plug.
        [not_begun] Has not begun.
        [stuck] Has done nothing for a long time.
        [slow] Is slow at this step.
        [paused] Has been paused for a long time.
        [behind] Behind the class.
        [question] Open question: { $text }
        [many_aside] { $count } repeats set aside.
        [set_aside] Repeat { $count } is set aside: { $text }
        [odd_curve] Its curve is unlike the others’.
       *[other] { "" }
    }
page-room-open = Open the page of { $name }
page-room-projector = For the projector
page-room-no-projector = Back to the board
page-room-board-title = Benches
page-room-tell-title = Tell benches
page-room-to-all = All benches
page-room-to-some =
    { $count ->
        [one] One bench chosen
       *[other] { $count } benches chosen
    }
page-room-choose-some = Choose some
page-room-choose-all = All again
page-room-acts =
    { $which ->
        [quiet] Silence the buzzers
        [loud] Let the buzzers sound
        [helped] I have been there: end the calls
        [pause] Pause
       *[resume] Go on
    }
page-room-rename = Rename
page-room-new-name = New name of the bench
page-room-set-aside = Set a repeat aside
page-room-restore = { $name }: let repeat { $repeat } count again
page-room-which-repeat = Which repeat
page-room-repeat-name = Repeat { $repeat }
page-room-why = Why
page-room-told = Sent: offline benches will do it when they are back.
page-room-no-answer = The room did not answer. Nothing was told; try again.
page-room-left = What the benches did
page-room-order-names =
    { $which ->
        [choose_plan] New practical
        [show_results] Results
        [quiet] Buzzer
        [rename] Rename
        [set_aside] Set aside
        [restore] Count again
        [pause] Pause
        [resume] Go on
        [call_over] Call ended
       *[other] { $which }
    }
page-room-take-back = Take back what is not done yet
page-room-lesson-title = Lesson
page-room-begin = Begin a lesson
page-room-label = Class (a label, no names)
page-room-plan = Plan
page-room-own-plan = the one each bench has
page-room-plan-in-file = from a file
page-room-plan-file = Plan (plan.toml)
page-room-confirm = If a solution is above 1.0 mol/dm³: I have checked it against the school’s risk assessment.
page-room-new-practical = Begin a new practical
page-room-no-plan = This file cannot be a plan: it is too large or cannot be read.
page-room-end = End the lesson
page-room-lessons-title = Lessons
page-room-no-lessons = No lesson yet.
page-room-lesson-head-began = Began
page-room-lesson-head-label = Class
page-room-lesson-head-benches = Benches
page-room-lesson-head-result = Class result
page-room-to-result = Open
page-room-to-sheets = Print or take away
page-room-lessons-all = All classes
page-room-forget = Names of classes and groups are forgotten { $days } days after a lesson. What was measured stays.
page-room-forget-never = Names of classes and groups are kept for good: the room’s settings say so.
page-room-forget-clock = This machine’s clock is not known to be right, so nothing is forgotten now.
page-sheets-count = Sheets to print: { $count }, one side of A4 for each bench.
page-sheets-print = Print all sheets
page-sheets-zip = All files as one zip
page-sheets-why = On the sheets stands what was measured and drawn, and room to write. None of the station’s answers stand there. The zip has a folder for each bench: spreadsheet, table, readings and record; results once they are shown.
page-kits-title = All kits
page-kits-none = No kit has been heard yet.
page-kits-intro = { $count ->
    [one] One kit is chosen. What is pressed here goes to it at once; a kit that is off or out of reach does not do it, now or later.
   *[other] { $count } kits are chosen. What is pressed here goes to them at once; a kit that is off or out of reach does not do it, now or later.
}
page-kits-check-all = Run all checks
page-kits-backups = Back up all
page-kits-backups-why = The backup is a zip on this device: for each bench a file that “station restore” takes, as far as the room keeps its record.
page-kits-head =
    { $which ->
        [kit] Kit
        [check] Check
        [probe] Probe
        [free_space] Free space
        [clock] Clock
        [power] Power
        [version] Version
       *[asked] Asked last
    }
page-kits-own-page = its page
page-kits-away = away
page-kits-not-looked = not checked since the room began
page-kits-looked = { $min ->
    [0] just now
   *[other] { $min } min ago
}
page-kits-probe-checked = { $check ->
    [ice] in ice
    [boiling] in boiling water
    [comparison] compared
   *[dip] dipped
}, { $day }
page-kits-probe-unchecked = never checked
page-kits-asked =
    { $which ->
        [look] Check
        [ice-begin] Into the ice
        [ice-save] Save the ice point
        [ice-discard] Stop the ice point
        [restart] Restart
        [shut-down] Shut down
        [backup] Back up to the stick
        [update] Update
        [restore] Restore a record
       *[wipe] Wipe the record
    }
page-kits-waits = asked …
page-kits-ice =
    { $which ->
        [far] { $now } °C: that is no ice water
        [settling] { $now } °C, settling
       *[other] { $now } °C
    }
page-kits-ice-found = found: { $correction } °C
page-kits-ice-title = Ice point of all probes
page-kits-ice-how = Fill one large bath with crushed ice and just enough distilled water to stir it. Hang every probe in it, tips deep, off bottom and walls. Stir now and then. Press the first button once all are in; save when each has found its value.
page-kits-ice-count = Probes: { $probes }. In the ice: { $begun }. Found: { $found }.
page-kits-ice-begin = { $count ->
    [one] It is in the ice
   *[other] All { $count } are in the ice
}
page-kits-ice-save = { $count ->
    [one] Save it
   *[other] Save { $count }
}
page-kits-ice-discard = { $count ->
    [one] Stop it on one
   *[other] Stop it on { $count }
}
page-kits-more = Record, version, power
page-kits-do = What
page-kits-do-what =
    { $which ->
        [restart] Each kit starts again, and goes on where it was. It takes about a minute.
        [shut-down] Each kit ends, and its plug can be pulled once its lamp is off.
        [backup] Each kit copies its record onto its own stick.
        [update] Each kit installs the wheels on its own stick, tries them, and goes back by itself if they do not work.
        [restore] Each kit puts a backup of its own in its record’s place. The record before is set aside.
       *[wipe] Each kit deletes its record and all sign-ins for good; its probe register stays. The room keeps what it has.
    }
page-kits-place = Where from
page-kits-places =
    { $which ->
        [card] the card’s own copies
       *[stick] the stick
    }
page-kits-typed =
    { $which ->
        [update] The first 16 digits of the new version, as you were told
       *[restore] Name of the file, such as 2026-11-30.backup
    }
page-kits-sure = { $count ->
    [one] Really: on the chosen kit
   *[other] Really: on all { $count } chosen kits
}
page-room-under-way = under way
page-room-address = Other devices find the room at
page-room-qr = QR code of { $address }
page-room-practise = Practice for every phone
page-room-practise-more = Each phone that opens this address gets a virtual cup of its own. Nothing of it enters the class result.
page-room-class-title = Class result
page-room-withheld = Hidden until every bench has shown its own result.
page-room-waits-for = Not shown yet on: { $benches }.
page-room-nobody = No bench has begun yet.
page-room-calculating = Being computed …
page-room-methods =
    { $which ->
        [heat_balance] heat balance
       *[straight_lines] straight lines
    }
page-room-plot-title = { $quantity } by { $method }
page-room-plot-why = A dot is a bench’s value, its line the 95 % interval; an arrow: it goes on. The band is the class’s mean with its 95 % interval.
page-room-plot-value = { $name }: { $value } (95 %: { $low } to { $high })
page-room-class-mean = class
page-room-table-title = All benches
page-room-bench = Bench
page-room-repeats = Repeats
page-room-no-value = none
page-room-not-pooled = other plan
page-room-odd-title = Outlying benches
page-room-odd-why = Nothing is left out by itself.
page-room-no-odd = No bench is far from the others.
page-room-curve-title = Mean curve of the class
page-room-curve-across = alkali added / cm³
page-room-curve-up = change since the start / °C
page-room-curve-why = Mean of { $count } benches; bars are the scatter between benches (one standard deviation).
page-room-files = To take away
page-room-file-names =
    { $which ->
        [sheet] Everything as a spreadsheet
        [results] Results of all benches
        [resultsComma] Results, decimal comma
        [readings] Readings of all benches
        [readingsComma] Readings, decimal comma
       *[events] Every event of every bench
    }
page-room-print = Print the class sheet
page-room-print-hint = One side of A4.
page-room-needs-title = Who needs you
page-room-needs-count =
    { $count ->
        [0] No bench needs help.
        [one] One bench needs you:
       *[other] { $count } benches need you:
    }
page-room-need =
    { $code ->
        [called] { $name } calls you
        [trouble] { $name }: problem with its data
        [unreadable] { $name }: record cannot be read
        [silent] { $name } is not heard
        [probe_lost] { $name }: no answer from probe
        [bad_readings] { $name }: check its plug
        [not_begun] { $name } has not begun
        [stuck] { $name } is stuck
        [slow] { $name } is slow
        [paused] { $name }: a long pause
        [question] { $name }: an open question
        [many_aside] { $name }: several repeats set aside
       *[other] { $name }
    }
page-room-progress = { $own } % done; the class { $usual } %
page-room-answer =
    { $state ->
        [pending] { $act }: offline, not yet
        [refused] { $act }: did not
       *[other] { $act }: done
    }
page-room-left-line =
    { $state ->
        [pending] { $act }: { $benches } offline, will do it when back
        [refused] { $act }: { $benches } did not: { $why }
       *[other] { $act }: { $benches } did it
    }
page-room-dismiss = Dismiss
page-room-bar = Controls
page-room-panel = Panel
page-room-all-benches = All { $count } benches
page-room-results =
    { $state ->
        [shown] Results: shown on all
        [held] Results: hidden on all
       *[some] Results: shown on { $shown } of { $all }
    }
page-room-pause-all =
    { $which ->
        [resume] Go on ({ $count })
       *[pause] Pause ({ $count })
    }
page-room-arrange = Arrange
page-room-arranged = Arranged
page-room-take = Move { $name }
page-room-put = To place { $place }
page-room-sign-in = Sign in
page-room-join = Address
page-room-no-address = The room has no address on a network just now.
page-room-practice-count = Practice ({ $count })
page-room-practice-title = Practice cups
page-room-practice-why = Virtual cups on phones and tablets. Nothing of them enters the class result.
page-room-practice-cup = Cup { $cup }
page-room-begin-does =
    { $own ->
        [own] 
        { $count ->
            [one] Begins a new practical on one bench, with the plan it has; what was measured before is kept.
           *[other] Begins a new practical on { $count } benches, each with the plan it has; what was measured before is kept.
        }
       *[plan] 
        { $count ->
            [one] Begins a new practical on one bench: { $plan }. What was measured before is kept.
           *[other] Begins a new practical on { $count } benches: { $plan }. What was measured before is kept.
        }
    }
page-room-begin-not = These are in the middle of a repeat and go on with it: { $benches }.
page-room-statistics = The statistics
page-room-more-pictures = More pictures
page-room-clash = { $value }: no usable interval, its repeats disagree
page-room-open-questions = Open questions
page-room-made-up = Made up to { $mol } mol/dm³
page-room-made-up-only-you = only you see this
page-room-made-up-seen = the benches show it
page-room-made-up-ask = What the bottle was made up to / mol/dm³
page-room-made-up-keep = Keep (only staff see it)
page-room-made-up-show = Show it to the class

## Practice with a virtual cup

page-practise-tag = practice
page-practise-hands = Practice: your hands
page-practise-ware = { $which ->
    [cylinder] Measuring cylinder with { $reagent }
   *[syringe] Syringe with { $reagent }
  }
page-practise-lowest-point = Read the lowest point of the curved surface.
page-practise-hold = { $which ->
    [draw] Fill (hold)
    [cylinder] Pour in (hold)
   *[syringe] Push in (hold)
  }
page-practise-stir = { $which ->
    [stirring] Stirring …
   *[still] Stir
  }
page-practise-lid = { $which ->
    [on] Lid is on
   *[off] Lid is off
  }
page-practise-probe = Probe
page-practise-places = { $which ->
    [alkali] in alkali
    [cup] in cup
   *[out] rinsed
  }
page-practise-fill = { $which ->
    [sure] Really? Press again
    [again] Fresh acid
   *[empty] Fill with acid
  }
page-practise-technique = Your technique
page-practise-after-results = You will see how well you worked once your results are shown.
page-practise-no-slips = No slip in { $count } portions: each was measured, poured, stirred and read as it should be.
page-practise-of-portion = Repeat { $repeat }, portion { $portion }:
page-practise-of-start = Repeat { $repeat }, start:
page-practise-cost = It cost { $cost } °C.
page-practise-record = { $which ->
    [right] Your record has it right.
   *[wrong] Your record still has the planned volume.
  }
page-practise-again = Practise again
page-practise-offer = Practise without a kit
page-practise-offer-more = Use a virtual cup on this device as often as you like. Nothing you do there counts.
page-practise-begin = Practise

# Mixing ratios at a constant total volume.
practical-ratios = Mixing ratios: { $acid } with { $alkali }
amount-mixtures = { $from_cm3 } to { $to_cm3 } cm³, in all { $total_cm3 } cm³
problem-mixtures-total = the last mixture would have { $alkali_cm3 } cm³ of alkali, but each has { $total_cm3 } cm³ in all; take fewer mixtures or smaller steps
problem-mixtures-side = the two lines need { $least } mixtures each, and at these strengths they cross at { $crossing_cm3 } cm³ of alkali; choose other volumes or strengths
quantity-ratio = moles of alkali per mole of acid
sheet-mixtures = mixtures
sheet-total-volume = total volume of each
sheet-least-alkali = least alkali
sheet-most-alkali = most alkali
sheet-alkali-volume = alkali / cm³
sheet-acid-volume = acid / cm³
sheet-alkali-fraction = alkali's share of the volume
sheet-start-of-both = start of both / °C
sheet-highest = highest temperature / °C
sheet-rise = temperature rise / °C
sheet-mixed-times = times mixed
step-acid-at-crossing = volume of acid at the crossing
formula-acid-at-crossing = V(acid) = V(total) - V(alkali)
step-ratio = moles of { $alkali } for one mole of { $acid }
formula-ratio = n(alkali) ÷ n(acid)
step-rise-at-crossing = temperature rise where the two lines cross
formula-rise-at-crossing = ΔT at the crossing
step-heat-of-mixture = heat given out in that mixture
ratios-off = The lines give { $ratio } moles of alkali per mole of acid; the equation says { $expected }. Check volumes and strengths.
predict-no-heat = the heat of this reaction is not known
predict-cylinders = Volumes are measured with a cylinder: u { $u_cm3 } cm³ each.
predict-ratios = { $count } mixtures of { $total_cm3 } cm³: { $acid } { $acid_mol_dm3 } mol/dm³ with { $from_cm3 } to { $to_cm3 } cm³ of { $alkali } { $alkali_mol_dm3 } mol/dm³
predict-ratio = The lines cross at { $end_point_cm3 } cm³ of alkali: { $ratio } mol of alkali for 1 mol of acid.
predict-head-alkali = alkali/cm³
predict-head-share = share
predict-head-rise = rise/°C
predict-head-ratio = Ratio, the whole practical
predict-bias-ratio = bias
page-ratios-practical = { $acid } and { $alkali } in { $count } ratios, { $total } cm³ each
page-ratios-of = mixture { $mixture } of { $planned }
page-ratios-planned =
    Planned: { $mixtures } mixtures, each { $repeats ->
        [one] once
       *[other] { $repeats } times
    }.
page-ratios-questions =
    { $which ->
        [0] Why does the temperature rise in proportion to the alkali at first? Which of the two is used up there, and which on the other side?
        [1] Your thermometer shows temperatures in steps. How big is one step beside the largest rise?
        [2] Why has each mixture the same total volume? What would the graph look like if only the alkali were changed?
        [3] Which point lies furthest from its line? What could have been different in that cup?
       *[4] Is the difference between your ratio and the equation’s larger than the ±? If so: what is not in the ±?
    }
page-ratios-answer-own = Your lines cross at { $volume } cm³ of alkali: { $ratio } mol of alkali for 1 mol of acid.
page-ratios-answer-best = The best computed ratio is { $ratio } <uncertainty>±</uncertainty> { $u } mol of alkali for 1 mol of acid.
page-ratios-answer-equation = The equation says { $ratio }.
page-ratios-chart = Temperature rise against alkali in the mixture
page-ratios-across = alkali in the mixture / cm³
page-ratios-up = temperature rise / °C
page-ratios-point = a mixture
page-ratios-table = Mixtures
page-ratios-rise = largest rise
page-ratios-columns =
    { $which ->
        [alkali] alkali / cm³
        [acid] acid / cm³
        [share] alkali’s share
        [start] acid at the start / °C
        [highest] highest / °C
       *[rise] rise / °C
    }
page-ratios-ratio = { $ratio } : 1 (alkali : acid)
page-ratios-interval = 95 %: { $low } to { $high }
page-ratios-plus-minus = standard <uncertainty>uncertainty</uncertainty> { $u }
page-ratios-crossing = alkali where the lines cross
page-ratios-worth-lines = The extended lines are worth more here. With much alkali and little acid the <heat-balance>heat balance</heat-balance> finds rises that are a little too large.
page-ratios-by-lines = Rises by extended lines
page-ratios-by-heat = Rises by <heat-balance>heat balance</heat-balance>
page-ratios-scatter-only = This ± covers only the scatter of your points. Solutions of another strength than planned shift the ratio, too.
page-ratios-record = { $ratio } ± { $u } : 1 (alkali : acid)
page-ratios-mixtures = Mixtures
page-ratios-total = Total volume of each / cm³
page-ratios-first = Alkali in the first mixture / cm³
page-ratios-step = More alkali in each next one / cm³
page-ratios-count = Number of mixtures
page-ratios-expected = Ratio by the equation
page-ratios-crosses-at = the lines cross at { $volume } cm³ of alkali
page-ratios-methods = How well the ratio will be known (± one standard uncertainty)
