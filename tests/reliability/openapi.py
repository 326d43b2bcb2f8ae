"""Asks a running station everything that its own OpenAPI document says may be asked (schemathesis)."""

import re
import subprocess
import sys
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from tests.command.child import SETTINGS, Served
from tests.server.doors import GIVEN, HASHED

UNLIMITED = [sys.executable, "-m", "tests.reliability.unlimited"]
CHECKS = "not_a_server_error,status_code_conformance,content_type_conformance,response_schema_conformance"
LEFT_OUT = ("/api/stream", "/api/session", "/api/sessions")
"""A stream has no end; a session that is ended would make the rest of the run a looker's."""


@dataclass(frozen=True)
class Asked:
    """How many requests were made, how many of them were answered otherwise than the document says, and the report."""

    requests: int
    failed: int
    report: str


@contextmanager
def station(folder: Path) -> Iterator[Served]:
    """A station with codes, on which one address may ask as much as it likes, and staff are signed in."""
    access = f'[access]\nteacher_passphrase_hash = "{HASHED.teacher_passphrase_hash}"\n'
    with Served(folder, 20.0, SETTINGS + access, UNLIMITED) as served:
        served.client.post("/api/session", json=GIVEN["teacher"]).raise_for_status()
        yield served


def asked(served: Served, examples: int, phases: str = "fuzzing", left_out: tuple[str, ...] = LEFT_OUT) -> Asked:
    """Make so many requests of each kind, right ones and wrong ones."""
    ((name, value),) = served.client.cookies.items()
    command = [
        *(sys.executable, "-m", "schemathesis.cli", "run", f"{served.url}/api/openapi.json"),
        *("--checks", CHECKS, "--phases", phases, "--max-examples", str(examples), "--request-timeout", "20"),
        *("--header", f"Cookie: {name}={value}", "--warnings", "off", "--continue-on-failure", "--no-color"),
        *(word for path in left_out for word in ("--exclude-path", path)),
    ]
    done = subprocess.run(command, cwd=served.record, capture_output=True, text=True, check=False)
    told = re.search(r"(\d+) generated(?:, (\d+) found)?.*", done.stdout)
    if told is None:
        raise AssertionError(done.stdout + done.stderr)
    return Asked(int(told[1]), 0 if done.returncode == 0 else int(told[2] or 1), done.stdout)
