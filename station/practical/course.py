"""Readings as points over the volume added: of each pass, their mean, and whether they go past a turn."""

from collections.abc import Iterable, Sequence
from itertools import pairwise
from typing import Final, NamedTuple, Protocol

from typing_extensions import TypedDict

LEAST_CHANGE_C: Final = 0.25
FLAT_SHARE: Final = 0.2
"""A course that changes by less than four steps of the probe has no turn; one is flat where it changes by less than
this share of its steepest part. Engineering judgement, no source: dilution alone leaves more than a quarter."""


class Point(NamedTuple):
    """A reading that goes into the lines: portion number (0: the start), total added in cm³, temperature in °C."""

    portion: int
    volume_cm3: float
    temperature_c: float


class Pass(Protocol):
    """One pass: which cup it was (they differ where a plan has several), and its points by portion number."""

    @property
    def cup(self) -> int:
        """The cup's number, from 1."""

    @property
    def points(self) -> Sequence[Point]:
        """What was read."""


class MeanPoint(TypedDict):
    """Readings of the same portion number together; `volume_cm3` is the mean of their totals, `count` how many.

    Where each repeat is one point of a single curve, `portion` is the number of the mixture and `temperature_c` a rise.
    """

    portion: int
    volume_cm3: float
    temperature_c: float
    count: int


def mean_of(points: Iterable[Point]) -> list[MeanPoint]:
    """Return the mean curve of points: those of the same number together, by number."""
    sums: dict[int, list[Point]] = {}
    for each in points:
        sums.setdefault(each.portion, []).append(each)
    return [
        {
            "portion": portion,
            "volume_cm3": sum(each.volume_cm3 for each in same) / len(same),
            "temperature_c": sum(each.temperature_c for each in same) / len(same),
            "count": len(same),
        }
        for portion, same in sorted(sums.items())
    ]


def turns(course: Sequence[tuple[float, float]]) -> bool:
    """Whether these (cm³, °C), by volume, pass a turn: a rise, a fall or a level stretch that gives way to another."""
    slopes = [
        (after_c - before_c) / (after_cm3 - before_cm3)
        for (before_cm3, before_c), (after_cm3, after_c) in pairwise(course)
        if after_cm3 > before_cm3
    ]
    temperatures = [temperature_c for _, temperature_c in course]
    if not slopes or max(temperatures) - min(temperatures) < LEAST_CHANGE_C:
        return False
    flat = FLAT_SHARE * max(abs(each) for each in slopes)
    return len({(each > flat) - (each < -flat) for each in slopes}) > 1


def by_volume(points: Iterable[Point]) -> list[tuple[float, float]]:
    """Return volume and temperature of each point, by volume."""
    return sorted((each.volume_cm3, each.temperature_c) for each in points)
