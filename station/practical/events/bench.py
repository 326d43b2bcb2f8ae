"""Events of the station itself and of staff."""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from typing import Any, ClassVar, Literal

# What every event is.


@dataclass(frozen=True)
class Event:
    """Base of all events; `kind` is the name in the journal and on the stream."""

    kind: ClassVar[str] = ""

    def to_body(self) -> dict[str, Any]:
        """Return the event's fields as JSON values."""
        return asdict(self)


# Events of checking probes and cups, and of which correction is in use. Raw samples stay as the probe said them.


CheckKind = Literal["ice", "boiling", "comparison", "dip", "cup"]


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
    check: CheckKind
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
    check: CheckKind
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


@dataclass(frozen=True)
class StationStarted(Event):
    """The process came up with this version, probe and panel."""

    kind: ClassVar[str] = "station_started"
    version: str
    probe_driver: str
    probe_id: str | None
    panel: str


@dataclass(frozen=True)
class PlanChosen(Event):
    """A new practical begins to exist, with this plan (without what staff keep to themselves).

    `set_up`: each step of setting the cup up is asked for by itself; older records know only the filled cup.
    `practice`: with a virtual cup that a person pours into; no class result counts it.
    """

    kind: ClassVar[str] = "plan_chosen"
    plan: Mapping[str, Any]
    by: str | None = None
    key: str | None = None
    set_up: bool = False
    practice: bool = False


@dataclass(frozen=True)
class SampleTaken(Event):
    """One conversion of the probe: a temperature in °C, or None with the kind of fault and the text that was read."""

    kind: ClassVar[str] = "sample_taken"
    temperature_c: float | None
    bad: str | None = None
    rejected_c: float | None = None
    text: str | None = None

    def to_body(self) -> dict[str, Any]:
        """Return the fields; the many hold nothing that has to be copied."""
        return dict(vars(self))


@dataclass(frozen=True)
class ProbeLost(Event):
    """Several samples in a row were bad."""

    kind: ClassVar[str] = "probe_lost"
    bad: str


@dataclass(frozen=True)
class ProbeFound(Event):
    """The first good sample after the probe was lost."""

    kind: ClassVar[str] = "probe_found"


@dataclass(frozen=True)
class RecordSalvaged(Event):
    """The record was found damaged at the start: `kept` events go on, the damaged file lies in the folder `aside`."""

    kind: ClassVar[str] = "record_salvaged"
    kept: int
    aside: str


@dataclass(frozen=True)
class Quieted(Event):
    """Staff silenced the buzzer, or let it sound, until the next practical."""

    kind: ClassVar[str] = "quieted"
    silent: bool
    by: str
    key: str | None = None


@dataclass(frozen=True)
class BenchRenamed(Event):
    """Staff gave the bench another name; None is the name in its settings again."""

    kind: ClassVar[str] = "bench_renamed"
    name: str | None
    by: str
    key: str | None = None


@dataclass(frozen=True)
class ResultsShown(Event):
    """Staff let the results be seen, or withheld them; with them what the bottle was made up to, if they told it."""

    kind: ClassVar[str] = "results_shown"
    shown: bool
    by: str
    key: str | None = None
    prepared_mol_dm3: float | None = None


@dataclass(frozen=True)
class TeacherCalled(Event):
    """The group asked for the teacher."""

    kind: ClassVar[str] = "teacher_called"
    key: str | None = None


@dataclass(frozen=True)
class CallEnded(Event):
    """The teacher is wanted no more: the group said so, or staff, who had been there."""

    kind: ClassVar[str] = "call_ended"
    by: str | None = None
    key: str | None = None


@dataclass(frozen=True)
class OrderTaken(Event):
    """The room ordered something, under this number: what was done stands before this event, or why nothing was."""

    kind: ClassVar[str] = "order_taken"
    room: str
    order: int
    act: str
    refused: str | None = None
