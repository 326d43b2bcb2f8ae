"""Is the record kept, really? Looked up in the kernel's list of mounts, and tried with a small file.

An overlay over a read-only card looks like any folder and loses everything at power-off, without an error
(raspberrypi/bookworm-feedback issue 137: the image's own overlay setting takes in every partition).
"""

import os
import re
import shutil
import tempfile
from dataclasses import dataclass
from pathlib import Path

from station.bench.check.finding import Colour, Finding
from station.bench.check.kit import Kit, text_of

IN_MEMORY = frozenset({"tmpfs", "ramfs", "rootfs", "devtmpfs"})
MEMORY_DEVICES = ("/dev/zram", "/dev/ram")
UNSAFE = {
    **dict.fromkeys(("vfat", "exfat", "msdos", "ntfs", "ntfs3"), "does not survive a pulled plug well"),
    **dict.fromkeys(
        ("nfs", "nfs4", "cifs", "smb3", "9p"), "is on another machine, where the record's file must not be"
    ),
}
LEAST_MB, ENOUGH_MB = 50, 500
HOUR_MB = 0.8
"""An hour of samples, measured (tests/benchmarks/bench_check.py)."""

_ON_THE_CARD = "set folder below [record] in station.toml to a folder on the card"


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
        return Finding("storage", "unknown", f"this machine does not tell where {folder} is kept", values=values)
    values |= {"file_system": mount.kind, "mounted_on": mount.point, "device": mount.device}
    if lost_with_power(mount, mounts):
        text = f"the record is kept in memory ({mount.kind} on {mount.point}): it is gone at power-off"
        off = "switch the overlay file system off (raspi-config, Performance Options), or "
        remedy = (off if mount.kind == "overlay" else "") + _ON_THE_CARD
        return Finding("storage", "red", text, remedy, values)
    if "ro" in mount.options or _locked(kit, mount):
        text = f"{mount.point}, where the record is kept, is read-only ({mount.device})"
        remedy = "restart the Pi; if it stays so the card is locked or worn out: take another"
        return Finding("storage", "red", text, remedy, values)
    trouble = _trouble(folder, there)
    if trouble is not None:
        return Finding("storage", *trouble, values)
    if mount.kind in UNSAFE:
        return Finding(
            "storage", "amber", f"{folder} is on {mount.kind}, which {UNSAFE[mount.kind]}", _ON_THE_CARD, values
        )
    return Finding(
        "storage", "green", f"{folder} can be written and is kept ({mount.kind} on {mount.device})", values=values
    )


def free_space(kit: Kit) -> Finding:
    """Return how long the record has room."""
    free_mb = shutil.disk_usage(_nearest(kit.folder.absolute())).free / 1e6
    values = {"free_mb": round(free_mb), "hours": round(free_mb / HOUR_MB)}
    if free_mb >= ENOUGH_MB:
        return Finding("free_space", "green", f"{free_mb:.0f} MB free", values=values)
    text = f"only {free_mb:.0f} MB free, room for some {values['hours']} hours of samples"
    remedy = "keep the old records elsewhere and delete them here, or take a larger card"
    return Finding("free_space", "red" if free_mb < LEAST_MB else "amber", text, remedy, values)


def _nearest(folder: Path) -> Path:
    return next((each for each in (folder, *folder.parents) if each.exists()), Path("/"))


def _locked(kit: Kit, mount: Mount) -> bool:
    """Whether the card itself refuses to be written: a worn one locks for ever."""
    return text_of(kit.at(f"sys/class/block/{Path(mount.device).name}/ro")) == "1"


def _trouble(folder: Path, there: Path) -> tuple[Colour, str, str] | None:
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
        return "red", f"{folder} cannot be written: {error.strerror}", _ON_THE_CARD
    return None if same else ("red", f"{folder} gives back other bytes than were written", "take another card")


def _refused(folder: Path, there: Path) -> tuple[Colour, str, str]:
    if not there.is_dir():
        return "red", f"{there} is a file, so the record's folder cannot be there", _ON_THE_CARD
    owner = there.stat().st_uid
    if owner != os.geteuid():
        return "unknown", f"{folder} is another user's (uid {owner})", "check again with sudo"
    return "red", f"{folder} may not be written", f"chmod u+rwx {there}"
