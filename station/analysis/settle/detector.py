"""When has the probe settled onto the cup's drift line, and on what temperature.

Pure functions over the samples since the last portion: no clock, no state. A cup that cools never has zero
slope, a quantised signal has zero variance, and a steel-sheathed probe answers with two time constants; so
the trace is fitted with a cup that jumps and drifts behind two lags, and the probability that the last
conversions are within one step of that cup decides. The recorded temperature is the mean of actual
conversions, never the fitted line.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from enum import StrEnum
from math import erf, exp, hypot, sqrt
from typing import Literal

from station.analysis.settle.fit import CHANGE, SLOW, START, Fitted
from station.analysis.settle.lags import (
    NOISE,
    STEEL_TUBE,
    STEP_C,
    UNKNOWN_CUP,
    CupHabits,
    ProbeLags,
    Sample,
    fit_portion,
    fresh,
)
from station.words import Message, say

# Which conversions are read, how sure that reading is, and whether waiting would make it better.
#
# The fit says where the cup is; this file turns that into a reading and a decision.


ENOUGH = 0.9
"""How sure the detector must be in graph pace."""

FEWEST, MOST = 1, 6
"""A recorded temperature is the mean of so many neighbours among the last conversions."""

AS_NEAR = 0.15
"""Steps from the drift line that count as on it: of such means the one of most conversions is read."""

ROUNDING = 0.2
"""Standard uncertainty in steps that is always added, for what rounding leaves and the model is not."""

IMMERSION, U_IMMERSION = 0.002, 0.003
"""Part of the difference between cup and room by which a short probe in a shallow cup reads towards the room,
and its standard uncertainty: an estimate. (Five diameters deep is worth about 1 % by the rule of thumb in
Nicholas and White, Traceable Temperatures, 2001, from memory; stirring makes it less.)"""

VAGUE = 0.8
"""Steps within which the cup must be known before "no nearer than this" is believed."""

DOUBTFUL, DOUBTFUL_S = 0.6, 45.0
"""A reading that is more likely wrong than right is not given before so many seconds: the fit may be wrong."""

AHEAD_S = (2.0, 4.0, 8.0, 16.0, 32.0)
"""Seconds ahead at which the detector looks whether waiting helps."""

GAIN_S = 0.002
"""How much surer a reading must become for each second of waiting to be worth it."""

LUCK = 0.3
"""Steps by which the choice among the conversions to come can be nearer than the probe itself."""

TIRED = 0.1
"""Steps of uncertainty that remain however long the wait: the drift is not known for ever."""


@dataclass(frozen=True, slots=True)
class Known:
    """The cup at the moment in °C, the standard uncertainty of its fit, and that of what the fit leaves out."""

    cup_c: float
    u_fit_c: float
    u_rest_c: float

    @property
    def u_c(self) -> float:
        """Standard uncertainty of `cup_c`."""
        return hypot(self.u_fit_c, self.u_rest_c)


def known(fitted: Fitted, now_s: float, cup: CupHabits, step_c: float) -> Known:
    """Where the cup is at `now_s`. A trace that the model does not describe says that much less of it."""
    at_c = fitted.cup_c(now_s)
    warmer_c = 0.0 if cup.rest_c is None else at_c - cup.rest_c
    misfit = max(1.0, fitted.rms_c / (NOISE * step_c))
    u_rest_c = hypot(ROUNDING * step_c, U_IMMERSION * warmer_c)
    return Known(at_c + IMMERSION * warmer_c, misfit * fitted.u_cup_c(now_s), u_rest_c)


def reading_c(tail: Sequence[float], cup_c: float, step_c: float) -> float:
    """Mean of neighbours among the last conversions: of as many as lie on the drift line, else of the nearest."""
    last = tail[-MOST:]
    nearest: list[float] = []
    for n in range(len(last), FEWEST - 1, -1):
        means = [sum(last[i : i + n]) / n for i in range(len(last) - n, -1, -1)]
        nearest.append(min(means, key=lambda mean: abs(mean - cup_c)))
        if abs(nearest[-1] - cup_c) <= AS_NEAR * step_c:
            return nearest[-1]
    return min(nearest, key=lambda mean: abs(mean - cup_c))


def waiting_helps(fitted: Fitted, waited_s: float, now_s: float, seen: Known, sure: float, step_c: float) -> bool:
    """Whether some later reading is worth its wait, `waited_s` after the press.

    What the fit does not know yet fades with the probe's slow lag. But on a cup that cools the probe crosses
    the cup's temperature at the top of its own curve and trails above it from then on, by the drift times its
    mean lag: there the best moment is soon over.
    """
    if seen.u_c > VAGUE * step_c or (sure < DOUBTFUL and waited_s < DOUBTFUL_S):
        return True
    shift_c = seen.cup_c - fitted.cup_c(now_s)
    for ahead in AHEAD_S:
        at_s = now_s + ahead
        off_c = abs(fitted.probe_c(at_s) - fitted.cup_c(at_s) - shift_c)
        u_c = hypot(seen.u_fit_c * exp(-ahead / exp(fitted.at[SLOW])), seen.u_rest_c + TIRED * step_c)
        later = within(max(off_c - LUCK * step_c, 0.0), u_c, step_c)
        if min(later, ENOUGH) > sure + GAIN_S * ahead:
            return True
    return False


def left_s(fitted: Fitted, now_s: float, step_c: float) -> float:
    """Seconds until the probe will be well within one step of the cup, or else as near as it comes."""
    off_c: dict[int, float] = {}
    for ahead in range(1, 121, 2):
        off_c[ahead] = abs(fitted.probe_c(now_s + ahead) - fitted.cup_c(now_s + ahead))
        if off_c[ahead] <= 0.6 * step_c:
            return float(ahead)
    return float(min(off_c, key=off_c.__getitem__))


def within(error_c: float, u_c: float, limit_c: float) -> float:
    """Probability that a normal error lies within ± `limit_c`."""
    scale = u_c * sqrt(2.0)
    return 0.5 * (erf((limit_c - error_c) / scale) + erf((limit_c + error_c) / scale))


# What the settle detector says.


Pace = Literal["graph", "quick"]


class Outcome(StrEnum):
    """Whether there is something to be read."""

    WAIT = "wait"
    SETTLED = "settled"
    TIME_UP = "time up"
    """Nothing settled within the longest wait: what is there is read as it is."""


@dataclass(frozen=True, slots=True)
class Band:
    """Between which temperatures the trace has to stay, and for how long, to be settled: centre and half in °C, s.

    It is what a screen draws behind the trace; nothing is decided by it.
    """

    centre_c: float
    half_c: float
    span_s: float


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the detector thinks at `now_s`.

    `temperature_c` is the mean of the last fresh conversions (None without any), `u_c` its standard
    uncertainty as the temperature of the cup, `slope_c_s` the slope of the trace, `left_s` the seconds
    still to wait (None when not known), `sure` the probability (0 to 1) that `temperature_c` is within one
    step of the cup, `reason` says why in a few words: for people, nothing is decided by it. `band` is None
    while nobody can say where the temperature will settle, and where nothing has to.
    """

    outcome: Outcome
    temperature_c: float | None
    u_c: float | None
    slope_c_s: float | None
    left_s: float | None
    sure: float
    reason: Message
    band: Band | None = None

    @property
    def ready(self) -> bool:
        """Whether the temperature is to be read now: it has settled, or time is up."""
        return self.outcome is not Outcome.WAIT


# The steady start of a repeat, or of a dip into the alkali: a temperature that holds still.


NEWEST = 8
"""A steady temperature is the mean of so many conversions, the newest."""


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
    """Judge the steady start of a repeat (or a dip into the alkali): held `hold_s` within the drift limit.

    A probe that hangs steadily in the air is as steady as one in the acid: nothing here can tell them apart.
    """
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s]
    if not trace:
        return Verdict(Outcome.WAIT, None, None, None, None, 0.0, say("settle-no-reading"))
    held = [(t, c) for t, c in trace if t > now_s - hold_s]
    late = now_s - since_s >= limit_s
    enough = len(held) >= 0.5 * hold_s and now_s - since_s >= hold_s and now_s - held[-1][0] <= 3.0
    overdue = Outcome.TIME_UP if late else Outcome.WAIT
    newest = [c for _, c in (held or trace)[-NEWEST:]]
    reading_c = sum(newest) / len(newest)
    # What drifts at the limit for as long as it has to hold moves from one edge of the band to the other.
    band = Band(reading_c, max(step_c, drift_limit_c_min / 60.0 * hold_s / 2.0), hold_s)
    if not enough:
        return Verdict(overdue, trace[-1][1], step_c, None, None, 0.0, say("settle-few-fresh"), band)
    slope, u_slope = _line(held)
    steady = abs(slope) + 2.0 * u_slope <= drift_limit_c_min / 60.0
    left = 0.0 if steady else lags.slow_s
    u_c = sqrt(step_c**2 / 12.0 + (slope * lags.mean_s) ** 2)
    reason = say("settle-steady" if steady else "settle-still-drifting")
    outcome, sure = (Outcome.SETTLED, 0.95) if steady else (overdue, 0.3)
    return Verdict(outcome, reading_c, u_c, slope, left, sure, reason, band)


def _line(rows: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Slope of the least squares line in °C/s and its standard uncertainty at one step of noise."""
    mid = sum(t for t, _ in rows) / len(rows)
    spread = sum((t - mid) ** 2 for t, _ in rows)
    return sum((t - mid) * c for t, c in rows) / spread, STEP_C / sqrt(12.0 * spread)


LIMIT_S = 120.0
"""Longest wait after the press; then the best fresh value is given, marked as not sure."""

READ = 3
"""Fresh conversions after the press without which nothing is judged."""

TAIL_S = 2.5 * READ
"""Seconds in which those conversions must lie."""

DRAWN = 2.0
"""Steps within which the cup must be known before a band about it helps anybody who looks."""

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
    balance. After LIMIT_S the best fresh value is given, its outcome `TIME_UP` and `sure` low.
    """
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s - 10.0]
    recent = [(t, c) for t, c in trace if t >= since_s]
    waited = now_s - since_s
    if not recent:
        return Verdict(Outcome.WAIT, None, None, None, None, 0.0, say("settle-no-reading"))
    late = waited >= LIMIT_S
    tail = [c for t, c in recent if t > now_s - TAIL_S]
    if len(tail) < READ or now_s - recent[-1][0] > 3.0:
        if late:
            return Verdict(Outcome.TIME_UP, recent[-1][1], step_c, None, 0.0, 0.0, say("settle-time-up-few"))
        return Verdict(Outcome.WAIT, recent[-1][1], None, None, None, 0.0, say("settle-few-fresh"))

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
    outcome = Outcome.SETTLED if ready else Outcome.TIME_UP if late else Outcome.WAIT
    band = Band(seen.cup_c, step_c, TAIL_S) if pace == "graph" and seen.u_c <= DRAWN * step_c else None
    return Verdict(outcome, read_c, hypot(error_c, seen.u_c), slope, left, sure, reason, band)


def _reason(ready: bool, late: bool, sure: float, pace: Pace) -> Message:
    if not ready:
        return say("settle-time-up" if late else "settle-still-settling")
    if sure >= ENOUGH:
        return say("settle-settled")
    return say("settle-long-enough" if pace == "quick" else "settle-as-near")


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
