"""One practical out of the room's store: its events, and the state they lead to."""

from collections.abc import Iterator
from dataclasses import dataclass

from station.practical import events as e
from station.practical.fold import fold, fold_all
from station.practical.state import State
from station.room.store import RoomStore

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
