"""The room's pages in a real browser: the board is the room, nothing moves, orders, class result, one sheet."""

import re
import subprocess
import zipfile
from collections.abc import Iterator
from pathlib import Path

import httpx
import pytest
from playwright.sync_api import Page, ViewportSize, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import PROJECTOR, OpenPage, expect_accessible
from tests.page.room_station import TROUBLED, RoomStation, lesson, room_at_work
from tests.page.test_record_page import on_paper, text_of

TABLET = ViewportSize(width=768, height=1024)
PHONE = ViewportSize(width=390, height=844)
THIRTY = ViewportSize(width=1920, height=940)
FIFTEEN = ViewportSize(width=1280, height=640)
OUTSIDE = """() => [...document.querySelectorAll('main *')]
  .filter(one => one.checkVisibility() && !one.closest('.unseen, .needs ol'))
  .map(one => [one.className, one.getBoundingClientRect()])
  .filter(([, { top, left, bottom, right, width }]) =>
    width > 0 && (top < 0 || left < 0 || bottom > innerHeight || right > innerWidth))
  .map(([name]) => String(name))"""
PLACES = """() => Object.fromEntries([...document.querySelectorAll('[data-testid=tile]')].map(one => {
  const { top, left, width, height } = one.getBoundingClientRect();
  return [one.dataset.bench, [top, left, width, height]];
}))"""


@pytest.fixture(scope="module")
def room(tmp_path_factory: pytest.TempPathFactory) -> Iterator[RoomStation]:
    with room_at_work(tmp_path_factory.mktemp("room"), lesson()) as station:
        yield station


def at(open_page: OpenPage, room: RoomStation, path: str, **options: object) -> Page:
    page = open_page(room, **options)
    page.goto(f"{room.url}{path}")
    page.wait_for_selector("main :is(.needs, .board, .class-table, .lessons-table, .instruction, .settings-part)")
    return page


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_thirty_benches_stand_in_their_places_and_nothing_is_outside(
    room: RoomStation, open_page: OpenPage, scheme: str
) -> None:
    page = at(open_page, room, "room", viewport=THIRTY, color_scheme=scheme)
    tiles = page.get_by_test_id("tile")
    expect(tiles).to_have_count(30)
    assert tiles.evaluate_all("all => all.map(one => one.dataset.bench)") == [f"bench-{n}" for n in range(1, 31)]
    assert page.evaluate(OUTSIDE) == []
    assert page.evaluate("document.documentElement.scrollHeight") <= THIRTY["height"]
    sizes = {(round(width), round(height)) for _, _, width, height in page.evaluate(PLACES).values()}
    assert len(sizes) == 1, "one tile, one height"
    need = page.get_by_test_id("need").first
    expect(need).to_have_attribute("data-bench", TROUBLED)
    expect(page.locator(f".tile[data-bench={TROUBLED}] .tile-reason")).to_have_text(
        re.compile("The probe does not answer|Not connected to the room")
    )
    expect_accessible(page)
    # Read from 4 m: letters of 1/200 of the distance (common practice, no source) on a picture 2 m wide and 1920 px
    # across are 19 px high; capitals are about 0.7 of their font's size.
    page.get_by_role("button", name="For the projector").click()
    assert tiles.first.locator("h3").evaluate("one => parseFloat(getComputedStyle(one).fontSize)") > 27
    assert page.evaluate(OUTSIDE) == []


def test_on_the_wall_there_are_numbers_and_no_names(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    page.get_by_role("button", name="For the projector").click()
    expect(page.locator(".tile h3").first).to_have_text("1")
    assert page.locator(".tile h3").all_inner_texts() == [str(n) for n in range(1, 31)]
    assert page.locator(".tile a, .tile-reason, .needs, .room-bar").count() == 0
    expect_accessible(page)
    page.reload()
    expect(page.locator(".tile h3").first).to_have_text("1")
    page.get_by_role("button", name="Back to the board").click()
    expect(page.locator(".room-bar")).to_be_visible()


def test_a_need_leads_to_its_tile_and_a_phone_shows_the_list_of_them(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PHONE)
    need = page.get_by_test_id("need").first
    expect(need).to_be_visible()
    assert page.get_by_test_id("tile").first.is_hidden()
    expect_accessible(page)
    small = """all => all.filter(one => one.checkVisibility()).map(one => one.getBoundingClientRect())
      .filter(({ width, height }) => width < 44 || height < 44).length"""
    assert page.locator(".needs button, .room-bar button").evaluate_all(small) == 0, "a thumb hits each"
    low = page.locator(".room-bar").evaluate("one => one.getBoundingClientRect().top / innerHeight")
    assert low > 0.5, "what is pressed lies in the lower half"
    need.click()
    tile = page.locator(f".tile[data-bench={TROUBLED}]")
    expect(tile).to_be_in_viewport()
    expect(tile).to_be_focused()
    assert page.evaluate("document.documentElement.scrollWidth") <= PHONE["width"]
    page.get_by_role("button", name="Tell benches").click()
    expect(page.get_by_role("dialog")).to_be_in_viewport()
    expect_accessible(page)


def test_the_teacher_tells_some_benches_and_sees_who_is_away(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    before = page.evaluate(PLACES)
    page.get_by_role("button", name="Tell benches").click()
    page.get_by_role("button", name="Choose some").click()
    page.get_by_role("checkbox", name="bench-12", exact=True).check()
    expect(page.locator(".whom")).to_contain_text("One bench chosen")
    page.get_by_label("New name of the bench").fill("By the door")
    page.get_by_role("button", name="Rename").click()
    expect(page.locator(".orders-left")).to_contain_text("Rename: bench-12 offline, will do it when back")
    expect(page.locator(".tile[data-bench=bench-12]")).to_contain_text("Rename: offline, not yet")
    page.get_by_label("Why").fill("the lid was off")
    page.get_by_role("button", name="Set a repeat aside").click()
    expect(page.locator(".orders-left li")).to_have_count(2)
    expect_accessible(page)
    telling = page.locator(".telling")
    telling.get_by_label("Plan").select_option("endothermic")
    telling.get_by_role("button", name="Begin a new practical").click()
    expect(page.locator(".orders-left")).to_contain_text("New practical: bench-12 offline")
    page.get_by_role("button", name="Take back what is not done yet").click()
    expect(page.locator(".orders-left")).to_have_count(0)
    page.keyboard.press("Escape")
    expect(page.get_by_role("dialog")).to_have_count(0)
    assert page.evaluate(PLACES) == before, "whatever opens, no tile moves"


def test_a_repeat_that_was_set_aside_is_told_as_that_and_counts_again(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    page.get_by_role("button", name="Tell benches").click()
    page.get_by_role("button", name="bench-9: let repeat 1 count again").click()
    expect(page.locator(".orders-left")).to_contain_text("Count again: bench-9 offline")
    page.get_by_role("button", name="Take back what is not done yet").click()
    expect(page.locator(".orders-left")).to_have_count(0)


def test_results_are_a_switch_that_shows_its_state(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=PROJECTOR)
    switch = page.get_by_role("switch")
    expect(switch).to_have_attribute("aria-checked", "true")
    expect(switch).to_have_text("Results: shown on all")
    page.get_by_role("button", name="Lesson").click()
    said = page.get_by_role("dialog")
    expect(said).to_contain_text("Begins a new practical on 29 benches, each with the plan it has")
    expect(said).to_contain_text(f"These are in the middle of a repeat and go on with it: {TROUBLED}.")


def test_a_bench_is_given_another_place_and_keeps_it(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room", viewport=THIRTY)
    before = page.evaluate(PLACES)
    page.get_by_role("button", name="Arrange").click()
    page.get_by_role("button", name="Move bench-2", exact=True).click()
    page.locator(".place-button[data-place='5']").click()
    page.get_by_role("button", name="Arranged").click()
    order = page.get_by_test_id("tile")
    expect(order.nth(1)).to_have_attribute("data-bench", "bench-5")
    page.reload()
    page.wait_for_selector(".tile")
    after = page.evaluate(PLACES)
    assert (after["bench-2"], after["bench-5"]) == (before["bench-5"], before["bench-2"])
    del before["bench-2"], before["bench-5"], after["bench-2"], after["bench-5"]
    assert after == before, "nobody else moved"
    reply = httpx.post(f"{room.url}api/room/places", json={"bench": "bench-2", "place": 2}, timeout=PATIENCE_S)
    assert reply.status_code == 200


def test_the_class_result_answers_the_question_and_prints_on_one_side(
    room: RoomStation, open_page: OpenPage, tmp_path: Path
) -> None:
    room.computed()
    page = at(open_page, room, "room/class", viewport=PROJECTOR)
    page.wait_for_selector(".class-plot")
    answer = page.get_by_test_id("class-answer")
    expect(answer).to_have_text(re.compile(r"^The class: 0\.3\d+ ± 0\.\d+ mol/dm³ from 28 of 30 benches$"))
    expect(page.locator(".class-plain p")).to_have_count(2)
    expect(page.locator(".class-plain")).to_contain_text("each portion warms more liquid than the one before")
    assert answer.evaluate("one => one.getBoundingClientRect().top") < 300
    plots = page.locator(".class-figures-one .class-plot")
    expect(plots).to_have_count(1)
    expect(plots.first.locator("circle.plot-dot")).to_have_count(28)  # benches that ended a repeat
    expect(page.locator("main .class-more .class-words")).not_to_be_visible()
    page.get_by_label("What the bottle was made up to").fill("0.392")
    page.get_by_role("button", name="Keep (only staff see it)").click()
    expect(page.get_by_test_id("made-up")).to_have_text("Made up to 0.392 mol/dm³")
    expect(page.locator(".made-up")).to_contain_text("only you see this")
    expect(page.locator(".class-anomalies")).to_contain_text("bench-4: its ")
    expect(page.locator("main > .class-table tbody tr")).to_have_count(29)
    page.get_by_text("The statistics").click()
    expect(page.locator("main .class-more .class-words")).to_contain_text("The ± is of the class's mean")
    for size in (PROJECTOR, TABLET, PHONE):
        page.set_viewport_size(size)
        assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
        expect_accessible(page)
    page.evaluate("window.print = () => undefined")
    page.locator(".record-tools button").first.click()
    text = re.sub(r"\s+", " ", text_of(on_paper(page, tmp_path), "-raw"))
    for words in ("Class result", "10B", "The class: 0.3", "bench-30", "Mean curve", "Outlying benches", "bench-4"):
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
    page.wait_for_selector(".needs")


def test_a_lesson_is_found_again_and_begun_by_its_label(room: RoomStation, open_page: OpenPage) -> None:
    """The last test here: it ends the lesson that the others look at."""
    page = at(open_page, room, "room", viewport=TABLET)
    page.get_by_role("button", name="Lesson").click()
    page.get_by_label("Class (a label, no names)").fill("10A")
    page.get_by_role("button", name="Begin a lesson").click()
    expect(page.locator(".lesson-now")).to_contain_text("10A")
    page.get_by_role("link", name="Lessons").click()
    rows = page.locator(".lessons-table tbody tr")
    expect(rows).to_have_count(2)
    expect(rows.last).to_contain_text("10B")
    expect_accessible(page)
    rows.last.get_by_role("link", name=re.compile("^Class result")).click()
    page.wait_for_selector(".class-plot")
    expect(page.locator(".lesson-now")).to_contain_text("10B")


@pytest.mark.parametrize("size", [PHONE, FIFTEEN, THIRTY], ids=lambda size: str(size["width"]))
def test_all_sheets_of_a_class_are_one_print_and_one_zip(
    room: RoomStation, open_page: OpenPage, size: ViewportSize, tmp_path: Path
) -> None:
    page = at(open_page, room, "room/lessons", viewport=size)
    page.locator(".lessons-table").get_by_role("link", name=re.compile("^Sheets")).last.click()
    listed = page.locator(".sheets-list li")
    expect(listed).to_have_count(30)
    expect(page.get_by_role("button", name="Print all sheets")).to_be_enabled()
    with page.expect_download() as downloading:
        page.get_by_role("link", name="All files as one zip").click()
    with zipfile.ZipFile(downloading.value.path()) as zipped:
        assert sorted({name.partition("/")[0] for name in zipped.namelist()}) == sorted(
            f"bench-{n}" for n in range(1, 31)
        )
        assert len(zipped.namelist()) == 4 * 30
    expect_accessible(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= size["width"]
    paper = tmp_path / "sheets.pdf"
    page.pdf(path=paper, prefer_css_page_size=True)
    texts = subprocess.run(["pdftotext", "-layout", paper, "-"], capture_output=True, text=True, check=True).stdout
    pages = texts.rstrip("\f").split("\f")
    assert len(pages) == 30, "one side for each bench"
    assert all("Names:" in each and "Your own calculation" in each for each in pages)
    assert "Print all sheets" not in texts


def test_lessons_are_found_by_class_and_the_page_says_what_is_forgotten(room: RoomStation, open_page: OpenPage) -> None:
    page = at(open_page, room, "room/lessons")
    page.locator(".lessons-class select").select_option("10B")
    expect(page.locator(".lessons-table tbody tr")).to_have_count(1)
    expect(page.locator(".lessons-table")).to_contain_text("forgotten 365 days after a lesson")
