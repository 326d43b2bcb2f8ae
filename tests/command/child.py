"""A `station` command in a process of its own."""

import os
import signal
import subprocess
import sys
import time
from collections.abc import Sequence
from pathlib import Path
from types import TracebackType
from typing import Any, Self

import httpx

from tests.conftest import PATIENCE_S

RUN = [sys.executable, "-c", "from station.command.main import run; run()"]

SETTINGS = """\
[bench]
name = "Bench 7"
[probe]
driver = "virtual"
[virtual]
speed = {speed}
[server]
host = "127.0.0.1"
port = 0
[record]
folder = "record"
"""


class Served:
    """`station serve` with the virtual cup, its record in `folder / "record"`; killed at the end if it still runs."""

    def __init__(self, folder: Path, speed: float = 60.0, settings: str = SETTINGS, run: Sequence[str] = RUN) -> None:
        self.record = folder / "record"
        config = folder / "station.toml"
        config.write_text(settings.format(speed=speed))
        self.begun_s = time.monotonic()
        # What a killed process leaves in the temporary folder goes with the test's own.
        env = {**os.environ, "TMPDIR": str(folder)}
        command = [*run, "serve", "--config", str(config)]
        self.process = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=env)
        assert self.process.stdout is not None
        line = self.process.stdout.readline()
        if not line.startswith("Bench 7: http://127.0.0.1:"):
            raise AssertionError(line + self.process.communicate(timeout=PATIENCE_S)[1])
        self.url = line.removeprefix("Bench 7: ").strip().rstrip("/")
        self.port = int(self.url.rpartition(":")[2])
        self.client = httpx.Client(base_url=self.url, timeout=PATIENCE_S)

    def __enter__(self) -> Self:
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, at: TracebackType | None) -> None:
        if self.process.poll() is None:
            self.process.kill()
        self.wait()

    def wait(self) -> int:
        """Let go of the process once it has ended; return its exit status."""
        self.client.close()
        status = self.process.wait(timeout=PATIENCE_S)
        for pipe in (self.process.stdout, self.process.stderr):
            assert pipe is not None
            pipe.close()
        return status

    def terminate(self) -> int:
        """Send SIGTERM; return the exit status."""
        self.process.send_signal(signal.SIGTERM)
        return self.process.wait(timeout=PATIENCE_S)

    def errors(self) -> str:
        """Return what an ended process said on standard error."""
        assert self.process.stderr is not None
        return self.process.stderr.read()

    def act(self, act: str, key: str, **values: Any) -> httpx.Response:
        return self.client.post("/api/acts", json={"act": act, "key": key, **values})

    def state(self) -> dict[str, Any]:
        state: dict[str, Any] = self.client.get("/api/state").json()
        return state
