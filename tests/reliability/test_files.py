"""Where a process may have few files open, a crowd of connections must not take the last."""

import socket
import time
from contextlib import ExitStack
from pathlib import Path

import httpx
import pytest

from tests.command.child import RUN, SETTINGS, Served
from tests.conftest import PATIENCE_S

FEW = ["sh", "-c", 'ulimit -n 360; exec "$@"', "sh"]


@pytest.mark.fault("many-connections")
def test_a_crowd_leaves_files_for_the_others_and_the_log_empty(tmp_path: Path) -> None:
    with Served(tmp_path, 60.0, SETTINGS, [*FEW, *RUN]) as station, ExitStack() as crowd:
        for _ in range(400):
            client = crowd.enter_context(socket.socket())
            client.bind(("127.0.0.2", 0))
            client.connect(("127.0.0.1", station.port))
        until_s = time.monotonic() + PATIENCE_S
        while station.client.get("/api/state").json()["live"] is None and time.monotonic() < until_s:
            time.sleep(0.02)
        assert station.state()["fault"] is None
        assert httpx.get(f"{station.url}/api/record.xlsx", timeout=PATIENCE_S).status_code == 200
        station.terminate()
        assert station.errors() == ""
