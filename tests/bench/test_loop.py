"""The loop ends when it is told to, whatever happens at that very moment."""

import asyncio
from pathlib import Path

import pytest

from station.bench.clock import Clock
from station.bench.loop import Bench
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.practical import events as e
from station.record.journal import Journal, read_events
from tests.conftest import PATIENCE_S
from tests.server.live import PLAN, STARTED, HandProbe


@pytest.mark.parametrize("steps", range(8))
async def test_a_sample_that_arrives_as_the_bench_is_stopped_does_not_keep_it_going(tmp_path: Path, steps: int) -> None:
    """In Python 3.11 `asyncio.wait_for` swallows a cancellation that meets its result."""
    journal, clock = Journal(tmp_path), Clock.started()
    probe = HandProbe(clock)
    bench = Bench.opened(journal, clock, probe, open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED)
    running = asyncio.create_task(bench.run())
    await asyncio.sleep(0.01)
    probe.read(21.0)
    for _ in range(steps):
        await asyncio.sleep(0)
    running.cancel()
    done, _ = await asyncio.wait({running}, timeout=PATIENCE_S)
    assert done
    assert running.cancelled()
    kept = [each.event for each in read_events(tmp_path)]
    assert kept[2:] in ([], [e.SampleTaken(21.0)])


@pytest.mark.fault("read-hangs")
async def test_a_probe_that_hangs_gives_bad_samples_and_the_loop_goes_on(tmp_path: Path) -> None:
    journal, clock = Journal(tmp_path), Clock.started(None, 200.0)  # patience is half a second of wall time then
    bench = Bench.opened(journal, clock, HandProbe(clock), open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED)
    running = asyncio.create_task(bench.run())
    async with asyncio.timeout(PATIENCE_S):
        while not bench.state.recent:  # noqa: ASYNC110 - nothing tells of a mere sample
            await asyncio.sleep(0.01)
    assert [each.bad for each in bench.state.recent] == ["no_answer"]
    running.cancel()
    await asyncio.wait({running})


async def test_two_presses_of_the_button_are_one_portion(tmp_path: Path) -> None:
    journal, clock = Journal(tmp_path), Clock.started()
    bench = Bench.opened(journal, clock, HandProbe(clock), open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED)
    await bench.do({"act": "begin", "key": "k"})
    await bench._keep([e.PortionPrompted(1, 1)])
    bench.press()
    bench.press()
    async with asyncio.timeout(PATIENCE_S):
        while bench.state.poured == 0:
            await bench.changed()
    await asyncio.sleep(0.05)
    added = [each.event for each in read_events(tmp_path) if isinstance(each.event, e.PortionAdded)]
    assert [(each.portion, each.by, each.early) for each in added] == [(1, "button", False)]
    bench.close()


async def test_with_nothing_asked_the_button_does_nothing(tmp_path: Path) -> None:
    journal, clock = Journal(tmp_path), Clock.started()
    bench = Bench.opened(journal, clock, HandProbe(clock), open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED)
    await bench.do({"act": "begin", "key": "k"})  # waits for the start temperature: nothing to press
    before = journal.last_seq
    bench.press()
    await asyncio.sleep(0.05)
    assert journal.last_seq == before
    bench.close()
