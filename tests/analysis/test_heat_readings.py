"""Readings by hand: published class data, ideal worlds, refusals."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.analysis.heat.inputs import Array, Estimate, HeatRefused, HeatSetup
from station.analysis.heat.readings import fit_readings

SETUP = HeatSetup(
    Estimate(25.0, 0.06), 4.07, 4.07, 4.07, alkali_mol_dm3=Estimate(1.0, 0.0), alkali_c=Estimate(20.0, 0.1),
    room_c=Estimate(20.0, 0.5), cup_j_k=Estimate(5.0, 0.5),
)  # fmt: skip
VOLUME_CM3 = np.arange(0.0, 50.0, 5.0)


def _ideal(end_point_cm3: float, heat_j_cm3: float = 56.0) -> Array:
    """Temperatures without loss: the heat so far over the heat capacity so far."""
    capacity = 25.0 * 4.07 + 5.0 + 4.07 * VOLUME_CM3
    return np.asarray(20.0 + heat_j_cm3 * np.minimum(VOLUME_CM3, end_point_cm3) / capacity)


def test_published_class_data_agree_with_heat_corrected_lines() -> None:
    # RSC Education, handbook of required practicals (edu.rsc.org resource 4012042), mean of two trials. Lines
    # through (30 + V)(T − T0) cross at 27.0 to 27.2 cm³; raw temperatures at 22.3 to 24.8.
    mean_c = np.array([20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8])
    fit = fit_readings(np.arange(0.0, 45.0, 5.0), mean_c, HeatSetup(Estimate(30.0, 0.1)), 0.25, 0.1)
    assert fit.end_point_cm3 == pytest.approx(27.1, abs=0.5)
    assert fit.interval_95_cm3[0] > 25.0
    assert fit.acid_mol_dm3 is None


@settings(max_examples=15, deadline=None)
@given(st.floats(14.0, 33.0), st.floats(20.0, 90.0))
def test_ideal_world_gives_its_end_point(end_point_cm3: float, heat_j_cm3: float) -> None:
    fit = fit_readings(VOLUME_CM3, _ideal(end_point_cm3, heat_j_cm3), SETUP, 0.0, 0.02)
    assert abs(fit.end_point_cm3 - end_point_cm3) < max(0.1, 1.96 * fit.u_end_point_cm3)


def test_enthalpy_of_an_ideal_world() -> None:
    fit = fit_readings(VOLUME_CM3, _ideal(22.0), SETUP, 0.0, 0.02)
    assert fit.enthalpy_kj_mol is not None and fit.u_enthalpy_kj_mol is not None
    assert abs(fit.enthalpy_kj_mol + 56.0) < 2.0 * fit.u_enthalpy_kj_mol


def _leaky(end_point_cm3: float, loss_w_k: float, hold_s: float = 60.0) -> Array:
    """Temperatures of a cup that cools towards the room by Newton's law for ``hold_s`` after each portion."""
    capacity = 25.0 * 4.07 + 5.0 + 4.07 * VOLUME_CM3
    reacted = np.minimum(VOLUME_CM3, end_point_cm3)
    warmer = [0.0]
    for k in range(1, len(VOLUME_CM3)):
        mixed = (warmer[-1] * capacity[k - 1] + 56.0 * (reacted[k] - reacted[k - 1])) / capacity[k]
        warmer.append(mixed * np.exp(-loss_w_k * hold_s / capacity[k]))
    return 20.0 + np.array(warmer)


@pytest.mark.parametrize("loss_w_k", [0.05, 0.13, 0.25])
@pytest.mark.parametrize("end_point_cm3", [16.5, 22.0, 30.0])
def test_a_leaky_cup_keeps_its_enthalpy(loss_w_k: float, end_point_cm3: float) -> None:
    # What a cup loses per kelvin does not grow with its contents: a share of the heat would leave out early losses.
    fit = fit_readings(VOLUME_CM3, _leaky(end_point_cm3, loss_w_k), SETUP, 0.0, 0.06)
    assert fit.enthalpy_kj_mol is not None and fit.u_enthalpy_kj_mol is not None
    assert fit.enthalpy_kj_mol == pytest.approx(-56.0, rel=0.03)
    assert fit.u_enthalpy_kj_mol < 0.05 * 56.0
    assert fit.end_point_cm3 == pytest.approx(end_point_cm3, abs=0.4)


def test_portions_widen_u() -> None:
    exact = fit_readings(VOLUME_CM3, _ideal(22.0), SETUP, 0.0, 0.05)
    rough = fit_readings(VOLUME_CM3, _ideal(22.0), SETUP, 0.3, 0.05)
    assert rough.u_end_point_cm3 > exact.u_end_point_cm3
    assert rough.u_end_point_cm3 > 0.5


def test_heat_corrected_temperatures_end_level() -> None:
    fit = fit_readings(VOLUME_CM3, _ideal(22.0), SETUP, 0.0, 0.05)
    assert fit.heat_corrected_c.shape == VOLUME_CM3.shape
    assert fit.heat_corrected_c[3] < fit.heat_corrected_c[4] < fit.heat_corrected_c[-1] + 1.0


def test_no_bend_and_too_few_are_refused() -> None:
    with pytest.raises(HeatRefused, match="passed"):
        fit_readings(VOLUME_CM3, _ideal(60.0), SETUP, 0.0, 0.05)
    with pytest.raises(HeatRefused, match="at least 5"):
        fit_readings(VOLUME_CM3[:4], _ideal(60.0)[:4], SETUP)


def test_readings_that_hardly_change_hold_no_heat() -> None:
    for flicker_c in (0.0, 0.1):
        with pytest.raises(HeatRefused, match="hardly changes"):
            fit_readings(VOLUME_CM3, np.array([20.0, 20.0 + flicker_c] * 5), SETUP, 0.1, 0.1)


def test_a_heat_lost_in_the_scatter_is_refused() -> None:
    # Warmer and warmer although much cool alkali comes in, then level: no heat and no loss make that of 25 cm³.
    temperature_c = np.array([20.0, 21.6, 22.9, 24.6, 26.0, 27.3, 29.0, 30.4, 32.0, 33.5, 34.5, 34.5, 34.5])
    with pytest.raises(HeatRefused, match="lost in the scatter"):
        fit_readings(np.arange(0.0, 121.0, 10.0), temperature_c, SETUP, 0.1, 0.1)


def test_a_portion_that_was_not_poured_adds_a_reading_and_no_volume() -> None:
    volume_cm3, temperature_c = np.insert(VOLUME_CM3, 3, VOLUME_CM3[3]), np.insert(_ideal(22.0), 3, _ideal(22.0)[3])
    assert fit_readings(volume_cm3, temperature_c, SETUP, 0.0, 0.05).end_point_cm3 == pytest.approx(22.0, abs=0.4)
    with pytest.raises(HeatRefused, match="at least 5"):
        fit_readings(np.array([0.0, 5.0, 5.0, 10.0, 15.0]), _ideal(22.0)[:5], SETUP)


@settings(max_examples=60, deadline=None)
@given(
    st.integers(5, 13),
    st.integers(0, 13),
    st.tuples(*[st.sampled_from([-2.0, -0.3, 0.0, 0.3, 1.0, 3.0])] * 2),
    st.sampled_from([0.0625, 0.5, 1.0]),
    st.sampled_from([1.0, 5.0, 10.0]),
)
def test_bent_and_level_readings_are_answered_within_reach_or_refused_in_words(
    count: int, bend: int, steps_c: tuple[float, float], division_c: float, portion_cm3: float
) -> None:
    past = np.arange(count) - bend
    temperature_c = 20.0 + steps_c[0] * np.minimum(past, 0) + steps_c[1] * np.maximum(past, 0)
    temperature_c = np.round(temperature_c / division_c) * division_c
    try:
        fit = fit_readings(
            np.linspace(0.0, portion_cm3 * (count - 1), count), temperature_c, SETUP, 0.1, division_c / 3.0**0.5
        )
    except HeatRefused as refusal:
        assert refusal.reason
        return
    assert 0.0 < fit.end_point_cm3 < portion_cm3 * (count - 1)
    assert 0.0 < fit.interval_95_cm3[0] < fit.end_point_cm3 < fit.interval_95_cm3[1] < portion_cm3 * (count - 1)
    assert fit.enthalpy_kj_mol is not None and np.isfinite(fit.enthalpy_kj_mol)


def test_impossible_arrays_are_errors() -> None:
    with pytest.raises(ValueError, match="begin with 0"):
        fit_readings(VOLUME_CM3 + 1.0, _ideal(22.0), SETUP)
    with pytest.raises(ValueError, match="finite"):
        fit_readings(VOLUME_CM3, _ideal(22.0) * np.nan, SETUP)
    with pytest.raises(ValueError, match="one temperature"):
        fit_readings(VOLUME_CM3, _ideal(22.0)[1:], SETUP)
