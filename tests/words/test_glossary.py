"""Words that explain themselves on the page: the students' page of the manual has the same list."""

import re

from station.words import FOLDER, catalogue, languages
from station.words.fluent import Selector, unmarked

STUDENT = FOLDER.parent / "manual" / "student.md"


def variants(language: str, of: str) -> dict[str, str]:
    """The texts of a message that one word of the glossary chooses."""
    (selector,) = catalogue(language).pattern(of)
    assert isinstance(selector, Selector)
    return {key: "".join(str(part) for part in pattern) for key, pattern in selector.variants.items()}


def test_the_students_manual_has_the_words_of_the_page() -> None:
    words, means = variants("en", "page-glossary-word"), variants("en", "page-glossary-means")
    rows = re.findall(r"^\| (.+?) \| (.+?) \|$", STUDENT.read_text(encoding="utf-8").partition("\n## Words\n")[2], re.M)
    listed = rows[1 : 1 + len(words)]
    assert listed == [(words[term], means[term]) for term in words]


def test_every_mark_is_a_word_of_the_glossary_and_closed() -> None:
    for language in languages():
        source = (FOLDER / f"{language}.ftl").read_text(encoding="utf-8")
        known = variants(language, "page-glossary-word")
        marks = re.findall(r"<(/?)([a-z-]+)>", source)
        assert len(known) == 10
        assert {term for _, term in marks} == set(known)
        assert all(
            left[0] == "" and right == ("/", left[1]) for left, right in zip(marks[::2], marks[1::2], strict=True)
        )


def test_no_mark_is_ever_said() -> None:
    assert (
        unmarked("the <best-fit>line of best fit</best-fit> and <mean>mean</mean>") == "the line of best fit and mean"
    )
    assert unmarked("2 < 3 > 1") == "2 < 3 > 1"
    for language in languages():
        assert "<" not in "".join(catalogue(language).sources.values())
