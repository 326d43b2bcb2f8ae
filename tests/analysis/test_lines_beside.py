"""What stands beside the crossing: the school's conventions, and readings that stand off their line."""

import numpy as np
import pytest

from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.split import suspects
from station.analysis.lines.uncertainty import half_a_division, half_the_range, one_division, percentage_uncertainty

VOLUME_CM3 = np.arange(0.0, 46.0, 5.0)


def straight_arms() -> np.ndarray:
    wobble = 0.02 * np.array([1, -1, 1, 0, -1, 1, -1, 0, 1, -1])
    temperature_c: np.ndarray = 20 + np.minimum(0.3 * VOLUME_CM3, 9.66 - 0.12 * VOLUME_CM3) + wobble
    return temperature_c


# Common practice in schools, no source; the figures are ordinary arithmetic.
def test_school_conventions_by_name() -> None:
    volume = half_a_division(25.0, division=1.0)
    assert (volume.convention, volume.plus_minus, volume.percent) == ("half a division", 0.5, 2.0)
    rise = one_division(2.1, division=0.2)
    assert (rise.convention, rise.plus_minus) == ("one division", 0.2)
    assert rise.percent == pytest.approx(9.5, abs=0.05)
    titres = half_the_range([23.10, 23.20])
    assert titres.convention == "half the range"
    assert titres.plus_minus == pytest.approx(0.05)
    # ± 0.5 °C on each of two readings, a rise of 16.5 °C
    assert percentage_uncertainty(1.0, 16.5) == pytest.approx(6.1, abs=0.05)
    assert percentage_uncertainty(0.2, -2.0) == pytest.approx(10.0)


def test_school_conventions_refuse_what_has_no_meaning() -> None:
    with pytest.raises(ValueError, match="division"):
        half_a_division(25.0, division=0.0)
    with pytest.raises(ValueError, match="two repeats"):
        half_the_range([23.1])
    with pytest.raises(ValueError, match="zero"):
        percentage_uncertainty(0.1, 0.0)


def flagged(temperature_c: np.ndarray, step_c: float = 0.0) -> list[int]:
    result = fit_lines(VOLUME_CM3, temperature_c)
    arms = result.before.points, result.after.points
    return [suspect.point for suspect in suspects(VOLUME_CM3, temperature_c, arms, step_c=step_c)]


def test_ordinary_scatter_is_not_flagged() -> None:
    assert flagged(straight_arms()) == []


@pytest.mark.parametrize("point", [1, 2, 7, 8])
def test_a_reading_off_its_line_is_flagged_with_the_test_named(point: int) -> None:
    temperature_c = straight_arms()
    temperature_c[point] -= 0.5
    assert flagged(temperature_c) == [point]
    result = fit_lines(VOLUME_CM3, temperature_c)
    found = suspects(VOLUME_CM3, temperature_c, (result.before.points, result.after.points))[0]
    assert found.statistic > found.critical
    assert found.off_line_c < 0
    assert "studentised" in found.test


def test_nothing_within_a_step_of_the_probe_is_flagged() -> None:
    temperature_c = straight_arms()
    temperature_c[2] -= 0.5
    assert flagged(temperature_c, step_c=0.6) == []


def test_exact_lines_with_one_slip_flag_the_slip() -> None:
    temperature_c = 20 + np.minimum(0.3 * VOLUME_CM3, 9.66 - 0.12 * VOLUME_CM3)
    temperature_c[2] += 0.3
    arms = range(5), range(5, 10)
    assert [s.point for s in suspects(VOLUME_CM3, temperature_c, arms)] == [2]


def test_too_few_degrees_of_freedom_flag_nothing() -> None:
    assert suspects([0, 1, 2, 3, 4], [0, 1, 5, 3, 2], ([0, 1, 2], [3, 4])) == ()
