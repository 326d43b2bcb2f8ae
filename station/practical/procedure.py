"""The procedure: one literal table. A happening in a state gives events, or a refusal; nothing is changed here.

This file must not know time, files or threads: the time of a happening comes with it. `advance` is the only
door. What an event does to the state stands in fold.py; which temperature counts stands in settling.py.
"""

from collections.abc import Callable
from typing import TypeAlias

from station.practical import events as e
from station.practical import rules
from station.practical.acts import Act, ActRefused
from station.practical.checks_run import check_sample_events
from station.practical.group import ANYWHERE, possible_anywhere
from station.practical.questions import answer_events
from station.practical.sampling import sample_events
from station.practical.settling import (
    alkali_events,
    paused_events,
    settle_events,
    start_events,
)
from station.practical.staff import StaffAct, staff_events
from station.practical.state import State, Step
from station.practical.typed import read_now_events, reading_events, thermometer_events

Events: TypeAlias = tuple[e.Event, ...]


def advance(state: State, happening: e.SampleTaken | Act | StaffAct, time_s: float) -> Events:
    """Return the events that this happening leads to.

    `happening` is a sample as the reader judged it (the gate of the practical is applied here), or an act, of
    those at the bench (the table) or of staff (`staff.py`: in any state).
    An act whose key was seen before gives no events. Raises ActRefused when the act is impossible; the state
    is the caller's and is never changed.
    """
    if isinstance(happening, e.SampleTaken):
        events, sampled = sample_events(state, happening, time_s)
        if sampled.probes.check is not None:
            return (*events, *check_sample_events(sampled.probes, time_s))
        row = _ON_SAMPLE.get(sampled.step)
        return (*events, *row(sampled, time_s)) if row else events
    if isinstance(happening, StaffAct):
        return staff_events(state, happening, time_s)
    if happening.key in state.keys:
        return ()
    anywhere = ANYWHERE.get(happening.act)
    if anywhere is not None:
        return anywhere(state, happening)
    if state.adopted is not None:
        raise ActRefused("not_own", "These are another group's readings. Go back to your own first.")
    if state.probes.check is not None and happening.act in _NOT_IN_A_CHECK:
        raise ActRefused("check_under_way", "Staff are checking the probe: ask them to save or discard the check.")
    rule = TABLE.get((state.step, happening.act))
    if rule is None:
        raise ActRefused("not_now", _WHY_NOT.get(state.step, "That is not possible now."))
    return rule(state, happening, time_s)


Rule: TypeAlias = Callable[[State, Act, float], Events]

TABLE: dict[tuple[Step, str], Rule] = {
    (Step.READY, "alkali_temperature"): rules.alkali_temperature,
    (Step.READY, "thermometer"): thermometer_events,
    (Step.READY, "begin"): rules.begin,
    (Step.READY, "finish"): rules.finish,
    (Step.ALKALI, "alkali_temperature"): rules.alkali_typed,
    (Step.ALKALI, "begin"): rules.begin,
    (Step.ALKALI, "finish"): rules.finish,
    (Step.START, "thermometer"): thermometer_events,
    (Step.START, "reading"): reading_events,
    (Step.START, "read_now"): read_now_events,
    (Step.START, "portion_added"): rules.added,
    (Step.START, "repeat_restarted"): rules.restarted,
    (Step.START, "pause"): rules.pause,
    (Step.START, "finish"): rules.finish,
    (Step.POUR, "thermometer"): thermometer_events,
    (Step.POUR, "reading"): reading_events,
    (Step.POUR, "portion_added"): rules.added,
    (Step.POUR, "portion_undone"): rules.undone,
    (Step.POUR, "portion_volume"): rules.volume,
    (Step.POUR, "portion_unsure"): rules.unsure,
    (Step.POUR, "portion_sure"): rules.sure,
    (Step.POUR, "answer"): answer_events,
    (Step.POUR, "repeat_restarted"): rules.restarted,
    (Step.POUR, "pause"): rules.pause,
    (Step.POUR, "finish"): rules.finish,
    (Step.SETTLE, "thermometer"): thermometer_events,
    (Step.SETTLE, "reading"): reading_events,
    (Step.SETTLE, "read_now"): read_now_events,
    (Step.SETTLE, "portion_added"): rules.added,
    (Step.SETTLE, "portion_undone"): rules.undone,
    (Step.SETTLE, "portion_volume"): rules.volume,
    (Step.SETTLE, "portion_unsure"): rules.unsure,
    (Step.SETTLE, "portion_sure"): rules.sure,
    (Step.SETTLE, "answer"): answer_events,
    (Step.SETTLE, "repeat_restarted"): rules.restarted,
    (Step.SETTLE, "pause"): rules.pause,
    (Step.SETTLE, "finish"): rules.finish,
    (Step.RINSE, "rinsed"): rules.rinsed,
    (Step.RINSE, "thermometer"): thermometer_events,
    (Step.RINSE, "reading"): reading_events,
    (Step.RINSE, "portion_volume"): rules.volume,
    (Step.RINSE, "portion_unsure"): rules.unsure,
    (Step.RINSE, "portion_sure"): rules.sure,
    (Step.RINSE, "repeat_set_aside"): rules.set_aside,
    (Step.RINSE, "repeat_restored"): rules.restored,
    (Step.RINSE, "repeat_restarted"): rules.restarted,
    (Step.RINSE, "pause"): rules.pause,
    (Step.RINSE, "finish"): rules.finish,
    (Step.PAUSED, "resume"): rules.resume,
    (Step.PAUSED, "portion_added"): rules.added,
    (Step.PAUSED, "answer"): answer_events,
    (Step.PAUSED, "finish"): rules.finish,
    (Step.DONE, "rinsed"): rules.rinsed,
    (Step.DONE, "reading"): reading_events,
    (Step.DONE, "portion_volume"): rules.volume,
    (Step.DONE, "portion_unsure"): rules.unsure,
    (Step.DONE, "portion_sure"): rules.sure,
    (Step.DONE, "repeat_set_aside"): rules.set_aside,
    (Step.DONE, "repeat_restored"): rules.restored,
}
"""Which act is possible in which state, and what it leads to. What is not here is impossible."""

_NOT_IN_A_CHECK = frozenset({"begin", "rinsed", "alkali_temperature", "thermometer", "repeat_restarted"})

_ON_SAMPLE: dict[Step, Callable[[State, float], Events]] = {
    Step.ALKALI: alkali_events,
    Step.START: start_events,
    Step.SETTLE: settle_events,
    Step.PAUSED: paused_events,
}

_WHY_NOT: dict[Step, str] = {
    Step.READY: "The practical has not begun.",
    Step.ALKALI: "The alkali's temperature is being taken; begin, or wait.",
    Step.START: "The start temperature is being taken.",
    Step.POUR: "A portion is asked for.",
    Step.SETTLE: "The temperature is settling.",
    Step.RINSE: "The repeat has ended: rinse, refill, then press.",
    Step.PAUSED: "The practical is paused: resume first.",
    Step.DONE: "The practical has ended.",
}


def possible_acts(state: State) -> tuple[str, ...]:
    """Return the names of the acts that make sense in this state, in the table's order, then those of any state."""
    if state.adopted is not None:
        return possible_anywhere(state)
    ruled_out = _NOT_IN_A_CHECK if state.probes.check is not None else frozenset[str]()
    here = (act for step, act in TABLE if step is state.step and act not in ruled_out)
    return (*(act for act in here if _makes_sense(state, act)), *possible_anywhere(state))


def _makes_sense(state: State, act: str) -> bool:
    """Leave out what the table allows but this practical cannot mean; the rules refuse it with words."""
    if act == "reading":
        return state.typed and state.thermometer_division_c is not None
    if act == "read_now":
        return state.plan.own_judgement and not state.typed
    if act == "thermometer":
        return state.typed or state.probe == "lost" or state.step is Step.READY
    if act == "portion_sure":
        return any(each.unsure for repeat in state.repeats for each in repeat.portions)
    if act == "repeat_restored":
        return any(each.restorable for each in state.repeats)
    return True
