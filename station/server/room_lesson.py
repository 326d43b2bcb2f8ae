"""The lesson under way, as the desk holds it: who takes part, what was ordered, and whether results may be seen."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from station.practical.state import State
from station.room.board import Board
from station.room.lesson_book import LessonBook
from station.room.practicals import Practical, practical_state
from station.room.store import Lesson, OrderKept, RoomStore

Json = dict[str, Any]

MOST_ORDERS = 60


@dataclass(frozen=True)
class LessonNow:
    """The newest lesson with its practicals, each bench's newest, and the orders that were given during it."""

    lesson: Lesson | None = None
    benches: Mapping[str, Practical] = field(default_factory=dict)
    orders: Sequence[OrderKept] = ()

    @classmethod
    def read(cls, store: RoomStore, book: LessonBook) -> "LessonNow":
        """Read it from the store. Raises StoreError."""
        lesson = book.find(None)
        if lesson is None:
            return cls()
        benches = {each.bench: each for each in book.practicals(lesson.lesson)}
        return cls(lesson, benches, [each for each in store.orders() if each.given >= lesson.began])

    def orders_json(self) -> list[Json]:
        """Return what benches have not done, or would not do, the newest first."""
        open_ones = [each for each in self.orders if each.state in ("pending", "refused")]
        return [
            {
                "order": each.order,
                "bench": each.bench,
                "act": each.act.get("act"),
                "state": each.state,
                "why": each.why,
            }
            for each in reversed(open_ones[-MOST_ORDERS:])
        ]

    def standing(self, states: Mapping[str, State]) -> Json:
        """Return whether the class result may be seen, and which benches it waits for.

        It is seen once every bench that has begun shows its own: until then it would tell those that do not.
        """
        begun = {bench: states[bench] for bench in self.benches if bench in states and states[bench].repeats}
        waits = [bench for bench, state in begun.items() if not self._shows(bench, state)]
        return {"shown": bool(begun) and not waits, "waits_for": waits, "taking_part": len(begun)}

    def _shows(self, bench: str, state: State) -> bool:
        """Whether a bench shows its results, or was told to and is away."""
        told = [each for each in self.orders if each.bench == bench and each.act.get("act") == "show_results"]
        if told and told[-1].state == "pending":
            return bool(told[-1].act.get("shown"))
        return state.results_shown

    def states(self, lesson: Lesson, store: RoomStore, book: LessonBook, board: Board) -> dict[str, State]:
        """Return each bench's state in a lesson; where it did several practicals, the newest that it began.

        Raises StoreError.
        """
        found: dict[str, State] = {}
        for which in book.practicals(lesson.lesson):
            now = board.benches.get(which.bench)
            at_it = now is not None and (now.journal, now.began) == (which.journal, which.began)
            state = now.state if now is not None and at_it else practical_state(store, which)
            if state.repeats or which.bench not in found:
                found[which.bench] = state
        return found


def lesson_json(lesson: Lesson | None) -> Json | None:
    """Return a lesson as pages get it."""
    if lesson is None:
        return None
    return {"lesson": lesson.lesson, "label": lesson.label, "began": lesson.began, "ended": lesson.ended}
