"""The station's questions: what each asks, which answers it takes, and what follows from an answer.

Each has an answer for somebody who does not know; then the portion's reading is kept and left out of the lines.
"""

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import Any

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.state import Asked, Repeat, State

NOT_SURE = "not sure"

Follows = Callable[[Repeat, int], tuple[e.Event, ...]]


@dataclass(frozen=True)
class Answer:
    """One answer: its name in acts and events, its words, and the events that follow from it."""

    answer: str
    label: str
    follows: Follows


@dataclass(frozen=True)
class Question:
    """A question in at most twelve words; `{portion}` stands for the portion's number."""

    text: str
    answers: tuple[Answer, ...]


def open_questions(state: State) -> list[dict[str, Any]]:
    """Return the questions that wait for an answer, oldest first, as the view gives them."""
    return [
        {
            "id": asked.question,
            "repeat": asked.repeat,
            "portion": asked.portion,
            "code": asked.code,
            "text": QUESTIONS[asked.code].text.format(portion=asked.portion),
            "answers": [{"answer": each.answer, "label": each.label} for each in QUESTIONS[asked.code].answers],
        }
        for asked in state.asked
        if _is_open(state, asked)
    ]


def answer_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """Return the answer and what follows from it. Raises ActRefused for another question or answer."""
    asked = next((each for each in state.asked if each.question == act.question and _is_open(state, each)), None)
    if asked is None:
        raise ActRefused("no_such_question", "That question is not open: it was answered, or no longer matters.")
    question = QUESTIONS[asked.code]
    given = next((each for each in question.answers if each.answer == act.answer), None)
    if given is None:
        known = ", ".join(each.answer for each in question.answers)
        raise ActRefused("no_such_answer", f"The answers are: {known}.")
    said = e.QuestionAnswered(asked.repeat, asked.portion, asked.code, given.answer, act.key)
    return (said, *given.follows(state.repeats[asked.repeat - 1], asked.portion))


def ask_events(state: State, noticed: Sequence[tuple[int, str]]) -> tuple[e.Event, ...]:
    """Return the questions to ask about these portions of the newest repeat, each asked once."""
    repeat = state.repeats[-1]
    known = {each.question for each in state.asked}
    asked = (Asked(repeat.repeat, portion, code) for portion, code in noticed)
    return tuple(e.QuestionAsked(each.repeat, each.portion, each.code) for each in asked if each.question not in known)


def _is_open(state: State, asked: Asked) -> bool:
    repeat = state.repeats[asked.repeat - 1]
    there = any(portion.portion == asked.portion for portion in repeat.portions)
    return asked.answer is None and repeat.status == "running" and there


def _nothing(_: Repeat, __: int) -> tuple[e.Event, ...]:
    return ()


def _unsure(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    return (e.PortionUnsure(repeat.repeat, portion),)


def _not_poured(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    if portion == len(repeat.portions):
        return (e.PortionUndone(repeat.repeat, portion),)
    # Others came after it: its number stays, with nothing poured, so that the volumes after it are right.
    return (e.PortionVolumeCorrected(repeat.repeat, portion, 0.0),)


def _twice(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    poured = next(each.volume_cm3 for each in repeat.portions if each.portion == portion)
    return (e.PortionVolumeCorrected(repeat.repeat, portion, 2.0 * poured),)


def _spilled(repeat: Repeat, _: int) -> tuple[e.Event, ...]:
    return (e.RepeatSetAside(repeat.repeat, "the cup was spilled"),)


_IDK = Answer(NOT_SURE, "Not sure", _unsure)

QUESTIONS: dict[str, Question] = {
    "no_change": Question(
        "No change: did you add portion {portion}?",
        (Answer("yes", "Yes, it is in", _nothing), Answer("no", "No, not yet", _not_poured), _IDK),
    ),
    "double": Question(
        "A big change: was portion {portion} added once or twice?",
        (Answer("once", "Once", _nothing), Answer("twice", "Twice", _twice), _IDK),
    ),
    "not_stirred": Question(
        "The temperature creeps: has the cup been stirred?",
        (
            Answer("yes", "Yes", _nothing),
            Answer("no", "Stirring now", _nothing),
            Answer(NOT_SURE, "Not sure", _nothing),
        ),
    ),
    "sudden_fall": Question(
        "A sudden change: did something spill, or is the lid off?",
        (
            Answer("no", "No", _nothing),
            Answer("lid", "Lid back on now", _unsure),
            Answer("spilled", "It spilled", _spilled),
            _IDK,
        ),
    ),
    "probe_out": Question(
        "Is the probe's tip in the liquid, free of the cup?",
        (Answer("yes", "Yes", _nothing), Answer("no", "It is now", _unsure), _IDK),
    ),
}
