"""Readings that people take: typed from an ordinary thermometer, or from the probe at a moment of their own choice."""

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.settling import next_events
from station.practical.state import TYPED, Repeat, State, Step

OWN = "own judgement"
"""Why a reading is what it is: the students chose its moment."""
FRESH_S = 5.0
"""How old the newest good sample may be to be read."""


def thermometer_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """Change to an ordinary thermometer, to one with other divisions, or back to the probe."""
    if act.division_c is None and not state.has_probe:
        raise ActRefused("no_probe", "This bench has no probe: say the divisions of the thermometer, 1 or 0.1 °C.")
    needs_it = not state.has_probe or state.probe == "lost" or state.thermometer_division_c is not None
    if act.division_c is not None and not needs_it and state.step is not Step.READY:
        raise ActRefused("not_now", "The probe works: finish this repeat with it.")
    return (e.ThermometerChosen(act.division_c, act.key),)


def reading_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """Put a typed temperature down: the one that is waited for, or an earlier one in its place."""
    if act.temperature_c is None:
        raise ActRefused("no_temperature", "Say the temperature in temperature_c.")
    if not state.typed:
        raise ActRefused("has_probe", "This bench reads its probe: nothing is typed.")
    if state.thermometer_division_c is None:
        raise ActRefused("no_division", "First say the divisions of the thermometer: 1 or 0.1 °C.")
    waited_for = state.step in (Step.START, Step.SETTLE)
    repeat = _repeat_of(state, act.repeat)
    newest = waited_for and repeat is state.current
    portion = act.portion if act.portion is not None else state.poured
    if newest and portion == state.poured:
        reading = _typed(state, repeat, portion, act)
        return (reading, *next_events(state))
    if not any(each.portion == portion for each in repeat.readings):
        raise ActRefused("no_such_reading", f"Portion {portion} of repeat {repeat.repeat} has no reading to correct.")
    return (_typed(state, repeat, portion, act),)


def read_now_events(state: State, act: Act, time_s: float) -> tuple[e.Event, ...]:
    """Put down what the probe says now, because the students judge it steady."""
    if not state.plan.own_judgement:
        raise ActRefused("not_now", "The station takes the readings in this practical.")
    repeat = state.running
    if repeat is None:
        raise ActRefused("not_now", "No repeat is under way.")
    if act.portion is not None and act.portion != state.poured:
        raise ActRefused("wrong_portion", f"The reading after portion {state.poured} comes next.")
    good = state.gate.good
    if good is None or good.temperature_c is None or time_s - good.time_s > FRESH_S:
        raise ActRefused("no_sample", "The probe gives no fresh reading: check its plug and try again.")
    read = e.ReadingSettled(repeat.repeat, state.poured, good.temperature_c, None, True, OWN, act.key)
    ended = next_events(state) if state.poured == state.plan.count else ()
    return (read, *ended)


def _typed(state: State, repeat: Repeat, portion: int, act: Act) -> e.ReadingSettled:
    # Half a division either way as a rectangular limit, and as much again for where the eye puts it:
    # common practice, no source.
    u_c = round((state.thermometer_division_c or 1.0) / 3.0**0.5, 4)
    return e.ReadingSettled(repeat.repeat, portion, act.temperature_c, u_c, True, TYPED, act.key)


def _repeat_of(state: State, number: int | None) -> Repeat:
    wanted = number or len(state.repeats)
    if not 1 <= wanted <= len(state.repeats):
        raise ActRefused("wrong_repeat", f"There is no repeat {wanted}.")
    return state.repeats[wanted - 1]
