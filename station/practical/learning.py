"""What settled readings teach of the probe's lags and the group's habits: part of the fold, so a restart knows it."""

from dataclasses import replace

from station.analysis.settle_lags import CupHabits
from station.analysis.settle_learn import learn, learn_start
from station.practical.plan import OncePlan
from station.practical.state import Reading, Repeat, State

BEFORE_S = 10.0
NEXT_POUR_S = 15.0
"""How long before a press its pour may have begun: that part of the trace belongs to no portion for sure."""


def learned_at_start(state: State) -> State:
    """Return the state with what the newest repeat's settled start taught."""
    repeat = state.repeats[-1]
    start = _reading(repeat, 0)
    if isinstance(state.plan, OncePlan) or start is None:
        return state
    samples = [(each.time_s, each.temperature_c) for each in repeat.samples]
    lags = learn_start(samples, since_s=repeat.begun_s, until_s=start.time_s, lags=state.lags)
    first = len(state.counted) <= 1
    habits = CupHabits(rest_c=start.temperature_c) if first else replace(state.habits, rest_c=start.temperature_c)
    return replace(state, lags=lags, habits=habits)


def learned_from_portion(state: State, press_s: float) -> State:
    """Return the state with what the newest portion taught, now that the next one is pressed at `press_s`.

    A portion that was not waited for teaches too, by as much as is surely its own.
    """
    repeat = state.repeats[-1]
    if isinstance(state.plan, OncePlan) or not repeat.portions:
        return state
    portion = repeat.portions[-1]
    before, after = _reading(repeat, portion.portion - 1), _reading(repeat, portion.portion)
    if after is None:
        return state
    own_s = press_s - NEXT_POUR_S
    samples = [(each.time_s, each.temperature_c) for each in repeat.samples if each.time_s >= portion.time_s - BEFORE_S]
    lags, habits = learn(
        samples,
        since_s=portion.time_s,
        until_s=max(after.time_s, own_s) if after.settled else own_s,
        before_c=None if before is None else before.temperature_c,
        lags=state.lags,
        cup=state.habits,
    )
    return replace(state, lags=lags, habits=habits)


def _reading(repeat: Repeat, portion: int) -> Reading | None:
    return next((each for each in repeat.readings if each.portion == portion), None)
