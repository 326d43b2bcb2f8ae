"""The bench as an instrument: what counts while a repeat is under way is in one view, at every size, in every state.

One station a kind of practical and one page a language go through the states; in each the pages take all sizes in turn.
"""

import random
import re
from collections.abc import Iterator
from contextlib import ExitStack, contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, expect

from tests.conftest import PATIENCE_S
from tests.page.conftest import Station, Watched, expect_accessible, work
from tests.page.hands import serving
from tests.page.looking import ODD_CUP, ONCE

SIZES = ((360, 550), (360, 660), (390, 760), (740, 340), (768, 1024), (1280, 640), (1366, 650), (1920, 940))
"""Common screens, the browser's own bars taken off."""
DRAWN = 6
"""So many more are drawn in each state from all that are allowed, the same in every run."""
LARGE = ((768, 1024), (1280, 640), (1920, 940))
"""Where letters of twice the size overlap nothing, though not everything is in one view."""
LANGUAGES = ("en", "de")
ALWAYS = ("instruction", "temperature", "total", "place", "trace")
SPEED = 2.5
"""A settle lasts some 15 s at this speed: long enough for all sizes in both languages."""

PLAN = """
repeats = 2
{more}
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = {alkali}
[portions]
volume_cm3 = {portion}
count = {count}
"""
PORTIONS = PLAN.format(more="", alkali=0.4, portion=12.5, count=3)
OWN_JUDGEMENT = PLAN.format(more='prompts = "own judgement"', alkali=0.4, portion=12.5, count=3)
SOLID = """
kind = "once"
results = "at once"
repeats = 2
[liquid]
name = "water"
volume_cm3 = 50.0
[addition]
name = "potassium chloride"
mass_g = 4.0
[timing]
before_s = 90
after_s = 90
"""
RATIOS = """
kind = "ratios"
[acid]
name = "hydrochloric acid"
concentration_mol_dm3 = 0.6
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 0.6
[mixtures]
total_cm3 = 50
first_cm3 = 10
step_cm3 = 6
count = 6
[timing]
before_s = 90
after_s = 120
"""
ODD = PLAN.format(more="", alkali=0.6, portion=8.0, count=4) + ODD_CUP

# What is wrong with the places of these parts: outside the window, over one another, or with words that are cut off.
LOOK = """(names) => {
  const wrong = [];
  const boxes = names.map((name) => {
    const found = document.querySelectorAll(`[data-testid="${name}"]`);
    if (found.length !== 1) { wrong.push(`${name}: ${found.length} of them`); return null; }
    const { left, top, right, bottom } = found[0].getBoundingClientRect();
    if (right - left < 20 || bottom - top < 10) wrong.push(`${name}: too small, ${right - left} x ${bottom - top}`);
    if (left < -0.5 || top < -0.5 || right > innerWidth + 0.5 || bottom > innerHeight + 0.5) {
      wrong.push(`${name}: outside, ${[left, top, right, bottom].map(Math.round)} of ${innerWidth} x ${innerHeight}`);
    }
    if (getComputedStyle(found[0]).visibility !== 'visible') wrong.push(`${name}: hidden`);
    for (const part of [found[0], ...found[0].querySelectorAll('p, h2, dt, .value, .age')]) {
      const room = part.clientWidth;
      if (room > 0 && part.scrollWidth > room + 1) wrong.push(`${name}: cut, ${part.className}`);
    }
    return { name, left, top, right, bottom };
  }).filter(Boolean);
  boxes.forEach((one, index) => {
    for (const other of boxes.slice(index + 1)) {
      const wide = Math.min(one.right, other.right) - Math.max(one.left, other.left);
      const high = Math.min(one.bottom, other.bottom) - Math.max(one.top, other.top);
      if (wide > 0.5 && high > 0.5) wrong.push(`${one.name} over ${other.name}`);
    }
  });
  for (const words of document.querySelectorAll('.instruction-words, .question-asked .question-words')) {
    const shown = getComputedStyle(words).visibility === 'visible';
    if (shown && words.scrollHeight > words.clientHeight + 1) wrong.push('words cut off');
  }
  const text = document.querySelector('[data-testid=instruction]');
  if (text && parseFloat(getComputedStyle(text).fontSize) < 15) wrong.push('the instruction is too small to read');
  if (document.documentElement.scrollWidth > innerWidth) wrong.push('wider than the window');
  if (scrollY !== 0) wrong.push('scrolled');
  return wrong;
}"""
# The middle of the plot of the live trace and what is drawn in it.
TRACE = """() => {
  const trace = document.querySelector('[data-testid=trace]');
  const box = trace.querySelector('svg').getBoundingClientRect();
  const band = trace.querySelector('.settle-band');
  return {
    drawn: trace.querySelector('.trace').getAttribute('d').length,
    summary: trace.querySelector('desc').textContent,
    band: band && band.getBoundingClientRect().height,
    inside: !band || (band.getBoundingClientRect().top >= box.top && band.getBoundingClientRect().bottom <= box.bottom),
  };
}"""

# What stands beyond either side of the window: parts that scroll within their frame are left out.
CUT = """() => [...document.querySelectorAll('main td, main th, main p, main dd, main button, main svg text')]
  .filter((one) => !one.closest('.table-frame, .visually-hidden'))
  .map((one) => [one.textContent, one.getBoundingClientRect()])
  .filter(([, { left, right, width }]) => width > 0 && (left < -0.5 || right > innerWidth + 0.5))
  .map(([text]) => text)"""
AXIS = "(all) => all.map((one) => one.textContent)"
SUMMARIES = """() => [...document.querySelectorAll('[data-testid=trace] svg, [data-testid=curve] svg[role=img]')].map(
  (chart) => (chart.querySelector('desc')?.textContent ?? '').trim()
)"""


def drawn(seed: str) -> list[tuple[int, int]]:
    """Sizes from 360 x 550 upright and from 640 x 340 on its side up to 1920 x 1080."""
    draw = random.Random(seed)
    sizes = []
    for _ in range(DRAWN):
        if draw.random() < 0.5:
            width = draw.randint(360, 1080)
            sizes.append((width, draw.randint(max(550, width), 1080)))
        else:
            height = draw.randint(340, 1080)
            sizes.append((draw.randint(max(640, height + 1), 1920), height))
    return sizes


class Screens:
    """The bench's page in every language, each going through all sizes."""

    def __init__(self, station: Station, pages: dict[str, Page]) -> None:
        self.station, self.pages = station, pages
        self.wrong: list[str] = []

    def look(self, state: str, *parts: str, ready: str = "") -> None:
        """Note what is wrong in this state; `ready` is there once the page has it."""
        for language, page in self.pages.items():
            page.wait_for_selector(ready or f"main.state-{state}")
            for size in (*SIZES, *drawn(f"{state} {language}")):
                self.look_at(page, f"{state} {language}", size, parts)
            page.evaluate("() => { document.documentElement.style.fontSize = '200%'; }")
            for size in LARGE:
                self.look_at(page, f"{state} {language} large", size, parts, may_reach_out=True)
            page.evaluate("() => { document.documentElement.style.fontSize = ''; }")
            page.set_viewport_size(ViewportSize(width=360, height=660))

    def look_at(
        self, page: Page, where: str, size: tuple[int, int], parts: tuple[str, ...], *, may_reach_out: bool = False
    ) -> None:
        """Note what is wrong at this size."""
        width, height = size
        page.set_viewport_size(ViewportSize(width=width, height=height))
        # Letters are fitted, and the chart is drawn anew, once the window has its new size.
        page.evaluate("() => new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))")
        found: list[str] = page.evaluate(LOOK, list(parts))
        found = [each for each in found if not (may_reach_out and "outside" in each)]
        self.wrong += [f"{where} {width} x {height}: {each}" for each in found]

    def expect_nothing(self) -> None:
        assert not self.wrong, "\n".join(self.wrong)

    def accessible(self, *, dark: bool = True) -> None:
        """No violation that axe knows, in light and dark; each chart is summed up in one sentence."""
        page = self.pages["en"]
        for summary in page.evaluate(SUMMARIES):
            assert len(re.findall(r"[.!?](?=\s|$)", summary)) == 1, summary
        expect_accessible(page)
        if not dark:
            return
        page.emulate_media(color_scheme="dark")
        expect_accessible(page)
        page.emulate_media(color_scheme="light")


@contextmanager
def screens(browser: Browser, folder: Path, plan: str, *lines: str) -> Iterator[Screens]:
    """A station with this plan, and its page in every language."""
    settings = lines or ('probe.driver = "virtual"', f"virtual.speed = {SPEED}")
    with serving(folder, *settings, plan=plan) as station, ExitStack() as stack:
        pages, watched = {}, Watched(station)
        for language in LANGUAGES:
            context = browser.new_context(viewport=ViewportSize(width=360, height=660), reduced_motion="reduce")
            stack.callback(context.close)
            context.set_default_timeout(1000 * PATIENCE_S)
            watched.watch(context)
            pages[language] = context.new_page()
            pages[language].goto(f"{station.url}?language={language}")
            pages[language].wait_for_selector(f"html[lang^={language}] main > *")
        yield Screens(station, pages)
        assert watched.wrong == []


def test_portions_are_in_one_view_in_every_state(browser: Browser, tmp_path: Path) -> None:
    with screens(browser, tmp_path, PORTIONS) as seen:
        station, page = seen.station, seen.pages["en"]
        for act, then in (("alkali_left_out", "alkali_temperature"), ("probe_rinsed", "probe_rinsed")):
            seen.look("ready", *ALWAYS[:4], "act", ready=f"main.state-ready .done[data-act={then}]")
            station.act(act=act).raise_for_status()
        seen.look("ready", *ALWAYS[:4], "act", ready="main.state-ready .done[data-act=begin]")
        seen.accessible()
        station.act(act="begin").raise_for_status()
        page.wait_for_selector(".settle-band", state="attached")
        expect(page.get_by_test_id("total")).to_contain_text("0 cm³")
        seen.look("start", *ALWAYS)
        seen.accessible()
        work(station, until="pour", repeat=1)
        seen.look("pour", *ALWAYS, "act")
        seen.accessible()
        assert page.get_by_test_id("instruction").evaluate("(one) => one.tagName") == "H2"
        station.act(act="portion_added", portion=1).raise_for_status()
        page.wait_for_selector("main.state-settle")
        page.wait_for_selector(".settle-band", state="attached")
        found = page.evaluate(TRACE)
        assert found["inside"]
        assert found["band"] >= 4, "a band that is seen"
        assert found["drawn"] > 50
        assert found["summary"].count("°C") == 2
        assert found["summary"].endswith(".")
        seen.look("settle", *ALWAYS)
        seen.accessible()
        station.act(act="pause").raise_for_status()
        seen.look("paused", *ALWAYS, "act")
        seen.accessible()
        station.act(act="resume").raise_for_status()
        work(station, until="rinse", repeat=1, within_s=10 * PATIENCE_S)
        for act in ("cup_emptied", "cup_rinsed", "rinsed"):
            seen.look("rinse", *ALWAYS, "act", ready=f"main.state-rinse .done[data-act={act}]")
            seen.accessible()
            station.act(act=act).raise_for_status()
        seen.expect_nothing()


def test_one_mixing_is_in_one_view_in_every_state(browser: Browser, tmp_path: Path) -> None:
    with screens(browser, tmp_path, ONCE, 'probe.driver = "virtual"', "virtual.speed = 6") as seen:
        station, page = seen.station, seen.pages["en"]
        station.act(act="begin").raise_for_status()
        page.wait_for_selector(".settle-band", state="attached")
        expect(page.get_by_test_id("total")).to_contain_text("0 cm³")
        seen.look("start", *ALWAYS)
        work(station, until="pour", repeat=1)
        seen.look("pour", *ALWAYS, "act", ready="main.state-pour .done")
        station.act(act="portion_added", portion=1).raise_for_status()
        seen.look("settle", *ALWAYS)
        assert page.evaluate(TRACE)["band"] is None, "nothing has to settle after the mixing"
        seen.expect_nothing()


def test_a_weighed_solid_is_in_one_view_from_the_first_state_to_the_last(browser: Browser, tmp_path: Path) -> None:
    """Two repeats: rinsing between them, then results in two languages on a phone, nothing cut, each with its comma."""
    with screens(browser, tmp_path, SOLID, 'probe.driver = "virtual"', "virtual.speed = 8") as seen:
        station, german = seen.station, seen.pages["de"]
        seen.look("ready", *ALWAYS[:4], "act", ready="main.state-ready .done")
        seen.accessible(dark=False)
        for repeat in (1, 2):
            if repeat == 1:
                station.act(act="begin").raise_for_status()
                seen.look("start", *ALWAYS)
                seen.accessible(dark=False)
            work(station, until="pour", repeat=repeat)
            if repeat == 1:
                seen.look("pour", *ALWAYS, "act", ready=".mix-now input")
                seen.accessible()
            station.act(act="portion_added", portion=1, mass_g=4.1, places=2).raise_for_status()
            if repeat == 1:
                seen.look("settle", *ALWAYS)
                seen.accessible(dark=False)
                expect(german.get_by_test_id("total")).to_contain_text("4,10 g")
                work(station, until="rinse", repeat=1, within_s=10 * PATIENCE_S)
                for act in ("cup_emptied", "cup_rinsed", "rinsed"):
                    seen.look("rinse", *ALWAYS, "act", ready=f"main.state-rinse .done[data-act={act}]")
                    station.act(act=act).raise_for_status()
        work(station, until="done", repeat=2, within_s=10 * PATIENCE_S)
        station.final_state()
        for language, page in seen.pages.items():
            page.wait_for_selector("main.state-done .result-heat")
            for size in (*SIZES, (390, 844)):
                seen.look_at(page, f"done {language}", size, ())
                seen.wrong += [f"done {language} {size}: cut: {each}" for each in page.evaluate(CUT)]
            numbers = " ".join(page.locator(".figure svg .grid + text").evaluate_all(AXIS))
            assert ("," if language == "en" else ".") not in numbers, "the numbers of an axis are of one language"
            expect_accessible(page)
        seen.expect_nothing()


def test_a_mixture_of_many_is_in_one_view_in_every_state(browser: Browser, tmp_path: Path) -> None:
    """The second one: by then there is a point in the graph, and the volumes are others than at first."""
    with screens(browser, tmp_path, RATIOS, 'probe.driver = "virtual"', "virtual.speed = 8") as seen:
        station = seen.station
        seen.look("ready", *ALWAYS[:4], "act", ready="main.state-ready .done")
        station.act(act="alkali_left_out").raise_for_status()
        station.act(act="probe_rinsed").raise_for_status()
        station.act(act="begin").raise_for_status()
        work(station, until="rinse", repeat=1, within_s=10 * PATIENCE_S)
        for act in ("cup_emptied", "cup_rinsed", "rinsed"):
            seen.look("rinse", *ALWAYS, "act", ready=f"main.state-rinse .done[data-act={act}]")
            station.act(act=act).raise_for_status()
        seen.look("start", *ALWAYS)
        work(station, until="pour", repeat=2)
        seen.look("pour", *ALWAYS, "act")
        station.act(act="portion_added", portion=1).raise_for_status()
        seen.look("settle", *ALWAYS)
        seen.accessible()
        seen.expect_nothing()


def test_own_judgement_has_a_trace_without_a_band(browser: Browser, tmp_path: Path) -> None:
    with screens(browser, tmp_path, OWN_JUDGEMENT) as seen:
        station = seen.station
        station.act(act="begin").raise_for_status()
        seen.look("start", *ALWAYS, "act")
        station.act(act="read_now", portion=0).raise_for_status()
        seen.look("pour", *ALWAYS, "act")
        station.act(act="portion_added", portion=1).raise_for_status()
        seen.look("settle", *ALWAYS, "act")
        for page in seen.pages.values():
            assert page.locator(".settle-band").count() == 0
        seen.expect_nothing()


def test_a_lost_probe_is_said_in_the_same_place(browser: Browser, tmp_path: Path) -> None:
    virtual = ('probe.driver = "virtual"', f"virtual.speed = {SPEED}", 'virtual.faults = "gone@30+600"')
    with screens(browser, tmp_path, PORTIONS, *virtual) as seen:
        seen.station.act(act="begin").raise_for_status()
        seen.look("lost", *ALWAYS, ready=".own-thermometer")
        seen.look("lost for long", *ALWAYS, ready=".temperature.is-frozen")
        seen.accessible()
        seen.expect_nothing()


def test_a_question_takes_the_instructions_place_until_it_is_put_off(browser: Browser, tmp_path: Path) -> None:
    parts = ("question", "temperature", "total", "place", "trace")
    with screens(browser, tmp_path, ODD, 'probe.driver = "virtual"', "virtual.speed = 12") as seen:
        station, page = seen.station, seen.pages["en"]
        station.act(act="begin").raise_for_status()
        work(station, until="pour", repeat=1)
        page.wait_for_selector("main.state-pour")
        before = page.locator(".instruction-body").bounding_box()
        station.act(act="portion_added", portion=1).raise_for_status()
        seen.look("question", *parts, ready=".question-asked")
        seen.accessible()
        assert page.locator(".instruction-body").bounding_box() == before
        assert page.get_by_test_id("instruction").count() == 0
        expect(page.locator(".done")).to_be_hidden()
        page.wait_for_timeout(650)
        page.get_by_role("button", name="Later").click()
        expect(page.get_by_test_id("act")).to_be_visible()
        expect(page.get_by_test_id("instruction")).to_be_visible()
        assert len(station.state()["questions"]) == 1, "put off is not answered"
        for size in SIZES:
            seen.look_at(page, "put off", size, (*ALWAYS, "act"))
        page.get_by_role("button", name="A question waits").click()
        expect(page.get_by_test_id("question")).to_be_visible()
        seen.expect_nothing()


def test_typed_readings_are_in_one_view_without_a_word_of_a_trace(browser: Browser, tmp_path: Path) -> None:
    parts = ("instruction", "temperature", "total", "place")
    with screens(browser, tmp_path, PORTIONS, 'probe.driver = "none"') as seen:
        station = seen.station
        station.act(act="thermometer", division_c=1).raise_for_status()
        station.act(act="begin").raise_for_status()
        seen.look("start", *parts, "curve")
        for page in seen.pages.values():
            assert page.get_by_test_id("trace").count() == 0
        station.act(act="reading", temperature_c=20, portion=0).raise_for_status()
        seen.look("pour", *parts, "curve", "act")
        station.act(act="portion_added", portion=1).raise_for_status()
        seen.look("settle", *parts, "curve")
        seen.accessible()
        seen.expect_nothing()
