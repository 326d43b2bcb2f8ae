"""Events of what the group says: answers, notes, its own reading, another group's set."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from typing import ClassVar

from station.practical.event import Event


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
