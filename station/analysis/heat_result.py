"""From fitted parameters to the figures of the practical: end-point, concentration, enthalpy, each with u.

Uncertainties follow the law of propagation (JCGM 100:2008, 5.2) with the covariance of the fit, so what is
shared (volumes, heat capacities) is counted once.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.cup import Cup, at_pours, capacity
from station.analysis.cup_layout import INDEX
from station.analysis.heat_inputs import Array, HeatSetup


@dataclass(frozen=True)
class Figure:
    """A value with its standard uncertainty."""

    value: float
    u: float


def acid_concentration(theta: Array, covariance: Array, setup: HeatSetup) -> Figure | None:
    """Concentration of the acid, mol/dm³; None without the alkali's."""
    if setup.alkali_mol_dm3 is None:
        return None
    end_point, acid = theta[INDEX["end_point_cm3"]], theta[INDEX["acid_volume_cm3"]]
    value = end_point * setup.alkali_mol_dm3.value * setup.acid_per_alkali / acid
    slope = np.zeros(len(theta))
    slope[INDEX["end_point_cm3"]], slope[INDEX["acid_volume_cm3"]] = 1.0 / end_point, -1.0 / acid
    own = setup.alkali_mol_dm3.u / setup.alkali_mol_dm3.value
    return Figure(float(value), float(value * np.sqrt(slope @ covariance @ slope + own**2)))


def reaction_temperature(cup: Cup, theta: Array) -> float:
    """Mean temperature of the cup over the pours before the end-point, °C."""
    levels = at_pours(cup, theta)
    before = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])[:-1] < theta[0]
    return float(levels[before].mean()) if before.any() else float(theta[INDEX["start_c"]])


def enthalpy(theta: Array, covariance: Array, setup: HeatSetup, cup: Cup, temperature_c: float) -> Figure | None:
    """Enthalpy per mol of water formed at ``temperature_c``, kJ/mol; None without the alkali's concentration.

    J/cm³ over mol/dm³ is kJ/mol.
    """
    if setup.alkali_mol_dm3 is None:
        return None
    warmer = temperature_c - cup.reference_c
    heat, slope_k = theta[INDEX["heat_j_cm3"]], theta[INDEX["heat_slope_k"]]
    water = setup.alkali_mol_dm3.value * setup.water_per_alkali
    value = -heat * (1.0 + slope_k * warmer) / water
    slope = np.zeros(len(theta))
    slope[INDEX["heat_j_cm3"]] = -(1.0 + slope_k * warmer) / water
    slope[INDEX["heat_slope_k"]] = -heat * warmer / water
    own = value * setup.alkali_mol_dm3.u / setup.alkali_mol_dm3.value
    return Figure(float(value), float(np.sqrt(slope @ covariance @ slope + own**2)))


def end_point_temperature(cup: Cup, theta: Array) -> float:
    """Temperature of the mixed cup at the end-point, °C."""
    levels = at_pours(cup, theta)
    volume = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])
    portion = int(np.clip(np.searchsorted(volume, theta[0]) - 1, 0, cup.layout.pours - 1))
    share = (theta[0] - volume[portion]) / (volume[portion + 1] - volume[portion])
    return float(levels[portion, 0] + np.clip(share, 0.0, 1.0) * (levels[portion, 1] - levels[portion, 0]))


def heat_corrected(cup: Cup, theta: Array, offsets_c: Array) -> tuple[Array, Array]:
    """The trace as points on two straight lines: true volumes, cm³, and heat-corrected temperatures, °C.

    Both have shape pours + 1. The heat of reaction so far is divided by the heat capacity at the end-point,
    as if nothing were lost and all were warmed alike; ``offsets_c`` (shape pours + 1), what the samples of
    each interval lie above the fit, is carried over as heat, so the scatter stays visible.
    """
    volume = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])
    whole = capacity(cup, theta, np.atleast_1d(theta[0]))[0]
    heat = theta[INDEX["heat_j_cm3"]] * np.minimum(volume, theta[0])
    return volume, theta[INDEX["start_c"]] + (heat + capacity(cup, theta, volume) * offsets_c) / whole
