"""Slows guessing down for everyone, and locks nobody out for good. It knows no wall clock: times are monotonic.

Two waits, and a try is looked at only when both are over:
- **of its own**: after a wrong try the same address waits 1 s, then 2, 4, 8, 16 and at most 30 s. A minute without
  a wrong try forgives one of them; being right once forgives nothing, or who knows one code could guess another.
- **of all together**: tries of all addresses come one a second once `BURST` are used up. Each address that has to
  wait holds one place in a queue, so that those who shout cannot push in front of those who wait: with A addresses
  guessing at once, a new one is let in after about A seconds at most.
"""

import math
from collections import OrderedDict
from dataclasses import dataclass

FIRST_WAIT_S = 1.0
LONGEST_WAIT_S = 30.0
FORGIVEN_AFTER_S = 60.0
MOST_COUNTED = 6
"""Wrong tries that are counted; with this many the wait is the longest."""

EVERY_S = 1.0
BURST = 20
"""A class that types its codes at once, with slips, does not notice the queue."""

PLACE_KEPT_S = 30.0
"""A place in the queue is kept so long after its turn; places cannot be saved up for a rush."""

MOST_ADDRESSES = 512
MOST_QUEUED_S = 256.0
"""So long a queue, and who comes is told to come again without a place in it. One /24 network fills less."""


@dataclass
class _Address:
    wrong: int = 0
    wrong_s: float = 0.0
    turn_s: float | None = None
    trying: bool = False

    def counted(self, now_s: float) -> int:
        return max(0, self.wrong - math.floor((now_s - self.wrong_s) / FORGIVEN_AFTER_S))

    def wait_s(self, now_s: float) -> float:
        counted = self.counted(now_s)
        if counted == 0:
            return 0.0
        return max(0.0, self.wrong_s + min(LONGEST_WAIT_S, FIRST_WAIT_S * 2.0 ** (counted - 1)) - now_s)


class Slowdown:
    """Who may try now, and who waits how long. Call `admit`, then either `right` or `wrong` for each try let in."""

    def __init__(self) -> None:
        self._addresses: OrderedDict[str, _Address] = OrderedDict()
        self._next_s = -math.inf  # when the queue would be empty of all that was let in or has a place

    def admit(self, address: str, now_s: float, *, alone: bool = False) -> float:
        """Return 0 when this address may try now, else how many seconds it has to wait.

        `alone` leaves out the wait of all together, for a try that gives no one an advantage.
        """
        who = self._known(address)
        if who.trying:
            return FIRST_WAIT_S
        own_s = who.wait_s(now_s)
        if own_s > 0.0:
            return own_s
        if not alone:
            queued_s = self._queued(who, now_s)
            if queued_s > 0.0:
                return queued_s
        who.trying, who.turn_s = True, None
        return 0.0

    def right(self, address: str, *, alone: bool = False) -> None:
        """The try was right, or was not looked at after all: it counts for nothing."""
        self._known(address).trying = False
        if not alone:
            self._next_s -= EVERY_S

    def wrong(self, address: str, now_s: float) -> None:
        """The try was wrong."""
        who = self._known(address)
        who.trying = False
        who.wrong, who.wrong_s = min(who.counted(now_s) + 1, MOST_COUNTED), now_s

    def _queued(self, who: _Address, now_s: float) -> float:
        """Give this address a place in the queue if it has none; return how long until its turn."""
        if who.turn_s is None or now_s - who.turn_s > PLACE_KEPT_S:
            next_s = max(self._next_s, now_s) + EVERY_S
            turn_s = next_s - BURST * EVERY_S
            if turn_s - now_s > MOST_QUEUED_S:
                return turn_s - now_s
            self._next_s, who.turn_s = next_s, turn_s
        return max(0.0, who.turn_s - now_s)

    def _known(self, address: str) -> _Address:
        who = self._addresses.setdefault(address, _Address())
        self._addresses.move_to_end(address)
        while len(self._addresses) > MOST_ADDRESSES:
            self._addresses.popitem(last=False)
        return who
