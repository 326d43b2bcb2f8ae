"""What happens when one acid meets one alkali: the amounts, the salt, and whether it is one step with one heat.

The heat balance needs a pair whose every portion gives the same heat per mole until the end-point. Acids with
several protons, fizzing alkalis and pairs that leave a solid do not; the reason is stated in words.
"""

import math
from dataclasses import dataclass
from typing import Final

from station.chemistry.formula import ions_formula
from station.chemistry.reagent import Kind, Reagent

_LEAVES_A_SOLID: Final = frozenset(
    (cation, anion)
    for cation in ("Ca", "Ba")
    for anion in ("SO4", "C2O4", "C4H4O6", "C6H5O7", "PO4")
    if (cation, anion) != ("Ba", "C6H5O7")
)
"""Salts of the alkalis and acids here that come out of solution at school concentrations (solubility rules)."""

_NUMBERS: Final = ("no", "one", "two", "three")


class WrongPairError(ValueError):
    """The two reagents cannot be the acid and the alkali of a neutralisation; the message says why."""


@dataclass(frozen=True, slots=True)
class Neutralisation:
    """One acid and one alkali, per formula unit.

    ``acid_protons`` and ``alkali_hydroxides`` are the stoichiometry; ``salt`` is the dissolved product named by
    its ions and ``equivalents_per_salt`` how many moles of water form with one mole of it. ``refusal`` says why
    the heat balance cannot treat the pair as one step; it is empty when it can. ``remark`` is worth knowing all
    the same.
    """

    acid: Reagent
    alkali: Reagent
    acid_protons: int
    alkali_hydroxides: int
    salt: str
    equivalents_per_salt: int
    refusal: str
    remark: str

    @property
    def single_step(self) -> bool:
        """True when every mole of water up to the end-point comes with the same, known heat."""
        return not self.refusal

    @property
    def acid_per_alkali(self) -> float:
        """Moles of acid that one mole of alkali neutralises."""
        return self.alkali_hydroxides / self.acid_protons


def neutralisation_steps(acid: Reagent, alkali: Reagent) -> Neutralisation:
    """Describe the neutralisation of an acid by an alkali.

    Raises ``WrongPairError`` when the first is no acid or the second no alkali, naming the likely mix-up.
    """
    if acid.is_alkali and alkali.is_acid:
        raise WrongPairError(f"the two are swapped: {alkali.name} is the acid, {acid.name} the alkali")
    if not acid.is_acid or acid.anion is None:
        raise WrongPairError(f"{acid.name} is not an acid but {_article(acid.kind)}")
    if not alkali.is_alkali or alkali.cation is None:
        raise WrongPairError(f"{alkali.name} is not an alkali but {_article(alkali.kind)}")
    return Neutralisation(
        acid,
        alkali,
        acid.protons,
        alkali.hydroxides,
        ions_formula(alkali.cation, acid.anion),
        math.lcm(alkali.cation.charge, -acid.anion.charge),
        _refusal(acid, alkali),
        _remark(acid, alkali),
    )


def _article(kind: Kind) -> str:
    return f"{'an' if kind.value[0] in 'aeiou' else 'a'} {kind.value}"


def _refusal(acid: Reagent, alkali: Reagent) -> str:
    if alkali.gives_gas:
        return (
            f"{alkali.name} gives off carbon dioxide, which carries heat and water vapour away, so the heat "
            "per mole is not one known value"
        )
    if acid.anion and alkali.cation and (alkali.cation.formula, acid.anion.formula) in _LEAVES_A_SOLID:
        return f"{acid.name} with {alkali.name} leaves a solid, whose heat of formation is not modelled"
    if acid.protons > 1:
        return (
            f"{acid.name} gives up its {_NUMBERS[acid.protons]} protons in {_NUMBERS[acid.protons]} steps, "
            "each with its own heat, so the rising part is not one straight process"
        )
    return ""


def _remark(acid: Reagent, alkali: Reagent) -> str:
    if alkali.sparingly_soluble:
        return f"{alkali.name} dissolves so little that the temperature will hardly change"
    if acid.kind is Kind.WEAK_ACID and alkali.kind is Kind.WEAK_ALKALI:
        return "weak acid with weak alkali: the reaction is not quite complete, which rounds the top of the graph"
    return ""
