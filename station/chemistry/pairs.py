"""What happens when one acid meets one alkali: the amounts, the salt, and whether it is one step with one heat.

The heat balance needs a pair whose every portion gives the same heat per mole until the end-point. Acids with
several protons, fizzing alkalis and pairs that leave a solid do not; the reason is stated in words.
"""

import math
from dataclasses import dataclass
from types import MappingProxyType
from typing import Final

from station.chemistry.reagent import Kind, Reagent, ions_formula
from station.words import Message, plain, say

_LEAVES_A_SOLID: Final = frozenset(
    (cation, anion)
    for cation in ("Ca", "Ba")
    for anion in ("SO4", "C2O4", "C4H4O6", "C6H5O7", "PO4")
    if (cation, anion) != ("Ba", "C6H5O7")
)
"""Salts of the alkalis and acids here that come out of solution at school concentrations (solubility rules)."""

PRECIPITATION_KJ_MOL: Final = MappingProxyType({("Ba", "SO4"): -26.3})
"""Ba²⁺ + SO₄²⁻ → BaSO₄: -1473.2 + 537.6 + 909.3 kJ/mol (Wagman et al., 1982). Of the others no heat is known here."""

_KINDS: Final = MappingProxyType(
    {
        Kind.STRONG_ACID: say("kind-strong-acid"),
        Kind.WEAK_ACID: say("kind-weak-acid"),
        Kind.HYDROXIDE: say("kind-hydroxide"),
        Kind.WEAK_ALKALI: say("kind-weak-alkali"),
        Kind.CARBONATE: say("kind-carbonate"),
        Kind.HYDROGENCARBONATE: say("kind-hydrogencarbonate"),
        Kind.SALT: say("kind-salt"),
        Kind.NON_ELECTROLYTE: say("kind-non-electrolyte"),
    }
)
"""Kinds of reagents with their article."""


class WrongPairError(ValueError):
    """The two reagents cannot be the acid and the alkali of a neutralisation; the message says why."""


@dataclass(frozen=True, slots=True)
class Neutralisation:
    """One acid and one alkali, per formula unit.

    ``acid_protons`` and ``alkali_hydroxides`` are the stoichiometry; ``salt`` is the dissolved product named by
    its ions and ``equivalents_per_salt`` how many moles of water form with one mole of it. ``refusal`` says why
    the heat balance cannot treat the pair as one step; it is empty when it can. ``remark``, a whole sentence,
    is worth knowing all the same. ``leaves_a_solid``: the salt comes out of solution.
    """

    acid: Reagent
    alkali: Reagent
    acid_protons: int
    alkali_hydroxides: int
    salt: str
    equivalents_per_salt: int
    refusal: Message
    remark: Message
    leaves_a_solid: bool = False

    @property
    def precipitation_kj_mol(self) -> float:
        """Heat of the salt's coming out of solution, per mole of water formed; 0 when it stays.

        Raises ``ValueError`` where that heat is not known.
        """
        if not self.leaves_a_solid or self.alkali.cation is None or self.acid.anion is None:
            return 0.0
        found = PRECIPITATION_KJ_MOL.get((self.alkali.cation.formula, self.acid.anion.formula))
        if found is None:
            raise ValueError(self.refusal)
        return found / self.equivalents_per_salt

    @property
    def single_step(self) -> bool:
        """True when every mole of water up to the end-point comes with the same, known heat."""
        return not self.refusal

    @property
    def acid_per_alkali(self) -> float:
        """Moles of acid that one mole of alkali neutralises."""
        return self.alkali_hydroxides / self.acid_protons

    @property
    def equation(self) -> str:
        """The reaction up to the end-point in formulae, in whole numbers: ``"H2SO4 + 2 NaOH → Na2SO4 + 2 H2O"``."""
        equivalents = math.lcm(self.acid_protons, self.alkali_hydroxides, self.equivalents_per_salt)
        acids, alkalis = equivalents // self.acid_protons, equivalents // self.alkali_hydroxides
        formed = [(equivalents // self.equivalents_per_salt, self.salt)]
        if self.alkali.gives_gas:
            formed += [(alkalis, "H2O"), (alkalis, "CO2")]
        elif self.alkali.kind is not Kind.WEAK_ALKALI:
            formed.append((equivalents, "H2O"))
        # Water of crystallisation takes no part in it.
        mixed = [(acids, self.acid.formula.split("·")[0]), (alkalis, self.alkali.formula.split("·")[0])]
        return " → ".join(" + ".join(_counted(*each) for each in side) for side in (mixed, formed))


def neutralisation_steps(acid: Reagent, alkali: Reagent) -> Neutralisation:
    """Describe the neutralisation of an acid by an alkali.

    Raises ``WrongPairError`` when the first is no acid or the second no alkali, naming the likely mix-up.
    """
    if acid.is_alkali and alkali.is_acid:
        raise WrongPairError(say("refusal-pair-swapped", acid=alkali.name, alkali=acid.name))
    if not acid.is_acid or acid.anion is None:
        raise WrongPairError(say("refusal-not-an-acid", reagent=acid.name, kind=_KINDS[acid.kind]))
    if not alkali.is_alkali or alkali.cation is None:
        raise WrongPairError(say("refusal-not-an-alkali", reagent=alkali.name, kind=_KINDS[alkali.kind]))
    return Neutralisation(
        acid,
        alkali,
        acid.protons,
        alkali.hydroxides,
        ions_formula(alkali.cation, acid.anion),
        math.lcm(alkali.cation.charge, -acid.anion.charge),
        _refusal(acid, alkali),
        _remark(acid, alkali),
        _leaves_a_solid(acid, alkali),
    )


def _counted(count: int, formula: str) -> str:
    return formula if count == 1 else f"{count} {formula}"


def _refusal(acid: Reagent, alkali: Reagent) -> Message:
    if alkali.gives_gas:
        return say("refusal-pair-gas", alkali=alkali.name)
    if _leaves_a_solid(acid, alkali):
        return say("refusal-pair-solid", acid=acid.name, alkali=alkali.name)
    if acid.protons > 1:
        return say("refusal-pair-protons", acid=acid.name, protons=acid.protons)
    return plain("")


def _leaves_a_solid(acid: Reagent, alkali: Reagent) -> bool:
    ions = acid.anion and alkali.cation and (alkali.cation.formula, acid.anion.formula)
    return ions in _LEAVES_A_SOLID


def _remark(acid: Reagent, alkali: Reagent) -> Message:
    if alkali.sparingly_soluble:
        return say("warning-pair-hardly-dissolves", alkali=alkali.name)
    if acid.kind is Kind.WEAK_ACID and alkali.kind is Kind.WEAK_ALKALI:
        return say("warning-pair-weak-both")
    return plain("")
