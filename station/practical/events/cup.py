"""Events of what is in the cup: repeats, portions, readings."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import ClassVar, Literal

from typing_extensions import TypedDict

from station.practical.events.bench import Event

# Events of what the group says: answers, notes, its own reading, another group's set.


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
    """Temperatures are typed from a thermometer of such divisions in °C; None: the probe is used again.

    `division_c` of a digital one is a step of its last digit.
    """

    kind: ClassVar[str] = "thermometer_chosen"
    division_c: float | None
    key: str | None = None
    digital: bool = False


class PlacedLine(TypedDict):
    """A line as the students placed it: T = intercept_c + slope_c_cm3 * V."""

    slope_c_cm3: float
    intercept_c: float


@dataclass(frozen=True)
class EndPointRead(Event):
    """What the students read off their own two lines; None when they could not read it, and `reason` says why.

    `before` and `after` are the lines as placed, T = intercept_c + slope_c_cm3 * V. After one mixing it is a
    change of temperature, `change_c`.
    """

    kind: ClassVar[str] = "end_point_read"
    end_point_cm3: float | None = None
    change_c: float | None = None
    before: PlacedLine | None = None
    after: PlacedLine | None = None
    key: str | None = None
    reason: str | None = None


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
class CurveSketched(Event):
    """How the group thinks that the temperature will go: rows of total volume added in cm³ and temperature in °C."""

    kind: ClassVar[str] = "curve_sketched"
    points: Sequence[Sequence[float]]
    key: str | None = None


@dataclass(frozen=True)
class SetReturned(Event):
    """The own readings are worked on again."""

    kind: ClassVar[str] = "set_returned"
    key: str | None = None


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


SetUpStep = Literal["sketch", "alkali", "probe", "empty", "wash", "fill"]


@dataclass(frozen=True)
class SetUpStepDone(Event):
    """A step of setting the cup up is over: `probe`, `empty` or `wash` was done; `sketch`, `alkali` left out."""

    kind: ClassVar[str] = "set_up_step_done"
    step: SetUpStep
    key: str | None = None


@dataclass(frozen=True)
class RepeatBegun(Event):
    """Fresh acid is in the cup; `repeat` counts from 1 and is never used twice.

    `cup`: which of the plan's cups it is, where these differ.
    """

    kind: ClassVar[str] = "repeat_begun"
    repeat: int
    key: str | None = None
    cup: int = 1


@dataclass(frozen=True)
class PortionPrompted(Event):
    """The station asked for this portion; asked once, also over a restart."""

    kind: ClassVar[str] = "portion_prompted"
    repeat: int
    portion: int


@dataclass(frozen=True)
class PortionAdded(Event):
    """Somebody said that this portion is in; `early` when it had not been asked for.

    `mass_g` is what a balance said of a solid (its `volume_cm3` is 0), `places` with how many decimals the amount was
    typed; None: nobody said more than the plan.
    """

    kind: ClassVar[str] = "portion_added"
    repeat: int
    portion: int
    volume_cm3: float
    early: bool = False
    by: str = "page"
    key: str | None = None
    mass_g: float | None = None
    places: int | None = None


@dataclass(frozen=True)
class ReadingSettled(Event):
    """The temperature put down for a portion (0: the start); `settled` False when it had to be taken as it was.

    `outcome` says how the station's own wait ended: `settled` or `time up`. It is empty for a reading that an act led
    to, and in older records, which have only the words of `reason`.
    """

    kind: ClassVar[str] = "reading_settled"
    repeat: int
    portion: int
    temperature_c: float | None
    u_c: float | None
    settled: bool
    reason: str = ""
    key: str | None = None
    outcome: str = ""


@dataclass(frozen=True)
class PortionUndone(Event):
    """The newest portion had not been poured after all."""

    kind: ClassVar[str] = "portion_undone"
    repeat: int
    portion: int
    key: str | None = None


@dataclass(frozen=True)
class PortionVolumeCorrected(Event):
    """The portion was of another volume than planned, or of another mass."""

    kind: ClassVar[str] = "portion_volume_corrected"
    repeat: int
    portion: int
    volume_cm3: float
    key: str | None = None
    mass_g: float | None = None
    places: int | None = None


@dataclass(frozen=True)
class TemperatureRead(Event):
    """A temperature read off an ordinary thermometer when the clock said so, `at_s` seconds into the repeat.

    `division_c` is of the thermometer. The same time again corrects what was typed for it.
    """

    kind: ClassVar[str] = "temperature_read"
    repeat: int
    at_s: float
    temperature_c: float
    division_c: float
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
class Paused(Event):
    """The practical waits; sampling goes on. `by` whom of staff; None: by the group itself."""

    kind: ClassVar[str] = "paused"
    key: str | None = None
    by: str | None = None


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
class RepeatAsked(Event):
    """All planned repeats are done, and the group does one more: the cup is set up for it."""

    kind: ClassVar[str] = "repeat_asked"
    key: str | None = None


@dataclass(frozen=True)
class FinishUndone(Event):
    """The group had finished early and goes on: a repeat that was broken off is under way again."""

    kind: ClassVar[str] = "finish_undone"
    key: str | None = None
