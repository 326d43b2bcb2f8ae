"""`station check`: does the room's broker let this bench in, and does the room keep its record?"""

import asyncio
import http.client
import json
from typing import Any

from station.bench.check.beside import ANY, LARGEST_ANSWER, WITHIN_S
from station.bench.check.finding import Finding
from station.command.settings import Settings
from station.room.address import AddressError, BrokerAddress
from station.room.topics import KEPT, topic

_ALONE = "nothing to do for the bench: it works alone, and the room gets everything later"


def link(settings: Settings) -> Finding:
    """Return how the link to the room is: as the station at work says, else as the broker answers."""
    if settings.link.broker is None:
        return Finding("link", "green", "no room is set: the bench works alone")
    told = _told(settings)
    if told is not None:
        remedy = "" if told["up"] else _ALONE
        values = {"up": told["up"], "waiting": told["waiting"]}
        return Finding("link", "green" if told["up"] else "amber", str(told["text"]), remedy, values)
    try:
        address = BrokerAddress.read(settings.link.broker, settings.link.user, settings.link.password_file)
    except AddressError as error:
        return Finding("link", "amber", str(error), "put the file with the password there, as station kit made it")
    return asyncio.run(asked(address))


async def asked(address: BrokerAddress) -> Finding:
    """Return whether the broker answers and lets this user in."""
    from station.room.mqtt import BrokerLost, connected  # noqa: PLC0415 - only where a broker is set

    try:
        async with connected(address, f"{address.user}-check", lambda *_: None) as client:
            await client.subscribe({topic(str(address.user), KEPT): 1})
    except BrokerLost as error:
        if error.refused:
            remedy = "compare link.user and its password with those of the room"
            return Finding("link", "amber", f"the broker at {address} does not let this bench in", remedy)
        remedy = "check link.broker, the network, and whether the room is switched on; the bench works alone until then"
        return Finding("link", "amber", f"the broker at {address} does not answer", remedy)
    return Finding("link", "green", f"the broker at {address} lets this bench in")


def _told(settings: Settings) -> dict[str, Any] | None:
    """Return what a station at work says of its link; None where none is."""
    server = settings.server
    host = "127.0.0.1" if server.host in ANY else server.host
    if server.port == 0:
        return None
    connection = http.client.HTTPConnection(host, server.port, timeout=WITHIN_S)
    try:
        connection.request("GET", "/api/state")
        told = json.loads(connection.getresponse().read(LARGEST_ANSWER))["link"]
        return {"up": bool(told["up"]), "text": str(told["text"]), "waiting": int(told["waiting"])}
    except (OSError, http.client.HTTPException, ValueError, LookupError, TypeError):
        return None
    finally:
        connection.close()
