"""Temperatures that nature keeps: melting ice, and boiling water at the pressure of the day.

The boiling point is region 4 of the IAPWS Industrial Formulation 1997 (IAPWS-IF97, revised release R7-97(2012)), its
backward equation T(p) with the published coefficients. Pressure from altitude is that of the ICAO standard atmosphere
(ISO 2533:1975, ICAO Doc 7488), which the weather does not keep.
"""

from dataclasses import dataclass
from math import hypot, isfinite, sqrt
from typing import Final, Literal

from station.words import say

STANDARD_KPA: Final = 101.325
STANDARD_K: Final = 288.15
LAPSE_K_M: Final = 0.0065
GRAVITY_M_S2: Final = 9.80665
AIR_J_KG_K: Final = 287.05287
"""ISO 2533: pressure and temperature at sea level, lapse rate below 11 km, standard gravity, gas constant of air."""

LOWEST_KPA, HIGHEST_KPA = 50.0, 110.0
LOWEST_M, HIGHEST_M = -430.0, 5000.0

U_WEATHER_KPA: Final = 1.0
"""One standard deviation of the pressure at one place and season in middle latitudes: from memory, no source."""

U_BOILING_C: Final = 0.15
"""Depth of the probe (1 cm of water is 0.1 kPa, 0.03 °C), bubbles that are hotter than the liquid, tap water:
an estimate of ours, one standard uncertainty."""

Water = Literal["distilled", "tap"]

ICE_POINT_C: Final = 0.0
"""Ice and air-saturated water at 101.325 kPa, within 0.0002 °C: the triple point is 0.01 °C by the ITS-90, the
pressure lowers it by 0.0075 °C and the dissolved air by 0.0024 °C."""

U_ICE_C: Final = {"distilled": 0.02, "tap": 0.05}
"""Standard uncertainty of a school's bath of crushed ice and a little water: too much water, warmth along the tube,
salts of tap water (0.5 g/dm³ lower it by about 0.03 °C). Estimates of ours; with care 0.002 °C is usual practice."""

_N: Final = (
    0.11670521452767e4,
    -0.72421316703206e6,
    -0.17073846940092e2,
    0.12020824702470e5,
    -0.32325550322333e7,
    0.14915108613530e2,
    -0.48232657361591e4,
    0.40511340542057e6,
    -0.23855557567849,
    0.65017534844798e3,
)
"""Coefficients n1 to n10 of IAPWS-IF97, table 34."""


@dataclass(frozen=True)
class FixedPoint:
    """A known temperature in °C with its standard uncertainty; the pressure in kPa where it depends on it."""

    temperature_c: float
    u_c: float
    pressure_kpa: float | None = None
    u_pressure_kpa: float | None = None


def boiling_point_c(pressure_kpa: float) -> float:
    """Return the boiling point of pure water in °C, 50 to 110 kPa.

    Raises ValueError outside that range. Source: IAPWS-IF97, equation 31.
    """
    if not LOWEST_KPA <= pressure_kpa <= HIGHEST_KPA:
        raise ValueError(
            say(
                "problem-air-pressure",
                least_hpa=f"{10 * LOWEST_KPA:g}",
                most_hpa=f"{10 * HIGHEST_KPA:g}",
                pressure_hpa=f"{10 * pressure_kpa:g}",
            )
        )
    beta = (pressure_kpa / 1000.0) ** 0.25
    e = beta**2 + _N[2] * beta + _N[5]
    f = _N[0] * beta**2 + _N[3] * beta + _N[6]
    g = _N[1] * beta**2 + _N[4] * beta + _N[7]
    d = 2.0 * g / (-f - sqrt(f**2 - 4.0 * e * g))
    kelvin = (_N[9] + d - sqrt((_N[9] + d) ** 2 - 4.0 * (_N[8] + _N[9] * d))) / 2.0
    return float(kelvin - 273.15)


def standard_pressure_kpa(altitude_m: float) -> float:
    """Return the pressure of the standard atmosphere at this (geopotential) altitude above the sea, in kPa.

    Raises ValueError outside −430 to 5000 m. Source: ISO 2533:1975, the layer below 11 km.
    """
    if not (isfinite(altitude_m) and LOWEST_M <= altitude_m <= HIGHEST_M):
        raise ValueError(
            say("problem-altitude", least_m=f"{LOWEST_M:g}", most_m=f"{HIGHEST_M:g}", altitude_m=f"{altitude_m:g}")
        )
    exponent = GRAVITY_M_S2 / (AIR_J_KG_K * LAPSE_K_M)
    return float(STANDARD_KPA * (1.0 - LAPSE_K_M * altitude_m / STANDARD_K) ** exponent)


def ice_point(water: Water) -> FixedPoint:
    """Return the temperature of a bath of crushed ice made of this water."""
    return FixedPoint(ICE_POINT_C, U_ICE_C[water])


def boiling_point(pressure_kpa: float, u_pressure_kpa: float) -> FixedPoint:
    """Return the temperature of boiling water at a measured pressure. Raises ValueError outside its range."""
    low_kpa, high_kpa = max(pressure_kpa - 0.1, LOWEST_KPA), min(pressure_kpa + 0.1, HIGHEST_KPA)
    temperature_c = boiling_point_c(pressure_kpa)
    slope_c_kpa = (boiling_point_c(high_kpa) - boiling_point_c(low_kpa)) / (high_kpa - low_kpa)
    u_c = hypot(U_BOILING_C, slope_c_kpa * u_pressure_kpa)
    return FixedPoint(temperature_c, u_c, pressure_kpa, u_pressure_kpa)


def boiling_point_at(altitude_m: float) -> FixedPoint:
    """Return the temperature of boiling water at an altitude, whatever the weather. Raises ValueError."""
    return boiling_point(standard_pressure_kpa(altitude_m), U_WEATHER_KPA)
