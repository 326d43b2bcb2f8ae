"""How a check goes on: its phases, what the station does at a sample, and which steps people may take when.

ice, boiling: prepare → settling → found. comparison: prepare → comparing. dip: prepare → air → plunge →
dipped → found.
cup: prepare → added → fill → warm → pour → mixed → weigh → found.
"""

from dataclasses import dataclass
from typing import Any

from station.analysis.cup_test import AFTER_S, BEFORE_S, CupRefused
from station.analysis.dip import DipRefused, plunge_s
from station.analysis.probe_correction import CorrectionRefused
from station.analysis.steady import DRIFT_C, Steady, steadiness
from station.practical import events as e
from station.practical.checks_found import (
    comparison_found,
    comparisons,
    cup_found,
    dip_found,
    fixed_point_found,
    known_point,
    lags_of,
)
from station.practical.probes import Check, Probes

LAPSES_S = 3600.0
"""A check that was forgotten must not keep a class from beginning."""

NEAR_C = {"ice": 3.0, "boiling": 5.0}
"""A probe at rest further from the known temperature than this is not in the ice, or is none for a lesson."""

BATH_C = 0.2
"""What the water of a comparison may drift in HOLD_S: both thermometers are in it, and what remains counts in u."""

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

    phase: str
    rest: Steady
    left_s: float | None = None
    why: str = ""


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
        return e.ProbeCheckStep("dip_refused", {"why": str(refusal)})  # once more, from the air


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


def check_view(check: Check, time_s: float) -> dict[str, Any]:
    """Return the check as its page shows it; temperatures are what the probe says."""
    now = standing(check, time_s)
    newest = check.samples[-1] if check.samples else None
    found = dict(check.found) if check.found is not None else None
    missing = None
    if check.check == "comparison" and found is None:
        try:
            comparison_found(check)
        except CorrectionRefused as refusal:
            missing = str(refusal)
    refused = check.step("dip_refused")
    if refused is not None and found is None:
        missing = refused.values["why"]
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


__all__ = ["FIRST_STEP", "STEPS", "CupRefused", "check_sample_events", "check_view", "found_after", "standing"]
