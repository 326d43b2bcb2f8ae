"""The settings of a device: language, units, and a sound that a tap arms."""

from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import OpenContext, OpenPage, Station, work
from tests.page.hands import VIRTUAL, asked, go_to, press, serving, short_plan

# Counts the notes that are played, on the browser's own AudioContext.
LISTEN = """() => {
  window.notes = 0;
  window.contexts = [];
  const Real = AudioContext;
  window.AudioContext = class extends Real {
    constructor() { super(); window.contexts.push(this); }
    createOscillator() {
      const note = super.createOscillator();
      const start = note.start.bind(note);
      note.start = (when) => { window.notes += 1; start(when); };
      return note;
    }
  };
}"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    with serving(tmp_path, *VIRTUAL, plan=short_plan(count=2)) as station:
        yield station


def switch(page: Page) -> str:
    return page.locator("header [data-sound]").inner_text()


def test_language_and_units_hold_on_this_device(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    go_to(page, "Settings")
    page.get_by_label("Language").select_option(label="Deutsch")
    expect(page.locator("html")).to_have_attribute("lang", "de")
    expect(page.get_by_role("heading", name="Einstellungen dieses Geräts")).to_be_visible()
    page.get_by_label("Einheiten").select_option(label="mL, M")
    expect(page.locator("header")).to_contain_text("0,4 M")
    page.reload()
    expect(page.locator("header")).to_contain_text("20 mL Salzsäure")
    page.get_by_label("Sprache").select_option(label="English")
    page.get_by_label("Units").select_option("cm3")
    expect(page.locator("header")).to_contain_text("20 cm³ of hydrochloric acid")


def test_sound_is_off_until_it_is_wanted_and_then_tells_of_something_to_do(
    bench: Station, open_context: OpenContext
) -> None:
    context, _ = open_context(bench)
    context.add_init_script(f"({LISTEN})()")
    page = context.new_page()
    page.goto(bench.url)
    asked(page, "begin")
    assert switch(page) == "Turn sound on"
    page.get_by_role("button", name="No sound").click()
    expect(page.locator(".sound-offer")).to_have_count(0)
    page.reload()
    asked(page, "begin")
    expect(page.locator(".sound-offer")).to_have_count(0)  # it is offered once
    work(bench, until="pour", repeat=1)
    asked(page, "portion_added", 1)
    assert page.evaluate("[notes, contexts.length]") == [0, 0]
    page.locator("header [data-sound]").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")
    page.wait_for_function("() => contexts[0].state === 'running'")
    page.wait_for_function("() => notes === 2")  # it is heard when it is switched on
    press(page, "portion_added", 1)
    asked(page, "portion_added", 2)
    page.wait_for_function("() => notes === 4")
    page.locator("header [data-sound]").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound on")
    press(page, "portion_added", 2)
    page.wait_for_selector("main.state-done")
    assert page.evaluate("notes") == 4


@pytest.mark.fault("sound-sleeps")
def test_a_sound_that_sleeps_says_so_and_any_tap_wakes_it(bench: Station, open_context: OpenContext) -> None:
    context, _ = open_context(bench)
    context.add_init_script(f"({LISTEN})()")
    page = context.new_page()
    page.goto(bench.url)
    asked(page, "begin")
    page.locator("header [data-sound]").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")
    page.reload()
    asked(page, "begin")
    expect(page.locator("header [data-sound]")).to_have_text("Wake the sound")
    assert page.evaluate("contexts.length") == 0, "nothing is opened without a tap"
    page.locator(".instruction-text").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")
    page.evaluate("contexts[0].suspend()")
    expect(page.locator("header [data-sound]")).to_have_text("Wake the sound")
    page.locator("header [data-sound]").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")


@pytest.mark.fault("sound-sleeps")
def test_an_interrupted_sound_is_replaced_at_the_next_tap(bench: Station, open_context: OpenContext) -> None:
    """No Chromium has iOS's state "interrupted": it is put on a real context, which then does not come back."""
    context, _ = open_context(bench)
    context.add_init_script(f"({LISTEN})()")
    page = context.new_page()
    page.goto(bench.url)
    asked(page, "begin")
    page.locator("header [data-sound]").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")
    page.evaluate("""() => {
      Object.defineProperty(contexts[0], 'state', { value: 'interrupted' });
      contexts[0].resume = () => Promise.reject(new Error('interrupted'));
      contexts[0].dispatchEvent(new Event('statechange'));
    }""")
    expect(page.locator("header [data-sound]")).to_have_text("Wake the sound")
    page.locator(".instruction-text").click()
    expect(page.locator("header [data-sound]")).to_have_text("Turn sound off")
    page.wait_for_function("() => contexts.length === 2 && contexts[1].state === 'running'")
