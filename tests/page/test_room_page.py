"""The room's pages in a real browser: found at a glance, no names on the wall, orders, class result, one sheet."""

import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.page.conftest import PROJECTOR, OpenPage, expect_accessible
from tests.page.room_station import TROUBLED, RoomStation, lesson, room_at_work
from tests.page.test_record_page import on_paper, text_of

TABLET = ViewportSize(width=768, height=1024)
SIZES = pytest.mark.parametrize("size", [TABLET, PROJECTOR], ids=["768", "1920"])
TOP = """(one) => { const { top, bottom, width } = one.getBoundingClientRect(); return [top, bottom, width]; }"""


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Iterator[RoomStation]:
    with room_at_work(tmp_path_factory.mktemp("room"), lesson()) as station:
        yield station


def at(open_page: OpenPage, room: RoomStation, path: str, **options: object) -> Page:
    page = open_page(room, **options)
    page.goto(f"{room.url}{path}")
    page.wait_for_selector("main :is(.board, .class-table, .lessons-table, .instruction, .settings-part)")
    return page


@SIZES
def test_a_bench_in_trouble_is_found_at_a_glance(room: RoomStation, open_page: OpenPage, size: ViewportSize) -> None:
    page = at(open_page, room, "room", viewport=size)
    tiles = page.locator(".tile")
    expect(tiles).to_have_count(30)
    first = tiles.first
    expect(first).to_have_attribute("data-bench", TROUBLED)
    expect(first).to_contain_text("Needs help")
    expect(first).to_contain_text("The probe does not answer.")
    # Read from 4 m: letters of 1/200 of the distance (common practice, no source) on a picture 2 m wide and 1920 px
    # across are 19 px high; capitals are about 0.7 of their font's size.
    letters = first.locator("h3").evaluate("one => parseFloat(getComputedStyle(one).fontSize)")
    assert letters > (38 if size == PROJECTOR else 22)
    calm = tiles.last.evaluate("one => getComputedStyle(one).backgroundColor")
    assert first.evaluate("one => getComputedStyle(one).backgroundColor") != calm
    if size == PROJECTOR:
        assert tiles.last.evaluate(TOP)[1] <= 1080, "all thirty without scrolling"
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    expect_accessible(page)
    order = "[...document.querySelectorAll('.tile')].map(one => one.dataset.bench)"
    before = page.evaluate(order)
    tiles.nth(3).hover()
    page.wait_for_timeout(1200)
    assert page.evaluate(order) == before, "tiles stay while somebody reads one"


def test_on_the_wall_there_are_numbers_and_no_names(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    page.get_by_role("button", name="For the projector").click()
    expect(page.locator(".tile h3").first).to_have_text("1")
    assert page.locator(".tile h3").all_inner_texts() == [str(n) for n in range(1, 31)]
    assert page.locator(".tile a, .tile-reason, .tile-group, .telling").count() == 0
    expect_accessible(page)
    page.reload()
    expect(page.locator(".tile h3").first).to_have_text("1")
    page.get_by_role("button", name="Back to the board").click()
    expect(page.locator(".telling")).to_be_visible()


def test_the_teacher_tells_some_benches_and_sees_who_is_away(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    page.get_by_role("button", name="Choose some").click()
    page.get_by_role("checkbox", name="Choose bench-12").check()
    expect(page.locator(".whom")).to_contain_text("One bench chosen")
    page.get_by_label("New name of the bench").fill("By the door")
    page.get_by_role("button", name="Rename").click()
    expect(page.locator(".orders-left")).to_contain_text("Rename: bench-12 (away)")
    page.get_by_label("Why").fill("the lid was off")
    page.get_by_role("button", name="Set a repeat aside").click()
    expect(page.locator(".orders-left li")).to_have_count(2)
    expect_accessible(page)
    telling = page.locator(".telling")
    telling.get_by_label("Plan").select_option("endothermic")
    telling.get_by_role("button", name="Begin a new practical").click()
    expect(page.locator(".orders-left")).to_contain_text("New practical: bench-12 (away)")
    page.get_by_role("button", name="Take back what is not done yet").click()
    expect(page.locator(".orders-left")).to_have_count(0)


def test_a_repeat_that_was_set_aside_is_told_as_that_and_counts_again(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    tile = page.locator(".tile[data-bench=bench-9]")
    expect(tile).to_contain_text("repeat 1/1, portion 0/10")
    page.get_by_role("button", name="Choose some").click()
    page.get_by_role("checkbox", name="Choose bench-9").check()
    page.get_by_role("button", name="Let repeat 1 count again").click()
    expect(page.locator(".orders-left")).to_contain_text("Count again: bench-9 (away)")
    page.get_by_role("button", name="Take back what is not done yet").click()
    expect(page.locator(".orders-left")).to_have_count(0)


def test_the_class_result_says_what_it_means_and_prints_on_one_side(
    room: RoomStation, open_page: OpenPage, tmp_path: Path
) -> None:
    room.computed()
    page = at(open_page, room, "room/class", viewport=PROJECTOR)
    page.wait_for_selector(".class-plot")
    meaning = page.locator(".class-meaning")
    expect(meaning).to_contain_text("Class end-point by heat balance: ")
    expect(meaning).to_contain_text("The ± is of the class's mean, not of one bench")
    plots = page.locator(".class-figures .class-plot")
    expect(plots).to_have_count(3)
    expect(plots.first.locator(".plot-dot")).to_have_count(29)  # 28 benches that ended a repeat, and the class
    expect(page.locator(".class-anomalies")).to_contain_text("bench-4: its end-point by heat balance lies")
    expect(page.locator("main > .class-table tbody tr")).to_have_count(29)
    for size in (PROJECTOR, TABLET):
        page.set_viewport_size(size)
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
        expect_accessible(page)
    page.evaluate("window.print = () => undefined")
    page.locator(".record-tools button").first.click()
    text = re.sub(r"\s+", " ", text_of(on_paper(page, tmp_path), "-raw"))
    for words in ("Class result", "10B", "bench-30", "Mean curve of the class", "Benches that stand off", "bench-4"):
        assert words in text
    assert "To take away" not in text


def test_a_benchs_page_has_nothing_to_press(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    page.get_by_role("link", name="Open the page of bench-9").click()
    page.wait_for_selector(".instruction")
    expect(page.locator("header .bench-name")).to_have_text("bench-9")
    assert page.locator("main .done, main .corrections, main form").count() == 0
    expect(page.locator(".readings")).to_be_visible()
    expect_accessible(page)
    page.get_by_role("link", name="back to the room").click()
    page.wait_for_selector(".board")


def test_a_lesson_is_found_again_and_begun_by_its_label(room: RoomStation, open_page: OpenPage) -> None:
    """The last test here: it ends the lesson that the others look at."""
    page = at(open_page, room, "room", viewport=TABLET)
    page.get_by_label("Class (a label, no names)").fill("10A")
    page.get_by_role("button", name="Begin a lesson").click()
    expect(page.locator(".lesson-now")).to_contain_text("10A")
    page.get_by_role("link", name="Lessons").click()
    rows = page.locator(".lessons-table tbody tr")
    expect(rows).to_have_count(2)
    expect(rows.last).to_contain_text("10B")
    expect_accessible(page)
    rows.last.get_by_role("link").click()
    page.wait_for_selector(".class-plot")
    expect(page.locator(".lesson-now")).to_contain_text("10B")
