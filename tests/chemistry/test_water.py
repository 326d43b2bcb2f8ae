"""Water against the IAPWS-95 formulation, computed by the ``iapws`` library."""

import pytest
from iapws import IAPWS95

from station.chemistry.liquids import (
    water_density_g_cm3,
    water_heat_capacity_j_g_k,
    water_volumetric_heat_capacity_j_cm3_k,
)


@pytest.mark.parametrize("temperature_c", [0.01, 4, 10, 18, 20, 22, 25, 30, 40, 50, 60, 80])
def test_water_agrees_with_iapws_95(temperature_c: float) -> None:
    reference = IAPWS95(T=temperature_c + 273.15, P=0.101325)
    assert water_density_g_cm3(temperature_c) * 1000 == pytest.approx(reference.rho, rel=1e-6)
    assert water_heat_capacity_j_g_k(temperature_c) == pytest.approx(reference.cp, rel=4e-5)


def test_a_cubic_centimetre_of_water_at_20_c() -> None:
    """IAPWS-95 at 101.325 kPa: 998.2072 kg/m³ times 4.18405 J/(g K)."""
    assert water_volumetric_heat_capacity_j_cm3_k(20) == pytest.approx(4.17655, rel=5e-5)


def test_water_is_densest_near_4_c() -> None:
    assert water_density_g_cm3(4) > max(water_density_g_cm3(3), water_density_g_cm3(5))


@pytest.mark.parametrize("temperature_c", [-0.1, 100.1, float("nan")])
def test_water_outside_its_range_is_refused(temperature_c: float) -> None:
    with pytest.raises(ValueError, match="0 to 100 °C"):
        water_density_g_cm3(temperature_c)
    with pytest.raises(ValueError, match="0 to 100 °C"):
        water_heat_capacity_j_g_k(temperature_c)
