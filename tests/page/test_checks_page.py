"""Checks of the probe on their page: one instruction at a time, a result in words, save, withdraw; the register."""

import re
from collections.abc import Iterator
from typing import Any

import httpx
import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import OpenContext, Station, expect_accessible
from tests.page.hands import serving
from tests.server.doors import SECRETS, TECHNICIAN

WIDE, NARROW = ViewportSize(width=1280, height=900), ViewportSize(width=768, height=1024)
AT_REST = "fetch('/api/checks').then((answer) => answer.json()).then(({ check }) => check.rest.steady)"


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    """A virtual bench with staff, fifteen times as fast (a check is given up after an hour of its time); whoever says
    that the probe is in ice has it there."""
    folder = tmp_path_factory.mktemp("checks")
    secret = f'access.technician_passphrase_hash = "{SECRETS.technician_passphrase_hash}"'
    with serving(folder, 'probe.driver = "virtual"', "virtual.speed = 15.0", secret) as station:
        yield station


def staff_page(open_context: OpenContext, station: Station, size: ViewportSize) -> Page:
    context, watched = open_context(station, viewport=size)
    watched.expected = ("409",)
    page = context.new_page()
    page.goto(f"{station.url}checks")
    expect(page.get_by_role("heading", name="Probe register")).to_be_visible()
    expect(page.get_by_role("button", name="Begin this check")).to_have_count(0)
    page.get_by_label("Role").select_option("technician")
    page.get_by_label("Passphrase").fill(TECHNICIAN)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("button", name="Begin this check")).to_be_visible()
    return page


def fits(page: Page) -> None:
    expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")


def test_an_ice_point_is_measured_saved_used_and_withdrawn(bench: Station, open_context: OpenContext) -> None:
    page = staff_page(open_context, bench, WIDE)
    fits(page)
    page.get_by_role("button", name="Begin this check").click()
    run = page.locator(".check-run")
    expect(run).to_contain_text("crushed ice")
    expect(run).to_contain_text(re.compile(r"The probe says \d+\.\d\d °C \d+ s ago"))
    # A class that would begin now is told to wait.
    assert bench.state()["instruction"]["code"] == "check"
    refused = bench.act(act="begin")
    assert (refused.status_code, refused.json()["code"]) == (409, "check_under_way")
    fits(page)
    page.get_by_role("button", name="The probe is in", exact=True).click()
    expect(page.locator(".check-run[data-phase=settling]")).to_contain_text("Known temperature: 0.00 ± 0.02 °C")
    expect(page.locator(".check-run[data-phase=found]")).to_contain_text("± 0.0")
    fits(page)
    page.get_by_role("button", name="Save").click()
    row = page.get_by_role("row", name=re.compile("Ice point"))
    expect(row).to_contain_text("in use")
    told = bench.state()["corrections"]
    assert len(told) == 1
    assert "ice point" in told[0]["text"]
    fits(page)
    row.get_by_role("button", name="Withdraw check 1").click()
    expect(row).to_contain_text("withdrawn")
    assert "was not checked" in bench.state()["corrections"][0]["text"]


def test_a_dip_finds_both_times_and_mistakes_are_told_in_words(bench: Station, open_context: OpenContext) -> None:
    page = staff_page(open_context, bench, NARROW)
    page.get_by_label("Boiling point").check()
    expect(page.locator("form.check-part")).to_contain_text("steam scald")
    expect(page.locator("form.check-part")).to_contain_text("clear of steam")
    why = page.locator("form.check-part .why-not")
    page.get_by_role("button", name="Begin this check").click()
    expect(why).to_contain_text("Type the air pressure")
    page.get_by_label("Air pressure").fill("400")
    page.get_by_role("button", name="Begin this check").click()
    expect(why).to_contain_text("between 500 and 1100 hPa, not 400 hPa")
    page.get_by_label("Air pressure").fill("a lot")
    page.get_by_role("button", name="Begin this check").click()
    expect(why).to_have_text("Type a number.")
    fits(page)
    page.get_by_label("Dip: how fast").check()
    page.get_by_role("button", name="Begin this check").click()
    page.get_by_role("button", name="The probe hangs in still air").click()
    expect(page.locator(".check-run[data-phase=found]")).to_contain_text("Two time constants")
    fits(page)
    page.get_by_role("button", name="Save").click()
    expect(page.get_by_role("row", name=re.compile("Dip"))).to_contain_text("63 % of a step after")
    dip = httpx.get(f"{bench.url}api/checks", timeout=PATIENCE_S).json()["probes"][0]["checks"][0]["values"]
    assert 2.0 < dip["fast_s"] < 5.0, "the virtual probe's is 3 to 4 s"
    assert 8.0 < dip["slow_s"] < 13.0, "and 9 to 11 s"


def compared(station: Station) -> dict[str, Any]:
    check: dict[str, Any] = httpx.get(f"{station.url}api/checks", timeout=PATIENCE_S).json()["check"]
    return check


def test_a_comparison_shows_the_mean_and_from_where_a_degree_counts(bench: Station, open_context: OpenContext) -> None:
    page = staff_page(open_context, bench, NARROW)
    page.get_by_label("Comparison with a thermometer").check()
    expect(page.locator("form.check-part")).to_contain_text("10 to 50 °C")
    page.get_by_role("button", name="Begin this check").click()
    page.get_by_role("button", name="The probe is in", exact=True).click()
    why = page.locator(".check-run .why-not")
    reference, take = page.get_by_label("The reference says"), page.get_by_role("button", name="Take this comparison")
    reference.fill("55")
    take.click()
    expect(why).to_contain_text("Compare between 10 and 50 °C")
    # The first says that the probe is too high, the others and the mean that it is too low.
    for count, off_c in enumerate((-0.1, 0.3, 0.4), 1):
        while len(compared(bench)["points"]) < count:
            page.wait_for_function(AT_REST)
            reference.fill(f"{compared(bench)['live']['temperature_c'] + off_c:.2f}")
            with page.expect_response("**/api/staff") as answer:
                take.click()
            assert answer.value.status in (200, 409), "fifteen times as fast a sample may be late: then not at rest"
    points = compared(bench)["points"]
    probe_c, reference_c = (sum(each[name] for each in points) / 3 for name in ("probe_c", "reference_c"))
    result = page.locator(".check-result")
    expect(result).to_contain_text(
        f"Mean of the 3 comparisons: probe {probe_c:.2f} °C, reference {reference_c:.2f} °C."
    )
    expect(result).to_contain_text(re.compile(r"The probe reads 0\.\d+ °C too low"))
    expect(result).to_contain_text(f"Counted from {probe_c:.2f} °C, each degree of the probe is")
    expect(result).to_contain_text("(95 %: ± ")
    fits(page)
    page.get_by_role("button", name="Discard").click()


def test_it_speaks_german_and_who_looks_may_not_act(bench: Station, open_context: OpenContext) -> None:
    context, _ = open_context(bench, viewport=NARROW, locale="de-DE")
    page = context.new_page()
    page.goto(f"{bench.url}checks")
    expect(page.get_by_role("heading", name="Verzeichnis der Fühler")).to_be_visible()
    expect(page.get_by_text("jetzt in Betrieb")).to_be_visible()
    expect(page.get_by_role("button", name="Diese Prüfung beginnen")).to_have_count(0)
    fits(page)
