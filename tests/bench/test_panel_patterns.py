"""What the panel shows: told apart without colour, and never more than three flashes a second."""

from itertools import combinations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.panel.signals import ALL_LIT, DARK, PATTERNS, FlashLimiter, Lamps, Signal, lamps

STEP_S = 0.01


def rhythm(signal: Signal) -> tuple[float, tuple[tuple[bool, float], ...]]:
    """The signal as one grey lamp: how long it is lit and dark, in turn, over one period, from a flash's start."""
    period_s = PATTERNS[signal].period_s
    lit = [any(lamps(signal, k * STEP_S)) for k in range(round(period_s / STEP_S))]
    runs: list[tuple[bool, float]] = []
    for on in lit:
        runs[-1:] = [(on, runs[-1][1] + STEP_S)] if runs and runs[-1][0] == on else [*runs[-1:], (on, STEP_S)]
    if len(runs) == 1:
        return 0.0, tuple((on, 0.0) for on, _ in runs)  # steady: no period to tell
    return period_s, tuple((on, round(length_s, 2)) for on, length_s in runs)


def test_every_signal_has_a_pattern() -> None:
    assert set(PATTERNS) == set(Signal)


@pytest.mark.fault("access-for-all")
@pytest.mark.parametrize(("one", "other"), list(combinations(Signal, 2)))
def test_two_signals_differ_without_colour_or_place(one: Signal, other: Signal) -> None:
    """WCAG 2.2, 1.4.1: colour is not the only means of telling."""
    assert rhythm(one) != rhythm(other)


def test_the_table_is_what_hardware_promises() -> None:
    assert rhythm(Signal.ADD) == (1.0, ((True, 0.5), (False, 0.5)))
    assert rhythm(Signal.RINSE) == (2.0, ((True, 0.25), (False, 0.25), (True, 0.25), (False, 1.25)))
    assert rhythm(Signal.DONE) == (0.0, ((True, 0.0),))
    assert rhythm(Signal.OFF) == (0.0, ((False, 0.0),))


@pytest.mark.parametrize("signal", Signal)
def test_one_lamp_at_a_time_so_that_all_three_means_heard(signal: Signal) -> None:
    assert all(sum(lamps(signal, k * STEP_S)) <= 1 for k in range(400))


@pytest.mark.parametrize("signal", [s for s in Signal if s is not Signal.OFF])
def test_a_new_signal_is_lit_at_once(signal: Signal) -> None:
    assert any(lamps(signal, 0.0))
    assert lamps(signal, -1.0) == lamps(signal, 0.0)


@pytest.mark.parametrize("signal", Signal)
def test_no_pattern_is_touched_by_the_flash_limit(signal: Signal) -> None:
    limiter = FlashLimiter()
    for k in range(1000):
        wanted = lamps(signal, k * STEP_S)
        assert limiter.admit(wanted, k * STEP_S) == wanted


ANY_LAMPS = st.builds(Lamps, st.booleans(), st.booleans(), st.booleans())


@given(st.lists(st.tuples(st.floats(0.0, 0.5), ANY_LAMPS), max_size=200))
def test_never_more_than_three_flashes_in_a_second_whatever_is_asked(asked: list[tuple[float, Lamps]]) -> None:
    """WCAG 2.2, 2.3.1: no more than three flashes in any one second period."""
    limiter, now_s, before = FlashLimiter(), 0.0, DARK
    came_on_s: list[float] = []
    for wait_s, wanted in asked:
        now_s += wait_s
        lit = limiter.admit(wanted, now_s)
        assert all(may or not on for may, on in zip(wanted, lit, strict=True)), "a lamp nobody asked for"
        if any(new and not old for new, old in zip(lit, before, strict=True)):
            came_on_s.append(now_s)
        before = lit
    for first_s in came_on_s:
        assert sum(first_s <= other_s < first_s + 1.0 for other_s in came_on_s) <= 3


def test_a_lamp_asked_for_too_soon_comes_on_when_it_may() -> None:
    limiter = FlashLimiter()
    assert limiter.admit(Lamps(wait=True), 0.0) == Lamps(wait=True)
    assert limiter.admit(ALL_LIT, 0.1) == Lamps(wait=True)
    assert limiter.admit(ALL_LIT, 0.4) == ALL_LIT
    assert limiter.admit(DARK, 0.41) == DARK
