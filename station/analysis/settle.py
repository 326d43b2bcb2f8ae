"""When has the probe settled onto the cup's drift line, and on what temperature.

Pure functions over the samples since the last portion: no clock, no state. A cup that cools never has zero
slope, a quantised signal has zero variance, and a steel-sheathed probe answers with two time constants; so
the trace is fitted with a cup that jumps and drifts behind two lags, and the probability that the last
conversions are within one step of that cup decides. The recorded temperature is the mean of actual
conversions, never the fitted line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import erf, hypot, sqrt
from typing import Literal

from station.analysis.settle_fit import CHANGE, START, Fitted
from station.analysis.settle_lags import STEEL_TUBE, UNKNOWN_CUP, CupHabits, ProbeLags
from station.analysis.settle_trace import NOISE, STEP_C, Sample, fit_portion, fresh

Pace = Literal["graph", "quick"]

LIMIT_S = 120.0
"""Longest wait after the press; then the best fresh value is given, marked as not sure."""

ENOUGH = 0.9
"""How sure the detector must be in graph pace."""

READ = 3
"""Fresh conversions after the press without which nothing is judged."""

FEWEST, MOST = 2, 6
"""A recorded temperature is the mean of so many of the last conversions."""

HOLD_S = 20.0
"""Quick pace: seconds after the press, with conversions for most of them, that the heat balance needs."""

ROUNDING = 0.15
"""Standard uncertainty in steps that is always added, for what rounding leaves."""

CLEAR, VAGUE = 0.4, 1.0
"""Steps within which the cup must be known before "no nearer than this" is believed, and before "from here it
only leaves" is."""

LOSE = 0.12
"""How much less sure the reading would be 16 s later where waiting is of no use."""

BLANK_S = 14.0
"""Seconds after the press by which a change that is not expected must show."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the detector thinks at `now_s`.

    `temperature_c` is the mean of the last fresh conversions (None without any), `u_c` its standard
    uncertainty as the temperature of the cup, `slope_c_s` the slope of the trace, `left_s` the seconds
    still to wait (None when not known), `sure` the probability (0 to 1) that `temperature_c` is within one
    step of the cup, `reason` says why in a few words.
    """

    settled: bool
    temperature_c: float | None
    u_c: float | None
    slope_c_s: float | None
    left_s: float | None
    sure: float
    reason: str


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
    fitted = fit_portion(trace, since_s, before_c, expected_change_c, lags, step_c, cup)
    cup_c = fitted.cup_c(now_s)
    reading_c = _reading(tail, cup_c)
    error_c = reading_c - cup_c
    # A trace that the model does not describe says that much less of the cup.
    misfit = max(1.0, fitted.rms_c / (NOISE * step_c))
    u_cup_c = hypot(misfit * fitted.u_cup_c(now_s), ROUNDING * step_c)
    sure = _within(error_c, u_cup_c, step_c)
    least_s = _least_wait(fitted, since_s, expected_change_c, step_c)
    if pace == "quick":
        seen = sum(1 for t, _ in recent if t >= fitted.at[START])
        ready = waited >= max(HOLD_S, least_s) and seen >= 0.6 * HOLD_S
    else:
        ready = waited >= least_s and (sure >= ENOUGH or _no_better(fitted, now_s, sure, u_cup_c, step_c))
    slope = (fitted.probe_c(now_s) - fitted.probe_c(now_s - 2.0)) / 2.0
    left_s = 0.0 if ready or late else min(_left_s(fitted, now_s, step_c), LIMIT_S - waited)
    reason = _reason(ready, late, sure, pace)
    u_c = hypot(error_c, u_cup_c)
    return Verdict(ready or late, reading_c, u_c, slope, left_s, sure, reason)


def _reason(ready: bool, late: bool, sure: float, pace: Pace) -> str:
    if not ready:
        return "time is up" if late else "still settling"
    if sure >= ENOUGH:
        return "settled"
    return "long enough for the heat balance" if pace == "quick" else "as near as the probe comes"


def _reading(tail: Sequence[float], cup_c: float) -> float:
    """Mean of neighbours among the last conversions: of those that bring it nearest to the drift line."""
    last = tail[-MOST:]
    means = [sum(last[i : i + n]) / n for n in range(FEWEST, len(last) + 1) for i in range(len(last) - n, -1, -1)]
    return min(means, key=lambda mean: abs(mean - cup_c))


def _least_wait(fitted: Fitted, since_s: float, expected_change_c: float | None, step_c: float) -> float:
    """Seconds after the press before any reading counts: a pour that does not show yet may still be to come."""
    change = abs(fitted.at[CHANGE])
    if change > 2.0 * step_c:
        return max(8.0, fitted.at[START] + 8.0 - since_s)
    if expected_change_c is None:
        return BLANK_S
    return 30.0 if abs(expected_change_c) > 4.0 * step_c else 12.0


def _no_better(fitted: Fitted, now_s: float, sure: float, u_cup_c: float, step_c: float) -> bool:
    """Whether the probe is as near to a drifting cup as it will come.

    On a cup that cools it crosses the cup's temperature at the top of its own curve and trails above it from
    then on, by the drift times its mean lag: there the best moment is soon over.
    """
    at = [now_s + ahead for ahead in (2.0, 4.0, 8.0, 16.0, 32.0)]
    later = [_within(fitted.probe_c(t) - fitted.cup_c(t), u_cup_c, step_c) for t in at]
    if max(later) >= sure + 0.01:
        return False
    return u_cup_c <= CLEAR * step_c or (u_cup_c <= VAGUE * step_c and later[3] < sure - LOSE)


def _left_s(fitted: Fitted, now_s: float, step_c: float) -> float:
    """Seconds until the probe will be well within one step of the cup, or else as near as it comes."""
    off_c = {ahead: abs(fitted.probe_c(now_s + ahead) - fitted.cup_c(now_s + ahead)) for ahead in range(1, 121, 2)}
    near = (ahead for ahead, off in off_c.items() if off <= 0.6 * step_c)
    return float(next(near, min(off_c, key=off_c.__getitem__)))


def judge_start(
    samples: Sequence[Sample],
    *,
    since_s: float,
    now_s: float,
    lags: ProbeLags = STEEL_TUBE,
    step_c: float = STEP_C,
    hold_s: float = 30.0,
    drift_limit_c_min: float = 0.3,
    limit_s: float = 300.0,
) -> Verdict:
    """Judge the steady start of a repeat (or a dip into the alkali): held `hold_s` within the drift limit."""
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s]
    if not trace:
        return Verdict(False, None, None, None, None, 0.0, "no reading from the probe")
    held = [(t, c) for t, c in trace if t > now_s - hold_s]
    late = now_s - since_s >= limit_s
    enough = len(held) >= 0.5 * hold_s and now_s - since_s >= hold_s and now_s - held[-1][0] <= 3.0
    if not enough:
        return Verdict(late, trace[-1][1], step_c, None, None, 0.0, "too few fresh readings")
    slope, u_slope = _line(held)
    reading_c = sum(c for _, c in held[-8:]) / len(held[-8:])
    steady = abs(slope) + 2.0 * u_slope <= drift_limit_c_min / 60.0
    left = 0.0 if steady else lags.slow_s
    u_c = sqrt(step_c**2 / 12.0 + (slope * lags.mean_s) ** 2)
    reason = "steady" if steady else "still drifting"
    return Verdict(steady or late, reading_c, u_c, slope, left, 0.95 if steady else 0.3, reason)


def _line(rows: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Slope of the least squares line in °C/s and its standard uncertainty at one step of noise."""
    mid = sum(t for t, _ in rows) / len(rows)
    spread = sum((t - mid) ** 2 for t, _ in rows)
    return sum((t - mid) * c for t, c in rows) / spread, STEP_C / sqrt(12.0 * spread)


def _within(error_c: float, u_c: float, limit_c: float) -> float:
    """Probability that a normal error lies within ± `limit_c`."""
    scale = u_c * sqrt(2.0)
    return 0.5 * (erf((limit_c - error_c) / scale) + erf((limit_c + error_c) / scale))
