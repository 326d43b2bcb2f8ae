"""How well a strength is known, against a published titration (EURACHEM/CITAC, Quantifying Uncertainty, example A2)."""

import math

import pytest

from station.chemistry.preparation import Stock, usual_stock
from station.chemistry.reagents import REAGENTS, find_reagent
from station.chemistry.standard import against_phthalate, by_the_alkali, can_be_standardised, u_as_made

SODIUM_HYDROXIDE = find_reagent("sodium hydroxide")


def test_mass_and_volume_give_the_concentration_of_the_published_titration() -> None:
    """0.3888 g and 18.64 cm³ are 0.10214 mol/dm³ there; the standard is 1.0 pure."""
    found = against_phthalate(SODIUM_HYDROXIDE, 0.1)
    assert found.factor_g_cm3 * 0.3888 / 18.64 == pytest.approx(0.10214, abs=0.00001)


def test_the_uncertainty_is_that_of_mass_and_volume() -> None:
    """By hand: √((0.0041/1.634)² + (0.0645/20)²) = 0.0041, with u(m) = √2·0.01/√12 and u(V) = √(0.1² + 0.05²)/√3."""
    assert against_phthalate(SODIUM_HYDROXIDE, 0.4).u_relative == pytest.approx(0.0041, abs=0.00005)


def test_a_base_with_two_hydroxides_takes_twice_the_standard() -> None:
    one, two = (against_phthalate(find_reagent(each), 0.2) for each in ("sodium hydroxide", "barium hydroxide"))
    assert two.mass_g == pytest.approx(2 * one.mass_g)
    assert two.factor_g_cm3 == pytest.approx(one.factor_g_cm3 / 2)


def test_an_acid_is_known_less_well_than_the_alkali_that_titrates_it() -> None:
    u_acid = by_the_alkali(find_reagent("hydrochloric acid"), 0.36, SODIUM_HYDROXIDE, 0.4)
    assert u_acid is not None
    assert against_phthalate(SODIUM_HYDROXIDE, 0.4).u_relative < u_acid < 0.01


@pytest.mark.parametrize(
    ("acid", "mol_dm3", "alkali"),
    [
        ("phosphoric acid", 0.36, "sodium hydroxide"),  # the third proton leaves at no colour of this indicator
        ("hydrochloric acid", 0.36, "ammonia"),
        ("hydrochloric acid", 0.36, "sodium carbonate"),
        ("hydrochloric acid", 2.0, "sodium hydroxide"),  # 125 cm³ from a burette of 50 cm³
    ],
)
def test_what_cannot_be_titrated_so_is_not_told_to_be(acid: str, mol_dm3: float, alkali: str) -> None:
    assert by_the_alkali(find_reagent(acid), mol_dm3, find_reagent(alkali), 0.4) is None


def test_titrating_is_better_than_making_up_for_every_alkali_that_can_be() -> None:
    found = [each for each in REAGENTS if can_be_standardised(each)]
    assert SODIUM_HYDROXIDE in found
    for each in found:
        u_made = u_as_made(each)
        assert u_made is not None
        assert against_phthalate(each, 0.4).u_relative < u_made


def test_the_schools_own_bottle_is_as_good_as_its_label() -> None:
    acid = find_reagent("nitric acid")
    assert u_as_made(acid, usual_stock(acid)) == pytest.approx(math.hypot(0.02, 20 / 2000 / math.sqrt(3)))
    assert u_as_made(acid, Stock(2.0, "the bottle")) is None
