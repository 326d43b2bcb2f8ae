"""Hands on the page, and benches to lay them on: what several tests of the doing side share."""

import socket
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Locator, Page

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
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    settings = folder / "station.toml"
    if plan:
        (folder / "plan.toml").write_text(plan, encoding="utf-8")
    own = ['plan = "plan.toml"'] if plan else []
    own += ['bench.name = "Bench 5"', 'server.host = "127.0.0.1"', f"server.port = {port}"]
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


def asked(page: Page, act: str, portion: int | None = None) -> Locator:
    """The one button, once it asks for this act."""
    button = page.locator(f".done[data-act={act}]" + ("" if portion is None else f'[data-portion="{portion}"]'))
    button.wait_for()
    return button


def press(page: Page, act: str, portion: int | None = None) -> None:
    """Press the one button as a person does: not within the moment in which it took on its meaning."""
    button = asked(page, act, portion)
    page.wait_for_timeout(MEANT_MS)
    button.click()


def correct(page: Page, name: str) -> None:
    """Open the corrections and choose one."""
    page.get_by_role("button", name="Correct, pause or finish").click()
    page.get_by_role("button", name=name, exact=True).click()


def go_to(page: Page, place: str) -> None:
    """Go to another view by the menu."""
    page.get_by_role("button", name="Menu").click()
    page.get_by_role("navigation").get_by_role("link", name=place).click()


def total(page: Page) -> str:
    """The total added as it stands on the page."""
    return page.locator(".number", has_text="total added").locator(".value").inner_text()


def place(page: Page) -> list[float]:
    """Where on the whole page the instruction's card stands, and how high it is, in CSS pixels."""
    place: list[float] = page.locator(".instruction").evaluate("""(one) => {
      const { top, height } = one.getBoundingClientRect();
      return [Math.round(top + scrollY), Math.round(height)];
    }""")
    return place
