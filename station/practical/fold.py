"""The fold: what each event does to the state. No event is ever refused here; what happened, happened."""

from collections.abc import Callable, Iterable, Sequence
from dataclasses import replace
from functools import reduce
from itertools import groupby
from typing import Any

from station.practical import events as e
from station.practical.checks.register import Probes, fold_probes
from station.practical.dataset import RepeatData
from station.practical.gate import judge_sample, learned_at_start, learned_from_portion
from station.practical.growing import Growing
from station.practical.kinds import plan_from
from station.practical.readings_text import numbered
from station.practical.recorded import recorded
from station.practical.state import (
    FITS,
    SLIP,
    STANDS,
    TYPED,
    TYPED_AGAIN,
    Adopted,
    Asked,
    Clocked,
    Gate,
    Note,
    OwnReading,
    Portion,
    ProbeStanding,
    Reading,
    Repeat,
    Sample,
    State,
    Step,
)
from station.words import say

# The fold's other half: what the group and staff say that is not about a portion in the cup.


def _started(state: State, event: e.StationStarted, _: float) -> State:
    has_probe = event.probe_driver != "none"
    return replace(state, has_probe=has_probe, probe="ok" if has_probe else "none")


def _thermometer(state: State, event: e.ThermometerChosen, _: float) -> State:
    return replace(state, thermometer_division_c=event.division_c, thermometer_digital=event.digital)


def _end_point_read(state: State, event: e.EndPointRead, time_s: float) -> State:
    reason = None if event.reason is None else recorded(event.reason)
    read = OwnReading(event.end_point_cm3, event.change_c, event.before, event.after, time_s, reason)
    return replace(state, own_reading=read)


def _sketched(state: State, event: e.CurveSketched, _: float) -> State:
    return replace(state, sketch=tuple((float(volume_cm3), float(c)) for volume_cm3, c in event.points))


def _group(state: State, event: e.GroupNamed, _: float) -> State:
    return replace(state, group=event.label)


def _note(state: State, event: e.NoteWritten, time_s: float) -> State:
    return replace(state, notes=(*state.notes, Note(event.note, event.text, event.repeat, event.portion, time_s)))


def _salvaged(state: State, _: e.RecordSalvaged, time_s: float) -> State:
    """People see it among the notes: they alone know whether a portion is missing."""
    words = say("note-record-repaired")
    return replace(state, notes=(*state.notes, Note(len(state.notes) + 1, words, None, None, time_s)))


def _note_withdrawn(state: State, event: e.NoteWithdrawn, _: float) -> State:
    return replace(
        state, notes=tuple(replace(each, withdrawn=each.withdrawn or each.id == event.note) for each in state.notes)
    )


def _adopted(state: State, event: e.SetAdopted, _: float) -> State:
    before = state.step if state.adopted is None else state.adopted.step_before
    adopted = Adopted(event.label, adopted_repeats(event.readings), before)
    # What was read off the own lines was not read off these.
    return replace(state, adopted=adopted, step=Step.DONE, own_reading=None)


def _returned(state: State, _: e.SetReturned, __: float) -> State:
    step = state.step if state.adopted is None else state.adopted.step_before
    return replace(state, adopted=None, step=step, own_reading=None)


def _shown(state: State, event: e.ResultsShown, _: float) -> State:
    prepared_mol_dm3 = event.prepared_mol_dm3 or state.prepared_mol_dm3
    return replace(state, shown=event.shown, prepared_mol_dm3=prepared_mol_dm3)


def _quieted(state: State, event: e.Quieted, _: float) -> State:
    return replace(state, silent=event.silent)


def _renamed(state: State, event: e.BenchRenamed, _: float) -> State:
    return replace(state, name=event.name)


def _called(state: State, _: e.TeacherCalled, time_s: float) -> State:
    return replace(state, called_s=time_s)


def _call_ended(state: State, _: e.CallEnded, __: float) -> State:
    return replace(state, called_s=None)


def adopted_repeats(rows: Sequence[Sequence[float]]) -> tuple[Repeat, ...]:
    """Return the repeats of rows (repeat, total volume added in cm³, temperature in °C), in the rows' order."""
    points = {
        int(repeat): [(volume_cm3, temperature_c) for _, volume_cm3, temperature_c in same]
        for repeat, same in groupby(rows, key=lambda row: row[0])
    }
    return tuple(_adopted_repeat(each) for each in numbered(points)) if points else ()


def _adopted_repeat(data: RepeatData) -> Repeat:
    """A portion that has no reading is one with the next that has."""
    portions, before_cm3 = [], 0.0
    for row in data.readings:
        if row.portion > 0:
            portions.append(Portion(row.portion, 0.0, row.volume_cm3 - before_cm3))
        before_cm3 = row.volume_cm3
    readings = [Reading(row.portion, row.temperature_c, None, True, TYPED) for row in data.readings]
    return Repeat(data.repeat, 0.0, "ended", None, tuple(portions), tuple(readings))


GROUP_CHANGES: dict[type[e.Event], Callable[[State, Any, float], State]] = {
    e.StationStarted: _started,
    e.ThermometerChosen: _thermometer,
    e.EndPointRead: _end_point_read,
    e.CurveSketched: _sketched,
    e.GroupNamed: _group,
    e.NoteWritten: _note,
    e.NoteWithdrawn: _note_withdrawn,
    e.RecordSalvaged: _salvaged,
    e.SetAdopted: _adopted,
    e.SetReturned: _returned,
    e.ResultsShown: _shown,
    e.Quieted: _quieted,
    e.BenchRenamed: _renamed,
    e.TeacherCalled: _called,
    e.CallEnded: _call_ended,
}


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
    if state.held and changed.step not in (Step.PAUSED, Step.DONE) and changed.paused_by is not None:
        # Whatever is said meanwhile, such as that a portion is in: a pause of staff lasts until they end it.
        changed = replace(changed, step=Step.PAUSED, resume_to=changed.step)
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
    fresh = State(plan=plan_from(event.plan), chosen=True, step_since_s=time_s, set_up_asked=event.set_up)
    fresh = replace(fresh, recent=state.recent, gate=state.gate, probe=state.probe, bad_in_a_row=state.bad_in_a_row)
    return replace(fresh, name=state.name, has_probe=state.has_probe, plan_by=event.by, practice=event.practice)


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
    since_s = time_s - RECENT_S
    recent = (*[each for each in state.recent if each.time_s > since_s], sample)
    bad_in_a_row = 0 if event.bad is None else state.bad_in_a_row + 1
    probe: ProbeStanding = "lost" if state.probe == "lost" else "failing" if bad_in_a_row else "ok"
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
    # What is dipped again is to be rinsed again.
    return replace(state, step=Step.ALKALI, dip_since_s=time_s, set_up_over=state.set_up_over - {"probe"})


def _alkali(state: State, event: e.AlkaliMeasured, _: float) -> State:
    step = Step.READY if state.step is Step.ALKALI else state.step
    typed = event.source == TYPED
    return replace(state, step=step, alkali_c=event.temperature_c, alkali_u_c=event.u_c, alkali_typed=typed)


def _set_up_over(state: State, event: e.SetUpStepDone, _: float) -> State:
    step = Step.READY if state.step is Step.ALKALI else state.step
    return replace(state, step=step, set_up_over=state.set_up_over | {event.step})


def _in_use(state: State, _: e.ProbeInUse, __: float) -> State:
    """The probe, or what it is corrected by, changed in the midst of a repeat: said with the repeat."""
    repeat = state.running
    if repeat is None:
        return state
    return state.with_repeat(replace(repeat, corrected=(*repeat.corrected, state.probes.in_use)))


def _repeat_begun(state: State, event: e.RepeatBegun, time_s: float) -> State:
    repeat = Repeat(event.repeat, time_s, corrected=(state.probes.in_use,), cup=event.cup)
    # What was read off the own lines was read off those of the repeats before.
    begun = replace(state, step=Step.START, repeats=(*state.repeats, repeat), prompted=None, own_reading=None)
    return replace(begun, set_up_over=frozenset())


def _prompted(state: State, event: e.PortionPrompted, _: float) -> State:
    return replace(state, step=Step.POUR, prompted=event.portion)


def _added(state: State, event: e.PortionAdded, time_s: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    portion = Portion(event.portion, time_s, event.volume_cm3, event.early, mass_g=event.mass_g, places=event.places)
    changed = learned_from_portion(state, time_s).with_repeat(replace(repeat, portions=(*repeat.portions, portion)))
    return replace(changed, step=Step.SETTLE, prompted=None)


def _settled(state: State, event: e.ReadingSettled, time_s: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    reading = Reading(
        event.portion,
        event.temperature_c,
        event.u_c,
        event.settled,
        recorded(event.reason),
        time_s,
        event.outcome,
    )
    others = tuple(each for each in repeat.readings if each.portion != event.portion)
    changed = state.with_repeat(replace(repeat, readings=(*others, reading)))
    if event.reason == TYPED:
        return changed
    if state.plan.own_judgement:
        return _read_by_judgement(changed, event)
    return learned_at_start(changed) if event.portion == 0 and event.settled else changed


def _read_by_judgement(state: State, event: e.ReadingSettled) -> State:
    """After a reading of their own choice the students may add, without being asked to."""
    if state.step not in (Step.START, Step.SETTLE) or event.portion >= state.plan.count:
        return state
    return replace(state, step=Step.POUR, prompted=event.portion + 1)


def _temperature_read(state: State, event: e.TemperatureRead, _: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    read = Clocked(event.at_s, event.temperature_c, event.division_c)
    others = (each for each in repeat.clocked if each.at_s != event.at_s)
    return state.with_repeat(replace(repeat, clocked=tuple(sorted((*others, read), key=lambda each: each.at_s))))


def _undone(state: State, event: e.PortionUndone, _: float) -> State:
    """Take the newest portion away; if it had come early, the reading before it was not over after all."""
    repeat = state.repeats[event.repeat - 1]
    early = any(each.early for each in repeat.portions if each.portion == event.portion)
    dropped = {event.portion, event.portion - 1} if early else {event.portion}
    portions = tuple(each for each in repeat.portions if each.portion != event.portion)
    readings = tuple(each for each in repeat.readings if each.portion not in dropped)
    changed = state.with_repeat(replace(repeat, portions=portions, readings=readings))
    changed = _no_longer_asked(changed, event.repeat, event.portion)
    if early:
        return replace(changed, step=Step.SETTLE if event.portion > 1 else Step.START, prompted=None)
    return replace(changed, step=Step.POUR, prompted=event.portion)


def _of_portion(state: State, repeat: int, portion: int, **fields: Any) -> State:
    old = state.repeats[repeat - 1]
    portions = tuple(replace(each, **fields) if each.portion == portion else each for each in old.portions)
    return state.with_repeat(replace(old, portions=portions))


def _volume(state: State, event: e.PortionVolumeCorrected, _: float) -> State:
    said = {"volume_cm3": event.volume_cm3, "mass_g": event.mass_g, "places": event.places}
    changed = _of_portion(state, event.repeat, event.portion, **said)
    changed = _no_longer_asked(changed, event.repeat, event.portion)
    repeat = changed.repeats[event.repeat - 1]
    return changed.with_repeat(replace(repeat, confirmed=repeat.confirmed | {event.portion}))


def _unsure(state: State, event: e.PortionUnsure, _: float) -> State:
    reason = None if event.reason is None else recorded(event.reason)
    return _of_portion(state, event.repeat, event.portion, unsure=True, unsure_reason=reason)


def _sure(state: State, event: e.PortionSure, _: float) -> State:
    changed = _of_portion(state, event.repeat, event.portion, unsure=False, unsure_reason=None)
    return _no_longer_asked(changed, event.repeat, event.portion)


def _asked(state: State, event: e.QuestionAsked, _: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    waits = replace(repeat, asked=(*repeat.asked, (event.portion, event.code)))
    asked = Asked(event.repeat, event.portion, event.code)
    others = tuple(each for each in state.asked if each.question != asked.question)
    return replace(state.with_repeat(waits), asked=(*others, asked))


def _answered(state: State, event: e.QuestionAnswered, _: float) -> State:
    answered = Asked(event.repeat, event.portion, event.code, event.answer)
    others = tuple(each for each in state.asked if each.question != answered.question)
    repeat = state.repeats[event.repeat - 1]
    open_still = tuple(each for each in repeat.asked if each != (event.portion, event.code))
    misread = repeat.misread
    if event.code == SLIP:
        stands = event.answer in (STANDS, TYPED_AGAIN, FITS)
        misread = misread - {event.portion} if stands else misread | {event.portion}
    changed = state.with_repeat(replace(repeat, asked=open_still, misread=misread))
    return replace(changed, asked=(*others, answered))


def _no_longer_asked(state: State, number: int, portion: int) -> State:
    """Nothing about this portion waits any more: what there is to say of it was said."""
    repeat = state.repeats[number - 1]
    if portion not in repeat.misread and all(of != portion for of, _ in repeat.asked):
        return state
    asked = tuple(each for each in repeat.asked if each[0] != portion)
    return state.with_repeat(replace(repeat, asked=asked, misread=repeat.misread - {portion}))


def _repeat_ended(state: State, event: e.RepeatEnded, _: float) -> State:
    repeat = state.repeats[event.repeat - 1]
    return replace(state.with_repeat(replace(repeat, status="ended")), step=Step.RINSE, prompted=None)


def _set_aside(state: State, event: e.RepeatSetAside, _: float) -> State:
    """Go on with fresh acid, unless it was an earlier repeat or the practical is over."""
    repeat = replace(state.repeats[event.repeat - 1], status="set aside", reason=recorded(event.reason))
    changed = state.with_repeat(repeat)
    if state.step is Step.DONE or event.repeat != len(state.repeats):
        return changed
    return replace(changed, step=Step.RINSE, prompted=None)


def _restored(state: State, event: e.RepeatRestored, _: float) -> State:
    return state.with_repeat(replace(state.repeats[event.repeat - 1], status="ended", reason=None))


def _paused(state: State, event: e.Paused, _: float) -> State:
    resume_to = state.resume_to if state.step is Step.PAUSED else state.step
    return replace(state, step=Step.PAUSED, resume_to=resume_to, paused_by=event.by)


def _resumed(state: State, _: e.Resumed, __: float) -> State:
    return replace(state, step=state.resume_to, paused_by=None)


def _ended(state: State, event: e.PracticalEnded, _: float) -> State:
    return replace(state, step=Step.DONE, prompted=None, ended_early=event.early)


def _repeat_asked(state: State, _: e.RepeatAsked, __: float) -> State:
    return replace(state, step=Step.RINSE, ended_early=False, set_up_over=frozenset())


def _finish_undone(state: State, _: e.FinishUndone, __: float) -> State:
    """Where a repeat was broken off it goes on; the reading that was not waited for is waited for again."""
    repeat = state.current
    back = replace(state, step=Step.READY if repeat is None else Step.RINSE, ended_early=False)
    if repeat is None or repeat.status != "ended":
        return back
    last = next((each for each in repeat.readings if each.portion == state.poured), None)
    waits = last is None or last.broken_off
    if state.poured == state.plan.count and not waits:
        return back
    kept = tuple(each for each in repeat.readings if not waits or each.portion != state.poured)
    back = back.with_repeat(replace(repeat, status="running", readings=kept))
    if waits:
        return replace(back, step=Step.SETTLE if state.poured else Step.START, prompted=None)
    return replace(back, step=Step.POUR, prompted=state.poured + 1)


_CHANGES: dict[type[e.Event], Callable[[State, Any, float], State]] = {
    e.PlanChosen: _plan_chosen,
    e.ProbeLost: _probe_lost,
    e.ProbeFound: _probe_found,
    e.AlkaliDipBegun: _dip_begun,
    e.AlkaliMeasured: _alkali,
    e.SetUpStepDone: _set_up_over,
    e.RepeatBegun: _repeat_begun,
    e.ProbeInUse: _in_use,
    e.PortionPrompted: _prompted,
    e.PortionAdded: _added,
    e.ReadingSettled: _settled,
    e.TemperatureRead: _temperature_read,
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
    e.FinishUndone: _finish_undone,
    e.RepeatAsked: _repeat_asked,
    **GROUP_CHANGES,
}
