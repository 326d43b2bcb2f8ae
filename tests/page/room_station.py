"""A room in a process of its own whose store holds a lesson of thirty benches, for tests of its pages."""

import signal
import subprocess
import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import httpx
import pytest

from station.bench.virtual.student import Habits
from station.practical import events as e
from station.practical.events import Stamped
from tests.conftest import PATIENCE_S, free_port
from tests.page.conftest import STATION, Station
from tests.room.lesson_in_jumps import events_of, until, with_results
from tests.server.room_live import filled

TROUBLED = "bench-17"


def lesson(benches: int = 30) -> dict[str, tuple[Stamped, ...]]:
    """Benches of two cups over and over: one doubled a portion and denied it, one is under way, one lost its probe."""
    found = {f"bench-{n}": with_results(events_of(1 + n % 2), "at once") for n in range(1, benches + 1)}
    doubled = with_results(events_of(3, Habits(doubled=frozenset({(1, 3)}))), "at once")
    denied = e.QuestionAnswered(1, 3, "double", "once")
    found["bench-4"] = (*doubled, replace(doubled[-1], seq=doubled[-1].seq + 1, event=denied))
    under_way = with_results(until(events_of(1), 200.0), "at once")
    last = under_way[-1]
    found["bench-9"] = (*under_way, replace(last, seq=last.seq + 1, event=e.RepeatSetAside(1, "the lid was off")))
    found[TROUBLED] = (*under_way, replace(last, seq=last.seq + 1, event=e.ProbeLost("empty")))
    return found


class RoomStation(Station):
    """A room in its own process; `url` is its address."""

    def start(self) -> None:
        """Start the process and wait until the board is there."""
        self._process = subprocess.Popen(
            [str(STATION), *self.arguments], stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True
        )
        assert self._process.stdout is not None
        line = self._process.stdout.readline()
        if not line:
            pytest.fail(f"the room died: {self._process.communicate()[1]}")
        self.url = line.rsplit(maxsplit=1)[-1]
        end = time.monotonic() + PATIENCE_S
        while httpx.get(f"{self.url}api/room", timeout=PATIENCE_S).status_code != 200:
            assert time.monotonic() < end
            time.sleep(0.05)

    def room(self) -> dict[str, object]:
        """What the room itself says."""
        answer: dict[str, object] = httpx.get(f"{self.url}api/room", timeout=PATIENCE_S).json()
        return answer

    def computed(self) -> None:
        """Wait until the class result is there."""
        end = time.monotonic() + 4 * PATIENCE_S
        while httpx.get(f"{self.url}api/room/class", timeout=PATIENCE_S).json()["computing"]:
            assert time.monotonic() < end
            time.sleep(0.2)


@contextmanager
def room_at_work(folder: Path, benches: Mapping[str, tuple[Stamped, ...]]) -> Iterator[RoomStation]:
    """A room with a private broker whose store holds these benches."""
    filled(folder / "record", benches).close()
    (folder / "room.toml").write_text(
        f"""
        room.folder = "record"
        room.host = "127.0.0.1"
        room.port = {free_port()}
        server.host = "127.0.0.1"
        server.port = {free_port()}
        """
    )
    room = RoomStation("room", "--config", str(folder / "room.toml"))
    room.start()
    try:
        yield room
    finally:
        room.signal(signal.SIGTERM)
        room.stop()
