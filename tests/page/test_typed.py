"""A bench with an ordinary thermometer: what is typed, what is asked again, what is corrected."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PROJECTOR, OpenPage, Station, expect_accessible
from tests.page.hands import BY_HAND, asked, correct, place, press, serving, short_plan


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    with serving(tmp_path, *BY_HAND, plan=short_plan(count=2)) as station:
        yield station


def choose(page: Page, division: str) -> None:
    page.locator(f'[data-division="{division}"]').click()
    press(page, "begin")


def put_down(page: Page, text: str) -> None:
    """Type a temperature into the card and press."""
    field = page.locator(".instruction").get_by_label("Temperature / °C")
    field.fill(text)
    page.locator(".instruction").get_by_role("button", name="Record", exact=True).click()


def expect_asked(page: Page, words: str) -> None:
    expect(page.locator(".instruction .why-not")).to_contain_text(words)


def test_a_whole_repeat_is_typed(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    stands = place(page)
    choose(page, "0.1")
    for portion, text in enumerate(("20,4", "22.85", "24,1")):
        if portion:
            press(page, "portion_added", portion)
        put_down(page, text)
    page.wait_for_selector("main.state-done")
    assert place(page) == stands
    (repeat,) = bench.state()["repeats"]
    assert [each["temperature_c"] for each in repeat["readings"]] == [20.4, 22.85, 24.1]
    assert all(each["typed"] for each in repeat["readings"])


def test_nonsense_is_refused_in_words_and_nothing_is_kept(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    choose(page, "1")
    for text, words in (("", "Type a temperature"), ("warm", "Type a temperature"), ("215", "Only −5 to 60 °C")):
        put_down(page, text)
        expect_asked(page, words)
        field = page.locator(".instruction input")
        expect(field).to_be_focused()
        expect(field).to_have_attribute("aria-invalid", "true")
    assert bench.state()["repeats"][0]["readings"] == []
    assert field.get_attribute("inputmode") == "decimal"


def test_more_digits_than_the_thermometer_shows_are_asked_again(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    choose(page, "1")
    put_down(page, "21,43")
    expect_asked(page, "At best it shows 21.5 °C.")
    assert bench.state()["repeats"][0]["readings"] == []
    put_down(page, "21,46")
    expect_asked(page, "At best it shows 21.5 °C.")
    page.locator(".instruction").get_by_role("button", name="Record", exact=True).click()
    asked(page, "portion_added", 1)
    assert bench.state()["repeats"][0]["readings"][0]["temperature_c"] == 21.46


def test_a_digital_thermometer_is_read_to_its_last_digit_and_the_table_keeps_its_figures(
    bench: Station, open_page: OpenPage
) -> None:
    page = open_page(bench)
    page.locator('[data-digit="0.1"]').click()
    press(page, "begin")
    put_down(page, "21.45")
    expect_asked(page, "At best it shows")
    put_down(page, "21.5")
    asked(page, "portion_added", 1)
    assert bench.state()["thermometer"] == {"kind": "typed", "division_c": 0.1, "digital": True}
    press(page, "portion_added", 1)
    put_down(page, "24")
    expect(page.locator(".readings tbody td").first).to_have_text("21.5")
    expect(page.locator(".readings tbody td").nth(1)).to_have_text("24.0")


def test_a_jump_is_asked_again(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    choose(page, "1")
    put_down(page, "21")
    press(page, "portion_added", 1)
    put_down(page, "42")
    expect_asked(page, "That is 21.0 °C above the last one.")
    put_down(page, "24")
    asked(page, "portion_added", 2)


def test_an_earlier_reading_is_corrected(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    choose(page, "1")
    put_down(page, "20")
    press(page, "portion_added", 1)
    put_down(page, "25")
    asked(page, "portion_added", 2)
    correct(page, "Correct a typed reading")
    page.get_by_label("Which reading?").select_option(label="repeat 1, start: 20 °C")
    page.get_by_label("What the thermometer said").fill("21,5")
    page.locator(".correction").get_by_role("button", name="Record", exact=True).click()
    expect(page.locator(".correction")).to_have_count(0)
    readings = bench.state()["repeats"][0]["readings"]
    assert {each["portion"]: each["temperature_c"] for each in readings} == {0: 21.5, 1: 25.0}


def test_where_the_probe_is_lost_an_ordinary_thermometer_takes_over_and_the_probe_comes_back(
    tmp_path: Path, open_page: OpenPage
) -> None:
    tree = tmp_path / "no probe here"
    tree.mkdir()
    with serving(tmp_path, 'probe.driver = "one-wire"', f'probe.tree = "{tree}"', plan=short_plan()) as bench:
        page = open_page(bench)
        page.wait_for_selector(".instruction .drawn-probe_lost")
        stands = place(page)
        own = page.get_by_label("Go on with your own thermometer")
        own.select_option(label="ordinary thermometer, lines every 0.1 °C")
        page.get_by_role("button", name="Use it").click()
        press(page, "begin")
        put_down(page, "19.7")
        asked(page, "portion_added", 1)
        assert place(page) == stands
        assert bench.state()["thermometer"] == {"kind": "typed", "division_c": 0.1, "digital": False}
        correct(page, "Use the probe again")
        expect(page.locator(".number.temperature dt")).to_have_text("temperature")
        assert bench.state()["thermometer"] == {"kind": "probe"}
        page.close()


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_typing_has_no_violation_that_axe_knows(bench: Station, open_page: OpenPage, scheme: str) -> None:
    page = open_page(bench, viewport=PROJECTOR, color_scheme=scheme)
    page.wait_for_selector("[data-division]")
    expect_accessible(page)
    choose(page, "1")
    put_down(page, "warm")
    expect_accessible(page)


SLIPPED = ("20", "22.2", "24.1", "35.9", "27.3", "28.7")
LONG_PLAN = """
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 20.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.5
[portions]
volume_cm3 = 4.0
count = 8
"""


@pytest.fixture
def long_bench(tmp_path: Path) -> Iterator[Station]:
    with serving(tmp_path, *BY_HAND, plan=LONG_PLAN) as station:
        yield station


def test_a_slip_is_asked_about_as_it_is_typed_and_mended_there(long_bench: Station, open_page: OpenPage) -> None:
    page = open_page(long_bench)
    choose(page, "0.1")
    for portion, text in enumerate(SLIPPED):
        if portion:
            press(page, "portion_added", portion)
        put_down(page, text)
        if portion == 3:
            put_down(page, text)  # far from the one before: asked again, and stood by
    question = page.locator(".question-asked")
    expect(question.locator(".question-words")).to_have_text("The reading after portion 3 does not fit: is it right?")
    expect(page.locator(".readings")).to_contain_text("not sure")
    expect_accessible(page)
    question.get_by_label("What the thermometer said").fill("25.9")
    question.get_by_role("button", name="Record", exact=True).click()
    expect(page.locator(".question-asked")).to_have_count(0)
    expect(page.locator(".readings")).not_to_contain_text("not sure")
    (repeat,) = long_bench.state()["repeats"]
    assert [each["temperature_c"] for each in repeat["readings"] if each["portion"] == 3] == [25.9]
