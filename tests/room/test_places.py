"""Places on the board: as seated, else by number, and nothing moves but by hand."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.room.places import moved, natural, seated


def test_a_bench_has_the_place_of_its_number_else_the_first_that_is_free() -> None:
    assert seated({}, ["bench-3", "bench-1", "bench-10"]) == {"bench-1": 1, "bench-3": 3, "bench-10": 10}
    assert seated({"bench-1": 1}, ["bench-1", "window", "bench-2"]) == {"bench-2": 2, "window": 3}
    assert seated({"bench-1": 1}, ["lab2-bench-1"]) == {"lab2-bench-1": 2}, "whoever was first keeps the place"
    assert seated({}, ["kit-2031"]) == {"kit-2031": 1}, "no room has so many places"


def test_two_benches_change_places() -> None:
    places = {"a": 1, "b": 2}
    assert moved(places, "a", 2) == {"a": 2, "b": 1}
    assert moved(places, "a", 7) == {"a": 7}
    assert moved(places, "a", 1) == {"a": 1}
    with pytest.raises(LookupError):
        moved(places, "c", 1)


@given(st.lists(st.sampled_from(["bench-1", "bench-2", "x-1", "x", "y", "bench-61", "bench-7"]), max_size=12))
def test_whoever_comes_nobody_moves_and_no_two_share_a_place(comers: list[str]) -> None:
    places: dict[str, int] = {}
    for bench in comers:
        new = seated(places, [bench, *places])
        assert not set(new) & set(places)
        places |= new
    assert len(set(places.values())) == len(places)


def test_benches_are_sorted_as_people_count() -> None:
    assert sorted(["b10", "b9", "a", "10", "9"], key=natural) == ["9", "10", "a", "b9", "b10"]
