"""What one practice is about: the plan with an unknown of its own, and the cup that goes with it."""

import random
from typing import Final

from station.bench.virtual.cup import CupParameters, nitric_acid_and_potassium_hydroxide, of_plan
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.practical.kinds import DEFAULT, ready_plan
from station.practical.kinds.kind import kind_of
from station.practical.plan import Plan
from station.words import Message, say

END_POINTS: Final = (0.42, 0.70)
"""The end-point lies somewhere in this part of what is poured in all: enough readings on either side."""


def practised(plan: Plan, draw: random.Random) -> tuple[Plan, CupParameters]:
    """Return the plan as it is practised, and the cup; one that cannot be practised gives way to the ready plan.

    A syringe holds no solid, and nobody can judge what nobody knows the heat of. The acid is drawn anew unless the plan
    tells the class what it is. Nobody has to show the results.
    """
    drawn = nitric_acid_and_potassium_hydroxide(draw.randrange(1 << 30))
    plan = plan if _can_be(plan) else ready_plan(DEFAULT)
    if plan.results == "when shown":
        plan = plan.model_copy(update={"results": "after own reading"})
    acid, alkali = plan.ingredients
    if acid.mol_dm3 is None and acid.reagent and alkali.reagent and alkali.mol_dm3:
        pair = neutralisation_steps(acid.reagent, alkali.reagent)
        end_point_cm3 = draw.uniform(*END_POINTS) * alkali.volume_cm3
        acid_mol_dm3 = round(end_point_cm3 * alkali.mol_dm3 * pair.acid_per_alkali / acid.volume_cm3, 3)
        part = getattr(plan, acid.table).model_copy(update={"prepared_mol_dm3": acid_mol_dm3})
        plan = plan.model_copy(update={acid.table: part})
    return plan, of_plan(drawn, plan.of_cup(1))


def truth(plan: Plan, cup: CupParameters) -> Message:
    """Say what was in the cup, or what mixing once gives."""
    acid, added = plan.ingredients
    if plan.pours_once:
        enthalpy = f"{cup.enthalpy_kj_mol:+.1f}"
        return say("practise-truth-once", liquid=acid.called, added=added.called, enthalpy_kj_mol=enthalpy)
    return say(
        "practise-truth",
        acid_name=acid.called,
        mol_dm3=f"{acid.told_mol_dm3 or 0.0:.3f}",
        end_point_cm3=f"{cup.end_point_cm3:.1f}",
    )


def _can_be(plan: Plan) -> bool:
    acid, alkali = plan.ingredients
    mixture = kind_of(plan).mixture(plan)
    if mixture is not None:
        return not mixture.dissolves  # a syringe holds no solid
    if plan.pours_once or acid.reagent is None or alkali.reagent is None or not alkali.mol_dm3:
        return False
    try:
        neutralisation_steps(acid.reagent, alkali.reagent)
    except WrongPairError:
        return False
    return True
