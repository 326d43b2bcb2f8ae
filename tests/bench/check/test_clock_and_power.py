"""Whom the clock can be trusted from, and what the firmware says of the supply."""

import os
import time
from pathlib import Path

import pytest

from station.bench.check import machine as module
from station.bench.check.machine import clock, power
from tests.bench.check.machine import Machine


@pytest.fixture
def kernel(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(module, "_kernel_synchronised", lambda: False)


@pytest.mark.usefixtures("kernel")
class TestClock:
    def test_a_clock_that_nothing_has_set_is_amber_and_says_what_still_holds(self, machine: Machine) -> None:
        found = clock(machine.kit())
        assert found.colour == "amber"
        assert "order and intervals are right" in found.text

    def test_the_networks_time_is_green(self, machine: Machine) -> None:
        machine.write("run/systemd/timesync/synchronized", "")
        assert clock(machine.kit()).colour == "green"

    def test_another_time_daemon_is_believed_too(self, machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
        monkeypatch.setattr(module, "_kernel_synchronised", lambda: True)
        assert clock(machine.kit()).colour == "green"

    @pytest.mark.parametrize(("off_s", "colour"), [(0, "green"), (-30, "green"), (-1_700_000_000, "amber")])
    def test_a_clock_module_counts_if_it_agrees(self, machine: Machine, off_s: int, colour: str) -> None:
        """A Pi 5 has one without a battery: it stands at 1970."""
        machine.write("sys/class/rtc/rtc0/since_epoch", f"{int(time.time()) + off_s}\n")
        assert clock(machine.kit()).colour == colour

    def test_a_kernel_that_may_not_be_asked_leaves_it_unknown(
        self, machine: Machine, monkeypatch: pytest.MonkeyPatch
    ) -> None:
        """The unit's ProtectClock= denies adjtimex."""
        monkeypatch.setattr(module, "_kernel_synchronised", lambda: None)
        assert clock(machine.kit()).colour == "unknown"

    def test_a_clock_that_went_back_behind_the_record_is_amber(self, machine: Machine) -> None:
        machine.write("run/systemd/timesync/synchronized", "")
        newest = machine.write("record/journal.sqlite3", "")
        os.utime(newest, (time.time() + 7200, time.time() + 7200))
        found = clock(machine.kit())
        assert found.colour == "amber"
        assert "2.0 h behind" in found.text


def test_the_real_kernel_answers_or_refuses() -> None:
    """adjtimex(2) reads without any right; a sandbox may deny it."""
    assert module._kernel_synchronised() in (True, False, None)


THROTTLED = "sys/devices/platform/soc/soc:firmware/get_throttled"
# Bits: Raspberry Pi documentation, vcgencmd get_throttled.
FLAGS = [
    (0x0, "green", "since the Pi was started"),
    (0x50005, "red", "under-voltage now"),
    (0x50000, "amber", "was too weak"),
    (0x80008, "amber", "slowed down (now)"),
    (0xE0000, "amber", "slowed down (since"),
]


class TestPower:
    @pytest.fixture(autouse=True)
    def no_tool(self, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
        """A search path with no vcgencmd on it; the folder, to put one there."""
        tools = tmp_path / "tools"
        tools.mkdir()
        monkeypatch.setenv("PATH", f"{tools}:/bin")
        return tools

    def test_elsewhere_it_is_unknown_and_nothing_is_to_do(self, machine: Machine) -> None:
        found = power(machine.kit())
        assert (found.colour, found.remedy) == ("unknown", "")

    @pytest.mark.parametrize(("flags", "colour", "words"), FLAGS)
    def test_the_kernels_file(self, machine: Machine, flags: int, colour: str, words: str) -> None:
        machine.write(THROTTLED, f"{flags:x}\n")
        found = power(machine.kit())
        assert (found.colour, found.values["throttled"]) == (colour, f"0x{flags:x}")
        assert words in found.text

    @pytest.mark.fault("weak-supply")
    @pytest.mark.parametrize(("flags", "colour", "words"), FLAGS)
    def test_the_firmwares_tool(self, machine: Machine, no_tool: Path, flags: int, colour: str, words: str) -> None:
        self.tool(no_tool, f"echo throttled=0x{flags:x}")
        assert power(machine.kit()).colour == colour

    @pytest.mark.parametrize("script", ["echo error=1 >&2; exit 255", "echo VCHI initialization failed"])
    def test_a_tool_that_may_not_ask_is_passed_over(self, machine: Machine, no_tool: Path, script: str) -> None:
        self.tool(no_tool, script)
        assert power(machine.kit()).colour == "unknown"
        machine.is_a_pi()
        assert "sudo" in power(machine.kit()).remedy

    @pytest.mark.fault("weak-supply")
    @pytest.mark.parametrize(("alarm", "colour"), [("0\n", "green"), ("1\n", "red")])
    def test_the_kernels_alarm(self, machine: Machine, alarm: str, colour: str) -> None:
        """Documentation/hwmon/raspberrypi-hwmon; before the file, for which the kernel complains in its log."""
        machine.write("sys/class/hwmon/hwmon0/name", "cpu_thermal\n")
        machine.write("sys/class/hwmon/hwmon1/name", "rpi_volt\n")
        machine.write("sys/class/hwmon/hwmon1/in0_lcrit_alarm", alarm)
        machine.write(THROTTLED, "50005\n")
        found = power(machine.kit())
        assert (found.colour, found.values) == (colour, {"in0_lcrit_alarm": int(alarm)})

    def tool(self, folder: Path, script: str) -> None:
        tool = folder / "vcgencmd"
        tool.write_text(f"#!/bin/sh\n{script}\n")
        tool.chmod(0o755)
