"""A teacher plans a practical on the page: the station computes, refuses beside the field, and starts what is kept."""

import re
import subprocess
import tomllib
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, ViewportSize, expect

from station.practical.kinds import read_plan, ready_plan
from station.server.door.secrets import hashed
from tests.page.conftest import OpenContext, Station, expect_accessible
from tests.page.hands import BY_HAND, serving
from tests.page.looking import in_english, texts

PASSPHRASE = "seven slow kettles"
PLAN = """
[acid]
name = "nitric acid"
volume_cm3 = 25.0
prepared_mol_dm3 = 0.35719
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 4.0
count = 10
"""
NARROW, WIDE = ViewportSize(width=768, height=1024), ViewportSize(width=1280, height=900)


@pytest.fixture(scope="module")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    secret = hashed("teacher", PASSPHRASE)
    lines = ("[access]", f'teacher_passphrase_hash = "{secret}"')
    with serving(tmp_path_factory.mktemp("plan"), *BY_HAND, *lines, plan=PLAN) as station:
        yield station


@pytest.fixture
def page(bench: Station, open_context: OpenContext) -> Page:
    context, watched = open_context(bench, viewport=WIDE)
    watched.expected = ("status of 409", "status of 403")  # signed out under the page
    return context.new_page()


def planned(page: Page, bench: Station, query: str = "") -> None:
    page.goto(f"{bench.url}plan{query}")
    page.locator(".plan-promise svg").wait_for()


def sign_in(page: Page) -> None:
    page.get_by_label("Passphrase").fill(PASSPHRASE)
    page.get_by_role("button", name="Sign in").click()
    expect(page.get_by_role("button", name="Save as plan.toml")).to_be_visible()


def expect_to_fit(page: Page) -> None:
    """Nothing is wider than the screen, and axe finds nothing, at both widths."""
    for size in (WIDE, NARROW):
        page.set_viewport_size(size)
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        expect_accessible(page)


def test_anybody_computes_and_sees_nothing_that_staff_made_up(page: Page, bench: Station) -> None:
    planned(page, bench)
    promise = page.locator(".plan-promise")
    expect(promise).to_contain_text("20.0 cm³")
    expect(promise).to_contain_text("6 before, 6 after")
    expect(page.locator(".plan-hazards")).to_contain_text("taken as 0.512 mol/dm³")
    assert "0.357" not in page.content()
    expect(page.get_by_label("Its concentration").locator("option")).to_have_count(2)
    expect(page.get_by_role("button", name="Start on this bench")).to_have_count(0)
    page.get_by_label("Volume of a portion").fill("0")
    field = page.locator(".plan-field", has_text="Volume of a portion")
    expect(field.locator(".field-problem")).to_have_text("Must be at least 0.1.")
    expect(page.get_by_label("Volume of a portion")).to_have_attribute("aria-invalid", "true")
    expect(page.locator(".plan-busy")).to_contain_text("see the marked fields")
    page.get_by_label("Volume of a portion").fill("3,2")
    expect(promise).to_contain_text("16.0 cm³")


def test_staff_plan_confirm_save_and_start(page: Page, bench: Station, tmp_path: Path) -> None:
    planned(page, bench)
    sign_in(page)
    expect(page.locator("[id='acid.prepared_mol_dm3']")).to_have_value("0.35719")
    page.get_by_label("Concentration / mol/dm³").nth(1).fill("1.5")
    start = page.get_by_role("button", name="Start on this bench")
    expect(page.locator(".plan-strong")).to_contain_text("potassium hydroxide (1.5 mol/dm³)")
    expect(start).to_be_disabled()
    page.get_by_label("I have confirmed this").check()
    start.click()
    expect(page.locator(".plan-keep .told")).to_contain_text("This bench has the plan now.")
    assert bench.state()["plan"]["alkali"]["concentration_mol_dm3"] == 1.5
    page.get_by_label("Start from").select_option("endothermic")
    expect(page.locator(".plan-promise")).to_contain_text("−4.6 °C")
    with page.expect_download() as begun:
        page.get_by_role("button", name="Save as plan.toml").click()
    saved = Path(begun.value.path()).read_text(encoding="utf-8")
    assert begun.value.suggested_filename == "plan.toml"
    assert read_plan(saved) == ready_plan("endothermic")
    mine = tmp_path / "mine.toml"
    mine.write_text(PLAN.replace("0.35719", "0.41") + "\nspoons = 2\n", encoding="utf-8")
    page.get_by_label("Open a plan file").set_input_files(mine)
    expect(page.locator("[id='acid.prepared_mol_dm3']")).to_have_value("0.41")
    expect(page.locator(".plan-source .told")).to_contain_text("not known here: portions.spoons")
    shown = page.get_by_label("The plan as text")
    expect(shown).to_have_value(re.compile("0\\.41"))
    assert tomllib.loads(shown.input_value())["acid"]["prepared_mol_dm3"] == 0.41
    page.reload()
    expect(page.locator("[id='acid.prepared_mol_dm3']")).to_have_value("0.41")
    page.request.delete(f"{bench.url}api/session")
    page.reload()
    page.locator(".plan-promise svg").wait_for()
    assert "0.41" not in page.content()


def test_from_the_plan_to_a_printed_preparation(page: Page, bench: Station, tmp_path: Path) -> None:
    planned(page, bench)
    sign_in(page)
    page.get_by_label("Start from").select_option("neutralisation")
    expect(page.locator(".plan-promise")).to_contain_text("22.5 cm³")
    page.get_by_role("link", name="Prepare this for a class").click()
    expect(page.get_by_label("Plan", exact=True)).to_have_value("tab")
    page.get_by_label("Benches").fill("15")
    sheet = page.locator(".preparation")
    expect(sheet).to_contain_text("How strong is this hydrochloric acid? (15 benches)")
    expect(sheet).to_contain_text("Hydrochloric acid, 0.36 mol/dm³: make 1500 cm³ from 46.4 cm³")
    page.get_by_label("Your bottle of hydrochloric acid").fill("2")
    expect(sheet).to_contain_text("from 270 cm³ (the school's own bottle)")
    page.get_by_label("Lesson", exact=True).select_option("60")
    expect(sheet).to_contain_text("Lesson of 60 minutes")
    expect(sheet).not_to_contain_text("Lesson of 50 minutes")
    expect_to_fit(page)
    paper = tmp_path / "sheet.pdf"
    page.pdf(path=paper, prefer_css_page_size=True)
    pages = subprocess.run(["pdftotext", "-layout", paper, "-"], capture_output=True, text=True, check=True).stdout
    first, *rest = pages.rstrip("\f").split("\f")
    labels = [number for number, text in enumerate(rest) if "Made on:" in text]
    assert labels == list(range(labels[0], len(rest))), "labels stand on sheets of their own, at the end"
    told = "".join(rest[labels[0] :])
    assert told.count("Made on:") == 30 + 2
    assert told.count("concentration to be found") == 15
    benches, _, stored = told.rpartition("concentration to be found")
    assert "0.36" not in benches
    assert stored.count("0.36") == 1, "the store bottle's label has it"
    assert "Spills" not in told
    assert "Sign" not in first + "".join(rest)


def test_dangers_stand_beside_their_field_and_warnings_above_the_numbers(page: Page, bench: Station) -> None:
    planned(page, bench)
    page.locator(".plan-source select").select_option("endothermic")
    solid = page.locator("[id='addition.name']")
    names = solid.locator("option")
    expect(names.filter(has_text="Copper(II) sulfate (anhydrous), CuSO₄")).to_have_count(1)
    expect(names.filter(has_text="Hydrochloric acid")).to_have_count(0)
    solid.select_option("copper(II) sulfate")
    promise = page.locator(".plan-promise")
    expect(promise.locator(".plan-warnings")).to_contain_text("choose copper(II) sulfate pentahydrate")
    expect(promise.locator("svg")).to_be_visible()
    tops = [promise.locator(each).first.bounding_box() for each in (".plan-warnings", ".promise-numbers")]
    assert tops[0] is not None
    assert tops[1] is not None
    assert tops[0]["y"] < tops[1]["y"]
    page.locator("[id='addition.mass_g']").fill("30")
    field = page.locator(".plan-field", has=page.locator("[id='addition.mass_g']"))
    expect(field.locator(".field-problem")).to_contain_text("The mixture would reach about 76 °C")
    expect(promise.locator(".promise-numbers")).to_have_count(0)
    expect_to_fit(page)


def test_on_a_phone_the_promise_stands_above_what_is_chosen(page: Page, bench: Station) -> None:
    page.set_viewport_size(ViewportSize(width=390, height=760))
    planned(page, bench)
    promise, choices = page.locator(".plan-promise").bounding_box(), page.locator(".plan-choices").bounding_box()
    assert promise and choices
    assert promise["y"] + promise["height"] <= choices["y"]


def test_it_is_accessible_fits_and_speaks_german(page: Page, bench: Station) -> None:
    planned(page, bench, "?language=de")
    page.locator(".plan-source select").select_option("mixed-once")
    expect(page.locator(".plan-promise")).to_contain_text("+2,7 °C")
    for summary in page.locator("summary").all():
        summary.click()
    assert [each for each in texts(page) if in_english(each[1])] == []
    expect_to_fit(page)
    page.goto(f"{bench.url}prepare?language=de")
    page.locator(".preparation").wait_for()
    assert [each for each in texts(page) if in_english(each[1])] == []
