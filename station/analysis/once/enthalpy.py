"""A cup mixed once at a marked moment: the temperature change, the heat and the enthalpy per mole.

Two ways to the change, side by side: straight lines before and after, extended to the moment of mixing (the
graph-paper method), and the heat balance (`once_fit`), a fit of the whole trace.
"""

from __future__ import annotations

import math
from typing import Literal

import numpy as np

from station.analysis.heat.inputs import Array
from station.analysis.lines.fit import student_t
from station.analysis.once.fit import (
    CLOSE_AFTER_S,
    CLOSE_BEFORE_S,
    LEAST_BEFORE_S,
    LEAST_READINGS,
    LEAST_SPAN_S,
    NEWEST_S,
    RULE,
    Z_95,
    Fitted,
    effective_count,
    facts_in,
    find_line,
    fit_once,
    last_minutes,
    strays,
)
from station.analysis.once.inputs import STEM_SHARE, Extrapolation, OnceHeat, OnceRefused, OnceSetup, Stretch
from station.analysis.once.model import trace
from station.analysis.once.moment import Moment, moment_of_mixing
from station.chemistry.heat import Measured, Worked, enthalpy_per_mole
from station.words import say

__all__ = ["OnceHeat", "OnceRefused", "OnceSetup", "enthalpy_once", "extrapolate", "fit_once", "predicted_bias_c"]

LABEL = say("once-label-scatter-only")


def extrapolate(
    time_s: Array,
    temperature_c: Array,
    press_s: float,
    *,
    step_c: float = 0.0625,
    u_mixed_at_s: float | None = None,
    moment: Moment | None = None,
) -> Extrapolation:
    """Temperature change at the moment of mixing by lines extended to it from the minutes before and after.

    ``time_s`` (rising) and ``temperature_c`` have shape (n,), bad samples left out: a trace or readings by hand.
    ``step_c`` is the resolution of the readings. The moment is found near ``press_s`` unless ``moment`` is given.
    Raises OnceRefused with a sentence for a student: also where a line does not lie on the readings it goes through.
    Method: as the exam boards describe it, readings during mixing left out; uncertainty by the GUM
    (JCGM 100:2008, H.3), with at least the scatter that the probe's steps bring (step/√12).
    """
    times, temperatures = _checked(time_s, temperature_c)
    _require_moment(times, press_s)
    found = moment or moment_of_mixing(times, temperatures, press_s, step_c)
    if u_mixed_at_s is not None:
        found = found._replace(u_s=u_mixed_at_s)
    before = np.flatnonzero(times <= found.time_s - CLOSE_BEFORE_S)
    after = np.flatnonzero(times >= found.time_s + CLOSE_AFTER_S)
    before = last_minutes(times, before)
    _require_readings(times, before, "too_few_before")
    _require_readings(times, after, "too_few_after")
    if times[before[-1]] < found.time_s - NEWEST_S:
        old_s = found.time_s - float(times[before[-1]])
        raise OnceRefused("too_few_before", say("once-before-old", seconds=f"{old_s:.0f}", most_s=f"{NEWEST_S:.0f}"))
    late = temperatures[after][times[after] >= times[after[-1]] - LEAST_SPAN_S]
    rough = float(np.median(late) - np.median(temperatures[before]))
    lines = [
        find_line(times, temperatures, side, step_c, rough, least_s)
        for side, least_s in ((before, LEAST_BEFORE_S), (after, LEAST_SPAN_S))
    ]
    if lines[0] is None or strays(times, temperatures, lines[0], step_c, rough):
        raise OnceRefused("not_a_line", say("once-before-not-straight"))
    if lines[1] is None or strays(times, temperatures, lines[1], step_c, rough):
        raise OnceRefused("not_a_line", say("once-after-not-straight"))
    return _between(lines[0], lines[1], times, temperatures, found, step_c)


def _between(
    first: Fitted,
    last: Fitted,
    times: Array,
    temperatures: Array,
    mixed: Moment,
    step_c: float,
) -> Extrapolation:
    mixed_at_s = mixed.time_s
    degrees = first.line.degrees + last.line.degrees
    scatter = math.sqrt((first.line.sse + last.line.sse) / degrees)
    steps = step_c / math.sqrt(12.0)
    s = max(scatter, steps)
    before, after = (_stretch(side, times, temperatures, mixed_at_s, s, step_c) for side in (first, last))
    change = after.at_mixing_c - before.at_mixing_c
    moment = (after.slope_c_s - before.slope_c_s) * mixed.u_s
    u = math.hypot(before.u_at_mixing_c, after.u_at_mixing_c, moment)
    free = before.effective + after.effective - 4.0
    factor = student_t(max(free, 1.0)) if scatter > steps else student_t(math.inf)
    if abs(change) <= max(step_c, factor * u):
        raise OnceRefused("no_change", say("once-no-change", change_c=f"{change:+.2f}"))
    # What the stem loses is in the readings of either method; here it is not corrected, so all of it is uncertain.
    stem = math.hypot(STEM_SHARE.value, STEM_SHARE.u) * abs(change)
    half = math.hypot(factor * u, Z_95 * stem)
    u, interval = math.hypot(u, stem), (change - half, change + half)
    return Extrapolation(change, u, interval, before, after, mixed_at_s, s, RULE, LABEL)


def _stretch(fitted: Fitted, times: Array, temperatures: Array, mixed_at_s: float, s: float, step_c: float) -> Stretch:
    line = fitted.line
    effective = min(effective_count(fitted.residuals_c, step_c), float(facts_in(temperatures[fitted.used])))
    known = line.with_s(s * math.sqrt(line.count / effective), line.degrees)
    begin, end = (float(times[fitted.used[k]]) for k in (0, -1))
    at, u_at = line.at(mixed_at_s), known.u_at(mixed_at_s)
    return Stretch(begin, end, line.slope, known.u_slope, at, u_at, fitted.used, fitted.set_aside, effective)


def predicted_bias_c(
    heat: OnceHeat, time_s: Array, *, press_s: float, step_c: float = 0.0625, moment: Moment | None = None
) -> float | None:
    """How far the extended lines lie from the change of the heat balance, in °C, by the rule and not by scatter.

    The lines are drawn through the fitted course itself at the times of the samples (shape n). None where they refuse.
    ``press_s`` is the marked moment, as it was given to the fit; ``moment`` is where the lines are extended to.
    """
    course, _ = trace(heat.parameters, np.asarray(time_s, np.float64) - press_s)
    try:
        return extrapolate(time_s, course, press_s, step_c=step_c, moment=moment).change_c - heat.change_c
    except OnceRefused:
        return None


REACTION = say("of-reaction")


def enthalpy_once(heat_j: float, u_heat_j: float, moles: float, u_moles: float, of_what: str = REACTION) -> Worked:
    """Enthalpy change per mole of ``of_what`` (water formed, or the solid), kJ/mol, with u and the steps to show.

    ``heat_j`` is the heat given out, positive when the cup warmed, so that the result is then negative. Raises
    ValueError when the amount is not above 0 or a figure is not finite.
    """
    return enthalpy_per_mole(Measured(heat_j, u_heat_j), Measured(moles, u_moles), of_what)


def _checked(time_s: Array, temperature_c: Array) -> tuple[Array, Array]:
    try:
        times, temperatures = np.asarray(time_s, np.float64), np.asarray(temperature_c, np.float64)
    except (TypeError, ValueError):
        raise OnceRefused("not_numbers", say("once-not-a-number")) from None
    if times.ndim != 1 or times.shape != temperatures.shape:
        raise OnceRefused("not_numbers", say("once-one-temperature-each"))
    if not (np.isfinite(times).all() and np.isfinite(temperatures).all()):
        raise OnceRefused("not_numbers", say("once-missing-number"))
    if (np.diff(times) <= 0.0).any():
        raise OnceRefused("not_numbers", say("once-times-must-rise"))
    return times, temperatures


def _require_moment(times: Array, mixed_at_s: float) -> None:
    if not (len(times) and times[0] <= mixed_at_s <= times[-1]):
        raise OnceRefused("outside_trace", say("once-mixing-outside"))


def _require_readings(times: Array, side: np.ndarray, kind: Literal["too_few_before", "too_few_after"]) -> None:
    span_s = float(np.ptp(times[side])) if len(side) else 0.0
    least_s = LEAST_BEFORE_S if kind == "too_few_before" else LEAST_SPAN_S
    if len(side) >= LEAST_READINGS and span_s >= least_s:
        return
    reason = say(
        "once-few-before" if kind == "too_few_before" else "once-few-after",
        least=LEAST_READINGS,
        least_s=f"{least_s:.0f}",
        count=len(side),
        span_s=f"{span_s:.0f}",
    )
    raise OnceRefused(kind, reason)
