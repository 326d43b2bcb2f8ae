"""A connection to the broker, as both sides use it.

The library's own time limits use `asyncio.wait_for`, which in Python 3.11 swallows a cancellation that meets its
result: a station told to stop would go on. So the library waits without a limit, and the limits are here.
"""

import asyncio
import contextlib
import math
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from typing import Final

import aiomqtt

from station.room.address import BrokerAddress

KEEPALIVE_S: Final = 15
WITHIN_S: Final = 10.0
LEAVES_WITHIN_S: Final = 1.0


@asynccontextmanager
async def connected(
    address: BrokerAddress, identifier: str, will: aiomqtt.Will | None = None
) -> AsyncIterator[aiomqtt.Client]:
    """Yield a client that is connected, with nothing left over from before. Raises MqttError, OSError."""
    client = aiomqtt.Client(
        address.host,
        address.port,
        username=address.user,
        password=address.password,
        identifier=identifier,
        protocol=aiomqtt.ProtocolVersion.V5,
        keepalive=KEEPALIVE_S,
        clean_start=True,
        will=will,
        timeout=math.inf,
    )
    try:
        async with asyncio.timeout(WITHIN_S):
            await client.__aenter__()
        yield client
    finally:
        # Also after a connection that was not answered: its socket would stay open.
        with contextlib.suppress(aiomqtt.MqttError, OSError):
            async with asyncio.timeout(LEAVES_WITHIN_S):
                await client.__aexit__(None, None, None)


async def publish(client: aiomqtt.Client, topic: str, payload: bytes, *, qos: int = 0, retain: bool = False) -> None:
    """Publish, and wait until it is on its way (QoS 0) or the broker has it (QoS 1). Raises MqttError, OSError."""
    async with asyncio.timeout(WITHIN_S):
        await client.publish(topic, payload, qos=qos, retain=retain)


async def subscribe(client: aiomqtt.Client, topics: dict[str, int]) -> None:
    """Subscribe to these topics at these qualities of service. Raises MqttError, OSError."""
    async with asyncio.timeout(WITHIN_S):
        await client.subscribe(list(topics.items()))
