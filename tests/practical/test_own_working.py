"""The calculation from the students' own reading: every line follows from the numbers that the lines above show."""

import re
from typing import Any

import pytest

from station.chemistry.figures import figures
from station.practical.course import MeanPoint
from station.practical.events.cup import PlacedLine
from station.practical.kinds import plan_from
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.kind import kind_of
from station.practical.state import OwnReading
from station.practical.view import view
from tests.practical.test_group import LINE, done
from tests.practical.test_steps import arithmetic

ACID = {"name": "hydrochloric acid", "volume_cm3": 25.0}
ALKALI = {"name": "sodium hydroxide", "concentration_mol_dm3": 0.4}
PORTIONS = {"volume_cm3": 4.0, "count": 10}
START: list[MeanPoint] = [{"portion": 0, "volume_cm3": 0.0, "temperature_c": 20.1, "count": 3}]


def worked(values: dict[str, Any], division_c: float = 0.0625, **read: Any) -> list[OwnStep]:
    plan = plan_from(values)
    own = OwnReading(read.get("cm3"), read.get("change_c"), read.get("before"), read.get("after"), 0.0)
    return kind_of(plan).own_working(plan, own, START, division_c)


def expect_followed(steps: list[OwnStep]) -> None:
    """Each result is that of its own working, to the last figure shown; each line has units."""
    assert steps
    for step in steps:
        comes_to = arithmetic(dict(step))
        decimals = len(step["written"].partition(".")[2])
        if comes_to is not None:
            assert float(step["written"]) == pytest.approx(comes_to, abs=0.5001 * 10**-decimals), step
        assert step["unit"]
        numbers = re.findall(r"(?<![\w.)])\d+(?:\.\d+)?(?: [a-zA-Z°(/³]+)?", step["working"].partition("=")[2])
        bare = {each for each in numbers if re.fullmatch(r"[\d.]+", each)} - {"1000", "100", "2", "1"}
        assert not bare, (bare, step["working"])
    for step in steps[1:]:
        earlier = {each["written"].lstrip("-") for each in steps[: steps.index(step)]}
        assert step["unit"] not in ("mol/dm³", "J", "kJ/mol") or any(each in step["working"] for each in earlier)


def test_a_volume_becomes_a_concentration_in_school_figures() -> None:
    """IB 17M.3.sl.TZ1.3: 25.0 cm³ of acid take 35 cm³ of 1.00 mol/dm³ alkali, which is 1.40 mol/dm³."""
    alkali = {**ALKALI, "concentration_mol_dm3": 1.0}
    steps = worked({"acid": ACID, "alkali": alkali, "portions": PORTIONS}, cm3=35.0)
    assert [step["written"] for step in steps] == ["0.0350", "1.40"]
    assert steps[0]["working"] == "n = 1.00 mol/dm³ × 35.0 cm³ ÷ 1000"
    assert steps[1]["working"] == "c = 0.0350 mol ÷ 25.0 cm³ × 1000"
    expect_followed(steps)


def test_own_lines_lead_to_the_enthalpy() -> None:
    """OpenStax Chemistry 2e, 5.2, 5.3: 50.0 + 50.0 cm³ of 1.00 mol/dm³, 22.0 to 28.9 °C: -58 kJ/mol."""
    before: PlacedLine = {"slope_c_cm3": 0.176, "intercept_c": 20.1}
    plan = {
        "acid": {**ACID, "volume_cm3": 50.0},
        "alkali": {**ALKALI, "concentration_mol_dm3": 1.0},
        "portions": {"volume_cm3": 10.0, "count": 10},
    }
    # The book's change of 6.9 °C is to be the own lines', from a start at 20.1 °C.
    before = {**before, "slope_c_cm3": 6.9 / 50.0}
    steps = worked(plan, cm3=50.0, before=before, after={"slope_c_cm3": -0.05, "intercept_c": 30.0})
    expect_followed(steps)
    assert [step["unit"] for step in steps] == ["mol", "mol/dm³", "°C", "g", "J", "mol", "kJ/mol", "%"]
    assert steps[-2]["written"] == "-57.7"
    assert steps[-1]["written"] == "0.9", "percentages have one or two figures"


def test_two_protons_have_a_line_of_their_own() -> None:
    steps = worked({"acid": {**ACID, "name": "sulfuric acid"}, "alkali": ALKALI, "portions": PORTIONS}, cm3=25.0)
    assert [step["written"] for step in steps] == ["0.0100", "0.00500", "0.200"]


def test_a_change_of_temperature_becomes_an_enthalpy() -> None:
    """A solid that cools the water, and two liquids: 50 + 50 cm³ of 1.0 mol/dm³ that rise by 6.9 °C: -58 kJ/mol."""
    solid = {"name": "ammonium chloride", "mass_g": 5}
    cooled = worked({"kind": "once", "liquid": {"name": "water", "volume_cm3": 50}, "addition": solid}, change_c=-5.9)
    expect_followed(cooled)
    assert float(cooled[-2]["written"]) > 0, "heat is taken in"
    liquids = {
        "kind": "once",
        "liquid": {**ACID, "volume_cm3": 50, "concentration_mol_dm3": 1.0},
        "addition": {**ALKALI, "volume_cm3": 50, "concentration_mol_dm3": 1.0},
    }
    warmed = worked(liquids, change_c=6.9)
    expect_followed(warmed)
    assert next(step["written"] for step in warmed if step["unit"] == "kJ/mol") == "-57.7"


def test_nothing_read_is_nothing_worked_out() -> None:
    assert worked({"acid": ACID, "alkali": ALKALI, "portions": PORTIONS}) == []


def test_the_working_comes_with_the_results() -> None:
    walk = done(results="when shown")
    walk.act("own_reading", end_point_cm3=7.5, before=LINE, after={**LINE, "slope_c_cm3": -0.1})
    assert view(walk.state, walk.time_s)["own_working"] == []


@pytest.mark.parametrize(
    ("value", "text"),
    [(25, "25.0"), (0.4, "0.400"), (23.754, "23.75"), (0.0095, "0.00950"), (621.53, "621.5"), (-65.4, "-65.4")],
)
def test_numbers_have_three_or_four_figures(value: float, text: str) -> None:
    assert figures(value) == text


def test_a_half_is_rounded_up() -> None:
    assert [figures(value, 3, 3) for value in (-52.25, 0.3625, 1.005)] == ["-52.3", "0.363", "1.01"]
