"""What the room asks of a kit, beside orders to its practical, and what the kit tells. An ask is for now, not kept."""

from collections.abc import Mapping
from typing import Annotated, Any, Final, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field

from station.bench.check.finding import Colour, FindingShown, Status
from station.room.wire import LONGEST_TEXT, Seq, Short, Token, plain
from station.words import Message, said, written

Doing = Literal[
    "look", "ice-begin", "ice-save", "ice-discard", "restart", "shut-down", "wipe", "restore", "backup", "update"
]
"""Look at the kit; its probe's check in ice; and what the kit's helper does, each by its name there."""
MOST_FINDINGS: Final = 40
_MOST_VALUES, _DEEPEST = 12, 3


def _message(told: object) -> Message:
    """A message as a kit wrote it, with its texts made plain and cut: whatever it holds is shown to staff."""
    return said(_cut(written(told) if isinstance(told, Message) else told, _DEEPEST))


def _cut(told: object, deep: int) -> Any:
    match told:
        case str():
            return plain(told, LONGEST_TEXT)
        case {"id": str(of), "values": dict(values), "text": str(text)} if deep:
            kept = list(values.items())[:_MOST_VALUES]
            cut = {plain(str(name), 40): _cut(value, deep - 1) for name, value in kept}
            return {"id": plain(of, 80), "values": cut, "text": plain(text, LONGEST_TEXT)}
        case bool() | int() | float():
            return told
    raise ValueError("no message")


Told = Annotated[Message, BeforeValidator(_message)]


class _Travels(BaseModel):
    # Keys that a newer version adds are left alone.
    model_config = ConfigDict(extra="ignore", frozen=True)


class Ask(_Travels):
    """One thing to do now. `place`, `file` and `sha256` go to the kit's helper, which judges them."""

    room: Token
    ask: Seq
    do: Doing
    place: Short | None = None
    file: Short | None = None
    sha256: Short | None = None


class FoundOnKit(_Travels):
    """A finding of the kit's pre-flight, without its figures."""

    name: Short
    colour: Colour
    text: Told
    remedy: Told

    @classmethod
    def of(cls, found: FindingShown) -> "FoundOnKit":
        """Return what goes to the room of a finding."""
        return cls(name=found["name"], colour=found["colour"], text=_told(found["text"]), remedy=_told(found["remedy"]))


class KitTold(_Travels):
    """What came of an ask: words, or what was found and how old that is in seconds."""

    kit: Token
    ask: Seq
    done: bool
    text: Told = Message("")
    status: Status | None = None
    found: Annotated[tuple[FoundOnKit, ...], Field(max_length=MOST_FINDINGS)] = ()
    age_s: Annotated[float, Field(ge=0, le=1e7, allow_inf_nan=False)] = 0.0

    @classmethod
    def answering(cls, kit: str, ask: int, text: str, *, done: bool) -> "KitTold":
        """Return the answer in words."""
        return cls(kit=kit, ask=ask, done=done, text=_told(text))


def _told(text: str) -> Message:
    return _message(written(text))


def request_of(ask: Ask) -> Mapping[str, str]:
    """Return what the kit's helper is asked."""
    given = {"do": ask.do, "place": ask.place, "file": ask.file, "sha256": ask.sha256}
    return {key: value for key, value in given.items() if value is not None}
