"""Predicts what a plan promises, for pages on which somebody chooses: one at a time, the newest question first."""

import asyncio
import json
from collections import OrderedDict
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from typing import Any, Final

from station.bench.calculator import CalculationFailed, answered
from station.practical.plan import Plan

Json = dict[str, Any]

MOST_WAITING: Final = 4
MOST_KEPT: Final = 16


class Superseded(Exception):  # noqa: N818
    """The same page asked for something newer, or too many pages ask: there is no answer to this."""


@dataclass
class _Question:
    asker: str
    key: str
    content: Json
    answer: asyncio.Future[Json] = field(default_factory=lambda: asyncio.get_running_loop().create_future())


class Predictor:
    """Answers in a child process, with a turn of its own: no result of readings waits for a prediction, and
    `after` lets those of this bench go first.

    The same plan always gives the same answer, so that the last few are kept.
    """

    def __init__(self, after: Callable[[], Awaitable[None]]) -> None:
        self._after = after
        self._waiting: list[_Question] = []
        self._kept: OrderedDict[str, Json] = OrderedDict()
        self._task: asyncio.Task[None] | None = None
        self._closed = False

    async def predict(self, plan: Plan, asker: str, *, compare: bool) -> Json:
        """Return the prediction. A newer question of the same asker ends an older one that waits.

        Raises Superseded and CalculationFailed.
        """
        content = {"plan": plan.model_dump(mode="json"), "compare": compare}
        key = json.dumps(content, sort_keys=True)
        if key in self._kept:
            self._kept.move_to_end(key)
            return self._kept[key]
        if self._closed:
            raise Superseded
        question = _Question(asker, key, content)
        for older in [each for each in self._waiting if each.asker == asker]:
            self._drop(older)
        if len(self._waiting) >= MOST_WAITING:
            self._drop(self._waiting[0])
        self._waiting.append(question)
        if self._task is None or self._task.done():
            self._task = asyncio.get_running_loop().create_task(self._work())
        return await question.answer

    async def close(self) -> None:
        """Stop predicting: who waits gets Superseded, so that no reply holds the server up."""
        self._closed = True
        for each in list(self._waiting):
            self._drop(each)
        if self._task is not None:
            self._task.cancel()
            await asyncio.wait([self._task])

    def _drop(self, question: _Question) -> None:
        self._waiting.remove(question)
        if not question.answer.done():
            question.answer.set_exception(Superseded)

    async def _work(self) -> None:
        while self._waiting:
            await self._after()
            if not self._waiting:
                return
            question = self._waiting.pop()
            try:
                answer = await answered("station.bench.predict_child", question.content, "prediction")
            except CalculationFailed as error:
                _give(question.answer, error)
            except BaseException:
                _give(question.answer, Superseded())
                raise
            else:
                self._keep(question.key, answer)
                if not question.answer.done():
                    question.answer.set_result(answer)

    def _keep(self, key: str, answer: Json) -> None:
        self._kept[key] = answer
        if len(self._kept) > MOST_KEPT:
            self._kept.popitem(last=False)


def _give(answer: asyncio.Future[Json], error: Exception) -> None:
    if not answer.done():
        answer.set_exception(error)
