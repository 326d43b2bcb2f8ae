"""What contradicts what is known, said in words: nothing is refused for it and nothing is dropped."""

from collections.abc import Sequence

from station.analysis.heat_inputs import HeatSetup
from station.chemistry.neutralisation import expected_enthalpy
from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.dataset import Known, ReadingRow
from station.practical.plan import PortionsPlan

FAR_C = 5.0
MARGIN = 1.15
SLACK_C = 0.5
CONTRADICTS = 0.10
STRONGEST_KJ_MOL = 70.0  # more than any acid and alkali in the table give per mole of water


def reagent_notes(plan: PortionsPlan) -> list[str]:
    """Say when acid and alkali of the plan cannot be what they are called, or react in an unusual way."""
    try:
        pair = neutralisation_steps(find_reagent(plan.acid.name), find_reagent(plan.alkali.name))
    except WrongPairError as error:
        return [f"Check the plan: {error}."]
    return [f"{pair.remark[:1].upper()}{pair.remark[1:]}."] if pair.remark else []


def reading_notes(plan: PortionsPlan, rows: Sequence[ReadingRow], setup: HeatSetup | None, known: Known) -> list[str]:
    """Say when the probe is far off, or the temperature rises more than the reagents can make it."""
    notes: list[str] = []
    start = next((row for row in rows if row.portion == 0), None)
    if start is None:
        return notes
    for name, elsewhere_c in (("room", plan.surroundings.room_c), ("alkali", known.alkali_c)):
        if elsewhere_c is not None and abs(start.temperature_c - elsewhere_c) > FAR_C:
            notes.append(
                f"The start reads {start.temperature_c:.1f} °C but the {name} {elsewhere_c:.1f} °C: was the probe in "
                "the cup, and is it the right one?"
            )
    if setup is None:
        return notes
    for row in rows:
        rise_c = row.temperature_c - start.temperature_c
        most_c = _most_c(plan, row.volume_cm3, setup)
        if abs(rise_c) > MARGIN * most_c + SLACK_C:
            notes.append(
                f"After {row.volume_cm3:g} cm³ the change is {rise_c:.1f} °C, but these reagents can give "
                f"{most_c:.1f} °C at most: check concentrations, bottles and the probe."
            )
            break
    return notes


def end_point_notes(plan: PortionsPlan, pair: Neutralisation | None, end_point_cm3: float, u_cm3: float) -> list[str]:
    """Say when the end-point contradicts a concentration that is known."""
    if pair is None or plan.acid.concentration_mol_dm3 is None:
        return []
    acid_mol = plan.acid.concentration_mol_dm3 * plan.acid.volume_cm3
    expected_cm3 = acid_mol / (plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali)
    if abs(end_point_cm3 - expected_cm3) <= max(CONTRADICTS * expected_cm3, 3.0 * u_cm3):
        return []
    words = f"The concentrations say {expected_cm3:.1f} cm³, the end-point is {end_point_cm3:.1f} cm³"
    mirrored_cm3 = plan.acid.volume_cm3**2 / expected_cm3
    if abs(end_point_cm3 - mirrored_cm3) <= max(0.05 * mirrored_cm3, u_cm3):
        return [f"{words}: were acid and alkali exchanged?"]
    return [f"{words}: were the bottles, the plan and the volumes right?"]


def enthalpy_notes(
    plan: PortionsPlan, pair: Neutralisation | None, acid_mol_dm3: float, enthalpy_kj_mol: float, u_kj_mol: float
) -> list[str]:
    """Say when the enthalpy is far from what the reagents give at these concentrations."""
    if pair is None:
        return []
    try:
        expected = expected_enthalpy(
            pair.acid, acid_mol_dm3, pair.alkali, plan.alkali.concentration_mol_dm3, 22.0
        ).enthalpy_kj_mol
    except ValueError:
        return []
    if abs(enthalpy_kj_mol - expected) <= max(0.15 * abs(expected), 3.0 * u_kj_mol):
        return []
    return [
        f"The enthalpy is {enthalpy_kj_mol:.0f} kJ/mol where {expected:.0f} kJ/mol is expected: check the "
        "concentration of the alkali, the volumes and the lid."
    ]


def _most_c(plan: PortionsPlan, volume_cm3: float, setup: HeatSetup) -> float:
    alkali_mol = plan.alkali.concentration_mol_dm3 * volume_cm3 / 1000 * setup.water_per_alkali
    if plan.acid.concentration_mol_dm3 is not None:
        acid_mol = plan.acid.concentration_mol_dm3 * plan.acid.volume_cm3 / 1000
        alkali_mol = min(alkali_mol, acid_mol / setup.acid_per_alkali * setup.water_per_alkali)
    contents_j_k = setup.acid_volume_cm3.value * setup.acid_j_cm3_k + volume_cm3 * setup.alkali_j_cm3_k
    return alkali_mol * STRONGEST_KJ_MOL * 1000 / contents_j_k
