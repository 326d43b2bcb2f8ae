"""Hands on the page: the button, corrections, refusals, and a station that is restarted under it."""

import json
import signal
from pathlib import Path

import pytest
from playwright.sync_api import Page, Request, Route, expect

from station.server.door.hosts import own_addresses
from tests.page.conftest import OpenContext, OpenPage, Station, serve_settings, work
from tests.page.hands import asked, correct, expect_total, press

REPEAT_REASON = "lost count of the portions"


def begin(page: Page) -> None:
    press(page, "begin")
    asked(page, "portion_added", 1)


def portions(bench: Station) -> list[dict[str, object]]:
    repeats = bench.state()["repeats"]
    return list(repeats[-1]["portions"])


def test_the_button_adds_one_portion_however_often_it_is_pressed(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    begin(page)
    page.wait_for_timeout(650)
    page.evaluate(
        """() => { const button = document.querySelector('.done'); for (let n = 0; n < 5; n++) button.click(); }"""
    )
    asked(page, "portion_added", 2)
    assert len(portions(bench)) == 1
    expect_total(page, "4 cm³")


def test_the_keyboard_alone_does_it(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    button = asked(page, "begin")
    page.wait_for_timeout(650)
    for _ in range(20):
        page.keyboard.press("Tab")
        if button.evaluate("(one) => one === document.activeElement"):
            break
    assert button.evaluate("(one) => getComputedStyle(one).outlineStyle") == "solid"
    page.keyboard.press("Enter")
    asked(page, "portion_added", 1)


# Presses the button in the moment in which it begins to mean the second portion.
AT_ONCE = """() => {
  const look = new MutationObserver(() => {
    const next = document.querySelector(".done[data-portion='2']");
    if (next) {
      look.disconnect();
      next.click();
    }
  });
  look.observe(document.body, { subtree: true, childList: true, attributes: true });
}"""


def test_a_press_that_came_too_soon_is_answered_and_not_taken(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    work(bench, until="pour", repeat=1)
    asked(page, "portion_added", 1)
    page.evaluate(AT_ONCE)
    press(page, "portion_added", 1)
    expect(page.get_by_role("status").filter(has_text="Your press was seen.")).to_be_visible()
    expect(page.locator(".early")).to_have_count(0)
    assert bench.state()["portion"] == 1


def test_a_press_that_was_lost_is_pressed_again_with_the_same_key(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("Failed to load resource",)
    page = context.new_page()
    page.goto(bench.url)
    begin(page)
    keys: list[str] = []

    def note_key(request: Request) -> None:
        if request.method == "POST":
            keys.append(json.loads(request.post_data or "")["key"])

    context.on("request", note_key)
    context.route("**/api/acts", lambda route: route.abort(), times=1)
    press(page, "portion_added", 1)
    expect(page.get_by_role("alert")).to_contain_text("never counted twice")
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    assert len(portions(bench)) == 1
    assert len(keys) == 2
    assert len(set(keys)) == 1


def test_a_press_whose_answer_was_lost_is_kept_and_shown(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("Failed to load resource",)
    page = context.new_page()
    page.goto(bench.url)
    begin(page)

    def lose_answer(route: Route) -> None:
        route.fetch()
        route.abort()

    context.route("**/api/acts", lose_answer, times=1)
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    assert len(portions(bench)) == 1
    expect_total(page, "4 cm³")


def test_a_refusal_is_said_in_the_stations_words(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("409",)
    page = context.new_page()
    page.goto(bench.url)
    begin(page)
    page.wait_for_timeout(650)
    page.route("**/api/acts", lambda route: route.continue_(post_data='{"act": "rinsed", "key": "late"}'), times=1)
    page.locator(".done").click()
    refusal = bench.act(act="rinsed")
    assert refusal.status_code == 409
    expect(page.get_by_role("alert")).to_contain_text(refusal.json()["detail"])
    page.get_by_role("button", name="Close").click()
    expect(page.get_by_role("alert")).to_have_count(0)


def test_a_portion_is_taken_back_after_one_question(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    begin(page)
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    correct(page, "Portion 1 was not added")
    page.get_by_role("button", name="No, leave it").click()
    assert len(portions(bench)) == 1
    page.get_by_role("button", name="Portion 1 was not added").click()
    page.get_by_role("button", name="Yes, take it back").click()
    asked(page, "portion_added", 1)
    assert portions(bench) == []
    expect_total(page, "0 cm³")


def test_another_volume_and_a_doubt_are_recorded(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    begin(page)
    for portion in (1, 2):
        press(page, "portion_added", portion)
    asked(page, "portion_added", 3)
    correct(page, "Another volume went in")
    page.get_by_label("Which portion?").select_option(label="repeat 1, portion 1 (4 cm³)")
    page.get_by_label("Volume that went in").fill("4,5")
    page.get_by_role("button", name="Record this volume").click()
    expect_total(page, "8.5 cm³")
    correct(page, "Not sure what went in")
    page.get_by_role("button", name="Mark as not sure").click()
    expect(page.locator("tbody tr").nth(2)).to_contain_text("not sure")
    assert [(each["volume_cm3"], each["unsure"]) for each in portions(bench)] == [(4.5, False), (4.0, True)]


def test_a_repeat_is_started_again_with_a_reason(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    begin(page)
    press(page, "portion_added", 1)
    expect(page.locator(".portion-marks .in")).to_have_count(1)
    correct(page, "Start this repeat again")
    expect(page.get_by_label("Reason")).to_have_value("")
    expect(page.get_by_role("button", name="Yes, start again")).to_be_disabled()
    page.get_by_label("Reason").select_option(REPEAT_REASON)
    page.get_by_role("button", name="Yes, start again").click()
    asked(page, "rinsed")
    expect(page.locator(".instruction-tag")).to_have_text("repeat 1 of 2")
    expect(page.locator(".portion-marks .in")).to_have_count(0)
    expect_total(page, "0 cm³")
    press(page, "rinsed")
    asked(page, "portion_added", 1)
    expect(page.locator(".readings")).to_contain_text(f"Repeat 1 was set aside: {REPEAT_REASON}.")
    first = bench.state()["repeats"][0]
    assert (first["status"], first["reason"]) == ("set aside", REPEAT_REASON)


@pytest.mark.fault("mishaps")
def test_a_volume_that_cannot_be_is_answered_and_one_that_is_unlikely_is_asked_again(
    bench: Station, open_context: OpenContext
) -> None:
    context, watched = open_context(bench)
    watched.expected = ("422", "409")
    page = context.new_page()
    page.goto(bench.url)
    begin(page)
    press(page, "portion_added", 1)
    correct(page, "Another volume went in")
    form, record = page.locator(".correction"), page.get_by_role("button", name="Record this volume")
    for typed, words in (
        ("abc", "Type a number, such as 4.5"),
        ("-3", "Type the volume as a number from 0.01 to 1000 cm³, like 4.5."),
        ("4000", "Type the volume as a number from 0.01 to 1000 cm³, like 4.5."),
        ("400", "400 cm³ is far from the planned 4 cm³. Check it; press again if it is right."),
        ("40", "40 cm³ is far from the planned 4 cm³. Check it; press again if it is right."),
    ):
        form.get_by_label("Volume that went in").fill(typed)
        record.click()
        expect(page.get_by_role("alert").filter(has_text=words)).to_be_visible()
        expect_total(page, "4 cm³")
    record.click()
    expect_total(page, "40 cm³")
    expect(page.get_by_role("alert")).to_have_count(0)


@pytest.mark.fault("break")
def test_pause_go_on_and_finish(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    begin(page)
    correct(page, "Pause")
    press(page, "resume")
    asked(page, "portion_added", 1)
    correct(page, "Finish the practical")
    expect(page.locator(".correction")).to_contain_text("The temperature has not turned yet")
    page.get_by_role("button", name="No, go on").click()
    correct(page, "Finish the practical")
    page.get_by_role("button", name="Yes, finish").click()
    page.wait_for_selector("main.state-done")
    expect(page.get_by_test_id("instruction")).to_contain_text("Finished before the turning point")
    press(page, "finish_undone")
    asked(page, "portion_added", 1)


def test_the_alkali_may_be_typed(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    correct(page, "Temperature of the alkali")
    page.get_by_label("Temperature of the alkali / °C").fill("warm")
    page.get_by_role("button", name="Record this temperature").click()
    expect(page.get_by_role("alert")).to_have_text("Type a number, such as 4.5")
    page.get_by_label("Temperature of the alkali / °C").fill("20,5")
    page.get_by_role("button", name="Record this temperature").click()
    expect(page.locator("#corrections")).to_be_hidden()
    assert bench.state()["alkali_temperature_c"] == pytest.approx(20.5)


def test_a_restart_of_the_station_under_the_page_loses_nothing(bench: Station, open_context: OpenContext) -> None:
    context, _ = open_context(bench)
    page = context.new_page()
    page.goto(bench.url)
    begin(page)
    for portion in (1, 2):
        press(page, "portion_added", portion)
    asked(page, "portion_added", 3)
    table = page.inner_text("table")
    bench.signal(signal.SIGKILL)
    bench.kill()
    page.wait_for_selector("main.heard-old")
    bench.start()
    page.wait_for_selector("main.heard-fresh")
    page.wait_for_selector(".temperature.is-fresh")
    assert page.inner_text("table") == table
    expect_total(page, "8 cm³")
    press(page, "portion_added", 3)
    asked(page, "portion_added", 4)
    assert [each["portion"] for each in portions(bench)] == [1, 2, 3]
    twin = context.new_page()
    twin.goto(bench.url)
    twin.wait_for_selector("main.heard-fresh")
    expect(twin.locator("table")).to_have_text(page.locator("table").inner_text(), use_inner_text=True)


@pytest.mark.fault("plain-http")
def test_it_works_on_plain_http_from_another_address(tmp_path: Path, open_page: OpenPage) -> None:
    """Loopback counts as a secure context, a bench in a lab does not."""
    addresses = own_addresses()
    if not addresses:
        pytest.skip("this machine has no address other than loopback")
    station = Station("serve", "--config", str(serve_settings(tmp_path, addresses[0])))
    station.start()
    try:
        page = open_page(station)
        assert page.evaluate("isSecureContext") is False
        begin(page)
        press(page, "portion_added", 1)
        asked(page, "portion_added", 2)
        expect_total(page, "4 cm³")
    finally:
        station.stop()
