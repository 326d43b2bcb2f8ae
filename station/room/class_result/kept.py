"""Keeps class results at hand: computed by the worker, and of no bench twice."""

import asyncio
import hashlib
import json
from collections import OrderedDict
from collections.abc import Mapping
from typing import Any, TypeVar, cast

from station.bench.calculation.worker import CalculationFailed, answered
from station.practical.dataset import Basis, question_of
from station.practical.questions import QUESTIONS
from station.practical.state import Asked, Repeat, State
from station.room.contract import ClassResult
from station.room.places import natural
from station.words import Message, say

# From a bench's state to what the class result asks of it: its ended own repeats, and what its record says.


Json = dict[str, Any]
Kept = TypeVar("Kept")
Told = tuple[Basis, Json, str | None, bool, bool]

_NO_MATTER = ("title", "results")
"""What of a plan changes no result."""


def has_ended(state: State) -> bool:
    """Whether the bench has a repeat of its own that ended and counts; of a mere practice nothing does."""
    return not state.practice and any(repeat.status == "ended" for repeat in state.repeats)


def own_basis(state: State) -> Basis:
    """Return what the class result depends on: own ended repeats; readings taken over from elsewhere are not own."""
    return Basis.of(state, (repeat for repeat in state.repeats if repeat.status == "ended"))


def told_of(state: State) -> Told:
    """Return all of a bench's state that its lesson's whole depends on; while it stays alike nothing is told anew."""
    return own_basis(state), facts_of(state), state.name, bool(state.repeats), state.results_shown


def own_question(state: State) -> Json:
    """Return the question about them."""
    question = question_of(own_basis(state))
    return {**question, "plan": {name: each for name, each in question["plan"].items() if name not in _NO_MATTER}}


def facts_of(state: State) -> Json:
    """Return what is said of the bench beside its numbers."""
    return {
        "group": state.group,
        "aside": [{"repeat": each.repeat, "reason": each.reason or ""} for each in state.repeats if not each.counts],
        "happened": [*_answers(state), *_readings(state)],
        "open": [QUESTIONS[each.code].about(each.portion) for each in _unanswered(state)],
    }


def _unanswered(state: State) -> list[Asked]:
    """Return the questions about repeats that count to which nobody gave an answer."""
    counted = {repeat.repeat for repeat in state.repeats if repeat.counts}
    return [each for each in state.asked if each.answer is None and each.repeat in counted and each.code in QUESTIONS]


def _answers(state: State) -> list[Message]:
    counted = {repeat.repeat for repeat in state.repeats if repeat.status == "ended"}
    found = []
    for asked in state.asked:
        if asked.repeat not in counted or asked.code not in QUESTIONS:
            continue
        question = QUESTIONS[asked.code]
        labels = (each.label for each in question.answers if each.answer == asked.answer)
        label = next(labels, say("class-no-answer"))
        text = question.about(asked.portion)
        found.append(say("class-asked", repeat=asked.repeat, portion=asked.portion, question=text, answer=label))
    return found


def _readings(state: State) -> list[Message]:
    found = []
    for repeat in state.repeats:
        if repeat.status != "ended":
            continue
        early = 0 if state.plan.own_judgement else _unsettled(repeat)
        if early:
            found.append(say("class-not-settled", repeat=repeat.repeat, count=early))
        unsure = sum(each.unsure for each in repeat.portions)
        if unsure:
            found.append(say("class-in-doubt", repeat=repeat.repeat, count=unsure))
    return found


def _unsettled(repeat: Repeat) -> int:
    return sum(not each.settled for each in repeat.readings)


AT_ONCE = 5
"""So many benches are asked about at once, so that no answer takes long."""
MOST_KEPT = 200


class ClassResults:
    """Class results of whatever benches are asked about; one is computed at a time."""

    def __init__(self) -> None:
        self._benches: OrderedDict[str, Json] = OrderedDict()
        self._classes: OrderedDict[str, ClassResult] = OrderedDict()
        self._one = asyncio.Lock()

    async def known(self, states: Mapping[str, State], names: Mapping[str, str]) -> ClassResult | None:
        """Return the class result of these benches' states if it was computed before."""
        asked = await asyncio.to_thread(_asked, states, names)
        return self._classes.get(_digest_of(asked, taking_part(states)))

    async def of(self, states: Mapping[str, State], names: Mapping[str, str]) -> ClassResult:
        """Return the class result of these benches' states. Raises CalculationFailed."""
        async with self._one:
            asked = await asyncio.to_thread(_asked, states, names)
            whole = _digest_of(asked, part := taking_part(states))
            if whole not in self._classes:
                await self._compute(asked)
                known = {each: self._known(asked[each]) for each in asked}
                answer = await answered("class_result", {"benches": known, "taking_part": part})
                _keep(self._classes, whole, cast(ClassResult, _field(answer, "class")))
            self._classes.move_to_end(whole)
            return self._classes[whole]

    async def _compute(self, asked: Mapping[str, Json]) -> None:
        new = list(
            {each["digest"]: bench for bench, each in asked.items() if each["digest"] not in self._benches}.values()
        )
        for first in range(0, len(new), AT_ONCE):
            some = {bench: asked[bench] for bench in new[first : first + AT_ONCE]}
            answer = await answered("class_result", {"benches": some})
            for bench, result in _field(answer, "benches").items():
                _keep(self._benches, some[bench]["digest"], result)

    def _known(self, each: Json) -> Json:
        result = self._benches[each["digest"]]
        self._benches.move_to_end(each["digest"])
        return {"name": each["name"], "facts": each["facts"], "result": result}


def _asked(states: Mapping[str, State], names: Mapping[str, str]) -> dict[str, Json]:
    """Return what the worker is asked of each bench that has ended a repeat, with a digest of its question."""
    asked = {}
    for bench in sorted(states, key=natural):
        state = states[bench]
        if has_ended(state):
            question = own_question(state)
            asked[bench] = {
                "name": names.get(bench, bench),
                "facts": facts_of(state),
                "question": question,
                "digest": _digest(question),
            }
    return asked


def taking_part(states: Mapping[str, State]) -> int:
    """Return how many have begun, with or without a result; a mere practice is none."""
    return sum(bool(state.repeats) and not state.practice for state in states.values())


def _digest_of(asked: Mapping[str, Json], part: int) -> str:
    return _digest([part, {bench: [each["digest"], each["name"], each["facts"]] for bench, each in asked.items()}])


def _digest(values: Any) -> str:
    return hashlib.sha256(json.dumps(values, sort_keys=True, ensure_ascii=False).encode()).hexdigest()


def _field(answer: Json, name: str) -> Json:
    found = answer.get(name)
    if not isinstance(found, dict):
        raise CalculationFailed(say("answer-unreadable"))
    return found


def _keep(known: OrderedDict[str, Kept], key: str, value: Kept) -> None:
    known[key] = value
    while len(known) > MOST_KEPT:
        known.popitem(last=False)
