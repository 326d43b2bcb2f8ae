"""What a practical will give, from its plan alone: the curve, and how well either method will know the end-point."""

from __future__ import annotations

from dataclasses import dataclass

from station.analysis.heat_inputs import Array
from station.analysis.predict_heat import HeatExpected, expected_heat_balance
from station.analysis.predict_lines import LinesExpected, expected_lines
from station.analysis.predict_model import Course, Expected, expect, readings_c, rise_at_end_point_c
from station.analysis.predict_thermometer import GLASS_TENTH, GLASS_WHOLE, PROBE, Thermometer

__all__ = [
    "GLASS_TENTH", "GLASS_WHOLE", "PROBE", "Course", "Curve", "Expected", "HeatExpected", "LinesExpected",
    "Thermometer", "arm_points", "expect", "expected_curve", "expected_heat_balance", "expected_lines",
]  # fmt: skip


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
