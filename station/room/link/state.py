"""How the link is, in words. Apart from the link itself, so that a bench without one loads no MQTT client."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from station.words import Message, say


@dataclass(frozen=True)
class LinkState:
    """`up` is true while the room keeps what is sent; `waiting` is how many events it does not keep yet.

    `text` is for people; `detail` is the library's own word, for who looks closer.
    """

    up: bool
    text: Message
    waiting: int = 0
    detail: str = ""


UP: Final = say("link-kept")
NOT_YET: Final = say("link-room-not-reached")
NO_BROKER: Final = say("link-broker-not-reached")
NO_ENTRY: Final = say("link-broker-refuses")
UNREADABLE: Final = say("link-password-unreadable")
NO_ROOM: Final = say("link-no-room")
FAILED: Final = say("link-failed")


@dataclass(frozen=True)
class About:
    """What a bench says of itself beside its name: version, the end of its board's number, where its page is."""

    version: str = ""
    board: str = ""
    addresses: Callable[[], Sequence[str]] = tuple
