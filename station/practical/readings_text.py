"""Readings by hand, or those of another bench, from the text of a readings CSV. Knows no file."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from statistics import median

from station.practical.csv_cells import CellError, Row, by_repeat, csv_rows, expect
from station.practical.dataset import ReadingRow, RepeatData

READINGS_HEADER = ("repeat", "volume_cm3", "temperature_c")
LOWEST_C, HIGHEST_C = -55.0, 125.0
LARGEST_CM3, LEAST_CM3 = 1000.0, 1e-6


def readings_from_text(text: str) -> list[RepeatData]:
    """Return the repeats of a readings CSV (header `repeat,volume_cm3,temperature_c`, volume: the total added).

    Raises CellError, a ValueError of one line that names line and column.
    """
    header, rows = csv_rows(text, READINGS_HEADER)
    if "time_s" in header:
        raise CellError(1, "time_s", "this is a record of samples; choose the readings of the other bench")
    expect(header, READINGS_HEADER)
    return readings_of(by_repeat(rows))


def readings_of(rows: Mapping[int, Sequence[Row]]) -> list[RepeatData]:
    """Return the readings of each repeat's rows. Raises CellError."""
    return numbered({repeat: _points(each) for repeat, each in rows.items()})


def numbered(points: Mapping[int, Sequence[tuple[float, float]]]) -> list[RepeatData]:
    """Return the readings of each repeat from its totals added in cm³, rising, and temperatures in °C.

    Nothing here says portion numbers. Readings of about the same total get the same number in all repeats, so that
    a mean never mixes different portions where one repeat lacks a reading.
    """
    steps = [after - before for each in points.values() for (before, _), (after, _) in pairwise(each)]
    step_cm3 = max(median(steps), LEAST_CM3) if steps else 1.0
    numbers = {repeat: _numbers((volume for volume, _ in each), step_cm3) for repeat, each in points.items()}
    used = sorted({number for each in numbers.values() for number in each})
    first = 0 if used[0] == 0 else 1
    portion = {number: first + rank for rank, number in enumerate(used)}
    return [
        RepeatData(
            repeat,
            tuple(ReadingRow(portion[number], *point) for number, point in zip(numbers[repeat], each, strict=True)),
        )
        for repeat, each in points.items()
    ]


def _points(rows: Sequence[Row]) -> list[tuple[float, float]]:
    points: list[tuple[float, float]] = []
    for row in rows:
        volume_cm3 = row.number("volume_cm3", 0, LARGEST_CM3)
        temperature_c = row.number("temperature_c", LOWEST_C, HIGHEST_C)
        if points and volume_cm3 <= points[-1][0]:
            raise row.wrong("volume_cm3", f"{volume_cm3:g} is not above the row before; it is the total added")
        points.append((volume_cm3, temperature_c))
    return points


def _numbers(volumes_cm3: Iterable[float], step_cm3: float) -> list[int]:
    """Count portions of the usual size, 0 where nothing is in the cup: gaps stay, small errors do not add up."""
    numbers: list[int] = []
    before_cm3 = 0.0
    for volume_cm3 in volumes_cm3:
        portions = max(1, round((volume_cm3 - before_cm3) / step_cm3)) if volume_cm3 > 0.0 else 0
        numbers.append((numbers[-1] if numbers else 0) + portions)
        before_cm3 = volume_cm3
    return numbers
