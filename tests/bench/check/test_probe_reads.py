"""The reads: of the virtual cup, of a probe that hangs, and what is made of them."""

import os
import subprocess
import sys
import tempfile
import threading
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest

from station.bench.check import probe_reads
from station.bench.check.finding import Beside, Kit
from station.bench.check.probe import chip, conversion, noise, probe_findings, reads
from station.bench.check.probe_reads import HOPELESS, Sample, read_probe
from station.bench.probes.scratchpad import judge_text
from station.bench.virtual.cup import CupParameters
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript
from tests.bench.check.machine import Machine
from tests.bench.one_wire_rig import Hand, PlainTree, good

ROOT = Path(__file__).parents[3]


class Cup:
    """A virtual cup, read once a bench second, with a script of faults."""

    def __init__(self, folder: Path, faults: str, start_s: float = 0.0) -> None:
        script = FaultScript.parse(faults, seed=3)
        self.driver = VirtualDriver(folder / "devices", CupParameters(), seed=4, faults=script, speed=1000.0)
        self._time_s = start_s

    def kit(self, machine: Machine, **settings: Any) -> Kit:
        return machine.kit(tree=self.driver.tree.folder, before_read=self._convert, **settings)

    def _convert(self) -> None:
        self.driver.prepare(self._time_s)
        self._time_s += 1.0


def samples(machine: Machine, tmp_path: Path, faults: str = "", start_s: float = 0.0) -> list[Sample]:
    cup = Cup(tmp_path, faults, start_s)
    with cup.driver:
        return read_probe(cup.kit(machine), cup.driver.tree.w1_slave)


def test_a_good_probe_is_green_and_says_what_thirty_reads_cannot_rule_out(machine: Machine, tmp_path: Path) -> None:
    taken = samples(machine, tmp_path, start_s=900.0)  # the probe has taken the cup's temperature by then
    found = reads(taken)
    assert (found.colour, found.values["reads"], found.values["failed"]) == ("green", 30, 0)
    # (1 − p)^30 = 0.05; the "rule of three" has 3/n = 10 in 100 (Hanley and Lippman-Hand, JAMA 249 (1983) 1743).
    assert found.values["not_ruled_out_per_100"] == 9.5
    assert noise(taken).colour == "green"
    assert all(sample.nine is not None for sample in taken)
    assert chip("28-00000b5eca01", taken).colour == "green"


@pytest.mark.fault("bus-fails-often")
@pytest.mark.parametrize(
    ("faults", "kind", "words"),
    [
        ("power_on@5+9", "power_on", "supply wire"),
        ("zeros@5+9", "zeros", "ground"),
        ("crc@5+9", "crc", "4.7 kΩ"),
        ("empty@5+9", "empty", "4.7 kΩ"),
        ("wire@5+9", "out_of_range", "half-plugged"),
        ("gone@5+9", "gone", "left the bus"),
        ("garbled@5+9", "garbled", "4.7 kΩ"),
    ],
)
def test_failures_are_counted_by_kind_and_each_has_its_remedy(
    machine: Machine, tmp_path: Path, faults: str, kind: str, words: str
) -> None:
    found = reads(samples(machine, tmp_path, faults))
    assert (found.colour, found.values["failed"], found.values["kinds"]) == ("red", 9, {kind: 9})
    assert found.values["failed_per_100"] == 30.0
    assert words in found.remedy


def test_a_failure_now_and_then_is_amber(machine: Machine, tmp_path: Path) -> None:
    found = reads(samples(machine, tmp_path, "crc@7+1"))
    assert (found.colour, found.values["failed_per_100"]) == ("amber", 3.3)


def test_a_probe_that_never_answers_is_not_waited_for(machine: Machine, tmp_path: Path) -> None:
    assert len(samples(machine, tmp_path, "empty@0+100")) == HOPELESS


@pytest.fixture
def hanging(tmp_path: Path) -> Iterator[PlainTree]:
    """A read that does not return before the test is over (raspberrypi/linux issue 374)."""
    tree = PlainTree(tmp_path / "devices")
    let_go = tree.pipe()
    yield tree
    let_go.set()


def test_a_read_that_hangs_is_left_behind(
    machine: Machine, hanging: PlainTree, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(probe_reads, "ANSWER_WITHIN_S", 0.05)
    taken = read_probe(machine.kit(), hanging.w1_slave)
    assert [each.bad for each in taken] == ["no_answer"]
    found = reads(taken)
    assert found.colour == "red"
    assert "cut the kit's power" in found.remedy


def test_what_goes_wrong_in_the_reading_thread_is_not_taken_for_a_silent_probe(
    machine: Machine, tmp_path: Path
) -> None:
    def break_down() -> None:
        raise RuntimeError("spilt tea")

    tree = PlainTree(tmp_path / "devices")
    with pytest.raises(RuntimeError, match="spilt tea"):
        read_probe(machine.kit(before_read=break_down), tree.w1_slave)


def test_signals_are_blocked_where_the_probe_is_read(machine: Machine, tmp_path: Path) -> None:
    """A signal inside a conversion makes the kernel give an empty text (w1_therm.c, msleep_interruptible)."""
    blocked: list[str] = []

    def look() -> None:
        status = Path(f"/proc/self/task/{threading.get_native_id()}/status").read_text()
        blocked.append(next(line.split()[1] for line in status.splitlines() if line.startswith("SigBlk")))

    tree = PlainTree(tmp_path / "devices")
    read_probe(machine.kit(reads=1, before_read=look), tree.w1_slave)
    interrupt, terminate = 1 << 1, 1 << 14  # SIGINT 2, SIGTERM 15 (signal(7))
    assert int(blocked[0], 16) & interrupt
    assert int(blocked[0], 16) & terminate


class TestNoise:
    def test_two_neighbouring_steps_in_turn_are_quiet(self) -> None:
        """As a steady probe in water does (log published in QuentinRauschenbach/Temperature_Logger)."""
        found = noise([Sample(21.0 + (index % 2) / 16) for index in range(30)])
        assert found.colour == "green"
        # residuals of ±1/32 °C about the mean, 28 degrees of freedom; the slope of such a pattern is next to nothing
        assert found.values["sd_c"] == pytest.approx(1 / 32 * (30 / 28) ** 0.5, abs=2e-4)

    @pytest.mark.fault("copies")
    def test_a_noisy_probe_is_amber(self) -> None:
        found = noise([Sample(21.0 + (0, 3, 1, 4, 2)[index % 5] / 16) for index in range(30)])
        assert found.colour == "amber"
        assert "another probe" in found.remedy

    def test_a_steady_drift_is_no_noise(self) -> None:
        found = noise([Sample(21.0 + index / 16) for index in range(30)])
        assert (found.colour, found.values["sd_c"], found.values["moved_c"]) == ("green", 0.0, 1.812)

    def test_a_probe_that_is_put_into_water_meanwhile_tells_nothing(self) -> None:
        found = noise([Sample(21.0 + 9.0 * (index > 14)) for index in range(30)])
        assert found.colour == "unknown"
        assert "still water" in found.remedy

    @pytest.mark.fault("copy-wakes-at-25")
    def test_a_probe_stuck_at_a_copys_power_on_value_is_amber(self) -> None:
        """90 01, 25 °C, is what Petrich's family D shows before its first conversion."""
        assert judge_text(good(0x0190)).temperature_c == 25.0
        found = noise([Sample(25.0)] * 30)
        assert found.colour == "amber"
        assert "in your hand" in found.remedy
        assert noise([Sample(25.0)] * 29 + [Sample(25.0625)]).colour == "green"

    def test_a_few_reads_tell_nothing(self) -> None:
        assert noise([Sample(21.0)] * 9 + [Sample(None, "crc")] * 3).colour == "unknown"


class TestConversion:
    def took(self, took_s: float) -> list[Sample]:
        return [Sample(21.0, took_s=took_s) for _ in range(5)]

    @pytest.mark.fault("copies")
    @pytest.mark.parametrize(
        ("took_s", "features", "conv_time_ms", "colour", "words"),
        [
            (0.78, 0, 750, "green", "the chip's own time cannot be told"),
            (0.78, 1, 750, "green", "the chip's own time cannot be told"),
            (0.02, 0, 750, "amber", "before the conversion"),
            (0.66, 2, 750, "green", "the chip answers after 0.66 s"),
            (0.05, 3, 750, "green", "the chip answers after 0.05 s"),
            (0.95, 3, 750, "amber", "the data sheet allows 0.75 s"),
            (0.78, None, None, "unknown", "tells no more"),
        ],
    )
    def test_what_a_reads_time_tells(
        self, took_s: float, features: int | None, conv_time_ms: int | None, colour: str, words: str
    ) -> None:
        found = conversion(self.took(took_s), features, conv_time_ms)
        assert found.colour == colour
        assert words in found.text

    def test_the_time_of_real_reads_is_taken(
        self, machine: Machine, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        hand = Hand()
        monkeypatch.setattr(probe_reads, "time", hand)

        def convert() -> None:
            hand.now_s += 0.76

        tree = PlainTree(tmp_path / "devices")
        taken = read_probe(machine.kit(reads=3, before_read=convert), tree.w1_slave)
        assert [round(sample.took_s or 0.0, 6) for sample in taken] == [0.76] * 3


class TestBeside:
    """With a station at work, and a kernel that lets go of the bus during a conversion."""

    def tree(self, tmp_path: Path, features: str) -> PlainTree:
        tree = PlainTree(tmp_path / "devices")
        (tree.w1_slave.parent / "features").write_text(features)
        return tree

    @pytest.mark.parametrize(("features", "read"), [("0\n", False), ("1\n", False), ("2\n", True), ("3\n", True)])
    def test_the_probe_is_only_read_where_the_kernel_makes_the_second_reader_wait(
        self, machine: Machine, tmp_path: Path, features: str, read: bool
    ) -> None:
        """w1_therm.c, convert_t: the bus is held over the whole conversion only while it is polled (bit 2)."""
        tree, asked = self.tree(tmp_path, features), []
        kit = machine.kit(tree=tree.folder, reads=3, before_read=lambda: asked.append(1))
        found = {each.name: each for each in probe_findings(kit, Beside(page_bench="Bench 7"))}
        assert bool(asked) is read
        assert found["probe_reads"].colour == ("green" if read else "unknown")
        assert "a copy" in found["probe_kind"].text  # which its number alone tells
        assert ("stop the station" in found["probe_reads"].remedy) is not read


def test_a_probe_folder_without_its_file_is_gone(machine: Machine, tmp_path: Path) -> None:
    tree = PlainTree(tmp_path / "devices")
    tree.w1_slave.unlink()
    assert {each.bad for each in read_probe(machine.kit(), tree.w1_slave)} == {"gone"}


def test_the_whole_of_it_on_a_tree_in_the_kernels_form(machine: Machine, tmp_path: Path) -> None:
    cup = Cup(tmp_path, "", start_s=900.0)
    with cup.driver:
        found = probe_findings(cup.kit(machine), Beside())
    assert {each.name: each.colour for each in found} == {
        "bus": "green",
        "probe": "green",
        "probe_power": "green",
        "probe_resolution": "green",
        "probe_guard": "amber",  # the virtual cup's tree has features 0
        "probe_reads": "green",
        "probe_noise": "green",
        "conversion_time": "amber",  # the virtual cup answers at once, and its tree says 750 ms
        "probe_kind": "green",
    }


def test_reading_changes_nothing_in_the_tree(machine: Machine, tmp_path: Path) -> None:
    tree = PlainTree(tmp_path / "devices")
    tree.text(good(401))

    def look() -> dict[Path, tuple[bytes, int]]:
        files = [path for path in tree.folder.rglob("*") if path.is_file()]
        return {path: (path.read_bytes(), path.stat().st_mtime_ns) for path in files}

    before = look()
    probe_findings(machine.kit(tree=tree.folder, reads=2), Beside())
    assert look() == before
    assert list(before) == [tree.w1_slave]


AS_NOBODY = """
import os, sys
from pathlib import Path
from station.bench.check.finding import Beside, Kit
from station.bench.check.probe import probe_findings
os.setgid(65534)
os.setuid(65534)
for each in probe_findings(Kit(tree=Path(sys.argv[1]), reads=1), Beside()):
    if each.name == "probe_reads":
        print(each.colour, each.remedy)
"""


@pytest.mark.skipif(os.geteuid() != 0, reason="only root may become another user")
@pytest.mark.parametrize(("mode", "told"), [(0o440, "unknown check again with sudo"), (0o444, "green ")])
def test_a_probe_that_only_the_station_may_read_is_unknown_to_others(mode: int, told: str) -> None:
    """As the station's udev rule leaves it; in a process of its own, since rights are the process's."""
    with tempfile.TemporaryDirectory(prefix="benchwarm-rights-") as folder:
        Path(folder).chmod(0o755)
        tree = PlainTree(Path(folder) / "devices")
        tree.w1_slave.chmod(mode)
        command = [sys.executable, "-c", AS_NOBODY, str(tree.folder)]
        done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=True)
    assert done.stdout.rstrip("\n") == told
