"""Which language and units the page speaks: the device's choice, the station's, the browser's."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page.conftest import OpenContext
from tests.page.looking import PORTIONS, Looking, Serve, follow, opened, served


@pytest.fixture
def serve(tmp_path: Path) -> Iterator[Serve]:
    yield from served(tmp_path)


def test_millilitres_and_molar_by_choice_of_the_device(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = opened(open_context(station)[0].new_page(), station, "#settings")
    choice = page.locator("select").filter(has=page.locator("option[value=mL]"))
    choice.focus()
    page.keyboard.type("mL")
    expect(page.locator("header")).to_contain_text("25\u00a0mL")
    expect(choice).to_be_focused()
    page.reload()
    page.wait_for_selector("main > *")
    looking = Looking(lambda text: re.search("cm³|dm³", text) is not None)
    follow(station, page, looking)
    looking.expect_nothing()
    assert "mL" in page.inner_text("main")


def test_a_station_may_set_language_and_units(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS, more='page.language = "de"\npage.units = "mL"')
    for act in ("alkali_left_out", "probe_rinsed"):
        station.act(act=act).raise_for_status()
    page = opened(open_context(station, locale="en-GB")[0].new_page(), station, speaks="de")
    asked = page.locator(".instruction-text")
    expect(asked).to_contain_text("Fülle den Becher: 25\u00a0mL Salpetersäure.")
    page.evaluate("location.hash = 'settings'")
    page.locator("select").filter(has=page.locator("option[value=de]")).select_option("en")
    page.evaluate("location.hash = ''")
    expect(asked).to_contain_text("Fill the cup: 25\u00a0mL of nitric acid.")
    page.reload()
    expect(asked).to_contain_text("Fill the cup: 25\u00a0mL of nitric acid.")


def test_a_device_that_keeps_nothing_speaks_all_the_same(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    context, _ = open_context(station, locale="de-DE")
    context.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } })"
    )
    page = opened(context.new_page(), station, "#settings", speaks="de")
    page.locator("select").filter(has=page.locator("option[value=en]")).select_option("en")
    page.evaluate("location.hash = ''")
    expect(page.locator(".instruction-text")).to_contain_text("Hold the clean, dry probe in the")


def test_without_its_german_words_the_page_works_in_english(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    context, watched = open_context(station, locale="de-DE")
    watched.expected = ("Failed to load resource",)
    context.route(re.compile(r"/page/de-[^/]*\.js$"), lambda route: route.abort())
    page = opened(context.new_page(), station)
    expect(page.locator(".instruction-text")).to_contain_text("Hold the clean, dry probe in the")
    assert page.evaluate("document.documentElement.lang") == "en"


def test_english_carries_no_other_language(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = open_context(station)[0].new_page()
    fetched: list[str] = []
    page.on("request", lambda request: fetched.append(request.url.rsplit("/", 1)[-1]))
    opened(page, station)
    page.wait_for_selector(".instruction-text")
    assert any(name.startswith("page-") for name in fetched)
    assert not [name for name in fetched if name.startswith(("de-", "pseudo-"))]
