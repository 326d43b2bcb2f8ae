"""What is known of a cup mixed once before the fit: a normal prior on every parameter, and a first guess.

Where no figure is published the spread is an estimate of ours, kept wide: common practice, no source.
"""

from __future__ import annotations

import numpy as np

from station.analysis.heat_inputs import Array, Estimate, Trace
from station.analysis.once_inputs import OnceSetup
from station.analysis.once_stretch import INDEX, NAMES


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
        "log_wall_s": Estimate(float(np.log(60.0)), 0.8),
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
