"""A lesson without waiting: the events of benches at which virtual students worked with the real procedure."""

import asyncio
import itertools
import os
import tempfile
from concurrent.futures import ThreadPoolExecutor
from dataclasses import replace
from functools import cache
from pathlib import Path

os.environ["W1THERMSENSOR_NO_KERNEL_MODULE"] = "1"

from w1thermsensor import W1ThermSensor

from station.bench.virtual.cup import SCENARIOS
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript
from station.bench.virtual.student import Habits, VirtualStudent
from station.practical import events as e
from station.practical.fold import fold, fold_all
from station.practical.kinds import read_plan
from station.practical.plan import Plan
from station.practical.state import Step
from tests.bench.virtual.bench_in_jumps import Bench, JumpingClock
from tests.records import PLAN_TEXT

SHORT = read_plan(PLAN_TEXT.replace("repeats = 2", "repeats = 1"))
"""One repeat of ten portions."""


class Recording(Bench):
    """A bench that remembers its events as a journal would number them."""

    def __init__(self, driver: VirtualDriver, reader: type[W1ThermSensor], clock: JumpingClock, plan: Plan) -> None:
        super().__init__(driver, reader, clock)
        self.kept: list[e.Stamped] = []
        started = e.StationStarted("0", "virtual", driver.tree.probe_id, "none")
        self._happen((started, e.PlanChosen(plan.model_dump(mode="json"))))

    def _happen(self, happened: tuple[e.Event, ...]) -> None:
        before, now_s = self.state.step, self._clock.now_s
        for event in happened:
            wall = f"2026-03-02T09:{int(now_s // 60) % 60:02d}:{now_s % 60:06.3f}+00:00"
            stamped = e.Stamped(len(self.kept) + 1, "boot", now_s, now_s, wall, "network", event)
            self.kept.append(stamped)
            self.state = fold(self.state, stamped)
        if self.state.step is not before or not all(isinstance(event, e.SampleTaken) for event in happened):
            self._change.set_result(None)
            self._change = asyncio.get_running_loop().create_future()


@cache
def events_of(seed: int, habits: Habits | None = None, faults: str = "", plan: Plan = SHORT) -> tuple[e.Stamped, ...]:
    """The events of one bench from its start to the end of its practical."""
    with tempfile.TemporaryDirectory() as folder, ThreadPoolExecutor(1) as thread:  # a loop may be running here
        work = _worked(Path(folder), seed, habits or Habits(), faults, plan)
        return thread.submit(asyncio.run, work).result()


def with_results(events: tuple[e.Stamped, ...], rule: str) -> tuple[e.Stamped, ...]:
    """The same events under a plan that shows results at another time."""
    return tuple(
        replace(each, event=e.PlanChosen({**each.event.plan, "results": rule}))
        if isinstance(each.event, e.PlanChosen)
        else each
        for each in events
    )


async def _worked(folder: Path, seed: int, habits: Habits, faults: str, plan: Plan) -> tuple[e.Stamped, ...]:
    class Reader(W1ThermSensor):  # type: ignore[misc]
        BASE_DIRECTORY = folder / "devices"

    # The acid is the same in all cups of a class.
    parameters = replace(SCENARIOS["nitric-acid-potassium-hydroxide"](seed), acid_concentration_mol_dm3=0.392)
    driver = VirtualDriver(folder / "devices", parameters, seed=seed, faults=FaultScript.parse(faults, seed))
    clock = JumpingClock()
    bench = Recording(driver, Reader, clock, plan)
    student = VirtualStudent(bench, driver, clock, seed=seed, habits=habits)
    sampling = asyncio.ensure_future(bench.sampler())
    await clock.run(student.run(), until_s=2500.0)
    sampling.cancel()
    driver.close()
    return tuple(bench.kept)


def until(events: tuple[e.Stamped, ...], time_s: float) -> tuple[e.Stamped, ...]:
    """What had happened at this bench time."""
    return tuple(itertools.takewhile(lambda each: each.time_s <= time_s, events))


def step_of(events: tuple[e.Stamped, ...]) -> Step:
    """The step that these events lead to."""
    return fold_all(events).step
