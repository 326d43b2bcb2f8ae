"""A one-wire tree on disk, in the kernel's own text, for the real reader to read."""

import contextlib
import math
import os
import re
import shutil
import time
from collections.abc import Sequence
from pathlib import Path

# The nine bytes of a DS18B20 and the text that the Linux kernel makes of them.
#
# Sources: Maxim Integrated, DS18B20 data sheet (temperature/data relationship, memory map, configuration
# register) and Application Note 27 (CRC-8); Linux, drivers/w1/slaves/w1_therm.c (form of `w1_slave`). That
# byte 6 of a genuine chip is 0x10 less the low nibble of byte 0 shows in captured scratchpads
# (e.g. `4b 01 4b 46 7f ff 05 10 e1`), and that it is 0x0c before the first conversion stands in the data sheet.


LOWEST_C, HIGHEST_C = -55.0, 125.0
CONFIG_BYTE = {9: 0x1F, 10: 0x3F, 11: 0x5F, 12: 0x7F}
CONVERSION_MS = {9: 95, 10: 190, 11: 375, 12: 750}  # the kernel's defaults
ALARM_BYTES = (0x4B, 0x46)  # +75 and +70, as delivered
NOT_CONVERTED = 0x0C


def crc8(data: Sequence[int]) -> int:
    """The one-wire CRC: X⁸+X⁵+X⁴+1, least significant bit first, start 0."""
    crc = 0
    for byte in data:
        crc ^= byte
        for _ in range(8):
            crc = (crc >> 1) ^ 0x8C if crc & 1 else crc >> 1
    return crc


def scratchpad(raw: int, *, bits: int = 12, byte_6: int | None = None) -> bytes:
    """The nine bytes for a signed 16-bit count of 1/16 °C.

    `byte_6` is that of a genuine chip after a conversion unless given. Raises ValueError for a count that
    16 bits cannot hold or a resolution outside 9 to 12 bits.
    """
    if bits not in CONFIG_BYTE:
        raise ValueError(f"A DS18B20 has 9 to 12 bits, not {bits}.")
    if not -0x8000 <= raw <= 0x7FFF:
        raise ValueError(f"A count of {raw} does not fit into 16 bits.")
    low, high = raw.to_bytes(2, "little", signed=True)
    remainder = 0x10 - (low & 0x0F) if byte_6 is None else byte_6
    eight = bytes((low, high, *ALARM_BYTES, CONFIG_BYTE[bits], 0xFF, remainder, 0x10))
    return eight + bytes((crc8(eight),))


def count_of(temperature_c: float, *, bits: int = 12) -> int:
    """The count of 1/16 °C for a temperature, rounded to a step of the resolution.

    Raises ValueError for a temperature that the probe cannot report.
    """
    if not LOWEST_C <= temperature_c <= HIGHEST_C:
        raise ValueError(f"A DS18B20 reports {LOWEST_C:g} to {HIGHEST_C:g} °C, not {temperature_c} °C.")
    coarse = 1 << (12 - bits)
    return math.floor(temperature_c * 16 / coarse + 0.5) * coarse


def millidegrees(raw: int) -> int:
    """The kernel's `t=`: thousandths of a degree, cut off towards zero."""
    whole = abs(raw) * 1000 // 16
    return whole if raw >= 0 else -whole


def raw_of(nine: bytes) -> int:
    """The signed count in bytes 0 and 1."""
    return int.from_bytes(nine[:2], "little", signed=True)


def kernel_text(nine: bytes, last_good: bytes | None = None) -> str:
    """The two lines of `w1_slave`.

    With a wrong CRC the first line ends in NO, and the second repeats the last good bytes (zeros if there
    were none) beside the `t=` of the bad ones, as the kernel does.
    """
    crc = crc8(nine[:8])
    good = crc == nine[8]
    second = nine if good else (last_good or bytes(9))
    first_line = f"{_spaced(nine)} : crc={crc:02x} {'YES' if good else 'NO'}\n"
    return f"{first_line}{_spaced(second)} t={millidegrees(raw_of(nine))}\n"


def _spaced(data: bytes) -> str:
    return data.hex(" ")


POWER_ON_RAW, LOW_POWER_RAW = 0x0550, 0x07FF
WIRE_FAULT_RAW = round(-109.9375 * 16)  # as reported from a half-pulled plug


class OneWireTree:
    """`folder` stands for /sys/bus/w1/devices; the probe's directory is made in it.

    Every write is complete before it can be seen. `probe_id` is 28-, then twelve hexadecimal digits;
    another raises ValueError. `bits` is the resolution, 9 to 12.
    """

    def __init__(self, folder: Path, probe_id: str = "28-00000b5eca01", bits: int = 12) -> None:
        if not re.fullmatch(r"28-[0-9a-f]{12}", probe_id):
            raise ValueError(f"A DS18B20 is named 28- and twelve hexadecimal digits, not {probe_id!r}.")
        if bits not in CONVERSION_MS:
            raise ValueError(f"A DS18B20 has 9 to 12 bits, not {bits}.")
        self.folder, self.probe_id, self.bits = folder, probe_id, bits
        self._away = folder.with_name(folder.name + ".away")
        # Written once a second for each cup of a class: as text, which costs a tenth of what a Path does.
        self._away_name, self._probe_name = str(self._away), str(self.probe_folder)
        self._converted: bytes | None = None  # what the probe's last true conversion left in it
        self._last_good: bytes | None = None  # what the kernel last accepted
        self._hanging: int | None = None
        self.attach()

    @property
    def probe_folder(self) -> Path:
        """The probe's directory."""
        return self.folder / self.probe_id

    @property
    def w1_slave(self) -> Path:
        """The file that the reader reads."""
        return self.probe_folder / "w1_slave"

    def attach(self) -> None:
        """Bus and probe are there, with the files a probe on three wires shows; known ones stay."""
        if os.path.exists(self._away_name):  # noqa: PTH110 - see `_away_name`
            self._away.rename(self.folder)
        if os.path.exists(self._probe_name):  # noqa: PTH110
            return
        self.probe_folder.mkdir(parents=True)
        self._put("name", f"{self.probe_id}\n")
        self._put("resolution", f"{self.bits}\n")
        self._put("ext_power", "1\n")
        self._put("conv_time", f"{CONVERSION_MS[self.bits]}\n")
        self._put("features", "0\n")
        self._put("temperature", "")
        self._put("w1_slave", "")

    def write(self, temperature_c: float) -> None:
        """A good conversion; raises ValueError outside −55 to 125 °C."""
        nine = self._nine(temperature_c)
        self.write_scratchpad(nine)
        self._converted = nine

    def write_scratchpad(self, nine: bytes) -> None:
        """The text for nine given bytes, right or wrong."""
        self.attach()
        text = kernel_text(nine, self._last_good)
        if " YES\n" in text:
            self._last_good = nine
        self._put("temperature", f"{millidegrees(raw_of(nine))}\n")
        self._put("w1_slave", text)

    def write_text(self, text: str) -> None:
        """Any text in place of the kernel's."""
        self.attach()
        self._put("temperature", "")
        self._put("w1_slave", text)

    def empty(self) -> None:
        """What today's kernels give for a pulled probe, a failed CRC or a signal during the read."""
        self.write_text("")

    def crc_error(self, temperature_c: float) -> None:
        """One bit of the first byte flipped on the wire: older kernels say NO."""
        nine = self._nine(temperature_c)
        self.write_scratchpad(bytes((nine[0] ^ 0x04,)) + nine[1:])

    def zeros(self) -> None:
        """The data wire shorted to ground: nine zero bytes, whose CRC is right."""
        self.write_scratchpad(bytes(9))

    def bus_high(self) -> None:
        """Nothing pulls the data wire down: all ones, whose CRC is wrong."""
        self.write_scratchpad(b"\xff" * 9)

    def power_on(self) -> None:
        """85 °C with the mark of a probe that has not converted since it got power."""
        self.write_scratchpad(scratchpad(POWER_ON_RAW, bits=self.bits, byte_6=NOT_CONVERTED))

    def low_power(self) -> None:
        """127.94 °C: too little power for a conversion."""
        self.write_scratchpad(scratchpad(LOW_POWER_RAW, bits=self.bits, byte_6=NOT_CONVERTED))

    def wire_fault(self) -> None:
        """A right CRC around a temperature no cup can have, as seen while a plug is half out."""
        self.write_scratchpad(scratchpad(WIRE_FAULT_RAW, bits=self.bits))

    def one_line(self, temperature_c: float) -> None:
        """The second line is missing."""
        nine = self._nine(temperature_c)
        self.write_text(kernel_text(nine).splitlines(keepends=True)[0])

    def garbled(self) -> None:
        """Text of the right shape that is no hexadecimal."""
        self.write_text("xy 0z ~~ 46 7f ff 0c 10 qq : crc=qq YES\nxy 0z ~~ 46 7f ff 0c 10 qq t=?\n")

    def stale(self) -> None:
        """A lost conversion: the bytes of the one before come again (nothing yet: the power-on value)."""
        if self._converted is None:
            self.power_on()
        else:
            self.write_scratchpad(self._converted)

    def gone(self) -> None:
        """The kernel has dropped the probe: its directory is no more."""
        self.release()
        if self._away.exists():
            self._away.rename(self.folder)
        shutil.rmtree(self.probe_folder, ignore_errors=True)

    def bus_gone(self) -> None:
        """No bus master: the whole folder is no more until something is written."""
        self.release()
        if self.folder.exists() and not self._away.exists():
            self.folder.rename(self._away)

    def hang(self) -> None:
        """A read of `w1_slave` does not return until `release` (or the next write)."""
        self.attach()
        if self._hanging is None:
            pipe = self.probe_folder / ".w1_slave"
            os.mkfifo(pipe)
            # our own end keeps the pipe open, so a reader waits in its read, never in its open
            self._hanging = os.open(pipe, os.O_RDWR | os.O_NONBLOCK)
            pipe.rename(self.w1_slave)

    def release(self) -> None:
        """A reader that hangs gets an empty answer; harmless when none does."""
        if self._hanging is None:
            return
        pipe, self._hanging = self._hanging, None
        with contextlib.suppress(FileNotFoundError):
            self._put("w1_slave", "")
        time.sleep(0.01)  # a reader that had found the pipe by name has opened it by now
        os.close(pipe)

    def _nine(self, temperature_c: float) -> bytes:
        return scratchpad(count_of(temperature_c, bits=self.bits), bits=self.bits)

    def _put(self, name: str, text: str) -> None:
        if name == "w1_slave":
            self.release()
        unseen = f"{self._probe_name}/.{name}"
        with open(unseen, "w", encoding="ascii") as file:  # noqa: PTH123
            file.write(text)
        os.rename(unseen, f"{self._probe_name}/{name}")  # noqa: PTH104
