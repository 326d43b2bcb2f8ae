"""Mean curve and mean result of repeats."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.lines.crossing import fit_lines
from station.analysis.repeats import mean_of_repeats, summarise, uneven

VOLUME_CM3 = np.arange(0.0, 41.0, 5.0)
# RSC Education / AQA practical handbook, "Typical results": two trials and their mean as printed.
TRIAL_1_C = [20.0, 24.0, 26.8, 28.6, 30.8, 31.8, 32.0, 31.6, 30.6]
TRIAL_2_C = [21.0, 24.6, 27.6, 29.6, 31.3, 32.8, 32.6, 31.8, 31.0]
MEAN_C = [20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8]


def test_mean_curve_of_the_class_data_as_printed() -> None:
    readings = mean_of_repeats([VOLUME_CM3, VOLUME_CM3], [TRIAL_1_C, TRIAL_2_C])
    assert [r.temperature_c for r in readings] == pytest.approx(MEAN_C)
    assert [r.portion for r in readings] == list(range(9))
    assert all(r.count == 2 for r in readings)
    assert readings[0].sd_c == pytest.approx(math.sqrt(0.5))
    assert not uneven(readings)
    crossing = fit_lines([r.volume_cm3 for r in readings], [r.temperature_c for r in readings])
    assert crossing.end_point_cm3 == pytest.approx(22.323, abs=5e-4)


def test_a_missing_reading_is_left_out_of_its_portion_and_shows() -> None:
    readings = mean_of_repeats([[0, 5, 10], [0, 5]], [[20.0, math.nan, 26.0], [21.0, 24.0]])
    assert [(r.portion, r.temperature_c, r.count) for r in readings] == [(0, 20.5, 2), (1, 24.0, 1), (2, 26.0, 1)]
    assert readings[1].sd_c is None
    assert uneven(readings)


def test_a_portion_nobody_read_is_left_out() -> None:
    readings = mean_of_repeats([[0, 5, 10]], [[20.0, math.nan, 26.0]])
    assert [r.portion for r in readings] == [0, 2]
    assert mean_of_repeats([], []) == ()


def test_volumes_that_differ_are_averaged_too() -> None:
    readings = mean_of_repeats([[0, 5.0], [0, 5.4]], [[20, 24], [20, 25]])
    assert readings[1].volume_cm3 == pytest.approx(5.2)


def test_an_anomalous_reading_is_flagged_by_repeat_and_kept_in_the_mean() -> None:
    temperatures = [[20.0, 24.0], [20.1, math.nan], [20.0, 24.1], [20.1, 28.0], [20.0, 24.05]]
    readings = mean_of_repeats([[0, 5]] * 5, temperatures, step_c=0.0625)
    assert readings[0].anomaly is None
    found = readings[1].anomaly
    assert found is not None
    assert (found.index, found.value) == (3, 28.0)
    assert readings[1].temperature_c == pytest.approx((24.0 + 24.1 + 28.0 + 24.05) / 4)


def test_repeats_need_a_temperature_for_each_volume() -> None:
    with pytest.raises(ValueError, match="NaN"):
        mean_of_repeats([[0, 5, 10]], [[20.0, 24.0]])


def test_scatter_that_exceeds_the_repeats_own_u_decides() -> None:
    result = summarise([24.0, 25.0, 26.0], [0.1, 0.1, 0.1])
    assert result.basis == "scatter of repeats"
    assert result.u == pytest.approx(1 / math.sqrt(3))
    # Student's t for two degrees of freedom: 4.3027.
    assert result.interval_95 == pytest.approx((25 - 4.3027 / math.sqrt(3), 25 + 4.3027 / math.sqrt(3)), abs=1e-4)


def test_two_repeats_that_scatter_as_their_own_u_says_do_not_get_the_t_of_one_degree() -> None:
    result = summarise([24.0, 24.6], [0.4, 0.4])
    assert result.basis == "scatter of repeats"
    # Student's t for 1 + 8 degrees of freedom: 2.2622 (JCGM 100:2008, G.4.2, own u known to a quarter).
    assert result.interval_95[1] - result.mean == pytest.approx(2.2622 * 0.3, abs=1e-4)


def test_a_lucky_agreement_does_not_make_u_small() -> None:
    result = summarise([25.0, 25.01], [0.3, 0.3])
    assert result.basis == "uncertainty of each repeat"
    assert result.u == pytest.approx(0.3 / math.sqrt(2))


def test_school_convention_stands_beside() -> None:
    school = summarise([23.1, 23.2], [0.1, 0.1]).school
    assert school is not None
    assert (school.convention, round(school.plus_minus, 10)) == ("half the range", 0.05)


def test_what_all_repeats_share_does_not_average_out() -> None:
    alone, shared = summarise([24.0, 25.0, 26.0]), summarise([24.0, 25.0, 26.0], u_common=0.5)
    assert shared.u == pytest.approx(math.hypot(alone.u, 0.5))
    assert shared.interval_95[1] > alone.interval_95[1]


def test_a_single_repeat_has_its_own_u_and_no_spread() -> None:
    result = summarise([25.3], [0.2])
    assert (result.mean, result.u, result.count) == (25.3, 0.2, 1)
    assert result.sd is None
    assert result.school is None
    assert result.interval_95 == pytest.approx((25.3 - 0.392, 25.3 + 0.392), abs=1e-4)


def test_an_anomalous_result_is_flagged_not_dropped() -> None:
    result = summarise([24.9, 25.0, 25.1, 29.0], [0.1] * 4)
    assert result.anomaly is not None
    assert result.anomaly.index == 3
    assert result.mean == pytest.approx(26.0)


@pytest.mark.parametrize(
    ("values", "u_values"), [([], None), ([25.0], None), ([25.0, math.nan], None), ([25.0, 26.0], [0.1])]
)
def test_results_without_a_mean_raise(values: list[float], u_values: list[float] | None) -> None:
    with pytest.raises(ValueError, match="needs"):
        summarise(values, u_values)


@given(st.lists(st.floats(10, 40), min_size=2, max_size=8), st.floats(0.01, 2))
def test_u_is_never_below_either_of_its_sources(values: list[float], u: float) -> None:
    result = summarise(values, [u] * len(values))
    assert result.u >= u / math.sqrt(len(values)) - 1e-12
    assert result.u >= float(np.std(values, ddof=1)) / math.sqrt(len(values)) - 1e-12
    assert result.interval_95[0] <= result.mean <= result.interval_95[1]
