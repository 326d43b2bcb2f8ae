"""What travels: JSON, packed by zlib where that is shorter. Whatever comes in is checked before anybody believes it.

A bench may send anything; each message is read alone, within limits, and a bad one is a `WireError` that says what
is wrong with it. Bodies of events stay as they came, so that a room older than its benches loses nothing.
"""

import hashlib
import json
import re
import zlib
from collections.abc import Mapping, Sequence
from dataclasses import MISSING, dataclass, field, fields
from functools import cache
from pathlib import Path
from typing import Annotated, Any, Final, TypeVar, get_type_hints
from urllib.parse import urlsplit

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, ValidationError, create_model

from station.practical.events import EVENTS, Stamped, Unknown, from_body
from station.practical.problems import DEEPEST, is_deep
from station.words import say

# The names of topics: `benchwarm/1/<user>/<what>`. The user is the bench's at the broker, which keeps it to its own.
#
# A new number in the second place is a new language: old and new benches do not misunderstand each other.


PREFIX: Final = "benchwarm/1"

EVENTS_TOPIC: Final = "events"
"""From the bench, QoS 1: batches of its journal."""
LIVE: Final = "live"
"""From the bench, QoS 0, lossy: the newest temperature."""
HERE: Final = "here"
"""From the bench, QoS 1, retained: who it is; its last will says that it went."""
KEPT: Final = "kept"
"""To the bench, QoS 1: up to where the room keeps its journal."""
ORDERS: Final = "orders"
"""To the bench, QoS 1, retained: what it is still to do."""

KIT: Final = "kit"
"""From the bench, QoS 1: what came of an ask."""
ASKS: Final = "asks"
"""To the bench, QoS 1, never retained: what its kit is to do now."""

FROM_BENCH: Final = (EVENTS_TOPIC, LIVE, HERE, KIT)
TO_BENCH: Final = (KEPT, ORDERS, ASKS)
LONGEST_USER: Final = 40
_USER: Final = re.compile(rf"[0-9A-Za-z._-]{{1,{LONGEST_USER}}}")


def topic(user: str, what: str) -> str:
    """Return the topic of a bench. Raises ValueError for a user that no topic can hold."""
    if not is_user(user):
        raise ValueError(say("broker-user-letters", user_name=repr(user), count=LONGEST_USER))
    return f"{PREFIX}/{user}/{what}"


def is_user(user: str) -> bool:
    """Whether this can be the user of a bench: nothing that means something else in a topic, a file or a page."""
    return _USER.fullmatch(user) is not None


def parts(name: str) -> tuple[str, str] | None:
    """Return user and what of a topic; None when it is none of ours."""
    start, _, rest = name.partition(f"{PREFIX}/")
    user, slash, what = rest.partition("/")
    if start or not slash or not is_user(user) or what not in (*FROM_BENCH, *TO_BENCH):
        return None
    return user, what


# Where the broker is, and as whom one speaks to it.


PORT = 1883
LARGEST_PASSWORD_FILE = 1000


class AddressError(ValueError):
    """The address or the password cannot be used; the message says what to change."""


@dataclass(frozen=True)
class BrokerAddress:
    """Host and port of an MQTT 5 broker, and the user to be there."""

    host: str
    port: int = PORT
    user: str | None = None
    password: str | None = field(default=None, repr=False)

    @classmethod
    def read(cls, address: str, user: str | None = None, password_file: Path | None = None) -> "BrokerAddress":
        """Return the address in `mqtt://host:1883`, with the password that stands in a file. Raises AddressError."""
        host, port = host_and_port(address)
        return cls(host, port, user, None if password_file is None else words_in(password_file))

    def __str__(self) -> str:
        host = f"[{self.host}]" if ":" in self.host else self.host
        return f"mqtt://{host}:{self.port}"


def host_and_port(address: str) -> tuple[str, int]:
    """Return what stands in `mqtt://host:1883`. Raises AddressError."""
    try:
        split = urlsplit(address)
        port = PORT if split.port is None else split.port
    except ValueError:
        split, port = urlsplit(""), 0
    right = split.scheme == "mqtt" and split.hostname and not (split.path.strip("/") or split.query or split.username)
    if not right or not 0 < port <= 65535 or not re.fullmatch(r"[0-9A-Za-z.:_%-]{1,253}", split.hostname or ""):
        raise AddressError(say("link-no-address", address=repr(address)))
    return str(split.hostname), port


def words_in(path: Path, what: str = "password") -> str:
    """Return the one line that stands in a file, which is a secret. Raises AddressError."""
    try:
        with path.open("rb") as file:
            content = file.read(LARGEST_PASSWORD_FILE + 1)
        words = content.decode("utf-8-sig").rstrip("\r\n")
    except OSError as error:
        told = say("link-cannot-be-read", path=str(path), what=what, reason=str(error.strerror))
        raise AddressError(told) from None
    except UnicodeDecodeError:
        words = ""
    if not words or len(content) > LARGEST_PASSWORD_FILE or not words.isprintable():
        raise AddressError(say("link-one-line", path=str(path), what=what))
    return words


LARGEST_BYTES: Final = 128_000
"""A message as it travels; the broker refuses longer ones as well."""
LARGEST_PLAIN_BYTES: Final = 1_000_000
MOST_EVENTS: Final = 500
PACKED_FROM_BYTES: Final = 512
LONGEST_TEXT: Final = 500
"""Of any text in an event, in letters: the longest that a station writes are the 400 of what a probe gave."""
LONGEST_NAME: Final = 24
_LONGEST: Final = {"name": LONGEST_NAME, "label": 40}
"""What stands on tiles: of a bench, of a group or a cup."""
_HIGHEST = 2**53
_LONGEST_S = 1e17

Row = tuple[int, str, float, float, str, str, str, str]
"""One event as the journal has it: seq, boot, monotonic_s, time_s, wall, clock, kind, body as JSON text."""


class WireError(ValueError):
    """A message that cannot be used; the message says what is wrong with it, never what stood in it."""


def _plain(value: object) -> object:
    if isinstance(value, str) and not value.isprintable():
        raise ValueError(say("problem-plain-text"))
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
    name: Annotated[str, Field(max_length=LONGEST_NAME), BeforeValidator(_plain)]
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
        name, addresses = plain(name, LONGEST_NAME), tuple(known[:8])
        return cls(name=name, version=version[:20], board=board[-24:], addresses=addresses, **more)


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
        raise WireError(say("wire-too-many-bytes", count=len(sent)))
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
        key = ".".join(map(str, first["loc"]))
        told = say("wire-key", message_name=kind.__name__.lower(), key_name=key, reason=first["msg"])
        raise WireError(told) from None


def _values(payload: bytes) -> Any:
    if len(payload) > LARGEST_BYTES:
        raise WireError(say("wire-longer-than", count=len(payload), most=LARGEST_BYTES))
    try:
        plain = payload if payload[:1] == b"{" else _inflated(payload)
        return json.loads(plain, parse_constant=_no_number)
    except (ValueError, RecursionError, zlib.error) as error:
        if isinstance(error, WireError):
            raise
        raise WireError(say("wire-not-a-message", fault=type(error).__name__)) from None


def _inflated(payload: bytes) -> bytes:
    """Unpack no more than is allowed: a few bytes could hold gigabytes."""
    unpacker = zlib.decompressobj()
    plain = unpacker.decompress(payload, LARGEST_PLAIN_BYTES + 1)
    if len(plain) > LARGEST_PLAIN_BYTES or not unpacker.eof:
        raise WireError(say("wire-holds-too-much", most=LARGEST_PLAIN_BYTES))
    return plain


def _no_number(text: str) -> None:
    raise WireError(say("wire-no-number", typed=text))


_KIND = re.compile(r"[a-z_]{1,40}")


def _row(values: Sequence[Any]) -> Row:
    if len(values) != 8:
        raise WireError(say("wire-eight-parts"))
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = values
    if type(seq) is not int or not 1 <= seq <= _HIGHEST:
        raise WireError(say("wire-impossible-number"))
    if not all(type(each) in (int, float) and abs(each) < _LONGEST_S for each in (monotonic_s, time_s)):
        raise WireError(say("wire-time-no-number", event=seq))
    for text, longest in ((boot, 80), (wall, 40), (clock, 20), (kind, 40)):
        if not isinstance(text, str) or len(text) > longest or not text.isprintable():
            raise WireError(say("wire-no-plain-text", event=seq))
    if not _KIND.fullmatch(kind) or not isinstance(body, dict):
        raise WireError(say("wire-no-kind", event=seq))
    if is_deep(body):
        raise WireError(say("wire-nested", event=seq, most=DEEPEST))
    try:
        text = json.dumps(body, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
        text.encode()  # half a surrogate pair cannot be kept
    except ValueError:
        raise WireError(say("wire-impossible", event=seq)) from None
    return seq, boot, float(monotonic_s), float(time_s), wall, clock, kind, text


def digest_of(row: Row) -> str:
    """Return what tells this event from any other that could stand under its number."""
    return hashlib.blake2b(json.dumps(row).encode(), digest_size=12).hexdigest()


def stamped(row: Row) -> Stamped:
    """Return the event of a row that was checked; one whose body is not as it should be is `Unknown`.

    So a newer station's events are kept whatever they hold, and nobody folds a text for a temperature. Its texts are
    made plain here, for everything that the room shows of them; what is kept stays as it came.
    """
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    came = json.loads(body)
    values = {plain(key): _plain_texts(value, _LONGEST.get(key, LONGEST_TEXT)) for key, value in came.items()}
    fits = kind not in EVENTS or _fits(kind, values)
    return Stamped(
        seq, boot, monotonic_s, time_s, wall, clock, from_body(kind, values) if fits else Unknown(kind, values)
    )


def plain(text: str, longest: int = LONGEST_TEXT) -> str:
    """Return a text without control characters and direction marks, and no longer than that."""
    if not text.isprintable():
        text = "".join(" " if each.isspace() else each for each in text if each.isprintable() or each.isspace())
    return text[:longest]


def _plain_texts(value: Any, longest: int) -> Any:
    if isinstance(value, str):
        return plain(value, longest)
    if isinstance(value, dict):
        return {plain(key): _plain_texts(each, longest) for key, each in value.items()}
    return [_plain_texts(each, longest) for each in value] if isinstance(value, list) else value


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
