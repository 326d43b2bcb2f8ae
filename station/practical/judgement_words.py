"""What is said of the students' own moments, in short sentences; numbers, no marks."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any, Final

if TYPE_CHECKING:
    from station.practical.judgement import Moment

LONG_S: Final = 10.0
"""Below this in all, waiting cost nothing to speak of."""
STEP_C: Final = 0.0625
"""One step of the probe."""


def words(moments: Sequence[Moment], own: dict[str, Any], station: dict[str, Any]) -> list[str]:
    """Return the sentences: readings too early, waiting, minutes, end-points."""
    return [
        *_early([each for each in moments if each.early]),
        *_unread(sum(each.own_s is None for each in moments)),
        *_waited([each for each in moments if each.beyond_s > 0.0]),
        f"You took {own['minutes']:.0f} min, with the station's moments it would be about "
        f"{station['minutes']:.0f} min.",
        *_lines(own["end_point_cm3"], station["end_point_cm3"]),
        *_heat(own["heat_balance_cm3"], station["heat_balance_cm3"]),
    ]


def _early(early: Sequence[Moment]) -> list[str]:
    if not early:
        return ["No reading came before the station's moment."]
    count = len(early)
    said = f"{count} readings came before the station's moment."
    if count == 1:
        said = "One reading came before the station's moment."
    return [said, *_error([each for each in early if each.error_c is not None])]


def _error(told: Sequence[Moment]) -> list[str]:
    if not told:
        return []
    worst = max(told, key=lambda each: abs(each.error_c or 0.0))
    error_c = worst.error_c or 0.0
    if abs(error_c) <= STEP_C:
        return ["None of them is off by more than one step of the probe, 0.06 °C."]
    where = f"repeat {worst.repeat}, portion {worst.portion}" if worst.portion else f"repeat {worst.repeat}, the start"
    if error_c < 0:
        return [f"The largest error is {-error_c:.2f} °C, too low: {where}."]
    return [f"The largest error is {error_c:.2f} °C, too high: {where}."]


def _unread(count: int) -> list[str]:
    if count == 0:
        return []
    return ["One portion has no reading." if count == 1 else f"{count} portions have no reading."]


def _waited(late: Sequence[Moment]) -> list[str]:
    beyond_s = sum(each.beyond_s for each in late)
    if beyond_s < LONG_S:
        return ["You hardly waited longer than the station would have."]
    said = [f"You waited {beyond_s:.0f} s longer than the station would have."]
    moved_c = max((abs(each.error_c) for each in late if each.error_c is not None), default=0.0)
    return [*said, f"That moved a reading by up to {moved_c:.2f} °C."] if moved_c > STEP_C else said


def _lines(own_cm3: float | None, station_cm3: float | None) -> list[str]:
    if own_cm3 is None:
        return ["Your readings make no two lines that cross."]
    if station_cm3 is None:
        return [f"Straight lines: {own_cm3:.1f} cm³ with your readings; the station's moments are too few to tell."]
    return [f"Straight lines: {own_cm3:.1f} cm³ with your readings, {station_cm3:.1f} cm³ with the station's."]


def _heat(own_cm3: float | None, station_cm3: float | None) -> list[str]:
    if own_cm3 is None or station_cm3 is None:
        return []
    return [f"Heat balance: {own_cm3:.1f} cm³ with your readings, {station_cm3:.1f} cm³ with the station's."]
