"""What the group says in any state: label, notes, doubts taken back, own reading, another group's set."""

import json

import pytest

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.contract import ResultsRule
from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.practical.group import MOST_NOTES, MOST_READINGS
from station.practical.kinds import plan_from
from station.practical.procedure import possible_acts
from station.practical.state import Step
from station.practical.view import view
from tests.practical.test_staff import staff
from tests.practical.walk import PLAN, Walk, kinds
from tests.records import PLAN_TEXT

ONCE = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 50},
    "addition": {"name": "ammonium chloride", "mass_g": 5},
    "timing": {"before_s": 90, "after_s": 60},
    "repeats": 1,
}
LINE = {"slope_c_cm3": 0.5, "intercept_c": 20.0}
CSV = "repeat,volume_cm3,temperature_c\r\n1,0,20\r\n1,3,21.5\r\n1,6,22.9\r\n2,0,20.1\r\n2,3,21.4\r\n"


def done(**plan: object) -> Walk:
    walk = Walk(repeats=1, **plan)
    walk.to_pour()
    walk.repeat()
    assert walk.step() is Step.DONE
    return walk


def gate(walk: Walk) -> dict[str, object]:
    """The rule and what it waits for; what the bottle was made up to has a test of its own."""
    results: ResultsRule = view(walk.state, walk.time_s)["results"]
    return {name: value for name, value in results.items() if name != "prepared_mol_dm3"}


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
    assert read is not None
    assert (read.end_point_cm3, read.before) == (7.5, LINE)


def test_who_cannot_read_an_end_point_says_why_and_goes_on() -> None:
    walk = done()
    with pytest.raises(ActRefused, match="Say why"):
        walk.act("own_reading")
    walk.act("own_reading", reason="too few readings")
    assert walk.state.results_shown
    read = view(walk.state, walk.time_s)["own_reading"]
    assert read is not None
    assert read.reason == "too few readings"


@pytest.mark.parametrize("reading", [{}, {"end_point_cm3": 7.5}, {"reason": "we did not try"}], ids=str)
def test_before_there_is_data_no_own_reading_opens_the_results(reading: dict[str, object]) -> None:
    walk = Walk()
    walk.act("finish")
    assert gate(walk) == {"rule": "after own reading", "shown": False, "waits_for": "end"}
    assert "own_reading" not in possible_acts(walk.state)
    with pytest.raises(ActRefused, match="nothing to read yet"):
        walk.act("own_reading", **reading)
    walk.act("rinsed")
    walk.rest(20.0)
    assert not walk.state.results_shown


def test_readings_that_do_not_turn_are_read_with_a_reason_only() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.portion(22.0)
    walk.act("finish")
    with pytest.raises(ActRefused, match="has not turned yet"):
        walk.act("own_reading", end_point_cm3=5.0)
    walk.act("own_reading", reason="the bell rang")
    assert walk.state.results_shown
    walk.act("repeat_set_aside", reason="spilled")
    assert not walk.state.results_shown, "what it was read off does not count any more"


@pytest.mark.parametrize(
    ("course", "turned"),
    [
        ((20.0, 21.5, 22.9, 24.2), False),
        ((20.0, 21.5, 22.9, 22.9), True),
        ((20.0, 21.5, 22.9, 22.5), True),
        ((22.0, 20.6, 19.4, 19.6), True),
        ((22.0, 22.0, 22.0, 20.5), True),
        ((20.0, 20.0, 20.1, 20.0), False),
        ((20.0, 21.5), False),
        ((20.0,), False),
    ],
)
def test_a_plateau_and_a_flat_beginning_are_turns_and_noise_is_none(course: tuple[float, ...], turned: bool) -> None:
    rows = "".join(f"1,{3 * index},{each}\r\n" for index, each in enumerate(course))
    walk = Walk()
    walk.act("adopt", label="Bench 4", csv=f"repeat,volume_cm3,temperature_c\r\n{rows}")
    assert walk.state.past_turn is turned


def test_mixed_once_there_is_no_turn_to_wait_for() -> None:
    walk = Walk(**ONCE)
    walk.act("begin")
    walk.rest(20.0, 150)
    walk.act("finish")
    with pytest.raises(ActRefused, match="nothing to read yet"):
        walk.act("own_reading", change_c=5.0)
    walk.act("rinsed")
    walk.rest(20.0, 150)
    walk.act("portion_added", portion=1)
    walk.rest(26.0, 80)
    walk.act("own_reading", change_c=5.0)
    assert walk.state.results_shown


def test_a_new_repeat_begins_the_wait_anew() -> None:
    walk = done()
    walk.act("own_reading", end_point_cm3=7.0)
    assert gate(walk)["shown"] is True
    walk.act("rinsed")
    assert gate(walk)["shown"] is False
    walk.rest(20.0)
    walk.repeat()
    assert gate(walk)["waits_for"] == "own reading"
    walk.act("own_reading", end_point_cm3=7.2)
    assert gate(walk)["shown"] is True


def test_taking_over_a_set_opens_nothing() -> None:
    walk = Walk()
    with pytest.raises(ActRefused, match="First finish"):
        walk.act("own_reading", end_point_cm3=3.0)
    walk.act("adopt", label="Bench 4", csv="repeat,volume_cm3,temperature_c\r\n1,0,20\r\n")
    with pytest.raises(ActRefused, match="nothing to read yet"):
        walk.act("own_reading", reason="none")
    walk.act("adopt", label="Bench 4", csv=CSV.replace("22.9", "21.2"))
    assert gate(walk)["shown"] is False
    walk.act("own_reading", end_point_cm3=3.0)
    assert gate(walk)["shown"] is True, "of the set that was taken over"
    walk.act("adopt_returned")
    assert gate(walk)["shown"] is False
    walk.act("begin")
    walk.rest(20.0)
    assert gate(walk)["shown"] is False


def test_an_old_record_with_an_own_reading_before_there_was_data_opens_nothing() -> None:
    """As stations wrote it that did not look whether there was anything to read."""
    walk = Walk()
    walk.act("finish")
    walk.keep([e.from_body("end_point_read", {"end_point_cm3": None, "change_c": None, "key": "old"})])
    assert not walk.state.results_shown
    walk.act("rinsed")
    walk.rest(20.0)
    walk.repeat()
    walk.act("finish")
    assert not walk.state.results_shown


def test_an_own_volume_that_was_never_added_is_asked_again() -> None:
    walk = done()
    with pytest.raises(ActRefused, match="24 cm³ is not among the volumes added, up to 12 cm³") as refused:
        walk.act("own_reading", end_point_cm3=24.0)
    assert refused.value.code == "doubtful"
    walk.act("own_reading", end_point_cm3=24.0, sure=True)
    assert walk.state.own_reading is not None


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
    staff(walk, "choose_plan", plan_toml=PLAN_TEXT.replace("repeats = 2", "repeats = 3"))
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
    assert [(each.id, each.text, each.withdrawn) for each in notes] == [
        (1, "The lid was loose.", True),
        (2, "= 1 + 1", False),
    ]
    with pytest.raises(ActRefused, match="withdrawn already"):
        walk.act("note_withdrawn", note=1)
    with pytest.raises(ActRefused, match="Write the note"):
        walk.act("note", text="  ")
    assert fold_all(walk.happened) == walk.state


def test_the_teacher_is_called_in_any_state_and_the_call_ends_by_the_group_or_by_staff() -> None:
    walk = Walk()
    for under_way in (False, True):
        if under_way:
            walk.to_pour()
        walk.act("call_teacher")
        assert "call_over" in view(walk.state, 0.0)["other_acts"]
        with pytest.raises(ActRefused, match="already been called"):
            walk.act("call_teacher")
        walk.act("call_over")
        with pytest.raises(ActRefused, match="Nobody is calling"):
            walk.act("call_over")
    walk.act("call_teacher")
    called_s = walk.state.called_s
    walk.portion(21.0)
    assert walk.state.called_s == called_s is not None, "work goes on meanwhile"
    staff(walk, "call_over")
    assert walk.state.called_s is None
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
    assert (portion.unsure, portion.unsure_reason) == (True, "spilled")
    walk.act("portion_sure", portion=1)
    portion = view(walk.state, walk.time_s)["repeats"][0]["portions"][0]
    assert (portion.unsure, portion.unsure_reason) == (False, None)
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
    assert not walk.state.results_shown
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


def test_a_set_has_as_many_readings_as_a_class_could_take() -> None:
    walk = done()
    rows = [f"{repeat},{volume},20" for repeat in range(1, 5) for volume in range(1, MOST_READINGS // 4 + 1)]
    text = "\n".join(["repeat,volume_cm3,temperature_c", *rows])
    assert kinds(walk.act("adopt", label="Bench 4", csv=text)) == ["set_adopted"]
    with pytest.raises(ActRefused, match=f"These are {MOST_READINGS + 1} readings; {MOST_READINGS} at most") as refused:
        walk.act("adopt", label="Bench 4", csv=f"{text}\n5,1,20")
    assert refused.value.code == "too_many_readings"


def test_what_the_bottle_was_made_up_to_is_told_with_the_results_and_never_before() -> None:
    walk = done(results="when shown")
    with pytest.raises(ActRefused) as held:
        staff(walk, "show_results", shown=False, prepared_mol_dm3=0.38)
    assert held.value.code == "not_understood"
    assert view(walk.state, 0.0)["results"]["prepared_mol_dm3"] is None
    staff(walk, "show_results", shown=True, prepared_mol_dm3=0.38)
    assert view(walk.state, 0.0)["results"]["prepared_mol_dm3"] == 0.38
    staff(walk, "show_results", shown=False)
    assert view(walk.state, 0.0)["results"]["prepared_mol_dm3"] is None
    staff(walk, "show_results", shown=True)
    assert view(walk.state, 0.0)["results"]["prepared_mol_dm3"] == 0.38, "told once, it comes back with the results"
    with pytest.raises(ActRefused) as nothing:
        staff(Walk(**{**ONCE, "results": "at once"}), "show_results", shown=True, prepared_mol_dm3=0.38)
    assert nothing.value.code == "not_now"
    assert fold_all(walk.happened).prepared_mol_dm3 == 0.38, "it is in the record"
