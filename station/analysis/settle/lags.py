"""What is known of a probe's lag: two time constants and how they share the answer.

A probe in a steel tube does not answer as one exponential: the tip follows fast, the tube and the filling
follow slowly. This file knows the shape of that answer and nothing of cups, portions or judging.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import exp, log, sqrt

from station.analysis.settle.fit import (
    CHANGE,
    DRIFT,
    FAST,
    MIX,
    SHARE,
    STEPS,
    Fitted,
    Prior,
    fit,
    inverse,
    solve,
    times,
)

FLOOR = 0.0015
"""Standard uncertainty in °C/s of any drift: the room, the wall and the surface have their own ways."""

U_PULL = 0.008
"""Standard uncertainty in °C/s of a new cup's pull: warm water evaporates from an open cup (an estimate)."""

Covariance = tuple[tuple[float, float, float], tuple[float, float, float], tuple[float, float, float]]
"""Three by three, symmetric."""


@dataclass(frozen=True, slots=True)
class ProbeLags:
    """Two lags in parallel: after a step of 1 the probe shows 1 - share*exp(-t/fast) -
    (1-share)*exp(-t/slow).

    `fast_s` and `slow_s` in seconds, `fast_share` from 0 to 1; `covariance` is that of ln `fast_s`, ln
    `slow_s` and `fast_share`. The default is the common probe in a 6 mm steel tube, between the probes of a
    student course at Universität Hamburg (2023; t63 of 7 to 19 s in water) and the faster bare ones.
    """

    fast_s: float = 4.5
    slow_s: float = 17.0
    fast_share: float = 0.6
    covariance: Covariance = ((0.16, 0.0, 0.0), (0.0, 0.14, 0.0), (0.0, 0.0, 0.04))

    def __post_init__(self) -> None:
        if not (0.0 < self.fast_s <= self.slow_s and 0.0 <= self.fast_share <= 1.0):
            raise ValueError("lags need 0 < fast_s <= slow_s and 0 <= fast_share <= 1: give seconds")

    @property
    def mean_s(self) -> float:
        """How far the probe trails behind a steady drift, in seconds."""
        return self.fast_share * self.fast_s + (1.0 - self.fast_share) * self.slow_s

    def left(self, since_step_s: float) -> float:
        """The part (0 to 1) of a step that the probe does not show yet."""
        if since_step_s <= 0.0:
            return 1.0
        return self.fast_share * exp(-since_step_s / self.fast_s) + (1.0 - self.fast_share) * exp(
            -since_step_s / self.slow_s
        )


STEEL_TUBE = ProbeLags()
"""The prior for a probe that nothing is known of yet."""


@dataclass(frozen=True, slots=True)
class CupHabits:
    """What earlier portions told about the cup and the stirring.

    `mix_s` is the time in which a portion mixes, `u_mix` its relative standard uncertainty. The cup drifts
    by `pull_c_s` (evaporation, a room that is not where the cup began) and by -`loss_min` per minute of what
    it is warmer than `rest_c`; `u_pull_c_s`, `u_loss_min` and `both` (correlation) say how well that is
    known. With `rest_c` None the drift is only known to be small. The loss is that of a polystyrene cup with
    or without lid (common practice, no source).
    """

    mix_s: float = 2.5
    u_mix: float = 0.7
    loss_min: float = 0.05
    u_loss_min: float = 0.04
    rest_c: float | None = None
    pull_c_s: float = 0.0
    u_pull_c_s: float = U_PULL
    both: float = 0.0

    def drift(self, temperature_c: float) -> tuple[float, float]:
        """Drift to expect at `temperature_c` and its standard uncertainty, both in °C/s."""
        if self.rest_c is None:
            return -0.002, 0.004
        by_loss = (self.rest_c - temperature_c) / 60.0
        u_loss = by_loss * self.u_loss_min
        variance = self.u_pull_c_s**2 + u_loss * (u_loss + 2.0 * self.both * self.u_pull_c_s) + FLOOR**2
        return self.pull_c_s + by_loss * self.loss_min, variance**0.5


UNKNOWN_CUP = CupHabits()
"""The prior for a cup and a group that nothing is known of yet."""


# From the samples of a portion to the fit of it: what is known beforehand, where the change began.


Sample = tuple[float, float | None]
"""Time in s and temperature in °C; None is a bad sample kept with its time."""

STEP_C = 0.0625
"""One step of a 12-bit DS18B20 (datasheet, temperature/data relationship)."""

NOISE = 0.7
"""Standard deviation of one conversion, in steps: rounding to a step and a flicker of about as much."""


def fresh(samples: Sequence[Sample], now_s: float) -> list[tuple[float, float]]:
    """The good samples up to `now_s`, in order of time, each time once."""
    out: list[tuple[float, float]] = []
    for time_s, temperature_c in samples:
        if temperature_c is None or time_s > now_s or (out and time_s <= out[-1][0]):
            continue
        out.append((time_s, temperature_c))
    return out


def fit_portion(
    trace: Sequence[tuple[float, float]],
    since_s: float,
    before_c: float | None,
    expected_change_c: float | None,
    lags: ProbeLags,
    step_c: float,
    cup: CupHabits,
    steps: int = STEPS,
) -> Fitted:
    """The fit with what is known beforehand of press, probe and drift."""
    base, u_base = (trace[0][1], 0.5) if before_c is None else (trace[0][1], 4.0 * step_c)
    change, u_change = (0.0, 3.0) if expected_change_c is None else (expected_change_c, 1.0 + abs(expected_change_c))
    drift, u_drift = cup.drift(trace[-1][1])
    turn_c_s = cup.loss_min / 60.0 * (base - trace[-1][1])
    mean = (base, change, drift, since_s - 1.0, log(lags.fast_s), log(lags.slow_s), lags.fast_share, log(cup.mix_s))
    sd = (u_base, u_change, u_drift, 4.0, 1.0, 1.0, 1.0, cup.u_mix)
    precision = [[1.0 / sd[i] ** 2 if i == j else 0.0 for j in range(8)] for i in range(8)]
    for i, row in enumerate(inverse([list(row) for row in lags.covariance])):
        precision[FAST + i][FAST : SHARE + 1] = row
    prior = Prior(mean, precision)
    start_s = _onset(trace, since_s, base, step_c)
    shown = 1.0 - lags.left(trace[-1][0] - start_s)
    guess = list(prior.mean)
    guess[1], guess[3] = (trace[-1][1] - base) / max(shown, 0.3), start_s
    return fit(trace, prior, NOISE * step_c, guess, steps, turn_c_s)


def _onset(trace: Sequence[tuple[float, float]], since_s: float, before_c: float, step_c: float) -> float:
    """When the change began: just before the first sample that left the old line; else about the press."""
    for index, (time_s, temperature_c) in enumerate(trace):
        if abs(temperature_c - before_c) > 2.5 * step_c:
            return trace[index - 1][0] if index else time_s - 1.0
    return since_s - 1.0


# What a settled portion teaches about the probe's lags, the stirring and the cup's loss.


TRUST = 0.5
"""Part of a portion's information that is believed: the model is not the cup."""

FORGET = 1.0
"""Part of what was known that is kept: a probe may sit elsewhere in the cup, a group may change hands."""


def learn(
    samples: Sequence[Sample],
    *,
    since_s: float,
    until_s: float,
    before_c: float | None,
    lags: ProbeLags,
    cup: CupHabits,
    step_c: float = STEP_C,
) -> tuple[ProbeLags, CupHabits]:
    """Lags and habits after a portion that was judged settled at `until_s`, from the same samples as
    `judge`.

    A change under six steps, a short trace, or one that the model does not describe teaches nothing: then
    both come back as they were.
    """
    trace = [(t, c) for t, c in fresh(samples, until_s) if t >= since_s - 10.0]
    if len(trace) < 15:
        return lags, cup
    fitted = fit_portion(trace, since_s, before_c, None, lags, step_c, cup, steps=8)
    if abs(fitted.at[CHANGE]) < 6.0 * step_c or fitted.rms_c > step_c:
        return lags, cup
    mix, u_mix = _update(fitted, MIX, log(cup.mix_s), cup.u_mix, MIX_FLOOR)
    return _lags(fitted, lags), _cup(fitted, cup, trace[-1][1], exp(mix), u_mix)


def learn_start(
    samples: Sequence[Sample], *, since_s: float, until_s: float, lags: ProbeLags, step_c: float = STEP_C
) -> ProbeLags:
    """Lags after the dip into the acid at the start of a repeat, from `since_s` to where the start was
    judged steady.

    The probe comes out of air or a hand with a history of its own, so the share is not believed, only the
    two times.
    """
    trace = [(t, c) for t, c in fresh(samples, until_s) if t >= since_s]
    if len(trace) < 20:
        return lags
    (fast, to_slow, to_share), (_, slow, also), (_, _, share) = lags.covariance
    wide = ((fast, to_slow, to_share), (to_slow, slow, also), (to_share, also, max(share, 0.1)))
    free = replace(lags, covariance=wide)
    fitted = fit_portion(trace, since_s, None, None, free, step_c, STILL, steps=8)
    if abs(fitted.at[CHANGE]) < 16.0 * step_c or fitted.rms_c > step_c:
        return lags
    taught = _lags(fitted, free)
    return replace(taught, fast_share=lags.fast_share, covariance=_unshared(taught.covariance, share))


STILL = CupHabits(mix_s=0.5, u_mix=0.3, rest_c=None)
"""A dip into a cup at rest: no pour to mix."""


def _unshared(covariance: Covariance, share: float) -> Covariance:
    (fast, to_slow, _), (_, slow, _), _ = covariance
    return (fast, to_slow, 0.0), (to_slow, slow, 0.0), (0.0, 0.0, share)


PULL_WANDER = 0.0005
"""By how much the pull may change in °C/s from portion to portion: the room, a lid, the surface."""

MIX_FLOOR = 0.4
"""Relative: no two portions are stirred alike."""

WANDER = (0.03, 0.03, 0.015)
"""By how much lags and share may differ from portion to portion, as the probe is held elsewhere."""


def _lags(fitted: Fitted, lags: ProbeLags) -> ProbeLags:
    """Combine as information, so that what the trace says of the three together is kept."""
    places = range(FAST, SHARE + 1)
    known = inverse([list(row) for row in lags.covariance])
    mean = [log(lags.fast_s), log(lags.slow_s), lags.fast_share]
    now = inverse([[fitted.covariance[i][j] for j in places] for i in places])
    right_known, right_now = times(known, mean), times(now, [fitted.at[i] for i in places])
    total = [[(FORGET - TRUST) * known[i][j] + TRUST * now[i][j] for j in range(3)] for i in range(3)]
    right = [(FORGET - TRUST) * was + TRUST * new for was, new in zip(right_known, right_now, strict=True)]
    fast, slow, share = solve(total, right)
    cov = inverse(total)
    for i in range(3):
        cov[i][i] += WANDER[i] ** 2
    slow = max(slow, fast)
    a, b, c = ((row[0], row[1], row[2]) for row in cov)
    return ProbeLags(exp(fast), exp(slow), min(max(share, 0.0), 1.0), (a, b, c))


def _cup(fitted: Fitted, cup: CupHabits, temperature_c: float, mix_s: float, u_mix: float) -> CupHabits:
    """Pull and loss learn together from the drift of a portion (one step of a Kalman filter)."""
    if cup.rest_c is None:
        return replace(cup, mix_s=mix_s, u_mix=u_mix)
    known, u_known = cup.drift(temperature_c)
    drift, u_drift = _alone(fitted, DRIFT, known, u_known)
    row = 1.0, (cup.rest_c - temperature_c) / 60.0
    shared = cup.both * cup.u_pull_c_s * cup.u_loss_min
    pull, loss = cup.u_pull_c_s**2 + PULL_WANDER**2, cup.u_loss_min**2
    with_pull, with_loss = pull + shared * row[1], shared + loss * row[1]
    total = with_pull + with_loss * row[1] + u_drift**2 + FLOOR**2
    off = drift - known
    pull, loss, shared = (
        pull - with_pull**2 / total,
        loss - with_loss**2 / total,
        shared - with_pull * with_loss / total,
    )
    return CupHabits(
        mix_s,
        u_mix,
        cup.loss_min + with_loss / total * off,
        sqrt(loss),
        cup.rest_c,
        cup.pull_c_s + with_pull / total * off,
        sqrt(pull),
        shared / sqrt(pull * loss),
    )


def _alone(fitted: Fitted, place: int, known: float, u_known: float) -> tuple[float, float]:
    """What the portion alone says of one parameter, and its standard uncertainty (large when it says nothing)."""
    was, now = 1.0 / u_known**2, 1.0 / fitted.covariance[place][place]
    gain = max(now - was, 1e-6 * was)
    return (fitted.at[place] * now - known * was) / gain if gain > 0.02 * was else known, (TRUST * gain) ** -0.5


def _update(fitted: Fitted, place: int, known: float, u_known: float, floor: float) -> tuple[float, float]:
    """Combine what was known with what the portion adds, taking only part of both."""
    was, now = 1.0 / u_known**2, 1.0 / fitted.covariance[place][place]
    gain = now - was
    if gain <= 0.02 * was:
        return known, u_known
    alone = (fitted.at[place] * now - known * was) / gain
    total = FORGET * was + TRUST * gain
    return (FORGET * was * known + TRUST * gain * alone) / total, max(total**-0.5, floor)
