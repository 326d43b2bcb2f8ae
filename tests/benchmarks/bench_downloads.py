"""What a download costs: its time, how long the loop stood still meanwhile at worst, and memory.

python -m tests.benchmarks.bench_downloads [HOURS ...]    records of so many hours at a sample a second (default: 1 4)
"""

import asyncio
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from station.practical import events as e
from station.record.journal import Journal, Moment
from tests.server.live import PLAN, in_process

FILES = ("record.csv", "readings.csv", "record.xlsx", "journal.jsonl")
WALL = "2026-09-01T09:00:00+00:00"
PORTION_S = 60


def write(folder: Path, samples: int) -> None:
    """Repeats of ten portions, a minute each, over and over."""
    happened: list[tuple[float, e.Event]] = [(0.0, e.PlanChosen(PLAN.model_dump(mode="json")))]
    repeat, portion = 0, 10
    for second in range(samples):
        if second % PORTION_S == 0:
            if portion == 10:
                happened += [(second, e.RepeatEnded(repeat))] if repeat else []
                repeat, portion = repeat + 1, 0
                happened.append((second, e.RepeatBegun(repeat)))
            else:
                portion += 1
                happened.append((second, e.PortionAdded(repeat, portion, 4.0)))
            happened.append((second + 0.1, e.ReadingSettled(repeat, portion, 20.0 + 0.5 * portion, 0.03, True)))
        happened.append((second + 0.4, e.SampleTaken(20.0 + second % 160 / 16)))
    journal = Journal(folder)
    journal.append([(Moment("b", at, at, WALL, "none"), event) for at, event in happened]).result(timeout=120)
    journal.close()


def rss_mb() -> float:
    """The most memory that this process has had."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


async def measure(folder: Path) -> None:
    async with in_process(folder) as station:
        before_mb = rss_mb()
        for path in FILES:
            began = last = time.perf_counter()
            asked, worst = asyncio.create_task(station.client.get(f"/api/{path}")), 0.0
            while not asked.done():
                await asyncio.sleep(0.001)
                now = time.perf_counter()
                worst, last = max(worst, now - last), now
            size = len((await asked).content)
            print(
                f"  {path:14s} {size / 1000:8.0f} kB  {time.perf_counter() - began:6.2f} s"
                f"  loop stood still for {1000 * worst:4.0f} ms at worst  memory +{rss_mb() - before_mb:3.0f} MB"
            )


def main() -> None:
    words = sys.argv[1:] or ["1", "4"]
    if words[0] == "--one":
        with tempfile.TemporaryDirectory() as folder:
            write(Path(folder), round(3600 * float(words[1])))
            asyncio.run(measure(Path(folder)))
        return
    for hours in words:
        print(f"{hours} h of samples", flush=True)
        subprocess.run([sys.executable, "-m", "tests.benchmarks.bench_downloads", "--one", hours], check=True)


if __name__ == "__main__":
    main()
