"""The results of a practical that mixes once: temperature change, heat and enthalpy, by lines and by heat balance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot
from typing import Any, Final

import numpy as np

from station.analysis.heat.inputs import Estimate, Trace
from station.analysis.once.enthalpy import enthalpy_once, extrapolate, predicted_bias_c
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import LIQUIDS_S, SOLIDS_S, Extrapolation, OnceHeat, OnceRefused, OnceSetup, Stretch
from station.analysis.repeats import summarise
from station.chemistry.cup import GasError, cup_contents, dissolved_contents
from station.chemistry.heat import Measured, Number, Sheet, Step, nominal, number, put, water_formed
from station.chemistry.liquids import water_density_g_cm3, water_volumetric_heat_capacity_j_cm3_k
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import solution
from station.practical.dataset import (
    Known,
    RepeatData,
    accepted_neutralisation,
    accepted_solution,
    mean_probe,
    probe_of,
    with_probe,
)
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.own_working import PROBE_C, WATER_J_G_C
from station.practical.kinds.working_line import as_json, enthalpy_line, own_result, percentage_line
from station.words import Message, plain, say

Json = dict[str, Any]

AT_C = 22.0
U_VOLUME_CM3 = 0.3  # a 50 cm³ measuring cylinder, class A: ±0.5 cm³ (ASTM E1272 gives 0.25 to 0.50), rectangular
U_MASS_G = 0.01  # two readings of a 0.01 g balance: common practice, no source
U_ADDED_C, U_ROOM_C = 0.3, 1.0
U_SAME_C = 2.0  # of something that stood in the same room, unmeasured: common practice, no source
SOLID_J_G_K = Estimate(0.9, 0.3)  # salts lie between 0.6 and 1.2 J/(g K); an estimate


NOTHING_TO_NOTE: Final = plain("")


@dataclass(frozen=True)
class Contents:
    """Heat capacities in J/K of all in the cup and of the added part, the amount that reacts (mol, or None)."""

    all_j_k: Estimate
    added_j_k: Estimate
    amount_mol: Measured | None
    of_what: Message
    note: Message = NOTHING_TO_NOTE
    amount_steps: tuple[Step, ...] = ()


def results(plan: OncePlan, repeats: Sequence[RepeatData], known: Known) -> Json:
    """Return the results as JSON values: `repeats` one by one, then `mean` of the repeats."""
    try:
        contents = contents_of(plan)
    except ValueError as error:
        return _impossible(repeats, say("once-cannot-be-mixed", reason=str(error)))
    found = [_repeat(plan, contents, repeat, known) for repeat in repeats]
    mean: Json = {"straight_lines": None, "heat_balance": None, "refused": {}, "notes": []}
    for method in ("straight_lines", "heat_balance"):
        done = [each[method] for each in found if each[method] is not None]
        mean[method] = _mean(done)
        if not done and found:
            mean["refused"][method] = found[-1]["refused"].get(method, say("once-no-repeat"))
    used, differing = mean_probe(repeats)
    mean["notes"] += differing
    for each, probe in zip((*found, mean), (*(probe_of(each) for each in repeats), used), strict=True):
        with_probe(each, probe)
    for each in (*found, mean):
        each.update(once_worked(plan, contents, each["straight_lines"], each["heat_balance"]))
    return {"repeats": found, "mean": mean}


def _impossible(repeats: Sequence[RepeatData], why: Message) -> Json:
    refused: Json = {
        "straight_lines": None,
        "heat_balance": None,
        "refused": {"straight_lines": why, "heat_balance": why},
        "notes": [],
    }
    return {"repeats": [{"repeat": each.repeat, **refused} for each in repeats], "mean": refused}


def contents_of(plan: OncePlan) -> Contents:
    """Return what the cup holds after mixing, and how much of it reacts."""
    addition = find_reagent(plan.addition.name)
    if plan.addition.mass_g is not None:
        return _dissolved(plan, plan.addition.mass_g)
    liquid_cm3, added_cm3 = plan.liquid.volume_cm3, plan.portion_cm3
    added_mol_dm3 = plan.addition.concentration_mol_dm3 or 0.0
    added_j_k = solution({addition.solute: added_mol_dm3}, AT_C).volumetric_j_cm3_k * added_cm3
    if plan.liquid.concentration_mol_dm3 is None:
        water_j_k = water_volumetric_heat_capacity_j_cm3_k(AT_C) * liquid_cm3
        return Contents(_within(water_j_k + added_j_k, 0.01), _within(added_j_k, 0.01), None, addition.name)
    liquid = find_reagent(plan.liquid.name)
    pour = ((liquid, plan.liquid.concentration_mol_dm3, liquid_cm3), (addition, added_mol_dm3, added_cm3))
    acid, alkali = pour if liquid.is_acid else (pour[1], pour[0])
    try:
        pair = neutralisation_steps(acid[0], alkali[0])
        mixed = cup_contents(*acid, *alkali, AT_C)
    except (WrongPairError, GasError) as error:
        liquid_j_k = solution({liquid.solute: plan.liquid.concentration_mol_dm3}, AT_C).volumetric_j_cm3_k * liquid_cm3
        note, all_j_k = say("once-no-enthalpy", reason=str(error)), _within(liquid_j_k + added_j_k, 0.02)
        return Contents(all_j_k, _within(added_j_k, 0.02), None, say("of-reaction"), note)
    u_liquid, u_added = plan.liquid.u_volume_cm3 or U_VOLUME_CM3, plan.addition.u_volume_cm3 or U_VOLUME_CM3
    u_acid, u_alkali = (u_liquid, u_added) if liquid.is_acid else (u_added, u_liquid)
    water = water_formed(
        pair, Measured(acid[1]), Measured(acid[2], u_acid), Measured(alkali[1]), Measured(alkali[2], u_alkali)
    )
    all_j_k = _within(mixed.heat_capacity_j_k, max(mixed.u_relative, 0.005))
    amount = Measured(water.value, water.u)
    return Contents(all_j_k, _within(added_j_k, 0.01), amount, say("of-water-formed"), amount_steps=water.steps)


def _dissolved(plan: OncePlan, mass_g: float) -> Contents:
    solid = find_reagent(plan.addition.name)
    u_mass_g = plan.addition.u_mass_g or U_MASS_G
    amount = Measured(mass_g / solid.molar_mass_g_mol, u_mass_g / solid.molar_mass_g_mol)
    liquid_g = plan.liquid.volume_cm3 * water_density_g_cm3(AT_C)
    mixed = dissolved_contents(solid, mass_g, liquid_g, AT_C)
    u_liquid = (plan.liquid.u_volume_cm3 or U_VOLUME_CM3) / plan.liquid.volume_cm3
    note = NOTHING_TO_NOTE if plan.liquid.is_water else say("once-counted-as-water", reagent=plan.liquid.name)
    return Contents(
        _within(mixed.heat_capacity_j_k, (mixed.u_relative**2 + u_liquid**2) ** 0.5),
        Estimate(SOLID_J_G_K.value * mass_g, SOLID_J_G_K.u * mass_g),
        amount,
        say("of-dissolved", reagent=solid.weighed_name),
        note,
        tuple(amount_of_solid(solid.weighed_name, mass_g, u_mass_g, solid.molar_mass_g_mol)),
    )


def _repeat(plan: OncePlan, contents: Contents, repeat: RepeatData, known: Known) -> Json:
    result: Json = {
        "repeat": repeat.repeat,
        "straight_lines": None,
        "heat_balance": None,
        "refused": {},
        "notes": [contents.note] if contents.note else [],
    }
    if not repeat.pours or not repeat.samples:
        why = say("once-not-recorded" if repeat.samples else "heat-no-trace")
        return {**result, "refused": {"straight_lines": why, "heat_balance": why}}
    mixed_at_s = repeat.pours[0][0]
    data = np.asarray(repeat.samples, dtype=np.float64)
    rising = np.concatenate([[True], np.diff(np.maximum.accumulate(data[:, 0])) > 0.0])
    times, temperatures = data[rising, 0].copy(), data[rising, 1].copy()
    used = probe_of(repeat)
    if used is not None:
        known, contents = replace(known, u_probe_c=used.u_c), _with_slope(contents, used.u_slope)
    setup = _setup(plan, contents, known)
    try:
        result["straight_lines"] = _lines_json(extrapolate(times, temperatures, mixed_at_s), plan, contents, setup)
    except OnceRefused as refusal:
        result["refused"]["straight_lines"] = refusal.reason
    try:
        fit = fit_once(Trace(times, temperatures), mixed_at_s, setup)
        result["heat_balance"] = _heat_json(fit, contents)
        if result["straight_lines"] is not None:
            result["straight_lines"]["predicted_bias_c"] = predicted_bias_c(fit, times, press_s=mixed_at_s)
        result["notes"] = [*result["notes"], *fit.notes]
    except OnceRefused as refusal:
        result["refused"]["heat_balance"] = refusal.reason
    return result


def _with_slope(contents: Contents, u_slope: float) -> Contents:
    """A slope of the probe that is wrong by so much acts as if the heat capacities were."""
    all_j_k = contents.all_j_k
    return replace(contents, all_j_k=Estimate(all_j_k.value, hypot(all_j_k.u, u_slope * all_j_k.value)))


def _setup(plan: OncePlan, contents: Contents, known: Known) -> OnceSetup:
    added_c, u_added_c, typed = known.alkali_c, known.alkali_u_c, known.alkali_typed
    if added_c is None:
        added_c, u_added_c, typed = plan.addition.temperature_c, U_ADDED_C, True
    u_added_c = hypot(u_added_c or U_ADDED_C, known.u_probe_c if typed else 0.0)
    room_c = plan.surroundings.room_c
    return OnceSetup(
        contents_j_k=contents.all_j_k,
        added_j_k=contents.added_j_k,
        cup_j_k=Estimate(plan.cup.heat_capacity_j_k, plan.cup.u_heat_capacity_j_k),
        added_c=None if added_c is None else Estimate(added_c, u_added_c),
        room_c=None if room_c is None else Estimate(room_c, U_ROOM_C),
        completion_s=LIQUIDS_S if plan.addition.mass_g is None else SOLIDS_S,
    )


def _lines_json(found: Extrapolation, plan: OncePlan, contents: Contents, setup: OnceSetup) -> Json:
    all_j_k = contents.all_j_k.value + plan.cup.heat_capacity_j_k
    u_j_k = (contents.all_j_k.u**2 + plan.cup.u_heat_capacity_j_k**2) ** 0.5
    added_j_k, added_c = contents.added_j_k.value, setup.added_c or Estimate(found.before.at_mixing_c, U_SAME_C)
    # What is added brings its own temperature, which is no heat of the reaction.
    brought_j = added_j_k * (added_c.value - found.before.at_mixing_c)
    heat_j = all_j_k * found.change_c - brought_j
    u_parts = (all_j_k * found.u_change_c, u_j_k * found.change_c, added_j_k * added_c.u)
    u_heat_j = sum(u**2 for u in u_parts) ** 0.5
    return {
        "change_c": found.change_c,
        "u_change_c": found.u_change_c,
        "interval_95_c": list(found.interval_95_c),
        "mixed_at_s": found.mixed_at_s,
        "label": found.label,
        "rule": found.rule,
        "before": _stretch(found.before),
        "after": _stretch(found.after),
        "heat_j": heat_j,
        "u_heat_j": u_heat_j,
        **_enthalpy(heat_j, u_heat_j, contents),
    }


def _stretch(line: Stretch) -> Json:
    return {
        "begin_s": line.begin_s,
        "end_s": line.end_s,
        "slope_c_s": line.slope_c_s,
        "at_mixing_c": line.at_mixing_c,
        "u_at_mixing_c": line.u_at_mixing_c,
    }


def _heat_json(fit: OnceHeat, contents: Contents) -> Json:
    return {
        "change_c": fit.change_c,
        "u_change_c": fit.u_change_c,
        "interval_95_c": list(fit.interval_95_c),
        "heat_j": fit.heat_j,
        "u_heat_j": fit.u_heat_j,
        "interval_95_j": list(fit.interval_95_j),
        "describes_trace": fit.describes_trace,
        "residual_rms_c": fit.residual_rms_c,
        **_enthalpy(fit.heat_j, fit.u_heat_j, contents),
    }


def _enthalpy(heat_j: float, u_heat_j: float, contents: Contents) -> Json:
    if contents.amount_mol is None:
        return {"enthalpy_kj_mol": None, "u_enthalpy_kj_mol": None, "enthalpy_of": None}
    worked = enthalpy_once(heat_j, u_heat_j, *contents.amount_mol, contents.of_what)
    return {"enthalpy_kj_mol": worked.value, "u_enthalpy_kj_mol": worked.u, "enthalpy_of": contents.of_what}


def _mean(found: Sequence[Json]) -> Json | None:
    """Return the mean of the repeats: what is the same in all of them does not average out.

    Heat capacities, the amount and the temperature of what is added are shared; the temperature change is not.
    """
    if not found:
        return None
    mean: Json = {"enthalpy_of": found[0]["enthalpy_of"]}
    if "describes_trace" in found[0]:
        mean["describes_trace"] = all(each["describes_trace"] for each in found)
    for name in ("change_c", "heat_j", "enthalpy_kj_mol"):
        if any(each[name] is None for each in found):
            mean |= {name: None, f"u_{name}": None}
            continue
        own = [_own_u(each, name) for each in found]
        shared = [(each[f"u_{name}"] ** 2 - u**2) ** 0.5 for each, u in zip(found, own, strict=True)]
        made = summarise([each[name] for each in found], own, sum(shared) / len(found))
        mean |= {name: made.mean, f"u_{name}": made.u}
        if name == "change_c":
            mean["interval_95_c"] = list(made.interval_95)
    return mean


def _own_u(result: Json, name: str) -> float:
    """The part of u that comes from this repeat's own temperature change."""
    u = float(result[f"u_{name}"])
    if name == "change_c" or not result["change_c"]:
        return u
    return min(u, abs(float(result[name]) / float(result["change_c"])) * float(result["u_change_c"]))


def _within(value: float, relative: float) -> Estimate:
    return Estimate(value, value * relative)


# Every number of a practical that mixes once as the line that made it, from the values of this bench.
#
# Both methods work with the mixture's own heat capacity and the cup's, and end with the result's own figures; the
# school's way (water's heat capacity, 1 g for each cm³, no cup) stands beside the lines, named as such.


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
    change = _change(sheet, found, say("step-change-at-mixing"))
    amount = _amount(sheet, contents)
    if amount is not None:
        _school_way(sheet, plan, contents, found["change_c"], nominal(amount))
    _balance(sheet, plan, contents, found, change, amount)
    return sheet.steps


def _school_way(sheet: Sheet, plan: OncePlan, contents: Contents, change_c: float, amount_mol: float) -> None:
    """Heat and enthalpy as a school works them out, with a school's ±: percentages, added up.

    Half a division for each reading of temperature, half a division for each measuring cylinder, the last digit of
    the balance: common practice, no source.
    """
    mass_g, cooled = _mass_g(sheet, plan), change_c < 0
    percent = percentage_line(sheet, PROBE_C, change_c) + 100 * _half_divisions_cm3(plan) / mass_g
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
        return 100 * BALANCE_G / plan.addition.mass_g
    return 100 * HALF_CYLINDER_CM3 / min(plan.liquid.volume_cm3, plan.portion_cm3)


def _heat(plan: OncePlan, contents: Contents, found: Json) -> list[Step]:
    sheet = Sheet()
    change = _change(sheet, found, say("step-change-from-fit"))
    amount = _amount(sheet, contents)
    _balance(sheet, plan, contents, found, change, amount)
    return sheet.steps


def _change(sheet: Sheet, found: Json, text: Message) -> Number:
    change = number(Measured(found["change_c"], found["u_change_c"]), "the temperature change")
    before, after = found.get("before"), found.get("after")
    if before is None or after is None:
        return sheet.line(text, say("formula-change-at-mixing"), f"ΔT = {put(change)} °C", change, "°C")
    ends = [put(number(Measured(each["at_mixing_c"], each["u_at_mixing_c"]), "a line")) for each in (after, before)]
    return sheet.line(text, say("formula-change-after-before"), f"ΔT = {ends[0]} °C - {ends[1]} °C", change, "°C")


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
        say("step-mass-of-mixture"),
        say("formula-mass-liquid-added"),
        f"m = {put(plan.liquid.volume_cm3)} g + {put(added_g)} g",
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


def amount_of_solid(name: Message, mass_g: float, u_mass_g: float, molar_mass_g_mol: float) -> Sequence[Step]:
    """Return the line from a mass to an amount."""
    sheet = Sheet()
    mass = number(Measured(mass_g, u_mass_g), "the mass")
    sheet.line(
        say("step-amount", reagent=name),
        "n = m ÷ M",
        f"n = {put(mass)} g ÷ {put(molar_mass_g_mol)} g/mol",
        mass / molar_mass_g_mol,
        "mol",
    )
    return sheet.steps


def _accepted(plan: OncePlan) -> Json | None:
    addition = find_reagent(plan.addition.name)
    if plan.liquid.is_water:
        mass_g = plan.addition.mass_g
        return None if mass_g is None else accepted_solution(addition, mass_g, plan.liquid.volume_cm3)
    liquid = find_reagent(plan.liquid.name)
    strengths = plan.liquid.concentration_mol_dm3, plan.addition.concentration_mol_dm3
    if strengths[0] is None or strengths[1] is None:
        return None
    pour = (liquid, strengths[0], plan.liquid.volume_cm3), (addition, strengths[1], plan.portion_cm3)
    (acid, acid_mol_dm3, acid_cm3), (alkali, alkali_mol_dm3, alkali_cm3) = pour if liquid.is_acid else pour[::-1]
    try:
        pair = neutralisation_steps(acid, alkali)
    except WrongPairError:
        return None
    room_c = plan.surroundings.room_c
    at_c = AT_C if room_c is None else room_c
    return accepted_neutralisation(pair, acid_mol_dm3, alkali_mol_dm3, at_c, (acid_cm3, alkali_cm3))
