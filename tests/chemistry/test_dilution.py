"""Relative apparent molar enthalpies against Parker's table of measured heats of dilution."""

import math

import pytest

from station.chemistry.neutralisation import DEBYE_HUCKEL_SLOPE_KJ_MOL, relative_enthalpy, solution_enthalpy
from station.chemistry.reagent import Ion
from station.chemistry.reagents import find_reagent

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


@pytest.mark.parametrize(
    ("name", "solid_g", "water_g", "published_kj_mol", "within"),
    [
        # A chemistry department's problem book (PNIPU, no. 79), after Thomsen, 1 mol in 400 mol of water; seen.
        ("copper(II) sulfate", 159.6, 7207.0, -66.11, 3.0),
        ("copper(II) sulfate pentahydrate", 249.7, 7207.0, 11.72, 2.0),
        # Thomsen's values at the same dilution, as older handbooks reprint them (kcal); from memory.
        ("magnesium sulfate heptahydrate", 246.5, 7207.0, 3.80 * 4.184, 1.0),
        ("calcium chloride hexahydrate", 219.1, 7207.0, 4.34 * 4.184, 1.0),
        ("sodium carbonate decahydrate", 286.1, 7207.0, 16.16 * 4.184, 1.5),
        # OpenStax Chemistry 2e, 5.2: 3.21 g in 50.0 g take in 1.0 kJ (unrounded 1023.9 J); 3.0 g in 150 g give 2.2 kJ.
        ("ammonium nitrate", 3.21, 50.0, 1.0239 / (3.21 / 80.04), 0.5),
        ("calcium chloride", 3.0, 150.0, -2.2 / (3.0 / 110.98), 4.0),
    ],
)
def test_published_enthalpies_of_solution(
    name: str, solid_g: float, water_g: float, published_kj_mol: float, within: float
) -> None:
    found = solution_enthalpy(find_reagent(name), solid_g, water_g)
    assert found is not None
    assert found.enthalpy_kj_mol == pytest.approx(published_kj_mol, abs=within)


def test_a_hydrate_and_its_anhydrous_salt_end_in_the_same_solution() -> None:
    """Their difference is the heat of hydration, at any dilution: -79.1 kJ/mol for copper(II) sulfate (NBS tables)."""
    white, blue = find_reagent("copper(II) sulfate"), find_reagent("copper(II) sulfate pentahydrate")
    crystal_g = blue.molar_mass_g_mol - white.molar_mass_g_mol
    dry = solution_enthalpy(white, white.molar_mass_g_mol, 5000.0 + crystal_g)
    wet = solution_enthalpy(blue, blue.molar_mass_g_mol, 5000.0)
    assert dry is not None
    assert wet is not None
    assert dry.enthalpy_kj_mol - wet.enthalpy_kj_mol == pytest.approx(-79.1, abs=0.1)
