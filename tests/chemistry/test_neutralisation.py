"""Enthalpies of neutralisation against CODATA, calorimetry over temperature, and what schools quote."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.neutralisation import (
    SCHOOL_VALUES,
    expected_enthalpy,
    mixing_enthalpy,
    neutralisation_enthalpy,
    step_enthalpies_kj_mol,
)
from station.chemistry.pairs import WrongPairError
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent

HCL, NAOH = find_reagent("hydrochloric acid"), find_reagent("sodium hydroxide")
HNO3, KOH = find_reagent("nitric acid"), find_reagent("potassium hydroxide")
H2SO4 = find_reagent("sulfuric acid")
ETHANOIC, AMMONIA = find_reagent("ethanoic acid"), find_reagent("ammonia")


@pytest.mark.parametrize(("acid", "alkali"), [(HCL, NAOH), (HNO3, KOH), (HCL, KOH), (HNO3, NAOH)])
def test_strong_with_strong_is_the_codata_value(acid: Reagent, alkali: Reagent) -> None:
    """-285.830 + 230.015 kJ/mol: CODATA Key Values for Thermodynamics (1989)."""
    found = neutralisation_enthalpy(acid, alkali, 25)
    assert found.enthalpy_kj_mol == pytest.approx(-55.815, abs=1e-9)
    assert found.u_enthalpy_kj_mol == pytest.approx(0.057, abs=1e-9)


@pytest.mark.parametrize(
    ("temperature_c", "measured"),
    # Christensen et al., Thermochim. Acta (1972), abstract: 14.216 kcal at 10 °C, 12.695 kcal at 40 °C. The
    # constant heat capacity used here leaves up to 0.55 kJ/mol at these ends.
    [(10, -14.216 * 4.184), (40, -12.695 * 4.184)],
)
def test_temperature_dependence_agrees_with_calorimetry(temperature_c: float, measured: float) -> None:
    found = neutralisation_enthalpy(HCL, NAOH, temperature_c)
    assert found.enthalpy_kj_mol == pytest.approx(measured, abs=0.6)


def test_the_slope_is_the_heat_capacity_of_ionisation() -> None:
    """Singh, Woolley, McCurdy and Hepler (1976): -215.2 J/(mol K) for H₂O → H⁺ + OH⁻."""
    warm, cool = (neutralisation_enthalpy(HCL, NAOH, t).enthalpy_kj_mol for t in (26, 25))
    assert warm - cool == pytest.approx(0.2152)


@pytest.mark.parametrize(("temperature_c", "expected"), [(25, -56.225), (20, -56.591)])
def test_ethanoic_acid(temperature_c: float, expected: float) -> None:
    """CODATA and Goldberg, Kishore and Lennen (2002): ΔrH° -0.41 kJ/mol, ΔrCp° -142 J/(mol K)."""
    found = neutralisation_enthalpy(ETHANOIC, NAOH, temperature_c)
    assert found.enthalpy_kj_mol == pytest.approx(expected, abs=1e-3)


def test_the_protons_of_sulfuric_acid_differ() -> None:
    """NBS tables: HSO₄⁻ + OH⁻ gives about -77.8, so hydrogensulfate to start with means -66.8 per water."""
    first, second = step_enthalpies_kj_mol(find_reagent("sulfuric acid"), NAOH)
    assert first.enthalpy_kj_mol == pytest.approx(-55.8, abs=0.1)
    assert second.enthalpy_kj_mol == pytest.approx(-77.8, abs=0.5)
    mean = neutralisation_enthalpy(find_reagent("sulfuric acid"), NAOH)
    assert mean.enthalpy_kj_mol == pytest.approx(-66.8, abs=0.3)


def test_ammonia_gives_less_heat() -> None:
    """NH₃ + H⁺ → NH₄⁺ is the reverse of the ammonium ion's ionisation: -51.95 kJ/mol (Goldberg et al.)."""
    assert neutralisation_enthalpy(HCL, AMMONIA).enthalpy_kj_mol == pytest.approx(-51.95)


def test_real_solutions_give_more_heat_as_textbooks_say() -> None:
    """-57.6 kJ/mol is widely printed for HCl and NaOH, about 1 mol/dm³ at 25 °C; OpenStax measures -58."""
    found = expected_enthalpy(HCL, 1.0, NAOH, 1.0, 25)
    assert found.enthalpy_kj_mol == pytest.approx(-57.6, abs=0.2)
    assert found.u_enthalpy_kj_mol < 0.2


def test_papee_canady_laidler_lies_between_dilute_and_molar() -> None:
    """Papée, Canady and Laidler, Can. J. Chem. 34, 1677 (1956): 13.52 kcal for HCl and NaOH at 25 °C."""
    measured = -13.52 * 4.184
    assert expected_enthalpy(HCL, 1.0, NAOH, 1.0, 25).enthalpy_kj_mol < measured
    assert measured < neutralisation_enthalpy(HCL, NAOH, 25).enthalpy_kj_mol


@given(st.sampled_from([HCL, HNO3]), st.sampled_from([NAOH, KOH]), st.floats(10, 40))
def test_endless_dilution_removes_the_correction(acid: Reagent, alkali: Reagent, temperature_c: float) -> None:
    dilute = expected_enthalpy(acid, 1e-6, alkali, 1e-6, temperature_c).enthalpy_kj_mol
    ideal = neutralisation_enthalpy(acid, alkali, temperature_c).enthalpy_kj_mol
    assert dilute == pytest.approx(ideal, abs=0.01)


def test_a_pair_without_measured_heats_of_dilution_is_less_sure() -> None:
    sure = expected_enthalpy(HCL, 0.4, NAOH, 0.4, 25).u_enthalpy_kj_mol
    assert expected_enthalpy(HNO3, 0.4, KOH, 0.4, 25).u_enthalpy_kj_mol > 3 * sure


def test_school_values_are_near_the_computed_one_and_say_where_they_come_from() -> None:
    for school in SCHOOL_VALUES:
        acid, alkali = find_reagent(school.acid), find_reagent(school.alkali)
        computed = expected_enthalpy(acid, 1.0, alkali, 1.0, 20).enthalpy_kj_mol
        assert school.enthalpy_kj_mol == pytest.approx(computed, abs=2.7)
        assert school.quoted_in


def test_what_has_no_such_enthalpy_is_refused() -> None:
    with pytest.raises(ValueError, match="carbon dioxide"):
        neutralisation_enthalpy(HCL, find_reagent("sodium carbonate"))
    with pytest.raises(WrongPairError, match="swapped"):
        neutralisation_enthalpy(NAOH, HCL)
    with pytest.raises(ValueError, match="above 0"):
        expected_enthalpy(HCL, 0.0, NAOH, 1.0, 25)


@pytest.mark.parametrize(("mol_dm3", "expected"), [(0.5, -61.5), (1.0, -60.5)])
def test_sulfuric_acid_half_neutralised_keeps_most_of_its_second_protons(mol_dm3: float, expected: float) -> None:
    """Equal volumes, equal concentrations: HSO₄⁻ is left, and ionises by a quarter (pK 1.987, Davies equation).

    By hand at 0.5 mol/dm³: K' = 0.0355 at I = 0.5; ionised 6 % before and 31 % after, so -56.9 - 0.25 · 21.1 at 20 °C
    is -62.1, less about 0.4 for real solutions.
    """
    found = mixing_enthalpy(H2SO4, mol_dm3, 50.0, NAOH, mol_dm3, 50.0, 20.0)
    assert found.enthalpy_kj_mol == pytest.approx(expected, abs=1.0)


def test_sulfuric_acid_quite_neutralised_gives_the_mean_of_both_protons() -> None:
    found = mixing_enthalpy(H2SO4, 0.5, 25.0, NAOH, 0.5, 50.0, 20.0)
    assert found.enthalpy_kj_mol == pytest.approx(expected_enthalpy(H2SO4, 0.5, NAOH, 0.5, 20.0).enthalpy_kj_mol, abs=1)
    more = mixing_enthalpy(H2SO4, 0.5, 25.0, NAOH, 0.5, 80.0, 20.0)
    assert more.enthalpy_kj_mol == pytest.approx(found.enthalpy_kj_mol)


def test_phosphoric_acid_gives_up_its_first_proton_first() -> None:
    """Goldberg et al. (2002): -8.0, 3.6 and 16 kJ/mol for the three, on top of -55.8."""
    first = mixing_enthalpy(find_reagent("phosphoric acid"), 0.1, 50.0, NAOH, 0.1, 50.0, 25.0)
    # Of 0.1 mol/dm³ some 27 % had ionised before; the salt's heat of dilution, an estimate, takes off about 1.
    assert first.enthalpy_kj_mol == pytest.approx(-55.8 - 8.0 * 0.73, abs=1.3)


@pytest.mark.parametrize("acid", [HCL, ETHANOIC])
def test_an_acid_of_one_proton_gives_the_same_whatever_is_left_over(acid: Reagent) -> None:
    whole = expected_enthalpy(acid, 0.5, NAOH, 0.5, 20.0)
    assert mixing_enthalpy(acid, 0.5, 50.0, NAOH, 0.5, 20.0, 20.0) == whole


def test_barium_sulfate_gives_its_own_heat() -> None:
    """NBS tables: BaSO₄ -1473.2, Ba²⁺ -537.6, SO₄²⁻ -909.3: -26.3 kJ/mol, half of it for each mole of water."""
    with_solid = neutralisation_enthalpy(H2SO4, find_reagent("barium hydroxide")).enthalpy_kj_mol
    without = neutralisation_enthalpy(H2SO4, NAOH).enthalpy_kj_mol
    assert with_solid - without == pytest.approx((-1473.2 + 537.6 + 909.3) / 2, abs=0.05)
    with pytest.raises(ValueError, match="leaves a solid"):
        neutralisation_enthalpy(find_reagent("ethanedioic acid"), find_reagent("barium hydroxide"))
