"""The manual in a browser: found by its menu, searched, printed without anything to press, languages told."""

import re
from pathlib import Path

from playwright.sync_api import Page, ViewportSize, expect

from tests.page.conftest import OpenContext, OpenPage, Station, expect_accessible
from tests.page.hands import go_to

WIDE = ViewportSize(width=1280, height=900)


def opened(open_context: OpenContext, station: Station, name: str = "", **options: object) -> Page:
    context, _ = open_context(station, **options)
    page = context.new_page()
    page.goto(f"{station.url}manual{name}")
    return page


def test_the_menu_leads_to_it_and_it_leads_back(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    go_to(page, "Manual")
    expect(page.get_by_role("heading", level=1)).to_have_text("For students")
    page.get_by_role("link", name="Back to the station").click()
    expect(page.locator(".instruction")).to_be_visible()


def test_pages_of_staff_lead_to_what_they_raise_questions_about(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench, viewport=WIDE)
    for here, there in (
        ("plan", "plan.toml"),
        ("checks", "Checking the probe and the cup"),
        ("kit", "For technicians"),
    ):
        page.goto(f"{bench.url}{here}")
        page.get_by_role("link", name="Manual").click()
        expect(page.get_by_role("heading", level=1)).to_have_text(there)


def test_a_search_finds_headings_and_text_and_leads_there(bench: Station, open_context: OpenContext) -> None:
    page = opened(open_context, bench)
    box = page.get_by_label("Search the manual")
    found = page.get_by_role("region", name="Found")
    box.fill("ice point")
    expect(found.get_by_role("listitem").first).to_contain_text("Checking the probe and the cup: Ice point")
    expect(page.locator("main")).to_be_hidden()
    expect(found.locator("mark").first).to_have_text(re.compile("ice", re.IGNORECASE))
    box.fill("crush distilled")  # words of the text, in any order
    expect(found.get_by_role("listitem")).to_have_count(1)
    expect(found.get_by_role("status")).to_have_text("Found in one place")
    box.fill("wice point")  # the middle of a word is no word
    expect(found.get_by_role("listitem")).to_have_count(0)
    box.fill("zebra")
    expect(found.get_by_role("status")).to_have_text("No section has all of these words.")
    box.fill("<b>")  # what is typed is text
    expect(found.locator("b")).to_have_count(0)
    box.fill("heat_capacity_j_k cup test")
    found.get_by_role("link", name=re.compile("plan.toml")).first.click()
    expect(page).to_have_url(re.compile("/manual/plan#"))
    expect(page.locator("main")).to_be_visible()
    page.get_by_label("Search the manual").fill("mixed once")
    page.get_by_role("link", name="plan.toml: Mixed once").click()  # on the page that is open
    expect(page.locator("#mixed-once")).to_be_in_viewport()
    page.goto(f"{bench.url}manual?words=boiling")  # what a browser without the script would ask for
    expect(page.get_by_role("link", name=re.compile("Boiling point"))).to_be_visible()


def test_printed_it_has_nothing_to_press(bench: Station, open_context: OpenContext, tmp_path: Path) -> None:
    page = opened(open_context, bench, "/checks", viewport=WIDE)
    page.get_by_label("Search the manual").fill("boiling")
    expect(page.get_by_role("region", name="Found")).to_be_visible()
    page.emulate_media(media="print", color_scheme="dark")
    expect(page.locator("header")).to_be_hidden()
    expect(page.locator("#found")).to_be_hidden()
    expect(page.locator("main")).to_be_visible()
    colour = page.locator("main p").first.evaluate("(one) => getComputedStyle(one).color")
    assert colour == "rgb(0, 0, 0)"


def test_where_another_language_is_chosen_it_says_that_it_is_english(bench: Station, open_context: OpenContext) -> None:
    line = "Das Handbuch gibt es nur auf Englisch."
    page = opened(open_context, bench, locale="de-AT")
    expect(page.get_by_text(line)).to_be_visible()
    page.evaluate("localStorage.setItem('language', 'en')")
    page.reload()
    expect(page.get_by_role("heading", level=1)).to_be_visible()
    expect(page.get_by_text(line)).to_be_hidden()
    english = opened(open_context, bench, locale="en-GB")
    expect(english.get_by_text(line)).to_be_hidden()


def test_everybody_can_read_it(bench: Station, open_context: OpenContext) -> None:
    for name in ("", "/hardware", "/accuracy"):
        for scheme in ("light", "dark"):
            page = opened(open_context, bench, name, color_scheme=scheme)
            expect_accessible(page)
            width = page.evaluate("[document.documentElement.scrollWidth, innerWidth]")
            assert width[0] <= width[1], f"{name} is wider than a phone"
