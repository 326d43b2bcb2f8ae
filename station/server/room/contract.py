"""What a room's server answers and sends, as typed dictionaries."""

from typing import Annotated, Literal, NotRequired

from fastapi.responses import Response
from typing_extensions import TypedDict

from station.room.contract import ClassResult, Tile
from station.room.store.store import Lesson
from station.server.bench.contract import NamedPlan


class LessonListed(TypedDict):
    """A lesson in the list of them; `benches`: how many took part. Times are labels only."""

    lesson: int
    label: str
    began: str
    ended: str | None
    benches: int


class Lessons(TypedDict):
    """Every lesson, the newest first."""

    lessons: list[LessonListed]


class OrderLeft(TypedDict):
    """What a bench has not done, or would not do, and why."""

    order: int
    bench: str
    act: str
    state: Literal["pending", "refused"]
    why: str | None


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
        "fault": str | None,
        "class": ClassStanding,
        "orders": list[OrderLeft],
        "about": RoomAbout,
    },
)


class Room(RoomBoard):
    """The board: a tile for each bench, by name and in the `order` of who needs help; the room's own addresses."""

    addresses: list[str]


class ClassAnswer(ClassSeen):
    """The class result of a lesson; `computing`: it may be seen, and is being computed: ask again."""

    lesson: Lesson | None
    computing: bool
    result: ClassResult | None


class Done(TypedDict):
    """It is done and kept."""

    accepted: Literal[True]


class OrderGiven(Done):
    """The order is kept under this number."""

    order: int


class LessonBegun(Done):
    """The lesson has this number."""

    lesson: int


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
    """The tiles that have changed, and the order of all."""

    order: list[str]
    tiles: dict[str, Tile]


class TilesMessage(TypedDict):
    """Comes whenever a bench is heard, and each second."""

    event: Literal["tiles"]
    data: TilesChanged


RoomStream = Annotated[Response, RoomMessage | TilesMessage]
