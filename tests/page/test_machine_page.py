"""Staff change the machine on the page `/kit`: a real station, a real helper on a folder that stands for the card."""

import asyncio
import threading
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from station.kit.helper.work import STICK, System
from station.kit.on_card import network
from tests.conftest import PATIENCE_S
from tests.kit.helping import at_work, card_in
from tests.page.conftest import OpenContext, Station, expect_accessible, serve_settings
from tests.server.doors import SECRETS, TECHNICIAN

NARROW = ViewportSize(width=400, height=900)


@pytest.fixture(scope="module")
def system(tmp_path_factory: pytest.TempPathFactory) -> Iterator[System]:
    with pytest.MonkeyPatch.context() as patched:
        made = card_in(tmp_path_factory.mktemp("c"), patched)
        patched.setenv("BENCHWARM_HELPER", str(made.root / "s"))
        ready, stop = threading.Event(), threading.Event()

        async def work() -> None:
            async with at_work(made):
                ready.set()
                await asyncio.to_thread(stop.wait)

        thread = threading.Thread(target=asyncio.run, args=(work(),))
        thread.start()
        assert ready.wait(PATIENCE_S)
        yield made
        stop.set()
        thread.join(PATIENCE_S)


def served(folder: Path) -> Station:
    settings = serve_settings(folder, "127.0.0.1", speed=1.0)
    with settings.open("a", encoding="utf-8") as file:
        file.write(f'[access]\ntechnician_passphrase_hash = "{SECRETS.technician_passphrase_hash}"\n')
    station = Station("serve", "--config", str(settings))
    station.start()
    return station


def signed_in(open_context: OpenContext, station: Station, expected: tuple[str, ...] = (), **options: object) -> Page:
    context, watched = open_context(station, viewport=NARROW, **options)
    watched.expected = expected
    page = context.new_page()
    page.goto(f"{station.url}kit")
    expect(page.locator(".kit-verdict[data-status]")).to_be_visible()
    page.locator("form select").first.select_option("technician")
    page.locator("form input[type=password]").first.fill(TECHNICIAN)
    page.locator("form button").first.click()
    return page


def test_network_name_and_record_change_on_the_page(system: System, tmp_path: Path, open_context: OpenContext) -> None:
    station = served(tmp_path)
    try:
        page = signed_in(open_context, station, ("409", "422"))
        ssid = page.get_by_label("Name of the Wi-Fi network")
        expect(ssid).to_have_value("Old")
        ssid.fill("Hall")
        page.get_by_label("Password (empty: an open network)").fill("long enough for it")
        page.get_by_role("button", name="Try this network").click()
        expect(page.get_by_text("The new network answered for a minute and is kept.")).to_be_visible()
        found = network.read((system.boot / "benchwarm" / network.FILE).read_text())
        assert found == network.Network("Hall", "long enough for it", country="IE")
        page.get_by_label("Teacher's passphrase").fill("short")
        page.get_by_role("button", name="Keep these").click()
        expect(page.locator(".kit-machine .why-not").first).not_to_be_empty()
        page.get_by_role("button", name="Delete the record").click()
        expect(page.get_by_text("Tick the box first.")).to_be_visible()
        page.get_by_role("button", name="Copy the record onto the stick").click()
        expect(page.get_by_text("no record")).to_be_visible()  # the card of this folder has none
        assert not list((system.root / STICK).iterdir())
        expect_accessible(page)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
    finally:
        station.stop()


def test_without_a_helper_the_page_says_so_in_german(
    tmp_path: Path, open_context: OpenContext, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("BENCHWARM_HELPER", str(tmp_path / "nobody"))
    station = served(tmp_path)
    try:
        page = signed_in(open_context, station, locale="de-DE")
        expect(page.get_by_role("heading", name="Das Gerät")).to_be_visible()
        expect(page.get_by_text("nicht von einer Karte von station kit installiert")).to_be_visible()
        expect_accessible(page)
    finally:
        station.stop()
