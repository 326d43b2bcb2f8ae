"""The right minutes: the line before is of the last ones, the moment comes from the readings, and nothing is forced."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.once.difference import difference
from station.analysis.once.enthalpy import extrapolate
from station.analysis.once.inputs import OnceRefused
from station.analysis.once.moment import Moment, moment_of_mixing
from tests.analysis.once_cup import MIXED_S, Array, cup_trace, stepped


def slow_group(change_c: float) -> tuple[Array, Array]:
    """Water from the tap warms to the room over half an hour before anything is mixed in."""
    time_s = np.arange(0.5, 2250.0, 1.0)
    warming = 22.0 - 4.0 * np.exp(-time_s / 700.0)
    since = np.clip(time_s - 1950.0, 0.0, None)
    change = change_c * (1.0 - np.exp(-since / 8.0)) * np.exp(-since / 2500.0)
    noise = 0.02 * np.random.default_rng(7).standard_normal(len(time_s))
    return time_s, stepped(warming + change + noise)


def test_a_slow_group_whose_cup_did_not_change_gets_no_number() -> None:
    with pytest.raises(OnceRefused) as caught:
        extrapolate(*slow_group(0.0), 1950.0)
    assert caught.value.kind == "no_change"


@pytest.mark.parametrize("change_c", [3.0, -2.0])
def test_a_slow_group_gets_the_change_of_the_last_minutes(change_c: float) -> None:
    found = extrapolate(*slow_group(change_c), 1950.0)
    assert found.before.begin_s >= 1950.0 - 260.0
    assert found.change_c == pytest.approx(change_c, abs=0.05)


@pytest.mark.parametrize("late_s", [-40.0, -8.0, 0.0, 30.0, 100.0])
@pytest.mark.parametrize("change_c", [5.0, -1.5])
def test_the_moment_is_found_whenever_somebody_pressed(late_s: float, change_c: float) -> None:
    time_s, temperature_c = cup_trace(change_c)
    moment = moment_of_mixing(time_s, temperature_c, MIXED_S + late_s, 0.0625)
    assert moment.seen
    assert moment.time_s == pytest.approx(MIXED_S, abs=2.0 * moment.u_s)
    right = extrapolate(time_s, temperature_c, MIXED_S)
    assert extrapolate(time_s, temperature_c, MIXED_S + late_s).change_c == pytest.approx(right.change_c, abs=0.002)


def test_where_nothing_is_seen_the_press_counts_and_is_less_sure() -> None:
    time_s = np.arange(0.0, 540.0)
    moment = moment_of_mixing(time_s, stepped(20.0 + 3e-4 * time_s), 200.0, 0.0625)
    assert moment == Moment(200.0, moment.u_s, False)
    assert moment.u_s > 2.0


def test_a_line_that_does_not_lie_on_its_readings_gives_no_number() -> None:
    """Somebody warms the cup with the hand in the last minute before mixing."""
    time_s, temperature_c = cup_trace(3.0)
    hand = np.where((time_s > 130.0) & (time_s < MIXED_S), 0.02 * (time_s - 130.0), 0.0)
    with pytest.raises(OnceRefused) as caught:
        extrapolate(time_s, stepped(temperature_c + hand), MIXED_S)
    assert caught.value.kind == "not_a_line"
    assert "before mixing" in caught.value.reason


def test_readings_before_that_are_old_are_no_line() -> None:
    time_s, temperature_c = cup_trace(3.0)
    kept = (time_s < 80.0) | (time_s > MIXED_S)
    with pytest.raises(OnceRefused, match="s old"):
        extrapolate(time_s[kept], temperature_c[kept], MIXED_S)


BY_HAND_S = np.arange(0.0, 450.0, 30.0)


def by_hand(change_c: float, mixed_s: float, first_c: float = 0.0) -> Array:
    since = np.clip(BY_HAND_S - mixed_s, 0.0, None)
    shown = 20.0 + change_c * (1.0 - np.exp(-since / 10.0)) * np.exp(-since / 2500.0)
    shown[0] += first_c
    return np.asarray(np.round(shown, 1))


@pytest.mark.parametrize(("press_s", "within_s"), [(127.0, 0.0), (133.0, 0.0), (160.0, 15.0), (185.0, 15.0)])
def test_by_hand_the_press_counts_unless_the_readings_contradict_it(press_s: float, within_s: float) -> None:
    moment = moment_of_mixing(BY_HAND_S, by_hand(4.0, 127.0), press_s, 0.1)
    assert moment.seen
    assert moment.time_s == pytest.approx(press_s if within_s == 0.0 else 135.0, abs=0.1)


def test_a_thermometer_that_was_warm_at_first_is_not_taken_for_the_mixing() -> None:
    moment = moment_of_mixing(BY_HAND_S, by_hand(3.0, 127.0, first_c=1.4), 128.0, 0.1)
    assert moment.time_s == pytest.approx(128.0)


@settings(max_examples=60, deadline=None)
@given(st.floats(-8.0, 8.0).filter(lambda each: abs(each) > 1.0), st.floats(121.0, 149.0), st.floats(0.0, 30.0))
def test_readings_by_hand_give_the_change(change_c: float, mixed_s: float, late_s: float) -> None:
    readings_c = by_hand(change_c, mixed_s)
    found = extrapolate(BY_HAND_S, readings_c, mixed_s + late_s, step_c=0.1)
    assert found.change_c == pytest.approx(change_c, abs=0.1 + 0.02 * abs(change_c))


def test_published_readings_of_zinc_in_copper_sulfate() -> None:
    # A student's full table (studymode.com, "Enthalpy Change", 2012): zinc into 25.0 cm³ of copper(II) sulfate,
    # 1.0 mol/dm³, at minute 2. Zn + Cu²⁺ gives out 217 to 219 kJ/mol (Wagman et al., NBS tables, 1982: 218.7), of which
    # this cup, read in the school's way (25 g of water), shows what it did not lose in the three minutes it took.
    minute = np.array([0.5, 1.0, 1.5, 2.5, 3.0, 3.5, 4.0, 4.5, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0, 13.0])
    readings_c = np.array(
        [23.0, 23.0, 23.0, 53.2, 62.1, 69.0, 70.1, 70.4, 69.1, 68.0, 66.8, 64.6, 62.2, 61.6, 60.0, 57.8, 57.2]
    )
    found = extrapolate(60.0 * minute, readings_c, 120.0, step_c=0.1)
    assert found.mixed_at_s == pytest.approx(120.0)
    assert found.before.at_mixing_c == pytest.approx(23.0, abs=0.05)
    # The line through minutes 4.5 to 11 by numpy, not by this program's rule: 74.6 °C at minute 2.
    late = (minute >= 4.5) & (minute <= 11.0)
    slope, level = np.polyfit(minute[late], readings_c[late], 1)
    assert found.after.at_mixing_c == pytest.approx(slope * 2.0 + level, abs=1.0)
    enthalpy_kj_mol = -25.0 * 4.18 * found.change_c / 0.0250 / 1000.0
    assert enthalpy_kj_mol == pytest.approx(-218.7, rel=0.05)


def test_published_readings_of_a_neutralisation_with_one_before() -> None:
    # A course's data sheet (blog.essayloop.com, "Heat of Neutralization lab report", part B): 22.2 °C, then each 15 s
    # 29.2 to 28.6 °C; the sheet takes the highest less the first, 7.0 °C.
    time_s = 15.0 * np.arange(13.0)
    readings_c = np.array([22.2, 29.2, 29.1, 29.0, 28.9, 28.8, 28.7, 28.7, 28.7, 28.7, 28.7, 28.7, 28.6])
    with pytest.raises(OnceRefused, match="line before"):
        extrapolate(time_s, readings_c, 1.0, step_c=0.1)
    found = difference(time_s, readings_c, Moment(1.0, 2.0, True), 0.1)
    assert found.change_c == pytest.approx(7.0)
    assert 0.2 < found.u_change_c < 0.4
