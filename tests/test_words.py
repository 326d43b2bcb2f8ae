"""Every sentence that the station can send to its page has German words there.

The sentences are found in the source by its syntax tree, and said by the page's own translator: a new sentence
without German fails here.
"""

import ast
import functools
import json
import re
import subprocess

import pytest

from station.chemistry.reagents import REAGENTS
from tests.sentences import STATION, skeleton, texts
from web.build_hook import find_node

WEB = STATION.parent / "web"
ENGLISH = re.compile(r"\b(the|is|are|of|and|your|it|not|to|by|at|has|have|there|this|been)\b")


def _with_values(skeleton: str) -> tuple[str, list[str]]:
    """The skeleton with a number of its own for each value."""
    values = [f"{7.01 + 0.01 * index:.2f}" for index in range(skeleton.count("#"))]
    parts = skeleton.split("#")
    return parts[0] + "".join(value + part for value, part in zip(values, parts[1:], strict=True)), values


@functools.cache
def in_german(english: tuple[str, ...]) -> list[str]:
    """Say these texts with the translator of the page."""
    node, _ = find_node()
    done = subprocess.run(
        [str(node), "test/german.mjs"],
        cwd=WEB,
        input=json.dumps(english),
        capture_output=True,
        text=True,
        check=False,
    )
    if done.returncode != 0:
        pytest.fail(f"the translator did not run (is web/node_modules there? `npm ci` in web): {done.stderr}")
    told: list[str] = json.loads(done.stdout)
    return told


def test_the_texts_are_found() -> None:
    found = {text for _, text in texts()}
    assert {
        "Add portion #: #. Stir.",
        "No change: did you add portion #?",
        "First, if you can: dip the rinsed, wiped probe in the # for its temperature.",
        "The line # the turn needs # readings; it has #.",
        "Wait # s, then try again.",
    } <= found


def test_every_text_of_the_station_has_german_words() -> None:
    found = list(texts())
    filled = [_with_values(text) for _, text in found]
    told = in_german(tuple(english for english, _ in filled))
    missing = []
    for (place, text), (english, values), german in zip(found, filled, told, strict=True):
        kept = all(value in german for value in values)
        if german == english or ENGLISH.search(german) or "#" in german or not kept:
            missing.append(f"{place}: {text}\n    said as: {german}")
    assert not missing, "add these to web/src/words/station.de.json:\n" + "\n".join(missing)


def test_instructions_stay_short_in_german() -> None:
    """At most twelve words, like the English ones; a value may be three words long: 25 cm³ Kalilauge."""
    tree = ast.parse((STATION / "practical" / "prompts.py").read_text(encoding="utf-8"))
    calls = [node for node in ast.walk(tree) if isinstance(node, ast.Call) and len(node.args) > 1]
    asked = [
        skeleton(node.args[1]) for node in calls if isinstance(node.func, ast.Name) and node.func.id == "Instruction"
    ]
    english = tuple(_with_values(re.sub("#+", "#", text))[0] for text in asked if text is not None)
    assert len(english) > 10
    long = [text for text in in_german(english) if len(text.split()) + 2 * len(re.findall(r"7\.\d\d", text)) > 12]
    assert long == []


def test_every_reagent_has_a_german_name() -> None:
    names = tuple(reagent.name for reagent in REAGENTS)
    assert [name for name, german in zip(names, in_german(names), strict=True) if name == german] == []


def test_a_value_is_said_in_german_too() -> None:
    assert in_german(
        ("Add portion 3: 4 cm³ of potassium hydroxide. Stir.", "Now add all 4 g of sodium hydroxide. Stir.")
    ) == [
        "Gib Portion 3 dazu: 4 cm³ Kalilauge. Rühre um.",
        "Gib jetzt 4 g Natriumhydroxid auf einmal dazu. Rühre um.",
    ]


def test_what_is_not_of_the_station_stays_as_it_is() -> None:
    others = ("Group 4: we added 6 cm³ of acid", "Bench 5", "spilt a little", "")
    assert in_german(others) == list(others)
