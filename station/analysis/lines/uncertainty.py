"""How far the straight lines through raw temperatures miss the end-point, in an ideal cup.

Each portion warms a larger volume, so the first arm is curved although every cm³ gives the same heat:
T(V) - T0 = (heat · min(V, Ve) + c_alkali · V · (T_alkali - T0)) / (C_cup + c_acid · V_acid + c_alkali · V).
Nothing is lost to the room and nothing scatters here; what is left is the bias of the method itself.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import Numbers, cross, fit_line
from station.words import Message, say

# The school's own conventions for an uncertainty, to stand beside u and the 95 % interval, named as such.
#
# They are common practice in secondary schools, without a source, and are no standard uncertainties.


@dataclass(frozen=True, slots=True)
class SchoolUncertainty:
    """± `plus_minus` (in the unit of the value) by a named convention, and as a percentage of the value."""

    convention: Message
    plus_minus: float
    percent: float


def percentage_uncertainty(plus_minus: float, value: float) -> float:
    """100 · ± / value, in %. Raises ValueError for a value of zero."""
    if value == 0:
        raise ValueError("a percentage uncertainty of zero is not defined")
    return abs(100.0 * plus_minus / value)


def half_a_division(value: float, division: float) -> SchoolUncertainty:
    """A single reading of a scale or display: half its smallest division. Raises ValueError unless > 0."""
    return _by(say("school-half-division"), division / 2, value, division)


def one_division(value: float, division: float) -> SchoolUncertainty:
    """A difference of two readings (a temperature rise, a titre): two halves of a division."""
    return _by(say("school-one-division"), division, value, division)


def half_the_range(values: Sequence[float]) -> SchoolUncertainty:
    """The mean of repeats: half of highest minus lowest. Raises ValueError for fewer than two values."""
    if len(values) < 2:
        raise ValueError("half the range needs two repeats at least")
    half = (max(values) - min(values)) / 2
    return SchoolUncertainty(say("school-half-range"), half, percentage_uncertainty(half, sum(values) / len(values)))


def _by(convention: Message, plus_minus: float, value: float, division: float) -> SchoolUncertainty:
    if not division > 0:
        raise ValueError("the smallest division must be a positive number")
    return SchoolUncertainty(convention, plus_minus, percentage_uncertainty(plus_minus, value))


Arms = tuple[Sequence[int], Sequence[int]]
STEPS = 24


@dataclass(frozen=True, slots=True)
class IdealCup:
    """A cup without loss: acid in cm³, heat capacities in J/(cm³ K), of cup and probe in J/K.

    `heat_j_cm3` is the heat each cm³ of alkali gives out up to the end-point (negative: takes in). Its size
    does not matter for the bias when the alkali starts as warm as the acid (`alkali_above_acid_c` = 0).
    """

    acid_cm3: float
    acid_j_cm3_k: float
    alkali_j_cm3_k: float
    cup_j_k: float
    heat_j_cm3: float = 1.0
    alkali_above_acid_c: float = 0.0

    def rise_c(self, volume_cm3: Numbers, end_point_cm3: float) -> NDArray[np.float64]:
        """Temperature above the start in °C after volumes (n,) of alkali, shape (n,)."""
        volume = np.asarray(volume_cm3, dtype=np.float64)
        heat_j = self.heat_j_cm3 * np.minimum(volume, end_point_cm3)
        brought_j = self.alkali_j_cm3_k * volume * self.alkali_above_acid_c
        start_j_k = self.cup_j_k + self.acid_j_cm3_k * self.acid_cm3
        rise: NDArray[np.float64] = (heat_j + brought_j) / (start_j_k + self.alkali_j_cm3_k * volume)
        return rise


def predicted_bias_cm3(volume_cm3: Numbers, end_point_cm3: float, cup: IdealCup, arms: Arms | None = None) -> float:
    """Crossing minus true end-point in cm³ for readings at volumes (n,) in an ideal cup; mostly negative.

    With `arms` (indices of the readings before and after, as a fit returned them) for that split, else for
    the split that the rule makes of the ideal readings. Raises LinesRefused where those give no crossing.
    """
    volume = np.asarray(volume_cm3, dtype=np.float64)
    rise = cup.rise_c(volume, end_point_cm3)
    if arms is None:
        return fit_lines(volume, rise).end_point_cm3 - end_point_cm3
    first, last = (fit_line(volume[list(arm)], rise[list(arm)]) for arm in arms)
    return cross(first, last).x - end_point_cm3


def end_point_behind_cm3(crossing_cm3: float, volume_cm3: Numbers, cup: IdealCup, arms: Arms) -> float | None:
    """End-point whose ideal readings, split into these arms, cross at `crossing_cm3`.

    For readings without a heat balance. The first one between the last but one reading before the turn and
    the last reading of all, to 1e-6 cm³; None where there is none.
    """
    volume = np.asarray(volume_cm3, dtype=np.float64)
    low, last = float(np.sort(volume[list(arms[0])])[-2]), float(volume[list(arms[1])].max())

    def miss(end_point: float) -> float:
        return end_point + predicted_bias_cm3(volume, end_point, cup, arms) - crossing_cm3

    # Past the third reading after the turn the crossing no longer rises with the end-point: search stepwise.
    for high in np.linspace(low, last, STEPS + 1)[1:].tolist():
        if miss(low) <= 0 <= miss(high):
            return _bisect(miss, low, high)
        low = high
    return None


def _bisect(miss: Callable[[float], float], low: float, high: float) -> float:
    while high - low > 1e-6:
        middle = (low + high) / 2
        low, high = (middle, high) if miss(middle) <= 0 else (low, middle)
    return (low + high) / 2
