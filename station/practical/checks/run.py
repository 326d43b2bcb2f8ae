"""How a check goes on: its phases, what the station does at a sample, and which steps people may take when.

ice, boiling: prepare → settling → found. comparison: prepare → comparing. dip: prepare → air → plunge →
dipped → found.
cup: prepare → added → fill → warm → pour → mixed → weigh → found.
"""

from collections.abc import Mapping
from dataclasses import asdict, dataclass
from datetime import date
from math import hypot, sqrt
from typing import Any, Literal

from station.analysis.probe.correction import CorrectionRefused, line_of, offset_alone
from station.analysis.probe.cup_test import AFTER_S, BEFORE_S, cup_of
from station.analysis.probe.dip import DRIFT_C, DipRefused, Steady, dip_of, plunge_s, steadiness
from station.analysis.settle.lags import STEEL_TUBE, ProbeLags
from station.chemistry.fixed_points import FixedPoint, Water, boiling_point, boiling_point_at, ice_point
from station.chemistry.liquids import water_heat_capacity_j_g_k
from station.practical import events as e
from station.practical.checks.correction import used_json, used_of
from station.practical.checks.register import Check, Checked, Cup, Entry, InUse, Probes
from station.practical.contract import (
    Aged,
    CheckedShown,
    CheckShown,
    ChecksShown,
    CupShown,
    Phase,
    RegisteredProbe,
)
from station.practical.recorded import recorded
from station.practical.state import State
from station.words import say

# What a check finds from its trace and what was typed: plain numbers for the event, with the correction in them.


Json = dict[str, Any]

U_MASS_G = 0.1 / sqrt(3.0)
"""Standard uncertainty of a mass by a balance that shows 0.1 g, both readings together: common practice, no source."""

U_BAROMETER_KPA = 0.1
"""Standard uncertainty of a barometer that nothing else is said of: 1 hPa, common practice, no source."""

U_REFERENCE_C = 0.1
"""Standard uncertainty of a reference thermometer that nothing else is said of: common practice, no source."""

DIVISION_C = 0.1
"""What a reference thermometer is read to, or its own u if that is larger; half a division either way is a rectangular
limit (GUM 4.3.7): common practice, no source."""


def known_point(check: str, values: Mapping[str, Any]) -> FixedPoint:
    """Return the temperature that ice or boiling water has by what was typed. Raises ValueError outside its range."""
    if check == "ice":
        water: Water = "tap" if values.get("water") == "tap" else "distilled"
        return ice_point(water)
    pressure_kpa = values.get("pressure_kpa")
    if pressure_kpa is not None:
        return boiling_point(pressure_kpa, values.get("u_pressure_kpa") or U_BAROMETER_KPA)
    return boiling_point_at(values["altitude_m"])


def fixed_point_found(check: Check, rest: Steady) -> Json:
    """Return what ice or boiling water says of the probe, once it is at rest."""
    known = known_point(check.check, check.values)
    probe_c, u_probe_c = rest.temperature_c or 0.0, rest.u_c or 0.0
    correction = offset_alone(probe_c, u_probe_c, known.temperature_c, known.u_c)
    return _rounded(
        {
            "probe_c": probe_c,
            "u_probe_c": u_probe_c,
            "known_c": known.temperature_c,
            "u_known_c": known.u_c,
            "pressure_kpa": known.pressure_kpa,
            "correction_c": correction.offset_c,
            "u_correction_c": correction.u_of(probe_c),
            "correction": asdict(correction),
        }
    )


def comparison_found(check: Check) -> Json:
    """Return the line through the comparisons. Raises CorrectionRefused while there are too few of them."""
    points = [each.values for each in comparisons(check)]
    u_reference_c = check.values.get("u_reference_c") or U_REFERENCE_C
    u_read_c = max(DIVISION_C, u_reference_c) / sqrt(12.0)
    u_each_c = sqrt(sum(hypot(each["u_probe_c"], u_read_c) ** 2 for each in points) / max(len(points), 1))
    said_c, known_c = ([each[name] for each in points] for name in ("probe_c", "reference_c"))
    line = line_of(said_c, known_c, u_reference_c, u_each_c=u_each_c)
    lowest_c, highest_c = (end(each["probe_c"] for each in points) for end in (min, max))
    return _rounded(
        {
            "points": [dict(each) for each in points],
            "lowest_c": lowest_c,
            "highest_c": highest_c,
            "correction_c": line.of(line.at_c),
            "u_correction_c": line.u_of(line.at_c),
            "slope": line.slope,
            "u_slope": line.u_slope,
            "slope_95": line.factor_95() * line.u_slope,
            "s_c": line.s_c,
            "correction": asdict(line),
        }
    )


def comparisons(check: Check) -> list[Any]:
    """Return the steps of comparison that stand: one that was undone takes the newest away."""
    kept: list[Any] = []
    for each in check.steps:
        if each.step == "compared":
            kept.append(each)
        elif each.step == "comparison_undone" and kept:
            kept.pop()
    return kept


def dip_found(check: Check, since_s: float) -> Json:
    """Return the time constants of the dip. Raises DipRefused."""
    dip = dip_of([each for each in check.samples if each[0] >= since_s])
    lags = dip.lags
    return _rounded(
        {
            "fast_s": lags.fast_s,
            "u_fast_s": dip.u_fast_s,
            "slow_s": lags.slow_s,
            "u_slow_s": dip.u_slow_s,
            "fast_share": lags.fast_share,
            "u_fast_share": dip.u_share,
            "covariance": [list(row) for row in lags.covariance],
            "t63_s": dip.t63_s,
            "t90_s": dip.t90_s,
            "air_c": dip.air_c,
            "water_c": dip.water_c,
            "rms_c": dip.rms_c,
        }
    )


def lags_of(checked: Checked | None) -> ProbeLags:
    """Return the time constants that a dip found; without one those of the usual probe."""
    if checked is None:
        return STEEL_TUBE
    found = checked.values
    a, b, c = (tuple(row) for row in found["covariance"])
    return ProbeLags(found["fast_s"], found["slow_s"], found["fast_share"], (a, b, c))


def cup_found(check: Check, lags: ProbeLags) -> Json:
    """Return heat capacity and loss of the cup. Raises CupRefused, or LookupError when a step is missing."""
    added, poured, weighed = (check.step(name) for name in ("added_measured", "poured", "weighed"))
    if added is None or poured is None or weighed is None:
        raise LookupError(say("problem-step-missing"))
    masses_g = (weighed.values["warm_g"], weighed.values["added_g"])
    u_mass_g = weighed.values.get("u_mass_g") or U_MASS_G
    added_c = (added.values["temperature_c"], added.values["u_c"])
    cup = cup_of(check.samples, poured.time_s, added_c, masses_g, u_mass_g, water_heat_capacity_j_g_k(30.0), lags)
    return _rounded({**asdict(cup), "warm_g": masses_g[0], "added_g": masses_g[1], "u_mass_g": u_mass_g})


def _rounded(values: Json) -> Json:
    # Far below anything measured; keeps the journal readable.
    return {name: _short(value) for name, value in values.items()}


def _short(value: Any) -> Any:
    if isinstance(value, float):
        return float(f"{value:.8g}")
    if isinstance(value, dict):
        return _rounded(value)
    return value


LAPSES_S = 3600.0
"""A check that was forgotten must not keep a class from beginning."""

NEAR_C = {"ice": 3.0, "boiling": 5.0}
"""A probe at rest further from the known temperature than this is not in the ice, or is none for a lesson."""

BATH_C = 0.2
"""What the water of a comparison may drift in HOLD_S: both thermometers are in it, and what remains counts in u."""

COMPARED_C = (10.0, 50.0)
"""Where comparisons are taken: a practical stays within, and hotter water is not worth its dangers."""

AIR_S, AIR_DRIFT_C = 25.0, 0.15
DIPPED_S = 110.0
WARM_S = BEFORE_S + 90.0
"""Seconds that the warm cup needs: the wall has to warm through before the curve counts."""

FIRST_STEP = {"ice": "in", "boiling": "in", "comparison": "in", "dip": "hung", "cup": "in_added"}

STEPS: dict[str, tuple[str, ...]] = {
    "prepare": ("in", "hung", "in_added"),
    "comparing": ("compared", "comparison_undone"),
    "fill": ("filled",),
    "pour": ("poured",),
    "weigh": ("weighed",),
    "found": ("weighed",),
}
"""Steps that people may take in each phase."""

MEASURED = {"added": "added_measured", "air": "air_measured"}
"""Steps that the station takes by itself once the probe is at rest."""


@dataclass(frozen=True)
class Standing:
    """Where a check stands: its phase, what rest the probe has come to, the seconds left (None: not known)."""

    phase: Phase
    rest: Steady
    left_s: float | None = None
    why: Literal["", "far"] = ""


def standing(check: Check, time_s: float) -> Standing:
    """Return where the check stands at this bench time."""
    since_s = check.steps[-1].time_s if check.steps else check.begun_s
    rest = steadiness(check.samples, since_s, time_s, most_c=BATH_C if check.check == "comparison" else DRIFT_C)
    if not check.steps:
        return Standing("prepare", rest)
    return _STANDING[check.check](check, rest, time_s)


def _at_fixed_point(check: Check, rest: Steady, _: float) -> Standing:
    if check.found is not None:
        return Standing("found", rest)
    known_c = known_point(check.check, check.values).temperature_c
    far = rest.temperature_c is not None and abs(rest.temperature_c - known_c) > NEAR_C[check.check]
    return Standing("settling", rest, None, "far" if rest.steady and far else "")


def _comparing(_: Check, rest: Steady, __: float) -> Standing:
    return Standing("comparing", rest)


def _dipping(check: Check, rest: Steady, time_s: float) -> Standing:
    if check.found is not None:
        return Standing("found", rest)
    step = check.steps[-1]
    if step.step in ("hung", "dip_refused"):
        return Standing("air", steadiness(check.samples, step.time_s, time_s, hold_s=AIR_S, most_c=AIR_DRIFT_C))
    plunged_s = plunge_s([each for each in check.samples if each[0] >= step.time_s - AIR_S])
    if plunged_s is None:
        return Standing("plunge", rest)
    return Standing("dipped", rest, max(plunged_s + DIPPED_S - time_s, 0.0))


def _cup(check: Check, rest: Steady, time_s: float) -> Standing:
    if check.found is not None:
        return Standing("found", rest)
    step = check.steps[-1]
    if step.step == "in_added":
        return Standing("added", rest)
    if step.step == "added_measured":
        return Standing("fill", rest)
    if step.step == "filled":
        left_s = max(step.time_s + WARM_S - time_s, 0.0)
        return Standing("warm" if left_s else "pour", rest, left_s)
    if step.step == "poured":
        left_s = max(step.time_s + AFTER_S - time_s, 0.0)
        return Standing("mixed" if left_s else "weigh", rest, left_s)
    return Standing("weigh", rest)


_STANDING = {
    "ice": _at_fixed_point,
    "boiling": _at_fixed_point,
    "comparison": _comparing,
    "dip": _dipping,
    "cup": _cup,
}


def check_sample_events(probes: Probes, time_s: float) -> tuple[e.Event, ...]:
    """Return what the station does by itself at a sample: put down what was found, or end what was forgotten."""
    check = probes.check
    if check is None:
        return ()
    last_s = check.steps[-1].time_s if check.steps else check.begun_s
    if time_s - last_s > LAPSES_S:
        return (e.ProbeCheckDiscarded("forgotten"),)
    now = standing(check, time_s)
    if now.phase == "dipped" and now.left_s == 0.0:
        return (_dipped(check),)
    if not now.rest.steady or now.why:
        return ()
    if now.phase in MEASURED:
        measured = {"temperature_c": now.rest.temperature_c, "u_c": now.rest.u_c}
        return (e.ProbeCheckStep(MEASURED[now.phase], measured),)
    return (e.ProbeCheckFound(fixed_point_found(check, now.rest)),) if now.phase == "settling" else ()


def _dipped(check: Check) -> e.Event:
    try:
        return e.ProbeCheckFound(dip_found(check, check.steps[-1].time_s - AIR_S))
    except DipRefused as refusal:
        return e.ProbeCheckStep("dip_refused", {"why": refusal.reason})  # once more, from the air


def found_after(probes: Probes, check: Check) -> tuple[e.Event, ...]:
    """Return what is found once the newest step is in. Raises CupRefused."""
    if check.check == "comparison":
        try:
            return (e.ProbeCheckFound(comparison_found(check)),)
        except CorrectionRefused:
            return ()
    if check.check == "cup" and check.steps[-1].step == "weighed":
        lags = lags_of(probes.of(check.probe_id, "dip"))
        return (e.ProbeCheckFound(cup_found(check, lags)),)
    return ()


def check_view(check: Check, time_s: float) -> CheckShown:
    """Return the check as its page shows it; temperatures are what the probe says."""
    now = standing(check, time_s)
    newest = check.samples[-1] if check.samples else None
    found = dict(check.found) if check.found is not None else None
    missing: str | None = None
    if check.check == "comparison" and found is None:
        try:
            comparison_found(check)
        except CorrectionRefused as refusal:
            missing = refusal.reason
    refused = check.step("dip_refused")
    if refused is not None and found is None:
        missing = recorded(refused.values["why"])
    known = known_point(check.check, check.values) if check.check in NEAR_C else None
    return {
        "check": check.check,
        "probe_id": check.probe_id,
        "values": dict(check.values),
        "phase": now.phase,
        "why": now.why or now.rest.reason,
        "left_s": now.left_s,
        "live": None if newest is None else {"time_s": newest[0], "temperature_c": newest[1]},
        "rest": {"steady": now.rest.steady, "temperature_c": now.rest.temperature_c, "u_c": now.rest.u_c},
        "moving_c_min": now.rest.moving_c_min,
        "known_c": None if known is None else known.temperature_c,
        "u_known_c": None if known is None else known.u_c,
        "points": [dict(each.values) for each in comparisons(check)],
        "missing": missing,
        "found": found,
    }


# The probe register and the check under way, as their page shows them.


ABOUT_C = 25.0
"""The temperature at which the register says a correction: about that of a practical."""


def checks_view(state: State, time_s: float, wall: str, clock: str) -> ChecksShown:
    """Return everything that the page of checks shows; `wall` and `clock` are the station's now."""
    probes = state.probes
    return {
        "probe_id": probes.probe_id,
        "has_probe": state.has_probe,
        "under_way": state.running is not None,
        "check": None if probes.check is None else check_view(probes.check, time_s),
        "in_use": None if probes.in_use is None else used_json(used_of(probes.in_use, ABOUT_C)),
        "probes": [_probe(probes, entry, wall, clock) for entry in reversed(probes.entries)],
        "cups": [_cup_view(cup, wall, clock) for cup in reversed(probes.cups)],
    }


def _probe(probes: Probes, entry: Entry, wall: str, clock: str) -> RegisteredProbe:
    tally = entry.tally
    in_use = probes.in_use if probes.in_use is not None and probes.in_use.probe_id == entry.probe_id else None
    checks = [each for each in reversed(probes.checks) if each.probe_id == entry.probe_id]
    return {
        "probe_id": entry.probe_id,
        "at_work": entry.probe_id == probes.probe_id,
        "against": None if entry.against is None else list(entry.against),
        "samples": tally.samples,
        "bad": dict(tally.bad),
        "checks": [_check(each, in_use is not None and _is_in(probes, each, in_use), wall, clock) for each in checks],
    }


def _is_in(probes: Probes, checked: Checked, in_use: InUse) -> bool:
    """Whether the correction in use is made of this check: the newest of its kind that stands."""
    return checked.check in in_use.check and probes.of(checked.probe_id, checked.check) == checked


def _check(checked: Checked, used: bool, wall: str, clock: str) -> CheckedShown:
    return {
        "number": checked.number,
        "check": checked.check,
        **_age(checked.wall, checked.clock, wall, clock),
        "withdrawn": checked.withdrawn,
        "used": used,
        "values": {name: value for name, value in checked.values.items() if name not in ("correction", "covariance")},
    }


def _cup_view(cup: Cup, wall: str, clock: str) -> CupShown:
    return {"label": cup.label, **_age(cup.wall, cup.clock, wall, clock), "values": dict(cup.values)}


def _age(then: str, then_clock: str, now: str, now_clock: str) -> Aged:
    """The day of a check, and its age in days where both clocks were set."""
    try:
        day = date.fromisoformat(then[:10])
        days = (date.fromisoformat(now[:10]) - day).days
    except ValueError:
        return {"day": None, "clock_set": False, "age_days": None}
    sure = then_clock == now_clock == "network"
    return {"day": day.isoformat(), "clock_set": then_clock == "network", "age_days": max(days, 0) if sure else None}
