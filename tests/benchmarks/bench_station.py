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
from unittest.mock import patch

from station.analysis.settle.lags import fit_portion
from station.bench.clock import Clock
from station.practical import events as e
from station.practical.kinds import read_plan
from station.record.journal import Journal, Moment, read_events
from tests.command.child import Served
from tests.records import PLAN_TEXT
from tests.room.lesson_in_jumps import events_of
from tests.server.live import Stream, in_process

STREAMS = PAGES = 40
ASK = "GET /api/state HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\nAccept-Encoding: gzip\r\n\r\n"


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
    with tempfile.TemporaryDirectory() as folder:
        asyncio.run(fits(Path(folder)))
    with tempfile.TemporaryDirectory() as folder:
        nearly_done(Path(folder) / "record")
        with Served(Path(folder), speed=1.0) as station:
            asyncio.run(asked(station, seconds))


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


def nearly_done(folder: Path) -> None:
    """Fill a record: the last repeat but for its last portion, the one before it settling."""
    events = events_of(1, plan=read_plan(PLAN_TEXT))
    poured = [number for number, each in enumerate(events, 1) if isinstance(each.event, e.PortionAdded)]
    journal = Journal(folder)
    kept = [
        (Moment(each.boot, each.monotonic_s, each.time_s, each.wall, each.clock), each.event)
        for each in events[: poured[-2]]
    ]
    journal.append(kept).result()
    journal.close()


async def fits(folder: Path) -> None:
    """Print how often the settle model is fitted for pages that ask while a portion settles."""
    nearly_done(folder)
    async with in_process(folder) as station:
        for sample in range(20):
            await station.sample(20.0 + sample / 16)
        with patch("station.analysis.settle.detector.fit_portion", wraps=fit_portion) as fit:
            for _ in range(PAGES):
                state = await station.state()
                assert state["state"] == "settle", state["state"]
            line(f"settle fits for {PAGES} answers between two samples", fit.call_count, "fits", 0)
            await station.sample(22.0)
            line("settle fits at a sample", fit.call_count, "fits", None)
        print(f"each answer has {len(station.watch.whole_text())} bytes before it is packed")


async def asked(station: Served, seconds: float) -> None:
    """Print what pages cost that ask for the state once a second each, beside the same practical without them."""
    while station.state()["live"] is None:  # noqa: ASYNC110 - another process
        await asyncio.sleep(0.005)
    process, shares = station.process.pid, []
    portion = station.state()["portion"]
    for pages in (0, PAGES):
        # Alike for both: a portion settles for as long, from its first second on.
        station.act("portion_undone", f"undone {pages}", portion=portion).raise_for_status()
        station.act("portion_added", f"added {pages}", portion=portion).raise_for_status()
        before_s, begun_s = processor_s(process), time.monotonic()
        answers = await asyncio.gather(*(asking(station.port, page / PAGES, seconds) for page in range(pages)))
        await asyncio.sleep(begun_s + seconds - time.monotonic())
        shares.append(100 * (processor_s(process) - before_s) / (time.monotonic() - begun_s))
    print(
        f"{sum(answers)} answers to {PAGES} pages that ask once a second, {seconds:g} s; without them {shares[0]:.1f} %"
    )
    line(f"processor, {PAGES} pages ask for the state", shares[1] - shares[0], "% of a core", 5)


async def asking(port: int, first_s: float, seconds: float) -> int:
    """Ask once a second over one connection, as a page does that has no stream; return how often."""
    await asyncio.sleep(first_s)
    reader, writer = await asyncio.open_connection("127.0.0.1", port)
    begun_s, times = time.monotonic(), 0
    while times < seconds - first_s:
        writer.write(ASK.format(port=port).encode())
        head = await reader.readuntil(b"\r\n\r\n")
        assert head.startswith(b"HTTP/1.1 200"), head
        await reader.readexactly(int(head.lower().partition(b"content-length: ")[2].split()[0]))
        times += 1
        await asyncio.sleep(max(begun_s + times - time.monotonic(), 0))
    writer.close()
    await writer.wait_closed()
    return times


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
