"""Guessing is slow for one and for many, nobody is locked out, and only the monotonic clock counts."""

import time
from collections.abc import Iterable
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.server.door.limits import ACTS_AT_ONCE, ACTS_PER_S, Rate
from station.server.door.secrets import BURST, FORGIVEN_AFTER_S, LONGEST_WAIT_S, MOST_QUEUED_S, Slowdown


def guesses(slowdown: Slowdown, address: str, from_s: float, count: int) -> list[float]:
    """Let one address guess as soon as it may; return when each guess was looked at."""
    now_s = from_s
    looked_at: list[float] = []
    while len(looked_at) < count:
        wait_s = slowdown.admit(address, now_s)
        if wait_s == 0.0:
            slowdown.wrong(address, now_s)
            looked_at.append(now_s)
        now_s += wait_s
    return looked_at


def crowd(slowdown: Slowdown, addresses: Iterable[str], until_s: float) -> int:
    """Let all of them shout ten times a second, whatever they are told; return how many guesses were looked at."""
    looked_at = 0
    for tick in range(round(until_s * 10)):
        for address in addresses:
            if slowdown.admit(address, tick / 10) == 0.0:
                slowdown.wrong(address, tick / 10)
                looked_at += 1
    return looked_at


def test_a_thousand_guesses_from_one_address_take_more_than_eight_hours() -> None:
    at_s = guesses(Slowdown(), "a", 0.0, 1000)
    waits_s = [b - a for a, b in pairwise(at_s)]
    assert waits_s[:6] == pytest.approx([1, 2, 4, 8, 16, 30])
    assert max(waits_s) == LONGEST_WAIT_S
    assert at_s[-1] > 8 * 3600


def test_a_thousand_guesses_from_two_hundred_addresses_take_a_quarter_of_an_hour_at_least() -> None:
    looked_at = crowd(Slowdown(), [f"10.0.0.{k}" for k in range(200)], 900.0)
    assert looked_at == pytest.approx(900 + BURST, abs=2)


def test_who_shouts_is_not_looked_at_more_often_than_who_waits() -> None:
    shouting, waiting = Slowdown(), Slowdown()
    assert crowd(shouting, ["a"], 300.0) <= len([t for t in guesses(waiting, "a", 0.0, 30) if t < 300.0])


@pytest.mark.parametrize("addresses", [1, 30, 200])
def test_one_more_gets_in_however_many_are_guessing(addresses: int) -> None:
    slowdown, others = Slowdown(), [f"10.0.0.{k}" for k in range(addresses)]
    crowd(slowdown, others, 60.0)
    now_s, asked = 60.0, 0
    while (wait_s := slowdown.admit("teacher", now_s)) > 0.0:
        asked += 1
        assert now_s < 60.0 + addresses + 2.0
        until_s = now_s + wait_s
        while now_s < until_s:
            for address in others:
                if slowdown.admit(address, now_s) == 0.0:
                    slowdown.wrong(address, now_s)
            now_s += 0.1
    assert asked <= 2, "the first wait that is told is the last"


def test_being_right_is_free_and_forgives_nothing() -> None:
    slowdown = Slowdown()
    for _ in range(1000):
        assert slowdown.admit("a", 0.0) == 0.0
        slowdown.right("a")
    for _ in range(3):
        at_s = guesses(slowdown, "a", 0.0, 1)[0]
    assert slowdown.admit("a", at_s + 4.0) == 0.0
    slowdown.right("a")
    assert slowdown.admit("a", at_s + 4.0) == 0.0
    slowdown.wrong("a", at_s + 4.0)
    assert slowdown.admit("a", at_s + 4.0) == 8.0


def test_two_tries_of_one_address_are_not_looked_at_together() -> None:
    slowdown = Slowdown()
    assert slowdown.admit("a", 0.0) == 0.0
    assert [slowdown.admit("a", 0.0) > 0.0 for _ in range(1000)] == [True] * 1000
    assert slowdown.admit("b", 0.0) == 0.0


def test_wrong_tries_are_forgiven_one_a_minute() -> None:
    slowdown = Slowdown()
    last_s = guesses(slowdown, "a", 0.0, 5)[-1]
    quiet_s = last_s + 4 * FORGIVEN_AFTER_S
    assert slowdown.admit("a", quiet_s) == 0.0
    slowdown.wrong("a", quiet_s)
    assert slowdown.admit("a", quiet_s) == 2.0


def test_places_in_the_queue_cannot_be_saved_up() -> None:
    slowdown = Slowdown()
    others = [f"10.0.0.{k}" for k in range(250)]
    for address in others:
        slowdown.admit(address, 0.0)
    assert sum(slowdown.admit(address, 3600.0) == 0.0 for address in others) <= BURST


def test_the_queue_is_bounded() -> None:
    slowdown = Slowdown()
    waits_s = [slowdown.admit(f"a{k}", 0.0) for k in range(100_000)]
    assert max(waits_s) <= MOST_QUEUED_S + 2.0
    assert slowdown.admit("late", 2 * MOST_QUEUED_S) == 0.0


def test_setting_the_wall_clock_changes_nothing(monkeypatch: pytest.MonkeyPatch) -> None:
    slowdown = Slowdown()
    guesses(slowdown, "a", 0.0, 6)
    before = slowdown.admit("a", 31.0)
    for jump_s in (-31_536_000.0, 31_536_000.0):
        wall = time.time() + jump_s
        monkeypatch.setattr(time, "time", lambda wall=wall: wall)
        assert slowdown.admit("a", 31.0) == before > 0.0


@given(st.lists(st.tuples(st.sampled_from("abc"), st.floats(0.0, 100.0), st.booleans()), max_size=60))
def test_any_course_of_tries_has_finite_waits_within_their_bounds(course: list[tuple[str, float, bool]]) -> None:
    slowdown, now_s = Slowdown(), 0.0
    for address, pause_s, is_right in course:
        now_s += pause_s
        wait_s = slowdown.admit(address, now_s)
        assert 0.0 <= wait_s <= max(LONGEST_WAIT_S, MOST_QUEUED_S)
        if wait_s == 0.0:
            slowdown.right(address) if is_right else slowdown.wrong(address, now_s)
    assert slowdown.admit("a", now_s + 100.0) == 0.0


def test_acts_of_an_address_are_bounded_and_say_when_the_next_may_come() -> None:
    rate = Rate()
    waits_s = [rate.wait_s("a", 0.0) for _ in range(200)]
    assert waits_s.count(0.0) == ACTS_AT_ONCE
    assert waits_s[-1] == pytest.approx(1.0 / ACTS_PER_S)
    assert rate.wait_s("a", waits_s[-1] + 1e-9) == 0.0
    assert rate.wait_s("b", 0.0) == 0.0
    passed = sum(rate.wait_s("c", tick / 100) == 0.0 for tick in range(10_000))
    assert passed == pytest.approx(ACTS_AT_ONCE + 100 * ACTS_PER_S, abs=2)
    assert all(rate.wait_s(f"n{k}", 0.0) == 0.0 for k in range(10_000)), (
        "the memory is bounded, nobody is refused for it"
    )
