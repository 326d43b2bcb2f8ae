"""Thirty practice cups in one process at speed 4: memory and processor share of each, with a page's stream on each.

OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_practise [CUPS] [SECONDS]

Memory is the station's own (proportional set size, with the calculating child and the records in memory), less that of
the station with a single cup; the processor's share is that of station and child over the last SECONDS, a cup.
Bounds: 25 MB and 1.5 % of an x86 core. On a Pi: not measured.
"""

import json
import os
import subprocess
import sys
import threading
import time
from pathlib import Path

import httpx

from station.command.assembly import IN_MEMORY, SCRATCH
from tests.practising import Practiser

CUPS, SECONDS, SPEED = 30, 120.0, 4.0
MB_BOUND, PERCENT_BOUND = 25.0, 1.5
TICK_S = os.sysconf("SC_CLK_TCK")


def family(pid: int) -> list[int]:
    """The process and its children."""
    children = Path(f"/proc/{pid}/task/{pid}/children").read_text().split()
    return [pid, *(each for child in children for each in family(int(child)))]


def memory_mb(pid: int) -> float:
    """Proportional set size of the process and its children, in MB."""
    lines = [line for each in family(pid) for line in Path(f"/proc/{each}/smaps_rollup").read_text().splitlines()]
    return sum(int(line.split()[1]) for line in lines if line.startswith("Pss:")) / 1000


def processor_s(pid: int) -> float:
    """Processor time of the process, its children and those that have ended, in s."""
    fields = [Path(f"/proc/{each}/stat").read_text().rpartition(")")[2].split() for each in family(pid)]
    return sum(int(each[11]) + int(each[12]) for each in fields) / TICK_S


def records_mb() -> float:
    """What records of practice hold of the memory's own file system, in MB."""
    held = IN_MEMORY.glob(f"{SCRATCH}*/**/*")
    return sum(each.stat().st_blocks * 512 for each in held if each.is_file()) / 1e6


def listen(page: Practiser) -> None:
    """Hold the stream of a cup's page open, and know of the cup what it tells, as a browser does."""
    with httpx.stream("GET", f"{page.client.base_url}{page.api[1:]}/stream?repeats=changed", timeout=None) as stream:
        event = ""
        for line in stream.iter_lines():
            if line.startswith("event: "):
                event = line.removeprefix("event: ")
            elif event == "view" and line.startswith("data: "):
                page.seen = json.loads(line.removeprefix("data: "))


def under_way(pages: list[Practiser]) -> None:
    """Set each cup up, until its first repeat is under way."""
    for page in pages:
        while (state := page.state())["repeat"] == 0:
            page.step(state)


def main() -> int:
    """Print the figures; 1 where a bound is broken."""
    cups = int(sys.argv[1]) if len(sys.argv) > 1 else CUPS
    seconds = float(sys.argv[2]) if len(sys.argv) > 2 else SECONDS
    command = [sys.executable, "-m", "station.command.main", "practise", "--port", "0"]
    station = subprocess.Popen(
        [*command, "--speed", f"{SPEED}", "--cups", f"{cups}"], stdout=subprocess.PIPE, text=True
    )
    try:
        assert station.stdout is not None
        url = station.stdout.readline().rsplit(maxsplit=1)[-1]
        pages = [Practiser.come(httpx.Client(base_url=url, timeout=30.0))]
        threading.Thread(target=listen, args=(pages[0],), daemon=True).start()
        under_way(pages)
        time.sleep(10.0)
        one_mb = memory_mb(station.pid) + records_mb()
        while len(pages) < cups:
            pages.append(Practiser.come(httpx.Client(base_url=url, timeout=30.0)))
            threading.Thread(target=listen, args=(pages[-1],), daemon=True).start()
        under_way(pages)
        kept = sum(page.state()["seq"] for page in pages)
        begun_s, before_s, until_s = time.monotonic(), processor_s(station.pid), time.monotonic() + seconds
        while time.monotonic() < until_s:
            for page in pages:
                page.step(page.seen or page.state())
            time.sleep(2.0)
        kept = sum(page.state()["seq"] for page in pages) - kept
        due = (time.monotonic() - begun_s) * SPEED * cups
        share = 100 * (processor_s(station.pid) - before_s) / (time.monotonic() - begun_s) / cups
        each_mb = (memory_mb(station.pid) + records_mb() - one_mb) / max(cups - 1, 1)
        portions = sum(page.state()["portion"] for page in pages)
        print(f"{cups} cups at speed {SPEED:g}, {seconds:.0f} s, {portions} portions; with one cup {one_mb:.0f} MB;")
        print(f"each further cup {each_mb:.1f} MB (bound {MB_BOUND:g})")
        print(
            f"each cup {share:.2f} % of a core (bound {PERCENT_BOUND:g}), {kept / due:.0%} of the samples that were due"
        )
        return 0 if portions >= cups and each_mb <= MB_BOUND and share <= PERCENT_BOUND else 1
    finally:
        station.terminate()
        station.wait()


if __name__ == "__main__":
    sys.exit(main())
