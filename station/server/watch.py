"""Carries the bench to the screens: each event to the stream, the view after a change, the results when they are in."""

from collections.abc import Callable, Sequence
from typing import Any

from station.bench.calculator import Calculator
from station.bench.loop import Bench
from station.bench.predictor import Predictor
from station.practical import events as e
from station.practical.dataset import question_for
from station.practical.plan import Plan
from station.practical.view import View, live, shown_result, trace
from station.room.link_state import LinkState
from station.server.hub import Hub
from station.server.kit_desk import KitDesk
from station.server.messages import happened, unnumbered

_CHANGES_RESULT = (
    e.ReadingSettled,
    e.PortionUndone,
    e.PortionVolumeCorrected,
    e.PortionUnsure,
    e.PortionSure,
    e.RepeatSetAside,
    e.RepeatRestored,
    e.SetAdopted,
    e.SetReturned,
)
_OTHER_DATA = (e.PlanChosen, e.SetAdopted, e.SetReturned)


class Watch:
    """The bench as screens see it: view with results, and the hub that is told of every change."""

    def __init__(self, bench: Bench, about: View) -> None:
        self.bench, self.hub = bench, Hub()
        self.result: dict[str, Any] | None = None
        self.link: Callable[[], LinkState | None] = lambda: None
        self.desk: KitDesk | None = None
        self._result_since = 0
        self._about = about
        self._troubles = bench.fault, self._link_text()
        self.calculator = Calculator(self._calculated)
        self.predictor = Predictor(self.calculator.finished)
        self._staff_plans: list[Plan] = []
        bench.listen(self._happened)

    def begin(self) -> None:
        """Ask for the results of what the journal already holds."""
        if any(repeat.readings for repeat in self.bench.state.worked_on):
            self._ask()

    def remember(self, plan: Plan) -> None:
        """Remember a plan as staff gave it: the journal keeps nothing of what they keep to themselves."""
        self._staff_plans = [plan, *self._staff_plans[:1]]

    def plan_of_staff(self) -> Plan:
        """Return the bench's plan as staff gave it, as far as this process knows: never for students."""
        plan = self.bench.state.plan
        return next((each for each in self._staff_plans if each.without_prepared() == plan), plan)

    @property
    def results_shown(self) -> bool:
        """Whether anybody may see the results yet; until then `view` holds none, and no endpoint asks elsewhere."""
        return self.bench.state.results_shown

    def view(self) -> View:
        """Return the object of `GET /api/state` without the trace."""
        bench = self.bench
        return {
            "seq": bench.seq,
            "boot": bench.clock.boot,
            "time_s": round(bench.clock.time_s(), 3),
            "speed": bench.clock.speed,
            "bench": {**self._about, "name": bench.state.name or self._about["name"]},
            "fault": bench.fault,
            "link": self._link(),
            **bench.view(),
            "result": self.result if self.results_shown else None,
        }

    def whole(self) -> View:
        """Return the object of `GET /api/state`."""
        return {**self.view(), "trace": trace(self.bench.state)}

    def view_message(self) -> bytes:
        """Return the message that replaces what a page knows."""
        return unnumbered("view", self.view())

    def _link_text(self) -> str | None:
        state = self.link()
        return None if state is None else state.text

    def _link(self) -> View | None:
        state = self.link()
        return None if state is None else {"up": state.up, "text": state.text, "waiting": state.waiting}

    def _happened(self, stamped: Sequence[e.Stamped]) -> None:
        for each in stamped:
            if isinstance(each.event, _OTHER_DATA):
                # Results of other readings, also those still being computed, are not of what is shown now.
                self.result, self._result_since = None, each.seq
            self.hub.send(happened(each), each.seq)
        if any(isinstance(each.event, _CHANGES_RESULT) for each in stamped):
            self._ask()
        troubles = self.bench.fault, self._link_text()
        fault_changed, self._troubles = troubles != self._troubles, troubles
        if all(isinstance(each.event, e.SampleTaken) for each in stamped) and not fault_changed:
            time_s = self.bench.clock.time_s()
            self.hub.send(unnumbered("live", {"time_s": round(time_s, 3), **live(self.bench.state, time_s)}))
        else:
            self.hub.send(self.view_message())

    def _ask(self) -> None:
        self.calculator.ask(self.bench.seq, question_for(self.bench.state))

    def _calculated(self, seq: int, answer: dict[str, Any]) -> None:
        if seq < self._result_since:
            return
        self.result = {"seq": seq, **shown_result(answer)}
        self.hub.send(self.view_message())
