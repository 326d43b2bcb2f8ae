"""Where two independent straight lines cross, and how well that is known (Fieller).

With lines 1 and 2, the crossing is x = (a1 - a2) / (b2 - b1): a ratio of two normal quantities. Its interval
follows from Fieller's theorem (E. C. Fieller, J. R. Statist. Soc. B 16, 175, 1954) and is not symmetric.
"""

import math
from dataclasses import dataclass
from typing import Literal

from station.analysis.lines_fit import LineFit, student_t

RefusedKind = Literal["not_numbers", "too_few", "no_bend", "unbounded", "outside_gap"]


class LinesRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """Straight lines give no end-point here; `reason` says why, to a student; `kind` says it to a program."""

    def __init__(self, kind: RefusedKind, reason: str) -> None:
        super().__init__(reason)
        self.kind = kind
        self.reason = reason


@dataclass(frozen=True, slots=True)
class Crossing:
    """The crossing (x, y) of two lines, with standard uncertainties, and the Fieller interval of x.

    `g` is Fieller's: at 1 or more the data do not show that the slopes differ, and the interval has no end
    (`interval` is None then). `s` is the pooled residual standard deviation with `degrees` n1 + n2 - 4.
    """

    x: float
    u_x: float
    y: float
    u_y: float
    interval: tuple[float, float] | None
    g: float
    s: float
    degrees: int


def cross(before: LineFit, after: LineFit, level: float = 0.95) -> Crossing:
    """Cross two lines fitted to different points, with their scatter pooled.

    Raises LinesRefused: "no_bend" for parallel lines, "too_few" when no point is left for the scatter.
    """
    degrees = before.degrees + after.degrees
    if degrees < 1:
        raise LinesRefused("too_few", "Two points always lie on a line: the scatter needs at least three.")
    bend = after.slope - before.slope
    if bend == 0.0:
        raise LinesRefused("no_bend", "The two lines are parallel: they do not cross.")
    s = math.sqrt((before.sse + after.sse) / degrees)
    # Seen from the middle between the arms the numbers are small and the digits stay.
    origin = (before.mean_x + after.mean_x) / 2
    x = origin + (before.at(origin) - after.at(origin)) / bend
    v_before, v_after = before.unit_variance_at(x), after.unit_variance_at(x)
    u_x = s * math.sqrt(v_before + v_after) / abs(bend)
    u_y = s * math.hypot(after.slope * math.sqrt(v_before), before.slope * math.sqrt(v_after)) / abs(bend)
    g = (student_t(degrees, level) * s / bend) ** 2 * (1 / before.sxx + 1 / after.sxx)
    interval = None if g >= 1 else _fieller(before, after, x, s * student_t(degrees, level))
    return Crossing(x, u_x, before.at(x), u_y, interval, g, s, degrees)


def _fieller(before: LineFit, after: LineFit, x: float, ts: float) -> tuple[float, float]:
    """Ends of {x + d : (bend · d)² <= ts² · unit variance of the lines' distance at x + d}."""
    bend = after.slope - before.slope
    squared = 1 / before.sxx + 1 / after.sxx
    linear = (x - before.mean_x) / before.sxx + (x - after.mean_x) / after.sxx
    constant = before.unit_variance_at(x) + after.unit_variance_at(x)
    a = bend**2 - ts**2 * squared
    b = ts**2 * linear
    root = math.sqrt(b * b + a * ts**2 * constant)
    return x + (b - root) / a, x + (b + root) / a
