"""The line fit against published values: GUM H.3, NIST StRD, inverse regression, two-line data."""

import math

import numpy as np
import pytest

from station.analysis.lines.fit import LineFit, LinesRefused, cross, fit_line, predict_with_u, read_back, student_t

# Thermometer calibration, JCGM 100:2008 (GUM), table H.6: temperature / °C and correction / °C.
GUM_T = [21.521, 22.012, 22.512, 23.003, 23.507, 23.999, 24.513, 25.002, 25.503, 26.010, 26.511]
GUM_B = [-0.171, -0.169, -0.166, -0.159, -0.164, -0.165, -0.156, -0.157, -0.159, -0.161, -0.160]

# NIST StRD, Norris (y, x), itl.nist.gov/div898/strd; US Government work.
NORRIS = """.1,.2 338.8,337.4 118.1,118.2 888.0,884.6 9.2,10.1 228.1,226.5 668.5,666.3 998.5,996.3 449.1,448.6
778.9,777.0 559.2,558.2 .3,.4 .1,.6 778.1,775.5 668.8,666.9 339.3,338.0 448.9,447.5 10.8,11.6 557.7,556.0
228.3,228.1 998.0,995.8 888.8,887.6 119.6,120.2 .3,.3 .6,.3 557.6,556.8 339.3,339.1 888.0,887.2 998.5,999.0
778.9,779.0 10.2,11.1 117.6,118.3 228.9,229.2 668.4,669.1 449.2,448.9 .2,.5"""

# NIST StRD, Pontius: load cell, quadratic; x = 150000 ... 3000000 twice.
PONTIUS_Y = """.11019 .21956 .32949 .43899 .54803 .65694 .76562 .87487 .98292 1.09146 1.20001 1.30822 1.41599
1.52399 1.63194 1.73947 1.84646 1.95392 2.06128 2.16844 .11052 .22018 .32939 .43886 .54798 .65739 .76596 .87474
.98300 1.09150 1.20004 1.30818 1.41613 1.52408 1.63159 1.73965 1.84696 1.95445 2.06177 2.16829"""

# Band height of stagnant surface layers: D. W. Bacon and D. G. Watts, Biometrika 58, 525 (1971), 29 pairs.
BAND_X = """-1.39 -1.39 -1.08 -1.08 -.94 -.80 -.63 -.63 -.25 -.25 -.12 -.12 .01 .11 .11 .11 .25 .25 .34 .34 .44
.59 .70 .70 .85 .85 .99 .99 1.19"""
BAND_Y = """1.12 1.12 .99 1.03 .92 .90 .81 .83 .65 .67 .60 .59 .51 .44 .43 .43 .33 .30 .25 .24 .13 -.01 -.13
-.14 -.30 -.33 -.46 -.43 -.65"""


def numbers(text: str) -> np.ndarray:
    return np.array([float(word) for word in text.split()])


def gum_line() -> LineFit:
    return fit_line(np.array(GUM_T) - 20.0, GUM_B)


def test_gum_h3_to_all_printed_digits() -> None:
    line = gum_line()
    assert round(line.intercept, 4) == -0.1712
    assert round(line.u_intercept, 4) == 0.0029
    assert round(line.slope, 5) == 0.00218
    assert round(line.u_slope, 5) == 0.00067
    assert round(line.correlation, 3) == -0.930
    assert round(line.s, 4) == 0.0035
    value, u = predict_with_u(line, 30.0 - 20.0)
    assert (round(value, 4), round(u, 4)) == (-0.1494, 0.0041)
    assert line.covariance / (line.u_intercept * line.u_slope) == pytest.approx(line.correlation)


def test_gum_h3_predicted_corrections_as_printed() -> None:
    # Table H.6, column of predicted corrections.
    printed = [-0.1679, -0.1668, -0.1657, -0.1646, -0.1635, -0.1625, -0.1614, -0.1603, -0.1592, -0.1581, -0.1570]
    assert [round(gum_line().at(t - 20.0), 4) for t in GUM_T] == printed


def test_gum_h3_centred_on_the_mean_has_no_correlation() -> None:
    t = np.array(GUM_T)
    line = fit_line(t - t.mean(), GUM_B)
    assert line.correlation == pytest.approx(0.0, abs=1e-9)
    assert line.intercept == pytest.approx(-0.16245455, abs=5e-9)


def test_nist_norris_certified_values() -> None:
    y, x = np.array([pair.split(",") for pair in NORRIS.split()], dtype=float).T
    line = fit_line(x, y)
    assert line.count == 36
    assert line.intercept == pytest.approx(-0.262323073774029, rel=1e-11)
    assert line.u_intercept == pytest.approx(0.232818234301152, rel=1e-11)
    assert line.slope == pytest.approx(1.00211681802045, rel=1e-13)
    assert line.u_slope == pytest.approx(0.429796848199937e-03, rel=1e-11)
    assert line.s == pytest.approx(0.884796396144373, rel=1e-11)


def test_nist_pontius_certified_curvature_by_three_straight_lines() -> None:
    """With the straight part taken out of y and of x², the line between what is left has slope B2."""
    x = np.tile(np.arange(1, 21) * 150000.0, 2)
    y, square = numbers(PONTIUS_Y), x * x
    y_left = y - [fit_line(x, y).at(v) for v in x]
    square_left = square - [fit_line(x, square).at(v) for v in x]
    line = fit_line(square_left, y_left)
    assert line.slope == pytest.approx(-0.316081871345029e-14, rel=1e-10)
    s = math.sqrt(line.sse / (40 - 3))
    assert s == pytest.approx(0.205177424076185e-03, rel=1e-10)
    assert line.with_s(s, 37).u_slope == pytest.approx(0.486652849992036e-16, rel=1e-9)


def test_weights_of_whole_numbers_are_repeated_points() -> None:
    x, y, times = [0.0, 1.0, 2.0, 4.0], [1.0, 2.2, 2.7, 5.3], [1, 3, 2, 1]
    weighted = fit_line(x, y, u_y=1 / np.sqrt(times))
    repeated = fit_line(np.repeat(x, times), np.repeat(y, times))
    assert weighted.slope == pytest.approx(repeated.slope)
    assert weighted.intercept == pytest.approx(repeated.intercept)
    assert weighted.sse == pytest.approx(repeated.sse)
    assert weighted.with_s(1.0, 2).u_slope == pytest.approx(repeated.with_s(1.0, 2).u_slope)


# F. A. Graybill and H. K. Iyer, Regression Analysis: Concepts and Applications (1994), chapter 6: a thermostat
# (p. 431, one new observation) and a reaction chamber (p. 433, a mean response).
THERMOSTAT = np.arange(96.0, 111.0, 2.0), [95.71, 98.16, 99.52, 102.09, 103.79, 106.18, 108.14, 110.21]
CHAMBER = (
    np.arange(0.0, 101.0, 10.0),
    [206.36, 225.52, 252.18, 289.33, 318.11, 349.49, 383.03, 410.70, 444.40, 469.14, 501.16],
)


def test_reading_a_thermostat_back() -> None:
    x, interval = read_back(fit_line(*THERMOSTAT), 104.0, level=0.95, new_observation=True)
    assert x == pytest.approx(103.995, abs=5e-4)
    assert interval == pytest.approx((103.40405, 104.58946), abs=6e-6)
    x, interval = read_back(fit_line(*THERMOSTAT), 100.0, level=0.90, new_observation=True)
    assert x == pytest.approx(100.1123, abs=5e-5)
    assert interval == pytest.approx((99.63, 100.59), abs=6e-3)


def test_reading_a_chamber_back() -> None:
    x, interval = read_back(fit_line(*CHAMBER), 400.0, level=0.99)
    assert x == pytest.approx(66.52, abs=5e-4)
    assert interval == pytest.approx((65.07, 68.03), abs=6e-3)


def test_reading_back_a_flat_line_has_no_interval() -> None:
    line = fit_line([0, 1, 2, 3], [1.0, 3.0, 1.0, 3.1])
    assert read_back(line, 2.0)[1] is None


def test_stagnant_band_height_two_line_least_squares() -> None:
    # Crossings of ordinary lines split after 12, 13 and 16 points, and the least-squares solution in full,
    # computed with two general libraries for piecewise lines.
    x, y = numbers(BAND_X), numbers(BAND_Y)
    found = {n: cross(fit_line(x[:n], y[:n]), fit_line(x[n:], y[n:])) for n in (12, 13, 16)}
    assert [round(found[n].x, 5) for n in (12, 13, 16)] == [0.00633, 0.03591, 0.12091]
    best = found[13]
    before, after = fit_line(x[:13], y[:13]), fit_line(x[13:], y[13:])
    assert best.x == pytest.approx(0.0359120, abs=5e-8)
    assert best.y == pytest.approx(0.529503, abs=5e-7)
    assert best.s == pytest.approx(0.0193715, abs=5e-8)
    assert best.u_x == pytest.approx(0.021886, abs=5e-7)
    assert best.u_y == pytest.approx(0.01762, abs=6e-6)
    assert before.slope == pytest.approx(-0.422077, abs=5e-7)
    assert after.slope == pytest.approx(-1.016593, abs=5e-7)
    assert before.with_s(best.s, 25).u_slope == pytest.approx(0.01140, abs=6e-6)
    assert after.with_s(best.s, 25).u_slope == pytest.approx(0.01411, abs=6e-6)


def test_stagnant_band_height_agrees_with_the_published_bayesian_change_point() -> None:
    # OpenBUGS 3.2.3 examples, "Stagnant": x.change 0.02557 (sd 0.03249; 95 % -0.04228 to +0.08243).
    x, y = numbers(BAND_X), numbers(BAND_Y)
    best = cross(fit_line(x[:13], y[:13]), fit_line(x[13:], y[13:]))
    assert abs(best.x - 0.02557) < 0.03249
    assert best.interval is not None
    assert best.interval[0] < 0.02557 < best.interval[1]


# Class data as in test_lines.py (RSC Education / AQA practical handbook).
CLASS_V = np.arange(0.0, 41.0, 5.0)
CLASS_T = np.array([20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8])


def test_two_readings_on_the_falling_arm_leave_the_interval_almost_without_end() -> None:
    crossing = cross(fit_line(CLASS_V[:5], CLASS_T[:5]), fit_line(CLASS_V[7:], CLASS_T[7:]))
    assert crossing.x == pytest.approx(23.997, abs=5e-4)
    assert crossing.u_x == pytest.approx(4.307, abs=5e-4)
    assert crossing.g == pytest.approx(0.982, abs=5e-4)
    assert crossing.interval == pytest.approx((-1309.6, 31.80), abs=6e-2)


def test_trial_two_has_no_interval_at_all() -> None:
    trial_2 = np.array([21.0, 24.6, 27.6, 29.6, 31.3, 32.8, 32.6, 31.8, 31.0])
    crossing = cross(fit_line(CLASS_V[:5], trial_2[:5]), fit_line(CLASS_V[7:], trial_2[7:]))
    assert crossing.x == pytest.approx(23.363, abs=5e-4)
    assert crossing.g == pytest.approx(1.05, abs=5e-3)
    assert crossing.interval is None


@pytest.mark.parametrize(
    ("before", "after", "crossing", "interval"),
    [(6, 6, 27.178, (26.07, 28.17)), (5, 6, 27.018, (25.58, 28.34))],
)
def test_heat_corrected_class_data_cross_three_cm3_later(
    before: int, after: int, crossing: float, interval: tuple[float, float]
) -> None:
    heat = (30 + CLASS_V) * (CLASS_T - CLASS_T[0])
    found = cross(fit_line(CLASS_V[:before], heat[:before]), fit_line(CLASS_V[after:], heat[after:]))
    assert found.x == pytest.approx(crossing, abs=5e-4)
    assert found.interval == pytest.approx(interval, abs=6e-3)


def test_parallel_lines_and_lines_without_spare_points_are_refused() -> None:
    with pytest.raises(LinesRefused, match="parallel"):
        cross(fit_line([0, 1, 2], [0, 1, 2]), fit_line([5, 6, 7], [5, 6, 7]))
    with pytest.raises(LinesRefused, match="at least three"):
        cross(fit_line([0, 1], [0, 1]), fit_line([2, 3], [1, 0]))


@pytest.mark.parametrize(
    ("x", "y", "u_y"),
    [
        ([1.0], [1.0], None),
        ([1.0, 1.0], [1.0, 2.0], None),
        ([1.0, math.nan], [1.0, 2.0], None),
        ([1.0, 2.0], [1.0], None),
        ([1.0, 2.0], [1.0, 2.0], [1.0, 0.0]),
        ([1.0, 2.0], [1.0, 2.0], [1.0]),
    ],
)
def test_points_that_make_no_line_raise(x: list[float], y: list[float], u_y: list[float] | None) -> None:
    with pytest.raises(ValueError, match=r"line|uncertainty"):
        fit_line(x, y, u_y)


def test_student_t_as_tabled() -> None:
    # Two-sided 95 %, any statistical table.
    tabled = {1: 12.7062, 2: 4.3027, 3: 3.1824, 5: 2.5706, 10: 2.2281, 30: 2.0423}
    assert {n: round(student_t(n), 4) for n in tabled} == tabled
