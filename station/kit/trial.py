"""Is a release fit to be switched to? Asked of the release itself, in processes of its own, beside the one at work."""

import http.client
import json
import signal
import subprocess
import tempfile
import threading
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Any
from urllib.parse import urlsplit

from station.kit.table import KitError
from station.record.journal import FILE_NAME
from station.record.upkeep import backup
from station.words import say, understood

WITHIN_S, CHECK_WITHIN_S, ASKED_WITHIN_S = 60.0, 180.0, 5.0
_SETTINGS = """\
[bench]
name = "trial"
[probe]
driver = "virtual"
[server]
host = "127.0.0.1"
port = 0
[record]
folder = "record"
"""


def tried(release: Path, version: str, before: Path, config: Path | None, record: Path) -> None:
    """Raise KitError unless the release says its version, is no redder than the one before it, and serves a copy of
    the record and lets it go again. The station at work is not touched.
    """
    asked = _asked([str(release / "bin" / "station"), "--version"])
    if asked.returncode != 0:
        reason = _last(asked.stderr) or say("answer-exit-status", status=asked.returncode)
        raise KitError(say("update-does-not-start", reason=reason))
    told = asked.stdout.partition("\n")[0]
    if told.replace(",", " ").split()[:2] != ["benchwarm", version]:
        raise KitError(say("update-wrong-version", typed=repr(told)))
    new, old = _red(release, config), _red(before, config)
    worse = [say("update-found", check_name=name, found=text) for name, text in new.items() if name not in old]
    if worse:
        raise KitError(say("update-worse", finding=worse[0]))
    with tempfile.TemporaryDirectory(prefix="benchwarm-trial-") as scratch:
        _served(release, Path(scratch), record)


def answers(url: str) -> Mapping[str, Any] | None:
    """Return the state that a station at this address tells; None when none does."""
    where = urlsplit(url)
    connection = http.client.HTTPConnection(where.hostname or "", where.port, timeout=ASKED_WITHIN_S)
    try:
        connection.request("GET", "/api/state")
        answer = connection.getresponse()
        state = json.loads(answer.read())
        return state if answer.status == 200 and "seq" in state else None
    except (OSError, http.client.HTTPException, ValueError):
        return None
    finally:
        connection.close()


def _red(release: Path, config: Path | None) -> dict[str, str]:
    """Return what the check of this release finds red, by name."""
    named = [] if config is None else ["--config", str(config)]
    done = _asked([str(release / "bin" / "station"), "check", "--json", "--reads", "5", *named], CHECK_WITHIN_S)
    try:
        findings = understood(json.loads(done.stdout))["findings"]
        return {each["name"]: each["text"] for each in findings if each["colour"] == "red"}
    except (ValueError, LookupError, TypeError, AttributeError):
        last = _last(done.stderr) or say("update-no-answer")
        return {"check": say("update-check-failed", release_name=release.name, reason=last)}


def _served(release: Path, scratch: Path, record: Path) -> None:
    (scratch / "record").mkdir()
    if (record / FILE_NAME).is_file():
        backup(record, scratch / "record" / FILE_NAME)
    (scratch / "station.toml").write_text(_SETTINGS, encoding="utf-8")
    command = [str(release / "bin" / "station"), "serve", "--config", str(scratch / "station.toml")]
    errors = scratch / "errors"
    with (
        errors.open("w") as log,
        subprocess.Popen(command, stdout=subprocess.PIPE, stderr=log, text=True, cwd=scratch) as station,  # noqa: S603
    ):
        hung = threading.Timer(WITHIN_S, station.kill)
        hung.start()
        try:
            url = _address(station)
            until_s = time.monotonic() + WITHIN_S
            while url and answers(url) is None and station.poll() is None and time.monotonic() < until_s:
                time.sleep(0.2)
            well = url is not None and answers(url) is not None
            station.send_signal(signal.SIGTERM)
            status = station.wait(20)
        except subprocess.TimeoutExpired:
            raise KitError(say("update-does-not-end")) from None
        finally:
            hung.cancel()
            if station.poll() is None:
                station.kill()
    if not well or status != 0:
        last = _last(errors.read_text(errors="replace")) or say("answer-exit-status", status=status)
        raise KitError(say("update-does-not-serve", reason=last))


def _last(text: str) -> str:
    """Return the last line of what a program wrote; nothing where it wrote nothing."""
    return (text.strip().splitlines() or [""])[-1]


def _address(station: "subprocess.Popen[str]") -> str | None:
    assert station.stdout is not None  # noqa: S101 - it is a pipe
    line = station.stdout.readline()
    return line.split()[-1] if "http://" in line else None


def _asked(command: list[str], within_s: float = WITHIN_S) -> "subprocess.CompletedProcess[str]":
    try:
        return subprocess.run(command, capture_output=True, text=True, check=False, timeout=within_s)  # noqa: S603
    except (OSError, subprocess.TimeoutExpired) as error:
        raise KitError(say("update-does-not-start", reason=str(error))) from None
