"""Do time constants from a dip help the heat balance? The same cups of the model, fitted with and without them.

    OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_checked_lags --seed 7000 --cups 60

The dip is taken to know each time constant within ``--u`` (relative, one standard deviation) and the share within
half of that: as good as a dip can be, since a probe stands otherwise in a cup than in a beaker. Printed for each hold
and u of a portion: rms error of the end-point in cm³, rms of the stated u, how often the 95 % interval holds the
truth, and the rms error of the enthalpy in %, without and with the dip.
"""

from __future__ import annotations

import argparse
from dataclasses import replace

import numpy as np

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import Estimate, HeatSetup
from station.analysis.heat.model import INDEX
from tests.benchmarks.bench_heat_balance import Tally
from tests.benchmarks.scenes_model import ModelScene, model_scene


def dipped(scene: ModelScene, seed: int, u: float) -> HeatSetup:
    """What is known after a dip of this cup's probe."""
    rng = np.random.default_rng([seed, 5])
    fast, slow = (float(np.exp(scene.theta[INDEX[name]])) for name in ("log_lag_fast_s", "log_lag_slow_s"))
    share = float(scene.theta[INDEX["lag_share"]])
    fast, slow = (each * float(np.exp(u * rng.standard_normal())) for each in (fast, slow))
    share += u / 2.0 * float(rng.standard_normal())
    return replace(
        scene.setup,
        lag_fast_s=Estimate(fast, u * fast),
        lag_slow_s=Estimate(slow, u * slow),
        lag_share=Estimate(share, u / 2.0),
    )


def tallied(seeds: range, hold_s: float, u_volume_cm3: float, u: float) -> tuple[Tally, Tally]:
    """Fits without and with the dip."""
    without, known = Tally(), Tally()
    for seed in seeds:
        scene = model_scene(seed, u_volume_cm3, hold_s=hold_s)
        for tally, setup in ((without, scene.setup), (known, dipped(scene, seed, u))):
            fit = fit_trace(scene.trace, scene.pours, setup)
            tally.add(fit, scene.end_point_cm3, scene.enthalpy_kj_mol(fit.enthalpy_temperature_c), float("nan"))
    return without, known


def told(tally: Tally) -> str:
    """One half of a line."""
    error, enthalpy = np.array(tally.errors), 100.0 * np.array(tally.enthalpy)
    return (
        f"{np.sqrt(np.mean(error**2)):>6.3f} {np.sqrt(np.mean(np.square(tally.u))):>6.3f} "
        f"{100 * np.mean(tally.covered):>4.0f}% {np.sqrt(np.mean(enthalpy**2)):>5.2f}"
    )


def main() -> None:
    """Print the comparison."""
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    parser.add_argument("--seed", type=int, default=7000)
    parser.add_argument("--cups", type=int, default=60)
    parser.add_argument("--u", type=float, default=0.1)
    options = parser.parse_args()
    seeds = range(options.seed, options.seed + options.cups)
    print(f"{'hold':>5} {'u cm³':>6} | {'without: rms, ±, cover, dH %':>30} | with the dip")
    for hold_s in (40.0, 20.0):
        for u_volume_cm3 in (0.0, 0.1):
            without, known = tallied(seeds, hold_s, u_volume_cm3, options.u)
            print(f"{hold_s:>5.0f} {u_volume_cm3:>6.1f} | {told(without):>30} | {told(known)}", flush=True)


if __name__ == "__main__":
    main()
