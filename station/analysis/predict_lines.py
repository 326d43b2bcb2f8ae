"""What straight lines will make of a course: their bias and their scatter, by drawing readings.

The crossing is not a smooth function of the readings (the rule that splits them jumps), so it is drawn rather
than propagated: usual cups, portions and readings with their errors, a fixed seed, the very method the bench uses.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.lines import LinesRefused, fit_lines
from station.analysis.predict_model import Expected, readings_c, usual_cups
from station.analysis.predict_thermometer import Thermometer

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
