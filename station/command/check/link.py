"""`station check`: does the room's broker let this bench in, and does the room keep its record?"""

import asyncio
import http.client
import json
from typing import Any, Literal

from station.bench.check.finding import ANY, LARGEST_ANSWER, WITHIN_S, Finding
from station.command.settings import Settings
from station.room.wire import KEPT, AddressError, BrokerAddress, topic
from station.words import say, understood

Answered = Literal["lets in", "refuses", "is silent"]
"""What a broker does when somebody asks to be let in."""


def link(settings: Settings) -> Finding:
    """Return how the link to the room is: as the station at work says, else as the broker answers."""
    if settings.link.broker is None:
        return Finding("link", "green", say("check-link-none"))
    told = _told(settings)
    if told is not None:
        remedy = "" if told["up"] else say("check-link-nothing")
        values = {"up": told["up"], "waiting": told["waiting"]}
        return Finding("link", "green" if told["up"] else "amber", told["text"], remedy, values)
    try:
        address = BrokerAddress.read(settings.link.broker, settings.link.user, settings.link.password_file)
    except AddressError as error:
        return Finding("link", "amber", str(error), say("check-link-password-file"))
    match asyncio.run(asked(address)):
        case "lets in":
            return Finding("link", "green", say("check-link-good", address=str(address)))
        case "refuses":
            text = say("check-link-refuses", address=str(address))
            return Finding("link", "amber", text, say("check-link-compare"))
        case "is silent":
            text = say("check-link-silent", address=str(address))
            return Finding("link", "amber", text, say("check-link-check"))


async def asked(address: BrokerAddress) -> Answered:
    """Return whether the broker answers and lets this user in."""
    from station.room.mqtt import BrokerLost, connected  # noqa: PLC0415 - only where a broker is set

    try:
        async with connected(address, lambda *_: None) as client:
            await client.subscribe({topic(str(address.user), KEPT): 1})
    except BrokerLost as error:
        return "refuses" if error.refused else "is silent"
    return "lets in"


def _told(settings: Settings) -> dict[str, Any] | None:
    """Return what a station at work says of its link; None where none is."""
    server = settings.server
    host = "127.0.0.1" if server.host in ANY else server.host
    if server.port == 0:
        return None
    connection = http.client.HTTPConnection(host, server.port, timeout=WITHIN_S)
    try:
        connection.request("GET", "/api/state")
        told = understood(json.loads(connection.getresponse().read(LARGEST_ANSWER)))["link"]
        return {"up": bool(told["up"]), "text": str(told["text"]), "waiting": int(told["waiting"])}
    except (OSError, http.client.HTTPException, ValueError, LookupError, TypeError, AttributeError):
        return None
    finally:
        connection.close()
