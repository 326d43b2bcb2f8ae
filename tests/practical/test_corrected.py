"""Corrections travel with their uncertainty: readings, results, files. Raw stays raw; offsets cancel, slopes do not."""

from collections.abc import Callable
from dataclasses import replace
from math import exp, hypot
from typing import Any

import pytest

from station.analysis.probe.correction import UNCHECKED_C
from station.practical import events as e
from station.practical.checks.correction import ProbeUsed, corrections_view, used_in
from station.practical.dataset import Known, RepeatData, from_question, question_for
from station.practical.kinds import plan_from
from station.practical.kinds.portions.methods import heat_setup, reacting_pair
from station.practical.results import results
from station.practical.view import view
from station.record.exchange import readings_text, record_text
from station.record.exchange_in import ExchangeError, read_exchange
from station.record.spreadsheet.sheets import record_sheets
from tests.practical.checking import Checking
from tests.practical.walk import portions_plan

TRUE_C = (20.0, 21.2, 22.3, 23.3, 23.0, 22.7, 22.4)


def practical(prepare: Callable[[Checking], None], said: Callable[[float], float]) -> Checking:
    """One repeat on a probe that says `said(truth)`."""
    walk = Checking(repeats=1, portions={"volume_cm3": 3, "count": 6})
    prepare(walk)
    walk.act("begin")
    before_c = TRUE_C[0]
    walk.run(50, lambda _: said(TRUE_C[0]))
    for portion, true_c in enumerate(TRUE_C[1:], 1):
        walk.act("portion_added", portion=portion)
        while walk.state.poured == portion and walk.state.prompted is None and walk.state.running is not None:
            seconds = walk.time_s - walk.state.repeats[0].portions[-1].time_s
            cup_c = true_c + (before_c - true_c) * exp(-(seconds + 1.0) / 6.0)
            walk.run(1, lambda _, cup_c=cup_c: said(cup_c))  # type: ignore[misc]
        before_c = true_c
    return walk


def iced(walk: Checking) -> None:
    walk.ice(0.5)
    walk.run(8, lambda _: 20.5)


def lined(walk: Checking) -> None:
    walk.check("comparison", u_reference_c=0.05)
    walk.step("in")
    for true_c in (12.0, 20.0, 28.0, 36.0):
        walk.run(60, lambda _, true_c=true_c: 0.5 + 1.01 * true_c)  # type: ignore[misc]
        walk.step("compared", reference_c=true_c)
    walk.staff("check_save")
    walk.run(8, lambda _: 20.7)


def nothing(_: Checking) -> None:
    pass


@pytest.fixture(scope="module")
def with_ice() -> Checking:
    return practical(iced, lambda true_c: true_c + 0.5)


@pytest.fixture(scope="module")
def with_line() -> Checking:
    return practical(lined, lambda true_c: 0.5 + 1.01 * true_c)


@pytest.fixture(scope="module")
def unchecked() -> Checking:
    return practical(nothing, lambda true_c: true_c)


def answer(walk: Checking) -> dict[str, Any]:
    return results(*from_question(question_for(walk.state)))


def test_readings_are_corrected_and_samples_in_the_journal_are_not(with_line: Checking) -> None:
    readings = with_line.state.repeats[0].readings
    for reading, true_c in zip(readings, TRUE_C, strict=True):
        assert reading.temperature_c == pytest.approx(true_c, abs=0.13)
    raw = [each.event for each in with_line.happened if isinstance(each.event, e.SampleTaken)]
    assert all(each.temperature_c is None or (each.temperature_c * 16).is_integer() for each in raw)
    for sample in with_line.state.repeats[0].samples:
        assert sample.said_c is not None
        assert sample.said_c * 16 == pytest.approx(round(sample.said_c * 16), abs=0.01)


def test_the_view_and_the_results_say_what_was_used_and_what_remains(
    with_ice: Checking, with_line: Checking, unchecked: Checking
) -> None:
    for walk, check, words in (
        (with_ice, "ice", "both readings shift equally; the slope was not checked"),
        (with_line, "comparison", "remains and counts in the enthalpy"),
        (unchecked, None, "was not checked"),
    ):
        (told,) = view(walk.state, walk.time_s)["corrections"]
        assert told["repeats"] == [1]
        assert words in told["text"]
        found = answer(walk)
        assert found["mean"]["probe"]["check"] == check
        assert found["repeats"][0]["probe"]["text"] == told["text"]
    assert answer(with_ice)["mean"]["probe"]["correction_c"] == pytest.approx(-0.5, abs=0.03)


def test_the_crossings_temperature_gets_the_probes_uncertainty(with_ice: Checking, unchecked: Checking) -> None:
    corrected, plain = (answer(walk)["mean"]["straight_lines"] for walk in (with_ice, unchecked))
    assert corrected["u_temperature_c"] < UNCHECKED_C < plain["u_temperature_c"]
    # The same cup: the crossing is where it was, its temperature too.
    assert corrected["end_point_cm3"] == pytest.approx(plain["end_point_cm3"], abs=0.25)
    assert corrected["temperature_c"] == pytest.approx(plain["temperature_c"], abs=0.2)


def test_an_offset_leaves_the_heat_balance_alone_and_a_slope_changes_the_enthalpy_and_its_u() -> None:
    plan = portions_plan()
    pair = reacting_pair(plan)

    def relative(known: Known) -> float:
        return heat_setup(plan, pair, 0.4, known, None).u_heat_capacity

    assert relative(Known(u_probe_c=0.3)) == relative(Known())
    assert relative(Known(u_slope=0.02)) == pytest.approx(hypot(relative(Known()), 0.02))


def test_a_typed_temperature_of_the_alkali_does_not_share_the_probes_offset() -> None:
    plan = portions_plan()
    pair = reacting_pair(plan)

    def u_alkali_c(known: Known) -> float:
        alkali_c = heat_setup(plan, pair, 0.4, known, None).alkali_c
        assert alkali_c is not None
        return alkali_c.u

    assert u_alkali_c(Known(20.0, 0.05, alkali_typed=False, u_probe_c=0.3)) == pytest.approx(0.05)
    assert u_alkali_c(Known(20.0, 0.05, alkali_typed=True, u_probe_c=0.3)) == pytest.approx(hypot(0.05, 0.3))


def test_files_carry_the_correction_and_analyse_says_the_same(with_line: Checking, unchecked: Checking) -> None:
    text = record_text(with_line.state)
    header, first = text.splitlines()[:2]
    assert header == "repeat,time_s,temperature_c,portion_cm3,correction_c,u_correction_c,u_slope,check,checked_on"
    cells = first.split(",")
    raw_c = float(cells[2]) - float(cells[4])
    assert raw_c * 16 == pytest.approx(round(raw_c * 16), abs=0.01)
    (back,) = read_exchange(text, "record.csv")
    used = used_in(with_line.state.repeats[0])
    assert back.probe is not None
    assert used is not None
    assert back.probe.check == "comparison"
    assert back.probe.u_slope == pytest.approx(used.u_slope, abs=1e-6)
    assert back.probe.correction_c == pytest.approx(used.correction_c, abs=0.05)
    assert "comparison" in readings_text(with_line.state).splitlines()[1]
    assert record_text(unchecked.state).splitlines()[0] == "repeat,time_s,temperature_c,portion_cm3"
    comma = record_text(with_line.state, decimal_comma=True).splitlines()[1]
    assert "." not in comma


def test_a_correction_of_no_known_kind_in_a_file_is_refused_at_its_cell(with_line: Checking) -> None:
    text = record_text(with_line.state).replace(',"comparison",', ',"guess",')
    with pytest.raises(ExchangeError, match="column check"):
        read_exchange(text, "record.csv")


def test_the_spreadsheet_has_the_raw_samples_and_a_sheet_of_the_probe(with_ice: Checking) -> None:
    happened = [each for each in with_ice.happened if not isinstance(each.event, e.SampleTaken)]
    sheets = {sheet.name: list(sheet.rows) for sheet in record_sheets("Bench", with_ice.state, None, happened)}
    assert sheets["Probe"][0][:2] == (1, "ice point")
    sample = sheets["Samples"][-1]
    assert isinstance(sample[2], float)
    assert isinstance(sample[4], float)
    assert sample[4] - sample[2] == pytest.approx(0.5, abs=0.03)
    assert any("probe check 1 saved" in row for row in sheets["Notes"])


def test_repeats_that_were_not_corrected_alike_are_flagged(with_ice: Checking) -> None:
    state = with_ice.state
    first = state.repeats[0]
    both = replace(state, repeats=(first, replace(first, repeat=2, corrected=(None,))))
    assert any("not corrected alike" in note for note in answer_of(both)["mean"]["notes"])
    changed = replace(state, repeats=(replace(first, corrected=(None, first.corrected[0])),))
    assert any("changed during repeat 1" in note for note in answer_of(changed)["repeats"][0]["notes"])
    assert [each["repeats"] for each in corrections_view(both)] == [[1], [2]]


def answer_of(state: Any) -> dict[str, Any]:
    return results(*from_question(question_for(state)))


def test_one_mixing_says_it_too() -> None:
    plan = plan_from(
        {
            "kind": "once",
            "liquid": {"name": "water", "volume_cm3": 50.0},
            "addition": {"name": "potassium chloride", "mass_g": 4.0},
        }
    )
    samples = [(float(t), 21.0 if t < 120 else 18.0 + 3.0 * exp(-(t - 120) / 8.0)) for t in range(420)]
    used = ProbeUsed("comparison", "2026-11-12", 20.0, -0.3, 0.05, 0.03)
    plain, slope = (
        results(plan, [RepeatData(1, (), tuple(samples), ((120.0, 0.0, False),), probe=probe)])["mean"]
        for probe in (None, used)
    )
    assert slope["probe"]["check"] == "comparison"
    assert "used as measured" in plain["probe"]["text"], "nothing tells of its probe"
    assert slope["straight_lines"]["u_heat_j"] > plain["straight_lines"]["u_heat_j"]
    assert slope["straight_lines"]["change_c"] == plain["straight_lines"]["change_c"]
