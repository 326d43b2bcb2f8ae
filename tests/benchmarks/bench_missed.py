"""A portion that was missed, doubled or poured short: is it asked about, and what is the end-point if nobody answers?

    OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_missed --seed 6000 --scenes 2

takes some four minutes. Cups are those of `scenes.py`; one portion before the end-point is not poured, twice poured
or a quarter short, and the file says nothing of it. `asked`: the station asks about that portion; `others`: about one
that is right. Then come bias, rms, stated ± and how often the 95 % interval holds the truth, with every portion taken
as the file has it, and with what was asked about in doubt, as `analyse` takes it. "sound" are the same cups with
nothing wrong: `asked` is then a false alarm.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field, replace

import numpy as np

from station.analysis.heat.inputs import HeatRefused
from station.practical.dataset import Known, RepeatData
from station.practical.kinds.portions.methods import asked_fit
from station.practical.replay import with_readings
from station.practical.state import LEAVES_OUT
from tests.benchmarks.bench_slips import plan_of
from tests.benchmarks.scenes import FAMILIES, Scene, make_scene

POURED = {"sound": 1.0, "missed": 0.0, "doubled": 2.0, "a quarter short": 0.75}
LEAST_CM3 = 1e-3
"""What is not poured at all cannot be drawn: a drop is."""


@dataclass
class Tally:
    """What became of the repeats of a row."""

    asked: list[bool] = field(default_factory=list)
    others: list[int] = field(default_factory=list)
    found: dict[str, list[tuple[float, float, bool]]] = field(default_factory=lambda: {"as told": [], "in doubt": []})
    refused: dict[str, int] = field(default_factory=lambda: {"as told": 0, "in doubt": 0})

    def row(self, name: str) -> str:
        """One line of the table."""
        cells = [f"{name:<18}{len(self.asked):>4} {np.mean(self.asked):>6.2f} {np.mean(self.others):>6.3f}"]
        for which, values in self.found.items():
            found = np.array(values, dtype=np.float64).reshape(-1, 3)
            rms = np.sqrt(np.mean(found**2, axis=0))
            numbers = f"{found[:, 0].mean():>+6.2f} {rms[0]:>5.2f} {rms[1]:>5.2f} {100 * found[:, 2].mean():>4.0f}%"
            cells.append(f"{numbers} {self.refused[which]:>4}")
        return " | ".join(cells)


def scene_with(seed: int, family: str, portion: int, times: float, u_cm3: float) -> Scene:
    """The scene of this seed in which a portion (from 0) holds so many times what it should."""
    return make_scene(seed, family, u_cm3, poured={portion: max(times, LEAST_CM3)})


def told(scene: Scene) -> RepeatData:
    """The repeat as a file has it."""
    samples = tuple(zip(scene.time_s.tolist(), scene.temperature_c.tolist(), strict=True))
    pours = tuple((pour.press_s, pour.nominal_cm3, False) for pour in scene.pours)
    return RepeatData(1, (), samples, pours)


def count(tally: Tally, scene: Scene, portion: int, u_cm3: float, wrong: bool) -> None:
    """Analyse one repeat as it is told, and with what is asked about in doubt."""
    plan, repeat = plan_of(scene, max(u_cm3, 0.02)), told(scene)
    (asked,) = with_readings(plan, [repeat])
    named = {number for number, code in asked.questions if code in LEAVES_OUT}
    for which, each in (("as told", replace(repeat, readings=asked.readings)), ("in doubt", asked)):
        try:
            doubted, fit = asked_fit(plan, each, Known())
            named |= {number for number, code in doubted.questions if code in LEAVES_OUT}
        except HeatRefused:
            tally.refused[which] += 1
            continue
        low, high = fit.interval_95_cm3
        true_cm3 = scene.true_end_point_cm3
        tally.found[which].append((fit.end_point_cm3 - true_cm3, fit.u_end_point_cm3, low <= true_cm3 <= high))
    tally.asked.append(portion + 1 in named if wrong else bool(named))
    tally.others.append(len(named - ({portion + 1} if wrong else set())))


def rows(seed: int, scenes: int, u_cm3: float, families: Sequence[str]) -> Iterator[str]:
    """The lines of the table."""
    for name, times in POURED.items():
        rng, tally = np.random.default_rng(seed), Tally()
        for family in families:
            for number in range(seed, seed + scenes):
                sound = make_scene(number, family, u_cm3)
                before = int(np.searchsorted(np.cumsum(sound.nominal_cm3), sound.true_end_point_cm3))
                portion = int(rng.integers(0, max(before - 1, 1)))
                scene = sound if times == 1.0 else scene_with(number, family, portion, times, u_cm3)
                count(tally, scene, portion, u_cm3, wrong=times != 1.0)
        yield tally.row(name)


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=6000, help="first seed")
    parser.add_argument("--scenes", type=int, default=2, help="cups of each family")
    parser.add_argument("--u", type=float, default=0.02, help="u of a portion, cm³ (1 sd)")
    parser.add_argument("--families", nargs="*", default=list(FAMILIES))
    options = parser.parse_args()
    of = f"{'bias':>6} {'rms':>5} {'±':>5} {'cover':>5} {'none':>4}"
    print(f"{'one portion (cm³)':<18}{'n':>4} {'asked':>6} {'others':>6} | {of} | with doubt: {of}")
    for line in rows(options.seed, options.scenes, options.u, options.families):
        print(line, flush=True)


if __name__ == "__main__":
    main()
