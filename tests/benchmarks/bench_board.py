"""The board while a class works: how soon a need comes into the strip and goes again, their order, tiles that move.

`python -m tests.benchmarks.bench_board [SPEED]`: 15 rehearsed benches on a real broker, 20 minutes of class at this
speed (10). A need should come within 2 s and be gone within 5 s; no tile moves.
"""

import json
import signal
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path

from playwright.sync_api import expect, sync_playwright

from station.practical import events as e
from station.practical.fold import fold
from station.practical.questions import open_questions
from station.practical.state import State
from station.room.store.store import RoomStore
from tests.page.conftest import FLAGS, STATION, chromium
from tests.page.room_station import RoomStation, room_at_work
from tests.page.test_room_page import FIFTEEN, OUTSIDE, PLACES

BENCHES, CLASS_MIN = 15, 20.0
COMES_WITHIN_S, GOES_WITHIN_S = 2.0, 5.0
EDGE_S = 6.0
"""What began or ended so near the end of the watch cannot be judged."""
WATCH = """() => {
  window.seen = [];
  let last = '';
  setInterval(() => {
    const now = [...document.querySelectorAll('[data-testid=need]')].map(one => one.dataset.bench);
    if (now.join() !== last) window.seen.push([Date.now() / 1000, now]);
    last = now.join();
  }, 50);
}"""


@dataclass(frozen=True)
class Spell:
    """A bench needed somebody from one wall time to another, in s; None: it still did at the end."""

    bench: str
    since_s: float
    until_s: float | None


@contextmanager
def classroom(folder: Path, speed: float) -> Iterator[tuple[RoomStation, Path]]:
    """Yield a room at work and its record, while a rehearsal fills it."""
    with room_at_work(folder, {}) as room:
        command = [str(STATION), "rehearse", "--benches", str(BENCHES), "--speed", f"{speed:g}"]
        rehearsal = subprocess.Popen(
            [*command, "--config", str(folder / "room.toml")], stdout=subprocess.DEVNULL, stderr=subprocess.DEVNULL
        )
        try:
            yield room, folder / "record"
        finally:
            rehearsal.send_signal(signal.SIGTERM)
            rehearsal.wait(60)


def wall_s(stamped: e.Stamped) -> float:
    return datetime.fromisoformat(stamped.wall).timestamp()


def truly_needs(state: State) -> bool:
    """What an event alone says: a call, a lost probe, an open question. Slowness is a matter of the clock."""
    done = state.step == "done"
    return state.called_s is not None or (state.probe == "lost" and not done) or bool(open_questions(state))


def spells(record: Path) -> list[Spell]:
    """When which bench needed somebody, as its own record tells."""
    store, found = RoomStore(record), []
    for kept in store.benches():
        state, since_s = State(), None
        for stamped in store.events(kept.bench):
            state = fold(state, stamped)
            now = truly_needs(state)
            if now and since_s is None:
                since_s = wall_s(stamped)
            elif not now and since_s is not None:
                found.append(Spell(kept.bench, since_s, wall_s(stamped)))
                since_s = None
        if since_s is not None:
            found.append(Spell(kept.bench, since_s, None))
    store.close()
    return found


def main() -> None:
    """Watch a class, and print what came late."""
    speed = float((*sys.argv[1:], "10")[0])
    with (
        tempfile.TemporaryDirectory() as folder,
        sync_playwright() as playwright,
        classroom(Path(folder), speed) as (room, record),
    ):
        page = playwright.chromium.launch(executable_path=chromium(), args=list(FLAGS)).new_page(viewport=FIFTEEN)
        page.goto(f"{room.url}room")
        expect(page.get_by_test_id("tile")).to_have_count(BENCHES, timeout=120_000)
        page.evaluate(WATCH)
        began_s, before, moved = time.time(), page.evaluate(PLACES), 0
        while time.time() - began_s < 60.0 * CLASS_MIN / speed:
            page.wait_for_timeout(2000)
            moved += page.evaluate(PLACES) != before
        ended_s = time.time()
        print(f"{BENCHES} benches, {CLASS_MIN:g} minutes of class at speed {speed:g}")
        print(f"tiles moved in {moved} of the looks; outside the window: {len(page.evaluate(OUTSIDE))} parts")
        seen: list[tuple[float, list[str]]] = json.loads(page.evaluate("JSON.stringify(window.seen)"))
        true = [each for each in spells(record) if each.since_s > began_s + 1.0]
    come = [
        first_s(seen, each.bench, each.since_s - 0.5) - each.since_s
        for each in true
        if each.since_s < ended_s - EDGE_S and (each.until_s is None or each.until_s - each.since_s > COMES_WITHIN_S)
    ]
    gone = [
        gone_s(seen, each.bench, each.until_s) - each.until_s
        for each in true
        if each.until_s is not None and each.until_s < ended_s - EDGE_S and alone(true, each)
    ]
    for words, late, bound_s in (("came", come, COMES_WITHIN_S), ("went", gone, GOES_WITHIN_S)):
        worst_s = max(late, default=float("nan"))
        print(f"{len(late)} needs {words}, the latest after {worst_s:.2f} s; {bound_s:g} s allowed")
    print("in order: who stays keeps the order, who comes stands last:", in_order(seen))


def in_order(seen: list[tuple[float, list[str]]]) -> bool:
    """Whether who stays keeps the order, and who comes stands last."""
    before: list[str] = []
    for _, now in seen:
        stayed = [bench for bench in before if bench in now]
        if now[: len(stayed)] != stayed:
            return False
        before = now
    return True


def first_s(seen: list[tuple[float, list[str]]], bench: str, after_s: float) -> float:
    """When a bench was in the strip at or after this moment."""
    there = [now for at_s, now in seen if at_s <= after_s]
    if there and bench in there[-1]:
        return after_s
    return next((at_s for at_s, now in seen if at_s > after_s and bench in now), float("inf"))


def gone_s(seen: list[tuple[float, list[str]]], bench: str, after_s: float) -> float:
    there = [now for at_s, now in seen if at_s <= after_s]
    if not there or bench not in there[-1]:
        return after_s
    return next((at_s for at_s, now in seen if at_s > after_s and bench not in now), float("inf"))


def alone(true: list[Spell], spell: Spell) -> bool:
    """Whether the bench's trouble is over for a while: not one after the other, nor one of the clock's."""
    assert spell.until_s is not None
    slow = spell.until_s - spell.since_s > 20.0
    return not slow and not any(
        other is not spell
        and other.bench == spell.bench
        and other.since_s < spell.until_s + GOES_WITHIN_S
        and (other.until_s is None or other.until_s > spell.until_s)
        for other in true
    )


if __name__ == "__main__":
    main()
