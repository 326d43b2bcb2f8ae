"""The procedure: one literal table. A happening in a state gives events, or a refusal; nothing is changed here.

This file must not know time, files or threads: the time of a happening comes with it. `advance` is the only
door. What an event does to the state stands in fold.py; which temperature counts stands in settling.py.
"""

from collections.abc import Callable
from typing import TypeAlias

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.questions import answer_events
from station.practical.sampling import sample_events
from station.practical.settling import (
    after_reading,
    alkali_events,
    paused_events,
    reading_as_it_is,
    settle_events,
    start_events,
)
from station.practical.staff import StaffAct, staff_events
from station.practical.state import Repeat, State, Step

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
        row = _ON_SAMPLE.get(sampled.step)
        return (*events, *row(sampled, time_s)) if row else events
    if isinstance(happening, StaffAct):
        return staff_events(state, happening)
    if happening.key in state.keys:
        return ()
    rule = TABLE.get((state.step, happening.act))
    if rule is None:
        raise ActRefused("not_now", _WHY_NOT.get(state.step, "That is not possible now."))
    return rule(state, happening, time_s)


def _begin(state: State, act: Act, _: float) -> Events:
    return (e.RepeatBegun(len(state.repeats) + 1, act.key),)


def _alkali_temperature(_: State, act: Act, __: float) -> Events:
    if act.temperature_c is not None:
        # Half a division of a thermometer read to 1 °C, as a rectangular limit (GUM 4.3.7).
        return (e.AlkaliMeasured(act.temperature_c, 0.29, "typed", act.key),)
    return (e.AlkaliDipBegun(act.key),)


def _alkali_typed(state: State, act: Act, time_s: float) -> Events:
    if act.temperature_c is None:
        raise ActRefused("under_way", "The probe is already taking the temperature of the alkali.")
    return _alkali_temperature(state, act, time_s)


def _added(state: State, act: Act, time_s: float) -> Events:
    """A portion that was poured is a fact, whether it was asked for or not."""
    repeat, portion = _running(state), _meant(act)
    expected = state.poured + 1
    if portion < expected:
        raise ActRefused("already_in", f"Portion {portion} is already in.")
    if portion > expected:
        raise ActRefused("wrong_portion", f"Portion {expected} comes next, not portion {portion}.")
    if portion > state.plan.count:
        raise ActRefused("wrong_portion", f"The plan ends with portion {state.plan.count}.")
    early = state.prompted != portion
    volume_cm3 = act.volume_cm3 or state.plan.portion_cm3
    added = e.PortionAdded(repeat.repeat, portion, volume_cm3, early, act.by, act.key)
    before = () if not early else reading_as_it_is(repeat, portion - 1, time_s)
    woken = (e.Resumed(),) if state.step is Step.PAUSED else ()
    return (*woken, *before, added)


def _undone(state: State, act: Act, _: float) -> Events:
    repeat, portion = _running(state), _meant(act)
    if portion != state.poured or portion == 0:
        newest = f"Only the newest portion, {state.poured}," if state.poured else "No portion is in: nothing"
        raise ActRefused("wrong_portion", f"{newest} can be taken back.")
    return (e.PortionUndone(repeat.repeat, portion, act.key),)


def _volume(state: State, act: Act, _: float) -> Events:
    repeat = _with_portion(state, act)
    if act.volume_cm3 is None:
        raise ActRefused("no_volume", "Say the volume of the portion in volume_cm3.")
    return (e.PortionVolumeCorrected(repeat.repeat, _meant(act), act.volume_cm3, act.key),)


def _unsure(state: State, act: Act, _: float) -> Events:
    return (e.PortionUnsure(_with_portion(state, act).repeat, _meant(act), act.key),)


def _rinsed(state: State, act: Act, _: float) -> Events:
    return (e.RepeatBegun(len(state.repeats) + 1, act.key),)


def _restarted(state: State, act: Act, _: float) -> Events:
    repeat = state.current
    if repeat is None or not repeat.counts:
        raise ActRefused("not_now", "There is no repeat to start again.")
    if act.reason is None:
        raise ActRefused("no_reason", "Say why the repeat is started again, in reason.")
    return (e.RepeatSetAside(repeat.repeat, act.reason, act.key),)


def _pause(_: State, act: Act, __: float) -> Events:
    return (e.Paused(act.key),)


def _resume(state: State, act: Act, _: float) -> Events:
    return (e.Resumed(act.key), *(after_reading(state) if state.resume_to is Step.SETTLE else ()))


def _finish(state: State, act: Act, time_s: float) -> Events:
    """End with what there is: the newest portion keeps the temperature it has."""
    repeat = state.running
    if repeat is None:
        return (e.PracticalEnded(True, act.key),)
    read = any(reading.portion == state.poured for reading in repeat.readings)
    last = () if read else reading_as_it_is(repeat, state.poured, time_s)
    return (*last, e.RepeatEnded(repeat.repeat), e.PracticalEnded(True, act.key))


def _running(state: State) -> Repeat:
    if state.running is None:
        raise ActRefused("not_now", "No repeat is under way.")
    return state.running


def _meant(act: Act) -> int:
    if act.portion is None:
        raise ActRefused("no_portion", "Say which portion is meant, in portion.")
    return act.portion


def _with_portion(state: State, act: Act) -> Repeat:
    number, portion = act.repeat or len(state.repeats), _meant(act)
    if not 1 <= number <= len(state.repeats):
        raise ActRefused("wrong_repeat", f"There is no repeat {number}.")
    repeat = state.repeats[number - 1]
    if not any(each.portion == portion for each in repeat.portions):
        raise ActRefused("wrong_portion", f"Portion {portion} of repeat {number} has not been added.")
    return repeat


Rule: TypeAlias = Callable[[State, Act, float], Events]

TABLE: dict[tuple[Step, str], Rule] = {
    (Step.READY, "alkali_temperature"): _alkali_temperature,
    (Step.READY, "begin"): _begin,
    (Step.READY, "finish"): _finish,
    (Step.ALKALI, "alkali_temperature"): _alkali_typed,
    (Step.ALKALI, "begin"): _begin,
    (Step.ALKALI, "finish"): _finish,
    (Step.START, "portion_added"): _added,
    (Step.START, "repeat_restarted"): _restarted,
    (Step.START, "pause"): _pause,
    (Step.START, "finish"): _finish,
    (Step.POUR, "portion_added"): _added,
    (Step.POUR, "portion_undone"): _undone,
    (Step.POUR, "portion_volume"): _volume,
    (Step.POUR, "portion_unsure"): _unsure,
    (Step.POUR, "answer"): answer_events,
    (Step.POUR, "repeat_restarted"): _restarted,
    (Step.POUR, "pause"): _pause,
    (Step.POUR, "finish"): _finish,
    (Step.SETTLE, "portion_added"): _added,
    (Step.SETTLE, "portion_undone"): _undone,
    (Step.SETTLE, "portion_volume"): _volume,
    (Step.SETTLE, "portion_unsure"): _unsure,
    (Step.SETTLE, "answer"): answer_events,
    (Step.SETTLE, "repeat_restarted"): _restarted,
    (Step.SETTLE, "pause"): _pause,
    (Step.SETTLE, "finish"): _finish,
    (Step.RINSE, "rinsed"): _rinsed,
    (Step.RINSE, "portion_volume"): _volume,
    (Step.RINSE, "portion_unsure"): _unsure,
    (Step.RINSE, "repeat_restarted"): _restarted,
    (Step.RINSE, "pause"): _pause,
    (Step.RINSE, "finish"): _finish,
    (Step.PAUSED, "resume"): _resume,
    (Step.PAUSED, "portion_added"): _added,
    (Step.PAUSED, "answer"): answer_events,
    (Step.PAUSED, "finish"): _finish,
    (Step.DONE, "portion_volume"): _volume,
    (Step.DONE, "portion_unsure"): _unsure,
}
"""Which act is possible in which state, and what it leads to. What is not here is impossible."""

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
    """Return the names of the acts that the table knows in this state, in the table's order."""
    return tuple(act for step, act in TABLE if step is state.step)
