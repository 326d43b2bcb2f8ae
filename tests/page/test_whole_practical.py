"""A whole practical followed in the browser, on a phone and on the projector, and the crossing read off the page."""

import re
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible, serve_settings, work

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


# What was asked for in the first two seconds, in which only what is seen first may travel, and its bytes.
CARRIED = """() => [...performance.getEntriesByType('navigation'), ...performance.getEntriesByType('resource')]
    .filter(({ startTime }) => startTime < 2000)
    .map((entry) => [new URL(entry.name).pathname, entry.transferSize])"""

PLAN = """
results = "at once"
repeats = 2
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 4.0
count = 10
"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", speed=30.0, plan=PLAN)))
    station.start()
    yield station
    station.stop()


def follow_to_the_end(page: Page) -> None:
    page.wait_for_selector("main.state-done")
    page.wait_for_selector(".result-lines:not(.result-brief)")
    page.wait_for_selector(".result-heat:not(.result-brief)")


def written(page: Page, selector: str) -> list[str]:
    """The numbers that stand there, as they stand there."""
    return re.findall(r"\d+(?:\.\d+)?", page.inner_text(selector).replace("cm³", ""))


def expect_as_computed(page: Page, method: str, computed: dict[str, Any]) -> None:
    """End-point, interval and u stand there as the station has them, all to one place, which u deserves."""
    (end_point,) = written(page, f".result-{method} .end-point")
    low, high, *_ = written(page, f".result-{method} .interval")
    page.locator(f".result-{method} summary").click()
    (u_cm3,) = written(page, f".result-{method} .plus-minus")
    places = {len(each.partition(".")[2]) for each in (end_point, low, high, u_cm3)}
    assert len(places) == 1, f"{end_point}, {low} to {high} ± {u_cm3}"
    half_cm3 = 0.5000001 * 10 ** -places.pop()
    assert half_cm3 > computed["u_end_point_cm3"] / 60, "at most two digits of u (GUM 7.2.6)"
    assert float(end_point) == pytest.approx(computed["end_point_cm3"], abs=half_cm3)
    assert [float(low), float(high)] == pytest.approx(computed["interval_95_cm3"], abs=half_cm3)
    assert float(u_cm3) == pytest.approx(computed["u_end_point_cm3"], abs=half_cm3)


def test_a_whole_practical_is_followed_and_the_crossing_read(bench: Station, open_page: OpenPage) -> None:
    """Phone and projector watch the same bench from before the first portion to the end."""
    phone = open_page(bench, viewport=PHONE)
    projector = open_page(bench, viewport=PROJECTOR, color_scheme="dark")
    for page in (phone, projector):
        page.evaluate(FOLLOW)
    for repeat in (1, 2):
        for portion in range(1, 11):
            work(bench, until="pour", repeat=repeat)
            for page in (phone, projector):
                page.wait_for_function("(asked) => window.seen.portions.at(-1) === asked", arg=portion)
            bench.act(act="portion_added", portion=portion).raise_for_status()
        work(bench, until="rinse" if repeat == 1 else "done", repeat=repeat)
    for page in (phone, projector):
        follow_to_the_end(page)
    state = bench.final_state()
    for page in (phone, projector):
        for method, name in (("lines", "straight_lines"), ("heat", "heat_balance")):
            expect_as_computed(page, method, state["result"][name])
        expect(page.locator(".crossing text")).to_have_text(page.inner_text(".result-lines .end-point"))
        asked = page.evaluate("window.seen.portions")
        assert asked == [*range(1, 11), *range(1, 11)], "every portion of both repeats was asked for, in order"
        assert len(page.evaluate("window.seen.heights")) == 1, "nothing moved when the instruction changed"
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def test_the_chart_and_the_table_show_every_reading(over: Station, open_page: OpenPage) -> None:
    page = open_page(over)
    follow_to_the_end(page)
    state = over.state()
    assert [len(repeat["readings"]) for repeat in state["repeats"]] == [14, 14], "the start and 13 portions"
    assert page.locator(".figure svg .series-1 path").count() == 0, "the mean and its lines come first"
    page.get_by_text("Show the single repeats").click()
    page.wait_for_selector(".figure svg .series-1 path", state="attached")
    for series in ("series-1", "series-2", "mean"):
        assert page.locator(f".figure svg .{series} path").count() == 14
    axes = page.locator(".figure svg .quantity").all_text_contents()
    assert axes == ["temperature / °C", "volume of alkali added / cm³"]
    assert page.locator("thead th").all_inner_texts() == [
        "volume added / cm³",
        "repeat 1 / °C",
        "repeat 2 / °C",
        "mean / °C",
    ]
    rows = page.locator("tbody tr")
    assert rows.count() == 14
    for index, mean in enumerate(state["mean"]):
        cells = rows.nth(index).locator("th, td").all_inner_texts()
        readings = [repeat["readings"][index]["temperature_c"] for repeat in state["repeats"]]
        expected = [mean["volume_cm3"], *readings, mean["temperature_c"]]
        shown = [float(re.findall(r"[\d.]+", cell)[0]) for cell in cells]
        assert shown == pytest.approx(expected, abs=0.00501)


def test_the_crossing_stands_where_the_axes_say(over: Station, open_page: OpenPage) -> None:
    """Read the end-point off the chart as a student does: by the ring's place between two tick marks."""
    page = open_page(over, viewport=PROJECTOR)
    follow_to_the_end(page)
    end_point_cm3 = over.state()["result"]["straight_lines"]["end_point_cm3"]
    ticks = page.evaluate("""() => [...document.querySelectorAll('.figure svg .axes text[text-anchor=middle]')]
        .map((text) => [Number(text.textContent), Number(text.getAttribute('x'))])""")
    ring = float(page.get_attribute(".crossing circle", "cx") or "nan")
    (first_cm3, first_x), (last_cm3, last_x) = ticks[0], ticks[-1]
    read_cm3 = first_cm3 + (ring - first_x) / (last_x - first_x) * (last_cm3 - first_cm3)
    assert read_cm3 == pytest.approx(end_point_cm3, abs=0.05)


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_finished_page_has_no_violation_that_axe_knows(over: Station, open_page: OpenPage, scheme: str) -> None:
    page = open_page(over, color_scheme=scheme)
    follow_to_the_end(page)
    expect_accessible(page)


@pytest.mark.fault("from-elsewhere")
def test_the_first_view_travels_light(over: Station, open_page: OpenPage) -> None:
    """Bytes and requests are bounded, and nothing comes that is not wanted yet."""
    page = open_page(over)
    page.wait_for_timeout(500)
    asked = page.evaluate(CARRIED)
    entries = dict(reversed(asked))  # each by its first time: a busy machine's stream is late, and the page asks again
    assert len(entries) <= 10, asked
    assert sum(entries.values()) <= 60_000, asked
    later = re.compile("/page/(de|rest|glossary|sketch|own_lines|own_values|trace_figure|why|working|record)-")
    assert not [name for name in entries if later.match(name)]
    assert page.evaluate("document.querySelectorAll('style, [style], script:not([src])').length") == 0


@pytest.mark.parametrize("fixture", ["over", "bench"])
def test_the_first_view_in_german_is_hardly_heavier(
    fixture: str, request: pytest.FixtureRequest, open_page: OpenPage
) -> None:
    """Its words come in two parts; nothing that is seen before the second one is in English."""
    station = request.getfixturevalue(fixture)
    english, german = (open_page(station, locale=locale) for locale in ("en-GB", "de-DE"))
    for page in (english, german):
        page.wait_for_timeout(500)
    carried = [
        sum(size for path, size in page.evaluate(CARRIED) if not path.startswith("/api/")) for page in (english, german)
    ]
    assert carried[1] - carried[0] <= 12_000
    expect(german.locator("html")).to_have_attribute("lang", "de")
    first = german.locator(".instrument").inner_text()
    german.wait_for_function(
        "() => performance.getEntriesByType('resource').some(({ name }) => name.includes('/page/rest-'))"
    )
    assert not re.search(r"\b(the|with|your|and)\b", first), first
