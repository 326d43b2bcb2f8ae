"""Print how well and how soon the settle detector reads on cups of scenes.py whose group does what it is told:
the next portion is poured after the reading, so no hold of the scene cuts a wait short.

"within" is the part of the readings within one step of the cup's true mean temperature at the moment they
were put down, "shown" the earliest moment from which the mean of three conversions was so for 8 s had no one
poured again, "reach" the part of the portions in which it ever was within 70 s more. Constants of the
detector were chosen with scenes 500 to 503 and 700 to 702 of each family in view.
Run: python -m tests.benchmarks.bench_settle_live [scenes per family] [first scene]
"""

from __future__ import annotations

import sys
import time
from copy import copy
from statistics import median

import numpy as np

from station.analysis.settle.detector import LIMIT_S, READ, Outcome, judge, judge_start
from station.analysis.settle.lags import STEEL_TUBE, STEP_C, CupHabits, learn, learn_start
from tests.benchmarks.bench_settle import Reading, header, show, stays
from tests.benchmarks.scenes import FAMILIES
from tests.benchmarks.scenes_draw import draw
from tests.benchmarks.scenes_physics import DT_S, Array, Tank

NEVER_S = 1e9
AFTER_S = 70.0


class LiveCup:
    """One scene stepped forwards; `trace` holds (time_s, temperature_c or None), the lists the truth."""

    def __init__(self, seed: int, family: str) -> None:
        self.rng = np.random.default_rng([seed, FAMILIES.index(family)])
        drawn = draw(self.rng, family, 0.0)
        self.drawn, self.fixed, self.habits = drawn, drawn.fixed, drawn.habits
        middle_s = drawn.parameters["pour_time_s"][:, 0]
        self.press_after_s = drawn.press_s - middle_s
        self.pour_s = drawn.parameters["pour_s"][:, 0]
        self.parameters = drawn.parameters | {"pour_time_s": np.full((self.fixed.pours, 1), NEVER_S)}
        self.tank = Tank(self.fixed, self.parameters)
        self.state: Array = self.tank.begin()
        self.time_s: list[float] = [0.0]
        self.cup_c: list[float] = []
        self.sensor_c: list[float] = []
        self.trace: list[tuple[float, float | None]] = []
        self.next_s = float(self.habits.period_s)
        self._note()

    def pour(self, portion: int, middle_s: float) -> None:
        """Pour portion 0, 1, … with its middle at `middle_s`, not before now."""
        self.parameters["pour_time_s"] = self.parameters["pour_time_s"].copy()
        self.parameters["pour_time_s"][portion, 0] = middle_s

    def run(self, until_s: float) -> None:
        """Step and sample until `until_s`."""
        while self.next_s <= until_s:
            while self.time_s[-1] < self.next_s:
                self._step()
            self._sample()

    def ahead(self, seconds: float) -> LiveCup:
        """The same cup `seconds` later, had no one poured; this one stays where it is."""
        other = copy(self)
        other.time_s, other.cup_c, other.sensor_c = list(self.time_s), list(self.cup_c), list(self.sensor_c)
        other.trace, other.rng = list(self.trace), np.random.default_rng(1)
        other.run(self.time_s[-1] + seconds)
        return other

    def true_c(self, time_s: float) -> float:
        """Mean temperature of the liquid, as this probe would show it."""
        return float(np.interp(time_s, self.time_s, self.cup_c)) + self.drawn.offset_c

    def probe_c(self, time_s: float) -> float:
        """What the probe's core is at, without noise and steps."""
        return float(np.interp(time_s, self.time_s, self.sensor_c)) + self.drawn.offset_c

    def _note(self) -> None:
        main_c, zone_c = self.tank.temperatures(self.state)
        part = float((self.parameters["zone_cm3"] / self.state[2])[0])
        self.cup_c.append((1.0 - part) * float(main_c[0]) + part * float(zone_c[0]))
        self.sensor_c.append(float(self.tank.reading(self.state)[0]))

    def _step(self) -> None:
        t, x, rate = self.time_s[-1], self.state, self.tank.rate
        a = rate(t, x)
        b = rate(t + DT_S / 2, x + DT_S / 2 * a)
        c = rate(t + DT_S / 2, x + DT_S / 2 * b)
        d = rate(t + DT_S, x + DT_S * c)
        self.state = x + DT_S / 6 * (a + 2 * b + 2 * c + d)
        self.time_s.append(t + DT_S)
        self._note()

    def _sample(self) -> None:
        h, at_s = self.habits, self.next_s
        self.next_s += max(h.period_s + h.jitter_s * self.rng.standard_normal(), 0.3)
        felt_c = self.probe_c(at_s) + self.drawn.noise_c * self.rng.standard_normal()
        last = next((c for _, c in reversed(self.trace) if c is not None), None)
        value = last if last is not None and self.rng.random() < h.stale_share else round(felt_c / STEP_C) * STEP_C
        self.trace.append((at_s, None if self.rng.random() < h.missing_share else value))


def read(seed: int, family: str, times: list[float]) -> list[Reading]:
    """The readings of one repeat."""
    cup = LiveCup(seed, family)
    before = None
    while before is None:
        cup.run(cup.next_s)
        now = cup.trace[-1][0]
        start = judge_start(cup.trace, since_s=0.0, now_s=now)
        before = start.temperature_c if start.ready else None
    habits = CupHabits(rest_c=before)
    lags = learn_start(cup.trace, since_s=0.0, until_s=now, lags=STEEL_TUBE)
    out: list[Reading] = []
    rows: list[tuple[float, float | None]] = []
    level, was = before, 0.0
    for portion in range(cup.fixed.pours):
        pause_s = float(cup.rng.uniform(2.0, 15.0)) + 0.5 * float(cup.pour_s[portion])
        middle = now + pause_s
        cup.pour(portion, middle)
        press = max(middle + float(cup.press_after_s[portion]), now + 1.0)
        cup.run(press)
        if portion:
            until = max(now, press - 15.0)
            lags, habits = learn(rows, since_s=was, until_s=until, before_c=level, lags=lags, cup=habits)
        level, was = before, press
        while True:
            cup.run(cup.next_s)
            rows = [row for row in cup.trace if row[0] >= press - 15.0]
            now = cup.trace[-1][0]
            tick = time.perf_counter()
            verdict = judge(rows, since_s=press, now_s=now, before_c=level, lags=lags, cup=habits)
            times.append(time.perf_counter() - tick)
            if verdict.ready and verdict.temperature_c is not None and verdict.u_c is not None:
                break
        before = verdict.temperature_c
        error_c = before - cup.true_c(now)
        first = earliest(cup, press, max(press, middle), now + AFTER_S)
        late = verdict.outcome is not Outcome.TIME_UP
        reached = first[1] < now + AFTER_S - press - 1.0
        row = (family, portion + 1, before - level, now - press, *first, error_c, verdict.u_c, verdict.sure, late)
        out.append(Reading(*row, reached))
    return out


def earliest(cup: LiveCup, press_s: float, from_s: float, until_s: float) -> tuple[float, float]:
    """Seconds after the press from which the probe, and the mean of READ conversions, stay within one step."""
    later = cup.ahead(until_s - cup.time_s[-1])
    inside = [
        (now, abs(seen - true) <= STEP_C)
        for now, true, seen in zip(later.time_s, later.cup_c, later.sensor_c, strict=True)
        if from_s <= now <= until_s
    ]
    good = [(t, c) for t, c in later.trace if c is not None]
    shown = [
        (t, abs(sum(c for _, c in good[i - READ + 1 : i + 1]) / READ - later.true_c(t)) <= STEP_C)
        for i, (t, _) in enumerate(good)
        if i >= READ - 1 and from_s <= t <= until_s
    ]
    return stays(inside, until_s) - press_s, stays(shown, until_s) - press_s


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    begin = int(sys.argv[2]) if len(sys.argv) > 2 else 30000
    times: list[float] = []
    everything: list[Reading] = []
    header()
    for family in FAMILIES:
        rows = [row for seed in range(count) for row in read(begin + seed, family, times)]
        show(family, rows)
        everything += rows
    show("all", everything)
    show("never within a step", [row for row in everything if not row.reached])
    show("the others", [row for row in everything if row.reached])
    show("first portions", [row for row in everything if row.portion == 1])
    worst = max(abs(row.error_c) for row in everything)
    print(f"worst error {worst:.3f} °C; judge: median {1e3 * median(times):.2f} ms; limit {LIMIT_S:.0f} s")


if __name__ == "__main__":
    main()
