"""What straight lines say: the two arms, where they cross, and the refusals that follow from the lines."""

from dataclasses import dataclass

from station.analysis.lines_cross import Crossing, LinesRefused, cross
from station.analysis.lines_fit import LineFit, fit_line
from station.analysis.lines_split import Floats

SCATTER_ONLY = "scatter only"


@dataclass(frozen=True, slots=True)
class Arm:
    """One line of best fit: temperature = intercept_c + slope_c_cm3 · volume; `points` index the input."""

    slope_c_cm3: float
    u_slope_c_cm3: float
    intercept_c: float
    u_intercept_c: float
    points: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CrossingResult:
    """End-point by straight lines; u_ and the interval (Fieller) are of the scatter about them only.

    `left_out` holds the index of a reading at the top that belongs to neither arm (or nothing); `s_c` is the
    pooled standard deviation of the readings about the lines, with `degrees` = n1 + n2 - 4; `g` is Fieller's
    (below 1, else there is no interval); `rule` says how the readings were split.
    """

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]
    temperature_c: float
    u_temperature_c: float
    before: Arm
    after: Arm
    left_out: tuple[int, ...]
    s_c: float
    degrees: int
    g: float
    rule: str
    label: str = SCATTER_ONLY

    @property
    def rises_first(self) -> bool:
        """True where heat is given out (up, then down), False where it is taken in."""
        return self.before.slope_c_cm3 > 0


def draw(
    volumes: Floats,
    temperatures: Floats,
    before: tuple[int, ...],
    after: tuple[int, ...],
    left_out: tuple[int, ...],
    rule: str,
) -> CrossingResult:
    """Lines of best fit through the readings (indices) on each arm, crossed. Raises LinesRefused."""
    first = fit_line(volumes[list(before)], temperatures[list(before)])
    last = fit_line(volumes[list(after)], temperatures[list(after)])
    crossing, interval = _accepted(first, last)
    return CrossingResult(
        end_point_cm3=crossing.x,
        u_end_point_cm3=crossing.u_x,
        interval_95_cm3=interval,
        temperature_c=crossing.y,
        u_temperature_c=crossing.u_y,
        before=_arm(first, crossing, before),
        after=_arm(last, crossing, after),
        left_out=left_out,
        s_c=crossing.s,
        degrees=crossing.degrees,
        g=crossing.g,
        rule=rule,
    )


def _accepted(first: LineFit, last: LineFit) -> tuple[Crossing, tuple[float, float]]:
    crossing = cross(first, last)
    if first.slope * last.slope >= 0:
        raise LinesRefused(
            "no_bend", "Both lines of best fit go the same way, so there is no turn to find an end-point from."
        )
    if crossing.interval is None:
        raise LinesRefused(
            "unbounded", "The readings scatter too much to say where the lines cross: the ± would have no limit."
        )
    return crossing, crossing.interval


def _arm(line: LineFit, crossing: Crossing, points: tuple[int, ...]) -> Arm:
    pooled = line.with_s(crossing.s, crossing.degrees)
    return Arm(line.slope, pooled.u_slope, line.intercept, pooled.u_intercept, points)
