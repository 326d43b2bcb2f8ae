"""Results of whole practicals: what is said beside the numbers, and what is refused."""

import math
import random
from collections.abc import Sequence
from typing import Any

import pytest

from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.kinds import plan_from
from station.practical.replay import with_readings
from station.practical.results import results
from station.record.exchange_in import read_exchange
from tests.records import record

ACID = {"name": "nitric acid", "volume_cm3": 25.0}
ALKALI = {"name": "potassium hydroxide", "concentration_mol_dm3": 0.4}
PORTIONS = {"volume_cm3": 4.0, "count": 10, "u_volume_cm3": 0.02}


def of(made: Any, known: Known | None = None, **changes: Any) -> dict[str, Any]:
    plan = plan_from({"acid": ACID, "alkali": ALKALI, "portions": PORTIONS, **changes})
    return results(plan, with_readings(plan, read_exchange(made.csv, "made.csv")), known or Known())


def notes(answer: dict[str, Any]) -> str:
    return " ".join(note for each in (*answer["repeats"], answer["mean"]) for note in each["notes"])


@pytest.fixture(scope="module")
def made() -> Any:
    return record(seed=4)


def test_a_sound_practical_needs_no_remark(made: Any) -> None:
    assert notes(of(made, surroundings={"room_c": 21.0})) == ""


def test_a_known_concentration_that_contradicts_the_end_point_is_said(made: Any) -> None:
    answer = of(made, acid={**ACID, "concentration_mol_dm3": 0.6})
    assert "The concentrations say 37.5 cm³" in notes(answer)
    assert answer["mean"]["heat_balance"]["end_point_cm3"] == pytest.approx(made.end_point_cm3, abs=0.5)


def test_exchanged_bottles_are_guessed(made: Any) -> None:
    expected = made.end_point_cm3
    exchanged = 25.0**2 / expected * 0.4 / 25.0
    answer = of(made, acid={**ACID, "concentration_mol_dm3": exchanged * 1.0})
    found = notes(answer)
    assert ("exchanged" in found) == (abs(expected - 25.0**2 / expected) > 2.6)


def test_a_probe_far_from_the_room_is_said(made: Any) -> None:
    assert "but the room 9.0 °C" in notes(of(made, surroundings={"room_c": 9.0}))
    assert "but the alkali 35.0 °C" in notes(of(made, Known(35.0, 0.1)))


def test_a_rise_beyond_what_the_reagents_can_give_is_said(made: Any) -> None:
    weak = {**ALKALI, "concentration_mol_dm3": 0.05}
    assert "these reagents can give" in notes(of(made, alkali=weak))


def test_reagents_in_several_steps_or_with_gas_are_refused_by_the_heat_balance_only(made: Any) -> None:
    for acid, alkali, says in (
        ("citric acid", "potassium hydroxide", "three"),
        ("nitric acid", "sodium carbonate", "carbon dioxide"),
        ("sodium hydroxide", "nitric acid", "swapped"),
    ):
        answer = of(made, acid={**ACID, "name": acid}, alkali={**ALKALI, "name": alkali})
        assert answer["mean"]["heat_balance"] is None
        assert says in answer["mean"]["refused"]["heat_balance"]
        assert answer["mean"]["straight_lines"] is not None


def test_repeats_that_disagree_are_flagged_and_kept(made: Any) -> None:
    other = record(seed=9, repeats=1)
    plan = plan_from({"acid": ACID, "alkali": ALKALI, "portions": PORTIONS})
    mixed = [*read_exchange(made.csv, "a")[:1], *_renumbered(read_exchange(other.csv, "b"), 2)]
    answer = results(plan, with_readings(plan, mixed))
    assert abs(made.end_point_cm3 - other.end_point_cm3) > 1.0
    assert "differ by" in notes(answer)
    assert len(answer["repeats"]) == 2


def test_a_portion_nobody_is_sure_of_widens_and_does_not_mislead(made: Any) -> None:
    plan = plan_from({"acid": ACID, "alkali": ALKALI, "portions": PORTIONS})
    (first, _) = with_readings(plan, read_exchange(made.csv, "a"))
    doubted = RepeatData(
        1,
        tuple(row for row in first.readings if row.portion != 3),
        first.samples,
        tuple((t, v, number == 3) for number, (t, v, _) in enumerate(first.pours, 1)),
    )
    sure, unsure = (results(plan, [each])["mean"]["heat_balance"] for each in (first, doubted))
    assert unsure["u_end_point_cm3"] > sure["u_end_point_cm3"]
    assert unsure["end_point_cm3"] == pytest.approx(made.end_point_cm3, abs=4 * unsure["u_end_point_cm3"])


def test_mixed_once_gives_change_heat_and_enthalpy_by_both_methods() -> None:
    answer = results(_once_plan(), [_once(-4.0, 150.0)])
    for method in ("straight_lines", "heat_balance"):
        found = answer["mean"][method]
        assert found["change_c"] == pytest.approx(-4.0, abs=0.1)
        assert found["heat_j"] < 0 < found["enthalpy_kj_mol"]
    # 54 g of a 7.4 % KCl solution at about 3.79 J/(g K) (Laliberté 2009), and the cup's 5 J/K.
    assert answer["mean"]["heat_balance"]["heat_j"] == pytest.approx(-4.0 * (54 * 3.79 + 5), rel=0.02)


def test_mixed_once_is_refused_with_a_reason_before_it_is_mixed() -> None:
    repeat = _once(-4.0, 150.0)
    answer = results(_once_plan(), [RepeatData(1, (), repeat.samples[:100], ())])
    assert answer["mean"]["heat_balance"] is None
    assert "Mixing" in answer["mean"]["refused"]["heat_balance"]


def test_a_warmed_pair_of_solutions_forms_water() -> None:
    plan = plan_from(
        {
            "kind": "once",
            "liquid": {"name": "hydrochloric acid", "volume_cm3": 50, "concentration_mol_dm3": 1.0},
            "addition": {"name": "sodium hydroxide", "volume_cm3": 50, "concentration_mol_dm3": 1.0},
            "cup": {"heat_capacity_j_k": 0.0, "u_heat_capacity_j_k": 0.1},
        }
    )
    # OpenStax, Chemistry 2e, 5.2 and 5.3: 50.0 cm³ and 50.0 cm³ of 1.00 mol/dm³, 22.0 to 28.9 °C, −58 kJ/mol with
    # 100 g at 4.184 J/(g K); the salt solution's own heat capacity makes it about 1 % less.
    found = results(plan, [_once(6.9, 60.0, start_c=22.0)])["mean"]["heat_balance"]
    assert found["enthalpy_kj_mol"] == pytest.approx(-57.2, abs=1.0)


def _once_plan() -> Any:
    return plan_from(
        {
            "kind": "once",
            "liquid": {"name": "water", "volume_cm3": 50},
            "addition": {"name": "potassium chloride", "mass_g": 4.0},
        }
    )


def _once(change_c: float, mixed_s: float, start_c: float = 21.0) -> RepeatData:
    draw = random.Random(3)
    samples, shown_c = [], start_c
    for second in range(int(mixed_s) + 320):
        after_s = max(second - mixed_s, 0.0)
        cup_c = start_c + change_c * (1 - math.exp(-after_s / 4.0)) * math.exp(-after_s * 2e-4)
        shown_c += (cup_c - shown_c) * (1 - math.exp(-1 / 5))
        samples.append((float(second), round((shown_c + draw.gauss(0, 0.02)) * 16) / 16))
    reading = ReadingRow(0, 0.0, start_c)
    return RepeatData(1, (reading,), tuple(samples), ((mixed_s, 0.0, False),))


def _renumbered(repeats: Sequence[RepeatData], number: int) -> list[RepeatData]:
    return [RepeatData(number, each.readings, each.samples, each.pours) for each in repeats]
