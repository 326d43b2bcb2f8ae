"""The cup model: exact derivatives, conservation of heat, and a real probe's step response."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.heat.inputs import Array
from station.analysis.heat.model import INDEX, Cup, at_pours, capacity, modes, trace

POURS = 4
TIME_S = np.arange(0.0, 240.0, 1.3)
USUAL = {
    "end_point_cm3": 12.3, "heat_j_cm3": 56.0, "start_c": 20.0, "alkali_c": 19.0, "room_c": 19.5,
    "log_loss_w_k": np.log(0.1), "log_lag_fast_s": np.log(4.6), "log_lag_slow_s": np.log(19.0), "lag_share": 0.54,
    "log_mixing_s": np.log(2.0), "slow_share": 0.05, "log_slow_mixing_s": np.log(40.0), "press_s": 0.5, "cup_j_k": 6.0,
    "wall_share": 0.5, "log_wall_s": np.log(40.0), "wall_offset_c": 0.2, "probe_offset_c": 0.5,
    "acid_volume_cm3": 25.0, "heat_capacity_scale": 1.0, "room_drift_c_s": 1e-4, "loss_curve_k": 0.02,
    "heat_slope_k": -0.0015,
}  # fmt: skip


def _cup() -> Cup:
    count = np.arange(POURS + 1, dtype=np.float64)
    return Cup(4.07, 4.14, 4.10, 0.0, 20.0, count, 25.0 + 45.0 * count)


def _theta(**changed: float) -> Array:
    layout = _cup().layout
    theta = np.zeros(layout.size)
    for name, value in {**USUAL, **changed}.items():
        theta[INDEX[name]] = value
    theta[layout.times] = 45.3 * (1.0 + np.arange(POURS))
    theta[layout.volumes] = 5.0
    return theta


def test_every_parameter_has_a_name_and_a_place() -> None:
    layout = _cup().layout
    assert len(layout.names()) == layout.size == len(set(layout.names()))
    assert layout.names()[layout.volumes][2] == "volume_cm3[3]"


@settings(max_examples=10, deadline=None)
@given(st.integers(0, 10_000))
def test_derivatives_agree_with_differences(seed: int) -> None:
    rng = np.random.default_rng(seed)
    cup, theta = _cup(), _theta()
    layout = cup.layout
    theta[: layout.moved] *= 1.0 + 0.01 * rng.standard_normal(layout.moved)
    theta[layout.mixings] = 0.2 * rng.standard_normal(POURS)
    _, jacobian = trace(cup, theta, TIME_S)
    for place in range(layout.size):
        step = 1e-6 * max(1.0, abs(theta[place]))
        up, down = theta.copy(), theta.copy()
        up[place] += step
        down[place] -= step
        difference = (trace(cup, up, TIME_S)[0] - trace(cup, down, TIME_S)[0]) / (2.0 * step)
        # A sample that a shifted pour carries into another interval is not differentiable there.
        wrong = np.abs(difference - jacobian[:, place]) > 1e-5 * (1.0 + np.abs(difference).max())
        assert wrong.sum() <= (1 if place in range(*layout.times.indices(layout.size)) else 0), layout.names()[place]


def test_heat_is_conserved_when_nothing_is_lost() -> None:
    quiet = {"log_loss_w_k": -30.0, "heat_slope_k": 0.0, "wall_offset_c": 0.0, "wall_share": 0.0}
    cup, theta = _cup(), _theta(**quiet)
    cup = Cup(4.10, 4.10, 4.10, cup.begin_s, cup.reference_c, cup.warmth_k, cup.middle_s)
    warmed = capacity(cup, theta, np.array([20.0]))[0] * at_pours(cup, theta)[-1, 1]
    began = capacity(cup, theta, np.array([0.0]))[0] * 20.0 + 4.10 * 20.0 * 19.0
    assert warmed - began == pytest.approx(56.0 * 12.3, rel=1e-9)


def test_cup_ends_at_room_temperature() -> None:
    theta = _theta(room_drift_c_s=0.0)
    assert trace(_cup(), theta, np.array([3e5]))[0][0] == pytest.approx(19.5, abs=1e-3)


def test_a_rate_that_meets_a_lag_stays_finite() -> None:
    theta = _theta(log_mixing_s=np.log(4.6), log_wall_s=np.log(19.0))
    assert np.isfinite(trace(_cup(), theta, TIME_S)[0]).all()


def test_pours_tried_in_the_wrong_order_stay_finite() -> None:
    theta = _theta(log_mixing_s=-4.0, log_slow_mixing_s=-3.0)
    theta[_cup().layout.times] = theta[_cup().layout.times][::-1]
    assert np.isfinite(modes(_cup(), theta[None]).amplitude).all()
    temperature, jacobian = trace(_cup(), theta, TIME_S)
    assert np.isfinite(temperature).all() and np.isfinite(jacobian).all()


def test_batch_agrees_with_single() -> None:
    both = modes(_cup(), np.stack([_theta(), _theta(start_c=25.0)]))
    assert np.allclose(both.amplitude[..., 1], modes(_cup(), _theta(start_c=25.0)[None]).amplitude[..., 0])


def test_two_lags_describe_a_real_step_response() -> None:
    # A DS18B20 plunged into water, one of eight loggers of a student course, Universität Hamburg 2023
    # (public repository QuentinRauschenbach/Temperature_Logger).
    time_s = np.array([
        1.14, 2.28, 3.42, 4.56, 5.7, 6.84, 7.98, 9.12, 10.26, 11.4, 12.54, 13.68, 14.82, 15.96, 17.1, 18.24,
        19.39, 20.53, 21.67, 22.81, 23.95, 25.09, 26.23, 27.37, 28.51, 29.65, 30.79, 31.93, 33.07, 34.22, 35.36,
        36.5, 37.64, 38.78, 39.92, 41.06, 42.2, 43.34, 44.48, 45.62, 46.76, 47.9, 49.04, 50.18, 51.32, 52.47,
        53.6, 54.74, 55.89, 57.03, 58.17, 59.31, 60.45, 61.59, 62.73, 63.87, 65.01, 66.15, 67.29, 68.43, 69.57,
        70.71, 71.85, 72.99, 74.13, 75.26, 76.4, 77.54, 78.68, 79.82, 80.96, 82.11, 83.27, 84.41, 85.56, 86.7,
        87.84, 88.99, 90.14, 91.28, 92.43, 93.57, 94.72, 95.87, 97.01, 98.16, 99.3, 100.45, 101.59, 102.74,
        103.89, 105.03, 106.18, 107.33, 108.47, 109.62, 110.76, 111.91, 113.05, 114.2, 115.35, 116.5, 117.64,
        118.78, 119.93,
    ])  # fmt: skip
    seen_c = np.array([
        23.44, 20.81, 18.06, 16, 14.44, 13.13, 12, 11.19, 10.38, 9.75, 9, 8.56, 8.06, 7.69, 7.25, 7, 6.69, 6.44,
        6.13, 5.88, 5.69, 5.56, 5.25, 5.25, 5.13, 4.94, 4.75, 4.69, 4.5, 4.44, 4.31, 4.31, 4.19, 4, 3.94, 3.81,
        3.81, 3.75, 3.75, 3.69, 3.63, 3.5, 3.5, 3.5, 3.5, 3.44, 3.38, 3.31, 3.25, 3.19, 3.13, 3.13, 3.06, 3.13,
        3.06, 3.06, 3.13, 3, 3, 2.94, 3, 2.94, 2.94, 2.94, 2.88, 2.88, 2.88, 2.88, 2.88, 2.88, 2.88, 2.88, 2.88,
        2.81, 2.81, 2.88, 2.81, 2.75, 2.75, 2.81, 2.81, 2.75, 2.75, 2.75, 2.81, 2.75, 2.75, 2.75, 2.75, 2.69,
        2.75, 2.75, 2.75, 2.75, 2.69, 2.75, 2.75, 2.75, 2.69, 2.75, 2.75, 2.75, 2.75, 2.69, 2.75,
    ])  # fmt: skip
    cup = Cup(4.2, 4.2, 4.2, 1.02, 2.681, np.zeros(2), np.array([15.0, 1e4]))
    theta = np.zeros(cup.layout.size)
    plunge = {
        **USUAL, "start_c": 2.681, "room_c": 2.681, "probe_offset_c": 21.2, "lag_share": 11.44 / 21.2,
        "wall_offset_c": 0.0,
        "log_lag_fast_s": np.log(4.65), "log_lag_slow_s": np.log(19.35), "room_drift_c_s": 0.0,
    }  # fmt: skip
    for name, value in plunge.items():
        theta[INDEX[name]] = value
    theta[cup.layout.times], theta[cup.layout.volumes] = 9e3, 5.0
    model_c, _ = trace(cup, theta, time_s)
    assert np.sqrt(np.mean((model_c - seen_c) ** 2)) < 0.06
