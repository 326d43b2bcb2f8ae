"""Relative apparent molar enthalpies against Parker's table of measured heats of dilution."""

import math

import pytest

from station.chemistry.dilution import DEBYE_HUCKEL_SLOPE_KJ_MOL, relative_enthalpy
from station.chemistry.formula import Ion

HYDROGEN, SODIUM, POTASSIUM = Ion("H", 1), Ion("Na", 1), Ion("K", 1)
CHLORIDE, NITRATE, HYDROXIDE = Ion("Cl", -1), Ion("NO3", -1), Ion("OH", -1)


@pytest.mark.parametrize(
    ("molality", "measured"),
    # Hydrogen chloride at 25 °C, kJ/mol: Parker, NSRDS-NBS 2 (1965), as reproduced in the CRC Handbook.
    [(0.05, 0.406), (0.1, 0.556), (0.2, 0.761), (0.5, 1.172), (1, 1.695), (1.5, 2.167), (2, 2.623), (3, 3.506)],
)
def test_hydrochloric_acid_agrees_with_the_measured_heats_of_dilution(molality: float, measured: float) -> None:
    found = relative_enthalpy(HYDROGEN, CHLORIDE, molality)
    assert found.enthalpy_kj_mol == pytest.approx(measured, abs=found.u_enthalpy_kj_mol)


@pytest.mark.parametrize(
    ("molality", "measured"), [(1, 0.506), (1.5, 0.506), (2, 0.527), (2.5, 0.582), (3, 0.665), (4, 0.958)]
)
def test_nitric_acid_reproduces_the_table_it_was_fitted_to(molality: float, measured: float) -> None:
    assert relative_enthalpy(HYDROGEN, NITRATE, molality).enthalpy_kj_mol == pytest.approx(measured, abs=0.004)


def test_every_uni_univalent_electrolyte_starts_along_the_limiting_law() -> None:
    for ions in ((HYDROGEN, CHLORIDE), (SODIUM, HYDROXIDE), (SODIUM, CHLORIDE), (POTASSIUM, HYDROXIDE)):
        molality = 1e-6
        found = relative_enthalpy(*ions, molality).enthalpy_kj_mol
        assert found == pytest.approx(DEBYE_HUCKEL_SLOPE_KJ_MOL * math.sqrt(molality), rel=0.01)
        assert relative_enthalpy(*ions, 0.0).enthalpy_kj_mol == 0


def test_an_electrolyte_without_parameters_is_much_less_sure() -> None:
    unknown = relative_enthalpy(POTASSIUM, HYDROXIDE, 1.0)
    assert unknown.u_enthalpy_kj_mol > 5 * relative_enthalpy(SODIUM, HYDROXIDE, 1.0).u_enthalpy_kj_mol


def test_a_doubly_charged_ion_counts_by_its_charges() -> None:
    """The limiting slope of a 2:1 electrolyte is 3 × 2 × A/2 per root of its ionic strength 3 m."""
    found = relative_enthalpy(SODIUM, Ion("SO4", -2), 1e-6).enthalpy_kj_mol
    assert found == pytest.approx(3 * DEBYE_HUCKEL_SLOPE_KJ_MOL * math.sqrt(3e-6), rel=0.01)


@pytest.mark.parametrize("molality", [-0.1, float("nan")])
def test_impossible_molalities_are_refused(molality: float) -> None:
    with pytest.raises(ValueError, match="molality must be"):
        relative_enthalpy(HYDROGEN, CHLORIDE, molality)
