"""From the students' own change of temperature to the heat, and to the enthalpy per mole where the amount is known."""

from math import isclose

from station.chemistry.figures import figures
from station.chemistry.pairs import WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.course import MeanPoint
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.own_working import OwnSheet
from station.practical.state import OwnReading
from station.words import Message, say


def own_working(plan: OncePlan, own: OwnReading, _: list[MeanPoint], division_c: float) -> list[OwnStep]:
    """Return the lines of the calculation; none without a change of temperature."""
    if not own.change_c:
        return []
    sheet, change_c = OwnSheet(), round(own.change_c, 2)
    added_g = plan.portion_cm3 if plan.addition.mass_g is None else plan.addition.mass_g
    mass = sheet.line(
        say("step-mass-of-mixture"),
        say("formula-mass-liquid-added"),
        f"m = {figures(plan.liquid.volume_cm3)} g + {figures(added_g)} g",
        plan.liquid.volume_cm3 + added_g,
        "g",
    )
    heat = sheet.heat(mass, change_c)
    found = _amount(sheet, plan)
    if found is not None:
        sheet.enthalpy(heat, *found)
    if change_c:
        sheet.percentage(division_c, change_c)
    return sheet.steps


def _amount(sheet: OwnSheet, plan: OncePlan) -> tuple[float, Message] | None:
    """The amount that reacts, in mol, and of what; None where it is not known."""
    addition = find_reagent(plan.addition.name)
    if plan.addition.mass_g is not None:
        molar = addition.molar_mass_g_mol
        amount = sheet.line(
            say("step-amount", reagent=addition.weighed_name),
            "n = m ÷ M",
            f"n = {figures(plan.addition.mass_g)} g ÷ {figures(molar)} g/mol",
            plan.addition.mass_g / float(figures(molar)),
            "mol",
        )
        return amount, say("of-dissolved", reagent=addition.weighed_name)
    if plan.liquid.concentration_mol_dm3 is None or plan.addition.concentration_mol_dm3 is None:
        return None
    liquid = find_reagent(plan.liquid.name)
    pour = (
        (liquid, plan.liquid.concentration_mol_dm3, plan.liquid.volume_cm3),
        (addition, plan.addition.concentration_mol_dm3, plan.portion_cm3),
    )
    acid, alkali = pour if liquid.is_acid else pour[::-1]
    try:
        pair = neutralisation_steps(acid[0], alkali[0])
    except WrongPairError:
        return None
    acid_mol = sheet.amount(pair.acid.name, *acid[1:])
    alkali_mol = sheet.amount(pair.alkali.name, *alkali[1:])
    by_acid, by_alkali = pair.acid_protons * acid_mol, pair.alkali_hydroxides * alkali_mol
    equal = isclose(by_acid, by_alkali, rel_tol=1e-3)
    scarce = pair.acid if by_acid < by_alkali else pair.alkali
    water = sheet.line(
        say("step-water-formed-neither-left") if equal else say("step-water-formed-runs-out", reagent=scarce.name),
        say("formula-water-smaller"),
        say("formula-water-smaller-figures", acid_mol=figures(by_acid), alkali_mol=figures(by_alkali)),
        min(by_acid, by_alkali),
        "mol",
    )
    return water, say("of-water-formed")
