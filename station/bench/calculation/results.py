"""Keeps the results up to date: one calculation at a time on this machine, the newest question wins."""

import asyncio
from collections.abc import Callable
from typing import Any, Generic, TypeVar, cast

from station.bench.calculation.worker import CalculationFailed, answered
from station.practical.dataset import Basis, basis_of, question_of
from station.practical.kinds.answers import Result
from station.practical.state import State
from station.practical.view import shown_result

Mark = TypeVar("Mark")


class Calculator(Generic[Mark]):
    """Has questions answered by the worker. `ask` replaces a question that still waits.

    `done(mark, results)` is called in the event loop with the mark that came with the question.
    """

    def __init__(self, done: Callable[[Mark, dict[str, Any]], None]) -> None:
        self._done = done
        self._waiting: tuple[Mark, dict[str, Any]] | None = None
        self._task: asyncio.Task[None] | None = None

    def ask(self, mark: Mark, question: dict[str, Any]) -> None:
        """Ask this."""
        self._waiting = (mark, question)
        if self._task is None or self._task.done():
            self._task = asyncio.get_running_loop().create_task(self._work())

    async def finished(self) -> None:
        """Wait until nothing is being calculated."""
        while self._task is not None and not self._task.done():
            await asyncio.wait([self._task])

    async def close(self) -> None:
        """Stop calculating."""
        self._waiting = None
        if self._task is not None:
            self._task.cancel()
            await asyncio.wait([self._task])

    async def _work(self) -> None:
        while self._waiting is not None:
            (mark, question), self._waiting = self._waiting, None
            try:
                answer = await calculate(question)
            except CalculationFailed as error:
                words = f"The calculation failed: {error}. The readings are kept."
                answer = {"repeats": [], "mean": {"straight_lines": None, "refused": {"straight_lines": words}}}
            self._done(mark, answer)


class Results:
    """The results of a bench that is followed: `newest` ones, asked for anew exactly when the question has changed.

    Those of other readings (another practical's, another group's) are gone at once. `told` is called in the event loop
    when there are new ones.
    """

    def __init__(self, told: Callable[[], None]) -> None:
        self.newest: Result | None = None
        self.calculator = Calculator(self._calculated)
        self._told = told
        self._of: tuple[object, ...] | None = None
        self._basis: Basis | None = None
        self._question: dict[str, Any] | None = None

    def follow(self, practical: object, seq: int, state: State) -> None:
        """Take in how the state of this practical is at this sequence number; where nothing changed it costs little."""
        of = (practical, state.adopted) if any(each.readings for each in state.worked_on) else None
        if of != self._of:
            self._of, self._basis, self._question, self.newest = of, None, None, None
        basis = basis_of(state)
        if of is None or basis == self._basis:
            return
        question, self._basis = question_of(basis), basis
        if question != self._question:
            self._question = question
            self.calculator.ask((self._of, seq), question)

    def _calculated(self, mark: tuple[tuple[object, ...] | None, int], answer: dict[str, Any]) -> None:
        of, seq = mark
        if of is self._of:  # else it comes too late: other readings are shown now
            self.newest = cast(Result, {"seq": seq, **shown_result(answer)})  # as its kind makes it
            self._told()


async def calculate(question: dict[str, Any]) -> dict[str, Any]:
    """Return the results for one question. Raises CalculationFailed."""
    answer = await answered("results", question)
    if not answer.keys() >= {"mean", "repeats"}:
        raise CalculationFailed("no answer that can be read")
    return answer
