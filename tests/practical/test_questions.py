"""The station's questions: asked once, answered once, and what follows from each answer."""

import pytest

from station.practical import events as e
from station.practical.acts import ActRefused
from station.practical.dataset import repeat_data
from station.practical.questions import NOT_SURE, QUESTIONS, answered_by_readings, ask_events
from station.practical.state import DOUBTS_VOLUME, LEAVES_OUT, Step
from station.practical.view import view
from tests.practical.walk import Walk, kinds


def asked(code: str, portions: int = 1) -> Walk:
    """A repeat in which the station asks about the newest portion."""
    walk = Walk()
    walk.to_pour()
    for number in range(1, portions + 1):
        walk.act("portion_added", portion=number)
    walk.keep(list(ask_events(walk.state, ((walk.state.poured, code),))))
    return walk


@pytest.mark.parametrize("code", QUESTIONS)
def test_a_question_is_at_most_twelve_words_and_takes_not_sure(code: str) -> None:
    (question,) = view(asked(code).state, 0.0)["questions"]
    assert len(question["text"].split()) <= 12
    assert question["id"] == f"1-1-{code}"
    assert NOT_SURE in [each["answer"] for each in question["answers"]]


@pytest.mark.parametrize("code", QUESTIONS)
def test_it_is_asked_once_and_answered_once(code: str) -> None:
    walk = asked(code)
    assert ask_events(walk.state, ((walk.state.poured, code),)) == ()
    walk.act("answer", question=f"1-1-{code}", answer=NOT_SURE)
    assert view(walk.state, 0.0)["questions"] == []
    if walk.state.step is Step.SETTLE:
        with pytest.raises(ActRefused, match="closed"):
            walk.act("answer", question=f"1-1-{code}", answer=NOT_SURE)


def test_a_portion_that_was_not_poured_is_taken_back() -> None:
    walk = asked("no_change")
    answered = walk.act("answer", question="1-1-no_change", answer="no")
    assert kinds(answered) == ["question_answered", "portion_undone"]
    assert (walk.state.step, walk.state.poured) == (Step.POUR, 0)


def test_one_that_others_followed_is_left_out_instead() -> None:
    walk = asked("no_change")
    walk.act("portion_added", portion=2)
    answered = walk.act("answer", question="1-1-no_change", answer="no")
    assert kinds(answered) == ["question_answered", "portion_volume_corrected"]
    assert walk.state.repeats[0].added_cm3(2) == 3.0


def test_a_portion_poured_twice_counts_twice() -> None:
    walk = asked("double")
    walk.act("answer", question="1-1-double", answer="twice")
    assert walk.state.repeats[0].total_cm3 == 6.0


def test_a_spilled_cup_sets_the_repeat_aside() -> None:
    walk = asked("sudden_fall")
    walk.act("answer", question="1-1-sudden_fall", answer="spilled")
    assert walk.state.step is Step.RINSE
    assert walk.state.repeats[0].reason == "the cup was spilled"
    assert view(walk.state, 0.0)["questions"] == []


@pytest.mark.parametrize("code", ["no_change", "double", "sudden_fall", "probe_out"])
def test_not_sure_keeps_the_reading_and_leaves_it_out_of_the_lines(code: str) -> None:
    walk = asked(code)
    walk.act("answer", question=f"1-1-{code}", answer=NOT_SURE)
    assert walk.state.repeats[0].unsure(1)


def test_another_answer_or_question_is_refused_with_what_is_known() -> None:
    walk = asked("sudden_fall")
    before = walk.state
    with pytest.raises(ActRefused, match="The answers are: no, lid, spilled, not sure"):
        walk.act("answer", question="1-1-sudden_fall", answer="maybe")
    with pytest.raises(ActRefused, match="closed"):
        walk.act("answer", question="1-9-sudden_fall", answer="no")
    assert walk.state == before


def test_a_question_about_a_portion_taken_back_is_closed() -> None:
    walk = asked("double")
    walk.act("portion_undone", portion=1)
    assert view(walk.state, 0.0)["questions"] == []
    assert isinstance(walk.happened[-1].event, e.PortionUndone)


@pytest.mark.parametrize("code", sorted(LEAVES_OUT))
def test_until_it_is_answered_the_reading_is_left_out(code: str) -> None:
    walk = asked(code)
    (repeat,) = walk.state.repeats
    assert repeat.unsure(1)
    assert repeat.unsure_volume(1) == (code in DOUBTS_VOLUME)
    (pour,) = repeat_data(repeat).pours
    assert pour[2] == (code in DOUBTS_VOLUME)


def test_what_leaves_nothing_out_changes_nothing_meanwhile() -> None:
    assert not any(asked(code).state.repeats[0].unsure(1) for code in set(QUESTIONS) - LEAVES_OUT)


def test_what_the_readings_since_have_answered_is_closed_and_counts() -> None:
    walk = asked("no_change", portions=2)
    walk.keep(list(answered_by_readings(walk.state.repeats[0], {(2, "no_change"), (1, "double")})))
    assert view(walk.state, 0.0)["questions"] == []
    assert not walk.state.repeats[0].unsure(2)


def test_a_portion_not_poured_in_a_repeat_that_is_over_holds_nothing() -> None:
    walk = asked("no_change", portions=4)
    walk.keep([e.RepeatEnded(1)])
    answered = walk.act("answer", question="1-4-no_change", answer="no")
    assert kinds(answered) == ["question_answered", "portion_volume_corrected"]
