"""Predict first: the group draws the curve that it expects, where the plan says so, until the first portion is in."""

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st
from pydantic import ValidationError

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.kinds import read_plan
from station.practical.plan_check import plan_toml
from station.practical.procedure import possible_acts
from station.practical.prompts import instruction
from station.practical.state import Step
from station.practical.view import view
from station.record.spreadsheet.sheets import notes_sheet
from tests.practical.test_set_up import UREA, Asked

POINTS = [[0.0, 20.0], [6.0, 24.5], [12.0, 23.0]]


def asked(**plan: Any) -> Asked:
    return Asked(predict_first=True, **plan)


def test_the_sketch_comes_before_the_other_steps_and_is_kept() -> None:
    walk = asked()
    assert (instruction(walk.state).code, walk.asks()) == ("set_up_sketch", "sketch_left_out")
    assert view(walk.state, walk.time_s)["sketch"] is None
    walk.act("sketch", points=POINTS)
    assert walk.asks() == "alkali_temperature"
    assert json.loads(json.dumps(view(walk.state, walk.time_s)["sketch"])) == POINTS


def test_it_may_be_left_out_and_drawn_later_all_the_same() -> None:
    walk = asked()
    walk.press()
    assert walk.asks() == "alkali_temperature"
    assert "sketch" in possible_acts(walk.state)
    walk.act("sketch", points=POINTS)
    assert walk.state.sketch is not None


def test_it_may_be_drawn_anew_until_the_first_portion_is_in() -> None:
    walk = asked()
    walk.act("sketch", points=POINTS)
    walk.to_pour()
    walk.act("sketch", points=POINTS[:2])
    assert walk.state.sketch == ((0.0, 20.0), (6.0, 24.5))
    walk.act("portion_added", portion=1)
    assert "sketch" not in possible_acts(walk.state)
    with pytest.raises(ActRefused, match="only before the first portion"):
        walk.act("sketch", points=POINTS)
    walk.act("repeat_restarted", reason="spilled")
    assert "sketch" not in possible_acts(walk.state), "the curve has been seen"


@pytest.mark.parametrize("points", [None, [], [[0, 20]], [[0, 20], [0, 21]], [[3, 20], [0, 21]]])
def test_a_curve_goes_from_left_to_right(points: Any) -> None:
    walk = asked()
    with pytest.raises(ActRefused, match="Draw a line"):
        walk.act("sketch", points=points)


@pytest.mark.parametrize("points", [[[0, 20], [3, 200]], [[0, float("nan")], [3, 20]], [[-1, 20], [3, 20]]])
def test_a_point_is_one_that_can_be_measured(points: Any) -> None:
    with pytest.raises(ValidationError):
        asked().act("sketch", points=points)


def test_without_the_choice_nothing_is_asked_and_nothing_taken() -> None:
    for walk in (Asked(), Asked(**UREA)):
        assert instruction(walk.state).code != "set_up_sketch"
        assert not {"sketch", "sketch_left_out"} & set(possible_acts(walk.state))
        with pytest.raises(ActRefused):
            walk.act("sketch", points=POINTS)


def test_a_record_without_the_key_opens_as_before() -> None:
    old = {key: value for key, value in Asked().state.plan.model_dump(mode="json").items() if key != "predict_first"}
    state = fold_all(
        [e.Stamped(1, "boot", 0.0, 0.0, "", "", e.from_body("plan_chosen", {"plan": old, "set_up": True}))]
    )
    assert (state.plan.sketches, state.sketch, state.set_up_step) == (False, None, "alkali")


def test_a_new_plan_forgets_the_sketch() -> None:
    walk = asked()
    walk.act("sketch", points=POINTS)
    walk.keep([e.PlanChosen(walk.state.plan.model_dump(mode="json"), set_up=True)])
    assert walk.state.sketch is None


def test_the_plan_file_has_the_choice_only_where_it_is_made() -> None:
    chosen = asked().state.plan
    assert "predict_first = true" in plan_toml(chosen)
    assert read_plan(plan_toml(chosen)) == chosen
    assert "predict_first" not in plan_toml(Asked().state.plan)


def test_the_notes_of_the_spreadsheet_tell_what_was_drawn() -> None:
    walk = asked()
    walk.act("sketch", points=POINTS)
    rows = [[str(cell) for cell in row] for row in notes_sheet(walk.happened).rows]
    assert any("prediction drawn" in row and "6 cm³: 24.5 °C" in row[-1] for row in rows)


@given(
    st.lists(st.tuples(st.floats(0, 1000), st.floats(-5, 60)), min_size=2, max_size=60, unique_by=lambda one: one[0])
)
def test_any_curve_from_left_to_right_is_kept_as_it_was_drawn(drawn: list[tuple[float, float]]) -> None:
    walk = asked()
    walk.act("sketch", points=sorted(drawn))
    (last,) = (each.event for each in walk.happened[-1:])
    assert e.from_body("curve_sketched", json.loads(json.dumps(last.to_body()))) == last
    assert walk.state.sketch == tuple(sorted(drawn))
    assert walk.step() is Step.READY
