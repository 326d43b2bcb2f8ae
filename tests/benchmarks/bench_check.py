"""What the pre-flight costs: the record's size an hour, looking it through, and the command's own start.

Run it from the checkout, on a machine with nothing else to do:  python -m tests.benchmarks.bench_check
"""

import os
import resource
import subprocess
import sys
import tempfile
import time
from pathlib import Path

from station.bench.check.finding import Kit
from station.bench.check.storage import HOUR_MB, journal
from station.bench.clock import Clock
from station.practical import events as e
from station.record.journal import Journal

HOURS = 50


def main() -> None:
    print(f"load average before: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores")
    with tempfile.TemporaryDirectory() as name:
        folder = Path(name)
        write(folder)
        size_mb = (folder / "journal.sqlite3").stat().st_size / 1e6
        print(f"an hour of samples     {size_mb / HOURS:8.3f} MB   (the check reckons with {HOUR_MB} MB)")
        begun_s = time.perf_counter()
        found = journal(Kit(folder=folder), within_s=300)
        took_s = time.perf_counter() - begun_s
        print(f"looked through         {took_s:8.2f} s    {size_mb:.0f} MB, {found.text}")
        begun_s = time.perf_counter()
        config = folder / "station.toml"
        config.write_text('[probe]\ndriver = "none"\n[server]\nport = 1\n')
        subprocess.run([sys.executable, "-m", "station.command.main", "check", "--config", str(config)], check=False)
        print(f"the command, no probe  {time.perf_counter() - begun_s:8.2f} s")
    print(f"largest child          {resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss / 1000:8.1f} MB")


def write(folder: Path) -> None:
    """Write so many hours of samples that move a little, as real ones do."""
    record, clock = Journal(folder), Clock.started()
    for _ in range(HOURS):
        moments = [(clock.moment(float(at_s)), e.SampleTaken(21.0 + at_s % 7 / 16)) for at_s in range(3600)]
        record.append(moments).result()
    record.close()


if __name__ == "__main__":
    main()
