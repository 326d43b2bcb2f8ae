"""Signed cookies that say what a device may do, valid on this station only and over a restart of it.

A cookie is `role.boot.second.number.signature`: the number of the machine's boot as the station counts boots and
the second of its monotonic clock, since a Pi has no wall clock to trust; and a random number, so that one cookie
can be ended. The signature is HMAC-SHA-256 (RFC 2104) with a key of the role, which comes from

- a random key, made once and kept beside the record, for this user's eyes only. A new key ends all sessions;
- the machine's own number: a copied card does not let the first bench's devices into the second;
- what the settings hold for the role: a changed code or passphrase ends the sessions that the old one opened.
"""

import hmac
import json
import os
import re
import secrets
import threading
import time
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from station.bench.clock import boot_id
from station.server.door.secrets import HOLDERS, Holder, Secrets

FILE_NAME = "sessions.json"

BENCH_S, STAFF_S = 12 * 3600, 4 * 3600
"""How long a session lasts, in s: a school day for a bench's devices, two double lessons for staff."""

MOST_ENDED = 200
"""Ended sessions of one role that are remembered; only who knows the role's secret can push one out."""

_OWN_NUMBER = (Path("/sys/firmware/devicetree/base/serial-number"), Path("/etc/machine-id"))
_COOKIE = re.compile(r"(bench|teacher|technician)\.(\d{1,9})\.(\d{1,12})\.([0-9a-f]{16})\.([0-9a-f]{64})", re.ASCII)


@dataclass(frozen=True)
class Session:
    """What a valid cookie says."""

    role: Holder
    boot: int
    second: int
    number: str


@dataclass
class _Kept:
    key: str = field(default_factory=lambda: secrets.token_hex(32))
    boot: str = ""
    boots: int = 0
    ended: dict[str, list[str]] = field(default_factory=dict)


class Sessions:
    """Issues, reads and ends sessions. Without a folder, or one that cannot be written, they last for this process."""

    def __init__(
        self,
        settings: Secrets,
        folder: Path | None = None,
        *,
        own_number: str | None = None,
        boot: str | None = None,
        monotonic: Callable[[], float] = time.monotonic,
    ) -> None:
        self._path = None if folder is None else folder / FILE_NAME
        self._settings, self._monotonic = settings, monotonic
        self._own_number = machine_number() if own_number is None else own_number
        self._writing = threading.Lock()
        self._kept = _read(self._path)
        boot = boot_id() if boot is None else boot
        if boot != self._kept.boot:
            self._kept.boot, self._kept.boots = boot, self._kept.boots + 1
            self.keep()
        self._make_keys()

    @property
    def cookie_name(self) -> str:
        """The cookie's name: another on each station, since a browser keeps one jar for all ports of a host."""
        return self._cookie_name

    def issue(self, role: Holder) -> str:
        """Return the cookie of a new session."""
        text = f"{role}.{self._kept.boots}.{int(self._monotonic())}.{secrets.token_hex(8)}"
        return f"{text}.{self._signature(role, text)}"

    def read(self, cookie: str | None) -> Session | None:
        """Return the session of a cookie; None when it is not one of ours, too old, or ended."""
        found = _COOKIE.fullmatch(cookie or "")
        if cookie is None or found is None:
            return None
        role = next(each for each in HOLDERS if each == found[1])
        text, _, signature = cookie.rpartition(".")
        if not hmac.compare_digest(self._signature(role, text), signature):
            return None
        session = Session(role, int(found[2]), int(found[3]), found[4])
        return session if self._lasts(session) and session.number not in self._kept.ended.get(role, ()) else None

    def end(self, session: Session) -> None:
        """End one session; call `keep` to end it over a restart too."""
        ended = self._kept.ended.setdefault(session.role, [])
        if session.number not in ended:
            ended.append(session.number)
            del ended[:-MOST_ENDED]

    def end_all(self) -> None:
        """End every session of this station; call `keep` to end them over a restart too."""
        self._kept = _Kept(boot=self._kept.boot, boots=self._kept.boots)
        self._make_keys()

    def keep(self) -> None:
        """Write what a restart must know. A folder that cannot be written is no reason to stop: see the class."""
        if self._path is None:
            return
        draft = self._path.with_suffix(".draft")
        with self._writing, suppress(OSError):
            self._path.parent.mkdir(parents=True, exist_ok=True)
            draft.unlink(missing_ok=True)
            with os.fdopen(os.open(draft, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o600), "w") as file:
                json.dump(vars(self._kept), file)
                file.flush()
                os.fsync(file.fileno())
            draft.replace(self._path)

    def _lasts(self, session: Session) -> bool:
        """Whether a session is young enough. A bench's devices stay over one loss of power, staff do not."""
        second = self._monotonic()
        if session.boot == self._kept.boots:
            return 0 <= second - session.second <= (BENCH_S if session.role == "bench" else STAFF_S)
        return session.role == "bench" and session.boot == self._kept.boots - 1 and second <= BENCH_S

    def _make_keys(self) -> None:
        key = bytes.fromhex(self._kept.key)
        self._cookie_name = "bench_" + _mac(key, "name", self._own_number)[:8]
        self._keys = {
            role: bytes.fromhex(_mac(key, role, self._own_number, self._settings.kept(role) or "")) for role in HOLDERS
        }

    def _signature(self, role: Holder, text: str) -> str:
        return _mac(self._keys[role], text)


def machine_number() -> str:
    """Return what tells this machine from others: the Pi's serial number, else the installation's own."""
    for path in _OWN_NUMBER:
        with suppress(OSError, UnicodeDecodeError):
            return path.read_text().strip("\0\n ")
    return ""


def _mac(key: bytes, *parts: str) -> str:
    return hmac.digest(key, json.dumps(parts).encode(), "sha256").hex()


def _read(path: Path | None) -> _Kept:
    """Read what was kept; a file that is spoilt, or that others could have read, is begun anew."""
    if path is None:
        return _Kept()
    try:
        with path.open(encoding="utf-8") as file:
            if os.fstat(file.fileno()).st_mode & 0o077:
                return _Kept()
            values: Any = json.loads(file.read(100_000))
        kept = _Kept(str(values["key"]), str(values["boot"]), int(values["boots"]))
        kept.ended = {role: [str(each) for each in values["ended"].get(role, ())][-MOST_ENDED:] for role in HOLDERS}
        return kept if len(bytes.fromhex(kept.key)) == 32 else _Kept()
    except (OSError, ValueError, TypeError, KeyError, AttributeError):
        return _Kept()
