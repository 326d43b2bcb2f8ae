"""Own judgement looked back upon: when the students read, when the station would have, and what the difference cost.

The record is run through the live procedure once more, with the students' own pours; where the station's reading had
not come before the next pour there is none, and nothing is made up in its place.
"""

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import accumulate
from statistics import fmean, median
from typing import Any, Final

from station.analysis.heat_inputs import HeatRefused
from station.analysis.lines import LinesRefused, fit_lines
from station.practical import events as e
from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.heat import readings_fit
from station.practical.judgement_words import words
from station.practical.means import mean_rows
from station.practical.plan import PortionsPlan
from station.practical.predict_minutes import WAIT_S
from station.practical.replay import replay

Json = dict[str, Any]

MARGIN_S: Final = 3.0
"""Seconds by which two moments count as the same: the samples come about one a second, and a hand takes its time."""
OF_ITS_OWN: Final = ("time is up", "still drifting")
"""Reasons of a reading that has not settled and that the station takes all the same, without being overtaken."""


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


def judgement(plan: PortionsPlan, repeats: Sequence[RepeatData], known: Known) -> Json | None:
    """Return the comparison as JSON values; None where no repeat has a trace."""
    traces = [each for each in repeats if each.samples]
    if not traces:
        return None
    station = _station_readings(plan, traces)
    moments = {each.repeat: _moments(each, station[each.repeat]) for each in traces}
    every = [moment for each in moments.values() for moment in each]
    stations = [_as_the_station_read(each, station[each.repeat]) for each in traces]
    own = {"minutes": sum(each.left_s for each in every) / 60, **_end_points(plan, traces, known)}
    theirs = {"minutes": _station_minutes(plan, every), **_end_points(plan, stations, known)}
    return {
        "repeats": [
            {"repeat": repeat, "portions": [each.to_json() for each in found]} for repeat, found in moments.items()
        ],
        "own": _rounded(own),
        "station": _rounded(theirs),
        "waited_too_long_s": round(sum(each.beyond_s for each in every), 1),
        "too_early": sum(each.early for each in every),
        "words": words(every, own, theirs),
    }


def _station_readings(plan: PortionsPlan, traces: Sequence[RepeatData]) -> dict[int, dict[int, tuple[float, float]]]:
    """By repeat and portion: when (s since the repeat's start) and what the station would have read."""
    found: dict[int, dict[int, tuple[float, float]]] = {each.repeat: {} for each in traces}
    for decided in replay(plan, traces):
        event = decided.event
        if not isinstance(event, e.ReadingSettled) or event.temperature_c is None:
            continue
        if event.settled or event.reason.startswith(OF_ITS_OWN):
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


def _end_points(plan: PortionsPlan, repeats: Sequence[RepeatData], known: Known) -> Json:
    """End-points in cm³ from readings alone: by straight lines on the mean, by heat balance as the repeats' mean."""
    rows = mean_rows(repeats)
    lines_cm3: float | None
    try:
        lines_cm3 = fit_lines([row.volume_cm3 for row in rows], [row.temperature_c for row in rows]).end_point_cm3
    except LinesRefused:
        lines_cm3 = None
    heat = []
    for each in repeats:
        try:
            heat.append(readings_fit(plan, each, known).end_point_cm3)
        except HeatRefused:
            continue
    return {"end_point_cm3": lines_cm3, "heat_balance_cm3": fmean(heat) if heat else None}


def _rounded(values: Json) -> Json:
    return {name: _round(value, 1 if name == "minutes" else 3) for name, value in values.items()}


def _round(value: float | None, places: int) -> float | None:
    return None if value is None else round(value, places)
