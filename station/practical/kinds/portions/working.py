"""Every number of a practical with portions as the line that made it, from the values of this bench.

Straight lines go the school's way: water's heat capacity, 1 g for each cm³, no cup. The heat balance works out the
same quantities with the solution's own heat capacity and the cup's; its end-point, concentration and enthalpy are the
result's own, so their u may be a little less than the lines above would give.
"""

from collections.abc import Sequence
from statistics import fmean
from typing import Any, Final

from station.analysis.lines.crossing import CrossingResult, fit_lines
from station.analysis.lines.fit import LinesRefused
from station.chemistry.cup import GasError, cup_heat_capacities
from station.chemistry.heat import Measured, Number, Sheet, Step, amount_of_acid, nominal, number, put
from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.dataset import ReadingRow, RepeatData, accepted_neutralisation
from station.practical.kinds.own_working import PROBE_C, WATER_J_G_C, degrees
from station.practical.kinds.portions.methods import U_ACID_VOLUME_CM3
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.kinds.working_line import as_json, enthalpy_line, own_result, percentage_line
from station.words import say

Json = dict[str, Any]

DIVISIONS_C: Final = (1.0, 0.5, 0.2, 0.1)


def portions_worked(plan: PortionsPlan, rows: Sequence[ReadingRow], heat: Json | None, division_c: float) -> Json:
    """Return `steps` of both methods (empty where one refuses) and `accepted`.

    `rows` are the readings of a repeat or of the mean, `heat` is the heat balance of the same as the results have it,
    `division_c` the smallest division of the thermometer.
    """
    try:
        pair = neutralisation_steps(find_reagent(plan.acid.name), find_reagent(plan.alkali.name))
    except WrongPairError:
        return {"steps": {"straight_lines": [], "heat_balance": []}, "accepted": None}
    school, acid_mol_dm3 = _school_way(plan, pair, rows, division_c)
    balance = _heat_balance(plan, pair, rows, heat) if heat else []
    known = plan.acid.concentration_mol_dm3 or (heat or {}).get("acid_mol_dm3") or acid_mol_dm3
    accepted = None
    if known and rows:
        mean_c = fmean(row.temperature_c for row in rows)
        accepted = accepted_neutralisation(pair, known, plan.alkali.concentration_mol_dm3, mean_c)
    return {"steps": {"straight_lines": as_json(school), "heat_balance": as_json(balance)}, "accepted": accepted}


def division_of(repeats: Sequence[RepeatData]) -> float:
    """Return the smallest division in °C: the probe's step, or what typed readings have in common."""
    if any(each.samples for each in repeats):
        return PROBE_C
    temperatures = [row.temperature_c for each in repeats for row in each.readings]
    for division in DIVISIONS_C:
        if all(abs(each / division - round(each / division)) < 1e-6 for each in temperatures):
            return division
    return DIVISIONS_C[-1]


def _school_way(
    plan: PortionsPlan, pair: Neutralisation, rows: Sequence[ReadingRow], division_c: float
) -> tuple[list[Step], float | None]:
    """The lines on these readings, and the acid's concentration by them."""
    try:
        crossing = fit_lines([row.volume_cm3 for row in rows], [row.temperature_c for row in rows])
    except LinesRefused:
        return [], None
    sheet = Sheet()
    acid_cm3 = _acid_cm3(plan)
    end_cm3 = number(Measured(crossing.end_point_cm3, crossing.u_end_point_cm3), "the end-point")
    acid, water = _amounts(sheet, plan, pair, acid_cm3, end_cm3)
    if pair.alkali.gives_gas:
        return sheet.steps, nominal(acid)
    start = _start(rows, crossing, division_c)
    top = number(Measured(crossing.temperature_c, crossing.u_temperature_c), "the crossing")
    rise = sheet.line(
        say("step-change-to-crossing"),
        say("formula-change-crossing"),
        f"ΔT = {degrees(nominal(top))} °C - {degrees(nominal(start))} °C",
        top - start,
        "°C",
    )
    mass = sheet.line(
        say("step-mass-of-liquid"),
        say("formula-mass-acid-alkali"),
        f"m = ({put(acid_cm3)} cm³ + {put(end_cm3)} cm³) × 1 g/cm³",
        acid_cm3 + end_cm3,
        "g",
    )
    heat = sheet.line(
        say("step-heat-taken-up-school"),
        "q = m c ΔT",
        f"q = {put(mass)} g × {WATER_J_G_C} J/(g °C) × {put(rise)} °C",
        mass * WATER_J_G_C * rise,
        "J",
    )
    enthalpy_line(sheet, heat, water, say("of-school", of=say("of-water-formed")))
    percentage_line(sheet, division_c, rise)
    return sheet.steps, nominal(acid)


def _heat_balance(plan: PortionsPlan, pair: Neutralisation, rows: Sequence[ReadingRow], found: Json) -> list[Step]:
    sheet = Sheet()
    acid_cm3 = _acid_cm3(plan)
    end_cm3 = number(Measured(found["end_point_cm3"], found["u_end_point_cm3"]), "the end-point")
    _, water = _amounts(sheet, plan, pair, acid_cm3, end_cm3)
    own_result(sheet, "mol/dm³", found["acid_mol_dm3"], found["u_acid_mol_dm3"])
    if found["enthalpy_kj_mol"] is None:
        return sheet.steps
    enthalpy, u_enthalpy = found["enthalpy_kj_mol"], found["u_enthalpy_kj_mol"]
    capacity = _capacity(sheet, plan, pair, rows, found)
    if capacity is None:
        return sheet.steps
    share_c, share_h = capacity.u / capacity.value, u_enthalpy / abs(enthalpy)
    heat_j = -enthalpy * nominal(water) * 1000
    rise_c = heat_j / capacity.value
    # The temperature is what was measured: the enthalpy's u less the heat capacity's share of it.
    rise = number(Measured(rise_c, abs(rise_c) * max(share_h**2 - share_c**2, 0.0) ** 0.5), "the rise")
    sheet.line(
        say("step-change-from-fit"),
        say("formula-change-balance"),
        f"ΔT = {put(rise)} °C",
        rise,
        "°C",
    )
    heat = sheet.line(
        say("step-heat-to-end-point"),
        "q = C ΔT",
        f"q = {put(number(capacity, 'C'))} J/°C × {put(rise)} °C",
        number(Measured(heat_j, abs(heat_j) * share_h), "the heat"),
        "J",
    )
    enthalpy_line(sheet, heat, water, say("of-water-formed"))
    own_result(sheet, "kJ/mol", enthalpy, u_enthalpy)
    return sheet.steps


def _amounts(
    sheet: Sheet, plan: PortionsPlan, pair: Neutralisation, acid_cm3: Number, end_cm3: Number
) -> tuple[Number, Number]:
    """Lines from the end-point to the acid's concentration (mol/dm³) and the amount of water (mol)."""
    alkali_mol_dm3 = plan.alkali.concentration_mol_dm3
    alkali = sheet.line(
        say("step-amount-to-end-point", alkali=pair.alkali.name),
        "n = c V",
        f"n = {put(alkali_mol_dm3)} mol/dm³ × {put(end_cm3)} cm³ ÷ 1000",
        alkali_mol_dm3 * end_cm3 / 1000,
        "mol",
    )
    amount = amount_of_acid(sheet, pair, alkali)
    acid = sheet.line(
        say("step-concentration", acid=pair.acid.name),
        "c = n ÷ V",
        f"c = {put(amount)} mol ÷ {put(acid_cm3)} cm³ × 1000",
        amount / acid_cm3 * 1000,
        "mol/dm³",
    )
    times = "" if pair.alkali_hydroxides == 1 else f"{pair.alkali_hydroxides} × "
    water = sheet.line(
        say("step-water-formed"),
        f"n(H₂O) = {times}n({pair.alkali.formula})",
        f"n(H₂O) = {times}{put(alkali)} mol",
        pair.alkali_hydroxides * alkali,
        "mol",
    )
    return acid, water


def _capacity(
    sheet: Sheet, plan: PortionsPlan, pair: Neutralisation, rows: Sequence[ReadingRow], found: Json
) -> Measured | None:
    start_c = rows[0].temperature_c if rows else 20.0
    try:
        capacities = cup_heat_capacities(
            pair.acid,
            plan.acid.concentration_mol_dm3 or found["acid_mol_dm3"],
            pair.alkali,
            plan.alkali.concentration_mol_dm3,
            min(max(start_c, 0.0), 60.0),
        )
    except (GasError, ValueError):
        return None
    liquid_cm3, per_cm3, cup = plan.acid.volume_cm3 + found["end_point_cm3"], capacities.product_j_cm3_k, plan.cup
    u = ((capacities.u_relative * liquid_cm3 * per_cm3) ** 2 + cup.u_heat_capacity_j_k**2) ** 0.5
    total = Measured(liquid_cm3 * per_cm3 + cup.heat_capacity_j_k, u)
    sheet.line(
        say("step-capacity-solution"),
        say("formula-capacity-solution"),
        f"C = {liquid_cm3:.1f} cm³ × {per_cm3:.3f} J/(cm³ °C) + {cup.heat_capacity_j_k:g} J/°C",
        number(total, "the heat capacity"),
        "J/°C",
    )
    return total


def _start(rows: Sequence[ReadingRow], crossing: CrossingResult, division_c: float) -> Number:
    """The reading before the first portion; the first line's where there is none."""
    u_c = max(crossing.s_c, division_c / 12.0**0.5)
    first = rows[0]
    start_c = first.temperature_c if first.volume_cm3 == 0.0 else crossing.before.intercept_c
    return number(Measured(start_c, u_c), "the start")


def _acid_cm3(plan: PortionsPlan) -> Number:
    return number(Measured(plan.acid.volume_cm3, plan.acid.u_volume_cm3 or U_ACID_VOLUME_CM3), "the acid's volume")
