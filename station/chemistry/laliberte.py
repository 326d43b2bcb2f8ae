"""The Laliberté model: density and specific heat capacity of water with any number of solutes.

Density: Laliberté and Cooper, J. Chem. Eng. Data 49, 1141 (2004); heat capacity: Laliberté, J. Chem. Eng. Data
54, 1725 (2009). Outside the fitted range of a solute its own terms are held at the edge of the range, which is
why ``Terms`` says how far outside it was asked. A solute without coefficients gets generic ones: the mean of
those in the table, with their spread as uncertainty.
"""

import math
from typing import Final, NamedTuple

from station.chemistry.laliberte_table import LALIBERTE, Coefficients, Range


class Generic(NamedTuple):
    """Stand-in terms of a solute without coefficients, with their standard uncertainties, per gram."""

    volume_cm3_g: float
    u_volume_cm3_g: float
    heat_capacity_j_g_k: float
    u_heat_capacity_j_g_k: float


GENERIC_SALT: Final = Generic(0.29, 0.19, -0.4, 0.8)
"""Mean and standard deviation over the salts of the table, at a mass fraction of 0.05 and 25 °C."""

GENERIC_MOLECULE: Final = Generic(0.67, 0.28, 2.0, 1.0)
"""The same over its two weak acids, ethanoic and phosphoric."""


def generic(solute: str) -> Generic:
    """The stand-in for a solute: a molecule when hydrogen (an acid) or carbon (urea) comes first, else a salt."""
    return GENERIC_MOLECULE if solute.startswith(("H", "CH")) else GENERIC_SALT


class Terms(NamedTuple):
    """What one gram of a solute adds to a solution.

    ``volume_cm3_g``, ``heat_capacity_j_g_k``: apparent specific volume and heat capacity. ``outside_c``: kelvins
    between the asked temperature and the heat capacity's range; ``outside_mass_fraction`` likewise.
    ``known_volume``, ``known_heat_capacity``: False when the generic figure stands in.
    """

    volume_cm3_g: float
    heat_capacity_j_g_k: float
    outside_c: float
    outside_mass_fraction: float
    known_volume: bool
    known_heat_capacity: bool


def terms(solute: str, temperature_c: float, solutes_mass_fraction: float) -> Terms:
    """Terms of one solute in a solution whose solutes together make up that mass fraction.

    ``solute`` is named by its ions (``"NaCl"``); an unknown one gets the generic terms, never an error.
    """
    found = LALIBERTE.get(solute)
    stand_in = generic(solute)
    if found is None:
        return Terms(stand_in.volume_cm3_g, stand_in.heat_capacity_j_g_k, 0.0, 0.0, False, False)
    volume = _volume(found, temperature_c, solutes_mass_fraction)
    if found.heat_capacity is None or found.heat_capacity_range is None:
        return Terms(volume, stand_in.heat_capacity_j_g_k, 0.0, 0.0, True, False)
    bounds = found.heat_capacity_range
    held_c, held_fraction = _hold(bounds, temperature_c, solutes_mass_fraction)
    a1, a2, a3, a4, a5, a6 = found.heat_capacity
    exponent = a2 * held_c + a3 * math.exp(0.01 * held_c) + a4 * held_fraction
    return Terms(
        volume,
        a1 * math.exp(exponent) + a5 * held_fraction**a6,
        abs(temperature_c - held_c),
        max(0.0, solutes_mass_fraction - bounds.largest_mass_fraction),
        True,
        True,
    )


def _volume(found: Coefficients, temperature_c: float, solutes_mass_fraction: float) -> float:
    held_c, held_fraction = _hold(found.density_range, temperature_c, solutes_mass_fraction)
    c0, c1, c2, c3, c4 = found.density
    density_kg_m3 = (c0 * held_fraction + c1) * math.exp(1e-6 * (held_c + c4) ** 2)
    return 1000.0 * (held_fraction + c2 + c3 * held_c) / density_kg_m3


_SMALLEST_FRACTION: Final = 0.002
"""Below this the terms per gram are kept: some fits run away towards nothing, where nobody measured."""


def _hold(bounds: Range, temperature_c: float, fraction: float) -> tuple[float, float]:
    held_c = min(max(temperature_c, bounds.lowest_c), bounds.highest_c)
    return held_c, min(max(fraction, _SMALLEST_FRACTION), bounds.largest_mass_fraction)
