"""The wheels that a card installs from, so that nothing is downloaded at a bench.

The station's own wheel is put together again from what is installed here (or built from the checkout); the others are
fetched once, for the named release's Python on 64-bit Arm.
"""

import base64
import hashlib
import json
import subprocess
import sys
import zipfile
from collections.abc import Iterable
from importlib.metadata import Distribution, distribution
from importlib.util import find_spec
from pathlib import Path
from urllib.parse import unquote, urlsplit

from station.kit.table import KitError

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
        raise KitError("the wheels could not be fetched in time: check the network, and try again") from None
    if done.returncode != 0:
        last = (done.stderr.strip() or done.stdout.strip() or "no reason given").splitlines()[-1]
        raise KitError(f"pip could not do its part ({words[0]}): {last}")
