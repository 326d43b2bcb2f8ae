"""What the teacher tells benches and lessons, carried to collector and store."""

import asyncio
import json
from collections import Counter, defaultdict
from collections.abc import Mapping, Sequence
from typing import Any

from station.practical.kinds import plan_from, read_plan
from station.room.lesson_book import LessonBook
from station.room.orders import OF_A_REPEAT, OrderError
from station.server.room.contract import LessonListed
from station.server.room.desk import RoomDesk
from station.words import say

Json = dict[str, Any]

MOST_PENDING = 100
"""Orders that one bench has not done yet: all of them travel to it in one message."""


class Orders:
    """Gives orders; everything is kept before it is answered. Methods may raise StoreError."""

    def __init__(self, desk: RoomDesk) -> None:
        self._desk = desk

    async def give(self, benches: Sequence[str], act: Mapping[str, Any]) -> int:
        """Give an order to benches of this room; return its number. Raises OrderError."""
        self._are_known(benches)
        values = dict(act)
        if values.get("act") in OF_A_REPEAT:
            now = self._desk.board.benches.get(benches[0])
            if now is None:
                raise OrderError(say("order-nothing-known", bench=benches[0]))
            values["practical"] = [now.journal, now.began]  # not a repeat of the next class
        pending = Counter(each.bench for each in self._desk.lesson.orders if each.state == "pending")
        if any(pending[bench] >= MOST_PENDING for bench in benches):
            raise OrderError(say("order-too-many", count=MOST_PENDING))
        number = await self._desk.collector.order(list(dict.fromkeys(benches)), values)
        lesson, mol_dm3 = self._desk.lesson.lesson, values.get("prepared_mol_dm3")
        if lesson is not None and mol_dm3 is not None:
            await asyncio.to_thread(self._desk.store.keep_made_up, lesson.lesson, float(mol_dm3))
        await self._desk.refreshed()
        return number

    async def withdraw(self, benches: Sequence[str]) -> None:
        """Take back what these benches have not done yet. Raises OrderError."""
        self._are_known(benches)
        await self._desk.collector.withdraw(list(dict.fromkeys(benches)))
        await self._desk.refreshed()

    async def dismiss(self, bench: str, order: int) -> None:
        """Speak no more of what this bench would not do."""
        await asyncio.to_thread(self._desk.store.dismiss, bench, order)
        await self._desk.refreshed()

    async def move(self, bench: str, place: int) -> None:
        """Give a bench a place on the board. Raises OrderError."""
        self._are_known([bench])
        await self._desk.move(bench, place)

    async def keep_made_up(self, mol_dm3: float) -> None:
        """Keep what this lesson's bottle was made up to. Raises OrderError without a lesson."""
        lesson = self._desk.lesson.lesson
        if lesson is None:
            raise OrderError(say("order-no-lesson"))
        await asyncio.to_thread(self._desk.store.keep_made_up, lesson.lesson, mol_dm3)
        self._desk.class_changed()

    async def begin_lesson(
        self, label: str, plan: Json | None, plan_toml: str | None, *, confirmed: bool = False
    ) -> int:
        """Begin a lesson and return its number: a new practical on all benches. Raises OrderError."""
        benches = list(self._desk.tiles())
        given = plan is not None or plan_toml is not None
        if given:
            act: Json = {"act": "choose_plan", "plan": plan, "plan_toml": plan_toml, "confirmed": confirmed}
            orders = [(benches, act)]
        else:
            orders = self._present_plans(benches)
        lesson = await self._desk.collector.begin_lesson(label, orders)
        prepared = _prepared(plan, plan_toml) if given else None
        if prepared is not None:
            await asyncio.to_thread(self._desk.store.keep_made_up, lesson, prepared)
        await self._desk.refreshed()
        return lesson

    def _are_known(self, benches: Sequence[str]) -> None:
        """Raise OrderError for what is no bench of this room."""
        known = {*self._desk.board.benches, *self._desk.tiles(), *(each.bench for each in self._desk.lesson.orders)}
        strange = [bench for bench in benches if bench not in known]
        if strange:
            raise OrderError(say("order-no-bench", bench_name=repr(strange[0][:40])))

    async def end_lesson(self) -> None:
        """End the lesson under way."""
        await asyncio.to_thread(self._desk.store.end_lesson)
        await self._desk.refreshed()

    async def lessons(self) -> list[LessonListed]:
        """Return every lesson, the newest first."""
        return await asyncio.to_thread(_lessons, self._desk)

    def _present_plans(self, benches: Sequence[str]) -> list[tuple[list[str], Json]]:
        """Return the order that has each bench begin anew with the plan it has, which staff have chosen already."""
        plans: dict[str, list[str]] = defaultdict(list)
        for bench in benches:
            now = self._desk.board.benches.get(bench)
            if now is not None and now.state.chosen:
                plans[now.state.plan.model_dump_json()].append(bench)
        again = {"act": "choose_plan", "confirmed": True}
        return [(some, {**again, "plan": json.loads(text)}) for text, some in plans.items()]


def _prepared(plan: Json | None, plan_toml: str | None) -> float | None:
    """Return what staff made up, as their plan says: benches are given it without that."""
    chosen = plan_from(plan) if plan is not None else read_plan(plan_toml or "")
    return next((each.prepared_mol_dm3 for each in chosen.ingredients if each.to_find), None)


def _lessons(desk: RoomDesk) -> list[LessonListed]:
    book: LessonBook = desk.book
    return [
        {
            "lesson": lesson.lesson,
            "label": lesson.label,
            "began": lesson.began,
            "ended": lesson.ended,
            "benches": len({each.bench for each in book.practicals(lesson.lesson)}),
        }
        for lesson in desk.store.lessons()
    ]
