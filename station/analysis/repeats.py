"""Repeats of one bench: the averaged readings, and the mean of their results with its uncertainty.

A repeat that a person set aside is left out by the caller; what looks anomalous here is flagged, not dropped.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import chdtrc

from station.analysis.lines.fit import Numbers, student_t
from station.analysis.lines.uncertainty import SchoolUncertainty, half_the_range
from station.analysis.pooling import OutlierTest, anomaly
from station.words import Message, say

NORMAL_95 = 1.959964
REFUTES = 0.05
OWN_DEGREES = 8  # a standard uncertainty that is itself known to 25 %


@dataclass(frozen=True, slots=True)
class MeanReading:
    """Mean of one portion's readings; `sd_c` is None for a single one; an anomaly's index is the repeat's."""

    portion: int
    volume_cm3: float
    temperature_c: float
    count: int
    sd_c: float | None
    anomaly: OutlierTest | None


@dataclass(frozen=True, slots=True)
class MeanOfRepeats:
    """Mean of the repeats' results, in their unit. `basis` says where `u` comes from; `sd` None for one."""

    mean: float
    u: float
    interval_95: tuple[float, float]
    basis: Message
    count: int
    sd: float | None
    school: SchoolUncertainty | None
    anomaly: OutlierTest | None


def mean_of_repeats(
    volume_cm3: Sequence[Numbers], temperature_c: Sequence[Numbers], step_c: float = 0.0
) -> tuple[MeanReading, ...]:
    """Point by point at the same portion: one list of volumes and of temperatures for each repeat.

    Item 0 is the start, item p portion p; a repeat may be shorter than others, and a reading that is missing
    or set aside is NaN. A portion without any reading is left out. `step_c` is the resolution, below which
    no anomaly is flagged. Raises ValueError where a repeat has not one temperature for each volume.
    """
    portions = max((len(volumes) for volumes in volume_cm3), default=0)
    volumes = _table(volume_cm3, portions)
    temperatures = _table(temperature_c, portions)
    if [len(v) for v in volume_cm3] != [len(t) for t in temperature_c]:
        raise ValueError("each repeat needs one temperature for each volume; write NaN for one that is missing")
    found = (_mean_reading(p, volumes[:, p], temperatures[:, p], step_c) for p in range(portions))
    return tuple(reading for reading in found if reading is not None)


def uneven(readings: Sequence[MeanReading]) -> bool:
    """Whether some portions lack a repeat: the mean curve may then step where one cup drops out."""
    return len({reading.count for reading in readings}) > 1


def summarise(
    values: Numbers, u_values: Numbers | None = None, u_common: float = 0.0, step: float = 0.0
) -> MeanOfRepeats:
    """Mean of k >= 1 results (end-points, enthalpies …) of repeats, shape (k,).

    u of the mean is the larger of two: the scatter of the repeats, s / √k, and the repeats' own u, √(Σu²) / k,
    when `u_values` are given; so a lucky agreement does not make it small. The interval takes Student's t for
    k - 1 where scatter is all there is, or where it refutes the repeats' own u (chi-squared, 5 %); else the own
    u counts as known to a quarter, 8 degrees of freedom more (JCGM 100:2008, G.4.2).
    `u_common` is shared by all repeats (one solution, one probe) and does not average out. Raises ValueError
    for no result, one that is not finite, or a single one without its u.
    """
    data = np.asarray(values, dtype=np.float64)
    if data.ndim != 1 or data.size == 0 or not np.isfinite(data).all():
        raise ValueError("a mean needs at least one result, and only numbers")
    count, mean = int(data.size), float(data.mean())
    sd = float(data.std(ddof=1)) if count > 1 else None
    own = _own(u_values, count)
    scatter = sd / math.sqrt(count) if sd is not None else None
    if scatter is None and own is None:
        raise ValueError("a single result needs its own standard uncertainty")
    by_scatter = own is None or (scatter is not None and scatter >= own)
    u = (scatter if by_scatter else own) or 0.0
    factor = student_t(_degrees(count, scatter, own)) if by_scatter else NORMAL_95
    half = math.hypot(factor * u, NORMAL_95 * u_common)
    return MeanOfRepeats(
        mean,
        math.hypot(u, u_common),
        (mean - half, mean + half),
        say("label-scatter-of-repeats" if by_scatter else "label-uncertainty-of-each"),
        count,
        sd,
        half_the_range(data.tolist()) if count > 1 and mean != 0 else None,
        anomaly(data, step=step),
    )


def _degrees(count: int, scatter: float | None, own: float | None) -> int:
    """Degrees of freedom of an interval that the scatter decides."""
    free = count - 1
    if own is None or scatter is None or own == 0.0 or chdtrc(free, free * (scatter / own) ** 2) < REFUTES:
        return free
    return free + OWN_DEGREES


def _own(u_values: Numbers | None, count: int) -> float | None:
    if u_values is None:
        return None
    u = np.asarray(u_values, dtype=np.float64)
    if u.shape != (count,) or not np.isfinite(u).all() or (u < 0).any():
        raise ValueError("each result needs one standard uncertainty, zero or more")
    return float(math.sqrt(float(u @ u)) / count)


def _table(lists: Sequence[Numbers], width: int) -> NDArray[np.float64]:
    table = np.full((len(lists), width), np.nan)
    for row, values in zip(table, lists, strict=True):
        row[: len(values)] = values
    return table


def _mean_reading(
    portion: int, volumes: NDArray[np.float64], temperatures: NDArray[np.float64], step_c: float
) -> MeanReading | None:
    present = np.flatnonzero(np.isfinite(volumes) & np.isfinite(temperatures))
    if not present.size:
        return None
    these = temperatures[present]
    flagged = anomaly(these, step=step_c)
    if flagged is not None:
        flagged = OutlierTest(
            flagged.test,
            flagged.alpha,
            int(present[flagged.index]),
            flagged.value,
            flagged.statistic,
            flagged.critical,
            flagged=True,
        )
    return MeanReading(
        portion,
        float(volumes[present].mean()),
        float(these.mean()),
        int(present.size),
        float(these.std(ddof=1)) if present.size > 1 else None,
        flagged,
    )
