"""The guide before the start, its pictograms, and clearing up after the end."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PROJECTOR, OpenPage, Station, expect_accessible, work
from tests.page.hands import VIRTUAL, asked, go_to, serving, short_plan

# Annex V of Regulation (EC) No 1272/2008: a black symbol on a white ground in a red frame, set on a point. The red is
# left to the maker; "sufficiently wide to be clearly visible" is checked here as five hundredths of the side.
WHITE, BLACK = "rgb(255, 255, 255)", "rgb(0, 0, 0)"


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with serving(tmp_path_factory.mktemp("guide"), *VIRTUAL, plan=short_plan(count=1)) as station:
        yield station


def guide_of(page: Page) -> str:
    return page.locator(".guide").first.inner_text().replace("\u00a0", " ")


@pytest.mark.fault("harm")
def test_before_the_start_the_guide_names_everything_that_the_station_knows(
    bench: Station, open_page: OpenPage
) -> None:
    page = open_page(bench)
    page.wait_for_selector(".guide")
    told, known = guide_of(page), bench.state()["guide"]
    for substance in (*known["in_cup"], *known["added"]):
        assert substance["name"] in told
        assert substance["amount"] in told
        for hazard in substance["hazards"]:
            assert hazard["text"] in told
            assert hazard["code"] in told
    for caution in known["cautions"]:
        assert caution in told
    assert known["first"] in told
    pictograms = [code for each in (*known["in_cup"], *known["added"]) for code in each["pictograms"]]
    assert pictograms, "this plan has hazards"
    assert page.locator(".guide svg.pictogram").count() == len(pictograms)


@pytest.mark.parametrize("look", [{"color_scheme": "light"}, {"color_scheme": "dark"}, {"forced_colors": "active"}])
def test_a_pictogram_looks_as_the_standard_says_in_every_theme(
    bench: Station, open_page: OpenPage, look: dict[str, str]
) -> None:
    page = open_page(bench, **look)
    pictogram = page.locator("svg.pictogram").first
    pictogram.wait_for()
    assert pictogram.get_attribute("role") == "img"
    assert pictogram.get_attribute("aria-label") in {"Corrosive", "Harmful or irritant"}
    frame, symbol = pictogram.evaluate("""(one) => {
      const style = (part) => getComputedStyle(one.querySelector(part));
      const { fill, stroke, strokeWidth } = style('path');
      return [[fill, stroke, parseFloat(strokeWidth)], style('g path:not([fill])').fill];
    }""")
    assert frame[0] == WHITE
    red, green, blue = (int(each) for each in frame[1].removeprefix("rgb(").removesuffix(")").split(","))
    assert red > 180
    assert max(green, blue) < 60
    assert frame[2] >= 5
    assert symbol == BLACK


def test_a_button_leads_to_the_guide_and_the_menu_does_from_anywhere(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    link = page.locator(".instruction-hint a")
    box = link.bounding_box()
    assert box
    assert box["height"] >= 48
    link.click()
    expect(page.locator("main.at-guide .guide").first).to_be_visible()
    go_to(page, "The bench")
    asked(page, "begin")


def test_the_menu_works_from_the_keyboard(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench, viewport=PROJECTOR)
    menu = page.get_by_role("button", name="Menu")
    menu.focus()
    page.keyboard.press("Enter")
    links = page.get_by_role("navigation").get_by_role("link")
    expect(links).to_have_count(6)
    heights = links.evaluate_all("(all) => all.map((one) => one.getBoundingClientRect().height)")
    assert min(heights) >= 48
    expect(links.nth(0)).to_have_attribute("aria-current", "page")
    page.keyboard.press("Escape")
    expect(links.nth(1)).to_be_hidden()
    expect(menu).to_be_focused()
    page.keyboard.press("Enter")
    page.keyboard.press("Tab")
    page.keyboard.press("Tab")
    page.keyboard.press("Enter")
    expect(page.locator("main.at-guide .guide").first).to_be_visible()
    expect(menu).to_have_attribute("aria-expanded", "false")
    expect(page.locator("main")).to_be_focused()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_guide_has_no_violation_that_axe_knows(bench: Station, open_page: OpenPage, scheme: str) -> None:
    page = open_page(bench, color_scheme=scheme)
    page.wait_for_selector(".guide")
    page.locator(".basis summary").first.click()
    expect_accessible(page)
    page.get_by_role("button", name="Menu").click()
    expect_accessible(page)


def test_while_the_practical_runs_only_the_instruction_speaks_and_at_its_end_clearing_up(
    tmp_path: Path, open_page: OpenPage
) -> None:
    with serving(tmp_path, *VIRTUAL, plan=short_plan(count=1)) as bench:
        page = open_page(bench)
        work(bench, until="pour", repeat=1)
        asked(page, "portion_added", 1)
        expect(page.locator(".guide")).to_have_count(0)
        work(bench, until="done", repeat=1)
        steps = page.locator(".clearing-up li")
        expect(steps).to_have_text(bench.state()["guide"]["clearing_up"])
        page.close()
