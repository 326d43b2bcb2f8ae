"""The register on a real one-wire tree, reader and journal: over a new practical, restarts, a swap of probes."""

import asyncio
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from pathlib import Path

import pytest

from station.bench.clock import Clock
from station.bench.loop import Bench, last_event, signal_of
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.bench.panel.signals import Signal
from station.bench.probes.one_wire import OneWireReader
from station.bench.virtual.tree import OneWireTree
from station.practical import events as e
from station.practical.checks.run import checks_view
from station.practical.fold import fold_all
from station.practical.staff import StaffAct
from station.record.exchange import newest_practical
from station.record.journal import Journal, read_events
from tests.conftest import PATIENCE_S
from tests.server.live import PLAN

COPY, OTHER = "28-0316a2795fee", "28-00000b5eca01"
SPEED = 100.0


@asynccontextmanager
async def at_work(folder: Path, probe_id: str, says_c: float) -> AsyncIterator[Bench]:
    """A bench that was started with this probe plugged in; a second of its time is ten milliseconds."""
    tree = OneWireTree(folder / f"tree-{probe_id}", probe_id)
    tree.write(says_c)
    journal = Journal(folder / "record")
    clock = Clock.started(last_event(journal), SPEED)
    probe = OneWireReader(clock, tree.folder)
    bench = Bench.opened(journal, clock, probe, open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, e.StationStarted("0", "one-wire", probe.probe_id, "none"))
    running = asyncio.create_task(bench.run())
    try:
        async with asyncio.timeout(PATIENCE_S):
            yield bench
    finally:
        running.cancel()
        with suppress(asyncio.CancelledError):
            await running


async def until_seen(bench: Bench, probe_id: str) -> None:
    while bench.state.probes.probe_id != probe_id or not bench.state.recent:  # noqa: ASYNC110 - no sound of a sample
        await asyncio.sleep(0.01)


async def staff(bench: Bench, act: str, **values: object) -> None:
    await bench.do(StaffAct.model_validate({"act": act, "by": "technician", **values}))


async def test_a_correction_belongs_to_its_probe_whatever_is_begun_restarted_or_swapped(tmp_path: Path) -> None:
    async with at_work(tmp_path, COPY, 0.4375) as bench:
        await until_seen(bench, COPY)
        await staff(bench, "check_begin", check="ice", values={"water": "distilled"})
        assert signal_of(bench.state) is Signal.WAIT, "nobody is asked to begin"
        await staff(bench, "check_step", step="in")
        while (check := bench.state.probes.check) is not None and check.found is None:
            await bench.changed()
        await staff(bench, "check_save")
        await staff(bench, "choose_plan", plan=PLAN.model_dump(mode="json"))
        in_use = bench.state.probes.in_use
        assert in_use is not None
        counted = bench.state.probes.entry(COPY).tally.samples

    async with at_work(tmp_path, OTHER, 21.0) as bench:
        await until_seen(bench, OTHER)
        assert bench.state.probes.in_use is None
        assert bench.state.recent[-1].correction_c == 0.0
        assert bench.state.probes.entry(COPY).tally.samples >= counted

    async with at_work(tmp_path, COPY, 20.4375) as bench:
        await until_seen(bench, COPY)
        assert bench.state.probes.in_use == in_use
        while bench.state.recent[-1].said_c != pytest.approx(20.4375):  # noqa: ASYNC110 - no sound of a sample
            await asyncio.sleep(0.01)
        assert bench.state.recent[-1].temperature_c == pytest.approx(20.0, abs=0.02)
        shown = checks_view(bench.state, bench.clock.time_s(), "2026-11-30T10:00:00", "network")
        first, second = sorted(shown["probes"], key=lambda each: str(each["probe_id"]))
        assert (first["probe_id"], second["probe_id"]) == (OTHER, COPY)
        assert second["at_work"]
        assert "maker's pattern" in (second["against"] or [""])[0]
        assert first["against"] is not None
        assert not any("pattern" in each for each in first["against"])
        assert [each["used"] for each in second["checks"]] == [True]

    happened = list(read_events(tmp_path / "record"))
    raw = {each.event.temperature_c for each in happened if isinstance(each.event, e.SampleTaken)}
    assert raw <= {0.4375, 20.4375, 21.0, None}, "the journal has what the probes said"
    # A file is made from the practical's own events alone.
    assert fold_all(newest_practical(tmp_path / "record")).probes.in_use == in_use


@pytest.mark.parametrize(
    ("then", "clock", "age"),
    [("2026-11-12T08:00:00", "network", 18), ("2026-11-12T08:00:00", "none", None), ("", "network", None)],
)
async def test_an_age_is_said_only_where_both_clocks_were_set(then: str, clock: str, age: int | None) -> None:
    events = [e.ProbeLookedAt(COPY, []), e.ProbeChecked("dip", 1, COPY, {}, "technician")]
    state = fold_all(e.Stamped(seq, "b", 0.0, 0.0, then, clock, event) for seq, event in enumerate(events, 1))
    shown = checks_view(state, 0.0, "2026-11-30T10:00:00", "network")
    assert shown["probes"][0]["checks"][0]["age_days"] == age
