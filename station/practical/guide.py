"""The quick guide before the start: what is in the cup, what is added, how dangerous it is, and how to clear up.

An acid that the class is to find is taken as strong as this plan could find it, whatever staff prepared: the label
is on the safe side, and it says nothing that the plan does not say already.
"""

import math
from collections.abc import Iterator
from typing import Any, Final

from station.chemistry.hazards import Label, solution_label, substance_label
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent
from station.practical.plan import OncePlan, Plan, PortionsPlan, number

Json = dict[str, Any]

FIRST: Final = "Your school's risk assessment and your teacher come first."
CAUTIONS: Final = (
    "Wear splash-proof eye protection.",
    "Use small volumes: no more than the plan says.",
    "Wipe up spills at once.",
    "Rinse splashes off your skin with plenty of water.",
    "Splash in the eye: rinse with water at once and call your teacher.",
    "Never pipette by mouth.",
    "Stand the cup in a beaker so that it cannot tip over.",
)
"""The usual ones: common practice in school laboratories, no source."""
SINK: Final = "Pour the mixture away as your school's rules say."
NO_SINK: Final = "Keep the mixture out of the sink: collect it where your teacher says."
COLLECTED: Final = frozenset({"Cu", "Ba"})
WARMS_KJ_MOL: Final = -20.0
"""A solid that gives out more than this as it dissolves warms a cup by tens of degrees at a few mol/dm³."""
OWN_SOLUTION: Final = "Water is not hazardous."


def guide(plan: Plan) -> Json:
    """Return the guide as JSON values: `in_cup`, `added`, `cautions`, `clearing_up` and `first`."""
    in_cup, added = _in_cup(plan), _added(plan)
    reagents = [find_reagent(each["name"]) for each in (*in_cup, *added) if each["name"] != "water"]
    return {
        "in_cup": in_cup,
        "added": added,
        "cautions": [*CAUTIONS, *_special_cautions(plan, (*in_cup, *added), reagents)],
        "clearing_up": _clearing_up(reagents),
        "first": FIRST,
    }


def _in_cup(plan: Plan) -> list[Json]:
    if isinstance(plan, PortionsPlan):
        acid = plan.acid
        assumed = None if acid.concentration_mol_dm3 is not None else most_mol_dm3(plan)
        return [_solution(acid.name, f"{number(acid.volume_cm3)} cm³", acid.concentration_mol_dm3, assumed)]
    liquid = plan.liquid
    amount = f"{number(liquid.volume_cm3)} cm³"
    if liquid.concentration_mol_dm3 is None:
        return [_substance("water", amount, None, OWN_SOLUTION)]
    return [_solution(liquid.name, amount, liquid.concentration_mol_dm3, None)]


def _added(plan: Plan) -> list[Json]:
    if isinstance(plan, PortionsPlan):
        amount = f"{plan.count} portions of {number(plan.portion_cm3)} cm³"
        return [_solution(plan.alkali.name, amount, plan.alkali.concentration_mol_dm3, None)]
    addition = plan.addition
    if addition.mass_g is not None:
        label = substance_label(find_reagent(addition.name))
        return [_substance(addition.name, f"{number(addition.mass_g)} g", label, _basis(label, None))]
    return [_solution(addition.name, f"{number(plan.portion_cm3)} cm³", addition.concentration_mol_dm3, None)]


def most_mol_dm3(plan: PortionsPlan) -> float:
    """The strongest acid whose end-point all portions together would reach, in mol/dm³, rounded up to be told."""
    try:
        per_alkali = neutralisation_steps(find_reagent(plan.acid.name), find_reagent(plan.alkali.name)).acid_per_alkali
    except WrongPairError:
        per_alkali = 1.0
    alkali_mmol = plan.count * plan.portion_cm3 * plan.alkali.concentration_mol_dm3
    return _rounded_up(alkali_mmol * per_alkali / plan.acid.volume_cm3)


def _rounded_up(value: float) -> float:
    """Up to the next of 1, 1.5, 2, 3, 4 … 10 times a power of ten."""
    power = 10.0 ** math.floor(math.log10(value))
    mantissa = value / power * (1 - 1e-9)
    step = 0.5 if mantissa <= 2.0 else 1.0
    return float(f"{math.ceil(mantissa / step) * step * power:.2g}")


def _solution(name: str, amount: str, mol_dm3: float | None, assumed_mol_dm3: float | None) -> Json:
    label = solution_label(find_reagent(name), mol_dm3 or assumed_mol_dm3 or 0.0)
    basis = _basis(label, assumed_mol_dm3)
    return {
        **_substance(name, amount, label, basis),
        "concentration_mol_dm3": mol_dm3,
        "assumed_mol_dm3": assumed_mol_dm3,
    }


def _substance(name: str, amount: str, label: Label | None, basis: str) -> Json:
    return {
        "name": name,
        "amount": amount,
        "concentration_mol_dm3": None,
        "pictograms": list(label.pictograms) if label else [],
        "signal": label.signal if label else None,
        "hazards": [each._asdict() for each in label.statements] if label else [],
        "basis": basis,
        "assumed_mol_dm3": None,
    }


def _basis(label: Label, assumed_mol_dm3: float | None) -> str:
    """One line: at what concentration, whether it is classified at all, and by which source."""
    if label.mass_percent is None:
        if not label.is_classified:
            return f"Not classified as hazardous ({label.source})."
        return f"As the pure substance ({label.source})."
    percent = f"{label.mass_percent:.3g}"
    if assumed_mol_dm3 is not None:
        most = f"Yours to find: taken as {assumed_mol_dm3:g} mol/dm³, the most this plan can find."
        if not label.is_classified:
            return f"{most} Not classified as hazardous at this concentration, {percent} % by mass ({label.source})."
        return f"{most} {percent} % by mass ({label.source})."
    if not label.is_classified:
        return f"Not classified as hazardous at this concentration, {percent} % by mass ({label.source})."
    return f"At this concentration, {percent} % by mass ({label.source})."


def _special_cautions(plan: Plan, listed: tuple[Json, ...], reagents: list[Reagent]) -> Iterator[str]:
    codes = {name: {each["code"] for each in named["hazards"]} for named in listed for name in [named["name"]]}
    for name, found in codes.items():
        if found & {"H314", "H318"}:
            yield f"Keep {name} off skin and eyes: it can do lasting harm. Ask about gloves."
    if any(found & {"H331", "H332", "H335"} for found in codes.values()):
        yield "Do not breathe in vapour or dust: keep bottles closed and the room aired."
    if isinstance(plan, OncePlan) and plan.addition.mass_g is not None:
        yield from _solid_cautions(find_reagent(plan.addition.name), codes[plan.addition.name])
    if any(each.gives_gas for each in reagents) and any(each.is_acid for each in reagents):
        yield "The mixture fizzes: add slowly, and leave a gap for the gas."


def _solid_cautions(solid: Reagent, codes: set[str]) -> Iterator[str]:
    yield f"Take {solid.name} with a spatula, never with your fingers."
    if "H272" in codes:
        yield f"Keep {solid.name} away from flames and from anything that burns."
    if solid.solution_enthalpy_kj_mol is not None and solid.solution_enthalpy_kj_mol < WARMS_KJ_MOL:
        yield "The cup can get hot: add the solid to the water, never water to the solid."


def _clearing_up(reagents: list[Reagent]) -> list[str]:
    collected = any(each.cation is not None and each.cation.formula in COLLECTED for each in reagents)
    return [
        "Take the probe out and rinse it with water.",
        NO_SINK if collected else SINK,
        "Rinse the cup and the glassware with water.",
        "Wipe the bench with a damp cloth.",
        "Wash your hands.",
    ]
