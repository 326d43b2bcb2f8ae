"""Which acid and alkali react in one step with one heat, and why the others do not."""

import pytest

from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagents import REAGENTS, find_reagent


def pair(acid: str, alkali: str) -> Neutralisation:
    return neutralisation_steps(find_reagent(acid), find_reagent(alkali))


@pytest.mark.parametrize("acid", ["hydrochloric acid", "nitric acid", "ethanoic acid"])
@pytest.mark.parametrize("alkali", ["NaOH", "KOH", "LiOH", "ammonia", "Ba(OH)2", "Ca(OH)2"])
def test_a_monobasic_acid_and_an_alkali_react_in_one_step(acid: str, alkali: str) -> None:
    assert pair(acid, alkali).single_step
    assert pair(acid, alkali).refusal == ""


@pytest.mark.parametrize(
    ("acid", "alkali", "reason"),
    [
        ("sulfuric acid", "NaOH", "two protons in two steps"),
        ("citric acid", "KOH", "three protons in three steps"),
        ("ethanedioic acid", "KOH", "two steps"),
        ("hydrochloric acid", "sodium carbonate", "carbon dioxide"),
        ("ethanoic acid", "sodium hydrogencarbonate", "carbon dioxide"),
        ("sulfuric acid", "barium hydroxide", "leaves a solid"),
        ("ethanedioic acid", "calcium hydroxide", "leaves a solid"),
    ],
)
def test_several_steps_gas_or_a_solid_are_refused_with_the_reason(acid: str, alkali: str, reason: str) -> None:
    assert not pair(acid, alkali).single_step
    assert reason in pair(acid, alkali).refusal


@pytest.mark.parametrize(
    ("acid", "alkali", "equation"),
    [
        ("nitric acid", "potassium hydroxide", "HNO3 + KOH → KNO3 + H2O"),
        ("sulfuric acid", "sodium hydroxide", "H2SO4 + 2 NaOH → Na2SO4 + 2 H2O"),
        ("hydrochloric acid", "barium hydroxide", "2 HCl + Ba(OH)2 → BaCl2 + 2 H2O"),
        ("hydrochloric acid", "ammonia", "HCl + NH3 → NH4Cl"),
        ("nitric acid", "sodium carbonate", "2 HNO3 + Na2CO3 → 2 NaNO3 + H2O + CO2"),
        ("phosphoric acid", "calcium hydroxide", "2 H3PO4 + 3 Ca(OH)2 → Ca3(PO4)2 + 6 H2O"),
        ("sulfuric acid", "sodium hydrogencarbonate", "H2SO4 + 2 NaHCO3 → Na2SO4 + 2 H2O + 2 CO2"),
    ],
)
def test_the_equation_is_balanced_in_whole_numbers(acid: str, alkali: str, equation: str) -> None:
    assert pair(acid, alkali).equation == equation


@pytest.mark.parametrize(
    ("acid", "alkali", "ratio", "salt", "equivalents"),
    [
        ("HCl", "NaOH", 1.0, "NaCl", 1),
        ("H2SO4", "NaOH", 0.5, "Na2SO4", 2),
        ("citric acid", "NaOH", 1 / 3, "Na3C6H5O7", 3),
        ("HCl", "Ca(OH)2", 2.0, "CaCl2", 2),
        ("H2SO4", "ammonia", 0.5, "(NH4)2SO4", 2),
        ("H3PO4", "Ba(OH)2", 2 / 3, "Ba3(PO4)2", 6),
        ("ethanoic acid", "KOH", 1.0, "KCH3COO", 1),
    ],
)
def test_stoichiometry_and_salt(acid: str, alkali: str, ratio: float, salt: str, equivalents: int) -> None:
    found = pair(acid, alkali)
    assert found.acid_per_alkali == pytest.approx(ratio)
    assert found.salt == salt
    assert found.equivalents_per_salt == equivalents


def test_swapped_reagents_are_recognised() -> None:
    with pytest.raises(WrongPairError, match="swapped: nitric acid is the acid"):
        pair("potassium hydroxide", "nitric acid")


@pytest.mark.parametrize(
    ("acid", "alkali", "reason"),
    [("NaCl", "NaOH", "not an acid but a salt"), ("HCl", "NaCl", "not an alkali but a salt")],
)
def test_what_is_no_acid_or_no_alkali_is_refused(acid: str, alkali: str, reason: str) -> None:
    with pytest.raises(WrongPairError, match=reason):
        pair(acid, alkali)


def test_things_worth_knowing_are_remarked() -> None:
    assert "hardly change" in pair("HCl", "limewater").remark
    assert "not quite complete" in pair("ethanoic acid", "ammonia").remark
    assert pair("HCl", "NaOH").remark == ""


def test_every_acid_and_alkali_of_the_table_is_either_one_step_or_refused_in_words() -> None:
    acids = [reagent for reagent in REAGENTS if reagent.is_acid]
    alkalis = [reagent for reagent in REAGENTS if reagent.is_alkali]
    for acid in acids:
        for alkali in alkalis:
            found = neutralisation_steps(acid, alkali)
            assert found.single_step == (acid.protons == 1 and not alkali.gives_gas)
