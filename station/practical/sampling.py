"""What a sample leads to before anybody looks at the curve: the gate, and probe lost or found."""

from dataclasses import replace

from station.practical import events as e
from station.practical.fold import fold
from station.practical.gate import judge_sample
from station.practical.state import State

LOST_AFTER = 3
"""Bad samples in a row that mean a lost probe: a kernel removes a pulled probe from its tree only much later."""


def sample_events(state: State, taken: e.SampleTaken, time_s: float) -> tuple[tuple[e.Event, ...], State]:
    """Return the events of this sample after the gate, and the state once they are folded in."""
    sample = _gated(state, taken, time_s)
    events: tuple[e.Event, ...] = (sample,)
    if sample.bad is None and state.probe == "lost":
        events = (sample, e.ProbeFound())
    elif sample.bad is not None and state.bad_in_a_row + 1 == LOST_AFTER:
        events = (sample, e.ProbeLost(sample.bad))
    after = state
    for event in events:
        after = fold(after, e.Stamped(0, "", 0.0, time_s, "", "", event))
    return events, after


def _gated(state: State, taken: e.SampleTaken, time_s: float) -> e.SampleTaken:
    if taken.temperature_c is None:
        return taken
    bad, _ = judge_sample(state.gate, time_s, taken.temperature_c, of_check=state.probes.check is not None)
    if bad is None:
        return taken
    return replace(taken, temperature_c=None, bad=bad, rejected_c=taken.temperature_c)
