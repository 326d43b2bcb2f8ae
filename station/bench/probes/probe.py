"""One reading of a probe, and what every probe driver is."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Protocol

ANSWER_WITHIN_S = 2.5
LEAST_PATIENCE_S = 1.5


def answer_within_s(speed: float) -> float:
    """Return the wall seconds within which a read must answer: three conversions, or a busy machine's hiccup."""
    return max(ANSWER_WITHIN_S / speed, LEAST_PATIENCE_S)


class ProbeError(Exception):
    """The probe cannot be opened as the settings say; the message says what to do."""


@dataclass(frozen=True)
class ProbeReading:
    """One read: the middle of its conversion in bench time, a temperature in °C or None and the kind of fault.

    `text` is what was read when the reading is bad; `took_s` how long the read took, in wall seconds.
    """

    time_s: float
    temperature_c: float | None
    bad: str | None
    text: str | None
    took_s: float


Deliver = Callable[[ProbeReading], None]


class Probe(Protocol):
    """A probe that samples at a fixed rate and hands each reading over, from a thread of its own."""

    @property
    def probe_id(self) -> str | None:
        """The id that the reader is pinned to; None while no probe was seen."""

    def start(self, deliver: Deliver) -> None:
        """Begin to sample."""

    def close(self) -> None:
        """Stop sampling; returns at once even if a read hangs. A second call does nothing."""


# A bench without a probe: temperatures are typed from an ordinary thermometer.


class NoProbe:
    """Gives no reading at all. Chosen by name in the settings, never by falling back."""

    @property
    def probe_id(self) -> str | None:
        """There is no probe."""
        return None

    def start(self, deliver: Deliver) -> None:
        """Begin to give nothing."""

    def close(self) -> None:
        """Nothing to let go."""
