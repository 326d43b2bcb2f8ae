"""Lines of a calculation that several practicals share, and how steps become JSON."""

from collections.abc import Sequence
from dataclasses import asdict, replace
from typing import Any

from station.chemistry.heat import Number, Sheet, Step, nominal, put
from station.words import say

Json = dict[str, Any]


def as_json(steps: Sequence[Step]) -> list[Json]:
    """Return steps as JSON values, to six digits."""
    return [{**asdict(each), "value": float(f"{each.value:.6g}"), "u": float(f"{each.u:.3g}")} for each in steps]


def enthalpy_line(sheet: Sheet, heat_j: Number, amount_mol: Number, of_what: str, *, taken_in: bool = False) -> Number:
    """Write down the enthalpy change per mole from the heat given out, or from the heat taken in."""
    if taken_in:
        formula, working = "ΔH = q ÷ n ÷ 1000", f"ΔH = {put(heat_j)} J ÷ {put(amount_mol)} mol ÷ 1000"
    else:
        formula, working = "ΔH = -q ÷ n ÷ 1000", f"ΔH = -({put(heat_j)} J) ÷ {put(amount_mol)} mol ÷ 1000"
    result = (heat_j if taken_in else -heat_j) / amount_mol / 1000
    return sheet.line(say("step-enthalpy", of=of_what), formula, working, result, "kJ/mol")


def percentage_line(sheet: Sheet, division_c: float, change_c: Number) -> float:
    """Write down the percentage uncertainty of a temperature change, half a division for each reading; return it."""
    percent = abs(division_c / nominal(change_c)) * 100 if nominal(change_c) else 0.0
    sheet.line(
        say("step-percentage-school"),
        say("formula-percentage"),
        f"% = {division_c:g} °C ÷ {put(change_c)} °C × 100",
        percent,
        "%",
    )
    return percent


def own_result(sheet: Sheet, unit: str, value: float | None, u: float | None) -> None:
    """Let the newest line in that unit say what the result says; nothing where the result has none."""
    if value is None or u is None:
        return
    place = max(k for k, step in enumerate(sheet.steps) if step.unit == unit)
    sheet.steps[place] = replace(sheet.steps[place], value=value, u=u)
