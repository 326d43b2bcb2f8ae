"""Bench time: it goes on over restarts, may run faster than the wall for a virtual cup, and never goes back.

A Pi has no clock of its own: wall time is only a label. Intervals come from the machine's boot and its
monotonic clock; over a reboot, bench time goes on from the newest event, by wall time where that is believable.
"""

import asyncio
import time
from dataclasses import dataclass
from datetime import UTC, datetime
from pathlib import Path

from station.practical.events import Stamped
from station.record.journal import Moment

LONGEST_GAP_S = 86_400.0
_SYNCHRONISED = Path("/run/systemd/timesync/synchronized")


def boot_id() -> str:
    """Return the kernel's id of this boot."""
    try:
        return Path("/proc/sys/kernel/random/boot_id").read_text().strip()
    except OSError:
        return "unknown"


@dataclass(frozen=True)
class Clock:
    """Bench seconds from the machine's monotonic clock: `start_s + (monotonic − origin_s) × speed`."""

    origin_s: float
    start_s: float = 0.0
    speed: float = 1.0
    boot: str = "unknown"

    @classmethod
    def started(cls, last: Stamped | None = None, speed: float = 1.0) -> "Clock":
        """Return a clock that goes on where the newest event of the journal left off."""
        boot, now_s = boot_id(), time.monotonic()
        return cls(now_s, 0.0 if last is None else last.time_s + _passed_s(last, boot, now_s, speed), speed, boot)

    def time_s(self) -> float:
        """Return the bench time now, in s."""
        return self.at(time.monotonic())

    def at(self, monotonic_s: float) -> float:
        """Return the bench time at a reading of the monotonic clock, to as many places as the journal keeps.

        So what is decided at a sample is decided on the very time that the record says.
        """
        return round(self.start_s + (monotonic_s - self.origin_s) * self.speed, 4)

    async def sleep(self, bench_s: float) -> None:
        """Wait so many bench seconds."""
        await asyncio.sleep(max(bench_s, 0.0) / self.speed)

    def moment(self, time_s: float | None = None) -> Moment:
        """Return the moment of an event: now, or at this bench time."""
        now = datetime.now(UTC).isoformat(timespec="milliseconds")
        trust = "network" if _SYNCHRONISED.exists() else "none"
        bench_s = self.time_s() if time_s is None else time_s
        monotonic_s = self.origin_s + (bench_s - self.start_s) / self.speed
        return Moment(self.boot, round(monotonic_s, 4), round(bench_s, 4), now, trust)


def _passed_s(last: Stamped, boot: str, now_s: float, speed: float) -> float:
    if last.boot == boot and boot != "unknown":
        return max(now_s - last.monotonic_s, 0.0) * speed
    try:
        wall_s = (datetime.now(UTC) - datetime.fromisoformat(last.wall)).total_seconds()
    except (ValueError, TypeError):
        wall_s = 0.0
    # A clock that was set in between tells nothing: one second keeps the order.
    return wall_s if 0.0 < wall_s < LONGEST_GAP_S else 1.0
