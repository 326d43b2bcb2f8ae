"""`station serve`: the bench at work, until it is told to stop."""

import argparse
import asyncio
from contextlib import ExitStack
from pathlib import Path
from typing import Any

from station.command.assembly import VERSION, Parts, follow_presses, opened_access, opened_parts, watched_bench
from station.command.desk import kit_desk
from station.command.explain import until_mended
from station.command.helping import add_command
from station.command.practise import BESIDE_A_BENCH, hall_of
from station.command.room.asking import link_of
from station.command.settings import load_safe_plan, load_settings, record_folder
from station.command.terminal import EXIT_ADDRESS, EXIT_FAILED, EXIT_RECORD, CommandError, tell
from station.practical.plan import Plan
from station.server.door.hosts import addresses
from station.server.serve import PortTaken, listen, serve
from station.words import say


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "serve",
        does="run the bench: probe, panel, record and page",
        example="serve --config station.toml",
        ends=(EXIT_ADDRESS, EXIT_RECORD),
    )
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: the card's station.toml)")
    parser.add_argument("--new", action="store_true", help="begin a new practical even if one is under way")
    parser.add_argument(
        "--explain", action="store_true", help="if it cannot start, serve the reason and try again (for the unit)"
    )
    parser.set_defaults(work=_serve)


def _serve(options: argparse.Namespace) -> int:
    while True:
        try:
            with ExitStack() as stack:
                parts, plan = _opened(options, stack)
                asyncio.run(_work(parts, plan, options.config, anew=options.new))
            return 0
        except CommandError as error:
            if not options.explain or error.status == EXIT_ADDRESS:
                raise
            reason = error
        if not until_mended(options.config, reason, lambda: _attempt(options)):
            return 0


def _attempt(options: argparse.Namespace) -> None:
    """Open everything and close it again. Raises CommandError."""
    with ExitStack() as stack:
        _opened(options, stack)


def _opened(options: argparse.Namespace, stack: ExitStack) -> tuple[Parts, Plan]:
    try:
        settings, base = load_settings(options.config)
        plan = load_safe_plan(None if settings.plan is None else base / settings.plan)
        return stack.enter_context(opened_parts(settings, record_folder(settings, base))), plan
    except CommandError:
        raise
    except Exception as error:
        if not options.explain:
            raise
        told = say("told-made-a-mistake", fault_name=type(error).__name__, reason=str(error))
        raise CommandError(told, EXIT_FAILED) from error


async def _work(parts: Parts, plan: Plan, config: Path | None, *, anew: bool) -> None:
    server = parts.settings.server
    try:
        bound = listen(server.host, server.port)
    except PortTaken as error:
        raise CommandError(str(error), EXIT_ADDRESS) from None
    watch = await watched_bench(parts, plan, anew=anew, practises=True)
    watch.desk = kit_desk(parts.settings, bound.getsockname()[1], config)
    if parts.driver is not None:
        follow_presses(watch.bench, parts.driver)

    def tell_addresses() -> None:
        for address in addresses(server.host, bound.getsockname()[1]):
            tell(say("told-address", name=parts.settings.bench.name, address=address))

    desk = watch.desk
    watch.link, link = link_of(parts.settings, watch.bench, VERSION, desk.addresses, desk)
    hall = hall_of(lambda: watch.bench.state.plan, BESIDE_A_BENCH, parts.settings)
    hall.is_open = lambda: watch.bench.state.running is None
    await serve(watch, VERSION, bound, _never, tell_addresses, opened_access(parts), hall, link)


async def _never() -> None:
    await asyncio.Event().wait()
