"""What the station knows of one reagent: a record with units, and no behaviour beyond reading it."""

from dataclasses import dataclass
from enum import StrEnum
from typing import NamedTuple

from station.chemistry.formula import Ion, ions_formula


class Kind(StrEnum):
    """What a reagent is in a school practical."""

    STRONG_ACID = "strong acid"
    WEAK_ACID = "weak acid"
    HYDROXIDE = "hydroxide"
    WEAK_ALKALI = "weak alkali"
    CARBONATE = "carbonate"
    HYDROGENCARBONATE = "hydrogencarbonate"
    SALT = "salt"
    NON_ELECTROLYTE = "non-electrolyte"


ACIDS = frozenset({Kind.STRONG_ACID, Kind.WEAK_ACID})
ALKALIS = frozenset({Kind.HYDROXIDE, Kind.WEAK_ALKALI, Kind.CARBONATE, Kind.HYDROGENCARBONATE})


class Ionisation(NamedTuple):
    """One proton leaving in water at 25 °C and no ionic strength.

    ``enthalpy_kj_mol`` and ``heat_capacity_j_mol_k`` are ΔrH° and ΔrCp° of HA ⇌ H⁺ + A⁻.
    """

    pk: float
    enthalpy_kj_mol: float
    heat_capacity_j_mol_k: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Reagent:
    """One reagent.

    ``formula`` is plain text (``"H2SO4"``; water of crystallisation after a middle dot).
    ``protons`` and ``hydroxides`` are what one formula unit gives or takes (a carbonate takes two).
    ``strong_protons`` leave completely in dilute solution; ``ionisations`` describes the others in order (of
    a weak alkali: its conjugate acid). ``solution_enthalpy_kj_mol`` is for the pure substance into much
    water at 25 °C, positive when the water cools; None where this table has no figure. ``sparingly_soluble``
    marks what cannot be made up to a useful concentration.
    """

    name: str
    formula: str
    molar_mass_g_mol: float
    kind: Kind
    sources: tuple[str, ...]
    aliases: tuple[str, ...] = ()
    cation: Ion | None = None
    anion: Ion | None = None
    protons: int = 0
    strong_protons: int = 0
    hydroxides: int = 0
    ionisations: tuple[Ionisation, ...] = ()
    solution_enthalpy_kj_mol: float | None = None
    u_solution_enthalpy_kj_mol: float | None = None
    sparingly_soluble: bool = False

    @property
    def is_acid(self) -> bool:
        """True when it can be the acid of a plan."""
        return self.kind in ACIDS

    @property
    def is_alkali(self) -> bool:
        """True when it can be the alkali of a plan (a carbonate counts: it neutralises, with gas)."""
        return self.kind in ALKALIS

    @property
    def gives_gas(self) -> bool:
        """True when it fizzes with an acid."""
        return self.kind in {Kind.CARBONATE, Kind.HYDROGENCARBONATE}

    @property
    def dissolves_cold(self) -> bool:
        """True when the pure substance cools the water it dissolves in."""
        return self.solution_enthalpy_kj_mol is not None and self.solution_enthalpy_kj_mol > 0

    @property
    def solute(self) -> str:
        """What it is in solution, named by its ions, the cation first (``"HCl"``, ``"Na2CO3"``, ``"NH3"``)."""
        if self.cation is None or self.anion is None or self.kind is Kind.WEAK_ALKALI:
            return self.formula
        return ions_formula(self.cation, self.anion)
