"""The page in German, French and the pseudo-locale: nothing that it says stays outside the catalogue."""

import re
import time
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import BrowserContext, Page, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import OpenContext, Station, work
from tests.page.hands import correct
from tests.page.looking import (
    ONCE,
    OWN_FIRST,
    OWN_JUDGEMENT,
    PORTIONS,
    Looking,
    Serve,
    act_when_possible,
    follow,
    in_english,
    in_plain_letters,
    opened,
    served,
    wait_for_results,
)
from tests.server.doors import CODE, SECRETS, TEACHER


@pytest.fixture
def serve(tmp_path: Path) -> Iterator[Serve]:
    yield from served(tmp_path)


LANGUAGES = (("", "de", in_english), ("?language=pseudo", "en-x-pseudo", in_plain_letters))


def in_both(context: BrowserContext, station: Station) -> dict[str, Page]:
    """A page in German, as the browser asks for it, and one in the pseudo-locale."""
    return {
        name: opened(context.new_page(), station, after, speaks=speaks)
        for name, (after, speaks, _) in zip(("German", "pseudo"), LANGUAGES, strict=True)
    }


def test_every_word_comes_from_the_catalogue(serve: Serve, open_context: OpenContext) -> None:
    """In the pseudo-locale no text has a plain letter or a decimal point, whatever the practical is at."""
    station = serve(PORTIONS)
    page = opened(open_context(station)[0].new_page(), station, "?language=pseudo", speaks="en-x-pseudo")
    looking = Looking(in_plain_letters)
    follow(station, page, looking)
    looking.expect_nothing()


def test_a_practical_in_german(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = opened(open_context(station, locale="de-AT")[0].new_page(), station, speaks="de")
    expect(page.locator(".instruction-text")).to_contain_text(
        "Halte den sauberen, trockenen Fühler in das Gefäß mit Kalilauge."
    )
    looking = Looking(in_english, accessible=True)
    follow(station, page, looking)
    page.emulate_media(color_scheme="dark")
    looking.look(page, "done in the dark")
    looking.expect_nothing()


def test_french_after_it_was_chosen(serve: Serve, open_context: OpenContext) -> None:
    """A language that came as a file only: instruction, question, refusal and results in it, and no English between."""
    station = serve(PORTIONS)
    context, watched = open_context(station, locale="en-GB")
    watched.expected = ("409",)
    page = opened(context.new_page(), station, "#settings")
    page.get_by_label("Language").select_option(label="Français")
    expect(page.locator("html")).to_have_attribute("lang", "fr")
    expect(page.get_by_role("heading", name="Réglages de cet appareil")).to_be_visible()
    page.evaluate("location.hash = ''")
    instruction = page.locator(".instruction-text")
    expect(instruction).to_contain_text(
        "Plonge le capteur propre et sec dans le liquide à ajouter (hydroxyde de potassium)."
    )
    work(station, until="pour", repeat=1)
    expect(instruction).to_contain_text(re.compile(r"Ajoute la portion 1\s: hydroxyde de potassium, 5\scm³\. Agite\."))
    station.act(act="portion_added", portion=1).raise_for_status()
    expect(page.locator(".question-asked")).to_contain_text(re.compile(r"portion 1.*\?"))
    correct(page, "Un autre volume a été ajouté", opened_by="Corriger, mettre en pause ou terminer")
    page.get_by_label("Volume réellement ajouté").fill("400,5")
    page.get_by_role("button", name="Enregistrer ce volume").click()
    refused = re.compile(r"400,5\scm³, c’est loin des 5\scm³ prévus\. Vérifie\s; appuie de nouveau si c’est juste\.")
    expect(page.get_by_role("alert").filter(has_text=refused)).to_be_visible()
    looking = Looking(in_english)
    looking.look(page, "question and refusal", everywhere=False)
    station.act(act="portion_unsure", repeat=1, portion=1, reason="spilled").raise_for_status()
    work(station, until="done", repeat=1)
    wait_for_results(station)
    page.wait_for_selector("main.state-done")
    expect(page.locator(".result-lines")).to_contain_text("Cet intervalle ne couvre que la dispersion de tes mesures.")
    looking.look(page, "done")
    looking.expect_nothing()


def test_one_addition_in_both(serve: Serve, open_context: OpenContext) -> None:
    station = serve(ONCE)
    context, _ = open_context(station, locale="de-DE")
    pages = in_both(context, station)
    looking = {"German": Looking(in_english), "pseudo": Looking(in_plain_letters)}
    for name, page in pages.items():
        looking[name].look(page, "ready")
    work(station, until="done", repeat=1)
    wait_for_results(station)
    for name, page in pages.items():
        page.wait_for_selector("main.state-done")
        looking[name].look(page, "done")
        looking[name].expect_nothing()


def test_own_lines_in_both(serve: Serve, open_context: OpenContext) -> None:
    station = serve(OWN_FIRST)
    context, _ = open_context(station, locale="de-DE")
    pages = in_both(context, station)
    looking = {"German": Looking(in_english), "pseudo": Looking(in_plain_letters)}
    work(station, until="done", repeat=1)
    for name, page in pages.items():
        page.wait_for_selector("main.state-done")
        looking[name].look(page, "own lines")
    line = {"slope_c_cm3": 0.1, "intercept_c": 20.0}
    station.act(act="own_reading", end_point_cm3=24.5, before=line, after=line).raise_for_status()
    station.act(act="repeat_set_aside", repeat=1, reason="spilled").raise_for_status()
    station.act(act="repeat_restored", repeat=1).raise_for_status()
    wait_for_results(station)
    for name, page in pages.items():
        looking[name].look(page, "results")
        looking[name].expect_nothing()


@pytest.mark.parametrize("kind", ["typed", "own judgement"])
def test_other_ways_to_read_in_both(serve: Serve, open_context: OpenContext, kind: str) -> None:
    station = serve(PORTIONS, driver="none") if kind == "typed" else serve(OWN_JUDGEMENT)
    context, _ = open_context(station, locale="de-DE")
    pages = in_both(context, station)
    looking = {"German": Looking(in_english), "pseudo": Looking(in_plain_letters)}

    def look(stage: str) -> None:
        for name, page in pages.items():
            page.wait_for_selector(f"main.state-{stage}")
            looking[name].look(page, stage, everywhere=stage == "done")

    if kind == "typed":
        look("ready")
        station.act(act="thermometer", division_c=1).raise_for_status()
    look("ready")
    station.act(act="begin").raise_for_status()
    look("start")
    read = {"act": "reading", "temperature_c": 21.0} if kind == "typed" else {"act": "read_now", "portion": 0}
    act_when_possible(station, **read)
    look("pour")
    station.act(act="portion_added", portion=1).raise_for_status()
    look("settle")
    station.act(act="finish").raise_for_status()
    look("done")
    for each in looking.values():
        each.expect_nothing()


def test_every_correction_in_both(serve: Serve, open_context: OpenContext) -> None:
    """Each form of the corrections, and what is said when the station does not answer."""
    station = serve(PORTIONS)
    work(station, until="pour", repeat=1)
    station.act(act="portion_added", portion=1).raise_for_status()
    while station.state()["instruction"]["portion"] != 2:  # the next instruction would close what stands open
        time.sleep(0.1)
    context, watched = open_context(station, locale="de-DE")
    watched.expected = ("Failed to load resource",)
    context.route("**/api/acts", lambda route: route.abort())
    for after, speaks, wrong in LANGUAGES:
        page = opened(context.new_page(), station, after, speaks=speaks)
        looking = Looking(wrong)
        page.locator(".corrections .toggle").click()
        buttons = page.locator(".correction section button")
        buttons.first.wait_for()
        count = buttons.count()
        assert count >= 8
        for index in range(count):
            buttons.nth(index).click()
            form, refused = page.locator(".correction[tabindex]"), page.locator(".trouble")
            form.or_(refused).first.wait_for()
            looking.note(page, f"correction {index}")
            if refused.count():
                refused.locator("button").click()
            else:  # a form: back to the list
                page.locator(".corrections .toggle").click()
                page.locator(".corrections .toggle").click()
                buttons.first.wait_for()
        looking.expect_nothing()


def sign_in_as_teacher(context: BrowserContext, station: Station) -> None:
    """Sign in; after a wrong try that has to wait."""
    until = time.monotonic() + PATIENCE_S
    while True:
        answer = context.request.post(
            f"{station.url}api/session",
            data={"role": "teacher", "passphrase": TEACHER},
            headers={"Origin": station.url[:-1]},
        )
        if answer.status != 429 or time.monotonic() > until:
            break
        time.sleep(0.5)
    assert answer.ok, answer.text()


def test_codes_and_staff_in_both(serve: Serve, open_context: OpenContext) -> None:
    access = f'access.bench_code = "{CODE}"\naccess.teacher_passphrase_hash = "{SECRETS.teacher_passphrase_hash}"'
    station = serve(PORTIONS, more=access)
    context, watched = open_context(station, locale="de-DE")
    watched.expected = ("Failed to load resource",)
    for after, speaks, wrong in LANGUAGES:
        page = opened(context.new_page(), station, after, speaks=speaks)
        looking = Looking(wrong)
        page.wait_for_timeout(650)
        page.locator(".done").click()
        page.locator("[role=dialog] input").fill("wrong code")
        page.locator("[role=dialog] button[type=submit]").click()
        expect(page.locator("#code-refused")).not_to_be_empty()
        looking.note(page, "code")
        sign_in_as_teacher(context, station)
        opened(page, station, after, speaks=speaks)
        looking.look(page, "teacher")
        looking.expect_nothing()
        context.clear_cookies()
