"""Two straight lines through readings."""

import pytest

from station.analysis.lines import LinesRefused, fit_lines

# Typical class results, mean of two trials: 30 cm³ of acid, alkali in portions of 5 cm³
# (RSC Education / AQA practical handbook, "Typical results").
VOLUME_CM3 = [0, 5, 10, 15, 20, 25, 30, 35, 40]
MEAN_C = [20.5, 24.3, 27.2, 29.1, 31.05, 32.3, 32.3, 31.7, 30.8]


def test_class_data_cross_between_the_arms() -> None:
    result = fit_lines(VOLUME_CM3, MEAN_C)
    assert result.before.points == (0, 1, 2, 3, 4)
    assert result.after.points == (5, 6, 7, 8)
    assert result.end_point_cm3 == pytest.approx(22.323, abs=5e-4)
    assert result.u_end_point_cm3 == pytest.approx(1.363, abs=5e-4)
    assert result.interval_95_cm3 == pytest.approx((18.439, 25.753), abs=5e-4)


def test_five_readings_are_too_few() -> None:
    with pytest.raises(LinesRefused, match="at least 3") as refused:
        fit_lines(VOLUME_CM3[:5], MEAN_C[:5])
    assert refused.value.kind == "too_few"
