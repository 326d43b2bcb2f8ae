"""From the students' own crossing to the ratio, and to the enthalpy where they drew their lines."""

from station.chemistry.figures import figures
from station.chemistry.pairs import WrongPairError
from station.practical.course import MeanPoint
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.own_working import OwnSheet, degrees
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.state import OwnReading
from station.words import say


def own_working(plan: RatiosPlan, own: OwnReading, _: list[MeanPoint], division_c: float) -> list[OwnStep]:
    """Return the lines of the calculation; none without a crossing, or for two reagents that are no neutralisation."""
    alkali_cm3, total_cm3 = own.end_point_cm3, plan.mixtures.total_cm3
    if alkali_cm3 is None or not 0.0 < alkali_cm3 < total_cm3:
        return []
    try:
        pair = plan.pair
    except WrongPairError:
        return []
    sheet = OwnSheet()
    acid_cm3 = sheet.line(
        say("step-acid-at-crossing"),
        say("formula-acid-at-crossing"),
        f"V = {figures(total_cm3)} cm³ - {figures(alkali_cm3)} cm³",
        total_cm3 - alkali_cm3,
        "cm³",
    )
    if acid_cm3 <= 0.0:
        return []
    acid = sheet.amount(pair.acid.name, plan.acid.concentration_mol_dm3, acid_cm3)
    alkali = sheet.amount(pair.alkali.name, plan.alkali.concentration_mol_dm3, alkali_cm3)
    ratio = alkali / acid
    sheet.line(
        say("step-ratio", alkali=pair.alkali.name, acid=pair.acid.name),
        say("formula-ratio"),
        f"{figures(alkali)} mol ÷ {figures(acid)} mol",
        ratio,
        "",
        figures(ratio, 3, 3),
    )
    line = own.before
    top_c = None if line is None else line["intercept_c"] + line["slope_c_cm3"] * alkali_cm3
    if top_c is None or round(top_c, 2) == 0.0 or pair.alkali.gives_gas:
        return sheet.steps
    rise = sheet.line(
        say("step-rise-at-crossing"),
        say("formula-rise-at-crossing"),
        f"ΔT = {degrees(top_c)} °C",
        round(top_c, 2),
        "°C",
    )
    heat = sheet.heat(total_cm3, rise)
    sheet.enthalpy(heat, sheet.water(pair, alkali), say("of-water-formed"))
    sheet.percentage(division_c, rise)
    return sheet.steps
