"""What the page costs, in real Chromium: bytes and requests of the first view, time until it is usable, one redraw.

    python -m tests.benchmarks.bench_page

Bounds: first view at most 60 kB on the wire and 10 requests; usable within 1 s with the processor slowed down six
times, on loopback; script and layout of a redraw with three repeats and 3,600 samples within 16 ms, slowed
down six times too. A redraw is timed inside the page, around the callback of `requestAnimationFrame` that draws, with
layout forced before the clock is read again. The machine should be idle: its load average stands beside the figures.
"""

import os
import statistics
import tempfile
import time
from collections.abc import Callable
from pathlib import Path
from typing import Any

from playwright.sync_api import Browser, CDPSession, Page, sync_playwright

from tests.page.conftest import FLAGS, PHONE, PROJECTOR, Station, chromium, serve_settings, work

SAMPLES = 3600
SPEED = 60.0
SLOWED = 6
LOADS = 7
REDRAWS = 150
PORTIONS = """
results = "at once"
repeats = 3
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.4
[portions]
volume_cm3 = 4.0
count = 10
"""
ONCE = """
kind = "once"
results = "at once"
repeats = 3
[liquid]
name = "nitric acid"
volume_cm3 = 25.0
concentration_mol_dm3 = 0.4
[addition]
name = "potassium hydroxide"
volume_cm3 = 25.0
concentration_mol_dm3 = 0.4
temperature_c = 19.5
[timing]
before_s = 120
after_s = 1380
"""
# Times every callback that draws, together with the layout that it causes; one that changes nothing is none.
TIME_REDRAWS = """() => {
  const ask = window.requestAnimationFrame.bind(window);
  const changes = new MutationObserver(() => {});
  changes.observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
  window.redraws = [];
  window.requestAnimationFrame = (draw) => ask((now) => {
    changes.takeRecords();
    const began = performance.now();
    draw(now);
    document.body.getBoundingClientRect();
    const took = performance.now() - began;
    if (changes.takeRecords().length) window.redraws.push(took);
  });
}"""
# The moment at which the instruction stands there and the browser has drawn it.
TIME_USABLE = """() => {
  const look = () => document.querySelector('.instruction-text')
    ? requestAnimationFrame(() => requestAnimationFrame(() => { window.usable = performance.now(); }))
    : setTimeout(look, 4);
  look();
}"""


def first_view(browser: Browser, url: str) -> None:
    """Print every transfer of the first view: what was on the wire, headers included."""
    page = browser.new_page(viewport=PHONE)
    session = page.context.new_cdp_session(page)
    session.send("Network.enable")
    names: dict[str, str] = {}
    sizes: dict[str, float] = {}
    stream: set[str] = set()

    def requested(event: dict[str, Any]) -> None:
        names[event["requestId"]] = event["request"]["url"].removeprefix(url)

    def received(event: dict[str, Any]) -> None:
        if event["response"]["mimeType"] == "text/event-stream":
            stream.add(event["requestId"])
        sizes.setdefault(event["requestId"], event["response"]["encodedDataLength"])

    session.on("Network.requestWillBeSent", requested)
    session.on("Network.responseReceived", received)
    session.on("Network.loadingFinished", lambda event: sizes.update({event["requestId"]: event["encodedDataLength"]}))
    page.goto(url)
    page.wait_for_selector(".instruction-text")
    page.wait_for_timeout(2000)
    print("First view (phone), bytes on the wire with headers:")
    for request, name in names.items():
        kept_open = "  (kept open)" if request in stream else ""
        print(f"  {sizes.get(request, 0.0):8.0f}  /{name}{kept_open}")
    total = sum(sizes.get(request, 0.0) for request in names if request not in stream)
    print(f"  {total:8.0f}  in {len(names)} requests, the stream among them (bounds: 60,000 in 10)")
    page.close()


def load(browser: Browser, url: str, slowed: int) -> tuple[float, float]:
    """One cold load: when the instruction is drawn, and the main thread's processor time by then / ms."""
    context = browser.new_context(viewport=PHONE)
    page = context.new_page()
    page.add_init_script(f"({TIME_USABLE})()")
    session = context.new_cdp_session(page)
    session.send("Performance.enable", {"timeDomain": "threadTicks"})
    session.send("Emulation.setCPUThrottlingRate", {"rate": slowed})
    page.goto(url)
    page.wait_for_function("() => window.usable", polling=50)
    took_ms = float(page.evaluate("window.usable"))
    spent_ms = metric_ms(session, "Task")
    context.close()
    return took_ms, spent_ms


def usable(browser: Browser, url: str) -> None:
    """Print how long it takes until the instruction is drawn, the processor slowed down and not."""
    took = [load(browser, url, SLOWED)[0] for _ in range(LOADS)]
    spent_ms = statistics.median(load(browser, url, 1)[1] for _ in range(LOADS))
    print(
        f"Usable, processor slowed {SLOWED} times, {LOADS} cold loads: median {statistics.median(took):.0f} ms, "
        f"worst {max(took):.0f} ms (bound: 1000); processor time of the page by then, not slowed: {spent_ms:.0f} ms, "
        f"{SLOWED} times that: {SLOWED * spent_ms:.0f} ms",
        flush=True,
    )


def metric_ms(session: CDPSession, *names: str) -> float:
    """Durations that the browser keeps of the page's main thread / ms of processor time: others do not count."""
    metrics = {each["name"]: each["value"] for each in session.send("Performance.getMetrics")["metrics"]}
    return 1000.0 * float(sum(metrics[f"{name}Duration"] for name in names))


def redraws(page: Page, name: str) -> None:
    """Print what redraws cost while new samples come in: by the clock, and by the processor; slowed down and not."""
    session = page.context.new_cdp_session(page)
    session.send("Performance.enable", {"timeDomain": "threadTicks"})
    for rate in (1, SLOWED):
        session.send("Emulation.setCPUThrottlingRate", {"rate": rate})
        time_redraws(page, session, f"{name}, slowed {rate} times" if rate > 1 else name)
    session.send("Emulation.setCPUThrottlingRate", {"rate": 1})


def time_redraws(page: Page, session: CDPSession, name: str) -> None:
    """Print what redraws cost as the page is now."""
    page.evaluate("window.redraws.length = 0")
    before_ms = metric_ms(session, "Script", "RecalcStyle", "Layout")
    page.wait_for_function("(count) => window.redraws.length >= count", arg=REDRAWS, polling=500, timeout=300_000)
    spent_ms = metric_ms(session, "Script", "RecalcStyle", "Layout") - before_ms
    took = sorted(page.evaluate("window.redraws"))
    print(
        f"  {name}: median {statistics.median(took):.1f} ms, 95 % within {took[int(0.95 * len(took))]:.1f} ms, worst "
        f"{took[-1]:.1f} ms of {len(took)}; processor time {spent_ms / len(took):.1f} ms each "
        "(bound: 16)",
        flush=True,
    )


def timed_page(browser: Browser, url: str, prepare: Callable[[Page], None], viewport: Any) -> Page:
    """A page whose redraws are timed."""
    page = browser.new_page(viewport=viewport)
    page.add_init_script(f"({TIME_REDRAWS})()")
    page.goto(url)
    page.wait_for_selector(".instruction-text")
    prepare(page)
    return page


def wait_for_samples(station: Station, count: Callable[[dict[str, Any]], float]) -> None:
    """Wait until the running practical has so many seconds of samples."""
    while count(station.state()) < SAMPLES:
        time.sleep(0.5)


def running_s(state: dict[str, Any]) -> float:
    """How long the newest repeat has run / s: one sample a second."""
    return float(state["time_s"] - state["repeats"][-1]["started_s"])


def together_s(state: dict[str, Any]) -> float:
    """How long all repeats took that ran / s: the newest up to now."""
    plan = state["plan"]["timing"]
    return (len(state["repeats"]) - 1) * float(plan["before_s"] + plan["after_s"]) + running_s(state)


def served(folder: Path, plan: str) -> Station:
    """A station with a virtual cup."""
    folder.mkdir()
    station = Station("serve", "--config", str(serve_settings(folder, "127.0.0.1", speed=SPEED, plan=plan)))
    station.start()
    return station


def portions(browser: Browser, folder: Path) -> None:
    """Bytes, start and redraws of a practical in portions, its third repeat an hour long."""
    station = served(folder, PORTIONS)
    try:
        work(station, until="start", repeat=3, within_s=600.0)
        first_view(browser, station.url)
        usable(browser, station.url)
        work(station, until="pour", repeat=3, within_s=600.0)
        for portion in range(1, 8):
            station.act(act="portion_added", portion=portion).raise_for_status()
        wait_for_samples(station, running_s)
        print(f"Redraws, portions, three repeats, the third of {running_s(station.state()):.0f} samples:")
        for viewport in (PHONE, PROJECTOR):
            page = timed_page(browser, station.url, lambda _: None, viewport)
            redraws(page, f"against volume, {viewport['width']} px")
            page.get_by_role("button", name="against time").click()
            page.wait_for_selector(".trace.series[d^=M]")
            redraws(page, f"against time, {viewport['width']} px")
            page.close()
    finally:
        station.stop()


def once(browser: Browser, folder: Path) -> None:
    """Redraws of one mixing, where every sample of three repeats is drawn."""
    station = served(folder, ONCE)
    try:
        work(station, until="settle", repeat=3, within_s=600.0)
        wait_for_samples(station, together_s)
        print(f"Redraws, one mixing, three repeats, all together {together_s(station.state()):.0f} samples:")
        for viewport in (PHONE, PROJECTOR):
            page = timed_page(browser, station.url, lambda each: each.wait_for_timeout(2000), viewport)
            redraws(page, f"against time, {viewport['width']} px")
            page.close()
    finally:
        station.stop()


def main() -> None:
    """Print the figures."""
    print(f"load average {os.getloadavg()[0]:.1f} on {os.cpu_count()} processors")
    with sync_playwright() as playwright, tempfile.TemporaryDirectory(prefix="bench-page-") as folder:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        portions(browser, Path(folder) / "portions")
        once(browser, Path(folder) / "once")
        browser.close()
    print(f"load average {os.getloadavg()[0]:.1f}")


if __name__ == "__main__":
    main()
