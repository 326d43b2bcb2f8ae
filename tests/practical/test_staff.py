"""Staff set a repeat aside in any state, silence the buzzer and rename the bench; the rest of the practical stands."""

from typing import Any

import pytest
from pydantic import ValidationError

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.procedure import advance
from station.practical.questions import ask_events
from station.practical.staff import StaffAct
from station.practical.state import Step
from station.practical.view import view
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


@pytest.mark.parametrize("by", ["teacher", "technician"])
def test_a_pause_of_staff_is_ended_by_staff_alone(by: str) -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    staff(walk, "pause", by=by)
    told = view(walk.state, walk.time_s)
    assert (told["state"], told["instruction"].act) == ("paused", None)
    assert told["instruction"].text == f"Paused by your {by}. Please wait."
    assert not {"resume", "finish"} & set(told["other_acts"])
    for act in ("resume", "finish"):
        with pytest.raises(ActRefused, match=f"Your {by} paused"):
            walk.act(act)
    with pytest.raises(ActRefused, match="paused already"):
        staff(walk, "pause")
    staff(walk, "resume")
    assert walk.step() is Step.POUR
    assert fold_all(walk.happened) == walk.state


def test_a_group_ends_its_own_pause_and_staff_may_end_it_or_make_it_theirs() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.act("pause")
    walk.act("resume")
    assert walk.step() is Step.POUR
    walk.act("pause")
    staff(walk, "resume")
    assert walk.step() is Step.POUR
    walk.act("pause")
    staff(walk, "pause")
    with pytest.raises(ActRefused, match="Your teacher paused"):
        walk.act("resume")
    staff(walk, "resume")
    assert walk.step() is Step.POUR
    walk.act("pause")
    walk.act("resume")
    assert walk.step() is Step.POUR, "the pause after it is the group's own again"


@pytest.mark.fault("break")
def test_what_is_said_during_a_pause_of_staff_is_kept_and_the_pause_holds() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    staff(walk, "pause")
    walk.act("portion_added", portion=1)
    assert (walk.step(), walk.state.poured) == (Step.PAUSED, 1)
    walk.keep([*ask_events(walk.state, ((1, "no_change"),))])
    walk.act("answer", question="1-1-no_change", answer="no")
    assert (walk.step(), walk.state.poured) == (Step.PAUSED, 0)
    walk.act("portion_added", portion=1)
    assert kinds(walk.rest(21.0)) == ["reading_settled"]
    assert kinds(staff(walk, "resume")) == ["resumed", "portion_prompted"]
    walk.act("portion_added", portion=2)
    staff(walk, "pause")
    walk.keep([*ask_events(walk.state, ((2, "sudden_fall"),))])
    walk.act("answer", question="1-2-sudden_fall", answer="spilled")
    assert walk.step() is Step.PAUSED
    staff(walk, "resume")
    assert walk.step() is Step.RINSE
    assert fold_all(walk.happened) == walk.state


def test_staff_pause_only_where_there_is_something_to_pause() -> None:
    walk = Walk()
    for act, why in (("pause", "nothing to pause"), ("resume", "not paused")):
        with pytest.raises(ActRefused, match=why):
            staff(walk, act)


def test_a_pause_of_an_old_record_is_the_groups_own() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.keep([e.from_body("paused", {"key": "old"})])
    walk.act("resume")
    assert walk.step() is Step.POUR


def test_staff_let_a_repeat_count_again() -> None:
    walk = done()
    with pytest.raises(ActRefused, match="was not set aside"):
        staff(walk, "restore", repeat=1)
    staff(walk, "set_aside", repeat=1, reason="the lid was off")
    assert kinds(staff(walk, "restore", repeat=1)) == ["repeat_restored"]
    assert [each.repeat for each in walk.state.counted] == [1, 2]
    for values, why in (({}, "which repeat"), ({"repeat": 9}, "no repeat 9")):
        with pytest.raises(ActRefused, match=why):
            staff(walk, "restore", **values)


def test_a_repeat_that_staff_let_count_again_can_be_the_last_one_needed() -> None:
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.portion(21.0)
    staff(walk, "set_aside", repeat=1, reason="wrong bottle")
    assert kinds(staff(walk, "restore", repeat=1)) == ["repeat_restored", "practical_ended"]
    assert walk.step() is Step.DONE
