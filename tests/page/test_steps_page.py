"""Every number opens into the line that made it; the accepted value beside it; own judgement as a table."""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import PHONE, PROJECTOR, OpenPage, Station, expect_accessible, serve_settings

OWN_JUDGEMENT = """
results = "at once"
prompts = "own judgement"
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 5.0
count = 8
"""


def opened(station: Station, open_page: OpenPage, **options: object) -> Page:
    page = open_page(station, **options)
    page.wait_for_selector("main.state-done")
    page.get_by_role("button", name="How every number was worked out").click()
    page.wait_for_selector(".step")
    return page


def plain(text: str) -> str:
    return text.replace("\xa0", " ").replace("\u2212", "-")


def test_every_number_opens_into_the_line_that_made_it(over: Station, open_page: OpenPage) -> None:
    page = opened(over, open_page)
    steps = over.state()["result"]["steps"]
    lines = [*steps["straight_lines"], *steps["heat_balance"]]
    shown = page.locator(".step")
    expect(shown).to_have_count(len(lines))
    for index, line in enumerate(lines):
        step = shown.nth(index)
        expect(step.locator(".formula")).to_be_hidden()
        summary = plain(step.locator("summary").inner_text())
        assert line["text"] in summary
        step.locator("summary").click()
        assert plain(step.locator(".formula").inner_text()) == line["formula"]
        assert plain(step.locator(".working").first.inner_text()) == line["working"]
        said = plain(step.locator("summary b").inner_text())
        number = float(said.split(" ")[0])
        within = 0.101 if line["unit"] == "%" else line["u"] if line["u"] else 0.01 * abs(line["value"])
        assert number == pytest.approx(line["value"], abs=0.5 * within), said
        assert said.endswith(line["unit"])


def test_steps_of_each_repeat_can_be_chosen(over: Station, open_page: OpenPage) -> None:
    page = opened(over, open_page)
    repeats = over.state()["result"]["repeats"]
    page.get_by_role("group", name="Numbers of").get_by_role("button", name="repeat 1").click()
    lines = [*repeats[0]["steps"]["straight_lines"], *repeats[0]["steps"]["heat_balance"]]
    for text in {line["working"] for line in lines}:
        assert text in plain(page.locator(".steps").inner_html().replace("&nbsp;", " "))


def test_the_accepted_value_and_its_source_stand_beside_the_own(over: Station, open_page: OpenPage) -> None:
    page = opened(over, open_page)
    result = over.state()["result"]
    block = page.locator(".accepted")
    assert f"{result['accepted']['enthalpy_kj_mol']:.1f}" in plain(block.inner_text())
    expect(block).to_contain_text(result["accepted"]["source"])
    own = result["heat_balance"]["enthalpy_kj_mol"]
    assert f"Yours, by heat balance: {own:.1f}"[:-2] in plain(block.inner_text())
    questions = page.locator(".think li").all_inner_texts()
    assert len(questions) >= 4
    assert all("?" in question for question in questions), "questions, not answers"


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_axe_knows_no_violation_in_the_steps(over: Station, open_page: OpenPage, scheme: str) -> None:
    for viewport in (PHONE, PROJECTOR):
        page = opened(over, open_page, color_scheme=scheme, viewport=viewport)
        page.locator(".step summary").first.click()
        expect_accessible(page)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def decide(station: Station) -> None:
    """Read and add whenever the bench lets one: too early often enough."""
    until = time.monotonic() + 5 * PATIENCE_S
    while time.monotonic() < until:
        state = station.state()
        if state["state"] == "done":
            return
        asked = state["instruction"]
        if asked["act"]:
            portion = {} if asked["portion"] is None else {"portion": asked["portion"]}
            station.act(act=asked["act"], **portion)
        time.sleep(0.15)
    pytest.fail("the bench was not done")


@pytest.fixture
def judged(tmp_path: Path) -> Iterator[Station]:
    """A bench whose students decided by themselves when to read."""
    settings = serve_settings(tmp_path, "127.0.0.1", plan=OWN_JUDGEMENT)
    station = Station("serve", "--config", str(settings))
    station.start()
    decide(station)
    station.final_state()
    yield station
    station.stop()


def test_own_judgement_is_laid_beside_the_stations(judged: Station, open_page: OpenPage) -> None:
    page = open_page(judged)
    page.wait_for_selector(".judgement")
    judgement = judged.state()["result"]["judgement"]
    portions = judgement["repeats"][0]["portions"]
    rows = page.locator(".judgement table").nth(1).locator("tbody tr")
    expect(rows).to_have_count(len(portions))
    for index, portion in enumerate(portions):
        cells = rows.nth(index).locator("td").all_inner_texts()
        for cell, name in zip(cells, ("own_s", "own_c", "station_s", "station_c"), strict=True):
            if portion[name] is None:
                assert "no reading" in cell
            else:
                within = 0.51 if name.endswith("_s") else 0.00501
                assert float(cell.replace("\u2212", "-")) == pytest.approx(portion[name], abs=within)
    for text in judgement["words"]:
        expect(page.locator(".judgement-words")).to_contain_text(text)
    expect_accessible(page)
