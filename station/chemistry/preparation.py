"""How to make up a solution: what to weigh or measure, in what order, and what its label says.

Stock strengths come from a laboratory table of stock reagents (hydrochloric acid 36 %, nitric acid 70 %, sulfuric
acid 98 %, glacial ethanoic acid 99.5 %); phosphoric acid and ammonia are from memory. A bottle's own label counts:
`Stock.mol_dm3` can be given. Order of mixing and cautions are common practice, no source.
"""

import math
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final

from station.chemistry.hazards import Label, solution_label, substance_label
from station.chemistry.reagent import Kind, Reagent

NEAR_EDGE: Final = 0.05
"""Within this share of a limit of the regulation the stricter class is taken."""
CONCENTRATED_MOL_DM3: Final = 5.0
"""From here on a stock is handled as concentrated: common practice, no source."""
HEATS: Final = -20.0
"""kJ/mol: a solid that gives out more than this makes its solution hot."""


@dataclass(frozen=True, slots=True)
class Stock:
    """What one starts from: a solution of `mol_dm3`, or (None) the weighed substance with its `purity` by mass."""

    mol_dm3: float | None
    words: str
    purity: float = 1.0


LIQUIDS: Final = MappingProxyType(
    {
        "hydrochloric acid": Stock(11.65, "36 % by mass, 1.18 g/cm³"),
        "nitric acid": Stock(15.8, "70 % by mass, 1.42 g/cm³"),
        "sulfuric acid": Stock(18.4, "98 % by mass, 1.84 g/cm³"),
        "ethanoic acid": Stock(17.4, "glacial, 99.5 %, 1.05 g/cm³"),
        "phosphoric acid": Stock(14.7, "85 %, 1.70 g/cm³; from memory"),
        "ammonia": Stock(13.4, "25 %, 0.91 g/cm³; from memory"),
    }
)
PURITIES: Final = MappingProxyType({"potassium hydroxide": Stock(None, "pellets, 85 % by mass; from memory", 0.85)})
"""Pellets of potassium hydroxide hold about 15 % of water: common practice, no source."""


@dataclass(frozen=True, slots=True)
class Preparation:
    """One solution made up: `mass_g` of solid or `stock_cm3` of stock (the other None), and how.

    `label` is on the safe side: `near_edge` says that the stricter class is shown because a limit is near.
    """

    reagent: Reagent
    concentration_mol_dm3: float
    volume_cm3: float
    stock: Stock
    mass_g: float | None
    stock_cm3: float | None
    steps: tuple[str, ...]
    label: Label
    near_edge: bool
    stock_label: Label


def usual_stock(reagent: Reagent) -> Stock:
    """Return what a school usually has of the reagent: a bottle of stock, or the solid."""
    return LIQUIDS.get(reagent.name) or PURITIES.get(reagent.name) or Stock(None, "solid")


def safe_label(reagent: Reagent, concentration_mol_dm3: float) -> tuple[Label, bool]:
    """Return the label of a solution, and whether it is the stricter one because a limit is within 5 %.

    Raises ValueError when the concentration is not above 0 mol/dm³.
    """
    label = solution_label(reagent, concentration_mol_dm3)
    stricter = solution_label(reagent, concentration_mol_dm3 * (1 + NEAR_EDGE))
    if stricter.categories == label.categories:
        return label, False
    return replace(stricter, mass_percent=label.mass_percent), True


def prepare(
    reagent: Reagent, concentration_mol_dm3: float, volume_cm3: float, stock: Stock | None = None
) -> Preparation:
    """Return how to make up so much of a solution.

    Raises ValueError when volume or concentration is not above 0, the reagent hardly dissolves, or the stock is
    weaker than what is wanted.
    """
    if not (volume_cm3 > 0 and concentration_mol_dm3 > 0):
        raise ValueError("volume and concentration must be above 0")
    if reagent.sparingly_soluble:
        raise ValueError(f"{reagent.name} hardly dissolves: no solution of {concentration_mol_dm3:g} mol/dm³")
    stock = stock or usual_stock(reagent)
    mol = concentration_mol_dm3 * volume_cm3 / 1000.0
    label, near_edge = safe_label(reagent, concentration_mol_dm3)
    mass_g = stock_cm3 = None
    if stock.mol_dm3 is None:
        mass_g = mol * reagent.molar_mass_g_mol / stock.purity
        steps, stock_label = _weighed(reagent, mass_g, volume_cm3), substance_label(reagent)
    else:
        if stock.mol_dm3 < concentration_mol_dm3:
            raise ValueError(
                f"a stock of {stock.mol_dm3:g} mol/dm³ is weaker than the {concentration_mol_dm3:g} mol/dm³ wanted"
            )
        stock_cm3 = 1000.0 * mol / stock.mol_dm3
        stock_label = solution_label(reagent, stock.mol_dm3)
        steps = _diluted(reagent, stock, stock_cm3, volume_cm3)
    return Preparation(
        reagent, concentration_mol_dm3, volume_cm3, stock, mass_g, stock_cm3, steps, label, near_edge, stock_label
    )


def _weighed(reagent: Reagent, mass_g: float, volume_cm3: float) -> tuple[str, ...]:
    water = _rounded(0.7 * volume_cm3)
    hot = reagent.kind is Kind.HYDROXIDE or (
        reagent.solution_enthalpy_kj_mol is not None and reagent.solution_enthalpy_kj_mol < HEATS
    )
    add = (
        f"Add {mass_g:.3g} g of {reagent.name} slowly, a little at a time, stirring: it heats. Never water onto it."
        if hot
        else f"Add {mass_g:.3g} g of {reagent.name} and stir until it has dissolved."
    )
    make_up = f"Let it come to room temperature, then make up to {volume_cm3:g} cm³ with distilled water and mix well."
    if hot:
        make_up = (
            f"Let it cool to room temperature, then make up to {volume_cm3:g} cm³ with distilled water and mix well."
        )
    return (
        f"Put about {water:g} cm³ of cold distilled water into a large beaker.",
        add,
        make_up,
        "Close and label the bottle at once.",
    )


def _diluted(reagent: Reagent, stock: Stock, stock_cm3: float, volume_cm3: float) -> tuple[str, ...]:
    water = _rounded(0.7 * volume_cm3)
    strong = (stock.mol_dm3 or 0.0) >= CONCENTRATED_MOL_DM3
    put = f"Put about {water:g} cm³ of cold distilled water into a large beaker."
    if strong:
        put = f"In a fume cupboard: put about {water:g} cm³ of cold distilled water into a large beaker."
    add = f"Add {stock_cm3:.3g} cm³ of {reagent.name} ({stock.mol_dm3:g} mol/dm³) slowly, stirring: stock to water."
    if reagent.is_acid:
        add = (
            f"Add {stock_cm3:.3g} cm³ of {reagent.name} ({stock.mol_dm3:g} mol/dm³) slowly, stirring: acid to water, "
            "never water to acid."
        )
    if strong and reagent.name == "sulfuric acid":
        add += " Mind: it heats."
    return (
        put,
        add,
        f"Let it come to room temperature, then make up to {volume_cm3:g} cm³ with distilled water and mix well.",
        "Close and label the bottle at once.",
    )


def _rounded(volume_cm3: float) -> float:
    """To one significant digit, or two from 100 on: a beaker's mark, not a measurement."""
    places = 1 if volume_cm3 < 100 else 2
    power = 10.0 ** (math.floor(math.log10(volume_cm3)) - places + 1)
    return round(volume_cm3 / power) * power
