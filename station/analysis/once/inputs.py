"""What goes into the analysis of a cup mixed once, and what comes out: frozen values, no arithmetic beyond checks."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.inputs import LOG_WALL_S, Array, Estimate, Trace
from station.analysis.once.model import INDEX, NAMES
from station.words import Message

Indices = NDArray[np.intp]

OnceRefusedKind = Literal[
    "not_numbers", "outside_trace", "too_few_before", "too_few_after", "not_a_line", "no_change", "no_fit"
]


class OnceRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """No temperature change or heat from these data: ``kind`` for programs, ``reason`` for a student."""

    def __init__(self, kind: OnceRefusedKind, reason: Message) -> None:
        super().__init__(reason)
        self.kind, self.reason = kind, reason


@dataclass(frozen=True)
class Stretch:
    """One of the two straight lines: temperature = ``at_mixing_c`` + ``slope_c_s`` · (time − moment of mixing).

    ``used`` are the indices of the samples it goes through, ``set_aside`` those inside its window that lie off
    it; ``begin_s`` and ``end_s`` are the times of its first and last sample. ``effective`` is how many
    independent readings the samples are worth (neighbours on one step of the probe are not independent).
    """

    begin_s: float
    end_s: float
    slope_c_s: float
    u_slope_c_s: float
    at_mixing_c: float
    u_at_mixing_c: float
    used: Indices
    set_aside: Indices
    effective: float


@dataclass(frozen=True)
class Extrapolation:
    """The temperature change by lines extended to the moment of mixing; positive when the cup warmed.

    u and the interval hold the scatter, the probe's steps, the uncertain moment and what is lost along the stem, not
    the bias of the method itself (a slow wall, a slow reaction, a curve taken for a line): see ``label``. ``rule`` says
    how the readings were chosen.
    """

    change_c: float
    u_change_c: float
    interval_95_c: tuple[float, float]
    before: Stretch
    after: Stretch
    mixed_at_s: float
    s_c: float
    rule: Message
    label: Message


LIQUIDS_S, SOLIDS_S = Estimate(4.0, 4.0), Estimate(12.0, 12.0)
"""Times of completion: two liquids that react at once; a solid or a slow reaction. Wide estimates of ours."""
CUP_J_K, PRESS_S = Estimate(5.0, 3.0), Estimate(1.0, 4.0)
STEM_SHARE = Estimate(0.002, 0.002)
"""A steel tube of 6 mm with a wall of 0.4 mm and three copper leads is a fin. At the water's surface it lags by 7 % of
its excess over the room (1000 W/(m² K) in stirred water, 10 in air), 10 mm below by 0.4 %, 13 mm by 0.2 %, 20 mm by
nothing to speak of. Worked out by us, not measured.
"""
LAG_FAST_S, LAG_SLOW_S, LAG_SHARE = Estimate(4.6, 2.3), Estimate(19.0, 9.0), Estimate(0.55, 0.3)
FOUND_S = Estimate(0.0, 2.0)
"""How late the moment is that was found in the trace."""
BY_HAND_LAGS = {"lag_fast_s": Estimate(6.0, 4.0), "lag_slow_s": Estimate(15.0, 8.0)}
"""An ordinary thermometer in stirred water: estimates of ours, no source."""


@dataclass(frozen=True)
class OnceSetup:
    """What is known of contents, cup and probe before mixing.

    ``contents_j_k`` is the heat capacity of all that is in the cup after mixing (solution of the products),
    ``added_j_k`` that of what is added, before it is added, both in J/K. ``added_c`` is the temperature of what
    is added (None: about that of the cup, u 2 °C), ``room_c`` the room's (None: about the cup's, u 3 °C).
    ``completion_s`` is the longest of the times in which mixing and reaction, or dissolving, complete, within a
    factor given by its u: see ``LIQUIDS_S`` and ``SOLIDS_S``.
    ``press_s`` is how late "mixed" was pressed (negative: early). The lags are the probe's two time constants in
    stirred water and the share of the fast one; the defaults span the eight DS18B20 probes whose step responses
    a student course at Universität Hamburg published in 2023 (63 % after 6.8 to 19 s). ``stem_share`` is how
    much of its excess over the room a probe that is not wholly in the liquid loses along its tube and leads
    (``STEM_SHARE`` says where it comes from).
    """

    contents_j_k: Estimate
    added_j_k: Estimate
    cup_j_k: Estimate = CUP_J_K
    added_c: Estimate | None = None
    room_c: Estimate | None = None
    completion_s: Estimate = LIQUIDS_S
    press_s: Estimate = PRESS_S
    lag_fast_s: Estimate = LAG_FAST_S
    lag_slow_s: Estimate = LAG_SLOW_S
    lag_share: Estimate = LAG_SHARE
    stem_share: Estimate = STEM_SHARE

    def __post_init__(self) -> None:
        if not 0.0 < self.added_j_k.value < self.contents_j_k.value:
            raise ValueError(
                "heat capacities must be above 0 J/K, and that of what is added less than that of the contents: "
                f"{self.added_j_k.value} and {self.contents_j_k.value} J/K"
            )
        for name in ("completion_s", "lag_fast_s", "lag_slow_s"):
            if not getattr(self, name).value > 0.0:
                raise ValueError(f"{name} must be above 0 s, not {getattr(self, name).value}")


@dataclass(frozen=True)
class OnceHeat:
    """The heat balance of a cup mixed once.

    ``heat_j`` is the heat given out by the reaction (negative: taken in) at the temperature the cup had when the
    two met, ``start_c``. ``change_c`` is the change of the mixed cup at that moment, corrected for loss, lag and
    slow completion; it includes what the added part's own temperature did. ``describes_trace`` is False when the
    residuals say that the cup did something the model does not know; u is then wider. ``parameters`` (named in
    ``names``) and ``covariance`` are those of the model; residuals are measured minus fitted, °C, one per sample;
    ``kept`` marks the samples that were not far off it.
    """

    heat_j: float
    u_heat_j: float
    interval_95_j: tuple[float, float]
    change_c: float
    u_change_c: float
    interval_95_c: tuple[float, float]
    start_c: float
    mixed_at_s: float
    describes_trace: bool
    notes: tuple[Message, ...]
    names: tuple[str, ...] = field(repr=False)
    parameters: Array = field(repr=False)
    covariance: Array = field(repr=False)
    residuals_c: Array = field(repr=False)
    kept: NDArray[np.bool_] = field(repr=False)
    residual_rms_c: float


# What is known of a cup mixed once before the fit: a normal prior on every parameter, and a first guess.
#
# Where no figure is published the spread is an estimate of ours, kept wide: common practice, no source.


def _log(estimate: Estimate) -> Estimate:
    return Estimate(float(np.log(estimate.value)), estimate.u / estimate.value)


def prior_of(setup: OnceSetup, samples: Trace, time_s: Array) -> tuple[Array, Array]:
    """Mean and u of every parameter (shape SIZE); ``time_s`` counts from the press."""
    first = float(np.median(samples.temperature_c[time_s < 0.0]))
    room = setup.room_c or Estimate(first, 3.0)
    shares = Estimate(0.0, 3.0 if setup.completion_s.value > 5.0 else 0.5)
    known = {
        "heat_j": Estimate(0.0, 30.0 * setup.contents_j_k.value),
        "start_c": Estimate(first, 10.0),
        "added_c": setup.added_c or Estimate(first, 2.0),
        # Evaporation keeps an open cup's resting temperature a little below the room's.
        "room_c": Estimate(room.value, float(np.hypot(room.u, 1.0))),
        "room_drift_c_s": Estimate(0.0, 0.001),
        "log_loss_w_k": Estimate(float(np.log(0.12)), 0.8),
        "log_loss_change": Estimate(0.0, 0.15),
        "log_lag_fast_s": _log(setup.lag_fast_s),
        "log_lag_slow_s": _log(setup.lag_slow_s),
        "lag_share": setup.lag_share,
        "log_completion_s": _log(setup.completion_s),
        "half_share": shares,
        "third_share": shares,
        "quarter_share": shares,
        "mixed_s": Estimate(-setup.press_s.value, setup.press_s.u),
        "cup_j_k": setup.cup_j_k,
        "wall_share": Estimate(0.5, 0.3),
        "log_wall_s": LOG_WALL_S,
        "wall_offset_c": Estimate(0.0, 1.0),
        "probe_offset_c": Estimate(0.0, 3.0),
        "contents_j_k": setup.contents_j_k,
        "added_j_k": setup.added_j_k,
        "stem_share": setup.stem_share,
    }
    return np.array([known[name].value for name in NAMES]), np.array([known[name].u for name in NAMES])


def first_guess(mean: Array, samples: Trace, time_s: Array) -> Array:
    """First guess: the change between the ends of the trace, begun where the readings first leave the start."""
    theta, temperature = mean.copy(), samples.temperature_c
    theta[INDEX["start_c"]] = before = float(np.median(temperature[time_s < -3.0][-30:]))
    after = temperature[time_s > 0.0]
    change = float(after[np.argmax(np.abs(after - before))]) - before
    left = np.flatnonzero(
        (time_s > -20.0) & (np.abs(temperature - before) > max(0.1 * abs(change), 2 * samples.step_c))
    )
    if len(left):
        theta[INDEX["mixed_s"]] = float(np.clip(time_s[left[0]] - 1.5, time_s[0] + 1.0, 30.0))
    at, brought = INDEX["contents_j_k"], mean[INDEX["added_j_k"]] * (mean[INDEX["added_c"]] - before)
    theta[INDEX["heat_j"]] = change * (mean[at] + mean[INDEX["cup_j_k"]]) - brought
    return theta
