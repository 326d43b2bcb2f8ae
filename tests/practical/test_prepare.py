"""A class's preparation: enough for every bench, nothing told that the class is to find, a lesson that adds up."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.preparation import Stock, amount_text
from station.practical.kinds import plan_from, ready_plan
from station.practical.plan import PlanError
from station.practical.predict_plan import minutes
from station.practical.prepare.amounts import SCHOOLS_OWN, preparation, timetable
from station.practical.prepare.sheet import sheet
from station.practical.safety import hazards_of
from station.words import say

PLAN: dict[str, Any] = {
    "acid": {"name": "nitric acid", "volume_cm3": 20.0, "concentration_mol_dm3": 0.35},
    "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": 0.4},
    "portions": {"volume_cm3": 3.0, "count": 11, "glassware": "burette"},
}
COLD = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 40.0},
    "addition": {"name": "ammonium chloride", "mass_g": 3.0},
}


@given(st.integers(1, 100), st.floats(5, 100), st.integers(1, 20), st.integers(1, 4))
def test_there_is_enough_for_every_bench(benches: int, acid_cm3: float, count: int, repeats: int) -> None:
    acid = {**PLAN["acid"], "volume_cm3": acid_cm3}
    portions = {"volume_cm3": 3.0, "count": count}
    answer = preparation(plan_from({**PLAN, "acid": acid, "portions": portions, "repeats": repeats}), benches)
    poured = {"nitric acid": acid_cm3 * repeats * benches, "sodium hydroxide": 3.0 * count * repeats * benches}
    for each in answer["solutions"]:
        assert 1.2 * poured[each["name"]] <= each["make_cm3"] < 1.2 * poured[each["name"]] + 25 * benches + 500
        assert each["labels"] == benches


def test_the_plans_own_concentrations_are_made_up() -> None:
    answer = preparation(plan_from(PLAN), 15)
    made = {each["name"]: each["concentration_mol_dm3"] for each in answer["solutions"]}
    assert made == {"nitric acid": 0.35, "sodium hydroxide": 0.4}
    assert answer["range_mol_dm3"] is None
    assert "burette for 3 cm³ portions" in [each["item"] for each in answer["glassware"]]


def test_what_staff_prepare_is_made_up_and_kept_off_the_bottles() -> None:
    acid = {"name": "nitric acid", "volume_cm3": 20.0, "prepared_mol_dm3": 0.35}
    answer = preparation(plan_from({**PLAN, "acid": acid}), 3)
    assert {each["name"]: each["secret"] for each in answer["solutions"]} == {
        "nitric acid": True,
        "sodium hydroxide": False,
    }


def test_without_a_concentration_the_volume_and_the_range_are_told() -> None:
    """Three readings on each arm: end-points from 6 to 27 cm³ of 3 cm³ portions, c = 0.4 V / 20."""
    answer = preparation(plan_from({**PLAN, "acid": {"name": "nitric acid", "volume_cm3": 20.0}}), 3)
    assert [each["name"] for each in answer["unknown"]] == ["nitric acid"]
    assert answer["range_mol_dm3"] == pytest.approx([0.4 * 6 / 20, 0.4 * 27 / 20])


def test_every_bottle_has_a_label_also_of_an_acid_that_the_plan_does_not_tell() -> None:
    strong = {"name": "sodium hydroxide", "concentration_mol_dm3": 1.0}
    plan = plan_from({**PLAN, "acid": {"name": "nitric acid", "volume_cm3": 10.0}, "alkali": strong})
    answer = preparation(plan, 6)
    shown = sheet(answer)
    handed_out = [each for each in shown["bottles"] if not each["store"]]
    assert [(each["name"], each["count"]) for each in handed_out] == [("nitric acid", 6), ("sodium hydroxide", 6)]
    (laid,) = [each for each in answer["glassware"] if "labelled" in each["item"]]
    assert sum(each["count"] for each in handed_out) == laid["all"]
    acid = handed_out[0]
    assert (acid["formula"], acid["concentration_mol_dm3"]) == ("HNO3", None)
    assert acid["label"] == hazards_of(plan)[0]["label"]
    assert acid["label"]["hazards"][0]["code"] == "H314"  # from 5 % by mass (CLP, Annex VI)
    (told,) = [each for each in shown["sections"] if each["head"] == "nitric acid"]
    assert told["lines"][-1] == "The label holds for 2.7 mol/dm³ and less."


def test_a_weighed_solid_is_counted_out() -> None:
    answer = preparation(plan_from(COLD), 10)
    (solid,) = answer["solids"]
    assert (solid["name"], solid["each_g"], solid["count"], solid["total_g"]) == ("ammonium chloride", 3.0, 20, 72.0)
    assert [each["code"] for each in solid["label"]["hazards"]] == ["H302", "H319"]
    assert answer["solutions"] == []


def test_each_liquid_that_is_mixed_once_has_its_cylinder() -> None:
    once = {
        "kind": "once",
        "liquid": {"name": "nitric acid", "volume_cm3": 40, "concentration_mol_dm3": 0.4},
        "addition": {"name": "sodium hydroxide", "volume_cm3": 40, "concentration_mol_dm3": 0.4},
    }
    laid = {each["item"]: each["all"] for each in preparation(plan_from(once), 5)["glassware"]}
    assert laid["measuring cylinder for 40 cm³"] == 10
    once["addition"] = {"name": "sodium hydroxide", "volume_cm3": 25, "concentration_mol_dm3": 0.4}
    laid = {each["item"]: each["all"] for each in preparation(plan_from(once), 5)["glassware"]}
    assert (laid["measuring cylinder for 40 cm³"], laid["measuring cylinder for 25 cm³"]) == (5, 5)


@pytest.mark.fault("harm")
def test_a_strong_solution_needs_staff_to_confirm() -> None:
    alkali = {"name": "sodium hydroxide", "concentration_mol_dm3": 1.2}
    answer = preparation(plan_from({**PLAN, "alkali": alkali}), 3)
    assert "staff must confirm" in answer["cautions"][0]
    assert "staff must confirm" not in " ".join(preparation(plan_from(PLAN), 3)["cautions"])


@pytest.mark.parametrize("lesson_min", [50, 60])
def test_the_timetable_adds_up(lesson_min: int) -> None:
    plan = plan_from(PLAN)
    table = timetable(plan, lesson_min)
    assert sum(each["minutes"] for each in table["parts"]) + table["left_min"] == pytest.approx(lesson_min)
    assert table["parts"][1]["minutes"] == minutes(plan)["total"]


def test_a_lesson_that_is_too_short_says_how_many_repeats_fit() -> None:
    table = timetable(plan_from({**PLAN, "repeats": 8}), 50)
    assert table["left_min"] < 0
    assert 1 <= table["repeats_that_fit"] < 8


@pytest.mark.parametrize("benches", [0, 101, -1])
def test_a_class_has_some_benches(benches: int) -> None:
    with pytest.raises(PlanError, match="from 1 to 100"):
        preparation(plan_from(PLAN), benches)


def test_a_plan_with_a_weighed_solid_and_no_acid_names_a_balance_and_no_acid_spill() -> None:
    answer = preparation(ready_plan("endothermic"), 5)
    laid = {each["item"]: (each["each"], each["all"]) for each in answer["glassware"]}
    assert laid[say("item-balance")] == (1, 5)
    assert laid[say("item-weighing-boat", mass_g="4")] == (2, 10)
    assert answer["spills"] == [say(each) for each in ("spill-solid", "spill-small", "safety-splash-in-eye-long")]


def test_a_plan_of_acid_and_alkali_names_both_spills_and_no_balance() -> None:
    answer = preparation(ready_plan("mixed-once"), 5)
    assert {say("spill-acid"), say("spill-alkali")} <= set(answer["spills"])
    assert say("item-balance") not in {each["item"] for each in answer["glassware"]}


def lines_of(plan: dict[str, Any], head: str) -> list[str]:
    (section,) = [each for each in sheet(preparation(plan_from(plan), 15))["sections"] if each["head"].startswith(head)]
    return [*section["steps"], *section["lines"]]


def test_the_bottle_in_store_tells_what_is_in_it() -> None:
    acid = {"name": "nitric acid", "volume_cm3": 20.0, "prepared_mol_dm3": 0.35}
    stored = [each for each in sheet(preparation(plan_from({**PLAN, "acid": acid}), 15))["bottles"] if each["store"]]
    assert [(each["name"], each["concentration_mol_dm3"], each["count"]) for each in stored] == [
        ("nitric acid", 0.35, 1),
        ("sodium hydroxide", 0.4, 1),
    ]
    # What suppliers say of 0.1 mol/dm³ and more: chemistry/hazards.py.
    assert all("H290" in {hazard["code"] for hazard in each["label"]["hazards"]} for each in stored)


def test_a_limit_within_10_percent_is_told_with_what_holds_from_there() -> None:
    """Sodium hydroxide is corrosive from 2 % by mass, 0.51 mol/dm³ (Annex VI, 011-002-00-6)."""
    remarks = {
        mol_dm3: [
            each
            for each in lines_of({**PLAN, "alkali": {**PLAN["alkali"], "concentration_mol_dm3": mol_dm3}}, "sodium")
            if "Within 10 %" in each
        ]
        for mol_dm3 in (0.40, 0.48, 0.54, 0.60)
    }
    assert [len(found) for found in remarks.values()] == [0, 1, 1, 0]
    assert "from about 0.51 mol/dm³ on it is also Causes severe skin burns and eye damage (H314)" in remarks[0.48][0]


def test_an_alkali_is_standardised_and_an_acid_by_it() -> None:
    """1.633 g of potassium hydrogenphthalate (204.22 g/mol) take 20 cm³ of 0.4 mol/dm³; worked by hand."""
    alkali = lines_of(PLAN, "To know it better: standardise the sodium hydroxide")
    assert alkali[0].startswith("Weigh about 1.63 g of dry potassium hydrogenphthalate")
    assert "4.897 × mass in g ÷ volume in cm³" in alkali[3]
    assert "about 0.4 % (± 0.002 mol/dm³" in alkali[4]
    heads = [each["head"] for each in sheet(preparation(plan_from(PLAN), 15))["sections"]]
    better = [each for each in heads if each.startswith("To know it better")]
    assert [each.rpartition("the ")[2] for each in better] == ["sodium hydroxide", "nitric acid"]


def test_how_well_a_strength_is_known_without_a_titration_is_told() -> None:
    assert any("known to about 2 % (± 0.008 mol/dm³" in each for each in lines_of(PLAN, "sodium hydroxide"))
    own = preparation(plan_from(PLAN), 15, {"nitric acid": Stock(2.0, SCHOOLS_OWN)})
    (acid,) = [each for each in sheet(own)["sections"] if each["head"].startswith("nitric acid")]
    assert any("as well as that of your own bottle" in each for each in acid["lines"])


@pytest.mark.parametrize("benches", [1, 15, 100])
def test_the_vessels_hold_what_is_made(benches: int) -> None:
    answer = preparation(plan_from(PLAN), benches)
    for each in answer["solutions"]:
        assert each["vessels"] * each["vessel_cm3"] >= each["make_cm3"]
        assert (each["vessels"] - 1) * each["vessel_cm3"] < each["make_cm3"]


@given(st.integers(1, 40), st.floats(0.05, 0.9))
def test_an_amount_is_written_alike_wherever_it_stands(benches: int, mol_dm3: float) -> None:
    acid = {**PLAN["acid"], "concentration_mol_dm3": mol_dm3}
    answer = preparation(plan_from({**PLAN, "acid": acid}), benches)
    for made, section in zip(answer["solutions"], sheet(answer)["sections"], strict=False):
        amount = amount_text(made["mass_g"] or made["stock_cm3"] or 0.0)
        assert f"from {amount} " in section["head"]
        assert [each for each in section["steps"] if f"Add {amount} " in each]
