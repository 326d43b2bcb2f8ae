# What the station says, auf Deutsch. Project Fluent; station/words/__init__.py says what values are.

language-name = Deutsch
language-decimal = ,
# Whose order and names of months dates have, as a BCP 47 tag.
language-dates = de
two-sentences = { $first } { $second }
list-comma = { $first }, { $second }
list-semicolon = { $first }; { $second }
list-and = { $first } und { $second }
list-or = { $first } oder { $second }

## chemistry

problem-air-pressure = Der Luftdruck muss zwischen { $least_hpa } und { $most_hpa } hPa liegen, nicht { $pressure_hpa } hPa: der am Ort selbst, nicht auf Meereshöhe umgerechnet
problem-altitude = Die Höhe muss zwischen { $least_m } und { $most_m } m liegen, nicht { $altitude_m } m
glassware-measuring-cylinder = Messzylinder
glassware-graduated-pipette = Messpipette
glassware-syringe = Spritze
glassware-burette = Bürette
glassware-balance = Waage
problem-concentration-not-above-0 = eine Konzentration muss größer als 0 sein, nicht { $mol_dm3 } mol/dm³
signal-danger = Gefahr
signal-warning = Achtung
hazard-h272 = Kann Brand verstärken; Oxidationsmittel
hazard-h290 = Kann gegenüber Metallen korrosiv sein
hazard-h226 = Flüssigkeit und Dampf entzündbar
hazard-h302 = Gesundheitsschädlich bei Verschlucken
hazard-h312 = Gesundheitsschädlich bei Hautkontakt
hazard-h314 = Verursacht schwere Verätzungen der Haut und schwere Augenschäden
hazard-h315 = Verursacht Hautreizungen
hazard-h318 = Verursacht schwere Augenschäden
hazard-h319 = Verursacht schwere Augenreizung
hazard-h331 = Giftig bei Einatmen
hazard-h332 = Gesundheitsschädlich bei Einatmen
hazard-h335 = Kann die Atemwege reizen
hazard-euh071 = Wirkt ätzend auf die Atemwege
hazard-h400 = Sehr giftig für Wasserorganismen
hazard-h410 = Sehr giftig für Wasserorganismen mit langfristiger Wirkung
hazard-h411 = Giftig für Wasserorganismen, mit langfristiger Wirkung
hazard-h412 = Schädlich für Wasserorganismen, mit langfristiger Wirkung
source-clp = Verordnung (EG) Nr. 1272/2008 (CLP)
source-suppliers-limits = Einstufung der Hersteller, Grenzwerte der CLP, Anhang I
source-suppliers = Einstufung der Hersteller
source-annex-vi = { $regulation }, Anhang VI, { $index }
source-and-suppliers = { $source }, und Hersteller
source-and-annex-i = { $source }, und Anhang I
step-water-per-cm3 = Stoffmenge Wasser, gebildet durch 1 cm³ { $alkali }
of-water-formed = gebildetes Wasser
step-water-formed = Stoffmenge des gebildeten Wassers
step-amount = Stoffmenge { $reagent }
step-water-formed-neither-left = Stoffmenge des gebildeten Wassers; von beiden bleibt nichts übrig
step-water-formed-runs-out = Stoffmenge des gebildeten Wassers; { $reagent } ist zuerst verbraucht
formula-water-smaller = n(H₂O) = das Kleinere von dem, was Säure und Lauge bilden können
formula-water-smaller-figures = n(H₂O) = das Kleinere von { $acid_mol } mol und { $alkali_mol } mol
step-amount-of-acid = Stoffmenge { $acid }: { $acid_mol } mol auf { $alkali_mol } mol Lauge
formula-acid-from-alkali = n(Säure) = n(Lauge) × { $hydroxides }/{ $protons }
formula-acid-from-alkali-figures = n(Säure) = { $alkali_mol } mol × { $hydroxides }/{ $protons }
step-concentration = Konzentration der { $acid }
step-heat-liquid = von der Flüssigkeit aufgenommene Wärme
step-heat-liquid-cup-probe = von Flüssigkeit, Becher und Fühler aufgenommene Wärme
problem-amount-not-above-0 = die Stoffmenge { $of } muss größer als 0 mol sein
step-enthalpy = Enthalpieänderung pro Mol ({ $of })
problem-not-above-0 = { $figure } muss größer als 0 sein, nicht { $value }
figure-alkali-concentration = die Konzentration der Lauge
figure-acid-concentration = die Konzentration der Säure
figure-acid-volume = das Volumen der Säure
figure-alkali-volume = das Volumen der Lauge
figure-volume-of-acid = das Volumen der Säure
figure-solid-mass = die Masse des Feststoffs
figure-liquid-mass = die Masse der Flüssigkeit
figure-heat-capacity-specific = die spezifische Wärmekapazität
figure-temperature-change = die Temperaturänderung
figure-cup-heat-capacity = die Wärmekapazität des Bechers
figure-heat = die Wärme
figure-amount = die Stoffmenge
figure-heat-per-cm3 = die Wärme je cm³
refusal-pair-swapped = die beiden sind vertauscht: { $acid } ist die Säure, { $alkali } die Lauge
refusal-not-an-acid = { $reagent } ist keine Säure, sondern { $kind }
refusal-not-an-alkali = { $reagent } ist keine Lauge, sondern { $kind }
refusal-pair-gas = { $alkali } setzt Kohlenstoffdioxid frei, das Wärme und Wasserdampf mitnimmt; die Wärme pro Mol ist deshalb kein fester bekannter Wert
refusal-pair-solid = { $acid } mit { $alkali } bildet einen Feststoff, dessen Bildungswärme das Modell nicht kennt
refusal-pair-protons = { $acid } gibt { $protons ->
        [2] zwei
       *[3] drei
    } Protonen in { $protons ->
        [2] zwei
       *[3] drei
    } Stufen ab, jede mit eigener Wärme; der Anstieg ist deshalb kein einheitlicher Vorgang
warning-pair-hardly-dissolves = { $alkali } löst sich so wenig, dass sich die Temperatur kaum ändert.
warning-pair-weak-both = Schwache Säure mit schwacher Base: Die Reaktion läuft nicht ganz vollständig ab und rundet die Spitze des Diagramms ab.
kind-strong-acid = eine starke Säure
kind-weak-acid = eine schwache Säure
kind-hydroxide = ein Hydroxid
kind-weak-alkali = eine schwache Base
kind-carbonate = ein Carbonat
kind-hydrogencarbonate = ein Hydrogencarbonat
kind-salt = ein Salz
kind-non-electrolyte = ein Nichtelektrolyt
stock-hydrochloric-acid = 36 % Massenanteil, 1,18 g/cm³
stock-nitric-acid = 70 % Massenanteil, 1,42 g/cm³
stock-sulfuric-acid = 98 % Massenanteil, 1,84 g/cm³
stock-ethanoic-acid = Eisessig, 99,5 %, 1,05 g/cm³
stock-phosphoric-acid = 85 %, 1,70 g/cm³; aus dem Gedächtnis
stock-ammonia = 25 %, 0,91 g/cm³; aus dem Gedächtnis
stock-potassium-hydroxide = Plätzchen, 85 % Massenanteil; aus dem Gedächtnis
stock-solid = Feststoff
problem-volume-concentration = Volumen und Konzentration müssen größer als 0 sein
problem-hardly-dissolves = { $reagent } löst sich kaum: keine Lösung mit { $mol_dm3 } mol/dm³
problem-stock-too-weak = ein Vorrat mit { $stock_mol_dm3 } mol/dm³ ist schwächer als die gewünschten { $mol_dm3 } mol/dm³
prepare-add-solid-slowly = { $mass_g } g { $reagent } langsam, in kleinen Mengen und unter Rühren zugeben: Es wird heiß. Nie Wasser darauf gießen.
prepare-add-solid = { $mass_g } g { $reagent } zugeben und rühren, bis alles gelöst ist.
prepare-room-temperature-make-up = Raumtemperatur annehmen lassen, dann mit destilliertem Wasser auf { $volume_cm3 } cm³ auffüllen und gut mischen.
prepare-cool-make-up = Auf Raumtemperatur abkühlen lassen, dann mit destilliertem Wasser auf { $volume_cm3 } cm³ auffüllen und gut mischen.
prepare-water = Etwa { $volume_cm3 } cm³ kaltes destilliertes Wasser in ein großes Becherglas geben.
prepare-label = Die Flasche sofort verschließen und beschriften.
prepare-water-fume-cupboard = Im Abzug: etwa { $volume_cm3 } cm³ kaltes destilliertes Wasser in ein großes Becherglas geben.
prepare-add-stock = { $volume_cm3 } cm³ { $reagent } ({ $mol_dm3 } mol/dm³) langsam und unter Rühren zugeben: den Vorrat ins Wasser.
prepare-add-strong-acid = { $volume_cm3 } cm³ { $reagent } ({ $mol_dm3 } mol/dm³) langsam und unter Rühren zugeben: die Säure ins Wasser, nie das Wasser in die Säure.
prepare-mind-heat = Achtung: Es wird heiß.
problem-unknown-reagent = unbekannter Stoff { $typed }. Bekannt sind: { $known }; von manchen auch die Hydrate
problem-unknown-reagent-hint = unbekannter Stoff { $typed }. Gemeint ist vielleicht { $hint }? Bekannt sind: { $known }; von manchen auch die Hydrate
refusal-no-solid = In Schulen gibt es { $reagent } als Flüssigkeit, nicht als Feststoff zum Abwiegen: eine Lösung zugeben.
warning-anhydrous = { $reagent } heißt hier: der Feststoff ohne Kristallwasser, { $formula }. Steht auf der Flasche etwas anderes, bitte { $others } wählen: Molare Masse und Wärme sind verschieden.
refusal-no-such-solution-at = Bei { $temperature_c } °C gibt es keine Lösung mit { $mol_dm3 } mol/dm³ { $reagent }: höchstens etwa { $most_mol_dm3 } mol/dm³ lösen sich.
refusal-too-strong = Dieser Versuch ist nichts für { $reagent } mit { $mol_dm3 } mol/dm³: Das ätzt und erhitzt sich heftig. Höchstens { $limit_mol_dm3 } mol/dm³ wählen.
refusal-gas-ammonia = Aus { $first } und { $second } entweicht Ammoniak, das beim Einatmen schadet. Für ein Gas ist dieser Versuch nicht gemacht: andere Stoffe wählen.
refusal-gas-carbon-dioxide = Aus { $first } und { $second } entweicht Kohlenstoffdioxid: Der Becher kann überschäumen und darf nicht geschlossen werden. Für ein Gas ist dieser Versuch nicht gemacht: andere Stoffe wählen.
warning-heat-unknown = Wie viel Wärme { $first } und { $second } zusammen abgeben oder aufnehmen und ob dabei ein Feststoff ausfällt, ist hier nicht bekannt: Fachkundige müssen es vorher mit kleinen Mengen ausprobieren.
refusal-no-such-solution = Eine solche Lösung gibt es nicht: Volumen, Massen und Konzentrationen prüfen.
advice-take-less = Weniger davon, schwächere Lösungen oder mehr Wasser nehmen.
refusal-would-boil = Die Mischung würde kochen und spritzen.
refusal-too-hot = Die Mischung würde etwa { $temperature_c } °C heiß: Über { $limit_c } °C verbrüht man sich.
warning-hot = Die Mischung kann etwa { $temperature_c } °C heiß werden: Über { $limit_c } °C schmerzt sie auf der Haut. Den Becher nicht in der Hand halten und im Becherglas lassen, bis er abgekühlt ist.
refusal-too-cold = Die Mischung hätte etwa { $temperature_c } °C: Unter { $limit_c } °C kann sie gefrieren, und die Kälte schadet der Haut. Wärmer beginnen oder weniger von dem nehmen, was kühlt.
warning-cold = Die Mischung kann bis etwa { $temperature_c } °C kalt sein: Nahe am Gefrieren sind die Messwerte unsicher. Wärmer beginnen oder weniger von dem nehmen, was kühlt.
amount-mass = { $mass_g } g { $reagent }
refusal-insoluble = { $weighed } lösen sich nicht ganz: Bei { $temperature_c } °C nimmt dieses Wasser höchstens etwa { $most_g } g auf. Weniger abwiegen oder mehr Wasser nehmen.
warning-dissolves-slowly = { $weighed } sind fast alles, was dieses Wasser bei { $temperature_c } °C aufnimmt (höchstens etwa { $most_g } g): Das löst sich langsam, und ein Rest kann bleiben. Weniger abwiegen.
refusal-violent = { $weighed } auf einmal zugegeben erhitzen zu heftig: Der Becher wird in Sekunden um etwa { $rise_c } °C wärmer und kann spritzen. Weniger abwiegen oder mehr Wasser nehmen.
warning-heats = Der Becher wird um etwa { $rise_c } °C wärmer, wenn er { $weighed } aufnimmt. Den Feststoff unter Rühren ins Wasser kippen, nie Wasser auf den Feststoff.
warning-drops-burn = Tropfen davon verätzen Haut und Augen.
reagent-hydrochloric-acid = Salzsäure
reagent-nitric-acid = Salpetersäure
reagent-sulfuric-acid = Schwefelsäure
reagent-ethanoic-acid = Essigsäure
reagent-citric-acid = Citronensäure
reagent-citric-acid-monohydrate = Citronensäure-Monohydrat
reagent-ethanedioic-acid = Oxalsäure
reagent-ethanedioic-acid-dihydrate = Oxalsäure-Dihydrat
reagent-tartaric-acid = Weinsäure
reagent-phosphoric-acid = Phosphorsäure
reagent-sodium-hydroxide = Natronlauge
reagent-potassium-hydroxide = Kalilauge
reagent-lithium-hydroxide = Lithiumhydroxid
reagent-lithium-hydroxide-monohydrate = Lithiumhydroxid-Monohydrat
reagent-ammonia = Ammoniakwasser
reagent-calcium-hydroxide = Calciumhydroxid
reagent-barium-hydroxide = Bariumhydroxid
reagent-barium-hydroxide-octahydrate = Bariumhydroxid-Octahydrat
reagent-sodium-carbonate = Natriumcarbonat
reagent-sodium-carbonate-decahydrate = Natriumcarbonat-Decahydrat
reagent-potassium-carbonate = Kaliumcarbonat
reagent-calcium-carbonate = Calciumcarbonat
reagent-sodium-hydrogencarbonate = Natriumhydrogencarbonat
reagent-potassium-hydrogencarbonate = Kaliumhydrogencarbonat
reagent-ammonium-nitrate = Ammoniumnitrat
reagent-ammonium-chloride = Ammoniumchlorid
reagent-potassium-nitrate = Kaliumnitrat
reagent-potassium-chloride = Kaliumchlorid
reagent-sodium-nitrate = Natriumnitrat
reagent-sodium-chloride = Natriumchlorid
reagent-sodium-ethanoate = Natriumacetat
reagent-sodium-ethanoate-trihydrate = Natriumacetat-Trihydrat
reagent-lithium-chloride = Lithiumchlorid
reagent-ammonium-sulfate = Ammoniumsulfat
reagent-calcium-chloride = Calciumchlorid
reagent-calcium-chloride-dihydrate = Calciumchlorid-Dihydrat
reagent-calcium-chloride-hexahydrate = Calciumchlorid-Hexahydrat
reagent-magnesium-sulfate = Magnesiumsulfat
reagent-magnesium-sulfate-heptahydrate = Magnesiumsulfat-Heptahydrat
reagent-copper-ii-sulfate = Kupfer(II)-sulfat
reagent-copper-ii-sulfate-pentahydrate = Kupfer(II)-sulfat-Pentahydrat
reagent-urea = Harnstoff
reagent-water = Wasser
solid-sodium-hydroxide = Natriumhydroxid
solid-potassium-hydroxide = Kaliumhydroxid
problem-no-solution-of = eine solche Lösung in Wasser gibt es nicht: { $solutes_text }
problem-water-range = hier ist Wasser von 0 bis 100 °C beschrieben, nicht bei { $temperature_c } °C
problem-unknown-glassware = unbekanntes Messgerät { $typed }; bekannt sind: { $known }

## practical

accepted-neutralisation = { $strength }: { $here_kj_mol } kJ/mol bei { $temperature_c } °C und diesen Konzentrationen, { $dilute_kj_mol } kJ/mol bei 25 °C in sehr verdünnter Lösung.
accepted-solution = { $reagent } in viel Wasser bei 25 °C: { $enthalpy_kj_mol } kJ/mol.
accepted-in-this-water = In so viel Wasser wie hier etwa { $enthalpy_kj_mol } kJ/mol.
strength-pair = { $acid ->
        [strong] Starke
       *[weak] Schwache
    } Säure mit { $alkali ->
        [strong] starker
       *[weak] schwacher
    } Lauge
accepted-school-one = Schulbücher nennen { $enthalpy_kj_mol } kJ/mol.
accepted-school-range = Schulbücher nennen { $from_kj_mol } bis { $to_kj_mol } kJ/mol.
problem-plain-text = muss reiner Text ohne Steuerzeichen sein
problem-division = muss 1, 0.5, 0.2 oder 0.1 sein
refusal-write-plain-text = Schreib einfachen Text in einer Zeile: Namen und Bezeichnungen bis 24 Zeichen, anderes bis 200.
refusal-type-volume = Gib das Volumen als Zahl von 0,01 bis 1000 cm³ ein, etwa 4,5.
refusal-type-temperature = Gib die Temperatur als Zahl von −5 bis 60 °C ein, etwa 21,5.
refusal-choose-divisions = Wähle ein Thermometer mit einer Teilung von 1; 0,5; 0,2 oder 0,1 °C.
refusal-type-own-volume = Gib dein Volumen als Zahl von 0 bis 1000 cm³ ein, etwa 23,5.
refusal-type-own-change = Gib deine Temperaturänderung als Zahl von −65 bis 65 °C ein, etwa +6,2 oder −3,5.
refusal-type-mass = Gib die Masse als Zahl bis 1000 g ein, etwa 95,2.
refusal-type-plus-minus = Gib das ± als Zahl über 0 bis 10 ein.
refusal-type-air-pressure = Gib den Luftdruck in hPa ein, etwa 1013.
refusal-type-altitude = Gib die Höhe als Zahl von −430 bis 5000 m ein.
refusal-type-check-temperature = Gib die Temperatur als Zahl von −5 bis 110 °C ein, etwa 21,5.
refusal-cup-label = Schreib die Bezeichnung des Bechers in einfachem Text, bis 40 Zeichen.
refusal-say-which-check = Sag in check, welche Prüfung gemeint ist.
refusal-repeat-under-way = An diesem Platz läuft ein Durchgang: Beende ihn zuerst.
refusal-probe-takes-temperature = Der Fühler misst gerade eine Temperatur: Warte darauf oder beginne den Versuch.
refusal-check-under-way = Es läuft schon eine Prüfung: Speichere oder verwirf sie zuerst.
refusal-no-probe-to-check = Dieser Platz hat keinen Fühler, der geprüft werden könnte.
refusal-type-pressure-or-altitude = Gib den Luftdruck ein oder sonst die Höhe des Ortes.
refusal-cannot-be = Das kann nicht sein: { $reason }.
refusal-step-not-now = Dieser Schritt kommt jetzt nicht.
refusal-type-reference = Gib ein, was das Vergleichsthermometer anzeigt.
refusal-probe-not-at-rest = Der Fühler ist noch nicht zur Ruhe gekommen: Rühre, warte und lies beide noch einmal ab.
refusal-type-both-masses = Gib beide Massen ein: die des warmen Wassers und die des zugegebenen.
refusal-compare-between = Vergleiche zwischen { $least_c } und { $most_c } °C: Mach das Wasser wärmer oder kälter und lies beide noch einmal ab.
refusal-check-found-nothing = Die Prüfung hat noch nichts ergeben: Mach weiter oder verwirf sie.
refusal-cup-needs-label = Gib dem Becher eine Bezeichnung, an der du ihn wiedererkennst.
refusal-no-such-check = Diese Prüfung gibt es nicht, oder sie wurde schon zurückgenommen.
refusal-no-check-under-way = Es läuft keine Prüfung.
csv-cell = Zeile { $line }, Spalte { $column }: { $what }
csv-empty = ist leer: trage ein, was dort stehen soll, oder lösche die Zeile
csv-not-a-number = keine Zahl: { $typed }
csv-not-a-number-dot = keine Zahl: { $typed } (Punkt statt Komma)
csv-not-between = { $typed } liegt nicht zwischen { $least } und { $most }
csv-file-empty = die Datei ist leer; sie braucht die Kopfzeile { $header_text }
csv-not-csv = keine CSV-Datei: { $reason }
csv-twice-in-header = steht zweimal in der Kopfzeile
csv-missing = fehlt; die Kopfzeile ist { $header_text }
csv-not-whole = keine ganze Zahl: { $typed }
csv-no-rows = keine Zeilen unter der Kopfzeile; ist es die richtige Datei?
csv-bad-row = keine CSV-Zeile: { $reason }
csv-too-many-rows = mehr als { $most } Zeilen; ist es ein einziger Versuch?
csv-cells-under-header = { $cells } Zellen unter einer Kopfzeile mit { $header }
note-record-repaired = Das Protokoll war beschädigt und wurde beim Start repariert: Vergleiche die Tabelle mit dem, was du getan hast.
refusal-write-note = Schreib die Notiz in text.
refusal-notes-enough = Es gibt schon { $count } Notizen.
refusal-no-such-note = Diese Notiz gibt es nicht, oder sie wurde schon zurückgezogen.
refusal-finish-first = Beende zuerst den Versuch, dann lies deine eigenen Geraden ab.
refusal-nothing-to-read = Es gibt noch nichts abzulesen: Beende zuerst einen Durchgang mit Messwerten.
refusal-own-reading-stands = Deine eigene Ablesung bleibt: Die Ergebnisse wurden schon gezeigt.
refusal-say-why-not-read = Sag, warum du es nicht ablesen konntest.
refusal-not-turned-yet = Die Temperatur hat noch nicht gewendet. Mach noch einen Durchgang, oder sag, warum du es nicht ablesen konntest.
refusal-finish-repeat = Beende zuerst den laufenden Durchgang.
refusal-adopt-portions-only = Nur die Messwerte eines Versuchs mit Portionen können übernommen werden.
refusal-adopt-label = Sag, von wem die Messwerte sind, zum Beispiel mit dem Namen der anderen Station (label).
refusal-adopt-choose-file = Wähle die Messwerte-Datei der anderen Station.
refusal-adopt-unusable = Diese Messwerte sind nicht brauchbar: { $reason }.
refusal-adopt-too-many = Das sind { $count } Messwerte; höchstens { $most } lassen sich übernehmen. Lass Durchgänge aus der Datei weg.
refusal-nothing-adopted = Es sind keine Messwerte einer anderen Gruppe in Gebrauch.
safety-school-first = Die Gefährdungsbeurteilung deiner Schule und deine Lehrkraft gehen vor.
safety-eye-protection = Spritzdichte Schutzbrille tragen.
safety-small-volumes = Kleine Mengen: nicht mehr, als der Plan vorsieht.
safety-wipe-spills = Verschüttetes sofort aufwischen.
safety-rinse-skin = Spritzer auf der Haut mit viel Wasser abspülen.
safety-splash-in-eye = Spritzer im Auge: Sofort mit Wasser spülen und die Lehrkraft rufen.
safety-no-mouth-pipetting = Nie mit dem Mund pipettieren.
safety-cup-in-beaker = Den Becher in ein Becherglas stellen, damit er nicht umkippt.
clear-pour-away = Die Mischung so entsorgen, wie es an der Schule gilt.
clear-collect = Die Mischung nicht in den Ausguss: sammeln, wo es die Schule vorsieht.
safety-water = Wasser ist nicht gefährlich.
amount-portions = { $count } Portionen zu { $volume_cm3 } cm³
amount-mass-only = { $mass_g } g
amount-volume-only = { $volume_cm3 } cm³
basis-not-classified = Nicht als gefährlich eingestuft ({ $source }).
basis-pure = Als Reinstoff ({ $source }).
basis-yours-to-find = Das sollst du herausfinden: angenommen sind { $mol_dm3 } mol/dm³, das Meiste, was dieser Plan finden kann.
basis-solution-not-classified = Bei dieser Konzentration nicht als gefährlich eingestuft, Massenanteil { $percent } % ({ $source }).
basis-percent = Massenanteil { $percent } % ({ $source }).
basis-solution = Bei dieser Konzentration, Massenanteil { $percent } % ({ $source }).
caution-keep-off = { $reagent }: nicht auf Haut und in die Augen kommen lassen, bleibende Schäden sind möglich. An Handschuhe denken.
caution-do-not-breathe = Dampf oder Staub nicht einatmen: Flaschen geschlossen halten, Raum lüften.
caution-no-lid = Kein Deckel: Es entsteht ein Gas. Langsam zugeben, Raum lüften.
caution-spatula = { $reagent } mit dem Spatel nehmen, nie mit den Fingern.
caution-flames = { $reagent } von Flammen und allem Brennbaren fernhalten.
caution-hot-cup = Der Becher kann heiß werden: den Feststoff ins Wasser geben, nie Wasser auf den Feststoff.
clear-probe = Nimm den Fühler heraus und spüle ihn mit Wasser ab.
clear-rinse = Spüle Becher und Glasgeräte mit Wasser.
clear-wipe = Wische den Tisch feucht ab.
clear-hands = Wasch dir die Hände.
heat-no-start-reading = Der Messwert vor der ersten Portion (0 cm³) fehlt.
heat-cannot-be-used = Die Wärmebilanz ist hier nicht anwendbar: { $reason }.
heat-no-trace = Es gibt keinen Verlauf, nur einzelne Messwerte.
judged-minutes = Du hast { $own_min } min gebraucht; zu den Zeitpunkten der Station wären es etwa { $station_min } min gewesen.
judged-early-none = Keine Ablesung kam vor dem Zeitpunkt der Station.
judged-early = { $count ->
        [one] Eine Ablesung kam vor dem Zeitpunkt der Station.
       *[other] { $count } Ablesungen kamen vor dem Zeitpunkt der Station.
    }
judged-none-off = Keine davon liegt um mehr als einen Schritt des Fühlers, 0,06 °C, daneben.
judged-at-portion = Durchgang { $repeat }, Portion { $portion }
judged-at-start = Durchgang { $repeat }, Start
judged-too-low = Der größte Fehler ist { $error_c } °C, zu niedrig: { $where }.
judged-too-high = Der größte Fehler ist { $error_c } °C, zu hoch: { $where }.
judged-unread = { $count ->
        [one] Eine Portion hat keine Ablesung.
       *[other] { $count } Portionen haben keine Ablesung.
    }
judged-hardly-waited = Du hast kaum länger gewartet als die Station.
judged-waited-at-start = Vor der ersten Portion hast du { $seconds } s länger gewartet als nötig. Das hat nur Zeit gekostet.
judged-waited = Du hast { $seconds } s länger gewartet als die Station.
judged-moved = Das hat eine Ablesung um bis zu { $moved_c } °C verschoben.
judged-no-lines = Deine Messwerte ergeben keine zwei Geraden, die sich schneiden.
judged-lines-own = Geraden: { $own_cm3 } cm³ mit deinen Messwerten; die Zeitpunkte der Station sind zu wenige für einen Vergleich.
judged-best = Die Wärmebilanz der ganzen Kurve ergibt { $best_cm3 } cm³, hier der beste Wert. Deine Geraden liegen { $own_off_cm3 } cm³ daneben, die der Station { $station_off_cm3 } cm³.
judged-best-own = Die Wärmebilanz der ganzen Kurve ergibt { $best_cm3 } cm³, hier der beste Wert. Deine Geraden liegen { $own_off_cm3 } cm³ daneben.
judged-lines = Geraden: { $own_cm3 } cm³ mit deinen Messwerten, { $station_cm3 } cm³ mit denen der Station.
once-cannot-be-mixed = Diese Mengen lassen sich nicht mischen: { $reason }.
once-no-repeat = kein Durchgang ergab ein Ergebnis
once-no-enthalpy = Keine Enthalpie pro Mol: { $reason }.
of-reaction = Reaktion
once-counted-as-water = { $reagent } im Becher wird wie Wasser gerechnet.
of-dissolved = { $reagent } gelöst
once-not-recorded = Das Mischen wurde noch nicht aufgezeichnet.
problem-acid-one-concentration = [acid] gib concentration_mol_dm3 (der Klasse bekannt) oder prepared_mol_dm3 an, nicht beides
practical-pair = { $first } mit { $second }
amount-volume = { $volume_cm3 } cm³ { $reagent }
problem-not-toml = { $where_text }: kein gültiges TOML: { $reason }
hazard-near-a-limit = Weniger als 5 % unter einer Grenze der Verordnung: Gezeigt wird die strengere Einstufung.
problem-zero-or-more = muss 0 oder mindestens 0.001 sein
problem-liquid-water = [liquid] Wasser hat keine concentration_mol_dm3
problem-liquid-needs = [liquid] { $reagent } braucht eine concentration_mol_dm3
problem-addition-one = [addition] gib mass_g (Feststoff) oder volume_cm3 mit concentration_mol_dm3 (Lösung) an
problem-addition-concentration = [addition] eine Lösung braucht volume_cm3 und concentration_mol_dm3, ein Feststoff keins von beiden
field-above = Muss größer als { $limit } sein.
field-at-least = Muss mindestens { $limit } sein.
field-below = Muss kleiner als { $limit } sein.
field-at-most = Darf höchstens { $limit } sein.
field-letters = Höchstens { $limit } Zeichen.
field-number = Muss eine Zahl sein.
field-whole-number = Muss eine ganze Zahl sein.
field-table = Muss eine Tabelle mit Schlüsseln sein.
field-text = Muss ein Text sein.
field-unknown = Dieser Schlüssel ist hier nicht bekannt.
field-missing = Fehlt.
field-one-of = Muss { $choices_text } sein.
more-problems = { $first } (und { $count } weitere)
plausible-check-plan = Prüfe den Plan: { $reason }.
plausible-start-far = Der Start zeigt { $start_c } °C, aber { $place ->
        [room] der Raum
       *[alkali] die Lauge
    } hat { $other_c } °C: War der Fühler im Becher, und ist es der richtige?
plausible-too-much = Nach { $volume_cm3 } cm³ beträgt die Änderung { $change_c } °C, aber diese Stoffe schaffen höchstens { $most_c } °C: Prüfe Konzentrationen, Flaschen und Fühler.
plausible-exchanged = Die Konzentrationen ergeben { $expected_cm3 } cm³, der Äquivalenzpunkt liegt bei { $end_point_cm3 } cm³: Wurden Säure und Lauge vertauscht?
plausible-end-point = Die Konzentrationen ergeben { $expected_cm3 } cm³, der Äquivalenzpunkt liegt bei { $end_point_cm3 } cm³: Stimmten die Flaschen, der Plan und die Volumina?
plausible-enthalpy = Die Enthalpie beträgt { $enthalpy_kj_mol } kJ/mol, erwartet sind { $expected_kj_mol } kJ/mol: Prüfe die Konzentration der Lauge, die Volumina und den Deckel.
basis-middle = Mitte dessen, was dieser Plan finden kann
basis-known = der Klasse bekannt
basis-prepared = so angesetzt
predict-change-pair = { $reason }; bitte [acid] oder [alkali] ändern
predict-count-too-small = [portions] count = { $count } lässt keinen Äquivalenzpunkt mit { $readings } Messwerten auf jeder Seite zu: bitte mindestens { $least } Portionen planen
predict-as-planned = wie geplant
heat-needs-portions = Die Wärmebilanz braucht mindestens { $least } Portionen.
predict-not-passed = Der Äquivalenzpunkt wird nicht sicher überschritten: bitte mehr Portionen planen.
predict-first-portion = Der Äquivalenzpunkt liegt in der ersten Portion: bitte kleinere Portionen planen.
predict-no-curve = Es lässt sich keine Kurve vorhersagen: { $reason }.
predict-usual-cup = Der Becher verliert Wärme wie ein Schaumbecher mit Deckel üblicherweise; andere Becher weichen ab.
predict-exact = Die Konzentrationen gelten als genau; ± ist eine Standardunsicherheit eines Durchgangs.
predict-usual-cup-spread = Der Becher verliert Wärme wie ein Schaumbecher mit Deckel üblicherweise; andere Becher weichen ab, und ± enthält die übliche Streuung.
predict-warm-as-room = Lauge und Säure sind etwa so warm wie der Raum, wenn der Plan nichts anderes sagt; die Temperatur der Lauge wird vorher gemessen.
predict-minutes = Das Eintauchen in die Lauge dauert { $dip_min } min, ein ruhiger Start { $start_min } min, eine Portion { $pour_s } s zum Zugeben und { $graph_s } s (zügig: { $quick_s } s) zum Einstellen, Spülen und Nachfüllen { $rinse_min } min. Aufbauen und Aufräumen kommen dazu.
predict-warm-as-cup = Was zugegeben wird, ist so warm wie der Becher, wenn der Plan nichts anderes sagt.
predict-minutes-once = Ein ruhiger Start dauert { $start_min } min, Spülen und Nachfüllen { $rinse_min } min; Aufbauen und Aufräumen kommen dazu.
problem-once-no-solution = eine solche Lösung in Wasser gibt es nicht: bitte Volumina, Masse und Konzentrationen von [liquid] und [addition] prüfen
predict-heat-unknown = Die Wärme von { $added } in { $liquid } ist hier nicht bekannt, daher lässt sich keine Änderung angeben.
predict-no-change = Es lässt sich keine Änderung angeben: { $reason }.
warning-small-change = Die Temperatur ändert sich nur um { $change_c } °C: Das ± wird groß. Dafür keine stärkeren Lösungen ansetzen, sondern mit dem Fühler ablesen, genauer abmessen und öfter wiederholen.
warning-too-long = Etwa { $minutes } Minuten am Arbeitsplatz: Mit { $aside_min } Minuten zum Auf- und Abbauen ist das mehr als eine Stunde von { $lesson_min }. Bitte weniger Durchgänge oder Portionen planen, oder das zügige Tempo.
warning-not-passed = Der Äquivalenzpunkt ({ $end_point_cm3 } cm³) wird mit { $count } Portionen ({ $total_cm3 } cm³) nicht überschritten: bitte mehr Portionen planen.
warning-few-after = { $count ->
        [one] Nur { $count } Messwert liegt hinter dem Äquivalenzpunkt, nötig sind drei: bitte mehr Portionen planen.
       *[other] Nur { $count } Messwerte liegen hinter dem Äquivalenzpunkt, nötig sind drei: bitte mehr Portionen planen.
    }
warning-few-before = { $count ->
        [one] Nur { $count } Messwert liegt vor dem Äquivalenzpunkt, nötig sind drei: bitte kleinere Portionen planen.
       *[other] Nur { $count } Messwerte liegen vor dem Äquivalenzpunkt, nötig sind drei: bitte kleinere Portionen planen.
    }
warning-heat-balance-refuses = Die Wärmebilanz wird ablehnen: { $reason }.
warning-rough-curve = Die Kurve nimmt bis zum letzten Proton eine mittlere Wärme an: nur ein grober Anhalt.
warning-lines-refuse = Geraden werden mit diesen Portionen etwa { $share } von 100 Durchgängen ablehnen.
stock-own-bottle = eigene Flasche der Schule
prepare-usual-practice = Nur übliche Praxis: Gefährdungsbeurteilung des Arbeitgebers, örtliche Regeln und Fachkundige gehen vor. Das Etikett einer Flasche zählt mehr als eine Tabelle.
problem-benches = 1 bis 100 Arbeitsplätze sind möglich, nicht { $count }
prepare-not-down-the-sink = Nie Feststoffe oder konzentrierte Lösungen in den Ausguss geben.
lesson-explain = Erklären, austeilen, Schutzbrillen aufsetzen
lesson-clear-up = Aufräumen, Hände waschen
lesson-talk = Eigene Geraden, Ergebnisse, Gespräch
lesson-repeats = { $count ->
        [one] 1 Durchgang am Arbeitsplatz
       *[other] { $count } Durchgänge am Arbeitsplatz
    }
item-cup = isolierter Becher mit Deckel, in einem Becherglas, das ihn aufrecht hält
item-stirrer = Rührer
item-bottle = Flasche oder Becherglas je Lösung, beschriftet
item-waste-beaker = Abfallbecher
item-wash-bottle = Spritzflasche, Papiertücher
item-eye-protection = spritzdichte Schutzbrille (für zwei; Lehrkraft und Technik auch)
item-pipette-for = Pipette oder Messzylinder für { $volume_cm3 } cm³
item-syringe-for = Spritze oder Messzylinder für Portionen zu { $volume_cm3 } cm³
item-glassware-for = { $glassware } für Portionen zu { $volume_cm3 } cm³
item-cylinder-for = Messzylinder für { $volume_cm3 } cm³
item-balance = Waage, die auf 0,01 g anzeigt (mehrere Tische können sich eine teilen)
item-weighing-boat = Wägeschiffchen mit { $mass_g } g
spill-solid = Verschütteter Feststoff: trocken auffegen, dann feucht nachwischen.
spill-small = Wenig verschüttet: sofort mit viel Wasser aufwischen, Schutzbrille auf.
spill-acid = Mehr Säure verschüttet: Natriumhydrogencarbonat oder -carbonat darauf, bis es nicht mehr schäumt, dann aufwischen.
spill-alkali = Mehr Lauge verschüttet: mit Wasser verdünnen, Citronensäurelösung dazu, dann aufwischen.
safety-splash-in-eye-long = Spritzer im Auge: 20 Minuten unter sanft fließendem Wasser spülen; ärztliche Hilfe rufen.
label-not-classified = Bei dieser Konzentration nicht als gefährlich eingestuft; die üblichen Vorsichtsregeln gelten.
label-of-stock = Der Vorrat
label-of-bottle = Etikett der Flasche
label-of-store = Etikett der Vorratsflasche
label-staff-only = Vorratsflasche, nur für Lehrkräfte und Technik
label-to-find = Konzentration gesucht
label-made-on = Angesetzt am: ________ von: ________
label-hazards = { $signal }: { $statements }.
label-hazards-no-signal = { $statements }.
label-statement = { $hazard } ({ $code })
sheet-weighed = { $count }-mal { $each_g } g; insgesamt { $total_g } g bereithalten.
sheet-lay-out = Bereitstellen
sheet-items = { $count } × { $item }
sheet-mind = Zu beachten
sheet-spills = Verschüttetes
sheet-disposal = Entsorgen
sheet-make-from-mass = { $reagent }, { $mol_dm3 } mol/dm³: { $volume_cm3 } cm³ ansetzen aus { $mass_g } g ({ $stock })
sheet-make-from-volume = { $reagent }, { $mol_dm3 } mol/dm³: { $volume_cm3 } cm³ ansetzen aus { $stock_cm3 } cm³ ({ $stock })
sheet-why-so-much = Eingefüllt werden insgesamt { $poured_cm3 } cm³. Der Rest: je Platz { $rinse_cm3 } cm³ zum Spülen der Geräte und Eintauchen des Fühlers, dazu { $percent } % für Verschüttetes und misslungene Durchgänge.
sheet-gloves = Beim Umgang mit dem Vorrat zusätzlich zur Schutzbrille Schutzhandschuhe gegen Chemikalien tragen.
sheet-vessel = { $count ->
    [one] Alles zusammen kommt in eine Flasche oder einen Kanister von { $dm3 } dm³: Polyethylen für Laugen, Glas oder Polyethylen für Säuren.
   *[other] Alles zusammen kommt in { $count } Flaschen oder Kanister von { $dm3 } dm³: Polyethylen für Laugen, Glas oder Polyethylen für Säuren.
}
sheet-near-limit = Keine 10 % neben einem Grenzwert: ab etwa { $mol_dm3 } mol/dm³ gilt auch { $statements }. Sorgfältig abmessen; eine stärkere Lösung braucht das strengere Etikett.
sheet-strength-as-made = So angesetzt ist die Konzentration auf etwa { $percent } % bekannt (± { $u_mol_dm3 } mol/dm³, eine Standardunsicherheit): Vorräte sind nicht rein, und ihr Etikett nennt einen Bereich.
sheet-as-sure-as-bottle = Die Konzentration ist so gut bekannt wie die der eigenen Flasche, mit Messzylindern nicht besser als auf 0.6 %.
standardise-head = Um es genauer zu wissen: den Titer bestimmen ({ $reagent })
standardise-weigh = Etwa { $mass_g } g trockenes Kaliumhydrogenphthalat auf 0.01 g genau in einen Erlenmeyerkolben einwiegen und in etwa 50 cm³ destilliertem Wasser lösen.
standardise-burette = Zwei Tropfen Phenolphthalein zugeben. { $reagent } aus einer Bürette zugeben bis zum ersten Rosa, das eine halbe Minute bleibt.
standardise-pipette = 25.0 cm³ { $reagent } in einen Erlenmeyerkolben pipettieren, zwei Tropfen Phenolphthalein zugeben.
standardise-alkali-burette = Die Lauge mit dem bestimmten Titer ({ $alkali }) aus einer Bürette zugeben bis zum ersten Rosa, das eine halbe Minute bleibt.
standardise-thrice = Dreimal ausführen. Weichen die Ergebnisse um mehr als 1 % voneinander ab, noch einmal.
standardise-by-mass = Konzentration in mol/dm³ = { $factor } × Masse in g ÷ Volumen in cm³. Den Mittelwert auf das Etikett und in den Plan schreiben.
standardise-by-ratio = Die Konzentration ({ $reagent }) aus den Volumen und der Reaktionsgleichung berechnen. Den Mittelwert auf das Vorratsetikett und in den Plan schreiben.
standardise-known-to = So ist sie auf etwa { $percent } % bekannt (± { $u_mol_dm3 } mol/dm³, eine Standardunsicherheit), mit einer Waage auf 0.01 g und Glasgeräten der Klasse B.
standardise-flames = Phenolphthalein von Flammen fernhalten: es ist in Ethanol gelöst.
sheet-class-to-find = Die Klasse soll die Konzentration finden: nicht auf die Flaschen der Klasse schreiben.
sheet-needed = { $volume_cm3 } cm³ werden gebraucht. Der Plan nennt die Konzentration nicht.
sheet-can-resolve = Dieser Plan kann { $least_mol_dm3 } bis { $most_mol_dm3 } mol/dm³ finden.
sheet-label-holds = Das Etikett gilt für { $mol_dm3 } mol/dm³ und weniger.
lesson-left = { $minutes ->
        [one] 1 Minute bleibt.
       *[other] { $minutes } Minuten bleiben.
    }
lesson-too-long = { $minutes } Minuten zu lang. Mit { $repeats } der Durchgänge kann es passen; sonst aufteilen.
lesson-of = Stunde von { $minutes } Minuten
check-ice = Eispunkt
check-comparison = Vergleich mit einem Thermometer
check-ice-and-boiling = Eispunkt und Siedepunkt
day-not-known = Tag unbekannt
day-clock-not-set = { $day_date }, nach einer Uhr, die nicht gestellt war
probe-nothing-told = Von einer Prüfung des Fühlers ist nichts gesagt: Die Temperaturen gelten, wie sie dastehen.
probe-not-checked = Der Fühler wurde nicht geprüft: Seine Temperaturen können um ± 0,5 °C falsch sein (Datenblatt). In einer Differenz zweier Temperaturen hebt sich das auf.
probe-corrected = Die Temperaturen sind um { $added_c } °C (± { $u_c } °C) berichtigt: { $check }, { $day }.
probe-offset-cancels-slope = In einer Differenz hebt sich die Verschiebung auf; von der Steigung bleiben ± { $percent } %, die bei der Enthalpie mitzählen.
probe-offset-cancels = In einer Differenz zweier Temperaturen hebt sich eine Verschiebung auf; die Steigung wurde nicht geprüft.
probe-changed = Der Fühler oder seine Berichtigung hat sich während Durchgang { $repeat } geändert: Sieh nach, ob die Temperaturen zusammengehören.
probe-differing = Die Durchgänge wurden nicht gleich berichtigt: Sieh nach, was bei jedem zum Fühler steht.
problem-unknown-key = { $key_name }: unbekannter Schlüssel; entferne ihn oder prüfe die Schreibweise
problem-missing = { $key_name }: fehlt; ergänze es
problem-got-hidden = { $key_name }: { $said } (bekommen: wird nicht gezeigt)
problem-got = { $key_name }: { $said } (bekommen: { $got_typed })
problem-of-table = [{ $table_name }] { $said }
input-table = eine Tabelle
input-list = eine Liste
input-greater-than = muss größer als { $limit } sein
input-greater-than-equal = muss mindestens { $limit } sein
input-less-than = muss kleiner als { $limit } sein
input-less-than-equal = darf höchstens { $limit } sein
input-finite-number = muss eine endliche Zahl sein
input-float-type = muss eine Zahl sein
input-float-parsing = muss eine Zahl sein
input-int-type = muss eine ganze Zahl sein
input-int-parsing = muss eine ganze Zahl sein
input-int-from-float = muss eine ganze Zahl sein
input-string-type = muss ein Text sein
input-bool-type = muss true oder false sein
input-bool-parsing = muss true oder false sein
input-literal-error = muss { $choices_text } sein
input-model-type = muss eine Tabelle mit Schlüsseln sein
input-list-type = muss eine Liste sein
input-string-too-short = muss mindestens { $count } Zeichen haben
input-string-too-long = darf höchstens { $count } Zeichen haben
input-string-pattern-mismatch = muss zum Muster '{ $pattern_text }' passen
refusal-adopted = Das sind Messwerte einer anderen Gruppe. Geh zuerst zu euren eigenen zurück.
refusal-probe-being-checked = Die Lehrkräfte prüfen den Fühler: Bitte sie, die Prüfung zu speichern oder zu verwerfen.
state-not-begun = Der Versuch hat noch nicht begonnen.
state-alkali = Die Temperatur der Lauge wird gerade gemessen; beginne oder warte.
state-start = Die Starttemperatur wird gerade gemessen.
state-portion = Jetzt ist eine Portion dran.
state-settling = Die Temperatur wird ruhig.
state-repeat-ended = Der Durchgang ist zu Ende: Spülen, neu füllen, dann drücken.
state-paused = Der Versuch ist unterbrochen: Mach zuerst weiter.
state-ended = Der Versuch ist beendet.
prompt-eye-protection = Schutzbrille tragen. Deine Lehrkraft und die Gefährdungsbeurteilung der Schule gehen vor.
prompt-you-decide = Du entscheidest; die Station zeichnet nur auf.
prompt-probe-checking = Die Lehrkräfte prüfen den Fühler. Bitte warte.
prompt-only-they = Nur sie können die Prüfung beenden.
prompt-dip-first = Zuerst, wenn es geht: Tauche den abgespülten, abgewischten Fühler in das Gefäß mit { $reagent }, damit ihre Temperatur bekannt ist.
prompt-begin = Gib { $amount } in den Becher. Fühler hinein.
button-cup-filled = Becher gefüllt, Fühler drin
prompt-hold-probe = Halte den Fühler ruhig in das Gefäß mit { $reagent }.
prompt-takes-by-itself = Die Station misst die Temperatur von allein.
prompt-start-once = Warte. Rühre sanft. Die Temperatur vor dem Mischen wird aufgezeichnet.
prompt-start = Warte. Rühre sanft. Die Starttemperatur wird ruhig.
prompt-weigh-now = Wiege inzwischen { $amount } ab.
prompt-measure-now = Miss inzwischen { $amount } ab.
prompt-tip = Schütte jetzt { $amount } auf einmal hinein. Rühre um.
prompt-recorded-to-the-end = Bis zum Ende der Zeit wird weiter aufgezeichnet.
prompt-clock-read = Lies das Thermometer alle { $every_s } s ab. Tippe den Wert ein.
prompt-clock-stir = Rühre sanft. Lies auf Augenhöhe ab.
prompt-mix = Gib jetzt { $amount } auf einmal dazu. Rühre um.
prompt-press-mixing = Drück genau im Moment des Mischens.
button-it-is-in = Ist im Becher
prompt-portion = Gib Portion { $portion } dazu: { $amount }. Rühre um.
prompt-press-as-soon = Drück, sobald sie im Becher ist.
button-portion-is-in = Portion { $portion } ist im Becher
prompt-after = Rühre sanft weiter. Die Temperatur nach dem Mischen wird aufgezeichnet.
prompt-settle = Warte. Rühre sanft weiter. Die Temperatur wird ruhig.
prompt-rinse = Spüle Becher und Fühler ab. Fülle neu: { $amount }.
prompt-set-up-alkali = Halte den sauberen, trockenen Fühler in das Gefäß mit { $reagent }.
button-probe-in-alkali = Fühler ist drin
prompt-set-up-alkali-typed = Miss die Temperatur im Gefäß mit { $reagent }. Tippe sie ein.
button-alkali-left-out = Ohne sie weiter
prompt-set-up-probe = Spüle { $tool ->
        [probe] den Fühler
       *[thermometer] das Thermometer
    } mit Wasser ab. Wische { $tool ->
        [probe] ihn
       *[thermometer] es
    } trocken.
prompt-set-up-taken = Temperatur gemessen: { $reagent }, { $temperature_c } °C.
prompt-set-up-clean = Tropfen daran kämen sonst in den Becher.
prompt-set-up-sketch = Zeichne, wie die Temperatur wohl verläuft.
prompt-set-up-sketch-where = Zeichne es auf dieser Seite, vor der ersten Portion. Es wird nicht bewertet.
button-sketch-left-out = Ohne Skizze weiter
button-probe-rinsed = Abgespült und abgewischt
prompt-set-up-fill = Fülle den Becher: { $amount }. { $tool ->
        [probe] Fühler
       *[thermometer] Thermometer
    } hinein, Deckel drauf.
prompt-set-up-same-bottle = Fülle ihn frisch, aus derselben Flasche.
button-set-up-filled = { $tool ->
        [probe] Fühler
       *[thermometer] Thermometer
    } drin, Deckel drauf
prompt-set-up-empty = Gieß den Becher aus, wie es an der Schule gilt.
prompt-set-up-ask = Frag deine Lehrkraft, wenn du nicht sicher bist, wohin.
button-cup-emptied = Der Becher ist leer
prompt-set-up-wash = Spüle den Becher und { $tool ->
        [probe] den Fühler
       *[thermometer] das Thermometer
    } ab. Trockne beide.
prompt-set-up-dry = Wasser im Becher würde die nächste Füllung verdünnen.
button-cup-rinsed = Gespült und trocken
prompt-lid-and-stir = Dann Deckel drauf und sanft rühren.
prompt-keep-lid = Lass den Deckel drauf.
prompt-wipe = Wische den Fühler ab. Fülle aus derselben Flasche nach.
button-rinsed = Gespült und neu gefüllt
prompt-paused-by = Pause durch die { $role ->
        [teacher] Lehrkraft
       *[technician] Technik
    }. Bitte warten.
prompt-still-recorded = Die Temperatur wird weiter aufgezeichnet.
prompt-paused = Pause. Drück, um weiterzumachen.
button-go-on = Weiter
prompt-finished = Fertig. Spüle Becher und Fühler, räume auf, wasch dir die Hände.
prompt-finished-before-turn = Vor dem Wendepunkt beendet: noch kein <end-point>Endpunkt</end-point> ablesbar.
prompt-go-on-or-clear = Miss weiter, oder räume auf und wasch dir die Hände.
prompt-several-probes = Mehrere Fühler sind eingesteckt. Zieh alle bis auf einen ab.
prompt-probe-id = Oder die Nummer des Fühlers dieser Station als probe.id in station.toml eintragen.
prompt-another-probe = Ein anderer Fühler ist eingesteckt. Steck den dieser Station ein.
prompt-keep-new-probe = Soll der neue bleiben: die Station neu starten. Nennen die Einstellungen einen Fühler, vorher probe.id ändern.
prompt-no-reading = Der Fühler misst nicht. Prüfe den Stecker; hol deine Lehrkraft.
prompt-nothing-lost = Nichts ist verloren. Nach dem Einstecken kann es etwa 15 Sekunden dauern, bis er antwortet.
prompt-choose-divisions = Welches Thermometer nehmt ihr?
prompt-look-at-scale = Wie weit liegen zwei Striche seiner Skala auseinander? Digital: ein Schritt der letzten Ziffer.
prompt-begin-typed = Gib { $amount } in den Becher. Thermometer hinein.
button-cup-filled-thermometer = Becher gefüllt, Thermometer drin
prompt-type-reading = Rühre um. Warte, bis die Anzeige ruhig ist. Tippe die Temperatur ein.
prompt-eye-level = Lies auf Augenhöhe ab, die Spitze mitten in der Flüssigkeit.
prompt-own-reading = Rühre um. Lies ab, wenn du die Temperatur für ruhig hältst.
button-read-now = Jetzt ablesen
prompt-own-portion = Gib Portion { $portion }: { $amount } dazu, wann du willst. Rühre um.
prompt-own-mix = Gib { $amount } auf einmal dazu, wann du willst. Rühre um.
reason-not-sure = unsicher
refusal-question-not-open = Diese Frage ist nicht offen: Sie wurde beantwortet oder spielt keine Rolle mehr.
refusal-finish-stands = Eure eigene Ablesung ist gespeichert, deshalb bleibt der Versuch beendet.
refusal-sketch-not-now = Eine Vorhersage kann man nur vor der ersten Portion zeichnen.
refusal-sketch-empty = Zeichne zuerst eine Linie von links nach rechts.
refusal-not-this-step = Jetzt ist ein anderer Schritt dran: Folge der Anweisung.
refusal-answers-are = Die Antworten sind: { $known_text }.
reason-spilled = der Becher wurde verschüttet
answer-not-sure = Nicht sicher
question-leaves-out = Weggelassen, bis jemand antwortet: { $question }
question-asks = Die Station fragt: { $question }
question-no-change = Keine Änderung: Hast du Portion { $portion } dazugegeben?
answer-yes-it-is-in = Ja, ist im Becher
answer-no-not-yet = Nein, noch nicht
question-double = Eine große Änderung: Kam Portion { $portion } einmal oder zweimal dazu?
answer-once = Einmal
answer-twice = Zweimal
question-volume = Portion { $portion } wirkt kleiner oder größer: War es das übliche Volumen?
question-not-stirred = Die Temperatur kriecht: Wurde umgerührt?
answer-yes = Ja
answer-stirring-now = Wird jetzt umgerührt
question-sudden-fall = Eine plötzliche Änderung: Wurde etwas verschüttet, oder ist der Deckel ab?
answer-no = Nein
answer-lid-back = Deckel ist wieder drauf
answer-it-spilled = Es wurde verschüttet
question-probe-out = Ist die Spitze des Fühlers in der Flüssigkeit, ohne den Becher zu berühren?
answer-it-is-now = Jetzt ja
question-slip = { $portion ->
        [0] Die Anfangstemperatur passt nicht zu den anderen: Stimmt sie?
       *[other] Die Temperatur nach Portion { $portion } passt nicht: Stimmt sie?
    }
answer-read-so = Ja, sie stimmt
answer-misread = Nein, auslassen
question-other-start = Andere Anfangstemperatur: Ist der Becher gespült und frisch gefüllt?
answer-fresh = Ja, gespült und frisch
answer-not-fresh = Nein: diesen neu beginnen
reason-not-fresh = der Becher war nicht frisch gefüllt
csv-samples-not-readings = das ist ein Protokoll der Messungen; wähle die Messwerte-Datei der anderen Station
csv-not-above-before = { $volume_cm3 } ist weniger als in der Zeile davor; gemeint ist das insgesamt zugegebene Volumen
result-needs-plan = Die Wärmebilanz mit Portionen braucht einen Plan mit Portionen: ergänze --plan plan.toml.
result-repeats-differ = Die Durchgänge { $first } und { $second } unterscheiden sich um { $apart_cm3 } cm³, mehr als das Dreifache ihrer gemeinsamen Unsicherheit u von { $u_cm3 } cm³: Such nach einem Versehen in einem von beiden. Beide bleiben erhalten.
refusal-type-alkali = Kein Fühler ist in Gebrauch: Tippe die Temperatur der Lauge ein.
refusal-alkali-being-taken = Der Fühler misst schon die Temperatur der Lauge.
refusal-portion-already-in = Portion { $portion } ist schon im Becher.
refusal-portion-comes-next = Als Nächstes kommt Portion { $expected }, nicht Portion { $portion }.
refusal-plan-ends = Der Plan endet mit Portion { $portion }.
refusal-only-newest = Nur die neueste Portion, { $portion }, kann zurückgenommen werden.
refusal-nothing-to-take-back = Keine Portion ist im Becher: Nichts kann zurückgenommen werden.
refusal-not-in-doubt = Portion { $portion } von Durchgang { $repeat } steht nicht in Zweifel.
refusal-set-aside-already = Durchgang { $repeat } zählt schon nicht mehr mit.
refusal-say-why-set-aside = Sag, warum der Durchgang nicht mitzählen soll (reason).
refusal-not-set-aside = Durchgang { $repeat } wurde nicht ausgeschlossen oder hat keine Messwerte.
refusal-nothing-to-start-again = Es gibt keinen Durchgang, der neu beginnen könnte.
refusal-say-why-start-again = Sag, warum der Durchgang neu beginnt (reason).
refusal-repeats-enough = Dieser Versuch hat { $count } Durchgänge: Die Lehrkraft beginnt einen neuen.
refusal-paused-by = Die { $role ->
        [teacher] Lehrkraft
       *[technician] Technik
    } hat den Versuch unterbrochen. Warte, bis es weitergehen darf.
refusal-no-repeat-under-way = Gerade läuft kein Durchgang.
refusal-say-which-portion = Sag, welche Portion gemeint ist (portion).
refusal-no-repeat = Einen Durchgang { $repeat } gibt es nicht.
refusal-portion-not-added = Portion { $portion } von Durchgang { $repeat } wurde nicht zugegeben.
reason-not-settled = abgelesen, bevor sie ruhig war
reason-no-reading = kein Messwert vom Fühler
refusal-say-silent = Sag in silent, ob der Summer schweigen soll: true oder false.
refusal-say-shown = Sag in shown, ob die Ergebnisse zu sehen sein sollen: true oder false.
refusal-prepared-with-results = Die Konzentration der Flasche lässt sich nur zusammen mit den Ergebnissen zeigen.
refusal-nothing-prepared = In diesem Plan ist keine Konzentration zu bestimmen.
refusal-give-plan = Gib die Werte des Plans in plan an, oder seinen Text in plan_toml.
refusal-repeat-under-way-staff = An dieser Station läuft ein Durchgang: Beenden Sie zuerst den Versuch.
refusal-confirm-strong = Über { $limit_mol_dm3 } mol/dm³: { $reagent } ({ $mol_dm3 } mol/dm³). Bitte auf der Seite /plan nach der Gefährdungsbeurteilung der Schule bestätigen oder schwächer ansetzen.
refusal-plan = Dieser Plan ist nicht brauchbar: { $reason }.
refusal-plan-sentence = Dieser Plan ist nicht brauchbar: { $reason }
refusal-paused-already = Der Versuch ist schon unterbrochen.
refusal-nothing-to-pause = Es läuft kein Durchgang: Es gibt nichts zu unterbrechen.
refusal-not-paused = Der Versuch ist nicht unterbrochen.
refusal-called-already = Die Lehrkraft ist schon gerufen.
refusal-not-called = Niemand ruft die Lehrkraft.
refusal-say-which-repeat = Sag, welcher Durchgang gemeint ist (repeat).
step-change-to-crossing = Temperaturänderung bis zum Schnittpunkt
formula-change-crossing = ΔT = T(Schnittpunkt) - T(Start)
step-mass-of-liquid = Masse der Flüssigkeit, Schulverfahren: 1 g je cm³
formula-mass-acid-alkali = m = (V(Säure) + V(Lauge)) × 1 g/cm³
step-heat-taken-up-school = aufgenommene Wärme, Schulverfahren: Wärmekapazität von Wasser, ohne Becher
step-change-from-fit = Temperaturänderung ohne Wärmeverlust und Trägheit, aus der Anpassung an den ganzen Verlauf
formula-change-balance = ΔT aus der Wärmebilanz
step-heat-to-end-point = bis zum Äquivalenzpunkt abgegebene Wärme
step-amount-to-end-point = Stoffmenge { $alkali } bis zum Äquivalenzpunkt
step-capacity-solution = Wärmekapazität von Lösung, Becher und Fühler
formula-capacity-solution = C = V × (Wärmekapazität von 1 cm³) + C(Becher)
step-percentage-school = prozentuale Unsicherheit der Temperaturänderung, Schulverfahren: eine halbe Skalenteilung für jede der zwei Ablesungen
formula-percentage = % = Skalenteilung ÷ ΔT × 100
step-change-of-repeat = Temperaturänderung in Durchgang { $repeat }
step-change-mean = mittlere Temperaturänderung der Durchgänge
formula-mean-change = ΔT = Summe der ΔT ÷ Anzahl der Durchgänge
step-change-at-mixing = Temperaturänderung beim Mischen, aus den verlängerten Geraden
step-heat-taken-in-school = aufgenommene Wärme, Schulverfahren: Wärmekapazität von Wasser, ohne Becher
step-heat-given-out-school = abgegebene Wärme, Schulverfahren: Wärmekapazität von Wasser, ohne Becher
of-school = { $of }, Schulverfahren
formula-change-at-mixing = ΔT im Moment des Mischens
formula-change-after-before = ΔT = T(danach) - T(davor)
step-mass-of-mixture = Masse der Mischung, Schulverfahren: 1 g je cm³
formula-mass-liquid-added = m = m(Flüssigkeit) + m(Zugabe)
step-capacity-mixture = Wärmekapazität von Mischung, Becher und Fühler
formula-capacity-mixture = C = C(Mischung) + C(Becher)
step-heat-taken-in-less = aufgenommene Wärme, ohne das, was die Zugabe durch ihre eigene Temperatur mitbrachte
step-heat-given-out-less = abgegebene Wärme, ohne das, was die Zugabe durch ihre eigene Temperatur mitbrachte
formula-heat-taken-in = q = q(Zugabe) - C ΔT
formula-heat-given-out = q = C ΔT - q(Zugabe)
lines-off-line = Der Messwert nach Portion { $portion } liegt { $off_c } °C neben seiner Geraden ({ $test }). Er bleibt erhalten: Weglassen darf ihn nur ein Mensch.
warning-strong = Über { $limit_mol_dm3 } mol/dm³: { $reagent } ({ $mol_dm3 } mol/dm³). Das ist stärker, als dieser Versuch braucht: Lehrkraft oder Technik muss es nach der Gefährdungsbeurteilung der Schule bestätigen.
warning-beyond-plan = Die angesetzten { $mol_dm3 } mol/dm³ ({ $reagent }) sind mehr, als dieser Plan finden kann ({ $most_mol_dm3 } mol/dm³); bis dahin gilt das Etikett der Klasse. Mehr Portionen oder eine stärkere Lauge planen.
problem-number-too-long = eine Zahl ist zu lang
problem-nested-too-deeply = zu tief verschachtelt
problem-step-missing = ein Schritt fehlt
advice-check-press-again = Prüfe es; drück noch einmal, wenn es stimmt.
refusal-say-divisions = Diese Station hat keinen Fühler: Nenne die Teilung des Thermometers, 1; 0,5; 0,2 oder 0,1 °C.
refusal-probe-works = Der Fühler funktioniert: Beende diesen Durchgang mit ihm.
refusal-say-temperature = Nenne die Temperatur in temperature_c.
refusal-nothing-typed = Diese Station misst mit dem Fühler: Hier wird nichts eingetippt.
refusal-say-divisions-first = Nenne zuerst die Teilung des Thermometers: 1; 0,5; 0,2 oder 0,1 °C.
refusal-no-reading-to-correct = Portion { $portion } von Durchgang { $repeat } hat keinen Messwert, der zu berichtigen wäre.
refusal-station-reads = In diesem Versuch liest die Station ab.
refusal-reading-comes-next = Als Nächstes kommt der Messwert nach Portion { $portion }.
refusal-no-fresh-reading = Der Fühler liefert keinen frischen Messwert: Prüfe den Stecker und versuch es noch einmal.
refusal-say-volume = Nenne das Volumen der Portion in volume_cm3.
refusal-nothing-weighed = In diesem Versuch wird nichts gewogen.
refusal-far-from-planned-mass = { $typed_g } g sind weit weg von den geplanten { $planned_g } g.
refusal-no-reading-at = In Durchgang { $repeat } gibt es bei { $minutes } keinen Messwert zu berichtigen.
refusal-time-to-come = { $minutes } kommt erst noch: Tippe ein, was dann abgelesen wird.
refusal-far-from-planned = { $typed_cm3 } cm³ sind weit weg von den geplanten { $planned_cm3 } cm³.
refusal-change-sign = Du hast { $change_c } °C eingegeben, aber nach der Kurve wurde der Becher { $way ->
        [warmer] wärmer
       *[colder] kälter
    }.
refusal-not-among-volumes = { $volume_cm3 } cm³ liegt nicht unter den zugegebenen Volumen bis { $most_cm3 } cm³.
practical-hydrochloric-acid = Wie stark ist diese Salzsäure?
practical-nitric-acid = Wie stark ist die Salpetersäure?
practical-neutralisation = <neutralisation>Neutralisationswärme</neutralisation>
practical-urea = Kälte durch Lösen: Harnstoff in Wasser
reason-stirred-late = spät gerührt
reason-lid-off = Deckel ab
reason-lost-count = Portionen nicht mehr mitgezählt
reason-probe-out = der Fühler war nicht im Becher
reason-wrong-volume = falsches Volumen im Becher
reason-wrong-moment = im falschen Moment zugegeben
reason-wrong-amounts = falsche Mengen
reason-it-spilled = verschüttet
reason-few-readings = zu wenige Messwerte
reason-readings-scatter = die Messwerte streuen zu stark
reason-not-turned = die Temperatur hat nicht gewendet
reason-lines-on-paper = Geraden auf Papier gezeichnet
reason-off-points = an den Punkten abgelesen
reason-differs = weicht vom anderen Durchgang ab
reason-another-way = anders abgelesen
problem-in = { $where_text }: { $problem }
problem-of-reagent = { $reagent }: { $problem }
input-dict-type = muss eine Tabelle mit Schlüsseln sein
input-tuple-type = muss eine Liste sein

## analysis

cup-trace-before-short = Die Aufzeichnung vor dem Zugießen ist zu kurz: mindestens { $seconds } s.
cup-trace-after-short = Die Aufzeichnung nach dem Zugießen ist zu kurz: mindestens { $seconds } s.
cup-not-warm-enough = Das Wasser im Becher muss mindestens { $least_c } °C wärmer sein als das zugegebene.
cup-changed-too-little = Das Zugießen hat die Temperatur zu wenig geändert: Nimm etwa so viel Wasser, wie im Becher ist.
cup-not-smooth = Der Becher ist nicht gleichmäßig abgekühlt: Deckel auflassen, stetig rühren, länger warten; wiederhole es.
dip-no-change = Die Temperatur hat sich nicht geändert: Tauche den Fühler ins Wasser.
dip-trace-after-short = Die Aufzeichnung nach dem Eintauchen ist zu kurz: mindestens { $seconds } s.
dip-too-near = Wasser und Luft sind zu nah beieinander: mindestens { $least_c } °C Unterschied.
dip-not-plunged = Die Aufzeichnung passt nicht zu einem Fühler, der auf einmal in gerührtes Wasser getaucht wurde: Wiederhole es.
heat-open = Kein Äquivalenzpunkt erkennbar: Der Verlauf lässt ihn offen.
heat-unknown-reagents = Die Wärmebilanz kennt diese Stoffe nicht: { $reagents }.
heat-few-portions = Die Wärmebilanz braucht mindestens { $least } Portionen; es sind { $count }.
heat-few-samples = Der Verlauf hat nur { $count } gute Messungen: zu wenige für eine Wärmebilanz.
heat-hardly-changes = Die Temperatur ändert sich kaum: Keine Reaktionswärme erkennbar.
heat-trace-ends = Der Verlauf endet, bevor die letzte Portion zu spüren war.
heat-not-surely-passed = Der Äquivalenzpunkt ist noch nicht sicher überschritten: Gib mindestens noch eine Portion dazu.
heat-not-passed = Der Äquivalenzpunkt ist noch nicht überschritten: Gib weitere Portionen dazu.
heat-first-portion = Der Äquivalenzpunkt liegt schon in der ersten Portion: Nimm kleinere Portionen.
heat-lost-in-scatter = Kein Äquivalenzpunkt erkennbar: Die Reaktionswärme geht in der Streuung unter.
heat-note-portion-volume = Portion { $portion } sieht nicht nach ihrem geplanten Volumen aus: Fehlte sie, war sie doppelt oder zu klein?
heat-note-portion-moment = Portion { $portion } kam anscheinend zu einem ganz anderen Zeitpunkt dazu als markiert.
heat-note-strays = Der Verlauf weicht stärker vom Modell ab, als das Rauschen des Fühlers erlaubt.
heat-note-something-happened = Bei etwa { $seconds } s ist etwas passiert: verschüttet, Deckel ab, oder der Fühler nicht in der Flüssigkeit?
heat-note-set-aside = { $percent } % der Messungen passen nicht und wurden weggelassen.
heat-note-cup-unusual = Becher oder Fühler müssten sehr ungewöhnlich sein, um diesen Verlauf zu ergeben.
heat-few-readings = Die Wärmebilanz braucht mindestens { $least } Messwerte.
heat-more-readings-after = Der Äquivalenzpunkt ist nicht sicher überschritten: Danach werden mehr Messwerte gebraucht.
heat-no-bend = Die Wärme zeigt keinen klaren Knick: Kein Äquivalenzpunkt erkennbar.
heat-note-readings-scatter = Die Messwerte streuen stärker um die zwei Geraden, als das Thermometer erlaubt.
lines-chosen-by-person = Die Messwerte jeder Geraden hat ein Mensch gewählt.
lines-cross-outside = Diese Geraden schneiden sich bei { $end_point_cm3 } cm³, nicht zwischen den zwei Gruppen ({ $from_cm3 } bis { $to_cm3 } cm³). Verschieb einen Messwert zur anderen Geraden.
lines-not-a-number = Ein Volumen oder eine Temperatur ist keine Zahl.
lines-one-temperature-each = Zu jedem Volumen gehört genau eine Temperatur.
lines-missing-number = Ein Volumen oder eine Temperatur fehlt oder ist keine Zahl.
lines-too-large = Ein Volumen oder eine Temperatur ist viel zu groß für einen Messwert.
lines-few-volumes = Zwei Geraden brauchen je mindestens { $least } verschiedene Volumina; es sind insgesamt { $count }.
lines-no-crossing = Die zwei Ausgleichsgeraden schneiden sich nicht in der Nähe der Wende.
lines-all-same = Alle Messwerte sind gleich; ohne Wende gibt es keinen Äquivalenzpunkt.
lines-no-turn = Die Temperatur wendet nicht: Höchster und tiefster Messwert sind der erste und der letzte. Wurde genug zugegeben, um den Äquivalenzpunkt zu überschreiten?
lines-few-before = Die Gerade vor der Wende braucht { $least } Messwerte; sie hat { $count }. Beginne noch einmal mit kleineren Portionen.
lines-few-after = Die Gerade nach der Wende braucht { $least } Messwerte; sie hat { $count }. Gib mehr Portionen dazu.
lines-two-points = Zwei Punkte liegen immer auf einer Geraden: Für die Streuung braucht es mindestens drei.
lines-parallel = Die zwei Geraden sind parallel: Sie schneiden sich nicht.
label-scatter-only = nur Streuung
lines-same-way = Beide Ausgleichsgeraden gehen in dieselbe Richtung; ohne Wende gibt es keinen Äquivalenzpunkt.
lines-scatter = Die Messwerte streuen zu stark, um den Schnittpunkt anzugeben: Das ± hätte keine Grenze.
school-half-division = halbe Skalenteilung
school-one-division = eine Skalenteilung
school-half-range = halbe Spannweite
lines-rule = Die Messwerte werden, nach Volumen geordnet, in die vor und die nach der Wende geteilt; der Messwert an der Spitze (oder am Tiefpunkt) darf zu keiner Gruppe gehören. Von den Teilungen, deren zwei Ausgleichsgeraden sich zwischen den Gruppen schneiden, zählt die nächste an der Spitze; von mehreren die, deren Geraden allen Messwerten am nächsten kommen (kleinste Quadratsumme). Ein Messwert an der Spitze, der neben den ohne ihn gezeichneten Geraden liegt (99-%-Test), gehört zu keiner. Haben die Messwerte keine solche Spitze, weil eine der Geraden waagerecht ist, so wird dort geschnitten, wo die waagerechte und die andere Gerade allen Messwerten am nächsten kommen.
test-residual = extern studentisiertes Residuum, Bonferroni
once-label-scatter-only = nur Streuung und Verlust am Schaft: Eine träge Becherwand, eine langsame Reaktion oder ein gekrümmter Abfall verschieben die Geraden stärker
once-before-not-straight = Die Messwerte vor dem Mischen liegen nicht auf einer Geraden. Rühre und warte länger, bevor du mischst.
once-after-not-straight = Die Messwerte nach dem Mischen bilden keine Gerade. Rühre, Deckel drauf: Der Abfall (oder Anstieg) muss gleichmäßig werden.
once-no-change = Die Temperatur hat sich beim Mischen nicht geändert: { $change_c } °C ist nicht mehr, als die Messwerte zeigen können. Wurde zugegeben, und wurde das Mischen im richtigen Moment markiert?
once-not-a-number = Eine Zeit oder eine Temperatur ist keine Zahl.
once-one-temperature-each = Zu jeder Zeit gehört genau eine Temperatur.
once-missing-number = Eine Zeit oder eine Temperatur fehlt oder ist keine Zahl.
once-times-must-rise = Die Zeiten müssen von Messwert zu Messwert steigen.
once-mixing-outside = Der Zeitpunkt des Mischens liegt nicht in der aufgezeichneten Zeit.
once-before-old = Der letzte Messwert vor dem Mischen ist { $seconds } s alt: Die Gerade braucht einen innerhalb von { $most_s } s.
once-two-readings = Es braucht einen Messwert vor dem Mischen und einen danach.
once-label-difference = Unterschied zweier Messwerte: was der Becher inzwischen verlor, ist nicht berücksichtigt
once-rule-difference = Der letzte Messwert vor dem Mischen und der am weitesten entfernte danach. Für Geraden sind es zu wenige, oder sie liegen nicht gerade.
once-no-line = Die Geraden ließen sich nicht zeichnen: { $reason }
once-few-before = Die Gerade vor dem Mischen braucht mindestens { $least } Messwerte über { $least_s } s; es sind { $count } über { $span_s } s. Zeichne länger auf, bevor du mischst.
once-few-after = Die Gerade nach dem Mischen braucht mindestens { $least } Messwerte über { $least_s } s; es sind { $count } über { $span_s } s. Nimm nach dem Mischen länger auf.
once-heat-no-course = Die Wärmebilanz fand keinen Verlauf, der diesen Messwerten ähnelt.
once-heat-few-before = Die Wärmebilanz braucht mindestens { $least } Messungen vor dem Mischen. Zeichne länger auf, bevor du mischst.
once-heat-few-after = Die Wärmebilanz braucht mindestens { $least } Messungen über { $seconds } s nach dem Mischen.
once-heat-no-change = Die Temperatur hat sich nicht geändert. Wurde etwas zugegeben?
once-heat-unusual = Im Becher geschah etwas, das die Wärmebilanz nicht kennt (mehr zugegeben, verschüttet, Fühler nicht in der Flüssigkeit?): Ihre Zahlen sind unsicherer als sonst.
once-heat-late = Die Temperatur begann sich { $seconds } s { $side ->
        [before] vor
       *[after] nach
    } der Markierung des Mischens zu ändern.
once-rule = Messwerte von { $before_s } s vor bis { $after_s } s nach dem Mischen werden weggelassen. Jede Gerade beginnt beim frühesten Messwert, ab dem die nächsten auf einen halben Schritt des Fühlers oder ein Hundertstel der Änderung genau zur Geraden durch alle späteren Messwerte passen. Sie reicht über { $from_min } bis { $to_min } Minuten und mindestens { $least } Messwerte (von Hand abgelesen: bis zu { $most_by_hand }, egal wie lange). Messwerte, die mehr als { $steps } Schritte und mehr als dreimal so weit wie üblich neben ihrer Geraden liegen, werden weggelassen.
test-dixon = Dixon-Q (r10, zweiseitig)
test-grubbs = Grubbs-G (zweiseitig)
probe-few-comparisons = Eine Gerade braucht { $least } Vergleiche; es sind { $count }.
probe-too-near = Vergleiche bei Temperaturen, die mindestens { $least_c } °C auseinanderliegen.
label-scatter-of-repeats = Streuung der Durchgänge
label-uncertainty-of-each = Unsicherheit jedes Durchgangs
settle-no-reading = kein Messwert vom Fühler
settle-time-up-few = Zeit abgelaufen, wenige frische Messwerte
settle-few-fresh = zu wenige frische Messwerte
settle-time-up = Zeit abgelaufen
settle-still-settling = wird noch ruhig
settle-settled = ruhig
settle-long-enough = lang genug für die Wärmebilanz
settle-as-near = so nah, wie der Fühler herankommt
settle-still-drifting = ändert sich noch
settle-steady = ruhig
settle-recorded = aufgezeichnet

## server

access-no-code = Es ist kein Code gesetzt: Diese Station lässt sich ohne Code bedienen.
access-no-teacher = Für die Lehrkraft ist kein Passwortsatz gesetzt. Trag die Zeile, die `station passphrase teacher` ausgibt, unter [access] in station.toml ein (für einen Raum: room.toml) und starte neu.
access-no-technician = Für die Technik ist kein Passwortsatz gesetzt. Trag die Zeile, die `station passphrase technician` ausgibt, unter [access] in station.toml ein (für einen Raum: room.toml) und starte neu.
access-not-right = Das stimmt nicht. Prüfe es und versuch es noch einmal.
access-hold-button = Halte den Knopf der Station 6 Sekunden lang, lass los und versuch es innerhalb einer Minute. Einmal Halten lässt ein Gerät herein.
access-too-many-tries = Hier gab es zu viele falsche Versuche.
access-wait = { $why } Warte { $seconds } s und versuch es dann noch einmal.
access-sign-in = Melde dich zuerst an als { $roles }.
access-may-look = Dieses Gerät darf zuschauen. Zum Bedienen gib den Code vom Etikett der Station ein.
role-teacher = Lehrkraft
role-technician = Technik
server-send-code = sende den Code oder Rolle und Passphrase oder recovery
server-not-kept = Es konnte nicht gespeichert werden und gilt darum als nicht geschehen. { $reason }
secret-length = wähle { $shortest } bis { $longest } Zeichen (das sind { $count })
secret-not-a-hash = kein Hash: Hier muss die Zeile stehen, die `station passphrase` ausgibt
secret-other-strength = ein Hash anderer Stärke, als diese Station prüft: erzeuge ihn mit `station passphrase`
server-too-many-pages-state = Zu viele Seiten sind offen: Frag stattdessen /api/state.
server-file-not-made = Die Datei konnte nicht erzeugt werden. { $reason }
server-own-page-only = Bedient wird nur von der eigenen Seite der Station.
server-send-json = Sende den Inhalt als application/json.
server-body-too-long = Der Inhalt darf höchstens { $count } Bytes haben.
server-too-much-at-once = Das war zu viel auf einmal.
server-unknown-host = Diese Station hört nicht auf den Namen in der Adresszeile. Öffne sie mit der Adresse von ihrem Etikett oder Bildschirm. Ist der Name richtig, ergänze ihn bei names unter [access] in station.toml.
kit-cannot-make-cards = Diese Station kann keine Karten erstellen.
kit-cannot-look = Diese Station kann sich nicht prüfen.
kit-no-panel = Diese Station hat keine Anzeige: so steht es in ihren Einstellungen unter panel.pins.
server-page-not-built = Die Seite wurde nicht gebaut: Installiere die Station neu mit pip.
plan-send-plan = sende plan oder plan_toml
plan-no-plan-file = Das ist keine Plandatei: { $reason }.
plan-another-asked = Inzwischen wurde nach einem anderen Plan gefragt.
plan-prediction-failed = Die Vorhersage ist misslungen: { $reason }. Bitte noch einmal versuchen.
plan-sign-in-for-prepared = Was angesetzt wurde, ist nur für Lehrkräfte und Technik: bitte anmelden oder prepared_mol_dm3 weglassen.
server-send-code-as-text = Sende den Code oder Rolle und Passphrase oder recovery als Text.
server-not-json = Der Inhalt ist kein gültiges JSON, oder ein Buchstabe oder eine Zahl darin gibt es nicht.
server-made-a-mistake = Die Station hat einen Fehler gemacht. Nichts Bestätigtes ist verloren.
reason-page-looking = Die Station prüft sich gerade; was sie findet, folgt gleich.
reason-page-found = Was die Prüfung ergab
reason-page-rest = alles Übrige
reason-page-title = Die Station kann nicht starten
reason-page-mend = Ist das behoben, startet die Station von selbst innerhalb einer halben Minute, und diese Seite wird zu der des Platzes. Die Aufzeichnung bleibt erhalten. Arbeite inzwischen mit einem gewöhnlichen Thermometer weiter.
reason-page-finding = { $colour ->
        [red] rot
        [amber] gelb
        [green] grün
       *[unknown] unbekannt
    }: { $finding }
room-record-unusable = Die Aufzeichnung des Raums ist gerade nicht benutzbar. { $reason }
server-too-many-pages-room = Zu viele Seiten sind offen: stattdessen /api/room fragen.
room-no-address = Dieser Raum kennt seine Adresse nicht.
order-cannot-be-given = Das lässt sich nicht anordnen: { $reason }.
order-cannot-be-taken-back = Das lässt sich nicht zurücknehmen: { $reason }.
server-too-many-pages-ask = Zu viele Seiten sind offen: stattdessen den Zustand fragen.
room-no-such-bench = Diesen Platz kennt der Raum nicht.
room-results-not-shown = Die Ergebnisse werden noch nicht gezeigt: Alle sehen sie zur gleichen Zeit.
room-no-such-lesson = Diese Stunde gibt es nicht.
order-nothing-known = noch ist nicht bekannt, was { $bench } getan hat
order-too-many = { $count } Anordnungen warten auf einen Platz, der nicht da ist: Nimm sie zuerst zurück
order-no-lesson = Es läuft keine Stunde.
order-no-bench = Platz { $bench_name } gibt es nicht
kit-ask-done = Erledigt.
kit-ask-not-sure = Erst ankreuzen, dass es so gemeint ist: Von hier aus lässt es sich nicht rückgängig machen.
kit-ask-no-broker = Die Stationen können gerade nichts gefragt werden: { $reason }
server-cannot-listen = an { $host_address }, Port { $port }, lässt sich nicht lauschen: { $reason }; wähle einen anderen server.port
server-faults-left-out = ({ $count } Fehler weggelassen) { $reason }
manual-english-only = Das Handbuch gibt es nur auf Englisch.

## room

link-no-address = { $address } ist keine Adresse eines Brokers: schreib sie wie "mqtt://room.local:1883"
link-cannot-be-read = { $path }: { $what ->
        [passphrase] Der Passwortsatz
       *[password] Das Kennwort
    } lässt sich nicht lesen: { $reason }
link-one-line = { $path }: Dort sollte eine Zeile mit { $what ->
        [passphrase] dem Passwortsatz
       *[password] dem Kennwort
    } stehen
broker-cannot-be-user = { $user_name } kann kein Benutzer sein
quantity-end-point = Endpunkt
quantity-enthalpy = Enthalpie
quantity-temperature-change = Temperaturänderung
quantity-concentration = Konzentration
method-heat-balance = Wärmebilanz
method-straight-lines = Geraden
class-no-slip = In seiner Aufzeichnung steht kein Versehen: die Gruppe fragen.
class-set-aside = Durchgang { $repeat } zählt nicht: { $reason }
class-more-than-u = mehr als { $count } Standardunsicherheiten des Unterschieds
class-stands-off = { $bench_name }: Der Wert ({ $quantity }, { $method }) liegt um { $off } { $unit } { $side ->
        [above] über
       *[below] unter
    } den anderen ({ $test }).
word-yes = ja
word-no = nein
class-sheet-result = Klassenergebnis
class-sheet-words = Was es heißt
class-sheet-standing-off = Abweichende Plätze
class-head-behind = was dahinterstecken kann
class-sheet-curve = Mittlere Kurve
sheet-readings = Messwerte
class-head-sentence = Satz
class-head-bench = Platz
class-head-what = was
class-no-answer = keine
class-asked = Durchgang { $repeat }, Portion { $portion }: Die Station fragte „{ $question }“, Antwort: { $answer }.
class-not-settled = Durchgang { $repeat }: { $count } Ablesungen wurden genommen, bevor sie sich eingestellt hatten.
class-in-doubt = Durchgang { $repeat }: { $count } Portionen sind fraglich und aus den Geraden gelassen.
class-note-of-repeat = Durchgang { $repeat }: { $note }
answer-unreadable = keine lesbare Antwort
class-no-repeat-yet = Noch kein Platz hat einen Durchgang beendet.
class-one-bench = Nur ein Platz hat ein Ergebnis: Ein Klassenmittel braucht zwei.
class-other-plans = Plätze mit einem anderen Plan als die meisten stehen in der Liste und sind nicht im Mittel.
class-answer = Die Klasse: { $mean } ± { $u } { $unit } von { $count } der { $all } Plätze
class-answer-one = Erst ein Platz: { $value } ± { $u } { $unit }, von { $all }, die mitmachen
class-spread = Ein Platz allein ist auf etwa ± { $own_u } { $unit } genau; die Werte der Plätze streuen um { $sd } { $unit }: { $agree ->
        [yes] nicht mehr als zu erwarten.
       *[no] mehr als zu erwarten, also ist von Platz zu Platz etwas anders.
    }
class-lines = Die Geraden geben einen { $percent } % { $side ->
        [higher] höheren Endpunkt
       *[lower] tieferen Endpunkt
    }, und zwar an jedem Platz: Jede Portion erwärmt mehr Flüssigkeit als die davor, darum biegt sich die steigende Linie.
class-mean = Klassenwert ({ $quantity }, { $method }): { $mean } ± { $u } { $unit }, von { $count } Plätzen; mit 95 % Vertrauen liegt das Mittel der Klasse zwischen { $low } und { $high } { $unit }.
class-meaning = Das ± gilt dem Mittel der Klasse, nicht einem Platz: Einzelne Plätze streuen um { $sd } { $unit } (eine Standardabweichung); ihre eigenen Unsicherheiten allein gäben { $own_u } { $unit }.
class-agree = Die Plätze stimmen im Rahmen ihrer eigenen Unsicherheiten überein: Mehr als diese braucht sie nicht zu trennen.
class-chance = Eine Streuung zwischen den Plätzen von { $between } { $unit } passt am besten, doch gäbe auch der Zufall allein so viel (p = { $p }); sie steckt im ±.
class-differ = Die Plätze unterscheiden sich um { $between } { $unit } über ihre eigenen Unsicherheiten hinaus (p = { $p }): Von Platz zu Platz ist etwas anders, das kein Platz selbst sehen kann, etwa wie Portionen abgemessen werden oder ein Versehen; es steckt im ±.
class-without = Ohne die Plätze, die abweichen ({ $count }), wäre das Mittel { $mean } ± { $u } { $unit }. Von selbst wird nichts weggelassen: Ein Mensch lässt einen Durchgang nicht mitzählen, mit einem Grund.
class-methods = Die Geraden schneiden sich { $apart_cm3 } cm³ { $side ->
        [above] über
       *[below] unter
    } der Wärmebilanz: Jede Portion erwärmt mehr Flüssigkeit, das biegt die steigende Linie, und keine Zahl von Plätzen mittelt das weg.
class-p-least = 0,001 oder weniger
room-broker-not-answered = Der Broker { $address } hat noch nicht geantwortet
bench-sends-unreadable = Er sendet, was sich nicht lesen lässt ({ $reason }).
bench-goes-on-as-another = { $reason }; es geht als andere Aufzeichnung weiter.
bench-cannot-be-kept = Was er sendet, kann nicht aufbewahrt werden ({ $reason }).
bench-event-not-understood = Sein Ereignis { $kind } wird nicht verstanden: Ist er neuer als der Raum?
bench-event-no-sense = Sein Ereignis { $kind } ergibt hier keinen Sinn ({ $fault }).
room-broker-refuses = der Broker { $address } lässt den Raum nicht ein: Benutzer und Kennwort prüfen ({ $reason })
room-broker-silent = der Broker { $address } antwortet nicht ({ $reason })
room-folder-cannot-be-made = { $path }: lässt sich nicht anlegen: { $reason }; wähle einen anderen Ordner (room.folder)
room-another-at-work = { $path }: Hier arbeitet schon ein anderer Raum; halte ihn zuerst an
file-cannot-be-written = { $path }: lässt sich nicht schreiben: { $reason }
file-cannot-be-read = { $path }: lässt sich nicht lesen: { $reason }
room-cannot-be-written-restart = { $path }: lässt sich nicht schreiben: { $reason }; starte den Raum neu
room-cannot-be-written-full = { $path }: lässt sich nicht schreiben: { $reason }; ist der Speicher voll?
room-damaged = { $path }: beschädigt ({ $reason }); verschiebe die Datei und starte neu: Die Plätze senden, was sie haben
room-cannot-open = { $path }: lässt sich nicht öffnen: { $reason }; mach den Ordner beschreibbar oder wähle einen anderen (room.folder)
room-newer = { $path }: von einem neueren Raum geschrieben (Format { $format_version }); aktualisiere diesen
link-needs-user = ein Platz braucht einen Benutzer am Broker
link-kept = Der Raum bewahrt die Aufzeichnung dieses Platzes auf.
link-room-not-reached = Der Raum ist noch nicht erreicht. Der Platz arbeitet allein; der Raum bekommt später alles.
link-broker-not-reached = Der Broker des Raums ist nicht erreichbar. Der Platz arbeitet allein; der Raum bekommt später alles.
link-broker-refuses = Der Broker des Raums lässt diesen Platz nicht ein: link.user und das Kennwort prüfen.
link-password-unreadable = Das Kennwort für den Broker des Raums lässt sich nicht lesen: link.password_file prüfen.
link-no-room = Der Broker antwortet, aber kein Raum. Der Platz arbeitet allein; der Raum bekommt später alles.
link-failed = Die Verbindung zum Raum ist gescheitert. Der Platz arbeitet allein; sie wird wieder versucht.
link-no-answer = keine Antwort
link-takes-nothing = das Netz nimmt nichts an
order-could-not = Dieser Platz konnte es nicht tun.
order-act-one-of = act: eines von { $acts_text }
order-practical = practical: der Name einer Aufzeichnung und die Nummer eines Ereignisses
order-plan-missing = plan: fehlt; gib die Werte in plan oder den Text in plan_toml an
order-confirm-strong = { $reagent } ({ $mol_dm3 } mol/dm³) liegt über { $limit_mol_dm3 } mol/dm³: bitte nach der Gefährdungsbeurteilung der Schule bestätigen oder schwächer ansetzen
room-no-first-event = { $path }: Die Aufzeichnung hat kein erstes Ereignis
broker-not-installed = Mosquitto ist nicht installiert: sudo apt install mosquitto, oder gib einen anderen Broker an (room.broker)
file-cannot-be-written-folder = { $path }: lässt sich nicht schreiben: { $reason }; wähle einen anderen Ordner
broker-port-taken = der eigene Broker kann Port { $port } nicht belegen: Läuft ein anderer Broker (sudo ss -ltnp)? Beende ihn oder nenne ihn in room.broker
room-event-differs = { $bench }: Ereignis { $event } der Aufzeichnung { $journal } ist nicht das aufbewahrte
room-cannot-be-kept = { $bench }: kann nicht aufbewahrt werden: { $reason }
room-too-many-records = mehr als { $count } Aufzeichnungen
broker-user-letters = { $user_name } kann nicht Benutzer eines Platzes sein: Buchstaben, Ziffern, '-', '_', '.', höchstens { $count }
bench-too-many-bytes = Er sendet mehr als { $kilobytes } kB in der Sekunde; nicht alles wird gelesen.
bench-too-many-messages = Er sendet mehr als { $count } Nachrichten in der Sekunde; nicht alle werden gelesen.
room-two-kits = Zwei Geräte sind { $bench }: { $both }. Eine der Karten neu machen.
wire-too-many-bytes = { $count } Bytes sind zu viel für eine Nachricht
wire-longer-than = { $count } Bytes: länger als { $most }
wire-not-a-message = keine Nachricht: { $fault }
wire-holds-too-much = enthält mehr als { $most } Bytes oder endet zu früh
wire-no-number = { $typed } ist keine Zahl
wire-eight-parts = events: Ein Ereignis hat acht Teile
wire-impossible-number = events: eine Zahl, die kein Ereignis haben kann
wire-time-no-number = Ereignis { $event }: Seine Zeit ist keine Zahl
wire-no-plain-text = Ereignis { $event }: Start, Uhrzeit, Uhr oder Art ist kein reiner Text
wire-no-kind = Ereignis { $event }: ohne Art oder ohne Inhalt
wire-nested = Ereignis { $event }: Sein Inhalt ist tiefer als { $most } verschachtelt
wire-impossible = Ereignis { $event }: Sein Inhalt enthält eine Zahl oder ein Zeichen, das es nicht gibt
order-missing = { $key_name }: fehlt
wire-key = { $message_name }: { $key_name }: { $reason }
room-kit = Gerät { $kit_name }
room-board = Platine …{ $board_name }
room-kit-named = { $bench_name } ({ $board })
room-kit-at = { $bench_name } ({ $board }, Adresse { $address })

## bench

answer-exit-status = Exit-Status { $status }
answer-none-within = keine Antwort innerhalb von { $seconds } s
check-probe-copy-rules = 60-station-probe.rules nach /etc/udev/rules.d kopieren und den Fühler neu anstecken
check-probe-plug-and-wires = Stecker und alle drei Adern prüfen; der Kernel sieht einen angesteckten Fühler innerhalb von 15 s
check-bus-master = One-Wire-Busmaster { $masters_name }
check-bus-other-tree = ein One-Wire-Baum in { $path }, der nicht der des Kernels ist
check-bus-none = kein One-Wire-Bus ({ $path })
check-bus-no-master = kein Busmaster am One-Wire-Bus ({ $path })
check-bus-make-tree = { $path } anlegen oder probe.tree aus station.toml nehmen: der Baum des Kernels ist { $kernel_path }
check-bus-restart = { $overlay_text } steht in /{ $file }: den Pi neu starten; hilft das nicht, die Zeile unter [all] setzen
check-bus-move-line = die Zeile { $overlay_text } aus /{ $from_file }, das nicht gelesen wird, nach /{ $to_file } verschieben und den Pi neu starten
check-bus-write-line = die Zeile { $overlay_text } unter [all] in /{ $file } schreiben und den Pi neu starten
check-bus-on-other-machine = auf einem Raspberry Pi { $advice }; auf einem anderen Rechner in station.toml unter [probe] driver = "none" setzen
check-probe-one = ein Fühler, { $probe_name }
check-probe-set-id = in station.toml probe.id auf den im Becher setzen, etwa id = "{ $probe_name }", oder die anderen abziehen
check-probe-several = { $count } Fühler, und die Einstellungen sagen nicht, welcher: { $probes_name }
check-probe-pull-up = 4,7 kΩ von der Datenader nach 3,3 V legen, und nach einer gebrochenen Datenader sehen
check-probe-ghosts = kein Fühler, aber { $count } Geister (00-…): die Datenader hängt in der Luft
check-probe-none = kein Fühler am Bus
check-probe-as-set = { $probe_name }, wie eingestellt
check-probe-as-set-others = { $probe_name }, wie eingestellt; { $others_name } wird nicht gelesen
check-probe-plug-or-set-id = jenen Fühler anstecken, oder in station.toml unter [probe] id = "{ $probe_name }" setzen
check-probe-set-not-there = { $probe_name } ist eingestellt, aber nicht da; da ist { $others_name }
check-probe-set-none-there = { $probe_name } ist eingestellt, aber nicht da, und auch kein anderer
check-supply-contact = die Versorgungsader des Fühlers hat Kontakt
check-supply-wire = VDD (oft rot) an 3,3 V auf Position 1 legen; mit zwei Adern zeigt er früher oder später 85 °C
check-supply-no-contact = die Versorgungsader des Fühlers hat keinen Kontakt
check-supply-unknown = dieser Kernel sagt nicht, ob die Versorgungsader Kontakt hat
check-resolution-unknown = dieser Kernel sagt nicht, wie fein der Fühler auflöst
check-resolution = { $bits } Bit, Schritte von { $step_c } °C
check-resolution-only = nur { $bits } Bit, Schritte von { $step_c } °C
check-resolution-set = { $advice }; bis dahin: echo 12 | sudo tee { $path }
check-guard-unknown = dieser Kernel prüft Wandlungen nicht selbst
check-guard-yes = der Kernel weist 85 °C eines Fühlers ohne Strom zurück
check-guard-no = der Kernel weist 85 °C eines Fühlers ohne Strom nicht zurück; die Station tut es dennoch
check-power-supply = das Netzteil für diesen Pi und ein kurzes dickes Kabel nehmen, nichts anderes an seinen USB-Buchsen
check-clock-behind = die Uhr geht { $hours } h hinter dem neuesten Eintrag der Aufzeichnung
check-clock-connect-once = die Station einmal mit einem Netz mit Uhrzeit verbinden, oder ein Uhrenmodul einbauen
check-clock-network = die Uhr wird aus dem Netz gestellt
check-clock-module = die Uhr wird von einem Uhrenmodul gehalten
check-clock-unknown = dieser Rechner sagt nicht, ob seine Uhr gestellt ist
check-clock-not-set = nichts hat die Uhr gestellt: Datumsangaben sind nur Etiketten; Reihenfolge und Abstände stimmen trotzdem
check-clock-connect = die Station mit einem Netz mit Uhrzeit verbinden, oder ein Uhrenmodul einbauen
check-power-weak-now = das Netzteil ist zu schwach: gerade Unterspannung
check-power-was-weak = das Netzteil war seit dem Start des Pi schon zu schwach
check-power-hot-now = der Prozessor wird gerade gebremst: zu heiß
check-power-was-hot = der Prozessor wurde seit dem Start des Pi gebremst: zu heiß
check-power-air = dem Gehäuse Luft geben
check-power-good = keine Unterspannung seit dem Start des Pi
check-power-unknown = dieser Rechner sagt nicht, ob sein Netzteil stark genug ist
check-again-with-sudo = mit sudo noch einmal prüfen
check-power-good-now = gerade keine Unterspannung; was vorher war, wird nicht gesagt
check-not-readable = { $path } darf von diesem Benutzer nicht gelesen werden
check-record-none = noch keine Aufzeichnung: der erste Start beginnt eine
check-record-sqlite = SQLite findet einen Schaden: { $reason }
check-record-not-looked-through = die Aufzeichnung konnte in { $seconds } s nicht durchgesehen werden
check-record-chain-not-followed = SQLite findet die Aufzeichnung heil; die Kette ihrer { $count } Ereignisse wurde in { $seconds } s nicht ganz verfolgt
check-record-event-changed = Ereignis { $event } ist nicht mehr so, wie es geschrieben wurde
check-record-sound = die Aufzeichnung ist heil, { $count } Ereignisse
check-record-begin-anew = die Station anhalten, { $path } umbenennen und neu starten: eine neue Aufzeichnung beginnt, oder station restore DATEI setzt eine Sicherung an ihre Stelle; den alten Ordner ganz behalten, was vor dem Schaden liegt, lässt sich noch ausgeben
check-record-damaged = die Aufzeichnung ist beschädigt: { $reason }
check-record-unreadable = die Aufzeichnung konnte nicht gelesen werden: { $reason }
check-network-page = die Seite: { $addresses_text }
check-network-self-given = kein Netz gab dieser Station eine Adresse; sie nahm { $addresses_text }
check-network-wifi-name = das Kabel prüfen, oder Namen und Passwort des WLANs
check-network-take-host-out = in station.toml unter [server] host herausnehmen, oder "0.0.0.0" setzen
check-network-host = server.host = { $host_address }: kein anderes Gerät erreicht die Seite
check-network-plug-in = das Netzwerkkabel anstecken, oder ins WLAN gehen
check-network-wifi-off = das WLAN ist ausgeschaltet: sein Land setzen (sudo raspi-config, Localisation), oder das Netzwerkkabel anstecken
check-network-none = kein Netz: nur dieses Gerät sieht die Seite
check-port-zero = server.port = 0: die Adresse der Seite ist nach jedem Start eine andere
check-port-set = in station.toml unter [server] port setzen, etwa 8080
check-port-station = eine Station bedient { $bench_name } auf Port { $port }
check-port-end-program = jenes Programm beenden, oder in station.toml unter [server] einen anderen port setzen
check-port-taken = ein anderes Programm belegt Port { $port }
check-port-nobody = eine Station arbeitet (Prozess { $process }), aber niemand lauscht auf Port { $port }
check-port-restart = die Station neu starten: sudo systemctl restart station
check-port-free = Port { $port } ist frei
check-pins-settings = die Einstellungen sind nicht lesbar, daher ist die Anzeige unbekannt
check-pins-none-wanted = keine Anzeige gewünscht (panel.pins = "none"): alles geschieht auf der Seite
check-pins-correct = in station.toml unter [panel] berichtigen
check-pins-set = für den Unterricht in station.toml unter [panel] pins = "real" oder "none" setzen
check-pins-mock = die Einstellungen wählen nachgeahmte Pins: keine Lampe wird leuchten
check-pins-held-by = GPIO{ $pin } von { $program_name }
check-pins-end-program = jenes Programm beenden, oder das Overlay, das den Pin belegt, aus config.txt nehmen
check-pins-held = Pins der Anzeige sind belegt: { $pins }
check-pins-good = lgpio, Stiftleiste an gpiochip{ $chip }
check-pins-good-at-work = lgpio, Stiftleiste an gpiochip{ $chip }; die arbeitende Station hält die Pins
check-probe-not-wanted = kein Fühler gewünscht: Temperaturen werden von einem Thermometer eingegeben
check-probe-set-driver = für den Unterricht in station.toml unter [probe] driver = "one-wire" setzen
check-probe-virtual = die Einstellungen wählen den virtuellen Becher: kein Fühler wird gelesen
check-probe-not-readable = dieser Benutzer darf den Fühler nicht lesen
check-reads-no-samples = die Messwerte der arbeitenden Station sind von hier nicht zu sehen, und ein zweiter Leser würde sie stören
check-reads-stop-station = die Station anhalten, dann noch einmal prüfen
check-reads-supply = die Versorgungsader (VDD) verliert Kontakt: Stecker und Lötstellen ansehen, und das Netzteil des Pi
check-reads-data-ground = die Datenader berührt Masse: Stecker und Lötstellen ansehen
check-reads-hangs = den Fühler abziehen und wieder anstecken; hängt er weiter, die Station 10 s vom Strom trennen
check-reads-half-plugged = so liest sich eine halb eingesteckte Ader: Stecker und Lötstellen ansehen
check-reads-left-bus = der Fühler hat den Bus verlassen: Stecker und Kabel ansehen
check-reads-unplug-others = alle Fühler bis auf einen abziehen, oder in station.toml probe.id setzen
check-reads-own-probe = den eigenen Fühler des Platzes anstecken, oder in station.toml probe.id ändern und die Station neu starten
check-reads-cable = kürzeres Kabel, 4,7 kΩ (langes Kabel: 2,2 kΩ) von Daten nach 3,3 V, anderer Fühler; dann noch einmal prüfen
check-reads-none-failed = keiner von { $count } Lesevorgängen schlug fehl; bis zu { $unseen } von 100 könnten es noch (95 %)
check-reads-none-failed-station = keiner von { $count } Lesevorgängen der arbeitenden Station schlug fehl; bis zu { $unseen } von 100 könnten es noch (95 %)
check-reads-failed = { $failed } von { $count } Lesevorgängen schlugen fehl, { $share } von 100 ({ $kinds_text })
check-reads-failed-station = { $failed } von { $count } Lesevorgängen der arbeitenden Station schlugen fehl, { $share } von 100 ({ $kinds_text })
check-noise-too-few = zu wenige gute Lesevorgänge, um das Rauschen zu beurteilen
check-noise-all-alike = jeder Wert ist genau { $temperature_c } °C, was manche Nachbauten liefern, bevor sie gemessen haben
check-noise-hold-probe = den Fühler in der Hand halten und noch einmal prüfen: der Wert muss steigen
check-noise = Rauschen { $sd_c } °C (Standardabweichung) bei { $mean_c } °C
check-noise-changing = die Temperatur änderte sich, daher lässt sich ihr Rauschen nicht beurteilen
check-noise-still-water = den Fühler eine Minute in ruhigem Wasser lassen, dann noch einmal prüfen
check-noise-another-probe = den Fühler in ruhigem Wasser lassen und noch einmal prüfen; bleibt das Rauschen, einen anderen nehmen
check-noise-much = { $noise }, mehr als { $most_c } °C
check-conversion-not-timed = nicht selbst gelesen, daher keine Wandlung gestoppt
check-conversion = der Chip antwortet nach { $seconds } s
check-conversion-slow = der Chip antwortet nach { $seconds } s; das Datenblatt erlaubt 0,75 s
check-conversion-read = ein Lesevorgang dauert { $seconds } s; mehr sagt dieser Kernel nicht
check-conversion-early = die Werte kommen nach { $seconds } s, bevor die Wandlung von { $conversion_s } s zu Ende sein kann
check-conversion-stop-others = jedes andere Programm beenden, das den Fühler liest; dann noch einmal prüfen
check-conversion-fixed = der Kernel wartet fest { $seconds } s, daher lässt sich die Zeit des Chips nicht beurteilen
check-kind-number = seine Nummer hat das Muster des Herstellers; seine Bytes wurden nicht angesehen
check-kind-nothing-against = nichts hier Gelesenes spricht gegen einen echten DS18B20, was kein Beweis ist
check-kind-off-sheet = ein Nachbau, der vom Datenblatt abweicht: { $reasons }
check-kind-expect = mit Rauschen und Abweichung rechnen: in Eiswasser prüfen, oder einen anderen nehmen
check-kind-copy = ein Nachbau, wie die meisten Fühler in Stahlhülse: { $reasons }. Nachbauten können gut sein: Rauschen und Fehler zeigen es
check-kind-offset = seine Abweichung einmal in Eiswasser prüfen
check-kind-no-pattern = seine Nummer hat nicht das Muster des Herstellers ({ $pattern_text }…)
check-kind-reserved = seine reservierten Bytes sind { $bytes_text }, nicht ff … 10 wie im Datenblatt
check-kind-byte-6 = Byte 6 zählt nicht mit der Temperatur
check-failed-itself = diese Prüfung schlug selbst fehl ({ $fault_name }: { $reason })
check-report = mit der Ausgabe von station --version melden
check-storage-unsafe-plug = { $path } liegt auf { $kind_name }, was einen gezogenen Stecker schlecht verträgt
check-storage-unsafe-network = { $path } liegt auf { $kind_name }, was auf einem anderen Rechner liegt, wo die Aufzeichnung nicht sein darf
check-storage-on-the-card = in station.toml unter [record] folder auf einen Ordner auf der Karte setzen
check-storage-overlay-off = das Overlay-Dateisystem ausschalten (raspi-config, Performance Options), oder in station.toml unter [record] folder auf einen Ordner auf der Karte setzen
check-storage-unknown = dieser Rechner sagt nicht, wo { $path } liegt
check-storage-in-memory = die Aufzeichnung liegt im Arbeitsspeicher ({ $kind_name } auf { $mount_path }): beim Ausschalten ist sie weg
check-storage-read-only = { $mount_path }, wo die Aufzeichnung liegt, ist schreibgeschützt ({ $device_name })
check-storage-card-worn = den Pi neu starten; bleibt es so, ist die Karte gesperrt oder verbraucht: eine andere nehmen
check-storage-good = { $path } kann beschrieben werden und bleibt erhalten ({ $kind_name } auf { $device_name })
check-storage-little = nur { $megabytes } MB frei, Platz für etwa { $hours } Stunden Messwerte
check-storage-delete-old = alte Aufzeichnungen anderswo aufheben und hier löschen, oder eine größere Karte nehmen
check-storage-free = { $megabytes } MB frei
check-storage-cannot-write = { $path } kann nicht beschrieben werden: { $reason }
check-storage-other-bytes = { $path } gibt andere Bytes zurück, als geschrieben wurden
check-storage-take-another = eine andere Karte nehmen
check-storage-is-a-file = { $path } ist eine Datei, dort kann der Ordner der Aufzeichnung nicht sein
check-storage-other-user = { $path } gehört einem anderen Benutzer (uid { $user })
check-storage-not-writable = { $path } darf nicht beschrieben werden
check-storage-chmod = mit chmod u+rwx { $path } freigeben
versions-not-installed = nicht installiert
versions-page-built = Seite gebaut
versions-page-not-built = Seite nicht gebaut
check-versions = Station { $station_version }, Python { $python_version }, { $system_name }
check-versions-board = { $versions }, { $board_name }
check-versions-no-pi = { $versions }; kein Raspberry Pi
check-versions-other-board = { $versions }; kein Raspberry Pi ({ $board_name })
check-versions-64-bit = Raspberry Pi OS Lite mit 64 Bit auf die Karte schreiben
check-versions-32-bit = { $versions }, { $board_name }: ein 32-Bit-System
order-of-practical-over = Das galt einem Versuch, der vorbei ist.
probe-read-twice = dieser Prozess liest dort schon einen Fühler; zwei Leser würden sich stören
probe-not-ds18b20 = probe.id { $probe_name } ist kein DS18B20: 28- und zwölf hexadezimale Ziffern
panel-pins-choose = panel.pins = { $typed }: nimm "real", "mock" oder "none"
panel-install-lgpio = "python3-lgpio" aus Raspberry Pi OS installieren und die Umgebung mit --system-site-packages anlegen, oder panel.pins = "none" setzen, um nur mit der Seite zu arbeiten
panel-lgpio-not-installed = Pythons lgpio ist nicht installiert ({ $reason })
panel-set-lg-wd = LG_WD auf einen Ordner setzen, in den die Station schreiben darf
panel-lgpio-cannot-write = lgpio kann nicht in { $path } schreiben ({ $reason })
panel-lgpio-empty = das installierte lgpio ist leer (Ausgabe 0.0.0.2)
panel-run-on-pi = die Station auf einem Raspberry Pi starten, oder panel.pins = "none" setzen, um nur mit der Seite zu arbeiten
panel-no-gpio = dieser Rechner hat keine GPIO-Pins
panel-add-to-group = den Benutzer der Station in die Gruppe "gpio" aufnehmen und sie neu starten
panel-gpio-not-allowed = dieser Benutzer darf die GPIO-Chips nicht öffnen
panel-no-header = kein GPIO-Chip ist die Stiftleiste eines Raspberry Pi ({ $found_text })
panel-use-supported = einen unterstützten Raspberry Pi nehmen
panel-check-nothing-else = prüfen, dass nichts anderes { $pins_text } benutzt (ein Overlay in config.txt, ein anderes Programm)
panel-pins-not-claimed = die Pins lassen sich nicht belegen ({ $reason })
panel-pin-of-probe = den Temperaturfühler
panel-pin-number = { $pin_name } = { $typed }: gib eine GPIO-Nummer von 2 bis 27 an
panel-pin-taken = { $pin_name } = { $pin }: GPIO{ $pin } ist belegt durch { $by }; wähle einen anderen
panel-cannot-be-used = die Anzeige lässt sich nicht benutzen: { $reason }; { $remedy }
virtual-speed = Die Geschwindigkeit muss größer als null sein.
virtual-faults-percent = Im Fehlerskript, { $typed }: höchstens 100 % können ausfallen.
virtual-faults-not-understood = Im Fehlerskript ist { $typed } nicht verständlich. Schreib einen Fehler, @, die Sekunde des Platzes, + und wie viele Sekunden er dauert (power_on@30+5), oder random 30 %. Fehler: { $known_text }.
virtual-ordinary-number = eine gewöhnliche Zahl
virtual-between-0-and-1 = zwischen 0 und 1
virtual-zero-or-more = null oder mehr
virtual-above-zero = größer als null
virtual-must-be = { $field_name } ist { $value }: Verlangt ist { $wanted }.
virtual-tipped-over = Der Becher ist umgekippt.
practise-bench-name = Übungsbecher
practise-no-acid = Der Becher ist leer: fülle zuerst Säure ein.
practise-no-such-cup = Diesen Übungsbecher gibt es nicht mehr. Öffne die Seite neu, dann bekommst du einen neuen.
practise-full = Alle Übungsbecher sind in Gebrauch. Warte, bis einer frei wird, oder frage deine Lehrkraft.
practise-bench-at-work = An diesem Platz läuft gerade ein Durchgang. Übe, wenn er zu Ende ist.
practise-truth = In diesem Becher hatte { $acid_name } { $mol_dm3 } mol/dm³. Der Äquivalenzpunkt lag bei { $end_point_cm3 } cm³.
practise-truth-once = { $added } mit { $liquid } gemischt ergibt in diesem Becher { $enthalpy_kj_mol } kJ/mol.
practise-slip-nothing = Du hast gedrückt, aber nichts zugegeben.
practise-slip-missed = Du hast gedrückt, aber nur { $poured_cm3 } cm³ zugegeben.
practise-slip-double = Du hast { $poured_cm3 } cm³ zugegeben: etwa das Doppelte der geplanten { $planned_cm3 } cm³.
practise-slip-volume = Du hast { $poured_cm3 } cm³ zugegeben; geplant waren { $planned_cm3 } cm³.
practise-slip-pressed-late = Du hast erst { $seconds } s nach der Zugabe gedrückt.
practise-slip-waited = Du hast { $seconds } s gewartet, bevor du diese Portion zugegeben hast.
practise-slip-early = Du hast diese Portion { $seconds } s zu früh abgelesen.
practise-slip-not-stirred = Du hast nach dieser Portion nicht gerührt.
practise-slip-lid = Der Deckel war nicht auf dem Becher.
practise-slip-probe-out = Der Fühler war nicht im Becher.
practise-slip-not-filled = Du hast den Becher nicht neu mit Säure gefüllt.
practise-slip-not-rinsed = Du hast den Fühler ungespült aus der Lauge in die Säure gesteckt.
versions-library = { $library_name } { $version }
versions-station = benchwarm { $version }, { $page }
versions-lines =
    { $first }
    { $second }

## record

csv-row-both = Temperatur und Portion zugleich; eine Zeile hat nur eines davon
csv-row-neither = weder Temperatur noch Portion: trage ein, was gemeint war, oder lösche die Zeile
csv-row-second-portion = eine zweite Portion, wo der Plan nur einmal mischt
csv-row-not-in-order = { $time_s } kommt nach { $before_s }; die Zeilen eines Durchgangs stehen in der Reihenfolge der Zeit
csv-not-one-of = keines von { $known_text }
record-closed = { $path }: Das Protokoll ist geschlossen
record-cannot-write = { $path }: Das Protokoll kann nicht geschrieben werden: { $reason }
record-restart-station = { $reason }; starte die Station neu
record-event-unreadable = { $path }: Ereignis { $event } kann nicht gelesen werden: { $reason }
record-cannot-read = { $path }: Das Protokoll kann nicht gelesen werden: { $reason }
record-cannot-open-folder = { $path }: Das Protokoll lässt sich nicht öffnen: { $reason }; mach den Ordner beschreibbar oder wähle einen anderen
record-another-station = { $path }: Hier führt schon eine andere Station ihr Protokoll; halte sie zuerst an
record-newer = { $path }: von einer neueren Station geschrieben (Format { $format_version }); aktualisiere diese
record-none-here = { $path }: hier ist kein Protokoll; nenne seinen Ordner mit --record
record-cannot-open = { $path }: Das Protokoll lässt sich nicht öffnen: { $reason }
record-not-set-aside = { $path }: Das beschädigte Protokoll ließ sich nicht beiseitelegen: { $reason }
sheet-date-and-time = Datum und Uhrzeit (Uhr der Station)
sheet-bench-time = Zeit des Platzes / s
sheet-repeat = Durchgang
sheet-portion = Portion
sheet-what = was
sheet-in-words = in Worten
sheet-notes = Notizen
sheet-nothing-read = nichts war ablesbar
sheet-nothing-read-why = nichts war ablesbar: { $reason }
noted-plan-chosen = Plan gewählt
noted-group = Gruppe
noted-no-label = ohne Bezeichnung
noted-thermometer = Thermometer
noted-stations-probe = Fühler der Station
noted-ordinary-thermometer = { $digital ->
    [true] digital, auf { $division_c } °C
   *[false] gewöhnliches, Teilung { $division_c } °C
}
noted-temperature-of-added = Temperatur der Zugabe
noted-set-up = Vorbereitung
noted-set-up-step = { $step ->
        [alkali] Temperatur der Zugabe ausgelassen
        [probe] Fühler abgespült und abgewischt
        [empty] Becher geleert
       *[wash] Becher gespült und getrocknet
    }
noted-repeat-begun = Durchgang begonnen
noted-repeat-ended = Durchgang beendet
noted-repeat-set-aside = Durchgang zählt nicht mehr mit
noted-repeat-counts-again = Durchgang zählt wieder mit
noted-portion-taken-back = Portion zurückgenommen
noted-mass-corrected = Masse berichtigt
noted-volume-corrected = Volumen berichtigt
noted-portion-unsure = Portion unsicher
noted-portion-sure = Portion wieder sicher
noted-station-asked = die Station fragte
noted-answer = die Antwort
noted-note = Notiz { $number }
noted-note-withdrawn = Notiz { $number } zurückgezogen
noted-adopted = Messwerte einer anderen Gruppe übernommen
noted-own-again = wieder die eigenen Messwerte der Gruppe
noted-own-reading = eigene Ablesung
noted-results = Ergebnisse
noted-shown-by-staff = von der Lehrkraft gezeigt
noted-shown-with-prepared = von der Lehrkraft gezeigt; die Flasche war mit { $mol_dm3 } mol/dm³ angesetzt
noted-withheld-by-staff = von der Lehrkraft zurückgehalten
noted-correction-of-probe = Berichtigung des Fühlers
noted-none = keine
noted-check-saved = Prüfung { $number } des Fühlers gespeichert
noted-check-withdrawn = Prüfung { $number } des Fühlers zurückgenommen
noted-cup-tested = Becher geprüft
noted-record-damaged = beschädigtes Protokoll beiseitegelegt
noted-events-go-on = { $count } Ereignisse gehen weiter
noted-probe-lost = Fühler verloren
noted-probe-found = Fühler wieder da
noted-paused = unterbrochen
noted-by-role = durch die { $role ->
        [teacher] Lehrkraft
       *[technician] Technik
    }
noted-resumed = fortgesetzt
noted-finish-undone = Ende zurückgenommen, es geht weiter
noted-repeat-asked = noch ein Durchgang
noted-teacher-called = Lehrkraft gerufen
noted-call-ended = Ruf nach der Lehrkraft beendet
noted-sketch = Vorhersage gezeichnet
noted-practical-ended = Versuch beendet
noted-early = vorzeitig
sheet-temperature-at-end-point = Temperatur am Äquivalenzpunkt
sheet-expected-shift = erwartete Verschiebung der Geraden
sheet-change-of-temperature = Temperaturänderung
sheet-heat-given-out = abgegebene Wärme
sheet-heat-taken-in = aufgenommene Wärme
sheet-enthalpy-per-mole = Enthalpieänderung pro Mol
sheet-acid-concentration = Konzentration der Säure
sheet-of = von
sheet-method = Verfahren
sheet-quantity = Größe
sheet-value = Wert
sheet-standard-uncertainty = Standardunsicherheit
sheet-95-from = 95 % von
sheet-95-to = 95 % bis
sheet-unit = Einheit
sheet-step = Schritt
sheet-formula = Formel
sheet-working = Rechnung
sheet-results = Ergebnisse
sheet-steps = Rechenschritte
sheet-mean-of-repeats = Mittelwert
sheet-repeat-number = Durchgang { $repeat }
sheet-no-result = kein Ergebnis
sheet-worth-a-thought = zu bedenken
sheet-accepted = Literaturwert
sheet-own-lines = eigene Geraden
sheet-plan = Plan
sheet-table = Tabelle
sheet-run-temperature = Durchgang { $repeat } / °C
sheet-run-mass = Masse in Durchgang { $repeat } / g
sheet-volume-added = zugegebenes Volumen / cm³
sheet-line = Gerade
sheet-line-before = Gerade davor
sheet-line-after = Gerade danach
sheet-line-temperature = auf der Geraden / °C
sheet-probe = Fühler
sheet-mean = Mittel
sheet-samples = Messungen
sheet-portions = Portionen
sheet-bench = Platz
sheet-group = Gruppe
sheet-practical = Versuch
sheet-practice = Übung
sheet-virtual-cup = mit virtuellem Becher
sheet-how-clock-set = wie die Uhr der Station gestellt wurde
sheet-readings-of = Messwerte
sheet-own = die eigenen dieser Gruppe
sheet-not-own = nicht die eigenen dieser Gruppe: { $label_name }
sheet-ordinary-typed = gewöhnliches Thermometer, eingetippt
sheet-moments = Zeitpunkte der Ablesung
sheet-moments-own = die Gruppe hat selbst entschieden
sheet-moments-station = wie die Station es verlangte
sheet-thermometer = Thermometer
sheet-repeats-planned = geplante Durchgänge
sheet-temperature-added-before = Temperatur der Zugabe, vor dem Start
sheet-indented = { "  " }{ $of }
sheet-its-uncertainty = ihre Standardunsicherheit
sheet-cup-heat-capacity = Wärmekapazität von Becher und Fühler
sheet-in-the-cup = im Becher
sheet-volume = Volumen
sheet-concentration = Konzentration
sheet-mass-g = Masse / g
sheet-mass = Masse
sheet-added-at-once = auf einmal zugegeben
sheet-concentration-to-find = Konzentration (leer: gesucht)
sheet-added-in-portions = in Portionen zugegeben
sheet-volume-of-portion = Volumen einer Portion
sheet-portions-planned = geplante Portionen
sheet-repeat-set-aside = Durchgang zählt nicht mit: { $reason }
sheet-no-reason = ohne Grund
sheet-not-sure-why = unsicher: { $reason }
sheet-not-settled = noch nicht ruhig
sheet-not-a-probes = nicht von einem Fühler
sheet-clock-network = durch das Netz
sheet-clock-not-set = nicht gestellt: Datum und Uhrzeit können falsch sein
sheet-total-added = insgesamt zugegeben / cm³
sheet-temperature = Temperatur / °C
sheet-u-temperature = Standardunsicherheit / °C
sheet-time-in-repeat = Zeit im Durchgang / s
sheet-counts = zählt
sheet-why-not = warum nicht, oder was besonders ist
sheet-mean-added = mittlere Zugabe / cm³
sheet-mean-temperature = mittlere Temperatur / °C
sheet-repeat-counts = Durchgang zählt
sheet-as-probe-said = wie der Fühler anzeigte / °C
sheet-corrected-by = berichtigt durch
sheet-checked-on = geprüft am
sheet-correction-added = Berichtigung / °C
sheet-u-correction = ihre Standardunsicherheit / °C
sheet-at-about = bei etwa / °C
sheet-relative-u = relative Unsicherheit eines Unterschieds
sheet-volume-cm3 = Volumen / cm³
sheet-added-early = zugegeben, bevor die Station darum bat
sheet-reason = Grund
record-backup-not-written = { $path }: Die Sicherung ließ sich nicht schreiben: { $reason }; wähle einen anderen Ort
record-not-restored = { $path }: Das Protokoll ließ sich nicht wiederherstellen: { $reason }
record-not-deleted = { $path }: Das Protokoll ließ sich nicht löschen: { $reason }
file-no-such = { $path }: keine solche Datei; prüfe den Namen
record-backup-not-sound = { $path }: keine heile Sicherung eines Protokolls ({ $reason }); nimm eine andere
record-not-a-backup = { $path }: keine Sicherung eines Protokolls: { $reason }
record-backup-changed = { $path }: Ereignis { $event } ist nicht so, wie es geschrieben wurde; nimm eine andere Sicherung
record-moved = die Datei wurde verschoben oder gelöscht
record-log-deleted = ihr Log { $file } wurde gelöscht und lässt sich nicht neu schreiben ({ $reason })
noted-quantity = { $value } { $unit }
noted-cup = { $label_name }: { $j_k } ± { $u_j_k } J/K
noted-question = { $code ->
        [no_change] keine Änderung
        [double] doppelte Änderung
        [not_stirred] nicht gerührt
        [sudden_fall] plötzlicher Abfall
        [probe_out] Fühler nicht in der Flüssigkeit
        [other_start] Start weit vom ersten
        [volume] anderes Volumen
        [slip] Ablesefehler
       *[other] { $text }
    }
noted-answered = { $code ->
        [yes] ja
        [no] nein
        [once] einmal
        [twice] zweimal
        [lid] Deckel
        [spilled] verschüttet
        [not_sure] unsicher
        [readings_fit] die späteren Messwerte passen
        [typed_again] neu eingetippt
       *[other] { $text }
    }
noted-bad = { $code ->
        [empty] kein Text
        [crc] falsche Prüfsumme
        [garbled] entstellter Text
        [zeros] nur Nullen
        [power_on] Einschaltwert
        [out_of_range] außerhalb des Messbereichs
        [jump] ein unmöglicher Sprung
        [gone] nicht am Bus
        [several] mehrere Fühler
        [other_probe] ein anderer Fühler
        [not_read] nicht gelesen
        [no_answer] keine Antwort
       *[other] { $text }
    }
noted-check = { $code ->
        [ice] Eispunkt
        [boiling] Siedepunkt
        [ice_and_boiling] Eis- und Siedepunkt
        [comparison] Vergleich
        [dip] Eintauchen
       *[other] { $text }
    }

## kit

progress-title = Diese Station wird eingerichtet
progress-step = Installation, Schritt { $number } von { $total }: { $what }
progress-system = Einstellungen des Systems
progress-wheels = ihre Teile werden kopiert
progress-station = die Station selbst, einige Minuten
progress-panel = Lampen, Summer und Knopf
progress-broker = die Verbindung zu den Plätzen
progress-services = sie startet
progress-waits = Die Installation beginnt gleich.
progress-failed = Die Installation ist fehlgeschlagen.
progress-mend = Beim nächsten Start wird es erneut versucht. Diese Zeilen sagen, warum:
progress-done = Installiert. Die Seite kommt von selbst, vielleicht nach einem Neustart.
progress-stay = Lass den Strom an. Diese Seite geht von selbst weiter.
kit-network-file =
    Das Netz dieses Platzes. An jedem Computer geändert, gilt es ab dem nächsten Start.
    WLAN: ssid = "Name des Netzes", password = "8 bis 63 Zeichen", country = "DE", vielleicht hidden = true
    Nur das Kabel: wired = true
    Was daraus wurde, steht in network-result.txt neben dieser Datei.
helper-none = Diese Station wurde nicht von einer Karte von station kit installiert. Darum kann sie das nicht selbst tun.
helper-not-known = Der Helfer der Station kennt diese Bitte nicht, oder ein Wert darin ist falsch.
helper-busy = Gerade wird noch etwas anderes getan. Versuche es in einer Minute wieder.
helper-begun = Es wird getan, und die Seite ist so lange weg. Schau danach wieder hier nach; melde dich neu an, wenn du gefragt wirst.
helper-network-begun = Das neue Netz wird eine Minute lang versucht. Antwortet es nicht, kommt das alte zurück.
helper-network-kept = Das neue Netz hat eine Minute lang geantwortet und bleibt.
helper-network-back = Das neue Netz hat nicht eine ganze Minute geantwortet. Das alte ist wieder da.
helper-restarts = Die Station startet neu. Ihre Seite ist in ein bis zwei Minuten wieder da.
helper-shuts-down = Die Station fährt herunter. Zieh den Stecker, wenn ihr grünes Licht nicht mehr blinkt.
helper-backed-up = Das Protokoll liegt auf dem Stick: { $file }.
helper-settings = Gespeichert. Die Station startet damit neu; wer angemeldet ist, meldet sich neu an.
helper-no-stick = Kein Stick gefunden. Stecke einen ein, formatiert als FAT32, exFAT oder ext4.
helper-several-sticks = Mehrere Sticks sind eingesteckt. Lass einen stecken.
helper-stick-unreadable = Der Stick lässt sich nicht lesen. Versuche einen anderen.
image-no-mtools = Abbilder brauchen mtools: sudo apt install mtools. Ohne das die Ordner von Hand kopieren.
image-other = { $path }: Die Bootpartition hat kein { $file }, also ist es nicht das System für diese Karten
image-no-boot = { $path }: kein Abbild mit einer FAT-Bootpartition am Anfang; nimm das offizielle
image-not-as-named = { $path }: SHA-256 beginnt mit { $digits_text }, anders als genannt; lade es neu herunter
image-not-whole = { $path }: lässt sich nicht auspacken; lade es neu herunter
image-no-room = { $path }: Hier werden { $gigabytes } GB gebraucht; wähle einen anderen Ort
image-not-written = { $path }: nicht geschrieben: { $reason }
debs-none = { $path }: kein Paket von Mosquitto für arm64 darin; die Seite kits.toml im Handbuch nennt den Befehl, der den Ordner füllt
debs-other = { $path }: kein Paket für arm64; fülle den Ordner auf dem System der Karten
debs-no-room = --debs: Kein Platz dieser Tabelle ist der Raum, also braucht nichts Mosquitto
kit-plan-cannot-be-read = { $path }: Der Plan lässt sich nicht lesen: { $reason }
kit-folder-not-empty = { $path }: nicht leer; nenne einen neuen Ordner, denn jeder Lauf erzeugt neue Codes
kit-wheel-not-as-listed = { $path }: nicht so, wie { $file } daneben es angibt; lass --wheelhouse weg, um alles zu holen
kit-no-pip-wheel = { $path }: darin ist kein Wheel von pip; lass --wheelhouse weg, um alles holen zu lassen
kit-no-lgpio-wheel = Im Wheelhouse ist kein Wheel von lgpio. Hat auch das System der Karte kein python3-lgpio, bleiben Lampen, Summer und Taster aus, und result.txt auf der Karte sagt es; gib eines mit --lgpio an.
update-digits-too-few = --sha256: { $count } Stellen sind zu wenige, um sicher zu sein; gib die ersten { $least_text } an, oder alle
update-not-there = { $path }: nicht da; prüfe den Namen, und ob der Stick eingehängt ist
update-not-a-wheel-name = { $file }: kein Name eines Wheels
update-not-whole = { $file }: kein ganzes Wheel ({ $reason }); kopiere es noch einmal
update-inside-it-says = { $file }: innen steht { $name } { $wheel_version }
update-wheel-of-other = { $path }: ein Wheel von { $name }; nenne das Wheel von { $wanted_name }
update-no-sums = { $path }: darin ist keine Datei { $file }; nimm den ganzen Ordner wheelhouse, den `station kit` erzeugt hat
update-too-many-wheels = { $path }: { $count } Wheels; nimm den Ordner wheelhouse, den `station kit` erzeugt hat
update-not-as-listed = { $path }: nicht so, wie { $file } es angibt; kopiere den Ordner noch einmal
update-lacking = { $path }: { $wheel_file } steht in { $file }, fehlt aber; kopiere den Ordner noch einmal
update-one-wanted = { $path }: { $count } Wheels von { $name }; gebraucht wird eines
file-larger-mb = { $path }: größer als { $megabytes } MB; ist es die richtige Datei?
update-a-link = { $path }: ein Verweis; nimm die Datei selbst
update-not-a-file = { $path }: keine Datei; nimm den ganzen Ordner wheelhouse, den `station kit` erzeugt hat
update-bad-line = { $file }: Zeile { $line } ist keine Prüfsumme mit dem Namen eines Wheels
update-too-much = { $file }: mehr, als ein Wheel dieser Station hat
update-twice = { $file }: eine Datei kommt zweimal darin vor
update-outside = { $file }: { $entry_path } bliebe nicht in seinem Ordner
update-not-as-record = { $file }: { $entry_path } ist nicht so, wie sein RECORD es angibt
kit-no-wheels = Diese Station hat die Wheels nicht mehr, aus denen sie installiert wurde, daher fehlen sie in der Zip-Datei: eine Karte daraus allein kann sich nicht installieren. Den Ordner benchwarm/wheelhouse einer früheren Karte auf jeder neuen in benchwarm kopieren.
kit-read-me =
    Für jeden Platz:
    1. Raspberry Pi OS Lite, 64 Bit, der Ausgabe "{ $release_name }" auf eine Karte schreiben.
    2. Den Inhalt von { $every_card_file } auf ihre Boot-Partition kopieren.
    3. Den Inhalt des Ordners des Platzes (bench-1, bench-2 ...) auf dieselbe Boot-Partition kopieren; Dateien ersetzen.
    4. Die Karte in den Pi stecken und ihn einschalten. Was er tat, steht in benchwarm/result.txt auf der Karte.

    { $labels_file } kommt auf die Gehäuse. { $secrets_file }: ausdrucken, einschließen, die Datei löschen; die Karten enthalten nur Hashes.
kit-choose-plan-too = kits.toml: Zeile { $line }: dort steht der Plan { $path }; wähle auch diese Datei aus
update-nothing-to-go-back = { $path }: { $link_file } darin ist kein Verweis nach { $releases_path }, daher gibt es nichts, wohin es zurückginge; siehe hardware.md, den Schritt, der die Station installiert
update-no-earlier = { $path }: hier ist keine frühere Ausgabe aufgehoben
update-no-environment = keine Umgebung
update-no-pip = { $path }: kein Wheel von pip, weder hier noch von früher; nimm den ganzen Ordner, den `station kit` erzeugt hat
update-lgpio-not-installed = lgpio nicht installiert
reason-none-given = kein Grund genannt
update-failed-at = { $what }: { $reason }
kit-room-label = Raum
kit-labels = Etiketten
kit-codes = Codes und Passwortsätze
kit-lock-away = Schließ dieses Blatt weg und lösche dann die Datei: Die Karten enthalten nur Hashes, und niemand kann die Wörter zurücklesen.
kit-head-bench = Platz
kit-head-code = Code
kit-head-teacher = Passwortsatz der Lehrkraft
kit-head-technician = Passwortsatz der Technik
kit-label-number = Station Nummer { $number }
kit-label-wifi = WLAN: { $ssid_name }
kit-label-probe = Fühler { $probe_name }
kit-label-lamps = Lampen: gelb: warten · grün: ihr seid dran · rot: auf die Seite sehen
kit-for-all = Für jede Station dieses Satzes und für den Raum:
kit-own-passphrases = own_passphrases gibt jeder Station eigene: teacher_passphrase und technician_passphrase weglassen, oder own_passphrases
kit-plain-text = muss reiner Text ohne Steuerzeichen und ohne Leerzeichen am Rand sein
kit-twice = [[kit]] { $what_name } { $typed } gibt es zweimal: jeder Platz braucht seinen eigenen
kit-room-twice = [[kit]] room = true gibt es zweimal: es gibt nur einen Raum
kit-wifi-country = [[kit]] { $label_name }: WLAN braucht das Land, zum Beispiel country = "IE" ganz oben
file-larger-kb = { $path }: größer als { $kilobytes } kB; ist es die richtige Datei?
file-not-utf-8-line = { $path }: Zeile { $line }: kein UTF-8-Text; speichere die Datei als UTF-8
file-line = { $path }: Zeile { $line }: { $reason }
update-wrong-version = die neue Station startet nicht: als ihre Version nennt sie { $typed }
update-worse = die Prüfung der neuen Station findet, was die der alten nicht findet: { $finding }
update-no-answer = keine Antwort
update-check-failed = station check von { $release_name } schlug fehl: { $reason }
update-does-not-end = die neue Station endet nicht, wenn man sie beendet
update-does-not-serve = die neue Station kommt mit einer Kopie dieses Protokolls nicht in Gang: { $reason }
update-does-not-start = die neue Station startet nicht: { $reason }
kit-wheels-not-in-time = die Wheels ließen sich nicht rechtzeitig holen: prüfe das Netz und versuch es noch einmal
kit-pip-failed = pip kam nicht zum Ziel ({ $step_name }): { $reason }
kit-bench-label = Platz { $number }
update-found = { $check_name }: { $found }
settings-language = in dieser Sprache hat die Station keine Wörter; sie hat { $languages_text }

## command

told-record-in-memory = Das Protokoll in { $path } liegt im Arbeitsspeicher: Beim Ausschalten ist es weg. Siehe `station check`.
told-record-salvaged = Das Protokoll war beschädigt: { $count } Ereignisse waren lesbar und gehen weiter; das beschädigte liegt in { $path }.
told-backed-up = { $path }: { $count } Ereignisse, geprüft.
check-plan-none = kein Plan eingestellt: der Versuch der Vorführung
check-plan-correct = den Plan berichtigen, oder plan aus station.toml nehmen
check-read-from = gelesen aus { $path }
told-takes-seconds = Das dauert etwa { $seconds } s: Der Fühler wird einmal in der Sekunde gelesen.
check-settings-correct = diese Zeile berichtigen; bis dahin startet die Station nicht mehr. Geprüft wurden die Vorgaben
check-settings-none = keine Datei mit Einstellungen: es gelten die Vorgaben
told-no-qr = kein QR-Code: segno ist nicht installiert; pip install segno
told-no-lamps-none = keine Lampen: panel.pins = "none"
told-no-lamps = keine Lampen: { $reason }
check-status = { $name }: { $colour ->
        [red] rot
        [amber] gelb
        [green] grün
       *[unknown] unbekannt
    }
check-link-nothing = für den Platz ist nichts zu tun: er arbeitet allein, und der Raum bekommt später alles
check-link-none = kein Raum eingestellt: der Platz arbeitet allein
check-link-password-file = die Datei mit dem Kennwort dort ablegen, wie station kit sie erstellt hat
check-link-compare = link.user und das Kennwort mit denen des Raums vergleichen
check-link-refuses = der Broker unter { $address } lässt diesen Platz nicht ein
check-link-check = link.broker und das Netz prüfen und ob der Raum eingeschaltet ist; bis dahin arbeitet der Platz allein
check-link-silent = der Broker unter { $address } antwortet nicht
check-link-good = der Broker unter { $address } lässt diesen Platz ein
check-room-settings = diese Zeile berichtigen; bis dahin startet der Raum nicht
check-room-no-mosquitto = Mosquitto ist nicht installiert
check-room-install = sudo apt install mosquitto
check-room-private = ein eigener Mosquitto, solange der Raum arbeitet
check-room-lets-in = der Broker unter { $address } lässt den Raum ein
check-room-refuses = der Broker unter { $address } lässt den Raum nicht ein
check-room-systemctl = sudo systemctl status mosquitto; benchwarm.passwords auf der Karte vergleichen
check-room-at-work = der Raum arbeitet; seine Seite ist auf Port { $port }
check-room-start = sudo systemctl start station-room, oder: station room --config room.toml
check-room-not-at-work = auf Port { $port } arbeitet kein Raum
demo-bench-name = Virtueller Platz
told-not-at-work = nicht an der Arbeit: { $address } sagt, warum
told-station-serve = station serve: { $reason }
told-cannot-start = kann nicht starten: { $reason }
export-not-for-terminal = eine Tabelle ist nichts für ein Terminal: nenne ihre Datei mit --out DATEI.xlsx
export-all-needs-out = alle Versuche sind viele Dateien: nenne eine Zip-Datei oder einen Ordner mit --out DATEI.zip oder --out ORDNER
export-cannot-be-written = { $path }: lässt sich nicht schreiben: { $reason }; wähle einen anderen Ort
told-exported = { $path }: { $count } Versuche.
export-is-there = { $path }: ist schon da; nenne einen neuen Ordner, oder eine Datei, die auf .zip endet
file-not-there = { $path }: nicht da; prüfe den Namen
told-images = Vollständige Abbilder, eines für jede Karte: { $path }. Schreibe jedes, wie es ist, ohne Einstellungen des Schreibprogramms.
told-cards = { $count } Karten in { $path }: Kopiere den Inhalt jedes Ordners auf die Boot-Partition seiner Karte.
told-labels = { $path }: ausdrucken, zerschneiden, ein Etikett auf jedes Gehäuse.
told-secrets = { $path }: ausdrucken, einschließen, die Datei löschen.
told-room-folder = { $path }: auf den Rechner des Raums kopieren; dort: station room --config room/room.toml
told-wheelhouse = Der Ordner wheelhouse aktualisiert auch eine Station: station update wheelhouse --sha256 { $digits_text }
told-mind = Achtung: { $reason }
look-run-check = auf dem Pi station check aufrufen und melden, was es sagt
look-check-failed = die Prüfung selbst schlug fehl ({ $reason })
told-mistake = station { $command_name }: Die Station hat einen Fehler gemacht ({ $fault_name }: { $reason }). Bestätigtes ist aufbewahrt. Für einen Bericht STATION_TRACEBACK=1 setzen und es noch einmal tun.
told-error = station { $command_name }: { $reason }
passphrase-again = Noch einmal dasselbe:
passphrase-differ = das war nicht dasselbe; versuch es noch einmal
predict-probe = Fühler (1/16 °C), Verlauf
predict-thermometer-0-1 = Thermometer auf 0,1 °C
predict-thermometer-1 = Thermometer auf 1 °C
predict-mind = Zu beachten:
predict-assumed = Angenommen:
predict-mixed-once = { $in_cup } im Becher, { $added } einmal dazugemischt.
predict-portions = { $in_cup }, { $acid_mol_dm3 } mol/dm³ ({ $basis }); { $count } Portionen { $added }, { $alkali_mol_dm3 } mol/dm³.
predict-resolves = Mit drei Messwerten auf jedem Ast kann dieser Plan Säuren von { $least_mol_dm3 } bis { $most_mol_dm3 } mol/dm³ finden.
predict-keep-from-class = Diese Seite nicht der Klasse zeigen: Sie verrät, was angesetzt wurde.
predict-end-point = Erwarteter Äquivalenzpunkt { $end_point_cm3 } cm³; Messwerte auf den Ästen: { $before } davor, { $after } danach.
predict-rise = Anstieg am Äquivalenzpunkt { $rise_c } °C ab { $start_c } °C.
predict-ratios-rise = Größter Anstieg { $rise_c } °C ab { $start_c } °C.
predict-head-added = zugegeben/cm³
predict-head-temperature = Temperatur/°C
predict-head-end-point = Äquivalenzpunkt eines Durchgangs, cm³
predict-bias = Abweichung
predict-refuses = lehnt ab
predict-head-comparison = Was schwächere Lösungen kosten und bessere Glasgeräte bringen (Fühler, ein Durchgang), cm³
predict-strengths = Säure { $acid_mol_dm3 }, Lauge { $alkali_mol_dm3 } mol/dm³
predict-strengths-rise = Säure { $acid_mol_dm3 }, Lauge { $alkali_mol_dm3 } mol/dm³: Anstieg { $rise_c } °C
predict-as-in-plan = * wie im Plan
predict-change = Erwartete Änderung { $change_c } °C ab { $start_c } °C; { $enthalpy_kj_mol } kJ/mol ({ $of }, { $amount_mol } mol).
predict-head-time = Zeit/s
predict-one-repeat = Ein Durchgang
predict-about-minutes = Etwa { $minutes } Minuten am Arbeitsplatz ({ $parts_text }).
told-prepared = { $path }: Vorbereitung für { $count } Plätze, zum Drucken.
stock-write-it = --stock { $typed }: schreib es als NAME=MOL_DM3, zum Beispiel nitric acid=2.0
stock-out-of-range = --stock { $typed }: mol/dm³ muss über 0 und höchstens 20 sein
stock-wrong = --stock { $typed }: { $reason }
sheet-title = { $practical_name }: { $count } Plätze
sheet-label-of = { $of }: { $hazards }
rehearse-wants-passphrase = der Raum unter { $address } verlangt einen Passwortsatz: schreib ihn in eine Datei und ergänze --passphrase-file DATEI
rehearse-passphrase-wrong = der Raum unter { $address } nimmt diesen Passwortsatz nicht an: berichtige die Zeile in der Datei
rehearse-label = Probe
rehearse-open = { $count ->
        [one] Öffne { $address } in einem Browser: 1 Platz, { $speed }-mal so schnell.
       *[other] Öffne { $address } in einem Browser: { $count } Plätze, { $speed }-mal so schnell.
    }
rehearse-all-finished = Alle Plätze sind fertig.
rehearse-stays-open = Der Raum bleibt offen; Strg-C beendet die Probe.
rehearse-ended-too-soon = einige Plätze der Probe endeten zu früh; siehe oben
rehearse-no-result = Klassenergebnis: zurückgehalten, oder nichts ist zu Ende.
rehearse-no-answer = der Raum unter { $address } antwortet nicht mehr
rehearse-would-not = der Raum unter { $address } lehnte ab: { $reason }
replay-no-samples = { $path }: Zeile 1: keine Messungen; eine Aufzeichnungs-CSV hat eine Spalte time_s
told-restored = { $path }: { $count } Ereignisse sind wieder da.
told-restored-aside = Das Protokoll, das da war, liegt in { $path }.
told-benches-send-to = Die Plätze senden an { $address }.
announce-found = In diesem Netz heißt der Raum { $address }.
announce-taken = Ein anderes Gerät in diesem Netz heißt schon { $host_name }: Dieser Raum heißt { $own_name }. Zwei Räume unterscheidet ein prefix in ihrer room.toml.
announce-not = Der Raum ist hier nicht unter seinem Namen zu finden: { $reason }. Seine Adressen gelten.
told-made-a-mistake = die Station hat einen Fehler gemacht ({ $fault_name }: { $reason })
settings-one-code = setze bench_code oder bench_code_hash, nicht beides
settings-user-letters = Buchstaben, Ziffern, '-', '_' oder '.', höchstens 40
settings-user-missing = user: fehlt; ergänze den Namen, unter dem der Broker diesen Platz kennt
settings-one-password = Das Passwort steht in link.password oder in link.password_file, nicht in beiden.
new-bench-other-broker = Dieser Raum benutzt den Broker { $address }: Den Benutzer des Platzes dort anlegen. `station kit` schreibt dessen Dateien.
new-bench-no-name = { $typed } kann kein Name eines Platzes sein: Buchstaben, Ziffern und Bindestriche, wie bench-3.
new-bench-taken = { $user_name } ist schon eingelassen, das Passwort steht in den Einstellungen dieses Platzes. Für einen anderen Platz einen anderen Namen wählen; --new-password gibt diesem ein neues Passwort.
file-not-utf-8-byte = { $path }: kein UTF-8-Text (Byte { $byte }); speichere die Datei als UTF-8
file-problem = { $path }: { $reason }
told-open = Öffne { $address } in einem Browser. Strg-C beendet.
told-record-kept = Das Protokoll liegt solange in { $path }.
told-alkali = Lauge bei { $temperature_c } °C
told-repeat-begun = Durchgang { $repeat }: Säure im Becher
told-portion-in = Portion { $portion } ist im Becher ({ $volume_cm3 } cm³)
told-probe-lost = der Fühler misst nicht ({ $reason })
told-probe-found = der Fühler ist wieder da
told-repeat-ended = Durchgang { $repeat } ist zu Ende
told-practical-ended = der Versuch ist zu Ende
told-no-end-point = { $method }: kein Äquivalenzpunkt. { $reason }
told-end-point = { $method }: { $end_point_cm3 } ± { $u_cm3 } cm³ (95 %: { $low_cm3 } bis { $high_cm3 } cm³)
told-start = Start
update-name-a-wheel = nenne ein Wheel oder einen Ordner mit Wheels; oder nur --back, um zur Version davor zurückzugehen
update-run-with-sudo = { $path }: darf nicht beschrieben werden; starte es mit sudo
told-installing = installiere benchwarm { $new_version } neben { $old_version }; das dauert einige Minuten
told-next = { $path }: benchwarm { $new_version } ist als Nächstes dran. Hier läuft kein Dienst: Starte die Station selbst neu.
told-unit-differs = Achtung: { $file } dieser Version unterscheidet sich von der in { $path }; vergleiche und kopiere sie von Hand.
told-updated = { $path }: benchwarm { $new_version } arbeitet. Zurück zur Version davor: station update --back
told-back = { $path }: zurück bei { $release_name }.
update-rolled-back = { $release_name } startete nicht innerhalb von { $seconds } s; { $before_name } arbeitet wieder
update-rolled-back-down = { $release_name } startete nicht innerhalb von { $seconds } s; auch { $before_name } startet nicht; journalctl -u station sagt, warum
update-nothing-installed-yet = benchwarm { $new_version }, SHA-256 { $digest_text }: Noch ist nichts installiert. Vergleiche das mit dem, was dir auf anderem Weg als dem Stick gesagt wurde, von denen, die die Wheels erzeugt haben; ist es dasselbe, ergänze --sha256 und die ersten 16 Stellen
update-another-digest = diese Wheels haben eine andere SHA-256 ({ $digest_text }): nicht installieren
update-practical-under-way = ein Versuch läuft; warte, bis er zu Ende ist, oder ergänze --now (er ginge danach weiter)
wipe-add-yes = { $path }: ergänze --yes, um dieses Protokoll endgültig zu löschen; `station backup` bewahrt vorher eine Kopie
told-register-stays = Das Verzeichnis der Fühler bleibt ({ $count } Prüfungen); --register löscht auch das.
told-wiped = { $path }: Das Protokoll ist gelöscht. Sicherungen, die anderswo liegen, bleiben.
result-mean-of-repeats = Mittel der Durchgänge
portion-number = Portion { $portion }
result-repeat = Durchgang { $repeat }
result-none = kein Ergebnis: { $reason }
result-no-reason = es wurde kein Grund genannt
result-change =
    { $way ->
        [in] { $change_c } ± { $u_c } °C (95 %: { $low_c } bis { $high_c } °C); aufgenommene Wärme { $heat_j } ± { $u_heat_j } J
       *[out] { $change_c } ± { $u_c } °C (95 %: { $low_c } bis { $high_c } °C); abgegebene Wärme { $heat_j } ± { $u_heat_j } J
    }
result-end-point = { $end_point_cm3 } ± { $u_cm3 } cm³ (95 %: { $low_cm3 } bis { $high_cm3 } cm³)
result-enthalpy = { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-enthalpy-of = Enthalpieänderung pro Mol ({ $of }) { $enthalpy_kj_mol } ± { $u_kj_mol } kJ/mol
result-acid = Säure { $acid_mol_dm3 } ± { $u_mol_dm3 } mol/dm³
result-quantity = { $quantity } { $value } ± { $u } { $unit }
bench-label = Platz
told-figure = { $figure }
told-address = { $name }: { $address }
passphrase-ask = Passwortsatz:
check-colour = { $colour ->
        [red] rot
        [amber] gelb
        [green] grün
       *[unknown] unbekannt
    }
predict-part = { $part ->
        [start] Start
        [portions] Portionen
        [recording] Aufzeichnen
       *[rinsing] Spülen
    } { $minutes }
predict-bias-c = Abweichung/°C
predict-one-sd = 1 σ
sheet-strength = { $mol_dm3 } mol/dm³
sheet-minutes = { $minutes } min
replay-temperature = { $temperature_c } °C
replay-kind = { $kind ->
        [repeat_begun] Durchgang begonnen
        [portion_added] Portion zugegeben
        [prompt] Aufforderung
        [settled] zur Ruhe gekommen
        [taken] vorher abgelesen
        [question_asked] Frage gestellt
        [portion_unsure] Portion unsicher
        [probe_lost] Fühler weg
        [probe_found] Fühler wieder da
        [resumed] fortgesetzt
        [repeat_ended] Durchgang zu Ende
        [practical_ended] Versuch zu Ende
       *[other] { $kind }
    }
sheet-lesson = { $lesson }:

### Words that only the page says: their ids begin with page-.

## The bench: its numbers, and how fresh they are

page-manual = Handbuch
page-station = Messstation
page-connecting = Verbindung zur Station wird hergestellt …
page-virtual-cup = virtueller Becher
page-from-room = nur zum Ansehen; zurück zum Raum
page-speed = { $factor } × schneller
page-silent = Seit mehr als 3 Sekunden kommt nichts von der Station. Was du siehst, kann veraltet sein.
page-lost = Keine Verbindung zur Station. Schau auf die Station selbst; diese Seite holt alles von allein nach.
page-finished = Fertig
page-ready-tag = Bereit
page-paused-tag = Pause
page-practical = { $acid } im Becher; { $alkali } ({ $concentration } mol/dm³) in Portionen von { $portion } cm³
page-practical-once = { $liquid } im Becher; { $addition } auf einmal dazu
page-temperature = Temperatur
page-no-temperature = noch kein Messwert
page-celsius = { $temperature } °C

# `now` is less than two seconds ago.
page-age =
    { $unit ->
        [now] gerade gemessen
        [s] vor { $count } s gemessen
        [min] vor { $count } min gemessen
       *[h] vor { $count } h gemessen
    }
page-frozen =
    { $unit ->
        [min] veraltet: { $count } min alt
        [h] veraltet: { $count } h alt
       *[s] veraltet: { $count } s alt
    }
page-total-added = insgesamt zugegeben
page-added = zugegeben
page-added-mass = { $mass } g
page-volume = { $volume } cm³
page-repeat-of = Durchgang { $repeat } von { $planned }
page-portion-of = Portion { $portion } von { $planned }
page-time-left = noch
page-left-now = gleich so weit
page-left = etwa { $seconds } s
page-left-unknown = noch nicht bekannt
page-settling = warten, bis die Temperatur ruhig ist
page-probe =
    { $which ->
        [ok] { "" }
        [none] { "" }
        [failing] Manche Messungen schlagen fehl. Prüfe den Stecker des Fühlers.
       *[lost] Der Fühler antwortet nicht. Prüfe, ob er eingesteckt ist; der Versuch geht weiter, sobald er wieder da ist.
    }
page-bad =
    { $which ->
        [empty] keine Antwort
        [crc] unleserlich
        [zeros] Kurzschluss auf der Datenleitung
        [garbled] unleserlich
        [power_on] der Fühler war ohne Strom
        [out_of_range] außerhalb des Messbereichs
        [jump] ein unmöglicher Sprung
        [gone] der Fühler ist nicht eingesteckt
        [several] mehrere Fühler sind eingesteckt
        [other_probe] ein anderer Fühler als bisher ist eingesteckt
        [not_read] die Station konnte ihn nicht lesen
        [no_answer] keine rechtzeitige Antwort
       *[other] { $which }
    }
page-in-memory = Ergebnisse werden nicht aufbewahrt: Ohne Strom sind sie weg. Hol deine Lehrkraft.
page-fault = Im Moment kann nichts aufgezeichnet werden. Hol deine Lehrkraft. ({ $reason })
page-question = Eine Frage
page-question-later = Später
page-question-again = Eine Frage wartet: beantworten
page-more-questions =
    { $more ->
        [one] danach noch eine Frage
       *[other] danach noch { $more } Fragen
    }
page-sending = Wird gesendet …
page-unanswered = Die Station hat nicht geantwortet; vielleicht ist es aufgezeichnet, vielleicht nicht. Drück noch einmal: Doppelt gezählt wird nie.
page-close = Schließen
page-less-than = unter { $amount }

## Charts: titles, axes, legends

page-volume-chart = Temperatur über dem zugegebenen Volumen
page-time-chart =
    { $portion ->
        [0] Vor Portion 1
       *[other] Seit Portion { $portion }
    }
page-live-now = Jetzt
page-live-mixed = Seit dem Mischen
page-live-unmixed = Vor dem Mischen
page-live-time-axis = Zeit / s
page-live-band = ruhig, wenn sie hier bleibt
page-live-text-none = Es gibt noch keine Temperatur zu zeichnen.
page-live-text = Die Temperatur ist jetzt { $temperature } °C.
page-live-text-band = Die Temperatur ist jetzt { $temperature } °C; ruhig ist sie, wenn sie zwischen { $low } und { $high } °C bleibt.
page-live-text-settled = Die Temperatur wurde bei { $settled } °C ruhig und ist jetzt { $temperature } °C.
page-temperature-axis = Temperatur / °C
page-volume-axis = zugegebenes Volumen der Lauge / cm³
page-repeat-name = Durchgang { $repeat }
page-mean = Mittelwert
page-line-before = Gerade davor
page-line-after = Gerade danach
page-settled-at = ruhig bei { $temperature } °C
page-volume-chart-text =
    { $points ->
        [0] Noch keine Messwerte.
       *[other]
            { $points } { $points ->
                [one] Messwert
               *[other] Messwerte
            }; die Tabelle darunter zeigt alle.
    }

## Results: the two end-points, and remarks

page-answer-title = Die Antwort
page-answer-own-acid = Du hast { $volume } cm³ abgelesen, also hat die Säure <concentration>{ $concentration } mol/dm³</concentration>.
page-answer-own-volume = Du hast { $volume } cm³ als <neutralisation>Neutralisationsvolumen</neutralisation> abgelesen.
page-answer-own-change = Du hast eine Änderung von { $change } °C abgelesen.
page-answer-best-acid = Der beste berechnete Wert ist { $value }.
page-answer-best-volume = Das beste berechnete Neutralisationsvolumen ist { $volume } <uncertainty>±</uncertainty> { $u } cm³.
page-answer-best-change = Die beste berechnete Änderung ist { $change } <uncertainty>±</uncertainty> { $u } °C.
page-answer-best-enthalpy = Die beste berechnete Änderung ist { $change } ± { $u } °C, also ist die Enthalpieänderung je Mol ({ $of }) { $enthalpy }.
page-answer-bottle = Die Flasche war mit { $concentration } mol/dm³ angesetzt.
page-answer-reaction = Die <neutralisation>Neutralisation</neutralisation>: { $equation_text }
page-worth-heat = Die <heat-balance>Wärmebilanz</heat-balance> ist hier mehr wert. Sie berücksichtigt, dass das Volumen im Becher wächst und Wärme an den Raum verloren geht. Geraden lassen beides weg.
page-worth-heat-once = Die <heat-balance>Wärmebilanz</heat-balance> ist hier mehr wert. Sie berücksichtigt die Wärme, die beim Mischen an den Raum verloren geht. Verlängerte Geraden schätzen das nur.
page-worth-lines = Die Geraden sind hier mehr wert. Die <heat-balance>Wärmebilanz</heat-balance> passt nicht gut zu deinen Daten.
page-differ-title = Wie sich die beiden Verfahren unterscheiden
page-differ-lines = Geraden: Eine <best-fit>Ausgleichsgerade</best-fit> geht durch die Messwerte vor der Wende, eine durch die danach. Du liest das Volumen am Schnittpunkt ab. Dabei gelten beide Äste als gerade.
page-differ-heat = <heat-balance>Wärmebilanz</heat-balance>: Die Station verfolgt die Wärme durch den ganzen Versuch. Die Reaktion ist <exothermic>exotherm</exothermic>: Ihre Wärme erwärmt Flüssigkeit und Becher, und ein Teil geht an den Raum verloren. Der <end-point>Äquivalenzpunkt</end-point> ist das Volumen, das am besten zu allen Temperaturen passt.
page-more-about = mehr
page-by-straight-lines = Schnittpunkt der <best-fit>Ausgleichsgeraden</best-fit>
page-by-heat-balance = <heat-balance>Wärmebilanz</heat-balance> des ganzen Verlaufs
page-end-point = { $volume } cm³
page-plus-minus = <uncertainty>Standardunsicherheit</uncertainty> { $u } cm³
page-interval = Wahrscheinlich zwischen { $low } und { $high } cm³ (19 von 20 Malen)
page-scatter-only = Dieser Bereich erfasst nur die Streuung deiner Messwerte.
page-scatter-bias =
    Geraden durch unkorrigierte Messwerte schneiden sich hier voraussichtlich etwa { $bias } cm³ zu { $side ->
        [low] niedrig
       *[high] hoch
    }.
page-heat-balance-knows = Berücksichtigt das wachsende Volumen, den Wärmeverlust an den Raum und die Trägheit des Fühlers.
page-not-described = Das Modell beschreibt diesen Verlauf nicht gut: mit Vorsicht verwenden.
page-refused = Die Geraden ergeben keinen Schnittpunkt. { $reason }
page-refused-heat = Keine Wärmebilanz. { $reason }
page-remarks = Darüber lohnt es sich nachzudenken
page-in-repeat = Durchgang { $repeat }

# `earlier` is a list with commas.
page-in-repeats = Durchgänge { $earlier } und { $last }
page-remark-of = { $where }: { $remark }

## Everything mixed at once

page-once-chart = Temperatur über der Zeit
page-since-repeat-axis = Zeit seit Beginn des Durchgangs / s
page-mixed = gemischt
page-once-chart-none = Noch keine Temperaturen.
page-once-chart-text =
    Der Temperaturverlauf von { $repeats } { $repeats ->
        [one] Durchgang
       *[other] Durchgängen
    }; die Tabelle darunter zeigt die Zahlen.
page-once-chart-text-change =
    Der Temperaturverlauf von { $repeats } { $repeats ->
        [one] Durchgang
       *[other] Durchgängen
    }; beim Mischen liegen beide Geraden { $change } auseinander; Zahlen in der Tabelle darunter.
page-line-read-off = Ausgleichsgerade
page-line-extended = bis zum Zeitpunkt des Mischens verlängert
page-by-extended-lines = Verlängerte Ausgleichsgeraden
page-change = { $change } °C
page-change-interval = Wahrscheinlich zwischen { $low } und { $high } °C (19 von 20 Malen)
page-change-plus-minus = <uncertainty>Standardunsicherheit</uncertainty> { $u } °C
page-heat =
    { $way ->
        [in] aufgenommene Wärme
       *[out] abgegebene Wärme
    }
page-joules = { $heat } J
page-joules-plus-minus = Standardunsicherheit { $u } J
page-enthalpy-of = Enthalpieänderung pro <mole>Mol</mole> ({ $what })
page-enthalpy = { $enthalpy } kJ/mol
page-enthalpy-plus-minus = Standardunsicherheit { $u } kJ/mol
page-lines-know = Dieser Bereich erfasst nur die Streuung deiner Messwerte.
page-lines-know-shift = Eine träge Becherwand oder eine Reaktion, die weiterläuft, verschiebt die Geraden stärker.
page-lines-know-bias =
    So gezeichnete Geraden zeigen hier voraussichtlich eine um etwa { $bias } °C zu { $side ->
        [large] große
       *[small] kleine
    } Änderung.
page-heat-once-knows = Berücksichtigt den Wärmeverlust an den Raum, die Trägheit des Fühlers und die Zeit zum Mischen.
page-added-unknown = Wie warm es vorher war ({ $name }), hat niemand gemessen: Das ± der Wärme berücksichtigt das.
page-refused-change = Die Geraden ergeben keine Temperaturänderung. { $reason }

## The table of readings

page-table = Messwerte
page-table-volume = zugegebenes Volumen / cm³
page-table-repeat = Durchgang { $repeat } / °C
page-table-mean = <mean>Mittelwert</mean> / °C
page-once-table = Zahlen jedes Durchgangs / °C
page-quantity = Temperatur
page-rows-start = Start
page-rows-before = Gerade davor
page-rows-after = Gerade danach
page-rows-change = Änderung, Geraden
page-rows-heat-change = Änderung, Wärmebilanz
page-rows-end = Ende
page-missing = –
page-no-reading = kein Messwert
page-at-volume = bei { $volume } cm³
page-not-settled = nicht ruhig
page-not-sure = unsicher
page-set-aside = Durchgang { $repeat } zählt nicht mit.
page-set-aside-why = Durchgang { $repeat } zählt nicht mit: { $reason }.
page-added-at = { $name } vor dem Start: { $temperature } °C.

## Corrections

page-corrections = Ändern, unterbrechen oder beenden
page-corrections-short = Ändern
page-corrections-close = Zu
page-portion = Portion { $portion }
page-whole = { $name }

# `what` is a portion or what is mixed in, `added` the name of what is added.
page-correction-name =
    { $name ->
        [more] Es sind mehr Portionen im Becher
        [reading] Einen eingetippten Wert berichtigen
        [thermometer] Wieder den Fühler nehmen
        [repeat_set_aside] Einen Durchgang nicht mitzählen
        [repeat_restored] Einen Durchgang wieder mitzählen
        [note] Notizen
        [group] Bezeichnung deiner Gruppe
        [adopt] Werte einer anderen Gruppe nehmen
        [adopt_returned] Zurück zu den eigenen Werten
        [portion_added] { $what } ist schon im Becher
        [portion_undone] { $what } kam nicht in den Becher
        [portion_volume] Es war ein anderes Volumen
        [portion_unsure] Unsicher, was in den Becher kam
        [repeat_restarted] Diesen Durchgang neu beginnen
        [alkali_temperature] Temperatur: { $added }
        [pause] Unterbrechen
        [resume] Weiter
        [finish] Versuch beenden
        [finish_undone] Das Ende zurücknehmen und weitermessen
        [begin] Beginnen
        [rinsed] Der Becher ist ausgespült
       *[other] { $name }
    }
page-ask-portion-added = Aufzeichnen, dass schon im Becher ist: { $what }?
page-ask-portion-undone = { $what } zurücknehmen? Nur, wenn nichts davon im Becher ist. Im Protokoll bleibt eine Spur davon.
page-ask-repeat-restarted = Durchgang { $repeat } zählt dann nicht mit, und du beginnst ihn neu. Warum?
page-ask-finish = Jetzt beenden? Der laufende Durchgang endet hier, und nichts kann mehr zugegeben werden.
page-ask-finish-before-turn = Jetzt beenden? Die Temperatur hat noch nicht gewendet. Aus diesen Messwerten lässt sich kein Endpunkt ablesen.
page-ask-finish-go-on = Nein, weitermessen
page-ask-finish-undone = Weitermessen? Was aufgezeichnet ist, bleibt.
page-yes =
    { $which ->
        [portion_added] Ja, ist im Becher
        [portion_undone] Ja, zurücknehmen
        [portion_volume] Dieses Volumen aufzeichnen
        [portion_unsure] Als unsicher markieren
        [repeat_restarted] Ja, neu beginnen
        [finish] Ja, beenden
        [finish_undone] Ja, weitermessen
        [alkali_temperature] Diese Temperatur aufzeichnen
       *[other] { $which }
    }
page-no = Nein, so lassen
page-which-portion = Welche Portion?
page-which-repeat = Welcher Durchgang?
page-portion-name = Durchgang { $repeat }, Portion { $portion } ({ $volume } cm³)
page-once-name = Durchgang { $repeat } ({ $volume } cm³)
page-not-anumber = Gib eine Zahl ein, etwa 4,5
page-real-volume = Volumen, das in den Becher kam / cm³
page-added-temperature = Temperatur / °C ({ $added })
page-measure-with-probe = Mit dem Fühler messen
page-alkali = Lauge
page-reason =
    { $reason ->
        [spilled] verschüttet
        [lost-count-of-the-portions] Portionen nicht mehr mitgezählt
        [the-probe-was-out-of-the-cup] der Fühler war nicht im Becher
        [wrong-volume-in-the-cup] falsches Volumen im Becher
        [added-at-the-wrong-moment] im falschen Moment zugegeben
        [wrong-amounts] falsche Mengen
        [too-few-readings] zu wenige Messwerte
        [the-readings-scatter-too-much] die Messwerte streuen zu stark
        [differs-from-the-other-repeat] weicht vom anderen Durchgang ab
        [lines-drawn-on-paper] Geraden auf Papier gezeichnet
        [read-off-the-points] an den Punkten abgelesen
        [read-in-another-way] anders abgelesen
       *[the-temperature-has-not-turned] die Temperatur hat nicht gewendet
    }
page-choose-reason = Wähle einen Grund
page-other-reason = ein anderer Grund
page-reason-label = Grund
page-reason-text = In deinen eigenen Worten

## Around the instruction: menu, sound, code, typed readings

page-doing-not-fetched = Dieser Teil ist nicht angekommen.
page-doing-fetch-again = Noch einmal versuchen
page-doing-menu = Menü
page-doing-menu-of = Ansichten dieser Seite
page-doing-places =
    { $which ->
        [bench] Der Platz
        [guide] Anleitung und Gefahren
        [record] Protokoll zum Drucken
        [big] Große Zahlen für den Beamer
       *[settings] Einstellungen
    }
page-doing-to-bench = Zurück zum Platz
page-doing-sound =
    { $which ->
        [undecided] Ton einschalten
        [off] Ton einschalten
        [on] Ton ausschalten
       *[asleep] Ton aufwecken
    }
page-doing-sound-offer = Ein Ton kann dir sagen, wann etwas zu tun ist.
page-doing-sound-without = Ohne Ton
page-doing-pressed-early = Dein Druck wurde bemerkt. Die Taste hatte sich gerade geändert: Lies sie, dann drück noch einmal.
page-doing-may-be-old = Nicht aktuell
page-doing-at-the-cup = Am Becher den Knopf der Station drücken. Handys trocken halten.
page-doing-dry-hands = Diese Seite nur mit sauberen, trockenen Händen berühren.
page-doing-guide-first = Anleitung: Was ist im Becher, Gefahren
page-doing-divisions = Euer Thermometer
page-doing-scale = { $digital ->
    [true] Digital, letzte Ziffer / °C
   *[false] Abstand der Striche / °C
}
page-doing-without = Ohne sie weiter
page-doing-go-on-measuring = Weitermessen
page-doing-division-of = { $division } °C
page-doing-go-on-typing = Weiter mit eurem Thermometer
page-doing-use-thermometer = Nehmen
page-clock-wait = ablesen in { $seconds } s
page-clock-now = jetzt ablesen
page-clock-temperature = Temperatur bei { $minutes } / °C
page-amount-taken = { $what ->
        [mass] Wirklich abgewogen / g
       *[volume] Wirklich abgemessen / cm³
    }
page-amount-as-planned = wie geplant
page-amount-wrong = Gib eine Zahl wie { $example } ein, oder lass das Feld leer.
page-doing-typed-temperature = Temperatur / °C
page-doing-record = Eintragen
page-doing-not-anumber = Tippe eine Temperatur ein, etwa 21.5
page-doing-out-of-range = Nur { $low } bis { $high } °C können eingetragen werden.
page-doing-too-fine = Ablesbar sind { $near } °C. Noch einmal drücken behält deinen Wert.
page-doing-far-off =
    { $change } °C { $side ->
        [above] über
       *[below] unter
    } dem letzten Wert. Stimmt es? Noch einmal drücken.
page-doing-last-reading = letzter Wert
page-doing-added-unread = Portion { $portion } ist im Becher, nicht abgelesen
page-doing-to-reading = Jetzt selbst ablesen
page-doing-to-lines = Jetzt deine eigenen Geraden
page-doing-to-results = Zu den Ergebnissen
page-doing-to-record = Dein Protokoll
page-doing-code-title = Der Code dieses Platzes
page-doing-code-why = Er steht auf dem Schild des Platzes. Mit ihm bedient dieses Gerät den Platz.
page-doing-code = Code
page-doing-give-code = Senden
page-doing-leave-code = Jetzt nicht
page-doing-no-answer = Die Station hat nicht geantwortet. Versuche es noch einmal.

## The guide: before the start, and clearing up

page-guide-title = Bevor du anfängst
page-guide-in-cup = Im Becher
page-guide-added = Du gibst zu
page-guide-strength = { $concentration } mol/dm³
page-guide-assumed = Die <concentration>Konzentration</concentration> sollst du herausfinden. Die Gefahren gelten für { $concentration } mol/dm³.
page-guide-no-pictogram = Bei dieser Konzentration kein Gefahrenpiktogramm.
page-guide-basis = Woher das kommt
page-guide-how = So geht es
page-guide-steps =
    { $which ->
        [fill] Becher füllen. Fühler hinein.
        [lid] Deckel drauf.
        [pour] Eine Portion zugeben.
        [stir] Rühren, auf die Station warten.
       *[rinse] Nach der letzten Portion: spülen, dann noch einmal.
    }
page-guide-cautions = Vorsicht
page-guide-clearing-up = Aufräumen
page-guide-pictograms =
    { $which ->
        [GHS02] Entzündbar
        [GHS03] Brandfördernd
        [GHS05] Ätzend
        [GHS06] Giftig
        [GHS07] Gesundheitsschädlich oder reizend
        [GHS08] Ernste Gesundheitsgefahr
        [GHS09] Umweltgefährlich
       *[other] { $which }
    }

## What went wrong: doubts, further portions, notes, the group's label

page-mistakes-groups =
    { $which ->
        [portions] Eine Portion
        [repeat] Dieser Durchgang
        [practical] Der Versuch
       *[group] Deine Gruppe
    }
page-mistakes-doubt-title = Portion { $portion }: Was ist passiert?
page-mistakes-doubt-title-once = Was ist passiert?
page-mistakes-doubts =
    { $which ->
        [spilled] Verschüttet
        [stirred-late] Spät gerührt
       *[lid-off] Deckel war ab
    }
page-mistakes-in-doubt = Portion { $portion } ist als unsicher markiert.
page-mistakes-in-doubt-why = Portion { $portion } ist als unsicher markiert: { $reason }.
page-mistakes-in-doubt-once = Als unsicher markiert.
page-mistakes-in-doubt-once-why = Als unsicher markiert: { $reason }.
page-mistakes-sure = Zurücknehmen
page-mistakes-other-doubt = In deinen eigenen Worten (kann leer bleiben)
page-doubt-title = Prüfe das
page-doubt-of = Durchgang { $repeat }: { $note }
page-doubt-other-volume = Es war ein anderes Volumen
page-doubt-leave-out = Durchgang { $repeat } auslassen
page-doubt-right = Es stimmte
page-doubt-parted = Die Durchgänge { $first } und { $second } liegen ab Portion { $portion } bis zu { $apart } °C auseinander. Such nach einem <anomalous>Ausreißer</anomalous>, bevor du ihren <mean>Mittelwert</mean> benutzt.
page-mistakes-one-more = Noch einen Durchgang machen
page-mistakes-more-title = Wie viele Portionen sind jetzt im Becher?
page-mistakes-quick-volume = Das Volumen, das in den Becher kam: einmal tippen
page-mistakes-volume-of = { $volume } cm³
page-mistakes-as-planned = { $volume } cm³, wie geplant
page-mistakes-which-reading = Welcher Wert?
page-mistakes-clock-reading = Durchgang { $repeat }, { $minutes }: { $temperature } °C
page-mistakes-reading-name =
    { $portion ->
        [0] Durchgang { $repeat }, Anfang: { $temperature } °C
       *[other] Durchgang { $repeat }, Portion { $portion }: { $temperature } °C
    }
page-mistakes-right-reading = Was das Thermometer zeigte / °C
page-mistakes-set-aside-why = Er bleibt im Protokoll und kann später wieder zählen. Warum?
page-mistakes-set-aside = Nicht mitzählen
page-mistakes-restore-why = Welcher Durchgang zählt wieder?
page-mistakes-restore-name = Durchgang { $repeat }
page-mistakes-restore-name-why = Durchgang { $repeat } (nicht mitgezählt: { $reason })
page-mistakes-note-text = Neue Notiz
page-mistakes-note-about = Zu
page-mistakes-about-all = ganzer Versuch
page-mistakes-note-keep = Notiz behalten
page-mistakes-note-withdraw = Zurückziehen
page-mistakes-note-of = { $about }: { $text }
page-mistakes-note-withdrawn = zurückgezogen
page-mistakes-group-label = Bezeichnung, etwa Gruppe 4. Keine Namen.
page-mistakes-group-keep = So heißen
page-mistakes-back = Zurück

## Wörter, die sich erklären: in den Texten der Lernenden markiert, ein Druck öffnet die Erklärung.

page-glossary-word =
    { $which ->
        [neutralisation] Neutralisation
        [end-point] Äquivalenzpunkt
        [best-fit] Ausgleichsgerade
        [uncertainty] ± (Unsicherheit)
        [mean] Mittelwert
        [anomalous] Ausreißer
        [exothermic] exotherm
        [concentration] Konzentration
        [mole] Mol
       *[heat-balance] Wärmebilanz
    }
page-glossary-means =
    { $which ->
        [neutralisation] Säure und Lauge reagieren zu Wasser und einem Salz. Ist von keiner etwas übrig, ist die Mischung neutral.
        [end-point] Das Volumen der Lauge, das die ganze Säure gerade verbraucht. Was danach kommt, kühlt den Becher nur ab.
        [best-fit] Eine Gerade, die allen ihren Punkten so nahe kommt wie möglich. Etwa gleich viele Punkte liegen über und unter ihr.
        [uncertainty] Wie weit ein Ergebnis vom wahren Wert entfernt sein kann. Etwa zwei von drei Ergebnissen liegen höchstens um ± daneben.
        [mean] Alle Werte zusammenzählen und durch ihre Anzahl teilen. Er heißt auch Durchschnitt.
        [anomalous] Ein Messwert, der nicht zum Verlauf der anderen passt. Such nach der Ursache, bevor du ihn weglässt.
        [exothermic] Eine exotherme Reaktion gibt Wärme ab. Ihre Umgebung wird wärmer.
        [concentration] Wie viel von einem Stoff in jedem dm³ der Lösung gelöst ist. Man gibt sie in mol/dm³ an.
        [mole] Eine Zähleinheit für Teilchen, wie das Dutzend für Eier. Ein Mol sind 6.02 × 10²³ Teilchen.
       *[heat-balance] Eine Rechnung, die alle Wärme verfolgt: was frei wird, was den Becher erwärmt, was verloren geht. Sie benutzt jede gemessene Temperatur.
    }
page-glossary = Ein Wort und was es bedeutet
page-glossary-close = Erklärung schließen

## Settings of a device, and what staff may do

page-settings-title = Einstellungen dieses Geräts
page-settings-language = Sprache
page-settings-as-station = wie die Station ({ $name })
page-settings-as-browser = wie dieser Browser
page-settings-units = Einheiten
page-settings-sound = Ton
page-settings-sound-why = Ein kurzer Ton, wenn etwas zu tun ist. Ein Browser tönt erst, nachdem auf die Seite getippt wurde.
page-settings-who = Wer den Platz bedient
page-settings-room = Der Raum
page-settings-role =
    { $which ->
        [looker] Dieses Gerät darf zusehen. Beim ersten Druck wird nach dem Code auf dem Schild des Platzes gefragt.
        [bench] Dieses Gerät bedient den Platz.
        [teacher] Angemeldet als Lehrkraft.
       *[technician] Angemeldet als Technik.
    }
page-settings-sign-out = Abmelden
page-settings-staff = Anmeldung für Lehrkraft und Technik
page-settings-no-passphrase = Kein Passwortsatz gesetzt
page-settings-set-passphrase = Deshalb kann sich hier weder Lehrkraft noch Technik anmelden. Wer die Station betreut, ruft „station passphrase teacher“ auf. Die ausgegebene Zeile kommt unter [access] in station.toml, für einen Raum in room.toml. Dann neu starten. Karten von „station kit“ haben von Anfang an Passwortsätze.
page-settings-staff-role = Rolle
page-settings-roles =
    { $which ->
        [teacher] Lehrkraft
       *[technician] Technik
    }
page-settings-passphrase = Passwortsatz
page-settings-sign-in = Anmelden
page-settings-recover-title = Der Code ist verloren?
page-settings-recover-why = Den Knopf der Station 6 Sekunden halten, loslassen, dann innerhalb einer Minute hier drücken.
page-settings-recover = Diesen Platz ohne Code bedienen
page-settings-staff-title = Für Lehrkraft und Technik
page-settings-show-results = Ergebnisse zeigen
page-settings-hide-results = Ergebnisse zurückhalten
page-settings-bottle = Die Flasche war angesetzt mit / mol/dm³
page-settings-bottle-show = Mit den Ergebnissen zeigen
page-settings-bottle-why = Die Gruppen sehen es dann neben ihrer Antwort. Bis zum Druck auf den Knopf sieht es nur die Lehrkraft.
page-settings-bottle-wrong = Tippen Sie eine Konzentration über 0 mol/dm³ ein.
page-settings-results-shown = Die Ergebnisse sind zu sehen.
page-settings-results-held = Die Ergebnisse werden zurückgehalten.
page-settings-quiet = Summer stumm schalten
page-settings-loud = Summer tönen lassen
page-settings-is-quiet = Der Summer ist stumm.
page-settings-is-loud = Der Summer tönt.
page-settings-rename = Umbenennen
page-settings-bench-name = Name des Platzes
page-settings-pages =
    { $which ->
        [plan] Versuch planen und beginnen
        [prepare] Vorbereiten
        [checks] Fühler prüfen
       *[kit] Dieses Gerät
    }
page-settings-set-aside = Einen Durchgang nicht mitzählen
page-settings-set-aside-now = Nicht mitzählen
page-settings-restore = Durchgang { $repeat } wieder mitzählen
page-settings-restore-why = Durchgang { $repeat } wieder mitzählen (zählt nicht: { $reason })
page-settings-pause = Diesen Platz anhalten: nur Lehrkraft und Technik lassen ihn weitermachen
page-settings-resume = Diesen Platz weitermachen lassen
page-settings-done = Erledigt.

## The curve, and reading one point of it

page-seeing-views = Was die Kurve zeigt
page-seeing-single-repeats = Einzelne Durchgänge zeigen
page-seeing-against-volume = über dem Volumen
page-seeing-against-time = über der Zeit
page-seeing-which-repeat = Welcher Durchgang?
page-seeing-trace-chart = Durchgang { $repeat }: Temperatur über der Zeit
page-seeing-trace-text =
    Der ganze Verlauf von { $minutes } Minuten; { $portions } { $portions ->
        [one] Portion
       *[other] Portionen
    } zugegeben; die Tabelle darunter zeigt die ruhigen Messwerte.
page-seeing-loading = Wird geladen …
page-seeing-pour = Portion zugegeben (mit Nummer)
page-seeing-settled-reading = ruhiger Messwert
page-seeing-unsettled-reading = Messwert, noch nicht ruhig
page-seeing-whole-trace = jede Messung
page-seeing-read-point = Einen Punkt der Kurve ablesen
page-seeing-hint = Kurve berühren oder Pfeiltasten benutzen, um einen Punkt abzulesen.
page-seeing-at-start = Start: { $volume } cm³
page-seeing-at-portion = Portion { $portion }: { $volume } cm³
page-seeing-mean = Mittelwert { $temperature } °C
page-seeing-repeat = Durchgang { $repeat } { $temperature } °C
page-seeing-own-volume = { $value } (bei { $volume } cm³)
page-seeing-moment =
    { $time }: { $temperature } °C, { $portion ->
        [0] vor der ersten Portion
       *[other] { $since } s nach Portion { $portion }
    }
page-seeing-moment-once-before = { $time }: { $temperature } °C, Durchgang { $repeat }, vor dem Mischen
page-seeing-moment-once = { $time }: { $temperature } °C, Durchgang { $repeat }, { $since } s nach dem Mischen
page-seeing-unsure-why = unsicher: { $reason }
page-seeing-typed = eingetippt

## The curve that the group expects

page-sketch-title = Deine Vorhersage
page-sketch-task = Zeichne mit Finger oder Maus, von links nach rechts. Mit der Tastatur: ← und → wählen ein Volumen, ↑ und ↓ stellen die Temperatur ein.
page-sketch-drawing = Zeichnung deiner Vorhersage
page-sketch-at = { $volume } cm³: { $temperature } °C
page-sketch-at-none = { $volume } cm³: noch nichts gezeichnet
page-sketch-keep = Das ist unsere Vorhersage
page-sketch-clear = Löschen
page-sketch-draw = Zeichnen
page-sketch-first = Vorhersage zeichnen
page-sketch-again = Vorhersage neu zeichnen
page-sketch-legend = deine Vorhersage
page-sketch-question = Wo verlässt die gemessene Kurve deine Vorhersage, und warum?

## The students' own lines and reading

page-own-lines-title = Zuerst deine eigenen Geraden
page-own-lines-task = Zeichne zwei <best-fit>Ausgleichsgeraden</best-fit>: eine durch die steigenden Messwerte, eine durch die fallenden. Zieh an den Griffen, oder wähle einen und benutze die Pfeiltasten.
page-own-lines-task-falling = Zeichne zwei <best-fit>Ausgleichsgeraden</best-fit>: eine durch die Messwerte vor der Wende, eine durch die danach. Zieh an den Griffen, oder wähle einen und benutze die Pfeiltasten.
page-own-lines-chart = Mittelwerte mit deinen beiden Geraden
page-own-lines-chart-text = { $points } Mittelwerte und zwei Geraden, die du legst.
page-own-lines-handle =
    { $side ->
        [before] Gerade davor
       *[after] Gerade danach
    }, Griff bei { $volume } cm³
page-own-lines-handle-at = { $temperature } °C
page-own-lines-crossing = Neutralisationsvolumen { $volume } cm³
page-own-lines-no-crossing = Deine Geraden schneiden sich noch nicht im Diagramm.
page-own-lines-type = Die Geraden eintippen
page-own-lines-field =
    { $side ->
        [before] Gerade davor
       *[after] Gerade danach
    } bei { $volume } cm³: Temperatur / °C
page-own-lines-own = Mein Neutralisationsvolumen / cm³
page-own-lines-from-crossing = Vom Schnittpunkt deiner Geraden. Du darfst auch selbst etwas eintippen.
page-own-lines-use-crossing = Wieder vom Schnittpunkt nehmen
page-own-lines-not-avolume = Tippe ein Volumen zwischen 0 und { $most } cm³ ein.
page-own-lines-ask = Ist { $reading } deine Ablesung?
page-own-lines-ask-without = Du gibst { $reading } an, ohne zwei Geraden, die sich schneiden. Wie hast du abgelesen?
page-own-lines-ask-yes = Ja, das ist meine Ablesung
page-own-lines-ask-no = Noch nicht
page-own-lines-commit = Das ist meine Ablesung
page-own-lines-commit-now = Sobald Ergebnisse gezeigt werden, lässt sie sich nicht mehr ändern.
page-own-lines-commit-wait = Du kannst sie ändern, bis deine Lehrkraft die Ergebnisse zeigt.
page-own-lines-nothing = Ich konnte nichts ablesen
page-own-lines-nothing-ask = Warum konntest du nichts ablesen? Es wird festgehalten, und die Ergebnisse können sofort folgen.
page-own-lines-nothing-yes = Ja, es ging nicht
page-own-lines-committed = Deine Ablesung: { $volume } cm³
page-own-lines-committed-change = Deine Ablesung: { $change } °C
page-own-lines-committed-nothing = Du hast festgehalten, dass du nichts ablesen konntest.
page-own-lines-committed-nothing-why = Du hast festgehalten, dass du nichts ablesen konntest: { $reason }.
page-own-lines-change = Meine Ablesung ändern
page-own-lines-legend-before = deine Gerade davor
page-own-lines-legend-after = deine Gerade danach
page-own-lines-legend-mean = Mittelwert
page-own-lines-once-title = Zuerst deine eigene Ablesung
page-own-lines-once-task = Lies an der Kurve ab: Verlängere die Gerade davor und die Gerade danach bis zum Moment des Mischens. Wie weit liegen sie dort auseinander?
page-own-lines-once-own = Meine Temperaturänderung / °C
page-own-lines-once-sign = Ein Anstieg hat ein Plus, ein Abfall ein Minus.
page-own-lines-not-achange = Tippe eine Zahl von Graden ein, etwa +6.2 oder −3.5.
page-own-lines-waits =
    { $which ->
        [end] Ergebnisse kommen, wenn der Versuch fertig ist und du selbst abgelesen hast.
        [own-reading] Ergebnisse kommen nach deiner eigenen Ablesung.
       *[staff] Ergebnisse kommen, wenn deine Lehrkraft sie zeigt.
    }
page-own-lines-waits-end-first =
    { $which ->
        [at-once] Ergebnisse kommen, wenn der erste Durchgang fertig ist.
        [after-own-reading] Ergebnisse kommen, wenn der Versuch fertig ist und du selbst abgelesen hast.
       *[when-shown] Ergebnisse kommen, wenn deine Lehrkraft sie zeigt.
    }
page-own-lines-computing = Die Station rechnet die Ergebnisse aus …
page-own-lines-compared = Deine Ablesung und die berechneten
page-own-lines-you = deine Geraden
page-own-lines-you-typed = deine Ablesung
page-own-lines-lines = berechnete Geraden
page-own-lines-lines-once = verlängerte Geraden, berechnet
page-own-lines-heat = Wärmebilanz
page-own-lines-own-volume = { $volume } cm³
page-own-lines-own-change = { $change } °C
page-own-lines-same = genau wie deine
page-own-lines-off =
    deine ist { $apart } cm³ { $side ->
        [more] größer
       *[less] kleiner
    }
page-own-lines-off-change =
    deine ist { $apart } °C { $side ->
        [higher] höher
       *[lower] niedriger
    }
page-own-lines-which = Ablesung
page-own-lines-value = Wert
page-own-lines-how-far = Unterschied zu deiner

## Why the two end-points differ

page-why-open = Warum sind die beiden Äquivalenzpunkte verschieden?
page-why-open-low = Warum kommen Geraden zu niedrig heraus?
page-why-chart = Die Erklärung als Diagramm
page-why-with-mean = Gezeigt am Mittelwert deiner eigenen Messwerte.
page-why-with-repeat = Gezeigt an deinen eigenen Messwerten von Durchgang { $repeat }.
page-why-step = Schritt { $step } von { $of }
page-why-back = Zurück
page-why-next = Weiter
page-why-done = Fertig
page-why-again = Die Erklärung noch einmal lesen
page-why-not-possible = Zu diesen Messwerten gibt es keine korrigierte Kurve, darum nur in Worten.
page-why-names =
    { $which ->
        [0] Zwei Geraden
        [1] Immer mehr Flüssigkeit
        [2] Also sind die Äste krumm
        [3] Gleich viel Flüssigkeit für jede Portion
       *[4] Wo sie wirklich abknickt
    }
page-why-measured = deine Messwerte
page-why-corrected = Messwerte bei gleich viel Flüssigkeit für jede Portion
page-why-liquid = Flüssigkeit im Becher
page-why-liquid-at = { $liquid } cm³
page-why-change = { $change } °C
page-why-crossing-name = Schnittpunkt
page-why-heat-name = Wärmebilanz
page-why-two = Die beiden <best-fit>Ausgleichsgeraden</best-fit> durch deine Messwerte schneiden sich bei { $crossing }. Eine Ausgleichsgerade setzt voraus, dass die Messwerte wirklich auf einer Geraden liegen. Tun sie das?
page-why-more = Portion { $first } musste { $firstLiquid } cm³ Flüssigkeit erwärmen und änderte die Temperatur um { $firstChange } °C. Portion { $last } hatte { $lastLiquid } cm³ und änderte sie um { $lastChange } °C. Jede gab etwa gleich viel Wärme ab, aber es war immer mehr Flüssigkeit zu erwärmen. Der Raum, und Portionen, die kühler sind als der Becher, nehmen sich auch einen Teil.
page-why-more-words = Jede Portion vor dem Äquivalenzpunkt gibt etwa gleich viel Wärme ab, aber im Becher ist immer mehr Flüssigkeit, die sie erwärmen muss. Darum ändert jede Portion die Temperatur weniger als die davor.
page-why-bend = Der erste Ast wird also immer flacher: Er ist krumm. Auch der zweite ist krumm: Jede weitere Portion hat mehr Flüssigkeit abzukühlen. Eine Gerade kann dem nicht folgen. Bis zum Äquivalenzpunkt der Wärmebilanz verlängert, liegt die erste Gerade schon { $above } °C jenseits der zweiten: Die Geraden haben sich vorher getroffen.
page-why-bend-words = Der erste Ast wird also immer flacher: Er ist krumm. Auch der zweite ist krumm: Jede weitere Portion hat mehr Flüssigkeit abzukühlen. Geraden, die man durch krumme Äste zeichnet und aufeinander zu verlängert, treffen sich zu früh.
page-why-same = Nun verteilen wir die Reaktionswärme so, als wären die ganze Zeit { $liquid } cm³ im Becher gewesen, jede Portion so warm wie der Becher hineingekommen und nichts an den Raum verloren gegangen. Deine Messwerte wandern: Vor dem Äquivalenzpunkt ändert jede Portion die Temperatur jetzt gleich viel, danach ändert sich nichts mehr. Die Kurve ist gerade.
page-why-same-words = Nun verteilen wir die Reaktionswärme so, als wäre die ganze Zeit gleich viel Flüssigkeit im Becher gewesen, jede Portion so warm wie der Becher hineingekommen und nichts an den Raum verloren gegangen. Vor dem Äquivalenzpunkt ändert dann jede Portion die Temperatur gleich viel, danach ändert sich nichts mehr. Die Kurve ist gerade.
page-why-low = Die begradigte Kurve knickt bei { $endPoint } ab. Das ist der <end-point>Äquivalenzpunkt</end-point> nach der <heat-balance>Wärmebilanz</heat-balance>. Der Schnittpunkt der Geraden kam { $apart } cm³ zu niedrig heraus: nicht weil jemand schlecht gemessen hat, sondern weil Geraden durch krumme Äste gezeichnet wurden.
page-why-high = Die begradigte Kurve knickt bei { $endPoint } ab. Das ist der <end-point>Äquivalenzpunkt</end-point> nach der <heat-balance>Wärmebilanz</heat-balance>. Geraden durch krumme Äste schneiden sich meist zu früh; hier hat die Streuung der Messwerte sie { $apart } cm³ darüber hinaus gebracht.
page-why-agree = Die begradigte Kurve knickt bei { $endPoint } ab. Das ist der <end-point>Äquivalenzpunkt</end-point> nach der <heat-balance>Wärmebilanz</heat-balance>. Geraden durch krumme Äste schneiden sich meist zu früh; hier stimmen beide überein, soweit die Messwerte es hergeben.

## The record to print, downloads, readings of another bench

page-record-title = Protokoll
page-record-print = Blatt zum Abgeben drucken
page-record-file-title = { $bench } { $day } Protokoll
page-record-downloads = Herunterladen
page-record-downloads-hint = Die Dateien heißen nach Platz und Datum.
page-record-files =
    { $which ->
        [sheet] Alles als Tabellendokument
        [table] Tabelle der Messwerte
        [readings] Messwerte
        [record] Alle Temperaturen
        [readingsComma] Messwerte für Tabellenprogramme mit Dezimalkomma
        [recordComma] Alle Temperaturen für Tabellenprogramme mit Dezimalkomma
       *[journal] Alles, was geschah, für Programme
    }
page-record-for-programs = Weitere Dateien, für Programme
page-sheet-names = Namen:
page-sheet-by-hand = schreibst du von Hand auf das gedruckte Blatt
page-sheet-parts =
    { $which ->
        [aim] Ziel
        [calculation] Deine eigene Rechnung
        [conclusion] Schluss
       *[evaluation] Auswertung
    }
page-sheet-answers = Die Antworten der Station
page-sheet-print-answers = Antworten der Station drucken
page-sheet-hint = Eine Seite A4. Tippe hier oder schreibe von Hand; Getipptes bleibt nur in diesem Tab.
page-sheet-hint-shown = Je eine Seite A4. Tippe hier oder schreibe von Hand; Getipptes bleibt nur in diesem Tab.
page-record-plan = Plan
page-record-planned =
    Geplant: { $portions } Portionen, { $repeats } { $repeats ->
        [one] Durchgang
       *[other] Durchgänge
    }.
page-record-own-moments = Die Gruppe hat selbst entschieden, wann sie abliest und wann sie zugibt.
page-record-planned-once =
    Geplant: { $repeats } { $repeats ->
        [one] Durchgang
       *[other] Durchgänge
    }.
page-record-probe = Temperaturen vom Fühler der Station.
page-record-typed = Temperaturen an einem gewöhnlichen Thermometer abgelesen.
page-record-typed-lines = { $digital ->
    [true] Temperaturen an einem digitalen Thermometer auf { $division } °C abgelesen.
   *[false] Temperaturen an einem gewöhnlichen Thermometer abgelesen, ein Strich alle { $division } °C.
}
page-record-virtual = Werte aus einem virtuellen Becher, nicht aus einem echten.
page-record-not-their-own = Nicht die eigenen Messwerte dieser Gruppe: übernommen von { $label }.
page-record-nothing = Noch ist nichts aufgezeichnet.
page-record-unsure-mark = ? unsicher, für die Geraden nicht verwendet.
page-record-unsettled-mark = * nicht zur Ruhe gekommen.
page-record-volume-mark = In Klammern: in diesem Durchgang zugegeben / cm³.
page-record-results = Ergebnisse
page-record-own-reading = Deine eigene Ablesung
page-record-own-nothing = nichts ließ sich ablesen
page-record-own-volume = { $volume } cm³
page-record-own-change = { $change } °C
page-record-straight = Geraden
page-record-heat = Wärmebilanz
page-record-end-point = { $volume } ± { $u } cm³
page-record-acid = Konzentration der Säure
page-record-enthalpy = molare Enthalpieänderung
page-record-plus-minus-is = Hinter ±: eine Standardunsicherheit.
page-record-steps = Rechenweg
page-record-happened = Notizen und Korrekturen
page-record-more = … und { $count } weitere: alle stehen im Tabellendokument.

# Minutes and seconds since the practical began.
page-record-at = { $minutes }:{ $seconds }
page-record-line = { $at }  { $what }
page-record-line-where = { $at }  { $where }: { $what }
page-record-because = { $what }: { $reason }
page-record-note-withdrawn = Notiz zurückgezogen: { $text }
page-record-undone = zurückgenommen, sie kam nie in den Becher
page-record-mass = { $mass } g kamen in den Becher
page-record-volume = { $volume } cm³ kamen in den Becher
page-record-unsure = unsicher, für die Geraden nicht verwendet
page-record-sure = doch sicher
page-record-early = zugegeben, bevor sie verlangt war
page-record-retyped = Messwert berichtigt: { $temperature } °C
page-record-aside = nicht mitgezählt
page-record-restored = zählt wieder
page-record-probe-lost = der Fühler antwortete nicht
page-record-probe-found = der Fühler ist wieder da
page-record-probe-often = Der Fühler antwortete { $times }-mal nicht.
page-record-thermometer = { $digital ->
    [true] digitales Thermometer, auf { $division } °C
   *[false] gewöhnliches Thermometer, ein Strich alle { $division } °C
}
page-record-probe-again = wieder der Fühler der Station
page-record-finish-undone = Ende zurückgenommen: Die Gruppe maß weiter
page-record-repeat-asked = noch ein Durchgang wurde gewünscht
page-record-sketch = Vorhersage gezeichnet
page-record-ended-early = vorzeitig beendet
page-record-adopted = Messwerte von { $label } übernommen
page-record-returned = wieder die eigenen Messwerte
page-record-salvaged = die Aufzeichnung der Station war beschädigt; was lesbar war, geht weiter
page-record-cautions = Vorsicht
page-record-adopt-about = Ohne eigene Messwerte kannst du mit denen eines anderen Platzes arbeiten. Sie sind als nicht deine eigenen gekennzeichnet, und deine bleiben in der Aufzeichnung.
page-record-adopt-how = Öffne am anderen Platz das „Protokoll“ und „Weitere Dateien“, lade „Messwerte“ herunter und wähle diese Datei hier aus.
page-record-adopt-file = Datei mit Messwerten (.csv)
page-record-adopt-label = Wessen Messwerte sind es? Etwa Platz 4
page-record-adopt-take = Diese Messwerte nehmen
page-record-adopt-too-long = Diese Datei ist zu lang für Messwerte. Lade am anderen Platz „Messwerte“ herunter.
page-record-adopt-unreadable = Diese Datei lässt sich nicht lesen. Wähle sie noch einmal aus.
page-record-adopt-reading-file = Die Datei wird gelesen …
page-record-adopt-return-why = Du arbeitest mit den Messwerten von { $label }. Wieder die eigenen nehmen?
page-record-adopt-back = Wieder meine eigenen Messwerte

## How each number was worked out; the own judgement

page-own-working-title = Deine eigene Rechnung
page-own-working-task = Sie beginnt mit deiner eigenen Ablesung. Rechne Schritt für Schritt; jeder benutzt die Zahlen, die darüber stehen.
page-own-working-place = Schritt { $step } von { $of }
page-own-working-over = Alle Schritte sind fertig.
page-own-working-again = Von vorn beginnen
page-own-working-try = Deine Zahl / { $unit }
page-own-working-check = Prüfen
page-own-working-show = Zeigen
page-own-working-right = Richtig.
page-own-working-wrong =
    { $which ->
        [no-number] Tippe eine Zahl ein.
       *[other] Noch nicht. Prüfe Einheiten und Vorzeichen, dann versuche es noch einmal.
    }
page-steps-open = Wie jede Zahl zustande kam
page-steps-whose = Zahlen von
page-steps-of-mean = Mittelwert
page-steps-by-lines = Aus den Geraden
page-steps-by-heat = Nach der <heat-balance>Wärmebilanz</heat-balance>
page-steps-opens = Öffne eine Zahl, um die Zeile zu sehen, die sie ergab.
page-steps-unrounded = Die Station rechnet mit ungerundeten Zahlen weiter, darum kann sich die letzte Stelle um eins unterscheiden.
page-steps-accepted = Anerkannter Wert
page-steps-accepted-value = { $enthalpy } ± { $u } kJ/<mole>mol</mole>
page-steps-yours = Deiner, nach der Wärmebilanz: { $enthalpy }
page-steps-source = Quelle: { $source }
page-steps-think = Fragen für deine Auswertung
page-steps-questions =
    { $which ->
        [0] Wohin ging Wärme aus dem Becher verloren, während du gemessen hast? Würden deine Temperaturen, dein Äquivalenzpunkt und deine Enthalpie dadurch zu groß oder zu klein? Wie könntest du das herausfinden?
        [1] Dein Thermometer zeigt Temperaturen in Stufen. Wie groß ist eine Stufe gegen die ganze Temperaturänderung? Welche deiner Zahlen hängt am meisten davon ab?
        [2] Wie genau kennst du das Volumen im Becher und das jeder Portion? Wenn jede Portion 2 % zu groß war: Welche Zahlen ändern sich, und in welche Richtung?
        [3] Wie weit liegen deine Durchgänge auseinander? Mehr oder weniger, als das ± sagt? Was könnte von einem Durchgang zum nächsten anders gewesen sein?
       *[4] Ist der Unterschied zwischen deinem Wert und dem anerkannten größer als beide ± zusammen? Wenn ja: Was steckt nicht im ±?
    }
page-steps-questions-once =
    { $which ->
        [0] Wohin floss Wärme zwischen Becher und Raum, während du gemessen hast? Würde deine Temperaturänderung dadurch zu groß oder zu klein? Wie könntest du das herausfinden?
        [1] Dein Thermometer zeigt Temperaturen in Stufen. Wie groß ist eine Stufe gegen die ganze Temperaturänderung?
        [2] Wie genau kennst du die Mengen, die gemischt wurden? Wenn eine davon 2 % zu groß war: Welche Zahlen ändern sich, und in welche Richtung?
        [3] Wie weit liegen deine Durchgänge auseinander? Mehr oder weniger, als das ± sagt? Was könnte von einem Durchgang zum nächsten anders gewesen sein?
       *[4] Ist der Unterschied zwischen deinem Wert und dem anerkannten größer als beide ± zusammen? Wenn ja: Was steckt nicht im ±?
    }
page-steps-judgement = Dein Urteil und das der Station
page-steps-portion = Portion
page-steps-repeat-title = Durchgang { $repeat }
page-steps-own-waited = du, nach / s
page-steps-own-read = du / °C
page-steps-station-waited = Station, nach / s
page-steps-station-read = Station / °C
page-steps-start = Start
page-steps-cost = Was der Unterschied gekostet hat
page-steps-by-you = du
page-steps-by-station = die Station
page-steps-time = gebrauchte Zeit
page-steps-end-point = Äquivalenzpunkt
page-steps-minutes = { $minutes } min
page-steps-volume = { $volume } cm³

## Pages of staff: what all share

page-frame-ways = Seiten
page-frame-pages =
    { $which ->
        [bench] Arbeitsplatz
        [plan] Versuch planen
        [prepare] Vorbereiten
        [checks] Fühler prüfen
        [kit] Dieses Gerät
        [room] Raum
        [class] Klassenergebnis
        [sheets] Blätter
        [kits] Stationen
       *[lessons] Stunden
    }
page-frame-asking = Die Station wird gefragt …
page-frame-staff-only = Für Lehrkräfte und Technik
page-frame-why-staff = Bitte anmelden: als Lehrkraft oder für die Technik.

## Pages of staff: planning

page-plan-intro = Auswählen; die Station rechnet aus, was der Plan verspricht. Probieren darf jeder. Die Gefährdungsbeurteilung der Schule geht vor.
page-plan-start-from = Ausgehen von
page-plan-bench-plan = dem Plan dieses Arbeitsplatzes
page-plan-as-chosen = wie unten gewählt
page-plan-open-file = Plandatei öffnen
page-plan-no-file = Diese Datei ließ sich nicht als Plan lesen.
page-plan-opened = Der Plan aus der Datei steht unten.
page-plan-opened-without = Der Plan aus der Datei steht unten, ohne das, was hier nicht bekannt ist: { $keys }.
page-plan-kind = Art des Versuchs
page-plan-kinds =
    { $which ->
        [portions] Lauge portionsweise zu Säure
        [ratios] Mischungsverhältnisse
       *[once] Einmal gemischt
    }
page-plan-title = Titel
page-plan-acid = Säure im Becher
page-plan-alkali = Zugegebene Lauge
page-plan-portions = Portionen
page-plan-liquid = Im Becher
page-plan-addition = Zugegeben wird
page-plan-how-it-goes = Ablauf
page-plan-setting = Becher und Raum
page-plan-anhydrous = wasserfrei
page-plan-reagent = Stoff
page-plan-volume = Volumen / cm³
page-plan-portion-volume = Volumen einer Portion / cm³
page-plan-count = Portionen je Durchgang
page-plan-concentration = Konzentration / mol/dm³
page-plan-mass = Masse / g
page-plan-told = Ihre Konzentration
page-plan-tells =
    { $which ->
        [unknown] findet die Klasse; steht hier nicht
        [known] ist der Klasse bekannt
       *[prepared] wurde angesetzt, der Klasse nicht gesagt
    }
page-plan-form = Was zugegeben wird
page-plan-forms =
    { $which ->
        [solid] ein abgewogener Feststoff
       *[solution] eine Lösung
    }
page-plan-glassware = Portionen abgemessen mit
page-plan-glassware-of = { $name } (± { $u } cm³)
page-plan-own-u = eigenes ± einer Portion / cm³
page-plan-no-glassware = nicht angegeben (± 0.1 cm³)
page-plan-repeats = Durchgänge
page-plan-pace = Tempo
page-plan-paces =
    { $which ->
        [graph] sorgfältig, für ein Diagramm
       *[quick] zügig, sobald der Verlauf genug hergibt
    }
page-plan-prompts = Wann abgelesen wird, sagt
page-plan-predict = Vor der ersten Portion
page-plan-predicts =
    { $which ->
       *[false] nichts weiter
        [true] die Gruppe zeichnet ihre Vorhersage
    }
page-plan-prompters =
    { $which ->
        [station] die Station
       *[own-judgement] die Klasse selbst
    }
page-plan-results = Ergebnisse erscheinen
page-plan-seen =
    { $which ->
        [at-once] sofort
        [after-own-reading] nach dem eigenen Ablesen der Klasse
       *[when-shown] wenn die Lehrkraft sie zeigt
    }
page-plan-cup-heat = Wärmekapazität des Bechers / J/K
page-plan-cup-u = ihr ± / J/K
page-plan-room = Raumtemperatur / °C
page-plan-room-empty = leer: 20 °C
page-plan-before = Aufzeichnung vor dem Mischen / s
page-plan-after = Aufzeichnung nach dem Mischen / s
page-plan-minutes = { $total } min
page-plan-at-bench = am Arbeitsplatz

# Puts a list together: 45 or 60 or 90.
page-plan-or = { $some } oder { $other }
page-plan-fits = passt in eine Stunde von { $lessons } min
page-plan-too-long = zu lang für eine Stunde von { $lessons } min
page-plan-computing = Die Station rechnet …
page-plan-mend = Etwas im Plan geht so noch nicht: siehe die markierten Felder.
page-plan-elsewhere = Im Plan:
page-plan-no-answer = Die Station hat nicht geantwortet.
page-plan-promise = Was dieser Plan verspricht
page-plan-curve = Erwartete Kurve
page-plan-curve-of = Die { $points } erwarteten Messwerte; die Tabelle darunter nennt alle.
page-plan-once-curve-of = Der erwartete Temperaturverlauf; die Temperatur ändert sich um { $change }.
page-plan-expected-end-point = { $volume } cm³
page-plan-mixed = gemischt
page-plan-table = Erwartete Messwerte als Tabelle
page-plan-added = zugegeben / cm³
page-plan-time = Zeit / s
page-plan-temperature = Temperatur / °C
page-plan-rise = Anstieg am Äquivalenzpunkt
page-plan-change = Temperaturänderung
page-plan-celsius = { $change } °C
page-plan-end-point = erwarteter Äquivalenzpunkt
page-plan-arms = Messwerte auf den Ästen
page-plan-arms-of = { $before } davor, { $after } danach
page-plan-taken = bei { $concentration } mol/dm³ Säure
page-plan-resolves = Dieser Plan kann Säuren von { $low } bis { $high } mol/dm³ finden.
page-plan-methods = Wie gut der Äquivalenzpunkt bekannt sein wird (ein Durchgang, ± eine Standardunsicherheit)
page-plan-methods-once = Wie gut die Änderung bekannt sein wird (ein Durchgang, ± eine Standardunsicherheit)
page-plan-read-with = abgelesen mit
page-plan-thermometers =
    { $which ->
        [probe] Fühler, ganzer Verlauf
        [thermometer_0_1_c] Thermometer auf 0.1 °C
       *[thermometer_1_c] Thermometer auf 1 °C
    }
page-plan-lines = Geraden
page-plan-heat = Wärmebilanz
page-plan-method = Verfahren
page-plan-off-by = Abweichung
page-plan-lines-off = Geraden, Abweichung / cm³
page-plan-lines-plus-minus = Geraden, ± / cm³
page-plan-heat-plus-minus = Wärmebilanz, ± / cm³
page-plan-bias-c = { $bias } °C
page-plan-plus-minus-c = ± { $u } °C
page-plan-plus-minus-kj = ± { $u } kJ/mol
page-plan-refuses = lehnt ab
page-plan-whole = Wärmebilanz mit dem Fühler: Mittel aus { $repeats } Durchgängen ± { $u } cm³; aus einem Säure ± { $uAcid } mol/dm³.
page-plan-compare = Was schwächere Lösungen kosten und bessere Geräte bringen
page-plan-compare-now = Vergleichen
page-plan-strengths = { $acid } / { $alkali }
page-plan-strength-head = Säure / Lauge, mol/dm³
page-plan-warnings = Zu beachten
page-plan-assumed = Was angenommen ist
page-plan-hazards = Gefahren bei diesen Konzentrationen
page-plan-hazards-first = Nur übliche Praxis: Gefährdungsbeurteilung des Arbeitgebers, örtliche Regeln und Fachkundige gehen vor.
page-plan-taken-as = Die Klasse soll sie finden: angenommen sind { $concentration } mol/dm³, das meiste, was dieser Plan finden kann.
page-plan-not-classified = Nicht als gefährlich eingestuft; die üblichen Vorsichtsregeln gelten.
page-plan-near-edge = Weniger als 5 % unter einer Grenze der Verordnung: Gezeigt wird die strengere Einstufung.
page-plan-strength = { $concentration } mol/dm³
page-plan-grams = { $mass } g
page-plan-keep = Behalten und beginnen
page-plan-keep-staff = Speichern und Beginnen ist Sache von Lehrkraft und Technik.
page-plan-save = Als plan.toml speichern
page-plan-copy = Als Text kopieren
page-plan-copied = Kopiert.
page-plan-not-copied = Der Text ließ sich nicht kopieren: bitte unten markieren.
page-plan-text = Der Plan als Text
page-plan-start = An diesem Arbeitsplatz beginnen
page-plan-started = Dieser Arbeitsplatz hat jetzt diesen Plan.
page-plan-to-bench = Zum Arbeitsplatz
page-plan-confirm = Das ist nach der Gefährdungsbeurteilung der Schule bestätigt.
page-plan-to-prepare = Für eine Klasse vorbereiten

## Pages of staff: preparing

page-prepare-intro = Was anzusetzen, zu beschriften und bereitzustellen ist. Zum Drucken oder Nachsehen.
page-prepare-plan = Plan
page-prepare-tab-plan = der Plan von der Planungsseite
page-prepare-bench-plan = der Plan dieses Arbeitsplatzes
page-prepare-benches = Arbeitsplätze
page-prepare-lesson = Stunde
page-prepare-minutes = { $minutes } min
page-prepare-stock = Eigene Flasche { $name } / mol/dm³
page-prepare-stock-empty = leer: wie üblich
page-prepare-print = Drucken
page-prepare-title =
    { $practical } ({ $benches } { $benches ->
        [one] Arbeitsplatz
       *[other] Arbeitsplätze
    })
page-prepare-labels = Etiketten
page-prepare-labels-why = Eines je Arbeitsplatz und Lösung; sie kommen auf ein eigenes Blatt.
page-prepare-strength = { $concentration } mol/dm³
page-prepare-count = { $count } ×
page-prepare-computing = Die Station rechnet …
page-prepare-no-answer = Die Station hat nicht geantwortet.
page-prepare-secret = Was angesetzt wurde, ist nur für Lehrkräfte und Technik: zum Sehen bitte anmelden.
page-prepare-to-plan = Plan ändern

## Pages of staff: probe checks

page-checks-intro = Eine Prüfung sagt, wie weit der Fühler danebenliegt und wie sicher das ist. Lehrkräfte machen sie, wenn kein Durchgang läuft; solange kann keiner beginnen.
page-checks-first = Nur übliche Vorsichtsregeln: Gefährdungsbeurteilung der Schule, örtliche Vorschriften und Fachleute gehen vor.
page-checks-silent = Die Station antwortet nicht. Neuer Versuch läuft.
page-checks-waits = An diesem Platz läuft ein Durchgang. Beende ihn und komm dann wieder.
page-checks-no-probe = Dieser Platz hat keinen Fühler: Es gibt nichts zu prüfen.
page-checks-staff = Lehrkräfte prüfen den Fühler
page-checks-choose = Welche Prüfung?
page-checks-names =
    { $which ->
        [ice] Eispunkt
        [boiling] Siedepunkt
        [comparison] Vergleich mit einem Thermometer
        [dip] Eintauchen: wie schnell der Fühler ist
       *[cup] Becher: Wärmekapazität und Wärmeverlust
    }
page-checks-about =
    { $which ->
        [ice] Etwa 3 Minuten. Zerstoßenes Eis und wenig Wasser. Ergibt die Verschiebung.
        [boiling] Etwa 10 Minuten, siedendes Wasser. Ergibt mit einem Eispunkt eine Gerade.
        [comparison] Etwa 20 Minuten, mindestens drei Temperaturen von 10 bis 50 °C. Ergibt eine Gerade mit Unsicherheit: die beste Prüfung.
        [dip] Etwa 3 Minuten. Ergibt die beiden Zeitkonstanten.
       *[cup] Etwa 12 Minuten. Für [cup] in einem Plan.
    }
page-checks-water = Eis und Wasser sind
page-checks-waters-distilled = destilliert oder entionisiert
page-checks-waters-tap = aus der Leitung
page-checks-pressure = Luftdruck am Ort, nicht auf Meereshöhe umgerechnet / hPa
page-checks-altitude = oder Höhe des Ortes / m
page-checks-pressure-hint = Ein Barometer weiß es auf ± 0.03 °C; aus der Höhe allein lässt das Wetter ± 0.3 °C offen.
page-checks-reference = Das Vergleichsthermometer stimmt auf ± (eine Standardunsicherheit) / °C
page-checks-cup-label = Bezeichnung des Bechers
page-checks-begin = Diese Prüfung beginnen
page-checks-caution =
    { $which ->
        [ice] Wasser sofort aufwischen: Ein nasser Boden ist rutschig.
        [boiling] Siedendes Wasser und Dampf verbrühen. Schutzbrille, hitzefeste Unterlage, Becherglas sicher oder eingespannt, niemand greift darüber. Kabel des Fühlers und Gehäuse der Station von Dampf und Heizplatte fernhalten. Vor dem Wegräumen abkühlen lassen.
        [comparison] Wasser über 50 °C verbrüht: kleine Mengen, sicheres Becherglas, Schutzbrille. Kabel und Gehäuse von Dampf fernhalten.
        [dip] Warmes Wasser höchstens 50 °C. Wasser sofort aufwischen.
       *[cup] Warmes Wasser von 40 bis 50 °C, nicht aus dem kochenden Kessel. Schutzbrille, sicherer Becher. Kabel und Gehäuse trocken halten.
    }
page-checks-instruction =
    { $step ->
        [ice-prepare] Fülle einen isolierten Becher mit zerstoßenem Eis. Gib gerade so viel kaltes Wasser dazu, dass die Lücken voll sind; gieß ab, worin das Eis schwimmt. Stecke den Fühler 5 cm tief in die Mitte, ohne die Wand zu berühren.
        [ice-settling] Rühre ab und zu vorsichtig. Warte: Die Station sieht, wann der Fühler zur Ruhe kommt.
        [ice-found] Der Eispunkt ist gemessen.
        [boiling-prepare] Lass destilliertes Wasser kräftig sieden. Hänge den Fühler hinein, Spitze 2 cm tief, frei von Boden und Wand.
        [boiling-settling] Lass es weiter sieden. Tritt zurück und warte: Die Station sieht, wann der Fühler zur Ruhe kommt.
        [boiling-found] Der Siedepunkt ist gemessen. Stelle die Heizung ab.
        [comparison-prepare] Halte Fühler und Vergleichsthermometer nebeneinander, gleich tief, in viel gerührtes Wasser.
        [comparison-comparing] Rühre. Wenn der Fühler ruht, lies das Vergleichsthermometer ab und gib den Wert ein. Ändere dann die Temperatur, zwischen 10 und 50 °C.
        [dip-prepare] Stelle einen halben Liter Wasser bereit, mindestens 10 °C anders als der Raum. Hänge den trockenen Fühler in ruhige Luft.
        [dip-air] Warte: Der Fühler kommt in der Luft zur Ruhe.
        [dip-plunge] Tauche den Fühler jetzt ins Wasser und rühre gleichmäßig. Drücke nichts.
        [dip-dipped] Rühre weiter. Die Station nimmt auf, wie der Fühler folgt.
        [dip-found] Beide Zeitkonstanten sind gemessen.
        [cup-prepare] Wiege Wasser ab, das im Raum gestanden hat. Stelle den Fühler hinein.
        [cup-added] Rühre und warte: Seine Temperatur wird gemessen.
        [cup-fill] Wiege den Becher, fülle ebenso viel warmes Wasser ein, wiege noch einmal. Deckel auf, Fühler hinein, rühren.
        [cup-warm] Rühre vorsichtig weiter. Der Becher wärmt sich durch.
        [cup-pour] Gieße das Wasser aus dem Raum auf einmal dazu, drücke und rühre.
        [cup-mixed] Rühre vorsichtig weiter. Der Deckel ist zu.
        [cup-weigh] Gib beide Massen ein.
        [cup-found] Der Becher ist geprüft.
       *[other] { "" }
    }
page-checks-step =
    { $which ->
        [in] Der Fühler ist drin
        [hung] Der Fühler hängt in ruhiger Luft
        [in_added] Der Fühler ist im Wasser
        [filled] Das warme Wasser ist drin
        [poured] Es ist drin
        [weighed] Das sind die Massen
        [compared] Diesen Vergleich nehmen
       *[comparison_undone] Den neuesten zurücknehmen
    }
page-checks-warm-mass = Warmes Wasser im Becher / g
page-checks-added-mass = Zugegebenes Wasser / g
page-checks-reference-says = Das Vergleichsthermometer zeigt / °C
page-checks-live = Der Fühler zeigt
page-checks-no-live = keinen Wert
page-checks-age = vor { $s } s
page-checks-raw = Ohne Berichtigung, wie sie im Journal steht.
page-checks-rest =
    { $which ->
        [steady] In Ruhe.
        [no_reading] Kein Wert vom Fühler: Stecker prüfen.
        [too_short] Noch nicht lange genug.
        [moving] Bewegt sich noch.
        [scattering] Springt hin und her: rühren und die Spitze von der Wand fernhalten.
       *[far] In Ruhe, aber weit weg von der bekannten Temperatur: Ist der Fühler, wo er sein soll?
    }
page-checks-moving = { $perMin } °C/min
page-checks-left = noch { $s } s
page-checks-known = Bekannte Temperatur: { $known } ± { $u } °C
page-checks-point = Fühler { $probe } °C, Vergleich { $reference } °C
page-checks-points = Vergleiche
page-checks-found = Ergebnis
page-checks-high = Der Fühler zeigt { $c } °C zu viel, ± { $u } °C.
page-checks-low = Der Fühler zeigt { $c } °C zu wenig, ± { $u } °C.
page-checks-right = Der Fühler stimmt auf ± { $u } °C.
page-checks-beyond = Das ist mehr als die ± 0.5 °C des Datenblatts: Nimm einen anderen Fühler oder diesen mit seiner Berichtigung.
page-checks-mean = Mittel der { $n } Vergleiche: Fühler { $probe } °C, Vergleich { $reference } °C.
page-checks-slope =
    Von { $at } °C aus gezählt ist jedes Grad des Fühlers { $slope } ± { $u } % zu { $too ->
        [large] groß
       *[small] klein
    }.
page-checks-slope-within =
    Von { $at } °C aus gezählt ist jedes Grad des Fühlers { $slope } ± { $u } % zu { $too ->
        [large] groß
       *[small] klein
    } (95 %: ± { $within } %).
page-checks-slope-right = Von { $at } °C aus gezählt stimmt jedes Grad des Fühlers auf ± { $u } %.
page-checks-slope-right-within = Von { $at } °C aus gezählt stimmt jedes Grad des Fühlers auf ± { $u } % (95 %: ± { $within } %).
page-checks-dip = Zwei Zeitkonstanten: { $fast } ± { $uFast } s ({ $share } % der Antwort) und { $slow } ± { $uSlow } s.
page-checks-follows = 63 % eines Sprungs nach { $t63 } s, 90 % nach { $t90 } s.
page-checks-cup = Wärmekapazität von Becher und Fühler { $c } ± { $uC } J/K, Wärmeverlust { $loss } ± { $uLoss } W/K.
page-checks-cup-assumes = Setzt voraus: nur Wasser, nichts verspritzt, derselbe Deckel und etwa dieselbe Füllhöhe wie im Versuch, zugegebenes Wasser mit Raumtemperatur. Verschiebung und Steigung des Fühlers heben sich auf.
page-checks-plan-lines = Für den Plan:
page-checks-standard = ± ist eine Standardunsicherheit.
page-checks-save = Speichern
page-checks-discard = Verwerfen
page-checks-staff-go-on = Lehrkräfte machen weiter: bitte anmelden.
page-checks-register = Verzeichnis der Fühler
page-checks-none = Es wurde noch kein Fühler gesehen.
page-checks-at-work = jetzt in Betrieb
page-checks-genuine = Nichts Gelesenes spricht gegen einen echten Chip.
page-checks-copy = Ein Nachbau:
page-checks-unseen = Seine Bytes wurden noch nicht gesehen.
page-checks-failures = Schlechte Werte: { $bad } von 1000 (aus { $samples })
page-checks-bad =
    { $which ->
        [crc] falsche Prüfsumme
        [empty] kein Text
        [garbled] entstellter Text
        [zeros] nur Nullen
        [power_on] Einschaltwert
        [gone] nicht am Bus
        [no_answer] keine Antwort
        [several] mehrere Fühler
        [other_probe] ein anderer Fühler
        [not_read] nicht gelesen
       *[other] { $which }
    }
page-checks-no-failures = Kein schlechter Wert unter { $samples }.
page-checks-unchecked = Nie geprüft: ± 0.5 °C nach Datenblatt.
page-checks-columns =
    { $which ->
        [number] Nr.
        [check] Prüfung
        [day] Datum
        [found] Ergebnis
       *[use] Verwendung
    }
page-checks-in-use = verwendet
page-checks-kept = aufbewahrt
page-checks-withdrawn = zurückgenommen
page-checks-withdraw = Prüfung { $number } zurücknehmen
page-checks-days =
    { $n ->
        [0] heute
        [one] vor 1 Tag
       *[other] vor { $n } Tagen
    }
page-checks-clock-not-set = Uhr nicht gestellt
page-checks-age-unknown = Alter unbekannt
page-checks-cups = Geprüfte Becher
page-checks-no-answer = Keine Antwort. Versuch es noch einmal.
page-checks-bad-number = Gib eine Zahl ein.

## Pages of staff: the kit

page-machine = Das Gerät
page-machine-tick = Hake zuerst das Kästchen an.
page-machine-network = Netz
page-machine-network-why = Das neue Netz wird eine Minute lang versucht. Antwortet es nicht, kommt das alte zurück. Was hier getippt wird, geht unverschlüsselt über http.
page-machine-try-network = Dieses Netz versuchen
page-machine-way = Weg
page-machine-wifi = WLAN
page-machine-wired = nur das Kabel
page-machine-ssid = Name des WLANs
page-machine-password = Passwort (leer: ein offenes Netz)
page-machine-country = Land (zwei Buchstaben, wie DE)
page-machine-hidden = Das Netz zeigt seinen Namen nicht
page-machine-words = Name, Code, Passphrasen
page-machine-words-why = Was leer bleibt, bleibt, wie es ist. Die Station startet mit den neuen. Drucke das Etikett neu.
page-machine-keep = Diese speichern
page-machine-name = Name des Platzes
page-machine-code = Code des Platzes
page-machine-teacher = Passphrase der Lehrkraft
page-machine-technician = Passphrase der Technik
page-machine-record = Das Protokoll
page-machine-backup = Protokoll auf den Stick kopieren
page-machine-restore = Diese Kopie zurückholen
page-machine-restore-stick = Eine Kopie vom Stick zurückholen
page-machine-restore-sure = Das Protokoll, das jetzt da ist, wird beiseitegelegt.
page-machine-copy = Kopie auf der Karte
page-machine-file = Name der Datei auf dem Stick
page-machine-wipe = Protokoll löschen
page-machine-wipe-sure = Das Protokoll und alle Anmeldungen sind endgültig weg.
page-machine-update = Neue Version vom Stick
page-machine-update-why = Auf dem Stick liegt der Ordner wheelhouse. Tippe die Ziffern, die station kit dazu gedruckt hat.
page-machine-update-go = Installieren
page-machine-digits = Ziffern
page-machine-power = Strom
page-machine-restart = Neu starten
page-machine-shut-down = Herunterfahren
page-machine-stops = An diesem Platz arbeitet niemand.
page-kit-ready = Ist diese Station bereit?
page-kit-verdict =
    { $which ->
        [green] Bereit: nichts ist zu beheben.
        [amber] Brauchbar. Bitte beachten, was unten zuerst steht.
       *[red] Nicht bereit. Bitte beheben, was unten zuerst steht.
    }
page-kit-colour =
    { $which ->
        [green] in Ordnung
        [amber] beachten
        [red] beheben
       *[unknown] nicht feststellbar
    }
page-kit-looking = Die Station wird geprüft …
page-kit-again = Noch einmal prüfen
page-kit-age = Geprüft vor { $s } s.
page-kit-no-answer = Die Station hat nicht geantwortet. Bitte noch einmal versuchen.
page-kit-beside = Während die Station arbeitet, werden nur ihre eigenen Messwerte beurteilt; der Fühler wird dafür nicht gelesen.
page-kit-next = Nächster Schritt:
page-kit-figures = Werte
page-kit-in-order =
    { $n ->
        [one] 1 Punkt ist in Ordnung
       *[other] { $n } Punkte sind in Ordnung
    }
page-kit-untold =
    { $n ->
        [one] 1 Punkt ist hier nicht feststellbar
       *[other] { $n } Punkte sind hier nicht feststellbar
    }
page-kit-names =
    { $which ->
        [settings] Einstellungen
        [plan] Plan
        [bus] One-Wire-Bus
        [probe] Fühler
        [probe_power] Versorgung des Fühlers
        [probe_resolution] Auflösung des Fühlers
        [probe_guard] Prüfung durch den Kernel
        [probe_reads] Lesevorgänge
        [probe_noise] Rauschen
        [conversion_time] Wandlung
        [probe_kind] Chip
        [pins] Anzeige
        [storage] Speicher
        [free_space] freier Platz
        [journal] Aufzeichnung
        [clock] Uhr
        [power] Stromversorgung
        [network] Netz
        [port] Port
        [versions] Versionen
        [link] Verbindung zum Raum
        [check] Prüfung
       *[other] { $which }
    }
page-kit-checks-hint = Abweichung und Alter des Fühlers:
page-kit-checks = Fühler prüfen
page-kit-address = Wo andere Geräte sie finden
page-kit-qr = QR-Code von { $address }
page-kit-versions = Versionen
page-kit-lamps = Lampen und Summer
page-kit-lamps-why = Warten, Handeln und Achtung leuchten nacheinander, dann alle drei, mit einem Ton. Der Versuch läuft weiter.
page-kit-try-lamps = Lampen testen
page-kit-trying = Jetzt auf die Anzeige schauen.
page-kit-cards = Karten für weitere Arbeitsplätze
page-kit-cards-why = Aus einer Tabelle der Arbeitsplätze (kits.toml, siehe Handbuch) wird eine Zip-Datei mit einem Ordner je Karte, Etiketten und dem Blatt der Codes und Passwörter.
page-kit-cards-secret = Codes und Passwörter reisen in dieser Zip-Datei unverschlüsselt: nur über Kabel oder ein eigenes Netz, und die Datei danach löschen.
page-kit-kits-file = Tabelle der Arbeitsplätze (kits.toml)
page-kit-plan-file = Plan, falls die Tabelle einen nennt (plan.toml)
page-kit-make-cards = Karten erstellen
page-kit-made = cards.zip ist gespeichert. READ-ME-FIRST.txt darin sagt, was wohin gehört.
page-kit-not-text = { $file }: kein UTF-8-Text; die Datei als UTF-8 speichern.
page-kit-too-large = Die Dateien haben zusammen mehr als { $kB } kB; sind es die richtigen?
page-kit-choose-table = Bitte zuerst die Tabelle wählen.
page-kit-records = Alle Aufzeichnungen
page-kit-records-why = Jeder Versuch dieser Station in einer Zip-Datei: Messwerte, abgelesene Werte, Tabelle und Journal. Zurückgehaltene Ergebnisse fehlen darin.
page-kit-records-link = Alle Aufzeichnungen herunterladen
page-kit-sending = In Arbeit …

## Pages of staff: the room

page-call =
    { $which ->
        [calls] Lehrkraft gerufen
       *[call] Lehrkraft rufen
    }
page-room-connecting = Der Raum wird gefragt …
page-room-lost = Seit einigen Sekunden ist vom Raum nichts zu hören. Was hier steht, kann veraltet sein.
page-room-fault = Der Raum kann gerade nichts sammeln: { $reason }
page-room-none = Noch kein Arbeitsplatz war zu hören. Sie erscheinen hier von selbst.
page-room-lesson = { $label }, seit { $began }
page-room-lesson-unnamed = Stunde seit { $began }
page-room-no-lesson = Es läuft keine Stunde.
page-room-counts =
    { $which ->
        [works] { $count } bei der Arbeit
        [done] { $count } fertig
        [held] { $count } von dir angehalten
        [paused] { $count } selbst pausiert
       *[idle] { $count } nicht begonnen
    }
page-room-states =
    { $which ->
        [ready] nicht begonnen
        [alkali] Temperatur der Lauge
        [start] Anfangstemperatur
        [pour] soll zugeben
        [settle] stellt sich ein
        [rinse] spült
        [paused] selbst pausiert
        [held] von dir angehalten
        [done] fertig
       *[unknown] noch nichts bekannt
    }
page-room-where = Durchgang { $repeat }/{ $repeats }, Portion { $portion }/{ $portions }
page-room-celsius = { $temperature } °C
page-room-reason =
    { $code ->
        [called] Ruft die Lehrkraft.
        [trouble] { $text }
        [unreadable] Seine Aufzeichnung ist hier nicht lesbar: dort einen neuen Versuch beginnen.
        [silent] Nicht mit dem Raum verbunden; Daten kommen später.
        [probe_lost] Der Fühler antwortet nicht.
        [bad_readings] { $count } der letzten Messungen misslangen: Stecker prüfen.
        [not_begun] Hat nicht begonnen.
        [stuck] Ist lange nicht weitergegangen.
        [slow] Braucht lange bei diesem Schritt.
        [paused] Lange pausiert.
        [behind] Hinter der Klasse zurück.
        [question] Offene Frage: { $text }
        [many_aside] { $count } Durchgänge zählen nicht.
        [set_aside] Durchgang { $count } zählt nicht: { $text }
        [odd_curve] Seine Kurve ist anders als die der anderen.
       *[other] { "" }
    }
page-room-open = Seite von { $name } öffnen
page-room-projector = Für den Beamer
page-room-no-projector = Zurück zur Übersicht
page-room-board-title = Arbeitsplätze
page-room-tell-title = Den Plätzen sagen
page-room-to-all = Alle Plätze
page-room-to-some =
    { $count ->
        [one] Ein Platz ausgewählt
       *[other] { $count } Plätze ausgewählt
    }
page-room-choose-some = Einige auswählen
page-room-choose-all = Wieder alle
page-room-acts =
    { $which ->
        [quiet] Summer stumm schalten
        [loud] Summer tönen lassen
        [helped] Ich war dort: Rufe beenden
        [pause] Anhalten
       *[resume] Weiter
    }
page-room-rename = Umbenennen
page-room-new-name = Neuer Name des Platzes
page-room-set-aside = Einen Durchgang nicht mitzählen
page-room-restore = { $name }: Durchgang { $repeat } wieder mitzählen
page-room-which-repeat = Welcher Durchgang
page-room-repeat-name = Durchgang { $repeat }
page-room-why = Warum
page-room-told = Gesendet: Nicht verbundene Plätze tun es, wenn sie wieder da sind.
page-room-no-answer = Der Raum hat nicht geantwortet. Es wurde nichts gesagt; bitte noch einmal.
page-room-left = Was die Plätze taten
page-room-order-names =
    { $which ->
        [choose_plan] Neuer Versuch
        [show_results] Ergebnisse
        [quiet] Summer
        [rename] Umbenennen
        [set_aside] Nicht mitzählen
        [restore] Wieder mitzählen
        [pause] Anhalten
        [resume] Weiter
        [call_over] Ruf beendet
       *[other] { $which }
    }
page-room-take-back = Zurücknehmen, was noch nicht getan ist
page-room-lesson-title = Stunde
page-room-begin = Eine Stunde beginnen
page-room-label = Klasse (eine Bezeichnung, keine Namen)
page-room-plan = Plan
page-room-own-plan = der, den jeder Platz hat
page-room-plan-in-file = aus einer Datei
page-room-plan-file = Plan (plan.toml)
page-room-confirm = Falls eine Lösung stärker als 1.0 mol/dm³ ist: nach der Gefährdungsbeurteilung der Schule geprüft.
page-room-new-practical = Einen neuen Versuch beginnen
page-room-no-plan = Diese Datei kann kein Plan sein: Sie ist zu groß oder lässt sich nicht lesen.
page-room-end = Die Stunde beenden
page-room-lessons-title = Stunden
page-room-no-lessons = Noch keine Stunde.
page-room-lesson-head-began = Beginn
page-room-lesson-head-label = Klasse
page-room-lesson-head-benches = Plätze
page-room-lesson-head-result = Klassenergebnis
page-room-to-result = Öffnen
page-room-to-sheets = Drucken oder mitnehmen
page-room-lessons-all = Alle Klassen
page-room-forget = Namen von Klassen und Gruppen werden { $days } Tage nach einer Stunde vergessen. Was gemessen wurde, bleibt.
page-room-forget-never = Namen von Klassen und Gruppen bleiben für immer: so steht es in den Einstellungen des Raums.
page-room-forget-clock = Ob die Uhr dieses Geräts stimmt, ist nicht bekannt; deshalb wird jetzt nichts vergessen.
page-sheets-count = Blätter zu drucken: { $count }, für jeden Platz eine Seite A4.
page-sheets-print = Alle Blätter drucken
page-sheets-zip = Alle Dateien als ein Zip
page-sheets-why = Auf den Blättern steht, was gemessen und gezeichnet wurde, und Platz zum Schreiben. Keine Antwort der Station steht dort. Das Zip hat einen Ordner für jeden Platz: Tabellenblatt, Tabelle, Messwerte und Aufzeichnung; Ergebnisse, sobald sie gezeigt sind.
page-kits-title = Alle Stationen
page-kits-none = Noch keine Station hat sich gemeldet.
page-kits-intro = { $count ->
    [one] Eine Station ist gewählt. Was hier gedrückt wird, gilt sofort; eine Station, die weg ist, erfährt nie davon.
   *[other] { $count } Stationen sind gewählt. Was hier gedrückt wird, gilt sofort; eine Station, die weg ist, erfährt nie davon.
}
page-kits-check-all = Alle prüfen
page-kits-backups = Alles sichern
page-kits-backups-why = Die Sicherung ist ein Zip auf diesem Gerät: für jeden Platz eine Datei, die „station restore“ nimmt, soweit der Raum seine Aufzeichnung hat.
page-kits-head =
    { $which ->
        [kit] Station
        [check] Prüfung
        [probe] Fühler
        [free_space] Freier Platz
        [clock] Uhr
        [power] Strom
        [version] Fassung
       *[asked] Zuletzt verlangt
    }
page-kits-own-page = ihre Seite
page-kits-away = weg
page-kits-not-looked = nicht geprüft, seit der Raum läuft
page-kits-looked = { $min ->
    [0] eben
   *[other] vor { $min } min
}
page-kits-probe-checked = { $check ->
    [ice] in Eis
    [boiling] in kochendem Wasser
    [comparison] verglichen
   *[dip] eingetaucht
}, { $day }
page-kits-probe-unchecked = nie geprüft
page-kits-asked =
    { $which ->
        [look] Prüfen
        [ice-begin] Ins Eis
        [ice-save] Eispunkt speichern
        [ice-discard] Eispunkt lassen
        [restart] Neu starten
        [shut-down] Herunterfahren
        [backup] Auf den Stick sichern
        [update] Aktualisieren
        [restore] Eine Aufzeichnung zurückholen
       *[wipe] Die Aufzeichnung löschen
    }
page-kits-waits = verlangt …
page-kits-ice =
    { $which ->
        [far] { $now } °C: das ist kein Eiswasser
        [settling] { $now } °C, noch nicht in Ruhe
       *[other] { $now } °C
    }
page-kits-ice-found = gefunden: { $correction } °C
page-kits-ice-title = Eispunkt aller Fühler
page-kits-ice-how = Ein großes Bad mit zerstoßenem Eis füllen und gerade so viel destilliertes Wasser dazu, dass es sich rühren lässt. Alle Fühler hineinhängen, die Spitzen tief, ohne Boden und Wand zu berühren. Ab und zu rühren. Den ersten Knopf drücken, sobald alle drin sind; speichern, wenn jeder seinen Wert gefunden hat.
page-kits-ice-count = Fühler: { $probes }. Im Eis: { $begun }. Gefunden: { $found }.
page-kits-ice-begin = { $count ->
    [one] Er ist im Eis
   *[other] Alle { $count } sind im Eis
}
page-kits-ice-save = { $count ->
    [one] Einen speichern
   *[other] { $count } speichern
}
page-kits-ice-discard = { $count ->
    [one] Für einen lassen
   *[other] Für { $count } lassen
}
page-kits-more = Aufzeichnung, Version, Strom
page-kits-do = Was
page-kits-do-what =
    { $which ->
        [restart] Jede Station startet neu und macht weiter, wo sie war. Das dauert etwa eine Minute.
        [shut-down] Jede Station fährt herunter; ist ihre Lampe aus, kann der Stecker gezogen werden.
        [backup] Jede Station kopiert ihre Aufzeichnung auf ihren eigenen Stick.
        [update] Jede Station installiert die Wheels von ihrem eigenen Stick, probiert sie aus und kehrt von selbst zurück, wenn sie nicht laufen.
        [restore] Jede Station setzt eine eigene Sicherung an die Stelle ihrer Aufzeichnung. Die vorige wird beiseitegelegt.
       *[wipe] Jede Station löscht ihre Aufzeichnung und alle Anmeldungen endgültig; ihr Fühlerregister bleibt. Der Raum behält, was er hat.
    }
page-kits-place = Woher
page-kits-places =
    { $which ->
        [card] eigene Kopien der Karte
       *[stick] der Stick
    }
page-kits-typed =
    { $which ->
        [update] Die ersten 16 Stellen der neuen Version, wie genannt
       *[restore] Name der Datei, etwa 2026-11-30.backup
    }
page-kits-sure = { $count ->
    [one] Wirklich: auf der gewählten Station
   *[other] Wirklich: auf allen { $count } gewählten Stationen
}
page-room-under-way = läuft
page-room-address = Andere Geräte finden den Raum unter
page-room-qr = QR-Code von { $address }
page-room-practise = Übung für jedes Handy
page-room-practise-more = Jedes Handy, das diese Adresse öffnet, bekommt einen eigenen virtuellen Becher. Ins Klassenergebnis geht davon nichts ein.
page-room-class-title = Klassenergebnis
page-room-withheld = Verborgen, bis jeder Platz sein eigenes Ergebnis gezeigt hat.
page-room-waits-for = Noch nicht gezeigt an: { $benches }.
page-room-nobody = Noch kein Platz hat begonnen.
page-room-calculating = Wird gerechnet …
page-room-methods =
    { $which ->
        [heat_balance] Wärmebilanz
       *[straight_lines] Geraden
    }
page-room-plot-title = { $quantity } nach: { $method }
page-room-plot-why = Ein Punkt ist der Wert eines Platzes, sein Strich der 95-%-Bereich; ein Pfeil: Er geht weiter. Das Band ist der Mittelwert der Klasse mit seinem 95-%-Bereich.
page-room-plot-value = { $name }: { $value } (95 %: { $low } bis { $high })
page-room-class-mean = Klasse
page-room-table-title = Alle Plätze
page-room-bench = Platz
page-room-repeats = Durchgänge
page-room-no-value = keiner
page-room-not-pooled = anderer Plan
page-room-odd-title = Plätze, die weit abliegen
page-room-odd-why = Von selbst wird nichts weggelassen.
page-room-no-odd = Kein Platz liegt weit von den anderen ab.
page-room-curve-title = Mittlere Kurve der Klasse
page-room-curve-across = Lauge zugegeben / cm³
page-room-curve-up = Änderung seit dem Anfang / °C
page-room-curve-why = Mittel von { $count } Plätzen; die Striche sind die Streuung zwischen den Plätzen (eine Standardabweichung).
page-room-files = Zum Mitnehmen
page-room-file-names =
    { $which ->
        [sheet] Alles als Tabelle
        [results] Ergebnisse aller Plätze
        [resultsComma] Ergebnisse, Dezimalkomma
        [readings] Ablesungen aller Plätze
        [readingsComma] Ablesungen, Dezimalkomma
       *[events] Jedes Ereignis jedes Platzes
    }
page-room-print = Das Klassenblatt drucken
page-room-print-hint = Eine Seite A4.
page-room-needs-title = Wer dich braucht
page-room-needs-count =
    { $count ->
        [0] Kein Platz braucht Hilfe.
        [one] Ein Platz braucht dich:
       *[other] { $count } Plätze brauchen dich:
    }
page-room-need =
    { $code ->
        [called] { $name } ruft dich
        [trouble] { $name }: Daten gestört
        [unreadable] { $name }: Aufzeichnung nicht lesbar
        [silent] { $name } ist nicht verbunden
        [probe_lost] { $name }: Fühler antwortet nicht
        [bad_readings] { $name }: Stecker prüfen
        [not_begun] { $name } hat nicht begonnen
        [stuck] { $name } macht nicht weiter
        [slow] { $name } braucht lange
        [paused] { $name }: lange pausiert
        [question] { $name }: eine offene Frage
        [many_aside] { $name }: mehrere Durchgänge weggelassen
       *[other] { $name }
    }
page-room-progress = { $own } % getan; die Klasse { $usual } %
page-room-answer =
    { $state ->
        [pending] { $act }: nicht verbunden, noch nicht
        [refused] { $act }: nicht getan
       *[other] { $act }: getan
    }
page-room-left-line =
    { $state ->
        [pending] { $act }: { $benches } nicht verbunden, folgt später
        [refused] { $act }: { $benches } tat es nicht: { $why }
       *[other] { $act }: { $benches } getan
    }
page-room-dismiss = Ausblenden
page-room-bar = Bedienung
page-room-panel = Fenster
page-room-all-benches = Alle { $count } Plätze
page-room-results =
    { $state ->
        [shown] Ergebnisse: überall gezeigt
        [held] Ergebnisse: überall verborgen
       *[some] Ergebnisse: an { $shown } von { $all } gezeigt
    }
page-room-pause-all =
    { $which ->
        [resume] Weiter ({ $count })
       *[pause] Anhalten ({ $count })
    }
page-room-arrange = Anordnen
page-room-arranged = Angeordnet
page-room-take = { $name } versetzen
page-room-put = Auf Platz { $place }
page-room-sign-in = Anmelden
page-room-join = Adresse
page-room-no-address = Der Raum hat gerade keine Adresse in einem Netz.
page-room-practice-count = Übung ({ $count })
page-room-practice-title = Übungsbecher
page-room-practice-why = Virtuelle Becher auf Handys und Tablets. Nichts davon geht ins Klassenergebnis ein.
page-room-practice-cup = Becher { $cup }
page-room-begin-does =
    { $own ->
        [own] 
        { $count ->
            [one] Beginnt an einem Platz einen neuen Versuch, mit dem Plan, den er hat; was gemessen wurde, bleibt erhalten.
           *[other] Beginnt an { $count } Plätzen einen neuen Versuch, mit dem Plan, den jeder hat; was gemessen wurde, bleibt erhalten.
        }
       *[plan] 
        { $count ->
            [one] Beginnt an einem Platz einen neuen Versuch: { $plan }. Was gemessen wurde, bleibt erhalten.
           *[other] Beginnt an { $count } Plätzen einen neuen Versuch: { $plan }. Was gemessen wurde, bleibt erhalten.
        }
    }
page-room-begin-not = Diese sind mitten in einem Durchgang und machen damit weiter: { $benches }.
page-room-statistics = Die Statistik
page-room-more-pictures = Mehr Bilder
page-room-clash = { $value }: kein brauchbarer Bereich, seine Durchgänge widersprechen sich
page-room-open-questions = Offene Fragen
page-room-made-up = Angesetzt mit { $mol } mol/dm³
page-room-made-up-only-you = das siehst nur du
page-room-made-up-seen = die Plätze zeigen es
page-room-made-up-ask = Womit die Flasche angesetzt ist / mol/dm³
page-room-made-up-keep = Merken (nur für Lehrkraft und Technik)
page-room-made-up-show = Der Klasse zeigen

## Üben mit einem virtuellen Becher

page-practise-tag = Übung
page-practise-hands = Übung: deine Hände
page-practise-ware = { $which ->
    [cylinder] Messzylinder mit { $reagent }
   *[syringe] Spritze mit { $reagent }
  }
page-practise-lowest-point = Lies den tiefsten Punkt der gewölbten Oberfläche ab.
page-practise-hold = { $which ->
    [draw] Füllen: halten
    [cylinder] Ein­gießen: halten
   *[syringe] Zu­geben: halten
  }
page-practise-stir = { $which ->
    [stirring] Rührt …
   *[still] Rühren
  }
page-practise-lid = { $which ->
    [on] Deckel zu
   *[off] Deckel ab
  }
page-practise-probe = Fühler
page-practise-places = { $which ->
    [alkali] in Lauge
    [cup] im Becher
   *[out] gespült
  }
page-practise-fill = { $which ->
    [sure] Wirklich? Noch mal
    [again] Neue Säure
   *[empty] Säure ein­füllen
  }
page-practise-technique = So hast du gearbeitet
page-practise-after-results = Wie gut du gearbeitet hast, siehst du zusammen mit deinen Ergebnissen.
page-practise-no-slips = Kein Fehler bei { $count } Portionen: Jede wurde richtig abgemessen, zugegeben, gerührt und abgelesen.
page-practise-of-portion = Durchgang { $repeat }, Portion { $portion }:
page-practise-of-start = Durchgang { $repeat }, Start:
page-practise-cost = Das hat { $cost } °C gekostet.
page-practise-record = { $which ->
    [right] In deiner Aufzeichnung steht es richtig.
   *[wrong] In deiner Aufzeichnung steht noch das geplante Volumen.
  }
page-practise-again = Noch einmal üben
page-practise-offer = Üben ohne Geräte
page-practise-offer-more = Übe auf diesem Gerät mit einem virtuellen Becher, so oft du willst. Es zählt nicht.
page-practise-begin = Üben

# Mischungsverhältnisse bei gleichem Gesamtvolumen.
practical-ratios = Mischungsverhältnisse: { $acid } mit { $alkali }
amount-mixtures = { $from_cm3 } bis { $to_cm3 } cm³, zusammen { $total_cm3 } cm³
problem-mixtures-total = die letzte Mischung hätte { $alkali_cm3 } cm³ Lauge, jede hat aber nur { $total_cm3 } cm³; nimm weniger Mischungen oder kleinere Schritte
problem-mixtures-side = jede der zwei Geraden braucht { $least } Mischungen, und bei diesen Konzentrationen schneiden sie sich bei { $crossing_cm3 } cm³ Lauge; wähle andere Volumen oder Konzentrationen
quantity-ratio = Mol Lauge pro Mol Säure
sheet-mixtures = Mischungen
sheet-total-volume = Gesamtvolumen jeder Mischung
sheet-least-alkali = wenigste Lauge
sheet-most-alkali = meiste Lauge
sheet-alkali-volume = Lauge / cm³
sheet-acid-volume = Säure / cm³
sheet-alkali-fraction = Anteil der Lauge am Volumen
sheet-start-of-both = Start beider / °C
sheet-highest = höchste Temperatur / °C
sheet-rise = Temperaturanstieg / °C
sheet-mixed-times = wie oft gemischt
step-acid-at-crossing = Volumen der Säure am Schnittpunkt
formula-acid-at-crossing = V(Säure) = V(gesamt) - V(Lauge)
step-ratio = Mol { $alkali } auf ein Mol { $acid }
formula-ratio = n(Lauge) ÷ n(Säure)
step-rise-at-crossing = Temperaturanstieg am Schnittpunkt der Geraden
formula-rise-at-crossing = ΔT am Schnittpunkt
step-heat-of-mixture = in dieser Mischung abgegebene Wärme
ratios-off = Die Geraden ergeben { $ratio } Mol Lauge pro Mol Säure, die Gleichung sagt { $expected }. Prüfe Volumen und Konzentrationen.
predict-no-heat = die Wärme dieser Reaktion ist nicht bekannt
predict-cylinders = Die Volumen werden mit einem Messzylinder gemessen: u je { $u_cm3 } cm³.
predict-ratios = { $count } Mischungen zu { $total_cm3 } cm³: { $acid } { $acid_mol_dm3 } mol/dm³ mit { $from_cm3 } bis { $to_cm3 } cm³ { $alkali } { $alkali_mol_dm3 } mol/dm³
predict-ratio = Die Geraden schneiden sich bei { $end_point_cm3 } cm³ Lauge: { $ratio } mol Lauge auf 1 mol Säure.
predict-head-alkali = Lauge/cm³
predict-head-share = Anteil
predict-head-rise = Anstieg/°C
predict-head-ratio = Verhältnis, insgesamt
predict-bias-ratio = Abw.
page-ratios-practical = { $acid } und { $alkali } in { $count } Verhältnissen, je { $total } cm³
page-ratios-of = Mischung { $mixture } von { $planned }
page-ratios-planned =
    Geplant: { $mixtures } Mischungen, jede { $repeats ->
        [one] einmal
       *[other] { $repeats }-mal
    }.
page-ratios-questions =
    { $which ->
        [0] Warum steigt die Temperatur zuerst im gleichen Maß wie die Lauge? Welcher der zwei Stoffe ist dort aufgebraucht, und welcher auf der anderen Seite?
        [1] Dein Thermometer zeigt Temperaturen in Stufen. Wie groß ist eine Stufe gegen den größten Anstieg?
        [2] Warum hat jede Mischung dasselbe Gesamtvolumen? Wie sähe das Diagramm aus, wenn nur die Lauge verändert würde?
        [3] Welcher Punkt liegt am weitesten von seiner Geraden? Was könnte in diesem Becher anders gewesen sein?
       *[4] Ist der Unterschied zwischen deinem Verhältnis und dem der Gleichung größer als das ±? Wenn ja: Was steckt nicht im ±?
    }
page-ratios-answer-own = Deine Geraden schneiden sich bei { $volume } cm³ Lauge: { $ratio } mol Lauge auf 1 mol Säure.
page-ratios-answer-best = Das beste berechnete Verhältnis ist { $ratio } <uncertainty>±</uncertainty> { $u } mol Lauge auf 1 mol Säure.
page-ratios-answer-equation = Die Gleichung sagt { $ratio }.
page-ratios-chart = Temperaturanstieg gegen Lauge in der Mischung
page-ratios-across = Lauge in der Mischung / cm³
page-ratios-up = Temperaturanstieg / °C
page-ratios-point = eine Mischung
page-ratios-table = Mischungen
page-ratios-rise = größter Anstieg
page-ratios-columns =
    { $which ->
        [alkali] Lauge / cm³
        [acid] Säure / cm³
        [share] Anteil der Lauge
        [start] Säure am Start / °C
        [highest] höchste / °C
       *[rise] Anstieg / °C
    }
page-ratios-ratio = { $ratio } : 1 (Lauge : Säure)
page-ratios-interval = 95 %: { $low } bis { $high }
page-ratios-plus-minus = <uncertainty>Standardunsicherheit</uncertainty> { $u }
page-ratios-crossing = Lauge am Schnittpunkt
page-ratios-worth-lines = Die verlängerten Geraden sind hier mehr wert. Mit viel Lauge und wenig Säure findet die <heat-balance>Wärmebilanz</heat-balance> etwas zu große Anstiege.
page-ratios-by-lines = Anstiege aus verlängerten Geraden
page-ratios-by-heat = Anstiege aus der <heat-balance>Wärmebilanz</heat-balance>
page-ratios-scatter-only = Das ± kennt nur die Streuung der Punkte; falsche Konzentrationen der Lösungen stecken nicht darin.
page-ratios-record = { $ratio } ± { $u } : 1 (Lauge : Säure)
page-ratios-mixtures = Mischungen
page-ratios-total = Gesamtvolumen jeder / cm³
page-ratios-first = Lauge in der ersten Mischung / cm³
page-ratios-step = Mehr Lauge in jeder weiteren / cm³
page-ratios-count = Zahl der Mischungen
page-ratios-expected = Verhältnis nach der Gleichung
page-ratios-crosses-at = die Geraden schneiden sich bei { $volume } cm³ Lauge
page-ratios-methods = Wie genau das Verhältnis bekannt sein wird (± eine Standardunsicherheit)
