"""Readings by hand with one slip: is it found, and what is the end-point then?

    OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_slips --seed 5000 --scenes 3

takes some three minutes. Cups are those of `scenes.py`, all families, read before each pour by an eye that scatters
by 0.3 of a division and put down to a whole one; then one reading, any of them, is made wrong by ±1 to ±10 °C. `asked`:
the station names that reading; `others`: it names one that is right. Then come bias, rms, stated ± and how often the
95 % interval holds the truth, of the heat balance with every reading counted, and with what was asked about left out;
`lines` is the rms of straight lines about where they would cross without the slip. The last rows are sound readings:
`asked` is then a false alarm, of whole repeats, and `typed` one in any of the repeats as they grow reading by reading.
"""

from __future__ import annotations

import argparse
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field

import numpy as np

from station.analysis.heat.inputs import Array, HeatRefused
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused
from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.kinds import plan_from
from station.practical.kinds.portions.hindsight import hindsight
from station.practical.kinds.portions.methods import readings_fit
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.replay import with_readings
from tests.benchmarks.scenes import FAMILIES, Scene, make_scene

SIZES_C = (1.0, 2.0, 5.0, 10.0)
READ_BY = ((0.1, 0.02), (0.2, 0.1), (0.5, 0.1), (1.0, 0.25))
"""A thermometer's division, °C, and the u of a portion, cm³."""
EYE = 0.3


@dataclass
class Tally:
    """What became of the repeats of a row."""

    asked: list[bool] = field(default_factory=list)
    others: list[bool] = field(default_factory=list)
    found: dict[str, list[tuple[float, float, bool]]] = field(default_factory=lambda: {"all": [], "left": []})
    refused: dict[str, int] = field(default_factory=lambda: {"all": 0, "left": 0})
    lines: dict[str, list[float]] = field(default_factory=lambda: {"all": [], "left": []})

    def row(self, name: str) -> str:
        """One line of the table."""
        cells = [f"{name:<26}{len(self.asked):>4} {np.mean(self.asked):>6.2f} {np.mean(self.others):>6.3f}"]
        for which in ("all", "left"):
            found = np.array(self.found[which], dtype=np.float64).reshape(-1, 3)
            rms = np.sqrt(np.mean(found**2, axis=0)) if len(found) else np.full(3, np.nan)
            bias, cover = (found[:, 0].mean(), found[:, 2].mean()) if len(found) else (np.nan, np.nan)
            lines = np.sqrt(np.mean(np.square(self.lines[which]))) if self.lines[which] else np.nan
            numbers = f"{bias:>+6.2f} {rms[0]:>5.2f} {rms[1]:>5.2f} {100 * cover:>4.0f}%"
            cells.append(f"{numbers} {self.refused[which]:>4} {lines:>5.2f}")
        return " | ".join(cells)


def read(scene: Scene, division_c: float, rng: np.random.Generator) -> tuple[Array, Array]:
    """Total added and readings, the start first."""
    when = [pour.time_s - 4.0 for pour in scene.pours] + [float(scene.grid_s[-1]) - 1.0]
    true_c = np.interp(when, scene.grid_s, scene.grid_cup_c)
    seen = np.round((true_c + EYE * division_c * rng.standard_normal(len(when))) / division_c) * division_c
    return np.concatenate([[0.0], np.cumsum(scene.nominal_cm3)]), seen


def plan_of(scene: Scene, u_cm3: float) -> PortionsPlan:
    """What the class knows."""
    alkali = {"name": "sodium hydroxide", "concentration_mol_dm3": scene.alkali_mol_dm3}
    if scene.measured_alkali_c is not None:
        alkali["temperature_c"] = scene.measured_alkali_c
    room = {} if scene.measured_room_c is None else {"surroundings": {"room_c": scene.measured_room_c}}
    acid = {"name": "hydrochloric acid", "volume_cm3": scene.acid_nominal_cm3, "u_volume_cm3": scene.u_acid_cm3}
    portions = {"volume_cm3": float(scene.nominal_cm3[0]), "count": len(scene.pours), "u_volume_cm3": u_cm3}
    plan = plan_from({"acid": acid, "alkali": alkali, "portions": portions, **room})
    assert isinstance(plan, PortionsPlan)
    return plan


def data(volumes: Array, readings: Array) -> RepeatData:
    """The repeat as a file gives it."""
    rows = zip(volumes.tolist(), readings.tolist(), strict=True)
    return RepeatData(1, tuple(ReadingRow(portion, *row) for portion, row in enumerate(rows)))


def count(
    tally: Tally, scene: Scene, plan: PortionsPlan, told: RepeatData, wrong: int | None, lines_cm3: float
) -> None:
    """Analyse one repeat with all its readings, and with what is asked about left out."""
    (asked,) = with_readings(plan, [told])
    named = {portion for portion, _ in asked.questions}
    tally.asked.append(bool(named) if wrong is None else wrong in named)
    tally.others.append(bool(named - {wrong}))
    for which, repeat in (("all", told), ("left", asked)):
        true_cm3 = scene.true_end_point_cm3
        try:
            fit = readings_fit(plan, repeat, Known())
            low, high = fit.interval_95_cm3
            tally.found[which].append((fit.end_point_cm3 - true_cm3, fit.u_end_point_cm3, low <= true_cm3 <= high))
        except HeatRefused:
            tally.refused[which] += 1
        crossing_cm3 = crossing(repeat)
        if crossing_cm3 is not None and np.isfinite(lines_cm3):
            tally.lines[which].append(crossing_cm3 - lines_cm3)


def crossing(repeat: RepeatData) -> float | None:
    """Where straight lines cross; None where they refuse."""
    rows = repeat.readings
    try:
        return fit_lines([row.volume_cm3 for row in rows], [row.temperature_c for row in rows]).end_point_cm3
    except LinesRefused:
        return None


def typed(plan: PortionsPlan, volumes: Array, readings: Array, division_c: float) -> bool:
    """Whether a question comes while sound readings are typed one by one."""
    rows = list(enumerate(zip(volumes.tolist(), readings.tolist(), strict=True)))
    points = [(portion, volume_cm3, c) for portion, (volume_cm3, c) in rows]
    u_c = division_c / 3.0**0.5
    return any(hindsight(plan, points[:upto], u_c, None).noticed for upto in range(2, len(points) + 1))


def rows(seed: int, scenes: int, families: Sequence[str]) -> Iterator[str]:
    """The lines of the table."""
    rng = np.random.default_rng(seed)
    for division_c, u_cm3 in READ_BY:
        tallies, sound, growing = {size: Tally() for size in SIZES_C}, Tally(), 0
        for family in families:
            for number in range(seed, seed + scenes):
                scene = make_scene(number, family, u_cm3)
                plan, (volumes, readings) = plan_of(scene, u_cm3), read(scene, division_c, rng)
                crossed_cm3 = crossing(data(volumes, readings))
                lines_cm3 = np.nan if crossed_cm3 is None else crossed_cm3
                count(sound, scene, plan, data(volumes, readings), None, lines_cm3)
                growing += typed(plan, volumes, readings, division_c)
                for size_c, tally in tallies.items():
                    wrong = int(rng.integers(len(readings)))
                    slipped = readings.copy()
                    slipped[wrong] += size_c * rng.choice([-1.0, 1.0])
                    count(tally, scene, plan, data(volumes, slipped), wrong, lines_cm3)
        name = f"to {division_c} °C, portions {u_cm3}"
        yield f"{sound.row(name)}   typed: {growing} of {len(sound.asked)}"
        for size_c, tally in tallies.items():
            yield tally.row(f"  one off by {size_c:g} °C")
        joined = Tally()
        for tally in tallies.values():
            joined.asked += tally.asked
            joined.others += tally.others
            for which in ("all", "left"):
                joined.found[which] += tally.found[which]
                joined.refused[which] += tally.refused[which]
                joined.lines[which] += tally.lines[which]
        yield joined.row("  one off by any of these")


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=5000, help="first seed")
    parser.add_argument("--scenes", type=int, default=3, help="cups of each family")
    parser.add_argument("--families", nargs="*", default=list(FAMILIES))
    options = parser.parse_args()
    of = f"{'bias':>6} {'rms':>5} {'±':>5} {'cover':>5} {'none':>4} {'lines':>5}"
    print(f"{'readings (cm³)':<26}{'n':>4} {'asked':>6} {'others':>6} | {of} | with what is asked about left out: {of}")
    for line in rows(options.seed, options.scenes, options.families):
        print(line, flush=True)


if __name__ == "__main__":
    main()
