"""Hands on the page, and benches to lay them on: what several tests of the doing side share."""

import time
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

import pytest
from playwright.sync_api import Locator, Page, expect
from playwright.sync_api import TimeoutError as TookTooLong

from tests.conftest import PATIENCE_S, free_port
from tests.page.conftest import Station

MEANT_MS = 650
"""A press sooner after a button took on its meaning was meant for the old one."""

SHORT_PLAN = """
repeats = {repeats}
{more}
[acid]
name = "hydrochloric acid"
volume_cm3 = 20.0
[alkali]
name = "sodium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 5.0
count = {count}
"""


def short_plan(*, repeats: int = 1, count: int = 3, more: str = "") -> str:
    """A plan with few portions, so that a test may go through all of it."""
    return SHORT_PLAN.format(repeats=repeats, count=count, more=more)


@contextmanager
def serving(folder: Path, *lines: str, plan: str = "") -> Iterator[Station]:
    """A station with these lines in its settings, on a free port."""
    settings = folder / "station.toml"
    if plan:
        (folder / "plan.toml").write_text(plan, encoding="utf-8")
    own = ['plan = "plan.toml"'] if plan else []
    own += ['bench.name = "Bench 5"', 'server.host = "127.0.0.1"', f"server.port = {free_port()}"]
    if not any(line.startswith("record.folder") for line in lines):
        own.append(f'record.folder = "{folder / "record"}"')
    settings.write_text("\n".join([*own, *lines]), encoding="utf-8")
    station = Station("serve", "--config", str(settings))
    station.start()
    try:
        yield station
    finally:
        station.stop()


VIRTUAL = ('probe.driver = "virtual"', "virtual.speed = 40.0")
BY_HAND = ('probe.driver = "none"',)


SET_UP = {"begin": ("alkali_temperature", "alkali_left_out", "probe_rinsed"), "rinsed": ("cup_emptied", "cup_rinsed")}
"""The acts of the steps on the way to a filled cup."""
ACTS = "(buttons) => buttons.map((button) => button.dataset.act)"


def asked(page: Page, act: str, portion: int | None = None) -> Locator:
    """The one button, once it asks for this act; the steps on the way to a filled cup are gone through."""
    button = page.locator(f".done[data-act={act}]" + ("" if portion is None else f'[data-portion="{portion}"]'))
    while act in SET_UP:
        steps = page.locator(", ".join(f".done[data-act={each}]" for each in SET_UP[act]))
        button.or_(steps).first.wait_for()
        if button.count():
            break
        before = steps.evaluate_all(ACTS)  # asked at once: a step that has gone meanwhile is not waited for
        page.wait_for_timeout(MEANT_MS)
        if not before or steps.evaluate_all(ACTS) != before:
            continue  # what was pressed before has only now reached the page
        (passed,) = before
        # Without waiting for the alkali's temperature where the station would take it.
        other = page.locator(".plain[data-act=alkali_left_out]")
        (other if passed == "alkali_temperature" else page.locator(f".done[data-act={passed}]")).click()
        page.locator(f".done[data-act={passed}]").wait_for(state="detached")
    button.wait_for()
    return button


def press(page: Page, act: str, portion: int | None = None) -> None:
    """Press the one button as a person does: not within the moment in which it took on its meaning."""
    button = asked(page, act, portion)
    page.wait_for_timeout(MEANT_MS)
    button.click()


def correct(page: Page, name: str, *, opened_by: str = "Change, pause or finish") -> None:
    """Open the corrections and choose one; where the next instruction closed them meanwhile, open them again."""
    chosen = page.get_by_role("button", name=name, exact=True)
    end = time.monotonic() + PATIENCE_S
    while time.monotonic() < end:
        page.get_by_role("button", name=opened_by).click()
        with suppress(TookTooLong):
            chosen.click(timeout=2000)
            return
    pytest.fail(f"nothing to correct is called {name}")


def go_to(page: Page, place: str) -> None:
    """Go to another view by the menu."""
    page.get_by_role("button", name="Menu").click()
    page.get_by_role("navigation").get_by_role("link", name=place).click()


def expect_total(page: Page, volume: str) -> None:
    """The total added stands on the page, once what was done has reached it."""
    expect(page.locator(".number", has_text="total added").locator(".value")).to_have_text(volume)


def aged(page: Page, selector: str) -> Locator:
    """Let the page's own clock, which stands still, move on second by second until this is seen."""
    seen = page.locator(selector)
    for _ in range(30):
        if seen.count():
            break
        page.clock.run_for(1_000)
    expect(seen).not_to_have_count(0)
    return seen


def standing_still(page: Page) -> None:
    """Stop the page's own clock, which was installed before it was opened."""
    # A busy machine may take long from asking the time to stopping it: the time to stop at must still lie ahead.
    page.clock.pause_at(page.evaluate("Date.now()") / 1000 + 2)


def place(page: Page) -> list[float]:
    """Where on the whole page the instruction's card stands, and how high it is, in CSS pixels."""
    place: list[float] = page.locator(".instruction").evaluate("""(one) => {
      const { top, height } = one.getBoundingClientRect();
      return [Math.round(top + scrollY), Math.round(height)];
    }""")
    return place
