"""Which lesson a practical belongs to. A lesson begins when the teacher says so, or with the first practical of a day.

A practical belongs to the lesson that is open when it is first heard of; one that comes late, from a bench that was
away, to the lesson in which it began, where the bench's clock can be trusted.
"""

from collections.abc import Callable, Iterator
from dataclasses import dataclass
from datetime import UTC, datetime, timedelta

from station.practical import events as e
from station.practical.events import Stamped
from station.practical.fold import fold, fold_all
from station.practical.state import State
from station.room.store.store import Lesson, RoomStore

# One practical out of the room's store: its events, and the state they lead to.


_BEFORE = (e.StationStarted.kind, e.BenchRenamed.kind)
"""What holds on from one practical to the next."""


@dataclass(frozen=True)
class Practical:
    """A practical by its bench, its journal and the event with which it began."""

    bench: str
    journal: str
    began: int


def practical_events(store: RoomStore, which: Practical, kinds: tuple[str, ...] = ()) -> Iterator[e.Stamped]:
    """Yield the events from the choice of the plan to before the next one. Raises StoreError."""
    wanted = kinds and (*kinds, e.PlanChosen.kind)
    for stamped in store.events(which.bench, which.began - 1, wanted, which.journal):
        if isinstance(stamped.event, e.PlanChosen) and stamped.seq != which.began:
            return
        yield stamped


def practical_state(store: RoomStore, which: Practical) -> State:
    """Return the state at the end of a practical. Raises StoreError."""
    return fold_all(practical_events(store, which), state_before(store, which))


def state_before(store: RoomStore, which: Practical) -> State:
    """Return what holds before a practical begins: the bench's name, and whether it has a probe. Raises StoreError."""
    state = State()
    for stamped in store.events(which.bench, 0, _BEFORE, which.journal):
        if stamped.seq > which.began:
            break
        state = fold(state, stamped)
    return state


def newest_practical(store: RoomStore, bench: str, journal: str) -> Practical | None:
    """Return the practical that a bench is at; None where it never chose a plan. Raises StoreError."""
    chosen = [each.seq for each in store.events(bench, 0, (e.PlanChosen.kind,), journal)]
    return Practical(bench, journal, chosen[-1]) if chosen else None


LONGEST_LESSON = timedelta(hours=4)
"""After so long a practical that begins is of another lesson: two double lessons; an estimate."""
LONGEST_LABEL = 24
SCHOOL_YEAR_DAYS = 365
"""So long names of classes and groups are kept unless the room's settings say otherwise."""


class LessonBook:
    """The lessons of a store. Every method may raise StoreError, and blocks while it reads or writes."""

    def __init__(self, store: RoomStore, now: Callable[[], datetime] = lambda: datetime.now(UTC)) -> None:
        self._store, self._now = store, now

    def current(self) -> Lesson | None:
        """Return the lesson under way."""
        return next((each for each in self._store.lessons() if each.ended is None), None)

    def find(self, lesson: int | None) -> Lesson | None:
        """Return the lesson of this number; without a number the one under way, or the newest."""
        known = self._store.lessons()
        if lesson is None:
            return known[0] if known else None
        return next((each for each in known if each.lesson == lesson), None)

    def begin(self, label: str) -> int:
        """Begin a lesson of this class; the one before ends."""
        return self._store.begin_lesson(label)

    def assign(self, which: Practical, chosen: Stamped) -> int:
        """Put a practical into its lesson, begun where there is none; return its number."""
        lesson = self._then(chosen) or self._open() or self.begin("")
        self._store.add_practical(lesson, which.bench, which.journal, which.began)
        return lesson

    def practicals(self, lesson: int) -> list[Practical]:
        """Return the practicals of a lesson, each bench's newest last."""
        return [Practical(*each) for each in self._store.practicals(lesson)]

    def forget(self, after_days: int, *, known_right: bool) -> int:
        """Forget the names of classes and groups so many days after their lesson; return of how many lessons.

        0 days keeps them for good. By a clock that may be wrong nothing is forgotten: it cannot be brought back.
        """
        if after_days == 0 or not known_right:
            return 0
        before = self._now() - timedelta(days=after_days)
        return self._store.forget(before.isoformat(timespec="milliseconds"))

    def _open(self) -> int | None:
        lesson = self.current()
        if lesson is None:
            return None
        began = _time(lesson.began)
        lasts = began is None or timedelta() <= self._now() - began <= LONGEST_LESSON
        return lesson.lesson if lasts else None

    def _then(self, chosen: Stamped) -> int | None:
        """Return the ended lesson during which this happened, by a clock that the network set."""
        at = _time(chosen.wall) if chosen.clock == "network" else None
        if at is None:
            return None
        for lesson in self._store.lessons():
            began, ended = _time(lesson.began), _time(lesson.ended)
            if began is not None and ended is not None and began <= at < ended:
                return lesson.lesson
        return None


def _time(text: str | None) -> datetime | None:
    try:
        found = datetime.fromisoformat(text) if text else None
    except ValueError:
        return None
    return found if found is None or found.tzinfo is not None else None
