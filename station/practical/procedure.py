"""The procedure: one literal table. A happening in a state gives events, or a refusal; nothing is changed here.

This file must not know time, files or threads: the time of a happening comes with it. `advance` is the only
door. What an event does to the state stands in fold.py; which temperature counts stands in settling.py.
"""

from collections.abc import Callable
from dataclasses import replace
from functools import partial
from typing import TypeAlias

from station.practical import events as e
from station.practical import rules
from station.practical.acts import Act, ActRefused
from station.practical.checks.run import check_sample_events
from station.practical.fold import fold
from station.practical.gate import judge_sample
from station.practical.group import ANYWHERE, possible_anywhere
from station.practical.questions import answer_events, open_questions
from station.practical.set_up import SET_UP_ACTS, is_next, set_up_events
from station.practical.settling import alkali_events, paused_events, settle_events, start_events
from station.practical.staff import StaffAct, staff_events
from station.practical.state import State, Step
from station.practical.typed import read_now_events, reading_events, thermometer_events
from station.words import Message, say

# What a sample leads to before anybody looks at the curve: the gate, and probe lost or found.


LOST_AFTER = 3
"""Bad samples in a row that mean a lost probe: a kernel removes a pulled probe from its tree only much later."""


def sample_events(state: State, taken: e.SampleTaken, time_s: float) -> tuple[tuple[e.Event, ...], State]:
    """Return the events of this sample after the gate, and the state once they are folded in."""
    sample = _gated(state, taken, time_s)
    events: tuple[e.Event, ...] = (sample,)
    if sample.bad is None and state.probe == "lost":
        events = (sample, e.ProbeFound())
    elif sample.bad is not None and state.bad_in_a_row + 1 == LOST_AFTER:
        events = (sample, e.ProbeLost(sample.bad))
    after = state
    for event in events:
        after = fold(after, e.Stamped(0, "", 0.0, time_s, "", "", event))
    return events, after


def _gated(state: State, taken: e.SampleTaken, time_s: float) -> e.SampleTaken:
    if taken.temperature_c is None:
        return taken
    bad, _ = judge_sample(state.gate, time_s, taken.temperature_c, of_check=state.probes.check is not None)
    if bad is None:
        return taken
    return replace(taken, temperature_c=None, bad=bad, rejected_c=taken.temperature_c)


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
        raise ActRefused("not_own", say("refusal-adopted"))
    if state.probes.check is not None and happening.act in _NOT_IN_A_CHECK:
        raise ActRefused("check_under_way", say("refusal-probe-being-checked"))
    rule = TABLE.get((state.step, happening.act))
    if rule is None:
        raise ActRefused("not_now", _WHY_NOT[state.step])
    return rule(state, happening, time_s)


Rule: TypeAlias = Callable[[State, Act, float], Events]

TABLE: dict[tuple[Step, str], Rule] = {
    (Step.READY, "alkali_temperature"): rules.alkali_temperature,
    (Step.READY, "sketch_left_out"): set_up_events,
    (Step.READY, "alkali_left_out"): set_up_events,
    (Step.READY, "probe_rinsed"): set_up_events,
    (Step.READY, "thermometer"): thermometer_events,
    (Step.READY, "begin"): rules.begin,
    (Step.READY, "finish"): rules.finish,
    (Step.ALKALI, "alkali_temperature"): rules.alkali_typed,
    (Step.ALKALI, "alkali_left_out"): set_up_events,
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
    (Step.RINSE, "cup_emptied"): set_up_events,
    (Step.RINSE, "cup_rinsed"): set_up_events,
    (Step.RINSE, "rinsed"): rules.rinsed,
    (Step.RINSE, "thermometer"): thermometer_events,
    (Step.RINSE, "reading"): reading_events,
    (Step.RINSE, "portion_volume"): rules.volume,
    (Step.RINSE, "portion_unsure"): rules.unsure,
    (Step.RINSE, "portion_sure"): rules.sure,
    (Step.RINSE, "answer"): answer_events,
    (Step.RINSE, "repeat_set_aside"): rules.set_aside,
    (Step.RINSE, "repeat_restored"): rules.restored,
    (Step.RINSE, "repeat_restarted"): rules.restarted,
    (Step.RINSE, "pause"): rules.pause,
    (Step.RINSE, "finish"): rules.finish,
    (Step.PAUSED, "resume"): rules.resume,
    (Step.PAUSED, "portion_added"): rules.added,
    (Step.PAUSED, "answer"): answer_events,
    (Step.PAUSED, "finish"): rules.finish,
    (Step.DONE, "one_more"): rules.one_more,
    (Step.DONE, "rinsed"): rules.rinsed,
    (Step.DONE, "finish_undone"): rules.finish_undone,
    (Step.DONE, "reading"): reading_events,
    (Step.DONE, "portion_volume"): rules.volume,
    (Step.DONE, "portion_unsure"): rules.unsure,
    (Step.DONE, "portion_sure"): rules.sure,
    (Step.DONE, "answer"): answer_events,
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

_WHY_NOT: dict[Step, Message] = {
    Step.READY: say("state-not-begun"),
    Step.ALKALI: say("state-alkali"),
    Step.START: say("state-start"),
    Step.POUR: say("state-portion"),
    Step.SETTLE: say("state-settling"),
    Step.RINSE: say("state-repeat-ended"),
    Step.PAUSED: say("state-paused"),
    Step.DONE: say("state-ended"),
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
    means = _MEANS_SOMETHING.get(act)
    return means is None or means(state)


_MEANS_SOMETHING: dict[str, Callable[[State], bool]] = {
    "reading": lambda state: state.typed and state.thermometer_division_c is not None,
    "read_now": lambda state: state.plan.own_judgement and not state.typed,
    "thermometer": lambda state: state.typed or state.probe == "lost" or state.step is Step.READY,
    "answer": lambda state: state.step not in (Step.RINSE, Step.DONE) or bool(open_questions(state)),
    "portion_sure": lambda state: any(
        repeat.unsure(portion)
        for repeat in state.repeats
        for portion in (0, *(each.portion for each in repeat.portions))
    ),
    "repeat_restored": lambda state: any(each.restorable for each in state.repeats),
    "resume": lambda state: not state.held,
    "finish": lambda state: not state.held,
    "finish_undone": rules.may_go_on,
    **{act: partial(is_next, act=act) for act in SET_UP_ACTS},
}
