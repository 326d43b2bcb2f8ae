"""The class result: the benches' results side by side, pooled by random effects. Runs in the worker's process.

Each bench comes with the results of its ended repeats (`practical/results.py`). Nothing is left out because it looks
odd: what stands off is named with what may be behind it, and a person decides.
"""

import math
from collections import Counter
from collections.abc import Mapping, Sequence
from typing import Any

import numpy as np

from station.analysis.lines.fit import student_t
from station.analysis.pooling import Pooled, anomaly, pool
from station.analysis.repeats import NORMAL_95, mean_of_repeats
from station.practical.dataset import RepeatData, from_question, mean_rows
from station.practical.kinds.kind import ENTHALPY, METHOD_NAMES, Method, kind_named, quantities
from station.practical.kinds.kind import Quantity as Known
from station.practical.plan import Plan
from station.practical.results import results
from station.room.class_result.words import answer_of, said_of
from station.room.contract import (
    BenchValue,
    ClassBench,
    ClassPoint,
    ClassResult,
    Odd,
    PooledShown,
    Quantity,
)
from station.words import Message, say

# Which benches stand off the others, and what in their own record may be behind it. Nothing is left out here.


Json = dict[str, Any]

OFF = 3.0
"""A bench stands off when it differs from the others by more than so many standard uncertainties of the difference."""
ENOUGH = 3


def anomalies(quantities: Sequence[Quantity], benches: Mapping[str, Json]) -> list[Odd]:
    """Return the benches that stand off, each with quantity, method, sentence and reasons from its own record."""
    found: dict[str, Odd] = {}
    for quantity in quantities:
        for bench, off, test in _standing_off(quantity["values"]):
            if bench not in found:  # the heat balance comes first: one sentence a bench is enough
                found[bench] = {
                    "bench": bench,
                    "quantity": quantity["quantity"],
                    "method": quantity["method"],
                    "text": _sentence(benches[bench].get("name", bench), quantity, off, test),
                    "reasons": reasons_in(benches[bench]),
                }
    return list(found.values())


def reasons_in(result: Json) -> list[Message]:
    """Return what the bench's own record says that may be behind an odd result."""
    aside = [say("class-set-aside", repeat=each["repeat"], reason=each["reason"]) for each in result.get("aside", [])]
    return [*result.get("happened", []), *result["notes"][:3], *aside] or [say("class-no-slip")]


def _standing_off(values: Sequence[BenchValue]) -> list[tuple[str, float, str]]:
    """Return bench, distance from the others and the test that says so."""
    if len(values) < ENOUGH:
        return []
    found: list[tuple[str, float, str]] = []
    flagged = anomaly([each["value"] for each in values])
    for index, one in enumerate(values):
        others = [each for each in values if each is not one]
        made = pool([each["value"] for each in others], [each["u"] for each in others])
        off = one["value"] - made.random.mean
        limit = OFF * math.sqrt(one["u"] ** 2 + made.tau**2 + made.hartung_knapp.u**2)
        if abs(off) > limit:
            found.append((one["bench"], off, say("class-more-than-u", count=f"{OFF:.0f}")))
        elif flagged is not None and flagged.index == index:
            found.append((one["bench"], off, flagged.test))
    return found


def _sentence(name: str, quantity: Quantity, off: float, test: str) -> Message:
    return say(
        "class-stands-off",
        bench_name=name,
        quantity=quantity["name"],
        method=METHOD_NAMES[quantity["method"]],
        off=f"{abs(off):.2f}",
        unit=quantity["unit"],
        side="above" if off > 0.0 else "below",
        test=test,
    )


def answer(asked: Mapping[str, Any]) -> Json:
    """Return the result of each bench, and the class's.

    Of each bench either its `question` is asked, or the `result` of one that was answered before.
    """
    benches: dict[str, Json] = {}
    found: dict[str, Json] = {}
    for bench, each in asked["benches"].items():
        found[bench] = each["result"] if "result" in each else bench_result(each["question"])
        benches[bench] = {**found[bench], "name": each["name"], **each["facts"]}
    return {"benches": found, "class": class_result(benches, asked.get("taking_part", 0))}


def bench_result(question: Mapping[str, Any]) -> Json:
    """Return what the class needs of one bench; `question` is as `practical/dataset.py` asks it."""
    plan, repeats, known = from_question(question)
    found = results(plan, repeats, known)
    return {
        "plan": plan_key(plan),
        "shared": plan.shared_u,
        "repeats": len(repeats),
        "mean": {method: found["mean"].get(method) for method in ("straight_lines", "heat_balance")},
        "refused": found["mean"].get("refused", {}),
        "notes": [
            *found["mean"].get("notes", []),
            *(
                say("class-note-of-repeat", repeat=each["repeat"], note=note)
                for each in found["repeats"]
                for note in each.get("notes", [])
            ),
        ],
        "curve": _curve(repeats),
        "kind": plan.kind,
        "asks": kind_named(plan.kind).asks(plan).key,
        "clash": _clash(found["mean"]),
    }


def _clash(mean: Json) -> bool:
    """Whether the repeats disagree so far that their mean has no usable interval."""
    if any(isinstance(note, Message) and note.id == "result-repeats-differ" for note in mean.get("notes", [])):
        return True
    found = mean.get("heat_balance") or {}
    for each in quantities().values():
        if each.interval is not None and found.get(each.key) and found.get(each.interval):
            low, high = found[each.interval]
            return bool(high - low > abs(found[each.key]))
    return False


def plan_key(plan: Plan) -> str:
    """Return what makes two plans one practical: all but title, pace and what is shown when."""
    parts = plan.without_prepared().model_dump_json(
        exclude={"title", "pace", "results", "prompts", "repeats", "predict_first"}
    )
    return str(parts)


def class_result(benches: Mapping[str, Json], taking_part: int = 0) -> ClassResult:
    """Return the class result of these benches' results, each with `name` and, where there are, `aside`.

    So many take part, with and without a result.

    Benches of another plan than most are listed and not pooled. JSON values in and out.
    """
    together, others = same_plan(benches)
    first = next(iter(together.values()), None)
    kind = None if first is None else kind_named(first["kind"])
    asks: str | None = None if first is None else first.get("asks")
    asked = [
        each
        for each in (() if kind is None else kind.class_quantities)
        if not each[0].asked_only or each[0].key == asks
    ]
    found = [_quantity(known, method, together) for known, methods in asked for method in methods]
    answer: ClassResult = {
        "asks": asks,
        "answer": None,
        "plain": [],
        "benches": [_row(bench, each, bench in together) for bench, each in benches.items()],
        "quantities": [each for each in found if each["values"]],
        "curve": _mean_curve(together) if kind is not None and kind.class_curve else [],
        "other_plans": sorted(others),
        "anomalies": [],
        "words": [],
    }
    answer["anomalies"] = anomalies(answer["quantities"], together)
    for quantity in answer["quantities"]:
        quantity["without"] = _without(quantity, {odd["bench"] for odd in answer["anomalies"]})
    return {**answer, **answer_of(answer, max(taking_part, len(benches))), "words": said_of(answer)}


def same_plan(benches: Mapping[str, Json]) -> tuple[dict[str, Json], list[str]]:
    """Return the benches of the commonest plan, and the names of the others."""
    plans = Counter(each["plan"] for each in benches.values())
    if not plans:
        return {}, []
    commonest = plans.most_common(1)[0][0]
    together = {bench: each for bench, each in benches.items() if each["plan"] == commonest}
    return together, [bench for bench in benches if bench not in together]


def _row(bench: str, each: Json, pooled: bool) -> ClassBench:
    return {
        "bench": bench,
        "name": each.get("name", bench),
        "group": each.get("group"),
        "repeats": each["repeats"],
        "pooled": pooled,
        "refused": each["refused"],
        "notes": each["notes"],
        "aside": each.get("aside", []),
        "clash": bool(each.get("clash")),
        "open": each.get("open", []),
    }


def _quantity(known: Known, method: Method, benches: Mapping[str, Json]) -> Quantity:
    values = [each for bench, one in benches.items() if (each := _value(bench, one, known, method)) is not None]
    return {
        "quantity": known.key,
        "name": known.name,
        "method": method,
        "unit": known.unit,
        "places": known.places,
        "signed": known.signed,
        "values": values,
        "pooled": _pooled(values) if len(values) > 1 else None,
        "silent": [bench for bench in benches if bench not in {each["bench"] for each in values}],
    }


def _value(bench: str, result: Json, known: Known, method: Method) -> BenchValue | None:
    found, name = result["mean"].get(method), known.key
    if not found or found.get(name) is None or not found.get(f"u_{name}"):
        return None
    value, u = float(found[name]), float(found[f"u_{name}"])
    shared = min(u, abs(value) * result["shared"]) if known is ENTHALPY else 0.0
    low, high = found.get(known.interval or "", (value - NORMAL_95 * u, value + NORMAL_95 * u))
    return {"bench": bench, "value": value, "u": u, "u_shared": shared, "low": float(low), "high": float(high)}


def _without(quantity: Quantity, off: set[str]) -> PooledShown | None:
    """Return what the pooled mean would be without the benches that stand off; None where that is no question."""
    kept = [each for each in quantity["values"] if each["bench"] not in off]
    if quantity["pooled"] is None or len(kept) == len(quantity["values"]) or len(kept) < 2:
        return None
    return _pooled(kept)


def _pooled(values: Sequence[BenchValue]) -> PooledShown:
    """Pool; what all benches share (the same kind of cup) does not average out and is added at the end."""
    own = [math.sqrt(max(each["u"] ** 2 - each["u_shared"] ** 2, (0.02 * each["u"]) ** 2)) for each in values]
    made: Pooled = pool([each["value"] for each in values], own)
    shared = sum(each["u_shared"] for each in values) / len(values)
    mean, u = made.hartung_knapp.mean, math.hypot(made.hartung_knapp.u, shared)
    half = math.hypot(student_t(made.degrees) * made.hartung_knapp.u, NORMAL_95 * shared)
    data = np.asarray([each["value"] for each in values], dtype=np.float64)
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


def _mean_curve(benches: Mapping[str, Json]) -> list[ClassPoint]:
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
