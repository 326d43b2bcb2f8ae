"""When has the probe settled onto the cup's drift line, and on what temperature.

Pure functions over the samples since the last portion: no clock, no state. A cup that cools never has zero
slope, a quantised signal has zero variance, and a steel-sheathed probe answers with two time constants; so
the trace is fitted with a cup that jumps and drifts behind two lags, and the probability that the last
conversions are within one step of that cup decides. The recorded temperature is the mean of actual
conversions, never the fitted line.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from math import hypot

from station.analysis.settle_fit import CHANGE, START, Fitted
from station.analysis.settle_lags import STEEL_TUBE, UNKNOWN_CUP, CupHabits, ProbeLags
from station.analysis.settle_rule import ENOUGH, MOST, known, left_s, reading_c, waiting_helps, within
from station.analysis.settle_start import judge_start
from station.analysis.settle_trace import STEP_C, Sample, fit_portion, fresh
from station.analysis.settle_verdict import Pace, Verdict

__all__ = ["LIMIT_S", "MOST", "READ", "Pace", "Verdict", "judge", "judge_start"]

LIMIT_S = 120.0
"""Longest wait after the press; then the best fresh value is given, marked as not sure."""

READ = 3
"""Fresh conversions after the press without which nothing is judged."""

HOLD_S = 20.0
"""Quick pace: seconds after the press, with conversions for most of them, that the heat balance needs."""

BLANK_S = 14.0
"""Seconds after the press by which a change that is not expected must show."""

SAME = 4
"""So many equal conversions in a row may be one that is given again and again."""

FORETOLD = 1.5
"""Steps by which such a row may differ from what the conversions before it foretell."""


def judge(
    samples: Sequence[Sample],
    *,
    since_s: float,
    now_s: float,
    before_c: float | None,
    expected_change_c: float | None = None,
    lags: ProbeLags = STEEL_TUBE,
    step_c: float = STEP_C,
    pace: Pace = "graph",
    cup: CupHabits = UNKNOWN_CUP,
) -> Verdict:
    """Judge the trace after a portion.

    `samples` are (time_s, temperature_c or None) from some seconds before the press at `since_s` up to
    `now_s`; `before_c` is the last settled temperature, `expected_change_c` what the plan predicts for this
    portion (None when not known), `lags` and `cup` what `learn` made of earlier portions. Pace "graph"
    waits for a reading within one `step_c` of the cup; "quick" for a trace that is long enough for the heat
    balance. After LIMIT_S the best fresh value is given with `settled` true and `sure` low.
    """
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s - 10.0]
    recent = [(t, c) for t, c in trace if t >= since_s]
    waited = now_s - since_s
    if not recent:
        return Verdict(False, None, None, None, None, 0.0, "no reading from the probe")
    late = waited >= LIMIT_S
    tail = [c for t, c in recent if t > now_s - 2.5 * READ]
    if len(tail) < READ or now_s - recent[-1][0] > 3.0:
        if late:
            return Verdict(True, recent[-1][1], step_c, None, 0.0, 0.0, "time is up, few fresh readings")
        return Verdict(False, recent[-1][1], None, None, None, 0.0, "too few fresh readings")

    def fit(rows: Sequence[tuple[float, float]]) -> Fitted:
        return fit_portion(rows, since_s, before_c, expected_change_c, lags, step_c, cup)

    fitted = fit(trace)
    seen = known(fitted, now_s, cup, step_c)
    read_c = reading_c(tail, seen.cup_c, step_c)
    error_c = read_c - seen.cup_c
    sure = within(error_c, seen.u_c, step_c)
    least_s = _least_wait(fitted, since_s, expected_change_c, step_c)
    if pace == "quick":
        fresh_s = sum(1 for t, _ in recent if t >= fitted.at[START])
        ready = waited >= max(HOLD_S, least_s) and fresh_s >= 0.6 * HOLD_S
    else:
        ready = waited >= least_s and (sure >= ENOUGH or not waiting_helps(fitted, waited, now_s, seen, sure, step_c))
        ready = ready and not _stuck(trace, since_s, fit, step_c)
    slope = (fitted.probe_c(now_s) - fitted.probe_c(now_s - 2.0)) / 2.0
    left = 0.0 if ready or late else min(left_s(fitted, now_s, step_c), LIMIT_S - waited)
    reason = _reason(ready, late, sure, pace)
    return Verdict(ready or late, read_c, hypot(error_c, seen.u_c), slope, left, sure, reason)


def _reason(ready: bool, late: bool, sure: float, pace: Pace) -> str:
    if not ready:
        return "time is up" if late else "still settling"
    if sure >= ENOUGH:
        return "settled"
    return "long enough for the heat balance" if pace == "quick" else "as near as the probe comes"


def _least_wait(fitted: Fitted, since_s: float, expected_change_c: float | None, step_c: float) -> float:
    """Seconds after the press before any reading counts: a pour that does not show yet may still be to come."""
    change = abs(fitted.at[CHANGE])
    if change > 2.0 * step_c:
        return max(8.0, fitted.at[START] + 8.0 - since_s)
    if expected_change_c is None:
        return BLANK_S
    return 30.0 if abs(expected_change_c) > 4.0 * step_c else 12.0


def _stuck(
    trace: Sequence[tuple[float, float]],
    since_s: float,
    fit: Callable[[Sequence[tuple[float, float]]], Fitted],
    step_c: float,
) -> bool:
    """Whether the last conversions are one and the same although those before them foretell a change.

    A probe on a rise does not stop dead: it is the bus that gives one value again and again.
    """
    now_s, last_c = trace[-1]
    first = len(trace) - 1
    while first and trace[first - 1][1] == last_c:
        first -= 1
    before = trace[: first + 1]
    if len(trace) - first < SAME or before[-1][0] < since_s:
        return False
    return abs(fit(before).probe_c(now_s) - last_c) > FORETOLD * step_c
