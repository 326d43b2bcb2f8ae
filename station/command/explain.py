"""While the station cannot start, its address serves the reason; it tries again until the cause is mended."""

import asyncio
import contextlib
import signal
import sys
import tomllib
from collections.abc import Callable
from pathlib import Path

from pydantic import ValidationError

from station.bench import watchdog
from station.bench.panel.panel import TICK_S, open_panel
from station.bench.panel.pins import PanelPins, PanelPinsError, PanelUnavailable
from station.bench.panel.signals import Signal
from station.command import settings as known
from station.command.desk import looked
from station.command.settings import ServerSettings, load_settings, read_text, settings_path
from station.command.terminal import CommandError
from station.practical.problems import toml_values
from station.server.reason import Reason, ReasonApp
from station.server.serve import PortTaken, listen, server_of
from station.words import say
from station.words.speaking import spoken

RETRY_S, LOOK_S = 30.0, 0.5
READS = 5


def until_mended(config: Path | None, error: CommandError, attempt: Callable[[], None]) -> bool:
    """Serve the reason until `attempt` raises no CommandError any more (True) or a signal comes (False).

    It is tried again when the settings, the plan or their folder change, and every RETRY_S seconds, in a thread, so
    that the page is there meanwhile. Raises `error` where its address cannot be listened on either.
    """
    return asyncio.run(_until_mended(config, error, attempt))


async def _until_mended(config: Path | None, error: CommandError, attempt: Callable[[], None]) -> bool:
    where = _where(config)
    try:
        bound = listen(where.host, where.port)
    except PortTaken:
        raise error from None
    reason = Reason(str(error))
    server = server_of(ReasonApp(reason))
    stop = asyncio.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        asyncio.get_running_loop().add_signal_handler(number, stop.set)
    address = f"http://{where.host}:{bound.getsockname()[1]}/"
    print(spoken(say("told-not-at-work", address=address)), flush=True)
    watchdog.ready()
    serving = asyncio.create_task(server.serve([bound]))
    work = [asyncio.create_task(each) for each in (_mended(config, reason, attempt), stop.wait(), watchdog.keep_fed())]
    try:
        done, _ = await asyncio.wait([*work, serving], return_when=asyncio.FIRST_COMPLETED)
    finally:
        for task in work:
            task.cancel()
        await asyncio.wait(work)
        server.should_exit = True
        await asyncio.wait({serving}, timeout=3)
        bound.close()
    for task in done:
        task.result()
    return work[0] in done


async def _mended(config: Path | None, reason: Reason, attempt: Callable[[], None]) -> None:
    loop = asyncio.get_running_loop()
    while True:
        _say(reason.line)
        seen, until_s = _seen(config), loop.time() + RETRY_S
        beside = [asyncio.create_task(each) for each in (_look(config, reason), _attention(config))]
        try:
            while loop.time() < until_s and _seen(config) == seen:  # noqa: ASYNC110 - files tell nobody
                await asyncio.sleep(LOOK_S)
        finally:
            for task in beside:
                task.cancel()
            await asyncio.wait(beside)
        try:
            await asyncio.to_thread(attempt)
        except CommandError as error:
            if str(error) != reason.line:
                reason.line, reason.findings = str(error), None
        else:
            watchdog.notify("STATUS=")  # what was mended is not told any more
            return


async def _look(config: Path | None, reason: Reason) -> None:
    found = await looked(config, READS)
    # This page is who listens on the port.
    reason.findings = [each for each in found["findings"] if each["name"] != "port"]


async def _attention(config: Path | None) -> None:
    """Show on the panel that something is wrong, where the settings can be read and the panel opened."""
    with contextlib.suppress(CommandError, PanelUnavailable, PanelPinsError):
        panel = load_settings(config)[0].panel
        pins = PanelPins(**panel.model_dump(exclude={"pins", "silent"}, exclude_none=True))
        with open_panel(panel.pins, pins, lambda: None, silent=panel.silent) as lamps:
            lamps.show(Signal.ATTENTION)
            while True:
                lamps.tick(asyncio.get_running_loop().time())
                await asyncio.sleep(TICK_S)


_said: set[str] = set()


def _say(line: str) -> None:
    """Tell the log, each reason once."""
    if line not in _said:
        _said.add(line)
        watchdog.notify(f"STATUS={spoken(say('told-cannot-start', reason=line))}")
        print(spoken(say("told-station-serve", reason=line)), file=sys.stderr, flush=True)


def _where(config: Path | None) -> ServerSettings:
    """Return the configured address, also where another table of the settings is wrong; else the default one."""
    path = settings_path(config)
    try:
        table = toml_values(read_text(path)).get("server", {}) if path else {}
        return ServerSettings.model_validate(table)
    except (CommandError, tomllib.TOMLDecodeError, ValidationError):
        return ServerSettings()


def _seen(config: Path | None) -> tuple[object, ...]:
    """Return what changes when somebody mends the settings or the plan."""
    places = [config] if config else [known.BOOT_SETTINGS, Path("station.toml")]
    with contextlib.suppress(CommandError):
        settings, base = load_settings(config)
        places += [base / settings.plan] if settings.plan else []
    return tuple(_stamp(each) for each in places)


def _stamp(path: Path) -> object:
    try:
        now = path.stat()
    except OSError as error:
        return error.errno
    return now.st_mtime_ns, now.st_size, now.st_ino
