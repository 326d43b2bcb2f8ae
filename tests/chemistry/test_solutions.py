"""Densities and heat capacities of solutions against handbook tables, sea water and measured heat capacities."""

import statistics

import pytest
from hypothesis import given
from hypothesis import strategies as st
from iapws import SeaWater

from station.chemistry.liquids import (
    GENERIC_MOLECULE,
    GENERIC_SALT,
    LALIBERTE,
    terms,
    water_density_g_cm3,
    water_heat_capacity_j_g_k,
)
from station.chemistry.reagent import molar_mass_g_mol
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import concentration_mol_dm3, mass_fraction, solution, solution_by_mass

NOT_SALTS = {"HCl", "HNO3", "H2SO4", "H3PO4", "HCH3COO", "NaOH", "KOH", "LiOH", "NH3"}
NAMES = ["hydrochloric acid", "nitric acid", "ethanoic acid", "NaOH", "KOH", "LiOH", "ammonia", "NaCl", "KNO3"]


@pytest.mark.parametrize(
    ("percent", "density", "molar"),
    # Hydrochloric acid at 20 °C, CRC Handbook table of aqueous solutions, as reproduced in common tables.
    [(10, 1.048, 2.87), (20, 1.098, 6.02), (30, 1.149, 9.45), (34, 1.169, 10.90), (36, 1.179, 11.64)],
)
def test_hydrochloric_acid_density(percent: float, density: float, molar: float) -> None:
    acid = find_reagent("hydrochloric acid")
    assert solution_by_mass({"HCl": percent / 100}, 20).density_g_cm3 == pytest.approx(density, rel=1e-3)
    assert concentration_mol_dm3(acid, percent / 100) == pytest.approx(molar, rel=1.5e-3)


@pytest.mark.parametrize(
    ("percent", "density", "molar"),
    # Sodium chloride at 20 °C, Poradnik fizykochemiczny, WNT, Warszawa (1974).
    [(1, 1005.3, 0.1720), (2, 1012.2, 0.3464), (4, 1026.8, 0.7026), (10, 1070.7, 1.8317), (20, 1147.8, 3.9272)],
)
def test_sodium_chloride_density(percent: float, density: float, molar: float) -> None:
    salt = find_reagent("sodium chloride")
    found = solution_by_mass({"NaCl": percent / 100}, 20)
    assert found.density_g_cm3 * 1000 == pytest.approx(density, abs=0.6)
    assert mass_fraction(salt, molar) == pytest.approx(percent / 100, rel=1e-3)


@pytest.mark.parametrize(
    ("solute", "molality", "density"),
    # 25 °C, g/cm³: measured tables by molality (advancedthermo.com, after the electrolyte literature).
    [
        ("HCl", 0.5, 1.00583),
        ("HCl", 1, 1.01420),
        ("HCl", 2, 1.03008),
        ("HCl", 4, 1.05905),
        ("NaOH", 0.5, 1.01860),
        ("NaOH", 1, 1.03911),
        ("NaOH", 2, 1.07787),
        ("NaOH", 4, 1.14776),
    ],
)
def test_density_by_molality(solute: str, molality: float, density: float) -> None:
    mass = molality * molar_mass_g_mol(solute)
    found = solution_by_mass({solute: mass / (1000 + mass)}, 25)
    assert found.density_g_cm3 == pytest.approx(density, abs=0.0012)


def test_the_models_own_printed_checks() -> None:
    """First lines of Laliberté's spreadsheet (supporting information of the 2009 paper), NaCl in water."""
    assert 1000 / terms("NaCl", 0.0, 0.0037838838).volume_cm3_g == pytest.approx(3761.8917586, rel=1e-7)
    assert terms("NaCl", 1.5, 0.00398447).heat_capacity_j_g_k == pytest.approx(-2.93073539458, rel=1e-7)


@pytest.mark.parametrize("temperature_c", [10, 20, 25, 30, 40])
def test_artificial_sea_water_agrees_with_iapws_sea_water(temperature_c: float) -> None:
    """A six-salt mixture (recipe: Lyman and Fleming, J. Mar. Res. 3, 134 (1940)) against IAPWS-08."""
    recipe = {"NaCl": 23.476, "MgCl2": 4.981, "Na2SO4": 3.917, "CaCl2": 1.102, "KCl": 0.664, "NaHCO3": 0.192}
    scale = 34.48e-3 / sum(recipe.values())
    found = solution_by_mass({salt: grams * scale for salt, grams in recipe.items()}, temperature_c)
    sea = SeaWater(T=temperature_c + 273.15, P=0.101325, S=34.48e-3)
    assert found.density_g_cm3 * 1000 == pytest.approx(sea.rho, rel=5e-4)
    assert found.heat_capacity_j_g_k == pytest.approx(sea.cp, rel=1.2e-3)
    assert found.volumetric_j_cm3_k == pytest.approx(sea.rho * sea.cp / 1000, rel=found.u_relative)


def apparent(solute: str, molality: float) -> float:
    """Apparent molar heat capacity at 25 °C, J/(mol K)."""
    molar_mass = molar_mass_g_mol(solute)
    fraction = molality * molar_mass / (1000 + molality * molar_mass)
    return terms(solute, 25, fraction).heat_capacity_j_g_k * molar_mass


@pytest.mark.parametrize("metal", ["Na", "K"])
def test_heat_capacities_agree_with_the_measured_ionisation_of_water(metal: str) -> None:
    """Singh, Woolley, McCurdy and Hepler (1976): -215.2 ± 4 J/(mol K) from the same four kinds of solution."""
    change = apparent("HCl", 0.05) + apparent(metal + "OH", 0.05) - apparent(metal + "Cl", 0.05)
    change -= water_heat_capacity_j_g_k(25) * molar_mass_g_mol("H2O")
    assert change == pytest.approx(-215.2, abs=20)


def test_a_salt_solution_holds_less_heat_than_water() -> None:
    """1.0 mol/dm³ sodium chloride at 25 °C: 4.05 J/(cm³ K), 2.8 % below water (Laliberté, 2009)."""
    salt = solution({"NaCl": 1.0}, 25)
    assert salt.density_g_cm3 == pytest.approx(1.0369, abs=2e-4)
    assert salt.heat_capacity_j_g_k == pytest.approx(3.908, abs=0.002)
    assert salt.volumetric_j_cm3_k == pytest.approx(4.052, abs=0.002)
    assert salt.notes == ()


def test_the_stand_in_figures_are_the_mean_and_spread_of_the_table() -> None:
    salts = [terms(key, 25, 0.05) for key in LALIBERTE if key not in NOT_SALTS]
    volumes = [salt.volume_cm3_g for salt in salts]
    heats = [salt.heat_capacity_j_g_k for salt in salts if salt.known_heat_capacity]
    assert statistics.mean(volumes) == pytest.approx(GENERIC_SALT.volume_cm3_g, abs=0.02)
    assert statistics.stdev(volumes) == pytest.approx(GENERIC_SALT.u_volume_cm3_g, abs=0.02)
    assert statistics.mean(heats) == pytest.approx(GENERIC_SALT.heat_capacity_j_g_k, abs=0.1)
    assert statistics.stdev(heats) == pytest.approx(GENERIC_SALT.u_heat_capacity_j_g_k, abs=0.1)
    acids = [terms(key, 25, 0.05) for key in ("HCH3COO", "H3PO4")]
    assert statistics.mean(acid.volume_cm3_g for acid in acids) == pytest.approx(
        GENERIC_MOLECULE.volume_cm3_g, abs=0.02
    )
    assert statistics.mean(acid.heat_capacity_j_g_k for acid in acids) == pytest.approx(
        GENERIC_MOLECULE.heat_capacity_j_g_k, abs=0.1
    )


def test_a_solute_without_coefficients_says_so_and_is_much_less_sure() -> None:
    citrate = solution({"Na3C6H5O7": 0.3}, 22)
    assert "Na3C6H5O7" in citrate.notes[0]
    assert citrate.u_relative > 4 * solution({"NaCl": 0.9}, 22).u_relative
    assert 3.8 < citrate.volumetric_j_cm3_k < 4.18


def test_outside_the_measured_range_the_edge_is_held_and_said() -> None:
    cold = solution({"NH4NO3": 1.0}, 5)
    assert "edge of its measured range" in cold.notes[0]
    assert cold.u_relative > solution({"NH4NO3": 1.0}, 25).u_relative


@given(st.sampled_from(NAMES), st.floats(0.0, 0.25), st.floats(5, 60))
def test_mass_fraction_and_concentration_are_each_others_inverse(
    name: str, fraction: float, temperature_c: float
) -> None:
    reagent = find_reagent(name)
    molar = concentration_mol_dm3(reagent, fraction, temperature_c)
    assert mass_fraction(reagent, molar, temperature_c) == pytest.approx(fraction, rel=1e-9, abs=1e-12)


@given(st.sampled_from(NAMES), st.floats(0, 0.25), st.floats(1e-4, 0.05), st.floats(5, 60))
def test_more_dissolved_is_more_concentrated(name: str, fraction: float, more: float, temperature_c: float) -> None:
    reagent = find_reagent(name)
    assert concentration_mol_dm3(reagent, fraction + more, temperature_c) > concentration_mol_dm3(
        reagent, fraction, temperature_c
    )


@given(st.sampled_from(sorted(LALIBERTE)), st.floats(5, 60))
def test_an_endlessly_dilute_solution_is_water(solute: str, temperature_c: float) -> None:
    found = solution({solute: 1e-9}, temperature_c)
    assert found.density_g_cm3 == pytest.approx(water_density_g_cm3(temperature_c), rel=1e-6)
    assert found.heat_capacity_j_g_k == pytest.approx(water_heat_capacity_j_g_k(temperature_c), rel=1e-6)
    assert found.u_relative < 1e-6


@pytest.mark.parametrize("concentrations", [{"NaCl": -0.1}, {"NaCl": float("nan")}, {"HCl": 40.0}])
def test_impossible_solutions_are_refused(concentrations: dict[str, float]) -> None:
    with pytest.raises(ValueError, match=r"concentration must be|no such solution"):
        solution(concentrations, 20)


@pytest.mark.parametrize("fractions", [{"NaCl": -0.1}, {"NaCl": 1.0}, {"NaCl": 0.6, "KCl": 0.5}])
def test_impossible_mass_fractions_are_refused(fractions: dict[str, float]) -> None:
    with pytest.raises(ValueError, match="mass fractions must be"):
        solution_by_mass(fractions, 20)
