"""An ordinary thermometer read by the clock: one temperature every so many seconds, before and after all is in.

Each reading belongs to a mark of the clock, which counts from the start of the repeat; the same mark again corrects it.
"""

from typing import Final

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.kinds.kind import kind_of
from station.practical.questions import ask_about_start
from station.practical.settling import next_events
from station.practical.state import TYPED, Clocked, Repeat, State, Step
from station.words import say

LEAST_BEFORE: Final = 4
"""Readings before something is added: enough for a line, and for one slip among them."""
AHEAD_S: Final = 5.0
"""Somebody looks at the thermometer a little before the mark."""
DIVISION_C: Final = 1.0
"""Of a thermometer that nobody told of."""


def mark_s(state: State, repeat: Repeat, time_s: float) -> float:
    """Return the mark, in seconds since the repeat's start, that a reading typed now belongs to."""
    every_s = state.plan.clock_s or 1.0
    return max(time_s - repeat.begun_s + AHEAD_S, 0.0) // every_s * every_s


def next_mark_s(state: State, repeat: Repeat, time_s: float) -> float:
    """Return the mark to read at next: the newest one, until something was typed for it."""
    newest_s = mark_s(state, repeat, time_s)
    done = any(each.at_s >= newest_s for each in repeat.clocked)
    return newest_s + (state.plan.clock_s or 1.0) if done else newest_s


def clocked_events(state: State, repeat: Repeat, act: Act, time_s: float) -> tuple[e.Event, ...]:
    """Put a reading of the clock down, and what follows from it. Raises ActRefused for a time that is still to come."""
    assert act.temperature_c is not None  # noqa: S101 - looked at before
    under_way = repeat is state.running
    at_s = act.at_s if act.at_s is not None else mark_s(state, repeat, time_s)
    known = any(each.at_s == at_s for each in repeat.clocked)
    if not known and not under_way:
        raise ActRefused(
            "no_such_reading", say("refusal-no-reading-at", minutes=in_minutes(at_s), repeat=repeat.repeat)
        )
    if at_s > time_s - repeat.begun_s + AHEAD_S and not known:
        raise ActRefused("too_early", say("refusal-time-to-come", minutes=in_minutes(at_s)))
    division_c = state.thermometer_division_c or DIVISION_C
    read = e.TemperatureRead(repeat.repeat, at_s, act.temperature_c, division_c, act.key)
    others = [each for each in repeat.clocked if each.at_s != at_s]
    course = sorted([*others, Clocked(at_s, act.temperature_c, division_c)], key=lambda each: each.at_s)
    if state.step is Step.START and under_way:
        return (read, *_started(state, repeat, course))
    if state.step is Step.SETTLE and under_way:
        return (read, *_ended(state, repeat, course))
    return (read, *_corrected(state, repeat, course, at_s))


def in_minutes(at_s: float) -> str:
    """Write seconds as a clock shows them: 1:30."""
    return f"{int(at_s) // 60}:{int(at_s) % 60:02d}"


def _started(state: State, repeat: Repeat, course: list[Clocked]) -> tuple[e.Event, ...]:
    """Once there is enough before, the newest temperature is the start's, and it is time to add."""
    newest = course[-1]
    if len(course) < LEAST_BEFORE or newest.at_s < state.plan.start_hold_s:
        return ()
    start = _settled(repeat, 0, newest)
    return (start, e.PortionPrompted(repeat.repeat, 1), *ask_about_start(state, newest.temperature_c))


def _ended(state: State, repeat: Repeat, course: list[Clocked]) -> tuple[e.Event, ...]:
    newest, (_, work_s) = course[-1], state.plan.work
    mixed_s = repeat.portions[-1].time_s - repeat.begun_s
    every_s = state.plan.clock_s or 1.0
    if newest.at_s < mixed_s + work_s - state.plan.start_hold_s - 0.5 * every_s:
        return ()
    return (_settled(repeat, state.poured, _read(state, repeat, course)), *next_events(state))


def _corrected(state: State, repeat: Repeat, course: list[Clocked], at_s: float) -> tuple[e.Event, ...]:
    """The temperature that counts of a repeat stands among its readings too."""
    known = next((each for each in repeat.readings if each.portion == state.plan.count), None)
    if known is None:
        return ()
    read = _read(state, repeat, course)
    same = read.at_s != at_s and read.temperature_c == known.temperature_c
    return () if same else (_settled(repeat, state.plan.count, read),)


def _read(state: State, repeat: Repeat, course: list[Clocked]) -> Clocked:
    """The temperature that counts of those since all is in: the newest, unless the kind takes another."""
    mixed_s = repeat.portions[-1].time_s - repeat.begun_s
    return kind_of(state.plan).clocked_reading([each for each in course if each.at_s >= mixed_s] or course[-1:])


def _settled(repeat: Repeat, portion: int, read: Clocked) -> e.ReadingSettled:
    # Half a division either way, twice: for the scale and for the eye (`typed.py`).
    return e.ReadingSettled(
        repeat.repeat, portion, read.temperature_c, round(read.division_c / 3.0**0.5, 4), True, TYPED
    )
