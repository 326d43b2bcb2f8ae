"""Complete images of cards from the official one: its boot partition is filled, everything else stays as it is.

Needs mtools (a package of Debian), which writes into a FAT partition inside a file, without root and without mounting.
"""

import filecmp
import hashlib
import lzma
import os
import shutil
import struct
import subprocess
import tempfile
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import BinaryIO, Final, NamedTuple

from station.kit.table import KitError
from station.words import say

SECTOR_BYTES: Final = 512
FAT_TYPES: Final = (0x0B, 0x0C, 0x0E)
"""Partition types of FAT32 and FAT16 with logical block addresses."""
PIECE: Final = 1 << 20
WITHIN_S: Final = 600
EXPECTED: Final = ("config.txt", "cmdline.txt", "user-data")
"""What the boot partition of the named release has: without the last one nothing would read the card's files."""


class Partition(NamedTuple):
    """Where a partition lies in an image, in bytes."""

    start: int
    length: int


def write_images(base: Path, named: str | None, cards: Sequence[Path], out: Path) -> list[Path]:
    """Write one image for each card's folder, beside it; return them. Raises KitError, OSError.

    `named` is the digest published beside the image, of the file as it was downloaded.
    """
    if shutil.which("mcopy") is None:
        raise KitError(say("image-no-mtools"))
    _as_named(base, named)
    with tempfile.TemporaryDirectory(prefix=".image-", dir=out) as scratch:
        image = _unpacked(base, Path(scratch))
        boot = boot_partition(image)
        lacking = [name for name in EXPECTED if name not in _listed(image, boot)]
        if lacking:
            raise KitError(say("image-other", path=str(base), file=lacking[0]))
        _room_for(image.stat().st_size * len(cards), out)
        return [_written(image, boot, card, out / f"{card.name}.img") for card in cards]


def boot_partition(image: Path) -> Partition:
    """Return the first partition of an image with a master boot record. Raises KitError where it is not FAT."""
    with image.open("rb") as file:
        record = file.read(SECTOR_BYTES)
    if len(record) < SECTOR_BYTES or record[510:] != b"\x55\xaa" or record[446 + 4] not in FAT_TYPES:
        raise KitError(say("image-no-boot", path=str(image)))
    start, count = struct.unpack_from("<II", record, 446 + 8)
    found = Partition(start * SECTOR_BYTES, count * SECTOR_BYTES)
    if start == 0 or found.start + found.length > image.stat().st_size:
        raise KitError(say("image-no-boot", path=str(image)))
    return found


def _as_named(base: Path, named: str | None) -> None:
    if named is None:
        return
    with base.open("rb") as file:
        digest = hashlib.file_digest(file, "sha256").hexdigest()
    if digest != named.strip().lower():
        raise KitError(say("image-not-as-named", path=str(base), digits_text=digest[:16]))


def _unpacked(base: Path, scratch: Path) -> Path:
    if base.suffix != ".xz":
        return base
    image = scratch / "base.img"
    try:
        with lzma.open(base) as packed, image.open("wb") as file:
            _copy(packed, file)
    except (lzma.LZMAError, EOFError):
        raise KitError(say("image-not-whole", path=str(base))) from None
    return image


def _copy(source: BinaryIO | lzma.LZMAFile, target: BinaryIO) -> None:
    """Copy, leaving holes where nothing but zeros stands: an image is mostly that."""
    while piece := source.read(PIECE):
        if piece.count(0) == len(piece):
            target.seek(len(piece), os.SEEK_CUR)
        else:
            target.write(piece)
    target.truncate(target.tell())


def _room_for(length: int, out: Path) -> None:
    free = shutil.disk_usage(out).free
    if free < length:
        raise KitError(say("image-no-room", path=str(out), gigabytes=f"{length / 1e9:.1f}"))


def _written(image: Path, boot: Partition, card: Path, target: Path) -> Path:
    part = target.with_name(f"{target.name}.part")
    handle = os.open(part, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o600)  # it holds passwords and hashes
    with image.open("rb") as source, os.fdopen(handle, "wb") as file:
        _copy(source, file)
    _mtools(["mcopy", "-i", _at(part, boot), "-s", "-o", "-Q", *map(str, sorted(card.iterdir())), "::/"], target)
    with tempfile.TemporaryDirectory(prefix=".read-", dir=target.parent) as back:
        names = [f"::/{each.name}" for each in sorted(card.iterdir())]
        _mtools(["mcopy", "-i", _at(part, boot), "-s", "-n", *names, back], target)
        if not _same(card, Path(back)):
            raise KitError(say("image-not-written", path=str(target), reason="read back otherwise"))
    part.replace(target)
    return target


def _same(card: Path, back: Path) -> bool:
    files = [each.relative_to(card) for each in card.rglob("*") if each.is_file()]
    return all((back / each).is_file() and filecmp.cmp(card / each, back / each, shallow=False) for each in files)


def _listed(image: Path, boot: Partition) -> Iterable[str]:
    told = _mtools(["mdir", "-i", _at(image, boot), "-b", "::/"], image)
    return [line.strip().removeprefix("::/").rstrip("/") for line in told.splitlines()]


def _at(image: Path, boot: Partition) -> str:
    return f"{image}@@{boot.start}"


def _mtools(words: Sequence[str], what: Path) -> str:
    """Run one of the mtools. Raises KitError with its last line."""
    try:
        done = subprocess.run(  # noqa: S603 - names of files that were made here
            words,
            stdin=subprocess.DEVNULL,
            capture_output=True,
            text=True,
            check=False,
            timeout=WITHIN_S,
            env={**os.environ, "MTOOLS_SKIP_CHECK": "1", "LC_ALL": "C.UTF-8"},
        )
    except subprocess.TimeoutExpired:
        raise KitError(say("image-not-written", path=str(what), reason=words[0])) from None
    if done.returncode != 0:
        last = (done.stderr.strip() or words[0]).splitlines()[-1]
        raise KitError(say("image-not-written", path=str(what), reason=last))
    return done.stdout
