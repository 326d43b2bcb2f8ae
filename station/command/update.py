"""`station update`: another version from wheels on a stick, beside the present one; back if it does not come up."""

import argparse
import os
import shlex
import shutil
import subprocess
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Any

from station.command.check.check import kit_of
from station.command.helping import add_command
from station.command.settings import load_settings, settings_path
from station.command.terminal import EXIT_FAILED, EXIT_RECORD, CommandError
from station.kit import releases
from station.kit.offer import Offer, taken
from station.kit.table import KitError
from station.kit.trial import answers, tried
from station.record.journal import JournalError
from station.words import Message, say
from station.words.speaking import spoken

UNIT, ROOM_UNIT = "station.service", "station-room.service"
UP_WITHIN_S = 90.0
IDLE = ("ready", "done")
SCRATCH = ".update-"


@dataclass(frozen=True)
class Service:
    """What runs the current release: `restart` starts it anew and says whether that went well, `url` is the bench's
    page, None on a machine that has only a room.
    """

    restart: Callable[[], bool]
    url: str | None

    def comes_up(self, within_s: float = UP_WITHIN_S) -> bool:
        """Restart it; return whether it serves its bench, and still does so after a moment.

        A page that says why it cannot start is not that.
        """
        if not self.restart():
            return False
        until_s = time.monotonic() + within_s
        while self.url is not None and answers(self.url) is None:
            if time.monotonic() > until_s:
                return False
            time.sleep(0.3)
        time.sleep(1.0)
        return self.url is None or answers(self.url) is not None


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "update",
        does="another version from wheels on a stick, with a way back",
        example="update wheels/",
        ends=(EXIT_RECORD,),
    )
    parser.add_argument(
        "source",
        type=Path,
        nargs="?",
        metavar="WHEEL_OR_FOLDER",
        help="a wheel, or a wheelhouse (default: none, with --back)",
    )
    parser.add_argument(
        "--sha256",
        metavar="HEX",
        help="16 or more digits of what is installed, as told (default: they are told, nothing is installed)",
    )
    parser.add_argument("--back", action="store_true", help="go back to the version before")
    parser.add_argument("--now", action="store_true", help="even if a practical is under way")
    parser.add_argument("--home", type=Path, default=releases.HOME, metavar="FOLDER", help="where the releases are")
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: the card's station.toml)")
    parser.set_defaults(work=_update)


def _update(options: argparse.Namespace) -> int:
    if (options.source is None) != options.back:
        raise CommandError(say("update-name-a-wheel"))
    settings, base = load_settings(options.config)
    kit = kit_of(settings, base)
    host = "127.0.0.1" if kit.host in ("0.0.0.0", "::", "") else kit.host  # noqa: S104 - compared, not bound
    service = _service(f"http://{host}:{kit.port}/")
    try:
        if service is not None and not options.now:
            _nobody_waits(service.url)
        if options.back:
            return go_back(options.home, service)
        config = settings_path(options.config)
        return update(options.home, options.source, options.sha256, service, config, kit.folder)
    except KitError as error:
        raise CommandError(str(error)) from None
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    except PermissionError as error:
        raise CommandError(say("update-run-with-sudo", path=str(error.filename))) from None
    except OSError as error:
        told = say("file-problem", path=str(error.filename or options.home), reason=str(error.strerror))
        raise CommandError(told) from None


def update(
    home: Path, source: Path, named: str | None, service: Service | None, config: Path | None, record: Path
) -> int:
    """Install, try, switch, and go back if it does not come up. Raises KitError, JournalError, OSError."""
    os.umask(0o022)  # the service reads what root installs
    before, earlier = releases.current(home), releases.earlier(home)
    for left in home.glob(f"{SCRATCH}*"):  # by an update whose power was cut
        shutil.rmtree(left, ignore_errors=True)
    with tempfile.TemporaryDirectory(prefix=SCRATCH, dir=home) as scratch:
        offer = taken(source, Path(scratch))
        _named(offer, named)
        releases.clear(home)
        installing = say("told-installing", new_version=offer.version, old_version=version("benchwarm"))
        print(spoken(installing), flush=True)
        release = releases.installed(home, offer.version, offer.folder, _pip_options())
        try:
            tried(release, offer.version, before, config, record)
        except BaseException:
            releases.removed(release)
            raise
        releases.switch(home, release)
        if service is not None and not service.comes_up():
            told = _rolled_back(home, before, earlier, release, service)
            releases.removed(release)
            raise CommandError(told, EXIT_FAILED)
        releases.keep_wheels(home, offer.folder)
    if service is None:
        print(spoken(say("told-next", path=str(home), new_version=offer.version)))
        return 0
    releases.clear(home)
    for unit in releases.other_units(release):
        print(spoken(say("told-unit-differs", file=unit.name, path=str(releases.UNITS))))
    print(spoken(say("told-updated", path=str(home), new_version=offer.version)))
    return 0


def go_back(home: Path, service: Service | None) -> int:
    """Switch to the release before, forth again if it does not come up. Raises CommandError, KitError, OSError."""
    before, release = releases.current(home), releases.previous(home)
    releases.switch(home, release)
    if service is not None and not service.comes_up():
        raise CommandError(_rolled_back(home, before, release, release, service), EXIT_FAILED)
    print(spoken(say("told-back", path=str(home), release_name=release.name)))
    return 0


def _rolled_back(home: Path, before: Path, earlier: Path | None, release: Path, service: Service) -> Message:
    """Put both links back, start what was at work before, and return what to tell."""
    releases.restore(home, before, earlier)
    up = service.comes_up()
    return say(
        "update-rolled-back" if up else "update-rolled-back-down",
        release_name=release.name,
        seconds=f"{UP_WITHIN_S:.0f}",
        before_name=before.name,
    )


def _named(offer: Offer, words: str | None) -> None:
    if words is None:
        told = say("update-nothing-installed-yet", new_version=offer.version, digest_text=offer.digest)
        raise CommandError(told)
    if not offer.is_named(words):
        raise CommandError(say("update-another-digest", digest_text=offer.digest))


def _nobody_waits(url: str | None) -> None:
    state = None if url is None else answers(url)
    if state is not None and state.get("state") not in IDLE:
        raise CommandError(say("update-practical-under-way"))


def _service(url: str) -> Service | None:
    """Return what of the station systemd runs here: bench, room or both."""
    units = [unit for unit in (UNIT, ROOM_UNIT) if _systemctl("is-active", "--quiet", unit) == 0]
    if not units:
        return None
    return Service(lambda: _systemctl("restart", *units) == 0, url if UNIT in units else None)


def _systemctl(*words: str) -> int:
    try:
        return subprocess.run(["systemctl", *words], check=False, capture_output=True, timeout=120).returncode  # noqa: S603, S607
    except (OSError, subprocess.TimeoutExpired):
        return 1


def _pip_options() -> list[str]:
    """Return further words for pip, set only where an update is tried in a folder that stands for a card."""
    return shlex.split(os.environ.get("BENCHWARM_PIP_OPTIONS", ""))
