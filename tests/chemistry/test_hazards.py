"""Labels of reagents and solutions against limits of Regulation (EC) No 1272/2008, as published lists have them."""

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st

from station.chemistry.hazards import (
    CATEGORIES,
    GENERIC,
    HAZARDS,
    METALS,
    solution_label,
    stored_label,
    substance_label,
)
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import REAGENTS, find_reagent
from station.chemistry.solutions import concentration_mol_dm3


def codes(name: str, mol_dm3: float) -> list[str]:
    return [each.code for each in solution_label(find_reagent(name), mol_dm3).statements]


def at_percent(name: str, percent: float) -> list[str]:
    reagent = find_reagent(name)
    return codes(name, concentration_mol_dm3(reagent, percent / 100))


def test_every_reagent_has_an_entry_and_every_category_is_known() -> None:
    assert set(HAZARDS) == {reagent.name.id for reagent in REAGENTS}
    for entry in HAZARDS.values():
        assert set(entry.substance) <= set(CATEGORIES)
        assert {category for _, category in entry.limits} <= set(CATEGORIES)
        assert entry.source
    assert set(GENERIC) <= set(CATEGORIES)


@pytest.mark.parametrize(
    ("name", "band_percent", "expected"),
    # Specific concentration limits of Annex VI, Table 3, as listed for teachers at the Finnish teacher-training site
    # "Kemikaalivarasto" (the first four) and, for nitric acid from 13 and 26 %, in an employers' data base.
    [
        ("sodium hydroxide", (0.5, 2), ["H315", "H319"]),
        ("sodium hydroxide", (2, 5), ["H314"]),
        ("sodium hydroxide", (5, 50), ["H314"]),
        ("sulfuric acid", (5, 15), ["H315", "H319"]),
        ("sulfuric acid", (15, 40), ["H314"]),
        ("hydrochloric acid", (10, 25), ["H315", "H319", "H335"]),
        ("hydrochloric acid", (25, 37), ["H314", "H335"]),
        ("nitric acid", (5, 13), ["H314"]),
        ("nitric acid", (13.3, 26.4), ["H314", "H332", "EUH071"]),
        # ECHA registration dossier of potassium hydroxide: corrosive from 2 %, irritating from 0.5 to 2 %.
        ("potassium hydroxide", (0.5, 2), ["H315", "H319"]),
        ("potassium hydroxide", (2, 20), ["H314"]),
        # A label-software vendor's worked example for acetic acid: 10, 25 and 90 %.
        ("ethanoic acid", (10, 25), ["H315", "H319"]),
        ("ethanoic acid", (25, 79), ["H314"]),
        # Directive 67/548/EEC, Annex I: phosphoric acid 10 % irritant, 25 % corrosive; the limits were carried over.
        ("phosphoric acid", (10, 25), ["H315", "H319"]),
        ("phosphoric acid", (25, 40), ["H314"]),
        # An employers' data base: ammonia solution from 5 % to below 10 %.
        ("ammonia", (5, 9.9), ["H314", "H335"]),
    ],
)
def test_specific_limits(name: str, band_percent: tuple[float, float], expected: list[str]) -> None:
    low, high = band_percent
    for percent in (low * 1.0001, (low + high) / 2, high * 0.9999):
        assert at_percent(name, percent) == expected


@pytest.mark.parametrize(
    ("name", "percent"),
    [
        ("sodium hydroxide", 0.5),
        ("potassium hydroxide", 0.5),
        ("hydrochloric acid", 10),
        ("sulfuric acid", 5),
        ("ethanoic acid", 10),
        ("phosphoric acid", 10),
        ("nitric acid", 1),
        ("ammonia", 1),
        ("sodium carbonate", 10),
        ("calcium chloride", 10),
    ],
)
def test_below_its_lowest_limit_a_solution_is_not_classified(name: str, percent: float) -> None:
    label = solution_label(find_reagent(name), concentration_mol_dm3(find_reagent(name), 0.999 * percent / 100))
    assert not label.is_classified
    assert (label.statements, label.pictograms, label.signal) == ((), (), None)
    assert label.mass_percent == pytest.approx(0.999 * percent)


@pytest.mark.parametrize(
    ("name", "limit_mol_dm3", "below", "from_it"),
    # Limits in mol/dm³ by an independent code of the Laliberté density (the package "thermo" 0.6.1), 20 °C.
    [
        ("sodium hydroxide", 0.125, [], ["H315", "H319"]),
        ("sodium hydroxide", 0.510, ["H315", "H319"], ["H314"]),
        ("potassium hydroxide", 0.362, ["H315", "H319"], ["H314"]),
        ("hydrochloric acid", 2.87, [], ["H315", "H319", "H335"]),
        ("hydrochloric acid", 7.70, ["H315", "H319", "H335"], ["H314", "H335"]),
        ("nitric acid", 0.814, ["H315", "H318"], ["H314"]),
        ("sulfuric acid", 0.526, [], ["H315", "H319"]),
        ("sulfuric acid", 1.687, ["H315", "H319"], ["H314"]),
        ("ethanoic acid", 1.685, [], ["H315", "H319"]),
        ("ethanoic acid", 4.29, ["H315", "H319"], ["H314"]),
    ],
)
def test_limits_in_mol_per_dm3(name: str, limit_mol_dm3: float, below: list[str], from_it: list[str]) -> None:
    assert codes(name, 0.995 * limit_mol_dm3) == below
    assert codes(name, 1.005 * limit_mol_dm3) == from_it


def test_generic_limits_hold_where_nitric_acid_has_none_of_its_own() -> None:
    """German school material (2013): 0.5 mol/dm³, 3 %, is H315 and H318, 1 mol/dm³ is H314."""
    assert codes("nitric acid", 0.5) == ["H315", "H318"]
    assert codes("nitric acid", 1.0) == ["H314"]
    assert codes("nitric acid", 0.4) == ["H315", "H319"]


def test_a_strong_alkali_without_limits_is_held_against_sodium_hydroxide() -> None:
    # By mass percent alone 0.2 mol/dm³ of lithium hydroxide (0.5 %) would not be classified at all.
    assert codes("lithium hydroxide", 0.2) == codes("sodium hydroxide", 0.2) == ["H315", "H319"]
    assert codes("barium hydroxide", 0.3) == ["H314"]
    # Limewater, saturated at about 0.02 mol/dm³.
    assert codes("calcium hydroxide", 0.02) == []


def test_pictograms_and_signal_words() -> None:
    weak, strong = (solution_label(find_reagent("sodium hydroxide"), each) for each in (0.4, 1.0))
    assert (weak.pictograms, weak.signal) == (("GHS07",), "Warning")
    assert (strong.pictograms, strong.signal) == (("GHS05",), "Danger")
    # Article 26: corrosion replaces the exclamation mark for skin and eyes, not for the airways; the skull always.
    assert solution_label(find_reagent("nitric acid"), 0.5).pictograms == ("GHS05",)
    assert solution_label(find_reagent("hydrochloric acid"), 8.0).pictograms == ("GHS05", "GHS07")
    assert substance_label(find_reagent("nitric acid")).pictograms == ("GHS03", "GHS05", "GHS06")


@pytest.mark.parametrize(
    ("name", "expected"),
    # International Chemical Safety Cards 0751 and 1416 (copper sulfates); suppliers' data sheets (the others).
    [
        ("copper(II) sulfate", ["H302", "H315", "H318", "H410"]),
        ("ammonium nitrate", ["H272", "H319"]),
        ("potassium carbonate", ["H315", "H319", "H335"]),
        ("calcium hydroxide", ["H315", "H318", "H335"]),
        ("citric acid", ["H319", "H335"]),
        ("potassium chloride", []),
    ],
)
def test_substances_as_weighed(name: str, expected: list[str]) -> None:
    label = substance_label(find_reagent(name))
    assert sorted(each.code for each in label.statements) == expected
    assert label.mass_percent is None


def test_an_oxidising_solid_no_longer_feeds_a_fire_in_solution() -> None:
    assert "H272" in [each.code for each in substance_label(find_reagent("potassium nitrate")).statements]
    assert codes("potassium nitrate", 0.5) == []


def test_what_cannot_be_in_water_gets_the_label_of_the_substance() -> None:
    assert codes("citric acid", 20.0) == [each.code for each in substance_label(find_reagent("citric acid")).statements]


@pytest.mark.parametrize("mol_dm3", [0.0, -1.0, float("nan")])
def test_a_concentration_must_be_above_0(mol_dm3: float) -> None:
    with pytest.raises(ValueError, match="must be above 0"):
        solution_label(find_reagent("ammonia"), mol_dm3)


GRAVEST_FIRST = [category.code for category in CATEGORIES.values()]


@settings(deadline=None, max_examples=60)
@example(find_reagent("calcium hydroxide"), 5.0, 3.0)  # three times as much is no solution any more
@given(st.sampled_from(REAGENTS), st.floats(0.001, 6.0), st.floats(1.0, 3.0))
def test_more_of_it_is_never_less_dangerous(reagent: Reagent, mol_dm3: float, factor: float) -> None:
    weaker, stronger = (
        {CATEGORIES[name].family: CATEGORIES[name].code for name in solution_label(reagent, each).categories}
        for each in (mol_dm3, factor * mol_dm3)
    )
    for family, code in weaker.items():
        assert GRAVEST_FIRST.index(stronger[family]) <= GRAVEST_FIRST.index(code)


@pytest.mark.parametrize(
    ("name", "mol_dm3", "expected"),
    # Suppliers' data sheets: hydrochloric acid 0.1 mol/dm³ (No. 1045, 2012) and sulfuric acid 0.25 mol/dm³ (No. 109073,
    # 2015): "Met. Corr. 1, H290, Warning" and nothing else.
    [("hydrochloric acid", 0.1, ["H290"]), ("sulfuric acid", 0.25, ["H290"])],
)
def test_a_stored_bottle_says_what_it_does_to_metals(name: str, mol_dm3: float, expected: list[str]) -> None:
    label = stored_label(find_reagent(name), mol_dm3)
    assert [each.code for each in label.statements] == expected
    assert (label.pictograms, label.signal) == (("GHS05",), "Warning")


def test_irritation_keeps_its_mark_beside_that_of_metals() -> None:
    """Article 26 takes the exclamation mark away for skin and eyes where corrosion says more of them."""
    assert stored_label(find_reagent("sodium hydroxide"), 0.4).pictograms == ("GHS05", "GHS07")
    assert stored_label(find_reagent("sodium hydroxide"), 1.0).pictograms == ("GHS05",)


def test_only_those_of_the_table_say_it_and_only_from_there_on() -> None:
    assert {reagent.name.id for reagent in REAGENTS} >= METALS
    for reagent in REAGENTS:
        for mol_dm3 in (0.05, 0.5):
            says = "H290" in {each.code for each in stored_label(reagent, mol_dm3).statements}
            assert says == (reagent.name.id in METALS and mol_dm3 >= 0.1)
            assert "H290" not in {each.code for each in solution_label(reagent, mol_dm3).statements}
