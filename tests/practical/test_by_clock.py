"""A practical that mixes once with an ordinary thermometer: readings by the clock, amounts as they were taken."""

from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.dataset import from_question, question_for, repeat_data
from station.practical.fold import fold_all
from station.practical.prompts import instruction
from station.practical.results import results
from station.practical.state import Step
from station.practical.view import view
from tests.practical.walk import Walk, kinds

SOLID = {
    "kind": "once",
    "repeats": 1,
    "liquid": {"name": "water", "volume_cm3": 50},
    "addition": {"name": "potassium chloride", "mass_g": 4.0},
    "timing": {"before_s": 120, "after_s": 240},
}
BEFORE_C = (20.0, 20.1, 20.0, 20.1, 20.1)
AFTER_C = (17.1, 15.7, 15.8, 15.8, 15.9, 15.9, 16.0, 16.0)


def bench(**changes: Any) -> Walk:
    walk = Walk(**{**SOLID, **changes})
    walk.keep([e.StationStarted("0", "none", None, "none")])
    walk.act("thermometer", division_c=0.1)
    walk.act("begin")
    return walk


def read(walk: Walk, temperature_c: float, **more: Any) -> list[e.Event]:
    """Type a reading a few seconds after the clock has asked for it."""
    clock = view(walk.state, walk.time_s)["clock"]
    assert clock is not None
    walk.time_s = walk.state.repeats[-1].begun_s + clock["next_s"] + 4.0
    return walk.act("reading", temperature_c=temperature_c, **more)


def before(walk: Walk) -> None:
    for temperature_c in BEFORE_C:
        read(walk, temperature_c)


def after(walk: Walk, readings_c: tuple[float, ...] = AFTER_C) -> None:
    for temperature_c in readings_c:
        read(walk, temperature_c)


def whole(**changes: Any) -> Walk:
    walk = bench(**changes)
    before(walk)
    walk.time_s += 8.0
    walk.act("portion_added", portion=1, mass_g=4.02, places=2)
    after(walk)
    return walk


def test_the_clock_says_when_to_read_and_when_to_mix() -> None:
    walk = bench()
    assert view(walk.state, walk.time_s)["clock"] == {"every_s": 30.0, "now_s": 0.0, "next_s": 0.0}
    assert instruction(walk.state).code == "clock_before"
    assert "every 30 s" in instruction(walk.state).text
    assert "weigh out 4 g" in (instruction(walk.state).detail or "")
    for temperature_c in BEFORE_C[:4]:
        assert kinds(read(walk, temperature_c)) == ["temperature_read"]
    assert kinds(read(walk, BEFORE_C[4])) == ["temperature_read", "reading_settled", "portion_prompted"]
    assert [each.at_s for each in walk.state.repeats[0].clocked] == [0.0, 30.0, 60.0, 90.0, 120.0]
    assert instruction(walk.state).act == "portion_added"
    assert "tip in" in instruction(walk.state).text


def test_a_whole_practical_is_typed_and_gives_change_and_enthalpy() -> None:
    """Potassium chloride takes in 17.22 kJ/mol (Parker, NSRDS-NBS 2, 1965); the readings are our own, to 0.1 °C."""
    walk = whole()
    assert walk.step() is Step.DONE
    assert fold_all(walk.happened) == walk.state
    assert walk.state.has_curve
    plan, repeats, known = from_question(question_for(walk.state))
    (repeat,) = repeats
    assert (repeat.division_c, repeat.mass_g, repeat.places) == (0.1, 4.02, 2)
    found = results(plan, repeats, known)["mean"]
    for method in ("straight_lines", "heat_balance"):
        assert found[method]["change_c"] == pytest.approx(-4.35, abs=0.15), found["refused"]
        assert found[method]["enthalpy_kj_mol"] == pytest.approx(17.22, abs=2.0 * found[method]["u_enthalpy_kj_mol"])
        low, high = found[method]["interval_95_c"]
        assert low < found[method]["change_c"] < high < low + 0.6
    assert found.get("probe") is None


def test_what_was_weighed_stands_in_every_line_with_its_digits() -> None:
    walk = bench()
    before(walk)
    walk.act("portion_added", portion=1, mass_g=4.1, places=1)
    after(walk)
    steps = results(*from_question(question_for(walk.state)))["mean"]["steps"]["straight_lines"]
    workings = [each["working"] for each in steps]
    assert "n = 4.1 g ÷ 74.55 g/mol" in workings
    assert "m = 50.0 g + 4.1 g" in workings
    (amount,) = [each for each in steps if each["unit"] == "mol"]
    assert amount["value"] == pytest.approx(4.1 / 74.551, rel=1e-4)
    assert amount["u"] == pytest.approx(0.1 / 74.551, rel=0.01), "of a balance to 0.1 g"


def test_a_mass_far_from_the_plan_is_asked_about_and_a_later_one_corrects() -> None:
    walk = bench()
    before(walk)
    with pytest.raises(ActRefused, match="far from the planned 4 g"):
        walk.act("portion_added", portion=1, mass_g=40.2, places=1)
    walk.act("portion_added", portion=1)
    walk.act("portion_volume", portion=1, mass_g=3.98, places=2)
    (portion,) = walk.state.repeats[0].portions
    assert (portion.mass_g, portion.places, portion.volume_cm3) == (3.98, 2, 0.0)
    assert walk.state.repeats[0].confirmed == {1}


def test_nothing_is_weighed_where_liquids_are_mixed() -> None:
    walk = bench(
        liquid={"name": "nitric acid", "volume_cm3": 40, "concentration_mol_dm3": 0.4},
        addition={"name": "sodium hydroxide", "volume_cm3": 40, "concentration_mol_dm3": 0.4},
    )
    assert "measure out 40 cm³" in (instruction(walk.state).detail or "")
    before(walk)
    with pytest.raises(ActRefused, match="nothing is weighed"):
        walk.act("portion_added", portion=1, mass_g=4.0)
    walk.act("portion_added", portion=1, volume_cm3=39.5, places=1)
    after(walk, tuple(round(20.0 + 0.7 * (20.0 - each), 1) for each in AFTER_C))
    (repeat,) = results(*from_question(question_for(walk.state)))["repeats"]
    lines = repeat["steps"]["straight_lines"]
    assert any("× 39.5 cm³" in each["working"] for each in lines)
    assert any(each["working"] == "m = 40.0 g + 39.5 g" for each in lines)


def test_a_reading_is_corrected_and_one_to_come_is_refused() -> None:
    walk = bench()
    read(walk, 20.0)
    read(walk, 2.1)
    assert kinds(walk.act("reading", temperature_c=20.1, at_s=30)) == ["temperature_read"]
    assert [each.temperature_c for each in walk.state.repeats[0].clocked] == [20.0, 20.1]
    with pytest.raises(ActRefused, match="4:00 is still to come"):
        walk.act("reading", temperature_c=20.1, at_s=240)
    walk = whole()
    with pytest.raises(ActRefused, match="no reading at 0:10"):
        walk.act("reading", temperature_c=20.1, at_s=10)
    last_s = walk.state.repeats[0].clocked[-1].at_s
    walk.act("reading", temperature_c=16.5, at_s=last_s)
    assert {each.portion: each.temperature_c for each in walk.state.repeats[0].readings} == {0: 20.1, 1: 16.5}


def test_two_readings_give_at_least_their_difference() -> None:
    walk = bench()
    read(walk, 20.0)
    walk.act("portion_added", portion=1)
    read(walk, 16.0)
    walk.act("finish")
    found = results(*from_question(question_for(walk.state)))
    lines = found["mean"]["straight_lines"]
    assert lines["change_c"] == pytest.approx(-4.0)
    assert "difference of two readings" in found["repeats"][0]["straight_lines"]["label"]
    assert lines["u_change_c"] > 0.1
    assert any("could not be drawn" in each for each in found["repeats"][0]["notes"])
    words = " ".join([*found["mean"]["refused"].values(), *found["repeats"][0]["notes"]])
    assert "recording" not in words, "it is over"


def test_a_thermometer_that_nobody_read_gives_nothing_and_says_so() -> None:
    walk = bench()
    walk.act("portion_added", portion=1)
    walk.act("finish")
    found = results(walk.state.plan, [repeat_data(walk.state.repeats[0])])["mean"]
    assert found["straight_lines"] is None
    assert set(found["refused"]) == {"straight_lines", "heat_balance"}


def test_an_own_change_with_the_wrong_sign_is_asked_about() -> None:
    walk = whole()
    with pytest.raises(ActRefused, match="the cup became colder"):
        walk.act("own_reading", change_c=4.3)
    assert "end_point_read" not in [each.event.kind for each in walk.happened]
    walk.act("own_reading", change_c=4.3, sure=True)
    assert walk.happened[-1].event.kind == "end_point_read"
    other = whole()
    other.act("own_reading", change_c=-4.3)
    assert other.happened[-1].event.kind == "end_point_read"


def judging() -> Walk:
    walk = Walk(**{**SOLID, "prompts": "own judgement"})
    walk.act("begin")
    return walk


def course_c(since_s: float) -> float:
    return 20.0 if since_s < 0 else 16.0 + 4.0 * 2.718 ** (-since_s / 8.0)


def test_by_own_judgement_recording_goes_on_to_the_end_of_the_plans_time() -> None:
    walk = judging()
    for _ in range(130):
        walk.sample(20.0)
    walk.act("read_now", portion=0)
    walk.act("portion_added", portion=1)
    mixed_s = walk.time_s
    while walk.time_s < mixed_s + 100:
        walk.sample(course_c(walk.time_s - mixed_s))
    assert instruction(walk.state).act == "read_now"
    assert kinds(walk.act("read_now", portion=1)) == ["reading_settled"]
    assert walk.step() is Step.SETTLE
    assert instruction(walk.state).act is None
    settle = view(walk.state, walk.time_s)["settle"]
    assert settle is not None
    assert settle["left_s"] == pytest.approx(140.0)
    while walk.step() is Step.SETTLE:
        walk.sample(course_c(walk.time_s - mixed_s))
    assert walk.time_s == pytest.approx(mixed_s + 240, abs=2)
    assert walk.step() is Step.DONE
    found = results(*from_question(question_for(walk.state)))["mean"]
    assert found["straight_lines"]["change_c"] == pytest.approx(-4.0, abs=0.1)


def test_by_own_judgement_nobody_has_to_read_for_a_result() -> None:
    walk = judging()
    for _ in range(130):
        walk.sample(20.0)
    walk.act("portion_added", portion=1)
    mixed_s = walk.time_s
    while walk.step() is Step.SETTLE:
        walk.sample(course_c(walk.time_s - mixed_s))
    assert walk.step() is Step.DONE
    assert walk.state.has_curve, "both temperatures are there"


def test_the_wait_before_mixing_is_told_from_the_first_second() -> None:
    walk = Walk(**SOLID)
    walk.act("begin")
    walk.sample(20.0)
    left = []
    while walk.step() is Step.START:
        settle = view(walk.state, walk.time_s)["settle"]
        assert settle is not None
        left.append(settle["left_s"])
        walk.sample(20.0)
    assert left[0] == pytest.approx(119.0)
    assert [round(each) for each in left if each is not None] == list(range(119, 119 - len(left), -1))


@settings(max_examples=60, deadline=None)
@given(st.lists(st.sampled_from(["read", "add", "undo", "wait", "finish", "pause", "resume", "late"]), max_size=40))
def test_whatever_is_typed_the_record_folds_to_the_same_state(happened: list[str]) -> None:
    walk = bench()
    acts: dict[str, tuple[str, dict[str, Any]]] = {
        "read": ("reading", {"temperature_c": 20.0}),
        "late": ("reading", {"temperature_c": 20.5, "at_s": 30.0}),
        "add": ("portion_added", {"portion": 1}),
        "undo": ("portion_undone", {"portion": 1}),
        "finish": ("finish", {}),
        "pause": ("pause", {}),
        "resume": ("resume", {}),
    }
    for what in happened:
        walk.time_s += 30.0
        if what in acts:
            name, values = acts[what]
            try:
                walk.act(name, **values)
            except ActRefused as refusal:
                assert str(refusal)
    assert fold_all(walk.happened) == walk.state
    times = [each.at_s for each in walk.state.repeats[0].clocked]
    assert times == sorted(set(times))
    assert view(walk.state, walk.time_s)["instruction"].text
