"""A bench without a probe lives: screens hear of it, nothing is sampled, readings are typed, a restart goes on."""

import asyncio
from pathlib import Path
from typing import Any

from station.bench.clock import Clock
from station.bench.loop import Bench, last_event
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.bench.probes.probe import NoProbe
from station.practical import events as e
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.staff import StaffAct
from station.practical.state import Step
from station.record.journal import Journal, read_events
from tests.conftest import PATIENCE_S
from tests.server.live import PLAN

STARTED = e.StationStarted("0", "none", None, "none")


async def opened(folder: Path, plan: Any = PLAN) -> Bench:
    journal = Journal(folder)
    clock = Clock.started(last_event(journal))
    bench = Bench.opened(journal, clock, NoProbe(), open_panel("none", PanelPins(), lambda: None))
    await bench.start(plan, STARTED)
    return bench


async def test_screens_hear_that_it_lives_and_no_sample_is_invented(tmp_path: Path) -> None:
    bench = await opened(tmp_path)
    heard: list[int] = []
    bench.listen(lambda stamped: heard.append(len(stamped)))
    running = asyncio.create_task(bench.run())
    async with asyncio.timeout(PATIENCE_S):
        while not heard:  # noqa: ASYNC110 - a beat changes nothing that could be waited for
            await asyncio.sleep(0.01)
    running.cancel()
    await asyncio.wait({running})
    assert heard[0] == 0
    assert not [each for each in read_events(tmp_path) if isinstance(each.event, e.SampleTaken)]


async def test_after_a_restart_the_next_reading_is_still_waited_for(tmp_path: Path) -> None:
    bench = await opened(tmp_path)
    acts: list[dict[str, Any]] = [
        {"act": "thermometer", "division_c": 0.1},
        {"act": "begin"},
        {"act": "reading", "temperature_c": 20.1},
        {"act": "portion_added", "portion": 1},
    ]
    for number, values in enumerate(acts):
        await bench.do({**values, "key": f"key {number}"})
    bench.close()
    again = await opened(tmp_path)
    assert again.state.step is Step.SETTLE
    assert again.state.thermometer_division_c == 0.1
    assert [each.temperature_c for each in again.state.repeats[0].readings] == [20.1]
    again.close()


async def test_a_plan_that_staff_chose_outlasts_a_restart(tmp_path: Path) -> None:
    assert isinstance(PLAN, PortionsPlan)
    bench = await opened(tmp_path)
    chosen = PLAN.model_copy(update={"title": "chosen by staff"})
    await bench.do(StaffAct(act="choose_plan", plan=chosen.model_dump(mode="json"), key="plan"))
    bench.close()
    again = await opened(tmp_path)
    assert again.state.plan.name == "chosen by staff"
    await again.do({"act": "finish", "key": "end"})
    again.close()
    after = await opened(tmp_path)
    assert after.state.plan == PLAN, "the next practical is the settings' again"
    after.close()
