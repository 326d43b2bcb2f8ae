"""Whole practicals on a probe that fails: the real reader on the virtual cup's tree, time that jumps."""

import asyncio
import json
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from station.bench.probes.one_wire import KeepingSensor, OneWireReader
from station.bench.virtual.cup import SCENARIOS
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript
from station.bench.virtual.student import VirtualStudent
from station.practical import events as e
from station.practical.dataset import from_question, question_for
from station.practical.kinds import read_plan
from station.practical.procedure import advance
from station.practical.results import results
from station.practical.state import State, Step
from tests.bench.virtual.bench_in_jumps import Bench, JumpingClock
from tests.records import PLAN_TEXT

AT_RANDOM = "random 30 %"
BURSTS = ", ".join(f"random 97 %@{start_s}+15" for start_s in range(40, 3000, 50))
"""15 s in every 50 s hardly a read succeeds: 29 % of all."""


class _Now:
    """Bench time for the reader: it has jumped to where it is, and reads take none."""

    speed = 1.0

    def __init__(self, clock: JumpingClock) -> None:
        self._clock = clock

    def at(self, _: float) -> float:
        return self._clock.now_s


class ReadBench(Bench):
    """A bench in jumps that reads as the station does."""

    def __init__(self, driver: VirtualDriver, clock: JumpingClock, repeats: int) -> None:
        super().__init__(driver, KeepingSensor, clock)
        plan = read_plan(PLAN_TEXT).model_copy(update={"repeats": repeats})
        self._happen((e.PlanChosen(plan.model_dump(mode="json")),))
        self._real = OneWireReader(_Now(clock), driver.tree.folder, driver.tree.probe_id, driver.prepare)  # type: ignore[arg-type]

    async def sampler(self) -> None:
        """Read once a second of bench time."""
        try:
            while self.state.step is not Step.DONE:
                taken = self._real.read()
                sample = e.SampleTaken(taken.temperature_c, taken.bad)
                self._happen(advance(self.state, sample, self._clock.now_s))
                await self._clock.sleep(1.0)
        finally:
            self._real.close()


@dataclass(frozen=True)
class Practical:
    """What came of one: its state, its results, and the true end-point in cm³."""

    state: State
    found: dict[str, Any]
    truth_cm3: float

    @property
    def bad(self) -> float:
        """The part of the samples that was bad."""
        samples = [each for repeat in self.state.repeats for each in repeat.samples]
        return sum(each.temperature_c is None for each in samples) / len(samples)

    @property
    def error_cm3(self) -> float | None:
        """How far the heat balance's end-point is from the truth; None where it was refused."""
        heat = self.found["mean"]["heat_balance"]
        return None if heat is None else heat["end_point_cm3"] - self.truth_cm3

    @property
    def holds(self) -> bool:
        """Whether the interval holds the truth."""
        heat = self.found["mean"]["heat_balance"]
        return heat is not None and heat["interval_95_cm3"][0] <= self.truth_cm3 <= heat["interval_95_cm3"][1]


def practical(faults: str, seed: int, repeats: int = 2) -> Practical:
    """Let a careful student do a whole practical. AssertionError when it does not come to its end."""
    parameters = next(iter(SCENARIOS.values()))(seed)
    with tempfile.TemporaryDirectory(dir="/dev/shm") as folder:
        script = FaultScript.parse(faults, seed) if faults else None
        with VirtualDriver(Path(folder) / "devices", parameters, seed=seed, faults=script) as driver:
            state = asyncio.run(_work(driver, seed, repeats))
    question = json.loads(json.dumps(question_for(state)))
    return Practical(state, results(*from_question(question)), parameters.end_point_cm3)


async def _work(driver: VirtualDriver, seed: int, repeats: int) -> State:
    clock = JumpingClock()
    bench = ReadBench(driver, clock, repeats)
    student = VirtualStudent(bench, driver, clock, seed=seed)
    sampling = asyncio.ensure_future(bench.sampler())
    await clock.run(student.run(), until_s=3000.0 * repeats)
    sampling.cancel()
    await asyncio.wait({sampling})
    return bench.state
