"""What a check finds from its trace and what was typed: plain numbers for the event, with the correction in them."""

from collections.abc import Mapping
from dataclasses import asdict
from math import sqrt
from typing import Any

from station.analysis.cup_test import cup_of
from station.analysis.dip import dip_of
from station.analysis.probe_correction import line_of, offset_alone
from station.analysis.settle_lags import STEEL_TUBE, ProbeLags
from station.analysis.steady import Steady
from station.chemistry.fixed_points import FixedPoint, Water, boiling_point, boiling_point_at, ice_point
from station.chemistry.water import water_heat_capacity_j_g_k
from station.practical.probes import Check, Checked

Json = dict[str, Any]

U_MASS_G = 0.1 / sqrt(3.0)
"""Standard uncertainty of a mass by a balance that shows 0.1 g, both readings together: common practice, no source."""

U_BAROMETER_KPA = 0.1
"""Standard uncertainty of a barometer that nothing else is said of: 1 hPa, common practice, no source."""


def known_point(check: str, values: Mapping[str, Any]) -> FixedPoint:
    """Return the temperature that ice or boiling water has by what was typed. Raises ValueError outside its range."""
    if check == "ice":
        water: Water = "tap" if values.get("water") == "tap" else "distilled"
        return ice_point(water)
    pressure_kpa = values.get("pressure_kpa")
    if pressure_kpa is not None:
        return boiling_point(pressure_kpa, values.get("u_pressure_kpa") or U_BAROMETER_KPA)
    return boiling_point_at(values["altitude_m"])


def fixed_point_found(check: Check, rest: Steady) -> Json:
    """Return what ice or boiling water says of the probe, once it is at rest."""
    known = known_point(check.check, check.values)
    probe_c, u_probe_c = rest.temperature_c or 0.0, rest.u_c or 0.0
    correction = offset_alone(probe_c, u_probe_c, known.temperature_c, known.u_c)
    return _rounded(
        {
            "probe_c": probe_c,
            "u_probe_c": u_probe_c,
            "known_c": known.temperature_c,
            "u_known_c": known.u_c,
            "pressure_kpa": known.pressure_kpa,
            "correction_c": correction.offset_c,
            "u_correction_c": correction.u_of(probe_c),
            "correction": asdict(correction),
        }
    )


def comparison_found(check: Check) -> Json:
    """Return the line through the comparisons. Raises CorrectionRefused while there are too few of them."""
    points = [each.values for each in comparisons(check)]
    u_reference_c = check.values.get("u_reference_c") or 0.1
    line = line_of([each["probe_c"] for each in points], [each["reference_c"] for each in points], u_reference_c)
    lowest_c, highest_c = (end(each["probe_c"] for each in points) for end in (min, max))
    return _rounded(
        {
            "points": [dict(each) for each in points],
            "lowest_c": lowest_c,
            "highest_c": highest_c,
            "correction_c": line.of(line.at_c),
            "u_correction_c": line.u_of(line.at_c),
            "slope": line.slope,
            "u_slope": line.u_slope,
            "s_c": line.s_c,
            "correction": asdict(line),
        }
    )


def comparisons(check: Check) -> list[Any]:
    """Return the steps of comparison that stand: one that was undone takes the newest away."""
    kept: list[Any] = []
    for each in check.steps:
        if each.step == "compared":
            kept.append(each)
        elif each.step == "comparison_undone" and kept:
            kept.pop()
    return kept


def dip_found(check: Check, since_s: float) -> Json:
    """Return the time constants of the dip. Raises DipRefused."""
    dip = dip_of([each for each in check.samples if each[0] >= since_s])
    lags = dip.lags
    return _rounded(
        {
            "fast_s": lags.fast_s,
            "u_fast_s": dip.u_fast_s,
            "slow_s": lags.slow_s,
            "u_slow_s": dip.u_slow_s,
            "fast_share": lags.fast_share,
            "u_fast_share": dip.u_share,
            "covariance": [list(row) for row in lags.covariance],
            "t63_s": dip.t63_s,
            "t90_s": dip.t90_s,
            "air_c": dip.air_c,
            "water_c": dip.water_c,
            "rms_c": dip.rms_c,
        }
    )


def lags_of(checked: Checked | None) -> ProbeLags:
    """Return the time constants that a dip found; without one those of the usual probe."""
    if checked is None:
        return STEEL_TUBE
    found = checked.values
    a, b, c = (tuple(row) for row in found["covariance"])
    return ProbeLags(found["fast_s"], found["slow_s"], found["fast_share"], (a, b, c))


def cup_found(check: Check, lags: ProbeLags) -> Json:
    """Return heat capacity and loss of the cup. Raises CupRefused, or LookupError when a step is missing."""
    added, poured, weighed = (check.step(name) for name in ("added_measured", "poured", "weighed"))
    if added is None or poured is None or weighed is None:
        raise LookupError("a step is missing")
    masses_g = (weighed.values["warm_g"], weighed.values["added_g"])
    u_mass_g = weighed.values.get("u_mass_g") or U_MASS_G
    added_c = (added.values["temperature_c"], added.values["u_c"])
    cup = cup_of(check.samples, poured.time_s, added_c, masses_g, u_mass_g, water_heat_capacity_j_g_k(30.0), lags)
    return _rounded({**asdict(cup), "warm_g": masses_g[0], "added_g": masses_g[1], "u_mass_g": u_mass_g})


def _rounded(values: Json) -> Json:
    # Far below anything measured; keeps the journal readable.
    return {name: _short(value) for name, value in values.items()}


def _short(value: Any) -> Any:
    if isinstance(value, float):
        return float(f"{value:.8g}")
    if isinstance(value, dict):
        return _rounded(value)
    return value
