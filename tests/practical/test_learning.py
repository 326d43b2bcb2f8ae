"""What portions teach of probe and cup, whether they were waited for or not."""

from station.analysis.settle.lags import STEEL_TUBE, CupHabits, ProbeLags
from station.practical.gate import learned_from_portion
from station.practical.state import Portion, Reading, Repeat, Sample, State, Step
from tests.practical.walk import chosen

SLOW = ProbeLags(7.0, 22.0, 0.5)


def probe_c(time_s: float) -> float:
    """A cup at 21 °C that gains 1.2 °C at 100 s and again at 150 s, seen by a slow probe."""
    return 21.0 + sum(1.2 * (1.0 - SLOW.left(time_s - pour_s)) for pour_s in (100.0, 150.0) if time_s > pour_s)


def cut_short(*, settled: bool, jump_c: float = 0.0) -> State:
    """The portion of 100 s was followed by the next at 150 s; `jump_c` is added in the last ten seconds."""
    shown = ((float(t), probe_c(float(t)) + (jump_c if t >= 140 else 0.0)) for t in range(60, 150))
    samples = tuple(Sample(t, round(c * 16) / 16) for t, c in shown)
    readings = (
        Reading(0, 21.0, 0.03, True, "", 90.0),
        Reading(1, 22.0, None, settled, "", 134.0 if settled else 150.0),
    )
    repeat = Repeat(1, 0.0, portions=(Portion(1, 101.0, 3.0),), readings=readings, samples=samples)
    return State(plan=chosen(), step=Step.SETTLE, repeats=(repeat,), habits=CupHabits(rest_c=21.0))


def test_a_portion_that_was_not_waited_for_teaches_too() -> None:
    lags = learned_from_portion(cut_short(settled=False), 150.0).lags
    assert abs(lags.left(30.0) - SLOW.left(30.0)) < abs(STEEL_TUBE.left(30.0) - SLOW.left(30.0))
    assert lags == learned_from_portion(cut_short(settled=True), 150.0).lags


def test_what_may_belong_to_the_next_pour_teaches_nothing() -> None:
    honest, jumped = cut_short(settled=False), cut_short(settled=False, jump_c=1.0)
    assert learned_from_portion(jumped, 150.0).lags == learned_from_portion(honest, 150.0).lags


def test_without_a_reading_nothing_is_learned() -> None:
    state = cut_short(settled=True)
    bare = State(plan=state.plan, step=Step.SETTLE, repeats=(Repeat(1, 0.0, portions=state.repeats[-1].portions),))
    assert learned_from_portion(bare, 150.0) == bare
