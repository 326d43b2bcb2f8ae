"""What is weighed and measured, against a laboratory's tables, and labels that stay on the safe side."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.chemistry.hazards import solution_label
from station.chemistry.preparation import LIQUIDS, PURITIES, Stock, prepare, safe_label, usual_stock
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import REAGENTS, find_reagent

SOLID = Stock(None, "solid")


def test_one_litre_of_molar_sodium_hydroxide_is_forty_grams() -> None:
    """From the molar mass, 39.997 g/mol (IUPAC standard atomic weights)."""
    made = prepare(find_reagent("sodium hydroxide"), 1.0, 1000.0)
    assert made.mass_g == pytest.approx(40.00, abs=0.005)
    assert made.stock_cm3 is None


def test_hydrochloric_acid_from_a_bottle_of_a_known_strength() -> None:
    """c1 V1 = c2 V2: 250 cm³ of 2.00 mol/dm³ from 12.02 mol/dm³ is 41.6 cm³ (worked by hand)."""
    made = prepare(find_reagent("hydrochloric acid"), 2.0, 250.0, Stock(12.02, "the bottle"))
    assert made.stock_cm3 == pytest.approx(41.6, abs=0.05)


def test_hydrochloric_acid_36_percent_as_a_laboratory_table_has_it() -> None:
    """A common table of stock reagents: 85.8 cm³ of 36 % acid (11.65 mol/dm³) make one litre of 1 mol/dm³."""
    made = prepare(find_reagent("hydrochloric acid"), 1.0, 1000.0)
    assert made.stock_cm3 == pytest.approx(85.8, abs=0.05)


def test_the_tables_of_stocks_know_their_reagents() -> None:
    assert set(LIQUIDS) | set(PURITIES) <= {reagent.name.id for reagent in REAGENTS}


@pytest.mark.parametrize("reagent", [each for each in REAGENTS if each.name.id in LIQUIDS], ids=lambda each: each.name)
def test_the_strength_of_each_stock_fits_its_density_and_percent(reagent: Reagent) -> None:
    """Percent times density over molar mass, from the same line of the table."""
    stock = LIQUIDS[reagent.name.id]
    found = re.search(r"([\d.]+) %(?: by mass)?, ([\d.]+) g/cm³", stock.words)
    assert found is not None
    percent, density = found.groups()
    mol_dm3 = 10 * float(percent) * float(density) / reagent.molar_mass_g_mol
    assert stock.mol_dm3 == pytest.approx(mol_dm3, rel=0.01)


def test_pellets_of_potassium_hydroxide_hold_water() -> None:
    made = prepare(find_reagent("potassium hydroxide"), 1.0, 1000.0)
    assert made.mass_g == pytest.approx(56.106 / 0.85, abs=0.01)


@pytest.mark.parametrize(
    ("name", "mol_dm3", "words"),
    [
        ("sodium hydroxide", 0.4, ("slowly", "it heats", "Never water onto it")),
        ("sulfuric acid", 0.5, ("fume cupboard", "acid to water, never water to acid", "it heats")),
        ("hydrochloric acid", 0.5, ("fume cupboard", "acid to water")),
        ("ammonium chloride", 0.5, ("stir until it has dissolved",)),
    ],
)
def test_the_order_of_mixing_is_the_safe_one(name: str, mol_dm3: float, words: tuple[str, ...]) -> None:
    """Common practice, no source."""
    steps = prepare(find_reagent(name), mol_dm3, 500.0).steps
    assert steps[0].endswith("distilled water into a large beaker."), "the water is there first"
    for each in words:
        assert each in " ".join(steps)


def test_a_weak_stock_is_not_put_into_a_fume_cupboard() -> None:
    steps = prepare(find_reagent("hydrochloric acid"), 0.5, 500.0, Stock(2.0, "bottle")).steps
    assert "fume cupboard" not in " ".join(steps)


@pytest.mark.parametrize(
    ("name", "edge_mol_dm3"),
    [("sodium hydroxide", 0.510), ("sodium hydroxide", 0.125), ("hydrochloric acid", 2.87)],
)
def test_near_a_limit_of_the_regulation_the_stricter_class_is_shown(name: str, edge_mol_dm3: float) -> None:
    """CLP, Annex VI: sodium hydroxide at 0.5 and 2 % by mass, hydrochloric acid at 10 %; densities of Laliberté."""
    reagent = find_reagent(name)
    below, _ = safe_label(reagent, 0.90 * edge_mol_dm3)
    near, is_near = safe_label(reagent, 0.98 * edge_mol_dm3)
    above, still = safe_label(reagent, 1.02 * edge_mol_dm3)
    assert is_near
    assert not still
    assert near.categories == above.categories != below.categories
    assert near.mass_percent == pytest.approx(solution_label(reagent, 0.98 * edge_mol_dm3).mass_percent)


@pytest.mark.parametrize(
    ("name", "mol_dm3", "volume_cm3", "stock", "words"),
    [
        ("calcium hydroxide", 0.5, 100.0, None, "hardly dissolves"),
        ("hydrochloric acid", 2.0, 100.0, Stock(1.0, "bottle"), "weaker than"),
        ("hydrochloric acid", 2.0, 0.0, None, "above 0"),
        ("hydrochloric acid", float("nan"), 100.0, None, "above 0"),
    ],
)
def test_what_cannot_be_made_up_is_refused_in_words(
    name: str, mol_dm3: float, volume_cm3: float, stock: Stock | None, words: str
) -> None:
    with pytest.raises(ValueError, match=words):
        prepare(find_reagent(name), mol_dm3, volume_cm3, stock)


@given(
    st.sampled_from([each for each in REAGENTS if not each.sparingly_soluble]),
    st.floats(0.05, 2.0),
    st.floats(50, 5000),
)
def test_what_goes_in_is_what_is_wanted(reagent: Reagent, mol_dm3: float, volume_cm3: float) -> None:
    made = prepare(reagent, mol_dm3, volume_cm3)
    stock = usual_stock(made.reagent)
    if made.mass_g is not None:
        mol = made.mass_g * stock.purity / made.reagent.molar_mass_g_mol
    else:
        assert stock.mol_dm3 is not None
        mol = (made.stock_cm3 or 0.0) * stock.mol_dm3 / 1000
    assert mol == pytest.approx(mol_dm3 * volume_cm3 / 1000)
