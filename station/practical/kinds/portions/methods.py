"""The heat balance of a plan's repeats: chemistry gives what is known beforehand, analysis fits, JSON comes out."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from math import hypot
from typing import Any

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import Estimate, HeatFit, HeatRefused, HeatSetup, Pour, Trace, step_of
from station.analysis.heat.readings import ReadingsFit, fit_readings
from station.analysis.lines.crossing import Arm, CrossingResult, fit_lines
from station.analysis.lines.fit import LinesRefused
from station.analysis.lines.split import suspects
from station.analysis.lines.uncertainty import IdealCup, end_point_behind_cm3, half_a_division, predicted_bias_cm3
from station.analysis.odd_ones import LEAST_SHARE
from station.analysis.repeats import summarise
from station.chemistry.cup import GasError, cup_heat_capacities
from station.chemistry.pairs import Neutralisation, WrongPairError
from station.practical.by_hand import code_of, u_reading_c
from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.kinds.own_working import PROBE_C
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.state import DOUBTS_VOLUME
from station.words import Message, say

# The graph-paper method with what must stand beside it: the bias it has by nature, and the school's ±.


Json = dict[str, Any]
Numbers = NDArray[np.float64]


def straight_lines(rows: Sequence[ReadingRow], setup: HeatSetup | None, end_point_cm3: float | None) -> Json:
    """Return the method on these readings as `straight_lines` (None when it refuses), `refused` and `notes`.

    `setup` (what is known of the cup) makes the predicted bias possible; `end_point_cm3` is the heat balance's,
    where there is one.
    """
    volumes, temperatures = [row.volume_cm3 for row in rows], [row.temperature_c for row in rows]
    try:
        crossing = fit_lines(volumes, temperatures)
    except LinesRefused as refusal:
        return {"straight_lines": None, "refused": {"straight_lines": str(refusal)}, "notes": []}
    found = _crossing(crossing)
    if setup is not None:
        found["predicted_bias_cm3"] = _bias(crossing, volumes, setup, end_point_cm3)
    half = half_a_division(crossing.temperature_c, PROBE_C) if crossing.temperature_c else None
    found["school"] = None if half is None else {"convention": half.convention, "plus_minus_c": half.plus_minus}
    return {"straight_lines": found, "refused": {}, "notes": _suspect_notes(rows, crossing)}


def _crossing(crossing: CrossingResult) -> Json:
    return {
        "end_point_cm3": crossing.end_point_cm3,
        "u_end_point_cm3": crossing.u_end_point_cm3,
        "interval_95_cm3": list(crossing.interval_95_cm3),
        "temperature_c": crossing.temperature_c,
        "u_temperature_c": crossing.u_temperature_c,
        "label": crossing.label,
        "rule": crossing.rule,
        "before": _arm(crossing.before),
        "after": _arm(crossing.after),
        "left_out": list(crossing.left_out),
    }


def _arm(arm: Arm) -> Json:
    return {"slope_c_cm3": arm.slope_c_cm3, "intercept_c": arm.intercept_c, "points": list(arm.points)}


def _bias(
    crossing: CrossingResult, volumes: Sequence[float], setup: HeatSetup, end_point_cm3: float | None
) -> float | None:
    """Crossing minus end-point in an ideal cup with this split; None where that cannot be told."""
    cup = IdealCup(setup.acid_volume_cm3.value, setup.acid_j_cm3_k, setup.alkali_j_cm3_k, setup.cup_j_k.value)
    arms = (crossing.before.points, crossing.after.points)
    behind = end_point_cm3 or end_point_behind_cm3(crossing.end_point_cm3, volumes, cup, arms)
    if behind is None:
        return None
    try:
        return predicted_bias_cm3(volumes, behind, cup, arms)
    except LinesRefused:
        return None


def _suspect_notes(rows: Sequence[ReadingRow], crossing: CrossingResult) -> list[Message]:
    arms = (crossing.before.points, crossing.after.points)
    found = suspects([row.volume_cm3 for row in rows], [row.temperature_c for row in rows], arms, step_c=PROBE_C)
    return [
        say(
            "lines-off-line",
            portion=rows[each.point].portion,
            off_c=f"{abs(each.off_line_c):.2f}",
            test=each.test,
        )
        for each in found
    ]


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


LARGEST_PULL = 3.5
"""As where the fit itself says that a portion does not look like its volume."""


def asked_fit(plan: PortionsPlan, repeat: RepeatData, known: Known) -> tuple[RepeatData, HeatFit]:
    """Fit one repeat; of a file, put a portion in doubt that does not look like its volume where that mends the fit.

    Return the repeat with the question that this leads to. Raises HeatRefused.
    """
    fit = heat_fit(plan, repeat, known)
    while repeat.of_file and not fit.describes_trace and len(repeat.questions) < MOST_ASKED:
        poured = [number for number, pour in enumerate(repeat.pours, 1) if pour[1] > 0.0]
        unsure = {number for number, pour in enumerate(repeat.pours, 1) if pour[2]}
        pulls = {number: _pull(plan, repeat, fit, place) for place, number in enumerate(poured) if number not in unsure}
        strained = sorted(
            (each for each in pulls if abs(pulls[each]) > LARGEST_PULL), key=lambda each: -abs(pulls[each])
        )
        tried = [(_fit_or_none(plan, repeat.in_doubt(each, "volume"), known), each) for each in strained[:MOST_TRIED]]
        ways = [(freed, each) for freed, each in tried if freed is not None]
        if not ways:
            break
        freed, worst = min(ways, key=lambda way: way[0].residual_rms_c)
        planned_cm3 = repeat.pours[worst - 1][1]
        share = freed.parameters[freed.names.index(f"volume_cm3[{poured.index(worst) + 1}]")] / planned_cm3 - 1.0
        if not (abs(share) > LEAST_SHARE and freed.residual_rms_c < fit.residual_rms_c):
            break
        repeat, fit = repeat.in_doubt(worst, code_of(share)), freed
    return repeat, fit


MOST_ASKED, MOST_TRIED = 3, 3
"""In a repeat with so many questions nothing more is asked; so many portions are tried, the most strained ones."""


def _fit_or_none(plan: PortionsPlan, repeat: RepeatData, known: Known) -> HeatFit | None:
    try:
        return heat_fit(plan, repeat, known)
    except HeatRefused:
        return None


def _pull(plan: PortionsPlan, repeat: RepeatData, fit: HeatFit, place: int) -> float:
    """How far the fit had to move a portion's volume, in its u."""
    planned_cm3 = [pour[1] for pour in repeat.pours if pour[1] > 0.0][place]
    return float(fit.parameters[fit.names.index(f"volume_cm3[{place + 1}]")] - planned_cm3) / plan.portions.u_cm3


def readings_fit(plan: PortionsPlan, repeat: RepeatData, known: Known) -> ReadingsFit:
    """Fit readings without a trace, corrected for cup and dilution. Raises HeatRefused with the reason in words."""
    pair = reacting_pair(plan)
    volumes, temperatures, u_volumes, u_c = _by_hand(plan, repeat)
    return fit_readings(volumes, temperatures, setup_for_readings(plan, pair, known), u_volumes, u_c)


UNTOLD_START_C = 30.0
"""u of a start temperature that is left out."""


def _by_hand(plan: PortionsPlan, repeat: RepeatData) -> tuple[Numbers, Numbers, Numbers, Numbers]:
    """Volumes and temperatures of the readings, the u of what went in before each, and the u of each reading.

    A start temperature that is left out is put where the next readings point to, with a u that says nothing.
    """
    rows = list(repeat.readings)
    u_c = [u_reading_c([row.temperature_c for row in rows])] * len(rows)
    asked = {portion for portion, _ in repeat.questions}
    if len(rows) > 1 and rows[0].portion > 0 and (0 in asked or repeat.pours):
        (one, other), steps = rows[:2], max(rows[1].portion - rows[0].portion, 1)
        slope_c = (other.temperature_c - one.temperature_c) / steps
        rows = [ReadingRow(0, 0.0, one.temperature_c - slope_c * one.portion), *rows]
        u_c = [UNTOLD_START_C, *u_c]
    if not rows or rows[0].volume_cm3 != 0.0:
        raise HeatRefused("no_start", say("heat-no-start-reading"))
    doubted = {number: volume_cm3 for number, (_, volume_cm3, unsure) in enumerate(repeat.pours, 1) if unsure}
    doubted |= {portion: plan.portion_cm3 for portion, code in repeat.questions if code in DOUBTS_VOLUME}
    u_volumes = [0.0]
    for before, row in pairwise(rows):
        of_each = [doubted.get(k, plan.portions.u_cm3) for k in range(before.portion + 1, row.portion + 1)]
        u_volumes.append(hypot(*of_each))
    volumes, temperatures = [row.volume_cm3 for row in rows], [row.temperature_c for row in rows]
    found = (np.asarray(each, dtype=np.float64) for each in (volumes, temperatures, u_volumes, u_c))
    return next(found), next(found), next(found), next(found)


def reacting_pair(plan: PortionsPlan) -> Neutralisation:
    """Return the plan's neutralisation. Raises HeatRefused when its heat is not one known step."""
    try:
        pair = plan.pair
    except WrongPairError as error:
        raise HeatRefused("wrong_pair", say("heat-cannot-be-used", reason=str(error))) from None
    if not pair.single_step:
        raise HeatRefused("not_one_step", say("heat-cannot-be-used", reason=pair.refusal))
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
        raise HeatRefused("no_heat_capacity", say("heat-cannot-be-used", reason=str(error))) from None
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
    corrected = _curve(volumes, fit.heat_corrected_c[-len(volumes) :])
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
    common = hypot(plan.shared_u, u_slope)
    return {**mean, **_mean_of(fits, "enthalpy_kj_mol", common), **_mean_of(fits, "acid_mol_dm3", 0.0)}


def _mean_of(fits: Sequence[Json], name: str, common: float) -> Json:
    values = [fit[name] for fit in fits]
    if any(value is None for value in values):
        return {name: None, f"u_{name}": None}
    u_common = [min(common * abs(fit[name]), fit[f"u_{name}"]) for fit in fits]
    u_own = [max(fit[f"u_{name}"] ** 2 - u**2, 0.0) ** 0.5 for fit, u in zip(fits, u_common, strict=True)]
    mean = summarise(values, u_own, sum(u_common) / len(fits))
    return {name: mean.mean, f"u_{name}": mean.u}


def _trace(repeat: RepeatData) -> Trace:
    if not repeat.samples:
        raise HeatRefused("no_trace", say("heat-no-trace"))
    data = np.asarray(repeat.samples, dtype=np.float64)
    rising = np.concatenate([[True], np.diff(np.maximum.accumulate(data[:, 0])) > 0.0])
    temperature_c = data[rising, 1].copy()
    return Trace(data[rising, 0].copy(), temperature_c, step_of(temperature_c))


def _pour(plan: PortionsPlan, press_s: float, volume_cm3: float, unsure: bool) -> Pour:
    return Pour(press_s, volume_cm3, volume_cm3 if unsure else plan.portions.u_cm3)


def _acid_mol_dm3(plan: PortionsPlan, pair: Neutralisation, end_point_cm3: float) -> float:
    moles_ratio = plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali
    return max(moles_ratio * end_point_cm3 / plan.acid.volume_cm3, 1e-3)
