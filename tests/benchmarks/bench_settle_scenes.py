"""Print how well and how soon the settle detector reads on the scenes of scenes.py.

The holds of a scene are fixed, so a hasty group may press again before anything has settled: those portions
are counted as "cut" and have no reading. Constants of the detector were chosen with the scenes 100 to 103, 500 to
503, 700 to 702 and 9100 to 9103 of each family in view; the default begins at 20100. bench_settle_live.py
asks the same of a group that waits for each reading.
Run: python -m tests.benchmarks.bench_settle_scenes [scenes per family] [first scene]
"""

from __future__ import annotations

import sys
import time

import numpy as np

from station.analysis.settle.detector import LIMIT_S, READ, Outcome, judge, judge_start
from station.analysis.settle.lags import STEEL_TUBE, STEP_C, CupHabits, learn, learn_start
from tests.benchmarks.bench_settle import Reading, header, show, stays
from tests.benchmarks.scenes import FAMILIES, Scene, make_scene, probe_at
from tests.benchmarks.scenes_physics import Array

NEXT_POUR_S = 15.0
"""How long before a press the trace may belong to its pour: nothing is learned from there, as at the bench."""

Probe = tuple[Array, Array]
"""Times in s and what the probe's core is at, in °C, without noise and steps."""


def read(scene: Scene, times: list[float]) -> tuple[list[Reading], int]:
    """The readings of a scene and how many portions were cut short by the next press."""
    offset_c = scene.drawn.offset_c
    samples = [(float(t), float(c)) for t, c in zip(scene.time_s, scene.temperature_c, strict=True)]
    presses = [float(t) for t in scene.press_s]
    start = [row for row in samples if row[0] < presses[0] - 6.0]
    before = judge_start(start, since_s=0.0, now_s=start[-1][0], hold_s=20.0).temperature_c
    cup = CupHabits(rest_c=before)
    lags = learn_start(start, since_s=0.0, until_s=start[-1][0], lags=STEEL_TUBE)
    grid = np.arange(0.0, float(scene.grid_s[-1]), 0.2)
    probe = grid, probe_at(scene.drawn.fixed, scene.drawn.parameters, grid)[:, 0]
    out: list[Reading] = []
    cut = 0
    for portion, (press, pour) in enumerate(zip(presses, scene.pours, strict=True), start=1):
        end = presses[portion] if portion < len(presses) else float(scene.grid_s[-1])
        stop = min(end, _begins(scene, portion)) if portion < len(presses) else end
        rows = [row for row in samples if press - 15.0 <= row[0] < end]
        done = None
        for now in (row[0] for row in rows if press < row[0] <= stop):
            tick = time.perf_counter()
            verdict = judge(rows, since_s=press, now_s=now, before_c=before, lags=lags, cup=cup)
            times.append(time.perf_counter() - tick)
            if verdict.ready:
                done = now
                break
        if done is None or verdict.temperature_c is None or verdict.u_c is None:
            cut += 1
            lags, cup = learn(rows, since_s=press, until_s=end - NEXT_POUR_S, before_c=before, lags=lags, cup=cup)
            before = None
            continue
        true_c = float(np.interp(done, scene.grid_s, scene.grid_cup_c)) + offset_c
        first = earliest(scene, probe, rows, (max(press, pour.time_s), stop))
        late = verdict.outcome is not Outcome.TIME_UP
        error_c, change_c = verdict.temperature_c - true_c, verdict.temperature_c - (before or 0.0)
        wait_s = done - press
        firsts = (first[0] - press, first[1] - press)
        reached = first[1] < stop - 1.0
        sure = verdict.sure
        out.append(Reading(scene.family, portion, change_c, wait_s, *firsts, error_c, verdict.u_c, sure, late, reached))
        until = max(done, end - NEXT_POUR_S)
        lags, cup = learn(rows, since_s=press, until_s=until, before_c=before, lags=lags, cup=cup)
        before = verdict.temperature_c
    return out, cut


def _begins(scene: Scene, portion: int) -> float:
    """When the pour of portion 0, 1, … begins, in s."""
    return scene.pours[portion].time_s - 0.5 * float(scene.drawn.parameters["pour_s"][portion, 0])


def earliest(scene: Scene, probe: Probe, rows: list[tuple[float, float]], span: tuple[float, float]) -> list[float]:
    """First moments from which the probe, and the mean of READ conversions, stay within one step of the cup."""
    grid, probe_c = probe
    inside = []
    for now, shown_c in zip(grid, probe_c, strict=True):
        if span[0] <= now <= span[1]:
            cup_c = float(np.interp(now, scene.grid_s, scene.grid_cup_c))
            inside.append((float(now), abs(float(shown_c) - cup_c) <= STEP_C))
    shown = []
    for index in range(READ - 1, len(rows)):
        now = rows[index][0]
        if span[0] <= now <= span[1]:
            mean = sum(c for _, c in rows[index - READ + 1 : index + 1]) / READ
            true_c = float(np.interp(now, scene.grid_s, scene.grid_cup_c)) + scene.drawn.offset_c
            shown.append((now, abs(mean - true_c) <= STEP_C))
    return [stays(inside, span[1]), stays(shown, span[1])]


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 3
    begin = int(sys.argv[2]) if len(sys.argv) > 2 else 20100
    times: list[float] = []
    everything: list[Reading] = []
    header()
    for family in FAMILIES:
        rows: list[Reading] = []
        cut = 0
        for seed in range(count):
            found, short = read(make_scene(seed + begin, family), times)
            rows += found
            cut += short
        if rows:
            show(f"{family} ({cut} cut)", rows)
        everything += rows
    show("all", everything)
    times.sort()
    print(f"judge: median {1e3 * times[len(times) // 2]:.2f} ms, worst {1e3 * times[-1]:.2f} ms, limit {LIMIT_S:.0f} s")


if __name__ == "__main__":
    main()
