"""What the teacher tells benches and lessons, carried to collector and store."""

import asyncio
import json
from collections import defaultdict
from collections.abc import Mapping, Sequence
from typing import Any

from station.room.lesson_book import LessonBook
from station.room.orders import OrderError, checked_order
from station.server.room_desk import RoomDesk
from station.server.room_lesson import lesson_json

Json = dict[str, Any]


class Orders:
    """Gives orders; everything is kept before it is answered. Methods may raise StoreError."""

    def __init__(self, desk: RoomDesk) -> None:
        self._desk = desk

    async def give(self, benches: Sequence[str], act: Mapping[str, Any]) -> int:
        """Give an order to benches of this room; return its number. Raises OrderError."""
        known = set(self._desk.board.benches) | set(self._desk.tiles())
        strange = [bench for bench in benches if bench not in known]
        if strange:
            raise OrderError(f"there is no bench {strange[0][:40]!r}")
        values = dict(act)
        if values.get("act") == "set_aside":
            now = self._desk.board.benches[benches[0]]
            values["practical"] = [now.journal, now.began]  # not a repeat of the next class
        number = await self._desk.collector.order(list(dict.fromkeys(benches)), values)
        await self._desk.refreshed()
        return number

    async def withdraw(self, benches: Sequence[str]) -> None:
        """Take back what these benches have not done yet."""
        await self._desk.collector.withdraw(list(dict.fromkeys(benches)))
        await self._desk.refreshed()

    async def begin_lesson(
        self, label: str, plan: Json | None, plan_toml: str | None, *, confirmed: bool = False
    ) -> int:
        """Begin a lesson and return its number: a new practical on all benches. Raises OrderError."""
        benches = list(self._desk.tiles())
        given = plan is not None or plan_toml is not None
        if given:
            act = {"act": "choose_plan", "plan": plan, "plan_toml": plan_toml, "confirmed": confirmed}
            orders = [(benches, checked_order(act))]
        else:
            orders = self._present_plans(benches)
        lesson = await asyncio.to_thread(self._desk.book.begin, label)
        for some, act in orders:
            if some:
                await self._desk.collector.order(some, act)
        await self._desk.refreshed()
        return lesson

    async def end_lesson(self) -> None:
        """End the lesson under way."""
        await asyncio.to_thread(self._desk.store.end_lesson)
        await self._desk.refreshed()

    async def lessons(self) -> list[Json]:
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
        return [(some, checked_order({**again, "plan": json.loads(text)})) for text, some in plans.items()]


def _lessons(desk: RoomDesk) -> list[Json]:
    book: LessonBook = desk.book
    return [
        {
            **(lesson_json(lesson) or {}),
            "benches": len({each.bench for each in book.practicals(lesson.lesson)}),
        }
        for lesson in desk.store.lessons()
    ]
