"""The school's own conventions for an uncertainty, to stand beside u and the 95 % interval, named as such.

They are common practice in secondary schools, without a source, and are no standard uncertainties.
"""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

Convention = Literal["half a division", "one division", "half the range"]


@dataclass(frozen=True, slots=True)
class SchoolUncertainty:
    """± `plus_minus` (in the unit of the value) by a named convention, and as a percentage of the value."""

    convention: Convention
    plus_minus: float
    percent: float


def percentage_uncertainty(plus_minus: float, value: float) -> float:
    """100 · ± / value, in %. Raises ValueError for a value of zero."""
    if value == 0:
        raise ValueError("a percentage uncertainty of zero is not defined")
    return abs(100.0 * plus_minus / value)


def half_a_division(value: float, division: float) -> SchoolUncertainty:
    """A single reading of a scale or display: half its smallest division. Raises ValueError unless > 0."""
    return _by("half a division", division / 2, value, division)


def one_division(value: float, division: float) -> SchoolUncertainty:
    """A difference of two readings (a temperature rise, a titre): two halves of a division."""
    return _by("one division", division, value, division)


def half_the_range(values: Sequence[float]) -> SchoolUncertainty:
    """The mean of repeats: half of highest minus lowest. Raises ValueError for fewer than two values."""
    if len(values) < 2:
        raise ValueError("half the range needs two repeats at least")
    half = (max(values) - min(values)) / 2
    return SchoolUncertainty("half the range", half, percentage_uncertainty(half, sum(values) / len(values)))


def _by(convention: Convention, plus_minus: float, value: float, division: float) -> SchoolUncertainty:
    if not division > 0:
        raise ValueError("the smallest division must be a positive number")
    return SchoolUncertainty(convention, plus_minus, percentage_uncertainty(plus_minus, value))
