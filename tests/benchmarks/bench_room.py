"""The teacher's page with a whole class: how late a temperature is on it, and whether it grows over an hour of class.

`python -m tests.benchmarks.bench_room [benches] [class minutes]`: thirty full stations at one sample a second for the
delay (a minute), then the same at twenty times the speed for the memory. Whole stations, real broker, real browser.
"""

import asyncio
import json
import statistics
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

from playwright.sync_api import CDPSession, Page, sync_playwright

from station.room import wire
from station.room.mqtt import connected
from station.room.wire import BrokerAddress, Live, packed
from tests.command.child import RUN
from tests.page.conftest import FLAGS, chromium

EXTRA = 5
SECONDS = 60
SPEED = 20
WATCH = """() => {
  window.seen = [];
  const look = (records) => {
    for (const record of records) {
      const tile = record.target.parentElement?.closest?.('.tile') ?? record.target.closest?.('.tile');
      const text = tile?.querySelector('.tile-temperature')?.textContent;
      if (tile) window.seen.push([tile.dataset.bench, text, Date.now()]);
    }
  };
  const what = { subtree: true, childList: true, characterData: true };
  new MutationObserver(look).observe(document.querySelector('.board'), what);
}"""


@contextmanager
def rehearsal(benches: int, speed: float, minutes: float) -> Iterator[str]:
    """A class at work, and the address of its room."""
    arguments = ["--benches", str(benches), "--speed", str(speed), "--minutes", str(minutes)]
    process = subprocess.Popen([*RUN, "rehearse", *arguments], stdout=subprocess.PIPE, text=True)
    try:
        assert process.stdout is not None
        yield process.stdout.readline().split()[1].removesuffix("room")
    finally:
        process.terminate()
        process.communicate(timeout=60)


def asked(url: str, body: object = None) -> Any:
    content = None if body is None else json.dumps(body).encode()
    request = urllib.request.Request(url, content, {"Content-Type": "application/json"})
    with urllib.request.urlopen(request, timeout=20) as reply:
        return json.loads(reply.read())


async def published(url: str) -> dict[tuple[str, str], float]:
    """Send temperatures of further benches, one a second each; return when each was sent, by bench and text."""
    users = [f"rehearsal-{900 + n}" for n in range(EXTRA)]
    admitted = asked(f"{url}api/room/rehearsal", {"users": users})
    sent: dict[tuple[str, str], float] = {}

    async def one(user: str, late_s: float) -> None:
        await asyncio.sleep(late_s)
        broker = BrokerAddress(admitted["host"], admitted["port"], user, admitted["passwords"][user])
        async with connected(broker, lambda *_: None) as client:
            for second in range(SECONDS):
                celsius = 20.0 + second / 10
                sent[user, f"{celsius:.1f} °C"] = time.time()
                await client.publish(wire.topic(user, wire.LIVE), packed(Live(kit="ab" * 8, temperature_c=celsius)))
                await asyncio.sleep(1.0)

    await asyncio.sleep(1.0)  # the broker reads its password file again
    await asyncio.gather(*(one(user, n / EXTRA) for n, user in enumerate(users)))
    return sent


def delays(page: Page, url: str) -> list[float]:
    """Return how long each temperature took from its bench to the page, in ms."""
    page.goto(f"{url}room")
    page.wait_for_selector(".board")
    page.evaluate(WATCH)
    process = subprocess.Popen(
        [sys.executable, "-m", "tests.benchmarks.bench_room", "publish", url], stdout=subprocess.PIPE, text=True
    )
    while process.poll() is None:
        page.wait_for_timeout(500)
    assert process.stdout is not None
    sent = {(bench, text): at for bench, text, at in json.loads(process.stdout.read())}
    first: dict[tuple[str, str], float] = {}
    for bench, text, at_ms in page.evaluate("window.seen"):
        first.setdefault((bench, text), at_ms / 1000)
    # The first of each bench makes its tile: that is no change of a text.
    late = [1000 * (first[key] - at) for key, at in sent.items() if key in first and not key[1].startswith("20.0")]
    print(f"{len(late)} of {len(sent) - EXTRA} temperatures seen")
    return sorted(late)


def heap_mb(cdp: CDPSession) -> float:
    cdp.send("HeapProfiler.collectGarbage")
    metrics = {each["name"]: each["value"] for each in cdp.send("Performance.getMetrics")["metrics"]}
    return float(metrics["JSHeapUsedSize"]) / 1e6


def main() -> None:
    if sys.argv[1:2] == ["publish"]:
        print(json.dumps([[*key, at] for key, at in asyncio.run(published(sys.argv[2])).items()]))
        return
    benches, minutes = (int(each) for each in (*sys.argv[1:], "30", "60")[:2])
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS))
        page = browser.new_page(viewport={"width": 1920, "height": 1080})
        with rehearsal(benches, 1.0, 10.0) as url:
            late = delays(page, url)
        cuts = statistics.quantiles(late, n=100)
        print(f"{benches} stations at 1/s: broker to page p50 {cuts[49]:.0f} ms, p99 {cuts[98]:.0f} ms", flush=True)
        page.goto("about:blank")
        with rehearsal(benches, SPEED, 10.0 * minutes) as url:
            page.goto(f"{url}room")
            page.wait_for_selector(".tile")
            cdp = page.context.new_cdp_session(page)
            cdp.send("Performance.enable")
            for minute in range(0, minutes + 1, max(1, minutes // 6)):
                nodes = page.evaluate("document.getElementsByTagName('*').length")
                print(f"class minute {minute}: heap {heap_mb(cdp):.2f} MB, {nodes} elements", flush=True)
                page.wait_for_timeout(60_000 / SPEED * max(1, minutes // 6))
        browser.close()


if __name__ == "__main__":
    main()
