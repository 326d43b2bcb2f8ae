"""The board: what a glance must tell of each bench, and tiles that stay where they are while they are read."""

from dataclasses import replace
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from station.bench.virtual.student import Habits
from station.practical import events as e
from station.room.board import CALM_S, ENOUGH, EVERY_S, Board, Heard, Places, arranged, natural
from station.room.contract import Tile
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


def test_tiles_in_trouble_stand_first_and_the_others_stay() -> None:
    calm = {f"bench-{n}": 0 for n in (10, 2, 1, 3)}
    places = arranged(Places(), calm, 0.0)
    assert places.order == ("bench-1", "bench-2", "bench-3", "bench-10")
    places = arranged(places, {**calm, "bench-3": 3}, EVERY_S)
    assert places.order == ("bench-3", "bench-1", "bench-2", "bench-10")
    places = arranged(places, {**calm, "bench-3": 3, "bench-1": 3}, 2 * EVERY_S)
    assert places.order[:2] == ("bench-3", "bench-1"), "who came first stays first"
    places = arranged(places, {**calm, "bench-1": 1}, 3 * EVERY_S)
    assert places.order[:2] == ("bench-3", "bench-1"), "a tile that got better stays for a while"
    places = arranged(places, calm, 3 * EVERY_S + CALM_S)
    assert places.order == ("bench-1", "bench-2", "bench-3", "bench-10")


def test_a_new_bench_gets_its_place_at_once() -> None:
    places = arranged(Places(), {"bench-2": 0}, 0.0)
    assert arranged(places, {"bench-2": 0, "bench-1": 0}, 0.1).order == ("bench-1", "bench-2")
    assert arranged(places, {}, 0.2).order == ()


@given(st.lists(st.dictionaries(st.sampled_from("abcdef"), st.integers(0, 3), min_size=6, max_size=6), max_size=30))
@settings(max_examples=30, deadline=None)
def test_places_never_change_more_often_than_they_may(moments: list[dict[str, int]]) -> None:
    places, moved, now_s = Places(), [-1000.0], 0.0
    for needs in moments:
        after = arranged(places, needs, now_s)
        assert set(after.order) == set(needs)
        if places.order and after.order != places.order:
            moved.append(now_s)
        places, now_s = after, now_s + 1.0
    assert all(late - early >= EVERY_S for early, late in pairwise(moved))


def test_benches_are_sorted_as_people_count() -> None:
    assert sorted(["b10", "b9", "a", "10", "9"], key=natural) == ["9", "10", "a", "b9", "b10"]
