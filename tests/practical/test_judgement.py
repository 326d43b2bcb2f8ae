"""Own judgement looked back upon: moments on a known trace, what they cost, and what cannot be told."""

import json
from collections.abc import Callable
from dataclasses import replace
from itertools import accumulate
from typing import Any

import pytest

from station.practical.dataset import ReadingRow, RepeatData, repeat_data
from station.practical.kinds import plan_from
from station.practical.kinds.portions.judgement import Moment, judgement, words
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.replay import with_readings
from station.practical.results import results
from station.record.exchange_in import read_exchange
from tests.practical.walk import Walk
from tests.records import record

BEST_CM3 = 20.0


def chosen(prompts: str = "own judgement", count: int = 10) -> PortionsPlan:
    made = plan_from(
        {
            "acid": {"name": "nitric acid", "volume_cm3": 25.0},
            "alkali": {"name": "potassium hydroxide", "concentration_mol_dm3": 0.4},
            "portions": {"volume_cm3": 4.0, "count": count, "u_volume_cm3": 0.02},
            "prompts": prompts,
        }
    )
    assert isinstance(made, PortionsPlan)
    return made


@pytest.fixture(scope="module")
def traces() -> list[RepeatData]:
    return read_exchange(record(seed=4, hold_s=60).csv, "made.csv")


def read_after(repeat: RepeatData, moment_s: Callable[[int], float | None]) -> RepeatData:
    """The repeat as students read it: the newest sample so many seconds after the press of each portion."""
    added_cm3 = list(accumulate((volume for _, volume, _ in repeat.pours), initial=0.0))
    rows, read_s = [], []
    for portion, pressed_s in enumerate([0.0, *(time_s for time_s, _, _ in repeat.pours)]):
        after_s = moment_s(portion)
        if after_s is not None:
            at_s = pressed_s + after_s
            temperature_c = [each for time_s, each in repeat.samples if time_s <= at_s][-1]
            rows.append(ReadingRow(portion, added_cm3[portion], temperature_c))
            read_s.append((portion, at_s))
    return replace(repeat, readings=tuple(rows), read_s=tuple(read_s))


def judged(traces: list[RepeatData], moment_s: Callable[[int], float | None]) -> dict[str, Any]:
    found = judgement(chosen(), [read_after(each, moment_s) for each in traces], BEST_CM3)
    assert found is not None
    return found


def start_then(after_s: float) -> Callable[[int], float]:
    return lambda portion: after_s if portion else 48.0


def test_every_portion_has_both_moments_and_both_temperatures(traces: list[RepeatData]) -> None:
    found = judged(traces, start_then(40.0))
    settled = with_readings(chosen("station"), traces)
    for shown, repeat, theirs in zip(found["repeats"], traces, settled, strict=True):
        assert shown["repeat"] == repeat.repeat
        assert [each["portion"] for each in shown["portions"]] == list(range(11))
        by_portion = {row.portion: row.temperature_c for row in theirs.readings}
        for each in shown["portions"]:
            assert each["own_s"] == (40.0 if each["portion"] else 48.0)
            if each["station_s"] is not None:
                assert each["station_c"] == pytest.approx(by_portion[each["portion"]], abs=1e-4)
                assert 0 < each["station_s"] <= 120


@pytest.mark.fault("too-soon")
def test_hasty_readings_are_early_and_low_while_it_warms(traces: list[RepeatData]) -> None:
    found = judged(traces, start_then(4.0))
    assert found["too_early"] >= 18
    early = [each for shown in found["repeats"] for each in shown["portions"] if each["portion"] in (1, 2, 3)]
    assert all(each["own_c"] < each["station_c"] for each in early)
    said = " ".join(found["words"])
    assert "readings came before the station's moment." in said
    assert "The largest error is 0." in said
    assert found["waited_too_long_s"] < 60


def test_patience_costs_time_that_is_told(traces: list[RepeatData]) -> None:
    patient, brisk = judged(traces, start_then(58.0)), judged(traces, start_then(30.0))
    assert patient["too_early"] == 0
    assert patient["waited_too_long_s"] > brisk["waited_too_long_s"] > 0
    beyond = sum(
        each["own_s"] - each["station_s"]
        for shown in patient["repeats"]
        for each in shown["portions"]
        if each["station_s"] is not None and each["own_s"] - each["station_s"] > 3.0
    )
    told = patient["waited_too_long_s"] + patient["waited_at_start_s"]
    assert told == pytest.approx(beyond, abs=0.2)
    assert patient["station"]["minutes"] < patient["own"]["minutes"]
    assert any("longer than the station would have." in each for each in patient["words"])


def test_own_minutes_are_those_of_the_record(traces: list[RepeatData]) -> None:
    found = judged(traces, start_then(58.0))
    last_s = sum(each.pours[-1][0] + 58.0 for each in traces)
    assert found["own"]["minutes"] == pytest.approx(last_s / 60, abs=0.06)


def test_the_stations_moments_are_the_same_whatever_the_students_did(traces: list[RepeatData]) -> None:
    one, other = judged(traces, start_then(5.0)), judged(traces, start_then(50.0))
    assert one["station"]["end_point_cm3"] == other["station"]["end_point_cm3"]


def test_good_moments_give_the_stations_end_points(traces: list[RepeatData]) -> None:
    moments = {
        shown["repeat"]: {each["portion"]: each["station_s"] for each in shown["portions"]}
        for shown in judged(traces, start_then(40.0))["repeats"]
    }
    found = judgement(chosen(), [read_after(each, moments[each.repeat].get) for each in traces], BEST_CM3)
    assert found is not None
    assert found["too_early"] == 0
    assert found["waited_too_long_s"] == 0.0
    assert found["own"]["end_point_cm3"] == pytest.approx(found["station"]["end_point_cm3"], abs=0.4)
    assert found["own"]["minutes"] == pytest.approx(found["station"]["minutes"], abs=0.2)


def test_a_portion_that_was_overtaken_has_no_station_reading(traces: list[RepeatData]) -> None:
    hasty = traces[0]
    # The second pour comes 6 s after the first; all later ones keep their pace.
    first_s, second_s = hasty.pours[0][0], hasty.pours[1][0]
    shift_s = second_s - first_s - 6.0
    cut = tuple(
        (t if t <= first_s + 6.0 else t - shift_s, c)
        for t, c in hasty.samples
        if not 6.0 < t - first_s <= 6.0 + shift_s
    )
    pours = (hasty.pours[0], *((t - shift_s, v, u) for t, v, u in hasty.pours[1:]))
    found = judgement(chosen(), [read_after(replace(hasty, samples=cut, pours=pours), start_then(5.0))], BEST_CM3)
    assert found is not None
    first = found["repeats"][0]["portions"][1]
    assert (first["station_s"], first["station_c"]) == (None, None)
    assert first["own_s"] == 5.0
    assert found["station"]["minutes"] > 0


def test_portions_without_a_reading_are_told(traces: list[RepeatData]) -> None:
    found = judged(traces, lambda portion: None if portion in (2, 5) else 40.0)
    missing = [each for each in found["repeats"][0]["portions"] if each["own_s"] is None]
    assert [each["portion"] for each in missing] == [2, 5]
    assert all(each["own_c"] is None and each["station_c"] is not None for each in missing)
    assert "4 portions have no reading." in found["words"]


def test_readings_that_make_no_lines_are_said_to(traces: list[RepeatData]) -> None:
    found = judged(traces, lambda portion: 40.0 if portion < 3 else None)
    assert found["own"] == {"minutes": found["own"]["minutes"], "end_point_cm3": None}
    assert "Your readings make no two lines that cross." in found["words"]


def test_without_a_trace_there_is_nothing_to_compare() -> None:
    typed = RepeatData(1, tuple(ReadingRow(k, 4.0 * k, 20.0 + k) for k in range(6)))
    assert judgement(chosen(), [typed], BEST_CM3) is None


def test_results_compare_only_where_the_plan_lets_students_judge(traces: list[RepeatData]) -> None:
    own = [read_after(each, start_then(40.0)) for each in traces[:1]]
    answer = results(chosen(), own)
    assert answer["judgement"]["repeats"][0]["repeat"] == 1
    json.dumps(answer["judgement"], allow_nan=False)
    assert "judgement" not in results(chosen("station"), own)
    assert "judgement" not in results(chosen(), [replace(own[0], ended=False)])


def test_words_for_one_and_for_none() -> None:
    ends = {"minutes": 10.0, "end_point_cm3": 20.0}
    fine = Moment(1, 1, 30.0, 21.0, 30.0, 21.0, 45.0)
    early = Moment(1, 2, 10.0, 21.0, 30.0, 21.5, 45.0)
    slight = Moment(1, 2, 10.0, 21.46, 30.0, 21.5, 45.0)
    late = Moment(2, 0, 90.0, 20.5, 30.0, 21.0, 95.0)
    unread = Moment(1, 3, None, None, 30.0, 21.0, 40.0)
    assert "No reading came before the station's moment." in words([fine], ends, ends, None)
    one = words([fine, early, unread], ends, ends, None)
    assert "One reading came before the station's moment." in one
    assert "The largest error is 0.50 °C, too low: repeat 1, portion 2." in one
    assert "One portion has no reading." in one
    assert "You hardly waited longer than the station would have." in one
    assert any("one step of the probe" in each for each in words([slight], ends, ends, None))
    late = replace(late, portion=3)
    waited = words([late], ends, ends, 20.4)
    assert "You waited 60 s longer than the station would have." in waited
    assert "That moved a reading by up to 0.50 °C." in waited
    assert [each for each in waited if "best value" in each] == [
        "The heat balance of the whole trace gives 20.4 cm³, the best value here. "
        "Your lines are 0.4 cm³ off it, the station's 0.4 cm³."
    ]
    at_start = words([replace(late, portion=0)], ends, ends, None)
    assert "Before the first portion you waited 60 s longer than needed. That cost only time." in at_start
    assert "You hardly waited longer than the station would have." in at_start
    assert not any("best value" in each for each in at_start)
    few = words([fine], ends, {**ends, "end_point_cm3": None}, None)
    assert "Straight lines: 20.0 cm³ with your readings; the station's moments are too few to tell." in few


def test_a_practical_walked_by_own_judgement_can_be_looked_back_upon() -> None:
    walk = Walk(prompts="own judgement", repeats=1)
    walk.act("begin")
    for _ in range(60):
        walk.sample(20.0)
    walk.act("read_now", portion=0)
    for portion in range(1, 5):
        walk.act("portion_added", portion=portion)
        for second in range(40):
            walk.sample(round((20.0 + portion * 0.6 * (1 - 0.8**second)) * 16) / 16)
        walk.act("read_now", portion=portion)
    plan = walk.state.plan
    assert isinstance(plan, PortionsPlan)
    found = judgement(plan, [repeat_data(each) for each in walk.state.repeats], BEST_CM3)
    assert found is not None
    portions = found["repeats"][0]["portions"]
    assert [each["own_s"] for each in portions] == [60.0, 40.0, 40.0, 40.0, 40.0]
    assert portions[0]["station_c"] == pytest.approx(20.0, abs=0.05)


def test_what_the_station_reads_when_time_is_up_is_its_moment(monkeypatch: pytest.MonkeyPatch) -> None:
    """Whatever words say so: nothing is decided by them."""
    monkeypatch.setattr("station.analysis.settle.detector._reason", lambda *_: "anders gesagt")
    samples = [(float(t), 20.0 if t < 50 else 20.0 + 0.1 * (t - 50)) for t in range(200)]  # a rise that never ends
    repeat = RepeatData(1, (ReadingRow(0, 0.0, 20.0),), tuple(samples), ((50.0, 4.0, False),), read_s=((0, 45.0),))
    found = judgement(chosen(), [repeat], BEST_CM3)
    assert found is not None
    assert found["repeats"][0]["portions"][1]["station_s"] == pytest.approx(120.0)
