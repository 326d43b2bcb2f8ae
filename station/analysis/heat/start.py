"""Where the fit of a trace begins: the end-point from the last samples before each pour.

The heat taken up, (heat capacity)·(temperature change) summed over the portions, rises in proportion to the
volume up to the end-point and then bends. For a given end-point that is linear regression, so a fine grid
of end-points is searched at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import product

import numpy as np

from station.analysis.heat.inputs import Array, Estimate, HeatSetup, Pour, Trace

# A first look at a trace: portions as steps of temperature, seen through a probe that lags.
#
# For given lags and moments the trace is a sum of the portions' step responses, of their derivatives (a pour a little
# earlier or later), of the probe's and the cup's settling in, and of the loss so far: linear regression, with wide
# ridges in place of priors. So many probes and habits are tried in the time of a few looks at the cup model, and the
# true steps of temperature are had even where no portion was waited for.


FEW_SAMPLES = 300
"""The trace is thinned to about this many samples."""

FAST_AT, SLOW_AT, SHARE_AT = (-0.8, 0.8), (-1.0, 0.0, 1.0, 2.2), (-2.2, -1.0, 0.0, 1.0, 2.2)
"""Lags and share of the fast one that are tried, in u from what is known (the lags on their logarithm)."""

PRESSES_S, U_PRESSES_S = (1.0, -4.0, 5.0, 9.0), 3.0
MIXING_S, NOISE_C = 3.0, 0.05
SLOW, FREE = 3, 1e3
SPREADS, STEEPEST, EARLIER_S = (0.3, 0.1, 1.5, 1.5), 5.0, 2.5
"""Ridges: loss and drift (°C) per minute, probe and cup at the start (°C), a step (over the mean), a pour's moment."""


@dataclass(frozen=True)
class Steps:
    """Lags (s), share of the fast one and lateness of the presses that suit best.

    ``level_c`` (shape pours + 1) are the temperatures that the cup would have taken without loss. ``misfit`` is
    −2 ln posterior, less a constant.
    """

    lag_fast_s: float
    lag_slow_s: float
    lag_share: float
    press_s: float
    level_c: Array
    misfit: float


def _risen(since_s: Array, lag_s: float) -> Array:
    """Responses to steps that mix in, through a lag, and their derivatives by time: shape n × 2·pours."""
    mixing = MIXING_S if abs(lag_s - MIXING_S) > 0.1 else MIXING_S + 0.2
    since = np.maximum(since_s, 0.0)
    probe, liquid = np.exp(-since / lag_s), np.exp(-since / mixing)
    step = 1.0 - (lag_s * probe - mixing * liquid) / (lag_s - mixing)
    return np.concatenate([step, (probe - liquid) / (lag_s - mixing)], axis=1)


def _lags(known: Estimate, at: Sequence[float]) -> list[float]:
    return [float(known.value * np.exp(z * known.u / known.value)) for z in at]


def _slow_columns(time_s: Array, warmer_c: Array, pours: Sequence[Pour], setup: HeatSetup) -> Array:
    """Start, loss so far and drift so far, (n, SLOW); a fuller cup loses less."""
    poured = np.cumsum([0.0, *(p.volume_cm3 for p in pours)])
    acid = setup.acid_volume_cm3.value
    weight = acid / (acid + poured[np.searchsorted([p.press_s for p in pours], time_s)])
    minutes = np.diff(time_s, prepend=time_s[0]) / 60.0 * weight
    return np.column_stack([np.ones_like(time_s), np.cumsum(minutes * warmer_c), np.cumsum(minutes)])


class _Regression:
    """All that stays when probes and habits are tried on a trace."""

    def __init__(self, trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> None:
        thin = max(1, len(trace.time_s) // FEW_SAMPLES)
        self.first_c, self.pours = float(trace.temperature_c[0]), len(pours)
        self.time_s, self.warmer_c = trace.time_s[::thin], trace.temperature_c[::thin] - self.first_c
        self.slow = _slow_columns(self.time_s, self.warmer_c, pours, setup)
        usual = max(float(np.ptp(self.warmer_c)) / self.pours, trace.step_c)
        spread = [FREE, *SPREADS, *[STEEPEST * usual] * self.pours, *[EARLIER_S * usual] * self.pours]
        self.ridge = np.diag((NOISE_C / np.array(spread)) ** 2)

    def columns(self, pour_s: Array, lag_s: float) -> Array:
        """The columns that a lag makes, (n, 1 + 2·pours)."""
        settling = np.exp(-(self.time_s[:, None] - self.time_s[0]) / lag_s)
        return np.concatenate([settling, _risen(self.time_s[:, None] - pour_s, lag_s)], axis=1)

    def tried(self, fast: Array, slow: Array, shares: Array) -> tuple[Array, Array]:
        """Misfit and coefficients (shares × …) of probes whose lags make the columns ``fast`` and ``slow``."""
        columns = np.concatenate([self.slow, fast[:, :1], slow[:, :1], fast[:, 1:], slow[:, 1:]], axis=1)
        begin, both = SLOW + 2, 2 * self.pours
        mix = np.zeros((len(shares), begin + both, begin + 2 * both))
        mix[:, np.arange(begin), np.arange(begin)] = 1.0
        at = np.arange(both) + begin
        mix[:, at, at], mix[:, at, at + both] = shares[:, None], 1.0 - shares[:, None]
        target = mix @ (columns.T @ self.warmer_c)
        normal = mix @ (columns.T @ columns) @ mix.transpose(0, 2, 1) + self.ridge
        found = np.linalg.solve(normal, target[..., None])[..., 0]
        return -(target * found).sum(axis=1) / NOISE_C**2, found

    def levels_c(self, x: Array) -> Array:
        """Levels (shape pours + 1) by the coefficients of one probe."""
        rises = np.cumsum(x[SLOW + 2 : SLOW + 2 + self.pours])
        return np.asarray(self.first_c + x[0] + np.concatenate([[0.0], rises]))


def steps(trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> Steps:
    """The probe and habits that suit the trace best, of those tried, and the steps they give."""
    regression, press = _Regression(trace, pours, setup), np.array([p.press_s for p in pours])
    fast, slow = _lags(setup.lag_fast_s, FAST_AT), _lags(setup.lag_slow_s, SLOW_AT)
    shares = setup.lag_share.value + np.array(SHARE_AT) * setup.lag_share.u
    found = []
    for late_s in PRESSES_S:
        columns = {lag: regression.columns(press - late_s, lag) for lag in {*fast, *slow}}
        unusual = ((late_s - PRESSES_S[0]) / U_PRESSES_S) ** 2
        for f, s in product(range(len(fast)), range(len(slow))):
            misfit, x = regression.tried(columns[fast[f]], columns[slow[s]], shares)
            misfit += unusual + FAST_AT[f] ** 2 + SLOW_AT[s] ** 2 + np.square(SHARE_AT)
            k = int(np.argmin(misfit))
            level = regression.levels_c(x[k])
            found.append(Steps(fast[f], slow[s], float(shares[k]), late_s, level, float(misfit[k])))
    return min(found, key=lambda one: one.misfit)


GRID_CM3 = 0.1


@dataclass(frozen=True)
class Bend:
    """A first guess: end-point, heat per cm³ of alkali, and how much of the scatter it leaves (cm²-free)."""

    end_point_cm3: float
    heat_j_cm3: float
    misfit: float


def plateaus(trace: Trace, pours: Sequence[Pour]) -> Array:
    """Temperature late in each interval, °C, shape pours + 1: the last few samples before the next press."""
    ends = [p.press_s - 1.5 for p in pours] + [float(trace.time_s[-1]) + 1.0]
    begins = [-np.inf] + [p.press_s for p in pours]
    found = np.empty(len(ends))
    for k, (begin, end) in enumerate(zip(begins, ends, strict=True)):
        inside = np.flatnonzero((trace.time_s > begin) & (trace.time_s <= end))
        if len(inside):
            found[k] = np.median(trace.temperature_c[inside[-3:]])
        else:
            found[k] = np.interp(end, trace.time_s, trace.temperature_c)
    return found


def heat_taken_up(temperature_c: Array, volume_cm3: Array, setup: HeatSetup) -> Array:
    """Heat taken up since the start, J, for readings at cumulative ``volume_cm3`` (both shape n)."""
    capacity = (
        setup.acid_volume_cm3.value * setup.acid_j_cm3_k + setup.cup_j_k.value + setup.alkali_j_cm3_k * volume_cm3
    )
    middle = (capacity[1:] + capacity[:-1]) / 2.0
    alkali_c = setup.alkali_c.value if setup.alkali_c else float(temperature_c[0])
    warming = (temperature_c[1:] + temperature_c[:-1]) / 2.0 - alkali_c
    steps = middle * np.diff(temperature_c) + setup.alkali_j_cm3_k * np.diff(volume_cm3) * warming
    return np.concatenate([[0.0], np.cumsum(steps)])


def bends(heat_j: Array, volume_cm3: Array) -> list[Bend]:
    """The best bend within each portion, best first."""
    grid = np.arange(volume_cm3[0] + GRID_CM3, volume_cm3[-1], GRID_CM3)
    base = np.stack([np.ones_like(volume_cm3), volume_cm3], axis=1)
    q, _ = np.linalg.qr(base)
    rest = heat_j - q @ (q.T @ heat_j)
    ramps = np.minimum(volume_cm3[:, None], grid[None, :])
    ramps -= q @ (q.T @ ramps)
    norm = np.maximum((ramps**2).sum(axis=0), 1e-12)
    heat = (ramps * rest[:, None]).sum(axis=0) / norm
    misfit = (rest**2).sum() - heat**2 * norm
    portion = np.searchsorted(volume_cm3, grid, side="left")
    found = []
    for k in np.unique(portion):
        inside = np.flatnonzero(portion == k)
        best = inside[np.argmin(misfit[inside])]
        found.append(Bend(float(grid[best]), float(heat[best]), float(misfit[best])))
    return sorted(found, key=lambda bend: bend.misfit)
