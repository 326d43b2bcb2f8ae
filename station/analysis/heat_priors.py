"""What is known before the fit, as a normal prior on each parameter of the cup model.

Where no figure is published the spread is an estimate, kept wide: it is common practice, no source.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup import Cup
from station.analysis.cup_layout import INDEX, Layout
from station.analysis.heat_inputs import Array, Estimate, HeatSetup, Pour, Trace

SLOW_SHARE, GROUP_PRESS_S = 0.03, 3.0

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
        "log_wall_s": Estimate(float(np.log(40.0)), 0.7),
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
