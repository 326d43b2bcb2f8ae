"""The results of mixing ratios: each mixture's rise by lines and by heat balance, and where the rises' lines cross."""

from collections.abc import Sequence
from math import hypot
from typing import Any, Final

from station.analysis.lines.crossing import Arm, CrossingResult, fit_lines
from station.analysis.lines.fit import LinesRefused
from station.chemistry.heat import Measured, enthalpy_per_mole
from station.chemistry.pairs import WrongPairError
from station.practical.dataset import Known, RepeatData, mean_probe, probe_of, with_probe
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.kinds.once.contents import Contents, contents_of, taken
from station.practical.kinds.once.results import U_ADDED_C, one_mixing
from station.practical.kinds.own_working import PROBE_C
from station.practical.kinds.ratios.crossing import at_crossing
from station.practical.kinds.ratios.mixing import cup_of, once_of
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.kinds.ratios.working import ratios_worked
from station.words import Message, say

Json = dict[str, Any]

FAR: Final = 3.0
"""A ratio so many of its u away from the equation's is told; so is none that is within LEAST_OFF of it."""
LEAST_OFF: Final = 0.05


def results(plan: RatiosPlan, repeats: Sequence[RepeatData], known: Known) -> Json:
    """Return the results as JSON values: `repeats`, a mixture each, then `mean`, which is of all of them."""
    mixed = [each for each in repeats if each.pours]
    try:
        found = [_mixture(plan, each, known) for each in mixed]
        mean = _all_of_them(plan, found)
    except ValueError as error:
        return _impossible(mixed, say("once-cannot-be-mixed", reason=str(error)))
    used, differing = mean_probe(mixed)
    mean["notes"] += differing
    for each, probe in zip((*found, mean), (*(probe_of(each) for each in mixed), used), strict=True):
        with_probe(each, probe)
    division_c = max((each.division_c for each in repeats if each.division_c is not None), default=PROBE_C)
    return {"repeats": found, "mean": {**mean, **ratios_worked(plan, mean, division_c)}}


def _impossible(repeats: Sequence[RepeatData], why: Message) -> Json:
    refused: Json = {
        **dict.fromkeys(METHOD_NAMES),
        "refused": dict.fromkeys(METHOD_NAMES, why),
        "notes": [],
    }
    of_each = [{"repeat": each.repeat, "cup": each.cup or 1, "volume_cm3": None, **refused} for each in repeats]
    return {"repeats": of_each, "mean": refused}


def _mixture(plan: RatiosPlan, repeat: RepeatData, known: Known) -> Json:
    """One mixture by both methods, as one mixing; and the rise over what both liquids had together."""
    cup = cup_of(plan, repeat)
    once = taken(once_of(plan, cup), repeat)
    contents = contents_of(once, repeat.places)
    found = one_mixing(once, contents, repeat, known, at_least=True)
    for method in METHOD_NAMES:
        if found[method] is not None:
            found[method] |= _rise(plan, contents, found[method], known)
    return {**found, "cup": cup, "volume_cm3": once.portion_cm3}


def _rise(plan: RatiosPlan, contents: Contents, found: Json, known: Known) -> Json:
    """What the alkali's own temperature did to the mixture is no rise; how well that is known is part of its u."""
    capacity_j_k = contents.all_j_k.value + plan.cup.heat_capacity_j_k
    u_brought_c = contents.added_j_k.value * (known.alkali_u_c or U_ADDED_C) / capacity_j_k
    return {"rise_c": found["heat_j"] / capacity_j_k, "u_rise_c": hypot(found["u_change_c"], u_brought_c)}


def _all_of_them(plan: RatiosPlan, found: Sequence[Json]) -> Json:
    mean: Json = {**dict.fromkeys(METHOD_NAMES), "refused": {}, "notes": []}
    for method in METHOD_NAMES:
        rises = _rises([each for each in found if each[method] is not None], method)
        try:
            mean[method] = _ratio(plan, rises)
        except LinesRefused as refusal:
            mean["refused"][method] = refusal.reason
            continue
        if method == "heat_balance":
            fitted = [each[method] for each in found if each[method] is not None]
            mean[method]["describes_trace"] = all(each["describes_trace"] for each in fitted)
    mean["notes"] += _off(plan, mean["straight_lines"] or mean["heat_balance"])
    return mean


def _rises(found: Sequence[Json], method: str) -> list[Json]:
    """The mean of each mixture, by the volume of alkali in it."""
    of_cup: dict[int, list[Json]] = {}
    for each in found:
        of_cup.setdefault(each["cup"], []).append(each)
    rises: list[Json] = [
        {
            "cup": cup,
            "volume_cm3": sum(each["volume_cm3"] for each in same) / len(same),
            "rise_c": sum(each[method]["rise_c"] for each in same) / len(same),
            "u_rise_c": hypot(*(each[method]["u_rise_c"] for each in same)) / len(same),
        }
        for cup, same in of_cup.items()
    ]
    return sorted(rises, key=lambda each: each["volume_cm3"])


def _ratio(plan: RatiosPlan, rises: Sequence[Json]) -> Json:
    """Raises LinesRefused."""
    lines = fit_lines([each["volume_cm3"] for each in rises], [each["rise_c"] for each in rises])
    alkali_cm3, total_cm3 = lines.end_point_cm3, plan.mixtures.total_cm3
    if not 0.0 < alkali_cm3 < total_cm3:
        raise LinesRefused("outside_gap", say("lines-no-crossing"))
    ratio = plan.alkali_per_acid(alkali_cm3)
    slope = ratio * total_cm3 / (alkali_cm3 * (total_cm3 - alkali_cm3))
    low_cm3, high_cm3 = (min(max(each, 0.0), 0.999 * total_cm3) for each in lines.interval_95_cm3)
    return {
        "end_point_cm3": alkali_cm3,
        "u_end_point_cm3": lines.u_end_point_cm3,
        "interval_95_cm3": list(lines.interval_95_cm3),
        "alkali_per_acid": ratio,
        "u_alkali_per_acid": slope * lines.u_end_point_cm3,
        "interval_95_ratio": [plan.alkali_per_acid(low_cm3), plan.alkali_per_acid(high_cm3)],
        "rise_c": lines.temperature_c,
        "u_rise_c": lines.u_temperature_c,
        **_enthalpy(plan, lines),
        "label": lines.label,
        "rule": lines.rule,
        "before": _arm(lines.before),
        "after": _arm(lines.after),
        "left_out": list(lines.left_out),
        "rises": list(rises),
    }


def _arm(line: Arm) -> Json:
    return {"slope_c_cm3": line.slope_c_cm3, "intercept_c": line.intercept_c, "points": list(line.points)}


def _enthalpy(plan: RatiosPlan, lines: CrossingResult) -> Json:
    nothing: Json = {"enthalpy_kj_mol": None, "u_enthalpy_kj_mol": None, "enthalpy_of": None}
    known = at_crossing(plan, lines.end_point_cm3, lines.u_end_point_cm3)
    if known is None or plan.pair.alkali.gives_gas:
        return nothing
    rise, capacity = Measured(lines.temperature_c, lines.u_temperature_c), known.all_j_k
    heat = Measured(capacity.value * rise.value, hypot(capacity.u * rise.value, capacity.value * rise.u))
    of = say("of-water-formed")
    worked = enthalpy_per_mole(heat, known.water_mol, of)
    return {"enthalpy_kj_mol": worked.value, "u_enthalpy_kj_mol": worked.u, "enthalpy_of": of}


def _off(plan: RatiosPlan, found: Json | None) -> list[Message]:
    """Say where the ratio contradicts the equation."""
    try:
        expected = plan.alkali_per_acid(plan.expected_cm3())
    except WrongPairError as error:
        return [say("plausible-check-plan", reason=str(error))]
    if found is None:
        return []
    ratio, u = found["alkali_per_acid"], found["u_alkali_per_acid"]
    if abs(ratio - expected) <= max(FAR * u, LEAST_OFF * expected):
        return []
    return [say("ratios-off", ratio=f"{ratio:.2f}", expected=f"{expected:.3g}")]
