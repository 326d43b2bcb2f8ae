"""How right are the two methods? Bias, rms, bound, coverage and time over families of scenes.

    OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_heat_balance

is short, under a minute on a quiet machine; `--scenes 24 --model 500 --u 0 0.02 0.1 0.3` is full, over an hour.

`rms/bound` compares the rms error with the Cramér–Rao bound from the generator's own sensitivities; `cover` is
how often the 95 % interval holds the true end-point; `described` how often the fit says that it describes the
trace; lines are straight lines through the cup's true temperature before each pour, to a whole step of the probe.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Sequence
from dataclasses import dataclass, field

import numpy as np

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import HeatFit, HeatRefused
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused
from tests.benchmarks.bench_heat_cases import pours_of, setup_of, trace_of
from tests.benchmarks.scenes import FAMILIES, STEP_C, Scene, make_scene
from tests.benchmarks.scenes_bound import bound
from tests.benchmarks.scenes_model import model_scene

HEADER = (
    f"{'family':<17}{'n':>4} | {'bias':>6} {'rms':>6} {'bound':>6} {'rms/b':>6} {'cover':>6} {'descr':>6} "
    f"| {'dH %':>5} {'coverH':>6} | {'lines: bias':>11} {'rms':>6} {'n':>4} | {'ms':>5}"
)


@dataclass
class Tally:
    """What became of the scenes of one row."""

    errors: list[float] = field(default_factory=list)
    u: list[float] = field(default_factory=list)
    bounds: list[float] = field(default_factory=list)
    covered: list[bool] = field(default_factory=list)
    described: list[bool] = field(default_factory=list)
    enthalpy: list[float] = field(default_factory=list)
    enthalpy_covered: list[bool] = field(default_factory=list)
    lines: list[float] = field(default_factory=list)
    cpu_s: list[float] = field(default_factory=list)
    refused: int = 0

    def add(self, fit: HeatFit, end_point_cm3: float, enthalpy_kj_mol: float, bound_cm3: float) -> None:
        """Count one fit against the truth."""
        assert fit.enthalpy_kj_mol is not None and fit.u_enthalpy_kj_mol is not None
        self.errors.append(fit.end_point_cm3 - end_point_cm3)
        self.u.append(fit.u_end_point_cm3)
        self.bounds.append(bound_cm3)
        self.covered.append(fit.interval_95_cm3[0] <= end_point_cm3 <= fit.interval_95_cm3[1])
        self.described.append(fit.describes_trace)
        self.enthalpy.append(fit.enthalpy_kj_mol / enthalpy_kj_mol - 1.0)
        self.enthalpy_covered.append(abs(fit.enthalpy_kj_mol - enthalpy_kj_mol) < 1.96 * fit.u_enthalpy_kj_mol)

    def row(self, name: str) -> str:
        """One line of the table."""
        error, limit, lines = np.array(self.errors), np.array(self.bounds), np.array(self.lines)
        rms, low = np.sqrt(np.mean(error**2)), np.sqrt(np.mean(limit**2))
        straight = f"{lines.mean():>11.2f} {np.sqrt(np.mean(lines**2)):>6.2f}" if len(lines) else f"{'–':>11} {'–':>6}"
        left_out = f"  ({self.refused} refused)" if self.refused else ""
        return (
            f"{name:<17}{len(error):>4} | {error.mean():>+6.3f} {rms:>6.3f} {low:>6.3f} {rms / low:>6.2f} "
            f"{np.mean(self.covered):>6.3f} {np.mean(self.described):>6.2f} | {100 * np.mean(self.enthalpy):>+5.1f} "
            f"{np.mean(self.enthalpy_covered):>6.3f} | {straight} {len(lines):>4} | "
            f"{1000 * np.median(self.cpu_s):>5.0f}{left_out}"
        )

    def join(self, other: Tally) -> None:
        """Take over another row's counts."""
        for name in ("errors", "u", "bounds", "covered", "described", "enthalpy", "enthalpy_covered", "lines", "cpu_s"):
            getattr(self, name).extend(getattr(other, name))
        self.refused += other.refused


def straight_lines_error(scene: Scene) -> float | None:
    """Error of the crossing of straight lines through readings taken just before each pour; None when refused."""
    when = [p.time_s - 4.0 for p in scene.pours] + [float(scene.grid_s[-1]) - 1.0]
    reading_c = np.round(np.interp(when, scene.grid_s, scene.grid_cup_c) / STEP_C) * STEP_C
    volume = np.concatenate([[0.0], np.cumsum(scene.nominal_cm3)])
    try:
        return float(fit_lines(volume.tolist(), reading_c.tolist()).end_point_cm3) - scene.true_end_point_cm3
    except LinesRefused:
        return None


def of_family(family: str, seeds: Sequence[int], u_volume_cm3: float, know_cup: bool) -> Tally:
    """Fit the scenes of a family."""
    tally = Tally()
    for seed in seeds:
        scene = make_scene(seed, family, u_volume_cm3)
        trace, pours, setup = trace_of(scene), pours_of(scene), setup_of(scene, know_cup)
        began = time.process_time()
        try:
            fit = fit_trace(trace, pours, setup)
        except HeatRefused:
            tally.refused += 1
            continue
        tally.cpu_s.append(time.process_time() - began)
        true_kj_mol = scene.true_enthalpy_kj_mol + scene.enthalpy_slope_kj_k * (fit.enthalpy_temperature_c - 25.0)
        tally.add(fit, scene.true_end_point_cm3, true_kj_mol, bound(scene)["end_point_cm3"])
        crossing = straight_lines_error(scene)
        if crossing is not None:
            tally.lines.append(crossing)
    return tally


def of_model(seeds: Sequence[int], u_volume_cm3: float) -> Tally:
    """Fit cups drawn from the model itself."""
    tally = Tally()
    for seed in seeds:
        scene = model_scene(seed, u_volume_cm3)
        began = time.process_time()
        try:
            fit = fit_trace(scene.trace, scene.pours, scene.setup)
        except HeatRefused:
            tally.refused += 1
            continue
        tally.cpu_s.append(time.process_time() - began)
        true_kj_mol = scene.enthalpy_kj_mol(fit.enthalpy_temperature_c)
        tally.add(fit, scene.end_point_cm3, true_kj_mol, scene.bound_cm3())
    return tally


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--scenes", type=int, default=1, help="scenes of each family and portion size of error")
    parser.add_argument("--model", type=int, default=20, help="cups drawn from the model itself")
    parser.add_argument("--seed", type=int, default=1000, help="first seed")
    parser.add_argument("--u", type=float, nargs="*", default=[0.0, 0.1], help="u of a portion, cm³ (1 sd)")
    parser.add_argument("--families", nargs="*", default=list(FAMILIES))
    parser.add_argument("--know-cup", action="store_true", help="the cup's heat capacity is known from a cup test")
    options = parser.parse_args()
    for u_volume_cm3 in options.u:
        print(f"\nportions {'exact' if u_volume_cm3 == 0 else f'± {u_volume_cm3} cm³ (1 sd)'}\n{HEADER}")
        whole = Tally()
        for family in options.families:
            seeds = range(options.seed, options.seed + options.scenes)
            tally = of_family(family, seeds, u_volume_cm3, options.know_cup)
            whole.join(tally)
            if tally.errors:
                print(tally.row(family), flush=True)
        if whole.errors:
            print(whole.row("all scenes"))
        if options.model:
            print(of_model(range(options.seed, options.seed + options.model), u_volume_cm3).row("the model itself"))


if __name__ == "__main__":
    main()
