"""Gives the page `/kit` its hands: what only the command line knows how to do."""

import asyncio
import contextlib
import json
import sys
from pathlib import Path
from typing import cast

from station.bench.calculation.worker import nice
from station.bench.check.finding import FindingShown, FindingsShown
from station.command.settings import Settings
from station.kit.helper.asking import asked
from station.kit.on_page import NO_WHEELS, made_on_page, wheelhouse_here
from station.server.bench.desk import KitDesk, Looks
from station.server.door.hosts import addresses
from station.words import Message, plain, say, understood

# Runs `station check` in a child process: it can be ended at any moment, and takes nothing from the sampling.


AT_MOST_S = 60.0


async def looked(config: Path | None, reads: int) -> FindingsShown:
    """Return what `station check --json` finds with these settings; a check that fails itself is one amber finding."""
    named = [] if config is None else ["--config", str(config)]
    words = [sys.executable, "-P", "-m", "station.command.main", "check", "--json", "--reads", str(reads), *named]
    child = await asyncio.create_subprocess_exec(
        *nice(), *words, stdout=asyncio.subprocess.PIPE, stderr=asyncio.subprocess.PIPE
    )
    try:
        async with asyncio.timeout(AT_MOST_S):
            out, err = await child.communicate()
        found = cast(FindingsShown, understood(json.loads(out)))
    except TimeoutError:
        return _failed(say("answer-none-within", seconds=f"{AT_MOST_S:.0f}"))
    except ValueError:
        lines = err.decode(errors="replace").strip().splitlines()
        return _failed(plain(lines[-1][:200]) if lines else say("link-no-answer"))
    finally:
        if child.returncode is None:
            with contextlib.suppress(ProcessLookupError):
                child.kill()
            await child.wait()
    return found


def _failed(why: Message) -> FindingsShown:
    text, remedy = say("look-check-failed", reason=why), say("look-run-check")
    finding: FindingShown = {"name": "check", "colour": "amber", "text": text, "remedy": remedy, "values": {}}
    return {"status": "amber", "findings": [finding]}


READS = 30
"""Beside a station at work these are its own newest samples: nothing is read for them."""


def kit_desk(settings: Settings, port: int, config: Path | None) -> KitDesk:
    """Return the hands for a station with these settings, read from `config`, whose page is served on `port`."""

    async def look() -> FindingsShown:
        return await looked(config, READS)

    return KitDesk(
        Looks(look),
        lambda: addresses(settings.server.host, port),
        lambda kits, plan: made_on_page(kits, plan, wheelhouse_here()),
        lambda: None if wheelhouse_here() else NO_WHEELS,
        asked,
    )
