"""How the link is, in words. Apart from the link itself, so that a bench without one loads no MQTT client."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True)
class LinkState:
    """`up` is true while the room keeps what is sent; `waiting` is how many events it does not keep yet.

    `text` is for people; `detail` is the library's own word, for who looks closer.
    """

    up: bool
    text: str
    waiting: int = 0
    detail: str = ""


UP: Final = "The room keeps this bench's record."
NOT_YET: Final = "The room is not reached yet. The bench works alone; the room gets everything later."
NO_BROKER: Final = "The room's broker is not reached. The bench works alone; the room gets everything later."
NO_ENTRY: Final = "The room's broker does not let this bench in: check link.user and its password."
UNREADABLE: Final = "The password for the room's broker cannot be read: check link.password_file."
NO_ROOM: Final = "The broker answers, but no room. The bench works alone; the room gets everything later."
FAILED: Final = "The link to the room failed. The bench works alone; the link is tried again."


@dataclass(frozen=True)
class About:
    """What a bench says of itself beside its name: version, the end of its board's number, where its page is."""

    version: str = ""
    board: str = ""
    addresses: Callable[[], Sequence[str]] = tuple
