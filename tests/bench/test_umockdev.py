"""The reader on the kernel's own path, /sys/bus/w1/devices, that umockdev gives to an unchanged program.

Debian's package umockdev lays a device tree with the links of a real one over /sys for one process.
"""

import os
import shutil
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import pytest

from tests.bench.one_wire_rig import PROBE, good
from tests.conftest import PATIENCE_S

ROOT = Path(__file__).parents[2]

pytestmark = pytest.mark.skipif(shutil.which("umockdev-run") is None, reason="umockdev is not installed")

DEVICES = f"""\
P: /devices/w1_bus_master1
E: SUBSYSTEM=w1
A: w1_master_slave_count=2\\n

P: /devices/w1_bus_master1/{PROBE}
E: SUBSYSTEM=w1
E: W1_FID=28
A: name={PROBE}\\n
A: w1_slave=

P: /devices/w1_bus_master1/00-400000000000
E: SUBSYSTEM=w1
A: name=00-400000000000\\n
"""

READER = """
import os, sys
from station.bench.clock import Clock
from station.bench.probes.one_wire import OneWireReader
print(os.environ["UMOCKDEV_DIR"], flush=True)
reader = OneWireReader(Clock.started())
for _ in sys.stdin:
    reading = reader.read()
    print(reader.probe_id, reading.temperature_c, reading.bad, flush=True)
reader.close()
"""


class Other:
    """A process that reads when asked, under umockdev; this one changes what it finds."""

    def __init__(self, process: "subprocess.Popen[str]", folder: Path) -> None:
        self._process = process
        self.links = folder / "sys/bus/w1/devices"
        self.probe = folder / "sys/devices/w1_bus_master1" / PROBE

    def reads(self) -> str:
        assert self._process.stdin is not None and self._process.stdout is not None
        print(file=self._process.stdin, flush=True)
        return self._process.stdout.readline().strip()


@pytest.fixture
def other(tmp_path: Path) -> Iterator[Other]:
    with reading(tmp_path) as process:
        assert process.stdout is not None
        yield Other(process, Path(process.stdout.readline().strip()))


@contextmanager
def reading(folder: Path) -> Iterator["subprocess.Popen[str]"]:
    (folder / "w1.umockdev").write_text(DEVICES)
    command = ["umockdev-run", "-d", str(folder / "w1.umockdev"), "--", sys.executable, "-c", READER]
    # The station itself must keep the library from loading kernel modules: no help from outside.
    env = {key: value for key, value in os.environ.items() if not key.startswith("W1THERMSENSOR")}
    with subprocess.Popen(
        command, cwd=ROOT, env=env, text=True, stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    ) as process:
        yield process
        _, complaints = process.communicate(timeout=PATIENCE_S)
    assert (process.returncode, complaints) == (0, "")


def test_the_reader_follows_what_another_process_writes(other: Other) -> None:
    for raw in (336, 401, -8, 0):
        (other.probe / "w1_slave").write_text(good(raw))
        assert other.reads() == f"{PROBE} {raw / 16} None"


@pytest.mark.fault("bad-answer")
def test_failures_are_named(other: Other) -> None:
    assert other.reads() == f"{PROBE} None empty"
    texts = {good(336)[:40]: "garbled", good(0x0550, 0x0C): "power_on", good(336).replace("YES", "NO"): "crc"}
    for text, bad in texts.items():
        (other.probe / "w1_slave").write_text(text)
        assert other.reads() == f"{PROBE} None {bad}"


@pytest.mark.fault("unplugged")
def test_the_probe_is_a_link_that_comes_and_goes(other: Other) -> None:
    link = other.links / PROBE
    target = link.readlink()
    link.unlink()
    (other.probe / "w1_slave").write_text(good(336))
    assert other.reads() == "None None gone"
    link.symlink_to(target)
    assert other.reads() == f"{PROBE} 21.0 None"
    link.unlink()
    assert other.reads() == f"{PROBE} None gone"
    link.symlink_to(target)
    assert other.reads() == f"{PROBE} 21.0 None"
