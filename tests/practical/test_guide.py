"""The guide before the start: labels that fit the plan, cautions that fit the reagents, nothing that staff keep."""

from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.reagents import REAGENTS, find_reagent
from station.practical.guide import guide
from station.practical.kinds import plan_from
from station.practical.kinds.portions.plan import LEAST_POINTS, PortionsPlan, most_mol_dm3
from station.practical.predict import predict
from station.practical.prepare.amounts import preparation
from station.practical.prepare.sheet import sheet
from station.practical.safety import hazards_of, safety_warnings

SUBSTANCE = {
    "name",
    "amount",
    "concentration_mol_dm3",
    "pictograms",
    "signal",
    "hazards",
    "basis",
    "assumed_mol_dm3",
}


def portions(acid: dict[str, Any] | None = None, alkali: dict[str, Any] | None = None) -> PortionsPlan:
    made = plan_from(
        {
            "acid": {"name": "nitric acid", "volume_cm3": 25.0, **(acid or {})},
            "alkali": {"name": "potassium hydroxide", "concentration_mol_dm3": 0.4, **(alkali or {})},
            "portions": {"volume_cm3": 4.0, "count": 10},
        }
    )
    assert isinstance(made, PortionsPlan)
    return made


def once(liquid: dict[str, Any], addition: dict[str, Any]) -> Any:
    return plan_from({"kind": "once", "liquid": {"volume_cm3": 50.0, **liquid}, "addition": addition})


def test_what_is_in_the_cup_and_what_is_added() -> None:
    found = guide(portions(acid={"concentration_mol_dm3": 0.4}))
    acid, alkali = found["in_cup"][0], found["added"][0]
    assert (acid["name"], acid["amount"], acid["concentration_mol_dm3"]) == ("nitric acid", "25 cm³", 0.4)
    assert (acid["pictograms"], acid["signal"]) == (["GHS07"], "Warning")
    assert acid["hazards"][0] == {"code": "H315", "text": "Causes skin irritation"}
    assert "2.49 % by mass" in acid["basis"]
    assert "Annex VI" in acid["basis"]
    assert acid["assumed_mol_dm3"] is None
    assert alkali["amount"] == "10 portions of 4 cm³"
    assert (alkali["pictograms"], alkali["signal"]) == (["GHS05"], "Danger")
    assert set(acid) == set(alkali) == SUBSTANCE


def test_what_is_not_classified_is_called_so_and_still_has_the_usual_cautions() -> None:
    found = guide(
        portions(
            acid={"name": "hydrochloric acid", "concentration_mol_dm3": 0.5},
            alkali={"name": "sodium hydroxide", "concentration_mol_dm3": 0.1},
        )
    )
    for each in (*found["in_cup"], *found["added"]):
        assert (each["hazards"], each["pictograms"], each["signal"]) == ([], [], None)
        assert each["basis"].startswith("Not classified as hazardous at this concentration")
    assert "Wear splash-proof eye protection." in found["cautions"]
    assert "Never pipette by mouth." in found["cautions"]
    assert found["first"] == "Your school's risk assessment and your teacher come first."
    assert found["clearing_up"][-1] == "Wash your hands."


def test_an_unknown_acid_is_taken_as_strong_as_the_plan_could_find_it() -> None:
    # Three readings after it: 8 × 4 cm³ of 0.4 mol/dm³ neutralise 25 cm³ of 0.512 mol/dm³; with two protons, 0.256.
    assert most_mol_dm3(portions()) == 0.512
    assert most_mol_dm3(portions(acid={"name": "sulfuric acid"})) == 0.256
    found = guide(portions())["in_cup"][0]
    assert (found["concentration_mol_dm3"], found["assumed_mol_dm3"]) == (None, 0.512)
    assert "assumes 0.512 mol/dm³" in found["basis"]


def test_the_most_that_a_plan_can_find_is_one_number_wherever_it_is_told() -> None:
    plan = portions()
    told = plan.range_mol_dm3()
    assert told is not None
    promised = predict(plan, compare=False)
    shown = preparation(plan, 3)
    (lines,) = [each["lines"] for each in sheet(shown)["sections"] if each["head"] == plan.acid.name]
    assert guide(plan)["in_cup"][0]["assumed_mol_dm3"] == told[1] == promised["acid"]["range_mol_dm3"][1] == 0.512
    assert hazards_of(plan)[0]["concentration_mol_dm3"] == shown["unknown"][0]["most_mol_dm3"] == 0.512
    assert [each for each in lines if "0.512 mol/dm³" in each] == lines[1:]


def test_staff_hear_where_they_made_up_more_than_the_plan_can_find() -> None:
    warned = [each["id"] for each in safety_warnings(portions(acid={"prepared_mol_dm3": 0.6}))]
    assert warned == ["beyond-plan"]
    assert safety_warnings(portions(acid={"prepared_mol_dm3": 0.5})) == []


def test_what_staff_prepared_leaves_no_trace() -> None:
    unknown = guide(portions())
    for prepared in (0.05, 0.31, 0.64, 2.0):
        assert guide(portions(acid={"prepared_mol_dm3": prepared})) == unknown


@given(st.floats(0.01, 20.0), st.integers(1, 60), st.floats(0.5, 50.0), st.floats(5.0, 500.0))
def test_the_assumed_concentration_is_at_most_what_all_portions_neutralise(
    alkali_mol_dm3: float, count: int, portion_cm3: float, acid_cm3: float
) -> None:
    made = plan_from(
        {
            "acid": {"name": "hydrochloric acid", "volume_cm3": acid_cm3},
            "alkali": {"name": "sodium hydroxide", "concentration_mol_dm3": alkali_mol_dm3},
            "portions": {"volume_cm3": portion_cm3, "count": count},
        }
    )
    assert isinstance(made, PortionsPlan)
    most = alkali_mol_dm3 * count * portion_cm3 / acid_cm3
    found = made.range_mol_dm3() if count >= 2 * (LEAST_POINTS - 1) else (0.0, most)
    assert found is not None
    assert most_mol_dm3(made) == pytest.approx(found[1], rel=0.005)
    assert most_mol_dm3(made) <= most * 1.005


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda each: each.name)
def test_every_reagent_can_be_weighed_in_or_poured(reagent: Any) -> None:
    solid = guide(once({"name": "water"}, {"name": reagent.name, "mass_g": 3.0}))
    liquid = guide(once({"name": "water"}, {"name": reagent.name, "volume_cm3": 20, "concentration_mol_dm3": 0.5}))
    assert solid["in_cup"][0]["name"] == "water"
    assert solid["in_cup"][0]["hazards"] == []
    assert solid["added"][0]["amount"] == "3 g"
    assert liquid["added"][0]["amount"] == "20 cm³"
    assert set(solid["added"][0]) == set(liquid["added"][0]) == SUBSTANCE


def test_cautions_fit_the_reagents() -> None:
    hot = guide(once({"name": "water"}, {"name": "calcium chloride", "mass_g": 5}))["cautions"]
    cold = guide(once({"name": "water"}, {"name": "ammonium nitrate", "mass_g": 5}))["cautions"]
    fizz = guide(once({"name": "citric acid", "concentration_mol_dm3": 0.5}, {"name": "baking soda", "mass_g": 3}))[
        "cautions"
    ]
    assert any("hot" in each for each in hot)
    assert not any("hot" in each for each in cold)
    assert any("flames" in each for each in cold)
    assert any("spatula" in each for each in cold)
    assert any("No lid: a gas forms." in each for each in fizz)
    assert not any("No lid" in each for each in hot)


def test_copper_and_barium_do_not_go_down_the_sink() -> None:
    copper = guide(once({"name": "water"}, {"name": "copper sulfate", "mass_g": 4}))
    barium = guide(portions(alkali={"name": "barium hydroxide", "concentration_mol_dm3": 0.1}))
    for found in (copper, barium):
        assert any("out of the sink" in each for each in found["clearing_up"])
    assert not any("out of the sink" in each for each in guide(portions())["clearing_up"])


def test_reagents_that_do_not_react_still_get_their_guide() -> None:
    found = guide(portions(acid={"name": "sodium chloride"}, alkali={"name": "sodium hydroxide"}))
    assert found["in_cup"][0]["assumed_mol_dm3"] == 0.64, "what all portions would neutralise"
    assert find_reagent(found["in_cup"][0]["name"]).name == "sodium chloride"
