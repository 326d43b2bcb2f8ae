"""The probe register and the check under way, as their page shows them."""

from datetime import date
from typing import Any

from station.practical.checks_run import check_view
from station.practical.probe_used import used_json, used_of
from station.practical.probes import Checked, Cup, Entry, InUse, Probes
from station.practical.state import State

Json = dict[str, Any]
ABOUT_C = 25.0
"""The temperature at which the register says a correction: about that of a practical."""


def checks_view(state: State, time_s: float, wall: str, clock: str) -> Json:
    """Return everything that the page of checks shows; `wall` and `clock` are the station's now."""
    probes = state.probes
    return {
        "probe_id": probes.probe_id,
        "has_probe": state.has_probe,
        "under_way": state.running is not None,
        "check": None if probes.check is None else check_view(probes.check, time_s),
        "in_use": None if probes.in_use is None else used_json(used_of(probes.in_use, ABOUT_C)),
        "probes": [_probe(probes, entry, wall, clock) for entry in reversed(probes.entries)],
        "cups": [_cup(cup, wall, clock) for cup in reversed(probes.cups)],
    }


def _probe(probes: Probes, entry: Entry, wall: str, clock: str) -> Json:
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


def _check(checked: Checked, used: bool, wall: str, clock: str) -> Json:
    return {
        "number": checked.number,
        "check": checked.check,
        **_age(checked.wall, checked.clock, wall, clock),
        "withdrawn": checked.withdrawn,
        "used": used,
        "values": {name: value for name, value in checked.values.items() if name not in ("correction", "covariance")},
    }


def _cup(cup: Cup, wall: str, clock: str) -> Json:
    return {"label": cup.label, **_age(cup.wall, cup.clock, wall, clock), "values": dict(cup.values)}


def _age(then: str, then_clock: str, now: str, now_clock: str) -> Json:
    """The day of a check, and its age in days where both clocks were set."""
    try:
        day = date.fromisoformat(then[:10])
        days = (date.fromisoformat(now[:10]) - day).days
    except ValueError:
        return {"day": None, "clock_set": False, "age_days": None}
    sure = then_clock == now_clock == "network"
    return {"day": day.isoformat(), "clock_set": then_clock == "network", "age_days": max(days, 0) if sure else None}
