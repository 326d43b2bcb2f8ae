"""What the sources say against what the catalogues have: ids, their values, and the languages against each other."""

import ast
import importlib
import re
import string
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

import pytest

from station.words import catalogue, languages, say

STATION = Path(__file__).parents[2] / "station"
OF_THE_READER = {"language-name", "language-decimal", "language-dates", "two-sentences"}
"""Entries that tell of the language itself, and what `join` puts between two messages unless told otherwise."""
OF_THE_PAGE = "page-"
"""Ids that only the page says; web/test holds them against its sources."""


@dataclass(frozen=True)
class Said:
    """One id that a module says, with the names of its values; None where they are made at run time."""

    place: str
    id: str
    values: frozenset[str] | None


def _ids(node: ast.expr) -> list[str] | None:
    """The ids that an expression can be, where it has them literally; None where they are built."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return [node.value]
    if isinstance(node, ast.IfExp):
        sides = [_ids(node.body), _ids(node.orelse)]
        return [each for side in sides if side is not None for each in side] if None not in sides else None
    return None


def said_in(source: str, place: str, listed: tuple[str, ...] | None = None) -> Iterator[Said]:
    """Yield what a module says. ``listed``: its constant SAYS, the ids that it builds."""
    for node in ast.walk(ast.parse(source)):
        if not (isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id in {"say", "join"}):
            continue
        at = f"{place}:{node.lineno}"
        if node.func.id == "join":
            by = node.args[1] if len(node.args) > 1 else next((k.value for k in node.keywords if k.arg == "by"), None)
            for of in (by is not None and _ids(by)) or []:
                yield Said(at, of, frozenset({"first", "second"}))
            continue
        ids = _ids(node.args[0])
        if ids is None:
            if listed is None:
                raise ValueError(f"{at}: an id is built; list all of them in the constant SAYS of the module")
            continue
        names = [keyword.arg for keyword in node.keywords]
        values = None if None in names else frozenset(name for name in names if name is not None)
        yield from (Said(at, of, values) for of in ids)
    yield from (Said(f"{place}: SAYS", of, None) for of in listed or ())


def _said() -> list[Said]:
    found: list[Said] = []
    for path in sorted(STATION.rglob("*.py")):
        source = path.read_text(encoding="utf-8")
        if "from station.words import" not in source:  # another `say`
            continue
        place = path.relative_to(STATION).as_posix()
        listed: tuple[str, ...] | None = None
        if any(line.startswith("SAYS") for line in source.splitlines()):
            module = importlib.import_module("station." + place.removesuffix(".py").replace("/", "."))
            listed = tuple(module.SAYS)
        found += said_in(source, place, listed)
    return found


def wrong(said: list[Said], language: str) -> list[str]:
    """Each id that the catalogue lacks, or says with other values."""
    words, found = catalogue(language), []
    for each in said:
        if each.id not in words.sources:
            found.append(f"{each.place}: {each.id} is not in {language}.ftl")
        elif each.values is not None and (values := words.values_of(each.id)) != each.values:
            lacking, surplus = sorted(values - each.values), sorted(each.values - values)
            found.append(f"{each.place}: {each.id} lacks {lacking}, and does not need {surplus}")
    return found


@pytest.mark.parametrize("language", languages())
def test_what_the_sources_say_is_there_with_its_values(language: str) -> None:
    assert wrong(_said(), language) == []


@pytest.mark.parametrize("language", languages())
def test_a_language_has_the_entries_of_english_with_the_same_values(language: str) -> None:
    english, other = catalogue("en"), catalogue(language)
    assert sorted(english.sources) == sorted(other.sources)
    differing = [of for of in english.sources if english.values_of(of) != other.values_of(of)]
    assert differing == []


@pytest.mark.parametrize("language", languages())
def test_every_entry_can_be_said_and_references_are_there(language: str) -> None:
    words = catalogue(language)
    for of in words.sources:
        if of.startswith(OF_THE_PAGE):
            continue
        values = dict.fromkeys(words.values_of(of), "7")
        assert words.text(of, values, str).strip()


def test_words_of_german_are_german() -> None:
    """Nobody copied a sentence and forgot to translate it."""
    english, german = catalogue("en").sources, catalogue("de").sources
    alike = [of for of, text in english.items() if german[of] == text and _letters(text) > 25]
    assert alike == []


def _letters(text: str) -> int:
    return sum(char in string.ascii_letters for char in text)


def test_nothing_stands_in_the_catalogue_that_nobody_says() -> None:
    english = catalogue("en").sources
    referred = {each for text in english.values() for each in re.findall(r"\{ (-?[a-z][\w-]*) \}", text)}
    said = {each.id for each in _said()} | OF_THE_READER | referred
    assert [of for of in english if of not in said and not of.startswith(OF_THE_PAGE)] == []


def test_mistakes_are_found() -> None:
    source = (
        'say("prepare-label", x=1)\n'
        'say("no-such" if y else "prepare-add-solid", mass_g="1")\n'
        'join([a], "list-of-others")\n'
        "say(f'reagent-{name}')\n"
    )
    told = wrong(list(said_in(source, "a.py", ("reagent-unobtainium", "reagent-urea"))), "en")
    assert told == [
        "a.py:1: prepare-label lacks [], and does not need ['x']",
        "a.py:2: no-such is not in en.ftl",
        "a.py:2: prepare-add-solid lacks ['reagent'], and does not need []",
        "a.py:3: list-of-others is not in en.ftl",
        "a.py: SAYS: reagent-unobtainium is not in en.ftl",
    ]
    with pytest.raises(ValueError, match=r"a.py:4: an id is built"):
        list(said_in(source, "a.py"))


def test_a_join_of_strings_is_no_join_of_messages() -> None:
    assert list(said_in("', '.join(names)\npath.join(a, b)", "a.py")) == []
    assert say("list-comma", first="a", second="b") == "a, b"
