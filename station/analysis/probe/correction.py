"""What has to be added to what a probe says, and how well that is known: a line, or an offset alone.

No numpy: the daemon uses it at every sample. A line is the example H.3 of the GUM (JCGM 100:2008): least squares
of the corrections b = y1 + y2 (t − t0), with the covariance of intercept and slope.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import cos, hypot, inf, pi, sqrt, tan
from statistics import NormalDist

from station.words import Message, say

LEAST_POINTS = 3
LEAST_SPAN_C = 4.0
"""A line wants points this far apart: nearer, scatter alone makes a slope (the example of the GUM spans 5 °C)."""

U_ELSEWHERE = 0.004
"""Standard uncertainty in °C per °C of how an offset alone changes away from where it was found: an estimate of ours
(0.1 °C over 25 °C; the data sheet's typical curve of a DS18B20 moves by about as much, from memory)."""

UNCHECKED_C = 0.5 / sqrt(3.0)
"""Standard uncertainty of a temperature by a probe that was never checked: ±0.5 °C from −10 to 85 °C (Maxim DS18B20
data sheet) as a rectangular limit (GUM 4.3.7)."""


PANELS, MANY = 2000, 300.0


class CorrectionRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """No line from these points; `reason` says what is missing."""

    def __init__(self, reason: Message) -> None:
        super().__init__(reason)
        self.reason = reason


@dataclass(frozen=True)
class Correction:
    """correction(t) = `offset_c` + `slope` (t − `at_c`), to be added to a probe's t in °C.

    `u_offset_c` and `u_slope` are standard uncertainties, `r` their correlation, `u_reference_c` what the reference
    leaves open in common to all points. An offset alone has `slope` 0 and `u_slope` as in U_ELSEWHERE.
    `s_c` and `freedom` are the scatter about a line and its degrees of freedom (0: no scatter is known). `u_each_c` is
    what each point by itself leaves open beforehand: the line's u are never smaller than that makes them.
    """

    at_c: float
    offset_c: float
    slope: float
    u_offset_c: float
    u_slope: float
    r: float = 0.0
    u_reference_c: float = 0.0
    s_c: float = 0.0
    freedom: int = 0
    u_each_c: float = 0.0

    def of(self, probe_c: float) -> float:
        """Return the correction in °C at what the probe says."""
        return self.offset_c + self.slope * (probe_c - self.at_c)

    def u_of(self, probe_c: float) -> float:
        """Return its standard uncertainty in °C (GUM equation H.15, and the reference's own)."""
        away_c = probe_c - self.at_c
        line = self.u_offset_c**2 + (away_c * self.u_slope) ** 2
        line += 2.0 * away_c * self.u_offset_c * self.u_slope * self.r
        return hypot(sqrt(max(line, 0.0)), self.u_reference_c)

    def factor_95(self) -> float:
        """Return what `u_offset_c` and `u_slope` are multiplied by for a 95 % interval.

        Student's t for the effective degrees of freedom (GUM G.4): only what the points scatter beyond `u_each_c`
        is known from them alone.
        """
        beyond = self.s_c**2 - self.u_each_c**2
        return student_95(self.freedom * (self.s_c**2 / beyond) ** 2 if beyond > 0.0 else inf)


def offset_alone(probe_c: float, u_probe_c: float, known_c: float, u_known_c: float) -> Correction:
    """Return the correction from one known temperature."""
    return Correction(probe_c, known_c - probe_c, 0.0, u_probe_c, U_ELSEWHERE, 0.0, u_known_c)


def line_of(
    probe_c: Sequence[float],
    known_c: Sequence[float],
    u_known_c: float,
    t0_c: float | None = None,
    u_each_c: float = 0.0,
) -> Correction:
    """Return the line through three or more comparisons, about `t0_c` (default: their mean).

    `u_known_c` is what the reference may be wrong by in all of them alike, `u_each_c` what each comparison is unsure by
    on its own (type B): three points may lie on a line by chance, so less scatter than that counts as that. Raises
    CorrectionRefused.
    """
    n = len(probe_c)
    if n < LEAST_POINTS:
        raise CorrectionRefused(say("probe-few-comparisons", least=LEAST_POINTS, count=n))
    if max(probe_c) - min(probe_c) < LEAST_SPAN_C:
        raise CorrectionRefused(say("probe-too-near", least_c=f"{LEAST_SPAN_C:.0f}"))
    t0_c = sum(probe_c) / n if t0_c is None else t0_c
    x = [each - t0_c for each in probe_c]
    b = [known - probe for known, probe in zip(known_c, probe_c, strict=True)]
    sum_x, sum_b = sum(x), sum(b)
    sum_xx, sum_xb = sum(each**2 for each in x), sum(p * q for p, q in zip(x, b, strict=True))
    d = n * sum_xx - sum_x**2
    y1 = (sum_b * sum_xx - sum_xb * sum_x) / d
    y2 = (n * sum_xb - sum_b * sum_x) / d
    squares = sum((q - y1 - y2 * p) ** 2 for p, q in zip(x, b, strict=True))
    s = sqrt(squares / (n - 2))
    r, u = -sum_x / sqrt(n * sum_xx), max(s, u_each_c)
    return Correction(t0_c, y1, y2, u * sqrt(sum_xx / d), u * sqrt(n / d), r, u_known_c, s, n - 2, u_each_c)


def through_two(low: Correction, high: Correction) -> Correction:
    """Return the line through two offsets, such as those at the ice point and at the boiling point.

    Raises CorrectionRefused when they are too near.
    """
    span_c = high.at_c - low.at_c
    if span_c < LEAST_SPAN_C:
        raise CorrectionRefused(say("probe-too-near", least_c=f"{LEAST_SPAN_C:.0f}"))
    u_low, u_high = (hypot(each.u_offset_c, each.u_reference_c) for each in (low, high))
    slope, u_slope = (high.offset_c - low.offset_c) / span_c, hypot(u_low, u_high) / span_c
    # About the low point: its own error raises the one end and turns the line the other way.
    r = -u_low / (span_c * u_slope) if u_slope else 0.0
    return Correction(low.at_c, low.offset_c, slope, u_low, u_slope, r)


def student_95(degrees: float) -> float:
    """Return the factor of a 95 % interval by Student's t, for one degree of freedom or more, within 0.1 %.

    With t = √ν tan θ the density is cos^(ν − 1) θ: a sum over a quarter turn. For many degrees the first term of the
    series in 1/ν (M. Abramowitz and I. A. Stegun, *Handbook of Mathematical Functions*, 26.7.5; from memory).
    """
    if degrees > MANY:
        z = NormalDist().inv_cdf(0.975)
        return z + (z**3 + z) / (4.0 * degrees)
    width = pi / 2.0 / PANELS
    heights = [cos((k + 0.5) * width) ** (degrees - 1.0) for k in range(PANELS)]
    left, k = 0.95 * sum(heights), 0
    while left > heights[k]:
        left, k = left - heights[k], k + 1
    return sqrt(degrees) * tan((k + left / heights[k]) * width)
