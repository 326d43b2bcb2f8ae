"""A whole practical that mixes once with an ordinary thermometer: the clock says when, the page works it out."""

import math
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import PHONE, OpenContext, Station, expect_accessible, serve_settings
from tests.page.hands import MEANT_MS, press

PLAN = """
kind = "once"
repeats = 1
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.0
[timing]
before_s = 90
after_s = 150
"""
SPEED = 10.0
CHANGE_C = -4.35
"""4.02 g of potassium chloride, 17.22 kJ/mol (Parker, NSRDS-NBS 2, 1965), in 50 cm³ of water and a cup of 5 J/K."""


@pytest.fixture
def typed(tmp_path: Path) -> Iterator[Station]:
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", speed=SPEED, plan=PLAN)))
    station.start()
    assert station.act(act="thermometer", division_c=0.1).is_success
    yield station
    station.stop()


def shown_c(since_s: float) -> str:
    """What the thermometer shows so long after mixing: it follows in 8 s, the cup warms again in an hour."""
    if since_s < 0.0:
        return "20.1"
    return f"{20.1 + CHANGE_C * (1.0 - math.exp(-since_s / 8.0)) * math.exp(-since_s / 3600.0):.1f}"


def read(page: Page, station: Station, mixed_s: float | None) -> None:
    """Type what the thermometer shows at the mark that the page names, once it has come."""
    expect(page.locator(".by-clock strong")).to_have_text("read now")
    field = page.locator(".by-clock input")
    kept = len(station.state()["repeats"][-1]["clocked"])
    field.fill("2")  # what is begun belongs to its mark, however fast the clock runs
    minutes, seconds = page.locator(".by-clock label").inner_text().split("at ")[1].split(" ")[0].split(":")
    at_s = 60.0 * int(minutes) + int(seconds)
    field.fill(shown_c(at_s - mixed_s) if mixed_s is not None else shown_c(-1.0))
    page.locator(".by-clock").get_by_role("button", name="Record", exact=True).click()
    until = time.monotonic() + PATIENCE_S
    while time.monotonic() < until:
        state = station.state()
        if state["state"] == "done" or len(state["repeats"][-1]["clocked"]) > kept:
            return
        page.wait_for_timeout(50)
    raise AssertionError(page.locator(".instruction").inner_text())


def test_a_whole_practical_is_typed_by_the_clock(typed: Station, open_context: OpenContext) -> None:
    context, watched = open_context(typed, viewport=PHONE)
    watched.expected = ("409",)  # a sign that is asked about
    page = context.new_page()
    page.goto(typed.url)
    press(page, "begin")
    expect(page.locator("[data-testid=instruction]")).to_contain_text("every 30 s")
    expect(page.locator(".instruction-detail")).to_contain_text("weigh out 4 g of potassium chloride")
    while typed.state()["instruction"]["act"] != "portion_added":
        read(page, typed, None)
    expect(page.locator(".drawn-tip")).to_have_count(1)
    expect(page.locator("[data-testid=instruction]")).to_contain_text("tip in all 4 g")
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"
    expect_accessible(page)
    page.get_by_label("Mass really weighed / g").fill("4,02")
    page.wait_for_timeout(MEANT_MS)
    page.locator(".mix-now [data-act=portion_added]").click()
    page.wait_for_selector("main.state-settle")
    (portion,) = typed.state()["repeats"][0]["portions"]
    assert (portion["mass_g"], portion["places"]) == (4.02, 2)
    while typed.state()["state"] != "done":
        read(page, typed, portion["time_s"])
    repeat = typed.state()["repeats"][0]
    assert len(repeat["clocked"]) >= 6, "a busy machine may let a mark or two go by"
    expect(page.get_by_role("button", name="Now your own reading")).to_be_visible()
    newest_c = repeat["clocked"][-1]["temperature_c"]
    expect(page.locator("[data-testid=temperature]")).to_contain_text(f"{newest_c:.1f}")
    page.get_by_label("Our change of temperature").fill("4,3")
    page.get_by_role("button", name="This is our reading").click()
    page.wait_for_timeout(MEANT_MS)
    yes = page.get_by_role("button", name="Yes, this is our reading")
    yes.click()
    expect(page.get_by_role("alert").filter(has_text="became colder")).to_be_visible()
    page.get_by_role("button", name="Not yet").click()
    page.get_by_label("Our change of temperature").fill("−4,3")
    page.get_by_role("button", name="This is our reading").click()
    page.wait_for_timeout(MEANT_MS)
    yes.click()
    page.wait_for_selector(".compared")
    result = typed.final_state()["result"]
    lines = result["straight_lines"]
    assert lines["change_c"] == pytest.approx(CHANGE_C, abs=0.15)
    assert lines["enthalpy_kj_mol"] == pytest.approx(17.22, abs=2.0 * lines["u_enthalpy_kj_mol"])
    card = page.locator(".result-lines")
    expect(card).to_contain_text("enthalpy change per mole of potassium chloride")
    assert card.locator(".enthalpy").inner_text().startswith("+")
    page.wait_for_selector(".read-off .change")
    assert "4.02 g" in " ".join(str(step["working"]) for step in result["steps"]["straight_lines"]), (
        "what was weighed stands in the steps"
    )
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
