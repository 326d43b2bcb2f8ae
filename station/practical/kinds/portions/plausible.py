"""What contradicts what is known, said in words: nothing is refused for it and nothing is dropped."""

from collections.abc import Sequence

from station.analysis.heat.inputs import HeatSetup
from station.chemistry.neutralisation import expected_enthalpy
from station.chemistry.pairs import Neutralisation, WrongPairError
from station.practical.dataset import Known, ReadingRow
from station.practical.kinds.portions.plan import PortionsPlan
from station.words import Message, say

FAR_C = 5.0
MARGIN = 1.15
SLACK_C = 0.5
CONTRADICTS = 0.10
STRONGEST_KJ_MOL = 70.0  # more than any acid and alkali in the table give per mole of water


def reagent_notes(plan: PortionsPlan) -> list[Message]:
    """Say when acid and alkali of the plan cannot be what they are called, or react in an unusual way."""
    try:
        pair = plan.pair
    except WrongPairError as error:
        return [say("plausible-check-plan", reason=str(error))]
    return [pair.remark] if pair.remark else []


def reading_notes(
    plan: PortionsPlan, rows: Sequence[ReadingRow], setup: HeatSetup | None, known: Known
) -> list[Message]:
    """Say when the probe is far off, or the temperature rises more than the reagents can make it."""
    notes: list[Message] = []
    start = next((row for row in rows if row.portion == 0), None)
    if start is None:
        return notes
    for place, elsewhere_c in (("room", plan.surroundings.room_c), ("alkali", known.alkali_c)):
        if elsewhere_c is not None and abs(start.temperature_c - elsewhere_c) > FAR_C:
            start_c, other_c = f"{start.temperature_c:.1f}", f"{elsewhere_c:.1f}"
            notes.append(say("plausible-start-far", start_c=start_c, place=place, other_c=other_c))
    if setup is None:
        return notes
    for row in rows:
        rise_c = row.temperature_c - start.temperature_c
        most_c = _most_c(plan, row.volume_cm3, setup)
        if abs(rise_c) > MARGIN * most_c + SLACK_C:
            notes.append(
                say(
                    "plausible-too-much",
                    volume_cm3=f"{row.volume_cm3:g}",
                    change_c=f"{rise_c:.1f}",
                    most_c=f"{most_c:.1f}",
                )
            )
            break
    return notes


def end_point_notes(
    plan: PortionsPlan, pair: Neutralisation | None, end_point_cm3: float, u_cm3: float
) -> list[Message]:
    """Say when the end-point contradicts a concentration that is known."""
    if pair is None or plan.acid.concentration_mol_dm3 is None:
        return []
    acid_mol = plan.acid.concentration_mol_dm3 * plan.acid.volume_cm3
    expected_cm3 = acid_mol / (plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali)
    if abs(end_point_cm3 - expected_cm3) <= max(CONTRADICTS * expected_cm3, 3.0 * u_cm3):
        return []
    mirrored_cm3 = plan.acid.volume_cm3**2 / expected_cm3
    exchanged = abs(end_point_cm3 - mirrored_cm3) <= max(0.05 * mirrored_cm3, u_cm3)
    return [
        say(
            "plausible-exchanged" if exchanged else "plausible-end-point",
            expected_cm3=f"{expected_cm3:.1f}",
            end_point_cm3=f"{end_point_cm3:.1f}",
        )
    ]


def enthalpy_notes(
    plan: PortionsPlan, pair: Neutralisation | None, acid_mol_dm3: float, enthalpy_kj_mol: float, u_kj_mol: float
) -> list[Message]:
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
    found_kj_mol, expected_kj_mol = f"{enthalpy_kj_mol:.0f}", f"{expected:.0f}"
    return [say("plausible-enthalpy", enthalpy_kj_mol=found_kj_mol, expected_kj_mol=expected_kj_mol)]


def _most_c(plan: PortionsPlan, volume_cm3: float, setup: HeatSetup) -> float:
    alkali_mol = plan.alkali.concentration_mol_dm3 * volume_cm3 / 1000 * setup.water_per_alkali
    if plan.acid.concentration_mol_dm3 is not None:
        acid_mol = plan.acid.concentration_mol_dm3 * plan.acid.volume_cm3 / 1000
        alkali_mol = min(alkali_mol, acid_mol / setup.acid_per_alkali * setup.water_per_alkali)
    contents_j_k = setup.acid_volume_cm3.value * setup.acid_j_cm3_k + volume_cm3 * setup.alkali_j_cm3_k
    return alkali_mol * STRONGEST_KJ_MOL * 1000 / contents_j_k
