"""Salts and their hydrates mixed once in virtual cups: published enthalpies of solution come back."""

from typing import Any

import pytest

from station.bench.virtual.cup import nitric_acid_and_potassium_hydroxide, of_plan
from station.bench.virtual.world import World
from station.practical.dataset import Known, RepeatData
from station.practical.kinds import plan_from
from station.practical.results import results

DILUTION_KJ_MOL = 0.5, 5.0
"""Books give the value in very much water. Here it is a few tenths of a mole per litre: ions of one charge change it by
tenths of a kJ/mol, of two charges by some (`chemistry.neutralisation.relative_enthalpy`)."""


def measured(name: str, mass_g: float, cup_j_k: float = 9.0) -> dict[str, Any]:
    """The mean results of one cup of 100 cm³ of water, whose heat capacity is known (the virtual cup's is 9 J/K)."""
    plan = plan_from(
        {
            "kind": "once",
            "liquid": {"name": "water", "volume_cm3": 100},
            "addition": {"name": name, "mass_g": mass_g},
            "cup": {"heat_capacity_j_k": cup_j_k, "u_heat_capacity_j_k": 0.5},
        }
    )
    world = World(of_plan(nitric_acid_and_potassium_hydroxide(2), plan), 5)
    rows: list[tuple[float, float]] = []
    time_s, poured = 0.0, False
    while time_s < 430.0:
        time_s += 0.93
        if time_s > 140.0 and not poured:
            world.advance(140.0)
            world.pour(mass_g, 2.0)
            poured = True
        world.advance(time_s)
        rows.append((round(time_s, 2), world.reading_c()))
    repeat = RepeatData(1, (), tuple(rows), ((141.0, 0.0, False),), mass_g=mass_g, places=2)
    found: dict[str, Any] = results(plan, [repeat], Known())["mean"]
    return found


@pytest.mark.parametrize(
    ("name", "mass_g", "published_kj_mol", "dilution_kj_mol"),
    [
        # Parker, NSRDS-NBS 2 (1965), infinite dilution, 25 °C.
        ("potassium chloride", 6.0, 17.22, DILUTION_KJ_MOL[0]),
        # Wagman et al., NBS tables, J. Phys. Chem. Ref. Data 11, suppl. 2 (1982): differences of the values there.
        ("magnesium sulfate heptahydrate", 6.0, 11.8, DILUTION_KJ_MOL[1]),
        ("sodium carbonate decahydrate", 6.0, 65.6, DILUTION_KJ_MOL[1]),
    ],
)
def test_published_enthalpies_of_solution_come_back(
    name: str, mass_g: float, published_kj_mol: float, dilution_kj_mol: float
) -> None:
    found = measured(name, mass_g)
    for method in ("straight_lines", "heat_balance"):
        value, u = found[method]["enthalpy_kj_mol"], found[method]["u_enthalpy_kj_mol"]
        assert abs(value - published_kj_mol) < 2.0 * u + dilution_kj_mol, method
        assert value == pytest.approx(found["accepted"]["enthalpy_kj_mol"], abs=2.0 * u), method


def test_a_salt_and_its_hydrate_are_as_far_apart_as_published() -> None:
    """CuSO₄ + 5 H₂O → CuSO₄·5H₂O: −77.8 kJ/mol in a Russian problem book (chemer.ru, PNRPU no. 79: −66.11 − 11.72), −79
    in a German one (chemielounge.de, 3703: −68 − 11)."""
    anhydrous, hydrate = (
        measured(name, mass_g)["heat_balance"]
        for name, mass_g in (("copper(II) sulfate", 4.0), ("copper(II) sulfate pentahydrate", 6.26))
    )
    hydration_kj_mol = anhydrous["enthalpy_kj_mol"] - hydrate["enthalpy_kj_mol"]
    assert hydration_kj_mol == pytest.approx(-78.4, abs=2.0)
