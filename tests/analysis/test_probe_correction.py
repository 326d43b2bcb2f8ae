"""Corrections of a probe against the example H.3 of the GUM, to all digits that it prints, and by their own logic."""

from math import inf, sqrt

import numpy as np
import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from station.analysis.lines.fit import student_t
from station.analysis.probe.correction import (
    U_ELSEWHERE,
    Correction,
    CorrectionRefused,
    line_of,
    offset_alone,
    student_95,
    through_two,
)

# JCGM 100:2008, table H.6: readings of the thermometer in °C and their corrections; reference temperature 20 °C.
T = (21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511)
B = (-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160)
PREDICTED = (-0.1679, -0.1668, -0.1657, -0.1646, -0.1635, -0.1625, -0.1614, -0.1603, -0.1592, -0.1581, -0.1570)
KNOWN = tuple(t + b for t, b in zip(T, B, strict=True))


def test_the_line_of_the_gum_to_all_printed_digits() -> None:
    line = line_of(T, KNOWN, 0.0, 20.0)
    assert round(line.offset_c, 4) == -0.1712
    assert round(line.u_offset_c, 4) == 0.0029
    assert round(line.slope, 5) == 0.00218
    assert round(line.u_slope, 5) == 0.00067
    assert round(line.r, 3) == -0.930
    assert round(line.s_c, 4) == 0.0035
    assert line.freedom == 9
    assert line.factor_95() == pytest.approx(2.2622, abs=1e-3)  # Student's t for 9, as in any table
    assert round(line.of(30.0), 4) == -0.1494
    assert round(line.u_of(30.0), 4) == 0.0041
    assert tuple(round(line.of(t), 4) for t in T) == PREDICTED


def test_about_its_middle_the_line_has_no_correlation_and_says_the_same() -> None:
    line, about_20 = line_of(T, KNOWN, 0.0), line_of(T, KNOWN, 0.0, 20.0)
    assert line.r == pytest.approx(0.0, abs=1e-9)
    assert line.u_offset_c == pytest.approx(0.00105456, abs=1e-8)
    for celsius in (0.0, 20.0, 30.0, 100.0):
        assert line.of(celsius) == pytest.approx(about_20.of(celsius), abs=1e-9)
        assert line.u_of(celsius) == pytest.approx(about_20.u_of(celsius), abs=1e-9)


celsius = st.floats(-5.0, 110.0)


@settings(max_examples=60)
@given(st.lists(st.tuples(celsius, st.floats(-1.0, 1.0)), min_size=3, max_size=12), celsius)
def test_a_line_is_numpys_least_squares_with_its_covariance(points: list[tuple[float, float]], at_c: float) -> None:
    probe = [t for t, _ in points]
    assume(max(probe) - min(probe) > 4.5)
    line = line_of(probe, [t + b for t, b in points], 0.0)
    x = np.array(probe) - line.at_c
    design = np.column_stack([np.ones(len(x)), x])
    found, *_ = np.linalg.lstsq(design, np.array([b for _, b in points]), rcond=None)
    assert line.of(at_c) == pytest.approx(found[0] + found[1] * (at_c - line.at_c), abs=1e-6)
    cov = line.s_c**2 * np.linalg.inv(design.T @ design)
    row = np.array([1.0, at_c - line.at_c])
    assert line.u_of(at_c) == pytest.approx(sqrt(max(row @ cov @ row, 0.0)), rel=1e-5, abs=1e-6)


@settings(max_examples=60)
@given(st.floats(-2.0, 2.0), st.floats(-2.0, 2.0), st.floats(0.005, 0.3), st.floats(0.005, 0.3))
def test_through_two_points_the_line_is_as_sure_as_each_of_them_where_it_stands(
    low_c: float, high_c: float, u_low: float, u_high: float
) -> None:
    low, high = offset_alone(0.0, u_low, low_c, 0.01), offset_alone(99.0, u_high, 99.0 + high_c, 0.02)
    line = through_two(low, high)
    assert line.of(low.at_c) == pytest.approx(low_c)
    assert line.of(high.at_c) == pytest.approx(high_c)
    assert line.u_of(low.at_c) == pytest.approx(low.u_of(low.at_c))
    assert line.u_of(high.at_c) == pytest.approx(high.u_of(high.at_c))
    assert line.u_of(49.5) <= max(line.u_of(0.0), line.u_of(99.0)) + 1e-12


def test_an_offset_alone_is_less_sure_away_from_where_it_was_found() -> None:
    ice = offset_alone(0.40, 0.02, 0.0, 0.02)
    assert ice.of(0.4) == ice.of(35.0) == pytest.approx(-0.40)
    assert ice.u_of(0.4) == pytest.approx(0.0283, abs=1e-4)
    assert ice.u_of(25.4) == pytest.approx(sqrt(0.0283**2 + (25.0 * U_ELSEWHERE) ** 2), abs=1e-4)


def test_what_the_reference_leaves_open_does_not_average_out() -> None:
    sure, less = line_of(T, KNOWN, 0.0), line_of(T, KNOWN, 0.1)
    assert less.u_of(24.0) == pytest.approx(sqrt(sure.u_of(24.0) ** 2 + 0.01))


def test_too_few_or_too_near_points_are_refused() -> None:
    with pytest.raises(CorrectionRefused, match="3 comparisons"):
        line_of([1.0, 20.0], [1.0, 20.0], 0.0)
    with pytest.raises(CorrectionRefused, match="apart"):
        line_of([20.0, 21.0, 22.0], [20.0, 21.0, 22.0], 0.0)
    with pytest.raises(CorrectionRefused, match="apart"):
        through_two(offset_alone(0.0, 0.01, 0.0, 0.01), offset_alone(1.0, 0.01, 1.0, 0.01))


@pytest.mark.parametrize("degrees", [1.0, 1.3, 2.0, 3.7, 9.0, 30.0, 400.0, 9_000.0, 1e6, inf])
def test_the_factor_of_an_interval_is_students(degrees: float) -> None:
    assert student_95(degrees) == pytest.approx(student_t(degrees), rel=1e-3)


def test_scatter_below_what_each_reading_leaves_open_is_chance() -> None:
    probe, known = [15.0, 28.0, 41.0], [15.02, 28.01, 40.99]
    bare, sure = line_of(probe, known, 0.0), line_of(probe, known, 0.0, u_each_c=0.035)
    assert bare.u_slope < 0.0003 < sure.u_slope
    assert sure.u_slope == pytest.approx(0.035 / sqrt(2.0) / 13.0)
    assert sure.u_of(28.0) == pytest.approx(0.035 / sqrt(3.0))
    assert (sure.slope, sure.s_c) == (bare.slope, bare.s_c)
    assert sure.factor_95() == pytest.approx(1.96, abs=1e-3)
    assert bare.factor_95() == pytest.approx(12.7062, abs=1e-3), "one degree of freedom and nothing else known"
    wild = line_of(probe, [15.2, 27.6, 41.2], 0.0, u_each_c=0.035)
    assert wild.u_slope == pytest.approx(wild.s_c / sqrt(2.0) / 13.0)
    assert 10.0 < wild.factor_95() < 12.7062


def test_exact_points_leave_no_scatter() -> None:
    line = line_of([0.0, 20.0, 40.0], [0.5, 20.5, 40.5], 0.0)
    assert line == Correction(20.0, 0.5, 0.0, 0.0, 0.0, 0.0, 0.0, 0.0, 1)
