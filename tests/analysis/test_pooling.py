"""Pooling of bench results."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.analysis.pooling import pool

# R. N. Kacker, Metrologia 41, 132 (2004), Table 1: nine laboratories, values and variances. The results are
# those of statsmodels' test suite, computed there with R's metafor. Kacker prints tau = 0.5359 for
# DerSimonian–Laird; the formula gives 0.5367.
VALUES = [61.0, 61.4, 62.21, 62.3, 62.34, 62.6, 62.7, 62.84, 65.9]
VARIANCES = [0.2025, 1.2100, 0.0900, 0.2025, 0.3844, 0.5625, 0.0676, 0.0225, 1.8225]
CLASS = pool(VALUES, np.sqrt(VARIANCES))


def test_kacker_fixed_effect() -> None:
    assert CLASS.fixed.mean == pytest.approx(62.5833970939982, rel=1e-13)
    assert CLASS.fixed.u == pytest.approx(0.107845705498231, rel=1e-12)
    assert CLASS.fixed.interval_95 == pytest.approx((62.3720233953344, 62.7947707926621), rel=1e-12)


def test_kacker_random_effects() -> None:
    assert CLASS.tau**2 == pytest.approx(0.288049246973751, rel=1e-11)
    assert round(CLASS.tau, 4) == 0.5367
    assert CLASS.random.mean == pytest.approx(62.3901386044504, rel=1e-13)
    assert CLASS.random.u == pytest.approx(0.245749668040304, rel=1e-11)
    assert CLASS.random.interval_95 == pytest.approx((61.9084781058787, 62.8717991030221), rel=1e-12)


def test_kacker_hartung_knapp() -> None:
    assert CLASS.hartung_knapp.mean == CLASS.random.mean
    assert CLASS.hartung_knapp.u == pytest.approx(0.29477605699879, rel=1e-11)
    assert CLASS.hartung_knapp.interval_95 == pytest.approx((61.710383798052, 63.0698934108488), rel=1e-12)


def test_kacker_heterogeneity() -> None:
    assert (CLASS.count, CLASS.degrees) == (9, 8)
    assert CLASS.q == pytest.approx(24.801897741835, rel=1e-11)
    assert CLASS.p == pytest.approx(0.00167935146372742, rel=1e-10)
    assert CLASS.i2_percent == pytest.approx(67.744403741711, rel=1e-11)


def test_benches_that_agree_have_no_spread_and_one_mean() -> None:
    result = pool([24.9, 25.0, 25.1], [0.3, 0.3, 0.3])
    assert result.tau == 0.0
    assert result.i2_percent == 0.0
    assert result.random == result.fixed
    # A lucky agreement does not shrink the interval below what the benches' own u allow.
    assert result.hartung_knapp.u == pytest.approx(0.3 / np.sqrt(3))


def test_equal_results_are_no_division_by_zero() -> None:
    result = pool([25.0, 25.0], [0.2, 0.4])
    assert (result.q, result.tau, result.p) == (0.0, 0.0, 1.0)


def test_with_equal_u_the_mean_is_the_plain_mean() -> None:
    values = [20.0, 25.0, 27.0, 30.0]
    result = pool(values, [0.1] * 4)
    assert result.random.mean == pytest.approx(np.mean(values))
    assert result.hartung_knapp.u == pytest.approx(np.std(values, ddof=1) / 2)


@pytest.mark.parametrize(
    ("values", "u_values"),
    [([25.0], [0.1]), ([25.0, np.nan], [0.1, 0.1]), ([25.0, 26.0], [0.1, 0.0]), ([25.0, 26.0], [0.1])],
)
def test_what_cannot_be_pooled_raises(values: list[float], u_values: list[float]) -> None:
    with pytest.raises(ValueError, match="pooling needs"):
        pool(values, u_values)


results = st.lists(st.tuples(st.floats(15, 35), st.floats(0.05, 2)), min_size=2, max_size=15)


@given(results, st.randoms(use_true_random=False), st.floats(0.1, 10), st.floats(-50, 50))
def test_order_and_units_do_not_matter(
    pairs: list[tuple[float, float]], random: object, scale: float, shift: float
) -> None:
    y, u = np.array(pairs).T
    order = np.argsort(-y)
    plain, other = pool(y, u), pool(y[order] * scale + shift, u[order] * scale)
    assert other.random.mean == pytest.approx(plain.random.mean * scale + shift, abs=1e-6)
    assert other.tau == pytest.approx(plain.tau * scale, abs=1e-5)
    assert min(y) - 1e-9 <= plain.random.mean <= max(y) + 1e-9
    assert plain.hartung_knapp.u >= plain.random.u * (1 - 1e-12)
