"""The instruction: drawn, in one place whatever it says, and done from the keyboard alone."""

import json
import signal
from collections.abc import Iterator
from itertools import pairwise
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import Page, Route, ViewportSize, expect

from tests.page.conftest import PHONE, PROJECTOR, OpenContext, OpenPage, Station, expect_accessible, work
from tests.page.hands import MEANT_MS, VIRTUAL, aged, asked, expect_total, press, serving, short_plan, standing_still

TABLET = ViewportSize(width=768, height=1024)
TWO_METRES_MM = 2000.0
READ_AT = 200.0
"""A letter is read from 200 times its height: common practice for signs, no source."""
MM_PER_PX = 25.4 / 96

# Every place and size that the card and its parts had, the words' upper edge and the lower edge of what is pressed
# (more to press leaves the words less room), every drawing, and every larger shift that Chromium saw
# without a press just before it (https://web.dev/articles/cls). A busy machine's page that has heard nothing for some
# time says so in other words, and takes them back: that is another promise.
FOLLOW = """() => {
  window.seen = { boxes: {}, drawings: [], shifts: [] };
  let stale = true, fresh_ms = 0;
  const note = () => {
    const parts = { '.instruction': 'both', '.instruction-head': 'both', '.instruction-body': 'both',
      '.instruction-words': 'top', '.instruction-foot': 'bottom', '.instruction-hint': 'both', '.numbers': 'both',
      '.corrections': 'both' };
    for (const [part, edges] of Object.entries(parts)) {
      const { top, bottom } = document.querySelector(part).getBoundingClientRect();
      const [first, last] = [Math.round(top + scrollY), Math.round(bottom + scrollY)];
      const box = edges === 'top' ? `${first}` : edges === 'bottom' ? `${last}` : `${first} ${last}`;
      const known = (window.seen.boxes[part] ??= []);
      if (!known.includes(box)) known.push(box);
    }
    const drawn = [...document.querySelector('.instruction .drawn').classList].find((name) => name.includes('-'));
    if (window.seen.drawings.at(-1) !== drawn) window.seen.drawings.push(drawn);
    const was = stale;
    stale = !document.querySelector('main.heard-fresh .temperature.is-fresh');
    if (was && !stale) fresh_ms = performance.now();
  };
  note();
  new MutationObserver(note).observe(document.querySelector('.doing'),
    { subtree: true, childList: true, characterData: true, attributes: true });
  new PerformanceObserver((list) => {
    for (const entry of list.getEntries()) {
      const moved = entry.sources.filter(({ node }) => {
        const element = node?.nodeType === 1 ? node : node?.parentElement;
        return element?.closest('.doing');
      });
      if (entry.hadRecentInput || stale || entry.startTime < fresh_ms + 200) continue;
      for (const { node, previousRect, currentRect } of moved) {
        // What is pressed keeps its height on the screen; a text beside it may move by a line, and sideways.
        const pressed = (node?.nodeType === 1 ? node : node?.parentElement)
          ?.closest('button, a, input, summary, label');
        // Of the foot only the upper edge moves, where there is more to press: its lower one is followed above.
        if (/^instruction-foot/.test(node.className)) continue;
        if (Math.abs(previousRect.y - currentRect.y) <= (pressed ? 2 : 24)) continue;
        const [from, to] = [previousRect, currentRect].map(({ x, y }) => `${Math.round(x)} ${Math.round(y)}`);
        window.seen.shifts.push(`${node.className ?? node.textContent}: ${from} to ${to}`);
      }
    }
  }).observe({ type: 'layout-shift' });
}"""


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    with serving(tmp_path, *VIRTUAL, plan=short_plan(repeats=2)) as station:
        yield station


def seen_by_all(pages: list[Page], drawing: str) -> None:
    """A state that lasts no longer than a moment was drawn on every page."""
    for page in pages:
        page.wait_for_function("(one) => window.seen.drawings.includes(one)", arg=f"drawn-{drawing}")


def through_all_states(bench: Station, pages: list[Page]) -> None:
    """From the first moment to the last, with everything that may come between."""
    bench.act(act="alkali_temperature").raise_for_status()
    seen_by_all(pages, "wipe")
    bench.act(act="probe_rinsed").raise_for_status()
    seen_by_all(pages, "fill")
    bench.act(act="begin").raise_for_status()
    work(bench, until="pour", repeat=1)
    bench.act(act="pause").raise_for_status()
    seen_by_all(pages, "pause")
    bench.act(act="resume").raise_for_status()
    work(bench, until="rinse", repeat=1)
    seen_by_all(pages, "empty")
    work(bench, until="done", repeat=2)


@pytest.mark.parametrize("language", ["en", "de", "pseudo"])
def test_nothing_moves_when_the_instruction_changes(bench: Station, open_context: OpenContext, language: str) -> None:
    pages: list[Page] = []
    for viewport in (PHONE, TABLET, PROJECTOR):
        context, _ = open_context(bench, viewport=viewport)
        page = context.new_page()
        page.goto(f"{bench.url}?language={language}")
        page.wait_for_selector("main.state-ready .instruction-foot .plain")
        page.wait_for_selector(".guide")
        page.evaluate(FOLLOW)
        pages.append(page)
    through_all_states(bench, pages)
    for page in pages:
        page.wait_for_selector("main.state-done")
        seen: dict[str, Any] = page.evaluate("window.seen")
        moved = {part: boxes for part, boxes in seen["boxes"].items() if len(boxes) != 1}
        assert moved == {}
        assert seen["shifts"] == []
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth"), "nothing sticks out sideways"
        drawn = ["dip", "wipe", "fill", "stir", "pour", "wait", "empty", "rinse", "done", "pause"]
        assert set(seen["drawings"]) >= {f"drawn-{each}" for each in drawn}


def test_the_words_are_read_from_two_metres_on_a_laptop(bench: Station, open_page: OpenPage) -> None:
    """Capitals of the page's letters are at least 0.7 of their size high."""
    page = open_page(bench, viewport=ViewportSize(width=1366, height=768))
    bench.act(act="begin").raise_for_status()
    work(bench, until="pour", repeat=1)
    asked(page, "portion_added", 1)
    size_px = page.locator(".instruction-text").evaluate("(one) => parseFloat(getComputedStyle(one).fontSize)")
    assert 0.7 * size_px * MM_PER_PX >= 0.7 * TWO_METRES_MM / READ_AT
    assert page.locator(".left, .instruction-text").first.is_visible()


def test_where_the_practical_stands_is_in_words(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    press(page, "begin")
    press(page, "portion_added", 1)
    press(page, "portion_added", 2)
    asked(page, "portion_added", 3)
    standing = page.locator(".instruction-standing")
    expect(standing).to_contain_text("repeat 1 of 2")
    expect(standing).to_contain_text("portion 3 of 3")
    assert page.locator(".portion-marks .in").count() == 2
    expect_total(page, "10 cm³")


def test_enter_alone_goes_through_a_repeat(bench: Station, open_page: OpenPage) -> None:
    """The focus follows the one button: who began with the keyboard never looks for it again."""
    page = open_page(bench, viewport=PROJECTOR)
    asked(page, "begin").focus()
    between = [("cup_emptied", None), ("cup_rinsed", None), ("rinsed", None)]
    for act, portion in (("begin", None), *(("portion_added", each) for each in (1, 2, 3)), *between):
        button = asked(page, act, portion)
        page.wait_for_function("(one) => one === document.activeElement", arg=button.element_handle())
        page.wait_for_timeout(MEANT_MS)
        page.keyboard.press("Enter")
    asked(page, "portion_added", 1)
    first, second = bench.state()["repeats"]
    assert [each["portion"] for each in first["portions"]] == [1, 2, 3]
    assert second["portions"] == []


def test_after_the_last_portion_the_page_leads_on_to_the_lines_and_the_record(
    bench: Station, open_page: OpenPage
) -> None:
    page = open_page(bench)
    bench.act(act="begin").raise_for_status()
    work(bench, until="done", repeat=2)
    page.wait_for_selector("main.state-done")
    page.get_by_role("button", name="Now draw your lines").click()
    expect(page.locator(".seeing .figure").first).to_be_in_viewport()
    page.locator(".instruction").get_by_role("link", name="Your record").click()
    page.wait_for_selector("main.at-record")


def test_phones_stay_dry_where_the_bench_has_a_button(bench: Station, open_context: OpenContext) -> None:
    """No machine for tests has a panel's pins: the station's own answer is given with one added."""
    context, watched = open_context(bench)
    watched.expected = ("Failed to load resource",)  # the stream is cut, so that no message takes the panel away
    bench.act(act="begin").raise_for_status()

    def with_panel(route: Route) -> None:
        answer = route.fetch()
        state = answer.json()
        state["bench"]["panel"] = "lgpio"
        route.fulfill(response=answer, body=json.dumps(state))

    bare = context.new_page()
    bare.goto(bench.url)
    expect(bare.locator(".instruction-hint")).to_have_text("Touch this page with clean, dry hands only.")
    context.route("**/api/state*", with_panel)
    context.route("**/api/stream*", lambda route: route.abort())
    page = context.new_page()
    page.goto(bench.url)
    expect(page.locator(".instruction-hint")).to_have_text("At the cup press the bench button. Keep phones dry.")


def test_the_instruction_does_not_outlive_the_truth(bench: Station, open_context: OpenContext) -> None:
    page = open_context(bench)[0].new_page()
    page.clock.install()
    page.goto(bench.url)
    page.wait_for_selector("main.heard-fresh")
    box = page.locator(".instruction").bounding_box()
    standing_still(page)
    bench.signal(signal.SIGSTOP)
    aged(page, "main.heard-old")
    expect(page.locator(".instruction-tag")).to_have_text("Not up to date")
    expect(page.get_by_role("status")).to_contain_text("Nothing heard from the station")
    assert page.locator(".instruction").evaluate("(one) => getComputedStyle(one).borderTopStyle") == "dashed"
    assert page.locator(".instruction").bounding_box() == box, "the notice lies over the page and moves nothing"
    assert page.locator(".contact p").evaluate("""(one) => {
      const { top, bottom } = one.getBoundingClientRect();
      return top >= 0 && bottom <= innerHeight;
    }""")
    page.clock.resume()
    bench.signal(signal.SIGCONT)
    expect(page.locator(".instruction-tag")).to_have_text("Ready")


def test_a_page_that_slept_shows_what_happened_meanwhile(bench: Station, open_context: OpenContext) -> None:
    """Frozen as a phone freezes a page behind a locked screen: no script runs until it is shown again."""
    context, _ = open_context(bench)
    page = context.new_page()
    page.goto(bench.url)
    asked(page, "begin")
    tool = context.new_cdp_session(page)
    tool.send("Emulation.setFocusEmulationEnabled", {"enabled": False})
    tool.send("Page.setWebLifecycleState", {"state": "frozen"})
    bench.act(act="begin").raise_for_status()
    work(bench, until="pour", repeat=1)
    bench.act(act="portion_added", portion=1).raise_for_status()
    tool.send("Page.setWebLifecycleState", {"state": "active"})
    expect_total(page, "5 cm³")
    page.wait_for_selector("main.heard-fresh")


def test_an_instruction_is_announced_once_and_not_with_every_sample(bench: Station, open_page: OpenPage) -> None:
    page = open_page(bench)
    page.evaluate("""() => {
      const words = document.querySelector('.instruction-words');
      window.said = [];
      new MutationObserver(() => window.said.push(words.textContent))
        .observe(words, { subtree: true, childList: true, characterData: true });
    }""")
    bench.act(act="begin").raise_for_status()
    work(bench, until="rinse", repeat=1)
    asked(page, "rinsed")
    said = page.evaluate("window.said")
    assert len(said) >= 8
    assert all(words != after for words, after in pairwise(said)), "nothing is said twice in a row"
    assert page.get_attribute(".instruction-words", "aria-live") == "polite"
    assert page.get_attribute(".instruction-words", "aria-atomic") == "true"


MOVING = """(() => {
  window.lasts_ms = [];
  const note = ({ target }) => {
    for (const one of target.getAnimations()) {
      const { duration, iterations } = one.effect.getComputedTiming();
      window.lasts_ms.push(duration * iterations);
    }
  };
  document.addEventListener('animationstart', note, true);
})()"""


def test_reduced_motion_moves_nothing_and_no_movement_outlasts_five_seconds(
    bench: Station, open_context: OpenContext
) -> None:
    """WCAG 2.2, 2.2.2: what moves by itself for longer needs a way to stop it."""
    bench.act(act="alkali_left_out").raise_for_status()  # water runs over the probe in the next picture
    lasts_ms: list[list[float]] = []
    for motion in ("no-preference", "reduce"):
        context, _ = open_context(bench, reduced_motion=motion)
        context.add_init_script(MOVING)
        page = context.new_page()
        page.goto(bench.url)
        page.locator("svg.drawn-wipe").first.wait_for()
        if motion == "no-preference":
            page.wait_for_function("() => window.lasts_ms.length > 0")
        else:
            page.wait_for_timeout(MEANT_MS)
        lasts_ms.append(page.evaluate("window.lasts_ms"))
    assert max(lasts_ms[0]) <= 5_000
    assert lasts_ms[1] == []


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_forced_colours_keep_button_and_drawing_apart_from_the_ground(
    bench: Station, open_page: OpenPage, scheme: str
) -> None:
    page = open_page(bench, forced_colors="active", color_scheme=scheme)
    button = asked(page, "begin")
    style = button.evaluate("(one) => [getComputedStyle(one).borderTopColor, getComputedStyle(one).backgroundColor]")
    assert style[0] != style[1]
    stroke, ground = page.locator(".instruction .drawn").evaluate(
        "(one) => [getComputedStyle(one).stroke, getComputedStyle(document.body).backgroundColor]"
    )
    assert stroke != ground


def test_at_twice_the_letters_nothing_is_lost(bench: Station, open_page: OpenPage) -> None:
    """200 % zoom of a 1280 px window leaves 640 CSS pixels, as WCAG 2.2 (1.4.4) asks for; 400 % leaves 320 (1.4.10)."""
    for width in (640, 320):
        page = open_page(bench, viewport=ViewportSize(width=width, height=512))
        assert page.evaluate("document.documentElement.scrollWidth <= innerWidth")
        button = asked(page, "begin")
        button.scroll_into_view_if_needed()
        expect(button).to_be_in_viewport(ratio=1)
        lost = page.locator(".instruction-words").evaluate("(one) => one.scrollHeight - one.clientHeight")
        assert lost <= 1
        expect_accessible(page)
