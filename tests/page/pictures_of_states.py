"""Pictures of every state at 360 and 1280 px, to be looked at: `python -m tests.page.pictures_of_states FOLDER`.

Real stations, real acts, a real browser. With more words only these: `portions`, `own`, `typed`, `lost`, `question`,
`results`, `once`, `practice`, `cylinder`, `room`. `--language de` shows another language.
"""

import argparse
import sys
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from pathlib import Path

from playwright.sync_api import Browser, Page, ViewportSize, expect, sync_playwright

from tests.page.conftest import FLAGS, chromium, work
from tests.page.hands import MEANT_MS, asked, serving, short_plan
from tests.page.looking import ONCE
from tests.page.room_station import TROUBLED, lesson, room_at_work
from tests.page.test_one_view import ODD, OWN_JUDGEMENT
from tests.page.test_practise import CUP, Mouse, scale, set_up

SIZES = (ViewportSize(width=360, height=640), ViewportSize(width=1280, height=720))
LONG_MS = 120_000
VIRTUAL = ('probe.driver = "virtual"', "virtual.speed = 8")
PLAN = short_plan(repeats=2, count=8, more='title = "How strong is this acid?"').replace("= 5.0", "= 4.5")


class Camera:
    """One page a size; `take` takes a picture of each."""

    def __init__(self, pages: list[Page], folder: Path) -> None:
        self.pages, self.folder = pages, folder
        self._count = 0

    def take(self, name: str, ready: str = "main", *, whole: bool = False) -> None:
        """Take this state once `ready` is there: what the window shows, or the whole page."""
        self._count += 1
        for page in self.pages:
            page.locator(ready).first.wait_for(timeout=LONG_MS)
            page.wait_for_timeout(700)
            path = self.folder / f"{self._count:02d}-{name}-{(page.viewport_size or SIZES[0])['width']}.png"
            page.screenshot(path=path, full_page=whole)
            print(path, file=sys.stderr)

    def go(self, url: str) -> None:
        """Open another address."""
        for page in self.pages:
            page.goto(url)


def portions(camera: Camera, folder: Path) -> None:
    """From the first step to the results of two repeats."""
    with serving(folder, *VIRTUAL, plan=PLAN) as station:
        camera.go(station.url)
        camera.take("alkali", "main.state-ready .done", whole=True)
        station.act(act="alkali_temperature")
        camera.take("alkali-taken", ".done[data-act=probe_rinsed]")
        station.act(act="probe_rinsed")
        camera.take("fill", ".done[data-act=begin]")
        station.act(act="begin")
        camera.take("start", "main.state-start")
        work(station, until="pour", repeat=1)
        camera.take("pour", "main.state-pour")
        station.act(act="portion_added", portion=1)
        camera.take("settle", "main.state-settle")
        station.act(act="pause")
        camera.take("paused", "main.state-paused")
        station.act(act="resume")
        work(station, until="rinse", repeat=1, within_s=LONG_MS / 1000)
        for act in ("cup_emptied", "cup_rinsed", "rinsed"):
            camera.take(act, f".done[data-act={act}]")
            station.act(act=act)
        work(station, until="pour", repeat=2, within_s=LONG_MS / 1000)
        camera.take("second-repeat", "main.state-pour", whole=True)
        work(station, until="done", repeat=2, within_s=LONG_MS / 1000)
        camera.take("own-reading", ".own-reading", whole=True)
        for place in ("record", "settings", "big", "guide"):
            camera.go(f"{station.url}#{place}")
            camera.take(place, f"main.at-{place}", whole=True)


def results(camera: Camera, folder: Path) -> None:
    """What was found, with nobody's own lines before it."""
    plan = PLAN.replace("repeats = 2", 'repeats = 2\nresults = "at once"')
    with serving(folder, *VIRTUAL, plan=plan) as station:
        camera.go(station.url)
        work(station, until="done", repeat=2, within_s=2 * LONG_MS / 1000)
        station.final_state()
        camera.take("results", ".result-heat", whole=True)
        camera.go(f"{station.url}#record")
        camera.take("sheet", "main.at-record", whole=True)


def own(camera: Camera, folder: Path) -> None:
    """By one's own judgement."""
    with serving(folder, *VIRTUAL, plan=OWN_JUDGEMENT) as station:
        camera.go(station.url)
        station.act(act="begin")
        camera.take("start", "main.state-start")
        station.act(act="read_now", portion=0)
        station.act(act="portion_added", portion=1)
        camera.take("settle", "main.state-settle")


def typed(camera: Camera, folder: Path) -> None:
    """By an own thermometer."""
    with serving(folder, 'probe.driver = "none"', plan=PLAN) as station:
        camera.go(station.url)
        camera.take("thermometer", "main.state-ready")
        station.act(act="thermometer", division_c=1)
        station.act(act="begin")
        camera.take("start", "main.state-start")
        station.act(act="reading", temperature_c=20, portion=0)
        station.act(act="portion_added", portion=1)
        camera.take("settle", "main.state-settle")


def lost(camera: Camera, folder: Path) -> None:
    """The probe is lost in the midst of a repeat."""
    with serving(folder, *VIRTUAL, 'virtual.faults = "gone@30+600"', plan=PLAN) as station:
        camera.go(station.url)
        station.act(act="begin")
        camera.take("lost", ".own-thermometer")


def question(camera: Camera, folder: Path) -> None:
    """The station asks, and one puts it off."""
    with serving(folder, *VIRTUAL, plan=ODD) as station:
        camera.go(station.url)
        station.act(act="begin")
        work(station, until="pour", repeat=1)
        station.act(act="portion_added", portion=1)
        camera.take("question", ".question-asked")


def once(camera: Camera, folder: Path) -> None:
    """One mixing, to its results."""
    with serving(folder, *VIRTUAL, plan=ONCE) as station:
        camera.go(station.url)
        station.act(act="begin")
        camera.take("start", "main.state-start")
        work(station, until="pour", repeat=1, within_s=LONG_MS / 1000)
        camera.take("pour", "main.state-pour")
        station.act(act="portion_added", portion=1)
        camera.take("settle", "main.state-settle")
        work(station, until="done", repeat=1, within_s=LONG_MS / 1000)
        station.final_state()
        camera.take("results", "main.state-done", whole=True)


def practice(camera: Camera, folder: Path) -> None:
    """Practice by mouse with a syringe."""
    _with(camera, folder, "syringe")


def cylinder(camera: Camera, folder: Path) -> None:
    """Practice by mouse with a measuring cylinder."""
    _with(camera, folder, "measuring cylinder")


def _with(camera: Camera, folder: Path, ware: str) -> None:
    """A cup for each page."""
    plan = short_plan(count=3, more='results = "at once"') + f'glassware = "{ware}"\n'
    with serving(folder, *CUP, plan=plan) as station:
        for page in camera.pages:
            _practise(Camera([page], camera.folder), station.url)


def _practise(camera: Camera, url: str) -> None:
    """A whole practice on one page."""
    (page,) = camera.pages
    hands, bar = Mouse(page), page.locator(".practise-bar")
    draw, pour = bar.locator("[data-hand=draw]"), bar.locator("[data-hand=pour]")
    camera.go(url)
    camera.take("offer", ".practise-offer", whole=True)
    camera.go(f"{url}practise")
    camera.take("empty", ".practise-bar")
    set_up(hands)
    page.wait_for_timeout(MEANT_MS)
    asked(page, "begin").click()
    for portion in (1, 2, 3):
        act = asked(page, "portion_added", portion)
        hands.hold(draw, scale(">=", 4.9))
        camera.take(f"full-{portion}", "main.state-pour")
        hands.hold(pour, scale("<=", 0.0))
        act.click()
        camera.take(f"after-{portion}")
    camera.take("judged", "[data-testid=judgement] .judgement-truth", whole=True)


def room(camera: Camera, folder: Path) -> None:
    """The room's board and its class result."""
    with room_at_work(folder, lesson()) as station:
        camera.go(f"{station.url}room")
        for page in camera.pages:
            expect(page.locator(".need-3").first).to_be_visible()
        camera.take("board", whole=True)
        camera.go(f"{station.url}room/bench/{TROUBLED}")
        camera.take("bench", whole=True)
        station.computed()
        camera.go(f"{station.url}room/class")
        camera.take("class", whole=True)


SCENES: dict[str, Callable[[Camera, Path], None]] = {
    each.__name__: each for each in (portions, results, own, typed, lost, question, once, practice, cylinder, room)
}


@contextmanager
def camera_of(browser: Browser, folder: Path, language: str) -> Iterator[Camera]:
    """A page of each size, in this language."""
    contexts = [
        browser.new_context(viewport=size, reduced_motion="reduce", locale=language, has_touch=size["width"] < 400)
        for size in SIZES
    ]
    for context in contexts:
        context.add_init_script("localStorage.setItem('sound', 'off')")
        context.set_default_timeout(LONG_MS)
    yield Camera([context.new_page() for context in contexts], folder)
    for context in contexts:
        context.close()


def main() -> None:
    """Make all, or those that are named."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("folder", type=Path)
    parser.add_argument("scenes", nargs="*", choices=[[], *SCENES], default=[])
    parser.add_argument("--language", default="en")
    options = parser.parse_args()
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        for name in options.scenes or SCENES:
            pictures = options.folder / name
            pictures.mkdir(parents=True, exist_ok=True)
            with tempfile.TemporaryDirectory() as work_in, camera_of(browser, pictures, options.language) as camera:
                SCENES[name](camera, Path(work_in))
        browser.close()


if __name__ == "__main__":
    main()
