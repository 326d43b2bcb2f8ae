"""The first look at a trace: steps seen through a lagging probe, and the traps that the search has to leave."""

from __future__ import annotations

import numpy as np
import pytest

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import Array, Estimate, HeatSetup, Pour, Trace
from station.analysis.heat.search import best_of, branches, search
from station.analysis.heat.start import steps
from tests.benchmarks.bench_heat_cases import pours_of, setup_of, trace_of
from tests.benchmarks.scenes import make_scene
from tests.benchmarks.scenes_model import model_scene

SETUP = HeatSetup(
    Estimate(25.0, 0.06),
    lag_fast_s=Estimate(4.0, 1e-3),
    lag_slow_s=Estimate(30.0, 1e-3),
    lag_share=Estimate(0.6, 1e-3),
)
STEPS_C = np.array([3.0, 2.5, 2.2, 1.8, 0.3, -0.4, -0.4])


def _seen(hold_s: float) -> tuple[Trace, list[Pour], Array]:
    """Steps mixed in at once, through a probe that follows by 60 % with 4 s and by the rest with 30 s."""
    press_s = 20.0 + hold_s * np.arange(len(STEPS_C))
    time_s = np.arange(0.0, press_s[-1] + hold_s, 1.0)
    since = np.maximum(time_s[:, None] - press_s + 1.0, 0.0)
    risen = 1.0 - 0.6 * np.exp(-since / 4.0) - 0.4 * np.exp(-since / 30.0)
    seen = np.round((20.0 + risen @ STEPS_C) / 0.0625) * 0.0625
    return Trace(time_s, seen), [Pour(float(p), 5.0, 0.0) for p in press_s], 20.0 + np.cumsum(np.append(0.0, STEPS_C))


@pytest.mark.parametrize("hold_s", [15.0, 40.0])
def test_steps_are_found_where_no_portion_was_waited_for(hold_s: float) -> None:
    trace, pours, level_c = _seen(hold_s)
    found = steps(trace, pours, SETUP)
    assert np.abs(np.diff(found.level_c) - np.diff(level_c)).max() < 0.6
    before_next = np.interp([p.press_s for p in pours], trace.time_s, trace.temperature_c)
    assert (
        np.abs(np.diff(found.level_c)[:6] - STEPS_C[:6]).max() < 0.5 * np.abs(np.diff(before_next) - STEPS_C[:6]).max()
    )


@pytest.mark.parametrize("seed", [9435, 9471, 9475, 9480])
def test_quick_pace_is_not_caught_at_a_wrong_bend(seed: int) -> None:
    case = model_scene(seed, 0.1, hold_s=20.0)
    fit = fit_trace(case.trace, case.pours, case.setup)
    assert abs(fit.end_point_cm3 - case.end_point_cm3) < 2.5 * fit.u_end_point_cm3
    assert fit.u_end_point_cm3 < 0.8


@pytest.mark.parametrize(("seed", "hold_s"), [(4059, 20.0), (4112, 20.0), (4182, 20.0)])
def test_search_finds_what_a_start_at_the_truth_finds(seed: int, hold_s: float) -> None:
    # A probe whose lags run into each other, a portion far off its press just where the heat bends.
    case = model_scene(seed, 0.1, hold_s=hold_s)
    problem, found = search(case.setup, case.pours, case.trace)
    told = best_of(branches(problem, problem.scale.place(case.theta)))
    assert best_of(found).solution.cost < told.solution.cost + 1.0


def test_slow_mixing_and_a_slow_probe_are_told_apart() -> None:
    # Mixing of 2.5 s behind a probe of 6.6 s: caught the other way round, the end-point was 0.5 cm³ off.
    scene = make_scene(61000, "cold_alkali")
    fit = fit_trace(trace_of(scene), pours_of(scene), setup_of(scene))
    at = fit.names.index
    assert fit.parameters[at("log_mixing_s")] < fit.parameters[at("log_lag_fast_s")]
    assert fit.end_point_cm3 == pytest.approx(scene.true_end_point_cm3, abs=0.2)


def test_the_noise_counts_what_the_parameters_took_out_of_the_residuals() -> None:
    # Normal noise of 0.03 °C with steps of 1/16 °C: a logistic scale of √3/π of it.
    scales = []
    for seed in range(6):
        case = model_scene(seed, 0.1, hold_s=20.0)
        scales.append(search(case.setup, case.pours, case.trace)[0].noise_c)
    assert np.mean(scales) == pytest.approx(0.03 * np.sqrt(3.0) / np.pi, rel=0.1)
