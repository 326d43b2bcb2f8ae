"""The heat balance of a plan's repeats: chemistry gives what is known beforehand, analysis fits, JSON comes out."""

from collections.abc import Iterable, Sequence
from math import hypot
from typing import Any

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat_balance import fit_trace
from station.analysis.heat_inputs import Estimate, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat_readings import ReadingsFit, fit_readings
from station.analysis.repeats import summarise
from station.chemistry.cup import GasError, cup_heat_capacities
from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.dataset import Known, RepeatData
from station.practical.plan import PortionsPlan

Json = dict[str, Any]

U_ACID_VOLUME_CM3 = 0.035  # one-mark pipette, class B: ±0.06 cm³ (ISO 648) as a rectangular limit
U_ALKALI_C = 0.3
U_ROOM_C = 1.0
CLOSE_ENOUGH = 0.1


def heat_fit(plan: PortionsPlan, repeat: RepeatData, known: Known) -> HeatFit:
    """Fit one repeat. Raises HeatRefused with the reason in words."""
    pair = reacting_pair(plan)
    trace = _trace(repeat)
    pours = [_pour(plan, *pour) for pour in repeat.pours if pour[1] > 0.0]  # 0: pressed and not poured
    total_cm3 = sum(pour.volume_cm3 for pour in pours)
    acid_mol_dm3 = plan.acid.concentration_mol_dm3
    estimate = acid_mol_dm3 or _acid_mol_dm3(plan, pair, 0.6 * total_cm3)
    fit = fit_trace(trace, pours, heat_setup(plan, pair, estimate, known, trace))
    found = _acid_mol_dm3(plan, pair, fit.end_point_cm3)
    if acid_mol_dm3 is None and abs(found / estimate - 1.0) > CLOSE_ENOUGH:
        # The heat capacities were taken at a guess of the acid's concentration; now it is known.
        fit = fit_trace(trace, pours, heat_setup(plan, pair, found, known, trace))
    return fit


def readings_fit(plan: PortionsPlan, repeat: RepeatData, known: Known) -> ReadingsFit:
    """Fit readings without a trace, corrected for cup and dilution. Raises HeatRefused with the reason in words."""
    pair = reacting_pair(plan)
    if not repeat.readings or repeat.readings[0].volume_cm3 != 0.0:
        raise HeatRefused("no_start", "The reading before the first portion (0 cm³) is missing.")
    volumes = np.asarray([row.volume_cm3 for row in repeat.readings], dtype=np.float64)
    temperatures = np.asarray([row.temperature_c for row in repeat.readings], dtype=np.float64)
    setup = setup_for_readings(plan, pair, known)
    return fit_readings(volumes, temperatures, setup, plan.portions.u_cm3, _u_reading_c(temperatures))


def _u_reading_c(temperatures: NDArray[np.float64]) -> float:
    """One standard uncertainty of a reading, from the divisions that the readings themselves show.

    Half a division either way as a rectangular limit, and as much again for where the eye puts it: common
    practice, no source.
    """
    for division in (1.0, 0.5, 0.2):
        if np.allclose(temperatures / division, np.round(temperatures / division), atol=1e-6):
            return float(division / 3.0**0.5)
    return 0.1


def reacting_pair(plan: PortionsPlan) -> Neutralisation:
    """Return the plan's neutralisation. Raises HeatRefused when its heat is not one known step."""
    try:
        pair = neutralisation_steps(find_reagent(plan.acid.name), find_reagent(plan.alkali.name))
    except WrongPairError as error:
        raise HeatRefused("wrong_pair", f"The heat balance cannot be used: {error}.") from None
    if not pair.single_step:
        raise HeatRefused("not_one_step", f"The heat balance cannot be used: {pair.refusal}.")
    return pair


def heat_setup(
    plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float, known: Known, trace: Trace | None
) -> HeatSetup:
    """Return what is known of acid, alkali, cup and room before the repeat."""
    start_c = float(trace.temperature_c[0]) if trace is not None else plan.surroundings.room_c or 20.0
    try:
        capacities = cup_heat_capacities(
            pair.acid, acid_mol_dm3, pair.alkali, plan.alkali.concentration_mol_dm3, min(max(start_c, 0.0), 60.0)
        )
    except (GasError, ValueError) as error:
        raise HeatRefused("no_heat_capacity", f"The heat balance cannot be used: {error}.") from None
    alkali_c, u_alkali_c, typed = known.alkali_c, known.alkali_u_c, known.alkali_typed
    if alkali_c is None and plan.alkali.temperature_c is not None:
        alkali_c, u_alkali_c, typed = plan.alkali.temperature_c, U_ALKALI_C, True
    # Another thermometer's temperature: the probe's own offset does not cancel in the difference to the cup.
    u_alkali_c = hypot(u_alkali_c or U_ALKALI_C, known.u_probe_c if typed else 0.0)
    room_c = plan.surroundings.room_c
    return HeatSetup(
        acid_volume_cm3=Estimate(plan.acid.volume_cm3, plan.acid.u_volume_cm3 or U_ACID_VOLUME_CM3),
        acid_j_cm3_k=capacities.acid_j_cm3_k,
        alkali_j_cm3_k=capacities.alkali_j_cm3_k,
        product_j_cm3_k=capacities.product_j_cm3_k,
        # A slope of the probe that is wrong by so much acts as if all heat capacities were.
        u_heat_capacity=hypot(capacities.u_relative, known.u_slope),
        alkali_mol_dm3=Estimate(plan.alkali.concentration_mol_dm3, 0.0),
        acid_per_alkali=pair.acid_per_alkali,
        water_per_alkali=float(pair.alkali_hydroxides),
        cup_j_k=Estimate(plan.cup.heat_capacity_j_k, plan.cup.u_heat_capacity_j_k),
        alkali_c=None if alkali_c is None else Estimate(alkali_c, u_alkali_c),
        room_c=None if room_c is None else Estimate(room_c, U_ROOM_C),
    )


def setup_for_readings(plan: PortionsPlan, pair: Neutralisation, known: Known) -> HeatSetup:
    """Return what is known when there are readings but no trace: the acid is guessed in the plan's middle."""
    guess = plan.acid.concentration_mol_dm3 or _acid_mol_dm3(plan, pair, 0.6 * plan.count * plan.portion_cm3)
    return heat_setup(plan, pair, guess, known, None)


def heat_json(fit: HeatFit) -> Json:
    """Return the fit of a trace as the JSON values of the results."""
    return {
        **_common_json(fit),
        "enthalpy_temperature_c": fit.enthalpy_temperature_c,
        "describes_trace": fit.describes_trace,
        "temperature_c": fit.end_point_temperature_c,
        "start_c": fit.start_c,
        "corrected": _curve(fit.heat_corrected_volume_cm3, fit.heat_corrected_c),
        "residual_rms_c": fit.residual_rms_c,
    }


def readings_json(fit: ReadingsFit, repeat: RepeatData) -> Json:
    """Return the fit of readings by hand as the same values, as far as there are such."""
    volumes = [row.volume_cm3 for row in repeat.readings]
    corrected = _curve(volumes, fit.heat_corrected_c)
    return {**_common_json(fit), "describes_trace": fit.describes_readings, "corrected": corrected}


def _common_json(fit: HeatFit | ReadingsFit) -> Json:
    return {
        "end_point_cm3": fit.end_point_cm3,
        "u_end_point_cm3": fit.u_end_point_cm3,
        "interval_95_cm3": list(fit.interval_95_cm3),
        "enthalpy_kj_mol": fit.enthalpy_kj_mol,
        "u_enthalpy_kj_mol": fit.u_enthalpy_kj_mol,
        "acid_mol_dm3": fit.acid_mol_dm3,
        "u_acid_mol_dm3": fit.u_acid_mol_dm3,
    }


def _curve(volume_cm3: Iterable[float], temperature_c: Iterable[float]) -> Json:
    return {
        "volume_cm3": [round(float(each), 4) for each in volume_cm3],
        "temperature_c": [round(float(each), 4) for each in temperature_c],
    }


def mean_heat(fits: Sequence[Json], plan: PortionsPlan, u_slope: float = 0.0) -> Json | None:
    """Return the mean of the repeats' heat balances; None without any.

    Cup, heat capacities and the probe's slope are the same in all repeats: their part of the enthalpy's u does not
    average out.
    """
    if not fits:
        return None
    end_point = summarise([fit["end_point_cm3"] for fit in fits], [fit["u_end_point_cm3"] for fit in fits])
    mean = {
        "end_point_cm3": end_point.mean,
        "u_end_point_cm3": end_point.u,
        "interval_95_cm3": list(end_point.interval_95),
        "basis": end_point.basis,
        "describes_trace": all(fit["describes_trace"] for fit in fits),
    }
    common = hypot(common_relative_u(plan), u_slope)
    return {**mean, **_mean_of(fits, "enthalpy_kj_mol", common), **_mean_of(fits, "acid_mol_dm3", 0.0)}


def _mean_of(fits: Sequence[Json], name: str, common: float) -> Json:
    values = [fit[name] for fit in fits]
    if any(value is None for value in values):
        return {name: None, f"u_{name}": None}
    u_common = [min(common * abs(fit[name]), fit[f"u_{name}"]) for fit in fits]
    u_own = [max(fit[f"u_{name}"] ** 2 - u**2, 0.0) ** 0.5 for fit, u in zip(fits, u_common, strict=True)]
    mean = summarise(values, u_own, sum(u_common) / len(fits))
    return {name: mean.mean, f"u_{name}": mean.u}


def common_relative_u(plan: PortionsPlan) -> float:
    """Relative uncertainty of the heat capacity of cup and contents at about the end-point (4.1 J/(cm³ K))."""
    contents_j_k = 4.1 * (plan.acid.volume_cm3 + 0.6 * plan.count * plan.portion_cm3)
    return plan.cup.u_heat_capacity_j_k / (contents_j_k + plan.cup.heat_capacity_j_k)


def _trace(repeat: RepeatData) -> Trace:
    if not repeat.samples:
        raise HeatRefused("no_trace", "There is no trace: these are readings only.")
    data = np.asarray(repeat.samples, dtype=np.float64)
    rising = np.concatenate([[True], np.diff(np.maximum.accumulate(data[:, 0])) > 0.0])
    return Trace(data[rising, 0].copy(), data[rising, 1].copy())


def _pour(plan: PortionsPlan, press_s: float, volume_cm3: float, unsure: bool) -> Pour:
    return Pour(press_s, volume_cm3, volume_cm3 if unsure else plan.portions.u_cm3)


def _acid_mol_dm3(plan: PortionsPlan, pair: Neutralisation, end_point_cm3: float) -> float:
    moles_ratio = plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali
    return max(moles_ratio * end_point_cm3 / plan.acid.volume_cm3, 1e-3)
