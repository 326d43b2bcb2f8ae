"""The students' own mistakes: one tap each, and each can be taken back."""

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenContext, OpenPage, Station, expect_accessible, work
from tests.page.hands import VIRTUAL, asked, correct, expect_total, serving, short_plan

OPEN = "Change, pause or finish"


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    with serving(tmp_path, *VIRTUAL, plan=short_plan(repeats=2, count=6)) as station:
        yield station


def after(bench: Station, portion: int) -> None:
    """Work until this portion is in and read."""
    for _ in range(200):
        state = work(bench, until="pour", repeat=1)
        if state["portion"] == portion:
            return
        bench.act(act="portion_added", portion=state["portion"] + 1).raise_for_status()


def newest(bench: Station) -> dict[str, Any]:
    portion: dict[str, Any] = bench.state()["repeats"][-1]["portions"][-1]
    return portion


@pytest.mark.fault("mishaps")
@pytest.mark.parametrize(
    ("name", "reason"), [("Spilled", "spilled"), ("Stirred late", "stirred late"), ("Lid was off", "lid off")]
)
def test_a_mishap_is_one_tap_and_taken_back_with_another(
    bench: Station, open_page: OpenPage, name: str, reason: str
) -> None:
    page = open_page(bench)
    after(bench, 1)
    page.get_by_role("button", name=OPEN).click()
    page.get_by_role("button", name=name, exact=True).click()
    expect(page.locator(".quick")).to_contain_text(f"Portion 1 is marked as not sure: {name}.")
    assert (newest(bench)["unsure"], newest(bench)["unsure_reason"]) == (True, reason)
    page.get_by_role("button", name="Take this back").click()
    expect(page.get_by_role("button", name=name, exact=True)).to_be_visible()
    assert (newest(bench)["unsure"], newest(bench)["unsure_reason"]) == (False, None)


def test_a_mishap_with_the_last_portion_can_still_be_told_when_the_repeat_has_ended(
    bench: Station, open_page: OpenPage
) -> None:
    page = open_page(bench)
    work(bench, until="rinse", repeat=1)
    asked(page, "rinsed")
    page.get_by_role("button", name=OPEN).click()
    expect(page.locator(".quick h2")).to_have_text("Portion 6: what happened?")
    page.get_by_role("button", name="Lid was off", exact=True).click()
    expect(page.locator(".quick")).to_contain_text("Portion 6 is marked as not sure: Lid was off.")
    assert newest(bench)["unsure_reason"] == "lid off"


def test_a_doubt_in_own_words_and_its_way_back(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    after(bench, 2)
    correct(page, "Not sure what went in")
    page.get_by_label("Which portion?").select_option(label="repeat 1, portion 1 (5 cm³)")
    page.get_by_label("In your own words").fill("the funnel dripped")
    page.get_by_role("button", name="Mark as not sure").click()
    expect(page.locator(".correction")).to_have_count(0)
    first = bench.state()["repeats"][0]["portions"][0]
    assert (first["unsure"], first["unsure_reason"]) == (True, "the funnel dripped")
    correct(page, "Not sure what went in")
    page.get_by_label("Which portion?").select_option(label="repeat 1, portion 1 (5 cm³)")
    expect(page.locator(".correction")).to_contain_text("the funnel dripped")
    page.get_by_role("button", name="Take this back").click()
    expect(page.locator(".correction")).to_have_count(0)
    assert bench.state()["repeats"][0]["portions"][0]["unsure"] is False


def test_we_added_more_is_two_taps_and_every_portion_is_there(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    after(bench, 1)
    correct(page, "We added more portions")
    choices = page.locator(".taps button")
    expect(choices).to_have_text(["2", "3", "4", "5"])
    choices.nth(2).click()
    expect(page.locator(".correction")).to_have_count(0)
    expect_total(page, "20 cm³")
    assert [each["portion"] for each in bench.state()["repeats"][0]["portions"]] == [1, 2, 3, 4]
    correct(page, "Portion 4 was not added")
    page.get_by_role("button", name="Yes, take it back").click()
    expect_total(page, "15 cm³")


def test_another_volume_is_one_tap_near_the_planned_one_and_goes_back_to_it(
    bench: Station, open_page: OpenPage
) -> None:
    page = open_page(bench)
    after(bench, 1)
    correct(page, "Another volume went in")
    page.get_by_role("button", name="5.5 cm³", exact=True).click()
    expect_total(page, "5.5 cm³")
    correct(page, "Another volume went in")
    page.get_by_role("button", name="5 cm³, as planned").click()
    expect_total(page, "5 cm³")


def test_a_repeat_that_has_ended_is_left_out_by_a_person_and_counts_again(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    work(bench, until="rinse", repeat=1)
    asked(page, "rinsed")
    correct(page, "Leave a repeat out")
    page.get_by_label("Reason").select_option("another reason")
    page.get_by_label("In your own words").fill("the thermometer lay on the bench")
    page.get_by_role("button", name="Leave it out").click()
    expect(page.locator(".correction")).to_have_count(0)
    first = bench.state()["repeats"][0]
    assert (first["status"], first["reason"]) == ("set aside", "the thermometer lay on the bench")
    correct(page, "Let a repeat count again")
    page.get_by_role("button", name="Repeat 1 (left out: the thermometer lay on the bench)").click()
    expect(page.locator(".correction")).to_have_count(0)
    assert bench.state()["repeats"][0]["status"] == "ended"


@pytest.mark.fault("markup-and-formulas")
def test_notes_are_kept_and_withdrawn_and_their_text_is_only_text(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    after(bench, 1)
    correct(page, "Notes")
    text = "<b>The lid</b> wobbled & fell"
    page.get_by_label("New note").fill(text)
    page.get_by_label("About").select_option(label="repeat 1, portion 1 (5 cm³)")
    page.get_by_role("button", name="Keep this note").click()
    expect(page.locator(".notes li")).to_contain_text(f"repeat 1, portion 1: {text}")
    (note,) = bench.state()["notes"]
    assert (note["text"], note["repeat"], note["portion"], note["withdrawn"]) == (text, 1, 1, False)
    page.get_by_role("button", name="Withdraw").click()
    expect(page.locator(".notes li")).to_contain_text("withdrawn")
    assert bench.state()["notes"][0]["withdrawn"] is True


def test_the_group_has_a_label_and_no_names_are_asked_for(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    correct(page, "Label of your group")
    field = page.get_by_label("Label, such as Group 4. No names.")
    assert field.get_attribute("maxlength") == "24"
    field.fill("Group 4")
    page.get_by_role("button", name="Use this label").click()
    expect(page.locator("header .tag").first).to_have_text("Group 4")
    correct(page, "Label of your group")
    field.fill("")
    page.get_by_role("button", name="Use this label").click()
    expect(page.locator("header")).not_to_contain_text("Group 4")


def test_a_part_that_does_not_arrive_comes_with_the_page_loaded_afresh(
    bench: Station, open_context: OpenContext
) -> None:
    context, watched = open_context(bench)
    watched.expected = ("Failed to load resource",)
    page = context.new_page()
    page.goto(bench.url)
    asked(page, "begin")
    page.route("**/page/panel-*", lambda route: route.abort(), times=1)
    page.get_by_role("button", name=OPEN).click()
    expect(page.get_by_role("alert")).to_contain_text("This part could not be loaded.")
    with page.expect_navigation():
        page.get_by_role("button", name="Try again").click()
    page.get_by_role("button", name=OPEN).click()
    page.wait_for_selector(".correction")
    expect(page.get_by_role("alert")).to_have_count(0)


def _open_everything(page: Page, bench: Station) -> Iterator[str]:
    page.get_by_role("button", name=OPEN).click()
    page.wait_for_selector(".correction")
    yield "the list"
    names = page.locator(".correction section ul button").all_inner_texts()
    for name in names:
        if name in ("Pause", "Begin", "Go on"):
            continue
        page.locator(".correction").get_by_role("button", name=name, exact=True).click()
        page.wait_for_selector(".correction > h2")
        yield name
        page.locator(".correction").get_by_role("button", name="Back").or_(
            page.locator(".correction").get_by_role("button", name="No, leave it")
        ).click()


@pytest.mark.parametrize(("scheme", "viewport"), [("light", PHONE), ("dark", PROJECTOR)])
def test_no_correction_has_a_violation_that_axe_knows_or_a_small_target(
    bench: Station, open_page: OpenPage, scheme: str, viewport: dict[str, int]
) -> None:
    page = open_page(bench, color_scheme=scheme, viewport=viewport)
    work(bench, until="rinse", repeat=1)
    asked(page, "rinsed")
    for name in _open_everything(page, bench):
        expect_accessible(page)
        heights = page.locator(".doing :is(button, select, input):visible").evaluate_all(
            "(all) => all.map((one) => one.getBoundingClientRect().height)"
        )
        assert min(heights) >= 48, name
