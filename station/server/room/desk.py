"""The room as its screens see it: board, lessons and class result, and the hub that is told of every change."""

import asyncio
import contextlib
import time
from collections.abc import Callable, Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Literal

from station.bench.calculation.worker import CalculationFailed
from station.bench.clock import boot_id, is_known_right
from station.practical import events as e
from station.practical.state import State
from station.room.board import Board, Heard
from station.room.class_result.kept import ClassResults, Told, told_of
from station.room.collector import Collector
from station.room.contract import ClassResult, Tile
from station.room.lesson_book import (
    SCHOOL_YEAR_DAYS,
    LessonBook,
    Practical,
    newest_practical,
    practical_events,
    practical_state,
    state_before,
)
from station.room.places import moved, seated
from station.room.store.database import StoreError
from station.room.store.store import Lesson, OrderKept, RoomStore
from station.server.room.contract import ClassSeen, OrderLeft, PracticeCup, RoomAbout, RoomBoard
from station.server.streaming import Hub, unnumbered

# The lesson under way, as the desk holds it: who takes part, what was ordered, and whether results may be seen.


MOST_ORDERS = 60
_LEFT: tuple[Literal["pending", "refused", "taken"], ...] = ("pending", "refused", "taken")


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

    def orders_left(self) -> list[OrderLeft]:
        """Return what benches have not done, or would not do, and what came of the newest order; the newest first."""
        newest = max((each.order for each in self.orders), default=0)
        left: list[OrderLeft] = [
            {"order": each.order, "bench": each.bench, "act": str(each.act.get("act")), "state": state, "why": each.why}
            for each in self.orders
            for state in _LEFT
            if each.state == state and (state != "taken" or each.order == newest)
        ]
        return left[-MOST_ORDERS:][::-1]

    def standing(self, states: Mapping[str, State]) -> ClassSeen:
        """Return whether the class result may be seen, and which benches it waits for.

        It is seen once every bench that has begun shows its own: until then it would tell those that do not.
        """
        begun = {bench: states[bench] for bench in self.benches if bench in states and states[bench].repeats}
        begun = {bench: state for bench, state in begun.items() if not state.practice}
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


Listener = Callable[[str, e.Stamped], None]

TICK_S = 0.1
"""How long a change may wait for others to travel with, in s."""
ALL_S = 1.0
"""How often every tile is looked at: waiting and silence come without a message, in s."""
LIVE_S = 5.0
"""So long a temperature that came by the lossy way is newer than any batch of events, in s."""
FORGETS_EVERY_S = 3600.0
CLASS_S = 3.0
"""The class result is computed at most so often, in s."""


class RoomDesk:
    """Make it before the collector runs, `await begin()`, then `await run()` until it is cancelled."""

    def __init__(
        self,
        store: RoomStore,
        collector: Collector,
        about: RoomAbout | None = None,
        practising: Callable[[], Iterable[State]] = lambda: (),
        forget_after_days: int = SCHOOL_YEAR_DAYS,
    ) -> None:
        self.forget_after_days = forget_after_days
        self.store, self.collector, self.about = store, collector, about or {}
        self.practising = practising
        self.board, self.hub, self.results = Board(boot_id()), Hub(), ClassResults()
        self.book = LessonBook(store)
        self.lesson = LessonNow()
        self.class_answer: ClassResult | None = None
        self.class_version = 0
        self._began_s = time.monotonic()
        self._seating: asyncio.Task[None] | None = None
        self._events_heard: dict[str, tuple[float | None, float]] = {}
        self._touched: set[str] = set()
        self._told_of: dict[str, Told] = {}
        self._sent: dict[str, Tile] = {}
        self._sent_s: dict[str, float] = {}
        self._sent_around: tuple[object, ...] = ()
        self._places: dict[str, int] = {}
        self._fault: str | None = None
        self._all_s = float("-inf")
        self._chosen: asyncio.Queue[tuple[Practical, e.Stamped] | None] = asyncio.Queue()
        self._class_due = asyncio.Event()
        self._computing: dict[int, asyncio.Task[None]] = {}
        self._last: dict[int, ClassResult] = {}
        self._listeners: list[Listener] = []
        collector.listen(self._happened)

    async def begin(self) -> None:
        """Take in what the store holds. Raises StoreError."""
        await asyncio.to_thread(self._load)

    async def run(self) -> None:
        """Tell the screens, until cancelled."""
        async with asyncio.TaskGroup() as tasks:
            tasks.create_task(self._tell())
            tasks.create_task(self._keep_lesson())
            tasks.create_task(self._keep_class())
            tasks.create_task(self._forget())

    async def _forget(self) -> None:
        """Forget names of classes in time; while nobody knows what day it is, nothing."""
        while True:
            with contextlib.suppress(StoreError):  # the board tells of it; later again
                await asyncio.to_thread(self.book.forget, self.forget_after_days, known_right=is_known_right())
            await asyncio.sleep(FORGETS_EVERY_S)

    def listen(self, listener: Listener) -> None:
        """Call `listener` with each bench's events after they are folded in."""
        self._listeners.append(listener)

    def whole(self) -> RoomBoard:
        """Return all that the board's page shows."""
        tiles = self.tiles()
        return {
            "lesson": self.lesson.lesson,
            "order": list(tiles),
            "tiles": tiles,
            "needs": list(self.board.needing(tiles)),
            "practice": self._practice(),
            "fault": self.collector.fault,
            "class": {"version": self.class_version, **self.class_standing()},
            "orders": self.lesson.orders_left(),
            "about": self.about,
        }

    def tiles(self) -> dict[str, Tile]:
        """Return the tiles of the benches that are in this lesson or were heard since the room began."""
        now_s = time.monotonic()
        here = self.collector.here
        self.board.names.update({bench: here[bench].name for bench in here})
        heard = {bench: self._heard(bench, now_s) for bench in self._present()}
        troubles = self.collector.troubles
        return self.board.tiles(now_s, heard, troubles) if heard or troubles else {}

    async def move(self, bench: str, place: int) -> None:
        """Give a bench this place, and who has it the bench's own. Raises StoreError."""
        self.board.places.update(seated(self.board.places, [bench]))  # one that was not heard since the start has none
        changed = moved(self.board.places, bench, place)
        await asyncio.to_thread(self.store.keep_places, changed)
        self.board.places.update(changed)
        self._places.update(changed)
        self._send_whole()

    def _practice(self) -> list[PracticeCup]:
        return [
            {
                "cup": number,
                "state": state.step,
                "repeat": state.repeat_of_planned,
                "repeats_planned": state.plan.cups,
                "portion": state.poured,
                "portions_planned": state.plan.count,
            }
            for number, state in enumerate(self.practising(), 1)
        ]

    def name_of(self, bench: str) -> str:
        """Return what a bench is called."""
        now = self.board.benches.get(bench)
        return (now.state.name if now else None) or self.board.names.get(bench) or bench

    def class_standing(self) -> ClassSeen:
        """Return whether the present lesson's class result may be seen, and which benches that waits for."""
        return self.lesson.standing({bench: now.state for bench, now in self.board.benches.items()})

    def class_changed(self) -> None:
        """What is said beside the class result is another: have pages ask again."""
        self.class_version += 1
        self._send_whole()

    async def refreshed(self) -> None:
        """Look again at lesson and orders now. Raises StoreError."""
        self.lesson = await asyncio.to_thread(LessonNow.read, self.store, self.book)
        self._class_due.set()
        self._send_whole()

    def _load(self) -> None:
        self._places = self.store.places()
        self.board.places.update(self._places)
        for kept in self.store.benches():
            if kept.name:
                self.board.names[kept.bench] = kept.name
            newest = newest_practical(self.store, kept.bench, kept.journal)
            if newest is None:
                continue
            self.board.take(kept.bench, kept.journal, ())
            self.board.benches[kept.bench].state = state_before(self.store, newest)
            self.board.take(kept.bench, kept.journal, practical_events(self.store, newest))
            self._assign_if_missing(newest)
        self._told_of = {bench: told_of(now.state) for bench, now in self.board.benches.items()}
        self.lesson = LessonNow.read(self.store, self.book)

    def _assign_if_missing(self, which: Practical) -> None:
        """Put a practical into its lesson that was kept right before the room stopped."""
        if not any(which in self.book.practicals(each.lesson) for each in self.store.lessons()):
            chosen = next(iter(practical_events(self.store, which)), None)
            if chosen is not None:
                self.book.assign(which, chosen)

    def _happened(self, bench: str, journal: str, stamped: e.Stamped) -> None:
        self.board.take(bench, journal, (stamped,), time.monotonic())
        temperature_c = self._events_heard.get(bench, (None, 0.0))[0]
        if isinstance(stamped.event, e.SampleTaken):
            temperature_c = stamped.event.temperature_c
        self._events_heard[bench] = (temperature_c, time.monotonic())
        self._touched.add(bench)
        told, before = told_of(self.board.benches[bench].state), self._told_of.get(bench)
        self._told_of[bench] = told
        if isinstance(stamped.event, e.PlanChosen):
            self._chosen.put_nowait((Practical(bench, journal, stamped.seq), stamped))
        elif told != before or isinstance(stamped.event, e.OrderTaken):  # orders stand in the store, not in the state
            self._chosen.put_nowait(None)
        for listener in self._listeners:
            listener(bench, stamped)

    def _present(self) -> set[str]:
        """Return who takes part or was heard. What the broker has kept of who was here once says nothing of now."""
        return {*self.lesson.benches, *self.collector.latest, *self._events_heard}

    def _heard(self, bench: str, now_s: float) -> Heard:
        temperature_c, at_s = self._events_heard.get(bench, (None, self._began_s))
        latest = self.collector.latest.get(bench)
        if latest is not None and (now_s - latest.heard < LIVE_S or latest.heard >= at_s):
            temperature_c, at_s = latest.temperature_c, max(at_s, latest.heard)
        return Heard(temperature_c, max(0.0, now_s - at_s))

    async def _tell(self) -> None:
        while True:
            await asyncio.sleep(TICK_S)
            self._flush(time.monotonic())

    def _flush(self, now_s: float) -> None:
        """Tell what changed: benches that were heard, and each second what time alone changes."""
        heard = {bench for bench, latest in self.collector.latest.items() if now_s - latest.heard <= 2 * TICK_S}
        everything = now_s - self._all_s >= ALL_S
        if not (everything or heard or self._touched):
            return
        self._touched.clear()
        if everything:
            self._all_s = now_s
        if self.collector.fault != self._fault:
            self._fault = self.collector.fault
            self._send_whole()
            return
        tiles = self.tiles()
        order, needs, practice = list(tiles), list(self.board.needing(tiles)), self._practice()
        fresh = {
            bench: tile
            for bench, tile in tiles.items()
            if _differs(tile, self._sent.get(bench), now_s - self._sent_s.get(bench, now_s))
        }
        if fresh or (order, needs, practice) != self._sent_around:
            self._sent = {bench: self._sent[bench] if bench not in fresh else fresh[bench] for bench in tiles}
            self._sent_s.update(dict.fromkeys(fresh, now_s))
            self._sent_around = (order, needs, practice)
            self.hub.send(unnumbered("tiles", {"order": order, "tiles": fresh, "needs": needs, "practice": practice}))
        self._keep_new_places()

    def _keep_new_places(self) -> None:
        """Have the places kept that benches were given when they were first heard."""
        new = {bench: at for bench, at in self.board.places.items() if self._places.get(bench) != at}
        if new:
            self._places.update(new)
            self._seating = asyncio.create_task(self._keep_places(new))

    async def _keep_places(self, new: Mapping[str, int]) -> None:
        try:
            await asyncio.to_thread(self.store.keep_places, new)
        except StoreError:  # the collector's fault says it; next time then
            for bench in new:
                self._places.pop(bench, None)

    def _send_whole(self) -> None:
        whole = self.whole()
        self._sent, now_s = whole["tiles"], time.monotonic()
        self._sent_s = dict.fromkeys(self._sent, now_s)
        self._sent_around = (whole["order"], whole["needs"], whole["practice"])
        self.hub.send(unnumbered("room", whole))

    async def _keep_lesson(self) -> None:
        """Put each new practical into its lesson, one after the other."""
        while True:
            due = [await self._chosen.get()]
            while not self._chosen.empty():
                due.append(self._chosen.get_nowait())
            with contextlib.suppress(StoreError):  # the collector's fault says it
                await asyncio.to_thread(self._assign, [each for each in due if each is not None])
                await self.refreshed()

    def _assign(self, chosen: Iterable[tuple[Practical, e.Stamped]]) -> None:
        for which, stamped in chosen:
            self.store.dismiss(which.bench)  # what it would not do was for the practical before
            self.book.assign(which, stamped)

    async def _keep_class(self) -> None:
        """Compute the present lesson's class result whenever something ended."""
        while True:
            await self._class_due.wait()
            self._class_due.clear()
            lesson = self.lesson.lesson
            if lesson is not None:
                with contextlib.suppress(CalculationFailed, StoreError):
                    answer = await self.class_of(lesson)
                    if answer is not self.class_answer:
                        self.class_answer = self._last[lesson.lesson] = answer
                        self.class_changed()
            await asyncio.sleep(CLASS_S)

    async def class_of(self, lesson: Lesson) -> ClassResult:
        """Return the class result of a lesson, whoever may see it. Raises CalculationFailed, StoreError."""
        states = await self.states_of(lesson)
        return await self.results.of(states, self.names_of(states))

    async def class_at_hand(self, lesson: Lesson) -> tuple[ClassResult | None, bool]:
        """Return the same at once, or the last there was, and whether a newer one is being computed.

        `class_version` tells when that is there. Raises StoreError.
        """
        states = await self.states_of(lesson)
        known = await self.results.known(states, self.names_of(states))
        if known is not None:
            self._last[lesson.lesson] = known
            return known, False
        if lesson.lesson not in self._computing:
            self._computing[lesson.lesson] = asyncio.create_task(self._compute(lesson))
        return self._last.get(lesson.lesson), True

    async def states_of(self, lesson: Lesson) -> dict[str, State]:
        """Return each bench's state in a lesson. Raises StoreError."""
        return await asyncio.to_thread(self.lesson.states, lesson, self.store, self.book, self.board)

    def names_of(self, benches: Iterable[str]) -> dict[str, str]:
        """Return what benches are called."""
        return {bench: self.name_of(bench) for bench in benches}

    async def _compute(self, lesson: Lesson) -> None:
        try:
            with contextlib.suppress(CalculationFailed, StoreError):
                await self.class_of(lesson)
        finally:
            del self._computing[lesson.lesson]
        self.class_changed()


SAME_WAIT_S = 0.3
"""A wait that the page has counted on to within so many bench seconds is told again by nobody."""
SAME_SPEED = 0.02


def _differs(tile: Tile, sent: Tile | None, since_s: float) -> bool:
    """Whether a tile is worth telling: ages and waits go on by themselves on the page."""
    if sent is None:
        return True
    counted_s = sent["waits_s"] + since_s * sent["speed"]
    if abs(tile["waits_s"] - counted_s) > SAME_WAIT_S or abs(tile["speed"] - sent["speed"]) > SAME_SPEED:
        return True
    tile = {**tile, "waits_s": sent["waits_s"], "speed": sent["speed"]}
    if _told(tile) == _told(sent):
        tile = {**tile, "reasons": sent["reasons"]}
    if tile["age_s"] is None or sent["age_s"] is None or tile["age_s"] < sent["age_s"]:
        return tile != sent
    unheard: Tile = {**tile, "age_s": sent["age_s"]}
    return unheard != sent


def _told(tile: Tile) -> list[tuple[str, str | None, int | None]]:
    """Return the reasons without their seconds, which the page counts on."""
    return [(each["code"], each.get("text"), each.get("count")) for each in tile["reasons"]]
