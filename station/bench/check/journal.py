"""Is the record as it was written? SQLite's check and the chain of digests, read-only and within a time limit."""

import json
import sqlite3
import subprocess
import sys
from pathlib import Path
from typing import Any

from station.bench.check.finding import Finding
from station.bench.check.kit import Kit
from station.record.opening import FILE_NAME

WITHIN_S = 20.0
DAMAGED = frozenset({sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB})


def journal(kit: Kit, within_s: float = WITHIN_S) -> Finding:
    """Return whether every event of the record is as it was written."""
    path = kit.folder / FILE_NAME
    try:
        size_mb = round(path.stat().st_size / 1e6, 2)
    except PermissionError:
        return Finding("journal", "unknown", f"{path} may not be read by this user", "check again with sudo")
    except OSError:
        return Finding("journal", "green", "no record yet: the first start begins one", values={"events": 0})
    told = _looked_through(kit.folder, within_s)
    return _judged(kit.folder, told, within_s, {"path": str(path), "size_mb": size_mb, **told})


def _judged(folder: Path, told: dict[str, Any], within_s: float, values: dict[str, Any]) -> Finding:
    sound, unfinished = told.get("quick_check", ["ok"]), f"in {within_s:.0f} s"
    if sound != ["ok"]:
        return _damaged(folder, f"SQLite finds it damaged: {sound[0]}", values)
    if "error" in told:
        return _unreadable(folder, told, values)
    if "quick_check" not in told:
        return Finding("journal", "unknown", f"the record could not be looked through {unfinished}", values=values)
    if "first_broken" not in told:
        text = f"SQLite finds the record sound; its chain of {told['events']} events was not followed {unfinished}"
        return Finding("journal", "unknown", text, values=values)
    if told["first_broken"] is not None:
        return _damaged(folder, f"event {told['first_broken']} is not as it was written", values)
    return Finding("journal", "green", f"the record is sound, {told['events']} events", values=values)


def _looked_through(folder: Path, within_s: float) -> dict[str, Any]:
    """Return what the child could tell in time; it is killed when the time is up."""
    command = [sys.executable, "-P", "-m", "station.bench.check.journal_child", str(folder.absolute())]
    try:
        done = subprocess.run(command, capture_output=True, text=True, timeout=within_s, check=False)  # noqa: S603
        out, failed = done.stdout, done.stderr.strip().splitlines()[-1:] if done.returncode else []
    except subprocess.TimeoutExpired as late:
        out, failed = (late.stdout or b"").decode(), []
    told: dict[str, Any] = {}
    for line in out.splitlines():
        told |= json.loads(line)
    return told | ({"error": failed[0]} if failed else {})


def _damaged(folder: Path, what: str, values: dict[str, Any]) -> Finding:
    remedy = (
        f"stop the station, rename {folder} and start it again: a new record begins, or station restore FILE puts a "
        "backup in its place; keep the old folder whole, what is before the damage can still be exported"
    )
    return Finding("journal", "red", f"the record is damaged: {what}", remedy, values)


def _unreadable(folder: Path, told: dict[str, Any], values: dict[str, Any]) -> Finding:
    if told.get("sqlite_code") in DAMAGED:
        return _damaged(folder, told["error"], values)
    # A record in write-ahead mode also needs the files beside it, which another user may not make.
    return Finding(
        "journal", "unknown", f"the record could not be read: {told['error']}", "check again with sudo", values
    )
