"""Bench time goes on over restarts and reboots and never goes back, whatever the wall clock does."""

import asyncio
import time
from datetime import UTC, datetime, timedelta
from types import SimpleNamespace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench import clock as clock_module
from station.bench.clock import LONGEST_GAP_S, Clock, boot_id
from station.practical import events as e
from station.record.journal import Moment
from tests.conftest import PATIENCE_S


def newest(
    boot: str = "this boot", monotonic_s: float = 0.0, time_s: float = 0.0, wall: str = "2026-09-01T09:00:00+00:00"
) -> e.Stamped:
    return e.Stamped(1, boot, monotonic_s, time_s, wall, "none", e.ProbeFound())


@pytest.fixture
def machine(monkeypatch: pytest.MonkeyPatch) -> "Machine":
    return Machine(monkeypatch)


class Machine:
    """A machine whose boot, monotonic clock and wall clock are set by hand."""

    def __init__(self, monkeypatch: pytest.MonkeyPatch) -> None:
        self.boot, self.monotonic_s, self.wall = "this boot", 1000.0, datetime(2026, 9, 1, 9, tzinfo=UTC)
        monkeypatch.setattr(clock_module, "boot_id", lambda: self.boot)
        monkeypatch.setattr(clock_module, "time", SimpleNamespace(monotonic=lambda: self.monotonic_s))
        monkeypatch.setattr(clock_module, "datetime", self)

    def now(self, zone: object) -> datetime:
        return self.wall

    def fromisoformat(self, text: str) -> datetime:
        return datetime.fromisoformat(text)

    def pass_s(self, seconds: float) -> None:
        self.monotonic_s += seconds
        self.wall += timedelta(seconds=seconds)

    def restart(self, at: Moment, speed: float = 1.0) -> Clock:
        return Clock.started(newest(at.boot, at.monotonic_s, at.time_s, at.wall), speed)


def test_the_first_start_begins_at_zero(machine: Machine) -> None:
    clock = Clock.started()
    assert clock.time_s() == 0.0
    machine.pass_s(2.5)
    assert clock.time_s() == 2.5


@given(
    speed=st.sampled_from([1.0, 30.0, 200.0]),
    lived_s=st.floats(0, 1e5),
    gone_s=st.floats(0, 1e5),
    ago_s=st.floats(0, 3),
)
def test_over_a_restart_in_one_boot_bench_time_is_one_straight_line(
    speed: float, lived_s: float, gone_s: float, ago_s: float
) -> None:
    """A sample is stamped in the middle of its conversion, before its commit: that must not set the clock back."""
    with pytest.MonkeyPatch.context() as patch:
        machine = Machine(patch)
        clock = Clock.started(None, speed)
        machine.pass_s(lived_s)
        moment = clock.moment(clock.time_s() - ago_s * speed)
        machine.pass_s(gone_s)
        again = machine.restart(moment, speed)
        assert again.time_s() == pytest.approx(clock.time_s(), abs=3e-4 * speed)


@pytest.mark.fault("wrong-clock")
def test_over_a_restart_a_wall_clock_that_jumps_a_year_changes_nothing(machine: Machine) -> None:
    clock = Clock.started()
    machine.pass_s(10.0)
    moment = clock.moment()
    for year in (2025, 2027):
        machine.wall = machine.wall.replace(year=year)
        assert machine.restart(moment).time_s() == 10.0


def test_over_a_reboot_a_believable_wall_clock_tells_the_gap(machine: Machine) -> None:
    clock = Clock.started()
    machine.pass_s(100.0)
    moment = clock.moment()
    machine.boot, machine.monotonic_s, machine.wall = "next boot", 8.0, machine.wall + timedelta(seconds=45)
    assert machine.restart(moment).time_s() == pytest.approx(145.0)


@pytest.mark.parametrize(
    "jump", [timedelta(days=-365), timedelta(0), timedelta(days=365), timedelta(seconds=LONGEST_GAP_S)]
)
def test_over_a_reboot_an_unbelievable_wall_clock_only_keeps_the_order(machine: Machine, jump: timedelta) -> None:
    """No clock chip and no network: the wall stands still, or goes back, or is set by a year at once."""
    clock = Clock.started()
    machine.pass_s(100.0)
    moment = clock.moment()
    machine.boot, machine.monotonic_s, machine.wall = "next boot", 8.0, machine.wall + jump
    assert machine.restart(moment).time_s() == pytest.approx(101.0)


@pytest.mark.parametrize("wall", ["", "yesterday", "2026-09-01T09:00:00"])
def test_a_label_that_is_no_time_only_keeps_the_order(machine: Machine, wall: str) -> None:
    assert Clock.started(newest("an older boot", 5.0, 77.0, wall)).time_s() == 78.0


def test_a_boot_that_is_not_known_is_never_taken_for_the_same(machine: Machine) -> None:
    machine.boot = "unknown"
    label = machine.wall.isoformat()
    machine.pass_s(3.0)
    assert Clock.started(newest("unknown", 1.0, 50.0, label)).time_s() == pytest.approx(53.0)


def test_time_runs_at_its_speed_and_a_moment_fits_the_line(machine: Machine) -> None:
    clock = Clock.started(None, 30.0)
    machine.pass_s(2.0)
    assert clock.time_s() == 60.0
    moment = clock.moment(45.0)
    assert (moment.time_s, moment.monotonic_s, moment.boot) == (45.0, 1001.5, "this boot")
    assert datetime.fromisoformat(moment.wall) == machine.wall
    assert clock.at(moment.monotonic_s) == 45.0


def test_a_virtual_cups_time_waits_for_the_samples_and_goes_on_from_there(machine: Machine) -> None:
    clock = Clock.started(None, 60.0, lead_s=3.0)
    machine.pass_s(1.0)
    asked_early_s = machine.monotonic_s
    machine.pass_s(9.0)
    assert clock.time_s() == 3.0
    assert clock.at(asked_early_s) == 3.0, "a thread that was stopped for nine seconds"
    clock.worked_on(2.5)
    assert clock.time_s() == 3.0, "it goes on from where it was held"
    machine.pass_s(1 / 60)
    assert clock.time_s() == pytest.approx(4.0)
    clock.worked_on(1.0)
    machine.pass_s(10.0)
    assert clock.time_s() == 5.5
    assert clock.moment(5.5).monotonic_s == pytest.approx(machine.monotonic_s)


@given(
    st.lists(
        st.one_of(
            st.tuples(st.just("pass"), st.floats(0, 30)),
            st.tuples(st.just("worked"), st.floats(-10, 1)),
            st.tuples(st.just("late"), st.floats(0, 30)),
        ),
        max_size=40,
    )
)
def test_a_virtual_cups_time_never_goes_back(steps: list[tuple[str, float]]) -> None:
    with pytest.MonkeyPatch.context() as patch:
        machine = Machine(patch)
        clock = Clock.started(None, 60.0, lead_s=3.0)
        newest_s = latest_s = 0.0
        for what, amount in steps:
            if what == "pass":
                machine.pass_s(amount)
            elif what == "worked":
                clock.worked_on(newest_s + amount)
                latest_s = max(latest_s, newest_s + amount)
            now_s = clock.at(machine.monotonic_s - (amount / 60 if what == "late" else 0.0))
            assert now_s <= latest_s + 3.0 + 1e-4
            if what != "late":
                assert now_s >= newest_s
                newest_s = now_s


async def test_sleeping_waits_for_a_virtual_cups_samples(machine: Machine) -> None:
    clock = Clock.started(None, 200.0, lead_s=3.0)
    asleep = asyncio.ensure_future(clock.sleep(4.0))
    await asyncio.sleep(0)
    for _ in range(10):
        machine.pass_s(1.0)
        await asyncio.sleep(0.001)
    assert not asleep.done()
    clock.worked_on(2.0)
    machine.pass_s(1.0)
    await asyncio.wait_for(asleep, PATIENCE_S)


async def test_sleeping_takes_bench_seconds() -> None:
    clock = Clock.started(None, 200.0)
    begun_s = time.monotonic()
    await clock.sleep(4.0)
    await clock.sleep(-1.0)
    assert time.monotonic() - begun_s > 0.019
    await asyncio.wait_for(clock.sleep(0.0), PATIENCE_S)


def test_the_boot_is_the_kernels_own() -> None:
    assert boot_id() == boot_id()
    assert len(boot_id()) == 36


@pytest.mark.fault("wrong-clock")
@pytest.mark.parametrize("days", [-365, 365])
def test_a_wall_clock_that_jumps_at_work_moves_no_interval(machine: Machine, days: int) -> None:
    clock = Clock.started()
    before = clock.moment()
    machine.pass_s(10.0)
    machine.wall += timedelta(days=days)
    after = clock.moment()
    assert (after.time_s - before.time_s, after.monotonic_s - before.monotonic_s) == (10.0, 10.0)
    assert after.wall[:4] == str(2026 + days // 365), "the label alone is what the wall says"
