"""Another group's readings taken over in the browser, from the file that its bench gave."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import OpenContext, OpenPage, Station, expect_accessible, serve_settings

HEADER = "repeat,volume_cm3,temperature_c\r\n"


def reading_c(repeat: int, volume_cm3: float) -> float:
    """A cup without losses: 57 kJ/mol of 0.4 mol/dm³ alkali up to 26 cm³, 4.1 J/(cm³ K)."""
    return 20.0 + 57.0 * 0.4 * min(volume_cm3, 26.0) / 4.1 / (25.0 + volume_cm3) + 0.05 * repeat


GIVEN = HEADER + "".join(
    f"{repeat},{4 * portion},{reading_c(repeat, 4.0 * portion):.4f}\r\n" for repeat in (1, 2) for portion in range(11)
)
RECORD = "repeat,time_s,temperature_c,portion_cm3\r\n1,0.5,20.0000,\r\n"


@pytest.fixture(scope="module")
def ready(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    station = Station("serve", "--config", str(serve_settings(tmp_path_factory.mktemp("adopt"), "127.0.0.1")))
    station.start()
    yield station
    station.stop()


def form(page: Page) -> Page:
    page.locator(".corrections .toggle").click()
    page.get_by_role("button", name="Use another group’s readings").click()
    page.wait_for_selector("form.adopt")
    return page


def fill(page: Page, name: str, content: str, label: str) -> None:
    page.locator("input[type=file]").set_input_files({"name": name, "mimeType": "text/csv", "buffer": content.encode()})
    page.get_by_label("Whose readings are they?").fill(label)


def test_nothing_is_sent_before_file_and_label_are_there(ready: Station, open_page: OpenPage) -> None:
    page = form(open_page(ready))
    take = page.get_by_role("button", name="Use these readings")
    expect(take).to_be_disabled()
    fill(page, "readings.csv", GIVEN, "")
    expect(take).to_be_disabled()
    page.get_by_label("Whose readings are they?").fill("Bench 4")
    expect(take).to_be_enabled()
    expect_accessible(page)
    assert ready.state()["adopted"] is None


def test_a_wrong_file_is_refused_in_the_stations_words(ready: Station, open_context: OpenContext) -> None:
    context, watched = open_context(ready)
    watched.expected = ("409",)
    page = context.new_page()
    page.goto(ready.url)
    page.wait_for_selector("main")
    form(page)
    fill(page, "record.csv", RECORD, "Bench 4")
    page.get_by_role("button", name="Use these readings").click()
    expect(page.locator(".trouble")).to_contain_text("this is a record of samples")
    page.get_by_role("alert").get_by_role("button", name="Close", exact=True).click()
    fill(page, "readings.csv", GIVEN.replace("20.0500", "20,05"), "Bench 4")
    page.get_by_role("button", name="Use these readings").click()
    expect(page.locator(".trouble")).to_contain_text("line 2, column temperature_c")
    assert ready.state()["adopted"] is None


def test_a_file_too_long_for_readings_is_told_before_it_is_sent(ready: Station, open_page: OpenPage) -> None:
    page = form(open_page(ready))
    fill(page, "record.csv", RECORD * 3000, "Bench 4")
    expect(page.locator(".adopt-said")).to_contain_text("too long for readings")
    expect(page.get_by_role("button", name="Use these readings")).to_be_disabled()


def test_readings_are_taken_over_labelled_and_given_back(ready: Station, open_page: OpenPage, tmp_path: Path) -> None:
    page = form(open_page(ready))
    fill(page, "bench-4-readings.csv", GIVEN, "Bench 4")
    page.get_by_role("button", name="Use these readings").click()
    page.wait_for_selector("main.state-done")
    state = ready.state()
    assert state["adopted"] == {"label": "Bench 4", "repeats": 2}
    assert [len(repeat["readings"]) for repeat in state["repeats"]] == [11, 11]
    page.goto(f"{ready.url}#record")
    expect(page.locator(".sheet .not-own").first).to_have_text(
        "Not this group’s own readings: taken over from Bench 4."
    )
    page.goto(f"{ready.url}#")
    page.locator(".corrections .toggle").click()
    page.locator(".corrections li button", has_text="own readings").click()
    page.get_by_role("button", name="Use our own readings again").click()
    page.wait_for_selector("main.state-ready")
    assert ready.state()["adopted"] is None
