"""How to make up a solution: what to weigh or measure, in what order, and what its label says.

Stock strengths come from a laboratory table of stock reagents (hydrochloric acid 36 %, nitric acid 70 %, sulfuric
acid 98 %, glacial ethanoic acid 99.5 %); phosphoric acid and ammonia are from memory. A bottle's own label counts:
`Stock.mol_dm3` can be given. Order of mixing and cautions are common practice, no source.
"""

import math
from dataclasses import dataclass, replace
from types import MappingProxyType
from typing import Final

from station.chemistry.hazards import Label, Statement, solution_label, stored_label, substance_label
from station.chemistry.reagent import Kind, Reagent
from station.words import Message, join, say

# Glassware that portions are measured with, and the standard uncertainty of one portion.
#
# Tolerances: ASTM E1272 (measuring cylinders), ISO 385 (burettes), ISO 835 (graduated pipettes), read as
# rectangular limits (u = a/√3, GUM 4.3.7). What a school class adds by reading and draining is common
# practice, no source; a plan can always state its own `u_volume_cm3`.


@dataclass(frozen=True)
class Glassware:
    """One way of measuring a portion; `u_portion_cm3` is one standard deviation of one portion in cm³."""

    name: Message
    u_portion_cm3: float


CYLINDER: Final = Glassware(say("glassware-measuring-cylinder"), 0.3)
"""10 cm³ class B ±0.2 (ASTM E1272), with reading and draining."""
GLASSWARE: Final[MappingProxyType[str, Glassware]] = MappingProxyType(
    {
        "measuring cylinder": CYLINDER,
        # 10 cm³ class B ±0.1 (ISO 835), a/√3
        "graduated pipette": Glassware(say("glassware-graduated-pipette"), 0.06),
        # common practice, no source
        "syringe": Glassware(say("glassware-syringe"), 0.1),
        # two readings of a 50 cm³ class B burette, ±0.1 (ISO 385) over the whole scale
        "burette": Glassware(say("glassware-burette"), 0.05),
        # portions weighed to 0.01 g, with drops left behind: common practice, no source
        "balance": Glassware(say("glassware-balance"), 0.02),
    }
)
"""By the name that a plan gives it."""
DEFAULT_U_PORTION_CM3 = 0.1


def glassware_of(name: str) -> Glassware:
    """Return the glassware that a plan calls so. Raises ValueError naming what is known when it is not in the table."""
    ware = GLASSWARE.get(name.strip().lower())
    if ware is None:
        known = join((each.name for each in GLASSWARE.values()), "list-comma")
        raise ValueError(say("problem-unknown-glassware", typed=repr(name), known=known))
    return ware


def u_portion_cm3(name: str | None) -> float:
    """Return the standard uncertainty (cm³) of one portion measured with the named glassware.

    Raises ValueError naming what is known when the name is not in the table.
    """
    return DEFAULT_U_PORTION_CM3 if name is None else glassware_of(name).u_portion_cm3


VESSELS_CM3: Final = (100.0, 250.0, 500.0, 1000.0, 2000.0, 2500.0, 5000.0, 10000.0)
"""Bottles and canisters that schools have: common practice, no source."""
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
        "reagent-hydrochloric-acid": Stock(11.65, say("stock-hydrochloric-acid")),
        "reagent-nitric-acid": Stock(15.8, say("stock-nitric-acid")),
        "reagent-sulfuric-acid": Stock(18.4, say("stock-sulfuric-acid")),
        "reagent-ethanoic-acid": Stock(17.4, say("stock-ethanoic-acid")),
        "reagent-phosphoric-acid": Stock(14.7, say("stock-phosphoric-acid")),
        "reagent-ammonia": Stock(13.4, say("stock-ammonia")),
    }
)
"""By the `id` of the reagent's name, as in the next table."""
PURITIES: Final = MappingProxyType({"reagent-potassium-hydroxide": Stock(None, say("stock-potassium-hydroxide"), 0.85)})
"""Pellets of potassium hydroxide hold about 15 % of water: common practice, no source."""


REMARK: Final = 0.10
"""Within this share of a limit of the regulation a remark is made: a slip in making up crosses it."""


@dataclass(frozen=True, slots=True)
class NearLimit:
    """A limit of the regulation near a concentration, and the statements that hold from there on and not below."""

    mol_dm3: float
    statements: tuple[Statement, ...]


@dataclass(frozen=True, slots=True)
class Preparation:
    """One solution made up: `mass_g` of solid or `stock_cm3` of stock (the other None), and how.

    `label` is on the safe side: `near_edge` says that the stricter class is shown because a limit is near. What the
    bottle says in which all of it is stored is `store_label`.
    """

    reagent: Reagent
    concentration_mol_dm3: float
    volume_cm3: float
    stock: Stock
    mass_g: float | None
    stock_cm3: float | None
    steps: tuple[Message, ...]
    label: Label
    near_edge: bool
    stock_label: Label
    store_label: Label
    near: NearLimit | None


def usual_stock(reagent: Reagent) -> Stock:
    """Return what a school usually has of the reagent: a bottle of stock, or the solid."""
    return LIQUIDS.get(reagent.name.id) or PURITIES.get(reagent.name.id) or Stock(None, say("stock-solid"))


def is_weighed(reagent: Reagent) -> bool:
    """Whether a school has the reagent as a solid, which can be weighed into a cup."""
    return usual_stock(reagent).mol_dm3 is None


def safe_label(reagent: Reagent, concentration_mol_dm3: float) -> tuple[Label, bool]:
    """Return the label of a solution, and whether it is the stricter one because a limit is within 5 %.

    Raises ValueError when the concentration is not above 0 mol/dm³.
    """
    label = solution_label(reagent, concentration_mol_dm3)
    stricter = solution_label(reagent, concentration_mol_dm3 * (1 + NEAR_EDGE))
    if stricter.categories == label.categories:
        return label, False
    return replace(stricter, mass_percent=label.mass_percent), True


def near_limit(reagent: Reagent, concentration_mol_dm3: float) -> NearLimit | None:
    """Return the lowest limit of the regulation within 10 % of a concentration, if there is one."""
    low, high = concentration_mol_dm3 * (1 - REMARK), concentration_mol_dm3 * (1 + REMARK)
    below = solution_label(reagent, low)
    if solution_label(reagent, high).statements == below.statements:
        return None
    for _ in range(30):
        middle = (low + high) / 2
        low, high = (middle, high) if solution_label(reagent, middle).statements == below.statements else (low, middle)
    new = tuple(each for each in solution_label(reagent, high).statements if each not in below.statements)
    return NearLimit(high, new)


def vessels(volume_cm3: float) -> tuple[int, float]:
    """Return how many vessels of which size (cm³) hold a solution: common sizes, the smallest that does."""
    size_cm3 = next((each for each in VESSELS_CM3 if each >= volume_cm3), VESSELS_CM3[-1])
    return math.ceil(volume_cm3 / size_cm3 - 1e-9), size_cm3


def amount_text(amount: float) -> str:
    """Write a mass or volume to take, in g or cm³: three figures, the same wherever it is told."""
    return f"{amount:.3g}" if amount < 1000 else f"{amount:.0f}"


def prepare(
    reagent: Reagent, concentration_mol_dm3: float, volume_cm3: float, stock: Stock | None = None
) -> Preparation:
    """Return how to make up so much of a solution.

    Raises ValueError when volume or concentration is not above 0, the reagent hardly dissolves, or the stock is
    weaker than what is wanted.
    """
    if not (volume_cm3 > 0 and concentration_mol_dm3 > 0):
        raise ValueError(say("problem-volume-concentration"))
    if reagent.sparingly_soluble:
        raise ValueError(say("problem-hardly-dissolves", reagent=reagent.name, mol_dm3=f"{concentration_mol_dm3:g}"))
    stock = stock or usual_stock(reagent)
    mol = concentration_mol_dm3 * volume_cm3 / 1000.0
    label, near_edge = safe_label(reagent, concentration_mol_dm3)
    mass_g = stock_cm3 = None
    if stock.mol_dm3 is None:
        mass_g = mol * reagent.molar_mass_g_mol / stock.purity
        steps, stock_label = _weighed(reagent, mass_g, volume_cm3), substance_label(reagent)
    else:
        if stock.mol_dm3 < concentration_mol_dm3:
            stock_mol_dm3, mol_dm3 = f"{stock.mol_dm3:g}", f"{concentration_mol_dm3:g}"
            raise ValueError(say("problem-stock-too-weak", stock_mol_dm3=stock_mol_dm3, mol_dm3=mol_dm3))
        stock_cm3 = 1000.0 * mol / stock.mol_dm3
        stock_label = stored_label(reagent, stock.mol_dm3)
        steps = _diluted(reagent, stock, stock_cm3, volume_cm3)
    return Preparation(
        reagent=reagent,
        concentration_mol_dm3=concentration_mol_dm3,
        volume_cm3=volume_cm3,
        stock=stock,
        mass_g=mass_g,
        stock_cm3=stock_cm3,
        steps=steps,
        label=label,
        near_edge=near_edge,
        stock_label=stock_label,
        store_label=stored_label(reagent, concentration_mol_dm3, label),
        near=near_limit(reagent, concentration_mol_dm3),
    )


def _weighed(reagent: Reagent, mass_g: float, volume_cm3: float) -> tuple[Message, ...]:
    water_cm3 = f"{_rounded(0.7 * volume_cm3):g}"
    hot = reagent.kind is Kind.HYDROXIDE or (
        reagent.solution_enthalpy_kj_mol is not None and reagent.solution_enthalpy_kj_mol < HEATS
    )
    return (
        say("prepare-water", volume_cm3=water_cm3),
        say(
            "prepare-add-solid-slowly" if hot else "prepare-add-solid",
            mass_g=amount_text(mass_g),
            reagent=reagent.weighed_name,
        ),
        say(
            "prepare-cool-make-up" if hot else "prepare-room-temperature-make-up",
            volume_cm3=f"{volume_cm3:g}",
        ),
        say("prepare-label"),
    )


def _diluted(reagent: Reagent, stock: Stock, stock_cm3: float, volume_cm3: float) -> tuple[Message, ...]:
    mol_dm3 = stock.mol_dm3 or 0.0
    strong = mol_dm3 >= CONCENTRATED_MOL_DM3
    add = say(
        "prepare-add-strong-acid" if reagent.is_acid else "prepare-add-stock",
        volume_cm3=amount_text(stock_cm3),
        reagent=reagent.name,
        mol_dm3=f"{mol_dm3:g}",
    )
    if strong and reagent.formula == "H2SO4":
        add = join([add, say("prepare-mind-heat")])
    return (
        say(
            "prepare-water-fume-cupboard" if strong else "prepare-water",
            volume_cm3=f"{_rounded(0.7 * volume_cm3):g}",
        ),
        add,
        say("prepare-room-temperature-make-up", volume_cm3=f"{volume_cm3:g}"),
        say("prepare-label"),
    )


def _rounded(volume_cm3: float) -> float:
    """To one significant digit, or two from 100 on: a beaker's mark, not a measurement."""
    places = 1 if volume_cm3 < 100 else 2
    power = 10.0 ** (math.floor(math.log10(volume_cm3)) - places + 1)
    return round(volume_cm3 / power) * power
