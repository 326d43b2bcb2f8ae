"""The probe drivers under one contract: a plain one-wire tree, and the virtual cup."""

from collections.abc import Callable
from pathlib import Path
from typing import Protocol

from station.bench.clock import Clock
from station.bench.probes.one_wire import OneWireReader
from station.bench.probes.probe import ProbeReading
from station.bench.virtual.cup import CupParameters
from station.bench.virtual.driver import VirtualDriver
from station.bench.virtual.faults import FaultScript
from tests.bench.one_wire_rig import PROBE, Hand, PlainTree, good

CONVERSION_S, LONG_S = 0.75, 3.0
FAR_C = 9.0


class Rig(Protocol):
    """A driver, and hands to make its probe fail."""

    reader: OneWireReader

    def spoil(self, fault: str | None) -> None:
        """From now on every read meets this fault; None: none."""

    def measured_c(self) -> float:
        """What the probe measured in the newest good conversion."""

    def close(self) -> None:
        """Let everything go."""


class PlainRig:
    """A probe in a plain folder, with texts written by hand."""

    def __init__(self, folder: Path, hand: Hand, speed: float = 1.0) -> None:
        self._tree, self._hand, self._speed = PlainTree(folder), hand, speed
        self._fault: str | None = None
        self.reader = OneWireReader(Clock(hand.now_s, hand.now_s, speed), folder, PROBE, self._convert)

    def spoil(self, fault: str | None) -> None:
        self._fault = fault

    def measured_c(self) -> float:
        return 21.0

    def close(self) -> None:
        self.reader.close()

    def _convert(self, _: float) -> None:
        self._hand.now_s += LONG_S if self._fault == "no_answer" else CONVERSION_S / self._speed
        if self._fault in SPOILT:
            self._tree.text(SPOILT[self._fault])
            return
        self._tree.text(good(336))
        if self._fault is not None:
            HANDS[self._fault](self._tree)


SPOILT = {
    "empty": "",
    "crc": good(336).replace("50 01", "54 01", 1).replace("YES", "NO"),
    "bus_high": f"{'ff ' * 9}: crc=c9 NO\n50 01 4b 46 7f ff 10 10 49 t=-62\n",
    "zeros": f"{'00 ' * 9}: crc=00 YES\n{'00 ' * 9}t=0\n",
    "power_on": "50 05 4b 46 7f ff 0c 10 1c : crc=1c YES\n50 05 4b 46 7f ff 0c 10 1c t=85000\n",
    "low_power": "ff 07 4b 46 7f ff 0c 10 a6 : crc=a6 YES\nff 07 4b 46 7f ff 0c 10 a6 t=127937\n",
    "one_line": good(336).splitlines(keepends=True)[0],
    "garbled": "no such device\n",
    "wire": "21 f9 4b 46 7f ff 0f 10 fe : crc=fe YES\n21 f9 4b 46 7f ff 0f 10 fe t=-109937\n",
    "jump": good(336 + round(16 * FAR_C)),
}
HANDS: dict[str, Callable[[PlainTree], object]] = {
    "gone": PlainTree.gone,
    "bus_gone": PlainTree.bus_gone,
    "no_answer": lambda tree: tree.one_answer(""),
}


class VirtualRig:
    """The virtual cup, its faults as a script gives them."""

    def __init__(self, folder: Path, hand: Hand, speed: float = 1.0) -> None:
        self._hand, self._speed = hand, speed
        self._hangs = False
        # The cup's own speed only says how soon, by the wall, it ends a hang.
        self._driver = VirtualDriver(folder, CupParameters(), seed=5, probe_id=PROBE, speed=1000.0, start_s=hand.now_s)
        self.reader = OneWireReader(Clock(hand.now_s, hand.now_s, speed), folder, PROBE, self._convert)

    def spoil(self, fault: str | None) -> None:
        self._hangs = fault == "no_answer"
        until_s = self._hand.now_s + 20.0 if self._hangs else 1e6
        self._driver.faults = FaultScript.parse(f"{fault}@0+{until_s:.3f}" if fault else "")

    def measured_c(self) -> float:
        return self._driver.world.reading_c()

    def close(self) -> None:
        self.reader.close()
        self._driver.close()

    def _convert(self, time_s: float) -> None:
        self._driver.prepare(time_s)
        self._hand.now_s += LONG_S if self._hangs else CONVERSION_S / self._speed


RIGS: dict[str, Callable[[Path, Hand, float], Rig]] = {"plain tree": PlainRig, "virtual cup": VirtualRig}


def read(rig: Rig, hand: Hand) -> ProbeReading:
    """One reading, and the hand at the next whole second."""
    taken = rig.reader.read()
    hand.now_s = float(int(hand.now_s) + 1)
    return taken
