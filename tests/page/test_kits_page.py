"""The technician's page of the room in a real browser: a room, two whole stations, one press for all of them."""

import re
import tomllib
from collections.abc import Iterator
from contextlib import ExitStack

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from station.kit.room import toml_text
from station.room.broker import let_in
from tests.page.conftest import OpenPage, expect_accessible
from tests.page.hands import VIRTUAL, serving
from tests.page.room_station import RoomStation, room_at_work

SIZES = (
    ViewportSize(width=390, height=760),
    ViewportSize(width=1280, height=640),
    ViewportSize(width=1920, height=940),
)
BENCHES = ("bench-1", "bench-2")


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Iterator[RoomStation]:
    folder = tmp_path_factory.mktemp("kits")
    let_in(folder / "record" / "broker", dict.fromkeys(BENCHES, "a password"))
    with ExitStack() as stack:
        room = stack.enter_context(room_at_work(folder, {}))
        port = tomllib.loads((folder / "room.toml").read_text())["room"]["port"]
        for bench in BENCHES:
            link = {"broker": f"mqtt://127.0.0.1:{port}", "user": bench, "password": "a password"}
            (folder / bench).mkdir()
            stack.enter_context(serving(folder / bench, *VIRTUAL, *toml_text({"link": link}).splitlines()))
        yield room


def kits(page: Page, room: RoomStation) -> Page:
    page.goto(f"{room.url}room/kits")
    expect(page.get_by_test_id("kit-row").locator("input:enabled")).to_have_count(len(BENCHES))
    return page


def test_one_press_checks_every_kit_and_the_table_tells(room: RoomStation, open_page: OpenPage) -> None:
    page = kits(open_page(room), room)
    expect(page.get_by_text("not checked since the room began")).to_have_count(len(BENCHES))
    page.get_by_role("button", name="Run all checks").click()
    rows = page.get_by_test_id("kit-row")
    expect(rows.locator(".kits-mark")).to_have_count(len(BENCHES))
    first = rows.first
    expect(first).to_contain_text("MB free")
    expect(first).to_contain_text("28-")
    first.locator("summary").click()
    expect(first).to_contain_text("the settings choose the virtual cup")


def test_the_ice_point_is_begun_for_the_chosen_ones_and_left_again(room: RoomStation, open_page: OpenPage) -> None:
    page = kits(open_page(room), room)
    left = page.locator("[data-bench=bench-2] input")
    left.uncheck()
    page.get_by_role("button", name="It is in the ice").click()
    expect(page.locator("[data-bench=bench-1]")).to_contain_text(re.compile("settling|found"))
    expect(page.locator("[data-bench=bench-2]")).to_contain_text("never checked")
    page.get_by_role("button", name="Stop it on one").click()
    expect(page.locator("[data-bench=bench-1]")).to_contain_text("never checked")


def test_what_every_probe_finds_in_ice_is_saved_by_one_press(room: RoomStation, open_page: OpenPage) -> None:
    page = kits(open_page(room), room)
    page.get_by_role("button", name="All 2 are in the ice").click()
    expect(page.get_by_test_id("kit-row").filter(has_text=re.compile(r"found: [+−]?0\.\d\d °C"))).to_have_count(2)
    page.get_by_role("button", name="Save 2").click()
    expect(page.get_by_test_id("kit-row").filter(has_text="in ice,")).to_have_count(2)


def test_what_cannot_be_undone_is_ticked_first_and_refusals_are_told(room: RoomStation, open_page: OpenPage) -> None:
    page = kits(open_page(room), room)
    page.get_by_label("What").select_option("wipe")
    expect(page.get_by_text("deletes its record and all sign-ins for good")).to_be_visible()
    do = page.get_by_role("button", name="Wipe the record")
    expect(do).to_be_disabled()
    page.get_by_label("Really: on all 2 chosen kits").check()
    do.click()
    expect(page.get_by_test_id("kit-row").filter(has_text="was not installed from a card")).to_have_count(2)


@pytest.mark.parametrize("size", SIZES, ids=lambda size: str(size["width"]))
@pytest.mark.parametrize("language", ["en", "de"])
def test_it_fits_and_has_no_violation_that_axe_knows(
    room: RoomStation, open_page: OpenPage, size: ViewportSize, language: str
) -> None:
    page = open_page(room, viewport=size)
    page.goto(f"{room.url}room/kits?language={language}")
    page.get_by_test_id("kit-row").first.wait_for()
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    expect_accessible(page)
