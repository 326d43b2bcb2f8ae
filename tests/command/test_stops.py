"""`station serve` stops when it is told to: soon, well, and with everything that was answered in the record."""

import os
import signal
import socket
import sqlite3
import subprocess
import threading
import time
from contextlib import suppress
from pathlib import Path

import httpx
import pytest

from station.command import assembly
from station.practical import events as e
from station.record.journal import FILE_NAME, first_broken, read_events
from station.server.serve import GRACE_S
from tests.command.child import RUN, SETTINGS, Served
from tests.conftest import PATIENCE_S, free_port

LIMIT_S = 4.0
"""A person pulls the plug of what does not end; no stream that is still open may take the station longer."""


class Listener(threading.Thread):
    """Reads a live stream to its end."""

    def __init__(self, port: int) -> None:
        super().__init__(daemon=True)
        self.text = b""
        self.socket = socket.create_connection(("127.0.0.1", port), timeout=PATIENCE_S)
        self.socket.sendall(b"GET /api/stream?after=0 HTTP/1.1\r\nHost: localhost\r\n\r\n")
        self.start()

    def run(self) -> None:
        with self.socket:
            while chunk := self.socket.recv(65536):
                self.text += chunk

    def numbers(self) -> list[int]:
        return [int(line.removeprefix(b"id: ")) for line in self.text.split(b"\n") if line.startswith(b"id: ")]


def sleeper(port: int) -> socket.socket:
    """Open a stream and never read it."""
    asleep = socket.socket()
    asleep.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
    asleep.connect(("127.0.0.1", port))
    asleep.sendall(b"GET /api/stream?after=0 HTTP/1.1\r\nHost: localhost\r\n\r\n")
    return asleep


def until(station: Served, seq: int) -> None:
    limit_s = time.monotonic() + PATIENCE_S
    while station.state()["seq"] < seq:
        assert time.monotonic() < limit_s
        time.sleep(0.02)


@pytest.mark.fault("open-streams-at-the-end")
@pytest.mark.parametrize("number", [signal.SIGTERM, signal.SIGINT])
def test_with_ten_open_streams_and_a_sleeping_one_it_ends_in_time_and_well(tmp_path: Path, number: int) -> None:
    with Served(tmp_path, speed=100) as station, sleeper(station.port):
        listeners = [Listener(station.port) for _ in range(10)]
        acts = [station.act("begin", "k1"), station.act("portion_added", "k2", portion=1)]
        until(station, 60)
        acts.append(station.act("portion_added", "k3", portion=2))
        station.process.send_signal(number)
        assert station.process.wait(timeout=PATIENCE_S) == 0
        assert station.errors() == ""
        for listener in listeners:
            listener.join(timeout=PATIENCE_S)
    assert GRACE_S < LIMIT_S
    kept = list(read_events(station.record))
    assert [each.seq for each in kept] == list(range(1, len(kept) + 1))
    assert first_broken(station.record) is None
    assert {each.event.key for each in kept if isinstance(each.event, e.PortionAdded | e.RepeatBegun)} == {
        "k1",
        "k2",
        "k3",
    }
    assert {each.json()["seq"] for each in acts} <= {each.seq for each in kept}
    for listener in listeners:
        heard = listener.numbers()
        assert heard == list(range(1, len(heard) + 1))  # nothing was told that is not kept
        assert acts[-1].json()["seq"] <= heard[-1] <= kept[-1].seq
        assert listener.text.endswith(b"0\r\n\r\n")  # each stream was ended, not cut (RFC 9112, 7.1)


def test_nothing_is_left_to_be_recovered(tmp_path: Path) -> None:
    with Served(tmp_path) as station:
        station.act("begin", "k1")
        assert station.terminate() == 0
    assert not (station.record / f"{FILE_NAME}-wal").exists()
    connection = sqlite3.connect(f"file:{station.record / FILE_NAME}?mode=ro", uri=True)
    assert connection.execute("PRAGMA integrity_check").fetchone()[0] == "ok"
    connection.close()


def test_a_signal_as_soon_as_the_address_is_told_ends_it_well(tmp_path: Path) -> None:
    with Served(tmp_path) as station:
        assert (station.terminate(), station.errors()) == (0, "")


def test_a_second_signal_does_no_harm(tmp_path: Path) -> None:
    with Served(tmp_path) as station, sleeper(station.port):
        station.process.send_signal(signal.SIGTERM)
        assert (station.terminate(), station.errors()) == (0, "")
    assert first_broken(station.record) is None


def test_while_it_serves_it_has_loaded_neither_numpy_nor_scipy(tmp_path: Path) -> None:
    with Served(tmp_path) as station:
        station.act("begin", "k1")
        station.act("portion_added", "k2", portion=1)
        plan = station.state()["plan"]
        assert station.client.post("/api/plan", json={"plan": plan}).json()["problems"] == []
        assert station.client.post("/api/preparation", json={"plan": plan, "benches": 15}).status_code == 200
        loaded = Path(f"/proc/{station.process.pid}/maps").read_text()
        assert "python" in loaded
        assert "numpy" not in loaded
        assert "scipy" not in loaded
        assert station.terminate() == 0


@pytest.mark.fault("second-station")
def test_a_second_station_on_the_same_record_is_one_line_and_the_first_goes_on(tmp_path: Path) -> None:
    with Served(tmp_path) as station:
        with pytest.raises(AssertionError, match="another station keeps its record here; stop it first"):
            Served(tmp_path)
        assert station.act("begin", "k1").status_code == 200


@pytest.mark.fault("no-output")
@pytest.mark.parametrize("out", ["closed", "full"])
def test_a_station_that_nobody_can_hear_works_all_the_same(tmp_path: Path, out: str) -> None:
    """The log of a full card, or of nobody, is no reason to end a practical."""
    port = free_port()
    config = tmp_path / "station.toml"
    config.write_text(SETTINGS.format(speed=60).replace("port = 0", f"port = {port}"))
    line = 'exec "$@" >&- 2>&-' if out == "closed" else 'exec "$@" >/dev/full 2>/dev/full'
    env = {**os.environ, "TMPDIR": str(tmp_path)}
    with subprocess.Popen(["sh", "-c", line, "sh", *RUN, "serve", "--config", str(config)], env=env) as process:
        url, until_s = f"http://127.0.0.1:{port}/api/state", time.monotonic() + PATIENCE_S
        while time.monotonic() < until_s and process.poll() is None:
            with suppress(httpx.TransportError):
                assert httpx.get(url, timeout=PATIENCE_S).json()["fault"] is None
                break
            time.sleep(0.05)
        assert process.poll() is None
        process.terminate()
        assert process.wait(timeout=PATIENCE_S) == 0


def test_what_a_killed_station_left_in_memory_goes_when_the_next_one_opens(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(assembly, "IN_MEMORY", tmp_path)
    gone = subprocess.Popen(["true"])
    gone.wait()
    dead, alive, other = (tmp_path / f"{assembly.SCRATCH}{of}" for of in (f"{gone.pid}-a", f"{os.getpid()}-b", "notes"))
    for folder in (dead, alive, other):
        folder.mkdir()
        (folder / "file").touch()
    with assembly.scratch_folder() as mine:
        assert mine.parent == tmp_path
        assert (dead.exists(), alive.exists(), other.exists()) == (False, True, True)
    assert not mine.exists()
