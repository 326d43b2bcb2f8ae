"""Predicts what a plan promises, for pages on which somebody chooses: one at a time, staff's questions first."""

import asyncio
import json
from collections import OrderedDict
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any, Final, cast

from station.bench.calculation.worker import CalculationFailed, answered
from station.practical.kinds.answers import Promise
from station.practical.plan import Plan

Json = dict[str, Any]

MOST_WAITING: Final = 4
"""Questions of one address."""
MOST_ADDRESSES: Final = 24
"""Addresses with questions that wait: with one each the last is answered within a minute or so."""
MOST_KEPT: Final = 16
STAFF_FIRST: Final = "staff"
"""Who asks where it is staff: no address is called that."""


class Superseded(Exception):  # noqa: N818
    """The same page asked for something newer, or too many ask: there is no answer to this."""


@dataclass
class _Question:
    asker: str
    key: str
    content: Json
    answer: asyncio.Future[Promise] = field(default_factory=lambda: asyncio.get_running_loop().create_future())


class Predictor:
    """Has plans predicted by a worker of their own: no result of readings waits for a prediction, and `after` lets
    those of this bench go first.

    Staff come first, then one address after the other, each with its newest question: who asks without end waits for
    himself. The same plan always gives the same answer, so that the last few are kept.
    """

    def __init__(self, after: Callable[[], Awaitable[None]]) -> None:
        self._after = after
        self._waiting: dict[str, list[_Question]] = {}  # by address, whose turn is next first
        self._kept: OrderedDict[str, Promise] = OrderedDict()
        self._task: asyncio.Task[None] | None = None
        self._closed = False

    async def predict(self, plan: Plan, asker: str, address: str = "", *, compare: bool) -> Promise:
        """Return the prediction. A newer question of the same asker at the same address ends an older one that waits.

        `address` is STAFF_FIRST where staff ask. Raises Superseded and CalculationFailed.
        """
        content = {"plan": plan.model_dump(mode="json"), "compare": compare}
        key = json.dumps(content, sort_keys=True)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]
        if self._closed or (len(self._waiting) >= MOST_ADDRESSES and address not in (STAFF_FIRST, *self._waiting)):
            raise Superseded
        question = _Question(asker, key, content)
        own = self._waiting.setdefault(address, [])
        for older in [each for each in own if each.asker == asker] or own[: max(0, len(own) + 1 - MOST_WAITING)]:
            own.remove(older)
            _give(older.answer, Superseded())
        own.append(question)
        if self._task is None or self._task.done():
            self._task = asyncio.get_running_loop().create_task(self._work())
        return await question.answer

    async def close(self) -> None:
        """Stop predicting: who waits gets Superseded, so that no reply holds the server up."""
        self._closed = True
        for each in [question for questions in self._waiting.values() for question in questions]:
            _give(each.answer, Superseded())
        self._waiting.clear()
        if self._task is not None:
            self._task.cancel()
            await asyncio.wait([self._task])

    def _next(self) -> _Question:
        """Take the question whose turn it is; its address comes again after all others."""
        address = STAFF_FIRST if STAFF_FIRST in self._waiting else next(iter(self._waiting))
        questions = self._waiting.pop(address)
        question = questions.pop()
        if questions:
            self._waiting[address] = questions
        return question

    async def _work(self) -> None:
        while self._waiting:
            await self._after()
            if not self._waiting:
                return
            question = self._next()
            try:
                answer = cast(Promise, await answered("prediction", question.content))
            except CalculationFailed as error:
                _give(question.answer, error)
            except BaseException:
                _give(question.answer, Superseded())
                raise
            else:
                self._keep(question.key, answer)
                if not question.answer.done():
                    question.answer.set_result(answer)

    def _keep(self, key: str, answer: Promise) -> None:
        self._kept[key] = answer
        if len(self._kept) > MOST_KEPT:
            self._kept.popitem(last=False)


def _give(answer: asyncio.Future[Promise], error: Exception) -> None:
    if not answer.done():
        answer.set_exception(error)
