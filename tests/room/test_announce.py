"""The room on the network: a second multicast DNS on this machine's loopback finds it, as a bench's system would."""

import asyncio
import contextlib
from collections.abc import AsyncIterator, Callable

import pytest
from zeroconf import AddressResolverIPv4, IPVersion  # type: ignore[attr-defined] # of its documented interface
from zeroconf.asyncio import AsyncServiceInfo, AsyncZeroconf

from station.room.announce import BROKER, PAGE, Announced, Announcer
from station.words import Message
from tests.room.class_room import running, until

HERE = "127.0.0.1"
WITHIN_MS = 10_000


@contextlib.asynccontextmanager
async def network() -> AsyncIterator[AsyncZeroconf]:
    found = AsyncZeroconf(interfaces=[HERE], ip_version=IPVersion.V4Only)
    try:
        yield found
    finally:
        await found.async_close()


def announcer(host: str, tell: Callable[[Message], None], name: str = "Room 12.b") -> Announcer:
    return Announcer(Announced(name, host, 8090, 1883), lambda: [HERE], tell)


async def test_a_room_is_found_by_its_host_name_with_page_and_broker() -> None:
    heard: list[Message] = []
    async with network() as other, running(announcer("b12-room", heard.append).run()):
        await until(lambda: bool(heard))
        assert heard[0] == "The room is found as http://b12-room.local:8090/ on this network."
        found = AddressResolverIPv4("b12-room.local.")
        assert await found.async_request(other.zeroconf, WITHIN_MS)
        assert found.parsed_addresses() == [HERE]
        for kind, port in ((PAGE, 8090), (BROKER, 1883)):
            service = AsyncServiceInfo(kind, f"Room 12 b.{kind}")
            assert await service.async_request(other.zeroconf, WITHIN_MS)
            assert (service.port, service.server) == (port, "b12-room.local.")


async def test_a_name_that_another_machine_has_is_left_to_it() -> None:
    heard: list[Message] = []
    async with network() as other:
        service = AsyncServiceInfo(
            PAGE, f"Another.{PAGE}", port=80, server="taken-room.local.", parsed_addresses=["192.0.2.7"]
        )
        await other.async_register_service(service)
        async with running(announcer("taken-room", heard.append, "A third").run()):
            await until(lambda: bool(heard))
    assert heard[0].id == "announce-taken"
    assert "prefix" in heard[0]


# The library leaves its socket to the garbage collector where an address is none of this machine's.
@pytest.mark.filterwarnings("ignore::pytest.PytestUnraisableExceptionWarning")
async def test_without_a_network_nothing_is_announced_and_nothing_fails() -> None:
    heard: list[Message] = []
    lonely = Announcer(Announced("Room", "room", 8090, None), lambda: [], heard.append)
    with contextlib.suppress(TimeoutError):
        await asyncio.wait_for(lonely.run(), 0.05)
    no_such = Announcer(Announced("Room", "room", 8090, None), lambda: ["192.0.2.1"], heard.append)
    async with running(no_such.run()):
        await until(lambda: bool(heard))
    assert heard[0].id == "announce-not"
