"""Mixing ratios on the page: which mixture is next, the rises, own lines, the ratio, record and paper."""

import re
import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from station.practical.kinds import read_plan
from tests.page.conftest import OpenPage, Station, expect_accessible, once_a_run, serve_settings, work
from tests.page.hands import MEANT_MS

PLAN = """
kind = "ratios"
results = "after own reading"
[acid]
name = "hydrochloric acid"
concentration_mol_dm3 = 0.6
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 0.6
temperature_c = 21.0
[mixtures]
total_cm3 = 50
first_cm3 = 10
step_cm3 = 6
count = 6
[timing]
before_s = 90
after_s = 120
"""
MIXTURES = 6
VOLUMES_CM3 = [read_plan(PLAN).of_cup(cup).portion_cm3 for cup in range(1, MIXTURES + 1)]


def _worked_through(folder: Path) -> None:
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=100.0, plan=PLAN)))
    station.start()
    try:
        for repeat in range(1, MIXTURES + 1):
            work(station, until="rinse" if repeat < MIXTURES else "done", repeat=repeat)
    finally:
        station.stop()


@pytest.fixture
def finished(tmp_path: Path) -> Iterator[Station]:
    """A station whose mixtures are all mixed, and whose own reading is still to come."""
    kept = once_a_run(tmp_path, "ratios", _worked_through)
    shutil.copytree(kept / "record", tmp_path / "record")
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", speed=1.0, plan=PLAN)))
    station.start()
    yield station
    station.stop()


def read_own_lines(page: Page) -> None:
    """Place the lines by keys through the first two and the last two points, as near as it needs, and commit."""
    for side, (first, second) in {"before": (0.0, 2.3), "after": (2.3, 0.0)}.items():
        handles = page.locator(f".handle-{side}")
        for index, temperature_c in enumerate((first, second)):
            handle = handles.nth(index)
            handle.focus()
            page.keyboard.press("Home")
            for _ in range(200):
                if float(handle.get_attribute("aria-valuenow") or "0") >= temperature_c:
                    break
                page.keyboard.press("ArrowUp")
    page.wait_for_timeout(MEANT_MS)
    page.get_by_role("button", name="This is our reading").click()
    page.wait_for_timeout(MEANT_MS)
    page.locator(".own-ask button").first.click()


def test_each_mixture_is_asked_for_with_its_own_volumes(tmp_path: Path, open_page: OpenPage) -> None:
    station = Station("serve", "--config", str(serve_settings(tmp_path, "127.0.0.1", speed=60.0, plan=PLAN)))
    station.start()
    try:
        page = open_page(station)
        for repeat in (1, 2):
            acid_cm3 = 50 - VOLUMES_CM3[repeat - 1]
            for act in ("alkali_left_out", "probe_rinsed") if repeat == 1 else ("cup_emptied", "cup_rinsed"):
                station.act(act=act).raise_for_status()
            expect(page.get_by_test_id("instruction")).to_contain_text(f"{acid_cm3:g} cm³ of hydrochloric acid")
            station.act(act="begin" if repeat == 1 else "rinsed").raise_for_status()
            expect(page.get_by_test_id("place")).to_contain_text(f"mixture {repeat} of 6", ignore_case=True)
            alkali = f"{VOLUMES_CM3[repeat - 1]:g} cm³ of sodium hydroxide"
            expect(page.get_by_test_id("instruction")).to_contain_text(alkali)
            page.wait_for_timeout(MEANT_MS)
            page.get_by_test_id("act").click()
            work(station, until="rinse", repeat=repeat)
            expect(page.locator(".ratios-table tbody tr")).to_have_count(repeat)
    finally:
        station.stop()


def test_own_lines_come_first_and_the_ratio_after_them(finished: Station, open_page: OpenPage) -> None:
    page = open_page(finished)
    expect(page.locator(".ratios-table tbody tr")).to_have_count(MIXTURES)
    assert page.locator(".result").count() == 0
    read_own_lines(page)
    expect(page.locator(".result-heat .end-point")).to_contain_text(": 1 (alkali : acid)")
    state = finished.final_state()
    for name, method in (("lines", "straight_lines"), ("heat", "heat_balance")):
        shown = page.locator(f".result-{name} .end-point").inner_text()
        ratio = float(re.findall(r"\d+\.\d+", shown)[0])
        assert ratio == pytest.approx(state["result"][method]["alkali_per_acid"], abs=0.06)
        assert ratio == pytest.approx(1.0, abs=0.15)
    expect(page.get_by_test_id("answer")).to_contain_text("The equation says 1.")
    expect(page.locator(".compared tbody tr")).to_have_count(3)
    expect_accessible(page)


def test_the_record_has_the_mixtures_and_the_ratio_once_it_is_seen(finished: Station, open_page: OpenPage) -> None:
    page = open_page(finished)
    read_own_lines(page)
    expect(page.locator(".result-heat .end-point")).to_be_visible()
    page.goto(f"{finished.url}#record")
    expect(page.locator("main")).to_contain_text("± 0.")
    expect(page.locator("main")).to_contain_text(": 1 (alkali : acid)")
    expect(page.locator("main .ratios-table tbody tr").first).to_be_visible()
    expect_accessible(page)
