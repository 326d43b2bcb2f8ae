"""The alkalis: hydroxides, ammonia, carbonates and hydrogencarbonates.

Enthalpies of solution: Parker (1965) for the alkali-metal hydroxides and ammonia gas; for the others the
difference of the formation enthalpies of Wagman et al. (1982), whose rounding gives the stated u.
"""

from typing import Final

from station.chemistry.formula import Ion
from station.chemistry.reagent import Ionisation, Kind, Reagent
from station.chemistry.sources import GOLDBERG_2002, NBS_1982, PARKER_1965

LITHIUM: Final = Ion("Li", 1)
SODIUM: Final = Ion("Na", 1)
POTASSIUM: Final = Ion("K", 1)
AMMONIUM: Final = Ion("NH4", 1)
CALCIUM: Final = Ion("Ca", 2)
BARIUM: Final = Ion("Ba", 2)
HYDROXIDE: Final = Ion("OH", -1)
CARBONATE: Final = Ion("CO3", -2)
HYDROGENCARBONATE: Final = Ion("HCO3", -1)

ALKALI_TABLE: Final[tuple[Reagent, ...]] = (
    Reagent(
        name="sodium hydroxide",
        formula="NaOH",
        molar_mass_g_mol=39.997,
        kind=Kind.HYDROXIDE,
        sources=(PARKER_1965,),
        aliases=("caustic soda", "lye"),
        cation=SODIUM,
        anion=HYDROXIDE,
        hydroxides=1,
        solution_enthalpy_kj_mol=-44.51,
    ),
    Reagent(
        name="potassium hydroxide",
        formula="KOH",
        molar_mass_g_mol=56.106,
        kind=Kind.HYDROXIDE,
        sources=(PARKER_1965,),
        aliases=("caustic potash",),
        cation=POTASSIUM,
        anion=HYDROXIDE,
        hydroxides=1,
        solution_enthalpy_kj_mol=-57.61,
    ),
    Reagent(
        name="lithium hydroxide",
        formula="LiOH",
        molar_mass_g_mol=23.948,
        kind=Kind.HYDROXIDE,
        sources=(PARKER_1965,),
        cation=LITHIUM,
        anion=HYDROXIDE,
        hydroxides=1,
        solution_enthalpy_kj_mol=-23.56,
    ),
    Reagent(
        name="ammonia",
        formula="NH3",
        molar_mass_g_mol=17.031,
        kind=Kind.WEAK_ALKALI,
        sources=(GOLDBERG_2002,),
        aliases=("ammonia solution", "aqueous ammonia", "ammonium hydroxide", "NH4OH"),
        cation=AMMONIUM,
        anion=HYDROXIDE,
        hydroxides=1,
        ionisations=(Ionisation(9.245, 51.95, 8.0),),
    ),
    Reagent(
        name="calcium hydroxide",
        formula="Ca(OH)2",
        molar_mass_g_mol=74.092,
        kind=Kind.HYDROXIDE,
        sources=(NBS_1982,),
        aliases=("limewater", "lime water", "slaked lime"),
        cation=CALCIUM,
        anion=HYDROXIDE,
        hydroxides=2,
        sparingly_soluble=True,
    ),
    Reagent(
        name="barium hydroxide",
        formula="Ba(OH)2",
        molar_mass_g_mol=171.342,
        kind=Kind.HYDROXIDE,
        sources=(NBS_1982,),
        aliases=("baryta water",),
        cation=BARIUM,
        anion=HYDROXIDE,
        hydroxides=2,
    ),
    Reagent(
        name="sodium carbonate",
        formula="Na2CO3",
        molar_mass_g_mol=105.988,
        kind=Kind.CARBONATE,
        sources=(NBS_1982, GOLDBERG_2002),
        aliases=("anhydrous sodium carbonate", "soda ash"),
        cation=SODIUM,
        anion=CARBONATE,
        hydroxides=2,
        solution_enthalpy_kj_mol=-26.6,
        u_solution_enthalpy_kj_mol=0.3,
    ),
    Reagent(
        name="potassium carbonate",
        formula="K2CO3",
        molar_mass_g_mol=138.205,
        kind=Kind.CARBONATE,
        sources=(NBS_1982, GOLDBERG_2002),
        aliases=("potash",),
        cation=POTASSIUM,
        anion=CARBONATE,
        hydroxides=2,
        solution_enthalpy_kj_mol=-30.9,
        u_solution_enthalpy_kj_mol=0.3,
    ),
    Reagent(
        name="calcium carbonate",
        formula="CaCO3",
        molar_mass_g_mol=100.087,
        kind=Kind.CARBONATE,
        sources=(NBS_1982,),
        aliases=("chalk", "marble", "limestone"),
        cation=CALCIUM,
        anion=CARBONATE,
        hydroxides=2,
        sparingly_soluble=True,
    ),
    Reagent(
        name="sodium hydrogencarbonate",
        formula="NaHCO3",
        molar_mass_g_mol=84.007,
        kind=Kind.HYDROGENCARBONATE,
        sources=(NBS_1982, GOLDBERG_2002),
        aliases=("sodium hydrogen carbonate", "sodium bicarbonate", "baking soda", "bicarbonate of soda"),
        cation=SODIUM,
        anion=HYDROGENCARBONATE,
        hydroxides=1,
        solution_enthalpy_kj_mol=18.7,
        u_solution_enthalpy_kj_mol=0.3,
    ),
    Reagent(
        name="potassium hydrogencarbonate",
        formula="KHCO3",
        molar_mass_g_mol=100.115,
        kind=Kind.HYDROGENCARBONATE,
        sources=(NBS_1982, GOLDBERG_2002),
        aliases=("potassium hydrogen carbonate", "potassium bicarbonate"),
        cation=POTASSIUM,
        anion=HYDROGENCARBONATE,
        hydroxides=1,
        solution_enthalpy_kj_mol=18.8,
        u_solution_enthalpy_kj_mol=0.3,
    ),
)
