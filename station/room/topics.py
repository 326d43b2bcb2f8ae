"""The names of topics: `benchwarm/1/<user>/<what>`. The user is the bench's at the broker, which keeps it to its own.

A new number in the second place is a new language: old and new benches do not misunderstand each other.
"""

import re
from typing import Final

PREFIX: Final = "benchwarm/1"

EVENTS: Final = "events"
"""From the bench, QoS 1: batches of its journal."""
LIVE: Final = "live"
"""From the bench, QoS 0, lossy: the newest temperature."""
HERE: Final = "here"
"""From the bench, QoS 1, retained: who it is; its last will says that it went."""
KEPT: Final = "kept"
"""To the bench, QoS 1: up to where the room keeps its journal."""
ORDERS: Final = "orders"
"""To the bench, QoS 1, retained: what it is still to do."""

FROM_BENCH: Final = (EVENTS, LIVE, HERE)
TO_BENCH: Final = (KEPT, ORDERS)
LONGEST_USER: Final = 40
_USER: Final = re.compile(rf"[0-9A-Za-z._-]{{1,{LONGEST_USER}}}")


def topic(user: str, what: str) -> str:
    """Return the topic of a bench. Raises ValueError for a user that no topic can hold."""
    if not is_user(user):
        raise ValueError(f"{user!r} cannot be a bench's user: letters, digits, '-', '_', '.', at most {LONGEST_USER}")
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
