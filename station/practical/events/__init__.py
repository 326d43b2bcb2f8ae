"""Everything that can happen on a bench, as small immutable facts. The journal keeps these and nothing else.

An event says what happened, never what to do about it. `to_body` and `from_body` are the only way in and
out of JSON; a body written by a newer station may hold keys that this one does not know, and those are
left alone.
"""

from collections.abc import Mapping
from dataclasses import dataclass, fields
from typing import Any, ClassVar

from station.practical.events.bench import (
    BenchRenamed,
    CallEnded,
    CupTested,
    Event,
    OrderTaken,
    PlanChosen,
    ProbeCheckBegun,
    ProbeCheckDiscarded,
    ProbeChecked,
    ProbeCheckFound,
    ProbeCheckStep,
    ProbeCheckWithdrawn,
    ProbeFound,
    ProbeInUse,
    ProbeLookedAt,
    ProbeLost,
    ProbeTallied,
    Quieted,
    RecordSalvaged,
    ResultsShown,
    SampleTaken,
    StationStarted,
    TeacherCalled,
)
from station.practical.events.cup import (
    AlkaliDipBegun,
    AlkaliMeasured,
    CurveSketched,
    EndPointRead,
    FinishUndone,
    GroupNamed,
    NoteWithdrawn,
    NoteWritten,
    Paused,
    PortionAdded,
    PortionPrompted,
    PortionSure,
    PortionUndone,
    PortionUnsure,
    PortionVolumeCorrected,
    PracticalEnded,
    QuestionAnswered,
    QuestionAsked,
    ReadingSettled,
    RepeatAsked,
    RepeatBegun,
    RepeatEnded,
    RepeatRestored,
    RepeatSetAside,
    Resumed,
    SetAdopted,
    SetReturned,
    SetUpStepDone,
    TemperatureRead,
    ThermometerChosen,
)

__all__ = [
    "EVENTS",
    "AlkaliDipBegun",
    "AlkaliMeasured",
    "BenchRenamed",
    "CallEnded",
    "CupTested",
    "CurveSketched",
    "EndPointRead",
    "Event",
    "FinishUndone",
    "GroupNamed",
    "NoteWithdrawn",
    "NoteWritten",
    "OrderTaken",
    "Paused",
    "PlanChosen",
    "PortionAdded",
    "PortionPrompted",
    "PortionSure",
    "PortionUndone",
    "PortionUnsure",
    "PortionVolumeCorrected",
    "PracticalEnded",
    "ProbeCheckBegun",
    "ProbeCheckDiscarded",
    "ProbeCheckFound",
    "ProbeCheckStep",
    "ProbeCheckWithdrawn",
    "ProbeChecked",
    "ProbeFound",
    "ProbeInUse",
    "ProbeLookedAt",
    "ProbeLost",
    "ProbeTallied",
    "QuestionAnswered",
    "QuestionAsked",
    "Quieted",
    "ReadingSettled",
    "RecordSalvaged",
    "RepeatAsked",
    "RepeatBegun",
    "RepeatEnded",
    "RepeatRestored",
    "RepeatSetAside",
    "ResultsShown",
    "Resumed",
    "SampleTaken",
    "SetAdopted",
    "SetReturned",
    "SetUpStepDone",
    "Stamped",
    "StationStarted",
    "TeacherCalled",
    "TemperatureRead",
    "ThermometerChosen",
    "Unknown",
    "from_body",
]

EVENTS: dict[str, type[Event]] = {
    event.kind: event
    for event in (
        StationStarted,
        PlanChosen,
        SampleTaken,
        ProbeLost,
        ProbeFound,
        AlkaliDipBegun,
        AlkaliMeasured,
        SetUpStepDone,
        RepeatBegun,
        PortionPrompted,
        PortionAdded,
        ReadingSettled,
        TemperatureRead,
        PortionUndone,
        PortionVolumeCorrected,
        PortionUnsure,
        PortionSure,
        QuestionAsked,
        QuestionAnswered,
        RepeatEnded,
        RepeatSetAside,
        RepeatRestored,
        ThermometerChosen,
        EndPointRead,
        GroupNamed,
        NoteWritten,
        NoteWithdrawn,
        SetAdopted,
        SetReturned,
        ResultsShown,
        RecordSalvaged,
        Paused,
        Resumed,
        PracticalEnded,
        FinishUndone,
        CurveSketched,
        RepeatAsked,
        ProbeLookedAt,
        ProbeTallied,
        ProbeInUse,
        ProbeCheckBegun,
        ProbeCheckStep,
        ProbeCheckFound,
        ProbeCheckDiscarded,
        ProbeChecked,
        ProbeCheckWithdrawn,
        CupTested,
        Quieted,
        BenchRenamed,
        TeacherCalled,
        CallEnded,
        OrderTaken,
    )
}


@dataclass(frozen=True)
class Unknown(Event):
    """An event of a kind this version does not know: kept, not understood."""

    kind: ClassVar[str] = "unknown"
    name: str
    body: Mapping[str, Any]


_FIELDS = {kind: frozenset(field.name for field in fields(event)) for kind, event in EVENTS.items()}


def from_body(kind: str, body: Mapping[str, Any]) -> Event:
    """Make the event of this kind from its JSON body; raises ValueError when a needed key is missing."""
    event = EVENTS.get(kind)
    if event is None:
        return Unknown(kind, body)
    known = _FIELDS[kind]
    try:
        return event(**{key: value for key, value in body.items() if key in known})
    except TypeError as error:
        raise ValueError(f"event {kind}: {error}") from None


@dataclass(frozen=True)
class Stamped:
    """An event in its place: sequence number, boot, bench time and wall time with how far that can be trusted.

    `time_s` is bench time: it goes on over restarts and is the only time that intervals come from.
    `monotonic_s` is the machine's, within `boot`. `wall` is a label (ISO 8601), `clock` says how it was set.
    """

    seq: int
    boot: str
    monotonic_s: float
    time_s: float
    wall: str
    clock: str
    event: Event
