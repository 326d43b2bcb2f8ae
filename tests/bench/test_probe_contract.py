"""One contract for all probe drivers: what a bench may rely on, whatever gives the readings."""

from collections.abc import Iterator
from pathlib import Path

import pytest

from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import Probe, ProbeError, ProbeReading
from station.practical import events as e
from station.practical.procedure import advance
from station.practical.state import Step
from tests.bench.one_wire_rig import PROBE, Collected, Hand
from tests.bench.probe_rigs import LONG_S, RIGS, Rig, read
from tests.practical.walk import Walk, kinds

READER_FAULTS = {
    "empty": "empty",
    "crc": "crc",
    "bus_high": "crc",
    "zeros": "zeros",
    "power_on": "power_on",
    "low_power": "power_on",
    "one_line": "garbled",
    "garbled": "garbled",
    "gone": "gone",
    "bus_gone": "gone",
    "no_answer": "no_answer",
}
"""Each way to fail, and the kind that the reader gives it."""

PRACTICAL_FAULTS = {"wire": "out_of_range", "jump": "jump"}
"""Readings that are right for the reader, and impossible for a cup."""

FAULTS = {**READER_FAULTS, **PRACTICAL_FAULTS}


@pytest.fixture(params=sorted(RIGS))
def rig(request: pytest.FixtureRequest, tmp_path: Path, hand: Hand) -> Iterator[Rig]:
    rig = RIGS[request.param](tmp_path / "devices", hand, 1.0)
    yield rig
    rig.close()


def test_it_is_a_probe(rig: Rig) -> None:
    probe: Probe = rig.reader
    assert probe.probe_id == PROBE


def test_a_good_reading(rig: Rig, hand: Hand) -> None:
    for second in range(3):
        taken = read(rig, hand)
        assert taken == ProbeReading(1000.375 + second, rig.measured_c(), None, None, 0.75)


@pytest.mark.fault("bad-answer")
@pytest.mark.parametrize(("fault", "kind"), READER_FAULTS.items())
def test_a_failure_is_named_and_gives_no_temperature(rig: Rig, hand: Hand, fault: str, kind: str) -> None:
    read(rig, hand)
    rig.spoil(fault)
    for _ in range(2):
        before_s = hand.now_s
        taken = read(rig, hand)
        assert (taken.temperature_c, taken.bad) == (None, kind)
        assert taken.time_s == before_s + (LONG_S if kind == "no_answer" else 0.375)
        assert (taken.text is None) == (kind == "gone")
        rig.spoil(fault)
    rig.spoil(None)
    taken = read(rig, hand)
    assert (taken.temperature_c, taken.bad) == (rig.measured_c(), None)


@pytest.mark.parametrize("fault", READER_FAULTS)
def test_a_failure_of_the_very_first_read(rig: Rig, hand: Hand, fault: str) -> None:
    rig.spoil(fault)
    assert read(rig, hand).bad == READER_FAULTS[fault]
    rig.spoil(None)
    assert read(rig, hand).bad is None


@pytest.mark.parametrize("fault", PRACTICAL_FAULTS)
def test_the_reader_passes_on_what_only_a_practical_can_doubt(rig: Rig, hand: Hand, fault: str) -> None:
    rig.spoil(fault)
    taken = read(rig, hand)
    assert taken.bad is None
    assert taken.temperature_c is not None
    assert abs(taken.temperature_c - rig.measured_c()) > 5.0


def carried(walk: Walk, rig: Rig, hand: Hand) -> list[e.Event]:
    """One reading, as the bench carries it to the procedure."""
    taken = read(rig, hand)
    sample = e.SampleTaken(taken.temperature_c, taken.bad, None, taken.text)
    walk.time_s = taken.time_s
    return walk.keep(list(advance(walk.state, sample, taken.time_s)))


def under_way(rig: Rig, hand: Hand) -> Walk:
    """A repeat with a portion in, and its temperature settling."""
    walk = Walk()
    for _ in range(2):
        carried(walk, rig, hand)
    walk.act("begin")
    walk.act("portion_added", portion=1)
    for _ in range(3):
        assert kinds(carried(walk, rig, hand)) == ["sample_taken"]
    return walk


@pytest.mark.parametrize("fault", FAULTS)
def test_two_failures_cost_a_repeat_two_samples(rig: Rig, hand: Hand, fault: str) -> None:
    walk = under_way(rig, hand)
    before = walk.state
    rig.spoil(fault)
    first = carried(walk, rig, hand)
    rig.spoil("crc" if fault == "jump" else fault)  # a second reading at the far end would confirm the jump
    second = carried(walk, rig, hand)
    rig.spoil(None)
    assert kinds(first + second) == ["sample_taken"] * 2
    assert isinstance(first[0], e.SampleTaken) and first[0].bad == FAULTS[fault]
    if fault != "no_answer":
        assert kinds(carried(walk, rig, hand)) == ["sample_taken"]
        assert walk.state.running is not None
        *_, one, two, after = walk.state.running.samples
        assert (one.temperature_c, two.temperature_c, after.temperature_c) == (None, None, rig.measured_c())
    assert walk.state.step is Step.SETTLE
    assert [portion.portion for portion in walk.state.repeats[0].portions] == [1]
    assert walk.state.repeats[0].readings == before.repeats[0].readings


@pytest.mark.fault("unplugged")
@pytest.mark.parametrize("fault", ["gone", "bus_gone", "empty"])
def test_a_probe_pulled_and_put_back(rig: Rig, hand: Hand, fault: str) -> None:
    """Lost after three; found when a second reading agrees: the first may be what a clone woke up with."""
    walk = under_way(rig, hand)
    count = len(walk.state.repeats[0].samples)
    rig.spoil(fault)
    assert [kinds(carried(walk, rig, hand)) for _ in range(8)] == [
        ["sample_taken"],
        ["sample_taken"],
        ["sample_taken", "probe_lost"],
        *([["sample_taken"]] * 5),
    ]
    assert walk.state.probe == "lost"
    rig.spoil(None)
    (first,) = carried(walk, rig, hand)
    assert isinstance(first, e.SampleTaken)
    assert (first.temperature_c, first.bad, first.rejected_c) == (None, "jump", rig.measured_c())
    assert kinds(carried(walk, rig, hand)) == ["sample_taken", "probe_found"]
    samples = walk.state.repeats[0].samples[count:]
    assert [sample.bad for sample in samples] == [fault.removeprefix("bus_")] * 8 + ["jump", None]
    assert (walk.state.step, walk.state.poured, walk.state.probe) == (Step.SETTLE, 1, "ok")


@pytest.mark.fault("copy-wakes-at-25")
def test_a_clone_that_wakes_up_at_25_is_not_believed(rig: Rig, hand: Hand) -> None:
    """Power-on value of a family of clones (counterfeit_DS18B20, C. Petrich): 25 °C, then the truth."""
    walk = under_way(rig, hand)
    rig.spoil("gone")
    for _ in range(6):
        carried(walk, rig, hand)
    rig.spoil("jump")
    (woken,) = carried(walk, rig, hand)
    rig.spoil(None)
    (true,) = carried(walk, rig, hand)
    assert [each.bad for each in (woken, true) if isinstance(each, e.SampleTaken)] == ["jump"] * 2
    assert kinds(carried(walk, rig, hand)) == ["sample_taken", "probe_found"]
    assert walk.state.recent[-1].temperature_c == rig.measured_c()


@pytest.mark.parametrize("name", sorted(RIGS))
def test_it_samples_in_a_thread_until_it_is_closed(name: str, tmp_path: Path, hand: Hand) -> None:
    rig, collected = RIGS[name](tmp_path / "devices", hand, 200.0), Collected()
    rig.reader.start(collected)
    readings = collected.wait(3)
    rig.close()
    rig.reader.close()
    count = len(collected.readings)
    assert [each.bad for each in readings] == [None] * 3
    assert [each.time_s for each in readings] == sorted({each.time_s for each in readings})
    assert rig.reader._thread is not None and not rig.reader._thread.is_alive()
    assert len(collected.readings) == count


@pytest.mark.fault("two-readers")
def test_one_reader_a_tree(rig: Rig) -> None:
    with pytest.raises(ProbeError, match="already reads a probe"):
        OneWireReader(rig.reader._clock, rig.reader._tree, PROBE)
