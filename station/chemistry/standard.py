"""How well the strength of a solution is known as it is made up, and by how much titrating it betters that.

Tolerances are read as rectangular limits (u = a/√3, GUM 4.3.7): measuring cylinder of 2000 cm³ class B ±20 cm³ (ASTM
E1272), burette of 50 cm³ class B ±0.1 cm³ (ISO 385), pipette of 25 cm³ class B ±0.06 cm³ (ISO 648). How pure stocks are
and how well a drop is seen is common practice, no source. The titration is that of EURACHEM/CITAC, Quantifying
Uncertainty in Analytical Measurement, example A2, with school glassware.
"""

import math
from dataclasses import dataclass
from typing import Final

from station.chemistry.pairs import neutralisation_steps
from station.chemistry.preparation import Stock, is_weighed, usual_stock
from station.chemistry.reagent import Kind, Reagent

PHTHALATE_G_MOL: Final = 204.22
"""Potassium hydrogenphthalate, C8H5KO4 (EURACHEM/CITAC example A2: 204.2212)."""
TITRE_CM3: Final = 20.0
"""What the burette gives: well within its 50 cm³."""
TAKEN_CM3: Final = 25.0
"""Acid that is pipetted for a titration by the standardised alkali."""
U_STOCK: Final = 0.02
"""Relative: pellets hold water, and "36 %" is sold as 35 to 38 %."""
U_SOLID: Final = 0.01
"""Relative: another solid of laboratory grade, 98 % or more."""
_U_MADE_UP: Final = 20.0 / 2000.0 / math.sqrt(3)
_U_WEIGHED_G: Final = math.sqrt(2) * 0.01 / math.sqrt(12)
"""Two readings of a balance that shows 0.01 g."""
_U_TITRE_CM3: Final = math.hypot(0.1, 0.05) / math.sqrt(3)
"""The burette, and one drop at the change of colour."""
_U_TAKEN_CM3: Final = 0.06 / math.sqrt(3)
_UNCERTAIN: Final = frozenset({"reagent-phosphoric-acid"})
"""Acids that phenolphthalein does not show to a whole number of protons."""


@dataclass(frozen=True, slots=True)
class Standardising:
    """Titrating a strong alkali against a weighed standard: mass for 20 cm³, and what the result is worth."""

    mass_g: float
    factor_g_cm3: float
    """mol/dm³ = factor × mass / volume."""
    u_relative: float


def u_as_made(reagent: Reagent, stock: Stock | None = None) -> float | None:
    """Return the relative standard uncertainty of a strength as made up; None where only the school's bottle knows."""
    usual = usual_stock(reagent)
    if stock is not None and stock != usual:
        return None
    loose = not is_weighed(reagent) or reagent.kind is Kind.HYDROXIDE
    return math.hypot(U_STOCK if loose else U_SOLID, _U_MADE_UP)


def can_be_standardised(alkali: Reagent) -> bool:
    """Whether it is a strong alkali that phenolphthalein shows."""
    return alkali.kind is Kind.HYDROXIDE and not alkali.sparingly_soluble


def against_phthalate(alkali: Reagent, mol_dm3: float) -> Standardising:
    """Return how a strong alkali of about that strength is standardised."""
    phthalate_mol = alkali.hydroxides * mol_dm3 * TITRE_CM3 / 1000.0
    mass_g = phthalate_mol * PHTHALATE_G_MOL
    u_relative = math.hypot(_U_WEIGHED_G / mass_g, _U_TITRE_CM3 / TITRE_CM3)
    return Standardising(mass_g, 1000.0 / PHTHALATE_G_MOL / alkali.hydroxides, u_relative)


def by_the_alkali(acid: Reagent, acid_mol_dm3: float, alkali: Reagent, alkali_mol_dm3: float) -> float | None:
    """Return the relative u of an acid of which 25.0 cm³ are titrated by the standardised alkali; None for no way."""
    if not acid.is_acid or acid.name.id in _UNCERTAIN or not can_be_standardised(alkali):
        return None
    titre_cm3 = TAKEN_CM3 * acid_mol_dm3 / alkali_mol_dm3 / neutralisation_steps(acid, alkali).acid_per_alkali
    if not 10.0 <= titre_cm3 <= 50.0:
        return None
    volumes = math.hypot(_U_TITRE_CM3 / titre_cm3, _U_TAKEN_CM3 / TAKEN_CM3)
    return math.hypot(volumes, against_phthalate(alkali, alkali_mol_dm3).u_relative)
