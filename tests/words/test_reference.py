"""The own reader against the reference implementation of Project Fluent, and plural rules against Unicode's."""

import re
from pathlib import Path

import pytest
from babel import Locale
from fluent.runtime import FluentBundle, FluentResource
from fluent.syntax import FluentParser, ast
from hypothesis import given
from hypothesis import strategies as st

from station.words import catalogue, fluent, languages
from station.words.fluent import Catalogue, Value
from station.words.plurals import plural_of

MADE = """
plain = Add it.
-term = the probe
lines =
    First line with { $number },
      the second further in
    and the last.
blank = { "  " }kept{ " " }
inline = { $count ->
        [0] nothing
        [one] one { $name }
       *[other] { $count } of { $name }
    } in { -term }, { plain }
nested = { $side ->
    [before] before { $count ->
        [one] one
       *[other] { $count }
    }
   *[after] after
}
    still here
start = { $name } first
two =
    { $name }

    { $name }
"""


def _own(language: str, source: str) -> Catalogue:
    return Catalogue(language, fluent.entries(source), ".", plural_of(language), {})


def _reference(language: str, source: str) -> FluentBundle:
    bundle = FluentBundle([language], use_isolating=False)
    bundle.add_resource(FluentResource(fluent.unmarked(source)))
    return bundle


def _said(bundle: FluentBundle, of: str, values: dict[str, Value]) -> str:
    pattern = bundle.get_message(of).value
    assert pattern is not None
    text, errors = bundle.format_pattern(pattern, values)
    assert not errors
    return str(text)


@pytest.mark.parametrize("count", [0, 1, 2, 11])
@pytest.mark.parametrize("side", ["before", "after", "else"])
def test_every_form_is_read_as_the_reference_reads_it(count: int, side: str) -> None:
    own, bundle = _own("en", MADE), _reference("en", MADE)
    values: dict[str, Value] = {"count": count, "number": "4.5", "name": "x y", "side": side}
    for of in own.sources:
        if not of.startswith("-"):
            assert own.text(of, values, str) == _said(bundle, of, values), of


def test_an_id_stands_once() -> None:
    with pytest.raises(ValueError, match="twice: \\['one'\\]"):
        fluent.entries("one = a\ntwo = b\none = c\n")


_WORDS = st.text(st.sampled_from("ab .[]*=#,°³\"-'"), max_size=12)


@given(st.lists(_WORDS, min_size=1, max_size=4), st.lists(st.integers(1, 9), min_size=4, max_size=4))
def test_any_block_of_lines(lines: list[str], indents: list[int]) -> None:
    source = "of =\n" + "\n".join(" " * indent + line for indent, line in zip(indents, lines, strict=False))
    parsed = FluentParser().parse(source)
    (first, *others) = parsed.body
    # Attributes (a line that begins with ".a=") are nothing that catalogues here have.
    if isinstance(first, ast.Message) and not others and first.value is not None and not first.attributes:
        assert _own("en", source).text("of", {}, str) == _said(_reference("en", source), "of", {})


@pytest.mark.parametrize("language", languages())
def test_the_catalogues_are_fluent_and_say_the_same(language: str) -> None:
    own = catalogue(language)
    source = (Path(__file__).parents[2] / "station" / "words" / f"{language}.ftl").read_text(encoding="utf-8")
    junk = [entry for entry in FluentParser().parse(source).body if isinstance(entry, ast.Junk)]
    assert not junk, junk[0].content
    bundle = _reference(language, source)
    for of in own.sources:
        names = sorted(own.values_of(of))
        keys = re.findall(r"\[([\w.-]+)\]", own.sources[of])
        for key in dict.fromkeys(["7", *keys]):
            # A number of things chooses a plural, a word chooses itself.
            counted = key.isdigit() or key in {"one", "other"}
            value: Value = {"one": 1, "other": 7}.get(key, int(key) if key.isdigit() else key) if counted else key
            values: dict[str, Value] = dict.fromkeys(names, value)
            assert own.text(of, values, str) == _said(bundle, of, values), of


LANGUAGES = "en de nl sv da it es fr pt pl cs sk ru uk tr el hu bg nb ja zh ko".split()  # noqa: SIM905 -- read at a glance


@pytest.mark.parametrize("code", LANGUAGES)
def test_plural_words_are_those_of_unicode(code: str) -> None:
    rule, locale = plural_of(code), Locale.parse(code)
    for number in [*range(205), 0.5, 1.5, 2.5, 21.5]:
        assert rule(number, 0 if number == int(number) else 1) == locale.plural_form(number), number
