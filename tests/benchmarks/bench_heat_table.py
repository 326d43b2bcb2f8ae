"""The table of the manual: both methods over families of scenes, for exact and for uncertain portions.

    OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_heat_table --seed 9100

takes some ten minutes on a quiet machine. Families are shown with exact portions; with uncertain ones all families
are joined in a row. "cups of the model" are drawn from the fitted model itself. The last rows compare the two paces
on the same cups: those of the model, then scenes. `rms/b` is rms over the Cramér–Rao bound of the generator, `cover`
how often the 95 % interval holds the true end-point, `±` the root mean square of the stated u, `ms` the median time
of a fit.
"""

from __future__ import annotations

import argparse
import time
from collections.abc import Iterator
from itertools import product

import numpy as np

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import HeatRefused
from tests.benchmarks.bench_heat_balance import Tally, of_family, of_model
from tests.benchmarks.bench_heat_cases import pours_of, setup_of, trace_of
from tests.benchmarks.scenes import FAMILIES, make_scene
from tests.benchmarks.scenes_model import model_scene

UNCERTAIN_CM3 = (0.02, 0.1, 0.3)
QUICK_S, GRAPH_S = 20.0, 40.0
PACED = tuple(family for family in FAMILIES if family not in ("hasty", "slow", "mixed"))
"""Families held for both paces: all but those that are made by how long they hold."""

HEADER = (
    f"{'cups (figures in cm³)':<26}{'n':>4} | {'bias':>6} {'rms':>6} {'±':>6} {'rms/b':>6} {'cover':>5} {'dH %':>5} "
    f"{'ms':>4} | {'lines bias':>10} {'rms':>5}"
)


def row(name: str, tally: Tally) -> str:
    """One line of the table."""
    error, limit, lines = np.array(tally.errors), np.array(tally.bounds), np.array(tally.lines)
    rms = np.sqrt(np.mean(error**2))
    against = f"{rms / np.sqrt(np.mean(limit**2)):.2f}" if np.isfinite(limit).all() else "–"
    straight = f"{lines.mean():>+10.2f} {np.sqrt(np.mean(lines**2)):>5.2f}" if len(lines) else f"{'–':>10} {'–':>5}"
    return (
        f"{name:<26}{len(error):>4} | {error.mean():>+6.3f} {rms:>6.3f} {np.sqrt(np.mean(np.square(tally.u))):>6.3f} "
        f"{against:>6} {100.0 * np.mean(tally.covered):>4.0f}% "
        f"{100.0 * np.mean(tally.enthalpy):>+5.1f} {1000.0 * np.median(tally.cpu_s):>4.0f} | {straight}"
        f"{f'  ({tally.refused} refused)' if tally.refused else ''}"
    )


def of_pace(seeds: range, hold_s: float, u_volume_cm3: float) -> Tally:
    """Cups of the model itself, held for ``hold_s`` after each portion."""
    tally = Tally()
    for seed in seeds:
        scene = model_scene(seed, u_volume_cm3, hold_s=hold_s)
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


def of_held(seeds: range, hold_s: float, u_volume_cm3: float) -> Tally:
    """Scenes of all families in PACED, held for ``hold_s``; without the bound, which takes long."""
    tally = Tally()
    for seed, family in product(seeds, PACED):
        scene = make_scene(seed, family, u_volume_cm3, hold_s)
        began = time.process_time()
        try:
            fit = fit_trace(trace_of(scene), pours_of(scene), setup_of(scene))
        except HeatRefused:
            tally.refused += 1
            continue
        tally.cpu_s.append(time.process_time() - began)
        true_kj_mol = scene.true_enthalpy_kj_mol + scene.enthalpy_slope_kj_k * (fit.enthalpy_temperature_c - 25.0)
        tally.add(fit, scene.true_end_point_cm3, true_kj_mol, float("nan"))
    return tally


def rows(seed: int, scenes: int, others: int, cups: int, paces: int) -> Iterator[str]:
    """The lines of the table."""
    whole = Tally()
    for family in FAMILIES:
        tally = of_family(family, range(seed, seed + scenes), 0.0, know_cup=False)
        whole.join(tally)
        yield row(family, tally)
    yield row("all scenes, portions exact", whole)
    for u_volume_cm3 in UNCERTAIN_CM3:
        whole = Tally()
        for family in FAMILIES:
            whole.join(of_family(family, range(seed + scenes, seed + scenes + others), u_volume_cm3, know_cup=False))
        yield row(f"all scenes, {u_volume_cm3} (1 sd)", whole)
    yield row("cups of the model, exact", of_model(range(seed, seed + cups), 0.0))
    for hold_s in (GRAPH_S, QUICK_S):
        yield row(f"the same, 0.1, {hold_s:.0f} s each", of_pace(range(seed, seed + paces), hold_s, 0.1))
    for hold_s in (GRAPH_S, QUICK_S):
        yield row(f"scenes, 0.1, {hold_s:.0f} s each", of_held(range(seed, seed + scenes), hold_s, 0.1))


def main() -> None:
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=9100, help="first seed")
    parser.add_argument("--scenes", type=int, default=12, help="scenes of each family with exact portions")
    parser.add_argument("--others", type=int, default=4, help="scenes of each family for each other u of a portion")
    parser.add_argument("--cups", type=int, default=500, help="cups drawn from the model itself")
    parser.add_argument("--paces", type=int, default=200, help="of these, how many are held for each of the paces")
    options = parser.parse_args()
    print(HEADER)
    for line in rows(options.seed, options.scenes, options.others, options.cups, options.paces):
        print(line, flush=True)


if __name__ == "__main__":
    main()
