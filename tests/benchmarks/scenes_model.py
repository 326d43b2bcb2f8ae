"""Cups drawn from the fitted model itself: its own equations, priors and noise. Here the statistics must be exact.

The scenes in scenes.py are the ones that say how it does on real cups; these say whether the fit reaches the
Cramér–Rao bound and whether its intervals mean what they say.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat.inputs import Array, Estimate, HeatSetup, Pour, Prior, Trace, cup_of, prior_of
from station.analysis.heat.model import INDEX, Cup, trace
from station.analysis.heat.search import PATCH
from station.analysis.heat.start import plateaus

STEP_C = 0.0625


@dataclass(frozen=True)
class ModelScene:
    """A trace from known parameters: what the fit is given, the truth, and what the bound needs."""

    setup: HeatSetup
    pours: list[Pour]
    trace: Trace
    cup: Cup
    prior: Prior
    theta: Array
    noise_c: float

    @property
    def end_point_cm3(self) -> float:
        """The true end-point."""
        return float(self.theta[INDEX["end_point_cm3"]])

    def enthalpy_kj_mol(self, temperature_c: float) -> float:
        """True enthalpy per mol of water at a temperature."""
        warmer = temperature_c - self.cup.reference_c
        heat = self.theta[INDEX["heat_j_cm3"]] * (1.0 + self.theta[INDEX["heat_slope_k"]] * warmer)
        assert self.setup.alkali_mol_dm3 is not None
        return float(-heat / self.setup.alkali_mol_dm3.value)

    def bound_cm3(self) -> float:
        """Cramér–Rao bound of the end-point: priors as information, noise plus step²/12 as variance."""
        free = self.prior.free
        _, jacobian = trace(self.cup, self.theta, self.trace.time_s)
        rows = jacobian[:, free] / np.hypot(self.noise_c, STEP_C / np.sqrt(12.0))
        information = rows.T @ rows + np.diag(self.prior.u[free] ** -2.0)
        scale = 1.0 / np.sqrt(np.diag(information))
        return float(np.sqrt(np.linalg.inv(information * np.outer(scale, scale))[0, 0]) * scale[0])


def _draw(prior: Prior, rng: np.random.Generator, total_cm3: float) -> Array:
    """Parameters from the prior; those without one from what a class would have."""
    theta = prior.mean + np.where(prior.u < 1e3, prior.u, 0.0) * rng.standard_normal(len(prior.mean))
    strength = float(np.exp(rng.uniform(np.log(0.5), np.log(1.5))))
    theta[INDEX["end_point_cm3"]] = total_cm3 * rng.uniform(0.35, 0.72)
    theta[INDEX["heat_j_cm3"]] = 56.0 * strength
    theta[INDEX["log_loss_w_k"]] = np.log(0.12) + 0.4 * rng.standard_normal()
    theta[INDEX["log_mixing_s"]] = np.log(2.5) + 0.4 * rng.standard_normal()
    slow, fast = INDEX["log_lag_slow_s"], INDEX["log_lag_fast_s"]
    theta[slow] = max(theta[slow], theta[fast] + 0.5)
    return theta


def model_scene(seed: int, u_volume_cm3: float = 0.0, noise_c: float = 0.03, hold_s: float = 50.0) -> ModelScene:
    """Scene number ``seed``: nine portions of 5 cm³ into 25 cm³, a conversion each 1.02 s, on steps of 1/16 °C."""
    rng = np.random.default_rng([seed, 77])
    count = 9
    setup = HeatSetup(
        Estimate(25.0, 0.06),
        alkali_mol_dm3=Estimate(1.0, 0.0),
        alkali_c=Estimate(20.3, 0.3),
        room_c=Estimate(20.5, 0.5),
    )
    press = 25.0 + np.cumsum(hold_s * np.exp(0.12 * rng.standard_normal(count)))
    pours = [Pour(float(p), 5.0, u_volume_cm3) for p in press]
    time_s = np.arange(0.3, press[-1] + hold_s, 1.02)
    level = np.full_like(time_s, 20.0)
    cup = cup_of(setup, pours, Trace(time_s, level, STEP_C))
    theta = _draw(prior_of(setup, pours, 20.0, 0.0), rng, 5.0 * count)
    clean, _ = trace(cup, theta, time_s)
    # What follows from the trace in the fit (how warm the cup gets) must be the same here.
    cup = cup_of(setup, pours, Trace(time_s, clean, STEP_C))
    late = plateaus(Trace(time_s, clean, STEP_C), pours)
    prior = prior_of(setup, pours, 20.0, PATCH * float(np.ptp(late)) / count)
    patches = cup.layout.patches
    theta[patches] = prior.u[patches] * rng.standard_normal(count + 1)
    clean, _ = trace(cup, theta, time_s)
    seen = clean + noise_c * rng.standard_normal(len(time_s))
    return ModelScene(setup, pours, Trace(time_s, np.round(seen / STEP_C) * STEP_C, STEP_C), cup, prior, theta, noise_c)
