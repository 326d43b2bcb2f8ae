"""A bench's own time, as it goes on between the events that come from there."""

from collections import deque
from dataclasses import dataclass, field

from station.practical import events as e

WINDOW_S = 20.0
FORGETS_S = 0.0005
"""By so much a second an old shortest delay counts for less: clocks drift by a twentieth of that."""


@dataclass
class Pacer:
    """A bench's own time as the room's clock goes on: learnt from events, each with the bench's monotonic time.

    What comes late comes with its own time on it: of all delays the shortest is believed.
    """

    boot: str = ""
    speed: float = 1.0
    ahead_s: float | None = None
    _newest: tuple[float, float] = (0.0, 0.0)
    _known: deque[tuple[float, float]] = field(default_factory=deque)
    _learnt_s: float = 0.0

    def learn(self, stamped: e.Stamped, now_s: float | None, *, same_clock: bool = False) -> None:
        """Take note of an event that came at this time of the room's monotonic clock; None: it was kept before.

        `same_clock`: the bench is on the room's own machine, whose monotonic clock is one.
        """
        if stamped.boot != self.boot:
            self.boot, self.ahead_s = stamped.boot, None
            self._known.clear()
        self._newest = (stamped.monotonic_s, stamped.time_s)
        if not self._known or stamped.monotonic_s - self._known[-1][0] >= 0.5:
            self._known.append(self._newest)
            while len(self._known) > 2 and self._known[1][0] < stamped.monotonic_s - WINDOW_S:
                self._known.popleft()
        passed_s = stamped.monotonic_s - self._known[0][0]
        if passed_s >= 1.0:
            self.speed = max(0.0, (stamped.time_s - self._known[0][1]) / passed_s)
        if now_s is not None:
            ahead_s = now_s - stamped.monotonic_s
            believed = self.ahead_s
            if believed is not None:
                believed += FORGETS_S * max(0.0, now_s - self._learnt_s)
            self.ahead_s = ahead_s if believed is None else min(believed, ahead_s)
            self._learnt_s = now_s
        if same_clock:
            self.ahead_s = 0.0

    def time_s(self, now_s: float) -> float:
        """Return the bench time at this time of the room's clock."""
        monotonic_s, time_s = self._newest
        if self.ahead_s is None:
            return time_s
        return time_s + self.speed * max(0.0, now_s - self.ahead_s - monotonic_s)
