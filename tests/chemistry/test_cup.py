"""Heat capacity of the cup's contents through a practical."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.cup import GasError, cup_contents, cup_heat_capacities, dissolved_contents
from station.chemistry.liquids import water_volumetric_heat_capacity_j_cm3_k
from station.chemistry.pairs import WrongPairError
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import solution

HYDROCHLORIC = find_reagent("hydrochloric acid")
NITRIC = find_reagent("nitric acid")
SODIUM_HYDROXIDE = find_reagent("sodium hydroxide")
POTASSIUM_HYDROXIDE = find_reagent("potassium hydroxide")
ONE_STEP_ACIDS = [HYDROCHLORIC, NITRIC, find_reagent("ethanoic acid")]
ONE_STEP_ALKALIS = [SODIUM_HYDROXIDE, POTASSIUM_HYDROXIDE, find_reagent("ammonia")]


def test_one_molar_acid_and_alkali() -> None:
    """Densities and cp at 25 °C of 1 mol/dm³ HCl, NaOH and of 0.5 mol/dm³ NaCl after Laliberté (2009)."""
    found = cup_heat_capacities(HYDROCHLORIC, 1.0, SODIUM_HYDROXIDE, 1.0, 25)
    assert found.acid_j_cm3_k == pytest.approx(1.0144 * 3.9300, abs=0.002)
    assert found.alkali_j_cm3_k == pytest.approx(1.0392 * 3.9855, abs=0.002)
    mass_of_two_cm3 = 1.0144 + 1.0392
    assert found.product_j_cm3_k == pytest.approx(mass_of_two_cm3 * 4.0336 / 2, abs=0.004)
    assert found.u_relative < 0.004


def test_the_product_is_counted_by_volume_as_poured() -> None:
    """Acid and alkali expand by about 1 % as they react, so a poured cm³ holds more than a cm³ of salt water."""
    found = cup_heat_capacities(HYDROCHLORIC, 1.0, SODIUM_HYDROXIDE, 1.0, 25)
    contents = cup_contents(HYDROCHLORIC, 1.0, 25, SODIUM_HYDROXIDE, 1.0, 25, 25)
    assert contents.volume_cm3 == pytest.approx(50.48, abs=0.05)
    assert found.product_j_cm3_k * 50 == pytest.approx(contents.heat_capacity_j_k)
    salt_water = solution({"NaCl": 0.5}, 25).volumetric_j_cm3_k
    assert found.product_j_cm3_k == pytest.approx(salt_water * 1.0096, rel=2e-3)


@given(
    st.sampled_from(ONE_STEP_ACIDS),
    st.floats(0.1, 2.0),
    st.sampled_from(ONE_STEP_ALKALIS),
    st.floats(0.1, 2.0),
    st.floats(0, 2.5),
    st.floats(10, 35),
)
def test_three_figures_describe_the_cup_at_every_stage(
    acid: object, acid_molar: float, alkali: object, alkali_molar: float, share: float, temperature_c: float
) -> None:
    """The blend of the three figures stays within 0.45 % of the full sum, whatever has been poured.

    Worst: 0.42 % at 2 mol/dm³ and 10 °C, far past the end-point.
    """
    assert isinstance(acid, type(HYDROCHLORIC))
    assert isinstance(alkali, type(HYDROCHLORIC))
    found = cup_heat_capacities(acid, acid_molar, alkali, alkali_molar, temperature_c)
    end_cm3 = 25 * acid_molar / alkali_molar
    poured = share * end_cm3
    reacted = min(share, 1.0)
    blend = 25 * (1 - reacted) * found.acid_j_cm3_k
    blend += reacted * (25 + end_cm3) * found.product_j_cm3_k
    blend += max(0.0, poured - end_cm3) * found.alkali_j_cm3_k
    contents = cup_contents(acid, acid_molar, 25, alkali, alkali_molar, poured, temperature_c)
    assert blend == pytest.approx(contents.heat_capacity_j_k, rel=4.5e-3)
    poured_mass = 25 * solution({acid.solute: acid_molar}, temperature_c).density_g_cm3
    poured_mass += poured * solution({alkali.solute: alkali_molar}, temperature_c).density_g_cm3
    assert contents.mass_g == pytest.approx(poured_mass)


def test_dilute_reagents_are_nearly_water() -> None:
    found = cup_heat_capacities(NITRIC, 0.01, POTASSIUM_HYDROXIDE, 0.01, 20)
    water = water_volumetric_heat_capacity_j_cm3_k(20)
    assert found[:3] == pytest.approx((water, water, water), rel=1e-3)


def test_an_unknown_acid_is_taken_from_the_estimate() -> None:
    known = cup_heat_capacities(NITRIC, 0.4, POTASSIUM_HYDROXIDE, 0.4, 22)
    estimated = cup_heat_capacities(NITRIC, None, POTASSIUM_HYDROXIDE, 0.4, 22, acid_estimate_mol_dm3=0.4)
    assert estimated == known


def test_without_an_estimate_the_uncertainty_covers_half_to_double() -> None:
    sulfuric = find_reagent("sulfuric acid")
    unknown = cup_heat_capacities(sulfuric, None, SODIUM_HYDROXIDE, 1.0, 22)
    assert unknown[:3] == cup_heat_capacities(sulfuric, 0.5, SODIUM_HYDROXIDE, 1.0, 22)[:3]
    unknown = cup_heat_capacities(NITRIC, None, POTASSIUM_HYDROXIDE, 0.4, 22)
    for molar in (0.25, 0.6):
        known = cup_heat_capacities(NITRIC, molar, POTASSIUM_HYDROXIDE, 0.4, 22)
        for guess, truth in zip(unknown[:3], known[:3], strict=True):
            assert abs(guess / truth - 1) < 2 * unknown.u_relative


def test_half_neutralised_sulfuric_acid_keeps_its_mass_and_makes_sense() -> None:
    sulfuric = find_reagent("sulfuric acid")
    contents = cup_contents(sulfuric, 0.5, 25, SODIUM_HYDROXIDE, 1.0, 12.5, 22)
    assert 37.5 < contents.mass_g < 39.5
    assert 37.5 * 4.0 < contents.heat_capacity_j_k < 37.5 * 4.2


def test_a_fizzing_pair_is_refused() -> None:
    with pytest.raises(GasError, match="carbon dioxide"):
        cup_heat_capacities(HYDROCHLORIC, 1.0, find_reagent("sodium carbonate"), 0.5, 22)


@pytest.mark.parametrize(("acid_cm3", "alkali_cm3"), [(0, 0), (-1, 5), (25, -1), (float("nan"), 1)])
def test_an_empty_or_impossible_cup_is_refused(acid_cm3: float, alkali_cm3: float) -> None:
    with pytest.raises(ValueError, match="cannot fill a cup"):
        cup_contents(HYDROCHLORIC, 1.0, acid_cm3, SODIUM_HYDROXIDE, 1.0, alkali_cm3, 22)


def test_swapped_reagents_and_zero_concentrations_are_refused() -> None:
    with pytest.raises(WrongPairError, match="swapped"):
        cup_heat_capacities(SODIUM_HYDROXIDE, 1.0, HYDROCHLORIC, 1.0, 22)
    with pytest.raises(ValueError, match="must be above 0"):
        cup_heat_capacities(HYDROCHLORIC, 0.0, SODIUM_HYDROXIDE, 1.0, 22)


def test_a_dissolved_solid_brings_its_crystal_water_along() -> None:
    anhydrous = dissolved_contents(find_reagent("sodium ethanoate"), 8.2034, 100.0, 25)
    hydrate = dissolved_contents(find_reagent("sodium ethanoate trihydrate"), 13.6079, 100.0 - 5.4045, 25)
    assert hydrate.mass_g == pytest.approx(anhydrous.mass_g)
    assert hydrate.heat_capacity_j_k == pytest.approx(anhydrous.heat_capacity_j_k, rel=1e-5)


def test_ammonium_nitrate_in_water_holds_less_than_the_same_mass_of_water() -> None:
    """8.00 g in 100 g at 25 °C: near 3.9 J/(g K), a handbook figure from memory."""
    contents = dissolved_contents(find_reagent("ammonium nitrate"), 8.00, 100.0, 25)
    assert contents.mass_g == 108.0
    assert 3.85 < contents.heat_capacity_j_k / contents.mass_g < 3.97


@pytest.mark.parametrize(("solid_g", "water_g"), [(0, 100), (5, 0), (-1, 100), (float("nan"), 100)])
def test_impossible_masses_are_refused(solid_g: float, water_g: float) -> None:
    with pytest.raises(ValueError, match="must be above 0 g"):
        dissolved_contents(find_reagent("urea"), solid_g, water_g, 25)
