"""Which benches stand off the others, and what in their own record may be behind it. Nothing is left out here."""

import math
from collections.abc import Mapping, Sequence
from typing import Any

from station.analysis.outliers import anomaly
from station.analysis.pooling import pool

Json = dict[str, Any]

OFF = 3.0
"""A bench stands off when it differs from the others by more than so many standard uncertainties of the difference."""
ENOUGH = 3
UNITS = {"end_point_cm3": "cm³", "enthalpy_kj_mol": "kJ/mol", "change_c": "°C"}
NAMES = {"end_point_cm3": "end-point", "enthalpy_kj_mol": "enthalpy", "change_c": "temperature change"}
METHODS = {"heat_balance": "heat balance", "straight_lines": "straight lines"}
NO_REASON = "Its own record shows no slip: ask the group."


def anomalies(quantities: Sequence[Json], benches: Mapping[str, Json]) -> list[Json]:
    """Return the benches that stand off, each with quantity, method, sentence and reasons from its own record."""
    found: dict[str, Json] = {}
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


def reasons_in(result: Json) -> list[str]:
    """Return what the bench's own record says that may be behind an odd result."""
    aside = [f"Repeat {each['repeat']} was set aside: {each['reason']}" for each in result.get("aside", [])]
    return [*result.get("happened", []), *result["notes"][:3], *aside] or [NO_REASON]


def _standing_off(values: Sequence[Json]) -> list[tuple[str, float, str]]:
    """Return bench, distance from the others and the test that says so."""
    if len(values) < ENOUGH:
        return []
    found = []
    flagged = anomaly([each["value"] for each in values])
    for index, one in enumerate(values):
        others = [each for each in values if each is not one]
        made = pool([each["value"] for each in others], [each["u"] for each in others])
        off = one["value"] - made.random.mean
        limit = OFF * math.sqrt(one["u"] ** 2 + made.tau**2 + made.hartung_knapp.u**2)
        if abs(off) > limit:
            found.append((one["bench"], off, f"more than {OFF:.0f} standard uncertainties of the difference"))
        elif flagged is not None and flagged.index == index:
            found.append((one["bench"], off, flagged.test))
    return found


def _sentence(name: str, quantity: Json, off: float, test: str) -> str:
    way = "above" if off > 0.0 else "below"
    what, method = NAMES[quantity["quantity"]], METHODS[quantity["method"]]
    return (
        f"{name}: its {what} by {method} lies {abs(off):.2f} {UNITS[quantity['quantity']]} {way} the others ({test})."
    )
