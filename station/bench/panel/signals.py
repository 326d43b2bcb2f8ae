"""What the panel shows: one signal, its blink pattern and its sound, as pure functions of time.

Nothing here knows a pin, a clock or a thread; seconds come in as arguments. A signal is told by its rhythm, not
only by the lamp's colour or place: seen in grey, through one eye-hole, all eight still differ.
"""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple


class Signal(StrEnum):
    """What the student, looking up from the cup, must know at a glance."""

    OFF = "off"
    WAIT = "wait"  # the temperature is settling, or the station waits for a steady start
    BEGIN = "begin"  # press when the acid is in the cup
    ADD = "add"  # add the next portion, then press
    RINSE = "rinse"  # empty and rinse the cup, then press
    ATTENTION = "attention"  # probe lost or another fault: the page says which
    DONE = "done"  # the practical has ended
    PAUSED = "paused"


class Lamps(NamedTuple):
    """Which of the three lamps is lit."""

    wait: bool = False
    act: bool = False
    attention: bool = False


DARK = Lamps()
ALL_LIT = Lamps(True, True, True)


@dataclass(frozen=True)
class Pattern:
    """One lamp's rhythm: lit while the time into the period lies in one of the spans (start, end), in seconds."""

    lamp: Lamps
    period_s: float
    lit_s: tuple[tuple[float, float], ...]
    beeps: int = 0


_WAIT, _ACT, _ATTENTION = Lamps(wait=True), Lamps(act=True), Lamps(attention=True)

TRIAL_EACH_S = 1.5


def trial(elapsed_s: float) -> Lamps | None:
    """Return what a test of the lamps shows: each in turn, then all of them; None once it is over."""
    steps = (_WAIT, _ACT, _ATTENTION, ALL_LIT)
    step = int(elapsed_s // TRIAL_EACH_S)
    return steps[step] if 0 <= step < len(steps) else None


PATTERNS: dict[Signal, Pattern] = {
    Signal.OFF: Pattern(DARK, 1.0, ()),
    Signal.WAIT: Pattern(_WAIT, 2.0, ((0.0, 1.0),)),  # slow and even
    Signal.BEGIN: Pattern(_ACT, 2.0, ((0.0, 1.6),), beeps=1),  # long, short gap
    Signal.ADD: Pattern(_ACT, 1.0, ((0.0, 0.5),), beeps=1),  # once a second
    Signal.RINSE: Pattern(_ACT, 2.0, ((0.0, 0.25), (0.5, 0.75)), beeps=1),  # in twos
    Signal.ATTENTION: Pattern(_ATTENTION, 0.5, ((0.0, 0.25),), beeps=2),  # fast
    Signal.DONE: Pattern(_ACT, 1.0, ((0.0, 1.0),), beeps=1),  # steady
    Signal.PAUSED: Pattern(_WAIT, 3.0, ((0.0, 0.25),)),  # a blip now and then
}


def lamps(signal: Signal, since_s: float) -> Lamps:
    """Return the lamps of a signal that has been shown for `since_s` seconds (negative counts as 0)."""
    pattern = PATTERNS[signal]
    into_s = max(since_s, 0.0) % pattern.period_s
    return pattern.lamp if any(start <= into_s < end for start, end in pattern.lit_s) else DARK


class FlashLimiter:
    """Keeps every flash at least `gap_s` after the one before, whatever is asked for.

    WCAG 2.2, success criterion 2.3.1, allows no more than three flashes in any one second. The patterns alone keep
    to that; a signal that flaps between two states would not, so the limit is enforced where the lamps are
    written: a lamp may go dark at any time but comes on only when the gap has passed.
    """

    def __init__(self, gap_s: float = 0.36) -> None:
        self._gap_s = gap_s
        self._lit = DARK
        self._came_on_s: float | None = None

    def admit(self, wanted: Lamps, now_s: float) -> Lamps:
        """Return what may be lit at `now_s` (monotonic seconds) when `wanted` is asked for."""
        comes_on = any(new and not old for new, old in zip(wanted, self._lit, strict=True))
        if not comes_on:
            self._lit = wanted
        elif self._came_on_s is None or now_s - self._came_on_s >= self._gap_s:
            self._lit, self._came_on_s = wanted, now_s
        else:
            self._lit = Lamps(*(new and old for new, old in zip(wanted, self._lit, strict=True)))
        return self._lit
