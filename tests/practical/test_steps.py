"""Worked lines: each line's arithmetic, the result's own numbers, and printed worked examples."""

import re
from collections.abc import Sequence
from typing import Any

import pytest

from station.chemistry.reagents import find_reagent
from station.practical.dataset import ReadingRow, RepeatData, accepted_solution
from station.practical.kinds import plan_from
from station.practical.kinds.once.contents import contents_of
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.once.working import once_worked
from station.practical.kinds.own_working import PROBE_C
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.kinds.portions.working import division_of, portions_worked
from station.practical.replay import with_readings
from station.practical.results import results
from station.record.exchange_in import read_exchange
from tests.records import record

UNITS = r"J/\((?:g|cm³) °C\)|g/cm³|mol/dm³|g/mol|kJ/mol|J/°C|cm³|mol|°C|g|J"
METHODS = ("straight_lines", "heat_balance")


def arithmetic(step: dict[str, Any]) -> float | None:
    """What the right-hand side of a working comes to; None where it is no sum (the smaller of two)."""
    sum_ = re.sub(UNITS, "", step["working"].partition("=")[2]).replace("×", "*").replace("÷", "/")
    return float(eval(sum_)) if re.fullmatch(r"[-+*/(). 0-9e]+", sum_) else None


def by_unit(steps: Sequence[dict[str, Any]], unit: str) -> list[dict[str, Any]]:
    return [each for each in steps if each["unit"] == unit]


def portions(acid_cm3: float, alkali_mol_dm3: float, **changes: Any) -> PortionsPlan:
    made = plan_from(
        {
            "acid": {"name": "hydrochloric acid", "volume_cm3": acid_cm3, **changes.pop("acid", {})},
            "alkali": {
                "name": "sodium hydroxide",
                "concentration_mol_dm3": alkali_mol_dm3,
                **changes.pop("alkali", {}),
            },
            "portions": {"volume_cm3": 5.0, "count": 14},
            **changes,
        }
    )
    assert isinstance(made, PortionsPlan)
    return made


def once(liquid: dict[str, Any], addition: dict[str, Any]) -> OncePlan:
    made = plan_from(
        {
            "kind": "once",
            "liquid": liquid,
            "addition": addition,
            "cup": {"heat_capacity_j_k": 0.0, "u_heat_capacity_j_k": 0.0},
        }
    )
    assert isinstance(made, OncePlan)
    return made


def two_lines(crossing_cm3: float, start_c: float, top_c: float, step_cm3: float = 5.0) -> tuple[ReadingRow, ...]:
    """Readings on two straight lines that cross at this volume and temperature; the second falls by 0.05 °C/cm³."""
    rising = (top_c - start_c) / crossing_cm3
    count = int(crossing_cm3 / step_cm3) + 6
    volumes = [step_cm3 * k for k in range(count)]
    return tuple(
        ReadingRow(k, v, start_c + rising * v if v <= crossing_cm3 else top_c - 0.05 * (v - crossing_cm3))
        for k, v in enumerate(volumes)
    )


def school(plan: PortionsPlan, rows: tuple[ReadingRow, ...]) -> list[dict[str, Any]]:
    found: list[dict[str, Any]] = portions_worked(plan, rows, None, 0.1)["steps"]["straight_lines"]
    return found


@pytest.fixture(scope="module")
def whole() -> dict[str, Any]:
    made = record(seed=4)
    plan = plan_from(
        {
            "acid": {"name": "nitric acid", "volume_cm3": 25.0},
            "alkali": {"name": "potassium hydroxide", "concentration_mol_dm3": 0.4},
            "portions": {"volume_cm3": 4.0, "count": 10, "u_volume_cm3": 0.02},
        }
    )
    return results(plan, with_readings(plan, read_exchange(made.csv, "made.csv")))


def test_openstax_acid_and_base_the_school_way() -> None:
    """OpenStax Chemistry 2e, 5.2, 5.3: 50.0 + 50.0 cm³ of 1.00 mol/dm³, 22.0 to 28.9 °C: 2.9 kJ, -58 kJ/mol."""
    found = school(portions(50.0, 1.0), two_lines(50.0, 22.0, 28.9))
    assert by_unit(found, "mol/dm³")[0]["value"] == pytest.approx(1.0)
    assert by_unit(found, "g")[0]["value"] == pytest.approx(100.0)
    # The book takes 4.184, schools 4.18.
    assert by_unit(found, "J")[0]["value"] == pytest.approx(2886.96 * 4.18 / 4.184, rel=1e-4)
    assert by_unit(found, "kJ/mol")[0]["value"] == pytest.approx(-57.74 * 4.18 / 4.184, rel=1e-4)


def test_aqa_rise_the_school_way() -> None:
    """AQA A-level mark scheme: 50 + 50 cm³ of 0.500 mol/dm³ rise by 3.42 °C at -57.1 kJ/mol (1.4275 kJ)."""
    found = school(portions(50.0, 0.5), two_lines(50.0, 18.5, 18.5 + 3.415))
    assert by_unit(found, "J")[0]["value"] == pytest.approx(1427.5, rel=1e-3)
    assert by_unit(found, "kJ/mol")[0]["value"] == pytest.approx(-57.1, abs=0.05)


def test_ib_concentration_from_the_crossing() -> None:
    """IB 17M.3.sl.TZ1.3: 25.0 cm³, lines meet at 35 cm³ of 1.00 mol/dm³; 1.40 mol/dm³ for one to one."""
    found = school(portions(25.0, 1.0), two_lines(35.0, 20.0, 29.0))
    assert by_unit(found, "mol/dm³")[0]["value"] == pytest.approx(1.40)


def test_aqa_percentage_of_a_small_change() -> None:
    """AQA A-level mark scheme: ±0.1 °C on each of two readings, ΔT 2.1 °C, is 9.5 %."""
    rows = two_lines(50.0, 19.8, 21.9)
    found: Any = portions_worked(portions(50.0, 0.5), rows, None, 0.2)["steps"]["straight_lines"]
    assert by_unit(found, "%")[0]["value"] == pytest.approx(9.5, abs=0.05)


def test_sulfuric_acid_has_a_line_for_its_two_protons() -> None:
    """AQA-type: 50 cm³ of acid take 50 cm³ of 1.0 mol/dm³ alkali, so the acid is 0.50 mol/dm³."""
    found = school(portions(50.0, 1.0, acid={"name": "sulfuric acid"}), two_lines(50.0, 20.0, 27.0))
    assert [each["text"] for each in found][1] == "amount of sulfuric acid: 1 mol for 2 mol of alkali"
    assert by_unit(found, "mol/dm³")[0]["value"] == pytest.approx(0.50)


def test_a_carbonate_gives_a_concentration_and_no_enthalpy() -> None:
    rows = two_lines(25.0, 20.0, 24.0)
    worked = portions_worked(portions(25.0, 0.5, alkali={"name": "sodium carbonate"}), rows, None, 0.1)
    found = worked["steps"]["straight_lines"]
    assert by_unit(found, "mol/dm³")[0]["value"] == pytest.approx(1.0)
    assert by_unit(found, "kJ/mol") == []
    assert worked["accepted"] is None


@pytest.mark.parametrize("method", METHODS)
def test_every_line_adds_up(whole: dict[str, Any], method: str) -> None:
    for result in (whole["mean"], *whole["repeats"]):
        steps = result["steps"][method]
        assert len(steps) >= 7
        for step in steps:
            assert set(step) == {"text", "formula", "working", "value", "u", "unit"}
            comes_to = arithmetic(step)
            assert comes_to is not None
            # Numbers are put in with two digits of their own u.
            assert comes_to == pytest.approx(step["value"], rel=6e-3, abs=0.2 * step["u"])


def test_the_lines_end_with_the_results_own_numbers(whole: dict[str, Any]) -> None:
    for result in (whole["mean"], *whole["repeats"]):
        balance, heat = result["steps"]["heat_balance"], result["heat_balance"]
        concentration, enthalpy = by_unit(balance, "mol/dm³")[0], by_unit(balance, "kJ/mol")[0]
        assert concentration["value"] == pytest.approx(heat["acid_mol_dm3"], rel=1e-5)
        assert concentration["u"] == pytest.approx(heat["u_acid_mol_dm3"], rel=1e-2)
        assert enthalpy["value"] == pytest.approx(heat["enthalpy_kj_mol"], rel=1e-5)
        assert enthalpy["u"] == pytest.approx(heat["u_enthalpy_kj_mol"], rel=1e-2)
        lines = result["steps"]["straight_lines"]
        crossing_cm3 = result["straight_lines"]["end_point_cm3"]
        assert by_unit(lines, "mol/dm³")[0]["value"] == pytest.approx(0.4 * crossing_cm3 / 25.0, rel=1e-5)
        assert by_unit(lines, "g")[0]["value"] == pytest.approx(25.0 + crossing_cm3, rel=1e-5)


def test_the_rise_without_losses_is_that_of_the_corrected_curve(whole: dict[str, Any]) -> None:
    for result in whole["repeats"]:
        heat = result["heat_balance"]
        volumes, corrected = (heat["corrected"][name] for name in ("volume_cm3", "temperature_c"))
        flat = [t for v, t in zip(volumes, corrected, strict=True) if v > heat["end_point_cm3"]]
        rise = by_unit(result["steps"]["heat_balance"], "°C")[0]
        # One is told for the temperature of the reaction, the other for the start's: 0.4 % for each kelvin.
        assert rise["value"] == pytest.approx(sum(flat) / len(flat) - heat["start_c"], rel=0.02)


def test_lines_are_short_enough_to_send(whole: dict[str, Any]) -> None:
    for result in (whole["mean"], *whole["repeats"]):
        for method in METHODS:
            assert all(len(each["text"]) <= 110 for each in result["steps"][method])


def test_the_accepted_value_stands_beside_it(whole: dict[str, Any]) -> None:
    accepted = whole["mean"]["accepted"]
    assert -60.0 < accepted["enthalpy_kj_mol"] < -55.8
    assert 0 < accepted["u"] < 1.0
    # CODATA (1989): -55.815 kJ/mol at 25 °C and infinite dilution.
    assert "-55.8 kJ/mol at 25 °C in very dilute solution" in accepted["text"]
    assert "School books give -56.1 to -58.0 kJ/mol." in accepted["text"]
    assert "CODATA" in accepted["source"]
    assert "Goldberg" not in accepted["source"]


def test_a_weak_acid_has_its_own_accepted_value() -> None:
    rows = two_lines(25.0, 20.0, 24.0)
    accepted = portions_worked(portions(25.0, 0.5, acid={"name": "ethanoic acid"}), rows, None, 0.1)["accepted"]
    assert accepted["text"].startswith("Weak acid with strong alkali: ")
    assert "School books give -55.2 kJ/mol." in accepted["text"]
    assert "Goldberg" in accepted["source"]


@pytest.mark.fault("no-lines")
def test_readings_that_make_no_lines_have_none() -> None:
    rows = tuple(ReadingRow(k, 5.0 * k, 20.0) for k in range(8))
    assert school(portions(25.0, 0.5), rows) == []
    assert portions_worked(portions(25.0, 0.5), (), None, 0.1)["steps"]["straight_lines"] == []


def test_wrong_reagents_have_no_lines() -> None:
    plan = portions(25.0, 0.5, acid={"name": "sodium chloride"})
    worked = portions_worked(plan, two_lines(25.0, 20.0, 24.0), None, 0.1)
    assert worked == {"steps": {"straight_lines": [], "heat_balance": []}, "accepted": None}


@pytest.mark.parametrize(
    ("temperatures_c", "division_c"),
    [([20.0, 21.0, 24.0], 1.0), ([20.5, 21.0, 24.0], 0.5), ([20.2, 21.0], 0.2), ([20.1, 21.0], 0.1), ([20.03], 0.1)],
)
def test_the_division_is_what_typed_readings_share(temperatures_c: list[float], division_c: float) -> None:
    rows = tuple(ReadingRow(k, 5.0 * k, each) for k, each in enumerate(temperatures_c))
    assert division_of([RepeatData(1, rows)]) == division_c
    assert division_of([RepeatData(1, rows, ((0.0, 20.0),))]) == 0.0625


def test_openstax_ammonium_nitrate_once() -> None:
    """OpenStax Chemistry 2e, 5.2: 3.21 g in 50.0 g of water, 24.9 to 20.3 °C, printed as 1.0 kJ taken in."""
    plan = once({"name": "water", "volume_cm3": 50.0}, {"name": "ammonium nitrate", "mass_g": 3.21})
    change = {"change_c": -4.6, "u_change_c": 0.05, "heat_j": -1000.0, "u_heat_j": 12.0}
    found = {**change, "enthalpy_kj_mol": 24.9, "u_enthalpy_kj_mol": 0.3, "enthalpy_of": "ammonium nitrate dissolved"}
    worked = once_worked(plan, contents_of(plan), {"straight_lines": found, "heat_balance": found}, [], PROBE_C)
    lines = worked["steps"]["straight_lines"]
    heat, enthalpy = by_unit(lines, "J"), by_unit(lines, "kJ/mol")
    assert heat[0]["value"] == pytest.approx(1023.9 * 4.18 / 4.184, rel=1e-3)
    assert all(each["text"].startswith("heat taken in, ") for each in heat)
    # The school's ±: 0.0625 °C of 4.6 °C, 0.5 cm³ of 53.21 g, and for the amount 0.01 g of 3.21 g, added up.
    percent = 100 * (0.0625 / 4.6 + 0.5 / 53.21)
    assert heat[0]["u"] == pytest.approx(heat[0]["value"] * percent / 100, rel=1e-2)
    assert enthalpy[0]["u"] == pytest.approx(enthalpy[0]["value"] * (percent + 100 * 0.01 / 3.21) / 100, rel=1e-2)
    assert enthalpy[0]["value"] == pytest.approx(1.0239 * 4.18 / 4.184 / (3.21 / 80.043), rel=1e-3)
    assert (heat[-1]["value"], heat[-1]["u"]) == (1000.0, 12.0)
    assert (enthalpy[-1]["value"], enthalpy[-1]["u"]) == (24.9, 0.3)
    assert worked["accepted"]["enthalpy_kj_mol"] == 25.69
    assert "Parker" in worked["accepted"]["source"]


def test_openstax_acid_and_base_once() -> None:
    """Same, 5.2, 5.3: poured together at once."""
    plan = once(
        {"name": "hydrochloric acid", "volume_cm3": 50.0, "concentration_mol_dm3": 1.0},
        {"name": "sodium hydroxide", "volume_cm3": 50.0, "concentration_mol_dm3": 1.0},
    )
    found = {"change_c": 6.9, "u_change_c": 0.05, "heat_j": 2850.0, "u_heat_j": 30.0}
    found |= {"enthalpy_kj_mol": -57.0, "u_enthalpy_kj_mol": 0.7}
    lines = once_worked(plan, contents_of(plan), {"straight_lines": found, "heat_balance": None}, [], PROBE_C)["steps"][
        "straight_lines"
    ]
    assert by_unit(lines, "J")[0]["value"] == pytest.approx(2886.96 * 4.18 / 4.184, rel=1e-4)
    assert all("given out" in each["text"] for each in by_unit(lines, "J"))
    assert any("neither is left over" in each["text"] for each in lines)
    assert by_unit(lines, "kJ/mol")[0]["u"] == pytest.approx(57.7 * (0.0625 / 6.9 + 1.0 / 100 + 0.5 / 50), rel=1e-2)
    assert by_unit(lines, "kJ/mol")[0]["value"] == pytest.approx(-57.74 * 4.18 / 4.184, rel=1e-4)
    for step in lines:
        comes_to = arithmetic(step)
        assert comes_to is None or comes_to == pytest.approx(step["value"], rel=6e-3, abs=0.2 * step["u"])


def test_without_an_amount_there_is_a_heat_and_no_enthalpy() -> None:
    plan = once(
        {"name": "water", "volume_cm3": 50.0}, {"name": "nitric acid", "volume_cm3": 5, "concentration_mol_dm3": 2}
    )
    found: dict[str, Any] = {"change_c": 0.5, "u_change_c": 0.05, "heat_j": 110.0, "u_heat_j": 12.0}
    found |= {"enthalpy_kj_mol": None, "u_enthalpy_kj_mol": None}
    worked = once_worked(plan, contents_of(plan), {"straight_lines": found, "heat_balance": found}, [], PROBE_C)
    for method in METHODS:
        assert by_unit(worked["steps"][method], "kJ/mol") == []
        assert by_unit(worked["steps"][method], "J")[-1]["value"] == 110.0
    assert worked["accepted"] is None


def test_a_solid_without_a_known_enthalpy_has_no_accepted_value() -> None:
    assert accepted_solution(find_reagent("calcium carbonate"), 1.0, 50.0) is None
