"""Installations side by side below one folder; a link says which of them the service runs.

/opt/benchwarm/.venv     -> releases/0.2.0      what the units name; switched in one step
/opt/benchwarm/previous  -> releases/first      where to go back to
/opt/benchwarm/wheelhouse                       the wheels of the newest installation, and their list
"""

import os
import shutil
import subprocess
import sys
import tempfile
from collections.abc import Sequence
from pathlib import Path

from station.kit.offer import DISTRIBUTION, last_line, verified, write_sums
from station.kit.table import KitError
from station.record.file import sync_folder
from station.words import Message, say

HOME = Path("/opt/benchwarm")
CURRENT, PREVIOUS, RELEASES, WHEELS = ".venv", "previous", "releases", "wheelhouse"
UNITS = Path("/etc/systemd/system")
INSTALL_WITHIN_S = 1200


def current(home: Path) -> Path:
    """Return the release that the service runs. Raises KitError where the folder is not laid out so."""
    link = home / CURRENT
    if not link.is_symlink() or link.resolve().parent != (home / RELEASES).resolve():
        told = say("update-nothing-to-go-back", path=str(home), link_file=CURRENT, releases_path=RELEASES)
        raise KitError(told)
    return link.resolve()


def previous(home: Path) -> Path:
    """Return the release before the current one. Raises KitError when there is none."""
    link = home / PREVIOUS
    if not link.is_symlink() or not (link / "bin" / "station").exists():
        raise KitError(say("update-no-earlier", path=str(home)))
    return link.resolve()


def installed(home: Path, version: str, wheels: Path, options: Sequence[str] = ()) -> Path:
    """Install this version from a folder of wheels into a release of its own. Raises KitError; then it is gone again.

    What the folder lacks is taken from the wheels of earlier installations, where they are as their list has them;
    nothing is downloaded. `options` go to pip.
    """
    release = _fresh(home / RELEASES, version)
    try:
        python = getattr(sys, "_base_executable", None) or sys.executable
        _run(
            [python, "-m", "venv", "--system-site-packages", "--without-pip", str(release)],
            say("update-no-environment"),
        )
        offered = [*sorted(wheels.glob("*.whl")), *verified(home / WHEELS)]
        pip = next((each for each in offered if each.name.startswith("pip-")), None)
        if pip is None:
            raise KitError(say("update-no-pip", path=str(wheels)))
        found = [word for wheel in offered for word in ("--find-links", str(wheel))]
        words = ["install", "--quiet", "--no-index", "--no-input", "--disable-pip-version-check", *found, *options]
        run_pip = [str(release / "bin" / "python"), str(pip / "pip"), *words]
        _run([*run_pip, str(next(wheels.glob(f"{DISTRIBUTION}-{version}-*.whl")))], say("versions-not-installed"))
        _with_lgpio(release, run_pip, [each for each in offered if each.name.startswith("lgpio-")])
    except BaseException:
        shutil.rmtree(release, ignore_errors=True)
        raise
    return release


def switch(home: Path, release: Path) -> None:
    """Let the service run this release from its next start on; the one before is kept to go back to.

    Its files are written out to the card first: a pulled plug never leaves a link to files that are empty.
    """
    before = current(home)
    os.sync()
    if before != release:
        _link(home / PREVIOUS, before)
    _link(home / CURRENT, release)


def earlier(home: Path) -> Path | None:
    """Return the release before the current one; None when there is none."""
    link = home / PREVIOUS
    return link.resolve() if link.is_symlink() and (link / "bin" / "station").exists() else None


def restore(home: Path, current_release: Path, earlier_release: Path | None) -> None:
    """Put both links back to where they led before a switch; without an earlier release there is no second link."""
    _link(home / CURRENT, current_release)
    if earlier_release is not None:
        _link(home / PREVIOUS, earlier_release)
    else:
        (home / PREVIOUS).unlink(missing_ok=True)
        sync_folder(home)


def keep_wheels(home: Path, wheels: Path) -> None:
    """Keep the wheels of the newest installation, for the next cards and the next update."""
    kept, part = home / WHEELS, home / f"{WHEELS}.part"
    shutil.rmtree(part, ignore_errors=True)
    part.mkdir()
    for wheel in verified(kept):
        shutil.copyfile(wheel, part / wheel.name)
    for wheel in wheels.glob("*.whl"):
        for old in part.glob(f"{wheel.name.partition('-')[0]}-*.whl"):
            old.unlink()
        shutil.copyfile(wheel, part / wheel.name)
    write_sums(part)
    os.sync()
    shutil.rmtree(kept, ignore_errors=True)
    part.rename(kept)
    sync_folder(home)


def removed(release: Path) -> None:
    """Delete a release that is not used."""
    shutil.rmtree(release, ignore_errors=True)


def clear(home: Path) -> None:
    """Delete every release but the current and the one before it, also what a cut power left half made."""
    wanted = {current(home), earlier(home)}
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
    command = [str(release / "bin" / "python"), "-c", "import lgpio"]
    with tempfile.TemporaryDirectory() as scratch:  # it makes a pipe when it is imported, and counts as missing without
        environment = {**os.environ, "LG_WD": scratch}
        seen = subprocess.run(command, capture_output=True, check=False, cwd=scratch, env=environment)  # noqa: S603
    if seen.returncode != 0 and wheels:
        _run([*run_pip, "--no-deps", str(wheels[0])], say("update-lgpio-not-installed"))


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
    sync_folder(link.parent)


def _run(command: list[str], failed: Message) -> None:
    try:
        done = subprocess.run(command, capture_output=True, text=True, check=False, timeout=INSTALL_WITHIN_S)  # noqa: S603
    except (OSError, subprocess.TimeoutExpired) as error:
        raise KitError(say("update-failed-at", what=failed, reason=str(error))) from None
    if done.returncode != 0:
        raise KitError(say("update-failed-at", what=failed, reason=last_line(done)))
