"""Keeps class results at hand: computed in a child process, and of no bench twice."""

import asyncio
import hashlib
import json
from collections import OrderedDict
from collections.abc import Mapping
from typing import Any

from station.bench.calculator import CalculationFailed, answered
from station.practical.state import State
from station.room.class_facts import facts_of, has_ended, question_of
from station.room.places import natural

Json = dict[str, Any]

AT_ONCE = 5
"""So many benches are asked about in one child, so that no child takes long."""
MOST_KEPT = 200
_CHILD = "station.room.class_calculate"


class ClassResults:
    """Class results of whatever benches are asked about; one is computed at a time."""

    def __init__(self) -> None:
        self._benches: OrderedDict[str, Json] = OrderedDict()
        self._classes: OrderedDict[str, Json] = OrderedDict()
        self._one = asyncio.Lock()

    async def known(self, states: Mapping[str, State], names: Mapping[str, str]) -> Json | None:
        """Return the class result of these benches' states if it was computed before."""
        asked = await asyncio.to_thread(_asked, states, names)
        return self._classes.get(_digest_of(asked))

    async def of(self, states: Mapping[str, State], names: Mapping[str, str]) -> Json:
        """Return the class result of these benches' states. Raises CalculationFailed."""
        async with self._one:
            asked = await asyncio.to_thread(_asked, states, names)
            whole = _digest_of(asked)
            if whole not in self._classes:
                await self._compute(asked)
                answer = await answered(_CHILD, {"benches": {each: self._known(asked[each]) for each in asked}})
                _keep(self._classes, whole, _field(answer, "class"))
            self._classes.move_to_end(whole)
            return self._classes[whole]

    async def _compute(self, asked: Mapping[str, Json]) -> None:
        new = list(
            {each["digest"]: bench for bench, each in asked.items() if each["digest"] not in self._benches}.values()
        )
        for first in range(0, len(new), AT_ONCE):
            some = {bench: asked[bench] for bench in new[first : first + AT_ONCE]}
            answer = await answered(_CHILD, {"benches": some})
            for bench, result in _field(answer, "benches").items():
                _keep(self._benches, some[bench]["digest"], result)

    def _known(self, each: Json) -> Json:
        result = self._benches[each["digest"]]
        self._benches.move_to_end(each["digest"])
        return {"name": each["name"], "facts": each["facts"], "result": result}


def _asked(states: Mapping[str, State], names: Mapping[str, str]) -> dict[str, Json]:
    """Return what the child is asked of each bench that has ended a repeat, with a digest of its question."""
    asked = {}
    for bench in sorted(states, key=natural):
        state = states[bench]
        if has_ended(state):
            question = question_of(state)
            asked[bench] = {
                "name": names.get(bench, bench),
                "facts": facts_of(state),
                "question": question,
                "digest": _digest(question),
            }
    return asked


def _digest_of(asked: Mapping[str, Json]) -> str:
    return _digest({bench: [each["digest"], each["name"], each["facts"]] for bench, each in asked.items()})


def _digest(values: Any) -> str:
    return hashlib.sha256(json.dumps(values, sort_keys=True, ensure_ascii=False).encode()).hexdigest()


def _field(answer: Json, name: str) -> Json:
    found = answer.get(name)
    if not isinstance(found, dict):
        raise CalculationFailed("no answer that can be read")
    return found


def _keep(known: OrderedDict[str, Json], key: str, value: Json) -> None:
    known[key] = value
    while len(known) > MOST_KEPT:
        known.popitem(last=False)
