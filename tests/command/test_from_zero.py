"""From an empty folder to two benches on the board, by what the README says: its commands are taken from its text."""

import os
import re
import signal
import subprocess
import time
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

import httpx

from tests.conftest import PATIENCE_S, free_port
from tests.page.conftest import STATION

README = Path(__file__).parents[2] / "README.md"
FIRST_LINE = 'probe.driver = "virtual"'


def commands() -> list[str]:
    """The commands of the paragraph "A room and two benches", in the order in which they are to be typed."""
    (told,) = re.findall(r"\*\*A room and two benches\.\*\*(.*?)\n\n", README.read_text(encoding="utf-8"), re.DOTALL)
    assert f"`{FIRST_LINE}` above everything else" in told.replace("\n", " ")
    return [re.sub(r"\s+", " ", each) for each in re.findall(r"`(station [^`]*)`", told)]


@contextmanager
def typed(command: str, folder: Path) -> Iterator[subprocess.Popen[bytes]]:
    """What somebody types in this folder; ended as by Ctrl-C."""
    words = {**os.environ, "PATH": f"{STATION.parent}:{os.environ['PATH']}", "XDG_DATA_HOME": str(folder / "data")}
    process = subprocess.Popen(
        ["sh", "-c", f"exec {command}"], cwd=folder, env=words, stdout=subprocess.DEVNULL, stderr=subprocess.PIPE
    )
    try:
        yield process
    finally:
        if process.poll() is None:
            process.send_signal(signal.SIGINT)
        process.communicate(timeout=PATIENCE_S)


def test_two_benches_come_onto_the_board_by_the_readmes_text_alone(tmp_path: Path) -> None:
    room, new_bench, serve = commands()
    # The test's own: free ports, nothing on the network, and benches apart, since all of it is on one machine.
    page = free_port()
    own = f'room.host = "127.0.0.1"\nroom.port = {free_port()}\nroom.announce = false\nserver.port = {page}\n'
    (tmp_path / "room.toml").write_text(own)
    with typed(room, tmp_path) as at_work:
        benches = [(number, tmp_path / f"bench-{number}.toml") for number in (1, 2)]
        for number, settings in benches:
            with typed(new_bench.replace("bench-1", f"bench-{number}"), tmp_path) as command:
                assert command.wait(PATIENCE_S) == 0
            own = f'server.port = {free_port()}\nrecord.folder = "record-{number}"'
            settings.write_text(f"{FIRST_LINE}\n{own}\n{settings.read_text()}")
        with typed(serve, tmp_path), typed(serve.replace("bench-1", "bench-2"), tmp_path):
            end, there = time.monotonic() + PATIENCE_S, set[str]()
            while there != {"bench-1", "bench-2"} and time.monotonic() < end:
                assert at_work.poll() is None
                try:
                    there = set(httpx.get(f"http://127.0.0.1:{page}/api/room", timeout=PATIENCE_S).json()["tiles"])
                except httpx.TransportError:
                    there = set()
                time.sleep(0.1)
            assert there == {"bench-1", "bench-2"}
