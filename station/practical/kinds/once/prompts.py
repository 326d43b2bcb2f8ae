"""What a person is asked to do where something is mixed in once."""

from typing import Final

from station.practical.kinds.kind import Instruction, Prompts
from station.practical.state import State, Step
from station.words import Message, join, say


def _ready_meanwhile(state: State) -> Message:
    """The wait before mixing is when the solid is weighed, or the second liquid measured out."""
    if state.plan.portion_g is not None:
        return say("prompt-weigh-now", amount=state.cup_plan.added)
    return say("prompt-measure-now", amount=state.cup_plan.added)


def _start(state: State) -> Instruction:
    return Instruction("start", say("prompt-start-once"), join([_ready_meanwhile(state), say("prompt-keep-lid")]))


def _mix(state: State) -> Instruction:
    label = say("button-it-is-in")
    text = say("prompt-tip" if state.plan.portion_g is not None else "prompt-mix", amount=state.cup_plan.added)
    detail = join([say("prompt-press-mixing"), say("prompt-lid-and-stir")])
    return Instruction("tip" if state.plan.portion_g is not None else "mix", text, detail, "portion_added", 1, label)


def _after(_: State) -> Instruction:
    return Instruction("after", say("prompt-after"), say("prompt-keep-lid"))


def _own_mix(state: State) -> Instruction:
    text, label = say("prompt-own-mix", amount=state.cup_plan.added), say("button-it-is-in")
    detail = join([say("prompt-you-decide"), say("prompt-keep-lid")])
    code = "own_tip" if state.plan.portion_g is not None else "own_pour"
    return Instruction(code, text, detail, "portion_added", state.poured + 1, label)


def _own_after(state: State) -> Instruction:
    """What was read stands; the recording goes on to its end."""
    if state.current is not None and any(each.portion == state.poured for each in state.current.readings):
        return _after(state)
    text, label = say("prompt-own-reading"), say("button-read-now")
    detail = join([say("prompt-you-decide"), say("prompt-recorded-to-the-end")])
    return Instruction("own_reading_now", text, detail, "read_now", state.poured, label)


def _typed_before(state: State) -> Instruction:
    return Instruction("clock_before", _by_clock(state), join([_ready_meanwhile(state), say("prompt-clock-stir")]))


def _typed_after(state: State) -> Instruction:
    return Instruction("clock_after", _by_clock(state), join([say("prompt-clock-stir"), say("prompt-keep-lid")]))


def _by_clock(state: State) -> Message:
    return say("prompt-clock-read", every_s=f"{state.plan.clock_s or 0.0:g}")


PROMPTS: Final[Prompts] = {Step.START: _start, Step.POUR: _mix, Step.SETTLE: _after}
OWN_PROMPTS: Final[Prompts] = {Step.POUR: _own_mix, Step.SETTLE: _own_after}
TYPED_PROMPTS: Final[Prompts] = {Step.START: _typed_before, Step.SETTLE: _typed_after}
