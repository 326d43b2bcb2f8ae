"""Bench time: it goes on over restarts, may run faster than the wall for a virtual cup, and never goes back.

A Pi has no clock of its own: wall time is only a label. Intervals come from the machine's boot and its
monotonic clock; over a reboot, bench time goes on from the newest event, by wall time where that is believable.
"""

import asyncio
import math
import os
import threading
import time
from datetime import UTC, datetime
from pathlib import Path

from station.practical.events import Stamped
from station.record.journal import Moment

LONGEST_GAP_S = 86_400.0
VIRTUAL_LEAD_S = 3.0
"""How far the time of a virtual cup may be ahead of its samples: three of them, so that a quick machine never waits."""
SHORTEST_WAIT_S = 0.001
_SYNCHRONISED = Path("/run/systemd/timesync/synchronized")


def boot_id() -> str:
    """Return the kernel's id of this boot."""
    try:
        return Path("/proc/sys/kernel/random/boot_id").read_text().strip()
    except OSError:
        return "unknown"


class Clock:
    """Bench seconds from the machine's monotonic clock: `start_s + (monotonic − origin_s) × speed`.

    With `lead_s`, bench time is at most so far ahead of the newest sample that was worked on (`worked_on`): a virtual
    cup slows down on a busy machine, where samples would otherwise pile up and acts come late. All methods may be
    called from any thread.
    """

    def __init__(
        self,
        origin_s: float,
        start_s: float = 0.0,
        speed: float = 1.0,
        boot: str = "unknown",
        lead_s: float = math.inf,
    ) -> None:
        self.speed, self.boot = speed, boot
        self._origin_s, self._start_s, self._lead_s = origin_s, start_s, lead_s
        self._latest_s = start_s + lead_s
        self._held_s = -math.inf
        self._lock = threading.Lock()

    @classmethod
    def started(cls, last: Stamped | None = None, speed: float = 1.0, lead_s: float = math.inf) -> "Clock":
        """Return a clock that goes on where the newest event of the journal left off."""
        boot, now_s = boot_id(), time.monotonic()
        start_s = 0.0 if last is None else last.time_s + _passed_s(last, boot, now_s, speed)
        return cls(now_s, start_s, speed, boot, lead_s)

    @property
    def waits(self) -> bool:
        """Whether bench time waits for its samples."""
        return self._lead_s < math.inf

    def time_s(self) -> float:
        """Return the bench time now, in s."""
        return self.at(time.monotonic())

    def at(self, monotonic_s: float) -> float:
        """Return the bench time at a reading of the monotonic clock, to as many places as the journal keeps.

        So what is decided at a sample is decided on the very time that the record says.
        """
        with self._lock:
            time_s = self._start_s + (monotonic_s - self._origin_s) * self.speed
            if time_s > self._latest_s:
                time_s = self._start_s = self._held_s = self._latest_s
                self._origin_s = monotonic_s
            # A thread that was stopped between looking at the machine's clock and asking here must not go back.
            return round(max(time_s, self._held_s), 4)

    def worked_on(self, time_s: float) -> None:
        """The sample of this bench time is in the record: bench time may go on."""
        self.time_s()
        with self._lock:
            self._latest_s = max(self._latest_s, time_s + self._lead_s)

    def wait(self, stop: threading.Event, bench_s: float) -> None:
        """Wait so many bench seconds in a thread, or until `stop` is set."""
        until_s = self.time_s() + bench_s
        stop.wait(max(bench_s, 0.0) / self.speed)
        # Bench time is never faster than its speed: who waits for the rest of it comes not a moment late.
        while self.waits and (left_s := until_s - self.time_s()) > 0.0:
            if stop.wait(max(left_s / self.speed, SHORTEST_WAIT_S)):
                return

    async def sleep(self, bench_s: float) -> None:
        """Wait so many bench seconds."""
        until_s = self.time_s() + bench_s
        await asyncio.sleep(max(bench_s, 0.0) / self.speed)
        while (left_s := until_s - self.time_s()) > 0.0:  # noqa: ASYNC110 - nobody says when time may go on
            await asyncio.sleep(max(left_s / self.speed, SHORTEST_WAIT_S))

    def moment(self, time_s: float | None = None) -> Moment:
        """Return the moment of an event: now, or at this bench time."""
        now = datetime.now(UTC).isoformat(timespec="milliseconds")
        trust = "network" if is_known_right() else "none"
        bench_s = self.time_s() if time_s is None else time_s
        with self._lock:
            monotonic_s = self._origin_s + (bench_s - self._start_s) / self.speed
        return Moment(self.boot, round(monotonic_s, 4), round(bench_s, 4), now, trust)


def is_known_right() -> bool:
    """Whether the network has set this machine's clock since it started."""
    return os.path.exists(_SYNCHRONISED)  # noqa: PTH110 - at every event


def _passed_s(last: Stamped, boot: str, now_s: float, speed: float) -> float:
    if last.boot == boot and boot != "unknown":
        return max(now_s - last.monotonic_s, 0.0) * speed
    try:
        wall_s = (datetime.now(UTC) - datetime.fromisoformat(last.wall)).total_seconds()
    except (ValueError, TypeError):
        wall_s = 0.0
    # A clock that was set in between tells nothing: one second keeps the order.
    return wall_s if 0.0 < wall_s < LONGEST_GAP_S else 1.0
