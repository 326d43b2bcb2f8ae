"""The parts of the fit: loss with steps, the plan's scale, joined branches, first guesses."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.heat.model import Layout
from station.analysis.heat.solver import PlanScale, likely_noise, loss
from station.analysis.heat.start import bends


@given(st.floats(-0.5, 0.5), st.floats(0.008, 0.2))
def test_slope_and_curvature_of_the_loss_are_its_derivatives(residual_c: float, noise_c: float) -> None:
    step = 1e-5
    at = [loss(np.array([residual_c + d]), noise_c, 0.0625) for d in (-step, 0.0, step)]
    assert at[1][1][0] == pytest.approx((at[2][0] - at[0][0]) / (4.0 * step), rel=1e-3, abs=1e-3)
    slope = (at[2][1][0] - at[0][1][0]) / (2.0 * step)
    assert at[1][2][0] == pytest.approx(slope, rel=1e-2, abs=0.05)


@pytest.mark.parametrize("noise_c", [0.02, 0.05])
def test_likely_noise_finds_logistic_noise(noise_c: float) -> None:
    rng = np.random.default_rng(1)
    true = rng.uniform(20.0, 22.0, 4000)
    seen = np.round((true + rng.logistic(0.0, noise_c, 4000)) / 0.0625) * 0.0625
    assert likely_noise(seen - true, 0.0625) == pytest.approx(noise_c, rel=0.15)


@given(st.lists(st.floats(3.0, 7.0), min_size=4, max_size=8), st.floats(0.05, 0.95))
def test_plan_scale_and_true_scale_go_back_and_forth(volumes: list[float], share: float) -> None:
    layout = Layout(len(volumes))
    theta = np.zeros(layout.size)
    theta[layout.volumes] = volumes
    theta[0] = share * sum(volumes)
    scale = PlanScale.of(np.full(len(volumes), 5.0))
    place = scale.place(theta)
    back, turn = scale.theta(place)
    assert back[0] == pytest.approx(theta[0], rel=1e-9)
    moved = place.copy()
    moved[layout.volumes] += 1e-6
    assert scale.theta(moved)[0][0] - back[0] == pytest.approx(1e-6 * turn[layout.volumes].sum(), rel=1e-3)


def test_bends_finds_the_bend_of_exact_heat() -> None:
    volume = np.arange(0.0, 50.0, 5.0)
    best = bends(56.0 * np.minimum(volume, 23.0) - 0.3 * volume, volume)[0]
    assert best.end_point_cm3 == pytest.approx(23.0, abs=0.11)
    assert best.heat_j_cm3 == pytest.approx(56.0, rel=0.01)
