"""Print how well and how soon the settle detector reads, on cups of bench_settle_cups.py.

Run: python -m tests.benchmarks.bench_settle [benches per kind] [graph|quick] [first seed]

"shown" is the earliest moment at which the mean of three conversions was within one step of the cup, "reach"
the part of the portions in which it ever was. Constants of the detector were chosen with the seeds 0 to 7 of
each kind in view; the default begins at 90000.
"""

from __future__ import annotations

import random
import sys
import time
from bisect import bisect_left
from dataclasses import dataclass
from statistics import median

from station.analysis.settle.detector import LIMIT_S, READ, Outcome, Pace, judge, judge_start
from station.analysis.settle.lags import STEEL_TUBE, STEP_C, CupHabits, learn, learn_start
from tests.benchmarks.bench_settle_cups import KINDS, Bench, Habits, draw

PORTIONS = 10


@dataclass(frozen=True)
class Reading:
    """One portion: wait and earliest moment after the press, error of the reading, what the probe still had
    to go."""

    kind: str
    portion: int
    change_c: float
    wait_s: float
    earliest_s: float
    shown_s: float
    error_c: float
    u_c: float
    sure: float
    settled: bool
    reached: bool = True


def earliest(bench: Bench, press_s: float, pour_s: float, until_s: float) -> tuple[float, float]:
    """Seconds after the press from which the probe, and the mean of READ conversions, are within one step
    of the cup.

    Each must stay so for 8 s; the first looks into the probe before noise and rounding, the second is what
    a person who knows the cup's true temperature could have written down.
    """
    from_s = max(pour_s, press_s)
    inside = [(now, abs(probe - cup) <= STEP_C) for now, cup, probe in bench.truth if from_s <= now <= until_s + 10.0]
    good = [(t, c) for t, c in bench.trace if c is not None and from_s - 15.0 <= t <= until_s + 10.0]
    shown = [
        (good[i][0], abs(sum(c for _, c in good[i - READ + 1 : i + 1]) / READ - cup_at(bench, good[i][0])) <= STEP_C)
        for i in range(READ - 1, len(good))
        if good[i][0] >= from_s
    ]
    return stays(inside, until_s) - press_s, stays(shown, until_s) - press_s


def stays(inside: list[tuple[float, bool]], until_s: float) -> float:
    """The first moment from which all is inside for 8 s; `until_s` when there is none."""
    since: float | None = None
    for now, good in inside:
        if not good:
            since = None
        elif since is None:
            since = now
        if since is not None and (now - since >= 8.0 or now >= until_s):
            return since
    return until_s


def cup_at(bench: Bench, now_s: float) -> float:
    return bench.truth[bisect_left(bench.truth, (now_s,))][1]


def expected(habits: Habits, poured: float, volume: float) -> float:
    """The rise a plan would predict, with a concentration that is 10 % out."""
    acid = 25.0 * habits.acid_mol_dm3 * 1.1
    reacting = max(0.0, min(volume * habits.alkali_mol_dm3, acid - poured * habits.alkali_mol_dm3))
    return habits.sign * reacting * 56.5 / (4.1 * (25.0 + poured + volume))


def repeat(habits: Habits, rng: random.Random, pace: Pace, times: list[float]) -> list[Reading]:
    """One pass; the group pours after each reading that the detector gives."""
    bench = Bench(habits, rng)
    lags = STEEL_TUBE
    now, before = 0.0, None
    while before is None:
        now += 1.0
        bench.run(now)
        start = judge_start(bench.trace, since_s=0.0, now_s=now, lags=lags)
        before = start.temperature_c if start.ready else None
    cup = CupHabits(rest_c=before)
    lags = learn_start(bench.trace, since_s=0.0, until_s=now, lags=lags)
    out: list[Reading] = []
    first, was, level = 0, 0.0, before
    for portion in range(1, PORTIONS + 1):
        press = now + rng.uniform(*habits.pause_s) + habits.pour_s
        pour = max(now + 1.0, press - habits.pour_s - rng.uniform(*habits.press_s))
        bench.pour(pour)
        bench.run(press)
        if portion > 1:
            old = bench.trace[first:]
            lags, cup = learn(old, since_s=was, until_s=max(now, press - 15.0), before_c=level, lags=lags, cup=cup)
        change = expected(habits, (portion - 1) * habits.portion_cm3, habits.portion_cm3)
        now = was = press
        level = before
        first = bisect_left(bench.trace, (press - 15.0,))
        while True:
            now += 1.0
            bench.run(now)
            tick = time.perf_counter()
            verdict = judge(
                bench.trace[first:],
                since_s=press,
                now_s=now,
                before_c=before,
                expected_change_c=change,
                lags=lags,
                cup=cup,
                pace=pace,
            )
            times.append(time.perf_counter() - tick)
            if verdict.ready or now - press > LIMIT_S + 5.0:
                break
        read, u_c = verdict.temperature_c, verdict.u_c
        assert read is not None and u_c is not None
        done = now
        lags, cup = learn(bench.trace[first:], since_s=press, until_s=now, before_c=before, lags=lags, cup=cup)
        ahead = Bench.__new__(Bench)
        ahead.__dict__.update(bench.__dict__, trace=list(bench.trace), truth=list(bench.truth), rng=random.Random(1))
        ahead.run(done + 70.0)
        out.append(
            Reading(
                habits.name,
                portion,
                read - before,
                done - press,
                *earliest(ahead, press, pour + habits.pour_s, done + 60.0),
                read - cup_at(bench, done),
                u_c,
                verdict.sure,
                verdict.outcome is not Outcome.TIME_UP,
            )
        )
        before = read
    return out


def show(name: str, rows: list[Reading]) -> None:
    good = sum(abs(r.error_c) <= STEP_C for r in rows) / len(rows)
    waits = median(r.wait_s for r in rows)
    probe, shown = median(r.earliest_s for r in rows), median(r.shown_s for r in rows)
    ratio = median(r.wait_s / max(r.shown_s, 1.0) for r in rows)
    mean_ratio = sum(r.wait_s for r in rows) / sum(r.shown_s for r in rows)
    early = sum(abs(r.error_c) > 2 * STEP_C for r in rows)
    late = sum(r.wait_s >= LIMIT_S for r in rows)
    zs = sum((r.error_c / r.u_c) ** 2 for r in rows) / len(rows)
    reach = sum(r.reached for r in rows) / len(rows)
    sure = sum(r.sure for r in rows) / len(rows)
    cells = f"{len(rows):5d} {100 * good:6.1f} % {100 * sure:5.1f} {waits:6.1f} {probe:6.1f} {shown:6.1f}"
    ratios = f"{waits / probe:6.2f} {waits / shown:6.2f} {ratio:6.2f} {mean_ratio:6.2f}"
    print(f"{name:26s} {cells} {ratios} {early:5d} {late:5d} {zs**0.5:6.2f} {100 * reach:6.1f} %")


def header() -> None:
    ratios = "  probe  shown   each   mean"
    print(f"{'kind':26s} count  within    sure   wait  probe  shown {ratios} off>2  late  err/u    reach")


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 5
    pace: Pace = "quick" if "quick" in sys.argv else "graph"
    begin = int(sys.argv[3]) if len(sys.argv) > 3 else 90000
    times: list[float] = []
    everything: list[Reading] = []
    header()
    for index, kind in enumerate(KINDS):
        rows: list[Reading] = []
        for seed in range(count):
            rng = random.Random(begin + 1000 * index + seed)
            rows += repeat(draw(kind, rng), rng, pace, times)
        show(kind, rows)
        everything += rows
    show("all", everything)
    show("first portions", [r for r in everything if r.portion == 1])
    times.sort()
    ms = [1e3 * times[int(part * (len(times) - 1))] for part in (0.5, 0.99, 1.0)]
    print(f"judge: median {ms[0]:.2f} ms, 99 % {ms[1]:.2f} ms, worst {ms[2]:.2f} ms of {len(times)} calls")


if __name__ == "__main__":
    main()
