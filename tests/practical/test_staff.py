"""Staff set a repeat aside in any state, silence the buzzer and rename the bench; the rest of the practical stands."""

from typing import Any

import pytest
from pydantic import ValidationError

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.procedure import advance
from station.practical.staff import StaffAct
from station.practical.state import Step
from tests.practical.walk import Walk, chosen, kinds


def staff(walk: Walk, act: str, **values: Any) -> list[e.Event]:
    return walk.keep(list(advance(walk.state, StaffAct.model_validate({"act": act, **values}), walk.time_s)))


def done() -> Walk:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.repeat()
    walk.act("rinsed")
    walk.rest(20.0)
    walk.repeat()
    assert walk.step() is Step.DONE
    return walk


@pytest.mark.parametrize("repeat", [1, 2])
def test_a_repeat_is_set_aside_when_the_practical_is_done_and_stays_done(repeat: int) -> None:
    walk = done()
    assert kinds(staff(walk, "set_aside", repeat=repeat, reason="the lid was off")) == ["repeat_set_aside"]
    assert walk.step() is Step.DONE
    assert [each.repeat for each in walk.state.counted] == [3 - repeat]
    assert walk.state.repeats[repeat - 1].reason == "the lid was off"
    assert fold_all(walk.happened) == walk.state


def test_an_earlier_repeat_is_set_aside_without_disturbing_the_one_under_way() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.repeat()
    walk.act("rinsed")
    walk.rest(20.0)
    before = (walk.step(), walk.state.prompted)
    staff(walk, "set_aside", repeat=1, reason="spilled")
    assert (walk.step(), walk.state.prompted) == before == (Step.POUR, 1)
    walk.repeat()
    assert walk.step() is Step.RINSE, "the plan's two repeats are not there yet"


def test_the_repeat_under_way_is_set_aside_and_begun_anew() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    staff(walk, "set_aside", repeat=1, reason="wrong bottle")
    assert walk.step() is Step.RINSE
    walk.act("rinsed")
    assert [each.status for each in walk.state.repeats] == ["set aside", "running"]


@pytest.mark.parametrize(
    ("values", "code"),
    [
        ({"act": "set_aside", "reason": "r"}, "no_repeat"),
        ({"act": "set_aside", "repeat": 3, "reason": "r"}, "wrong_repeat"),
        ({"act": "set_aside", "repeat": 1}, "no_reason"),
        ({"act": "quiet"}, "not_understood"),
    ],
)
def test_what_is_incomplete_is_refused_and_changes_nothing(values: dict[str, Any], code: str) -> None:
    walk = done()
    before = walk.state
    with pytest.raises(ActRefused) as refused:
        staff(walk, **values)
    assert (refused.value.code, walk.state) == (code, before)


def test_a_repeat_is_set_aside_once_and_the_same_key_changes_nothing() -> None:
    walk = done()
    staff(walk, "set_aside", repeat=1, reason="first", key="k")
    assert staff(walk, "set_aside", repeat=1, reason="first", key="k") == []
    with pytest.raises(ActRefused, match="already"):
        staff(walk, "set_aside", repeat=1, reason="second", key="l")


def test_quiet_ends_with_the_practical_and_a_name_does_not() -> None:
    walk = Walk()
    staff(walk, "quiet", silent=True, by="technician")
    staff(walk, "rename", name="Bench by the window")
    assert (walk.state.silent, walk.state.name) == (True, "Bench by the window")
    walk.keep([e.PlanChosen(chosen().model_dump(mode="json"))])
    assert (walk.state.silent, walk.state.name) == (None, "Bench by the window")
    staff(walk, "rename")
    assert walk.state.name is None


@pytest.mark.parametrize("name", ["", "  ", "n" * 25, "a\u202eb", "a\nb", "\x00", "\ud800", 7])
def test_a_name_is_short_and_plain(name: object) -> None:
    with pytest.raises(ValidationError):
        StaffAct.model_validate({"act": "rename", "name": name})
