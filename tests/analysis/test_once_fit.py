"""The heat balance of a cup mixed once: the model against integration, the fit against cups with a known answer."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from station.analysis.heat.inputs import Estimate, Trace
from station.analysis.once.enthalpy import enthalpy_once
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import SOLIDS_S, OnceHeat, OnceRefused, OnceSetup
from station.analysis.once.model import INDEX, NAMES, SIZE, met_c, trace
from tests.analysis.once_cup import CONTENTS_J_K, CUP_J_K, MIXED_S, Array, cup_trace, known_setup, stepped

VALUES = {
    "heat_j": 1500.0, "start_c": 20.0, "added_c": 20.5, "room_c": 21.0, "room_drift_c_s": 1e-3,
    "log_loss_w_k": np.log(0.1), "log_loss_change": 0.1, "log_lag_fast_s": np.log(5.0), "log_lag_slow_s": np.log(18.0),
    "lag_share": 0.6, "log_completion_s": np.log(30.0), "half_share": 0.5, "third_share": -0.4, "quarter_share": 0.3,
    "mixed_s": -1.3, "cup_j_k": 5.0, "wall_share": 0.5, "log_wall_s": np.log(60.0), "wall_offset_c": 0.3,
    "probe_offset_c": -0.5, "contents_j_k": 210.0, "added_j_k": 100.0, "stem_share": 0.01,
}  # fmt: skip
THETA = np.array([VALUES[name] for name in NAMES])
TIME_S = np.sort(np.random.default_rng(0).uniform(-180.0, 400.0, 300))


def integrated(time_s: Array) -> Array:
    """The model's equations, integrated numerically."""
    v = VALUES
    wall_j_k, wall_s = v["cup_j_k"] * v["wall_share"], np.exp(v["log_wall_s"])
    lags = np.exp(v["log_lag_fast_s"]), np.exp(v["log_lag_slow_s"])
    shares = v["half_share"], v["third_share"], v["quarter_share"]
    weights = np.array([1.0 - sum(shares), *shares])
    rates = np.arange(1, 5) / np.exp(v["log_completion_s"])

    def rate(t: float, x: Array, heat: float, after: bool) -> Array:
        liquid, wall, fast, slow = x
        capacity = v["contents_j_k"] - (0.0 if after else v["added_j_k"]) + v["cup_j_k"] - wall_j_k
        loss = np.exp(v["log_loss_w_k"] + (v["log_loss_change"] if after else 0.0))
        room = v["room_c"] + v["room_drift_c_s"] * (t - time_s[0])
        given = heat * float((weights * rates * np.exp(-rates * (t - v["mixed_s"]))).sum()) if after else 0.0
        into = given - loss * (liquid - room) - wall_j_k / wall_s * (liquid - wall)
        seen = liquid + v["stem_share"] * (room - liquid)
        return np.array([into / capacity, (liquid - wall) / wall_s, (seen - fast) / lags[0], (seen - slow) / lags[1]])

    edge = v["mixed_s"]
    begin = np.array([20.0, 20.0 + v["wall_offset_c"], *[20.0 + v["probe_offset_c"]] * 2])
    early, late = time_s[time_s < edge], time_s[time_s >= edge]

    def solved(begin_s: float, end_s: float, state: Array, at_s: list[float], heat: float, after: bool) -> Array:
        return np.asarray(
            solve_ivp(
                lambda t, x: rate(float(t), x, heat, after), (begin_s, end_s), state, t_eval=at_s, rtol=1e-9, atol=1e-9,
                max_step=5.0,
            ).y
        )  # fmt: skip

    first = solved(time_s[0], edge, begin, [*early, edge], 0.0, False)
    met = first[:, -1]
    assert met_c(THETA, float(time_s[0]))[0] == pytest.approx(met[0], abs=1e-7)
    heat = v["heat_j"] + v["added_j_k"] * (v["added_c"] - met[0])
    found = np.concatenate([first[:, :-1], solved(edge, time_s[-1], met, late.tolist(), heat, True)], axis=1)
    return np.asarray(v["lag_share"] * found[2] + (1.0 - v["lag_share"]) * found[3])


def test_the_closed_form_is_the_solution_of_the_equations() -> None:
    assert np.abs(trace(THETA, TIME_S)[0] - integrated(TIME_S)).max() < 1e-6


@pytest.mark.parametrize("name", NAMES)
def test_derivatives_are_those_of_the_trace(name: str) -> None:
    place, step = INDEX[name], 1e-5 * max(abs(VALUES[name]), 1e-2)
    away = np.abs(TIME_S - VALUES["mixed_s"]) > 0.5
    move = np.zeros(SIZE)
    move[place] = step
    differences = (trace(THETA + move, TIME_S)[0] - trace(THETA - move, TIME_S)[0]) / (2.0 * step)
    exact = trace(THETA, TIME_S)[1][:, place]
    assert np.abs(differences - exact)[away].max() < 1e-6 * max(1.0, np.abs(exact).max())


def fitted(change_c: float, setup: OnceSetup | None = None, **how: float) -> OnceHeat:
    time_s, temperature_c = cup_trace(change_c, **how)  # type: ignore[arg-type]
    return fit_once(Trace(time_s, temperature_c), MIXED_S, setup or known_setup())


@pytest.mark.parametrize("change_c", [9.0, 3.0, 1.0, -1.5, -7.0])
def test_the_heat_of_a_known_cup_is_found(change_c: float) -> None:
    found = fitted(change_c)
    heat_j = (CONTENTS_J_K + CUP_J_K) * change_c
    assert found.heat_j == pytest.approx(heat_j, rel=0.01, abs=15.0)
    assert abs(found.heat_j - heat_j) < 2.6 * found.u_heat_j
    assert found.change_c == pytest.approx(change_c, rel=0.01, abs=0.04)
    assert found.interval_95_j[0] < found.heat_j < found.interval_95_j[1]
    assert found.describes_trace
    assert found.notes == ()
    assert found.mixed_at_s == pytest.approx(MIXED_S, abs=3.0)
    assert found.start_c == pytest.approx(20.07, abs=0.06)


def test_slow_dissolving_is_told_from_loss() -> None:
    found = fitted(-5.0, replace(known_setup(), completion_s=SOLIDS_S), release_s=25.0)
    assert found.heat_j == pytest.approx(-5.0 * (CONTENTS_J_K + CUP_J_K), rel=0.012)
    assert found.u_heat_j < 0.02 * abs(found.heat_j)


def test_an_estimated_cup_is_in_the_uncertainty() -> None:
    open_cup = fitted(6.0, known_setup(cup_j_k=Estimate(5.0, 3.0)))
    assert open_cup.u_heat_j == pytest.approx(18.0, rel=0.25)  # 3 J/K times 6 °C
    assert open_cup.u_change_c < 0.5 * open_cup.u_heat_j / (CONTENTS_J_K + CUP_J_K)


def test_a_cold_addition_is_not_taken_for_heat_of_reaction() -> None:
    plain = fitted(5.0)
    colder = replace(known_setup(), added_c=Estimate(17.07, 0.03))
    found = fitted(5.0, colder)
    # The same trace: 3 °C colder means that the reaction gave 3 °C times 100 J/K more.
    assert found.heat_j - plain.heat_j == pytest.approx(300.0, rel=0.02)
    assert found.change_c == pytest.approx(plain.change_c, abs=0.01)


def test_an_unknown_temperature_of_what_is_added_widens_the_interval() -> None:
    found = fitted(5.0, replace(known_setup(), added_c=None))
    assert found.u_heat_j == pytest.approx(200.0, rel=0.1)  # 2 °C times 100 J/K
    assert found.u_change_c < 0.1


@pytest.mark.parametrize("late_s", [-15.0, 25.0])
def test_a_press_at_the_wrong_moment_is_found_and_said(late_s: float) -> None:
    time_s, temperature_c = cup_trace(5.0)
    found = fit_once(Trace(time_s, temperature_c), MIXED_S + late_s, known_setup())
    assert found.mixed_at_s == pytest.approx(MIXED_S, abs=3.0)
    assert found.heat_j == pytest.approx(5.0 * (CONTENTS_J_K + CUP_J_K), rel=0.012)
    assert any(("before" if late_s > 0 else "after") in note for note in found.notes)


def test_spikes_have_no_say() -> None:
    time_s, temperature_c = cup_trace(5.0)
    clean = fit_once(Trace(time_s, temperature_c), MIXED_S, known_setup())
    spoilt = temperature_c.copy()
    spoilt[11::50] += 9.0
    found = fit_once(Trace(time_s, spoilt), MIXED_S, known_setup())
    assert found.heat_j == pytest.approx(clean.heat_j, abs=clean.u_heat_j)
    assert found.u_heat_j < 1.3 * clean.u_heat_j
    assert np.array_equal(np.flatnonzero(~found.kept), np.arange(11, len(time_s), 50))


@pytest.mark.parametrize("jump_c", [1.0, -0.5])
def test_what_the_model_does_not_know_is_said_and_widens_the_interval(jump_c: float) -> None:
    time_s, temperature_c = cup_trace(5.0)
    clean = fit_once(Trace(time_s, temperature_c), MIXED_S, known_setup())
    odd = stepped(temperature_c + np.where(time_s > MIXED_S + 120.0, jump_c, 0.0))
    found = fit_once(Trace(time_s, odd), MIXED_S, known_setup())
    assert not found.describes_trace
    assert "does not know" in found.notes[0]
    assert found.u_heat_j > 4.0 * clean.u_heat_j


@pytest.mark.parametrize(
    ("begin_s", "end_s", "mixed_at_s", "kind"),
    [
        (175.0, 600.0, 180.0, "too_few_before"),
        (0.0, 215.0, 180.0, "too_few_after"),
        (0.0, 600.0, 700.0, "outside_trace"),
        (0.0, 170.0, 60.0, "no_change"),
    ],
)
def test_refusals_say_why(begin_s: float, end_s: float, mixed_at_s: float, kind: str) -> None:
    time_s, temperature_c = cup_trace(5.0, noise_c=0.0)
    kept = (time_s >= begin_s) & (time_s < end_s)
    with pytest.raises(OnceRefused, match=r"\.|\?") as caught:
        fit_once(Trace(time_s[kept], temperature_c[kept]), mixed_at_s, known_setup())
    assert caught.value.kind == kind


@pytest.mark.parametrize(
    "wrong",
    [{"added_j_k": Estimate(300.0, 1.0)}, {"added_j_k": Estimate(0.0, 1.0)}, {"lag_slow_s": Estimate(0.0, 1.0)}],
)
def test_impossible_setups_are_errors(wrong: dict[str, Estimate]) -> None:
    with pytest.raises(ValueError, match="above 0"):
        replace(known_setup(), **wrong)


def test_enthalpy_is_negative_when_heat_is_given_out_and_carries_both_uncertainties() -> None:
    found = enthalpy_once(2886.96, 30.0, 0.0500, 0.0004, "water formed")
    assert found.value == pytest.approx(-57.74, abs=0.005)
    assert found.u == pytest.approx(57.74 * np.hypot(30.0 / 2886.96, 0.0004 / 0.05), rel=1e-3)
    assert found.unit == "kJ/mol"
    assert "water formed" in found.steps[-1].text
    assert enthalpy_once(-1000.0, 0.0, 0.04, 0.0, "solid").value == pytest.approx(25.0)


def test_no_amount_has_no_enthalpy() -> None:
    with pytest.raises(ValueError, match="above 0 mol"):
        enthalpy_once(100.0, 1.0, 0.0, 0.0)
