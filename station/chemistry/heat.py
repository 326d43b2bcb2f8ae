"""From readings to amounts, heat and enthalpy, as a student would write it, each with its ±.

Signs: ``rise_c`` is positive when the liquid warms, heat taken up by the liquid then is positive, and an
enthalpy change is negative when heat is given out. Volumes are in cm³, concentrations in mol/dm³, heat in J,
enthalpies in kJ/mol. Every function raises ``ValueError`` naming the figure that cannot be.
"""

import math
from dataclasses import dataclass
from math import isclose
from typing import Final, NamedTuple, TypeAlias

from uncertainties import ufloat
from uncertainties.core import AffineScalarFunc, nominal_value, std_dev

from station.chemistry.figures import figures
from station.chemistry.pairs import Neutralisation
from station.chemistry.reagent import Reagent
from station.words import Message, say

# A calculation that can be shown: every number keeps the line that made it, and its standard uncertainty.
#
# Uncertainties follow the GUM (JCGM 100:2008), carried to first order with all correlations by the
# ``uncertainties`` library, which is loaded here and nowhere else: it brings numpy with it, so the sampling
# process should not import this module before it has something to show.


Number: TypeAlias = AffineScalarFunc | float
"""A number in a calculation: with its uncertainty, or exact."""


class Measured(NamedTuple):
    """A value with its standard uncertainty (0 when it is taken as exact)."""

    value: float
    u: float = 0.0


NOTHING: Final = Measured(0.0)
"""An exact zero: the heat capacity of a cup that is left out of the account."""


@dataclass(frozen=True, slots=True)
class Step:
    """One line of a calculation.

    ``text``: what is worked out, in words. ``formula``: in symbols. ``working``: with the numbers put in; messages
    where they have words. ``value``, ``u``, ``unit``: the result.
    """

    text: Message
    formula: str
    working: str
    value: float
    u: float
    unit: str

    @property
    def answer(self) -> str:
        """The result as one would write it: ``"2887 ± 42 J"``."""
        return f"{show(self.value, self.u)} {self.unit}".rstrip()


class Sheet:
    """Collects steps while numbers that know their uncertainty pass through."""

    def __init__(self) -> None:
        self.steps: list[Step] = []

    def line(self, text: Message, formula: str, working: str, result: Number, unit: str) -> Number:
        """Write one line down and hand its result on."""
        self.steps.append(Step(text, formula, working, *measured(result), unit))
        return result


def number(measured: Measured, name: str) -> Number:
    """Bring a measured value into a calculation; an exact one stays a plain float.

    Raises ``ValueError`` naming it when it is not finite or its uncertainty is negative.
    """
    if not (math.isfinite(measured.value) and math.isfinite(measured.u) and measured.u >= 0):
        raise ValueError(f"{name} must be a number with an uncertainty of 0 or more, not {tuple(measured)}")
    return ufloat(measured.value, measured.u) if measured.u > 0 else measured.value


def nominal(result: Number) -> float:
    """The value of a number without its uncertainty."""
    return float(nominal_value(result))


def measured(result: Number) -> Measured:
    """Take a result out of a calculation."""
    return Measured(nominal(result), float(std_dev(result)))


def show(value: float, u: float = 0.0) -> str:
    """Write a value to the second digit of its uncertainty, or to four figures when it has none."""
    if not u > 0:
        return f"{value:.4g}" if abs(value) < 1e4 else f"{value:.0f}"
    places = 1 - math.floor(math.log10(u))
    if places >= 0:
        return f"{value:.{places}f} ± {u:.{places}f}"
    return f"{round(value, places):.0f} ± {round(u, places):.0f}"


def put(result: Number) -> str:
    """Write a number as it goes into the next line: without its uncertainty, in three or four figures."""
    return figures(nominal(result))


@dataclass(frozen=True, slots=True)
class Worked:
    """A result with its unit and the steps that led to it."""

    value: float
    u: float
    unit: str
    steps: tuple[Step, ...]


@dataclass(frozen=True, slots=True)
class Absorber:
    """What takes up the heat: a mass of liquid with its specific heat capacity, and the cup and probe.

    The school's figures are 1 g for each cm³, 4.18 J/(g K) and no cup; better ones come from ``cup`` and from
    a test of the cup.
    """

    mass_g: Measured
    heat_capacity_j_g_k: Measured
    cup_j_k: Measured = NOTHING


@dataclass(frozen=True, slots=True)
class NeutralisationResult:
    """Everything a neutralisation gives, with one list of steps; correlations are kept between its figures."""

    acid_mol_dm3: Measured
    water_mol: Measured
    heat_j: Measured
    enthalpy_kj_mol: Measured
    steps: tuple[Step, ...]


def acid_concentration(
    pair: Neutralisation, acid_cm3: Measured, alkali_mol_dm3: Measured, end_point_cm3: Measured
) -> Worked:
    """Concentration of the acid from the end-point."""
    sheet = Sheet()
    alkali = _amount_of_alkali(sheet, pair, alkali_mol_dm3, end_point_cm3)
    return _worked(sheet, _acid_concentration(sheet, pair, acid_cm3, alkali), "mol/dm³")


def heat_taken_up(absorber: Absorber, rise_c: Measured) -> Worked:
    """Heat the contents of the cup took up: q = m c ΔT, and the cup's own share if it has one."""
    sheet = Sheet()
    return _worked(sheet, _heat(sheet, absorber, rise_c), "J")


def enthalpy_per_mole(heat_j: Measured, amount_mol: Measured, of_what: str) -> Worked:
    """Enthalpy change per mole from the heat the liquid took up: ΔH = -q / n."""
    sheet = Sheet()
    heat, amount = number(heat_j, say("figure-heat")), number(amount_mol, say("figure-amount"))
    return _worked(sheet, _enthalpy(sheet, heat, amount, of_what), "kJ/mol")


def enthalpy_from_heat_per_cm3(pair: Neutralisation, heat_j_cm3: Measured, alkali_mol_dm3: Measured) -> Worked:
    """Enthalpy per mole of water formed from the heat that one cm³ of alkali gives up to the end-point."""
    sheet = Sheet()
    alkali = _positive(alkali_mol_dm3, say("figure-alkali-concentration"))
    amount = sheet.line(
        say("step-water-per-cm3", alkali=pair.alkali.name),
        "n = c V" if pair.alkali_hydroxides == 1 else f"n = {pair.alkali_hydroxides} c V",
        f"n = {_times(pair.alkali_hydroxides)}{put(alkali)} mol/dm³ × 1 cm³ ÷ 1000",
        pair.alkali_hydroxides * alkali / 1000,
        "mol",
    )
    heat = number(heat_j_cm3, say("figure-heat-per-cm3"))
    return _worked(sheet, _enthalpy(sheet, heat, amount, say("of-water-formed")), "kJ/mol")


def neutralisation_result(
    pair: Neutralisation,
    *,
    acid_cm3: Measured,
    alkali_mol_dm3: Measured,
    end_point_cm3: Measured,
    absorber: Absorber,
    rise_c: Measured,
) -> NeutralisationResult:
    """Concentration of the acid, amount of water, heat and enthalpy from the end-point and the rise there."""
    sheet = Sheet()
    alkali = _amount_of_alkali(sheet, pair, alkali_mol_dm3, end_point_cm3)
    acid = _acid_concentration(sheet, pair, acid_cm3, alkali)
    water = sheet.line(
        say("step-water-formed"),
        f"n(H₂O) = {_times(pair.alkali_hydroxides)}n({pair.alkali.formula})",
        f"n(H₂O) = {_times(pair.alkali_hydroxides)}{put(alkali)} mol",
        pair.alkali_hydroxides * alkali,
        "mol",
    )
    heat = _heat(sheet, absorber, rise_c)
    enthalpy = _enthalpy(sheet, heat, water, say("of-water-formed"))
    return NeutralisationResult(measured(acid), measured(water), measured(heat), measured(enthalpy), tuple(sheet.steps))


def dissolving_enthalpy(solid: Reagent, solid_g: Measured, absorber: Absorber, rise_c: Measured) -> Worked:
    """Enthalpy change of dissolving one mole of a solid; the absorber's mass includes the solid."""
    sheet = Sheet()
    mass = _positive(solid_g, say("figure-solid-mass"))
    amount = sheet.line(
        say("step-amount", reagent=solid.weighed_name),
        "n = m ÷ M",
        f"n = {put(mass)} g ÷ {put(solid.molar_mass_g_mol)} g/mol",
        mass / solid.molar_mass_g_mol,
        "mol",
    )
    heat = _heat(sheet, absorber, rise_c)
    return _worked(sheet, _enthalpy(sheet, heat, amount, solid.weighed_name), "kJ/mol")


def water_formed(
    pair: Neutralisation,
    acid_mol_dm3: Measured,
    acid_cm3: Measured,
    alkali_mol_dm3: Measured,
    alkali_cm3: Measured,
) -> Worked:
    """Amount of water when all is poured at once: the reagent that runs out decides."""
    sheet = Sheet()
    concentration = _positive(acid_mol_dm3, say("figure-acid-concentration"))
    volume = _positive(acid_cm3, say("figure-acid-volume"))
    alkali = _amount_of_alkali(sheet, pair, alkali_mol_dm3, alkali_cm3)
    amount = sheet.line(
        say("step-amount", reagent=pair.acid.name),
        "n = c V",
        f"n = {put(concentration)} mol/dm³ × {put(volume)} cm³ ÷ 1000",
        concentration * volume / 1000,
        "mol",
    )
    from_acid, from_alkali = pair.acid_protons * amount, pair.alkali_hydroxides * alkali
    scarce, least = (pair.acid, from_acid) if nominal(from_acid) < nominal(from_alkali) else (pair.alkali, from_alkali)
    equal = isclose(nominal(from_acid), nominal(from_alkali), rel_tol=1e-6)
    result = sheet.line(
        say("step-water-formed-neither-left") if equal else say("step-water-formed-runs-out", reagent=scarce.name),
        say("formula-water-smaller"),
        say("formula-water-smaller-figures", acid_mol=put(from_acid), alkali_mol=put(from_alkali)),
        least,
        "mol",
    )
    return _worked(sheet, result, "mol")


def _amount_of_alkali(sheet: Sheet, pair: Neutralisation, alkali_mol_dm3: Measured, cm3: Measured) -> Number:
    alkali = _positive(alkali_mol_dm3, say("figure-alkali-concentration"))
    volume = _positive(cm3, say("figure-alkali-volume"))
    return sheet.line(
        say("step-amount", reagent=pair.alkali.name),
        "n = c V",
        f"n = {put(alkali)} mol/dm³ × {put(volume)} cm³ ÷ 1000",
        alkali * volume / 1000,
        "mol",
    )


def _acid_concentration(sheet: Sheet, pair: Neutralisation, acid_cm3: Measured, alkali: Number) -> Number:
    volume = _positive(acid_cm3, say("figure-volume-of-acid"))
    acid = amount_of_acid(sheet, pair, alkali)
    return sheet.line(
        say("step-concentration", acid=pair.acid.name),
        "c = n ÷ V",
        f"c = {put(acid)} mol ÷ {put(volume)} cm³ × 1000",
        acid / volume * 1000,
        "mol/dm³",
    )


def amount_of_acid(sheet: Sheet, pair: Neutralisation, alkali_mol: Number) -> Number:
    """Moles of acid that so many moles of alkali neutralise; no line is needed where they are as many."""
    if pair.acid_protons == pair.alkali_hydroxides:
        return alkali_mol
    parts = {"hydroxides": pair.alkali_hydroxides, "protons": pair.acid_protons}
    return sheet.line(
        say(
            "step-amount-of-acid",
            acid=pair.acid.name,
            acid_mol=pair.alkali_hydroxides,
            alkali_mol=pair.acid_protons,
        ),
        say("formula-acid-from-alkali", **parts),
        say("formula-acid-from-alkali-figures", alkali_mol=put(alkali_mol), **parts),
        alkali_mol * pair.acid_per_alkali,
        "mol",
    )


def _heat(sheet: Sheet, absorber: Absorber, rise_c: Measured) -> Number:
    mass = _positive(absorber.mass_g, say("figure-liquid-mass"))
    capacity = _positive(absorber.heat_capacity_j_g_k, say("figure-heat-capacity-specific"))
    rise = number(rise_c, say("figure-temperature-change"))
    cup = number(absorber.cup_j_k, say("figure-cup-heat-capacity"))
    heat = sheet.line(
        say("step-heat-liquid"),
        "q = m c ΔT",
        f"q = {put(mass)} g × {put(capacity)} J/(g °C) × {put(rise)} °C",
        mass * capacity * rise,
        "J",
    )
    if absorber.cup_j_k == NOTHING:
        return heat
    return sheet.line(
        say("step-heat-liquid-cup-probe"),
        "q = m c ΔT + C ΔT",
        f"q = {put(heat)} J + {put(cup)} J/°C × {put(rise)} °C",
        heat + cup * rise,
        "J",
    )


def _enthalpy(sheet: Sheet, heat: Number, amount: Number, of_what: str) -> Number:
    if not nominal(amount) > 0:
        raise ValueError(say("problem-amount-not-above-0", of=of_what))
    return sheet.line(
        say("step-enthalpy", of=of_what),
        "ΔH = -q ÷ n ÷ 1000",
        f"ΔH = -({put(heat)} J) ÷ {put(amount)} mol ÷ 1000",
        -heat / amount / 1000,
        "kJ/mol",
    )


def _positive(figure: Measured, name: Message) -> Number:
    if not figure.value > 0:
        raise ValueError(say("problem-not-above-0", figure=name, value=figure.value))
    return number(figure, name)


def _times(count: int) -> str:
    return "" if count == 1 else f"{count} × "


def _worked(sheet: Sheet, result: Number, unit: str) -> Worked:
    value, u = measured(result)
    return Worked(value, u, unit, tuple(sheet.steps))
