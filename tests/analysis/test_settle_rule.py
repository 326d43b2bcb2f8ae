"""What the settle detector reads and when it gives up waiting, apart from the fit."""

from __future__ import annotations

from math import log

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.settle.detector import MOST, Known, known, reading_c, waiting_helps, within
from station.analysis.settle.fit import Fitted
from station.analysis.settle.lags import STEP_C, CupHabits

EYE = [[1e-4 if i == j else 0.0 for j in range(8)] for i in range(8)]
TAILS = st.lists(st.integers(-4, 4).map(lambda code: 21.0 + code * STEP_C), min_size=1, max_size=9)


def fitted(change_c: float, drift_c_s: float, start_s: float = 0.0) -> Fitted:
    """A cup at 21 °C before its change, seen by a probe of 4.5 and 17 s."""
    return Fitted((21.0, change_c, drift_c_s, start_s, log(4.5), log(17.0), 0.6, log(2.0)), EYE, 0.02)


def test_conversions_on_the_line_are_all_read() -> None:
    tail = [22.0, 22.0625, 22.0, 22.0625, 22.0, 22.0625]
    assert reading_c(tail, 22.031, STEP_C) == pytest.approx(sum(tail) / MOST)


def test_of_conversions_beside_the_line_the_nearest_is_read() -> None:
    assert reading_c([22.25, 22.1875, 22.1875, 22.125], 22.0, STEP_C) == 22.125


@given(tail=TAILS, cup_c=st.floats(19.0, 23.0))
def test_a_reading_never_leaves_the_last_conversions(tail: list[float], cup_c: float) -> None:
    read = reading_c(tail, cup_c, STEP_C)
    assert min(tail[-MOST:]) - 1e-9 <= read <= max(tail[-MOST:]) + 1e-9
    assert abs(read - cup_c) <= max(abs(tail[-1] - cup_c), 0.15 * STEP_C) + 1e-9


def test_a_warm_cup_is_a_little_warmer_than_its_probe_says() -> None:
    fit = fitted(6.0, 0.0)
    warm, same = known(fit, 60.0, CupHabits(rest_c=21.0), STEP_C), known(fit, 60.0, CupHabits(), STEP_C)
    assert 0.0 < warm.cup_c - same.cup_c < 0.5 * STEP_C
    assert warm.u_c > same.u_c


def test_within_is_the_normal_distribution() -> None:
    # Two-sided 95 % and 99 % points of the normal distribution (any table): 1.9600, 2.5758.
    assert within(0.0, 1.0, 1.9600) == pytest.approx(0.95, abs=1e-4)
    assert within(0.0, 1.0, 2.5758) == pytest.approx(0.99, abs=1e-4)


def test_a_probe_on_its_way_is_waited_for() -> None:
    assert waiting_helps(fitted(1.2, 0.0), 20.0, 20.0, Known(22.2, 0.03, 0.013), 0.6, STEP_C)


def test_a_probe_that_trails_a_falling_cup_is_not_waited_for_longer() -> None:
    fit = fitted(-0.3, -0.013)
    seen = Known(fit.cup_c(60.0), 0.02, 0.013)
    assert not waiting_helps(fit, 60.0, 60.0, seen, 0.3, STEP_C)
    assert waiting_helps(fit, 20.0, 60.0, seen, 0.3, STEP_C)


def test_what_is_not_known_yet_is_waited_for() -> None:
    assert waiting_helps(fitted(1.2, 0.0), 60.0, 90.0, Known(22.2, 0.06, 0.013), 0.6, STEP_C)
