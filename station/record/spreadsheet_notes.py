"""What a practical's record says in words: notes, corrections, what was set aside and why, in order of time."""

from collections.abc import Callable, Iterator, Sequence
from typing import Any

from station.practical import events as e
from station.practical.plan import number
from station.record.spreadsheet_cells import Row, Sheet, local_time

_COLUMNS = (
    ("date and time (station's clock)", 20),
    ("bench time / s", 12),
    ("repeat", 8),
    ("portion", 8),
    ("what", 34),
    ("in words", 60),
)


def notes_sheet(happened: Sequence[e.Stamped]) -> Sheet:
    """Return the sheet of everything that is worth reading in these events."""
    return Sheet("Notes", _COLUMNS, _rows(happened))


def _rows(happened: Sequence[e.Stamped]) -> Iterator[Row]:
    for each in happened:
        said = _SAID.get(type(each.event))
        if said is not None:
            what, words = said(each.event)
            place = (getattr(each.event, "repeat", None), getattr(each.event, "portion", None))
            yield (local_time(each.wall), round(each.time_s, 3), *place, what, words or None)


def _own(read: e.EndPointRead) -> str:
    if read.end_point_cm3 is not None:
        return f"{read.end_point_cm3:g} cm³"
    return "nothing could be read" if read.change_c is None else f"{read.change_c:+g} °C"


Said = Callable[[Any], tuple[str, str]]

_SAID: dict[type[e.Event], Said] = {
    e.PlanChosen: lambda _: ("plan chosen", ""),
    e.GroupNamed: lambda event: ("group", event.label or "no label"),
    e.ThermometerChosen: lambda event: (
        "thermometer",
        "the station's probe" if event.division_c is None else f"ordinary, {event.division_c:g} °C divisions",
    ),
    e.AlkaliMeasured: lambda event: ("temperature of what is added", f"{event.temperature_c:.2f} °C"),
    e.RepeatBegun: lambda _: ("repeat begun", ""),
    e.RepeatEnded: lambda _: ("repeat ended", ""),
    e.RepeatSetAside: lambda event: ("repeat set aside", event.reason),
    e.RepeatRestored: lambda _: ("repeat counts again", ""),
    e.PortionUndone: lambda _: ("portion taken back", ""),
    e.PortionVolumeCorrected: lambda event: ("volume corrected", f"{number(event.volume_cm3)} cm³"),
    e.PortionUnsure: lambda event: ("not sure of the portion", event.reason or ""),
    e.PortionSure: lambda _: ("sure of the portion again", ""),
    e.QuestionAsked: lambda event: ("the station asked", event.code.replace("_", " ")),
    e.QuestionAnswered: lambda event: ("the answer", event.answer.replace("_", " ")),
    e.NoteWritten: lambda event: (f"note {event.note}", event.text),
    e.NoteWithdrawn: lambda event: (f"note {event.note} withdrawn", ""),
    e.SetAdopted: lambda event: ("not this group's own readings taken over", event.label),
    e.SetReturned: lambda _: ("the group's own readings again", ""),
    e.EndPointRead: lambda event: ("own reading", _own(event)),
    e.ResultsShown: lambda event: ("results", "shown by staff" if event.shown else "withheld by staff"),
    e.ProbeInUse: lambda event: ("correction of the probe", event.check or "none"),
    e.ProbeChecked: lambda event: (f"probe check {event.number} saved", event.check),
    e.ProbeCheckWithdrawn: lambda event: (f"probe check {event.number} withdrawn", ""),
    e.CupTested: lambda event: (
        "cup tested",
        f"{event.label}: {event.values['heat_capacity_j_k']:.1f} ± {event.values['u_heat_capacity_j_k']:.1f} J/K",
    ),
    e.RecordSalvaged: lambda event: ("damaged record set aside", f"{event.kept} events go on"),
    e.ProbeLost: lambda event: ("probe lost", event.bad.replace("_", " ")),
    e.ProbeFound: lambda _: ("probe found", ""),
    e.Paused: lambda _: ("paused", ""),
    e.Resumed: lambda _: ("resumed", ""),
    e.PracticalEnded: lambda event: ("practical ended", "early" if event.early else ""),
}
