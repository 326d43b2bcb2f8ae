"""Ties world, one-wire tree and faults together: what the real reader and a student's hands need."""

import threading
from collections.abc import Callable
from pathlib import Path
from types import TracebackType
from typing import Final, Protocol, Self

from station.bench.virtual.cup import CupParameters
from station.bench.virtual.faults import Fault, FaultScript
from station.bench.virtual.tree import OneWireTree
from station.bench.virtual.world import World
from station.practical import events as e
from station.practical.checks.register import Check
from station.practical.checks.run import known_point
from station.words import say

# Hands that check a virtual probe or cup: what a person at the page says was done is done to it.


COLD_C: Final = 3.0
APART_C: Final = 12.0
BATHS: Final = 3
"""Comparisons are made in so many baths, one after another and over again, the first at the room's temperature."""

WATER_CM3: Final = 25.0
WARM_C: Final = 45.0
AT_ONCE_S: Final = 3.0
"""The virtual cup is tested with so much warm water, and with as much of the alkali's temperature."""


class BathHands(Protocol):
    """What hands can do with a probe that is checked."""

    def hold_in(self, time_s: float, temperature_c: float) -> None:
        """Hold the probe in a bath of this temperature."""

    def back_in_cup(self, time_s: float) -> None:
        """Put the probe back into the cup."""

    def dip_in_alkali(self, time_s: float) -> None:
        """Dip the probe into what is to be added."""

    def fill_with_water(self, time_s: float, volume_cm3: float, temperature_c: float) -> None:
        """Fill the cup with water of this temperature."""

    def pour(self, time_s: float, volume_cm3: float, duration_s: float | None = None) -> None:
        """Pour so much into the cup within this time."""


def follow_check(hands: BathHands, check: Check | None, event: e.Event, time_s: float, room_c: float) -> None:
    """Do what this event of a check says; `check` is the one under way after it."""
    if isinstance(event, e.ProbeChecked | e.ProbeCheckDiscarded | e.CupTested):
        hands.back_in_cup(time_s)
    if check is None or not isinstance(event, e.ProbeCheckStep):
        return
    if check.check in ("ice", "boiling"):
        hands.hold_in(time_s, known_point(check.check, check.values).temperature_c)
    elif check.check == "comparison":
        compared = sum(each.step == "compared" for each in check.steps)
        hands.hold_in(time_s, room_c + APART_C * (compared % BATHS))
    elif check.check == "dip":
        hands.hold_in(time_s, room_c if event.step == "hung" else COLD_C)
    elif check.check == "cup":
        _test_cup(hands, event.step, time_s)


def _test_cup(hands: BathHands, step: str, time_s: float) -> None:
    match step:
        case "in_added":
            hands.dip_in_alkali(time_s)
        case "filled":
            hands.fill_with_water(time_s, WATER_CM3, WARM_C)
        case "poured":
            hands.pour(time_s, WATER_CM3, AT_ONCE_S)


JUMP_C = 9.0  # an impossible jump from one second to the next, yet within the range of a cup


class VirtualDriver:
    """A bench with a virtual cup whose probe appears in a one-wire tree in `folder`.

    The reader calls `prepare(time_s)` right before each read; a student's hands call the others. Times are
    bench seconds and may be given a little out of order: the world never goes back. All methods may be called
    from any thread. `speed` is bench seconds per wall second (only a read that hangs needs it). `close`
    lets a hanging read go; the folder stays. `reagents` says at each filling what is in the bottles.
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
            raise ValueError(say("virtual-speed"))
        self.world = World(parameters, seed, start_s)
        self.tree = OneWireTree(folder, probe_id)
        self.faults = faults or FaultScript()
        self.reagents: Callable[[], CupParameters] | None = None
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
            self.world.refill(acid_volume_cm3, self.reagents() if self.reagents else None)

    def take_back_pour(self, time_s: float) -> None:
        """The newest portion was not poured after all."""
        with self._lock:
            self.world.advance(time_s)
            self.world.take_back_pour()

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

    def stir(self, time_s: float, duration_s: float) -> None:
        """Somebody stirs for so long, and then no more."""
        with self._lock:
            self.world.advance(time_s)
            self.world.stir(duration_s)

    def stirred_for_s(self, time_s: float) -> float:
        """Return how much longer somebody stirs, in bench seconds."""
        with self._lock:
            self.world.advance(time_s)
            return self.world.stirred_for_s

    def put_lid(self, time_s: float, *, on: bool) -> None:
        """The lid goes on, or is lifted."""
        with self._lock:
            self.world.advance(time_s)
            self.world.put_lid(on)

    def seen(self, time_s: float) -> World:
        """Return how cup and probe are at this moment: a world of its own, to look at or to let go on."""
        with self._lock:
            self.world.advance(time_s)
            return self.world.copied()

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
