"""What must hold for any readings: units, order, direction, and agreement with a general library."""

import warnings

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.stats import linregress

from station.analysis.lines.crossing import CrossingResult, fit_lines
from station.analysis.lines.fit import LinesRefused

with warnings.catch_warnings():
    warnings.simplefilter("ignore")
    import pwlf

VOLUME_CM3 = np.arange(0.0, 46.0, 5.0)


def readings(end_point_cm3: float, seed: int, sd_c: float) -> np.ndarray:
    rise = 0.3 * np.minimum(VOLUME_CM3, end_point_cm3)
    fall = -0.12 * np.maximum(VOLUME_CM3 - end_point_cm3, 0)
    temperature_c: np.ndarray = 20 + rise + fall + np.random.default_rng(seed).normal(0, sd_c, VOLUME_CM3.size)
    return temperature_c


cases = st.builds(readings, st.floats(16, 29), st.integers(0, 10_000), st.sampled_from([0.01, 0.05, 0.2]))


@given(cases, st.floats(0.1, 50), st.floats(-30, 30), st.floats(0.1, 20), st.floats(-100, 100))
def test_other_units_give_the_same_crossing(
    temperature_c: np.ndarray, scale: float, shift: float, volume_scale: float, volume_shift: float
) -> None:
    plain = fit_lines(VOLUME_CM3, temperature_c)
    other = fit_lines(VOLUME_CM3 * volume_scale + volume_shift, temperature_c * scale + shift)
    assert (other.before.points, other.after.points) == (plain.before.points, plain.after.points)
    assert other.end_point_cm3 == pytest.approx(plain.end_point_cm3 * volume_scale + volume_shift, abs=1e-6)
    assert other.u_end_point_cm3 == pytest.approx(plain.u_end_point_cm3 * volume_scale, rel=1e-6)
    assert other.temperature_c == pytest.approx(plain.temperature_c * scale + shift, abs=1e-6)
    assert other.u_temperature_c == pytest.approx(plain.u_temperature_c * scale, rel=1e-6)
    assert other.g == pytest.approx(plain.g, rel=1e-6)


@given(cases, st.permutations(range(VOLUME_CM3.size)))
def test_the_order_of_readings_does_not_matter(temperature_c: np.ndarray, order: list[int]) -> None:
    plain, mixed = fit_lines(VOLUME_CM3, temperature_c), fit_lines(VOLUME_CM3[order], temperature_c[order])
    assert mixed.end_point_cm3 == pytest.approx(plain.end_point_cm3, abs=1e-9)
    assert [order[i] for i in mixed.before.points] == list(plain.before.points)
    assert [order[i] for i in mixed.after.points] == list(plain.after.points)


@given(cases)
def test_taking_heat_in_is_giving_it_out_upside_down(temperature_c: np.ndarray) -> None:
    up, down = fit_lines(VOLUME_CM3, temperature_c), fit_lines(VOLUME_CM3, -temperature_c)
    assert down.interval_95_cm3 == pytest.approx(up.interval_95_cm3, abs=1e-9)
    assert up.rises_first
    assert not down.rises_first


def one_is_level(temperature_c: list[float], result: CrossingResult) -> bool:
    """Whether one line alone rises (falls) by at most 1.5 of the smallest differences, or 2 of its slope's u."""
    steps = np.diff(sorted(set(temperature_c)))
    step_c = float(steps[steps > 1e-9 * np.abs(temperature_c).max()].min())
    level = []
    for arm in (result.before, result.after):
        found = linregress(VOLUME_CM3[list(arm.points)], np.array(temperature_c)[list(arm.points)])
        rise_c = abs(found.slope) * float(np.ptp(VOLUME_CM3[list(arm.points)]))
        level.append(bool(rise_c <= 1.5 * step_c or abs(found.slope) <= 2 * found.stderr))
    return level[0] != level[1]


@st.composite
def level_arms(draw: st.DrawFn) -> tuple[np.ndarray, np.ndarray, float, float]:
    """Volumes, readings in steps of a division with one level arm, end-point, how far the scatter may move it."""
    portion_cm3, division_c = draw(st.sampled_from([2.0, 5.0, 10.0])), draw(st.sampled_from([0.0625, 0.1, 0.5]))
    before, after = draw(st.integers(4, 8)), draw(st.integers(4, 8))
    volume_cm3 = portion_cm3 * np.arange(before + after)
    end_point_cm3 = portion_cm3 * (before - draw(st.floats(0.1, 0.9)))
    step_c = division_c * draw(st.floats(8, 40)) * draw(st.sampled_from([1, -1]))
    past = volume_cm3 - end_point_cm3
    bent_cm3 = np.maximum(past, 0) if draw(st.booleans()) else np.minimum(past, 0)
    # Up to half a division from elsewhere, and up to half a one from rounding.
    off_c = division_c * np.array(draw(st.lists(st.floats(-0.5, 0.5), min_size=past.size, max_size=past.size)))
    temperature_c = np.round((20 + bent_cm3 * step_c / portion_cm3 + off_c) / division_c) * division_c
    return volume_cm3, temperature_c, end_point_cm3, portion_cm3 * 5 * division_c / abs(step_c)


@given(level_arms())
def test_a_level_arm_gives_its_crossing_whichever_end_it_is_at(
    case: tuple[np.ndarray, np.ndarray, float, float],
) -> None:
    volume_cm3, temperature_c, end_point_cm3, slack_cm3 = case
    result = fit_lines(volume_cm3, temperature_c)
    assert result.end_point_cm3 == pytest.approx(end_point_cm3, abs=slack_cm3)
    low, high = result.interval_95_cm3
    assert low <= result.end_point_cm3 <= high


@given(st.lists(st.floats(-50, 100), min_size=9, max_size=9))
def test_any_nine_readings_are_answered_or_refused_in_words(temperature_c: list[float]) -> None:
    try:
        result = fit_lines(VOLUME_CM3[:9], temperature_c)
    except LinesRefused as refused:
        assert refused.reason
        return
    assert sorted((*result.before.points, *result.left_out, *result.after.points)) == list(range(9))
    assert min(len(result.before.points), len(result.after.points)) >= 3
    assert VOLUME_CM3[result.before.points[-1]] <= result.end_point_cm3
    assert result.end_point_cm3 <= VOLUME_CM3[result.after.points[0]]
    assert result.before.slope_c_cm3 * result.after.slope_c_cm3 < 0 or one_is_level(temperature_c, result)
    low, high = result.interval_95_cm3
    assert low <= result.end_point_cm3 <= high
    assert result.g < 1


def joined(temperature_c: np.ndarray, result: CrossingResult) -> tuple[np.ndarray, float]:
    """Slopes and sum of squares of pwlf's two joined lines, the join given, through the readings used."""
    used = [*result.before.points, *result.after.points]
    model = pwlf.PiecewiseLinFit(VOLUME_CM3[used], temperature_c[used])
    squares = model.fit_with_breaks([VOLUME_CM3[0], result.end_point_cm3, VOLUME_CM3[-1]])
    return model.slopes, float(np.sum(squares))


@given(cases)
@settings(max_examples=25)
def test_pwlf_draws_the_same_lines_with_the_join_at_our_crossing(temperature_c: np.ndarray) -> None:
    result = fit_lines(VOLUME_CM3, temperature_c)
    slopes, squares = joined(temperature_c, result)
    assert slopes == pytest.approx([result.before.slope_c_cm3, result.after.slope_c_cm3], abs=1e-8)
    assert squares == pytest.approx(result.s_c**2 * result.degrees, rel=1e-6)


@pytest.mark.parametrize(("end_point_cm3", "seed"), [(17.3, 1), (22.8, 2), (23.9, 3), (27.0, 4)])
def test_pwlf_finds_the_same_join_by_its_own_search(end_point_cm3: float, seed: int) -> None:
    temperature_c = readings(end_point_cm3, seed, 0.05)
    result = fit_lines(VOLUME_CM3, temperature_c)
    model = pwlf.PiecewiseLinFit(VOLUME_CM3, temperature_c, seed=seed)
    join = float(model.fitfast(2)[1])
    assert VOLUME_CM3[result.before.points[-1]] < join < VOLUME_CM3[result.after.points[0]]
    assert result.end_point_cm3 == pytest.approx(join, abs=1e-3)


def test_pwlf_agrees_on_the_class_data() -> None:
    # RSC Education / AQA practical handbook, mean of two trials.
    volume_cm3 = np.arange(0.0, 41.0, 5.0)
    temperature_c = np.array([20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8])
    model = pwlf.PiecewiseLinFit(volume_cm3, temperature_c, seed=1)
    join = float(model.fitfast(2, pop=8)[1])
    assert fit_lines(volume_cm3, temperature_c).end_point_cm3 == pytest.approx(join, abs=1e-3)
