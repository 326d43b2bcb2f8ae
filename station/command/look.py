"""Runs `station check` in a child process: it can be ended at any moment, and takes nothing from the sampling."""

import asyncio
import contextlib
import json
import sys
from pathlib import Path
from typing import Any

from station.bench.calculator import nice

AT_MOST_S = 60.0


async def looked(config: Path | None, reads: int) -> dict[str, Any]:
    """Return what `station check --json` finds with these settings; a check that fails itself is one amber finding."""
    named = [] if config is None else ["--config", str(config)]
    words = [sys.executable, "-P", "-m", "station.command.main", "check", "--json", "--reads", str(reads), *named]
    child = await asyncio.create_subprocess_exec(
        *nice(), *words, stdout=asyncio.subprocess.PIPE, stderr=asyncio.subprocess.PIPE
    )
    try:
        async with asyncio.timeout(AT_MOST_S):
            out, err = await child.communicate()
        found: dict[str, Any] = json.loads(out)
    except TimeoutError:
        return _failed(f"no answer within {AT_MOST_S:.0f} s")
    except ValueError:
        return _failed((err.decode(errors="replace").strip().splitlines() or ["no answer"])[-1][:200])
    finally:
        if child.returncode is None:
            with contextlib.suppress(ProcessLookupError):
                child.kill()
            await child.wait()
    return found


def _failed(why: str) -> dict[str, Any]:
    remedy = "run station check on the Pi, and report what it says"
    finding = {"name": "check", "colour": "amber", "text": f"the check itself failed ({why})", "remedy": remedy}
    return {"status": "amber", "findings": [{**finding, "values": {}}]}
