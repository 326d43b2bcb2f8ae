"""What checking a passphrase costs, and whether anybody waits for it.

OPENBLAS_NUM_THREADS=1 python tests/benchmarks/bench_access.py
"""

import asyncio
import resource
import statistics
import threading
import time

import argon2  # noqa: F401 - loaded before the memory is measured

from station.server.door.secrets import MEMORY_KIB, PASSES, Secrets, hashed

CHECKS = 20
WORDS = "brass cedar ninety"


async def _late_ms(until: asyncio.Event) -> list[float]:
    """Ask the event loop for 5 ms again and again; return how much later each came."""
    late = []
    while not until.is_set():
        begun_s = time.monotonic()
        await asyncio.sleep(0.005)
        late.append(1000.0 * (time.monotonic() - begun_s - 0.005))
    return late


def _thread_late_ms(until: threading.Event, late: list[float]) -> None:
    """The same for a thread that samples."""
    while not until.is_set():
        begun_s = time.monotonic()
        time.sleep(0.005)
        late.append(1000.0 * (time.monotonic() - begun_s - 0.005))


async def _measured(checks: int, kept: str) -> tuple[list[float], list[float], list[float]]:
    secrets, ended, stopped = Secrets(teacher_passphrase_hash=kept), asyncio.Event(), threading.Event()
    thread_late: list[float] = []
    thread = threading.Thread(target=_thread_late_ms, args=(stopped, thread_late))
    thread.start()
    loop_late = asyncio.create_task(_late_ms(ended))
    took = []
    for number in range(checks):
        begun_s = time.monotonic()
        right = await secrets.right("teacher", WORDS if number % 2 else "guess")
        assert right == bool(number % 2)
        took.append(1000.0 * (time.monotonic() - begun_s))
    if not checks:
        await asyncio.sleep(1.5)
    ended.set()
    stopped.set()
    thread.join()
    return took, await loop_late, thread_late


def _line(name: str, late: list[float]) -> str:
    return f"{name:42} median {statistics.median(late):6.2f}  p99 {statistics.quantiles(late, n=100)[98]:6.2f} ms"


def _peak_mib() -> float:
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


async def _main() -> None:
    before_mib = _peak_mib()
    kept = hashed("teacher", WORDS)
    _, idle_loop, idle_thread = await _measured(0, kept)
    took, loop, thread = await _measured(CHECKS, kept)
    together = Secrets(teacher_passphrase_hash=kept)
    await asyncio.gather(*(together.right("teacher", "guess") for _ in range(CHECKS)))
    print(f"argon2id {MEMORY_KIB} KiB, {PASSES} passes; {CHECKS} checks one after another, then {CHECKS} at once")
    print(f"{'a check takes':42} median {statistics.median(took):6.1f}  most {max(took):6.1f} ms")
    print(_line("event loop late, idle", idle_loop))
    print(_line("event loop late, while checking", loop))
    print(_line("a sampling thread late, idle", idle_thread))
    print(_line("a sampling thread late, while checking", thread))
    print(f"{'all this added to the peak of the memory':42} {_peak_mib() - before_mib:6.1f} MiB")


if __name__ == "__main__":
    asyncio.run(_main())
