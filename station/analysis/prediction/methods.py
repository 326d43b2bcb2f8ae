"""What a practical will give, from its plan alone: the curve, and how well either method will know the end-point."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat.balance import acid_concentration, enthalpy, reaction_temperature
from station.analysis.heat.inputs import Array
from station.analysis.heat.model import trace as cup_trace
from station.analysis.heat.solver import LEAST_NOISE_STEPS, loss
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused
from station.analysis.prediction.model import (
    Expected,
    Thermometer,
    readings_c,
    rise_at_end_point_c,
    usual_cups,
)

# How well the heat balance will know the end-point: the Fisher information of its own cup model and priors.
#
# A sample of the probe counts with the curvature that the fit's likelihood has on average (`heat_solver.loss`); a
# thermometer without a trace gives one reading per portion. The inverse of information and priors together is the
# least covariance a fit can have (Cramér–Rao; with priors: H. L. Van Trees, Detection, Estimation and Modulation
# Theory I, 1968, section 2.4). It is averaged over usual cups, since nobody knows yet which it will be.


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


# What straight lines will make of a course: their bias and their scatter, by drawing readings.
#
# The crossing is not a smooth function of the readings (the rule that splits them jumps), so it is drawn rather
# than propagated: usual cups, portions and readings with their errors, a fixed seed, the very method the bench uses.


DRAWS = 200
SEED = 20
FEWEST = 0.5
"""Below this share of draws with a crossing the method is expected to refuse."""


@dataclass(frozen=True)
class LinesExpected:
    """Mean and standard deviation of (crossing − true end-point), cm³, and the share of draws that were refused.

    Without enough crossings ``bias_cm3`` and ``u_end_point_cm3`` are None and ``reason`` is the commonest refusal.
    """

    bias_cm3: float | None
    u_end_point_cm3: float | None
    refused_share: float
    reason: str | None


def expected_lines(expected: Expected, thermometer: Thermometer, draws: int = DRAWS) -> LinesExpected:
    """Draw repeats of the course and cross the lines through their readings."""
    temperatures = readings_c(expected, usual_cups(expected, draws, SEED))
    readings = thermometer.read(temperatures, np.random.default_rng(SEED + 1))
    volumes = expected.course.volume_cm3
    crossings: list[float] = []
    refusals: list[str] = []
    for row in readings:
        try:
            crossings.append(fit_lines(volumes, row).end_point_cm3)
        except LinesRefused as refusal:
            refusals.append(str(refusal))
    share = len(refusals) / draws
    if len(crossings) < FEWEST * draws:
        return LinesExpected(None, None, share, max(set(refusals), key=refusals.count))
    errors = np.array(crossings) - expected.course.end_point_cm3
    return LinesExpected(float(errors.mean()), float(errors.std(ddof=1)), share, None)


@dataclass(frozen=True)
class Curve:
    """The expected readings: total added (cm³) and temperature (°C), both of shape count + 1; the first is the start.

    ``rise_c`` is how far the mixed cup stands above its start at the end-point, loss included; ``before`` and
    ``after`` are how many readings lie on each arm.
    """

    volume_cm3: Array
    temperature_c: Array
    rise_c: float
    before: int
    after: int


def expected_curve(expected: Expected) -> Curve:
    """The readings of a usual cup, without scatter."""
    course = expected.course
    before, after = arm_points(course.portion_cm3, course.count, course.end_point_cm3)
    temperature = readings_c(expected, expected.theta[None, :])[0]
    return Curve(course.volume_cm3, temperature, rise_at_end_point_c(expected), before, after)


def arm_points(portion_cm3: float, count: int, end_point_cm3: float) -> tuple[int, int]:
    """How many readings, the start's included, lie before and after an end-point; one that is on it counts as both."""
    portions = end_point_cm3 / portion_cm3
    hair = 1e-9 * max(1.0, portions)
    totals = range(count + 1)
    return sum(total <= portions + hair for total in totals), sum(total >= portions - hair for total in totals)
