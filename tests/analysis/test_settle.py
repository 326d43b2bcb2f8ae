"""The settle detector on simple cups; the accuracy table is in tests/benchmarks/bench_settle.py."""

from __future__ import annotations

from collections.abc import Callable
from math import exp

from station.analysis.settle import Verdict, judge
from station.analysis.settle_lags import ProbeLags
from station.analysis.settle_trace import Sample

LAGS = ProbeLags(4.5, 15.0, 0.6)


def portion(cup: Callable[[float], float], until_s: int = 121) -> list[Sample]:
    """Samples of a cup that jumped by 1.2 °C at 0 s and cools, seen through LAGS on a grid of 1/16 °C."""
    return [(float(t), round(cup(float(t)) * 16) / 16) for t in range(-10, until_s)]


def cooling(time_s: float, rise_c: float = 1.2, drift_c_s: float = -0.006) -> float:
    if time_s <= 0:
        return 21.0
    ramp_s = sum(
        share * (time_s - lag_s * (1.0 - exp(-time_s / lag_s)))
        for share, lag_s in ((LAGS.fast_share, LAGS.fast_s), (1.0 - LAGS.fast_share, LAGS.slow_s))
    )
    return 21.0 + rise_c * (1.0 - LAGS.left(time_s)) + drift_c_s * ramp_s


def first(samples: list[Sample], **options: float) -> tuple[float, Verdict] | None:
    for now in range(1, 121):
        seen = [s for s in samples if s[0] <= now]
        verdict = judge(seen, since_s=0.0, now_s=float(now), before_c=21.0, expected_change_c=1.2, lags=LAGS)
        if verdict.settled:
            return float(now), verdict
    return None


def test_fires_on_a_cooling_cup_within_one_step() -> None:
    found = first(portion(cooling))
    assert found is not None
    now, verdict = found
    assert now < 75.0
    assert verdict.temperature_c is not None
    assert abs(verdict.temperature_c - (22.2 - 0.006 * now)) <= 0.0625


def test_stale_values_alone_never_settle_before_the_limit() -> None:
    found = first([(float(t), 21.0) for t in range(-10, 121)])
    assert found is None or found[0] >= 25.0
