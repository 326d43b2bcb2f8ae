"""The results of a practical that mixes once: temperature change, heat and enthalpy, by lines and by heat balance."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import hypot
from statistics import fmean
from typing import Any, Final

import numpy as np

from station.analysis.heat.inputs import Array, Estimate, Trace
from station.analysis.once.difference import difference
from station.analysis.once.enthalpy import enthalpy_once, extrapolate, predicted_bias_c
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import (
    BY_HAND_LAGS,
    FOUND_S,
    LIQUIDS_S,
    SOLIDS_S,
    Extrapolation,
    OnceHeat,
    OnceRefused,
    OnceSetup,
    Stretch,
)
from station.analysis.once.moment import Moment, moment_of_mixing
from station.analysis.repeats import summarise
from station.chemistry.heat import Measured
from station.practical.dataset import Known, RepeatData, mean_probe, probe_of, with_probe
from station.practical.kinds.once.contents import Contents, contents_of, taken
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.once.working import once_worked
from station.practical.kinds.own_working import PROBE_C
from station.words import Message, say

Json = dict[str, Any]

U_ADDED_C, U_ROOM_C = 0.3, 1.0
U_SAME_C = 2.0  # of something that stood in the same room, unmeasured: common practice, no source
LATE_S: Final = 10.0
"""A press so far from the moment that the trace shows is told."""


def results(plan: OncePlan, repeats: Sequence[RepeatData], known: Known) -> Json:
    """Return the results as JSON values: `repeats` one by one, then `mean` of the repeats."""
    try:
        every = [contents_of(taken(plan, repeat), repeat.places) for repeat in repeats]
        whole = _together(plan, repeats)
    except ValueError as error:
        return _impossible(repeats, say("once-cannot-be-mixed", reason=str(error)))
    found = [
        one_mixing(taken(plan, repeat), contents, repeat, known)
        for repeat, contents in zip(repeats, every, strict=True)
    ]
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
    division_c = max((each.division_c for each in repeats if each.division_c is not None), default=PROBE_C)
    for each, repeat, contents in zip(found, repeats, every, strict=True):
        own = {"straight_lines": each["straight_lines"], "heat_balance": each["heat_balance"]}
        each.update(once_worked(taken(plan, repeat), contents, own, [], repeat.division_c or PROBE_C))
    own = {"straight_lines": mean["straight_lines"], "heat_balance": mean["heat_balance"]}
    mean.update(once_worked(_mean_plan(plan, repeats), whole, own, found, division_c))
    return {"repeats": found, "mean": mean}


def _mean_plan(plan: OncePlan, repeats: Sequence[RepeatData]) -> OncePlan:
    """The plan with the mean of what the repeats truly took."""
    told = [taken(plan, each).addition for each in repeats]
    if not told:
        return plan
    u_mass_g = max((each.u_mass_g or 0.0 for each in told), default=0.0) or None
    if plan.addition.mass_g is not None:
        mean = {"mass_g": fmean(each.mass_g or 0.0 for each in told), "u_mass_g": u_mass_g}
    else:
        mean = {"volume_cm3": fmean(each.volume_cm3 or 0.0 for each in told)}
    return plan.model_copy(update={"addition": plan.addition.model_copy(update=mean)})


def _together(plan: OncePlan, repeats: Sequence[RepeatData]) -> Contents:
    places = [each.places for each in repeats if each.places is not None]
    return contents_of(_mean_plan(plan, repeats), max(places) if places and len(places) == len(repeats) else None)


def _impossible(repeats: Sequence[RepeatData], why: Message) -> Json:
    refused: Json = {
        "straight_lines": None,
        "heat_balance": None,
        "refused": {"straight_lines": why, "heat_balance": why},
        "notes": [],
    }
    return {"repeats": [{"repeat": each.repeat, **refused} for each in repeats], "mean": refused}


@dataclass(frozen=True)
class _Course:
    """The readings of a repeat: seconds and °C (shape n), their step, the press, and the moment that they show."""

    time_s: Array
    temperature_c: Array
    step_c: float
    press_s: float
    moment: Moment
    by_hand: bool


def _course(repeat: RepeatData) -> _Course:
    data = np.asarray(repeat.samples, dtype=np.float64)
    rising = np.concatenate([[True], np.diff(np.maximum.accumulate(data[:, 0])) > 0.0])
    times, temperatures = data[rising, 0].copy(), data[rising, 1].copy()
    step_c, press_s = repeat.division_c or PROBE_C, repeat.pours[0][0]
    moment = moment_of_mixing(times, temperatures, press_s, step_c)
    return _Course(times, temperatures, step_c, press_s, moment, repeat.division_c is not None)


def one_mixing(plan: OncePlan, contents: Contents, repeat: RepeatData, known: Known, *, at_least: bool = False) -> Json:
    """Return both methods on one repeat: `repeat`, the methods, why one `refused`, and `notes`.

    `at_least`: where the probe's trace gives no lines, the difference of two of its readings stands for them, as it
    does where readings are by hand.
    """
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
    course = _course(repeat)
    used = probe_of(repeat)
    if used is not None:
        known, contents = replace(known, u_probe_c=used.u_c), _with_slope(contents, used.u_slope)
    setup = _setup(plan, contents, known, course)
    result["notes"] += _told(course)
    result["straight_lines"] = _by_lines(course, plan, contents, setup, result, at_least=at_least)
    try:
        fit = fit_once(Trace(course.time_s, course.temperature_c, course.step_c), course.moment.time_s, setup)
        result["heat_balance"] = _heat_json(fit, contents)
        lines = result["straight_lines"]
        if lines is not None and lines["before"]["begin_s"] < lines["before"]["end_s"]:
            lines["predicted_bias_c"] = predicted_bias_c(
                fit, course.time_s, press_s=course.moment.time_s, step_c=course.step_c, moment=course.moment
            )
        # The fit's moment is told against the one it was given: where the trace shows that, nobody pressed then.
        seen = {"once-heat-late"} if course.moment.seen else set()
        result["notes"] += [note for note in fit.notes if note not in result["notes"] and note.id not in seen]
    except OnceRefused as refusal:
        result["refused"]["heat_balance"] = refusal.reason
    return result


def _by_lines(
    course: _Course, plan: OncePlan, contents: Contents, setup: OnceSetup, result: Json, *, at_least: bool
) -> Json | None:
    """Lines; of readings by hand, and where they are to be had `at_least`, the difference of two."""
    at = {"step_c": course.step_c, "moment": course.moment}
    try:
        found = extrapolate(course.time_s, course.temperature_c, course.press_s, **at)  # type: ignore[arg-type]
    except OnceRefused as refusal:
        result["refused"]["straight_lines"] = refusal.reason
        if not (course.by_hand or at_least):
            return None
        try:
            found = difference(course.time_s, course.temperature_c, course.moment, course.step_c)
        except OnceRefused as nothing:
            result["refused"]["straight_lines"] = nothing.reason
            return None
        del result["refused"]["straight_lines"]
        result["notes"].append(say("once-no-line", reason=refusal.reason))
    return _lines_json(found, plan, contents, setup)


def _told(course: _Course) -> list[Message]:
    """Where the press was far from the moment that the readings show."""
    late_s = course.press_s - course.moment.time_s
    if not course.moment.seen or abs(late_s) <= max(LATE_S, 2.0 * course.moment.u_s):
        return []
    return [say("once-heat-late", seconds=f"{abs(late_s):.0f}", side="before" if late_s > 0 else "after")]


def _with_slope(contents: Contents, u_slope: float) -> Contents:
    """A slope of the probe that is wrong by so much acts as if the heat capacities were."""
    all_j_k = contents.all_j_k
    return replace(contents, all_j_k=Measured(all_j_k.value, hypot(all_j_k.u, u_slope * all_j_k.value)))


def _setup(plan: OncePlan, contents: Contents, known: Known, course: _Course) -> OnceSetup:
    added_c, u_added_c, typed = known.alkali_c, known.alkali_u_c, known.alkali_typed
    if added_c is None:
        added_c, u_added_c, typed = plan.addition.temperature_c, U_ADDED_C, True
    u_added_c = hypot(u_added_c or U_ADDED_C, known.u_probe_c if typed else 0.0)
    room_c = plan.surroundings.room_c
    setup = OnceSetup(
        contents_j_k=Estimate(*contents.all_j_k),
        added_j_k=Estimate(*contents.added_j_k),
        cup_j_k=Estimate(plan.cup.heat_capacity_j_k, plan.cup.u_heat_capacity_j_k),
        added_c=None if added_c is None else Estimate(added_c, u_added_c),
        room_c=None if room_c is None else Estimate(room_c, U_ROOM_C),
        completion_s=LIQUIDS_S if plan.addition.mass_g is None else SOLIDS_S,
    )
    if course.moment.seen:
        setup = replace(setup, press_s=Estimate(FOUND_S.value, hypot(FOUND_S.u, course.moment.u_s)))
    return replace(setup, **BY_HAND_LAGS) if course.by_hand else setup


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
