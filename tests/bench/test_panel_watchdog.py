"""What systemd is told, through a real datagram socket; sd_notify(3) and systemd.service(5) are the reference."""

import socket
import tempfile
from collections.abc import Iterator
from pathlib import Path

import pytest

from station.bench import watchdog
from tests.conftest import PATIENCE_S


@pytest.fixture(params=["path", "abstract"])
def systemd(request: pytest.FixtureRequest, monkeypatch: pytest.MonkeyPatch) -> Iterator[socket.socket]:
    with tempfile.TemporaryDirectory() as folder, socket.socket(socket.AF_UNIX, socket.SOCK_DGRAM) as channel:
        path = str(Path(folder) / "notify")
        channel.bind(path if request.param == "path" else "\0" + path)
        channel.settimeout(PATIENCE_S)
        monkeypatch.setenv("NOTIFY_SOCKET", path if request.param == "path" else "@" + path)
        yield channel


def test_ready_and_stopping(systemd: socket.socket) -> None:
    assert watchdog.ready()
    assert systemd.recv(64) == b"READY=1"
    assert watchdog.stopping()
    assert systemd.recv(64) == b"STOPPING=1"


@pytest.mark.fault("station-hangs")
def test_fed_only_while_samples_are_fresh(systemd: socket.socket) -> None:
    assert watchdog.feed(1.0)
    assert systemd.recv(64) == b"WATCHDOG=1"
    assert not watchdog.feed(watchdog.FRESH_S + 0.1)
    systemd.setblocking(False)
    with pytest.raises(BlockingIOError):
        systemd.recv(64)


def test_a_full_queue_holds_nothing_up(systemd: socket.socket) -> None:
    assert not all(watchdog.notify("WATCHDOG=1") for _ in range(2000))


def test_outside_systemd_nothing_happens(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.delenv("NOTIFY_SOCKET", raising=False)
    assert not watchdog.ready()
    monkeypatch.setenv("NOTIFY_SOCKET", str(tmp_path / "gone"))
    assert not watchdog.ready()
