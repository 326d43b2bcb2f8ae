"""Checks of a probe: what staff do, what the station finds, what is used from then on, what outlasts a practical."""

from math import exp
from random import Random
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.checks.register import Check, CheckStep, looked_events
from station.practical.checks.run import check_view, checks_view, comparison_found, comparisons
from station.practical.events import from_body
from station.practical.fold import fold_all
from station.practical.procedure import possible_acts
from station.practical.prompts import instruction
from station.practical.state import State, Step
from tests.practical.checking import PROBE, Checking
from tests.practical.walk import kinds


def test_an_ice_point_corrects_what_comes_after_it_and_the_journal_stays_raw() -> None:
    walk = Checking()
    walk.check("ice", water="distilled")
    assert kinds(walk.step("in")) == ["probe_check_step"]
    # The probe comes from the room, sinks, and rests 0.4 °C too high.
    found = walk.run(200, lambda t: 0.4 + 20.0 * exp(-t / 15.0))
    assert kinds(found) == ["probe_check_found"]
    saved = walk.staff("check_save", key="save")
    assert kinds(saved) == ["probe_checked", "probe_in_use"]
    in_use = walk.state.probes.in_use
    assert in_use is not None
    assert in_use.correction.offset_c == pytest.approx(-0.4, abs=0.03)
    assert in_use.correction.u_of(0.4) == pytest.approx(0.03, abs=0.01)
    walk.sample(21.0)  # a jump, believed once the next agrees
    taken = walk.sample(21.0)[0]
    assert isinstance(taken, e.SampleTaken)
    assert taken.temperature_c == 21.0
    shown = walk.state.recent[-1]
    assert shown.temperature_c == pytest.approx(20.6, abs=0.03)
    assert shown.said_c == pytest.approx(21.0)
    assert fold_all(walk.happened) == walk.state
    assert walk.staff("check_save", key="save") == []


def test_a_repeat_is_read_corrected_and_says_by_what() -> None:
    walk = Checking()
    walk.run(5, lambda _: 20.0)
    walk.ice(0.4)
    walk.act("begin")
    walk.rest(20.0)
    reading = walk.state.repeats[0].readings[0]
    assert reading.temperature_c == pytest.approx(19.6, abs=0.05)
    assert [each and each.check for each in walk.state.repeats[0].corrected] == ["ice"]


@pytest.mark.parametrize("values", [{"pressure_kpa": 98.0}, {"altitude_m": 280}])
def test_a_boiling_point_alone_is_kept_and_not_used_and_with_ice_it_makes_a_line(values: dict[str, Any]) -> None:
    walk = Checking()
    walk.check("boiling", **values)
    walk.step("in")
    found = walk.run(120, lambda t: 99.3 - 75.0 * exp(-t / 8.0))
    assert kinds(found) == ["probe_check_found"], "the gate of a practical would have refused 60 °C and more"
    assert kinds(walk.staff("check_save")) == ["probe_checked"], "and no correction in use"
    walk.run(60, lambda t: 99.3 - 99.0 * (1 - exp(-t / 10)))
    walk.ice(0.3)
    in_use = walk.state.probes.in_use
    assert in_use is not None
    assert in_use.check == "ice and boiling"
    assert in_use.correction.of(0.3) == pytest.approx(-0.3, abs=0.02)
    assert in_use.correction.of(99.3) == pytest.approx(99.04 - 99.3, abs=0.05)
    assert in_use.correction.u_slope > 0.001


def compared(walk: Checking, offset_c: float = 0.25, slope: float = 1.004) -> None:
    walk.check("comparison", u_reference_c=0.05)
    walk.step("in")
    for true_c in (12.0, 22.0, 32.0, 42.0):
        walk.run(60, lambda _, true_c=true_c: offset_c + slope * true_c)  # type: ignore[misc]
        walk.step("compared", reference_c=true_c)


def test_comparisons_make_a_line_once_there_are_enough() -> None:
    walk = Checking()
    walk.check("comparison", u_reference_c=0.05)
    walk.step("in")
    with pytest.raises(ActRefused, match="not at rest"):
        walk.step("compared", reference_c=20.0)
    walk.run(60, lambda _: 20.3)
    walk.step("compared", reference_c=20.0)
    with pytest.raises(ActRefused, match="found nothing yet"):
        walk.staff("check_save")
    check = walk.state.probes.check
    assert check is not None
    assert check_view(check, walk.time_s)["missing"] == "A line needs 3 comparisons; there are 1."
    walk.staff("check_discard")
    compared(walk)
    walk.run(60, lambda _: 45.0)
    walk.step("compared", reference_c=12.0)
    walk.step("comparison_undone")
    walk.staff("check_save")
    in_use = walk.state.probes.in_use
    assert in_use is not None
    line = in_use.correction
    assert in_use.check == "comparison"
    assert line.slope == pytest.approx(-0.004, abs=0.002)
    for true_c in (12.0, 30.0, 42.0):
        said_c = 0.25 + 1.004 * true_c
        assert said_c + line.of(said_c) == pytest.approx(true_c, abs=3.0 * line.u_of(said_c))
    assert line.u_of(25.0) >= 0.05, "what the reference leaves open stays"


@pytest.mark.parametrize(("said_c", "reference_c"), [(55.0, 50.0), (45.0, 54.0), (8.0, 10.0), (12.0, 3.0)])
def test_comparisons_keep_to_the_temperatures_of_a_practical(said_c: float, reference_c: float) -> None:
    walk = Checking()
    walk.check("comparison")
    walk.step("in")
    walk.run(60, lambda _: said_c)
    with pytest.raises(ActRefused, match="between 10 and 50 °C"):
        walk.step("compared", reference_c=reference_c)
    assert walk.state.probes.check is not None
    assert comparisons(walk.state.probes.check) == []


def drawn_comparison(draw: Random, count: int, misread_c: float) -> dict[str, Any]:
    """What is found with a probe and a reference that are right but for chance: the true line is level at 0 °C.

    The probe's mean is as unsure as its rest says, the reference is read to 0.1 °C, and `misread_c` more by eye.
    """
    steps = []
    common_c = draw.gauss(0.0, 0.05)
    for k in range(count):
        true_c = 15.0 + 26.0 * k / (count - 1) + draw.uniform(-2.0, 2.0)
        reference_c = round(true_c + common_c + draw.gauss(0.0, misread_c), 1)
        probe_c = true_c + draw.gauss(0.0, 0.02)
        typed = {"probe_c": probe_c, "u_probe_c": 0.02, "reference_c": reference_c}
        steps.append(CheckStep("compared", typed, 0.0))
    return comparison_found(Check("comparison", PROBE, {"u_reference_c": 0.05}, 0.0, "technician", tuple(steps)))


@pytest.mark.parametrize("count", [3, 4, 6])
def test_a_comparison_is_as_sure_as_it_says(count: int) -> None:
    draw, runs = Random(f"comparison {count}"), 3000
    found = [drawn_comparison(draw, count, 0.0) for _ in range(runs)]
    within_u = sum(abs(each["slope"]) <= each["u_slope"] for each in found) / runs
    within_95 = sum(abs(each["slope"]) <= each["slope_95"] for each in found) / runs
    offset = sum(abs(each["correction_c"]) <= 1.96 * each["u_correction_c"] for each in found) / runs
    # The binomial standard deviation of 3000 draws is 0.9 % at 68 %, 0.4 % at 95 %.
    assert 0.66 < within_u < 0.88
    assert 0.94 < within_95 < 0.995
    assert 0.93 < offset < 0.99
    floor = min(each["u_slope"] for each in found)
    assert floor > 0.02 / 26.0 / count**0.5, "no three points on a line by chance make it sure"


def test_a_reference_misread_by_more_than_is_said_still_leaves_the_truth_within_mostly() -> None:
    draw, runs = Random("careless"), 3000
    found = [drawn_comparison(draw, 3, 0.06) for _ in range(runs)]
    assert sum(abs(each["slope"]) <= each["slope_95"] for each in found) / runs > 0.8


def test_a_line_is_preferred_and_after_its_withdrawal_the_ice_point_is_used_again() -> None:
    walk = Checking()
    walk.ice(0.3)
    compared(walk)
    walk.staff("check_save")
    walk.ice(0.3)
    in_use = walk.state.probes.in_use
    assert in_use is not None
    assert in_use.check == "comparison"
    assert kinds(walk.staff("check_withdraw", number=2)) == ["probe_check_withdrawn", "probe_in_use"]
    in_use = walk.state.probes.in_use
    assert in_use is not None
    assert (in_use.check, in_use.number) == ("ice", 3)
    walk.staff("check_withdraw", number=3)
    walk.staff("check_withdraw", number=1)
    assert [each.withdrawn for each in walk.state.probes.checks] == [True, True, True]
    walk.sample(20.0)
    walk.sample(20.0)
    assert walk.state.recent[-1].temperature_c == 20.0
    with pytest.raises(ActRefused, match="withdrawn already"):
        walk.staff("check_withdraw", number=1)


def test_a_dip_finds_both_times_by_itself() -> None:
    walk = Checking()
    walk.check("dip")
    walk.step("hung")
    # It comes out of hot water: until it is at rest in the air nothing is a plunge.
    rested = walk.run(150, lambda t: 22.0 + 40.0 * exp(-t / 12.0))
    assert kinds(rested) == ["probe_check_step"]
    found = walk.run(130, lambda t: 3.0 + 19.0 * (0.55 * exp(-t / 4.5) + 0.45 * exp(-t / 18.0)))
    assert kinds(found) == ["probe_check_found"]
    walk.staff("check_save")
    values = walk.state.probes.checks[0].values
    assert values["fast_s"] == pytest.approx(4.5, abs=0.8)
    assert values["slow_s"] == pytest.approx(18.0, abs=1.5)
    assert walk.state.probes.in_use is None


def test_a_dip_that_was_no_plunge_is_done_again_and_says_why() -> None:
    walk = Checking()
    walk.check("dip")
    walk.step("hung")
    walk.run(40, lambda _: 22.0)
    said = walk.run(130, lambda t: 22.0 - 15.0 * t / 130.0)
    assert kinds(said) == ["probe_check_step"]
    check = walk.state.probes.check
    assert check is not None
    shown = check_view(check, walk.time_s)
    assert (shown["phase"], shown["found"]) == ("air", None)
    assert "plunged at once" in str(shown["missing"])


def test_a_cup_is_tested_step_by_step() -> None:
    walk = Checking()
    walk.check("cup", label="Foam cup with lid")
    walk.step("in_added")
    assert kinds(walk.run(80, lambda _: 21.0)) == ["probe_check_step"], "the water that is to be added is at rest"
    walk.step("filled")
    with pytest.raises(ActRefused, match="does not come now"):
        walk.step("poured")
    rate, warm_c, after_c = 0.1 / 113.0, 44.0, 0.0
    walk.run(185, lambda t: 21.0 + (warm_c - 21.0) * exp(-rate * (t - 9.5)))
    at_pouring_c = 21.0 + (warm_c - 21.0) * exp(-rate * 185.0)
    walk.step("poured")
    # 25 g of warm water in a cup of 9 J/K, 25 g at 21 °C added.
    after_c = (at_pouring_c * (25.0 * 4.178 + 9.0) + 21.0 * 25.0 * 4.178) / (50.0 * 4.178 + 9.0)
    slow = 0.1 / 218.0
    walk.run(185, lambda t: 21.0 + (after_c - 21.0) * exp(-slow * (t - 9.5)) + 10.0 * exp(-t / 9.0))
    with pytest.raises(ActRefused, match="both masses"):
        walk.step("weighed", warm_g=25.0)
    assert kinds(walk.step("weighed", warm_g=25.0, added_g=25.0)) == ["probe_check_step", "probe_check_found"]
    walk.staff("check_save")
    cup = walk.state.probes.cups[0]
    assert cup.label == "Foam cup with lid"
    assert abs(cup.values["heat_capacity_j_k"] - 9.0) < 2.0 * cup.values["u_heat_capacity_j_k"] < 5.0
    assert cup.values["loss_w_k"] == pytest.approx(0.1, rel=0.1)


def test_nobody_begins_a_repeat_meanwhile_and_no_check_begins_in_a_repeat() -> None:
    walk = Checking()
    walk.check("ice")
    assert instruction(walk.state).act is None
    assert "begin" not in possible_acts(walk.state)
    for act in ("begin", "alkali_temperature"):
        with pytest.raises(ActRefused) as refused:
            walk.act(act)
        assert refused.value.code == "check_under_way"
    with pytest.raises(ActRefused, match="under way already"):
        walk.check("dip")
    with pytest.raises(ActRefused, match="save or discard"):
        walk.staff("choose_plan", plan=walk.state.plan.model_dump(mode="json"))
    walk.staff("check_discard")
    walk.act("begin")
    with pytest.raises(ActRefused, match="A repeat is under way"):
        walk.check("ice")
    with pytest.raises(ActRefused, match="A repeat is under way"):
        walk.staff("check_withdraw", number=1)


def test_a_probe_that_rests_far_from_the_ice_point_is_not_in_ice() -> None:
    walk = Checking()
    walk.check("ice")
    walk.step("in")
    assert walk.run(90, lambda _: 20.0) == []
    check = walk.state.probes.check
    assert check is not None
    assert check_view(check, walk.time_s)["why"] == "far"


def test_a_forgotten_check_ends_by_itself() -> None:
    walk = Checking()
    walk.check("ice")
    walk.run(5, lambda _: 20.0)
    walk.time_s += 3600.0
    assert kinds(walk.run(1, lambda _: 20.0)) == ["probe_check_discarded"]
    walk.act("begin")
    assert walk.state.step is Step.START


@pytest.mark.parametrize(
    ("kind", "values", "code"),
    [
        ("boiling", {}, "no_pressure"),
        ("boiling", {"pressure_kpa": 1013.0}, "bad_pressure"),
        ("boiling", {"pressure_kpa": 101.0, "altitude_m": 5}, "no_pressure"),
        (None, {}, "not_understood"),
    ],
)
def test_what_is_missing_or_impossible_is_refused(kind: str | None, values: dict[str, Any], code: str) -> None:
    walk = Checking()
    with pytest.raises(ActRefused) as refused:
        walk.staff("check_begin", check=kind, values=values)
    assert refused.value.code == code


def test_without_a_probe_there_is_nothing_to_check() -> None:
    walk = Checking()
    walk.keep([e.StationStarted("0", "none", None, "none")])
    with pytest.raises(ActRefused, match="no probe"):
        walk.check("ice")


def test_the_register_outlasts_a_new_practical_and_follows_a_swap_of_probes() -> None:
    walk = Checking()
    walk.ice(0.4)
    walk.sample(None, "crc")
    walk.staff("choose_plan", plan=walk.state.plan.model_dump(mode="json"))
    newest = kinds([each.event for each in walk.happened])
    assert newest[-3:] == ["probe_tallied", "plan_chosen", "probe_in_use"]
    probes = walk.state.probes
    assert probes.in_use is not None
    tally = probes.entry(PROBE).tally
    assert tally.bad == {"crc": 1}
    assert tally.samples == 91
    # What the newest practical's own events say is enough for its corrections.
    chosen = max(k for k, each in enumerate(walk.happened) if isinstance(each.event, e.PlanChosen))
    alone = fold_all(walk.happened[chosen:])
    assert alone.probes.in_use == probes.in_use
    # Another probe: the first one's correction is not its own.
    other = e.ProbeLookedAt("28-00000b5eca01", [])
    walk.keep([other])
    assert walk.state.probes.best() is None


def test_a_swap_in_the_midst_of_a_check_ends_it() -> None:
    walk = Checking()
    walk.ice(0.4)
    walk.check("ice")
    walk.keep(list(looked_events(walk.state.probes, PROBE, ["a reason"])))
    events = walk.keep(list(looked_events(walk.state.probes, "28-00000b5eca01", [])))
    assert kinds(events) == ["probe_check_discarded", "probe_looked_at", "probe_in_use"]
    assert (walk.state.probes.check, walk.state.probes.in_use) == (None, None)


def test_of_two_ice_points_the_newer_one_is_in_use() -> None:
    walk = Checking()
    walk.ice(0.4)
    walk.ice(0.5)
    (probe,) = checks_view(walk.state, walk.time_s, "", "none")["probes"]
    assert [(each["number"], each["used"]) for each in probe["checks"]] == [(2, True), (1, False)]


def test_bodies_survive_json_and_a_key_of_a_newer_station() -> None:
    walk = Checking()
    walk.ice(0.4)
    for each in walk.happened:
        body = {**each.event.to_body(), "later": 1}
        assert from_body(each.event.kind, body) == each.event
    assert State().probes == fold_all([]).probes


STEP_NAMES = ("in", "hung", "in_added", "filled", "poured", "weighed", "compared", "comparison_undone")
ANY_ACT = st.one_of(
    st.tuples(st.just("check_begin"), st.sampled_from(["ice", "boiling", "comparison", "dip", "cup"])),
    st.tuples(st.just("check_step"), st.sampled_from(STEP_NAMES)),
    st.tuples(st.sampled_from(["check_save", "check_discard", "check_withdraw"]), st.just("")),
    st.tuples(st.just("sample"), st.floats(-6.0, 112.0)),
    st.tuples(st.just("rest"), st.sampled_from([0.2, 21.0, 45.0, 99.5])),
    st.tuples(st.just("act"), st.sampled_from(["begin", "finish"])),
)


@settings(max_examples=40, deadline=None)
@given(st.lists(ANY_ACT, min_size=4, max_size=14))
def test_whatever_staff_do_in_whatever_order_the_journal_tells_the_same_state(acts: list[tuple[str, Any]]) -> None:
    walk = Checking()
    values = {"reference_c": 20.0, "warm_g": 25.0, "added_g": 25.0, "label": "A cup", "pressure_kpa": 101.0}
    for name, what in acts:
        try:
            if name == "sample":
                walk.sample(what)
            elif name == "rest":
                walk.run(45, lambda _, what=what: float(what))  # type: ignore[misc]
            elif name == "act":
                walk.act(what)
            elif name == "check_begin":
                walk.staff(name, check=what, values=values)
            elif name == "check_step":
                walk.staff(name, step=what, values=values)
            else:
                walk.staff(name, number=1 if name == "check_withdraw" else None)
        except ActRefused as refusal:
            assert str(refusal)
        assert walk.state.running is None or walk.state.probes.check is None
        checks_view(walk.state, walk.time_s, "", "none")
    assert fold_all(walk.happened) == walk.state
    assert walk.state.probes.in_use == walk.state.probes.best()
