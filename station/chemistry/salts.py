"""Salts and urea, dissolving cold or warm, with their enthalpy of solution into much water at 25 °C.

Uni-univalent salts: Parker (1965). The others: differences of the formation enthalpies of Wagman et al.
(1982), whose rounding gives the stated u; that of magnesium sulfate heptahydrate is from memory. Urea: from memory
of the source, u widened for that. Hydrates are reagents of their own: what stands on the shelf is weighed.
"""

from typing import Final

from station.chemistry.alkalis import AMMONIUM, CALCIUM, LITHIUM, POTASSIUM, SODIUM
from station.chemistry.reagent import KUSTOV_2010, NBS_1982, PARKER_1965, Ion, Kind, Reagent
from station.words import Message, say

MAGNESIUM: Final = Ion("Mg", 2)
COPPER: Final = Ion("Cu", 2)
CHLORIDE: Final = Ion("Cl", -1)
NITRATE: Final = Ion("NO3", -1)
SULFATE: Final = Ion("SO4", -2)
ETHANOATE: Final = Ion("CH3COO", -1)


def _parker(
    name: Message, formula: str, molar_mass: float, ions: tuple[Ion, Ion], enthalpy: float, *aliases: str
) -> Reagent:
    return Reagent(
        name=name,
        formula=formula,
        molar_mass_g_mol=molar_mass,
        kind=Kind.SALT,
        sources=(PARKER_1965,),
        aliases=aliases,
        cation=ions[0],
        anion=ions[1],
        solution_enthalpy_kj_mol=enthalpy,
    )


def _nbs(
    name: Message, formula: str, molar_mass: float, ions: tuple[Ion, Ion], enthalpy: float, *aliases: str
) -> Reagent:
    return Reagent(
        name=name,
        formula=formula,
        molar_mass_g_mol=molar_mass,
        kind=Kind.SALT,
        sources=(NBS_1982,),
        aliases=aliases,
        cation=ions[0],
        anion=ions[1],
        solution_enthalpy_kj_mol=enthalpy,
        u_solution_enthalpy_kj_mol=0.3,
    )


SALT_TABLE: Final[tuple[Reagent, ...]] = (
    _parker(say("reagent-ammonium-nitrate"), "NH4NO3", 80.043, (AMMONIUM, NITRATE), 25.69),
    _parker(say("reagent-ammonium-chloride"), "NH4Cl", 53.491, (AMMONIUM, CHLORIDE), 14.78, "sal ammoniac"),
    _parker(say("reagent-potassium-nitrate"), "KNO3", 101.103, (POTASSIUM, NITRATE), 34.89, "saltpetre", "saltpeter"),
    _parker(say("reagent-potassium-chloride"), "KCl", 74.551, (POTASSIUM, CHLORIDE), 17.22),
    _parker(say("reagent-sodium-nitrate"), "NaNO3", 84.995, (SODIUM, NITRATE), 20.50),
    _parker(say("reagent-sodium-chloride"), "NaCl", 58.443, (SODIUM, CHLORIDE), 3.88, "common salt", "table salt"),
    _parker(
        say("reagent-sodium-ethanoate"), "CH3COONa", 82.034, (SODIUM, ETHANOATE), -17.32, "sodium acetate", "NaCH3COO"
    ),
    _parker(
        say("reagent-sodium-ethanoate-trihydrate"),
        "CH3COONa·3H2O",
        136.079,
        (SODIUM, ETHANOATE),
        19.66,
        "sodium acetate trihydrate",
    ),
    _parker(say("reagent-lithium-chloride"), "LiCl", 42.394, (LITHIUM, CHLORIDE), -37.03),
    _nbs(say("reagent-ammonium-sulfate"), "(NH4)2SO4", 132.134, (AMMONIUM, SULFATE), 6.6),
    _nbs(say("reagent-calcium-chloride"), "CaCl2", 110.983, (CALCIUM, CHLORIDE), -81.3, "anhydrous calcium chloride"),
    _nbs(say("reagent-calcium-chloride-dihydrate"), "CaCl2·2H2O", 147.014, (CALCIUM, CHLORIDE), -45.9),
    _nbs(say("reagent-calcium-chloride-hexahydrate"), "CaCl2·6H2O", 219.075, (CALCIUM, CHLORIDE), 15.8),
    _nbs(
        say("reagent-magnesium-sulfate"), "MgSO4", 120.366, (MAGNESIUM, SULFATE), -91.3, "anhydrous magnesium sulfate"
    ),
    _nbs(
        say("reagent-magnesium-sulfate-heptahydrate"),
        "MgSO4·7H2O",
        246.471,
        (MAGNESIUM, SULFATE),
        11.8,
        "Epsom salt",
        "Epsom salts",
        "hydrated magnesium sulfate",
    ),
    _nbs(
        say("reagent-copper-ii-sulfate"),
        "CuSO4",
        159.602,
        (COPPER, SULFATE),
        -73.1,
        "copper sulfate",
        "anhydrous copper sulfate",
        "anhydrous copper(II) sulfate",
    ),
    _nbs(
        say("reagent-copper-ii-sulfate-pentahydrate"),
        "CuSO4·5H2O",
        249.677,
        (COPPER, SULFATE),
        6.0,
        "copper sulfate pentahydrate",
        "hydrated copper(II) sulfate",
        "hydrated copper sulfate",
        "blue vitriol",
    ),
    Reagent(
        name=say("reagent-urea"),
        formula="CH4N2O",
        molar_mass_g_mol=60.056,
        kind=Kind.NON_ELECTROLYTE,
        sources=(KUSTOV_2010,),
        aliases=("carbamide", "CO(NH2)2", "(NH2)2CO"),
        solution_enthalpy_kj_mol=15.3,
        u_solution_enthalpy_kj_mol=0.2,
    ),
)
