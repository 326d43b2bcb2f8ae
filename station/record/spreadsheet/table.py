"""The table that a spreadsheet opens with, as a school draws it up: volume, each run, their mean; and its chart.

The two straight lines of the chart are those that the results have, once they may be seen; before that the students'
own, where they drew some.
"""

from collections.abc import Iterator, Mapping, Sequence
from typing import Any

from station.practical.course import mean_of
from station.practical.kinds.kind import Table, kind_of
from station.practical.state import Portion, Repeat, State
from station.record.spreadsheet.file import Cell, Chart, Row, Series, Sheet
from station.words import Message, plain, say

Json = Mapping[str, Any]

Point = tuple[float, float]
"""Volume in cm³, temperature in °C."""

OVERSHOOT = 0.06
"""How far a line goes on past the crossing, as a share of the volume axis."""


def table_columns(state: State) -> list[str]:
    """Return the header of the same table as a CSV."""
    own = _own_table(state)
    if own is not None:
        return [name for name, _ in own.columns]
    return [
        "volume_cm3",
        *(f"repeat_{each.repeat}_c" for each in state.counted),
        *(["mean_c"] if state.counted else []),
    ]


def table_rows(state: State) -> list[list[float | None]]:
    """Return a row for each portion: total volume added in cm³, each repeat's temperature in °C, their mean.

    The volume is that of the mean, else of the first repeat that got so far. Repeats set aside have no column.
    Some kinds of practical have a table of their own.
    """
    own = _own_table(state)
    if own is not None:
        return [list(row) for row in own.rows]
    means = {each["portion"]: each for each in mean_of(point for each in state.counted for point in each.points)}
    read = [_temperatures(each) for each in state.counted]
    rows: list[list[float | None]] = []
    for portion in _numbers(state):
        mean = means.get(portion)
        first = next((each for each, has in zip(state.counted, read, strict=True) if portion in has), None)
        volume_cm3 = mean["volume_cm3"] if mean else first.added_cm3(portion) if first else None
        rows.append([volume_cm3, *(each.get(portion) for each in read), mean["temperature_c"] if mean else None])
    return rows


def _own_table(state: State) -> Table | None:
    table = kind_of(state.plan).table
    return None if table is None else table(state.plan, state)


def _numbers(state: State) -> list[int]:
    """The portions of which there is a reading, from the least."""
    return sorted({portion for each in state.counted for portion in _temperatures(each)})


def table_weighed(state: State) -> dict[int, list[Portion | None]]:
    """Return for each repeat, row by row of the table, the portion that a balance told of; empty where none did."""
    told = {
        each.repeat: {one.portion: one for one in each.portions if one.mass_g is not None} for each in state.counted
    }
    if not any(told.values()):
        return {}
    return {repeat: [masses.get(portion) for portion in _numbers(state)] for repeat, masses in told.items()}


def _temperatures(repeat: Repeat) -> dict[int, float]:
    return {each.portion: each.temperature_c for each in repeat.readings if each.temperature_c is not None}


def table_sheet(state: State, result: Json | None) -> Sheet:
    """Return the sheet; `result` is None as long as it is not to be seen."""
    own, rows = _own_table(state), table_rows(state)
    if own is not None:
        columns, up = [(title, 14.0) for _, title in own.columns], own.up
    else:
        runs = [(say("sheet-run-temperature", repeat=each.repeat), 12.0) for each in state.counted]
        columns, up = [(say("sheet-volume-added"), 14.0), *runs, (say("sheet-mean-temperature"), 12.0)], len(runs) + 1
    if not rows or not state.plan.has_turn:
        weighed = table_weighed(state)
        columns += [(say("sheet-run-mass", repeat=repeat), 12.0) for repeat in weighed]
        masses = [[None if one is None else one.mass_g for one in each] for each in weighed.values()]
        return Sheet(
            say("sheet-table"), columns, [[*row, *(each[at] for each in masses)] for at, row in enumerate(rows)]
        )
    lines = list(_lines(state, result, [each[0] or 0.0 for each in rows]))
    width, title = len(columns), columns[up][0]
    # The lines' ends stand to the right of the table, below one another.
    beside = width + 1
    columns += [(plain(""), 3.0), (say("sheet-line"), 14.0), (columns[0][0], 14.0)]
    columns.append((say("sheet-line-temperature") if own is None else title, 14.0))
    ends = [(name, *end) for name, both in lines for end in both]
    last = len(rows)
    series = [Series(title, (1, 0, last), (1, up, last), marks=True)] if state.counted else []
    series += [
        Series(name, (1 + 2 * number, beside + 1, 2 + 2 * number), (1 + 2 * number, beside + 2, 2 + 2 * number))
        for number, (name, _) in enumerate(lines)
    ]
    drawn = rows if own is None else [[row[0], row[up]] for row in rows]
    least_c = min((value for row in drawn for value in row[1:] if value is not None), default=None)
    chart = Chart(columns[0][0], say("sheet-temperature") if own is None else title, series, least_c)
    return Sheet(say("sheet-table"), columns, list(_beside(rows, ends, width)), chart)


def _beside(rows: Sequence[Row], ends: Sequence[Row], width: int) -> Iterator[Row]:
    for number in range(max(len(rows), len(ends))):
        row: list[Cell] = list(rows[number]) if number < len(rows) else [None] * width
        yield [*row, None, *(ends[number] if number < len(ends) else ())]


def _lines(state: State, result: Json | None, volumes_cm3: Sequence[float]) -> Iterator[tuple[Message, list[Point]]]:
    """Both lines, each from its end of the table's volumes to a little past where they cross; none if they do not."""
    names = say("sheet-line-before"), say("sheet-line-after")
    crossing, own = (result or {}).get("straight_lines"), state.own_reading
    if crossing:
        both = [crossing["before"], crossing["after"]]
    elif own is not None and own.before is not None and own.after is not None:
        both = [own.before, own.after]
    else:
        return
    apart_c_cm3 = both[0]["slope_c_cm3"] - both[1]["slope_c_cm3"]
    if apart_c_cm3 == 0.0:
        return
    meet_cm3 = (both[1]["intercept_c"] - both[0]["intercept_c"]) / apart_c_cm3
    over_cm3 = OVERSHOOT * volumes_cm3[-1]
    stretches = (volumes_cm3[0], meet_cm3 + over_cm3), (meet_cm3 - over_cm3, volumes_cm3[-1])
    for name, line, stretch in zip(names, both, stretches, strict=True):
        yield name, [(cm3, line["intercept_c"] + line["slope_c_cm3"] * cm3) for cm3 in stretch]
