"""What a plan of mixing ratios promises: each rise, where the lines cross, and how well both will know it.

The rises are an energy balance; a few benches are then drawn, with volumes as a measuring cylinder gives them and a
probe's readings, and given to the methods that the bench itself uses.
"""

from collections.abc import Iterator, Sequence
from math import sqrt
from typing import Any, Final

import numpy as np

from station.analysis.prediction.model import PROBE
from station.chemistry.pairs import WrongPairError
from station.practical.dataset import Known, RepeatData
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.once.contents import U_VOLUME_CM3
from station.practical.kinds.once.mixture import mixture_of, mixture_with_heat, say_no_enthalpy
from station.practical.kinds.once.prediction import probe_trace
from station.practical.kinds.ratios.mixing import once_of
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.kinds.ratios.results import results
from station.practical.plan import PlanError
from station.practical.predict_plan import RINSE_S, START_S, minutes, too_long, weak_change
from station.practical.safety import Warned, safe, safety_warnings
from station.words import say

Json = dict[str, Any]

DRAWS: Final = 4
ASSUMED: Final = (
    say("predict-usual-cup"),
    say("predict-warm-as-cup"),
    say("predict-minutes-once", start_min=f"{START_S / 60:g}", rinse_min=f"{RINSE_S / 60:g}"),
    say("predict-cylinders", u_cm3=f"{U_VOLUME_CM3:g}"),
)


def predict(plan: RatiosPlan, *, compare: bool) -> Json:  # noqa: ARG001 - there is nothing to compare
    """Return the prediction as JSON values, units in the keys. Raises PlanError for what must not be mixed."""
    safe(plan)
    plan.check()
    try:
        return _predicted(plan)
    except WrongPairError as error:
        raise PlanError(say("predict-change-pair", reason=str(error)), ("alkali", "name")) from None
    except ValueError:  # of the chemistry or of the heat balance: nobody can pour that
        raise PlanError(say("problem-once-no-solution"), ("alkali",)) from None


def _predicted(plan: RatiosPlan) -> Json:
    expected_cm3, begin_c = plan.expected_cm3(), plan.start_c
    found: Json = {
        "kind": "ratios",
        "practical": plan.name,
        "start_c": begin_c,
        "minutes": minutes(plan),
        "end_point_cm3": expected_cm3,
        "alkali_per_acid": plan.alkali_per_acid(expected_cm3),
    }
    rises = [_rise_c(plan, cup) for cup in range(1, plan.mixtures.count + 1)]
    known = [each for each in rises if each is not None]
    if len(known) < len(rises):
        why = mixture_of(once_of(plan, 1)).why or say_no_enthalpy(ValueError(say("predict-no-heat")))
        found |= {"rise_c": None, "enthalpy_kj_mol": None, "curve": None, "methods": None, "refused": {"curve": why}}
    else:
        best = mixture_with_heat(once_of(plan.every_cup[0], 1))
        found |= {
            "rise_c": max(known),
            "enthalpy_kj_mol": None if best is None else best.enthalpy_kj_mol,
            "curve": [
                {"volume_cm3": cm3, "fraction": cm3 / plan.mixtures.total_cm3, "rise_c": round(rise_c, 3)}
                for cm3, rise_c in zip(plan.mixtures.alkali_cm3, known, strict=True)
            ],
            "methods": _methods(plan),
            "refused": {},
        }
    return {**found, "assumed": list(ASSUMED), "warnings": _warnings(plan, found)}


def _rise_c(plan: RatiosPlan, cup: int, off_cm3: tuple[float, float] = (0.0, 0.0)) -> float | None:
    """The rise of a mixture whose volumes of acid and alkali are so far off; None where its heat is not known."""
    once = once_of(plan, cup)
    liquid = once.liquid.model_copy(update={"volume_cm3": max(once.liquid.volume_cm3 + off_cm3[0], 0.1)})
    addition = once.addition.model_copy(update={"volume_cm3": max(once.portion_cm3 + off_cm3[1], 0.1)})
    mixed = mixture_with_heat(once.model_copy(update={"liquid": liquid, "addition": addition}))
    if mixed is None or mixed.enthalpy_kj_mol is None or mixed.amount_mol is None:
        return None
    return -1000.0 * mixed.enthalpy_kj_mol * mixed.amount_mol / (mixed.all_j_k + plan.cup.heat_capacity_j_k)


def _methods(plan: RatiosPlan) -> Json:
    rng = np.random.default_rng(1)
    found = [results(plan, list(_bench(plan, rng)), Known(plan.start_c))["mean"] for _ in range(DRAWS)]
    expected = plan.alkali_per_acid(plan.expected_cm3())
    methods: Json = {}
    for method in METHOD_NAMES:
        done = [each[method] for each in found if each[method] is not None]
        methods[method] = _expected(done, expected, plan.repeats) if done else None
    refused = [each["refused"] for each in found if each["refused"]]
    return {**methods, "refused": refused[0] if refused else {}}


def _bench(plan: RatiosPlan, rng: np.random.Generator) -> Iterator[RepeatData]:
    """One bench: what its probe says of each mixture."""
    u_cm3, start_c = plan.mixtures.u_volume_cm3 or U_VOLUME_CM3, plan.start_c
    for cup in range(1, plan.mixtures.count + 1):
        once, off_cm3 = once_of(plan, cup), rng.normal(0.0, u_cm3, 2)
        rise_c = _rise_c(plan, cup, (float(off_cm3[0]), float(off_cm3[1]))) or 0.0
        capacity_j_k = mixture_of(once).all_j_k + plan.cup.heat_capacity_j_k
        time_s, probe_c = probe_trace(once, start_c, rise_c, capacity_j_k)
        samples = tuple(zip(time_s.tolist(), PROBE.read(probe_c, rng).tolist(), strict=True))
        yield RepeatData(cup, (), samples, ((plan.timing.before_s, once.portion_cm3, False),), cup=cup)


def _expected(done: Sequence[Json], expected: float, repeats: int) -> Json:
    ratios = [each["alkali_per_acid"] for each in done]
    return {
        "bias_ratio": float(np.mean(ratios)) - expected,
        "u_alkali_per_acid": _rms([each["u_alkali_per_acid"] for each in done]) / sqrt(repeats),
        "u_end_point_cm3": _rms([each["u_end_point_cm3"] for each in done]) / sqrt(repeats),
    }


def _rms(values: Sequence[float]) -> float:
    return float(np.sqrt(np.mean(np.square(values))))


def _warnings(plan: RatiosPlan, found: Json) -> list[Warned]:
    rise_c = found["rise_c"]
    return [
        *safety_warnings(plan),
        *([] if rise_c is None else weak_change(rise_c)),
        *too_long(found["minutes"]["total"]),
    ]
