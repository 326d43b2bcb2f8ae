"""Big numbers for the projector: everything in one window, and as honest as the bench's own page."""

import signal
from collections.abc import Iterator

import pytest
from playwright.sync_api import ViewportSize, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenContext, OpenPage, Station, expect_accessible, work
from tests.page.hands import VIRTUAL, aged, serving, short_plan, standing_still

TABLET = ViewportSize(width=768, height=1024)
OLD_PROJECTOR = ViewportSize(width=1024, height=768)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with serving(tmp_path_factory.mktemp("big"), *VIRTUAL, plan=short_plan()) as station:
        work(station, until="pour", repeat=1)
        yield station


@pytest.mark.parametrize("viewport", [PHONE, TABLET, OLD_PROJECTOR, PROJECTOR])
@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_it_fits_its_window_and_has_no_violation_that_axe_knows(
    bench: Station, open_page: OpenPage, viewport: ViewportSize, scheme: str
) -> None:
    page = open_page(bench, viewport=viewport, color_scheme=scheme)
    page.evaluate("location.hash = 'big'")
    page.wait_for_selector(".big")
    expect(page.locator(".big-words")).to_have_text("Add portion 1: 5 cm³ of sodium hydroxide. Stir.")
    expect(page.locator(".big-temperature .value")).to_contain_text("°C")
    expect(page.locator(".big-standing")).to_contain_text("portion 1 of 3")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    assert page.evaluate("document.documentElement.scrollHeight <= innerHeight"), "nothing is below the window"
    assert page.locator(".big :is(button, a, input)").count() == 0
    lost = page.locator(".big-words").evaluate("(one) => one.scrollHeight - one.clientHeight")
    assert lost <= 1
    expect_accessible(page)


def test_letters_are_larger_than_on_the_bench_page(bench: Station, open_page: OpenPage) -> None:
    """Read from 8 m at 1/200: 40 mm on a screen 2 m wide, of which 1920 px are about 38 px a 40 mm letter."""
    page = open_page(bench, viewport=PROJECTOR)
    page.evaluate("location.hash = 'big'")
    page.wait_for_selector(".big")
    size_px = page.locator(".big-temperature .value").evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)")
    words_px = page.locator(".big-words").evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)")
    assert 0.7 * words_px >= 38
    assert size_px > words_px


def test_it_says_when_nothing_is_heard(bench: Station, open_context: OpenContext) -> None:
    page = open_context(bench, viewport=PROJECTOR)[0].new_page()
    page.clock.install()
    page.goto(f"{bench.url}#big")
    page.wait_for_selector("main.heard-fresh .big")
    standing_still(page)
    bench.signal(signal.SIGSTOP)
    aged(page, "main.heard-old .big")
    expect(page.locator(".big-standing")).to_contain_text("Not up to date")
    expect(page.get_by_role("status")).to_contain_text("Nothing heard from the station for more than 3 seconds")
    aged(page, ".big-temperature.is-frozen s")
    page.clock.resume()
    bench.signal(signal.SIGCONT)
    page.wait_for_selector("main.heard-fresh")
    expect(page.locator(".big-standing")).not_to_contain_text("Not up to date")
