"""The button: bounces, short taps, lost releases, a stuck contact, a nervous finger."""

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.panel.button import GUARD_S, HOLD_S, POLL_S, RELEASE_S, STUCK_S, Button, ButtonEvent, ButtonState

Closing = tuple[float, float]
"""From and to, in s, when the contact is closed."""


def polled(closed: list[Closing], until_s: float, *, poll_s: float = POLL_S, phase_s: float = 0.0) -> Button:
    return run(Button(), closed, until_s, poll_s, phase_s)[0]


def run(
    button: Button, closed: list[Closing], until_s: float, poll_s: float = POLL_S, phase_s: float = 0.0
) -> tuple[Button, list[tuple[float, ButtonEvent]]]:
    events = []
    for k in range(int(until_s / poll_s)):
        now_s = phase_s + k * poll_s
        event = button.poll(any(a <= now_s < b for a, b in closed), now_s)
        if event is not None:
            events.append((now_s, event))
    return button, events


def presses(closed: list[Closing], until_s: float, poll_s: float = POLL_S, phase_s: float = 0.0) -> int:
    return sum(e is ButtonEvent.PRESS for _, e in run(Button(), closed, until_s, poll_s, phase_s)[1])


def bouncing(at_s: float, held_s: float, bounce_s: list[float]) -> list[Closing]:
    """A press whose contact opens and closes at the given spans after closing, and again after opening."""
    edges = [0.0]
    for span_s in bounce_s:
        edges.append(edges[-1] + span_s)
    chatter = [(a, b) for a, b in list(pairwise(edges))[::2]]
    press = [(at_s + a, at_s + b) for a, b in chatter]
    settled_s = at_s + edges[-1]
    release = [(settled_s + held_s + a + 0.001, settled_s + held_s + b + 0.001) for a, b in chatter]
    return [*press, (settled_s, settled_s + held_s), *release]


BOUNCE = st.lists(st.floats(0.0002, 0.004), max_size=10)
PHASE = st.floats(0.0, POLL_S, exclude_max=True)


@pytest.mark.fault("button")
@given(BOUNCE, st.floats(0.04, 3.0), PHASE, st.sampled_from([0.02, 0.025, 0.04]))
def test_a_bouncing_press_acts_once(bounce_s: list[float], held_s: float, phase_s: float, poll_s: float) -> None:
    """Also at 25 polls a second, the slowest that is allowed, if the tap is a little longer than a poll; and without
    the guard's help."""
    closed = bouncing(0.5, held_s + 0.005, bounce_s)
    events = run(Button(guard_s=0.0), closed, 5.0, poll_s, phase_s)[1]
    assert [e for _, e in events] == [ButtonEvent.PRESS]


@given(PHASE)
def test_a_tap_of_40_ms_acts_once_also_with_late_polls(phase_s: float) -> None:
    assert presses([(0.5, 0.54)], 1.0, POLL_S, phase_s) == 1
    assert presses([(0.5, 0.54)], 1.0, POLL_S + 0.01, phase_s) == 1


@given(st.lists(st.tuples(st.floats(GUARD_S + 0.1, 4.0), st.floats(0.04, 0.5), BOUNCE), min_size=1, max_size=8), PHASE)
def test_each_of_several_presses_acts_once(taps: list[tuple[float, float, list[float]]], phase_s: float) -> None:
    closed, now_s = [], 0.5
    for wait_s, held_s, bounce_s in taps:
        closed += bouncing(now_s, held_s, bounce_s)
        now_s = closed[-1][1] + wait_s
    assert presses(closed, now_s + 1.0, POLL_S, phase_s) == len(taps)


@given(st.lists(st.booleans(), max_size=400))
def test_whatever_the_contact_does_presses_are_apart_and_begin_closed(levels: list[bool]) -> None:
    button, last_s = Button(), -GUARD_S
    for k, down in enumerate(levels):
        event = button.poll(down, k * POLL_S)
        if event is ButtonEvent.PRESS:
            assert down
            assert k * POLL_S - last_s >= GUARD_S - 1e-9
            last_s = k * POLL_S


@pytest.mark.fault("button")
def test_holding_does_not_repeat() -> None:
    assert presses([(0.5, 9.0)], 12.0) == 1


def test_a_release_that_falls_between_two_polls_only_joins_the_presses() -> None:
    """Nothing waits for an edge: the next release that lasts arms the button again."""
    assert presses([(0.5, 1.01), (1.015, 2.0), (4.0, 4.1)], 5.0) == 2


def test_a_second_press_within_the_guard_is_heard_but_does_not_act() -> None:
    _, events = run(Button(), [(0.5, 0.6), (0.9, 1.0), (2.5, 2.6)], 3.0)
    assert [e for _, e in events] == [ButtonEvent.PRESS, ButtonEvent.REPEATED, ButtonEvent.PRESS]


def test_a_shorter_guard_may_be_asked_for() -> None:
    _, events = run(Button(guard_s=0.2), [(0.5, 0.6), (0.9, 1.0)], 3.0)
    assert [e for _, e in events] == [ButtonEvent.PRESS, ButtonEvent.PRESS]


def test_a_button_that_is_down_at_the_start_was_not_pressed() -> None:
    button, events = run(Button(), [(-1.0, 2.0), (4.0, 4.1)], 5.0)
    assert [e for _, e in events] == [ButtonEvent.PRESS]
    assert events[0][0] == pytest.approx(4.0)
    assert button.state is ButtonState.UP


def test_states() -> None:
    assert Button().state is ButtonState.UNKNOWN
    assert polled([], 0.1).state is ButtonState.UP
    assert polled([(0.5, 9.0)], 1.0).state is ButtonState.DOWN


@pytest.mark.fault("button")
def test_a_stuck_button_is_named_once_and_recovers() -> None:
    button, events = run(Button(), [(0.5, 30.0)], 30.0)
    assert [e for _, e in events] == [ButtonEvent.PRESS, ButtonEvent.STUCK]
    assert events[1][0] == pytest.approx(0.5 + STUCK_S, abs=2 * POLL_S)
    states = [button.state]
    for k in range(20):
        button.poll(False, 30.0 + k * POLL_S)
    states.append(button.state)
    assert states == [ButtonState.STUCK, ButtonState.UP]
    assert button.poll(True, 31.0) is ButtonEvent.PRESS


def test_a_button_stuck_from_the_start_is_named_too() -> None:
    button, events = run(Button(), [(-1.0, 30.0)], 12.0)
    assert [e for _, e in events] == [ButtonEvent.STUCK]
    assert button.state is ButtonState.STUCK


def test_a_long_gap_between_polls_loses_no_hold_and_invents_no_press() -> None:
    button = Button()
    assert [button.poll(False, t) for t in (0.0, RELEASE_S)] == [None, None]
    assert button.poll(True, 0.5) is ButtonEvent.PRESS
    assert button.poll(True, 6.0) is None
    assert button.poll(False, 6.1) is None
    assert button.poll(False, 8.0) is None
    assert button.poll(True, 9.0) is ButtonEvent.PRESS


@given(BOUNCE, PHASE, st.floats(HOLD_S + 2 * POLL_S, STUCK_S - 2 * POLL_S))
def test_a_long_press_is_a_press_and_when_let_go_a_hold(bounce_s: list[float], phase_s: float, held_s: float) -> None:
    closed = bouncing(0.5, held_s, bounce_s)
    events = run(Button(), closed, 12.0, POLL_S, phase_s)[1]
    assert [e for _, e in events] == [ButtonEvent.PRESS, ButtonEvent.HELD]
    assert events[1][0] >= 0.5 + held_s


@pytest.mark.parametrize("held_s", [0.2, HOLD_S - 2 * POLL_S, STUCK_S + 2 * POLL_S, 60.0])
def test_what_is_shorter_or_stuck_is_no_hold(held_s: float) -> None:
    events = run(Button(), [(0.5, 0.5 + held_s)], held_s + 2.0)[1]
    assert ButtonEvent.HELD not in [e for _, e in events]


def test_a_button_that_was_down_from_the_start_was_not_held() -> None:
    assert run(Button(), [(-1.0, 7.0)], 9.0)[1] == []


def test_two_taps_with_no_poll_between_are_no_hold() -> None:
    button = Button()
    polls = [(False, 0.0), (False, RELEASE_S), (True, 0.5), (True, 6.4), (False, 6.45), (False, 6.6)]
    assert [button.poll(down, t) for down, t in polls] == [None, None, ButtonEvent.PRESS, None, None, None]
