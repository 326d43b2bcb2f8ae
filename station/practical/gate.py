"""Which readings a practical believes: range and rate. The reader knows nothing of this.

A wet probe in a cup stays between −5 and 60 °C. A steel-sheathed probe plunged from air into water was seen
to move at 2.6 °C/s at most; 3 °C/s on top of 1 °C is beyond what a pour can do. A jump is believed once a
second fresh conversion agrees with it: a probe that was put back may truly be elsewhere, while a power-on
leftover is gone by the next conversion.
"""

from dataclasses import replace

from station.analysis.settle.lags import CupHabits, learn, learn_start
from station.practical.state import Gate, Reading, Repeat, Sample, State

# What settled readings teach of the probe's lags and the group's habits: part of the fold, so a restart knows it.


BEFORE_S = 10.0
NEXT_POUR_S = 15.0
"""How long before a press its pour may have begun: that part of the trace belongs to no portion for sure."""


def learned_at_start(state: State) -> State:
    """Return the state with what the newest repeat's settled start taught."""
    repeat = state.repeats[-1]
    start = _reading(repeat, 0)
    if not state.plan.settles or start is None:
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
    if not state.plan.settles or not repeat.portions:
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


LOWEST_C, HIGHEST_C = -5.0, 60.0
STEP_C, RATE_C_S = 1.0, 3.0
CHECK_HIGHEST_C, CHECK_RATE_C_S = 110.0, 30.0
"""While a probe is checked: boiling water, and a bare probe that is plunged into it."""
GAP_S = 5.0


def judge_sample(gate: Gate, time_s: float, temperature_c: float, *, of_check: bool = False) -> tuple[str | None, Gate]:
    """Return the kind of fault (None when believed) and what the gate remembers next.

    `temperature_c` is what the probe said; `of_check` says that the probe is being checked. The very first reading
    is believed; after a gap of more than 5 s the first one counts as a jump until the next agrees with it.
    """
    if not LOWEST_C <= temperature_c <= (CHECK_HIGHEST_C if of_check else HIGHEST_C):
        return "out_of_range", gate
    sample = Sample(time_s, temperature_c)
    if gate == Gate():
        return None, Gate(good=sample)
    for known in (gate.good, gate.candidate):
        if known is not None and _reachable(known, sample, CHECK_RATE_C_S if of_check else RATE_C_S):
            return None, Gate(good=sample)
    return "jump", replace(gate, candidate=sample)


def _reachable(known: Sample, sample: Sample, rate_c_s: float) -> bool:
    passed_s = sample.time_s - known.time_s
    if passed_s > GAP_S or known.said_c is None or sample.said_c is None:
        return False
    return abs(sample.said_c - known.said_c) <= STEP_C + rate_c_s * max(passed_s, 0.0)
