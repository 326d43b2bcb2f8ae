"""Wheels to update from: the station's own one, under another version, whole or spoilt."""

import base64
import hashlib
import zipfile
from collections.abc import Callable
from importlib.metadata import distribution
from pathlib import Path

from station.kit.offer import own_wheel, repacked

Change = Callable[[dict[str, bytes]], None]


def own(folder: Path) -> Path:
    """The station's wheel as it is here."""
    return own_wheel(folder)


def pip_wheel(folder: Path) -> Path:
    return repacked(distribution("pip"), folder)


def as_version(wheel: Path, version: str, folder: Path, change: Change = lambda _: None) -> Path:
    """The same wheel under another version, changed, with a RECORD that fits."""
    name, old, *tags = wheel.name.split("-")
    with zipfile.ZipFile(wheel) as packed:
        files = {each: packed.read(each) for each in packed.namelist() if not each.endswith("/RECORD")}
    info, new = f"{name}-{old}.dist-info", f"{name}-{version}.dist-info"
    files = {each.replace(info, new): content for each, content in files.items()}
    files[f"{new}/METADATA"] = files[f"{new}/METADATA"].replace(
        f"\nVersion: {old}\n".encode(), f"\nVersion: {version}\n".encode()
    )
    change(files)
    return packed_as(folder / "-".join([name, version, *tags]), new, files)


def packed_as(target: Path, info: str, files: dict[str, bytes], record: str | None = None) -> Path:
    rows = [f"{name},sha256={_told(content)},{len(content)}" for name, content in files.items()]
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as packed:
        for name, content in files.items():
            packed.writestr(name, content)
        packed.writestr(f"{info}/RECORD", "\n".join([*rows, f"{info}/RECORD,,", ""]) if record is None else record)
    return target


def _told(content: bytes) -> str:
    return base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
