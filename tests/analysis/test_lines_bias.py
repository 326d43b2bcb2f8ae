"""The bias that straight lines through raw temperatures have in an ideal cup."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.uncertainty import IdealCup, end_point_behind_cm3, predicted_bias_cm3

VOLUME_CM3 = np.arange(0.0, 46.0, 5.0)
CUP = IdealCup(acid_cm3=25.0, acid_j_cm3_k=4.05, alkali_j_cm3_k=4.05, cup_j_k=5.0)


def test_the_crossing_of_an_ideal_cup_is_about_an_eighth_low() -> None:
    assert predicted_bias_cm3(VOLUME_CM3, 25.0, CUP) == pytest.approx(-3.0, abs=0.3)


def test_without_dilution_there_is_no_bias() -> None:
    # Alkali without heat capacity does not warm up the mass: both arms are straight.
    cup = IdealCup(25.0, 4.05, 0.0, 5.0)
    rise_c = cup.rise_c(VOLUME_CM3, 23.0)
    assert rise_c[-1] == pytest.approx(23.0 / (25 * 4.05 + 5))
    arms = range(5), range(5, 10)
    assert predicted_bias_cm3(VOLUME_CM3, 23.0, cup, arms) == pytest.approx(0.0, abs=1e-9)


def test_the_heat_of_each_cm3_does_not_matter_when_both_start_alike() -> None:
    strong = IdealCup(25.0, 4.05, 4.05, 5.0, heat_j_cm3=57.0)
    weak = IdealCup(25.0, 4.05, 4.05, 5.0, heat_j_cm3=-6.0)
    for cup in (strong, weak):
        assert predicted_bias_cm3(VOLUME_CM3, 24.0, cup) == pytest.approx(
            predicted_bias_cm3(VOLUME_CM3, 24.0, CUP), abs=1e-9
        )


def test_cold_alkali_changes_the_bias() -> None:
    cold = IdealCup(25.0, 4.05, 4.05, 5.0, heat_j_cm3=57.0, alkali_above_acid_c=-2.0)
    warm = IdealCup(25.0, 4.05, 4.05, 5.0, heat_j_cm3=57.0)
    arms = range(5), range(5, 10)
    difference = predicted_bias_cm3(VOLUME_CM3, 24.0, cold, arms) - predicted_bias_cm3(VOLUME_CM3, 24.0, warm, arms)
    assert 0.001 < abs(difference) < 1


def test_readings_of_the_same_cup_show_the_predicted_bias() -> None:
    temperature_c = 20 + 57 * CUP.rise_c(VOLUME_CM3, 23.0) + 0.01 * np.sin(7 * VOLUME_CM3)
    result = fit_lines(VOLUME_CM3, temperature_c)
    arms = result.before.points, result.after.points
    bias = predicted_bias_cm3(VOLUME_CM3, 23.0, CUP, arms)
    assert result.end_point_cm3 - bias == pytest.approx(23.0, abs=0.1)


@given(st.floats(17, 30))
def test_the_end_point_behind_a_crossing_is_found_again(end_point_cm3: float) -> None:
    result = fit_lines(VOLUME_CM3, 57 * CUP.rise_c(VOLUME_CM3, end_point_cm3))
    arms = result.before.points, result.after.points
    behind = end_point_behind_cm3(result.end_point_cm3, VOLUME_CM3, CUP, arms)
    assert behind is not None
    # The crossing is as low for some later end-point too; what was found must explain the crossing.
    assert behind + predicted_bias_cm3(VOLUME_CM3, behind, CUP, arms) == pytest.approx(result.end_point_cm3, abs=1e-5)
    assert behind == pytest.approx(end_point_cm3, abs=1e-3)


def test_no_end_point_stands_behind_an_impossible_crossing() -> None:
    assert end_point_behind_cm3(2.0, VOLUME_CM3, CUP, (range(5), range(5, 10))) is None
