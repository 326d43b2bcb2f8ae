"""What a plan that mixes once promises: temperature change, enthalpy, and how well each method will know them.

The change is an energy balance; a few repeats of such a cup are then drawn with a probe's readings and given to
the methods that the bench itself uses.
"""

from collections.abc import Sequence
from math import sqrt
from typing import Any, Final

import numpy as np

from station.analysis.heat.inputs import Array
from station.analysis.prediction.model import PROBE
from station.practical.dataset import Known, RepeatData
from station.practical.kinds.once.contents import Contents, contents_of
from station.practical.kinds.once.mixture import enthalpy_kj_mol
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.once.results import results
from station.practical.plan import PlanError
from station.practical.predict_plan import RINSE_S, START_S, minutes, too_long, weak_change
from station.practical.safety import Warned, safe, safety_warnings
from station.words import say

Json = dict[str, Any]

DRAWS: Final = 6
LOSS_W_K: Final = 0.1
MIXING_S, DISSOLVING_S = 2.0, 10.0
LAGS_S: Final = ((0.55, 4.6), (0.45, 19.0))
"""Share and time constant of the two ways in which a probe in a steel tube follows: `heat_inputs.HeatSetup`."""
SHOWN_EVERY_S: Final = 10

ASSUMED: Final = (
    say("predict-usual-cup"),
    say("predict-warm-as-cup"),
    say("predict-minutes-once", start_min=f"{START_S / 60:g}", rinse_min=f"{RINSE_S / 60:g}"),
    say("predict-exact"),
)


def predict(plan: OncePlan, *, compare: bool) -> Json:  # noqa: ARG001 - there is nothing to compare
    """Return the prediction as JSON values, units in the keys. Raises PlanError for what must not be mixed."""
    safe(plan)
    try:
        return _predicted(plan)
    except ValueError:  # of the chemistry or of the heat balance: nobody can pour that
        raise PlanError(say("problem-once-no-solution"), ("addition",)) from None


def _predicted(plan: OncePlan) -> Json:
    contents, begin_c = contents_of(plan), plan.start_c
    found: Json = {"kind": "once", "practical": plan.name, "start_c": begin_c, "minutes": minutes(plan)}
    enthalpy, refusal = enthalpy_kj_mol(plan, begin_c)
    if enthalpy is None or contents.amount_mol is None:
        nothing = dict.fromkeys(("change_c", "heat_j", "enthalpy_kj_mol", "curve", "methods"))
        found |= {**nothing, "refused": {"curve": contents.note or refusal}}
    else:
        found |= _with_heat(plan, contents, begin_c, enthalpy)
    return {**found, "assumed": list(ASSUMED), "warnings": _warnings(plan, found)}


def _with_heat(plan: OncePlan, contents: Contents, begin_c: float, enthalpy: float) -> Json:
    amount = contents.amount_mol.value if contents.amount_mol else 0.0
    heat_j = -1000.0 * enthalpy * amount
    added_c = begin_c if plan.addition.temperature_c is None else plan.addition.temperature_c
    capacity_j_k = contents.all_j_k.value + plan.cup.heat_capacity_j_k
    change_c = (heat_j + contents.added_j_k.value * (added_c - begin_c)) / capacity_j_k
    time_s, probe_c = probe_trace(plan, begin_c, change_c, capacity_j_k)
    return {
        "change_c": change_c,
        "heat_j": heat_j,
        "amount_mol": amount,
        "enthalpy_of": contents.of_what,
        "enthalpy_kj_mol": enthalpy,
        "curve": [
            {"time_s": float(time_s[k]), "temperature_c": round(float(probe_c[k]), 3)}
            for k in range(0, len(time_s), SHOWN_EVERY_S)
        ],
        "methods": _methods(plan, time_s, probe_c, added_c, change_c),
        "refused": {},
    }


def probe_trace(plan: OncePlan, begin_c: float, change_c: float, capacity_j_k: float) -> tuple[Array, Array]:
    """Seconds from the start, and the temperature at the probe: a cup that jumps, cools, and is followed late."""
    time_s = np.arange(0.0, plan.timing.before_s + plan.timing.after_s)
    since = np.maximum(time_s - plan.timing.before_s, 0.0)
    rate = LOSS_W_K / capacity_j_k
    mixing_s = MIXING_S if plan.addition.mass_g is None else DISSOLVING_S
    cup_c = begin_c + change_c * (np.exp(-rate * since) - np.exp(-since / mixing_s)) / (1.0 - rate * mixing_s)
    probe_c = np.zeros_like(cup_c)
    for share, lag_s in LAGS_S:
        felt = begin_c
        for k, level in enumerate(cup_c.tolist()):
            felt += (level - felt) * (1.0 - np.exp(-1.0 / lag_s))
            probe_c[k] += share * felt
    return time_s, probe_c


def _methods(plan: OncePlan, time_s: Array, probe_c: Array, added_c: float, change_c: float) -> Json:
    rng = np.random.default_rng(1)
    repeats = [
        RepeatData(
            number + 1,
            (),
            tuple(zip(time_s.tolist(), PROBE.read(probe_c, rng).tolist(), strict=True)),
            ((plan.timing.before_s, plan.portion_cm3, False),),
        )
        for number in range(DRAWS)
    ]
    found = results(plan, repeats, Known(added_c if plan.portion_cm3 else None))
    methods: Json = {}
    for method in ("straight_lines", "heat_balance"):
        done = [each[method] for each in found["repeats"] if each[method] is not None]
        methods[method] = _expected(done, change_c, plan.repeats) if done else None
    return {**methods, "refused": found["mean"]["refused"]}


def _expected(done: Sequence[Json], change_c: float, repeats: int) -> Json:
    u_change_c = _rms([each["u_change_c"] for each in done])
    return {
        "bias_c": float(np.mean([each["change_c"] for each in done])) - change_c,
        "u_change_c": u_change_c,
        "u_mean_c": u_change_c / sqrt(repeats),
        "u_enthalpy_kj_mol": _rms([each["u_enthalpy_kj_mol"] for each in done]),
    }


def _rms(values: Sequence[float]) -> float:
    return float(np.sqrt(np.mean(np.square(values))))


def _warnings(plan: OncePlan, found: Json) -> list[Warned]:
    change_c = found["change_c"]
    return [
        *safety_warnings(plan),
        *([] if change_c is None else weak_change(change_c)),
        *too_long(found["minutes"]["total"]),
    ]
