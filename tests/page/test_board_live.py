"""The board while a class works: needs come and go in time and in order, and no tile moves. Real broker, real benches.

One room and one rehearsal for the whole module, at ten times the speed: 20 minutes of class are two.
"""

import json
import signal
import subprocess
import time
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest
from playwright.sync_api import expect

from station.practical import events as e
from station.practical.fold import fold
from station.practical.questions import open_questions
from station.practical.state import State
from station.room.store.store import RoomStore
from tests.page.conftest import STATION, OpenPage
from tests.page.room_station import RoomStation, room_at_work
from tests.page.test_room_page import FIFTEEN, OUTSIDE, PLACES

BENCHES, SPEED, CLASS_MIN = 15, 10.0, 20.0
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


@pytest.fixture(scope="module")
def classroom(tmp_path_factory: pytest.TempPathFactory) -> Iterator[tuple[RoomStation, Path]]:
    folder = tmp_path_factory.mktemp("class")
    with room_at_work(folder, {}) as room:
        command = [str(STATION), "rehearse", "--benches", str(BENCHES), "--speed", f"{SPEED:g}"]
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


def test_needs_come_and_go_in_time_the_newest_last_and_no_tile_moves(
    classroom: tuple[RoomStation, Path], open_page: OpenPage
) -> None:
    room, record = classroom
    page = open_page(room, viewport=FIFTEEN)
    page.goto(f"{room.url}room")
    expect(page.get_by_test_id("tile")).to_have_count(BENCHES)
    page.evaluate(WATCH)
    began_s, before = time.time(), page.evaluate(PLACES)
    while time.time() - began_s < 60.0 * CLASS_MIN / SPEED:
        page.wait_for_timeout(2000)
        assert page.evaluate(PLACES) == before, "no tile moves"
    assert page.evaluate(OUTSIDE) == []
    ended_s = time.time()
    seen: list[tuple[float, list[str]]] = json.loads(page.evaluate("JSON.stringify(window.seen)"))
    assert seen, "somebody needed somebody"
    in_order(seen)
    true = [each for each in spells(record) if each.since_s > began_s + 1.0]
    judged = 0
    for spell in true:
        lasts = spell.until_s is None or spell.until_s - spell.since_s > COMES_WITHIN_S
        if lasts and spell.since_s < ended_s - EDGE_S:
            assert first_s(seen, spell.bench, spell.since_s - 0.5) - spell.since_s <= COMES_WITHIN_S, spell
            judged += 1
        if spell.until_s is not None and spell.until_s < ended_s - EDGE_S and alone(true, spell):
            assert gone_s(seen, spell.bench, spell.until_s) - spell.until_s <= GOES_WITHIN_S, spell
    assert judged >= 3, true
    causes = {reason["code"] for tile in tiles_of(room) for reason in tile["reasons"]}
    assert causes, "the troubles of the rehearsal are told"


def tiles_of(room: RoomStation) -> list[dict[str, Any]]:
    tiles: dict[str, dict[str, Any]] = room.room()["tiles"]  # type: ignore[assignment]
    return list(tiles.values())


def in_order(seen: list[tuple[float, list[str]]]) -> None:
    """Who stays keeps the order, and who comes stands last."""
    before: list[str] = []
    for _, now in seen:
        stayed = [bench for bench in before if bench in now]
        assert now[: len(stayed)] == stayed, (before, now)
        before = now


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
