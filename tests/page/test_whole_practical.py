"""A whole practical followed in the browser, on a phone and on the projector, and the crossing read off the page."""

import re
from collections.abc import Iterator
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible

FOLLOW_MS = 90_000

# Notes every portion that is asked for, and every height the instruction's card had, from the first moment on.
FOLLOW = """() => {
  const card = document.querySelector('.instruction');
  window.seen = { portions: [], heights: [] };
  const note = () => {
    const portion = Number(document.querySelector('.done[data-portion]')?.dataset.portion);
    if (portion && window.seen.portions.at(-1) !== portion) window.seen.portions.push(portion);
    const height = Math.round(card.getBoundingClientRect().height);
    if (!window.seen.heights.includes(height)) window.seen.heights.push(height);
  };
  note();
  new MutationObserver(note).observe(card, { subtree: true, childList: true, characterData: true, attributes: true });
}"""


@pytest.fixture(scope="module")
def fast_demo() -> Iterator[Station]:
    station = Station("demo", "--speed", "20", "--port", "0", "--json")
    station.start()
    yield station
    station.stop()


def follow_to_the_end(page: Page) -> None:
    page.wait_for_selector("main.state-done", timeout=FOLLOW_MS)
    page.wait_for_selector(".result-lines:not(.result-brief)")
    page.wait_for_selector(".result-heat:not(.result-brief)")


def written(page: Page, selector: str) -> list[str]:
    """The numbers that stand there, as they stand there."""
    return re.findall(r"\d+(?:\.\d+)?", page.inner_text(selector).replace("cm³", ""))


def expect_as_computed(page: Page, method: str, computed: dict[str, Any]) -> None:
    """End-point, interval and u stand there as the station has them, all to one place, which u deserves."""
    (end_point,) = written(page, f".result-{method} .end-point")
    low, high, u_cm3 = written(page, f".result-{method} .interval")[1:]
    places = {len(each.partition(".")[2]) for each in (end_point, low, high, u_cm3)}
    assert len(places) == 1, f"{end_point}, {low} to {high} ± {u_cm3}"
    half_cm3 = 0.5000001 * 10 ** -places.pop()
    assert half_cm3 > computed["u_end_point_cm3"] / 60, "at most two digits of u (GUM 7.2.6)"
    assert float(end_point) == pytest.approx(computed["end_point_cm3"], abs=half_cm3)
    assert [float(low), float(high)] == pytest.approx(computed["interval_95_cm3"], abs=half_cm3)
    assert float(u_cm3) == pytest.approx(computed["u_end_point_cm3"], abs=half_cm3)


def test_a_whole_practical_is_followed_and_the_crossing_read(fast_demo: Station, open_page: OpenPage) -> None:
    """Phone and projector watch the same bench from before the first portion to the end."""
    phone = open_page(fast_demo, viewport=PHONE)
    projector = open_page(fast_demo, viewport=PROJECTOR, color_scheme="dark")
    for page in (phone, projector):
        page.evaluate(FOLLOW)
    for page in (phone, projector):
        follow_to_the_end(page)
    state = fast_demo.final_state()
    for page in (phone, projector):
        for method, name in (("lines", "straight_lines"), ("heat", "heat_balance")):
            expect_as_computed(page, method, state["result"][name])
        expect(page.locator(".crossing text")).to_have_text(page.inner_text(".result-lines .end-point"))
        asked = page.evaluate("window.seen.portions")
        assert asked == [*range(1, 11), *range(1, 11)], "every portion of both repeats was asked for, in order"
        assert len(page.evaluate("window.seen.heights")) == 1, "nothing moved when the instruction changed"
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def test_the_chart_and_the_table_show_every_reading(fast_demo: Station, open_page: OpenPage) -> None:
    page = open_page(fast_demo)
    follow_to_the_end(page)
    state = fast_demo.state()
    assert page.locator(".figure svg .series-1 path").count() == 11
    assert page.locator(".figure svg .series-2 path").count() == 11
    assert page.locator(".figure svg .mean path").count() == 11
    axes = page.locator(".figure svg .quantity").all_text_contents()
    assert axes == ["temperature / °C", "volume of alkali added / cm³"]
    assert page.locator("thead th").all_inner_texts() == [
        "volume added / cm³",
        "repeat 1 / °C",
        "repeat 2 / °C",
        "mean / °C",
    ]
    rows = page.locator("tbody tr")
    assert rows.count() == 11
    for index, mean in enumerate(state["mean"]):
        cells = rows.nth(index).locator("th, td").all_inner_texts()
        readings = [repeat["readings"][index]["temperature_c"] for repeat in state["repeats"]]
        expected = [mean["volume_cm3"], *readings, mean["temperature_c"]]
        shown = [float(re.findall(r"[\d.]+", cell)[0]) for cell in cells]
        assert shown == pytest.approx(expected, abs=0.00501)


def test_the_crossing_stands_where_the_axes_say(fast_demo: Station, open_page: OpenPage) -> None:
    """Read the end-point off the chart as a student does: by the ring's place between two tick marks."""
    page = open_page(fast_demo, viewport=PROJECTOR)
    follow_to_the_end(page)
    end_point_cm3 = fast_demo.state()["result"]["straight_lines"]["end_point_cm3"]
    ticks = page.evaluate("""() => [...document.querySelectorAll('.figure svg .axes text[text-anchor=middle]')]
        .map((text) => [Number(text.textContent), Number(text.getAttribute('x'))])""")
    ring = float(page.get_attribute(".crossing circle", "cx") or "nan")
    (first_cm3, first_x), (last_cm3, last_x) = ticks[0], ticks[-1]
    read_cm3 = first_cm3 + (ring - first_x) / (last_x - first_x) * (last_cm3 - first_cm3)
    assert read_cm3 == pytest.approx(end_point_cm3, abs=0.05)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_finished_page_has_no_violation_that_axe_knows(
    fast_demo: Station, open_page: OpenPage, scheme: str
) -> None:
    page = open_page(fast_demo, color_scheme=scheme)
    follow_to_the_end(page)
    expect_accessible(page)


def test_the_first_view_travels_light(fast_demo: Station, open_page: OpenPage) -> None:
    """Bytes and requests are bounded, and nothing comes that is not wanted yet."""
    page = open_page(fast_demo)
    page.wait_for_timeout(500)
    entries = page.evaluate(
        """() => [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
            .map((entry) => [new URL(entry.name).pathname, entry.transferSize])"""
    )
    assert len(entries) <= 10, entries
    assert sum(size for _, size in entries) <= 60_000, entries
    later = re.compile("/page/(de|own_lines|own_change|trace_figure|why|steps|judgement|record)-")
    assert not [name for name, _ in entries if later.match(name)]
    assert page.evaluate("document.querySelectorAll('style, [style], script:not([src])').length") == 0
