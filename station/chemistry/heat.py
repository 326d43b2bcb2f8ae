"""From readings to amounts, heat and enthalpy, as a student would write it, each with its ±.

Signs: ``rise_c`` is positive when the liquid warms, heat taken up by the liquid then is positive, and an
enthalpy change is negative when heat is given out. Volumes are in cm³, concentrations in mol/dm³, heat in J,
enthalpies in kJ/mol. Every function raises ``ValueError`` naming the figure that cannot be.
"""

from dataclasses import dataclass

from station.chemistry.pairs import Neutralisation
from station.chemistry.reagent import Reagent
from station.chemistry.worked import NOTHING, Measured, Number, Sheet, Step, measured, nominal, number, put


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
    heat, amount = number(heat_j, "the heat"), number(amount_mol, "the amount")
    return _worked(sheet, _enthalpy(sheet, heat, amount, of_what), "kJ/mol")


def enthalpy_from_heat_per_cm3(pair: Neutralisation, heat_j_cm3: Measured, alkali_mol_dm3: Measured) -> Worked:
    """Enthalpy per mole of water formed from the heat that one cm³ of alkali gives up to the end-point."""
    sheet = Sheet()
    alkali = _positive(alkali_mol_dm3, "the alkali's concentration")
    amount = sheet.line(
        f"amount of water formed by 1 cm³ of {pair.alkali.name}",
        "n = c V" if pair.alkali_hydroxides == 1 else f"n = {pair.alkali_hydroxides} c V",
        f"n = {_times(pair.alkali_hydroxides)}{put(alkali)} mol/dm³ × 1 cm³ ÷ 1000",
        pair.alkali_hydroxides * alkali / 1000,
        "mol",
    )
    heat = number(heat_j_cm3, "the heat per cm³")
    return _worked(sheet, _enthalpy(sheet, heat, amount, "water formed"), "kJ/mol")


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
        "amount of water formed",
        f"n(H₂O) = {_times(pair.alkali_hydroxides)}n({pair.alkali.formula})",
        f"n(H₂O) = {_times(pair.alkali_hydroxides)}{put(alkali)} mol",
        pair.alkali_hydroxides * alkali,
        "mol",
    )
    heat = _heat(sheet, absorber, rise_c)
    enthalpy = _enthalpy(sheet, heat, water, "water formed")
    return NeutralisationResult(measured(acid), measured(water), measured(heat), measured(enthalpy), tuple(sheet.steps))


def dissolving_enthalpy(solid: Reagent, solid_g: Measured, absorber: Absorber, rise_c: Measured) -> Worked:
    """Enthalpy change of dissolving one mole of a solid; the absorber's mass includes the solid."""
    sheet = Sheet()
    mass = _positive(solid_g, "the mass of the solid")
    amount = sheet.line(
        f"amount of {solid.name}",
        "n = m ÷ M",
        f"n = {put(mass)} g ÷ {solid.molar_mass_g_mol:g} g/mol",
        mass / solid.molar_mass_g_mol,
        "mol",
    )
    heat = _heat(sheet, absorber, rise_c)
    return _worked(sheet, _enthalpy(sheet, heat, amount, solid.name), "kJ/mol")


def water_formed(
    pair: Neutralisation,
    acid_mol_dm3: Measured,
    acid_cm3: Measured,
    alkali_mol_dm3: Measured,
    alkali_cm3: Measured,
) -> Worked:
    """Amount of water when all is poured at once: the reagent that runs out decides."""
    sheet = Sheet()
    acid = _positive(acid_mol_dm3, "the acid's concentration") * _positive(acid_cm3, "the acid's volume")
    alkali = _amount_of_alkali(sheet, pair, alkali_mol_dm3, alkali_cm3)
    amount = sheet.line(
        f"amount of {pair.acid.name}",
        "n = c V",
        f"n = {put(number(acid_mol_dm3, ''))} mol/dm³ × {put(number(acid_cm3, ''))} cm³ ÷ 1000",
        acid / 1000,
        "mol",
    )
    from_acid, from_alkali = pair.acid_protons * amount, pair.alkali_hydroxides * alkali
    scarce, least = (pair.acid, from_acid) if nominal(from_acid) < nominal(from_alkali) else (pair.alkali, from_alkali)
    result = sheet.line(
        f"amount of water formed; {scarce.name} runs out first",
        "n(H₂O) = the smaller of what acid and alkali can form",
        f"n(H₂O) = the smaller of {put(from_acid)} mol and {put(from_alkali)} mol",
        least,
        "mol",
    )
    return _worked(sheet, result, "mol")


def _amount_of_alkali(sheet: Sheet, pair: Neutralisation, alkali_mol_dm3: Measured, cm3: Measured) -> Number:
    alkali = _positive(alkali_mol_dm3, "the alkali's concentration")
    volume = _positive(cm3, "the volume of alkali")
    return sheet.line(
        f"amount of {pair.alkali.name}",
        "n = c V",
        f"n = {put(alkali)} mol/dm³ × {put(volume)} cm³ ÷ 1000",
        alkali * volume / 1000,
        "mol",
    )


def _acid_concentration(sheet: Sheet, pair: Neutralisation, acid_cm3: Measured, alkali: Number) -> Number:
    volume = _positive(acid_cm3, "the volume of acid")
    acid = alkali
    if pair.acid_protons != pair.alkali_hydroxides:
        acid = sheet.line(
            f"amount of {pair.acid.name}: {pair.alkali_hydroxides} mol for {pair.acid_protons} mol of alkali",
            f"n(acid) = n(alkali) × {pair.alkali_hydroxides}/{pair.acid_protons}",
            f"n(acid) = {put(alkali)} mol × {pair.alkali_hydroxides}/{pair.acid_protons}",
            alkali * pair.acid_per_alkali,
            "mol",
        )
    return sheet.line(
        f"concentration of {pair.acid.name}",
        "c = n ÷ V",
        f"c = {put(acid)} mol ÷ {put(volume)} cm³ × 1000",
        acid / volume * 1000,
        "mol/dm³",
    )


def _heat(sheet: Sheet, absorber: Absorber, rise_c: Measured) -> Number:
    mass = _positive(absorber.mass_g, "the mass of liquid")
    capacity = _positive(absorber.heat_capacity_j_g_k, "the specific heat capacity")
    rise, cup = number(rise_c, "the temperature change"), number(absorber.cup_j_k, "the cup's heat capacity")
    heat = sheet.line(
        "heat taken up by the liquid",
        "q = m c ΔT",
        f"q = {put(mass)} g × {put(capacity)} J/(g °C) × {put(rise)} °C",
        mass * capacity * rise,
        "J",
    )
    if absorber.cup_j_k == NOTHING:
        return heat
    return sheet.line(
        "heat taken up by the liquid, cup and probe",
        "q = m c ΔT + C ΔT",
        f"q = {put(heat)} J + {put(cup)} J/°C × {put(rise)} °C",
        heat + cup * rise,
        "J",
    )


def _enthalpy(sheet: Sheet, heat: Number, amount: Number, of_what: str) -> Number:
    if not nominal(amount) > 0:
        raise ValueError(f"the amount of {of_what} must be above 0 mol")
    return sheet.line(
        f"enthalpy change per mole of {of_what}",
        "ΔH = -q ÷ n ÷ 1000",
        f"ΔH = -({put(heat)} J) ÷ {put(amount)} mol ÷ 1000",
        -heat / amount / 1000,
        "kJ/mol",
    )


def _positive(figure: Measured, name: str) -> Number:
    if not figure.value > 0:
        raise ValueError(f"{name} must be above 0, not {figure.value}")
    return number(figure, name)


def _times(count: int) -> str:
    return "" if count == 1 else f"{count} × "


def _worked(sheet: Sheet, result: Number, unit: str) -> Worked:
    value, u = measured(result)
    return Worked(value, u, unit, tuple(sheet.steps))
