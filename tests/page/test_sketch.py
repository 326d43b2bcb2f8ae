"""Predict first: drawn with mouse and keys before the first portion, kept, and under the measured curve at the end."""

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import OpenPage, Station, expect_accessible, work
from tests.page.hands import VIRTUAL, serving, short_plan


@pytest.fixture(scope="module")
def asks(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    plan = short_plan(more='predict_first = true\nresults = "at once"')
    with serving(tmp_path_factory.mktemp("sketch"), *VIRTUAL, plan=plan) as station:
        yield station


def drawn(page: Page) -> None:
    """One stroke across the graph, from left to right."""
    box = page.locator(".sketch-pad").bounding_box()
    assert box is not None
    at = [
        (box["x"] + box["width"] * x, box["y"] + box["height"] * y) for x, y in ((0.15, 0.6), (0.5, 0.3), (0.95, 0.4))
    ]
    page.mouse.move(*at[0])
    page.mouse.down()
    for place in at[1:]:
        page.mouse.move(*place, steps=6)
    page.mouse.up()


def test_a_prediction_is_drawn_kept_and_lies_under_the_curve(asks: Station, open_page: OpenPage) -> None:
    page = open_page(asks, viewport={"width": 360, "height": 640})
    page.get_by_role("button", name="No sound").click()
    page.locator("[data-act=draw]").click()
    keep = page.locator("button[data-act=sketch]")
    expect(keep).to_have_attribute("aria-disabled", "true")
    expect_accessible(page)
    drawn(page)
    slider = page.get_by_role("slider", name="Drawing of your prediction")
    before = slider.get_attribute("aria-valuenow")
    slider.press("ArrowUp")
    assert float(slider.get_attribute("aria-valuenow") or "nan") == float(before or "nan") + 0.5
    keep.click()
    page.wait_for_selector(".done[data-act=alkali_temperature]")
    kept = asks.state()["sketch"]
    assert [volume_cm3 for volume_cm3, _ in kept] == [0, 5, 10, 15]
    expect(page.locator(".figure .sketch").first).to_be_attached()
    work(asks, until="done", repeat=1)
    page.wait_for_selector("main.state-done")
    expect(page.locator(".sketch-question")).to_have_count(1)
    assert asks.state()["sketch"] == kept
    page.evaluate("location.hash = 'record'")
    expect(page.get_by_label("Where does the measured curve leave your prediction, and why?")).to_be_visible()
    expect_accessible(page)
