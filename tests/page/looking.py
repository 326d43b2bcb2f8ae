"""Looks at every text of every view, for tests of the page's languages and units."""

import re
import time
from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page

from tests.conftest import PATIENCE_S
from tests.page.conftest import Station, expect_accessible, serve_settings, work

PLACES = ("guide", "record", "big", "settings")

# This plan's cup takes about as much heat as the liquid, the virtual one next to none: the station asks a question.
ODD_CUP = """
[cup]
heat_capacity_j_k = 160
"""
PORTIONS = (
    """
results = "at once"
repeats = 1
[acid]
name = "nitric acid"
volume_cm3 = 25
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.8
[portions]
volume_cm3 = 5
count = 9
"""
    + ODD_CUP
)
OWN_FIRST = PORTIONS.replace("at once", "after own reading").replace(ODD_CUP, "")
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

# Every text of the page, seen or only heard, as [where, text]. Names of languages and units, and formulae, stay as they
# are.
TEXTS = """() => {
  const found = [];
  const where = (element) => `<${element.tagName.toLowerCase()} class="${element.getAttribute('class') ?? ''}">`;
  const names = 'script, style, noscript, .answer-reaction, option[lang], option[value="cm3"], option[value="mL"]';
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


def served(tmp_path: Path) -> Iterator[Serve]:
    """Start fast stations, with a name of their own that has no letters; stop them afterwards."""
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


def opened(page: Page, station: Station, after: str = "", *, speaks: str = "") -> Page:
    """Open the page; wait until it speaks a language whose words it has to fetch."""
    page.goto(f"{station.url}{after}")
    page.wait_for_selector(f"html[lang^='{speaks}'] main > *" if speaks else "main > *")
    return page


def texts(page: Page) -> list[tuple[str, str]]:
    """Every text of the page as it is now, with where it stands."""
    page.wait_for_function(f"() => ({TEXTS})().length > 5")
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
            page.evaluate(UNFOLD)
            self.note(page, f"{stage} #{place}")
            if self.accessible:
                expect_accessible(page)

    def note(self, page: Page, seen: str) -> None:
        """Note what is wrong on the page as it is now."""
        for where, text in texts(page):
            if self.wrong(text):
                self.found.setdefault(f"{where} {text}", seen)
        if not page.evaluate("document.documentElement.scrollWidth <= innerWidth"):
            self.found.setdefault(f"{seen} is wider than the screen", "too wide")

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
    end = time.monotonic() + 5 * PATIENCE_S
    while time.monotonic() < end:
        state = station.state()
        if state["result"] is not None and len(state["result"]["repeats"]) == len(state["repeats"]):
            return
        time.sleep(0.3)
    pytest.fail("the results never came")


def act_when_possible(station: Station, **act: object) -> None:
    """Act; a reading may have to wait for a fresh sample."""
    end = time.monotonic() + PATIENCE_S
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
