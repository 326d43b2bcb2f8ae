"""What people read and type: temperatures from an ordinary thermometer or at their own moment, and volumes."""

from collections.abc import Sequence
from dataclasses import replace

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.by_clock import clocked_events
from station.practical.course import LEAST_CHANGE_C
from station.practical.questions import answered_by_readings, ask_about_start, ask_events, typed_again
from station.practical.settling import hindsight_of, next_events
from station.practical.state import TYPED, Repeat, State, Step
from station.words import join, say

DOUBTFUL = "doubtful"
"""The code of a refusal that the same act with `sure` overcomes."""
OWN = "own judgement"
"""Why a reading is what it is: the students chose its moment."""
FRESH_S = 5.0
"""How old the newest good sample may be to be read."""
FAR_TIMES = 3.0
"""A volume that is so many times another is far from it: twice happens, ten times is a slip. No source."""


def thermometer_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """Change to an ordinary thermometer, to one with other divisions, or back to the probe."""
    if act.division_c is None and not state.has_probe:
        raise ActRefused("no_probe", say("refusal-say-divisions"))
    needs_it = not state.has_probe or state.probe == "lost" or state.thermometer_division_c is not None
    if act.division_c is not None and not needs_it and state.step is not Step.READY:
        raise ActRefused("not_now", say("refusal-probe-works"))
    return (e.ThermometerChosen(act.division_c, act.key, act.digital and act.division_c is not None),)


def reading_events(state: State, act: Act, time_s: float) -> tuple[e.Event, ...]:
    """Put a typed temperature down: the one that is waited for, or an earlier one in its place."""
    if act.temperature_c is None:
        raise ActRefused("no_temperature", say("refusal-say-temperature"))
    if not state.typed:
        raise ActRefused("has_probe", say("refusal-nothing-typed"))
    if state.thermometer_division_c is None:
        raise ActRefused("no_division", say("refusal-say-divisions-first"))
    if state.plan.clock_s is not None:
        return clocked_events(state, _repeat_of(state, act.repeat), act, time_s)
    waited_for = state.step in (Step.START, Step.SETTLE)
    repeat = _repeat_of(state, act.repeat)
    newest = waited_for and repeat is state.current
    portion = act.portion if act.portion is not None else state.poured
    if newest and portion == state.poured:
        reading = _typed(state, repeat, portion, act)
        asked = (
            ask_about_start(state, act.temperature_c) if portion == 0 else ask_about_odd_ones(state, repeat, reading)
        )
        return (reading, *asked, *next_events(state))
    if not any(each.portion == portion for each in repeat.readings):
        words = say("refusal-no-reading-to-correct", portion=portion, repeat=repeat.repeat)
        raise ActRefused("no_such_reading", words)
    reading = _typed(state, repeat, portion, act)
    closed = typed_again(repeat, portion)
    asked = ask_about_odd_ones(state, repeat, reading, closed) if repeat is state.current and repeat.counts else ()
    return (reading, *closed, *asked)


def ask_about_odd_ones(
    state: State, repeat: Repeat, newest: e.ReadingSettled, closed: Sequence[e.QuestionAnswered] = ()
) -> tuple[e.Event, ...]:
    """Return the questions about what does not fit in the typed readings, once this one is among them."""
    if newest.temperature_c is None:
        return ()
    seen = hindsight_of(state, {newest.portion: newest.temperature_c}, newest.u_c or 0.1)
    over = {(each.portion, each.code) for each in closed}
    waits = replace(repeat, asked=tuple(each for each in repeat.asked if each not in over))
    return (*answered_by_readings(waits, seen.answered), *ask_events(state, seen.noticed, closed))


def read_now_events(state: State, act: Act, time_s: float) -> tuple[e.Event, ...]:
    """Put down what the probe says now, because the students judge it steady."""
    if not state.plan.own_judgement:
        raise ActRefused("not_now", say("refusal-station-reads"))
    repeat = state.running
    if repeat is None:
        raise ActRefused("not_now", say("refusal-no-repeat-under-way"))
    if act.portion is not None and act.portion != state.poured:
        raise ActRefused("wrong_portion", say("refusal-reading-comes-next", portion=state.poured))
    good = state.gate.good
    if good is None or good.temperature_c is None or time_s - good.time_s > FRESH_S:
        raise ActRefused("no_sample", say("refusal-no-fresh-reading"))
    read = e.ReadingSettled(repeat.repeat, state.poured, good.temperature_c, None, True, OWN, act.key)
    # Where nothing has to settle it is recorded to the end, whenever somebody reads.
    ended = next_events(state) if state.poured == state.plan.count and state.plan.settles else ()
    return (read, *ended)


def sure_volume_cm3(state: State, repeat: Repeat, portion: int, act: Act) -> float:
    """Return the volume that was typed for a portion.

    Raises ActRefused where there is none; and where it is far from the planned one and from the repeat's other
    portions, until the person says that it is right.
    """
    typed_cm3 = act.volume_cm3
    if typed_cm3 is None:
        raise ActRefused("no_volume", say("refusal-say-volume"))
    planned_cm3 = state.plan.of_cup(repeat.cup).portion_cm3
    usual_cm3 = [planned_cm3, *(each.volume_cm3 for each in repeat.portions if each.portion != portion)]
    near = any(each / FAR_TIMES <= typed_cm3 <= each * FAR_TIMES for each in usual_cm3)
    if not near and not act.sure:
        far = say("refusal-far-from-planned", typed_cm3=f"{typed_cm3:g}", planned_cm3=f"{planned_cm3:g}")
        raise ActRefused(DOUBTFUL, join([far, say("advice-check-press-again")]))
    return typed_cm3


def check_own_volume(state: State, act: Act) -> None:
    """Raise ActRefused where the own end-point is not among the volumes added, until the person says it is right."""
    most_cm3 = max((each.total_cm3 for each in state.counted), default=0.0)
    read_cm3 = act.end_point_cm3
    if read_cm3 is not None and not 0.0 < read_cm3 <= most_cm3 and not act.sure:
        outside = say("refusal-not-among-volumes", volume_cm3=f"{read_cm3:g}", most_cm3=f"{most_cm3:g}")
        raise ActRefused(DOUBTFUL, join([outside, say("advice-check-press-again")]))


def check_own_change(state: State, act: Act) -> None:
    """Raise ActRefused where the sign of the own change is against the curve, until the person says it is right."""
    changes_c = [_change_c(each) for each in state.counted]
    known_c = [each for each in changes_c if each is not None and abs(each) >= LEAST_CHANGE_C]
    if act.change_c is None or act.sure or not known_c:
        return
    if all(each * act.change_c < 0.0 for each in known_c):
        way = say("refusal-change-sign", change_c=f"{act.change_c:+g}", way="warmer" if known_c[0] > 0 else "colder")
        raise ActRefused(DOUBTFUL, join([way, say("advice-check-press-again")]))


def _change_c(repeat: Repeat) -> float | None:
    """From the start to the last temperature put down."""
    read = sorted((each.portion, each.temperature_c) for each in repeat.readings if each.temperature_c is not None)
    return read[-1][1] - read[0][1] if len(read) > 1 else None


def sure_mass_g(state: State, act: Act) -> float:
    """Return the mass that was typed. Raises ActRefused where nothing is weighed, and for one far from the plan's."""
    planned_g, typed_g = state.plan.portion_g, act.mass_g or 0.0
    if planned_g is None:
        raise ActRefused("no_mass", say("refusal-nothing-weighed"))
    if not planned_g / FAR_TIMES <= typed_g <= planned_g * FAR_TIMES and not act.sure:
        far = say("refusal-far-from-planned-mass", typed_g=f"{typed_g:g}", planned_g=f"{planned_g:g}")
        raise ActRefused(DOUBTFUL, join([far, say("advice-check-press-again")]))
    return typed_g


def _typed(state: State, repeat: Repeat, portion: int, act: Act) -> e.ReadingSettled:
    # Half a division either way as a rectangular limit, and as much again for where the eye puts it; of a digital
    # thermometer one digit either way: common practice, no source.
    u_c = round((state.thermometer_division_c or 1.0) / 3.0**0.5, 4)
    return e.ReadingSettled(repeat.repeat, portion, act.temperature_c, u_c, True, TYPED, act.key)


def _repeat_of(state: State, number: int | None) -> Repeat:
    wanted = number or len(state.repeats)
    if not 1 <= wanted <= len(state.repeats):
        raise ActRefused("wrong_repeat", say("refusal-no-repeat", repeat=wanted))
    return state.repeats[wanted - 1]
