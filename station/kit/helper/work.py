"""What the helper does for each request: the station's own commands as its user, the system's tools as root."""

import json
import os
import shutil
import subprocess
import time
from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, Final

from station.kit.helper import requests as ask
from station.kit.helper.settings import changed
from station.kit.helper.trial import Trial
from station.kit.on_card import network
from station.kit.releases import CURRENT, HOME
from station.words import Message, plain, say

UNIT: Final = "station.service"
WITHIN_S: Final = 1800.0
RECORD, BACKUPS, STICK = Path("var/lib/station"), Path("var/backups/station"), Path("run/station-helper/stick")


class Refused(Exception):  # noqa: N818 - the words say what to do
    """What was asked cannot be done; the message says why."""


@dataclass(frozen=True)
class Done:
    """What to tell, what else there is to know, and what follows once that was told."""

    told: Message
    found: dict[str, Any] = field(default_factory=dict)
    then: Callable[[], object] | None = None


@dataclass(frozen=True)
class System:
    """The machine. In a folder that stands for it (`root`) there is no systemd, and a stick is the folder STICK."""

    root: Path = Path("/")
    station: Sequence[str] = (str(HOME / CURRENT / "bin" / "station"),)
    user: str | None = "station"
    pause: Callable[[float], None] = time.sleep

    @property
    def real(self) -> bool:
        """Whether this is the machine itself."""
        return self.root == Path("/")

    @property
    def boot(self) -> Path:
        """The boot partition."""
        return self.root / "boot" / "firmware"

    def ask(self, words: Sequence[str]) -> tuple[int | None, str]:
        """Run one of the system's tools; return its exit status, None where there is none, and what it printed."""
        try:
            done = subprocess.run(  # noqa: S603 - fixed words, and values that requests.py has checked
                words, stdin=subprocess.DEVNULL, capture_output=True, text=True, check=False, timeout=WITHIN_S
            )
        except FileNotFoundError:
            return None, ""
        except subprocess.TimeoutExpired:
            return -1, ""
        return done.returncode, done.stdout

    def systemctl(self, *words: str) -> None:
        """Let systemd do it, where there is one."""
        if self.real:
            self.ask(["systemctl", *words])

    def own(self, *words: str, as_root: bool = False) -> str:
        """Run a command of the station, as its user; return its last line. Raises Refused with that."""
        user = None if as_root or not self.real else self.user
        folder = self.root / RECORD
        try:
            done = subprocess.run(  # noqa: S603 - as above
                [*self.station, *words],
                cwd=folder if folder.is_dir() else None,
                stdin=subprocess.DEVNULL,
                capture_output=True,
                text=True,
                check=False,
                timeout=WITHIN_S,
                user=user,
                group=user,
                extra_groups=[] if user else None,
            )
        except (OSError, subprocess.SubprocessError) as error:
            raise Refused(plain(str(error))) from None
        last = ((done.stdout if done.returncode == 0 else done.stderr).strip() or "?").splitlines()[-1]
        if done.returncode != 0:
            raise Refused(plain(last))
        return last

    @contextmanager
    def at_rest(self) -> Iterator[None]:
        """Stop the station, and start it again whatever happens."""
        self.systemctl("stop", UNIT)
        try:
            yield
        finally:
            self.systemctl("start", UNIT)

    @contextmanager
    def stick(self, *, write: bool) -> Iterator[Path]:
        """The only stick, mounted for as long as this takes. Raises Refused."""
        folder = self.root / STICK
        if not self.real:
            if not folder.is_dir():
                raise Refused(say("helper-no-stick"))
            yield folder
            return
        device = only_stick(self.ask(["lsblk", "--json", "-o", "PATH,TYPE,TRAN,FSTYPE,MOUNTPOINT"])[1])
        folder.mkdir(parents=True, exist_ok=True)
        options = f"nosuid,nodev,noexec,{'rw' if write else 'ro'}"
        if self.ask(["mount", "-o", options, device, str(folder)])[0] != 0:
            raise Refused(say("helper-stick-unreadable"))
        try:
            yield folder
        finally:
            self.ask(["umount", str(folder)])


def only_stick(lsblk: str) -> str:
    """Return the first partition of the only USB disk that `lsblk --json` lists. Raises Refused."""
    try:
        disks = [each for each in json.loads(lsblk)["blockdevices"] if each.get("tran") == "usb"]
    except (ValueError, KeyError, TypeError):
        disks = []
    if len(disks) > 1:
        raise Refused(say("helper-several-sticks"))
    parts = [part for disk in disks for part in disk.get("children") or [disk] if part.get("fstype")]
    if not parts:
        raise Refused(say("helper-no-stick"))
    return str(parts[0]["path"])


class Helper:
    """Does what is asked, one request at a time; what takes the station's page away, or long, after the answer.

    `outcome` tells what became of the newest of these, once it is no longer at `work`. `do` raises Refused.
    """

    def __init__(self, system: System) -> None:
        self.system = system
        self.trial = Trial(self._here, system.root, system.ask, system.pause)
        self.at_work, self.outcome = False, plain("")
        self._do: dict[type, Callable[[Any], Done]] = {
            ask.NetworkAsk: self._network,
            ask.Restart: lambda _: Done(say("helper-restarts"), then=lambda: system.systemctl("reboot")),
            ask.ShutDown: lambda _: Done(say("helper-shuts-down"), then=lambda: system.systemctl("poweroff")),
            ask.Wipe: self._wipe,
            ask.Restore: self._restore,
            ask.BackUp: self._back_up,
            ask.Update: self._update,
            ask.Settings: self._settings,
            ask.Look: self._look,
        }

    @property
    def _here(self) -> Path:
        return self.system.boot / "benchwarm"

    def do(self, asked: ask.Ask) -> Done:
        """Do it, and return what to tell. Raises Refused."""
        try:
            return self._do[type(asked)](asked)
        except OSError as error:
            raise Refused(say("file-problem", path=str(error.filename or ""), reason=str(error.strerror))) from None

    def _network(self, asked: ask.NetworkAsk) -> Done:
        def tried() -> Message:
            return say("helper-network-kept") if self.trial.run(asked.wanted) else say("helper-network-back")

        return self._later(say("helper-network-begun"), tried)

    def _later(self, told: Message, work: Callable[[], Message]) -> Done:
        """Answer with `told`, then do the work and keep what it tells."""
        self.at_work, self.outcome = True, told

        def then() -> None:
            try:
                self.outcome = work()
            except Refused as error:
                self.outcome = error.args[0]
            except OSError as error:
                self.outcome = say("file-problem", path=str(error.filename or ""), reason=str(error.strerror))
            finally:
                self.at_work = False

        return Done(told, then=then)

    def _wipe(self, _: ask.Wipe) -> Done:
        return self._later(say("helper-begun"), lambda: self._at_rest("wipe", "--yes"))

    def _at_rest(self, *words: str) -> Message:
        with self.system.at_rest():
            return plain(self.system.own(*words, "--record", self._record))

    def _restore(self, asked: ask.Restore) -> Done:
        if asked.place == "card":
            copy = self.system.root / BACKUPS / asked.file
            return self._later(say("helper-begun"), lambda: self._at_rest("restore", str(copy)))
        with self.system.stick(write=False) as stick:
            # The station's user cannot read a stick: a copy where it can.
            copy = self.system.root / BACKUPS / f"stick-{asked.file}"
            shutil.copyfile(stick / asked.file, copy)
        if self.system.real and self.system.user:
            shutil.chown(copy, self.system.user, self.system.user)

        def restored() -> Message:
            try:
                return self._at_rest("restore", str(copy))
            finally:
                copy.unlink(missing_ok=True)

        return self._later(say("helper-begun"), restored)

    def _back_up(self, _: ask.BackUp) -> Done:
        copy = self.system.root / BACKUPS / "for-the-stick.backup"
        with self.system.stick(write=True) as stick:
            self.system.own("backup", str(copy), "--record", self._record)
            try:
                name = next(f"record-{n:03}.backup" for n in range(1, 1000) if not self._taken(stick, n))
                part = stick / f"{name}.part"
                shutil.copyfile(copy, part)
                with part.open("rb+") as file:
                    os.fsync(file.fileno())
                part.replace(stick / name)
            finally:
                copy.unlink(missing_ok=True)
        return Done(say("helper-backed-up", file=name))

    def _taken(self, stick: Path, number: int) -> bool:
        return (stick / f"record-{number:03}.backup").exists()

    def _update(self, asked: ask.Update) -> Done:
        def updated() -> Message:
            with self.system.stick(write=False) as stick:
                words = ["update", str(stick / "wheelhouse"), "--sha256", asked.sha256]
                if not self.system.real:
                    words += ["--home", str(self.system.root / str(HOME).lstrip("/"))]
                return plain(self.system.own(*words, as_root=True))

        return self._later(say("helper-begun"), updated)

    def _settings(self, asked: ask.Settings) -> Done:
        path = self.system.boot / "station.toml"
        try:
            text = changed(path.read_text(encoding="utf-8-sig"), asked.changes)
        except ValueError as error:
            raise Refused(say("file-problem", path=path.name, reason=str(error))) from None
        network.write(path, text, path.stat().st_mode & 0o777)
        return Done(say("helper-settings"), then=lambda: self.system.systemctl("restart", UNIT))

    def _look(self, _: ask.Look) -> Done:
        try:
            now = network.read((self._here / network.FILE).read_text(encoding="utf-8-sig"))
        except (OSError, ValueError):
            now = None
        copies = self.system.root / BACKUPS
        found = {
            "ssid": now.ssid if now else None,
            "wired": now is not None and now.ssid is None,
            "country": now.country if now else None,
            "at_work": self.at_work,
            "copies": sorted(each.name for each in copies.glob("*.backup")) if copies.is_dir() else [],
        }
        return Done(self.outcome, found)

    @property
    def _record(self) -> str:
        return str(self.system.root / RECORD)
