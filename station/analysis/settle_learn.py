"""What a settled portion teaches about the probe's lags, the stirring and the cup's loss."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from math import exp, log, sqrt

from station.analysis.settle_algebra import inverse, solve, times
from station.analysis.settle_fit import CHANGE, DRIFT, FAST, MIX, SHARE, Fitted
from station.analysis.settle_lags import FLOOR, Covariance, CupHabits, ProbeLags
from station.analysis.settle_trace import STEP_C, Sample, fit_portion, fresh

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
