"""A one-wire tree on disk, in the kernel's own text, for the real reader to read."""

import contextlib
import os
import re
import shutil
import time
from pathlib import Path

from station.bench.virtual.scratchpad import (
    CONVERSION_MS,
    NOT_CONVERTED,
    count_of,
    kernel_text,
    millidegrees,
    raw_of,
    scratchpad,
)

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
        if self._away.exists():
            self._away.rename(self.folder)
        if self.probe_folder.exists():
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
        unseen = self.probe_folder / f".{name}"
        unseen.write_text(text, encoding="ascii")
        unseen.rename(self.probe_folder / name)
