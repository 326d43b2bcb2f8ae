"""Amounts, heat and enthalpy against printed worked examples, and their uncertainties against the GUM."""

import math
import random
import statistics

import pytest

from station.chemistry.heat import (
    Absorber,
    Measured,
    acid_concentration,
    dissolving_enthalpy,
    enthalpy_from_heat_per_cm3,
    enthalpy_per_mole,
    heat_taken_up,
    neutralisation_result,
    water_formed,
)
from station.chemistry.pairs import Neutralisation, neutralisation_steps
from station.chemistry.reagents import find_reagent


def pair(acid: str = "HCl", alkali: str = "NaOH") -> Neutralisation:
    return neutralisation_steps(find_reagent(acid), find_reagent(alkali))


def school(mass_g: float, heat_capacity_j_g_k: float = 4.18, cup_j_k: float = 0.0) -> Absorber:
    return Absorber(Measured(mass_g), Measured(heat_capacity_j_g_k), Measured(cup_j_k))


def test_openstax_acid_and_base() -> None:
    """OpenStax Chemistry 2e, 5.2 and 5.3: 50.0 + 50.0 cm³ of 1.00 mol/dm³, 22.0 to 28.9 °C: 2.9 kJ, -58 kJ/mol."""
    heat = heat_taken_up(school(100, 4.184), Measured(28.9 - 22.0))
    assert heat.value == pytest.approx(2886.96, abs=0.01)
    assert enthalpy_per_mole(Measured(heat.value), Measured(0.0500), "water formed").value == pytest.approx(
        -57.74, abs=0.005
    )


@pytest.mark.parametrize(
    ("mass_g", "change_c", "printed_j"),
    # OpenStax Chemistry 2e, 5.2: silver chloride (printed 1.34 × 10³), ammonium nitrate, potassium chloride.
    [(200.0, 1.6, 1340), (53.21, -4.6, -1020), (303.0, -1.05, -1330)],
)
def test_openstax_heats(mass_g: float, change_c: float, printed_j: float) -> None:
    assert heat_taken_up(school(mass_g, 4.184), Measured(change_c)).value == pytest.approx(printed_j, rel=5e-3)


def test_openstax_titration() -> None:
    """OpenStax Chemistry 2e, 4.5: 50.00 cm³ of HCl take 35.23 cm³ of 0.250 mol/dm³ NaOH: 0.176 mol/dm³."""
    found = acid_concentration(pair(), Measured(50.00), Measured(0.250), Measured(35.23))
    assert found.value == pytest.approx(0.176, abs=5e-4)
    assert found.steps[0].value == pytest.approx(8.81e-3, abs=5e-6)


def test_openstax_ammonium_nitrate_dissolves_cold() -> None:
    """Same, 5.2: 3.21 g in 50.0 g of water, 24.9 to 20.3 °C, printed as 1.0 kJ taken in."""
    found = dissolving_enthalpy(
        find_reagent("ammonium nitrate"), Measured(3.21), school(53.21, 4.184), Measured(20.3 - 24.9)
    )
    assert found.value > 0
    assert found.value == pytest.approx(1.024 / (3.21 / 80.043), rel=1e-3)
    assert found.value == pytest.approx(find_reagent("NH4NO3").solution_enthalpy_kj_mol, rel=0.02)


@pytest.mark.parametrize(
    ("cm3", "molar", "enthalpy", "mass_g", "rise_c"),
    # AQA A-level mark schemes: -56.1 with 25 + 25 cm³ of 2.0 mol/dm³ and 50 g gives 13.4 °C; -57.1 with
    # 50 + 50 cm³ of 0.500 mol/dm³ and 100 g gives 3.42 °C.
    [(25, 2.0, -56.1, 50, 13.42), (50, 0.500, -57.1, 100, 3.415)],
)
def test_aqa_rises(cm3: float, molar: float, enthalpy: float, mass_g: float, rise_c: float) -> None:
    heat = heat_taken_up(school(mass_g), Measured(rise_c)).value
    found = enthalpy_per_mole(Measured(heat), Measured(cm3 * molar / 1000), "water formed")
    assert found.value == pytest.approx(enthalpy, abs=0.06)


def test_aqa_ethanedioic_acid() -> None:
    """AQA: 25 cm³ of 0.800 mol/dm³ with 75 cm³ of 0.60 mol/dm³ KOH, 3.2 °C, 4.2 J/(g K): 1344 J; 0.020, 0.045 mol."""
    oxalic = pair("ethanedioic acid", "potassium hydroxide")
    assert heat_taken_up(school(100, 4.2), Measured(3.2)).value == pytest.approx(1344)
    water = water_formed(oxalic, Measured(0.800), Measured(25), Measured(0.60), Measured(75))
    alkali, acid, formed = water.steps
    assert (acid.value, alkali.value) == pytest.approx((0.020, 0.045))
    assert formed.value == pytest.approx(0.040)
    assert "ethanedioic acid runs out first" in formed.text


def test_school_example_with_sulfuric_acid() -> None:
    """IB-type: 50.0 cm³ of 1.0 mol/dm³ NaOH with 30.0 cm³ of 1.0 mol/dm³ H₂SO₄, from the mean start: -53.6 kJ/mol."""
    start = (50.0 * 22.39 + 30.0 * 23.79) / 80.0
    heat = heat_taken_up(school(80.0), Measured(31.09 - start)).value
    water = water_formed(pair("sulfuric acid"), Measured(1.0), Measured(30.0), Measured(1.0), Measured(50.0)).value
    assert enthalpy_per_mole(Measured(heat), Measured(water), "water formed").value == pytest.approx(-54, abs=1.0)


def test_new_south_wales_citric_acid() -> None:
    """HSC Chemistry 2020, question 25: 1.0 mol/dm³ citric acid, 2.4 cm³ for 8.0 cm³ of NaOH: 0.90 mol/dm³."""
    citric = pair("citric acid")
    found = acid_concentration(citric, Measured(2.4), Measured(0.90), Measured(8.0))
    assert found.value == pytest.approx(1.0, abs=0.001)


def test_ib_crossing() -> None:
    """IB May 2017 SL paper 3: 25.0 cm³ of NaOH, 1.00 mol/dm³ HCl, lines meet at 35 cm³: 1.40 mol/dm³ of alkali."""
    found = acid_concentration(pair(), Measured(35.0), Measured(1.40), Measured(25.0))
    assert found.value == pytest.approx(1.00)


def test_the_cup_takes_its_share() -> None:
    """100 g of water and a cup of 13.52 J/K warmed by 7 °C take 2926 + 94.64 J."""
    found = heat_taken_up(school(100, 4.18, 13.52), Measured(7.0))
    assert found.value == pytest.approx(3020.64)
    assert [step.formula for step in found.steps] == ["q = m c ΔT", "q = m c ΔT + C ΔT"]


def test_heat_per_cm3_of_alkali_becomes_an_enthalpy() -> None:
    """0.400 mol/dm³ at -57 kJ/mol gives 22.8 J for each cm³; by hand, u adds the two relative parts."""
    found = enthalpy_from_heat_per_cm3(pair(), Measured(22.8, 0.228), Measured(0.400, 0.002))
    assert found.value == pytest.approx(-57.0)
    assert found.u == pytest.approx(57.0 * math.hypot(0.01, 0.005))
    calcium = pair("HCl", "Ca(OH)2")
    assert enthalpy_from_heat_per_cm3(calcium, Measured(2.28), Measured(0.02)).value == pytest.approx(-57.0)


RESULT = {
    "acid_cm3": Measured(25.0, 0.06),
    "alkali_mol_dm3": Measured(0.400, 0.002),
    "end_point_cm3": Measured(24.6, 0.12),
    "rise_c": Measured(2.60, 0.05),
}
ABSORBER = Absorber(Measured(50.3, 0.1), Measured(4.11, 0.01), Measured(5.0, 3.0))


def test_uncertainties_agree_with_the_gum_sum_of_squares() -> None:
    """JCGM 100:2008, 5.1.2 and 5.1.6, by hand for this product of powers."""
    found = neutralisation_result(pair("HNO3", "KOH"), absorber=ABSORBER, **RESULT)
    amount = math.hypot(0.002 / 0.400, 0.12 / 24.6)
    assert found.water_mol.u / found.water_mol.value == pytest.approx(amount, rel=1e-6)
    acid = math.hypot(amount, 0.06 / 25.0)
    assert found.acid_mol_dm3.u / found.acid_mol_dm3.value == pytest.approx(acid, rel=1e-6)
    capacity = 50.3 * 4.11 + 5.0
    u_capacity = math.hypot(4.11 * 0.1, 50.3 * 0.01, 3.0)
    heat = math.hypot(u_capacity / capacity, 0.05 / 2.60)
    assert found.heat_j.u / found.heat_j.value == pytest.approx(heat, rel=1e-6)
    assert found.enthalpy_kj_mol.u == pytest.approx(-found.enthalpy_kj_mol.value * math.hypot(heat, amount), rel=1e-6)
    assert found.enthalpy_kj_mol.value < 0


def test_uncertainties_agree_with_a_simulation() -> None:
    """JCGM 101:2008 in small: 20,000 draws of the inputs; the spread of the enthalpy within 3 %."""
    draw = random.Random(7)
    inputs = [*RESULT.values(), ABSORBER.mass_g, ABSORBER.heat_capacity_j_g_k, ABSORBER.cup_j_k]

    def enthalpy() -> float:
        _, molar, end, rise, mass, capacity, cup = (draw.gauss(*figure) for figure in inputs)
        return -(mass * capacity + cup) * rise / (molar * end)

    spread = statistics.stdev(enthalpy() for _ in range(20_000))
    found = neutralisation_result(pair("HNO3", "KOH"), absorber=ABSORBER, **RESULT)
    assert found.enthalpy_kj_mol.u == pytest.approx(spread, rel=0.03)


def test_every_result_has_the_line_that_made_it() -> None:
    found = neutralisation_result(pair("H2SO4", "NaOH"), absorber=ABSORBER, **RESULT)
    assert [step.unit for step in found.steps] == ["mol", "mol", "mol/dm³", "mol", "J", "J", "kJ/mol"]
    by_unit = {step.unit: (step.value, step.u) for step in found.steps}
    assert by_unit["mol/dm³"] == found.acid_mol_dm3
    assert by_unit["kJ/mol"] == found.enthalpy_kj_mol
    assert by_unit["J"] == found.heat_j
    first = found.steps[0]
    assert first.working == "n = 0.400 mol/dm³ × 24.6 cm³ ÷ 1000"
    assert first.answer == "0.009840 ± 0.000069 mol"
    assert found.steps[1].working.endswith("× 1/2")
    assert found.steps[-1].formula == "ΔH = -q ÷ n ÷ 1000"


@pytest.mark.parametrize(
    ("figure", "name"),
    [
        ("acid_cm3", "the volume of acid"),
        ("alkali_mol_dm3", "the alkali's concentration"),
        ("end_point_cm3", "the volume of alkali"),
    ],
)
@pytest.mark.parametrize("value", [0.0, -1.0, float("nan")])
def test_what_cannot_be_is_refused_by_name(figure: str, name: str, value: float) -> None:
    with pytest.raises(ValueError, match=name):
        neutralisation_result(pair(), absorber=ABSORBER, **{**RESULT, figure: Measured(value)})


def test_no_amount_gives_no_enthalpy() -> None:
    with pytest.raises(ValueError, match="amount of water formed must be above 0"):
        enthalpy_per_mole(Measured(100.0), Measured(0.0), "water formed")
