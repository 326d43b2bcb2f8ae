"""How well the heat balance will know the end-point: the Fisher information of its own cup model and priors.

A sample of the probe counts with the curvature that the fit's likelihood has on average (`heat_solver.loss`); a
thermometer without a trace gives one reading per portion. The inverse of information and priors together is the
least covariance a fit can have (Cramér–Rao; with priors: H. L. Van Trees, Detection, Estimation and Modulation
Theory I, 1968, section 2.4). It is averaged over usual cups, since nobody knows yet which it will be.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.cup import trace as cup_trace
from station.analysis.heat_inputs import Array
from station.analysis.heat_result import acid_concentration, enthalpy, reaction_temperature
from station.analysis.heat_solver import LEAST_NOISE_STEPS, loss
from station.analysis.predict_model import Expected, usual_cups
from station.analysis.predict_thermometer import Thermometer

CUPS = 16
LOGISTIC_SD = np.pi / np.sqrt(3.0)
"""Standard deviation of a logistic distribution of scale 1."""


@dataclass(frozen=True)
class HeatExpected:
    """Standard uncertainties of one repeat: end-point, and (None without the alkali's concentration) what follows."""

    u_end_point_cm3: float
    u_acid_mol_dm3: float | None
    u_enthalpy_kj_mol: float | None


def expected_heat_balance(expected: Expected, thermometer: Thermometer) -> HeatExpected:
    """Root mean square, over usual cups, of the least standard uncertainties."""
    thetas = usual_cups(expected, CUPS)
    squares = np.array([_variances(expected, theta, thermometer) for theta in thetas])
    end_point, acid, heat = (float(value) for value in np.sqrt(squares.mean(axis=0)))
    known = expected.course.setup.alkali_mol_dm3 is not None
    return HeatExpected(end_point, acid if known else None, heat if known else None)


def _variances(expected: Expected, theta: Array, thermometer: Thermometer) -> tuple[float, float, float]:
    """Variances of end-point, acid concentration and enthalpy in one cup."""
    time_s = expected.sample_s if thermometer.traced else expected.course.reading_s
    _, jacobian = cup_trace(expected.cup, theta, time_s)
    free = expected.prior.free
    rows = jacobian[:, free]
    information = rows.T @ rows * sample_information(thermometer) + np.diag(expected.prior.u[free] ** -2.0)
    scale = 1.0 / np.sqrt(np.diag(information))
    inverse = np.linalg.inv(information * np.outer(scale, scale)) * np.outer(scale, scale)
    covariance = np.zeros((len(theta), len(theta)))
    covariance[np.ix_(free, free)] = inverse
    setup, cup = expected.course.setup, expected.cup
    acid = acid_concentration(theta, covariance, setup)
    heat = enthalpy(theta, covariance, setup, cup, reaction_temperature(cup, theta))
    return float(covariance[0, 0]), acid.u**2 if acid else 0.0, heat.u**2 if heat else 0.0


def sample_information(thermometer: Thermometer) -> float:
    """What one reading says about the temperature, 1/°C²: 1/u² of a single reading, and of a sample of the probe
    the mean curvature of the fit's loss, over all places between two steps and all noise."""
    if not thermometer.traced:
        return 1.0 / (thermometer.u_reading_c * thermometer.u_reading_c)
    step = thermometer.step_c
    scale = max(thermometer.noise_c / LOGISTIC_SD, LEAST_NOISE_STEPS * step)
    part = (np.arange(200) + 0.5) / 200.0
    noise = scale * np.log(part / (1.0 - part))
    place = step * (np.arange(40)[:, None] / 40.0 - 0.5)
    residual = np.round((place + noise) / step) * step - place
    return float(loss(residual.ravel(), scale, step)[2].mean())
