"""Which conversions are read, how sure that reading is, and whether waiting would make it better.

The fit says where the cup is; this file turns that into a reading and a decision.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import erf, exp, hypot, sqrt

from station.analysis.settle_fit import SLOW, Fitted
from station.analysis.settle_lags import CupHabits
from station.analysis.settle_trace import NOISE

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
    off_c = {ahead: abs(fitted.probe_c(now_s + ahead) - fitted.cup_c(now_s + ahead)) for ahead in range(1, 121, 2)}
    near = (ahead for ahead, off in off_c.items() if off <= 0.6 * step_c)
    return float(next(near, min(off_c, key=off_c.__getitem__)))


def within(error_c: float, u_c: float, limit_c: float) -> float:
    """Probability that a normal error lies within ± `limit_c`."""
    scale = u_c * sqrt(2.0)
    return 0.5 * (erf((limit_c - error_c) / scale) + erf((limit_c + error_c) / scale))
