"""Every number of a practical that mixes once as the line that made it, from the values of this bench.

Both methods work with the mixture's own heat capacity and the cup's, and end with the result's own figures; the
school's way (water's heat capacity, 1 g for each cm³, no cup) stands beside the lines, named as such.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.chemistry.worked import Measured, Number, Sheet, Step, number, put
from station.practical.accepted import accepted_neutralisation, accepted_solution
from station.practical.plan import OncePlan
from station.practical.steps_lines import SCHOOL, WATER_J_G_C, as_json, enthalpy_line, own_result

if TYPE_CHECKING:
    from station.practical.once import Contents

Json = dict[str, Any]

AT_C: Final = 22.0
"""A usual room, where the plan does not say."""


def once_worked(plan: OncePlan, contents: Contents, lines: Json | None, heat: Json | None) -> Json:
    """Return `steps` of both methods (empty where one refuses) and `accepted`.

    `lines` and `heat` are the methods' results of a repeat, or of the mean, as the results have them.
    """
    return {
        "steps": {
            "straight_lines": as_json(_lines(plan, contents, lines)) if lines else [],
            "heat_balance": as_json(_heat(plan, contents, heat)) if heat else [],
        },
        "accepted": _accepted(plan),
    }


def _lines(plan: OncePlan, contents: Contents, found: Json) -> list[Step]:
    sheet = Sheet()
    change = _change(sheet, found, "temperature change at mixing, from the extended lines")
    amount = _amount(sheet, contents)
    if amount is not None:
        mass_g = _mass_g(sheet, plan)
        heat = sheet.line(
            f"heat given out, {SCHOOL}: water's heat capacity, no cup",
            "q = m c ΔT",
            f"q = {put(mass_g)} g × {WATER_J_G_C} J/(g °C) × {put(change)} °C",
            mass_g * WATER_J_G_C * change,
            "J",
        )
        enthalpy_line(sheet, heat, amount, f"{contents.of_what}, {SCHOOL}")
    _balance(sheet, plan, contents, found, change, amount)
    return sheet.steps


def _heat(plan: OncePlan, contents: Contents, found: Json) -> list[Step]:
    sheet = Sheet()
    change = _change(sheet, found, "temperature change without heat loss and lag, from the fit of the whole trace")
    amount = _amount(sheet, contents)
    _balance(sheet, plan, contents, found, change, amount)
    return sheet.steps


def _change(sheet: Sheet, found: Json, text: str) -> Number:
    change = number(Measured(found["change_c"], found["u_change_c"]), "the temperature change")
    before, after = found.get("before"), found.get("after")
    if before is None or after is None:
        return sheet.line(text, "ΔT at the moment of mixing", f"ΔT = {put(change)} °C", change, "°C")
    ends = [put(number(Measured(each["at_mixing_c"], each["u_at_mixing_c"]), "a line")) for each in (after, before)]
    return sheet.line(text, "ΔT = T(after) - T(before)", f"ΔT = {ends[0]} °C - {ends[1]} °C", change, "°C")


def _amount(sheet: Sheet, contents: Contents) -> Number | None:
    if contents.amount_mol is None:
        return None
    sheet.steps.extend(contents.amount_steps)
    return number(contents.amount_mol, "the amount")


def _mass_g(sheet: Sheet, plan: OncePlan) -> float:
    addition = plan.addition
    added_g = addition.mass_g if addition.mass_g is not None else plan.portion_cm3
    total_g = plan.liquid.volume_cm3 + added_g
    sheet.line(
        f"mass of the mixture, {SCHOOL}: 1 g for each cm³",
        "m = m(liquid) + m(added)",
        f"m = {plan.liquid.volume_cm3:g} g + {added_g:g} g",
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
        "heat capacity of the mixture, the cup and the probe",
        "C = C(mixture) + C(cup)",
        f"C = {inside.value:.1f} J/°C + {cup.heat_capacity_j_k:g} J/°C",
        number(total, "the heat capacity"),
        "J/°C",
    )
    # What is added has its own temperature: what it brings with it is no heat of the reaction.
    brought_j = total.value * found["change_c"] - found["heat_j"]
    heat = sheet.line(
        "heat given out, less what the added part brought by its own temperature",
        "q = C ΔT - q(added)",
        f"q = {put(capacity)} J/°C × {put(change)} °C - ({round(brought_j)} J)",
        number(Measured(found["heat_j"], found["u_heat_j"]), "the heat"),
        "J",
    )
    if amount is not None and found["enthalpy_kj_mol"] is not None:
        enthalpy_line(sheet, heat, amount, contents.of_what)
        own_result(sheet, "kJ/mol", found["enthalpy_kj_mol"], found["u_enthalpy_kj_mol"])


def amount_of_solid(name: str, mass_g: float, u_mass_g: float, molar_mass_g_mol: float) -> Sequence[Step]:
    """Return the line from a mass to an amount."""
    sheet = Sheet()
    mass = number(Measured(mass_g, u_mass_g), "the mass")
    sheet.line(
        f"amount of {name}",
        "n = m ÷ M",
        f"n = {put(mass)} g ÷ {molar_mass_g_mol:g} g/mol",
        mass / molar_mass_g_mol,
        "mol",
    )
    return sheet.steps


def _accepted(plan: OncePlan) -> Json | None:
    addition = find_reagent(plan.addition.name)
    if plan.liquid.name == "water":
        return accepted_solution(addition) if plan.addition.mass_g is not None else None
    liquid = find_reagent(plan.liquid.name)
    strengths = plan.liquid.concentration_mol_dm3, plan.addition.concentration_mol_dm3
    if strengths[0] is None or strengths[1] is None:
        return None
    pour = (liquid, strengths[0]), (addition, strengths[1])
    (acid, acid_mol_dm3), (alkali, alkali_mol_dm3) = pour if liquid.is_acid else pour[::-1]
    try:
        pair = neutralisation_steps(acid, alkali)
    except WrongPairError:
        return None
    return accepted_neutralisation(pair, acid_mol_dm3, alkali_mol_dm3, plan.surroundings.room_c or AT_C)
