"""The heat balance on cups with a known answer, and what it refuses."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from station.analysis.heat.balance import UNEVEN, fit_trace
from station.analysis.heat.inputs import Estimate, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from tests.benchmarks.bench_heat_cases import pours_of, setup_of, trace_of
from tests.benchmarks.scenes import Scene, make_scene
from tests.benchmarks.scenes_model import model_scene


@pytest.fixture(scope="module")
def calm() -> Scene:
    return make_scene(1, "calm")


@pytest.fixture(scope="module")
def fitted(calm: Scene) -> HeatFit:
    return fit_trace(trace_of(calm), pours_of(calm), setup_of(calm))


def _until(trace: Trace, end_s: float) -> Trace:
    inside = trace.time_s < end_s
    return Trace(trace.time_s[inside], trace.temperature_c[inside], trace.step_c)


def test_end_point_of_a_strange_cup_lies_in_its_interval(calm: Scene, fitted: HeatFit) -> None:
    assert abs(fitted.end_point_cm3 - calm.true_end_point_cm3) < 0.15
    assert fitted.interval_95_cm3[0] < calm.true_end_point_cm3 < fitted.interval_95_cm3[1]
    assert 0.01 < fitted.u_end_point_cm3 < 0.2
    assert fitted.describes_trace and not fitted.notes


def test_enthalpy_and_concentration_carry_their_uncertainty(calm: Scene, fitted: HeatFit) -> None:
    assert fitted.enthalpy_kj_mol is not None and fitted.u_enthalpy_kj_mol is not None
    assert fitted.acid_mol_dm3 is not None and fitted.u_acid_mol_dm3 is not None
    assert fitted.enthalpy_kj_mol == pytest.approx(calm.true_enthalpy_kj_mol, abs=3.0 * fitted.u_enthalpy_kj_mol)
    acid = fitted.end_point_cm3 * calm.alkali_mol_dm3 / calm.acid_nominal_cm3
    assert fitted.acid_mol_dm3 == pytest.approx(acid, rel=0.005)
    assert fitted.u_acid_mol_dm3 > acid * fitted.u_end_point_cm3 / fitted.end_point_cm3 * 0.99


def test_heat_corrected_points_lie_on_two_lines(fitted: HeatFit) -> None:
    volume, level = fitted.heat_corrected_volume_cm3, fitted.heat_corrected_c
    before, after = volume < fitted.end_point_cm3, volume > fitted.end_point_cm3
    rising = np.polyfit(volume[before], level[before], 1)
    assert np.abs(np.polyval(rising, volume[before]) - level[before]).max() < 0.06
    crossing = (level[after].mean() - rising[1]) / rising[0]
    assert crossing == pytest.approx(fitted.end_point_cm3, abs=0.3)


def test_result_names_every_parameter(fitted: HeatFit) -> None:
    size = len(fitted.names)
    assert fitted.parameters.shape == (size,) and fitted.covariance.shape == (size, size)
    assert fitted.covariance[0, 0] == pytest.approx(fitted.u_end_point_cm3**2)
    assert (np.diag(fitted.covariance) >= 0.0).all()


def test_end_point_u_is_the_bound_and_what_uneven_stirring_adds() -> None:
    case = model_scene(3)
    fit = fit_trace(case.trace, case.pours, case.setup)
    uneven_cm3 = UNEVEN * fit.parameters[fit.names.index("slow_share")] * 5.0
    assert fit.u_end_point_cm3 == pytest.approx(np.hypot(case.bound_cm3(), uneven_cm3), rel=0.25)


def test_presses_far_later_than_any_group_do_not_trap_the_fit() -> None:
    case = model_scene(7014)
    fit = fit_trace(case.trace, case.pours, case.setup)
    assert fit.parameters[fit.names.index("press_s")] > 11.0
    assert fit.end_point_cm3 == pytest.approx(case.end_point_cm3, abs=0.15)


def test_uneven_stirring_widens_the_interval() -> None:
    scene = make_scene(3019, "poor_stirring")
    fit = fit_trace(trace_of(scene), pours_of(scene), setup_of(scene))
    share = abs(fit.parameters[fit.names.index("slow_share")])
    assert share > 0.02
    assert fit.u_end_point_cm3 > UNEVEN * share * 5.0


@pytest.mark.parametrize("seed", range(6))
def test_cups_of_the_model_itself_are_found_again(seed: int) -> None:
    case = model_scene(seed, u_volume_cm3=0.1 if seed % 2 else 0.0)
    fit = fit_trace(case.trace, case.pours, case.setup)
    assert abs(fit.end_point_cm3 - case.end_point_cm3) < 3.5 * fit.u_end_point_cm3


def test_uncertain_portions_widen_the_interval(calm: Scene, fitted: HeatFit) -> None:
    wide = [replace(p, u_volume_cm3=0.3) for p in pours_of(calm)]
    u_cm3 = fit_trace(trace_of(calm), wide, setup_of(calm)).u_end_point_cm3
    # Four portions up to the end-point, each 0.3 cm³, independent.
    assert u_cm3 == pytest.approx(0.3 * np.sqrt(4.0), rel=0.2)
    assert u_cm3 > 3.0 * fitted.u_end_point_cm3


def test_an_unsure_portion_is_not_believed(calm: Scene) -> None:
    pours = pours_of(calm)
    pours[1] = replace(pours[1], volume_cm3=8.0, u_volume_cm3=8.0)
    fit = fit_trace(trace_of(calm), pours, setup_of(calm))
    assert abs(fit.end_point_cm3 - calm.true_end_point_cm3) < 4.0 * fit.u_end_point_cm3
    found = fit.parameters[fit.names.index("volume_cm3[2]")]
    assert found == pytest.approx(5.0, abs=0.3)


def test_stale_samples_and_outliers_hardly_move_it(calm: Scene, fitted: HeatFit) -> None:
    trace = trace_of(calm)
    bad = trace.temperature_c.copy()
    bad[60:400:17] = bad[59:399:17]
    bad[100:420:40] += 3.0
    fit = fit_trace(Trace(trace.time_s, bad), pours_of(calm), setup_of(calm))
    assert fit.end_point_cm3 == pytest.approx(fitted.end_point_cm3, abs=0.1)
    assert not fit.kept[100:420:40].any()


def test_a_falling_temperature_is_fitted_as_well() -> None:
    case = model_scene(2)
    mirrored = Trace(case.trace.time_s, 40.0 - case.trace.temperature_c)
    setup = replace(case.setup, alkali_c=Estimate(19.7, 0.3), room_c=Estimate(19.5, 2.0))
    fit = fit_trace(mirrored, case.pours, setup)
    assert fit.enthalpy_kj_mol is not None and fit.enthalpy_kj_mol > 0.0
    assert abs(fit.end_point_cm3 - case.end_point_cm3) < 0.5


def test_a_spill_is_said_and_widens_the_interval(calm: Scene, fitted: HeatFit) -> None:
    trace = trace_of(calm)
    spilt = trace.temperature_c - 1.5 * (trace.time_s > calm.pours[4].time_s + 20.0)
    fit = fit_trace(Trace(trace.time_s, spilt), pours_of(calm), setup_of(calm))
    assert not fit.describes_trace and fit.notes
    assert fit.u_end_point_cm3 > 5.0 * fitted.u_end_point_cm3


@pytest.mark.parametrize("poured", [3, 4])
def test_an_end_point_not_yet_passed_is_refused(calm: Scene, poured: int) -> None:
    pours = pours_of(calm)[:poured]
    trace = _until(trace_of(calm), calm.pours[poured].time_s - 4.0)
    assert sum(p.volume_cm3 for p in pours) < calm.true_end_point_cm3 + 0.5
    with pytest.raises(HeatRefused, match="passed") as refused:
        fit_trace(trace, pours, setup_of(calm))
    assert refused.value.kind == "not_passed"


def test_no_heat_is_refused(calm: Scene) -> None:
    flat = Trace(calm.time_s, np.full_like(calm.time_s, 20.0))
    with pytest.raises(HeatRefused, match="hardly changes"):
        fit_trace(flat, pours_of(calm), setup_of(calm))


def test_too_little_is_refused(calm: Scene) -> None:
    with pytest.raises(HeatRefused, match="at least 3 portions"):
        fit_trace(trace_of(calm), pours_of(calm)[:2], setup_of(calm))
    few = Trace(calm.time_s[::40], calm.temperature_c[::40])
    with pytest.raises(HeatRefused, match="good samples"):
        fit_trace(few, pours_of(calm), setup_of(calm))


def test_reagents_it_does_not_know_are_refused(calm: Scene) -> None:
    with pytest.raises(HeatRefused, match="gives off a gas"):
        fit_trace(trace_of(calm), pours_of(calm), replace(setup_of(calm), unmodelled="it gives off a gas"))


def test_impossible_arrays_are_errors() -> None:
    with pytest.raises(ValueError, match="must rise"):
        Trace(np.array([1.0, 1.0]), np.array([20.0, 20.0]))
    with pytest.raises(ValueError, match="finite"):
        Trace(np.array([1.0, 2.0]), np.array([20.0, np.nan]))
    with pytest.raises(ValueError, match="one temperature"):
        Trace(np.array([1.0, 2.0]), np.array([20.0]))
    with pytest.raises(ValueError, match="above 0"):
        Pour(1.0, 0.0, 0.1)


def test_portions_out_of_order_are_an_error(calm: Scene) -> None:
    with pytest.raises(ValueError, match="order of time"):
        fit_trace(trace_of(calm), pours_of(calm)[::-1], setup_of(calm))


def test_without_a_concentration_the_end_point_is_still_given(calm: Scene, fitted: HeatFit) -> None:
    setup: HeatSetup = replace(setup_of(calm), alkali_mol_dm3=None)
    fit = fit_trace(trace_of(calm), pours_of(calm), setup)
    assert fit.end_point_cm3 == fitted.end_point_cm3
    assert fit.enthalpy_kj_mol is None and fit.acid_mol_dm3 is None
