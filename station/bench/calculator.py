"""Keeps the results up to date: one calculation at a time on this machine, the newest question wins."""

import asyncio
import contextlib
import fcntl
import json
import os
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path
from typing import Any

LIMIT_S = 60.0


class CalculationFailed(Exception):  # noqa: N818
    """The child process gave no answer; the message is its last line."""


class Calculator:
    """Answers questions in a child process. `ask` replaces a question that still waits.

    `done(seq, results)` is called in the event loop with the sequence number of the state that was asked about.
    """

    def __init__(self, done: Callable[[int, dict[str, Any]], None]) -> None:
        self._done = done
        self._waiting: tuple[int, dict[str, Any]] | None = None
        self._task: asyncio.Task[None] | None = None

    def ask(self, seq: int, question: dict[str, Any]) -> None:
        """Ask for the results of this state."""
        self._waiting = (seq, question)
        if self._task is None or self._task.done():
            self._task = asyncio.get_running_loop().create_task(self._work())

    async def finished(self) -> None:
        """Wait until nothing is being calculated."""
        while self._task is not None and not self._task.done():
            await asyncio.wait([self._task])

    async def close(self) -> None:
        """Stop calculating."""
        self._waiting = None
        if self._task is not None:
            self._task.cancel()
            await asyncio.wait([self._task])

    async def _work(self) -> None:
        while self._waiting is not None:
            (seq, question), self._waiting = self._waiting, None
            try:
                answer = await calculate(question)
            except CalculationFailed as error:
                words = f"The calculation failed: {error}. The readings are kept."
                answer = {"repeats": [], "mean": {"straight_lines": None, "refused": {"straight_lines": words}}}
            self._done(seq, answer)


async def calculate(question: dict[str, Any]) -> dict[str, Any]:
    """Return the results for one question, computed in a child process. Raises CalculationFailed."""
    try:
        answer = await answered("station.bench.calculate", question)
        answer["mean"], answer["repeats"]
    except (LookupError, TypeError):
        raise CalculationFailed("no answer that can be read") from None
    return answer


async def answered(module: str, question: dict[str, Any], turn: str = "calculation") -> dict[str, Any]:
    """Return what this module, run as a child when it is its turn, answers. Raises CalculationFailed.

    Only one child of each kind of `turn` runs on this machine.
    """
    try:
        code, out, err = await _child_answers(module, json.dumps(question).encode(), turn)
    except OSError as error:
        raise CalculationFailed(str(error)) from error
    if code != 0:
        lines = err.decode(errors="replace").strip().splitlines()
        raise CalculationFailed(lines[-1][:200] if lines else f"exit status {code}")
    try:
        answer: dict[str, Any] = json.loads(out)
    except ValueError:
        raise CalculationFailed("no answer that can be read") from None
    return answer


async def _child_answers(module: str, question: bytes, turn: str) -> tuple[int, bytes, bytes]:
    """Return the child's exit status and what it wrote."""
    async with _one_at_a_time(turn):
        child = await asyncio.create_subprocess_exec(
            *nice(),
            sys.executable,
            "-P",  # the folder that the station is started from may hold anything, a random.py of a pupil's too
            "-m",
            module,
            stdin=asyncio.subprocess.PIPE,
            stdout=asyncio.subprocess.PIPE,
            stderr=asyncio.subprocess.PIPE,
        )
        try:
            async with asyncio.timeout(LIMIT_S):
                out, err = await child.communicate(question)
        except TimeoutError:
            raise CalculationFailed(f"no answer within {LIMIT_S:.0f} s") from None
        finally:
            if child.returncode is None:
                with contextlib.suppress(ProcessLookupError):
                    child.kill()
                await child.wait()
    assert child.returncode is not None  # noqa: S101 - it has ended
    return child.returncode, out, err


def nice() -> tuple[str, ...]:
    """Return the words in front of a command that lets the sampling go first."""
    return ("nice", "-n", "10") if Path("/usr/bin/nice").exists() else ()


@contextlib.asynccontextmanager
async def _one_at_a_time(turn_of: str) -> Any:
    """Hold this machine's turn: thirty virtual benches must not start thirty fits at once."""
    with _turn_file(turn_of) as turn:
        while True:
            try:
                fcntl.flock(turn, fcntl.LOCK_EX | fcntl.LOCK_NB)
                break
            except BlockingIOError:
                await asyncio.sleep(0.05)
        yield


@contextlib.contextmanager
def _turn_file(turn_of: str = "calculation") -> Iterator[int]:
    path = Path(tempfile.gettempdir()) / f"benchwarm-{turn_of}-{os.getuid()}.lock"
    turn = os.open(path, os.O_RDWR | os.O_CREAT | os.O_NOFOLLOW | os.O_CLOEXEC, 0o600)
    try:
        yield turn
    finally:
        os.close(turn)
