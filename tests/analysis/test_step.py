"""The step of a thermometer, read off what it said."""

import numpy as np
import pytest

from station.analysis.heat.inputs import USUAL_STEP_C, step_of


@pytest.mark.parametrize("step_c", [1.0, 0.5, 0.25, 0.2, 0.125, 0.1, 0.0625, 0.05, 0.02, 0.01, 0.001])
@pytest.mark.parametrize("offset_c", [0.0, -0.137])
def test_the_step_is_found_whatever_the_correction(step_c: float, offset_c: float) -> None:
    time_s = np.arange(600.0)
    true_c = 20.0 + 7.0 * (1.0 - np.exp(-time_s / 120.0)) + 0.03 * np.random.default_rng(3).standard_normal(600)
    seen_c = np.round(true_c / step_c) * step_c * (1.0 + 0.002 * (offset_c != 0.0)) + offset_c
    assert step_of(seen_c) == step_c


def test_a_correction_that_changed_on_the_way_does_not_make_it_finer() -> None:
    seen_c = np.round((20.0 + np.arange(300.0) / 40.0) / 0.0625) * 0.0625
    seen_c[150:] += 0.0314
    assert step_of(seen_c) == 0.0625


def test_of_a_level_trace_nothing_is_known() -> None:
    assert step_of(np.full(50, 21.5)) == step_of(np.array([21.5])) == USUAL_STEP_C


def test_what_has_no_steps_has_the_finest() -> None:
    assert step_of(20.0 + np.random.default_rng(1).uniform(0.0, 1.0, 300)) <= 0.002
