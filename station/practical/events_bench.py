"""Events of the station itself and of staff."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any, ClassVar

from station.practical.event import Event


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
    """A new practical begins to exist, with this plan (without what staff keep to themselves)."""

    kind: ClassVar[str] = "plan_chosen"
    plan: Mapping[str, Any]
    by: str | None = None
    key: str | None = None


@dataclass(frozen=True)
class SampleTaken(Event):
    """One conversion of the probe: a temperature in °C, or None with the kind of fault and the text that was read."""

    kind: ClassVar[str] = "sample_taken"
    temperature_c: float | None
    bad: str | None = None
    rejected_c: float | None = None
    text: str | None = None


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
    """Staff let the results be seen, or withheld them."""

    kind: ClassVar[str] = "results_shown"
    shown: bool
    by: str
    key: str | None = None


@dataclass(frozen=True)
class OrderTaken(Event):
    """The room ordered something, under this number: what was done stands before this event, or why nothing was."""

    kind: ClassVar[str] = "order_taken"
    room: str
    order: int
    act: str
    refused: str | None = None
