"""What the group says in any state: label, notes, doubts taken back, own reading, another group's set."""

import json

import pytest

from station.practical.acts import ActRefused
from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.practical.group import MOST_NOTES
from station.practical.plan import READY_PLAN, plan_from
from station.practical.procedure import possible_acts
from station.practical.state import Step
from station.practical.view import view
from tests.practical.test_staff import staff
from tests.practical.walk import PLAN, Walk, kinds

LINE = {"slope_c_cm3": 0.5, "intercept_c": 20.0}
CSV = "repeat,volume_cm3,temperature_c\r\n1,0,20\r\n1,3,21.5\r\n1,6,22.9\r\n2,0,20.1\r\n2,3,21.4\r\n"


def done(**plan: object) -> Walk:
    walk = Walk(repeats=1, **plan)
    walk.to_pour()
    walk.repeat()
    assert walk.step() is Step.DONE
    return walk


def gate(walk: Walk) -> dict[str, object]:
    found: dict[str, object] = view(walk.state, walk.time_s)["results"]
    return found


def test_results_wait_for_the_own_reading_by_default() -> None:
    walk = Walk(repeats=1)
    assert gate(walk) == {"rule": "after own reading", "shown": False, "waits_for": "end"}
    walk.to_pour()
    with pytest.raises(ActRefused, match="First finish"):
        walk.act("own_reading", end_point_cm3=7.5)
    walk.repeat()
    assert gate(walk) == {"rule": "after own reading", "shown": False, "waits_for": "own reading"}
    assert "own_reading" in possible_acts(walk.state)
    walk.act("own_reading", end_point_cm3=7.5, before=LINE, after={**LINE, "slope_c_cm3": -0.1})
    assert gate(walk) == {"rule": "after own reading", "shown": True, "waits_for": None}
    with pytest.raises(ActRefused, match="Your own reading stands"):
        walk.act("own_reading", end_point_cm3=8.0)
    read = view(walk.state, walk.time_s)["own_reading"]
    assert (read["end_point_cm3"], read["before"]) == (7.5, LINE)


def test_who_cannot_read_an_end_point_says_so_and_goes_on() -> None:
    walk = done()
    walk.act("own_reading")
    assert walk.state.results_shown


def test_at_once_waits_for_nothing() -> None:
    assert gate(Walk(results="at once"))["shown"] is True


def test_when_shown_waits_for_staff_and_the_own_reading_may_be_changed_until_then() -> None:
    walk = done(results="when shown")
    walk.act("own_reading", end_point_cm3=7.0)
    walk.act("own_reading", end_point_cm3=7.4)
    assert gate(walk) == {"rule": "when shown", "shown": False, "waits_for": "staff"}
    assert kinds(staff(walk, "show_results", shown=True)) == ["results_shown"]
    assert gate(walk)["shown"] is True
    staff(walk, "show_results", shown=False)
    assert gate(walk) == {"rule": "when shown", "shown": False, "waits_for": "staff"}
    with pytest.raises(ActRefused, match="in shown"):
        staff(walk, "show_results")


def test_staff_choose_a_plan_between_repeats_only() -> None:
    walk = Walk()
    walk.to_pour()
    with pytest.raises(ActRefused, match="under way"):
        staff(walk, "choose_plan", plan=PLAN)
    walk.act("finish")
    with pytest.raises(ActRefused, match=r"This plan cannot be used: plan: .acid. volume_cm3"):
        staff(walk, "choose_plan", plan={**PLAN, "acid": {"name": "nitric acid", "volume_cm3": -1}})
    acid = {"name": "nitric acid", "volume_cm3": 30, "prepared_mol_dm3": 0.5}
    staff(walk, "choose_plan", plan={**PLAN, "acid": acid})
    assert walk.step() is Step.READY
    assert walk.state.repeats == ()
    assert walk.state.plan == plan_from({**PLAN, "acid": {"name": "nitric acid", "volume_cm3": 30}})
    assert "0.5" not in json.dumps(walk.happened[-1].event.to_body()["plan"]["acid"])


def test_staff_choose_a_plan_by_its_file() -> None:
    walk = Walk()
    staff(walk, "choose_plan", plan_toml=READY_PLAN.replace("repeats = 2", "repeats = 3"))
    assert walk.state.plan.repeats == 3
    with pytest.raises(ActRefused, match=r"This plan cannot be used: plan: not valid TOML"):
        staff(walk, "choose_plan", plan_toml="[acid")
    with pytest.raises(ActRefused, match="in plan_toml"):
        staff(walk, "choose_plan")


def test_the_group_has_a_label_and_no_label() -> None:
    walk = Walk()
    walk.act("group", label="Group 4 ")
    assert view(walk.state, 0.0)["group"] == "Group 4"
    walk.act("group", label=" ")
    assert view(walk.state, 0.0)["group"] is None


def test_a_note_is_kept_and_taken_back_and_stays_in_the_record() -> None:
    walk = Walk()
    walk.to_pour()
    walk.act("note", text="The lid was loose.", repeat=1, portion=0)
    walk.act("note", text="= 1 + 1")
    walk.act("note_withdrawn", note=1)
    notes = view(walk.state, walk.time_s)["notes"]
    assert [(each["id"], each["text"], each["withdrawn"]) for each in notes] == [
        (1, "The lid was loose.", True),
        (2, "= 1 + 1", False),
    ]
    with pytest.raises(ActRefused, match="withdrawn already"):
        walk.act("note_withdrawn", note=1)
    with pytest.raises(ActRefused, match="Write the note"):
        walk.act("note", text="  ")
    assert fold_all(walk.happened) == walk.state


def test_notes_are_bounded() -> None:
    walk = Walk()
    for number in range(MOST_NOTES):
        walk.act("note", text=f"note {number}")
    with pytest.raises(ActRefused, match=f"{MOST_NOTES} notes"):
        walk.act("note", text="one more")


def test_a_doubt_is_taken_back() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.act("portion_unsure", portion=1, reason="spilled")
    portion = view(walk.state, walk.time_s)["repeats"][0]["portions"][0]
    assert (portion["unsure"], portion["unsure_reason"]) == (True, "spilled")
    walk.act("portion_sure", portion=1)
    portion = view(walk.state, walk.time_s)["repeats"][0]["portions"][0]
    assert (portion["unsure"], portion["unsure_reason"]) == (False, None)
    with pytest.raises(ActRefused, match="not in doubt"):
        walk.act("portion_sure", portion=1)


def test_a_repeat_is_set_aside_and_counts_again() -> None:
    walk = done()
    walk.act("repeat_set_aside", repeat=1, reason="the lid was off")
    assert walk.state.counted == ()
    assert view(walk.state, walk.time_s)["repeats"][0]["restorable"] is True
    walk.act("repeat_restored", repeat=1)
    (restored,) = walk.state.repeats
    assert (restored.status, restored.counts) == ("ended", True)
    with pytest.raises(ActRefused, match="was not set aside"):
        walk.act("repeat_restored", repeat=1)


def test_a_repeat_that_counts_again_can_be_the_last_one_needed() -> None:
    walk = Walk(repeats=2)
    walk.to_pour()
    walk.repeat()
    walk.act("repeat_set_aside", reason="spilled")
    walk.act("rinsed")
    walk.rest(20.0)
    walk.repeat()
    assert walk.step() is Step.RINSE
    assert kinds(walk.act("repeat_restored", repeat=1)) == ["repeat_restored", "practical_ended"]
    assert walk.step() is Step.DONE


def test_one_more_repeat_may_be_done_after_the_end() -> None:
    walk = done()
    walk.act("rinsed")
    walk.rest(20.0)
    walk.repeat()
    assert walk.step() is Step.DONE
    assert len(walk.state.counted) == 2


def test_another_groups_readings_are_worked_on_and_given_back() -> None:
    walk = done()
    walk.act("own_reading", end_point_cm3=7.0)
    assert kinds(walk.act("adopt", label="Bench 4", csv=CSV)) == ["set_adopted"]
    shown = view(walk.state, walk.time_s)
    assert shown["adopted"] == {"label": "Bench 4", "repeats": 2}
    assert [each["temperature_c"] for each in shown["mean"]] == pytest.approx([20.05, 21.45, 22.9])
    assert [each["volume_cm3"] for each in shown["mean"]] == [0.0, 3.0, 6.0]
    assert shown["results"]["waits_for"] == "own reading", "what was read off the own lines is not of these"
    assert [each["repeat"] for each in question_for(walk.state)["repeats"]] == [1, 2]
    with pytest.raises(ActRefused, match="another group's"):
        walk.act("portion_unsure", portion=1)
    own = walk.state.repeats
    walk.act("adopt_returned")
    assert walk.state.worked_on == own
    assert walk.step() is Step.DONE
    assert fold_all(walk.happened) == walk.state


def test_a_group_that_has_nothing_takes_over_a_set_before_it_began() -> None:
    walk = Walk()
    walk.act("adopt", label="Bench 4", csv=CSV)
    assert walk.step() is Step.DONE
    walk.act("adopt_returned")
    assert walk.step() is Step.READY


@pytest.mark.parametrize(
    ("values", "words"),
    [
        ({"csv": CSV}, "whose readings"),
        ({"label": "Bench 4"}, "readings file"),
        ({"label": "Bench 4", "csv": "repeat,volume_cm3\r\n1,2\r\n"}, "cannot be used"),
    ],
)
def test_a_set_that_cannot_be_taken_over_changes_nothing(values: dict[str, str], words: str) -> None:
    walk = done()
    before = walk.state
    with pytest.raises(ActRefused, match=words):
        walk.act("adopt", **values)
    assert walk.state == before


def test_no_set_is_taken_over_while_a_repeat_is_under_way() -> None:
    walk = Walk()
    walk.to_pour()
    with pytest.raises(ActRefused, match="repeat under way"):
        walk.act("adopt", label="Bench 4", csv=CSV)
