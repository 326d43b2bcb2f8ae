"""Setting the cup up: the steps before a repeat, each with its act, and what a person is asked to do in it.

First, where the plan asks for it, the curve that the group expects; then the temperature of what will be added, a
clean probe, the filled cup; between two repeats the cup is emptied and washed. That the cup is filled is a fact
whenever it is said: `begin` and `rinsed` need none of these steps.
"""

from collections.abc import Callable, Mapping
from typing import Final

from station.practical import events as e
from station.practical.acts import Act, ActRefused
from station.practical.events.cup import SetUpStep
from station.practical.kinds.kind import Instruction
from station.practical.state import State, Step
from station.words import Message, say

SET_UP_ACTS: Final[Mapping[str, SetUpStep]] = {
    "sketch_left_out": "sketch",
    "alkali_left_out": "alkali",
    "probe_rinsed": "probe",
    "cup_emptied": "empty",
    "cup_rinsed": "wash",
}
"""The acts that end a step: the alkali's temperature is otherwise taken by `alkali_temperature`."""


def is_next(state: State, act: str) -> bool:
    """Whether the step that this act ends is under way."""
    step = SET_UP_ACTS[act]
    return state.set_up_step == step or (step == "alkali" and state.set_up_asked and state.step is Step.ALKALI)


def set_up_events(state: State, act: Act, _: float) -> tuple[e.Event, ...]:
    """End the step; where none is asked for it is only kept. Raises ActRefused for any but the one that is next."""
    if state.set_up_asked and not is_next(state, act.act):
        raise ActRefused("not_now", say("refusal-not-this-step"))
    return (e.SetUpStepDone(SET_UP_ACTS[act.act], act.key),)


def set_up_instruction(state: State) -> Instruction | None:
    """Return what to do in the step under way; None where there is none."""
    step = state.set_up_step
    return None if step is None else _ASKS[step](state)


def _sketch(_: State) -> Instruction:
    text, label = say("prompt-set-up-sketch"), say("button-sketch-left-out")
    return Instruction("set_up_sketch", text, say("prompt-set-up-sketch-where"), "sketch_left_out", None, label)


def _alkali(state: State) -> Instruction:
    first, reagent = say("prompt-eye-protection"), state.plan.added_name
    if state.typed:
        text, label = say("prompt-set-up-alkali-typed", reagent=reagent), say("button-alkali-left-out")
        return Instruction("set_up_alkali_typed", text, first, "alkali_left_out", None, label)
    text, label = say("prompt-set-up-alkali", reagent=reagent), say("button-probe-in-alkali")
    return Instruction("set_up_alkali", text, first, "alkali_temperature", None, label)


def _probe(state: State) -> Instruction:
    if state.alkali_c is None:
        detail = say("prompt-set-up-clean")
    else:
        detail = say("prompt-set-up-taken", reagent=state.plan.added_name, temperature_c=f"{state.alkali_c:.1f}")
    text, label = say("prompt-set-up-probe", tool=_tool(state)), say("button-probe-rinsed")
    return Instruction("set_up_probe", text, detail, "probe_rinsed", None, label)


def _fill(state: State) -> Instruction:
    text, label = say("prompt-set-up-fill", amount=state.cup_plan.in_cup, tool=_tool(state)), _filled(state)
    if state.step is Step.READY:
        return Instruction("begin", text, say("prompt-eye-protection"), "begin", None, label)
    return Instruction("refill", text, say("prompt-set-up-same-bottle"), "rinsed", None, label)


def _filled(state: State) -> Message:
    return say("button-set-up-filled", tool=_tool(state))


def _empty(_: State) -> Instruction:
    text, label = say("prompt-set-up-empty"), say("button-cup-emptied")
    return Instruction("set_up_empty", text, say("prompt-set-up-ask"), "cup_emptied", None, label)


def _wash(state: State) -> Instruction:
    text, label = say("prompt-set-up-wash", tool=_tool(state)), say("button-cup-rinsed")
    return Instruction("set_up_wash", text, say("prompt-set-up-dry"), "cup_rinsed", None, label)


def _tool(state: State) -> str:
    return "thermometer" if state.typed else "probe"


_ASKS: Final[Mapping[SetUpStep, Callable[[State], Instruction]]] = {
    "sketch": _sketch,
    "alkali": _alkali,
    "probe": _probe,
    "fill": _fill,
    "empty": _empty,
    "wash": _wash,
}
