"""What somebody brings on a stick: wheels, looked at before anything of them is installed.

A wheel runs as root once it is installed, so a stick alone says nothing: whoever installs names the SHA-256 of the
wheel, or of the list `SHA256SUMS` beside the wheels, as it was told by whoever made them. Everything is copied first
and the copies are looked at, since a stick can change under our hands.
"""

import base64
import csv
import hashlib
import io
import re
import shutil
import stat
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from email.parser import BytesParser
from pathlib import Path, PurePosixPath

from station.kit.table import KitError
from station.kit.wheelhouse import DISTRIBUTION

SUMS = "SHA256SUMS"
SHORTEST_NAMED = 16
"""So many hexadecimal digits of a digest name it: 64 bits cannot be met by trying."""
LARGEST_WHEEL, LARGEST_UNPACKED, MOST_FILES, MOST_WHEELS = 200_000_000, 600_000_000, 20_000, 200

_WHEEL = re.compile(r"([A-Za-z0-9_.]+)-([A-Za-z0-9_.!+]+)(-\d[^-]*)?-[^-]+-[^-]+-[^-]+\.whl")


@dataclass(frozen=True)
class Offer:
    """Wheels that lie in `folder`, copied there; `digest` is the SHA-256 that has to be named for them."""

    folder: Path
    version: str
    digest: str

    def is_named(self, words: str) -> bool:
        """Whether these words name it: its first digits, in any case, with or without spaces."""
        plain = "".join(words.split()).lower()
        return len(plain) >= SHORTEST_NAMED and self.digest.startswith(plain)


def taken(source: Path, folder: Path) -> Offer:
    """Copy what is offered into this empty folder and look at the copy. Raises KitError: what is wrong with it."""
    try:
        return _from_folder(source, folder) if source.is_dir() else _from_wheel(source, folder)
    except FileNotFoundError as error:
        raise KitError(f"{error.filename}: not there; check the name, and whether the stick is mounted") from None
    except OSError as error:
        raise KitError(f"{source}: cannot be read: {error.strerror}") from None


def write_sums(folder: Path) -> str:
    """Write the list of a folder's wheels, as `sha256sum` has it, and return the list's own SHA-256."""
    lines = [f"{_digest(wheel)}  {wheel.name}\n" for wheel in sorted(folder.glob("*.whl"))]
    text = "".join(lines)
    (folder / SUMS).write_text(text, encoding="utf-8", newline="\n")
    return hashlib.sha256(text.encode()).hexdigest()


def checked_wheel(wheel: Path) -> tuple[str, str]:
    """Return name and version of a wheel whose files stay inside it and are as its RECORD has them. Raises KitError."""
    named = _WHEEL.fullmatch(wheel.name)
    if named is None:
        raise KitError(f"{wheel.name}: not the name of a wheel")
    try:
        with zipfile.ZipFile(wheel) as packed:
            _safe(wheel.name, packed.infolist())
            info = f"{named[1]}-{named[2]}.dist-info"
            told = BytesParser().parsebytes(packed.read(f"{info}/METADATA"))
            _as_recorded(wheel.name, packed, info)
    except (zipfile.BadZipFile, KeyError, NotImplementedError, RuntimeError, EOFError) as error:
        raise KitError(f"{wheel.name}: not a whole wheel ({error}); copy it again") from None
    name, version = str(told["Name"]), str(told["Version"])
    if (_plain(name), version) != (_plain(named[1]), named[2]):
        raise KitError(f"{wheel.name}: inside it says {name} {version}")
    return _plain(name), version


def _from_wheel(source: Path, folder: Path) -> Offer:
    _copied([source], folder)
    copy = folder / source.name
    name, version = checked_wheel(copy)
    if name != DISTRIBUTION:
        raise KitError(f"{source}: a wheel of {name}; name the wheel of {DISTRIBUTION}")
    return Offer(folder, version, _digest(copy))


def _from_folder(source: Path, folder: Path) -> Offer:
    if not (source / SUMS).is_file():
        raise KitError(f"{source}: no {SUMS} in it; take the folder wheelhouse that `station kit` made, whole")
    wheels = sorted(source.glob("*.whl"))
    if len(wheels) > MOST_WHEELS:
        raise KitError(f"{source}: {len(wheels)} wheels; take the folder wheelhouse that `station kit` made")
    _copied([source / SUMS, *wheels], folder)
    listed = _listed(folder / SUMS)
    for wheel in wheels:
        if listed.get(wheel.name) != _digest(folder / wheel.name):
            raise KitError(f"{wheel}: not as {SUMS} has it; copy the folder again")
    missing = sorted(listed.keys() - {wheel.name for wheel in wheels})
    if missing:
        raise KitError(f"{source}: {missing[0]} is in {SUMS} but not there; copy the folder again")
    found = [checked_wheel(folder / wheel.name) for wheel in wheels]
    versions = [version for name, version in found if name == DISTRIBUTION]
    if len(versions) != 1:
        raise KitError(f"{source}: {len(versions)} wheels of {DISTRIBUTION}; one is wanted")
    return Offer(folder, versions[0], _digest(folder / SUMS))


def _copied(files: Iterable[Path], folder: Path) -> None:
    for file in files:
        if file.stat().st_size > LARGEST_WHEEL:
            raise KitError(f"{file}: larger than {LARGEST_WHEEL // 1_000_000} MB; is it the right file?")
        shutil.copyfile(file, folder / file.name)


def _listed(sums: Path) -> dict[str, str]:
    found = {}
    for number, line in enumerate(sums.read_text(encoding="utf-8-sig", errors="replace").splitlines(), 1):
        match = re.fullmatch(r"([0-9a-f]{64}) [ *]([^/\\]+\.whl)", line)
        if match is None:
            raise KitError(f"{sums.name}: line {number} is not a digest and the name of a wheel")
        found[match[2]] = match[1]
    return found


def _safe(where: str, entries: list[zipfile.ZipInfo]) -> None:
    """Refuse what would leave its folder, be a link, come twice, or be too much. Raises KitError."""
    names = [entry.filename for entry in entries]
    if len(names) > MOST_FILES or sum(entry.file_size for entry in entries) > LARGEST_UNPACKED:
        raise KitError(f"{where}: more than a wheel of this station has")
    if len({name.casefold() for name in names}) != len(names):
        raise KitError(f"{where}: a file comes twice in it")
    for entry in entries:
        parts = PurePosixPath(entry.filename).parts
        leaves = entry.filename.startswith("/") or ".." in parts or "\\" in entry.filename or ":" in entry.filename
        if leaves or not entry.filename.isprintable() or stat.S_ISLNK(entry.external_attr >> 16):
            raise KitError(f"{where}: {entry.filename!r} would not stay in its folder")


def _as_recorded(where: str, packed: zipfile.ZipFile, info: str) -> None:
    """Compare every file with RECORD (binary distribution format, PEP 427). Raises KitError."""
    recorded = {
        row[0]: row[1] for row in csv.reader(io.StringIO(packed.read(f"{info}/RECORD").decode())) if len(row) == 3
    }
    exempt = {f"{info}/RECORD", f"{info}/RECORD.jws", f"{info}/RECORD.p7s"}
    for entry in packed.infolist():
        if entry.is_dir() or entry.filename in exempt:
            continue
        digest = hashlib.sha256()
        with packed.open(entry) as file:
            while piece := file.read(1 << 20):
                digest.update(piece)
        told = f"sha256={base64.urlsafe_b64encode(digest.digest()).rstrip(b'=').decode()}"
        if recorded.get(entry.filename) != told:
            raise KitError(f"{where}: {entry.filename} is not as its RECORD has it")


def _digest(file: Path) -> str:
    with file.open("rb") as content:
        return hashlib.file_digest(content, "sha256").hexdigest()


def _plain(name: str) -> str:
    """Return a project's name as names are compared (PEP 503)."""
    return re.sub(r"[-_.]+", "-", name).lower()
