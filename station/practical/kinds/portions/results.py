"""The numbers at the end of a practical of portions: both ways to the end-point, per repeat and for the mean.

Only here do the plan, the readings and the analysis meet. A method that refuses gives None and its reason in
words; nothing is raised for data that a class can produce.
"""

from collections.abc import Sequence
from dataclasses import replace
from itertools import combinations
from typing import Any

from station.analysis.heat.inputs import HeatFit, HeatRefused, HeatSetup
from station.analysis.heat.readings import ReadingsFit
from station.chemistry.pairs import Neutralisation
from station.practical.dataset import (
    Known,
    ReadingRow,
    RepeatData,
    mean_probe,
    mean_rows,
    probe_of,
    questions_json,
    with_probe,
)
from station.practical.kinds.portions.judgement import judgement
from station.practical.kinds.portions.methods import (
    asked_fit,
    heat_json,
    mean_heat,
    reacting_pair,
    readings_fit,
    readings_json,
    setup_for_readings,
    straight_lines,
)
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.kinds.portions.plausible import end_point_notes, enthalpy_notes, reading_notes, reagent_notes
from station.practical.kinds.portions.working import division_of, portions_worked
from station.practical.state import LEAVES_OUT
from station.words import Message, say

Json = dict[str, Any]


def lines_alone(repeats: Sequence[RepeatData]) -> Json:
    """Return the straight lines, which is all that readings without a plan give."""
    return {
        "repeats": [{"repeat": each.repeat, **_lines_alone(each.readings)} for each in repeats],
        "mean": _lines_alone(mean_rows(repeats)),
    }


def results(plan: PortionsPlan, repeats: Sequence[RepeatData], known: Known) -> Json:
    """Return the results as JSON values.

    Where the students read at moments of their own, `judgement` compares these with the station's once no repeat is
    under way.
    """
    found = [repeat_result(plan, repeat, known) for repeat in repeats]
    repeats = [_without(repeat, one["questions"]) for repeat, one in zip(repeats, found, strict=True)]
    all_of_them: Json = {"repeats": found, "mean": _mean(plan, repeats, found)}
    if plan.own_judgement and all(each.ended for each in repeats):
        heat = all_of_them["mean"]["heat_balance"]
        all_of_them["judgement"] = judgement(plan, repeats, heat["end_point_cm3"] if heat else None)
    return all_of_them


def repeat_result(plan: PortionsPlan, repeat: RepeatData, known: Known) -> Json:
    """Return both methods for one repeat, with what is worth saying about them."""
    used = probe_of(repeat)
    if used is not None:
        known = replace(known, u_probe_c=used.u_c, u_slope=used.u_slope)
    pair, setup = _what_is_known(plan, known)
    heat, refused = None, {}
    notes: list[str] = [*reagent_notes(plan), *reading_notes(plan, repeat.readings, setup, known)]
    try:
        fit: HeatFit | ReadingsFit
        if repeat.samples:
            repeat, fit = asked_fit(plan, repeat, known)
            heat = heat_json(fit)
        else:
            fit = readings_fit(plan, repeat, known)
            heat = readings_json(fit, repeat)
        notes += [*fit.notes, *end_point_notes(plan, pair, fit.end_point_cm3, fit.u_end_point_cm3)]
        if fit.acid_mol_dm3 and fit.enthalpy_kj_mol is not None and fit.u_enthalpy_kj_mol is not None:
            notes += enthalpy_notes(plan, pair, fit.acid_mol_dm3, fit.enthalpy_kj_mol, fit.u_enthalpy_kj_mol)
    except HeatRefused as refusal:
        refused = {"heat_balance": refusal.reason}
    lines = straight_lines(repeat.readings, setup, heat["end_point_cm3"] if heat else None)
    found = {
        "repeat": repeat.repeat,
        "questions": questions_json(repeat),
        "straight_lines": lines["straight_lines"],
        "heat_balance": heat,
        "refused": {**lines["refused"], **refused},
        "notes": [*notes, *lines["notes"]],
        **portions_worked(plan, repeat.readings, heat, division_of([repeat])),
    }
    return with_probe(found, used)


def _without(repeat: RepeatData, questions: Sequence[Json]) -> RepeatData:
    """The repeat without the readings that are asked about."""
    doubted = {each["portion"] for each in questions if each["code"] in LEAVES_OUT}
    return replace(repeat, readings=tuple(row for row in repeat.readings if row.portion not in doubted))


def _mean(plan: PortionsPlan, repeats: Sequence[RepeatData], found: Sequence[Json]) -> Json:
    _, setup = _what_is_known(plan, Known())
    sound = [each.repeat for each in repeats if each.ended] or [each.repeat for each in repeats]
    fits = [each["heat_balance"] for each in found if each["heat_balance"] and each["repeat"] in sound]
    used, differing = mean_probe(repeats)
    heat = mean_heat(fits, plan, 0.0 if used is None else used.u_slope)
    rows = mean_rows(repeats)
    lines = straight_lines(rows, setup, heat["end_point_cm3"] if heat else None)
    refused = dict(lines["refused"])
    if heat is None and found:
        refused["heat_balance"] = found[-1]["refused"]["heat_balance"]
    mean = {
        "straight_lines": lines["straight_lines"],
        "heat_balance": heat,
        "refused": refused,
        "notes": [*_disagreements(found), *differing],
        **portions_worked(plan, rows, heat, division_of(repeats)),
    }
    return with_probe(mean, used)


def _what_is_known(plan: PortionsPlan, known: Known) -> tuple[Neutralisation | None, HeatSetup | None]:
    try:
        pair = reacting_pair(plan)
        return pair, setup_for_readings(plan, pair, known)
    except HeatRefused:
        return None, None


def _lines_alone(rows: Sequence[ReadingRow]) -> Json:
    lines = straight_lines(rows, None, None)
    why = say("result-needs-plan")
    return {**lines, "heat_balance": None, "refused": {**lines["refused"], "heat_balance": why}}


def _disagreements(found: Sequence[Json]) -> list[Message]:
    """Flag repeats whose heat balances differ by more than three times their combined u."""
    notes = []
    for one, other in combinations([each for each in found if each["heat_balance"]], 2):
        a, b = one["heat_balance"], other["heat_balance"]
        apart = abs(a["end_point_cm3"] - b["end_point_cm3"])
        u = (a["u_end_point_cm3"] ** 2 + b["u_end_point_cm3"] ** 2) ** 0.5
        if apart > 3.0 * u:
            notes.append(
                say(
                    "result-repeats-differ",
                    first=one["repeat"],
                    second=other["repeat"],
                    apart_cm3=f"{apart:.2f}",
                    u_cm3=f"{u:.2f}",
                )
            )
    return notes
