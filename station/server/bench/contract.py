"""What a bench's server answers and sends, as typed dictionaries."""

from typing import Annotated, Any, Literal, NotRequired

from fastapi.responses import Response
from typing_extensions import TypedDict

from station.bench.check.finding import FindingsShown
from station.practical.contract import ChecksShown, Live, RepeatsShown, Trace, WithoutRepeats
from station.practical.kinds import PlanValues
from station.practical.kinds.answers import Result
from station.practical.plan_check import PlanChecked
from station.words import Message

PanelKind = Literal["real", "mock", "none"]


class About(TypedDict):
    """The bench; `read_only` where the room shows it, `language` and `units` as its settings choose them.

    `practice`: its cup is virtual, and a person pours into it. `practises`: `/practise` gives whoever asks such a cup.
    """

    name: str
    virtual: bool
    panel: PanelKind
    read_only: NotRequired[bool]
    in_memory: NotRequired[bool]
    practice: NotRequired[bool]
    practises: NotRequired[bool]
    language: NotRequired[str | None]
    units: NotRequired[str | None]


class Link(TypedDict):
    """How the link to the room is; `waiting`: how many events are still to be sent."""

    up: bool
    text: Message
    waiting: int


class Now(Live):
    """What is not in the state, and what changes with time. `time_s` and all such are bench time.

    `fault`: why nothing can be kept just now. `link` is null where there is no room.
    """

    seq: int
    boot: str
    time_s: float
    speed: float
    bench: About
    fault: Message | None
    link: Link | None


class ShortView(Now, WithoutRepeats):
    """What the station says of itself, without the repeats and without the samples.

    `repeats_id` names what `repeats` and `mean` are now; `result` is null until results are shown.
    """

    repeats_id: str
    result: Result | None


class BenchView(ShortView, RepeatsShown):
    """What the station says of itself, without the samples."""


class ShortState(ShortView):
    """To who knows the repeats already: the samples since the newest pour beside."""

    trace: Trace


class BenchState(BenchView):
    """All of it, and the samples since the newest pour."""

    trace: Trace


class ActDone(TypedDict):
    """The act was done, and kept under this sequence number."""

    accepted: Literal[True]
    seq: int
    state: BenchState


class Checks(ChecksShown):
    """Everything that the page of checks shows."""

    time_s: float
    speed: float


# The live stream. A message with an id can be asked for again; one without is replaced by the next of its kind.


class LiveNow(Live):
    """What changes with every sample, at this bench time."""

    time_s: float


class Happening(TypedDict):
    """One event of the journal."""

    seq: int
    time_s: float
    kind: str
    body: dict[str, Any]


class ViewMessage(TypedDict):
    """Replaces what a page knows; the short one, where it asked for that, leaves `repeats` and `mean` as they are."""

    event: Literal["view"]
    data: BenchView | ShortView


class LiveMessage(TypedDict):
    """Comes with every sample."""

    event: Literal["live"]
    data: LiveNow


class HappenedMessage(TypedDict):
    """Its id is the event's sequence number."""

    event: Literal["happened"]
    data: Happening


class Nothing(TypedDict):
    """No members."""


class ResetMessage(TypedDict):
    """Too much was missed: load the state anew."""

    event: Literal["reset"]
    data: Nothing


BenchStream = Annotated[Response, ViewMessage | LiveMessage | HappenedMessage | ResetMessage]


# Plans, and the kit.


class NamedPlan(TypedDict):
    """A plan that ships with the station."""

    name: str
    plan: PlanValues


class ReagentShown(TypedDict):
    """A reagent to choose; `gas`: it fizzes with an acid; `anhydrous`: there are hydrates of it beside it."""

    name: Message
    formula: str
    acid: bool
    alkali: bool
    gas: bool
    solid: bool
    anhydrous: bool
    sparingly_soluble: bool
    solution_enthalpy_kj_mol: float | None


class GlasswareShown(TypedDict):
    """What portions are measured with."""

    name: Message
    u_portion_cm3: float


class Choices(TypedDict):
    """What can be chosen from."""

    reagents: list[ReagentShown]
    glassware: list[GlasswareShown]


class Plans(Choices):
    """The bench's plan, the plans that ship, and what can be chosen from."""

    bench: PlanValues
    ready: list[NamedPlan]


class PlanAnswer(PlanChecked):
    """What can be said of a plan at once; `values` are the plan's as a form shows them."""

    values: dict[str, Any]


class MachineShown(TypedDict):
    """The machine as its helper tells: `here` is whether there is one, `told` what became of the newest request.

    While that is still being done it is `at_work`.
    """

    here: bool
    at_work: bool
    told: str
    ssid: str | None
    wired: bool
    country: str | None
    copies: list[str]


class MachineDone(TypedDict):
    """What was done, or is being done."""

    told: str


class KitShown(FindingsShown):
    """What is said of the kit, `age_s` seconds ago; `cards_lack`: what cards made here would lack."""

    age_s: float
    bench: str
    addresses: list[str]
    panel: PanelKind
    cards_lack: str | None
