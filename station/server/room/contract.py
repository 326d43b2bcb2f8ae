"""What a room's server answers and sends, as typed dictionaries."""

from typing import Annotated, Literal, NotRequired

from fastapi.responses import Response
from typing_extensions import TypedDict

from station.practical.contract import Trace
from station.practical.state import Step
from station.room.contract import ClassResult, Tile
from station.room.store.store import Lesson
from station.server.bench.contract import BenchView, NamedPlan


class LessonListed(TypedDict):
    """A lesson in the list of them; `benches`: how many took part. Times are labels only."""

    lesson: int
    label: str
    began: str
    ended: str | None
    benches: int


class Lessons(TypedDict):
    """Every lesson, the newest first.

    `forget_after_days`: so long after its end the names of a lesson's class and groups are kept (0: for good);
    `clock_known`: this machine's clock is right, without which nothing is forgotten.
    """

    lessons: list[LessonListed]
    forget_after_days: int
    clock_known: bool


class OrderLeft(TypedDict):
    """What a bench has not done, or would not do, and why; of the newest order also who has done it."""

    order: int
    bench: str
    act: str
    state: Literal["pending", "refused", "taken"]
    why: str | None


class PracticeCup(TypedDict):
    """A practice cup in use; `cup` counts from 1 in the order in which they came. Nothing of it enters a result."""

    cup: int
    state: Step
    repeat: int
    repeats_planned: int
    portion: int
    portions_planned: int


class ClassSeen(TypedDict):
    """Whether a class result may be seen, which benches that waits for, and how many take part."""

    shown: bool
    waits_for: list[str]
    taking_part: int


class ClassStanding(ClassSeen):
    """The same of the present lesson; another `version` says that the result is another."""

    version: int


class RoomAbout(TypedDict):
    """The room; `language` and `units` as its settings choose them."""

    name: NotRequired[str]
    language: NotRequired[str | None]
    units: NotRequired[str | None]


RoomBoard = TypedDict(
    "RoomBoard",
    {
        "lesson": Lesson | None,
        "order": list[str],
        "tiles": dict[str, Tile],
        "needs": list[str],
        "practice": list[PracticeCup],
        "fault": str | None,
        "class": ClassStanding,
        "orders": list[OrderLeft],
        "about": RoomAbout,
    },
)


class Room(RoomBoard):
    """The board: a tile for each bench, in the `order` of their places; `needs`: who needs somebody, the newest last.

    `practice` are cups that nobody is marked by; `addresses` are the room's own.
    """

    addresses: list[str]


class MadeUp(TypedDict):
    """What the bottle was made up to in mol/dm³, as far as who asks may know it (null: not told).

    `to_find`: the class is to find it; `seen`: the benches show it.
    """

    mol_dm3: float | None
    to_find: bool
    seen: bool


class ClassAnswer(ClassSeen):
    """The class result of a lesson; `computing`: it may be seen, and is being computed: ask again."""

    lesson: Lesson | None
    computing: bool
    result: ClassResult | None
    made_up: MadeUp


class Done(TypedDict):
    """It is done and kept."""

    accepted: Literal[True]


class OrderGiven(Done):
    """The order is kept under this number."""

    order: int


class LessonBegun(Done):
    """The lesson has this number."""

    lesson: int


class ClassSheet(TypedDict):
    """What stands on a bench's sheet; `traces` of its repeats, where they are drawn."""

    view: BenchView
    traces: list[Trace]


class ClassSheets(TypedDict):
    """The sheets of a lesson, in the order of the benches' places."""

    lesson: Lesson
    sheets: list[ClassSheet]


class RoomPlans(TypedDict):
    """The plans that ship with the station."""

    plans: list[NamedPlan]


class RehearsalDoor(TypedDict):
    """Where the room's private broker is, and the password of each user."""

    host: str
    port: int
    passwords: dict[str, str]


# The live stream.


class RoomMessage(TypedDict):
    """Replaces what a page knows."""

    event: Literal["room"]
    data: RoomBoard


class TilesChanged(TypedDict):
    """The tiles that have changed, the order of all, who needs somebody, and the practice cups."""

    order: list[str]
    tiles: dict[str, Tile]
    needs: list[str]
    practice: list[PracticeCup]


class TilesMessage(TypedDict):
    """Comes whenever a bench is heard, and each second."""

    event: Literal["tiles"]
    data: TilesChanged


RoomStream = Annotated[Response, RoomMessage | TilesMessage]
