"""What tests of the probe share: time that moves only when told, and a one-wire tree written by hand."""

import os
import shutil
import threading
from collections.abc import Callable
from pathlib import Path

from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import ProbeReading
from tests.conftest import PATIENCE_S

PROBE = "28-0316a2795fee"
Opened = Callable[..., OneWireReader]


class Hand:
    """Stands where a module expects `time`: its monotonic clock moves only when told."""

    def __init__(self, now_s: float = 1000.0) -> None:
        self.now_s = now_s

    def monotonic(self) -> float:
        return self.now_s


class PlainTree:
    """A folder in the place of /sys/bus/w1/devices. Texts in the kernel's form are given as they are."""

    def __init__(self, folder: Path, *probes: str) -> None:
        self.folder = folder
        for probe in probes or (PROBE,):
            (folder / probe).mkdir(parents=True)
        self.text(good(336))

    @property
    def w1_slave(self) -> Path:
        return self.folder / PROBE / "w1_slave"

    def text(self, text: str) -> None:
        """What the next reads find. Put in place whole, as the kernel gives it."""
        self.w1_slave.parent.mkdir(parents=True, exist_ok=True)
        unseen = self.folder.parent / "w1_slave.unseen"
        unseen.write_text(text)
        unseen.replace(self.w1_slave)

    def gone(self) -> None:
        shutil.rmtree(self.w1_slave.parent)

    def bus_gone(self) -> None:
        shutil.rmtree(self.folder)

    def pipe(self, held_s: float = PATIENCE_S) -> threading.Event:
        """A read of `w1_slave` waits so long, or until the event is set, and then finds nothing."""
        self.w1_slave.unlink()
        os.mkfifo(self.w1_slave)
        let_go = threading.Event()
        threading.Thread(target=self._answer, args=(let_go, "", held_s), daemon=True).start()
        return let_go

    def one_answer(self, text: str) -> None:
        """The text comes once; another read would wait for ever."""
        self.w1_slave.unlink()
        os.mkfifo(self.w1_slave)
        let_go = threading.Event()
        let_go.set()
        threading.Thread(target=self._answer, args=(let_go, text), daemon=True).start()

    def _answer(self, let_go: threading.Event, text: str, held_s: float = PATIENCE_S) -> None:
        with self.w1_slave.open("w") as pipe:  # returns when a reader is there
            let_go.wait(held_s)
            pipe.write(text)


class Collected:
    """Takes what a reader delivers; `wait(n)` returns the first n."""

    def __init__(self) -> None:
        self.readings: list[ProbeReading] = []
        self._more = threading.Condition()

    def __call__(self, taken: ProbeReading) -> None:
        with self._more:
            self.readings.append(taken)
            self._more.notify_all()

    def wait(self, count: int) -> list[ProbeReading]:
        with self._more:
            assert self._more.wait_for(lambda: len(self.readings) >= count, timeout=PATIENCE_S)
            return self.readings[:count]


def crc(eight: bytes) -> int:
    """One-wire CRC-8, most significant bit first on reversed bytes: another way than the station's."""
    register = 0
    for byte in eight:
        register ^= int(f"{byte:08b}"[::-1], 2)
        for _ in range(8):
            register = register << 1 ^ (0x131 if register & 0x80 else 0)
    return int(f"{register:08b}"[::-1], 2)


def good(raw: int, byte_6: int | None = None, byte_5: int = 0xFF) -> str:
    """The kernel's text for a conversion of a genuine chip: `raw` sixteenths of a degree, 12 bits."""
    low, high = raw.to_bytes(2, "little", signed=True)
    count = 0x10 - (low & 0x0F) if byte_6 is None else byte_6
    eight = bytes((low, high, 0x4B, 0x46, 0x7F, byte_5, count, 0x10))
    nine = f"{eight.hex(' ')} {crc(eight):02x}"
    return f"{nine} : crc={nine[-2:]} YES\n{nine} t={int(raw * 1000 / 16)}\n"
