"""From the students' own end-point to the acid's concentration, and to the enthalpy where they drew their lines."""

from station.chemistry.figures import figures
from station.chemistry.pairs import Neutralisation, WrongPairError
from station.practical.course import MeanPoint
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.own_working import OwnSheet, degrees
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.state import OwnReading
from station.words import say


def own_working(plan: PortionsPlan, own: OwnReading, mean: list[MeanPoint], division_c: float) -> list[OwnStep]:
    """Return the lines of the calculation; none without an end-point, or for two reagents that are no neutralisation.

    `mean` are the mean readings, `division_c` is the smallest division of the thermometer.
    """
    if own.end_point_cm3 is None:
        return []
    try:
        pair = plan.pair
    except WrongPairError:
        return []
    sheet, end_cm3 = OwnSheet(), own.end_point_cm3
    alkali = sheet.amount(pair.alkali.name, plan.alkali.concentration_mol_dm3, end_cm3)
    acid = _acid(sheet, pair, alkali)
    concentration = acid / plan.acid.volume_cm3 * 1000
    sheet.line(
        say("step-concentration", acid=pair.acid.name),
        "c = n ÷ V",
        f"c = {figures(acid)} mol ÷ {figures(plan.acid.volume_cm3)} cm³ × 1000",
        concentration,
        "mol/dm³",
        figures(concentration, 3, 3),
    )
    start, top_c = (mean[0] if mean and mean[0]["volume_cm3"] == 0 else None), _top_c(own, end_cm3)
    if start is not None and top_c is not None and not pair.alkali.gives_gas:
        _enthalpy(sheet, plan, pair, (alkali, end_cm3, start["temperature_c"], top_c), division_c)
    return sheet.steps


def _acid(sheet: OwnSheet, pair: Neutralisation, alkali_mol: float) -> float:
    if pair.acid_protons == pair.alkali_hydroxides:
        return alkali_mol
    parts = {"hydroxides": pair.alkali_hydroxides, "protons": pair.acid_protons}
    moles = {"acid_mol": pair.alkali_hydroxides, "alkali_mol": pair.acid_protons}
    return sheet.line(
        say("step-amount-of-acid", acid=pair.acid.name, **moles),
        say("formula-acid-from-alkali", **parts),
        say("formula-acid-from-alkali-figures", alkali_mol=figures(alkali_mol), **parts),
        alkali_mol * pair.acid_per_alkali,
        "mol",
    )


def _top_c(own: OwnReading, end_cm3: float) -> float | None:
    """The temperature on the students' own first line at their end-point; None without lines."""
    line = own.before
    return None if line is None else line["intercept_c"] + line["slope_c_cm3"] * end_cm3


def _enthalpy(
    sheet: OwnSheet,
    plan: PortionsPlan,
    pair: Neutralisation,
    read: tuple[float, float, float, float],
    division_c: float,
) -> None:
    alkali_mol, end_cm3, start_c, top_c = read
    change = sheet.line(
        say("step-change-to-crossing"),
        say("formula-change-crossing"),
        f"ΔT = {degrees(top_c)} °C - {degrees(start_c)} °C",
        round(top_c, 2) - round(start_c, 2),
        "°C",
        degrees(round(top_c, 2) - round(start_c, 2)),
    )
    if change == 0:
        return
    mass = sheet.line(
        say("step-mass-of-liquid"),
        say("formula-mass-acid-alkali"),
        f"m = ({figures(plan.acid.volume_cm3)} cm³ + {figures(end_cm3)} cm³) × 1 g/cm³",
        plan.acid.volume_cm3 + end_cm3,
        "g",
    )
    heat = sheet.heat(mass, change)
    water = sheet.water(pair, alkali_mol)
    sheet.enthalpy(heat, water, say("of-water-formed"))
    sheet.percentage(division_c, change)
