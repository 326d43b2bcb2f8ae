"""The class result: the benches' results side by side, pooled by random effects. Runs in a child process.

Each bench comes with the results of its ended repeats (`practical/results.py`). Nothing is left out because it looks
odd: what stands off is named with what may be behind it, and a person decides.
"""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from dataclasses import asdict, dataclass
from typing import Any

import numpy as np

from station.analysis.lines_fit import student_t
from station.analysis.pooling import Pooled, pool
from station.analysis.repeats import NORMAL_95, mean_of_repeats
from station.practical.dataset import RepeatData, from_question
from station.practical.heat import common_relative_u
from station.practical.means import mean_rows
from station.practical.plan import Plan, PortionsPlan
from station.practical.results import results
from station.room.class_anomalies import anomalies
from station.room.class_words import said_of

Json = dict[str, Any]

PORTIONS = (("end_point_cm3", ("heat_balance", "straight_lines")), ("enthalpy_kj_mol", ("heat_balance",)))
ONCE = (
    ("change_c", ("heat_balance", "straight_lines")),
    ("enthalpy_kj_mol", ("heat_balance", "straight_lines")),
)
_INTERVAL = {"end_point_cm3": "interval_95_cm3", "change_c": "interval_95_c"}


@dataclass(frozen=True)
class Value:
    """One bench's result by one method: value, standard uncertainty, its part shared by all benches, 95 % interval."""

    bench: str
    value: float
    u: float
    u_shared: float
    low: float
    high: float


def bench_result(question: Mapping[str, Any]) -> Json:
    """Return what the class needs of one bench; `question` is as `practical/dataset.py` asks it."""
    plan, repeats, known = from_question(question)
    found = results(plan, repeats, known)
    return {
        "plan": plan_key(plan),
        "shared": common_relative_u(plan) if isinstance(plan, PortionsPlan) else 0.0,
        "repeats": len(repeats),
        "mean": {method: found["mean"].get(method) for method in ("straight_lines", "heat_balance")},
        "refused": found["mean"].get("refused", {}),
        "notes": [
            *found["mean"].get("notes", []),
            *(f"Repeat {each['repeat']}: {note}" for each in found["repeats"] for note in each.get("notes", [])),
        ],
        "curve": _curve(repeats),
        "kind": plan.kind,
    }


def plan_key(plan: Plan) -> str:
    """Return what makes two plans one practical: all but title, pace and what is shown when."""
    parts = plan.without_prepared().model_dump_json(exclude={"title", "pace", "results", "prompts", "repeats"})
    return str(parts)


def class_result(benches: Mapping[str, Json]) -> Json:
    """Return the class result of these benches' results, each with `name` and, where there are, `aside`.

    Benches of another plan than most are listed and not pooled. JSON values in and out.
    """
    together, others = same_plan(benches)
    first = next(iter(together.values()), None)
    quantities = PORTIONS if first is None or first["kind"] == "portions" else ONCE
    found = [
        _quantity(name, method, together) for name, methods in quantities for method in methods if first is not None
    ]
    answer: Json = {
        "benches": [_row(bench, each, bench in together) for bench, each in benches.items()],
        "quantities": [each for each in found if each["values"]],
        "curve": _mean_curve(together) if first is not None and first["kind"] == "portions" else [],
        "other_plans": sorted(others),
    }
    answer["anomalies"] = anomalies(answer["quantities"], together)
    for each in answer["quantities"]:
        each["without"] = _without(each, {odd["bench"] for odd in answer["anomalies"]})
    return {**answer, "words": said_of(answer)}


def same_plan(benches: Mapping[str, Json]) -> tuple[dict[str, Json], list[str]]:
    """Return the benches of the commonest plan, and the names of the others."""
    plans = Counter(each["plan"] for each in benches.values())
    if not plans:
        return {}, []
    commonest = plans.most_common(1)[0][0]
    together = {bench: each for bench, each in benches.items() if each["plan"] == commonest}
    return together, [bench for bench in benches if bench not in together]


def _row(bench: str, each: Json, pooled: bool) -> Json:
    return {
        "bench": bench,
        "name": each.get("name", bench),
        "group": each.get("group"),
        "repeats": each["repeats"],
        "pooled": pooled,
        "refused": each["refused"],
        "notes": each["notes"],
        "aside": each.get("aside", []),
    }


def _quantity(name: str, method: str, benches: Mapping[str, Json]) -> Json:
    values = [each for bench, one in benches.items() if (each := _value(bench, one, name, method)) is not None]
    return {
        "quantity": name,
        "method": method,
        "values": [asdict(each) for each in values],
        "pooled": _pooled(values) if len(values) > 1 else None,
        "silent": [bench for bench in benches if bench not in {each.bench for each in values}],
    }


def _value(bench: str, result: Json, name: str, method: str) -> Value | None:
    found = result["mean"].get(method)
    if not found or found.get(name) is None or not found.get(f"u_{name}"):
        return None
    value, u = float(found[name]), float(found[f"u_{name}"])
    shared = min(u, abs(value) * result["shared"]) if name == "enthalpy_kj_mol" else 0.0
    low, high = found.get(_INTERVAL.get(name, ""), (value - NORMAL_95 * u, value + NORMAL_95 * u))
    return Value(bench, value, u, shared, float(low), float(high))


def _without(quantity: Json, off: set[str]) -> Json | None:
    """Return what the pooled mean would be without the benches that stand off; None where that is no question."""
    kept = [Value(**each) for each in quantity["values"] if each["bench"] not in off]
    if quantity["pooled"] is None or len(kept) == len(quantity["values"]) or len(kept) < 2:
        return None
    return _pooled(kept)


def _pooled(values: Sequence[Value]) -> Json:
    """Pool; what all benches share (the same kind of cup) does not average out and is added at the end."""
    own = [math.sqrt(max(each.u**2 - each.u_shared**2, (0.02 * each.u) ** 2)) for each in values]
    made: Pooled = pool([each.value for each in values], own)
    shared = sum(each.u_shared for each in values) / len(values)
    mean, u = made.hartung_knapp.mean, math.hypot(made.hartung_knapp.u, shared)
    half = math.hypot(student_t(made.degrees) * made.hartung_knapp.u, NORMAL_95 * shared)
    data = np.asarray([each.value for each in values], dtype=np.float64)
    return {
        "count": made.count,
        "mean": mean,
        "u": u,
        "low": mean - half,
        "high": mean + half,
        "between": made.tau,
        "sd": float(data.std(ddof=1)),
        "own_u": float(np.sqrt(np.mean(np.square(own)))),
        "p": made.p,
        "i2_percent": made.i2_percent,
        "u_shared": shared,
    }


def _curve(repeats: Sequence[RepeatData]) -> list[list[float]]:
    """Return the bench's mean curve as portion, volume in cm³ and change since the start in °C."""
    rows = mean_rows(repeats)
    if not rows or rows[0].portion != 0:
        return []
    start_c = rows[0].temperature_c
    return [[row.portion, row.volume_cm3, row.temperature_c - start_c] for row in rows]


def _mean_curve(benches: Mapping[str, Json]) -> list[Json]:
    """Return the class's mean curve: for each portion volume, change since the start, its scatter and count."""
    curves = [each["curve"] for each in benches.values() if each["curve"]]
    if not curves:
        return []
    last = max(int(row[0]) for curve in curves for row in curve)
    volumes, changes = [], []
    for curve in curves:
        known = {int(portion): (volume, change) for portion, volume, change in curve}
        volumes.append([known.get(portion, (math.nan, 0.0))[0] for portion in range(last + 1)])
        changes.append([known.get(portion, (0.0, math.nan))[1] for portion in range(last + 1)])
    return [
        {
            "portion": each.portion,
            "volume_cm3": each.volume_cm3,
            "change_c": each.temperature_c,
            "sd_c": each.sd_c,
            "count": each.count,
        }
        for each in mean_of_repeats(volumes, changes)
    ]
