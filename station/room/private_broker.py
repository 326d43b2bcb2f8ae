"""A private Mosquitto: a child of the room, where no other broker is named."""

import asyncio
import contextlib
import os
import shutil
import signal
import socket
import subprocess
import time
from collections.abc import Mapping
from pathlib import Path
from typing import Final

from station.room.address import PORT, BrokerAddress
from station.room.broker import (
    ACL,
    CONFIG,
    PASSWORDS,
    ROOM_USER,
    acl_text,
    config_text,
    new_password,
    with_passwords,
    write_private,
)

READY_WITHIN_S: Final = 5.0
STOPS_WITHIN_S: Final = 3.0
AGAIN_AFTER_S: Final = 0.5
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
        self._port = port or _free_port()
        self._password = new_password()
        self._process: subprocess.Popen[bytes] | None = None

    @property
    def address(self) -> BrokerAddress:
        """Where the room itself finds it, and as whom."""
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
            raise BrokerError(
                "Mosquitto is not installed: sudo apt install mosquitto, or name another broker (room.broker)"
            )
        try:
            self._write_files()
        except OSError as error:
            raise BrokerError(f"{self.folder}: cannot be written: {error.strerror}; choose another folder") from None
        self._launch(program)

    def add_users(self, users: Mapping[str, str]) -> None:
        """Let these users in, by their passwords, also while the broker is at work."""
        self.folder.mkdir(parents=True, exist_ok=True)
        passwords = self.folder / PASSWORDS
        text = passwords.read_text(encoding="utf-8") if passwords.is_file() else ""
        write_private(passwords, with_passwords(text, users))
        if self._process is not None:
            self._process.send_signal(signal.SIGHUP)

    async def run(self) -> None:
        """Start the child again whenever it ended, until cancelled; then stop it."""
        try:
            while True:
                await asyncio.sleep(AGAIN_AFTER_S)
                if self._process is None or self._process.poll() is not None:
                    with contextlib.suppress(BrokerError):  # the collector says that nobody answers
                        await asyncio.to_thread(self.start)
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
        write_private(self.folder / CONFIG, config_text(passwords, acl, host=self.host, port=self._port, own=str(data)))

    def _launch(self, program: str) -> None:
        command = [program, "-c", str(self.folder / CONFIG)]
        setpriv = shutil.which("setpriv")
        if setpriv is not None:  # a room that is killed takes its broker with it, or the port would stay taken
            command = [setpriv, "--pdeathsig", "TERM", *command]
        if _listens(self.address):
            raise BrokerError(_TAKEN.format(self._port))
        # Not piped: nobody would read it, and the child would wait for that.
        self._process = subprocess.Popen(command, stdin=subprocess.DEVNULL)  # noqa: S603 - our own words
        end = time.monotonic() + READY_WITHIN_S
        while not _listens(self.address):
            if self._process.poll() is not None or time.monotonic() > end:
                self.stop()
                raise BrokerError(_TAKEN.format(self._port))
            time.sleep(0.01)


_TAKEN = (
    "the private broker cannot have port {}: is another broker at work (sudo ss -ltnp)? End it, or name it in "
    "room.broker"
)


def _listens(address: BrokerAddress) -> bool:
    try:
        socket.create_connection((address.host, address.port), timeout=1.0).close()
    except OSError:
        return False
    return True


def _free_port() -> int:
    with socket.socket() as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])
