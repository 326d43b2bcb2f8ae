"""Benches' results for tests of the class result: of given numbers."""

from typing import Any

Json = dict[str, Any]


Known = tuple[float, float] | None


def bench(name: str, value: float, u: float, *, enthalpy: Known = None, acid: Known = None, **more: Any) -> Json:
    """A bench whose heat balance found this end-point in cm³ (and enthalpy in kJ/mol), straight lines 3 cm³ less."""
    heat = {
        "end_point_cm3": value,
        "u_end_point_cm3": u,
        "interval_95_cm3": [value - 2 * u, value + 2 * u],
        "enthalpy_kj_mol": None if enthalpy is None else enthalpy[0],
        "u_enthalpy_kj_mol": None if enthalpy is None else enthalpy[1],
        "acid_mol_dm3": None if acid is None else acid[0],
        "u_acid_mol_dm3": None if acid is None else acid[1],
    }
    lines = {**heat, "end_point_cm3": value - 3.0, "enthalpy_kj_mol": None}
    return {
        "name": name,
        "plan": "the plan",
        "kind": "portions",
        "shared": 0.0,
        "repeats": 2,
        "mean": {"straight_lines": lines, "heat_balance": heat},
        "refused": {},
        "notes": [],
        "curve": [[0, 0.0, 0.0], [1, 4.0, 1.5]],
        **more,
    }
