"""The reader's thread: its rate, signals, reads that hang, and the end."""

import ctypes
import errno
import os
import signal
import threading
from itertools import pairwise

import pytest

from station.bench.clock import Clock
from station.bench.probes import probe as reading
from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import ProbeReading
from tests.bench.one_wire_rig import PROBE, Collected, Hand, Opened, PlainTree
from tests.conftest import PATIENCE_S


class Waits(threading.Event):
    """Waiting moves the hand instead of taking time."""

    def __init__(self, hand: Hand) -> None:
        super().__init__()
        self._hand = hand

    def wait(self, timeout: float | None = None) -> bool:
        self._hand.now_s += timeout or 0.0
        return self.is_set()


def times_of(reader: OneWireReader, hand: Hand, count: int) -> list[float]:
    """The bench times of the first readings, with a hand that moves only by conversions and waits."""
    stop = reader._stop = Waits(hand)
    times: list[float] = []

    def deliver(taken: ProbeReading) -> None:
        times.append(taken.time_s)
        if len(times) == count:
            stop.set()

    reader.start(deliver)
    assert reader._thread is not None
    reader._thread.join(PATIENCE_S)
    return times


@pytest.mark.fault("fixed-rate")
def test_the_rate_is_fixed_and_does_not_drift(opened: Opened, hand: Hand) -> None:
    """A thousand conversions of uneven length: every one begins on its whole second."""
    begun: list[float] = []

    def convert(time_s: float) -> None:
        begun.append(time_s)
        hand.now_s += 0.5 + (len(begun) % 4) / 16

    times_of(opened(before_read=convert), hand, 1000)
    assert begun == [1000.0 + second for second in range(1000)]


def test_a_long_read_is_followed_by_the_old_rate_without_a_burst(opened: Opened, hand: Hand) -> None:
    begun: list[float] = []

    def convert(time_s: float) -> None:
        begun.append(time_s)
        hand.now_s += 7.25 if len(begun) == 3 else 0.0

    times_of(opened(before_read=convert), hand, 7)
    assert begun == [1000.0, 1001.0, 1002.0, 1009.25, 1009.25, 1010.25, 1011.25]


def test_bench_time_that_runs_faster_is_sampled_as_densely(opened: Opened, hand: Hand) -> None:
    times = times_of(opened(speed=64.0), hand, 5)
    assert [after - before for before, after in pairwise(times)] == [1.0] * 4


def test_each_sample_of_a_virtual_cup_has_a_time_of_its_own(tree: PlainTree) -> None:
    clock = Clock.started(None, 200.0, lead_s=3.0)
    reader, collected = OneWireReader(clock, tree.folder, PROBE), Collected()
    reader.start(collected)
    try:
        for number in range(1, 12):
            clock.worked_on(collected.wait(number)[-1].time_s)
        times = [each.time_s for each in collected.wait(12)]
    finally:
        reader.close()
    assert all(after - before > 0.4 for before, after in pairwise(times)), times


@pytest.mark.fault("signal-in-conversion")
def test_signals_do_not_reach_a_conversion(tree: PlainTree, opened: Opened) -> None:
    """The kernel's wait for a conversion is cut by a signal to the reading thread: here usleep stands for it."""
    libc = ctypes.CDLL(None, use_errno=True)
    converting = threading.Event()
    waits: list[tuple[int, int]] = []

    def convert(_: float) -> None:
        converting.set()
        ctypes.set_errno(0)
        waits.append((libc.usleep(30_000), ctypes.get_errno()))

    heard: list[int] = []
    before = signal.signal(signal.SIGUSR1, lambda number, _: heard.append(number))
    try:
        reader, collected = opened(speed=100.0, before_read=convert), Collected()
        reader.start(collected)
        assert converting.wait(PATIENCE_S)
        assert reader._thread is not None and reader._thread.ident is not None
        for _ in range(20_000):
            if collected.readings:
                break
            os.kill(os.getpid(), signal.SIGUSR1)
            signal.pthread_kill(reader._thread.ident, signal.SIGUSR1)
        readings = collected.wait(2)
        reader.close()
    finally:
        signal.signal(signal.SIGUSR1, before)
    assert waits[:2] == [(0, 0)] * 2, f"cut short: {errno.errorcode.get(waits[0][1])}"
    assert [each.temperature_c for each in readings] == [21.0] * 2
    assert heard


@pytest.mark.fault("read-hangs")
def test_close_does_not_wait_for_a_read_that_hangs(
    tree: PlainTree, opened: Opened, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reading, "LEAST_PATIENCE_S", 0.01)
    let_go = tree.pipe()
    reader, collected = opened(speed=200.0), Collected()
    reader.start(collected)
    reader.close()
    thread = reader._thread
    assert thread is not None and thread.is_alive() and thread.daemon
    let_go.set()
    thread.join(PATIENCE_S)
    assert not thread.is_alive()
    assert collected.readings == []  # nothing comes after close


@pytest.mark.fault("read-hangs")
def test_a_read_that_hangs_is_named_when_it_comes_back(
    tree: PlainTree, opened: Opened, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(reading, "LEAST_PATIENCE_S", 0.02)
    tree.pipe(held_s=0.05)
    result = opened(speed=200.0).read()
    assert (result.temperature_c, result.bad) == (None, "no_answer")
    assert result.took_s >= 0.02


def test_close_before_start_and_start_after_close(opened: Opened) -> None:
    reader, collected = opened(), Collected()
    reader.close()
    reader.start(collected)
    assert reader._thread is not None
    reader._thread.join(PATIENCE_S)
    assert collected.readings == []


def test_patience_is_three_conversions_and_never_less_than_a_hiccup() -> None:
    """750 ms is the longest conversion of the data sheet; a busy machine stops a thread for a second."""
    assert reading.answer_within_s(1.0) == 2.5
    assert reading.answer_within_s(200.0) == 1.5
