"""The table of reagents and the look-up by name."""

import re

import pytest

from station.chemistry.reagent import Kind, Reagent, molar_mass_g_mol
from station.chemistry.reagents import REAGENTS, UnknownReagentError, find_reagent


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_molar_mass_agrees_with_the_formula(reagent: Reagent) -> None:
    assert reagent.molar_mass_g_mol == pytest.approx(molar_mass_g_mol(reagent.formula), abs=0.012)


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_every_name_formula_and_alias_finds_its_reagent(reagent: Reagent) -> None:
    for label in (reagent.name, reagent.formula, *reagent.aliases):
        assert find_reagent(label) is reagent
        assert find_reagent(f"  {label.upper()} ") is reagent


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_the_ions_add_up_to_a_neutral_formula_and_the_source_is_named(reagent: Reagent) -> None:
    assert reagent.sources
    assert all(len(source) > 10 for source in reagent.sources)
    if reagent.kind is not Kind.NON_ELECTROLYTE:
        assert reagent.cation is not None
        assert reagent.anion is not None
        assert reagent.cation.charge > 0 > reagent.anion.charge
    if reagent.is_acid:
        assert reagent.anion is not None
        assert reagent.anion.charge == -reagent.protons
        assert reagent.protons == reagent.strong_protons + len(reagent.ionisations)
    if reagent.is_alkali:
        assert reagent.hydroxides > 0


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("Hydrochloric Acid", "hydrochloric acid"),
        ("hcl(aq)", "hydrochloric acid"),
        ("dilute sulphuric acid", "sulfuric acid"),
        ("H₂SO₄", "sulfuric acid"),
        ("Acetic acid", "ethanoic acid"),
        ("oxalic-acid", "ethanedioic acid"),
        ("potassium  hydroxide solution", "potassium hydroxide"),
        ("Copper Sulphate", "copper(II) sulfate"),
        ("ammonium hydroxide", "ammonia"),
        ("sodium hydrogen carbonate", "sodium hydrogencarbonate"),
    ],
)
def test_find_reagent_accepts_what_people_write(asked: str, name: str) -> None:
    assert find_reagent(asked).name == name


def test_an_unknown_reagent_is_refused_with_the_nearest_and_the_list() -> None:
    with pytest.raises(UnknownReagentError, match="Did you mean hydrochloric acid") as refusal:
        find_reagent("hydrocloric acid")
    assert "nitric acid, sulfuric acid" in str(refusal.value)
    with pytest.raises(UnknownReagentError, match=r"unknown reagent ''\. Known:"):
        find_reagent("")


@pytest.mark.parametrize(
    ("name", "solute"),
    [
        ("ethanoic acid", "HCH3COO"),
        ("sulfuric acid", "H2SO4"),
        ("citric acid monohydrate", "H3C6H5O7"),
        ("ammonia", "NH3"),
        ("calcium hydroxide", "Ca(OH)2"),
        ("sodium carbonate", "Na2CO3"),
        ("ammonium sulfate", "(NH4)2SO4"),
    ],
)
def test_the_dissolved_form_is_named_by_its_ions(name: str, solute: str) -> None:
    assert find_reagent(name).solute == solute


def test_what_dissolves_cold_is_told_from_what_dissolves_warm() -> None:
    cold = {reagent.name for reagent in REAGENTS if reagent.kind is Kind.SALT and reagent.dissolves_cold}
    assert {"ammonium nitrate", "ammonium chloride", "potassium nitrate", "potassium chloride"} <= cold
    assert not cold & {"calcium chloride", "lithium chloride", "magnesium sulfate", "copper(II) sulfate"}
    assert {"copper(II) sulfate pentahydrate", "magnesium sulfate heptahydrate", "calcium chloride hexahydrate"} <= cold


# Standard enthalpies of formation, kJ/mol, as in the NBS tables (Wagman et al., 1982) and reprinted in handbooks.
FORMATION = {
    "Na": -240.1,
    "K": -252.4,
    "Ca": -542.8,
    "Mg": -466.9,
    "Cu": 64.8,
    "NH4": -132.5,
    "Cl": -167.2,
    "SO4": -909.3,
    "CO3": -677.1,
    "Li": -278.5,
    "Ba": -537.6,
    "OH": -230.0,
    "HCO3": -692.0,
}
SOLIDS = {
    "CaCl2": -795.8,
    "MgSO4": -1284.9,
    "CuSO4": -771.4,
    "(NH4)2SO4": -1180.9,
    "Na2CO3": -1130.7,
    "K2CO3": -1151.0,
    "NaHCO3": -950.8,
    "KHCO3": -963.2,
    "Ca(OH)2": -986.1,
    "Ba(OH)2": -944.7,
    # Hydrates, seen in copies of the same tables; the last two from memory.
    "CuSO4·5H2O": -2279.65,
    "CaCl2·2H2O": -1402.9,
    "CaCl2·6H2O": -2607.9,
    "Na2CO3·10H2O": -4081.3,
    "Ba(OH)2·8H2O": -3342.2,
    "MgSO4·7H2O": -3388.7,
    "LiOH·H2O": -788.0,
}
WATER = -285.83


@pytest.mark.parametrize("formula", SOLIDS)
def test_enthalpies_of_solution_are_differences_of_formation_enthalpies(formula: str) -> None:
    reagent = find_reagent(formula)
    assert reagent.cation is not None
    assert reagent.anion is not None
    charge = reagent.cation.charge * -reagent.anion.charge
    ions = (charge // reagent.cation.charge) * FORMATION[reagent.cation.formula]
    ions += (charge // -reagent.anion.charge) * FORMATION[reagent.anion.formula]
    if reagent.cation.charge == -reagent.anion.charge:
        ions = FORMATION[reagent.cation.formula] + FORMATION[reagent.anion.formula]
    crystal_water = re.search(r"·(\d*)H2O", formula)
    if crystal_water:
        ions += int(crystal_water[1] or 1) * WATER
    assert reagent.solution_enthalpy_kj_mol == pytest.approx(ions - SOLIDS[formula], abs=0.15)


def test_ionisation_enthalpies_agree_with_the_formation_enthalpies_of_the_ions() -> None:
    """HSO4- and HC2O4- against the NBS tables: -909.3 + 887.3 and -825.1 + 818.4 kJ/mol."""
    assert find_reagent("H2SO4").ionisations[0].enthalpy_kj_mol == pytest.approx(-22.0, abs=0.5)
    assert find_reagent("oxalic acid").ionisations[1].enthalpy_kj_mol == pytest.approx(-6.7, abs=0.5)
