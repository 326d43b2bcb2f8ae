"""Solutions that are stronger than these practicals need: staff confirm each, and nothing ever suggests one."""

from typing import Final

from station.practical.plan import Plan, PortionsPlan

STRONG_MOL_DM3: Final = 1.0
"""Above this staff must confirm a solution against the school's risk assessment; a practice of this project."""


def solutions_of(plan: Plan) -> list[tuple[str, float]]:
    """Return name and mol/dm³ of each solution whose concentration the plan says, also what only staff may know."""
    if isinstance(plan, PortionsPlan):
        acid, alkali = plan.acid, plan.alkali
        named = [
            (acid.name, acid.concentration_mol_dm3 or acid.prepared_mol_dm3),
            (alkali.name, alkali.concentration_mol_dm3),
        ]
    else:
        named = [(each.name, each.concentration_mol_dm3) for each in (plan.liquid, plan.addition)]
    return [(name, mol_dm3) for name, mol_dm3 in named if mol_dm3 is not None]


def strong_solutions(plan: Plan) -> list[tuple[str, float]]:
    """Return those above 1.0 mol/dm³."""
    return [(name, mol_dm3) for name, mol_dm3 in solutions_of(plan) if mol_dm3 > STRONG_MOL_DM3]


def strong_words(solutions: list[tuple[str, float]]) -> list[str]:
    """Return what to say of each of these solutions that is above 1.0 mol/dm³."""
    return [
        f"Above {STRONG_MOL_DM3} mol/dm³: {name} ({mol_dm3:g} mol/dm³). That is stronger than this practical needs: "
        "staff must confirm it against the school's risk assessment."
        for name, mol_dm3 in solutions
        if mol_dm3 > STRONG_MOL_DM3
    ]
