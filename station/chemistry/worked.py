"""A calculation that can be shown: every number keeps the line that made it, and its standard uncertainty.

Uncertainties follow the GUM (JCGM 100:2008), carried to first order with all correlations by the
``uncertainties`` library, which is loaded here and nowhere else: it brings numpy with it, so the sampling
process should not import this module before it has something to show.
"""

import math
from dataclasses import dataclass
from typing import Final, NamedTuple, TypeAlias

from uncertainties import ufloat
from uncertainties.core import AffineScalarFunc, nominal_value, std_dev

Number: TypeAlias = AffineScalarFunc | float
"""A number in a calculation: with its uncertainty, or exact."""


class Measured(NamedTuple):
    """A value with its standard uncertainty (0 when it is taken as exact)."""

    value: float
    u: float = 0.0


NOTHING: Final = Measured(0.0)
"""An exact zero: the heat capacity of a cup that is left out of the account."""


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a calculation.

    ``text``: what is worked out, in words. ``formula``: in symbols. ``working``: with the numbers put in.
    ``value``, ``u``, ``unit``: the result.
    """

    text: str
    formula: str
    working: str
    value: float
    u: float
    unit: str

    @property
    def answer(self) -> str:
        """The result as one would write it: ``"2887 ± 42 J"``."""
        return f"{show(self.value, self.u)} {self.unit}".rstrip()


class Sheet:
    """Collects steps while numbers that know their uncertainty pass through."""

    def __init__(self) -> None:
        self.steps: list[Step] = []

    def line(self, text: str, formula: str, working: str, result: Number, unit: str) -> Number:
        """Write one line down and hand its result on."""
        self.steps.append(Step(text, formula, working, *measured(result), unit))
        return result


def number(measured: Measured, name: str) -> Number:
    """Bring a measured value into a calculation; an exact one stays a plain float.

    Raises ``ValueError`` naming it when it is not finite or its uncertainty is negative.
    """
    if not (math.isfinite(measured.value) and math.isfinite(measured.u) and measured.u >= 0):
        raise ValueError(f"{name} must be a number with an uncertainty of 0 or more, not {tuple(measured)}")
    return ufloat(measured.value, measured.u) if measured.u > 0 else measured.value


def nominal(result: Number) -> float:
    """The value of a number without its uncertainty."""
    return float(nominal_value(result))


def measured(result: Number) -> Measured:
    """Take a result out of a calculation."""
    return Measured(nominal(result), float(std_dev(result)))


def show(value: float, u: float = 0.0) -> str:
    """Write a value to the second digit of its uncertainty, or to four figures when it has none."""
    if not u > 0:
        return f"{value:.4g}" if abs(value) < 1e4 else f"{value:.0f}"
    places = 1 - math.floor(math.log10(u))
    if places >= 0:
        return f"{value:.{places}f} ± {u:.{places}f}"
    return f"{round(value, places):.0f} ± {round(u, places):.0f}"


def put(result: Number) -> str:
    """Write a number as it goes into the next line: without its uncertainty, to the digits that matter."""
    return show(*measured(result)).split(" ± ")[0]
