"""Ties world, one-wire tree and faults together: what the real reader and a student's hands need."""

import threading
from pathlib import Path
from types import TracebackType
from typing import Self

from station.bench.virtual.faults import Fault, FaultScript
from station.bench.virtual.parameters import CupParameters
from station.bench.virtual.tree import OneWireTree
from station.bench.virtual.world import World

JUMP_C = 9.0  # an impossible jump from one second to the next, yet within the range of a cup


class VirtualDriver:
    """A bench with a virtual cup whose probe appears in a one-wire tree in `folder`.

    The reader calls `prepare(time_s)` right before each read; a student's hands call the others. Times are
    bench seconds and may be given a little out of order: the world never goes back. All methods may be called
    from any thread. `speed` is bench seconds per wall second (only a read that hangs needs it). `close`
    lets a hanging read go; the folder stays.
    """

    def __init__(
        self,
        folder: Path,
        parameters: CupParameters,
        *,
        seed: int = 0,
        faults: FaultScript | None = None,
        probe_id: str = "28-00000b5eca01",
        speed: float = 1.0,
        start_s: float = 0.0,
    ) -> None:
        if speed <= 0.0:
            raise ValueError("The speed must be above zero.")
        self.world = World(parameters, seed, start_s)
        self.tree = OneWireTree(folder, probe_id)
        self.faults = faults or FaultScript()
        self._speed = speed
        self._lock = threading.RLock()
        self._timer: threading.Timer | None = None

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        self.close()

    def close(self) -> None:
        """No read hangs any more; closing twice is harmless."""
        with self._lock:
            if self._timer is not None:
                self._timer.cancel()
                self._timer = None
            self.tree.release()

    def prepare(self, time_s: float) -> None:
        """The tree shows what a conversion at this bench second gives."""
        with self._lock:
            self.world.advance(time_s)
            fault, until_s = self.faults.strike(time_s)
            if fault is None:
                self.tree.write(self.world.reading_c())
            elif fault is Fault.NO_ANSWER:
                self._hang(until_s - time_s)
            else:
                self._spoil(fault)

    def pour(self, time_s: float, volume_cm3: float, duration_s: float | None = None) -> None:
        """Alkali starts to flow into the cup."""
        with self._lock:
            self.world.advance(time_s)
            self.world.pour(volume_cm3, duration_s)

    def refill(self, time_s: float, acid_volume_cm3: float | None = None) -> None:
        """The cup is rinsed and gets fresh acid."""
        with self._lock:
            self.world.advance(time_s)
            self.world.refill(acid_volume_cm3)

    def fill_with_water(self, time_s: float, volume_cm3: float, temperature_c: float) -> None:
        """The cup gets water of this temperature, and the probe stands in it."""
        with self._lock:
            self.world.advance(time_s)
            self.world.fill_with_water(volume_cm3, temperature_c)
            self.world.back_in_cup()

    def spill(self, time_s: float, volume_cm3: float) -> None:
        """Part of what is in the cup is lost."""
        with self._lock:
            self.world.advance(time_s)
            self.world.spill(volume_cm3)

    def dip_in_alkali(self, time_s: float) -> None:
        """The rinsed, wiped probe goes into the alkali."""
        with self._lock:
            self.world.advance(time_s)
            self.world.dip_in_alkali()

    def hold_in(self, time_s: float, temperature_c: float) -> None:
        """The probe is held in a bath of this temperature."""
        with self._lock:
            self.world.advance(time_s)
            self.world.hold_in(temperature_c)

    def back_in_cup(self, time_s: float) -> None:
        """The probe goes back into the cup."""
        with self._lock:
            self.world.advance(time_s)
            self.world.back_in_cup()

    def _spoil(self, fault: Fault) -> None:
        tree, reading_c = self.tree, self.world.reading_c()
        match fault:
            case Fault.CRC:
                tree.crc_error(reading_c)
            case Fault.ONE_LINE:
                tree.one_line(reading_c)
            case Fault.JUMP:
                tree.write(reading_c + JUMP_C)
            case Fault.WIRE:
                tree.wire_fault()
            case _:
                getattr(tree, fault.value)()

    def _hang(self, duration_s: float) -> None:
        if self._timer is not None:
            self._timer.cancel()
        self.tree.hang()
        self._timer = threading.Timer(duration_s / self._speed, self._let_go)
        self._timer.daemon = True
        self._timer.start()

    def _let_go(self) -> None:
        with self._lock:
            self.tree.release()
