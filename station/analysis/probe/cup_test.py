"""Heat capacity and heat loss of a cup, from warm water in it to which water of the room's temperature is poured.

All temperatures come from the one probe, so its offset cancels, and an error of its slope too (only a ratio of two
differences counts). Before and after pouring the water cools by Newton's law towards the room; both curves are carried
to the moment of pouring. What this assumes: only water, no splash, stirred; the same lid and height as in the
practical; a cup that is warm right through before; the added water at the room's temperature. No numpy.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, hypot, log, sqrt

from station.analysis.settle.lags import STEP_C, ProbeLags, Sample, fresh
from station.words import Message, say

BEFORE_S, AFTER_S = 90.0, 180.0
"""How much of the trace just before pouring counts, and how long after it the curve needs at least. What came before
is the cup and the probe warming through: no cooling curve."""
SKIP_S = 60.0
"""After pouring so long nothing counts: mixing, the probe's lag, the wall's share."""
LEAST_C = 6.0
"""How much warmer than the room the cup must be before; colder, the steps of the probe are all the result."""
ROUGH_C = 0.15
"""Scatter about a cooling curve above which it is none: a cup that still warms through, a lid that was lifted."""
U_MOMENT_S = 2.0
"""Standard uncertainty of the moment of pouring."""


class CupRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """No heat capacity from these values; `reason` says why."""

    def __init__(self, reason: Message) -> None:
        super().__init__(reason)
        self.reason = reason


@dataclass(frozen=True)
class CupTest:
    """`heat_capacity_j_k` of cup and wetted probe tip, `loss_w_k` per kelvin above the room, each with its u.

    `warm_c`, `added_c`, `mixed_c` are the temperatures that the heat balance is made of; `parts` is what makes up the u
    of the heat capacity, in J/K, by its name in the record.
    """

    heat_capacity_j_k: float
    u_heat_capacity_j_k: float
    loss_w_k: float
    u_loss_w_k: float
    warm_c: float
    added_c: float
    mixed_c: float
    parts: dict[str, float]


@dataclass(frozen=True)
class _Cooling:
    at_c: float
    u_c: float
    rate_s: float
    u_rate_s: float


def cup_of(
    samples: Sequence[Sample],
    poured_s: float,
    added_c: tuple[float, float],
    masses_g: tuple[float, float],
    u_mass_g: float,
    j_g_k: float,
    lags: ProbeLags,
) -> CupTest:
    """Return the cup's figures from (time_s, °C or None) samples around pouring at `poured_s`.

    `added_c` is the temperature of the added water and its u, `masses_g` the water in the cup before and the water
    added, `u_mass_g` the u of each, `j_g_k` the heat capacity of water. Raises CupRefused.
    """
    trace = fresh(samples, float("inf"))
    room_c, u_added_c = added_c
    before = [(t, c) for t, c in trace if poured_s - BEFORE_S <= t < poured_s - 3.0]
    after = [(t, c) for t, c in trace if t >= poured_s + SKIP_S]
    if len(before) < 0.6 * BEFORE_S or before[0][0] > poured_s - 0.9 * BEFORE_S:
        raise CupRefused(say("cup-trace-before-short", seconds=f"{BEFORE_S:.0f}"))
    if len(after) < 0.6 * (AFTER_S - SKIP_S) or after[-1][0] < poured_s + 0.9 * AFTER_S:
        raise CupRefused(say("cup-trace-after-short", seconds=f"{AFTER_S:.0f}"))
    if min(c for _, c in before) < room_c + LEAST_C or min(c for _, c in after) < room_c + 1.0:
        raise CupRefused(say("cup-not-warm-enough", least_c=f"{LEAST_C:.0f}"))
    warm, mixed = (_cooling(rows, room_c, poured_s, lags) for rows in (before, after))
    return _balance(warm, mixed, added_c, masses_g, u_mass_g, j_g_k, u_added_c)


def _balance(
    warm: _Cooling,
    mixed: _Cooling,
    added_c: tuple[float, float],
    masses_g: tuple[float, float],
    u_mass_g: float,
    j_g_k: float,
    u_room_c: float,
) -> CupTest:
    in_cup_g, added_g = masses_g
    fell_c, rose_c = warm.at_c - mixed.at_c, mixed.at_c - added_c[0]
    if fell_c < 1.0 or rose_c < 1.0:
        raise CupRefused(say("cup-changed-too-little"))
    ratio = rose_c / fell_c
    capacity = added_g * j_g_k * ratio - in_cup_g * j_g_k
    per_c = added_g * j_g_k / fell_c
    parts = {
        "warm water's temperature": per_c * ratio * warm.u_c,
        "mixed water's temperature": per_c * (1.0 + ratio) * mixed.u_c,
        "added water's temperature": per_c * added_c[1],
        "mass in the cup": j_g_k * u_mass_g,
        "mass added": j_g_k * ratio * u_mass_g,
    }
    u_capacity = sqrt(sum(each**2 for each in parts.values()))
    all_j_k = (in_cup_g + added_g) * j_g_k + capacity
    loss = mixed.rate_s * all_j_k
    shares = (mixed.u_rate_s / mixed.rate_s if mixed.rate_s > 0.0 else 0.0, u_room_c / rose_c, u_capacity / all_j_k)
    u_loss = abs(loss) * hypot(*shares)
    return CupTest(capacity, u_capacity, loss, u_loss, warm.at_c, added_c[0], mixed.at_c, parts)


def _cooling(rows: Sequence[tuple[float, float]], room_c: float, at_s: float, lags: ProbeLags) -> _Cooling:
    """Newton's cooling as a line in ln(T − room), carried to `at_s`; what the probe trails behind is taken off."""
    points = [(t - at_s, log(c - room_c)) for t, c in rows]
    n = len(points)
    mid, mean = sum(t for t, _ in points) / n, sum(y for _, y in points) / n
    spread = sum((t - mid) ** 2 for t, _ in points)
    slope = sum((t - mid) * (y - mean) for t, y in points) / spread
    scatter = sqrt(sum((y - mean - slope * (t - mid)) ** 2 for t, y in points) / (n - 2))
    # A trace that falls by one step in twenty samples is worth no more than its steps.
    worth = max(abs(rows[0][1] - rows[-1][1]) / STEP_C, 1.0)
    excess_c = exp(mean - slope * mid)
    if scatter * exp(mean) > ROUGH_C:
        raise CupRefused(say("cup-not-smooth"))
    u_line = scatter * sqrt(1.0 / min(worth, n) + mid**2 / spread * n / min(worth, n))
    u_slope = scatter * sqrt(n / min(worth, n) / spread)
    rate_s = -slope
    (fast, _, _), (_, slow, _), (_, _, share) = lags.covariance
    u_lag_s = hypot(
        lags.fast_share * lags.fast_s * sqrt(fast),
        (1.0 - lags.fast_share) * lags.slow_s * sqrt(slow),
        (lags.slow_s - lags.fast_s) * sqrt(share),
    )
    trails_c = excess_c * rate_s * lags.mean_s
    u_c = hypot(excess_c * u_line, STEP_C / sqrt(12.0 * worth), excess_c * rate_s * hypot(u_lag_s, U_MOMENT_S))
    return _Cooling(room_c + excess_c - trails_c, u_c, rate_s, u_slope)
