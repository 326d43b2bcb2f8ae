"""The page of the kit: verdict, what to mend first, QR code, lamps; for staff and for those who only look."""

import re
import subprocess
import zipfile
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import STATION, OpenContext, Station, expect_accessible, serve_settings
from tests.records import PLAN_TEXT
from tests.server.doors import SECRETS, TECHNICIAN

WIDE, NARROW = ViewportSize(width=1280, height=900), ViewportSize(width=768, height=1024)


@pytest.fixture(scope="module")
def kit(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    """A bench with mock pins and staff."""
    folder = tmp_path_factory.mktemp("kit")
    settings = serve_settings(folder, "127.0.0.1", speed=1.0)
    with settings.open("a", encoding="utf-8") as file:
        file.write(
            f'panel.pins = "mock"\n[access]\ntechnician_passphrase_hash = "{SECRETS.technician_passphrase_hash}"\n'
        )
    station = Station("serve", "--config", str(settings))
    station.start()
    yield station
    station.stop()


def opened(open_context: OpenContext, station: Station, **options: object) -> Page:
    context, _ = open_context(station, **options)
    page = context.new_page()
    page.goto(f"{station.url}kit")
    expect(page.locator(".kit-verdict[data-status]")).to_be_visible()
    return page


def test_the_kit_is_judged_and_looked_at_again(kit: Station, open_context: OpenContext) -> None:
    page = opened(open_context, kit, viewport=WIDE)
    expect(page.locator(".kit-verdict")).to_have_text("Usable. Mind what stands first below.")
    first = page.locator(".kit-findings > li").first
    expect(first).to_contain_text("the settings choose the virtual cup")
    expect(first).to_contain_text("Next: for a lesson, set driver")
    page.get_by_text(re.compile(r"\d+ things are in order")).click()
    expect(page.get_by_text(re.compile(r"the record is sound, \d+ events"))).to_be_visible()
    expect(page.get_by_role("link", name="probe checks", exact=True)).to_have_attribute("href", "/checks")
    picture = page.get_by_role("img", name="QR code of http://127.0.0.1")
    assert picture.evaluate("image => image.naturalWidth") > 20
    expect_accessible(page)
    with page.expect_response("**/api/kit") as answer:
        page.get_by_role("button", name="Look again").click()
    assert answer.value.ok
    told = answer.value.json()
    (record,) = [each for each in told["findings"] if each["name"] == "journal"]
    assert record["text"] in told["messages"], "so that the page says it in its own language"
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_staff_test_the_lamps_make_cards_and_take_records_away(kit: Station, open_context: OpenContext) -> None:
    context, watched = open_context(kit, viewport=NARROW)
    watched.expected = ("422",)
    page = context.new_page()
    page.goto(f"{kit.url}kit")
    expect(page.locator(".kit-verdict[data-status]")).to_be_visible()
    expect(page.get_by_role("button", name="Test the lamps")).to_have_count(0)
    page.get_by_label("Role").select_option("technician")
    page.get_by_label("Passphrase").fill(TECHNICIAN)
    page.get_by_role("button", name="Sign in").click()
    page.get_by_role("button", name="Test the lamps").click()
    expect(page.get_by_text("Look at the panel now.")).to_be_visible()
    make = page.get_by_role("button", name="Make the cards")
    make.click()
    expect(page.get_by_text("Choose the table first.")).to_be_visible()
    table = page.get_by_label("Table of benches (kits.toml)")
    for content, told in (
        (b"[[kit]]\r\nnumber = 0\r\n", "kits.toml: line 2:"),
        (b'[[kit]]\nnumber = 1\nname = "\xff"\n', "not UTF-8 text"),
        (b"#" * 16_000, "more than 15 kB"),
    ):
        table.set_input_files({"name": "kits.toml", "mimeType": "text/plain", "buffer": content})
        make.click()
        expect(page.locator(".kit-cards .why-not")).to_contain_text(told)
    expect_accessible(page)
    good = b"\xef\xbb\xbf[[kit]]\r\nnumber = 1\r\n"
    table.set_input_files({"name": "kits.toml", "mimeType": "text/plain", "buffer": good})
    with page.expect_download() as cards:
        make.click()
    with zipfile.ZipFile(cards.value.path()) as zipped:
        assert {"bench-1/station.toml", "labels.html", "codes-and-passphrases.html"} <= set(zipped.namelist())
    expect(page.get_by_text("cards.zip is saved.")).to_be_visible()
    with page.expect_download() as taken:
        page.get_by_role("link", name="Download all records").click()
    assert taken.value.suggested_filename == "bench-5-records.zip"
    with zipfile.ZipFile(taken.value.path()) as zipped:
        assert any(name.endswith("/record.xlsx") for name in zipped.namelist())
    expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_it_speaks_german(kit: Station, open_context: OpenContext) -> None:
    page = opened(open_context, kit, viewport=NARROW, locale="de-DE")
    expect(page.locator(".kit-verdict")).to_have_text("Brauchbar. Bitte beachten, was unten zuerst steht.")
    expect(page.locator(".kit-findings > li").first).to_contain_text("die Einstellungen wählen den virtuellen Becher")
    expect(page.locator(".kit-address")).to_contain_text("127.0.0.1:")
    expect_accessible(page)


def test_the_reason_becomes_the_bench_once_it_is_mended(tmp_path: Path, open_context: OpenContext) -> None:
    settings = serve_settings(tmp_path, "127.0.0.1", plan="title = 3")
    station = Station()
    command = [str(STATION), "serve", "--explain", "--config", str(settings)]
    with subprocess.Popen(command, stdout=subprocess.PIPE, text=True) as process:
        try:
            assert process.stdout is not None
            station.url = process.stdout.readline().split()[-3]
            context, watched = open_context(station, viewport=NARROW)
            watched.expected = ("503", "net::ERR_")  # between two starts nobody answers
            page = context.new_page()
            page.goto(station.url)
            expect(page.locator(".reason")).to_contain_text("plan.toml: title")
            page.get_by_text("all the rest").click()
            expect_accessible(page)
            (tmp_path / "plan.toml").write_text(PLAN_TEXT, encoding="utf-8")
            expect(page.locator(".instruction")).to_be_visible()
        finally:
            process.terminate()
            process.wait(PATIENCE_S)
