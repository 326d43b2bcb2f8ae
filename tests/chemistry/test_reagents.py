"""The table of reagents and the look-up by name."""

import re

import pytest

from station.chemistry.reagents import REAGENTS, Kind, Reagent, UnknownReagentError, find_reagent

# Conventional atomic weights, IUPAC (Prohaska et al., Pure Appl. Chem. 94, 573 (2022)).
ATOMIC_WEIGHTS = {
    "H": 1.008,
    "Li": 6.94,
    "C": 12.011,
    "N": 14.007,
    "O": 15.999,
    "Na": 22.990,
    "Mg": 24.305,
    "P": 30.974,
    "S": 32.06,
    "Cl": 35.45,
    "K": 39.098,
    "Ca": 40.078,
    "Cu": 63.546,
    "Ba": 137.327,
}


def weigh(formula: str) -> float:
    """Molar mass of a formula with brackets and water of crystallisation."""
    total = 0.0
    for part in formula.split("·"):
        match = re.fullmatch(r"(\d*)(.+)", part)
        assert match is not None
        total += int(match[1] or 1) * _weigh_group(match[2])
    return total


def _weigh_group(formula: str) -> float:
    while inner := re.search(r"\(([^()]+)\)(\d*)", formula):
        formula = formula.replace(inner[0], inner[1] * int(inner[2] or 1), 1)
    return sum(
        ATOMIC_WEIGHTS[element] * int(count or 1)
        for element, count in re.findall(r"([A-Z][a-z]?)(\d*)", formula)
    )


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_molar_mass_agrees_with_the_formula(reagent: Reagent) -> None:
    assert reagent.molar_mass_g_mol == pytest.approx(weigh(reagent.formula), abs=0.012)


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_every_name_formula_and_alias_finds_its_reagent(reagent: Reagent) -> None:
    for label in (reagent.name, reagent.formula, *reagent.aliases):
        assert find_reagent(label) is reagent
        assert find_reagent(f"  {label.upper()} ") is reagent


@pytest.mark.parametrize("reagent", REAGENTS, ids=lambda reagent: reagent.name)
def test_the_ions_add_up_to_a_neutral_formula_and_the_source_is_named(reagent: Reagent) -> None:
    assert reagent.sources
    assert all(len(source) > 10 for source in reagent.sources)
    if reagent.kind is not Kind.NON_ELECTROLYTE:
        assert reagent.cation is not None
        assert reagent.anion is not None
        assert reagent.cation.charge > 0 > reagent.anion.charge
    if reagent.is_acid:
        assert reagent.anion is not None
        assert reagent.anion.charge == -reagent.protons
        assert reagent.protons == reagent.strong_protons + len(reagent.ionisations)
    if reagent.is_alkali:
        assert reagent.hydroxides > 0


@pytest.mark.parametrize(
    ("asked", "name"),
    [
        ("Hydrochloric Acid", "hydrochloric acid"),
        ("hcl(aq)", "hydrochloric acid"),
        ("dilute sulphuric acid", "sulfuric acid"),
        ("H₂SO₄", "sulfuric acid"),
        ("Acetic acid", "ethanoic acid"),
        ("oxalic-acid", "ethanedioic acid"),
        ("potassium  hydroxide solution", "potassium hydroxide"),
        ("Copper Sulphate", "copper(II) sulfate"),
        ("ammonium hydroxide", "ammonia"),
        ("sodium hydrogen carbonate", "sodium hydrogencarbonate"),
    ],
)
def test_find_reagent_accepts_what_people_write(asked: str, name: str) -> None:
    assert find_reagent(asked).name == name


def test_an_unknown_reagent_is_refused_with_the_nearest_and_the_list() -> None:
    with pytest.raises(UnknownReagentError, match="Did you mean hydrochloric acid") as refusal:
        find_reagent("hydrocloric acid")
    assert "nitric acid, sulfuric acid" in str(refusal.value)
    with pytest.raises(UnknownReagentError, match=r"unknown reagent ''\. Known:"):
        find_reagent("")
