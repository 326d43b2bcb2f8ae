"""The loop: carries samples and acts to the procedure, its events to the journal, and what is kept to the screens.

One actor: a lock is held from asking the procedure until the events are committed and folded in, so that two
acts can never see the same state. The state changes only after the commit.
"""

import asyncio
import contextlib
from collections.abc import Callable, Sequence
from dataclasses import replace
from functools import reduce
from typing import Any

from pydantic import ValidationError

from station.bench import watchdog
from station.bench.clock import Clock
from station.bench.panel.panel import TICK_S, Panel
from station.bench.panel.signals import Signal
from station.bench.probes.probe import NoProbe, Probe, ProbeReading, answer_within_s
from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.checks.register import LASTING, Probes, fold_probes, in_use_events, looked_events
from station.practical.contract import View
from station.practical.fold import fold
from station.practical.plan import Plan
from station.practical.problems import problem_line
from station.practical.procedure import advance
from station.practical.prompts import instruction
from station.practical.staff import StaffAct, plan_events
from station.practical.state import State, Step
from station.practical.view import view
from station.record.journal import Journal, JournalError, read_events
from station.words import Message, plain, say

BEAT_S = 1.0
Listener = Callable[[Sequence[e.Stamped]], None]


class Bench:
    """A bench at work. Make it with `Bench.opened`, then `await run()` until it is cancelled."""

    def __init__(self, journal: Journal, clock: Clock, probe: Probe, panel: Panel, state: State) -> None:
        self.journal, self.clock, self.probe, self.panel = journal, clock, probe, panel
        self.state = state
        self.seq = journal.last_seq
        self.fault: Message | None = None
        self._silent = panel.silent
        self.practical_seq = 0
        """The number of the event with which the practical began."""
        self._keys: dict[str, int] = {}
        self._orders: dict[str, int] = {}
        self._lock = asyncio.Lock()
        self._changed = asyncio.Condition()
        self._readings: asyncio.Queue[ProbeReading] = asyncio.Queue()
        self._listeners: list[Listener] = []

    @classmethod
    def opened(cls, journal: Journal, clock: Clock, probe: Probe, panel: Panel) -> "Bench":
        """Return the bench as the journal left it: in the same portion of the same repeat."""
        bench = cls(journal, clock, probe, panel, State(probes=_register(journal)))
        for stamped in (*_lasting(journal), *current_practical(journal)):
            bench._take(stamped)
        return bench

    async def start(
        self,
        plan: Plan,
        started: e.StationStarted,
        *,
        anew: bool = False,
        salvaged: e.RecordSalvaged | None = None,
        practice: bool = False,
    ) -> None:
        """Put the start into the record; choose the plan unless a practical is under way with another.

        `practice` marks a practical with a virtual cup that a person pours into.
        """
        await self._keep((started,))
        same = self.state.chosen and self.state.plan == plan.without_prepared()
        under_way = self.state.chosen and self.state.step is not Step.DONE and bool(self.state.repeats)
        by_staff = self.state.plan_by is not None and self.state.step is not Step.DONE
        if anew or not (same or under_way or by_staff):
            kept = plan.without_prepared().model_dump(mode="json")
            chosen = e.PlanChosen(kept, set_up=True, practice=practice)
            await self._keep(plan_events(self.state, chosen))
        await self._keep(in_use_events(self.state.probes))
        if salvaged is not None:
            await self._keep((salvaged,))

    def listen(self, listener: Listener) -> None:
        """Call `listener` in the event loop with the events of each commit, after they are folded in.

        It is called with none when a sample is to be shown that could not be kept.
        """
        self._listeners.append(listener)

    def view(self) -> View:
        """Return the state as a screen shows it."""
        return view(self.state, self.clock.time_s())

    async def changed(self) -> None:
        """Wait for the next change that is not merely a sample."""
        async with self._changed:
            await self._changed.wait()

    async def do(self, values: dict[str, Any] | Act | StaffAct) -> int:
        """Do an act and return the sequence number of its event, once committed.

        The same key again returns the same number and adds nothing. Raises ActRefused when the act is
        impossible or not understood, JournalError when it could not be kept: then nothing happened.
        """
        act = _understood(values) if isinstance(values, dict) else values
        # A client that goes away must not leave an event committed and not folded in.
        return await asyncio.shield(asyncio.ensure_future(self._done(act)))

    async def _done(self, act: Act | StaffAct) -> int:
        async with self._lock:
            time_s = self.clock.time_s()
            events = advance(self.state, act, time_s)
            if events:
                await self._commit(events, time_s)
            return self.seq if act.key is None else self._keys.get(act.key, self.seq)

    async def take_order(self, act: Act | StaffAct | None, taken: e.OrderTaken, practical_seq: int | None) -> None:
        """Do what the room ordered, unless an order with this number or a later one of that room was taken before.

        What is done, or why nothing is, and that it came from the room are kept together. With `practical_seq` it is
        meant for the practical that began so. Raises JournalError when it could not be kept: then nothing happened.
        """
        await asyncio.shield(asyncio.ensure_future(self._take_order(act, taken, practical_seq)))

    async def _take_order(self, act: Act | StaffAct | None, taken: e.OrderTaken, practical_seq: int | None) -> None:
        async with self._lock:
            if taken.order <= self._orders.get(taken.room, 0):
                return
            time_s = self.clock.time_s()
            events: Sequence[e.Event] = ()
            try:
                if practical_seq not in (None, self.practical_seq):
                    raise ActRefused("other_practical", say("order-of-practical-over"))
                events = () if act is None else advance(self.state, act, time_s)
            except ActRefused as refusal:
                taken = replace(taken, refused=str(refusal))
            await self._commit((*events, taken), time_s)

    async def run(self) -> None:
        """Sample, tick the panel and carry, until cancelled; pins and probe are let go at the end."""
        loop = asyncio.get_running_loop()

        def deliver(reading: ProbeReading) -> None:
            with contextlib.suppress(RuntimeError):  # the loop may already be gone
                loop.call_soon_threadsafe(self._readings.put_nowait, reading)

        self.probe.start(deliver)
        carry = self._beat if isinstance(self.probe, NoProbe) else self._carry_samples
        try:
            async with asyncio.TaskGroup() as tasks:
                tasks.create_task(carry())
                tasks.create_task(self._tick_panel())
        finally:
            self.close()

    def close(self) -> None:
        """Let probe and panel go, and close the record. A second call does nothing."""
        self.probe.close()
        self.panel.close()
        self.journal.close()

    def press(self) -> None:
        """The bench button: done what is asked."""
        asked = instruction(self.state)
        if asked.act is None:
            return
        values = {"act": asked.act, "portion": asked.portion, "key": f"button-{self.clock.boot}-{self.seq}"}
        task = asyncio.get_running_loop().create_task(self._pressed({**values, "by": "button"}))
        self._presses = task

    async def _pressed(self, values: dict[str, Any]) -> None:
        with contextlib.suppress(ActRefused, JournalError):  # a press that came too late asks for nothing
            await self.do(values)

    async def _carry_samples(self) -> None:
        patience_s = answer_within_s(self.clock.speed)
        while True:
            try:
                # Not wait_for: in Python 3.11 it swallows a cancellation that meets its result.
                async with asyncio.timeout(patience_s):
                    reading = await self._readings.get()
                taken = e.SampleTaken(reading.temperature_c, reading.bad, None, reading.text)
                time_s = reading.time_s
                watchdog.feed(0.0)
            except TimeoutError:
                taken, time_s = e.SampleTaken(None, "no_answer"), self.clock.time_s()
            async with self._lock:
                with contextlib.suppress(JournalError):  # put down before its first sample, so that this is corrected
                    await self._look_at_probe(time_s)
                events = advance(self.state, taken, time_s)
                try:
                    await self._commit(events, time_s)
                except JournalError:  # said by `fault`; sampling goes on
                    self._show_unkept(events, time_s)
            self.clock.worked_on(time_s)

    async def _look_at_probe(self, time_s: float) -> None:
        """Put down which probe it is and what its bytes have shown, once that is new; what corrects it follows."""
        probe_id, against = self.probe.probe_id, getattr(self.probe, "against", None)
        probes = self.state.probes
        if probe_id is None or against is None:
            return
        if (probe_id, against) == (probes.probe_id, probes.entry(probe_id).against):
            return
        await self._commit(looked_events(probes, probe_id, against), time_s)

    async def _beat(self) -> None:
        """Without a probe: let screens and watchdog know once a second that the station lives."""
        while True:
            watchdog.feed(0.0)
            for listener in self._listeners:
                listener(())
            await asyncio.sleep(BEAT_S)

    async def _tick_panel(self) -> None:
        while True:
            self.panel.show(signal_of(self.state))
            self._quiet_panel()
            self.panel.tick(asyncio.get_running_loop().time())
            await asyncio.sleep(BEAT_S if self.panel.kind == "none" else TICK_S)

    def _quiet_panel(self) -> None:
        silent = self._silent if self.state.silent is None else self.state.silent
        if self.panel.silent != silent:  # setting it cuts a sound
            self.panel.silent = silent

    async def _keep(self, events: Sequence[e.Event]) -> None:
        async with self._lock:
            if events:
                await self._commit(events, self.clock.time_s())

    async def _commit(self, events: Sequence[e.Event], time_s: float) -> None:
        moment = self.clock.moment(time_s)
        try:
            stamped = await asyncio.wrap_future(self.journal.append([(moment, event) for event in events]))
        except JournalError as error:
            self.fault = plain(str(error))
            raise
        self.fault = None
        for each in stamped:
            self._take(each)
        for listener in self._listeners:
            listener(stamped)
        if any(not isinstance(each.event, e.SampleTaken) for each in stamped):
            async with self._changed:
                self._changed.notify_all()

    def _show_unkept(self, events: Sequence[e.Event], time_s: float) -> None:
        """Show a sample that could not be kept: a full card must not freeze the temperature on the screens.

        Only what is live changes; the repeats stay as the journal has them. Listeners hear of no event.
        """
        repeats = self.state.repeats
        for event in events:
            if isinstance(event, e.SampleTaken | e.ProbeLost | e.ProbeFound):
                self.state = fold(self.state, e.Stamped(self.seq, "", 0.0, time_s, "", "", event))
        self.state = replace(self.state, repeats=repeats)
        for listener in self._listeners:
            listener(())

    def _take(self, stamped: e.Stamped) -> None:
        self.state = fold(self.state, stamped)
        self.seq = stamped.seq
        key = getattr(stamped.event, "key", None)
        if key is not None:
            self._keys[key] = stamped.seq
        if isinstance(stamped.event, e.PlanChosen):
            self.practical_seq = stamped.seq
        elif isinstance(stamped.event, e.OrderTaken):
            order = stamped.event
            self._orders[order.room] = max(order.order, self._orders.get(order.room, 0))


def current_practical(journal: Journal) -> list[e.Stamped]:
    """Return the events of the newest practical, from the choice of its plan on."""
    folder = journal.path.parent
    chosen = [each.seq for each in read_events(folder, kinds=(e.PlanChosen.kind,))]
    return list(read_events(folder, after=chosen[-1] - 1 if chosen else 0))


def _lasting(journal: Journal) -> list[e.Stamped]:
    """Return what outlasts the practical in which it happened: the bench's name, and which orders were done."""
    return list(read_events(journal.path.parent, kinds=(e.BenchRenamed.kind, e.OrderTaken.kind)))


def _register(journal: Journal) -> Probes:
    """Return the probe register as the practicals before the newest one left it."""
    folder = journal.path.parent
    chosen = [each.seq for each in read_events(folder, kinds=(e.PlanChosen.kind,))]
    before = (each for each in read_events(folder, kinds=LASTING) if each.seq < (chosen[-1] if chosen else 0))
    return reduce(fold_probes, before, Probes())


def last_event(journal: Journal) -> e.Stamped | None:
    """Return the newest event of the journal."""
    newest = list(read_events(journal.path.parent, after=journal.last_seq - 1))
    return newest[-1] if newest else None


def signal_of(state: State) -> Signal:
    """Return what the panel shows in this state."""
    if state.probes.check is not None:
        return Signal.WAIT
    if state.probe == "lost" and state.step is not Step.DONE and not state.typed:
        return Signal.ATTENTION
    if state.step in (Step.START, Step.SETTLE) and not state.station_reads:
        return Signal.OFF  # the students judge by themselves: no advice
    return _SIGNALS[state.step]


_SIGNALS = {
    Step.READY: Signal.BEGIN,
    Step.ALKALI: Signal.WAIT,
    Step.START: Signal.WAIT,
    Step.POUR: Signal.ADD,
    Step.SETTLE: Signal.WAIT,
    Step.RINSE: Signal.RINSE,
    Step.PAUSED: Signal.PAUSED,
    Step.DONE: Signal.DONE,
}


def _understood(values: dict[str, Any]) -> Act:
    try:
        return Act.model_validate(values)
    except ValidationError as error:
        raise ActRefused("not_understood", problem_line(error)) from None
