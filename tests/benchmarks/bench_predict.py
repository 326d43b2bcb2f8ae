"""How true the predicted ± is: predicted u against the scatter of fits, on simulated cups.

Run: OPENBLAS_NUM_THREADS=1 python -m tests.benchmarks.bench_predict [scenes per row]

"model" are cups drawn from the fitted model; the other rows are the families of scenes.py, whose physics differs.
Each scene is predicted from what a plan knows (nominal portions, about the pace, the class's glassware), with the
scene's own end-point and strength; "ratio" is the root mean square of error over predicted u, 1 when the prediction is
true. For straight lines the predicted bias is taken off first, and the readings are the last samples before each
pour. A fit that refuses is counted, not hidden; "inside" is the share of errors within two predicted u (95 %).
"""

from __future__ import annotations

import sys
import time
from collections.abc import Iterator
from dataclasses import dataclass
from itertools import pairwise

import numpy as np

from station.analysis.heat.balance import fit_trace
from station.analysis.heat.inputs import HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat.model import INDEX
from station.analysis.heat.start import plateaus
from station.analysis.lines.crossing import fit_lines
from station.analysis.lines.fit import LinesRefused
from station.analysis.prediction.methods import expected_heat_balance, expected_lines
from station.analysis.prediction.model import PROBE, Course, expect
from station.practical.kinds import read_plan
from station.practical.predict import predict
from tests.benchmarks.bench_heat_cases import pours_of, setup_of, trace_of
from tests.benchmarks.scenes import make_scene
from tests.benchmarks.scenes_model import model_scene
from tests.records import PLAN_TEXT

POUR_S = 4.0  # the readings here are the last samples before a pour
FAMILIES = ("calm", "mixed", "hasty", "slow", "small_portions", "large_portions", "dilute", "cold_alkali")


@dataclass(frozen=True)
class Case:
    """A simulated repeat and what a plan would say of it."""

    setup: HeatSetup
    pours: list[Pour]
    trace: Trace
    end_point_cm3: float
    heat_j_cm3: float

    def course(self) -> Course:
        """What a plan would promise: nominal portions at an even pace."""
        gaps = [b.press_s - a.press_s for a, b in pairwise(self.pours)]
        hold_s, first = float(np.median(gaps)), self.pours[0]
        return Course(
            self.setup,
            self.end_point_cm3,
            self.heat_j_cm3,
            float(self.trace.temperature_c[0]),
            first.volume_cm3,
            len(self.pours),
            first.u_volume_cm3,
            base_s=max(first.press_s, POUR_S + 5.0),
            wait_s=hold_s - POUR_S,
            pour_s=POUR_S,
        )


def cases(kind: str, u_volume_cm3: float, count: int) -> Iterator[Case]:
    for seed in range(count):
        if kind == "model":
            scene = model_scene(seed, u_volume_cm3)
            heat = float(scene.theta[INDEX["heat_j_cm3"]])
            yield Case(scene.setup, scene.pours, scene.trace, scene.end_point_cm3, heat)
        else:
            other = make_scene(seed, kind, u_volume_cm3)
            yield Case(
                setup_of(other),
                pours_of(other),
                trace_of(other),
                other.true_end_point_cm3,
                -other.true_enthalpy_kj_mol * other.alkali_mol_dm3,
            )


def row(kind: str, u_volume_cm3: float, count: int) -> str:
    heat: list[tuple[float, float]] = []
    lines: list[tuple[float, float, float]] = []
    refused = [0, 0]
    for case in cases(kind, u_volume_cm3, count):
        expected = expect(case.course())
        try:
            fit = fit_trace(case.trace, case.pours, case.setup)
        except HeatRefused:
            refused[0] += 1
        else:
            u = expected_heat_balance(expected, PROBE).u_end_point_cm3
            heat.append((fit.end_point_cm3 - case.end_point_cm3, u))
        foreseen = expected_lines(expected, PROBE)
        volumes = np.concatenate([[0.0], np.cumsum([pour.volume_cm3 for pour in case.pours])])
        try:
            crossing = fit_lines(volumes, plateaus(case.trace, case.pours)).end_point_cm3
        except LinesRefused:
            refused[1] += 1
        else:
            if foreseen.bias_cm3 is not None and foreseen.u_end_point_cm3 is not None:
                lines.append((crossing - case.end_point_cm3, foreseen.bias_cm3, foreseen.u_end_point_cm3))
    error, u = np.array(heat).T
    miss, bias, u_lines = np.array(lines).T
    over = error / u
    return (
        f"{kind:16s} {u_volume_cm3:4.2f} {len(heat):5d} {rms(u):7.3f} {rms(error):7.3f} {rms(over):6.2f} "
        f"{np.mean(np.abs(over) < 2):6.0%} {refused[0]:4d}   {len(lines):5d} {bias.mean():6.2f} {miss.mean():6.2f} "
        f"{rms(u_lines):6.2f} {rms((miss - bias) / u_lines):6.2f} {refused[1]:4d}"
    )


def rms(values: np.ndarray) -> float:
    return float(np.sqrt(np.mean(np.square(values))))


def main() -> None:
    count = int(sys.argv[1]) if len(sys.argv) > 1 else 60
    print(f"{'':21s} heat balance, cm³{'':23s}   straight lines, cm³")
    print(
        "cups             1 sd  fits  pred u     rms  ratio inside  ref   count  pred b   bias pred u  ratio  ref",
        flush=True,
    )
    for u_volume_cm3 in (0.02, 0.1, 0.3):
        print(row("model", u_volume_cm3, count), flush=True)
    for kind in FAMILIES:
        for u_volume_cm3 in (0.02, 0.1) if kind in ("calm", "mixed") else (0.1,):
            print(row(kind, u_volume_cm3, count), flush=True)
    plan, begin = read_plan(PLAN_TEXT), time.perf_counter()
    predict(plan)
    print(f"predict() of the plan that ships: {time.perf_counter() - begin:.2f} s")


if __name__ == "__main__":
    main()
