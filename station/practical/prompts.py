"""The one instruction: what a person is asked to do now, in at most twelve words."""

from station.practical.kinds.kind import Instruction, kind_of
from station.practical.rules import may_go_on
from station.practical.set_up import set_up_instruction
from station.practical.state import State, Step
from station.words import join, say


def instruction(state: State) -> Instruction:
    """Return the instruction for this state."""
    if state.probes.check is not None:
        return Instruction("check", say("prompt-probe-checking"), say("prompt-only-they"))
    lost = state.probe == "lost" and not state.typed
    if lost and (state.step in _NEEDS_PROBE or state.set_up_step == "alkali"):
        return _without_probe(state)
    chosen = not state.typed or state.thermometer_division_c is not None
    setting_up = set_up_instruction(state) if chosen else None
    if setting_up is not None:
        return setting_up
    kind = kind_of(state.plan)
    if state.typed and state.step in (typed := {**_TYPED, **kind.typed_prompts}):
        return typed[state.step](state)
    if state.plan.own_judgement and state.step in (own := {**_OWN, **kind.own_prompts}):
        return own[state.step](state)
    return {**_INSTRUCTIONS, **kind.prompts}[state.step](state)


def _ready(state: State) -> Instruction:
    detail = say("prompt-eye-protection")
    if state.alkali_c is None and state.cup_plan.portion_cm3:
        detail = join([detail, say("prompt-dip-first", reagent=state.plan.added_name)])
    text = say("prompt-begin", amount=state.cup_plan.in_cup)
    return Instruction("begin", text, detail, "begin", None, say("button-cup-filled"))


def _alkali(state: State) -> Instruction:
    text = say("prompt-hold-probe", reagent=state.plan.added_name)
    return Instruction("alkali", text, say("prompt-takes-by-itself"))


def _rinse(state: State) -> Instruction:
    text = say("prompt-rinse", amount=state.cup_plan.in_cup)
    return Instruction("rinse", text, say("prompt-wipe"), "rinsed", None, say("button-rinsed"))


def _paused(state: State) -> Instruction:
    recorded = say("prompt-still-recorded")
    if state.held:
        return Instruction("paused", say("prompt-paused-by", role=state.paused_by or ""), recorded)
    return Instruction("paused", say("prompt-paused"), recorded, "resume", None, say("button-go-on"))


def _done(state: State) -> Instruction:
    if may_go_on(state) and not state.turned:
        return Instruction("done", say("prompt-finished-before-turn"), say("prompt-go-on-or-clear"))
    return Instruction("done", say("prompt-finished"), say("clear-pour-away"))


def _without_probe(state: State) -> Instruction:
    bad = state.recent[-1].bad if state.recent else None
    if bad == "several":
        return Instruction("probe_lost", say("prompt-several-probes"), say("prompt-probe-id"))
    if bad == "other_probe":
        return Instruction("probe_lost", say("prompt-another-probe"), say("prompt-keep-new-probe"))
    return Instruction("probe_lost", say("prompt-no-reading"), say("prompt-nothing-lost"))


def _ready_to_type(state: State) -> Instruction:
    if state.thermometer_division_c is None:
        return Instruction("thermometer", say("prompt-choose-divisions"), say("prompt-look-at-scale"))
    text, first = say("prompt-begin-typed", amount=state.cup_plan.in_cup), say("prompt-eye-protection")
    return Instruction("begin", text, first, "begin", None, say("button-cup-filled-thermometer"))


def _type_reading(state: State) -> Instruction:
    return Instruction(
        "type_start" if state.step is Step.START else "type_reading",
        say("prompt-type-reading"),
        say("prompt-eye-level"),
        portion=state.poured,
    )


def _own_reading_now(state: State) -> Instruction:
    return Instruction(
        "own_start" if state.step is Step.START else "own_reading_now",
        say("prompt-own-reading"),
        say("prompt-you-decide"),
        "read_now",
        state.poured,
        say("button-read-now"),
    )


_TYPED = {Step.READY: _ready_to_type, Step.START: _type_reading, Step.SETTLE: _type_reading}
_OWN = {Step.START: _own_reading_now, Step.SETTLE: _own_reading_now}

_NEEDS_PROBE = frozenset({Step.ALKALI, Step.START, Step.SETTLE})

_INSTRUCTIONS = {
    Step.READY: _ready,
    Step.ALKALI: _alkali,
    Step.RINSE: _rinse,
    Step.PAUSED: _paused,
    Step.DONE: _done,
}
