"""The fold's other half: what the group and staff say that is not about a portion in the cup."""

from collections.abc import Callable, Sequence
from dataclasses import replace
from itertools import groupby
from typing import Any

from station.practical import events as e
from station.practical.dataset import RepeatData
from station.practical.readings_text import numbered
from station.practical.state import TYPED, Adopted, Note, OwnReading, Portion, Reading, Repeat, State, Step


def _started(state: State, event: e.StationStarted, _: float) -> State:
    has_probe = event.probe_driver != "none"
    return replace(state, has_probe=has_probe, probe="ok" if has_probe else "none")


def _thermometer(state: State, event: e.ThermometerChosen, _: float) -> State:
    return replace(state, thermometer_division_c=event.division_c)


def _end_point_read(state: State, event: e.EndPointRead, time_s: float) -> State:
    read = OwnReading(event.end_point_cm3, event.change_c, event.before, event.after, time_s)
    return replace(state, own_reading=read)


def _group(state: State, event: e.GroupNamed, _: float) -> State:
    return replace(state, group=event.label)


def _note(state: State, event: e.NoteWritten, time_s: float) -> State:
    return replace(state, notes=(*state.notes, Note(event.note, event.text, event.repeat, event.portion, time_s)))


def _salvaged(state: State, _: e.RecordSalvaged, time_s: float) -> State:
    """People see it among the notes: they alone know whether a portion is missing."""
    words = "The record was damaged and repaired at a start: compare the table with what you did."
    return replace(state, notes=(*state.notes, Note(len(state.notes) + 1, words, None, None, time_s)))


def _note_withdrawn(state: State, event: e.NoteWithdrawn, _: float) -> State:
    return replace(
        state, notes=tuple(replace(each, withdrawn=each.withdrawn or each.id == event.note) for each in state.notes)
    )


def _adopted(state: State, event: e.SetAdopted, _: float) -> State:
    before = state.step if state.adopted is None else state.adopted.step_before
    adopted = Adopted(event.label, adopted_repeats(event.readings), before)
    # What was read off the own lines was not read off these.
    return replace(state, adopted=adopted, step=Step.DONE, own_reading=None)


def _returned(state: State, _: e.SetReturned, __: float) -> State:
    step = state.step if state.adopted is None else state.adopted.step_before
    return replace(state, adopted=None, step=step, own_reading=None)


def _shown(state: State, event: e.ResultsShown, _: float) -> State:
    return replace(state, shown=event.shown)


def _quieted(state: State, event: e.Quieted, _: float) -> State:
    return replace(state, silent=event.silent)


def _renamed(state: State, event: e.BenchRenamed, _: float) -> State:
    return replace(state, name=event.name)


def adopted_repeats(rows: Sequence[Sequence[float]]) -> tuple[Repeat, ...]:
    """Return the repeats of rows (repeat, total volume added in cm³, temperature in °C), in the rows' order."""
    points = {
        int(repeat): [(volume_cm3, temperature_c) for _, volume_cm3, temperature_c in same]
        for repeat, same in groupby(rows, key=lambda row: row[0])
    }
    return tuple(_adopted_repeat(each) for each in numbered(points)) if points else ()


def _adopted_repeat(data: RepeatData) -> Repeat:
    """A portion that has no reading is one with the next that has."""
    portions, before_cm3 = [], 0.0
    for row in data.readings:
        if row.portion > 0:
            portions.append(Portion(row.portion, 0.0, row.volume_cm3 - before_cm3))
        before_cm3 = row.volume_cm3
    readings = [Reading(row.portion, row.temperature_c, None, True, TYPED) for row in data.readings]
    return Repeat(data.repeat, 0.0, "ended", None, tuple(portions), tuple(readings))


GROUP_CHANGES: dict[type[e.Event], Callable[[State, Any, float], State]] = {
    e.StationStarted: _started,
    e.ThermometerChosen: _thermometer,
    e.EndPointRead: _end_point_read,
    e.GroupNamed: _group,
    e.NoteWritten: _note,
    e.NoteWithdrawn: _note_withdrawn,
    e.RecordSalvaged: _salvaged,
    e.SetAdopted: _adopted,
    e.SetReturned: _returned,
    e.ResultsShown: _shown,
    e.Quieted: _quieted,
    e.BenchRenamed: _renamed,
}
