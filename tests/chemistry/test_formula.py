"""Formulae: weighing them and putting ions together."""

import pytest

from station.chemistry.reagent import Ion, ions_formula, molar_mass_g_mol


@pytest.mark.parametrize(
    ("formula", "mass"),
    # CRC Handbook values of the molar masses, as reproduced in the common tables of pure substances.
    [("H2O", 18.015), ("H2SO4", 98.079), ("Ca(OH)2", 74.093), ("(NH4)2SO4", 132.14), ("C6H8O7·H2O", 210.14)],
)
def test_molar_mass(formula: str, mass: float) -> None:
    assert molar_mass_g_mol(formula) == pytest.approx(mass, abs=0.01)


@pytest.mark.parametrize("formula", ["", "Xx2", "Ca(OH", "NaCl)", "na", "H2O·", "2"])
def test_what_is_no_formula_is_refused(formula: str) -> None:
    with pytest.raises(ValueError, match=r"formula|weigh|bracket"):
        molar_mass_g_mol(formula)


@pytest.mark.parametrize(
    ("cation", "anion", "formula"),
    [
        (Ion("Na", 1), Ion("Cl", -1), "NaCl"),
        (Ion("Ca", 2), Ion("OH", -1), "Ca(OH)2"),
        (Ion("NH4", 1), Ion("SO4", -2), "(NH4)2SO4"),
        (Ion("Ca", 2), Ion("PO4", -3), "Ca3(PO4)2"),
        (Ion("Mg", 2), Ion("SO4", -2), "MgSO4"),
        (Ion("Ca", 2), Ion("Cl", -1), "CaCl2"),
    ],
)
def test_ions_make_a_neutral_formula(cation: Ion, anion: Ion, formula: str) -> None:
    assert ions_formula(cation, anion) == formula
