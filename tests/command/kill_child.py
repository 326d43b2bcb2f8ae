"""A bench in a process of its own that is there to be killed: real journal, loop, reader and virtual cup, no server.

Reads acts as JSON lines and answers each, once it is done or refused, with a JSON line. Its first line tells
where it stands after the start. Arguments: the record's folder, the plan's file.
"""

import asyncio
import json
import sys
from contextlib import suppress
from pathlib import Path
from typing import Any

from station.bench.loop import Bench
from station.command.assembly import opened_parts
from station.command.settings import ProbeSettings, Settings, VirtualSettings
from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.kinds import read_plan
from station.practical.plan import Plan

SPEED = 120.0


async def work(folder: Path, plan: Plan) -> None:
    settings = Settings(probe=ProbeSettings(driver="virtual"), virtual=VirtualSettings(speed=SPEED))
    with opened_parts(settings, folder) as parts:
        bench = Bench.opened(parts.journal, parts.clock, parts.probe, parts.panel)
        await bench.start(plan, e.StationStarted("0", "virtual", None, "none"))
        running = asyncio.create_task(bench.run())
        tell(where(bench))
        reader = asyncio.StreamReader()
        await asyncio.get_running_loop().connect_read_pipe(lambda: asyncio.StreamReaderProtocol(reader), sys.stdin)
        while line := await reader.readline():
            try:
                tell({"seq": await bench.do(json.loads(line)), **where(bench)})
            except ActRefused as refusal:
                tell({"seq": None, "code": refusal.code, **where(bench)})
        running.cancel()
        with suppress(asyncio.CancelledError):
            await running


def where(bench: Bench) -> dict[str, Any]:
    view = bench.view()
    return {key: view[key] for key in ("state", "repeat", "portion")}


def tell(values: dict[str, Any]) -> None:
    print(json.dumps(values), flush=True)


if __name__ == "__main__":
    asyncio.run(work(Path(sys.argv[1]), read_plan(Path(sys.argv[2]).read_text())))
