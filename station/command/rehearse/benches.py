"""A process with some benches of a rehearsal: what to do on standard input, JSON; a line when they begin, and for each
that has finished.

Each is a whole station but for its page: probe thread, one-wire tree, procedure, journal, link; and a student. It ends
when standard input is closed.
"""

import asyncio
import json
import sys
from collections.abc import Sequence
from contextlib import AbstractContextManager, ExitStack
from pathlib import Path
from typing import Any

from station.bench.loop import Bench
from station.bench.virtual.student import Habits, VirtualStudent
from station.command.assembly import VERSION, Parts, follow_plan, opened_parts, scratch_folder
from station.command.settings import BenchSettings, ProbeSettings, Settings, VirtualSettings
from station.practical import events as e
from station.practical.kinds import plan_from
from station.practical.plan import Plan
from station.room.link.link import Link
from station.room.link.state import About
from station.room.wire import BrokerAddress

Json = dict[str, Any]

LOOK_S = 0.5


def main() -> None:
    """Work until standard input is closed."""
    asked = json.loads(sys.stdin.readline())
    with ExitStack() as stack:
        # In memory: thirty journals at twenty times the speed would keep a disk busy.
        folder = stack.enter_context(scratch_folder())
        benches = [(each, stack.enter_context(_parts(each, asked, folder))) for each in asked["benches"]]
        asyncio.run(_work(benches, asked))


def _parts(bench: Json, asked: Json, folder: Path) -> AbstractContextManager[Parts]:
    virtual = VirtualSettings(speed=asked["speed"], seed=bench["seed"], faults=bench["faults"])
    settings = Settings(bench=BenchSettings(name=bench["name"]), probe=ProbeSettings(driver="virtual"), virtual=virtual)
    return opened_parts(settings, folder / bench["user"])


async def _work(benches: Sequence[tuple[Json, Parts]], asked: Json) -> None:
    print(json.dumps({"begun": len(benches)}), flush=True)
    async with asyncio.TaskGroup() as tasks:
        working = [tasks.create_task(_bench(each, parts, asked)) for each, parts in benches]
        await _closed()
        for task in working:
            task.cancel()


async def _closed() -> None:
    """Return when standard input is closed: whoever asked has gone, or wants no more."""
    reader = asyncio.StreamReader()
    loop = asyncio.get_running_loop()
    await loop.connect_read_pipe(lambda: asyncio.StreamReaderProtocol(reader), sys.stdin)
    await reader.read()


async def _bench(asked: Json, parts: Parts, everyone: Json) -> None:
    assert parts.driver is not None  # noqa: S101 - a rehearsal's driver is virtual
    bench = Bench.opened(parts.journal, parts.clock, parts.probe, parts.panel)
    plan = plan_from(everyone["plan"])
    await bench.start(plan, e.StationStarted(VERSION, "virtual", parts.probe.probe_id, "none"))
    same = plan.without_prepared()
    # The room tells a bench of no prepared acid, nor does the journal: it is known of the plan from the start alone.

    def plan_now() -> Plan:
        state = bench.state
        return (plan if state.plan == same else state.plan).of_cup(state.cup)

    follow_plan(parts.driver, plan_now, everyone["acid_mol_dm3"])
    broker = BrokerAddress(everyone["host"], everyone["port"], asked["user"], asked["password"])
    link = Link(bench, asked["name"], broker, About(VERSION))
    student = VirtualStudent(bench, parts.driver, parts.clock, seed=asked["seed"], habits=_habits(asked["habits"]))
    running = [asyncio.create_task(work) for work in (bench.run(), link.run())]
    try:
        await parts.clock.sleep(asked["late_s"])
        await student.run()
        last = bench.seq  # samples go on
        while bench.seq - link.state.waiting < last or not link.state.up:  # noqa: ASYNC110 - nothing tells of it
            await asyncio.sleep(LOOK_S)
        print(json.dumps({"finished": asked["user"]}), flush=True)
        await asyncio.Event().wait()  # a bench that is done stays switched on
    finally:
        for task in running:
            task.cancel()
        await asyncio.wait(running)


def _habits(values: Json) -> Habits:
    slips = {
        name: frozenset((repeat, portion) for repeat, portion in value)
        for name, value in values.items()
        if isinstance(value, list)
    }
    return Habits(**{**values, **slips})


if __name__ == "__main__":
    main()
