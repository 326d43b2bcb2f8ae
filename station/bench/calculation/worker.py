"""Asks the worker: a process that computes answers and stays warm for the next question, one at a time on this machine.

It is started at the first question and ends by itself after two idle minutes. This process loads neither numpy nor
scipy.
"""

import asyncio
import atexit
import contextlib
import fcntl
import json
import os
import socket
import subprocess
import sys
import tempfile
from collections.abc import AsyncIterator
from pathlib import Path
from typing import IO, Any, Final, NoReturn

from station.bench.calculation.worker_child import KINDS
from station.words import beside, understood

LIMIT_S = 60.0
IDLE_S: Final = 120.0
_CHILD: Final = "station.bench.calculation.worker_child"


class CalculationFailed(Exception):  # noqa: N818
    """There is no answer; the message is the fault in one line."""


class Worker:
    """One process, started when something is asked and none is running. Only who has the turn may ask.

    It belongs to no event loop: whichever asks waits for the answer.
    """

    def __init__(self, idle_s: float = IDLE_S) -> None:
        self.process: subprocess.Popen[bytes] | None = None
        self._idle_s = idle_s
        self._opened = contextlib.ExitStack()
        self._line: socket.socket
        self._errors: IO[bytes]

    async def ask(self, kind: str, question: dict[str, Any]) -> dict[str, Any]:
        """Return its answer. A process that dies over the question is replaced once.

        One that hangs, or whose answer nobody waits for any more, is killed. Raises CalculationFailed and OSError.
        """
        line = json.dumps({"asked": kind, "question": beside(question)}).encode() + b"\n"
        try:
            async with asyncio.timeout(LIMIT_S):
                told = await self._told(line) or await self._told(line) or self._died()
            answer = _read(kind, told)
        except TimeoutError:
            self.end()
            raise CalculationFailed(f"no answer within {LIMIT_S:.0f} s") from None
        except BaseException:
            self.end()
            raise
        if isinstance(answer, str):
            raise CalculationFailed(answer)
        return answer

    def end(self) -> None:
        """Kill the process if it runs."""
        self._opened.close()
        self.process = None

    async def _told(self, question: bytes) -> bytes:
        """Return its answer up to the end of the line; nothing if it ends before that."""
        process = self.process
        if process is None or process.poll() is not None:
            process = self._start()
        loop, told = asyncio.get_running_loop(), bytearray()
        with contextlib.suppress(ConnectionError):
            await loop.sock_sendall(self._line, question)
            while piece := await loop.sock_recv(self._line, 1 << 16):
                told += piece
                if told.endswith(b"\n"):
                    return bytes(told)
        await asyncio.to_thread(process.wait)
        return b""

    def _start(self) -> subprocess.Popen[bytes]:
        self.end()
        with contextlib.ExitStack() as opened:
            ours, theirs = socket.socketpair()
            opened.enter_context(ours).setblocking(False)
            errors = opened.enter_context(tempfile.TemporaryFile())
            # -P: the folder that the station is started from may hold anything, a random.py of a pupil's too.
            command = [*nice(), sys.executable, "-P", "-m", _CHILD, str(self._idle_s)]
            with theirs:
                process = subprocess.Popen(command, stdin=theirs.fileno(), stdout=theirs.fileno(), stderr=errors)  # noqa: S603
            opened.callback(process.wait)
            opened.callback(process.kill)
            self._line, self._errors, self._opened = ours, errors, opened.pop_all()
        self.process = process
        return process

    def _died(self) -> NoReturn:
        """Say why it ended: its last words, or its exit status."""
        self._errors.seek(0)
        lines = self._errors.read().decode(errors="replace").strip().splitlines()
        status = self.process.returncode if self.process else None
        raise CalculationFailed(lines[-1][:200] if lines else f"exit status {status}")


def _read(kind: str, line: bytes) -> dict[str, Any] | str:
    """Return the answer, or the fault for which there is none. Raises CalculationFailed."""
    try:
        told = json.loads(line)
        if told["asked"] == kind:
            return str(told["failed"]) if "failed" in told else understood(told["answer"])
    except (ValueError, LookupError, TypeError, AttributeError):
        pass
    raise CalculationFailed("no answer that can be read")


WORKERS: Final = {turn: Worker() for turn in sorted({kind.turn for kind in KINDS.values()})}
"""One for each turn: no result waits for a prediction, and none that is long under way keeps one waiting."""
for _worker in WORKERS.values():
    atexit.register(_worker.end)


async def answered(kind: str, question: dict[str, Any]) -> dict[str, Any]:
    """Return the worker's answer to a question of this kind, when it is its turn. Raises CalculationFailed."""
    turn = KINDS[kind].turn
    try:
        async with _held(turn):
            return await WORKERS[turn].ask(kind, question)
    except OSError as error:
        raise CalculationFailed(str(error)) from error


def turn_file(turn: str) -> Path:
    """Return the file whose lock is a turn: thirty virtual benches must not compute all at once."""
    return Path(tempfile.gettempdir()) / f"benchwarm-{turn}-{os.getuid()}.lock"


@contextlib.asynccontextmanager
async def _held(turn: str) -> AsyncIterator[None]:
    file = os.open(turn_file(turn), os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW | os.O_CLOEXEC, 0o600)
    try:
        while True:
            try:
                fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)
                break
            except BlockingIOError:
                await asyncio.sleep(0.05)
        yield
    finally:
        os.close(file)


def nice() -> tuple[str, ...]:
    """Return the words in front of a command that lets the sampling go first."""
    return ("nice", "-n", "10") if Path("/usr/bin/nice").exists() else ()
