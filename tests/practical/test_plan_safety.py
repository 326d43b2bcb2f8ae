"""Plans that lead into danger are refused or warned of; what schools do passes.

What a mixture does is judged here by other figures than the station's: handbook heats of solution, one heat for each
kind of neutralisation, 4.0 J/(g °C), solubilities of another table.
"""

import random
from typing import Any

import pytest

from station.chemistry.preparation import is_weighed
from station.chemistry.reagents import REAGENTS, find_reagent
from station.chemistry.safety import Poured, gas_of, solubility_g_100g
from station.practical.guide import guide
from station.practical.kinds import READY_NAMES, plan_from, read_plan, ready_plan
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.plan import Plan, PlanError
from station.practical.safety import dangers, safe, safety_warnings
from tests.records import PLAN_TEXT

DRAWN = 2000
WATER = "water"

# Heat given out in kJ/mol, at about 1 mol in 400 mol of water: handbooks (Thomsen, Parker), from memory but for the
# copper sulfates.
DISSOLVING_KJ_MOL = {
    "citric acid": -18,
    "citric acid monohydrate": -29,
    "ethanedioic acid": -9,
    "ethanedioic acid dihydrate": -35,
    "tartaric acid": -15,
    "sodium hydroxide": 43,
    "potassium hydroxide": 55,
    "lithium hydroxide": 23,
    "lithium hydroxide monohydrate": 6,
    "calcium hydroxide": 12,
    "barium hydroxide": 51,
    "barium hydroxide octahydrate": -64,
    "sodium carbonate": 23.6,
    "sodium carbonate decahydrate": -67.6,
    "potassium carbonate": 28,
    "sodium hydrogencarbonate": -18,
    "potassium hydrogencarbonate": -20,
    "ammonium nitrate": -26,
    "ammonium chloride": -15,
    "potassium nitrate": -35,
    "potassium chloride": -17.5,
    "sodium nitrate": -20,
    "sodium chloride": -4,
    "sodium ethanoate": 17,
    "sodium ethanoate trihydrate": -19.5,
    "lithium chloride": 36,
    "ammonium sulfate": -9.9,
    "calcium chloride": 73,
    "calcium chloride dihydrate": 42,
    "calcium chloride hexahydrate": -18.2,
    "magnesium sulfate": 84.9,
    "magnesium sulfate heptahydrate": -15.9,
    "copper(II) sulfate": 66.1,
    "copper(II) sulfate pentahydrate": -11.7,
    "urea": -14,
}

# mol of the anhydrous salt in 1 kg of water at 10, 20 and 30 °C: CRC Handbook of Chemistry and Physics, "Solubility of
# Common Salts at Ambient Temperatures", as copied in public; the last five from memory of other tables.
MOL_KG = {
    "CuSO4": (1.055, 1.260, 1.502),
    "K2CO3": (7.756, 7.948, 8.191),
    "LiCl": (19.296, 19.670, 20.3),
    "NH4Cl": (6.199, 6.943, 7.7),
    "NH4NO3": (18.809, 23.721, 29.3),
    "(NH4)2SO4": (5.494, 5.688, 5.896),
    "NaCl": (6.110, 6.136, 6.174),
    "NaNO3": (9.395, 10.261, 11.204),
    "KNO3": (2.07, 3.13, 4.53),
    "KCl": (4.18, 4.59, 4.98),
    "Na2CO3": (1.15, 2.03, 3.75),
    "NaHCO3": (0.97, 1.14, 1.32),
    "MgSO4": (2.34, 2.80, 3.2),
}
FORMULA_G_MOL = {"CuSO4": 159.6, "K2CO3": 138.2, "LiCl": 42.39, "NH4Cl": 53.49, "NH4NO3": 80.04, "(NH4)2SO4": 132.1}
FORMULA_G_MOL |= {"NaCl": 58.44, "NaNO3": 84.99, "KNO3": 101.1, "KCl": 74.55, "Na2CO3": 106.0, "NaHCO3": 84.01}
FORMULA_G_MOL |= {"MgSO4": 120.4}

NAMES = [each.name for each in REAGENTS]
SOLIDS = [each.name for each in REAGENTS if is_weighed(each)]
ACIDS = [each.name for each in REAGENTS if each.is_acid]
ALKALIS = [each.name for each in REAGENTS if each.is_alkali]


def drawn(rng: random.Random) -> Plan:
    """A plan as a careless hand could write it: any reagents, a few grams to a cupful, weak to concentrated."""

    def spread(low: float, high: float) -> float:
        return float(f"{low * (high / low) ** rng.random():.3g}")

    room_c = rng.choice([None, None, round(rng.uniform(-5, 60), 1)])
    added_c = rng.choice([None, None, round(rng.uniform(-5, 60), 1)])
    shared: dict[str, Any] = {"surroundings": {"room_c": room_c}}
    if rng.random() < 0.3:
        acid = {"name": rng.choice(ACIDS), "volume_cm3": spread(5, 200)}
        if rng.random() < 0.7:
            acid["concentration_mol_dm3"] = spread(0.05, 20)
        alkali = {"name": rng.choice(ALKALIS), "concentration_mol_dm3": spread(0.05, 20), "temperature_c": added_c}
        portions = {"volume_cm3": spread(0.5, 20), "count": rng.randint(4, 30)}
        return plan_from({**shared, "acid": acid, "alkali": alkali, "portions": portions})
    liquid: dict[str, Any] = {"name": rng.choice([WATER, WATER, *rng.sample(NAMES, 3)]), "volume_cm3": spread(5, 500)}
    if liquid["name"] != WATER:
        liquid["concentration_mol_dm3"] = spread(0.05, 20)
    if rng.random() < 0.6:
        addition = {"name": rng.choice(SOLIDS), "mass_g": spread(0.2, 200)}
    else:
        addition = {"name": rng.choice(NAMES), "volume_cm3": spread(5, 500), "concentration_mol_dm3": spread(0.05, 20)}
    return plan_from({**shared, "kind": "once", "liquid": liquid, "addition": {**addition, "temperature_c": added_c}})


def parts_of(plan: Plan) -> list[tuple[str, float, float, float, bool]]:
    """Name, moles, grams, °C and whether it is a solid, of each part; an acid that is not told: as much as reacts."""
    room_c = plan.surroundings.room_c
    start_c = 20.0 if room_c is None else room_c
    found = []
    if isinstance(plan, PortionsPlan):
        added_cm3, alkali = plan.count * plan.portion_cm3, find_reagent(plan.alkali.name)
        alkali_mol = plan.alkali.concentration_mol_dm3 * added_cm3 / 1000
        told = plan.acid.concentration_mol_dm3
        most_mol = alkali_mol * alkali.hydroxides / find_reagent(plan.acid.name).protons
        acid_mol = most_mol if told is None else told * plan.acid.volume_cm3 / 1000
        acid_mol = min(acid_mol, 3.0 * plan.acid.volume_cm3 / 1000) if told is None else acid_mol
        added_c = start_c if plan.alkali.temperature_c is None else plan.alkali.temperature_c
        found.append((plan.acid.name, acid_mol, plan.acid.volume_cm3, start_c, False))
        found.append((plan.alkali.name, alkali_mol, added_cm3, added_c, False))
        return found
    assert isinstance(plan, OncePlan)
    liquid, addition = plan.liquid, plan.addition
    found.append(
        (liquid.name, (liquid.concentration_mol_dm3 or 0) * liquid.volume_cm3 / 1000, liquid.volume_cm3, start_c, False)
    )
    added_c = start_c if addition.temperature_c is None else addition.temperature_c
    if addition.mass_g is not None:
        mol = addition.mass_g / find_reagent(addition.name).molar_mass_g_mol
        found.append((addition.name, mol, addition.mass_g, added_c, True))
    else:
        volume_cm3 = addition.volume_cm3 or 0.0
        found.append(
            (addition.name, (addition.concentration_mol_dm3 or 0) * volume_cm3 / 1000, volume_cm3, added_c, False)
        )
    return found


def neutralised_kj(first: tuple[str, float], second: tuple[str, float]) -> float:
    """55 to 67 kJ for each mole of water: school books; sulfuric acid and phosphoric acid give the most."""
    (acid, acid_mol), (alkali, alkali_mol) = (first, second) if first[0] in ACIDS else (second, first)
    if acid not in ACIDS or alkali not in ALKALIS:
        return 0.0
    each_kj = 67.0 if acid == "sulfuric acid" else 62.0 if acid == "phosphoric acid" else 57.0
    return each_kj * min(acid_mol * find_reagent(acid).protons, alkali_mol * find_reagent(alkali).hydroxides)


def end_c(plan: Plan) -> float:
    """Where an insulated cup of the whole mixture ends; 4.0 J for each gram and °C, solids 1 J."""
    parts = parts_of(plan)
    holds = [(1.0 if solid else 4.0) * grams for _, _, grams, _, solid in parts]
    heat_kj = sum(DISSOLVING_KJ_MOL.get(name, 0.0) * mol for name, mol, _, _, solid in parts if solid)
    heat_kj += neutralised_kj(parts[0][:2], parts[1][:2])
    held = sum(each * part[3] for each, part in zip(holds, parts, strict=True))
    return (held + 1000 * heat_kj) / sum(holds)


def does_not_dissolve(plan: Plan) -> bool:
    """A solid or a solution with far too much for its water; judged between 10 and 30 °C, where the table is."""
    parts = parts_of(plan)
    for place, (name, mol, grams, at_c, solid) in enumerate(parts):
        solute = "" if name == WATER else find_reagent(name).solute
        reacts = neutralised_kj(parts[0][:2], parts[1][:2]) > 0
        judged_c = end_c(plan) if solid else at_c
        if solute not in MOL_KG or not 10 <= judged_c <= 30 or (solid and reacts):
            continue
        low, middle, high = MOL_KG[solute]
        share = (judged_c - 10) / 10
        most = low + (middle - low) * share if share <= 1 else middle + (high - middle) * (share - 1)
        # A cubic centimetre of water or weak solution is taken as a gram of water; a gram of salt needs room in it.
        crystal_g = grams - mol * FORMULA_G_MOL[solute] if solid else 0.0
        water_g = parts[1 - place][2] + crystal_g if solid else grams
        if mol > 1.1 * most * water_g / 1000:
            return True
    return False


def sets_gas(plan: Plan) -> bool:
    first, second = (part[0] for part in parts_of(plan))
    return any(
        ("carbonate" in one and other in ACIDS)
        or (one.startswith("ammonium") and other.endswith(("hydroxide", "hydrate", "carbonate")) and other in ALKALIS)
        for one, other in ((first, second), (second, first))
    )


@pytest.mark.fault("dangerous-plan")
def test_no_plan_of_two_thousand_leads_into_danger_without_a_word() -> None:
    rng = random.Random(20)
    dangerous = passed = 0
    for _ in range(DRAWN):
        plan = drawn(rng)
        refused = dangers(plan)
        # What is said of strong solutions and of crystal water is no warning of what the mixture does.
        warned = [each["id"] for each in safety_warnings(plan) if each["id"] not in {"strong", "anhydrous"}]
        end, gas, insoluble = end_c(plan), sets_gas(plan), does_not_dissolve(plan)
        if end > 60 or end < 0 or gas or insoluble:
            dangerous += 1
            assert refused or warned, f"{plan!r} ends at {end:.0f} °C, gas {gas}, insoluble {insoluble}"
        if gas or end > 80 or end < -15:
            assert refused, f"{plan!r} ends at {end:.0f} °C, gas {gas}"
        passed += not refused
    assert dangerous > 300, "the draw must reach danger"
    assert passed > 300, "and what is harmless must pass"


WATER_50 = {"name": "water", "volume_cm3": 50.0}


def once(liquid: dict[str, Any], addition: dict[str, Any], **more: Any) -> Plan:
    return plan_from({"kind": "once", "liquid": liquid, "addition": addition, **more})


def solution(name: str, volume_cm3: float, mol_dm3: float) -> dict[str, Any]:
    return {"name": name, "volume_cm3": volume_cm3, "concentration_mol_dm3": mol_dm3}


def water(volume_cm3: float) -> dict[str, Any]:
    return {"name": "water", "volume_cm3": volume_cm3}


def solid(name: str, mass_g: float) -> dict[str, Any]:
    return {"name": name, "mass_g": mass_g}


def portions(acid: tuple[str, float, float | None], alkali: tuple[str, float], volume_cm3: float, count: int) -> Plan:
    return plan_from(
        {
            "acid": {"name": acid[0], "volume_cm3": acid[1], "concentration_mol_dm3": acid[2]},
            "alkali": {"name": alkali[0], "concentration_mol_dm3": alkali[1]},
            "portions": {"volume_cm3": volume_cm3, "count": count},
        }
    )


USUAL = [
    read_plan(PLAN_TEXT),
    *(ready_plan(name) for name in READY_NAMES),
    portions(("hydrochloric acid", 30.0, 1.8), ("sodium hydroxide", 2.0), 5.0, 8),
    portions(("ethanoic acid", 25.0, None), ("sodium hydroxide", 1.0), 2.0, 20),
    portions(("sulfuric acid", 25.0, 0.5), ("potassium hydroxide", 1.0), 5.0, 10),
    portions(("hydrochloric acid", 25.0, 1.0), ("ammonia", 1.0), 5.0, 10),
    portions(("citric acid", 25.0, 0.3), ("sodium hydroxide", 1.0), 5.0, 10),
    once(solution("hydrochloric acid", 50.0, 2.0), solution("sodium hydroxide", 50.0, 2.0)),
    once(solution("sulfuric acid", 25.0, 1.0), solution("sodium hydroxide", 50.0, 1.0)),
    # Heat of hydration by Hess's law, as examination boards set it: 0.025 mol of either solid.
    once(water(25.0), solid("copper(II) sulfate", 4.0)),
    once(water(24.0), solid("copper(II) sulfate pentahydrate", 6.25)),
    once(water(50.0), solid("magnesium sulfate", 3.0)),
    once(water(45.0), solid("magnesium sulfate heptahydrate", 6.2)),
    # Hot and cold packs, and dissolving as in school books.
    once(water(100.0), solid("calcium chloride", 10.0)),
    once(water(100.0), solid("sodium hydroxide", 4.0)),
    once(water(50.0), solid("ammonium nitrate", 8.0)),
    once(water(50.0), solid("ammonium chloride", 5.0)),
    once(water(50.0), solid("potassium nitrate", 5.0)),
    once(water(50.0), solid("potassium chloride", 4.0)),
    once(water(50.0), solid("sodium hydrogencarbonate", 3.0)),
    once(water(50.0), solid("citric acid monohydrate", 5.0)),
    once(solution("hydrochloric acid", 100.0, 0.5), solid("sodium hydroxide", 2.0)),
    once(solution("copper(II) sulfate", 50.0, 0.2), solution("sodium hydroxide", 50.0, 0.4)),
]


@pytest.mark.parametrize("plan", USUAL, ids=lambda plan: plan.name)
def test_what_schools_do_passes(plan: Plan) -> None:
    assert dangers(plan) == []
    assert safe(plan) is plan


@pytest.mark.parametrize(
    ("plan", "danger", "where", "says"),
    [
        (once(water(25.0), solid("sodium hydroxide", 30.0)), "too-hot", "mass_g", "would boil and spit"),
        (
            once(water(50.0), solid("sodium hydroxide", 5.0)),
            "violent",
            "mass_g",
            "Added at once, 5 g of sodium hydroxide heats too violently",
        ),
        (once(water(50.0), solid("calcium chloride", 18.0)), "too-hot", "mass_g", "above 60 °C it scalds"),
        (once(water(50.0), solid("ammonium nitrate", 25.0)), "too-cold", "mass_g", "below 0 °C it can freeze"),
        (once(water(50.0), solid("copper(II) sulfate pentahydrate", 25.0)), "insoluble", "mass_g", "takes up at most"),
        (once(water(50.0), solid("calcium hydroxide", 1.0)), "insoluble", "mass_g", "takes up at most about 0.082 g"),
        (once(water(50.0), solid("hydrochloric acid", 2.0)), "no-solid", "name", "not as a solid to be weighed"),
        (
            once(water(50.0), solution("potassium nitrate", 50.0, 9.0)),
            "no-such-solution",
            "concentration_mol_dm3",
            "at most about 2.7 mol/dm³ dissolves",
        ),
        (
            once(solution("hydrochloric acid", 25.0, 11.0), solution("sodium hydroxide", 25.0, 1.0)),
            "too-strong",
            "concentration_mol_dm3",
            "not for hydrochloric acid of 11 mol/dm³",
        ),
        (
            once(solution("ammonium chloride", 50.0, 1.0), solid("barium hydroxide octahydrate", 5.0)),
            "gas",
            "name",
            "Ammonia, harmful to breathe",
        ),
        (
            once(solution("ethanoic acid", 50.0, 1.0), solid("sodium hydrogencarbonate", 3.0)),
            "gas",
            "name",
            "Carbon dioxide leaves a mixture of ethanoic acid",
        ),
        (portions(("nitric acid", 25.0, 0.5), ("sodium carbonate", 0.4), 5.0, 10), "gas", "name", "Carbon dioxide"),
        (once(WATER_50, solid("urea", 4.0), surroundings={"room_c": -3.0}), "too-cold", "mass_g", "can freeze"),
        (
            once(
                solution("hydrochloric acid", 50.0, 2.0),
                solution("sodium hydroxide", 50.0, 2.0),
                surroundings={"room_c": 50.0},
            ),
            "too-hot",
            "concentration_mol_dm3",
            "above 60 °C it scalds",
        ),
    ],
)
def test_a_danger_is_refused_in_plain_words_beside_its_key(plan: Plan, danger: str, where: str, says: str) -> None:
    found = {each["id"]: each for each in dangers(plan)}
    assert says in found[danger]["text"]
    assert found[danger]["where"][1] == where
    with pytest.raises(PlanError) as refusal:
        safe(plan)
    assert "\n" not in str(refusal.value)


@pytest.mark.fault("wrong-hydrate")
@pytest.mark.parametrize(
    ("plan", "warning"),
    [
        (once(water(25.0), solid("copper(II) sulfate", 4.0)), "heats"),
        (once(water(25.0), solid("copper(II) sulfate", 4.0)), "anhydrous"),
        (once(WATER_50, solid("ammonium nitrate", 10.0)), "cold"),
        (once(WATER_50, solid("copper(II) sulfate pentahydrate", 14.0)), "dissolves-slowly"),
        (once(WATER_50, solid("urea", 4.0), surroundings={"room_c": 48.0}), "hot"),
        (once(solution("copper(II) sulfate", 50.0, 0.2), solution("sodium hydroxide", 50.0, 0.4)), "heat-unknown"),
        (once(solution("hydrochloric acid", 50.0, 2.0), solution("sodium hydroxide", 50.0, 2.0)), "strong"),
    ],
)
def test_before_a_danger_there_is_a_warning(plan: Plan, warning: str) -> None:
    assert dangers(plan) == []
    found = {each["id"]: each["text"] for each in safety_warnings(plan)}
    assert found[warning].endswith(".")


def test_more_of_a_solid_is_warned_of_before_it_is_refused() -> None:
    """From a pinch to a cupful of each solid in water: what is refused was warned of before, or is refused at once."""
    for name in SOLIDS:
        ids = [
            (bool(dangers(plan)), {each["id"] for each in safety_warnings(plan)} - {"anhydrous"})
            for plan in (once(water(100.0), solid(name, grams / 4)) for grams in range(1, 1000, 3))
        ]
        first = next((place for place, (refused, _) in enumerate(ids) if refused), len(ids))
        assert all(refused for refused, _ in ids[first:]), name
        assert first == 0 or first == len(ids) or ids[first - 1][1], name


@pytest.mark.parametrize("name", SOLIDS)
def test_each_solid_has_a_solubility_and_the_other_table_agrees(name: str) -> None:
    reagent = find_reagent(name)
    assert solubility_g_100g(reagent, 20.0) is not None
    for at_c, mol_kg in zip((10.0, 20.0, 30.0), MOL_KG.get(reagent.solute, ()), strict=False):
        other_g = mol_kg * FORMULA_G_MOL[reagent.solute] / 10
        assert solubility_g_100g(reagent, at_c) == pytest.approx(other_g, rel=0.1)


@pytest.mark.parametrize(
    ("first", "second", "gas"),
    [
        ("hydrochloric acid", "sodium carbonate decahydrate", "CO2"),
        ("copper(II) sulfate", "sodium carbonate", "CO2"),
        ("calcium chloride", "sodium hydrogencarbonate", "CO2"),
        ("calcium chloride", "sodium carbonate", None),
        ("ammonium sulfate", "potassium carbonate", "NH3"),
        ("ammonium chloride", "ammonia", None),
        ("ammonium nitrate", "nitric acid", None),
        ("sodium carbonate", "sodium hydrogencarbonate", None),
    ],
)
def test_which_pairs_set_a_gas_free(first: str, second: str, gas: str | None) -> None:
    assert gas_of(find_reagent(first), find_reagent(second)) == gas_of(find_reagent(second), find_reagent(first)) == gas


def test_an_acid_that_is_not_told_is_no_reason_to_refuse() -> None:
    """Taken as strong as the plan could find it, which nobody pours: only its heat counts."""
    plan = portions(("hydrochloric acid", 10.0, None), ("sodium hydroxide", 1.0), 5.0, 20)
    assert dangers(plan) == []
    assert isinstance(plan, PortionsPlan)


def test_a_poured_part_knows_its_water() -> None:
    """5 g of copper(II) sulfate pentahydrate hold 5 · 90.1/249.7 g of water."""
    blue = Poured(reagent=find_reagent("copper(II) sulfate pentahydrate"), mass_g=5.0, temperature_c=20.0)
    assert blue.water_g == pytest.approx(5 * 5 * 18.015 / 249.68, rel=1e-3)


def test_no_lid_where_gas_forms() -> None:
    fizz = plan_from({**portions(("nitric acid", 25.0, 0.5), ("sodium carbonate", 0.4), 5.0, 10).model_dump()})
    assert guide(fizz)["lid"] is False
    assert any(each.startswith("No lid: a gas forms") for each in guide(fizz)["cautions"])
    assert all(guide(plan)["lid"] for plan in USUAL)
