"""Cups mixed once against published examples: a trace of such a cup, through the heat balance, to the answer."""

from __future__ import annotations

from dataclasses import replace

import pytest

from station.analysis.heat.inputs import Estimate, Trace
from station.analysis.once.enthalpy import enthalpy_once, extrapolate
from station.analysis.once.fit import fit_once
from station.analysis.once.inputs import SOLIDS_S, OnceHeat, OnceSetup
from station.chemistry.cup import dissolved_contents
from station.chemistry.reagents import find_reagent
from tests.analysis.once_cup import CUP_J_K, MIXED_S, cup_trace

WHOLE = Estimate(0.0, 0.0)


def school_setup(contents_j_k: float, added_j_k: float, start_c: float) -> OnceSetup:
    """A book's cup: no heat capacity of its own (0.1 J/K here, a cup has some), all at one temperature."""
    return OnceSetup(
        Estimate(contents_j_k, 0.0),
        Estimate(added_j_k, 0.0),
        Estimate(0.1, 0.0),
        added_c=Estimate(start_c, 0.02),
        room_c=Estimate(start_c, 0.3),
        stem_share=WHOLE,
    )


def measured(setup: OnceSetup, start_c: float, change_c: float, release_s: float = 3.0) -> OnceHeat:
    time_s, temperature_c = cup_trace(change_c, start_c=start_c, room_c=start_c, release_s=release_s)
    return fit_once(Trace(time_s, temperature_c), MIXED_S, setup)


def test_openstax_hydrochloric_acid_and_sodium_hydroxide() -> None:
    # OpenStax, Chemistry 2e, example in 5.2 and its sequel in 5.3: 50.0 cm³ of each, 1.00 mol/dm³, 22.0 to 28.9 °C,
    # 100 g at 4.184 J/(g K): 2.9 × 10³ J, -58 kJ/mol (unrounded 2887 J, -57.7 kJ/mol).
    found = measured(school_setup(418.4, 209.2, 22.0), 22.0, 6.9)
    assert found.heat_j == pytest.approx(2887.0, rel=0.01)
    enthalpy = enthalpy_once(found.heat_j, found.u_heat_j, 0.0500, 0.0, "water formed")
    assert enthalpy.value == pytest.approx(-57.74, rel=0.01)
    assert enthalpy_once(2886.96, 0.0, 0.0500, 0.0).value == pytest.approx(-57.74, abs=0.005)


def test_openstax_ammonium_nitrate_dissolves_cold() -> None:
    # OpenStax, Chemistry 2e, 5.2: 3.21 g in 50.0 g of water, 24.9 to 20.3 °C, 53.2 g at 4.18: +1.0 kJ (1023.9 J at
    # 4.184). Per mole (80.043 g/mol) that is 25.5 kJ/mol; Parker, NSRDS-NBS 2 (1965), has 25.69 into much water.
    setup = replace(school_setup(53.2 * 4.184, 3.21 * 1.7, 24.9), completion_s=SOLIDS_S)
    found = measured(setup, 24.9, -4.6, release_s=12.0)
    assert found.heat_j == pytest.approx(-1023.9, rel=0.012)
    moles = 3.21 / 80.043
    enthalpy = enthalpy_once(found.heat_j, found.u_heat_j, moles, 0.0, "ammonium nitrate")
    assert enthalpy.value == pytest.approx(25.53, rel=0.012)
    assert enthalpy.value == pytest.approx(25.69, rel=0.02)


def test_openstax_potassium_chloride_dissolves_cold() -> None:
    # OpenStax, Chemistry 2e, 5.2: 3.00 g in 300 g of water, change -1.05 °C: 1.33 kJ taken in (1331 J). The change is
    # the book's: with Parker's 17.22 kJ/mol it would be about half of it, so no enthalpy per mole is checked.
    setup = replace(school_setup(303.0 * 4.184, 3.00 * 0.69, 22.0), completion_s=SOLIDS_S)
    found = measured(setup, 22.0, -1.05, release_s=10.0)
    assert found.heat_j == pytest.approx(-1331.1, rel=0.025)
    assert abs(found.heat_j + 1331.1) < 2.0 * found.u_heat_j


@pytest.mark.parametrize(
    ("name", "mass_g", "enthalpy_kj_mol"),
    # Parker, NSRDS-NBS 2 (1965), enthalpies of solution at infinite dilution, 25 °C.
    [("ammonium nitrate", 8.00, 25.69), ("potassium chloride", 6.00, 17.22), ("potassium nitrate", 5.00, 34.89)],
)
def test_parker_enthalpies_of_solution_come_back_from_a_trace(name: str, mass_g: float, enthalpy_kj_mol: float) -> None:
    solid = find_reagent(name)
    contents = dissolved_contents(solid, mass_g, 100.0, 22.0)
    moles = mass_g / solid.molar_mass_g_mol
    change_c = -1000.0 * enthalpy_kj_mol * moles / (contents.heat_capacity_j_k + CUP_J_K)
    start_c = 22.0
    setup = OnceSetup(
        Estimate(contents.heat_capacity_j_k, contents.u_relative * contents.heat_capacity_j_k),
        Estimate(1.0 * mass_g, 0.3 * mass_g),
        Estimate(CUP_J_K, 0.3),
        added_c=Estimate(start_c, 0.1),
        room_c=Estimate(start_c, 0.5),
        completion_s=SOLIDS_S,
        stem_share=WHOLE,
    )
    found = measured(setup, start_c, change_c, release_s=15.0)
    enthalpy = enthalpy_once(found.heat_j, found.u_heat_j, moles, 0.01 / solid.molar_mass_g_mol, name)
    assert enthalpy.value == pytest.approx(enthalpy_kj_mol, rel=0.015)
    assert abs(enthalpy.value - enthalpy_kj_mol) < 2.0 * enthalpy.u


def test_lines_and_heat_balance_agree_on_a_book_example() -> None:
    time_s, temperature_c = cup_trace(6.9, start_c=22.0, room_c=22.0)
    lines = extrapolate(time_s, temperature_c, MIXED_S)
    assert lines.change_c == pytest.approx(6.9, rel=0.015)
