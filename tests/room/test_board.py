"""The board: what a glance must tell of each bench, truth in time, and a strip in which nobody overtakes anybody."""

from dataclasses import replace
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.virtual.student import Habits
from station.practical import events as e
from station.room.board import ENOUGH, Board, Heard
from station.room.contract import Tile
from station.room.needs import Strip
from tests.room.lesson_in_jumps import SHORT, events_of, until

DOUBLED = Habits(doubled=frozenset({(1, 3)}))


def tile_of(events: tuple[e.Stamped, ...], **around: Any) -> Tile:
    board = Board()
    board.take("bench-1", "a", events)
    heard = {"bench-1": Heard(21.5, around.get("age_s", 0.4))}
    return board.tiles(0.0, heard, around.get("troubles", {}))["bench-1"]


def codes(tile: Tile) -> list[str]:
    return [each["code"] for each in tile["reasons"]]


def lost(events: tuple[e.Stamped, ...]) -> tuple[e.Stamped, ...]:
    last = events[-1]
    bad = [replace(last, seq=last.seq + n, time_s=last.time_s + n, event=e.SampleTaken(None, "empty")) for n in (1, 2)]
    return (*events, *bad, replace(last, seq=last.seq + 3, time_s=last.time_s + 3, event=e.ProbeLost("empty")))


def test_a_tile_says_where_a_bench_stands_and_nothing_of_results() -> None:
    tile = tile_of(until(events_of(1), 200.0))
    assert (tile["state"], tile["repeat"], tile["repeats_planned"]) == ("settle", 1, 1)
    assert 1 <= tile["portion"] < 10
    assert tile["portions_planned"] == 10
    assert (tile["temperature_c"], tile["age_s"], tile["need"], tile["reasons"]) == (21.5, 0.4, 0, [])
    assert tile["progress"] == pytest.approx(tile["portion"] / 10)
    done = tile_of(events_of(1))
    assert (done["state"], done["progress"], done["need"]) == ("done", 1.0, 0)
    assert not any("end_point" in name or name == "result" for name in done)


def test_a_lost_probe_needs_help_and_a_silent_bench_too() -> None:
    under_way = until(events_of(1), 200.0)
    assert codes(tile_of(lost(under_way))) == ["probe_lost"]
    assert tile_of(lost(under_way))["need"] == 3
    silent = tile_of(under_way, age_s=31.0)
    assert (codes(silent), silent["need"], silent["reasons"][0]["seconds"]) == (["silent"], 3, 31)
    assert tile_of(events_of(1), age_s=500.0)["need"] == 0, "who is done may switch off"


def test_an_open_question_is_to_be_looked_at() -> None:
    events = events_of(3, DOUBLED)
    asked = next(each for each in events if isinstance(each.event, e.QuestionAsked))
    tile = tile_of(until(events, asked.time_s))
    assert "question" in codes(tile)
    assert tile["need"] == 2
    assert tile["questions"][0]["text"].startswith("A big change: was portion 3")


def further(events: tuple[e.Stamped, ...], *more: e.Event) -> tuple[e.Stamped, ...]:
    last = events[-1]
    return (*events, *(replace(last, seq=last.seq + n, event=each) for n, each in enumerate(more, 1)))


def test_a_repeat_set_aside_is_told_as_that_and_can_count_again() -> None:
    aside = further(events_of(1), e.RepeatSetAside(1, "the lid was off"))
    tile = tile_of(aside)
    (reason,) = tile["reasons"]
    assert (reason["code"], reason["count"], reason["text"]) == ("set_aside", 1, "the lid was off")
    assert tile["repeats"] == [{"repeat": 1, "status": "set aside", "restorable": True}]
    again = tile_of(further(aside, e.RepeatRestored(1)))
    assert (again["reasons"], again["repeats"][0]["status"]) == ([], "ended")


def test_a_repeat_started_again_is_the_same_of_the_planned_ones() -> None:
    aside = further(until(events_of(1), 200.0), e.RepeatSetAside(1, "spilled"))
    for events in (aside, further(aside, e.RepeatBegun(2))):
        tile = tile_of(events)
        assert (tile["repeat"], tile["repeats_planned"], tile["portion"]) == (1, 1, 0)


def test_a_pause_of_the_teachers_own_is_nothing_to_look_at() -> None:
    for by, need in ((None, 2), ("teacher", 1)):
        paused = further(until(events_of(1), 200.0), e.Paused(by=by))
        last = paused[-1]
        later = (*paused, replace(last, seq=last.seq + 1, time_s=last.time_s + 400.0, event=e.SampleTaken(20.0)))
        found = {each["code"]: each["need"] for each in tile_of(later)["reasons"]}
        assert found["paused"] == need


def test_what_the_link_noticed_is_told() -> None:
    troubled = tile_of(until(events_of(1), 200.0), troubles={"bench-1": "It sends what cannot be read."})
    assert (codes(troubled), troubled["need"]) == (["trouble"], 3)
    board = Board()
    assert board.tiles(0.0, {}, {"ghost": "It sends what cannot be read."})["ghost"]["state"] == "unknown"


def test_a_bench_is_held_against_the_class() -> None:
    board = Board()
    for seed in range(ENOUGH):
        board.take(f"quick-{seed}", "a", events_of(1))
    slow = until(events_of(2), 200.0)
    board.take("slow", "a", slow)
    last = slow[-1]
    stale = [replace(last, seq=last.seq + 1, time_s=last.time_s + 600.0, event=e.SampleTaken(24.0))]
    assert board.tiles(0.0, {}, {})["slow"]["need"] <= 1
    board.take("slow", "a", stale)
    tile = board.tiles(0.0, {}, {})["slow"]
    assert codes(tile) == ["stuck", "behind"]
    assert tile["waits_s"] > 600
    assert tile["usual_s"] is not None
    assert 10 < tile["usual_s"] < 80


def test_who_has_not_begun_is_seen_once_the_class_has() -> None:
    board = Board()
    board.take("bench-1", "a", until(events_of(1), 1.0))
    assert codes(board.tiles(0.0, {}, {})["bench-1"]) == []
    for seed in (2, 3):
        board.take(f"bench-{seed}", "a", until(events_of(1), 300.0))
    assert codes(board.tiles(0.0, {}, {})["bench-1"]) == ["not_begun"]
    assert board.tiles(0.0, {}, {})["bench-1"]["need"] == 2


def test_events_that_come_twice_change_nothing_and_a_wiped_journal_begins_anew() -> None:
    board, events = Board(), until(events_of(1), 200.0)
    board.take("bench-1", "a", events)
    before = board.tiles(0.0, {}, {})
    board.take("bench-1", "a", events[5:60])
    assert board.tiles(0.0, {}, {}) == before
    board.take("bench-1", "b", until(events_of(2), 2.0))
    assert board.tiles(0.0, {}, {})["bench-1"]["repeat"] == 0


def test_events_that_do_not_fit_together_are_named_and_cost_nobody_else() -> None:
    board, events = Board(), until(events_of(1), 200.0)
    board.take("bench-1", "a", events)
    board.take("bench-2", "a", events)
    alien = replace(events[-1], seq=events[-1].seq + 1, event=e.PortionAdded(7, 1, 4.0))
    board.take("bench-2", "a", [alien])
    tiles = board.tiles(0.0, {}, {})
    assert codes(tiles["bench-2"]) == ["unreadable"]
    assert tiles["bench-1"]["need"] == 0
    again = replace(alien, seq=alien.seq + 1, event=e.PlanChosen(SHORT.model_dump(mode="json")))
    board.take("bench-2", "a", [again])
    assert codes(board.tiles(0.0, {}, {})["bench-2"]) != ["unreadable"]


def test_who_needs_somebody_stands_in_the_strip_the_newest_last() -> None:
    strip = Strip()
    assert strip.now({"bench-2": 0, "bench-1": 1}) == ()
    assert strip.now({"bench-2": 2, "bench-1": 1}) == ("bench-2",)
    assert strip.now({"bench-2": 2, "bench-1": 3}) == ("bench-2", "bench-1"), "who came first stays first"
    assert strip.now({"bench-2": 3, "bench-1": 2, "bench-10": 3, "bench-9": 2})[2:] == ("bench-9", "bench-10")
    assert strip.now({"bench-2": 0, "bench-1": 2}) == ("bench-1",)
    assert strip.now({"bench-2": 2, "bench-1": 2}) == ("bench-1", "bench-2")


@given(st.lists(st.dictionaries(st.sampled_from("abcdef"), st.integers(0, 3)), max_size=20))
def test_nobody_in_the_strip_overtakes_anybody(moments: list[dict[str, int]]) -> None:
    strip = Strip()
    before: tuple[str, ...] = ()
    for needs in moments:
        after = strip.now(needs)
        assert set(after) == {bench for bench, need in needs.items() if need >= 2}
        stayed = tuple(bench for bench in before if bench in after)
        assert after[: len(stayed)] == stayed
        before = after


def test_a_call_for_the_teacher_needs_help_until_it_is_over() -> None:
    called = further(until(events_of(1), 200.0), e.TeacherCalled("key 1"))
    tile = tile_of(called)
    assert (codes(tile), tile["need"], tile["called"]) == (["called"], 3, True)
    assert tile_of(further(called, e.CallEnded("teacher")))["need"] == 0


def test_bad_readings_are_over_once_good_ones_come() -> None:
    under_way = until(events_of(1), 200.0)
    bad = further(under_way, *(e.SampleTaken(None, "crc") for _ in range(20)))
    assert "bad_readings" in codes(tile_of(bad))
    assert "bad_readings" not in codes(tile_of(further(bad, *(e.SampleTaken(21.0) for _ in range(3)))))


@pytest.mark.parametrize("speed", [1.0, 20.0])
def test_a_wait_goes_on_between_events_in_the_practicals_own_seconds(speed: float) -> None:
    """The room's clock is 500 s ahead of the bench's; events come 0.2 to 0.9 s late, every 5 s."""
    board, events = Board(), until(events_of(1), 200.0)
    running = [replace(each, monotonic_s=each.time_s / speed) for each in events]
    for number, each in enumerate(running):
        board.take("bench-1", "a", [each], each.monotonic_s + 500.2 + 0.07 * (number % 11))
    last = running[-1]
    since_s = board.benches["bench-1"].state.step_since_s
    for later_s in (0.0, 1.0, 4.0):
        tile = board.tiles(last.monotonic_s + 500.2 + later_s, {}, {})["bench-1"]
        true_s = last.time_s - since_s + later_s * speed
        assert tile["waits_s"] == pytest.approx(true_s, abs=0.05 * speed)
        assert tile["speed"] == pytest.approx(speed, rel=0.01)
    here = Board("boot")
    here.take("bench-1", "a", running, last.monotonic_s + 3.0)
    waited_s = here.tiles(last.monotonic_s + 3.0, {}, {})["bench-1"]["waits_s"]
    assert waited_s == pytest.approx(last.time_s - since_s + 3.0 * speed, abs=0.05), "one clock, however late it came"


def test_a_curve_unlike_the_others_is_noted() -> None:
    board = Board()
    for number in range(1, 6):
        board.take(f"bench-{number}", "a", until(events_of(number), 400.0))
    calm = board.tiles(0.0, {}, {})
    assert all("odd_curve" not in codes(tile) for tile in calm.values())
    assert calm["bench-1"]["curve"][0][0] == 0.0
    assert calm["bench-1"]["curve_to"] == pytest.approx(40.0)
    board.take("bench-6", "a", until(events_of(3, DOUBLED), 400.0))
    tiles = board.tiles(0.0, {}, {})
    assert [bench for bench, tile in tiles.items() if "odd_curve" in codes(tile)] == ["bench-6"]
    assert tiles["bench-6"]["reasons"][-1]["need"] <= 1
