"""What goes into the heat balance and what comes out: frozen values, no arithmetic beyond checks."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.model import INDEX, Cup, Layout
from station.words import Message

Array = NDArray[np.float64]


class HeatRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """The heat balance gives no end-point for these data: ``kind`` for programs, ``reason`` for people."""

    def __init__(self, kind: str, reason: Message) -> None:
        super().__init__(reason)
        self.kind, self.reason = kind, reason


@dataclass(frozen=True)
class Estimate:
    """A quantity known beforehand: ``value`` and its standard uncertainty ``u`` in the same unit."""

    value: float
    u: float

    def __post_init__(self) -> None:
        if not (np.isfinite(self.value) and np.isfinite(self.u) and self.u >= 0.0):
            raise ValueError(f"an estimate needs a finite value and u ≥ 0, not {self.value} ± {self.u}")


@dataclass(frozen=True)
class Trace:
    """The good samples of one repeat: ``time_s`` rising, ``temperature_c`` of the same length.

    ``step_c`` is the probe's resolution, °C (a DS18B20 at 12 bits has 1/16).
    """

    time_s: Array
    temperature_c: Array
    step_c: float = 0.0625

    def __post_init__(self) -> None:
        if self.time_s.ndim != 1 or self.time_s.shape != self.temperature_c.shape:
            raise ValueError("a trace needs one temperature for each time")
        if not (np.isfinite(self.time_s).all() and np.isfinite(self.temperature_c).all()):
            raise ValueError("a trace holds finite times and temperatures only: leave bad samples out")
        if (np.diff(self.time_s) <= 0.0).any():
            raise ValueError("the times of a trace must rise")


STEPS_C = (1.0, 0.5, 0.25, 0.2, 0.125, 0.1, 0.0625, 0.05, 0.03125, 0.02, 0.01, 0.005, 0.002, 0.001)
"""Of thermometers: decimal ones, and halvings of a degree as probes have them."""
USUAL_STEP_C = 0.0625
OFF_STEP, MOST_OFF = 0.1, 0.02
"""A difference is a whole number of steps to such a share of one; so few need not be (another correction)."""


def step_of(temperature_c: Array) -> float:
    """Return the step of the thermometer that made this trace, °C: the largest that its differences are made of."""
    apart = np.abs(np.diff(temperature_c))
    apart = apart[apart > 1e-6]
    if not apart.size:
        return USUAL_STEP_C
    for step_c in STEPS_C:
        off = np.abs(apart / step_c - np.round(apart / step_c))
        if np.mean((off > OFF_STEP) | (apart < 0.5 * step_c)) <= MOST_OFF:
            return step_c
    return STEPS_C[-1]


@dataclass(frozen=True)
class Pour:
    """One portion: when "it is in" was pressed, its nominal volume and that volume's u (1 sd, independent).

    ``u_press_s`` says how far the press may be from the pour, beyond what the group is late or early on average.
    A portion that may be missing or doubled gets a ``u_volume_cm3`` as large as its volume.
    """

    press_s: float
    volume_cm3: float
    u_volume_cm3: float
    u_press_s: float = 2.5

    def __post_init__(self) -> None:
        if not (self.volume_cm3 > 0.0 and self.u_volume_cm3 >= 0.0 and self.u_press_s >= 0.0):
            raise ValueError("a pour needs a volume above 0 and uncertainties of 0 or more")


@dataclass(frozen=True)
class HeatSetup:
    """What is known of acid, alkali, cup and probe before the repeat.

    Volumetric heat capacities are in J/(cm³ K) with one common relative uncertainty. ``alkali_mol_dm3`` may
    be unknown; then there is no concentration and no enthalpy. ``acid_per_alkali`` is mol of acid that one
    mol of alkali neutralises, ``water_per_alkali`` mol of water it forms. ``alkali_c`` and ``room_c`` may be
    unknown. The lags are the probe's two time constants in stirred water and the share of the fast one; the
    defaults span the eight DS18B20 probes whose step responses a student course at Universität Hamburg
    published in 2023 (63 % after 6.8 to 19 s). ``heat_slope_k`` is the relative change of the heat of
    reaction per kelvin: −0.0039 from ΔCp = −215 J/(K mol) for the ionisation of water at infinite dilution
    (Singh et al., Can. J. Chem. 54, 3315 (1976)), about −0.0014 at 0.5 mol/dm³.
    ``unmodelled`` names, in words, heat that the model does not know (a second step, a gas): then the fit refuses.
    """

    acid_volume_cm3: Estimate
    acid_j_cm3_k: float = 4.07
    alkali_j_cm3_k: float = 4.14
    product_j_cm3_k: float = 4.10
    u_heat_capacity: float = 0.01
    alkali_mol_dm3: Estimate | None = None
    acid_per_alkali: float = 1.0
    water_per_alkali: float = 1.0
    cup_j_k: Estimate = Estimate(5.0, 3.0)
    alkali_c: Estimate | None = None
    room_c: Estimate | None = None
    lag_fast_s: Estimate = Estimate(4.6, 2.3)
    lag_slow_s: Estimate = Estimate(19.0, 9.0)
    lag_share: Estimate = Estimate(0.55, 0.4)
    heat_slope_k: Estimate = Estimate(-0.0015, 0.0015)
    unmodelled: str | None = None


@dataclass(frozen=True)
class HeatFit:
    """The heat balance of one repeat.

    ``enthalpy_kj_mol`` is per mol of water formed at ``enthalpy_temperature_c``, negative when heat is given
    out; it and ``acid_mol_dm3`` are None when the alkali's concentration is unknown. ``describes_trace`` is
    False when the residuals say that the cup did something the model does not know; the interval is then
    wider.
    ``heat_corrected_c`` at ``heat_corrected_volume_cm3`` (shape pours + 1, true volumes as fitted) are the
    points that lie on two straight lines once dilution and loss are allowed for.
    ``parameters`` (names in ``names``) and ``covariance`` are those of the cup model; residuals are
    measured minus fitted, °C, one for each sample; ``kept`` marks the samples that were not set aside.
    """

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]
    enthalpy_kj_mol: float | None
    u_enthalpy_kj_mol: float | None
    enthalpy_temperature_c: float
    acid_mol_dm3: float | None
    u_acid_mol_dm3: float | None
    describes_trace: bool
    notes: tuple[Message, ...]
    start_c: float
    end_point_temperature_c: float
    heat_corrected_volume_cm3: Array
    heat_corrected_c: Array
    names: tuple[str, ...]
    parameters: Array
    covariance: Array
    residuals_c: Array
    kept: NDArray[np.bool_]
    residual_rms_c: float


# What is known before the fit, as a normal prior on each parameter of the cup model.
#
# Where no figure is published the spread is an estimate, kept wide: it is common practice, no source.


SLOW_SHARE, GROUP_PRESS_S = 0.03, 3.0

LOG_WALL_S = Estimate(float(np.log(40.0)), 0.7)
"""ln of the time in which the slow part of a cup warms: an estimate of ours, wide."""

FREE = 1e6
"""Standard uncertainty of a parameter about which nothing is known."""


@dataclass(frozen=True)
class Prior:
    """Mean and standard uncertainty of every parameter (shape size); an uncertainty of 0 holds it fixed."""

    mean: Array
    u: Array

    @property
    def free(self) -> NDArray[np.intp]:
        """Places of the parameters that are fitted."""
        return np.flatnonzero(self.u > 0.0)


def _log(estimate: Estimate) -> Estimate:
    return Estimate(float(np.log(estimate.value)), estimate.u / estimate.value)


def _scalars(setup: HeatSetup, first_c: float) -> dict[str, Estimate]:
    room = setup.room_c or Estimate(first_c, 3.0)
    # Evaporation cools an open cup below the room even without any excess temperature.
    effective = Estimate(room.value - 0.5, float(np.hypot(room.u, 1.5)))
    return {
        "end_point_cm3": Estimate(setup.acid_volume_cm3.value, FREE),
        "heat_j_cm3": Estimate(30.0, FREE),
        "start_c": Estimate(first_c, FREE),
        "alkali_c": setup.alkali_c or Estimate(first_c, 2.0),
        "room_c": effective,
        "log_loss_w_k": Estimate(float(np.log(0.1)), 1.0),
        "log_lag_fast_s": _log(setup.lag_fast_s),
        "log_lag_slow_s": _log(setup.lag_slow_s),
        "lag_share": setup.lag_share,
        "log_mixing_s": Estimate(float(np.log(3.0)), 0.7),
        "slow_share": Estimate(0.0, SLOW_SHARE),
        "log_slow_mixing_s": Estimate(float(np.log(50.0)), 0.5),
        "press_s": Estimate(1.0, GROUP_PRESS_S),
        "cup_j_k": setup.cup_j_k,
        "wall_share": Estimate(0.5, 0.3),
        "log_wall_s": LOG_WALL_S,
        "wall_offset_c": Estimate(0.0, 1.0),
        "probe_offset_c": Estimate(0.0, 3.0),
        "acid_volume_cm3": setup.acid_volume_cm3,
        "heat_capacity_scale": Estimate(1.0, setup.u_heat_capacity),
        "room_drift_c_s": Estimate(0.0, 0.001),
        "loss_curve_k": Estimate(0.015, 0.015),
        "heat_slope_k": setup.heat_slope_k,
    }


def prior_of(setup: HeatSetup, pours: Sequence[Pour], first_c: float, patch_c: float) -> Prior:
    """Prior of all parameters for these portions; ``first_c`` is about the acid's temperature at the start."""
    layout = Layout(len(pours))
    mean, u = np.zeros(layout.size), np.zeros(layout.size)
    for name, estimate in _scalars(setup, first_c).items():
        mean[INDEX[name]], u[INDEX[name]] = estimate.value, estimate.u
    mean[layout.times], u[layout.times] = [p.press_s for p in pours], [p.u_press_s for p in pours]
    mean[layout.volumes], u[layout.volumes] = [p.volume_cm3 for p in pours], [p.u_volume_cm3 for p in pours]
    u[layout.mixings] = 0.4
    u[layout.patches] = patch_c
    return Prior(mean, u)


def start_temperature(trace: Trace, pours: Sequence[Pour]) -> float:
    """About the acid's temperature, °C: the samples some seconds before the first press, when there are any."""
    before = trace.temperature_c[trace.time_s < pours[0].press_s - 6.0]
    return float(np.median(before[-6:])) if len(before) else float(trace.temperature_c[0])


def cup_of(setup: HeatSetup, pours: Sequence[Pour], trace: Trace) -> Cup:
    """The fixed part of the cup model for this trace."""
    edges = [trace.time_s[0], *(p.press_s for p in pours), trace.time_s[-1] + 1.0]
    middle = np.array([(a + b) / 2.0 for a, b in pairwise(edges)])
    first = start_temperature(trace, pours)
    warmth = np.interp(middle, trace.time_s, trace.temperature_c) - first
    return Cup(
        setup.acid_j_cm3_k,
        setup.alkali_j_cm3_k,
        setup.product_j_cm3_k,
        float(trace.time_s[0]),
        first,
        warmth,
        middle,
    )
