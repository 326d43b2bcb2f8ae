"""The students' own calculation on the page: one step after another, tried, checked or shown."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible
from tests.page.finished import finished

LINES = {
    "before": {"slope_c_cm3": 0.12, "intercept_c": 19.6},
    "after": {"slope_c_cm3": -0.05, "intercept_c": 23.6},
}


@pytest.fixture(scope="module")
def over(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with finished(tmp_path_factory.mktemp("working")) as station:
        assert station.state()["own_working"] == [], "nothing before the own reading"
        station.act(act="own_reading", end_point_cm3=23.75, **LINES).raise_for_status()
        station.final_state()
        yield station


def opened(station: Station, open_page: OpenPage, **options: object) -> Page:
    page = open_page(station, **options)
    page.wait_for_selector(".own-working")
    return page


def plain(text: str) -> str:
    return text.replace("\xa0", " ").replace("\u2212", "-")


def test_a_step_is_tried_checked_and_followed_by_the_next(over: Station, open_page: OpenPage) -> None:
    page = opened(over, open_page)
    steps = over.state()["own_working"]
    assert [step["unit"] for step in steps] == ["mol", "mol/dm³", "°C", "g", "J", "mol", "kJ/mol", "%"]
    lines = page.locator(".own-working li")
    expect(lines).to_have_count(1)
    expect(lines.first).not_to_contain_text(steps[0]["written"])
    number = page.get_by_label("Your number / mol")
    number.fill("9.5")
    page.get_by_role("button", name="Check").click()
    expect(page.get_by_role("alert").filter(has_text="Not yet.")).to_be_visible()
    number.fill("0,0095")
    page.keyboard.press("Enter")
    expect(lines).to_have_count(2)
    expect(lines.first).to_contain_text("Right.")
    assert "n = 0.400 mol/dm³ × 23.75 cm³ ÷ 1000" in plain(lines.first.inner_text())
    page.get_by_role("button", name="Show it").click()
    expect(lines).to_have_count(3)
    assert f"= {steps[1]['written']} mol/dm³" in plain(lines.nth(1).inner_text())
    assert "Right." not in lines.nth(1).inner_text()
    assert f"so the acid is {steps[1]['written']} mol/dm³" in plain(page.get_by_test_id("answer").inner_text())


def test_it_goes_on_to_the_end_and_the_stations_own_is_one_switch_away(over: Station, open_page: OpenPage) -> None:
    page = opened(over, open_page)
    steps = over.state()["own_working"]
    expect(page.locator(".step")).to_have_count(0)
    for step in steps:
        page.get_by_label("Your number").fill(step["written"])
        page.get_by_role("button", name="Check").click()
    expect(page.get_by_text("All steps are done.")).to_be_visible()
    assert page.locator(".own-working .right").count() == len(steps)
    expect_accessible(page)
    page.get_by_role("button", name="How every number was worked out").click()
    page.locator(".step").first.wait_for()
    expect(page.locator(".steps .remark").first).to_contain_text("The station carries on with unrounded numbers")
    page.get_by_role("button", name="Begin again").click()
    expect(page.locator(".own-working li")).to_have_count(1)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_knows_no_violation_on_any_screen(over: Station, open_page: OpenPage, scheme: str) -> None:
    for viewport in (PHONE, PROJECTOR):
        page = opened(over, open_page, color_scheme=scheme, viewport=viewport)
        page.get_by_role("button", name="Check").click()
        expect(page.get_by_role("alert").filter(has_text="Type a number.")).to_be_visible()
        expect_accessible(page)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"
