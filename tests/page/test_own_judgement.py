"""The students decide when to read and when to add; the page shows no waiting and hurries nobody."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import expect

from tests.page.conftest import PHONE, OpenPage, Station
from tests.page.hands import MEANT_MS, asked, place, press, serving, short_plan


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    plan = short_plan(count=3, more='prompts = "own judgement"')
    # A reading must be younger than five bench seconds: at a higher speed that is less than a busy machine's breath.
    with serving(tmp_path, 'probe.driver = "virtual"', "virtual.speed = 4.0", plan=plan) as station:
        yield station


def test_reading_and_adding_are_the_students_own(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench, viewport=PHONE)
    stands = place(page)
    press(page, "begin")
    asked(page, "read_now", 0)
    assert page.locator(".waiting").count() == 0, "the station says nothing of its own settling"
    press(page, "read_now", 0)
    press(page, "portion_added", 1)
    asked(page, "read_now", 1)
    page.wait_for_timeout(MEANT_MS)
    page.get_by_role("button", name="Portion 2 is in, no reading taken").click()
    press(page, "read_now", 2)
    press(page, "portion_added", 3)
    press(page, "read_now", 3)
    page.wait_for_selector("main.state-done")
    assert place(page) == stands
    (repeat,) = bench.state()["repeats"]
    assert [each["portion"] for each in repeat["portions"]] == [1, 2, 3]
    read = [each["portion"] for each in repeat["readings"] if each["reason"] == "own judgement"]
    assert read == [0, 2, 3]


def test_after_the_last_portion_only_reading_is_left(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    press(page, "begin")
    for portion in (1, 2, 3):
        asked(page, "read_now", portion - 1)
        bench.act(act="portion_added", portion=portion).raise_for_status()
    asked(page, "read_now", 3)
    expect(page.locator(".instruction-foot button")).to_have_count(1)
