"""What a person is asked to do where portions are poured one after the other."""

from typing import Final

from station.practical.kinds.kind import Instruction, Prompts
from station.practical.state import State, Step
from station.words import join, say


def _start(_: State) -> Instruction:
    return Instruction("start", say("prompt-start"), say("prompt-keep-lid"))


def _pour(state: State) -> Instruction:
    portion = state.prompted or state.poured + 1
    return Instruction(
        "pour",
        say("prompt-portion", portion=portion, amount=state.plan.added),
        join([say("prompt-press-as-soon"), say("prompt-lid-and-stir")]),
        "portion_added",
        portion,
        say("button-portion-is-in", portion=portion),
    )


def _settle(_: State) -> Instruction:
    return Instruction("settle", say("prompt-settle"), say("prompt-keep-lid"))


def _own_pour(state: State) -> Instruction:
    portion = state.poured + 1
    text = say("prompt-own-portion", portion=portion, amount=state.plan.added)
    label = say("button-portion-is-in", portion=portion)
    return Instruction(
        "own_pour", text, join([say("prompt-you-decide"), say("prompt-keep-lid")]), "portion_added", portion, label
    )


PROMPTS: Final[Prompts] = {Step.START: _start, Step.POUR: _pour, Step.SETTLE: _settle}
OWN_PROMPTS: Final[Prompts] = {Step.POUR: _own_pour}
