"""The reader on a plain folder: which probe, one read a conversion, its time, and a true 85 °C."""

from pathlib import Path

import pytest

from station.bench.clock import Clock
from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import ProbeError
from tests.bench.one_wire_rig import PROBE, Hand, Opened, PlainTree, good


@pytest.mark.parametrize("probe_id", ["", "28-", "0316a2795fee", "10-000802b4ba0e", "28-0316A2795FEE", f"{PROBE}\n"])
def test_an_id_that_is_not_a_ds18b20s_is_refused(opened: Opened, probe_id: str) -> None:
    with pytest.raises(ProbeError, match="28- and twelve hexadecimal digits"):
        opened(probe_id)


def test_one_reader_per_tree(opened: Opened) -> None:
    first = opened()
    with pytest.raises(ProbeError, match="already reads a probe"):
        opened()
    first.close()
    first.close()
    assert opened().read().temperature_c == 21.0
    first.close()  # a third close must not let go what is another's by now
    with pytest.raises(ProbeError, match="already reads a probe"):
        opened()


def test_readers_of_two_trees_do_not_disturb_each_other(opened: Opened, tmp_path: Path) -> None:
    """A rehearsal has many virtual cups in one process, each with a tree of its own."""
    other = PlainTree(tmp_path / "other")
    other.text(good(352))
    second = OneWireReader(Clock(0.0), other.folder, PROBE)
    assert (opened().read().temperature_c, second.read().temperature_c) == (21.0, 22.0)
    second.close()


def test_a_refused_id_does_not_take_the_place_of_a_reader(opened: Opened) -> None:
    with pytest.raises(ProbeError):
        opened("28-nonsense")
    assert opened().read().temperature_c == 21.0


@pytest.mark.fault("ghost-probes")
def test_an_unpinned_reader_pins_itself_to_the_only_probe(tree: PlainTree, opened: Opened) -> None:
    """Ghosts of family 00 come from noise; other families and the master's folder are no DS18B20 either."""
    for other in ("00-400000000000", "00-c00000000000", "10-000802b4ba0e", "3b-0000005555aa", "w1_bus_master1"):
        (tree.folder / other).mkdir()
        (tree.folder / other / "w1_slave").write_text(good(999))
    reader = opened(None)
    assert reader.probe_id is None
    assert reader.read().temperature_c == 21.0
    assert reader.probe_id == PROBE


@pytest.mark.fault("another-probe")
def test_it_stays_with_its_probe(tree: PlainTree, opened: Opened) -> None:
    reader = opened(None)
    reader.read()
    other = tree.folder / "28-00000b5eca01"
    other.mkdir()
    (other / "w1_slave").write_text(good(999))
    assert reader.read().temperature_c == 21.0
    tree.gone()
    result = reader.read()
    assert (result.bad, result.text) == ("other_probe", "28-00000b5eca01")
    assert reader.probe_id == PROBE
    tree.text(good(352))
    assert reader.read().temperature_c == 22.0


@pytest.mark.fault("several-probes")
def test_it_never_chooses_between_two_and_names_them(tree: PlainTree, opened: Opened) -> None:
    other = tree.folder / "28-00000b5eca01"
    other.mkdir()
    reader = opened(None)
    result = reader.read()
    assert (result.bad, result.text) == ("several", f"28-00000b5eca01, {PROBE}")
    other.rmdir()
    assert reader.read().temperature_c == 21.0
    assert reader.probe_id == PROBE


@pytest.mark.fault("read-fails-around")
def test_what_goes_wrong_before_a_read_costs_that_read_alone(tree: PlainTree, opened: Opened) -> None:
    """A virtual cup whose folder is full or gone must not end the thread that reads."""
    script = [OSError(28, "No space left on device"), None]

    def prepare(_: float) -> None:
        if error := script.pop(0):
            raise error

    reader = opened(before_read=prepare)
    first, second = reader.read(), reader.read()
    assert (first.bad, first.text) == ("not_read", "OSError: [Errno 28] No space left on device")
    assert second.temperature_c == 21.0


def test_before_any_probe_is_there_it_waits_for_one(tree: PlainTree, opened: Opened) -> None:
    tree.bus_gone()
    reader = opened(None)
    assert (reader.read().bad, reader.probe_id) == ("gone", None)
    tree.text(good(352))
    assert (reader.read().temperature_c, reader.probe_id) == (22.0, PROBE)


@pytest.mark.parametrize(("text", "bad"), [(good(336), None), ("", "empty"), (good(0x0550, 0x0C), "power_on")])
def test_one_read_is_one_conversion(tree: PlainTree, opened: Opened, text: str, bad: str | None) -> None:
    """Each opening of `w1_slave` starts a conversion; the cause of a failure is known without another."""
    tree.one_answer(text)
    result = opened().read()
    assert (result.bad, result.text) == (bad, text if bad else None)


def test_a_text_without_end_is_cut_in_the_record(tree: PlainTree, opened: Opened) -> None:
    tree.text("?" * 100_000)
    result = opened().read()
    assert result.bad == "garbled"
    assert result.text == "?" * 400


def test_bytes_that_are_no_text(tree: PlainTree, opened: Opened) -> None:
    tree.w1_slave.write_bytes(bytes(range(256)))
    assert opened().read().bad == "garbled"


def test_a_folder_in_the_place_of_the_file(tree: PlainTree, opened: Opened) -> None:
    tree.w1_slave.unlink()
    tree.w1_slave.mkdir()
    assert opened().read().bad == "gone"


@pytest.mark.fault("time-of-a-reading")
def test_a_read_is_stamped_at_the_middle_of_its_conversion(opened: Opened, hand: Hand) -> None:
    def convert(_: float) -> None:
        hand.now_s += 0.75

    result = opened(before_read=convert).read()
    assert (result.time_s, result.took_s) == (1000.375, 0.75)


def test_the_hook_before_a_read_is_told_bench_time(opened: Opened, hand: Hand) -> None:
    told: list[float] = []
    opened(speed=60.0, before_read=told.append).read()
    assert told == [60_000.0]


def test_a_late_answer_is_none_and_stamped_at_its_end(opened: Opened, hand: Hand) -> None:
    """By then the bench has put down "no answer" at later moments than the middle of this read."""

    def hang(_: float) -> None:
        hand.now_s += 2.5625

    result = opened(before_read=hang).read()
    assert (result.temperature_c, result.bad, result.time_s) == (None, "no_answer", 1002.5625)


def test_a_genuine_85_is_kept_from_the_first_read_on(tree: PlainTree, opened: Opened) -> None:
    """The library refuses every 85.0; byte 6 tells that this one was converted."""
    tree.text(good(0x0550))
    assert opened().read().temperature_c == 85.0


@pytest.mark.fault("power-on-value")
@pytest.mark.parametrize(
    ("before", "wait_s", "power_on", "kind"),
    [
        (good(1356), 1.0, good(0x0550, 0x0C), "power_on"),  # a genuine chip would have counted
        (good(1353, 0x66, 0xA5), 1.0, good(0x0550, 0x66, 0xA5), None),  # a clone: as hot just before
        (good(1353, 0x66, 0xA5), 5.5, good(0x0550, 0x66, 0xA5), "power_on"),  # too long ago to tell
        (good(336, 0x66, 0xA5), 1.0, good(0x0550, 0x66, 0xA5), "power_on"),
    ],
)
def test_85_by_its_neighbour(
    tree: PlainTree, opened: Opened, hand: Hand, before: str, wait_s: float, power_on: str, kind: str | None
) -> None:
    reader = opened()
    tree.text(before)
    assert reader.read().bad is None
    hand.now_s += wait_s
    tree.text(power_on)
    result = reader.read()
    assert (result.temperature_c, result.bad) == (None if kind else 85.0, kind)


@pytest.mark.fault("power-on-value")
def test_a_bad_read_is_no_neighbour(tree: PlainTree, opened: Opened) -> None:
    reader = opened()
    tree.text(good(0x0550, 0x66, 0xA5))
    assert [reader.read().bad for _ in range(3)] == ["power_on"] * 3


def test_a_neighbour_counts_over_a_bad_read_between(tree: PlainTree, opened: Opened) -> None:
    reader = opened()
    results = []
    for text in (good(1353, 0x66, 0xA5), "", good(0x0550, 0x66, 0xA5)):
        tree.text(text)
        results.append(reader.read().bad)
    assert results == [None, "empty", None]


def test_a_clone_is_known_by_its_first_byte_6_that_does_not_count(tree: PlainTree, opened: Opened) -> None:
    """Byte 6 of many clones stands still at 0x0c, which now and then is what a genuine chip would have."""
    reader = opened()
    results = []
    for raw in (0x0554, 0x0553, 0x0554, 0x0550):
        tree.text(good(raw, 0x0C))
        results.append(reader.read().temperature_c)
    assert results == [85.25, 85.1875, 85.25, 85.0]
