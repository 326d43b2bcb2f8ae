"""Every number of a practical that mixes once as the line that made it, from the values of this bench.

Both methods work with the mixture's own heat capacity and the cup's, and end with the result's own figures; the
school's way (water's heat capacity, 1 g for each cm³, no cup) stands beside the lines, named as such.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Any, Final

from station.chemistry.heat import Measured, Number, Sheet, Step, nominal, number, put
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.dataset import accepted_neutralisation, accepted_solution
from station.practical.kinds.once.contents import Contents
from station.practical.kinds.once.mixture import AT_C, acid_and_alkali
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.own_working import WATER_J_G_C, degrees
from station.practical.kinds.working_line import as_json, enthalpy_line, own_result, percentage_line
from station.words import Message, say

Json = dict[str, Any]


def once_worked(plan: OncePlan, contents: Contents, found: Json, repeats: Sequence[Json], division_c: float) -> Json:
    """Return `steps` of both methods (empty where one refuses) and `accepted`.

    `found` has the methods' results of a repeat, or of the mean of these `repeats`; `plan` says what was truly taken,
    `division_c` the step of the thermometer.
    """
    steps = {
        name: as_json(_of_method(plan, contents, name, found[name], repeats, division_c)) if found[name] else []
        for name in ("straight_lines", "heat_balance")
    }
    return {"steps": steps, "accepted": _accepted(plan)}


def _of_method(
    plan: OncePlan, contents: Contents, name: str, found: Json, repeats: Sequence[Json], division_c: float
) -> list[Step]:
    sheet, lines = Sheet(), name == "straight_lines"
    of_each = [(each["repeat"], each[name]) for each in repeats if each[name] is not None]
    change = _mean_change(sheet, found, of_each) if len(of_each) > 1 else _change(sheet, found, of_each, lines=lines)
    amount = _amount(sheet, contents)
    if lines and amount is not None:
        _school_way(sheet, plan, contents, (found["change_c"], nominal(amount)), division_c)
    _balance(sheet, plan, contents, found, change, amount)
    return sheet.steps


def _mean_change(sheet: Sheet, found: Json, of_each: Sequence[tuple[int, Json]]) -> Number:
    """The change of each repeat, and the mean of these as they are written."""
    changes = [_difference(sheet, say("step-change-of-repeat", repeat=repeat), each) for repeat, each in of_each]
    shown = " + ".join(f"({degrees(nominal(each))} °C)" for each in changes)
    mean = number(Measured(found["change_c"], found["u_change_c"]), "the temperature change")
    return sheet.line(
        say("step-change-mean"), say("formula-mean-change"), f"ΔT = ({shown}) ÷ {len(changes)}", mean, "°C"
    )


def _change(sheet: Sheet, found: Json, of_each: Sequence[tuple[int, Json]], *, lines: bool) -> Number:
    only = of_each[0][1] if of_each else found
    return _difference(sheet, say("step-change-at-mixing" if lines else "step-change-from-fit"), only)


def _difference(sheet: Sheet, text: Message, found: Json) -> Number:
    """T(after) - T(before), where there are two lines."""
    change = number(Measured(found["change_c"], found["u_change_c"]), "the temperature change")
    before, after = found.get("before"), found.get("after")
    if before is None or after is None:
        formula = say("formula-change-at-mixing")
        return sheet.line(text, formula, f"ΔT = {degrees(found['change_c'])} °C", change, "°C")
    ends = [degrees(each["at_mixing_c"]) for each in (after, before)]
    return sheet.line(text, say("formula-change-after-before"), f"ΔT = {ends[0]} °C - {ends[1]} °C", change, "°C")


def _school_way(
    sheet: Sheet, plan: OncePlan, contents: Contents, found: tuple[float, float], division_c: float
) -> None:
    """Heat and enthalpy as a school works them out, with a school's ±: percentages, added up.

    Half a division for each reading of temperature, half a division for each measuring cylinder, the last digit of
    the balance: common practice, no source.
    """
    change_c, amount_mol = found
    mass_g, cooled = _mass_g(sheet, plan, contents), change_c < 0
    percent = percentage_line(sheet, division_c, change_c) + 100 * _half_divisions_cm3(plan) / mass_g
    heat_j = mass_g * WATER_J_G_C * abs(change_c)
    heat = sheet.line(
        say("step-heat-taken-in-school" if cooled else "step-heat-given-out-school"),
        "q = -m c ΔT" if cooled else "q = m c ΔT",
        f"q = -({put(mass_g)} g × {WATER_J_G_C} J/(g °C) × {put(change_c)} °C)"
        if cooled
        else f"q = {put(mass_g)} g × {WATER_J_G_C} J/(g °C) × {put(change_c)} °C",
        number(Measured(heat_j, heat_j * percent / 100), "the heat"),
        "J",
    )
    enthalpy = enthalpy_line(sheet, heat, amount_mol, say("of-school", of=contents.of_what), taken_in=cooled)
    percent += _amount_percent(plan)
    own_result(sheet, "kJ/mol", nominal(enthalpy), abs(nominal(enthalpy)) * percent / 100)


HALF_CYLINDER_CM3: Final = 0.5
BALANCE_G: Final = 0.01


def _half_divisions_cm3(plan: OncePlan) -> float:
    return HALF_CYLINDER_CM3 * (1 if plan.addition.mass_g is not None else 2)


def _amount_percent(plan: OncePlan) -> float:
    """Of the amount that reacts: the solid's mass, or the smaller volume."""
    if plan.addition.mass_g is not None:
        return 100 * (plan.addition.u_mass_g or BALANCE_G) / plan.addition.mass_g
    return 100 * HALF_CYLINDER_CM3 / min(plan.liquid.volume_cm3, plan.portion_cm3)


def _amount(sheet: Sheet, contents: Contents) -> Number | None:
    if contents.amount_mol is None:
        return None
    sheet.steps.extend(contents.amount_steps)
    return number(contents.amount_mol, "the amount")


def _mass_g(sheet: Sheet, plan: OncePlan, contents: Contents) -> float:
    addition = plan.addition
    added_g = addition.mass_g if addition.mass_g is not None else plan.portion_cm3
    total_g = plan.liquid.volume_cm3 + added_g
    sheet.line(
        say("step-mass-of-mixture"),
        say("formula-mass-liquid-added"),
        f"m = {put(plan.liquid.volume_cm3)} g + {contents.added_text} g",
        total_g,
        "g",
    )
    return total_g


def _balance(
    sheet: Sheet, plan: OncePlan, contents: Contents, found: Json, change: Number, amount: Number | None
) -> None:
    """Lines from the temperature change to the result's own heat and enthalpy."""
    inside, cup = contents.all_j_k, plan.cup
    total = Measured(inside.value + cup.heat_capacity_j_k, (inside.u**2 + cup.u_heat_capacity_j_k**2) ** 0.5)
    capacity = sheet.line(
        say("step-capacity-mixture"),
        say("formula-capacity-mixture"),
        f"C = {inside.value:.1f} J/°C + {cup.heat_capacity_j_k:g} J/°C",
        number(total, "the heat capacity"),
        "J/°C",
    )
    # What is added has its own temperature: what it brings with it is no heat of the reaction.
    brought_j = total.value * found["change_c"] - found["heat_j"]
    taken_in = found["heat_j"] < 0
    heat = sheet.line(
        say("step-heat-taken-in-less" if taken_in else "step-heat-given-out-less"),
        say("formula-heat-taken-in" if taken_in else "formula-heat-given-out"),
        f"q = {round(brought_j)} J - ({put(capacity)} J/°C × {put(change)} °C)"
        if taken_in
        else f"q = {put(capacity)} J/°C × {put(change)} °C - ({round(brought_j)} J)",
        number(Measured(abs(found["heat_j"]), found["u_heat_j"]), "the heat"),
        "J",
    )
    if amount is not None and found["enthalpy_kj_mol"] is not None:
        enthalpy_line(sheet, heat, amount, contents.of_what, taken_in=taken_in)
        own_result(sheet, "kJ/mol", found["enthalpy_kj_mol"], found["u_enthalpy_kj_mol"])


def _accepted(plan: OncePlan) -> Json | None:
    if plan.liquid.is_water:
        mass_g = plan.addition.mass_g
        return (
            None
            if mass_g is None
            else accepted_solution(find_reagent(plan.addition.name), mass_g, plan.liquid.volume_cm3)
        )
    if plan.liquid.concentration_mol_dm3 is None or plan.addition.concentration_mol_dm3 is None:
        return None
    (acid, acid_mol_dm3, acid_cm3), (alkali, alkali_mol_dm3, alkali_cm3) = acid_and_alkali(plan)
    try:
        pair = neutralisation_steps(acid, alkali)
    except WrongPairError:
        return None
    room_c = plan.surroundings.room_c
    at_c = AT_C if room_c is None else room_c
    return accepted_neutralisation(pair, acid_mol_dm3, alkali_mol_dm3, at_c, (acid_cm3, alkali_cm3))
