"""Events of what is in the cup: repeats, portions, readings."""

from dataclasses import dataclass
from typing import ClassVar

from station.practical.event import Event


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
