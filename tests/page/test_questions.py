"""The station's questions on the page: one at a time, one tap each, in the instruction's place until answered."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible, serve_settings
from tests.page.hands import expect_total, press

# This plan's cup takes about as much heat as the liquid, the virtual one next to none: one portion looks like two.
ODD = """
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.6
[portions]
volume_cm3 = 8.0
count = 4
[cup]
heat_capacity_j_k = 160
"""
NOTE_WORDS = """() => {
  const words = document.querySelector('.question-words');
  window.said = [];
  new MutationObserver(() => window.said.push(words.textContent))
    .observe(words, { subtree: true, childList: true, characterData: true });
}"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    """A bench whose plan and cup disagree."""
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", plan=ODD)))
    station.start()
    yield station
    station.stop()


def ask(page: Page) -> str:
    """Begin and add a portion; return the question that this leads to."""
    press(page, "begin")
    press(page, "portion_added", 1)
    page.wait_for_selector(".question-asked")
    return page.inner_text(".question-words")


def test_a_question_is_answered_from_the_keyboard_and_counts(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench, viewport=PROJECTOR)
    page.evaluate(NOTE_WORDS)
    words = ask(page)
    (asked,) = bench.state()["questions"]
    assert (asked["code"], asked["text"]) == ("double", words)
    expect(page.locator(".instruction-text")).to_be_hidden()
    expect(page.locator(".done")).to_be_hidden()
    expect_total(page, "8 cm³")
    page.wait_for_function("() => document.querySelector('.trace').getAttribute('d').length > 600")
    assert page.evaluate("window.said") == [words], "announced once, not with every sample"
    page.wait_for_timeout(650)
    page.get_by_role("button", name="Change, pause or finish").focus()
    for _ in range(3):
        page.keyboard.press("Tab")
        if page.evaluate("document.activeElement.textContent") == "Twice":
            break
    page.keyboard.press("Enter")
    expect(page.locator(".question-asked")).to_have_count(0)
    expect_total(page, "16 cm³")
    assert bench.state()["questions"] == []
    expect(page.locator(".instruction-text")).to_have_text("Add portion 2: 8 cm³ of potassium hydroxide. Stir.")
    expect(page.locator(".done")).to_be_focused()
    assert page.evaluate("window.said") == [words, ""]


def test_not_sure_keeps_the_reading_and_marks_it(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench, viewport=PHONE)
    ask(page)
    button = page.get_by_role("button", name="Not sure", exact=True)
    height = button.evaluate("(one) => one.getBoundingClientRect().height")
    assert height >= 48
    page.wait_for_timeout(650)
    button.click()
    expect(page.locator(".question-asked")).to_have_count(0)
    expect(page.locator("tbody tr").nth(1)).to_contain_text("not sure")
    expect(page.locator(".done[data-portion='2']")).to_be_visible()


def test_a_tap_meant_for_what_stood_there_before_answers_nothing(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    page.evaluate("""() => new MutationObserver(() => document.querySelector('.question button')?.click())
        .observe(document.querySelector('.question'), { childList: true })""")
    ask(page)
    assert len(bench.state()["questions"]) == 1
    expect(page.locator(".question-asked")).to_be_visible()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_question_has_no_violation_that_axe_knows(bench: Station, open_page: OpenPage, scheme: str) -> None:
    page = open_page(bench, color_scheme=scheme)
    ask(page)
    expect_accessible(page)
