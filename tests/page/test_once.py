"""A practical that mixes once: the curve over time, both lines, and the change read off the page."""

import re
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import httpx
import pytest
from playwright.sync_api import Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import (
    PHONE,
    PROJECTOR,
    SET_VISIBILITY,
    OpenPage,
    Station,
    expect_accessible,
    serve_settings,
    work,
)
from tests.page.hands import MEANT_MS

PLAN = """
kind = "once"
results = "at once"
repeats = 2
[liquid]
name = "nitric acid"
volume_cm3 = 25.0
concentration_mol_dm3 = 0.4
[addition]
name = "potassium hydroxide"
volume_cm3 = 25.0
concentration_mol_dm3 = 0.4
temperature_c = 19.5
[timing]
before_s = 120
after_s = 180
"""
SOLID = """
kind = "once"
repeats = 1
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.0
"""
NEUTRALISATION_KJ_MOL = -55.81
"""H⁺ + OH⁻ → H₂O at 25 °C: −285.830 − (−230.015) kJ/mol (CODATA Key Values for Thermodynamics, 1989)."""


@pytest.fixture(scope="module")
def once(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    """A bench that waits for hands; the virtual cup gets what the press says."""
    folder = tmp_path_factory.mktemp("once")
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=60.0, plan=PLAN)))
    station.start()
    yield station
    station.stop()


def samples(station: Station, repeat: int) -> list[float]:
    """The good temperatures that the station keeps of a repeat."""
    kept = httpx.get(f"{station.url}api/samples", params={"repeat": repeat}, timeout=PATIENCE_S).json()["samples"]
    return [temperature_c for _, temperature_c in kept if temperature_c is not None]


def drawn(page: Page, repeat: int) -> int:
    """How many samples of a repeat the largest curve shows: a small one leaves out what no pixel is there for."""
    paths = page.locator(f".once-trace > .series-{repeat}").evaluate_all(
        "(all) => all.map((one) => one.getAttribute('d'))"
    )
    return max((len(re.findall("[ML]", path or "")) for path in paths), default=0)


def signed(text: str) -> float:
    """A number with a true minus sign."""
    found = re.search(r"[+−]?\d+(\.\d+)?", text)
    assert found, text
    return float(found.group().replace("−", "-"))


def read_off(page: Page) -> float:
    """The change as a student reads it: the ends of the arrow between two ticks of the axis / °C."""
    ticks = page.evaluate("""() => [...document.querySelectorAll('.figure svg .grid + text')]
        .map((text) => [Number(text.textContent), Number(text.previousElementSibling.getAttribute('y1'))])""")
    (low_c, low_y), (high_c, high_y) = ticks[0], ticks[-1]
    before_y, after_y = (
        float(each) for each in re.findall(r"M[\d.]+,([\d.]+)h", page.get_attribute(".change", "d") or "")
    )
    return float((before_y - after_y) / (low_y - high_y) * (high_c - low_c))


def test_one_mixing_is_followed_and_its_change_read(once: Station, open_page: OpenPage) -> None:
    """One page sees all of it, one sleeps while it is mixed, one comes when it is over: all show the same."""
    watching = open_page(once, viewport=PROJECTOR, color_scheme="dark")
    sleeping = open_page(once, viewport=PHONE)
    expect(watching.locator("header")).to_contain_text("25 cm³ of nitric acid (0.4 mol/dm³) in the cup")
    expect(watching.locator(".number", has_text="added")).to_contain_text("0 cm³")
    work(once, until="start", repeat=1)
    expect(sleeping.locator(".once-trace > .series-1[d^=M]")).to_have_count(1)
    sleeping.evaluate(SET_VISIBILITY, "hidden")
    work(once, until="settle", repeat=1)
    expect(watching.locator(".mixing")).to_have_text("mixed")
    expect(watching.locator(".number", has_text="added")).to_contain_text("25 cm³")
    work(once, until="start", repeat=2)
    sleeping.evaluate(SET_VISIBILITY, "visible")
    work(once, until="done", repeat=2)
    state = once.final_state()
    late = open_page(once, viewport=PHONE)
    for page in (watching, sleeping, late):
        page.wait_for_selector("main.state-done")
        expect(page.locator(".read-off .change")).to_have_count(1)
        for repeat in (1, 2):
            kept = len(samples(once, repeat))
            assert kept > 150
            until = time.monotonic() + PATIENCE_S
            while drawn(page, repeat) != kept and time.monotonic() < until:
                page.wait_for_timeout(100)
            assert drawn(page, repeat) == kept, (page.viewport_size, repeat)
        expect_the_result(page, state["result"])
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"


def expect_the_result(page: Page, result: dict[str, Any]) -> None:
    for method, name in (("lines", "straight_lines"), ("heat", "heat_balance")):
        computed = result[name]
        card = page.locator(f".result-{method}")
        assert signed(card.locator(".end-point").inner_text()) == pytest.approx(computed["change_c"], abs=0.051)
        low, high = (signed(each) for each in re.findall(r"[+−][\d.]+", card.locator(".interval").inner_text()))
        assert [low, high] == pytest.approx(computed["interval_95_c"], abs=0.051)
        assert low <= signed(card.locator(".end-point").inner_text()) <= high
        expect(card).to_contain_text("heat given out")
        assert signed(card.locator(".heat").inner_text()) == pytest.approx(computed["heat_j"], rel=0.1)
        expect(card).to_contain_text("enthalpy change per mole of water formed")
        shown_kj_mol = signed(card.locator(".enthalpy").inner_text())
        assert shown_kj_mol == pytest.approx(computed["enthalpy_kj_mol"], abs=max(2.0, computed["u_enthalpy_kj_mol"]))
        assert shown_kj_mol == pytest.approx(NEUTRALISATION_KJ_MOL, abs=3.0 * computed["u_enthalpy_kj_mol"] + 0.5)


def test_the_change_stands_where_the_axis_says_for_each_repeat(once: Station, open_page: OpenPage) -> None:
    work(once, until="done", repeat=2)
    state = once.final_state()
    page = open_page(once, viewport=PROJECTOR)
    for repeat in (1, 2):
        button = page.get_by_role("button", name=f"repeat {repeat}")
        button.click()
        expect(button).to_have_attribute("aria-pressed", "true")
        lines = state["result"]["repeats"][repeat - 1]["straight_lines"]
        assert read_off(page) == pytest.approx(lines["change_c"], abs=0.005)
        assert signed(page.locator(".read-off text").text_content() or "") == pytest.approx(
            lines["change_c"], abs=0.051
        )
        rows = page.locator(".once-table tbody tr")
        shown = {row.locator("th").inner_text(): row.locator("td").all_inner_texts() for row in rows.all()}
        assert float(shown["line before"][repeat - 1]) == pytest.approx(lines["before"]["at_mixing_c"], abs=0.00501)
        assert float(shown["line after"][repeat - 1]) == pytest.approx(lines["after"]["at_mixing_c"], abs=0.00501)
        assert float(shown["change, lines"][repeat - 1]) == pytest.approx(lines["change_c"], abs=0.00501)


def test_dashes_are_only_where_the_lines_go_beyond_their_readings(once: Station, open_page: OpenPage) -> None:
    work(once, until="done", repeat=2)
    page = open_page(once)
    page.wait_for_selector(".read-off .change")
    dashed = page.evaluate("""() => [...document.querySelectorAll('.stretch path')]
        .map((path) => [path.getAttribute('class'), getComputedStyle(path).strokeDasharray !== 'none'])""")
    assert dashed == [["through", False], ["extended", True]] * 2


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_finished_page_has_no_violation_that_axe_knows(once: Station, open_page: OpenPage, scheme: str) -> None:
    work(once, until="done", repeat=2)
    for viewport in (PHONE, PROJECTOR):
        page = open_page(once, color_scheme=scheme, viewport=viewport)
        page.wait_for_selector(".read-off .change")
        page.get_by_role("button", name="Change, pause or finish").click()
        expect_accessible(page)
        # A word in a sentence that explains itself is as high as its line (WCAG 2.2, 2.5.8, exception: inline).
        heights = page.evaluate("[...document.querySelectorAll('button:not(.term)')].map((one) => one.offsetHeight)")
        assert min(height for height in heights if height) >= 48


@pytest.fixture
def solid(tmp_path: Path) -> Iterator[Station]:
    """A bench whose plan mixes a weighed solid in."""
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", plan=SOLID)))
    station.start()
    yield station
    station.stop()


def test_a_weighed_solid_is_said_in_grams_and_has_no_temperature_to_dip_for(
    solid: Station, open_page: OpenPage
) -> None:
    page = open_page(solid)
    expect(page.locator("header")).to_contain_text("50 cm³ of water in the cup; 4 g of potassium chloride")
    expect(page.get_by_role("button", name="First take")).to_have_count(0)
    page.get_by_role("button", name="Change, pause or finish").click()
    page.get_by_role("button", name="Temperature of the potassium chloride").click()
    expect(page.get_by_role("button", name="Measure it with the probe")).to_have_count(0)
    page.get_by_role("button", name="No, leave it").click()
    work(solid, until="start", repeat=1)
    expect(page.locator(".figure svg .quantity")).to_have_text(
        ["temperature / °C", "time since the start of the repeat / s"]
    )
    page.get_by_role("button", name="Change, pause or finish").click()  # the panel closed with the instruction
    expect(page.get_by_role("button", name="The potassium chloride is already in")).to_be_visible()
    expect(page.get_by_role("button", name="Another volume went in")).to_have_count(0)


@pytest.fixture
def withheld(tmp_path: Path) -> Iterator[Station]:
    """A bench whose results follow the students' own reading."""
    plan = PLAN.replace("at once", "after own reading").replace("repeats = 2", "repeats = 1")
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", speed=60.0, plan=plan)))
    station.start()
    work(station, until="done", repeat=1)
    yield station
    station.stop()


def test_the_change_is_read_by_the_students_first(withheld: Station, open_page: OpenPage) -> None:
    page = open_page(withheld)
    own = page.get_by_label("Our change of temperature")
    own.wait_for()
    expect(page.locator(".read-off, .result")).to_have_count(0)
    assert withheld.state()["result"] is None
    expect_accessible(page)
    commit = page.get_by_role("button", name="This is our reading")
    own.fill("warm")
    commit.click()
    expect(page.get_by_role("alert").filter(has_text="a number of degrees")).to_be_visible()
    own.fill("+2,5")
    commit.click()
    page.wait_for_timeout(MEANT_MS)
    page.get_by_role("button", name="Yes, this is our reading").click()
    page.wait_for_selector(".compared")
    lines_c = withheld.final_state()["result"]["straight_lines"]["change_c"]
    rows = page.locator(".compared tbody tr")
    expect(rows.nth(0)).to_contain_text("+2.50 °C")
    found = re.search(r"yours is ([\d.]+) °C (higher|lower)", rows.nth(1).inner_text().replace("\xa0", " "))
    assert found
    assert float(found[1]) == pytest.approx(abs(2.5 - lines_c), abs=0.00501)
    assert found[2] == ("higher" if lines_c < 2.5 else "lower")


def test_any_point_of_the_curve_of_one_mixing_is_read(withheld: Station, open_page: OpenPage) -> None:
    page = open_page(withheld)
    kept = samples(withheld, 1)
    point = page.get_by_role("slider", name="Read a point of the curve")
    expect(point).to_have_attribute("max", str(len(kept) - 1))
    point.focus()
    page.keyboard.press("Home")
    expect(page.locator(".readout")).to_contain_text("repeat 1, before the mixing")
    page.keyboard.press("End")
    expect(page.locator(".readout")).to_contain_text("s after the mixing")
