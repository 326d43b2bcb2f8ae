"""How long the class takes for each step, and how far it has come: what one bench is held against."""

from collections import deque
from collections.abc import Iterable
from dataclasses import dataclass, field
from statistics import median

from station.practical.state import State, Step

REMEMBERED = 300
ENOUGH = 5
USUAL_S = {Step.START: 60.0, Step.POUR: 20.0, Step.SETTLE: 50.0, Step.RINSE: 90.0}
"""Before the class has shown it: engineering judgement, no source."""


@dataclass
class Pace:
    """The newest durations of each step over all benches, in bench seconds."""

    _lasted_s: dict[Step, deque[float]] = field(default_factory=dict)

    def learn(self, before: State, after: State, time_s: float) -> None:
        """Take note of a step that ended at this bench time."""
        if after.step is before.step or before.step not in USUAL_S or after.step is Step.PAUSED:
            return
        lasted = self._lasted_s.setdefault(before.step, deque(maxlen=REMEMBERED))
        lasted.append(max(0.0, time_s - before.step_since_s))

    def usual_s(self, step: Step) -> float | None:
        """Return how long this step usually takes, in s; None where nothing is usual."""
        known = self._lasted_s.get(step, ())
        return median(known) if len(known) >= ENOUGH else USUAL_S.get(step)


def portions_done(state: State) -> int:
    """Return how many portions of the whole practical are in; all of them once it is done."""
    planned = state.plan.repeats * state.plan.count
    if state.step is Step.DONE:
        return planned
    counted = [repeat for repeat in state.repeats if repeat.counts]
    return min(planned, sum(min(len(repeat.portions), state.plan.count) for repeat in counted))


def usual_progress(shares: Iterable[float]) -> float:
    """Return the class's progress: the median of the benches' shares of their practicals; 0 without any."""
    known = list(shares)
    return median(known) if known else 0.0
