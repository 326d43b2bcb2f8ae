"""Results that are shown: both end-points, why they differ step by step, and how every number was made."""

import re
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible

STEPS = 5


def finished(station: Station, open_page: OpenPage, **options: Any) -> Page:
    page = open_page(station, **options)
    page.wait_for_selector("main.state-done")
    page.wait_for_selector(".result-heat:not(.result-brief)")
    return page


def explained(page: Page, step: int) -> str:
    """Go to a step of the explanation, which stands open; its words."""
    page.get_by_role("heading", name="Why do straight lines come out low?").wait_for()
    page.wait_for_selector(".why")
    for _ in range(step - 1):
        page.get_by_role("button", name="Next").click()
    return told_at(page, step)


def told_at(page: Page, step: int) -> str:
    """The words of a step, once it is shown."""
    expect(page.locator(".steady-now .why-step")).to_have_text(f"Step {step} of {STEPS}")
    return page.inner_text(".steady-now >> nth=0").replace("\xa0", " ")


def first_rise_c(state: dict[str, Any], shown_with: str) -> float:
    """What the first portion did, in the readings that the explanation says it shows."""
    repeat = re.search(r"repeat (\d+)", shown_with)
    points = state["repeats"][int(repeat[1]) - 1]["readings"] if repeat else state["mean"]
    return float(points[1]["temperature_c"] - points[0]["temperature_c"])


def corrected_c(state: dict[str, Any], shown_with: str) -> list[float]:
    """The corrected curve that the explanation says it shows, as the station has computed it / °C."""
    found = [
        each["heat_balance"]["corrected"]["temperature_c"]
        for each in state["result"]["repeats"]
        if each["heat_balance"]
    ]
    repeat = re.search(r"repeat (\d+)", shown_with)
    if repeat:
        return list(state["result"]["repeats"][int(repeat[1]) - 1]["heat_balance"]["corrected"]["temperature_c"])
    return [sum(same) / len(same) for same in zip(*found, strict=True)]


def dots(page: Page) -> list[tuple[float, float]]:
    """Where the readings are drawn just now / px."""
    places = page.locator(".why-drawing .dots circle").evaluate_all(
        "(all) => all.map((one) => new DOMMatrix(getComputedStyle(one).transform)).map(({ e, f }) => [e, f])"
    )
    return [(x, y) for x, y in places]


def axis_c(page: Page) -> tuple[float, float]:
    """Temperature on the axis of the explanation: offset and degrees per pixel."""
    ticks = page.evaluate("""() => [...document.querySelectorAll('.why-drawing .grid + text')]
        .map((text) => [Number(text.textContent), Number(text.previousElementSibling.getAttribute('y1'))])""")
    (low_c, low_y), (high_c, high_y) = ticks[0], ticks[-1]
    per_px = (high_c - low_c) / (high_y - low_y)
    return low_c - per_px * low_y, per_px


def test_the_heat_balances_end_point_is_marked_in_the_curve(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    expect(page.locator(".heat-mark text")).to_have_text(page.inner_text(".result-heat .end-point"))


def test_the_methods_are_told_apart_in_words_and_one_is_worth_more(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    heat = over.state()["result"]["heat_balance"]
    expect(page.locator(".worth-more")).to_contain_text(
        "The heat balance is worth more here." if heat["describes_trace"] else "The straight lines are worth more here."
    )
    expect(page.get_by_role("heading", name="How the two methods differ")).to_be_visible()
    expect(page.locator(".differ")).to_contain_text("Heat balance: the station follows the heat")
    uncertainty = page.locator(".result-heat .plus-minus")
    expect(uncertainty).to_be_hidden()
    page.locator(".result-heat summary").click()
    expect(uncertainty).to_contain_text("standard uncertainty")


def test_the_graph_has_mean_and_lines_first_and_repeats_on_a_switch(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page, viewport=PROJECTOR)
    chart = page.locator(".figure-large .room-chart svg").first
    state = over.state()
    several = [each for each in state["repeats"] if each["status"] != "set aside"]
    assert len(several) > 1
    expect(chart.locator(".series.mean path")).to_have_count(len(state["mean"]))
    expect(chart.locator(".series:not(.mean)")).to_have_count(0)
    expect(chart.locator(".fit")).to_have_count(2)
    page.get_by_role("button", name="Show the single repeats").click()
    expect(chart.locator(".series:not(.mean)")).to_have_count(len(several))
    ticks = chart.locator(".axes line.grid").count()
    assert ticks == chart.locator(".axes text:not(.quantity)").count(), "grid lines both ways"
    assert chart.locator(".fine-grid path").count() == 2, "and finer ones to read a volume from"
    sizes = page.evaluate("""() => [...document.querySelectorAll('svg[role=img]')]
      .map((one) => one.getBoundingClientRect()).map(({ width, height }) => width * height)""")
    assert max(sizes) == sizes[0], "it is the largest graph of the page"


def test_why_lines_come_out_low_is_told_with_this_benchs_numbers(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    result = over.state()["result"]
    crossing, heat = result["straight_lines"]["end_point_cm3"], result["heat_balance"]["end_point_cm3"]
    assert crossing < heat
    told = [explained(page, 1)]
    for _ in range(STEPS - 1):
        page.get_by_role("button", name="Next").click()
        told.append(told_at(page, len(told) + 1))
    numbers = [[float(each) for each in re.findall(r"\d+\.?\d*", text)] for text in told]
    assert any(each == pytest.approx(crossing, abs=0.51) for each in numbers[0])
    rise_c = first_rise_c(over.state(), page.inner_text(".why > .remark"))
    assert any(each == pytest.approx(rise_c, abs=0.00501) for each in numbers[1]), told[1]
    assert 28.0 in numbers[1], "the first portion of 3 cm³ meets 25 cm³ of acid"
    assert round(25 + heat) in numbers[3]
    assert any(each == pytest.approx(heat - crossing, abs=0.051) for each in numbers[4])
    page.get_by_role("button", name="Done", exact=True).click()
    again = page.get_by_role("button", name="Read the explanation again")
    expect(again).to_be_focused()
    again.click()
    told_at(page, 1)


def test_the_readings_move_onto_two_straight_lines(over: Station, open_page: OpenPage) -> None:
    """The corrected curve as it is drawn: a straight rise, then level, as the station has computed it."""
    page = finished(over, open_page, reduced_motion="reduce")
    explained(page, 3)
    measured = dots(page)
    page.get_by_role("button", name="Next").click()
    told_at(page, 4)
    moved = dots(page)
    assert moved != measured, "with reduced motion they are there at once"
    offset, per_px = axis_c(page)
    expected = corrected_c(over.state(), page.inner_text(".why > .remark"))
    assert [offset + per_px * y for _, y in moved] == pytest.approx(expected, abs=0.01)
    ghosts = page.locator(".why-drawing .ghosts circle")
    assert [
        float(y) for y in ghosts.evaluate_all("(all) => all.map((one) => one.getAttribute('cy'))")
    ] == pytest.approx([y for _, y in measured], abs=0.051)
    page.get_by_role("button", name="Back").click()
    told_at(page, 3)
    assert dots(page) == measured


def test_the_readings_glide_once_where_motion_is_welcome(over: Station, open_page: OpenPage) -> None:
    page = finished(over, open_page)
    explained(page, 3)
    measured = dots(page)
    page.get_by_role("button", name="Next").click()
    page.wait_for_function(
        """(from) => Math.abs(
            new DOMMatrix(getComputedStyle(document.querySelectorAll('.dots circle')[10]).transform).f - from) > 3""",
        arg=measured[10][1],
    )
    page.wait_for_function("() => document.getAnimations().length === 0")
    resting = dots(page)
    page.wait_for_timeout(300)
    assert dots(page) == resting
    assert resting != measured


def test_nothing_below_moves_from_step_to_step(over: Station, open_page: OpenPage) -> None:
    for viewport in (PHONE, PROJECTOR):
        page = finished(over, open_page, viewport=viewport, reduced_motion="reduce")
        explained(page, 1)
        heights = {page.locator(".why").evaluate("(one) => one.offsetHeight")}
        for step in range(2, STEPS + 1):
            page.get_by_role("button", name="Next").click()
            told_at(page, step)
            heights.add(page.locator(".why").evaluate("(one) => one.offsetHeight"))
        assert len(heights) == 1, (viewport, heights)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_knows_no_violation_in_any_step(over: Station, open_page: OpenPage, scheme: str) -> None:
    page = finished(over, open_page, color_scheme=scheme, reduced_motion="reduce")
    explained(page, 1)
    for step in range(1, STEPS + 1):
        if step > 1:
            page.get_by_role("button", name="Next").click()
            told_at(page, step)
        expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"
