"""A whole bench without a wall clock: the real procedure over the virtual cup, time that jumps.

The cup's tree is read by the real reading library; what it cannot read is a bad sample.
"""

import asyncio
import heapq
from collections.abc import Coroutine
from typing import Any

from w1thermsensor import Sensor, W1ThermSensor, W1ThermSensorError

from station.bench.virtual.driver import VirtualDriver
from station.practical import events as e
from station.practical.acts import Act
from station.practical.contract import View
from station.practical.fold import fold
from station.practical.plan import Plan
from station.practical.procedure import advance
from station.practical.state import State, Step
from station.practical.view import view


class JumpingClock:
    """Bench time that jumps to the next sleeper as soon as everybody sleeps."""

    def __init__(self) -> None:
        self.now_s = 0.0
        self._sleepers: list[tuple[float, int, asyncio.Future[None]]] = []
        self._count = 0

    def time_s(self) -> float:
        return self.now_s

    async def sleep(self, bench_seconds: float) -> None:
        future = asyncio.get_running_loop().create_future()
        self._count += 1
        heapq.heappush(self._sleepers, (self.now_s + bench_seconds, self._count, future))
        await future

    async def run(self, main: Coroutine[Any, Any, None], until_s: float) -> None:
        """Run until `main` is over; AssertionError when that takes more than `until_s`."""
        task = asyncio.ensure_future(main)
        while not task.done():
            for _ in range(4):
                await asyncio.sleep(0)
            if task.done():
                break
            assert self._sleepers, "everybody waits for somebody else"
            self.now_s, _, future = heapq.heappop(self._sleepers)
            if self.now_s > until_s:
                task.cancel()
                raise AssertionError(f"not done at {until_s} s")
            future.set_result(None)
        await task


class Bench:
    """Fulfils `Operable`; `sampler` must run beside the student."""

    def __init__(
        self, driver: VirtualDriver, reader: type[W1ThermSensor], clock: JumpingClock, plan: Plan | None = None
    ) -> None:
        self.state = State() if plan is None else State(plan=plan)
        self.acts: list[dict[str, Any]] = []
        self._driver, self._reader, self._clock = driver, reader, clock
        self._change: asyncio.Future[None] = asyncio.get_running_loop().create_future()

    def view(self) -> View:
        return view(self.state, self._clock.now_s)

    async def do(self, act: dict[str, Any]) -> None:
        self._happen(advance(self.state, Act.model_validate(act), self._clock.now_s))
        self._driver.world.advance(self._clock.now_s)
        self.acts.append({**act, "still_to_flow_cm3": self._driver.world.still_to_flow_cm3})

    async def changed(self) -> None:
        await asyncio.shield(self._change)

    async def sampler(self) -> None:
        while self.state.step is not Step.DONE:
            self._driver.prepare(self._clock.now_s)
            try:
                sensor = self._reader(Sensor.DS18B20, self._driver.tree.probe_id[3:])
                sample = e.SampleTaken(sensor.get_temperature())
            except (W1ThermSensorError, OSError, ValueError, IndexError):
                sample = e.SampleTaken(None, "empty")
            self._happen(advance(self.state, sample, self._clock.now_s))
            await self._clock.sleep(1.0)

    def _happen(self, happened: tuple[e.Event, ...]) -> None:
        before = self.state.step
        for event in happened:
            self.state = fold(self.state, e.Stamped(0, "", 0.0, self._clock.now_s, "", "", event))
        merely_sample = all(isinstance(event, e.SampleTaken) for event in happened)
        if self.state.step is not before or not merely_sample:
            self._change.set_result(None)
            self._change = asyncio.get_running_loop().create_future()
