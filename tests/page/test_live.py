"""A practical under way: freshness, tabs, sleep and wake, and what assistive technology is told."""

import signal
import time
from collections.abc import Iterator

import pytest
from playwright.sync_api import BrowserContext, Page, Route, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import PROJECTOR, SET_VISIBILITY, OpenContext, OpenPage, Station, Watched, expect_accessible
from tests.page.hands import aged, standing_still


@pytest.fixture
def held_demo() -> Iterator[Station]:
    """A demo that a test may hold still."""
    station = Station("demo", "--speed", "10", "--port", "0", "--json")
    station.start()
    yield station
    station.stop()


def samples_shown(page: Page) -> str:
    """The curve of the portion: it changes with every sample."""
    return page.get_attribute(".trace", "d") or ""


def expect_live(page: Page) -> None:
    page.wait_for_selector(".temperature.is-fresh")
    page.wait_for_selector("main.heard-fresh")


def expect_growing(tabs: list[Page]) -> None:
    """Every tab hears of new samples: its curve changes, and changes again."""
    for _ in range(2):
        shown = [samples_shown(tab) for tab in tabs]
        for tab, path in zip(tabs, shown, strict=True):
            tab.wait_for_function(
                "(path) => document.querySelector('.trace')?.getAttribute('d') !== path", arg=path, polling=100
            )


@pytest.mark.fault("frozen-value")
def test_a_frozen_number_looks_frozen(held_demo: Station, open_context: OpenContext) -> None:
    """Hold the station still; the page's clock is pushed on, so that nobody waits."""
    page = open_context(held_demo)[0].new_page()
    page.clock.install()
    page.goto(held_demo.url)
    expect_live(page)
    colour = page.evaluate("getComputedStyle(document.querySelector('.temperature .value')).color")
    standing_still(page)
    held_demo.signal(signal.SIGSTOP)
    aged(page, "main.heard-old .temperature.is-old")
    assert page.evaluate("getComputedStyle(document.querySelector('.temperature .value')).color") != colour
    expect(page.get_by_role("status")).to_contain_text("Nothing heard from the station for more than 3 seconds")
    expect(page.locator(".temperature .age").first).to_contain_text("s ago")
    aged(page, "main.heard-frozen .temperature.is-frozen s")
    expect(page.locator(".temperature .age").first).to_contain_text("not live: ")
    expect(page.get_by_role("status")).to_contain_text("No contact with the station")
    page.clock.resume()
    held_demo.signal(signal.SIGCONT)
    expect_live(page)
    expect(page.get_by_role("status")).to_be_empty()


@pytest.mark.fault("seven-tabs")
def test_seven_tabs_of_one_browser_share_one_stream(slow_demo: Station, open_context: OpenContext) -> None:
    context, watched = open_context(slow_demo)
    tabs = [_new_tab(context, slow_demo) for _ in range(7)]
    for tab in tabs:
        expect_live(tab)
    wait_for_streams(watched, tabs[0], 1)
    expect_growing(tabs)
    # A tab that a busy machine holds up for seconds is followed by another: streams one after another, never at once.
    assert len(watched.open_streams) == 1


def test_when_the_tab_with_the_stream_closes_another_takes_over(slow_demo: Station, open_context: OpenContext) -> None:
    context, watched = open_context(slow_demo)
    tabs = [_new_tab(context, slow_demo) for _ in range(3)]
    for tab in tabs:
        expect_live(tab)
    wait_for_streams(watched, tabs[0], 1)
    leader = watched.open_streams[0].frame.page
    leader.close()
    rest = [tab for tab in tabs if tab is not leader]
    wait_for_streams(watched, rest[0], 1)
    expect_growing(rest)
    assert len(watched.open_streams) == 1


def wait_for_streams(watched: Watched, page: Page, count: int) -> None:
    """A tab is live by asking, too, until the election among the tabs is over and one opens the stream."""
    until = time.monotonic() + PATIENCE_S
    while len(watched.open_streams) != count and time.monotonic() < until:
        page.wait_for_timeout(50)
    assert len(watched.open_streams) == count


def _new_tab(context: BrowserContext, station: Station) -> Page:
    tab = context.new_page()
    tab.goto(station.url)
    tab.wait_for_selector("main")
    return tab


@pytest.mark.fault("screen-slept")
def test_a_hidden_page_holds_no_stream_and_catches_up_when_shown(held_demo: Station, open_context: OpenContext) -> None:
    context, watched = open_context(held_demo)
    page = _new_tab(context, held_demo)
    expect_live(page)
    page.wait_for_selector(".trace[d]")
    page.evaluate(SET_VISIBILITY, "hidden")
    wait_for_streams(watched, page, 0)
    # What was heard before is still drawn, within a tenth of a second of the page's own timers, which fire in order.
    page.evaluate("new Promise((done) => setTimeout(done, 300))")
    shown = samples_shown(page)
    missed = held_demo.state()["seq"] + 15
    while held_demo.state()["seq"] < missed:
        page.wait_for_timeout(100)
    assert samples_shown(page) == shown, "a hidden page listens to nobody"
    page.evaluate(SET_VISIBILITY, "visible")
    expect_live(page)
    twin = _new_tab(context, held_demo)
    expect_growing([page, twin])
    held_demo.signal(signal.SIGSTOP)
    page.wait_for_selector("main.heard-old")
    twin.wait_for_selector("main.heard-old")
    assert samples_shown(page) == samples_shown(twin) != "", "nothing of what was missed is missing"


@pytest.mark.fault("proxy")
def test_polling_carries_the_page_when_no_stream_comes_through(slow_demo: Station, open_context: OpenContext) -> None:
    """A proxy that holds events back: the stream opens and says nothing."""
    context, watched = open_context(slow_demo)
    held: list[Route] = []
    context.route("**/api/stream*", lambda route: held.append(route))  # noqa: PLW0108 - must be a Python function
    page = context.new_page()
    page.clock.install()
    page.goto(slow_demo.url)
    page.wait_for_selector("main")
    page.clock.fast_forward(5_500)
    for _ in range(3):
        with page.expect_response("**/api/state*"):
            page.clock.run_for(1_500)
    expect_live(page)
    assert held
    assert watched.open_streams == [], "the silent stream was given up"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_a_practical_under_way_has_no_violation_that_axe_knows(
    slow_demo: Station, open_page: OpenPage, scheme: str
) -> None:
    for viewport in (None, PROJECTOR):
        options = {"color_scheme": scheme} | ({"viewport": viewport} if viewport else {})
        page = open_page(slow_demo, **options)
        expect_live(page)
        page.get_by_role("button", name="Change, pause or finish").click()
        expect_accessible(page)


def test_only_a_change_of_the_instruction_is_read_aloud(slow_demo: Station, open_page: OpenPage) -> None:
    """The live number changes every second: inside a live region it would never be quiet."""
    page = open_page(slow_demo)
    regions = page.evaluate("""() => [...document.querySelectorAll('[aria-live], [role=status], [role=alert]')]
        .map((region) => region.className || region.id)""")
    assert regions == ["instruction-words", "question-words", "contact", "glossary"]
    assert page.locator("[aria-live] .temperature, [role=status] .temperature, [aria-live] .left").count() == 0


@pytest.mark.fault("access-for-all")
def test_targets_are_at_least_48_pixels_high(slow_demo: Station, open_page: OpenPage) -> None:
    page = open_page(slow_demo)
    page.get_by_role("button", name="Change, pause or finish").click()
    heights = page.evaluate("""() => [...document.querySelectorAll('button:not(.term), select, input')]
        .filter((one) => one.offsetParent).map((one) => one.getBoundingClientRect().height)""")
    assert heights
    assert min(heights) >= 48
