"""Instructions stay short in every language, whatever the bench is at."""

from dataclasses import replace
from itertools import product

import pytest

from station.practical.checks.register import Check, Probes
from station.practical.kinds import plan_from
from station.practical.kinds.kind import Instruction
from station.practical.prompts import instruction
from station.practical.state import Sample, State, Step
from station.words import Message, in_language, languages
from tests.practical.walk import chosen, portions_plan

ONCE = {
    "kind": "once",
    "liquid": {"name": "water", "volume_cm3": 12.25},
    "addition": {"name": "sodium hydroxide", "mass_g": 12.25},
}
PLANS = {
    "portions": portions_plan(),
    "portions by own judgement": portions_plan(prompts="own judgement"),
    "once": plan_from(ONCE),
    "once by own judgement": chosen(**ONCE, prompts="own judgement"),
}


def instructions() -> list[Instruction]:
    found = []
    for plan, step in product(PLANS.values(), Step):
        state = State(plan=plan, step=step, prompted=10)
        states = [state, replace(state, has_probe=False), replace(state, thermometer_division_c=0.1)]
        states += [replace(state, paused_by=role) for role in ("teacher", "technician")]
        for bad in (None, "several", "other_probe"):
            states.append(replace(state, probe="lost", recent=(Sample(0.0, None, bad),)))
        states.append(replace(state, probes=Probes(check=Check("ice", None, {}, 0.0, "teacher"))))
        found += [instruction(each) for each in states]
    return found


@pytest.mark.parametrize("language", languages())
def test_an_instruction_is_at_most_twelve_words_in_every_language(language: str) -> None:
    texts = {in_language(each.text, language) for each in instructions()}
    assert [text for text in texts if len(text.split()) > 12] == []


def test_every_instruction_is_a_message_with_values_in_it() -> None:
    said = [words for each in instructions() for words in (each.text, each.detail, each.label) if words is not None]
    assert all(isinstance(words, Message) and words.id for words in said)
    assert len({words.id for words in said}) > 40
    portion = next(each for each in instructions() if each.text.id == "prompt-portion")
    assert portion.text.values == {"portion": 10, "amount": PLANS["portions"].added}
    assert portion.label is not None
    assert in_language(portion.label, "de") == "Portion 10 ist im Becher"
