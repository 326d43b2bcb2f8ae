"""The page in other languages and units: nothing that it says stays outside the catalogue."""

import re
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, expect

from tests.page.conftest import WORK_S, OpenContext, Station, expect_accessible, serve_settings, work

PLACES = ("guide", "record", "big", "settings")

# The virtual cup's own alkali is about twice as strong, so that the station asks a question.
PORTIONS = """
results = "at once"
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.2
[portions]
volume_cm3 = 5
count = 9
"""
OWN_FIRST = PORTIONS.replace("at once", "after own reading").replace("0.2", "0.4")
OWN_JUDGEMENT = 'prompts = "own judgement"\n' + PORTIONS
ONCE = """
kind = "once"
results = "at once"
repeats = 1
[liquid]
name = "hydrochloric acid"
volume_cm3 = 50
concentration_mol_dm3 = 0.5
[addition]
name = "sodium hydroxide"
volume_cm3 = 50
concentration_mol_dm3 = 0.5
[timing]
before_s = 90
after_s = 240
"""

# Every text of the page, seen or only heard, as [where, text]. Names of languages and units stay what they are.
TEXTS = """() => {
  const found = [];
  const where = (element) => `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}">`;
  const names = 'script, style, noscript, option[lang], option[value="cm3"], option[value="mL"]';
  const walker = document.createTreeWalker(document, NodeFilter.SHOW_TEXT);
  for (let node = walker.nextNode(); node; node = walker.nextNode()) {
    const parent = node.parentElement;
    if (parent && !parent.closest(names) && node.data.trim()) found.push([where(parent), node.data.trim()]);
  }
  for (const element of document.querySelectorAll('body *')) {
    for (const name of ['aria-label', 'aria-valuetext', 'aria-roledescription', 'title', 'placeholder', 'alt']) {
      const text = element.getAttribute(name);
      if (text?.trim()) found.push([`${where(element)} ${name}`, text.trim()]);
    }
  }
  return found;
}"""
UNFOLD = """() => {
  for (const details of document.querySelectorAll('details')) details.open = true;
  for (const button of document.querySelectorAll('button[aria-expanded="false"]')) button.click();
}"""

PLAIN = re.compile(r"[A-Za-z]|\d\.\d")
CODE = re.compile(r"(H|EUH|GHS)\d+|\.[a-z]+|5 · \d+ \w+ \d{4}")
ENGLISH = re.compile(
    r"\b(the|is|are|of|and|your|its?|not|to|by|has|have|with|this|been|yes|no|repeat|reading|lines?|about|ago|at)\b",
    re.IGNORECASE,
)
SOURCE = re.compile(r"\(\d{4}\)")

Serve = Callable[..., Station]


@pytest.fixture
def serve(tmp_path: Path) -> Iterator[Serve]:
    """Start fast stations, with a name of their own that has no letters."""
    started: list[Station] = []

    def start(plan: str, *, more: str = "", driver: str = "virtual") -> Station:
        folder = tmp_path / str(len(started))
        folder.mkdir()
        path = serve_settings(folder, "127.0.0.1", plan=plan)
        text = path.read_text(encoding="utf-8").replace("Bench 5", "5").replace('"virtual"', f'"{driver}"')
        path.write_text(f"{text}\n{more}", encoding="utf-8")
        station = Station("serve", "--config", str(path))
        station.start()
        started.append(station)
        return station

    yield start
    for station in started:
        station.stop()


def opened(page: Page, station: Station, after: str = "") -> Page:
    page.goto(f"{station.url}{after}")
    page.wait_for_selector("main > *")
    return page


def texts(page: Page) -> list[tuple[str, str]]:
    """Every text of the page as it is now, with where it stands."""
    page.evaluate(UNFOLD)
    page.wait_for_function(f"({TEXTS})().length > 5")
    page.wait_for_timeout(200)
    return [(str(where), str(text)) for where, text in page.evaluate(TEXTS)]


class Looking:
    """Goes through the views and notes what is wrong there."""

    def __init__(self, wrong: Callable[[str], bool], *, accessible: bool = False) -> None:
        self.wrong, self.accessible = wrong, accessible
        self.found: dict[str, str] = {}

    def look(self, page: Page, stage: str, *, everywhere: bool = True) -> None:
        """Look at every view, or at those that follow the instruction, and come back to the first."""
        for place in (*PLACES, "") if everywhere else ("big", ""):
            page.evaluate("(place) => { location.hash = place; }", place)
            page.wait_for_selector(f"main.at-{place or 'bench'} > *")
            for where, text in texts(page):
                if self.wrong(text):
                    self.found.setdefault(f"{where} {text}", f"{stage} #{place}")
            if not page.evaluate("document.documentElement.scrollWidth <= innerWidth"):
                self.found.setdefault(f"{stage} #{place} is wider than the screen", "too wide")
            if self.accessible:
                expect_accessible(page)

    def expect_nothing(self) -> None:
        """Fail with all that was wrong."""
        assert not self.found, "\n".join(f"{seen}: {text}" for text, seen in self.found.items())


def in_plain_letters(text: str) -> bool:
    return PLAIN.search(text) is not None and CODE.fullmatch(text) is None


def in_english(text: str) -> bool:
    """Whether there is an English word in it, or a decimal point."""
    english = ENGLISH.search(text) is not None or re.search(r"\d\.\d", text) is not None
    return english and SOURCE.search(text) is None


def wait_for_results(station: Station) -> None:
    """Wait until every repeat has results."""
    end = time.monotonic() + WORK_S
    while time.monotonic() < end:
        state = station.state()
        if state["result"] is not None and len(state["result"]["repeats"]) == len(state["repeats"]):
            return
        time.sleep(0.3)
    pytest.fail(f"no results within {WORK_S:.0f} s")


def act_when_possible(station: Station, **act: object) -> None:
    """Act; a reading may have to wait for a fresh sample."""
    end = time.monotonic() + WORK_S
    while (reply := station.act(**act)).is_error and time.monotonic() < end:
        time.sleep(0.2)
    reply.raise_for_status()


def follow(station: Station, page: Page, looking: Looking) -> None:
    """Do the practical, and look wherever there is something new to see."""
    page.wait_for_selector("main.state-ready")
    looking.look(page, "ready")
    work(station, until="pour", repeat=1)
    page.wait_for_selector("main.state-pour")
    looking.look(page, "pour", everywhere=False)
    station.act(act="portion_added", portion=1).raise_for_status()
    page.wait_for_selector(".question-asked")
    station.act(act="portion_unsure", repeat=1, portion=1, reason="spilled").raise_for_status()
    looking.look(page, "question", everywhere=False)
    station.act(act="pause").raise_for_status()
    page.wait_for_selector("main.state-paused")
    looking.look(page, "paused", everywhere=False)
    station.act(act="resume").raise_for_status()
    work(station, until="done", repeat=1)
    wait_for_results(station)
    page.wait_for_selector("main.state-done")
    looking.look(page, "done")


def test_every_word_comes_from_the_catalogue(serve: Serve, open_context: OpenContext) -> None:
    """In the pseudo-locale no text has a plain letter or a decimal point, whatever the practical is at."""
    station = serve(PORTIONS)
    page = opened(open_context(station)[0].new_page(), station, "?language=pseudo")
    assert page.evaluate("document.documentElement.lang") == "en-x-pseudo"
    looking = Looking(in_plain_letters)
    follow(station, page, looking)
    looking.expect_nothing()


def test_a_practical_in_german(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = opened(open_context(station, locale="de-AT")[0].new_page(), station)
    assert page.evaluate("document.documentElement.lang") == "de"
    expect(page.locator(".instruction-text")).to_contain_text("Gib 25\u00a0cm³ Salpetersäure in den Becher.")
    looking = Looking(in_english, accessible=True)
    follow(station, page, looking)
    looking.expect_nothing()


def test_one_addition_in_both(serve: Serve, open_context: OpenContext) -> None:
    station = serve(ONCE)
    context, _ = open_context(station, locale="de-DE")
    pages = {"German": opened(context.new_page(), station)}
    pages["pseudo"] = opened(context.new_page(), station, "?language=pseudo")
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
    pages = {"German": opened(context.new_page(), station)}
    pages["pseudo"] = opened(context.new_page(), station, "?language=pseudo")
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
    pages = {"German": opened(context.new_page(), station)}
    pages["pseudo"] = opened(context.new_page(), station, "?language=pseudo")
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


def test_millilitres_and_molar_by_choice_of_the_device(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = opened(open_context(station)[0].new_page(), station, "#settings")
    choice = page.locator("select").filter(has=page.locator("option[value=mL]"))
    choice.focus()
    page.keyboard.type("mL")
    expect(page.locator("header")).to_contain_text("25\u00a0mL")
    expect(choice).to_be_focused()
    page.reload()
    page.wait_for_selector("main > *")
    looking = Looking(lambda text: re.search("cm³|dm³", text) is not None)
    follow(station, page, looking)
    looking.expect_nothing()
    assert "mL" in page.inner_text("main")


def test_a_station_may_set_language_and_units(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS, more='page.language = "de"\npage.units = "mL"')
    page = opened(open_context(station, locale="en-GB")[0].new_page(), station)
    asked = page.locator(".instruction-text")
    expect(asked).to_contain_text("Gib 25\u00a0mL Salpetersäure in den Becher.")
    page.evaluate("location.hash = 'settings'")
    page.locator("select").filter(has=page.locator("option[value=de]")).select_option("en")
    page.evaluate("location.hash = ''")
    expect(asked).to_contain_text("Put 25\u00a0mL of nitric acid in the cup.")
    page.reload()
    expect(asked).to_contain_text("Put 25\u00a0mL of nitric acid in the cup.")


def test_a_device_that_keeps_nothing_speaks_all_the_same(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    context, _ = open_context(station, locale="de-DE")
    context.add_init_script(
        "Object.defineProperty(window, 'localStorage', { get() { throw new DOMException('no', 'SecurityError'); } })"
    )
    page = opened(context.new_page(), station, "#settings")
    page.locator("select").filter(has=page.locator("option[value=en]")).select_option("en")
    page.evaluate("location.hash = ''")
    expect(page.locator(".instruction-text")).to_contain_text("Put 25")


def test_without_its_german_words_the_page_works_in_english(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    context, watched = open_context(station, locale="de-DE")
    watched.expected = ("Failed to load resource",)
    context.route(re.compile(r"/page/de-[^/]*\.js$"), lambda route: route.abort())
    page = opened(context.new_page(), station)
    expect(page.locator(".instruction-text")).to_contain_text("Put 25")
    assert page.evaluate("document.documentElement.lang") == "en"


def test_english_carries_no_other_language(serve: Serve, open_context: OpenContext) -> None:
    station = serve(PORTIONS)
    page = open_context(station)[0].new_page()
    fetched: list[str] = []
    page.on("request", lambda request: fetched.append(request.url.rsplit("/", 1)[-1]))
    opened(page, station)
    page.wait_for_selector(".instruction-text")
    assert any(name.startswith("page-") for name in fetched)
    assert not [name for name in fetched if name.startswith(("de-", "pseudo-"))]
