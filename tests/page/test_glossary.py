"""Words that explain themselves: opened and closed by mouse and keyboard, fetched when they are first pressed."""

from playwright.sync_api import Page, expect

from tests.page.conftest import OpenPage, Station, expect_accessible
from tests.words.test_glossary import variants


def test_a_word_explains_itself_and_stops(over: Station, open_page: OpenPage) -> None:
    page = open_page(over)
    page.locator("#steps").wait_for(
        state="attached"
    )  # the page is whole: a note goes with its word where a part is drawn afresh
    word, meaning = page.locator(".result-heat h3 .term"), page.locator(".meaning")
    word.click()
    expect(meaning).to_contain_text(variants("en", "page-glossary-means")["heat-balance"])
    expect(word).to_have_attribute("aria-expanded", "true")
    assert _inside(page), "the whole note is on the screen"
    expect_accessible(page)
    word.click()
    expect(meaning).to_have_count(0)
    word.press("Enter")
    expect(word).to_have_accessible_description(variants("en", "page-glossary-means")["heat-balance"])
    page.keyboard.press("Escape")
    expect(meaning).to_have_count(0)
    expect(word).to_be_focused()


def _inside(page: Page) -> bool:
    return bool(
        page.evaluate("""() => {
            const { left, right, top, bottom } = document.querySelector('.meaning').getBoundingClientRect();
            return left >= 0 && right <= innerWidth && top >= 0 && bottom <= innerHeight;
        }""")
    )


def test_what_words_mean_travels_late_and_in_the_readers_language(over: Station, open_page: OpenPage) -> None:
    page = open_page(over, locale="de-DE")
    asked = "() => performance.getEntriesByType('resource').some(({ name }) => name.includes('/glossary-'))"
    page.wait_for_timeout(500)
    assert not page.evaluate(asked)
    word = page.locator(".answer-reaction .term")
    expect(word).to_have_text("Neutralisation")
    word.click()
    expect(page.locator(".meaning")).to_contain_text(variants("de", "page-glossary-means")["neutralisation"])
    assert page.evaluate(asked)
