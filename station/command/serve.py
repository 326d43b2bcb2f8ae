"""`station serve`: the bench at work, until it is told to stop."""

import argparse
import asyncio
from pathlib import Path
from typing import Any

from station.command.assembly import VERSION, Parts, follow_presses, opened_access, opened_parts, watched_bench
from station.command.errors import EXIT_ADDRESS, CommandError
from station.command.settings import load_plan, load_settings, record_folder
from station.practical.plan import Plan
from station.server.addresses import addresses
from station.server.serve import PortTaken, listen, serve


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("serve", help="run the bench: probe, panel, record and page")
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: the card's station.toml)")
    parser.add_argument("--new", action="store_true", help="begin a new practical even if one is under way")
    parser.set_defaults(work=_serve)


def _serve(options: argparse.Namespace) -> int:
    settings, base = load_settings(options.config)
    plan = load_plan(None if settings.plan is None else base / settings.plan)
    with opened_parts(settings, record_folder(settings, base)) as parts:
        asyncio.run(_work(parts, plan, anew=options.new))
    return 0


async def _work(parts: Parts, plan: Plan, *, anew: bool) -> None:
    server = parts.settings.server
    try:
        bound = listen(server.host, server.port)
    except PortTaken as error:
        raise CommandError(str(error), EXIT_ADDRESS) from None
    watch = await watched_bench(parts, plan, anew=anew)
    if parts.driver is not None:
        follow_presses(watch.bench, parts.driver)

    def tell() -> None:
        for address in addresses(server.host, bound.getsockname()[1]):
            print(f"{parts.settings.bench.name}: {address}", flush=True)

    await serve(watch, VERSION, bound, _never, tell, opened_access(parts))


async def _never() -> None:
    await asyncio.Event().wait()
