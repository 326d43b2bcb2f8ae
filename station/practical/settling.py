"""Asks the settle detector at each sample, and puts down what it says."""

from station.analysis.settle import Verdict, judge, judge_start
from station.practical import events as e
from station.practical.noticing import expected_change_c, noticed_in_reading, noticed_while_settling
from station.practical.plan import OncePlan
from station.practical.questions import ask_events
from station.practical.state import Repeat, State, Step

BEFORE_S = 10.0
"""How much of the trace before the press the detector sees: a pour may come some seconds before its press."""
STEP_C = 0.0625
START_HOLD_S = 30.0


def start_verdict(state: State, time_s: float) -> Verdict:
    """Judge the steady start of the running repeat; before one mixing it is recorded for longer."""
    repeat = state.repeats[-1]
    hold_s = state.plan.timing.before_s if isinstance(state.plan, OncePlan) else START_HOLD_S
    return judge_start(
        [(each.time_s, each.temperature_c) for each in repeat.samples],
        since_s=max(repeat.begun_s, state.step_since_s),
        now_s=time_s,
        hold_s=hold_s,
    )


def dip_verdict(state: State, time_s: float) -> Verdict:
    """Judge the dip into the alkali."""
    samples = [(each.time_s, each.temperature_c) for each in state.recent]
    return judge_start(samples, since_s=state.dip_since_s, now_s=time_s, hold_s=12.0, limit_s=90.0)


def portion_verdict(state: State, time_s: float) -> Verdict:
    """Judge the trace since the newest portion."""
    repeat = state.repeats[-1]
    since_s = repeat.portions[-1].time_s
    if isinstance(state.plan, OncePlan):
        return _after_mixing(repeat, since_s, time_s, state.plan.timing.after_s)
    before = [reading.temperature_c for reading in repeat.readings if reading.portion == state.poured - 1]
    return judge(
        [(each.time_s, each.temperature_c) for each in repeat.samples if each.time_s >= since_s - BEFORE_S],
        since_s=since_s,
        now_s=time_s,
        before_c=before[0] if before else None,
        expected_change_c=expected_change_c(state),
        lags=state.lags,
        cup=state.habits,
        step_c=STEP_C,
        pace=state.plan.pace,
    )


def _after_mixing(repeat: Repeat, since_s: float, time_s: float, after_s: float) -> Verdict:
    """After one mixing nothing has to settle: the record goes on for so long, then the newest reading counts."""
    good = [each.temperature_c for each in repeat.samples if each.temperature_c is not None and each.time_s > since_s]
    left_s = max(since_s + after_s - time_s, 0.0)
    last_c = good[-1] if good else None
    return Verdict(left_s == 0.0 and bool(good), last_c, STEP_C, None, left_s, 1.0 if good else 0.0, "recorded")


def verdict_now(state: State, time_s: float) -> Verdict | None:
    """What the detector thinks now, in the states that wait for a temperature."""
    if state.step is not Step.ALKALI and not state.station_reads:
        return None
    chosen = {"alkali": dip_verdict, "start": start_verdict, "settle": portion_verdict}.get(state.step)
    return chosen(state, time_s) if chosen else None


def alkali_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put the alkali's temperature down once the dipped probe is steady."""
    verdict = dip_verdict(state, time_s)
    if not verdict.settled or verdict.temperature_c is None:
        return ()
    return (e.AlkaliMeasured(_rounded(verdict.temperature_c), _rounded(verdict.u_c or STEP_C), "probe"),)


def start_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put the start temperature down once it is steady, and ask for the first portion."""
    if not state.station_reads:
        return ()
    verdict = start_verdict(state, time_s)
    if not verdict.settled or verdict.temperature_c is None:
        return ()
    repeat = state.repeats[-1]
    return (_reading(repeat, 0, verdict), e.PortionPrompted(repeat.repeat, 1))


def settle_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """Put a portion's temperature down once it has settled, and say what is next."""
    if not state.station_reads:
        return ()
    verdict = portion_verdict(state, time_s)
    if not verdict.settled or verdict.temperature_c is None:
        return ask_events(state, noticed_while_settling(state, time_s))
    asked = ask_events(state, noticed_in_reading(state, verdict))
    return (_reading(state.repeats[-1], state.poured, verdict), *asked, *next_events(state))


def paused_events(state: State, time_s: float) -> tuple[e.Event, ...]:
    """While the practical is paused a temperature still settles; what is next waits for the resume."""
    if state.resume_to is not Step.SETTLE or _is_read(state) or not state.station_reads:
        return ()
    verdict = portion_verdict(state, time_s)
    if not verdict.settled or verdict.temperature_c is None:
        return ()
    return (_reading(state.repeats[-1], state.poured, verdict),)


def after_reading(state: State) -> tuple[e.Event, ...]:
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
    return (ended,) if len(state.counted) < state.plan.repeats else (ended, e.PracticalEnded())


def reading_as_it_is(repeat: Repeat, portion: int, time_s: float) -> tuple[e.Event, ...]:
    """The reading of a portion that could not be waited for: its last good sample, marked unsettled."""
    if any(reading.portion == portion for reading in repeat.readings):
        return ()
    since_s = repeat.portions[portion - 1].time_s if portion else repeat.begun_s
    good = [each for each in repeat.samples if each.temperature_c is not None and since_s < each.time_s <= time_s]
    last_c = good[-1].temperature_c if good else None
    reason = "read before it had settled" if good else "no reading from the probe"
    return (e.ReadingSettled(repeat.repeat, portion, last_c, None, False, reason),)


def _reading(repeat: Repeat, portion: int, verdict: Verdict) -> e.ReadingSettled:
    # What fired by itself has settled, however sure it is (u says how well); what ran out of time has not.
    settled = not verdict.reason.startswith(("time is up", "still drifting"))
    return e.ReadingSettled(
        repeat.repeat,
        portion,
        None if verdict.temperature_c is None else _rounded(verdict.temperature_c),
        None if verdict.u_c is None else _rounded(verdict.u_c),
        settled,
        "" if settled else verdict.reason,
    )


def _rounded(value: float) -> float:
    # Far below anything measured; keeps the journal and its exports readable.
    return round(value, 4)
