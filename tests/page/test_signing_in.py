"""Who operates a bench that asks for its code: the code once, the act then done; staff with a passphrase."""

import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import OpenContext, OpenPage, Station, expect_accessible
from tests.page.hands import MEANT_MS, VIRTUAL, asked, go_to, press, serving, short_plan
from tests.records import PLAN_TEXT
from tests.server.doors import CODE, SECRETS, TEACHER


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    access = (
        f'access.bench_code = "{CODE}"',
        f'access.teacher_passphrase_hash = "{SECRETS.teacher_passphrase_hash}"',
    )
    plan = short_plan(repeats=2, count=1, more='results = "when shown"')
    with serving(tmp_path, *VIRTUAL, *access, plan=plan) as station:
        yield station


def first_press(page: Page) -> Locator:
    """Press what the page asks for first, as a device that has not given the code; return the button."""
    first = page.locator(".plain[data-act=alkali_left_out]")
    first.wait_for()
    page.wait_for_timeout(MEANT_MS)
    first.click()
    return first


def give(page: Page, code: str) -> None:
    page.get_by_role("textbox", name="Code").fill(code)
    page.get_by_role("button", name="Send").click()


def send(page: Page) -> int:
    """Send the code that stands there; the status of the answer."""
    with page.expect_response("**/api/session") as answer:
        page.locator(".code-form .strong[aria-disabled=false]").click()
    return answer.value.status


def test_the_first_press_asks_for_the_code_and_is_then_done(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    first_press(page)
    dialog = page.get_by_role("dialog", name="The code of this bench")
    expect(dialog).to_be_visible()
    expect(page.get_by_role("textbox", name="Code")).to_be_focused()
    assert bench.state()["instruction"]["act"] == "alkali_temperature"
    give(page, CODE.lower())
    expect(dialog).to_have_count(0)
    press(page, "begin")
    press(page, "portion_added", 1)
    asked(page, "rinsed")


def test_who_only_looks_is_asked_for_nothing_and_sees_everything(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    page.wait_for_selector(".guide")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(page.locator(".temperature .value")).to_contain_text("°C")


def test_escape_leaves_the_act_undone_and_the_keyboard_in_its_place(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    first = first_press(page)
    page.get_by_role("dialog").wait_for()
    for _ in range(3):
        page.keyboard.press("Tab")
    expect(page.get_by_role("textbox", name="Code")).to_be_focused()
    page.keyboard.press("Escape")
    expect(page.get_by_role("dialog")).to_have_count(0)
    expect(first).to_be_focused()
    assert bench.state()["instruction"]["act"] == "alkali_temperature"


def test_a_wrong_code_is_said_and_guessing_is_told_how_long_to_wait(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("403", "429")
    page = context.new_page()
    page.goto(bench.url)
    first_press(page)
    refused = page.locator("#code-refused")
    give(page, "guess 1")
    expect(refused).to_have_text("That is not right. Check it and try again.")
    tries = [send(page)]
    while tries[-1] != 429 and len(tries) < 7:  # each wrong try doubles the wait: a slow hand meets it, too
        tries.append(send(page))
    expect(refused).to_contain_text("Too many wrong tries here. Wait")
    page.get_by_role("textbox", name="Code").fill(CODE)
    until = time.monotonic() + PATIENCE_S
    while send(page) == 429 and time.monotonic() < until:
        page.wait_for_timeout(200)
    asked(page, "begin")


def test_a_code_given_in_another_tab_is_not_asked_for_again(bench: Station, open_context: OpenContext) -> None:
    context, _ = open_context(bench)
    first, second = context.new_page(), context.new_page()
    for page in (first, second):
        page.goto(bench.url)
    first_press(first)
    give(first, CODE)
    press(first, "begin")
    asked(second, "portion_added", 1)
    second.reload()
    press(second, "portion_added", 1)
    asked(second, "rinsed")


def test_staff_sign_in_with_role_and_passphrase_and_out_again(bench: Station, open_context: OpenContext) -> None:
    context, watched = open_context(bench)
    watched.expected = ("403", "429")
    page = context.new_page()
    page.goto(bench.url)
    go_to(page, "Settings")
    expect(page.get_by_role("heading", name="For staff")).to_have_count(0)
    page.get_by_label("Passphrase").fill("not this one")
    page.get_by_role("button", name="Sign in").click()
    expect(page.locator("#passphrase-refused")).to_have_text("That is not right. Check it and try again.")
    page.wait_for_timeout(1_100)
    page.get_by_label("Passphrase").fill(TEACHER)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_text("Signed in as teacher.")).to_be_visible()
    expect_accessible(page)
    page.get_by_role("button", name="Sign out").click()
    expect(page.get_by_role("heading", name="For staff")).to_have_count(0)
    expect(page.get_by_label("Passphrase")).to_be_visible()


def test_staff_show_results_rename_silence_and_set_aside(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    go_to(page, "Settings")
    page.get_by_label("Passphrase").fill(TEACHER)
    page.get_by_role("button", name="Sign in").click()
    page.get_by_role("button", name="Show the results").click()
    expect(page.get_by_text("The results can be seen.")).to_be_visible()
    assert bench.state()["results"]["shown"] is True
    page.get_by_role("button", name="Hold the results back").click()
    expect(page.get_by_text("The results are held back.")).to_be_visible()
    assert bench.state()["results"]["shown"] is False
    page.get_by_role("button", name="Silence the buzzer").click()
    expect(page.get_by_text("The buzzer is silent.")).to_be_visible()
    page.get_by_label("Name of the bench").fill("Window bench")
    page.get_by_role("button", name="Rename").click()
    expect(page.locator(".bench-name")).to_have_text("Window bench")
    go_to(page, "The bench")
    press(page, "begin")
    press(page, "portion_added", 1)
    asked(page, "rinsed")
    go_to(page, "Settings")
    page.get_by_label("Reason").select_option("spilled")
    page.get_by_role("button", name="Set aside", exact=True).click()
    expect(page.locator(".told")).to_have_text("Done.")
    first = bench.state()["repeats"][0]
    assert (first["status"], first["reason"]) == ("set aside", "spilled")


def test_a_pause_of_staff_is_ended_by_staff_and_a_repeat_of_theirs_counts_again(
    bench: Station, open_context: OpenContext
) -> None:
    group, teacher = (open_context(bench)[0].new_page() for _ in range(2))
    for page in (group, teacher):
        page.goto(bench.url)
    first_press(group)
    give(group, CODE)
    press(group, "begin")
    asked(group, "portion_added", 1)
    go_to(teacher, "Settings")
    teacher.get_by_label("Passphrase").fill(TEACHER)
    teacher.get_by_role("button", name="Sign in").click()
    teacher.get_by_role("button", name="Pause this bench").click()
    expect(group.locator(".instruction-text")).to_have_text("Paused by your teacher. Please wait.")
    expect(group.locator(".done")).to_have_count(0)
    group.get_by_role("button", name="Change, pause or finish").click()
    expect(group.get_by_role("button", name="Go on", exact=True)).to_have_count(0)
    expect(group.get_by_role("button", name="Finish the practical")).to_have_count(0)
    teacher.get_by_role("button", name="Let this bench go on").click()
    asked(group, "portion_added", 1)
    press(group, "portion_added", 1)
    asked(group, "rinsed")
    teacher.get_by_label("Reason").select_option("spilled")
    teacher.get_by_role("button", name="Set aside", exact=True).click()
    teacher.get_by_role("button", name="Let repeat 1 count again (set aside: spilled)").click()
    expect(teacher.locator(".told")).to_have_text("Done.")
    expect(teacher.get_by_role("button", name="Let repeat 1 count again")).to_have_count(0)
    assert bench.state()["repeats"][0]["status"] == "ended"


@pytest.mark.parametrize("path", ["", "prepare", "plan", "checks"])
def test_where_no_passphrase_is_set_it_says_so_and_how_to_set_one(
    path: str, tmp_path: Path, open_context: OpenContext
) -> None:
    with serving(tmp_path, *VIRTUAL) as station:
        page = open_context(station)[0].new_page()
        page.goto(f"{station.url}{path}")
        if path == "":
            go_to(page, "Settings")
        told = page.locator(".no-passphrase")
        expect(told).to_contain_text("No passphrase is set")
        expect(told).to_contain_text("station passphrase teacher")
        expect(page.get_by_label("Passphrase")).to_have_count(0)


def test_only_who_has_a_passphrase_is_asked_for_one(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    go_to(page, "Settings")
    expect(page.get_by_label("Role").locator("option")).to_have_text(["Teacher"])


def test_staff_begin_a_new_practical_with_the_plan_in_a_file(
    bench: Station, open_context: OpenContext, tmp_path: Path
) -> None:
    context, watched = open_context(bench)
    watched.expected = ("422",)
    page = context.new_page()
    page.goto(bench.url)
    go_to(page, "Settings")
    page.get_by_label("Passphrase").fill(TEACHER)
    page.get_by_role("button", name="Sign in").click()
    page.get_by_role("link", name="Plan and begin a practical").click()
    plan = tmp_path / "new.toml"
    plan.write_text("[acid", encoding="utf-8")
    page.get_by_label("Open a plan file").set_input_files(plan)
    expect(page.locator(".plan-source .told")).to_contain_text("This is no plan file")
    plan.write_text(PLAN_TEXT.replace("nitric acid", "hydrochloric acid"), encoding="utf-8")
    page.get_by_label("Open a plan file").set_input_files(plan)
    expect(page.locator("[id='acid.name']")).to_have_value("hydrochloric acid")
    page.get_by_role("button", name="Start on this bench").click()
    page.get_by_role("link", name="To the bench").click()
    expect(page.locator(".practical")).to_contain_text("hydrochloric acid")
    assert bench.state()["plan"]["acid"]["name"] == "hydrochloric acid"


def test_a_session_that_has_ended_is_asked_for_again_and_the_press_is_not_lost(
    bench: Station, open_context: OpenContext
) -> None:
    context, watched = open_context(bench)
    watched.expected = ("403",)
    page = context.new_page()
    page.goto(bench.url)
    first_press(page)
    give(page, CODE)
    press(page, "begin")
    asked(page, "portion_added", 1)
    context.clear_cookies()
    press(page, "portion_added", 1)
    give(page, CODE)
    asked(page, "rinsed")
    assert len(bench.state()["repeats"][0]["portions"]) == 1


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_the_code_form_and_the_settings_have_no_violation_that_axe_knows(
    bench: Station, open_page: OpenPage, scheme: str
) -> None:
    page = open_page(bench, color_scheme=scheme)
    first_press(page)
    page.get_by_role("dialog").wait_for()
    expect_accessible(page)
    page.keyboard.press("Escape")
    go_to(page, "Settings")
    page.get_by_label("Passphrase").wait_for()
    expect_accessible(page)
    heights = page.locator(":is(button, select, input):visible").evaluate_all(
        "(all) => all.map((one) => one.getBoundingClientRect().height)"
    )
    assert min(heights) >= 48
