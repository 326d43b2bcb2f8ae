"""The fold: what each event does to the state. No event is ever refused here; what happened, happened."""

from collections.abc import Callable, Iterable
from dataclasses import replace
from functools import reduce
from typing import Any

from station.practical import events as e
from station.practical.fold_group import GROUP_CHANGES
from station.practical.gate import judge_sample
from station.practical.growing import Growing
from station.practical.learning import learned_at_start, learned_from_portion
from station.practical.plan import plan_from
from station.practical.probes import Probes, fold_probes
from station.practical.state import TYPED, Asked, Gate, Portion, Reading, Repeat, Sample, State, Step

RECENT_S = 60.0


def fold(state: State, stamped: e.Stamped) -> State:
    """Return the state after this event."""
    change = _CHANGES.get(type(stamped.event))
    probes = fold_probes(state.probes, stamped)
    if isinstance(stamped.event, e.SampleTaken):
        return _sample(state, stamped.event, stamped.time_s, probes)
    if change is None and probes is state.probes:
        return state
    changed: State = change(state, stamped.event, stamped.time_s) if change is not None else state
    changed = changed if probes is changed.probes else replace(changed, probes=probes)
    key = getattr(stamped.event, "key", None)
    if key is not None and key not in changed.keys:
        changed = replace(changed, keys=changed.keys.with_one(key))
    if changed.step is not state.step:
        changed = replace(changed, step_since_s=stamped.time_s)
    return changed


def fold_all(happened: Iterable[e.Stamped], state: State | None = None) -> State:
    """Return the state after all these events, from the beginning or from the given state."""
    return reduce(fold, happened, state if state is not None else State())


def _plan_chosen(state: State, event: e.PlanChosen, time_s: float) -> State:
    fresh = State(plan=plan_from(event.plan), chosen=True, step_since_s=time_s)
    fresh = replace(fresh, recent=state.recent, gate=state.gate, probe=state.probe, bad_in_a_row=state.bad_in_a_row)
    return replace(fresh, name=state.name, has_probe=state.has_probe, plan_by=event.by)


def _sample(state: State, event: e.SampleTaken, time_s: float, probes: Probes) -> State:
    """The many: one copy of the state for each. `probes` is the register after this sample."""
    sample, gate = Sample(time_s, event.temperature_c, event.bad), state.gate
    if event.temperature_c is not None:
        # Corrected here, where the sample becomes state: the journal keeps what the probe said.
        temperature_c, correction_c = state.probes.corrected(event.temperature_c)
        sample = Sample(time_s, temperature_c, event.bad, correction_c)
        gate = Gate(good=sample)
    elif event.rejected_c is not None:
        gate = judge_sample(gate, time_s, event.rejected_c, of_check=state.probes.check is not None)[1]
    recent = (*(each for each in state.recent if each.time_s > time_s - RECENT_S), sample)
    bad_in_a_row = 0 if event.bad is None else state.bad_in_a_row + 1
    probe = state.probe if state.probe == "lost" else "failing" if bad_in_a_row else "ok"
    repeats = state.repeats
    if state.running is not None:
        repeats = (*repeats[:-1], _with_sample(repeats[-1], sample))
    return replace(
        state, recent=recent, gate=gate, bad_in_a_row=bad_in_a_row, probe=probe, repeats=repeats, probes=probes
    )


def _with_sample(repeat: Repeat, sample: Sample) -> Repeat:
    samples = repeat.samples if isinstance(repeat.samples, Growing) else Growing(repeat.samples)
    return replace(repeat, samples=samples.with_one(sample))


def _probe_lost(state: State, _: e.ProbeLost, __: float) -> State:
    return replace(state, probe="lost")


def _probe_found(state: State, _: e.ProbeFound, __: float) -> State:
    return replace(state, probe="ok")


def _dip_begun(state: State, _: e.AlkaliDipBegun, time_s: float) -> State:
    return replace(state, step=Step.ALKALI, dip_since_s=time_s)


def _alkali(state: State, event: e.AlkaliMeasured, _: float) -> State:
    step = Step.READY if state.step is Step.ALKALI else state.step
    typed = event.source == TYPED
    return replace(state, step=step, alkali_c=event.temperature_c, alkali_u_c=event.u_c, alkali_typed=typed)


def _in_use(state: State, _: e.ProbeInUse, __: float) -> State:
    """The probe, or what it is corrected by, changed in the midst of a repeat: said with the repeat."""
    repeat = state.running
    if repeat is None:
        return state
    return state.with_repeat(replace(repeat, corrected=(*repeat.corrected, state.probes.in_use)))


def _repeat_begun(state: State, event: e.RepeatBegun, time_s: float) -> State:
    repeat = Repeat(event.repeat, time_s, corrected=(state.probes.in_use,))
    return replace(state, step=Step.START, repeats=(*state.repeats, repeat), prompted=None)


def _prompted(state: State, event: e.PortionPrompted, _: float) -> State:
    return replace(state, step=Step.POUR, prompted=event.portion)


def _added(state: State, event: e.PortionAdded, time_s: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    portion = Portion(event.portion, time_s, event.volume_cm3, event.early)
    changed = learned_from_portion(state, time_s).with_repeat(replace(repeat, portions=(*repeat.portions, portion)))
    return replace(changed, step=Step.SETTLE, prompted=None)


def _settled(state: State, event: e.ReadingSettled, time_s: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    reading = Reading(event.portion, event.temperature_c, event.u_c, event.settled, event.reason, time_s)
    others = tuple(each for each in repeat.readings if each.portion != event.portion)
    changed = state.with_repeat(replace(repeat, readings=(*others, reading)))
    if event.reason == TYPED:
        return changed
    if state.plan.own_judgement:
        return _read_by_judgement(changed, event)
    return learned_at_start(changed) if event.portion == 0 and event.settled else changed


def _read_by_judgement(state: State, event: e.ReadingSettled) -> State:
    """After a reading of their own choice the students may add, without being asked to."""
    if state.step not in (Step.START, Step.SETTLE):
        return state
    return replace(state, step=Step.POUR, prompted=event.portion + 1)


def _undone(state: State, event: e.PortionUndone, _: float) -> State:
    """Take the newest portion away; if it had come early, the reading before it was not over after all."""
    repeat = state.repeats[event.repeat - 1]
    early = any(each.early for each in repeat.portions if each.portion == event.portion)
    dropped = {event.portion, event.portion - 1} if early else {event.portion}
    portions = tuple(each for each in repeat.portions if each.portion != event.portion)
    readings = tuple(each for each in repeat.readings if each.portion not in dropped)
    changed = state.with_repeat(replace(repeat, portions=portions, readings=readings))
    if early:
        return replace(changed, step=Step.SETTLE if event.portion > 1 else Step.START, prompted=None)
    return replace(changed, step=Step.POUR, prompted=event.portion)


def _of_portion(state: State, repeat: int, portion: int, **fields: Any) -> State:
    old = state.repeats[repeat - 1]
    portions = tuple(replace(each, **fields) if each.portion == portion else each for each in old.portions)
    return state.with_repeat(replace(old, portions=portions))


def _volume(state: State, event: e.PortionVolumeCorrected, _: float) -> State:
    return _of_portion(state, event.repeat, event.portion, volume_cm3=event.volume_cm3)


def _unsure(state: State, event: e.PortionUnsure, _: float) -> State:
    return _of_portion(state, event.repeat, event.portion, unsure=True, unsure_reason=event.reason)


def _sure(state: State, event: e.PortionSure, _: float) -> State:
    return _of_portion(state, event.repeat, event.portion, unsure=False, unsure_reason=None)


def _asked(state: State, event: e.QuestionAsked, _: float) -> State:
    return replace(state, asked=(*state.asked, Asked(event.repeat, event.portion, event.code)))


def _answered(state: State, event: e.QuestionAnswered, _: float) -> State:
    answered = Asked(event.repeat, event.portion, event.code, event.answer)
    others = tuple(each for each in state.asked if each.question != answered.question)
    return replace(state, asked=(*others, answered))


def _repeat_ended(state: State, event: e.RepeatEnded, _: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    return replace(state.with_repeat(replace(repeat, status="ended")), step=Step.RINSE, prompted=None)


def _set_aside(state: State, event: e.RepeatSetAside, _: float) -> State:
    """Go on with fresh acid, unless it was an earlier repeat or the practical is over."""
    repeat = replace(state.repeats[event.repeat - 1], status="set aside", reason=event.reason)
    changed = state.with_repeat(repeat)
    if state.step is Step.DONE or event.repeat != len(state.repeats):
        return changed
    return replace(changed, step=Step.RINSE, prompted=None)


def _restored(state: State, event: e.RepeatRestored, _: float) -> State:
    return state.with_repeat(replace(state.repeats[event.repeat - 1], status="ended", reason=None))


def _paused(state: State, _: e.Paused, __: float) -> State:
    return replace(state, step=Step.PAUSED, resume_to=state.step)


def _resumed(state: State, _: e.Resumed, __: float) -> State:
    return replace(state, step=state.resume_to)


def _ended(state: State, event: e.PracticalEnded, _: float) -> State:
    return replace(state, step=Step.DONE, prompted=None, ended_early=event.early)


_CHANGES: dict[type[e.Event], Callable[[State, Any, float], State]] = {
    e.PlanChosen: _plan_chosen,
    e.ProbeLost: _probe_lost,
    e.ProbeFound: _probe_found,
    e.AlkaliDipBegun: _dip_begun,
    e.AlkaliMeasured: _alkali,
    e.RepeatBegun: _repeat_begun,
    e.ProbeInUse: _in_use,
    e.PortionPrompted: _prompted,
    e.PortionAdded: _added,
    e.ReadingSettled: _settled,
    e.PortionUndone: _undone,
    e.PortionVolumeCorrected: _volume,
    e.PortionUnsure: _unsure,
    e.PortionSure: _sure,
    e.QuestionAsked: _asked,
    e.QuestionAnswered: _answered,
    e.RepeatEnded: _repeat_ended,
    e.RepeatSetAside: _set_aside,
    e.RepeatRestored: _restored,
    e.Paused: _paused,
    e.Resumed: _resumed,
    e.PracticalEnded: _ended,
    **GROUP_CHANGES,
}
