"""What somebody brings on a stick: wheels, looked at before anything of them is installed.

A wheel runs as root once it is installed, so a stick alone says nothing: whoever installs names the SHA-256 of the
wheel, or of the list `SHA256SUMS` beside the wheels, as it was told by whoever made them. Everything is copied first
and the copies are looked at, since a stick can change under our hands; only plain files are, so that nothing else of
this machine is read and nothing is read without end.
"""

import base64
import csv
import hashlib
import io
import json
import os
import re
import stat
import subprocess
import sys
import zipfile
from collections.abc import Iterable
from dataclasses import dataclass
from email.parser import BytesParser
from importlib.metadata import Distribution, distribution
from importlib.util import find_spec
from io import BufferedReader
from pathlib import Path, PurePosixPath
from urllib.parse import unquote, urlsplit

from station.kit.table import KitError
from station.words import say

# The wheels that a card installs from, so that nothing is downloaded at a bench.
#
# The station's own wheel is put together again from what is installed here (or built from the checkout); the others are
# fetched once, for the named release's Python on 64-bit Arm.


DISTRIBUTION = "benchwarm"
PYTHONS = {"trixie": "3.13"}
PLATFORMS = ("manylinux2014_aarch64", *(f"manylinux_2_{minor}_aarch64" for minor in (17, 24, 28, 31, 34)))
"""What Debian 13's C library (2.41) can run; common wheels ask for one of these."""
FETCH_WITHIN_S = 1200


def own_wheel(folder: Path) -> Path:
    """Write the station's wheel into this folder and return it. Raises KitError."""
    installed = distribution(DISTRIBUTION)
    source = _editable_source(installed)
    if source is None:
        return repacked(installed, folder)
    for old in folder.glob(f"{DISTRIBUTION}-*.whl"):
        old.unlink()
    # Who has the build tools here (the developers' environment) need not fetch them again.
    isolated = [] if find_spec("hatchling") is None else ["--no-build-isolation"]
    _pip("wheel", "--no-deps", *isolated, "--wheel-dir", str(folder), str(source))
    return next(folder.glob(f"{DISTRIBUTION}-*.whl"))


def fetched(wheel: Path, folder: Path, release: str) -> None:
    """Fetch all that the wheel needs on a card of this release, and pip itself. Raises KitError."""
    platforms = [word for platform in PLATFORMS for word in ("--platform", platform)]
    options = ["--only-binary=:all:", "--implementation", "cp", "--python-version", PYTHONS[release], *platforms]
    _pip("download", "--quiet", "--dest", str(folder), *options, str(wheel), "pip")


def repacked(installed: Distribution, folder: Path) -> Path:
    """Put the wheel of an installed distribution together again (binary distribution format, PEP 427)."""
    info = next(path for path in _packed(installed) if path.endswith(".dist-info/METADATA")).partition("/")[0]
    target = folder / f"{info.removesuffix('.dist-info')}-{_tags(installed)}.whl"
    record = f"{info}/RECORD"
    rows = []
    with zipfile.ZipFile(target, "w", zipfile.ZIP_DEFLATED, compresslevel=1) as wheel:
        for path in _packed(installed):
            content = Path(str(installed.locate_file(path))).read_bytes()
            wheel.writestr(path, content)
            digest = base64.urlsafe_b64encode(hashlib.sha256(content).digest()).rstrip(b"=").decode()
            rows.append(f"{path},sha256={digest},{len(content)}")
        wheel.writestr(record, "\n".join([*rows, f"{record},,", ""]))
    return target


def _tags(installed: Distribution) -> str:
    """Return the tags of the file name from those that the wheel listed one by one."""
    listed = [
        line.split()[1].split("-") for line in (installed.read_text("WHEEL") or "").splitlines() if "Tag: " in line
    ]
    return "-".join(".".join(dict.fromkeys(column)) for column in zip(*listed, strict=True))


def _packed(installed: Distribution) -> Iterable[str]:
    """What belongs into a wheel of what was installed: no scripts (they are made anew), no compiled files."""
    made_at_install = ("RECORD", "INSTALLER", "REQUESTED", "direct_url.json")
    for file in installed.files or ():
        path = file.as_posix()
        outside = path.startswith("..") or path.startswith("/")
        if outside or "__pycache__" in path or (".dist-info/" in path and file.name in made_at_install):
            continue
        yield path


def _editable_source(installed: Distribution) -> Path | None:
    text = installed.read_text("direct_url.json")
    if text is None:
        return None
    origin = json.loads(text)
    if not origin.get("dir_info", {}).get("editable"):
        return None
    return Path(unquote(urlsplit(origin["url"]).path))


def _pip(*words: str) -> None:
    command = [sys.executable, "-m", "pip", "--disable-pip-version-check", *words]
    try:
        done = subprocess.run(  # noqa: S603 - our own words, and paths that a technician gave
            command, capture_output=True, text=True, check=False, timeout=FETCH_WITHIN_S
        )
    except subprocess.TimeoutExpired:
        raise KitError(say("kit-wheels-not-in-time")) from None
    if done.returncode != 0:
        raise KitError(say("kit-pip-failed", step_name=words[0], reason=last_line(done)))


def last_line(done: "subprocess.CompletedProcess[str]") -> str:
    """Return the last line that a program wrote, which says why it failed."""
    lines = (done.stderr.strip() or done.stdout.strip()).splitlines()
    return lines[-1] if lines else say("reason-none-given")


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
        """Whether these words name it: its first digits, so many as `named_digits` asks for."""
        return self.digest.startswith(named_digits(words))


def named_digits(words: str) -> str:
    """Return the digits of a digest as a person wrote them, in any case, with or without spaces.

    Raises KitError when they are too few to name one.
    """
    plain = "".join(words.split()).lower()
    if len(plain) < SHORTEST_NAMED:
        raise KitError(say("update-digits-too-few", count=len(plain), least_text=str(SHORTEST_NAMED)))
    return plain


def taken(source: Path, folder: Path) -> Offer:
    """Copy what is offered into this empty folder and look at the copy. Raises KitError: what is wrong with it."""
    try:
        return _from_folder(source, folder) if source.is_dir() else _from_wheel(source, folder)
    except FileNotFoundError as error:
        raise KitError(say("update-not-there", path=str(error.filename))) from None
    except OSError as error:
        raise KitError(say("file-cannot-be-read", path=str(source), reason=str(error.strerror))) from None


def write_sums(folder: Path) -> str:
    """Write the list of a folder's wheels, as `sha256sum` has it, and return the list's own SHA-256."""
    lines = [f"{_digest(wheel)}  {wheel.name}\n" for wheel in sorted(folder.glob("*.whl"))]
    text = "".join(lines)
    (folder / SUMS).write_text(text, encoding="utf-8", newline="\n")
    return hashlib.sha256(text.encode()).hexdigest()


def verified(folder: Path) -> list[Path]:
    """Return the wheels in this folder that are as the list beside them has them: no others are offered to pip."""
    if not (folder / SUMS).is_file():
        return []
    listed = _listed(folder / SUMS)
    return [wheel for wheel in sorted(folder.glob("*.whl")) if listed.get(wheel.name) == _digest(wheel)]


def checked_wheel(wheel: Path) -> tuple[str, str]:
    """Return name and version of a wheel whose files stay inside it and are as its RECORD has them. Raises KitError."""
    named = _WHEEL.fullmatch(wheel.name)
    if named is None:
        raise KitError(say("update-not-a-wheel-name", file=wheel.name))
    try:
        with zipfile.ZipFile(wheel) as packed:
            _safe(wheel.name, packed.infolist())
            info = f"{named[1]}-{named[2]}.dist-info"
            told = BytesParser().parsebytes(packed.read(f"{info}/METADATA"))
            _as_recorded(wheel.name, packed, info)
    except (zipfile.BadZipFile, KeyError, NotImplementedError, RuntimeError, EOFError) as error:
        raise KitError(say("update-not-whole", file=wheel.name, reason=str(error))) from None
    name, version = str(told["Name"]), str(told["Version"])
    if (_plain(name), version) != (_plain(named[1]), named[2]):
        raise KitError(say("update-inside-it-says", file=wheel.name, name=name, wheel_version=version))
    return _plain(name), version


def _from_wheel(source: Path, folder: Path) -> Offer:
    _copied([source], folder)
    copy = folder / source.name
    name, version = checked_wheel(copy)
    if name != DISTRIBUTION:
        raise KitError(say("update-wheel-of-other", path=str(source), name=name, wanted_name=DISTRIBUTION))
    return Offer(folder, version, _digest(copy))


def _from_folder(source: Path, folder: Path) -> Offer:
    if not (source / SUMS).exists():
        raise KitError(say("update-no-sums", path=str(source), file=SUMS))
    wheels = sorted(source.glob("*.whl"))
    if len(wheels) > MOST_WHEELS:
        raise KitError(say("update-too-many-wheels", path=str(source), count=len(wheels)))
    _copied([source / SUMS, *wheels], folder)
    listed = _listed(folder / SUMS)
    for wheel in wheels:
        if listed.get(wheel.name) != _digest(folder / wheel.name):
            raise KitError(say("update-not-as-listed", path=str(wheel), file=SUMS))
    missing = sorted(listed.keys() - {wheel.name for wheel in wheels})
    if missing:
        raise KitError(say("update-lacking", path=str(source), wheel_file=missing[0], file=SUMS))
    found = [checked_wheel(folder / wheel.name) for wheel in wheels]
    versions = [version for name, version in found if name == DISTRIBUTION]
    if len(versions) != 1:
        raise KitError(say("update-one-wanted", path=str(source), count=len(versions), name=DISTRIBUTION))
    return Offer(folder, versions[0], _digest(folder / SUMS))


def _copied(files: Iterable[Path], folder: Path) -> None:
    for file in files:
        with _plain_file(file) as source, (folder / file.name).open("wb") as target:
            left = LARGEST_WHEEL
            while piece := source.read(min(1 << 20, left + 1)):
                left -= len(piece)
                if left < 0:
                    raise KitError(say("file-larger-mb", path=str(file), megabytes=LARGEST_WHEEL // 1_000_000))
                target.write(piece)


def _plain_file(file: Path) -> BufferedReader:
    """Open what is a file itself: no link, and no device, which might never end. Raises KitError, OSError."""
    if file.is_symlink():
        raise KitError(say("update-a-link", path=str(file)))
    opened = os.fdopen(os.open(file, os.O_RDONLY | os.O_NOFOLLOW | os.O_NONBLOCK | os.O_CLOEXEC), "rb")
    if not stat.S_ISREG(os.fstat(opened.fileno()).st_mode):
        opened.close()
        raise KitError(say("update-not-a-file", path=str(file)))
    return opened


def _listed(sums: Path) -> dict[str, str]:
    found = {}
    for number, line in enumerate(sums.read_text(encoding="utf-8-sig", errors="replace").splitlines(), 1):
        match = re.fullmatch(r"([0-9a-f]{64}) [ *]([^/\\]+\.whl)", line)
        if match is None:
            raise KitError(say("update-bad-line", file=sums.name, line=number))
        found[match[2]] = match[1]
    return found


def _safe(where: str, entries: list[zipfile.ZipInfo]) -> None:
    """Refuse what would leave its folder, be a link, come twice, or be too much. Raises KitError."""
    names = [entry.filename for entry in entries]
    if len(names) > MOST_FILES or sum(entry.file_size for entry in entries) > LARGEST_UNPACKED:
        raise KitError(say("update-too-much", file=where))
    if len({name.casefold() for name in names}) != len(names):
        raise KitError(say("update-twice", file=where))
    for entry in entries:
        parts = PurePosixPath(entry.filename).parts
        leaves = entry.filename.startswith("/") or ".." in parts or "\\" in entry.filename or ":" in entry.filename
        if leaves or not entry.filename.isprintable() or stat.S_ISLNK(entry.external_attr >> 16):
            raise KitError(say("update-outside", file=where, entry_path=repr(entry.filename)))


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
            raise KitError(say("update-not-as-record", file=where, entry_path=entry.filename))


def _digest(file: Path) -> str:
    with _plain_file(file) as content:
        return hashlib.file_digest(content, "sha256").hexdigest()


def _plain(name: str) -> str:
    """Return a project's name as names are compared (PEP 503)."""
    return re.sub(r"[-_.]+", "-", name).lower()
