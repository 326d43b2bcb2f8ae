"""Setting the cup up step by step, and what an early finish leaves behind.

Stations ask for these steps since they stand in the plan's choice; a record without them asks as it always did.
"""

from typing import Any

import pytest

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.kinds import plan_from
from station.practical.procedure import possible_acts
from station.practical.prompts import instruction
from station.practical.questions import OTHER_START_C, open_questions
from station.practical.state import State, Step
from tests.practical.walk import PLAN, Walk

UREA: dict[str, Any] = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 25.0},
    "addition": {"name": "urea", "mass_g": 5.0},
}


class Asked(Walk):
    """A walk at a station that asks for each step."""

    def __init__(self, *, has_probe: bool = True, **plan: object) -> None:
        super().__init__(**plan)
        chosen = plan_from(plan if plan.get("kind", "portions") != "portions" else {**PLAN, **plan})
        if not has_probe:
            self.keep([e.StationStarted("", "none", None, "none")])
        self.keep([e.PlanChosen(chosen.model_dump(mode="json"), set_up=True)])

    def asks(self) -> str | None:
        """What the one button means now."""
        return instruction(self.state).act

    def press(self) -> None:
        """Do what is asked, as the panel's button does."""
        asked = instruction(self.state)
        assert asked.act is not None
        self.act(asked.act, **({} if asked.portion is None else {"portion": asked.portion}))


def test_three_steps_come_before_the_first_repeat() -> None:
    walk = Asked()
    assert walk.asks() == "alkali_temperature"
    walk.press()
    assert (walk.step(), walk.asks()) == (Step.ALKALI, None)
    walk.rest(19.0)
    taken = instruction(walk.state)
    assert taken.act == "probe_rinsed"
    assert taken.detail == "Temperature taken: potassium hydroxide, 19.0 °C."
    walk.press()
    assert walk.asks() == "begin"
    walk.press()
    assert walk.step() == Step.START
    assert walk.state.alkali_c == 19.0


def test_between_two_repeats_the_cup_is_emptied_washed_and_filled() -> None:
    walk = Asked()
    walk.to_pour()
    walk.repeat()
    assert walk.step() == Step.RINSE
    seen = []
    while walk.step() == Step.RINSE:
        seen.append(walk.asks())
        walk.press()
    assert seen == ["cup_emptied", "cup_rinsed", "rinsed"]
    assert (walk.step(), len(walk.state.repeats)) == (Step.START, 2)


def test_a_filled_cup_is_a_fact_whatever_step_was_asked_for() -> None:
    walk = Asked()
    assert "begin" in possible_acts(walk.state)
    walk.act("begin")
    assert walk.step() == Step.START


def test_steps_are_done_in_their_order_and_only_where_they_are_asked_for() -> None:
    walk = Asked()
    with pytest.raises(ActRefused, match="Another step"):
        walk.act("probe_rinsed")
    walk.act("alkali_left_out")
    assert walk.asks() == "probe_rinsed"
    assert walk.state.alkali_c is None
    assert not {"probe_rinsed", "alkali_left_out"} & set(possible_acts(Walk().state))


def test_a_probe_that_was_dipped_again_is_rinsed_again() -> None:
    walk = Asked()
    walk.act("alkali_temperature", temperature_c=19.0)
    walk.act("probe_rinsed")
    walk.act("alkali_temperature")
    walk.rest(19.5)
    assert (walk.asks(), walk.state.alkali_c) == ("probe_rinsed", 19.5)


def test_a_solid_has_no_temperature_to_take() -> None:
    assert Asked(has_probe=True, **UREA).asks() == "probe_rinsed"


def test_without_a_probe_the_temperature_is_typed_or_left_out() -> None:
    walk = Asked(has_probe=False)
    assert instruction(walk.state).code == "thermometer"
    walk.act("thermometer", division_c=1)
    assert (instruction(walk.state).code, walk.asks()) == ("set_up_alkali_typed", "alkali_left_out")
    walk.act("alkali_temperature", temperature_c=20)
    assert "thermometer" in instruction(walk.state).text
    walk.press()
    assert walk.asks() == "begin"


def test_a_lost_probe_is_said_before_it_is_to_be_dipped() -> None:
    walk = Asked()
    for _ in range(3):
        walk.sample(None, "gone")
    assert instruction(walk.state).code == "probe_lost"


def test_a_record_without_these_steps_asks_as_it_did() -> None:
    walk = Walk()
    assert not walk.state.set_up_asked
    assert instruction(walk.state).code == "begin"
    walk.to_pour()
    walk.repeat()
    assert (instruction(walk.state).code, instruction(walk.state).act) == ("rinse", "rinsed")
    old = e.from_body("plan_chosen", {"plan": walk.state.plan.model_dump(mode="json")})
    assert old == e.PlanChosen(walk.state.plan.model_dump(mode="json"))


def second_start(temperature_c: float) -> Asked:
    walk = Asked()
    walk.to_pour()
    walk.repeat()
    walk.act("rinsed")
    walk.rest(temperature_c)
    return walk


def test_a_start_far_from_the_first_is_asked_about() -> None:
    walk = second_start(20.0 + OTHER_START_C + 0.5)
    (question,) = open_questions(walk.state)
    assert (question["repeat"], question["portion"], question["code"]) == (2, 0, "other_start")
    assert "rinse the cup" in question["text"]
    walk.act("answer", question=question["id"], answer="no")
    assert walk.state.repeats[1].status == "set aside"
    assert (walk.step(), walk.asks()) == (Step.RINSE, "cup_emptied")


def test_a_fresh_cup_at_another_temperature_goes_on() -> None:
    walk = second_start(20.0 - OTHER_START_C - 0.5)
    (question,) = open_questions(walk.state)
    walk.act("answer", question=question["id"], answer="yes")
    assert open_questions(walk.state) == []
    assert walk.step() == Step.POUR


def test_a_start_near_the_first_is_not_asked_about() -> None:
    assert open_questions(second_start(20.0 + OTHER_START_C - 0.5).state) == []


def test_a_typed_start_far_from_the_first_is_asked_about_too() -> None:
    walk = Asked(has_probe=False, portions={"volume_cm3": 3, "count": 1}, repeats=2)
    walk.act("thermometer", division_c=1)
    walk.act("begin")
    walk.act("reading", temperature_c=20, portion=0)
    walk.act("portion_added", portion=1)
    walk.act("reading", temperature_c=24, portion=1)
    walk.act("rinsed")
    walk.act("reading", temperature_c=24, portion=0)
    assert [each["code"] for each in open_questions(walk.state)] == ["other_start"]


# An early finish, taken back.


def test_a_finish_while_it_settles_is_taken_back_and_settles_on() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.act("portion_added", portion=2)
    walk.sample(21.5)
    before = walk.state.running
    walk.act("finish")
    assert walk.step() == Step.DONE
    assert "turning point" in instruction(walk.state).text
    assert "finish_undone" in possible_acts(walk.state)
    walk.act("finish_undone")
    assert (walk.step(), walk.state.ended_early) == (Step.SETTLE, False)
    assert walk.state.running == before
    walk.rest(21.5)
    assert (walk.step(), walk.state.prompted) == (Step.POUR, 3)


def test_a_finish_before_a_portion_is_taken_back_to_that_portion() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.act("finish")
    walk.act("finish_undone")
    assert (walk.step(), walk.state.prompted) == (Step.POUR, 2)
    assert [each.portion for each in walk.state.repeats[0].readings] == [0, 1]


def test_a_finish_in_the_start_waits_for_the_start_again() -> None:
    walk = Walk()
    walk.act("begin")
    walk.sample(20.0)
    walk.act("finish")
    walk.act("finish_undone")
    assert walk.step() == Step.START
    assert walk.state.repeats[0].readings == ()


def test_a_finish_between_repeats_is_taken_back_to_the_next_cup() -> None:
    walk = Walk()
    walk.to_pour()
    walk.repeat()
    walk.act("finish")
    assert walk.state.turned
    walk.act("finish_undone")
    assert (walk.step(), walk.state.repeats[0].status) == (Step.RINSE, "ended")


def test_a_finish_before_anything_is_taken_back_to_the_beginning() -> None:
    walk = Walk()
    walk.act("finish")
    walk.act("finish_undone")
    assert walk.step() == Step.READY


def test_what_was_read_off_ends_the_way_back() -> None:
    walk = Walk()
    walk.to_pour()
    walk.repeat()
    walk.act("finish")
    walk.act("own_reading", end_point_cm3=9.0, reason="lines drawn on paper")
    assert walk.state.own_reading is not None
    assert walk.state.own_reading.end_point_cm3 == 9.0
    assert "finish_undone" not in possible_acts(walk.state)
    with pytest.raises(ActRefused, match="own reading"):
        walk.act("finish_undone")


def test_a_number_before_the_turning_point_needs_a_reason() -> None:
    walk = Walk()
    walk.to_pour()
    walk.portion(21.0)
    walk.act("finish")
    with pytest.raises(ActRefused) as refused:
        walk.act("own_reading", end_point_cm3=2.0)
    assert refused.value.code == "no_turn"
    walk.act("own_reading", end_point_cm3=2.0, reason="read off the points")
    assert walk.state.own_reading is not None


def test_a_practical_that_ended_by_itself_has_no_finish_to_take_back_but_goes_on_with_another_cup() -> None:
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.repeat()
    assert walk.step() == Step.DONE
    assert "finish_undone" not in possible_acts(walk.state)
    walk.act("finish_undone")
    assert (walk.step(), walk.state.repeats[0].status) == (Step.RINSE, "ended")


def test_a_volume_that_a_person_said_is_confirmed() -> None:
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.repeat()
    walk.act("portion_volume", repeat=1, portion=2, volume_cm3=3)
    assert walk.state.repeats[0].confirmed == {2}
    assert walk.state.repeats[0].total_cm3 == 12.0


def test_the_same_events_fold_to_the_same_state() -> None:
    walk = second_start(24.0)
    walk.act("finish")
    walk.act("finish_undone")
    assert fold_all(walk.happened, State()) == walk.state


def test_one_more_repeat_begins_with_the_cup_emptied_washed_and_filled() -> None:
    walk = Asked(repeats=1)
    walk.to_pour()
    walk.repeat()
    assert walk.step() == Step.DONE
    assert "one_more" in possible_acts(walk.state)
    walk.act("one_more")
    seen = []
    while walk.step() == Step.RINSE:
        seen.append(walk.asks())
        walk.press()
    assert seen == ["cup_emptied", "cup_rinsed", "rinsed"]
    assert (walk.step(), len(walk.state.repeats)) == (Step.START, 2)


def test_one_more_repeat_that_is_left_out_after_all_changes_nothing() -> None:
    walk = Asked(repeats=1)
    walk.to_pour()
    walk.repeat()
    walk.act("own_reading", end_point_cm3=8.0, reason="read off the points", sure=True)
    before = walk.state.own_reading
    walk.act("one_more")
    walk.press()
    walk.act("finish")
    assert (walk.step(), walk.state.own_reading, walk.state.ended_early) == (Step.DONE, before, False)
    assert "finish_undone" not in possible_acts(walk.state)
