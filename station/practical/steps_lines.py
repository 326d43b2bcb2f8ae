"""Lines of a calculation that several practicals share, and how steps become JSON."""

from collections.abc import Sequence
from dataclasses import asdict, replace
from typing import Any, Final

from station.chemistry.worked import Number, Sheet, Step, put

Json = dict[str, Any]

WATER_J_G_C: Final = 4.18
"""What schools take for every dilute solution, with 1 g for each cm³ (AQA mark schemes)."""
SCHOOL: Final = "school way"


def as_json(steps: Sequence[Step]) -> list[Json]:
    """Return steps as JSON values, to six digits."""
    return [{**asdict(each), "value": float(f"{each.value:.6g}"), "u": float(f"{each.u:.3g}")} for each in steps]


def enthalpy_line(sheet: Sheet, heat_j: Number, amount_mol: Number, of_what: str) -> None:
    """Write down the enthalpy change per mole from the heat given out."""
    sheet.line(
        f"enthalpy change per mole of {of_what}",
        "ΔH = -q ÷ n ÷ 1000",
        f"ΔH = -({put(heat_j)} J) ÷ {put(amount_mol)} mol ÷ 1000",
        -heat_j / amount_mol / 1000,
        "kJ/mol",
    )


def own_result(sheet: Sheet, unit: str, value: float | None, u: float | None) -> None:
    """Let the newest line in that unit say what the result says; nothing where the result has none."""
    if value is None or u is None:
        return
    place = max(k for k, step in enumerate(sheet.steps) if step.unit == unit)
    sheet.steps[place] = replace(sheet.steps[place], value=value, u=u)
