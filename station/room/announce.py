"""The room says on the network where it is, so that a laptop is found whatever address it was given.

Multicast DNS (RFC 6762) answers for the room's host name, `room.local`; service discovery (RFC 6763) lists page and
broker. Benches reach the broker by that name through their system's own resolver.
"""

import asyncio
import socket
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Final

from zeroconf import AddressResolverIPv4, IPVersion  # type: ignore[attr-defined] # of its documented interface
from zeroconf.asyncio import AsyncServiceInfo, AsyncZeroconf

from station.words import Message, say

PAGE, BROKER = "_http._tcp.local.", "_mqtt._tcp.local."
ASKED_FOR_MS: Final = 1500
"""So long another machine has to answer for the name before it is taken for free."""
LOOKS_EVERY_S: Final = 5.0


@dataclass(frozen=True)
class Announced:
    """What the network is told: the room's name for people, its host name without ".local", and its ports."""

    name: str
    host: str
    page_port: int
    broker_port: int | None


class Announcer:
    """Announces a room on all networks of this machine, anew when its addresses change, until cancelled.

    `addresses` are this machine's IPv4 addresses now; `tell` hears under which name the room is found, or why not.
    """

    def __init__(
        self, room: Announced, addresses: Callable[[], Sequence[str]], tell: Callable[[Message], None]
    ) -> None:
        self._room, self._addresses, self._tell = room, addresses, tell
        self._told: Message | None = None

    async def run(self) -> None:
        """Keep the room announced. A network without multicast is tried again with the next addresses."""
        while True:
            here = tuple(self._addresses())
            if here:
                try:
                    await self._announced(here)
                except Exception as error:  # whatever a network is like, the lesson goes on
                    self._say(say("announce-not", reason=str(error) or type(error).__name__))
            await self._elsewhere(here)

    async def _elsewhere(self, here: tuple[str, ...]) -> None:
        """Return once this machine has other addresses."""
        while True:
            await asyncio.sleep(LOOKS_EVERY_S)
            if tuple(self._addresses()) != here:
                return

    async def _announced(self, here: tuple[str, ...]) -> None:
        """Announce while the addresses stay these."""
        try:
            network = AsyncZeroconf(interfaces=list(here), ip_version=IPVersion.V4Only)
        except OSError as error:
            self._say(say("announce-not", reason=str(error.strerror)))
            return
        try:
            host = await self._free_host(network, here)
            for service in self._services(host, here):
                await network.async_register_service(service, allow_name_change=True)
            await self._elsewhere(here)
        finally:
            await network.async_unregister_all_services()
            await network.async_close()

    async def _free_host(self, network: AsyncZeroconf, here: tuple[str, ...]) -> str:
        """Return the room's host name; this machine's own where another machine has the room's already."""
        wanted, own = self._room.host, socket.gethostname().partition(".")[0]
        others = AddressResolverIPv4(f"{wanted}.local.")
        await others.async_request(network.zeroconf, ASKED_FOR_MS)
        if set(others.parsed_addresses()) - set(here):
            self._say(say("announce-taken", host_name=f"{wanted}.local", own_name=f"{own}.local"))
            return own
        self._say(say("announce-found", address=f"http://{wanted}.local:{self._room.page_port}/"))
        return wanted

    def _services(self, host: str, here: tuple[str, ...]) -> list[AsyncServiceInfo]:
        room = self._room
        ports = {PAGE: room.page_port, BROKER: room.broker_port}
        # A service's name is one label of at most 63 bytes, in which a dot would end it.
        name = room.name.replace(".", " ").encode()[:48].decode(errors="ignore").strip()
        return [
            AsyncServiceInfo(
                kind,
                f"{name}.{kind}",
                port=port,
                server=f"{host}.local.",
                parsed_addresses=list(here),
                properties={"path": "/room"} if kind == PAGE else {},
            )
            for kind, port in ports.items()
            if port is not None
        ]

    def _say(self, message: Message) -> None:
        if message != self._told:
            self._told = message
            self._tell(message)
