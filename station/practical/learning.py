"""What a settled reading teaches of the probe's lags and the group's habits: part of the fold, a restart knows it."""

from dataclasses import replace

from station.analysis.settle_learn import learn, learn_start
from station.practical.events import ReadingSettled
from station.practical.plan import OncePlan
from station.practical.state import Repeat, State

BEFORE_S = 10.0


def learned(state: State, repeat: Repeat, settled: ReadingSettled, time_s: float) -> State:
    """Return the state with what this settled reading taught."""
    if isinstance(state.plan, OncePlan):
        return state
    if settled.portion == 0:
        samples = [(each.time_s, each.temperature_c) for each in repeat.samples]
        lags = learn_start(samples, since_s=repeat.begun_s, until_s=time_s, lags=state.lags)
        return replace(state, lags=lags)
    before = [each.temperature_c for each in repeat.readings if each.portion == settled.portion - 1]
    if not before or before[0] is None:
        return state
    since_s = repeat.portions[settled.portion - 1].time_s
    samples = [(each.time_s, each.temperature_c) for each in repeat.samples if each.time_s >= since_s - BEFORE_S]
    lags, habits = learn(
        samples, since_s=since_s, until_s=time_s, before_c=before[0], lags=state.lags, cup=state.habits
    )
    return replace(state, lags=lags, habits=habits)
