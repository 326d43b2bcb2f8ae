"""What goes into the analysis of a cup mixed once, and what comes out: frozen values, no arithmetic beyond checks."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Literal

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat_inputs import Array, Estimate

Indices = NDArray[np.intp]

OnceRefusedKind = Literal[
    "not_numbers", "outside_trace", "too_few_before", "too_few_after", "not_a_line", "no_change", "no_fit"
]


class OnceRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """No temperature change or heat from these data: ``kind`` for programs, ``reason`` for a student."""

    def __init__(self, kind: OnceRefusedKind, reason: str) -> None:
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

    u and the interval hold the scatter, the probe's steps and the uncertain moment, not the bias of the method
    itself (a slow wall, a slow reaction, a curve taken for a line): see ``label``. ``rule`` says how the readings
    were chosen.
    """

    change_c: float
    u_change_c: float
    interval_95_c: tuple[float, float]
    before: Stretch
    after: Stretch
    mixed_at_s: float
    s_c: float
    rule: str
    label: str


LIQUIDS_S, SOLIDS_S = Estimate(4.0, 4.0), Estimate(12.0, 12.0)
"""Times of completion: two liquids that react at once; a solid or a slow reaction. Wide estimates of ours."""
CUP_J_K, PRESS_S, STEM_SHARE = Estimate(5.0, 3.0), Estimate(1.0, 4.0), Estimate(0.004, 0.004)
LAG_FAST_S, LAG_SLOW_S, LAG_SHARE = Estimate(4.6, 2.3), Estimate(19.0, 9.0), Estimate(0.55, 0.3)


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
    much of its excess over the room a probe that is not wholly in the liquid loses along its tube and leads (an
    estimate for 30 mm of a 6 mm steel tube, no source).
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
    notes: tuple[str, ...]
    names: tuple[str, ...] = field(repr=False)
    parameters: Array = field(repr=False)
    covariance: Array = field(repr=False)
    residuals_c: Array = field(repr=False)
    kept: NDArray[np.bool_] = field(repr=False)
    residual_rms_c: float
