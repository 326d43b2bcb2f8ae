"""The station's questions: what each asks, which answers it takes, and what follows from an answer.

Each has an answer for somebody who does not know; then the portion's reading is kept and left out of the lines.
"""

from collections.abc import Callable, Collection, Sequence
from dataclasses import dataclass

from typing_extensions import TypedDict

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.state import FITS, LEAVES_OUT, SLIP, STANDS, TYPED_AGAIN, Asked, Repeat, State
from station.words import Message, say

NOT_SURE = "not sure"
OTHER_START_C = 2.0
"""A start so far from the first repeat's is asked about: a cup that was used is 3 to 8 °C warmer, the same bottle a few
tenths. Engineering judgement, no source."""

Follows = Callable[[Repeat, int], tuple[e.Event, ...]]


@dataclass(frozen=True)
class Answer:
    """One answer: its name in acts and events, its words, and the events that follow from it."""

    answer: str
    label: Message
    follows: Follows


@dataclass(frozen=True)
class Question:
    """A question in at most twelve words: the id of its message, and its answers."""

    text: str
    answers: tuple[Answer, ...]

    def about(self, portion: int) -> Message:
        """Return the question about this portion."""
        return say(self.text, portion=portion)


class AnswerShown(TypedDict):
    """An answer that can be given: its name in acts, and its words."""

    answer: str
    label: Message


class QuestionShown(TypedDict):
    """Something only a person can know, asked until it is answered."""

    id: str
    repeat: int
    portion: int
    code: str
    text: Message
    answers: list[AnswerShown]


def open_questions(state: State) -> list[QuestionShown]:
    """Return the questions that wait for an answer, oldest first, as the view gives them."""
    return [
        {
            "id": asked.question,
            "repeat": asked.repeat,
            "portion": asked.portion,
            "code": asked.code,
            "text": QUESTIONS[asked.code].about(asked.portion),
            "answers": [{"answer": each.answer, "label": each.label} for each in QUESTIONS[asked.code].answers],
        }
        for asked in state.asked
        if _is_open(state, asked)
    ]


def answer_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """Return the answer and what follows from it. Raises ActRefused for another question or answer."""
    asked = next((each for each in state.asked if each.question == act.question and _is_open(state, each)), None)
    if asked is None:
        raise ActRefused("no_such_question", say("refusal-question-not-open"))
    question = QUESTIONS[asked.code]
    given = next((each for each in question.answers if each.answer == act.answer), None)
    if given is None:
        known = ", ".join(each.answer for each in question.answers)
        raise ActRefused("no_such_answer", say("refusal-answers-are", known_text=known))
    said = e.QuestionAnswered(asked.repeat, asked.portion, asked.code, given.answer, act.key)
    return (said, *given.follows(state.repeats[asked.repeat - 1], asked.portion))


def ask_events(
    state: State, noticed: Sequence[tuple[int, str]], closed: Sequence[e.QuestionAnswered] = ()
) -> tuple[e.Event, ...]:
    """Return the questions to ask about these portions (0: the start) of the newest repeat, each asked once.

    One about a reading that was typed again, now (`closed`) or before, may be asked again.
    """
    repeat = state.repeats[-1]
    known = {each.question for each in state.asked if each.answer != TYPED_AGAIN}
    known -= {Asked(each.repeat, each.portion, each.code).question for each in closed}
    asked = (Asked(repeat.repeat, portion, code) for portion, code in noticed)
    return tuple(e.QuestionAsked(each.repeat, each.portion, each.code) for each in asked if each.question not in known)


def ask_about_start(state: State, start_c: float) -> tuple[e.Event, ...]:
    """Return the question about a start temperature of the newest repeat that lies far from the first one's."""
    before = [
        reading.temperature_c
        for each in state.repeats[:-1]
        if each.counts
        for reading in each.readings
        if reading.portion == 0 and reading.temperature_c is not None
    ]
    if not before or abs(start_c - before[0]) < OTHER_START_C:
        return ()
    return ask_events(state, [(0, "other_start")])


def _is_open(state: State, asked: Asked) -> bool:
    repeat = state.repeats[asked.repeat - 1]
    there = asked.portion == 0 or any(portion.portion == asked.portion for portion in repeat.portions)
    # What leaves a reading out can still be answered when the repeat is over, until the next begins.
    over = repeat.status == "ended" and asked.code in LEAVES_OUT and asked.repeat == len(state.repeats)
    waits = (asked.portion, asked.code) in repeat.asked
    return asked.answer is None and waits and there and (repeat.status == "running" or over)


def answered_by_readings(repeat: Repeat, answered: Collection[tuple[int, str]]) -> tuple[e.QuestionAnswered, ...]:
    """Return what closes open questions that the readings since have answered: all was as planned."""
    return tuple(
        e.QuestionAnswered(repeat.repeat, portion, code, FITS)
        for portion, code in repeat.asked
        if (portion, code) in answered
    )


def typed_again(repeat: Repeat, portion: int) -> tuple[e.QuestionAnswered, ...]:
    """Return what closes the question about a typed reading once another is typed in its place."""
    if portion not in repeat.misread and (portion, SLIP) not in repeat.asked:
        return ()
    return (e.QuestionAnswered(repeat.repeat, portion, SLIP, TYPED_AGAIN),)


def _nothing(_: Repeat, __: int) -> tuple[e.Event, ...]:
    return ()


def _unsure(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    return (e.PortionUnsure(repeat.repeat, portion),)


def _not_poured(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    if portion == len(repeat.portions) and repeat.status == "running":
        return (e.PortionUndone(repeat.repeat, portion),)
    # Others came after it: its number stays, with nothing poured, so that the volumes after it are right.
    return (e.PortionVolumeCorrected(repeat.repeat, portion, 0.0),)


def _twice(repeat: Repeat, portion: int) -> tuple[e.Event, ...]:
    poured = next(each.volume_cm3 for each in repeat.portions if each.portion == portion)
    return (e.PortionVolumeCorrected(repeat.repeat, portion, 2.0 * poured),)


def _spilled(repeat: Repeat, _: int) -> tuple[e.Event, ...]:
    return (e.RepeatSetAside(repeat.repeat, say("reason-spilled")),)


def _not_fresh(repeat: Repeat, _: int) -> tuple[e.Event, ...]:
    return (e.RepeatSetAside(repeat.repeat, say("reason-not-fresh")),)


_IDK = Answer(NOT_SURE, say("answer-not-sure"), _unsure)

QUESTIONS: dict[str, Question] = {
    "no_change": Question(
        "question-no-change",
        (
            Answer("yes", say("answer-yes-it-is-in"), _nothing),
            Answer("no", say("answer-no-not-yet"), _not_poured),
            _IDK,
        ),
    ),
    "double": Question(
        "question-double",
        (Answer("once", say("answer-once"), _nothing), Answer("twice", say("answer-twice"), _twice), _IDK),
    ),
    "volume": Question(
        "question-volume",
        (Answer("yes", say("answer-yes"), _nothing), Answer("no", say("answer-no"), _unsure), _IDK),
    ),
    "not_stirred": Question(
        "question-not-stirred",
        (
            Answer("yes", say("answer-yes"), _nothing),
            Answer("no", say("answer-stirring-now"), _nothing),
            Answer(NOT_SURE, say("answer-not-sure"), _nothing),
        ),
    ),
    "sudden_fall": Question(
        "question-sudden-fall",
        (
            Answer("no", say("answer-no"), _nothing),
            Answer("lid", say("answer-lid-back"), _unsure),
            Answer("spilled", say("answer-it-spilled"), _spilled),
            _IDK,
        ),
    ),
    "probe_out": Question(
        "question-probe-out",
        (Answer("yes", say("answer-yes"), _nothing), Answer("no", say("answer-it-is-now"), _unsure), _IDK),
    ),
    SLIP: Question(
        "question-slip",
        (
            Answer(STANDS, say("answer-read-so"), _nothing),
            Answer("no", say("answer-misread"), _nothing),
            Answer(NOT_SURE, say("answer-not-sure"), _nothing),
        ),
    ),
    "other_start": Question(
        "question-other-start",
        (
            Answer("yes", say("answer-fresh"), _nothing),
            Answer("no", say("answer-not-fresh"), _not_fresh),
            Answer(NOT_SURE, say("answer-not-sure"), _nothing),
        ),
    ),
}

SAYS = tuple(question.text for question in QUESTIONS.values())
"""The questions' messages: `Question.about` makes them."""
