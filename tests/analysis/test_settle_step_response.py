"""The detector and the two-lag model on a real probe: a DS18B20 plunged from air into cold water.

Source: one of eight loggers of a student course at Universität Hamburg, 2023 (time in s from the last
sample before the plunge : temperature in °C, 1/16 °C steps printed to two decimals).
"""

from __future__ import annotations

from math import log

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

from station.analysis.settle.detector import judge, judge_start
from station.analysis.settle.fit import model
from station.analysis.settle.lags import STEEL_TUBE, STEP_C, ProbeLags, Sample, learn_start

EXCERPT = """
-4.56:23.94 -3.42:23.88 -2.28:23.88 -1.14:23.88 0.00:23.88 1.14:23.44 2.28:20.81 3.42:18.06
4.56:16.00 5.70:14.44 6.84:13.13 7.98:12.00 9.12:11.19 10.26:10.38 11.40:9.75 12.54:9.00
13.68:8.56 14.82:8.06 15.96:7.69 17.10:7.25 18.24:7.00 19.39:6.69 20.53:6.44 21.67:6.13
22.81:5.88 23.95:5.69 25.09:5.56 26.23:5.25 27.37:5.25 28.51:5.13 29.65:4.94 30.79:4.75
31.93:4.69 33.07:4.50 34.22:4.44 35.36:4.31 36.50:4.31 37.64:4.19 38.78:4.00 39.92:3.94
41.06:3.81 42.20:3.81 43.34:3.75 44.48:3.75 45.62:3.69 46.76:3.63 47.90:3.50 49.04:3.50
50.18:3.50 51.32:3.50 52.47:3.44 53.60:3.38 54.74:3.31 55.89:3.25 57.03:3.19 58.17:3.13
59.31:3.13 60.45:3.06 61.59:3.13 62.73:3.06 63.87:3.06 65.01:3.13 66.15:3.00 67.29:3.00
68.43:2.94 69.57:3.00 70.71:2.94 71.85:2.94 72.99:2.94 74.13:2.88 75.26:2.88 76.40:2.88
77.54:2.88 78.68:2.88 79.82:2.88 80.96:2.88 82.11:2.88 83.27:2.88 84.41:2.81 85.56:2.81
86.70:2.88 87.84:2.81 88.99:2.75 90.14:2.75 91.28:2.81 92.43:2.81 93.57:2.75 94.72:2.75
95.87:2.75 97.01:2.81 98.16:2.75 99.30:2.75 100.45:2.75 101.59:2.75 102.74:2.69 103.89:2.75
105.03:2.75 106.18:2.75 107.33:2.75 108.47:2.69 109.62:2.75 110.76:2.75 111.91:2.75 113.05:2.69
114.20:2.75 115.35:2.75 116.50:2.75 117.64:2.75 118.78:2.69 119.93:2.75
"""
SAMPLES: list[Sample] = [
    (float(t), round(float(c) * 16) / 16) for t, _, c in (x.partition(":") for x in EXCERPT.split())
]
FINAL_C = sum(c for t, c in SAMPLES if c is not None and t > 100.0) / sum(t > 100.0 for t, _ in SAMPLES)


def test_the_excerpt_is_the_slow_probe_that_it_is_said_to_be() -> None:
    span = 23.88 - FINAL_C
    shown = [(t, (23.88 - c) / span) for t, c in SAMPLES if c is not None]
    t63 = next(t for t, part in shown if part >= 0.632)
    t99 = next(t for t, part in shown if part >= 0.99)
    assert 6.8 <= t63 <= 19.0
    assert 65.0 <= t99 <= 103.0


def test_two_lags_describe_the_probe_and_one_does_not() -> None:
    times = np.array([t for t, _ in SAMPLES])
    seen = np.array([c for _, c in SAMPLES])

    def residuals(free: NDArray[np.float64]) -> NDArray[np.float64]:
        change, start, fast, slow, share, mix = free
        at = (23.88, change, 0.0, start, fast, slow, share, mix)
        return np.asarray(np.array([model(at, float(t))[0] for t in times]) - seen)

    def rms(lower: list[float], upper: list[float], guess: list[float]) -> float:
        found = least_squares(residuals, guess, bounds=(lower, upper))
        return float(np.sqrt(np.mean(found.fun**2)))

    low, high = [-25.0, -1.0, log(1.0), log(5.0), 0.0, log(0.1)], [-18.0, 2.0, log(10.0), log(40.0), 1.0, log(3.0)]
    assert rms(low, high, [-21.0, 0.5, log(4.5), log(18.0), 0.55, log(0.5)]) <= 0.06
    low[4] = 1.0 - 1e-9
    assert rms(low, high, [-21.0, 0.5, log(4.5), log(18.0), 1.0 - 5e-10, log(0.5)]) > 0.2


def judged(lags: ProbeLags) -> float:
    for now in (t for t, _ in SAMPLES if t > 1.0):
        verdict = judge(SAMPLES, since_s=0.0, now_s=now, before_c=23.88, lags=lags)
        if verdict.ready:
            assert verdict.temperature_c is not None
            return now
    return 120.0


def test_it_does_not_fire_early_with_the_lags_of_any_probe() -> None:
    # A step of 21 °C, ten times a portion: within one step of the end only after about 85 s.
    inside = [t for t, c in SAMPLES if c is not None and abs(c - FINAL_C) > STEP_C][-1]
    assert inside > 70.0
    assert judged(STEEL_TUBE) >= inside - 12.0
    assert judged(ProbeLags(4.65, 19.35, 0.54)) >= inside - 12.0


def test_the_start_is_not_steady_while_the_probe_still_sinks() -> None:
    for now in (t for t, _ in SAMPLES if t > 1.0):
        verdict = judge_start(SAMPLES, since_s=0.0, now_s=now)
        if verdict.ready:
            assert verdict.temperature_c is not None
            assert abs(verdict.temperature_c - FINAL_C) <= 2.0 * STEP_C
            break
    else:
        raise AssertionError("never steady")


def test_the_plunge_teaches_the_lags() -> None:
    lags = learn_start(SAMPLES, since_s=-5.0, until_s=110.0, lags=STEEL_TUBE)
    assert abs(lags.fast_s - 4.65) < 1.0
    assert abs(lags.slow_s - 19.35) < 2.5
