"""`station update`: another version from wheels on a stick, beside the present one; back if it does not come up."""

import argparse
import os
import shlex
import subprocess
import tempfile
import time
from collections.abc import Callable
from dataclasses import dataclass
from importlib.metadata import version
from pathlib import Path
from typing import Any

from station.command.check import kit_of
from station.command.errors import EXIT_FAILED, EXIT_RECORD, CommandError
from station.command.settings import load_settings, settings_path
from station.kit import releases
from station.kit.offer import Offer, taken
from station.kit.table import KitError
from station.kit.trial import answers, tried
from station.record.journal import JournalError

UNIT, ROOM_UNIT = "station.service", "station-room.service"
UP_WITHIN_S = 90.0
IDLE = ("ready", "done")


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
    parser = commands.add_parser("update", help="another version from wheels on a stick, with a way back")
    parser.add_argument("source", type=Path, nargs="?", metavar="WHEEL_OR_FOLDER", help="a wheel, or a wheelhouse")
    parser.add_argument("--sha256", metavar="HEX", help="names what is installed: 16 or more digits, as you were told")
    parser.add_argument("--back", action="store_true", help="go back to the version before")
    parser.add_argument("--now", action="store_true", help="even if a practical is under way")
    parser.add_argument("--home", type=Path, default=releases.HOME, metavar="FOLDER", help="where the releases are")
    parser.add_argument("--config", type=Path, metavar="FILE", help="settings (default: the card's station.toml)")
    parser.set_defaults(work=_update)


def _update(options: argparse.Namespace) -> int:
    if (options.source is None) != options.back:
        raise CommandError("name a wheel or a folder of wheels; or --back alone, to go back to the version before")
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
        raise CommandError(f"{error.filename}: may not be written; run it with sudo") from None
    except OSError as error:
        raise CommandError(f"{error.filename or options.home}: {error.strerror}") from None


def update(
    home: Path, source: Path, named: str | None, service: Service | None, config: Path | None, record: Path
) -> int:
    """Install, try, switch, and go back if it does not come up. Raises KitError, JournalError, OSError."""
    os.umask(0o022)  # the service reads what root installs
    before = releases.current(home)
    with tempfile.TemporaryDirectory(prefix=".update-", dir=home) as scratch:
        offer = taken(source, Path(scratch))
        _named(offer, named)
        print(
            f"installing benchwarm {offer.version} beside {version('benchwarm')}; this takes some minutes", flush=True
        )
        release = releases.installed(home, offer.version, offer.folder, _pip_options())
        try:
            tried(release, offer.version, before, config, record)
        except BaseException:
            releases.removed(release)
            raise
        releases.switch(home, release)
        releases.keep_wheels(home, offer.folder)
    if service is None:
        print(f"{home}: benchwarm {offer.version} is next. No service runs here: start the station anew yourself.")
        return 0
    if not service.comes_up():
        return _rolled_back(home, before, release, service)
    releases.clear(home)
    for unit in releases.other_units(release):
        print(
            f"Mind: {unit.name} of this version differs from the one in {releases.UNITS}; compare and copy it by hand."
        )
    print(f"{home}: benchwarm {offer.version} is at work. Back to the one before: station update --back")
    return 0


def go_back(home: Path, service: Service | None) -> int:
    """Switch to the release before. Raises KitError, OSError."""
    release = releases.previous(home)
    releases.switch(home, release)
    if service is not None and not service.comes_up():
        raise CommandError(f"{release.name} does not come up; journalctl -u station says why", EXIT_FAILED)
    print(f"{home}: back to {release.name}.")
    return 0


def _rolled_back(home: Path, before: Path, release: Path, service: Service) -> int:
    releases.switch(home, before)
    up = service.comes_up()
    releases.removed(release)
    words = "is at work again" if up else "does not come up either; journalctl -u station says why"
    raise CommandError(f"{release.name} did not come up within {UP_WITHIN_S:.0f} s; {before.name} {words}", EXIT_FAILED)


def _named(offer: Offer, words: str | None) -> None:
    if words is None:
        raise CommandError(
            f"benchwarm {offer.version}, SHA-256 {offer.digest}: nothing is installed yet. Compare this with what "
            "whoever made the wheels told you by another way than the stick; if it is the same, add --sha256 and its "
            "first 16 digits"
        )
    if not offer.is_named(words):
        raise CommandError(f"these wheels have another SHA-256 ({offer.digest}): do not install them")


def _nobody_waits(url: str | None) -> None:
    state = None if url is None else answers(url)
    if state is not None and state.get("state") not in IDLE:
        raise CommandError(
            "a practical is under way; wait until it has ended, or add --now (it would go on afterwards)"
        )


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
