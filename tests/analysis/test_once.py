"""The temperature change by lines extended to the moment of mixing."""

from __future__ import annotations

import numpy as np
import pytest

from station.analysis.heat.inputs import Trace
from station.analysis.once.enthalpy import extrapolate, predicted_bias_c
from station.analysis.once.fit import CLOSE_BEFORE_S, fit_once
from station.analysis.once.inputs import OnceRefused, OnceRefusedKind
from tests.analysis.once_cup import MIXED_S, STEP_C, Array, cup_trace, known_setup, stepped


def lines_trace(phase_c: float = 0.0, noise_c: float = 0.0, seed: int = 0, rise_s: float = 8.0) -> tuple[Array, Array]:
    """A cup of two true straight lines with a change of 3 °C at 180 s, a rise between them, and a probe's steps."""
    time_s = np.arange(0.0, 540.0, 1.0)
    since = time_s - MIXED_S
    rise = np.where(since > 0.0, (3.0 - 0.002 * since) * (1.0 - np.exp(-since.clip(0.0) / rise_s)), 0.0)
    noise = noise_c * np.random.default_rng(seed).standard_normal(len(time_s))
    return time_s, stepped(20.0 + phase_c + 1e-4 * since + rise + noise)


def test_lines_give_the_change_at_the_moment_of_mixing() -> None:
    found = extrapolate(*lines_trace(), MIXED_S)
    assert found.change_c == pytest.approx(3.0, abs=0.03)
    assert found.interval_95_c[0] < 3.0 < found.interval_95_c[1]
    assert found.after.slope_c_s == pytest.approx(-0.0019, abs=2e-4)
    assert found.change_c == found.after.at_mixing_c - found.before.at_mixing_c


def test_the_readings_of_the_lines_are_shown_and_those_of_the_rise_are_not_among_them() -> None:
    time_s, temperature_c = lines_trace()
    found = extrapolate(time_s, temperature_c, MIXED_S)
    assert found.before.end_s <= MIXED_S - CLOSE_BEFORE_S
    # 3 °C · exp(-t/8 s) is below half a step from 36 s on.
    assert MIXED_S + 25.0 < found.after.begin_s < MIXED_S + 60.0
    for line in (found.before, found.after):
        assert (time_s[line.used[0]], time_s[line.used[-1]]) == (line.begin_s, line.end_s)
    assert "half a step" in found.rule
    assert "scatter and the loss along the stem only" in found.label


def test_exam_board_lines_are_extended_to_the_fourth_minute() -> None:
    # AQA A-level mark scheme: best-fit lines through minutes 0 to 3 and 6 to 12, extended to minute 4, read 19.8 and
    # 21.9 °C: a rise of 2.1 °C, and ±0.2 °C is 9.5 % of it; the reading of minute 5 is left out. The readings of the
    # paper are a figure; these are our own on such lines, to 0.1 °C.
    minute = np.array([0.0, 1.0, 2.0, 3.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0])
    readings_c = np.array([19.8, 19.8, 19.8, 19.8, 21.2, 21.7, 21.6, 21.5, 21.4, 21.3, 21.2, 21.1])
    found = extrapolate(60.0 * minute, readings_c, 240.0, step_c=0.1)
    assert round(found.before.at_mixing_c, 1) == 19.8
    assert round(found.after.at_mixing_c, 1) == 21.9
    assert round(found.change_c, 1) == 2.1
    assert minute[found.before.used].tolist() == [0.0, 1.0, 2.0, 3.0]
    assert minute[found.after.used].tolist() == [6.0, 7.0, 8.0, 9.0, 10.0, 11.0, 12.0]
    assert round(100.0 * 0.2 / found.change_c, 1) == 9.5
    assert found.u_change_c < 0.1


def test_a_quantised_line_claims_no_more_than_its_steps_allow() -> None:
    flat = extrapolate(*lines_trace(phase_c=0.01), MIXED_S)
    # Before mixing the whole drift lies within one step: its level cannot be known better than about a third of that.
    assert flat.before.u_at_mixing_c > 0.01
    assert flat.before.effective <= 3.0


@pytest.mark.parametrize("noise_c", [0.0, 0.02])
def test_intervals_cover_whatever_the_phase_of_the_steps(noise_c: float) -> None:
    rng = np.random.default_rng(5)
    inside = 0
    for seed in range(80):
        found = extrapolate(*lines_trace(rng.uniform(0.0, STEP_C), noise_c, seed, rise_s=1.0), MIXED_S)
        inside += found.interval_95_c[0] <= 3.0 <= found.interval_95_c[1]
    assert inside >= 72


def test_spikes_and_stale_readings_hardly_move_the_lines() -> None:
    time_s, temperature_c = lines_trace(noise_c=0.02)
    clean = extrapolate(time_s, temperature_c, MIXED_S)
    spoilt = temperature_c.copy()
    spoilt[20::41] += 6.0
    spoilt[33::41] = spoilt[32::41]
    found = extrapolate(time_s, spoilt, MIXED_S)
    assert found.change_c == pytest.approx(clean.change_c, abs=0.02)
    assert len(found.before.set_aside) == len(np.arange(20, found.before.used[-1], 41))
    assert 3 <= len(found.after.set_aside) <= 7


def test_an_uncertain_moment_costs_what_the_slopes_make_of_it() -> None:
    sharp, vague = (extrapolate(*lines_trace(), MIXED_S, u_mixed_at_s=u) for u in (0.0, 30.0))
    slopes = sharp.after.slope_c_s - sharp.before.slope_c_s
    assert vague.u_change_c**2 - sharp.u_change_c**2 == pytest.approx((30.0 * slopes) ** 2)


def refused(time_s: Array, temperature_c: Array, mixed_at_s: float = MIXED_S) -> OnceRefused:
    with pytest.raises(OnceRefused) as caught:
        extrapolate(time_s, temperature_c, mixed_at_s)
    return caught.value


@pytest.mark.parametrize(
    ("begin_s", "end_s", "mixed_at_s", "kind"),
    [
        (120.0, 540.0, 180.0, "too_few_before"),
        (0.0, 250.0, 180.0, "too_few_after"),
        (0.0, 300.0, 170.0, "not_a_line"),
        (0.0, 540.0, 900.0, "outside_trace"),
        (0.0, 540.0, -5.0, "outside_trace"),
        (0.0, 0.0, 180.0, "outside_trace"),
    ],
)
def test_refusals_say_why(begin_s: float, end_s: float, mixed_at_s: float, kind: OnceRefusedKind) -> None:
    time_s, temperature_c = cup_trace(4.0, release_s=40.0, end_s=540.0)
    kept = (time_s >= begin_s) & (time_s < end_s)
    refusal = refused(time_s[kept], temperature_c[kept], mixed_at_s)
    assert refusal.kind == kind
    assert refusal.reason == str(refusal)
    assert refusal.reason.endswith(".")


def test_a_cup_that_only_drifts_has_no_change() -> None:
    time_s = np.arange(0.0, 540.0)
    refusal = refused(time_s, stepped(20.0 + 3e-4 * time_s))
    assert refusal.kind == "no_change"
    assert "Was it added" in refusal.reason


@pytest.mark.parametrize(
    ("time_s", "temperature_c"),
    [
        ([0.0, 1.0, 2.0], [20.0, float("nan"), 20.0]),
        ([0.0, 1.0, 1.0], [20.0, 20.0, 20.0]),
        ([0.0, 1.0], [20.0, 20.0, 20.0]),
    ],
)
def test_what_is_no_trace_is_refused(time_s: list[float], temperature_c: list[float]) -> None:
    assert refused(np.array(time_s), np.array(temperature_c), 1.0).kind == "not_numbers"


def test_words_are_no_numbers() -> None:
    with pytest.raises(OnceRefused, match="not a number"):
        extrapolate(np.array(["a", "b"]), np.array([1.0, 2.0]), 0.5)


@pytest.mark.parametrize("change_c", [9.0, -9.0])
def test_the_predicted_bias_explains_most_of_what_a_curved_fall_does_to_the_lines(change_c: float) -> None:
    missed, left = [], []
    for seed in range(6):
        time_s, temperature_c = cup_trace(change_c, loss_s=1.2e-3, seed=seed)
        heat = fit_once(Trace(time_s, temperature_c), MIXED_S, known_setup())
        bias = predicted_bias_c(heat, time_s, press_s=MIXED_S)
        assert bias is not None
        missed.append(extrapolate(time_s, temperature_c, MIXED_S).change_c - change_c)
        left.append(missed[-1] - bias)
    assert np.mean(missed) * change_c < 0.0
    assert abs(np.mean(missed)) > 0.05
    assert abs(np.mean(left)) < 0.4 * abs(np.mean(missed))
