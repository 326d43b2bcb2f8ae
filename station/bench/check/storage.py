"""Is the record kept, really? Looked up in the kernel's list of mounts, and tried with a small file.

An overlay over a read-only card looks like any folder and loses everything at power-off, without an error
(raspberrypi/bookworm-feedback issue 137: the image's own overlay setting takes in every partition).
"""

import json
import os
import re
import shutil
import sqlite3
import subprocess
import sys
import tempfile
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from station.bench.check.finding import Colour, Finding, Kit, text_of
from station.record.journal import FILE_NAME
from station.words import Message, said, say

# Is the record as it was written? SQLite's check and the chain of digests, read-only and within a time limit.


WITHIN_S = 20.0
DAMAGED = frozenset({sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB})


def journal(kit: Kit, within_s: float = WITHIN_S) -> Finding:
    """Return whether every event of the record is as it was written."""
    path = kit.folder / FILE_NAME
    try:
        size_mb = round(path.stat().st_size / 1e6, 2)
    except PermissionError:
        text = say("check-not-readable", path=str(path))
        return Finding("journal", "unknown", text, say("check-again-with-sudo"))
    except OSError:
        return Finding("journal", "green", say("check-record-none"), values={"events": 0})
    told = _looked_through(kit.folder, within_s)
    return _judged(kit.folder, told, within_s, {"path": str(path), "size_mb": size_mb, **told})


def _judged(folder: Path, told: dict[str, Any], within_s: float, values: dict[str, Any]) -> Finding:
    sound, seconds = told.get("quick_check", ["ok"]), f"{within_s:.0f}"
    if sound != ["ok"]:
        return _damaged(folder, say("check-record-sqlite", reason=sound[0]), values)
    if "error" in told:
        return _unreadable(folder, told, values)
    if "quick_check" not in told:
        text = say("check-record-not-looked-through", seconds=seconds)
        return Finding("journal", "unknown", text, values=values)
    if "first_broken" not in told:
        text = say("check-record-chain-not-followed", count=told["events"], seconds=seconds)
        return Finding("journal", "unknown", text, values=values)
    if told["first_broken"] is not None:
        return _damaged(folder, say("check-record-event-changed", event=told["first_broken"]), values)
    return Finding("journal", "green", say("check-record-sound", count=told["events"]), values=values)


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
    if "error" in told:
        told["error"] = said(told["error"])
    return told | ({"error": failed[0]} if failed else {})


def _damaged(folder: Path, what: str, values: dict[str, Any]) -> Finding:
    remedy = say("check-record-begin-anew", path=str(folder))
    return Finding("journal", "red", say("check-record-damaged", reason=what), remedy, values)


def _unreadable(folder: Path, told: dict[str, Any], values: dict[str, Any]) -> Finding:
    if told.get("sqlite_code") in DAMAGED:
        return _damaged(folder, told["error"], values)
    # A record in write-ahead mode also needs the files beside it, which another user may not make.
    text = say("check-record-unreadable", reason=told["error"])
    return Finding("journal", "unknown", text, say("check-again-with-sudo"), values)


IN_MEMORY = frozenset({"tmpfs", "ramfs", "rootfs", "devtmpfs"})
MEMORY_DEVICES = ("/dev/zram", "/dev/ram")
PLUG_SENSITIVE = frozenset({"vfat", "exfat", "msdos", "ntfs", "ntfs3"})
ELSEWHERE = frozenset({"nfs", "nfs4", "cifs", "smb3", "9p"})
"""On another machine, where the record's file must not be."""
LEAST_MB, ENOUGH_MB = 50, 500
HOUR_MB = 0.8
"""An hour of samples, measured (tests/benchmarks/bench_check.py)."""


@dataclass(frozen=True)
class Mount:
    """One line of /proc/self/mountinfo (proc(5))."""

    point: str
    kind: str
    device: str
    options: frozenset[str]
    overlay_on: str | None = None  # an overlay's writable folder

    @property
    def in_memory(self) -> bool:
        """Whether what is written there is gone at power-off."""
        return self.kind in IN_MEMORY or self.device.startswith(MEMORY_DEVICES)


def mounts_in(text: str) -> list[Mount]:
    """Return the mounts, in the kernel's order: what is mounted over a point comes after it."""
    found = []
    for line in text.splitlines():
        before, _, after = line.partition(" - ")
        fields, rest = before.split(" "), after.split(" ")
        if len(fields) < 6 or len(rest) < 3:
            continue
        options = {*fields[5].split(","), *rest[2].split(",")}
        upper = next((each.partition("=")[2] for each in options if each.startswith("upperdir=")), None)
        found.append(Mount(_plain(fields[4]), rest[0], _plain(rest[1]), frozenset(options), upper and _plain(upper)))
    return found


def _plain(escaped: str) -> str:
    return re.sub(r"\\([0-7]{3})", lambda found: chr(int(found[1], 8)), escaped)


def mount_of(path: str, mounts: list[Mount]) -> Mount | None:
    """Return the mount that holds this path: the longest point, and of equals the newest."""
    under = [each for each in mounts if path == each.point or path.startswith(each.point.rstrip("/") + "/")]
    return max(enumerate(under), key=lambda each: (len(each[1].point), each[0]))[1] if under else None


def lost_with_power(mount: Mount, mounts: list[Mount]) -> bool:
    """Whether it keeps nothing. An overlay keeps what its writable folder keeps; if that is hidden, it is in memory."""
    if mount.kind != "overlay":
        return mount.in_memory
    below = mount_of(mount.overlay_on, mounts) if mount.overlay_on else None
    return below is None or below.kind == "overlay" or below.in_memory


def kept_in_memory(folder: Path) -> bool:
    """Whether all that is written to this folder is certainly gone at power-off.

    An overlay whose writable folder is out of sight, as in a container, is given the benefit of the doubt here.
    """
    mounts = mounts_in(text_of(Path("/proc/self/mountinfo")) or "")
    mount = mount_of(str(_nearest(folder.absolute()).resolve()), mounts)
    if mount is not None and mount.overlay_on:
        mount = mount_of(mount.overlay_on, mounts)
    return mount is not None and mount.in_memory


def storage(kit: Kit) -> Finding:
    """Return whether the record's folder can be written and is kept."""
    folder = kit.folder.absolute()
    there = _nearest(folder)
    mounts = mounts_in(text_of(kit.at("proc/self/mountinfo")) or "")
    mount = mount_of(str(there.resolve()), mounts)
    values = {"folder": str(folder), "exists": folder.is_dir()}
    if mount is None:
        return Finding("storage", "unknown", say("check-storage-unknown", path=str(folder)), values=values)
    values |= {"file_system": mount.kind, "mounted_on": mount.point, "device": mount.device}
    if lost_with_power(mount, mounts):
        text = say("check-storage-in-memory", kind_name=mount.kind, mount_path=mount.point)
        remedy = say("check-storage-overlay-off" if mount.kind == "overlay" else "check-storage-on-the-card")
        return Finding("storage", "red", text, remedy, values)
    if "ro" in mount.options or _locked(kit, mount):
        text = say("check-storage-read-only", mount_path=mount.point, device_name=mount.device)
        return Finding("storage", "red", text, say("check-storage-card-worn"), values)
    trouble = _trouble(folder, there)
    if trouble is not None:
        return Finding("storage", *trouble, values)
    if mount.kind in PLUG_SENSITIVE | ELSEWHERE:
        text = say(
            "check-storage-unsafe-plug" if mount.kind in PLUG_SENSITIVE else "check-storage-unsafe-network",
            path=str(folder),
            kind_name=mount.kind,
        )
        return Finding("storage", "amber", text, say("check-storage-on-the-card"), values)
    text = say("check-storage-good", path=str(folder), kind_name=mount.kind, device_name=mount.device)
    return Finding("storage", "green", text, values=values)


def free_space(kit: Kit) -> Finding:
    """Return how long the record has room."""
    free_mb = shutil.disk_usage(_nearest(kit.folder.absolute())).free / 1e6
    values = {"free_mb": round(free_mb), "hours": round(free_mb / HOUR_MB)}
    if free_mb >= ENOUGH_MB:
        return Finding("free_space", "green", say("check-storage-free", megabytes=f"{free_mb:.0f}"), values=values)
    text = say("check-storage-little", megabytes=f"{free_mb:.0f}", hours=values["hours"])
    colour: Colour = "red" if free_mb < LEAST_MB else "amber"
    return Finding("free_space", colour, text, say("check-storage-delete-old"), values)


def _nearest(folder: Path) -> Path:
    return next((each for each in (folder, *folder.parents) if each.exists()), Path("/"))


def _locked(kit: Kit, mount: Mount) -> bool:
    """Whether the card itself refuses to be written: a worn one locks for ever."""
    return text_of(kit.at(f"sys/class/block/{Path(mount.device).name}/ro")) == "1"


def _trouble(folder: Path, there: Path) -> tuple[Colour, Message, Message] | None:
    """Try it: write, sync, read again, delete. A folder that is not there yet is only asked for."""
    if there != folder:
        if there.is_dir() and os.access(there, os.W_OK | os.X_OK):
            return None
        return _refused(folder, there)
    try:
        with tempfile.NamedTemporaryFile(dir=folder, prefix=".check-") as file:
            file.write(b"kept?")
            file.flush()
            os.fsync(file.fileno())
            same = Path(file.name).read_bytes() == b"kept?"
    except PermissionError:
        return _refused(folder, there)
    except OSError as error:
        text = say("check-storage-cannot-write", path=str(folder), reason=str(error.strerror))
        return "red", text, say("check-storage-on-the-card")
    if same:
        return None
    return "red", say("check-storage-other-bytes", path=str(folder)), say("check-storage-take-another")


def _refused(folder: Path, there: Path) -> tuple[Colour, Message, Message]:
    if not there.is_dir():
        return "red", say("check-storage-is-a-file", path=str(there)), say("check-storage-on-the-card")
    owner = there.stat().st_uid
    if owner != os.geteuid():
        return "unknown", say("check-storage-other-user", path=str(folder), user=owner), say("check-again-with-sudo")
    return "red", say("check-storage-not-writable", path=str(folder)), say("check-storage-chmod", path=str(there))
