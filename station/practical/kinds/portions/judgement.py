"""Own judgement looked back upon: when the students read, when the station would have, and what the difference cost.

The record is run through the live procedure once more, with the students' own pours; where the station's reading had
not come before the next pour there is none, and nothing is made up in its place.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from statistics import median
from typing import Any, Final

from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused
from station.practical import events as e
from station.practical.dataset import ReadingRow, RepeatData, mean_rows
from station.practical.kinds.portions.plan import WAIT_S, PortionsPlan
from station.practical.replay import replay
from station.words import Message, say

Json = dict[str, Any]

MARGIN_S: Final = 3.0
"""Seconds by which two moments count as the same: the samples come about one a second, and a hand takes its time."""


@dataclass(frozen=True)
class Moment:
    """One portion (0: the start): seconds from the press, temperature, by the students and by the station.

    `left_s` is how long the portion was in the cup before the next pour or the repeat's last reading.
    """

    repeat: int
    portion: int
    own_s: float | None
    own_c: float | None
    station_s: float | None
    station_c: float | None
    left_s: float

    @property
    def early(self) -> bool:
        """Read before the station would have."""
        return self.own_s is not None and (self.station_s is None or self.own_s < self.station_s - MARGIN_S)

    @property
    def error_c(self) -> float | None:
        """Own temperature less the station's, °C; None where one is missing."""
        return None if self.own_c is None or self.station_c is None else self.own_c - self.station_c

    @property
    def beyond_s(self) -> float:
        """Seconds waited beyond the station's moment."""
        if self.own_s is None or self.station_s is None or self.own_s - self.station_s <= MARGIN_S:
            return 0.0
        return self.own_s - self.station_s

    def to_json(self) -> Json:
        """Return the JSON values of the results."""
        return {
            "portion": self.portion,
            **{name: _round(getattr(self, name), 1) for name in ("own_s", "station_s")},
            **{name: _round(getattr(self, name), 4) for name in ("own_c", "station_c")},
        }


def judgement(plan: PortionsPlan, repeats: Sequence[RepeatData], best_cm3: float | None) -> Json | None:
    """Return the comparison as JSON values; None where no repeat has a trace.

    `best_cm3` is the end-point by the heat balance of the whole traces, which no moment of reading changes.
    """
    traces = [each for each in repeats if each.samples]
    if not traces:
        return None
    station = _station_readings(plan, traces)
    moments = {each.repeat: _moments(each, station[each.repeat]) for each in traces}
    every = [moment for each in moments.values() for moment in each]
    stations = [_as_the_station_read(each, station[each.repeat]) for each in traces]
    own = {"minutes": sum(each.left_s for each in every) / 60, "end_point_cm3": _crossing_cm3(traces)}
    theirs = {"minutes": _station_minutes(plan, every), "end_point_cm3": _crossing_cm3(stations)}
    return {
        "repeats": [
            {"repeat": repeat, "portions": [each.to_json() for each in found]} for repeat, found in moments.items()
        ],
        "own": _rounded(own),
        "station": _rounded(theirs),
        "best_cm3": _round(best_cm3, 3),
        "waited_too_long_s": round(sum(each.beyond_s for each in every if each.portion), 1),
        "waited_at_start_s": round(sum(each.beyond_s for each in every if not each.portion), 1),
        "too_early": sum(each.early for each in every),
        "words": words(every, own, theirs, best_cm3),
    }


def _station_readings(plan: PortionsPlan, traces: Sequence[RepeatData]) -> dict[int, dict[int, tuple[float, float]]]:
    """By repeat and portion: when (s since the repeat's start) and what the station would have read."""
    found: dict[int, dict[int, tuple[float, float]]] = {each.repeat: {} for each in traces}
    for decided in replay(plan, traces):
        event = decided.event
        if not isinstance(event, e.ReadingSettled) or event.temperature_c is None:
            continue
        if event.outcome:  # the station's own wait was over; no pour overtook it
            found[decided.repeat][event.portion] = decided.time_s, event.temperature_c
    return found


def _moments(repeat: RepeatData, station: dict[int, tuple[float, float]]) -> list[Moment]:
    pressed_s = [0.0, *(time_s for time_s, _, _ in repeat.pours)]
    own_s = dict(repeat.read_s)
    own_c = {row.portion: row.temperature_c for row in repeat.readings}
    last_s = max([*own_s.values(), pressed_s[-1]])
    moments = []
    for portion, since_s in enumerate(pressed_s):
        until_s = pressed_s[portion + 1] if portion + 1 < len(pressed_s) else last_s
        read_s, (theirs_s, theirs_c) = own_s.get(portion), station.get(portion, (None, None))
        moments.append(
            Moment(
                repeat.repeat,
                portion,
                None if read_s is None else read_s - since_s,
                own_c.get(portion),
                None if theirs_s is None else theirs_s - since_s,
                theirs_c,
                until_s - since_s,
            )
        )
    return moments


def _as_the_station_read(repeat: RepeatData, station: dict[int, tuple[float, float]]) -> RepeatData:
    added_cm3 = list(accumulate((volume_cm3 for _, volume_cm3, _ in repeat.pours), initial=0.0))
    doubted = {number for number, (_, _, unsure) in enumerate(repeat.pours, 1) if unsure}
    rows = tuple(
        ReadingRow(portion, added_cm3[portion], temperature_c)
        for portion, (_, temperature_c) in sorted(station.items())
        if portion not in doubted
    )
    return replace(repeat, readings=rows)


def _station_minutes(plan: PortionsPlan, moments: Sequence[Moment]) -> float:
    """The same hands with the station's moments; its median wait where a portion was overtaken."""
    usual_s = {
        start: [each.station_s for each in moments if each.station_s is not None and (each.portion == 0) == start]
        for start in (True, False)
    }
    total_s = 0.0
    for each in moments:
        known = usual_s[each.portion == 0]
        wait_s = each.station_s if each.station_s is not None else median(known) if known else WAIT_S[plan.pace]
        # Between the own reading and the next pour the hands took as long as they took.
        handling_s = each.left_s - each.own_s if each.own_s is not None else 0.0
        total_s += wait_s + max(handling_s, 0.0)
    return total_s / 60


def _crossing_cm3(repeats: Sequence[RepeatData]) -> float | None:
    """The end-point that straight lines through the mean readings give, cm³."""
    rows = mean_rows(repeats)
    try:
        return fit_lines([row.volume_cm3 for row in rows], [row.temperature_c for row in rows]).end_point_cm3
    except LinesRefused:
        return None


def _rounded(values: Json) -> Json:
    return {name: _round(value, 1 if name == "minutes" else 3) for name, value in values.items()}


def _round(value: float | None, places: int) -> float | None:
    return None if value is None else round(value, places)


# What is said of the students' own moments, in short sentences; numbers, no marks.


LONG_S: Final = 10.0
"""Below this in all, waiting cost nothing to speak of."""
STEP_C: Final = 0.0625
"""One step of the probe."""


def words(
    moments: Sequence[Moment], own: dict[str, Any], station: dict[str, Any], best_cm3: float | None
) -> list[Message]:
    """Return the sentences: readings too early, waiting at the start and at portions, minutes, end-points."""
    return [
        *_early([each for each in moments if each.early]),
        *_unread(sum(each.own_s is None for each in moments)),
        *_waited_at_start([each for each in moments if not each.portion]),
        *_waited([each for each in moments if each.portion and each.beyond_s > 0.0]),
        say("judged-minutes", own_min=f"{own['minutes']:.0f}", station_min=f"{station['minutes']:.0f}"),
        *_lines(own["end_point_cm3"], station["end_point_cm3"]),
        *_against_best(own["end_point_cm3"], station["end_point_cm3"], best_cm3),
    ]


def _early(early: Sequence[Moment]) -> list[Message]:
    if not early:
        return [say("judged-early-none")]
    said = say("judged-early", count=len(early))
    return [said, *_error([each for each in early if each.error_c is not None])]


def _error(told: Sequence[Moment]) -> list[Message]:
    if not told:
        return []
    worst = max(told, key=lambda each: abs(each.error_c or 0.0))
    error_c = worst.error_c or 0.0
    if abs(error_c) <= STEP_C:
        return [say("judged-none-off")]
    where = say("judged-at-start", repeat=worst.repeat)
    if worst.portion:
        where = say("judged-at-portion", repeat=worst.repeat, portion=worst.portion)
    return [say("judged-too-low" if error_c < 0 else "judged-too-high", error_c=f"{abs(error_c):.2f}", where=where)]


def _unread(count: int) -> list[Message]:
    return [say("judged-unread", count=count)] if count else []


def _waited(late: Sequence[Moment]) -> list[Message]:
    beyond_s = sum(each.beyond_s for each in late)
    if beyond_s < LONG_S:
        return [say("judged-hardly-waited")]
    said = [say("judged-waited", seconds=f"{beyond_s:.0f}")]
    moved_c = max((abs(each.error_c) for each in late if each.error_c is not None), default=0.0)
    return [*said, say("judged-moved", moved_c=f"{moved_c:.2f}")] if moved_c > STEP_C else said


def _waited_at_start(starts: Sequence[Moment]) -> list[Message]:
    """Waiting before the first portion costs time alone: the cup does nothing meanwhile."""
    beyond_s = sum(each.beyond_s for each in starts)
    return [say("judged-waited-at-start", seconds=f"{beyond_s:.0f}")] if beyond_s >= LONG_S else []


def _against_best(own_cm3: float | None, station_cm3: float | None, best_cm3: float | None) -> list[Message]:
    """How far lines through either readings are from the value that needs none of these moments."""
    if best_cm3 is None or own_cm3 is None:
        return []
    off = {"best_cm3": f"{best_cm3:.1f}", "own_off_cm3": f"{abs(own_cm3 - best_cm3):.1f}"}
    if station_cm3 is None:
        return [say("judged-best-own", **off)]
    return [say("judged-best", station_off_cm3=f"{abs(station_cm3 - best_cm3):.1f}", **off)]


def _lines(own_cm3: float | None, station_cm3: float | None) -> list[Message]:
    if own_cm3 is None:
        return [say("judged-no-lines")]
    if station_cm3 is None:
        return [say("judged-lines-own", own_cm3=f"{own_cm3:.1f}")]
    return [say("judged-lines", own_cm3=f"{own_cm3:.1f}", station_cm3=f"{station_cm3:.1f}")]
