"""`station practise`: virtual cups that persons pour into, each on a page of its own; and the same beside a bench."""

import argparse
import asyncio
from collections.abc import Callable
from contextlib import ExitStack, suppress
from typing import Any, Final

from station.bench.loop import Bench
from station.command.assembly import VERSION, opened_parts, scratch_folder
from station.command.helping import add_command
from station.command.settings import BenchSettings, ProbeSettings, Settings, VirtualSettings, load_plan
from station.command.terminal import EXIT_ADDRESS, CommandError, tell
from station.practical import events as e
from station.practical.plan import Plan
from station.server.bare_app import add_pages, bare_app
from station.server.bench.watch import Watch
from station.server.door.access import Access
from station.server.door.hosts import addresses
from station.server.manual import add_manual
from station.server.practise.cup import Cup
from station.server.practise.hall import Hall, hall_alone
from station.server.practise.serve import serve_hall
from station.server.serve import PortTaken, listen
from station.words import say
from station.words.speaking import spoken

PORT: Final = 8080
SPEED: Final = 4.0
SLOWEST: Final = 1.0
FASTEST: Final = 20.0
MOST_CUPS: Final = 60
BESIDE_A_BENCH: Final = 4
"""So many cups beside the work of a bench, so that its own sampling is never late."""
IN_A_ROOM: Final = 30


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "practise",
        does="practise without a kit: a virtual cup that a person pours into",
        example="practise --cups 15",
        ends=(EXIT_ADDRESS,),
    )
    parser.add_argument("--speed", type=_speed, default=SPEED, metavar="N", help="bench seconds a second, 1 to 20")
    parser.add_argument(
        "--port",
        type=_port,
        metavar="P",
        help=f"port of the page (default: {PORT}, or the next free one; 0: a free one)",
    )
    parser.add_argument(
        "--cups", type=_cups, metavar="N", help="cups for the phones of a class (default: one, on this machine)"
    )
    parser.set_defaults(work=_practise)


def hall_of(plan: Callable[[], Plan], most: int, known: Settings, speed: float | None = None) -> Hall:
    """Return a hall for so many cups; the record of each ends with it. `plan` says what is practised.

    Language, units and names are those of the `known` settings; the speed is that of a virtual cup there, where there
    is one, unless it is given.
    """
    if speed is None:
        speed = min(max(known.virtual.speed, SLOWEST), FASTEST) if known.probe.driver == "virtual" else SPEED
    settings = Settings(
        bench=BenchSettings(name=spoken(say("practise-bench-name"))),
        probe=ProbeSettings(driver="virtual"),
        virtual=VirtualSettings(speed=speed),
        page=known.page,
    )
    return Hall(lambda: _cup(settings, plan), most, VERSION, known.access.names)


def _cup(settings: Settings, plan: Callable[[], Plan]) -> Cup:
    opened = ExitStack()
    parts = opened.enter_context(opened_parts(settings, opened.enter_context(scratch_folder())))
    assert parts.driver is not None  # noqa: S101 - the probe is virtual
    bench = Bench.opened(parts.journal, parts.clock, parts.probe, parts.panel)
    watch = Watch(
        bench,
        {
            "name": settings.bench.name,
            "virtual": True,
            "practice": True,
            "panel": "none",
            "language": settings.page.language,
            "units": settings.page.units,
        },
    )
    started = e.StationStarted(VERSION, "virtual", parts.probe.probe_id, "none")
    return Cup(watch, parts.driver, plan, started, opened.close)


def _practise(options: argparse.Namespace) -> int:
    hall = hall_of(lambda: load_plan(None), options.cups or 1, Settings(), options.speed)
    asyncio.run(_work(hall, options))
    return 0


async def _work(hall: Hall, options: argparse.Namespace) -> None:
    host = "127.0.0.1" if options.cups is None else "0.0.0.0"  # noqa: S104 - the phones of a class
    try:
        bound = listen(host, PORT if options.port is None else options.port)
    except PortTaken as error:
        if options.port is not None:
            raise CommandError(str(error), EXIT_ADDRESS) from None
        bound = listen(host, 0)
    page = bare_app("Benchwarm practice", VERSION, Access())
    add_pages(page, {})
    add_manual(page, lambda: None)

    def ready() -> None:
        for address in addresses(host, bound.getsockname()[1]):
            tell(say("told-address", name=say("practise-bench-name"), address=address))

    await serve_hall(hall, hall_alone(hall, page), bound, ready)


def _speed(text: str) -> float:
    with suppress(ValueError):
        if SLOWEST <= float(text) <= FASTEST:
            return float(text)
    raise argparse.ArgumentTypeError("choose a speed from 1 to 20")


def _port(text: str) -> int:
    with suppress(ValueError):
        if 0 <= int(text) <= 65535:
            return int(text)
    raise argparse.ArgumentTypeError("choose a port from 0 to 65535 (0: a free one)")


def _cups(text: str) -> int:
    with suppress(ValueError):
        if 1 <= int(text) <= MOST_CUPS:
            return int(text)
    raise argparse.ArgumentTypeError(f"choose 1 to {MOST_CUPS} cups")
