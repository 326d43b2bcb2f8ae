"""What a settled portion teaches about the probe's lags, the stirring and the cup's loss."""

from __future__ import annotations

from collections.abc import Sequence
from math import exp, log

from station.analysis.settle_fit import DRIFT, FAST, MIX, SHARE, SLOW, Fitted
from station.analysis.settle_lags import CupHabits, ProbeLags
from station.analysis.settle_trace import STEP_C, Sample, fit_portion, fresh

TRUST = 0.5
"""Part of a portion's information that is believed: the model is not the cup."""

FORGET = 0.9
"""Part of what was known that is kept: a probe may sit elsewhere in the cup, a group may change hands."""


def learn(
    samples: Sequence[Sample],
    *,
    since_s: float,
    until_s: float,
    before_c: float,
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
    if abs(fitted.at[1]) < 6.0 * step_c or fitted.rms_c > step_c:
        return lags, cup
    fast, u_fast = _update(fitted, FAST, log(lags.fast_s), lags.u_fast, 0.05)
    slow, u_slow = _update(fitted, SLOW, log(lags.slow_s), lags.u_slow, 0.05)
    share, u_share = _update(fitted, SHARE, lags.fast_share, lags.u_share, 0.03)
    mix, u_mix = _update(fitted, MIX, log(cup.mix_s), cup.u_mix, 0.4)
    slow = max(slow, fast)
    known = ProbeLags(exp(fast), exp(slow), min(max(share, 0.0), 1.0), u_fast, u_slow, u_share)
    return known, _cup(fitted, cup, trace[-1][1], exp(mix), u_mix)


def _cup(fitted: Fitted, cup: CupHabits, temperature_c: float, mix_s: float, u_mix: float) -> CupHabits:
    loss, u_loss = cup.loss_min, cup.u_loss_min
    if cup.rest_c is not None and abs(temperature_c - cup.rest_c) > 1.0:
        to_loss = -60.0 / (temperature_c - cup.rest_c)
        drift, u_drift = cup.drift(temperature_c)
        drift, u_drift = _update(fitted, DRIFT, drift, u_drift, 0.0005)
        loss, u_loss = drift * to_loss, max(u_drift * abs(to_loss), 0.005)
        loss = min(max(loss, 0.0), 0.3)
    return CupHabits(mix_s, u_mix, loss, min(u_loss, cup.u_loss_min), cup.rest_c)


def _update(fitted: Fitted, place: int, known: float, u_known: float, floor: float) -> tuple[float, float]:
    """Combine what was known with what the portion adds, taking only part of both."""
    was, now = 1.0 / u_known**2, 1.0 / fitted.covariance[place][place]
    gain = now - was
    if gain <= 0.02 * was:
        return known, u_known
    alone = (fitted.at[place] * now - known * was) / gain
    total = FORGET * was + TRUST * gain
    return (FORGET * was * known + TRUST * gain * alone) / total, max(total**-0.5, floor)
