"""Events of checking probes and cups, and of which correction is in use. Raw samples stay as the probe said them."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from station.practical.event import Event


@dataclass(frozen=True)
class ProbeLookedAt(Event):
    """This probe was seen; `against` says what speaks against a genuine chip, as far as its bytes have shown."""

    kind: ClassVar[str] = "probe_looked_at"
    probe_id: str
    against: list[str]


@dataclass(frozen=True)
class ProbeTallied(Event):
    """How many samples this probe gave since the last tally, and how many of them were bad, by kind of fault."""

    kind: ClassVar[str] = "probe_tallied"
    probe_id: str
    samples: int
    bad: Mapping[str, int]


@dataclass(frozen=True)
class ProbeInUse(Event):
    """From here on temperatures come from this probe, and this correction is added to what it says; None: none.

    `number` and `check` name the check, `checked_wall` and `checked_clock` when it was (None: in this very commit).
    """

    kind: ClassVar[str] = "probe_in_use"
    probe_id: str | None
    correction: Mapping[str, float] | None = None
    check: str | None = None
    number: int | None = None
    checked_wall: str | None = None
    checked_clock: str | None = None


@dataclass(frozen=True)
class ProbeCheckBegun(Event):
    """Staff began to check the probe, or a cup; `values` is what they typed before."""

    kind: ClassVar[str] = "probe_check_begun"
    check: str
    probe_id: str | None
    values: Mapping[str, Any]
    by: str
    key: str | None = None


@dataclass(frozen=True)
class ProbeCheckStep(Event):
    """A step of the check was done, by staff or by the station; `values` is what was typed or measured in it."""

    kind: ClassVar[str] = "probe_check_step"
    step: str
    values: Mapping[str, Any]
    key: str | None = None


@dataclass(frozen=True)
class ProbeCheckFound(Event):
    """What the check has found so far; it counts only once it is saved."""

    kind: ClassVar[str] = "probe_check_found"
    values: Mapping[str, Any]


@dataclass(frozen=True)
class ProbeCheckDiscarded(Event):
    """The check was given up, and nothing of it counts."""

    kind: ClassVar[str] = "probe_check_discarded"
    reason: str
    by: str | None = None
    key: str | None = None


@dataclass(frozen=True)
class ProbeChecked(Event):
    """A check of this probe was saved. Checks are numbered from 1; `values` is what was found, `correction` in it."""

    kind: ClassVar[str] = "probe_checked"
    check: str
    number: int
    probe_id: str | None
    values: Mapping[str, Any]
    by: str
    key: str | None = None


@dataclass(frozen=True)
class ProbeCheckWithdrawn(Event):
    """Staff took a saved check back: it is used no more, and stays in the record."""

    kind: ClassVar[str] = "probe_check_withdrawn"
    number: int
    by: str
    key: str | None = None


@dataclass(frozen=True)
class CupTested(Event):
    """A cup test was saved: heat capacity and heat loss of cup and probe, for the `[cup]` of plans."""

    kind: ClassVar[str] = "cup_tested"
    label: str
    probe_id: str | None
    values: Mapping[str, Any]
    by: str
    key: str | None = None
