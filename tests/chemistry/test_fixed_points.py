"""Ice and boiling points against the `iapws` library, the published check value and the standard atmosphere's table."""

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from iapws._iapws import _Melting_Pressure
from iapws.iapws97 import _TSat_P

from station.chemistry import fixed_points as fp


@settings(max_examples=50)
@given(st.floats(50.0, 110.0))
def test_the_boiling_point_is_that_of_iapws_if97(pressure_kpa: float) -> None:
    assert fp.boiling_point_c(pressure_kpa) == pytest.approx(_TSat_P(pressure_kpa / 1000.0) - 273.15, abs=1e-9)


def test_the_check_value_of_the_release() -> None:
    """IAPWS R7-97(2012), table 36: 372.755919 K at 0.1 MPa. At 101.325 kPa it is 99.974 °C, not 100."""
    assert fp.boiling_point_c(100.0) + 273.15 == pytest.approx(372.755919, abs=5e-7)
    assert fp.boiling_point_c(fp.STANDARD_KPA) == pytest.approx(99.974, abs=5e-4)


@pytest.mark.parametrize(
    ("altitude_m", "kpa", "celsius"),
    [
        (0, 101.325, 99.974),
        (100, 100.129, 99.642),
        (500, 95.461, 98.312),
        (1000, 89.875, 96.649),
        (1500, 84.556, 94.983),
    ],
)
def test_pressure_at_an_altitude_is_the_standard_atmospheres(altitude_m: float, kpa: float, celsius: float) -> None:
    """ISO 2533:1975 (ICAO Doc 7488), geopotential altitude; boiling points by IAPWS-IF97 and IAPWS-95 alike."""
    assert fp.standard_pressure_kpa(altitude_m) == pytest.approx(kpa, abs=6e-4)
    assert fp.boiling_point_at(altitude_m).temperature_c == pytest.approx(celsius, abs=6e-4)


def test_a_barometer_knows_the_boiling_point_better_than_an_altitude() -> None:
    by_barometer, by_altitude = fp.boiling_point(101.325, 0.1), fp.boiling_point_at(0.0)
    assert by_barometer.u_c < 0.16
    # 0.28 °C for each kPa of weather.
    assert by_altitude.u_c == pytest.approx((0.15**2 + 0.277**2) ** 0.5, abs=0.003)
    assert fp.boiling_point(50.0, 0.1).u_c < 0.17
    assert fp.boiling_point(110.0, 0.1).u_c < 0.17


def test_pure_water_freezes_as_far_above_the_ice_point_as_dissolved_air_lowers_it() -> None:
    """IAPWS R14-08(2011), melting of ice Ih: pure water under 101.325 kPa melts at +0.0025 °C; air takes 0.0024."""
    assert _Melting_Pressure(273.1525).real == pytest.approx(0.101325, abs=0.005)
    assert fp.ice_point("distilled").temperature_c == pytest.approx(0.0025 - 0.0024, abs=0.0002)
    assert fp.ice_point("tap").u_c > fp.ice_point("distilled").u_c


@pytest.mark.parametrize("pressure_kpa", [49.9, 110.1, 1013.25, float("nan"), -1.0])
def test_a_pressure_in_other_units_is_refused_with_the_unit_wanted(pressure_kpa: float) -> None:
    with pytest.raises(ValueError, match="between 500 and 1100 hPa"):
        fp.boiling_point_c(pressure_kpa)


@pytest.mark.parametrize("altitude_m", [-431.0, 5001.0, float("nan"), float("inf")])
def test_an_altitude_where_no_school_is_is_refused(altitude_m: float) -> None:
    with pytest.raises(ValueError, match="altitude"):
        fp.standard_pressure_kpa(altitude_m)
