"""Plans that lead into danger: what a plan mixes, what is refused of it, and what staff must know before.

Reading a plan refuses nothing, so that an old record opens whatever is in it: whoever begins, prepares or predicts
one asks here first.
"""

from typing import Final, NotRequired

from typing_extensions import TypedDict

from station.chemistry.hazards import Label, substance_label
from station.chemistry.preparation import safe_label
from station.chemistry.reagents import find_reagent
from station.chemistry.safety import STRONG_MOL_DM3, STRONGEST_MOL_DM3, Finding, Poured, findings, saturated_mol_dm3
from station.practical.guide import Hazard, statements_of
from station.practical.plan import Ingredient, Plan, PlanError
from station.words import Message, say

# The hazards of what a plan uses, each at its own concentration, on the safe side near a limit.


class LabelShown(TypedDict):
    """What a label says; `mass_percent` is that of the solution, null for the substance itself."""

    classified: bool
    categories: list[str]
    signal: Message | None
    pictograms: list[str]
    hazards: list[Hazard]
    mass_percent: float | None
    source: Message


class Hazardous(TypedDict):
    """A solution or a solid of a plan with its label.

    `assumed`: the class is to find the concentration, and it is taken as strong as this plan could find it.
    """

    name: str
    concentration_mol_dm3: float | None
    assumed: bool
    mass_g: float | None
    label: LabelShown
    near_edge: bool


class Warned(TypedDict):
    """What must be known before this is mixed."""

    id: str
    text: Message


class Problem(TypedDict):
    """What is wrong with a plan, beside the table and key concerned; `unknown`: the key is none of a plan's."""

    where: list[str]
    id: NotRequired[str]
    text: Message
    unknown: NotRequired[bool]


STRICTER: Final = say("hazard-near-a-limit")


def label_values(label: Label) -> LabelShown:
    """Return a label as answers have it."""
    return {
        "classified": label.is_classified,
        "categories": list(label.categories),
        "signal": label.signal,
        "pictograms": list(label.pictograms),
        "hazards": statements_of(label),
        "mass_percent": None if label.mass_percent is None else float(f"{label.mass_percent:.3g}"),
        "source": label.source,
    }


def hazards_of(plan: Plan) -> list[Hazardous]:
    """Return each solution and solid with its label.

    One that the plan does not tell is taken as strong as this plan could find it: `assumed`.
    """
    found = []
    for each in plan.ingredients:
        if each.mass_g is not None:
            found.append(_solid(each.name, each.mass_g))
        elif (mol_dm3 := each.told_mol_dm3 or each.most_mol_dm3) is not None:
            found.append(_solution_label(each.name, mol_dm3, assumed=each.told_mol_dm3 is None))
    return found


def _solution_label(name: str, mol_dm3: float, *, assumed: bool) -> Hazardous:
    label, near_edge = safe_label(find_reagent(name), mol_dm3)
    return {
        "name": name,
        "concentration_mol_dm3": mol_dm3,
        "assumed": assumed,
        "mass_g": None,
        "label": label_values(label),
        "near_edge": near_edge,
    }


def _solid(name: str, mass_g: float) -> Hazardous:
    solid = find_reagent(name)
    return {
        "name": solid.weighed_name,
        "concentration_mol_dm3": None,
        "assumed": False,
        "mass_g": mass_g,
        "label": label_values(substance_label(solid)),
        "near_edge": False,
    }


# Solutions that are stronger than these practicals need: staff confirm each, and nothing ever suggests one.


def solutions_of(plan: Plan) -> list[tuple[str, float]]:
    """Return name and mol/dm³ of each solution whose concentration the plan says, also what only staff may know."""
    return [(each.name, each.told_mol_dm3) for each in plan.ingredients if each.told_mol_dm3 is not None]


def strong_solutions(plan: Plan) -> list[tuple[str, float]]:
    """Return those above 1.0 mol/dm³."""
    return [(name, mol_dm3) for name, mol_dm3 in solutions_of(plan) if mol_dm3 > STRONG_MOL_DM3]


def strong_words(solutions: list[tuple[str, float]]) -> list[Message]:
    """Return what to say of each of these solutions that is above 1.0 mol/dm³."""
    return [
        say("warning-strong", limit_mol_dm3=STRONG_MOL_DM3, reagent=name, mol_dm3=f"{mol_dm3:g}")
        for name, mol_dm3 in solutions
        if mol_dm3 > STRONG_MOL_DM3
    ]


_OF_NAME: Final = frozenset({"gas", "no-solid", "anhydrous", "heat-unknown"})


def safe(plan: Plan) -> Plan:
    """Return the plan as it is. Raises PlanError with the first of its dangers, in one line."""
    found = [each for each in _findings(plan) if each.refuses]
    if found:
        text, more = found[0].text, len(found) - 1
        where = _where(plan, found[0])
        if more:
            raise PlanError(say("more-problems", first=text, count=more), where)
        raise PlanError(text, where, sentence=True)
    return plan


def dangers(plan: Plan) -> list[Problem]:
    """Return each reason for which the plan is refused, beside the key concerned: `where`, `id` and `text`."""
    return [
        {"where": list(_where(plan, each)), "id": each.id, "text": each.text, "unknown": False}
        for each in _findings(plan)
        if each.refuses
    ]


def safety_warnings(plan: Plan, expected_mol_dm3: float | None = None) -> list[Warned]:
    """Return what must be known before, each with `id` and `text`.

    `expected_mol_dm3` is taken for what is in the cup, where the plan does not tell its concentration.
    """
    named = [(each.name, each.told_mol_dm3) for each in plan.ingredients]
    if expected_mol_dm3 is not None:
        named[0] = (named[0][0], expected_mol_dm3)
    strong = strong_words([(name, mol_dm3) for name, mol_dm3 in named if mol_dm3 is not None])
    found = [("strong", text) for text in strong]
    found += [("beyond-plan", text) for text in _beyond(plan)]
    found += [(each.id, each.text) for each in _findings(plan) if not each.refuses]
    return [{"id": each, "text": text} for each, text in found]


def _beyond(plan: Plan) -> list[Message]:
    """Say where staff made up more than the plan can find: the students' label holds up to what it can."""
    return [
        say(
            "warning-beyond-plan",
            reagent=each.name,
            mol_dm3=f"{each.prepared_mol_dm3:g}",
            most_mol_dm3=f"{each.most_mol_dm3:g}",
        )
        for each in plan.ingredients
        if each.prepared_mol_dm3 is not None
        and each.most_mol_dm3 is not None
        and each.prepared_mol_dm3 > each.most_mol_dm3
    ]


def _findings(plan: Plan) -> tuple[Finding, ...]:
    """Refusals first. Where the cups of a plan differ, each is told once, of the cup in which most reacts."""
    found: dict[tuple[str, bool], Finding] = {}
    for cup in plan.every_cup:
        first, second = map(_poured, cup.ingredients)
        for each in findings(first, second):
            found.setdefault((each.id, each.of is first), each)
    return tuple(sorted(found.values(), key=lambda each: not each.refuses))


def _poured(each: Ingredient) -> Poured:
    """One that the plan does not tell is taken as strong as this plan could find it."""
    told, reagent = each.told_mol_dm3, each.reagent
    if told is None and each.most_mol_dm3 is not None and reagent is not None:
        saturated = saturated_mol_dm3(reagent, each.temperature_c)
        told = min(each.most_mol_dm3, STRONGEST_MOL_DM3, *([] if saturated is None else [saturated]))
    return Poured(
        reagent=reagent,
        volume_cm3=each.volume_cm3,
        mol_dm3=told,
        mass_g=each.mass_g,
        temperature_c=each.temperature_c,
        portions=each.portions,
    )


def _where(plan: Plan, finding: Finding) -> tuple[str, str]:
    cups = [cup.ingredients for cup in plan.every_cup]
    concerned = next((added for _, added in cups if finding.of == _poured(added)), cups[0][0])
    if finding.id in _OF_NAME:
        return concerned.table, "name"
    if concerned.mass_g is not None:
        return concerned.table, "mass_g"
    if concerned.prepared_mol_dm3 is not None:
        return concerned.table, "prepared_mol_dm3"
    return concerned.table, "concentration_mol_dm3"
