"""The mean curve of a practical: readings of the same portion number over the repeats."""

from collections.abc import Sequence

from station.practical.dataset import ReadingRow, RepeatData


def mean_rows(repeats: Sequence[RepeatData]) -> tuple[ReadingRow, ...]:
    """Return the mean curve over the repeats: readings of the same portion number together."""
    rows: dict[int, list[ReadingRow]] = {}
    for repeat in repeats:
        for row in repeat.readings:
            rows.setdefault(row.portion, []).append(row)
    return tuple(
        ReadingRow(
            portion,
            sum(row.volume_cm3 for row in same) / len(same),
            sum(row.temperature_c for row in same) / len(same),
        )
        for portion, same in sorted(rows.items())
    )
