"""The link to the room, where the settings name its broker: only then is its code loaded."""

from collections.abc import Callable, Coroutine
from pathlib import Path

from station.bench.check.kit import text_of
from station.bench.loop import Bench
from station.command.settings import Settings
from station.room.link_state import UNREADABLE, About, LinkState

_SERIAL = Path("/proc/device-tree/serial-number")


Work = Callable[[], Coroutine[None, None, None]]


def link_of(
    settings: Settings, bench: Bench, version: str, addresses: Callable[[], list[str]]
) -> tuple[Callable[[], LinkState | None], Work]:
    """Return how the link is (None where no broker is set), and its work.

    A password that cannot be read ends no bench: it works alone, and says why.
    """
    chosen = settings.link
    if chosen.broker is None:
        return (lambda: None), _nothing
    from station.room.address import AddressError, BrokerAddress  # noqa: PLC0415
    from station.room.link import Link  # noqa: PLC0415 - 3 MB and 0.1 s that a bench alone need not pay

    try:
        broker = BrokerAddress.read(chosen.broker, chosen.user, chosen.password_file)
    except AddressError as error:
        state = LinkState(False, UNREADABLE, detail=str(error))
        return (lambda: state), _nothing
    board = (text_of(_SERIAL) or "")[-8:]
    link = Link(bench, settings.bench.name, broker, About(version, board, addresses))
    return (lambda: link.state), link.run


async def _nothing() -> None:
    """There is no work."""
