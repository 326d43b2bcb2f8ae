"""A real station, a real browser. Every page that a test opens is watched: a console error, a script error or a
request to anywhere but the station fails the test that opened it.
"""

import fcntl
import json
import shutil
import signal
import subprocess
import sys
import time
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field
from importlib.resources import files
from pathlib import Path
from typing import Any

import httpx
import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import (
    Browser,
    BrowserContext,
    ConsoleMessage,
    Page,
    Request,
    ViewportSize,
    expect,
    sync_playwright,
)

from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.record.exchange import newest_practical
from tests.conftest import PATIENCE_S, free_port
from tests.records import PLAN_TEXT

STATION = Path(sys.executable).parent / "station"
FLAGS = (
    "--no-sandbox",
    "--disable-gpu",
    "--disable-quic",
    "--no-first-run",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
)
PHONE = ViewportSize(width=360, height=760)
PROJECTOR = ViewportSize(width=1920, height=1080)
expect.set_options(timeout=1000 * PATIENCE_S)
SET_VISIBILITY = """(state) => {
  Object.defineProperty(document, 'visibilityState', { value: state, configurable: true });
  document.dispatchEvent(new Event('visibilitychange'));
}"""


class Station:
    """A station in its own process: `demo` or `serve`; it can be held, killed and started again."""

    def __init__(self, *arguments: str) -> None:
        self.arguments = arguments
        self.url = ""
        self.record = Path()
        self.cut = False
        """Whether the test has ever held or ended it: a page that then misses it has done nothing wrong."""
        self._process: subprocess.Popen[str] | None = None

    def start(self) -> None:
        """Start the process and wait for its first line."""
        self._process = subprocess.Popen(
            [str(STATION), *self.arguments], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        assert self._process.stdout is not None
        line = self._process.stdout.readline()
        if not line:
            pytest.fail(f"station {' '.join(self.arguments)} died: {self._process.communicate()[1]}")
        if line.startswith("{"):
            told = json.loads(line)
            self.url, self.record = str(told["url"]), Path(told["record"])
        else:
            self.url = line.rsplit(maxsplit=1)[-1]
            settings = Path(self.arguments[self.arguments.index("--config") + 1])
            self.record = Path(tomllib.loads(settings.read_text(encoding="utf-8"))["record"]["folder"])
        self._answers()

    def _answers(self) -> None:
        until = time.monotonic() + PATIENCE_S
        while time.monotonic() < until:
            try:
                httpx.get(f"{self.url}api/state", timeout=PATIENCE_S).raise_for_status()
            except httpx.HTTPError:
                time.sleep(0.05)
            else:
                return
        pytest.fail(f"the station at {self.url} did not answer within {PATIENCE_S:.0f} s")

    def state(self) -> dict[str, Any]:
        """What the station itself says."""
        answer: dict[str, Any] = httpx.get(f"{self.url}api/state", timeout=PATIENCE_S).json()
        return answer

    def final_state(self) -> dict[str, Any]:
        """What the station says when the practical is done and its results are of all that was read."""
        until = time.monotonic() + 5 * PATIENCE_S
        while time.monotonic() < until:
            asked = self.state()
            if asked["state"] == "done" and asked["result"] is not None and self._answered(asked["result"]["seq"]):
                return asked
            time.sleep(0.2)
        pytest.fail("the results were never final")

    def _answered(self, seq: int) -> bool:
        """Whether results of the record up to here are results of the whole record."""
        events = list(newest_practical(self.record))
        known = [each for each in events if each.seq <= seq]
        return question_for(fold_all(known)) == question_for(fold_all(events))

    def act(self, **act: Any) -> httpx.Response:
        """Act from another device."""
        return httpx.post(f"{self.url}api/acts", json={"key": f"test {time.monotonic_ns()}", **act}, timeout=PATIENCE_S)

    def signal(self, number: signal.Signals) -> None:
        """Send the process a signal."""
        assert self._process is not None
        self.cut = True
        self._process.send_signal(number)

    def kill(self) -> None:
        """Cut the power."""
        assert self._process is not None
        self.cut = True
        self._process.kill()
        self._process.communicate()
        self._process = None

    def stop(self) -> None:
        """Stop the process if it runs."""
        if self._process is None:
            return
        self.cut = True
        self._process.send_signal(signal.SIGCONT)
        self._process.terminate()
        try:
            self._process.communicate(timeout=PATIENCE_S)
        except subprocess.TimeoutExpired:
            self.kill()


@dataclass
class Watched:
    """Pages under watch: what went wrong on them, and which streams they hold."""

    station: Station
    wrong: list[str] = field(default_factory=list)
    _streams: list[Request] = field(default_factory=list)
    opened: int = 0
    expected: tuple[str, ...] = ()
    """Parts of console messages that this test provokes, such as a refused act."""

    @property
    def open_streams(self) -> list[Request]:
        """Streams that pages still open hold now."""
        return [each for each in self._streams if not each.frame.page.is_closed()]

    def watch(self, context: BrowserContext) -> None:
        """Watch everything in a browser context."""
        context.on("console", self._said)
        context.on("weberror", lambda error: self._error(str(error.error)))
        context.on("request", self._requested)
        context.on("requestfinished", self._ended)
        context.on("requestfailed", self._ended)

    def _said(self, message: ConsoleMessage) -> None:
        if message.type == "error":
            self._error(message.text)

    def _error(self, text: str) -> None:
        # A station that is about to end answers 503.
        missed = self.station.cut and ("net::ERR_" in text or "status of 503" in text)
        if not missed and not any(part in text for part in self.expected):
            self.wrong.append(text)

    def _requested(self, request: Request) -> None:
        if not request.url.startswith((self.station.url, "data:")):
            self.wrong.append(f"request off the station: {request.url}")
        if "/api/stream" in request.url:
            self.opened += 1
            self._streams.append(request)

    def _ended(self, request: Request) -> None:
        if request in self._streams:
            self._streams.remove(request)


def work(station: Station, *, until: str, repeat: int, within_s: float = 5 * PATIENCE_S) -> dict[str, Any]:
    """Do what the bench asks for until it is in this state of this repeat."""
    end = time.monotonic() + within_s
    while time.monotonic() < end:
        state = station.state()
        if state["state"] == until and state["repeat"] == repeat:
            return state
        asked = state["instruction"]
        if asked["act"]:
            portion = {} if asked["portion"] is None else {"portion": asked["portion"]}
            station.act(act=asked["act"], **portion).raise_for_status()
        time.sleep(0.1)
    pytest.fail(f"the bench was never in the state {until} of repeat {repeat}")


def expect_accessible(page: Page) -> None:
    """No violation of any rule that axe-core knows."""
    results = Axe().run(page)
    assert results.violations_count == 0, results.generate_report()


OpenContext = Callable[..., tuple[BrowserContext, Watched]]
OpenPage = Callable[..., Page]


def chromium() -> str:
    """The browser on this machine: the one without windows opens a page for a quarter of the processor time."""
    names = ("chromium-headless-shell", "chromium", "chromium-browser")
    found = next(filter(None, map(shutil.which, names)), None)
    if found is None:
        raise FileNotFoundError("There is no browser: install Chromium (Debian: apt install chromium-headless-shell).")
    return found


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        yield browser
        browser.close()


@pytest.fixture
def open_context(browser: Browser) -> Iterator[OpenContext]:
    """Open a browser context on a station; at the end nothing may have gone wrong in it."""
    opened: list[tuple[BrowserContext, Watched]] = []

    def open_one(station: Station, **options: Any) -> tuple[BrowserContext, Watched]:
        context = browser.new_context(**{"viewport": PHONE, **options})
        context.set_default_timeout(1000 * PATIENCE_S)
        watched = Watched(station)
        watched.watch(context)
        opened.append((context, watched))
        return context, watched

    yield open_one
    for context, watched in opened:
        context.close()
        assert watched.wrong == []


@pytest.fixture
def open_page(open_context: OpenContext) -> OpenPage:
    """Open the page of a station in a context of its own."""

    def open_one(station: Station, **options: Any) -> Page:
        context, _ = open_context(station, **options)
        page = context.new_page()
        page.goto(station.url)
        page.wait_for_selector("main")
        return page

    return open_one


def serve_settings(folder: Path, host: str, *, speed: float = 50.0, plan: str = PLAN_TEXT) -> Path:
    """Settings of a station with a virtual cup, `speed` times as fast as the wall, on a free port.

    What a busy machine holds up for a tenth of a second is `speed` times as long for the cup: much faster, and there is
    no curve to find anything in.
    """
    settings = folder / "station.toml"
    (folder / "plan.toml").write_text(plan, encoding="utf-8")
    settings.write_text(
        f"""
        plan = "plan.toml"
        bench.name = "Bench 5"
        probe.driver = "virtual"
        virtual.speed = {speed}
        server.host = "{host}"
        server.port = {free_port()}
        record.folder = "{folder / "record"}"
        """,
        encoding="utf-8",
    )
    return settings


@pytest.fixture
def bench(tmp_path: Path) -> Iterator[Station]:
    """A station that waits for hands on the page."""
    settings = serve_settings(tmp_path, "127.0.0.1")
    station = Station("serve", "--config", str(settings))
    station.start()
    yield station
    station.stop()


@pytest.fixture(scope="module")
def slow_demo() -> Iterator[Station]:
    """A demo near true speed: it is under way for as long as a module's tests last."""
    station = Station("demo", "--speed", "6", "--port", "0", "--json")
    station.start()
    yield station
    station.stop()


def once_a_run(folder: Path, name: str, make: Callable[[Path], None]) -> Path:
    """Return a folder that is made once for all tests of a run, in whatever process; nobody changes what is in it."""
    runs = next(each for each in folder.parents if each.name.startswith("pytest-of-")).parent
    kept, part = runs / name, runs / f"{name}.part"
    with (runs / f"{name}.lock").open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)
        if not kept.exists():
            shutil.rmtree(part, ignore_errors=True)
            part.mkdir()
            make(part)
            part.rename(kept)
    return kept


def _demo(folder: Path) -> None:
    """Let a demo come to its results, and keep its record."""
    station = Station("demo", "--speed", "40", "--port", "0", "--json")
    station.start()
    try:
        station.final_state()
    finally:
        station.kill()
    shutil.move(station.record, folder / "record")
    shutil.rmtree(station.record.parent)


@pytest.fixture(scope="session")
def over(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    """A demo that is over, with its final results, at true speed again: for everything that only looks."""
    folder = tmp_path_factory.mktemp("over")
    shipped = (files("station") / "plans" / "neutralisation.toml").read_text(encoding="utf-8")
    plan = shipped.replace("after own reading", "at once")  # as a demo works by it
    shutil.copytree(once_a_run(folder, "demo", _demo) / "record", folder / "record")
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=1.0, plan=plan)))
    station.start()
    station.final_state()
    yield station
    station.stop()
