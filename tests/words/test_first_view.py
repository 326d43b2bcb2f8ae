"""Words of a language come to the page in two parts: whatever an instruction or a question says is in the first."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest

from station.practical.guide import guide
from station.practical.kinds import ready_plan
from station.practical.prompts import instruction
from station.practical.questions import open_questions
from station.practical.state import Step
from station.words import FOLDER, Message, messages_in
from tests.practical.test_set_up import UREA, Asked

RATIOS = ready_plan("mixing-ratios").model_dump(mode="json")
WORDS = Path(__file__).parents[2] / "web" / "words.mjs"
ID = re.compile(r"""["'`]([a-z][a-z0-9]*(?:-[a-z0-9]+)+)["'`]""")


def ids_said_first() -> set[str]:
    """Every id that the modules name whose words the page takes as those of its first view."""
    listed = re.search(r"const SAID_FIRST = \[(.*?)\];", WORDS.read_text(encoding="utf-8"), re.DOTALL)
    assert listed is not None
    modules = [path for name in re.findall(r'"(.+?)"', listed[1]) for path in FOLDER.parent.glob(name)]
    assert len(modules) > 15
    return {of for path in modules for of in ID.findall(path.read_text(encoding="utf-8"))}


def ids_in(values: object) -> Iterator[str]:
    for message in messages_in(values).values():
        yield message["id"]
        yield from (each["id"] for each in message["values"].values() if isinstance(each, dict))


def said_by(walk: Asked) -> Iterator[str]:
    """What the students' instrument says now: title, instruction, questions, guide."""
    asked = instruction(walk.state)
    questions = [dict(each) for each in open_questions(walk.state)]
    yield from ids_in([walk.state.plan.name, asked.text, asked.detail, asked.label, questions, guide(walk.state.plan)])


@pytest.mark.parametrize("plan", [{}, UREA, RATIOS, {"prompts": "own judgement"}, {"repeats": 1}])
@pytest.mark.parametrize("has_probe", [True, False])
def test_what_is_asked_for_is_among_the_first_words(plan: dict[str, object], has_probe: bool) -> None:
    first, seen = ids_said_first(), set[str]()
    walk = Asked(has_probe=has_probe, **plan)
    if not has_probe:
        seen |= set(said_by(walk))
        walk.act("thermometer", division_c=1)
    for _ in range(40):
        seen |= set(said_by(walk))
        if walk.step() is Step.DONE:
            break
        asked = instruction(walk.state)
        if asked.code in {"type_start", "type_reading"} or asked.act in {"reading", "read_now"}:
            walk.act("reading" if not has_probe else "read_now", **({} if has_probe else {"temperature_c": 21.0}))
        elif asked.act is None:
            walk.rest(20.0)
        else:
            walk.press()
    assert len(seen) > 12
    assert seen <= first, sorted(seen - first)


def test_a_message_knows_its_id() -> None:
    assert isinstance(instruction(Asked().state).text, Message)
