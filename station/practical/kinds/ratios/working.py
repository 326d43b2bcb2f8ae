"""Every number of the ratio as the line that made it: from the crossing to the amounts, the ratio and the enthalpy."""

from typing import Any

from station.chemistry.heat import Measured, Number, Sheet, Step, number, put
from station.chemistry.pairs import WrongPairError
from station.practical.dataset import accepted_neutralisation
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.own_working import WATER_J_G_C, degrees
from station.practical.kinds.ratios.crossing import at_crossing
from station.practical.kinds.ratios.plan import AT_C, RatiosPlan
from station.practical.kinds.working_line import as_json, enthalpy_line, own_result, percentage_line
from station.words import say

Json = dict[str, Any]


def ratios_worked(plan: RatiosPlan, found: Json, division_c: float) -> Json:
    """Return `steps` of both methods (empty where one refuses) and `accepted`; `found` has the methods' results."""
    try:
        expected_cm3, pair = plan.expected_cm3(), plan.pair
    except WrongPairError:
        return {"steps": {method: [] for method in METHOD_NAMES}, "accepted": None}
    steps = {
        method: as_json(_of(plan, found[method], method, division_c)) if found[method] else []
        for method in METHOD_NAMES
    }
    room_c, volumes = plan.surroundings.room_c, (plan.mixtures.total_cm3 - expected_cm3, expected_cm3)
    strengths = plan.acid.concentration_mol_dm3, plan.alkali.concentration_mol_dm3
    accepted = accepted_neutralisation(pair, *strengths, AT_C if room_c is None else room_c, volumes)
    return {"steps": steps, "accepted": accepted}


def _of(plan: RatiosPlan, found: Json, method: str, division_c: float) -> list[Step]:
    sheet, pair, total_cm3 = Sheet(), plan.pair, plan.mixtures.total_cm3
    alkali_cm3 = number(Measured(found["end_point_cm3"], found["u_end_point_cm3"]), "the crossing")
    acid_cm3 = sheet.line(
        say("step-acid-at-crossing"),
        say("formula-acid-at-crossing"),
        f"V = {put(total_cm3)} cm³ - {put(alkali_cm3)} cm³",
        total_cm3 - alkali_cm3,
        "cm³",
    )
    acid = _amount(sheet, pair.acid.name, plan.acid.concentration_mol_dm3, acid_cm3)
    alkali = _amount(sheet, pair.alkali.name, plan.alkali.concentration_mol_dm3, alkali_cm3)
    sheet.line(
        say("step-ratio", alkali=pair.alkali.name, acid=pair.acid.name),
        say("formula-ratio"),
        f"{put(alkali)} mol ÷ {put(acid)} mol",
        alkali / acid,
        "",
    )
    if pair.alkali.gives_gas or found["enthalpy_kj_mol"] is None:
        return sheet.steps
    rise = sheet.line(
        say("step-rise-at-crossing"),
        say("formula-rise-at-crossing"),
        f"ΔT = {degrees(found['rise_c'])} °C",
        number(Measured(found["rise_c"], found["u_rise_c"]), "the rise"),
        "°C",
    )
    times = "" if pair.alkali_hydroxides == 1 else f"{pair.alkali_hydroxides} × "
    water = sheet.line(
        say("step-water-formed"),
        f"n(H₂O) = {times}n({pair.alkali.formula})",
        f"n(H₂O) = {times}{put(alkali)} mol",
        pair.alkali_hydroxides * alkali,
        "mol",
    )
    if method == "straight_lines":
        _school_way(sheet, total_cm3, rise, water, division_c)
    inside = at_crossing(plan, found["end_point_cm3"], found["u_end_point_cm3"])
    if inside is None:
        return sheet.steps
    capacity = sheet.line(
        say("step-capacity-mixture"),
        say("formula-capacity-mixture"),
        f"C = {inside.contents_j_k.value:.1f} J/°C + {plan.cup.heat_capacity_j_k:g} J/°C",
        number(inside.all_j_k, "the heat capacity"),
        "J/°C",
    )
    heat = sheet.line(
        say("step-heat-of-mixture"), "q = C ΔT", f"q = {put(capacity)} J/°C × {put(rise)} °C", capacity * rise, "J"
    )
    enthalpy_line(sheet, heat, water, say("of-water-formed"))
    own_result(sheet, "kJ/mol", found["enthalpy_kj_mol"], found["u_enthalpy_kj_mol"])
    return sheet.steps


def _amount(sheet: Sheet, reagent: str, mol_dm3: float, volume_cm3: Number) -> Number:
    working = f"n = {put(mol_dm3)} mol/dm³ × {put(volume_cm3)} cm³ ÷ 1000"
    return sheet.line(say("step-amount", reagent=reagent), "n = c V", working, mol_dm3 * volume_cm3 / 1000, "mol")


def _school_way(sheet: Sheet, total_cm3: float, rise: Number, water: Number, division_c: float) -> None:
    """Water's heat capacity, 1 g for each cm³, no cup."""
    heat = sheet.line(
        say("step-heat-taken-up-school"),
        "q = m c ΔT",
        f"q = {put(total_cm3)} g × {WATER_J_G_C} J/(g °C) × {put(rise)} °C",
        total_cm3 * WATER_J_G_C * rise,
        "J",
    )
    enthalpy_line(sheet, heat, water, say("of-school", of=say("of-water-formed")))
    percentage_line(sheet, division_c, rise)
