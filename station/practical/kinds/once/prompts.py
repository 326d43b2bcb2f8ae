"""What a person is asked to do where something is mixed in once."""

from typing import Final

from station.practical.kinds.kind import Instruction, Prompts
from station.practical.state import State, Step
from station.words import join, say


def _start(_: State) -> Instruction:
    return Instruction("start", say("prompt-start-once"), say("prompt-keep-lid"))


def _mix(state: State) -> Instruction:
    text, label = say("prompt-mix", amount=state.plan.added), say("button-it-is-in")
    return Instruction(
        "mix", text, join([say("prompt-press-mixing"), say("prompt-lid-and-stir")]), "portion_added", 1, label
    )


def _after(_: State) -> Instruction:
    return Instruction("after", say("prompt-after"), say("prompt-keep-lid"))


def _own_mix(state: State) -> Instruction:
    text, label = say("prompt-own-mix", amount=state.plan.added), say("button-it-is-in")
    return Instruction(
        "own_pour",
        text,
        join([say("prompt-you-decide"), say("prompt-keep-lid")]),
        "portion_added",
        state.poured + 1,
        label,
    )


PROMPTS: Final[Prompts] = {Step.START: _start, Step.POUR: _mix, Step.SETTLE: _after}
OWN_PROMPTS: Final[Prompts] = {Step.POUR: _own_mix}
