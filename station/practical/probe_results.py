"""The probe's share of the results: its correction, and its u in temperatures that are no differences."""

from collections.abc import Sequence
from math import hypot
from typing import Any

from station.analysis.probe_correction import U_ELSEWHERE, UNCHECKED_C
from station.practical.dataset import RepeatData
from station.practical.probe_used import ProbeUsed, alike, changed_note, differing_note, used_json

Json = dict[str, Any]

UNTOLD = ProbeUsed(None, "", 20.0, 0.0, UNCHECKED_C, U_ELSEWHERE, told=False)


def probe_of(repeat: RepeatData) -> ProbeUsed | None:
    """Return what corrected a repeat; None where its temperatures are not a probe's."""
    if not repeat.samples:
        return None
    return repeat.probe or UNTOLD


def mean_probe(repeats: Sequence[RepeatData]) -> tuple[ProbeUsed | None, list[str]]:
    """Return what corrected the newest of these repeats, and a warning when they were not corrected alike."""
    used = [each for each in (probe_of(repeat) for repeat in repeats) if each is not None]
    return (used[-1] if used else None), ([] if alike(used) else [differing_note()])


def with_probe(found: Json, used: ProbeUsed | None) -> Json:
    """Return a result with what is known of the probe in it; the crossing's temperature gets its u as well."""
    if used is None:
        return found
    lines = found.get("straight_lines")
    if lines and lines.get("u_temperature_c") is not None:
        lines["u_temperature_c"] = hypot(lines["u_temperature_c"], used.u_c)
    if used.changed and "repeat" in found:
        found["notes"] = [*found["notes"], changed_note(found["repeat"])]
    found["probe"] = used_json(used)
    return found
