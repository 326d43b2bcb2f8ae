"""What travels: JSON, packed by zlib where that is shorter. Whatever comes in is checked before anybody believes it.

A bench may send anything; each message is read alone, within limits, and a bad one is a `WireError` that says what
is wrong with it. Bodies of events stay as they came, so that a room older than its benches loses nothing.
"""

import hashlib
import json
import re
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import MISSING, fields
from functools import cache
from typing import Annotated, Any, Final, TypeVar, get_type_hints

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError, create_model

from station.practical.events import EVENTS, Stamped, Unknown, from_body

LARGEST_BYTES: Final = 128_000
"""A message as it travels; the broker refuses longer ones as well."""
LARGEST_PLAIN_BYTES: Final = 1_000_000
MOST_EVENTS: Final = 500
DEEPEST: Final = 20
PACKED_FROM_BYTES: Final = 512
_HIGHEST = 2**53
_LONGEST_S = 1e17

Row = tuple[int, str, float, float, str, str, str, str]
"""One event as the journal has it: seq, boot, monotonic_s, time_s, wall, clock, kind, body as JSON text."""


class WireError(ValueError):
    """A message that cannot be used; the message says what is wrong with it, never what stood in it."""


def _plain(value: object) -> object:
    if isinstance(value, str) and not value.isprintable():
        raise ValueError("must be plain text without control characters")
    return value


Short = Annotated[str, Field(max_length=80), BeforeValidator(_plain)]
Token = Annotated[str, Field(pattern=r"^[0-9a-f]{8,32}$")]
Seq = Annotated[int, Field(ge=0, le=_HIGHEST)]
Celsius = Annotated[float, Field(ge=-100, le=200, allow_inf_nan=False)]
_ADDRESS: Final = r"^http://([0-9]{1,3}(\.[0-9]{1,3}){3}|\[[0-9a-f:.]{2,45}\])(:[0-9]{1,5})?/$"
"""A page of a bench: numbers only, since nobody may lead the class elsewhere."""
Address = Annotated[str, Field(pattern=_ADDRESS)]


class _Message(BaseModel):
    # Keys that a newer version adds are left alone.
    model_config = ConfigDict(extra="ignore", frozen=True)


class Batch(_Message):
    """Events of one journal. `kit` tells two kits with one user apart."""

    journal: Token
    kit: Token
    events: Annotated[tuple[tuple[Any, ...], ...], Field(max_length=MOST_EVENTS)]

    @property
    def rows(self) -> list[Row]:
        """The events as the journal has them, in the order of their numbers. Raises WireError."""
        return sorted(_row(each) for each in self.events)


class Here(_Message):
    """Who a bench is. `asked` comes back in the answer; `gone` is its last will."""

    journal: Token
    kit: Token
    name: Annotated[str, Field(max_length=24), BeforeValidator(_plain)]
    boot: Short = ""
    version: Annotated[str, Field(max_length=20), BeforeValidator(_plain)] = ""
    board: Annotated[str, Field(max_length=24), BeforeValidator(_plain)] = ""
    addresses: Annotated[tuple[Address, ...], Field(max_length=8)] = ()
    last_seq: Seq = 0
    asked: Seq = 0
    gone: bool = False

    @classmethod
    def said(cls, *, name: str, version: str, board: str, addresses: Sequence[str], **more: Any) -> "Here":
        """Return what a bench says of itself, with what would not be understood left out or cut."""
        known = [each for each in addresses if re.fullmatch(_ADDRESS, each)]
        plain = "".join(each for each in name if each.isprintable())
        return cls(name=plain[:24], version=version[:20], board=board[-24:], addresses=tuple(known[:8]), **more)


class Live(_Message):
    """The newest temperature, None when the probe gives none; a sign of life also without."""

    kit: Token
    temperature_c: Celsius | None = None


class KeptMessage(_Message):
    """The room keeps this journal of this kit up to and with `seq`; `digest` is that event's.

    `differs`: what came is not what is kept there already. `asked` answers a `Here`.
    """

    room: Token
    journal: Token
    kit: Token
    seq: Seq
    digest: Annotated[str, Field(max_length=32)] = ""
    asked: Seq | None = None
    differs: bool = False


class Order(_Message):
    """One thing that the room wants of a bench; numbers of a room go up."""

    order: Annotated[int, Field(ge=1, le=_HIGHEST)]
    act: Mapping[str, Any]


class Orders(_Message):
    """All that a bench is still to do, in the order in which it was given."""

    room: Token
    orders: Annotated[tuple[Order, ...], Field(max_length=200)]


def packed(message: BaseModel | Mapping[str, Any]) -> bytes:
    """Return a message as it travels. Raises WireError when it is too large to."""
    values = message.model_dump(mode="json") if isinstance(message, BaseModel) else message
    plain = json.dumps(values, ensure_ascii=False, separators=(",", ":"), allow_nan=False).encode()
    shorter = zlib.compress(plain, 6) if len(plain) >= PACKED_FROM_BYTES else plain
    sent = min(plain, shorter, key=len)
    if len(sent) > LARGEST_BYTES or len(plain) > LARGEST_PLAIN_BYTES:
        raise WireError(f"{len(sent)} bytes are too many for one message")
    return sent


def packed_batch(journal: str, kit: str, rows: Sequence[Row]) -> bytes:
    """Return a batch of events as it travels."""
    events = [[*row[:7], json.loads(row[7])] for row in rows]
    return packed({"journal": journal, "kit": kit, "events": events})


_M = TypeVar("_M", bound=BaseModel)


def unpacked(kind: type[_M], payload: bytes) -> _M:
    """Return the message in this payload. Raises WireError."""
    try:
        return kind.model_validate(_values(payload))
    except ValidationError as error:
        first = error.errors(include_url=False, include_input=False)[0]
        raise WireError(f"{kind.__name__.lower()}: {'.'.join(map(str, first['loc']))}: {first['msg']}") from None


def _values(payload: bytes) -> Any:
    if len(payload) > LARGEST_BYTES:
        raise WireError(f"{len(payload)} bytes: longer than {LARGEST_BYTES}")
    try:
        plain = payload if payload[:1] == b"{" else _inflated(payload)
        return json.loads(plain, parse_constant=_no_number)
    except (ValueError, RecursionError, zlib.error) as error:
        raise error if isinstance(error, WireError) else WireError(f"not a message: {type(error).__name__}") from None


def _inflated(payload: bytes) -> bytes:
    """Unpack no more than is allowed: a few bytes could hold gigabytes."""
    unpacker = zlib.decompressobj()
    plain = unpacker.decompress(payload, LARGEST_PLAIN_BYTES + 1)
    if len(plain) > LARGEST_PLAIN_BYTES or not unpacker.eof:
        raise WireError(f"holds more than {LARGEST_PLAIN_BYTES} bytes, or ends too soon")
    return plain


def _no_number(text: str) -> None:
    raise WireError(f"{text} is no number")


_KIND = re.compile(r"[a-z_]{1,40}")


def _row(values: Sequence[Any]) -> Row:
    if len(values) != 8:
        raise WireError("events: an event has eight parts")
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = values
    if type(seq) is not int or not 1 <= seq <= _HIGHEST:
        raise WireError("events: a number that no event can have")
    if not all(type(each) in (int, float) and abs(each) < _LONGEST_S for each in (monotonic_s, time_s)):
        raise WireError(f"event {seq}: its time is no number")
    for text, longest in ((boot, 80), (wall, 40), (clock, 20), (kind, 40)):
        if not isinstance(text, str) or len(text) > longest or not text.isprintable():
            raise WireError(f"event {seq}: boot, wall time, clock or kind is no plain text")
    if not _KIND.fullmatch(kind) or not isinstance(body, dict):
        raise WireError(f"event {seq}: no kind, or no body")
    if _is_deep(body):
        raise WireError(f"event {seq}: its body is nested deeper than {DEEPEST}")
    try:
        text = json.dumps(body, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
        text.encode()  # half a surrogate pair cannot be kept
    except ValueError:
        raise WireError(f"event {seq}: its body holds a number or a letter that there is not") from None
    return seq, boot, float(monotonic_s), float(time_s), wall, clock, kind, text


def _is_deep(body: dict[str, Any]) -> bool:
    """Whether tables lie in tables beyond measure: what one reader manages could be too much for the next."""
    level: list[Any] = [body]
    for _ in range(DEEPEST):
        inner = (each.values() if isinstance(each, dict) else each for each in level)
        level = [value for values in inner for value in values if isinstance(value, dict | list)]
        if not level:
            return False
    return True


def digest_of(row: Row) -> str:
    """Return what tells this event from any other that could stand under its number."""
    return hashlib.blake2b(json.dumps(row).encode(), digest_size=12).hexdigest()


def stamped(row: Row) -> Stamped:
    """Return the event of a row that was checked; one whose body is not as it should be is `Unknown`.

    So a newer station's events are kept whatever they hold, and nobody folds a text for a temperature.
    """
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    values = json.loads(body)
    fits = kind not in EVENTS or _fits(kind, values)
    return Stamped(
        seq, boot, monotonic_s, time_s, wall, clock, from_body(kind, values) if fits else Unknown(kind, values)
    )


def _fits(kind: str, body: dict[str, Any]) -> bool:
    try:
        _checker(kind).model_validate(body)
    except ValidationError:
        return False
    return True


@cache
def _checker(kind: str) -> type[BaseModel]:
    """Return what the body of such an event must be: no text for a number, nothing missing. Made when first needed."""
    event = EVENTS[kind]
    hints = get_type_hints(event)
    parts: dict[str, Any] = {
        each.name: (hints[each.name], ... if each.default is MISSING else each.default) for each in fields(event)
    }
    return create_model(event.__name__, __config__=ConfigDict(strict=True, extra="ignore"), **parts)
