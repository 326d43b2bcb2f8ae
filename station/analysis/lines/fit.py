"""A straight line by (weighted) least squares, with what it says and how well it knows it.

Formulae: JCGM 100:2008 (GUM), H.3, in coordinates centred on the mean of x, which keeps the digits.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from typing import Literal

import numpy as np
from numpy.typing import NDArray
from scipy.special import stdtrit

from station.words import Message, say

Numbers = Sequence[float] | NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class LineFit:
    """The line y = intercept + slope · x through `count` points.

    `s` is the residual standard deviation (of weight one), `sse` the weighted sum of squares, `degrees` the
    degrees of freedom. Every u_ uses `s`; for two points, or where the errors are known, see `with_s`.
    """

    intercept: float
    slope: float
    s: float
    sse: float
    degrees: int
    count: int
    mean_x: float
    sum_weights: float
    sxx: float

    @property
    def u_slope(self) -> float:
        """Standard uncertainty of the slope, in y per x."""
        return self.s / math.sqrt(self.sxx)

    @property
    def u_intercept(self) -> float:
        """Standard uncertainty of the intercept, in the unit of y."""
        return self.u_at(0.0)

    @property
    def covariance(self) -> float:
        """Covariance of intercept and slope, in y² per x."""
        return -(self.s**2) * self.mean_x / self.sxx

    @property
    def correlation(self) -> float:
        """Correlation of intercept and slope, -1 … 1; it does not depend on `s`."""
        return -self.mean_x / math.sqrt(self.sxx / self.sum_weights + self.mean_x**2)

    def at(self, x: float) -> float:
        """Height of the line at x."""
        return self.intercept + self.slope * x

    def unit_variance_at(self, x: float) -> float:
        """Variance of the line's height at x for s = 1."""
        return 1.0 / self.sum_weights + (x - self.mean_x) ** 2 / self.sxx

    def u_at(self, x: float) -> float:
        """Standard uncertainty of the line's height at x, in the unit of y."""
        return self.s * math.sqrt(self.unit_variance_at(x))

    def with_s(self, s: float, degrees: int) -> "LineFit":
        """The same line with a standard deviation from elsewhere (pooled arms, s = 1 for known errors)."""
        return replace(self, s=s, degrees=degrees)


def fit_line(x: Numbers, y: Numbers, u_y: Numbers | None = None) -> LineFit:
    """Least squares line through points x, y of shape (n,), n >= 2; with `u_y`, weighted by 1 / u_y².

    Raises ValueError for fewer than two different x, a value that is not finite, or a u_y not positive.
    Source: GUM H.3 (unweighted); the weighted form is the textbook generalisation.
    """
    xs, ys = np.asarray(x, dtype=np.float64), np.asarray(y, dtype=np.float64)
    weights = np.ones_like(xs) if u_y is None else _weights(u_y, xs.shape)
    if xs.ndim != 1 or xs.shape != ys.shape:
        raise ValueError("a line needs as many x as y, each a plain list")
    if not (np.isfinite(xs).all() and np.isfinite(ys).all()):
        raise ValueError("a line cannot be drawn through a point that is not a number")
    sum_weights = float(weights.sum())
    mean_x = float(weights @ xs) / sum_weights if sum_weights else 0.0
    dx = xs - mean_x
    sxx = float(weights @ (dx * dx))
    if xs.size < 2 or np.ptp(xs) == 0.0 or sxx == 0.0:
        raise ValueError("a line needs points at two different x at least")
    mean_y = float(weights @ ys) / sum_weights
    slope = float(weights @ (dx * (ys - mean_y))) / sxx
    residual = (ys - mean_y) - slope * dx
    sse = float(weights @ (residual * residual))
    degrees = int(xs.size) - 2
    s = math.sqrt(sse / degrees) if degrees else math.nan
    return LineFit(mean_y - slope * mean_x, slope, s, sse, degrees, int(xs.size), mean_x, sum_weights, sxx)


def _weights(u_y: Numbers, shape: tuple[int, ...]) -> NDArray[np.float64]:
    u = np.asarray(u_y, dtype=np.float64)
    if u.shape != shape or not np.isfinite(u).all() or not (u > 0).all():
        raise ValueError("each point needs one positive standard uncertainty")
    return 1.0 / (u * u)


def predict_with_u(line: LineFit, x: float) -> tuple[float, float]:
    """Height of the line at x and its standard uncertainty (of the line, not of one more reading)."""
    return line.at(x), line.u_at(x)


def student_t(degrees: float, level: float = 0.95) -> float:
    """Factor that a two-sided interval of that level needs, by Student's t."""
    return float(stdtrit(degrees, 0.5 + level / 2))


def read_back(
    line: LineFit, y: float, level: float = 0.95, new_observation: bool = False
) -> tuple[float, tuple[float, float] | None]:
    """x at which the line reaches y, and its interval by Fieller's theorem (None where it has no ends).

    With `new_observation`, y is one more reading with the scatter of the others; else it is exact.
    Source: F. A. Graybill and H. K. Iyer, *Regression Analysis*, 1994, chapter 6.
    """
    if line.slope == 0.0:
        raise ValueError("a level line reaches y nowhere or everywhere")
    offset = (y - line.at(line.mean_x)) / line.slope
    ts2 = (student_t(line.degrees, level) * line.s) ** 2
    a = line.slope**2 - ts2 / line.sxx
    if a <= 0:
        return line.mean_x + offset, None
    extra = 1 / line.sum_weights + (1.0 if new_observation else 0.0)
    root = math.sqrt(ts2 * (a * extra + (line.slope * offset) ** 2 / line.sxx))
    middle = line.mean_x + line.slope**2 * offset / a
    return line.mean_x + offset, (middle - root / a, middle + root / a)


# Where two independent straight lines cross, and how well that is known (Fieller).
#
# With lines 1 and 2, the crossing is x = (a1 - a2) / (b2 - b1): a ratio of two normal quantities. Its interval
# follows from Fieller's theorem (E. C. Fieller, J. R. Statist. Soc. B 16, 175, 1954) and is not symmetric.


RefusedKind = Literal["not_numbers", "too_few", "no_bend", "unbounded", "outside_gap"]


class LinesRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """Straight lines give no end-point here; `reason` says why, to a student; `kind` says it to a program."""

    def __init__(self, kind: RefusedKind, reason: Message) -> None:
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
        raise LinesRefused("too_few", say("lines-two-points"))
    bend = after.slope - before.slope
    if bend == 0.0:
        raise LinesRefused("no_bend", say("lines-parallel"))
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
