"""The messages of the live stream, built once as bytes for all who listen (WHATWG server-sent events)."""

import json
from typing import Any

from station.practical.events import Stamped, Unknown

RETRY = b"retry: 1500\n\n"
# Proxies that buffer let the first bytes through once there are enough of them.
PADDING = b":" + b" " * 2048 + b"\n\n"
HEARTBEAT = b": alive\n\n"
RESET = b"event: reset\ndata: {}\n\n"


def happened(stamped: Stamped) -> bytes:
    """Return the message of one journal event; its id is the sequence number."""
    event = stamped.event
    kind, body = (event.name, event.body) if isinstance(event, Unknown) else (event.kind, event.to_body())
    data = {"seq": stamped.seq, "time_s": stamped.time_s, "kind": kind, "body": body}
    return f"id: {stamped.seq}\nevent: happened\ndata: {compact(data)}\n\n".encode()


def unnumbered(event: str, data: Any) -> bytes:
    """Return a message without an id: it can be missed, since the next one replaces it."""
    return f"event: {event}\ndata: {compact(data)}\n\n".encode()


def compact(data: Any) -> str:
    """Return JSON without spaces; a NaN is an error of ours, never sent."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False)
