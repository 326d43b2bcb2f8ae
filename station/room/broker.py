"""The broker: the real Mosquitto, as a system service with these files, or as a private child with the same ones.

Nobody is anonymous, each bench reaches its own branch and nothing else, and a message is no longer than a batch may
be. The broker is taken for forgetful all the same: what matters is acknowledged by the room, not by the broker.
"""

import asyncio
import base64
import contextlib
import fcntl
import hashlib
import os
import resource
import secrets
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from station.room import wire
from station.room.wire import LARGEST_BYTES, PORT, BrokerAddress
from station.words import say

ROOM_USER: Final = "room"
CONFIG, PASSWORDS, ACL = "mosquitto.conf", "passwords", "acl"
_ROUNDS, _SALT_BYTES, _HASH_BYTES = 101, 12, 64
_PACKET_BYTES = LARGEST_BYTES + 2_000

ROOM_PORT: Final = 1884
FILES: Final = 2048
"""So many files the broker may have open, and a connection is one; each may hold 100 kB of an unfinished sign-in."""
_OWN_FILES, _ROOM_CONNECTIONS = 28, 20


def acl_text() -> str:
    """Return who may do what. `%u` is the user who signed in; a client's own id (`%c`) anybody can choose."""
    lines = [
        f"user {ROOM_USER}",
        f"topic readwrite {wire.PREFIX}/#",
        "",
        *(f"pattern write {wire.PREFIX}/%u/{what}" for what in wire.FROM_BENCH),
        *(f"pattern read {wire.PREFIX}/%u/{what}" for what in wire.TO_BENCH),
    ]
    return "\n".join(lines) + "\n"


def password_line(user: str, password: str) -> str:
    """Return the line that `mosquitto_passwd` would write: PBKDF2 with SHA-512 (Mosquitto's format 7).

    The passwords are made by `new_password`, so that the few rounds of the format do no harm.
    """
    if not wire.is_user(user):
        raise ValueError(say("broker-cannot-be-user", user_name=repr(user)))
    salt = secrets.token_bytes(_SALT_BYTES)
    digest = hashlib.pbkdf2_hmac("sha512", password.encode(), salt, _ROUNDS, _HASH_BYTES)
    return f"{user}:$7${_ROUNDS}${base64.b64encode(salt).decode()}${base64.b64encode(digest).decode()}\n"


def new_password() -> str:
    """Return a password of 128 bits."""
    return secrets.token_urlsafe(16)


def limits_text() -> str:
    """Return what systemd is to add to Mosquitto's own service: as many open files as `config_text` counts on."""
    return f"# Made by Benchwarm: a connection is an open file.\n[Service]\nLimitNOFILE={FILES}\n"


def config_text(
    passwords: str,
    acl: str,
    *,
    host: str | None = None,
    port: int = PORT,
    room_port: int = ROOM_PORT,
    files: int = FILES,
    own: str | None = None,
) -> str:
    """Return the broker's configuration.

    `passwords` and `acl` are the paths of those files. The room has a listener of its own, on this machine alone: who
    opens all the connections that there may be of the other keeps off no room. `own` is the folder of a private
    broker's data; without it the text is for `/etc/mosquitto/conf.d`, where Debian's own file says that and where the
    data are.
    """
    lines = [
        "# Made by Benchwarm. One bench, one user; who may do what stands in the ACL file.",
        f"listener {room_port} 127.0.0.1",
        f"max_connections {_ROOM_CONNECTIONS}",
        f"listener {port}" + ("" if host is None else f" {host}"),
        f"max_connections {files - _OWN_FILES - _ROOM_CONNECTIONS}",
        "allow_anonymous false",
        f"password_file {passwords}",
        f"acl_file {acl}",
        f"max_packet_size {_PACKET_BYTES}",
        "max_inflight_messages 500",  # to the room: 20, the usual, would be a turn of its loop
        "max_queued_messages 5000",
        "persistent_client_expiration 1d",
        "autosave_interval 60",
        "connection_messages false",
        "set_tcp_nodelay true",
    ]
    if own is not None:
        lines += ["persistence true", f"persistence_location {own}/", "log_dest stderr", "log_type error"]
        if os.geteuid() == 0:
            lines.append("user root")  # otherwise it gives up root, and cannot write into our folder
    return "\n".join(lines) + "\n"


def write_private(path: Path, text: str) -> None:
    """Write a file that only this user can read, at once or not at all."""
    part = path.with_name(f"{path.name}.part")
    handle = os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, 0o600)
    with os.fdopen(handle, "w", encoding="utf-8") as file:
        file.write(text)
        file.flush()
        os.fsync(handle)
    part.replace(path)


def with_passwords(text: str, users: Mapping[str, str]) -> str:
    """Return the text of a password file with these users' passwords in it, others being left as they are."""
    others = [line for line in text.splitlines() if line and line.partition(":")[0] not in users]
    return "".join(f"{line}\n" for line in others) + "".join(map(password_line, users, users.values()))


class UserTakenError(Exception):
    """A user of this name is let in already."""


def let_in(folder: Path, users: Mapping[str, str], *, anew: bool = True) -> None:
    """Write these users' passwords into a private broker's file; a broker at work takes them in when it reads anew.

    Raises UserTakenError, and writes nothing, for a user who is in the file unless passwords may be made `anew`.
    """
    folder.mkdir(parents=True, exist_ok=True)
    passwords = folder / PASSWORDS
    with (folder / LOCK).open("w") as lock:
        fcntl.flock(lock, fcntl.LOCK_EX)  # let go by closing; of two threads each has its own (flock(2))
        text = passwords.read_text(encoding="utf-8") if passwords.is_file() else ""
        if not anew and users.keys() & {line.partition(":")[0] for line in text.splitlines()}:
            raise UserTakenError
        write_private(passwords, with_passwords(text, users))


# A private Mosquitto: a child of the room, where no other broker is named.


READY_WITHIN_S: Final = 5.0
STOPS_WITHIN_S: Final = 3.0
AGAIN_AFTER_S: Final = 0.5
LOCK: Final = "passwords.lock"
_ALSO_HERE = "/usr/sbin:/usr/local/sbin"


class BrokerError(Exception):
    """The private broker cannot work; the message says what to do."""


class PrivateBroker:
    """Mosquitto with its files in this folder: `start`, then `await run()` to have it come back; `stop` at the end.

    A password file that `station kit` wrote may lie in the folder already: those benches can speak at once. The
    room's own user gets a new password at each start. Port 0 takes a free one.
    """

    def __init__(self, folder: Path, host: str | None = None, port: int = PORT) -> None:
        self.folder, self.host = folder.resolve(), host
        self._room_port, free = _free_ports(2)
        self._port = port or free
        self._password = new_password()
        self._process: subprocess.Popen[bytes] | None = None
        self._read: tuple[int, int] | None = None

    @property
    def room_address(self) -> BrokerAddress:
        """Where the room itself finds it, and as whom."""
        return BrokerAddress("127.0.0.1", self._room_port, ROOM_USER, self._password)

    @property
    def address(self) -> BrokerAddress:
        """Where benches of this machine find it; with the room's own user."""
        here = "127.0.0.1" if self.host in (None, "0.0.0.0", "::") else self.host  # noqa: S104 - compared, not bound
        return BrokerAddress(str(here), self._port, ROOM_USER, self._password)

    @property
    def pid(self) -> int | None:
        """The child's process id; None while there is none."""
        return None if self._process is None else self._process.pid

    def start(self) -> None:
        """Write the files, start the child and wait until it listens. Raises BrokerError."""
        program = shutil.which("mosquitto", path=f"{os.environ.get('PATH', '')}:{_ALSO_HERE}")
        if program is None:
            raise BrokerError(say("broker-not-installed"))
        try:
            self._write_files()
        except OSError as error:
            told = say("file-cannot-be-written-folder", path=str(self.folder), reason=str(error.strerror))
            raise BrokerError(told) from None
        self._launch(program)

    def add_users(self, users: Mapping[str, str]) -> None:
        """Let these users in, by their passwords, also while the broker is at work."""
        let_in(self.folder, users)
        self._read = _stamp(self.folder / PASSWORDS)
        if self._process is not None:
            self._process.send_signal(signal.SIGHUP)

    def _take_in(self) -> None:
        """Have the child read passwords that another process wrote (`station room --new-bench`)."""
        if self._process is not None and (now := _stamp(self.folder / PASSWORDS)) != self._read:
            self._read = now
            self._process.send_signal(signal.SIGHUP)

    async def run(self) -> None:
        """Start the child again whenever it ended, until cancelled; then stop it."""
        try:
            while True:
                await asyncio.sleep(AGAIN_AFTER_S)
                if self._process is None or self._process.poll() is not None:
                    with contextlib.suppress(BrokerError):  # the collector says that nobody answers
                        await asyncio.to_thread(self.start)
                else:
                    self._take_in()
        finally:
            self.stop()

    def stop(self) -> None:
        """End the child. A second call does nothing."""
        process, self._process = self._process, None
        if process is None:
            return
        process.terminate()
        try:
            process.wait(STOPS_WITHIN_S)
        except subprocess.TimeoutExpired:
            process.kill()
            process.wait()

    def _write_files(self) -> None:
        data = self.folder / "data"
        data.mkdir(parents=True, exist_ok=True)
        self.folder.chmod(0o700)
        self.add_users({ROOM_USER: self._password})
        write_private(self.folder / ACL, acl_text())
        passwords, acl = str(self.folder / PASSWORDS), str(self.folder / ACL)
        text = config_text(
            passwords,
            acl,
            host=self.host,
            port=self._port,
            room_port=self._room_port,
            files=_files(),
            own=str(data),
        )
        write_private(self.folder / CONFIG, text)

    def _launch(self, program: str) -> None:
        command = [program, "-c", str(self.folder / CONFIG)]
        setpriv = shutil.which("setpriv")
        if setpriv is not None:  # a room that is killed takes its broker with it, or the port would stay taken
            command = [setpriv, "--pdeathsig", "TERM", *command]
        if _listens(self.address):
            raise BrokerError(say("broker-port-taken", port=self._port))
        # Not piped: nobody would read it, and the child would wait for that.
        self._process = subprocess.Popen(command, stdin=subprocess.DEVNULL)  # noqa: S603 - our own words
        with contextlib.suppress(OSError):  # it ended at once
            resource.prlimit(self._process.pid, resource.RLIMIT_NOFILE, (_files(), _files()))
        end = time.monotonic() + READY_WITHIN_S
        while not _listens(self.address):
            if self._process.poll() is not None or time.monotonic() > end:
                self.stop()
                raise BrokerError(say("broker-port-taken", port=self._port))
            time.sleep(0.01)


def _stamp(path: Path) -> tuple[int, int] | None:
    """Return what changes with every new content of a file that is replaced, not written over."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_ino, found.st_mtime_ns


def _listens(address: BrokerAddress) -> bool:
    try:
        socket.create_connection((address.host, address.port), timeout=1.0).close()
    except OSError:
        return False
    return True


def _files() -> int:
    """Return how many open files the child gets: `FILES`, or all that this process may give away."""
    most = resource.getrlimit(resource.RLIMIT_NOFILE)[1]
    return FILES if most == resource.RLIM_INFINITY else min(FILES, most)


def _free_ports(count: int) -> list[int]:
    with contextlib.ExitStack() as stack:
        probes = [stack.enter_context(socket.socket()) for _ in range(count)]
        for probe in probes:
            probe.bind(("127.0.0.1", 0))
        return [int(probe.getsockname()[1]) for probe in probes]
