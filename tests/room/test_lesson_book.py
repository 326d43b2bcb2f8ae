"""Lessons are kept apart: a practical belongs to the lesson in which it was chosen, also when it is heard of later."""

from collections.abc import Iterator
from dataclasses import replace
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.events import Stamped
from station.room.lesson_book import (
    LONGEST_LESSON,
    LessonBook,
    Practical,
    newest_practical,
    practical_events,
    practical_state,
)
from station.room.store.database import now
from station.room.store.store import RoomStore
from tests.room.lesson_in_jumps import SHORT

JOURNAL = "a1b2c3d4e5f60718"


@pytest.fixture
def store(tmp_path: Path) -> Iterator[RoomStore]:
    store = RoomStore(tmp_path)
    yield store
    store.close()


def chosen(seq: int = 2, wall: str = "", clock: str = "none") -> Stamped:
    return Stamped(seq, "boot", 0.0, 0.0, wall, clock, e.PlanChosen(SHORT.model_dump(mode="json")))


def test_the_first_practical_begins_a_lesson_and_the_next_ones_join_it(store: RoomStore) -> None:
    book = LessonBook(store)
    assert book.current() is None
    assert [book.assign(Practical(f"bench-{n}", JOURNAL, 2), chosen()) for n in (1, 2)] == [1, 1]
    assert [each.bench for each in book.practicals(1)] == ["bench-1", "bench-2"]
    assert book.assign(Practical("bench-1", JOURNAL, 2), chosen()) == 1, "heard again after a restart"


def test_what_begins_hours_later_is_of_another_lesson(store: RoomStore) -> None:
    moment = datetime.now(UTC)
    book = LessonBook(store, lambda: moment)
    assert book.assign(Practical("bench-1", JOURNAL, 2), chosen()) == 1
    moment += LONGEST_LESSON + timedelta(minutes=1)
    assert book.assign(Practical("bench-1", JOURNAL, 900), chosen(900)) == 2
    assert book.find(1) is not None
    assert [each.ended is None for each in store.lessons()] == [True, False]


@pytest.mark.parametrize(("clock", "lesson"), [("network", 1), ("none", 2)])
def test_a_bench_that_comes_late_is_put_where_a_clock_that_can_be_trusted_says(
    store: RoomStore, clock: str, lesson: int
) -> None:
    book = LessonBook(store)
    book.begin("10A")
    during = store.lessons()[0].began
    while now() == during:  # a lesson lasts a millisecond at least
        pass
    book.begin("10B")
    assert book.assign(Practical("bench-1", JOURNAL, 2), chosen(wall=during, clock=clock)) == lesson


def test_a_wall_time_that_is_none_is_no_matter(store: RoomStore) -> None:
    book = LessonBook(store)
    book.begin("10A")
    book.begin("10B")
    for number, wall in enumerate(("", "yesterday", "2026-03-02T09:00:00")):
        assert book.assign(Practical(f"bench-{number}", JOURNAL, 2), chosen(wall=wall, clock="network")) == 2


def test_a_practical_ends_where_the_next_begins_and_keeps_the_benchs_name(store: RoomStore) -> None:
    started = replace(chosen(1), event=e.StationStarted("0", "none", None, "none"))
    renamed = replace(chosen(3), event=e.BenchRenamed("Curie", "teacher", "k"))
    begun = replace(chosen(4), event=e.RepeatBegun(1))
    store.keep("bench-1", JOURNAL, [started, chosen(2), renamed, begun, chosen(5)])
    first = Practical("bench-1", JOURNAL, 2)
    assert [each.seq for each in practical_events(store, first)] == [2, 3, 4]
    assert [each.seq for each in practical_events(store, first, (e.RepeatBegun.kind,))] == [2, 4]
    newest = newest_practical(store, "bench-1", JOURNAL)
    assert newest == Practical("bench-1", JOURNAL, 5)
    state = practical_state(store, newest)
    assert (state.name, state.has_probe, state.repeats) == ("Curie", False, ())
    assert newest_practical(store, "bench-2", JOURNAL) is None


def labelled(seq: int, label: str) -> Stamped:
    return Stamped(seq, "boot", 0.0, 0.0, "", "none", e.GroupNamed(label))


@pytest.fixture
def old(store: RoomStore) -> RoomStore:
    """A lesson of 10B with two groups, and a practical of the same record that began after it."""
    events = [chosen(1), labelled(2, "Anna"), labelled(3, "Group 4"), chosen(4), labelled(5, "Group 9"), chosen(6)]
    store.keep("bench-1", JOURNAL, events)
    for lesson, label, began in ((1, "10B", 1), (2, "11A", 4)):
        assert store.begin_lesson(label) == lesson
        store.add_practical(lesson, "bench-1", JOURNAL, began)
    return store


def labels(store: RoomStore) -> list[str | None]:
    return [each.event.label for each in store.events("bench-1") if isinstance(each.event, e.GroupNamed)]


@pytest.mark.parametrize(
    ("later_days", "days", "known_right", "forgotten"),
    [(366, 365, True, True), (364, 365, True, False), (366, 365, False, False), (9000, 0, True, False)],
)
def test_names_of_a_class_are_forgotten_in_time_by_a_clock_that_is_right(
    old: RoomStore, later_days: int, days: int, known_right: bool, forgotten: bool
) -> None:
    book = LessonBook(old, lambda: datetime.now(UTC) + timedelta(days=later_days))
    before = [(each.seq, each.event.kind) for each in old.events("bench-1")]
    assert book.forget(days, known_right=known_right) == int(forgotten)
    assert [each.label for each in old.lessons()] == ["11A", "" if forgotten else "10B"], "the one under way is kept"
    assert labels(old) == [*((None, None) if forgotten else ("Anna", "Group 4")), "Group 9"]
    assert [(each.seq, each.event.kind) for each in old.events("bench-1")] == before, "all that happened stays"
    assert book.forget(days, known_right=known_right) == 0, "nothing is left to forget"


def test_a_bench_goes_on_sending_after_its_labels_were_forgotten(old: RoomStore) -> None:
    LessonBook(old, lambda: datetime.now(UTC) + timedelta(days=366)).forget(365, known_right=True)
    assert old.keep("bench-1", JOURNAL, [labelled(7, "Group 1")]) == 7
    assert labels(old)[-1] == "Group 1"
