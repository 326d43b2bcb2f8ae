"""The hazards of what a plan uses, each at its own concentration, on the safe side near a limit."""

from typing import Any

from station.chemistry.hazards import Label, substance_label
from station.chemistry.preparation import safe_label
from station.chemistry.reagents import find_reagent
from station.practical.guide import most_mol_dm3
from station.practical.plan import OncePlan, Plan, PortionsPlan

Json = dict[str, Any]

STRICTER = "It is within 5 % of a limit of the regulation: the stricter class is shown."


def label_values(label: Label) -> Json:
    """Return a label as JSON values."""
    return {
        "classified": label.is_classified,
        "categories": list(label.categories),
        "signal": label.signal,
        "pictograms": list(label.pictograms),
        "hazards": [each._asdict() for each in label.statements],
        "mass_percent": None if label.mass_percent is None else float(f"{label.mass_percent:.3g}"),
        "source": label.source,
    }


def hazards_of(plan: Plan) -> list[Json]:
    """Return each solution and solid with its label.

    An acid that the plan does not tell is taken as strong as this plan could find it: `assumed`.
    """
    if isinstance(plan, OncePlan):
        named = [(each.name, each.concentration_mol_dm3) for each in (plan.liquid, plan.addition)]
        found = [_solution(name, mol_dm3, assumed=False) for name, mol_dm3 in named if mol_dm3 is not None]
        return found + ([] if plan.addition.mass_g is None else [_solid(plan.addition.name, plan.addition.mass_g)])
    return [_acid(plan), _solution(plan.alkali.name, plan.alkali.concentration_mol_dm3, assumed=False)]


def _acid(plan: PortionsPlan) -> Json:
    told = plan.acid.concentration_mol_dm3 or plan.acid.prepared_mol_dm3
    return _solution(plan.acid.name, told or most_mol_dm3(plan), assumed=told is None)


def _solution(name: str, mol_dm3: float, *, assumed: bool) -> Json:
    label, near_edge = safe_label(find_reagent(name), mol_dm3)
    return {
        "name": name,
        "concentration_mol_dm3": mol_dm3,
        "assumed": assumed,
        "mass_g": None,
        "label": label_values(label),
        "near_edge": near_edge,
    }


def _solid(name: str, mass_g: float) -> Json:
    label = label_values(substance_label(find_reagent(name)))
    return {
        "name": name,
        "concentration_mol_dm3": None,
        "assumed": False,
        "mass_g": mass_g,
        "label": label,
        "near_edge": False,
    }
