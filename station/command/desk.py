"""Gives the page `/kit` its hands: what only the command line knows how to do."""

from pathlib import Path

from station.command.look import looked
from station.command.settings import Settings
from station.kit.on_page import NO_WHEELS, made_on_page, wheelhouse_here
from station.server.addresses import addresses
from station.server.kit_desk import Found, KitDesk, Looks

READS = 30
"""Beside a station at work these are its own newest samples: nothing is read for them."""


def kit_desk(settings: Settings, port: int, config: Path | None) -> KitDesk:
    """Return the hands for a station with these settings, read from `config`, whose page is served on `port`."""

    async def look() -> Found:
        return await looked(config, READS)

    return KitDesk(
        Looks(look),
        lambda: addresses(settings.server.host, port),
        lambda kits, plan: made_on_page(kits, plan, wheelhouse_here()),
        lambda: None if wheelhouse_here() else NO_WHEELS,
    )
