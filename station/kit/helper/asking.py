"""The station's side of the helper: one request, one answer."""

import asyncio
import json
import os
from collections.abc import Mapping
from typing import Any, NamedTuple

from station.kit.helper.requests import SOCKET
from station.words import Message, said, say

WITHIN_S = 1900.0


class Answer(NamedTuple):
    """Whether it was done, what the helper tells, and what it found."""

    done: bool
    told: Message
    found: Mapping[str, Any]


async def asked(request: Mapping[str, Any], at: str | None = None) -> Answer:
    """Ask the helper; without one, the answer says so. BENCHWARM_HELPER names its socket only where it is tried."""
    try:
        reader, writer = await asyncio.open_unix_connection(at or os.environ.get("BENCHWARM_HELPER", SOCKET))
    except OSError:
        return Answer(False, say("helper-none"), {})
    try:
        writer.write(json.dumps(request).encode() + b"\n")
        await writer.drain()
        answer = json.loads(await asyncio.wait_for(reader.readline(), WITHIN_S))
        return Answer(bool(answer["done"]), said(answer["told"]), answer["found"])
    except (OSError, TimeoutError, ValueError, KeyError):
        return Answer(False, say("helper-none"), {})
    finally:
        writer.close()
