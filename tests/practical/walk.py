"""Drives the pure procedure as the bench loop does, without a bench: for tests of the practical.

The procedure is pure: the same happenings lead to the same state. So a rest that another test has already waited
through, after the same happenings, is taken from there instead of being computed again.
"""

from typing import Any, get_args

from station.practical import events as e
from station.practical.acts import Act, ActName
from station.practical.fold import fold
from station.practical.kinds import plan_from
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.plan import Plan
from station.practical.procedure import advance
from station.practical.state import State, Step

PLAN = {
    "acid": {"name": "nitric acid", "volume_cm3": 20},
    "alkali": {"name": "potassium hydroxide", "concentration_mol_dm3": 0.5},
    "portions": {"volume_cm3": 3, "count": 4},
}

ACTS: tuple[str, ...] = get_args(ActName)


_RESTS: dict[tuple[str, ...], tuple[State, float, list[e.Stamped], list[e.Event]]] = {}


class Walk:
    """A state, and the time that goes on with each sample."""

    def __init__(self, **plan: Any) -> None:
        self.time_s = 0.0
        self.state = State()
        self.happened: list[e.Stamped] = []
        self._key = 0
        self._course: tuple[str, ...] = ()
        self.keep([e.PlanChosen(chosen(**plan).model_dump(mode="json"))])

    def step(self) -> Step:
        return self.state.step

    def keep(self, events: list[e.Event]) -> list[e.Event]:
        self._course += (f"{self.time_s} {events}",)
        for event in events:
            stamped = e.Stamped(len(self.happened) + 1, "boot", self.time_s, self.time_s, "", "none", event)
            self.happened.append(stamped)
            self.state = fold(self.state, stamped)
        return events

    def sample(self, temperature_c: float | None, bad: str | None = None) -> list[e.Event]:
        self.time_s += 1.0
        return self.keep(list(advance(self.state, e.SampleTaken(temperature_c, bad), self.time_s)))

    def act(self, name: str, **values: Any) -> list[e.Event]:
        self._key += 1
        act = Act.model_validate({"act": name, "key": f"key {self._key}", **values})
        return self.keep(list(advance(self.state, act, self.time_s)))

    def rest(self, temperature_c: float, at_most_s: int = 130) -> list[e.Event]:
        """Feed one steady temperature until the station says something about it."""
        rest = (*self._course, f"rest {temperature_c} {at_most_s}")
        if rest not in _RESTS:
            said = self._rested(temperature_c, at_most_s)
            _RESTS[rest] = (self.state, self.time_s, list(self.happened), said)
        self.state, self.time_s, happened, said = _RESTS[rest]
        self.happened, self._course = list(happened), rest
        return list(said)

    def _rested(self, temperature_c: float, at_most_s: int) -> list[e.Event]:
        for _ in range(at_most_s):
            said = [each for each in self.sample(temperature_c) if not isinstance(each, e.SampleTaken)]
            if said:
                return said
        return []

    def to_pour(self) -> None:
        self.act("begin")
        self.rest(20.0)

    def portion(self, temperature_c: float) -> list[e.Event]:
        self.act("portion_added", portion=self.state.poured + 1)
        return self.rest(temperature_c)

    def repeat(self) -> None:
        """From a prompt for portion 1 to the end of the repeat: the temperature rises, and after the last it falls."""
        last = self.state.plan.count - 1
        for number in range(last):
            self.portion(20.5 + 0.5 * number)
        self.portion(20.5 + 0.5 * last - 0.75)


def chosen(**changes: Any) -> Plan:
    return plan_from(changes if changes.get("kind", "portions") != "portions" else {**PLAN, **changes})


def portions_plan(**changes: Any) -> PortionsPlan:
    plan = chosen(**changes)
    assert isinstance(plan, PortionsPlan)
    return plan


def kinds(events: list[e.Event]) -> list[str]:
    return [event.kind for event in events]
