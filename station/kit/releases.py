"""Installations side by side below one folder; a link says which of them the service runs.

/opt/benchwarm/.venv     -> releases/0.2.0      what the units name; switched in one step
/opt/benchwarm/previous  -> releases/first      where to go back to
/opt/benchwarm/wheelhouse                       the wheels of the newest installation
"""

import os
import shutil
import subprocess
import sys
from collections.abc import Sequence
from pathlib import Path

from station.kit.offer import write_sums
from station.kit.table import KitError
from station.kit.wheelhouse import DISTRIBUTION

HOME = Path("/opt/benchwarm")
CURRENT, PREVIOUS, RELEASES, WHEELS = ".venv", "previous", "releases", "wheelhouse"
FROM_THE_CARD = Path("/boot/firmware/benchwarm/wheelhouse")
UNITS = Path("/etc/systemd/system")
INSTALL_WITHIN_S = 1200


def current(home: Path) -> Path:
    """Return the release that the service runs. Raises KitError where the folder is not laid out so."""
    link = home / CURRENT
    if not link.is_symlink() or link.resolve().parent != (home / RELEASES).resolve():
        raise KitError(
            f"{home}: its {CURRENT} is not a link into {RELEASES}, so there is nothing to go back to; see hardware.md, "
            "the step that installs the station"
        )
    return link.resolve()


def previous(home: Path) -> Path:
    """Return the release before the current one. Raises KitError when there is none."""
    link = home / PREVIOUS
    if not link.is_symlink() or not (link / "bin" / "station").exists():
        raise KitError(f"{home}: no earlier release is kept here")
    return link.resolve()


def installed(home: Path, version: str, wheels: Path, options: Sequence[str] = ()) -> Path:
    """Install this version from a folder of wheels into a release of its own. Raises KitError; then it is gone again.

    What the folder lacks is taken from the wheels of earlier installations; nothing is downloaded. `options` go to pip.
    """
    release = _fresh(home / RELEASES, version)
    try:
        python = getattr(sys, "_base_executable", None) or sys.executable
        _run([python, "-m", "venv", "--system-site-packages", "--without-pip", str(release)], "no environment")
        places = [wheels, home / WHEELS, FROM_THE_CARD]
        pip = next((each for place in places for each in sorted(place.glob("pip-*.whl"))), None)
        if pip is None:
            raise KitError(
                f"{wheels}: no pip wheel, here or from earlier; take the whole folder that `station kit` made"
            )
        found = [word for place in places if place.is_dir() for word in ("--find-links", str(place))]
        words = ["install", "--quiet", "--no-index", "--no-input", "--disable-pip-version-check", *found, *options]
        run_pip = [str(release / "bin" / "python"), str(pip / "pip"), *words]
        _run([*run_pip, str(next(wheels.glob(f"{DISTRIBUTION}-{version}-*.whl")))], "not installed")
        _with_lgpio(release, run_pip, [each for place in places for each in sorted(place.glob("lgpio-*.whl"))])
    except BaseException:
        shutil.rmtree(release, ignore_errors=True)
        raise
    return release


def switch(home: Path, release: Path) -> None:
    """Let the service run this release from its next start on; the one before is kept to go back to."""
    before = current(home)
    if before != release:
        _link(home / PREVIOUS, before)
    _link(home / CURRENT, release)


def keep_wheels(home: Path, wheels: Path) -> None:
    """Keep the wheels of the newest installation, for the next cards and the next update."""
    kept, part = home / WHEELS, home / f"{WHEELS}.part"
    shutil.rmtree(part, ignore_errors=True)
    part.mkdir()
    for wheel in next((each for each in (kept, FROM_THE_CARD) if each.is_dir()), wheels).glob("*.whl"):
        shutil.copyfile(wheel, part / wheel.name)
    for wheel in wheels.glob("*.whl"):
        for old in part.glob(f"{wheel.name.partition('-')[0]}-*.whl"):
            old.unlink()
        shutil.copyfile(wheel, part / wheel.name)
    write_sums(part)
    shutil.rmtree(kept, ignore_errors=True)
    part.rename(kept)


def removed(release: Path) -> None:
    """Delete a release that is not used."""
    shutil.rmtree(release, ignore_errors=True)


def clear(home: Path) -> None:
    """Delete every release but the current and the one before it."""
    wanted = {current(home), *([previous(home)] if (home / PREVIOUS).is_symlink() else [])}
    for each in (home / RELEASES).iterdir():
        if each.resolve() not in wanted:
            shutil.rmtree(each, ignore_errors=True)


def other_units(release: Path, there: Path = UNITS) -> list[Path]:
    """Return the units of this release that differ from those installed: an update leaves them as the card has them."""
    own = sorted(release.glob("lib/python3*/site-packages/station/kit/systemd/*.service"))
    return [
        each for each in own if (there / each.name).is_file() and (there / each.name).read_text() != each.read_text()
    ]


def _with_lgpio(release: Path, run_pip: list[str], wheels: Sequence[Path]) -> None:
    """Install lgpio where the system has none, as the first start of a card does."""
    seen = subprocess.run([str(release / "bin" / "python"), "-c", "import lgpio"], capture_output=True, check=False)  # noqa: S603
    if seen.returncode != 0 and wheels:
        _run([*run_pip, "--no-deps", str(wheels[0])], "lgpio not installed")


def _fresh(releases: Path, version: str) -> Path:
    number = 1
    while (release := releases / (version if number == 1 else f"{version}-{number}")).exists():
        number += 1
    return release


def _link(link: Path, release: Path) -> None:
    """Point a link elsewhere in one step: a pulled plug leaves the old one or the new one, never none."""
    part = link.with_name(f"{link.name}.part")
    part.unlink(missing_ok=True)
    part.symlink_to(Path(RELEASES) / release.name)
    part.replace(link)
    handle = os.open(link.parent, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _run(command: list[str], what: str) -> None:
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=INSTALL_WITHIN_S)  # noqa: S603
    except (OSError, subprocess.TimeoutExpired) as error:
        raise KitError(f"{what}: {error}") from None
    if done.returncode != 0:
        last = (done.stderr.strip() or done.stdout.strip() or "no reason given").splitlines()[-1]
        raise KitError(f"{what}: {last}")
