"""The reliability table: what was provoked on the real station, how often, and what was lost.

python -m tests.benchmarks.bench_reliability              all of it (about an hour on two free cores)
python -m tests.benchmarks.bench_reliability --share 0.1  a tenth of each
python -m tests.benchmarks.bench_reliability kills load   only these
Every figure is counted or measured in the run that prints it; inputs and kills come from seeds and can be made again.
"""

import argparse
import asyncio
import contextlib
import os
import random
import re
import resource
import socket
import tempfile
import time
import traceback
from collections import Counter
from collections.abc import Callable
from pathlib import Path
from random import Random

from station.practical import events as e
from station.record.journal import read_events
from station.room.broker import PrivateBroker
from station.room.mqtt import connected
from tests.benchmarks.bench_station import resident_mb
from tests.command.child import SETTINGS, Served
from tests.command.test_kills import goes_on, killed
from tests.reliability import attacks, spoilt
from tests.reliability.bad_readings import AT_RANDOM, BURSTS, practical
from tests.reliability.fuzz import DOORS
from tests.reliability.load import held
from tests.reliability.openapi import asked, station
from tests.room.class_room import USERS, address_of, bench_at_work, broker_in, collecting, linked, until
from tests.server.doors import HASHED
from tests.tables import faults as register

INPUTS = 100_000
LONGEST_S = 600.0
"""On a busy machine a kind of input ends after this time; the table says how many there were."""
SLOW = {"stored journals": 20}
"""Doors that write files: so many times fewer inputs."""

ACCESS = f'[access]\nteacher_passphrase_hash = "{HASHED.teacher_passphrase_hash}"\n'


def main() -> None:
    parser = argparse.ArgumentParser(description="Provoke what can go wrong, and count what was lost.")
    parser.add_argument("only", nargs="*", choices=[*SECTIONS, []], help="sections (all)")
    parser.add_argument("--share", type=float, default=1.0, help="this share of each (1)")
    parser.add_argument("--seed", type=int, default=1, help="where the inputs begin (1)")
    options = parser.parse_args()
    print(f"load average before: {os.getloadavg()[0]:.1f} on {os.cpu_count()} cores\n")
    for name in options.only or SECTIONS:
        begun_s = time.monotonic()
        SECTIONS[name](options.share, options.seed)
        line(f"  ({name}: minutes)", f"{(time.monotonic() - begun_s) / 60:.1f}")


def faults(_: float, __: int) -> None:
    """Count the fault register."""
    found = register()
    tested = [each for each in found if each.tests]
    line("faults in the register", len(found))
    line(
        "  provoked by a test of the suite", len(tested), f"by {len({test for each in tested for test in each.tests})}"
    )
    line("  not provoked, each with its reason", len(found) - len(tested))


def inputs(share: float, seed: int) -> None:
    """Spoil what comes in."""
    for name, opened in DOORS.items():
        count = int(INPUTS * share / SLOW.get(name, 1))
        broken: Counter[str] = Counter()
        begun_s = time.monotonic()
        ran = 0
        with opened() as door:
            for number in range(count):
                if time.monotonic() - begun_s > LONGEST_S:
                    break
                ran += 1
                try:
                    door(Random(seed * 1_000_000 + number))
                except Exception as error:
                    where = traceback.extract_tb(error.__traceback__)[-1]
                    broken[f"{type(error).__name__} at {Path(where.filename).name}:{where.lineno}"] += 1
        per_s = ran / (time.monotonic() - begun_s)
        line(f"inputs: {name}", ran, f"broken promises and tracebacks {sum(broken.values())}; {per_s:.0f} a second")
        for what, times in broken.most_common(5):
            line(f"  {what}", times)


def requests(share: float, seed: int) -> None:
    """Spoil requests, and ask everything that the OpenAPI document knows."""
    with tempfile.TemporaryDirectory() as folder, Served(Path(folder), 1.0, SETTINGS + ACCESS) as served:
        count = int(INPUTS * share / 5)
        failures = attacks.noise(served, count, seed)
        served.terminate()
        line("spoilt HTTP requests", count, f"five-hundreds {failures}, tracebacks {tracebacks(served)}")
    for name, target in spoilt.TARGETS.items():
        count = max(int(2000 * share), 200)
        found, flood = asyncio.run(_spoilt(target, count, seed, max(10 * share, 3)))
        line(
            f"odd requests to a {name}, by staff",
            count,
            f"five-hundreds {len(found.failures)}; log grew by {found.log_bytes_per_s / 1000:.1f} kB a second",
        )
        asked_s = sum(flood.statuses.values()) / flood.took_s
        line(
            "  no origin at all, from one address, a second",
            f"{asked_s:.0f}",
            f"told to wait {flood.statuses[429]}, five-hundreds {flood.statuses[500]}; "
            f"log grew by {flood.log_bytes_per_s / 1000:.1f} kB a second",
        )
    with tempfile.TemporaryDirectory() as folder, station(Path(folder)) as served:
        done = asked(served, max(int(300 * share), 10), "fuzzing,coverage")
        served.terminate()
        line(
            "requests from the OpenAPI document",
            done.requests,
            f"failed {done.failed}, tracebacks {tracebacks(served)}",
        )


async def _spoilt(
    target: spoilt.Opened, count: int, seed: int, seconds: float
) -> tuple[spoilt.Answers, spoilt.Answers]:
    with tempfile.TemporaryDirectory() as folder:
        async with target(Path(folder)) as opened:
            found = await spoilt.answers(opened, count, seed)
            return found, await spoilt.flooded(opened, spoilt.BAD_ORIGIN, seconds)


def kills(share: float, seed: int) -> None:
    """Kill the station and the bench without a server at random moments of one practical."""
    bench, whole = int(160 * share), int(40 * share)
    with tempfile.TemporaryDirectory() as folder:
        record, telling, starts = killed(Path(folder), random.Random(seed), bench, whole)
        kept = {each.seq: each.event for each in read_events(record)}
        lost = sum(getattr(kept.get(seq), "key", None) != key for key, seq in telling.answered.items())
        keys = Counter(key for event in kept.values() if (key := getattr(event, "key", None)) is not None)
        invented = sum(times - 1 for times in keys.values()) + len(set(keys) - set(telling.told))
        line("kills -9 in one practical", bench + whole, f"acts answered {len(telling.answered)}")
        line("  acknowledged acts lost", lost)
        line("  acts invented or doubled", invented)
        line(
            "  starts elsewhere than before the kill", sum(not goes_on(*start) for start in starts), f"of {len(starts)}"
        )
        back_s = sorted(telling.back_s)
        line("  first answer after a start, median", f"{back_s[len(back_s) // 2]:.1f} s", f"worst {back_s[-1]:.1f} s")


def bad_readings(share: float, seed: int) -> None:
    """Let nearly a third of all reads fail."""
    for name, script in (("at random", AT_RANDOM), ("in bursts of 15 s", BURSTS)):
        found = [practical(script, seed * 100 + number) for number in range(max(int(20 * share), 2))]
        whole = sum(all(each.status == "ended" for each in one.state.repeats) for one in found)
        errors = [abs(one.error_cm3) for one in found if one.error_cm3 is not None]
        bad = sum(one.bad for one in found) / len(found)
        line(f"practicals with {100 * bad:.0f} % bad reads {name}", len(found), f"completed {whole}")
        line("  interval holds the true end-point", sum(one.holds for one in found), f"of {len(found)}")
        line("  refused; largest error / cm³", len(found) - len(errors), f"{max(errors, default=0.0):.2f}")


def attacked(share: float, _: int) -> None:
    """Crowd, drip and guess, and look at what another device notices."""
    seconds = max(60 * share, 10)
    with tempfile.TemporaryDirectory() as folder, Served(Path(folder), 1.0, SETTINGS + ACCESS) as served:
        for addresses in (1, 40):
            begun_s = time.monotonic()
            seen = attacks.guesses(served, 1000, addresses)
            took_s = time.monotonic() - begun_s
            line(
                f"guesses from {addresses} address(es)",
                1000,
                f"looked at {seen[403]} in {took_s:.0f} s, the rest told to wait",
            )
        for name, attack in (
            ("400 dripping connections", attacks.slow_connections),
            ("50 download loops", attacks.downloads),
        ):
            noticed = asyncio.run(attack(served, int(name.split()[0]), seconds))
            line(f"{name}: state to another device, p99", f"{noticed.p99_ms:.0f} ms", f"not answered {noticed.failed}")
        line("  resident afterwards", f"{resident_mb(served.process.pid):.0f} MB")
        served.terminate()
        line("  tracebacks", tracebacks(served))


def room(share: float, _: int) -> None:
    """Come under others' client ids with one bench's credentials, then hold as many connections as a script can."""
    most = resource.getrlimit(resource.RLIMIT_NOFILE)[1]
    resource.setrlimit(resource.RLIMIT_NOFILE, (most, most))  # for the connections that are held
    with tempfile.TemporaryDirectory() as folder, broker_in(Path(folder) / "broker") as broker:
        asyncio.run(_room(Path(folder), broker, max(60 * share, 5)))


async def _room(folder: Path, broker: PrivateBroker, seconds: float) -> None:
    async with (
        collecting(folder / "room", broker, broker.room_address) as room,
        bench_at_work(folder / "5") as bench,
        linked(bench, broker, "bench-5") as link,
    ):
        await until(lambda: link.state.up)
        connection, lost = room._client, 0
        trying = asyncio.create_task(attacks.takeovers(address_of(broker, "bench-5"), ["bench-6"], seconds))
        while not trying.done():
            await asyncio.wait({trying}, timeout=0.01)
            if room._client is not connection:
                connection, lost = room._client, lost + (room._client is None)
        line("takeover attempts with one bench's password", trying.result()[0], f"in {seconds:.0f} s")
        line("  room thrown off its broker", lost)
        with contextlib.ExitStack() as held:
            for _ in range(1100):
                held.enter_context(socket.create_connection((broker.address.host, broker.address.port), timeout=5))
            for user in USERS:
                async with connected(address_of(broker, user), lambda *_: None):
                    pass
            line("idle connections held at the broker", 1100, f"{len(USERS)} of {len(USERS)} benches let in beside")


def load(share: float, _: int) -> None:
    """Hold forty streams, a slow reader and two that read no more: at true speed, then through an hour."""
    for speed, seconds in ((1.0, max(120 * share, 20)), (20.0, max(180 * share, 20))):
        with tempfile.TemporaryDirectory() as folder, Served(Path(folder), speed) as served:
            found = asyncio.run(held(served, seconds))
            served.terminate()
            bench = f"{seconds * speed / 60:.0f} minutes of a practical in {seconds:.0f} s"
            line("streams held, of 40, three hardly read beside", found.streams, bench)
            line("  samples; not heard by a page", found.samples, found.unheard)
            if speed == 1.0:
                line("  slots without a sample", found.missing)
                line("  sample off its slot, p99", f"{found.late_p99_ms:.0f} ms", f"worst {found.late_worst_ms:.0f} ms")
            line("  resident before and after", f"{found.before_mb:.1f} MB", f"{found.after_mb:.1f} MB")
            line("  tracebacks", tracebacks(served))


def starts(share: float, _: int) -> None:
    """Start again on the record of a long day."""
    with tempfile.TemporaryDirectory() as folder:
        with Served(Path(folder), 60.0) as served:
            served.act("begin", "day 1")
            time.sleep(max(150 * share, 15))
            served.process.kill()
        count = sum(isinstance(each.event, e.SampleTaken) for each in read_events(Path(folder) / "record"))
        with Served(Path(folder), 60.0) as served:
            took_s = time.monotonic() - served.begun_s
            assert served.state()["state"] != "ready"
            line("start after a kill, samples in the repeat", count, f"page after {took_s:.1f} s")


def tracebacks(served: Served) -> int:
    """How many tracebacks an ended station wrote."""
    return len(re.findall("Traceback", served.errors()))


def line(name: str, value: object, more: object = "") -> None:
    """Print one row."""
    print(f"{name:<48}{value!s:>9}   {more}".rstrip(), flush=True)


SECTIONS: dict[str, Callable[[float, int], None]] = {
    "faults": faults,
    "inputs": inputs,
    "requests": requests,
    "kills": kills,
    "bad_readings": bad_readings,
    "attacked": attacked,
    "room": room,
    "load": load,
    "starts": starts,
}

if __name__ == "__main__":
    main()
