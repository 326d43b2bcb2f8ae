"""What may be mixed in a school's cup: findings about a mixture, before anybody pours it.

Every limit here is common practice, no source, on the careful side; the school's risk assessment, local rules and
qualified staff come first and may ask for more. Temperatures are those of a cup that loses nothing and takes up
nothing, whose contents hold as much heat as their water alone: they err away from the room's by a few per cent.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from itertools import accumulate, pairwise
from math import ceil, floor, fsum, log10
from types import MappingProxyType
from typing import Final

from station.chemistry.hazards import substance_label
from station.chemistry.liquids import water_density_g_cm3
from station.chemistry.neutralisation import solution_enthalpy, step_enthalpies_kj_mol
from station.chemistry.pairs import neutralisation_steps
from station.chemistry.preparation import is_weighed
from station.chemistry.reagent import Kind, Reagent, molar_mass_g_mol
from station.chemistry.reagents import REAGENTS
from station.chemistry.solutions import concentration_mol_dm3, solution
from station.words import Message, join, say

# How much of each weighed reagent dissolves: grams of the substance without crystal water in 100 g of water.
#
# Handbook values. "Seen": in a Polish handbook's table (0, 20, 40 and 60 °C), or in the CRC Handbook of Chemistry and
# Physics, "Solubility of Common Salts at Ambient Temperatures" (10 to 40 °C), as copied in public. "From memory": as
# handbooks (Seidell; Perry; Apelblat and Manzurola, J. Chem. Thermodyn. 19, 317 (1987), for the acids) give them, not
# seen again. Between the points a straight line, beyond them the nearest point. What is not here mixes with water in
# every proportion that a school uses, or is no solid.


Points = tuple[tuple[float, float], ...]
"""(°C, g in 100 g of water), by rising temperature."""


def _every_20_c(*grams: float) -> Points:
    return tuple((20.0 * place, gram) for place, gram in enumerate(grams))


SOLUBILITIES: Final[MappingProxyType[str, Points]] = MappingProxyType(
    {
        # Seen in the Polish table; where both have it, the CRC Handbook agrees within 3 %.
        "NH4Cl": _every_20_c(29.4, 37.2, 45.8, 55.2),
        "KNO3": _every_20_c(13.3, 31.6, 63.9, 110.0),
        "NaNO3": _every_20_c(73.0, 88.0, 104.0, 124.0),
        "NaCl": _every_20_c(35.7, 36.0, 36.6, 37.3),
        "CaCl2": ((0.0, 59.5), (20.0, 74.5), (60.0, 136.8)),
        "CuSO4": _every_20_c(14.3, 20.7, 28.5, 40.0),
        "NaOH": _every_20_c(42.0, 109.0, 129.0, 174.0),
        "KOH": ((0.0, 97.0), (20.0, 112.0), (50.0, 140.0)),
        "Ca(OH)2": _every_20_c(0.185, 0.165, 0.141, 0.116),
        "Na2CO3": ((0.0, 7.0), (10.0, 12.2), (20.0, 21.5), (30.0, 39.7), (40.0, 48.5), (60.0, 46.4)),  # 10, 30: memory
        "NaHCO3": _every_20_c(6.9, 9.6, 12.7, 16.4),
        # Seen in the CRC Handbook's table, from its molalities; at 0 °C, and above 35 °C, from memory.
        "K2CO3": ((0.0, 105.0), (10.0, 107.2), (20.0, 109.8), (30.0, 113.2), (40.0, 117.2)),
        "LiCl": ((0.0, 69.2), (10.0, 81.8), (20.0, 83.4), (25.0, 84.5)),
        "NH4NO3": ((0.0, 118.0), (10.0, 150.6), (20.0, 189.9), (25.0, 212.1), (40.0, 297.0), (60.0, 410.0)),
        "(NH4)2SO4": ((0.0, 70.6), (10.0, 72.6), (20.0, 75.2), (30.0, 77.9), (35.0, 79.3)),
        # From memory.
        "KCl": _every_20_c(28.0, 34.2, 40.1, 45.8),
        "NaCH3COO": _every_20_c(36.2, 46.4, 65.6, 139.0),
        "MgSO4": _every_20_c(22.0, 33.7, 44.5, 54.6),
        "LiOH": _every_20_c(11.9, 12.4, 13.2, 14.6),
        "Ba(OH)2": _every_20_c(1.67, 3.89, 8.22, 20.9),
        "KHCO3": _every_20_c(22.5, 33.7, 47.5, 65.6),
        "CaCO3": ((20.0, 0.0014),),
        "CH4N2O": _every_20_c(67.0, 108.0, 167.0, 251.0),
        "H3C6H5O7": ((10.0, 118.0), (20.0, 146.0), (30.0, 183.0), (40.0, 218.0), (60.0, 278.0)),
        "H2C2O4": _every_20_c(3.5, 9.5, 21.5, 44.3),
        "H2C4H4O6": _every_20_c(115.0, 139.0, 176.0, 218.0),
    }
)
"""By what is in solution (``Reagent.solute``): a hydrate gives the same solution as its anhydrous salt."""


def solubility_g_100g(reagent: Reagent, temperature_c: float) -> float | None:
    """Grams without crystal water that 100 g of water dissolve at that temperature; None where nothing limits it."""
    points = SOLUBILITIES.get(reagent.solute)
    if points is None:
        return None
    if temperature_c <= points[0][0]:
        return points[0][1]
    for (low_c, low_g), (high_c, high_g) in pairwise(points):
        if temperature_c <= high_c:
            return low_g + (high_g - low_g) * (temperature_c - low_c) / (high_c - low_c)
    return points[-1][1]


HOT_C, WARM_C, COOL_C, FREEZING_C = 60.0, 45.0, 5.0, 0.0
"""Refused above and below; a warning from WARM_C and COOL_C on."""
BOILING_C: Final = 95.0
VIOLENT_RISE_C, BRISK_RISE_C = 20.0, 10.0
"""What a solid that is added at once may do to the temperature: refused above the first, a warning from the second."""
STRONGEST_MOL_DM3: Final = 3.0
"""An acid or alkali above this is refused: schools do such practicals with 2 mol/dm³ at most."""
STRONG_MOL_DM3: Final = 1.0
"""Above this staff must confirm a solution against the school's risk assessment."""
NEARLY_ALL: Final = 0.8
"""Of the solubility: from here on a solid takes long to dissolve."""
WATER_J_G_C: Final = 4.18


@dataclass(frozen=True, slots=True, kw_only=True)
class Poured:
    """One part of a mixture: water (no reagent), a solution (``mol_dm3``) or a weighed solid (``mass_g``).

    ``portions``: in how many it is added, one after the other.
    """

    reagent: Reagent | None = None
    volume_cm3: float = 0.0
    mol_dm3: float | None = None
    mass_g: float | None = None
    temperature_c: float
    portions: int = 1

    @property
    def mol(self) -> float:
        """Amount of the reagent."""
        if self.reagent is None:
            return 0.0
        if self.mass_g is not None:
            return self.mass_g / self.reagent.molar_mass_g_mol
        return (self.mol_dm3 or 0.0) * self.volume_cm3 / 1000.0

    @property
    def water_g(self) -> float:
        """Water that comes with it, crystal water too. Raises ``ValueError`` for a solution that cannot be."""
        at_c = _within_water(self.temperature_c)
        if self.reagent is None:
            return self.volume_cm3 * water_density_g_cm3(at_c)
        anhydrous_g = self.mol * molar_mass_g_mol(self.reagent.solute)
        if self.mass_g is not None:
            return self.mass_g - anhydrous_g
        density = solution({self.reagent.solute: self.mol_dm3 or 0.0}, at_c).density_g_cm3
        return self.volume_cm3 * density - anhydrous_g


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing to know: ``refuses`` says that the mixture must not be made. ``of``: which part of it is meant."""

    id: str
    text: Message
    refuses: bool
    of: Poured


def findings(in_cup: Poured, added: Poured) -> tuple[Finding, ...]:
    """What is to be said of adding the one to the other, refusals first."""
    found: list[Finding] = []
    for part in (in_cup, added):
        found += _of_part(part)
    if not any(each.refuses for each in found):
        found += _of_mixture(in_cup, added)
    return tuple(sorted(found, key=lambda each: not each.refuses))


def gas_of(first: Reagent | None, second: Reagent | None) -> str | None:
    """The formula of the gas that the two set free in water, or None."""
    if first is None or second is None:
        return None
    return next((gas for pair in ((first, second), (second, first)) if (gas := _gas(*pair)) is not None), None)


def _gas(giver: Reagent, other: Reagent) -> str | None:
    if giver.gives_gas:
        metal = other.cation.formula if other.kind is Kind.SALT and other.cation else ""
        # Copper ions are acid; with hydrogencarbonate calcium, magnesium and barium leave a carbonate, and gas.
        if other.is_acid or metal == "Cu" or (giver.kind is Kind.HYDROGENCARBONATE and metal in {"Ca", "Mg"}):
            return "CO2"
    ammonium = giver.kind is Kind.SALT and giver.cation is not None and giver.cation.formula == "NH4"
    if ammonium and other.is_alkali and other.kind is not Kind.WEAK_ALKALI:
        return "NH3"
    return None


def _of_part(part: Poured) -> Iterator[Finding]:
    reagent = part.reagent
    if reagent is None:
        return
    name = reagent.name
    if part.mass_g is not None:
        if not is_weighed(reagent):
            yield Finding("no-solid", say("refusal-no-solid", reagent=name), True, part)
        elif hydrates := hydrates_of(reagent):
            others = join((each.name for each in hydrates), "list-or")
            text = say("warning-anhydrous", reagent=name, formula=reagent.formula, others=others)
            yield Finding("anhydrous", text, False, part)
        return
    mol_dm3 = part.mol_dm3 or 0.0
    most = saturated_mol_dm3(reagent, part.temperature_c)
    if most is not None and mol_dm3 > most:
        text = say(
            "refusal-no-such-solution-at",
            reagent=name,
            mol_dm3=f"{mol_dm3:g}",
            temperature_c=f"{part.temperature_c:.0f}",
            most_mol_dm3=_rounded_down(most),
        )
        yield Finding("no-such-solution", text, True, part)
    elif (reagent.is_acid or reagent.is_alkali) and mol_dm3 > STRONGEST_MOL_DM3:
        limit = f"{STRONG_MOL_DM3:g}"
        text = say("refusal-too-strong", reagent=name, mol_dm3=f"{mol_dm3:g}", limit_mol_dm3=limit)
        yield Finding("too-strong", text, True, part)


def saturated_mol_dm3(reagent: Reagent, temperature_c: float) -> float | None:
    """The strongest solution that there is at that temperature; None where nothing limits it."""
    grams = solubility_g_100g(reagent, temperature_c)
    if grams is None:
        return None
    return concentration_mol_dm3(reagent, grams / (100.0 + grams), _within_water(temperature_c))


def hydrates_of(reagent: Reagent) -> tuple[Reagent, ...]:
    """The reagents that are this one with water in its crystals."""
    return tuple(each for each in REAGENTS if each.formula.startswith(f"{reagent.formula}·"))


def _of_mixture(in_cup: Poured, added: Poured) -> Iterator[Finding]:
    gas = gas_of(in_cup.reagent, added.reagent)
    names = [part.reagent.name for part in (in_cup, added) if part.reagent is not None]
    if gas is not None:
        text = say(
            "refusal-gas-ammonia" if gas == "NH3" else "refusal-gas-carbon-dioxide", first=names[0], second=names[1]
        )
        yield Finding("gas", text, True, added)
        return
    try:
        course = _course_c(in_cup, added)
    except ValueError:
        yield Finding("no-such-solution", say("refusal-no-such-solution"), True, added)
        return
    yield from _of_temperatures(course, added)
    yield from _of_solid(in_cup, added, course)
    if len(names) == 2 and in_cup.reagent is not added.reagent and not _is_neutralisation(in_cup, added):
        yield Finding("heat-unknown", say("warning-heat-unknown", first=names[0], second=names[1]), False, added)


def _of_temperatures(course_c: list[float], part: Poured) -> Iterator[Finding]:
    most, least = max(course_c), min(course_c)
    less = say("advice-take-less")
    if most >= BOILING_C:
        yield Finding("too-hot", join([say("refusal-would-boil"), less]), True, part)
    elif most > HOT_C:
        hot = say("refusal-too-hot", temperature_c=ceil(most), limit_c=f"{HOT_C:g}")
        yield Finding("too-hot", join([hot, less]), True, part)
    elif most > WARM_C:
        yield Finding("hot", say("warning-hot", temperature_c=ceil(most), limit_c=f"{WARM_C:g}"), False, part)
    if least < FREEZING_C:
        text = say("refusal-too-cold", temperature_c=floor(least), limit_c=f"{FREEZING_C:g}")
        yield Finding("too-cold", text, True, part)
    elif least < COOL_C:
        yield Finding("cold", say("warning-cold", temperature_c=floor(least)), False, part)


def _of_solid(in_cup: Poured, added: Poured, course_c: list[float]) -> Iterator[Finding]:
    if added.mass_g is None or added.reagent is None:
        return
    coldest_c = max(min(course_c), FREEZING_C)
    weighed = say("amount-mass", mass_g=f"{added.mass_g:g}", reagent=added.reagent.weighed_name)
    most_g = _dissolves_g(in_cup, added, coldest_c)
    if most_g is not None and added.mass_g > NEARLY_ALL * most_g:
        too_much = added.mass_g > most_g
        text = say(
            "refusal-insoluble" if too_much else "warning-dissolves-slowly",
            weighed=weighed,
            temperature_c=f"{coldest_c:.0f}",
            most_g=_rounded_down(most_g),
        )
        yield Finding("insoluble" if too_much else "dissolves-slowly", text, too_much, added)
    rise_c = course_c[-1] - course_c[0]
    if rise_c > VIOLENT_RISE_C:
        yield Finding("violent", say("refusal-violent", weighed=weighed, rise_c=ceil(rise_c)), True, added)
    elif rise_c > BRISK_RISE_C:
        text = say("warning-heats", rise_c=ceil(rise_c), weighed=weighed)
        if any(each.code == "H314" for each in substance_label(added.reagent).statements):
            text = join([text, say("warning-drops-burn")])
        yield Finding("heats", text, False, added)


def _dissolves_g(in_cup: Poured, added: Poured, temperature_c: float) -> float | None:
    """How many grams of the weighed solid (as it is weighed) the water in the cup takes up; None: no limit.

    What an acid and an alkali do to each other needs no room in the water; a solution of the same has used up some.
    """
    solid = added.reagent
    grams = None if solid is None else solubility_g_100g(solid, temperature_c)
    if solid is None or grams is None:
        return None
    anhydrous_g_mol = molar_mass_g_mol(solid.solute)
    crystal_g_mol = solid.molar_mass_g_mol - anhydrous_g_mol
    same = in_cup.reagent is not None and in_cup.reagent.solute == solid.solute
    taken_g = in_cup.mol * anhydrous_g_mol if same else 0.0
    free_g = max(in_cup.water_g * grams / 100.0 - taken_g, 0.0)
    each_g = anhydrous_g_mol - crystal_g_mol * grams / 100.0
    reacting_g = _neutralised_mol(in_cup, added) / (solid.protons or solid.hydroxides or 1) * solid.molar_mass_g_mol
    if each_g <= 0:  # such a hydrate melts in its own water
        return None
    return reacting_g + free_g / each_g * solid.molar_mass_g_mol


def _is_neutralisation(in_cup: Poured, added: Poured) -> bool:
    return _acid_alkali(in_cup, added) is not None


def _acid_alkali(in_cup: Poured, added: Poured) -> tuple[Reagent, Poured, Reagent, Poured] | None:
    first, second = in_cup.reagent, added.reagent
    if first is None or second is None:
        return None
    if first.is_acid and second.is_alkali:
        return first, in_cup, second, added
    if second.is_acid and first.is_alkali:
        return second, added, first, in_cup
    return None


def _neutralised_mol(in_cup: Poured, added: Poured, share: float = 1.0) -> float:
    """Moles of hydrogen ions and hydroxide that meet when that share of the second part is in."""
    found = _acid_alkali(in_cup, added)
    if found is None:
        return 0.0
    acid, of_acid, alkali, of_alkali = found
    shares = (1.0, share) if of_acid is in_cup else (share, 1.0)
    return min(of_acid.mol * acid.protons * shares[0], of_alkali.mol * alkali.hydroxides * shares[1])


def _course_c(in_cup: Poured, added: Poured) -> list[float]:
    """Temperatures of what is in the cup, from the start through each portion. Raises ``ValueError``."""
    capacity_j_k, adds_j_k = WATER_J_G_C * in_cup.water_g, WATER_J_G_C * added.water_g
    per_mol_kj = _most_kj_mol(in_cup, added)
    dissolving_j = _dissolving_j(in_cup, added)
    course = [in_cup.temperature_c]
    for portion in range(1, added.portions + 1):
        share = portion / added.portions
        heat_j = 1000.0 * per_mol_kj * _neutralised_mol(in_cup, added, share) + share * dissolving_j
        held_j = fsum((capacity_j_k * in_cup.temperature_c, share * adds_j_k * added.temperature_c, heat_j))
        course.append(held_j / (capacity_j_k + share * adds_j_k))
    if added.mass_g is None:
        course.append(added.temperature_c)  # before it meets the other
    return course


def _most_kj_mol(in_cup: Poured, added: Poured) -> float:
    """Heat given out per mole of water formed: the most that the acid's steps come to, one after the other."""
    found = _acid_alkali(in_cup, added)
    if found is None:
        return 0.0
    acid, _, alkali, _ = found
    steps = [each.enthalpy_kj_mol for each in step_enthalpies_kj_mol(acid, alkali, in_cup.temperature_c)]
    means = (total / (place + 1) for place, total in enumerate(accumulate(steps)))
    try:
        solid = neutralisation_steps(acid, alkali).precipitation_kj_mol
    except ValueError:
        solid = _UNKNOWN_SOLID_KJ_MOL
    return -min(means) - solid


_UNKNOWN_SOLID_KJ_MOL: Final = -20.0
"""What a salt that comes out of solution may add per mole of water where its heat is not known."""


def _dissolving_j(in_cup: Poured, added: Poured) -> float:
    if added.mass_g is None or added.reagent is None:
        return 0.0
    found = solution_enthalpy(added.reagent, added.mass_g, in_cup.water_g)
    return 0.0 if found is None else -1000.0 * found.enthalpy_kj_mol * added.mol


def _within_water(temperature_c: float) -> float:
    return min(max(temperature_c, 0.0), 100.0)


def _rounded_down(value: float) -> str:
    """To two digits, never more than there is."""
    if value <= 0:
        return "0"
    power = 10.0 ** (floor(log10(value)) - 1)
    return f"{floor(value / power + 1e-9) * power:.2g}"
