"""What the running station costs, each figure beside its bound: start, memory, delay to forty screens, processor.

Run it from the checkout, on a machine with nothing else to do:  python -m tests.benchmarks.bench_station
The station is `station serve` with the virtual cup at one sample a second, as a process of its own.
"""

import argparse
import asyncio
import os
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Sequence
from pathlib import Path

from station.bench.clock import Clock
from station.practical import events as e
from station.record.journal import Journal, read_events
from tests.command.child import Served
from tests.server.live import Stream

STREAMS = 40


def main() -> None:
    parser = argparse.ArgumentParser(description="Measure the running station.")
    parser.add_argument("--seconds", type=float, default=60.0, help="how long to watch (60)")
    seconds = parser.parse_args().seconds
    print(f"load average before: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores\n")
    imports()
    with tempfile.TemporaryDirectory() as folder:
        commits(Path(folder))
    for at in ("idle", "at work"):
        with tempfile.TemporaryDirectory() as folder, Served(Path(folder), speed=1.0) as station:
            asyncio.run(watched(station, at, seconds))


def imports() -> None:
    """Print what loading the command costs before it does anything: most of a start on a small board."""
    code = (
        "import resource, time; begun_s = time.perf_counter(); import station.command.serve; "
        "print(time.perf_counter() - begun_s, resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1000)"
    )
    told = [subprocess.check_output([sys.executable, "-c", code], text=True).split() for _ in range(5)]
    line("import of `station serve`, median of 5", statistics.median(float(each[0]) for each in told), "s", None)
    line("resident memory after it", statistics.median(float(each[1]) for each in told), "MB", None)


def commits(folder: Path) -> None:
    """Print how long one event takes to be committed."""
    journal, clock = Journal(folder), Clock.started()
    took_s = []
    for _ in range(2000):
        begun_s = time.perf_counter()
        journal.append([(clock.moment(), e.SampleTaken(21.0625))]).result()
        took_s.append(time.perf_counter() - begun_s)
    journal.close()
    line("commit of one event, p50", 1000 * statistics.median(took_s), "ms", None)
    line("commit of one event, p99", 1000 * percentile(took_s, 99), "ms", None)


async def watched(station: Served, at: str, seconds: float) -> None:
    """Print start, memory, processor share and delay, with or without a repeat under way and forty open streams."""
    process = station.process.pid
    while station.state()["live"] is None:  # noqa: ASYNC110 - another process
        await asyncio.sleep(0.005)
    if at == "idle":
        line("start to first sample", time.monotonic() - station.begun_s, "s", 3.0)
        await asyncio.sleep(2)
        before_s = processor_s(process)
        await asyncio.sleep(seconds)
        line(
            "processor, 1 sample/s, no page open", 100 * (processor_s(process) - before_s) / seconds, "% of a core", 10
        )
        line("resident memory, no page open", resident_mb(process), "MB", 120)
        return
    station.act("begin", "bench 1")
    station.act("portion_added", "bench 2", portion=1)
    streams = [await Stream.opened(station.port, after=0) for _ in range(STREAMS)]
    for stream in streams:
        await stream.until("view")
    before_s, begun_s = processor_s(process), time.monotonic()
    heard = await asyncio.gather(*(heard_within(stream, seconds) for stream in streams))
    share = 100 * (processor_s(process) - before_s) / (time.monotonic() - begun_s)
    taken_s = {each.seq: each.monotonic_s for each in read_events(station.record)}  # one clock for all processes
    delays_ms = [1000 * (heard_s - taken_s[seq]) for stream in heard for seq, heard_s in stream]
    print(f"{len(delays_ms)} samples heard on {STREAMS} streams")
    line("sample to event, p50", statistics.median(delays_ms), "ms", None)
    line("sample to event, p99", percentile(delays_ms, 99), "ms", 150)
    line("sample to event, worst", max(delays_ms), "ms", None)
    line(f"processor, settling, {STREAMS} streams", share, "% of a core", 10)
    line(f"resident memory, settling, {STREAMS} streams", resident_mb(process), "MB", 120)
    for stream in streams:
        await stream.close()


async def heard_within(stream: Stream, seconds: float) -> list[tuple[int, float]]:
    """Return (sequence number, moment) of each sample that comes within so many seconds; the reader's own
    delay is in it."""
    heard = []
    limit_s = time.monotonic() + seconds
    while time.monotonic() < limit_s:
        message = await stream.until("happened")
        if message.seq is not None and message.data["kind"] == "sample_taken":
            heard.append((message.seq, time.monotonic()))
    return heard


def processor_s(process: int) -> float:
    """Return processor seconds of a process and its threads (proc(5), fields 14 and 15)."""
    fields = Path(f"/proc/{process}/stat").read_text().rpartition(")")[2].split()
    return (int(fields[11]) + int(fields[12])) / os.sysconf("SC_CLK_TCK")


def resident_mb(process: int) -> float:
    """Return resident memory in MB (proc(5), VmRSS)."""
    status = Path(f"/proc/{process}/status").read_text()
    return next(int(row.split()[1]) / 1000 for row in status.splitlines() if row.startswith("VmRSS:"))


def percentile(values: Sequence[float], percent: int) -> float:
    """Return a percentile, rounded up to a value that occurred."""
    return sorted(values)[min(len(values) - 1, len(values) * percent // 100)]


def line(name: str, value: float, unit: str, bound: float | None) -> None:
    """Print one figure, with its bound where it has one."""
    judged = "" if bound is None else f"   bound {bound:g} {unit}: {'held' if value <= bound else 'MISSED'}"
    print(f"{name:<44}{value:9.2f} {unit}{judged}", flush=True)


if __name__ == "__main__":
    main()
