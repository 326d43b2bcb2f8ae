"""`station demo`: the whole practical with a virtual cup and a virtual student, the page at the printed address."""

import argparse
import asyncio
import tempfile
from contextlib import suppress
from pathlib import Path
from typing import Any

import tomli_w

from station.bench.virtual.student import VirtualStudent
from station.command.assembly import VERSION, Parts, opened_access, opened_parts, watched_bench
from station.command.desk import kit_desk
from station.command.helping import add_command
from station.command.plans import PLAN_HELP, named_plan
from station.command.settings import BenchSettings, ProbeSettings, ServerSettings, Settings, VirtualSettings, load_plan
from station.command.tell import JsonTeller, Teller, WordsTeller
from station.command.terminal import EXIT_ADDRESS, EXIT_RECORD, CommandError
from station.practical.kinds import DEFAULT
from station.server.bench.watch import Watch
from station.server.door.hosts import addresses
from station.server.serve import PortTaken, listen, serve
from station.words import say
from station.words.speaking import spoken

HOST, PORT = "127.0.0.1", 8080


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "demo",
        does="run the main job with a virtual cup and a virtual student",
        example="demo --speed 20",
        ends=(EXIT_ADDRESS, EXIT_RECORD),
    )
    parser.add_argument("--plan", type=Path, metavar="PLAN", help=f"{PLAN_HELP} (default: {DEFAULT})")
    parser.add_argument("--speed", type=_speed, default=10.0, metavar="N", help="bench seconds per second")
    parser.add_argument(
        "--port",
        type=_port,
        metavar="P",
        help=f"port of the page (default: {PORT}, or the next free one; 0: a free one)",
    )
    parser.add_argument("--once", action="store_true", help="end after the practical")
    parser.add_argument("--json", action="store_true", help="one JSON object a line for what happens")
    parser.add_argument("--seed", type=int, default=1, metavar="N", help="which cup, reagents and habits")
    parser.set_defaults(work=_demo)


def _demo(options: argparse.Namespace) -> int:
    settings = Settings(
        bench=BenchSettings(name=spoken(say("demo-bench-name"))),
        probe=ProbeSettings(driver="virtual"),
        virtual=VirtualSettings(speed=options.speed, seed=options.seed),
        server=ServerSettings(host=HOST, port=PORT if options.port is None else options.port),
    )
    with (
        tempfile.TemporaryDirectory(prefix="benchwarm-demo-", ignore_cleanup_errors=True) as folder,
        opened_parts(settings, Path(folder) / "record") as parts,
    ):
        asyncio.run(_work(parts, options))
    return 0


async def _work(parts: Parts, options: argparse.Namespace) -> None:
    server = parts.settings.server
    try:
        bound = listen(server.host, server.port)
    except PortTaken as error:
        if options.port is not None:
            raise CommandError(str(error), EXIT_ADDRESS) from None
        bound = listen(server.host, 0)
    chosen = load_plan(None) if options.plan is None else named_plan(options.plan)
    plan = chosen.model_copy(update={"results": "at once"})
    watch = await watched_bench(parts, plan)
    watch.desk = kit_desk(parts.settings, bound.getsockname()[1], _as_file(parts, bound.getsockname()[1]))
    teller: Teller = JsonTeller() if options.json else WordsTeller(watch.bench)
    watch.bench.listen(teller.happened)

    def tell() -> None:
        teller.serving(addresses(server.host, bound.getsockname()[1])[0], parts.journal.path.parent)

    # Whoever sits at this machine may try everything; the page is served on it alone.
    access = opened_access(parts, everyone="technician")
    await serve(watch, VERSION, bound, lambda: _practical(parts, watch, teller, once=options.once), tell, access)


def _as_file(parts: Parts, port: int) -> Path:
    """Write the demo's settings down, for the check of its kit, which is a command of its own."""
    record = parts.journal.path.parent
    file = record.parent / "station.toml"
    values = {
        "bench": {"name": parts.settings.bench.name},
        "probe": {"driver": "virtual"},
        "server": {"host": HOST, "port": port},
        "record": {"folder": str(record)},
    }
    file.write_text(tomli_w.dumps(values), encoding="utf-8")
    return file


async def _practical(parts: Parts, watch: Watch, teller: Teller, *, once: bool) -> None:
    """Let the virtual student work; then tell the result, and either end or go on serving the page."""
    assert parts.driver is not None  # noqa: S101 - the demo's driver is virtual
    seed = parts.settings.virtual.seed
    await VirtualStudent(watch.bench, parts.driver, parts.clock, seed=seed).run()
    await watch.calculator.finished()
    teller.result(watch.result or {})
    if not once:
        with suppress(asyncio.CancelledError):
            await asyncio.Event().wait()


def _speed(text: str) -> float:
    with suppress(ValueError):
        if 0 < float(text) <= 200:
            return float(text)
    raise argparse.ArgumentTypeError("choose a speed above 0 and up to 200")


def _port(text: str) -> int:
    with suppress(ValueError):
        if 0 <= int(text) <= 65535:
            return int(text)
    raise argparse.ArgumentTypeError("choose a port from 0 to 65535 (0: a free one)")
