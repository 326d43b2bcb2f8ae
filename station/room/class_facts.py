"""From a bench's state to what the class result asks of it: its ended own repeats, and what its record says."""

from dataclasses import replace
from typing import Any

from station.practical.dataset import question_for
from station.practical.questions import QUESTIONS
from station.practical.state import Repeat, State

Json = dict[str, Any]

_NO_MATTER = ("title", "results")
"""What of a plan changes no result."""


def has_ended(state: State) -> bool:
    """Whether the bench has a repeat of its own that ended and counts."""
    return any(repeat.status == "ended" for repeat in state.repeats)


def question_of(state: State) -> Json:
    """Return the question about the bench's own ended repeats; readings taken over from elsewhere are not its own."""
    question = question_for(replace(state, adopted=None))
    plan = {name: value for name, value in question["plan"].items() if name not in _NO_MATTER}
    return {**question, "plan": plan, "repeats": [each for each in question["repeats"] if each["ended"]]}


def facts_of(state: State) -> Json:
    """Return what is said of the bench beside its numbers."""
    return {
        "group": state.group,
        "aside": [{"repeat": each.repeat, "reason": each.reason or ""} for each in state.repeats if not each.counts],
        "happened": [*_answers(state), *_readings(state)],
    }


def _answers(state: State) -> list[str]:
    counted = {repeat.repeat for repeat in state.repeats if repeat.status == "ended"}
    found = []
    for asked in state.asked:
        if asked.repeat not in counted:
            continue
        question = QUESTIONS[asked.code]
        label = next((each.label for each in question.answers if each.answer == asked.answer), "no answer")
        text = question.text.format(portion=asked.portion)
        found.append(f"Repeat {asked.repeat}, portion {asked.portion}: the station asked “{text}”, answer: {label}.")
    return found


def _readings(state: State) -> list[str]:
    found = []
    for repeat in state.repeats:
        if repeat.status != "ended":
            continue
        early = 0 if state.plan.own_judgement else _unsettled(repeat)
        if early:
            found.append(f"Repeat {repeat.repeat}: {early} readings were taken before they had settled.")
        unsure = sum(each.unsure for each in repeat.portions)
        if unsure:
            found.append(f"Repeat {repeat.repeat}: {unsure} portions are in doubt and left out of the lines.")
    return found


def _unsettled(repeat: Repeat) -> int:
    return sum(not each.settled for each in repeat.readings)
