"""What a reagent's label says, as a weighed substance or as a solution of some concentration (CLP, GHS).

The limits stand in ``hazards_table``; molar concentrations become mass percent by the density of the solution at
20 °C. Labels follow Articles 26 and 27 of Regulation (EC) No 1272/2008: what a graver statement or pictogram says
already is not said again. A label helps a risk assessment and does not replace it.
"""

from dataclasses import dataclass
from typing import Final, NamedTuple

from station.chemistry.hazards_table import CATEGORIES, GENERIC, HAZARDS, Category, Entry, Limits
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import mass_fraction


class Statement(NamedTuple):
    """A hazard statement: code and text."""

    code: str
    text: str


@dataclass(frozen=True, slots=True)
class Label:
    """Categories, statements, pictogram codes and signal word; all empty when it is not classified.

    ``mass_percent`` is that of the solution, None for the substance itself. ``source`` names the classification.
    """

    categories: tuple[str, ...]
    statements: tuple[Statement, ...]
    pictograms: tuple[str, ...]
    signal: str | None
    mass_percent: float | None
    source: str

    @property
    def is_classified(self) -> bool:
        """Whether any statement applies."""
        return bool(self.statements)


_SKIN_AND_EYE: Final = frozenset({"skin", "eye"})


def substance_label(reagent: Reagent) -> Label:
    """Label of the reagent as it is weighed."""
    entry = HAZARDS[reagent.name]
    burns = any(CATEGORIES[each].code == "H314" for each in entry.substance)
    # What burns the skin counts as damaging the eyes (Annex I, 3.3).
    return _label((*entry.substance, *(("Eye Dam. 1",) if burns else ())), None, entry.source)


def solution_label(reagent: Reagent, concentration_mol_dm3: float) -> Label:
    """Label of a solution in water.

    A concentration that no solution can have gets the label of the substance. Raises ``ValueError`` when it is not
    above 0 mol/dm³.
    """
    if not concentration_mol_dm3 > 0:
        raise ValueError(f"a concentration must be above 0, not {concentration_mol_dm3} mol/dm³")
    entry = HAZARDS[reagent.name]
    try:
        percent = 100 * mass_fraction(reagent, concentration_mol_dm3)
    except ValueError:
        return substance_label(reagent)
    reached = _reached(_limits(entry), percent)
    if entry.as_hydroxide:
        reached |= _as_sodium_hydroxide(reagent.hydroxides * concentration_mol_dm3)
    return _label(tuple(reached), percent, entry.source)


def _as_sodium_hydroxide(hydroxide_mol_dm3: float) -> set[str]:
    sodium_hydroxide = find_reagent("sodium hydroxide")
    try:
        return set(solution_label(sodium_hydroxide, hydroxide_mol_dm3).categories)
    except ValueError:
        return set(substance_label(sodium_hydroxide).categories)


def _limits(entry: Entry) -> Limits:
    """The entry's own limits, and the generic ones of the families that it leaves open."""
    own = {CATEGORIES[category].family for _, category in entry.limits}
    generic = [limit for category in entry.substance for limit in GENERIC.get(category, ())]
    return (*entry.limits, *(limit for limit in generic if CATEGORIES[limit[1]].family not in own))


_ROUNDING: Final = 1e-9


def _reached(limits: Limits, percent: float) -> set[str]:
    return {category for limit, category in limits if percent >= limit - _ROUNDING}


def _label(categories: tuple[str, ...], percent: float | None, source: str) -> Label:
    gravest: dict[str, str] = {}
    for name, category in CATEGORIES.items():
        if name in categories:
            gravest.setdefault(category.family, name)
    kept = [CATEGORIES[name] for name in gravest.values()]
    codes = {each.code for each in kept}
    said = [each for each in kept if not _is_said_by(each.code, codes)]
    return Label(
        tuple(gravest.values()),
        tuple(Statement(each.code, each.text) for each in said),
        _pictograms(said),
        next((word for word in ("Danger", "Warning") if word in {each.signal for each in said}), None),
        percent,
        source,
    )


def _is_said_by(code: str, codes: set[str]) -> bool:
    """Whether a graver statement covers this one: burns the eyes, long lasting harm the short one."""
    return (code in {"H318", "H319"} and "H314" in codes) or (code == "H400" and "H410" in codes)


def _pictograms(said: list[Category]) -> tuple[str, ...]:
    """Codes in order; the exclamation mark yields to the skull, and for skin and eyes to corrosion (Article 26)."""
    codes = {each.pictogram for each in said if each.pictogram}
    if "GHS05" in codes and all(each.family in _SKIN_AND_EYE for each in said if each.pictogram == "GHS07"):
        codes.discard("GHS07")
    if "GHS06" in codes:
        codes.discard("GHS07")
    return tuple(sorted(codes))
