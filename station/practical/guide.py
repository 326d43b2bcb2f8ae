"""The quick guide before the start: what is in the cup, what is added, how dangerous it is, and how to clear up.

An acid that the class is to find is taken as strong as this plan could find it, whatever staff prepared: the label
is on the safe side, and it says nothing that the plan does not say already.
"""

from collections.abc import Iterable, Iterator
from typing import Final

from typing_extensions import TypedDict

from station.chemistry.hazards import Label, Statement, solution_label, substance_label
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent
from station.chemistry.safety import gas_of
from station.practical.plan import Ingredient, Plan
from station.words import Message, join, say


class Hazard(TypedDict):
    """A hazard statement of a label: its code and its text."""

    code: str
    text: Message


class GuideSubstance(TypedDict):
    """What is in the cup, or is added; `basis` says what its label rests on.

    `assumed_mol_dm3`: taken for a concentration that the students are to find.
    """

    name: str
    amount: Message
    concentration_mol_dm3: float | None
    pictograms: list[str]
    signal: Message | None
    hazards: list[Hazard]
    basis: Message
    assumed_mol_dm3: float | None


class Guide(TypedDict):
    """What to know before the start, and how to clear up; no `lid` where a gas forms."""

    in_cup: list[GuideSubstance]
    added: list[GuideSubstance]
    cautions: list[Message]
    clearing_up: list[Message]
    first: Message
    lid: bool


FIRST: Final = say("safety-school-first")
CAUTIONS: Final = (
    say("safety-eye-protection"),
    say("safety-small-volumes"),
    say("safety-wipe-spills"),
    say("safety-rinse-skin"),
    say("safety-splash-in-eye"),
    say("safety-no-mouth-pipetting"),
    say("safety-cup-in-beaker"),
)
"""The usual ones: common practice in school laboratories, no source."""
SINK: Final = say("clear-pour-away")
NO_SINK: Final = say("clear-collect")
COLLECTED: Final = frozenset({"Cu", "Ba"})
WARMS_KJ_MOL: Final = -20.0
"""A solid that gives out more than this as it dissolves warms a cup by tens of degrees at a few mol/dm³."""
OWN_SOLUTION: Final = say("safety-water")


def guide(plan: Plan) -> Guide:
    """Return the guide of a plan."""
    in_cup, added = (_listed(each) for each in plan.ingredients)
    reagents = [each.reagent for each in plan.ingredients if each.reagent is not None]
    return {
        "in_cup": [in_cup],
        "added": [added],
        "cautions": [*CAUTIONS, *_special_cautions(plan, (in_cup, added), reagents)],
        "clearing_up": _clearing_up(reagents),
        "first": FIRST,
        "lid": not _gas_forms(reagents),
    }


def _listed(each: Ingredient) -> GuideSubstance:
    if each.mass_g is not None:
        label = substance_label(find_reagent(each.name))
        return _substance(each.called, each.amount, label, _basis(label, None))
    if each.reagent is None:
        return _substance(each.name, each.amount, None, OWN_SOLUTION)
    return _solution(each.name, each.amount, each.mol_dm3, each.most_mol_dm3)


def _solution(name: str, amount: Message, mol_dm3: float | None, assumed_mol_dm3: float | None) -> GuideSubstance:
    label = solution_label(find_reagent(name), mol_dm3 or assumed_mol_dm3 or 0.0)
    basis = _basis(label, assumed_mol_dm3)
    return {
        **_substance(name, amount, label, basis),
        "concentration_mol_dm3": mol_dm3,
        "assumed_mol_dm3": assumed_mol_dm3,
    }


def _substance(name: str, amount: Message, label: Label | None, basis: Message) -> GuideSubstance:
    return {
        "name": name,
        "amount": amount,
        "concentration_mol_dm3": None,
        "pictograms": list(label.pictograms) if label else [],
        "signal": label.signal if label else None,
        "hazards": statements_of(label) if label else [],
        "basis": basis,
        "assumed_mol_dm3": None,
    }


def statements_of(label: Label) -> list[Hazard]:
    """Return the hazard statements of a label."""
    return statements_told(label.statements)


def statements_told(statements: Iterable[Statement]) -> list[Hazard]:
    """Return hazard statements as answers have them."""
    return [{"code": each.code, "text": each.text} for each in statements]


def _basis(label: Label, assumed_mol_dm3: float | None) -> Message:
    """One line: at what concentration, whether it is classified at all, and by which source."""
    if label.mass_percent is None:
        return say("basis-pure" if label.is_classified else "basis-not-classified", source=label.source)
    percent = f"{label.mass_percent:.3g}"
    if not label.is_classified:
        told = say("basis-solution-not-classified", percent=percent, source=label.source)
    elif assumed_mol_dm3 is not None:
        told = say("basis-percent", percent=percent, source=label.source)
    else:
        told = say("basis-solution", percent=percent, source=label.source)
    if assumed_mol_dm3 is None:
        return told
    return join([say("basis-yours-to-find", mol_dm3=f"{assumed_mol_dm3:g}"), told])


def _special_cautions(plan: Plan, listed: tuple[GuideSubstance, ...], reagents: list[Reagent]) -> Iterator[Message]:
    codes = {name: {each["code"] for each in named["hazards"]} for named in listed for name in [named["name"]]}
    for name, found in codes.items():
        if found & {"H314", "H318"}:
            yield say("caution-keep-off", reagent=name)
    if any(found & {"H331", "H332", "H335"} for found in codes.values()):
        yield say("caution-do-not-breathe")
    for each in plan.ingredients:
        if each.mass_g is not None:
            yield from _solid_cautions(find_reagent(each.name), codes[each.called])
    if _gas_forms(reagents):
        yield say("caution-no-lid")


def _gas_forms(reagents: list[Reagent]) -> bool:
    return len(reagents) == 2 and gas_of(*reagents) is not None


def _solid_cautions(solid: Reagent, codes: set[str]) -> Iterator[Message]:
    yield say("caution-spatula", reagent=solid.weighed_name)
    if "H272" in codes:
        yield say("caution-flames", reagent=solid.weighed_name)
    if solid.solution_enthalpy_kj_mol is not None and solid.solution_enthalpy_kj_mol < WARMS_KJ_MOL:
        yield say("caution-hot-cup")


def _clearing_up(reagents: list[Reagent]) -> list[Message]:
    collected = any(each.cation is not None and each.cation.formula in COLLECTED for each in reagents)
    return [
        say("clear-probe"),
        NO_SINK if collected else SINK,
        say("clear-rinse"),
        say("clear-wipe"),
        say("clear-hands"),
    ]
