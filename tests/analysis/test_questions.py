"""Questions: each asked on its fault, none on an honest cup."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.questions import Suspicion, after_reading, not_stirred, sudden_fall
from station.analysis.settle.lags import ProbeLags, Sample
from station.practical.questions import QUESTIONS

LAGS = ProbeLags(4.5, 15.0, 0.6, ((0.003, 0.0, 0.0), (0.0, 0.003, 0.0), (0.0, 0.0, 0.001)))
"""A probe that earlier portions have taught."""


def trace(cup: Callable[[float], float], until_s: int = 60) -> list[Sample]:
    return [(float(t), round(cup(t) * 16) / 16) for t in range(-30, until_s + 1)]


def step(change_c: float, mix_s: float = 0.0, drift_c_s: float = -0.006) -> Callable[[float], float]:
    def cup(time_s: float) -> float:
        if time_s <= 0:
            return 24.0
        slow = 2.718281828 ** (-time_s / mix_s) if mix_s else 0.0
        return 24.0 + change_c * (1.0 - LAGS.left(time_s)) * (1.0 - 0.6 * slow) + drift_c_s * time_s

    return cup


def asked(suspicion: Suspicion | None) -> str | None:
    if suspicion is None:
        return None
    assert suspicion.code in QUESTIONS
    assert 0.0 <= suspicion.evidence <= 1.0
    return suspicion.code


@pytest.mark.parametrize(
    ("change_c", "expected_c", "idle_c", "ratio", "code"),
    [
        (0.0, 1.0, None, 1.0, "no_change"),
        (0.05, 1.0, -0.4, 1.0, "no_change"),
        (0.0, 1.0, -0.1, 1.0, None),  # past the end-point this is what a portion does
        (-0.4, 1.0, -0.4, 1.0, None),  # past the end-point
        (2.0, 1.0, None, 1.0, "double"),
        (2.4, 1.0, None, 1.2, "double"),
        (1.6, 1.0, None, 1.5, None),  # the reagents are stronger than planned, as before
        (0.3, 1.0, None, None, "probe_out"),
        (0.3, 1.0, None, 1.0, None),  # the portion in which the end-point lies
        (-1.0, -1.0, None, 1.0, None),
        (-2.0, -1.0, None, 1.0, "double"),
        (0.0, 0.2, None, 1.0, None),
        (0.0, None, None, None, None),
    ],
)
def test_a_reading_is_questioned(
    change_c: float, expected_c: float | None, idle_c: float | None, ratio: float | None, code: str | None
) -> None:
    found = after_reading(change_c, u_c=0.05, expected_change_c=expected_c, idle_change_c=idle_c, usual_ratio=ratio)
    assert asked(found) == code


@given(
    expected_c=st.floats(0.4, 3.0),
    ratio=st.floats(0.8, 1.3),
    sign=st.sampled_from([1.0, -1.0]),
    first=st.booleans(),
)
def test_honest_readings_raise_no_question(expected_c: float, ratio: float, sign: float, first: bool) -> None:
    found = after_reading(
        sign * expected_c * ratio, u_c=0.05, expected_change_c=sign * expected_c, usual_ratio=None if first else 1.0
    )
    assert found is None


def test_heat_and_cold_may_cancel_near_the_end_point() -> None:
    assert after_reading(0.0, u_c=0.05, expected_change_c=1.0, usual_ratio=1.0, near_end_point=True) is None


def test_a_creeping_trace_asks_for_stirring() -> None:
    samples = trace(step(2.5, mix_s=25.0, drift_c_s=-0.002), 120)
    found = [
        asked(not_stirred(samples, since_s=0.0, now_s=float(now), before_c=24.0, lags=LAGS)) for now in range(20, 80, 5)
    ]
    assert "not_stirred" in found


@settings(max_examples=25, deadline=None)
@given(change_c=st.floats(-3.0, 3.0), press_s=st.floats(-6.0, 6.0), drift_c_s=st.floats(-0.008, 0.002))
def test_a_stirred_cup_is_never_asked_to_be_stirred(change_c: float, press_s: float, drift_c_s: float) -> None:
    samples = trace(step(change_c, drift_c_s=drift_c_s), 125)
    for now in range(10, 120, 20):
        assert not_stirred(samples, since_s=press_s, now_s=float(now), before_c=24.0, lags=LAGS) is None


def spill(time_s: float) -> float:
    return 24.0 - 1.0 * (1.0 - LAGS.left(time_s) if time_s > 0 else 0.0)


def in_air(time_s: float) -> float:
    return 24.0 - (5.0 * (1.0 - 2.718281828 ** (-time_s / 46.0)) if time_s > 0 else 0.0)


def test_a_fall_that_ends_is_a_spill() -> None:
    found = [asked(sudden_fall(trace(spill), now_s=float(now))) for now in range(1, 60)]
    assert "sudden_fall" in found


def test_a_fall_that_goes_on_is_a_probe_in_the_air() -> None:
    # A 6 mm probe takes 46.8 s to half way in still air (SAB's table of response times); here that is its lag.
    found = [asked(sudden_fall(trace(in_air), now_s=float(now))) for now in range(1, 60)]
    assert set(found) == {None, "probe_out"}


@given(change_c=st.floats(-0.7, 3.0), drift_c_s=st.floats(-0.012, 0.002))
def test_portions_and_cooling_are_no_sudden_fall(change_c: float, drift_c_s: float) -> None:
    samples = trace(step(change_c, drift_c_s=drift_c_s), 100)
    for now in range(-10, 100, 3):
        assert sudden_fall(samples, now_s=float(now), idle_change_c=min(change_c, 0.0)) is None


def test_falling_reagents_are_no_sudden_fall() -> None:
    samples = trace(step(-2.0))
    for now in range(1, 60):
        assert sudden_fall(samples, now_s=float(now), expected_change_c=-1.5) is None


def test_too_few_samples_ask_nothing() -> None:
    assert sudden_fall([], now_s=0.0) is None
    assert not_stirred([(0.0, None)], since_s=0.0, now_s=60.0, before_c=21.0) is None
