"""Makes the pictures of the README from a real practical in a real browser: `python -m tests.page.pictures`.

A demo runs with a fixed seed, a station waits for hands beside it; what is shown is what the station says. With words,
only these: `bench` (before, portion, own-lines), `result` (result, record), `room` (room, class).
"""

import subprocess
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import Browser, Page, expect, sync_playwright

from tests.page.conftest import FLAGS, STATION, Station, chromium, serve_settings, work
from tests.page.room_station import room_at_work

FOLDER = Path(__file__).parents[2] / "web" / "pictures"
PHONE = {"width": 390, "height": 780}
LAPTOP = {"width": 1280, "height": 800}
WALL = {"width": 1600, "height": 900}
SHEET = {"width": 1280, "height": 1180}


def opened(browser: Browser, url: str, size: dict[str, int]) -> Page:
    page = browser.new_page(viewport=size, reduced_motion="reduce")  # type: ignore[arg-type]
    # Whoever is shown here was asked about sound before.
    page.add_init_script("localStorage.setItem('sound', 'off')")
    page.goto(url)
    page.wait_for_selector("main")
    page.wait_for_timeout(1500)
    return page


def to_top(page: Page, selector: str) -> None:
    """Scroll until this begins where the window does."""
    page.locator(selector).first.evaluate("(one) => one.scrollIntoView()")
    page.wait_for_timeout(500)


def take(page: Page, name: str) -> None:
    FOLDER.mkdir(exist_ok=True)
    page.screenshot(path=FOLDER / f"{name}.png")
    print(f"{FOLDER / name}.png", file=sys.stderr)


def bench_pictures(browser: Browser, station: Station) -> None:
    """The bench in three states: before the start, at a portion, with the students' own lines."""
    take(opened(browser, f"{station.url}#guide", LAPTOP), "before")
    work(station, until="pour", repeat=1)
    for portion in range(1, 5):
        station.act(act="portion_added", portion=portion)
        work(station, until="pour", repeat=1)
    take(opened(browser, station.url, PHONE), "portion")
    work(station, until="done", repeat=2)
    page = opened(browser, station.url, LAPTOP)
    page.wait_for_selector(".own-reading svg")
    to_top(page, "section:has(> .room-chart)")
    take(page, "own-lines")


def result_pictures(browser: Browser, station: Station) -> None:
    """Both end-points, and the record to print."""
    page = opened(browser, station.url, LAPTOP)
    page.wait_for_selector("main.state-done", timeout=180_000)
    station.final_state()
    page.wait_for_selector(".result-heat:not(.result-brief)")
    to_top(page, ".figure-large")
    take(page, "result")
    page = opened(browser, f"{station.url}#record", {"width": 794, "height": 1123})
    page.emulate_media(media="print")
    page.wait_for_timeout(500)
    take(page, "record")


def room_pictures(browser: Browser) -> None:
    """A class under way with two benches in trouble, and what it found in the end."""
    with tempfile.TemporaryDirectory() as folder, room_at_work(Path(folder), {}) as room:
        command = [str(STATION), "rehearse", "--config", f"{folder}/room.toml"]
        rehearsal = subprocess.Popen(command, stdout=subprocess.DEVNULL)
        page = opened(browser, f"{room.url}room", WALL)
        expect(page.locator(".tile.need-3")).to_have_count(2, timeout=120_000)
        take(page, "room")
        rehearsal.wait(timeout=400)
        take(opened(browser, f"{room.url}room/class", SHEET), "class")


def main() -> None:
    """Make them all, or those that are named."""
    wanted = sys.argv[1:] or ["bench", "result", "room"]
    with tempfile.TemporaryDirectory() as folder, sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        bench = Station("serve", "--config", str(serve_settings(Path(folder), "127.0.0.1", speed=30.0)))
        demo = Station("demo", "--speed", "30", "--port", "0", "--json")
        for name, station, pictures in (("bench", bench, bench_pictures), ("result", demo, result_pictures)):
            if name not in wanted:
                continue
            station.start()
            try:
                pictures(browser, station)
            finally:
                station.stop()
        if "room" in wanted:
            room_pictures(browser)
        browser.close()


if __name__ == "__main__":
    main()
