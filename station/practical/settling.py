"""Asks the settle detector at each sample, and puts down what it says."""

from collections.abc import Collection, Mapping

from station.analysis.settle.detector import Outcome, Verdict, judge_start
from station.practical import events as e
from station.practical.kinds.kind import Hindsight, kind_of
from station.practical.questions import answered_by_readings, ask_about_start, ask_events
from station.practical.state import LEAVES_OUT, Repeat, State, Step
from station.words import say

STEP_C = 0.0625
U_ALKALI_C = 0.2
"""u of the alkali's temperature at the least: it stands about while it is poured."""


def hindsight_of(state: State, newest_c: Mapping[int, float], u_c: float, known: Collection[int] = ()) -> Hindsight:
    """Return what all readings of the newest repeat say together, `newest_c` (by portion) among them.

    `known`: portions that are asked about at this moment anyway.
    """
    repeat = state.repeats[-1]
    read_c = {each.portion: each.temperature_c for each in repeat.readings if each.portion not in repeat.misread}
    points = [(k, repeat.added_cm3(k), c) for k, c in sorted({**read_c, **newest_c}.items()) if c is not None]
    alkali = None if state.alkali_c is None else (state.alkali_c, max(state.alkali_u_c or 0.0, U_ALKALI_C))
    doubted = {*known, *(portion for portion, _, _ in points if repeat.unsure_volume(portion))}
    return kind_of(state.plan).hindsight(state.plan, points, u_c, alkali, doubted, state.typed)


def _answered(state: State, verdict: Verdict) -> tuple[e.Event, ...]:
    """Close questions that the readings since have answered."""
    repeat = state.repeats[-1]
    if verdict.temperature_c is None or all(code not in LEAVES_OUT for _, code in repeat.asked):
        return ()
    return answered_by_readings(repeat, hindsight_of(state, {state.poured: verdict.temperature_c}, STEP_C).answered)


def start_verdict(state: State, time_s: float) -> Verdict:
    """Judge the steady start of the running repeat."""
    own = kind_of(state.plan).start_verdict
    if own is not None:
        return own(state.plan, state, time_s)
    repeat = state.repeats[-1]
    return judge_start(
        [(each.time_s, each.temperature_c) for each in repeat.samples],
        since_s=max(repeat.begun_s, state.step_since_s),
        now_s=time_s,
        hold_s=state.plan.start_hold_s,
    )


def dip_verdict(state: State, time_s: float) -> Verdict:
    """Judge the dip into the alkali."""
    samples = [(each.time_s, each.temperature_c) for each in state.recent]
    return judge_start(samples, since_s=state.dip_since_s, now_s=time_s, hold_s=12.0, limit_s=90.0)


def portion_verdict(state: State, time_s: float) -> Verdict:
    """Judge the trace since the newest portion."""
    return kind_of(state.plan).verdict(state.plan, state, time_s)


def newest_verdict(state: State) -> Verdict | None:
    """What the detector thought at the newest sample, in the states that wait for a temperature."""
    chosen = {"alkali": dip_verdict, "start": start_verdict, "settle": portion_verdict}.get(state.step)
    told = state.step is Step.ALKALI or state.station_reads or (state.step is Step.SETTLE and _records_on(state))
    if chosen is None or not state.recent or not told:
        return None
    return chosen(state, state.recent[-1].time_s)


def alkali_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put the alkali's temperature down once the dipped probe is steady."""
    verdict = dip_verdict(state, time_s)
    if not verdict.ready or verdict.temperature_c is None:
        return ()
    return (e.AlkaliMeasured(_rounded(verdict.temperature_c), _rounded(verdict.u_c or STEP_C), "probe"),)


def start_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put the start temperature down once it is steady, and ask for the first portion."""
    if not state.station_reads:
        return ()
    verdict = start_verdict(state, time_s)
    if not verdict.ready or verdict.temperature_c is None:
        return ()
    repeat = state.repeats[-1]
    asked = ask_about_start(state, verdict.temperature_c)
    return (_reading(repeat, 0, verdict), e.PortionPrompted(repeat.repeat, 1), *asked)


def settle_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put a portion's temperature down once it has settled, and say what is next."""
    if not state.station_reads:
        return _recorded(state, time_s)
    verdict = portion_verdict(state, time_s)
    if not verdict.ready or verdict.temperature_c is None:
        return ask_events(state, kind_of(state.plan).noticed_while_settling(state.plan, state, time_s))
    asked = ask_events(state, kind_of(state.plan).noticed_in_reading(state.plan, state, verdict))
    return (_reading(state.repeats[-1], state.poured, verdict), *_answered(state, verdict), *asked, *next_events(state))


def _recorded(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Own judgement says when is read; where nothing has to settle, the plan ends the recording."""
    if not _records_on(state) or not portion_verdict(state, time_s).ready:
        return ()
    return (*reading_as_it_is(state.repeats[-1], state.poured, time_s), *next_events(state))


def _records_on(state: State) -> bool:
    """Whether recording ends by the plan, whenever the students read."""
    return not (state.typed or state.plan.settles)


def paused_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """While the practical is paused a temperature still settles; what is next waits for the resume."""
    if state.resume_to is not Step.SETTLE or _is_read(state) or not state.station_reads:
        return ()
    verdict = portion_verdict(state, time_s)
    if not verdict.ready or verdict.temperature_c is None:
        return ()
    return (_reading(state.repeats[-1], state.poured, verdict),)


def after_settled(state: State) -> tuple[e.Event, ...]:
    """What is next once the newest portion is read; nothing while it is not."""
    return next_events(state) if _is_read(state) else ()


def _is_read(state: State) -> bool:
    return any(reading.portion == state.poured for reading in state.repeats[-1].readings)


def next_events(state: State) -> tuple[e.Event, ...]:
    """What follows once the newest portion is read: the next portion, the end of the repeat, or of the practical."""
    repeat = state.repeats[-1].repeat
    if state.poured < state.plan.count:
        return (e.PortionPrompted(repeat, state.poured + 1),)
    ended = e.RepeatEnded(repeat)
    return (ended, e.PracticalEnded()) if state.complete else (ended,)


def reading_as_it_is(repeat: Repeat, portion: int, time_s: float) -> tuple[e.Event, ...]:
    """The reading of a portion that could not be waited for: its last good sample, marked unsettled."""
    if any(reading.portion == portion for reading in repeat.readings):
        return ()
    since_s = repeat.portions[portion - 1].time_s if portion else repeat.begun_s
    good = [
        each.temperature_c
        for each in repeat.samples
        if each.temperature_c is not None and since_s < each.time_s <= time_s
    ]
    by_clock = [each.temperature_c for each in repeat.clocked if repeat.begun_s + each.at_s >= since_s]
    good = by_clock or good
    last_c = good[-1] if good else None
    reason = say("reason-not-settled" if good else "reason-no-reading")
    return (e.ReadingSettled(repeat.repeat, portion, last_c, None, False, reason),)


def _reading(repeat: Repeat, portion: int, verdict: Verdict) -> e.ReadingSettled:
    # What fired by itself has settled, however sure it is (u says how well); what ran out of time has not.
    settled = verdict.outcome is Outcome.SETTLED
    return e.ReadingSettled(
        repeat.repeat,
        portion,
        None if verdict.temperature_c is None else _rounded(verdict.temperature_c),
        None if verdict.u_c is None else _rounded(verdict.u_c),
        settled,
        "" if settled else verdict.reason,
        outcome=verdict.outcome.value,
    )


def _rounded(value: float) -> float:
    # Far below anything measured; keeps the journal and its exports readable.
    return round(value, 4)
