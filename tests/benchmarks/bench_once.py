"""Accuracy and speed of the analysis of cups mixed once: on scenes unlike the fitted model, and on virtual cups.

Run: python -m tests.benchmarks.bench_once cups [cups per plan and case, default 12] [first seed]: virtual cups of
every shipped plan and of six more reagents, by probe and by thermometer, also mixed 30 minutes late and pressed 30 s
late; for each the bias of the change (°C) and of the enthalpy (%), rms, the stated u, and the coverage of their 95 %
intervals. Or: python -m tests.benchmarks.bench_once [scenes per family, default 40]. Prints, for each family, bias, rms
and coverage of the 95 % intervals of the heat ("known": cup, added temperature; "open": cup 5 ± 3 J/K, added
temperature to 0.2 °C) and of the change by extended lines; "less bias" is the latter without the predicted bias.
"""

from __future__ import annotations

import sys
import time
from collections.abc import Sequence

import numpy as np

from station.analysis.heat.inputs import Estimate, Trace
from station.analysis.once.enthalpy import extrapolate, predicted_bias_c
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import LIQUIDS_S, SOLIDS_S, OnceRefused, OnceSetup
from tests.benchmarks.once_scenes import FAMILIES, OnceScene, make_once
from tests.benchmarks.once_virtual import LATE_S, SLOW_S, CupRun, cups, plans

KEYS = ("known", "open", "lines", "less bias")


def setup_of(scene: OnceScene, know_cup: bool) -> OnceSetup:
    """What the class knows; with ``know_cup`` the cup from a cup test and the added part to 0.02 °C."""
    room = scene.measured_room_c
    return OnceSetup(
        Estimate(scene.contents_j_k, 0.002 * scene.contents_j_k),
        Estimate(scene.added_j_k, (0.2 if scene.solid else 0.005) * scene.added_j_k),
        Estimate(scene.true_cup_j_k, 0.3) if know_cup else Estimate(5.0, 3.0),
        added_c=Estimate(scene.true_added_c, 0.02) if know_cup else Estimate(scene.measured_added_c, 0.2),
        room_c=None if room is None else Estimate(room, 0.5),
        completion_s=SOLIDS_S if scene.solid else LIQUIDS_S,
    )


def _row(name: str, errors: list[float], inside: list[bool], u: list[float]) -> str:
    e = np.array(errors)
    if not len(e):
        return f"{name} -"
    text = f"{name} bias {e.mean():+6.2f} rms {np.sqrt((e**2).mean()):5.2f}"
    return text if name == KEYS[-1] else f"{text} u {np.mean(u):5.2f} in {100 * np.mean(inside):5.1f} %"


def main(count: int) -> None:
    """Print the table."""
    every: dict[str, tuple[list[float], list[bool], list[float]]] = {k: ([], [], []) for k in KEYS}
    seconds: list[float] = []
    print("errors of heat and of the extended lines' change in % of the true value")
    for family in FAMILIES:
        here: dict[str, tuple[list[float], list[bool], list[float]]] = {k: ([], [], []) for k in every}
        refused, poor = 0, 0
        for scene in make_once(family, count):
            trace = Trace(scene.time_s, scene.temperature_c)
            for key in ("known", "open"):
                begin = time.process_time()
                fit = fit_once(trace, scene.mixed_at_s, setup_of(scene, key == "known"))
                seconds.append(time.process_time() - begin)
                size = abs(scene.true_heat_j) / 100.0
                here[key][0].append((fit.heat_j - scene.true_heat_j) / size * np.sign(scene.true_heat_j))
                here[key][1].append(fit.interval_95_j[0] <= scene.true_heat_j <= fit.interval_95_j[1])
                here[key][2].append(fit.u_heat_j / size)
            poor += not fit.describes_trace
            try:
                drawn = extrapolate(scene.time_s, scene.temperature_c, scene.mixed_at_s)
            except OnceRefused:
                refused += 1
                continue
            change = scene.true_change_c
            here["lines"][0].append((drawn.change_c - change) / change * 100.0)
            here["lines"][1].append(drawn.interval_95_c[0] <= change <= drawn.interval_95_c[1])
            here["lines"][2].append(abs(drawn.u_change_c / change) * 100.0)
            bias = predicted_bias_c(fit, scene.time_s, press_s=scene.mixed_at_s)
            if bias is not None:
                here["less bias"][0].append((drawn.change_c - bias - change) / change * 100.0)
                here["less bias"][1].append(True)
                here["less bias"][2].append(abs(bias / change) * 100.0)
        for key, lists in here.items():
            for whole, part in zip(every[key], lists, strict=True):
                whole.extend(part)  # type: ignore[attr-defined]
        rows = " | ".join(_row(key, *lists) for key, lists in here.items())
        print(f"{family:16} {rows} | refused {refused} poor {poor}", flush=True)
    print(f"{'all':16} " + " | ".join(_row(key, *lists) for key, lists in every.items()))
    middle, most = 1e3 * np.quantile(seconds, [0.5, 0.95])
    print(f"CPU time of a fit: median {middle:.0f} ms, 95 % within {most:.0f} ms")


CASES = {"usual": {}, "30 min late": {"wait_s": SLOW_S}, "press 30 s late": {"late_s": LATE_S}}
METHODS = ("straight_lines", "heat_balance")


def of_cups(count: int, first: int) -> None:
    """Print the table of virtual cups, of `count` seeds from `first` on."""
    every: dict[tuple[str, str], list[list[Errors]]] = {}
    for case, late in CASES.items():
        for name, plan in plans().items():
            runs = list(cups(plan, count, first=first, **late))
            for instrument in ("probe", "thermometer"):
                texts = []
                for method in METHODS:
                    found = [_errors(run, instrument, method) for run in runs]
                    every.setdefault((instrument, method), []).append([each for each in found if each is not None])
                    texts.append(_line(found))
                print(f"{case:16}{name:20}{instrument:12}" + " | ".join(texts), flush=True)
    for (instrument, method), groups in every.items():
        print(f"{'all':36}{instrument:12}{method}: {_line([each for group in groups for each in group])}")


Errors = tuple[float, float, float, float, bool, bool]


def _errors(run: CupRun, instrument: str, method: str) -> Errors | None:
    found = (run.of_instrument[instrument] or {})[method]
    if found is None:
        return None
    low, high = found["interval_95_c"]
    off = found["enthalpy_kj_mol"] - run.enthalpy_kj_mol
    inside, u = abs(off) <= 1.96 * found["u_enthalpy_kj_mol"], found["u_enthalpy_kj_mol"] / abs(run.enthalpy_kj_mol)
    error_c = (found["change_c"] - run.change_c) * np.sign(run.change_c)
    u_c = found["u_change_c"]
    return float(error_c), u_c, 100.0 * off / run.enthalpy_kj_mol, 100.0 * u, low <= run.change_c <= high, inside


def _line(found: Sequence[Errors | None]) -> str:
    done = np.array([each for each in found if each is not None], dtype=np.float64)
    if not len(done):
        return f"refused {len(found)}"
    change_c, u_c, percent, u, inside_c, inside = done.T
    return (
        f"ΔT {change_c.mean():+6.3f} rms {np.sqrt((change_c**2).mean()):5.3f} u {u_c.mean():5.3f} °C "
        f"in {100 * inside_c.mean():5.1f} % "
        f"ΔH {percent.mean():+5.2f} rms {np.sqrt((percent**2).mean()):4.2f} u {u.mean():4.2f} % "
        f"in {100 * inside.mean():5.1f} % "
        f"refused {len(found) - len(done)}"
    )


if __name__ == "__main__":
    if sys.argv[1:2] == ["cups"]:
        of_cups(*(int(sys.argv[k]) if len(sys.argv) > k else usual for k, usual in ((2, 12), (3, 0))))
    else:
        main(int(sys.argv[1]) if len(sys.argv) > 1 else 40)
