"""A script of probe faults: which fault, at which bench second, for how long; or at random.

power_on@30+5, gone@120+20, stale@200+3, random 30 %, random 10 %@300+60
"""

import random
import re
from dataclasses import dataclass
from enum import StrEnum

from station.words import say


class Fault(StrEnum):
    """What can be wrong with a read."""

    EMPTY = "empty"
    CRC = "crc"
    ZEROS = "zeros"
    BUS_HIGH = "bus_high"
    POWER_ON = "power_on"
    LOW_POWER = "low_power"
    WIRE = "wire"
    ONE_LINE = "one_line"
    GARBLED = "garbled"
    JUMP = "jump"
    STALE = "stale"
    GONE = "gone"
    BUS_GONE = "bus_gone"
    NO_ANSWER = "no_answer"


# A random fault spoils one read; the others need a duration to make sense.
SPOILS_ONE_READ = tuple(fault for fault in Fault if fault not in {Fault.GONE, Fault.BUS_GONE, Fault.NO_ANSWER})

_NUMBER = r"(\d+(?:\.\d+)?)"
_WHEN = rf"@\s*{_NUMBER}\s*\+\s*{_NUMBER}"
_NAMED = re.compile(rf"([a-z_]+)\s*{_WHEN}")
_RANDOM = re.compile(rf"random\s+{_NUMBER}\s*%\s*(?:{_WHEN})?")


class FaultScriptError(ValueError):
    """A fault script cannot be read; the message says how to write it."""


@dataclass(frozen=True)
class Line:
    """One line of a script: from `start_s` on, for `duration_s`; `fault` None means a random one."""

    fault: Fault | None
    start_s: float = 0.0
    duration_s: float = float("inf")
    probability: float = 1.0

    @property
    def end_s(self) -> float:
        """The first moment at which it is over."""
        return self.start_s + self.duration_s


@dataclass(frozen=True)
class FaultScript:
    """Decides what a read at a moment finds: a pure function of script, seed and moment."""

    lines: tuple[Line, ...] = ()
    seed: int = 0

    @classmethod
    def parse(cls, text: str, seed: int = 0) -> "FaultScript":
        """Read a script; its entries stand between commas. Raises FaultScriptError."""
        return cls(tuple(_line(entry.strip()) for entry in text.split(",") if entry.strip()), seed)

    def at(self, time_s: float) -> Fault | None:
        """The fault a read at this bench second meets; where lines overlap, the first that strikes."""
        return self.strike(time_s)[0]

    def strike(self, time_s: float) -> tuple[Fault | None, float]:
        """The fault at this bench second, and when its line is over."""
        for number, line in enumerate(self.lines):
            if not line.start_s <= time_s < line.end_s:
                continue
            if line.fault is not None:
                return line.fault, line.end_s
            draw = random.Random(f"fault {self.seed} {number} {time_s:.3f}")  # noqa: S311  (a simulation)
            if draw.random() < line.probability:
                return draw.choice(SPOILS_ONE_READ), time_s
        return None, time_s


def _line(entry: str) -> Line:
    if match := _RANDOM.fullmatch(entry):
        percent, start_s, duration_s = match.groups()
        if float(percent) > 100.0:
            raise FaultScriptError(say("virtual-faults-percent", typed=repr(entry)))
        if start_s is None:
            return Line(None, probability=float(percent) / 100.0)
        return Line(None, float(start_s), float(duration_s), float(percent) / 100.0)
    if (match := _NAMED.fullmatch(entry)) and match[1] in set(Fault):
        return Line(Fault(match[1]), float(match[2]), float(match[3]))
    raise FaultScriptError(say("virtual-faults-not-understood", typed=repr(entry), known_text=", ".join(Fault)))
