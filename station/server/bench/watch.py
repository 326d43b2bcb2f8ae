"""Carries the bench to the screens: each event to the stream, the view after a change, the results when they are in."""

from collections.abc import Callable, Mapping, Sequence
from typing import Any, Generic, TypeVar

from station.analysis.settle.detector import Verdict
from station.bench.calculation.prediction import Predictor
from station.bench.calculation.results import Results
from station.bench.loop import Bench
from station.practical import events as e
from station.practical.contract import Still
from station.practical.kinds.answers import Result
from station.practical.plan import Plan
from station.practical.settling import newest_verdict
from station.practical.state import State
from station.practical.view import live, still, trace
from station.room.link.state import LinkState
from station.server.bench.contract import About, BenchState, BenchView, Link, Now
from station.server.bench.desk import KitDesk
from station.server.streaming import Hub, compact, happened, unnumbered
from station.words import messages_in

Source = TypeVar("Source")
Made = TypeVar("Made")


class _Kept(Generic[Source, Made]):
    """What is made of something that never changes, and is made anew only of something else."""

    def __init__(self, make: Callable[[Source], Made]) -> None:
        self._make = make
        self._last: tuple[Source, Made] | None = None

    def of(self, source: Source) -> Made:
        """Return what is made of this."""
        if self._last is None or self._last[0] is not source:
            self._last = source, self._make(source)
        return self._last[1]


class _Named(Still):
    repeats_id: str


_Part = tuple[str, dict[str, Any]]
"""Members of an object as JSON, and the messages in them."""


def _part(values: Mapping[str, object]) -> _Part:
    return compact(values)[1:-1], messages_in(values)


class Watch:
    """The bench as screens see it: view with results, and the hub that is told of every change."""

    def __init__(self, bench: Bench, about: About) -> None:
        self.bench, self.hub = bench, Hub()
        self.link: Callable[[], LinkState | None] = lambda: None
        self.desk: KitDesk | None = None
        self._repeats: tuple[Any, Any] = None, None
        self._repeats_id = self._told_id = ""
        self._about = about
        self._troubles = bench.fault, self._link_text()
        self.results = Results(self._calculated)
        self.calculator = self.results.calculator
        self.predictor = Predictor(self.calculator.finished)
        self.asks_early = True
        """Whether results are asked for before they may be seen, so that nobody waits for them then."""
        self._staff_plans: list[Plan] = []
        self._verdict: _Kept[State, Verdict | None] = _Kept(newest_verdict)
        self._still: _Kept[State, _Named] = _Kept(self._named)
        self._still_text: _Kept[State, _Part] = _Kept(
            lambda state: _part({**self._still.of(state), "trace": trace(state)})
        )
        self._short_text: _Kept[State, _Part] = _Kept(
            lambda state: _part({**_short(self._still.of(state)), "trace": trace(state)})
        )
        self._result_text: _Kept[Result | None, _Part] = _Kept(lambda result: _part({"result": result}))
        bench.listen(self._happened)

    def begin(self) -> None:
        """Ask for the results of what the journal already holds."""
        self._follow()

    def remember(self, plan: Plan) -> None:
        """Remember a plan as staff gave it: the journal keeps nothing of what they keep to themselves."""
        self._staff_plans = [plan, *self._staff_plans[:1]]

    def plan_of_staff(self) -> Plan:
        """Return the bench's plan as staff gave it, as far as this process knows: never for students."""
        plan = self.bench.state.plan
        return next((each for each in self._staff_plans if each.without_prepared() == plan), plan)

    def cup_plan_of_staff(self) -> Plan:
        """Return the same of the cup that is worked on, or comes next."""
        return self.plan_of_staff().of_cup(self.bench.state.cup)

    @property
    def language(self) -> str | None:
        """The language that the station is set to; None where it follows the browser."""
        language: str | None = self._about.get("language")
        return language

    @property
    def results_shown(self) -> bool:
        """Whether anybody may see the results yet; until then `view` holds none, and no endpoint asks elsewhere."""
        return self.bench.state.results_shown

    @property
    def result(self) -> Result | None:
        """The newest results, whether or not anybody may see them yet."""
        return self.results.newest

    def view(self) -> BenchView:
        """Return the object of `GET /api/state` without the trace."""
        return {**self._now(), **self._still.of(self.bench.state), "result": self._shown()}

    def _now(self) -> Now:
        """Return what is not in the state, and what changes with time."""
        bench, time_s = self.bench, self.bench.clock.time_s()
        return {
            "seq": bench.seq,
            "boot": bench.clock.boot,
            "time_s": round(time_s, 3),
            "speed": bench.clock.speed,
            "bench": {**self._about, "name": bench.state.name or self._about["name"]},
            "fault": bench.fault,
            "link": self._link(),
            **live(bench.state, time_s, self._verdict.of),
        }

    def _named(self, state: State) -> _Named:
        """Return what the state alone says, with a name for the repeats: another one whenever they are others."""
        shown = still(state)
        repeats = shown["repeats"], shown["mean"]
        if repeats != self._repeats:
            self._repeats, self._repeats_id = repeats, f"{self.bench.clock.boot[:8]}-{self.bench.seq}"
        return {**shown, "repeats_id": self._repeats_id}

    def _shown(self) -> Result | None:
        return self.result if self.results_shown else None

    def whole(self) -> BenchState:
        """Return the object of `GET /api/state`."""
        return {**self.view(), "trace": trace(self.bench.state)}

    def whole_text(self, known: str | None = None) -> str:
        """Return the same as JSON: of what many pages ask for again and again, only what is new is written anew.

        `known` is the `repeats_id` of the repeats that need not be told.
        """
        state = self.bench.state
        text = self._short_text if known == self._still.of(state)["repeats_id"] else self._still_text
        parts = _part(self._now()), text.of(state), self._result_text.of(self._shown())
        messages = {text: of for _, said in parts for text, of in said.items()}
        return f"{{{','.join(part for part, _ in parts)},{compact({'messages': messages})[1:-1]}}}"

    def view_message(self) -> bytes:
        """Return the message that replaces what a page knows."""
        return unnumbered("view", self.view())

    def _link_text(self) -> str | None:
        state = self.link()
        return None if state is None else state.text

    def _link(self) -> Link | None:
        state = self.link()
        return None if state is None else {"up": state.up, "text": state.text, "waiting": state.waiting}

    def _happened(self, stamped: Sequence[e.Stamped]) -> None:
        for each in stamped:
            self.hub.send(happened(each), each.seq)
        self._follow()
        troubles = self.bench.fault, self._link_text()
        fault_changed, self._troubles = troubles != self._troubles, troubles
        if all(isinstance(each.event, e.SampleTaken) for each in stamped) and not fault_changed:
            time_s = self.bench.clock.time_s()
            self.hub.send(
                unnumbered("live", {"time_s": round(time_s, 3), **live(self.bench.state, time_s, self._verdict.of)})
            )
        else:
            self._send_view()

    def _send_view(self) -> None:
        """Tell the view; whoever asked for it so is told the repeats only when they changed."""
        view = self.view()
        whole = unnumbered("view", view)
        short = whole if view["repeats_id"] != self._told_id else unnumbered("view", _short(view))
        self._told_id = view["repeats_id"]
        self.hub.send(whole, short=short)

    def _follow(self) -> None:
        if self.asks_early or self.results_shown:
            self.results.follow(self.bench.practical_seq, self.bench.seq, self.bench.state)

    def _calculated(self) -> None:
        self._send_view()


def _short(view: Mapping[str, object]) -> dict[str, object]:
    """Leave out what is known already to who knows the `repeats_id`."""
    return {name: value for name, value in view.items() if name not in ("repeats", "mean")}
