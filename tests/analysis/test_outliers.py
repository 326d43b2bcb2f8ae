"""Dixon's and Grubbs' tests."""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.pooling import DIXON_CRITICAL, anomaly, dixon_q, grubbs, grubbs_critical

# Two-sided 5 % and 1 % values of Grubbs' G from exact Student's t (the formula of Grubbs, 1969).
GRUBBS = {
    3: (1.1531, 1.1543, 1.1546, 1.1547),
    4: (1.4625, 1.4813, 1.4925, 1.4962),
    5: (1.6714, 1.7150, 1.7489, 1.7637),
    6: (1.8221, 1.8871, 1.9442, 1.9728),
    7: (1.9381, 2.0200, 2.0973, 2.1391),
    8: (2.0317, 2.1266, 2.2208, 2.2744),
    9: (2.1096, 2.2150, 2.3231, 2.3868),
    10: (2.1761, 2.2900, 2.4097, 2.4821),
}


@pytest.mark.parametrize("count", GRUBBS)
def test_critical_values_of_grubbs(count: int) -> None:
    one_5, two_5, one_1, two_1 = GRUBBS[count]
    assert grubbs_critical(count, 0.05, sides=1) == pytest.approx(one_5, abs=6e-5)
    assert grubbs_critical(count, 0.05) == pytest.approx(two_5, abs=6e-5)
    assert grubbs_critical(count, 0.01, sides=1) == pytest.approx(one_1, abs=6e-5)
    assert grubbs_critical(count, 0.01) == pytest.approx(two_1, abs=6e-5)


@pytest.mark.parametrize("count", DIXON_CRITICAL)
def test_dixon_critical_values_hold_their_level_on_normal_data(count: int) -> None:
    """Rorabacher's two-sided 10 % and 5 % values, tried on simulated normal samples: they must be exceeded
    as often as they say."""
    samples = np.sort(np.random.default_rng(7).normal(size=(40_000, count)), axis=1)
    gaps = np.maximum(samples[:, 1] - samples[:, 0], samples[:, -1] - samples[:, -2])
    q = gaps / (samples[:, -1] - samples[:, 0])
    assert float(np.mean(q > DIXON_CRITICAL[count][0])) == pytest.approx(0.10, abs=0.008)
    assert float(np.mean(q > DIXON_CRITICAL[count][1])) == pytest.approx(0.05, abs=0.006)


def test_dixon_names_value_statistic_and_verdict() -> None:
    result = dixon_q([24.9, 25.1, 25.0, 27.4])
    assert result is not None
    assert (result.index, result.value, result.flagged) == (3, 27.4, True)
    assert result.statistic == pytest.approx(2.3 / 2.5)
    assert result.critical == 0.829
    assert "Dixon" in result.test


def test_dixon_looks_at_the_low_end_too() -> None:
    result = dixon_q([20.0, 25.0, 25.1, 25.2, 25.0])
    assert result is not None
    assert result.index == 0


def test_two_equal_readings_and_one_a_step_away_are_no_anomaly() -> None:
    assert anomaly([20.0, 20.0, 20.0625]) is not None
    assert anomaly([20.0, 20.0, 20.0625], step=0.0625) is None


def test_grubbs_takes_over_beyond_the_table() -> None:
    values = [25.0 + 0.1 * math.sin(i) for i in range(12)]
    assert anomaly(values) is None
    found = anomaly([*values, 27.0])
    assert found is not None
    assert found.index == 12
    assert "Grubbs" in found.test


@pytest.mark.parametrize("values", [[], [1.0], [1.0, 2.0], [3.0, 3.0, 3.0]])
def test_where_no_test_applies_there_is_no_verdict(values: list[float]) -> None:
    assert dixon_q(values) is None
    assert grubbs(values) is None


def test_bad_input_is_named() -> None:
    with pytest.raises(ValueError, match="alpha"):
        dixon_q([1, 2, 3], alpha=0.07)
    with pytest.raises(ValueError, match="missing"):
        grubbs([1.0, 2.0, math.nan])


@given(st.lists(st.integers(-1000, 1000), min_size=3, max_size=10, unique=True), st.floats(0.1, 9), st.floats(-9, 9))
def test_other_units_give_the_same_verdict(values: list[int], scale: float, shift: float) -> None:
    data = np.array(values, dtype=float)
    for test in (dixon_q, grubbs):
        plain, other = test(data), test(data * scale + shift)
        assert plain is not None
        assert other is not None
        assert other.statistic == pytest.approx(plain.statistic, rel=1e-6)
