"""The course of a repeat before anybody has poured: the cup model at what is known beforehand.

The same model, priors and parameters as the heat balance's fit; what differs is only that the end-point and the
heat of reaction are given by the plan's concentrations, and the moments by its pace.
"""

from __future__ import annotations

from dataclasses import dataclass
from math import hypot, sqrt

import numpy as np

from station.analysis.heat.inputs import Array, HeatSetup, Pour, Prior, Trace, cup_of, prior_of
from station.analysis.heat.model import INDEX, Cup, at_pours, capacity, modes
from station.analysis.heat.model import trace as cup_trace
from station.analysis.heat.search import PATCH

# What a temperature is read with, and how a reading scatters.


@dataclass(frozen=True)
class Thermometer:
    """A probe that is sampled all the time (``traced``), or a thermometer that is read once after each portion.

    ``step_c`` is the smallest step it is read to, ``noise_c`` one standard deviation of a reading before it is
    rounded to that step.
    """

    name: str
    step_c: float
    noise_c: float
    traced: bool = False

    @property
    def u_reading_c(self) -> float:
        """Standard uncertainty of one reading: rounding (step/√12, GUM 4.3.7) and scatter."""
        return hypot(self.step_c / sqrt(12.0), self.noise_c)

    def read(self, temperature_c: Array, rng: np.random.Generator) -> Array:
        """Readings of these temperatures, °C, any shape."""
        felt = temperature_c + self.noise_c * rng.standard_normal(temperature_c.shape)
        return np.asarray(np.round(felt / self.step_c) * self.step_c)


PROBE = Thermometer("probe", 0.0625, 0.02, traced=True)
"""A DS18B20 at 12 bits. Its noise below one step, and the scatter of a person's reading, a fifth of a division,
are common practice, no source."""
GLASS_TENTH = Thermometer("thermometer_0_1_c", 0.1, 0.02)
GLASS_WHOLE = Thermometer("thermometer_1_c", 1.0, 0.2)


SAMPLE_S = 1.0
UNUSUAL = 2.0
"""How many standard deviations from what is usual a drawn cup may be."""
KNOWN = 1e5
"""A parameter with a wider prior than this is one about which nothing is known: it is not drawn."""
SHARES = ("lag_share", "wall_share")
LEAST_CUP_J_K = 0.5


@dataclass(frozen=True)
class Course:
    """What a plan promises of one repeat.

    ``heat_j_cm3`` is the heat given out by each cm³ of alkali up to the end-point. The first portion is pressed
    at ``base_s``; each then waits ``wait_s`` for its reading, and ``pour_s`` go by until the next is in.
    ``u_portion_cm3`` is one standard deviation of one portion, independent between portions.
    """

    setup: HeatSetup
    end_point_cm3: float
    heat_j_cm3: float
    start_c: float
    portion_cm3: float
    count: int
    u_portion_cm3: float
    base_s: float
    wait_s: float
    pour_s: float

    @property
    def volume_cm3(self) -> Array:
        """Total added at each reading, cm³, shape count + 1."""
        return self.portion_cm3 * np.arange(self.count + 1, dtype=np.float64)

    @property
    def passed(self) -> bool:
        """Whether the portions go beyond the end-point."""
        return self.end_point_cm3 < self.portion_cm3 * self.count

    @property
    def press_s(self) -> Array:
        """Moments at which "it is in" is pressed, shape count."""
        return self.base_s + (self.wait_s + self.pour_s) * np.arange(self.count, dtype=np.float64)

    @property
    def reading_s(self) -> Array:
        """Moments of the readings, shape count + 1; the first is the start's."""
        return np.concatenate([[self.base_s - self.pour_s], self.press_s + self.wait_s])


@dataclass(frozen=True)
class Expected:
    """The cup model of a course: what is fixed, what was known before, and the parameters expected."""

    course: Course
    cup: Cup
    prior: Prior
    theta: Array

    @property
    def sample_s(self) -> Array:
        """Moments of the probe's samples, about one a second."""
        return _sample_s(self.course)


def expect(course: Course) -> Expected:
    """Build the cup model of a course."""
    pours = [Pour(float(press_s), course.portion_cm3, course.u_portion_cm3) for press_s in course.press_s]
    time_s = _sample_s(course)
    level_c = np.full_like(time_s, course.start_c)
    # How much the cup warms enters the loss and the priors: known once there is a first course.
    rough = _of_trace(course, pours, Trace(time_s, level_c))
    level_c, _ = cup_trace(rough.cup, rough.theta, time_s)
    return _of_trace(course, pours, Trace(time_s, level_c))


def _of_trace(course: Course, pours: list[Pour], trace: Trace) -> Expected:
    prior = prior_of(course.setup, pours, course.start_c, PATCH * float(np.ptp(trace.temperature_c)) / len(pours))
    theta = prior.mean.copy()
    theta[INDEX["end_point_cm3"]] = course.end_point_cm3
    theta[INDEX["heat_j_cm3"]] = course.heat_j_cm3
    theta[INDEX["start_c"]] = course.start_c
    return Expected(course, cup_of(course.setup, pours, trace), prior, theta)


def usual_cups(expected: Expected, count: int, seed: int = 1) -> Array:
    """Parameters of ``count`` cups drawn from what is known beforehand, shape (count, size)."""
    prior, layout = expected.prior, expected.cup.layout
    spread = np.where(prior.u < KNOWN, prior.u, 0.0)
    moves = np.random.default_rng(seed).standard_normal((count, layout.size)).clip(-UNUSUAL, UNUSUAL)
    thetas = expected.theta + moves * spread
    for name in SHARES:
        thetas[:, INDEX[name]] = thetas[:, INDEX[name]].clip(0.05, 0.95)
    cup_j_k = thetas[:, INDEX["cup_j_k"]]
    thetas[:, INDEX["cup_j_k"]] = np.where(spread[INDEX["cup_j_k"]] > 0.0, cup_j_k.clip(LEAST_CUP_J_K), cup_j_k)
    volumes = thetas[:, layout.volumes]
    thetas[:, layout.volumes] = volumes.clip(0.1 * expected.course.portion_cm3)
    return np.asarray(thetas)


def readings_c(expected: Expected, thetas: Array) -> Array:
    """Temperatures at the probe when the readings are taken, °C: (batch, size) parameters give (batch, count + 1)."""
    found = modes(expected.cup, thetas)
    since = expected.course.reading_s[:, None] - found.start
    decay = np.exp(found.rate * since[:, None])
    return np.asarray((decay * found.amplitude).sum(axis=1).T, dtype=np.float64)


def rise_at_end_point_c(expected: Expected) -> float:
    """How far the mixed cup stands above its start when just the end-point is reached, °C, loss before included."""
    cup, theta, course = expected.cup, expected.theta, expected.course
    portion = min(int(course.end_point_cm3 / course.portion_cm3), course.count - 1)
    poured = portion * course.portion_cm3
    part = course.end_point_cm3 - poured
    before_c, alkali_c = float(at_pours(cup, theta)[portion, 0]), float(theta[INDEX["alkali_c"]])
    before_j_k, after_j_k = capacity(cup, theta, np.array([poured, course.end_point_cm3])).tolist()
    slope = float(theta[INDEX["heat_slope_k"]])
    heat_j = course.heat_j_cm3 * part * (1.0 + slope * (before_c - cup.reference_c))
    end_c = (before_j_k * before_c + (after_j_k - before_j_k) * alkali_c + heat_j) / after_j_k
    return float(end_c - course.start_c)


def _sample_s(course: Course) -> Array:
    return np.arange(SAMPLE_S, float(course.reading_s[-1]), SAMPLE_S)
