"""What grows is never changed: the fold stays pure, and costs the same for each sample however long the trace."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.practical import events as e
from station.practical.fold import fold, fold_all
from station.practical.growing import Growing, Keys
from station.practical.kinds import read_plan
from tests.records import PLAN_TEXT

PLAN = read_plan(PLAN_TEXT).model_dump(mode="json")
GROWTH = st.lists(st.tuples(st.integers(0, 30), st.integers(0, 3)), max_size=30)


@given(GROWTH)
def test_whatever_grows_from_whatever_each_stays_what_it_was(steps: list[tuple[int, int]]) -> None:
    grown: list[Growing[int]] = [Growing()]
    copies: list[tuple[int, ...]] = [()]
    for which, item in steps:
        place = which % len(grown)
        grown.append(grown[place].with_one(item))
        copies.append((*copies[place], item))
    for one, copy in zip(grown, copies, strict=True):
        assert one == copy
        assert hash(one) == hash(copy)
        assert (len(one), list(one), one[1:], one[::-2]) == (len(copy), list(copy), copy[1:], copy[::-2])
        assert one[-1:] == copy[-1:]


@given(GROWTH)
def test_keys_are_a_set_that_stays_what_it_was(steps: list[tuple[int, int]]) -> None:
    grown, copies = [Keys()], [frozenset[str]()]
    for which, item in steps:
        place = which % len(grown)
        grown.append(grown[place].with_one(str(item)))
        copies.append(copies[place] | {str(item)})
    for one, copy in zip(grown, copies, strict=True):
        assert {str(item) for item in range(4) if str(item) in one} == copy
        assert len(one) == len(copy)
    assert (grown[0] == grown[-1]) == (copies[0] == copies[-1])


def test_a_place_that_is_not_there_is_an_index_error() -> None:
    one = Growing([1]).with_one(2)
    Growing([1]).with_one(3)
    assert (one[0], one[-1]) == (1, 2)
    with pytest.raises(IndexError):
        one[2]


def test_two_states_that_go_on_from_one_do_not_see_each_other() -> None:
    state = fold_all(_stamped([e.PlanChosen(PLAN), e.RepeatBegun(1), e.SampleTaken(20.0)]))
    one, other = (fold(state, _at(9.0, e.SampleTaken(celsius))) for celsius in (21.0, 22.0))
    ended = [each.repeats[0].samples[-1].temperature_c for each in (state, one, other)]
    assert ended == [20.0, 21.0, 22.0]
    assert [len(each.repeats[0].samples) for each in (state, one, other)] == [1, 2, 2]


@pytest.mark.fault("very-long")
def test_a_state_shares_what_it_holds_with_the_one_before() -> None:
    """Copying it for each sample and act cost 8.7 s for 50,000 samples."""
    course = [e.PlanChosen(PLAN), e.RepeatBegun(1), e.SampleTaken(20.0), e.GroupNamed("Group 4", "key 1")]
    before = fold_all(_stamped(course))
    later = fold(fold(before, _at(9.0, e.SampleTaken(21.0))), _at(10.0, e.GroupNamed("Group 5", "key 2")))
    one, other = (each.repeats[0].samples for each in (before, later))
    assert isinstance(one, Growing)
    assert isinstance(other, Growing)
    assert one._items is other._items
    assert later.keys._places is before.keys._places


def _stamped(happened: list[e.Event]) -> list[e.Stamped]:
    return [_at(float(seq), event) for seq, event in enumerate(happened, 1)]


def _at(time_s: float, event: e.Event) -> e.Stamped:
    return e.Stamped(int(time_s), "", 0.0, time_s, "", "", event)
