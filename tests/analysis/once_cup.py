"""A simple cup mixed once, stepped finely: Newton's law of cooling, one time of release, a probe with two lags."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.inputs import Estimate
from station.analysis.once.inputs import OnceSetup

Array = NDArray[np.float64]

STEP_C = 0.0625
MIXED_S = 180.0
CONTENTS_J_K, ADDED_J_K, CUP_J_K = 205.0, 100.0, 5.0
DT_S = 0.05


def stepped(temperature_c: Array) -> Array:
    """As a DS18B20 with 12 bits shows it."""
    return np.asarray(np.round(temperature_c / STEP_C) * STEP_C)


def cup_trace(
    change_c: float,
    *,
    start_c: float = 20.0,
    room_c: float = 20.4,
    loss_s: float = 6e-4,
    release_s: float = 3.0,
    end_s: float = 600.0,
    noise_c: float = 0.02,
    seed: int = 1,
    period_s: float = 1.02,
) -> tuple[Array, Array]:
    """Times and readings. The change is that of a cup without loss; the added part is as warm as the cup."""
    rng = np.random.default_rng(seed)
    count = int(end_s / DT_S) + 1
    shown = np.empty(count)
    cup, fast, slow = start_c, start_c, start_c
    for k in range(count):
        shown[k] = 0.55 * fast + 0.45 * slow
        since = k * DT_S - MIXED_S
        if since >= 0.0:
            cup += change_c * np.exp(-since / release_s) * (1.0 - np.exp(-DT_S / release_s))
        # Before the mixing what cools is about half as much.
        cup -= DT_S * ((loss_s if since >= 0.0 else 2.0 * loss_s) * (cup - room_c))
        fast += DT_S * (cup - fast) / 4.6
        slow += DT_S * (cup - slow) / 19.0
    time_s: Array = np.arange(0.5, end_s, period_s)
    felt = np.interp(time_s, np.arange(count) * DT_S, shown)
    return time_s, stepped(felt + noise_c * rng.standard_normal(len(time_s)))


def known_setup(start_c: float = 20.0, cup_j_k: Estimate = Estimate(CUP_J_K, 0.2)) -> OnceSetup:  # noqa: B008
    """What is known of that cup: everything, and a probe that is wholly in the liquid."""
    return OnceSetup(
        Estimate(CONTENTS_J_K, 0.0),
        Estimate(ADDED_J_K, 0.5),
        cup_j_k,
        added_c=Estimate(start_c + 0.07, 0.03),
        room_c=Estimate(20.4, 0.5),
        stem_share=Estimate(0.0, 0.0),
    )
