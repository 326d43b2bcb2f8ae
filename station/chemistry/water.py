"""Density and specific heat capacity of liquid water at 0.1 MPa.

The equations and coefficients are those of the IAPWS Revised Supplementary Release on Properties of Liquid
Water at 0.1 MPa, SR6-08 (2011), published as Pátek, Hrubý, Klomfar, Součková and Harvey, J. Phys. Chem. Ref.
Data 38, 21 (2009). They stand in for the full IAPWS-95 formulation, from which they differ by less than a
millionth in density and 0.004 % in heat capacity between 0 and 80 °C.
"""

from typing import Final

GAS_CONSTANT_J_G_K: Final = 0.46151805
"""Specific gas constant of water used by the release."""

_SCALE_K: Final = 10.0
_PRESSURE_KPA: Final = 100.0
_LOWEST_C: Final = 0.0
_HIGHEST_C: Final = 100.0

# (coefficient, power) of 10 K / (593 K - T), then of 10 K / (T - 232 K).
_VOLUME_CONSTANT: Final = 1.93763157e-2
_VOLUME_HOT: Final = (
    (6.74458446e3, 4),
    (-2.22521604e5, 5),
    (1.00231247e8, 7),
    (-1.63552118e9, 8),
    (8.32299658e9, 9),
)
_VOLUME_COLD: Final = (
    (5.78545292e-3, 1),
    (-1.53195665e-2, 2),
    (3.11337859e-2, 3),
    (-4.23546241e-2, 4),
    (3.38713507e-2, 5),
    (-1.19946761e-2, 6),
)
_HEAT_CONSTANT: Final = -8.983025854
_HEAT_HOT: Final = ((-1.661470539e5, 4), (2.708781640e6, 5), (-1.557191544e8, 7))
_HEAT_COLD: Final = ((-8.237426256e-1, 2), (1.908956353, 3), (-2.017597384, 4), (8.546361348e-1, 5))


def water_density_g_cm3(temperature_c: float) -> float:
    """Density of water in g/cm³, 0 to 100 °C, at 0.1 MPa.

    Raises ``ValueError`` outside that range. Source: IAPWS SR6-08 (2011), equation for v.
    """
    hot, cold = _reduced(temperature_c)
    volume = _VOLUME_CONSTANT
    volume += sum(factor * hot**power for factor, power in _VOLUME_HOT)
    volume += sum(factor * cold**power for factor, power in _VOLUME_COLD)
    return _PRESSURE_KPA / (GAS_CONSTANT_J_G_K * _SCALE_K * volume) / 1000.0


def water_heat_capacity_j_g_k(temperature_c: float) -> float:
    """Specific heat capacity of water in J/(g K), 0 to 100 °C, at 0.1 MPa.

    Raises ``ValueError`` outside that range. Source: IAPWS SR6-08 (2011), equation for cp.
    """
    hot, cold = _reduced(temperature_c)
    total = sum(power * (power + 1) * factor * hot ** (power + 2) for factor, power in _HEAT_HOT)
    total += sum(power * (power + 1) * factor * cold ** (power + 2) for factor, power in _HEAT_COLD)
    tau = (temperature_c + 273.15) / _SCALE_K
    return -GAS_CONSTANT_J_G_K * (_HEAT_CONSTANT + tau * total)


def water_volumetric_heat_capacity_j_cm3_k(temperature_c: float) -> float:
    """Heat capacity of a cubic centimetre of water in J/(cm³ K); the product of the two above."""
    return water_density_g_cm3(temperature_c) * water_heat_capacity_j_g_k(temperature_c)


def _reduced(temperature_c: float) -> tuple[float, float]:
    if not _LOWEST_C <= temperature_c <= _HIGHEST_C:
        raise ValueError(f"water is described from 0 to 100 °C here, not at {temperature_c:g} °C")
    kelvin = temperature_c + 273.15
    return _SCALE_K / (593.0 - kelvin), _SCALE_K / (kelvin - 232.0)
