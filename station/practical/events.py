"""Everything that can happen on a bench, as small immutable facts. The journal keeps these and nothing else.

An event says what happened, never what to do about it. `to_body` and `from_body` are the only way in and
out of JSON; a body written by a newer station may hold keys that this one does not know, and those are
left alone.
"""

from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass, fields
from typing import Any, ClassVar


@dataclass(frozen=True)
class Event:
    """Base of all events; `kind` is the name in the journal and on the stream."""

    kind: ClassVar[str] = ""

    def to_body(self) -> dict[str, Any]:
        """Return the event's fields as JSON values."""
        return asdict(self)


@dataclass(frozen=True)
class StationStarted(Event):
    """The process came up with this version, probe and panel."""

    kind: ClassVar[str] = "station_started"
    version: str
    probe_driver: str
    probe_id: str | None
    panel: str


@dataclass(frozen=True)
class PlanChosen(Event):
    """A new practical begins to exist, with this plan (without what staff keep to themselves)."""

    kind: ClassVar[str] = "plan_chosen"
    plan: Mapping[str, Any]
    by: str | None = None
    key: str | None = None


@dataclass(frozen=True)
class SampleTaken(Event):
    """One conversion of the probe: a temperature in °C, or None with the kind of fault and the text that was read."""

    kind: ClassVar[str] = "sample_taken"
    temperature_c: float | None
    bad: str | None = None
    rejected_c: float | None = None
    text: str | None = None


@dataclass(frozen=True)
class ProbeLost(Event):
    """Several samples in a row were bad."""

    kind: ClassVar[str] = "probe_lost"
    bad: str


@dataclass(frozen=True)
class ProbeFound(Event):
    """The first good sample after the probe was lost."""

    kind: ClassVar[str] = "probe_found"


@dataclass(frozen=True)
class AlkaliDipBegun(Event):
    """The probe is in the alkali, so that its temperature can be taken."""

    kind: ClassVar[str] = "alkali_dip_begun"
    key: str | None = None


@dataclass(frozen=True)
class AlkaliMeasured(Event):
    """The alkali's temperature, by dipping the probe or typed from a thermometer."""

    kind: ClassVar[str] = "alkali_measured"
    temperature_c: float
    u_c: float
    source: str
    key: str | None = None


@dataclass(frozen=True)
class RepeatBegun(Event):
    """Fresh acid is in the cup; `repeat` counts from 1 and is never used twice."""

    kind: ClassVar[str] = "repeat_begun"
    repeat: int
    key: str | None = None


@dataclass(frozen=True)
class PortionPrompted(Event):
    """The station asked for this portion; asked once, also over a restart."""

    kind: ClassVar[str] = "portion_prompted"
    repeat: int
    portion: int


@dataclass(frozen=True)
class PortionAdded(Event):
    """Somebody said that this portion is in; `early` when it had not been asked for."""

    kind: ClassVar[str] = "portion_added"
    repeat: int
    portion: int
    volume_cm3: float
    early: bool = False
    by: str = "page"
    key: str | None = None


@dataclass(frozen=True)
class ReadingSettled(Event):
    """The temperature put down for a portion (0: the start); `settled` False when it had to be taken as it was."""

    kind: ClassVar[str] = "reading_settled"
    repeat: int
    portion: int
    temperature_c: float | None
    u_c: float | None
    settled: bool
    reason: str = ""
    key: str | None = None


@dataclass(frozen=True)
class PortionUndone(Event):
    """The newest portion had not been poured after all."""

    kind: ClassVar[str] = "portion_undone"
    repeat: int
    portion: int
    key: str | None = None


@dataclass(frozen=True)
class PortionVolumeCorrected(Event):
    """The portion was of another volume than planned."""

    kind: ClassVar[str] = "portion_volume_corrected"
    repeat: int
    portion: int
    volume_cm3: float
    key: str | None = None


@dataclass(frozen=True)
class PortionUnsure(Event):
    """Nobody is sure of this portion: its reading is kept and left out of the lines."""

    kind: ClassVar[str] = "portion_unsure"
    repeat: int
    portion: int
    key: str | None = None
    reason: str | None = None


@dataclass(frozen=True)
class PortionSure(Event):
    """The doubt about this portion is taken back."""

    kind: ClassVar[str] = "portion_sure"
    repeat: int
    portion: int
    key: str | None = None


@dataclass(frozen=True)
class QuestionAsked(Event):
    """The station noticed something about a portion that only a person can know; `code` says what."""

    kind: ClassVar[str] = "question_asked"
    repeat: int
    portion: int
    code: str


@dataclass(frozen=True)
class QuestionAnswered(Event):
    """A person's answer; what follows from it stands in the events after this one."""

    kind: ClassVar[str] = "question_answered"
    repeat: int
    portion: int
    code: str
    answer: str
    key: str | None = None


@dataclass(frozen=True)
class RepeatEnded(Event):
    """All portions of the repeat are read, or it was finished with what there is."""

    kind: ClassVar[str] = "repeat_ended"
    repeat: int


@dataclass(frozen=True)
class RepeatSetAside(Event):
    """A person set the repeat aside, with a reason; its data stay."""

    kind: ClassVar[str] = "repeat_set_aside"
    repeat: int
    reason: str
    key: str | None = None


@dataclass(frozen=True)
class RepeatRestored(Event):
    """A repeat that was set aside counts again, with what it has."""

    kind: ClassVar[str] = "repeat_restored"
    repeat: int
    key: str | None = None


@dataclass(frozen=True)
class ThermometerChosen(Event):
    """Temperatures are typed from a thermometer of such divisions in °C; None: the probe is used again."""

    kind: ClassVar[str] = "thermometer_chosen"
    division_c: float | None
    key: str | None = None


@dataclass(frozen=True)
class EndPointRead(Event):
    """What the students read off their own two lines; None when they could not read it.

    `before` and `after` are the lines as placed, T = intercept_c + slope_c_cm3 * V. After one mixing it is a
    change of temperature, `change_c`.
    """

    kind: ClassVar[str] = "end_point_read"
    end_point_cm3: float | None = None
    change_c: float | None = None
    before: Mapping[str, float] | None = None
    after: Mapping[str, float] | None = None
    key: str | None = None


@dataclass(frozen=True)
class GroupNamed(Event):
    """The group at the bench has this label (never a name); None: no label."""

    kind: ClassVar[str] = "group_named"
    label: str | None
    key: str | None = None


@dataclass(frozen=True)
class NoteWritten(Event):
    """The students noted something, perhaps about a portion; notes are numbered from 1."""

    kind: ClassVar[str] = "note_written"
    note: int
    text: str
    repeat: int | None = None
    portion: int | None = None
    key: str | None = None


@dataclass(frozen=True)
class NoteWithdrawn(Event):
    """A note was taken back; its text stays in the record."""

    kind: ClassVar[str] = "note_withdrawn"
    note: int
    key: str | None = None


@dataclass(frozen=True)
class SetAdopted(Event):
    """Another group's readings are worked on in place of the own ones, which stay in the record.

    `readings` are rows of repeat, total volume added in cm³ and temperature in °C.
    """

    kind: ClassVar[str] = "set_adopted"
    label: str
    readings: Sequence[Sequence[float]]
    key: str | None = None


@dataclass(frozen=True)
class SetReturned(Event):
    """The own readings are worked on again."""

    kind: ClassVar[str] = "set_returned"
    key: str | None = None


@dataclass(frozen=True)
class ResultsShown(Event):
    """Staff let the results be seen, or withheld them."""

    kind: ClassVar[str] = "results_shown"
    shown: bool
    by: str
    key: str | None = None


@dataclass(frozen=True)
class Paused(Event):
    """The practical waits; sampling goes on."""

    kind: ClassVar[str] = "paused"
    key: str | None = None


@dataclass(frozen=True)
class Resumed(Event):
    """The practical goes on."""

    kind: ClassVar[str] = "resumed"
    key: str | None = None


@dataclass(frozen=True)
class PracticalEnded(Event):
    """The last repeat is done, or the group finished early."""

    kind: ClassVar[str] = "practical_ended"
    early: bool = False
    key: str | None = None


@dataclass(frozen=True)
class RecordSalvaged(Event):
    """The record was found damaged at the start: `kept` events go on, the damaged file lies in the folder `aside`."""

    kind: ClassVar[str] = "record_salvaged"
    kept: int
    aside: str


@dataclass(frozen=True)
class Quieted(Event):
    """Staff silenced the buzzer, or let it sound, until the next practical."""

    kind: ClassVar[str] = "quieted"
    silent: bool
    by: str
    key: str | None = None


@dataclass(frozen=True)
class BenchRenamed(Event):
    """Staff gave the bench another name; None is the name in its settings again."""

    kind: ClassVar[str] = "bench_renamed"
    name: str | None
    by: str
    key: str | None = None


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
        RepeatBegun,
        PortionPrompted,
        PortionAdded,
        ReadingSettled,
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
        Quieted,
        BenchRenamed,
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
