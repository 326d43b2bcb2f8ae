"""What is known of a probe's lag: two time constants and how they share the answer.

A probe in a steel tube does not answer as one exponential: the tip follows fast, the tube and the filling
follow slowly. This file knows the shape of that answer and nothing of cups, portions or judging.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import exp

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
